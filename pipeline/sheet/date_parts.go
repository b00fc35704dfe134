package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// monthHeadings are headings of a column of months. Common practice, no source.
var monthHeadings = set("month monat mois mes mese maand manad maned miesiac mesic mesiac kuukausi honap luna mjesec kuu menuo menesis ay mis")

// runYears is more than lie between the runs of one list, and less than between its runners' births.
const runYears = 12

// joinDays puts the day of a run into one cell where its parts stand in three columns, "Day | Month |
// Year", with a month in words or in figures, on all rows that have them. It returns the number of rows.
func (g *grid) joinDays(headings []string, after int) int {
	day, month, year := -1, -1, -1
	for i, h := range headings {
		at := &day
		switch f := strings.Trim(fold(h), "."); {
		case monthHeadings[f]:
			at = &month
		case headingWords[f]&cYear != 0:
			at = &year
		case headingWords[f]&cDate == 0:
			continue
		}
		if *at >= 0 {
			return 0 // two of a kind
		}
		*at = i
	}
	if min(day, month, year) < 0 {
		return 0
	}
	days, first, last := map[int]string{}, 0, 0
	for i := range g.len() {
		row, cells := g.at(i)
		d, m, y := trim(cellAt(cells, day)), trim(cellAt(cells, month)), trim(cellAt(cells, year))
		if row <= after || d == "" && m == "" && y == "" || rowFilled(cells) == 1 {
			continue
		}
		number, _ := strconv.Atoi(m)
		if n, ok := monthNames[fold(m)]; ok {
			number = n + 1
		}
		dd, _ := strconv.Atoi(strings.TrimSuffix(d, "."))
		yy, _ := strconv.Atoi(y)
		if len(y) != 4 || number < 1 || !validDate(yy, number, dd) {
			return 0
		}
		if len(days) == 0 {
			first = yy
		}
		first, last = min(first, yy), max(last, yy)
		days[row] = fmt.Sprintf("%d-%02d-%02d", yy, number, dd)
	}
	if last-first > runYears {
		return 0 // days of birth
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		joined, ok := days[row]
		if !ok {
			return nil, false
		}
		cells = slices.Clone(cells)
		cells[day], cells[month], cells[year] = joined, "", ""
		return cells, true
	})
}
