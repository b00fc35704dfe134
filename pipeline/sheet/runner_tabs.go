package sheet

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// A workbook may have a tab for every runner, called after them, with a line for each run:
// "Date | Place | Time". The runs are those of the days that the tabs share.

// fewestRunners is how many such tabs a workbook has at least.
const fewestRunners = 3

// nameByTab gives the lines of such tabs the name of their tab. It leaves everything as it is
// unless half of the tabs have a day that another has too: one runner's diary with a tab a
// course has no day twice.
func (s *Sheet) nameByTab(lex *lexicon, o Options) {
	tabs := map[string]int{}
	for _, p := range s.Parts {
		tabs[p.Tab]++
	}
	var own []*Part
	asking, places := 0, 0 // that wait for their names; that may be called after a place: Jo Field
	for _, p := range s.Parts {
		_, whole := p.src.(*grid)
		if whole && p.Tab != "" && tabs[p.Tab] == 1 && p.HeadingRow > 0 && p.Index(Date) >= 0 && p.Index(Time) >= 0 && !p.named() && looksNamed(p.Tab) {
			own = append(own, p)
			if p.asksName() {
				asking++
			}
			if landWords[finalWord(p.Tab)] {
				places++
			}
		}
	}
	if len(own) < fewestRunners || asking < fewestRunners && !placesApart(own) || 3*places > len(own) || !shareDays(own) {
		return
	}
	old := s.Parts
	s.Parts = nil
	for _, p := range old {
		if !slices.Contains(own, p) {
			s.Parts = append(s.Parts, p)
			continue
		}
		g := p.src.(*grid)
		named, name, width := g.fresh(), p.runnerOfTab(), len(p.Columns)
		for i := range g.len() {
			width = max(width, g.width(i))
		}
		for i := range g.len() {
			row, cells := g.at(i)
			switch {
			case row < p.HeadingRow && sameWords(titleText(cells), name):
				continue // the name over the table is none of a course
			case row < p.HeadingRow || rowFilled(cells) == 0:
				named.add(row, cells)
				continue
			}
			wide := make([]string, width, width+1)
			copy(wide, cells)
			if row == p.HeadingRow {
				wide = append(wide, "Name")
			} else {
				wide = append(wide, name)
			}
			named.add(row, wide)
		}
		n := len(s.Parts)
		s.addOne(table{tab: p.Tab, tabIndex: p.TabIndex, hidden: p.Hidden, date1904: p.rules.date1904, whole: true, src: named, grid: named}, lex, o)
		for _, q := range s.Parts[n:] {
			q.ofRunner = true
		}
	}
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name}, Severity: place.Note, Kind: "names-of-tabs",
		Read: fmt.Sprintf("%d tabs, each with lines of many days", len(own)), Do: "Each tab is called after a runner, and the lines on it are taken for theirs."})
}

// placesApart says whether parts have places, of which none stands on two of them on one day, as
// those of the runners of one run do not.
func placesApart(parts []*Part) bool {
	seen := map[string]bool{}
	for _, p := range parts {
		at, day, twice := p.Index(Position), p.Index(Date), false
		if at < 0 {
			return false
		}
		p.Each(func(_ int, cells []string) error {
			if v := trim(cellAt(cells, at)); v != "" {
				k := trim(cellAt(cells, day)) + " " + v
				twice = twice || seen[k]
				seen[k] = true
			}
			return nil
		}) // a grid has no errors of its own
		if twice {
			return false
		}
	}
	return len(seen) >= leastOfList
}

// asksName says whether a part waits because its lines are of many days and nobody is named.
func (p *Part) asksName() bool {
	return slices.ContainsFunc(p.Problems, func(q place.Problem) bool { return q.Kind == "name-column-missing" })
}

// runnerOfTab is the name on a tab: that of the line above the table where the tab's is the
// beginning of it, as names of tabs are cut (ECMA-376 Part 1, 18.2.19).
func (p *Part) runnerOfTab() string {
	for _, t := range p.Titles {
		if looksNamed(t) && strings.HasPrefix(fold(t), fold(p.Tab)) {
			return trim(t)
		}
	}
	return p.Tab
}

// sameWords says whether two texts have the same words in any order.
func sameWords(a, b string) bool {
	x, y := strings.Fields(fold(a)), strings.Fields(fold(b))
	slices.Sort(x)
	slices.Sort(y)
	return len(x) > 0 && slices.Equal(x, y)
}

// shareDays says whether half of some parts or more have a day on which another has a line.
func shareDays(parts []*Part) bool {
	on := map[string]int{} // parts by the text of the day
	days := make([]map[string]bool, len(parts))
	for i, p := range parts {
		days[i] = map[string]bool{}
		for _, text := range columnTexts(p, p.Index(Date)) {
			if !days[i][text] {
				days[i][text] = true
				on[text]++
			}
		}
	}
	sharing := 0
	for i := range parts {
		for text := range days[i] {
			if on[text] > 1 {
				sharing++
				break
			}
		}
	}
	return 2*sharing >= len(parts)
}

// withoutRunners leaves out the words for those whom the tabs of a workbook are called after:
// "Alder Bank runners" is a book on Alder Bank.
func (w courseWord) withoutRunners() courseWord {
	words := strings.Fields(w.text)
	for len(words) > 1 && ofPeople[fold(words[len(words)-1])] {
		words = words[:len(words)-1]
	}
	if short := strings.Join(words, " "); short != w.text && w.slug == Slug(w.text) && len(Slug(short)) >= 3 {
		w.text, w.slug = short, Slug(short)
	}
	return w
}

