package pipeline

import (
	"context"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// listed is who helped, one a line.
const listed = `select string_agg(run_date || ' ' || course || ' ' || coalesce(runner_id, '–') || ' ' || name || ' ' || coalesce(role, '') || ' ' || coalesce(days_so_far, 0) || ' ' || coalesce(milestone, 0), chr(10)
	order by run_date, course, name, role) from main.volunteers`

func TestVolunteerSheets(t *testing.T) {
	ctx := context.Background()
	files := threeWeeks()
	files["sheets/alder-bank_2026-01-10_volunteers.csv"] = "Volunteer,Role\nBEN REED,Timekeeper\nDora Penn,Marshal\nTBC,Marshal\n"
	files["sheets/rota.csv"] = "Date,Course,Name,Duty\n2026-01-17,Alder Bank,Dora Penn,Scanning\n2026-01-17,Alder Bank,Dora Penn,Results\n2026-01-24,Birch Lea,Ben Reed,Marshal\n"
	files["archive/volunteers.csv"] = "name,role,course,date\nDora Penn,marshal,alder-bank,2026-01-10\nDora Penn,marshal,alder-bank,2025-12-27\n"
	files["archive/history.csv"] += "volunteer days before,,Dora Penn,,,,8,,2026-01-01\n"
	d := newDesk(t, files)
	want := strings.Join([]string{
		"2025-12-27 alder-bank – Dora Penn marshal 0 0", // among the eight before
		"2026-01-10 alder-bank R2 Ben Reed Timekeeper 1 0",
		"2026-01-10 alder-bank – Dora Penn Marshal 9 0", // the sheet and volunteers.csv say the same
		"2026-01-17 alder-bank – Dora Penn Results 10 10",
		"2026-01-17 alder-bank – Dora Penn Scanning 10 10",
		"2026-01-24 birch-lea R2 Ben Reed Marshal 2 0"}, "\n")
	d.want("volunteers", d.text(listed), want)
	d.want("no run comes of a list", d.text("select count(*) from main.runs where course = 'birch-lea'"), "0")
	if faults, n, err := d.pl.Check(ctx); err != nil || len(faults) > 0 || n == 0 {
		t.Errorf("check: %v %v", faults, err)
	}

	// withdrawn and restored
	if _, err := d.pl.SetState(ctx, "rota.csv", store.Withdrawn); err != nil {
		t.Fatal(err)
	}
	refreshForTest(t, d)
	if got := d.text(listed); strings.Contains(got, "2026-01-17") {
		t.Errorf("a withdrawn list still counts:\n%s", got)
	}
	if _, err := d.pl.SetState(ctx, "rota.csv", store.Loaded); err != nil {
		t.Fatal(err)
	}
	refreshForTest(t, d)
	d.want("restored", d.text(listed), want)

	// explained
	var b strings.Builder
	if err := d.pl.Explain(ctx, "alder-bank_2026-01-10_volunteers.csv:2", &b); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"BEN REED", "taken for name", "Known as: runner R2", "Days of helping so far: 1"} {
		if !strings.Contains(b.String(), text) {
			t.Errorf("the explanation does not say %q:\n%s", text, b.String())
		}
	}

	// made again from the folder
	if err := d.pl.Close(); err != nil {
		t.Fatal(err)
	}
	s := DefaultSettings()
	s.Archive = filepath.Join(d.dir, "archive")
	pl, err := Open(ctx, s, Afresh, nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { pl.Close() })
	d.pl = pl
	refreshForTest(t, d)
	d.want("made again", d.text(listed), want)

	// forgotten, though she never ran
	p := d.forget("Dora Penn")
	if p.Volunteers != 5 {
		t.Errorf("the plan counts %d lines of volunteers, want 5", p.Volunteers)
	}
	if found := stillNamed(t, filepath.Join(d.dir, "archive"), "dora penn"); len(found) > 0 {
		t.Errorf("the name is still in %q", found)
	}
	d.want("places stay", d.text("select count(*) from main.volunteers where name = 'Anonymous'"), "5")
	// and does not come back
	d.write(map[string]string{"sheets/alder-bank_2026-01-17_volunteers.csv": "Name,Role\nDora Penn,Course check\nAda Moss,Tail\n"})
	d.load()
	d.want("a new list", d.text("select string_agg(name, ',' order by name) from main.volunteers where role = 'Tail' or run_date = date '2026-01-17' and name <> 'Anonymous'"), "Ada Moss")
	if found := stillNamed(t, filepath.Join(d.dir, "archive"), "dora penn"); len(found) > 0 {
		t.Errorf("the name is back in %q", found)
	}
}

