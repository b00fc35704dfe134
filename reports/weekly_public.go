package reports

import (
	"bytes"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// workbook renders a book.
func workbook(b *table.Book) ([]byte, error) {
	var w bytes.Buffer
	err := b.WriteWorkbook(&w)
	return w.Bytes(), err
}

// public builds the workbook for everybody.
func (d *weekly) public(i issueOf) *table.Book {
	b := d.book(i)
	b.Tabs = append(b.Tabs, d.boardTab(i), d.resultTab())
	b.Tabs = append(b.Tabs, gather(d.lists())...)
	b.Tabs = append(b.Tabs, present(d.timesTab(), d.attendanceTab())...)
	b.Tabs = append(b.Tabs, d.notesTab(i))
	return b
}

// lists are the tabs with a list each.
func (d *weekly) lists() []*table.Tab {
	return present(d.bestsTab(), d.groupsTab(), d.gradesTab(), d.peopleTab(), d.wheelsTab(), d.recordsTab(), d.clubsTab(), d.helpersTab())
}

// present leaves out the tabs that have nothing to say.
func present(tabs ...*table.Tab) []*table.Tab {
	var out []*table.Tab
	for _, t := range tabs {
		if t != nil {
			out = append(out, t)
		}
	}
	return out
}

func (d *weekly) heading() string {
	s := d.run.courseName + ", " + longDay(d.on)
	if d.session != "" {
		s += ", " + text.Session(d.session)
	}
	return s
}

func (d *weekly) book(i issueOf) *table.Book {
	return &table.Book{
		Title:   d.heading(),
		Subject: "Results of a weekly run",
		Footer:  d.standingOf(i),
		Made:    d.on.String(),
	}
}

// standingOf says which issue this is and whether corrections may still come.
func (d *weekly) standingOf(i issueOf) string {
	s := fmt.Sprintf("Issue %d", i.Number)
	if d.provisional() {
		return s + ", provisional: corrections until " + (d.on + d.o.correctionDays()).Long()
	}
	return s
}

func nameCols(c ...table.Column) []table.Column { return c }

// boardTab is the page to pin up: one upright A4 page at 10 pt. Its lists are
// cut to what fits, evenly; the leaders of the age groups last.
func (d *weekly) boardTab(i issueOf) *table.Tab {
	const fewest = 4
	leaders := max(len(d.leadersOf("W").Rows), len(d.leadersOf("M").Rows))
	for n := 10; n > fewest; n-- {
		if t := d.board(i, n, leaders); t.Height() <= table.PageHeight {
			return t
		}
	}
	for ; ; leaders-- {
		if t := d.board(i, fewest, leaders); leaders <= fewest || t.Height() <= table.PageHeight {
			return t
		}
	}
}

func (d *weekly) board(i issueOf, most, leaders int) *table.Tab {
	t := &table.Tab{Name: "Board", OnePage: true}
	t.Add(table.Title{Level: 1, Text: d.run.courseName}, table.Para{Text: d.underTitle(i), Bold: true})
	t.Add(table.Big{Figures: d.figures()})
	t.Add(table.Para{Text: joinSentences(d.countsSentence(), d.conditions())})
	if c := d.changedWords(i); c != "" {
		t.Add(table.Para{Text: c, Bold: true})
	}
	cut := func(tb *table.Table, n int) *table.Table {
		if len(tb.Rows) > n {
			tb.Rows = tb.Rows[:n]
		}
		return tb
	}
	// Of a list that somebody will look for their name on, it says how much is here.
	part := func(tb *table.Table, n int) *table.Table {
		if all := len(tb.Rows); all > n {
			tb.Title += fmt.Sprintf(" (%d of %d)", n, all)
		}
		return cut(tb, n)
	}
	t.Add(table.Pair{Left: cut(d.firstOf("W", "First women"), min(most, 5)), Right: cut(d.firstOf("M", "First men"), min(most, 5))})
	if w, m := d.leadersOf("W"), d.leadersOf("M"); len(w.Rows)+len(m.Rows) > 0 {
		t.Add(table.Pair{Left: cut(w, leaders), Right: cut(m, leaders)})
	}
	// Two beside each other, those left out that have nothing to say.
	var halves []*table.Table
	for _, h := range []*table.Table{part(d.boardBests(), most), cut(d.boardGrades(), most), part(d.boardMilestones(), most+2), part(d.boardStreaks(), min(most, 6)),
		part(d.boardRecords(), min(most, 4)), cut(d.boardClubs(), min(most, 4))} {
		if len(h.Rows) > 0 {
			halves = append(halves, h)
		}
	}
	for k := 0; k < len(halves); k += 2 {
		p := table.Pair{Left: halves[k]}
		if k+1 < len(halves) {
			p.Right = halves[k+1]
		}
		t.Add(p)
	}
	if len(d.helpers) > 0 {
		t.Add(table.Title{Level: 2, Text: "Thank you to the volunteers"}, table.Para{Text: list(d.helperNames()) + dot(list(d.helperNames())) + d.helperMilestoneWords()})
	}
	t.Add(table.Para{Text: boardLegend})
	return t
}

// boardLegend explains what a pinned page leaves open without the Notes tab.
const boardLegend = "Grade: the age standard as a percentage of the time, a fair look across ages; ~ where several ages are possible. Full lists, charts and every explanation are on the other pages of this workbook."

func (d *weekly) underTitle(i issueOf) string {
	s := longDay(d.on)
	if d.session != "" {
		s += ", " + text.Session(d.session)
	}
	if d.run.distanceM != nil {
		s += "  |  " + distance(*d.run.distanceM)
	}
	return s + "  |  " + d.standingOf(i)
}

func (d *weekly) figures() []table.Figure {
	pbs := len(d.pick(func(r *resultRow) bool { return r.trusted() && r.isPB }))
	what := "personal bests"
	if !d.hasHistory() {
		what = "bests since sheets began"
	}
	f := []table.Figure{{Value: strconv.Itoa(int(d.run.finishers)), Caption: "finishers"}, {Value: strconv.Itoa(pbs), Caption: what}}
	if n, known := d.newcomers(); known {
		f = append(f, table.Figure{Value: strconv.Itoa(n), Caption: "newcomers"})
	}
	if n := d.run.volunteers; n != nil && len(f) < 4 {
		f = append(f, table.Figure{Value: strconv.Itoa(int(*n)), Caption: "volunteers"})
	}
	return f
}

// newcomers counts them; known is false where history doesn't allow it: of
// somebody whose first run in the sheets this is, nobody can tell.
func (d *weekly) newcomers() (n int, known bool) {
	known = d.hasHistory()
	told := 0
	for i := range d.results {
		r := &d.results[i]
		switch {
		case !r.finished() || r.runner == "":
		case r.newcomer == nil:
			if r.trusted() && !d.hasHistory() {
				return 0, false
			}
		default:
			if told++; *r.newcomer {
				n++
			}
		}
	}
	return n, known || told > 0
}

func placeOf(r *resultRow) table.Value { return rankValue(r.place) }

// rankValue is a rank as a cell, none as an empty one.
func rankValue(r standing.Rank) table.Value {
	if r.N == 0 {
		return table.Value{}
	}
	return table.Number(r.N).Tie(r.Shared)
}

// firstOf lists the first finishers of a sex.
func (d *weekly) firstOf(sex, title string) *table.Table {
	t := &table.Table{Title: title, None: "none named", Columns: nameCols(
		table.Column{Head: "Place", Kind: table.Place}, table.Column{Head: "Name"},
		table.Column{Head: "Group"}, table.Column{Head: "Time", Kind: table.Clock})}
	for _, r := range d.pick(func(r *resultRow) bool { return r.eligible() && r.trusted() && r.sex == sex }) {
		t.Add(nil, placeOf(r), table.Words(r.publicName()), table.Words(r.shown), table.Maybe(r.timeS))
	}
	return t
}

// leadersOf lists the first of each age group of a sex, juniors first.
func (d *weekly) leadersOf(sex string) *table.Table {
	title := "First women by age group"
	if sex == "M" {
		title = "First men by age group"
	}
	t := &table.Table{Title: title, Columns: nameCols(
		table.Column{Head: "Group"}, table.Column{Head: "Name"},
		table.Column{Head: "Grade", Kind: table.Percent}, table.Column{Head: "Time", Kind: table.Clock})}
	rows := d.pick(func(r *resultRow) bool { return r.groupPlace.N == 1 && r.sex == sex })
	sort.SliceStable(rows, func(i, j int) bool { return groupOrder(rows[i].group) < groupOrder(rows[j].group) })
	for _, r := range rows {
		t.Add(nil, table.Words(r.group), table.Words(r.publicName()), r.publicGrade(), table.Maybe(r.timeS))
	}
	return t
}

// groupOrder sorts age groups from the youngest to the oldest.
func groupOrder(g string) int {
	digits := strings.TrimLeft(g, "UMWX")
	if i := strings.IndexByte(digits, '-'); i > 0 {
		digits = digits[:i]
	}
	n, err := strconv.Atoi(digits)
	if err != nil {
		return 30 // Senior: after U20, before 35
	}
	return n
}

// publicGrade is the age grade as published: none for who may be under 18 or
// is hidden, marked where several ages are possible.
func (r *resultRow) publicGrade() table.Value {
	if r.protected || r.hidden || !r.countsTime {
		return table.Value{}
	}
	return table.Maybe(r.grade).About(!r.gradeCertain())
}

func (d *weekly) boardGrades() *table.Table {
	t := &table.Table{Title: "Best age grades", None: "no certain ages", Columns: nameCols(
		table.Column{Head: "Rank", Kind: table.Place}, table.Column{Head: "Name"},
		table.Column{Head: "Group"}, table.Column{Head: "Grade", Kind: table.Percent})}
	rows := d.graded()
	ranks := gradeRanks(rows)
	for i, r := range rows {
		t.Add(nil, rankValue(ranks[i]), table.Words(r.publicName()), table.Words(r.shown), table.Number(*r.grade))
	}
	return t
}

func (d *weekly) boardBests() *table.Table {
	title := "Personal bests, largest first"
	if !d.hasHistory() {
		title = "Bests since sheets began, largest first"
	}
	t := &table.Table{Title: title, None: "none this time", Columns: nameCols(
		table.Column{Head: "By", Kind: table.Clock}, table.Column{Head: "Name"},
		table.Column{Head: "Group"}, table.Column{Head: "Time", Kind: table.Clock})}
	rows := d.pick(func(r *resultRow) bool { return r.trusted() && r.isPB })
	byMargin(rows, func(r *resultRow) *int32 {
		if r.protected {
			return nil
		}
		return r.pbMargin
	})
	for _, r := range rows {
		margin := table.Maybe(r.pbMargin)
		if r.protected {
			margin = table.Value{}
		}
		t.Add(nil, margin, table.Words(r.publicName()), table.Words(r.shown), table.Maybe(r.timeS))
	}
	return t
}

// milestones are those to be told, the highest first: not those that moved here
// after the reports of another run had told them.
func (d *weekly) milestones() []*resultRow {
	rows := d.pick(func(r *resultRow) bool { return r.trusted() && r.milestone != nil && r.toldAt == nil })
	sort.SliceStable(rows, func(i, j int) bool { return *rows[i].milestone > *rows[j].milestone })
	return rows
}

func (d *weekly) boardMilestones() *table.Table {
	title := "Milestones"
	if !d.hasHistory() {
		title = "Milestones, as far as the sheets tell"
	}
	t := &table.Table{Title: title, None: "none this time", Columns: nameCols(
		table.Column{Head: "Runs", Kind: table.Whole}, table.Column{Head: "Name"}, table.Column{Head: "Group"})}
	for _, r := range d.milestones() {
		t.Add(nil, table.Number(*r.milestone), table.Words(r.publicName()), table.Words(r.shown))
	}
	return t
}

// longStreak is the least number of weeks in a row that is listed.
const longStreak = 5

func (d *weekly) streaks() []*resultRow {
	rows := d.pick(func(r *resultRow) bool { return r.trusted() && r.countsRun && r.streak >= longStreak })
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].streak > rows[j].streak })
	return rows
}

