package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/unit"
)

// settleOrder looks for dates in figures that can be read only one way.
func (rs *runSettler) settleOrder(parts []*Part, evs [][]evidence) {
	votes := map[string]string{}
	vote := func(f foundDate, text string) {
		if f.sep == '.' { // says nothing of dates with strokes
			if len(f.readings) == 1 && f.readings[0].order == "dmy" && rs.dotted == "" {
				rs.dotted = text
			}
			return
		}
		if len(f.readings) == 1 && (f.readings[0].order == "dmy" || f.readings[0].order == "mdy") && f.readings[0].m != f.readings[0].d {
			if _, ok := votes[f.readings[0].order]; !ok {
				votes[f.readings[0].order] = text
			}
			return
		}
		if len(f.readings) > 1 && f.weekday >= 0 && f.readings[0].y != 0 {
			if fit := keep(f.readings, func(r reading) bool { return int(r.day().Weekday()) == f.weekday }); len(fit) == 1 {
				if _, ok := votes[fit[0].order]; !ok && fit[0].order != "ymd" {
					votes[fit[0].order] = text
				}
			}
		}
	}
	for i, p := range parts {
		for _, e := range evs[i] {
			vote(e.foundDate, e.text)
		}
		if c := p.Index(Date); c >= 0 {
			for _, text := range columnTexts(p, c) {
				if f, ok := cellDate(text, false); ok {
					vote(f, text)
				}
			}
		}
	}
	if len(votes) == 1 {
		for o, text := range votes {
			rs.order, rs.orderBy = o, fmt.Sprintf("%q can only be %s first", text, map[string]string{"dmy": "day", "mdy": "month"}[o])
		}
	}
	if rs.order == "" && len(votes) == 0 {
		rs.order = rs.orderByHand(evs)
	}
	if rs.o.OrderSaid != "" {
		rs.order, rs.orderBy = rs.o.OrderSaid, "as answered"
	}
	rs.sheet.DateOrder = rs.order
	for _, p := range parts {
		if examples, ok := dayFirstLanguage(p); ok && rs.language == "" {
			rs.language = "the day comes first in the language of the headings (" + examples + ")"
		}
	}
}

// orderByHand is the order of day and month in which a date on the sheet says the
// date that was given by hand; "" where it says it in none or in both.
func (rs *runSettler) orderByHand(evs [][]evidence) string {
	day, err := unit.ParseDay(rs.o.Date)
	if err != nil {
		return ""
	}
	for _, list := range evs {
		for _, e := range list {
			said := keep(e.readings, func(r reading) bool { return r.y != 0 && r.day() == day })
			if len(e.readings) > 1 && len(said) == 1 && said[0].order != "ymd" {
				return said[0].order
			}
		}
	}
	return ""
}

// orderWhy says where the order of day and month is from that the sheet itself
// leaves open.
func (o *Options) orderWhy() string {
	if o.OrderWhy != "" {
		return o.OrderWhy
	}
	return "the configured order of day and month"
}

// byOrder lists the days that dates in figures would be, by the order of day and
// month; nil where none depends on it.
func byOrder(dates []foundDate) map[string][]unit.Day {
	var out map[string][]unit.Day
	for _, f := range dates {
		if len(f.readings) < 2 {
			continue
		}
		for _, r := range f.readings {
			if r.y != 0 && (r.order == "dmy" || r.order == "mdy") {
				if out == nil {
					out = map[string][]unit.Day{}
				}
				out[r.order] = append(out[r.order], r.day())
			}
		}
	}
	return out
}

