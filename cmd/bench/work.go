package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// work is a benchmark on its way: the programs, and a folder for what they
// make.
type work struct {
	*table
	size          size
	self, lapwing string
	dir           string
	one           measured // the load of one file
}

func (w *work) path(name string) string { return filepath.Join(w.dir, name) }

// prepare runs a part that is not measured.
func (w *work) prepare(what, program string, args ...string) (measured, error) {
	m := measure(program, args...)
	if m.err != nil {
		return m, fmt.Errorf("%s: %w\n%s", what, m.err, m.output)
	}
	return m, nil
}

func (w *work) million() string { return fmt.Sprintf("%.1f M results", float64(w.size.results)/1e6) }

// load is the whole way from one file of all results to all figures, beside
// the database's own reader; and the model beside a plain loop over the same
// results.
func (w *work) load() error {
	if _, err := w.prepare("making the season list", w.self, "make-season", w.path("season.csv"), strconv.Itoa(w.size.results)); err != nil {
		return err
	}
	reference := measure(w.self, "read-csv", w.path("season.csv"), w.path("reference.duckdb"))
	w.line("ReadCSV", w.million()+": the database's own CSV reader (reference)", reference, nil, "")
	w.one = measure(w.lapwing, "--archive", w.path("one"), "--timings", "load", w.path("season.csv"))
	w.line("OneFile", w.million()+", one file: load, record, insight", w.one, &reference, "6 ×, 6 GB at 10 M")
	w.steps("OneFile", w.one)
	if w.one.err != nil {
		return nil
	}
	loop := measure(w.self, "plain-loop", w.path("one"))
	plain := loop.piece("plain")
	w.line("PlainLoop", fmt.Sprintf("plain loop, %d passes over the same results (reference)", plainPasses), plain, nil, "")
	w.line("CourseSpeed", "course speed, conditions and form", w.one.piece("Course speed, conditions and form"), &plain, "20 s at 10 M")
	return os.RemoveAll(w.path("one"))
}

// sheets is the same from a sheet a run.
func (w *work) sheets() error {
	if _, err := w.prepare("making the sheets", w.self, "make-sheets", w.path("sheets"), strconv.Itoa(w.size.results)); err != nil {
		return err
	}
	many := measure(w.lapwing, "--archive", w.path("many"), "--timings", "load", w.path("sheets"))
	w.line("SheetARun", w.million()+", a sheet a run", many, &w.one, "2 × the one file")
	w.steps("SheetARun", many)
	return many.err
}

// saturday is one new sheet into the large archive.
func (w *work) saturday() error {
	if _, err := w.prepare("making the new sheet", w.self, "make-saturday", w.path("saturday"), w.path("many")); err != nil {
		return err
	}
	// the reports of what is already there are not part of this
	if _, err := w.prepare("noting the reports", w.lapwing, "--archive", w.path("many"), "reported"); err != nil {
		return err
	}
	m := measure("env", "LAPWING_REPORTS="+w.path("saturday-reports"), w.lapwing, "--archive", w.path("many"), "--timings", "run", w.path("saturday"))
	w.line("Saturday", "a new sheet of 300 into that, to its finished workbooks", m, nil, "3 s at 10 M")
	w.steps("Saturday", m)
	card := measure(w.lapwing, "--archive", w.path("many"), "standing", "R1000")
	w.line("Standing", "standing card from that archive", card, nil, "0.5 s at 10 M")
	return nil
}

// reports writes the workbooks of the new run beside a plain stream of their
// cells, and those of the latest run of every course.
func (w *work) reports() error {
	sheets, err := filepath.Glob(w.path("saturday/*.csv"))
	if err != nil || len(sheets) != 1 {
		return fmt.Errorf("%d new sheets, %v", len(sheets), err)
	}
	course, date, _ := strings.Cut(strings.TrimSuffix(filepath.Base(sheets[0]), ".csv"), "_")
	if err := os.MkdirAll(w.path("plain"), 0o755); err != nil {
		return err
	}
	stream := measure(w.self, "plain-stream", w.path("saturday-reports"), w.path("plain"))
	if stream.err != nil {
		return fmt.Errorf("plain stream: %w\n%s", stream.err, stream.output)
	}
	plain := stream.piece("plain")
	w.line("PlainStream", "plain stream of the same cells, two workbooks (reference)", plain, nil, "")
	one := measure("env", "LAPWING_REPORTS="+w.path("one-reports"), w.lapwing, "--archive", w.path("many"), "weekly", "--course", course, "--date", date)
	w.line("Weekly", "weekly reports of that run, the program's start included", one, &plain, "")
	all := measure("env", "LAPWING_REPORTS="+w.path("all-reports"), w.lapwing, "--archive", w.path("many"), "weekly")
	books, err := filepath.Glob(w.path("all-reports/*-desk.xlsx"))
	if err != nil {
		return err
	}
	w.line("WeeklyAll", fmt.Sprintf("weekly reports of the latest run of every course: %d", len(books)), all, nil, "")
	return nil
}

// messy is a district of misspelt names and wrong ages, without numbers.
func (w *work) messy() error {
	if _, err := w.prepare("making the district", w.self, "make-district", w.path("district"), strconv.Itoa(w.size.messy)); err != nil {
		return err
	}
	m := measure(w.lapwing, "--archive", w.path("district/archive"), "--timings", "load", w.path("district/sheets"))
	if m.timings["Writing the figures"] > 0 {
		m.err = nil // some of its sheets wait for an answer, and it says so
	}
	w.line("Messy", fmt.Sprintf("messy district without numbers, %d people", w.size.messy), m, nil, "who is who: 3 s for 100 000 rows")
	w.steps("Messy", m)
	if _, err := w.prepare("exporting the district", w.lapwing, "--archive", w.path("district/archive"), "export", w.path("district/out")); err != nil {
		return err
	}
	truth, err := w.prepare("scoring the district", w.self, "score", w.path("district/out/results.csv"), w.path("district/truth.csv"))
	if err != nil {
		return err
	}
	fmt.Println("   ", strings.TrimSpace(truth.output))
	fmt.Fprintln(w.keep, "# "+strings.TrimSpace(truth.output))
	return nil
}
