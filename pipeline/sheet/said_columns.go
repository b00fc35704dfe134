package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// ColumnAnswer is what the answers begin with that say what a column holds, the heading behind it, or
// the letter of a column that has none of its own: "column T1=time", "column D=name".
const ColumnAnswer = "column "

// saidColumns are the meanings that somebody gave to columns, by folded heading and by the letters of a
// column without a heading.
func saidColumns(said map[string]string) map[string]Meaning {
	var out map[string]Meaning
	for column, word := range said {
		if m, ok := ParseMeaning(word); ok {
			if out == nil {
				out = map[string]Meaning{}
			}
			out[saidKey(column)] = m
		}
	}
	return out
}

// saidKey tells columns in answers: a heading as it is compared, and a letter as such.
func saidKey(column string) string {
	if f := fold(column); f != "" {
		return f
	}
	return column
}

// saidOf is what somebody said of a column under some headings.
func (l *lexicon) saidOf(headings []string, column int) (Meaning, bool) {
	if len(l.said) == 0 {
		return Other, false
	}
	m, ok := l.said[saidKey(answerName(headings, column))]
	return m, ok
}

// answerName is what a column is called in answers: its heading, or its letter where it has none, one
// that stands twice or one with a mark of answers.
func answerName(headings []string, column int) string {
	h := cellAt(headings, column)
	if h == "" || strings.ContainsAny(h, ";=\"\n\t") || len(h) > 60 {
		return letters(column)
	}
	for k, other := range headings {
		if k != column && saidKey(other) == saidKey(h) {
			return letters(column)
		}
	}
	return h
}

// bySaid takes the columns of which somebody has said what they hold for that, and no other column
// for the same.
func (s *settler) bySaid() {
	for i, g := range s.guesses {
		if !g.said {
			continue
		}
		for k := range s.columns {
			same := s.columns[k].Meaning == g.meaning || s.columns[k].Meaning.isTime() && g.meaning.isTime()
			if k != i && same && g.meaning != Other && !s.guesses[k].said {
				s.set(k, Other, "heading %q; by an answer it is column %s", s.headings[k], letters(i))
			}
		}
		s.set(i, g.meaning, "heading %q, by an answer", s.headings[i])
		if s.headings[i] == "" {
			s.columns[i].Why = "by an answer"
		}
	}
}

// askWhich gives a question the answers that say which of several columns holds something.
func (s *settler) askWhich(p *Part, m Meaning, when string, columns ...int) {
	var answers []place.Answer
	for _, i := range columns {
		which := "of column " + letters(i)
		if name := answerName(s.headings, i); name == s.headings[i] {
			which = fmt.Sprintf("under “%s”", name)
		}
		answers = append(answers, place.Answer{Flags: s.columnFlags(i, m), When: fmt.Sprintf(when, which)})
	}
	p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(answers...)
}

// columnFlags is how somebody says that a column holds something.
func (s *settler) columnFlags(i int, m Meaning) string {
	return fmt.Sprintf("--answer %q", ColumnAnswer+answerName(s.headings, i)+"="+m.String())
}

// askUnused holds a sheet of which somebody has said what a column holds that it has not.
func (s *Sheet) askUnused(o Options) {
	for _, column := range slices.Sorted(maps.Keys(o.Columns)) {
		var headings []string
		found := false
		for _, p := range s.Parts {
			own := p.Headings()
			for i := range own {
				h := answerName(own, i)
				found = found || saidKey(h) == saidKey(column)
				if !slices.Contains(headings, h) {
					headings = append(headings, h)
				}
			}
		}
		if !found {
			s.Parts[0].problem(s.Name, 0, -1, place.Waits, "answer-unused", ColumnAnswer+column, "one of its columns: "+shorten(strings.Join(headings, ", "), 200),
				"The sheet has no such column. Answer again with one that it has.")
		}
	}
}
