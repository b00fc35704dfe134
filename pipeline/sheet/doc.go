// Package sheet turns the bytes of a results sheet into rows of text.
//
// It reads a sheet as a person would. The layers, from the bytes up:
//
//   - format.go says what kind of file it is; encoding.go turns text into
//     UTF-8; dialect.go settles how it is divided; csv.go cuts it into cells.
//   - xlsx.go, cell.go and numfmt.go do the same for the tabs of a workbook:
//     every cell becomes text without loss. grid.go holds a table whole.
//   - values.go says what kind of thing a cell looks like; heading.go matches
//     heading words by meaning (words.go lists them); layout.go finds heading
//     rows and the rows that stand for no finisher; columns.go settles which
//     column is which, by heading and values together.
//   - table.go puts these together for one table; below.go cuts tables that
//     stand one below the other or side by side; section.go splits runs that share a heading, and carries lines such as
//     "Women" to the rows under them.
//   - across.go makes a table of each run that stands in columns of its own;
//     entries.go takes names by number from another tab; facts.go and
//     pageheader.go find what is said of a run outside its table; lookalike.go
//     tells what only looks like age groups or results.
//   - date.go reads dates (months.go has the names), course.go the names of
//     courses and distances; run.go settles the run from columns, titles, tab
//     and file name, or asks one question.
//   - describe.go says in plain words how a sheet was read.
//
// Nothing is parsed into facts here: times, names and ages stay as received.
package sheet
