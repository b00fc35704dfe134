package pipeline

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/record"
)

// viewArchive is an archive whose tables are filled by hand, to see what the views for
// other programs make of every state of a row.
type viewArchive struct {
	t  *testing.T
	pl *Pipeline
}

// put adds rows: each gives values for the columns named, all others are NULL.
func (v viewArchive) put(table, columns string, rows ...string) {
	v.t.Helper()
	for _, r := range rows {
		if err := v.pl.DB.Exec(context.Background(), fmt.Sprintf("insert into %s (%s) values (%s)", table, columns, r)); err != nil {
			v.t.Fatalf("%s: %v", table, err)
		}
	}
}

// want compares the rows of a query, values divided by spaces, NULL as –.
func (v viewArchive) want(what, query string, want ...string) {
	v.t.Helper()
	rows, err := v.pl.DB.QueryContext(context.Background(), query)
	if err != nil {
		v.t.Fatalf("%s: %v", what, err)
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		v.t.Fatal(err)
	}
	var got []string
	for rows.Next() {
		cells, into := make([]any, len(columns)), make([]any, len(columns))
		for i := range cells {
			into[i] = &cells[i]
		}
		if err := rows.Scan(into...); err != nil {
			v.t.Fatal(err)
		}
		words := make([]string, len(cells))
		for i, c := range cells {
			switch x := c.(type) {
			case nil:
				words[i] = "–"
			case float64:
				words[i] = fmt.Sprintf("%.3f", x)
			default:
				words[i] = fmt.Sprint(x)
			}
		}
		got = append(got, strings.Join(words, " "))
	}
	if err := rows.Err(); err != nil {
		v.t.Fatal(err)
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		v.t.Errorf("%s:\n  %s\nwant\n  %s", what, strings.Join(got, "\n  "), strings.Join(want, "\n  "))
	}
}

