package table

import "github.com/xuri/excelize/v2"

// Chart is a chart native to the workbook, drawn from columns of the Full
// table of its tab.
type Chart struct {
	Title string
	// X names the X axis, units included; "" where the title says it.
	X string
	// Category is the heading of the column along the X axis.
	Category string
	Series   []Series
	// Rows limits the chart to the last n rows of the table, 0 for all.
	Rows int
	// Top limits it to the first n rows, 0 for all.
	Top int
	// Newest: the rows run from the newest down, and the chart from the oldest,
	// on the left, to the newest.
	Newest bool
	// Height in rows of the tab, 0 for 20.
	Height int
	// Axis fixes the ends of the Y axis and the distance of its lines, in the
	// unit of the series' Kind; nil lets the program choose.
	Axis *Axis
}

// Series is one column of figures in a chart.
type Series struct {
	Column string
	// Line draws a line with markers; else columns.
	Line bool
	// Dashed and Plain (no markers) set lines apart without colour.
	Dashed, Plain bool
	// Dots draws markers only: for values that no line should join.
	Dots bool
}

// Axis is the range of an axis. Step 0 lets the program choose the lines; Max
// not above Min leaves the upper end open.
type Axis struct{ Min, Max, Step float64 }

// mostLabels is how many labels stand legibly along an axis: across, and
// turned upright.
const (
	mostLabels   = 20
	mostUpright  = 36
	shortLabel   = 5 // characters that stand across without being broken
	uprightTurns = -90
)

// labels turns the labels of the X axis upright where they are too long or too
// many to stand across, which some programs would do one letter a line, and
// leaves out as many as needed.
func (c *Chart) labels(t *Table, column, rows int) (turn, skip int) {
	longest := 0
	for _, r := range t.Rows {
		if column < len(r.Cells) {
			longest = max(longest, width(r.Cells[column].Show(t.Columns[column].Kind)))
		}
	}
	most := mostLabels
	if rows > mostLabels || longest > shortLabel && rows > mostLabels/2 {
		turn, most = uprightTurns, mostUpright
	}
	return turn, (rows + most - 1) / most
}

// Ink of the series: dark blue, orange, bluish green, black, from the palette
// of Okabe and Ito (2008, "Color Universal Design"), which readers with any
// colour vision can tell apart; on paper they differ by lightness and by form
// (column, line, dashes, marker).
var ink = []string{"0072B2", "D55E00", "009E73", "000000", "CC79A7"}

// look is how a series is drawn, without its figures. The library draws a line in the
// colour of the fill.
func (s Series) look(colour string) excelize.ChartSeries {
	fill := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
	cs := excelize.ChartSeries{Fill: fill}
	if !s.Line {
		return cs
	}
	cs.Line = excelize.LineOptions{Width: 2}
	if s.Dashed {
		cs.Line.Dash = excelize.LineDashSysDash
	}
	cs.Marker = excelize.ChartMarker{Symbol: "circle", Size: 5, Fill: fill}
	if s.Dots {
		cs.Line.Type = excelize.LineNone
		cs.Marker.Size = 8
		if s.Dashed {
			cs.Marker.Symbol = "diamond"
		}
	}
	if s.Plain {
		cs.Marker = excelize.ChartMarker{Symbol: "none"}
	}
	return cs
}

// frame is the chart without its series: title, legend and axes. x is the column of the
// labels, rows how many there are, scale the number format of the values, of which
// perUnit make one in the workbook.
func (c *Chart) frame(t *Table, x, rows, wide int, scale string, perUnit float64) *excelize.Chart {
	turn, skip := c.labels(t, x, rows)
	gap, plain, small := uint(30), false, excelize.Font{Size: 9, Family: font, Color: "000000"}
	base := &excelize.Chart{
		Title:  excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: c.Title, Font: &excelize.Font{Size: 12, Bold: true, Family: font, Color: "000000"}}}},
		Legend: excelize.ChartLegend{Position: "bottom"},
		XAxis: excelize.ChartAxis{Title: axis(c.X), Font: small, TickLabelPosition: excelize.ChartTickLabelLow, TickLabelSkip: skip,
			Alignment: excelize.Alignment{TextRotation: turn},
			NumFmt:    excelize.ChartNumFmt{CustomNumFmt: t.Columns[x].Kind.format(Value{})}},
		YAxis: excelize.ChartAxis{Font: small, MajorGridLines: true,
			NumFmt: excelize.ChartNumFmt{CustomNumFmt: scale}},
		VaryColors: &plain,
		GapWidth:   &gap,
		Dimension:  excelize.ChartDimension{Width: uint(wide), Height: uint(c.rows()) * 18},
		Format:     excelize.GraphicOptions{Positioning: "oneCell"},
	}
	if c.Newest {
		// The Y axis would change sides with it; its labels stay on the left.
		base.XAxis.ReverseOrder, base.YAxis.TickLabelPosition = true, excelize.ChartTickLabelHigh
	}
	if a := c.Axis; a != nil {
		low, high := a.Min/perUnit, a.Max/perUnit
		base.YAxis.Minimum, base.YAxis.MajorUnit = &low, a.Step/perUnit
		if high > low {
			base.YAxis.Maximum = &high
		}
	}
	return base
}

