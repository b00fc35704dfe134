package table

// Column is one column of a table.
type Column struct {
	Head string // heading as printed
	Kind Kind
	// Width is the least width in characters in a workbook, 0 for as wide as
	// the contents.
	Width int
	// Max is the greatest width in characters in a workbook, 0 for 40.
	Max int
	// Help says in a sentence what the column means; it goes to the Notes tab.
	Help string
	// Input marks a column that people fill in.
	Input bool
	// Hidden keeps a column out of sight and out of print in a workbook: it is
	// there for a chart.
	Hidden bool
	// Choices are the words that an Input column accepts; none for free text.
	Choices []string
}

// Row is one line of a table. Marks are keys of the table's Legend.
type Row struct {
	Cells []Value
	Marks []string
}

// Mark is a sign that singles out rows. Never colour alone: the sign stands in
// the row's own words (a column that prints it), the tint only helps the eye.
type Mark struct {
	Sign string // as it stands in the table: "PB"
	Text string // what it means
	Tint string // light fill, RRGGBB, "" for none
}

// String is the mark with its meaning: "PB: personal best".
func (m Mark) String() string { return m.Sign + ": " + m.Text }

// Table is rows under columns.
type Table struct {
	Name    string // name of the table in a workbook, letters and digits
	Title   string // printed above where the tab has several tables
	Columns []Column
	Rows    []Row
	Legend  []Mark
	// None is printed where there are no rows.
	None string
	// Whole is a heading: rows below each other that are the same up to that
	// column are printed on one page where they fit on one. "" where rows may be
	// parted anywhere.
	Whole string
}

// Add appends a row.
func (t *Table) Add(marks []string, cells ...Value) {
	t.Rows = append(t.Rows, Row{Cells: cells, Marks: marks})
}

// mark finds the first of the row's marks that the legend tints.
func (t *Table) tint(marks []string) string {
	for _, l := range t.Legend {
		for _, m := range marks {
			if l.Sign == m && l.Tint != "" {
				return l.Tint
			}
		}
	}
	return ""
}

// Block is a part of a tab, from the top down.
type Block interface{ block() }

// Title is a line in large type; Level 1 is the tab's, 2 a section's.
type Title struct {
	Level int
	Text  string
}

// Para is a paragraph that runs over the full width.
type Para struct {
	Text string
	Bold bool
}

// Big is a row of a few figures with their captions, for the top of a page.
type Big struct{ Figures []Figure }

// Figure is a number or short word and what it counts.
type Figure struct{ Value, Caption string }

// Pair is two small tables side by side, each of four columns at most; Right
// may be nil. In text they stand below each other.
type Pair struct{ Left, Right *Table }

// Small is a table without filters that takes the columns of the tab's Grid
// from the left on, one each.
type Small struct{ *Table }

// Full is a table with filters and a frozen heading. A tab has one at most,
// after its titles and paragraphs.
type Full struct{ *Table }

// ChartBlock places a chart below or beside the table of its tab.
type ChartBlock struct{ *Chart }

func (Title) block()      {}
func (Para) block()       {}
func (Big) block()        {}
func (Pair) block()       {}
func (Small) block()      {}
func (Full) block()       {}
func (ChartBlock) block() {}

// Tab is one sheet of a workbook.
type Tab struct {
	Name   string
	Blocks []Block
	// Grid is the widths in characters of the columns of a tab without a Full
	// table; nil for the one that Big and Pair need.
	Grid []float64
	// Landscape turns the page; the default is upright.
	Landscape bool
	// OnePage shrinks the tab to a single page when printed.
	OnePage bool
	// PrintColumns is how many columns of the table are printed and PrintRows
	// how many of its rows, 0 for all.
	PrintColumns, PrintRows int
}

// Add appends blocks.
func (t *Tab) Add(b ...Block) { t.Blocks = append(t.Blocks, b...) }

// Book is a report: what a workbook holds.
type Book struct {
	Title, Subject string
	Footer         string // left part of every printed page's footer
	// Made is the date written into the file's properties; it comes from the
	// data so that the same archive gives the same bytes.
	Made string // ISO 8601, 2026-01-03
	Tabs []*Tab
}

// Tab finds a tab by name, nil if there is none.
func (b *Book) Tab(name string) *Tab {
	for _, t := range b.Tabs {
		if t.Name == name {
			return t
		}
	}
	return nil
}
