package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// Names and times that stand side by side, each with places or numbers of their own, belong
// together by these and not by the row: "Token | Name | | Place | Time", the tokens as they
// were handed in.

// keyedLists are two lists side by side: of names and of times, each with its own places, or
// numbers.
type keyedLists struct {
	names, times int // the columns of the places or numbers
	from, to     int // the columns of the list of names; to is none of them
}

// joinOnKeys puts the names of such a table into the rows of the times with the same place or
// number, where the two follow different orders, and says so. Names without a time take rows
// without one. Where that can't be done, it asks.
func (s *Sheet) joinOnKeys(t table, lex *lexicon) {
	l := findHeading(lex, t.head())
	if l.first < 0 {
		return
	}
	k, ok := keyedIn(lex, l.headings)
	if !ok || tickHeading(l.headings[k.names]) != "" || tickHeading(l.headings[k.times]) != "" {
		return // places among the men stand in a column of their own
	}
	after, _ := t.grid.at(l.first + l.lines - 1)            // the last line of the heading
	rowOf, named := map[string]int{}, map[string][]string{} // by place: the row of its time, the cells of its name
	apart, both, again := 0, 0, 0
	var free, left []int // rows without a time; those of the names left over
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		if row <= after {
			continue
		}
		name, time := trim(cellAt(cells, k.names)), trim(cellAt(cells, k.times))
		if digitsOnly(time) {
			if _, ok := rowOf[time]; ok {
				again++
			}
			rowOf[time] = i
		} else if time == "" {
			if slices.ContainsFunc(cells[min(k.times, len(cells)):], func(c string) bool { return kindOf(c) == kClock }) {
				return // a time without a number of its own belongs to its row
			}
			free = append(free, i)
		}
		if digitsOnly(name) {
			if _, ok := named[name]; ok {
				again++
			}
			named[name] = slices.Clone(cells[k.from:min(k.to, len(cells))])
			left = append(left, i)
		}
		if digitsOnly(name) && digitsOnly(time) {
			if both++; name != time {
				apart++
			}
		}
	}
	common := 0
	for key := range named {
		if _, ok := rowOf[key]; ok {
			common++
		}
	}
	if apart == 0 || both < 2 || 5*common < 4*min(len(named), len(rowOf)) {
		return
	}
	var over []string // places of names without a time
	for _, i := range left {
		_, cells := t.grid.at(i)
		key := trim(cells[k.names])
		if _, ok := rowOf[key]; !ok {
			over = append(over, key)
		}
	}
	if again > 0 || len(over) > len(free) {
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab, Row: after}, Severity: place.Waits, Kind: "lists-apart", Read: rowText(l.headings), Expected: "the same place, or number, beside a name and its time",
			Do: "The names and the times stand side by side in different orders, and they can't be joined on their numbers, of which some stand twice or on one side only. Put each name beside its time, and load the sheet again."})
		return
	}
	extra := map[int]string{}
	for n, key := range over {
		extra[free[n]] = key
	}
	width := len(l.headings)
	moved := t.grid.mend(func(i, row int, cells []string) ([]string, bool) {
		if row < after {
			return nil, false
		}
		w := slices.Clone(cells)
		for len(w) < width {
			w = append(w, "")
		}
		if row == after {
			w[k.names] = ""
			return w, true
		}
		key := trim(w[k.times])
		if e, ok := extra[i]; ok {
			key = e
			w[k.times] = e
		}
		if !digitsOnly(key) && !digitsOnly(trim(w[k.names])) {
			return nil, false // a line under the lists
		}
		own := named[key]
		for c := k.from; c < k.to && c < len(w); c++ {
			w[c] = ""
			if c-k.from < len(own) && c != k.names {
				w[c] = own[c-k.from]
			}
		}
		return w, true
	})
	if moved > 0 {
		s.note("names-joined", fmt.Sprintf("names and times stand side by side in different orders, each with its number; %s put beside the time of the same number", text.Count(common, "name")))
	}
}

