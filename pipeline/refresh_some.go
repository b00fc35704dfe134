package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/store"
)

// A refresh of some lines. In a large archive a new sheet concerns a few
// hundred runners, and everything about the others stays as it is. So the steps
// of a refresh are given a field that holds only
//
//   - the lines of the fresh runs: those that a new sheet is of, and
//   - all other lines of the runners who stand in them, as they were settled.
//
// That comes to what a refresh of everything comes to, but for two things that
// rest on all lines together and are carried on from the last time: who is who
// (link_some.go) and the model of course speed (speed_update.go). Both say when
// they must be done anew. A refresh of everything is also made wherever
// something else than new sheets has changed, or a decision is about one of the
// lines; and before an export, so that the same archive gives the same bytes
// whatever the order of loading.

// someFrom is the number of lines from which this pays: below, a refresh of
// everything takes a few seconds.
const someFrom = 300000

// someLines is what a field of some lines knows about the rest.
type someLines struct {
	fresh   map[int32]bool // run numbers: runs that a new sheet is of
	last    int32          // part: those above it have come since the last refresh
	sameNo  []int32        // per line: number of the line with the same result, of settled lines
	doubts  int            // reasons for doubt that are in the database already
	before  []int32        // runners concerned, whoever the new lines turn out to be
	linkage *keptLinkage
	was     []reportedFacts // per line: what reports said of it
}

// settled says whether what became of a line was settled by an earlier refresh
// and still holds.
func (f *field) settled(i int) bool { return f.some != nil && !f.some.fresh[f.run[i]] }

// sameLine is the number of the line with the same result, 0 where none.
func (f *field) sameLine(i int) int32 {
	if f.settled(i) {
		return f.some.sameNo[i]
	}
	if f.sameAs[i] >= 0 {
		return f.lineNo[f.sameAs[i]]
	}
	return 0
}

// States of the database that a refresh of some lines goes by.
const (
	stateBase   = "figures base"    // everything but the sheets that the figures rest on
	stateParts  = "figures parts"   // the parts that they rest on
	stateSome   = "figures of some" // "yes": the last refresh was of some lines, or carried the model on
	stateLooked = "runs looked at"  // "some": what has changed since is in record.touched; else it may be anything
)

// partsStamp sums up the parts of sheets up to a number.
func (pl *Pipeline) partsStamp(ctx context.Context, upTo int32) (string, error) {
	var n, last int64
	var sum string
	err := pl.DB.Get(ctx, fmt.Sprintf("select count(*), coalesce(max(part_no), 0), coalesce(bit_xor(hash(part_no, sheet_no, kind)), 0)::varchar from sheet.part where part_no <= %d", upTo), &n, &last, &sum)
	return fmt.Sprintf("%d %d %s", last, n, sum), err
}

// noteFigures notes what the figures now rest on, and other states with it.
func (pl *Pipeline) noteFigures(ctx context.Context, stamp, base string, also ...[2]string) error {
	parts, err := pl.partsStamp(ctx, 1<<31-1)
	if err != nil {
		return err
	}
	states := append([][2]string{{"figures", stamp}, {stateBase, base}, {stateParts, parts}, {stateAgeGroups, pl.Settings.AgeGroups}}, also...)
	pl.factsAt = ""
	return pl.DB.Transaction(ctx, func() error {
		if err := pl.settleProblems(ctx); err != nil {
			return err
		}
		for _, s := range states {
			if err := pl.setState(ctx, s[0], s[1]); err != nil {
				return err
			}
		}
		return nil
	})
}

// allRefreshed are the states after a refresh of everything.
func allRefreshed(w *work) [][2]string {
	some := ""
	if w.carriedOn {
		some = "yes"
	}
	return [][2]string{{stateLooked, ""}, {stateSome, some}}
}

// stepsOfSome are the steps of a refresh of some lines; those before it make
// the field (some).
var stepsOfSome = []step{
	{"Bringing together what is known of each runner", (*Pipeline).stepGather},
	{"Age grades", (*Pipeline).stepGrades},
	{"Bests, streaks and milestones", (*Pipeline).stepHistories},
}

