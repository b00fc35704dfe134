package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// matchSheets are twelve weeks of a run at each of two courses, with people of
// whom the sheets leave it open who they are.
func matchSheets() map[string]string {
	type person struct {
		name, sex, club string
		age             int
		weeks           [2]int // first and last
		course          int    // 0 both
		pace            int
	}
	people := []person{
		// the same person or not: a pet name that no table has, taking turns
		{"Wilhelmina Ashgrove", "W", "Alder Harriers", 41, [2]int{0, 5}, 1, 1500},
		{"Billie Ashgrove", "W", "Alder Harriers", 41, [2]int{6, 11}, 1, 1505},
		{"Bartholomew Quince", "M", "Alder Harriers", 33, [2]int{0, 4}, 1, 1300},
		{"Tolly Quince", "M", "Alder Harriers", 33, [2]int{5, 11}, 1, 1310},
		{"Georgiana Thrupp", "W", "Brook Striders", 52, [2]int{0, 5}, 2, 1700},
		{"Nana Thrupp", "W", "Brook Striders", 52, [2]int{6, 11}, 2, 1710},
		{"Ferdinand Oakley", "M", "Brook Striders", 27, [2]int{0, 5}, 2, 1200},
		{"Nando Oakley", "M", "Brook Striders", 27, [2]int{6, 11}, 2, 1195},
		// a new family name
		{"Rosalind Marchbank", "W", "Alder Harriers", 36, [2]int{0, 5}, 1, 1600},
		{"Rosalind Teversham", "W", "Alder Harriers", 36, [2]int{6, 11}, 1, 1595},
		// surely one person at two courses
		{"Cornelius Wragby", "M", "Alder Harriers", 45, [2]int{0, 11}, 0, 1400},
	}
	given := []string{"Ada", "Ben", "Cora", "Dan", "Edie", "Finn", "Gwen", "Hugh", "Isla", "Jack", "Kit", "Lena"}
	family := []string{"Moss", "Reed", "Thorne", "Vale", "Wick", "Yarrow", "Sedge"}
	for i := range 60 {
		people = append(people, person{given[i%12] + " " + family[i*5%7], "WM"[i%2 : i%2+1], []string{"Alder Harriers", "Brook Striders", ""}[i%3],
			20 + i*7%50, [2]int{i % 3, 11 - i%4}, 1 + i%2, 1250 + 17*i})
	}
	files := map[string]string{}
	for course, name := range map[int]string{1: "alder-bank", 2: "brook-mead"} {
		for week := range 12 {
			var b strings.Builder
			b.WriteString("Pos,Name,Time,Age,Sex,Club\n")
			place := 0
			for i, p := range people {
				if week < p.weeks[0] || week > p.weeks[1] || p.course > 0 && p.course != course || p.course == 0 && week%2 != course%2 {
					continue
				}
				place++
				s := 1100 + 60*place/2 + (week*7+i)%11
				fmt.Fprintf(&b, "%d,%s,%d:%02d,%d,%s,%s\n", place, p.name, s/60, s%60, p.age, p.sex, p.club)
			}
			files[fmt.Sprintf("sheets/%s_2026-%02d-%02d.csv", name, 1+(week*7+2)/28, 1+(week*7+2)%28)] = b.String()
		}
	}
	return files
}

// TestMatch loads matchSheets once; each of the tests has a copy to itself.
func TestMatch(t *testing.T) {
	loaded := folderWith(t, matchSheets())
	must(t, loaded, "load", filepath.Join(loaded, "sheets"))
	for _, c := range []struct {
		name string
		test func(t *testing.T, dir string)
	}{
		{"list", testMatchList},
		{"round trip", testMatchRoundTrip},
		{"refused rows", testMatchApplyRefuses},
		{"moved rows", testMatchApplyMovedRows},
		{"contradictions", testMatchContradictions},
		{"contradictions in a workbook", testMatchContradictionsInWorkbook},
		{"contradictions by hand", testMatchContradictionsByHand},
		{"decisions outlive sheets", testMatchDecisionsOutliveSheets},
	} {
		t.Run(c.name, func(t *testing.T) { c.test(t, copied(t, loaded)) })
	}
}

