package pipeline

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

func writeSheet(t *testing.T, dir, name, text string) string {
	t.Helper()
	p := filepath.Join(dir, name)
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return p
}

const small = "Pos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n3,Cy Dale,22:03\n"

// A course one letter away from a well-known one is asked about; the answer
// given by hand is kept.
func TestMisspeltCourse(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	ctx := context.Background()
	for _, d := range []string{"3", "10", "17", "24"} {
		writeSheet(t, dir, "in/results"+d+".csv", "Dunnock Lake "+d+" January 2026\n"+small)
	}
	loadForTest(t, pl, filepath.Join(dir, "in"))
	odd := writeSheet(t, dir, "odd/results31.csv", "Dunock Lake 31 January 2026\n"+small)
	// a name that differs in a figure is another course, and so is one in a file name
	for _, other := range []string{"Dunnock Lake 2 31 January 2026", ""} {
		p := writeSheet(t, dir, "other"+other+"/dunnock-bake_2026-01-31.csv", other+"\n"+small+"5,Ed "+other+" Fox,25:01\n")
		if rep := loadForTest(t, pl, p); rep.Waiting != 0 {
			t.Errorf("%q waits: %v", other, rep.Sheets)
		}
	}
	rep := loadForTest(t, pl, odd)
	if rep.Waiting != 1 {
		t.Fatalf("want one sheet to wait, got %+v", rep)
	}
	rep, err := pl.Load(ctx, []string{odd}, ByHand{Course: "dunnock-lake"})
	if err != nil || rep.Loaded != 1 || rep.Sheets[0].Runs[0] != "dunnock-lake 2026-01-31" {
		t.Fatalf("with --course: %+v, %v", rep, err)
	}
	rep = loadForTest(t, pl, odd)
	if rep.Known != 1 {
		t.Errorf("the answered sheet is asked about again: %+v", rep)
	}
}

// A corrected sheet under the same name takes the place of one that waited.
func TestWaitingSheetIsReplaced(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	p := writeSheet(t, dir, "sheet.csv", small)
	if rep := loadForTest(t, pl, p); rep.Waiting != 1 {
		t.Fatalf("a sheet without course and date should wait: %+v", rep)
	}
	writeSheet(t, dir, "sheet.csv", "Alder Bank 3 January 2026\n"+small)
	if rep := loadForTest(t, pl, p); rep.Loaded != 1 {
		t.Fatalf("the corrected sheet should load: %+v", rep.Sheets)
	}
	ledger, err := pl.Sheets()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range ledger {
		if e.State == store.Waiting {
			t.Errorf("%s still waits", e.Path)
		}
	}
}

// A sheet that asks two things may be answered one by one, in either order, with loads
// of the folder in between.
func TestQuestionsAreAnsweredOneByOne(t *testing.T) {
	course, date, column := ByHand{Course: "Alder Bank"}, ByHand{Date: "2026-01-03"}, ByHand{Answers: "time=h:mm:ss"}
	for _, answers := range [][]ByHand{{course, date, column}, {date, column, course}, {column, course, date}} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		p := writeSheet(t, dir, "sheet.csv", "Pos,Name,Time\n1,Ana Sol,1:31:00\n")
		for i, hand := range answers {
			if rep := loadForTest(t, pl, p); rep.Waiting != 1 {
				t.Fatalf("after %d answers it should wait: %+v", i, rep.Sheets)
			}
			if _, err := pl.Load(context.Background(), []string{p}, hand); err != nil {
				t.Fatal(err)
			}
		}
		rep := loadForTest(t, pl, p)
		ledger, err := pl.Sheets()
		if err != nil {
			t.Fatal(err)
		}
		e := ledger[0]
		if rep.Known != 1 || len(ledger) != 1 || e.State != store.Loaded || e.Course != "Alder Bank" || e.Date != "2026-01-03" || e.Answers != "time=h:mm:ss" {
			t.Errorf("%v: %+v, %+v", answers, e, rep.Sheets)
		}
	}
}

