package sheet

import (
	"strings"
	"testing"
)

// One plain list, of which one thing at a time is otherwise: what the lines above it call the
// course, how the columns of names are headed, and what the lines over men and women say. The
// cells are divided by bars.
func TestOneThingOtherwise(t *testing.T) {
	const (
		day   = "\n14 March 2026\n"
		heads = "Place|Name|Time\n"
		list  = "1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n4|Di Fox|19:40\n"
		parts = "1|Jo|Lee|18:20\n2|Al|Roe|18:31\n3|Cy|Dee|19:02\n4|Di|Fox|19:40\n5|Ed|Gow|19:44\n"
		clubs = "1|Jo Lee, Vale AC|18:20\n2|Al Roe, Fell AC|18:31\n3|Cy Dee, Vale AC|19:02\n4|Di Fox, Fell AC|19:40\n"
		two   = "Place|Name|Age group|Time\n%1\n1|Jo Lee|40-44|18:20\n2|Al Roe|50-54|18:31\n%2\n3|Cy Dee|40-44|19:02\n4|Di Fox|45-49|19:40\n"
	)
	over := func(a, b string) string {
		return "Alder Bank" + day + strings.NewReplacer("%1", a, "%2", b).Replace(two)
	}
	const plain, sexes = "position name time", "position name age-group time sex"
	for _, k := range []struct{ text, course, columns string }{
		{"Alder Bank 14 March 2026 Scribe: Mark Penn\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026: 16 runners\n" + heads + list, "alder-bank", plain},
		{"14 March 2026 Venue: Alder Bank\n" + heads + list, "alder-bank", plain},
		{"14 March 2026 results: Alder Bank\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026 (postponed from 7 March)\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026, originally planned for Sat 7 March 2026\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026 (amended 17/03/26 JP)\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026. Next run: 21 March 2026\n" + heads + list, "alder-bank", plain},
		{"Alder Bank 14 March 2026 - next week Mill Leat, 21 March\n" + heads + list, "alder-bank", plain},
		{"Alder Bank d.d. 14-3-2026\n" + heads + list, "alder-bank", plain},
		{"Alder Bank n° 212 – 14/03/26\n" + heads + list, "alder-bank", plain},
		{"New Mills 5k, 14 March 2026\n" + heads + list, "new-mills", plain},
		{"New results Alder Bank" + day + heads + list, "alder-bank", plain},
		{"Course: New Year Green" + day + heads + list, "new-year-green", plain},
		{"Course: Date Palm Grove" + day + heads + list, "date-palm-grove", plain},
		{"Masters Field" + day + heads + list, "masters-field", plain},
		{"Course: Data Park" + day + heads + list, "data-park", plain},
		{"Alder Bank 14 March 2026 – see you next week, 21 March\n" + heads + list, "alder-bank", plain},
		{"Venue New Bridge" + day + heads + list, "new-bridge", plain},
		{"Copy Lane" + day + heads + list, "copy-lane", plain},
		{"Results: Week Common" + day + heads + list, "week-common", plain},
		{"Race Course Road 5k" + day + heads + list, "race-course-road", plain},
		{"Saturday Market" + day + heads + list, "saturday-market", plain},
		{"2nd Avenue" + day + heads + list, "2nd-avenue", plain},
		{"212th Common" + day + heads + list, "common", plain},
		{"5 Mile Wood" + day + heads + list, "5-mile-wood", plain},
		{"Alder Bank 5 Mile Road Race" + day + heads + list, "alder-bank", plain},
		{"Alder Bank 5 mile, wet" + day + heads + list, "alder-bank", plain},
		{"Alder Bank copy" + day + heads + list, "alder-bank", plain},
		{"Osier Lane lördagen den 14 mars 2026\n" + heads + list, "osier-lane", plain},
		{"Osier Lane Satharn 14 Márta 2026\n" + heads + list, "osier-lane", plain},
		{"A L D E R   B A N K   5 km" + day + heads + list, "alder-bank", plain},
		{"J A M House" + day + heads + list, "jam-house", plain},
		{"Alder Bank" + day + "Place|Name, club|Time\n" + clubs, "alder-bank", plain},
		{"Alder Bank" + day + "Place|1st name|2nd name|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|fn|ln|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|Fore|Sur|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|1st|Last|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|Runner (first)|Runner (last)|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|Runner (last)|Runner (first)|Time\n" + parts, "alder-bank", "position family-name given-name time"},
		{"Alder Bank" + day + "Place|Known as|Family name|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place||Family name|Time\n" + parts, "alder-bank", "position given-name family-name time"},
		{"Alder Bank" + day + "Place|School|Family name|Time\n" + parts, "alder-bank", "position - name time"},
		{"Alder Bank" + day + "Place|||Time\n" + parts, "alder-bank", "position - - time; name-columns-unclear"},
		{"Alder Bank" + day + "|Place|Name|Time\n" + list, "alder-bank", plain + " -"},
		{"Alder Bank" + day + "Name|Sex|Time|Note|\n" + strings.NewReplacer("Lee|", "Lee|F|", "Roe|", "Roe|M|", "Dee|", "Dee|M|", "Fox|", "Fox|M|").Replace(list), "alder-bank", "position name sex time"},
		{over("Male runners", "Female runners"), "alder-bank", sexes},
		{over("Open men", "Open women"), "alder-bank", sexes},
		{over("Senior men", "Veteran women"), "alder-bank", sexes},
		{over("Seniors", "Veterans"), "alder-bank", "position name age-group time"},
		{over("Section A: Men", "Section B: Women"), "alder-bank", sexes},
		{over("1. Men", "2. Women"), "alder-bank", sexes},
		{over("M E N", "W O M E N"), "alder-bank", sexes},
		{over("Fir", "Mná"), "alder-bank", sexes},
		{over("Karlar", "Konur"), "alder-bank", sexes},
		{over("Rank: Men", "Rank: Women"), "alder-bank", sexes},
	} {
		c := sheetCase{file: "results", text: k.text}
		for _, form := range [...]string{".csv", ".xlsx"} {
			data := c.asText()
			if form == ".xlsx" {
				data = c.asWorkbook(t)
			}
			s, err := Read(c.file+form, data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			got := outcome(s)
			columns := got.columns
			if got.asks != "" {
				columns += "; " + got.asks
			}
			if at := s.Parts[0].Index(Sex); at >= 0 {
				var said []string
				if err := s.Parts[0].Each(func(_ int, cells []string) error { said = append(said, fold(cellAt(cells, at))); return nil }); err != nil {
					t.Fatal(err)
				}
				if len(said) != 4 || said[0] == said[3] {
					t.Errorf("%q as %s: sexes %q", k.text, form, said)
				}
			}
			if slug := Slug(k.course); slug != k.course {
				t.Errorf("the short form %q becomes %q", k.course, slug)
			}
			if want := k.course + " 2026-03-14"; got.run != want || columns != k.columns {
				t.Errorf("%q as %s: %q, %q; want %q, %q", k.text, form, got.run, columns, want, k.columns)
			}
		}
	}
}
