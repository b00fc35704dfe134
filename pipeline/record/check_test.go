package record

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
)

func run(times ...int32) []Line {
	var lines []Line
	for i, s := range times {
		lines = append(lines, Line{Row: int32(i + 2), Position: int32(i + 1), Name: fmt.Sprintf("Ada Brook%c", 'a'+i), TimeMS: s * 1000})
	}
	return lines
}

func kinds(ps []place.Problem) []string {
	var out []string
	for _, p := range ps {
		out = append(out, fmt.Sprintf("%d %s", p.Place.Row, p.Kind))
	}
	return out
}

func wantKinds(t *testing.T, ps []place.Problem, want ...string) {
	t.Helper()
	if got := kinds(ps); !slices.Equal(got, want) {
		t.Errorf("problems %q, want %q", got, want)
	}
}

// 9:25:04 behind 24:40 is the time of day; a walker of 3:40:00 is slow, and so is one of
// 4:12:00 behind walkers.
func TestTimesOfDayAtTheEnd(t *testing.T) {
	lines := run(1080, 1200, 1480, 9*3600+1504)
	wantKinds(t, CheckRun(lines, 5000), "5 time-of-day")
	if lines[3].Status != Doubtful {
		t.Errorf("%v", lines[3].Status)
	}
	for _, last := range []int32{3*3600 + 2400, 4*3600 + 300} {
		lines = run(1080, 1200, 3480, last)
		wantKinds(t, CheckRun(lines, 5000))
	}
}

func TestCheckOrder(t *testing.T) {
	lines := run(1080, 1200, 1300, 2471, 1500, 1600, 1700)
	wantKinds(t, CheckRun(lines, 5000), "5 time-out-of-order")
	if lines[3].Status != Doubtful || lines[4].Status != OK {
		t.Errorf("%v, %v", lines[3].Status, lines[4].Status)
	}
	lines = run(1190, 700, 1285, 1300) // an impossible time says nothing of the one before it
	wantKinds(t, CheckRun(lines, 5000), "3 time-impossible")
	if lines[0].Status != OK || lines[1].Status != Doubtful {
		t.Errorf("%v, %v", lines[0].Status, lines[1].Status)
	}
	lines = run(1080, 1200, 1202, 1201, 1500) // two watches
	ps := CheckRun(lines, 5000)
	if len(ps) != 1 || ps[0].Severity != place.Look || lines[2].Status != OK || lines[3].Status != OK {
		t.Errorf("a second out of order: %v", ps)
	}
	lines = run(1080, 1200, 1150, 1400, 1350, 1600, 1500, 1800, 1700) // own start times
	wantKinds(t, CheckRun(lines, 5000), "0 order-not-by-time")
	wantKinds(t, CheckRun(run(1080, 1080, 1200), 5000))
}

func TestCheckPositions(t *testing.T) {
	lines := run(1080, 1200, 1200, 1300, 1400)
	lines[1].Tied, lines[2].Tied, lines[2].Position = true, true, 2
	wantKinds(t, CheckRun(lines, 5000))
	lines[1].Tied = false // 2, 2=, 4
	wantKinds(t, CheckRun(lines, 5000))
	lines[2].Tied = false // 2, 2, 4 with one time: a tie that is not marked
	wantKinds(t, CheckRun(lines, 5000), "4 position-repeated")
	lines[2].TimeMS++ // 2, 2, 4: repeated, and 3 missing
	wantKinds(t, CheckRun(lines, 5000), "0 positions-missing", "4 position-repeated")
	lines = run(1080, 1200, 1300, 1400, 1500, 1600, 1700, 1800, 1900, 2000)
	lines = slices.Delete(lines, 4, 6)
	lines = slices.Delete(lines, 1, 2)
	if got, want := Missing(lines), []Gap{{2, 2}, {5, 6}}; !slices.Equal(got, want) {
		t.Errorf("missing %v, want %v", got, want)
	}
}

