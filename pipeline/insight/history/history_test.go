package history

import (
	"context"
	"reflect"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// line is one result of a hand-written history.
type line struct {
	day    unit.Day
	timeS  int32
	course int32
	start  int32
	part   Part
	flags  Flag // 0 = counts for both
}

const both = CountsRun | CountsTime

func on(year, month, day int) unit.Day { return unit.NewDay(year, month, day) }

func clock(m, s int32) int32 { return m*60 + s }

// of makes the input of one runner, 7, over 5 km: two courses, every run that
// a result stands on listed.
func of(lines ...line) *Input {
	in := &Input{Courses: make([]Course, 3)}
	for _, l := range lines {
		if l.flags == 0 {
			l.flags = both
		}
		in.Runner = append(in.Runner, 7)
		in.Course = append(in.Course, l.course)
		in.Day = append(in.Day, l.day)
		in.Start = append(in.Start, l.start)
		in.TimeS = append(in.TimeS, l.timeS)
		in.DistanceM = append(in.DistanceM, 5000)
		in.Flags = append(in.Flags, l.flags)
		in.Part = append(in.Part, l.part)
		in.Runs = append(in.Runs, Run{l.course, l.day, SheetLoaded})
	}
	return in
}

func compute(t *testing.T, in *Input) *Output {
	t.Helper()
	out, err := Compute(context.Background(), in, DefaultRules(), 1)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func marks(out *Output, m Mark) []bool {
	var b []bool
	for _, x := range out.Mark {
		b = append(b, x&m != 0)
	}
	return b
}

func same[T any](t *testing.T, what string, got, want T) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Best 25:00; 24:50 and 24:40 on 1 Jan, starts unknown: one PB, 24:40, 20 s.
func TestTwoRunsOnOneDay(t *testing.T) {
	lines := []line{{day: on(2025, 12, 20), timeS: clock(25, 0)},
		{day: on(2026, 1, 1), timeS: clock(24, 50)}, {day: on(2026, 1, 1), timeS: clock(24, 40), course: 1}}
	out := compute(t, of(lines...))
	same(t, "PB, starts unknown", marks(out, PB), []bool{false, false, true})
	same(t, "margin", out.PreviousBestS[2]-lines[2].timeS, 20)
	same(t, "streak", out.PBStreak, []int32{0, 0, 1})

	lines[1].start, lines[2].start = 1, 2
	out = compute(t, of(lines...))
	same(t, "PB, starts known", marks(out, PB), []bool{false, true, true})
	same(t, "previous bests", out.PreviousBestS, []int32{0, 1500, 1490})
	same(t, "streak", out.PBStreak, []int32{0, 1, 2})

	// Both at the same minute can't be: no order.
	lines[1].start, lines[2].start = 1, 1
	same(t, "PB, same start", marks(compute(t, of(lines...)), PB), []bool{false, false, true})

	// The slower of an unordered day does not end a streak either.
	lines = append(lines[:1:1], line{day: on(2026, 1, 1), timeS: clock(24, 40)}, line{day: on(2026, 1, 1), timeS: clock(26, 0), course: 1},
		line{day: on(2026, 1, 3), timeS: clock(24, 30)})
	same(t, "streak over an unordered day", compute(t, of(lines...)).PBStreak, []int32{0, 1, 0, 2})
}

// The first day is no PB, whatever its order; with an order, the second run of
// the day may be.
func TestFirstDay(t *testing.T) {
	lines := []line{{day: on(2026, 1, 1), timeS: 1500}, {day: on(2026, 1, 1), timeS: 1490, course: 1}}
	same(t, "no order", marks(compute(t, of(lines...)), PB), []bool{false, false})
	lines[0].start, lines[1].start = 540, 630
	out := compute(t, of(lines...))
	same(t, "in order", marks(out, PB), []bool{false, true})
	same(t, "course bests", marks(out, CourseBest), []bool{false, false})
}

// 30:10, 29:40, 35:00 as pacer, 29:02, 29:02, 28:50: the 30:10 is a first
// result, then 1, skipped, 2, ended, 1; best streak 2.
func TestStreakOfBests(t *testing.T) {
	d := on(2026, 1, 3)
	out := compute(t, of(line{day: d, timeS: clock(30, 10)}, line{day: d + 7, timeS: clock(29, 40)},
		line{day: d + 14, timeS: clock(35, 0), part: Pacer}, line{day: d + 21, timeS: clock(29, 2)},
		line{day: d + 28, timeS: clock(29, 2)}, line{day: d + 35, timeS: clock(28, 50)}))
	same(t, "PB", marks(out, PB), []bool{false, true, false, true, false, true})
	same(t, "streak", out.PBStreak, []int32{0, 1, 0, 2, 0, 1})
	same(t, "runs", out.RunsTotal, []int32{1, 2, 3, 4, 5, 6}) // the pacer's run counts
	same(t, "before", out.PreviousBestS, []int32{0, 1810, 0, 1780, 1742, 1742})
}

// A walk and a guided run stand in the runner's list, a buggy has its own, and
// each kind of wheels too.
func TestWhatBestsAreComparedWith(t *testing.T) {
	d := on(2026, 1, 3)
	out := compute(t, of(line{day: d, timeS: 2400, part: Walker}, line{day: d + 7, timeS: 1700, part: Buggy},
		line{day: d + 14, timeS: 2300, part: Guided}, line{day: d + 21, timeS: 1690, part: Buggy},
		line{day: d + 28, timeS: 900, part: RacingWheelchair}, line{day: d + 35, timeS: 890, part: DayWheelchair},
		line{day: d + 42, timeS: 880, part: RacingWheelchair}, line{day: d + 49, timeS: 1600, part: Dog},
		line{day: d + 56, timeS: 1000, part: WithChild}, line{day: d + 63, timeS: 2290}))
	same(t, "PB", marks(out, PB), []bool{false, false, true, true, false, false, true, false, false, true})
	same(t, "before", out.PreviousBestS, []int32{0, 0, 2400, 1700, 0, 0, 900, 0, 0, 2300})
}

// A time that does not count is no best and no yardstick; an untimed finish
// counts as a run.
func TestCountsForTimes(t *testing.T) {
	d := on(2026, 1, 3)
	out := compute(t, of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1200, flags: CountsRun},
		line{day: d + 14, flags: CountsRun}, line{day: d + 21, timeS: 1490}, line{day: d + 28, timeS: 1000, flags: CountsTime}))
	same(t, "PB", marks(out, PB), []bool{false, false, false, true, true})
	same(t, "runs", out.RunsTotal, []int32{1, 2, 3, 4, 0})
	same(t, "days", out.DaysSince, []int32{-1, 7, 7, 7, -1})
	same(t, "attendance", out.Attendance, []int32{1, 2, 3, 4, 0})
}

