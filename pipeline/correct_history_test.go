package pipeline

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"testing"
)

// Decisions about the same lines work in the order in which they were made.
// Place 2 is Ben Reed's on the sheet, 3 nobody's, 4 Dan Thorne's; a step is one
// command of the desk, or a sheet of the run that comes later, with who stands
// in 2, 3 and 4 on it.
func TestHistoriesOfALine(t *testing.T) {
	const reed, nobody, thorne = "Ben Reed ok 21:10", "– unnamed 24:30", "Dan Thorne ok 26:10"
	for _, c := range []struct {
		steps  string
		places string // 2, 3 and 4 in the end
		states string
		asks   string // kinds
	}{
		{"claim 3 Cora Vale; exchange 2 3", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force", ""},
		{"exchange 2 3; claim 2 Cora Vale", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force", ""},
		{"claim 3 Cora Vale; exchange 2 3; exchange 3 4; claim 2 Edie Wick", "– unnamed 21:10; Dan Thorne ok 24:30; Ben Reed ok 26:10", "contested, in force, in force, contested", "two-claims"},
		{"exchange 2 3; claim 2 Cora Vale; undo 1", reed + "; " + nobody + "; " + thorne, "contradicted", "decision-contradicted"},
		{"exchange 2 3; claim 2 Cora Vale; claims 2 Edie Wick", "– unnamed 21:10; Ben Reed ok 24:30; " + thorne, "in force, contested, contested", "two-claims"},
		{"claim 3 Cora Vale; exchange 2 3; claims 2 Edie Wick", "– unnamed 21:10; Ben Reed ok 24:30; " + thorne, "contested, in force, contested", "two-claims"},
		{"claim 3 Cora Vale; exchange 2 3; claims 3 Edie Wick", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force, contradicted", "decision-contradicted"},
		{"claim 3 Cora Vale; claims 3 Edie Wick; exchange 2 3", "– unnamed 21:10; Ben Reed ok 24:30; " + thorne, "contested, contested, in force", "two-claims"},
		{"claim 3 Cora Vale; claims 3 Edie Wick; exchange 2 3; undo 1", "Edie Wick ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force", ""},
		{"claim 3 Cora Vale; claims 3 Edie Wick; names 3 Finn Moss", reed + "; Finn Moss ok 24:30; " + thorne, "replaced, replaced, in force", ""},
		{"claim 3 Cora Vale; names 3 Finn Moss; claims 3 Edie Wick", reed + "; Finn Moss ok 24:30; " + thorne, "replaced, in force, contradicted", "decision-contradicted"},
		{"claim 3 Cora Vale; names 3 Finn Moss; undo 2", reed + "; Cora Vale ok 24:30; " + thorne, "in force", ""},
		{"name 2 Finn Moss; exchange 2 4; name 4 Gwen Lane", "Dan Thorne ok 21:10; " + nobody + "; Gwen Lane ok 26:10", "in force, in force, in force", ""},
		{"time 2 21:12; exchange 2 4", "Dan Thorne ok 21:12; " + nobody + "; Ben Reed ok 26:10", "in force, in force", "exchanged-after-correction"},
		{"time 2 21:12; exchange 2 4; time 2 21:14", "Dan Thorne ok 21:14; " + nobody + "; Ben Reed ok 26:10", "in force, in force, in force", ""},
		{"exchange 2 4; time 2 21:12", "Dan Thorne ok 21:12; " + nobody + "; Ben Reed ok 26:10", "in force, in force", ""},
		{"status 2 not a finisher; status 2 ok", reed + "; " + nobody + "; " + thorne, "in force, in force", ""},

		// a sheet of the run that comes later: as before, as settled, as settled in part, another
		{"claim 3 Cora Vale; exchange 2 3; sheet Ben Reed,,Dan Thorne", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force", ""},
		{"claim 3 Cora Vale; exchange 2 3; sheet Cora Vale,Ben Reed,Dan Thorne", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "satisfied, satisfied", ""},
		{"claim 3 Cora Vale; exchange 2 3; sheet Ben Reed,Cora Vale,Dan Thorne", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "satisfied, in force", ""},
		{"claim 3 Cora Vale; exchange 2 3; sheet Gwen Lane,Hugh Wick,Dan Thorne", "Gwen Lane ok 21:10; Hugh Wick ok 24:30; " + thorne, "contradicted, contradicted", "decision-contradicted decision-contradicted"},
		{"exchange 2 3; claim 2 Cora Vale; sheet Ben Reed,,Dan Thorne", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "in force, in force", ""},
		{"exchange 2 3; claim 2 Cora Vale; sheet Cora Vale,Ben Reed,Dan Thorne", "Cora Vale ok 21:10; Ben Reed ok 24:30; " + thorne, "satisfied, satisfied", ""},
		{"exchange 2 3; exchange 3 4; sheet ,Dan Thorne,Ben Reed", "– unnamed 21:10; Dan Thorne ok 24:30; Ben Reed ok 26:10", "satisfied, satisfied", ""},
		{"exchange 2 3; exchange 3 4; sheet Ben Reed,,Dan Thorne", "– unnamed 21:10; Dan Thorne ok 24:30; Ben Reed ok 26:10", "in force, in force", ""},
		{"claim 3 Cora Vale; exchange 2 3; name 3 Hugh Wick", "Cora Vale ok 21:10; Hugh Wick ok 24:30; " + thorne, "in force, in force, in force", ""},
		{"exchange 2 4; names 2 Ben Reed; names 4 Dan Thorne; sheet Ben Reed,,Dan Thorne", reed + "; " + nobody + "; " + thorne, "satisfied, satisfied, satisfied", ""},
		{"name 2 Finn Moss; name 2 Gwen Lane; sheet Gwen Lane,,Dan Thorne", "Gwen Lane ok 21:10; " + nobody + "; " + thorne, "satisfied, satisfied", ""},
		{"name 2 Finn Moss; name 2 Gwen Lane; sheet Finn Moss,,Dan Thorne", "Gwen Lane ok 21:10; " + nobody + "; " + thorne, "satisfied, in force", ""},
		{"name 2 Finn Moss; name 2 Ben Reed; sheet Ben Reed,,Dan Thorne", reed + "; " + nobody + "; " + thorne, "satisfied, satisfied", ""},
		{"time 2 21:12; time 2 21:10; sheet Ben Reed,,Dan Thorne", reed + "; " + nobody + "; " + thorne, "satisfied, satisfied", ""},
		{"claim 3 Cora Vale; claims 3 Edie Wick; sheet Ben Reed,,Dan Thorne", reed + "; " + nobody + "; " + thorne, "contested, contested", "two-claims"},
		{"claim 3 Cora Vale; claims 3 Edie Wick; sheet Ben Reed,Edie Wick,Dan Thorne", reed + "; Edie Wick ok 24:30; " + thorne, "contradicted, satisfied", "decision-contradicted"},
		{"claim 3 Cora Vale; sheet Ben Reed,Edie Wick,Dan Thorne; name 3 Cora Vale", reed + "; Cora Vale ok 24:30; " + thorne, "replaced, in force", ""},
		{"status 2 not a finisher; sheet Ben Reed,,Dan Thorne; status 2 ok", reed + "; " + nobody + "; " + thorne, "in force, in force", ""},
	} {
		t.Run(c.steps, func(t *testing.T) {
			t.Parallel()
			d := newDesk(t, threeWeeks())
			first := d.draft(on("2026-01-10", 3).named("Edie Wick")).Decisions[0] // names the first sheet
			sheets := 0
			for _, step := range strings.Split(c.steps, "; ") {
				word, rest, _ := strings.Cut(step, " ")
				if word == "sheet" {
					sheets++
					var lines []string
					for i, who := range strings.Split(rest, ",") {
						if who == "" {
							who = "Unknown"
						}
						lines = append(lines, fmt.Sprintf("%d,%s,%s,,,", i+2, who, []string{"21:10", "24:30", "26:10"}[i]))
					}
					d.write(map[string]string{fmt.Sprintf("sheets/later%d/alder-bank_2026-01-10.csv", sheets): week(append([]string{"1,Ada Moss,20:11,W40,W,Tarn Harriers"}, lines...)...)})
					d.load()
					continue
				}
				at, value, _ := strings.Cut(rest, " ")
				n, err := strconv.Atoi(at)
				if err != nil {
					t.Fatal(err)
				}
				r := on("2026-01-10", n)
				switch word {
				case "claim", "name":
					r = r.named(value)
				case "claims", "names": // as somebody does who writes decisions.csv
					f := first
					f.Kind, f.Row, f.Value, f.Runner = DecideClaim, n+1, value, ""
					if word == "names" {
						f.Kind = DecideName
					}
					if _, err := d.pl.AppendDecisions([]Decision{f}); err != nil {
						t.Fatal(err)
					}
					if _, err := d.pl.Refresh(context.Background(), false); err != nil {
						t.Fatal(err)
					}
					continue
				case "exchange":
					r.ExchangeWith, _ = strconv.Atoi(value)
				case "time":
					r.Time = value
				case "status":
					r.Status = value
					if value == "ok" { // a line that was struck out has no place any more
						f := first
						f.Kind, f.Row, f.Value, f.Runner = DecideStatus, n+1, value, ""
						if _, err := d.pl.AppendDecisions([]Decision{f}); err != nil {
							t.Fatal(err)
						}
						if _, err := d.pl.Refresh(context.Background(), false); err != nil {
							t.Fatal(err)
						}
						continue
					}
				case "undo":
					r = Correction{Undo: n, By: "desk"}
				default:
					t.Fatal(step)
				}
				d.keep(r)
			}
			var places []string
			for _, n := range []int{2, 3, 4} {
				places = append(places, d.place("alder-bank", "2026-01-10", n))
			}
			d.want("places", strings.Join(places, "; "), c.places)
			d.want("states", d.text("select string_agg(state, ', ' order by id) from record.decision"), c.states)
			d.want("asked", d.text("select kind from sheet.problem where kind in ('decision-contradicted', 'two-claims', 'exchanged-after-correction', 'person-twice') order by 1"), c.asks)
		})
	}
}

func (c Correction) named(who string) Correction {
	c.Name = who
	return c
}
