package reports

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

func season2026(last unit.Day) SeasonOptions {
	return SeasonOptions{Name: "2026", From: unit.NewDay(2026, 1, 1), To: last}
}

func TestSeasonGolden(t *testing.T) {
	db, last := district(t, 24, 24, true)
	d, err := readSeason(context.Background(), db, Options{AgeStandard: 2025, Version: "0.1"}, season2026(last))
	if err != nil {
		t.Fatal(err)
	}
	if err := d.compute(); err != nil {
		t.Fatal(err)
	}
	golden(t, "season.txt", d.book(issueOf{Number: 1}).Text())
}

// Attendance, league totals and records of the workbook against a count of
// their own in SQL and by hand.
func TestSeasonFigures(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 24, 60, true)
	s := season2026(last)
	s.Course = "heron-mere"
	dir := t.TempDir()
	rep, err := Season(ctx, db, Options{Dir: dir, ArchiveDir: dir}, s)
	if err != nil || len(rep.Written) != 1 {
		t.Fatalf("%+v, %v", rep, err)
	}
	f, err := excelize.OpenFile(rep.Written[0])
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	tab := func(name, head string) [][]string {
		rows, err := f.GetRows(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range rows {
			if len(r) > 0 && r[0] == head {
				return rows[i+1:]
			}
		}
		t.Fatalf("tab %s has no heading %s", name, head)
		return nil
	}
	// Attendance: the number of people and of runs.
	var people, runs int
	q, err := db.QueryContext(ctx, `select count(distinct runner_id), count(*) from main.results join main.runners using (runner_id)
		where run_date between $1 and $2 and course = 'heron-mere' and counts_run and not runners.hidden`, s.From.Time(), s.To.Time())
	if err != nil {
		t.Fatal(err)
	}
	if q.Next() {
		if err := q.Scan(&people, &runs); err != nil {
			t.Fatal(err)
		}
	}
	q.Close()
	ran, listed := 0, 0
	for _, r := range tab("Attendance", "Name") {
		var n int
		if _, err := fmt.Sscan(r[1], &n); err != nil {
			t.Fatal(err)
		}
		if n > 0 {
			listed++
		}
		ran += n
	}
	if listed != people || ran != runs || people < 30 {
		t.Errorf("attendance lists %d people with %d runs, the view has %d with %d", listed, ran, people, runs)
	}
	// League of women: points of each run by order of place, best ten.
	want := map[string]int{}
	{
		q, err := db.QueryContext(ctx, `select run_date, results.runner_id from main.results join main.runners using (runner_id)
			where run_date between $1 and $2 and course = 'heron-mere' and counts_run and not runners.hidden
			and results.sex = 'W' and status in ('ok', 'untimed') and taking_part_as = 'runner' order by run_date, position`, s.From.Time(), s.To.Time())
		if err != nil {
			t.Fatal(err)
		}
		scores := map[string][]int{}
		lastDate, place := "", 0
		for q.Next() {
			var date day
			var id string
			if err := q.Scan(&date, &id); err != nil {
				t.Fatal(err)
			}
			if date.Day.String() != lastDate {
				lastDate, place = date.Day.String(), 0
			}
			place++
			scores[id] = append(scores[id], max(1, 101-place))
		}
		q.Close()
		for id, v := range scores {
			for range 10 {
				best := -1
				for i, x := range v {
					if x > 0 && (best < 0 || x > v[best]) {
						best = i
					}
				}
				if best >= 0 {
					want[id] += v[best]
					v[best] = 0
				}
			}
		}
	}
	total, totalWant, lines := 0, 0, 0
	for _, r := range tab("League", "League") {
		if r[1] == "women" {
			var n int
			if _, err := fmt.Sscan(r[4], &n); err != nil {
				t.Fatal(err)
			}
			total += n
			lines++
		}
	}
	// R1 volunteered once, in a week with a run of her own: no credit for it.
	for _, n := range want {
		totalWant += n
	}
	if total != totalWant || lines != len(want) {
		t.Errorf("women's league: %d lines with %d points, by hand %d with %d", lines, total, len(want), totalWant)
	}
	// The fastest woman ever, of any age.
	var fastest int32
	q, err = db.QueryContext(ctx, `select min(time_s) from main.results where course = 'heron-mere' and sex = 'W' and counts_time and not protected and not hidden`)
	if err != nil {
		t.Fatal(err)
	}
	if q.Next() {
		if err := q.Scan(&fastest); err != nil {
			t.Fatal(err)
		}
	}
	q.Close()
	if r := tab("Records", "Course")[0]; r[1] != "women, all ages" || r[2] != unit.Clock(fastest) {
		t.Errorf("first record is %v, want women, all ages in %s", r, unit.Clock(fastest))
	}
}