// An answer about a column is given once: next week's sheet with the same
// headings is read the same way, also after a rebuild.
func TestAnswerIsRemembered(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	ctx := context.Background()
	// one line alone can't show whether 1:31:00 is an hour and a half or 1 min 31 s
	sheet := func(day string) string {
		return writeSheet(t, dir, "in/alder-bank_"+day+".csv", "Pos,Name,Time\n1,Ana Sol "+day[8:]+",1:31:00\n")
	}
	first := sheet("2026-01-03")
	if rep := loadForTest(t, pl, first); rep.Waiting != 1 {
		t.Fatalf("one line of 1:31:00 should be asked about: %+v", rep.Sheets)
	}
	rep, err := pl.Load(ctx, []string{first}, ByHand{Answers: "time=h:mm:ss"})
	if err != nil || rep.Loaded != 1 {
		t.Fatalf("with the answer: %+v, %v", rep, err)
	}
	rep, err = pl.Load(ctx, []string{sheet("2026-01-10")}, ByHand{})
	if err != nil || rep.Loaded != 1 {
		t.Fatalf("next week's sheet asks again: %+v, %v", rep.Sheets, err)
	}
	if err := pl.startOver(ctx); err != nil {
		t.Fatal(err)
	}
	if _, err := pl.Refresh(ctx, true); err != nil {
		t.Fatal(err)
	}
	n := 0
	if err := pl.DB.Get(ctx, "select count(*) from main.results where time_s = 5460", &n); err != nil || n != 2 {
		t.Errorf("after a rebuild %d of 2 lines have the time 1:31:00 (%v)", n, err)
	}
}

// Where many times are too fast for the 5 km that are assumed, the distance is
// asked about.
func TestShortCourseIsNoticed(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	p := writeSheet(t, dir, "alder-bank_2026-01-03.csv", "Pos,Name,Time\n1,Ana Sol,10:01\n2,Ben Orr,11:02\n3,Cy Dale,12:03\n4,Di Elm,15:40\n")
	rep := loadForTest(t, pl, p)
	for _, q := range rep.Sheets[0].Problems {
		if q.Kind == "distance-unsure" {
			return
		}
	}
	t.Errorf("nothing is said about the distance: %v", rep.Sheets[0].Problems)
}

// Birth windows that agree are intersected; one wrong age is outvoted.
func TestMeet(t *testing.T) {
	f := &field{}
	add := func(lo, hi int) {
		f.birthLo = append(f.birthLo, unit.NewDay(lo, 1, 1))
		f.birthHi = append(f.birthHi, unit.NewDay(hi, 12, 31))
	}
	lines := func() []int32 {
		out := make([]int32, len(f.birthLo))
		for i := range out {
			out[i] = int32(i)
		}
		return out
	}
	add(1980, 1984)
	add(1983, 1983)
	f.birthLo, f.birthHi = append(f.birthLo, 0), append(f.birthHi, 0) // no age on the sheet
	if w, n := f.meet(lines()); w != age.OfYear(1983) || n != 2 {
		t.Errorf("1980-84 and 1983 meet in %v, %d lines", w, n)
	}
	add(1973, 1973)
	add(1982, 1983)
	if w, n := f.meet(lines()); w != age.OfYear(1983) || n != 3 {
		t.Errorf("a wrong 1973 gives %v, %d lines", w, n)
	}
}

// A sheet that names the start and one that does not are of the same run; two
// named starts are two runs.
func TestSessionOfTheOnlyRun(t *testing.T) {
	for _, order := range [][]string{{"plain", "nine"}, {"nine", "plain"}} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		sheets := map[string]string{
			"plain": "Pos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n3,Cy Dale,22:03\n",
			"nine":  "Pos,Name,Time,Start\n1,Ana Sol,20:01,09:00\n2,Ben Orr,21:02,09:00\n3,Cy Dale,22:04,09:00\n",
		}
		for _, which := range order {
			loadForTest(t, pl, writeSheet(t, dir, which+"/alder-bank_2026-01-03.csv", sheets[which]))
		}
		runs, finishers := 0, 0
		if err := pl.DB.Get(context.Background(), "select count(*), sum(finishers)::integer from main.runs where session = '09:00'", &runs, &finishers); err != nil {
			t.Fatal(err)
		}
		if runs != 1 || finishers != 3 {
			t.Errorf("%v: %d runs at 09:00 with %d finishers, want 1 with 3", order, runs, finishers)
		}
	}
}

