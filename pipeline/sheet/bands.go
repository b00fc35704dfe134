package sheet

import (
	"regexp"
	"strings"
)

var bandNumbers = regexp.MustCompile(`\d{1,3}(?:[:.]\d{2})?`)

// timeBands says whether lines between the rows, "Sub 20", "20 to 25", "Over 25", bound the
// times in minutes of the rows below them: they are no age groups, though they read like some.
func (p *Part) timeBands(g *grid, sections map[int]string) bool {
	clock := p.Index(Time)
	if clock < 0 || len(sections) < 2 {
		return false
	}
	rules := p.rules // a copy: a pass has a state
	rules.restart()
	lo, hi, bounded := 0.0, 0.0, false
	rows := 0
	for i := range g.len() {
		row, cells := g.at(i)
		if row < rules.first {
			continue
		}
		if text, ok := sections[row]; ok {
			if lo, hi, bounded = bandOf(text); !bounded {
				return false
			}
			continue
		}
		c := trim(cellAt(cells, clock))
		if !bounded || kindOf(c) != kClock || rules.classify(row, cells) != isData {
			continue
		}
		v := looseNumber(c)
		if v > 5*3600 {
			v /= 60 // minutes shown as hours
		}
		if v /= 60; v < lo || v >= hi {
			return false
		}
		rows++
	}
	return rows >= 2*len(sections)
}

// bandOf reads the bounds of such a line, in minutes; of an open one the other is far.
func bandOf(text string) (lo, hi float64, ok bool) {
	var n []float64
	for _, s := range bandNumbers.FindAllString(text, -1) {
		v := looseNumber(strings.Replace(s, ".", ":", 1))
		if strings.ContainsAny(s, ":.") {
			v /= 60
		}
		n = append(n, v)
	}
	const far = 1 << 20
	f := " " + fold(text) + " "
	switch {
	case len(n) == 2 && n[0] < n[1]:
		return n[0], n[1] + 1, true // 20 to 24: to 24:59
	case len(n) != 1:
		return 0, 0, false
	case strings.Contains(f, " sub ") || strings.Contains(f, " under ") || strings.Contains(f, " below ") || strings.Contains(f, " unter ") || strings.Contains(f, " moins "):
		return 0, n[0], true
	case strings.Contains(f, " over ") || strings.Contains(f, " above ") || strings.Contains(f, "+") || strings.Contains(f, " uber ") || strings.Contains(f, " plus "):
		return n[0], far, true
	}
	return 0, 0, false
}
