package table

import (
	"strings"

	"github.com/rivo/uniseg"
)

// Dump is a table read back from the text of a tab.
type Dump struct {
	Tab   string
	Heads []string
	Rows  [][]string // cells as printed, one for each heading
}

// Column finds a column by its heading, -1 if there is none.
func (d *Dump) Column(head string) int {
	for i, h := range d.Heads {
		if h == head {
			return i
		}
	}
	return -1
}

// ReadDumps reads the tables of tabs as WriteText writes them, each tab below a
// line "=== name ===" and with one table at most: the rows from a rule of dashes
// down to the next empty line.
func ReadDumps(text string) []*Dump {
	var out []*Dump
	var d *Dump
	var starts []int // of the columns; none before the rule
	above := ""
	for _, l := range strings.Split(text, "\n") {
		name, isTab := strings.CutPrefix(l, "=== ")
		switch {
		case isTab && strings.HasSuffix(name, " ==="):
			d, starts = &Dump{Tab: strings.TrimSuffix(name, " ===")}, nil
			out = append(out, d)
		case d == nil:
		case starts == nil && len(l) > 0 && strings.Trim(l, "- ") == "":
			for i := range l {
				if l[i] == '-' && (i == 0 || l[i-1] == ' ') {
					starts = append(starts, i)
				}
			}
			d.Heads = cellsAt(above, starts)
		case starts != nil && l != "":
			d.Rows = append(d.Rows, cellsAt(l, starts))
		case starts != nil:
			d = nil
		}
		above = l
	}
	return out
}

// cellsAt cuts a line where columns start, counted in terminal columns.
func cellsAt(line string, starts []int) []string {
	cells := make([]strings.Builder, len(starts))
	at, c := 0, 0
	for g := uniseg.NewGraphemes(line); g.Next(); at += g.Width() {
		for c+1 < len(starts) && at >= starts[c+1] {
			c++
		}
		cells[c].WriteString(g.Str())
	}
	out := make([]string, len(cells))
	for i := range cells {
		out[i] = strings.TrimSpace(cells[i].String())
	}
	return out
}
