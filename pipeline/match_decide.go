package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// MatchOutcome is what became of decisions about people.
type MatchOutcome struct {
	Decisions []int         `json:"decisions"` // their ids in decisions.csv
	People    []MatchPerson `json:"people"`    // as they are now
	Words     []string      `json:"words"`
	Changes   []Change      `json:"changes"` // what else they change
}

// Join decides that first and each of the others are one person, Part that
// they are not; each is R12, a name, or SHEET:ROW for a single line. The
// decisions are kept and the figures computed again. by and why are kept with
// them.
func (pl *Pipeline) Join(ctx context.Context, by, why, first string, others ...string) (*MatchOutcome, error) {
	return pl.decide(ctx, true, by, why, first, others)
}

// Part decides that people are different; see Join.
func (pl *Pipeline) Part(ctx context.Context, by, why, first string, others ...string) (*MatchOutcome, error) {
	return pl.decide(ctx, false, by, why, first, others)
}

func (pl *Pipeline) decide(ctx context.Context, same bool, by, why, first string, others []string) (*MatchOutcome, error) {
	if _, err := pl.Refresh(ctx, false); err != nil {
		return nil, err
	}
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	var all []target
	for _, what := range append([]string{first}, others...) {
		t, err := pl.target(ctx, what)
		if err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	var fresh []Decision
	var pairs [][2]target
	for i := range all {
		for j := i + 1; j < len(all); j++ {
			if same && i > 0 { // each with the first joins them all
				break
			}
			d, err := newDecision(have, same, all[i], all[j])
			if err != nil {
				return nil, err
			}
			d.By, d.Why = by, why
			fresh, pairs = append(fresh, d), append(pairs, [2]target{all[i], all[j]})
		}
	}
	out, err := pl.keepMatches(ctx, fresh)
	if err != nil {
		return nil, err
	}
	return out, pl.describe(ctx, out, same, pairs)
}

// newDecision makes the decision that a and b are one person, or are not,
// after checking that it can be followed.
func newDecision(have []settled, same bool, a, b target) (Decision, error) {
	switch {
	case a.at == b.at:
		return Decision{}, fmt.Errorf("%s and %s are the same runner; name two", a.shown, b.shown)
	case same && a.no == b.no:
		if a.line > 0 || b.line > 0 {
			break // pins the line to the runner
		}
		return Decision{}, fmt.Errorf("%s and %s are one runner already", a.shown, b.shown)
	}
	no, already := against(have, same, a, b)
	if len(no) > 0 {
		return Decision{}, contradictionError(same, a.shown, b.shown, no)
	}
	if already != nil {
		return Decision{}, fmt.Errorf("%s and %s: %s says so already", a.shown, b.shown, already.words())
	}
	if b.line > 0 && a.line == 0 { // the line comes first
		a, b = b, a
	}
	return peopleDecision(same, a.side(), b.side()), nil
}

func peopleDecision(same bool, a, b side) Decision {
	d := Decision{Kind: DecideDifferent, Sheet: a.at.hash, Tab: a.at.tab, Row: a.at.row, Runner: a.runner, Value: b.String()}
	if same {
		d.Kind = DecideSame
	}
	return d
}

// tryMatches works out what decisions would do, and which of them (by place)
// others contradict when they are followed; why says how.
func (pl *Pipeline) tryMatches(ctx context.Context, fresh []Decision) (d *Draft, why map[int]string, err error) {
	if d, err = pl.Draft(ctx, fresh); err != nil {
		return nil, nil, err
	}
	why = map[int]string{}
	if d.w.link == nil || d.w.link.result == nil {
		return d, why, nil
	}
	at := map[int32]int{}
	for i, e := range d.Decisions {
		at[int32(e.ID)] = i
	}
	for _, c := range d.w.link.result.Contradictions {
		for _, e := range append(slices.Clone(c.Against), c.Decision) {
			if i, ok := at[decisionOf(e.Ref)]; ok && fresh[i].Kind != DecideTakeBack {
				why[i] = c.Message
			}
		}
	}
	return d, why, nil
}

// keepMatches keeps decisions, unless others contradict them, and brings the
// figures up to date.
func (pl *Pipeline) keepMatches(ctx context.Context, fresh []Decision) (*MatchOutcome, error) {
	d, why, err := pl.tryMatches(ctx, fresh)
	if err != nil {
		return nil, err
	}
	for i := range fresh {
		if w, bad := why[i]; bad {
			return nil, fmt.Errorf("%w: %s Nothing was kept. See lapwing match decisions", ErrContradicts, w)
		}
	}
	return d.keepMatches(ctx)
}

func (d *Draft) keepMatches(ctx context.Context) (*MatchOutcome, error) {
	if err := d.Keep(ctx); err != nil {
		return nil, err
	}
	out := &MatchOutcome{Changes: d.Changes}
	for _, e := range d.Decisions {
		out.Decisions = append(out.Decisions, e.ID)
	}
	return out, nil
}

// describe says what became of the pairs of new decisions.
func (pl *Pipeline) describe(ctx context.Context, out *MatchOutcome, same bool, pairs [][2]target) error {
	var refs []lineRef
	for _, p := range pairs {
		refs = append(refs, p[0].at, p[1].at)
	}
	now, err := pl.linesNow(ctx, refs)
	if err != nil {
		return err
	}
	k, err := pl.linkage(ctx)
	if err != nil {
		return err
	}
	people := pl.lookUp(ctx, k.latest)
	all := make([]MatchPerson, len(refs))
	for i, r := range refs {
		all[i].no = now[r][1]
		people.want(&all[i])
	}
	if err := people.fill(); err != nil {
		return err
	}
	for i, p := range pairs {
		a, b, x, y := p[0].shown, p[1].shown, all[2*i], all[2*i+1]
		switch {
		case same && x.no == y.no:
			old := ""
			for _, t := range p {
				if t.line == 0 && t.no != x.no {
					old = fmt.Sprintf(" R%d still leads there.", t.no)
				}
			}
			out.Words = append(out.Words, fmt.Sprintf("%s and %s are one runner now: %s %s, %s.%s", a, b, x.ID, x.Name, x.History(), old))
		case !same && x.no != y.no:
			out.Words = append(out.Words, fmt.Sprintf("%s and %s are different people now: %s %s, %s; and %s %s, %s.", a, b, x.ID, x.Name, x.History(), y.ID, y.Name, y.History()))
		default:
			out.Words = append(out.Words, fmt.Sprintf("%s and %s: the decision was kept and will hold when the sheets it speaks of are in the archive.", a, b))
		}
	}
	for _, p := range all {
		if !slices.ContainsFunc(out.People, func(q MatchPerson) bool { return q.no == p.no }) {
			out.People = append(out.People, p)
		}
	}
	return nil
}

// UndoMatch takes a decision about people back and computes the figures again.
func (pl *Pipeline) UndoMatch(ctx context.Context, by, why string, id int) (*MatchOutcome, error) {
	all, err := pl.Decisions()
	if err != nil {
		return nil, err
	}
	i := slices.IndexFunc(all, func(d Decision) bool { return d.ID == id })
	switch {
	case i < 0:
		return nil, fmt.Errorf("there is no decision %d in force; see lapwing match decisions", id)
	case !all[i].aboutPeople():
		return nil, fmt.Errorf("decision %d is not about who is who but about %q; take it back with lapwing correct --undo %d", id, all[i].Kind, id)
	}
	out, err := pl.keepMatches(ctx, []Decision{{Kind: DecideTakeBack, By: by, Why: why, Value: strconv.Itoa(id)}})
	if err != nil {
		return nil, err
	}
	out.Words = []string{fmt.Sprintf("%s was taken back.", strings.ToUpper(all[i].words()[:1])+all[i].words()[1:])}
	return out, nil
}
