package history

import "lapwing/pipeline/unit"

// Tri is yes, no, or not known: what can't be told is left blank in print.
type Tri uint8

const (
	Unknown Tri = iota
	No
	Yes
)

// Mark holds what a result is. Marks are added together.
type Mark uint8

const (
	FirstSeen             Mark = 1 << iota // the runner's first counted finish in the sheets
	PB                                     // personal best: see bests.go
	CourseBest                             // course best
	PBSinceSheets                          // with PB: best since sheets began, an earlier one may be missing
	CourseBestSinceSheets                  // with CourseBest: likewise
)

// Output has one element a result in each column, in the order of the input.
type Output struct {
	Mark                         []Mark
	Newcomer, FirstHere, Visitor []Tri
	// RunsTotal is the opening count and the counted finishes up to this one
	// (in order of start on one day); 0 where this result isn't counted, or
	// lies before the day that the runner's opening count is of.
	RunsTotal []int32
	// Milestone is the number reached with this finish, 0 for none.
	Milestone []int32
	// PreviousBestS and PreviousCourseBestS are the seconds to beat before
	// this result, 0 where it was the first or is not compared. The margin of a
	// best is this minus its time.
	PreviousBestS, PreviousCourseBestS []int32
	// PBStreak is the number of personal bests in a row that this one makes,
	// 0 where it is none.
	PBStreak []int32
	// Attendance is the attendance streak in weeks with this finish, 0 where
	// it isn't counted.
	Attendance []int32
	// AttendanceSince is the day of the first finish of that streak, 0 where
	// this finish isn't counted. Weeks that neither add nor end lie in between.
	AttendanceSince []unit.Day
	// DaysSince is the number of days since the last counted finish on any
	// course, -1 where there is none in the sheets or this isn't counted.
	DaysSince []int32
	// Runners has one element a runner of the input, ascending.
	Runners []Summary
}

// Summary is where a runner stands at the end of their results.
type Summary struct {
	Runner    int32
	RunsTotal int32 // opening count and counted finishes
	// AttendanceNow is the attendance streak that still goes on at Input.AsOf:
	// the week of that day is not missed until it is over. AttendanceBest is
	// the longest so far, in weeks.
	AttendanceNow, AttendanceBest int32
	PBStreakBest                  int32    // longest streak of personal bests, at any one distance
	First, Last                   unit.Day // counted finishes in the sheets; both 0 for none
}

func newOutput(n int) *Output {
	return &Output{
		Mark: make([]Mark, n), Newcomer: make([]Tri, n), FirstHere: make([]Tri, n), Visitor: make([]Tri, n),
		RunsTotal: make([]int32, n), Milestone: make([]int32, n),
		PreviousBestS: make([]int32, n), PreviousCourseBestS: make([]int32, n),
		PBStreak: make([]int32, n), Attendance: make([]int32, n), AttendanceSince: make([]unit.Day, n), DaysSince: make([]int32, n),
	}
}
