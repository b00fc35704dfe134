package pipeline

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// folk are invented people, each of another name.
func folk(n int) []string {
	given := []string{"Ines", "Lotte", "Marek", "Oona", "Piet", "Rosa", "Sven", "Tilda", "Ugo", "Vera", "Wim", "Yara", "Anouk", "Bruno", "Celia", "Dario"}
	head := []string{"Ald", "Bran", "Cor", "Dray", "Elm", "Far", "Gos", "Hal", "Ilk", "Ker", "Lam", "Mar", "Nor", "Ock", "Pen", "Quar"}
	tail := []string{"ley", "man", "worth", "by", "sett", "combe", "ridge", "wick", "low", "ham", "stone", "hurst", "field", "gate", "ton", "mere"}
	out := make([]string, n)
	for i := range out {
		out[i] = fmt.Sprintf("%s %s%s", given[i%16], head[i/16%16], tail[i/256%16])
	}
	return out
}

// runOf writes the sheet of a run.
func runOf(title string, day unit.Day, people []string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s - %s\n\nposition,name,time\n", title, day)
	for i, p := range people {
		fmt.Fprintf(&b, "%d,%s,%d:%02d\n", i+1, p, 20+i/6, 10*(i%6)+int(day)/7%9)
	}
	return b.String()
}

var misspeltDay = unit.NewDay(2026, 1, 3)

// district writes six weeks of two courses with their own people, but for
// Alder Bank's week 4, and returns its people.
func district(t *testing.T, dir string) (home, away []string) {
	t.Helper()
	all := folk(60)
	home, away = all[:20], all[20:40]
	for w := range unit.Day(6) {
		if w != 4 {
			writeSheet(t, dir, fmt.Sprintf("in/a%02d.csv", w), runOf("Alder Bank", misspeltDay+7*w, home))
		}
		writeSheet(t, dir, fmt.Sprintf("in/b%02d.csv", w), runOf("Heron Lane", misspeltDay+7*w, away))
	}
	return home, away
}

