package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/insight/agegrade"
	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// people holds what is known of each runner, by dense index in order of the
// runner number.
type people struct {
	no      []int32           // runner number, ascending
	of      []int32           // per line: index into no, -1
	window  []age.Window      // birth dates that all lines together allow
	support []int             // how many lines allow that window
	sex     []record.Sex      // what most lines say
	order   []int32           // lines of runners, by runner, day, start, key
	start   []int32           // per line: order of start within the runner's day, 0 not known
	begin   []int32           // order[begin[r]:begin[r+1]] are runner r's lines
	now     func(int32) int32 // from a number no longer used to the one in use; nil: none was joined
}

// gather sorts the lines by runner and brings together what they say.
func (f *field) gather(workers int) *people {
	p := &people{of: make([]int32, f.n)}
	top := int32(0)
	for _, r := range f.runner {
		top = max(top, r)
	}
	seen := make([]int32, top+1)
	for _, r := range f.runner {
		seen[r]++
	}
	seen[0] = 0
	at := make([]int32, top+1)
	p.begin = append(p.begin, 0)
	sum := int32(0)
	for r, k := range seen {
		at[r] = -1
		if k > 0 {
			at[r] = int32(len(p.no))
			p.no = append(p.no, int32(r))
			sum += k
			p.begin = append(p.begin, sum)
		}
	}
	p.order = make([]int32, sum)
	fill := slices.Clone(p.begin)
	for i, r := range f.runner {
		p.of[i] = -1
		if r > 0 {
			p.of[i] = at[r]
			p.order[fill[at[r]]] = int32(i)
			fill[at[r]]++
		}
	}
	p.window = make([]age.Window, len(p.no))
	p.sex = make([]record.Sex, len(p.no))
	p.support = make([]int, len(p.no))
	p.start = make([]int32, f.n)
	parallel.Pieces(len(p.no), workers, func(from, to int) {
		for r := from; r < to; r++ {
			lines := p.order[p.begin[r]:p.begin[r+1]]
			slices.SortFunc(lines, func(a, b int32) int {
				return cmp.Or(cmp.Compare(f.day(int(a)), f.day(int(b))), cmp.Compare(f.key[a], f.key[b]))
			})
			f.orderDays(lines, p.start)
			p.window[r], p.support[r] = f.meet(lines)
			p.sex[r] = f.mostSay(lines)
		}
	})
	return p
}

// meet brings the birth windows of a runner's lines together: the birth dates
// that most of the lines allow. Where all of them agree that is their
// intersection; a wrong age on one sheet is outvoted. support is how many
// lines allow those dates.
func (f *field) meet(lines []int32) (w age.Window, support int) {
	all := true
	for _, i := range lines {
		v := age.Window{Lo: f.birthLo[i], Hi: f.birthHi[i]}
		if !v.Known() {
			continue
		}
		support++
		if all {
			w, all = w.Meet(v)
		}
	}
	if all {
		return w, support
	}
	// The dates covered by most windows: the deepest stretches between the
	// starts and ends of windows.
	type edge struct {
		day   unit.Day
		depth int // +1 a window begins here, -1 one ended the day before
	}
	edges := make([]edge, 0, 2*support)
	for _, i := range lines {
		if f.birthLo[i] != 0 || f.birthHi[i] != 0 {
			edges = append(edges, edge{f.birthLo[i], 1}, edge{f.birthHi[i] + 1, -1})
		}
	}
	slices.SortFunc(edges, func(a, b edge) int { return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(a.depth, b.depth)) })
	depth, most := 0, 0
	for k, e := range edges {
		depth += e.depth
		if k+1 == len(edges) || edges[k+1].day == e.day {
			continue
		}
		switch until := edges[k+1].day - 1; {
		case depth > most:
			w, most = age.Window{Lo: e.day, Hi: until}, depth
		case depth == most:
			w.Hi = until // as likely: both stretches and what lies between
		}
	}
	return w, most
}

// mostSay is the sex that most of the lines give; on a tie the latest.
func (f *field) mostSay(lines []int32) record.Sex {
	var n [4]int
	latest := record.NotGiven
	for _, i := range lines {
		if s := f.sex[i]; s != 0 {
			n[s]++
			latest = record.Sex(s)
		}
	}
	best := latest
	for s := record.M; s <= record.X; s++ {
		if n[s] > n[best] {
			best = s
		}
	}
	return best
}