// Course bests and bests at another distance are kept apart.
func TestCoursesAndDistances(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1600, course: 1}, line{day: d + 14, timeS: 1550, course: 1},
		line{day: d + 21, timeS: 900, course: 2}, line{day: d + 28, timeS: 1490})
	in.DistanceM[3] = 3000
	out := compute(t, in)
	same(t, "PB", marks(out, PB), []bool{false, false, false, false, true})
	same(t, "course best", marks(out, CourseBest), []bool{false, false, true, false, true})
	same(t, "before", out.PreviousBestS, []int32{0, 1500, 1500, 0, 1500})
	same(t, "before on the course", out.PreviousCourseBestS, []int32{0, 0, 1600, 0, 1500})
}

// The opening balance counts as an earlier best from the day after it.
func TestOpeningBests(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1490}, line{day: d + 14, timeS: 1480, course: 1}, line{day: d + 21, timeS: 1400})
	in.Bests = []Best{{Runner: 3, Course: AnyCourse, DistanceM: 5000, TimeS: 900}, {Runner: 7, Course: 0, DistanceM: 5000, TimeS: 1495},
		{Runner: 7, Course: AnyCourse, DistanceM: 5000, TimeS: 1450, Day: d + 14}, {Runner: 9, Course: AnyCourse, DistanceM: 5000, TimeS: 900}}
	out := compute(t, in)
	same(t, "PB", marks(out, PB), []bool{false, true, true, true})
	same(t, "before", out.PreviousBestS, []int32{1495, 1495, 1490, 1450})
	same(t, "course best", marks(out, CourseBest), []bool{false, true, false, true})
	same(t, "since sheets", marks(out, PBSinceSheets), []bool{false, false, false, false})

	in.Bests = nil
	same(t, "since sheets, no opening", marks(compute(t, in), PBSinceSheets), []bool{false, true, true, true})
	same(t, "on the course", marks(compute(t, in), CourseBestSinceSheets), []bool{false, true, false, true})
	for c := range 2 {
		in.Courses[c] = Course{Complete: true, CompleteFrom: d}
	}
	in.Runs = append(in.Runs, Run{1, d, SheetLoaded})
	same(t, "a newcomer's", marks(compute(t, in), PBSinceSheets), make([]bool, 4))
	same(t, "on the course", marks(compute(t, in), CourseBestSinceSheets), make([]bool, 4))
}

