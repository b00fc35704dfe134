package scenario

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/unit"
)

func TestDistrictAgreesWithTruth(t *testing.T) {
	for _, o := range []DistrictOptions{
		{Seed: 5, People: 300, Courses: 14, Weeks: 30, Workbooks: true},
		{Seed: 6, People: 300, Courses: 14, Weeks: 30, Numbers: AllNumbers, Mess: 1, Namesakes: .05, NewSurname: .1},
		{Seed: 7, People: 300, Courses: 14, Weeks: 30, Numbers: NoNumbers, Mess: -1, WrongAge: -1, WrongSex: -1, OnlyResults: true},
	} {
		dir := t.TempDir()
		truth, err := District(dir, o)
		if err != nil {
			t.Fatal(err)
		}
		d := newDistrict(o.filled()) // for its house styles
		checkTruth(t, d, truth, func(path string) []byte {
			b, err := os.ReadFile(filepath.Join(dir, "sheets", path))
			if err != nil {
				t.Fatal(err)
			}
			return b
		})
		if o.OnlyResults {
			for _, l := range truth.Lines {
				if p := truth.People[l.Person]; l.Status != "ok" || l.Name != p.Given+" "+p.Surname &&
					(p.Later == "" || l.Name != p.Given+" "+p.Later) {
					t.Fatalf("a clean district holds %+v of %+v", l, p)
				}
			}
		}
		for _, name := range []string{"lapwing.toml", "archive/courses.csv"} {
			if b, err := os.ReadFile(filepath.Join(dir, name)); err != nil || bytes.Contains(b, []byte("truth")) {
				t.Errorf("%s: %q, %v", name, b, err)
			}
		}
		if n := strings.Count(truth.CourseTable(), "\n"); n != len(truth.Courses)+1 {
			t.Errorf("the course table has %d lines for %d courses", n, len(truth.Courses))
		}
		f, err := os.ReadFile(filepath.Join(dir, "truth.csv"))
		if err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(bytes.NewReader(f)).ReadAll()
		if err != nil || len(rows) != len(truth.Lines)+1 {
			t.Fatalf("truth.csv has %d rows for %d lines, %v", len(rows), len(truth.Lines), err)
		}
		if h := strings.Join(rows[0][:7], ","); h != "sheet,row_number,person,time_ms,course,date,status" {
			t.Errorf("truth.csv begins %q", h)
		}
		for i, l := range truth.Lines {
			if rows[i+1][0] != l.Sheet || rows[i+1][1] != strconv.Itoa(l.Row) || rows[i+1][2] != strconv.Itoa(l.Person) {
				t.Fatalf("truth.csv row %d is %q, want %+v", i+2, rows[i+1], l)
			}
		}
	}
}

func TestDistrictIsDeterministic(t *testing.T) {
	a, b := t.TempDir(), t.TempDir()
	o := DistrictOptions{Seed: 9, People: 150, Courses: 8, Weeks: 20, Workbooks: true}
	truth, err := District(a, o)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := District(b, o); err != nil {
		t.Fatal(err)
	}
	paths := []string{"truth.csv"}
	for _, r := range truth.Runs {
		paths = append(paths, filepath.Join("sheets", r.Sheet))
	}
	for _, p := range paths {
		x, err := os.ReadFile(filepath.Join(a, p))
		if err != nil {
			t.Fatal(err)
		}
		y, err := os.ReadFile(filepath.Join(b, p))
		if err != nil || !bytes.Equal(x, y) {
			t.Errorf("%s differs, %v", p, err)
		}
	}
}