var ofPeople = set("runners runner people members athletes individual individuals personal by each laufer personen membres coureurs socios lopers")

// nameByLine gives the lines of lists that stand below one another, each under the name of a runner,
// that name: "Jo Lee" over "Date | Place | Time" and a line for each run. It returns the number of
// runners, 0 where the table is none of these: it has three such lists or more, each names no day
// twice, and half of them share a day, so that they are no places that somebody ran at.
func (t table) nameByLine(lex *lexicon) int {
	first, day, clock := -1, -1, -1
	for i := 0; i+1 < min(t.grid.len(), 16) && first < 0; i++ {
		if _, cells := t.grid.at(i); rowFilled(cells) == 1 && runnerOfLine(cells) != "" {
			_, below := t.grid.at(i + 1)
			if day, clock = dayAndTime(lex, below); day >= 0 {
				first = i
			}
		} else if d, _ := dayAndTime(lex, cells); d >= 0 && !t.nameRightBelow(i) {
			return 0 // the usual table
		} else if d >= 0 {
			day, clock = dayAndTime(lex, cells)
			first = i
		}
	}
	if first < 0 {
		return 0
	}
	_, cells := t.grid.at(first)
	if rowFilled(cells) == 1 {
		_, cells = t.grid.at(first + 1)
	}
	width := len(trimmed(cells))
	var headings []string
	for _, h := range trimmed(cells) {
		headings = append(headings, fold(h))
	}
	names, lines, runner, places := map[string]map[string]bool{}, 0, "", 0
	for i := first; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		switch filled := rowFilled(cells); {
		case filled == 0 || sameHeading(headings, cells, filled):
		case filled == 1 && runnerOfLine(cells) != "":
			runner = runnerOfLine(cells)
			if names[runner] != nil {
				return 0
			}
			names[runner] = map[string]bool{}
			if landWords[fold(finalWord(runner))] {
				places++
			}
		case kindOf(cellAt(cells, day)) == kDate && kindOf(cellAt(cells, clock)) == kClock:
			d := trim(cells[day])
			if runner == "" || names[runner][d] {
				return 0
			}
			names[runner][d] = true
			width, lines = max(width, len(cells)), lines+1
		}
	}
	on, sharing := map[string]int{}, 0
	for _, days := range names {
		for d := range days {
			on[d]++
		}
	}
	for _, days := range names {
		for d := range days {
			if on[d] > 1 {
				sharing++
				break
			}
		}
	}
	if len(names) < fewestRunners || lines < 2*len(names) || 2*sharing < len(names) || 3*places > len(names) {
		return 0
	}
	runner = ""
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		filled := rowFilled(cells)
		if i < first || filled == 0 {
			return nil, false
		}
		head := sameHeading(headings, cells, filled)
		if filled == 1 && runnerOfLine(cells) != "" && !head {
			runner = runnerOfLine(cells)
			return nil, true
		}
		wide := make([]string, width, width+1)
		copy(wide, cells)
		switch {
		case head:
			return append(wide, "Name"), true
		case kindOf(wide[day]) == kDate:
			return append(wide, runner), true
		}
		return nil, false
	})
	return len(names)
}

// nameRightBelow says whether the row below one names a runner and the next but one has a day.
func (t table) nameRightBelow(i int) bool {
	if i+2 >= t.grid.len() {
		return false
	}
	_, name := t.grid.at(i + 1)
	_, run := t.grid.at(i + 2)
	return rowFilled(name) == 1 && runnerOfLine(name) != "" && rowFilled(run) > 1
}

// dayAndTime are the columns of the day and of the time where a row is the heading of a list that
// names nobody, -1 where it is not.
func dayAndTime(lex *lexicon, cells []string) (day, clock int) {
	day, clock = -1, -1
	if n := rowFilled(cells); n < 2 || n > narrow {
		return -1, -1
	}
	for c, h := range cells {
		switch g := lex.read(h); {
		case !g.known:
		case g.meaning.isName() || g.meaning == Number && !g.number:
			return -1, -1
		case g.meaning == Date && day < 0:
			day = c
		case g.meaning.isTime() && clock < 0:
			clock = c
		}
	}
	if clock < 0 {
		clock = furthest(cells)
	}
	if day < 0 || clock < 0 {
		return -1, -1
	}
	return day, clock
}

// furthest is the column with the greatest distance of three or more that head columns, "1k | 2k | 3k": that of the time behind
// the splits; -1 for none.
func furthest(cells []string) (column int) {
	column, most, n := -1, 0.0, 0
	if len(cells) > narrow {
		return -1
	}
	for c, h := range cells {
		if hasNoDigit(h) {
			continue
		}
		if m, from, to, ok := findDistance(h); ok && to-from == len(trim(h)) && m > most {
			column, most = c, m
			n++
		}
	}
	if n < 3 {
		return -1
	}
	return column
}

// runnerOfLine is the name of a runner that a line of one cell consists of, without the club in
// brackets behind it; "" for none.
func runnerOfLine(cells []string) string {
	name, _, _ := strings.Cut(titleText(cells), " (")
	if !looksNamed(name) || listWord[finalWord(name)] {
		return ""
	}
	return trim(name)
}
