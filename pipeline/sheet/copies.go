package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// underWords says whether the course of a list stands in a line over it, and is none that is known.
func (p *Part) underWords() bool {
	return p.Whole && p.Kind != Volunteers && p.Course.OK() && strings.HasPrefix(p.Course.From, "title") && p.Course.Why != "a known course" && p.Index(Course) < 0
}

// placesFromTo are the places of the first and of the last line that has one, 0 for none.
func (p *Part) placesFromTo() (first, last int) {
	at := p.Index(Position)
	p.Each(func(_ int, cells []string) error {
		if n := strings.Trim(trim(cellAt(cells, at)), ".)="); at >= 0 && digitsOnly(n) {
			if last = int(looseNumber(n)); first == 0 {
				first = last
			}
		}
		return nil
	}) // a grid has no error of its own
	return first, last
}

// leaveCopies leaves out tables that repeat lines of another table of the same
// run: the men and the women once more on tabs of their own, sorted by age group
// or name, the first ten above the list; or, without a date, the lines of several.
func (rs *runSettler) leaveCopies(parts []*Part) (kept []*Part) {
	type list struct {
		of    map[string]bool
		names map[string]bool
		at    map[string][]string // names by time
		rows  int
	}
	if len(parts) < 2 {
		return parts // nothing that it could be a copy of
	}
	lists := make([]*list, len(parts))
	read := func(i int) *list {
		if lists[i] != nil {
			return lists[i]
		}
		p, l := parts[i], &list{of: map[string]bool{}, names: map[string]bool{}, at: map[string][]string{}}
		lists[i] = l
		fullName, clock := p.fullNames(), p.Index(Time)
		p.Each(func(_ int, cells []string) error {
			name, t := fullName(cells), trim(cellAt(cells, clock))
			if name == "" || t == "" {
				return nil
			}
			if kindOf(t) == kClock {
				t = looseKey(t)
			}
			l.of[anyOrder(name)+"\x00"+t] = true
			l.names[anyOrder(name)] = true
			l.at[t] = append(l.at[t], name)
			l.rows++
			return nil
		}) // a grid has no errors of its own
		return l
	}
	mayRepeat, repeated := make([]bool, len(parts)), []int(nil)
	for i, p := range parts {
		if mayRepeat[i] = p.Whole && p.Kind != Volunteers && p.Index(Date) < 0 && p.Index(Course) < 0 && p.Date.Settled && p.Course.OK() && p.Index(Time) >= 0 && p.named(); mayRepeat[i] {
			repeated = append(repeated, i)
		}
	}
	out := make([]bool, len(parts))
	leave := func(i, same, of int, expected string) {
		out[i] = true
		rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: place.Place{Sheet: rs.sheet.Name, Tab: parts[i].Tab, Row: parts[i].HeadingRow}, Severity: place.Note, Kind: "table-left-out",
			Read: fmt.Sprintf("%d of %d lines", same, of), Expected: expected})
	}
	repeats := func(i, k int) bool { // nearly all lines of the one stand in the other
		return len(read(i).of) >= 3 && sharedOf(read(i).of, read(k).of)*10 >= read(i).rows*9
	}
	takeCourse := func(p, q *Part, from, why string) {
		p.Course = Found{Value: q.Course.Value, Text: q.Course.Text, From: from, Why: why}
		p.runs.course = q.Course.Value
	}
	for i, p := range parts { // "Prize winners", "continued": the words over a list beside another are no course of its own
		if !p.underWords() || p.Index(Time) < 0 || !p.named() || !p.Date.Settled {
			continue
		}
		for k, q := range parts[:i] {
			if q.Tab != p.Tab || q.Date.Day != p.Date.Day || q.Course.Value == p.Course.Value || !q.Course.OK() || q.Index(Time) < 0 {
				continue
			}
			first, _ := p.placesFromTo()
			if _, last := q.placesFromTo(); first > 1 && first == last+1 || repeats(i, k) {
				takeCourse(p, q, "another list", "this one goes on with it, or has lines of it")
				break
			}
			if strings.HasPrefix(q.Date.From, "title") && !strings.HasPrefix(p.Date.From, "title") {
				p.problem(rs.sheet.Name, p.HeadingRow, -1, place.Look, "course-over-list", p.Course.Text, "the course of the list beside or above it, "+q.Course.Value,
					"The words over this list are taken for the name of its course. If they are none, write the course over it; if its lines are no results of the day, take them out; and load the sheet again.")
				break
			}
		}
	}
	for i, p := range parts { // "unsorted": a tab called after what was done with the list is on no course of its own
		if !mayRepeat[i] || p.Course.From != "tab name" || p.Course.Why == "a known course" {
			continue
		}
		for k, q := range parts {
			if mayRepeat[k] && q.Course.From != "tab name" && q.Date.Day == p.Date.Day && repeats(i, k) {
				takeCourse(p, q, "another tab", "the lines of this one stand there too")
				break
			}
		}
	}
	ofRun, versions := map[runOfPart][]int{}, make([]int, len(parts))
	for i, p := range parts {
		if mayRepeat[i] {
			ofRun[p.run()] = append(ofRun[p.run()], i)
			versions[i] = version(p)
		}
	}
	for i, p := range parts {
		for _, k := range ofRun[p.run()] {
			if i == k || out[i] || out[k] || !mayRepeat[i] {
				continue
			}
			small, large := read(i), read(k)
			of := min(small.rows, large.rows)
			if of < 3 {
				continue
			}
			same := 0
			for line := range small.of {
				if large.of[line] {
					same++
				}
			}
			switch va, vb := versions[i], versions[k]; {
			case va > vb:
				continue // what was corrected stands, however long it is
			case va < vb:
				if same*2 < of && sharedOf(small.names, large.names)*10 < of*9 {
					continue
				}
			case small.rows > large.rows, small.rows == large.rows && i < k, same*10 < small.rows*9:
				continue
			}
			leave(i, same, small.rows, "lines that do not stand in another table of the run already")
		}
	}
	for i, p := range parts { // "J Lee" of "Jo Lee", as for the board
		for _, k := range ofRun[p.run()] {
			if i == k || out[i] || out[k] || !mayRepeat[i] || versions[i] != versions[k] || read(i).rows < 3 {
				continue
			}
			short := 0
			for t, names := range read(i).at {
				for _, name := range names {
					if slices.ContainsFunc(read(k).at[t], func(full string) bool { return shortName(name, full) }) {
						short++
					}
				}
			}
			if short*10 >= read(i).rows*9 {
				leave(i, short, read(i).rows, "names in full, as in another table of the run")
			}
		}
	}
	inOthers := func(i int) (same int) { // lines of a tab that is no list of one run
		for line := range read(i).of {
			if slices.ContainsFunc(repeated, func(k int) bool { return read(k).of[line] }) {
				same++
			}
		}
		return same
	}
	for i, p := range parts {
		if p.Date.From != "" || p.Date.Settled || !p.Whole || p.Kind == Volunteers || p.Index(Date) >= 0 || p.Index(Time) < 0 || !p.named() {
			continue
		}
		// The best of the tabs of all weeks, on a tab without a date.
		same := inOthers(i)
		if n := len(read(i).of); n > 0 && same == n && read(i).rows == n {
			leave(i, same, n, "a date, or lines that do not stand in another table already")
		}
	}
	var dated []int // with a day on each line, or a course and all of one day
	for i, p := range parts {
		if !out[i] && p.Whole && p.Kind != Volunteers && (p.Index(Date) >= 0 || p.Index(Course) >= 0 && p.Date.Settled) && p.Index(Time) >= 0 && p.named() {
			dated = append(dated, i)
		}
	}
	for _, i := range dated { // the first of each day, the best of all, all weeks once more
		n, of := read(i).rows, len(read(i).of)
		if same := inOthers(i); n >= 2 && same == of {
			leave(i, same, n, "lines that do not stand in another table already")
			continue
		}
		for _, k := range dated {
			if larger := read(k).rows; i == k || out[k] || larger < n || larger == n && k > i || parts[i].onAnotherDay(parts[k]) {
				continue
			}
			if same := sharedOf(read(i).of, read(k).of); same > 0 && same == of {
				leave(i, same, n, "lines that do not stand in another table already")
				break
			}
		}
	}
	for _, i := range repeated { // a week of them on a tab of its own
		for _, k := range dated {
			if !out[i] && !out[k] && repeats(i, k) {
				leave(i, sharedOf(read(i).of, read(k).of), read(i).rows, "lines that do not stand in a table of several runs already")
			}
		}
	}
	rs.askTwoClocks(parts)
	for i, p := range parts {
		if !out[i] {
			kept = append(kept, p)
		}
	}
	return kept
}

