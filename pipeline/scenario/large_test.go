package scenario

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"hash/fnv"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// line is what the truth says about one line of a season list.
func (a *LargeArchive) line(r *LargeRun, i int) []string {
	p := r.Person[i]
	sex := string(a.Sex(p))
	group := age.DefaultScheme().Name(age.On(a.Born(p), r.Date), sex)
	return []string{strconv.Itoa(i + 1), a.Name(p), strconv.Itoa(a.Number(p)), group, sex, a.Club(p),
		unit.Clock(r.TimeMS[i] / 1000), a.Courses[r.Course].Name, r.Date.String()}
}

func TestSeasonListAgreesWithTruth(t *testing.T) {
	const results = 30_000
	var text bytes.Buffer
	var want [][]string
	var a *LargeArchive
	var err error
	a, err = NewLarge(Large(results))
	if err != nil {
		t.Fatal(err)
	}
	seen := make([]int, a.Runners())
	err = a.WriteSeason(&text, func(r *LargeRun) error {
		today := map[int32]bool{}
		for i, p := range r.Person {
			want = append(want, a.line(r, i))
			seen[p]++
			if today[p] {
				t.Errorf("%s twice in one run", a.Name(p))
			}
			today[p] = true
			if i > 0 && r.TimeMS[i] < r.TimeMS[i-1] {
				t.Errorf("place %d faster than the one before", i+1)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	got, err := csv.NewReader(&text).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != results+1 || len(want) != results {
		t.Fatalf("%d lines and %d true results, want %d and %d", len(got), len(want), results+1, results)
	}
	if h := strings.Join(got[0], ","); h != "position,name,number,age group,sex,club,time,course,date" {
		t.Errorf("heading %q", h)
	}
	for i := range want {
		if fmt.Sprint(got[i+1]) != fmt.Sprint(want[i]) {
			t.Fatalf("line %d is %q, truth %q", i+2, got[i+1], want[i])
		}
		if i > 0 && want[i][8] < want[i-1][8] {
			t.Fatalf("line %d is out of order of date", i+2)
		}
	}
	for p, n := range seen {
		if n == 0 {
			t.Errorf("%s has no result", a.Name(int32(p)))
		}
	}
}

// The same archive, whatever the number of processors and however it is cut
// into files.
func TestLargeIsDeterministic(t *testing.T) {
	o := Large(60_000)
	sum := func() uint64 {
		h := fnv.New64a()
		if _, err := Archive(o, h); err != nil {
			t.Fatal(err)
		}
		return h.Sum64()
	}
	one := func() uint64 { defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1)); return sum() }()
	two := func() uint64 { defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(4)); return sum() }()
	if one != two {
		t.Error("one and four threads give different bytes")
	}
	o.Seed = 2
	if sum() == one {
		t.Error("another seed gives the same bytes")
	}
	o.Seed = 1
	dir := t.TempDir()
	var whole bytes.Buffer
	var paths []string
	a, err := ArchiveSheets(o, dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := a.WriteSeason(&whole, func(r *LargeRun) error { paths = append(paths, a.SheetName(r)); return nil }); err != nil {
		t.Fatal(err)
	}
	joined := []byte(a.heading())
	for _, p := range paths {
		b, err := os.ReadFile(filepath.Join(dir, p))
		if err != nil {
			t.Fatal(err)
		}
		joined = append(joined, bytes.TrimPrefix(b, []byte(a.heading()))...)
	}
	if !bytes.Equal(joined, whole.Bytes()) {
		t.Error("the sheets end to end are not the season list")
	}
	files := 0
	if err := filepath.WalkDir(dir, func(_ string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			files++
		}
		return err
	}); err != nil || files != len(paths) {
		t.Errorf("%d files for %d runs, %v", files, len(paths), err)
	}
}

// The true parts of a time add up to it, to the rounding to a whole second and
// the noise; and the noise is as wide as it is said to be.
func TestLargeModelAddsUp(t *testing.T) {
	a, err := NewLarge(Large(40_000))
	if err != nil {
		t.Fatal(err)
	}
	var n, sum, squares, away float64
	if err := a.Each(func(r *LargeRun) error {
		for i := range r.Person {
			e := math.Log(float64(r.TimeMS[i]-500)/1000) -
				(float64(r.Form[i]) + a.Courses[r.Course].Effect + r.Conditions + float64(r.Shortfall[i]))
			n, sum, squares = n+1, sum+e, squares+e*e
			if a.Home(r.Person[i]) != r.Course {
				away++
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	mean, sd := sum/n, math.Sqrt(squares/n)
	if math.Abs(mean) > .0005 || math.Abs(sd-noiseSD) > .0005 {
		t.Errorf("residual mean %.5f, sd %.5f, want 0 and %.3f", mean, sd, noiseSD)
	}
	if share := away / n; share < .12 || share > .25 {
		t.Errorf("%.3f of results away from home", share)
	}
}

func TestLargeOptionsRefused(t *testing.T) {
	for _, o := range []LargeOptions{
		{Results: -1}, {Results: 10, Runners: 11}, {Results: 100, Courses: placeCount() + 1},
		{Results: 1000, Runners: 10, Weeks: 5},
	} {
		if _, err := NewLarge(o); err == nil {
			t.Errorf("%+v was accepted", o)
		}
	}
}

func TestCourseNamesAreDifferent(t *testing.T) {
	seen := map[string]bool{}
	for k := range placeCount() {
		_, name := placeName(k)
		if s := slug(name); seen[s] {
			t.Fatalf("course %d, %s, is named twice", k, name)
		} else {
			seen[s] = true
		}
	}
}

// BenchmarkArchive is the speed of making lines, written nowhere.
func BenchmarkArchive(b *testing.B) {
	for _, results := range []int{100_000, 1_000_000} {
		b.Run(fmt.Sprint(results), func(b *testing.B) {
			for b.Loop() {
				start := time.Now()
				if _, err := Archive(Large(results), io.Discard); err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(results)/time.Since(start).Seconds(), "rows/s")
			}
		})
	}
}