// counted gives name and status of every line of a run's sheets, in order.
func counted(t *testing.T, pl *Pipeline) string {
	t.Helper()
	return strings.Join(dump(t, pl, "select sheet || ' ' || coalesce(name, '?') || ' ' || status from main.results order by sheet, row_number"), "\n")
}

// A club's excerpt never displaces the sheet of the whole field, not even
// where it says something else about one place; two clubs' excerpts add up.
func TestExcerpts(t *testing.T) {
	full := "Pos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n3,Unknown,22:03\n4,Di Elm,23:04\n5,Ed Fox,24:05\n6,Flo Gray,25:06\n7,Gus Hill,26:07\n8,Hal Ives,27:08\n"
	dir := t.TempDir()
	pl := openForTest(t, dir)
	loadForTest(t, pl, writeSheet(t, dir, "a/alder-bank_2026-01-03.csv", full))
	rep := loadForTest(t, pl, writeSheet(t, dir, "b/alder-bank_2026-01-03_club.csv", "Pos,Name,Time\n2,Ben Orr,21:02\n3,Cy Dale,22:03\n8,Hal Ives,27:08\n"))
	if rep.Loaded != 1 {
		t.Fatalf("%+v", rep.Sheets)
	}
	want := "alder-bank_2026-01-03.csv Ana Sol ok\nalder-bank_2026-01-03.csv Ben Orr ok\nalder-bank_2026-01-03.csv ? unnamed\nalder-bank_2026-01-03.csv Di Elm ok\n" +
		"alder-bank_2026-01-03.csv Ed Fox ok\nalder-bank_2026-01-03.csv Flo Gray ok\nalder-bank_2026-01-03.csv Gus Hill ok\nalder-bank_2026-01-03.csv Hal Ives ok\n" +
		"alder-bank_2026-01-03_club.csv Ben Orr repeat\nalder-bank_2026-01-03_club.csv Cy Dale repeat\nalder-bank_2026-01-03_club.csv Hal Ives repeat"
	if got := counted(t, pl); got != want {
		t.Errorf("the excerpt changes more than itself:\n%s", got)
	}
	n := 0
	if err := pl.DB.Get(context.Background(), "select count(*) from main.problems where kind = 'excerpt-differs'", &n); err != nil || n != 1 {
		t.Errorf("%d problems tell of the difference (%v)", n, err)
	}

	dir = t.TempDir()
	pl = openForTest(t, dir)
	loadForTest(t, pl, writeSheet(t, dir, "a/alder-bank_2026-01-03_harriers.csv", "Pos,Name,Time\n2,Ben Orr,21:02\n9,Cy Dale,22:03\n28,Hal Ives,27:08\n"))
	loadForTest(t, pl, writeSheet(t, dir, "b/alder-bank_2026-01-03_joggers.csv", "Pos,Name,Time\n2,Ben Orr,21:02\n11,Jo Kay,22:33\n29,Lou May,28:08\n"))
	if got := counted(t, pl); strings.Count(got, " ok") != 5 || strings.Count(got, "repeat") != 1 {
		t.Errorf("two excerpts that share a runner:\n%s", got)
	}
}

// A person who stands twice on a list of names is found there as on a list with times: the
// second place is theirs only if somebody says so. Namesakes of another sex or age are not.
func TestPersonTwiceOnHalves(t *testing.T) {
	dir := t.TempDir()
	pl := openForTest(t, dir)
	writeSheet(t, dir, "in/alder-bank_2026-01-03 names.csv", "Pos,Name,Sex,Age group\n1,Ana Sol,F,W40\n2,Ben Orr,M,M35\n3,Ana Sol,F,W40\n4,Lee Ash,M,M20\n5,Lee Ash,F,W50\n")
	writeSheet(t, dir, "in/alder-bank_2026-01-03 times.csv", "Pos,Time\n1,20:01\n2,21:02\n3,22:03\n4,23:04\n5,24:05\n")
	loadForTest(t, pl, filepath.Join(dir, "in"))
	got := dump(t, pl, "select position || ' ' || name || ' ' || status from main.results where status <> 'repeat' order by position")
	want := "1 Ana Sol ok, 2 Ben Orr ok, 3 Ana Sol doubtful, 4 Lee Ash ok, 5 Lee Ash ok"
	if strings.Join(got, ", ") != want {
		t.Errorf("%s, want %s", strings.Join(got, ", "), want)
	}
}