func (d *weekly) boardStreaks() *table.Table {
	t := &table.Table{Title: "Most weeks in a row", None: fmt.Sprintf("none of %d weeks or more", longStreak), Columns: nameCols(
		table.Column{Head: "Weeks", Kind: table.Whole}, table.Column{Head: "Name"}, table.Column{Head: "Group"})}
	for _, r := range d.streaks() {
		t.Add(nil, table.Number(r.streak), table.Words(r.publicName()), table.Words(r.shown))
	}
	return t
}

// recordTitle calls the fastest times records only where the course has been
// measured, and says where one has yet to be confirmed.
func (d *weekly) recordTitle() string {
	title := "Fastest recorded here"
	if d.run.measured != nil && *d.run.measured {
		title = "Course records"
	}
	for i := range d.records {
		if !d.records[i].confirmed {
			return title + ", to be confirmed"
		}
	}
	return title
}

// stateWords says whether a record is settled.
func (rec *recordRow) stateWords() string {
	if rec.confirmed {
		return "confirmed"
	}
	return ""
}

// publicRecords are the record candidates that may be published: of adults who
// are known beyond doubt.
func (d *weekly) publicRecords() (rows []*resultRow, of []*recordRow) {
	for i := range d.records {
		rec := &d.records[i]
		for j := range d.results {
			r := &d.results[j]
			if r.sheet == rec.sheet && r.tab == rec.tab && r.row == rec.row && r.eligible() && r.trusted() && !r.protected {
				rows, of = append(rows, r), append(of, rec)
			}
		}
	}
	return rows, of
}

