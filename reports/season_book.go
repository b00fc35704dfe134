package reports

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

func (d *season) heading() string {
	s := "Season " + d.s.Name
	if d.s.Course != "" {
		s += ", " + d.courseName(d.s.Course)
	}
	if d.s.Club != "" {
		s += ", " + d.s.Club
	}
	return s
}

func (d *season) courseName(course string) string {
	for i := range d.courses {
		if d.courses[i].course == course {
			return d.courses[i].name
		}
	}
	return course
}

// routeName is the name of a course, with the distance where the course has
// routes of several.
func (d *season) routeName(course string, metres int32) string {
	n := 0
	for i := range d.courses {
		if d.courses[i].course == course {
			n++
		}
	}
	if n < 2 || metres == 0 {
		return d.courseName(course)
	}
	return d.courseName(course) + ", " + distance(metres)
}

// name is how somebody stands in the tables.
func (d *season) name(id int32) string {
	p := d.people[id]
	if p == nil {
		return nobody
	}
	return publicName(p.name, p.protected, p.hidden)
}

// book builds the workbook.
func (d *season) book(i issueOf) *table.Book {
	b := &table.Book{Title: d.heading(), Subject: "Season of weekly runs", Made: d.s.To.String(),
		Footer: fmt.Sprintf("Issue %d; %s to %s", i.Number, d.s.From.Long(), d.s.To.Long())}
	b.Tabs = append(b.Tabs, d.honours())
	b.Tabs = append(b.Tabs, present(d.sinceTab(), d.leagueTab(), d.overallTab(), d.clubLeagueTab(), d.gradeTab(), d.improvedTab(), d.attendance(), d.weeksTab(), d.volunteersTab(),
		d.recordTab(), d.alltimeTab(), d.newcomerTab(), d.courseTab(), d.conditionsTab())...)
	b.Tabs = append(b.Tabs, d.notes(i))
	return b
}

// honoured are the tabs of tables that somebody is honoured by.
func (d *season) honoured() []*table.Tab {
	return present(d.leagueTab(), d.overallTab(), d.clubLeagueTab(), d.gradeTab(), d.improvedTab(), d.attendance(), d.recordTab())
}

// awards is a dump of the tables that somebody is honoured by: what a closed
// season keeps.
func (d *season) awards() string {
	var b strings.Builder
	b.WriteString(d.heading() + "\n")
	for _, t := range d.honoured() {
		b.WriteString("\n=== " + t.Name + " ===\n")
		t.WriteText(&b, 0)
	}
	return b.String()
}

// listName is "women", "men" or, of both and of who is neither, "everybody".
func listName(sex string) string {
	switch sex {
	case "W":
		return "women"
	case "M":
		return "men"
	}
	return "everybody"
}

func (d *season) scopeName(scope string) string {
	if scope == "" {
		return d.s.Club
	}
	return d.courseName(scope)
}

func lineRank(l league.Line) table.Value {
	return rankValue(standing.Rank{N: l.Rank, Shared: l.Shared})
}

