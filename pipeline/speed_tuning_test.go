package pipeline

import (
	"context"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"lapwing/pipeline/insight/speed"
)

func TestTuningReach(t *testing.T) {
	for _, c := range [][2]int{{0, 0}, {19999, 0}, {20000, 20000}, {29999, 20000}, {30000, 30000}, {45000, 45000}, {67499, 45000}, {67500, 67500}} {
		if got := tuningReach(c[0]); got != c[1] {
			t.Errorf("%d results: %d, want %d", c[0], got, c[1])
		}
	}
}

// columnsUpTo makes up the columns of an archive: courses c with a run a week
// from week c on, n runners who run at one course or its neighbour every week.
func columnsUpTo(courses, weeks, n int) *speedColumns {
	in := &speedColumns{Input: &speed.Input{Offsets: []int32{0}}}
	at := make([][]int32, courses)
	for c := range courses {
		in.Courses = append(in.Courses, speed.CourseInfo{DistanceM: 5000})
		at[c] = make([]int32, weeks)
		for w := c; w < weeks; w++ {
			at[c][w] = int32(len(in.Runs))
			in.Runs = append(in.Runs, speed.RunInfo{Course: int32(c), Day: int32(7 * w)})
		}
	}
	for r := range n {
		for w := range weeks {
			c := (r + w*(r%3)) % courses
			if c <= w {
				in.Run = append(in.Run, at[c][w])
				in.LogTime = append(in.LogTime, float32(r%17)/100)
			}
		}
		in.Offsets = append(in.Offsets, int32(len(in.Run)))
	}
	return in
}

// What tuning looks at depends on the earliest results only: later weeks, and
// courses that open in them, change nothing.
func TestTuningLooksAtTheEarliestResults(t *testing.T) {
	short, long := columnsUpTo(6, 20, 300), columnsUpTo(9, 40, 300)
	if err := short.Check(); err != nil {
		t.Fatal(err)
	}
	if err := long.Check(); err != nil {
		t.Fatal(err)
	}
	// the same archive twenty weeks later: drop what came after
	early := &speedColumns{Input: &speed.Input{Offsets: []int32{0}, Courses: long.Courses, Runs: long.Runs}}
	for r := range long.Runners() {
		for i := long.Offsets[r]; i < long.Offsets[r+1]; i++ {
			if long.Runs[long.Run[i]].Day < 7*20 {
				early.Run, early.LogTime = append(early.Run, long.Run[i]), append(early.LogTime, long.LogTime[i])
			}
		}
		early.Offsets = append(early.Offsets, int32(len(early.Run)))
	}
	const n = 3000
	if len(early.Run) < n || len(long.Run) < 2*n {
		t.Fatalf("%d and %d results", len(early.Run), len(long.Run))
	}
	a, b := early.earliest(n), long.earliest(n)
	if err := a.Check(); err != nil {
		t.Fatal(err)
	}
	if a.key() != b.key() || a.upto != b.upto {
		t.Errorf("%d results up to %s, later %d up to %s", len(a.Run), a.upto, len(b.Run), b.upto)
	}
	if len(a.Run) < n || len(a.Run) > n+300 {
		t.Errorf("%d results, want %d and the rest of a run", len(a.Run), n)
	}
	long.LogTime[0] += .01
	if c := long.earliest(n); c.key() == a.key() {
		t.Error("another time has the same key")
	}
}

// More than tuneMost results are cut down to whole courses.
func TestTuningOfALargeArchiveLooksAtSomeCourses(t *testing.T) {
	in := columnsUpTo(10, 400, 900)
	if len(in.Run) <= 2*tuneMost {
		t.Fatalf("only %d results", len(in.Run))
	}
	s := in.earliest(len(in.Run))
	if err := s.Check(); err != nil {
		t.Fatal(err)
	}
	if len(s.Run) > tuneMost*5/4 || len(s.Run) < tuneMost/4 || len(s.Courses) >= 10 || s.results != len(in.Run) {
		t.Errorf("%d of %d results on %d courses, for %d", len(s.Run), len(in.Run), len(s.Courses), s.results)
	}
	count := map[int32]int{}
	for _, e := range s.Run {
		count[e]++
	}
	if len(count) != len(s.Runs) {
		t.Errorf("%d runs, %d of them with results", len(s.Runs), len(count))
	}
}

// What somebody had tuned by hand is kept in the archive folder to the last
// bit, until the archive has grown by half or the model is another.
func TestTunedByHand(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	pl := openForTest(t, dir)
	h := speed.Defaults()
	h.Sigma, h.Share = 1./61, .1234567890123456789
	line := func(version string, results int, h speed.Hyper) []string {
		l := []string{"2026-02-01T10:00:00Z", version, strconv.Itoa(results), strconv.Itoa(results), "2026-01-31", tunedQuantities, "1.25", "1.5"}
		for _, f := range h.Fields() {
			l = append(l, strconv.FormatFloat(*f.Value, 'g', -1, 64))
		}
		return l
	}
	if err := pl.Archive.AppendTable(tuningTable, tuningColumns(), [][]string{line(ModelVersion, 24000, h), line("of tomorrow", 90000, speed.Defaults())}); err != nil {
		t.Fatal(err)
	}
	in := columnsUpTo(3, 100, 260)
	q, err := pl.quantities(ctx, in)
	if err != nil {
		t.Fatal(err)
	}
	if q.Hyper != h || !q.ByHand || q.Results != 24000 || tuningReach(len(in.Run)) != 20000 {
		t.Errorf("%d results: %+v", len(in.Run), q)
	}
	if w := q.words(); !strings.Contains(w, "24,000 results up to 2026-01-31") || !strings.Contains(w, "1.28 times as likely") {
		t.Error(w)
	}
	// 45 000 is more than half as much again as 24 000
	in = columnsUpTo(3, 100, 480)
	if q, err = pl.quantities(ctx, in); err != nil || q.ByHand || tuningReach(len(in.Run)) != 45000 {
		t.Errorf("%d results: %+v, %v", len(in.Run), q, err)
	}
	// the automatic one is kept and found again
	again, err := pl.quantities(ctx, in)
	if err != nil || again != q {
		t.Errorf("%+v, first %+v, %v", again, q, err)
	}
	path := filepath.Join(dir, "archive", tuningTable)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(data), "0.01639", "thin", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err = pl.quantities(ctx, in); err == nil || !strings.Contains(err.Error(), "tuning.csv:2:") || !strings.Contains(err.Error(), "refresh --tune") {
		t.Errorf("a spoilt line: %v", err)
	}
}
