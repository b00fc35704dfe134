package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"
	"time"

	"github.com/apache/arrow/go/v17/arrow"

	"lapwing/pipeline/age"
	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// Change is one fact that decisions change.
type Change struct {
	Runner string `json:"runner_id,omitempty"`
	Name   string `json:"name,omitempty"`
	Course string `json:"course,omitempty"`
	Date   string `json:"date,omitempty"`
	Place  int    `json:"place,omitempty"`
	What   string `json:"what"`
	Before string `json:"before"`
	After  string `json:"after"`
}

// String is a line for people: "Ann Moss (R12), alder-bank 2026-01-03, place
// 14: personal best none → 25:10".
func (c Change) String() string {
	s := ""
	add := func(format string, a ...any) {
		if s != "" {
			s += ", "
		}
		s += fmt.Sprintf(format, a...)
	}
	if c.Name != "" {
		add("%s", c.Name)
		if c.Runner != "" {
			s += " (" + c.Runner + ")"
		}
	}
	if c.Course != "" {
		add("%s %s", c.Course, c.Date)
	}
	if c.Place > 0 {
		add("place %d", c.Place)
	}
	if s != "" {
		s += ": "
	}
	return fmt.Sprintf("%s%s %s → %s", s, c.What, c.Before, c.After)
}

// Draft is decisions on trial: all figures that do not come from the model of
// course speed, worked out as if they were kept, and how they differ from what
// stands. Nothing is written until Keep.
type Draft struct {
	Decisions []Decision
	Changes   []Change
	Asks      []string // what the desk would be asked

	pl *Pipeline
	w  *work
	at int // steps done
}

// Draft tries decisions. Figures must be up to date.
func (pl *Pipeline) Draft(ctx context.Context, fresh []Decision) (*Draft, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	d := &Draft{pl: pl, Decisions: numberDecisions(all, fresh, time.Now())}
	d.w = &work{proposed: d.Decisions}
	for d.at < len(steps) && steps[d.at].name != stepNameSpeed {
		if err := pl.runStep(ctx, d.w, d.at); err != nil {
			return nil, err
		}
		d.at++
	}
	pl.Progress.Done()
	known, err := pl.questions(ctx)
	if err != nil {
		return nil, err
	}
	for _, p := range d.w.problems {
		switch p.Kind {
		case "two-claims", "decision-contradicted", "person-twice", correctedOutOfOrder, exchangedAfterChange:
			if s := p.String(); !known[s] {
				d.Asks = append(d.Asks, s)
			}
		}
	}
	d.Changes, err = pl.changes(ctx, d.w)
	return d, err
}

// Keep keeps the decisions for good, then brings the figures up to date.
func (d *Draft) Keep(ctx context.Context) error {
	rows := make([][]string, len(d.Decisions))
	for i, e := range d.Decisions {
		rows[i] = e.row()
	}
	if err := d.pl.appendDecisions(rows); err != nil {
		return fmt.Errorf("can't keep the decision: %w. Nothing was changed", err)
	}
	d.w.proposed = nil
	for ; d.at < len(steps); d.at++ {
		if err := d.pl.runStep(ctx, d.w, d.at); err != nil {
			return err
		}
	}
	d.pl.Progress.Done()
	if err := d.pl.settleProblems(ctx); err != nil {
		return err
	}
	stamp, err := d.pl.figuresStamp()
	if err != nil {
		return err
	}
	base, err := d.pl.figuresBase()
	if err != nil {
		return err
	}
	return d.pl.noteFigures(ctx, stamp, base, allRefreshed(d.w)...)
}

func (pl *Pipeline) questions(ctx context.Context) (map[string]bool, error) {
	list, err := pl.Problems(ctx, "", false)
	if err != nil {
		return nil, err
	}
	out := make(map[string]bool, len(list))
	for _, p := range list {
		out[p.String()] = true
	}
	return out, nil
}

// lineFacts is what a line is, as far as a decision can change it elsewhere
// than on its own line. Estimates of the model are left out: they all move a
// little.
type lineFacts struct {
	runner, timeMS                           int32
	status, counts, sex, takingPart          uint8
	ageLow, ageHigh                          int16
	pb, courseBest                           bool
	newcomer, visitor                        uint8
	milestone, runsTotal, attendance, streak int32
}

// linesFacts gives the facts of any line before and after. Only lines that
// differ are held.
type linesFacts struct {
	w       *work
	at      []int32 // place of a line in people.order, -1
	differs map[int]lineFacts
}

