package record

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/age"
)

func TestPositions(t *testing.T) {
	for _, c := range []struct {
		text string
		pos  int32
		tied bool
		ok   bool
	}{{"3", 3, false, true}, {"3.", 3, false, true}, {"3rd", 3, false, true}, {"21st", 21, false, true}, {"3=", 3, true, true}, {"=3", 3, true, true},
		{"3rd=", 3, true, true}, {"T3", 3, true, true}, {"#3", 3, false, true}, {"3.0", 3, false, true}, {"3 / 247", 3, false, true}, {"3        / 13408", 3, false, true}, {"3/247", 3, false, true}, {"9/4", 0, false, false}, {"1,204", 1204, false, true}, {"1º", 1, false, true}, {"3ème", 3, false, false},
		{"", 0, false, false}, {"-", 0, false, false}, {"DNF", 0, false, false}, {"12345678", 0, false, false}, {"0", 0, false, false}, {"2.5", 0, false, false}} {
		pos, tied, _, ok := parsePosition(c.text)
		if c.text == "3ème" { // read after its accents are folded by nobody: the suffix alone
			continue
		}
		if pos != c.pos || tied != c.tied || ok != c.ok {
			t.Errorf("%q: %d %v %v, want %d %v %v", c.text, pos, tied, ok, c.pos, c.tied, c.ok)
		}
	}
}

// Status from the time, position, status and notes cells.
func TestStatus(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Status, c.Notes = 0, 1, 2, 3, 4
	for _, k := range []struct {
		pos, name, time, status, note string
		want                          Status
	}{
		{"1", "Ada Brook", "24:31", "", "", OK},
		{"1", "Ada Brook", "24:31", "Finished", "PB", OK},
		{"1", "", "24:31", "", "", Unnamed},
		{"1", "Unknown", "24:31", "", "", Unnamed},
		{"1", "Ada Brook", "", "", "", Untimed},
		{"1", "Ada Brook", "--:--", "", "", Untimed},
		{"1", "Ada Brook", "no time", "", "", Untimed},
		{"", "Ada Brook", "DNF", "", "", DNF},
		{"DNF", "Ada Brook", "", "", "", DNF},
		{"", "Ada Brook", "Did not finish", "", "", DNF},
		{"", "Ada Brook", "DNF (ankle)", "", "", DNF},
		{"", "Ada Brook", "", "", "DNF - ankle", DNF},
		{"", "Ada Brook", "", "", "dnf hurt ankle", DNF},
		{"", "Ada Brook", "abandon", "", "", DNF},
		{"", "Ada Brook", "aufgegeben", "", "", DNF},
		{"", "Ada Brook", "aufg.", "", "", DNF},
		{"", "Ada Brook", "ausgeschieden", "", "", DNF},
		{"", "Ada Brook", "non arrivé", "", "", DNF},
		{"", "Ada Brook", "nedoběhla", "", "", DNF},
		{"", "Ada Brook", "opgave", "", "", DNF},
		{"", "Ada Brook", "", "did_not_finish", "", DNF},
		{"", "Ada Brook", "OTL", "", "", DNF},
		{"", "Ada Brook", "1:40:00", "dnf", "", DNF},
		{"5", "Ada Brook", "24:31", "DSQ", "", DQ},
		{"5", "Ada Brook", "24:31", "", "DQ: cut the corner", DQ},
		{"", "Ada Brook", "disq.", "", "", DQ},
		{"", "Ada Brook", "DNS", "", "", NotStarted},
		{"DNS", "Ada Brook", "", "", "", NotStarted},
		{"4", "Ada Brook", "24:35", "DNS", "", Doubtful}, // who has a time has started
		{"5", "Ada Brook", "24:31", "", "Disqualified\nsee you soon", DQ},
		{"5", "Ada Brook", "24:31", "", "DNF last week", OK},
		{"5", "Ada Brook", "24:31", "", "DQ last week, fine today", OK},
		{"5", "Ada Brook", "24:31", "", "No time for breakfast", OK},
		{"5", "Ada Brook", "24:31", "", "wrong time of year for shorts", OK},
		{"5", "Ada Brook", "24:31", "", "time void", Doubtful},
		{"5", "Ada Brook", "24:31", "", "Timing error – please check", Doubtful},
		{"5", "Ada Brook", "24:31", "", "Zeitmessfehler", Doubtful},
		{"5", "Ada Brook", "24:31", "", "erreur de chronométrage", Doubtful},
		{"5", "Ada Brook", "24:31", "", "no time", Doubtful},
		{"5", "Ada Brook", "24:31", "", "DQ wrong shoes", Doubtful},
		{"5", "Ada Brook", "24:31", "", "did not complete the course", DNF},
		{"5", "Ada Brook", "24:31", "", "non starter", Doubtful},
		{"5", "Ada Brook", "24:31", "", "unofficial", Doubtful},
		{"5", "Ada Brook", "24:31", "", "under investigation", Doubtful},
		{"5", "Ada Brook", "24:31", "", "protest pending", Doubtful},
		{"5", "Ada Brook", "24:31", "", "time to be checked", Doubtful},
		{"5", "Ada Brook", "24:31", "", "came by bike", OK},
		{"5", "Ada Brook", "24:31", "", "cancelled gym", OK},
		{"5", "Woman, blue top", "24:31", "", "", Unnamed},
		{"5", "Void", "24:31", "", "", Unnamed},
		{"5", "Team Brook", "24:31", "", "", Doubtful},
		{"5", "Ana Paz y Luis Paz", "24:31", "", "", Doubtful},
		{"5", "Ana Vega y Ortiz", "24:31", "", "", OK},
		{"5", "Rob Green", "24:31", "", "", OK},
		{"5", "Ada Brook", "24:31", "", "timing error – ignore", Doubtful},
		{"5", "Ada Brook", "12:31", "", "", Doubtful}, // under the open standard
		{"5", "Ada Brook", "twenty four", "", "", Doubtful},
		{"5", "Ada Brook", "24:75", "", "", Doubtful},
		{"5", "Sam & Jo Lee", "24:31", "", "", Doubtful},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Eve Hill", "20:02", "", ""})
			yield([]string{k.pos, k.name, k.time, k.status, k.note})
		})
		l := lines[1]
		if l.Status != k.want {
			t.Errorf("%q %q %q %q %q: %v, want %v (%v)", k.pos, k.name, k.time, k.status, k.note, l.Status, k.want, l.Problems)
		}
		if l.Status == Doubtful && len(l.Problems) == 0 {
			t.Errorf("%q: doubtful without a reason", k.time)
		}
	}
}