// 31 December belongs to one season, 1 January to the next.
func TestSeasonBoundary(t *testing.T) {
	ctx := context.Background()
	db, _ := district(t, 12, 20, true)
	for _, date := range []string{"2025-12-31", "2026-01-01"} {
		for _, q := range []string{
			`insert into main.runs (course, run_date, session, state, finishers, course_name) values ('edge', '` + date + `', '', 'held', 1, 'Edge')`,
			`insert into main.results (sheet, row_number, course, run_date, session, position, runner_id, time_s, sex, status, counts_run, counts_time, taking_part_as, name, protected, hidden)
				values ('edge.csv', 2, 'edge', '` + date + `', '', 1, 'R2', 1500, 'M', 'ok', true, true, 'runner', 'Abel', false, false)`} {
			if err := db.Exec(ctx, q); err != nil {
				t.Fatal(err)
			}
		}
	}
	for year, want := range map[int]string{2025: "2025-12-31", 2026: "2026-01-01"} {
		s := SeasonOptions{Name: fmt.Sprint(year), From: unit.NewDay(year, 1, 1), To: unit.NewDay(year, 12, 31), Course: "edge"}
		d, err := readSeason(ctx, db, Options{}, s)
		if err != nil {
			t.Fatal(err)
		}
		if len(d.runs) != 1 || d.runs[0].day.String() != want || len(d.results) != 1 {
			t.Errorf("season %d has %d runs and %d results, want the one of %s", year, len(d.runs), len(d.results), want)
		}
	}
}

// A run over a short course was held: who was there every time was there at all of them,
// not at more.
func TestRunsOffTheCourseAreHeld(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 12, 20, true)
	s := season2026(last)
	s.Course = "heron-mere"
	held := func() (n int, most float64) {
		d, err := readSeason(ctx, db, Options{}, s)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range d.weeks() {
			n += w.held
		}
		for _, b := range d.attendance().Blocks {
			if f, ok := b.(table.Full); ok {
				for _, r := range f.Table.Rows {
					share, _ := strconv.ParseFloat(r.Cells[5].Show(table.Whole), 64)
					most = max(most, share)
				}
			}
		}
		return n, most
	}
	n, most := held()
	if err := db.Exec(ctx, "update main.runs set state = 'short' where course = 'heron-mere' and run_date >= $1", s.To.Time().AddDate(0, 0, -60)); err != nil {
		t.Fatal(err)
	}
	if after, share := held(); n < 3 || after != n || share != most || share > 100 {
		t.Errorf("%d runs held, at most %g %% attended; with short ones %d and %g %%", n, most, after, share)
	}
}

// A closed season stays as awarded; later differences are told.
func TestSeasonClose(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 16, 40, true)
	dir, arch := t.TempDir(), t.TempDir()
	o := Options{Dir: dir, ArchiveDir: arch}
	s := season2026(last)
	s.Close = true
	rep, err := Season(ctx, db, o, s)
	if err != nil || len(rep.Written) != 3 {
		t.Fatalf("%+v, %v", rep, err)
	}
	frozen := filepath.Join(arch, "closed", "season_2026.txt")
	before := read(t, frozen)
	if _, err := Season(ctx, db, o, s); err == nil || !strings.Contains(err.Error(), "closed already") {
		t.Errorf("closing twice: %v", err)
	}
	s.Close = false
	rep, err = Season(ctx, db, o, s)
	if err != nil || len(rep.Written) != 0 || len(rep.Differences) != 0 {
		t.Errorf("nothing changed, but %+v, %v", rep, err)
	}
	if err := db.Exec(ctx, "delete from main.results where runner_id = 'R2' and course = 'heron-mere' and run_date = $1", last.Time()); err != nil {
		t.Fatal(err)
	}
	rep, err = Season(ctx, db, o, s)
	if err != nil || len(rep.Differences) < 2 || len(rep.Written) != 1 {
		t.Fatalf("a result is gone, but differences are %v, %v", rep, err)
	}
	f, err := excelize.OpenFile(rep.Written[0])
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Since closing")
	if err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, r := range rows[min(3, len(rows)):] {
		told = append(told, strings.Join(r, ""))
	}
	if got, want := strings.Join(told, "\n"), strings.Join(rep.Differences, "\n"); got != want {
		t.Errorf("the tab says\n%s\nnot\n%s", got, want)
	}
	if read(t, frozen) != before {
		t.Error("the closed season has changed")
	}
}

