package sheet

import (
	"regexp"
	"strings"
)

// labelled is a line that says what its value is: "Name: Jo Lee".
var labelled = regexp.MustCompile(`^\s*(\pL[\pL /.-]{0,24}?)\s*[:=]\s*(\S.*?)?\s*$`)

// labelledLines makes a table of people described one below the other, a fact a line:
// "Name: Jo Lee", "Time: 18:20", and again for the next. The labels must be the same, in
// the same order, for each of them, and say what a name and a time or a place is. The
// heading stands in the first line of the first, each row in the second line of its own.
// nil where that is not so.
func labelledLines(lines []string, _ byte) []string {
	lex := newLexicon(Options{})
	var labels []string
	first := -1
	for i := 0; i < len(lines) && first < 0; i++ { // a label that comes again, and those between
		m := labelled.FindStringSubmatch(lines[i])
		if m == nil || !lex.read(m[1]).known {
			continue
		}
		labels = labels[:0]
		for j := i; j < len(lines) && j < i+20; j++ {
			n := labelled.FindStringSubmatch(lines[j])
			if n == nil {
				if trim(lines[j]) == "" {
					continue
				}
				break
			}
			if j > i && fold(n[1]) == fold(m[1]) {
				first = i
				break
			}
			labels = append(labels, n[1])
		}
	}
	if first < 0 || len(labels) < 2 {
		return nil
	}
	var core [3]bool
	for _, l := range labels {
		switch g := lex.read(l); {
		case !g.known:
		case g.meaning.isName():
			core[0] = true
		case g.meaning.isTime(), g.meaning == Position:
			core[1] = true
		}
	}
	if !core[0] || !core[1] {
		return nil
	}
	out := make([]string, len(lines))
	copy(out, lines[:first])
	out[first] = strings.Join(labels, "\t")
	people := 0
	var row []string
	second := 0
	i := first
	for ; i < len(lines); i++ {
		m := labelled.FindStringSubmatch(lines[i])
		if m == nil && trim(lines[i]) == "" && len(row) == 0 {
			continue
		}
		if m == nil || fold(m[1]) != fold(labels[len(row)]) {
			if len(row) > 0 {
				return nil
			}
			break
		}
		if row = append(row, strings.ReplaceAll(m[2], "\t", " ")); len(row) == 2 {
			second = i
		}
		if len(row) == len(labels) {
			out[second] = strings.Join(row, "\t")
			row = nil
			people++
		}
	}
	if people < 3 || len(row) > 0 {
		return nil
	}
	copy(out[i:], lines[i:])
	return out
}
