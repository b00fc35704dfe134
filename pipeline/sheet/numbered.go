package sheet

import (
	"regexp"
	"slices"
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
		if day, ok := inISOWeek(year, week); ok {
			return Numbered{"week", day.Week(), true}, true
		}
		return Numbered{}, false
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

// inISOWeek is a day of a week of ISO 8601; false where the year has no such week.
func inISOWeek(year, week int) (unit.Day, bool) {
	day := unit.NewDay(year, 1, 4) + unit.Day(7*(week-1)) // 4 January is always in the first week
	y, w := day.ISOWeek()
	return day, y == year && w == week
}

// weekCell is a cell that is nothing but a week of ISO 8601.
var weekCell = regexp.MustCompile(`^(\d{4})[-_ ]?[Ww](\d{1,2})$`)

// daysOfWeeks puts the day in place of the weeks of a column, "2026-W07", where the lines above the heading, the tab or the file
// say on which day of the week the runs are, "every Saturday". It returns the number of rows.
func (t table) daysOfWeeks(file string) int {
	column, heading, weekday := -1, -1, -1
	said := func(text string) bool { // false for a second one
		for _, w := range strings.Fields(fold(text)) {
			d, ok := longWeekday(w)
			if !ok {
				d, ok = longWeekday(strings.TrimSuffix(w, "s"))
			}
			if ok && weekday >= 0 && weekday != d {
				return false
			}
			if ok {
				weekday = d
			}
		}
		return true
	}
	days := map[int][]string{}
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if column < 0 {
			if column = slices.IndexFunc(cells, func(c string) bool { return len(c) < 12 && weekCell.MatchString(trim(c)) }); column < 0 {
				if i >= headingLooks || !said(titleText(cells)) {
					return 0
				}
				continue
			}
			heading = i - 1
			for _, name := range [...]string{t.tab, file} {
				if weekday < 0 && !said(name) {
					return 0
				}
			}
			if weekday < 0 {
				return 0
			}
		}
		m := weekCell.FindStringSubmatch(trim(cellAt(cells, column)))
		if m == nil {
			continue
		}
		year, _ := strconv.Atoi(m[1])
		week, _ := strconv.Atoi(m[2])
		day, ok := inISOWeek(year, week)
		if !ok {
			return 0
		}
		days[i] = slices.Clone(cells)
		days[i][column] = (day + unit.Day((weekday+6)%7-(int(day.Weekday())+6)%7)).String() // weeks begin on Monday
	}
	if heading >= 0 && len(days) > 0 {
		_, cells := t.grid.at(heading)
		if days[heading] = slices.Clone(cells); column < len(cells) && !isBlank(cells[column]) {
			days[heading][column] = "Date"
		}
	}
	return max(0, t.grid.mendRows(days)-1)
}
