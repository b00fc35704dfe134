package ugly

import (
	"fmt"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

type window = age.Window

// ageCell writes what a style shows of somebody's age, the bounds that this
// puts on the birth date, and the sex that it gives away ("" if none).
func ageCell(style string, p *person, day unit.Day, l *language, k int) (cell, window, string) {
	a := age.On(p.born, day)
	y, m, d := p.born.Date()
	lo5 := a / 5 * 5
	letter := ""
	switch p.sex {
	case "M":
		letter = l.group[0]
	case "W":
		letter = l.group[1]
	}
	group := func(s string, lo, hi int, sexed bool) (cell, window, string) {
		if !sexed {
			return text(s), age.OfAges(lo, hi, day), ""
		}
		return text(s), age.OfAges(lo, hi, day), p.sex
	}
	senior, junior := "Senior", fmt.Sprintf("U%d", evenBound(a))
	switch style {
	case "age":
		return integer(a), age.OfAges(a, a, day), ""
	case "age31dec":
		ry, _, _ := day.Date()
		end := unit.NewDay(ry, 12, 31)
		b := age.On(p.born, end)
		return integer(b), age.OfAges(b, b, end), ""
	case "yob":
		return integer(y), age.OfYear(y), ""
	case "yob2":
		return text(fmt.Sprintf("%02d", y%100)), age.OfYear(y), ""
	case "dob":
		return dateCell(fmt.Sprintf("%02d/%02d/%d", d, m, y), p.born, "dd/mm/yyyy"), age.OfDate(p.born), ""
	case "dob2":
		return text(fmt.Sprintf("%02d.%02d.%02d", d, m, y%100)), age.OfDate(p.born), ""
	case "dob-words":
		return text(fmt.Sprintf("%d %s %d", d, l.months[m-1], y)), age.OfDate(p.born), ""
	case "range":
		if a < 20 {
			return group(fmt.Sprintf("%d-%d", evenBound(a)-2, evenBound(a)-1), evenBound(a)-2, evenBound(a)-1, false)
		}
		return group(fmt.Sprintf("%d-%d", lo5, lo5+4), lo5, lo5+4, false)
	case "ten-range":
		if a < 20 {
			return group("U20", 0, 19, false)
		}
		return group(fmt.Sprintf("%d-%d", a/10*10, a/10*10+9), a/10*10, a/10*10+9, false)
	case "juniors-even", "juniors-odd":
		if a < 20 {
			b, lo := evenBound(a), 0
			if style == "juniors-odd" {
				b = a + 1 + a%2 // U11, U13, U15, U17
				if a >= 17 {
					b = 20
				}
			}
			s := []string{"U%d", "Under %d", "u%d", "U-%d"}[0]
			return group(fmt.Sprintf(s, b), lo, b-1, false)
		}
	case "ten-open":
		if a >= 40 {
			return group(fmt.Sprintf("V%d", a/10*10), a/10*10, a/10*10+9, false)
		}
		if a >= 20 {
			return group(senior, 17, 39, false)
		}
		return group(junior, 0, evenBound(a)-1, false)
	case "senior-39":
		if a >= 40 {
			return group(fmt.Sprintf("V%d", lo5), lo5, lo5+4, false)
		}
		if a >= 20 {
			return group(senior, 17, 39, false)
		}
		return group(junior, 0, evenBound(a)-1, false)
	}
	if a < 20 {
		return group(junior, 0, evenBound(a)-1, false)
	}
	switch style {
	case "five", "five-spaced", "vet", "words":
		if a < 35 {
			if letter != "" && style != "vet" && l == languages["en"] {
				return group("S"+letter, 17, 34, true)
			}
			return group(senior, 17, 34, false)
		}
	}
	open := lo5 + 4
	switch style {
	case "five":
		if letter == "" {
			return group(fmt.Sprintf("X%d", lo5), lo5, open, true)
		}
		return group(fmt.Sprintf("%s%d", letter, lo5), lo5, open, true)
	case "five-spaced":
		if letter == "" {
			return group(fmt.Sprintf("X %d", lo5), lo5, open, true)
		}
		return group(fmt.Sprintf("%s %d", letter, lo5), lo5, open, true)
	case "five-range":
		if letter == "" {
			return group(fmt.Sprintf("X%d-%d", lo5, lo5+4), lo5, lo5+4, true)
		}
		return group(fmt.Sprintf("%s%d-%d", letter, lo5, lo5+4), lo5, lo5+4, true)
	case "vet":
		return group(fmt.Sprintf("%s %d", []string{"Vet", "Vet", "V", "Veteran"}[k%2], lo5), lo5, open, false)
	case "words":
		if letter == "" {
			return group(fmt.Sprintf("%d-%d", lo5, lo5+4), lo5, lo5+4, false)
		}
		w := l.sexes[0]
		for _, s := range l.sexes {
			if len(s[0]) > 2 {
				w = s
			}
		}
		s := w[0]
		if p.sex == "W" {
			s = w[1]
		}
		return group(fmt.Sprintf("%s %d-%d", s, lo5, lo5+4), lo5, lo5+4, true)
	}
	return cell{kind: isBlank}, window{}, ""
}

// evenBound is the bound of the two-year junior group: 13 is under 14.
func evenBound(a int) int { return a/2*2 + 2 }

// sexCell writes somebody's sex and the evidence that this gives.
func sexCell(style string, p *person, pair [2]string, k int) (cell, string) {
	if style == "gaps" && k%4 == 0 {
		return text([]string{"", "-", "?"}[k/4%3]), ""
	}
	if p.sex == "X" {
		switch style {
		case "with-x":
			return text([]string{"X", "X", "Non-binary"}[k%3]), "X"
		}
		return text(""), ""
	}
	s := pair[0]
	if p.sex == "W" {
		s = pair[1]
	}
	if style == "lower" {
		s = strings.ToLower(s)
	}
	return text(s), p.sex
}
