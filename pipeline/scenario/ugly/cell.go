package ugly

import (
	"strconv"

	"lapwing/pipeline/unit"
)

type cellKind uint8

const (
	isText   cellKind = iota
	isNumber          // v with number format f
	isBlank
)

// cell is one field: what a person sees, and in a workbook what is stored.
type cell struct {
	s     string
	kind  cellKind
	v     float64
	f     string // number format code of ECMA-376 Part 1, 18.8.30; "" is General
	isDay bool   // v is a day serial of the 1900 system, shifted in a 1904 workbook
}

func text(s string) cell {
	if s == "" {
		return cell{kind: isBlank}
	}
	return cell{s: s}
}

func number(s string, v float64, f string) cell { return cell{s: s, kind: isNumber, v: v, f: f} }

func integer(n int) cell { return number(strconv.Itoa(n), float64(n), "") }

// serial is the day number of the 1900 date system for days after February
// 1900: 1 January 1970 is 25569 (ECMA-376 Part 1, 18.17.4).
func serial(d unit.Day) float64 { return float64(d) + 25569 }

func dateCell(shown string, d unit.Day, f string) cell {
	return cell{s: shown, kind: isNumber, v: serial(d), f: f, isDay: true}
}
