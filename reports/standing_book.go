package reports

import (
	"fmt"
	"strings"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// book is the card as a workbook: one tab a section with a table, the whole
// history with a chart, and notes.
func (c *Card) book(i issueOf) *table.Book {
	b := &table.Book{Title: c.title(c.name), Subject: "Standing of a runner", Made: c.latest.String(),
		Footer: fmt.Sprintf("Issue %d, standing on %s", i.Number, c.latest.Time().Format("2 January 2006"))}
	first := &table.Tab{Name: "Card"}
	first.Add(table.Title{Level: 1, Text: c.title(c.name)}, table.Para{Text: "Standing on " + longDay(c.latest), Bold: true})
	var tabs []*table.Tab
	for _, s := range c.sections(false) {
		first.Add(table.Title{Level: 2, Text: s.title})
		for _, p := range s.paras {
			first.Add(table.Para{Text: p})
		}
		if s.table == nil || s.tab == "" {
			continue
		}
		first.Add(table.Para{Text: "The table is on the tab " + s.tab + "."})
		t := *s.table
		t.Name = strings.ReplaceAll(s.tab, " ", "")
		tab := &table.Tab{Name: s.tab}
		tab.Add(table.Title{Level: 1, Text: s.title})
		for _, p := range s.paras {
			tab.Add(table.Para{Text: p})
		}
		tab.Add(table.Full{Table: &t})
		tabs = append(tabs, tab)
	}
	b.Tabs = append([]*table.Tab{first, c.historyTab()}, tabs...)
	return b
}

// historyTab is every result, with a chart of times and adjusted times.
func (c *Card) historyTab() *table.Tab {
	t := &table.Table{Name: "History", None: "No results.", Columns: []table.Column{
		{Head: "Date", Kind: table.Day}, {Head: "Course", Max: 20}, {Head: "Distance"}, {Head: "Place", Kind: table.Place},
		{Head: "Time", Kind: table.Clock}, {Head: "Adjusted", Kind: table.Clock}, {Head: "Grade", Kind: table.Percent},
		{Head: "Effort", Max: 16}, {Head: "Note", Max: 14}, {Head: chartLabel}}}
	judged := !c.protected
	for i := range c.results {
		r := &c.results[i]
		adjusted, grade, effort := table.Value{}, table.Value{}, ""
		if judged {
			adjusted, grade, effort = ceilOf(r.adjusted), table.Maybe(r.grade), effortWords[r.effort]
		}
		dist := ""
		if r.distance > 0 {
			dist = distance(r.distance)
		}
		t.Add(nil, table.On(r.day), table.Words(c.courseName(r.course)), table.Words(dist), table.Maybe(r.position), table.Maybe(r.timeS),
			adjusted, grade, table.Words(effort), table.Words(r.words()), table.Words(shortDay(r.day)))
	}
	tab := &table.Tab{Name: "History"}
	tab.Add(table.Title{Level: 1, Text: "Every result"})
	if judged && len(c.distances()) == 1 && len(c.results) >= 3 {
		const shown = 60
		tab.Add(table.ChartBlock{Chart: &table.Chart{Title: "Times and adjusted times", X: "run", Y: "time", Category: chartLabel, Rows: shown,
			Series: []table.Series{{Column: "Time", Line: true, Dashed: true}, {Column: "Adjusted", Line: true}}}})
	}
	tab.Add(table.Full{Table: t})
	return tab
}

func shortDay(d unit.Day) string { return d.Time().Format("2 Jan 06") }
