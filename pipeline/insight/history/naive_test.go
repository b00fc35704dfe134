package history

import (
	"context"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"lapwing/pipeline/unit"
)

// randomInput makes untidy histories: several runs a day with and without
// start order, all parts, openings, gaps, missing sheets.
func randomInput(seed uint64, runners, courses int) *Input {
	rng := rand.New(rand.NewPCG(seed, 1))
	in := &Input{}
	begin := on(2024, 11, 1)
	const weeks = 70
	for c := range courses {
		in.Courses = append(in.Courses, Course{Complete: rng.IntN(4) > 0, CompleteFrom: begin + unit.Day(rng.IntN(60)), Began: rng.IntN(3) == 0, Elsewhere: rng.IntN(5) == 0})
		for w := range weeks {
			state := SheetLoaded
			switch rng.IntN(14) {
			case 0:
				state = NotHeld
			case 1:
				if rng.IntN(6) == 0 {
					state = SheetMissing
				}
			}
			in.Runs = append(in.Runs, Run{int32(c), begin + unit.Day(7*w+c%3), state})
		}
	}
	for r := range int32(runners) {
		if rng.IntN(4) == 0 {
			asOf := unit.Day(0)
			if rng.IntN(3) == 0 {
				asOf = begin + unit.Day(rng.IntN(100))
			}
			for range 1 + rng.IntN(2) {
				in.Counts = append(in.Counts, Count{r, int32(rng.IntN(courses+1) - 1), int32(rng.IntN(12)), asOf})
			}
		}
		if rng.IntN(4) == 0 {
			day := unit.Day(0)
			for range 1 + rng.IntN(3) {
				as := []Part{Runner, Runner, Walker, Buggy}[rng.IntN(4)]
				course := int32(rng.IntN(courses+1) - 1)
				in.Bests = append(in.Bests, Best{r, course, distance(max(0, course)), int32(1500 + rng.IntN(60)), day, as})
				day = max(day, begin) + unit.Day(rng.IntN(90))
			}
		}
		type res struct {
			day           unit.Day
			start, course int32
		}
		var list []res
		home := rng.IntN(courses)
		for w := range weeks {
			if rng.IntN(12) == 0 {
				in.Volunteers = append(in.Volunteers, Volunteer{r, begin + unit.Day(7*w+rng.IntN(7))})
			}
			for range rng.IntN(8) / 3 {
				c := home
				if rng.IntN(3) == 0 {
					c = rng.IntN(courses)
				}
				list = append(list, res{begin + unit.Day(7*w+c%3), int32(rng.IntN(3)), int32(c)})
			}
		}
		slices.SortStableFunc(list, func(a, b res) int {
			if a.day != b.day {
				return int(a.day - b.day)
			}
			return int(a.start - b.start)
		})
		for _, x := range list {
			in.Runner, in.Course, in.Day, in.Start = append(in.Runner, r), append(in.Course, x.course), append(in.Day, x.day), append(in.Start, x.start)
			in.TimeS = append(in.TimeS, []int32{0, int32(1480 + rng.IntN(60)), int32(1450 + rng.IntN(90)), int32(1500 + rng.IntN(30))}[rng.IntN(4)])
			in.DistanceM = append(in.DistanceM, distance(x.course))
			in.Flags = append(in.Flags, []Flag{both, both, both, CountsRun, 0, both | SaysNewcomer, both | SaysFirstHere}[rng.IntN(7)])
			in.Part = append(in.Part, []Part{Runner, Runner, Runner, Walker, Pacer, Buggy, Dog}[rng.IntN(7)])
		}
	}
	return in
}

func distance(course int32) int32 { return []int32{5000, 5000, 3000}[course%3] }

