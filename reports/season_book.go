package reports

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

func (d *season) heading() string {
	s := "Season " + d.s.Name
	if d.s.Course != "" {
		s += ", " + d.courseName(d.s.Course)
	}
	if d.s.Club != "" {
		s += ", " + d.s.Club
	}
	return s
}

func (d *season) courseName(course string) string {
	for i := range d.courses {
		if d.courses[i].course == course {
			return d.courses[i].name
		}
	}
	return course
}

// routeName is the name of a course, with the distance where the course has
// routes of several.
func (d *season) routeName(course string, metres int32) string {
	n := 0
	for i := range d.courses {
		if d.courses[i].course == course {
			n++
		}
	}
	if n < 2 || metres == 0 {
		return d.courseName(course)
	}
	return d.courseName(course) + ", " + unit.Distance(metres)
}

// name is how somebody stands in the tables.
func (d *season) name(id int32) string {
	p := d.people[id]
	if p == nil {
		return nobody
	}
	return publicName(p.name, p.protected, p.hidden)
}

// book builds the workbook.
func (d *season) book(i issueOf) *table.Book {
	b := &table.Book{Title: d.heading(), Subject: text.SeasonBook, Made: d.s.To.String(),
		Footer: fmt.Sprintf("Issue %d; %s to %s", i.Number, d.s.From.Long(), d.s.To.Long())}
	b.Tabs = append(b.Tabs, d.honours())
	b.Tabs = append(b.Tabs, present(d.sinceTab(), d.leagueTab(), d.overallTab(), d.clubLeagueTab(), d.gradeTab(), d.improvedTab(), d.attendance(), d.weeksTab(), d.volunteersTab(),
		d.recordTab(), d.alltimeTab(), d.newcomerTab(), d.courseTab(), d.conditionsTab())...)
	b.Tabs = append(b.Tabs, d.notes(i))
	return b
}

// honoured are the tabs of tables that somebody is honoured by.
func (d *season) honoured() []*table.Tab {
	return present(d.leagueTab(), d.overallTab(), d.clubLeagueTab(), d.gradeTab(), d.improvedTab(), d.attendance(), d.recordTab())
}

// awards is a dump of the tables that somebody is honoured by: what a closed
// season keeps.
func (d *season) awards() string {
	var b strings.Builder
	b.WriteString(d.heading() + "\n")
	for _, t := range d.honoured() {
		b.WriteString("\n=== " + t.Name + " ===\n")
		t.WriteText(&b, 0)
	}
	return b.String()
}

// listName is "women", "men" or, of both and of who is neither, "everybody".
func listName(sex string) string {
	switch sex {
	case "W":
		return "women"
	case "M":
		return "men"
	}
	return "everybody"
}

func (d *season) scopeName(scope string) string {
	if scope == "" {
		return d.s.Club
	}
	return d.courseName(scope)
}

// span is from when to when the season lasts, and how far the sheets go.
func (d *season) span() string {
	s := fmt.Sprintf("%s to %s", longDay(d.s.From), longDay(d.s.To))
	if d.latest < d.s.To {
		s += "; sheets so far to " + longDay(d.latest)
	}
	return s
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

func (d *season) notes(i issueOf) *table.Tab {
	n := newNotes("Notes", fmt.Sprintf("Issue %d", i.Number), i.Changes)
	add := n.add
	add("Season", fmt.Sprintf("%s to %s, both included.", longDay(d.s.From), longDay(d.s.To)))
	if d.s.Club != "" {
		who := "Members are those whose line on the sheet of the day prints the club."
		if d.s.ByMembers {
			who = "Members are those whom the list of members has on the day of the run. First-claim members score; second-claim members are listed without points."
			if d.rules.SecondClaimScores {
				who = "Members are those whom the list of members has on the day of the run; first-claim and second-claim members score."
			}
		}
		add("Club", who+" Anybody who may be under 18 is left out, as a name here would tell the club.")
	}
	add("League", d.rulesInWords()+" There is a list of women and one of men; who is neither, or has not said, stands with everybody in the overall league and in attendance.")
	if d.clubLeagueTab() != nil {
		add("Club league", d.clubRulesInWords())
	}
	add("Rank", "Equal values share a rank, and the next one is left out: 1, 2=, 2=, 4.")
	add("Age groups", d.o.groupRule()+" "+upperFirst(d.o.groupScheme())+".")
	add("Age grade", "The age standard for the distance, sex and age, divided by the time, in percent: a fair look across ages. Equal to two decimals, as printed, shares a rank. Source: road-running age standards and factors compiled by Alan Jones and Tom Bernhard."+edition(d.o.AgeStandard))
	add("Most improved", "At least four results in the last 12 weeks and four before, ten before the season, adults, no break over 8 weeks before the comparison, at least nine chances in ten of being faster; ranked by the cautious end of the 80 % interval.")
	add("Attendance", "Ran: counted finishes of the season. Helped: days on a volunteer list. Bests: personal bests at a distance, not counted for anybody who may be under 18.")
	add("Records", "The fastest in the sheets held here, to be confirmed by the results desk unless the note says confirmed, and records known from before the sheets. Somebody of an age group stands among all ages too. Before: the time to beat until then; empty where none is known.")
	add("Newcomer", "First run anywhere in these records; counted only where the sheets are known to go back to the beginning.")
	add("Course speed", "Seconds that a course adds (+) or saves (−) for somebody who takes 25:00, from people who have run on several courses, with runner, day and effort told apart. Index: 100 is the average course, higher is faster, one point is about one percent. Shared runners: how many have run another course as well.")
	add("Day against usual", "How much slower (+) or faster (−) the same people were than on a usual day there, in seconds for somebody who takes 25:00. It says nothing about why.")
	add("likely from … to", "Nine times in ten the true value lies between. Empty where it can't be told.")
	add("Children", "Anybody who may be under 18: first name and initial, no club, no age grade, no records, no bests.")
	add("Hidden", "People who asked not to be shown are in no list.")
	n.health()
	n.madeWith(d.o)
	if d.s.Ledger != "" {
		add("Made from", "The sheets in the archive's ledger of SHA-256 "+d.s.Ledger+": with this number anybody can check that two workbooks come from the same sheets.")
	}
	return n.tab("Notes")
}
