package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// An export for publication tells of children what the reports print of them, and nothing by
// which a hidden person's lines can be put together.
func TestExportForPublication(t *testing.T) {
	dir := t.TempDir()
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Sex,Age,Club,Time\n1,Jo Lee,M,41,Vale,18:20\n2,Kit Moor,F,12,Vale,20:31\n3,Cy Dee,M,50,Mill,21:40\n",
		"sheets/alder-bank_2026-01-10.csv": "Pos,Name,Sex,Age,Club,Time\n1,Jo Lee,M,41,Vale,18:10\n2,Kit Moor,F,12,Vale,20:01\n3,Cy Dee,M,50,Mill,21:30\n",
	})
	plainly(t, "run")
	plainly(t, "correct", "--hide", "Cy Dee", "--yes", "--no-reports")
	out := filepath.Join(dir, "out")
	plainly(t, "export", out)
	told := map[string]int{}
	for _, r := range exported(t, filepath.Join(out, "results.csv")) {
		about := []string{"age_low", "age_high", "age_grade_pct", "open_equivalent_s", "form_s", "club"}
		if r["run_date"] == "2026-01-10" {
			about = append(about, "previous_best_s", "pb_margin_s")
		}
		switch r["name"] {
		case "Jo Lee":
			told["adult"]++
			for _, c := range about {
				if r[c] == "" {
					t.Errorf("nothing under %s for an adult", c)
				}
			}
		case "Kit M.":
			told["child"]++
			if r["age_group"] == "" || r["runner_id"] == "" {
				t.Errorf("a child without group or runner: %v", r)
			}
			for _, c := range about {
				if r[c] != "" {
					t.Errorf("a child's %s is %s", c, r[c])
				}
			}
		case "Anonymous":
			told["hidden"]++
			for _, c := range append(about, "runner_id", "age_group", "runs_total", "attendance_streak") {
				if r[c] != "" {
					t.Errorf("a hidden person's %s is %s", c, r[c])
				}
			}
		}
	}
	if told["adult"] != 2 || told["child"] != 2 || told["hidden"] != 2 {
		t.Error(told)
	}
	if n := len(exported(t, filepath.Join(out, "runners.csv"))); n != 2 {
		t.Errorf("%d runners, want the two who are not hidden", n)
	}
	// neither kind goes into the folder of the other
	o := plainly(t, "export", out, "--private")
	wants(t, o.errOut, "holds an export for publication")
	private := filepath.Join(dir, "private")
	plainly(t, "export", private, "--private")
	plainly(t, "export", private, "--private")
	wants(t, plainly(t, "export", private).errOut, "holds an export with full names")
	if len(exported(t, filepath.Join(private, "runners.csv"))) != 3 {
		t.Error("the private export lacks somebody")
	}
}

// Who is hidden is told which files for publication still show them: those that are not
// written again of themselves.
func TestWhereAHiddenPersonIsStillShown(t *testing.T) {
	inFolder(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Sex,Age,Time\n1,Jo Lee,M,41,18:20\n2,Kit Moor,F,12,20:31\n3,Cy Dee,M,50,21:40\n",
	})
	plainly(t, "run")
	plainly(t, "season")
	out := plainly(t, "correct", "--hide", "Kit Moor", "--yes").out // printed as Kit M.
	wants(t, out, "These files for publication still show that name", filepath.Join("reports", "season_2026.xlsx"))
	plainly(t, "season")
	plainly(t, "correct", "--undo", "1", "--yes")
	if out := plainly(t, "correct", "--hide", "Kit Moor", "--yes").out; strings.Contains(out, "still show") {
		t.Error(out)
	}
}
