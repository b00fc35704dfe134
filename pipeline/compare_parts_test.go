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

// Halves of which one has more places than the other are joined, and it is told, unless it says itself which place it
// leaves out: a time that was missed puts all behind it out.
func TestHalvesDiffer(t *testing.T) {
	const four, five = "Position,Time\n1,20:00\n2,20:30\n3,21:00\n4,21:40\n", "Position,Time\n1,20:00\n2,20:30\n3,21:00\n4,21:40\n5,22:00\n"
	for _, c := range []struct{ name, times, names, want string }{
		{"as many", four, "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n4,Dan Thorne\n", ""},
		{"a time less", four, "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n4,Dan Thorne\n5,Edie Wick\n", "look 4 times and 5 names of this run; place 5 has no time"},
		{"names less", five, "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n", "look 5 times and 3 names of this run; places 4 to 5 have no name"},
		{"a name left out by its place", five, "Position,Name\n1,Ada Moss\n2,Ben Reed\n4,Dan Thorne\n5,Edie Wick\n", ""},
		{"times in two columns", "Pos,Time,Pos,Time\n1,20:00,3,21:00\n2,20:30,4,21:40\n", "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n4,Dan Thorne\n", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := newDesk(t, map[string]string{"sheets/alder-bank_2026-01-03 a.csv": c.times, "sheets/alder-bank_2026-01-03 b.csv": c.names})
			d.want("said", d.text("select coalesce(string_agg(severity || ' ' || read, '|'), '') from main.problems where kind = 'times-and-names-differ'"), c.want)
		})
	}
}

// Times without places are not joined with names that are not as many: who is missing?
func TestTimesWithoutPlaces(t *testing.T) {
	d := newDesk(t, map[string]string{
		"sheets/alder-bank_2026-01-03 a.csv": "20:00\n20:30\n21:00\n21:40\n",
		"sheets/alder-bank_2026-01-03 b.csv": "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n4,Dan Thorne\n5,Edie Wick\n",
	})
	d.want("results", d.text("select count(*)::varchar from main.results where name is not null and time_s is not null"), "0")
	d.want("said", d.text("select read from main.problems where kind = 'second-sheet'"), "4 times without places beside 5 names on the other list of this run")
}

// A second list of names, or of times, takes the place of the first; the other half stays,
// in whichever order they come. A half that comes after the whole result changes nothing.
func TestHalvesIssuedAgain(t *testing.T) {
	const (
		times  = "Position,Time\n1,20:00\n2,20:30\n3,21:00\n4,21:40\n5,22:00\n"
		times2 = "Position,Time\n1,20:00\n2,20:33\n3,21:00\n4,21:40\n5,22:00\n"
		names  = "Position,Name\n1,Ada Moss\n2,Ben Reid\n3,Cora Vale\n5,Edie Wick\n"
		names2 = "Position,Name\n1,Ada Moss\n2,Ben Reed\n3,Cora Vale\n4,Dan Thorne\n5,Edie Wick\n"
		beside = "Pos,Time,Pos,Time\n1,20:00,4,21:40\n2,20:30,5,22:00\n3,21:00,,\n"
		bare   = "20:00\n20:30\n21:00\n21:40\n22:00\n"
		last   = "Time\n22:00\n21:40\n21:00\n20:30\n20:00\n"
		turned = "Position,Name\n5,Edie Wick\n1,Ada Moss\n3,Cora Vale\n4,Dan Thorne\n2,Ben Reed\n"
		full   = "Position,Name,Time\n1,Ada Moss,20:00\n2,Ben Reed,20:30\n3,Cora Vale,21:00\n4,Dan Thorne,21:40\n5,Edie Wick,22:00\n"

		both   = "1 Ada Moss 1200, 2 Ben Reed 1230, 3 Cora Vale 1260, 4 Dan Thorne 1300, 5 Edie Wick 1320"
		first  = "1 Ada Moss 1200, 2 Ben Reid 1230, 3 Cora Vale 1260, 4 – 1300, 5 Edie Wick 1320"
		slower = "1 Ada Moss 1200, 2 Ben Reed 1233, 3 Cora Vale 1260, 4 Dan Thorne 1300, 5 Edie Wick 1320"
	)
	for _, c := range []struct {
		name   string
		sheets []string
		want   string
		kinds  string // what is said of it
	}{
		{"names again", []string{times, names, names2}, both, "new-issue two-part-sheet"},
		{"names again before the times", []string{names, names2, times}, both, "new-issue two-part-sheet"},
		{"times between", []string{names, times, names2}, both, "new-issue two-part-sheet"},
		{"the first names last", []string{times, names2, names}, first, "new-issue two-part-sheet"},
		{"times again", []string{times, names2, times2}, slower, "new-issue two-part-sheet"},
		{"both again", []string{times, names, times2, names2}, slower, "new-issue new-issue two-part-sheet"},
		{"times in two columns", []string{beside, names2}, both, "two-part-sheet two-part-sheet"},
		{"names before times in two columns", []string{names2, beside}, both, "two-part-sheet two-part-sheet"},
		{"times without places", []string{bare, turned}, both, "two-part-sheet"},
		{"times without places, the last first", []string{names2, last}, both, "two-part-sheet"},
		{"then the whole", []string{times, names, names2, full}, both, "copy new-issue new-issue two-part-sheet"},
		{"the whole, then its halves", []string{full, times, names2}, both, "excerpt excerpt"},
		{"the whole, then other names", []string{full, names}, both, "excerpt-differs"},
		{"the whole, then the same names", []string{full, names2}, both, "excerpt"},
		{"the whole, then other times", []string{full, times2}, both, "excerpt-differs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := map[string]string{}
			for i, s := range c.sheets {
				files["sheets/alder-bank_2026-01-03 "+string(rune('a'+i))+".csv"] = s
			}
			d := newDesk(t, files)
			d.want("results", d.text(`select string_agg(concat_ws(' ', position, coalesce(name, '–'), coalesce(time_s, 0)), ', ' order by position) from main.results where status not in ('repeat', 'superseded')`), c.want)
			d.want("said", d.text("select string_agg(kind, ' ' order by kind) from main.problems where kind in ('new-issue', 'excerpt', 'excerpt-differs', 'two-part-sheet', 'copy')"), c.kinds)
		})
	}
}
