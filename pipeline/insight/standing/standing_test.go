package standing

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"lapwing/pipeline/unit"
)

func clock(m, s int32) int32 { return 60*m + s }

func TestRanks(t *testing.T) {
	for _, c := range []struct {
		times []int32
		want  string
	}{
		{[]int32{clock(20, 1), clock(20, 15), clock(20, 15), clock(20, 30)}, "[1 2= 2= 4]"},
		{[]int32{clock(20, 30), 0, clock(20, 15), clock(20, 1), clock(20, 15)}, "[4  2= 1 2=]"},
		{[]int32{5, 5, 5}, "[1= 1= 1=]"},
		{nil, "[]"},
	} {
		if got := fmt.Sprint(Ranks(c.times)); got != c.want {
			t.Errorf("%v: %s, want %s", c.times, got, c.want)
		}
	}
}

func TestPercentile(t *testing.T) {
	for _, c := range []struct {
		slower, n, want int
		ok              bool
	}{{18, 23 + 1, 78, true}, {0, 10, 0, true}, {9, 10, 100, true}, {8, 9, 0, false}, {10, 10, 0, false}} {
		if p, ok := Percentile(c.slower, c.n); p != c.want || ok != c.ok {
			t.Errorf("%d of %d: %d %v", c.slower, c.n, p, ok)
		}
	}
}

func TestPlaces(t *testing.T) {
	got := Places([]Finisher{{7, false, clock(22, 10)}, {8, false, clock(22, 10)}, {0, false, clock(22, 11)}, {9, true, clock(22, 12)}, {9, true, clock(22, 12)}})
	if fmt.Sprint(got) != "[7 8  9= 9=]" {
		t.Errorf("by position: %v", got)
	}
	got = Places([]Finisher{{TimeS: clock(22, 10)}, {TimeS: clock(21, 0)}, {TimeS: clock(22, 10)}, {}})
	if fmt.Sprint(got) != "[2= 1 2= ]" {
		t.Errorf("by time: %v", got)
	}
}

func TestGroupPlaces(t *testing.T) {
	const m40, w40 = 40, 140
	got, ignored := GroupPlaces([]Rank{{4, false}, {6, false}, {9, false}}, []int32{m40, NoGroup, m40})
	if fmt.Sprint(got) != "[1  2]" || ignored != 1 {
		t.Errorf("4 (M40), 6 (unnamed), 9 (M40): %v, %d ignored", got, ignored)
	}
	got, ignored = GroupPlaces([]Rank{{9, false}, {3, true}, {3, true}, {3, true}, {}, {5, false}}, []int32{m40, m40, w40, m40, m40, w40})
	if fmt.Sprint(got) != "[3 1= 1 1=  2]" || ignored != 0 {
		t.Errorf("three at 3=: %v, %d ignored", got, ignored)
	}
}