type listed struct {
	Pairs []struct {
		First, Second struct {
			ID   string `json:"runner_id"`
			Name string `json:"name"`
		}
		Evidence []struct {
			Words string  `json:"words"`
			Bits  float64 `json:"bits"`
		}
		Bits float64 `json:"bits"`
	}
	Contradictions []struct {
		Decision int
		Words    string
	}
}

func matchList(t *testing.T, dir string) (l listed) {
	t.Helper()
	if err := json.Unmarshal([]byte(must(t, dir, "match", "list", "--most", "0", "--json").out), &l); err != nil {
		t.Fatal(err)
	}
	return l
}

// idOf is the runner id under which a name is printed.
func idOf(t *testing.T, dir, name string) string {
	t.Helper()
	for id, r := range runnersOf(t, dir) {
		if r["name"] == name {
			return id
		}
	}
	t.Fatalf("nobody is printed as %q", name)
	return ""
}

// runnersOf reads the runners of the export, by id.
func runnersOf(t *testing.T, dir string) map[string]map[string]string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out")
	must(t, dir, "export", out, "--private")
	f, err := os.Open(filepath.Join(out, "runners.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	runners := map[string]map[string]string{}
	for _, row := range rows[1:] {
		r := map[string]string{}
		for i, h := range rows[0] {
			r[h] = row[i]
		}
		runners[r["runner_id"]] = r
	}
	return runners
}

func decisionsFile(t *testing.T, dir string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(dir, "archive", "decisions.csv"))
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return string(data)
}

// book is a workbook for deciding, opened.
type book struct {
	t    *testing.T
	path string
	f    *excelize.File
	rows [][]string
	head int
}

func exportBook(t *testing.T, dir string) *book {
	t.Helper()
	b := &book{t: t, path: filepath.Join(t.TempDir(), "who.xlsx")}
	must(t, dir, "match", "export", b.path)
	b.open()
	return b
}

func (b *book) open() {
	b.t.Helper()
	var err error
	if b.f, err = excelize.OpenFile(b.path); err != nil {
		b.t.Fatal(err)
	}
	if b.rows, err = b.f.GetRows("Pairs"); err != nil {
		b.t.Fatal(err)
	}
	for i, r := range b.rows {
		if len(r) > 0 && r[0] == "No." {
			b.head = i
		}
	}
	if b.head == 0 {
		b.t.Fatal("no heading row on the tab Pairs")
	}
}

// cell is the name of a cell by the pair's names and the heading.
func (b *book) cell(a, c, heading string) string {
	b.t.Helper()
	for i, r := range b.rows[b.head+1:] {
		text := r[1] + " " + r[2]
		if strings.Contains(text, a) && strings.Contains(text, c) {
			for k, h := range b.rows[b.head] {
				if h == heading {
					name, err := excelize.CoordinatesToCellName(k+1, b.head+i+2)
					if err != nil {
						b.t.Fatal(err)
					}
					return name
				}
			}
		}
	}
	b.t.Fatalf("%q and %q are not on the list, or there is no column %q", a, c, heading)
	return ""
}

func (b *book) set(cell, text string) {
	b.t.Helper()
	if err := b.f.SetCellStr("Pairs", cell, text); err != nil {
		b.t.Fatal(err)
	}
}

func (b *book) get(cell string) string {
	b.t.Helper()
	s, err := b.f.GetCellValue("Pairs", cell)
	if err != nil {
		b.t.Fatal(err)
	}
	return s
}

func (b *book) decide(a, c, decision, remark string) string {
	cell := b.cell(a, c, "Decision")
	b.set(cell, decision)
	b.set(b.cell(a, c, "Remark"), remark)
	return cell
}

func (b *book) save() string {
	b.t.Helper()
	if err := b.f.Save(); err != nil {
		b.t.Fatal(err)
	}
	return b.path
}