// keyedIn finds them in a heading: two columns of places, or two of numbers, of which one
// stands with the names and one with the times. They are under one heading, or a column
// without one parts the lists, or one of them is of tokens; "No" beside "Start number" is a
// place and the runner's number on one list, "Rank" beside "Pos" that of the season and of
// the day.
func keyedIn(lex *lexicon, headings []string) (k keyedLists, ok bool) {
	var places, numbers, names, times []int
	for i, h := range headings {
		switch g := lex.read(h); {
		case !g.known:
		case g.meaning == Position:
			places = append(places, i)
		case g.meaning == Number:
			numbers = append(numbers, i)
		case g.meaning.isName():
			names = append(names, i)
		case g.meaning.isTime():
			times = append(times, i)
		}
	}
	keys := places
	switch {
	case len(numbers) == 2 && len(places) == 1 && (fold(headings[numbers[0]]) == fold(headings[numbers[1]]) || slices.Contains(headings[numbers[0]:numbers[1]], "")):
		keys = numbers // the places stand beside the times alone
	case len(numbers) > 0 && len(places) > 0:
		return k, false
	case len(numbers) > 0:
		keys = numbers
	}
	if len(keys) != 2 || len(names) == 0 || len(times) != 1 {
		return k, false
	}
	first, second := names, times
	if times[0] < names[0] {
		first, second = times, names
	}
	a, b := first[len(first)-1], second[0] // the lists are parted between these
	if a >= b || keys[0] > b && keys[1] > b {
		return k, false
	}
	cut := -1
	for c := a + 1; c <= b; c++ {
		left, right := 0, 0
		for _, key := range keys {
			if key < c {
				left++
			} else {
				right++
			}
		}
		if left == 1 && right == 1 && (cut < 0 || headings[c-1] == "") {
			cut = c
		}
	}
	left, right := fold(headings[keys[0]]), fold(headings[keys[1]])
	if cut < 0 || headings[cut-1] != "" && left != right && !strings.HasPrefix(left, "token") && !strings.HasPrefix(right, "token") {
		return k, false
	}
	if first[0] == names[0] {
		return keyedLists{names: keys[0], times: keys[1], from: 0, to: cut}, true
	}
	return keyedLists{names: keys[1], times: keys[0], from: cut, to: len(headings)}, true
}

// joinListBelow puts beside results with numbers and without names who has these numbers, after a
// list below them in the same table, where it has nine in ten of them and none twice, and takes the
// list off. It returns the table, as it was where there is no such list.
func (s *Sheet) joinListBelow(t table, lex *lexicon) table {
	l := findHeading(lex, t.head())
	number := numberColumn(lex, l.headings)
	if core := coreOf(lex, l.headings); l.first < 0 || l.lines > 1 || number < 0 || core&2 == 0 || core&4 != 0 {
		return t
	}
	list, of := -1, map[string][]string{} // the heading of the list, and its rows by number
	var heading []string
	key := -1
	for i := l.first + 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if list < 0 {
			if core := coreOf(lex, cells); core&6 == 4 && !hasFigures(cells) && numberColumn(lex, cells) >= 0 {
				list, heading, key = i, slices.Clone(cells), numberColumn(lex, cells)
			}
			continue
		}
		if n := trim(cellAt(cells, key)); n != "" {
			if of[n] != nil {
				return t
			}
			of[n] = slices.Clone(cells)
		}
	}
	if list < 0 {
		return t
	}
	end := list
	for end > l.first+1 {
		_, cells := t.grid.at(end - 1)
		if rowFilled(cells) > 1 {
			break
		}
		end--
	}
	rows, hits := 0, 0
	for i := l.first + 1; i < end; i++ {
		if _, cells := t.grid.at(i); trim(cellAt(cells, number)) != "" {
			rows++
			if of[trim(cellAt(cells, number))] != nil {
				hits++
			}
		}
	}
	if hits == 0 || 10*hits < 9*rows {
		return t
	}
	width := len(l.headings)
	for i := range end {
		width = max(width, t.grid.width(i))
	}
	var take []int // columns of the list
	for c, h := range heading {
		m := lex.read(h).meaning
		if enterable[m] && !slices.ContainsFunc(l.headings, func(h string) bool { return lex.read(h).meaning == m }) {
			take = append(take, c)
		}
	}
	t.grid = t.grid.slice(0, end)
	joined := t.grid.fresh()
	for i := range end {
		row, cells := t.grid.at(i)
		from := of[trim(cellAt(cells, number))]
		if i == l.first {
			from = heading
		}
		if i >= l.first && from != nil {
			wide := make([]string, width, width+len(take))
			copy(wide, cells)
			for _, c := range take {
				wide = append(wide, trim(cellAt(from, c)))
			}
			cells = wide
		}
		joined.add(row, cells)
	}
	t.grid, t.src = joined, joined
	at, _ := joined.at(l.first)
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: t.tab, Row: at}, Severity: place.Note, Kind: "names-by-number",
		Read: text.Count(hits, "line"), Expected: "names beside the numbers", Do: "The names were taken from the list below, where the same numbers stand."})
	return t
}

// numberColumn is the one column of people's numbers of a heading, -1 for none and for several.
func numberColumn(lex *lexicon, headings []string) int {
	at := -1
	for i, h := range headings {
		if lex.read(h).meaning == Number {
			if at >= 0 {
				return -1
			}
			at = i
		}
	}
	return at
}
