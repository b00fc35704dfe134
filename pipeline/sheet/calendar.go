package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/unit"
)

// A tab may say on which days the runs of a workbook were held, by their numbers: "#214 |
// 3 Jan 2026". The tabs of the runs are then called by the numbers alone.

// calendarRows is more than a workbook has runs.
const calendarRows = 600

// narrow is more columns than a calendar or a list of names under the sexes has.
const narrow = 64

// keepCalendar keeps the days of a tab that lists runs: in three rows or more a number and a
// date, both of which rise from row to row, and no time anywhere but those at which the runs start.
func (s *Sheet) keepCalendar(t table, lex *lexicon) {
	if t.grid == nil || t.tab == "" || t.grid.len() > calendarRows {
		return
	}
	numbers, found := map[int][]int{}, map[int][]foundDate{} // by column, of the rows with a date
	width, head := 0, -1
	clocks := map[int]bool{} // columns of times
	var dated []int          // its rows with a date
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if len(cells) > narrow {
			return
		}
		ofDay := false
		width = max(width, len(cells))
		for c, text := range cells {
			switch kindOf(text) {
			case kClock:
				clocks[c] = true
			case kDate:
				if f, ok := cellDate(text, t.date1904); ok && f.readings[0].y != 0 {
					found[c] = append(found[c], f)
					ofDay = true
				}
			}
		}
		if !ofDay {
			if len(dated) == 0 {
				head = i
			}
			continue
		}
		dated = append(dated, i)
		for c, text := range cells {
			if n, ok := onlyNumber(text); ok {
				numbers[c] = append(numbers[c], n)
			}
		}
	}
	rows := len(dated)
	if rows < 3 {
		return
	}
	for c := range clocks {
		if head < 0 {
			return
		}
		if _, headings := t.grid.at(head); lex.read(cellAt(headings, c)).meaning != Session {
			return
		}
	}
	for c := range width {
		d := risingDays(found[c])
		for k := range width {
			if n := numbers[k]; len(d) == rows && len(n) == rows && rise(n) && rise(d) {
				if s.calendar == nil {
					s.calendar = map[int]calendarDay{}
				}
				for i := range n {
					day := calendarDay{d[i], t.tab, t.courseInCalendar(lex, head, dated[i])}
					if old, twice := s.calendar[n[i]]; twice && old.day != day.day {
						day.day = 0 // two tabs disagree
					}
					s.calendar[n[i]] = day
				}
				return
			}
		}
	}
}

// risingDays are the days of a column of dates that rise, each read in the one order of day and month in which they do:
// that in which they all fall on one weekday, where they rise in both. nil for none.
func risingDays(found []foundDate) (days []unit.Day) {
	weekly := false
	for _, order := range [...]string{"dmy", "mdy"} {
		var read []unit.Day
		one := true
		for _, f := range found {
			i := slices.IndexFunc(f.readings, func(r reading) bool { return r.order == order || len(f.readings) == 1 && r.order != otherOrder[order] })
			if i < 0 {
				break
			}
			read = append(read, f.readings[i].day())
			one = one && read[0].Weekday() == f.readings[i].day().Weekday()
		}
		switch {
		case len(read) < len(found) || !rise(read):
		case days == nil, one && !weekly:
			days, weekly = read, one
		case one == weekly && !slices.Equal(read, days):
			return nil
		}
	}
	return days
}

// otherOrder is the order of day and month that an order is not.
var otherOrder = map[string]string{"dmy": "mdy", "mdy": "dmy"}

// courseInCalendar is the cell of a row under a heading such as Venue, which stands in the row
// head; "" for none.
func (t table) courseInCalendar(lex *lexicon, head, row int) string {
	if head < 0 {
		return ""
	}
	_, headings := t.grid.at(head)
	_, cells := t.grid.at(row)
	for c, h := range headings {
		text := trim(unmangle(cellAt(cells, c)))
		if _, number := onlyNumber(text); number || kindOf(text) != kText {
			continue // of the race, or its day
		}
		if g := lex.read(h); g.known && g.meaning == Course || isVenueLabel(fold(h)) {
			return text
		}
	}
	return ""
}

// calendarDay is the day of a run by its number, its course where one is given, and the tab
// that says so.
type calendarDay struct {
	day    unit.Day
	tab    string
	course string
}

// rise says whether values rise all the way.
func rise[T int | unit.Day](values []T) bool {
	for i := 1; i < len(values); i++ {
		if values[i] <= values[i-1] {
			return false
		}
	}
	return true
}

// onlyNumber is the whole number of a short text that has one and no date: "#214", "Run 12".
func onlyNumber(text string) (n int, ok bool) {
	text = trim(text)
	if len(text) > 20 || len(findDates(text)) > 0 {
		return 0, false
	}
	for _, t := range tokenize(text) {
		switch {
		case t.kind == 'd' && (ok || t.digits() > 4):
			return 0, false
		case t.kind == 'd':
			n, ok = t.n, true
		}
	}
	return n, ok
}

// listed finds a table in the calendar of its workbook, by the number of its tab or the one
// in a title line behind # or a word for a run: "Run #214".
func (rs *runSettler) listed(p *Part) (d calendarDay, n int, ok bool) {
	if len(rs.sheet.calendar) == 0 {
		return d, 0, false
	}
	n, ok = onlyNumber(p.Tab)
	for _, t := range p.Titles {
		if ok {
			break
		}
		n, ok = runNumber(t)
	}
	d, listed := rs.sheet.calendar[n]
	return d, n, ok && listed && d.day != 0 && d.tab != p.Tab
}

// inCalendar is the day of a table in that calendar.
func (rs *runSettler) inCalendar(p *Part) (evidence, bool) {
	d, n, ok := rs.listed(p)
	if !ok {
		return evidence{}, false
	}
	y, m, day := d.day.Date()
	return evidence{foundDate: foundDate{readings: []reading{{y: y, m: m, d: day}}, weekday: -1}, text: fmt.Sprintf("number %d", n),
		from: fmt.Sprintf("tab %q, which gives number %d this day", d.tab, n), strength: 3}, true
}

// leaveCalendar leaves out the tab of the calendar, whose courses may look like names, once
// another tab stands in it.
func (rs *runSettler) leaveCalendar(parts []*Part) []*Part {
	used := map[string]bool{}
	for _, p := range parts {
		if d, _, ok := rs.listed(p); ok {
			used[d.tab] = true
		}
	}
	return slices.DeleteFunc(parts, func(p *Part) bool { return used[p.Tab] && p.Index(Time) < 0 })
}

// runNumber is the number in a line behind # or a word for a run or week.
func runNumber(text string) (n int, ok bool) {
	words := strings.Fields(fold(text))
	for i, w := range strings.Fields(text) {
		if after, marked := strings.CutPrefix(w, "#"); marked && digitsOnly(after) {
			return onlyNumber(after)
		}
		if i > 0 && i < len(words) && digitsOnly(w) && numberedRuns[words[i-1]] {
			return onlyNumber(w)
		}
	}
	return 0, false
}

var numberedRuns = set("run event race round week no nr lauf course corsa carrera lob lop bieg beh futas")
