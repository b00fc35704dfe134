package league

import (
	"cmp"
	"fmt"
	"slices"

	"lapwing/pipeline/unit"
)

// Rules of a league. The zero value is not usable; begin with DefaultRules.
type Rules struct {
	Points Scheme
	// Best is N of "best N": so many highest scores make the total; 0 counts all.
	Best int
	// MinRuns is the number of scoring runs, volunteer weeks apart, that it
	// takes to be ranked; with fewer somebody is listed below, unranked.
	MinRuns int
	// SecondClaimScores lets second-claim members score; by default they are
	// listed without points and take no place from those who score.
	SecondClaimScores bool
	// ByPosition gives the points of the position in the whole field instead
	// of the place among those who score in this league.
	ByPosition bool
	// Volunteer says what a volunteer week scores.
	Volunteer Credit
	// VolunteerMost is the largest number of volunteer weeks that score; 0 is
	// no limit.
	VolunteerMost int
	// VolunteerPoints is what a week scores under FixedCredit.
	VolunteerPoints int32
}

// Credit says what a volunteer week scores.
type Credit uint8

const (
	OwnAverage  Credit = iota // the mean of the person's own scoring runs, to the nearest whole point, halves up
	FixedCredit               // VolunteerPoints
	NoCredit
)

// DefaultRules are 100, 99, … at least 1, the best 10, a volunteer week for
// the person's own average, no minimum, second claim listed only (common
// practice in club leagues, no source).
func DefaultRules() Rules { return Rules{Points: DefaultScheme(), Best: 10} }

// Claim is how somebody belongs to the club on the day of a run.
type Claim uint8

const (
	FirstClaim  Claim = iota // scores
	SecondClaim              // listed, not scoring
)

// Result is one finish of a member on the day, in one run of the season. The
// caller passes eligible results only, one a runner and run.
type Result struct {
	Runner   int32
	Club     int32 // the club on the day, 0 for none
	List     int32 // which list the result is on, for Clubs: places are counted in each apart
	Claim    Claim
	Event    int32 // the run: any number, one a run
	Day      unit.Day
	Position int32 // place on the sheet in the whole field, equal for a printed tie
}

// Helped is a week in which somebody volunteered.
type Helped struct {
	Runner int32
	Day    unit.Day
}

// Score is one score of a runner or club.
type Score struct {
	Event     int32 // -1 for a volunteer week
	Day       unit.Day
	Place     int32 // that earned the points; 0 for a volunteer week and for a club
	Points    int32
	Counts    bool // among the best N
	Volunteer bool
}

// Line is one line of a league table.
type Line struct {
	ID       int32 // runner or club
	Rank     int32 // 0 = not ranked: too few runs, or second claim only
	Shared   bool
	Total    int32
	Runs     int     // scoring runs
	Helped   int     // volunteer weeks that scored
	ListOnly int     // second-claim runs, without points
	Scores   []Score // by day, then event
}

// Runners makes the league table of runners, best first. Results and helped
// weeks may come in any order. A volunteer week in which the person also has a
// scoring run (same ISO week) adds nothing, and nor does a second one in a
// week; where VolunteerMost limits them, the earliest score. Somebody without
// a scoring run has no average and so no credit for it.
func Runners(results []Result, helped []Helped, rules Rules) ([]Line, error) {
	lines, duels, err := score(results, helped, rules)
	if err != nil {
		return nil, err
	}
	rank(lines, duels, rules)
	return lines, nil
}

