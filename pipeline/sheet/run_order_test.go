package sheet

import (
	"strings"
	"testing"
)

// Dates of which each can be read day first and month first are settled together where they
// are of one course and under one order only all fall on one weekday.
func TestOrderOfDatesThatAreWeeksApart(t *testing.T) {
	const list = "\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n\n"
	blocks := func(titles ...string) string { return strings.Join(titles, list) + list }
	column := func(dates ...string) (text string) {
		text = "Course|Date|Name|Time\n"
		for _, d := range dates {
			text += "Alder Bank|" + d + "|Jo Lee|18:20\nAlder Bank|" + d + "|Al Roe|18:31\n"
		}
		return text
	}
	for _, c := range []struct{ name, text, want string }{
		{"lists one under the other", blocks("Alder Bank 01/08/26", "Alder Bank 08/08/26"), "2026-08-01 2026-08-08"},
		{"the month first", blocks("Alder Bank 08/01/26", "Alder Bank 08/08/26"), "2026-08-01 2026-08-08"},
		{"one of them a Saturday under both orders", blocks("Alder Bank 05/09/26", "Alder Bank 12/09/26"), "2026-09-05 2026-09-12"},
		{"of two weekdays under both orders", blocks("Alder Bank 06/09/26", "Alder Bank 12/09/26"), "asked asked"},
		{"of one weekday under both orders", blocks("Alder Bank 06/03/26", "Alder Bank 03/04/26"), "asked asked"},
		{"of one weekday eight months apart, or eight days apart", blocks("Alder Bank 03/04/26", "Alder Bank 11/04/26"), "asked asked"},
		{"of two courses", blocks("Alder Bank 05/09/26", "Bittern Lock 12/09/26"), "asked asked"},
		{"dates over columns", "Alder Bank\nName|05/09/26|12/09/26\nJo Lee|18:20|18:31\nAl Roe|19:02|19:40\nCy Dee|20:01|20:15\n", "2026-09-05 2026-09-12"},
		{"a column, one date the same in both orders", column("01/08/26", "08/08/26"), "2026-08-01 2026-08-08"},
		{"a column of one date", column("01/08/26"), "asked"},
		{"a column, two weekdays under both orders", column("06/09/26", "08/08/26"), "asked"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("x.csv", []byte(strings.ReplaceAll(c.text, "|", ",")), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			seen := map[string]bool{}
			for _, p := range s.Parts {
				switch {
				case len(p.Date.Choices) > 0:
					got = append(got, "asked")
				case p.Date.Settled:
					got = append(got, p.Date.Day.String())
				default:
					p.Each(func(_ int, cells []string) error {
						if _, day, _, _ := p.RunOf(cells); !seen[day.String()] {
							seen[day.String()] = true
							got = append(got, day.String())
						}
						return nil
					})
				}
			}
			if g := strings.Join(got, " "); g != c.want {
				t.Errorf("read as %s, want %s", g, c.want)
			}
		})
	}
}
