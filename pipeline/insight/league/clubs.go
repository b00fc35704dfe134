package league

import (
	"cmp"
	"slices"
)

// Clubs makes the league table of clubs, best first. In each run a club scores
// the points of its best scorers (at most that many; a club with fewer scores
// what it has), by the club that each was a member of on the day. Points are
// those of the lists that the results are on, women's and men's, and of all who
// stand there, members of a club or not. Best,
// MinRuns and the ties are then as for runners, a run's points being one
// score, and head to head by the club's points in a run. Volunteer weeks are a
// matter of people and score nothing here.
func Clubs(results []Result, scorers int, rules Rules) ([]Line, error) {
	rules.Volunteer = NoCredit
	if err := rules.check(); err != nil {
		return nil, err
	}
	lists := map[int32][]Result{}
	for _, r := range results {
		lists[r.List] = append(lists[r.List], r)
	}
	type runnerAt struct{ list, runner, event int32 }
	points := map[runnerAt]Score{}
	for list, in := range lists {
		people, _, err := score(in, nil, rules)
		if err != nil {
			return nil, err
		}
		for _, l := range people {
			for _, s := range l.Scores {
				points[runnerAt{list, l.ID, s.Event}] = s
			}
		}
	}
	type clubAt struct{ club, event int32 }
	team := map[clubAt][]Score{}
	clubs := map[int32]*Line{}
	for _, r := range results {
		if r.Club == 0 {
			continue
		}
		l := clubs[r.Club]
		if l == nil {
			l = &Line{ID: r.Club}
			clubs[r.Club] = l
		}
		if s, ok := points[runnerAt{r.List, r.Runner, r.Event}]; ok {
			team[clubAt{r.Club, r.Event}] = append(team[clubAt{r.Club, r.Event}], s)
		} else {
			l.ListOnly++
		}
	}
	met := duels{}
	for at, scores := range team {
		slices.SortFunc(scores, func(a, b Score) int { return cmp.Compare(b.Points, a.Points) })
		sum := Score{Event: at.event, Day: scores[0].Day}
		for i, s := range scores {
			if scorers <= 0 || i < scorers {
				sum.Points += s.Points
			}
		}
		l := clubs[at.club]
		l.Runs++
		l.Scores = append(l.Scores, sum)
	}
	lines := make([]Line, 0, len(clubs))
	for _, l := range clubs {
		l.settle(rules.Best)
		for _, s := range l.Scores {
			met[l.ID] = append(met[l.ID], at{s.Event, -s.Points}) // more points is the better place
		}
		slices.SortFunc(met[l.ID], func(a, b at) int { return cmp.Compare(a.event, b.event) })
		lines = append(lines, *l)
	}
	slices.SortFunc(lines, func(a, b Line) int { return cmp.Compare(a.ID, b.ID) })
	rank(lines, met, rules)
	return lines, nil
}