func TestCheckTwice(t *testing.T) {
	lines := run(1080, 1200, 1300)
	again := lines[1]
	again.Row = 9
	lines = append(lines, again)
	wantKinds(t, CheckRun(lines, 5000), "9 line-twice")
	if lines[3].Status != Repeat || lines[1].Status != OK {
		t.Errorf("%v, %v", lines[3].Status, lines[1].Status)
	}
	// Under another place, further down: the groups and the whole field are on one sheet.
	lines = run(1080, 1200, 1300)
	again = lines[1]
	again.Row, again.Position, again.Name, lines[1].Name = 12, 5, "Jo Lee", "Jo Lee"
	wantKinds(t, CheckRun(append(lines, again), 5000), "12 line-twice")
	// One number and name at two places: both stay, the second is doubtful.
	lines = run(1080, 1200, 1300)
	lines[0].Number, lines[2].Number, lines[2].Name = "A12", "A12", "ADA BROOKA"
	wantKinds(t, CheckRun(lines, 5000), "4 person-twice-on-sheet")
	if lines[0].Status != OK || lines[2].Status != Doubtful {
		t.Errorf("%v, %v", lines[0].Status, lines[2].Status)
	}
	// Father and son: windows apart.
	lines = run(1080, 1200, 1300)
	lines[2].Name = lines[0].Name
	lines[0].Birth, lines[2].Birth = age.OfYear(1970), age.OfYear(2000)
	wantKinds(t, CheckRun(lines, 5000))
	// The name alone is no proof.
	lines[2].Birth = age.Window{}
	lines[0].Club, lines[2].Club = "Oak Hill Harriers", "Elm Vale AC"
	wantKinds(t, CheckRun(lines, 5000), "4 person-twice-on-sheet")
	if lines[2].Status != OK {
		t.Errorf("name alone: %v", lines[2].Status)
	}
	// Of a name in full that stands twice without age and club the second is
	// doubtful; initials are several people's.
	for name, want := range map[string]Status{"Ada Brook": Doubtful, "A. Brook": OK, "Brook, A": OK, "A B Brook": OK} {
		lines = run(1080, 1200, 1300)
		lines[0].Name, lines[2].Name, lines[0].Club, lines[2].Club = name, name, "", ""
		lines[0].Birth, lines[2].Birth = age.Window{}, age.Window{}
		wantKinds(t, CheckRun(lines, 5000), "4 person-twice-on-sheet")
		if lines[2].Status != want {
			t.Errorf("%s twice: %v, want %v", name, lines[2].Status, want)
		}
	}
	// Initials at two places with one time are one person, scanned twice.
	lines = run(1080, 1200, 1200)
	lines[1].Name, lines[2].Name, lines[1].Club, lines[2].Club = "A. Brook", "A. Brook", "", ""
	wantKinds(t, CheckRun(lines, 5000), "4 person-twice-on-sheet")
	if lines[2].Status != Doubtful {
		t.Errorf("initials twice with one time: %v", lines[2].Status)
	}
	// One place and one time, and a name of the same words or with a slip.
	for name, want := range map[string]Status{"Hill Ada": Repeat, "HILL, ADA": Repeat, "Ada Hlil": Doubtful, "Ada Brookbank": OK, "Adda Brookbanks": Doubtful, "Bob Brookbanks": OK} {
		lines = run(1080, 1200, 1200)
		lines[1].Name, lines[2].Name, lines[2].Position = "Ada Hill", name, lines[1].Position
		if strings.Contains(name, "banks") {
			lines[1].Name = "Ada Brookbanks"
		}
		lines[1].Birth, lines[2].Birth = age.Window{}, age.Window{}
		CheckRun(lines, 5000)
		if lines[2].Status != want {
			t.Errorf("%s below %s: %v, want %v", name, lines[1].Name, lines[2].Status, want)
		}
	}
	// A number on two people.
	lines = run(1080, 1200, 1300)
	lines[0].Number, lines[2].Number = "A12", "A12"
	wantKinds(t, CheckRun(lines, 5000), "4 number-twice")
}