// after gives the facts of a line as worked out.
func (x *linesFacts) after(i int) lineFacts {
	w, f := x.w, x.w.field
	o := lineFacts{runner: f.runner[i], timeMS: f.timeMS[i], status: f.status[i], counts: f.counts[i], takingPart: f.takingPart[i],
		sex: uint8(f.sexOf(w.people, i)), ageLow: w.figures.ageLow[i], ageHigh: w.figures.ageHigh[i]}
	if k := x.at[i]; k >= 0 {
		h := w.figures.history
		o.pb, o.courseBest = h.Mark[k]&history.PB != 0, h.Mark[k]&history.CourseBest != 0
		o.newcomer, o.visitor = uint8(h.Newcomer[k]), uint8(h.Visitor[k])
		o.milestone, o.runsTotal, o.attendance, o.streak = h.Milestone[k], h.RunsTotal[k], h.Attendance[k], h.PBStreak[k]
	}
	return o
}

// before gives the facts of a line as they stand.
func (x *linesFacts) before(i int) lineFacts {
	if b, ok := x.differs[i]; ok {
		return b
	}
	return x.after(i)
}

// facts compares every line with what is stored.
func (pl *Pipeline) facts(ctx context.Context, w *work) (*linesFacts, error) {
	f := w.field
	x := &linesFacts{w: w, at: make([]int32, f.n), differs: map[int]lineFacts{}}
	top := int32(0)
	for i, n := range f.lineNo {
		top = max(top, n)
		x.at[i] = -1
	}
	for k, l := range w.people.order {
		x.at[l] = int32(k)
	}
	index := make([]int32, top+1)
	for i, n := range f.lineNo {
		index[n] = int32(i)
	}
	var n [9][]int32
	var b [8][]uint8
	err := pl.DB.Scan(ctx, `select r.line_no, r.runner_no, r.time_ms, coalesce(i.milestone, 0)::integer, coalesce(i.runs_total, 0)::integer,
			coalesce(i.attendance_streak, 0)::integer, coalesce(i.pb_streak, 0)::integer,
			coalesce(r.age_low::integer, -1)::integer, coalesce(r.age_high::integer, -1)::integer,
			r.status, r.counts, r.sex, r.taking_part, coalesce(i.newcomer, 0)::utinyint, coalesce(i.visitor, 0)::utinyint,
			coalesce(i.is_pb::utinyint, 0)::utinyint, coalesce(i.is_course_best::utinyint, 0)::utinyint
		from record.result r left join insight.result i on i.line_no = r.line_no`, func(r arrow.Record) error {
		for c := range n {
			n[c] = store.AppendInt32(n[c][:0], r.Column(c))
		}
		for c := range b {
			b[c] = store.AppendUint8(b[c][:0], r.Column(9+c))
		}
		for k, line := range n[0] {
			if line > top {
				return fmt.Errorf("line %d is not among those read", line)
			}
			i := int(index[line])
			was := lineFacts{runner: n[1][k], timeMS: n[2][k], milestone: n[3][k], runsTotal: n[4][k], attendance: n[5][k], streak: n[6][k],
				ageLow: int16(n[7][k]), ageHigh: int16(n[8][k]),
				status: b[0][k], counts: b[1][k], sex: b[2][k], takingPart: b[3][k], newcomer: b[4][k], visitor: b[5][k],
				pb: b[6][k] != 0, courseBest: b[7][k] != 0}
			if was != x.after(i) {
				x.differs[i] = was
			}
		}
		return nil
	})
	return x, err
}

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
	f, p := c.w.field, c.w.people
	if r, ok := slices.BinarySearch(p.no, runner); ok {
		var spellings []name.Spelling
		for _, l := range p.order[p.begin[r]:p.begin[r+1]] {
			spellings = append(spellings, name.Spelling{Text: f.names.list[f.name[l]], Count: 1})
		}
		c.fresh[runner] = name.Best(spellings)
	}
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

// recordKey is a list that a fastest time stands on: course, sex, group.
type recordKey struct {
	course int32
	sex    uint8
	group  string // "" all ages
}

type fastest struct {
	timeS  int32
	runner int32
	line   int    // -1: held before the sheets
	held   string // by whom then
}

