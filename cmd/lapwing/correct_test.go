package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestCorrect(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(12),
		"sheets/alder-bank_2026-01-10.csv": strings.Replace(fieldSheet(12), "Cora Moss", "Unknown", 1),
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	decisions := filepath.Join(dir, "archive", "decisions.csv")
	claim := []string{"correct", "Alder Bank", "2026-01-10", "3", "--name", "Cora Moss", "--why", "phoned", "--by", "Pat"}

	o := lapwing(t, dir, claim...)
	if o.code != exitFailed || exists(decisions) {
		t.Errorf("without --yes: exit %d, kept %v", o.code, exists(decisions))
	}
	wants(t, o.out, "This changes:", "whose result nobody → Cora Moss (R", "runs in all 1 → 2", "--yes", "Nothing was kept.")

	o = must(t, dir, append(claim, "--yes")...)
	wants(t, o.out, "Kept as decision 1.", "lapwing correct --undo 1")
	data, err := os.ReadFile(decisions)
	if err != nil {
		t.Fatal(err)
	}
	wants(t, string(data), "Pat,claim,", ",Cora Moss,phoned")

	o = must(t, dir, "correct", "--list")
	wants(t, o.out, "alder-bank_2026-01-10.csv:4", "claim Cora Moss", "in force", "phoned")
	o = must(t, dir, "--json", "correct", "--undo", "1", "--yes")
	var got struct {
		Kept    bool
		Changes []struct{ What, Before, After string }
	}
	if err := json.Unmarshal([]byte(o.out), &got); err != nil || !got.Kept || len(got.Changes) == 0 {
		t.Errorf("--json: %v %+v\n%s", err, got, o.out)
	}
	wants(t, must(t, dir, "correct", "--list").out, "taken back")

	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"correct"}, exitUsage, "say which run"},
		{[]string{"correct", "alder-bank", "2026-01-03"}, exitUsage, "say which place"},
		{[]string{"correct", "alder-bank", "2026-01-03", "first"}, exitUsage, "number on the sheet"},
		{[]string{"correct", "alder-bank", "2026-01-03", "1", "--disqualify", "--reinstate"}, exitUsage, "only one"},
		{[]string{"correct", "alder-bank", "2026-01-03", "99", "--time", "20:00"}, exitFailed, "has no place 99"},
		{[]string{"correct", "--hide", "Nobody Here"}, exitFailed, "nobody called"},
		{[]string{"correct", "alder-bank", "2026-01-03", "1", "--hide", "R1"}, exitUsage, "without a course"},
	} {
		o := lapwing(t, dir, c.args...)
		if o.code != c.code || !strings.Contains(o.errOut, c.says) {
			t.Errorf("lapwing %s: exit %d, want %d\n%s", strings.Join(c.args, " "), o.code, c.code, o.errOut)
		}
	}
}