// 20 Dec ran, 27 Dec cancelled, Thu 1 and Sat 3 Jan 2026 ran (one ISO week),
// 10 Jan volunteered, 17 Jan ran: 3.
func TestAttendanceStreak(t *testing.T) {
	in := of(line{day: on(2025, 12, 20), timeS: 1500}, line{day: on(2026, 1, 1), timeS: 1500},
		line{day: on(2026, 1, 3), timeS: 1500}, line{day: on(2026, 1, 17), timeS: 1500})
	in.Runs = append(in.Runs, Run{0, on(2025, 12, 27), NotHeld}, Run{0, on(2026, 1, 10), SheetLoaded})
	in.Volunteers = []Volunteer{{6, on(2026, 1, 10)}, {7, on(2026, 1, 10)}, {8, on(2026, 1, 10)}}
	same(t, "streak", compute(t, in).Attendance, []int32{1, 2, 2, 3})
	since := on(2025, 12, 20)
	same(t, "since", compute(t, in).AttendanceSince, []unit.Day{since, since, since, since})

	in.Volunteers = nil
	same(t, "absent on 10 Jan", compute(t, in).Attendance, []int32{1, 2, 2, 1})
	same(t, "since 17 Jan", compute(t, in).AttendanceSince, []unit.Day{since, since, since, on(2026, 1, 17)})

	in.Runs[len(in.Runs)-1].State = SheetMissing
	same(t, "sheet of 10 Jan missing", compute(t, in).Attendance, []int32{1, 2, 2, 3})

	in.Runs = append(in.Runs[:4:4], Run{0, on(2025, 12, 27), SheetLoaded}, Run{0, on(2026, 1, 10), SheetMissing})
	same(t, "27 Dec held", compute(t, in).Attendance, []int32{1, 1, 1, 2})
}

// Course 0 is usual (twice in 26 weeks), course 1 was visited once, last: its
// being held does not matter while course 0 has no run.
func TestUsualCourse(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1500}, line{day: d + 14, timeS: 1500, course: 1},
		line{day: d + 28, timeS: 1500})
	in.Runs = append(in.Runs, Run{1, d + 21, SheetLoaded})
	same(t, "only the visited course held", compute(t, in).Attendance, []int32{1, 2, 3, 4})
	in.Runs = append(in.Runs, Run{0, d + 21, SheetLoaded})
	same(t, "the usual course held", compute(t, in).Attendance, []int32{1, 2, 3, 1})

	// No usual course yet: the last one counts.
	in = of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1500, course: 1}, line{day: d + 21, timeS: 1500})
	in.Runs = append(in.Runs, Run{0, d + 14, SheetLoaded})
	same(t, "the last course not held", compute(t, in).Attendance, []int32{1, 2, 3})
	in.Runs = append(in.Runs, Run{1, d + 14, SheetLoaded})
	same(t, "the last course held", compute(t, in).Attendance, []int32{1, 2, 1})

	// Two usual courses: one held, the other's sheet missing: not known, so neutral.
	in = of(line{day: d, timeS: 1500}, line{day: d + 1, timeS: 1500, course: 1}, line{day: d + 7, timeS: 1500},
		line{day: d + 8, timeS: 1500, course: 1}, line{day: d + 21, timeS: 1500})
	in.Runs = append(in.Runs, Run{0, d + 14, SheetLoaded}, Run{1, d + 15, SheetMissing})
	same(t, "one missing", compute(t, in).Attendance, []int32{1, 1, 2, 2, 3})
	in.Runs[len(in.Runs)-1].State = NotHeld
	same(t, "one held, one not", compute(t, in).Attendance, []int32{1, 1, 2, 2, 1})
}

