package pipeline

import (
	"cmp"
	"slices"

	"lapwing/pipeline/record/who"
)

// idColumns are the columns of runner_ids.csv: which line a runner number was
// given for. The file is only ever appended to, so that numbers outlive the
// database.
//
// sheet is the place in the ledger, tab the place of the tab in the workbook
// (0 the first), lines how many lines of the runner the anchor stands for.
var idColumns = []string{"runner", "sheet", "tab", "row", "lines"}

const idTable = "runner_ids.csv"

// anchor is one line of runner_ids.csv.
type anchor struct {
	runner, lines int32
	at            lineAt
}

// lineAt names a line by its sheet's place in the ledger, tab and row.
type lineAt struct{ sheet, tab, row int32 }

func (f *field) lineAt(i int) lineAt {
	p := &f.parts[f.part[i]-1]
	return lineAt{p.sheetNo, p.tabIndex, f.row[i]}
}

func (pl *Pipeline) readAnchors() (out []anchor, err error) {
	err = pl.Archive.ReadNumbers(idTable, idColumns, func(v []int32) {
		out = append(out, anchor{v[0], v[4], lineAt{v[1], v[2], v[3]}})
	})
	return out, err
}

func (pl *Pipeline) appendAnchors(list []anchor) error {
	return pl.Archive.AppendNumbers(idTable, idColumns, len(list), func(i int, v []int32) {
		a := list[i]
		v[0], v[1], v[2], v[3], v[4] = a.runner, a.at.sheet, a.at.tab, a.at.row, a.lines
	})
}

// linkedAt finds the line of somebody that each anchor stands on, -1 where the field
// has none. A row may hold several, where it is a person's season: the last one.
func (f *field) linkedAt(anchors []anchor) []int32 {
	type tab struct{ sheet, tab int32 }
	part := make(map[tab]int32, len(f.parts))
	for _, p := range f.parts {
		if p.sheetNo > 0 {
			part[tab{p.sheetNo, p.tabIndex}] = p.no
		}
	}
	spot := func(part, row int32) uint64 { return uint64(part)<<32 | uint64(uint32(row)) }
	lines := make([]int32, f.n)
	sorted := true
	for i := range lines {
		lines[i] = int32(i)
		sorted = sorted && (i == 0 || spot(f.part[i-1], f.row[i-1]) <= spot(f.part[i], f.row[i]))
	}
	of := func(i int32) uint64 { return spot(f.part[i], f.row[i]) }
	if !sorted {
		slices.SortStableFunc(lines, func(a, b int32) int { return cmp.Compare(of(a), of(b)) })
	}
	type wanted struct {
		spot   uint64
		anchor int32
	}
	list := make([]wanted, 0, len(anchors))
	out := make([]int32, len(anchors))
	for i, a := range anchors {
		out[i] = -1
		if p, ok := part[tab{a.at.sheet, a.at.tab}]; ok {
			list = append(list, wanted{spot(p, a.at.row), int32(i)})
		}
	}
	slices.SortFunc(list, func(a, b wanted) int { return cmp.Compare(a.spot, b.spot) })
	k := 0
	for _, w := range list {
		for k < len(lines) && of(lines[k]) < w.spot {
			k++
		}
		for j := k; j < len(lines) && of(lines[j]) == w.spot; j++ {
			if f.linked(int(lines[j])) {
				out[w.anchor] = lines[j]
			}
		}
	}
	return out
}

// numberRunners gives the linker's runners their lasting numbers, and notes
// the anchors that are new. They are kept before the database is written.
func (pl *Pipeline) numberRunners(f *field, rows *who.Rows, l *linkage) error {
	have, err := pl.readAnchors()
	if err != nil {
		return err
	}
	anchors := make([]who.Anchor, len(have))
	for i, line := range f.linkedAt(have) {
		key := int64(-1) // not in the archive now
		if line >= 0 {
			key = f.key[line]
		}
		anchors[i] = who.Anchor{ID: have[i].runner, Key: key, Rows: have[i].lines}
	}
	ids := who.AssignIDs(pl.workers(), anchors, rows.Key, l.result.Runner, l.result.Runners)
	l.number = ids.Of
	l.next = ids.Next
	for _, a := range ids.Aliases {
		l.alias[a.Old] = a.ID
	}
	l.fresh = make([]anchor, len(ids.Added))
	for k, a := range ids.Added {
		l.fresh[k] = anchor{a.ID, a.Rows, f.lineAt(int(l.rows[a.Row()]))}
	}
	return nil
}

// anchorLines finds a line that stands of each runner number that was ever
// given: the first one in the archive.
func (pl *Pipeline) anchorLines(f *field) (map[int32]int32, error) {
	anchors, err := pl.readAnchors()
	if err != nil || len(anchors) == 0 {
		return nil, err
	}
	out := map[int32]int32{}
	for i, line := range f.linkedAt(anchors) {
		if line < 0 {
			continue
		}
		if first, have := out[anchors[i].runner]; !have || line < first {
			out[anchors[i].runner] = line
		}
	}
	return out, nil
}