// score gives every runner's line, in order of id, with scores and total, and
// who finished where in each event among those who score.
func score(results []Result, helped []Helped, rules Rules) ([]Line, duels, error) {
	if err := rules.check(); err != nil {
		return nil, nil, err
	}
	results = slices.Clone(results)
	slices.SortFunc(results, func(a, b Result) int {
		return cmp.Or(cmp.Compare(a.Event, b.Event), cmp.Compare(a.Position, b.Position), cmp.Compare(a.Runner, b.Runner))
	})
	lines := map[int32]*Line{}
	line := func(id int32) *Line {
		l := lines[id]
		if l == nil {
			l = &Line{ID: id}
			lines[id] = l
		}
		return l
	}
	met := duels{}
	for begin := 0; begin < len(results); {
		var scorers []Result
		end := begin
		seen := map[int32]bool{}
		for ; end < len(results) && results[end].Event == results[begin].Event; end++ {
			r := results[end]
			switch {
			case r.Position <= 0:
				return nil, nil, fmt.Errorf("league: runner %d in run %d on %v has no position", r.Runner, r.Event, r.Day)
			case seen[r.Runner]:
				return nil, nil, fmt.Errorf("league: runner %d is twice in run %d on %v", r.Runner, r.Event, r.Day)
			case r.Claim == SecondClaim && !rules.SecondClaimScores:
				line(r.Runner).ListOnly++
			default:
				scorers = append(scorers, r)
			}
			seen[r.Runner] = true
		}
		positions := make([]int32, len(scorers))
		for i, r := range scorers {
			positions[i] = r.Position
		}
		places := positions
		if !rules.ByPosition {
			places = scorePlaces(positions)
		}
		for i, r := range scorers {
			l := line(r.Runner)
			l.Runs++
			l.Scores = append(l.Scores, Score{Event: r.Event, Day: r.Day, Place: places[i], Points: rules.Points.Points(places[i])})
			met[r.Runner] = append(met[r.Runner], at{r.Event, places[i]})
		}
		begin = end
	}
	if rules.Volunteer != NoCredit {
		credit(lines, helped, rules)
	}
	out := make([]Line, 0, len(lines))
	for _, l := range lines {
		l.settle(rules.Best)
		out = append(out, *l)
	}
	slices.SortFunc(out, func(a, b Line) int { return cmp.Compare(a.ID, b.ID) })
	return out, met, nil
}

func (r Rules) check() error {
	if r.Best < 0 || r.MinRuns < 0 || r.VolunteerMost < 0 || r.VolunteerPoints < 0 {
		return fmt.Errorf("league: best %d, at least %d runs, at most %d volunteer weeks of %d points", r.Best, r.MinRuns, r.VolunteerMost, r.VolunteerPoints)
	}
	return r.Points.check()
}

// credit adds volunteer weeks to the lines.
func credit(lines map[int32]*Line, helped []Helped, rules Rules) {
	helped = slices.Clone(helped)
	slices.SortFunc(helped, func(a, b Helped) int {
		return cmp.Or(cmp.Compare(a.Runner, b.Runner), cmp.Compare(a.Day, b.Day))
	})
	average := map[int32]int32{} // before any credit
	for id, l := range lines {
		if l.Runs > 0 {
			var sum int64
			for _, s := range l.Scores {
				sum += int64(s.Points)
			}
			average[id] = int32((2*sum + int64(l.Runs)) / (2 * int64(l.Runs)))
		}
	}
	for _, h := range helped {
		l := lines[h.Runner]
		points := rules.VolunteerPoints
		if rules.Volunteer == OwnAverage {
			var ok bool
			if points, ok = average[h.Runner]; !ok {
				continue
			}
		}
		if l == nil {
			l = &Line{ID: h.Runner}
			lines[h.Runner] = l
		}
		week := h.Day.Week()
		if rules.VolunteerMost > 0 && l.Helped >= rules.VolunteerMost ||
			slices.ContainsFunc(l.Scores, func(s Score) bool { return s.Day.Week() == week }) {
			continue
		}
		l.Helped++
		l.Scores = append(l.Scores, Score{Event: -1, Day: h.Day, Points: points, Volunteer: true})
	}
}

// settle chooses the N highest scores, of equal ones the earliest, and sums
// them up.
func (l *Line) settle(n int) {
	slices.SortFunc(l.Scores, func(a, b Score) int {
		return cmp.Or(cmp.Compare(b.Points, a.Points), cmp.Compare(a.Day, b.Day), cmp.Compare(a.Event, b.Event))
	})
	for i := range l.Scores {
		if n == 0 || i < n {
			l.Scores[i].Counts = true
			l.Total += l.Scores[i].Points
		}
	}
	slices.SortFunc(l.Scores, func(a, b Score) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Event, b.Event))
	})
}
