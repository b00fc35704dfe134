package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// What was corrected, accepted, or stands on a sheet that a later one has
// taken the place of, needs no look any more; a sheet that comes later does.
func TestSettledProblems(t *testing.T) {
	twice := "Pos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n2,Cora Vale,20:10\n3,Dan Wick,8:20\n"
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": twice,
		"sheets/ember-quay_2026-01-03.csv": strings.Replace(twice, "8:20", "20:20", 1),
		"more/alder-bank_2026-01-10.csv":   strings.Replace(twice, "8:20", "20:30", 1),
		"more/ember-quay corrected.csv":    "Ember Quay 3 January 2026\nPos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n3,Cora Vale,20:11\n4,Dan Wick,20:20\n5,Eve Hill,20:40\n",
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	must(t, dir, "refresh")
	open := func() string { return lapwing(t, dir, "sheets", "problems", "--all").out }
	wants(t, open(), "alder-bank_2026-01-03.csv:4: position repeated", "ember-quay_2026-01-03.csv:4: position repeated", "alder-bank_2026-01-03.csv:C5: time impossible")

	o := lapwing(t, dir, "sheets", "problems", "--accept", "position missing")
	if o.code != exitFailed || !strings.Contains(o.errOut, "there are: position-repeated, time-") {
		t.Errorf("a kind that there is not: exit %d, %s", o.code, o.errOut)
	}
	o = must(t, dir, "sheets", "problems", "--accept", "position repeated", "--course", "Alder Bank", "--why", "two funnels", "--by", "Pat")
	wants(t, o.out, "1 problem accepted. Kept as decision 1.", "lapwing correct --undo 1")
	if s := open(); strings.Contains(s, "alder-bank_2026-01-03.csv:4: position") || !strings.Contains(s, "ember-quay_2026-01-03.csv:4: position") {
		t.Errorf("after accepting:\n%s", s)
	}
	must(t, dir, "correct", "alder-bank", "2026-01-03", "3", "--time", "20:20", "--yes")
	if s := open(); strings.Contains(s, "C5: time impossible") {
		t.Errorf("after the correction:\n%s", s)
	}
	must(t, dir, "load", filepath.Join(dir, "more"))
	must(t, dir, "refresh")
	s := open()
	wants(t, s, "alder-bank_2026-01-10.csv:4: position repeated")
	if strings.Contains(s, "ember-quay_2026-01-03.csv:4: position") {
		t.Errorf("of a sheet that another has taken the place of:\n%s", s)
	}
	settled := func() string { return must(t, dir, "sheets", "problems", "--settled", "--all").out }
	wants(t, settled(), "[accepted (decision 1): two funnels]", "[settled by decision 2]", "[a later sheet stands for this run]")
	before := settled()
	must(t, dir, "rebuild")
	if after := settled(); after != before {
		t.Errorf("after a rebuild:\n%s\nbefore:\n%s", after, before)
	}
	must(t, dir, "correct", "--undo", "1", "--yes")
	wants(t, open(), "alder-bank_2026-01-03.csv:4: position repeated")
}
