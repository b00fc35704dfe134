package pipeline

import (
	"fmt"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record"
)

func orNone(n int32) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

func orBlank(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

func orNotGiven(s record.Sex) string {
	if s == record.NotGiven {
		return "not given"
	}
	return s.String()
}

func triInWords(t uint8) string {
	return [...]string{"not known", "no", "yes"}[min(int(t), 2)]
}

func agesInWords(x lineFacts) string {
	switch {
	case x.ageLow < 0:
		return "not known"
	case x.ageLow == x.ageHigh:
		return fmt.Sprint(x.ageLow)
	}
	return fmt.Sprintf("%d to %d", x.ageLow, x.ageHigh)
}

func groupInWords(x lineFacts, scheme age.Scheme) string {
	if x.group == noGroup {
		return "not certain"
	}
	return scheme.Name(int(x.group), record.Sex(x.sex).String())
}

func countsInWords(c uint8) string {
	switch c & 3 {
	case 3:
		return "as a run and a time"
	case 1:
		return "as a run"
	}
	return "not"
}