// The result does not depend on the order of the lines.
func TestCheckRunShuffled(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	var lines []Line
	for i := range 200 {
		lines = append(lines, Line{Row: int32(i + 2), Position: int32(i + 1), Name: fmt.Sprintf("Ada Brook%c%c", 'a'+rng.IntN(26), 'a'+rng.IntN(3)), TimeMS: int32(1000+i*5+rng.IntN(9)) * 1000, Number: fmt.Sprint(rng.IntN(150))})
	}
	lines[20].TimeMS, lines[50] = 4_000_000, lines[49]
	lines[50].Row = 52
	first := slices.Clone(lines)
	want := CheckRun(first, 5000)
	if len(want) < 5 {
		t.Fatalf("only %d problems: the case tests nothing", len(want))
	}
	for range 20 {
		again := slices.Clone(lines)
		rng.Shuffle(len(again), func(i, j int) { again[i], again[j] = again[j], again[i] })
		if got := CheckRun(again, 5000); !reflect.DeepEqual(got, want) {
			t.Fatalf("shuffled: %v\nwant %v", got, want)
		}
		slices.SortFunc(again, func(a, b Line) int { return int(a.Row - b.Row) })
		for i := range again {
			if again[i].Status != first[i].Status {
				t.Fatalf("row %d: %v, want %v", again[i].Row, again[i].Status, first[i].Status)
			}
		}
	}
}

// longestRise against all subsequences of short lists.
func TestLongestRise(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		n := rng.IntN(9)
		v := make([]int32, n)
		for i := range v {
			v[i] = int32(rng.IntN(6))
		}
		keep := longestRise(n, func(i int) int32 { return v[i] })
		kept, last := 0, int32(-1)
		for i, k := range keep {
			if k {
				if v[i] < last {
					t.Fatalf("%v: kept %v falls", v, keep)
				}
				last = v[i]
				kept++
			}
		}
		best := 0
		for mask := range 1 << n {
			m, last, ok := 0, int32(-1), true
			for i := range n {
				if mask>>i&1 == 1 {
					ok = ok && v[i] >= last
					last = v[i]
					m++
				}
			}
			if ok {
				best = max(best, m)
			}
		}
		if kept != best {
			t.Fatalf("%v: kept %d, longest is %d", v, kept, best)
		}
	}
}

// A line that its note calls void gives way to the line that replaces it; where
// none does, somebody has to be asked.
func TestVoidLines(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Notes = 0, 1, 2, 3
	for _, k := range []struct{ note, other, want string }{
		{"VOID", "2", "superseded ok"},
		{"vervallen, zie hieronder", "2", "superseded ok"},
		{"void see below", "3", "doubtful ok"},
		{"avoided the mud", "3", "ok ok"},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Jo Lee", "18:20", ""})
			yield([]string{"2", "Al Roe", "19:10", k.note})
			yield([]string{k.other, map[string]string{"2": "Al Roe", "3": "Cy Dee"}[k.other], "19:15", ""})
		})
		problems := CheckRun(lines, 5000)
		if got := lines[1].Status.String() + " " + lines[2].Status.String(); got != k.want {
			t.Errorf("%s: %s, want %s (%v)", k.note, got, k.want, problems)
		}
	}
}

// A line whose note says that it is corrected stands for an earlier one of the same person at the same place.
func TestCorrectedLine(t *testing.T) {
	lines := run(1080, 1200, 1300, 1210)
	lines[3].Name, lines[3].Position, lines[3].Note = lines[1].Name, 2, "corrected time"
	CheckRun(lines, 5000)
	if lines[1].Status != Superseded || lines[3].Status != OK {
		t.Errorf("%v, %v, want superseded, ok", lines[1].Status, lines[3].Status)
	}
	lines = run(1080, 1200, 1300, 1210)
	lines[1].Status, lines[1].Note = Doubtful, "wrong time - see corrected line"
	lines[3].Name, lines[3].Position, lines[3].Note = lines[1].Name, 2, "Zeit korrigiert"
	CheckRun(lines, 5000)
	if lines[1].Status != Superseded || lines[3].Status != OK {
		t.Errorf("with both: %v, %v, want superseded, ok", lines[1].Status, lines[3].Status)
	}
	lines = run(1080, 1200, 1300, 1210)
	lines[3].Name, lines[3].Position = lines[1].Name, 2
	CheckRun(lines, 5000)
	if lines[1].Status != OK || lines[3].Status != Doubtful {
		t.Errorf("without a note: %v, %v, want ok, doubtful", lines[1].Status, lines[3].Status)
	}
}
