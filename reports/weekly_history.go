package reports

import (
	"context"
	"database/sql"
	"sort"

	"lapwing/pipeline/unit"
)

// category is what a record is of.
type category struct{ scope, sex, group string }

// categories are what a time of somebody of a sex and age group may be the
// fastest of: of all ages, and of the group where it is certain.
func categories(sex, group string) []category {
	if group == "" {
		return []category{{"all ages", sex, ""}}
	}
	return []category{{"all ages", sex, ""}, {"group", sex, group}}
}

// held is the fastest time of a category so far, and who ran it first.
type held struct {
	timeS, runner int32
	on            unit.Day
	by            string // as published, of a record held before the sheets
}

// lookBack goes through the runs of a course in order and gives each run asked
// for what was before it: the runs, the spread of their times, and the fastest
// of each category.
func (w *weekReader) lookBack(c *courseHistory) {
	before := map[int32]int64{} // timed results of earlier days, by minute
	fastest := map[category]held{}
	for _, h := range c.held {
		// one run on a later day than the first sheet is on a sheet
		if len(c.runs) > 0 && h.on >= c.runs[0].day {
			continue
		}
		for _, of := range categories(h.sex, h.group) {
			if f, ok := fastest[of]; !ok || h.timeS < f.timeS {
				fastest[of] = held{timeS: h.timeS, on: h.on, by: h.by}
			}
		}
	}
	for i := 0; i < len(c.runs); {
		on, next := c.runs[i].day, i
		for ; next < len(c.runs) && c.runs[next].day == on; next++ {
		}
		for k := i; k < next; k++ {
			r := &c.runs[k]
			if d := w.at[r.number]; d != nil {
				d.runs, d.run, d.latest = c.runs[:k+1:k+1], *r, w.latest
				d.spread = spreadOf(c.spread[r.number], before)
				d.beat(fastest)
			}
			for _, b := range c.best[r.number] {
				for _, of := range categories(b.sex, b.group) {
					if h, ok := fastest[of]; !ok || b.timeS < h.timeS {
						fastest[of] = held{timeS: b.timeS, runner: b.runner, on: on}
					}
				}
			}
		}
		for k := i; k < next; k++ {
			for _, m := range c.spread[c.runs[k].number] {
				if m.minute >= 0 {
					before[m.minute] += int64(m.timed)
				}
			}
		}
		i = next
	}
}

// spreadOf lays the minutes of a run beside those before.
func spreadOf(run []minuteRow, before map[int32]int64) []spreadRow {
	here := map[int32]int64{}
	for _, m := range run {
		if m.minute >= 0 {
			here[m.minute] = int64(m.timed)
		}
	}
	var out []spreadRow
	for m, n := range before {
		out = append(out, spreadRow{m, here[m], n})
	}
	for m, n := range here {
		if before[m] == 0 {
			out = append(out, spreadRow{m, n, 0})
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].minute < out[j].minute })
	return out
}

// beat finds the results that equal or beat the fastest before, the fastest of
// this run only.
func (d *weekly) beat(before map[category]held) {
	best := map[category]int32{}
	of := func(r *resultRow) []category {
		if !r.countsTime || r.status != "ok" || r.record == "void" || r.runner == "" || r.timeS == nil || r.sex != "M" && r.sex != "W" ||
			r.takingPart != "runner" && r.takingPart != "guided" || r.protected || r.hidden {
			return nil
		}
		return categories(r.sex, r.group)
	}
	for i := range d.results {
		for _, c := range of(&d.results[i]) {
			if t := *d.results[i].timeS; best[c] == 0 || t < best[c] {
				best[c] = t
			}
		}
	}
	for i := range d.results {
		r := &d.results[i]
		for _, c := range of(r) {
			if h, ok := before[c]; ok && *r.timeS == best[c] && *r.timeS <= h.timeS {
				d.records = append(d.records, recordRow{scope: c.scope, sex: c.sex, group: c.group, sheet: r.sheet, tab: r.tab, row: r.row,
					timeS: *r.timeS, wasS: h.timeS, holder: h.runner, heldBy: h.by, heldOn: h.on, confirmed: r.record == "confirmed"})
			}
		}
	}
	sort.SliceStable(d.records, func(i, j int) bool {
		a, b := &d.records[i], &d.records[j]
		switch {
		case a.scope != b.scope:
			return a.scope < b.scope
		case a.sex != b.sex:
			return a.sex < b.sex
		}
		return a.group < b.group
	})
}

// nameHolders puts names to those whose times were equalled or beaten.
func (w *weekReader) nameHolders(ctx context.Context, q Queryer) error {
	var runners []int32
	for _, n := range w.asked {
		for i := range w.at[n].records {
			runners = append(runners, w.at[n].records[i].holder)
		}
	}
	if len(runners) == 0 {
		return nil
	}
	type person struct {
		name   string
		hidden bool
	}
	who := map[int32]person{}
	err := askAbout(ctx, q, "weekly_holder", "runners", runners, func(rows *sql.Rows) error {
		var n int32
		var p person
		err := rows.Scan(&n, &p.name, &p.hidden)
		who[n] = p
		return err
	})
	for _, d := range w.at {
		for i := range d.records {
			r := &d.records[i]
			if r.holder == 0 { // before the sheets
				continue
			}
			r.heldBy = publicName(who[r.holder].name, false, who[r.holder].hidden)
		}
	}
	return err
}
