package pipeline

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

func TestDayOfNumber(t *testing.T) {
	week := func(n int) unit.Day { return unit.NewDay(2026, 1, 3) + unit.Day(7*n) }
	at := func(pairs ...int) (out []numberedDay) { // number and week, in turn
		for i := 0; i < len(pairs); i += 2 {
			out = append(out, numberedDay{pairs[i], week(pairs[i+1]), fmt.Sprint("run ", pairs[i])})
		}
		return out
	}
	for _, c := range []struct {
		name  string
		known []numberedDay
		n     int
		week  bool
		saved unit.Day
		want  int // week, -1 where it is not known
	}{
		{"between", at(10, 0, 20, 10), 13, false, 0, 3},
		{"a week was left out", at(10, 0, 20, 11), 13, false, 0, -1},
		{"between nearer ones", at(10, 0, 14, 4, 20, 11), 13, false, 0, 3},
		{"the same number", at(10, 0), 10, false, 0, 0},
		{"one number with two days", at(10, 0, 10, 1, 20, 10), 13, false, 0, -1},
		{"two numbers with one day", at(10, 0, 11, 0, 20, 10), 13, false, 0, -1},
		{"after, saved on the day", at(10, 0), 11, false, week(1), 1},
		{"after, saved six days later", at(10, 0), 11, false, week(1) + 6, 1},
		{"after, saved a week later", at(10, 0), 11, false, week(2), -1},
		{"after, saved before", at(10, 0), 11, false, week(1) - 1, -1},
		{"before", at(10, 1), 9, false, week(0), -1},
		{"nothing known", nil, 9, false, week(0), -1},
		{"weeks of the calendar", at(10, 10, 11, 11), 20, true, 0, 20},
		{"one week of the calendar", at(10, 10), 20, true, 0, -1},
	} {
		day, _, ok := dayOfNumber(c.known, sheet.Numbered{N: c.n, Week: c.week}, c.saved)
		if ok != (c.want >= 0) || ok && day != week(c.want) {
			t.Errorf("%s: %v %v, want week %d", c.name, day, ok, c.want)
		}
	}
}

// A club that writes neither course nor date is asked about the first and the last of
// its sheets; the others follow, with the same result after a rebuild. Sheets of other
// people, and those beyond a week that was left out, are asked about still.
func TestSeries(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	ctx := context.Background()
	in := filepath.Join(dir, "in")
	old := time.Date(2026, 11, 1, 9, 0, 0, 0, time.UTC)
	run := func(name string, from, first int) string {
		p := writeSheet(t, dir, "in/"+name, strings.TrimPrefix(fieldSheet("", from, from+20, first, 9, "", nil), "\n"))
		if err := os.Chtimes(p, old, old); err != nil {
			t.Fatal(err)
		}
		return p
	}
	first := run("Run 1.csv", 0, 1100)
	for n := 2; n < 8; n++ {
		run(fmt.Sprintf("Run %d.csv", n), n%4, 1100+n)
	}
	last := run("Run 8.csv", 1, 1118)
	run("Run 9.csv", 2, 1110)
	run("Run 5 corrected.csv", 1, 1106)
	run("Run 6.txt", 30, 1150) // nobody of the club
	if rep := loadForTest(t, pl, in); rep.Loaded != 0 || rep.Waiting != 11 {
		t.Fatalf("%+v", rep)
	}
	for _, answer := range []struct {
		file string
		hand ByHand
	}{{first, ByHand{Course: "Garrow Moss"}}, {first, ByHand{Date: "2026-01-03"}}, {last, ByHand{Date: "2026-02-21"}}} {
		if _, err := pl.Load(ctx, []string{answer.file}, answer.hand); err != nil {
			t.Fatal(err)
		}
	}
	runs := func() (out string) {
		if _, err := pl.Refresh(ctx, true); err != nil {
			t.Fatal(err)
		}
		for _, s := range dump(t, pl, "select run_date::varchar || ' ' || sheet || ' ' || count(*) from main.results where status = 'ok' and course = 'garrow-moss' group by run_date, sheet order by all") {
			out += s + "; "
		}
		return out
	}
	const want = "2026-01-03 Run 1.csv 20; 2026-01-10 Run 2.csv 20; 2026-01-17 Run 3.csv 20; 2026-01-24 Run 4.csv 20; 2026-01-31 Run 5 corrected.csv 20; 2026-02-07 Run 6.csv 20; 2026-02-14 Run 7.csv 20; 2026-02-21 Run 8.csv 20; "
	if got := runs(); got != want {
		t.Errorf("runs:\n%s\nwant\n%s", got, want)
	}
	rep := loadForTest(t, pl, in)
	if rep.Waiting != 2 || rep.Loaded != 0 {
		t.Errorf("loaded again: %+v", rep)
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range ledger {
		if waits := e.Path == "Run 9.csv" || e.Path == "Run 6.txt"; waits != (e.State == store.Waiting) {
			t.Errorf("%s is %s", e.Path, e.State)
		}
	}
	if err := pl.startOver(ctx); err != nil {
		t.Fatal(err)
	}
	if got := runs(); got != want {
		t.Errorf("after a rebuild:\n%s\nwant\n%s", got, want)
	}
}
