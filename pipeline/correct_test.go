package pipeline

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// desk is a small archive at work: sheets and side tables written as text.
type desk struct {
	t   *testing.T
	dir string
	pl  *Pipeline
}

func newDesk(t *testing.T, files map[string]string) *desk {
	t.Helper()
	d := &desk{t: t, dir: t.TempDir()}
	d.write(files)
	d.pl = openForTest(t, d.dir)
	d.load()
	return d
}

func (d *desk) write(files map[string]string) {
	d.t.Helper()
	for name, text := range files {
		p := filepath.Join(d.dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			d.t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			d.t.Fatal(err)
		}
	}
}

func (d *desk) load() {
	d.t.Helper()
	loadForTest(d.t, d.pl, filepath.Join(d.dir, "sheets"))
}

// draft tries a correction.
func (d *desk) draft(c Correction) *Draft {
	d.t.Helper()
	ds, err := d.pl.Decide(context.Background(), c)
	if err != nil {
		d.t.Fatal(err)
	}
	out, err := d.pl.Draft(context.Background(), ds)
	if err != nil {
		d.t.Fatal(err)
	}
	return out
}

// keep keeps a correction.
func (d *desk) keep(c Correction) *Draft {
	d.t.Helper()
	out := d.draft(c)
	if err := out.Keep(context.Background()); err != nil {
		d.t.Fatal(err)
	}
	if did, err := d.pl.Refresh(context.Background(), false); err != nil || did {
		d.t.Fatalf("after keeping a decision figures are %v out of date (%v)", did, err)
	}
	return out
}

// text asks for one text, "" where there is no row or NULL.
func (d *desk) text(query string, args ...any) string {
	d.t.Helper()
	rows, err := d.pl.DB.QueryContext(context.Background(), query, args...)
	if err != nil {
		d.t.Fatalf("%s: %v", query, err)
	}
	defer rows.Close()
	var all []string
	for rows.Next() {
		var s *string
		if err := rows.Scan(&s); err != nil {
			d.t.Fatal(err)
		}
		if s == nil {
			all = append(all, "–")
		} else {
			all = append(all, *s)
		}
	}
	return strings.Join(all, " ")
}

// place tells who and what stands at a place of a run.
func (d *desk) place(course, date string, position int) string {
	d.t.Helper()
	return d.text(`select coalesce(name, '–') || ' ' || status || ' ' || coalesce((time_s // 60) || ':' || lpad((time_s % 60)::varchar, 2, '0'), '–') from main.results
		where course = ? and run_date = ?::date and position = ? and status not in ('repeat', 'superseded')`, course, date, position)
}

func (d *desk) want(what, got, want string) {
	d.t.Helper()
	if got != want {
		d.t.Errorf("%s: got %q, want %q", what, got, want)
	}
}

// shows fails unless each text is part of a change.
func (d *desk) shows(dr *Draft, texts ...string) {
	d.t.Helper()
	var lines []string
	for _, c := range dr.Changes {
		lines = append(lines, c.String())
	}
	for _, want := range texts {
		if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, want) }) {
			d.t.Errorf("no change says %q; they say\n  %s", want, strings.Join(lines, "\n  "))
		}
	}
}

func (d *desk) problems(kind string) string {
	return d.text("select read || ' | ' || expected || ' | ' || todo from sheet.problem where kind = ? order by 1", kind)
}

// week is a sheet: place, name, time, group, sex, club a line.
func week(lines ...string) string {
	return "Pos,Name,Time,Age Group,Sex,Club\n" + strings.Join(lines, "\n") + "\n"
}

// threeWeeks are three runs of one course; place 3 of the second is unnamed.
func threeWeeks() map[string]string {
	return map[string]string{
		"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers", "2,Ben Reed,21:00,M45,M,Wick Runners", "3,Cora Vale,25:00,W35,W,", "4,Dan Thorne,26:00,M50,M,Wick Runners"),
		"sheets/alder-bank_2026-01-10.csv": week("1,Ada Moss,20:10,W40,W,Tarn Harriers", "2,Ben Reed,21:10,M45,M,Wick Runners", "3,Unknown,24:30,,,", "4,Dan Thorne,26:10,M50,M,Wick Runners"),
		"sheets/alder-bank_2026-01-17.csv": week("1,Ada Moss,20:20,W40,W,Tarn Harriers", "2,Ben Reed,21:20,M45,M,Wick Runners", "3,Cora Vale,24:40,W35,W,", "4,Dan Thorne,26:20,M50,M,Wick Runners"),
		"archive/history.csv":              "fact,course,name,sex,age_group,distance_m,finishes,time,date\nbegan,alder-bank,,,,,,,2026-01-03\n",
	}
}

