package ugly

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

var (
	writeTo = flag.String("write", "", "write sheets/ and truth.json into this folder")
	readAt  = flag.String("results", "", "folder with truth.json and results.csv to score")
	seed    = flag.Uint64("seed", 1, "seed of -write")
	count   = flag.Int("sheets", 1000, "number of sheets of -write")
)

// TestWrite writes sheets for another program to read:
// go test ./pipeline/scenario/ugly -run Write -write DIR -seed 1 -sheets 1000
func TestWrite(t *testing.T) {
	dir, n := *writeTo, *count
	if dir == "" {
		dir, n = t.TempDir(), 40
	}
	truth, err := Write(filepath.Join(dir, "sheets"), *seed, n)
	if err != nil {
		t.Fatal(err)
	}
	if err := Save(filepath.Join(dir, "truth.json"), truth); err != nil {
		t.Fatal(err)
	}
	back, err := LoadTruth(filepath.Join(dir, "truth.json"))
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(truth, back) {
		t.Error("truth read back differs")
	}
}

// TestScore scores the results of another program:
// go test ./pipeline/scenario/ugly -run Score -v -results DIR
// Without the flag it scores results made from the truth itself, whole and damaged.
func TestScore(t *testing.T) {
	if *readAt != "" {
		truth, err := LoadTruth(filepath.Join(*readAt, "truth.json"))
		if err != nil {
			t.Fatal(err)
		}
		f, err := os.Open(filepath.Join(*readAt, "results.csv"))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		results, err := ReadResults(f)
		if err != nil {
			t.Fatal(err)
		}
		rep := Score(truth, results)
		var b bytes.Buffer
		rep.Print(&b)
		fmt.Println(b.String())
		var fails bytes.Buffer
		rep.PrintFailures(&fails, 3)
		if err := os.WriteFile(filepath.Join(*readAt, "failures.txt"), fails.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	truth, err := Write(t.TempDir(), 5, 400)
	if err != nil {
		t.Fatal(err)
	}
	perfect := perfectResults(truth)
	rep := Score(truth, perfect)
	if rep.Right != rep.Lines || rep.Lines < 5000 || rep.Accepted != 0 || rep.Phantom != 0 || rep.SexRight != rep.Sex || rep.AgeRight != rep.Age ||
		rep.Refused != 0 || rep.SheetsRight != rep.Sheets || rep.HeldRightly != rep.MustHold || rep.MustHold < 5 || rep.Doubted != rep.Doubtful || rep.PartOK != rep.Part {
		var b bytes.Buffer
		rep.Print(&b)
		rep.PrintFailures(&b, 2)
		t.Fatalf("results made from the truth are not perfect:\n%s", b.String())
	}
	// every kind of damage shows, one line each
	damage := []struct {
		name string
		do   func(r *Result)
		seen func(rep *Report) int
	}{
		{"time", func(r *Result) { r.TimeMS += 1000 }, func(p *Report) int { return p.Time }},
		{"course", func(r *Result) { r.Course += "-5k" }, func(p *Report) int { return p.Run }},
		{"date", func(r *Result) { r.Date = "2001-01-01" }, func(p *Report) int { return p.Run }},
		{"sex", func(r *Result) { r.Sex = map[string]string{"M": "W", "W": "M", "": "M", "X": ""}[r.Sex] }, func(p *Report) int { return p.Sex - p.SexRight }},
		{"age", func(r *Result) { r.AgeLow, r.AgeUp = 4, 5 }, func(p *Report) int { return p.Age - p.AgeRight }},
		{"row", func(r *Result) { r.Row += 100_000 }, func(p *Report) int { return p.Lost }},
		{"status", func(r *Result) { r.Status = "doubtful" }, func(p *Report) int { return p.Refused }},
	}
	for _, d := range damage {
		spoilt := append([]Result{}, perfect...)
		k := 0
		for i := range spoilt {
			if spoilt[i].Status == "ok" && spoilt[i].AgeLow > 0 && spoilt[i].Sex != "" && spoilt[i].Session == "" {
				if k++; k == 40 {
					d.do(&spoilt[i])
					break
				}
			}
		}
		if n := d.seen(Score(truth, spoilt)); n != 1 {
			t.Errorf("one spoilt %s: counted %d times", d.name, n)
		}
	}
	all := append([]Result{}, perfect...)
	for i := range all {
		all[i].Status = "ok"
	}
	if rep := Score(truth, all); rep.Accepted != rep.Invalid || rep.Invalid < 100 {
		t.Errorf("everything ok: %d of %d invalid lines counted as accepted", rep.Accepted, rep.Invalid)
	}
	ghost := append(append([]Result{}, perfect...), Result{Sheet: perfect[0].Sheet, Row: 99_999, Status: "ok"})
	if rep := Score(truth, ghost); rep.Phantom != 1 {
		t.Errorf("one row for nobody: counted %d", rep.Phantom)
	}
}

func perfectResults(truth []Truth) []Result {
	status := map[Class]string{OK: "ok", Unnamed: "unnamed", Untimed: "untimed", DNF: "dnf", DQ: "dq", DNS: "dnf", Repeat: "repeat", Superseded: "superseded", Impossible: "doubtful", Doubtful: "doubtful"}
	var out []Result
	for _, tr := range truth {
		if tr.Hold == Must {
			continue
		}
		for _, ln := range tr.Lines {
			r := Result{Sheet: ln.Sheet, Tab: ln.Tab, Row: ln.Row, Course: ln.Course, Date: ln.Date, Session: ln.Session, TimeMS: ln.TimeMS, Status: status[ln.Class],
				Sex: ln.Sex, As: ln.As, Name: ln.Name, AgeLow: -1, AgeUp: -1}
			if ln.BornLo != "" {
				lo, _ := unit.ParseDay(ln.BornLo)
				hi, _ := unit.ParseDay(ln.BornHi)
				day, _ := unit.ParseDay(ln.Date)
				r.AgeLow, r.AgeUp, _ = age.Window{Lo: lo, Hi: hi}.On(day)
			}
			out = append(out, r)
		}
	}
	return out
}

// The same seed gives the same bytes, and a shorter series is the beginning of a longer one.
func TestSameSeedSameSheets(t *testing.T) {
	sum := func(dir string, truth []Truth) map[string][32]byte {
		out := map[string][32]byte{}
		for _, tr := range truth {
			b, err := os.ReadFile(filepath.Join(dir, tr.Sheet))
			if err != nil {
				t.Fatal(err)
			}
			out[tr.Sheet] = sha256.Sum256(b)
		}
		return out
	}
	a, b := t.TempDir(), t.TempDir()
	ta, err := Write(a, 9, 60)
	if err != nil {
		t.Fatal(err)
	}
	tb, err := Write(b, 9, 80)
	if err != nil {
		t.Fatal(err)
	}
	sa, sb := sum(a, ta), sum(b, tb)
	if len(sa) != len(ta) {
		t.Errorf("%d sheets under %d names", len(ta), len(sa))
	}
	for name, x := range sa {
		if strings.EqualFold(filepath.Ext(name), ".xlsx") { // the library orders parts as it likes
			continue
		}
		if sb[name] != x {
			t.Errorf("%s differs", name)
		}
	}
	if !reflect.DeepEqual(ta, tb[:len(ta)]) {
		t.Error("truths differ")
	}
}

// Every option of every dimension occurs, alone as well as with others.
func TestEveryTraitOccurs(t *testing.T) {
	n := map[string]int{}
	rng := rand.New(rand.NewPCG(1, 2))
	for i := 0; i < 8*len(alone()); i++ {
		for _, x := range newPlan(i, rng).traits() {
			n[x]++
		}
	}
	for _, o := range alone() {
		if n[o[0]+"="+o[1]] < 2 {
			t.Errorf("%s=%s occurs %d times", o[0], o[1], n[o[0]+"="+o[1]])
		}
	}
}

// No two sheets hold the same run by accident.
func TestRunsAreApart(t *testing.T) {
	truth, err := Write(t.TempDir(), 3, 300)
	if err != nil {
		t.Fatal(err)
	}
	runs := map[string]string{}
	for _, tr := range truth {
		joined := strings.Join(tr.Traits, " ")
		if in(between(joined, "shape="), "reissue", "copy", "same-bytes", "two-part") {
			continue
		}
		for _, ln := range tr.Lines {
			k := ln.Course + ln.Date + ln.Session
			if o, ok := runs[k]; ok && o != tr.Sheet {
				t.Errorf("%s in %s and %s", k, o, tr.Sheet)
			}
			runs[k] = tr.Sheet
		}
	}
}

// between gives the word of s that follows after.
func between(s, after string) string {
	_, rest, _ := strings.Cut(s, after)
	word, _, _ := strings.Cut(rest, " ")
	return word
}

// Every line of the truth stands in its file at the row it names: the rows are
// read back with general-purpose readers and searched for the name.
func TestTruthStandsWhereItSays(t *testing.T) {
	dir := t.TempDir()
	truth, err := Write(dir, 11, 400)
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, tr := range truth {
		has := func(s string) bool { return strings.Contains(strings.Join(tr.Traits, " "), s) }
		if has("encoding=") || has("shape=two-part") || has("sepline=") || has("eol=cr") || has("quoting=padded") {
			continue // encoding/csv reads none of these as they stand
		}
		rows := map[string][][]string{}
		path := filepath.Join(dir, tr.Sheet)
		if strings.EqualFold(filepath.Ext(path), ".xlsx") {
			f, err := excelize.OpenFile(path)
			if err != nil {
				t.Fatalf("%s: %v", tr.Sheet, err)
			}
			for _, name := range f.GetSheetList() {
				if rows[name], err = f.GetRows(name); err != nil {
					t.Fatalf("%s: %v", tr.Sheet, err)
				}
			}
			f.Close()
		} else {
			rows[""] = spreadsheetRows(t, path, tr.Traits)
		}
		for _, ln := range tr.Lines {
			if ln.Class != OK && ln.Class != Superseded {
				continue
			}
			got := ""
			if r := rows[ln.Tab]; ln.Row <= len(r) {
				got = fold(strings.Join(r[ln.Row-1], " "))
			}
			words := strings.Fields(fold(ln.Name))
			if has("name=initial") {
				words = words[len(words)-1:]
			}
			for _, w := range words {
				if !strings.Contains(got, w) {
					t.Errorf("%s:%s:%d: %q is not in %q [%v]", tr.Sheet, ln.Tab, ln.Row, ln.Name, got, tr.Traits)
					break
				}
			}
			checked++
		}
	}
	if checked < 5_000 {
		t.Errorf("only %d lines checked", checked)
	}
}

// spreadsheetRows reads CSV by RFC 4180, keeping blank lines.
func spreadsheetRows(t *testing.T, path string, traits []string) [][]string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	comma := ','
	for _, x := range traits {
		switch x {
		case "delimiter=semicolon":
			comma = ';'
		case "delimiter=tab":
			comma = '\t'
		case "delimiter=pipe":
			comma = '|'
		}
	}
	var out [][]string
	rest := strings.ReplaceAll(string(b), "\r\n", "\n")
	for len(rest) > 0 {
		end, quoted := len(rest), false
		for i := 0; i < len(rest); i++ {
			if rest[i] == '"' {
				quoted = !quoted
			}
			if rest[i] == '\n' && !quoted {
				end = i
				break
			}
		}
		rec := rest[:end]
		rest = rest[min(len(rest), end+1):]
		if rec == "" {
			out = append(out, nil)
			continue
		}
		r := csv.NewReader(strings.NewReader(rec))
		r.Comma, r.FieldsPerRecord = comma, -1
		v, err := r.Read()
		if err != nil {
			t.Fatalf("%s row %d: %v", path, len(out)+1, err)
		}
		out = append(out, v)
	}
	return out
}

// Each spelling of a time read back by arithmetic of its own gives the time.
func TestTimeStyles(t *testing.T) {
	read := map[string]func(s string) int{
		"decimal":  func(s string) int { v, _ := strconv.ParseFloat(s, 64); return int(v*60+.5) * 1000 },
		"fraction": func(s string) int { v, _ := strconv.ParseFloat(s, 64); return int(v*86_400_000 + .5) },
		"seconds":  func(s string) int { v, _ := strconv.Atoi(s); return v * 1000 },
		"mm.ss-lost": func(s string) int {
			p := strings.SplitN(s+".", ".", 3)
			m, _ := strconv.Atoi(p[0])
			c, _ := strconv.Atoi((p[1] + "00")[:2])
			return (m*60 + c) * 1000
		},
		"stopwatch": func(s string) int {
			var m, c, z int
			fmt.Sscanf(s, "%d:%d:%d", &m, &c, &z)
			return (m*60 + c) * 1000
		},
		"centiseconds": func(s string) int {
			var m, c, z int
			fmt.Sscanf(s, "%d:%d:%d", &m, &c, &z)
			return (m*60+c)*1000 + z*10
		},
	}
	for name, f := range read {
		for ms := 900_000; ms < 5_000_000; ms += 7_777 {
			q := quantiseTime(name, ms)
			if got := f(timeStyles[name].write(q, 0).s); got != q {
				t.Fatalf("%s: %d written as %q, read as %d", name, q, timeStyles[name].write(q, 0).s, got)
			}
		}
	}
	for name, s := range timeStyles {
		if c := s.write(quantiseTime(name, 1_471_000), 0); c.s == "" {
			t.Errorf("%s writes nothing", name)
		}
	}
	if got := timeStyles["short-hour"].write(quantiseTime("short-hour", 3_719_000), 0).s; got != "1:02" {
		t.Errorf("1 h 1:59 shows as %s, want 1:02", got)
	}
}
