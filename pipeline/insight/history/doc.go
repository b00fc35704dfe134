// Package history follows each runner through their results in order of time:
// how many runs so far, personal bests, streaks, milestones, and who is new.
//
// Everything is worked out in one pass over columns sorted by runner and day
// (see [Input]), and each definition stands in one place:
//
//	bests.go       personal best, course best, their margin, streak of bests
//	attendance.go  attendance streak in ISO weeks
//	newcomer.go    newcomer, first here, visitor: only where history is complete
//	compute.go     runs so far, milestones, days since the last run; the pass itself
package history
