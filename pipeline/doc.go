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
// # The files
//
// Each is named here once, those of one beginning together.
//
//   - The archive at work: open.go, settings.go, steps.go, events.go (how far it has got),
//     memory.go, batches.go, check.go (invariants), trial.go (a load that is thrown away),
//     export.go.
//   - Loading: load.go with load_*.go, find_sheets.go, sheets.go, read_ahead.go, parse.go,
//     parse_part.go, stream.go, lines.go, fill.go, dictionary.go, write.go, catch_up.go (after
//     a kill).
//   - What one sheet says of another: answers.go, answered.go, said_before.go,
//     said_otherwise.go, remember.go, question.go, unsure.go, unsure_sheets.go, date_order.go,
//     misspelt.go with misspelt_*.go, course_answers.go, series.go, race.go, tab_distance.go,
//     of its own number of lines: said_count.go, and of a run that a report was written of:
//     own_report.go.
//   - Which sheet of a run stands: compare.go with compare_*.go, edition.go; settled.go says
//     which problems need no look any more.
//   - Decisions of people: decisions.go, decision_check.go, decision_list.go, correct.go with
//     correct_*.go, preview_*.go (what a correction would change), run_states.go,
//     history_decided.go, records_held.go, forget.go with forget_*.go.
//   - Side tables of the archive folder: courses.go, courses_write.go, clubs.go, members.go,
//     volunteers.go, history_table.go.
//   - A refresh: refresh.go with refresh_*.go, field.go, touched.go, changed.go,
//     changed_gone.go, person_twice.go.
//   - Who is who: link.go with link_*.go, anchors.go (runner numbers that hold),
//     names_to_print.go, children.go, find.go, finder.go, and what a person decides of it:
//     match_*.go.
//   - Figures: figures.go, ranked.go, age_groups.go, look.go, and of the model of course speed
//     speed.go with speed_*.go.
//
// # What can be lost
//
// Nothing but time. The database is derived from the archive folder; open.go
// makes it again when it is missing, damaged, of another version, or was being
// written when the power failed and does not agree with the ledger.
package pipeline
