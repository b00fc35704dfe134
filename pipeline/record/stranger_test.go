package record

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/age"
)

// Ages in brackets behind names: where the heading says so, or where numbers
// stand twice as ages do; runners' numbers, which differ, are none.
func TestAgeBehindName(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	lo := func(l Line) int {
		from, to, ok := l.Birth.On(raceDay)
		if !ok || from != to {
			return -1
		}
		return from
	}
	for _, k := range []struct {
		heading string
		number  func(i int) string
		want    int // age of the first line, -1 not known
	}{
		{"Name (age)", func(i int) string { return fmt.Sprintf(" (%d)", 35+i) }, 35},
		{"Name", func(i int) string { return fmt.Sprintf(" (%d)", 35+i%5) }, 35},
		{"Name", func(i int) string { return fmt.Sprintf(" (%d)", 35+i) }, -1},
		{"Name", func(i int) string { return "" }, -1},
		{"Name (age)", func(i int) string { return fmt.Sprintf(" (%02d)", 5+i) }, 5},
	} {
		lines, _ := readRows(t, c, []string{"Pos", k.heading, "Time"}, Options{}, func(yield func([]string)) {
			for i := range 12 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c%s", 'a'+i, k.number(i)), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		if got := lo(lines[0]); got != k.want {
			t.Errorf("%s, %s: age %d, want %d", k.heading, k.number(0), got, k.want)
		}
	}
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		for i := range 6 {
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c (%d)", 'a'+i, 1980+i), fmt.Sprintf("%d:%02d", 20+i, i)})
		}
	})
	for _, form := range []string{" *%d", " Jg. %d", " geb. %d"} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i := range 6 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c"+form, 'a'+i, 1980+i), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		if lines[0].Birth != age.OfYear(1980) {
			t.Errorf("year behind the name in the form %q: %v", form, lines[0].Birth)
		}
	}
	for _, heading := range []string{"Name (Jg.)", "Name"} {
		lines, _ := readRows(t, c, []string{"Pos", heading, "Time"}, Options{}, func(yield func([]string)) {
			for i, y := range []int{80, 81, 4, 75, 66, 9} { // 04 and 09 are no ages
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c (%02d)", 'a'+i, y), fmt.Sprintf("%d:%02d", 20+i, i)})
			}
		})
		if lines[0].Birth != age.OfYear(1980) || lines[2].Birth != age.OfYear(2004) {
			t.Errorf("%s: two-figure years behind names: %v, %v", heading, lines[0].Birth, lines[2].Birth)
		}
	}
	if want := age.OfYear(1980); lines[0].Birth != want {
		t.Errorf("year behind the name: %v, want %v", lines[0].Birth, want)
	}
}

// Thousandths of a second are whole numbers that nothing else can be.
func TestMilliseconds(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	lines, r := readRows(t, c, []string{"position", "name", "finish_time_ms"}, Options{}, func(yield func([]string)) {
		for i, ms := range []int{971004, 1177611, 1333356, 1471000} {
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprint(ms)})
		}
	})
	if len(r.Problems) > 0 || lines[0].TimeMS != 971004 || lines[3].TimeMS != 1471000 {
		t.Errorf("%d, %d, %v", lines[0].TimeMS, lines[3].TimeMS, r.Problems)
	}
}

// A time without a place among lines that have one is believed where it lies
// between its neighbours.
func TestCheckUnplaced(t *testing.T) {
	lines := run(1080, 1200, 1300, 1400, 1500, 1600)
	lines = append(lines, Line{Row: 8, Name: "Course Best", TimeMS: 1001000})
	wantKinds(t, CheckRun(lines, 5000), "8 line-without-place")
	for _, note := range []string{"late entry", "Nachmeldung", "пізня реєстрація", "当日受付"} {
		added := append(slices.Clone(lines[:6:6]), Line{Row: 8, Name: "Di Fox", TimeMS: 1331000, Note: note})
		if wantKinds(t, CheckRun(added, 5000)); added[6].Status != OK {
			t.Errorf("%q: %v", note, added[6].Status)
		}
	}
	if lines[6].Status != Doubtful || lines[5].Status != OK {
		t.Errorf("%v, %v", lines[6].Status, lines[5].Status)
	}
	lines = run(1080, 1200, 1300, 1400, 1500, 1600)
	lines = append(lines, Line{Row: 8, Name: "Late Walker", TimeMS: 3001000})
	wantKinds(t, CheckRun(lines, 5000))
	lines = append(run(1080, 1200, 1300, 1400, 1500, 1600), Line{Row: 8, Name: "Di Fox", Sex: W, TimeMS: 1331000})
	if wantKinds(t, CheckRun(lines, 5000)); lines[6].Status != OK {
		t.Errorf("a runner who is described: %v", lines[6].Status)
	}
}