func TestMisspeltSettledByPeople(t *testing.T) {
	missing := misspeltDay + 7*4
	for _, c := range []struct {
		name, title string
		day         unit.Day
		people      func(home, away []string) []string
		settled     bool
	}{
		{"exchanged", "Alder Bnak", missing, func(h, a []string) []string { return h }, true},
		{"missing", "Ader Bank", missing, func(h, a []string) []string { return h }, true},
		{"no space", "Alderbank", missing, func(h, a []string) []string { return h }, true},
		{"replaced inside", "Alder Bamk", missing, func(h, a []string) []string { return append(h[:12:12], folk(60)[50:]...) }, true},
		{"another first letter", "Elder Bank", missing, func(h, a []string) []string { return h }, false},
		{"a word of another course", "Alder Bane", missing, func(h, a []string) []string { return h }, true},
		{"few are known", "Alder Bnak", missing, func(h, a []string) []string { return append(h[:5:5], folk(60)[50:]...) }, false},
		{"few in all", "Alder Bnak", missing, func(h, a []string) []string { return h[:4] }, false},
		{"people of both", "Alder Bnak", missing, func(h, a []string) []string { return append(h[:10:10], a[:8]...) }, false},
		{"initials only", "Alder Bnak", missing, func(h, a []string) []string {
			out := make([]string, len(h))
			for i, n := range h {
				out[i] = n[:1] + ". " + strings.Fields(n)[1]
			}
			return out
		}, false},
		{"replaced, no later run", "Alder Bamk", misspeltDay + 7*6, func(h, a []string) []string { return h }, false},
		{"a letter at the end, no later run", "Alder Banks", misspeltDay + 7*6, func(h, a []string) []string { return h }, false},
		{"exchanged, no later run", "Alder Bnak", misspeltDay + 7*6, func(h, a []string) []string { return h }, true},
		{"exchanged, no later run, few are known", "Alder Bnak", misspeltDay + 7*6, func(h, a []string) []string { return append(h[:12:12], folk(60)[50:]...) }, false},
		{"there is a run", "Alder Bnak", misspeltDay + 7*3, func(h, a []string) []string { return h }, false},
		{"another weekday", "Alder Bnak", missing + 1, func(h, a []string) []string { return h }, false},
		{"not held then", "Alder Bnak", misspeltDay + 7*30, func(h, a []string) []string { return h }, false},
		{"among other words", "Alder Bank grand outing", misspeltDay + 7*30, func(h, a []string) []string { return h }, true},
		{"among other words, nobody known", "Alder Bank grand outing", missing, func(h, a []string) []string { return folk(60)[40:] }, true},
		{"among other words, another course's people", "Alder Bank grand outing", missing, func(h, a []string) []string { return a }, false},
		{"among other words, there is a run", "Alder Bank grand outing", misspeltDay + 7*3, func(h, a []string) []string { return h }, false},
		{"among other words, another weekday", "Alder Bank grand outing", missing + 1, func(h, a []string) []string { return h }, false},
		{"family name first", "Alder Bnak", missing, func(h, a []string) []string {
			out := make([]string, len(h))
			for i, n := range h {
				w := strings.Fields(n)
				out[i] = strings.ToUpper(w[1]) + " " + w[0]
			}
			return out
		}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			home, away := district(t, dir)
			if c.name == "a word of another course" {
				c.settled = false
				for w := range unit.Day(5) {
					writeSheet(t, dir, fmt.Sprintf("in/c%02d.csv", w), runOf("Wolfs Bane", misspeltDay+7*w, folk(80)[60:]))
				}
			}
			writeSheet(t, dir, "in/odd.csv", runOf(c.title, c.day, c.people(home, away)))
			rep := loadForTest(t, pl, filepath.Join(dir, "in"))
			odd := reportOf(t, rep, "odd.csv")
			want := "waiting"
			if c.settled {
				want = "loaded"
			}
			if odd.State != want || (odd.Settled != "") != c.settled {
				t.Fatalf("%s, want %s: %s %s", odd.State, want, odd.Why, odd.Settled)
			}
			if rep.Loaded+rep.Waiting != len(rep.Sheets) || rep.Waiting != map[bool]int{true: 0, false: 1}[c.settled] {
				t.Errorf("%d loaded, %d wait of %d", rep.Loaded, rep.Waiting, len(rep.Sheets))
			}
			if c.settled && odd.Runs[0] != "alder-bank "+c.day.String() {
				t.Errorf("read as %v", odd.Runs)
			}
		})
	}
}

func reportOf(t *testing.T, rep *LoadReport, name string) SheetReport {
	t.Helper()
	for _, s := range rep.Sheets {
		if filepath.Base(s.Path) == name {
			return s
		}
	}
	t.Fatalf("no sheet %s in the report", name)
	return SheetReport{}
}

// One slip on several sheets is settled where the course is much commoner, and
// on all of them or none.
func TestMisspeltOnSeveralSheets(t *testing.T) {
	for _, weeks := range []unit.Day{12, 30} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		people := folk(20)
		for w := range weeks {
			title := "Alder Bank"
			if w == 4 || w == 7 {
				title = "Alder Bnak"
			}
			writeSheet(t, dir, fmt.Sprintf("in/%02d.csv", w), runOf(title, misspeltDay+7*w, people))
		}
		rep := loadForTest(t, pl, filepath.Join(dir, "in"))
		if want := map[unit.Day]int{12: 2, 30: 0}[weeks]; rep.Waiting != want {
			t.Errorf("%d weeks: %d sheets wait, want %d", weeks, rep.Waiting, want)
		}
	}
}

// A sheet of the same slip that names nobody in full goes with one whose people say
// which course it is; one whose people say another goes against it.
func TestMisspeltVouchedFor(t *testing.T) {
	people, initials := folk(40), make([]string, 20)
	for i, n := range people[:20] {
		initials[i] = n[:1] + ". " + strings.Fields(n)[1]
	}
	for _, c := range []struct {
		name   string
		second []string
		waits  int
	}{{"initials", initials, 0}, {"strangers", people[20:], 2}, {"its own people", people[:20], 0}} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for w := range unit.Day(30) {
				title, who := "Alder Bank", people[:20]
				if w == 4 || w == 7 {
					title = "Alder Bnak"
				}
				if w == 7 {
					who = c.second
				}
				writeSheet(t, dir, fmt.Sprintf("in/%02d.csv", w), runOf(title, misspeltDay+7*w, who))
			}
			rep := loadForTest(t, pl, filepath.Join(dir, "in"))
			if rep.Waiting != c.waits {
				t.Fatalf("%d sheets wait, want %d: %+v", rep.Waiting, c.waits, rep.Sheets)
			}
			if odd := reportOf(t, rep, "07.csv"); c.name == "initials" && !strings.Contains(odd.Settled, "20 of the 20 people named in full on other sheets with this title") {
				t.Errorf("it says %q", odd.Settled)
			}
		})
	}
}

