// Command bench measures what Lapwing costs, beside a reference measured in
// the same run: the database's own CSV reader, a plain stream of the same
// workbook cells, a plain loop over the same results, a district with known
// truth. It is no test: it never fails because of a slow machine, only where a
// piece of work fails.
//
//	SIZE=small make bench    every day: a million results
//	SIZE=full make bench     ten million; needs about 20 GB of disk and half an hour
//
// trial (a few seconds), 3m and 30m are the other sizes, for seeing how cost
// grows. Each piece of work runs in a process of its own, so that peak memory is
// that of the piece alone.
package main

import (
	"context"
	"errors"
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

var sizes = []size{
	{"trial", 100_000, 400},
	{"small", 1_000_000, 2500},
	{"3m", 3_000_000, 2500},
	{"full", 10_000_000, 6000},
	{"30m", 30_000_000, 6000},
}

func main() {
	var err error
	if len(os.Args) > 1 {
		err = part(context.Background(), os.Args[1], os.Args[2:])
	} else {
		err = bench()
	}
	if err != nil {
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
	if cmd.ProcessState == nil {
		return m // it did not start
	}
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

// piece is the part of a process that was timed inside it; what else it did,
// reading its input, is left out.
func (m measured) piece(what string) measured {
	m.wall, m.cpu, m.peakMB = m.timings[what], 0, 0
	return m
}

// table prints the figures as they come, and keeps them in the form of Go's
// benchmarks for benchstat.
type table struct {
	keep   *os.File
	failed []string
}

func (t *table) head(s size, database string) {
	cpu := "unknown processor"
	if text, err := os.ReadFile("/proc/cpuinfo"); err == nil {
		for _, line := range strings.Split(string(text), "\n") {
			if k, v, ok := strings.Cut(line, ":"); ok && strings.TrimSpace(k) == "model name" {
				cpu = strings.TrimSpace(v)
				break
			}
		}
	}
	fmt.Printf("%s, %s/%s, DuckDB %s, %d cores (%s), size %s\n", runtime.Version(), runtime.GOOS, runtime.GOARCH, database, runtime.NumCPU(), cpu, s.name)
	fmt.Printf("Ratios are to the reference named, measured in this run: of wall time, and of processor time, which other work on the machine disturbs less.\n\n")
	fmt.Printf("%-60s %10s %10s %9s %7s %9s  %s\n", "work", "wall", "processor", "memory", "ratio", "processor", "budget")
	fmt.Fprintf(t.keep, "goos: %s\ngoarch: %s\npkg: lapwing\ncpu: %s\ntoolchain: %s\nduckdb: %s\nsize: %s\n", runtime.GOOS, runtime.GOARCH, cpu, runtime.Version(), database, s.name)
}

// line prints one piece of work; name is what it is called in the file kept.
func (t *table) line(name, what string, m measured, reference *measured, budget string) {
	if m.err != nil {
		t.failed = append(t.failed, what)
		fmt.Printf("%-60s failed: %v\n%s\n", what, m.err, m.output)
		return
	}
	cell := func(v float64, format string) string {
		if v == 0 {
			return ""
		}
		return fmt.Sprintf(format, v)
	}
	var wall, cpu float64
	if reference != nil && reference.wall > 0 {
		wall = m.wall / reference.wall
		if reference.cpu > 0 {
			cpu = m.cpu / reference.cpu
		}
	}
	fmt.Printf("%-60s %8.2f s %10s %9s %7s %9s  %s\n", what, m.wall, cell(m.cpu, "%.2f s"), cell(m.peakMB, "%.0f MB"), cell(wall, "%.2f ×"), cell(cpu, "%.2f ×"), budget)
	fmt.Fprintf(t.keep, "Benchmark%s 1 %.0f ns/op", name, m.wall*1e9)
	for _, more := range []struct {
		v    float64
		unit string
	}{{m.cpu * 1e9, "cpu-ns/op"}, {m.peakMB, "peak-MB"}, {wall, "x-reference"}, {cpu, "cpu-x-reference"}} {
		if more.v > 0 {
			fmt.Fprintf(t.keep, " %.4g %s", more.v, more.unit)
		}
	}
	fmt.Fprintln(t.keep)
}

// steps prints the pieces that make up a piece of work.
func (t *table) steps(name string, m measured) {
	for _, what := range []string{"Loading sheets", "Reading the lines", "Working out who is who", "Bringing together what is known of each runner",
		"Age grades", "Bests, streaks and milestones", "Course speed, conditions and form", "Writing the figures"} {
		if s, ok := m.timings[what]; ok && m.err == nil {
			fmt.Printf("    %-56s %8.2f s\n", strings.ToLower(what), s)
			fmt.Fprintf(t.keep, "Benchmark%s/%s 1 %.0f ns/op\n", name, strings.Map(word, what), s*1e9)
		}
	}
}

func word(r rune) rune {
	if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
		return r
	}
	return '_'
}

// chosenSize is the size that SIZE names, the small one where it names none.
func chosenSize() (size, error) {
	want := os.Getenv("SIZE")
	var names []string
	for _, s := range sizes {
		if s.name == want || want == "" && s.name == "small" {
			return s, nil
		}
		names = append(names, s.name)
	}
	return size{}, fmt.Errorf("SIZE=%q: %s", want, strings.Join(names, ", "))
}

func bench() error {
	s, err := chosenSize()
	if err != nil {
		return err
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
	database := measure(self, "database")
	if database.err != nil {
		return fmt.Errorf("%w: %s", database.err, database.output)
	}
	t := &table{keep: keep}
	t.head(s, strings.TrimSpace(database.output))
	w := work{table: t, size: s, self: self, lapwing: filepath.Join("bin", "lapwing"), dir: dir}
	for _, f := range []func() error{w.load, w.sheets, w.saturday, w.reports, w.messy} {
		if err := f(); err != nil {
			return err
		}
	}
	fmt.Printf("\nKept in %s; compare two with: go tool benchstat A B\n", kept)
	if len(t.failed) > 0 {
		return errors.New("failed: " + strings.Join(t.failed, "; "))
	}
	return nil
}
