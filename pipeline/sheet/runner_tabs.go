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
