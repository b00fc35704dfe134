package pipeline

import (
	"context"
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"sort"
	"strings"
	"time"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/age"
	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/club"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// sideTables are the files of the archive folder that figures depend on.
var sideTables = []string{"decisions.csv", "courses.csv", "members.csv", "volunteers.csv", "history.csv", tuningTable}

// figuresStamp sums up everything that figures depend on; while it is the same
// there is nothing to refresh.
func (pl *Pipeline) figuresStamp() (string, error) {
	var b strings.Builder
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return "", err
	}
	for _, e := range ledger {
		fmt.Fprintln(&b, e.Seq, e.Hash, e.State)
	}
	base, err := pl.figuresBase()
	b.WriteString(base)
	return store.Hash([]byte(b.String())), err
}

// figuresBase sums up everything but the sheets.
func (pl *Pipeline) figuresBase() (string, error) {
	var b strings.Builder
	b.WriteString(pl.Settings.figuresKey())
	for _, t := range sideTables {
		data, err := os.ReadFile(pl.Archive.File(t))
		if err != nil && !os.IsNotExist(err) {
			return "", err
		}
		b.WriteString(store.Hash(data))
	}
	return store.Hash([]byte(b.String())), nil
}

// Refresh computes all figures again where anything they depend on has
// changed; force computes them in any case. It says whether it did.
func (pl *Pipeline) Refresh(ctx context.Context, force bool) (bool, error) {
	stamp, err := pl.figuresStamp()
	if err != nil {
		return false, err
	}
	have, err := pl.state(ctx, "figures")
	if err != nil {
		return false, err
	}
	if have == stamp && !force {
		return false, nil
	}
	pl.texts = nil // all sheets are loaded
	base, err := pl.figuresBase()
	if err != nil {
		return false, err
	}
	if !force {
		if done, err := pl.refreshSome(ctx, base); err != nil {
			return false, err
		} else if done {
			pl.Progress.Done()
			return true, pl.noteFigures(ctx, stamp, base, [2]string{stateSome, "yes"})
		}
	}
	w := &work{full: force, keepLink: !pl.readOnly}
	for i := range steps {
		if err := pl.runStep(ctx, w, i); err != nil {
			return false, err
		}
	}
	pl.Progress.Done()
	return true, pl.noteFigures(ctx, stamp, base, allRefreshed(w)...)
}

// RefreshAll brings all figures up to date, those too that rest on all lines
// together and were carried on when the last sheets came (refresh_some.go). The
// same archive then has the same figures, whatever the order of loading.
func (pl *Pipeline) RefreshAll(ctx context.Context) error {
	some, err := pl.state(ctx, stateSome)
	if err != nil {
		return err
	}
	stamp, err := pl.figuresStamp()
	if err != nil {
		return err
	}
	have, err := pl.state(ctx, "figures")
	if err == nil && (some == "yes" || have != stamp) { // new sheets must not be taken up on their own here
		_, err = pl.Refresh(ctx, true)
	}
	return err
}

// runStep runs one step of a refresh.
func (pl *Pipeline) runStep(ctx context.Context, w *work, i int) error {
	pl.Progress.Step(steps[i].name, int64(i), int64(len(steps)))
	return pl.runOne(ctx, w, steps[i])
}

func (pl *Pipeline) runOne(ctx context.Context, w *work, s step) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	began := time.Now()
	if err := s.run(pl, ctx, w); err != nil {
		return fmt.Errorf("%s: %w", strings.ToLower(s.name), err)
	}
	pl.took(s.name, began)
	return nil
}

// Timing is how long one piece of work took.
type Timing struct {
	What    string
	Seconds float64
}

// took notes how long a piece of work took since it began.
func (pl *Pipeline) took(what string, began time.Time) {
	pl.Timings = append(pl.Timings, Timing{what, time.Since(began).Seconds()})
}

func (pl *Pipeline) stepRead(ctx context.Context, w *work) (err error) {
	w.field, err = pl.readField(ctx)
	return err
}

func (pl *Pipeline) stepCompare(ctx context.Context, w *work) error {
	w.problems = append(append(w.problems, w.field.compareSheets()...), w.field.copiedRuns()...)
	return nil
}

