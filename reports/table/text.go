package table

import (
	"strings"

	"github.com/rivo/uniseg"
)

// width is the number of terminal columns that s takes (Unicode Standard Annex
// 11, East Asian Width, by extended grapheme cluster).
func width(s string) int { return uniseg.StringWidth(s) }

// Right says whether values of the kind stand flush right.
func (k Kind) Right() bool { return k != Text && k != Day }

// pad fills s with spaces to n terminal columns.
func pad(s string, n int, right bool) string {
	fill := strings.Repeat(" ", max(0, n-width(s)))
	if right {
		return fill + s
	}
	return s + fill
}

// cut shortens s to n terminal columns, ending in "…" where something is lost.
func cut(s string, n int) string {
	if width(s) <= n {
		return s
	}
	var b strings.Builder
	used := 0
	for g := uniseg.NewGraphemes(s); g.Next(); {
		if used+g.Width() > n-1 {
			break
		}
		used += g.Width()
		b.WriteString(g.Str())
	}
	return b.String() + "…"
}

// WriteText lays the table out in columns of spaces. limit is the greatest
// line width in characters, 0 for none: the widest text columns give way.
func (t *Table) WriteText(b *strings.Builder, limit int) {
	if t.Title != "" {
		b.WriteString(t.Title + "\n")
	}
	if len(t.Rows) == 0 {
		b.WriteString("  " + t.none() + "\n")
		return
	}
	cells := make([][]string, len(t.Rows))
	w := make([]int, len(t.Columns))
	for c, col := range t.Columns {
		w[c] = width(col.Head)
	}
	for r, row := range t.Rows {
		cells[r] = make([]string, len(t.Columns))
		for c := range t.Columns {
			if c < len(row.Cells) {
				cells[r][c] = strings.ReplaceAll(row.Cells[c].Show(t.Columns[c].Kind), "\n", " / ")
			}
			w[c] = max(w[c], width(cells[r][c]))
		}
	}
	if limit > 0 {
		t.squeeze(w, limit)
	}
	line := func(get func(c int) string) {
		var l strings.Builder
		for c, col := range t.Columns {
			if c > 0 {
				l.WriteString("  ")
			}
			l.WriteString(pad(cut(get(c), w[c]), w[c], col.Kind.Right()))
		}
		b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
	}
	line(func(c int) string { return t.Columns[c].Head })
	line(func(c int) string { return strings.Repeat("-", w[c]) })
	for r := range cells {
		line(func(c int) string { return cells[r][c] })
	}
	for _, s := range t.Signs() {
		b.WriteString(s + "\n")
	}
}

// squeeze takes from the widest text columns, down to 8, until a line fits.
func (t *Table) squeeze(w []int, limit int) {
	for {
		total, widest := 2*(len(w)-1), -1
		for c, n := range w {
			total += n
			if t.Columns[c].Kind == Text && n > 8 && (widest < 0 || n > w[widest]) {
				widest = c
			}
		}
		if total <= limit || widest < 0 {
			return
		}
		w[widest]--
	}
}

func (t *Table) none() string {
	if t.None != "" {
		return t.None
	}
	return "none"
}

// Used is the part of the legend whose marks stand in the table.
func (t *Table) Used() []Mark {
	in := map[string]bool{}
	for _, r := range t.Rows {
		for _, m := range r.Marks {
			in[m] = true
		}
	}
	var u []Mark
	for _, m := range t.Legend {
		if in[m.Sign] {
			u = append(u, m)
		}
	}
	return u
}

// Signs is what the marks that stand in the table mean, each in a line.
func (t *Table) Signs() []string {
	var out []string
	for _, m := range t.Used() {
		out = append(out, m.String())
	}
	return out
}

// Text is the whole book as plain text, tab after tab.
func (b *Book) Text() string {
	var s strings.Builder
	for i, t := range b.Tabs {
		if i > 0 {
			s.WriteString("\n")
		}
		s.WriteString("=== " + t.Name + " ===\n")
		t.WriteText(&s, 0)
	}
	return s.String()
}

// WriteText writes the tab's blocks below each other, in lines of at most
// limit characters (0: no limit).
func (t *Tab) WriteText(s *strings.Builder, limit int) {
	for _, blk := range t.Blocks {
		switch v := blk.(type) {
		case Title:
			if v.Level > 1 {
				s.WriteString("\n")
			}
			s.WriteString(v.Text + "\n")
		case Para:
			s.WriteString(Wrap(v.Text, limit) + "\n")
		case Big:
			for _, f := range v.Figures {
				s.WriteString(f.Value + " " + f.Caption + "\n")
			}
		case Pair:
			for _, p := range []*Table{v.Left, v.Right} {
				if p != nil {
					s.WriteString("\n")
					p.WriteText(s, limit)
				}
			}
		case Small:
			v.WriteText(s, limit)
		case Full:
			v.WriteText(s, limit)
		case ChartBlock:
			s.WriteString("[chart: " + v.Chart.Title + "]\n")
		}
	}
}

// Wrap breaks a paragraph into lines of at most limit characters (0: one line).
func Wrap(p string, limit int) string {
	if limit <= 0 {
		return p
	}
	var b strings.Builder
	used := 0
	for _, w := range strings.Fields(p) {
		if used > 0 && used+1+width(w) > limit {
			b.WriteString("\n")
			used = 0
		}
		if used > 0 {
			b.WriteString(" ")
			used++
		}
		b.WriteString(w)
		used += width(w)
	}
	return b.String()
}
