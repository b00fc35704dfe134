package reports

import (
	"fmt"
	"math"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// cardGrid is the columns of the card's tab: every table of it takes them from
// the left.
var cardGrid = []float64{24, 13, 13, 13, 13, 20}

// book is the card as a workbook: the card itself, the whole history with a
// chart, and notes.
func (c *Card) book(i issueOf) *table.Book {
	b := &table.Book{Title: c.title(c.name), Subject: text.StandingBook, Made: c.latest.String(),
		Footer: fmt.Sprintf("Issue %d; standing on %s", i.Number, c.latest.Long())}
	card := &table.Tab{Name: "Card", Grid: cardGrid}
	card.Add(table.Title{Level: 1, Text: c.title(c.name)}, table.Para{Text: "Standing on " + longDay(c.latest), Bold: true},
		table.Para{Text: "For the person and the results desk, not for publication."})
	for _, s := range c.sections(false) {
		if s.history || s.chart { // the tab History has these and all others
			continue
		}
		card.Add(table.Title{Level: 2, Text: s.title})
		for _, p := range s.paras {
			card.Add(table.Para{Text: p})
		}
		if s.table != nil {
			card.Add(table.Small{Table: s.table})
		}
	}
	card.Add(table.Para{Text: "Every result is on the tab History."})
	b.Tabs = []*table.Tab{card, c.historyTab(), c.notes(i)}
	return b
}

// notes explains what the card and the history leave open.
func (c *Card) notes(i issueOf) *table.Tab {
	n := newNotes("Notes", fmt.Sprintf("Issue %d", i.Number), i.Desk) // it is for the person and the desk
	add := n.add
	for _, m := range noteSigns {
		add(m.Sign, upperFirst(m.Text)+".")
	}
	add("Season", fmt.Sprintf("This season: since %s.", longDay(c.from)))
	add("Age groups", c.o.groupRule())
	if !c.protected {
		add("Adjusted", "The time on an average course of that distance and an average day, rounded up to the second. It allows for hills, ground and weather, not for effort. Empty where course or day can't be told.")
		add("Form", "What a good effort would have taken that day, on an average course and day. It is estimated from all results, earlier and later ones, with course, day and effort told apart, so values of the past may still move a little. The likely range beside it is wide where results are few or long ago.")
		add("Likely", "Nine times in ten the true value lies within what is given as likely. For a change of form: eight times in ten.")
		add("Effort", "How a time compares with form: near recent best, behind it, well behind it (over 8 %), or unclear; a best is never called behind. A guess from the times, nothing about trying.")
		add("Grade", "The age standard for the distance, sex and age as a percentage of the time. Ranked only where the age is certain and the grade under 100."+edition(c.o.AgeStandard))
		add("Rank", "Among everybody in these sheets with a result in the same age group, each with their best. Equal bests share a rank.")
	}
	n.health()
	n.madeWith(c.o)
	return n.tab("Notes")
}

// edition names the tables of age standards in use.
func edition(year int) string {
	if year == 0 {
		return ""
	}
	return fmt.Sprintf(" Road standards, edition %d.", year)
}

// historyTab is every result, with a chart of times and adjusted times.
func (c *Card) historyTab() *table.Tab {
	t := &table.Table{Name: "History", None: "No results.", Columns: []table.Column{
		{Head: "Date", Kind: table.Day}, {Head: "Course", Max: 20}, {Head: "Distance"}, {Head: "Place", Kind: table.Place},
		{Head: "Time", Kind: table.Clock}, {Head: "Adjusted", Kind: table.Clock}, {Head: "Form", Kind: table.Clock}, {Head: "likely from", Kind: table.Clock}, {Head: "to", Kind: table.Clock}, {Head: "Grade", Kind: table.Percent},
		{Head: "Effort", Max: 16}, {Head: "Note", Max: 14}, {Head: chartLabel, Hidden: true}}}
	judged := !c.protected
	for i := range c.results {
		r := &c.results[i]
		var adjusted, form, low, high, grade table.Value
		effort := ""
		if judged {
			adjusted, grade, effort = ceilOf(r.adjusted), table.Maybe(r.grade), r.effortWord()
			s, from, to := r.form()
			form, low, high = table.Number(math.Round(s)), table.Number(math.Round(from)), table.Number(math.Round(to))
		}
		_, words := r.words()
		dist := ""
		if r.distance > 0 {
			dist = unit.Distance(r.distance)
		}
		t.Add(nil, table.On(r.day), table.Words(c.courseName(r.course)), table.Words(dist), table.Maybe(r.position), table.Maybe(r.timeS),
			adjusted, form, low, high, grade, table.Words(effort), table.Words(words), table.Words(shortDay(r.day)))
	}
	tab := &table.Tab{Name: "History"}
	tab.Add(table.Title{Level: 1, Text: "Every result"})
	if judged && len(c.distances()) == 1 && len(c.results) >= 3 {
		const shown = 60
		tab.Add(table.ChartBlock{Chart: &table.Chart{Title: "Times, adjusted times and form with its likely range; lower is faster", X: "run", Category: chartLabel, Rows: shown, Axis: c.timeAxis(shown),
			Series: []table.Series{{Column: "Time", Line: true, Dots: true, Dashed: true}, {Column: "Adjusted", Line: true, Dots: true}, {Column: "Form", Line: true, Plain: true},
				{Column: "likely from", Line: true, Plain: true, Dashed: true}, {Column: "to", Line: true, Plain: true, Dashed: true}}}})
	}
	tab.Add(table.Full{Table: t})
	return tab
}

// timeAxis holds the times of the last results, in whole minutes.
func (c *Card) timeAxis(last int) *table.Axis {
	lo, hi := math.Inf(1), 0.0
	for i := max(0, len(c.results)-last); i < len(c.results); i++ {
		r := &c.results[i]
		_, low, high := r.form()
		for _, v := range []float64{float64(or0(r.timeS)), float64(ceilS(r.adjusted)), low, high} {
			if v > 0 {
				lo, hi = min(lo, v), max(hi, v)
			}
		}
	}
	if hi == 0 {
		return nil
	}
	step := 60.0
	lo, hi = math.Floor(lo/step)*step, math.Ceil(hi/step)*step
	for (hi-lo)/step > 10 {
		step *= 2
	}
	return &table.Axis{Min: lo, Max: hi, Step: step}
}

func shortDay(d unit.Day) string { return d.Time().Format("2 Jan 06") }
