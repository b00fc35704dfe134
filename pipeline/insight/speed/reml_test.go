package speed

import (
	"compress/gzip"
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// readTable reads a CSV file of numbers (a first column of words where names
// is given), its heading checked.
func readTable(t *testing.T, name, heading string) [][]string {
	t.Helper()
	file, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var r io.Reader = file
	if strings.HasSuffix(name, ".gz") {
		if r, err = gzip.NewReader(file); err != nil {
			t.Fatal(err)
		}
	}
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[0], ","); got != heading {
		t.Fatalf("%s has the heading %s", name, got)
	}
	return rows[1:]
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// twoWay reads a crossed data set without runs: rows are runners, columns
// courses, one run each.
func twoWay(t *testing.T, name string, origin float64) *Input {
	rows := readTable(t, name, "row,column,y")
	var runner, run []int32
	var y []float32
	var runs []RunInfo
	var courses []CourseInfo
	for _, row := range rows {
		c := int32(number(t, row[1])) - 1
		for int(c) >= len(courses) {
			runs = append(runs, RunInfo{Course: int32(len(courses))})
			courses = append(courses, CourseInfo{referenceM})
		}
		runner, run = append(runner, int32(number(t, row[0]))-1), append(run, c)
		y = append(y, float32(number(t, row[2])-origin))
	}
	in, _, err := arrange(runner, run, y, runs, courses)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// Published and reference REML estimates. Penicillin: Bates 2010, "lme4:
// Mixed-effects modeling with R", section 2.1: sd .8467, 1.9316, .5499, mean
// 22.9722. InstEval: lme4 1.1-31 as in testdata/versions.txt. The deviances are
// lme4's, so ours may not be larger; its optimizer stops at 1.93161 for the
// samples where 1.93156 has the same deviance to 4 decimals.
func TestREMLOnPublishedData(t *testing.T) {
	for _, c := range []struct {
		file                     string
		origin                   float64
		runner, course, residual float64 // sd
		level, deviance          float64
	}{
		{"penicillin.csv", 23, .846704, 1.931560, .549923, 22.972222, 330.86059},
		{"insteval.csv.gz", 0, .325906, .523196, 1.177786, 3.254158, 237783.8804},
	} {
		in := twoWay(t, c.file, c.origin)
		m, err := REML(context.Background(), in, Variances{Runner: .3, Course: .3, Residual: 1})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: sd %.6f %.6f %.6f, level %.6f, deviance %.4f, %d evaluations", c.file,
			math.Sqrt(m.Variances.Runner), math.Sqrt(m.Variances.Course), math.Sqrt(m.Residual), m.Level+c.origin, m.Deviance, m.Evaluations)
		for name, v := range map[string][2]float64{
			"runner":   {math.Sqrt(m.Variances.Runner), c.runner},
			"course":   {math.Sqrt(m.Variances.Course), c.course},
			"residual": {math.Sqrt(m.Residual), c.residual},
			"level":    {m.Level + c.origin, c.level},
		} {
			if math.Abs(v[0]-v[1]) > 5e-5 {
				t.Errorf("%s: %s %.6f, reference %.6f", c.file, name, v[0], v[1])
			}
		}
		if m.Deviance > c.deviance+2e-4 || m.Deviance < c.deviance-1e-2 {
			t.Errorf("%s: deviance %.5f, reference %.5f", c.file, m.Deviance, c.deviance)
		}

		// The fit's own solver at these variances gives the same courses.
		h := Defaults()
		h.FormWeek, h.FormNew = 0, 0
		h.Sigma, h.RunnerSD, h.CourseSD = math.Sqrt(m.Residual), math.Sqrt(m.Variances.Runner), math.Sqrt(m.Variances.Course)
		h.DaySD = 1e-6
		f := gaussianFit(t, in, h)
		worst := 0.0
		for k, v := range m.CourseEffect {
			worst = max(worst, math.Abs(f.course[k]-m.Level-v))
		}
		if worst > 2e-6 {
			t.Errorf("%s: courses differ by up to %.2g", c.file, worst)
		}
	}
}

// gaussianFit solves once at the variances of h.
func gaussianFit(t *testing.T, in *Input, h Hyper) *fit {
	t.Helper()
	f, err := newFit(in, h, true, 2)
	if err != nil {
		t.Fatal(err)
	}
	f.gaussianSites(h.Sigma)
	if err := f.sweep(background, 0, false); err != nil {
		t.Fatal(err)
	}
	if err := f.solveOnce(background, 1e-10, 1000); err != nil {
		t.Fatal(err)
	}
	if f.trace.Left > 1e-10 {
		t.Fatalf("left %g after %d steps", f.trace.Left, f.trace.Steps)
	}
	return f
}

const clubHeading = "runner,course,run,y"

var writeClub = flag.Bool("write-club", false, "write testdata/club.csv anew; then run testdata/make_fixtures.R")

// clubFixture writes the made-up club that lme4 fits.
func clubFixture(t *testing.T) {
	t.Helper()
	in, _ := district{world: base, courses: 8, runners: 400, weeks: 50, results: 5000, seed: 12}.simulate()
	var b strings.Builder
	b.WriteString(clubHeading + "\n")
	for r := 0; r < in.Runners(); r++ {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			fmt.Fprintf(&b, "%d,%d,%d,%.8g\n", r, in.course(int(i)), in.Run[i], in.LogTime[i])
		}
	}
	if err := os.WriteFile("testdata/club.csv", []byte(b.String()), 0o666); err != nil {
		t.Fatal(err)
	}
}

