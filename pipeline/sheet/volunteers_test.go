package sheet

import (
	"strings"
	"testing"
)

// helpersOf lists the rows of a part that count, its cells joined.
func helpersOf(p *Part) (out []string) {
	p.Each(func(row int, cells []string) error {
		who := []string{}
		for _, m := range []Meaning{Name, GivenName, FamilyName, Role} {
			if i := p.Index(m); i >= 0 && i < len(cells) {
				who = append(who, strings.TrimSpace(cells[i]))
			}
		}
		out = append(out, strings.Join(who, "/"))
		return nil
	})
	return out
}

func TestVolunteerLists(t *testing.T) {
	for _, c := range []struct {
		name, text, kind string
		course, date     string // "" a column's
		rows             string
	}{
		{"alder-bank_2026-01-03_volunteers.csv", "Name,Role\nDora Penn,Timekeeper\nBen Reed,Marshal\n", "", "alder-bank", "2026-01-03", "Dora Penn/Timekeeper;Ben Reed/Marshal"},
		{"helpers.csv", "Alder Bank volunteers, 10 January 2026\n\nRole,Volunteer\nTimekeeper,Dora Penn\nTail,\nTotal,2\n", "", "alder-bank", "2026-01-10", "Dora Penn/Timekeeper;/Tail"},
		{"rota.csv", "Date;Course;Helper;Duty\n17.01.2026;Alder Bank;Dora Penn;Run director\n24.01.2026;Birch Lea;Ada Moss;Marshal\n", "", "", "", "Dora Penn/Run director;Ada Moss/Marshal"},
		{"alder-bank_2026-01-03_volunteers.csv", "First name,Last name\nDora,Penn\nEve,Holt\n", "", "alder-bank", "2026-01-03", "Dora/Penn;Eve/Holt"},
		{"alder-bank_2026-01-03.csv", "First name,Last name\nDora,Penn\nEve,Holt\n", Volunteers, "alder-bank", "2026-01-03", "Dora/Penn;Eve/Holt"},
	} {
		s, err := Read(c.name, []byte(c.text), Options{Kind: c.kind, DateOrder: "dmy"})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if len(s.Parts) != 1 || s.Parts[0].Kind != Volunteers {
			t.Errorf("%s is not read as a list of volunteers", c.name)
			continue
		}
		p := s.Parts[0]
		for _, q := range p.Problems {
			t.Errorf("%s: %s", c.name, q)
		}
		if c.course != "" && (p.Course.Value != c.course || !p.Date.Settled || p.Date.Day.String() != c.date) {
			t.Errorf("%s is of %s on %s, want %s on %s", c.name, p.Course.Value, p.Date.Day, c.course, c.date)
		}
		if c.course == "" {
			p.Each(func(row int, cells []string) error {
				if course, _, _, ok := p.RunOf(cells); !ok || course == "" {
					t.Errorf("%s: row %d has no course and date", c.name, row)
				}
				return nil
			})
		}
		// a row without a name is handed on only where it has one in another column
		got := []string{}
		for _, r := range helpersOf(p) {
			if !strings.HasPrefix(r, "/") {
				got = append(got, r)
			}
		}
		var want []string
		for _, r := range strings.Split(c.rows, ";") {
			if !strings.HasPrefix(r, "/") {
				want = append(want, r)
			}
		}
		if strings.Join(got, ";") != strings.Join(want, ";") {
			t.Errorf("%s: rows %q, want %q", c.name, got, want)
		}
	}
}

// Results stay results, whatever column of tasks they have; a list of names
// without a word of helping stays refused.
func TestNoVolunteerLists(t *testing.T) {
	for name, text := range map[string]string{
		"alder-bank_2026-01-03_volunteers.csv": "Pos,Name,Time,Role\n1,Ben Reed,20:10,\n2,Ada Moss,24:50,pacer\n",
		"volunteers-run_2026-01-03.csv":        "Pos,Name,Time\n1,Ben Reed,20:10\n2,Ada Moss,24:50\n",
	} {
		s, err := Read(name, []byte(text), Options{})
		if err != nil || len(s.Parts) != 1 || s.Parts[0].Kind != "full" {
			t.Errorf("%s is not read as results: %v", name, err)
		}
	}
	for text, o := range map[string]Options{
		"Name,Phone\nBen Reed,0151\nAda Moss,0152\n":          {},
		"Name,Role\nBen Reed,Marshal\nAda Moss,Timekeeper\n":  {Kind: "full"},
		"Pos,Name,Time\n1,Ben Reed,20:10\n2,Ada Moss,24:50\n": {Kind: Volunteers},
		"Role,Phone\nMarshal,0151\nTimekeeper,0152\n":         {Kind: Volunteers},
	} {
		if s, err := Read("alder-bank_2026-01-03.csv", []byte(text), o); err == nil {
			t.Errorf("read as %s: %q", s.Parts[0].Kind, text)
		}
	}
}
