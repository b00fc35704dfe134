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
