package reports

import (
	"fmt"

	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

func lineRank(l league.Line) table.Value {
	return rankValue(standing.Rank{N: l.Rank, Shared: l.Shared})
}

func (d *season) leagueTab() *table.Tab {
	tab := &table.Tab{Name: "League"}
	tab.Add(table.Title{Level: 1, Text: "League tables"}, table.Para{Text: d.rulesInWords()}, table.Full{Table: d.leagueTable("League", "W", "M")})
	return tab
}

// overallTab is the leagues of everybody, where there are people whom no other
// list has: those who are neither M nor W, or did not say.
func (d *season) overallTab() *table.Tab {
	all := 0
	for _, scope := range d.scopes() {
		all += len(d.runTable[scope+"/"]) - len(d.runTable[scope+"/W"]) - len(d.runTable[scope+"/M"])
	}
	if all == 0 {
		return nil
	}
	t := d.leagueTable("OverallLeague", "")
	tab := &table.Tab{Name: "Overall league"}
	text := "Women, men and those who are neither or have not said, in one list a league. The rules are those of the tab League."
	if len(t.Rows) > firstPage {
		tab.PrintRows = firstPage
		text += fmt.Sprintf(" It is for the screen, where it can be filtered and sorted; on paper come the first %d lines.", firstPage)
	}
	tab.Add(table.Title{Level: 1, Text: "League tables of everybody"}, table.Para{Text: text}, table.Full{Table: t})
	return tab
}

func (d *season) leagueTable(name string, sexes ...string) *table.Table {
	t := &table.Table{Name: name, Whole: "List", None: "No league results.", Columns: []table.Column{
		{Head: "League", Max: 34}, {Head: "List"}, {Head: "Rank", Kind: table.Place, Help: "empty: not ranked"}, {Head: "Name", Max: 26},
		{Head: "Points", Kind: table.Whole}, {Head: "Runs", Kind: table.Whole}, {Head: "Weeks helped", Kind: table.Whole},
		{Head: "Points from helping", Kind: table.Whole, Help: "of the points, those of weeks spent volunteering"}, {Head: "Best score", Kind: table.Whole}}}
	for _, scope := range d.scopes() {
		for _, sex := range sexes {
			for _, l := range d.runTable[scope+"/"+sex] {
				best, helping := int32(0), int32(0)
				for _, s := range l.Scores {
					switch {
					case !s.Volunteer:
						best = max(best, s.Points)
					case s.Counts:
						helping += s.Points
					}
				}
				t.Add(nil, table.Words(d.scopeName(scope)), table.Words(listName(sex)), lineRank(l), table.Words(d.name(l.ID)),
					table.Number(l.Total), table.Number(l.Runs), table.Number(l.Helped), table.Number(helping), table.Number(best))
			}
		}
	}
	return t
}

// rulesInWords says how points are given.
func (d *season) rulesInWords() string {
	r := d.rules
	where, there := "", " A week spent volunteering there"
	if d.s.Club != "" {
		where, there = ", on whatever course,", " A week spent volunteering"
	}
	s := fmt.Sprintf("In each run%s the first of the list scores %d", where, r.Points.Points(1))
	if len(r.Points.Table) == 0 {
		s += fmt.Sprintf(", then %d fewer for each place, at least %d", r.Points.Step, r.Points.Least)
	}
	s += "; equal places share the higher score."
	if r.Best > 0 {
		s += fmt.Sprintf(" The best %d scores count.", r.Best)
	} else {
		s += " All scores count."
	}
	switch r.Volunteer {
	case league.OwnAverage:
		s += there + " scores the average of all the person's runs in the list, to the nearest whole point"
	case league.FixedCredit:
		s += there + fmt.Sprintf(" scores %d", r.VolunteerPoints)
	}
	if r.Volunteer != league.NoCredit {
		if r.VolunteerMost > 0 {
			s += fmt.Sprintf(", for at most %s", text.CountOf(r.VolunteerMost, "week", "weeks"))
		}
		s += "."
	}
	if r.MinRuns > 0 {
		s += fmt.Sprintf(" Ranked from %s on.", text.CountOf(r.MinRuns, "run", "runs"))
	}
	return s + " Ties: best single score of a run, next best and so on, then head to head, else shared; weeks of helping are not compared."
}

func (d *season) clubLeagueTab() *table.Tab {
	t := &table.Table{Name: "ClubLeague", Whole: "League", Columns: []table.Column{{Head: "League", Max: 34}, {Head: "Rank", Kind: table.Place}, {Head: "Club", Max: 34},
		{Head: "Points", Kind: table.Whole}, {Head: "Runs", Kind: table.Whole}}}
	for _, scope := range d.scopes() {
		for _, l := range d.clubTab[scope] {
			t.Add(nil, table.Words(d.scopeName(scope)), lineRank(l), table.Words(d.clubs[l.ID]), table.Number(l.Total), table.Number(l.Runs))
		}
	}
	if len(t.Rows) == 0 {
		return nil
	}
	tab := &table.Tab{Name: "Club league"}
	tab.Add(table.Title{Level: 1, Text: "Clubs"},
		table.Para{Text: d.clubRulesInWords()},
		table.Full{Table: t})
	return tab
}

// clubRulesInWords says how clubs score.
func (d *season) clubRulesInWords() string {
	s := fmt.Sprintf("In each run a club scores the points that its best %s have in the lists of women and men (tab League), adults by the club printed on the sheet of the day.", spelt(d.scorers(), "member", "members"))
	if d.rules.Best > 0 {
		s += fmt.Sprintf(" The best %d runs of a club count.", d.rules.Best)
	}
	return s + " Weeks of helping score nothing here. Ties: the best single run, next best and so on, then run against run, else shared."
}