// The definitions again, the slow way: each result looks back over all earlier
// ones of its runner, nothing is carried along.
func naive(in *Input, rules Rules) *Output {
	n := len(in.Runner)
	out := newOutput(n)
	counted := func(i int) bool { return in.Flags[i]&CountsRun != 0 }
	timed := func(i int) bool {
		return in.Flags[i]&CountsTime != 0 && in.TimeS[i] > 0 && in.Part[i].class() != noBests
	}
	week := func(d unit.Day) int { y, w := d.ISOWeek(); return y*100 + w }
	state := func(c int32, w int, s RunState) bool {
		for _, r := range in.Runs {
			if r.Course == c && r.State == s && week(r.Day) == w {
				return true
			}
		}
		return false
	}
	// complete tells whether somebody first seen on course c can be told new.
	complete := func(c int, day unit.Day) bool {
		k := in.Courses[c]
		if !k.Complete || day < k.CompleteFrom {
			return false
		}
		for _, r := range in.Runs {
			if int(r.Course) == c && r.State == SheetMissing && r.Day >= k.CompleteFrom && r.Day < day {
				return false
			}
		}
		return true
	}
	anywhere := func(day unit.Day) bool {
		ok := false
		for c, k := range in.Courses {
			if k.Elsewhere {
				continue
			}
			ok = true
			first := slices.MinFunc(slices.DeleteFunc(slices.Clone(in.Runs), func(r Run) bool { return int(r.Course) != c }),
				func(a, b Run) int { return int(a.Day - b.Day) }).Day
			if !k.Complete {
				return false
			}
			if day < k.CompleteFrom && k.CompleteFrom <= first {
				continue // before the course's first run nobody ran there
			}
			if !complete(c, day) {
				return false
			}
		}
		return ok
	}
	for i := range n {
		r := in.Runner[i]
		first := slices.Index(in.Runner, r)
		end := first
		for end < n && in.Runner[end] == r {
			end++
		}
		var all, named, here, loaded int32
		var asOf unit.Day
		for _, c := range in.Counts {
			if c.Runner != r {
				continue
			}
			asOf = c.AsOf
			switch c.Course {
			case AnyCourse:
				all = max(all, c.Count)
			default:
				named += c.Count
			}
			if c.Course == in.Course[i] {
				here += c.Count
			}
		}
		opened := max(all, named)
		var before, beforeHere, last int32 = 0, 0, -1
		for k := first; k < end; k++ {
			if !counted(k) {
				continue
			}
			if in.Day[k] < asOf && opened > 0 {
				loaded++
			}
			if k < i {
				before++
				last = int32(k)
				if in.Course[k] == in.Course[i] {
					beforeHere++
				}
			}
		}
		// Bests, same set of the day: which results is i compared with?
		for _, kind := range []struct {
			same  func(k int) bool
			open  func(b Best) bool
			mark  Mark
			prev  []int32
			known bool
		}{
			{func(k int) bool { return in.DistanceM[k] == in.DistanceM[i] }, func(b Best) bool { return b.DistanceM == in.DistanceM[i] }, PB, out.PreviousBestS, false},
			{func(k int) bool { return in.Course[k] == in.Course[i] }, func(b Best) bool { return b.Course == in.Course[i] }, CourseBest, out.PreviousCourseBestS, false},
		} {
			if !timed(i) {
				continue
			}
			// best before result k of the set, or 0; and whether k is compared at all
			judge := func(k int) (prev int32, compared bool) {
				var set []int
				for l := first; l < end; l++ {
					if in.Day[l] == in.Day[k] && timed(l) && kind.same(l) && in.Part[l].class() == in.Part[k].class() {
						set = append(set, l)
					}
				}
				ordered := true
				for x, l := range set {
					if len(set) > 1 && in.Start[l] == 0 || x > 0 && in.Start[l] == in.Start[set[x-1]] {
						ordered = false
					}
				}
				if !ordered {
					for _, l := range set {
						if in.TimeS[l] < in.TimeS[k] || in.TimeS[l] == in.TimeS[k] && l < k {
							return 0, false
						}
					}
				}
				for l := first; l < end; l++ {
					if timed(l) && kind.same(l) && in.Part[l].class() == in.Part[k].class() &&
						(in.Day[l] < in.Day[k] || ordered && in.Day[l] == in.Day[k] && l < k) && (prev == 0 || in.TimeS[l] < prev) {
						prev = in.TimeS[l]
					}
				}
				for _, b := range in.Bests {
					if b.Runner == r && b.As.class() == in.Part[k].class() && kind.open(b) && (b.Day == 0 || b.Day < in.Day[k]) && (prev == 0 || b.TimeS < prev) {
						prev = b.TimeS
					}
				}
				return prev, true
			}
			prev, compared := judge(i)
			if !compared {
				continue
			}
			kind.prev[i] = prev
			if prev == 0 || in.TimeS[i] >= prev {
				continue
			}
			out.Mark[i] |= kind.mark
			if kind.mark == PB {
				for k := i; k >= first; k-- {
					if !timed(k) || !kind.same(k) || in.Part[k].class() != in.Part[i].class() {
						continue
					}
					p, c := judge(k)
					if !c {
						continue
					}
					if p == 0 || in.TimeS[k] >= p {
						break
					}
					out.PBStreak[i]++
				}
			}
		}
		out.DaysSince[i] = -1
		if !counted(i) {
			continue
		}
		if last >= 0 {
			out.DaysSince[i] = int32(in.Day[i] - in.Day[last])
		}
		if opened == 0 || in.Day[i] >= asOf || loaded >= opened {
			out.RunsTotal[i] = max(opened-loaded, 0) + before + 1
			if slices.Contains(rules.Milestones, out.RunsTotal[i]) {
				out.Milestone[i] = out.RunsTotal[i]
			}
		}
		// Newcomer and first here.
		switch {
		case before > 0, opened > 0 && in.Day[i] >= asOf:
			out.Newcomer[i] = No
		case opened > loaded:
			out.Newcomer[i] = Unknown
		case in.Flags[i]&SaysNewcomer != 0 || anywhere(in.Day[i]):
			out.Newcomer[i] = Yes
		}
		if before == 0 {
			out.Mark[i] |= FirstSeen
		}
		switch {
		case beforeHere > 0, here > 0 && in.Day[i] >= asOf:
			out.FirstHere[i] = No
		case here > 0:
		case out.Newcomer[i] == Yes, in.Flags[i]&SaysFirstHere != 0:
			out.FirstHere[i] = Yes
		case complete(int(in.Course[i]), in.Day[i]) && (opened == named || in.Courses[in.Course[i]].Began):
			out.FirstHere[i] = Yes
		}
		switch {
		case out.Newcomer[i] == Yes || out.FirstHere[i] == No:
			out.Visitor[i] = No
		case out.Newcomer[i] == No && out.FirstHere[i] == Yes:
			out.Visitor[i] = Yes
		}
		// Attendance: walk back week by week from this finish.
		finished := func(w int, upTo int) bool {
			for k := first; k <= upTo; k++ {
				if counted(k) && week(in.Day[k]) == w {
					return true
				}
			}
			return false
		}
		begin := in.Day[i]
		for k := first; k < i; k++ {
			if counted(k) {
				begin = in.Day[k]
				break
			}
		}
		for day := in.Day[i]; day > begin-7; day -= 7 {
			w := week(day)
			if finished(w, i) {
				out.Attendance[i]++
				for k := i; k >= first; k-- {
					if counted(k) && week(in.Day[k]) == w {
						out.AttendanceSince[i] = in.Day[k]
					}
				}
				continue
			}
			if slices.ContainsFunc(in.Volunteers, func(v Volunteer) bool { return v.Runner == r && week(v.Day) == w }) {
				continue
			}
			monday := day
			for monday.Weekday() != 1 {
				monday--
			}
			times := map[int32]int{}
			usual := map[int32]bool{}
			var lastCourse int32
			for k := first; k <= i; k++ {
				if counted(k) && in.Day[k] < monday {
					lastCourse = in.Course[k]
					if in.Day[k] >= monday-unit.Day(7*rules.UsualWeeks) {
						if times[in.Course[k]]++; times[in.Course[k]] >= rules.UsualTimes {
							usual[in.Course[k]] = true
						}
					}
				}
			}
			if len(usual) == 0 {
				usual[lastCourse] = true
			}
			held, missing := false, false
			for c := range usual {
				held = held || state(c, w, SheetLoaded)
				missing = missing || state(c, w, SheetMissing)
			}
			if held && !missing {
				break
			}
		}
	}
	return out
}

