package reports

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

func cardOf(t *testing.T, db *store.DB, o Options, who string) *Card {
	t.Helper()
	c, err := Standing(context.Background(), db, o, who, StandingOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestStandingGolden(t *testing.T) {
	db, _ := district(t, 30, 120, true)
	c := cardOf(t, db, Options{AgeStandard: 2025}, "R1")
	golden(t, "standing.txt", c.Text())
	golden(t, "standing_child.txt", cardOf(t, db, Options{}, "R6").Text())
	golden(t, "standing_book.txt", c.book(issueOf{Number: 1}).Text())
}

// Every card fits a terminal of 80 columns.
func TestStandingFitsTheTerminal(t *testing.T) {
	db, _ := district(t, 30, 120, true)
	for _, who := range []string{"R1", "R2", "R4", "R5", "R6", "R11", "R18", "R60", "R150"} {
		for i, l := range strings.Split(cardOf(t, db, Options{}, who).Text(), "\n") {
			if w := uniseg.StringWidth(l); w > lineWidth {
				t.Errorf("%s line %d is %d columns wide: %q", who, i+1, w, l)
			}
		}
	}
}

// The page of a child compares and judges nothing, holds no full name and no
// run; nobody else's name stands on any page; a hidden person has none.
func TestStandingPagePrivacy(t *testing.T) {
	db, _ := district(t, 30, 120, true)
	dir := t.TempDir()
	o := Options{Dir: dir, ArchiveDir: dir}
	child := cardOf(t, db, o, "R6")
	page, err := child.page(issueOf{Number: 1})
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	if strings.Contains(text, child.name) || !strings.Contains(text, firstAndInitial(child.name)) {
		t.Errorf("the page of a child prints the name in full, or not at all")
	}
	for _, bad := range []string{"Adjusted", "Form", "Faster than", "Ahead of", "Even pace", "places ahead", "Effort", "The last", "<svg", "W55", "%</"} {
		if strings.Contains(text, bad) {
			t.Errorf("the page of a child holds %q", bad)
		}
	}
	adult := cardOf(t, db, o, "R1")
	page, err = adult.page(issueOf{Number: 1})
	if err != nil {
		t.Fatal(err)
	}
	rows, err := db.QueryContext(context.Background(), "select name from main.runners where name <> $1", adult.name)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	n := 0
	for rows.Next() {
		var name string
		if err := rows.Scan(&name); err != nil {
			t.Fatal(err)
		}
		if n++; strings.Contains(string(page), name) {
			t.Errorf("the page of %s names %s", adult.name, name)
		}
	}
	if n < 100 {
		t.Fatalf("only %d names", n)
	}
	for _, outside := range []string{"http:", "https:", "<script", "@import", "url(", "src="} {
		if strings.Contains(string(page), outside) {
			t.Errorf("the page holds %q", outside)
		}
	}
	if strings.Contains(string(page), "near recent best") {
		t.Error("the page tells effort, which is for the person's own card")
	}
	if _, err := cardOf(t, db, o, "R11").Write(false, true); err == nil || !strings.Contains(err.Error(), "not to be shown") {
		t.Errorf("page of a hidden person: %v", err)
	}
	// Names are data, not markup.
	page, err = cardOf(t, db, o, "R9").page(issueOf{Number: 1})
	if err != nil || strings.Contains(string(page), "<b>") {
		t.Errorf("a name with markup is not escaped (%v)", err)
	}
}

// Ranks on the card against a plain count over the bests, and the example of
// the definition: n 24, two at 5=, 18 slower: 18/23 is 78.
func TestRankIn(t *testing.T) {
	all := []int32{100, 101, 102, 103, 104, 104}
	for i := range int32(18) {
		all = append(all, 110+i)
	}
	r, n, p := rankIn(104, all)
	if v, _ := p.Num(); r.String() != "5=" || n != 24 || v != 78 {
		t.Errorf("rank %s of %d, percentile %v; want 5= of 24, 78", r, n, v)
	}
	if r, n, p := rankIn(101, []int32{100, 101, 102}); r.String() != "2" || n != 3 || !p.Empty() {
		t.Errorf("in a group of three: %s of %d, percentile shown: %t", r, n, !p.Empty())
	}
	if r, _, _ := rankIn(0, all); r.N != 0 {
		t.Errorf("without a time: rank %s", r)
	}
	// Random fields, against the definition: floor(100 × others strictly slower / (n−1)).
	rng := rand.New(rand.NewPCG(3, 4))
	for range 20 {
		times := make([]int32, 10+rng.IntN(200))
		for i := range times {
			times[i] = int32(1200 + rng.IntN(90))
		}
		for _, mine := range times {
			faster, slower := 0, 0
			for _, o := range times {
				if o > mine {
					slower++
				}
				if o < mine {
					faster++
				}
			}
			r, n, p := rankIn(mine, append([]int32{0, 0}, times...)) // who has no time is not of the group
			want := math.Floor(100 * float64(slower) / float64(len(times)-1))
			if v, _ := p.Num(); v != want || n != len(times) || int(r.N) != faster+1 || r.Shared != (faster+slower < n-1) {
				t.Fatalf("%d s of %d: rank %s, percentile %v, want %d, %v", mine, n, r, v, faster+1, want)
			}
		}
	}
}

// Expected time, by hand: form 25:00 (24:30 to 25:30.6) and a course 30 s
// slower at 25:00 (20 to 40 s) is 25:30; over 10 km at 2^1.06.
func TestExpected(t *testing.T) {
	f := func(x float64) *float64 { return &x }
	d := &standingRows{formS: f(1500), formLow: f(1470), formHigh: f(1530.6122)}
	c := &courseRow{distance: 5000, seconds: f(30), secLow: f(20), secHi: f(40)}
	s, low, high, ok := d.expected(c)
	half := math.Sqrt(math.Pow(math.Log(1530.6122/1470)/2, 2) + math.Pow(math.Log((1+40./1500)/(1+20./1500))/2, 2))
	if !ok || math.Abs(s-1530) > 1e-9 || math.Abs(low-1530*math.Exp(-half)) > 1e-9 || math.Abs(high-1530*math.Exp(half)) > 1e-9 {
		t.Errorf("%v (%v to %v) %t", s, low, high, ok)
	}
	c.distance = 10000
	if s, _, _, _ := d.expected(c); math.Abs(s-1530*2.084931521682243) > 1e-6 { // 2^1.06 = 2.0849315…
		t.Errorf("10 km: %v", s)
	}
	c.seconds = nil
	if _, _, _, ok := d.expected(c); ok {
		t.Error("a course without a speed has an expected time")
	}
}

// What may be said of a change, by its probability.
func TestTrendWords(t *testing.T) {
	f := func(x float64) *float64 { return &x }
	day := unit.NewDay(2026, 3, 7)
	regular := func(n int) (rows []ownRow) {
		for i := range n {
			rows = append(rows, ownRow{day: day - unit.Day(7*(n-1-i)), countsTime: true})
		}
		return rows
	}
	for _, c := range []struct {
		d    standingRows
		want string
	}{
		{standingRows{results: regular(20), change: f(-.03), changeSD: f(.01), pFaster: f(.99), pLevel: f(.1)}, "Improving: form is very likely better"},
		{standingRows{results: regular(20), change: f(.03), changeSD: f(.01), pFaster: f(.01), pLevel: f(.1)}, "Likely slower than 12 weeks ago"},
		{standingRows{results: regular(20), change: f(0), changeSD: f(.01), pFaster: f(.5), pLevel: f(.95)}, "Holding level"},
		{standingRows{results: regular(20), change: f(-.005), changeSD: f(.015), pFaster: f(.63), pLevel: f(.7)}, "Can't tell yet"},
		{standingRows{results: regular(10), change: f(-.03), changeSD: f(.01), pFaster: f(.99), pLevel: f(.1)}, "Can't tell yet"},
		{standingRows{results: regular(20)}, "Can't tell yet: it takes four timed runs in the last 12 weeks and four before; up to the last run there are 12 and 8."},
		{standingRows{results: regular(20), change: f(-.02), changeSD: f(.02), pFaster: f(.84), pLevel: f(.5)}, "Improving: form is likely better"},
		{standingRows{results: []ownRow{{day: day - 70, countsTime: true}, {day: day - 7, countsTime: true}}}, "Back after 9 weeks"},
	} {
		c.d.latest = day
		if got := c.d.trend(); !strings.HasPrefix(got, c.want) {
			t.Errorf("got %q, want %q…", got, c.want)
		}
	}
}

func TestEfforts(t *testing.T) {
	d := &standingRows{latest: unit.NewDay(2026, 3, 28)}
	for i := range 4 {
		d.results = append(d.results, ownRow{day: d.latest - unit.Day(21-7*i), countsTime: true, effort: "full"})
	}
	want := "Four runs near your recent best in 28 days (7 Mar, 14 Mar, 21 Mar and 28 Mar). Many coaches suggest one or two. A guide, not advice on health."
	if got := d.efforts(); got != want {
		t.Errorf("got %q", got)
	}
	d.results = d.results[3:]
	if got := d.efforts(); got != "One run near your recent best in 28 days (28 Mar)." {
		t.Errorf("got %q", got)
	}
}

// The longer view sets first and last form side by side, and says how long ago
// the last best was; a best is never called behind.
func TestLongView(t *testing.T) {
	f := func(x float64) *float64 { return &x }
	s := func(n int32) *int32 { return &n }
	d := &standingRows{latest: unit.NewDay(2026, 3, 28)}
	for i := range 12 {
		form := 1640 - 10*float64(i)
		d.results = append(d.results, ownRow{day: d.latest - unit.Day(7*(11-i)), countsTime: true, distance: 5000, timeS: s(int32(1700 - i)), pb: i == 8,
			formS: f(form), formLow: f(form - 20), formHigh: f(form + 20), effort: "steady"})
	}
	want := "The longer view, over 5 km: form was about 27:20 (likely 27:00 to 27:40) on 10 January 2026 and 25:30 (25:10 to 25:50) on 28 March 2026: faster, beyond what the estimates leave open. The last personal best was on 7 March 2026, 3 timed runs ago, with form at about 26:00."
	if got := d.longView(); got != want {
		t.Errorf("got %q", got)
	}
	d.results = d.results[6:]
	if got := d.longView(); got != "" {
		t.Errorf("of six runs: %q", got)
	}
	if got := d.results[2].effortWord() + ", " + d.results[3].effortWord(); got != "unclear, behind it" {
		t.Errorf("efforts of a best and of another run: %s", got)
	}
}

func TestStandingUnknown(t *testing.T) {
	db, _ := district(t, 3, 12, true)
	if _, err := Standing(context.Background(), db, Options{}, "R9999", StandingOptions{}); err == nil || !strings.Contains(err.Error(), "knows no runner R9999") {
		t.Errorf("unknown runner: %v", err)
	}
}

// The page prints on one A4 sheet in a real browser.
func TestStandingPrintsOnOnePage(t *testing.T) {
	browser, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("SKIPPED, NOT PASSED: chromium is not installed, so no browser has laid out the page")
	}
	db, _ := district(t, 30, 120, true)
	dir := t.TempDir()
	for _, who := range []string{"R1", "R60", "R6"} {
		w, err := cardOf(t, db, Options{Dir: dir, ArchiveDir: dir}, who).Write(false, true)
		if err != nil || len(w) != 1 {
			t.Fatalf("%v %v", w, err)
		}
		pdf := filepath.Join(dir, who+".pdf")
		c := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+filepath.Join(dir, "profile"),
			"--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+w[0])
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		b, err := os.ReadFile(pdf)
		if err != nil {
			t.Fatal(err)
		}
		if n := len(regexp.MustCompile(`/Type\s*/Page\b[^s]`).FindAll(b, -1)); n != 1 {
			t.Errorf("%s: the page prints on %d sheets", who, n)
		}
		printsClean(t, pdf)
	}
}

// Opened in LibreOffice, the card has no error, prints cleanly and shows every
// result.
func TestStandingInLibreOffice(t *testing.T) {
	db, _ := district(t, 30, 120, true)
	dir := t.TempDir()
	c := cardOf(t, db, Options{Dir: dir, ArchiveDir: dir}, "R1")
	w, err := c.Write(true, false)
	if err != nil {
		t.Fatal(err)
	}
	inLibreOffice(t, dir, 3, w[0])
	theirs := read(t, dir, "standing_R1-History.csv")
	for i := range c.results {
		r := &c.results[i]
		want := fmt.Sprintf("%s,Heron Mere,5 km,%d,%s,", r.day.Time().Format("2 Jan 2006"), *r.position, unit.Clock(*r.timeS))
		if !strings.Contains(theirs, want) {
			t.Fatalf("LibreOffice doesn't show %q:\n%s", want, theirs)
		}
	}
}

// Writes cards to a folder to be looked at.
func TestStandingLook(t *testing.T) {
	dir := os.Getenv("LAPWING_LOOK")
	if dir == "" {
		t.Skip("set LAPWING_LOOK to a folder to write the cards there and look at them")
	}
	db, _ := district(t, 30, 300, true)
	for _, who := range []string{"R1", "R6", "R9"} {
		c := cardOf(t, db, Options{Dir: dir, ArchiveDir: dir, AgeStandard: 2025, Version: "0.1"}, who)
		if _, err := c.Write(true, true); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, who+".txt"), []byte(c.Text()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
