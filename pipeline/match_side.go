package pipeline

import (
	"fmt"
	"strconv"
	"strings"
)

// A decision about people ties both sides to lines, so that it holds whatever
// becomes of numbers and spellings. The first side is the line in sheet, tab
// and row; a number in runner says that the line stands for that whole runner,
// otherwise the decision is about the one line. The second side is in value:
// "R9 HASH:TAB!ROW" for a runner with one of its lines, "HASH:ROW" for a line
// of a text sheet, or only "R9".

// side is one side of a decision about people.
type side struct {
	runner string // R9, "" where it is about one line only
	at     lineRef
}

func (s side) String() string {
	if s.at.hash == "" {
		return s.runner
	}
	return strings.TrimSpace(s.runner + " " + s.at.String())
}

// readSide reads the value of a decision about people.
func readSide(value string) (s side, err error) {
	rest := value
	if first, after, _ := strings.Cut(value, " "); first != "" {
		if _, ok := runnerNumber(first); ok {
			s.runner, rest = strings.ToUpper(first), after
		}
	}
	if rest == "" && s.runner != "" {
		return s, nil
	}
	if s.at, err = parseLineRef(rest); err != nil {
		return s, fmt.Errorf("value %q: write a runner (R9), or a runner and one of its lines (R9 HASH:ROW)", value)
	}
	return s, nil
}

// sides are the two sides of a decision about people.
func (d Decision) sides() (a, b side, err error) {
	a = side{d.Runner, lineRef{d.Sheet, d.Tab, d.Row}}
	b, err = readSide(d.Value)
	return a, b, err
}

func (d Decision) aboutPeople() bool { return d.Kind == DecideSame || d.Kind == DecideDifferent }

// decisionOf gives the id of the decision that a linker's message names.
func decisionOf(ref string) int32 {
	n, _ := strconv.Atoi(strings.TrimPrefix(ref, "decision "))
	return int32(n)
}