// heldFastest gives the records held before the sheets on some courses.
func (c *comparison) heldFastest(courses map[int32]bool) map[recordKey]fastest {
	out := map[recordKey]fastest{}
	f := c.w.field
	for _, h := range c.w.held {
		for n := range courses {
			sex, err := parseSex(h.sex)
			if x := &f.courses[n-1]; err != nil || x.course != h.course || x.distanceM != h.distanceM {
				continue
			}
			for _, group := range []string{"", h.group} { // somebody of a group is somebody of all ages
				k := recordKey{n, uint8(sex), group}
				if o, ok := out[k]; !h.protected && (!ok || h.timeS < o.timeS) {
					out[k] = fastest{timeS: h.timeS, line: -1, held: h.name}
				}
			}
		}
	}
	return out
}

// records tells where the fastest time of a sex, or of a sex and age group, on
// a course changes. Runners and guided runners hold them, with a time that
// counts and, for a group, an age that is certain.
func (c *comparison) records(lines []int) {
	f := c.w.field
	courses := map[int32]bool{}
	for _, i := range lines {
		courses[f.course(i)] = true
	}
	if len(courses) == 0 {
		return
	}
	scheme := age.DefaultScheme()
	best := func(facts func(int) lineFacts, void func(int) bool) map[recordKey]fastest {
		out := c.heldFastest(courses)
		for i := range f.n {
			if !courses[f.course(i)] {
				continue
			}
			x := facts(i)
			part := record.TakingPart(x.takingPart)
			if void(i) || x.counts&2 == 0 || x.sex != uint8(record.M) && x.sex != uint8(record.W) || part != record.Runner && part != record.Guided {
				continue
			}
			t := fastest{timeS: unit.CeilSeconds(x.timeMS), runner: x.runner, line: i}
			add := func(k recordKey) {
				if o, ok := out[k]; !ok || t.timeS < o.timeS || t.timeS == o.timeS && o.line >= 0 && f.key[i] < f.key[o.line] {
					out[k] = t
				}
			}
			add(recordKey{f.course(i), x.sex, ""})
			if x.ageLow >= 0 {
				if g := scheme.Certain(int(x.ageLow), int(x.ageHigh), record.Sex(x.sex).String()); g != "" {
					add(recordKey{f.course(i), x.sex, g})
				}
			}
		}
		return out
	}
	old := best(c.before, func(i int) bool { return c.recordsWere[i] == recordVoid })
	now := best(c.after, func(i int) bool { return c.w.desk.records[i].word == recordVoid })
	var keys []recordKey
	for k := range old {
		if n, ok := now[k]; !ok || n.timeS != old[k].timeS || n.runner != old[k].runner {
			keys = append(keys, k)
		}
	}
	for k := range now {
		if _, ok := old[k]; !ok {
			keys = append(keys, k)
		}
	}
	slices.SortFunc(keys, func(a, b recordKey) int {
		return cmp.Or(cmp.Compare(f.courses[a.course-1].course, f.courses[b.course-1].course), cmp.Compare(a.course, b.course), cmp.Compare(a.sex, b.sex), cmp.Compare(a.group, b.group))
	})
	for _, k := range keys {
		say := func(m map[recordKey]fastest) (string, string) {
			t, ok := m[k]
			if !ok {
				return "none", ""
			}
			if t.line < 0 {
				return fmt.Sprintf("%s %s (before the sheets)", unit.Clock(t.timeS), orBlank(t.held)), ""
			}
			return fmt.Sprintf("%s %s", unit.Clock(t.timeS), c.whom(t.runner)), f.day(t.line).String()
		}
		list := "fastest here, " + map[uint8]string{uint8(record.M): "men", uint8(record.W): "women"}[k.sex]
		if k.group != "" {
			list += ", " + k.group
		}
		x := Change{Course: f.courses[k.course-1].course, What: list}
		x.Before, _ = say(old)
		x.After, x.Date = say(now)
		if x.Date == "" {
			_, x.Date = say(old)
		}
		c.out = append(c.out, x)
	}
}

func orNone(n int32) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

func orBlank(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

func orNotGiven(s record.Sex) string {
	if s == record.NotGiven {
		return "not given"
	}
	return s.String()
}

func triInWords(t uint8) string {
	return [...]string{"not known", "no", "yes"}[min(int(t), 2)]
}

func agesInWords(x lineFacts) string {
	switch {
	case x.ageLow < 0:
		return "not known"
	case x.ageLow == x.ageHigh:
		return fmt.Sprint(x.ageLow)
	}
	return fmt.Sprintf("%d to %d", x.ageLow, x.ageHigh)
}

func countsInWords(c uint8) string {
	switch c & 3 {
	case 3:
		return "as a run and a time"
	case 1:
		return "as a run"
	}
	return "not"
}
