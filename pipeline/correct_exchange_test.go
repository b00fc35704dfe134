package pipeline

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/unit"
)

// Twenty weeks of forty people; in the tenth the fast Gwen Lane and the slow
// Hugh Wick stand in each other's place. Nobody else is proposed.
func TestExchangedCodesAreProposed(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	given := strings.Fields("Ada Ben Cora Dan Edie Finn Gwen Hugh Isla Jack")
	family := strings.Fields("Moss Reed Lane Wick")
	files := map[string]string{}
	for n := range 20 {
		type finish struct {
			name string
			s    float64
		}
		var field []finish
		for i := range 40 {
			s := 1100 + 40*float64(i)
			field = append(field, finish{given[i%10] + " " + family[i/10], s * math.Exp(.02*r.NormFloat64())})
		}
		if n == 9 {
			field[26].s, field[37].s = field[37].s, field[26].s
		}
		var lines []string
		for i, p := range field {
			lines = append(lines, fmt.Sprintf("%d,%s,%d:%02d,,,", i+1, p.name, int(p.s)/60, int(p.s)%60))
		}
		files[fmt.Sprintf("sheets/alder-bank_%s.csv", mustDay(t, "2026-01-03")+unit.Day(7*n))] = week(lines...)
	}
	d := newDesk(t, files)
	got := d.text("select read || ' | ' || todo from sheet.problem where kind = 'codes-exchanged'")
	if !strings.Contains(got, "Hugh Wick") || !strings.Contains(got, "Gwen Lane") || !strings.Contains(got, "2026-03-07 38 --exchange 27") || strings.Count(got, "|") != 1 {
		t.Errorf("proposed: %q", got)
	}
	c := Correction{Course: "alder-bank", Date: "2026-03-07", Place: 38, ExchangeWith: 27}
	d.keep(c)
	d.want("after exchanging them", d.problems("codes-exchanged"), "")
}

// How often the demo's sheets lead to a proposal. Its own exchanges are
// between neighbours in the funnel, whose times differ by seconds: nobody can
// see those in the times, and they are left out of the count.
func TestExchangedCodesOfTheDemo(t *testing.T) {
	if testing.Short() {
		t.Skip("takes the whole demo")
	}
	dir := t.TempDir()
	if err := scenario.WriteDemo(dir); err != nil {
		t.Fatal(err)
	}
	pl := openForTest(t, dir)
	loadForTest(t, pl, dir+"/sheets")
	var lines, proposed int
	if err := pl.DB.Get(context.Background(), "select (select count(*) from record.line), (select count(*) from sheet.problem where kind = 'codes-exchanged')", &lines, &proposed); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d proposals on %d lines", proposed, lines)
	if proposed*1000 > lines {
		t.Errorf("%d proposals on %d lines are more than one in a thousand", proposed, lines)
	}
}