func mustDay(t *testing.T, s string) unit.Day {
	t.Helper()
	d, err := unit.ParseDay(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func on(date string, place int) Correction {
	return Correction{Course: "Alder Bank", Date: date, Place: place, By: "desk"}
}

// A claim shows what it changes in other weeks before it is kept: the best of
// the week before is a PB now, the one of the week after no longer; the streak
// is longer. Undone, everything is as it was.
func TestClaim(t *testing.T) {
	d := newDesk(t, threeWeeks())
	figures := func() string {
		return d.text("select string_agg(run_date || coalesce(name, '–') || is_pb || coalesce(runs_total, 0) || coalesce(attendance_streak, 0) || status, ';' order by run_date, position) from main.results")
	}
	before := figures()
	d.want("best before", d.text("select time_s::varchar from main.results where name = 'Cora Vale' and is_pb"), "1480")
	claim := on("2026-01-10", 3)
	claim.Name = "Cora Vale"
	dr := d.draft(claim)
	d.shows(dr, "place 3: whose result nobody → Cora Vale", "2026-01-10, place 3: personal best no → yes", "2026-01-17, place 3: personal best yes → no",
		"runs in all 2 → 3", "weeks in a row 1 → 3", "place 3: status unnamed → ok")
	d.want("a trial writes nothing", figures(), before)
	if _, err := os.Stat(d.pl.Archive.File("decisions.csv")); err == nil {
		t.Error("a trial has written decisions.csv")
	}
	if err := dr.Keep(context.Background()); err != nil {
		t.Fatal(err)
	}
	d.want("place 3", d.place("alder-bank", "2026-01-10", 3), "Cora Vale ok 24:30")
	d.want("best", d.text("select time_s::varchar from main.results where name = 'Cora Vale' and is_pb"), "1470")
	again := figures()
	if _, err := d.pl.Refresh(context.Background(), true); err != nil {
		t.Fatal(err)
	}
	d.want("figures from scratch", figures(), again)

	d.keep(Correction{Undo: 1, By: "desk"})
	d.want("figures after undoing", figures(), before)
	if _, err := d.pl.Decide(context.Background(), Correction{Undo: 1}); err == nil || !strings.Contains(err.Error(), "not in force") {
		t.Errorf("undone twice: %v", err)
	}
}

// Two people claim one place: nobody has it until one claim is taken back.
func TestTwoClaims(t *testing.T) {
	d := newDesk(t, threeWeeks())
	claim := on("2026-01-10", 3)
	claim.Name = "Cora Vale"
	d.keep(claim)
	claim.Name = "Edie Wick"
	dr := d.keep(claim)
	if len(dr.Asks) != 1 || !strings.Contains(dr.Asks[0], "Cora Vale (decision 1) and Edie Wick (decision 2)") {
		t.Errorf("the desk is asked %q", dr.Asks)
	}
	d.want("contested place", d.place("alder-bank", "2026-01-10", 3), "– unnamed 24:30")
	if p := d.problems("two-claims"); !strings.Contains(p, "lapwing correct --undo 1 or lapwing correct --undo 2") {
		t.Errorf("the problem says %q", p)
	}
	list, err := d.pl.DecisionList(context.Background())
	if err != nil || len(list) != 2 || list[0].State != "contested" || list[1].State != "contested" {
		t.Errorf("list of decisions: %+v %v", list, err)
	}
	d.keep(Correction{Undo: 1, By: "desk"})
	d.want("one claim left", d.place("alder-bank", "2026-01-10", 3), "Edie Wick ok 24:30")
	d.want("nothing to ask", d.problems("two-claims"), "")
}

func TestCorrections(t *testing.T) {
	d := newDesk(t, threeWeeks())
	at := func(change func(*Correction)) {
		t.Helper()
		c := on("2026-01-10", 2)
		change(&c)
		d.keep(c)
	}
	line := func(column string) string {
		return d.text("select (" + column + ")::varchar from main.results where run_date = '2026-01-10' and position = 2")
	}
	at(func(c *Correction) { c.Time = "20:55" })
	d.want("time", line("time_s"), "1255")
	at(func(c *Correction) { c.Club = "Fell & Wick" })
	d.want("club", line("club"), "Fell & Wick")
	at(func(c *Correction) { c.TakingPart = "pacer" })
	d.want("taking part as", line("taking_part_as || counts_run || counts_time"), "pacertruefalse")
	at(func(c *Correction) { c.TakingPart = "runner" })
	at(func(c *Correction) { c.Status = "dq" })
	d.want("disqualified", line("status || counts_run"), "dqfalse")
	at(func(c *Correction) { c.Status = "ok" })
	d.want("reinstated", line("status || counts_time"), "oktrue")
	at(func(c *Correction) { c.Name = "Benjamin Reed" })
	if got := line("name_received"); got != "Ben Reed" {
		t.Errorf("the sheet's name is not kept: %q", got)
	}

	cora := on("2026-01-17", 3)
	cora.Group, cora.Sex = "W50", "W"
	dr := d.keep(cora)
	d.shows(dr, "age on the day")
	d.want("age", d.text("select age_low || '–' || age_high from main.results where run_date = '2026-01-17' and position = 3"), "50–54")
}

// Exchanged codes: two people stand for each other; place and time stay.
func TestExchange(t *testing.T) {
	d := newDesk(t, threeWeeks())
	c := on("2026-01-17", 2)
	c.ExchangeWith = 4
	dr := d.keep(c)
	d.shows(dr, "place 2: whose result Ben Reed (R", "place 4: whose result Dan Thorne (R")
	d.want("place 2", d.place("alder-bank", "2026-01-17", 2), "Dan Thorne ok 21:20")
	d.want("place 4", d.place("alder-bank", "2026-01-17", 4), "Ben Reed ok 26:20")
	d.want("group of place 2", d.text("select age_group from main.results where run_date = '2026-01-17' and position = 2"), "M50")
	d.keep(Correction{Undo: 1})
	d.want("place 2 after undoing", d.place("alder-bank", "2026-01-17", 2), "Ben Reed ok 21:20")
}

// A place that was claimed for a known runner can be exchanged afterwards: the
// claim goes along.
func TestExchangeAfterAClaim(t *testing.T) {
	d := newDesk(t, threeWeeks())
	claim := on("2026-01-10", 3)
	claim.Name = "Cora Vale"
	d.keep(claim)
	c := on("2026-01-10", 2)
	c.ExchangeWith = 3
	d.keep(c)
	d.want("place 2", d.place("alder-bank", "2026-01-10", 2), "Cora Vale ok 21:10")
	d.want("place 3", d.place("alder-bank", "2026-01-10", 3), "Ben Reed ok 24:30")
	d.want("nobody twice", d.problems("person-twice"), "")
}

func TestRunState(t *testing.T) {
	d := newDesk(t, threeWeeks())
	short := Correction{Course: "alder-bank", Date: "2026-01-17", State: "Short by 120m"}
	dr := d.keep(short)
	d.shows(dr, "place 3: personal best yes → no", "counts as a run and a time → as a run")
	d.want("state", d.text("select state || ' ' || off_m from main.runs where run_date = '2026-01-17'"), "short 120")
	d.want("times count", d.text("select count(*)::varchar from main.results where run_date = '2026-01-17' and counts_time"), "0")
	short.State = "held"
	d.keep(short)
	d.want("times count again", d.text("select count(*)::varchar from main.results where run_date = '2026-01-17' and counts_time"), "4")

	// a cancelled week keeps a streak: Ada runs on 3, 10, 17 and 31 January
	d.write(map[string]string{
		"sheets/alder-bank_2026-01-24.csv": week("1,Ben Reed,21:00,M45,M,Wick Runners"),
		"sheets/alder-bank_2026-01-31.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers"),
	})
	d.load()
	streak := "select attendance_streak::varchar from main.results where run_date = '2026-01-31' and name = 'Ada Moss'"
	d.want("streak over a missed week", d.text(streak), "1")
	if _, err := d.pl.SetState(context.Background(), "alder-bank_2026-01-24.csv", "withdrawn"); err != nil {
		t.Fatal(err)
	}
	if _, err := d.pl.Refresh(context.Background(), false); err != nil {
		t.Fatal(err)
	}
	d.keep(Correction{Course: "alder-bank", Date: "2026-01-24", State: "cancelled"})
	d.want("streak over a cancelled week", d.text(streak), "4")
}

// A later sheet of the run: one that agrees satisfies the decision, one that
// says what the first said takes it over, one that says a third thing asks.
func TestDecisionsAndALaterSheet(t *testing.T) {
	for _, c := range []struct{ name, third, state, place, asks string }{
		{"agrees", "3,Cora Vale,24:30,W35,W,", "satisfied", "Cora Vale ok 24:30", ""},
		{"says nothing new", "3,Unknown,24:30,,,", "in force", "Cora Vale ok 24:30", ""},
		{"says another", "3,Edie Wick,24:30,W20,W,", "contradicted", "Edie Wick ok 24:30", "Edie Wick | Cora Vale"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := newDesk(t, threeWeeks())
			claim := on("2026-01-10", 3)
			claim.Name = "Cora Vale"
			d.keep(claim)
			d.write(map[string]string{"sheets/later/alder-bank_2026-01-10.csv": week("1,Ada Moss,20:10,W40,W,Tarn Harriers", "2,Ben Reed,21:11,M45,M,Wick Runners", c.third, "4,Dan Thorne,26:10,M50,M,Wick Runners", "5,Finn Moss,30:00,M20,M,")})
			d.load()
			d.want("place 3", d.place("alder-bank", "2026-01-10", 3), c.place)
			list, err := d.pl.DecisionList(context.Background())
			if err != nil || len(list) != 1 {
				t.Fatalf("%v %v", list, err)
			}
			d.want("state", list[0].State, c.state)
			if got := d.problems("decision-contradicted"); !strings.HasPrefix(got, c.asks) || c.asks == "" && got != "" {
				t.Errorf("the desk is asked %q, want %q", got, c.asks)
			}
		})
	}
}

