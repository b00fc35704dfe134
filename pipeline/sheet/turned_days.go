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
	var days []columnDay
	left := map[string]int{} // days that stand as they were typed, by their order
	for _, cell := range texts {
		f, ok := cellDate(cell, d.date1904)
		if !ok || len(f.readings) != 1 || f.readings[0].y == 0 {
			continue
		}
		r := f.readings[0]
		c := columnDay{text: cell, is: r.day()}
		if t := trim(cell); len(t) >= 10 && isoDate(t[:10]) || digitsOnly(t) && r.order == "" {
			c.program = true
			if c.other = c.is; r.d <= 12 {
				c.turns, c.other = r.d != r.m, unit.NewDay(r.y, r.d, r.m)
			}
		} else {
			c.other = c.is
			left[r.order]++
		}
		days = append(days, c)
	}
	if !slices.ContainsFunc(days, func(c columnDay) bool { return c.turns }) {
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
		fmt.Sprintf("A spreadsheet program has taken the day for the month in %s of this column; with the two exchanged they fit the other days, and were read so. If a day is right as it stands, write it in words (6 Sep 2025), and load the sheet again.", text.Count(len(turned), "day")))
}

// columnDay is a day of a date column.
type columnDay struct {
	text      string
	is, other unit.Day // as it stands, and with day and month exchanged
	turns     bool     // the two differ
	program   bool     // written as programs write days, 2025-06-09
}

func (c columnDay) day(turned bool) unit.Day {
	if turned {
		return c.other
	}
	return c.is
}

// exchangedByProgram are all days in a program's own form, where none of them has a day after the
// twelfth, all others stand as text that the program couldn't read with the month first (or all
// with the day first), and only exchanged do they fit these.
func exchangedByProgram(days []columnDay, left map[string]int) (turned []columnDay) {
	if len(left) != 1 || left["dmy"]+left["mdy"] < 2 {
		return nil
	}
	for _, c := range days {
		if !c.program {
			continue
		}
		if _, _, d := c.is.Date(); d > 12 {
			return nil
		}
		if c.turns {
			turned = append(turned, c)
		}
	}
	exchanged := func(c columnDay) bool { return c.turns }
	if !fitBetter(days, exchanged) {
		return nil
	}
	return turned
}

// apartFromRest are days that fall on another weekday than the rest, out of their order, and
// exchanged do neither.
func apartFromRest(days []columnDay) (turned []columnDay) {
	usual, ok := usualWeekday(days)
	if !ok {
		return nil
	}
	var settled []int // days that fall on it one way only
	turn := map[string]bool{}
	for i, c := range days {
		is, other := int(c.is.Weekday()) == usual, int(c.other.Weekday()) == usual
		if !is && !other {
			return nil // there are runs on other days
		}
		if turn[c.text] = !is; !is || !other || c.is == c.other {
			settled = append(settled, i)
		}
	}
	if len(settled) == 0 {
		return nil
	}
	first, last := days[settled[0]], days[settled[len(settled)-1]]
	up := first.day(turn[first.text]) < last.day(turn[last.text])
	for i, c := range days { // 1 November and 11 January 2025 are Saturdays: which of them lies between its neighbours?
		at, found := slices.BinarySearch(settled, i)
		if found {
			continue
		}
		between := func(d unit.Day) bool {
			ok := true
			if at > 0 {
				before := days[settled[at-1]]
				ok = before.day(turn[before.text]) < d == up
			}
			if at < len(settled) {
				next := days[settled[at]]
				ok = ok && d < next.day(turn[next.text]) == up
			}
			return ok
		}
		turn[c.text] = !between(c.is) && between(c.other)
	}
	turns := func(c columnDay) bool { return turn[c.text] }
	if rising(days, func(columnDay) bool { return false }) || !rising(days, turns) {
		return nil
	}
	for _, c := range days {
		if turns(c) {
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
		if c.is == c.other {
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

// fitBetter says whether the days fall on one weekday, or follow one another, with some of them
// exchanged, and neither as they stand.
func fitBetter(days []columnDay, exchanged func(columnDay) bool) bool {
	weekday := func(turned func(columnDay) bool) bool {
		all := make([]unit.Day, len(days))
		for i, c := range days {
			all[i] = c.day(turned(c))
		}
		w, n := oneWeekday(all)
		return w >= 0 && n >= 3
	}
	asItStands := func(columnDay) bool { return false }
	if weekday(asItStands) || rising(days, asItStands) {
		return false
	}
	return weekday(exchanged) || rising(days, exchanged)
}

// rising says whether days follow one another, or do so read from the last to the first.
func rising(days []columnDay, turned func(columnDay) bool) bool {
	up, down := true, true
	for i := 1; i < len(days); i++ {
		a, b := days[i-1].day(turned(days[i-1])), days[i].day(turned(days[i]))
		up, down = up && a < b, down && a > b
	}
	return up || down
}