// refreshSome computes the figures of the runners whom new sheets concern. It
// is false where a refresh of everything is due.
func (pl *Pipeline) refreshSome(ctx context.Context, base string) (bool, error) {
	began := time.Now()
	w, err := pl.some(ctx, base)
	if w == nil || err != nil {
		return false, err
	}
	pl.took("Finding the runners concerned", began)
	for _, s := range stepsOfSome {
		if err := pl.runOne(ctx, w, s); err != nil {
			return false, err
		}
	}
	began = time.Now()
	if same, err := pl.sameForTables(ctx, w); !same || err != nil {
		return false, err
	}
	if ok, err := pl.updateSome(ctx, w, w.field.some.fresh, pl.someFrom()); !ok || err != nil {
		return false, err
	}
	if err := pl.stepExchanged(ctx, w); err != nil {
		return false, err
	}
	pl.took(stepNameSpeed, began)
	return true, pl.runOne(ctx, w, step{"Writing the figures", (*Pipeline).writeSome})
}

func (pl *Pipeline) someFrom() int {
	if pl.fewLines > 0 {
		return pl.fewLines
	}
	return someFrom
}

// some makes the field of some lines, with their runners. It is nil where a
// refresh of everything is due.
func (pl *Pipeline) some(ctx context.Context, base string) (*work, error) {
	fresh, last, err := pl.freshRuns(ctx, base)
	if len(fresh) == 0 || err != nil {
		return nil, err
	}
	w := &work{}
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	w.decisions = inForce(all)

	// the fresh runs first: who may stand in them?
	if err := pl.pickLines(ctx, amongRuns(fresh)); err != nil {
		return nil, err
	}
	f, err := pl.readSome(ctx, fresh, last, nil)
	if err != nil {
		return nil, err
	}
	f.compareSheets()
	var runners []int32
	for _, no := range f.runner {
		if no > 0 {
			runners = append(runners, no)
		}
	}
	began := time.Now()
	linkage, candidates, err := pl.candidateRunners(ctx, f, f.newLines(), nil)
	if linkage == nil || err != nil {
		return nil, err
	}
	pl.took("  candidates", began)
	absent, err := pl.absent(ctx, fresh)
	if err != nil {
		return nil, err
	}
	runners = append(runners, absent...)
	slices.Sort(runners)
	before := slices.Compact(runners)
	runners = slices.Concat(before, candidates)
	slices.Sort(runners)

	// then all lines of these runners
	if err := pl.pick(ctx, slices.Compact(runners)); err != nil {
		return nil, err
	}
	if err := pl.pickLines(ctx, "line_no in (select line_no from record.result where runner_no in (select number from picked))"); err != nil {
		return nil, err
	}
	if err := pl.addRuns(ctx, fresh); err != nil {
		return nil, err
	}
	if f, err = pl.readSome(ctx, fresh, last, f); err != nil {
		return nil, err
	}
	f.some.before, f.some.linkage = before, linkage
	if f.asked.before, err = pl.readAskedNames(ctx); err != nil {
		return nil, err
	}
	w.field = f
	if ok, err := pl.settleSome(w); !ok || err != nil {
		return nil, err
	}
	began = time.Now()
	if ok, err := pl.linkSome(ctx, w, linkage, f.newLines()); !ok || err != nil {
		return nil, err
	}
	pl.took("Working out who is who", began)
	f.keepConcerned(before)
	if f.decidedAbout(w.decisions) {
		return nil, nil
	}
	return w, nil
}

// newLines are the lines that nobody has been found for yet.
func (f *field) newLines() (lines []int32) {
	for i := 0; i < f.n; i++ {
		if f.part[i] > f.some.last && f.linked(i) {
			lines = append(lines, int32(i))
		}
	}
	return lines
}

// decidedAbout says whether a decision is about a line of the field.
func (f *field) decidedAbout(ds []Decision) bool {
	var about []Decision
	for _, d := range ds {
		if d.Sheet != "" && !d.aboutPeople() {
			about = append(about, d)
		}
	}
	return len(f.linesOf(about)) > 0
}

