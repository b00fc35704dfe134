package pipeline

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/text"
)

// leaveOtherDistances takes tabs whose times fit no run of 5 km, and that say no distance, out
// of a workbook on which another tab with results is clear: a distance given by hand would be
// that of all tabs. The lines of what is left out are told, and where to write the distance.
func (p *parsedSheet) leaveOtherDistances() {
	var away []*parsedPart
	clear := false
	for _, q := range p.parts {
		asks, others := false, false
		for _, m := range q.problems {
			switch {
			case m.Severity != place.Waits:
			case m.Kind == "distance-missing":
				asks = true
			default:
				others = true
			}
		}
		full := q.part.Kind == "full" || q.part.Kind == "excerpt"
		for _, m := range q.part.Problems {
			others = others || m.Severity == place.Waits
		}
		switch {
		case others || asks && (q.part.Tab == "" || !full):
			return
		case asks:
			away = append(away, q)
		case full:
			clear = true
		}
	}
	if !clear || len(away) == 0 {
		return
	}
	p.parts = slices.DeleteFunc(p.parts, func(q *parsedPart) bool { return slices.Contains(away, q) })
	p.sheet.Parts = slices.DeleteFunc(p.sheet.Parts, func(part *sheet.Part) bool {
		return slices.ContainsFunc(away, func(q *parsedPart) bool { return q.part == part })
	})
	for _, q := range away {
		rows := 0
		for _, run := range q.unread.open {
			rows += int(run.left)
		}
		for _, m := range q.problems {
			if m.Kind == "distance-missing" {
				left := place.Problem{Place: m.Place, Severity: place.Doubtful, Kind: sheet.TabLeftOut, Read: m.Read, Expected: m.Expected,
					Do: fmt.Sprintf("Over which distance was the run? Write it in a line above the table, as in 10 km, save, and load the workbook again. Until then its %s left out; the other tabs are loaded. If this tab holds no results of its own, delete it.", text.CountOf(rows, "line is", "lines are"))}
				p.problems = append(p.problems, left)
				p.sheet.Problems = append(p.sheet.Problems, left)
			}
		}
	}
}
