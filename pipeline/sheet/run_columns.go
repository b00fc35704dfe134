package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/unit"
)

// runReader gives the run of a row.
type runReader struct {
	book                           *courseBook
	courseCol, dateCol, sessionCol int
	cutDates                       bool // the cells of courseCol have the date, too
	distanceCol                    int
	distances                      map[string]int // metres by the texts of that column; nil where the part has one distance
	course, session                string
	day                            unit.Day
	dayOK                          bool
	dates                          dateReader
	clockIsSession                 bool // the date column shows two starts on one day
	lastCourse, lastSlug           string
	lastDate, lastClock            string
	lastDay                        unit.Day
	lastOK                         bool
	slugs                          map[string]string
	moved                          map[runOfRow]runOfRow // what lines that are alone of a run are taken for
}

func (r *runReader) of(cells []string) (course string, day unit.Day, session string, ok bool) {
	course, day, session, ok = r.course, r.day, r.session, r.dayOK
	if r.courseCol >= 0 && r.courseCol < len(cells) {
		if c := cells[r.courseCol]; c != "" {
			if c != r.lastCourse || r.lastSlug == "" {
				s, seen := r.slugs[c]
				if !seen {
					name := trim(c)
					if r.cutDates {
						name = besideDate(name, dateMarks)
					}
					if !noCourseYet(name) {
						s = r.book.slug(name)
					}
					if r.slugs == nil {
						r.slugs = map[string]string{}
					}
					if len(r.slugs) < 100000 {
						r.slugs[strings.Clone(c)] = s
					}
				}
				r.lastCourse, r.lastSlug = c, s
			}
			if r.lastSlug != "" {
				course = r.lastSlug
			}
		}
	}
	if r.dateCol >= 0 && r.dateCol < len(cells) {
		if c := cells[r.dateCol]; c != "" {
			if c != r.lastDate {
				r.lastDate = c
				r.lastDay, r.lastClock, r.lastOK = r.dates.read(c)
			}
			if r.lastOK || !isBlank(c) {
				day, ok = r.lastDay, r.lastOK
			}
			if r.clockIsSession && r.sessionCol < 0 {
				session = r.lastClock
			}
		}
	}
	if r.sessionCol >= 0 && r.sessionCol < len(cells) {
		if c := trim(cells[r.sessionCol]); c != "" {
			session = sessionText(c)
		}
	}
	if to, ok := r.moved[runOfRow{course, day, session}]; ok {
		course, day, session = to.course, to.day, to.session
	}
	return course, day, session, ok && course != ""
}

// sessionText writes a time of day as 09:30 and leaves anything else alone.
func sessionText(c string) string {
	sc := dateScan{s: c, toks: tokenize(c)}
	if text, next, ok := sc.clockAt(0); ok && next >= len(sc.toks) {
		return text
	}
	return c
}

// dateReader reads the cells of a date column.
type dateReader struct {
	order    string // "dmy" or "mdy" where a cell can be read both ways; "" none
	years    []int  // for cells without a year
	weekday  int    // the usual weekday, for choosing a year; -1 none
	date1904 bool   // day numbers count from 1904
	seen     map[string]seenDate
	turned   map[string]bool // cells with day and month exchanged
}

type seenDate struct {
	day   unit.Day
	clock string
	ok    bool
}

func (d *dateReader) read(cell string) (unit.Day, string, bool) {
	if s, ok := d.seen[cell]; ok {
		return s.day, s.clock, s.ok
	}
	var s seenDate
	if f, ok := d.date(cell); ok {
		s.clock = f.clock
		s.day, s.ok = d.choose(f)
	}
	if d.seen == nil {
		d.seen = map[string]seenDate{}
	}
	if len(d.seen) < 100000 {
		d.seen[strings.Clone(cell)] = s
	}
	return s.day, s.clock, s.ok
}