// In a club's workbook nobody stands who may be under 18; in no workbook does
// a hidden person, a child's full name or club.
func TestSeasonPrivacy(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 16, 120, true)
	for _, club := range []string{"", "Marlbeck Striders"} {
		s := season2026(last)
		s.Club = club
		d, err := readSeason(ctx, db, Options{}, s)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.compute(); err != nil {
			t.Fatal(err)
		}
		text := d.book(issueOf{Number: 1}).Text()
		children := 0
		for _, p := range d.people {
			if p.hidden && strings.Contains(text, p.name) {
				t.Errorf("club %q: hidden %s is named", club, p.name)
			}
			if !p.protected {
				continue
			}
			children++
			if strings.Contains(text, p.name) {
				t.Errorf("club %q: child %s is named in full", club, p.name)
			}
			if club != "" && strings.Contains(text, firstAndInitial(p.name)) {
				t.Errorf("a club's workbook lists the child %s", firstAndInitial(p.name))
			}
		}
		if children < 5 {
			t.Fatalf("only %d children", children)
		}
	}
}

func TestSeasonSameBytes(t *testing.T) {
	var first []byte
	for range 2 {
		db, last := district(t, 16, 60, true)
		dir := t.TempDir()
		rep, err := Season(context.Background(), db, Options{Dir: dir, ArchiveDir: dir}, season2026(last))
		if err != nil {
			t.Fatal(err)
		}
		b, err := os.ReadFile(rep.Written[0])
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = b
		} else if !bytes.Equal(first, b) {
			t.Error("the same season has other bytes")
		}
	}
}

func TestSeasonFitsThePage(t *testing.T) {
	db, last := district(t, 24, 120, true)
	d, err := readSeason(context.Background(), db, Options{AgeStandard: 2025}, season2026(last))
	if err != nil {
		t.Fatal(err)
	}
	if err := d.compute(); err != nil {
		t.Fatal(err)
	}
	for _, tab := range d.book(issueOf{Number: 1}).Tabs {
		if w := tab.Width(); w > table.PageWidth {
			t.Errorf("tab %s is %.1f characters wide, an A4 page takes %d", tab.Name, w, table.PageWidth)
		}
		if tab.OnePage && tab.Height() > table.PageHeight {
			t.Errorf("tab %s is %.0f pt high", tab.Name, tab.Height())
		}
	}
}

func TestRulesInWords(t *testing.T) {
	d := &season{rules: league.DefaultRules()}
	want := "In each run the first of the list scores 100, then 1 fewer for each place, at least 1; equal places share the higher score. The best 10 scores count. A week spent volunteering there scores the average of all the person's runs in the list, to the nearest whole point. Ties: best single score of a run, next best and so on, then head to head, else shared; weeks of helping are not compared."
	if got := d.rulesInWords(); got != want {
		t.Errorf("got %q", got)
	}
}

// Opened in LibreOffice, the workbook has no error and prints cleanly, and
// shows the figures that the program computed.
func TestSeasonInLibreOffice(t *testing.T) {
	db, last := district(t, 24, 140, true)
	dir := t.TempDir()
	rep, err := Season(context.Background(), db, Options{Dir: dir, ArchiveDir: dir}, season2026(last))
	if err != nil {
		t.Fatal(err)
	}
	inLibreOffice(t, dir, 11, rep.Written[0])
	theirs := read(t, dir, "season_2026-Courses.csv")
	for _, want := range []string{"Heron Mere,5 km,\u221218 s,\u221225 s,\u221210 s,101.2,90,sure enough to rank", "Tarn End,5 km,+44 s,+30 s,+58 s,97.2,80,sure enough to rank"} {
		if !strings.Contains(theirs, want) {
			t.Errorf("LibreOffice doesn't show %q:\n%s", want, theirs)
		}
	}
}

