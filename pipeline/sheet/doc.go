// Package sheet turns the bytes of a results sheet into rows of text, and says of which runs
// they are. It reads a sheet as a person would; sheet.go holds what it gives, describe.go says
// in plain words how a sheet was read. Nothing is parsed into facts here: times, names and
// ages stay as received.
//
// The files follow the way of a sheet. Each is named here once.
//
// # Bytes to cells
//
//   - format.go says what kind of file it is, fetch.go reads it in bounds.
//   - Texts: encoding.go turns them into UTF-8, with codepage.go and east_asian_pages.go for
//     the older ways to write letters and plain_figures.go for figures of other scripts;
//     dialect.go settles how they are divided, csv.go cuts them into cells, text.go puts this
//     together.
//   - Workbooks: xlsx.go with xml.go, cell.go, numfmt.go and pageheader.go turns every cell
//     into text without loss; cell_notes.go reads the notes to cells, fills.go the colours that a line explains. Others become
//     the same first: opendocument.go, xls.go (out of its compound.go), by book_writer.go.
//   - page.go reads web pages, records.go and records_xml.go lists of records in JSON and XML,
//     mail_parts.go the words of a mail.
//   - grid.go holds a table whole, in little room.
//   - redact.go and redact_xlsx.go make the copy from which somebody was erased.
//
// # Texts that people typed
//
// lines.go divides a text that no mark divides; a table that a program has written is known
// by plain_table.go and passed over. Before it does,
//
//   - message.go takes off what mails and chats put around a list, markup.go and
//     markup_tables.go, record_lines.go, printed_tables.go the signs and tables of markup, single_quotes.go and rare_mark.go know other marks than the usual ones;
//   - place_marks.go, typed_figures.go, minutes_once.go, odd_marks.go, spoken.go, cut_cells.go,
//     even_times.go and ties.go mend times and places that a hand, a telephone or a scan has bent;
//   - inline_lists.go, households.go, numbered_pieces.go, two_lines.go, halves.go and
//     long_form.go put each runner on one line.
//
// Then it cuts the lines: by what their parts are (parted_lines.go, typed.go, paced_lines.go,
// east_asian_lines.go, bullets.go, untimed_lines.go for who has no time), by labels (labelled.go), where each line is a cell or a
// card (cell_lines.go, card_lines.go), or by its sentences (prose.go); where nothing else reads a text, by
// the pieces that all its lines have (shape_lines.go).
//
// # Rows to tables
//
//   - table.go puts this together for one table; layout.go finds its headings and rows.go says
//     what each row is, with titles.go, totals.go and tail.go for what stands around them.
//   - Several tables: below.go cuts those below or beside one another, below_runs.go what
//     stands below a table of many runs, section.go, title_forms.go and list_names.go the lists
//     under lines of their own, bands.go those by minutes; keyed.go joins lists that belong together.
//   - Runs in columns: across.go, courses_across.go, week_grid.go; in rows: runs_down.go and people_across.go;
//     in columns that come again behind each name: column_sets.go; one
//     runner a tab: runner_tabs.go, or one alone: runner_card.go; names on another tab: entries.go.
//   - Tables in other shapes: turn.go and turned.go (on their side), stacked.go (a result over
//     several rows), onecell.go (a row in one cell), row_names.go (a column before the first
//     heading). row_mends.go lists what mends rows before columns are settled: odd_rows.go, rejoin.go,
//     reordered.go, behind_names.go (facts behind some names),
//     marked_cells.go, date_parts.go (day, month and year apart), shifted.go (a cell too many
//     from some row on), bare_places.go (places in words or signs), plain_clocks.go (times with other marks) and name_class.go (a class
//     behind each name), name_facts.go (a sex or a class beside each), letters_behind.go (letters behind places and times that a line explains); beside.go mends them as they are read.
//   - What does not count here: other_weeks.go, corrections.go, corrected.go, course_length.go, line_rules.go,
//     marks.go, taken_back.go, lines_about_rows.go, ended_flags.go; lines_left_out.go tells what was left out, said_count.go how
//     many finishers the sheet itself says.
//   - What is no list of results: part_kind.go, no_results.go, papers.go, ranking.go;
//     own_book.go knows Lapwing's own workbooks, volunteers.go who helped, copies.go what stands twice, workings.go the steps in which
//     a result was made.
//
// # Columns and their meanings
//
//   - values.go says what a cell looks like, heading.go what a heading means (meaning.go), by
//     the words in words.go, words_languages.go, words_semitic.go and words_east_asia.go;
//     questions.go reads the headings of forms, fold.go is how texts are compared.
//   - columns.go settles which column is which, by headings and values together, with
//     column_headings.go, column_values.go, column_names.go, column_times.go, lap_times.go, column_units.go,
//     column_ages.go, ages_in_words.go and column_evidence.go.
//   - Look-alikes: lookalike.go, line_numbers.go, doubted.go, exchanged.go, heading_shift.go, handicap.go (the
//     clock of a staggered start), stamp.go (days and times of day).
//   - Sexes, classes and marks that something beside the table explains: legend.go,
//     legend_values.go, told_sex.go, title_sex.go, under.go.
//   - untold.go asks about what a table leaves unsaid; said_columns.go and
//     said_times.go take what somebody answers.
//
// # Course and date
//
//   - run.go settles course, date, session and distance from columns, titles, tab, file and
//     folders, or asks one question: run_evidence.go gathers, run_course.go, unsure_course.go,
//     run_date.go, run_session.go and run_distance.go settle, run_columns.go reads a run for each row,
//     run_order.go and run_share.go let tables help one another, run_left_out.go leaves out a
//     tab, lone_run.go moves a line whose date slipped.
//   - Dates: date.go, months.go, days.go, holidays.go, day_first.go, listopad.go, stale.go (left from last
//     week), folders.go, tab_days.go, calendar.go, calendar_rows.go, footer_date.go, turned_days.go
//     (day and month exchanged), numbered.go (runs by number); facts.go and aside.go say what else is said of a run, or of another.
//   - Courses: course.go, course_book.go (those known), course_file.go, course_office.go, course_route.go,
//     moved.go, slug.go, with the words in field_words.go, run_kinds.go, name_words.go and edition_words.go.
//   - distance.go reads distances.
package sheet