// weekdayOrder finds the reading under which all dates of a column fall on one weekday, as
// those of a weekly run do. A date that can be read one way only, 08/08/2026, counts
// under every reading.
func weekdayOrder(dates []foundDate, wanted int) (order, why string) {
	both := 0
	by := map[string][]unit.Day{}
	for _, f := range dates {
		if len(f.readings) > 1 {
			both++
		}
		for _, r := range f.readings {
			for _, order := range []string{"dmy", "mdy", "ymd"} {
				if r.y != 0 && (r.order == order || len(f.readings) == 1) {
					by[order] = append(by[order], r.day())
				}
			}
		}
	}
	wd, nd := oneWeekday(by["dmy"])
	wm, nm := oneWeekday(by["mdy"])
	_, ny := oneWeekday(by["ymd"])
	switch {
	case wanted >= 0 && wd == wanted && wm != wanted:
		return "dmy", "the dates then fall on the course's weekday"
	case wanted >= 0 && wm == wanted && wd != wanted:
		return "mdy", "the dates then fall on the course's weekday"
	case ny >= 2 && ny >= both/2 && nd == 0 && nm == 0:
		return "ymd", "the dates then all fall on one weekday"
	}
	if order, _ := OneWeekday(by, nil); order != "" {
		return order, "the dates then all fall on one weekday"
	}
	return "", ""
}

// oneWeekday is the weekday on which all days fall, with how many different days they are;
// -1 and 0 where there are none, or they fall on several.
func oneWeekday(days []unit.Day) (weekday, n int) {
	weekday = -1
	seen := map[unit.Day]bool{}
	for _, d := range days {
		w := int(d.Weekday())
		if weekday >= 0 && w != weekday {
			return -1, 0
		}
		weekday = w
		seen[d] = true
	}
	return weekday, len(seen)
}

// OneWeekday is the order of day and month, "dmy" or "mdy", under which days all fall on
// one weekday, as those of a weekly run do, and with how many different days; sure are days
// of the same course that are settled. "" where that is so under both, or under neither;
// and where two days lie further apart than under the other order: 4 March and 4 November
// are Wednesdays, and as likely 3 and 11 April.
func OneWeekday(byOrder map[string][]unit.Day, sure []unit.Day) (order string, n int) {
	if len(byOrder["dmy"]) == 0 || len(byOrder["dmy"]) != len(byOrder["mdy"]) { // 31-03-25, which may begin with the year
		return "", 0
	}
	dmy, mdy := append(slices.Clone(byOrder["dmy"]), sure...), append(slices.Clone(byOrder["mdy"]), sure...)
	_, nd := oneWeekday(dmy)
	_, nm := oneWeekday(mdy)
	apart := func(days []unit.Day) unit.Day { return slices.Max(days) - slices.Min(days) }
	switch {
	case nd >= 2 && nm == 0 && (nd > 2 || apart(dmy) <= apart(mdy)):
		return "dmy", nd
	case nm >= 2 && nd == 0 && (nm > 2 || apart(mdy) <= apart(dmy)):
		return "mdy", nm
	}
	return "", 0
}

// weeklyOrder settles the order of day and month of a course's tables of which none shows it
// alone: under one order all of 01/08, 08/08 and 05/09 are Saturdays, under the other they
// are not.
func (rs *runSettler) weeklyOrder(parts []*Part) {
	type course struct {
		by   map[string][]unit.Day
		sure []unit.Day
		open []*Part
	}
	courses := map[string]*course{}
	for _, p := range parts {
		c := courses[p.Course.Value]
		switch {
		case p.Course.Value == "":
			continue
		case c == nil:
			c = &course{by: map[string][]unit.Day{}}
			courses[p.Course.Value] = c
		}
		switch {
		case p.Date.Settled:
			c.sure = append(c.sure, p.Date.Day)
		case p.Date.onlyOrder() && len(p.Date.Choices) == 2 && p.Date.ChoiceFrom == nil && !strings.HasPrefix(p.Date.From, "column"):
			c.open = append(c.open, p)
			for order, days := range p.Date.ByOrder {
				c.by[order] = append(c.by[order], days...)
			}
		}
	}
	for _, c := range courses {
		order, _ := OneWeekday(c.by, c.sure)
		if order == "" {
			continue
		}
		for _, p := range c.open {
			day := p.Date.ByOrder[order][0]
			p.Date = FoundDate{Day: day, Settled: true, Text: p.Date.Text, From: p.Date.From,
				Why: fmt.Sprintf("all dates of the sheet then fall on a %s", day.Weekday())}
			p.runs.day, p.runs.dayOK = day, true
		}
	}
}