func (pl *Pipeline) stepDecisions(ctx context.Context, w *work) error {
	all, err := pl.allDecisions()
	if err != nil {
		return err
	}
	w.decisions = inForce(append(all, w.proposed...))
	w.clubs = w.field.knowClubs(pl.Settings.clubBook(w.decisions))
	if w.desk, err = w.field.applyLineDecisions(w.decisions); err != nil {
		return err
	}
	if w.states, err = w.field.runStates(w.decisions, pl.courses); err != nil {
		return err
	}
	w.problems = append(w.problems, w.desk.problems...)
	w.problems = append(w.problems, w.field.samePersonTwice(w.desk, pl.workers())...)
	return nil
}

func (pl *Pipeline) stepGather(ctx context.Context, w *work) error {
	f := w.field
	// lines that repeat another are the same person's
	for i := 0; i < f.n; i++ {
		for j, hops := i, 0; f.runner[i] == 0 && f.sameAs[j] >= 0 && hops < 8; hops++ {
			j = int(f.sameAs[j])
			f.runner[i] = f.runner[j]
		}
	}
	f.settleCounts(f.timesVoid(w.states))
	w.people = f.gather(pl.workers())
	w.people.now = w.link.now
	w.problems = append(w.problems, f.onceARun(w.people)...)
	var err error
	if w.wishes, err = wishesOf(w.decisions, w.link); err != nil {
		return err
	}
	for n, sex := range w.wishes.sex {
		if r, ok := slices.BinarySearch(w.people.no, n); ok {
			w.people.sex[r] = sex
		}
	}
	members, problems, err := pl.joinMembers(f, w.people, pl.Settings.clubBook(w.decisions))
	if err != nil {
		return err
	}
	w.members = members
	w.problems = append(w.problems, problems...)
	if w.held, problems, err = pl.heldRecords(f, w.people); err != nil {
		return err
	}
	w.problems = append(w.problems, problems...)
	f.ages(w.people, &w.figures, pl.workers())
	f.markChildren(&w.figures, pl.Settings.AgeNotKnown)
	return nil
}

func (pl *Pipeline) stepGrades(ctx context.Context, w *work) error {
	return pl.ageGrades(w.field, w.people, &w.figures)
}

func (pl *Pipeline) stepHistories(ctx context.Context, w *work) error {
	var missing []history.Run
	for _, s := range w.states {
		switch s.state {
		case "cancelled", "abandoned":
			missing = append(missing, history.Run{Course: s.course, Day: s.day, State: history.NotHeld})
		case "times lost":
			missing = append(missing, history.Run{Course: s.course, Day: s.day, State: history.SheetMissing})
		}
	}
	if err := pl.histories(ctx, w.field, w.people, &w.figures, missing, w.decisions); err != nil {
		return err
	}
	w.problems = append(w.problems, w.figures.problems...)
	return nil
}

// runState is what somebody said about a run.
type runState struct {
	course int32 // index
	day    unit.Day
	runNo  int32 // 0 where no sheet of it is loaded
	state  string
	offM   int32 // metres that a short or long run was off, 0 not known
}

// runStates lists what was said about runs, the last word on each.
func (f *field) runStates(ds []Decision, book *courseBook) ([]runState, error) {
	var out []runState
	for _, d := range ds {
		if d.Kind != DecideRunState {
			continue
		}
		state, off, err := ParseRunState(d.Value)
		if err != nil {
			return nil, fmt.Errorf("decision %d: %w", d.ID, err)
		}
		for c := range f.courses {
			if f.courses[c].course != book.resolve(d.Course) {
				continue
			}
			runs := 0
			for _, r := range f.runs {
				if r.course == int32(c)+1 && r.day == d.Date && (d.Session == "" || d.Session == r.session) {
					out = append(out, runState{int32(c), d.Date, r.no, state, off})
					runs++
				}
			}
			if runs == 0 {
				out = append(out, runState{int32(c), d.Date, 0, state, off})
			}
		}
	}
	last := map[[3]int32]int{}
	for i, s := range out {
		last[[3]int32{s.course, int32(s.day), s.runNo}] = i
	}
	kept := out[:0]
	for i, s := range out {
		if last[[3]int32{s.course, int32(s.day), s.runNo}] == i {
			kept = append(kept, s)
		}
	}
	return kept, nil
}

// timesVoid says by run whether its times count for nothing: the run was not
// on the course as measured, or was not finished as planned.
func (f *field) timesVoid(states []runState) []bool {
	out := make([]bool, len(f.runs))
	for _, s := range states {
		switch s.state {
		case "misdirected", "short", "long", "other route", "abandoned", "times lost":
			if s.runNo > 0 {
				out[s.runNo-1] = true
			}
		}
	}
	return out
}

