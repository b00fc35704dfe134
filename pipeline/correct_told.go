package pipeline

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
)

// told is what lines say with decisions followed, each on its own sheet whether
// that stands or not: what somebody saw who decided next, and what a sheet that
// was put right afterwards should say.
type told map[int]toldLine

type toldLine struct {
	asReceived
	called    string   // as it is written
	claimants []string // folded names of those who claim it
}

func (t told) of(a *lineDecisions, i int) toldLine {
	if l, ok := t[i]; ok {
		return l
	}
	r := a.asReceived(i)
	l := toldLine{asReceived: r}
	if r.person != "" {
		l.called = a.f.names.list[r.name]
	}
	return l
}

// follow notes what a decision makes of its line, of both lines of an exchange.
// Values that can't be read are told where they are applied.
func (t told) follow(a *lineDecisions, d Decision) {
	lines := pick(a.lines[lineRef{d.Sheet, d.Tab, d.Row}], d.Table)
	if len(lines) == 0 {
		return
	}
	i := lines[0]
	l := t.of(a, i)
	switch d.Kind {
	case DecideClaim:
		who := name.Parse(d.Value).Full
		if l.person != "" && len(l.claimants) == 0 {
			return
		}
		l.claimants = append(slices.Clone(l.claimants), who)
		l.person, l.called = who, d.Value
		if slices.ContainsFunc(l.claimants, func(s string) bool { return s != who }) {
			l.person, l.called = "", ""
		}
	case DecideName:
		l.person, l.called, l.claimants = name.Parse(d.Value).Full, d.Value, nil
	case DecideTime:
		if ms, err := ParseClock(d.Value); err == nil {
			l.timeMS = ms
		}
	case DecidePlace:
		if n, err := parsePlace(d.Value); err == nil {
			l.position = n
		}
	case DecideClub:
		l.club = a.f.clubs.number(d.Value)
	case DecideSex:
		if sex, err := parseSex(d.Value); err == nil {
			l.sex = uint8(sex)
		}
	case DecideGroup:
		if w, _, err := parseGroupByHand(d.Value, a.f.day(i), a.f.rule); err == nil {
			l.birth = w
		}
	case DecideTakingPart:
		if part, err := parseTakingPart(d.Value); err == nil {
			l.takingPart = uint8(part)
		}
	case DecideExchange:
		ref, err := parseTableLine(d.Value)
		if err != nil {
			return
		}
		other := pick(a.lines[ref.lineRef], ref.table)
		if len(other) == 0 || other[0] == i {
			return
		}
		was, o := l, t.of(a, other[0])
		l = o
		l.timeMS, l.position = was.timeMS, was.position
		was.timeMS, was.position = o.timeMS, o.position
		t[other[0]] = was
	}
	t[i] = l
}

// carried are the kinds of decisions that a later sheet may agree with or
// contradict.
var carried = map[string]bool{DecideClaim: true, DecideName: true, DecideTime: true, DecidePlace: true, DecideClub: true,
	DecideSex: true, DecideGroup: true, DecideTakingPart: true, DecideRecord: true}

// sees is what a line says now, after the decisions so far.
func (a *lineDecisions) sees(i int) asReceived {
	f := a.f
	r := asReceived{name: f.name[i], timeMS: f.timeMS[i], club: f.club[i], position: f.position[i], sex: f.sex[i], takingPart: f.takingPart[i],
		birth: age.Window{Lo: f.birthLo[i], Hi: f.birthHi[i]}}
	if f.namesSomebody(i) {
		r.person = f.person[f.name[i]].Full
	}
	return r
}

