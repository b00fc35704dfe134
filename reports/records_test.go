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
