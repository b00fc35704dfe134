package who

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"lapwing/pipeline/record/name"
)

// Attached says whose some new rows are.
type Attached struct {
	*Result // Runner numbers known and new runners together, the known ones first
	// Owner is, by runner, the label of the known runner, or 0 for a new one.
	Owner []int32
}

// Attach gives new rows to runners that are known already, or makes new
// runners of them, by the evidence, weights and thresholds of the linkage that
// left k behind. rows hold the new rows and all rows of every known runner who
// might own one of them; owner is by row the label of the known runner, 0 for
// a new row. Known runners stay as they are: they are not joined with one
// another and lose no row. That is for the next linkage of everything, which
// comes to the same as if nothing had been attached before.
//
// Decisions are about new rows only: others are in the known runners already.
func Attach(ctx context.Context, k *Known, rows *Rows, names []name.Name, owner []int32, o Options) (*Attached, error) {
	o = o.withDefaults()
	if err := rows.check(len(names)); err != nil {
		return nil, err
	}
	if len(owner) != rows.Len() {
		return nil, fmt.Errorf("who: %d rows have %d owners", rows.Len(), len(owner))
	}
	m := &model{ctx: ctx, rows: rows, in: names, o: o, w: k.Weights, known: k}
	m.rename()
	m.measurePace()
	m.recallTurns()
	if err := m.tabulate(); err != nil {
		return nil, err
	}
	m.clubbed, m.unsure = k.series(rows)
	if err := m.readDecisions(); err != nil {
		return nil, err
	}
	m.gather()
	at := m.attachable(owner)
	m.recall()
	m.recs = nil
	m.applyDecisions()
	m.homes = at.likeliest(m)
	for _, step := range []func() error{m.block, m.cluster} {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if err := step(); err != nil {
			return nil, err
		}
	}
	out := &Attached{Result: m.result()}
	out.Owner = make([]int32, out.Runners)
	for i, label := range at.owners {
		out.Owner[m.runner[i]] = label
	}
	return out, nil
}

// recallTurns lets names be turned round as they were before.
func (m *model) recallTurns() {
	t := &m.names
	t.asGiven, t.asFamily = map[string]int32{}, map[string]int32{}
	for _, x := range m.known.Given {
		t.asGiven[x.Text] = x.AsRead
	}
	for _, x := range m.known.Family {
		t.asFamily[x.Text] = x.AsRead
	}
}

// series says of which sheets give clubs, and whose ages change in one week.
// A series that was not known is taken as giving clubs where it does.
func (k *Known) series(r *Rows) (clubbed, unsure []bool) {
	n := int(max(top(r.Series)+1, int32(len(k.Clubbed))))
	clubbed, unsure = make([]bool, n), make([]bool, n)
	copy(clubbed, k.Clubbed)
	copy(unsure, k.Unsure)
	for i, s := range r.Series {
		if int(s) >= len(k.Clubbed) && r.Club[i] > 0 {
			clubbed[s] = true
		}
	}
	return clubbed, unsure
}

// attachment is the rows laid out for attaching: the known runners come first
// among the signatures, by label, then those of the new rows by Key.
type attachment struct {
	owners []int32 // by signature of a known runner
	// homes are, by signature of new rows, the known runners whom it fits by
	// name, sex and number, or name, sex and course, as if it had been there from
	// the start.
	homes map[int32][]int32
}

// homed is a signature of new rows and the known runner whose it is.
type homed struct {
	runner, sig int32
	why         sum
}