// Where everybody stands: the streak goes on while no usual course's week is
// missed, and the week of the day itself is not over.
func TestSummary(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1490}, line{day: d + 14, timeS: 1480},
		line{day: d + 28, timeS: 1470}, line{day: d + 35, timeS: 1480})
	in.Counts = []Count{{Runner: 7, Course: AnyCourse, Count: 4}}
	in.Runs = append(in.Runs, Run{0, d + 21, SheetLoaded})
	want := Summary{Runner: 7, RunsTotal: 9, AttendanceNow: 2, AttendanceBest: 3, PBStreakBest: 3, First: d, Last: d + 35}
	same(t, "at the last run", compute(t, in).Runners, []Summary{want})
	in.Runs = append(in.Runs, Run{0, d + 42, SheetLoaded})
	same(t, "absent on the last day", compute(t, in).Runners, []Summary{want})
	in.AsOf = d + 43
	same(t, "the Sunday after", compute(t, in).Runners, []Summary{want})
	in.AsOf = d + 44
	want.AttendanceNow = 0
	same(t, "the Monday after", compute(t, in).Runners, []Summary{want})
	in.Volunteers = []Volunteer{{7, d + 42}}
	want.AttendanceNow = 2
	same(t, "volunteered", compute(t, in).Runners, []Summary{want})
	for i := range in.Flags {
		in.Flags[i] = 0
	}
	same(t, "nothing counted", compute(t, in).Runners, []Summary{{Runner: 7, RunsTotal: 4}})
}

// A course is usual for 26 weeks: 26 weeks after the first of two finishes it
// still is, in the 27th it is not, and the last course counts instead.
func TestUsualCourseFades(t *testing.T) {
	d := on(2025, 1, 4)
	for weeks, want := range map[int]int32{26: 1, 27: 4} {
		gap := d + unit.Day(7*weeks)
		in := of(line{day: d, timeS: 1500}, line{day: d + 7, timeS: 1500}, line{day: gap - 7, timeS: 1500, course: 1}, line{day: gap + 7, timeS: 1500})
		in.Runs = append(in.Runs, Run{0, gap, SheetLoaded})
		same(t, "streak", compute(t, in).Attendance[3], want)
	}
}

// 98 before, two on 1 Jan: the 100th at the later start.
func TestMilestones(t *testing.T) {
	in := of(line{day: on(2026, 1, 1), timeS: 1600, start: 540}, line{day: on(2026, 1, 1), timeS: 1500, start: 630, course: 1})
	in.Counts = []Count{{Runner: 2, Course: AnyCourse, Count: 5}, {Runner: 7, Course: AnyCourse, Count: 98}}
	out := compute(t, in)
	same(t, "milestone", out.Milestone, []int32{0, 100})
	same(t, "runs", out.RunsTotal, []int32{99, 100})

	// A late claim of an earlier run moves the date.
	in = of(line{day: on(2025, 12, 27), timeS: 1600}, line{day: on(2026, 1, 1), timeS: 1600}, line{day: on(2026, 1, 3), timeS: 1600})
	in.Counts = []Count{{Runner: 7, Course: AnyCourse, Count: 98}}
	same(t, "milestone", compute(t, in).Milestone, []int32{0, 100, 0})

	rules := DefaultRules()
	rules.Milestones = []int32{2}
	in.Counts = nil
	out, err := Compute(context.Background(), in, rules, 1)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "second run", out.Milestone, []int32{0, 2, 0})
}

// A count as of a day holds the sheets' results from before that day: they are
// not added to it, and their own number isn't known.
func TestCountAsOf(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1600}, line{day: d + 7, timeS: 1600}, line{day: d + 14, timeS: 1600})
	in.Counts = []Count{{Runner: 7, Course: AnyCourse, Count: 9, AsOf: d + 10}}
	out := compute(t, in)
	same(t, "runs", out.RunsTotal, []int32{0, 0, 10})
	same(t, "milestone", out.Milestone, []int32{0, 0, 10})
	same(t, "newcomer", out.Newcomer, []Tri{Unknown, No, No})
	// One run more than the sheets hold, counted later: it may lie before the first here.
	in.Counts[0] = Count{Runner: 7, Course: AnyCourse, Count: 1, AsOf: d}
	in.Courses[0] = Course{Complete: true, CompleteFrom: d - 7}
	same(t, "newcomer, one run before", compute(t, in).Newcomer[0], No)
	in.Counts[0].AsOf = d + 1
	same(t, "one run up to that day", compute(t, in).Newcomer[0], Yes)
	in.Flags[0] = CountsTime
	in.Counts[0].AsOf = d + 8
	same(t, "one run up to the next week's", compute(t, in).Newcomer[1], Yes)
	in.Flags[0], in.Courses[0] = both, Course{}
	// A count below what the sheets hold gives way.
	in.Counts[0].AsOf = d + 10
	in.Counts[0].Count = 1
	same(t, "runs", compute(t, in).RunsTotal, []int32{1, 2, 3})
}

