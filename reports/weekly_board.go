package reports

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// boardTab is the page to pin up: one upright A4 page at 10 pt. Its lists are
// cut to what fits, evenly; the leaders of the age groups last.
func (d *weekly) boardTab(i issueOf) *table.Tab {
	const fewestRows = 4
	leaders := max(len(d.leadersOf("W").Rows), len(d.leadersOf("M").Rows))
	for n := 10; n > fewestRows; n-- {
		if t := d.board(i, n, leaders); t.Height() <= table.PageHeight {
			return t
		}
	}
	for ; ; leaders-- {
		if t := d.board(i, fewestRows, leaders); leaders <= fewestRows || t.Height() <= table.PageHeight {
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
		s += "  |  " + unit.Distance(*d.run.distanceM)
	}
	return s + "  |  " + d.standingOf(i)
}

func (d *weekly) figures() []table.Figure {
	pbs := d.bests()
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

// bests counts the personal bests, those of people who are not shown among them: a number
// tells of nobody, and the season counts them too.
func (d *weekly) bests() int {
	return len(d.pick(func(r *resultRow) bool { return (r.trusted() || r.hidden && r.status == "ok") && r.isPB }))
}

// newcomers counts them; known is false where history doesn't allow it, here or on another
// course: of somebody whose first run in the sheets this is, nobody can tell.
func (d *weekly) newcomers() (n int, known bool) {
	known = d.hasHistory()
	told := 0
	for i := range d.results {
		r := &d.results[i]
		switch {
		case !r.finished() || r.runner == "":
		case r.newcomer == nil:
			if r.trusted() {
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
		return 26 // Senior: after the juniors, who end at 25, and before the masters, who begin at 30 or later
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
	sort.SliceStable(rows, func(i, j int) bool {
		if rows[i].streak != rows[j].streak {
			return rows[i].streak > rows[j].streak
		}
		return rows[i].since.Day > rows[j].since.Day // fewer weeks passed over
	})
	return rows
}

// weeksPassedOver are the calendar weeks within a streak of weeks up to a day
// that neither add to it nor end it: without a run, without a sheet here, or
// as a volunteer.
func weeksPassedOver(streak int32, since, to unit.Day) int {
	return to.Week() - since.Week() + 1 - int(streak)
}

func (d *weekly) boardStreaks() *table.Table {
	t := &table.Table{Title: "Most weeks in a row", None: fmt.Sprintf("none of %d weeks or more", longStreak), Columns: nameCols(
		table.Column{Head: "Weeks", Kind: table.Whole}, table.Column{Head: "Name"}, table.Column{Head: "Since"})}
	for _, r := range d.streaks() {
		t.Add(nil, table.Number(r.streak), table.Words(r.publicName()), table.Words(shortDay(r.since.Day)))
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
		if r := d.resultOf(rec); r != nil && r.eligible() && r.trusted() && !r.protected {
			rows, of = append(rows, r), append(of, rec)
		}
	}
	return rows, of
}

// resultOf is the result that may be a record, nil where it is not among those of the run.
func (d *weekly) resultOf(rec *recordRow) *resultRow {
	for i := range d.results {
		if r := &d.results[i]; r.sheet == rec.sheet && r.tab == rec.tab && r.row == rec.row {
			return r
		}
	}
	return nil
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
