package who

import (
	"cmp"
	"slices"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// Side is what is known of one runner, to be laid beside another's.
type Side struct {
	Runner      int32
	Rows        []int32         // the latest first
	Spellings   []name.Spelling // as received, most frequent first
	Numbers     []string        // texts, where Rows.Numbers has them, by the alphabet
	Birth       age.Window      // the birth dates that the ages fit
	Strange     int             // lines whose age does not fit Birth
	First, Last unit.Day
}

// Side gathers a runner's lines and what they say.
func (r *Result) Side(runner int32) Side {
	m := r.m
	if r.rowsFrom == nil {
		r.indexRows()
	}
	s := Side{Runner: runner, Rows: slices.Clone(r.rowsOf[r.rowsFrom[runner]:r.rowsFrom[runner+1]])}
	slices.SortFunc(s.Rows, func(a, b int32) int {
		return cmp.Or(cmp.Compare(m.rows.Day[b], m.rows.Day[a]), cmp.Compare(m.rows.Key[b], m.rows.Key[a]))
	})
	s.Last, s.First = m.rows.Day[s.Rows[0]], m.rows.Day[s.Rows[len(s.Rows)-1]]
	for _, i := range s.Rows {
		text := m.in[m.rows.Name[i]].Text
		if k := slices.IndexFunc(s.Spellings, func(x name.Spelling) bool { return x.Text == text }); k >= 0 {
			s.Spellings[k].Count++
		} else {
			s.Spellings = append(s.Spellings, name.Spelling{Text: text, Count: 1})
		}
		if n := m.rows.Number[i]; n > 0 && len(m.rows.Numbers) > 0 && !slices.Contains(s.Numbers, m.rows.Numbers[n]) {
			s.Numbers = append(s.Numbers, m.rows.Numbers[n])
		}
	}
	slices.Sort(s.Numbers)
	slices.SortFunc(s.Spellings, func(a, b name.Spelling) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Text, b.Text))
	})
	c := m.group.pool[m.roots[runner]]
	if c.births > 0 {
		s.Birth = age.Window{Lo: c.lo, Hi: c.hi}
	}
	s.Strange = int(c.strange)
	return s
}

// indexRows lists the rows of every runner, by counting.
func (r *Result) indexRows() {
	from := make([]int32, r.Runners+1)
	for _, x := range r.Runner {
		from[x+1]++
	}
	for k := range r.Runners {
		from[k+1] += from[k]
	}
	r.rowsOf = make([]int32, len(r.Runner))
	at := slices.Clone(from)
	for i, x := range r.Runner {
		r.rowsOf[at[x]] = int32(i)
		at[x]++
	}
	r.rowsFrom = from
}