// agrees says whether a line of which r is known says what was decided.
func (a *lineDecisions) agrees(d Decision, r asReceived, line int) (bool, error) {
	switch d.Kind {
	case DecideClaim, DecideName:
		return r.person == name.Parse(d.Value).Full, nil
	case DecideTime:
		ms, err := ParseClock(d.Value)
		return r.timeMS == ms, err
	case DecidePlace:
		n, err := parsePlace(d.Value)
		return r.position == n, err
	case DecideClub:
		return name.Fold(a.f.clubs.list[r.club]) == name.Fold(d.Value), nil
	case DecideSex:
		sex, err := parseSex(d.Value)
		return r.sex == uint8(sex), err
	case DecideGroup:
		w, _, err := parseGroupByHand(d.Value, a.f.day(line), a.f.rule)
		_, meets := w.Meet(r.birth)
		return meets, err
	case DecideTakingPart:
		part, err := parseTakingPart(d.Value)
		return r.takingPart == uint8(part), err
	}
	return false, nil
}

// same says whether two lines say the same about what a kind of decisions is
// about.
func (a *lineDecisions) same(kind string, x, y asReceived) bool {
	switch kind {
	case DecideClaim, DecideName:
		return x.person == y.person
	case DecideTime:
		return x.timeMS == y.timeMS
	case DecidePlace:
		return x.position == y.position
	case DecideClub:
		return name.Fold(a.f.clubs.list[x.club]) == name.Fold(a.f.clubs.list[y.club])
	case DecideSex:
		return x.sex == y.sex
	case DecideGroup:
		return x.birth == y.birth
	case DecideTakingPart:
		return x.takingPart == y.takingPart
	}
	return x.timeMS == y.timeMS && x.person == y.person // a record is of this time of this person
}

// saysNothing says whether a line leaves empty what a kind of decisions is about.
func (a *lineDecisions) saysNothing(kind string, r asReceived) bool {
	switch kind {
	case DecideClaim, DecideName:
		return r.person == ""
	case DecideTime:
		return r.timeMS == 0
	case DecidePlace:
		return r.position == 0
	case DecideClub:
		return name.Fold(a.f.clubs.list[r.club]) == ""
	case DecideSex:
		return r.sex == 0
	case DecideGroup:
		return !r.birth.Known()
	}
	return false
}

// words is what a line says about it, for the desk.
func (a *lineDecisions) words(kind string, r asReceived, line int) string {
	f := a.f
	switch kind {
	case DecideClaim, DecideName:
		return f.names.list[r.name]
	case DecideTime:
		return clockOrDash(r.timeMS)
	case DecidePlace:
		return orDash(r.position)
	case DecideClub:
		return f.clubs.list[r.club]
	case DecideSex:
		return record.Sex(r.sex).String()
	case DecideGroup:
		return agesOn(r.birth, f.day(line))
	case DecideTakingPart:
		return record.TakingPart(r.takingPart).String()
	}
	return fmt.Sprintf("%s, %s", f.names.list[r.name], clockOrDash(r.timeMS))
}

// openQuestion asks about a decision that did not come to be followed, unless a
// later one settles the same.
type openQuestion struct {
	line                       int
	d                          Decision
	kind, read, expected, todo string
}

// settles says whether a decision is the last word on what another is about.
func (d Decision) settles(o Decision) bool {
	return d.ID != o.ID && (d.Kind == o.Kind && d.Kind != DecideClaim || d.Kind == DecideName && o.Kind == DecideClaim)
}

// settleOpen drops the questions that a decision about a line settles.
func (a *lineDecisions) settleOpen(j int, d Decision) {
	a.open = slices.DeleteFunc(a.open, func(q openQuestion) bool {
		if q.line != j || !d.settles(q.d) {
			return false
		}
		a.note(q.d, decisionReplaced, fmt.Sprintf("by decision %d", d.ID))
		return true
	})
}

// claimed is a place that the sheet leaves without a name and that somebody
// claims.
type claimed struct {
	before int32 // the name before
	by     []Decision
}

func (c *claimed) contested() bool {
	first := name.Parse(c.by[0].Value).Full
	return slices.ContainsFunc(c.by, func(d Decision) bool { return name.Parse(d.Value).Full != first })
}

