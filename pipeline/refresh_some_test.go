package pipeline

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/unit"
)

// everything that a refresh of some lines must leave as a refresh of everything
// does: all but who is who, those who may be one among them, and the model's figures, which have tests of their
// own.
var sameAfterSome = []string{
	`select concat_ws('|', r.line_no, r.runner_no, r.status, r.counts, r.sex, r.age_low, r.age_high, r.group_age, r.same_as, coalesce(d.words, ''), r.time_ms, r.taking_part,
		i.open_standard_s, i.age_factor, i.age_factor_most, i.age_factor_least, i.first_result, i.runs_total, i.milestone, i.is_pb, i.previous_best_s,
		i.pb_margin_s, i.is_course_best, i.course_best_margin_s, i.pb_streak, i.attendance_streak, i.attendance_since, i.newcomer, i.visitor, i.days_since_last)
		from record.result r left join insight.result i on i.line_no = r.line_no left join record.doubt d on d.doubt = r.doubt order by r.line_no`,
	`select concat_ws('|', runner_no, name, name_key, sex, birth_lo, birth_hi, club, hidden, wished, group_age) from record.runner order by runner_no`,
	`select concat_ws('|', sheet_no, tab, row_number, kind, read, expected, todo, run_no) from sheet.problem where kind not in ('codes-exchanged', 'name-doubtful') order by all`,
	`select concat_ws('|', received, club) from record.club order by all`,
	`select concat_ws('|', runner_no, results, last_day) from insight.runner order by runner_no`,
	`select concat_ws('|', run_no, results, print) from insight.run order by run_no`,
	`select concat_ws('|', sex, first_age, runner_no, run_no, time_s, grade) from insight.ranked order by all`,
}

const whoseLines = "select concat_ws('|', line_no, runner_no) from record.result order by line_no"

func dump(t *testing.T, pl *Pipeline, query string) []string {
	t.Helper()
	rows, err := pl.DB.QueryContext(context.Background(), query)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	var out []string
	for rows.Next() {
		var s string
		if err := rows.Scan(&s); err != nil {
			t.Fatal(err)
		}
		out = append(out, s)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// diff is the lines that only one of two sorted lists has, at most a few.
func diff(a, b []string) (out []string) {
	for _, x := range a {
		if !slices.Contains(b, x) && len(out) < 5 {
			out = append(out, "- "+x)
		}
	}
	for _, x := range b {
		if !slices.Contains(a, x) && len(out) < 10 {
			out = append(out, "+ "+x)
		}
	}
	return out
}

// someRefreshed says whether the last refresh was one of some lines.
func someRefreshed(pl *Pipeline) bool {
	some := slices.ContainsFunc(pl.Timings, func(x Timing) bool { return x.What == "Finding the runners concerned" })
	all := slices.ContainsFunc(pl.Timings, func(x Timing) bool { return x.What == "Reading the lines" })
	return some && !all
}

// A new sheet, a corrected sheet and a sheet of another course, one after the
// other: what a refresh of some lines makes of them is what a refresh of
// everything makes of them.
func TestSomeLinesAsAll(t *testing.T) {
	for _, numbers := range []scenario.Numbering{scenario.NoNumbers, scenario.AllNumbers} {
		t.Run(fmt.Sprint(numbers), func(t *testing.T) { someLinesAsAll(t, numbers) })
	}
}

func someLinesAsAll(t *testing.T, numbers scenario.Numbering) {
	ctx := context.Background()
	dir := t.TempDir()
	o := scenario.DistrictOptions{Seed: 31, People: 1800, Courses: 12, Weeks: 30, Numbers: numbers}
	truth, err := scenario.District(dir, o)
	if err != nil {
		t.Fatal(err)
	}
	last := unit.Day(0)
	for _, r := range truth.Runs {
		last = max(last, r.Date)
	}
	later := ""
	for _, c := range truth.Courses[:2] {
		later = splitByDay(t, dir, c.Slug, last-13)
	}
	pl := openForTest(t, dir)
	load := func(path string) {
		t.Helper()
		if _, err := pl.Load(ctx, []string{path}, ByHand{}); err != nil {
			t.Fatal(err)
		}
	}
	load(filepath.Join(dir, "sheets"))
	if _, err := pl.Refresh(ctx, false); err != nil {
		t.Fatal(err)
	}
	if err := pl.Reported(ctx); err != nil {
		t.Fatal(err)
	}
	pl.fewLines = 1000
	var sheets []string
	if err := filepath.Walk(later, func(path string, info os.FileInfo, err error) error {
		if err == nil && !info.IsDir() {
			sheets = append(sheets, path)
		}
		return err
	}); err != nil {
		t.Fatal(err)
	}
	if len(sheets) < 3 {
		t.Fatalf("%d sheets held back; the test wants some", len(sheets))
	}
	sheets = append(sheets, corrected(t, dir, sheets[0]))
	done, compared := 0, 0
	for _, s := range sheets {
		pl.Timings = nil
		load(s)
		if _, err := pl.Refresh(ctx, false); err != nil {
			t.Fatal(err)
		}
		if !someRefreshed(pl) {
			t.Logf("%s: everything was refreshed", filepath.Base(s))
			continue
		}
		done++
		some := make([][]string, len(sameAfterSome))
		for i, q := range sameAfterSome {
			some[i] = dump(t, pl, q)
		}
		whose := dump(t, pl, whoseLines)
		touched, err := pl.ChangedRuns(ctx)
		if err != nil {
			t.Fatal(err)
		}
		if err := pl.setState(ctx, stateLooked, ""); err != nil {
			t.Fatal(err)
		}
		changed, err := pl.ChangedRuns(ctx)
		if err != nil {
			t.Fatal(err)
		}
		if fmt.Sprint(touched) != fmt.Sprint(changed) {
			t.Errorf("%s: runs found changed\n%v, by looking at all\n%v", filepath.Base(s), touched, changed)
		}
		if err := pl.Reported(ctx); err != nil {
			t.Fatal(err)
		}
		pl.Timings = nil
		if err := pl.RefreshAll(ctx); err != nil {
			t.Fatal(err)
		}
		if someRefreshed(pl) || len(pl.Timings) == 0 {
			t.Fatalf("what is to rest on all lines was not refreshed: %v", pl.Timings)
		}
		if n := len(diff(whose, dump(t, pl, whoseLines))); n > 0 {
			t.Logf("%s: who is who came out otherwise (%d differences shown at most 10)", filepath.Base(s), n)
			if err := pl.Reported(ctx); err != nil {
				t.Fatal(err)
			}
			continue
		}
		compared++
		for i, q := range sameAfterSome {
			if all := dump(t, pl, q); !slices.Equal(some[i], all) {
				t.Errorf("%s: some lines (-) and all (+) differ:\n%s", filepath.Base(s), strings.Join(diff(some[i], all), "\n"))
			}
		}
		if err := pl.Reported(ctx); err != nil {
			t.Fatal(err)
		}
	}
	if done < 3 || compared < 2 {
		t.Errorf("%d of %d sheets were taken up by a refresh of some lines, %d could be compared", done, len(sheets), compared)
	}
}

// corrected is another issue of a sheet: its last finisher is gone.
func corrected(t *testing.T, dir, sheet string) string {
	t.Helper()
	data, err := os.ReadFile(sheet)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.TrimRight(string(data), "\r\n")
	path := filepath.Join(dir, "again", filepath.Base(sheet))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text[:strings.LastIndexByte(text, '\n')+1]), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}