// samePersonTwice finds people who stand twice in one run: the same name and
// number, or without numbers the same name, club and age. Both places stay in
// the count of finishers; the second is doubtful. Where the desk has said of one
// that it counts, that one is theirs; where it has said so of both, they are two
// people.
func (f *field) samePersonTwice(desk *lineDecisions, workers int) []storedProblem {
	type who struct {
		run, number, club int32
		lo, hi            unit.Day
		name              string
	}
	// only names that occur twice in a run are worth a look
	id := f.nameClasses()
	twice := f.namedTwice(id, workers)
	if len(twice) == 0 {
		return nil
	}
	lines := f.linesWhere(workers, func(i int) bool {
		return f.named(i) && !f.settled(i) && twice[uint64(f.run[i])<<32|uint64(id[f.name[i]])]
	})
	sort.Slice(lines, func(a, b int) bool { return f.key[lines[a]] < f.key[lines[b]] })
	first := map[who]int{}
	var out []storedProblem
	for _, line := range lines {
		i := int(line)
		k := who{run: f.run[i], number: f.number[i], name: f.person[f.name[i]].Full}
		if f.number[i] == 0 {
			if f.birthLo[i] == 0 && f.birthHi[i] == 0 || f.club[i] == 0 {
				continue // nothing that tells namesakes apart
			}
			k.club, k.lo, k.hi = f.club[i], f.birthLo[i], f.birthHi[i]
		}
		j, seen := first[k]
		switch {
		case !seen:
			first[k] = i
			continue
		case desk.counts[i] && desk.counts[j]:
			desk.apart = append(desk.apart, [2]int{i, j})
			continue
		case desk.counts[i]:
			first[k] = i
			i, j = j, i
		}
		f.sameAs[i] = int32(j)
		told := f.is(i, record.Doubtful) && f.part[i] == f.part[j] && !desk.touched[i] && !desk.touched[j] // when the sheet was read
		if p := f.twice(i, j); !told {
			out = append(out, p)
		}
	}
	return out
}

// namedTwice finds the names, by class, that occur twice in a run: run << 32 | class.
func (f *field) namedTwice(class []int32, workers int) map[uint64]bool {
	// lines by run
	begin := make([]int32, len(f.runs)+1)
	for _, r := range f.run {
		begin[r]++
	}
	for r := range len(f.runs) {
		begin[r+1] += begin[r]
	}
	at := slices.Clone(begin[:len(f.runs)])
	of := make([]int32, f.n)
	for i, r := range f.run {
		of[at[r-1]] = int32(i)
		at[r-1]++
	}
	const piece = 256
	found := make([][]uint64, (len(f.runs)+piece-1)/piece)
	parallel.Each(len(found), workers, func(k int) {
		var names []int32
		for r := k * piece; r < min(len(f.runs), (k+1)*piece); r++ {
			names = names[:0]
			for _, i := range of[begin[r]:begin[r+1]] {
				if f.named(int(i)) && !f.settled(int(i)) {
					names = append(names, class[f.name[i]])
				}
			}
			slices.Sort(names)
			for x := 1; x < len(names); x++ {
				if names[x] == names[x-1] {
					found[k] = append(found[k], uint64(r+1)<<32|uint64(names[x]))
				}
			}
		}
	})
	twice := map[uint64]bool{}
	for _, list := range found {
		for _, k := range list {
			twice[k] = true
		}
	}
	return twice
}

// twice makes line i doubtful because its person stands in the run on line j
// already.
func (f *field) twice(i, j int) storedProblem {
	f.setDoubt(i, record.Doubtful, "the same person stands twice in this run")
	p := f.parts[f.part[i]-1]
	return storedProblem{place.Problem{
		Place: place.Place{Sheet: p.path, Tab: p.tab, Row: int(f.row[i])}, Severity: place.Doubtful, Kind: "person-twice",
		Read:     f.names.list[f.name[i]],
		Expected: fmt.Sprintf("one place a person; also at place %d", f.position[j]),
		Do:       "Ask who crossed the line here. Both places are counted, only the first is theirs.",
	}, p.sheetNo, f.run[i]}
}

