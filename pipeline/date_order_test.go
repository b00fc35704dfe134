package pipeline

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// 03/04/2026 is settled by other sheets, loaded before or after it, by the weekday
// of the other runs, or asked about.
func TestOrderOfDayAndMonth(t *testing.T) {
	sheets := func(course, form string, days ...int) (out []string) {
		for _, d := range days {
			out = append(out, course+" "+fmt.Sprintf(form, d)+"\n")
		}
		return out
	}
	join := func(lists ...[]string) (out []string) {
		for _, l := range lists {
			out = append(out, l...)
		}
		return out
	}
	const dmy, mdy = "%02d/04/2026", "04/%02d/2026"
	const saturdays = "%d April 2026" // 4, 11, 18, 25
	for _, c := range []struct {
		name   string
		others []string
		asked  string // the title of the sheet in question
		want   string // its run, "" where it waits
		why    string
	}{
		{"nothing says", nil, "Alder Bank 03/04/2026", "", ""},
		{"another sheet of the course", sheets("Alder Bank", dmy, 17), "Alder Bank 03/04/2026", "alder-bank 2026-04-03", "as then both runs of the course that there are fall on a "}, // both Fridays
		{"another sheet of the course, month first", sheets("Alder Bank", mdy, 18), "Alder Bank 03/04/2026", "alder-bank 2026-03-04", "as on another sheet of this course"},
		{"a sheet of another course", sheets("Bittern Lock", dmy, 17), "Alder Bank 03/04/2026", "", ""},
		{"two sheets of other courses", sheets("Bittern Lock", dmy, 17, 24), "Alder Bank 03/04/2026", "alder-bank 2026-04-03", "as on 2 other sheets here"},
		{"three sheets of other courses", sheets("Bittern Lock", dmy, 17, 24, 30), "Alder Bank 03/04/2026", "alder-bank 2026-04-03", "as on 3 other sheets here"},
		{"both customs here", join(sheets("Bittern Lock", dmy, 17, 24, 30), sheets("Corvin Fell", mdy, 18)), "Alder Bank 03/04/2026", "", ""},
		{"the course's sheets and those of the others disagree", join(sheets("Bittern Lock", dmy, 17, 24, 30), sheets("Alder Bank", mdy, 18)), "Alder Bank 03/04/2026", "", ""},
		{"many sheets of the course against few others", join(sheets("Bittern Lock", dmy, 17), sheets("Alder Bank", mdy, 13, 14, 16, 17, 18, 19, 20)), "Alder Bank 03/04/2026", "alder-bank 2026-03-04", "as on 7 other sheets of this course"},
		{"the course's weekday", sheets("Alder Bank", saturdays, 11, 18, 25), "Alder Bank 04/05/2026", "", ""}, // a Monday and a Sunday
		{"the course's weekday, one fits", sheets("Alder Bank", saturdays, 11, 18, 25), "Alder Bank 02/05/2026", "alder-bank 2026-05-02", "as it falls on a Saturday then, like the course's other runs"},
		{"the course has both, its weekday says", join(sheets("Alder Bank", dmy, 25), sheets("Alder Bank", mdy, 18), sheets("Alder Bank", saturdays, 11)), "Alder Bank 02/05/2026", "alder-bank 2026-05-02", "as it falls on a Saturday then"},
		{"weekday and sheets of the course disagree", join(sheets("Alder Bank", saturdays, 11, 18, 25), sheets("Alder Bank", mdy, 18)), "Alder Bank 02/05/2026", "", ""},
		{"a sheet that waits too, and they are a week apart", []string{"Alder Bank 05/09/2026\n"}, "Alder Bank 12/09/2026", "alder-bank 2026-09-12", "as then both runs of the course that there are fall on a "},
		{"a sheet that waits too, month first", []string{"Alder Bank 09/05/2026\n"}, "Alder Bank 09/12/2026", "alder-bank 2026-09-12", "as then both runs of the course that there are fall on a "},
		{"a sheet that waits too, of another weekday under both orders", []string{"Alder Bank 06/09/2026\n"}, "Alder Bank 12/09/2026", "", ""},
		{"a sheet that waits too, of one weekday under both orders", []string{"Alder Bank 06/03/2026\n"}, "Alder Bank 03/04/2026", "", ""},
		{"a sheet that waits too, of another course", []string{"Bittern Lock 05/09/2026\n"}, "Alder Bank 12/09/2026", "", ""},
		{"a run whose date is the same in both orders", []string{"Alder Bank 08/08/2026\n"}, "Alder Bank 01/08/2026", "alder-bank 2026-08-01", "as then both runs of the course that there are fall on a "},
		{"a year far off", sheets("Alder Bank", saturdays, 11, 18, 25), "Alder Bank 31-03-25", "alder-bank 2025-03-31", "as the other readings lie years from all runs of the course"},
		{"a year far off, too few runs to say", sheets("Alder Bank", saturdays, 11, 18), "Alder Bank 31-03-25", "", ""},
		{"the day before the month by form", nil, "Alder Bank 03.04.2026", "alder-bank 2026-04-03", ""},
		{"a column of dates", sheets("Alder Bank", dmy, 17), "", "alder-bank 2026-04-03", "as then both runs of the course that there are fall on a "},
		{"times and names in two tables", sheets("Alder Bank", saturdays, 11, 18, 25), "halves", "alder-bank 2026-05-02", "as it falls on a Saturday then"},
		{"columns of dates and courses", sheets("Alder Bank", dmy, 17), "columns", "alder-bank 2026-04-03", "as then both runs of the course that there are fall on a "},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, when := range []string{"together", "before"} {
				dir := t.TempDir()
				pl := openForTest(t, dir)
				for i, title := range c.others {
					writeSheet(t, dir, fmt.Sprintf("in/z%d.csv", i), title+small)
				}
				asked := c.asked + "\n" + small
				if c.asked == "" {
					asked = "Alder Bank\n" + strings.NewReplacer("Time\n", "Time,Date\n", ":01\n", ":01,03/04/2026\n", ":02\n", ":02,03/04/2026\n", ":03\n", ":03,03/04/2026\n").Replace(small)
				}
				if c.asked == "columns" {
					asked = strings.NewReplacer("Time\n", "Time,Date,Course\n", ":01\n", ":01,03/04/2026,Alder Bank\n", ":02\n", ":02,03/04/2026,Alder Bank\n", ":03\n", ":03,03/04/2026,Alder Bank\n").Replace(small)
				}
				if c.asked == "halves" {
					asked = "Alder Bank 02/05/2026\nPos,Time\n1,20:01\n2,20:02\n3,20:03\n\nPos,Name\n1,Jo Lee\n2,Al Roe\n3,Cy Dee\n"
				}
				if when == "before" && len(c.others) > 0 {
					loadForTest(t, pl, filepath.Join(dir, "in"))
				}
				writeSheet(t, dir, "in/a.csv", asked)
				rep := loadForTest(t, pl, filepath.Join(dir, "in"))
				got, settled := "", ""
				for _, s := range rep.Sheets {
					if s.Path == "a.csv" && s.State == "loaded" {
						got, settled = s.Runs[0], s.Settled
					} else if s.Path == "a.csv" && !strings.Contains(s.Why, "date unclear") {
						t.Errorf("%s: %s", when, s.Why)
					}
				}
				if got != c.want || !strings.Contains(settled, c.why) || c.why == "" && settled != "" {
					t.Errorf("%s: read as %q (%s), want %q (%s)", when, got, settled, c.want, c.why)
				}
				if when == "before" {
					continue
				}
				if err := pl.startOver(context.Background()); err != nil {
					t.Fatal(err)
				}
				if _, err := pl.Refresh(context.Background(), true); err != nil {
					t.Fatal(err)
				}
				course, date, _ := strings.Cut(c.want, " ")
				n := 0
				if err := pl.DB.Get(context.Background(), fmt.Sprintf("select count(*) from main.results where sheet = 'a.csv' and course = '%s' and run_date::varchar = '%s' and status = 'ok'", course, date), &n); err != nil || (n == 3) != (c.want != "") {
					t.Errorf("%s: after a rebuild %d lines of %s (%v)", when, n, c.want, err)
				}
			}
		})
	}
}

