package reports

import (
	"fmt"
	"slices"
	"sort"

	"lapwing/reports/table"
)

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
	t := &table.Table{Title: "Clubs, adult members", Columns: nameCols(
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
