package sheet

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// fewestDays is how many different days show the weekday of a run.
const fewestDays = 5

// turnDays finds the cells of a date column in which a spreadsheet program has exchanged day and
// month: 6/9/2025 typed day first into a program that expects the month first becomes 9 June, while
// 13/9/2025, which it can't read so, stays as it was typed. They are told by the rest of the column:
// exchanged back, all days fall on one weekday or follow one another, and as they stand they don't.
func (rs *runSettler) turnDays(p *Part, texts []string) {
	d, col := &p.runs.dates, p.runs.dateCol
	if len(texts) < 3 {
		return // others have to show it
	}
	var days []columnDay
	left := map[string]int{} // days that stand as they were typed, by their order
	for _, cell := range texts {
		f, ok := cellDate(cell, d.date1904)
		if !ok || len(f.readings) != 1 || f.readings[0].y == 0 {
			continue
		}
		r := f.readings[0]
		c := columnDay{text: cell, is: r.day(), other: r.day()}
		if t := trim(cell); len(t) >= 10 && isoDate(t[:10]) || digitsOnly(t) && r.order == "" {
			if c.program = true; r.d <= 12 {
				c.other = unit.NewDay(r.y, r.d, r.m)
			}
		} else {
			left[r.order]++
		}
		days = append(days, c)
	}
	if !slices.ContainsFunc(days, columnDay.turns) {
		return
	}
	turned := exchangedByProgram(days, left)
	if turned == nil {
		turned = apartFromRest(days)
	}
	if turned == nil {
		return
	}
	d.turned = map[string]bool{}
	for _, c := range turned {
		d.turned[c.text] = true
	}
	p.problem(rs.sheet.Name, p.HeadingRow, col, place.Look, "days-exchanged", turned[0].text, turned[0].other.Long(),
		fmt.Sprintf("A spreadsheet program has swapped the day and the month in %s of this column. Swapped back, they fit the other days, and so they were read. If a day is right as it stands, write its month as a word (6 Sep 2025), and load the sheet again.", text.Count(len(turned), "day")))
}

// columnDay is a day of a date column.
type columnDay struct {
	text      string
	is, other unit.Day // as it stands, and with day and month exchanged where a program may have done so
	program   bool     // written as programs write days, 2025-06-09
}

func (c columnDay) turns() bool { return c.is != c.other }

// asTheyStand are days as a column has them.
func asTheyStand(days []columnDay) []unit.Day {
	out := make([]unit.Day, len(days))
	for i, c := range days {
		out[i] = c.is
	}
	return out
}

// exchangedByProgram are all days in a program's own form, where none of them has a day after the
// twelfth, all others stand as text that the program couldn't read with the month first (or all
// with the day first), and only exchanged do they fit these.
func exchangedByProgram(days []columnDay, left map[string]int) (turned []columnDay) {
	if len(left) != 1 || left["dmy"]+left["mdy"] < 2 {
		return nil
	}
	exchanged := make([]unit.Day, len(days))
	for i, c := range days {
		if _, _, d := c.is.Date(); c.program && d > 12 {
			return nil
		}
		if exchanged[i] = c.other; c.turns() {
			turned = append(turned, c)
		}
	}
	if belongTogether(asTheyStand(days)) || !belongTogether(exchanged) {
		return nil
	}
	return turned
}

// belongTogether says whether days fall on one weekday, three and more, or follow one another.
func belongTogether(days []unit.Day) bool {
	_, n := oneWeekday(days)
	return n >= 3 || followOn(days)
}

// apartFromRest are days that fall on another weekday than the rest, out of their order, and
// exchanged do neither.
func apartFromRest(days []columnDay) (turned []columnDay) {
	usual, ok := usualWeekday(days)
	if !ok {
		return nil
	}
	var settled []int // days that fall on it one way only
	read := asTheyStand(days)
	for i, c := range days {
		is, other := int(c.is.Weekday()) == usual, int(c.other.Weekday()) == usual
		if !is && !other {
			return nil // there are runs on other days
		}
		if !is {
			read[i] = c.other
		}
		if !is || !other || !c.turns() {
			settled = append(settled, i)
		}
	}
	if len(settled) == 0 || followOn(asTheyStand(days)) {
		return nil
	}
	up := read[settled[0]] < read[settled[len(settled)-1]]
	for i, c := range days { // 1 November and 11 January 2025 are Saturdays: which of them lies between its neighbours?
		at, found := slices.BinarySearch(settled, i)
		if found {
			continue
		}
		between := func(d unit.Day) bool {
			return (at == 0 || read[settled[at-1]] < d == up) && (at == len(settled) || d < read[settled[at]] == up)
		}
		if !between(c.is) && between(c.other) {
			read[i] = c.other
		}
	}
	if !followOn(read) {
		return nil
	}
	for i, c := range days {
		if read[i] != c.is {
			turned = append(turned, c)
		}
	}
	return turned
}

// usualWeekday is the one on which fall all days that can be read only one way, three or more, or
// else most of all days.
func usualWeekday(days []columnDay) (weekday int, ok bool) {
	var sure []unit.Day
	var on [7]int
	for _, c := range days {
		on[c.is.Weekday()]++
		if !c.turns() {
			sure = append(sure, c.is)
		}
	}
	if w, n := oneWeekday(sure); n >= 3 {
		return w, true
	}
	for w, n := range on {
		if n > on[weekday] {
			weekday = w
		}
	}
	return weekday, on[weekday] >= fewestDays && on[weekday]*10 >= len(days)*7
}

// followOn says whether days follow one another, or do so read from the last to the first.
func followOn(days []unit.Day) bool {
	back := slices.Clone(days)
	slices.Reverse(back)
	return rise(days) || rise(back)
}
