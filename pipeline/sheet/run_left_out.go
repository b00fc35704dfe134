package sheet

import (
	"fmt"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// TabLeftOut is the kind of a question that holds one tab of a workbook and not the
// others.
const TabLeftOut = "tab-left-out"

// ofTab are the kinds of questions that are about one tab, and that are answered on it.
var ofTab = set("date-unclear date-missing year-missing course-missing heading-unclear", DateImpossible, distancesDiffer)

// leaveTabs takes tabs that wait for an answer out of a workbook on which another tab
// is clear: one that was copied and not changed, or that says less than the others,
// does not hold up the rest. It returns the parts that stay. Halves of results are
// never taken apart, and what other sheets may answer holds the workbook.
func (rs *runSettler) leaveTabs(parts []*Part) (kept []*Part) {
	asks := map[*Part]place.Problem{}
	settled := 0
	for _, p := range parts {
		for _, q := range p.Problems {
			if q.Severity != place.Waits {
				continue
			}
			if !ofTab[q.Kind] || p.Tab == "" || p.Kind != "full" && p.Kind != "excerpt" || p.Date.ByOrder != nil || p.Date.Slip {
				return parts
			}
			if _, asked := asks[p]; !asked {
				asks[p] = q
			}
		}
		if _, waits := asks[p]; !waits && (p.Kind == "full" || p.Kind == "excerpt") {
			settled++
		}
	}
	if settled == 0 || len(asks) == 0 {
		return parts
	}
	for _, p := range parts {
		q, ok := asks[p]
		if !ok {
			kept = append(kept, p)
			continue
		}
		rows := 0
		p.Each(func(int, []string) error {
			rows++
			return nil
		}) // a grid has no errors of its own
		rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: q.Place, Severity: place.Doubtful, Kind: TabLeftOut, Read: q.Read, Expected: q.Expected,
			Do: fmt.Sprintf("%s Until then its %s left out; the other tabs are loaded. If this tab holds no results of its own, delete it.", rs.answerOnTab(p, q), text.CountOf(rows, "line is", "lines are"))})
	}
	return kept
}

// answerOnTab says how a question about a tab is answered on it.
func (rs *runSettler) answerOnTab(p *Part, q place.Problem) string {
	const again = ", save, and load the workbook again."
	if !p.Course.OK() {
		return "Which course was this? Write its name in a line above the table" + again
	}
	if p.Date.OK() {
		return q.Do
	}
	if len(p.Date.Choices) > 1 && saysDate(p.Tab, p.Date.Choices[0]) != saysDate(p.Tab, p.Date.Choices[1]) {
		return "Which date was the run? Write the right one above the table and in the name of this tab" + again
	}
	return "Which date was the run? Write it, with its year, in a line above the table" + again
}
