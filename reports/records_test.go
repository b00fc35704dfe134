package reports

import (
	"context"
	"fmt"
	"testing"
)

// A record from before the sheets is one of its age group and of all ages, in
// the season as in the week; a child's, and one over another distance, is none.
func TestRecordsFromBefore(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 8, 40, true)
	rows, err := db.QueryContext(ctx, `select min(time_s) from main.results where course = 'heron-mere' and sex = 'W' and counts_time and status = 'ok'
		and not protected and not hidden and taking_part_as in ('runner', 'guided')`)
	if err != nil {
		t.Fatal(err)
	}
	var fastest int32
	if rows.Next() {
		err = rows.Scan(&fastest)
	}
	if rows.Close(); err != nil || fastest == 0 {
		t.Fatalf("fastest woman %d, %v", fastest, err)
	}
	in := &inserter{t: t, db: db, ctx: ctx}
	in.exec(`insert into main.held_records values
		('heron-mere', 5000, 'W', 'W45', ` + fmt.Sprint(fastest-30) + `, 'Olga Marsh', null, date '2020-05-02', false, false, 2),
		('heron-mere', 5000, 'W', 'U12', ` + fmt.Sprint(fastest-60) + `, 'Child Marsh', null, date '2020-05-02', true, false, 3),
		('heron-mere', 3000, 'W', 'W50', ` + fmt.Sprint(fastest-90) + `, 'Short Marsh', null, date '2020-05-02', false, false, 4)`)
	// The fastest of the last run runs between the record and all others.
	in.exec(`update main.results set time_s = ` + fmt.Sprint(fastest-10) + ` where sex = 'W' and course = 'heron-mere' and run_date = (select max(run_date) from main.results)
		and position = (select min(position) from main.results where sex = 'W' and course = 'heron-mere' and run_date = (select max(run_date) from main.results)
			and counts_time and status = 'ok' and not protected and not hidden and age_group is not null and age_group <> 'W45')`)
	d, err := readSeason(ctx, db, Options{}, season2026(last))
	if err != nil {
		t.Fatal(err)
	}
	of := map[string]seasonRecord{}
	for _, r := range d.records {
		if r.course == "heron-mere" && r.sex == "W" {
			of[r.group] = r
		}
		if r.name == "Child Marsh" || r.name == "Short Marsh" {
			t.Errorf("%s stands on a list of the season", r.name)
		}
	}
	for _, group := range []string{"", "W45"} {
		if r := of[group]; r.name != "Olga Marsh" || r.time != fastest-30 || r.state != "earlier" {
			t.Errorf("season, group %q: %+v", group, r)
		}
	}
	w, err := readOne(ctx, db, Options{}, Run{"heron-mere", last, ""})
	if err != nil {
		t.Fatal(err)
	}
	groups := 0
	for _, r := range w.records {
		if r.sex == "W" && r.scope == "all ages" {
			t.Errorf("the week calls %d s the fastest of all women, was %d; %d stood", r.timeS, r.wasS, fastest-30)
		}
		if r.sex == "W" && r.scope == "group" && r.timeS == fastest-10 {
			groups++
		}
	}
	if groups != 1 {
		t.Errorf("the fastest of a group is told %d times", groups)
	}
}

