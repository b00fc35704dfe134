package reports

import (
	"fmt"
	"math"
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// honours is the first page: what the season was, and who led it.
func (d *season) honours() *table.Tab {
	t := &table.Tab{Name: "Honours", OnePage: true}
	held, finishes := 0, 0
	for i := range d.runs {
		r := &d.runs[i]
		if r.takenPlace() {
			held++
		}
		finishes += int(r.finishers)
	}
	people, ran, pbs := map[int32]bool{}, map[int32]bool{}, 0
	for i := range d.results {
		people[d.results[i].runner], ran[d.results[i].run] = true, true
		if d.results[i].pb {
			pbs++
		}
	}
	fourth := table.Figure{Value: fmt.Sprint(finishes), Caption: "finishes in all"}
	who, runs := "named people", "runs held"
	if d.s.Club != "" {
		held, runs = len(ran), "runs with members"
		who, fourth = "members who ran", table.Figure{Value: fmt.Sprint(len(d.results)), Caption: "finishes of members"}
	}
	t.Add(table.Title{Level: 1, Text: d.heading()}, table.Para{Text: d.span(), Bold: true})
	switch {
	case d.awarded:
		t.Add(table.Para{Text: "As awarded when the season was closed, with the sheets up to " + longDay(min(d.latest, d.s.To)) + "."})
	case len(d.since) > 0:
		t.Add(table.Para{Text: "The season is closed and stays as awarded; this is how it would stand now. What differs is on the tab Since closing."})
	}
	t.Add(table.Big{Figures: []table.Figure{{Value: fmt.Sprint(held), Caption: runs}, {Value: fmt.Sprint(len(people)), Caption: who},
		{Value: fmt.Sprint(pbs), Caption: "personal bests"}, fourth}})
	const most = 5
	leaders := func(scope, sex string) *table.Table {
		x := &table.Table{Title: fmt.Sprintf("League, %s, %s", d.scopeName(scope), listName(sex)), None: "nobody ranked", Columns: []table.Column{
			{Head: "Rank", Kind: table.Place}, {Head: "Name"}, {Head: "Runs", Kind: table.Whole}, {Head: "Points", Kind: table.Whole}}}
		for _, l := range d.runTable[scope+"/"+sex] {
			if l.Rank > 0 && len(x.Rows) < most {
				x.Add(nil, lineRank(l), table.Words(d.name(l.ID)), table.Number(l.Runs), table.Number(l.Total))
			}
		}
		return x
	}
	scopes := d.scopes()
	const mostScopes = 4
	for _, scope := range scopes[:min(mostScopes, len(scopes))] {
		t.Add(table.Pair{Left: leaders(scope, "W"), Right: leaders(scope, "M")})
	}
	grades := &table.Table{Title: "Best age grades", None: "no certain ages", Columns: []table.Column{{Head: "Rank", Kind: table.Place}, {Head: "Name"},
		{Head: "Group"}, {Head: "Grade", Kind: table.Percent}}}
	rows := d.bestGrades()
	for i, r := range gradeRanksOf(rows) {
		if i < most {
			grades.Add(nil, rankValue(r), table.Words(d.name(rows[i].runner)), table.Words(groupLabel(d.people[rows[i].runner].sex, rows[i].group)), table.Number(rows[i].grade))
		}
	}
	improved := &table.Table{Title: "Most improved", None: "nobody sure enough", Columns: []table.Column{{Head: "Rank", Kind: table.Place}, {Head: "Name"},
		{Head: "Change %", Kind: table.Decimal}}}
	if d.s.To < d.latest {
		improved.None = "not worked out: the season is over"
	}
	for _, m := range d.improved {
		if m.Verdict == standing.Ranked && len(improved.Rows) < most {
			improved.Add(nil, rankValue(m.Rank), table.Words(d.name(m.Runner)), table.Number(m.Percent))
		}
	}
	t.Add(table.Pair{Left: grades, Right: improved})
	if len(scopes) > mostScopes {
		t.Add(table.Para{Text: fmt.Sprintf("The leagues of %d more courses are on the tab League.", len(scopes)-mostScopes)})
	}
	t.Add(table.Para{Text: "Full tables, records, courses and an explanation of every figure are on the other pages of this workbook."})
	return t
}

// bestGrades gives each adult's best certain age grade of the season, best
// first.
func (d *season) bestGrades() []*seasonResult {
	best := map[int32]*seasonResult{}
	for i := range d.results {
		r := &d.results[i]
		if !r.scores || !r.timed || !r.certain || r.grade <= 0 || r.grade >= 100 || r.protected || !d.listed(r) || d.people[r.runner].protected {
			continue
		}
		if b := best[r.runner]; b == nil || r.grade > b.grade {
			best[r.runner] = r // rows come by date: the earliest of equals stays
		}
	}
	out := make([]*seasonResult, 0, len(best))
	for _, r := range best {
		out = append(out, r)
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].grade != out[j].grade {
			return out[i].grade > out[j].grade
		}
		return out[i].runner < out[j].runner
	})
	return out
}

