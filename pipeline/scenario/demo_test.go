package scenario

import (
	"bytes"
	"encoding/csv"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"lapwing/pipeline/unit"
)

// made is the demo, made once for the tests that only look at it.
var made = sync.OnceValues(func() (map[string][]byte, *Truth) {
	files, truth, err := DemoFiles()
	if err != nil {
		panic(err)
	}
	return files, truth
})

func TestDemoAgreesWithTruth(t *testing.T) {
	files, truth := made()
	checkTruth(t, newDemo(), truth, func(path string) []byte { return files["sheets/"+path] })
	sheets := map[string]bool{}
	for _, l := range truth.Lines {
		sheets["sheets/"+l.Sheet] = true
	}
	for path := range files {
		if strings.HasPrefix(path, "sheets/") && !sheets[path] {
			t.Errorf("%s is not in the truth", path)
		}
	}
}

func TestDemoIsAsLargeAsPromised(t *testing.T) {
	files, truth := made()
	size, sheets := 0, 0
	for path, data := range files {
		size += len(data)
		if strings.HasPrefix(path, "sheets/") {
			sheets++
		}
	}
	ran := map[int]bool{}
	weeks, distances, days := map[int]bool{}, map[float64]bool{}, map[string]bool{}
	for _, l := range truth.Lines {
		ran[l.Person] = true
	}
	for _, r := range truth.Runs {
		weeks[r.Date.Week()] = true
		c := truth.Courses[r.Course]
		distances[c.DistanceM], days[c.Weekday.String()] = true, true
		if r.Date.Weekday() != c.Weekday && r.Date != newYear {
			t.Errorf("%s held on %s, a %s", c.Name, r.Date, r.Date.Weekday())
		}
	}
	t.Logf("%d bytes, %d sheets, %d runs, %d lines, %d people", size, sheets, len(truth.Runs), len(truth.Lines), len(ran))
	for what, ok := range map[string]bool{
		"200 to 300 sheets":         sheets >= 200 && sheets <= 300,
		"under 4 MB":                size < 4<<20,
		"about 500 people":          len(ran) >= 470 && len(ran) <= 560,
		"40 weeks":                  len(weeks) == demoWeeks,
		"3 km, 4 miles and 5 km":    len(distances) == 3 && distances[3000] && distances[6437.376] && distances[5000],
		"several weekdays":          len(days) >= 4,
		"at least 6 courses":        len(truth.Courses) >= 6,
		"ends in spring 2026":       truth.Runs[len(truth.Runs)-1].Date >= unit.NewDay(2026, 4, 1) && truth.Runs[len(truth.Runs)-1].Date < unit.NewDay(2026, 11, 1),
		"one more sheet than runs":  sheets == len(truth.Runs)+1, // the corrected one
		"some weeks without a run":  len(truth.Runs) < demoWeeks*len(truth.Courses)-8,
		"settings":                  len(files["lapwing.toml"]) > 0,
		"the truth is not in there": !slices.ContainsFunc(slices.Collect(maps.Keys(files)), func(p string) bool { return strings.Contains(p, "truth") }),
	} {
		if !ok {
			t.Errorf("not so: %s", what)
		}
	}
}

// Everything that the demo is meant to show is there to be seen.
func TestDemoCast(t *testing.T) {
	files, truth := made()
	as, status := map[string]int{}, map[string]int{}
	exchanged, children, both := 0, 0, 0
	onNewYear := map[int]int{}
	for _, l := range truth.Lines {
		as[l.As]++
		status[l.Status]++
		if l.Exchanged {
			exchanged++
		}
		if truth.Runs[l.Run].Date == newYear {
			onNewYear[l.Person]++
		}
	}
	for _, n := range onNewYear {
		if n == 2 {
			both++
		}
	}
	for _, p := range truth.People {
		if p.Born > unit.NewDay(2007, 7, 14) {
			children++
		}
	}
	for _, want := range []string{"runner", "walker", "pacer", "buggy", "dog", "guided", "guide", "adult with a child", "back marker", "racing wheelchair or handcycle"} {
		if as[want] == 0 {
			t.Errorf("nobody takes part as %s", want)
		}
	}
	if as["guide"] < as["guided"] {
		t.Errorf("%d guided finishes but %d of guides", as["guided"], as["guide"])
	}
	for _, want := range []string{"ok", "unnamed", "untimed", "dnf", "superseded"} {
		if status[want] == 0 {
			t.Errorf("no line is %s", want)
		}
	}
	if exchanged == 0 || children < 24 || both == 0 {
		t.Errorf("%d exchanged, %d children, %d twice on New Year's Day", exchanged, children, both)
	}
	text := func(path string) string { return string(files["sheets/"+path]) }
	if s := text("osierholm-meadow/osierholm-meadow_" + garbled.String() + ".csv"); !strings.Contains(s, "Ã") {
		t.Error("the garbled sheet holds no garbled name")
	}
	first, second := text("wrenlow-common/wrenlow_"+reissued.String()+".csv"), text("wrenlow-common/wrenlow_"+reissued.String()+"_corrected.csv")
	if a, b := strings.Count(first, "\n"), strings.Count(second, "\n"); b != a+2 {
		t.Errorf("the first sheet has %d lines, the corrected one %d, want two more", a, b)
	}
	for path, data := range files {
		switch {
		case strings.Contains(path, "garrowstone"):
			if utf8.Valid(data) && bytes.ContainsFunc(data, func(r rune) bool { return r > 127 }) {
				t.Errorf("%s is UTF-8", path)
			}
		case strings.HasSuffix(path, ".xlsx"):
			if !bytes.HasPrefix(data, []byte("PK")) {
				t.Errorf("%s is no workbook", path)
			}
		}
	}
}

