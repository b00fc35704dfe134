package league

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

const saturday = unit.Day(20456) // 2026-01-03

func TestSaturday(t *testing.T) {
	if saturday.String() != "2026-01-03" {
		t.Fatal(saturday)
	}
}

func TestPoints(t *testing.T) {
	s := DefaultScheme()
	for place, want := range map[int32]int32{1: 100, 2: 99, 4: 97, 100: 1, 101: 1, 5000: 1} {
		if got := s.Points(place); got != want {
			t.Errorf("place %d: %d points, want %d", place, got, want)
		}
	}
	two := Scheme{First: 50, Step: 2, Least: 0}
	for place, want := range map[int32]int32{1: 50, 2: 48, 26: 0, 30: 0} {
		if got := two.Points(place); got != want {
			t.Errorf("two fewer each, place %d: %d points, want %d", place, got, want)
		}
	}
	if err := two.check(); err != nil {
		t.Errorf("at least nothing: %v", err)
	}
	s.Table, s.Least = []int32{25, 18, 15}, 2
	for place, want := range map[int32]int32{1: 25, 3: 15, 4: 2} {
		if got := s.Points(place); got != want {
			t.Errorf("table, place %d: %d points, want %d", place, got, want)
		}
	}
}

// season turns rows of positions, one row a run, one column a runner (0 = not
// there), into results. Runner ids are 1, 2, …
func season(rows ...[]int32) []Result {
	var out []Result
	for e, row := range rows {
		for r, p := range row {
			if p > 0 {
				out = append(out, Result{Runner: int32(r + 1), Event: int32(e), Day: saturday + unit.Day(7*e), Position: p})
			}
		}
	}
	return out
}

func table(t *testing.T, results []Result, helped []Helped, rules Rules) string {
	t.Helper()
	lines, err := Runners(results, helped, rules)
	if err != nil {
		t.Fatal(err)
	}
	return text(lines)
}

// text prints a table as "rank:id total" each.
func text(lines []Line) string {
	var out []string
	for _, l := range lines {
		mark := ""
		if l.Shared {
			mark = "="
		}
		out = append(out, fmt.Sprintf("%d%s:%d %d", l.Rank, mark, l.ID, l.Total))
	}
	return strings.Join(out, ", ")
}

func check(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s: %s, want %s", what, got, want)
	}
}

// 1, 2=, 2=, 4: 100, 99, 99, 97. Positions are in a larger field.
func TestEqualPositionsShareTheHigher(t *testing.T) {
	check(t, "one run", table(t, season([]int32{30, 4, 9, 9}), nil, DefaultRules()), "1:2 100, 2=:3 99, 2=:4 99, 4:1 97")
	rules := DefaultRules()
	rules.ByPosition = true
	check(t, "by position", table(t, season([]int32{30, 4, 9, 9}), nil, rules), "1:2 97, 2=:3 92, 2=:4 92, 4:1 71")
}

// With points by position, a runner's positions give the points wanted:
// 101 − points. N 3: 100 98 90 85 beats 100 98 90 80.
func byPoints(rows ...[]int32) []Result {
	for _, row := range rows {
		for i, p := range row {
			if p > 0 {
				row[i] = 101 - p
			}
		}
	}
	return season(rows...)
}

func TestBestN(t *testing.T) {
	rules := DefaultRules()
	rules.Best, rules.ByPosition = 3, true
	results := byPoints([]int32{80, 100}, []int32{90, 98}, []int32{98, 85}, []int32{100, 90})
	check(t, "the fourth decides", table(t, results, nil, rules), "1:2 288, 2:1 288")

	results = byPoints([]int32{100, 99}, []int32{90, 99}, []int32{98, 90})
	check(t, "the best single decides", table(t, results, nil, rules), "1:1 288, 2:2 288")

	results = byPoints([]int32{100, 100}, []int32{94, 95}, []int32{94, 93})
	check(t, "the next decides", table(t, results, nil, rules), "1:2 288, 2:1 288")

	// A fifth best is beyond N+1 and decides nothing; they never met.
	results = byPoints([]int32{100, 0}, []int32{98, 0}, []int32{90, 0}, []int32{85, 0}, []int32{70, 0},
		[]int32{0, 100}, []int32{0, 98}, []int32{0, 90}, []int32{0, 85}, []int32{0, 60})
	check(t, "never met", table(t, results, nil, rules), "1=:1 288, 1=:2 288")

	results = byPoints([]int32{100, 98}, []int32{98, 100}, []int32{90, 0}, []int32{0, 90}, []int32{60, 60})
	check(t, "one each, and a dead heat", table(t, results, nil, rules), "1=:1 288, 1=:2 288")
}

