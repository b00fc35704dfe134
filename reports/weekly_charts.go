package reports

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// A spread needs this much history before a day is laid against it.
const (
	leastRuns  = 5
	leastTimes = 100
)

// A chart of fewer points says less than the list of them.
const (
	leastForSpread = 20 // times in the run
	leastForChart  = 6  // runs
)

// timesTab shows how the finish times were spread, against the course's
// earlier runs scaled to today's number of times.
func (d *weekly) timesTab() *table.Tab {
	var here, before int64
	for _, s := range d.spread {
		here += s.here
		before += s.before
	}
	if here < leastForSpread {
		return nil
	}
	enough := before >= leastTimes && len(d.runs)-1 >= leastRuns
	buckets := d.buckets(before)
	t := &table.Table{Name: "Times", Columns: []table.Column{
		{Head: "From", Kind: table.Clock}, {Head: "To", Kind: table.Clock, Width: 11}, {Head: "This run", Kind: table.Whole}}}
	c := &table.Chart{Title: "Number of finishers, minute by minute", X: "finish time in whole minutes", Category: chartLabel,
		Series: []table.Series{{Column: "This run"}}}
	if enough {
		t.Columns = append(t.Columns, table.Column{Head: "Usual here", Kind: table.Decimal})
		c.Series = append(c.Series, table.Series{Column: "Usual here", Line: true})
	}
	for i, b := range buckets {
		to := table.Number(b.minute*60 + 59)
		if i == len(buckets)-1 {
			to = table.Words("and over")
		}
		cells := []table.Value{table.Number(b.minute * 60), to, table.Number(b.here)}
		if enough {
			cells = append(cells, table.Number(float64(b.before)*float64(here)/float64(before)))
		}
		t.Add(nil, append(cells, table.Words(fmt.Sprint(b.minute)))...)
	}
	t.Columns = append(t.Columns, table.Column{Head: chartLabel, Hidden: true})
	says := fmt.Sprintf("%s in this run.", text.CountOf(int(here), "time", "times"))
	if n := int64(d.run.finishers) - here; n > 0 {
		says += fmt.Sprintf(" %s left out: without a name or a time, being checked, or no time of a race of their own, such as a back marker's.", text.CountOf(int(n), "finisher is", "finishers are"))
	}
	if enough {
		says += fmt.Sprintf(" \"Usual here\" is the spread of %d times in the %d runs before, scaled to today's number.", before, len(d.runs)-1)
	} else {
		says += fmt.Sprintf(" The course's usual spread is shown from %d earlier runs and %d times on.", leastRuns, leastTimes)
	}
	tab := &table.Tab{Name: "Times"}
	tab.Add(table.Title{Level: 1, Text: "How the times were spread"}, table.Para{Text: says}, table.ChartBlock{Chart: c}, table.Full{Table: t})
	return tab
}

// buckets fills the gaps between minutes and gathers the slowest half percent
// of all times in the last bucket, so that one walker does not squeeze the
// chart.
func (d *weekly) buckets(before int64) []spreadRow {
	total := before
	for _, s := range d.spread {
		total += s.here
	}
	var out []spreadRow
	var sum int64
	for _, s := range d.spread {
		if n := len(out); n > 0 && sum*200 >= total*199 {
			out[n-1].here += s.here
			out[n-1].before += s.before
			continue
		}
		for n := len(out); n > 0 && out[len(out)-1].minute+1 < s.minute; {
			out = append(out, spreadRow{minute: out[len(out)-1].minute + 1})
		}
		out = append(out, s)
		sum += s.here + s.before
	}
	return out
}

// chartLabel heads the column of words that a chart is labelled from: programs
// disagree on how to lay out an axis of real dates or times.
const chartLabel = "Chart label"

// belowChart is how many rows fit on a printed page below a chart of 16 lines.
const belowChart = 28

// attendanceTab shows how many came, run by run.
func (d *weekly) attendanceTab() *table.Tab {
	if len(d.runs) < 2 {
		return nil
	}
	t := &table.Table{Name: "Attendance", Columns: []table.Column{
		{Head: "Date", Kind: table.Day}, {Head: "Finishers", Kind: table.Whole},
		{Head: "Volunteers", Kind: table.Whole, Help: "on the volunteer list of the day; empty where there is none"},
		{Head: "Day against usual", Kind: table.Gap, Help: "seconds for somebody who takes 25:00, + is slower; empty where it can't be told"},
		{Head: "Remark", Max: 30}, {Head: chartLabel, Hidden: true, Help: "the date again, in words, as the chart shows it"}}}
	for _, r := range slices.Backward(d.runs) {
		cond, remark := table.Value{}, ""
		if r.state == "held" {
			cond = table.Maybe(r.condition)
		} else {
			remark = r.state
		}
		if r.session != "" {
			remark = joinWords(text.Session(r.session), remark)
		}
		finishers := table.Number(r.finishers)
		if r.state == "cancelled" {
			finishers = table.Value{}
		}
		t.Add(nil, table.On(r.day), finishers, table.Maybe(r.volunteers), cond, table.Words(remark), table.Words(shortDay(r.day)))
	}
	const weeks = 53
	c := &table.Chart{Title: "Number of finishers, run by run", X: "date", Category: chartLabel, Top: weeks, Newest: true, Height: 16, Axis: &table.Axis{},
		Series: []table.Series{{Column: "Finishers"}}}
	tab := &table.Tab{Name: "Attendance"}
	text := fmt.Sprintf("All %d runs in the sheets held here, the latest first.", len(d.runs))
	if len(d.runs) > weeks {
		text += fmt.Sprintf(" The chart shows the last %d.", weeks)
	}
	if len(d.runs) > belowChart+5 {
		tab.PrintRows = belowChart
		text += fmt.Sprintf(" On paper the last %d are listed.", belowChart)
	}
	tab.Add(table.Title{Level: 1, Text: "Attendance"}, table.Para{Text: text})
	if len(d.runs) >= leastForChart {
		tab.Add(table.ChartBlock{Chart: c})
	}
	tab.Add(table.Full{Table: t})
	return tab
}

func joinSentences(a, b string) string {
	return strings.TrimSpace(a + " " + b)
}

func joinWords(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}