// orderDays puts the lines of each day with several into the order of start,
// where it is known: all have a start time, or all are numbered sessions of one
// course. Session 1 of one course has no order against session 2 of another.
func (f *field) orderDays(lines []int32, start []int32) {
	for from := 0; from < len(lines); {
		to := from + 1
		for to < len(lines) && f.day(int(lines[to])) == f.day(int(lines[from])) {
			to++
		}
		day := lines[from:to]
		from = to
		if len(day) == 1 {
			continue
		}
		clocks, numbers, oneCourse := true, true, true
		for _, l := range day {
			_, clock, ok := startOrder(f.runs[f.run[l]-1].session)
			clocks = clocks && ok && clock
			numbers = numbers && ok && !clock
			oneCourse = oneCourse && f.course(int(l)) == f.course(int(day[0]))
		}
		if !clocks && !(numbers && oneCourse) {
			continue
		}
		for _, l := range day {
			start[l], _, _ = startOrder(f.runs[f.run[l]-1].session)
		}
		slices.SortFunc(day, func(a, b int32) int {
			return cmp.Or(cmp.Compare(start[a], start[b]), cmp.Compare(f.key[a], f.key[b]))
		})
	}
}

// startOrder turns a session into an order within the day: minutes for a
// start time (clock), the number for 1, 2, ….
func startOrder(session string) (order int32, clock, ok bool) {
	if h, m, two := strings.Cut(session, ":"); two {
		a, e1 := strconv.Atoi(h)
		b, e2 := strconv.Atoi(m)
		return int32(a*60 + b + 1), true, e1 == nil && e2 == nil
	}
	n, err := strconv.Atoi(session)
	return int32(n), false, err == nil && n > 0
}

// settleCounts says what each line counts for: a named finisher has a run, and
// a time unless they ran for somebody else or the run's times are void.
func (f *field) settleCounts(void []bool) {
	for i := 0; i < f.n; i++ {
		f.counts[i] &= mayBeChild
		if f.runner[i] == 0 {
			continue
		}
		switch record.Status(f.status[i]) {
		case record.OK:
			f.counts[i] |= 1
			switch record.TakingPart(f.takingPart[i]) {
			case record.Guide, record.Pacer, record.BackMarker, record.WithChild:
			default:
				if f.timeMS[i] > 0 && !void[f.run[i]-1] {
					f.counts[i] |= 3
				}
			}
		case record.Untimed:
			f.counts[i] |= 1
		}
	}
}

// figures are the columns of insight.result, one element a line of a runner in
// the order of people.order.
type figures struct {
	ageLow, ageHigh []int16 // on the day; -1 not known; one element a line
	group           []uint8 // youngest age of the age group, noGroup where it is not certain; one element a line
	grade           agegrade.Grades
	history         *history.Output
	problems        []storedProblem // questions about side tables
}

// sureOfBirth is how many lines must agree on a runner's birth dates before
// they outvote the age that a sheet prints.
const sureOfBirth = 3

// ages works out the ages that each line's runner can have on the day, and the age group
// by the rule.
func (f *field) ages(p *people, out *figures, rule age.Rule, workers int) {
	out.ageLow, out.ageHigh, out.group = make([]int16, f.n), make([]int16, f.n), make([]uint8, f.n)
	first := firstAges(rule.Scheme)
	on := f.rulesOfRuns(rule)
	parallel.Pieces(f.n, workers, func(from, to int) {
		for i := from; i < to; i++ {
			out.ageLow[i], out.ageHigh[i], out.group[i] = -1, -1, noGroup
			w := age.Window{Lo: f.birthLo[i], Hi: f.birthHi[i]}
			if r := p.of[i]; r >= 0 {
				if m, ok := p.window[r].Meet(w); ok {
					w = m
				} else if p.support[r] >= sureOfBirth {
					w = p.window[r] // the sheet's age is outvoted
				}
			}
			lo, hi, ok := w.On(f.day(i))
			if !ok || hi < 0 {
				continue
			}
			lo, hi = max(lo, 0), min(hi, 120)
			out.ageLow[i], out.ageHigh[i] = int16(lo), int16(hi)
			if on != nil {
				if g, ok := on[f.run[i]-1].Group(w); ok {
					out.group[i] = uint8(g)
				}
			} else if first[lo] == first[hi] {
				out.group[i] = first[lo]
			}
		}
	})
}

