package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestKeptFile checks that what is kept is in the form of Go's benchmarks, with
// the ratio to the reference, and that a piece of work that failed is told.
func TestKeptFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "kept.txt")
	keep, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	table := &table{keep: keep}
	reference := measured{wall: 2, cpu: 1}
	table.line("One", "one", measured{wall: 3, cpu: 2.5, peakMB: 100}, &reference, "")
	table.line("Two", "two", measured{timings: map[string]float64{"plain": .25}, peakMB: 5, cpu: 9}.piece("plain"), nil, "")
	table.line("Three", "three", measured{err: os.ErrInvalid}, nil, "")
	if err := keep.Close(); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	want := "BenchmarkOne 1 3000000000 ns/op 2.5e+09 cpu-ns/op 100 peak-MB 1.5 x-reference 2.5 cpu-x-reference\nBenchmarkTwo 1 250000000 ns/op\n"
	if string(got) != want {
		t.Errorf("kept\n%swant\n%s", got, want)
	}
	if strings.Join(table.failed, ",") != "three" {
		t.Errorf("failed: %v", table.failed)
	}
}

// TestMeasure checks that the timings that a program prints are read, and that
// one that can't be started is an error.
func TestMeasure(t *testing.T) {
	m := measure("printf", `timing\tReading the lines\t1.250\nother\n`)
	if m.err != nil || m.timings["Reading the lines"] != 1.25 || m.wall <= 0 {
		t.Errorf("%+v", m)
	}
	if m := measure(filepath.Join(t.TempDir(), "nothing")); m.err == nil {
		t.Error("a program that is not there is no error")
	}
}
