package table

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"lapwing/pipeline/unit"
)

// Kind says what the values of a column are and so how they are shown.
type Kind uint8

const (
	Text    Kind = iota // words, left
	Place               // position; a tie is shown as "2="
	Whole               // whole number
	Clock               // running time in whole seconds: 24:31, 1:02:03
	Percent             // percentage to 0.01; an approximate one is shown as "~"
	Day                 // calendar day
	Gap                 // difference in seconds: "+12 s", "−3 s"
	Decimal             // number to one decimal
)

// Value is one cell: nothing, words, or a number in the unit of its column's
// Kind. The zero Value is an empty cell: not known is never shown as 0.
type Value struct {
	text string
	num  float64
	what uint8 // 0 empty, 1 text, 2 number
	mark rune  // '=' for a tie, '~' for an approximate figure, else 0
}

const (
	isText   = 1
	isNumber = 2
)

// Words is a text cell. Control characters, which could move a terminal's
// cursor or break a workbook, become spaces.
func Words(s string) Value {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || r == unicode.ReplacementChar {
			return ' '
		}
		return r
	}, s)
	if s = strings.TrimSpace(s); s == "" {
		return Value{}
	}
	return Value{text: s, what: isText}
}

// Lines are words on several lines of one cell, divided by "\n".
func Lines(s string) Value {
	var lines []string
	for l := range strings.SplitSeq(s, "\n") {
		if w := Words(l); w.what == isText {
			lines = append(lines, w.text)
		}
	}
	if len(lines) == 0 {
		return Value{}
	}
	return Value{text: strings.Join(lines, "\n"), what: isText}
}

// Number is a cell of a numeric Kind: a place, a count, seconds, a percentage.
func Number[T int | int32 | int64 | float64](n T) Value {
	if f := float64(n); !math.IsNaN(f) && !math.IsInf(f, 0) {
		return Value{num: f, what: isNumber}
	}
	return Value{}
}

// Maybe is Number where n is known, else an empty cell.
func Maybe[T int | int32 | int64 | float64](n *T) Value {
	if n == nil {
		return Value{}
	}
	return Number(*n)
}

// On is a cell of Kind Day.
func On(d unit.Day) Value { return Value{num: float64(d), what: isNumber} }

// Tie marks a shared place.
func (v Value) Tie(tied bool) Value {
	if tied {
		v.mark = '='
	}
	return v
}

// About marks an approximate figure.
func (v Value) About(approximate bool) Value {
	if approximate {
		v.mark = '~'
	}
	return v
}

// Empty says whether the cell holds nothing.
func (v Value) Empty() bool { return v.what == 0 }

// Num gives the number of a numeric cell.
func (v Value) Num() (float64, bool) { return v.num, v.what == isNumber }

// Show is the value as words, as every renderer but the workbook prints it and
// as the workbook's number format shows it.
func (v Value) Show(k Kind) string {
	switch v.what {
	case 0:
		return ""
	case isText:
		return v.text
	}
	var s string
	switch k {
	case Clock:
		s = unit.Clock(int32(math.Round(v.num)))
	case Percent:
		s = strconv.FormatFloat(v.num, 'f', 2, 64)
	case Decimal:
		if s = strconv.FormatFloat(math.Abs(v.num), 'f', 1, 64); v.num < 0 && s != "0.0" {
			s = "\u2212" + s
		}
	case Day:
		s = unit.Day(v.num).Time().Format("2 Jan 2006")
	case Gap:
		n := int(math.Round(v.num))
		switch {
		case n > 0:
			s = "+" + strconv.Itoa(n) + " s"
		case n < 0:
			s = "\u2212" + strconv.Itoa(-n) + " s"
		default:
			s = "0 s"
		}
	default:
		s = strconv.FormatFloat(math.Round(v.num), 'f', -1, 64)
	}
	if v.mark != 0 {
		s += string(v.mark)
	}
	return s
}

// fifteen gives the number with at most 15 significant digits that is nearest
// to n/per, or the next one above where the nearest lies below: the workbook
// library cuts what is longer, and a time that falls short of its whole second
// would be shown a second too low by a program that cuts as well.
func fifteen(n, per float64) float64 {
	v := n / per
	s := strconv.FormatFloat(v, 'e', 14, 64)
	f, _ := strconv.ParseFloat(s, 64)
	if f*per < n {
		mantissa, exponent, _ := strings.Cut(s, "e")
		e, _ := strconv.Atoi(exponent)
		m, _ := strconv.ParseFloat(mantissa, 64)
		f, _ = strconv.ParseFloat(strconv.FormatFloat(m+1e-14, 'f', 14, 64)+"e"+strconv.Itoa(e), 64)
	}
	return f
}
