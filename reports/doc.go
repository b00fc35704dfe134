// Package reports turns the views of the database into what people read: the
// weekly workbooks and write-up of a run, the season workbook, and a runner's
// standing card.
//
// Layers, from the bottom:
//
//  1. query.go asks the views (the SQL is in sql/reports, one file a question).
//  2. privacy.go decides what of a person may be published: it is the only
//     place that turns a row into a printed name, group or club.
//  3. weekly_*.go, season_*.go and standing_*.go build a [table.Book] or the
//     facts of a write-up from rows; they do no I/O.
//  4. issue.go writes what was built: to a temporary file, synced, renamed,
//     never over a report that somebody has edited.
//
// Everything is a function of the views and the Options: no clock, so the same
// archive gives the same bytes.
package reports
