package pipeline

import (
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/text"
)

// saidAnswer is the key of the answer that says from which sheet the kind or the distance
// of one is known: "said as before=juniors 2026-01-03.csv".
const saidAnswer = "said as before"

// saidRemembered is the kind of remark on such a sheet.
const saidRemembered = "said-remembered"

// saidBefore is what somebody said of the latest sheet of the course with the same
// headings, where this sheet asks the very same: that it is an excerpt, where many places
// are missing, or its distance, where that is what it waits for.
func (r *remembered) saidBefore(p *parsedSheet, hand ByHand) (ByHand, bool) {
	if hand.Kind != "" || hand.Distance != "" || len(r.before) == 0 {
		return hand, false
	}
	asks := func(kind string) bool {
		return slices.ContainsFunc(p.problems, func(q place.Problem) bool { return q.Kind == kind })
	}
	for _, q := range p.parts {
		for _, k := range q.runs {
			e, ok := r.before[headingsKey(k.course.course, q.headings())]
			switch {
			case !ok:
				continue
			case e.Kind == "excerpt" && !p.waits() && asks("positions-missing-many"):
				hand.Kind = e.Kind
			case e.Distance != "" && p.waits() && p.asked().Kind == "distance-missing":
				hand.Distance = e.Distance
			default:
				continue
			}
			hand.Answers = joinAnswers(hand.Answers, saidAnswer+"="+strings.ReplaceAll(e.Path, ";", ","))
			return hand, true
		}
	}
	return hand, false
}

// readAsSaid reads a sheet again by what somebody said of an earlier one like it. It
// returns p itself, and what is said of it now, where there is nothing or it is of no use.
func (r *remembered) readAsSaid(p *parsedSheet, hand ByHand, parse func(ByHand) (*parsedSheet, error)) (*parsedSheet, ByHand) {
	said, ok := r.saidBefore(p, hand)
	if !ok {
		return p, hand
	}
	now, err := parse(said)
	if err != nil || now.waits() {
		return p, hand
	}
	now.byHand = p.byHand
	return now, said
}

// noteSaid says on a sheet what was taken over from an earlier one.
func noteSaid(s *sheet.Sheet, hand ByHand, answers map[string]string) {
	from, ok := answers[saidAnswer]
	if !ok {
		return
	}
	q := place.Problem{Place: place.Place{Sheet: s.Name}, Severity: place.Note, Kind: saidRemembered}
	if hand.Kind != "" {
		q.Read, q.Do = "an excerpt, some of the field", fmt.Sprintf("That is as somebody said of %s, which has the same headings. If it is the whole field: lapwing sheets withdraw %s, then load it with --kind full.", from, text.Typed(s.Name))
	} else {
		q.Read, q.Do = "a run over "+hand.Distance, fmt.Sprintf("That is as somebody said of %s, which has the same headings. If it is another distance: lapwing sheets withdraw %s, then load it with --distance.", from, text.Typed(s.Name))
	}
	s.Problems = append(s.Problems, q)
}