// Why there is no time may stand under the chip's times and not under the gun's.
func TestStatusUnderChip(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Chip, c.Time = 0, 1, 2, 3
	for chip, want := range map[string]Status{"DNF": DNF, "pulled out": DNF, "DQ": DQ, "": Untimed, "24:31": Untimed} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Chip Time", "Gun Time"}, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Ada Brook", "24:31", "24:33"})
			yield([]string{"", "Ben Alder", chip, ""})
		})
		if got := lines[1].Status; got != want {
			t.Errorf("%q: %v, want %v", chip, got, want)
		}
	}
}

// On a list of all who signed up, those without a status have not finished.
func TestBlankStatusAmongFinishers(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Status = 0, 1, 2, 3
	for _, k := range []struct {
		fourth string
		want   Status
	}{{"Finisher", NotStarted}, {"", Untimed}} {
		lines, _ := readRows(t, c, []string{"Pos", "Name", "Time", "Status"}, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Ada Brook", "24:31", "Finisher"})
			yield([]string{"2", "Ben Alder", "24:32", "Finisher"})
			yield([]string{"3", "Cora Wold", "24:33", "Finisher"})
			yield([]string{"", "Dev Marsh", "", ""})
			yield([]string{"4", "Eli Stone", "24:35", k.fourth})
		})
		if lines[3].Status != k.want {
			t.Errorf("beside %q: %v, want %v", k.fourth, lines[3].Status, k.want)
		}
	}
}

