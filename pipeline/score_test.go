package pipeline

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/scenario"
)

// score is how well an archive agrees with the truth behind its sheets.
type score struct {
	lines, found, rightTime, rightRun, rightStatus int
	precision, recall                              float64 // of pairs of lines
	courseRMSE, conditionRMSE                      float64 // log time; courses equal weights, conditions by results
	courses                                        int
	wrong                                          []string // a few that disagree
}

// openForTest makes an archive in a temporary folder.
func openForTest(t testing.TB, dir string) *Pipeline {
	t.Helper()
	s := DefaultSettings()
	s.Archive = filepath.Join(dir, "archive")
	pl, err := Open(context.Background(), s, ReadWrite, nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := pl.Close(); err != nil {
			t.Error(err)
		}
	})
	return pl
}

// loadForTest loads a folder and brings the figures up to date.
func loadForTest(t testing.TB, pl *Pipeline, sheets string) *LoadReport {
	t.Helper()
	rep, err := pl.Load(context.Background(), []string{sheets}, ByHand{})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := pl.Refresh(context.Background(), false); err != nil {
		t.Fatal(err)
	}
	return rep
}

// scoreAgainst compares main.results, main.courses and main.runs with the
// truth.
func scoreAgainst(t testing.TB, pl *Pipeline, truth *scenario.Truth) score {
	t.Helper()
	ctx := context.Background()
	type got struct {
		course, date, status string
		timeMS               int32
		runner               string
	}
	at := map[string]got{}
	key := func(sheet, tab string, row int) string { return sheet + "|" + tab + "|" + itoa(int32(row)) }
	rows, err := pl.DB.QueryContext(ctx, `select sheet, coalesce(tab, ''), row_number, course, run_date::varchar, status, coalesce(time_ms, 0)::integer, coalesce(runner_id, '') from main.results`)
	if err != nil {
		t.Fatal(err)
	}
	for rows.Next() {
		var g got
		var sheet, tab string
		var row int
		if err := rows.Scan(&sheet, &tab, &row, &g.course, &g.date, &g.status, &g.timeMS, &g.runner); err != nil {
			t.Fatal(err)
		}
		at[key(sheet, tab, row)] = g
	}
	rows.Close()
	var s score
	pairs := map[[2]string]int{}
	byRunner, byPerson := map[string]int{}, map[string]int{}
	for _, l := range truth.Lines {
		s.lines++
		run := truth.Runs[l.Run]
		g, ok := at[key(l.Sheet, l.Tab, l.Row)]
		if !ok {
			g, ok = at[key(l.Sheet, "", l.Row)]
		}
		if !ok {
			s.say("%s:%d is missing (%s, %s)", l.Sheet, l.Row, l.Name, l.Status)
			continue
		}
		s.found++
		if g.timeMS == l.TimeMS {
			s.rightTime++
		} else {
			s.say("%s:%d has time %d, truth %d", l.Sheet, l.Row, g.timeMS, l.TimeMS)
		}
		if g.course == truth.Courses[run.Course].Slug && g.date == run.Date.String() {
			s.rightRun++
		} else {
			s.say("%s:%d is of %s %s, truth %s %s", l.Sheet, l.Row, g.course, g.date, truth.Courses[run.Course].Slug, run.Date)
		}
		if g.status == l.Status {
			s.rightStatus++
		} else {
			s.say("%s:%d is %s, truth %s (%s)", l.Sheet, l.Row, g.status, l.Status, l.Name)
		}
		if g.runner != "" && l.Status == "ok" && !l.Exchanged {
			p := itoa(int32(l.Person))
			pairs[[2]string{g.runner, p}]++
			byRunner[g.runner]++
			byPerson[p]++
		}
	}
	two := func(n int) float64 { return float64(n) * float64(n-1) / 2 }
	var both, claimed, actual float64
	for _, n := range pairs {
		both += two(n)
	}
	for _, n := range byRunner {
		claimed += two(n)
	}
	for _, n := range byPerson {
		actual += two(n)
	}
	s.precision, s.recall = both/claimed, both/actual
	s.scoreSpeed(t, pl, truth)
	return s
}

