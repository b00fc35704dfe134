package pipeline

import "testing"

// Places with times on one sheet and places with names on another are one result, in
// whichever order they come: each finisher is counted once, who stands on one of the two
// only as well.
func TestTwoHalvesOfAResult(t *testing.T) {
	times := "Position,Time\n1,20:00\n2,20:30\n3,21:00\n4,11:00\n5,22:00\n6,22:30\n"
	names := "Position,Name,Age group,Sex\n1,Ada Moss,W40,W\n2,Unknown,,\n3,Ben Reed,M45,M\n4,Cora Vale,W35,W\n5,Dan Thorne,M50,M\n7,Edie Wick,W45,W\n"
	for what, files := range map[string]map[string]string{
		"times first": {"sheets/alder-bank_2026-01-03 a times.csv": times, "sheets/alder-bank_2026-01-03 b names.csv": names},
		"names first": {"sheets/alder-bank_2026-01-03 a names.csv": names, "sheets/alder-bank_2026-01-03 b times.csv": times},
	} {
		t.Run(what, func(t *testing.T) {
			d := newDesk(t, files)
			d.want("results", d.text(`select string_agg(concat_ws(' ', position, coalesce(name, '–'), coalesce(time_s, 0), status), ', ' order by position) from main.results where status not in ('repeat', 'superseded')`),
				"1 Ada Moss 1200 ok, 2 – 1230 unnamed, 3 Ben Reed 1260 ok, 4 Cora Vale 660 doubtful, 5 Dan Thorne 1320 ok, 6 – 1350 unnamed, 7 Edie Wick 0 untimed")
			d.want("counted", d.text("select concat_ws(' ', finishers, times_counted, names_counted, unnamed) from main.runs"), "7 6 5 2")
			d.want("said once", d.text("select count(*)::varchar || ' ' || any_value(severity) from main.problems where kind = 'two-part-sheet'"), "1 note")
		})
	}
}
