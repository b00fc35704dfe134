package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// The weekly job says what needs a look in the runs that changed and apart from
// them, that volunteers are listed of a day without results.
func TestWeeklyJobSaysWhatToLookAt(t *testing.T) {
	odd := "Pos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,19:45\n2,Cora Vale,20:10\n3,Dan Wick,20:20\n"
	clean := strings.Replace(odd, "2,Cora Vale,20:10\n3,", "3,Cora Vale,20:10\n4,", 1)
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": odd,
		"archive/courses.csv":              "course,name,distance_m,weekday,valid_from,valid_to,measured\nalder-bank,Alder Bank,5000,Saturday,,,yes\n",
	})
	wants(t, must(t, dir, "run").out, "1 thing needs a look in these runs. To see them: lapwing sheets problems")
	wants(t, must(t, dir, "run").out, "Nothing has changed", "1 thing needs a look. To see")
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-10.csv": strings.ReplaceAll(clean, "19:30", "19:31")})
	wants(t, must(t, dir, "run").out, "Nothing needs a look in these runs; elsewhere, 1 thing needs a look.")
	write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17_volunteers.csv": "Name,Role\nEve Hill,Timekeeper\nFinn Dale,Marshal\n"})
	wants(t, must(t, dir, "run").out, "Volunteers of alder-bank, Saturday 17 January 2026 are listed; there are no results of that day yet.")
	must(t, dir, "sheets", "problems", "--accept", "position repeated")
	write(t, dir, map[string]string{"sheets/helpers.csv": "Alder Bnak volunteers\nSaturday 10 January 2026\nName,Role\nEve Hill,Timekeeper\nGwen Moss,Marshal\n"})
	wants(t, must(t, dir, "run").out, "Nothing needs a look in these runs; elsewhere, 1 thing needs a look.")
	wants(t, must(t, dir, "sheets", "problems").out, `helpers.csv: course spelling: read "Alder Bnak`, "taken for the course alder-bank")
}

// A list of volunteers of a course that is a slip away from one that is known by
// its runs alone waits for an answer.
func TestVolunteersOfAMisspeltCourse(t *testing.T) {
	files := map[string]string{"sheets/alder-bnak_2026-01-10_volunteers.csv": "Name,Role\nEve Hill,Timekeeper\nGwen Moss,Marshal\n"}
	for _, day := range []string{"03", "10", "17", "24"} {
		files["sheets/alder-bank_2026-01-"+day+".csv"] = strings.ReplaceAll(fieldSheet(8), ":26,", ":"+day+",")
	}
	dir := folderWith(t, files)
	helpers := filepath.Join(dir, "sheets", "alder-bnak_2026-01-10_volunteers.csv")
	must(t, dir, "load", filepath.Join(dir, "sheets", "alder-bank_*.csv"))
	o := lapwing(t, dir, "load", helpers)
	wants(t, o.out, "Waiting", `"alder-bnak"`, "a course that is known, such as alder-bank")
	if o.code != exitFailed {
		t.Errorf("exit %d although a list waits", o.code)
	}
	must(t, dir, "load", helpers, "--course", "alder-bank")
	if out := must(t, dir, "run").out; strings.Contains(out, "Waiting") || strings.Contains(out, "Volunteers of") {
		t.Errorf("after it was answered:\n%s", out)
	}
}

// A run says nothing needs a look only where no sheet waits either, and names the
// sheet to load again with the folder it lies in.
func TestRunWithASheetThatWaits(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/a.csv": "Pos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n",
		"sheets/b.csv": "Alder Bank 3 January 2026\nPos,Name,Time\n1,Ana Sol,20:01\n2,Ben Orr,21:02\n",
	})
	out := lapwing(t, dir, "run").out
	wants(t, out, "Waiting: a.csv", `sheets/b.csv" --course NAME`)
	if strings.Contains(out, "Nothing needs a look") {
		t.Errorf("a sheet waits, and:\n%s", out)
	}
}
