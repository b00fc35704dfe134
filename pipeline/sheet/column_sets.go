package sheet

import (
	"slices"
	"strconv"
	"strings"
)

// A club's list of its members may have a line for each runner and the runs behind the name, the same columns for each:
// "Name | Date 1 | Time 1 | Date 2 | Time 2", "Name | Run 1 date | Run 1 course | Run 1 time | Run 2 date …".

// fewestWithSets is how many lines with two runs or more such a table has at least.
const fewestWithSets = 2

// widestSets is how many columns such a table has at most.
const widestSets = 256

// columnSets turns such a table into one with a line for each set that is filled, behind the columns that say who somebody is. nil where it
// is no such table: some columns come again and again, under the same headings but for a number, one of each set
// with days, one with times and none with names, and a heading outside them says who.
func (t table) columnSets(lex *lexicon) (long *table, sets int) {
	heading := -1
	var heads []string
	var from, width int
	for i := 0; i < min(t.grid.len(), headingLooks) && heading < 0; i++ {
		_, cells := t.grid.at(i)
		if len(cells) > widestSets || rowFilled(cells) < 5 || slices.ContainsFunc(cells, isFigureOfResult) {
			continue
		}
		bare := make([]string, len(cells))
		for c, h := range cells {
			bare[c] = withoutNumber(lex, h)
		}
		if from, width, sets = t.setsOf(lex, i, bare); sets > 1 {
			heading, heads = i, bare
		}
	}
	first := heading + 1
	if heading < 0 {
		if first, heads = t.bareSets(); heads == nil {
			return nil, 0
		}
		if from, width, sets = t.setsOf(lex, first-1, heads); sets < 2 {
			return nil, 0
		}
	}
	meanings := make([]Meaning, len(heads))
	for c, h := range heads {
		meanings[c] = lex.read(h).meaning
	}
	day, clock, course := -1, -1, slices.Contains(meanings, Course) // the first two within a set
	for c := from; c < from+width; c++ {
		if m := meanings[c]; m.isTime() {
			clock = c - from
		} else if day < 0 && (m == Date || t.daysIn(first, c)) {
			day = c - from
		}
	}
	var kept []int // the columns outside the sets that say who somebody is, and of which run all are
	for c, m := range meanings {
		if c >= from && c < from+sets*width || isBlank(heads[c]) {
			continue
		}
		switch m {
		case Name, GivenName, FamilyName, Sex, Age, AgeGroup, BirthDate, BirthYear, Club, Number, Course, Distance:
			if m != Number || !t.countsUp(heading, c) {
				kept = append(kept, c)
			}
		}
	}
	several := 0
	for i := first; i < t.grid.len(); i++ {
		if _, cells := t.grid.at(i); kindOf(cellAt(cells, from+width+clock)) == kClock {
			several++
		}
	}
	if several < fewestWithSets {
		return nil, 0
	}
	own := t
	own.grid, own.ofSets = t.grid.fresh(), true
	line := func(cells []string, set int) (w []string) {
		for _, c := range kept {
			w = append(w, cellAt(cells, c))
		}
		for c := range width {
			w = append(w, cellAt(cells, from+set*width+c))
		}
		return w
	}
	for i := range first {
		row, cells := t.grid.at(i)
		if i != heading && !numbersSets(cells, from) {
			own.grid.add(row, cells)
		}
	}
	head := line(heads, 0)
	head[len(kept)+day] = "Date"
	if !course {
		head = append(head, "Course")
	}
	own.grid.add(t.grid.row(max(heading, first-1, 0)), head)
	for i := first; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		for k := range sets {
			w := line(cells, k)
			if c := w[len(kept)+clock]; isDash(c) || isAway(c) {
				continue
			}
			said, name := w[len(kept)+day], ""
			if isBlank(said) {
				w[len(kept)+day] = "?" // else that of the line above would hold
			}
			if !course {
				if d := findDates(said); kindOf(said) != kDate && len(d) == 1 && hasLetter(besideDate(said, dateMarks)) {
					name = besideDate(said, dateMarks)
					w[len(kept)+day] = said[d[0].from:d[0].to]
				}
				w = append(w, name)
			}
			own.grid.add(row, w)
		}
	}
	own.src = own.grid
	return &own, sets
}

