package reports

import (
	"sort"

	"lapwing/pipeline/insight/standing"
	"lapwing/reports/table"
)

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
		table.Para{Text: d.o.byAgeGroup("By course, sex and age group on the day; runners and guided runners, adults. A record only once the results desk has confirmed it, and only where the course has been measured; results that it has declared void are left out. Equal times are held jointly, the earlier first.")},
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
