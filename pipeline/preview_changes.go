package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"

	"lapwing/pipeline/age"
	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/record"
)

// changes compares the figures of a trial with those that stand.
func (pl *Pipeline) changes(ctx context.Context, w *work) ([]Change, error) {
	f := w.field
	x, err := pl.facts(ctx, w)
	if err != nil {
		return nil, err
	}
	names, err := pl.printedNames(ctx)
	if err != nil {
		return nil, err
	}
	lines := slices.Collect(maps.Keys(x.differs))
	for i := range w.desk.touched {
		if _, ok := x.differs[i]; !ok {
			lines = append(lines, i)
		}
	}
	slices.SortFunc(lines, func(a, b int) int { return cmp.Compare(f.key[a], f.key[b]) })
	c := &comparison{linesFacts: x, names: names, fresh: map[int32]string{}}
	if c.recordsWere, err = pl.recordStates(ctx, f); err != nil {
		return nil, err
	}
	runners := map[int32]bool{}
	for _, i := range lines {
		before, after := x.before(i), x.after(i)
		c.line(i, before, after)
		runners[before.runner], runners[after.runner] = true, true
	}
	delete(runners, 0)
	c.totals(runners)
	c.wishes()
	c.confirmations()
	c.openings()
	for i, was := range c.recordsWere {
		if w.desk.records[i].word != was {
			lines = append(lines, i)
		}
	}
	for i, now := range w.desk.records {
		if c.recordsWere[i] != now.word {
			lines = append(lines, i)
		}
	}
	c.records(lines)
	c.states()
	c.clubs()
	return c.out, nil
}

func (pl *Pipeline) printedNames(ctx context.Context) (map[int32]string, error) {
	rows, err := pl.DB.QueryContext(ctx, "select runner_no, name from record.runner")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	out := map[int32]string{}
	for rows.Next() {
		var n int32
		var s string
		if err := rows.Scan(&n, &s); err != nil {
			return nil, err
		}
		out[n] = s
	}
	return out, rows.Err()
}

// recordStates gives what is settled of results as records, by line index.
func (pl *Pipeline) recordStates(ctx context.Context, f *field) (map[int]string, error) {
	rows, err := pl.DB.QueryContext(ctx, "select line_no, state from record.record_state order by line_no")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	by := map[int32]string{}
	for rows.Next() {
		var n int32
		var s string
		if err := rows.Scan(&n, &s); err != nil {
			return nil, err
		}
		by[n] = s
	}
	out := map[int]string{}
	if len(by) > 0 {
		for i, n := range f.lineNo {
			if s, ok := by[n]; ok {
				out[i] = s
			}
		}
	}
	return out, rows.Err()
}

// comparison gathers changes.
type comparison struct {
	*linesFacts
	names map[int32]string // as they stand

	recordsWere map[int]string   // line index → confirmed or void, as it stands
	fresh       map[int32]string // of runners that are new
	out         []Change
}

func (c *comparison) nameOf(runner int32) string {
	if n, ok := c.w.wishes.name[runner]; ok {
		return n
	}
	if n, ok := c.names[runner]; ok {
		return n
	}
	if n, ok := c.fresh[runner]; ok {
		return n
	}
	c.fresh[runner] = c.w.printedName(runner)
	return c.fresh[runner]
}

func (c *comparison) whom(runner int32) string {
	if runner == 0 {
		return "nobody"
	}
	return fmt.Sprintf("%s (R%d)", c.nameOf(runner), runner)
}