// Two tables side by side have one maker: 22,72 in one makes 22,43 in the other a
// decimal number of minutes too. Under another heading it says nothing.
func TestTimesAsInTheTableBeside(t *testing.T) {
	for _, c := range []struct {
		heading string
		want    int // seconds of 22,43
	}{{"Time", 1346}, {"Finish", 1363}} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		writeSheet(t, dir, "in/alder-bank_2026-01-03.csv", "Men,,,Women,,\nPos,Name,Time,Pos,Name,"+c.heading+"\n"+
			"1,Cal Rad,\"22,43\",1,Iris Comb,\"22,72\"\n2,Tom Ock,\"23,28\",2,Jo Penn,\"26,48\"\n3,Lo Orm,\"23,52\",3,Chloe Yell,\"28,75\"\n"+
			"4,Lee Ridge,\"23,58\",4,Helen Gate,\"28,98\"\n5,Imran Dray,\"24,22\",5,Mary Quar,\"29,33\"\n6,Bjorn Lund,\"27,42\",6,Anne Kui,\"31,88\"\n")
		loadForTest(t, pl, filepath.Join(dir, "in"))
		n := 0
		if err := pl.DB.Get(context.Background(), "select coalesce(max(time_s), 0)::integer from main.results where name = 'Cal Rad'", &n); err != nil || n != c.want {
			t.Errorf("beside a column %q, 22,43 is %d s, want %d (%v)", c.heading, n, c.want, err)
		}
	}
}

// Places that one list of a run lacks and the list beside it has are not missing; those
// that neither has are.
func TestPlacesOfListsTogether(t *testing.T) {
	for rows, want := range map[string]string{
		"1,Jo Lee,17:58,4,Di Fox,24:45\n2,Al Roe,18:22,5,Ed Gow,27:30\n3,Cy Dee,19:01,6,Fay Ho,38:12\n": "",
		"1,Jo Lee,17:58,4,Di Fox,24:45\n2,Al Roe,18:22,5,Ed Gow,27:30\n3,Cy Dee,19:01,7,Fay Ho,38:12\n": "6",
	} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		writeSheet(t, dir, "in/alder-bank_2026-01-03.csv", "Pos,Name,Time,Pos,Name,Time\n"+rows)
		rep := loadForTest(t, pl, filepath.Join(dir, "in"))
		missing := ""
		for _, s := range rep.Sheets {
			for _, q := range s.Problems {
				if strings.HasPrefix(q.Kind, "positions-missing") {
					missing += q.Read
				}
			}
		}
		if rep.Rows != 6 || missing != want {
			t.Errorf("%d lines, places missing %q, want %q", rep.Rows, missing, want)
		}
	}
}

// Every row of a list is explained: its heading, a finisher, who did not start, a total.
// What stands in no list is said to be in none, and nothing else is printed.
func TestExplainedRows(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": "Alder Bank\nPos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,20:10\n,Cora Vale,DNS\nTotal runners,2\n"})
	for row, want := range map[int]string{
		2: "is the heading of the table: Pos | Name | Time",
		3: "Status: ok",
		5: "No result: lines of people who did not start are left out.",
		6: "is left out as total: Total runners | 2",
	} {
		var said strings.Builder
		if err := d.pl.Explain(context.Background(), fmt.Sprintf("alder-bank_2026-01-03.csv:%d", row), &said); err != nil || !strings.Contains(said.String(), want) {
			t.Errorf("row %d: %v\n%s\nlacks %q", row, err, said.String(), want)
		}
	}
	var said strings.Builder
	if err := d.pl.Explain(context.Background(), "alder-bank_2026-01-03.csv:99", &said); err == nil || said.Len() > 0 {
		t.Errorf("row 99: %v, %q", err, said.String())
	}
}
