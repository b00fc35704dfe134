package pipeline

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// Whoever stands on a sheet under a name one letter off that of a regular, and no age, is
// asked about, at that line, until somebody has said whether they are one.
func TestDoubtfulNamesAreTold(t *testing.T) {
	files := map[string]string{}
	people := strings.Split("Ada Moss,Ben Reed,Cora Vale,Dan Thorne,Edie Wick,Finn Lane,Gwen Ford,Hugh Rook,Isla Peel,Jack Tarn", ",")
	day := unit.NewDay(2026, 1, 3)
	for n := range 8 {
		var lines []string
		for i, p := range people {
			group := []string{"W40", "M45"}[i%2]
			if n == 7 && p == "Cora Vale" {
				p, group = "Cara Vale", ""
			}
			lines = append(lines, fmt.Sprintf("%d,%s,%d:%02d,%s,%s,", i+1, p, 20+i, (7*n+i)%60, group, []string{"W", "M"}[i%2]))
		}
		files[fmt.Sprintf("sheets/alder-bank_%s.csv", day+unit.Day(7*n))] = week(lines...)
	}
	d := newDesk(t, files)
	d.want("asked", d.text("select concat_ws(' ', course, run_date, row_number, severity, read, expected) from main.problems where kind = ?", nameDoubtful),
		"alder-bank 2026-02-21 4 look Cara Vale perhaps Cora Vale (R3), 7 results, last on 14 February 2026")
	d.keep(Correction{Person: "Cora Vale", PrintName: "Coraline Vale", By: "desk"})
	d.want("by the name that is printed", d.text("select expected from main.problems where kind = ?", nameDoubtful),
		"perhaps Coraline Vale (R3), 7 results, last on 14 February 2026")
	c := on("2026-02-21", 3)
	c.Name = "Cora Vale"
	d.keep(c)
	d.want("after the name was put right", d.problems(nameDoubtful), "")
}
