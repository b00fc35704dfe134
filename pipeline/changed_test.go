package pipeline

import (
	"context"
	"fmt"
	"testing"

	"lapwing/pipeline/store"
)

// A copy of a sheet that adds nothing is no reason for new reports, a line that
// differs is.
func TestACopyChangesNoReport(t *testing.T) {
	sheet := week("1,Ada Moss,25:30,,,", "2,Ben Reed,26:04,,,", "3,Cora Vale,26:16,,,")
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": sheet})
	ctx := context.Background()
	changed := func() string {
		runs, err := d.pl.ChangedRuns(ctx)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.pl.Reported(ctx); err != nil {
			t.Fatal(err)
		}
		return fmt.Sprint(len(runs))
	}
	d.want("runs at first", changed(), "1")
	d.write(map[string]string{"sheets/from the mail/alder-bank_2026-01-03.csv": "Alder Bank 3 January 2026\n" + sheet})
	d.load()
	d.want("lines of the copy", d.text("select count(*) from main.results where status = 'repeat'"), "3")
	d.want("runs after a copy", changed(), "0")
	c := on("2026-01-03", 3)
	c.Status = "not a finisher"
	d.keep(c)
	d.want("runs after a line was struck out", changed(), "1")
}

// A sheet that is said to be an excerpt is not asked about its missing positions.
func TestExcerptMayMissPositions(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": "Pos,Name,Time\n1,Jo Lee,18:20\n5,Al Roe,18:31\n9,Cy Dee,19:00\n"})
	if d.text("select kind from sheet.problem where kind like 'positions-missing%'") == "" {
		t.Error("a sheet with gaps is not asked about")
	}
	if _, err := d.pl.SetState(context.Background(), "alder-bank_2026-01-03.csv", store.Withdrawn); err != nil {
		t.Fatal(err)
	}
	if _, err := d.pl.Load(context.Background(), []string{d.dir + "/sheets"}, ByHand{Kind: "excerpt"}); err != nil {
		t.Fatal(err)
	}
	d.want("asked about an excerpt", d.text("select kind from sheet.problem where kind like 'positions-missing%'"), "")
}