// A corrected time goes over to a later sheet, on which the finisher stands
// one place further down.
func TestDecisionMovesWithTheFinisher(t *testing.T) {
	d := newDesk(t, threeWeeks())
	c := on("2026-01-10", 3)
	c.Name = "Cora Vale"
	d.keep(c)
	d.write(map[string]string{"sheets/later/alder-bank_2026-01-10.csv": week("1,Ada Moss,20:10,W40,W,Tarn Harriers", "2,Ben Reed,21:10,M45,M,Wick Runners", "3,Finn Moss,23:00,M20,M,", "4,Unknown,24:30,,,", "5,Dan Thorne,26:10,M50,M,Wick Runners")})
	d.load()
	d.want("place 3", d.place("alder-bank", "2026-01-10", 3), "Finn Moss ok 23:00")
	d.want("place 4", d.place("alder-bank", "2026-01-10", 4), "Cora Vale ok 24:30")
}

func TestPersonDecisions(t *testing.T) {
	d := newDesk(t, threeWeeks())
	dr := d.keep(Correction{Person: "Ben Reed", PrintName: "Bea Reed", Category: "W", By: "desk"})
	d.shows(dr, "sex M → W", "Ben Reed → Bea Reed")
	d.want("name over all history", d.text("select distinct name || name_received || sex from main.results where name like '%Reed'"), "Bea ReedBea ReedW")
	d.want("group over all history", d.text("select distinct age_group from main.results where name = 'Bea Reed'"), "W45")
	var said bytes.Buffer
	if err := d.pl.Explain(context.Background(), "alder-bank_2026-01-10.csv:3", &said); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(said.String(), "Ben") || strings.Contains(said.String(), `"M45"`) || !strings.Contains(said.String(), "as Bea Reed wishes") {
		t.Errorf("explain tells the former name or category:\n%s", said.String())
	}
	d.keep(Correction{Person: "Dan Thorne", Hide: true})
	d.want("hidden", d.text("select count(*)::varchar from main.results where hidden and name = 'Dan Thorne'"), "3")
	if _, err := d.pl.Decide(context.Background(), Correction{Person: "Otto Quillfeather", Hide: true}); err == nil {
		t.Error("somebody unknown could be hidden")
	}
}