func gradeRanksOf(rows []*seasonResult) []standing.Rank {
	v := make([]int, len(rows))
	for i, r := range rows {
		v[i] = gradeOrder(r.grade)
	}
	return standing.Ranks(v)
}

func (d *season) gradeTab() *table.Tab {
	rows := d.bestGrades()
	if len(rows) == 0 {
		return nil
	}
	t := &table.Table{Name: "AgeGrade", Columns: []table.Column{{Head: "Rank", Kind: table.Place}, {Head: "Name", Max: 26}, {Head: "Group"},
		{Head: "Age grade", Kind: table.Percent}, {Head: "Time", Kind: table.Clock}, {Head: "On", Kind: table.Day}, {Head: "Course", Max: 34}}}
	for i, rank := range gradeRanksOf(rows) {
		r := rows[i]
		t.Add(nil, rankValue(rank), table.Words(d.name(r.runner)), table.Words(groupLabel(d.people[r.runner].sex, r.group)), table.Number(r.grade),
			table.Number(r.time), table.On(d.runs[r.run].day), table.Words(d.runs[r.run].name))
	}
	tab := &table.Tab{Name: "Age grade"}
	tab.Add(table.Title{Level: 1, Text: "By best age grade"},
		table.Para{Text: "Adults whose age on the day is certain, each with their best of the season; 100 and more only after checking."}, table.Full{Table: t})
	return tab
}

func (d *season) improvedTab() *table.Tab {
	tab := &table.Tab{Name: "Most improved"}
	tab.Add(table.Title{Level: 1, Text: "Most improved"})
	if d.s.To < d.latest {
		tab.Add(table.Para{Text: notWorkedOut})
		return tab
	}
	t := &table.Table{Name: "Improved", None: "Nobody passes: it takes four results in the last 12 weeks and four before, ten before the season, no long break, and nine chances in ten of being faster.",
		Columns: []table.Column{{Head: "Rank", Kind: table.Place}, {Head: "Name", Max: 22}, {Head: "Change %", Kind: table.Decimal},
			{Head: "8 in 10 from", Kind: table.Decimal}, {Head: "8 in 10 to", Kind: table.Decimal}, {Head: "Form before", Kind: table.Clock}, {Head: "Form now", Kind: table.Clock},
			{Head: "Results", Kind: table.Whole}, {Head: "Chance of being faster %", Kind: table.Whole}}}
	judged := 0
	for _, m := range d.improved {
		if m.Verdict == standing.NotSure {
			judged++
		}
		if m.Verdict != standing.Ranked {
			continue
		}
		judged++
		var before, now table.Value
		if p := d.people[m.Runner]; p.form != nil && p.change != nil {
			before, now = table.Number(math.Round(*p.form*math.Exp(-*p.change))), table.Number(math.Round(*p.form))
		}
		t.Add(nil, rankValue(m.Rank), table.Words(d.name(m.Runner)), table.Number(m.Percent), table.Number(m.Best), table.Number(m.Least), before, now,
			table.Number(len(d.days[m.Runner])), table.Number(min(99, math.Round(100*m.Probability))))
	}
	says := "Change of form over 12 weeks in percent of time, − is faster, after allowing for courses and days. Form: a good effort over 5 km on an average course and day. Ranked by the cautious end of the interval that holds the true change eight times in ten: a small change that is sure goes before a large one that is not."
	if len(t.Rows) > 0 {
		says += fmt.Sprintf(" Listed are %d of %s with enough results to be judged; each is faster with nine chances in ten or more, so one in ten of those listed may not be.", len(t.Rows), text.CountOf(judged, "adult", "adults"))
	}
	tab.Add(table.Para{Text: says + " Getting slower is nobody's fault and not listed."}, table.Full{Table: t})
	return tab
}

// notWorkedOut is said of the most improved where the season is over.
const notWorkedOut = "Not made for a season that is over: how form has changed is known only up to each person's last result. It is made while the season is the newest, and kept when the season is closed then."