func TestAgreesWithTheDefinitionsTheSlowWay(t *testing.T) {
	var seen struct{ pb, courseBest, newcomer, visitor, unknown, milestone, longest int }
	for seed := range uint64(24) {
		in, rules := randomInput(seed, 12, 4), DefaultRules()
		if seed%4 == 3 { // other rules: once is usual
			rules = Rules{Milestones: []int32{1, 2, 7, 50}, UsualWeeks: 5, UsualTimes: 1}
		}
		got, err := Compute(context.Background(), in, rules, 1)
		if err != nil {
			t.Fatal(err)
		}
		want := naive(in, rules)
		for i := range got.Mark {
			got.Mark[i] &^= PBSinceSheets | CourseBestSinceSheets
		}
		gv, wv := reflect.ValueOf(*got), reflect.ValueOf(*want)
		for f := range gv.NumField() {
			if gv.Type().Field(f).Name == "Runners" {
				continue // TestSummary
			}
			for i := range in.Runner {
				if g, w := gv.Field(f).Index(i).Interface(), wv.Field(f).Index(i).Interface(); g != w {
					t.Fatalf("seed %d, result %d (runner %d, %v, course %d), %s: %v, the slow way %v", seed, i, in.Runner[i], in.Day[i], in.Course[i], gv.Type().Field(f).Name, g, w)
				}
			}
		}
		for i := range got.Mark {
			if got.Mark[i]&PB != 0 {
				seen.pb++
			}
			if got.Mark[i]&CourseBest != 0 {
				seen.courseBest++
			}
			if got.Newcomer[i] == Yes {
				seen.newcomer++
			}
			if got.Visitor[i] == Yes {
				seen.visitor++
			}
			if got.FirstHere[i] == Unknown {
				seen.unknown++
			}
			if got.Milestone[i] > 0 {
				seen.milestone++
			}
			seen.longest = max(seen.longest, int(got.Attendance[i]))
		}
	}
	t.Logf("%+v", seen)
	if seen.pb < 100 || seen.courseBest < 100 || seen.newcomer < 20 || seen.visitor < 20 || seen.unknown < 20 || seen.milestone < 100 || seen.longest < 8 {
		t.Errorf("too little happened to compare: %+v", seen)
	}
}

