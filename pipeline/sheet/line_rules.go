package sheet

import (
	"slices"
	"strings"

	"lapwing/pipeline/text"
)

// lineRule is a line beside the table that says of some rows that they do not count, "The tail
// walker is not in the results", or corrects the time of one, "Correction: Jo Lee ran 19:10".
type lineRule struct {
	line, folded string
	corrects     bool
	says         string // what is noted on such rows
}

// mostLineRules bounds the lines that are held against every row.
const mostLineRules = 20

// rulesOfLines are such lines among those beside a table.
func rulesOfLines(lines []string) (rules []lineRule) {
	for _, l := range lines {
		if len(rules) == mostLineRules {
			break
		}
		if len(l) > 200 {
			continue
		}
		folded := fold(l)
		words := strings.Fields(folded)
		switch {
		case len(words) > 24 || len(words) < 3:
		case slices.ContainsFunc(words[:min(3, len(words))], func(w string) bool { return correctionWords[w] }) && clockInside.MatchString(l):
			rules = append(rules, lineRule{line: l, folded: " " + folded + " ", corrects: true, says: "time disputed: " + l})
		case text.Uncounted(folded):
			rules = append(rules, lineRule{line: l, folded: " " + folded + " ", says: l})
		}
	}
	return rules
}

// about says whether a line speaks of a row: it names the runner whom it corrects, with another
// time than the row's, or has the words of the row's note in it.
func (l *lineRule) about(p *Part, cells []string) bool {
	if l.corrects {
		name := ""
		if at := p.Index(Name); at >= 0 {
			name = fold(cellAt(cells, at))
		} else if g, f := p.Index(GivenName), p.Index(FamilyName); g >= 0 && f >= 0 {
			name = fold(cellAt(cells, g) + " " + cellAt(cells, f))
		}
		if clocks := clockInside.FindAllString(l.line, 3); len(clocks) == 1 && strings.Contains(clocks[0], trim(cellAt(cells, p.rules.time))) {
			return false // the row has it already
		}
		return strings.Contains(name, " ") && strings.Contains(l.folded, " "+name+" ")
	}
	for _, m := range [...]Meaning{Notes, Status} {
		if at := p.Index(m); at >= 0 {
			if f := fold(cellAt(cells, at)); len(f) >= 4 && strings.Contains(l.folded, " "+f) {
				return true
			}
		}
	}
	if at := p.Index(Name); at >= 0 {
		if c := trim(cellAt(cells, at)); strings.HasSuffix(c, ")") {
			f := fold(c[strings.LastIndexByte(c, '(')+1:])
			return len(f) >= 4 && strings.Contains(l.folded, " "+f)
		}
	}
	return false
}
