package pipeline

import (
	"fmt"
	"path/filepath"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// memberColumns are the columns of members.csv. A person is a runner id (R12)
// or a name that only one runner has; claim is first or second; from, to and
// birth_date may be blank.
var memberColumns = []string{"person", "club", "claim", "from", "to", "birth_date"}

const memberTable = "members.csv"

// member is a line of members.csv.
type member struct {
	name, club, claim string
	from, to, born    unit.Day // 0 not known
	line              int      // of the file
	runner            int32    // dense index, -1 none or several
}

func (pl *Pipeline) readMembers(clubs clubBook) ([]member, error) {
	rows, err := pl.Archive.ReadTable(memberTable, memberColumns)
	if err != nil {
		return nil, err
	}
	out := make([]member, len(rows))
	for i, r := range rows {
		m, err := readMember(r)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", pl.Archive.At(memberTable, i), err)
		}
		m.club = clubs.club(m.club)
		m.line, m.runner = i+2, -1
		out[i] = m
	}
	return out, nil
}

func readMember(r []string) (m member, err error) {
	m = member{name: r[0], club: r[1], claim: strings.ToLower(r[2])}
	if m.name == "" || m.club == "" {
		return m, fmt.Errorf("a member needs a person and a club")
	}
	switch m.claim {
	case "", "1", "1st", "first":
		m.claim = "first"
	case "2", "2nd", "second":
		m.claim = "second"
	default:
		return m, fmt.Errorf("claim %q: write first or second", r[2])
	}
	for k, d := range []*unit.Day{&m.from, &m.to, &m.born} {
		if r[3+k] == "" {
			continue
		}
		if *d, err = unit.ParseDay(r[3+k]); err != nil {
			return m, fmt.Errorf("%s: %w", memberColumns[3+k], err)
		}
	}
	if m.from != 0 && m.to != 0 && m.to < m.from {
		return m, fmt.Errorf("the membership ends (%s) before it begins (%s)", m.to, m.from)
	}
	return m, nil
}

// memberReader names rows of the table as problems do.
func (pl *Pipeline) memberReader() func(m member) string {
	at := pl.Archive.Places(memberTable)
	return func(m member) string { return fmt.Sprintf("%s: %s", filepath.Base(at(m.line-2)), m.name) }
}

// joinMembers finds the runner of each member, and narrows that runner's birth
// window to the date of birth that the club knows. A date that none of the
// sheets' ages allows changes nothing and is asked about.
func (pl *Pipeline) joinMembers(f *field, p *people, clubs clubBook) ([]member, []storedProblem, error) {
	members, err := pl.readMembers(clubs)
	if err != nil || len(members) == 0 {
		return nil, nil, err
	}
	find, read := f.finder(p), pl.memberReader()
	var problems []storedProblem
	ask := func(m member, kind, expected, todo string) {
		problems = append(problems, storedProblem{Problem: place.Problem{Severity: place.Look, Kind: kind,
			Read: read(m), Expected: expected, Do: todo}})
	}
	born := map[int32]unit.Day{}
	for i := range members {
		m := &members[i]
		if m.runner = find(m.name); m.runner == severalRunners {
			ask(*m, "several-runners", "a name that only one runner has", tellApart(m.name))
		}
		if m.runner < 0 || m.born == 0 {
			continue
		}
		if d, ok := born[m.runner]; ok && d != m.born {
			ask(*m, "member-birth-date", "one date of birth", "Two lines give this person different dates of birth; correct one.")
			continue
		}
		w, ok := p.window[m.runner].Meet(age.OfDate(m.born))
		if !ok {
			ask(*m, "member-birth-date", "a date of birth that fits the ages on the sheets",
				"It may be the date of a namesake, or mistyped: check it, or write the runner's id (R12) as the person.")
			continue
		}
		born[m.runner] = m.born
		p.window[m.runner] = w
	}
	return members, problems, nil
}