// onceARun lets only one line of a runner count in a run. The linker sees to
// that; a person's decision, which wins over it, can put two there.
func (f *field) onceARun(p *people) (out []storedProblem) {
	for r := range p.no {
		lines := p.order[p.begin[r]:p.begin[r+1]]
		for k, i := range lines {
			for b := k - 1; b >= 0 && f.day(int(lines[b])) == f.day(int(i)); b-- {
				if j := lines[b]; f.run[j] == f.run[i] && f.counts[i]&1 != 0 && f.counts[j]&1 != 0 {
					out = append(out, f.twice(int(i), int(j)))
					f.counts[i] &= mayBeChild
				}
			}
		}
	}
	return out
}

// nameClasses numbers the texts of names so that spellings of one full name
// have the same number.
func (f *field) nameClasses() []int32 {
	at := map[string]int32{}
	id := make([]int32, len(f.person))
	for i := range f.person {
		k := f.person[i].Full
		n, ok := at[k]
		if !ok {
			n = int32(len(at))
			at[k] = n
		}
		id[i] = n
	}
	return id
}

var resultSchema = store.Columns("line_no", store.Int32, "runner_no", store.Int32, "status", store.Uint8, "counts", store.Uint8,
	"sex", store.Uint8, "age_low", store.Uint8, "age_high", store.Uint8, "same_as", store.Int32, "doubt", store.Int32,
	"time_ms", store.Int32, "taking_part", store.Uint8, "run_no", store.Int32, "position", store.Int32, "part_no", store.Int32)

var insightSchema = store.Columns("line_no", store.Int32, "open_standard_s", store.Float64, "age_factor", store.Float64,
	"age_factor_most", store.Float64, "age_factor_least", store.Float64, "first_result", store.Bool, "runs_total", store.Int32, "milestone", store.Int32,
	"is_pb", store.Bool, "previous_best_s", store.Int32, "pb_margin_s", store.Int32, "is_course_best", store.Bool, "course_best_margin_s", store.Int32,
	"pb_streak", store.Int32, "attendance_streak", store.Int32, "newcomer", store.Uint8, "visitor", store.Uint8, "days_since_last", store.Int32,
	"adjusted_s", store.Float32, "is_adjusted_best", store.Bool, "effort", store.Uint8, "shortfall", store.Float32,
	"form_s", store.Float32, "form_low", store.Float32, "form_high", store.Float32, "runner_no", store.Int32)

// derived are the tables that a refresh fills from nothing.
var derived = []string{"record.result", "record.doubt", "record.runner", "record.alias", "record.volunteer", "record.run_state",
	"record.correction", "record.club", "record.decision", "record.member", "record.record_state", "record.held_record", "record.club_proposal",
	"record.asked", "record.touched",
	"insight.result", "insight.ranked", "insight.course", "insight.run", "insight.runner", "insight.age_group"}

// refreshProblems are the kinds of problems that a refresh raises; those of
// reading stay.
var refreshProblems = []string{"two-part-sheet", "copy", "excerpt", "excerpt-differs", "second-sheet", "new-issue", anotherField, resultsCopied, "person-twice",
	"two-claims", "decision-contradicted", "several-runners", "member-birth-date", "held-record", "opening-date", "opening-time", "codes-exchanged", nameDoubtful, correctedOutOfOrder, exchangedAfterChange}

func (pl *Pipeline) stepWrite(ctx context.Context, w *work) error {
	if err := pl.keepIDs(w); err != nil {
		return err
	}
	look := w.field.proposeClubs(w.people, pl.Settings.clubBook(w.decisions), w.members)
	w.proposals = make(chan []club.Proposal, 1)
	go func() { w.proposals <- look() }()
	return pl.DB.Transaction(ctx, func() error {
		for _, t := range derived {
			if err := pl.DB.Exec(ctx, "delete from "+t); err != nil {
				return err
			}
		}
		if err := pl.DB.Exec(ctx, "delete from sheet.problem where kind in ('"+strings.Join(refreshProblems, "', '")+"')"); err != nil {
			return err
		}
		for _, f := range []func(context.Context, *work) error{
			pl.writeResults, pl.writeRunners, pl.writeInsight, pl.writeRanked, pl.writeSpeed, pl.writeSmallTables, pl.writeDesk, pl.writeLink, pl.writeAskedNames,
		} {
			if err := f(ctx, w); err != nil {
				return err
			}
		}
		return pl.insertProblems(ctx, w.problems)
	})
}