func newViewArchive(t *testing.T) viewArchive {
	v := viewArchive{t, openForTest(t, t.TempDir())}
	v.put("sheet.sheet", "sheet_no, path", "1, 'first.csv'", "2, 'second.csv'")
	v.put("sheet.part", "part_no, sheet_no, tab", "1, 1, ''", "2, 2, 'Results'")
	v.put("record.course", "course_no, course, name, distance_m, complete_from", "1, 'alder-bank', 'Alder Bank', 5000, '2026-03-01'", "2, 'moor', 'Moor', 3000, null")
	v.put("record.run", "run_no, course_no, run_date, session, distance_m", "1, 1, '2026-03-01', '', 5000", "2, 2, '2026-02-28', '2', 3000", "3, 1, '2026-02-22', '', 5000")
	v.put("insight.age_group", "age, sex, first_age, name", "16, 2, 16, 'U18'", "17, 2, 16, 'U18'", "18, 2, 18, 'U20'", "40, 2, 40, 'W40'", "44, 2, 40, 'W40'", "45, 2, 45, 'W45'", "40, 1, 40, 'M40'")
	if err := v.pl.DB.Exec(context.Background(), "delete from record.text"); err != nil {
		t.Fatal(err)
	}
	v.put("record.text", "text_no, text", "0, ''", "1, 'A Moss'", "2, 'Elm H.'")
	// 18 on the day of run 1; a day later; not known; not known and taken for a child.
	v.put("record.runner", "runner_no, name, sex, birth_lo, birth_hi, club, hidden, wished, may_be_child, group_age",
		"1, 'Ada Moss', 2, '2008-03-01', '2008-03-01', 'Elm AC', false, false, null, 18",
		"2, 'Bea Moss', 2, '2008-03-02', '2008-03-02', '', true, false, null, null",
		"3, 'Cy Moss', 1, null, null, '', false, true, null, null",
		"4, 'Di Moss', 0, null, null, '', false, false, true, null",
		"5, 'Eve Moss', 2, '1981-03-02', '1986-03-01', '', false, false, false, 40",   // 40 to 44
		"6, 'Fay Moss', 2, '1981-03-01', '1986-03-01', '', false, false, false, null") // 40 to 45
	line := func(no, part, run, position, runner, status, counts int, more string) {
		v.put("record.line", "line_no, part_no, row_number, run_no, position, tied, name_no, club_no, note", fmt.Sprintf("%d, %d, %d, %d, %d, %d, 1, 2, ''", no, part, no+1, run, position, no%2))
		v.put("record.result", "line_no, runner_no, status, counts, run_no, position, part_no, doubt, sex, time_ms, taking_part, age_low, age_high, group_age",
			fmt.Sprintf("%d, %d, %d, %d, %d, %d, %d, 0, %s", no, runner, status, counts, run, position, part, more))
	}
	line(1, 2, 1, 1, 1, 0, 3, "2, 1470001, 0, 18, 18, 18")
	line(2, 2, 1, 2, 0, 1, 0, "0, 1470000, 0, null, null, null") // nobody named
	line(3, 2, 1, 0, 3, 2, 1, "1, 0, 1, 40, 40, 40")             // no time, no place
	line(4, 2, 1, 3, 4, 3, 4, "3, 0, 2, null, null, null")       // did not finish; may be a child
	line(5, 2, 1, 4, 2, 4, 0, "2, 1500000, 3, 17, 17, 16")       // disqualified
	line(6, 1, 1, 1, 1, 5, 0, "2, 1470001, 0, 18, 18, 18")       // a repeat, on the earlier sheet
	line(7, 2, 1, 5, 5, 6, 1, "2, 1600000, 4, 40, 44, 40")       // doubtful
	line(8, 1, 1, 6, 6, 7, 0, "2, 1400000, 0, 40, 45, null")     // superseded
	line(9, 2, 2, 1, 1, 0, 3, "2, 700000, 0, 17, 17, 16")        // 3 km, a day before the birthday
	line(10, 2, 3, 1, 1, 0, 1, "2, 1200000, 0, 17, 17, 16")      // its time does not count
	line(11, 1, 1, 6, 6, 7, 0, "2, 1400000, 0, 40, 45, null")    // superseded as well
	v.put("record.correction", "line_no, club, position", "1, 'Oak AC', 7")
	v.put("record.club", "received, club", "'Elm H.', 'Elm AC'")
	v.put("insight.result", "line_no, runner_no, open_standard_s, age_factor, age_factor_most, age_factor_least, adjusted_s, is_pb, newcomer, visitor, milestone, effort",
		"1, 1, 800, 0.5, 0.8, 0.4, 1450.12361, true, 2, 1, 0, 2", "7, 5, null, null, null, null, null, false, 1, 2, 50, 3", "10, 1, null, null, null, null, null, false, 0, 0, 0, 4", "9, 2, 800, 0.5, 0.5, 0.5, 1, true, 2, 2, 10, 1") // of line 9, as it was another's
	for no, of := range map[int]string{1: "previous_best_s = 0, pb_margin_s = 0, days_since_last = 0, shortfall = 0.01234, form_s = 1450.26, form_low = 1440.26, form_high = 1460.26", 7: "previous_best_s = 1700, pb_margin_s = 100, days_since_last = 1, shortfall = 0.25, form_s = null"} {
		if err := v.pl.DB.Exec(context.Background(), fmt.Sprintf("update insight.result set %s where line_no = %d", of, no)); err != nil {
			t.Fatal(err)
		}
	}
	v.put("insight.course", "course_no, effect, sd, basis, network, shared_runners", "1, 0.02, 0.01, 'provisional', 1, 30", "2, 0.1, 0.1, 'too few', 1, 3")
	v.put("insight.run", "run_no, effect, low, high", "1, 0.01, -0.01, 0.03")
	v.put("record.run_state", "run_no, state, off_m", "2, 'short', 0", "3, 'long', 120")
	return v
}

func TestViewOfResults(t *testing.T) {
	v := newViewArchive(t)
	v.want("status, place, person, time, sex and counts", `select line_no, status, position, runner_id, time_s, sex, counts_run, counts_time, taking_part_as, tied
		from main.results order by line_no`,
		"1 ok 7 R1 1471 W true true runner true",
		"2 unnamed 2 – 1470 – false false runner false",
		"3 untimed – R3 – M true false walker true",
		"4 dnf 3 R4 – X false false guided false",
		"5 dq 4 R2 1500 W false false guide true",
		"6 repeat 1 R1 1471 W false false runner false",
		"7 doubtful 5 R5 1600 W true false pacer true",
		"8 superseded 6 R6 1400 W false false runner false",
		"9 ok 1 R1 700 W true true runner true",
		"10 ok 1 R1 1200 W true false runner false",
		"11 superseded 6 R6 1400 W false false runner true")
	v.want("names, clubs, groups and who is protected", "select line_no, name, club, age_group, protected, hidden, name_received, tab, session from main.results where run_no < 3 order by line_no",
		"1 Ada Moss Oak AC U20 false false A Moss Results –",
		"2 – Elm AC – false false A Moss Results –",
		"3 Cy Moss Elm AC M40 false false Cy Moss Results –",
		"4 Di Moss Elm AC – true false A Moss Results –",
		"5 Bea Moss Elm AC U18 true true A Moss Results –",
		"6 Ada Moss Elm AC U20 false false A Moss – –",
		"7 Eve Moss Elm AC W40 false false A Moss Results –",
		"8 Fay Moss Elm AC – false false A Moss – –",
		"9 Ada Moss Elm AC U18 true false A Moss Results 2",
		"11 Fay Moss Elm AC – false false A Moss – –")
	// 800 s / (0.5 × 1471 s); the factors of other ages that are possible; of line 9 the
	// figures were somebody else's.
	v.want("figures", "select line_no, age_grade_pct, open_equivalent_s, age_grade_low, age_grade_high, adjusted_s, is_pb, is_newcomer, is_visitor, milestone, effort, is_course_best from main.results where line_no in (1, 9) order by 1",
		"1 108.770 735.500 67.981 135.962 1450.124 true true false – steady false",
		"9 – – – – – false – – – – false")
}

