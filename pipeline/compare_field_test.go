package pipeline

import (
	"context"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"lapwing/pipeline/store"
)

// fieldSheet writes a sheet of a run: people from..to of the stock, whose times
// start at a second and are some seconds apart, by a step of the person's own.
func fieldSheet(title string, from, to, first, step int, head string, more func(n int) string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\nPosition,Name,Time%s\n", title, head)
	s := first
	for n := from; n < to; n++ {
		s += step + n*7%5
		fmt.Fprintf(&b, "%d,%s %s,%d:%02d", n-from+1, strings.Fields("Ana Bea Cora Dan Eli Fay Gus Hal")[n%8], strings.Fields("Alder Birch Cole Dunn Eames Frost Gale")[n/8%7], s/60, s%60)
		if more != nil {
			b.WriteString("," + more(n))
		}
		b.WriteString("\n")
	}
	return b.String()
}

// A later sheet of a run's course and date takes the place of the earlier one only
// where it can be of the same field.
func TestAnotherField(t *testing.T) {
	const title = "Garrow Moss 4 April 2026"
	first := fieldSheet(title, 0, 30, 1100, 9, "", nil)
	sex := func(s string) func(int) string { return func(int) string { return s } }
	for _, c := range []struct {
		name, earlier, later string
		kind                 string
		counted              int // finishers of the run
	}{
		{"one time corrected", first, strings.Replace(first, "19:", "18:", 1), "new-issue", 30},
		{"the clock was started late", first, fieldSheet(title, 0, 30, 1112, 9, "", nil), "new-issue", 30},
		{"a name written otherwise", first, strings.ReplaceAll(first, "Ana ", "Anna "), "new-issue", 30},
		{"all names short", first, strings.NewReplacer("Ana ", "A. ", "Bea ", "B. ", "Cora ", "C. ", "Dan ", "D. ", "Eli ", "E. ", "Fay ", "F. ", "Gus ", "G. ", "Hal ", "H. ").Replace(first), "new-issue", 30},
		{"a place more at the front", first, strings.Replace(fieldSheet(title, 0, 30, 1100, 9, "", nil), "\n1,", "\n1,Zoe Wray,17:59\n1,", 1), "new-issue", 31},
		{"last week's tab with this week's times", first, fieldSheet(title, 0, 30, 1107, 11, "", nil), anotherField, 30},
		{"a juniors' race", first, fieldSheet(title, 40, 52, 1500, 8, "", nil), anotherField, 30},
		{"another evening's field", first, fieldSheet(title, 26, 56, 1120, 9, "", nil), anotherField, 30},
		{"women beside men", fieldSheet(title, 0, 30, 1100, 9, ",Sex", sex("M")), fieldSheet(title, 30, 50, 1150, 9, ",Sex", sex("F")), "second-sheet", 50},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			writeSheet(t, dir, "in/a.csv", c.earlier)
			writeSheet(t, dir, "in/b.csv", c.later)
			rep := loadForTest(t, pl, filepath.Join(dir, "in"))
			ctx := context.Background()
			var kinds []string
			compared, err := pl.problemsWhere(ctx, "p.kind in ("+comparedKinds+")")
			for _, p := range compared {
				kinds = append(kinds, p.Kind)
			}
			n := 0
			if err := pl.DB.Get(ctx, "select coalesce(sum(finishers), 0)::integer from main.runs", &n); err != nil {
				t.Fatal(err)
			}
			if err != nil || rep.Loaded != 2 || len(kinds) != 1 || kinds[0] != c.kind || n != c.counted {
				t.Errorf("%d loaded, problems %v, %d finishers (%v); want %s and %d finishers", rep.Loaded, kinds, n, err, c.kind, c.counted)
			}
		})
	}
}