// freshRuns lists the runs that sheets are of which have come since the last
// refresh, and the last part that it knew. There are none where something else
// has changed as well, where the sheets are many, or the archive is small.
func (pl *Pipeline) freshRuns(ctx context.Context, base string) (runs []int32, last int32, err error) {
	have, err := pl.state(ctx, stateBase)
	if err != nil || have != base {
		return nil, 0, err
	}
	stamp, err := pl.state(ctx, stateParts)
	if err != nil {
		return nil, 0, err
	}
	if _, err := fmt.Sscan(stamp, &last); err != nil {
		return nil, 0, nil
	}
	if now, err := pl.partsStamp(ctx, last); err != nil || now != stamp {
		return nil, 0, err
	}
	var lines, fresh int
	if err := pl.DB.Get(ctx, fmt.Sprintf("select count(*), count(*) filter (part_no > %d) from record.line", last), &lines, &fresh); err != nil {
		return nil, 0, err
	}
	var helpers int // whose weeks in a row a new list of volunteers may mend
	if err := pl.DB.Get(ctx, fmt.Sprintf("select count(*) from record.helper where part_no > %d", last), &helpers); err != nil {
		return nil, 0, err
	}
	if helpers > 0 || fresh == 0 || lines-fresh < pl.someFrom() || float64(fresh) > linkShare*float64(lines) {
		return nil, 0, nil
	}
	err = pl.DB.Scan(ctx, fmt.Sprintf("select distinct run_no from record.line where part_no > %d order by run_no", last), func(r arrow.Record) error {
		runs = store.AppendInt32(runs, r.Column(0))
		return nil
	})
	return runs, last, err
}

// absent lists the runners whose weeks in a row may end with a fresh run: they
// have run on its course, and again in a later week. That its sheet was missing
// is no excuse any more.
func (pl *Pipeline) absent(ctx context.Context, fresh []int32) ([]int32, error) {
	if err := pl.pick(ctx, fresh); err != nil {
		return nil, err
	}
	var later bool
	const weekAfter = "date_trunc('week', run_date) + interval 7 days"
	if err := pl.DB.Get(ctx, `select coalesce((select max(run_date) from record.run) >= (select min(`+weekAfter+`) from record.run where run_no in (select number from picked)), false)`, &later); err != nil || !later {
		return nil, err
	}
	var out []int32
	err := pl.DB.Scan(ctx, `
		with fresh as (select course_no, min(`+weekAfter+`) as until from record.run where run_no in (select number from picked) group by course_no),
		early as (select run.run_no, f.until from record.run run join fresh f on f.course_no = run.course_no and run.run_date < f.until),
		late as (select run_no, run_date from record.run where run_date >= (select min(until) from fresh)),
		was as (select r.runner_no, min(e.until) as until from record.result r join early e on e.run_no = r.run_no
			where r.runner_no > 0 group by r.runner_no),
		again as (select r.runner_no, max(late.run_date) as day from record.result r join late on late.run_no = r.run_no
			where r.runner_no > 0 group by r.runner_no)
		select was.runner_no from was join again on again.runner_no = was.runner_no and again.day >= was.until order by was.runner_no`, func(r arrow.Record) error {
		out = store.AppendInt32(out, r.Column(0))
		return nil
	})
	return out, err
}

// pickLines makes some_line, a table of the lines that a condition chooses.
func (pl *Pipeline) pickLines(ctx context.Context, condition string) error {
	return pl.DB.Exec(ctx, "create or replace temp table some_line as select "+lineColumns+" from record.line where "+condition)
}

// addRuns adds the lines of runs that are not there yet.
func (pl *Pipeline) addRuns(ctx context.Context, runs []int32) error {
	return pl.DB.Exec(ctx, "insert into some_line select "+lineColumns+" from record.line where "+amongRuns(runs)+" and line_no not in (select line_no from some_line)")
}

// pick fills the table of picked numbers.
func (pl *Pipeline) pick(ctx context.Context, numbers []int32) error {
	if err := pl.DB.Exec(ctx, "create or replace temp table picked (number integer)"); err != nil {
		return err
	}
	return pl.insertRows(ctx, "picked", store.Columns("number", store.Int32), len(numbers), func(r row, i int) { r.ints(0, numbers[i]) })
}

