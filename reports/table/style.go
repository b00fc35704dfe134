package table

import (
	"math"

	"github.com/xuri/excelize/v2"
)

// font is one that every office program has or replaces by one of the same
// widths.
const font = "Arial"

const (
	bodySize   = 10   // points; nothing printed is smaller
	lineHeight = 13.8 // points a row: 53 rows on an upright A4 page
)

// look is everything that tells cell styles apart.
type look struct {
	size   float64
	bold   bool
	fill   string // RRGGBB
	format string // number format, "" for general, "@" for text
	right  bool
	centre bool
	wrap   bool
	shrink bool // smaller letters where the words are too long
	inner  bool // in a table: an indent parts words from the figures before them
	top    bool // at the top of the row, else in the middle
	line   byte // bottom border: 0 none, 'h' hair, 't' thin, 'm' medium
	box    bool // thin box: a cell to write in
}

// styles hands out one style number per look.
type styles struct {
	f    *excelize.File
	made map[look]int
}

func (s *styles) id(l look) (int, error) {
	if l.size == 0 {
		l.size = bodySize
	}
	if id, ok := s.made[l]; ok {
		return id, nil
	}
	st := &excelize.Style{
		Font:      &excelize.Font{Family: font, Size: l.size, Bold: l.bold, Color: "000000"},
		Alignment: &excelize.Alignment{Vertical: "center", WrapText: l.wrap, ShrinkToFit: l.shrink},
	}
	switch {
	case l.right:
		st.Alignment.Horizontal = "right"
	case l.centre:
		st.Alignment.Horizontal = "center"
	default:
		st.Alignment.Horizontal = "left"
		if l.inner {
			st.Alignment.Indent = 1
		}
	}
	if l.top {
		st.Alignment.Vertical = "top"
	}
	if l.fill != "" {
		st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{l.fill}}
	}
	if l.format != "" {
		st.CustomNumFmt = &l.format
	}
	border := map[byte]int{'h': 7, 't': 1, 'm': 2}[l.line]
	if l.box {
		for _, side := range []string{"left", "right", "top", "bottom"} {
			st.Border = append(st.Border, excelize.Border{Type: side, Color: "808080", Style: 1})
		}
	} else if border != 0 {
		st.Border = []excelize.Border{{Type: "bottom", Color: "808080", Style: border}}
	}
	id, err := s.f.NewStyle(st)
	if err != nil {
		return 0, err
	}
	s.made[l] = id
	return id, nil
}

// format is the number format of a value: ties and approximate figures get
// their sign from the format, so that the cell stays a number.
//
// ECMA-376 Part 1, 18.8.31: m right before ss is minutes; [h] runs on beyond
// 24. The choice between them is made here, not by a condition in the format,
// which not every reader understands.
func (k Kind) format(v Value) string {
	suffix := ""
	if v.mark != 0 {
		suffix = `"` + string(v.mark) + `"`
	}
	switch k {
	case Text:
		return "@"
	case Clock:
		if v.num >= 3600 {
			return "[h]:mm:ss" + suffix
		}
		return "m:ss" + suffix
	case Percent:
		return "0.00" + suffix
	case Decimal:
		if math.Round(v.num*10) == 0 {
			return `0.0;0.0`
		}
		return "0.0" + suffix + ";\u22120.0" + suffix
	case Day:
		return "d mmm yyyy"
	case Gap:
		if math.Round(v.num) == 0 { // not every reader knows a third section
			return `0" s"`
		}
		return `"+"0" s";"` + "\u2212" + `"0" s";0" s"`
	}
	return "0" + suffix
}

// cell is the value as the workbook stores it: durations and dates as days
// (ECMA-376 Part 1, 18.17.4), words as inline strings, which no program reads
// as a formula.
func (v Value) cell(k Kind) any {
	switch v.what {
	case 0:
		return nil
	case isText:
		return v.text
	}
	switch k {
	case Clock:
		return fifteen(v.num, 86400)
	case Day:
		// Serial 25569 is 1970-01-01 in the 1900 date system.
		return int64(v.num) + 25569
	case Percent, Decimal:
		return fifteen(v.num, 1)
	}
	return int64(math.Round(v.num)) // as Show has it
}