func TestAhead(t *testing.T) {
	bests := []int32{1300, 1425, 1450, 1470, 1470, 1480, 1500, 1500, 1600, 0}
	got := Ahead(1500, bests, 3)
	want := []Target{
		{Rank{6, false}, 1480, 1479, 21},
		{Rank{4, true}, 1470, 1469, 31},
		{Rank{3, false}, 1450, 1449, 51},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	// 1425 would need 1424, 76 s or 5.07 % faster; 1426 would need exactly 5 %.
	if got := Ahead(1500, bests, 9); !reflect.DeepEqual(got, want) {
		t.Errorf("all of them: %v", got)
	}
	if got := Ahead(1500, []int32{1426}, 9); len(got) != 1 || got[0].FasterS != 75 {
		t.Errorf("exactly 5 %%: %v", got)
	}
	if got := Ahead(1300, bests, 3); got != nil {
		t.Errorf("ahead of the first: %v", got)
	}
}

// Common practice, no source: 15:00 for 5 km is 3:00 per km and 72 s per
// 400 m; 20:00 is 4:00, 96 s and 6:26.2 a mile.
func TestEvenPace(t *testing.T) {
	for _, c := range []struct {
		time   int32
		length float64
		n      int
		first  string
	}{{900, Kilometre, 5, "3:00"}, {900, Lap400, 13, "1:12"}, {1200, Kilometre, 5, "4:00"}, {1200, Lap400, 13, "1:36"}, {1200, Mile, 4, "6:26.2"}} {
		got := EvenPace(5000, c.time, c.length)
		if len(got) != c.n || got[0].String() != c.first {
			t.Fatalf("%d s every %v m: %v", c.time, c.length, got)
		}
		if last := got[len(got)-1]; last.Metres != 5000 || last.Tenths != 10*c.time {
			t.Errorf("%d s: finish %v", c.time, last)
		}
		for k, s := range got[:len(got)-1] {
			exact := float64(c.time) * float64(k+1) * c.length / 5000
			if math.Abs(float64(s.Tenths)/10-exact) > 0.05+1e-9 {
				t.Errorf("%d s, mark %d: %v, exactly %v s", c.time, k+1, s, exact)
			}
		}
	}
	if got := (Split{Tenths: 37230}).String(); got != "1:02:03" {
		t.Errorf("3723 s: %s", got)
	}
	if EvenPace(5000, 0, Mile) != nil || EvenPace(0, 900, Mile) != nil || EvenPace(5000, 900, 0) != nil {
		t.Error("splits out of nothing")
	}
}

func good(runner int32, change, sd float64) Candidate {
	return Candidate{Runner: runner, Record: Record{Before: 10, Recent: 4, Earlier: 10, GapWeeks: 8}, YoungAge: 18, Change: change, SD: sd}
}

// −2.9 % (−4.2 … −1.6) beats −3.8 % (−7.0 … −0.6): standard deviations such
// that the cautious ends are those. An interval that is even in logs is a
// little uneven in percent: the far ends come out at −4.18 and −6.90.
func TestMostImproved(t *testing.T) {
	sure := good(1, math.Log(1-.029), (math.Log(1-.016)-math.Log(1-.029))/1.2815515655446004)
	wild := good(2, math.Log(1-.038), (math.Log(1-.006)-math.Log(1-.038))/1.2815515655446004)
	unsure := good(3, -.01, .02)
	got := MostImproved([]Candidate{unsure, wild, sure})
	if got[0].Runner != 1 || got[1].Runner != 2 || got[2].Runner != 3 || got[2].Verdict != NotSure {
		t.Fatalf("order: %+v", got)
	}
	if got[0].Rank.String() != "1" || got[1].Rank.String() != "2" || got[2].Rank.String() != "" {
		t.Errorf("ranks: %+v", got)
	}
	for i, want := range [][3]float64{{-2.9, -4.18, -1.6}, {-3.8, -6.90, -.6}} {
		if math.Abs(got[i].Percent-want[0]) > .05 || math.Abs(got[i].Best-want[1]) > .005 || math.Abs(got[i].Least-want[2]) > .05 {
			t.Errorf("%d: %+v, want %v", i, got[i], want)
		}
	}
	// Φ(1.2816) is 0.9 (standard normal table): not over it.
	at := MostImproved([]Candidate{good(1, -1.2815515, 1), good(2, -1.2816, 1), good(3, -1.2816, 1)})
	if at[2].Verdict != NotSure || at[0].Rank.String() != "1=" || at[1].Rank.String() != "1=" {
		t.Errorf("at P .9: %+v", at)
	}
}

// Whoever is not ranked comes after all who are, whatever their numbers and however much
// faster; the ranked go by the cautious end, not by the middle, the others by number.
func TestOrderOfMostImproved(t *testing.T) {
	young, few := good(1, -.30, .01), good(4, -.30, .01)
	young.YoungAge, few.Record.Recent = 16, 0
	list := []Candidate{few, good(9, -.05, .01), young, good(8, -.09, .05), good(7, -.05, .01), good(6, -.06, .01)}
	want := []struct {
		runner int32
		rank   string
	}{{6, "1"}, {7, "2="}, {9, "2="}, {8, "4"}, {1, ""}, {4, ""}}
	rng := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		rng.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		got := MostImproved(list)
		for i, w := range want {
			if got[i].Runner != w.runner || got[i].Rank.String() != w.rank {
				t.Fatalf("line %d: runner %d, rank %q, want %d, %q (%+v)", i+1, got[i].Runner, got[i].Rank, w.runner, w.rank, got)
			}
		}
	}
}

