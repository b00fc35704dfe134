package reports

import (
	"sort"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

func (d *season) courseTab() *table.Tab {
	t := &table.Table{Name: "Courses", Columns: []table.Column{{Head: "Course", Max: 34}, {Head: "Distance"}, {Head: "Against average", Kind: table.Gap},
		{Head: "likely from", Kind: table.Gap}, {Head: "to", Kind: table.Gap}, {Head: "Index", Kind: table.Decimal}, {Head: "Shared runners", Kind: table.Whole},
		{Head: "How sure", Max: 20}}}
	rows := append([]courseRow(nil), d.courses...)
	sort.SliceStable(rows, func(i, j int) bool {
		a, b := &rows[i], &rows[j]
		switch {
		case (a.seconds == nil) != (b.seconds == nil):
			return a.seconds != nil
		case a.distance != b.distance:
			return a.distance < b.distance
		case a.seconds != nil && *a.seconds != *b.seconds:
			return *a.seconds < *b.seconds
		}
		return a.course < b.course
	})
	n := 0
	for _, c := range rows {
		if d.s.Course != "" && c.course != d.s.Course {
			continue
		}
		dist := ""
		if c.distance > 0 {
			dist = unit.Distance(c.distance)
		}
		if c.seconds != nil {
			n++
		}
		t.Add(nil, table.Words(c.name), table.Words(dist), table.Maybe(c.seconds), table.Maybe(c.secLow), table.Maybe(c.secHi), table.Maybe(c.index),
			table.Number(c.shared), table.Words(basisWords(c.basis)))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Courses"}
	tab.Add(table.Title{Level: 1, Text: "Courses, the fastest first"},
		table.Para{Text: "Seconds for somebody who takes 25:00, against the average of the courses of that distance that share runners; + is slower; with the range that holds the true figure nine times in ten (90 % interval). A fast course may be flatter, firmer, sheltered or measured differently. Courses of different distances are not compared. " + d.estimatedFrom()})
	if n >= 2 {
		tab.Add(table.ChartBlock{Chart: &table.Chart{Title: "Course speed: seconds for somebody who takes 25:00, with the likely range; + is slower", X: "course", Category: "Course", Top: n,
			Series: []table.Series{{Column: "Against average"}, {Column: "likely from", Line: true, Dots: true, Dashed: true}, {Column: "to", Line: true, Dots: true}}}})
	}
	tab.Add(table.Full{Table: t})
	return tab
}

// estimatedFrom says what the figures of course speed rest on: on all sheets,
// those after the season too.
func (d *season) estimatedFrom() string {
	return "Estimated from all sheets held here, up to " + longDay(d.latest) + "."
}

// basisWords says how sure a course's speed is, in the words of lapwing courses.
func basisWords(basis string) string {
	switch basis {
	case "published":
		return "sure enough to rank"
	case "provisional":
		return "provisional: shown, not ranked"
	}
	return basis
}

func (d *season) conditionsTab() *table.Tab {
	t := &table.Table{Name: "Conditions", Columns: []table.Column{{Head: "Date", Kind: table.Day}, {Head: "Course", Max: 34}, {Head: "Finishers", Kind: table.Whole},
		{Head: "Day against usual", Kind: table.Gap}, {Head: "likely from", Kind: table.Gap}, {Head: "to", Kind: table.Gap}, {Head: "Remark", Max: 18}, {Head: chartLabel, Hidden: true}}}
	for _, r := range d.runs {
		remark := text.Session(r.session)
		if r.state != "held" {
			remark = joinWords(remark, r.state)
		}
		t.Add(nil, table.On(r.day), table.Words(r.name), table.Number(r.finishers), table.Maybe(r.cond), table.Maybe(r.low), table.Maybe(r.hi),
			table.Words(remark), table.Words(shortDay(r.day)))
	}
	tab := &table.Tab{Name: "Conditions"}
	tab.Add(table.Title{Level: 1, Text: "Conditions through the season"},
		table.Para{Text: "How much slower (+) or faster (−) the same people were than on a usual day there, in seconds for somebody who takes 25:00, with the range that holds the true figure nine times in ten (90 % interval). Ground, heat, wind and crowding are all in it; it can't tell which. " + d.estimatedFrom()})
	if len(d.scopes()) == 1 {
		tab.Add(table.ChartBlock{Chart: &table.Chart{Title: "Day against usual: seconds for somebody who takes 25:00, + is slower", X: "date", Category: chartLabel, Rows: 60,
			Series: []table.Series{{Column: "Day against usual", Line: true}}}})
	}
	tab.Add(table.Full{Table: t})
	return tab
}