// Of equal results the earliest counts.
func TestEarliestOfEquals(t *testing.T) {
	rules := DefaultRules()
	rules.Best = 2
	lines, err := Runners(season([]int32{1}, []int32{1}, []int32{1}), nil, rules)
	if err != nil {
		t.Fatal(err)
	}
	var counts []bool
	for _, s := range lines[0].Scores {
		counts = append(counts, s.Counts)
	}
	if lines[0].Total != 200 || !reflect.DeepEqual(counts, []bool{true, true, false}) {
		t.Errorf("total %d, counting %v", lines[0].Total, counts)
	}
}

func TestHeadToHead(t *testing.T) {
	rules := DefaultRules()
	rules.Best, rules.ByPosition = 2, true
	// Best two and third equal (100 98 60); met in runs 0, 1, 2 with 1 before 2
	// in two of them.
	results := byPoints([]int32{60, 50}, []int32{100, 98}, []int32{98, 100}, []int32{0, 60})
	check(t, "two of three", table(t, results, nil, rules), "1:1 198, 2:2 198")

	// Three in a ring, each before the next once: shared.
	results = byPoints([]int32{100, 98, 0}, []int32{0, 100, 98}, []int32{98, 0, 100})
	check(t, "a ring", table(t, results, nil, rules), "1=:1 198, 1=:2 198, 1=:3 198")

	// Four equal: 1 and 2 are each one up over 3, 4; among themselves 2 leads 1.
	d := duels{
		1: {{0, 1}, {9, 2}}, 3: {{0, 2}},
		2: {{1, 1}, {9, 1}}, 4: {{1, 2}, {2, 2}},
		5: {{2, 1}},
	}
	if d.against(1, 3) != 1 || d.against(3, 1) != -1 || d.against(1, 2) != -1 || d.against(1, 4) != 0 {
		t.Error("against:", d.against(1, 3), d.against(3, 1), d.against(1, 2), d.against(1, 4))
	}
	group := []Line{{ID: 1}, {ID: 2}, {ID: 3}, {ID: 4}, {ID: 5}}
	headToHead(group, 3, d) // 2 is two up, 5 one, 1 level, 3 one down, 4 two down
	check(t, "all parted", text(group), "3:2 0, 4:5 0, 5:1 0, 6:3 0, 7:4 0")

	// 1 and 2 both beat 3; they are level overall, and again between themselves.
	d = duels{1: {{0, 1}, {1, 1}, {2, 2}}, 2: {{1, 2}, {2, 1}, {3, 1}}, 3: {{0, 2}, {3, 2}}}
	group = []Line{{ID: 3}, {ID: 2}, {ID: 1}}
	headToHead(group, 1, d)
	check(t, "two stay level", text(group), "1=:1 0, 1=:2 0, 3:3 0")

	// Level over the group of four, parted when only the two level ones are
	// compared: 1 one up on 2 and one down to 4; 2 one up on 3.
	d = duels{1: {{0, 1}, {1, 2}}, 2: {{0, 2}, {2, 1}}, 3: {{2, 2}}, 4: {{1, 1}}}
	group = []Line{{ID: 1}, {ID: 2}, {ID: 3}, {ID: 4}}
	headToHead(group, 1, d)
	check(t, "again among those level", text(group), "1:4 0, 2:1 0, 3:2 0, 4:3 0")
}

