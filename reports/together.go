package reports

import (
	"slices"
	"strings"

	"lapwing/reports/table"
)

// mostTogether is how many rows the lists of a small field have together, two
// printed pages, so that they stand below each other on one tab instead of on
// a nearly empty page each.
const mostTogether = 110

// mostSmall is how many rows a list of a larger field has at most, less than a
// printed page, that stands with others on a tab.
const mostSmall = 40

// gather puts lists that are short on one tab, in the place of the first of
// them: all of a small field's, else those that would leave much of a page
// empty.
func gather(lists []*table.Tab) []*table.Tab {
	most := mostSmall
	if rowsOn(lists) <= mostTogether {
		most = mostTogether
	}
	var out, short []*table.Tab
	at := 0
	for _, t := range lists {
		if rowsOn([]*table.Tab{t}) > most {
			out = append(out, t)
			continue
		}
		if len(short) == 0 {
			at = len(out)
		}
		short = append(short, t)
	}
	switch len(short) {
	case 0:
		return out
	case 1:
		return slices.Insert(out, at, short[0])
	}
	return slices.Insert(out, at, together(short))
}

// togetherGrid is the columns of the tab Lists: the name, which stands first,
// and figures.
var togetherGrid = []float64{22, 18, 14, 12, 13, 18}

// rowsOn counts the rows of the tabs' tables with filters.
func rowsOn(tabs []*table.Tab) int {
	n := 0
	for _, t := range tabs {
		for _, b := range t.Blocks {
			if f, ok := b.(table.Full); ok {
				n += len(f.Rows) + 3 // and title, heading, gap
			}
		}
	}
	return n
}

// together puts the tables of several tabs on one, below each other, the
// column of names first, with what the tabs say about them.
func together(tabs []*table.Tab) *table.Tab {
	out := &table.Tab{Name: "Lists", Grid: togetherGrid}
	out.Add(table.Title{Level: 1, Text: "Lists"})
	for _, t := range tabs {
		for _, b := range t.Blocks {
			switch v := b.(type) {
			case table.Title:
				out.Add(table.Title{Level: 2, Text: v.Text})
			case table.Full:
				if signs := v.Signs(); len(signs) > 0 {
					out.Add(table.Para{Text: strings.Join(signs, "; ") + "."})
				}
				out.Add(table.Small{Table: nameFirst(v.Table)})
			default:
				out.Add(b)
			}
		}
	}
	return out
}

// nameFirst gives the table with its column of names in front.
func nameFirst(t *table.Table) *table.Table {
	at := 0
	for c, col := range t.Columns {
		if col.Head == "Name" {
			at = c
		}
	}
	if at == 0 {
		return t
	}
	out := *t
	out.Columns = append([]table.Column{t.Columns[at]}, t.Columns[:at]...)
	out.Columns = append(out.Columns, t.Columns[at+1:]...)
	out.Rows = make([]table.Row, len(t.Rows))
	for i, r := range t.Rows {
		cells := make([]table.Value, len(t.Columns))
		copy(cells, r.Cells)
		moved := append([]table.Value{cells[at]}, cells[:at]...)
		out.Rows[i] = table.Row{Marks: r.Marks, Cells: append(moved, cells[at+1:]...)}
	}
	return &out
}