// Two who are last and equal share their rank.
func TestLastTwoShareARank(t *testing.T) {
	got := MostImproved([]Candidate{good(1, -.06, .01), good(2, -.05, .01), good(3, -.05, .01)})
	if got[0].Rank.String() != "1" || got[1].Rank.String() != "2=" || got[2].Rank.String() != "2=" {
		t.Errorf("%+v", got)
	}
}

// The first day of the season is of the season.
func TestEarlierIsBeforeTheSeason(t *testing.T) {
	start := unit.NewDay(2026, 1, 1)
	if got := RecordOf([]unit.Day{start - 1, start, start + 1}, start, start+200); got.Earlier != 1 {
		t.Errorf("%d results before the season, want 1", got.Earlier)
	}
}

// The gates stand where they are said to: the least that passes, and one less.
func TestLeastThatPasses(t *testing.T) {
	c := good(1, -.05, .01)
	c.Record = Record{Before: 4, Recent: 4, Earlier: 10, GapWeeks: 8}
	if got := MostImproved([]Candidate{c})[0]; got.Verdict != Ranked {
		t.Errorf("4 results before, 4 since, 10 before the season and 8 weeks between: %v", got.Verdict)
	}
}

// The longest gap is that among the last four results up to the baseline: the one
// before the fourth from last doesn't count, the one after it does.
func TestGapBeforeTheBaseline(t *testing.T) {
	asOf := unit.NewDay(2026, 6, 27)
	base := asOf - 7*WindowWeeks
	for _, c := range []struct {
		weeks []unit.Day // before the baseline
		gap   float64
	}{
		{[]unit.Day{40, 10, 4, 2, 0}, 6},
		{[]unit.Day{40, 3, 2, 1, 0}, 1},
		{[]unit.Day{20, 5, 0}, 15},
		{[]unit.Day{0}, 0},
	} {
		var days []unit.Day
		for _, w := range c.weeks {
			days = append(days, base-7*w)
		}
		if got := RecordOf(days, asOf, asOf); got.GapWeeks != c.gap || got.Before != len(days) || got.BaselineAt != base {
			t.Errorf("%v weeks before the baseline: %+v, want a gap of %v weeks", c.weeks, got, c.gap)
		}
	}
}

func TestGatesOfMostImproved(t *testing.T) {
	for want, spoil := range map[Verdict]func(*Candidate){
		Ranked:        func(c *Candidate) {},
		TooFewBefore:  func(c *Candidate) { c.Record.Before = 3 },
		TooFewRecent:  func(c *Candidate) { c.Record.Recent = 3 },
		TooFewEarlier: func(c *Candidate) { c.Record.Earlier = 9 },
		BreakBefore:   func(c *Candidate) { c.Record.GapWeeks = 8.2 },
		NotAdult:      func(c *Candidate) { c.YoungAge = 17 },
		NotSure:       func(c *Candidate) { c.SD = 0 },
	} {
		c := good(1, -.05, .01)
		spoil(&c)
		if got := MostImproved([]Candidate{c})[0]; got.Verdict != want || got.Verdict.String() == "" {
			t.Errorf("%v, want %v", got.Verdict, want)
		}
	}
}

func TestRecordOf(t *testing.T) {
	season, asOf := unit.NewDay(2026, 1, 1), unit.NewDay(2026, 6, 27)
	days := []unit.Day{
		unit.NewDay(2025, 6, 7), unit.NewDay(2025, 12, 6), // a long gap, but far back
		unit.NewDay(2025, 12, 13), unit.NewDay(2026, 1, 3), unit.NewDay(2026, 1, 31), unit.NewDay(2026, 4, 4), // 84 days before
		unit.NewDay(2026, 4, 5), unit.NewDay(2026, 6, 27), unit.NewDay(2026, 7, 4),
	}
	got := RecordOf(days, season, asOf)
	if want := (Record{Before: 6, Recent: 2, Earlier: 3, GapWeeks: 9, BaselineAt: unit.NewDay(2026, 4, 4)}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got := RecordOf(days[6:], season, asOf); got != (Record{Recent: 2}) {
		t.Errorf("no baseline: %+v", got)
	}
}