// honours is the first page: what the season was, and who led it.
func (d *season) honours() *table.Tab {
	t := &table.Tab{Name: "Honours", OnePage: true}
	held, finishes := 0, 0
	for _, r := range d.runs {
		if r.state == "held" {
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

// span is from when to when the season lasts, and how far the sheets go.
func (d *season) span() string {
	s := fmt.Sprintf("%s to %s", longDay(d.s.From), longDay(d.s.To))
	if d.latest < d.s.To {
		s += "; sheets so far to " + longDay(d.latest)
	}
	return s
}

func (d *season) leagueTab() *table.Tab {
	tab := &table.Tab{Name: "League"}
	tab.Add(table.Title{Level: 1, Text: "League tables"}, table.Para{Text: d.rulesInWords()}, table.Full{Table: d.leagueTable("League", "W", "M")})
	return tab
}

// overallTab is the leagues of everybody, where there are people whom no other
// list has: those who are neither M nor W, or did not say.
func (d *season) overallTab() *table.Tab {
	all := 0
	for _, scope := range d.scopes() {
		all += len(d.runTable[scope+"/"]) - len(d.runTable[scope+"/W"]) - len(d.runTable[scope+"/M"])
	}
	if all == 0 {
		return nil
	}
	t := d.leagueTable("OverallLeague", "")
	tab := &table.Tab{Name: "Overall league"}
	text := "Women, men and those who are neither or have not said, in one list a league. The rules are those of the tab League."
	if len(t.Rows) > firstPage {
		tab.PrintRows = firstPage
		text += fmt.Sprintf(" It is for the screen, where it can be filtered and sorted; on paper come the first %d lines.", firstPage)
	}
	tab.Add(table.Title{Level: 1, Text: "League tables of everybody"}, table.Para{Text: text}, table.Full{Table: t})
	return tab
}

func (d *season) leagueTable(name string, sexes ...string) *table.Table {
	t := &table.Table{Name: name, Whole: "List", None: "No league results.", Columns: []table.Column{
		{Head: "League", Max: 34}, {Head: "List"}, {Head: "Rank", Kind: table.Place, Help: "empty: not ranked"}, {Head: "Name", Max: 26},
		{Head: "Points", Kind: table.Whole}, {Head: "Runs", Kind: table.Whole}, {Head: "Weeks helped", Kind: table.Whole},
		{Head: "Points from helping", Kind: table.Whole, Help: "of the points, those of weeks spent volunteering"}, {Head: "Best score", Kind: table.Whole}}}
	for _, scope := range d.scopes() {
		for _, sex := range sexes {
			for _, l := range d.runTable[scope+"/"+sex] {
				best, helping := int32(0), int32(0)
				for _, s := range l.Scores {
					switch {
					case !s.Volunteer:
						best = max(best, s.Points)
					case s.Counts:
						helping += s.Points
					}
				}
				t.Add(nil, table.Words(d.scopeName(scope)), table.Words(listName(sex)), lineRank(l), table.Words(d.name(l.ID)),
					table.Number(l.Total), table.Number(l.Runs), table.Number(l.Helped), table.Number(helping), table.Number(best))
			}
		}
	}
	return t
}

// rulesInWords says how points are given.
func (d *season) rulesInWords() string {
	r := d.rules
	where, there := "", " A week spent volunteering there"
	if d.s.Club != "" {
		where, there = ", on whatever course,", " A week spent volunteering"
	}
	s := fmt.Sprintf("In each run%s the first of the list scores %d", where, r.Points.Points(1))
	if len(r.Points.Table) == 0 {
		s += fmt.Sprintf(", then %d fewer for each place, at least %d", r.Points.Step, r.Points.Least)
	}
	s += "; equal places share the higher score."
	if r.Best > 0 {
		s += fmt.Sprintf(" The best %d scores count.", r.Best)
	} else {
		s += " All scores count."
	}
	switch r.Volunteer {
	case league.OwnAverage:
		s += there + " scores the average of all the person's runs in the list, to the nearest whole point"
	case league.FixedCredit:
		s += there + fmt.Sprintf(" scores %d", r.VolunteerPoints)
	}
	if r.Volunteer != league.NoCredit {
		if r.VolunteerMost > 0 {
			s += fmt.Sprintf(", for at most %s", text.CountOf(r.VolunteerMost, "week", "weeks"))
		}
		s += "."
	}
	if r.MinRuns > 0 {
		s += fmt.Sprintf(" Ranked from %s on.", text.CountOf(r.MinRuns, "run", "runs"))
	}
	return s + " Ties: best single score of a run, next best and so on, then head to head, else shared; weeks of helping are not compared."
}

func (d *season) clubLeagueTab() *table.Tab {
	t := &table.Table{Name: "ClubLeague", Whole: "League", Columns: []table.Column{{Head: "League", Max: 34}, {Head: "Rank", Kind: table.Place}, {Head: "Club", Max: 34},
		{Head: "Points", Kind: table.Whole}, {Head: "Runs", Kind: table.Whole}}}
	for _, scope := range d.scopes() {
		for _, l := range d.clubTab[scope] {
			t.Add(nil, table.Words(d.scopeName(scope)), lineRank(l), table.Words(d.clubs[l.ID]), table.Number(l.Total), table.Number(l.Runs))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Club league"}
	tab.Add(table.Title{Level: 1, Text: "Clubs"},
		table.Para{Text: d.clubRulesInWords()},
		table.Full{Table: t})
	return tab
}

// clubRulesInWords says how clubs score.
func (d *season) clubRulesInWords() string {
	s := fmt.Sprintf("In each run a club scores the points that its best %s have in the lists of women and men (tab League), adults by the club printed on the sheet of the day.", spelt(d.scorers(), "member", "members"))
	if d.rules.Best > 0 {
		s += fmt.Sprintf(" The best %d runs of a club count.", d.rules.Best)
	}
	return s + " Weeks of helping score nothing here. Ties: the best single run, next best and so on, then run against run, else shared."
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

// attendance counts runs and volunteer days of everybody, apart.
func (d *season) attendance() *table.Tab {
	type tally struct {
		runs, helped, pbs int
		helpedOn          unit.Day // the latest day counted in helped
		courses           map[string]int
	}
	by := map[int32]*tally{}
	get := func(id int32) *tally {
		if by[id] == nil {
			by[id] = &tally{courses: map[string]int{}}
		}
		return by[id]
	}
	held := map[string]int{}
	for _, r := range d.runs {
		if r.state == "held" {
			held[r.course]++
		}
	}
	for i := range d.results {
		r := &d.results[i]
		if !d.listed(r) {
			continue
		}
		x := get(r.runner)
		x.runs++
		x.courses[d.runs[r.run].course]++
		if r.pb {
			x.pbs++
		}
	}
	for _, h := range d.helped {
		if p := d.people[h.runner]; h.runner > 0 && p != nil && !p.hidden && (d.s.Club == "" || by[h.runner] != nil) {
			if x := get(h.runner); x.helped == 0 || x.helpedOn != h.day { // a day is a day, at however many courses
				x.helped, x.helpedOn = x.helped+1, h.day
			}
		}
	}
	var ids []int32
	for id := range by {
		ids = append(ids, id)
	}
	sort.Slice(ids, func(i, j int) bool {
		a, b := by[ids[i]], by[ids[j]]
		if a.runs != b.runs {
			return a.runs > b.runs
		}
		if a.helped != b.helped {
			return a.helped > b.helped
		}
		return ids[i] < ids[j]
	})
	t := &table.Table{Name: "Attendance", None: "Nobody.", Columns: []table.Column{{Head: "Name", Max: 26}, {Head: "Ran", Kind: table.Whole},
		{Head: "Helped", Kind: table.Whole}, {Head: "Mostly at", Max: 34}, {Head: "Ran there", Kind: table.Whole},
		{Head: "of runs held %", Kind: table.Whole}, {Head: "Bests", Kind: table.Whole}}}
	for _, id := range ids {
		x := by[id]
		home := ""
		for c, n := range x.courses {
			if home == "" || n > x.courses[home] || n == x.courses[home] && c < home {
				home = c
			}
		}
		share, there, at := table.Value{}, table.Value{}, ""
		if home != "" {
			there, at = table.Number(x.courses[home]), d.courseName(home)
			if n := held[home]; n > 0 {
				share = percentOf(x.courses[home], n)
			}
		}
		pbs := table.Number(x.pbs)
		if d.people[id].protected {
			pbs = table.Value{}
		}
		t.Add(nil, table.Words(d.name(id)), table.Number(x.runs), table.Number(x.helped), table.Words(at), there, share, pbs)
	}
	tab := &table.Tab{Name: "Attendance"}
	tab.Add(table.Title{Level: 1, Text: "Attendance"},
		table.Para{Text: "Runs and volunteer days are counted apart. The share is of the runs held on the course where somebody ran most."}, table.Full{Table: t})
	return tab
}

func (d *season) volunteersTab() *table.Tab {
	if d.s.Club != "" || len(d.helped) == 0 {
		return nil
	}
	type tally struct {
		days      map[unit.Day]bool
		roles     map[string]bool
		milestone int32
		so        int32
	}
	by := map[string]*tally{}
	for _, h := range d.helped {
		name := h.name
		if p := d.people[h.runner]; h.runner > 0 && p != nil {
			if p.hidden {
				continue
			}
			name = d.name(h.runner)
		}
		if h.hidden {
			continue
		}
		x := by[name]
		if x == nil {
			x = &tally{days: map[unit.Day]bool{}, roles: map[string]bool{}}
			by[name] = x
		}
		x.days[h.day] = true
		for _, r := range strings.Split(h.roles, ", ") {
			if r != "" {
				x.roles[r] = true
			}
		}
		x.milestone, x.so = max(x.milestone, h.milestone), max(x.so, h.days)
	}
	names := sortedKeys(by)
	sort.SliceStable(names, func(i, j int) bool { return len(by[names[i]].days) > len(by[names[j]].days) })
	t := &table.Table{Name: "Volunteers", Columns: []table.Column{{Head: "Name", Width: 28}, {Head: "Days", Kind: table.Whole},
		{Head: "All days", Kind: table.Whole, Help: "on the volunteer lists to the end of the season, with earlier ones where the club has said so"},
		{Head: "Milestone", Kind: table.Whole, Help: "the highest round number of days reached in the season"}, {Head: "As", Max: 60}}}
	for _, k := range names {
		x := by[k]
		known := func(n int32) table.Value {
			if n == 0 {
				return table.Value{}
			}
			return table.Number(n)
		}
		t.Add(nil, table.Words(k), table.Number(len(x.days)), known(x.so), known(x.milestone), table.Words(strings.Join(slices.Sorted(maps.Keys(x.roles)), ", ")))
	}
	tab := &table.Tab{Name: "Volunteers"}
	tab.Add(table.Title{Level: 1, Text: "Thank you to the volunteers"}, table.Full{Table: t})
	return tab
}

func (d *season) measured(course string) bool {
	for i := range d.courses {
		if c := &d.courses[i]; c.course == course {
			return c.measured != nil && *c.measured
		}
	}
	return false
}

func (d *season) recordTab() *table.Tab {
	if d.s.Club != "" || len(d.records) == 0 {
		return nil
	}
	t := &table.Table{Name: "Records", Columns: []table.Column{{Head: "Course", Max: 34}, {Head: "Of", Max: 18}, {Head: "Time", Kind: table.Clock},
		{Head: "Name", Max: 24}, {Head: "On", Kind: table.Day}, {Head: "Before", Kind: table.Clock, Help: "the time to beat until then; empty where none is known"}, {Head: "Note", Max: 12}}}
	rows := append([]seasonRecord(nil), d.records...)
	sort.SliceStable(rows, func(i, j int) bool {
		a, b := &rows[i], &rows[j]
		if a.course != b.course {
			return a.course < b.course
		}
		if a.distance != b.distance {
			return a.distance < b.distance
		}
		if a.sex != b.sex {
			return a.sex > b.sex
		}
		if x, y := recordOrder(a.group), recordOrder(b.group); x != y {
			return x < y
		}
		return a.day < b.day
	})
	for _, r := range rows {
		of := groupLabel(r.sex, r.group)
		if r.group == "" {
			of = listName(r.sex) + ", all ages"
		}
		note := r.state
		switch {
		case note == "earlier":
			note = "from before the sheets"
		case r.day >= d.s.From:
			note = joinWords(note, "this season")
		}
		on := table.Value{}
		if r.day != 0 {
			on = table.On(r.day)
		}
		if !d.measured(r.course) {
			note = joinWords("not measured", note)
		}
		t.Add(nil, table.Words(d.routeName(r.course, r.distance)), table.Words(of), table.Number(r.time), table.Words(r.name), on, table.Maybe(r.was), table.Words(note))
	}
	tab := &table.Tab{Name: "Records"}
	tab.Add(table.Title{Level: 1, Text: "Fastest in the sheets held here"},
		table.Para{Text: "By course, sex and age group on the day; runners and guided runners, adults. A record only once the results desk has confirmed it, and only where the course has been measured; results that it has declared void are left out. Equal times are held jointly, the earlier first."},
		table.Full{Table: t})
	return tab
}

func recordOrder(group string) int {
	if group == "" {
		return -1
	}
	return groupOrder(group)
}

func (d *season) alltimeTab() *table.Tab {
	if d.s.Club != "" || len(d.alltime) == 0 {
		return nil
	}
	t := &table.Table{Name: "AllTime", Whole: "List", Columns: []table.Column{{Head: "Course", Max: 34}, {Head: "List"}, {Head: "Rank", Kind: table.Place},
		{Head: "Time", Kind: table.Clock}, {Head: "Name", Max: 26}, {Head: "On", Kind: table.Day}}}
	for i := 0; i < len(d.alltime); {
		j := i
		var v []int32
		for ; j < len(d.alltime) && d.alltime[j].course == d.alltime[i].course && d.alltime[j].distance == d.alltime[i].distance && d.alltime[j].sex == d.alltime[i].sex; j++ {
			v = append(v, d.alltime[j].time)
		}
		for k, rank := range standing.Ranks(v) {
			r := &d.alltime[i+k]
			t.Add(nil, table.Words(d.routeName(r.course, r.distance)), table.Words(listName(r.sex)), rankValue(rank), table.Number(r.time), table.Words(r.name), table.On(r.day))
		}
		i = j
	}
	tab := &table.Tab{Name: "All time"}
	tab.Add(table.Title{Level: 1, Text: "Ten fastest of each course in the sheets held here"}, table.Para{Text: "Everybody once, with their best in these sheets; adults. What was run before the sheets begin is on the tab Records, where it is known."}, table.Full{Table: t})
	return tab
}

// newcomerTab tells how many of a course's newcomers came back.
func (d *season) newcomerTab() *table.Tab {
	type tally struct{ n, longAgo, month, ever int }
	by := map[string]*tally{}
	known := false
	first := map[int32]*seasonResult{}
	end := min(d.latest, d.s.To)
	for i := range d.results {
		r := &d.results[i]
		if r.newcomer >= 0 {
			known = true
		}
		run := &d.runs[r.run]
		if r.newcomer == 1 && first[r.runner] == nil {
			first[r.runner] = r
			if by[run.course] == nil {
				by[run.course] = &tally{}
			}
			by[run.course].n++
			if run.day+backWithin <= end {
				by[run.course].longAgo++
			}
		}
	}
	if !known || d.s.Club != "" {
		return nil
	}
	back := map[int32]bool{}
	for i := range d.results {
		r := &d.results[i]
		f := first[r.runner]
		if f == nil || f == r || back[r.runner] || d.runs[r.run].day <= d.runs[f.run].day {
			continue
		}
		back[r.runner] = true
		began := d.runs[f.run].day
		x := by[d.runs[f.run].course]
		x.ever++
		if began+backWithin <= end && d.runs[r.run].day <= began+backWithin {
			x.month++
		}
	}
	t := &table.Table{Name: "Newcomers", None: "No newcomers.", Columns: []table.Column{{Head: "First run at", Max: 34}, {Head: "Newcomers", Kind: table.Whole},
		{Head: "Back this season", Kind: table.Whole}, {Head: "Came 4 weeks ago or longer", Kind: table.Whole}, {Head: "Of these back within 4 weeks", Kind: table.Whole},
		{Head: "Share of these %", Kind: table.Whole, Help: "from ten people on"}}}
	for _, c := range sortedKeys(by) {
		x := by[c]
		share := table.Value{}
		if x.longAgo >= leastForShare {
			share = percentOf(x.month, x.longAgo)
		}
		t.Add(nil, table.Words(d.courseName(c)), table.Number(x.n), table.Number(x.ever), table.Number(x.longAgo), table.Number(x.month), share)
	}
	tab := &table.Tab{Name: "Newcomers"}
	tab.Add(table.Title{Level: 1, Text: "Newcomers and whether they came back"},
		table.Para{Text: fmt.Sprintf("Counted by the course of their first run; a second run anywhere counts. Those of the last four weeks had not the time to come back in four, so they are left out of the columns on the right. A share is given from %d people on.", leastForShare)}, table.Full{Table: t})
	return tab
}

// A newcomer is back within four weeks; a share of fewer people than leastForShare
// says nothing.
const (
	backWithin    = 28 // days
	leastForShare = 10
)

// percentOf is a share in whole percent, half a percent up. Only all is 100 and
// only none is 0.
func percentOf(part, whole int) table.Value {
	p := (200*part + whole) / (2 * whole)
	if part < whole {
		p = min(p, 99)
	}
	if part > 0 {
		p = max(p, 1)
	}
	return table.Number(p)
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

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
			dist = distance(c.distance)
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
		return "ranked"
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

func (d *season) notes(i issueOf) *table.Tab {
	n := newNotes("Notes", fmt.Sprintf("Issue %d", i.Number), i.Changes)
	add := n.add
	add("Season", fmt.Sprintf("%s to %s, both included.", longDay(d.s.From), longDay(d.s.To)))
	if d.s.Club != "" {
		who := "Members are those whose line on the sheet of the day prints the club."
		if d.s.ByMembers {
			who = "Members are those whom the list of members has on the day of the run. First-claim members score; second-claim members are listed without points."
			if d.rules.SecondClaimScores {
				who = "Members are those whom the list of members has on the day of the run; first-claim and second-claim members score."
			}
		}
		add("Club", who+" Anybody who may be under 18 is left out, as a name here would tell the club.")
	}
	add("League", d.rulesInWords()+" There is a list of women and one of men; who is neither, or has not said, stands with everybody in the overall league and in attendance.")
	if d.clubLeagueTab() != nil {
		add("Club league", d.clubRulesInWords())
	}
	add("Rank", "Equal values share a rank, and the next one is left out: 1, 2=, 2=, 4.")
	add("Age grade", "The age standard for the distance, sex and age, divided by the time, in percent: a fair look across ages. Equal to two decimals, as printed, shares a rank. Source: road-running age standards and factors compiled by Alan Jones and Tom Bernhard."+edition(d.o.AgeStandard))
	add("Most improved", "At least four results in the last 12 weeks and four before, ten before the season, adults, no break over 8 weeks before the comparison, at least nine chances in ten of being faster; ranked by the cautious end of the 80 % interval.")
	add("Attendance", "Ran: counted finishes of the season. Helped: days on a volunteer list. Bests: personal bests at a distance, not counted for anybody who may be under 18.")
	add("Records", "The fastest in the sheets held here, to be confirmed by the results desk unless the note says confirmed, and records known from before the sheets. Somebody of an age group stands among all ages too. Before: the time to beat until then; empty where none is known.")
	add("Newcomer", "First run anywhere in these records; counted only where the sheets are known to go back to the beginning.")
	add("Course speed", "Seconds that a course adds (+) or saves (−) for somebody who takes 25:00, from people who have run on several courses, with runner, day and effort told apart. Index: 100 is the average course, higher is faster, one point is about one percent. Shared runners: how many have run another course as well.")
	add("Day against usual", "How much slower (+) or faster (−) the same people were than on a usual day there, in seconds for somebody who takes 25:00. It says nothing about why.")
	add("likely from … to", "Nine times in ten the true value lies between. Empty where it can't be told.")
	add("Children", "Anybody who may be under 18: first name and initial, no club, no age grade, no records, no bests.")
	add("Hidden", "People who asked not to be shown are in no list.")
	n.health()
	n.madeWith(d.o)
	if d.s.Ledger != "" {
		add("Made from", "The sheets in the archive's ledger of SHA-256 "+d.s.Ledger+": with this number anybody can check that two workbooks come from the same sheets.")
	}
	return n.tab("Notes")
}
