package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// twoClocks are two times of which one is a line's pace: "1 Jo Lee, Vale 3:40 18:20", "18:20 3:40/km".
var twoClocks = regexp.MustCompile(`(\d{1,2}(?::\d{2}){1,2}(?:[.,]\d)?)(?: ?(?:/|per |min/)[a-z]{2,4})?[ ,;]+(\d{1,2}(?::\d{2}){1,2}(?:[.,]\d)?)(?: ?(?:/|per |min/)[a-z]{2,4})?\s*$`)

// pacedLines reads lines at whose ends the pace stands beside the time, with nothing but a
// space between. The one is a pace where it is the same part of the other in nine of ten lines,
// as far as whole seconds can show. nil where it is not, or where the rest is not read.
func pacedLines(lines []string, delim byte) []string {
	type pair struct{ first, second float64 }
	pairs := map[int]pair{}
	timed := 0
	var ratios []float64
	for i, l := range lines {
		if !clockInside.MatchString(l) {
			continue
		}
		timed++
		m := twoClocks.FindStringSubmatch(l)
		if m == nil || len(clockInside.FindAllString(l, 3)) != 2 {
			continue
		}
		p := pair{looseNumber(m[1]), looseNumber(m[2])}
		if p.first <= 0 || p.second <= 0 {
			continue
		}
		pairs[i] = p
		ratios = append(ratios, p.second/p.first)
	}
	if len(pairs) < 4 || len(pairs)*10 < timed*9 {
		return nil
	}
	slices.Sort(ratios)
	parts := ratios[len(ratios)/2] // 5 of km in the time of a 5 km run, 3.1 of miles
	last := parts > 1
	if !last {
		parts = 1 / parts
	}
	if parts < 1.5 || parts > 45 {
		return nil
	}
	like := 0
	for _, p := range pairs {
		pace, time := p.first, p.second
		if !last {
			pace, time = time, pace
		}
		if off := time/parts - pace; off > -2 && off < 2 {
			like++
		}
	}
	if like*10 < len(pairs)*9 {
		return nil
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		if out[i] = l; onlyHeadingWords(l) && len(strings.Fields(l)) >= 3 {
			out[i] = "" // "Place Name Pace Time", of one column more than is left
		} else if pairs[i].first > 0 {
			m := twoClocks.FindStringSubmatchIndex(l)
			time := l[m[2]:m[3]]
			if last {
				time = l[m[4]:m[5]]
			}
			out[i] = strings.TrimRight(l[:m[0]], " ,;") + " " + time
		}
	}
	for _, arrange := range [...]func([]string, byte) []string{placeNameTime, typedLines} {
		if cut := arrange(out, delim); cut != nil {
			return cut
		}
	}
	return nil
}

// paceInCell is a time and a pace in one cell: "18:20 / 3:40", "18:20 3:40/km".
var paceInCell = regexp.MustCompile(`^\s*(\d{1,3}:\d{2}(?::\d{2})?)\s*[ /|;,–-]\s*(\d{1,2}:\d{2})(?: ?(?:/|per |min/)[a-z]{2,4})?\s*$`)

// dropPaces leaves the time alone in cells that hold the pace behind it, in columns with a heading
// for times: nine in ten of four cells or more are of that kind, and the one is the same part of
// the other as far as whole seconds can show. It returns the number of cells.
func (g *grid) dropPaces(lex *lexicon, headings []string, after int) (dropped int) {
	for column, h := range headings {
		guess := lex.read(h)
		if h == "" || !guess.known || !guess.meaning.isTime() && guess.meaning != Pace {
			continue
		}
		filled, looked := 0, 0
		type pair struct{ time, pace float64 }
		var pairs []pair
		for i := 0; i < g.len(); i++ {
			row, cells := g.at(i)
			c := trim(cellAt(cells, column))
			if row <= after || c == "" {
				continue
			}
			if looked++; looked > 5 && len(pairs) == 0 {
				break
			}
			if kindOf(c) != kStatus {
				filled++
			}
			if m := paceInCell.FindStringSubmatch(c); m != nil {
				pairs = append(pairs, pair{looseNumber(m[1]), looseNumber(m[2])})
			}
		}
		if len(pairs) < 4 || 10*len(pairs) < 9*filled {
			continue
		}
		ratios := make([]float64, len(pairs))
		for i, p := range pairs {
			ratios[i] = p.time / max(p.pace, 1)
		}
		slices.Sort(ratios)
		parts, like := ratios[len(ratios)/2], 0
		for _, p := range pairs {
			if off := p.time/parts - p.pace; off > -2 && off < 2 {
				like++
			}
		}
		if parts < 1.5 || 10*like < 9*len(pairs) {
			continue
		}
		if guess.meaning == Pace {
			headings[column] = "Time" // "Time / pace"
		}
		dropped += g.mend(func(_, row int, cells []string) ([]string, bool) {
			m := paceInCell.FindStringSubmatch(cellAt(cells, column))
			if row <= after || m == nil {
				return nil, false
			}
			cells = slices.Clone(cells)
			cells[column] = m[1]
			return cells, true
		})
	}
	return dropped
}
