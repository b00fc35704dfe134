package pipeline

import (
	"context"
	"strings"
	"testing"
)

// state gives what became of a decision.
func (d *desk) state(id int) string {
	d.t.Helper()
	list, err := d.pl.DecisionList(context.Background())
	if err != nil {
		d.t.Fatal(err)
	}
	for _, s := range list {
		if s.ID == id {
			return s.State
		}
	}
	return "not there"
}

func TestRecordConfirmedOrVoid(t *testing.T) {
	files := threeWeeks()
	files["archive/history.csv"] += "record,alder-bank,Old Hand,M,,,,20:30,2019-05-04\nrecord,alder-bank,,,W40,,,20:05,\nrecord,alder-bank,Nobody Known,,,,,19:00,\n"
	d := newDesk(t, files)
	held := func() string {
		return d.text("select coalesce(sex, '') || ' ' || coalesce(age_group, 'all') || ' ' || time_s || ' ' || coalesce(name, 'nobody') || ' ' || coalesce(run_date::varchar, 'no day') from main.held_records order by line")
	}
	d.want("held", held(), "M all 1230 Old Hand 2019-05-04 W W40 1205 nobody no day")
	if p := d.problems("held-record"); !strings.Contains(p, "history.csv, row 5") || !strings.Contains(p, "no sex") {
		t.Errorf("a record without a sex: %s", p)
	}
	states := func() string {
		return d.text("select r.name || ' ' || r.time_s || ' ' || s.state from main.record_states s join main.results r on r.line_no = s.line_no order by 1")
	}
	c := on("2026-01-03", 1)
	c.Record = "confirmed"
	dr := d.keep(c)
	d.shows(dr, "Ada Moss (R1), alder-bank 2026-01-03, place 1: as a record not confirmed → confirmed")
	d.want("confirmed", states(), "Ada Moss 1200 confirmed")
	c = on("2026-01-03", 1)
	c.Record = "void"
	dr = d.draft(c)
	d.shows(dr, "confirmed → void", "fastest here, women 20:00 Ada Moss (R1) → 20:05 holder not known (before the sheets)",
		"fastest here, women, W40 20:00 Ada Moss (R1) → 20:05 holder not known (before the sheets)")
	// the men's record is older than the sheets: nothing becomes of a void 21:00
	c = on("2026-01-03", 2)
	c.Record = "void"
	for _, x := range d.draft(c).Changes {
		if strings.HasPrefix(x.What, "fastest here, men") && x.What == "fastest here, men" {
			t.Errorf("the record of before the sheets is lost: %s", x)
		}
	}
	// a corrected result has to be confirmed again
	c = on("2026-01-03", 1)
	c.Time = "19:40"
	d.keep(c)
	d.want("after another time", states(), "")
	d.want("state", d.state(1), decisionContradicted)
	d.keep(Correction{Undo: 2, By: "desk"})
	d.want("taken back", states(), "Ada Moss 1200 confirmed")
	// a later sheet with the same time and person keeps it, another time asks
	d.write(map[string]string{"sheets/alder-bank_2026-01-03 b.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers", "2,Ben Reed,21:00,M45,M,Wick Runners", "3,Cora Vale,25:01,W35,W,")})
	d.load()
	d.want("on a later sheet", states(), "Ada Moss 1200 confirmed")
	d.write(map[string]string{"sheets/alder-bank_2026-01-03 c.csv": week("1,Ada Moss,20:05,W40,W,Tarn Harriers", "2,Ben Reed,21:00,M45,M,Wick Runners", "3,Cora Vale,25:01,W35,W,")})
	d.load()
	d.want("with another time", states(), "")
	d.want("state", d.state(1), decisionContradicted)
	c = on("2026-01-10", 3)
	c.Record = "confirmed"
	if _, err := d.pl.Decide(context.Background(), c); err == nil || !strings.Contains(err.Error(), "unnamed") {
		t.Errorf("nobody's place as a record: %v", err)
	}
}