func TestViewOfResultsInWords(t *testing.T) {
	v := newViewArchive(t)
	v.want("what is new, and how hard it was", "select line_no, is_newcomer, is_visitor, milestone, effort, previous_best_s, pb_margin_s, days_since_last, shortfall_pct, form_s, form_low, form_high, time_ms from main.results where line_no in (1, 7, 10) order by 1",
		"1 true false – steady – – – 1.234 1450.300 1440.300 1460.300 1470001",
		"7 false true 50 easy 1700 100 1 25.000 – – – 1600000",
		"10 – – – unclear – – – – – – – 1200000")
	v.want("no time", "select time_ms, time_s from main.results where line_no = 3", "– –")
	for n, words := range []string{"runner", "walker", "guided", "guide", "pacer", "back marker", "adult with a child", "buggy", "dog", "racing wheelchair or handcycle", "day wheelchair or frame"} {
		if err := v.pl.DB.Exec(context.Background(), fmt.Sprintf("update record.result set taking_part = %d where line_no = 1", n)); err != nil {
			t.Fatal(err)
		}
		v.want("taking part", "select taking_part_as from main.results where line_no = 1", words)
		if got := record.TakingPart(n).String(); got != words {
			t.Errorf("taking part %d is %q in the program and %q in the view", n, got, words)
		}
	}
	for n := range 8 {
		if err := v.pl.DB.Exec(context.Background(), fmt.Sprintf("update record.result set status = %d where line_no = 1", n)); err != nil {
			t.Fatal(err)
		}
		v.want("status", "select status from main.results where line_no = 1", record.Status(n).String())
	}
}

// A problem of a table of the archive has its place in what was read; one that was
// settled says how, at its own place only.
func TestViewOfProblems(t *testing.T) {
	v := newViewArchive(t)
	v.put("sheet.problem", "sheet_no, tab, row_number, column_letter, severity, kind, read, expected, todo, run_no",
		"1, '', 4, 'C', 1, 'date-unclear', 'x', 'e', 'ask', 1",
		"1, '', 5, 'C', 2, 'time-impossible', 'x', 'e', 'ask', 1",
		"1, '', 6, 'C', 3, 'time-impossible', 'x', 'e', 'ask', 2",
		"1, '', 6, 'D', 3, 'time-impossible', 'x', 'e', 'ask', 2",
		"2, 'Results', 6, 'C', 4, 'time-impossible', 'x', 'e', 'ask', null",
		"0, '', 9, '', 3, 'held-record', 'history.csv, row 14: Ada Moss', 'e', 'ask', null",
		"0, '', 9, '', 3, 'held-record', 'Ada Moss', 'e', 'ask', null")
	v.put("sheet.settled", "sheet_no, tab, row_number, column_letter, kind, read, words",
		"1, '', 6, 'C', 'time-impossible', 'x', 'corrected'", "1, '', 6, 'C', 'time-impossible', 'x', 'accepted'", "1, '', 5, 'C', 'line-twice', 'x', 'no'", "1, '', 4, 'C', 'date-unclear', 'y', 'no'", "1, 'Other', 5, 'C', 'time-impossible', 'x', 'no'")
	v.want("problems", "select sheet, tab, row_number, column_letter, severity, read, course, settled from main.problems order by sheet, row_number, column_letter",
		"first.csv  4 C waits x alder-bank ",
		"first.csv  5 C doubtful x alder-bank ",
		"first.csv  6 C look x moor accepted",
		"first.csv  6 D look x moor ",
		"history.csv  14  look Ada Moss – ",
		"second.csv Results 6 C note x – ",
		"–  9  look Ada Moss – ")
}

func TestViewOfRuns(t *testing.T) {
	v := newViewArchive(t)
	v.want("runs", `select run_no, state, finishers, unnamed, times_counted, positions_counted, names_counted, results, history_complete, sheet, off_m,
		condition_s, condition_s_low, condition_s_high, condition_pct, low, high from main.runs order by run_no`,
		"1 held 4 1 3 3 3 6 true second.csv – 15.075 -14.925 45.682 1.005 -0.995 3.045",
		"2 short 1 0 1 1 1 1 false second.csv – – – – – – –",
		"3 long 1 0 1 1 1 1 false second.csv 120 – – – – – –")
	// Of a run of which all lines were left out nothing is counted.
	v.put("record.run", "run_no, course_no, run_date, session, distance_m", "4, 1, '2026-03-08', '', 5000")
	v.put("record.result", "line_no, runner_no, status, counts, run_no, position, part_no, time_ms", "20, 1, 7, 0, 4, 1, 1, 1400000")
	v.want("nothing stands", "select finishers, names_counted, results, sheet, history_complete from main.runs where run_no = 4", "0 0 0 – true")
}