func TestThreadsDoNotMatter(t *testing.T) {
	in := randomInput(99, 60, 5)
	want := compute(t, in)
	for _, threads := range []int{2, 3, 8, 200} {
		got, err := Compute(context.Background(), in, DefaultRules(), threads)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%d threads give other figures than one", threads)
		}
	}
}

// 10 M results on 1 700 courses over two years and a half, by people who come
// every other week to once a season.
func BenchmarkCompute10M(b *testing.B) {
	const results, courses = 10_000_000, 1_700
	rng := rand.New(rand.NewPCG(5, 7))
	in := &Input{Courses: make([]Course, courses)}
	const weeks = 130
	begin := on(2023, 7, 1)
	for c := range courses {
		in.Courses[c] = Course{Complete: true, CompleteFrom: begin}
		for w := range weeks {
			if rng.IntN(30) > 0 {
				in.Runs = append(in.Runs, Run{int32(c), begin + unit.Day(7*w), SheetLoaded})
			} else {
				in.Runs = append(in.Runs, Run{int32(c), begin + unit.Day(7*w), NotHeld})
			}
		}
	}
	in.Runner, in.Course, in.Day = make([]int32, 0, results), make([]int32, 0, results), make([]unit.Day, 0, results)
	for r := int32(0); len(in.Runner) < results; r++ {
		home, every := int32(rng.IntN(courses)), 1+rng.ExpFloat64()*8
		for w := rng.Float64() * every; w < weeks && len(in.Runner) < results; w += max(1, rng.ExpFloat64()*every) {
			c := home
			if rng.IntN(5) == 0 {
				c = int32(rng.IntN(courses))
			}
			in.Runner, in.Course, in.Day = append(in.Runner, r), append(in.Course, c), append(in.Day, begin+unit.Day(7*int(w)))
		}
	}
	n := len(in.Runner)
	in.Start, in.TimeS, in.DistanceM, in.Flags, in.Part = make([]int32, n), make([]int32, n), make([]int32, n), make([]Flag, n), make([]Part, n)
	for i := range n {
		in.TimeS[i], in.DistanceM[i], in.Flags[i] = int32(1200+rng.IntN(900)), 5000, both
	}
	for _, threads := range []int{1, 2} {
		b.Run(map[int]string{1: "1thread", 2: "2threads"}[threads], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Compute(context.Background(), in, DefaultRules(), threads); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(n)/1e6*float64(b.N)/b.Elapsed().Seconds(), "M-results/s")
			b.ReportMetric(float64(in.Runner[n-1]+1), "runners")
		})
	}
}