func TestOpeningBalance(t *testing.T) {
	d := newDesk(t, threeWeeks())
	totals := func() string {
		return d.text("select runs_total || coalesce('/' || milestone, '') || case when is_pb then ' PB' else '' end from main.results where name = 'Cora Vale' order by run_date")
	}
	d.want("before", totals(), "1 2 PB")
	dr := d.keep(Correction{Person: "Cora Vale", RunsBefore: "8", BestBefore: "24:20", By: "desk", Why: "her own list"})
	d.shows(dr, "Cora Vale (R3): finishes before the sheets as before → 8", "milestone none → 10", "personal best yes → no", "runs in all 2 → 10")
	d.want("after", totals(), "9 10/10")
	// the last word stands, on one course too
	d.keep(Correction{Person: "R3", RunsBefore: "7", BestBefore: "25:30", By: "desk"})
	d.want("the last word", totals(), "8 PB 9 PB")
	d.keep(Correction{Undo: 3, By: "desk"})
	d.keep(Correction{Undo: 4, By: "desk"})
	d.want("taken back", totals(), "9 10/10")
	// the desk wins over the table
	d.write(map[string]string{"archive/history.csv": threeWeeks()["archive/history.csv"] + "finishes before,,Cora Vale,,,,40,,\nbest before,,Cora Vale,,,,,20:00,\n"})
	if _, err := d.pl.Refresh(context.Background(), false); err != nil {
		t.Fatal(err)
	}
	d.want("with the table", totals(), "9 10/10")
	for _, c := range []struct {
		c    Correction
		says string
	}{
		{Correction{Person: "Cora Vale", RunsBefore: "many"}, "whole number"},
		{Correction{Person: "Cora Vale", BestBefore: "fast"}, "24:31"},
		{Correction{Person: "Cora Vale", Before: "2026-01-01"}, "how many runs"},
		{Correction{Person: "Cora Vale", RunsBefore: "3", Course: "nowhere"}, "no course"},
	} {
		if _, err := d.pl.Decide(context.Background(), c.c); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v", c.c, err)
		}
	}
}