// An answer by hand, be it the order or the date, settles the next sheet of the
// course; and what somebody answers wins over all that the sheet shows.
func TestOrderIsAnswered(t *testing.T) {
	for _, hand := range []ByHand{{Answers: "date order=mdy"}, {Date: "2026-03-04"}} {
		dir := t.TempDir()
		pl := openForTest(t, dir)
		ctx := context.Background()
		first := writeSheet(t, dir, "a.csv", "Alder Bank 03/04/2026\n"+small)
		if rep := loadForTest(t, pl, first); rep.Waiting != 1 {
			t.Fatalf("a date of two readings should be asked about: %+v", rep.Sheets)
		}
		rep, err := pl.Load(ctx, []string{first}, hand)
		if err != nil || rep.Loaded != 1 || rep.Sheets[0].Runs[0] != "alder-bank 2026-03-04" {
			t.Fatalf("%+v: %+v, %v", hand, rep.Sheets, err)
		}
		rep = loadForTest(t, pl, writeSheet(t, dir, "b.csv", "Alder Bank 03/11/2026\n"+small))
		if rep.Loaded != 1 || rep.Sheets[0].Runs[0] != "alder-bank 2026-03-11" {
			t.Errorf("after %+v the next sheet: %+v", hand, rep.Sheets)
		}
		ledger, err := pl.Archive.Ledger()
		if err != nil || len(ledger) != 2 || ledger[1].State != store.Loaded {
			t.Errorf("ledger: %+v, %v", ledger, err)
		}
	}
	dir := t.TempDir()
	pl := openForTest(t, dir)
	rep, err := pl.Load(context.Background(), []string{writeSheet(t, dir, "c.csv", "Alder Bank 03/04/2026\n"+small)}, ByHand{Answers: "date order=day"})
	if err != nil || rep.Refused != 1 || !strings.Contains(rep.Sheets[0].Why, "date order=dmy") {
		t.Errorf("a wrong answer: %v; %+v", err, rep)
	}
}