// Whichever sheet of two fields is reissued, the new issue takes the place of its
// own; and the answer --session 2 makes two runs of them.
func TestAnotherFieldIsAnswered(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	ctx := context.Background()
	const title = "Garrow Moss 4 April 2026"
	counts := func() (out string) {
		for _, s := range dump(t, pl, "select sheet || ' ' || coalesce(session, '-') || ' ' || status || ' ' || count(*) from main.results group by sheet, session, status order by all") {
			out += s + "; "
		}
		return out
	}
	field, juniors := fieldSheet(title, 0, 30, 1100, 9, "", nil), fieldSheet(title, 40, 52, 1500, 8, "", nil)
	writeSheet(t, dir, "in/a.csv", field)
	b := writeSheet(t, dir, "in/b.csv", juniors)
	writeSheet(t, dir, "in/c.csv", strings.Replace(field, "Ana Alder", "Zoe Wray", 1))
	writeSheet(t, dir, "in/d.csv", strings.Replace(juniors, ",25:", ",26:", 1))
	loadForTest(t, pl, filepath.Join(dir, "in"))
	if got, want := counts(), "a.csv - superseded 30; b.csv - superseded 12; c.csv - ok 30; d.csv - superseded 12; "; got != want {
		t.Errorf("four sheets of two fields: %s\nwant %s", got, want)
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range ledger {
		if e.Path == "b.csv" || e.Path == "d.csv" {
			if _, err := pl.SetState(ctx, e.Hash, store.Withdrawn); err != nil {
				t.Fatal(err)
			}
		}
	}
	if _, err := pl.Load(ctx, []string{b}, ByHand{Session: "2"}); err != nil {
		t.Fatal(err)
	}
	if _, err := pl.Refresh(ctx, false); err != nil {
		t.Fatal(err)
	}
	if got, want := counts(), "a.csv - superseded 30; b.csv 2 ok 12; c.csv - ok 30; "; got != want {
		t.Errorf("with the answer: %s\nwant %s", got, want)
	}
}

// What was said of a sheet, and what its folder says, holds on when it is said which
// race of the day it is.
func TestAnotherFieldIsAnsweredByItself(t *testing.T) {
	field, juniors := fieldSheet("4 April 2026", 0, 30, 1100, 9, "", nil), fieldSheet("4 April 2026", 40, 52, 1500, 8, "", nil)
	for _, in := range []string{"in", "in/Garrow Moss"} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		ctx := context.Background()
		writeSheet(t, dir, in+"/a.csv", field)
		b := writeSheet(t, dir, in+"/b.csv", juniors)
		hand := ByHand{Course: "Garrow Moss"}
		if in != "in" {
			hand = ByHand{}
		}
		if rep, err := pl.Load(ctx, []string{filepath.Join(dir, "in")}, hand); err != nil || rep.Loaded != 2 {
			t.Fatal(rep, err)
		}
		if _, err := pl.Refresh(ctx, false); err != nil {
			t.Fatal(err)
		}
		if rep, err := pl.Load(ctx, []string{b}, ByHand{Session: "2", Distance: "2 km"}); err != nil || rep.Loaded != 1 {
			t.Errorf("%s: the answer is not taken: %+v, %v", in, rep, err)
		}
	}
}

// Last week's results under a new date are left out with a question, also where they
// were overwritten in part. A regular with the same time twice, and a corrected sheet,
// are not.
func TestCopiedResults(t *testing.T) {
	week := func(day int, from, to, first int) string {
		return fieldSheet(fmt.Sprintf("Garrow Moss %d April 2026", day), from, to, first, 9, "", nil)
	}
	for _, c := range []struct {
		name   string
		sheets []string
		want   string
	}{
		{"another week", []string{week(4, 0, 20, 1100), week(11, 0, 20, 1110)}, ""},
		{"last week's again", []string{week(4, 0, 20, 1100), week(11, 0, 20, 1100)}, "b.csv"},
		{"the first of last week's", []string{week(4, 0, 20, 1100), week(11, 0, 8, 1100)}, "b.csv"},
		{"more than last week's", []string{week(4, 0, 8, 1100), week(11, 0, 20, 1100)}, ""},
		{"a line in ten filled in", []string{week(4, 0, 20, 1100), strings.Replace(week(11, 0, 20, 1100), ",18:20", ",18:21", 1)}, "b.csv"},
		{"half of them filled in", []string{week(4, 0, 20, 1100), strings.ReplaceAll(week(11, 0, 20, 1100), ",19:", ",20:")}, ""},
		{"five people", []string{week(4, 0, 20, 1100), week(11, 0, 5, 1100)}, ""},
		{"of two weeks before", []string{week(4, 0, 20, 1100), week(11, 0, 20, 1110), week(18, 0, 20, 1100)}, "c.csv"},
		{"this week's before last week's", []string{week(11, 0, 20, 1100), week(4, 0, 20, 1100)}, "a.csv"},
		{"the same sheet corrected", []string{week(4, 0, 20, 1100), strings.Replace(week(4, 0, 20, 1100), "18:", "19:", 1)}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for i, s := range c.sheets {
				writeSheet(t, dir, fmt.Sprintf("in/%c.csv", 'a'+i), s)
			}
			loadForTest(t, pl, filepath.Join(dir, "in"))
			got, err := pl.problemsWhere(context.Background(), "p.kind = 'results-copied'")
			if err != nil || len(got) > 1 || (len(got) == 1) != (c.want != "") || len(got) == 1 && got[0].Place.Sheet != c.want {
				t.Errorf("asked about %v (%v), want %q", got, err, c.want)
			}
			var standing int
			if err := pl.DB.Get(context.Background(), "select count(*)::integer from main.results where status <> 'superseded' and sheet = "+store.Quote(c.want), &standing); err != nil || standing > 0 {
				t.Errorf("%d lines of %s stand (%v)", standing, c.want, err)
			}
		})
	}
}