// lme4's own fit of the committed club: its predictions at its variances by
// our solver, and its variances by our REML.
func TestClubAgainstLme4(t *testing.T) {
	if *writeClub {
		clubFixture(t)
	}
	in := &Input{}
	last := ""
	for _, row := range readTable(t, "club.csv", clubHeading) {
		if row[0] != last {
			in.Offsets = append(in.Offsets, int32(len(in.Run)))
			last = row[0]
		}
		c, e := int32(number(t, row[1])), int32(number(t, row[2]))
		for int(c) >= len(in.Courses) {
			in.Courses = append(in.Courses, CourseInfo{referenceM})
		}
		for int(e) >= len(in.Runs) {
			in.Runs = append(in.Runs, RunInfo{})
		}
		// Constant form takes no days; runs are numbered in course order.
		in.Runs[e] = RunInfo{c, e}
		in.Run, in.LogTime = append(in.Run, e), append(in.LogTime, float32(number(t, row[3])))
	}
	in.Offsets = append(in.Offsets, int32(len(in.Run)))
	// A runner's results need an order; that of the runs will do.
	var runner []int32
	for r := 0; r < in.Runners(); r++ {
		for range in.Offsets[r+1] - in.Offsets[r] {
			runner = append(runner, int32(r))
		}
	}
	in, _, err := arrange(runner, in.Run, in.LogTime, in.Runs, in.Courses)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(in.Run); n < 3000 || n > 25000 {
		t.Fatalf("%d results", n)
	}

	ref := map[string]map[int]float64{}
	for _, row := range readTable(t, "club_lme4.csv", "kind,index,value") {
		if ref[row[0]] == nil {
			ref[row[0]] = map[int]float64{}
		}
		ref[row[0]][int(number(t, row[1]))] = number(t, row[2])
	}
	v := Variances{ref["variance runner"][0], ref["variance course"][0], ref["variance run"][0], ref["variance Residual"][0]}
	if len(ref["course"]) != len(in.Courses) || len(ref["run"]) != len(in.Runs) || !(v.Residual > 0 && v.Run > 0) {
		t.Fatalf("%d courses, %d runs, variances %+v", len(ref["course"]), len(ref["run"]), v)
	}
	h := Defaults()
	h.FormWeek, h.FormNew = 0, 0
	h.Sigma, h.RunnerSD, h.CourseSD, h.DaySD = math.Sqrt(v.Residual), math.Sqrt(v.Runner), math.Sqrt(v.Course), math.Sqrt(v.Run)
	f := gaussianFit(t, in, h)
	course, run := 0.0, 0.0
	for c, x := range ref["course"] {
		course = max(course, math.Abs(f.course[c]-ref["level"][0]-x))
	}
	for e, x := range ref["run"] {
		run = max(run, math.Abs(f.day[e]-x))
	}
	t.Logf("%d results: courses within %.2g, runs within %.2g of lme4", len(in.Run), course, run)
	if course > 1e-6 || run > 1e-6 {
		t.Errorf("courses differ by up to %.2g, runs by %.2g", course, run)
	}

	m, err := REML(context.Background(), in, Variances{.03, .002, .0002, .003})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("REML %+v in %d evaluations, deviance %.4f; lme4 %+v, %.4f", m.Variances, m.Evaluations, m.Deviance, v, ref["deviance"][0])
	if m.Deviance > ref["deviance"][0]+1e-4 {
		t.Errorf("deviance %.5f, lme4 %.5f", m.Deviance, ref["deviance"][0])
	}
	for name, x := range map[string][2]float64{
		"runner": {m.Variances.Runner, v.Runner}, "course": {m.Variances.Course, v.Course},
		"run": {m.Variances.Run, v.Run}, "residual": {m.Residual, v.Residual},
	} {
		if math.Abs(x[0]/x[1]-1) > 2e-3 {
			t.Errorf("%s variance %.6g, lme4 %.6g", name, x[0], x[1])
		}
	}
}
