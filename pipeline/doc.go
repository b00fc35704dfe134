// Package pipeline runs Lapwing's work from sheets to figures.
//
// # The layers
//
//  1. sheet reads bytes into rows of text. It finds the heading row under any
//     title lines, what each column means, and which course and date the sheet
//     is of. It never guesses types.
//  2. record turns text into facts: times, names, ages, sexes, clubs, who
//     takes part as what, and the status of every line. Below it, record/name
//     reads names and record/who works out who is who.
//  3. insight turns facts into figures: agegrade, history (bests, streaks,
//     milestones), speed (course speed, conditions, form, effort), standing and
//     league. It is pure: no database, no files, no clock.
//  4. store keeps the archive folder and the database.
//  5. reports, beside this package, turns tables into workbooks and text.
//
// The rooms never import each other: they meet in the tables of the schemas
// sheet, record and insight, and in this package, which hands columns from one
// to the next.
//
// # The two halves of the work
//
// Loading (load.go, parse.go, write.go) takes one sheet at a time: settles its
// columns from all values, turns its rows into facts, puts a byte-exact copy and
// a ledger line on disk, and then its lines into the database, up to a thousand
// sheets in one transaction, while the next are read (read_ahead.go). The lines
// of a large sheet are read while they are written (stream.go). A line is never
// changed afterwards.
//
// A refresh (refresh.go; every step in order is in steps.go) looks at all lines
// together: it applies decisions, compares sheets of the same run, works out
// who is who and computes all figures. It reads every line once, in columns,
// and writes everything it found in one transaction.
//
// # What can be lost
//
// Nothing but time. The database is derived from the archive folder; open.go
// makes it again when it is missing, damaged, of another version, or was being
// written when the power failed and does not agree with the ledger.
package pipeline