// sexOf is the runner's sex, or where nobody is known the line's own.
func (f *field) sexOf(p *people, i int) record.Sex {
	if r := p.of[i]; r >= 0 && p.sex[r] != record.NotGiven {
		return p.sex[r]
	}
	return record.Sex(f.sex[i])
}

func (pl *Pipeline) ageGrades(f *field, p *people, out *figures) error {
	table, err := agegrade.Edition(pl.Settings.AgeStandard)
	if err != nil {
		return err
	}
	n := len(p.order)
	out.grade = agegrade.NewGrades(n)
	g := &out.grade
	failed := make(chan error, 1)
	parallel.Pieces(n, pl.workers(), func(from, to int) {
		m := to - from
		c := agegrade.Columns{Sex: make([]string, m), DistanceM: make([]int32, m), AgeLo: make([]int16, m), AgeHi: make([]int16, m), TimeS: make([]int32, m)}
		for k, l := range p.order[from:to] {
			i := int(l)
			c.Sex[k] = f.sexOf(p, i).String()
			c.DistanceM[k] = f.runs[f.run[i]-1].distanceM
			if f.counts[i]&2 != 0 && record.TakingPart(f.takingPart[i]) <= record.Guided && out.ageLow[i] >= 0 {
				c.AgeLo[k], c.AgeHi[k] = out.ageLow[i], out.ageHigh[i]
				c.TimeS[k] = unit.CeilSeconds(f.timeMS[i])
			}
		}
		some, err := table.Grades(c)
		if err != nil {
			select {
			case failed <- err:
			default:
			}
			return
		}
		for k, v := range [][]float64{some.Open, some.Factor, some.FactorMost, some.FactorLeast} {
			copy([][]float64{g.Open, g.Factor, g.FactorMost, g.FactorLeast}[k][from:to], v)
		}
	})
	select {
	case err := <-failed:
		return err
	default:
		return nil
	}
}

func (pl *Pipeline) histories(ctx context.Context, f *field, p *people, out *figures, missing []history.Run, ds []Decision) error {
	n := len(p.order)
	in := &history.Input{
		Runner: make([]int32, n), Course: make([]int32, n), Day: make([]unit.Day, n), Start: make([]int32, n),
		TimeS: make([]int32, n), DistanceM: make([]int32, n), Flags: make([]history.Flag, n), Part: make([]history.Part, n),
		Courses: make([]history.Course, len(f.courses)),
	}
	parallel.Pieces(n, pl.workers(), func(from, to int) {
		for k := from; k < to; k++ {
			i := int(p.order[k])
			r := &f.runs[f.run[i]-1]
			in.Runner[k], in.Course[k], in.Day[k], in.Start[k] = p.of[i], r.course-1, r.day, p.start[i]
			in.DistanceM[k], in.Part[k] = r.distanceM, history.Part(f.takingPart[i])
			if f.counts[i]&1 != 0 {
				in.Flags[k] |= history.CountsRun
			}
			if f.counts[i]&2 != 0 {
				in.Flags[k] |= history.CountsTime
				in.TimeS[k] = unit.CeilSeconds(f.timeMS[i])
			}
		}
	})
	for c := range in.Courses {
		in.Courses[c] = history.Course{Complete: f.courses[c].known, CompleteFrom: f.courses[c].complete, Began: pl.courses.began[f.courses[c].course]}
	}
	held, err := pl.heldRuns(ctx, f)
	if err != nil {
		return err
	}
	for r := range f.runs {
		if held[r] {
			in.Runs = append(in.Runs, history.Run{Course: f.runs[r].course - 1, Day: f.runs[r].day, State: history.SheetLoaded})
		}
	}
	in.Runs = append(in.Runs, missing...)
	openings, err := pl.openings(ctx, f, p, ds)
	if err != nil {
		return err
	}
	in.Counts, in.Bests, in.Volunteers = openings.counts, openings.bests, openings.volunteers
	out.problems = openings.problems
	rules := history.DefaultRules()
	rules.Milestones = nil
	for _, m := range pl.Settings.Milestones {
		rules.Milestones = append(rules.Milestones, int32(m))
	}
	out.history, err = history.Compute(ctx, in, rules, pl.workers())
	if err != nil {
		return fmt.Errorf("histories: %w", err)
	}
	return nil
}

func nan() float64 { return math.NaN() }