// The doubtful pairs are listed with evidence that adds up.
func testMatchList(t *testing.T, dir string) {
	l := matchList(t, dir)
	if len(l.Pairs) < 4 {
		t.Fatalf("%d doubtful pairs, want at least 4", len(l.Pairs))
	}
	for _, p := range l.Pairs {
		sum := 0.
		for _, e := range p.Evidence {
			sum += e.Bits
		}
		if len(p.Evidence) < 4 || math.Abs(sum-p.Bits) > 1./256 {
			t.Errorf("%s and %s: %d parts add up to %.4f, the sum is %.4f", p.First.ID, p.Second.ID, len(p.Evidence), sum, p.Bits)
		}
	}
	p := l.Pairs[0]
	wants(t, must(t, dir, "match", "list").out, p.First.Name, p.Second.Name, "together", "lapwing match join "+p.First.ID)
	// a pair of the list is explained as it is listed
	o := must(t, dir, "match", "explain", p.Second.ID, p.First.ID)
	wants(t, o.out, p.First.Name, "together", "two runners", "number 1 on the review list", p.Evidence[0].Words)
	// any other is weighed afresh
	wants(t, must(t, dir, "match", "explain", "Cornelius Wragby", "Ada Moss").out, "together", "not even doubtful")
	wants(t, must(t, dir, "match", "explain", "Cornelius Wragby").out, "How the lines came together", "together")
	wants(t, must(t, dir, "match", "weights").out, "Starting weights", "in force", "bits", "share")
	if o := lapwing(t, dir, "match", "explain", "R999999", "R1"); o.code != exitFailed {
		t.Errorf("a runner that there is not: exit %d", o.code)
	}
}

// A workbook is exported, decided in, applied; the outcome holds through
// refresh and rebuild, with the same ids.
func testMatchRoundTrip(t *testing.T, dir string) {
	before := runnersOf(t, dir)
	b := exportBook(t, dir)
	one, two := idOf(t, dir, "Wilhelmina Ashgrove"), idOf(t, dir, "Billie Ashgrove")
	b.decide("Wilhelmina Ashgrove", "Billie Ashgrove", "same person", "=her own word")
	b.decide("Bartholomew Quince", "Tolly Quince", "different people", "cousins")
	b.decide("Georgiana Thrupp", "Nana Thrupp", "leave", "")
	o := must(t, dir, "match", "apply", b.save(), "--by", "Desk")
	wants(t, o.out, "2 decisions were kept", "1 pair joined", "1 pair kept apart")
	wants(t, decisionsFile(t, dir), "same person", "different people", "=her own word", "Desk")

	after := runnersOf(t, dir)
	if len(after) != len(before)-1 {
		t.Errorf("%d runners, were %d: one pair was joined", len(after), len(before))
	}
	if _, still := after[two]; still {
		t.Errorf("%s is a runner of its own still", two)
	}
	if after[one]["results"] != "12" {
		t.Errorf("%s has %s results, want 12", one, after[one]["results"])
	}
	wants(t, must(t, dir, "standing", two).out, "("+one+")") // the old id leads to the runner
	wants(t, must(t, dir, "match", "explain", one, two).out, "one runner", "=her own word")
	for _, p := range matchList(t, dir).Pairs {
		if strings.HasSuffix(p.First.Name, "Quince") || strings.HasSuffix(p.First.Name, "Ashgrove") {
			t.Errorf("%s and %s have been decided, and are asked again", p.First.Name, p.Second.Name)
		}
	}
	// again: nothing new, nothing refused
	wants(t, must(t, dir, "match", "apply", b.path).out, "No new decisions", "2 rows say what holds already")

	want := export(t, dir)
	must(t, dir, "refresh")
	sameFiles(t, "after refresh", want, export(t, dir), 4)
	must(t, dir, "rebuild")
	sameFiles(t, "after rebuild", want, export(t, dir), 4)
	if err := os.Remove(filepath.Join(dir, "archive", "lapwing.duckdb")); err != nil {
		t.Fatal(err)
	}
	sameFiles(t, "without the database", want, export(t, dir), 4)

	// taken back: all ids and figures are as they were
	must(t, dir, "match", "undo", "1")
	must(t, dir, "match", "undo", "2")
	list := must(t, dir, "correct", "--list").out
	wants(t, list, "taken back")
	if long := regexp.MustCompile("[0-9a-f]{20,}").FindString(list); long != "" {
		t.Errorf("a line is told by the key of its sheet, %s, and not by its file:\n%s", long, list)
	}
	again := runnersOf(t, dir)
	for id, r := range before {
		if again[id]["name"] != r["name"] || again[id]["results"] != r["results"] || again[id]["best_s"] != r["best_s"] {
			t.Errorf("%s was %v, is %v", id, r, again[id])
		}
	}
}

