package main

import (
	"encoding/json"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline"
)

// TestCourses checks the course table and conversions by arithmetic that needs
// nothing but what the program prints.
func TestCourses(t *testing.T) {
	dir := demo(t, 0)
	wants(t, lapwing(t, dir, "courses").errOut, "there is no archive here yet")
	must(t, dir, "load", filepath.Join(dir, "sheets"))

	var table pipeline.CourseTable
	read(t, dir, &table, "courses")
	if len(table.Sets) != 3 || table.Sets[0].DistanceM != 5000 || len(table.Sets[0].Courses) < 4 {
		t.Fatalf("%d sets, %+v", len(table.Sets), table.Sets)
	}
	set := table.Sets[0].Courses
	total, mean := 0.0, 0.0
	for i, c := range set {
		if c.Rank != i+1 || c.Index == nil || !(*c.Low < *c.Index && *c.Index < *c.High) || i > 0 && *c.Index > *set[i-1].Index {
			t.Errorf("course %d: %+v", i, c)
		}
		// seconds at 25:00 and the index are one figure
		if want := 1500 * (100 / *c.Index - 1); math.Abs(*c.Seconds-want) > 1e-6 {
			t.Errorf("%s: %+.3f s at 25:00, from its index %+.3f", c.Name, *c.Seconds, want)
		}
		total += float64(c.Results)
		mean += float64(c.Results) * math.Log(*c.Index/100)
	}
	// 100 is the mean course, by results
	if math.Abs(mean/total) > 1e-9 {
		t.Errorf("the mean course has index %.6f", 100*math.Exp(mean/total))
	}
	for _, s := range table.Sets[1:] {
		for _, c := range s.Courses {
			if c.Index != nil || c.Rank != 0 || c.Reason == "" {
				t.Errorf("a course on its own: %+v", c)
			}
		}
	}
	out := must(t, dir, "courses").out
	wants(t, out, "5 km, "+"5 courses", set[0].Name, "4 miles, 1 course", "no index: no other course of this distance", "fewer than 20,000 results", "Where two ranges overlap, either course may be the faster one")

	a, b := set[0], set[len(set)-1]
	var c pipeline.Conversion
	read(t, dir, &c, "courses", "convert", "24:31", "--from", a.Course, "--to", b.Name)
	if want := 1471 * *a.Index / *b.Index; math.Abs(c.Seconds-want) > 1e-6 {
		t.Errorf("24:31 becomes %.2f s, by the indices %.2f", c.Seconds, want)
	}
	// the interval of two independent indices
	sd := func(c pipeline.CourseSpeed) float64 { return math.Log(*c.High / *c.Low) / 2 }
	if want := math.Hypot(sd(a), sd(b)); math.Abs(math.Log(c.High/c.Low)/2-want) > 1e-6 || !(c.DayLow < c.Low && c.High < c.DayHigh) {
		t.Errorf("%+v: half width %.5f, want %.5f", c, math.Log(c.High/c.Low)/2, want)
	}
	wants(t, must(t, dir, "courses", "convert", "24:31", "--from", a.Course, "--to", b.Course).out,
		a.Name+" → "+b.Name+", 5 km", "24:31 → ", ") on an average day", "never a personal best")

	var date string
	for _, name := range sheetsOf(t, dir, a.Course) {
		date = max(date, name[len(name)-len("2026-01-03.csv"):len(name)-len(".csv")])
	}
	var day pipeline.Conversion
	read(t, dir, &day, "courses", "convert", "24:31", "--from", a.Course, "--date", date)
	if want := 1471 / (1 + day.ConditionS/1500); day.ConditionS == 0 || math.Abs(day.Seconds-want) > 1e-6 {
		t.Errorf("%+v: want %.2f s", day, want)
	}
	wants(t, must(t, dir, "courses", "convert", "24:31", "--from", a.Course+" 5 km", "--date", date).out, "than usual there for a time of 25:00; that is allowed for")

	for _, x := range []struct {
		code  int
		words string
		args  string
	}{
		{exitUsage, "write it as in 24:31", "convert 2431 --from x --to y"},
		{exitUsage, "--from is missing", "convert 24:31 --to y"},
		{exitUsage, "--to is missing", "convert 24:31 --from " + a.Course},
		{exitUsage, "--date", "convert 24:31 --from x --to y --date Saturday"},
		{exitUsage, "--session needs --date", "convert 24:31 --from x --to y --session 2"},
		{exitFailed, "there is no course \"nowhere\"", "convert 24:31 --from nowhere --to " + a.Course},
		{exitFailed, "only carried over between courses of one distance", "convert 24:31 --from " + a.Course + " --to ember-quay"},
		{exitFailed, "is both courses", "convert 24:31 --from " + a.Course + " --to " + a.Course},
		{exitFailed, "on 1999-01-02 is loaded", "convert 24:31 --from " + a.Course + " --date 1999-01-02"},
	} {
		o := lapwing(t, dir, append([]string{"courses"}, strings.Fields(x.args)...)...)
		if o.code != x.code || o.out != "" {
			t.Errorf("courses %s: exit %d, want %d; prints %q", x.args, o.code, x.code, o.out)
		}
		wants(t, o.errOut, x.words)
	}

	wants(t, must(t, dir, "courses", "audit").out, "Prediction: the latest result of", "Two halves: 5 courses", "Residents and visitors", "Times that fit somebody else better", "Model expects", "would have to move")
	wants(t, must(t, dir, "refresh", "--tune").out, "Nothing to tune", "fewer than 20,000 are too few")
	if exists(dir, "archive", "tuning.csv") {
		t.Error("a tuning that found nothing was kept")
	}
}

// sheetsOf lists the CSV sheets of a course.
func sheetsOf(t testing.TB, dir, course string) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "sheets", course, course+"_????-??-??.csv"))
	if err != nil || len(names) == 0 {
		t.Fatalf("%s has %d sheets, %v", course, len(names), err)
	}
	return names
}

// TestCoursesApart holds a district of two towns that share nobody.
func TestCoursesApart(t *testing.T) {
	files := map[string]string{}
	for week, date := range []string{"2026-01-03", "2026-01-10", "2026-01-17", "2026-01-24", "2026-01-31", "2026-02-07"} {
		files["sheets/alder-bank_"+date+".csv"] = fieldSheet(30 - week)
		files["sheets/fen-drove_"+date+".csv"] = strings.NewReplacer("Moss", "Lund", "Reed", "Berg", "Thorne", "Dahl", "Vale", "Holm", "Wick", "Aas").Replace(fieldSheet(30 - week))
	}
	dir := folderWith(t, files)
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	wants(t, must(t, dir, "courses").out, "5 km, 1 course", "not linked with the courses above")
	o := lapwing(t, dir, "courses", "convert", "24:31", "--from", "alder-bank", "--to", "fen-drove")
	if o.code != exitFailed {
		t.Errorf("exit %d: %s", o.code, o.out)
	}
	wants(t, o.errOut, "no chain of runners")
}

// read calls the program with --json and takes in what it prints.
func read(t testing.TB, dir string, into any, args ...string) {
	t.Helper()
	o := must(t, dir, append(args, "--json")...)
	if err := json.Unmarshal([]byte(o.out), into); err != nil {
		t.Fatalf("%s: %v", o.out, err)
	}
}
