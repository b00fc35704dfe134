package ugly

import (
	"fmt"
	"io"
	"sort"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// Tally counts what became of lines.
type Tally struct {
	Lines    int // finisher lines with a time, of sheets that need not be held
	Right    int // found with the exact time, course and date
	Lost     int // not in the results, their sheet was read
	Held     int // not in the results, nor is any line of their sheet
	Time     int // found with another time
	Run      int // found under another course or date
	Session  int // found under another session than the sheet names
	Refused  int // right, an ordinary line, but its status is not ok
	Invalid  int // lines that are no valid result
	Accepted int // … that have the status ok
	Doubtful int // the same person twice, two people in one line
	Doubted  int // … whose status is not ok
	Sex      int // lines that carry a sex
	SexRight int
	Age      int // lines that carry an age of any kind
	AgeRight int // true age within the exported bounds, and these within what the line says
	Part     int // taking part otherwise than as a runner
	PartOK   int
	Name     int
	NameOK   int // same letters, accents and case aside; not a target
	Phantom  int // results rows that stand for nobody
	GhostsOK int // … that have the status ok: the worst, as nobody will look
}

// Failure is one line or sheet that was not read as a person would.
type Failure struct {
	Spot   Spot
	Kind   string // lost, time, run, session, accepted, refused, sex, age, part, phantom, held, guessed
	Want   string
	Got    string
	Traits []string
}

// Report is the outcome of a comparison.
type Report struct {
	Tally
	Sheets, SheetsRight, SheetsHeld, SheetsWrong int // sheets that can be read
	MustHold, HeldRightly                        int
	ByTrait                                      map[string]*Tally // trait, "plain" for none; a sheet counts under each of its traits
	Alone                                        map[string]*Tally // only sheets with that single trait
	Failures                                     []Failure
}

type key struct {
	sheet, tab string
	row        int
}

// Score compares the results with the truth.
//
// A line is looked for at its spreadsheet row, or, where that suits more lines
// of the sheet, at its text editor's line; where two lines share a row
// the result with the same time is taken first.
func Score(truth []Truth, results []Result) *Report {
	rep := &Report{ByTrait: map[string]*Tally{}, Alone: map[string]*Tally{}}
	bySheet := map[string][]int{}
	at := map[key][]int{}
	for i, r := range results {
		bySheet[r.Sheet] = append(bySheet[r.Sheet], i)
		k := key{r.Sheet, r.Tab, r.Row}
		at[k] = append(at[k], i)
	}
	used := make([]bool, len(results))
	take := func(ln *Line, spot Spot) int {
		best := -1
		for _, i := range at[key{spot.Sheet, spot.Tab, spot.Row}] {
			if used[i] {
				continue
			}
			if best < 0 || results[i].TimeMS == ln.TimeMS && results[best].TimeMS != ln.TimeMS {
				best = i
			}
		}
		return best
	}
	found := map[Spot]int{} // by the truth's spot, index of result
	type pair struct {
		ln  *Line
		got int
		tr  *Truth
	}
	var pairs []pair
	halves := map[string]bool{} // sheets that only complete another
	for t := range truth {
		for l := range truth[t].Lines {
			for _, s := range truth[t].Lines[l].Also {
				halves[s.Sheet] = s.Sheet != truth[t].Sheet
			}
		}
	}
	for t := range truth {
		tr := &truth[t]
		rows, lines := 0, 0
		agrees := func(ln *Line, h Half, row int) int {
			i := take(ln, Spot{h.Sheet, h.Tab, row})
			switch {
			case i < 0:
				return 0
			case results[i].TimeMS == ln.TimeMS:
				return 3
			}
			return 1
		}
		for l := range tr.Lines {
			ln := &tr.Lines[l]
			for _, half := range append([]Half{{ln.Spot, ln.EditorRow}}, ln.Also...) {
				rows += agrees(ln, half, half.Row)
				lines += agrees(ln, half, half.EditorRow)
			}
		}
		for l := range tr.Lines {
			ln := &tr.Lines[l]
			spot := ln.Spot
			if lines > rows {
				spot.Row = ln.EditorRow
			}
			i := take(ln, spot)
			for _, half := range ln.Also { // the row of either half that says more
				s := half.Spot
				if lines > rows {
					s.Row = half.EditorRow
				}
				if j := take(ln, s); j >= 0 && (i < 0 || worth(results[j], ln) > worth(results[i], ln)) {
					i = j
				}
			}
			if i >= 0 {
				used[i] = true
				found[ln.Spot] = i
			}
			pairs = append(pairs, pair{ln, i, tr})
		}
		// the halves of a two-part line both stand in the results, or one of them
		for l := range tr.Lines {
			ln := &tr.Lines[l]
			for _, half := range append([]Half{{ln.Spot, ln.EditorRow}}, ln.Also...) {
				row := half.Row
				if lines > rows {
					row = half.EditorRow
				}
				for _, j := range at[key{half.Sheet, half.Tab, row}] {
					if len(ln.Also) > 0 {
						used[j] = true
					}
				}
			}
		}
	}

	tallies := func(tr *Truth) []*Tally {
		out := []*Tally{&rep.Tally}
		traits := tr.Traits
		if len(traits) == 0 {
			traits = []string{"plain"}
		}
		get := func(m map[string]*Tally, k string) *Tally {
			if m[k] == nil {
				m[k] = &Tally{}
			}
			return m[k]
		}
		for _, k := range traits {
			out = append(out, get(rep.ByTrait, k))
		}
		if len(traits) == 1 {
			out = append(out, get(rep.Alone, traits[0]))
		}
		return out
	}
	fail := func(tr *Truth, s Spot, kind, want, got string) {
		rep.Failures = append(rep.Failures, Failure{s, kind, want, got, tr.Traits})
	}
	wrongSheet := map[string]bool{}
	for _, p := range pairs {
		ln, tr := p.ln, p.tr
		if tr.Hold == Must {
			continue
		}
		all := tallies(tr)
		count := func(f func(t *Tally)) {
			for _, t := range all {
				f(t)
			}
		}
		read := len(bySheet[tr.Sheet]) > 0
		for _, s := range ln.Also {
			read = read || len(bySheet[s.Sheet]) > 0
		}
		var r Result
		if p.got >= 0 {
			r = results[p.got]
		}
		// the same bytes or the same rows: one of the two is enough
		if ln.Twin != nil && ln.Class == Repeat && p.got < 0 {
			continue
		}
		invalid := in(string(ln.Class), string(Unnamed), string(Untimed), string(DNF), string(DQ), string(DNS), string(Repeat), string(Superseded), string(Impossible))
		if invalid {
			count(func(t *Tally) { t.Invalid++ })
			ok := p.got >= 0 && r.Status == "ok"
			if ok && ln.Twin != nil && ln.Class == Repeat {
				if j, there := found[*ln.Twin]; !there || results[j].Status != "ok" {
					ok = false // the other of the two was set aside
				}
			}
			if ok {
				count(func(t *Tally) { t.Accepted++ })
				fail(tr, ln.Spot, "accepted", string(ln.Class), "ok")
			}
		}
		if ln.Class == Doubtful {
			count(func(t *Tally) { t.Doubtful++ })
			if p.got >= 0 && r.Status != "ok" {
				count(func(t *Tally) { t.Doubted++ })
			}
		}
		if ln.TimeMS == 0 || in(string(ln.Class), string(DQ), string(Impossible)) {
			continue
		}
		count(func(t *Tally) { t.Lines++ })
		want := fmt.Sprintf("%s %s %s", ln.Course, ln.Date, unit.ClockMS(ln.TimeMS))
		switch {
		case p.got < 0 && !read:
			count(func(t *Tally) { t.Held++ })
			continue
		case p.got < 0:
			count(func(t *Tally) { t.Lost++ })
			fail(tr, ln.Spot, "lost", want, "no such row")
			continue
		}
		got := fmt.Sprintf("%s %s %s", r.Course, r.Date, unit.ClockMS(r.TimeMS))
		right := true
		if r.TimeMS != ln.TimeMS && (ln.OtherMS == 0 || r.TimeMS != ln.OtherMS) {
			right = false
			count(func(t *Tally) { t.Time++ })
			fail(tr, ln.Spot, "time", want, got)
		}
		if r.Course != ln.Course || r.Date != ln.Date {
			right = false
			wrongSheet[tr.Sheet] = true
			count(func(t *Tally) { t.Run++ })
			fail(tr, ln.Spot, "run", want, got)
		}
		if ln.Session != "" && session(r.Session) != session(ln.Session) {
			count(func(t *Tally) { t.Session++ })
			fail(tr, ln.Spot, "session", ln.Session, r.Session)
		}
		if right {
			count(func(t *Tally) { t.Right++ })
			if ln.Class == OK && r.Status != "ok" {
				j, there := -1, false
				if ln.Twin != nil {
					j, there = found[*ln.Twin]
				}
				if !there || results[j].Status != "ok" {
					if !repeatedElsewhere(truth, ln, found, results) {
						count(func(t *Tally) { t.Refused++ })
						fail(tr, ln.Spot, "refused", "ok", r.Status)
					}
				}
			}
		}
		if ln.Sex != "" {
			count(func(t *Tally) { t.Sex++ })
			if r.Sex == ln.Sex {
				count(func(t *Tally) { t.SexRight++ })
			} else {
				fail(tr, ln.Spot, "sex", ln.Sex, r.Sex)
			}
		}
		if ln.BornLo != "" {
			count(func(t *Tally) { t.Age++ })
			if why := ageRight(ln, r); why == "" {
				count(func(t *Tally) { t.AgeRight++ })
			} else {
				fail(tr, ln.Spot, "age", why, fmt.Sprintf("%d to %d", r.AgeLow, r.AgeUp))
			}
		}
		if ln.As != "" {
			count(func(t *Tally) { t.Part++ })
			if strings.ReplaceAll(strings.ReplaceAll(r.As, "-", " "), "_", " ") == ln.As {
				count(func(t *Tally) { t.PartOK++ })
			} else {
				fail(tr, ln.Spot, "part", ln.As, r.As)
			}
		}
		if ln.Name != "" && ln.Class == OK {
			count(func(t *Tally) { t.Name++ })
			if fold(r.Name) == fold(ln.Name) {
				count(func(t *Tally) { t.NameOK++ })
			}
		}
	}

	known := map[string]*Truth{}
	for t := range truth {
		known[truth[t].Sheet] = &truth[t]
	}
	for i, r := range results {
		if used[i] {
			continue
		}
		tr := known[r.Sheet]
		if tr == nil || tr.Hold == Must || halves[r.Sheet] {
			continue
		}
		for _, t := range tallies(tr) {
			t.Phantom++
			if r.Status == "ok" {
				t.GhostsOK++
			}
		}
		fail(tr, Spot{r.Sheet, r.Tab, r.Row}, "phantom", "no line for anybody", fmt.Sprintf("%s %s %s", r.Name, unit.ClockMS(r.TimeMS), r.Status))
	}
	for t := range truth {
		tr := &truth[t]
		n := len(bySheet[tr.Sheet])
		if halves[tr.Sheet] {
			continue
		}
		switch {
		case tr.Hold == Must:
			rep.MustHold++
			if n == 0 {
				rep.HeldRightly++
			} else {
				r := results[bySheet[tr.Sheet][0]]
				fail(tr, Spot{Sheet: tr.Sheet}, "guessed", "a question about "+tr.Asks, r.Course+" "+r.Date)
			}
		default:
			rep.Sheets++
			switch {
			case wrongSheet[tr.Sheet]:
				rep.SheetsWrong++
			case n == 0 && !sameElsewhere(tr):
				rep.SheetsHeld++
				fail(tr, Spot{Sheet: tr.Sheet}, "held", "no question needed", "no rows")
			default:
				rep.SheetsRight++
			}
		}
	}
	return rep
}

// worth orders the rows that a two-part line may be reported at.
func worth(r Result, ln *Line) int {
	n := 0
	if r.TimeMS == ln.TimeMS {
		n += 2
	}
	if r.Status == "ok" {
		n++
	}
	return n
}

// sameElsewhere says whether every line repeats one of another sheet.
func sameElsewhere(tr *Truth) bool {
	for _, ln := range tr.Lines {
		if ln.Twin == nil && ln.Class == OK {
			return false
		}
	}
	return true
}

// repeatedElsewhere says whether the line was set aside in favour of its copy.
func repeatedElsewhere(truth []Truth, ln *Line, found map[Spot]int, results []Result) bool {
	for t := range truth {
		for l := range truth[t].Lines {
			o := &truth[t].Lines[l]
			if o.Twin != nil && *o.Twin == ln.Spot && o.Class == Repeat {
				if j, ok := found[o.Spot]; ok && results[j].Status == "ok" {
					return true
				}
			}
		}
	}
	return false
}

// ageRight says "" where the exported ages hold the true one and claim no
// less than the line tells.
func ageRight(ln *Line, r Result) string {
	day, err := unit.ParseDay(ln.Date)
	if err != nil {
		return err.Error()
	}
	lo, err := unit.ParseDay(ln.BornLo)
	if err != nil {
		return err.Error()
	}
	hi, err := unit.ParseDay(ln.BornHi)
	if err != nil {
		return err.Error()
	}
	a := age.On(ln.Born, day)
	from, to, _ := age.Window{Lo: lo, Hi: hi}.On(day)
	want := fmt.Sprintf("%d, from %d to %d", a, from, to)
	if r.AgeLow < 0 || r.AgeUp < 0 || a < r.AgeLow || a > r.AgeUp || r.AgeLow < from || r.AgeUp > to {
		return want
	}
	return ""
}

// session brings "9:00", "09:00" and "0900" together.
func session(s string) string {
	s = strings.TrimLeft(strings.ReplaceAll(s, ":", ""), "0")
	return s
}

func share(a, b int) string {
	if b == 0 {
		return "      –"
	}
	return fmt.Sprintf("%6.2f%%", 100*float64(a)/float64(b))
}

// Print writes the report: the targets, then the traits that fail, worst first.
func (rep *Report) Print(w io.Writer) {
	t := rep.Tally
	fmt.Fprintf(w, "lines found with exact time, course, date  %s  %d of %d (lost %d, sheet held %d, time %d, run %d, session %d)\n", share(t.Right, t.Lines), t.Right, t.Lines, t.Lost, t.Held, t.Time, t.Run, t.Session)
	fmt.Fprintf(w, "  of the sheets that were read             %s\n", share(t.Right, t.Lines-t.Held))
	fmt.Fprintf(w, "sheets right %d, held %d, wrong %d of %d; rightly held %d of %d\n", rep.SheetsRight, rep.SheetsHeld, rep.SheetsWrong, rep.Sheets, rep.HeldRightly, rep.MustHold)
	fmt.Fprintf(w, "invalid lines accepted as ok               %s  %d of %d; rows that stand for nobody %d (%d ok)\n", share(t.Accepted, t.Invalid), t.Accepted, t.Invalid, t.Phantom, t.GhostsOK)
	fmt.Fprintf(w, "good lines not ok                          %s  %d\n", share(t.Refused, t.Right), t.Refused)
	fmt.Fprintf(w, "sex right                                  %s  %d of %d\n", share(t.SexRight, t.Sex), t.SexRight, t.Sex)
	fmt.Fprintf(w, "age right                                  %s  %d of %d\n", share(t.AgeRight, t.Age), t.AgeRight, t.Age)
	fmt.Fprintf(w, "taking part as                             %s  %d of %d\n", share(t.PartOK, t.Part), t.PartOK, t.Part)
	fmt.Fprintf(w, "doubtful lines doubted                     %s  %d of %d\n", share(t.Doubted, t.Doubtful), t.Doubted, t.Doubtful)
	fmt.Fprintf(w, "names                                      %s  %d of %d\n", share(t.NameOK, t.Name), t.NameOK, t.Name)
	for _, part := range []struct {
		title string
		m     map[string]*Tally
	}{{"sheets with one trait", rep.Alone}, {"sheets with the trait among others", rep.ByTrait}} {
		fmt.Fprintf(w, "\n%-34s %7s %8s %6s %6s %6s %6s %8s %6s %8s %8s\n", part.title, "lines", "right", "lost", "held", "time", "run", "accepted", "ghosts", "sex", "age")
		var names []string
		for k := range part.m {
			names = append(names, k)
		}
		bad := func(k string) float64 {
			t := part.m[k]
			return float64(t.Lines-t.Right+t.Accepted+t.Phantom+(t.Sex-t.SexRight)+(t.Age-t.AgeRight)) / float64(max(1, t.Lines))
		}
		sort.Slice(names, func(i, j int) bool {
			if a, b := bad(names[i]), bad(names[j]); a != b {
				return a > b
			}
			return names[i] < names[j]
		})
		for _, k := range names {
			if t := part.m[k]; bad(k) > 0 {
				fmt.Fprintf(w, "%-34s %7d %8s %6d %6d %6d %6d %8d %6d %8s %8s\n", k, t.Lines, share(t.Right, t.Lines), t.Lost, t.Held, t.Time, t.Run, t.Accepted, t.Phantom, share(t.SexRight, t.Sex), share(t.AgeRight, t.Age))
			}
		}
	}
}

// PrintFailures writes at most few failures of each kind and sheet.
func (rep *Report) PrintFailures(w io.Writer, few int) {
	n := map[string]int{}
	for _, f := range rep.Failures {
		k := f.Kind + "\x00" + f.Spot.Sheet
		if n[k]++; n[k] > few {
			continue
		}
		fmt.Fprintf(w, "%-9s %s %s:%d want %q got %q  [%s]\n", f.Kind, f.Spot.Sheet, f.Spot.Tab, f.Spot.Row, f.Want, f.Got, strings.Join(f.Traits, " "))
	}
}