func TestClubDecisions(t *testing.T) {
	files := threeWeeks()
	files["sheets/alder-bank_2026-01-24.csv"] = week("1,Ada Moss,20:20,W40,W,Tarn H.", "2,Ben Reed,21:20,M45,M,Wick Runners", "3,Cora Vale,24:40,W35,W,Tarn Runners")
	files["archive/members.csv"] = "person,club,claim,from,to,birth_date\nAda Moss,TARN HARRIERS,first,,,\n"
	d := newDesk(t, files)
	list := func() string {
		l, err := d.pl.Clubs(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, c := range l.Clubs {
			out = append(out, strings.Join(append([]string{c.Name}, c.Others...), "/"))
		}
		for _, q := range l.Questions {
			out = append(out, q.Other+"="+q.Club+"?")
		}
		return strings.Join(out, "; ")
	}
	d.want("asked", list(), "Wick Runners; Tarn Harriers; Tarn H.; Tarn Runners; TARN HARRIERS; Tarn H.=Tarn Harriers?; TARN HARRIERS=Tarn Harriers?")
	dr := d.keep(Correction{OtherClub: "Tarn H.", IsClub: "Tarn Harriers", By: "desk"})
	d.shows(dr, "club of 1 results Tarn H. → Tarn Harriers")
	d.keep(Correction{OtherClub: "TARN HARRIERS", IsClub: "Tarn Harriers", By: "desk"})
	d.want("answered", list(), "Wick Runners; Tarn Harriers/Tarn H.; Tarn Runners")
	d.want("members", d.text("select club from main.members"), "Tarn Harriers")
	d.want("results", d.text("select count(*) from main.results where club = 'Tarn Harriers'"), "4")
	d.keep(Correction{Undo: 1, By: "desk"})
	d.keep(Correction{OtherClub: "Tarn H.", IsClub: "Tarn Harriers", NotTheClub: true, By: "desk"})
	d.want("two clubs", list(), "Wick Runners; Tarn Harriers; Tarn H.; Tarn Runners")
	if _, err := d.pl.Decide(context.Background(), Correction{OtherClub: "Nowhere", IsClub: "Tarn Harriers"}); err == nil || !strings.Contains(err.Error(), "lapwing clubs") {
		t.Errorf("a club that nobody has: %v", err)
	}
}

// A decision that somebody wrote wrongly names its row and what to do.
func TestBadDecisionNamesItsRow(t *testing.T) {
	d := newDesk(t, threeWeeks())
	head := strings.Join(decisionColumns, ",") + "\n"
	hash := d.text("select hash from sheet.sheet where path = 'alder-bank_2026-01-03.csv'")
	for row, says := range map[string]string{
		"1,,,time," + hash + ",,2,,,,,2431,,":   `time "2431": write it as in 24:31`,
		"1,,,sex," + hash + ",,2,,,,,boy,,":     "write M, W, X",
		"1,,,place," + hash + ",,2,,,,,last,,":  "whole number",
		"1,,,legend," + hash + ",,2,,,,,x,,":    "is not known; write one of",
		"1,,,run state,,,,,,,,cancelled,,":      "needs the course and the date",
		"1,,,hide,,,,Ada,,,,,,":                 "runner's id",
		"1,,,record," + hash + ",,2,,,,,fast,,": "confirmed or void",
		"1,,,club name,,,,,,,,Tarn,,":           "the other name, =, and",
		"1,,,time,,,,,,,,24:31,,":               "needs the sheet and the row",
	} {
		d.write(map[string]string{"archive/decisions.csv": head + "\n" + row + "\n"})
		_, err := d.pl.Refresh(context.Background(), false)
		if err == nil || !strings.Contains(err.Error(), "decisions.csv, row 3") || !strings.Contains(err.Error(), says) || !strings.Contains(err.Error(), "Correct that row") {
			t.Errorf("%s: %v", row, err)
		}
		// one that was taken back does no harm
		d.write(map[string]string{"archive/decisions.csv": head + row + "\n2,,,take back,,,,,,,,1,,\n"})
		if _, err := d.pl.Refresh(context.Background(), false); err != nil {
			t.Errorf("%s, taken back: %v", row, err)
		}
	}
}

// Whoever is erased leaves no opening balance behind.
func TestForgetOpeningBalance(t *testing.T) {
	d := newDesk(t, threeWeeks())
	d.keep(Correction{Person: "Cora Vale", RunsBefore: "8", BestBefore: "24:20", By: "desk", Why: "Cora Vale said so"})
	plan, err := d.pl.PlanForget(context.Background(), "Cora Vale")
	if err != nil {
		t.Fatal(err)
	}
	if plan.Decisions != 2 {
		t.Errorf("%d decisions to be erased, want 2", plan.Decisions)
	}
	if err := plan.Do(context.Background()); err != nil {
		t.Fatal(err)
	}
	ds, err := d.pl.Decisions()
	if err != nil || len(ds) != 0 {
		t.Errorf("left: %+v, %v", ds, err)
	}
}

// A record or best from before the sheets that nobody can have run, such as one
// over another distance, is asked about and counts for nothing.
func TestHeldTimesAreChecked(t *testing.T) {
	files := threeWeeks()
	files["archive/history.csv"] += "record,alder-bank,Old Hand,M,,,,11:30,2019-05-04\nrecord,alder-bank,Old Hand,M,,3000,,10:30,2019-05-04\nbest before,alder-bank,Ada Moss,,,,,11:10,2019-05-04\nbest before,alder-bank,Ben Reed,,,3000,,11:10,2019-05-04\n"
	d := newDesk(t, files)
	d.want("held", d.text("select distance_m || ' ' || time_s from main.held_records order by all"), "3000 630")
	if p := d.problems("held-record"); strings.Count(p, "not faster than 12:49") != 1 || !strings.Contains(p, "no distance of this course") {
		t.Errorf("records: %s", p)
	}
	if p := d.problems("opening-time"); strings.Count(p, "Ada Moss, best before 11:10") != 1 || strings.Contains(p, "Ben") {
		t.Errorf("bests: %s", p)
	}
	d.want("Ada's best", d.text("select best_s from main.runners where name = 'Ada Moss'"), "1200")
}