// readSome reads the lines of some_line, with what was settled about them.
// last is the last part that the last refresh knew; tables, where it is not
// nil, has runs, parts and courses.
func (pl *Pipeline) readSome(ctx context.Context, fresh []int32, last int32, tables *field) (*field, error) {
	f, err := pl.readLines(ctx, "some_line order by line_no")
	if err != nil {
		return nil, err
	}
	dictionary, err := pl.readTexts(ctx, "where text_no in (select name_no from some_line union all select number_no from some_line union all select club_no from some_line)")
	if err != nil {
		return nil, err
	}
	if tables != nil {
		f.runs, f.parts, f.courses = tables.runs, tables.parts, tables.courses
	} else if err := pl.readFieldTables(ctx, f); err != nil {
		return nil, err
	}
	pl.complete(f, dictionary)
	f.some = &someLines{fresh: map[int32]bool{}, last: last, sameNo: make([]int32, f.n), was: make([]reportedFacts, f.n)}
	for _, r := range fresh {
		f.some.fresh[r] = true
	}
	if err := pl.each(ctx, "select words from record.doubt order by doubt", func(rows *sql.Rows) error {
		var words string
		err := rows.Scan(&words)
		f.doubts.number(words)
		return err
	}); err != nil {
		return nil, err
	}
	f.some.doubts = len(f.doubts.list) - 1
	at := f.byLineNo()
	err = pl.DB.Scan(ctx, `select line_no, runner_no, same_as, doubt, time_ms, status, counts, taking_part, sex, coalesce(age_low, 255)::utinyint, coalesce(age_high, 255)::utinyint, coalesce(group_age, 255)::utinyint
		from record.result where line_no in (select line_no from some_line)`, func(r arrow.Record) error {
		var whole [5]*array.Int32
		var small [7]*array.Uint8
		for k := range whole {
			whole[k] = r.Column(k).(*array.Int32)
		}
		for k := range small {
			small[k] = r.Column(5 + k).(*array.Uint8)
		}
		for k := range int(r.NumRows()) {
			i := at[whole[0].Value(k)]
			f.runner[i] = whole[1].Value(k)
			f.some.was[i] = reportedFacts{there: true, runner: whole[1].Value(k), timeMS: whole[4].Value(k), status: small[0].Value(k), counts: small[1].Value(k),
				takingPart: small[2].Value(k), sex: small[3].Value(k), ageLow: small[4].Value(k), ageHigh: small[5].Value(k), group: small[6].Value(k)}
			if !f.settled(int(i)) {
				continue
			}
			f.some.sameNo[i], f.doubt[i], f.timeMS[i] = whole[2].Value(k), whole[3].Value(k), whole[4].Value(k)
			f.status[i], f.counts[i], f.takingPart[i] = small[0].Value(k), small[1].Value(k), small[2].Value(k)
		}
		return nil
	})
	return f, err
}

// byLineNo is the index of each line by its number.
func (f *field) byLineNo() map[int32]int32 {
	at := make(map[int32]int32, f.n)
	for i, no := range f.lineNo {
		at[no] = int32(i)
	}
	return at
}

// settleSome settles what stands in the fresh runs. It is false where somebody
// has said something about one of these runs: a refresh of everything follows
// that.
func (pl *Pipeline) settleSome(w *work) (bool, error) {
	f := w.field
	w.problems = f.compared()
	w.clubs = f.knowClubs(pl.Settings.clubBook(w.decisions))
	var err error
	if w.desk, err = f.applyLineDecisions(nil); err != nil {
		return false, err
	}
	if w.states, err = f.runStates(w.decisions, pl.courses); err != nil {
		return false, err
	}
	for _, s := range w.states {
		if f.some.fresh[s.runNo] {
			return false, nil
		}
	}
	w.problems = append(w.problems, f.samePersonTwice(w.desk, pl.workers())...)
	return true, nil
}

// keepConcerned leaves out the lines of runners who might have stood in a fresh
// run and do not.
func (f *field) keepConcerned(before []int32) {
	concerned := map[int32]bool{}
	for _, r := range before {
		concerned[r] = true
	}
	for i := 0; i < f.n; i++ {
		if !f.settled(i) {
			concerned[f.runner[i]] = true
		}
	}
	delete(concerned, 0)
	place := make([]int32, f.n) // new index, -1 left out
	n := int32(0)
	for i := 0; i < f.n; i++ {
		place[i] = -1
		if !f.settled(i) || concerned[f.runner[i]] {
			place[i] = n
			n++
		}
	}
	keep(place, &f.lineNo, &f.part, &f.row, &f.run, &f.position, &f.timeMS, &f.name, &f.number, &f.club, &f.sameAs, &f.doubt, &f.runner, &f.some.sameNo)
	keep(place, &f.sex, &f.basis, &f.takingPart, &f.status, &f.counts)
	keep(place, &f.birthLo, &f.birthHi)
	keep(place, &f.key)
	keep(place, &f.some.was)
	f.n = int(n)
	for i, j := range f.sameAs {
		if j >= 0 {
			f.sameAs[i] = place[j]
		}
	}
}

