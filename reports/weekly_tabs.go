package reports

import (
	"fmt"
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// resultTab is the full result, everybody who finished, in order of place.
func (d *weekly) resultTab() *table.Tab {
	group := "age group on the day, empty where the age is not certain"
	if !d.o.groupsByDay() {
		group = "age group by the rule on the tab Notes, empty where it is not certain"
	}
	t := &table.Table{Name: "Result", Legend: d.legend(), None: "Nobody finished.", Columns: []table.Column{
		{Head: "Place", Kind: table.Place, Help: "position on the sheet; = where the sheet says that it is shared"},
		{Head: "Time", Kind: table.Clock, Help: "finish time in whole seconds, fractions rounded up as in road races"},
		{Head: "Name", Max: 20, Help: "first name and initial for anybody who may be under 18; Anonymous for who asked"},
		{Head: "Group", Help: group},
		{Head: "In group", Kind: table.Place, Help: "place among the named runners and walkers whose group is certain"},
		{Head: "Age grade", Kind: table.Percent, Help: "see below; ~ where more than one age is possible"},
		{Head: "Club", Max: 16, Help: "as on the sheet; not for anybody who may be under 18"},
		{Head: "Note", Max: 12, Help: "signs are explained above the table"},
	}}
	for i := range d.results {
		r := &d.results[i]
		if !r.finished() {
			continue
		}
		signs, note := d.marks(r)
		club := r.club
		if r.protected || r.hidden || r.status == "unnamed" {
			club = ""
		}
		t.Add(signs, placeOf(r), table.Maybe(r.timeS), table.Words(r.publicName()), table.Words(r.shown), rankValue(r.groupPlace),
			r.publicGrade(), table.Words(club), table.Words(note))
	}
	tab := &table.Tab{Name: "Result"}
	tab.Add(table.Title{Level: 1, Text: "Result"}, table.Para{Text: d.countsSentence()}, table.Full{Table: t})
	return tab
}

// counts gives the three counts.
func (d *weekly) counts() string {
	num := func(n int32, one, many string) string { return text.CountOf(int(n), one, many) }
	return fmt.Sprintf("%s: %s, %s, %s.", num(d.run.finishers, "finisher", "finishers"),
		num(d.run.times, "time", "times"), num(d.run.positions, "place", "places"), num(d.run.names, "name", "names"))
}

// countsSentence gives the three counts and what they leave open.
func (d *weekly) countsSentence() string {
	s := d.counts()
	if d.run.unnamed > 0 {
		s += fmt.Sprintf(" %s without a name; if it was you, please tell the results desk.", text.CountOf(int(d.run.unnamed), "finisher is", "finishers are"))
	}
	return s
}

// bestsTab lists the bests of each kind with their margins.
func (d *weekly) bestsTab() *table.Tab {
	t := &table.Table{Name: "Bests", Legend: d.legend(), Columns: []table.Column{
		{Head: "Best"}, {Head: "Name", Max: 28}, {Head: "Group"}, {Head: "Time", Kind: table.Clock},
		{Head: "Faster by", Kind: table.Clock, Help: "than the best before; not shown for anybody who may be under 18"},
		{Head: "In a row", Kind: table.Whole, Help: "how many PBs in a row, from two on"},
	}}
	for _, kind := range []struct {
		sign   string
		is     func(*resultRow) bool
		margin func(*resultRow) *int32
	}{
		{"PB", func(r *resultRow) bool { return r.isPB }, func(r *resultRow) *int32 { return r.pbMargin }},
		{"CB", func(r *resultRow) bool { return r.isCourseBest && !r.isPB }, func(r *resultRow) *int32 { return r.courseMargin }},
		{"AB", func(r *resultRow) bool { return r.isAdjustedBest && !r.protected }, func(r *resultRow) *int32 { return nil }},
	} {
		rows := d.pick(func(r *resultRow) bool { return r.trusted() && kind.is(r) })
		margin := func(r *resultRow) *int32 {
			if r.protected {
				return nil
			}
			return kind.margin(r)
		}
		byMargin(rows, margin)
		for _, r := range rows {
			inRow := table.Value{}
			if kind.sign == "PB" && r.pbStreak > 1 && !r.protected {
				inRow = table.Number(r.pbStreak)
			}
			t.Add([]string{kind.sign}, table.Words(kind.sign), table.Words(r.publicName()), table.Words(r.shown),
				table.Maybe(r.timeS), table.Maybe(margin(r)), inRow)
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Bests"}
	tab.Add(table.Title{Level: 1, Text: "Bests of the day"}, table.Full{Table: t})
	return tab
}

// groupsTab lists the first three of each age group.
func (d *weekly) groupsTab() *table.Tab {
	t := &table.Table{Name: "Groups", Whole: "Group", Columns: []table.Column{
		{Head: "Group"}, {Head: "In group", Kind: table.Place}, {Head: "Name", Max: 28},
		{Head: "Time", Kind: table.Clock}, {Head: "Age grade", Kind: table.Percent}, {Head: "Place", Kind: table.Place}}}
	rows := d.pick(func(r *resultRow) bool { return r.groupPlace.N >= 1 && r.groupPlace.N <= 3 })
	sort.SliceStable(rows, func(i, j int) bool {
		a, b := rows[i], rows[j]
		if x, y := groupOrder(a.group), groupOrder(b.group); x != y {
			return x < y
		}
		if a.shown != b.shown {
			return a.shown > b.shown // W, then M
		}
		return a.groupPlace.N < b.groupPlace.N
	})
	for _, r := range rows {
		t.Add(nil, table.Words(r.shown), rankValue(r.groupPlace), table.Words(r.publicName()), table.Maybe(r.timeS), r.publicGrade(), placeOf(r))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Groups"}
	tab.Add(table.Title{Level: 1, Text: "First three of each age group"}, table.Full{Table: t})
	return tab
}

// firstPage is how many rows of a list the first printed page takes, a line or
// two of explanation above them.
const firstPage = 45

// gradesTab ranks by age grade whose age is certain.
func (d *weekly) gradesTab() *table.Tab {
	rows := d.graded()
	if len(rows) == 0 {
		return nil
	}
	t := &table.Table{Name: "AgeGrade", Columns: []table.Column{
		{Head: "Rank", Kind: table.Place}, {Head: "Name", Max: 28}, {Head: "Group"},
		{Head: "Age grade", Kind: table.Percent}, {Head: "Time", Kind: table.Clock}, {Head: "Place", Kind: table.Place}}}
	ranks := gradeRanks(rows)
	for i, r := range rows {
		t.Add(nil, rankValue(ranks[i]), table.Words(r.publicName()), table.Words(r.shown), table.Number(*r.grade), table.Maybe(r.timeS), placeOf(r))
	}
	tab := &table.Tab{Name: "Age grade"}
	text := "Adults whose age on the day is certain. " + d.gradeMeaning()
	if len(t.Rows) > firstPage+firstPage/2 {
		tab.PrintRows = firstPage
		text += fmt.Sprintf(" On paper the first %d; everybody's age grade is in the result.", firstPage)
	}
	tab.Add(table.Title{Level: 1, Text: "By age grade"}, table.Para{Text: text}, table.Full{Table: t})
	return tab
}

func (d *weekly) gradeMeaning() string {
	s := "Age grade: the age standard for the distance, sex and age, divided by the time, in percent"
	if d.o.AgeStandard > 0 {
		s += fmt.Sprintf(" (road standards, edition %d)", d.o.AgeStandard)
	}
	return s + "."
}

// peopleTab lists newcomers, visitors, milestones and weeks in a row.
func (d *weekly) peopleTab() *table.Tab {
	t := &table.Table{Name: "People", Columns: []table.Column{
		{Head: "What", Max: 30}, {Head: "Name", Max: 28}, {Head: "Group"}, {Head: "Number", Kind: table.Whole}, {Head: "Since", Kind: table.Day}}}
	for _, r := range d.milestones() {
		t.Add(nil, table.Words("milestone (runs)"), table.Words(r.publicName()), table.Words(r.shown), table.Number(*r.milestone))
	}
	for _, h := range d.helperMilestones() {
		t.Add(nil, table.Words("milestone (days helped)"), table.Words(h.name), table.Words(""), table.Number(h.milestone))
	}
	for _, r := range d.pick(func(r *resultRow) bool { return r.trusted() && r.newcomer != nil && *r.newcomer }) {
		t.Add(nil, table.Words("newcomer"), table.Words(r.publicName()), table.Words(r.shown), table.Value{})
	}
	for _, r := range d.pick(func(r *resultRow) bool {
		return r.trusted() && r.visitor != nil && *r.visitor && (r.newcomer == nil || !*r.newcomer)
	}) {
		t.Add(nil, table.Words("visitor"), table.Words(r.publicName()), table.Words(r.shown), table.Maybe(r.total))
	}
	told := len(t.Rows) // all of them are printed
	for _, r := range d.streaks() {
		t.Add(nil, table.Words("weeks in a row"), table.Words(r.publicName()), table.Words(r.shown), table.Number(r.streak), table.On(r.since.Day))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	says := "Newcomer: first run anywhere in these records. Visitor: first run on this course; the number is all their runs so far."
	if _, known := d.newcomers(); !known {
		says = "Newcomers and visitors are not listed: the sheets held here do not go back to the beginning, so nobody can tell."
	}
	tab := &table.Tab{Name: "People"}
	if page := (told/firstPage + 1) * firstPage; len(t.Rows) > page+firstPage/2 {
		tab.PrintRows = page
		says += fmt.Sprintf(" On paper the first %d lines; everybody's weeks in a row are on the screen.", page)
	}
	tab.Add(table.Title{Level: 1, Text: "Milestones, newcomers, visitors and weeks in a row"}, table.Para{Text: says}, table.Full{Table: t})
	return tab
}

// wheelsTab lists those on wheels by time, each kind apart: they have places of
// their own and stand in no other list of places.
func (d *weekly) wheelsTab() *table.Tab {
	t := &table.Table{Name: "Wheels", Columns: []table.Column{{Head: "On", Max: 32}, {Head: "In this list", Kind: table.Place}, {Head: "Name", Max: 28},
		{Head: "Time", Kind: table.Clock}, {Head: "Place", Kind: table.Place}}}
	for _, kind := range []string{"racing wheelchair or handcycle", "day wheelchair or frame"} {
		rows := d.pick(func(r *resultRow) bool { return r.takingPart == kind && r.trusted() && r.finished() && r.timeS != nil })
		sort.SliceStable(rows, func(i, j int) bool { return *rows[i].timeS < *rows[j].timeS })
		times := make([]int32, len(rows))
		for i, r := range rows {
			times[i] = *r.timeS
		}
		for i, rank := range standing.Ranks(times) {
			r := rows[i]
			t.Add(nil, table.Words(kind), rankValue(rank), table.Words(r.publicName()), table.Number(*r.timeS), placeOf(r))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Wheels"}
	tab.Add(table.Title{Level: 1, Text: "On wheels"}, table.Full{Table: t})
	return tab
}

func (d *weekly) recordsTab() *table.Tab {
	rows, of := d.publicRecords()
	if len(rows) == 0 {
		return nil
	}
	t := &table.Table{Name: "Records", Columns: []table.Column{
		{Head: "Group"}, {Head: "Name", Max: 22}, {Head: "Time", Kind: table.Clock}, {Head: "Was", Kind: table.Clock},
		{Head: "Since", Kind: table.Day}, {Head: "Held by", Max: 20}}}
	for i, r := range rows {
		since := table.Value{}
		if of[i].heldOn != 0 {
			since = table.On(of[i].heldOn)
		}
		t.Add(nil, table.Words(joinWords(of[i].what(), of[i].stateWords())), table.Words(r.publicName()), table.Number(of[i].timeS),
			table.Number(of[i].wasS), since, table.Words(of[i].heldBy))
	}
	tab := &table.Tab{Name: "Records"}
	text := d.o.byAgeGroup("Fastest in the sheets held here, of adults, by age group on the day. Nothing is a record until the results desk has confirmed it. Equal times are held jointly, the earlier first.")
	tab.Add(table.Title{Level: 1, Text: d.recordTitle()}, table.Para{Text: text}, table.Full{Table: t})
	return tab
}