// Once the right sheet is there, last week's under this week's date is no rival of it,
// whichever of the two comes first.
func TestCopiedResultsAreNoRival(t *testing.T) {
	week := func(day, first int) string {
		return fieldSheet(fmt.Sprintf("Garrow Moss %d April 2026", day), 0, 20, first, 9, "", nil)
	}
	for _, sheets := range [][]string{{week(4, 1100), week(11, 1100), week(11, 1117)}, {week(4, 1100), week(11, 1117), week(11, 1100)}} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		for i, s := range sheets {
			writeSheet(t, dir, fmt.Sprintf("in/%c.csv", 'a'+i), s)
			loadForTest(t, pl, filepath.Join(dir, "in"))
		}
		var standing, first int
		ctx := context.Background()
		if err := pl.DB.Get(ctx, "select count(*)::integer from main.results where status = 'ok'", &standing); err != nil {
			t.Fatal(err)
		}
		if err := pl.DB.Get(ctx, "select min(time_s)::integer from main.results where status = 'ok' and run_date = date '2026-04-11'", &first); err != nil {
			t.Fatal(err)
		}
		asked, err := pl.problemsWhere(ctx, "p.severity <> 'note' and p.kind in ("+comparedKinds+")")
		if err != nil || standing != 40 || first < 1117 || len(asked) > 0 {
			t.Errorf("%d lines stand, the first of the week in %d s, asked %v (%v)", standing, first, asked, err)
		}
	}
}

// A club's list that is taken for a course of its own is one of the run of that day in
// which its people have their times.
func TestListUnderAnotherCourse(t *testing.T) {
	run := fieldSheet("Garrow Moss 4 April 2026", 0, 20, 1100, 9, "", nil)
	var club strings.Builder
	for i, line := range strings.SplitAfter(strings.Replace(run, "Garrow Moss", "Umber Pacers", 1), "\n") {
		if i < 2 || i%2 == 0 {
			club.WriteString(line)
		}
	}
	for _, c := range []struct {
		name, first, second string
		ok, repeat, asked   int
	}{
		{"list after run", run, club.String(), 20, 10, 0},
		{"list before run", club.String(), run, 20, 10, 0},
		{"surnames first", run, regexp.MustCompile(`,(\w+) (\w+),`).ReplaceAllStringFunc(club.String(), func(s string) string {
			given, family, _ := strings.Cut(strings.Trim(s, ","), " ")
			return "," + strings.ToUpper(family) + " " + given + ","
		}), 20, 10, 0},
		{"somebody more", run, club.String() + "31,Zoe Wray,40:01\n", 20, 10, 1},
		{"other times", run, fieldSheet("Umber Pacers 4 April 2026", 0, 20, 1103, 11, "", nil), 40, 0, 0},
	} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		ctx := context.Background()
		writeSheet(t, dir, "in/a.csv", c.first)
		loadForTest(t, pl, filepath.Join(dir, "in"))
		writeSheet(t, dir, "in/b.csv", c.second)
		loadForTest(t, pl, filepath.Join(dir, "in"))
		var ok, repeat int
		for status, n := range map[string]*int{"ok": &ok, "repeat": &repeat} {
			if err := pl.DB.Get(ctx, "select count(*)::integer from main.results where status = "+store.Quote(status), n); err != nil {
				t.Fatal(err)
			}
		}
		asked, err := pl.problemsWhere(ctx, "p.kind = 'results-copied'")
		if err != nil || ok != c.ok || repeat != c.repeat || len(asked) != c.asked {
			t.Errorf("%s: %d ok, %d repeated, asked %v (%v)", c.name, ok, repeat, asked, err)
		}
	}
}

// A place without a time on the list of times is one finisher with whoever has it on the
// list of names.
func TestHalvesWithoutATime(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	const title = "Garrow Moss 4 April 2026\n"
	writeSheet(t, dir, "in/names.csv", title+"Position,Name\n1,Ana Alder\n2,Bea Birch\n3,Cora Cole\n4,Dan Dunn\n")
	writeSheet(t, dir, "in/times.csv", title+"Position,Time\n1,18:20\n2,18:31\n3,\n4,19:02\n")
	loadForTest(t, pl, filepath.Join(dir, "in"))
	got := ""
	for _, s := range dump(t, pl, "select status || ' ' || count(*) from main.results group by status order by all") {
		got += s + "; "
	}
	if want := "ok 3; repeat 4; untimed 1; "; got != want {
		t.Errorf("%s; want %s", got, want)
	}
}
