package history

import (
	"context"
	"fmt"
	"slices"
	"sort"
	"sync"

	"lapwing/pipeline/unit"
)

// Compute works out the figures of every result. It costs one pass over the
// columns, shared out by runner over the given number of threads; the outcome
// does not depend on that number. An input that is out of order or refers to
// an unknown course is an error that names the first such result.
func Compute(ctx context.Context, in *Input, rules Rules, threads int) (*Output, error) {
	if err := in.check(rules); err != nil {
		return nil, err
	}
	n := len(in.Runner)
	out := newOutput(n)
	shared := worker{in: in, out: out, rules: rules, cal: newCalendar(len(in.Courses), in.Runs)}
	shared.here, shared.anywhere = completeness(in.Courses, in.Runs)
	shared.asOfWeek = in.asOf().Week()

	cuts := in.cut(max(1, threads))
	errs := make([]error, len(cuts)-1)
	parts := make([][]Summary, len(errs))
	var wg sync.WaitGroup
	for t := range errs {
		wg.Go(func() {
			w := shared
			w.courses = make([]onCourse, len(in.Courses)*int(classes))
			w.seen = make([]seen, len(in.Courses))
			errs[t] = w.work(ctx, cuts[t], cuts[t+1])
			parts[t] = w.summaries
		})
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	out.Runners = slices.Concat(parts...)
	return out, nil
}

func (in *Input) asOf() unit.Day {
	d := in.AsOf
	if d == 0 {
		for _, r := range in.Runs {
			d = max(d, r.Day)
		}
	}
	return d
}

// cut divides the results into parts of about equal size, none of which
// splits a runner.
func (in *Input) cut(parts int) []int {
	n := len(in.Runner)
	cuts := []int{0}
	for p := 1; p < parts; p++ {
		at := max(n*p/parts, cuts[len(cuts)-1])
		for at > 0 && at < n && in.Runner[at] == in.Runner[at-1] {
			at++
		}
		cuts = append(cuts, at)
	}
	return append(cuts, n)
}

// worker holds what one thread keeps of the runner in hand.
type worker struct {
	in       *Input
	out      *Output
	rules    Rules
	cal      *calendar
	here     []stretch
	anywhere stretch

	counts      []Count // opening balances and volunteering of the runners to come
	bests       []Best
	volunteers  []Volunteer
	volunteered []Volunteer // of the runner in hand

	visit        int32 // number of the runner in hand, from 1
	begin        int   // first result of the runner
	open         opening
	loadedBefore int32 // counted finishes in the sheets from before the opening count's day
	total        int32
	lastFinish   int // last counted finish, -1 for none
	lastWeek     int
	streak       int32
	streakSince  unit.Day // its first finish
	isNew        Tri      // the verdict on their first counted finish
	distances    []atDistance
	courses      []onCourse // by course and class
	seen         []seen     // by course
	recent       []finishes
	asOfWeek     int
	summaries    []Summary
}

type seen struct {
	visit     int32
	firstHere Tri // the verdict on the first counted finish on the course
}

func (w *worker) work(ctx context.Context, from, to int) error {
	if from == to {
		return nil
	}
	in, first := w.in, w.in.Runner[from]
	w.counts = in.Counts[sort.Search(len(in.Counts), func(k int) bool { return in.Counts[k].Runner >= first }):]
	allBests := in.Bests[sort.Search(len(in.Bests), func(k int) bool { return in.Bests[k].Runner >= first }):]
	w.volunteers = in.Volunteers[sort.Search(len(in.Volunteers), func(k int) bool { return in.Volunteers[k].Runner >= first }):]
	for begin := from; begin < to; {
		if w.visit++; w.visit%4096 == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		end := begin
		for end < to && in.Runner[end] == in.Runner[begin] {
			if err := in.checkRow(end); err != nil {
				return err
			}
			if in.Flags[end]&CountsRun != 0 && !w.cal.known(in.Course[end], in.Day[end]) {
				return fmt.Errorf("history: result %d: no run of course %d is listed in the week of %v", end, in.Course[end], in.Day[end])
			}
			end++
		}
		runner := in.Runner[begin]
		var counts []Count
		counts, w.counts = take(w.counts, func(c Count) int32 { return c.Runner }, runner)
		w.volunteered, w.volunteers = take(w.volunteers, func(v Volunteer) int32 { return v.Runner }, runner)
		w.bests, allBests = take(allBests, func(b Best) int32 { return b.Runner }, runner)
		w.open = openingOf(counts)
		w.runner(begin, end)
		begin = end
	}
	return ctx.Err()
}

// take splits off the elements of one runner from a list sorted by runner,
// leaving out those of runners without results.
func take[T any](list []T, of func(T) int32, runner int32) (its, rest []T) {
	a := 0
	for a < len(list) && of(list[a]) < runner {
		a++
	}
	b := a
	for b < len(list) && of(list[b]) == runner {
		b++
	}
	return list[a:b], list[b:]
}

// runner works through the results of one runner.
func (w *worker) runner(begin, end int) {
	in := w.in
	w.begin, w.total, w.lastFinish, w.streak, w.isNew = begin, 0, -1, 0, Unknown
	w.distances = w.distances[:0]
	w.loadedBefore = 0
	if w.open.total > 0 {
		for k := begin; k < end && in.Day[k] < w.open.asOf; k++ {
			w.loadedBefore += int32(in.Flags[k] & CountsRun)
		}
		w.total = max(0, w.open.total-w.loadedBefore)
	}
	for i := begin; i < end; {
		j := i
		for j < end && in.Day[j] == in.Day[i] {
			w.count(j)
			j++
		}
		w.dayBests(i, j)
		i = j
	}
	w.summarise(end)
}

// summarise closes a runner whose results end before index end.
func (w *worker) summarise(end int) {
	s := Summary{Runner: w.in.Runner[w.begin], RunsTotal: w.total}
	for i := w.begin; i < end; i++ {
		s.AttendanceBest = max(s.AttendanceBest, w.out.Attendance[i])
		s.PBStreakBest = max(s.PBStreakBest, w.out.PBStreak[i])
		if s.First == 0 && w.in.Flags[i]&CountsRun != 0 {
			s.First = w.in.Day[i]
		}
	}
	if w.lastFinish >= 0 {
		s.Last = w.in.Day[w.lastFinish]
		s.AttendanceNow = w.streak
		for week := w.lastWeek + 1; week < w.asOfWeek; week++ {
			if w.missed(week, end) {
				s.AttendanceNow = 0
				break
			}
		}
	}
	w.summaries = append(w.summaries, s)
}

// count takes a result for everything that a finish counts for.
func (w *worker) count(i int) {
	in, out := w.in, w.out
	out.DaysSince[i] = -1
	if in.Flags[i]&CountsRun == 0 {
		return
	}
	course, day := in.Course[i], in.Day[i]
	w.total++
	if w.open.total == 0 || day >= w.open.asOf || w.open.total <= w.loadedBefore {
		out.RunsTotal[i] = w.total
		out.Milestone[i] = w.milestone()
	}
	out.Newcomer[i] = No
	if w.lastFinish < 0 {
		out.Mark[i] |= FirstSeen
		w.isNew = w.newcomer(i)
		out.Newcomer[i] = w.isNew
	} else {
		out.DaysSince[i] = int32(day - in.Day[w.lastFinish])
	}
	if s := &w.seen[course]; s.visit == w.visit {
		out.FirstHere[i] = No
	} else {
		*s = seen{w.visit, w.firstHere(i, out.Newcomer[i])}
		out.FirstHere[i] = s.firstHere
	}
	out.Visitor[i] = visitor(out.Newcomer[i], out.FirstHere[i])
	out.Attendance[i], out.AttendanceSince[i] = w.attend(i), w.streakSince
	w.lastFinish = i
}

func (w *worker) milestone() int32 {
	for _, m := range w.rules.Milestones {
		if m >= w.total {
			if m == w.total {
				return m
			}
			break
		}
	}
	return 0
}
