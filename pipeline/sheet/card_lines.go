package sheet

import (
	"slices"
	"strings"
)

// cardLines puts together rows of which one line holds the time with other facts, divided
// by bars or dots, and the lines above it place and name, as cards on a page are copied:
// "1", below it "Jo Lee", below that "W40 | 18:27". Rows stand in the place of their first
// line. nil where the times do not all stand on such lines, or other lines do not stand
// between them.
func cardLines(lines []string) []string {
	if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(cellMarks.Replace(l), "\t") }) {
		return nil
	}
	var cells []string
	var at []int // the line of each cell
	filled, barred := 0, 0
	for i, l := range lines {
		l = trim(l)
		if l == "" {
			continue
		}
		filled++
		pieces := strings.Split(cellMarks.Replace(l), "\t")
		if clocks := clocksOf(pieces); len(pieces) == 1 || clocks == 0 {
			if len(pieces) == 1 && clocks > 0 || barred > 0 && len(pieces) > 1 {
				return nil
			}
			pieces = []string{l}
		} else {
			barred++
		}
		for _, p := range pieces {
			cells, at = append(cells, trim(p)), append(at, i)
		}
	}
	if barred < 4 || filled < 2*barred {
		return nil
	}
	rows := cellLines(cells, 0)
	if rows == nil {
		return nil
	}
	out := make([]string, len(lines))
	for k, r := range rows {
		switch {
		case r == "":
		case out[at[k]] == "":
			out[at[k]] = r
		default:
			out[at[k]] += "\t" + r
		}
	}
	return out
}

// clocksOf counts the times among pieces of a line.
func clocksOf(pieces []string) (n int) {
	for _, p := range pieces {
		if kindOf(trim(p)) == kClock {
			n++
		}
	}
	return n
}
