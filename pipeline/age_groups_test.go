package pipeline

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
)

// setting opens the archive again with other settings and brings the figures up to date.
func (d *desk) setting(set func(*Settings), how Mode) {
	d.t.Helper()
	ctx := context.Background()
	if err := d.pl.Close(); err != nil {
		d.t.Fatal(err)
	}
	s := DefaultSettings()
	s.Archive = filepath.Join(d.dir, "archive")
	set(&s)
	if err := s.Check(); err != nil {
		d.t.Fatal(err)
	}
	pl, err := Open(ctx, s, how, nil)
	if err != nil {
		d.t.Fatal(err)
	}
	*d.pl = *pl
	if _, err := d.pl.Refresh(ctx, false); err != nil {
		d.t.Fatal(err)
	}
}

func byTheDay(s *Settings)  {}
func byTheYear(s *Settings) { s.AgeGroups = ageGroupsByYear }

// byTheSeason is a season from September, by the age reached in the year in which it ends.
func byTheSeason(s *Settings) {
	s.AgeGroups, s.AgeGroupsYear, s.SeasonStart = ageGroupsByYear, ageGroupsSeasonEnd, "09-01"
}
func juniorsByTheYear(s *Settings) { s.AgeGroups = ageGroupsJuniorsByYear }

func newGroupsDesk(t *testing.T) *desk {
	const classes = "Pos,Name,Time,Cat,Sex\n1,Ben Reed,18:00,M35,M\n2,Ada Moss,19:00,W40,W\n3,Cleo Finch,20:00,WU20,W\n4,Ivo Tarn,21:00,M50,M\n5,Nan Rook,22:00,WU18,W\n"
	years := func(minute int) string {
		return fmt.Sprintf("Pos,Name,Time,YoB,Sex\n1,Kim Vale,%[1]d:30,1986,M\n2,Dan Hale,%[1]d:40,2008,M\n3,Eva Lind,%[1]d:50,2006,W\n4,Gus Peel,%[1]d:59,1996,M\n", minute)
	}
	return newDesk(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": classes,
		"sheets/birch-lea_2026-03-07.csv":  years(18),
		"sheets/birch-lea_2026-10-03.csv":  years(19),
		"sheets/cold-ash_2026-06-06.csv":   "Pos,Name,Time,YoB,Cat,Sex\n1,Leap Vale,22:00,1984-02-29,M40,M\n",
	})
}

const groupsOfAll = "select string_agg(name || ' ' || run_date::varchar || ' ' || coalesce(age_group, '-'), ', ' order by name, run_date) from main.results"

const rankedOfAll = "select string_agg(concat_ws(' ', sex, first_age, runner_no, time_s), ',' order by sex, first_age, runner_no, run_no) from insight.ranked"

// Groups of one archive by each rule. A class on a sheet is certain by the rule that the archive
// goes by; somebody of whom the year of birth is known has a group by the year and, unless no
// birthday of the year changes it, none by the day.
func TestAgeGroupsByTheRule(t *testing.T) {
	d := newGroupsDesk(t)
	check := func(what string) {
		t.Helper()
		if faults, _, err := d.pl.Check(context.Background()); err != nil || len(faults) > 0 {
			t.Errorf("%s: %v %v", what, faults, err)
		}
	}
	const protected = "select string_agg(distinct name, ', ' order by name) from main.results where protected"
	at := map[string]string{}
	for _, c := range []struct {
		what             string
		set              func(*Settings)
		groups, children string
	}{
		{"by the year", byTheYear, "Ada Moss 2026-01-03 W40, Ben Reed 2026-01-03 M35, Cleo Finch 2026-01-03 U20, Dan Hale 2026-03-07 U20, Dan Hale 2026-10-03 U20, " +
			"Eva Lind 2026-03-07 Senior, Eva Lind 2026-10-03 Senior, Gus Peel 2026-03-07 Senior, Gus Peel 2026-10-03 Senior, Ivo Tarn 2026-01-03 M50, " +
			"Kim Vale 2026-03-07 M40, Kim Vale 2026-10-03 M40, Leap Vale 2026-06-06 M40, Nan Rook 2026-01-03 -", "Cleo Finch, Dan Hale, Nan Rook"},
		{"juniors by the year", juniorsByTheYear, "Ada Moss 2026-01-03 W40, Ben Reed 2026-01-03 M35, Cleo Finch 2026-01-03 U20, Dan Hale 2026-03-07 U20, Dan Hale 2026-10-03 U20, " +
			"Eva Lind 2026-03-07 Senior, Eva Lind 2026-10-03 Senior, Gus Peel 2026-03-07 Senior, Gus Peel 2026-10-03 Senior, Ivo Tarn 2026-01-03 M50, " +
			"Kim Vale 2026-03-07 -, Kim Vale 2026-10-03 -, Leap Vale 2026-06-06 M40, Nan Rook 2026-01-03 -", "Cleo Finch, Dan Hale, Nan Rook"},
		{"by the season", byTheSeason, "Ada Moss 2026-01-03 W40, Ben Reed 2026-01-03 M35, Cleo Finch 2026-01-03 U20, Dan Hale 2026-03-07 U20, Dan Hale 2026-10-03 U20, " +
			"Eva Lind 2026-03-07 Senior, Eva Lind 2026-10-03 Senior, Gus Peel 2026-03-07 Senior, Gus Peel 2026-10-03 Senior, Ivo Tarn 2026-01-03 M50, " +
			"Kim Vale 2026-03-07 M40, Kim Vale 2026-10-03 M40, Leap Vale 2026-06-06 M40, Nan Rook 2026-01-03 -", "Cleo Finch, Dan Hale, Nan Rook"},
		{"by the day", byTheDay, "Ada Moss 2026-01-03 W40, Ben Reed 2026-01-03 M35, Cleo Finch 2026-01-03 U20, Dan Hale 2026-03-07 -, Dan Hale 2026-10-03 -, " +
			"Eva Lind 2026-03-07 -, Eva Lind 2026-10-03 -, Gus Peel 2026-03-07 Senior, Gus Peel 2026-10-03 Senior, Ivo Tarn 2026-01-03 M50, " +
			"Kim Vale 2026-03-07 -, Kim Vale 2026-10-03 -, Leap Vale 2026-06-06 M40, Nan Rook 2026-01-03 -", "Dan Hale, Nan Rook"},
	} {
		d.setting(c.set, ReadWrite)
		d.want(c.what, d.text(groupsOfAll), c.groups)
		d.want(c.what+": children", d.text(protected), c.children)
		check(c.what)
		now := d.text(groupsOfAll) + d.text(rankedOfAll) +
			d.text("select string_agg(name || coalesce(age_group, '-'), ',' order by name) from main.runners")
		d.setting(c.set, Afresh)
		again := d.text(groupsOfAll) + d.text(rankedOfAll) +
			d.text("select string_agg(name || coalesce(age_group, '-'), ',' order by name) from main.runners")
		d.want(c.what+", made again", again, now)
		at[c.what] = now
	}
	if at["by the year"] == at["by the day"] {
		t.Error("the setting changes nothing")
	}
}

