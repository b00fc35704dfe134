package pipeline

import (
	"context"
	"strings"
	"testing"
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