// 18:20 held, 18:20 run: equalled, two holders. The fastest of a run is told, and who
// equals it; who has no right to a record is not.
func TestBeat(t *testing.T) {
	women := category{"all ages", "W", ""}
	w40 := category{"group", "W", "W40"}
	before := map[category]held{women: {timeS: 1100, runner: 1}, w40: {timeS: 1200, runner: 2}, {"all ages", "M", ""}: {timeS: 900, runner: 3}}
	row := func(runner string, timeS int32, change func(*resultRow)) resultRow {
		r := resultRow{runner: runner, timeS: &timeS, sex: "W", group: "W40", status: "ok", countsTime: true, takingPart: "runner"}
		if change != nil {
			change(&r)
		}
		return r
	}
	none := func(*resultRow) {}
	for _, c := range []struct {
		what string
		rows []resultRow
		want string
	}{
		{"equalled, and the group's broken", []resultRow{row("R7", 1100, none)}, "[all ages W 1100 was 1100 by 1 group W W40 1100 was 1200 by 2]"},
		{"a second slower", []resultRow{row("R7", 1101, none)}, "[group W W40 1101 was 1200 by 2]"},
		{"a second faster", []resultRow{row("R7", 1099, none)}, "[all ages W 1099 was 1100 by 1 group W W40 1099 was 1200 by 2]"},
		{"slower than the group's", []resultRow{row("R7", 1201, none)}, "[]"},
		{"two who share it", []resultRow{row("R7", 1150, none), row("R8", 1150, none), row("R9", 1160, none)}, "[group W W40 1150 was 1200 by 2 group W W40 1150 was 1200 by 2]"},
		{"the first of a group", []resultRow{row("R7", 1150, func(r *resultRow) { r.group = "W45" })}, "[]"},
		{"guided", []resultRow{row("R7", 1150, func(r *resultRow) { r.takingPart = "guided" })}, "[group W W40 1150 was 1200 by 2]"},
		{"walker", []resultRow{row("R7", 1150, func(r *resultRow) { r.takingPart = "walker" })}, "[]"},
		{"void", []resultRow{row("R7", 1150, func(r *resultRow) { r.record = "void" })}, "[]"},
		{"may be a child", []resultRow{row("R7", 1150, func(r *resultRow) { r.protected = true })}, "[]"},
		{"hidden", []resultRow{row("R7", 1150, func(r *resultRow) { r.hidden = true })}, "[]"},
		{"neither M nor W", []resultRow{row("R7", 1150, func(r *resultRow) { r.sex = "X" })}, "[]"},
		{"doubtful", []resultRow{row("R7", 1150, func(r *resultRow) { r.status = "doubtful" })}, "[]"},
		{"does not count", []resultRow{row("R7", 1150, func(r *resultRow) { r.countsTime = false })}, "[]"},
		{"nobody", []resultRow{row("", 1150, none)}, "[]"},
		{"no time", []resultRow{row("R7", 1150, func(r *resultRow) { r.timeS = nil })}, "[]"},
		{"who has none hides nobody's", []resultRow{row("R7", 1050, func(r *resultRow) { r.record = "void" }), row("R8", 1150, none)}, "[group W W40 1150 was 1200 by 2]"},
	} {
		d := &weekly{results: c.rows}
		d.beat(before)
		got := []string{}
		for _, r := range d.records {
			words := r.scope + " " + r.sex
			if r.group != "" {
				words += " " + r.group
			}
			got = append(got, fmt.Sprintf("%s %d was %d by %d", words, r.timeS, r.wasS, r.holder))
		}
		if fmt.Sprint(got) != c.want {
			t.Errorf("%s: %v, want %s", c.what, got, c.want)
		}
	}
}

// Who equals a record of the season shares it, and the earlier stands first; the time
// before both is the one that was beaten.
func TestEqualRecordsAreShared(t *testing.T) {
	ctx := context.Background()
	db, last := district(t, 8, 40, true)
	in := &inserter{t: t, db: db, ctx: ctx}
	records := func() (out []seasonRecord) {
		d, err := readSeason(ctx, db, Options{}, season2026(last))
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range d.records {
			if r.course == "heron-mere" && r.sex == "W" && r.group == "" {
				out = append(out, r)
			}
		}
		return out
	}
	was := records()
	if len(was) != 1 {
		t.Fatalf("%d fastest women, want one", len(was))
	}
	// Somebody else, named, on the last day.
	in.exec(fmt.Sprintf(`update main.results set time_s = %d where run_date = date '%s' and course = 'heron-mere' and runner_id = (
		select min(runner_id) from main.results where run_date = date '%s' and course = 'heron-mere' and sex = 'W' and counts_time and status = 'ok'
			and not protected and not hidden and taking_part_as = 'runner' and runner_id <> '%s')`, was[0].time, last, last, was[0].runner))
	now := records()
	if len(now) != 2 || now[0].time != was[0].time || now[1].time != was[0].time || now[0].runner == now[1].runner || now[0].day > now[1].day {
		t.Fatalf("equalled: %+v, was %+v", now, was)
	}
	if now[0].runner != was[0].runner && now[1].runner != was[0].runner {
		t.Errorf("%s holds it no more: %+v", was[0].runner, now)
	}
	// A second slower is none.
	in.exec(fmt.Sprintf(`update main.results set time_s = time_s + 1 where run_date = date '%s' and course = 'heron-mere' and time_s = %d and runner_id <> '%s'`, last, was[0].time, was[0].runner))
	if again := records(); len(again) != 1 || again[0].runner != was[0].runner || again[0].day != was[0].day {
		t.Errorf("a second slower: %+v, want %+v", again, was)
	}
}