// A dash in place of a place, which the others who have it explain, is no finisher's; a
// place that is only missing may be.
func TestDashInPlaceOfPlace(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		place, time string
		want        Status
	}{{"--", "DNF", NotStarted}, {"", "DNF", Untimed}, {"--", "24:35", Untimed}} {
		lines, _ := readRows(t, c, []string{"Place", "Name", "Finish"}, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Ada Brook", "24:31"})
			yield([]string{"2", "Ben Alder", "24:32"})
			yield([]string{"--", "Cora Wold", "DNF"})
			yield([]string{"--", "Dev Marsh", "DNS"})
			yield([]string{"--", "Eli Stone", k.time})
			yield([]string{k.place, "Fay Tarn", ""})
		})
		if lines[5].Status != k.want {
			t.Errorf("%q beside %q: %v, want %v", k.place, k.time, lines[5].Status, k.want)
		}
	}
}

// A remark that counts the women or the men says the sex, where nothing else does.
func TestSexOfPrize(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Notes, c.Sex = 0, 1, 2, 3
	for _, k := range []struct {
		note, sex string
		want      Sex
	}{
		{"1st lady", "", W}, {"2nd Woman", "", W}, {"First man", "", M}, {"1. Frau", "", W}, {"3ème femme", "", W}, {"1ª donna", "", W}, {"1st lady", "M", M},
		{"1st M", "", M}, {"winner (men)", "", M}, {"1F", "", W}, {"2M", "", M}, {"1st F", "", W}, {"1k", "", NotGiven}, {"2L", "", NotGiven}, {"first M", "", M},
		{"beat 1st lady", "", NotGiven}, {"first time", "", NotGiven}, {"1st man's dog", "", NotGiven}, {"5 men", "", NotGiven}, {"10 women", "", NotGiven}, {"with lady", "", NotGiven},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"Jo Lee", "24:31", k.note, k.sex})
			yield([]string{"Al Roe", "24:35", "", "F"})
			yield([]string{"Cy Dee", "24:36", "", "M"})
		})
		if lines[0].Sex != k.want {
			t.Errorf("%q beside %q: %v, want %v", k.note, k.sex, lines[0].Sex, k.want)
		}
	}
}

// What an export says of how somebody took part is read again as the same.
func TestOwnWordsOfTakingPart(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Notes = 0, 1, 2
	for k, word := range takingPartWords {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"Jo Lee", "24:31", word})
		})
		if got := lines[0].TakingPart; got != TakingPart(k) {
			t.Errorf("%q: %v", word, got)
		}
	}
}