// What was settled is in the ledger: a rebuild reads the sheet the same way
// whatever else is there, and says the same of it. The order of the files and
// their division into batches make no difference.
func TestMisspeltAfterRebuild(t *testing.T) {
	ctx := context.Background()
	var first string
	for _, odd := range []string{"000.csv", "zzz.csv"} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		home, _ := district(t, dir)
		p := writeSheet(t, dir, "in/"+odd, runOf("Alder Bnak", misspeltDay+7*4, home))
		loadForTest(t, pl, filepath.Join(dir, "in"))
		look := func() string {
			t.Helper()
			if _, err := pl.Refresh(ctx, true); err != nil {
				t.Fatal(err)
			}
			var text, said string
			if err := pl.DB.Get(ctx, "select string_agg(concat_ws(' ', course, run_date, name, time_s, status), chr(10) order by course, run_date, position) from main.results", &text); err != nil {
				t.Fatal(err)
			}
			if err := pl.DB.Get(ctx, "select string_agg(concat_ws(' ', severity, kind, read, expected, todo), chr(10)) from main.problems where kind = 'course-misspelt'", &said); err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(said, "20 of the 20 people") || !strings.Contains(said, "Alder Bnak") {
				t.Errorf("the problems say %q", said)
			}
			return text
		}
		before := look()
		if first == "" {
			first = before
		}
		if before != first {
			t.Error("the order of the files makes a difference")
		}
		if rep := loadForTest(t, pl, p); rep.Known != 1 {
			t.Errorf("loaded again: %+v", rep.Sheets)
		}
		copied := writeSheet(t, dir, "other/"+odd+"2.csv", runOf("Alder Bnak", misspeltDay+7*4, home))
		if rep := loadForTest(t, pl, copied); rep.Known != 1 {
			t.Errorf("under another name: %+v", rep.Sheets)
		}
		if err := pl.startOver(ctx); err != nil {
			t.Fatal(err)
		}
		if look() != before {
			t.Error("a rebuild reads otherwise")
		}
		var out strings.Builder
		if _, err := pl.DryRun(ctx, p, odd, ByHand{}, &out); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(out.String(), "alder-bank") || strings.Contains(out.String(), "alder-bnak 2026") {
			t.Errorf("the dry run says\n%s", out.String())
		}
		out.Reset()
		if err := pl.Explain(ctx, odd+":4", &out); err != nil || !strings.Contains(out.String(), `the title says "Alder Bnak`) {
			t.Errorf("explain says (%v)\n%s", err, out.String())
		}
		// next week's sheet with these headings has nothing to do with it
		next := writeSheet(t, dir, "next/next.csv", runOf("Alder Bank", misspeltDay+7*6, home))
		if rep := loadForTest(t, pl, next); rep.Loaded != 1 || rep.Sheets[0].Settled != "" || len(rep.Sheets[0].Problems) > 0 {
			t.Errorf("the next sheet: %+v", rep.Sheets)
		}
		later := writeSheet(t, dir, "next/later.csv", runOf("Aldre Bank", misspeltDay+7*7, home))
		s, err := pl.DryRun(ctx, later, "later.csv", ByHand{}, nil)
		if err != nil || s.State != "would load" || s.Runs[0] != "alder-bank 2026-02-21" {
			t.Errorf("a dry run of a misspelt one: %+v, %v", s, err)
		}
		// taken out and loaded under the name that it says
		if _, err := pl.SetState(ctx, odd, "withdrawn"); err != nil {
			t.Fatal(err)
		}
		rep, err := pl.Load(ctx, []string{p}, ByHand{Course: "alder-bnak"})
		if err != nil || rep.Loaded != 1 || rep.Sheets[0].Runs[0] != "alder-bnak 2026-01-31" {
			t.Errorf("by hand: %+v, %v", rep.Sheets, err)
		}
	}
}

