// Package sheet turns the bytes of a results sheet into rows of text.
//
// It reads a sheet as a person would. The layers, from the bytes up:
//
//   - format.go says what kind of file it is; encoding.go turns text into
//     UTF-8; dialect.go settles how it is divided; csv.go cuts it into cells.
//   - xlsx.go, cell.go and numfmt.go do the same for the tabs of a workbook:
//     every cell becomes text without loss.
//   - values.go says what kind of thing a cell looks like; heading.go matches
//     heading words by meaning (words.go lists them); layout.go finds title
//     lines, heading rows and the rows that stand for no finisher; columns.go
//     settles which column is which, by heading and values together.
//   - date.go reads dates, course.go reads the names of courses, distances and
//     sessions; run.go settles the run from columns, titles, tab and file name,
//     or asks one question.
//
// Nothing is parsed into facts here: times, names and ages stay as received.
package sheet
