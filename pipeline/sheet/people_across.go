package sheet

import (
	"slices"
	"strings"
)

// A couple, a family or a few friends keep one table of their runs: a run on each row, and a column of times
// for each of them, "Date | Course | Jo Lee | Al Roe", perhaps with one of places beside it.

// fewestDown is how many runs such a table has at least.
const fewestDown = 3

// personColumn is where a runner's time stands, and his or her place, -1 for none.
type personColumn struct {
	name        string
	clock, rank int
}

// peopleAcross turns such a table into one for each runner. nil where it is no such table: the rows with times
// have a day of their own each, under a heading for days, two columns of times or more have a name above
// them, and nobody is named on the rows. Names of one word count beside a column of courses.
func (t table) peopleAcross(lex *lexicon) (out []table) {
	heading, day := -1, -1
	var people []personColumn
	for i := 0; i < min(t.grid.len(), headingLooks) && heading < 0; i++ {
		_, cells := t.grid.at(i)
		if hasFigures(cells) {
			continue
		}
		if day = slices.IndexFunc(cells, func(h string) bool { return lex.read(h).meaning == Date }); day < 0 {
			continue
		}
		var above []string
		if i > 0 {
			_, above = t.grid.at(i - 1)
		}
		if people = peopleOver(lex, above, cells); len(people) > 1 {
			heading = i
		}
	}
	if heading < 0 {
		return nil
	}
	_, heads := t.grid.at(heading)
	var kept []int // columns that say more of the run
	course := false
	for c, h := range heads {
		if g := lex.read(h); g.known && (g.meaning == Course || g.meaning == Session || g.meaning == Distance) {
			kept = append(kept, c)
			course = course || g.meaning == Course
		}
	}
	full := 0
	for _, p := range people {
		if isRunnersName(p.name) {
			full++
		}
	}
	if !course && (2*full <= len(people) || slices.ContainsFunc(people, func(p personColumn) bool { return !strings.Contains(p.name, " ") })) {
		return nil // perhaps places
	}
	runs, times, days := map[int]bool{}, make([]int, len(people)), map[string]bool{}
	for i := heading + 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if !isDayCell(cellAt(cells, day)) {
			continue
		}
		d := trim(cells[day])
		for c, h := range heads {
			if lex.read(h).meaning.isName() && kindOf(cellAt(cells, c)) == kText {
				return nil // each row names somebody
			}
		}
		for _, c := range kept {
			d += "|" + trim(cellAt(cells, c))
		}
		if days[d] {
			return nil
		}
		days[d], runs[i] = true, true
		for k, p := range people {
			switch kindOf(cellAt(cells, p.clock)) {
			case kClock:
				times[k]++
			case kInt, kDecimal, kDate:
				return nil
			}
		}
	}
	if len(runs) < fewestDown || slices.Contains(times, 0) {
		return nil
	}
	for _, p := range people {
		own := t
		own.grid = t.grid.fresh()
		for i := range t.grid.len() {
			row, cells := t.grid.at(i)
			switch {
			case i < heading-1, i == heading-1 && !slices.ContainsFunc(people, func(q personColumn) bool { return strings.Contains(titleText(cells), q.name) }):
				own.grid.add(row, cells)
			case i == heading, runs[i] && kindOf(cellAt(cells, p.clock)) != kBlank:
				line := []string{cells[day], p.name, cellAt(cells, p.clock), cellAt(cells, p.rank)}
				if i == heading {
					line = []string{cells[day], "Name", "Time", "Position"}
				}
				for _, c := range kept {
					line = append(line, cellAt(cells, c))
				}
				own.grid.add(row, line)
			}
		}
		own.src = own.grid
		out = append(out, own)
	}
	return out
}

// peopleOver finds the columns of a heading row that belong to a runner each: "Jo Lee | Al Roe", "Jo time | Jo pos | Al time
// | Al pos", "Jo Lee | Pos", or "Time | Pos" under a name in the row above. nil where another column
// is headed as one of times.
func peopleOver(lex *lexicon, above, cells []string) (people []personColumn) {
	over := ""
	seen := map[string]bool{}
	for c, h := range cells {
		if isBlank(h) {
			continue
		}
		if a := trim(cellAt(above, c)); a != "" && rowFilled(above) > 1 {
			over = ""
			if isFirstOrFull(lex, a) {
				over = a
			}
		}
		g := lex.read(h)
		name, word, _ := cutLast(trim(h))
		w := lex.read(strings.Trim(word, "()"))
		name = strings.TrimRight(name, " :-–")
		own := strings.TrimSuffix(strings.TrimSuffix(name, "'s"), "’s")
		n := len(people) - 1
		switch {
		case over != "" && g.meaning.isTime() && !seen[over]:
			people = append(people, personColumn{over, c, -1})
			seen[over] = true
		case n >= 0 && g.known && g.meaning == Position && people[n].rank < 0 && people[n].clock == c-1:
			people[n].rank = c
		case w.known && w.meaning.isTime() && isFirstOrFull(lex, own) && !seen[own]:
			people = append(people, personColumn{own, c, -1})
			seen[own] = true
		case w.known && w.meaning == Position && n >= 0 && people[n].name == own && people[n].rank < 0:
			people[n].rank = c
		case g.known && g.meaning.isTime():
			return nil
		case !g.known && isFirstOrFull(lex, h) && !seen[trim(h)]:
			people = append(people, personColumn{trim(h), c, -1})
			seen[trim(h)] = true
		}
	}
	return people
}

// cutLast parts a text before its last word.
func cutLast(s string) (before, last string, ok bool) {
	i := strings.LastIndexByte(s, ' ')
	if i < 0 {
		return "", s, false
	}
	return strings.TrimSpace(s[:i]), s[i+1:], true
}

// isFirstOrFull says whether a text may be a person's name, or a given name alone.
func isFirstOrFull(lex *lexicon, text string) bool {
	text = trim(text)
	if strings.Contains(text, " ") {
		return mayBeRunner(text)
	}
	f := fold(text)
	return startsUpper(text) && hasNoDigit(text) && len(f) > 1 && !lex.read(text).known && kindOf(text) == kText &&
		!namesNobody(f) && !landWords[f]
}

// isDayCell says whether a cell of a column of days has one: "3 Jun" by itself may be a group of juniors.
func isDayCell(cell string) bool { return kindOf(cell) == kDate || isDate(trim(cell)) }