// A load of several batches, and of more files than are looked at first, settles
// what one batch would.
func TestMisspeltInBatches(t *testing.T) {
	dir := t.TempDir()
	sheets := filepath.Join(dir, "sheets")
	if err := os.Mkdir(sheets, 0o755); err != nil {
		t.Fatal(err)
	}
	people := folk(6)
	for i := range batchSheets + 20 {
		title, day := fmt.Sprintf("Heron Lane %d", i), misspeltDay-unit.Day(7*(i%300))
		switch {
		case i == 0:
			title, day = "Alder Bnak", misspeltDay
		case i >= batchSheets:
			title, day = "Alder Bank", misspeltDay+unit.Day(7*(i-batchSheets+1))
		}
		if err := os.WriteFile(filepath.Join(sheets, fmt.Sprintf("%04d.csv", i)), []byte(runOf(title, day, people[:1+5*max(0, min(1, i-batchSheets+1))])), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	writeSheet(t, dir, "sheets/0000.csv", runOf("Alder Bnak", misspeltDay, people))
	pl := openForTest(t, dir)
	rep := loadForTest(t, pl, sheets)
	if s := rep.Sheets[0]; s.State != "waiting" {
		// one of the six is at a thousand other courses; five are only here
		t.Logf("%s: %s", s.State, s.Settled)
		if s.Runs[0] != "alder-bank 2026-01-03" {
			t.Errorf("read as %v", s.Runs)
		}
	} else {
		t.Errorf("it waits: %s", s.Why)
	}
	if rep.Loaded != batchSheets+20 || rep.Waiting != 0 {
		t.Errorf("%d loaded, %d wait", rep.Loaded, rep.Waiting)
	}
}

// TestMisspeltAmongSiblings makes districts in which two real courses differ by
// a letter and share regulars, some without the older one's latest sheets. The
// younger one is never taken for the older; a slip elsewhere is settled.
func TestMisspeltAmongSiblings(t *testing.T) {
	pairs := [][2]string{{"Alder Bank", "Alder Bark"}, {"Garrow Wood", "Garrow Woods"}, {"Sorrel Moor", "Sorrel Moon"}, {"Tarn Brook", "Tarn Brooks"}, {"Nether Brook", "Nether Book"}}
	rng := rand.New(rand.NewPCG(5, 17))
	wrong, slips, settled := 0, 0, 0
	for world := range 10 {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		pair := pairs[world%len(pairs)]
		all := folk(400)
		older, newer := all[:60], all[60:120]
		shared := []float64{.1, .9, .7, .5, .3}[world%5]
		field := func(home, guests []string, share float64) []string {
			var out []string
			for range 30 {
				if rng.Float64() < share {
					out = append(out, guests[rng.IntN(len(guests))])
				} else if rng.Float64() < .2 {
					out = append(out, all[120+rng.IntN(280)])
				} else {
					out = append(out, home[rng.IntN(len(home))])
				}
			}
			seen := map[string]bool{}
			kept := out[:0]
			for _, p := range out {
				if !seen[p] {
					seen[p] = true
					kept = append(kept, p)
				}
			}
			return kept
		}
		weeks, begins := unit.Day(8), unit.Day(7-world%2)
		for w := range weeks {
			if w < begins || world >= 5 {
				writeSheet(t, dir, fmt.Sprintf("in/a%02d.csv", w), runOf(pair[0], misspeltDay+7*w, field(older, newer, .1)))
			}
			third := "Heron Lane"
			name := fmt.Sprintf("in/c%02d.csv", w)
			if w == 5 {
				third, name = "Heorn Lane", "in/slip.csv"
				slips++
			}
			writeSheet(t, dir, name, runOf(third, misspeltDay+7*w, field(all[120:180], older, .05)))
			if w >= begins {
				writeSheet(t, dir, fmt.Sprintf("in/new%02d.csv", w), runOf(pair[1], misspeltDay+7*w, field(newer, older, shared)))
			}
		}
		for _, s := range loadForTest(t, pl, filepath.Join(dir, "in")).Sheets {
			switch base := filepath.Base(s.Path); {
			case s.Settled == "":
			case base == "slip.csv":
				settled++
			default:
				wrong++
				t.Errorf("%s, %.0f %% shared: %s %s", pair[1], 100*shared, s.Path, s.Settled)
			}
		}
	}
	t.Logf("%d of %d slips settled, %d wrong", settled, slips, wrong)
	if settled < slips*3/4 {
		t.Errorf("only %d of %d slips settled", settled, slips)
	}
}

// A name without its last or first word is asked about, and read as the known course
// where three quarters of the people are that course's; a name that stands on several
// runs, or of which somebody said that it is a course, is one.
func TestShortenedCourse(t *testing.T) {
	all := folk(40)
	home, away := all[:20], all[20:]
	week := func(n int) unit.Day { return misspeltDay + unit.Day(7*n) }
	for _, c := range []struct {
		name   string
		people []string
		runs   int
		state  string
		course string
	}{
		{"Withy Bank", home, 1, "loaded", "withy-bank-park"},
		{"Bank Park", home, 1, "loaded", "withy-bank-park"},
		{"Withy Bank", append(slices.Clone(home[:9]), away[:9]...), 2, "waiting", ""},
		{"Withy Bank", away, 1, "waiting", ""},
		{"Withy Bank", away, 3, "loaded", "withy-bank"},
		{"Withy", away, 1, "loaded", "withy"},
	} {
		t.Run(fmt.Sprintf("%s %s %d", c.name, c.state, c.runs), func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for n := range 8 {
				if n != 4 {
					writeSheet(t, dir, fmt.Sprintf("in/w%d.csv", n), runOf("Withy Bank Park", week(n), home))
				}
			}
			for n := range c.runs {
				writeSheet(t, dir, fmt.Sprintf("in/odd%d.csv", n), runOf(c.name, week(4+10*n), c.people))
			}
			rep := loadForTest(t, pl, filepath.Join(dir, "in"))
			for _, s := range rep.Sheets {
				if !strings.HasPrefix(s.Path, "odd") {
					continue
				}
				if s.State != c.state || c.course != "" && !strings.HasPrefix(strings.Join(s.Runs, " "), c.course+" 20") {
					t.Errorf("%s is %s, %v, want %s, %s (%s)", s.Path, s.State, s.Runs, c.state, c.course, s.Why)
				}
				if c.state == "waiting" && !strings.Contains(s.Why, "--course withy-bank-park or --course withy-bank") {
					t.Errorf("asks %q", s.Why)
				}
			}
			if c.state == "waiting" {
				if rep, err := pl.Load(context.Background(), []string{filepath.Join(dir, "in", "odd0.csv")}, ByHand{Course: "withy-bank"}); err != nil || rep.Loaded != 1 {
					t.Fatalf("with the answer: %+v %v", rep, err)
				}
				writeSheet(t, dir, "in/odd1.csv", runOf(c.name, week(14), c.people))
				if rep := loadForTest(t, pl, filepath.Join(dir, "in")); rep.Waiting > 0 || rep.Loaded != 1 {
					t.Errorf("asked again: %+v", rep.Sheets)
				}
			}
		})
	}
}

// TestShortenedForMonths loads 30 weeks of a course of which a volunteer shortens the name for
// twelve, and the same with other people on these.
func TestShortenedForMonths(t *testing.T) {
	all := folk(60)
	for _, c := range []struct {
		name    string
		people  []string
		waiting int
	}{
		{"the course's people", all[:20], 0},
		{"other people", all[30:50], 12},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for w := range unit.Day(30) {
				title, people := "Alder Meadow", all[:20]
				if w >= 6 && w < 18 { // longer than a course is known to sleep
					title, people = "Alder Mdw", c.people
				}
				writeSheet(t, dir, fmt.Sprintf("in/%02d.csv", w), runOf(title, misspeltDay+7*w, people))
			}
			rep := loadForTest(t, pl, filepath.Join(dir, "in"))
			if rep.Waiting != c.waiting {
				t.Errorf("%d sheets wait, want %d", rep.Waiting, c.waiting)
			}
		})
	}
}