func (c *comparison) line(i int, b, a lineFacts) {
	f := c.w.field
	if s := record.Status(a.status); a.status == b.status && (s == record.Repeat || s == record.Superseded) {
		return // another line says it
	}
	runner := a.runner
	if runner == 0 {
		runner = b.runner
	}
	base := Change{Course: f.courses[f.course(i)-1].course, Date: f.day(i).String(), Place: int(f.position[i])}
	if runner != 0 {
		base.Runner, base.Name = fmt.Sprintf("R%d", runner), c.nameOf(runner)
	}
	say := func(what, before, after string) {
		if before != after {
			x := base
			x.What, x.Before, x.After = what, before, after
			c.out = append(c.out, x)
		}
	}
	if b.runner != a.runner {
		who := base
		who.Runner, who.Name, who.What, who.Before, who.After = "", "", "whose result", c.whom(b.runner), c.whom(a.runner)
		if a.timeMS > 0 {
			who.After += " in " + clockOrDash(a.timeMS)
		}
		c.out = append(c.out, who)
	}
	say("status", record.Status(b.status).String(), record.Status(a.status).String())
	say("time", clockOrDash(b.timeMS), clockOrDash(a.timeMS))
	say("taking part as", record.TakingPart(b.takingPart).String(), record.TakingPart(a.takingPart).String())
	say("sex", orNotGiven(record.Sex(b.sex)), orNotGiven(record.Sex(a.sex)))
	say("age on the day", agesInWords(b), agesInWords(a))
	if rule := c.w.field.rule; rule.Reckoning != age.ByDay { // else the ages say it
		say("age group", groupInWords(b, rule.Scheme), groupInWords(a, rule.Scheme))
	}
	if b.status == a.status {
		say("counts", countsInWords(b.counts), countsInWords(a.counts))
	}
	say("personal best", yesNo(b.pb), yesNo(a.pb))
	say("course best", yesNo(b.courseBest), yesNo(a.courseBest))
	say("milestone", orNone(b.milestone), orNone(a.milestone))
	if b.newcomer == uint8(history.Yes) || a.newcomer == uint8(history.Yes) {
		say("newcomer", triInWords(b.newcomer), triInWords(a.newcomer))
	}
	if b.visitor == uint8(history.Yes) || a.visitor == uint8(history.Yes) {
		say("visitor", triInWords(b.visitor), triInWords(a.visitor))
	}
	if r, ok := c.w.desk.received[i]; ok {
		if b.runner == a.runner && c.proposes(i, DecideName, DecideClaim, DecideExchange) {
			say("name on the sheet", orBlank(f.names.list[r.name]), orBlank(f.names.list[f.name[i]]))
		}
		if c.proposes(i, DecidePlace) {
			say("place", orDash(r.position), orDash(f.position[i]))
		}
		if c.proposes(i, DecideClub, DecideExchange) {
			say("club", orBlank(f.clubs.list[r.club]), orBlank(f.clubs.list[f.club[i]]))
		}
	}
}

// proposes says whether one of the decisions on trial is about a line and of one
// of the kinds.
func (c *comparison) proposes(i int, kinds ...string) bool {
	return slices.ContainsFunc(c.w.desk.kinds[i], func(k appliedKind) bool {
		return slices.Contains(kinds, k.kind) && slices.ContainsFunc(c.w.proposed, func(d Decision) bool { return d.ID == k.id })
	})
}

// totals tells where runners stand with their latest result: number of runs
// and streaks, which would otherwise be told once a result.
func (c *comparison) totals(runners map[int32]bool) {
	old, now := c.latestCounted(c.before, runners), c.latestCounted(c.after, runners)
	for _, r := range slices.Sorted(maps.Keys(runners)) {
		var b, a lineFacts
		if i, ok := old[r]; ok {
			b = c.before(i)
		}
		if i, ok := now[r]; ok {
			a = c.after(i)
		}
		for _, t := range []struct {
			what          string
			before, after int32
		}{
			{"runs in all", b.runsTotal, a.runsTotal},
			{"weeks in a row", b.attendance, a.attendance},
			{"personal bests in a row", b.streak, a.streak},
		} {
			if t.before != t.after {
				c.out = append(c.out, Change{Runner: fmt.Sprintf("R%d", r), Name: c.nameOf(r), What: t.what, Before: orNone(t.before), After: orNone(t.after)})
			}
		}
	}
}

