// Package record turns the text of one table of a sheet into facts: position,
// name, running time, sex, birth window, club, taking part as, status.
//
// It works in two passes, because a single cell often cannot be read alone:
// "24.31" is 24 min 31 s in one sheet and 24.31 minutes in another, "M40" is
// five years wide here and ten there, "M" is a man beside "F" and a woman
// (mujer, mulher) beside "H".
//
//  1. Reader.Observe looks at every row and only counts.
//  2. Reader.Settle decides how each column is read, and says why in plain
//     words. What the column can't decide becomes one question.
//  3. Reader.Read turns each row into a Line.
//  4. CheckRun looks at the lines of one run together: order, gaps, ties,
//     lines that stand twice.
//
// A bad row is a problem with its place, never an error and never dropped.
// Sex is never inferred from a name.
package record
