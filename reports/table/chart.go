package table

import "github.com/xuri/excelize/v2"

// Chart is a chart native to the workbook, drawn from columns of the Full
// table of its tab.
type Chart struct {
	Title string
	// X and Y name the axes, units included.
	X, Y string
	// Category is the heading of the column along the X axis.
	Category string
	Series   []Series
	// Rows limits the chart to the last n rows of the table, 0 for all.
	Rows int
	// Height in rows of the tab, 0 for 20.
	Height int
	// YMin fixes the lower end of the Y axis; nil lets the program choose.
	YMin *float64
}

// Series is one column of figures in a chart.
type Series struct {
	Column string
	// Line draws a line with markers; else columns.
	Line bool
	// Dashed and Plain (no markers) set lines apart without colour.
	Dashed, Plain bool
}

// Ink of the series: dark blue, orange, bluish green, black, from the palette
// of Okabe and Ito (2008, "Color Universal Design"), which readers with any
// colour vision can tell apart; on paper they differ by lightness and by form
// (column, line, dashes, marker).
var ink = []string{"0072B2", "D55E00", "009E73", "000000", "CC79A7"}

func (c *Chart) build(tab string, t *Table, first, last int) (*excelize.Chart, *excelize.Chart, error) {
	if c.Rows > 0 {
		first = max(first, last-c.Rows+1)
	}
	ref := func(head string) (string, error) {
		for i, col := range t.Columns {
			if col.Head == head {
				a, err := excelize.CoordinatesToCellName(i+1, first, true)
				if err != nil {
					return "", err
				}
				z, err := excelize.CoordinatesToCellName(i+1, last, true)
				return "'" + tab + "'!" + a + ":" + z, err
			}
		}
		return "", &noColumn{tab, head}
	}
	cat, err := ref(c.Category)
	if err != nil {
		return nil, nil, err
	}
	var bars, lines []excelize.ChartSeries
	for i, s := range c.Series {
		val, err := ref(s.Column)
		if err != nil {
			return nil, nil, err
		}
		colour := ink[i%len(ink)]
		cs := excelize.ChartSeries{Name: s.Column, Categories: cat, Values: val}
		if !s.Line {
			cs.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}
			bars = append(bars, cs)
			continue
		}
		cs.Line = excelize.LineOptions{Width: 2, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}}
		if s.Dashed {
			cs.Line.Dash = excelize.LineDashSysDash
		}
		cs.Marker = excelize.ChartMarker{Symbol: "circle", Size: 5,
			Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}}
		if s.Plain {
			cs.Marker = excelize.ChartMarker{Symbol: "none"}
		}
		lines = append(lines, cs)
	}
	gap := uint(30)
	base := &excelize.Chart{
		Title:     excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: c.Title, Font: &excelize.Font{Size: 12, Bold: true, Family: font}}}},
		Legend:    excelize.ChartLegend{Position: "bottom"},
		XAxis:     excelize.ChartAxis{Title: axis(c.X), Font: excelize.Font{Size: 9, Family: font}},
		YAxis:     excelize.ChartAxis{Title: axis(c.Y), Font: excelize.Font{Size: 9, Family: font}, MajorGridLines: true, Minimum: c.YMin},
		GapWidth:  &gap,
		Dimension: excelize.ChartDimension{Width: 660, Height: uint(c.rows()) * 18},
		Format:    excelize.GraphicOptions{Positioning: "oneCell"},
	}
	switch {
	case len(bars) > 0 && len(lines) > 0:
		base.Type, base.Series = excelize.Col, bars
		return base, &excelize.Chart{Type: excelize.Line, Series: lines, Legend: base.Legend}, nil
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
	return excelize.ChartTitle{Paragraph: []excelize.RichTextRun{{Text: s, Font: &excelize.Font{Size: 9, Family: font}}}}
}

type noColumn struct{ tab, head string }

func (e *noColumn) Error() string { return "chart on tab " + e.tab + ": no column " + e.head }