func TestViewOfRunners(t *testing.T) {
	v := newViewArchive(t)
	v.want("runners", `select runner_id, results, first_run::varchar, last_run::varchar, best_s, protected, hidden, age_group, sex, club from main.runners order by runner_id`,
		"R1 3 2026-02-22 2026-03-01 1471 false false U20 W Elm AC",
		"R2 0 – – – true true – W –",
		"R3 1 2026-03-01 2026-03-01 – false false – M –",
		"R4 0 – – – true false – – –",
		"R5 1 2026-03-01 2026-03-01 – false false W40 W –",
		"R6 0 – – – false false – W –")
	v.put("record.runner", "runner_no, name, sex, hidden, wished", "9, 'Gus Moss', 3, false, false")
	v.want("without any line", "select runner_id, results, protected, sex, best_s from main.runners where runner_no = 9", "R9 0 false X –")
}

func TestViewOfCourses(t *testing.T) {
	v := newViewArchive(t)
	// 100 exp(−0.02) and its 90 % interval, ± 1.645 × 0.01; a slower course has more seconds
	// and a lower index.
	v.want("courses", "select course, results, runs, shared_runners, basis, speed_index, low, high, seconds_at_25min, seconds_low, seconds_high from main.courses order by course",
		"alder-bank 7 2 30 provisional 98.020 96.421 99.646 30.302 5.334 55.684",
		"moor 1 1 3 too few – – – – – –")
}

// Whoever turns 18 on the day is no child on it; whoever does the day after, is.
func TestViewsProtectUpTo18(t *testing.T) {
	v := newViewArchive(t)
	v.put("record.volunteer", "name, runner_no, role, course, run_date, days, milestone, listed_at, protected, hidden",
		"'Ada M', 1, 'timer', 'alder-bank', '2026-03-01', 1, 0, 'a', false, false",
		"'Ada M', 1, 'timer', 'alder-bank', '2026-02-28', 0, 10, 'a', false, false",
		"'Di', 4, 'marshal', 'alder-bank', '2026-03-01', 1, 0, 'b', false, false",
		"'Kid Vale', 0, 'scanner', 'alder-bank', '2026-03-01', 1, 0, 'c', true, true",
		"'Zed Vale', 0, 'scanner', 'alder-bank', '2026-03-01', 1, 0, 'd', null, null")
	v.want("volunteers", "select name, runner_id, run_date::varchar, protected, hidden, days_so_far, milestone from main.volunteers order by listed_at, run_date",
		"Ada Moss R1 2026-02-28 true false – 10",
		"Ada Moss R1 2026-03-01 false false 1 –",
		"Di Moss R4 2026-03-01 true false 1 –",
		"Kid Vale – 2026-03-01 true true 1 –",
		"Zed Vale – 2026-03-01 false false 1 –")
	v.put("record.member", "line, name, runner_no, club, claim, from_day, to_day", "1, 'Ada M', 1, 'Elm AC', 'first', null, null", "2, 'Bea M', 2, 'Elm AC', 'second', null, null", "3, 'Zed', 0, 'Elm AC', 'first', null, null")
	v.want("members on the day of the last run", "select name, runner_id, written, protected, hidden from main.members order by written",
		"Ada Moss R1 Ada M false false",
		"Bea Moss R2 Bea M true true",
		"Zed – Zed false false")
	v.put("record.held_record", "line, course, distance_m, sex, age_group, time_s, name, runner_no, run_date, protected",
		"1, 'alder-bank', 5000, 'W', '', 1200, 'Ada M', 1, '2026-03-01', false",
		"2, 'alder-bank', 5000, 'W', 'W40', 1210, 'Ada M', 1, '2026-02-28', false",
		"3, 'alder-bank', 5000, 'W', 'U16', 1220, '', 0, null, true",
		"4, 'alder-bank', 5000, 'M', 'M50', 1100, 'Al Dell', 0, '2020-01-01', false",
		"5, 'alder-bank', 5000, 'W', 'W50', 1300, '', 2, '2026-03-02', false")
	v.want("records from before", "select line, name, runner_id, age_group, protected, hidden from main.held_records order by line",
		"1 Ada Moss R1 – false false",
		"2 Ada Moss R1 W40 true false",
		"3 – – U16 true false",
		"4 Al Dell – M50 false false",
		"5 Bea Moss R2 W50 false true")
}