func TestWhatCannotBeDecided(t *testing.T) {
	d := newDesk(t, threeWeeks())
	for _, c := range []struct {
		change func(*Correction)
		says   string
	}{
		{func(c *Correction) { c.Place, c.Time = 9, "20:00" }, "has no place 9"},
		{func(c *Correction) { c.Date, c.Time = "2026-02-01", "20:00" }, "no result of alder-bank on 2026-02-01"},
		{func(c *Correction) { c.Date, c.Time = "3 January", "20:00" }, "not a date"},
		{func(c *Correction) { c.Time = "20.0" }, "24:31"},
		{func(c *Correction) { c.Name = "Sam & Jo Lee" }, "several people"},
		{func(c *Correction) { c.Name = "Unknown" }, "names nobody"},
		{func(c *Correction) { c.Group = "M43" }, "age group"},
		{func(c *Correction) { c.TakingPart = "jogger" }, "back marker"},
		{func(c *Correction) { c.ExchangeWith = 3 }, "itself"},
		{func(c *Correction) {}, "say what to correct at place 3"},
		{func(c *Correction) { c.Place, c.State = 0, "rained off" }, "cancelled"},
		{func(c *Correction) { c.Place, c.State = 0, "cancelled" }, "4 results of alder-bank on 10 January 2026 stand here, and a run that was cancelled has none"},
		{func(c *Correction) { c.Undo = 7 }, "no decision 7"},
	} {
		x := on("2026-01-10", 3)
		c.change(&x)
		if _, err := d.pl.Decide(context.Background(), x); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%+v: %v, want %q", x, err, c.says)
		}
	}
}