// Places that begin again under one another are of men and of women: each is
// checked by itself.
func TestCheckSections(t *testing.T) {
	lines := append(run(1080, 1200, 1300, 1400), run(1190, 1310, 1500)...)
	for i := range lines {
		lines[i].Row = int32(i + 2)
		lines[i].Name = fmt.Sprintf("Ada Brook%c", 'a'+i)
	}
	wantKinds(t, CheckRun(lines, 5000))
	lines[5].TimeMS = 2400 * 1000
	wantKinds(t, CheckRun(lines, 5000), "7 time-out-of-order")
}

// Sections of a single line, each numbered from 1: no place is given twice and no time
// is out of order.
func TestCheckShortSections(t *testing.T) {
	lines := run(2300, 1080, 1200, 1300, 1950, 1400, 1500)
	for i, p := range []int32{1, 1, 2, 3, 1, 1, 2} {
		lines[i].Position = p
	}
	wantKinds(t, CheckRun(lines, 5000))
	// Without another section it is the same place twice.
	lines = run(1080, 1200, 1300)
	lines[1].Position, lines[2].Position = 1, 2
	wantKinds(t, CheckRun(lines, 5000), "3 position-repeated")
}

// V45 beside a column of M and V is a woman's group, also where that column is blank.
func TestGroupBesideVrouw(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Sex, c.Group = 0, 1, 2, 3, 4
	lines, _ := readRows(t, c, []string{"Pl", "Naam", "Tijd", "M/V", "Cat"}, Options{}, func(yield func([]string)) {
		for i, row := range [][2]string{{"M", "M40"}, {"V", "V45"}, {"", "V40"}, {"M", "M45"}, {"V", "V40"}} {
			yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("%d:02", 20+i), row[0], row[1]})
		}
	})
	if lines[2].Sex != W {
		t.Errorf("V40 is of %v", lines[2].Sex)
	}
}

// Shortened words for the sexes.
func TestSexShortened(t *testing.T) {
	for text, want := range map[string]sexMark{"männl.": sureM, "weibl.": sureW, "Masch.": sureM, "Femm.": sureW, "Kob.": sureW, "Mężcz.": sureM, "chł.": sureM, "dz.": sureW} {
		if got := parseSex(fold(nil, text)); got != want {
			t.Errorf("%s: %c, want %c", text, got, want)
		}
	}
}

// Signs for the sexes.
func TestSexSigns(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Sex = 0, 1, 2, 3
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"1", "Ada Brook", "20:02", "♀"})
		yield([]string{"2", "Eve Hill", "20:12", "♂"})
	})
	if lines[0].Sex != W || lines[1].Sex != M {
		t.Errorf("%v, %v", lines[0].Sex, lines[1].Sex)
	}
}

// What stands around a time without changing it; minutes alone, which leave the
// seconds open; and a reason in a note that takes away a place, or is asked about
// beside one.
func TestTimesInUnits(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Sex, c.Notes = 0, 1, 2, 3, 4
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		for i, r := range [][]string{
			{"1", "20:00", "E", ""}, {"2 (tie)", "PB 20:10", "K", ""}, {"2 (tie)", "20:10.", "E", ""}, {"4", "20:20 1st timer", "K", ""}, {"5", "20:30 NR", "E", ""},
			{"6", "2026-01-03 00:20:40", "K", ""}, {"7", "21", "E", ""}, {"8", "21:50", "E", "DQ shoes"}, {"", "22:00", "E", "DQ short course"}, {"9", "22:10", "K", ""}, {"10", "22:11", "K", ""}, {"11", "22:12", "K", ""},
		} {
			yield([]string{r[0], fmt.Sprintf("Ada Brook%c", 'a'+i), r[1], r[2], r[3]})
		}
	})
	for i, want := range []int32{1200, 1210, 1210, 1220, 1230, 1240} {
		if l := lines[i]; l.TimeMS != want*1000 || l.Status != OK {
			t.Errorf("row %d: %d ms, %v, want %d s", l.Row, l.TimeMS, l.Status, want)
		}
	}
	if l := lines[2]; l.Position != 2 || !l.Tied {
		t.Errorf("place %d, tied %v", l.Position, l.Tied)
	}
	if l := lines[6]; l.Status != Doubtful {
		t.Errorf("minutes without seconds: %v", l.Status)
	}
	if a, b := lines[7].Status, lines[8].Status; a != Doubtful || b != DQ {
		t.Errorf("a note beside a place %v, beside none %v", a, b)
	}
	if lines[0].Sex != M || lines[1].Sex != W {
		t.Errorf("E and K are %v and %v", lines[0].Sex, lines[1].Sex)
	}
}

