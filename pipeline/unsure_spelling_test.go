package pipeline

import (
	"path/filepath"
	"slices"
	"testing"

	"lapwing/pipeline/unit"
)

func TestAbbreviates(t *testing.T) {
	for _, c := range []struct {
		short, long string
		want        bool
	}{
		{"withy-bank-pk", "withy-bank-park", true},
		{"tern-cmn", "tern-common", true},
		{"tern-rec", "tern-recreation", true},
		{"garrow-wood", "garrow-woods", false},
		{"hill-lane", "mill-lane", false},
		{"withy-bank-peak", "withy-bank-park", false},
		{"withy-pk", "withy-bank-park", false},
		{"tern-lane", "tern-landscape", false},
	} {
		if got := abbreviates(c.short, c.long); got != c.want {
			t.Errorf("%s for %s: %v", c.short, c.long, got)
		}
	}
	if !sameLetters("withybank-park", "withy-bank-park") || !sameLetters("bruecke-am-moos", "brucke-am-moos") || sameLetters("hollin-wood", "hollin-woods") || sameLetters("a", "a") {
		t.Error("sameLetters")
	}
}

// A name with other spaces is the same course from its first week on; one that is
// shortened is asked about.
func TestOneCourseInManySpellings(t *testing.T) {
	for _, c := range []struct {
		name    string
		weeks   []string // titles, loaded week by week
		courses []string
		waits   int
	}{
		{"spaces", []string{"Withy Bank Park", "Withybank Park", "Withy-Bank Park", "withy bank park"}, []string{"withy-bank-park"}, 0},
		{"two dots", []string{"Brücke am Moos", "Bruecke am Moos", "BRÜCKE AM MOOS"}, []string{"brucke-am-moos"}, 0},
		{"shortened", []string{"Withy Bank Park", "Withy Bank Pk"}, []string{"withy-bank-park"}, 1},
		{"another place", []string{"Hollin Wood", "Hollin Woods"}, []string{"hollin-wood", "hollin-woods"}, 0},
	} {
		for _, together := range []bool{false, true} {
			if together && c.name == "shortened" {
				continue // which of the two is short for the other takes more weeks
			}
			dir := t.TempDir()
			pl := openForTest(t, dir)
			waits := 0
			for i, title := range c.weeks {
				day := []string{"3", "10", "17", "24"}[i]
				p := writeSheet(t, dir, "in/week "+day+".csv", title+", "+day+" January 2026\n"+small)
				if !together {
					waits += loadForTest(t, pl, p).Waiting
				}
			}
			if together {
				waits = loadForTest(t, pl, filepath.Join(dir, "in")).Waiting
			}
			var got []string
			for k := range pl.courses.runs {
				got = append(got, k.course.course)
			}
			slices.Sort(got)
			if got = slices.Compact(got); !slices.Equal(got, c.courses) || waits != c.waits {
				t.Errorf("%s, together %v: courses %v, %d waiting; want %v and %d", c.name, together, got, waits, c.courses, c.waits)
			}
		}
	}
}

// Another name of a course is a setting that needs no courses.csv, and is known among
// other words of a title.
func TestOtherNameFromSettings(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	pl.Settings.Courses = map[string]string{"T. Withy riverside": "Withy Bank Park"}
	if err := pl.readCourses(); err != nil {
		t.Fatal(err)
	}
	rep := loadForTest(t, pl, writeSheet(t, dir, "in/a.csv", "T. Withy riverside, 10 January 2026\n"+small))
	if got := rep.Sheets[0].Runs; len(got) != 1 || got[0] != "withy-bank-park 2026-01-10" {
		t.Errorf("runs %v", got)
	}
}

// A date is as it is written, though another weekday stands beside it, unless that is
// the course's weekday, or nothing shows what that is: then it is asked about.
func TestWeekdaySlip(t *testing.T) {
	for _, c := range []struct {
		weekday string
		weeks   []string
		waits   int
		day     string
	}{{"Saturday", []string{"3", "10", "17"}, 1, ""}, {"Monday", []string{"3", "10", "17"}, 0, "2026-01-25"}, {"Monday", []string{"3"}, 1, ""}, {"Monday", nil, 1, ""}} {
		for _, before := range []bool{true, false} {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for _, d := range c.weeks {
				writeSheet(t, dir, "in/week"+d+".csv", "Withy Bank, "+d+" January 2026\n"+small)
			}
			odd := writeSheet(t, dir, "in/odd.csv", "Withy Bank, "+c.weekday+" 25 January 2026\n"+small) // a Sunday
			var rep *LoadReport
			if before {
				for _, d := range c.weeks {
					loadForTest(t, pl, filepath.Join(dir, "in/week"+d+".csv"))
				}
				rep = loadForTest(t, pl, odd)
			} else {
				rep = loadForTest(t, pl, filepath.Join(dir, "in"))
			}
			_, have := pl.courses.runs[runKey{courseKey{"withy-bank", 5000}, unit.NewDay(2026, 1, 25), ""}]
			if rep.Waiting != c.waits || have != (c.day != "") {
				t.Errorf("%s 25 January, weeks %v before %v: %d waiting, loaded %v", c.weekday, c.weeks, before, rep.Waiting, have)
			}
		}
	}
}