// latestCounted finds the latest line of each runner that counts as a run.
func (c *comparison) latestCounted(facts func(int) lineFacts, runners map[int32]bool) map[int32]int {
	f := c.w.field
	out := map[int32]int{}
	for i := range f.n {
		if _, differs := c.differs[i]; !differs && !runners[f.runner[i]] {
			continue
		}
		x := facts(i)
		if x.counts&1 == 0 || !runners[x.runner] {
			continue
		}
		if j, ok := out[x.runner]; !ok || f.key[i] > f.key[j] {
			out[x.runner] = i
		}
	}
	return out
}

// wishes tells of names to print and of people hidden.
func (c *comparison) wishes() {
	for _, d := range c.w.proposed {
		n, ok := runnerNumber(d.Runner)
		if !ok {
			continue
		}
		n = c.w.link.now(n)
		x := Change{Runner: fmt.Sprintf("R%d", n), Name: c.names[n]}
		switch d.Kind {
		case DecidePrintName:
			x.What, x.Before, x.After = "name in everything that is printed from now on", c.names[n], d.Value
		case DecideHide:
			x.What, x.Before, x.After = "name in everything for publication", c.names[n], "Anonymous"
		default:
			continue
		}
		c.out = append(c.out, x)
	}
}

// confirmations tells what becomes of results as records. What a record taken
// back or declared void leaves to others is told by records.
func (c *comparison) confirmations() {
	f := c.w.field
	lines := slices.Collect(maps.Keys(c.w.desk.records))
	for l := range c.recordsWere {
		if _, ok := c.w.desk.records[l]; !ok {
			lines = append(lines, l)
		}
	}
	slices.SortFunc(lines, func(a, b int) int { return cmp.Compare(f.key[a], f.key[b]) })
	word := func(s string) string {
		if s == "" {
			return "not confirmed"
		}
		return s
	}
	for _, i := range lines {
		before, after := c.recordsWere[i], c.w.desk.records[i].word
		if before == after {
			continue
		}
		x := Change{Course: f.courses[f.course(i)-1].course, Date: f.day(i).String(), Place: int(f.position[i]), What: "as a record", Before: word(before), After: word(after)}
		if r := f.runner[i]; r != 0 {
			x.Runner, x.Name = fmt.Sprintf("R%d", r), c.nameOf(r)
		}
		c.out = append(c.out, x)
	}
}

// openings tells what is said of the time before the sheets.
func (c *comparison) openings() {
	for _, d := range c.w.proposed {
		n, ok := runnerNumber(d.Runner)
		if !ok || !d.isOpening() {
			continue
		}
		n = c.w.link.now(n)
		x := Change{Runner: fmt.Sprintf("R%d", n), Name: c.names[n], Course: d.Course, What: d.Kind + " the sheets", Before: "as before", After: d.Value}
		if d.Date != 0 {
			x.Date = d.Date.String()
		}
		c.out = append(c.out, x)
	}
}

// clubs tells of other names of clubs.
func (c *comparison) clubs() {
	for _, d := range c.w.proposed {
		other, club, err := d.clubs()
		switch {
		case err != nil:
		case d.Kind == DecideOtherClub:
			c.out = append(c.out, Change{What: "asked whether " + other + " is " + club, Before: "yes", After: "no"})
		case d.Kind == DecideClubName:
			n := 0
			for _, k := range c.w.clubs {
				if k.received == other {
					n = k.lines
				}
			}
			c.out = append(c.out, Change{What: fmt.Sprintf("club of %d results", n), Before: other, After: club})
		}
	}
}

// states tells of runs whose state changes.
func (c *comparison) states() {
	for _, d := range c.w.proposed {
		if d.Kind == DecideRunState {
			c.out = append(c.out, Change{Course: d.Course, Date: d.Date.String(), What: "the run", Before: "as before", After: d.Value})
		}
	}
}
