package sheet

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// ColumnAnswer is what the answers begin with that say what a column holds, the heading behind it, or
// the letter of a column that has none: "column T1=time", "column D=name".
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

// saidOf is what somebody said of a column.
func (l *lexicon) saidOf(heading string, column int) (Meaning, bool) {
	if len(l.said) == 0 {
		return Other, false
	}
	if heading == "" {
		heading = letters(column)
	}
	m, ok := l.said[saidKey(heading)]
	return m, ok
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

// askWhich gives a question the answers that say which of several columns holds something; none where
// their headings can't be told apart in an answer.
func (s *settler) askWhich(p *Part, m Meaning, when string, columns ...int) {
	var answers []place.Answer
	for _, i := range columns {
		flags := s.columnFlags(i, m)
		if flags == "" {
			return
		}
		which := fmt.Sprintf("under “%s”", s.headings[i])
		if s.headings[i] == "" {
			which = "of column " + letters(i)
		}
		answers = append(answers, place.Answer{Flags: flags, When: fmt.Sprintf(when, which)})
	}
	p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(answers...)
}

// columnFlags is how somebody says that a column holds something, "" where its heading stands twice or
// has a mark of answers.
func (s *settler) columnFlags(i int, m Meaning) string {
	h := s.headings[i]
	if strings.ContainsAny(h, ";=\"\n\t") || len(h) > 60 {
		return ""
	}
	for k, other := range s.headings {
		if k != i && h != "" && saidKey(other) == saidKey(h) {
			return ""
		}
	}
	if h == "" {
		h = letters(i)
	}
	return fmt.Sprintf("--answer %q", ColumnAnswer+h+"="+m.String())
}

// askUnused holds a sheet of which somebody has said what a column holds that it has not.
func (s *Sheet) askUnused(o Options) {
	for _, column := range slices.Sorted(maps.Keys(o.Columns)) {
		var headings []string
		found := false
		for _, p := range s.Parts {
			for _, c := range p.Columns {
				h := cmp.Or(c.Heading, letters(c.Index))
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