// First sheet ever, 150 names: newcomers not known.
func TestFirstSheetEver(t *testing.T) {
	in := &Input{Courses: make([]Course, 1), Runs: []Run{{0, on(2026, 1, 3), SheetLoaded}}}
	for r := range int32(150) {
		one := of(line{day: on(2026, 1, 3), timeS: 1500 + r})
		in.Runner = append(in.Runner, r)
		in.Course, in.Day, in.Start = append(in.Course, 0), append(in.Day, one.Day[0]), append(in.Start, 0)
		in.TimeS, in.DistanceM = append(in.TimeS, one.TimeS[0]), append(in.DistanceM, 5000)
		in.Flags, in.Part = append(in.Flags, both), append(in.Part, Runner)
	}
	out := compute(t, in)
	for i := range out.Newcomer {
		if out.Newcomer[i] != Unknown || out.FirstHere[i] != Unknown || out.Visitor[i] != Unknown || out.Mark[i] != FirstSeen {
			t.Fatalf("result %d: newcomer %v, first here %v, visitor %v, mark %v", i, out.Newcomer[i], out.FirstHere[i], out.Visitor[i], out.Mark[i])
		}
	}
	in.Courses[0] = Course{Complete: true, CompleteFrom: on(2026, 1, 3)}
	for i, v := range compute(t, in).Newcomer {
		if v != Yes {
			t.Fatalf("complete from that day, result %d: %v", i, v)
		}
	}
}

func TestNewcomersAndVisitors(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1600}, line{day: d + 7, timeS: 1600}, line{day: d + 14, timeS: 1600, course: 1})
	in.Runs = append(in.Runs, Run{1, d, SheetLoaded})
	verdicts := func() [3][]Tri {
		out := compute(t, in)
		return [3][]Tri{out.Newcomer, out.FirstHere, out.Visitor}
	}
	whole := Course{Complete: true, CompleteFrom: d}
	in.Courses[0], in.Courses[1] = whole, whole
	same(t, "all complete", verdicts(), [3][]Tri{{Yes, No, No}, {Yes, No, Yes}, {No, No, Yes}})

	in.Courses[1] = Course{}
	same(t, "course 1 begins in the middle", verdicts(), [3][]Tri{{Unknown, No, No}, {Yes, No, Unknown}, {Unknown, No, Unknown}})

	in.Courses[1].Elsewhere = true
	same(t, "course 1 out of the district", verdicts(), [3][]Tri{{Yes, No, No}, {Yes, No, Unknown}, {No, No, Unknown}})

	in.Courses[1] = Course{Complete: true, CompleteFrom: d + 10}
	same(t, "course 1 complete later", verdicts(), [3][]Tri{{Unknown, No, No}, {Yes, No, Yes}, {Unknown, No, Yes}})

	in.Courses[1] = whole
	in.Runs = append(in.Runs, Run{1, d - 7, SheetMissing})
	same(t, "a sheet missing before completeness", verdicts(), [3][]Tri{{Yes, No, No}, {Yes, No, Yes}, {No, No, Yes}})
	in.Runs[len(in.Runs)-1].Day = d + 7
	same(t, "a sheet missing since", verdicts(), [3][]Tri{{Yes, No, No}, {Yes, No, Unknown}, {No, No, Unknown}})
	in.Runs = in.Runs[:len(in.Runs)-1]

	in.Counts = []Count{{Runner: 7, Course: AnyCourse, Count: 4}}
	same(t, "4 runs before, somewhere", verdicts(), [3][]Tri{{No, No, No}, {Unknown, No, Unknown}, {Unknown, No, Unknown}})
	in.Courses[1].Began = true
	same(t, "course 1 began since", verdicts(), [3][]Tri{{No, No, No}, {Unknown, No, Yes}, {Unknown, No, Yes}})
	in.Counts[0].Course = 0
	same(t, "4 runs before on course 0", verdicts(), [3][]Tri{{No, No, No}, {No, No, Yes}, {No, No, Yes}})
	in.Counts = nil

	in.Courses[0], in.Courses[1] = Course{}, Course{}
	in.Flags[0] |= SaysNewcomer
	in.Flags[2] |= SaysFirstHere
	same(t, "the sheet says so", verdicts(), [3][]Tri{{Yes, No, No}, {Yes, No, Yes}, {No, No, Yes}})
	in.Counts = []Count{{Runner: 7, Course: AnyCourse, Count: 4}}
	same(t, "the sheet says so, the count not", verdicts()[0], []Tri{No, No, No})
}