func TestSecondClaim(t *testing.T) {
	results := season([]int32{1, 2, 3})
	results[1].Claim = SecondClaim
	lines, err := Runners(results, nil, DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	check(t, "listed", text(lines), "1:1 100, 2:3 99, 0:2 0")
	if lines[2].ListOnly != 1 || lines[2].Runs != 0 {
		t.Errorf("%+v", lines[2])
	}
	rules := DefaultRules()
	rules.SecondClaimScores = true
	check(t, "scoring", table(t, results, nil, rules), "1:1 100, 2:2 99, 3:3 98")

	// First claim on one day and second on another: the day decides.
	results = season([]int32{2, 1}, []int32{2, 1})
	results[1].Claim = SecondClaim
	check(t, "changed claim", table(t, results, nil, DefaultRules()), "1:1 199, 2:2 100")
}

// A volunteer week scores the own average: 100, 99 and 99 are 99.33, 99; 100
// and 99 are 99.5, 100.
func TestVolunteerWeeks(t *testing.T) {
	results := season([]int32{1, 2, 0}, []int32{2, 1, 0}, []int32{2, 1, 0})
	week := func(n int) unit.Day { return saturday + unit.Day(7*n) }
	helped := []Helped{{Runner: 1, Day: week(5)}, {Runner: 1, Day: week(5) - 1}, {Runner: 1, Day: week(2) - 1}, {Runner: 3, Day: week(4)}}
	lines, err := Runners(results, helped, DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	// Runner 1: week 5 once, week 2 not, as she ran. Runner 3 never scored.
	check(t, "average", text(lines), "1:1 397, 2:2 299")
	if lines[0].Helped != 1 || lines[0].Runs != 3 || !lines[0].Scores[3].Volunteer || lines[0].Scores[3].Points != 99 {
		t.Errorf("%+v", lines[0])
	}
	check(t, "half up", table(t, season([]int32{1, 2}, []int32{2, 1}), helped[:1], DefaultRules()), "1:1 299, 2:2 199")

	rules := DefaultRules()
	rules.Volunteer, rules.VolunteerPoints = FixedCredit, 50
	check(t, "fixed", table(t, results, helped, rules), "1:1 348, 2:2 299, 3:3 50")
	rules.MinRuns = 1
	check(t, "fixed, one run at least", table(t, results, helped, rules), "1:1 348, 2:2 299, 0:3 50")
	rules.Volunteer = NoCredit
	check(t, "none", table(t, results, helped, rules), "1:2 299, 2:1 298")

	rules = DefaultRules()
	rules.VolunteerMost = 1
	more := append(helped, Helped{Runner: 1, Day: week(6)})
	check(t, "at most one", table(t, results, more, rules), "1:1 397, 2:2 299")
}

// Whoever shares the first place has the points of the first; nothing limited, all
// scores count; a table of one place gives the others the least.
func TestFirstShared(t *testing.T) {
	rules := Rules{Points: DefaultScheme()}
	check(t, "first shared", table(t, season([]int32{4, 4, 9}), nil, rules), "1=:1 100, 1=:2 100, 3:3 98")
	rules.Points = Scheme{Table: []int32{30}, Least: 5}
	check(t, "one place in the table", table(t, season([]int32{1, 2}, []int32{1, 2}), nil, rules), "1:1 60, 2:2 10")
}

// A week of helping is worth what one run was.
func TestHelpingAfterOneRun(t *testing.T) {
	rules := DefaultRules()
	rules.Volunteer = OwnAverage
	check(t, "one run, one week", table(t, season([]int32{1, 2}), []Helped{{Runner: 2, Day: saturday + 21}}, rules), "1:2 198, 2:1 100")
}

func TestMinRuns(t *testing.T) {
	rules := DefaultRules()
	rules.MinRuns = 2
	if rules.Best != 10 {
		t.Errorf("the best %d count, want 10", rules.Best)
	}
	// However many points somebody has from one run, two runs come first.
	steep := rules
	steep.Points.Step = 90
	check(t, "two at least, more points from one", table(t, season([]int32{1, 2, 0}, []int32{0, 2, 1}), nil, steep), "1:2 20, 0:1 100, 0:3 100")
	check(t, "two at least", table(t, season([]int32{1, 2, 3}, []int32{0, 2, 1}), nil, rules), "1:3 198, 2:2 198, 0:1 100")
}

func TestClubs(t *testing.T) {
	// Clubs 10 and 20; run 0: 10 has 1st, 4th, 5th, 20 has 2nd, 3rd; two score.
	results := season([]int32{1, 2, 3, 4, 5}, []int32{1, 2, 0, 0, 0})
	for i := range results {
		results[i].Club = 10
		if r := results[i].Runner; r == 2 || r == 3 {
			results[i].Club = 20
		}
	}
	clubs := func(scorers int, rules Rules) string {
		t.Helper()
		lines, err := Clubs(results, scorers, rules)
		if err != nil {
			t.Fatal(err)
		}
		return text(lines)
	}
	check(t, "two score", clubs(2, DefaultRules()), "1:10 297, 2:20 296")
	check(t, "all score", clubs(0, DefaultRules()), "1:10 393, 2:20 296")
	rules := DefaultRules()
	rules.Best = 1
	check(t, "best run", clubs(2, rules), "1:10 197, 2:20 197") // 197 each in run 0; the second best 100 against 99
}

// A club's points are those of the women's and the men's list, in which people
// without a club, here runners 1 and 4, have places too.
func TestClubsOfTwoLists(t *testing.T) {
	results := season([]int32{1, 2, 3, 4, 5, 6})
	for i := range results {
		r := &results[i]
		r.List = (r.Runner + 1) % 2 // 0, 2, 4 on one list, 1, 3, 5 on the other
		r.Club = []int32{0, 0, 10, 10, 20, 0, 20}[r.Runner]
	}
	lines, err := Clubs(results, 2, DefaultRules())
	if err != nil {
		t.Fatal(err)
	}
	// 10: runner 1 first of a list, runner 2 second of the other; 20: second and third
	check(t, "two lists", text(lines), "1:10 199, 2:20 197")
}

// Of two with the same total, one by a week of helping, more runs go before: the
// week is no score to compare.
func TestHelpingPartsNoTie(t *testing.T) {
	rules := DefaultRules()
	rules.Best = 2
	// both first in two runs that the other missed; runner 1 has helped besides
	results := season([]int32{1, 0}, []int32{1, 0}, []int32{0, 1}, []int32{0, 1})
	check(t, "equal", table(t, results, []Helped{{Runner: 1, Day: saturday + 42}}, rules), "1=:1 200, 1=:2 200")
}

func TestOrderOfInputDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	var rows [][]int32
	for range 12 {
		row := make([]int32, 40)
		for i := range row {
			if rng.IntN(3) > 0 {
				row[i] = int32(1 + rng.IntN(30))
			}
		}
		rows = append(rows, row)
	}
	results := season(rows...)
	var helped []Helped
	for i := range results {
		results[i].Club = 1 + results[i].Runner%5
		helped = append(helped, Helped{Runner: results[i].Runner, Day: saturday + unit.Day(rng.IntN(100))})
	}
	rules := DefaultRules()
	rules.Best = 4
	want, err := Runners(results, helped, rules)
	if err != nil {
		t.Fatal(err)
	}
	wantClubs, err := Clubs(results, 3, rules)
	if err != nil {
		t.Fatal(err)
	}
	if len(want) < 35 || len(wantClubs) != 5 {
		t.Fatalf("%d runners, %d clubs", len(want), len(wantClubs))
	}
	for range 10 {
		rng.Shuffle(len(results), func(i, j int) { results[i], results[j] = results[j], results[i] })
		rng.Shuffle(len(helped), func(i, j int) { helped[i], helped[j] = helped[j], helped[i] })
		if got, _ := Runners(results, helped, rules); !reflect.DeepEqual(got, want) {
			t.Fatal("runners depend on the order of the input")
		}
		if got, _ := Clubs(results, 3, rules); !reflect.DeepEqual(got, wantClubs) {
			t.Fatal("clubs depend on the order of the input")
		}
	}
	// Ranks rise, totals fall, ties share and the next is skipped.
	for i, l := range want {
		if i > 0 && (l.Total > want[i-1].Total || l.Rank != int32(i+1) && !(l.Shared && l.Rank == want[i-1].Rank)) {
			t.Errorf("line %d: %+v after %+v", i, l, want[i-1])
		}
	}
}

func TestRefusals(t *testing.T) {
	for what, spoil := range map[string]func([]Result, *Rules){
		"no position":      func(r []Result, _ *Rules) { r[0].Position = 0 },
		"twice in run":     func(r []Result, _ *Rules) { r[1].Runner = r[0].Runner },
		"best -1":          func(_ []Result, rules *Rules) { rules.Best = -1 },
		"points table":     func(_ []Result, rules *Rules) { rules.Points.Table = []int32{5, 6} },
		"points of 0":      func(_ []Result, rules *Rules) { rules.Points = Scheme{Least: 1} },
		"at least -2 runs": func(_ []Result, rules *Rules) { rules.MinRuns = -2 },
	} {
		results, rules := season([]int32{1, 2}), DefaultRules()
		spoil(results, &rules)
		if _, err := Runners(results, nil, rules); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("%s: error %v", what, err)
		}
		if _, err := Clubs(results, 3, rules); err == nil {
			t.Errorf("%s: no error for clubs", what)
		}
	}
}