func (pl *Pipeline) writeResults(ctx context.Context, w *work) error {
	f, fig := w.field, &w.figures
	return pl.insertColumns(ctx, "record.result", resultSchema, f.n, func(c *fill, from, to int) {
		c.ints(f.lineNo[from:to])
		c.ints(f.runner[from:to])
		c.bytes(f.status[from:to])
		c.bytes(f.counts[from:to])
		c.bytesOf(func(k int) uint8 { return uint8(f.sexOf(w.people, from+k)) })
		c.ages(fig.ageLow[from:to], fig.ageHigh[from:to])
		c.intsOf(func(k int) int32 { return f.sameLine(from + k) })
		c.ints(f.doubt[from:to])
		c.ints(f.timeMS[from:to])
		c.bytes(f.takingPart[from:to])
		c.ints(f.run[from:to])
		c.ints(f.position[from:to])
		c.ints(f.part[from:to])
	})
}

var runnerSchema = store.Columns("runner_no", store.Int32, "name", store.Text, "name_key", store.Text, "sex", store.Uint8,
	"birth_lo", store.Date, "birth_hi", store.Date, "club", store.Text, "hidden", store.Bool, "wished", store.Bool, "may_be_child", store.Bool)

func (pl *Pipeline) writeRunners(ctx context.Context, w *work) error {
	f, p := w.field, w.people
	club := make([]int32, len(p.no))
	called := f.namesToPrint(p, club, pl.workers())
	return pl.insertRows(ctx, "record.runner", runnerSchema, len(p.no), func(r row, i int) {
		c := called(i)
		wish, named := w.wishes.name[p.no[i]]
		if named {
			c = calledAs(wish)
		}
		r.ints(0, p.no[i])
		r.texts(1, c.printed, c.key)
		r.small(3, uint8(p.sex[i]))
		r.window(4, p.window[i])
		r.texts(6, f.clubs.list[club[i]])
		_, placed := w.wishes.sex[p.no[i]]
		r.yesNo(7, w.wishes.hidden[p.no[i]])
		r.yesNo(8, named || placed)
		child := false
		for _, l := range p.order[p.begin[i]:p.begin[i+1]] {
			child = child || f.counts[l]&mayBeChild != 0
		}
		r.yesNo(9, child)
	})
}

// called is the name to print and the key that others are compared by.
type called struct{ printed, key string }

func calledAs(printed string) called { return called{printed, name.Parse(printed).Full} }

// namesToPrint finds out what every runner is called, from all spellings, and their
// latest club. Most have one spelling, which many share: it is looked at once.
func (f *field) namesToPrint(p *people, club []int32, workers int) func(r int) called {
	only := make([]int32, len(p.no)) // the runner's only name; -1: has several
	several := make([]map[int]called, (len(p.no)+printedPiece-1)/printedPiece)
	parallel.Each(len(several), workers, func(k int) {
		var spellings []name.Spelling
		for r := k * printedPiece; r < min(len(p.no), (k+1)*printedPiece); r++ {
			lines := p.order[p.begin[r]:p.begin[r+1]]
			only[r] = f.name[lines[0]]
			for _, l := range lines {
				if f.club[l] != 0 {
					club[r] = f.club[l]
				}
				if f.name[l] != only[r] {
					only[r] = -1
				}
			}
			if only[r] >= 0 {
				continue
			}
			spellings = spellings[:0]
			for _, l := range lines {
				spellings = countSpelling(spellings, f.names.list[f.name[l]])
			}
			if several[k] == nil {
				several[k] = map[int]called{}
			}
			several[k][r] = calledAs(name.Best(spellings))
		}
	})
	used := make([]bool, len(f.names.list))
	for _, n := range only {
		if n >= 0 {
			used[n] = true
		}
	}
	one := make([]called, len(used))
	parallel.Pieces(len(used), workers, func(from, to int) {
		for n := from; n < to; n++ {
			if used[n] {
				one[n] = calledAs(name.Best([]name.Spelling{{Text: f.names.list[n], Count: 1}}))
			}
		}
	})
	return func(r int) called {
		if only[r] >= 0 {
			return one[only[r]]
		}
		return several[r/printedPiece][r]
	}
}

// printedPiece is how many runners are gone through at a time.
const printedPiece = 2048

