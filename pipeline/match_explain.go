package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/record/who"
)

// MatchVerdict says whether two are one person, and why.
type MatchVerdict struct {
	MatchPair
	One     bool     `json:"one_runner"`
	Why     string   `json:"verdict"`
	Decided []string `json:"decisions,omitempty"` // decisions of people about the two
}

// MatchHistory tells how a runner came to be: the joins that made it.
type MatchHistory struct {
	Runner MatchPerson `json:"runner"`
	Steps  []MatchStep `json:"joins"`
	Old    []string    `json:"old_ids,omitempty"`
}

// MatchStep is one join: the lines that stand for both sides, and the evidence
// at that moment.
type MatchStep struct {
	First    MatchLine  `json:"first"`
	Second   MatchLine  `json:"second"`
	Decided  bool       `json:"decided"` // by a person, whatever the evidence
	Evidence []Evidence `json:"evidence"`
	Bits     float64    `json:"bits"`
}

// ExplainPair weighs any two runners (R12 or a name) against each other. A pair
// that is not on the review list is weighed afresh, which reads the whole
// archive.
func (pl *Pipeline) ExplainPair(ctx context.Context, first, second string) (*MatchVerdict, error) {
	a, err := pl.target(ctx, first)
	if err != nil {
		return nil, err
	}
	b, err := pl.target(ctx, second)
	if err != nil {
		return nil, err
	}
	if a.no > b.no {
		a, b = b, a
	}
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	k, err := pl.linkage(ctx)
	if err != nil {
		return nil, err
	}
	v := &MatchVerdict{MatchPair: MatchPair{First: a.person, Second: b.person, Evidence: []Evidence{}}}
	apart := 0
	for _, s := range have {
		if s.a == a.no && s.b == b.no || s.a == b.no && s.b == a.no {
			v.Decided = append(v.Decided, fmt.Sprintf("%s: %s", s.d.words(), s.d.Kind))
			if s.d.Kind == DecideDifferent && s.wholeA {
				apart = s.d.ID
			}
		}
	}
	if a.no == b.no {
		v.One, v.Why = true, fmt.Sprintf("%s and %s are one runner, %s %s. To see how it came about: lapwing match explain %s", a.shown, b.shown, a.person.ID, a.person.Name, a.person.ID)
		return v, nil
	}
	list, err := pl.pairs(ctx, 1, "first_no = ? and second_no = ?", a.no, b.no)
	if err != nil {
		return nil, err
	}
	if len(list) == 1 {
		v.Place, v.Evidence, v.Bits, v.Chance = list[0].Place, list[0].Evidence, list[0].Bits, list[0].Chance
	} else if err := pl.weighAfresh(ctx, v, a.no, b.no); err != nil {
		return nil, err
	}
	join := who.JoinFrom(k.JoinBits, int32(v.First.Lines), int32(v.Second.Lines))
	listed := "They are not on the review list."
	if v.Place > 0 {
		listed = fmt.Sprintf("They are number %d on the review list. To answer: lapwing match join %s %s, or lapwing match part %s %s.", v.Place, v.First.ID, v.Second.ID, v.First.ID, v.Second.ID)
	}
	switch {
	case apart > 0:
		v.Why = fmt.Sprintf("Two runners: decision %d keeps them apart, whatever the evidence.", apart)
	case v.Bits >= join:
		v.Why = fmt.Sprintf("Kept as two runners until somebody answers, however likely it is that they are one: a wrong join spoils more than a question. The sum reaches the %s from which lines without numbers are joined, but a number on one side only, numbers or family names that differ, or a name of several people need more; or it was lower before the last lines of one of them had been joined. %s", signedBits(join), listed)
	case v.Bits > k.ReviewBits:
		v.Why = fmt.Sprintf("Two runners: the sum is below the %s from which two with so many lines are joined (%s where a sheet gives one of them a number). %s", signedBits(join), signedBits(who.JoinNumbered(k.JoinBits, int32(v.First.Lines), int32(v.Second.Lines))), listed)
	default:
		v.Why = fmt.Sprintf("Two runners: the sum is below %s, so that the pair is not even doubtful.", signedBits(k.ReviewBits))
	}
	return v, nil
}

// linkAgain links all lines as the last refresh did and writes nothing.
func (pl *Pipeline) linkAgain(ctx context.Context) (*work, error) {
	w := &work{}
	for _, s := range steps {
		pl.Progress.Step(s.name, 0, 1)
		if err := s.run(pl, ctx, w); err != nil {
			return nil, err
		}
		if w.link != nil {
			break
		}
	}
	pl.Progress.Done()
	return w, nil
}

func (pl *Pipeline) weighAfresh(ctx context.Context, v *MatchVerdict, a, b int32) error {
	w, err := pl.linkAgain(ctx)
	if err != nil {
		return err
	}
	x, y := slices.Index(w.link.number, a), slices.Index(w.link.number, b)
	if x < 0 || y < 0 {
		return fmt.Errorf("the archive has changed since the last refresh; run lapwing refresh, then try again")
	}
	e := w.link.result.Explain(int32(x), int32(y))
	for _, r := range e.Reasons {
		v.Evidence = append(v.Evidence, Evidence{evidenceName(r.Evidence), r.Words, r.Bits})
	}
	v.Bits, v.Chance = e.Bits, e.Chance
	return nil
}

// ExplainRunner tells how a runner came to be, join by join.
func (pl *Pipeline) ExplainRunner(ctx context.Context, who string) (*MatchHistory, error) {
	t, err := pl.target(ctx, who)
	if err != nil {
		return nil, err
	}
	w, err := pl.linkAgain(ctx)
	if err != nil {
		return nil, err
	}
	h := &MatchHistory{Runner: t.person, Steps: []MatchStep{}}
	x := slices.Index(w.link.number, t.no)
	if x < 0 {
		return nil, fmt.Errorf("the archive has changed since the last refresh; run lapwing refresh, then try again")
	}
	for _, s := range w.link.result.Steps(int32(x)) {
		step := MatchStep{First: w.matchLine(s.A), Second: w.matchLine(s.B), Decided: s.Decided, Bits: s.Why.Bits, Evidence: []Evidence{}}
		for _, r := range s.Why.Reasons {
			step.Evidence = append(step.Evidence, Evidence{evidenceName(r.Evidence), r.Words, r.Bits})
		}
		h.Steps = append(h.Steps, step)
	}
	for old := range w.link.alias {
		if w.link.now(old) == t.no {
			h.Old = append(h.Old, "R"+itoa(old))
		}
	}
	slices.Sort(h.Old)
	return h, nil
}

// matchLine is a line of the linker's rows as people read it.
func (w *work) matchLine(row int32) MatchLine {
	f := w.field
	i := int(w.link.rows[row])
	p := &f.parts[f.part[i]-1]
	l := MatchLine{Date: f.day(i).String(), Course: f.courses[f.course(i)-1].name, Name: f.names.list[f.name[i]],
		Club: f.clubs.list[f.club[i]], at: lineRef{p.hash, p.tab, int(f.row[i])}}
	l.Place.Sheet, l.Place.Tab, l.Place.Row = p.path, p.tab, int(f.row[i])
	if f.timeMS[i] > 0 {
		l.Time = clockOrDash(f.timeMS[i])
	}
	return l
}

// signedBits prints a weight with its sign, the minus as wide as the plus.
func signedBits(x float64) string {
	return strings.Replace(fmt.Sprintf("%+.1f", x), "-", "\u2212", 1)
}