func (c *claimed) words() string {
	var said []string
	for _, d := range c.by {
		said = append(said, fmt.Sprintf("%s (decision %d)", d.Value, d.ID))
	}
	return strings.Join(said, " and ")
}

// claim notes that somebody claims a line; ok is false where they don't get it:
// it names another person, or another one claims it too.
func (a *lineDecisions) claim(j int, d Decision) (ok bool) {
	f := a.f
	c := a.claims[j]
	if c == nil {
		if f.namesSomebody(j) {
			if f.person[f.name[j]].Full == name.Parse(d.Value).Full {
				return true
			}
			by, todo := "the sheet names", "The sheet stands. If it is wrong, correct the name: lapwing correct … --name."
			if n := a.named[j]; n != 0 {
				by = fmt.Sprintf("by decision %d this is the place of", n)
				todo = fmt.Sprintf("Decision %d stands. If it is wrong: lapwing correct --undo %d. If this claim is: lapwing correct --undo %d.", n, n, d.ID)
			}
			a.note(d, decisionContradicted, fmt.Sprintf("%s %q", by, f.names.list[f.name[j]]))
			a.open = append(a.open, openQuestion{j, d, "decision-contradicted", f.names.list[f.name[j]], fmt.Sprintf("%s (decision %d)", d.Value, d.ID), todo})
			return false
		}
		c = &claimed{before: f.name[j]}
		a.claims[j] = c
	}
	c.by = append(c.by, d)
	if !c.contested() {
		return true
	}
	f.name[j] = c.before
	f.settleStatus(j)
	a.owners = slices.DeleteFunc(a.owners, func(o lineOwner) bool { return o.line == j })
	a.kinds[j] = slices.DeleteFunc(a.kinds[j], func(k appliedKind) bool { return k.kind == DecideClaim })
	delete(a.named, j)
	for _, d := range c.by {
		a.note(d, decisionContested, "claimed by "+c.words())
	}
	return false
}

// replaceClaims forgets the claims of a line whose name is corrected.
func (a *lineDecisions) replaceClaims(j int, d Decision) {
	if c := a.claims[j]; c != nil {
		for _, o := range c.by {
			a.note(o, decisionReplaced, fmt.Sprintf("by decision %d", d.ID))
		}
		delete(a.claims, j)
	}
}

// askClaims asks what is open in the end.
func (a *lineDecisions) askClaims() {
	for _, j := range slices.Sorted(maps.Keys(a.claims)) {
		c := a.claims[j]
		if !c.contested() {
			continue
		}
		var undo []string
		for _, d := range c.by {
			undo = append(undo, fmt.Sprintf("lapwing correct --undo %d", d.ID))
		}
		a.ask(j, "two-claims", c.words(), "one person", "Nobody is named here until one claim is taken back: "+strings.Join(undo, " or "))
	}
	for _, q := range a.open {
		a.ask(q.line, q.kind, q.read, q.expected, q.todo)
	}
}

// exchangeNames takes what is known about the names of two lines along.
func (a *lineDecisions) exchangeNames(x, y int, d Decision) {
	exchangeKeys(a.claims, x, y)
	exchangeKeys(a.named, x, y)
	for _, j := range []int{x, y} {
		if a.f.namesSomebody(j) {
			a.named[j] = d.ID
		}
	}
	a.whose[x], a.whose[y] = a.ownerOf(y), a.ownerOf(x)
}

// ownerOf is the line in which the owner of a line stood before any exchange.
func (a *lineDecisions) ownerOf(j int) int {
	if l, ok := a.whose[j]; ok {
		return l
	}
	return j
}

// exchangeKeys exchanges what a map holds of two keys.
func exchangeKeys[V any](m map[int]V, x, y int) {
	vx, okX := m[x]
	vy, okY := m[y]
	delete(m, x)
	delete(m, y)
	if okX {
		m[y] = vx
	}
	if okY {
		m[x] = vy
	}
}
