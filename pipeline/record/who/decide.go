package who

import "fmt"

// Decision is a person's word on two result lines, named by their keys: the
// same runner, or two. It overrides every weight.
type Decision struct {
	A, B int64
	Same bool
	// WholeA and WholeB say that the row stands for the runner it is of, as far
	// as name, sex and number or course agree; otherwise the decision is about
	// that one line, whatever the runner's other lines are.
	WholeA, WholeB bool
	Ref            string // how to name it in messages, e.g. "decisions.csv:12"
}

// Contradiction is a decision that could not be followed because others say
// the opposite.
type Contradiction struct {
	Decision Decision
	Against  []Decision
	Message  string
}

// rowOf finds a row by its key.
func (m *model) rowOf(key int64) (int32, bool) {
	if m.byKey == nil {
		return 0, false
	}
	i, ok := m.byKey[key]
	return i, ok
}

// readDecisions looks up the rows that decisions speak of.
func (m *model) readDecisions() error {
	if len(m.o.Decisions) == 0 {
		return nil
	}
	m.byKey = map[int64]int32{}
	for _, d := range m.o.Decisions {
		m.byKey[d.A], m.byKey[d.B] = -1, -1
	}
	for i, k := range m.rows.Key {
		if _, ok := m.byKey[k]; ok {
			m.byKey[k] = int32(i)
		}
	}
	for k, i := range m.byKey {
		if i < 0 {
			delete(m.byKey, k) // its sheet is withdrawn: the decision waits
		}
	}
	return nil
}

// applyDecisions turns decisions on rows into joins and bans of signatures. A
// decision that contradicts the others together is shown, not followed: of a
// "same" between two that others hold apart neither side is guessed, and the
// rows stay apart.
func (m *model) applyDecisions() {
	m.bans = map[int32][]int32{}
	group := map[int32]int32{}
	var find func(x int32) int32
	find = func(x int32) int32 {
		p, ok := group[x]
		if !ok || p == x {
			return x
		}
		r := find(p)
		group[x] = r
		return r
	}
	type apart struct {
		a, b int32
		d    Decision
	}
	var parts []apart
	for _, d := range m.o.Decisions {
		if d.Same {
			continue
		}
		a, okA := m.rowOf(d.A)
		b, okB := m.rowOf(d.B)
		if !okA || !okB {
			continue
		}
		if a == b {
			m.contra = append(m.contra, Contradiction{Decision: d,
				Message: fmt.Sprintf("%s says that one result line is two people", d.Ref)})
			continue
		}
		sa, sb := m.sigOf[a], m.sigOf[b]
		parts = append(parts, apart{sa, sb, d})
		m.bans[sa] = append(m.bans[sa], sb)
		m.bans[sb] = append(m.bans[sb], sa)
	}
	for _, d := range m.o.Decisions {
		if !d.Same {
			continue
		}
		a, okA := m.rowOf(d.A)
		b, okB := m.rowOf(d.B)
		if !okA || !okB || a == b {
			continue
		}
		sa, sb := m.sigOf[a], m.sigOf[b]
		ra, rb := find(sa), find(sb)
		if ra == rb {
			continue
		}
		var against []Decision
		for _, p := range parts {
			x, y := find(p.a), find(p.b)
			if x == ra && y == rb || x == rb && y == ra {
				against = append(against, p.d)
			}
		}
		if len(against) > 0 {
			m.contra = append(m.contra, Contradiction{Decision: d, Against: against,
				Message: fmt.Sprintf("%s says these are the same runner, but %s keeps them apart: please withdraw one of the two. Until then they stay apart.",
					d.Ref, refs(against))})
			continue
		}
		group[max(ra, rb)] = min(ra, rb)
		m.must = append(m.must, [2]int32{sa, sb})
	}
}

func refs(ds []Decision) string {
	s := ""
	for i, d := range ds {
		switch {
		case i == 3:
			return s + fmt.Sprintf(" and %d more", len(ds)-3)
		case i > 0:
			s += ", "
		}
		s += d.Ref
	}
	return s
}

// Thresholds are the weights in bits from which a single line is joined (see
// JoinFrom for more), and below which a pair is not even doubtful.
func (r *Result) Thresholds() (join, review float64) { return r.m.join, r.m.o.Review }
