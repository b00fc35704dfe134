package main

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline"
)

// A dry run of a folder says what loading it then does: copies, new issues, parts
// on two sheets, what waits and what is refused, beside each other and beside what
// is in the archive; and it changes nothing.
func TestDryRunSaysWhatLoadingDoes(t *testing.T) {
	full, other := fieldSheet(24), fieldSheet(20)
	var times, names strings.Builder
	for i, l := range strings.Split(strings.TrimSpace(full), "\n") {
		c := strings.Split(l, ",")
		if i == 0 && (c[0] != "Pos" || c[1] != "Name" || c[2] != "Time") {
			t.Fatalf("the sheet has the columns %q", c)
		}
		times.WriteString(c[0] + "," + c[2] + "\n")
		names.WriteString(c[0] + "," + c[1] + "\n")
	}
	dir := folderWith(t, map[string]string{
		"before/alder-bank_2026-01-03.csv":            full,
		"new/alder-bank_2026-01-03.csv":               full,
		"new/alder-bank_2026-01-03_corrected.csv":     full + "25,Late Comer,59:10,W40,W,\n",
		"new/birch-moor_2026-01-10_times.csv":         times.String(),
		"new/birch-moor_2026-01-10_names.csv":         names.String(),
		"new/cress-ford_2026-01-10.csv":               other,
		"new/cress-ford_2026-01-10_excerpt.csv":       strings.Join(strings.SplitAfter(other, "\n")[:6], ""),
		"new/copy of birch-moor_2026-01-10_names.csv": names.String(),
		"new/undated.csv":                             fieldSheet(12),
		"new/page.csv":                                "<html><table></table></html>",
		"archive/courses.csv":                         "course,name,distance_m,weekday,valid_from,valid_to,measured\nalder-bank,Alder Bank,5000,Saturday,,,yes\n",
	})
	must(t, dir, "load", filepath.Join(dir, "before"))
	before := snapshot(t, dir)
	o := lapwing(t, dir, "load", filepath.Join(dir, "new"), "--dry-run", "--json")
	if o.code != exitFailed {
		t.Fatalf("exit %d: %s", o.code, o.errOut)
	}
	if d := differences(before, snapshot(t, dir)); len(d) > 0 {
		t.Errorf("the dry run changed %v", d)
	}
	if left, _ := filepath.Glob(filepath.Join(os.TempDir(), "lapwing-trial-*")); len(left) > 0 {
		t.Errorf("the dry run left %v", left)
	}
	var would []pipeline.SheetReport
	if err := json.Unmarshal([]byte(o.out), &would); err != nil {
		t.Fatal(err)
	}
	words := lapwing(t, dir, "load", filepath.Join(dir, "new"), "--dry-run").out
	wants(t, words, "alder-bank_2026-01-03.csv: already loaded, 24 lines", "24 repeat", "joined with", "would wait", "web page", "In all: 5 sheets would be loaded, 1 wait, 1 are refused, 2 are in the archive already")

	var did pipeline.LoadReport
	o = lapwing(t, dir, "load", filepath.Join(dir, "new"), "--json")
	if err := json.Unmarshal([]byte(o.out), &did); err != nil {
		t.Fatal(err)
	}
	if len(would) != 9 || len(did.Sheets) != 9 {
		t.Fatalf("%d sheets looked at, %d loaded", len(would), len(did.Sheets))
	}
	states := map[string]string{"loaded": "would load", "waiting": "would wait"}
	for i, s := range did.Sheets {
		w := would[i]
		if want := states[s.State]; want == "" {
			states[s.State] = s.State
		}
		if w.Path != s.Path || w.State != states[s.State] || w.Rows != s.Rows {
			t.Errorf("%s: %s, %d rows; loading it came to %s, %d", w.Path, w.State, w.Rows, s.State, s.Rows)
		}
	}
	// what became of the lines is what was said
	got := map[string]map[string]int{}
	must(t, dir, "export", filepath.Join(dir, "out"))
	results, err := os.ReadFile(filepath.Join(dir, "out", "results.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for i, l := range strings.Split(strings.TrimSpace(string(results)), "\n") {
		if i == 0 {
			continue
		}
		c := strings.Split(l, ",")
		if got[c[0]] == nil {
			got[c[0]] = map[string]int{}
		}
		got[c[0]][statusOf(c)]++
	}
	if len(got) < 5 {
		t.Fatalf("the export has the sheets %v", slices.Sorted(maps.Keys(got)))
	}
	for _, w := range would {
		if w.State == "would load" && !maps.Equal(got[w.Path], w.Counts) {
			t.Errorf("%s: its lines were to become %v and are %v", w.Path, w.Counts, got[w.Path])
		}
	}
}

// statusOf is the status of a line of an exported table: the first cell that is
// one.
func statusOf(cells []string) string {
	for _, c := range cells[8:] {
		switch c {
		case "ok", "unnamed", "untimed", "dnf", "dq", "repeat", "doubtful", "superseded":
			return c
		}
	}
	return ""
}
