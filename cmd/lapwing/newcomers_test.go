package main

import (
	"os"
	"strings"
	"testing"
)

// A course that is new and of which nobody says that its first run here was the first ever
// makes newcomers unknown, not none, on every course; what would make them known is said.
func TestNewcomersOfTwoCourses(t *testing.T) {
	const history = "fact,course,name,sex,age_group,distance_m,finishes,time,date\nbegan,alder-bank,,,,,,,2026-01-03\n"
	inFolder(t, map[string]string{
		"archive/history.csv":              history,
		"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n",
		"sheets/alder-bank_2026-01-10.csv": "Pos,Name,Time\n1,Jo Lee,18:21\n2,Al Roe,18:32\n3,Di Fox,18:50\n",
	})
	wants(t, plainly(t, "run").out, "4 newcomers.")
	writeup := func() string {
		b, err := os.ReadFile("reports/alder-bank_2026-01-10.txt")
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	wants(t, writeup(), "for the very first time")
	if err := os.WriteFile("sheets/ember-quay_2026-01-11.csv", []byte("Pos,Name,Time\n1,Jo Lee,18:24\n2,Ed Gow,18:31\n3,Di Fox,18:49\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	wants(t, plainly(t, "run").out, "newcomers not known", "So newcomers of other courses are not known either", "began,ember-quay,,,,,,,2026-01-11")
	if strings.Contains(writeup(), "for the very first time") {
		t.Error(writeup())
	}
	if err := os.WriteFile("archive/history.csv", []byte(history+"began,ember-quay,,,,,,,2026-01-11\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	wants(t, plainly(t, "run").out, "5 newcomers.")
	wants(t, writeup(), "for the very first time")
}