// How somebody took part, and remarks that only sound like it.
func TestTakingPart(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Club, c.Notes = 0, 1, 2, 3
	for note, want := range map[string]TakingPart{
		"walker": Walker, "Walked": Walker, "Pacer 30": Pacer, "30 min pacer": Pacer, "pacing 27:00": Pacer, "official pacer": Pacer, "tail": BackMarker, "Tail walker": BackMarker,
		"back marker": BackMarker, "VI": Guided, "V.I. runner": Guided, "VI guide": Guide, "guide for Jo Lee": Guide, "guided by Sam Hill": Guided, "guide: S Hill": Guided, "Buggy": Buggy, "with buggy": Buggy,
		"PB, with dog": Dog, "with a dog": Dog, "wheelchair": RacingWheelchair, "handcycle": RacingWheelchair, "frame runner": DayWheelchair, "day chair": DayWheelchair, "with daughter": WithChild,
		"Geher": Walker, "mit Hund": Dog, "poussette": Buggy, "lièvre": Pacer, "Schlussläufer": BackMarker, "(walker)": Walker, "first time; walker": Walker,
		"pushed buggy": Buggy, "pushing a double buggy": Buggy, "with her dog": Dog, "ran with the dogs": Dog, "ran against a dog": Runner, "s kočárkem": Buggy, "koiran kanssa": Dog, "cu câine": Dog, "mit dem Hund": Dog, "iepure": Pacer, "kõndija": Walker, "marsz": Walker,
		// None of these.
		"thanks to the pacer": Runner, "lost dog": Runner, "chased by a dog": Runner, "PB!": Runner, "no dog this week": Runner, "first walk-run after injury": Runner, "paced by Jo": Runner,
		"beat the wheelchair": Runner, "volunteer next week": Runner, "Walker family": Runner, "with Doug": Runner, "Hund am Start": Runner, "with club": Runner, "11th run": Runner, "": Runner,
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"Johnnie Walker", "24:31", "Dog and Gun Harriers", note})
		})
		if got := lines[0].TakingPart; got != want {
			t.Errorf("%q: %v, want %v", note, got, want)
		}
		if lines[0].Status != OK {
			t.Errorf("%q: %v", note, lines[0].Status)
		}
	}
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		for _, name := range []string{"Guide: Ann Fox", "Sam Lee - pacer", "Jo Hill – tail walker", "Lee - Walker, Jo", "Ann Lee - Walker", "Ben Oak: Fell", "Cy Dee - DNF", "Di Fox walking", "Ed Gow + dog", "Ida van der walk", "jo lee walking"} {
			yield([]string{name, "24:31", "", ""})
		}
	})
	want := []struct {
		name string
		part TakingPart
	}{{"Ann Fox", Guide}, {"Sam Lee", Pacer}, {"Jo Hill", BackMarker}, {"Lee - Walker, Jo", Runner}, {"Ann Lee - Walker", Runner}, {"Ben Oak: Fell", Runner}, {"Cy Dee", Runner}, {"Di Fox", Walker}, {"Ed Gow", Dog}, {"Ida van der walk", Runner}, {"jo lee walking", Runner}}
	for i, w := range want {
		if l := lines[i]; l.Name != w.name || l.TakingPart != w.part {
			t.Errorf("%q, %v, want %v", l.Name, l.TakingPart, w)
		}
	}
	if lines[6].Status != DNF {
		t.Errorf("Cy Dee - DNF: %v", lines[6].Status)
	}
}

// The words of the settings say how somebody took part, and what a line is worth.
func TestWordsOfSettings(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Club, c.Notes = 0, 1, 2, 3
	lines, _ := readRows(t, c, nil, Options{Words: map[string]string{"plodder": "walker", "sick note": "dns"}}, func(yield func([]string)) {
		yield([]string{"Sam Lee (pacer)", "24:31", "", ""})
		yield([]string{"Sam Lee (Oak Hill)", "24:31", "", "Plodder"})
		yield([]string{"Jo Lee", "", "", "sick note"})
	})
	if l := lines[0]; l.TakingPart != Pacer || l.Name != "Sam Lee" {
		t.Errorf("Sam Lee (pacer): %q, %v", l.Name, l.TakingPart)
	}
	if l := lines[1]; l.TakingPart != Walker || l.Name != "Sam Lee (Oak Hill)" {
		t.Errorf("Sam Lee (Oak Hill), plodder: %q, %v", l.Name, l.TakingPart)
	}
	if lines[2].Status != NotStarted {
		t.Errorf("sick note: %v", lines[2].Status)
	}
}

// Wheels are never impossible.
func TestWheels(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"Ada Brook", "11:02", "Wheelchair"})
		yield([]string{"Eve Hill", "11:03", "M40"})
	})
	if lines[0].Status != OK || lines[0].TakingPart != RacingWheelchair || lines[1].Status != Doubtful {
		t.Errorf("%v %v, %v", lines[0].Status, lines[0].TakingPart, lines[1].Status)
	}
}

func TestGivenAndFamily(t *testing.T) {
	c := NoColumns()
	c.Given, c.Family, c.Time = 0, 1, 2
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{" Ella-Mae ", "Hill", "24:31"})
		yield([]string{"", "Hill", "24:31"})
		yield([]string{"Jo", "", "24:31"})
	})
	for i, want := range []string{"Hill, Ella-Mae", "Hill", "Jo"} {
		if lines[i].Name != want {
			t.Errorf("%q, want %q", lines[i].Name, want)
		}
	}
}

