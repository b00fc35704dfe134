package sheet

import (
	"regexp"
	"strconv"
	"strings"

	"lapwing/pipeline/unit"
)

// Numbered is what the name of a sheet of a series says: "Run 212" is number 212 after
// the word run. Of an ISO 8601 week, 2026-W07, the number is that of the week since
// 1970, and Week is true.
type Numbered struct {
	Word string
	N    int
	Week bool
}

var (
	isoWeekName = regexp.MustCompile(`(?:^|[^0-9])(\d{4})[-_ ]?[Ww](\d{2})(?:$|[^0-9])`)
	copyNumber  = regexp.MustCompile(`\s*\(\d+\)\s*$`) // of a file that was downloaded twice
)

// NumberOf reads the number in the name of a file that has no date. ok is false where
// there is none, and where two may be meant.
func NumberOf(name string) (s Numbered, ok bool) {
	stem := copyNumber.ReplaceAllString(baseStem(plainName(name)), "")
	if m := isoWeekName.FindStringSubmatch(stem); m != nil {
		year, _ := strconv.Atoi(m[1])
		week, _ := strconv.Atoi(m[2])
		// 4 January is always in the first week.
		day := unit.NewDay(year, 1, 4) + unit.Day(7*(week-1))
		if y, w := day.ISOWeek(); y != year || w != week {
			return Numbered{}, false
		}
		return Numbered{"week", day.Week(), true}, true
	}
	words := strings.Fields(fold(cutMonthYear(cutDates(keepDates(stem), true, " "))))
	for i, w := range words {
		if !digitsOnly(w) || len(w) > 4 || len(yearsIn(w)) > 0 {
			continue
		}
		n, _ := strconv.Atoi(w)
		switch word := ""; {
		case i > 0:
			if word = words[i-1]; digitsOnly(word) {
				return Numbered{}, false
			}
			fallthrough
		default:
			if ok && (raceWords[word] || word == s.Word) { // "Run 212 race 2", "run 212 run 2"
				continue
			}
			if ok {
				return Numbered{}, false
			}
			s, ok = Numbered{Word: word, N: n}, true
		}
	}
	return s, ok
}

// raceWords say before a number which of several races or lists of a day a sheet is.
var raceWords = set("race part page heat wave tab sheet teil seite partie pagina parte deel blad rennen manche heft")