// keep leaves out the elements of columns that have no place any more.
func keep[T any](place []int32, columns ...*[]T) {
	for _, c := range columns {
		n := 0
		for i, j := range place {
			if j >= 0 {
				(*c)[j] = (*c)[i]
				n++
			}
		}
		*c = (*c)[:n]
	}
}

// heldRuns says of every run whether a sheet of it is loaded.
func (pl *Pipeline) heldRuns(ctx context.Context, f *field) ([]bool, error) {
	held := make([]bool, len(f.runs))
	for i := 0; i < f.n; i++ {
		held[f.run[i]-1] = true
	}
	if f.some == nil {
		return held, nil
	}
	return held, pl.DB.Scan(ctx, "select distinct run_no from record.line", func(r arrow.Record) error {
		for _, no := range r.Column(0).(*array.Int32).Int32Values() {
			held[no-1] = true
		}
		return nil
	})
}

// writeSome puts the figures of the field's lines and runners in the place of
// those that were there.
func (pl *Pipeline) writeSome(ctx context.Context, w *work) error {
	f, p, s := w.field, w.people, w.field.some
	var gone []int32
	for _, no := range s.before {
		if _, there := slices.BinarySearch(p.no, no); !there {
			gone = append(gone, no)
		}
	}
	// cut short from here on, the next refresh is of everything
	if err := pl.setState(ctx, stateBase, ""); err != nil {
		return err
	}
	if err := pl.keepIDs(w); err != nil {
		return err
	}
	var problems []storedProblem
	for _, q := range w.problems {
		if s.fresh[q.runNo] {
			problems = append(problems, q)
		}
	}
	return pl.DB.Transaction(ctx, func() error {
		touched, err := pl.touched(ctx, w)
		if err != nil {
			return err
		}
		for _, d := range []struct {
			table, key string
			numbers    []int32
		}{
			{"record.result", "line_no", f.lineNo}, {"insight.result", "line_no", f.lineNo},
			{"insight.ranked", "runner_no", slices.Concat(p.no, gone)}, {"record.runner", "runner_no", slices.Concat(p.no, gone)},
		} {
			if err := pl.deleteRows(ctx, d.table, d.key, d.numbers); err != nil {
				return err
			}
		}
		if err := pl.DB.Exec(ctx, "delete from sheet.problem where "+amongRuns(slices.Sorted(maps.Keys(s.fresh)))+" and kind in ('"+strings.Join(refreshProblems, "', '")+"')"); err != nil {
			return err
		}
		for _, write := range []func(context.Context, *work) error{
			pl.writeResults, pl.writeRunners, pl.writeInsight, pl.writeRanked,
			func(ctx context.Context, w *work) error { return pl.writeSpeedSome(ctx, w, gone) },
			func(ctx context.Context, w *work) error { return pl.writeDoubts(ctx, f.doubts.list, s.doubts) },
			pl.addClubs,
			func(ctx context.Context, w *work) error { return pl.rememberSome(ctx, s.linkage) },
			func(ctx context.Context, w *work) error { return pl.insertProblems(ctx, problems) },
			func(ctx context.Context, w *work) error { return pl.noteTouched(ctx, w, touched) },
		} {
			if err := write(ctx, w); err != nil {
				return err
			}
		}
		return nil
	})
}

// addClubs adds the spellings of clubs that are new.
func (pl *Pipeline) addClubs(ctx context.Context, w *work) error {
	known := map[string]bool{}
	if err := pl.each(ctx, "select received from record.club", func(rows *sql.Rows) error {
		var received string
		err := rows.Scan(&received)
		known[received] = true
		return err
	}); err != nil {
		return err
	}
	return pl.insertClubs(ctx, slices.DeleteFunc(w.clubs, func(c knownSpelling) bool { return known[c.received] }))
}