// Who ranks in a group, and what group a runner is in now, go by the rule: born in 1986, somebody
// is in M40 from New Year on.
func TestRankingsGoByTheRule(t *testing.T) {
	d := newGroupsDesk(t)
	const ranked = "select string_agg(w.name || ' ' || r.first_age, ', ' order by w.name, r.run_no) from insight.ranked r join record.runner w using (runner_no) where r.sex = 1 and r.first_age >= 35"
	const now = "select string_agg(name || ' ' || coalesce(age_group, '-'), ', ' order by name) from main.runners where sex = 'M' and name in ('Kim Vale', 'Ben Reed', 'Dan Hale')"
	d.want("ranked by the day", d.text(ranked), "Ben Reed 35, Ivo Tarn 50, Leap Vale 40")
	d.want("runners by the day", d.text(now), "Ben Reed M35, Dan Hale -, Kim Vale -")
	d.setting(byTheYear, ReadWrite)
	d.want("ranked by the year", d.text(ranked), "Ben Reed 35, Ivo Tarn 50, Kim Vale 40, Kim Vale 40, Leap Vale 40")
	d.want("runners by the year", d.text(now), "Ben Reed M35, Dan Hale U20, Kim Vale M40")
	// Age grades go by the age on the day all the same: of two ages they have two ends.
	d.want("age grade", d.text("select (age_grade_low < age_grade_high)::varchar from main.results where name = 'Kim Vale' and run_date = '2026-03-07'"), "true")
	d.want("age on the day", d.text("select age_low || '-' || age_high from main.results where name = 'Kim Vale' and run_date = '2026-03-07'"), "39-40")
}

// A season from September has one group for everybody from its first day to its last.
func TestGroupsOfASeason(t *testing.T) {
	sheet := func(minute int) string {
		return fmt.Sprintf("Pos,Name,Time,YoB,Sex\n1,Kim Vale,%[1]d:30,1986,M\n2,Jo Lake,%[1]d:50,1987,W\n", minute)
	}
	d := newDesk(t, map[string]string{
		"sheets/alder-bank_2025-08-30.csv": sheet(18), "sheets/alder-bank_2025-09-06.csv": sheet(19),
		"sheets/alder-bank_2026-08-29.csv": sheet(20), "sheets/alder-bank_2026-09-05.csv": sheet(21),
	})
	const groups = "select string_agg(coalesce(age_group, '-'), ' ' order by run_date) from main.results where name = ?"
	for _, c := range []struct {
		set      func(*Settings)
		kim, jos string
	}{
		{byTheDay, "M35 M35 - -", "W35 W35 W35 W35"},
		{byTheYear, "M35 M35 M40 M40", "W35 W35 W35 W35"},
		{byTheSeason, "M35 M40 M40 M40", "W35 W35 W35 W40"},
	} {
		d.setting(c.set, ReadWrite)
		d.want(d.pl.Settings.AgeRule().Words()+" Kim", d.text(groups, "Kim Vale"), c.kim)
		d.want(d.pl.Settings.AgeRule().Words()+" Jo", d.text(groups, "Jo Lake"), c.jos)
	}
}