// A day whose run is here already with other results is not meant; one whose run is here
// with the same people and times is.
func TestOrderByRunsThatAreHere(t *testing.T) {
	november, january := unit.NewDay(2025, 11, 1), unit.NewDay(2025, 1, 11) // both a Saturday
	people := folk(20)
	backwards := slices.Clone(people)
	slices.Reverse(backwards)
	for _, c := range []struct {
		name  string
		there map[unit.Day][]string
		want  unit.Day // 0 where it waits
		why   string
	}{
		{"none is here", map[unit.Day][]string{november + 98: backwards}, 0, ""},
		{"one, with other times", map[unit.Day][]string{november: backwards}, january, "as the run of 1 November 2025 is here already, with other results"},
		{"the other", map[unit.Day][]string{january: backwards}, november, "as the run of 11 January 2025 is here already, with other results"},
		{"both", map[unit.Day][]string{january: backwards, november: backwards}, 0, ""},
		{"one, the same", map[unit.Day][]string{november: people}, november, "as the sheet here of the run of 1 November 2025 holds the same people and times"},
		{"one the same, the other not", map[unit.Day][]string{november: people, january: backwards}, november, "1 November 2025"},
		{"half the same", map[unit.Day][]string{november: append(people[:6:6], backwards[:14]...)}, 0, ""},
		{"too few to say", map[unit.Day][]string{november: backwards[:4]}, 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for day, who := range c.there {
				writeSheet(t, dir, "in/"+day.String()+".csv", runOf("Alder Bank", day, who))
			}
			_, table, _ := strings.Cut(runOf("", november, people), "\n")
			writeSheet(t, dir, "in/odd.csv", "Alder Bank 01/11/2025\n"+table)
			odd := reportOf(t, loadForTest(t, pl, filepath.Join(dir, "in")), "odd.csv")
			got := ""
			if odd.State == "loaded" {
				got = odd.Runs[0]
			}
			want := ""
			if c.want != 0 {
				want = "alder-bank " + c.want.String()
			}
			if got != want || !strings.Contains(odd.Settled, c.why) {
				t.Errorf("read as %q (%s), want %q (%s)", got, odd.Settled, want, c.why)
			}
		})
	}
}

// 170819 in the name of a file is 17 August 2019 or 19 August 2017, both Saturdays: the runs
// around it say, or other files named in the same way; else it is asked.
func TestDatesInGaps(t *testing.T) {
	for _, c := range []struct {
		name   string
		others []string
		want   string
	}{
		{"between two runs", []string{"2019-08-03", "2019-08-10", "2019-08-24"}, "alder-bank 2019-08-17"},
		{"behind the last run", []string{"2019-07-27", "2019-08-03", "2019-08-10"}, ""},
		{"behind the last run, others written the same way", []string{"2019-07-13", "200719", "270719", "030819", "100819", "2019-07-06", "2019-06-29"}, "alder-bank 2019-08-17"},
		{"a season on the other side too", []string{"2019-08-03", "2019-08-10", "2019-08-24", "2017-07-08"}, ""},
		{"there is a run on that day", []string{"2019-08-03", "2019-08-10", "2019-08-17", "2019-08-24"}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			pl := openForTest(t, dir)
			for i, o := range append(c.others, "170819") {
				writeSheet(t, dir, "in/"+o+" Alder Bank.csv", fmt.Sprintf("Pos,Name,Time\n1,Jo Lee,18:%d\n2,Al Roe,19:%d\n3,Cy Dee,20:%d\n", 10+i, 20+i, 30+i))
			}
			got := ""
			for _, s := range loadForTest(t, pl, filepath.Join(dir, "in")).Sheets {
				if s.Path == "170819 Alder Bank.csv" && s.State == "loaded" {
					got = s.Runs[0]
				}
			}
			if got != c.want {
				t.Errorf("read as %q, want %q", got, c.want)
			}
		})
	}
}