func refreshForTest(t *testing.T, d *desk) {
	t.Helper()
	if _, err := d.pl.Refresh(context.Background(), false); err != nil {
		t.Fatal(err)
	}
}

// A week of helping, told by a sheet, keeps a row of weeks alive.
func TestVolunteerSheetKeepsAStreak(t *testing.T) {
	files := threeWeeks() // Cora Vale ran on the 3rd and the 17th
	d := newDesk(t, files)
	const streak = "select attendance_streak from main.results where name = 'Cora Vale' and run_date = date '2026-01-17'"
	d.want("without", d.text(streak), "1")
	d.write(map[string]string{"sheets/alder-bank_2026-01-10_volunteers.csv": "Name,Role\nCora Vale,Timekeeper\n"})
	d.load()
	d.want("with", d.text(streak), "2")
}

// The report of a run is to be written again when its list of volunteers comes
// later, and no other.
func TestLateVolunteerSheetChangesItsRun(t *testing.T) {
	ctx := context.Background()
	d := newDesk(t, threeWeeks())
	if err := d.pl.Reported(ctx); err != nil {
		t.Fatal(err)
	}
	d.write(map[string]string{"sheets/alder-bank_2026-01-10_volunteers.csv": "Name,Role\nDora Penn,Timekeeper\n"})
	d.load()
	runs, err := d.pl.ChangedRuns(ctx)
	if err != nil || len(runs) != 1 || runs[0].Date != "2026-01-10" {
		t.Errorf("changed runs %v (%v), want that of 10 January", runs, err)
	}
}

// Who has the name of a hidden person or of a child may be that person.
func TestVolunteerWhoMayBeAnother(t *testing.T) {
	ctx := context.Background()
	files := map[string]string{
		// two of one name in one run are two people
		"sheets/alder-bank_2026-01-03.csv":            "Pos,Name,Time,Age\n1,Ada Moss,20:00,44\n2,Ben Reed,21:00,30\n3,Ada Moss,25:00,14\n",
		"sheets/alder-bank_2026-01-03_volunteers.csv": "Name,Role\nAda Moss,Marshal\nBen Reed,Marshal\nDora Penn,Marshal\n",
	}
	d := newDesk(t, files)
	const shown = "select string_agg(name || ' ' || protected || ' ' || hidden || ' ' || coalesce(days_so_far, 0), ', ' order by name) from main.volunteers"
	d.want("an adult and a child of one name", d.text(shown), "Ada Moss true false 0, Ben Reed false false 1, Dora Penn false false 1")
	d.want("asked about", d.problems("several-runners"), "alder-bank_2026-01-03_volunteers.csv:2: Ada Moss | a name that only one runner has | Write the runner's id, as in R12, in place of the name. To see whose id is whose: lapwing standing \"Ada Moss\"")
	d.pl.Settings.AgeNotKnown = ageNotKnownChild
	if _, err := d.pl.Refresh(ctx, true); err != nil {
		t.Fatal(err)
	}
	d.want("nobody's age known", d.text(shown), "Ada Moss true false 0, Ben Reed false false 1, Dora Penn true false 1")
}

func TestVolunteerDays(t *testing.T) {
	day := func(s string) unit.Day { return mustDay(t, s) }
	lines := []volunteerLine{
		{name: "Dora Penn", day: day("2026-01-03")}, {name: "Dora Penn", day: day("2026-01-03")}, // two roles
		{name: "Two People", day: day("2026-01-03")}, {name: "R7", day: day("2026-01-10")}, {name: "Ben Reed", day: day("2026-01-17")},
		{name: "PENN, Dora", day: day("2026-01-17")}, {name: anonymous, day: day("2026-01-17")}}
	runner := func(who string) int32 {
		switch who {
		case "R7", "Ben Reed":
			return 7
		case "Two People":
			return severalRunners
		}
		return noRunner
	}
	before := []historyLine{{fact: earlierDays, name: "R7", finishes: 48, day: day("2026-01-01")}, {fact: earlierRuns, name: "Dora Penn", finishes: 90}}
	days, reached := volunteerDays(lines, before, runner, []int{2, 50})
	for i, want := range [][2]int32{{1, 0}, {1, 0}, {0, 0}, {49, 0}, {50, 50}, {2, 2}, {0, 0}} {
		if days[i] != want[0] || reached[i] != want[1] {
			t.Errorf("%s on %s: day %d, milestone %d, want %v", lines[i].name, lines[i].day, days[i], reached[i], want)
		}
	}
}
