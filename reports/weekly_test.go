package reports

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
	queries "lapwing/sql"
)

var update = flag.Bool("update", false, "write the golden files anew")

func writeWeekly(t testing.TB, db *store.DB, dir, arch string, on unit.Day) []string {
	t.Helper()
	o := Options{Dir: dir, ArchiveDir: arch, AgeStandard: 2025, Version: "0.1", Why: "a later sheet was loaded"}
	w, err := Weekly(context.Background(), db, o, "heron-mere", on, "")
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got == string(want) {
		return
	}
	g, w := strings.Split(got, "\n"), strings.Split(string(want), "\n")
	for i := range max(len(g), len(w)) {
		a, b := "(end)", "(end)"
		if i < len(g) {
			a = g[i]
		}
		if i < len(w) {
			b = w[i]
		}
		if a != b {
			t.Fatalf("%s:%d:\n got %q\nwant %q", path, i+1, a, b)
		}
	}
}

// readOne reads what the reports of one run say.
func readOne(ctx context.Context, q Queryer, o Options, r Run) (*weekly, error) {
	all, err := readWeekly(ctx, q, o, []Run{r})
	if err != nil {
		return nil, err
	}
	return all[0], nil
}

// The text dumps of both workbooks and the write-up of a small field.
func TestWeeklyGolden(t *testing.T) {
	db, last := district(t, 8, 30, true)
	d, err := readOne(context.Background(), db, Options{AgeStandard: 2025, Version: "0.1"}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	said := []string{"Why: a later sheet was loaded.", "Place 3, Abel Cobbold: time 21:02, was 21:12."}
	i := issueOf{2, said, said}
	golden(t, "weekly.txt", d.public(i).Text())
	golden(t, "weekly_desk.txt", d.desk(i).Text())
	for f, name := range map[form]string{markdown: "weekly_writeup.md", plainText: "weekly_writeup.txt"} {
		s, err := d.writeup(weeklyTemplate, i, f)
		if err != nil {
			t.Fatal(err)
		}
		golden(t, name, s)
	}
}

// Same archive, same bytes: written twice, and with the rows in another order
// and another number of threads.
func TestWeeklySameBytes(t *testing.T) {
	ctx := context.Background()
	var first map[string][]byte
	for round := range 3 {
		db, last := district(t, 6, 60, true)
		if round == 2 {
			for _, s := range []string{"set threads = 1",
				"create table r2 as select * from main.results order by hash(name, row_number, run_date)", "drop table main.results", "alter table r2 rename to results",
				"create table v2 as select * from main.volunteers order by hash(name, role) desc", "drop table main.volunteers", "alter table v2 rename to volunteers",
				"create table u2 as select * from main.runs order by hash(course, run_date)", "drop table main.runs", "alter table u2 rename to runs"} {
				if err := db.Exec(ctx, s); err != nil {
					t.Fatal(err)
				}
			}
		}
		dir, arch := t.TempDir(), t.TempDir()
		w := writeWeekly(t, db, dir, arch, last)
		if len(w) != 4 {
			t.Fatalf("wrote %v", w)
		}
		got := map[string][]byte{}
		for _, p := range w {
			b, err := os.ReadFile(p)
			if err != nil {
				t.Fatal(err)
			}
			got[filepath.Base(p)] = b
		}
		if first == nil {
			first = got
			if again := writeWeekly(t, db, dir, arch, last); len(again) != 0 {
				t.Errorf("nothing changed, but %v was written", again)
			}
			continue
		}
		for name, b := range first {
			if !bytes.Equal(b, got[name]) {
				t.Errorf("round %d: %s has other bytes", round, name)
			}
		}
	}
}

// Every figure of the Result tab equals what the view says, read back from the
// workbook: times as durations exact to the second, names as text.
func TestWeeklyReadBack(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 8, 140, true)
	w := writeWeekly(t, db, t.TempDir(), t.TempDir(), last)
	f, err := excelize.OpenFile(w[0])
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	raw, err := f.GetRows("Result", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	shown, err := f.GetRows("Result")
	if err != nil {
		t.Fatal(err)
	}
	head := slices.IndexFunc(raw, func(r []string) bool { return len(r) > 2 && r[0] == "Place" })
	rows, err := db.QueryContext(ctx, `select position, time_s, coalesce(name, ''), protected, hidden, status, age_grade_pct
		from main.results where course = 'heron-mere' and run_date = $1 order by position`, last.Time())
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	n := 0
	for rows.Next() {
		var pos, s int32
		var name, status string
		var protected, hidden bool
		var grade *float64
		if err := rows.Scan(&pos, &s, &name, &protected, &hidden, &status, &grade); err != nil {
			t.Fatal(err)
		}
		n++
		if head+n >= len(raw) {
			t.Fatalf("the workbook ends before place %d", pos)
		}
		r := raw[head+n]
		if r[0] != strconv.Itoa(int(pos)) {
			t.Fatalf("row %d is place %s, want %d", n, r[0], pos)
		}
		days, err := strconv.ParseFloat(r[1], 64)
		if err != nil || math.Abs(days*86400-float64(s)) > 1e-6 || math.Floor(days*86400+1e-9) != float64(s) {
			t.Errorf("place %d: time %s is %.9f s, want %d (%v)", pos, r[1], days*86400, s, err)
		}
		if got := shown[head+n][1]; got != unit.Clock(s) {
			t.Errorf("place %d: time shows as %q, want %q", pos, got, unit.Clock(s))
		}
		if want := publicName(name, protected, hidden); r[2] != want {
			t.Errorf("place %d: name %q, want %q", pos, r[2], want)
		}
		cell, err := excelize.CoordinatesToCellName(3, head+n+1)
		if err != nil {
			t.Fatal(err)
		}
		if formula, err := f.GetCellFormula("Result", cell); err != nil || formula != "" {
			t.Errorf("%s holds a formula %q (%v)", cell, formula, err)
		}
		g := ""
		if len(r) > 5 {
			g = r[5]
		}
		if want := grade != nil && !protected && !hidden; want != (g != "") {
			t.Errorf("place %d: age grade %q, want one: %t", pos, g, want)
		} else if want {
			v, err := strconv.ParseFloat(g, 64)
			if err != nil || math.Abs(v-*grade) > 1e-9 {
				t.Errorf("place %d: age grade %s, want %v (%v)", pos, g, *grade, err)
			}
		}
	}
	if n < 100 || len(raw) != head+1+n {
		t.Errorf("compared %d rows, workbook has %d", n, len(raw)-head-1)
	}
}

// Nothing for publication holds the full name of who may be under 18, the name
// of who is hidden, or a child's club or grade.
func TestWeeklyPrivacy(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 10, 140, true)
	d, err := readOne(ctx, db, Options{}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	up, err := d.writeup(weeklyTemplate, issueOf{Number: 1}, plainText)
	if err != nil {
		t.Fatal(err)
	}
	public := d.public(issueOf{Number: 1}).Text() + up
	adult := map[string]bool{}
	for i := range d.results {
		if r := &d.results[i]; !r.protected && !r.hidden {
			adult[r.name] = true
		}
	}
	checked := 0
	for i := range d.results {
		r := &d.results[i]
		if r.name == "" || !(r.protected || r.hidden) || adult[r.name] {
			continue
		}
		checked++
		if strings.Contains(public, r.name) {
			t.Errorf("%q (protected %t, hidden %t) stands in a public report", r.name, r.protected, r.hidden)
		}
	}
	if checked < 6 {
		t.Fatalf("only %d names checked", checked)
	}
	res := d.public(issueOf{Number: 1}).Tab("Result")
	for _, b := range res.Blocks {
		full, ok := b.(table.Full)
		if !ok {
			continue
		}
		for i, row := range full.Rows {
			r := &d.results[i]
			if r.hidden && !(row.Cells[3].Empty() && row.Cells[4].Empty() && row.Cells[5].Empty() && row.Cells[6].Empty()) {
				t.Errorf("row %d: hidden person with group, place, grade or club", i)
			}
			if r.protected && !(row.Cells[5].Empty() && row.Cells[6].Empty()) {
				t.Errorf("row %d: grade or club of somebody who may be under 18", i)
			}
			if r.sex == "X" && !row.Cells[3].Empty() {
				t.Errorf("row %d: a group of X of under %d is printed", i, fewest)
			}
		}
	}
	// The desk's workbook holds them all, and says that it is not to be passed on.
	desk := d.desk(issueOf{Number: 1}).Text()
	for i := range d.results {
		if r := &d.results[i]; r.name != "" && !strings.Contains(desk, r.name) {
			t.Errorf("%q is missing from the desk's workbook", r.name)
		}
	}
	if !strings.Contains(desk, "not for publication") {
		t.Error("the desk's workbook doesn't say that it is not for publication")
	}
}

// The write-up has 200 to 350 words for a small, a usual and a large field,
// with and without complete history.
func TestWriteupLength(t *testing.T) {
	for _, n := range []int{12, 40, 140, 400} {
		for _, complete := range []bool{true, false} {
			db, last := district(t, 7, n, complete)
			d, err := readOne(context.Background(), db, Options{}, Run{"heron-mere", last, ""})
			if err != nil {
				t.Fatal(err)
			}
			s, err := d.writeup(weeklyTemplate, issueOf{Number: 1}, plainText)
			if err != nil {
				t.Fatal(err)
			}
			if w := len(strings.Fields(s)); w < 200 || w > 350 {
				t.Errorf("field of %d, complete %t: %d words\n%s", n, complete, w, s)
			}
			if complete == strings.Contains(s, "since our sheets began") && strings.Contains(s, "Faster than ever") {
				t.Errorf("field of %d: complete %t, but:\n%s", n, complete, s)
			}
			for _, bad := range []string{" .", "..", ",,", "  ", "<no value>", "%!", " 1 people", "one people", " 1 persons"} {
				if strings.Contains(s, bad) {
					t.Errorf("field of %d, complete %t: %q in\n%s", n, complete, bad, s)
				}
			}
		}
	}
}

// An edited template in the archive folder is used; one that fails says so.
func TestOwnTemplate(t *testing.T) {
	db, last := district(t, 6, 20, true)
	arch := t.TempDir()
	path := filepath.Join(arch, WeeklyTemplateName)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("# Our run\n\n{{.Finishers}} came.\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	w := writeWeekly(t, db, t.TempDir(), arch, last)
	i := slices.IndexFunc(w, func(p string) bool { return strings.HasSuffix(p, ".txt") })
	if got := read(t, w[i]); !strings.HasPrefix(got, "Our run\n=======\n\n") || !strings.HasSuffix(got, " came.\n") {
		t.Errorf("write-up %q", got)
	}
	if err := os.WriteFile(path, []byte("{{.Weather}}"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, err := Weekly(context.Background(), db, Options{Dir: t.TempDir(), ArchiveDir: arch}, "heron-mere", last, "")
	if err == nil || !strings.Contains(err.Error(), "template") {
		t.Errorf("a template that fails gives %v", err)
	}
}

// A corrected time gives issue 2 with a line that says what changed and why,
// beside the first where that was edited.
func TestSecondIssue(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 6, 40, true)
	if err := db.Exec(ctx, `update main.results set time_s = time_s + 3600 where course = 'heron-mere' and position > 25 and run_date = $1`, last.Time()); err != nil {
		t.Fatal(err)
	}
	dir, arch := t.TempDir(), t.TempDir()
	w := writeWeekly(t, db, dir, arch, last)
	f, err := excelize.OpenFile(w[0])
	if err != nil {
		t.Fatal(err)
	}
	if err := f.SetCellStr("Notes", "A40", "seen by hand"); err != nil {
		t.Fatal(err)
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	f.Close()
	edited := read(t, w[0])
	// A time over an hour that does not change is no change.
	if err := db.Exec(ctx, `update main.results set time_s = time_s + 7 where course = 'heron-mere' and position = 5 and run_date = $1`, last.Time()); err != nil {
		t.Fatal(err)
	}
	w2 := writeWeekly(t, db, dir, arch, last)
	beside := filepath.Join(dir, "heron-mere_"+last.String()+" (issue 2).xlsx")
	if !slices.Contains(w2, beside) || len(w2) != 4 {
		t.Fatalf("wrote %v", w2)
	}
	if read(t, w[0]) != edited {
		t.Error("the edited workbook was overwritten")
	}
	g, err := excelize.OpenFile(beside)
	if err != nil {
		t.Fatal(err)
	}
	defer g.Close()
	rows, err := g.GetRows("Notes")
	if err != nil {
		t.Fatal(err)
	}
	var changed []string
	for _, r := range rows {
		if len(r) > 1 && r[0] == "Changed" {
			changed = append(changed, r[1])
		}
	}
	if len(changed) != 2 || changed[0] != "Why: a later sheet was loaded." ||
		!strings.HasPrefix(changed[1], "Place 5, ") || !strings.Contains(changed[1], "time ") || strings.Contains(changed[1], "place") {
		t.Errorf("changes %q", changed)
	}
	if again := writeWeekly(t, db, dir, arch, last); len(again) != 0 {
		t.Errorf("nothing changed, but %v was written", again)
	}
}

// Who is hidden or becomes protected is not given away by the list of changes,
// nor is a name that was corrected.
func TestChangesGiveNobodyAway(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 6, 40, true)
	dir, arch := t.TempDir(), t.TempDir()
	w := writeWeekly(t, db, dir, arch, last)
	var gone []string
	for _, s := range []string{"hidden = true", "protected = true", "name = 'Somebody Else', runner_id = 'R9001'"} {
		rows, err := db.QueryContext(ctx, `select name from main.results where course = 'heron-mere' and run_date = $1 and status = 'ok'
			and not protected and not hidden and club is not null and position > $2 order by position limit 1`, last.Time(), len(gone)*8)
		if err != nil {
			t.Fatal(err)
		}
		name := ""
		for rows.Next() {
			if err := rows.Scan(&name); err != nil {
				t.Fatal(err)
			}
		}
		rows.Close()
		if err := db.Exec(ctx, "update main.results set "+s+" where name = "+quote(name)); err != nil {
			t.Fatal(err)
		}
		gone = append(gone, name)
	}
	writeWeekly(t, db, dir, arch, last)
	f, err := excelize.OpenFile(w[0])
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Notes")
	if err != nil {
		t.Fatal(err)
	}
	changed := 0
	for _, r := range rows {
		if len(r) > 1 && r[0] == "Changed" {
			changed++
			for _, name := range gone {
				if strings.Contains(r[1], name) {
					t.Errorf("the list of changes gives %s away: %s", name, r[1])
				}
			}
		}
	}
	if changed < 4 {
		t.Errorf("only %d changes told", changed)
	}
}

// Pages: upright tabs fit A4 at full size, the board fits one page.
func TestWeeklyFitsThePage(t *testing.T) {
	for _, n := range []int{12, 140, 500} {
		db, last := district(t, 8, n, true)
		d, err := readOne(context.Background(), db, Options{AgeStandard: 2025}, Run{"heron-mere", last, ""})
		if err != nil {
			t.Fatal(err)
		}
		for _, tab := range d.public(issueOf{Number: 1}).Tabs {
			if w := tab.Width(); w > table.PageWidth {
				t.Errorf("field of %d: tab %s is %.1f characters wide, an A4 page takes %d", n, tab.Name, w, table.PageWidth)
			}
			if tab.OnePage && tab.Height() > table.PageHeight {
				t.Errorf("field of %d: tab %s is %.0f pt high, an A4 page takes %.0f", n, tab.Name, tab.Height(), float64(table.PageHeight))
			}
		}
	}
}

// A run that the archive doesn't hold, or that nobody finished.
func TestWeeklyMissingAndEmpty(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 6, 20, true)
	o := Options{Dir: t.TempDir(), ArchiveDir: t.TempDir()}
	if _, err := Weekly(ctx, db, o, "heron-mere", last+1, ""); err == nil || !strings.Contains(err.Error(), "holds no run of heron-mere on 2026-03-08") {
		t.Errorf("missing run: %v", err)
	}
	if err := db.Exec(ctx, `insert into main.runs (course, run_date, session, state, finishers, course_name, history_complete) values ('heron-mere', '2026-03-14', '', 'cancelled', 0, 'Heron Mere', true)`); err != nil {
		t.Fatal(err)
	}
	w, err := Weekly(ctx, db, o, "heron-mere", last+7, "")
	if err != nil || len(w) != 4 {
		t.Fatalf("cancelled run: %v, %v", w, err)
	}
	if s := strings.Join(strings.Fields(read(t, w[3])), " "); !strings.Contains(s, "recorded as: cancelled.") || strings.Contains(s, "First to finish") || strings.Contains(s, "usual") {
		t.Errorf("write-up of a cancelled run:\n%s", s)
	}
}

// The questions say what a row is and which columns are the key, in the form
// that the SQL folder has.
func TestQueriesHaveHeaders(t *testing.T) {
	files, err := queries.Files.ReadDir("reports")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, f := range files {
		q, err := store.ParseSQLFile(queries.Files, "reports/"+f.Name())
		if err != nil {
			t.Error(err)
			continue
		}
		if len(q.Key) == 0 {
			t.Errorf("%s: no key", f.Name())
		}
	}
}

// LibreOffice opens the workbooks without repair and converts them; its own
// reading of the Result tab is the same as ours.
func TestWeeklyInLibreOffice(t *testing.T) {
	db, last := district(t, 8, 140, true)
	dir := t.TempDir()
	w := writeWeekly(t, db, dir, t.TempDir(), last)
	if n := inLibreOffice(t, dir, 8, w[0], w[1]); n > 15 {
		t.Errorf("the workbook for everybody takes %d pages, want 15 at most for 140 finishers, half of them with a best", n)
	}
	theirs := read(t, dir, "heron-mere_"+last.String()+"-Result.csv")
	d, err := readOne(context.Background(), db, Options{}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	for i := range d.results {
		r := &d.results[i]
		want := fmt.Sprintf("\n%d,%s,%s,", *r.position, unit.Clock(*r.timeS), r.publicName())
		if !strings.Contains(theirs, want) {
			t.Fatalf("LibreOffice doesn't show the line %q:\n%s", want, theirs)
		}
	}
}

// inLibreOffice opens workbooks in LibreOffice: it makes a PDF of each, with no
// empty page and no word printed over another, and all tabs of the first as
// CSV files in dir, with no error in any cell.
// It gives the number of pages of the first.
func inLibreOffice(t *testing.T, dir string, tabs int, books ...string) (pages int) {
	t.Helper()
	soffice, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("SKIPPED, NOT PASSED: LibreOffice (soffice) is not installed, so nobody has opened the workbooks with a second program")
	}
	convert := func(to string, paths ...string) {
		t.Helper()
		c := exec.Command(soffice, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless", "--convert-to", to, "--outdir", dir)
		c.Args = append(c.Args, paths...)
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
	}
	convert("pdf", books...)
	for i, p := range books {
		if n := printsClean(t, strings.TrimSuffix(p, ".xlsx")+".pdf"); i == 0 {
			pages = n
		}
	}
	// All tabs as CSV, one file each (filter option 12 set to -1).
	convert(`csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true,false,false,-1`, books[0])
	files, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil || len(files) < tabs {
		t.Fatalf("LibreOffice wrote %d tabs, want %d at least (%v)", len(files), tabs, err)
	}
	for _, f := range files {
		for _, bad := range []string{"Err:5", "#NAME", "#VALUE", "#REF", "#DIV", "#N/A", "###"} {
			if strings.Contains(read(t, f), bad) {
				t.Errorf("%s holds %s", filepath.Base(f), bad)
			}
		}
	}
	return pages
}

// box is where a word is printed, in points from the top left of a page.
type box struct {
	word                   string
	left, top, right, foot float64
}

var (
	pageMark = regexp.MustCompile(`<page `)
	wordMark = regexp.MustCompile(`<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>`)
)

// printsClean checks a PDF word by word: every page holds more than its header
// and footer, no word lies over another by more than a third of its height and
// two points of its width, and nothing runs off the paper.
// It gives the number of pages.
func printsClean(t *testing.T, pdf string) int {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("SKIPPED, NOT PASSED: pdftotext is not installed, so nobody has looked at the printed pages")
	}
	out, err := exec.Command(tool, "-bbox", pdf, "-").Output()
	if err != nil {
		t.Fatalf("%s: %v", pdf, err)
	}
	pages := pageMark.Split(string(out), -1)[1:]
	if len(pages) == 0 {
		t.Fatalf("%s has no pages", pdf)
	}
	for n, page := range pages {
		var words []box
		for _, m := range wordMark.FindAllStringSubmatch(page, -1) {
			b := box{word: m[5]}
			for i, to := range []*float64{&b.left, &b.top, &b.right, &b.foot} {
				if *to, err = strconv.ParseFloat(m[i+1], 64); err != nil {
					t.Fatal(err)
				}
			}
			words = append(words, b)
		}
		if len(words) < 20 {
			t.Errorf("%s page %d is as good as empty: %d words", filepath.Base(pdf), n+1, len(words))
		}
		for i, a := range words {
			if strings.HasPrefix(a.word, "##") {
				t.Errorf("%s page %d: a column is too narrow for its figures", filepath.Base(pdf), n+1)
			}
			if a.left < 0 || a.right > 842 {
				t.Errorf("%s page %d: %q runs off the paper", filepath.Base(pdf), n+1, a.word)
			}
			for _, b := range words[i+1:] {
				over := min(a.foot, b.foot) - max(a.top, b.top)
				if min(a.right, b.right)-max(a.left, b.left) > 2 && over > (a.foot-a.top)/3 {
					t.Errorf("%s page %d: %q is printed over %q", filepath.Base(pdf), n+1, a.word, b.word)
				}
			}
		}
	}
	return len(pages)
}

// A small field has a handful of tabs, none of them for a chart of a few points.
func TestSmallFieldFewTabs(t *testing.T) {
	for _, c := range []struct {
		weeks, n int
		want     string
	}{
		{4, 12, "Board Result Lists Attendance Notes"},
		{14, 30, "Board Result Lists Times Attendance Notes"},
		{14, 140, "Board Result Bests Groups Age grade Lists Times Attendance Notes"},
	} {
		db, last := district(t, c.weeks, c.n, true)
		d, err := readOne(context.Background(), db, Options{}, Run{"heron-mere", last, ""})
		if err != nil {
			t.Fatal(err)
		}
		var tabs []string
		charts := 0
		for _, tab := range d.public(issueOf{Number: 1}).Tabs {
			tabs = append(tabs, tab.Name)
			for _, b := range tab.Blocks {
				if _, ok := b.(table.ChartBlock); ok {
					charts++
				}
			}
		}
		if got := strings.Join(tabs, " "); got != c.want {
			t.Errorf("%d finishers: tabs %s, want %s", d.run.finishers, got, c.want)
		}
		if c.weeks < leastForChart && charts > 0 {
			t.Errorf("%d charts of %d runs", charts, c.weeks)
		}
	}
}

// Every name of the lists' own tabs stands on the tab Lists too.
func TestTogetherKeepsEverything(t *testing.T) {
	db, last := district(t, 14, 30, true)
	d, err := readOne(context.Background(), db, Options{}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	lists := present(d.bestsTab(), d.groupsTab(), d.gradesTab(), d.peopleTab(), d.recordsTab(), d.clubsTab(), d.helpersTab())
	var all strings.Builder
	together(lists).WriteText(&all, 0)
	cells := 0
	for _, tab := range lists {
		for _, b := range tab.Blocks {
			f, ok := b.(table.Full)
			if !ok {
				continue
			}
			for _, r := range f.Rows {
				for c, v := range r.Cells {
					if s := v.Show(f.Columns[c].Kind); !strings.Contains(all.String(), s) {
						t.Errorf("%s: %q is missing", tab.Name, s)
					}
					cells++
				}
			}
		}
	}
	if cells < 200 {
		t.Errorf("only %d cells compared", cells)
	}
}

// Writes the reports to a folder to be looked at.
func TestWeeklyLook(t *testing.T) {
	dir := os.Getenv("LAPWING_LOOK")
	if dir == "" {
		t.Skip("set LAPWING_LOOK to a folder to write the reports there and look at them")
	}
	for _, n := range []int{12, 30, 140} {
		db, last := district(t, 14, n, true)
		dir := filepath.Join(dir, fmt.Sprint(n))
		arch := filepath.Join(dir, "archive")
		if err := os.MkdirAll(arch, 0o755); err != nil {
			t.Fatal(err)
		}
		t.Log(writeWeekly(t, db, dir, arch, last))
	}
}

// Reports of many runs written at the same time through one register are the
// same as written one after the other.
func TestWeeklyInParallel(t *testing.T) {
	db, last := district(t, 12, 40, true)
	one, many := t.TempDir(), t.TempDir()
	for w := range 12 {
		writeWeekly(t, db, one, one, last-unit.Day(7*w))
	}
	reg, err := OpenRegister(many)
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Dir: many, ArchiveDir: many, AgeStandard: 2025, Version: "0.1", Why: "a later sheet was loaded", Register: reg}
	errs := make(chan error)
	for w := range 12 {
		go func() {
			_, err := Weekly(context.Background(), db.Pool, o, "heron-mere", last-unit.Day(7*w), "")
			errs <- err
		}()
	}
	for range 12 {
		if err := <-errs; err != nil {
			t.Error(err)
		}
	}
	files, err := filepath.Glob(filepath.Join(one, "heron*"))
	if err != nil || len(files) != 48 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	for _, f := range files {
		if read(t, f) != read(t, many, filepath.Base(f)) {
			t.Errorf("%s differs", filepath.Base(f))
		}
	}
	again, err := OpenRegister(many)
	if err != nil || len(again.by) != 12 {
		t.Errorf("the register knows %d reports, %v", len(again.by), err)
	}
}

// The time from rows to four files, for a field of 300.
func BenchmarkWeekly(b *testing.B) {
	db, last := district(b, 14, 300, true)
	for b.Loop() {
		writeWeekly(b, db, b.TempDir(), b.TempDir(), last)
	}
}

// Those on wheels have a list of their own, by time, and no place in a group.
func TestWheels(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 4, 30, true)
	in := &inserter{t: t, db: db, ctx: ctx}
	in.exec(`update main.results set taking_part_as = 'racing wheelchair or handcycle' where course = 'heron-mere' and position in (4, 6) and run_date = (select max(run_date) from main.results)`)
	d, err := readOne(ctx, db, Options{}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	d.wheelsTab().WriteText(&text, 0)
	want := 0
	for _, r := range d.results {
		if r.position != nil && (*r.position == 4 || *r.position == 6) {
			want++
			if r.groupPlace.N != 0 || !strings.Contains(text.String(), r.publicName()) || !strings.Contains(text.String(), unit.Clock(*r.timeS)) {
				t.Errorf("%s, place in group %d, in\n%s", r.publicName(), r.groupPlace.N, text.String())
			}
		}
	}
	if want != 2 || strings.Count(text.String(), "racing wheelchair") != 2 {
		t.Errorf("%d people in\n%s", want, text.String())
	}
}
