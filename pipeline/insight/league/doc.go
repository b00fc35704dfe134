// Package league turns places in a season's runs into league tables, for
// runners and for clubs.
//
//	points.go  points of a run
//	season.go  the season: scoring runs, volunteer weeks, best N, minimum runs
//	ties.go    who stands before whom on equal totals
//	clubs.go   clubs: the best few of each run
//
// All points are whole numbers, so that totals and ties are exact.
package league