// Writes the season to a folder to be looked at.
func TestSeasonLook(t *testing.T) {
	dir := os.Getenv("LAPWING_LOOK")
	if dir == "" {
		t.Skip("set LAPWING_LOOK to a folder to write the season there and look at it")
	}
	db, last := district(t, 30, 200, true)
	if _, err := Season(context.Background(), db, Options{Dir: dir, ArchiveDir: dir, AgeStandard: 2025, Version: "0.1"}, season2026(last)); err != nil {
		t.Fatal(err)
	}
}

// What differs is said by name, table and figure: ranks, records and who is
// listed one by one, the rest by number; a name that is gone is repeated only to
// the desk.
func TestDifferencesInWords(t *testing.T) {
	dump := func(lines ...string) string {
		return "Season 2026\n\n=== League ===\nLeague tables\nrules\nLeague     List  Rank  Name         Points  Runs\n---------  ----  ----  -----------  ------  ----\n" +
			strings.Join(lines, "\n") + "\n\n=== Records ===\nCourse     Of    Time   Name\n---------  ----  -----  -----------\n"
	}
	before := dump("Alder End  men      1  Ivo Kestrel     990    10", "Alder End  men      2  李小龍          980    10", "Alder End  men      3  Ned Ash         970    10",
		"Alder End  men      4  Tom Ulm         960    10") + "Alder End  M40   16:26  Ivo Kestrel\n"
	now := dump("Alder End  men      1  李小龍          981    10", "Alder End  men      2  Ned Ash         971    10", "Alder End  men      4  Tom Ulm         961    10",
		"Alder End  men      5  Zed New         100     1") + "Alder End  M40   19:11  Tom Ulm\n"
	want := []string{
		"League, Alder End, men, Ivo Kestrel: awarded with rank 1, points 990, runs 10; not there now.",
		"League, Alder End, men, 李小龍: rank 2 → 1; points 980 → 981.",
		"League, Alder End, men, Ned Ash: rank 3 → 2; points 970 → 971.",
		"League, Alder End, men, Zed New: not awarded; now with rank 5, points 100, runs 1.",
		"League: 1 row differs in other figures, with the rank as it was.",
		"Records, Alder End, M40: time 16:26 → 19:11; name Ivo Kestrel → Tom Ulm.",
	}
	if got := differences(before, now, true); !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := strings.Join(differences(before, now, false), "\n"); strings.Contains(got, "Ivo") || strings.Count(got, "somebody who is not listed now") != 2 {
		t.Errorf("for everybody:\n%s", got)
	}
	if got := differences(before, before, true); len(got) != 0 {
		t.Errorf("the same differs: %v", got)
	}
}

// A season that is not over is closed only on purpose; one that was closed can be
// opened, and what was awarded is kept; the most improved of a season that is
// over is said to be missing.
func TestSeasonUnfinishedAndReopened(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 16, 24, true)
	o := Options{Dir: t.TempDir(), ArchiveDir: t.TempDir()}
	s := season2026(last + 1)
	s.Close = true
	if _, err := Season(ctx, db, o, s); err == nil || !strings.Contains(err.Error(), "--unfinished") {
		t.Errorf("closing an unfinished season: %v", err)
	}
	s.Unfinished = true
	rep, err := Season(ctx, db, o, s)
	if err != nil || len(rep.Notes) != 0 {
		t.Fatalf("%+v, %v", rep, err)
	}
	awarded := read(t, o.ArchiveDir, "closed", "season_2026.txt")
	s.Close, s.Reopen = false, true
	if rep, err = Season(ctx, db, o, s); err != nil || len(rep.Notes) != 1 {
		t.Fatalf("%+v, %v", rep, err)
	}
	if read(t, o.ArchiveDir, "closed", "season_2026 (reopened 1).txt") != awarded {
		t.Error("what was awarded is not kept")
	}
	if _, err = Season(ctx, db, o, s); err == nil {
		t.Error("a season that is not closed was opened")
	}
	s = season2026(last - 1)
	s.Close = true
	if rep, err = Season(ctx, db, o, s); err != nil || len(rep.Notes) != 1 || !strings.Contains(rep.Notes[0], "Most improved") {
		t.Errorf("%+v, %v", rep, err)
	}
	if got := read(t, o.ArchiveDir, "closed", "season_2026.txt"); !strings.Contains(got, "Not made for a season that is over") || strings.Contains(got, "nobody sure enough") {
		t.Error("the closed season does not say that most improved was not worked out")
	}
}