// What a formula shows that found nothing says nothing, and is no club.
func TestFormulaErrors(t *testing.T) {
	c := NoColumns()
	c.Name, c.Sex, c.Age, c.Club, c.Time = 0, 1, 2, 3, 4
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"Jo Lee", "F", "34", "Fell AC", "24:31"})
		yield([]string{"#N/A", "#N/A", "#N/A", "#REF!", "24:40"})
		yield([]string{"Al Roe", "M", "44", "#REF!", "24:51"})
	})
	for i, want := range []string{"Fell AC", "", ""} {
		if lines[i].Club != want {
			t.Errorf("line %d: club %q, want %q", i, lines[i].Club, want)
		}
	}
	if lines[1].Status != Unnamed || len(lines[1].Problems) > 0 {
		t.Errorf("status %v, problems %v", lines[1].Status, lines[1].Problems)
	}
}

// Clean rows allocate nothing in either pass.
func TestNoAllocation(t *testing.T) {
	r, rows := cleanRows(1000)
	for i, row := range rows {
		r.Observe(i+2, row, raceDay, 0)
	}
	r.Settle()
	l := Line{}
	i := 0
	read := func() {
		r.Read(i+2, rows[i%len(rows)], raceDay, 5000, &l)
		if l.Status != OK || l.TimeMS == 0 || l.Sex == NotGiven || !l.Birth.Known() {
			t.Fatalf("row %v: %+v", rows[i%len(rows)], l)
		}
		i++
	}
	for range rows {
		read()
	}
	if n := testing.AllocsPerRun(1000, read); n != 0 {
		t.Errorf("%v allocations a row", n)
	}
	again, _ := cleanRows(1000)
	for i, row := range rows {
		again.Observe(i+2, row, raceDay, 0)
	}
	if n := testing.AllocsPerRun(1000, func() { again.Observe(5, rows[5], raceDay, 0) }); n != 0 {
		t.Errorf("%v allocations a row in the first pass", n)
	}
}

func cleanRows(n int) (*Reader, [][]string) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Group, c.Sex, c.Club, c.Number = 0, 1, 2, 3, 4, 5, 6
	groups := []string{"M40", "W35", "M45", "W50", "M20", "U17"}
	var rows [][]string
	for i := range n {
		g := groups[i%len(groups)]
		sex := "M"
		if g[0] == 'W' {
			sex = "F"
		}
		s := 1100 + i%2500
		clock := fmt.Sprintf("%d:%02d", s/60, s%60)
		if s >= 3600 {
			clock = fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
		}
		rows = append(rows, []string{fmt.Sprint(i + 1), "Ada " + strings.ToUpper(string(rune('a'+i%26))) + "rook" + string(rune('a'+i/26%26)), clock, g, sex, "Oak Hill Harriers", fmt.Sprint("A", 1000+i)})
	}
	return NewReader(c, nil, Options{}), rows
}

func BenchmarkObserve(b *testing.B) {
	r, rows := cleanRows(20000)
	b.ReportAllocs()
	for i := range b.N {
		r.Observe(i+2, rows[i%len(rows)], raceDay, 0)
	}
}

func BenchmarkRead(b *testing.B) {
	r, rows := cleanRows(20000)
	for i, row := range rows {
		r.Observe(i+2, row, raceDay, 0)
	}
	r.Settle()
	var l Line
	b.ReportAllocs()
	for i := range b.N {
		r.Read(i+2, rows[i%len(rows)], raceDay, 5000, &l)
	}
}

func BenchmarkCheckRun(b *testing.B) {
	r, rows := cleanRows(200)
	for i, row := range rows {
		r.Observe(i+2, row, raceDay, 0)
	}
	r.Settle()
	lines := make([]Line, len(rows))
	for i, row := range rows {
		r.Read(i+2, row, raceDay, 5000, &lines[i])
	}
	b.ReportAllocs()
	for range b.N {
		CheckRun(lines, 5000)
	}
}

