package sheet

import (
	"bytes"
	"slices"
	"strings"
)

// inOneCell says that each row of a tab stands in one cell, as delimited text:
// "12;Ana Silva;24:31" in column A. That is what becomes of a text file that a
// spreadsheet program opened without dividing it.
type inOneCell struct {
	col   int // 0-based
	delim byte
	// lines are the pieces of each text that no mark divides, such as "1. Jo Lee 18:20".
	lines map[string][]string
}

// cells divides the text of a row.
func (o inOneCell) cells(text string, limits Limits) ([]string, error) {
	if o.lines != nil {
		if cells, ok := o.lines[oneLine(text)]; ok {
			return cells, nil
		}
		return []string{text}, nil
	}
	_, cells, err := newScanner([]byte(oneLine(text)), o.delim, limits).next()
	return cells, err
}

// join is the reverse of cells.
func (o inOneCell) join(cells []string) string {
	if o.lines != nil {
		return strings.Join(slices.DeleteFunc(slices.Clone(cells), isBlank), " ")
	}
	var b []byte
	for i, c := range cells {
		if i > 0 {
			b = append(b, o.delim)
		}
		b = appendField(b, c, o.delim)
	}
	return string(b)
}

// oneLine makes a line of a cell's text: line breaks inside it divide no rows.
func oneLine(s string) string { return lineBreaks.Replace(s) }

var lineBreaks = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ")

// rowsInOneCell finds out whether nine of ten rows of a tab fill one cell each,
// the same column's, with text that a delimiter divides into a table: six of ten
// have the same number of pieces, and they have a heading or times among them.
func (g *grid) rowsInOneCell(lex *lexicon, limits Limits) (o inOneCell, why string, ok bool) {
	o.col = -1
	filled, single := 0, 0
	var text bytes.Buffer
	for i := 0; i < g.len() && filled < 4*sniffRows; i++ {
		_, cells := g.at(i)
		n := rowFilled(cells)
		if n == 0 {
			continue
		}
		filled++
		for c, s := range cells {
			if n != 1 || isBlank(s) {
				continue
			}
			if o.col < 0 {
				o.col = c
			}
			if c == o.col {
				single++
				text.WriteString(oneLine(s))
				text.WriteByte('\n')
			}
		}
	}
	if single < 3 || 10*single < 9*filled {
		return o, "", false
	}
	if why := o.typedLines(g, lex, limits); why != "" {
		return o, why, true
	}
	d := sniff(text.Bytes(), lex, limits)
	o.delim = d.delim
	widths, heading, timed, rows := map[int]int{}, 0, 0, 0
	s := newScanner(text.Bytes(), o.delim, limits)
	s.pos = d.skip
	for {
		_, cells, err := s.next()
		if err != nil || cells == nil {
			break
		}
		rows++
		widths[len(cells)]++
		if rows <= headingLooks {
			score, _ := headingScore(lex, cells)
			heading = max(heading, score)
		}
		for _, c := range cells[min(1, len(cells)-1):] {
			if kindOf(c) == kClock {
				timed++
				break
			}
		}
	}
	width, most := 0, 0
	for w, n := range widths {
		if n > most || n == most && w > width {
			width, most = w, n
		}
	}
	enough := width >= 3 || width == 2 && o.delim != ','
	return o, d.why, enough && 10*most >= 6*rows && (heading >= 2 || 2*timed >= rows)
}

// says is how the rows are divided, in words.
func (o inOneCell) says(why string) string {
	if o.lines != nil {
		return "each row stands in one cell (" + why + ")"
	}
	return "each row stands in one cell, divided by " + delimiterName(o.delim) + " (" + why + ")"
}

// divideRows puts the pieces of each row into cells of their own.
func (g *grid) divideRows(o inOneCell, limits Limits) (*grid, error) {
	out := g.fresh()
	for i := range g.len() {
		row, cells := g.at(i)
		if rowFilled(cells) == 1 && !isBlank(cellAt(cells, o.col)) {
			var err error
			if cells, err = o.cells(cells[o.col], limits); err != nil {
				return nil, err
			}
		}
		out.add(row, cells)
		if err := limits.goOn(i + 1); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// typedRows is how many rows of a tab may be typed lines; nobody types more.
const typedRows = 20000

// typedLines divides the texts of a column as those of a message are, "1. Jo Lee
// 18:20"; "" where they are not of that kind.
func (o *inOneCell) typedLines(g *grid, lex *lexicon, limits Limits) (why string) {
	if g.len() > typedRows {
		return ""
	}
	var text bytes.Buffer
	var texts []string
	for i := range g.len() {
		_, cells := g.at(i)
		line := ""
		if rowFilled(cells) == 1 {
			line = oneLine(cellAt(cells, o.col))
		}
		texts = append(texts, line)
		text.WriteString(line + "\n")
	}
	if bytes.IndexByte(text.Bytes(), '\t') >= 0 {
		return "" // a mark divides them
	}
	out, d := divide(text.Bytes(), lex, limits)
	lines := textLines(out)
	if d.delim != '\t' || len(lines) < len(texts) {
		return ""
	}
	o.delim, o.lines = d.delim, map[string][]string{}
	for i, t := range texts {
		if cells := strings.Split(lines[i], "\t"); len(cells) > 1 {
			o.lines[t] = cells
		}
	}
	return d.why
}