// The mess is as large as it is said to be.
func TestDistrictMess(t *testing.T) {
	o := DistrictOptions{Seed: 3, People: 1500, Courses: 10, Weeks: 40, Namesakes: .02, NewSurname: .04}
	truth, err := District(t.TempDir(), o)
	if err != nil {
		t.Fatal(err)
	}
	status := map[string]float64{}
	other, wholes := 0.0, 0.0
	for _, l := range truth.Lines {
		status[l.Status]++
		p := truth.People[l.Person]
		if l.Status == "ok" {
			wholes++
			if l.Name != p.Given+" "+p.Surname && (p.Later == "" || l.Name != p.Given+" "+p.Later) {
				other++
			}
		}
	}
	n := float64(len(truth.Lines))
	t.Logf("%.0f lines, %v, %.3f spelt otherwise", n, status, other/wholes)
	near := func(what string, got, lo, hi float64) {
		if got < lo || got > hi {
			t.Errorf("%s: %.4f, want %.4f to %.4f", what, got, lo, hi)
		}
	}
	near("unnamed", status["unnamed"]/n, .018, .034)
	near("stopped", status["dnf"]/n, .002, .007)
	near("repeated", status["repeat"]/n, .00005, .0015)
	near("spelt otherwise", other/wholes, .05, .30)
	later, names := 0, map[string]int{}
	for _, p := range truth.People {
		if p.Later != "" {
			later++
		}
		names[p.Given+" "+p.Surname]++
	}
	near("new surnames", float64(later)/1500, .02, .05)
	shared := 0
	for _, k := range names {
		if k > 1 {
			shared += k
		}
	}
	near("people with a namesake", float64(shared)/1500, .03, .25)
}

// A wrong age or sex is as rare as asked: read back from the ages printed.
func TestDistrictWrongAges(t *testing.T) {
	o := DistrictOptions{Seed: 12, People: 1200, Courses: 24, Weeks: 30, Mess: -1, WrongAge: .05, OnlyResults: true}
	dir := t.TempDir()
	truth, err := District(dir, o)
	if err != nil {
		t.Fatal(err)
	}
	d := newDistrict(o.filled())
	var wrong, all, wrongSex, allSex float64
	grids := map[string][][]string{}
	for _, l := range truth.Lines {
		run := truth.Runs[l.Run]
		h := d.courses[run.Course].house
		if grids[l.Sheet] == nil {
			b, err := os.ReadFile(filepath.Join(dir, "sheets", l.Sheet))
			if err != nil {
				t.Fatal(err)
			}
			if grids[l.Sheet], err = h.grid(b, ""); err != nil {
				t.Fatal(err)
			}
		}
		p := truth.People[l.Person]
		for i, c := range h.columns {
			cell := grids[l.Sheet][l.Row-1][i]
			switch c.holds {
			case ageInYears:
				by, bm, bd := p.Born.Date()
				y, m, dd := run.Date.Date()
				age := y - by
				if time.Month(m) < time.Month(bm) || m == bm && dd < bd {
					age--
				}
				all++
				if cell != strconv.Itoa(age) {
					wrong++
				}
			case sexField:
				allSex++
				if cell != h.sexes[p.Sex[0]] {
					wrongSex++
				}
			}
		}
	}
	if all < 1000 || math.Abs(wrong/all-.05) > .012 {
		t.Errorf("%.0f of %.0f ages are wrong, want 5 %%", wrong, all)
	}
	if allSex < 1000 || math.Abs(wrongSex/allSex-.01) > .005 {
		t.Errorf("%.0f of %.0f sexes are wrong, want 1 %%", wrongSex, allSex)
	}
}

func TestDistrictRefuses(t *testing.T) {
	for _, o := range []DistrictOptions{{Courses: 1}, {People: -1}, {Weeks: -1}, {Courses: placeCount() + 1}} {
		if _, err := District(t.TempDir(), o); err == nil {
			t.Errorf("%+v was accepted", o)
		}
	}
}

func TestSpelling(t *testing.T) {
	for in, want := range map[string]string{"Łukasz": "Lukasz", "Søren": "Soren", "Groß": "Gross", "Nguyễn": "Nguyen", "Åberg": "Aberg"} {
		if got := plainLetters(in); got != want {
			t.Errorf("plainLetters(%q) = %q, want %q", in, got, want)
		}
	}
	if got := garble("José"); got != "JosÃ©" {
		t.Errorf("garble(José) = %q", got)
	}
	if got := improvement(0); got != 1 {
		t.Errorf("nothing is gained before the first run: %g left", got)
	}
	// A decent check of the calendar of mud: none in July, most in mid-January.
	if j, jan := mudSeason(unit.NewDay(2026, 7, 15).Time().YearDay()-1), mudSeason(14); j != 0 || jan != 1 {
		t.Errorf("mud in July %g, in January %g", j, jan)
	}
}
