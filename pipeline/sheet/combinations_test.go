package sheet

import (
	"encoding/binary"
	"strings"
	"testing"
)

// combinationCases are sheets on which two or three habits meet that are each read alone: signs before
// places and lists one below the other, dates in a cell of their own between lists, a letterhead over
// a label at the foot.
var combinationCases = []sheetCase{
	{name: "places with a sign, and two lists one below the other", file: "alder-bank_2026-01-03",
		text:    "Men\nPos|Name|Time\n#1|Jo Lee|18:20\n#2|Al Roe|18:31\n#3|Cy Dee|19:02\n\nWomen\n#1|Di Fox|19:40\n#2|Flo Hay|19:50\n",
		columns: "position name time sex", run: "alder-bank 2026-01-03", rows: "3-5 8-9"},
	{name: "places with a sign in the order of the names", file: "alder-bank_2026-01-03",
		text:    "Place|Name|Time\nNo. 3|Cy Dee|19:02\nNo. 4|Di Fox|19:40\nNo. 1|Jo Lee|18:20\nNo. 2|Al Roe|18:31\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "a label and the day in two cells between two runs", file: "results",
		text:    "Ashmere Common\nDate|3 January 2026\nFamily name|Forename|Time|Born\nLee|Jo|18:20|1990-03-01\nRoe|Al|18:31|1985-02-03\n\nDNF: Ann Gow\n\nAshmere Common\nDate|10 January 2026\nFamily name|Forename|Time|Born\nRoe|Al|18:29|1985-02-03\nDee|Cy|19:02|1970-04-05\n",
		columns: "family-name given-name time birth-date", run: "ashmere-common 2026-01-03", rows: "4-5 12-13"},
	{name: "the day at the other end of a line between two runs", file: "alder-bank",
		text:    "5k|||3 January 2026\nName|Time|Sex|Club\nJo Lee|18:20|F|Mill AC\nAl Roe|18:31|M|\nCy Dee|19:02|M|\n\n5k|||10 January 2026\nName|Time|Sex|Club\nAl Roe|18:29|M|\nDi Fox|19:02|F|Mill AC\nEd Gow|20:02|M|\n",
		columns: "name time sex club", run: "alder-bank 2026-01-03", rows: "3-5 9-11"},
	{name: "a name and a day of birth are somebody without a time", file: "alder-bank_2026-01-03",
		text:    "Name|Born|Time\nJo Lee|1990-03-01|18:20\nDate Moss|1985-02-03|\nCy Dee|1970-04-05|19:02\nDi Fox|1971-04-05|19:12\n",
		columns: "name birth-date time", run: "alder-bank 2026-01-03", rows: "2-5"},
	{name: "the women below the men without places, and no winners", file: "alder-bank_2026-01-03",
		text:    "MEN\nName|Time|Club\nJo Lee|18:20|\nAl Roe|21:31|\nCy Dee|29:02|\nEd Gow|38:10|\n\nWOMEN\nDi Fox|19:40|\nFlo Hay|19:50|\nGil Ive|22:50|\n",
		columns: "name time club sex", run: "alder-bank 2026-01-03", rows: "3-6 9-11"},
	{name: "winners of both sexes below all results are repeated", file: "alder-bank_2026-01-03",
		text:    "Name|Time|Club\nDi Fox|17:20|\nJo Lee|18:20|\nAl Roe|21:31|\nCy Dee|29:02|\nEd Gow|38:10|\n\nMEN\nJo Lee|18:20|\nAl Roe|21:31|\nCy Dee|29:02|\n",
		columns: "name time club sex", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "a letterhead over a course at the foot", file: "results",
		text:    "TSV Lehnitz\nseit 1987\n3. Januar 2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nStrecke: Auwiesen Torben\n",
		columns: "position name time", run: "auwiesen-torben 2026-01-03", rows: "5-6"},
	{name: "a title with its distance over a remark on the course", file: "results",
		text:    "Alder Bank 5k\n3 January 2026\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n\nCourse: Winter Route\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "4-5"},
	{name: "the first home over a course at the foot", file: "results",
		text:    "5 km\n3 January 2026\nFirst man: Jo Lee 18:20\nFirst woman: Di Fox 19:40\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Di Fox|19:40\n\nCourse: Osk Lane\n",
		columns: "position name time", run: "osk-lane 2026-01-03", rows: "6-8"},
	{name: "how a race ended in brackets behind the last names", file: "alder-bank_2026-01-03",
		text:    "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n|Di Fox (DNF)|\n|Ed Gow (F) (DNF)|\n|Fi Hay (Mill AC)|\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2-6"},
	{name: "places that nobody was given", file: "alder-bank_2026-01-03",
		text:    "Platz|Name|Zeit\n1|Jo Lee|18:20\n2|nicht vergeben|\n3|not used|\n4|Al Roe|18:31\n5|Ann Used|\n6|nicht vergeben|18:40\n7|Cy Dee|19:02\n",
		columns: "position name time", run: "alder-bank 2026-01-03", rows: "2 5-8"},
	{name: "the year in which a club began is not that of the run", file: "alder-bank",
		text:    "Mill Harriers\nrunning since 1987\n23 May\nPos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "not known", rows: "5-6", asks: "year-missing"},
	{name: "a club by its initials over a file called after the course", file: "auwiesen-torben",
		text:    "SV Torben\nErgebnisse\n3. Januar 2026\nPlatz|Name|Zeit\n1|Jo Lee|18:20\n2|Al Roe|18:31\n",
		columns: "position name time", run: "auwiesen-torben 2026-01-03", rows: "5-6"},
	{name: "marks under both sexes, and many who are not named", file: "alder-bank_2026-01-03",
		text:    "Name|Time|Male|Female|Age\nAnn Fox|17:30||x|52\nUnknown|17:52|||\nJo Lee|18:26|x||17\nAl Roe|19:20|x||25\nUnknown|20:25|||\nDi Elm|20:46||x|35\nUnknown|21:18|||\n",
		columns: "name time sex - age", run: "alder-bank 2026-01-03", rows: "2-8"},
	{name: "a best of some before the time of all", file: "alder-bank_2026-01-03",
		text:    "Usually|Today|Place|Name\n19.19|20.18|1|Jo Lee\n21.05|22.14|2|Al Roe\n|23.48|3|Cy Dee\n24.34|24.40|4|Di Fox\n25.42|26.46|5|Ed Gow\n|28.28|6|Fi Hay\n",
		columns: "- time position name", run: "alder-bank 2026-01-03", rows: "2-7"},
}

func TestCombinations(t *testing.T) {
	for _, c := range combinationCases {
		s, err := Read(c.file+".csv", c.asText(), c.o)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := outcome(s); got.columns != c.columns || got.run != c.run || got.rows != c.rows || got.asks != c.asks {
			var b strings.Builder
			s.Describe(&b)
			t.Errorf("%s: columns %q, run %q, rows %q, asks %q\n%s", c.name, got.columns, got.run, got.rows, got.asks, b.String())
		}
	}
}

// A page in UTF-16 is a page.
func TestPageInUTF16(t *testing.T) {
	page := "<html><body><h1>Alder Bank, 3 January 2026</h1><table><tr><th>Pos</th><th>Name</th><th>Time</th></tr><tr><td>1</td><td>Jo Lee</td><td>18:20</td></tr><tr><td>2</td><td>Al Roe</td><td>18:31</td></tr></table></body></html>"
	for _, order := range []binary.ByteOrder{binary.LittleEndian, binary.BigEndian} {
		data := make([]byte, 2*len(page)+2)
		order.PutUint16(data, 0xFEFF)
		for i := range len(page) {
			order.PutUint16(data[2*i+2:], uint16(page[i]))
		}
		s, err := Read("page.html", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := outcome(s); got.columns != "position name time" || got.run != "alder-bank 2026-01-03" {
			t.Errorf("%v: %+v", order, got)
		}
	}
}

// Lines that tell how many ran, who was first or what a file is name a course only where a place
// stands in them with capital letters.
func TestCourseOfSentences(t *testing.T) {
	lex, book := newLexicon(Options{}), newCourseBook(nil)
	for line, want := range map[string]string{
		"13 corridori":                                                   "",
		"Diesmal liefen 17 Läufer 5 km.":                                 "",
		"12 coureurs ont couru 5 km.":                                    "",
		"First man: Fergus Inskip 20:00":                                 "",
		"Schnellste Frau | Anke Voss | 20:00":                            "",
		"# exported by hand, do not edit":                                "",
		"Am 3. Mai 2025 liefen 17 Läufer im Bürgerpark Lehnitzau.":       "buergerpark-lehnitzau",
		"Le 3 mai 2025, 12 coureurs ont couru 5 km au Parc des Lirots.":  "parc-des-lirots",
		"El 3 de mayo de 2025 corrieron 9 personas en Dehesa Valmonte.":  "dehesa-valmonte",
		"This time 45 runners met at Wexcombe Green for our weekly run.": "wexcombe-green",
		"Fergus Inskip 20:04":                                            "",
		"Alder Bank 9:30":                                                "alder-bank",
		"Alder Bank 35 runners":                                          "alder-bank",
		"Alder Bank, 35 runners":                                         "alder-bank",
		"# Alder Bank, 3 May 2025":                                       "alder-bank",
		"First Wood 5 km":                                                "first-wood",
		"Parcours:      Vondelaar Park":                                  "vondelaar-park",
	} {
		got := ""
		if words := courseWords(line, lex, book); len(words) > 0 {
			got = words[0].slug
		}
		if got != want && got != strings.ReplaceAll(want, "ue", "u") {
			t.Errorf("%q names %q, want %q", line, got, want)
		}
	}
	if got := titleText([]string{"Parcours         Vondelaar Park"}); got != "Parcours: Vondelaar Park" {
		t.Errorf("a label and its value far apart read %q", got)
	}
}
