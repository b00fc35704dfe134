package main

import (
	"strings"
	"testing"
)

// A printed command is one that can be typed where the program was called.
func TestCommandsAsCalled(t *testing.T) {
	for _, c := range []struct {
		arg0    string
		windows bool
		want    string
	}{
		{"lapwing", false, "lapwing"},
		{"./lapwing", false, "./lapwing"},
		{"../bin/lapwing", false, "../bin/lapwing"},
		{"/opt/run day/lapwing", false, `"/opt/run day/lapwing"`},
		{"lapwing", true, "lapwing"},
		{`C:\runs\lapwing.exe`, true, `.\lapwing`},
		{`C:\elsewhere\lapwing.exe`, true, "lapwing"},
	} {
		if got := typedName(c.arg0, c.windows, `C:\runs`); got != c.want {
			t.Errorf("%s: %s, want %s", c.arg0, got, c.want)
		}
	}
	var b strings.Builder
	_, err := called{&b, "./lapwing"}.Write([]byte("  lapwing load \"a.csv\" --kind full\nsee lapwing sheets; bin/lapwing run; archive/lapwing.duckdb; the bird lapwing flies (lapwing run)\n"))
	if want := "  ./lapwing load \"a.csv\" --kind full\nsee ./lapwing sheets; bin/lapwing run; archive/lapwing.duckdb; the bird lapwing flies (./lapwing run)\n"; err != nil || b.String() != want {
		t.Errorf("%s, %v", b.String(), err)
	}
}

// Every command of the program is known to the writer.
func TestEveryCommandAsCalled(t *testing.T) {
	for _, c := range (&app{}).root().Commands() {
		if line := "lapwing " + c.Name(); !c.Hidden && (called{nil, "./lapwing"}).words(line) != "./"+line {
			t.Errorf("%s stays as it is", line)
		}
	}
}
