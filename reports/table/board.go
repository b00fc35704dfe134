package table

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// board is the grid of a tab without a Full table: two halves of four columns
// with a gap between them, widths in characters, together the width of an
// upright A4 page.
var board = []float64{7, 21, 9, 9, 2, 7, 21, 9, 9}

// quarters are the spans of the board's grid that hold a figure each.
var quarters = [][2]int{{0, 1}, {2, 3}, {5, 6}, {7, 8}}

func (p *tabWriter) big(b Big) error {
	if len(b.Figures) > len(quarters) || p.tab.Grid != nil || len(p.widths) != len(board) {
		return fmt.Errorf("%d large figures in %d columns", len(b.Figures), len(p.widths))
	}
	for _, l := range []struct {
		look   look
		height float64
		text   func(Figure) string
	}{
		{look{size: 18, bold: true, centre: true, fill: "EFEFEF"}, bigHeight, func(f Figure) string { return f.Value }},
		{look{centre: true, fill: "EFEFEF", shrink: true}, captionHeight, func(f Figure) string { return f.Caption }},
	} {
		id, err := p.styles.id(l.look)
		if err != nil {
			return err
		}
		cells := make([]any, len(board))
		for i := range cells {
			cells[i] = excelize.Cell{StyleID: id}
		}
		for i, f := range b.Figures {
			cells[quarters[i][0]] = excelize.Cell{StyleID: id, Value: l.text(f)}
		}
		if err := p.set(cells, l.height); err != nil {
			return err
		}
		for _, q := range quarters {
			if err := p.merge(q[0], q[1], p.row); err != nil {
				return err
			}
		}
	}
	return nil
}

// slots gives for each of n columns the first and last grid column of a half.
// Words in the last column of a page get two: what they run over its edge, some
// programs count as part of the page and shrink it all.
func slots(n int) [][2]int {
	return [][][2]int{{{0, 3}}, {{0, 2}, {3, 3}}, {{0, 0}, {1, 1}, {2, 3}}, {{0, 0}, {1, 1}, {2, 2}, {3, 3}}}[n-1]
}

// boardRows is the number of rows of a small table: title, heading, rows.
func (t *Table) boardRows() int { return 2 + max(1, len(t.Rows)) }

func (p *tabWriter) pair(v Pair) error {
	if p.tab.Grid != nil || len(p.widths) != len(board) {
		return fmt.Errorf("tables side by side need a tab of their own")
	}
	if err := p.set(nil, gapHeight); err != nil {
		return err
	}
	halves := []*Table{v.Left, v.Right}
	rows := p.rowsOf(v) - 1
	for r := range rows {
		cells := make([]any, len(board))
		var spans [][2]int
		for h, t := range halves {
			if t == nil || r >= t.boardRows() {
				continue
			}
			if len(t.Columns) < 1 || len(t.Columns) > 4 {
				return fmt.Errorf("table %q has %d columns, a half page takes 1 to 4", t.Title, len(t.Columns))
			}
			s, err := p.half(t, r, 5*h, cells)
			if err != nil {
				return err
			}
			spans = append(spans, s...)
		}
		height := lineHeight
		if r == 0 {
			height = sectionHeight
		}
		if err := p.set(cells, height); err != nil {
			return err
		}
		for _, s := range spans {
			if err := p.merge(s[0], s[1], p.row); err != nil {
				return err
			}
		}
	}
	return nil
}

// half fills row r of a small table into the grid from column at on and gives
// the spans to merge.
func (p *tabWriter) half(t *Table, r, at int, cells []any) ([][2]int, error) {
	var spans [][2]int
	put := func(from, to int, v any, l look) error {
		id, err := p.styles.id(l)
		if err != nil {
			return err
		}
		for c := from; c <= to; c++ {
			cells[at+c] = excelize.Cell{StyleID: id}
		}
		cells[at+from] = excelize.Cell{StyleID: id, Value: v}
		spans = append(spans, [2]int{at + from, at + to})
		return nil
	}
	if r == 0 {
		w := board[0] + board[1] + board[2] + board[3] - 1
		return spans, put(0, 3, t.Title, look{size: 11, bold: true, line: 'm', shrink: 1.1*boldWider*measure(t.Title) > w})
	}
	if len(t.Rows) == 0 {
		if r == 1 {
			return spans, put(0, 3, t.none(), look{})
		}
		return nil, nil
	}
	for c, s := range slots(len(t.Columns)) {
		col := t.Columns[c]
		if r == 1 {
			if err := put(s[0], s[1], col.Head, look{bold: true, right: col.Kind.Right(), inner: true, line: 't'}); err != nil {
				return nil, err
			}
			continue
		}
		var v Value
		if row := t.Rows[r-2]; c < len(row.Cells) {
			v = row.Cells[c]
		}
		l := look{format: col.Kind.format(v), right: col.Kind.Right(), inner: true, line: 'h'}
		if col.Kind == Text {
			// Small tables don't wrap: of a name that is too long the first is
			// shortened; what is too long still is printed smaller, and only what
			// would be too small to read ends in "…".
			w := 0.0
			for i := s[0]; i <= s[1]; i++ {
				w += board[i]
			}
			if col.Head == "Name" && measure(v.text) > w-2 {
				v.text = initialled(v.text)
			}
			l.shrink = measure(v.text) > w-2
			v.text = fit(v.text, 1.5*w)
		}
		if err := put(s[0], s[1], v.cell(col.Kind), l); err != nil {
			return nil, err
		}
	}
	return spans, nil
}

// initialled is a name with the first of its names as an initial: "C. Smythe-Orr".
func initialled(name string) string {
	first, rest, ok := strings.Cut(name, " ")
	if r, size := utf8.DecodeRuneInString(first); ok && size < len(first) {
		return string(r) + ". " + rest
	}
	return name
}
