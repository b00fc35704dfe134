package sheet

import (
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// Volunteers is the kind of a part that lists who helped: names, mostly with
// what they did, and neither positions nor times.
const Volunteers = "volunteers"

// volunteerWords say in a title, a tab or a file name that a list is of those
// who helped; roleWords head the column of what they did.
var (
	volunteerWords = set(`volunteers volunteer helpers rota freiwillige helfer helferliste benevoles vrijwilligers volontari voluntarios wolontariusze frivillige funktionarer`)
	roleWords      = set(`role roles duty duties task tasks job rolle aufgabe fonction tache ruolo rol taak funcao tarefa rola zadanie uppgift opgave oppgave`)
	// helperHeadings head the names where the list calls them so.
	helperHeadings = set(`volunteer volunteers helper helpers freiwillige helfer benevole benevoles vrijwilliger volontario voluntario wolontariusz frivillig who wer qui wie chi quien`)
)

func anyWord(text string, list map[string]bool) bool {
	for _, w := range strings.Fields(fold(text)) {
		if list[w] {
			return true
		}
	}
	return false
}

// volunteerHeading finds a heading that only a list of volunteers has: a column
// of roles beside one of names.
func volunteerHeading(lex *lexicon, rows []line) layout {
	for i := range rows[:min(len(rows), headingLooks)] {
		role, named := false, false
		for _, c := range rows[i].cells {
			switch m := lex.read(c).meaning; {
			case isBlank(c):
			case len(strings.Fields(c)) > 3:
				role = false
			case anyWord(c, roleWords):
				role = true
			case m == Name || m == FamilyName || m == GivenName || helperHeadings[fold(c)]:
				named = true
			}
		}
		if role && named {
			return layout{first: i, lines: 1, headings: trimmed(rows[i].cells)}
		}
	}
	return layout{first: -1}
}

func (p *Part) named() bool {
	return p.Index(Name) >= 0 || p.Index(GivenName) >= 0 || p.Index(FamilyName) >= 0
}

// takeHelpers gives the columns of a list of volunteers their meaning: names
// that stand under "Volunteer", and roles.
func (p *Part) takeHelpers() {
	for i := range p.Columns {
		c := &p.Columns[i]
		switch {
		case !p.named() && helperHeadings[fold(c.Heading)]:
			c.Meaning, c.Why = Name, "the heading says who helped"
		case p.Index(Role) < 0 && anyWord(c.Heading, roleWords) && c.Meaning != Name && c.Meaning != GivenName && c.Meaning != FamilyName:
			c.Meaning, c.Why = Role, "the heading says what somebody did"
		}
	}
}

// listsVolunteers recognises a list of volunteers: names without positions and
// times, and a column of roles or a title, tab or file name that says so.
func (p *Part) listsVolunteers(file string, titles []line) bool {
	for _, m := range []Meaning{Position, Time, GunTime, ChipTime, Points, PersonalBest, GroupPlace, AgeGrade} {
		if p.Index(m) >= 0 {
			return false
		}
	}
	says := anyWord(p.Tab, volunteerWords) || anyWord(baseName(file), volunteerWords)
	for _, t := range titles {
		says = says || anyWord(titleText(t.cells), volunteerWords)
	}
	role, helper := false, false
	for _, c := range p.Columns {
		role = role || anyWord(c.Heading, roleWords)
		helper = helper || helperHeadings[fold(c.Heading)]
	}
	if !role && !says || !p.named() && !helper {
		return false
	}
	p.takeHelpers()
	return p.named()
}

// volunteersByHand is the kind of a part of a sheet that somebody has called a
// list of volunteers, or why it can be none.
func (p *Part) volunteersByHand() (kind, why string) {
	p.takeHelpers()
	switch {
	case p.Index(Time) >= 0 || p.Index(GunTime) >= 0 || p.Index(ChipTime) >= 0:
		return "", "it has times, and a list of volunteers has none"
	case !p.named():
		return "", "it has no column headed Name or Volunteer"
	}
	return Volunteers, ""
}

// classifyVolunteer tells the rows of a list of volunteers apart.
func (r *rowRules) classifyVolunteer(cells []string, filled int) why {
	name := trim(cellAt(cells, r.name))
	if name == "" {
		name = trim(cellAt(cells, r.given))
	}
	switch f := fold(name); {
	case r.isHeading(cells, filled):
		return whyHeading
	case name == "":
		return whyNoResult
	case isTotal(f) || onlyCounts(cells) > 0:
		return whyTotal
	case strings.HasSuffix(name, ":") || len(strings.Fields(name)) > 6 || !hasLetter(name):
		return whyFooter
	}
	return isData
}

// settleVolunteers finds the run of lists of volunteers. One that stands in a
// workbook of results is of their run where it says nothing else; where that
// leaves it open it is left out, for the results can be read without it. A list
// alone is asked about.
func (rs *runSettler) settleVolunteers(lists, results []*Part) {
	if len(results) == 0 {
		for _, p := range lists {
			rs.ask(p)
		}
		return
	}
	for _, p := range lists {
		rs.share(append(slices.Clone(results), p))
		if p.Course.OK() && p.Date.OK() {
			continue
		}
		rs.sheet.Parts = slices.DeleteFunc(rs.sheet.Parts, func(q *Part) bool { return q == p })
		rs.sheet.Problems = append(rs.sheet.Problems, place.Problem{Place: place.Place{Sheet: rs.sheet.Name, Tab: p.Tab}, Severity: place.Note,
			Kind: "tab-refused", Expected: "it lists volunteers, and nothing says of which course and date"})
	}
}

// dropVolunteerWords takes out of the titles what says that the list is of
// volunteers: "Alder Bank volunteers" is no other course.
func (p *Part) dropVolunteerWords() {
	for i, t := range p.Titles {
		p.Titles[i] = strings.Join(slices.DeleteFunc(strings.Fields(t), func(w string) bool { return volunteerWords[fold(w)] }), " ")
	}
	p.Titles = slices.DeleteFunc(p.Titles, func(t string) bool { return t == "" })
}