// Beside a year of birth a group says nothing more unless the sheet shows that
// groups are reckoned on the day of the run.
func TestGroupBesideYear(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.BirthYear, c.Group = 0, 1, 2, 3, 4
	year, _, _ := raceDay.Date()
	for _, onTheDay := range []bool{false, true} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i := range 6 {
				group := "M40"
				if onTheDay && i > 2 {
					group = "M35" // 40 in this year, and not yet on the day
				}
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("%d:%02d", 20+i, i), fmt.Sprint(year - 40), group})
			}
		})
		lo, hi, _ := lines[0].Birth.On(raceDay)
		if want := map[bool]int{false: 39, true: 40}[onTheDay]; lo != want || hi != 40 {
			t.Errorf("groups on the day %v: %d to %d, want %d to 40", onTheDay, lo, hi, want)
		}
	}
}

// Minutes that a spreadsheet took for hours, shown as the parts of a day they are
// stored as; and hours as decimal numbers, which stay what they are.
func TestDayMinutes(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		value func(s int) float64
		what  string
	}{
		{func(s int) float64 { return float64(s) / 1440 }, "24:31:00"},
		{func(s int) float64 { return float64(s) / 3600 }, "decimal hours"},
		{func(s int) float64 { return float64(s) / 86400 }, "day fractions"},
	} {
		lines, r := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i := range 12 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprint(k.value(1126 + 47*i))})
			}
		})
		if len(r.Problems) > 0 || lines[0].TimeMS != 1126000 || lines[11].TimeMS != (1126+47*11)*1000 {
			t.Errorf("%s: %d and %d ms, %v", k.what, lines[0].TimeMS, lines[11].TimeMS, r.Problems)
		}
	}
}

// Times with units in the words of several languages, and with marks behind them.
func TestTimesWithUnitWords(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, format := range []string{"%d min %02d sek", "%d мин %02d с", "%d perc %02d mp", "%d dk %02d sn", "%d:%02d†", "%d:%02d NB", "%d min. %02d sek."} {
		lines, r := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i := range 6 {
				yield([]string{fmt.Sprint(i + 1), fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf(format, 20+i, 31+i)})
			}
		})
		if len(r.Problems) > 0 || lines[0].TimeMS != 1231000 || lines[5].TimeMS != (25*60+36)*1000 {
			t.Errorf("%s: %d and %d ms, %v", format, lines[0].TimeMS, lines[5].TimeMS, r.Problems)
		}
	}
}

// Sexes and groups that stand beside something else: in brackets behind names, before
// places. What is no group is none.
func TestSexBesideSomething(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		place, behind []string
		want          string
	}{
		{nil, []string{"(M)", "(F)", "(F)", "(M)"}, "M|W|W|M"},
		{nil, []string{"[M40]", "[F35]", "[F]", "[M55]"}, "M 40-44|W 35-39|W|M 55-59"},
		{nil, []string{"(Mere AC)", "(F)", "(Fell)", "(Dale)"}, "|||"},
		{[]string{"M1", "F1", "M2", "F2"}, nil, "M|W|M|W"},
		{[]string{"A1", "B1", "A2", "B2"}, nil, "|||"},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			for i := range 4 {
				place, name := fmt.Sprint(i+1), fmt.Sprintf("Ada Brook%c", 'a'+i)
				if k.place != nil {
					place = k.place[i]
				}
				if k.behind != nil {
					name += " " + k.behind[i]
				}
				yield([]string{place, name, fmt.Sprintf("%d:31", 20+i)})
			}
		})
		var got []string
		for _, l := range lines {
			got = append(got, agesOf(l))
		}
		if s := strings.Join(got, "|"); s != k.want {
			t.Errorf("%v %v: %q, want %q", k.place, k.behind, s, k.want)
		}
	}
}