// date is cellDate with day and month put right where a program has exchanged them.
func (d *dateReader) date(cell string) (foundDate, bool) {
	f, ok := cellDate(cell, d.date1904)
	if ok && d.turned[cell] {
		r := f.readings[0]
		r.m, r.d = r.d, r.m
		f.readings = []reading{r}
	}
	return f, ok
}

// cellDate reads one cell of a date column: a date in words or figures, or the
// day number of a spreadsheet (ECMA-376 Part 1, 18.17.4.1: 1 is 1 January 1900
// and 60 a 29 February that never was, so that from 61 on day 0 is 30 December
// 1899; or 0 is 1 January 1904).
func cellDate(cell string, date1904 bool) (foundDate, bool) {
	cell = trim(unmangle(cell))
	if n, err := strconv.ParseFloat(cell, 64); err == nil && n > 20000 && n < 80000 && cell[0] != '0' {
		d := unit.NewDay(1899, 12, 30) + unit.Day(n)
		if date1904 {
			d = unit.NewDay(1904, 1, 1) + unit.Day(n)
		}
		y, m, dd := d.Date()
		return foundDate{readings: []reading{{y, m, dd, ""}}, weekday: -1, to: len(cell)}, true
	}
	fs := scanDates(cell, true)
	if len(fs) == 0 {
		return foundDate{}, false
	}
	return fs[0], true
}

func (d *dateReader) choose(f foundDate) (unit.Day, bool) {
	rs := f.readings
	if len(rs) > 1 {
		if f.weekday >= 0 {
			rs = keep(rs, func(r reading) bool { return r.y != 0 && int(r.day().Weekday()) == f.weekday })
		}
		if len(rs) > 1 && d.order != "" {
			rs = keep(rs, func(r reading) bool { return r.order == d.order })
		}
	}
	if len(rs) != 1 {
		return 0, false
	}
	r := rs[0]
	if r.y == 0 {
		var fits []reading
		for _, y := range d.years {
			if t := (reading{y, r.m, r.d, r.order}); validDate(y, r.m, r.d) && (f.weekday < 0 || int(t.day().Weekday()) == f.weekday) {
				fits = append(fits, t)
			}
		}
		if len(fits) > 1 && d.weekday >= 0 {
			fits = keep(fits, func(r reading) bool { return int(r.day().Weekday()) == d.weekday })
		}
		if len(fits) != 1 {
			return 0, false
		}
		r = fits[0]
	}
	return r.day(), true
}

