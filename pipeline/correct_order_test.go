package pipeline

import (
	"strings"
	"testing"
)

// A corrected time that is faster than that of the place before is asked about,
// in the preview and afterwards, until the places are put right too.
func TestCorrectedTimeAgainstTheOrder(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-10.csv": week(
		"1,Ada Moss,25:30,,,", "2,Doreen Vellan,26:04,W40,W,", "3,Ron Draymoor,26:06,M50,M,", "4,Cora Vale,27:00,,,"),
		"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,25:30,,,", "2,Doreen Vellan,26:04,W40,W,", "3,Ron Draymoor,26:06,M50,M,")})
	c := on("2026-01-10", 3)
	c.Time = "25:52"
	dr := d.keep(c)
	if len(dr.Asks) != 1 || !strings.Contains(dr.Asks[0], `read "place 3, Ron Draymoor, 25:52", expected 26:04 or more, as place 2, Doreen Vellan`) || !strings.Contains(dr.Asks[0], "2 is the right place of Ron Draymoor") {
		t.Errorf("asked: %q", dr.Asks)
	}
	if d.problems(correctedOutOfOrder) == "" {
		t.Error("no problem of the run")
	}
	// an exchange of people would undo the correction
	x := on("2026-01-10", 2)
	x.ExchangeWith = 3
	dr = d.draft(x)
	d.shows(dr, "Ron Draymoor (R3) in 26:04", "Doreen Vellan (R2) in 25:52")
	if len(dr.Asks) != 2 || !strings.Contains(dr.Asks[0], `place 3, 25:52, is now that of Doreen Vellan`) {
		t.Errorf("asked of the exchange: %q", dr.Asks)
	}
	c = on("2026-01-10", 3)
	c.RightPlace = 2
	d.keep(c)
	c = Correction{Course: "alder-bank", Date: "2026-01-10", Line: "alder-bank_2026-01-10.csv:3", RightPlace: 3}
	if dr = d.keep(c); len(dr.Asks) != 0 {
		t.Errorf("asked though all is right: %q", dr.Asks)
	}
	d.want("problem", d.problems(correctedOutOfOrder), "")
	d.want("place 2", d.place("alder-bank", "2026-01-10", 2), "Ron Draymoor ok 25:52")
	// one that fits is not asked about, nor is an equal time
	c = on("2026-01-10", 4)
	c.Time = "26:04"
	if dr = d.draft(c); len(dr.Asks) != 0 {
		t.Errorf("an equal time: %q", dr.Asks)
	}
}

// Somebody who stands twice on a sheet is asked about for as long as nobody has
// settled it, not only until the first refresh.
func TestPersonTwiceIsTold(t *testing.T) {
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,25:30,,,", "2,Ben Reed,26:04,,,", "3,Ben Reed,26:16,,,"),
		"sheets/birch-lea_2026-01-03.csv": week("1,Dan Thorne,25:30,M50,M,Wick Runners", "2,Dan Thorne,26:30,M50,M,Wick Runners")})
	told := func() string {
		return d.text("select concat_ws(' ', course, row_number, severity, kind) from main.problems where kind like 'person-twice%' and settled = '' order by all")
	}
	d.want("told", told(), "alder-bank 4 doubtful person-twice-on-sheet birch-lea 3 doubtful person-twice-on-sheet")
	c := on("2026-01-03", 3)
	c.Name = "Cora Vale"
	d.keep(c)
	d.want("after the name was put right", told(), "birch-lea 3 doubtful person-twice-on-sheet")
}

// The preview tells what is on trial, not again what was corrected before, and
// nothing twice of a copy of the sheet.
func TestPreviewTellsWhatIsNew(t *testing.T) {
	sheet := week("1,Ada Moss,25:30,,,", "2,Ben Reed,26:04,,,Wick Runners", "3,Cora Vale,26:30,,,")
	d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03.csv": sheet, "sheets/mail/alder-bank_2026-01-03.csv": "\n" + sheet})
	c := on("2026-01-03", 2)
	c.Club, c.Name = "Tarn Harriers", "Benny Reed"
	d.shows(d.keep(c), "club Wick Runners → Tarn Harriers")
	c = on("2026-01-03", 3)
	c.Time = "26:40"
	var got []string
	for _, x := range d.draft(c).Changes {
		if x.Place > 0 {
			got = append(got, x.What)
		}
	}
	d.want("changes of places", strings.Join(got, ", "), "time")
}