func (rec *recordRow) what() string {
	if rec.scope == "group" {
		return groupLabel(rec.sex, rec.group)
	}
	if rec.sex == "W" {
		return "women, all ages"
	}
	return "men, all ages"
}

func (d *weekly) boardRecords() *table.Table {
	rows, of := d.publicRecords()
	t := &table.Table{Title: d.recordTitle(), Columns: nameCols(
		table.Column{Head: "Group, name"}, table.Column{Head: "Time", Kind: table.Clock})}
	for i, r := range rows {
		t.Add(nil, table.Words(of[i].what()+": "+r.publicName()), table.Number(of[i].timeS))
	}
	return t
}

func (d *weekly) helperNames() []string {
	var names []string
	seen := map[string]bool{}
	for _, h := range d.helpers {
		if h.name != anonymous && !seen[h.name] {
			seen[h.name] = true
			names = append(names, h.name)
		}
	}
	return names
}

// helperMilestones lists those who reached a round number of days of helping,
// the highest first.
func (d *weekly) helperMilestones() []helperRow {
	var out []helperRow
	for _, h := range d.helpers {
		if h.milestone > 0 && h.name != anonymous && !slices.ContainsFunc(out, func(o helperRow) bool { return o.name == h.name && o.milestone == h.milestone }) {
			out = append(out, h)
		}
	}
	slices.SortStableFunc(out, func(a, b helperRow) int { return int(b.milestone - a.milestone) })
	return out
}

