package reports

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// identity is the headings by which a row of an honoured table is known again.
var identity = map[string][]string{
	"League": {"League", "List", "Name"}, "Overall league": {"League", "List", "Name"}, "Club league": {"League", "Club"},
	"Age grade": {"Name"}, "Most improved": {"Name"}, "Attendance": {"Name"}, "Records": {"Course", "Of"},
}

// mostDiffering is how many differences of a table are listed one by one.
const mostDiffering = 25

// differences says in a line each how the tables that a closed season keeps
// differ from what they would be now, ranks, records and who is listed first; of
// rows that differ in something else only, it says how many there are. Columns
// that only one of the two has are not compared. A name that nothing of today's
// names any more is repeated only where names says so: it may be gone because
// somebody asked.
func differences(before, now string, names bool) []string {
	old, fresh := table.ReadDumps(before), table.ReadDumps(now)
	known := map[string]bool{}
	for _, d := range fresh {
		if c := d.Column("Name"); c >= 0 {
			for _, r := range d.Rows {
				known[r[c]] = true
			}
		}
	}
	var out []string
	for _, d := range fresh {
		if !slices.ContainsFunc(old, func(o *table.Dump) bool { return o.Tab == d.Tab }) {
			old = append(old, &table.Dump{Tab: d.Tab})
		}
	}
	for _, o := range old {
		n := &table.Dump{Tab: o.Tab}
		if i := slices.IndexFunc(fresh, func(d *table.Dump) bool { return d.Tab == o.Tab }); i >= 0 {
			n = fresh[i]
		}
		lines, others := differ(o, n, func(name string) bool { return names || known[name] })
		for i, l := range lines {
			if i == mostDiffering {
				out = append(out, fmt.Sprintf("%s: %s.", o.Tab, text.CountOf(len(lines)-i, "more difference of this kind", "more differences of this kind")))
				break
			}
			out = append(out, l)
		}
		if others > 0 {
			out = append(out, fmt.Sprintf("%s: %s in other figures, with the rank as it was.", o.Tab, text.CountOf(others, "row differs", "rows differ")))
		}
	}
	return out
}

// differ compares two issues of a table: lines of those rows that matter, and
// the number of the others that differ.
func differ(before, now *table.Dump, shown func(name string) bool) (lines []string, others int) {
	keys := identity[before.Tab]
	type row struct {
		key   string
		cells map[string]string
	}
	rows := func(d *table.Dump) (out []row) {
		seen := map[string]int{}
		for _, r := range d.Rows {
			x := row{cells: map[string]string{}}
			for i, h := range d.Heads {
				x.cells[h] = r[i]
			}
			for _, k := range keys {
				x.key += x.cells[k] + "\x00"
			}
			seen[x.key]++ // namesakes, joint holders: the first with the first
			x.key += fmt.Sprint(seen[x.key])
			out = append(out, x)
		}
		return out
	}
	byKey := func(in []row) map[string]map[string]string {
		out := make(map[string]map[string]string, len(in))
		for _, r := range in {
			out[r.key] = r.cells
		}
		return out
	}
	where := func(cells map[string]string) string {
		s := before.Tab
		for _, k := range keys {
			v := cells[k]
			if k == "Name" && !shown(v) {
				v = "somebody who is not listed now"
			}
			if v != "" {
				s += ", " + v
			}
		}
		return s
	}
	summary := func(d *table.Dump, cells map[string]string) string {
		var parts []string
		for _, h := range d.Heads {
			if v := cells[h]; v != "" && !slices.Contains(keys, h) && (h != "Name" || shown(v)) {
				parts = append(parts, strings.ToLower(h[:1])+h[1:]+" "+v)
			}
		}
		return strings.Join(parts, ", ")
	}
	was, is := rows(before), rows(now)
	wasBy, isBy := byKey(was), byKey(is)
	for _, r := range was {
		cells := isBy[r.key]
		if cells == nil {
			lines = append(lines, where(r.cells)+": awarded with "+summary(before, r.cells)+"; not there now.")
			continue
		}
		var parts []string
		matters := before.Tab == "Records"
		for _, h := range before.Heads {
			if now.Column(h) < 0 || r.cells[h] == cells[h] {
				continue
			}
			old := orNone(r.cells[h])
			if h == "Name" && !shown(old) {
				old = "somebody who is not listed now"
			}
			parts = append(parts, strings.ToLower(h[:1])+h[1:]+" "+old+" → "+orNone(cells[h]))
			matters = matters || h == "Rank"
		}
		switch {
		case matters && len(parts) > 0:
			lines = append(lines, where(r.cells)+": "+strings.Join(parts, "; ")+".")
		case len(parts) > 0:
			others++
		}
	}
	for _, r := range is {
		if wasBy[r.key] == nil {
			lines = append(lines, where(r.cells)+": not awarded; now with "+summary(now, r.cells)+".")
		}
	}
	return lines, others
}

// sinceTab says how a closed season differs from what it would be now.
func (d *season) sinceTab() *table.Tab {
	if len(d.since) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Since closing"}
	tab.Add(table.Title{Level: 1, Text: "Against the season as closed"},
		table.Para{Text: "The season is closed: what was awarded stands, and a copy of it is kept in the archive. Corrections since then would change it as follows. Why is on the tab Notes."})
	t := &table.Table{Name: "SinceClosing", Columns: []table.Column{{Head: "What differs", Width: 90, Max: 90}}}
	for _, l := range d.since {
		t.Add(nil, table.Words(l))
	}
	tab.Add(table.Full{Table: t})
	return tab
}