// Of thousands of runners each is gone through.
func TestThousandsOfRunners(t *testing.T) {
	in := &Input{Courses: []Course{{Complete: true}}, Runs: []Run{{0, on(2026, 1, 3), SheetLoaded}}}
	const n = 3 * 4096
	for r := range int32(n) {
		in.Runner, in.Course, in.Day, in.Start = append(in.Runner, r), append(in.Course, 0), append(in.Day, on(2026, 1, 3)), append(in.Start, 0)
		in.TimeS, in.DistanceM, in.Flags, in.Part = append(in.TimeS, 1500), append(in.DistanceM, 5000), append(in.Flags, both), append(in.Part, Runner)
	}
	out := compute(t, in)
	if len(out.Runners) != n {
		t.Fatalf("%d runners summed up, want %d", len(out.Runners), n)
	}
	for i, v := range out.RunsTotal {
		if v != 1 || out.Newcomer[i] != Yes {
			t.Fatalf("result %d: %d runs, newcomer %v", i, v, out.Newcomer[i])
		}
	}
}

func TestDefaultRules(t *testing.T) {
	same(t, "rules", DefaultRules(), Rules{Milestones: []int32{10, 20, 50, 100, 200, 500, 1000}, UsualWeeks: 26, UsualTimes: 2})
}

// A new course does not blank the other courses' earlier newcomers as long as
// it is complete from its first run.
func TestNewCourse(t *testing.T) {
	d := on(2026, 1, 3)
	in := of(line{day: d, timeS: 1600})
	in.Courses[0] = Course{Complete: true, CompleteFrom: d}
	in.Courses[1] = Course{Complete: true, CompleteFrom: d + 70, Began: true}
	in.Runs = append(in.Runs, Run{1, d + 70, SheetLoaded})
	same(t, "newcomer", compute(t, in).Newcomer, []Tri{Yes})
}

func TestRefusals(t *testing.T) {
	d := on(2026, 1, 3)
	good := func() *Input { return of(line{day: d, timeS: 1600}, line{day: d + 7, timeS: 1600}) }
	for what, spoil := range map[string]func(*Input){
		"columns of":              func(in *Input) { in.Part = in.Part[1:] },
		"result 1 is out":         func(in *Input) { in.Day[1] = d - 1 },
		"is on course 9":          func(in *Input) { in.Course[1] = 9 },
		"result 1 is on course 3": func(in *Input) { in.Course[1] = int32(len(in.Courses)) },
		"run 0 is on course -1":   func(in *Input) { in.Runs[0].Course = -1 },
		"no run of course 0":      func(in *Input) { in.Runs = in.Runs[:1] },
		"opening count 1 is out":  func(in *Input) { in.Counts = []Count{{Runner: 2}, {Runner: 1}} },
		"has opening counts":      func(in *Input) { in.Counts = []Count{{Runner: 2, AsOf: d}, {Runner: 2}} },
		"opening best 0":          func(in *Input) { in.Bests = []Best{{Runner: 2}} },
		"opening best 1 is out":   func(in *Input) { in.Bests = []Best{{Runner: 2, TimeS: 1, Day: 5}, {Runner: 2, TimeS: 1}} },
		"volunteer 1 is out":      func(in *Input) { in.Volunteers = []Volunteer{{2, d}, {2, d - 1}} },
		"opening best 0: {Runne":  func(in *Input) { in.Bests = []Best{{Runner: 2, TimeS: 1, Course: int32(len(in.Courses))}} },
		"opening count 0: {Runn":  func(in *Input) { in.Counts = []Count{{Runner: 2, Course: int32(len(in.Courses))}} },
		"opening count 0: {Runne": func(in *Input) { in.Counts = []Count{{Course: 5}} },
	} {
		in := good()
		spoil(in)
		if _, err := Compute(context.Background(), in, DefaultRules(), 1); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("%s: error %v", what, err)
		}
	}
	rules := DefaultRules()
	rules.Milestones = []int32{20, 10}
	if _, err := Compute(context.Background(), good(), rules, 1); err == nil {
		t.Error("milestones out of order")
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Compute(stopped, good(), DefaultRules(), 1); err == nil {
		t.Error("a stopped context")
	}
	if out := compute(t, &Input{}); len(out.Mark) != 0 {
		t.Error("results out of nothing")
	}
}