func (d *weekly) helperMilestoneWords() string {
	s := ""
	for _, h := range d.helperMilestones() {
		s += fmt.Sprintf(" %s has now helped on %d days.", h.name, h.milestone)
	}
	return s
}

// resultTab is the full result, everybody who finished, in order of place.
func (d *weekly) resultTab() *table.Tab {
	t := &table.Table{Name: "Result", Legend: d.legend(), None: "Nobody finished.", Columns: []table.Column{
		{Head: "Place", Kind: table.Place, Help: "position on the sheet; = where the sheet says that it is shared"},
		{Head: "Time", Kind: table.Clock, Help: "finish time in whole seconds, fractions rounded up as in road races"},
		{Head: "Name", Max: 20, Help: "first name and initial for anybody who may be under 18; Anonymous for who asked"},
		{Head: "Group", Help: "age group on the day, empty where the age is not certain"},
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
		{Head: "What", Max: 30}, {Head: "Name", Max: 28}, {Head: "Group"}, {Head: "Number", Kind: table.Whole}}}
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
		t.Add(nil, table.Words("weeks in a row"), table.Words(r.publicName()), table.Words(r.shown), table.Number(r.streak))
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
	text := "Fastest in the sheets held here, of adults, by age group on the day. Nothing is a record until the results desk has confirmed it. Equal times are held jointly, the earlier first."
	tab.Add(table.Title{Level: 1, Text: d.recordTitle()}, table.Para{Text: text}, table.Full{Table: t})
	return tab
}