func TestDemoIsDeterministic(t *testing.T) {
	one, _ := made()
	two, _, err := DemoFiles()
	if err != nil {
		t.Fatal(err)
	}
	if len(one) != len(two) {
		t.Fatalf("%d and %d files", len(one), len(two))
	}
	for path, data := range one {
		if !bytes.Equal(data, two[path]) {
			t.Errorf("%s differs", path)
		}
	}
}

func TestWriteDemo(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "district")
	if err := WriteDemo(dir); err != nil {
		t.Fatal(err)
	}
	files, _ := made()
	found := 0
	if err := filepath.WalkDir(dir, func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		found++
		rel, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		data, err := os.ReadFile(path)
		if !bytes.Equal(data, files[filepath.ToSlash(rel)]) {
			t.Errorf("%s is not as made", rel)
		}
		return err
	}); err != nil || found != len(files) {
		t.Errorf("%d files on disk, %d made, %v", found, len(files), err)
	}
	if err := WriteDemo(dir); err != nil {
		t.Errorf("writing the same demo again: %v", err)
	}
	members := filepath.Join(dir, "archive", "members.csv")
	if err := os.WriteFile(members, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := WriteDemo(dir); err == nil {
		t.Error("a changed file raised no error")
	}
	if b, _ := os.ReadFile(members); string(b) != "mine" {
		t.Error("a changed file was overwritten")
	}
}

// The side tables name people and courses that exist, once.
func TestSideTables(t *testing.T) {
	files, truth := made()
	people, courses := map[string]int{}, map[string]bool{}
	for _, p := range truth.People {
		people[p.Given+" "+p.Surname]++
	}
	for _, c := range truth.Courses {
		courses[c.Slug] = true
	}
	ran := map[string]bool{}
	for _, l := range truth.Lines {
		p := truth.People[l.Person]
		ran[p.Given+" "+p.Surname+truth.Runs[l.Run].Date.String()] = true
	}
	for name, want := range map[string]struct{ heading, person, course string }{
		"courses.csv":    {"course,name,distance_m,weekday,valid_from,valid_to,measured", "", "course"},
		"history.csv":    {"fact,course,name,sex,age_group,distance_m,finishes,time,date", "name", "course"},
		"volunteers.csv": {"name,role,course,date", "name", "course"},
		"members.csv":    {"person,club,claim,from,to,birth_date", "person", ""},
	} {
		rows, err := csv.NewReader(bytes.NewReader(files["archive/"+name])).ReadAll()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if h := strings.Join(rows[0], ","); h != want.heading || len(rows) < 7 {
			t.Errorf("%s has the heading %q and %d rows", name, h, len(rows))
		}
		for i, row := range rows[1:] {
			get := func(column string) string {
				if k := slices.Index(rows[0], column); k >= 0 {
					return row[k]
				}
				return ""
			}
			if p := get(want.person); p != "" && people[p] != 1 {
				t.Errorf("%s row %d names %q, who are %d people", name, i+2, p, people[p])
			}
			if c := get(want.course); c != "" && !courses[c] {
				t.Errorf("%s row %d: no course %q", name, i+2, c)
			}
			for _, column := range []string{"date", "from", "to", "valid_from", "birth_date"} {
				if s := get(column); s != "" {
					if _, err := unit.ParseDay(s); err != nil {
						t.Errorf("%s row %d: %v", name, i+2, err)
					}
				}
			}
			if name == "volunteers.csv" && ran[get("name")+get("date")] {
				t.Errorf("%s both ran and helped on %s", get("name"), get("date"))
			}
		}
	}
}

func BenchmarkDemo(b *testing.B) {
	for b.Loop() {
		if _, _, err := DemoFiles(); err != nil {
			b.Fatal(err)
		}
	}
}