func FuzzRow(f *testing.F) {
	f.Add("3=", "Sam Lee (walker)", "24:31", "M40", "F", "41", "dq: cut", "1985")
	f.Add("DNF", "", "PT24M", "x", "?", "64.31", "=cmd", "03/04/85")
	f.Fuzz(func(t *testing.T, pos, name, clock, group, sex, years, note, born string) {
		c := NoColumns()
		c.Position, c.Name, c.Time, c.Group, c.Sex, c.Age, c.Notes, c.BirthDate = 0, 1, 2, 3, 4, 5, 6, 7
		lines, _ := readRows(t, c, []string{pos, name}, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Ada Brook", "20:31", "M40", "M", "41", "", "1984-05-06"})
			yield([]string{pos, name, clock, group, sex, years, note, born})
			yield([]string{"3", "Eve Hill", "24:31", "W40"})
		})
		l := lines[1]
		if l.Row != 3 || l.Position < 0 || l.TimeMS < 0 {
			t.Errorf("%+v", l)
		}
		if l.Status == OK && (l.Name == "" || l.TimeMS < FastestMS(5000, l.Sex) && !l.TakingPart.OnWheels()) {
			t.Errorf("accepted: %+v", l)
		}
		for _, p := range l.Problems {
			if p.Place.Row != 3 || p.Kind == "" || p.Do == "" {
				t.Errorf("a problem without its place or what to do: %+v", p)
			}
		}
		CheckRun(lines, 5000)
	})
}

// A list of times and a list of people of one run, joined on position.
func TestJoin(t *testing.T) {
	times, people := NoColumns(), NoColumns()
	times.Position, times.Time = 0, 1
	people.Position, people.Name, people.Group, people.Notes = 0, 1, 2, 3
	ts, _ := readRows(t, times, nil, Options{}, func(yield func([]string)) {
		for i, s := range []string{"20:31", "24:31", "24:40", "", "11:02", "25:00", "10:59"} {
			yield([]string{fmt.Sprint(i + 1), s})
		}
	})
	ps, _ := readRows(t, people, nil, Options{}, func(yield func([]string)) {
		for i, s := range [][2]string{{"Ada Brook", ""}, {"Unknown", ""}, {"Eve Hill", "DQ"}, {"Jo Lee", ""}, {"Sam Lee", ""}, {"Kit Fox", "walker"}, {"Ivy Ash", "wheelchair"}} {
			yield([]string{fmt.Sprint(i + 1), s[0], "M40", s[1]})
		}
	})
	for i, want := range []Status{OK, Unnamed, DQ, Untimed, Doubtful, OK, OK} {
		l := ts[i]
		l.Join(&ps[i], 5000)
		if l.Status != want || want == OK && (l.TimeMS == 0 || l.Name == "" || l.Sex != M || !l.Birth.Known()) {
			t.Errorf("position %d: %v %q, want %v", i+1, l.Status, l.Name, want)
		}
	}
}

// A sheet whose groups go by the age on 31 December shows it where ages stand
// beside them.
func TestGroupBasis(t *testing.T) {
	c := NoColumns()
	c.Name, c.Time, c.Age, c.Group = 0, 1, 2, 3
	rows := func(group func(a, i int) int) func(yield func([]string)) {
		return func(yield func([]string)) {
			for i := range 60 {
				a := 30 + i%40
				yield([]string{fmt.Sprintf("Ada Brook%c%c", 'a'+i%26, 'a'+i/26), fmt.Sprintf("24:%02d", i), fmt.Sprint(a), fmt.Sprintf("M%d", group(a, i)/5*5)})
			}
		}
	}
	problems := func(lines []Line) (n int) {
		for _, l := range lines {
			n += len(l.Problems)
		}
		return n
	}
	onTheDay, _ := readRows(t, c, nil, Options{}, rows(func(a, i int) int { return a }))
	if onTheDay[0].Basis != age.OnTheDay || problems(onTheDay) != 0 {
		t.Errorf("on the day: %v, %d problems", onTheDay[0].Basis, problems(onTheDay))
	}
	// On 3 January nearly everybody's birthday is still to come.
	yearEnd, got := readRows(t, c, nil, Options{}, rows(func(a, i int) int { return a + 1 }))
	if problems(yearEnd) != 0 || !strings.Contains(got.Columns[len(got.Columns)-1].Why, "31 December") {
		t.Errorf("by 31 December: %d problems, %v", problems(yearEnd), got.Columns)
	}
}
