package sheet

import "strings"

// lineForms are forms of lines of several cells, each with a day in a cell of its own.
type lineForms map[string]bool

// titleForms are the forms of the lines above a heading that give the day in a cell among
// others: "Osierholm | Round | 3 | on | 31 January 2026". A line of one of them between the
// rows begins another run, however many cells it has.
func titleForms(g *grid, heading int) (forms lineForms) {
	for i := 0; i < g.len() && i < headingLooks; i++ {
		row, cells := g.at(i)
		if row >= heading {
			break
		}
		if f := lineForm(cells); f != "" {
			if forms == nil {
				forms = lineForms{}
			}
			forms[f] = true
		}
	}
	return forms
}

// like says whether a line has one of the forms.
func (f lineForms) like(cells []string) bool { return len(f) > 0 && f[lineForm(cells)] }

// lineForm is the words of a line in their cells, with its numbers and its one day left open; ""
// for a line without a day or without words.
func lineForm(cells []string) string {
	var b strings.Builder
	days, words, open := 0, 0, 0
	for _, c := range cells {
		switch k := kindOf(c); k {
		case kBlank:
			open++
			continue
		case kDate:
			days++
			b.WriteString(strings.Repeat("|", open) + "\x00d")
		case kInt, kDecimal:
			b.WriteString(strings.Repeat("|", open) + "\x00n")
		case kClock, kStatus:
			return ""
		default:
			words++
			b.WriteString(strings.Repeat("|", open) + fold(c))
		}
		open = 1
	}
	if days != 1 || words == 0 {
		return ""
	}
	return b.String()
}