// attachable pools the rows of every known runner and groups the new ones.
func (m *model) attachable(owner []int32) *attachment {
	l := &m.lab
	at := &attachment{homes: map[int32][]int32{}}
	byOwner := map[int32][]int32{}
	for _, i := range l.order {
		if o := owner[i]; o > 0 {
			if byOwner[o] == nil {
				at.owners = append(at.owners, o)
			}
			byOwner[o] = append(byOwner[o], i)
		}
	}
	slices.Sort(at.owners)
	g := &signer{m: m, recs: m.recs, starts: []int32{0}}
	m.sigOf = make([]int32, len(owner))
	sigOf := map[int32]int32{}
	for s, o := range at.owners {
		c := g.pool(byOwner[o], false)
		if c.strange > 0 { // as the pooling of signatures has it
			c.consensus()
			c.strange = c.ages.n - c.births
		}
		m.sigs = append(m.sigs, c)
		sigOf[o] = int32(s)
		for _, i := range byOwner[o] {
			m.sigOf[i] = int32(s)
		}
	}
	// New rows in groups of one name and sex, as sign has them.
	keys, with := m.byName(nil)
	g.rows = make([]int32, 0, len(owner))
	var homes [][]int32
	eachGroup(keys, 33, func(a, b int) {
		rows := with[a:b]
		if !slices.ContainsFunc(rows, func(i int32) bool { return owner[i] == 0 }) {
			return
		}
		free := keys[a]>>63 == 0
		g.findNamesakes(free, rows)
		eachGroup(keys[a:b], 0, func(x, y int) {
			from := len(g.rows)
			old := map[int32][]int32{}
			for _, i := range rows[x:y] {
				if owner[i] == 0 {
					g.rows = append(g.rows, i)
				} else {
					old[sigOf[owner[i]]] = append(old[sigOf[owner[i]]], i)
				}
			}
			if len(g.rows) == from {
				return
			}
			first := len(g.sigs)
			g.group(free, g.rows[from:])
			for s := first; s < len(g.sigs); s++ {
				var fit []int32
				mine := g.rows[g.starts[s]:g.starts[s+1]]
				for sig, theirs := range old {
					both := append(slices.Clone(theirs), mine...)
					if free && !g.sigs[s].loose && !g.contradict(both) && (m.recs[mine[0]].number > 0 || !g.clash(both)) {
						fit = append(fit, sig)
					}
				}
				slices.Sort(fit)
				homes = append(homes, fit)
			}
		})
	})
	m.noteSakes(g.sakes)
	// In the order of their first rows by Key.
	order := make([]int32, len(g.sigs))
	first := make([]int64, len(g.sigs))
	for s := range order {
		order[s] = int32(s)
		first[s] = m.rows.Key[g.rows[g.starts[s]]]
		for _, i := range g.rows[g.starts[s]:g.starts[s+1]] {
			first[s] = min(first[s], m.rows.Key[i])
		}
	}
	slices.SortFunc(order, func(a, b int32) int { return cmp.Compare(first[a], first[b]) })
	for _, s := range order {
		to := int32(len(m.sigs))
		m.sigs = append(m.sigs, g.sigs[s])
		if len(homes[s]) > 0 {
			at.homes[to] = homes[s]
		}
		for _, i := range g.rows[g.starts[s]:g.starts[s+1]] {
			m.sigOf[i] = to
		}
	}
	m.fixed = make([]bool, len(m.sigs))
	for i := range at.owners {
		m.fixed[i] = true
	}
	return at
}

// likeliest chooses a home for each signature of new rows: of several, the
// likeliest. The surest come first.
func (at *attachment) likeliest(m *model) []homed {
	var out []homed
	for s := int32(len(at.owners)); int(s) < len(m.sigs); s++ {
		best := homed{runner: -1, sig: s}
		for _, r := range at.homes[s] {
			if w := m.weigh(&m.sigs[r], &m.sigs[s]); best.runner < 0 || w.total > best.why.total {
				best.runner, best.why = r, w
			}
		}
		if best.runner >= 0 {
			out = append(out, best)
		}
	}
	slices.SortStableFunc(out, func(x, y homed) int { return -cmp.Compare(x.why.total, y.why.total) })
	return out
}

// PartsOf are the given and the family name that a row was read as; ok is
// false where it names nobody.
func (r *Result) PartsOf(row int32) (given, family string, ok bool) {
	t := &r.m.names
	k := t.of[r.m.rows.Name[row]]
	if k < 0 {
		return "", "", false
	}
	return t.given.text[t.keys[k].given], t.family.text[t.keys[k].family], true
}

// Levels adds the levels of new runs and courses to those that are known.
func (r *Result) Levels(k *Known) {
	l := &r.m.lab
	set := func(list []int32, from []int32, level []int32) []int32 {
		for i, f := range from {
			for int(f) >= len(list) {
				list = append(list, NoLevel)
			}
			if list[f] == NoLevel {
				list[f] = level[i]
			}
		}
		return list
	}
	k.RunLevel, k.CourseLevel = set(k.RunLevel, l.runFrom, l.level), set(k.CourseLevel, l.courseFrom, l.courseLevel)
}