// setsOf finds the columns that come again and again under headings without their numbers: where the first set begins,
// how wide each is and how many there are.
func (t table) setsOf(lex *lexicon, heading int, bare []string) (from, width, sets int) {
	var days []int
	named := false
	for c, h := range bare {
		m := lex.read(h).meaning
		if named = named || m.isName(); m == Date || !m.isName() && !m.isTime() && m != BirthDate && !isBlank(h) && t.daysIn(heading+1, c) {
			days = append(days, c)
		}
	}
	if len(days) < 2 || !named {
		return 0, 0, 0
	}
	from, width = days[0], days[1]-days[0]
	if width < 2 {
		return 0, 0, 0
	}
	alike := func(a, b int) bool {
		return a >= 0 && b < len(bare) && !isBlank(bare[a]) && fold(bare[a]) == fold(bare[b])
	}
	for from > days[1]-2*width+1 && alike(from-1, from-1+width) {
		from--
	}
	times := 0
	for c := from; c < from+width; c++ {
		if !alike(c, c+width) && !(isBlank(cellAt(bare, c)) && c+1 == from+width) {
			return 0, 0, 0
		}
		switch m := lex.read(cellAt(bare, c)).meaning; {
		case m.isName():
			return 0, 0, 0
		case m.isTime():
			times++
		}
	}
	if times != 1 {
		return 0, 0, 0
	}
	for sets = 1; alike(from+(sets-1)*width, from+sets*width) && from+(sets+1)*width <= len(bare)+1; sets++ {
		if from+(sets+1)*width > len(bare) && !isBlank(bare[from+width-1]) {
			break
		}
	}
	for k, c := range days { // no day stands outside the sets
		if k < sets && c != days[0]+k*width || k >= sets {
			return 0, 0, 0
		}
	}
	return from, width, sets
}

// daysIn says whether the cells of a column from a row on say a day each, perhaps beside a course.
func (t table) daysIn(first, column int) bool {
	days, filled := 0, 0
	for i := first; i < min(t.grid.len(), first+profileRows); i++ {
		_, cells := t.grid.at(i)
		c := trim(cellAt(cells, column))
		if c == "" {
			continue
		}
		if filled++; kindOf(c) == kDate || len(findDates(c)) == 1 {
			days++
		}
	}
	return filled > 1 && 10*days >= 9*filled
}

// bareSets gives headings to a table that has none and on whose lines days and times stand in turn behind a name. first is its first
// line.
func (t table) bareSets() (first int, heads []string) {
	first = -1
	rows := 0
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if rowFilled(cells) < 2 {
			if first >= 0 && rowFilled(cells) == 1 {
				return -1, nil
			}
			continue
		}
		if len(cells) < 3 || len(cells) > widestSets || !looksNamed(trim(cells[0])) {
			return -1, nil
		}
		for c := 1; c < len(cells); c++ {
			k := kindOf(cells[c])
			if c%2 == 1 && k != kDate && k != kBlank || c%2 == 0 && k != kClock && k != kBlank {
				return -1, nil
			}
		}
		if first < 0 {
			first, heads = i, []string{"Name"}
		}
		for len(heads) < len(cells)|1 {
			heads = append(heads, "Date", "Time")
		}
		rows++
	}
	if rows < leastOfList {
		return -1, nil
	}
	return first, heads
}

// withoutNumber is a heading of one of several sets of columns without what tells it from that of the others: "Date" for "Date 2",
// "Run 2 date", "Run2_date" and "Date (2)". A heading without a number stays.
func withoutNumber(lex *lexicon, heading string) string {
	words := strings.FieldsFunc(heading, func(r rune) bool { return strings.ContainsRune(" \t\n_()#.-:", r) })
	at := -1
	for i, w := range words {
		head := strings.TrimRight(w, "0123456789")
		if head == w {
			continue
		}
		if at >= 0 || len(w)-len(head) > 2 {
			return heading
		}
		at, words[i] = i, head
	}
	if at < 0 {
		return heading
	}
	words = slices.DeleteFunc(words, func(w string) bool { return w == "" })
	for _, tried := range [][]string{words, words[min(1, len(words)):], words[:max(0, len(words)-1)]} {
		if h := strings.Join(tried, " "); h != "" && lex.read(h).known {
			return h
		}
	}
	return strings.Join(words, " ")
}

// numbersSets says whether a row above the headings does no more than count the sets below it: "Run 1 | | Run 2 |".
func numbersSets(cells []string, from int) bool {
	n, word := 0, ""
	for c, text := range cells {
		if isBlank(text) {
			continue
		}
		w := strings.Fields(fold(text))
		if n++; c < from || len(w) != 2 || w[1] != strconv.Itoa(n) || word != "" && w[0] != word {
			return false
		}
		word = w[0]
	}
	return n > 1
}