// A row that can't be followed is refused with its cell; then nothing happens,
// unless --partial.
func testMatchApplyRefuses(t *testing.T, dir string) {
	b := exportBook(t, dir)
	good := b.decide("Georgiana Thrupp", "Nana Thrupp", "different people", "mother and daughter")
	word := b.decide("Wilhelmina Ashgrove", "Billie Ashgrove", "perhaps", "")
	changed := b.cell("Bartholomew Quince", "Tolly Quince", "First")
	b.decide("Bartholomew Quince", "Tolly Quince", "same person", "")
	b.set(changed, strings.Replace(b.get(changed), "Quince", "Quint", 1))
	stale := b.cell("Ferdinand Oakley", "Nando Oakley", "Second")
	b.decide("Ferdinand Oakley", "Nando Oakley", "different people", "")
	must(t, dir, "match", "join", "Ferdinand Oakley", "Nando Oakley")
	kept := decisionsFile(t, dir)

	o := lapwing(t, dir, "match", "apply", b.save())
	if o.code != exitFailed {
		t.Errorf("exit %d, want %d", o.code, exitFailed)
	}
	at := filepath.Base(b.path) + ":Pairs!"
	wants(t, o.out, at+word+`: read "perhaps", expected same person, different people or leave`, at+changed+`: read "R`, at+stale+": stale", "Nothing was done")
	if strings.Contains(o.out, at+good) {
		t.Errorf("%s is right and was refused:\n%s", good, o.out)
	}
	if now := decisionsFile(t, dir); now != kept {
		t.Errorf("decisions were kept although rows were refused:\n%s", now)
	}
	o = lapwing(t, dir, "match", "apply", b.path, "--partial")
	if o.code != exitFailed {
		t.Errorf("partial: exit %d, want %d: rows still wait for an answer", o.code, exitFailed)
	}
	wants(t, o.out, "1 decision was kept", at+word, at+changed, at+stale)
	wants(t, decisionsFile(t, dir), "mother and daughter")
	var j struct {
		Refused []struct{ At, Why string }
	}
	if err := json.Unmarshal([]byte(lapwing(t, dir, "match", "apply", b.path, "--json").out), &j); err != nil || len(j.Refused) != 3 {
		t.Errorf("as JSON: %v, %d rows refused, want 3", err, len(j.Refused))
	}
}