// onAnotherDay says whether two tables are all of one day each, and not of the same.
func (p *Part) onAnotherDay(q *Part) bool {
	return p.Index(Date) < 0 && q.Index(Date) < 0 && p.Date.Day != q.Date.Day
}

// shortName says whether a name is another one with a letter in place of a word or more, "J Lee" of "Jo Lee",
// "Jo L" or "LEE J.".
func shortName(name, full string) bool {
	rest, letters := strings.Fields(fold(full)), 0
	words := strings.Fields(fold(name))
	for _, whole := range [...]bool{true, false} {
		for _, w := range words {
			letter := utf8.RuneCountInString(w) == 1
			if letter == whole {
				continue
			}
			at := slices.IndexFunc(rest, func(r string) bool { return r == w || letter && strings.HasPrefix(r, w) })
			if at < 0 {
				return false
			}
			if letter && rest[at] != w {
				letters++
			}
			rest = slices.Delete(rest, at, at+1)
		}
	}
	return letters > 0 && letters < len(words)
}

// askTwoClocks asks which of two lists of times counts that have no names and the same places
// of one run, but not the same times: two watches, of which one would be taken for as many
// unnamed finishers more.
func (rs *runSettler) askTwoClocks(parts []*Part) {
	first := map[runOfPart]map[string]string{} // times by place
	for _, p := range parts {
		at, clock := p.Index(Position), p.Index(Time)
		if p.Kind != "times" || !p.Whole || at < 0 || clock < 0 || !p.Date.Settled || !p.Course.OK() || p.Index(Number) >= 0 {
			continue
		}
		times := map[string]string{}
		p.Each(func(_ int, cells []string) error {
			times[trim(cellAt(cells, at))] = clockDigits(cellAt(cells, clock))
			return nil
		}) // the function returns no error
		before, ok := first[p.run()]
		if !ok {
			first[p.run()] = times
			continue
		}
		both, differ := 0, 0
		for place, t := range times {
			if b, ok := before[place]; ok {
				both++
				if b != t {
					differ++
				}
			}
		}
		if differ > 0 && 2*both >= min(len(times), len(before)) {
			p.problem(rs.sheet.Name, p.HeadingRow, clock, place.Waits, "two-lists-of-times", fmt.Sprintf("%s of %d places differ", text.Count(differ, "time"), both), "one list of times",
				"Two lists have times for the same places. Keep the one that counts, take the other out, and load the sheet again.")
		}
	}
}

// runOfPart names the run of a part.
type runOfPart struct {
	course  string
	day     unit.Day
	session string
}

func (p *Part) run() runOfPart { return runOfPart{p.Course.Value, p.Date.Day, p.Session.Value} }

// sharedOf counts what one set has of another.
func sharedOf(a, b map[string]bool) (n int) {
	for k := range a {
		if b[k] {
			n++
		}
	}
	return n
}

// version orders two tables of one run by the words of their tabs and titles: what
// is provisional before the plain, what is corrected after it.
func version(p *Part) (v int) {
	texts := []string{p.Tab}
	if len(p.Titles) > 0 {
		texts = append(texts, p.Titles[0])
	}
	for _, t := range texts {
		for _, w := range strings.Fields(fold(t)) {
			switch EditionWord(w) {
			case -1:
				return -1
			case 1:
				v = 1
			}
		}
	}
	return v
}
