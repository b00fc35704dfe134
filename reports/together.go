package reports

import (
	"strings"

	"lapwing/reports/table"
)

// mostTogether is how many rows the lists of a small field have together, two
// printed pages, so that they stand below each other on one tab instead of on
// a nearly empty page each.
const mostTogether = 110

// togetherGrid is the columns of the tab Lists: the name, which stands first,
// and figures.
var togetherGrid = []float64{24, 18, 14, 12, 11, 18}

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
				var signs []string
				for _, m := range v.Used() {
					signs = append(signs, m.Sign+": "+m.Text)
				}
				if len(signs) > 0 {
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