// tally is a club's day.
type tally struct {
	club   string
	n, pbs int
}

// clubs counts finishers by club, the largest first; anybody who may be under
// 18 is left out.
func (d *weekly) clubs() []tally {
	by := map[string]*tally{}
	var out []*tally
	for _, r := range d.pick(func(r *resultRow) bool { return r.trusted() && r.finished() && r.club != "" && !r.protected }) {
		c := by[r.club]
		if c == nil {
			c = &tally{club: r.club}
			by[r.club] = c
			out = append(out, c)
		}
		c.n++
		if r.isPB {
			c.pbs++
		}
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].n != out[j].n {
			return out[i].n > out[j].n
		}
		return out[i].club < out[j].club
	})
	sorted := make([]tally, len(out))
	for i, c := range out {
		sorted[i] = *c
	}
	return sorted
}

func (d *weekly) boardClubs() *table.Table {
	t := &table.Table{Title: "Clubs", Columns: nameCols(
		table.Column{Head: "Club"}, table.Column{Head: "Finishers", Kind: table.Whole})}
	for _, c := range d.clubs() {
		t.Add(nil, table.Words(c.club), table.Number(c.n))
	}
	return t
}

func (d *weekly) clubsTab() *table.Tab {
	t := &table.Table{Name: "Clubs", Columns: []table.Column{
		{Head: "Club", Max: 40, Width: 24}, {Head: "Finishers", Kind: table.Whole}, {Head: "PBs", Kind: table.Whole}}}
	for _, c := range d.clubs() {
		t.Add(nil, table.Words(c.club), table.Number(c.n), table.Number(c.pbs))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Clubs"}
	tab.Add(table.Title{Level: 1, Text: "Clubs"},
		table.Para{Text: "Adult members as named on the sheet."}, table.Full{Table: t})
	return tab
}

func (d *weekly) helpersTab() *table.Tab {
	if len(d.helpers) == 0 {
		return nil
	}
	t := &table.Table{Name: "Volunteers", Columns: []table.Column{{Head: "Name", Width: 28}, {Head: "Role", Width: 24},
		{Head: "Days helped", Kind: table.Whole, Help: "days on the volunteer lists up to this one, all courses, with those from before the lists began where the club has said so; empty where the name is several people's"},
		{Head: "Milestone", Width: 12}}}
	for _, h := range d.helpers {
		days, mark := table.Value{}, ""
		if h.days > 0 {
			days = table.Number(h.days)
		}
		if h.milestone > 0 {
			mark = ordinal(h.milestone) + " day"
		}
		t.Add(nil, table.Words(h.name), table.Words(h.role), days, table.Words(mark))
	}
	tab := &table.Tab{Name: "Volunteers"}
	tab.Add(table.Title{Level: 1, Text: "Volunteers of the day"}, table.Full{Table: t})
	return tab
}
