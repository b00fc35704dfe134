package reports

import (
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

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
	for i := range d.runs {
		if r := &d.runs[i]; r.takenPlace() {
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