func (s *score) scoreSpeed(t testing.TB, pl *Pipeline, truth *scenario.Truth) {
	ctx := context.Background()
	// a course's truth is its effect with the mean of the conditions it had
	mean, n := make([]float64, len(truth.Courses)), make([]float64, len(truth.Courses))
	runOf := map[string]int{}
	for i, r := range truth.Runs {
		mean[r.Course] += r.Conditions
		n[r.Course]++
		runOf[truth.Courses[r.Course].Slug+" "+r.Date.String()] = i
	}
	type pair struct{ got, want, w float64 }
	groups := map[float64][]pair{}
	rows, err := pl.DB.QueryContext(ctx, `select course, -ln(speed_index / 100), results from main.courses where speed_index is not null`)
	if err != nil {
		t.Fatal(err)
	}
	for rows.Next() {
		var slug string
		var effect, results float64
		if err := rows.Scan(&slug, &effect, &results); err != nil {
			t.Fatal(err)
		}
		for c := range truth.Courses {
			if truth.Courses[c].Slug == slug {
				d := truth.Courses[c].DistanceM
				groups[d] = append(groups[d], pair{effect, truth.Courses[c].Effect + mean[c]/n[c], results})
			}
		}
	}
	rows.Close()
	sq := 0.0
	for _, g := range groups {
		a, b, k := 0.0, 0.0, 0.0
		for _, p := range g {
			a += p.got
			b += p.want
			k++
		}
		for _, p := range g {
			d := (p.got - a/k) - (p.want - b/k)
			sq += d * d
			s.courses++
		}
	}
	s.courseRMSE = math.Sqrt(sq / float64(s.courses))
	rows, err = pl.DB.QueryContext(ctx, `select course, run_date::varchar, ln(1 + condition_pct / 100), finishers from main.runs where condition_pct is not null`)
	if err != nil {
		t.Fatal(err)
	}
	type day struct {
		course       int
		got, want, w float64
	}
	var days []day
	sums := map[int][3]float64{}
	for rows.Next() {
		var slug, date string
		var d day
		if err := rows.Scan(&slug, &date, &d.got, &d.w); err != nil {
			t.Fatal(err)
		}
		i, ok := runOf[slug+" "+date]
		if !ok {
			continue
		}
		d.course, d.want = truth.Runs[i].Course, truth.Runs[i].Conditions
		days = append(days, d)
		m := sums[d.course]
		sums[d.course] = [3]float64{m[0] + d.w*d.got, m[1] + d.w*d.want, m[2] + d.w}
	}
	rows.Close()
	sq, w := 0.0, 0.0
	for _, d := range days {
		m := sums[d.course]
		e := (d.got - m[0]/m[2]) - (d.want - m[1]/m[2])
		sq += d.w * e * e
		w += d.w
	}
	s.conditionRMSE = math.Sqrt(sq / w)
}

func (s *score) say(format string, a ...any) {
	if len(s.wrong) < 25 {
		s.wrong = append(s.wrong, strings.TrimSpace(fmt.Sprintf(format, a...)))
	}
}

func (s score) log(t testing.TB) {
	t.Logf("%d lines: %d found, %d right time, %d right run, %d right status; pairs precision %.5f recall %.5f; %d courses RMSE %.2f %%, conditions %.2f %%",
		s.lines, s.found, s.rightTime, s.rightRun, s.rightStatus, s.precision, s.recall, s.courses, 100*s.courseRMSE, 100*s.conditionRMSE)
	for _, w := range s.wrong {
		t.Log("  ", w)
	}
}

// TestDemoAgainstTruth loads the demo district and compares every line with
// what really happened.
func TestDemoAgainstTruth(t *testing.T) {
	dir := t.TempDir()
	if err := scenario.WriteDemo(dir); err != nil {
		t.Fatal(err)
	}
	_, truth, err := scenario.DemoFiles()
	if err != nil {
		t.Fatal(err)
	}
	pl := openForTest(t, dir)
	rep := loadForTest(t, pl, filepath.Join(dir, "sheets"))
	for _, r := range rep.Sheets {
		if r.State != "loaded" {
			t.Errorf("%s is %s: %s", r.Path, r.State, r.Why)
		}
	}
	s := scoreAgainst(t, pl, truth)
	s.log(t)
	if s.found != s.lines || s.rightTime < s.lines-s.lines/1000 || s.rightRun != s.lines {
		t.Errorf("of %d lines %d were found, %d with the right time, %d with the right run", s.lines, s.found, s.rightTime, s.rightRun)
	}
	if s.precision < .995 || s.recall < .98 {
		t.Errorf("who is who: precision %.4f, recall %.4f", s.precision, s.recall)
	}
}

// TestDistrictAgainstTruth measures on a messy district; LAPWING_DISTRICT=
// "people,courses,weeks" makes it larger.
func TestDistrictAgainstTruth(t *testing.T) {
	o := scenario.DistrictOptions{Seed: 77, People: 600, Courses: 8, Weeks: 52}
	if v := os.Getenv("LAPWING_DISTRICT"); v != "" {
		if _, err := fmt.Sscanf(v, "%d,%d,%d,%d", &o.Seed, &o.People, &o.Courses, &o.Weeks); err != nil {
			t.Fatal(err)
		}
	}
	dir := t.TempDir()
	truth, err := scenario.District(dir, o)
	if err != nil {
		t.Fatal(err)
	}
	// the sheets don't say which courses are shorter or longer than 5 km
	list := "course,distance_m\n"
	for _, c := range truth.Courses {
		list += fmt.Sprintf("%s,%g\n", c.Slug, c.DistanceM)
	}
	if err := os.MkdirAll(filepath.Join(dir, "archive"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "archive", "courses.csv"), []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	pl := openForTest(t, dir)
	rep := loadForTest(t, pl, filepath.Join(dir, "sheets"))
	for _, r := range rep.Sheets {
		if r.State != "loaded" {
			t.Logf("%s %s: %s", r.Path, r.State, r.Why)
		}
	}
	s := scoreAgainst(t, pl, truth)
	s.log(t)
	if s.found < s.lines-s.lines/1000 || s.rightTime < s.lines-s.lines/1000 || s.rightRun < s.lines-s.lines/1000 {
		t.Errorf("of %d lines %d were found, %d with the right time, %d with the right run", s.lines, s.found, s.rightTime, s.rightRun)
	}
	if s.precision < .995 || s.recall < .98 {
		t.Errorf("who is who: precision %.4f, recall %.4f", s.precision, s.recall)
	}
}
