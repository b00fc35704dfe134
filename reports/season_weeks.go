package reports

import (
	"fmt"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// mostLines is how many courses have a line of their own in a chart; of more,
// readers could not tell them apart.
const mostLines = 4

// week is what happened in one calendar week, Monday to Sunday.
type week struct {
	monday          unit.Day
	held, finishers int
	helped          map[string]bool
	cond            map[string]*mean // by course
	all             mean
}

// mean is a mean weighted by finishers.
type mean struct{ sum, weight float64 }

func (m *mean) add(v float64, n int32) { m.sum, m.weight = m.sum+v*float64(n), m.weight+float64(n) }

func (m *mean) value() table.Value {
	if m == nil || m.weight == 0 {
		return table.Value{}
	}
	return table.Number(m.sum / m.weight)
}

// monday is the first day of the calendar week (ISO 8601) of a day.
func monday(d unit.Day) unit.Day { return d - unit.Day((int(d.Time().Weekday())+6)%7) }

// weeks gives every week from the first run of the season to the last, those
// without a run included.
func (d *season) weeks() []week {
	if len(d.runs) == 0 {
		return nil
	}
	first, last := monday(d.runs[0].day), monday(d.runs[len(d.runs)-1].day)
	out := make([]week, (last-first)/7+1)
	for i := range out {
		out[i] = week{monday: first + unit.Day(7*i), helped: map[string]bool{}, cond: map[string]*mean{}}
	}
	for _, r := range d.runs {
		w := &out[(r.day-first)/7]
		w.finishers += int(r.finishers)
		if r.takenPlace() {
			w.held++
		}
		if r.state == "held" && r.cond != nil && r.finishers > 0 {
			if w.cond[r.course] == nil {
				w.cond[r.course] = &mean{}
			}
			w.cond[r.course].add(*r.cond, r.finishers)
			w.all.add(*r.cond, r.finishers)
		}
	}
	for _, h := range d.helped {
		if i := int(h.day-first) / 7; h.day >= first && i < len(out) {
			out[i].helped[fmt.Sprint(h.runner, h.name, h.day, h.course)] = true
		}
	}
	return out
}

// weeksTab is attendance and conditions week by week, with a chart of each. Few
// courses have a column each; of many, the mean is shown.
func (d *season) weeksTab() *table.Tab {
	weeks := d.weeks()
	if d.s.Club != "" || len(weeks) < 2 {
		return nil
	}
	courses := d.scopes()
	t := &table.Table{Name: "Weeks", Columns: []table.Column{{Head: "Week of", Kind: table.Day, Help: "its Monday"}, {Head: "Runs held", Kind: table.Whole},
		{Head: "Finishers", Kind: table.Whole}, {Head: "Volunteer days", Kind: table.Whole}}}
	lines := &table.Chart{Title: "Day against usual: seconds for somebody who takes 25:00, + is slower", X: "week of", Category: chartLabel}
	heads := []string{"All courses"}
	if len(courses) <= mostLines {
		heads = nil
		for _, c := range courses {
			heads = append(heads, d.courseName(c))
		}
	}
	for i, h := range heads {
		t.Columns = append(t.Columns, table.Column{Head: h, Kind: table.Gap, Help: "day against usual, seconds for somebody who takes 25:00"})
		lines.Series = append(lines.Series, table.Series{Column: h, Line: true, Dots: len(heads) == 1, Dashed: i%2 == 1})
	}
	t.Columns = append(t.Columns, table.Column{Head: chartLabel, Hidden: true})
	known := 0
	for _, w := range weeks {
		helped := table.Value{}
		if len(w.helped) > 0 {
			helped = table.Number(len(w.helped))
		}
		cells := []table.Value{table.On(w.monday), table.Number(w.held), table.Number(w.finishers), helped}
		if len(courses) <= mostLines {
			for _, c := range courses {
				cells = append(cells, w.cond[c].value())
			}
		} else {
			cells = append(cells, w.all.value())
		}
		if w.all.weight > 0 {
			known++
		}
		t.Add(nil, append(cells, table.Words(shortDay(w.monday)))...)
	}
	tab := &table.Tab{Name: "Weeks"}
	text := "Calendar weeks, Monday to Sunday. Day against usual: how much slower (+) or faster (\u2212) the same people were than on a usual day there, in seconds for somebody who takes 25:00"
	if len(courses) > mostLines {
		text += fmt.Sprintf("; the mean of %d courses, weighted by finishers", len(courses))
	}
	tab.Add(table.Title{Level: 1, Text: "Week by week"}, table.Para{Text: text + "."})
	if len(weeks) >= leastForChart {
		tab.Add(table.ChartBlock{Chart: &table.Chart{Title: "Finishers, week by week", X: "week of", Category: chartLabel, Axis: &table.Axis{}, Height: 16,
			Series: []table.Series{{Column: "Finishers"}}}})
		if known >= leastForChart {
			lines.Height = 16
			tab.Add(table.ChartBlock{Chart: lines})
		}
	}
	tab.Add(table.Full{Table: t})
	return tab
}