func (pl *Pipeline) writeInsight(ctx context.Context, w *work) error {
	f, p, fig := w.field, w.people, &w.figures
	h, g, s := fig.history, &fig.grade, w.speed
	return pl.insertColumns(ctx, "insight.result", insightSchema, len(p.order), func(c *fill, from, to int) {
		lines, mark := p.order[from:to], h.Mark[from:to]
		is := func(m history.Mark) func(int) bool { return func(k int) bool { return mark[k]&m != 0 } }
		under := func(m history.Mark, before []int32) func(int) int32 {
			return func(k int) int32 { return margin(mark[k]&m != 0, before[from+k], unit.CeilSeconds(f.timeMS[lines[k]])) }
		}
		c.intsOf(func(k int) int32 { return f.lineNo[lines[k]] })
		for _, v := range [][]float64{g.Open, g.Factor, g.FactorMost, g.FactorLeast} {
			c.numbers(v[from:to])
		}
		c.flagsOf(is(history.FirstSeen))
		c.ints(h.RunsTotal[from:to])
		c.ints(h.Milestone[from:to])
		c.flagsOf(is(history.PB))
		c.ints(h.PreviousBestS[from:to])
		c.intsOf(under(history.PB, h.PreviousBestS))
		c.flagsOf(is(history.CourseBest))
		c.intsOf(under(history.CourseBest, h.PreviousCourseBestS))
		c.ints(h.PBStreak[from:to])
		c.ints(h.Attendance[from:to])
		c.bytes(bytesAs(h.Newcomer[from:to]))
		c.bytes(bytesAs(h.Visitor[from:to]))
		c.intsOf(func(k int) int32 { return max(0, h.DaysSince[from+k]) })
		c.singles(s.adjusted[from:to])
		c.flags(s.adjustedBest[from:to])
		c.bytes(s.effort[from:to])
		c.singles(s.shortfall[from:to])
		for band := range 3 {
			c.singlesOf(func(k int) float32 { return s.form[from+k][band] })
		}
		c.intsOf(func(k int) int32 { return f.runner[lines[k]] })
	})
}

func margin(is bool, before, time int32) int32 {
	if !is {
		return 0
	}
	return before - time
}

func (r row) numbers(at int, v ...float64) {
	for i, x := range v {
		b := r.b.Field(at + i).(*array.Float64Builder)
		if math.IsNaN(x) || math.IsInf(x, 0) {
			b.AppendNull()
		} else {
			b.Append(x)
		}
	}
}

func (r row) yesNo(at int, v bool) { r.b.Field(at).(*array.BooleanBuilder).Append(v) }

func (r row) day(at int, d unit.Day) { r.b.Field(at).(*array.Date32Builder).Append(arrow.Date32(d)) }

// writeDoubts adds the reasons for doubt from number from + 1 on.
func (pl *Pipeline) writeDoubts(ctx context.Context, list []string, from int) error {
	schema := store.Columns("doubt", store.Int32, "words", store.Text)
	return pl.insertRows(ctx, "record.doubt", schema, len(list)-1-from, func(r row, i int) {
		r.ints(0, int32(from+i+1))
		r.texts(1, list[from+i+1])
	})
}

func (pl *Pipeline) writeSmallTables(ctx context.Context, w *work) error {
	f := w.field
	if err := pl.writeDoubts(ctx, f.doubts.list, 0); err != nil {
		return err
	}
	aliasSchema := store.Columns("runner_no", store.Int32, "now", store.Int32)
	old := slices.Sorted(maps.Keys(w.link.alias))
	if err := pl.insertRows(ctx, "record.alias", aliasSchema, len(old), func(r row, i int) {
		r.ints(0, old[i], w.link.now(old[i]))
	}); err != nil {
		return err
	}
	groupSchema := store.Columns("age", store.Uint8, "sex", store.Uint8, "first_age", store.Uint8, "name", store.Text)
	scheme := age.DefaultScheme()
	if err := pl.insertRows(ctx, "insight.age_group", groupSchema, 121*4, func(r row, i int) {
		a, s := i/4, record.Sex(i%4)
		lo, _ := scheme.Bounds(a)
		r.small(0, uint8(a), uint8(s), uint8(lo))
		r.texts(3, scheme.Name(a, s.String()))
	}); err != nil {
		return err
	}
	if err := pl.writeVolunteers(ctx, w); err != nil {
		return err
	}
	var stated []runState
	for _, s := range w.states {
		if s.runNo > 0 {
			stated = append(stated, s)
		}
	}
	stateSchema := store.Columns("run_no", store.Int32, "state", store.Text, "off_m", store.Int32)
	return pl.insertRows(ctx, "record.run_state", stateSchema, len(stated), func(r row, i int) {
		r.ints(0, stated[i].runNo)
		r.texts(1, stated[i].state)
		r.ints(2, stated[i].offM)
	})
}
