package pipeline

import (
	"context"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// Somebody without an age among people with ages is shown as a child; on a
// sheet without ages, or one that gives children's ages only, nobody is.
func TestAgeNotKnown(t *testing.T) {
	files := map[string]string{
		"sheets/alder-bank_2026-01-03.csv":   "Pos,Name,Time,Age\n1,Ada Moss,20:00,42\n2,Ben Reed,21:00,33\n3,Cleo Finch,25:00,\n4,Dan Thorne,26:00,51\n",
		"sheets/birch-lea_2026-01-03.csv":    "Pos,Name,Time\n1,Eva Lind,20:00\n2,Finn Moor,21:00\n",
		"sheets/cold-ash_2026-01-03.csv":     "Pos,Name,Time,Age\n1,Gus Peel,20:00,\n2,Hal Wick,21:00,\n3,Ivo Tarn,25:00,12\n4,Jo Lake,26:00,\n",
		"sheets/elm-green_2026-01-03.csv":    "Pos,Name,Time,Distance\n1,Kim Vale,8:00,2 km\n2,Lee Ford,9:00,2 km\n",
		"sheets/juniors fell_2026-01-03.csv": "Pos,Name,Time\n1,May Rook,20:00\n",
		"sheets/alder-bank_2026-01-10.csv":   "Pos,Name,Time,Age\n1,Ada Moss,20:00,42\n2,Ned Hale,21:00,\n3,Finn Moor,24:00,29\n",
	}
	d := newDesk(t, files)
	shown := func() string {
		return d.text("select distinct name from main.results where protected order by name")
	}
	d.want("by sheet", shown(), "Cleo Finch Ivo Tarn Kim Vale Lee Ford May Rook Ned Hale")
	d.want("runners", d.text("select name from main.runners where protected order by name"), "Cleo Finch Ivo Tarn Kim Vale Lee Ford May Rook Ned Hale")
	for setting, want := range map[string]string{
		ageNotKnownAdult: "Ivo Tarn",
		ageNotKnownChild: "Cleo Finch Eva Lind Gus Peel Hal Wick Ivo Tarn Jo Lake Kim Vale Lee Ford May Rook Ned Hale",
	} {
		d.pl.Settings.AgeNotKnown = setting
		if did, err := d.pl.Refresh(context.Background(), false); err != nil || !did {
			t.Fatalf("%s: refreshed %v, %v", setting, did, err)
		}
		d.want(setting, shown(), want)
	}
	// whoever says how old they are is an adult
	d.pl.Settings.AgeNotKnown = ageNotKnownBySheet
	c := on("2026-01-03", 3)
	c.Group = "W40"
	d.keep(c)
	if got := shown(); strings.Contains(got, "Cleo") {
		t.Errorf("still a child: %s", got)
	}
	s := DefaultSettings()
	s.AgeNotKnown = "maybe"
	if err := s.Check(); err == nil || !strings.Contains(err.Error(), "by sheet") {
		t.Errorf("a setting that there is not: %v", err)
	}
}

// One impossible age on a sheet is a problem of its line: the others keep theirs,
// and nobody loses a child's protection by it. Where a column of ages can't be
// believed at all, whoever looks at the run is told, and all are shown as
// children would be.
func TestOneBadAge(t *testing.T) {
	sheet := "Pos,Name,Sex,Age,Time\n1,Ann Tarrow,W,34,18:45\n2,Bert Bindle,M,45,19:10\n3,Sammy Hollin,M,11,20:00\n4,Elsie Fenwhistle,W,33,20:25\n5,Zed Olan,M,140,21:25\n"
	d := newDesk(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": sheet,
		"sheets/birch-lea_2026-01-03.csv":  strings.NewReplacer("Age", "Category", "18:45", "18:46").Replace(strings.ReplaceAll(sheet, ",140,", ",0,")),
		"sheets/cold-ash_2026-01-03.csv":   "Pos,Name,Sex,Age,Time\n1,Kim Vale,W,341,18:45\n2,Lee Ford,M,450,19:10\n3,May Rook,M,211,20:00\n",
		"sheets/dale-end_2026-01-03.csv":   "Pos,Name,Sex,Age,Time\n1,Una Pell,W,34.0,18:45\n2,Vic Dorn,M,45.0,19:10\n3,Wyn Sadd,M,11.0,20:00\n",
	})
	d.want("protected", d.text("select distinct name from main.results where protected order by name"), "Kim Vale Lee Ford May Rook Sammy Hollin Wyn Sadd Zed Olan")
	d.want("ages", d.text("select concat(course, ' ', position, ' ', age_low) from main.results where age_low is not null and course in ('alder-bank', 'birch-lea', 'dale-end') order by course, position"),
		"alder-bank 1 34 alder-bank 2 45 alder-bank 3 11 alder-bank 4 33 birch-lea 1 34 birch-lea 2 45 birch-lea 3 11 birch-lea 4 33 dale-end 1 34 dale-end 2 45 dale-end 3 11")
	d.want("problems", d.text("select concat_ws(' ', course, row_number, column_letter, severity, kind) from main.problems where kind like '%age%' order by all"),
		"alder-bank 6 D look age-unlikely cold-ash 1 D look age-column-not-used")
	var refs []RunRef
	for _, c := range []string{"alder-bank", "cold-ash"} {
		refs = append(refs, runRef(c, unit.NewDay(2026, 1, 3), ""))
	}
	if s, err := d.pl.Summarise(context.Background(), refs); err != nil || s.Look != 2 {
		t.Errorf("%d things need a look (%v), want 2", s.Look, err)
	}
}

// Two columns of ages of which one says a child and the other a grown-up: neither
// is taken. A group that lags behind by a year is not such a case.
func TestAgesThatContradict(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Sex,Age,Category,Time\n1,Ann Tarrow,W,34,Senior,18:45\n2,Bert Bindle,M,45,M45,19:10\n" +
		"3,Sammy Hollin,M,41,U13,20:00\n4,Elsie Fenwhistle,W,33,W50,20:25\n5,Una Pell,W,18,U17,21:25\n6,Vic Dorn,M,11,M40,21:40\n7,Wyn Sadd,W,51,W50,22:00\n"})
	d.want("protected", d.text("select distinct name from main.results where protected order by name"), "Sammy Hollin Vic Dorn")
	d.want("ages", d.text("select concat(position, ' ', coalesce(age_low, 0)) from main.results order by position"), "1 34 2 45 3 0 4 33 5 18 6 0 7 51")
	d.want("problems", d.text("select concat(row_number, ' ', kind) from main.problems where kind = 'ages-contradict' order by all"),
		"4 ages-contradict 5 ages-contradict 6 ages-contradict 7 ages-contradict")
}