// Codes that were moved to another row, or lost, are refused; rows that were
// sorted are not. A new sheet does not make a workbook stale, a withdrawn one
// does.
func testMatchApplyMovedRows(t *testing.T, dir string) {
	b := exportBook(t, dir)
	b.decide("Wilhelmina Ashgrove", "Billie Ashgrove", "same person", "")
	b.decide("Bartholomew Quince", "Tolly Quince", "same person", "")
	x, y := b.cell("Wilhelmina Ashgrove", "Billie Ashgrove", "Code of the row"), b.cell("Bartholomew Quince", "Tolly Quince", "Code of the row")
	cx, cy := b.get(x), b.get(y)
	b.set(x, cy)
	b.set(y, cx)
	o := lapwing(t, dir, "match", "apply", b.save())
	at := filepath.Base(b.path) + ":Pairs!"
	wants(t, o.out, at+b.cell("Wilhelmina Ashgrove", "Billie Ashgrove", "First"), at+b.cell("Bartholomew Quince", "Tolly Quince", "First"), "Nothing was done")
	b.set(x, "")
	b.set(y, cy)
	wants(t, lapwing(t, dir, "match", "apply", b.save()).out, at+x, "expected the code that lapwing wrote")
	// whole rows exchanged, as by sorting
	b.set(x, cx)
	var i, j int
	if _, err := fmt.Sscanf(strings.TrimLeft(x, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"), "%d", &i); err != nil {
		t.Fatal(err)
	}
	if _, err := fmt.Sscanf(strings.TrimLeft(y, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"), "%d", &j); err != nil {
		t.Fatal(err)
	}
	for k := 1; k <= len(b.rows[b.head]); k++ {
		p, _ := excelize.CoordinatesToCellName(k, i)
		q, _ := excelize.CoordinatesToCellName(k, j)
		one, two := b.get(p), b.get(q)
		b.set(p, two)
		b.set(q, one)
	}
	write(t, dir, map[string]string{"more/alder-bank_2026-04-25.csv": "Pos,Name,Time,Age,Sex,Club\n1,Billie Ashgrove,25:10,41,W,Alder Harriers\n2,Ada Moss,26:10,20,W,Alder Harriers\n"})
	must(t, dir, "load", filepath.Join(dir, "more"))
	wants(t, must(t, dir, "match", "apply", b.save()).out, "2 decisions were kept")

	b = exportBook(t, dir)
	stale := b.cell("Georgiana Thrupp", "Nana Thrupp", "First")
	b.decide("Georgiana Thrupp", "Nana Thrupp", "same person", "")
	must(t, dir, "sheets", "withdraw", "brook-mead_2026-01-03.csv")
	wants(t, lapwing(t, dir, "match", "apply", b.save()).out, filepath.Base(b.path)+":Pairs!"+stale+": stale")
}

// Decisions that contradict one another are shown, not guessed.
func testMatchContradictions(t *testing.T, dir string) {
	a, b, c := idOf(t, dir, "Wilhelmina Ashgrove"), idOf(t, dir, "Billie Ashgrove"), idOf(t, dir, "Cornelius Wragby")
	must(t, dir, "match", "part", a, b, "--why", "sisters in law")
	wants(t, must(t, dir, "match", "explain", a, b).out, "decision 1 keeps them apart", "sisters in law")
	o := lapwing(t, dir, "match", "join", b, a)
	if o.code != exitFailed {
		t.Errorf("joining what was parted: exit %d", o.code)
	}
	wants(t, o.errOut, "decision 1", "sisters in law", "Nothing was kept", "lapwing match undo 1")
	must(t, dir, "match", "join", a, c)
	// one person by way of another, who was parted from the third
	o = lapwing(t, dir, "match", "join", a, b)
	wants(t, o.errOut, "decision 1")
	o = lapwing(t, dir, "match", "part", a, c)
	wants(t, o.errOut, "decision 2", "are one person", "Nothing was kept")
	wants(t, must(t, dir, "match", "decisions").out, "different people", "same person", "in force")
	if n := strings.Count(decisionsFile(t, dir), "\n"); n != 3 {
		t.Errorf("decisions.csv has %d lines, want a heading and 2", n)
	}
}

// A workbook that says both of one pair.
func testMatchContradictionsInWorkbook(t *testing.T, dir string) {
	bk := exportBook(t, dir)
	one := bk.decide("Wilhelmina Ashgrove", "Billie Ashgrove", "same person", "")
	// the row of another pair says the opposite about the same two
	rows := len(bk.rows)
	for k := 1; k <= len(bk.rows[bk.head]); k++ {
		var row int
		fmt.Sscanf(strings.TrimLeft(one, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"), "%d", &row)
		from, _ := excelize.CoordinatesToCellName(k, row)
		to, _ := excelize.CoordinatesToCellName(k, rows+1)
		bk.set(to, bk.get(from))
	}
	col, _, _ := excelize.SplitCellName(one)
	other := fmt.Sprintf("%s%d", col, rows+1)
	bk.set(other, "different people")
	o := lapwing(t, dir, "match", "apply", bk.save())
	at := filepath.Base(bk.path) + ":Pairs!"
	wants(t, o.out, at+one, at+other, "says both", "Nothing was done")
	if d := decisionsFile(t, dir); d != "" {
		t.Errorf("a contradiction was kept:\n%s", d)
	}
}

// Written into decisions.csv by hand: neither is guessed, and the list says so.
func testMatchContradictionsByHand(t *testing.T, dir string) {
	must(t, dir, "match", "join", "Wilhelmina Ashgrove", "Billie Ashgrove")
	hand := strings.Split(strings.TrimSpace(decisionsFile(t, dir)), "\n")
	hand = append(hand, strings.Replace(strings.Replace(hand[1], "1,", "2,", 1), "same person", "different people", 1))
	write(t, dir, map[string]string{"archive/decisions.csv": strings.Join(hand, "\n") + "\n"})
	wants(t, must(t, dir, "match", "list").out, "Contradiction:", "decision 1", "decision 2")
	wants(t, must(t, dir, "match", "decisions").out, "contradicted")
	wants(t, must(t, dir, "sheets", "problems", "--all").out, "decision contradicted", "lapwing match undo")
	if x, y := idOf(t, dir, "Wilhelmina Ashgrove"), idOf(t, dir, "Billie Ashgrove"); x == y {
		t.Error("a contradiction was guessed")
	}
}

// A decision wins over evidence and outlives a new issue of its sheet, also
// where it is about a single line.
func testMatchDecisionsOutliveSheets(t *testing.T, dir string) {
	wragby, moss := idOf(t, dir, "Cornelius Wragby"), idOf(t, dir, "Ada Moss")
	results := func(id string) string { return runnersOf(t, dir)[id]["results"] }
	if results(wragby) != "12" {
		t.Fatalf("%s has %s results, want 12", wragby, results(wragby))
	}
	sheet := "alder-bank_2026-01-10.csv"
	text := matchSheets()["sheets/"+sheet]
	row := 0
	for i, line := range strings.Split(text, "\n") {
		if strings.Contains(line, "Wragby") {
			row = i + 1
		}
	}
	if row == 0 {
		t.Fatalf("nobody of that name on %s", sheet)
	}
	where := fmt.Sprintf("%s:%d", sheet, row)
	wants(t, must(t, dir, "match", "part", wragby, where, "--why", "his son").out, "different people now")
	if results(wragby) != "11" {
		t.Errorf("%s has %s results after a line was parted, want 11", wragby, results(wragby))
	}
	wants(t, must(t, dir, "match", "decisions").out, where, "his son")
	// a new issue of the sheet: the decision goes with the line
	write(t, dir, map[string]string{"more/" + sheet: strings.Replace(text, "Ada Moss", "Ada May Moss", 1) + "99,Zelda Quill,59:10,30,W,\n"})
	must(t, dir, "load", filepath.Join(dir, "more"))
	if results(wragby) != "11" {
		t.Errorf("%s has %s results after a new issue of the sheet, want 11", wragby, results(wragby))
	}
	// of three who are different each is different from each
	wants(t, must(t, dir, "match", "part", "Cora Vale", "Dan Reed", "Edie Sedge").out, "Dan Reed and", "Edie Sedge are different people now", "Kept as decision 2")
	if n := strings.Count(decisionsFile(t, dir), "different people"); n != 4 {
		t.Errorf("%d decisions keep people apart, want 1 and 3", n)
	}
	// two that nothing speaks for
	must(t, dir, "match", "join", wragby, moss)
	must(t, dir, "rebuild")
	all := runnersOf(t, dir)
	old, young := wragby, moss
	if len(moss) < len(wragby) || len(moss) == len(wragby) && moss < wragby {
		old, young = moss, wragby
	}
	if _, still := all[young]; still {
		t.Errorf("%s and %s were joined and are two", wragby, moss)
	}
	if _, ok := all[old]; !ok {
		t.Errorf("the older id %s is gone", old)
	}
	for _, bad := range [][]string{{"match", "join", wragby, wragby}, {"match", "join", wragby, "Otto Quillfeather"}, {"match", "undo", "99"}, {"match", "part", wragby, sheet + ":1"}} {
		if o := lapwing(t, dir, bad...); o.code != exitFailed {
			t.Errorf("%v: exit %d, want %d", bad, o.code, exitFailed)
		}
	}
	for _, bad := range [][]string{{"match", "join", wragby}, {"match", "export", "list.csv"}, {"match", "undo", "x"}} {
		if o := lapwing(t, dir, bad...); o.code != exitUsage {
			t.Errorf("%v: exit %d, want %d", bad, o.code, exitUsage)
		}
	}
}

// Lines that no age places are asked about as one question for each set of
// namesakes, in the list and in the workbook; the answer holds.
func TestMatchNamesakes(t *testing.T) {
	files := map[string]string{}
	for week := range 8 {
		var b strings.Builder
		ages := week < 6
		b.WriteString("Pos,Name,Time,Sex")
		if ages {
			b.WriteString(",Age")
		}
		place := 0
		add := func(name, sex string, age, s int) {
			place++
			s += 3 * week
			fmt.Fprintf(&b, "\n%d,%s,%d:%02d,%s", place, name, s/60, s%60, sex)
			if ages {
				fmt.Fprintf(&b, ",%d", age)
			}
		}
		for i := range 30 {
			add(fmt.Sprintf("%s %s", []string{"Ada", "Ben", "Cora", "Dan", "Edie", "Finn"}[i%6], []string{"Moss", "Reed", "Thorne", "Vale", "Wick"}[i/6]), "WM"[i%2:i%2+1], 20+i, 1200+20*i)
			if i == 9 && ages {
				add("Ivor Penhale", "M", 24, 1395)
			}
			if i == 16 && !ages { // between the two
				add("Ivor Penhale", "M", 0, 1530)
			}
			if i == 24 && ages {
				add("Ivor Penhale", "M", 52, 1690)
			}
		}
		files[fmt.Sprintf("sheets/alder-bank_2026-%02d-%02d.csv", 1+(week*7+2)/28, 1+(week*7+2)%28)] = b.String() + "\n"
	}
	dir := folderWith(t, files)
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	wants(t, must(t, dir, "match", "list").out, "Whose are these lines?", "alder-bank_2026-02-24.csv:19", "born 1973 to 1974")
	father := ""
	for id, r := range runnersOf(t, dir) {
		if r["name"] == "Ivor Penhale" && strings.HasPrefix(r["birth_lo"], "1973") {
			father = id
			if r["results"] != "6" {
				t.Errorf("%s has %s results before anybody decided, want 6", id, r["results"])
			}
		}
	}
	if father == "" {
		t.Fatal("no runner born in 1973")
	}
	path := filepath.Join(t.TempDir(), "who.xlsx")
	must(t, dir, "match", "export", path)
	fill := func(answers ...string) {
		f, err := excelize.OpenFile(path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		rows, err := f.GetRows("Namesakes")
		if err != nil || len(rows) != 5 {
			t.Fatalf("the tab Namesakes has %d rows, want a title, a sentence, headings and 2 lines (%v)", len(rows), err)
		}
		for i, a := range answers {
			if err := f.SetCellStr("Namesakes", fmt.Sprintf("D%d", 4+i), a); err != nil {
				t.Fatal(err)
			}
		}
		if err := f.Save(); err != nil {
			t.Fatal(err)
		}
	}
	fill(father, "R999")
	wants(t, lapwing(t, dir, "match", "apply", path).out, `who.xlsx:Namesakes!D5: read "R999", expected R`, father, "none of these or leave")
	fill(father, "none of these")
	o := must(t, dir, "match", "apply", path)
	wants(t, o.out, "lines given to a runner or taken from one")
	if n := runnersOf(t, dir)[father]["results"]; n != "7" {
		t.Errorf("%s has %s results, want 7: one line was given to him", father, n)
	}
	if l := must(t, dir, "match", "list").out; strings.Contains(l, "Whose are these lines?") {
		t.Errorf("both lines were decided and are asked about again:\n%s", l)
	}
	want := export(t, dir)
	must(t, dir, "rebuild")
	sameFiles(t, "after rebuild", want, export(t, dir), 4)
}
