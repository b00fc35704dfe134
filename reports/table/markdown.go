package table

import "strings"

// EscapeMarkdown makes s stand as it is in CommonMark text and table cells:
// every ASCII punctuation character that could mean something gets a backslash
// (CommonMark 0.31, section 2.4).
func EscapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>#|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// WriteMarkdown writes the table with pipes and a rule under the headings.
func (t *Table) WriteMarkdown(b *strings.Builder) {
	if t.Title != "" {
		b.WriteString("### " + EscapeMarkdown(t.Title) + "\n\n")
	}
	if len(t.Rows) == 0 {
		b.WriteString(EscapeMarkdown(t.none()) + "\n")
		return
	}
	for _, c := range t.Columns {
		b.WriteString("| " + EscapeMarkdown(c.Head) + " ")
	}
	b.WriteString("|\n")
	for _, c := range t.Columns {
		if c.Kind.Right() {
			b.WriteString("| ---: ")
		} else {
			b.WriteString("| --- ")
		}
	}
	b.WriteString("|\n")
	for _, r := range t.Rows {
		for c, col := range t.Columns {
			s := ""
			if c < len(r.Cells) {
				s = EscapeMarkdown(r.Cells[c].Show(col.Kind))
			}
			b.WriteString("| " + s + " ")
		}
		b.WriteString("|\n")
	}
	for _, m := range t.Used() {
		b.WriteString("\n" + EscapeMarkdown(m.Sign+": "+m.Text) + "\n")
	}
}
