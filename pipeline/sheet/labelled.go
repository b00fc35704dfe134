package sheet

import (
	"regexp"
	"strings"
)

// labelled is a line that says what its value is: "Name: Jo Lee".
var labelled = regexp.MustCompile(`^\s*(\pL[\pL /.-]{0,24}?)\s*[:=]\s*(\S.*?)?\s*$`)

// labelledLines makes a table of people described one below the other, a fact a line:
// "Name: Jo Lee", "Time: 18:20", and again for the next, with blank lines or rules between
// them. Each begins with the same label; others may lack, and stand in another order. Among
// the labels that most of them have must be those of a name and of a time or a place. The
// heading stands in the first line of the first, each row in the second line of its own.
// nil where that is not so, or labelled lines follow behind what is none.
func labelledLines(lines []string, _ byte) []string {
	lex := newLexicon(Options{})
	first, begin := firstLabel(lines, lex)
	if first < 0 {
		return nil
	}
	var labels []string
	column, count := map[string]int{}, map[string]int{}
	type person struct {
		line int
		told map[int]string
	}
	var people []person
	end, divided := len(lines), false
	for i := first; i < len(lines); i++ {
		m := labelled.FindStringSubmatch(lines[i])
		if m == nil {
			if betweenPeople(lines[i]) {
				divided = true
				continue
			}
			end = i
			break
		}
		key := fold(m[1])
		_, again := column[key]
		switch {
		case key == begin, divided && again && toldOf(people[len(people)-1].told, column[key]): // one without a place, who did not finish
			people = append(people, person{i, map[int]string{}})
		case len(people[len(people)-1].told) == 1:
			people[len(people)-1].line = i
		}
		divided = false
		c, ok := column[key]
		if !ok {
			c = len(labels)
			column[key] = c
			labels = append(labels, m[1])
		}
		now := people[len(people)-1].told
		if _, twice := now[c]; twice || len(labels) > 20 {
			return nil
		}
		now[c] = strings.ReplaceAll(m[2], "\t", " ")
		count[key]++
	}
	var core [2]bool
	for _, l := range labels {
		switch g := lex.read(l); {
		case !g.known || 2*count[fold(l)] < len(people):
		case g.meaning.isName():
			core[0] = true
		case g.meaning.isTime(), g.meaning == Position:
			core[1] = true
		}
	}
	if !core[0] || !core[1] || len(people) < 3 || people[0].line == first {
		return nil
	}
	out := make([]string, len(lines))
	copy(out, lines[:first])
	out[first] = strings.Join(labels, "\t")
	for _, p := range people {
		row := make([]string, len(labels))
		for c, s := range p.told {
			row[c] = s
		}
		out[p.line] = strings.Join(row, "\t")
	}
	for i := end; i < len(lines); i++ {
		if m := labelled.FindStringSubmatch(lines[i]); m != nil && fold(m[1]) == begin {
			return nil
		}
		out[i] = lines[i]
	}
	return out
}

// factRows is labelledLines for a table whose labels stand in one cell and the values in the next.
func (t table) factRows(lex *lexicon) bool {
	if t.grid.len() < 6 || t.grid.len() > typedRows {
		return false
	}
	pairs, last := 0, ""
	for i := range min(t.grid.len(), 30) { // a heading that comes again alone with a value
		if _, cells := t.grid.at(i); rowFilled(cells) <= 2 {
			if c := firstFilled(cells); lex.read(c).meaning.isName() {
				if pairs++; pairs > 1 && fold(c) == last {
					break
				}
				last = fold(c)
			}
		}
	}
	if pairs < 2 {
		return false
	}
	lines := make([]string, t.grid.len())
	for i := range lines {
		_, cells := t.grid.at(i)
		switch c := firstFilled(cells); rowFilled(cells) {
		case 0:
		case 1, 2:
			lines[i] = strings.TrimRight(c, " :") + ": "
			for _, v := range cells {
				if v = trim(v); v != "" && v != c {
					lines[i] += v
				}
			}
		default:
			lines[i] = strings.Join(cells, "\t")
		}
	}
	out := labelledLines(lines, 0)
	if out == nil {
		return false
	}
	return t.grid.mend(func(i, _ int, _ []string) ([]string, bool) {
		return strings.Split(out[i], "\t"), out[i] != lines[i]
	}) > 0
}

// toldOf says whether a column of a person is told already.
func toldOf(told map[int]string, column int) bool {
	_, ok := told[column]
	return ok
}

// firstLabel is the line of the first label that is a heading and comes again after at most
// twenty lines, all between labelled, blank or rules, with the label folded; -1 where none does.
func firstLabel(lines []string, lex *lexicon) (at int, label string) {
	for i, l := range lines {
		m := labelled.FindStringSubmatch(l)
		if m == nil || !lex.read(m[1]).known {
			continue
		}
		for j := i + 1; j < len(lines) && j < i+20; j++ {
			n := labelled.FindStringSubmatch(lines[j])
			if n == nil && !betweenPeople(lines[j]) {
				break
			}
			if n != nil && fold(n[1]) == fold(m[1]) {
				if j > i+1 {
					return i, fold(m[1])
				}
				break
			}
		}
	}
	return -1, ""
}

// betweenPeople says whether a line only divides those above it from those below.
func betweenPeople(line string) bool { return strings.Trim(line, " \t\r-=_*~.·–—#+\"") == "" }
