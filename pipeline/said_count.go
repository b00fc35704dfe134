package pipeline

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/text"
)

// checkSaidCount compares the lines of a sheet with the number of finishers that the sheet
// itself says, where it is of one run: what was lost on the way to the sheet, or in reading it,
// shows there. Whether those without a time or who did not start are counted, sheets differ.
func (p *parsedSheet) checkSaidCount() {
	var said []sheet.SaidCount
	var of *parsedPart
	most, fewest := 0, 0
	for _, q := range p.parts {
		if q.part.Kind == sheet.Volunteers {
			continue
		}
		if q.kind != "full" || len(q.runs) != 1 || of != nil && q.runs[0] != of.runs[0] || slices.ContainsFunc(q.problems, func(m partProblem) bool { return strings.HasPrefix(m.Kind, "positions-missing") }) {
			return
		}
		if of == nil {
			of = q
		}
		said = append(said, q.part.SaidCounts()...)
		most += q.lines.n + q.notStarted
		fewest += q.byStatus[record.OK]
	}
	if len(said) == 0 || slices.ContainsFunc(said, func(s sheet.SaidCount) bool { return s.N != said[0].N }) {
		return
	}
	s := said[0]
	q := place.Problem{Place: s.Place(of.part), Severity: place.Look, Kind: "finishers-differ", Expected: fmt.Sprintf("%d finishers, as the sheet says", s.N)}
	switch {
	case s.N > most:
		q.Do, q.Answers = "Look for the missing lines", place.AnswerLines(place.Answer{Flags: "--kind excerpt", When: "if the sheet holds only some of the field"})
	case s.N < fewest:
		q.Do = "Look for a line too many, such as somebody who stands on it twice; or the sheet counts wrong, then there is nothing to do."
	default:
		return
	}
	q.Read = fmt.Sprintf("“%s” over %s", s.Text, text.Count(p.rows(), "line"))
	if s.Row > 0 {
		q.Read = fmt.Sprintf("“%s” under %s", s.Text, text.Count(p.rows(), "line"))
	}
	of.problems = append(of.problems, partProblem{q, 0})
}
