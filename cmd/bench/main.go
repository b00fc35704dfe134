// Command bench measures what Lapwing costs, beside a reference measured in
// the same run: the database's own CSV reader, a plain stream of the same
// workbook cells, a district with known truth. It is no test: it never fails
// because of a slow machine.
//
//	SIZE=small make bench    every day: some hundred thousand results
//	SIZE=full make bench     ten million results; needs about 20 GB of disk and half an hour
//
// Each piece of work runs in a process of its own, so that peak memory is that
// of the piece alone.
package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// size is how much is measured.
type size struct {
	name    string
	results int // of the large archive
	messy   int // people of the messy district
}

var sizes = map[string]size{
	"small": {"small", 1_000_000, 2500},
	"full":  {"full", 10_000_000, 6000},
}

func main() {
	if len(os.Args) > 1 {
		if err := part(context.Background(), os.Args[1], os.Args[2:]); err != nil {
			fmt.Fprintln(os.Stderr, "bench:", err)
			os.Exit(1)
		}
		return
	}
	if err := bench(); err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	}
}

// measured is what a piece of work cost.
type measured struct {
	wall, cpu float64 // seconds
	peakMB    float64
	timings   map[string]float64
	err       error
	output    string
}

// measure runs a command as a process of its own.
func measure(name string, args ...string) measured {
	cmd := exec.Command(name, args...)
	var out strings.Builder
	cmd.Stdout, cmd.Stderr = &out, &out
	began := time.Now()
	err := cmd.Run()
	m := measured{wall: time.Since(began).Seconds(), err: err, output: out.String(), timings: map[string]float64{}}
	if u, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
		m.cpu = float64(u.Utime.Sec+u.Stime.Sec) + float64(u.Utime.Usec+u.Stime.Usec)/1e6
		m.peakMB = float64(u.Maxrss) / 1024
		if runtime.GOOS == "darwin" {
			m.peakMB /= 1024
		}
	}
	for _, line := range strings.Split(m.output, "\n") {
		if f := strings.Split(line, "\t"); len(f) == 3 && f[0] == "timing" {
			m.timings[f[1]], _ = strconv.ParseFloat(f[2], 64)
		}
	}
	return m
}

// table prints the figures as they come, and keeps them in the form of Go's
// benchmarks for benchstat.
type table struct{ keep *os.File }

func (t table) line(what string, m measured, reference *measured, budget string) {
	ratio := ""
	if m.err != nil && m.timings["Loading sheets"] == 0 {
		fmt.Printf("%-58s failed: %v\n%s\n", what, m.err, m.output)
		return
	}
	if reference != nil && reference.wall > 0 {
		ratio = fmt.Sprintf("%.1f ×", m.wall/reference.wall)
	}
	fmt.Printf("%-58s %8.2f s %8.2f s %7.0f MB %8s  %s\n", what, m.wall, m.cpu, m.peakMB, ratio, budget)
	fmt.Fprintf(t.keep, "Benchmark%s 1 %.0f ns/op %.0f peak-MB\n", strings.Map(word, what), m.wall*1e9, m.peakMB)
}

func (t table) steps(m measured) {
	for _, what := range []string{"Loading sheets", "Reading the lines", "Working out who is who", "Bringing together what is known of each runner",
		"Age grades", "Bests, streaks and milestones", "Course speed, conditions and form", "Writing the figures"} {
		if s, ok := m.timings[what]; ok {
			fmt.Printf("    %-54s %8.2f s\n", strings.ToLower(what), s)
		}
	}
}

func word(r rune) rune {
	if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
		return r
	}
	return '_'
}

func bench() error {
	s, ok := sizes[os.Getenv("SIZE")]
	if !ok {
		return fmt.Errorf("SIZE=%q: small or full", os.Getenv("SIZE"))
	}
	if err := os.MkdirAll("bench", 0o755); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("bench", "work")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	kept := filepath.Join("bench", s.name+"_"+time.Now().Format("2006-01-02_150405")+".txt")
	keep, err := os.Create(kept)
	if err != nil {
		return err
	}
	defer keep.Close()
	self, err := os.Executable()
	if err != nil {
		return err
	}
	lapwing := filepath.Join("bin", "lapwing")
	fmt.Printf("%s, %s/%s, %d cores, size %s\n\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), s.name)
	fmt.Printf("%-58s %10s %10s %10s %8s  %s\n", "work", "wall", "processor", "memory", "ratio", "budget")
	t := table{keep}
	p := func(name string) string { return filepath.Join(dir, name) }
	n := strconv.Itoa(s.results)

	if m := measure(self, "make-season", p("season.csv"), n); m.err != nil {
		return fmt.Errorf("making the season list: %v %s", m.err, m.output)
	}
	if m := measure(self, "make-sheets", p("sheets"), n); m.err != nil {
		return fmt.Errorf("making the sheets: %v %s", m.err, m.output)
	}
	million := fmt.Sprintf("%.1f M results", float64(s.results)/1e6)
	reference := measure(self, "read-csv", p("season.csv"), p("reference.duckdb"))
	t.line(million+", database's own CSV reader (reference)", reference, nil, "")
	one := measure(lapwing, "--archive", p("one"), "--timings", "load", p("season.csv"))
	t.line(million+", one file: load, record, insight", one, &reference, "6 ×, 6 GB at 10 M")
	t.steps(one)
	many := measure(lapwing, "--archive", p("many"), "--timings", "load", p("sheets"))
	t.line(million+", a sheet a run", many, &one, "2 × the one file")
	t.steps(many)
	if m := measure(self, "make-saturday", p("saturday"), p("many")); m.err != nil {
		return fmt.Errorf("making the new sheet: %v %s", m.err, m.output)
	}
	// the reports of what is already there are not part of the Saturday case
	if m := measure(lapwing, "--archive", p("many"), "reported"); m.err != nil {
		return fmt.Errorf("noting the reports: %v %s", m.err, m.output)
	}
	saturday := measure("env", "LAPWING_REPORTS="+p("reports"), lapwing, "--archive", p("many"), "--timings", "run", p("saturday"))
	t.line("a new sheet of 300 into that, to the weekly workbook", saturday, nil, "3 s at 10 M")
	t.steps(saturday)
	card := measure(lapwing, "--archive", p("many"), "standing", "R1000")
	t.line("standing card from that archive", card, nil, "0.5 s at 10 M")

	if m := measure(self, "make-district", p("district"), strconv.Itoa(s.messy)); m.err != nil {
		return fmt.Errorf("making the district: %v %s", m.err, m.output)
	}
	messy := measure(lapwing, "--archive", p("district/archive"), "--timings", "load", p("district/sheets"))
	t.line("messy district without numbers, "+strconv.Itoa(s.messy)+" people", messy, nil, "who is who: 3 s for 100 000")
	t.steps(messy)
	if m := measure(lapwing, "--archive", p("district/archive"), "export", p("district/out")); m.err != nil {
		return fmt.Errorf("exporting the district: %v %s", m.err, m.output)
	}
	truth := measure(self, "score", p("district/out/results.csv"), p("district/truth.csv"))
	fmt.Println("   ", strings.TrimSpace(truth.output))
	fmt.Fprintln(keep, "# "+strings.TrimSpace(truth.output))

	cells := measure(self, "plain-workbook", p("plain.xlsx"))
	t.line("workbook of 300 × 15 cells on 6 tabs, plain stream", cells, nil, "")
	fmt.Printf("\nKept in %s; compare two with: go tool benchstat A B\n", kept)
	return nil
}