// What the desk writes as a group is the group that is printed, by whatever rule; what a decision
// changes is told as such; and a record from before stands in the group that it names.
func TestGroupsByHandGoByTheRule(t *testing.T) {
	d := newGroupsDesk(t)
	d.write(map[string]string{"archive/history.csv": "fact,course,name,sex,age_group,distance_m,finishes,time,date\nrecord,birch-lea,Hal Wick,M,M40,5000,,17:10,2019-05-04\nrecord,birch-lea,Hal Dean,M,M45,5000,,17:20,\n"})
	for _, set := range []func(*Settings){byTheDay, byTheYear, byTheSeason, juniorsByTheYear} {
		d.setting(set, ReadWrite)
		rule := d.pl.Settings.AgeRule().Words()
		d.want(rule+" held", d.text("select string_agg(name || ' ' || age_group, ', ' order by name) from main.held_records"), "Hal Dean M45, Hal Wick M40")
		if p := d.problems("held-record"); p != "" {
			t.Errorf("%s: %s", rule, p)
		}
	}
	d.setting(byTheYear, ReadWrite)
	c := on("2026-01-03", 1)
	c.Group = "M40"
	draft := d.keep(c)
	d.shows(draft, "age group", "M35", "M40")
	for _, set := range []func(*Settings){byTheYear, byTheSeason, byTheDay} {
		d.setting(set, ReadWrite)
		d.want(d.pl.Settings.AgeRule().Words(), d.text("select age_group from main.results where name = 'Ben Reed'"), "M40")
	}
}

func TestAgeRuleOfSettings(t *testing.T) {
	for _, c := range []struct {
		set  func(*Settings)
		want string // "" for a rule that is refused
	}{
		{byTheDay, "Age groups go by the age on the day."},
		{byTheYear, "Age groups go by the age reached on 31 December of the year."},
		{byTheSeason, "Age groups go by the age reached on 31 December of the year in which the season ends."},
		{func(s *Settings) { byTheYear(s); s.AgeGroupsOn = "08-31" }, "Age groups go by the age reached on 31 August of the year."},
		{func(s *Settings) { s.AgeGroups = "Year" }, ""},
		{func(s *Settings) { byTheYear(s); s.AgeGroupsOn = "31-12" }, ""},
		{func(s *Settings) { byTheYear(s); s.AgeGroupsOn = "12-31 " }, ""},
		{func(s *Settings) { byTheYear(s); s.AgeGroupsYear = "" }, ""},
		{func(s *Settings) { s.AgeGroupsYear = ageGroupsSeasonEnd }, ""},
	} {
		s := DefaultSettings()
		c.set(&s)
		switch err := s.Check(); {
		case c.want == "" && (err == nil || !strings.Contains(err.Error(), "age_groups")):
			t.Errorf("%q %q %q: %v", s.AgeGroups, s.AgeGroupsOn, s.AgeGroupsYear, err)
		case c.want != "" && (err != nil || s.AgeRule().Words() != c.want):
			t.Errorf("%q: %v, want %q", s.AgeRule().Words(), err, c.want)
		}
	}
	a, b := DefaultSettings(), DefaultSettings()
	b.SeasonStart = "09-01"
	if a.ageRuleKey() != b.ageRuleKey() {
		t.Error("groups by the day have to do with the season")
	}
}

// A record from before whose holder may have been under 18 is shown to nobody: of a junior
// group, and of any group that reaches below 18 on the day by the groups and the rule in force.
func TestHeldRecordsOfMinors(t *testing.T) {
	d := newGroupsDesk(t)
	d.write(map[string]string{"archive/history.csv": "fact,course,name,sex,age_group,distance_m,finishes,time,date\n" +
		"record,birch-lea,Al Wick,M,Senior,5000,,17:10,2019-05-04\nrecord,birch-lea,Bo Dean,M,M40,5000,,17:20,2019-05-04\nrecord,birch-lea,Cy Holt,M,,5000,,17:00,2019-05-04\n"})
	const held = "select string_agg(name || ' ' || coalesce(age_group, 'all') || ' ' || protected, ', ' order by name) from main.held_records"
	for want, set := range map[string]func(*Settings){
		"Al Wick Senior false, Bo Dean M40 false, Cy Holt all false":  byTheSeason,
		"Al Wick Senior true, Bo Dean M40 false, Cy Holt all false":   func(s *Settings) { s.AgeGroupsUnder = []int{14, 16} },
		"Al Wick Senior false, Bo Dean M40 false, Cy Holt all false ": func(s *Settings) { s.AgeGroupsUnder = []int{14, 16, 18} },
		"Al Wick Senior true, Bo Dean M40 false, Cy Holt all false ":  func(s *Settings) { byTheYear(s); s.AgeGroupsUnder = []int{14, 16, 18} },
	} {
		d.setting(set, ReadWrite)
		d.want(d.pl.Settings.AgeRule().Scheme.Words()+"; "+d.pl.Settings.AgeRule().Words(), d.text(held), strings.TrimSpace(want))
	}
}
