package sheet

import (
	"fmt"

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

// weekdayOrder finds the reading under which all dates fall on one weekday,
// as those of a weekly run do.
func weekdayOrder(both []foundDate, wanted int) (order, why string) {
	same := func(order string) (weekday, n int) {
		weekday = -1
		seen := map[unit.Day]bool{}
		for _, f := range both {
			for _, r := range f.readings {
				if r.order != order || r.y == 0 {
					continue
				}
				w := int(r.day().Weekday())
				if weekday >= 0 && w != weekday {
					return -1, 0
				}
				weekday = w
				seen[r.day()] = true
			}
		}
		return weekday, len(seen)
	}
	wd, nd := same("dmy")
	wm, nm := same("mdy")
	_, ny := same("ymd")
	switch {
	case wanted >= 0 && wd == wanted && wm != wanted:
		return "dmy", "the dates then fall on the course's weekday"
	case wanted >= 0 && wm == wanted && wd != wanted:
		return "mdy", "the dates then fall on the course's weekday"
	case ny >= 2 && ny >= len(both)/2 && nd == 0 && nm == 0:
		return "ymd", "the dates then all fall on one weekday"
	case nd >= 2 && nm == 0:
		return "dmy", "the dates then all fall on one weekday"
	case nm >= 2 && nd == 0:
		return "mdy", "the dates then all fall on one weekday"
	}
	return "", ""
}