// build gives the chart and, where lines lie over columns, a second one for the
// lines. head, first and last are rows of the tab: heading, first and last row
// of figures; wide is the width in pixels.
func (c *Chart) build(tab string, t *Table, head, first, last, wide int) (*excelize.Chart, *excelize.Chart, error) {
	if c.Rows > 0 {
		first = max(first, last-c.Rows+1)
	}
	if c.Top > 0 {
		last = min(last, first+c.Top-1)
	}
	column := func(head string) (i int, err error) {
		for i, col := range t.Columns {
			if col.Head == head {
				return i, nil
			}
		}
		return 0, &noColumn{tab, head}
	}
	cells := func(col, from, to int) (string, error) {
		a, err := excelize.CoordinatesToCellName(col+1, from, true)
		if err != nil || from == to {
			return "'" + tab + "'!" + a, err
		}
		z, err := excelize.CoordinatesToCellName(col+1, to, true)
		return "'" + tab + "'!" + a + ":" + z, err
	}
	x, err := column(c.Category)
	if err != nil {
		return nil, nil, err
	}
	cat, err := cells(x, first, last)
	if err != nil {
		return nil, nil, err
	}
	var bars, lines []excelize.ChartSeries
	scale, perUnit := "", 1.0
	for i, s := range c.Series {
		y, err := column(s.Column)
		if err != nil {
			return nil, nil, err
		}
		val, err := cells(y, first, last)
		if err != nil {
			return nil, nil, err
		}
		name, err := cells(y, head, head)
		if err != nil {
			return nil, nil, err
		}
		if i == 0 { // counts are whole, also beside a mean
			scale = t.Columns[y].Kind.format(t.largest(y))
		}
		if t.Columns[y].Kind == Clock {
			perUnit = 86400 // a workbook stores seconds as parts of a day
		}
		cs := s.look(ink[i%len(ink)])
		cs.Name, cs.Categories, cs.Values = name, cat, val
		if s.Line {
			lines = append(lines, cs)
		} else {
			bars = append(bars, cs)
		}
	}
	base := c.frame(t, x, last-first+1, wide, scale, perUnit)
	switch {
	case len(bars) > 0 && len(lines) > 0:
		base.Type, base.Series = excelize.Col, bars
		return base, &excelize.Chart{Type: excelize.Line, Series: lines, Legend: base.Legend, XAxis: base.XAxis, YAxis: base.YAxis, VaryColors: base.VaryColors}, nil
	case len(bars) > 0:
		base.Type, base.Series = excelize.Col, bars
	default:
		base.Type, base.Series = excelize.Line, lines
	}
	return base, nil, nil
}

func (c *Chart) rows() int {
	if c.Height > 0 {
		return c.Height
	}
	return 20
}

func axis(s string) excelize.ChartTitle {
	if s == "" {
		return excelize.ChartTitle{}
	}
	return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: s, Font: &excelize.Font{Size: 9, Family: font, Color: "000000"}}}}
}

type noColumn struct{ tab, head string }

func (e *noColumn) Error() string { return "chart on tab " + e.tab + ": no column " + e.head }

// largest is the largest value of a column, for the format of its axis.
func (t *Table) largest(column int) (v Value) {
	for _, r := range t.Rows {
		if column < len(r.Cells) && r.Cells[column].what == isNumber && r.Cells[column].num > v.num {
			v.num = r.Cells[column].num
		}
	}
	return v
}