// The tie at place 2 is settled by naming the line.
func TestPlaceOnTwoLines(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,20:00,W40,W,", "2=,Ben Reed,21:00,M45,M,", "2=,Cora Vale,21:00,W35,W,", "4,Dan Thorne,26:00,M50,M,")})
	c := on("2026-01-03", 2)
	c.Time = "21:05"
	_, err := d.pl.Decide(context.Background(), c)
	if err == nil || !strings.Contains(err.Error(), `--line "alder-bank_2026-01-03.csv:4"`) {
		t.Fatalf("place 2 twice: %v", err)
	}
	c.Place, c.Line = 0, "alder-bank_2026-01-03.csv:4"
	d.keep(c)
	d.want("the line named", d.text("select name from main.results where time_s = 1265"), "Cora Vale")
}

// Men on the left and women on the right stand on one row: a decision is about
// one of the two.
func TestTablesSideBySide(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Time,Pos,Name,Time\n1,Ben Reed,20:00,1,Ada Moss,21:00\n2,Dan Vale,20:30,2,Unknown,22:00\n3,Hugh Thorne,21:30,3,Edie Lane,23:00\n"})
	c := on("2026-01-03", 2)
	c.Name = "Cora Wick"
	_, err := d.pl.Decide(context.Background(), c)
	if err == nil || !strings.Contains(err.Error(), `"alder-bank_2026-01-03.csv:3#2"`) {
		t.Fatalf("place 2 of men and women: %v", err)
	}
	c.Place, c.Line = 0, "alder-bank_2026-01-03.csv:3#2"
	d.keep(c)
	d.want("the women's second", d.text("select name from main.results where time_s = 1320"), "Cora Wick")
	d.want("the men's second", d.text("select name from main.results where time_s = 1230"), "Dan Vale")
	c.Name, c.Status = "", "dq"
	d.keep(c)
	d.want("disqualified", d.text("select string_agg(name, ',') from main.results where status = 'dq'"), "Cora Wick")
	d.forget("Cora Wick")
	d.want("forgotten", d.text("select string_agg(coalesce(name, '–') || status, ',' order by time_s) from main.results where row_number = 3"), "Dan Valeok,Anonymousdq")
}

func TestGroupByHand(t *testing.T) {
	for _, c := range []struct{ text, window string }{
		{"M45", "45–49"}, {"w40", "40–44"}, {"45-49", "45–49"}, {"42", "42–42"}, {"U18", "16–17"}, {"Senior", "20–34"}, {"F35", "35–39"},
		{"U11", "10–10"}, {"X50", "50–54"},
	} {
		w, _, err := parseGroupByHand(c.text, mustDay(t, "2026-06-15"), age.DefaultRule())
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		lo, hi, _ := w.On(mustDay(t, "2026-06-15"))
		if got := fmt.Sprintf("%d–%d", lo, hi); got != c.window {
			t.Errorf("%s: ages %s, want %s", c.text, got, c.window)
		}
	}
	for _, bad := range []string{"", "M43", "old", "U99", "50-40", "M", "MM45", "1850", "200"} {
		if w, _, err := parseGroupByHand(bad, mustDay(t, "2026-06-15"), age.DefaultRule()); err == nil {
			t.Errorf("%q is read as %v", bad, w)
		}
	}
}