// keep filters readings, but never down to none.
func keep(rs []reading, ok func(reading) bool) []reading {
	var out []reading
	for _, r := range rs {
		if ok(r) {
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		return rs
	}
	return out
}

// columnTexts are the different texts of a column, in order of appearance; for
// a sheet that is not held whole those of its sample.
func columnTexts(p *Part, col int) (texts []string) {
	seen := map[string]bool{}
	add := func(_ int, cells []string) error {
		if c := cellAt(cells, col); c != "" && !seen[c] {
			seen[c] = true
			texts = append(texts, c)
		}
		if len(texts) > 5000 {
			return errStop
		}
		return nil
	}
	if p.Whole {
		p.Each(add) // its only error is errStop, which the source takes
		return texts
	}
	for _, l := range p.rules.sample {
		if add(l.row, l.cells) != nil {
			break
		}
	}
	return texts
}

// columnDates settles how the cells of a date column are read.
func (rs *runSettler) columnDates(p *Part, evs []evidence) {
	col := p.runs.dateCol
	d := &p.runs.dates
	d.years = distinctYears(append([]int(nil), rs.years...))
	if own := rs.ownYears(p); len(own) > 0 && len(own) < len(d.years) {
		d.years = own
	}
	from := "column " + letters(col)
	texts := columnTexts(p, col)
	rs.turnDays(p, texts)
	var both, dates []foundDate
	readable, clocks := 0, map[unit.Day]map[string]bool{}
	for _, text := range texts {
		f, ok := d.date(text)
		if !ok {
			continue
		}
		readable++
		dates = append(dates, f)
		if len(f.readings) > 1 {
			both = append(both, f)
		} else if r := f.readings[0]; r.y != 0 && f.clock != "" {
			if clocks[r.day()] == nil {
				clocks[r.day()] = map[string]bool{}
			}
			clocks[r.day()][f.clock] = true
		}
		if len(f.readings) == 1 && f.readings[0].y != 0 {
			d.years = append(d.years, f.readings[0].y)
		}
	}
	for _, c := range clocks {
		// Many moments on one day are when people finished, not starts.
		if len(c) > maxStarts {
			p.runs.clockIsSession = false
			break
		}
		p.runs.clockIsSession = p.runs.clockIsSession || len(c) > 1
	}
	if d.years = distinctYears(d.years); rs.o.YearSaid != "" {
		d.years = distinctYears(append([]int(nil), rs.years...))
	}
	if readable == 0 {
		return
	}
	p.Date = FoundDate{From: from, Why: p.Columns[col].Why}
	if d.weekday < 0 && len(d.years) > 1 {
		if w, ok := commonWeekday(texts, d); ok {
			d.weekday = w
			p.Date.Why += fmt.Sprintf("; the years are those in which all fall on a %s", time.Weekday(w))
		}
	}
	if len(both) == 0 {
		rs.askCopiedColumn(p, texts, evs)
		return
	}
	i := slices.IndexFunc(texts, func(text string) bool {
		f, ok := cellDate(text, d.date1904)
		return ok && len(f.readings) > 1
	})
	p.Date.Text = texts[i]
	// Which order? Dates that can only be read one way, weekdays, other places.
	order, why := rs.order, rs.orderBy
	if order == "" {
		order, why = weekdayOrder(dates, rs.wantedWeekday(p, -1))
	}
	if order == "" {
		for _, e := range evs {
			if e.settled() {
				for _, f := range both {
					for _, r := range f.readings {
						if r.day() == e.readings[0].day() && oneDay(both) {
							order, why = r.order, fmt.Sprintf("the %s says %s", e.from, e.text)
						}
					}
				}
			}
		}
	}
	if order == "" && rs.language != "" {
		order, why = "dmy", rs.language
	}
	late := 0
	for _, f := range both {
		if yearFirst(f.readings) {
			late++
		}
	}
	if order == "" && rs.o.DateOrder != "" && late < len(both) {
		order, why = rs.o.DateOrder, rs.o.orderWhy()
	}
	if order == "" {
		for _, r := range both[0].readings {
			if r.y != 0 {
				p.Date.Choices = append(p.Date.Choices, r.day())
			}
		}
		p.Date.ByOrder = byOrder(both)
		return
	}
	d.order = order
	p.Date.Why += "; " + map[string]string{"dmy": "day first", "mdy": "month first", "ymd": "year first"}[order] + ": " + why
}

// oneDay says whether all dates are of one day, however it is read.
func oneDay(dates []foundDate) bool {
	for _, f := range dates[1:] {
		if !slices.Equal(f.readings, dates[0].readings) {
			return false
		}
	}
	return true
}

// commonWeekday is the one weekday on which every date without a year can fall in
// one of the years, four dates or more: those of a season that goes on over the
// new year. ok is false where it is not the only one.
func commonWeekday(texts []string, d *dateReader) (weekday int, ok bool) {
	var days [][7]int // for each date, in how many of the years it falls on a weekday
	for _, text := range texts {
		f, read := cellDate(text, d.date1904)
		if !read || len(f.readings) != 1 || f.readings[0].y != 0 {
			continue
		}
		var on [7]int
		for _, y := range d.years {
			if r := f.readings[0]; validDate(y, r.m, r.d) {
				on[unit.NewDay(y, r.m, r.d).Weekday()]++
			}
		}
		days = append(days, on)
	}
	if len(days) < 4 {
		return 0, false
	}
	found := 0
	for w := range 7 {
		all := true
		for _, on := range days {
			all = all && on[w] == 1
		}
		if all {
			weekday, found = w, found+1
		}
	}
	return weekday, found == 1
}
