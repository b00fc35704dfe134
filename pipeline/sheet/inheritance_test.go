package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// inheritances are sheets out of what one volunteer hands to the next: folders by year and
// month, books with a tab a year, a route for the winter. want are the runs, asks the kinds
// of the questions.
var inheritances = []struct {
	name, file, text string
	o                Options
	want, asks       string
}{
	{"the weekday and the day in the folder of a month", "Alder Bank 2026/01 January/Sat 3rd.csv", threeNames, Options{}, "alder-bank 2026-01-03", ""},
	{"a day with the course before it", "2026/January/Alder Bank 3rd.csv", threeNames, Options{}, "alder-bank 2026-01-03", ""},
	{"a folder for a month of a year", "Alder Bank/2026-01/Sat 3.csv", threeNames, Options{}, "alder-bank 2026-01-03", ""},
	{"a folder named with month and year", "Alder Bank/January 2026/3rd.csv", threeNames, Options{}, "alder-bank 2026-01-03", ""},
	{"a number in the folder of a month is no day", "Alder Bank/2026/January/wk 3.csv", threeNames, Options{}, "alder-bank", "date-missing"},
	{"day and month in figures in the folder of a year", "Alder Bank/2026/17.01.csv", threeNames, Options{}, "alder-bank 2026-01-17", ""},
	{"figures that may be a date either way", "Alder Bank/2026/03.01.csv", threeNames, Options{}, "alder-bank", "date-unclear"},
	{"figures in no folder of a year", "Alder Bank/17.01.csv", threeNames, Options{}, "alder-bank", "date-missing"},
	{"figures beside words in the folder of a year", "2026/Alder Bank 17.01.csv", threeNames, Options{}, "alder-bank", "date-missing"},

	{"a winter route in brackets", "a.csv", "Alder Bank (winter route)\nSaturday 3 January 2026\n" + threeNames, Options{}, "alder-bank-winter-route 2026-01-03", ""},
	{"a winter course without brackets", "a.csv", "Alder Bank winter course, 3 January 2026\n" + threeNames, Options{}, "alder-bank-winter-route 2026-01-03", ""},
	{"the route on a line of its own", "a.csv", "Alder Bank\nWinter route\nSaturday 3 January 2026\n" + threeNames, Options{}, "alder-bank-winter-route 2026-01-03", ""},
	{"the route in the file's name", "alder bank 2026-01-03 (alternative course).csv", threeNames, Options{}, "alder-bank-alternative-route 2026-01-03", ""},
	{"the route of a known course", "a.csv", "Alder Bank - summer loop\n3 January 2026\n" + threeNames, Options{Courses: []CourseName{{Course: "alder-bank", Weekday: -1}}}, "alder-bank-summer-route 2026-01-03", ""},
	{"several labels on one line", "a.csv", "Date: 03/01/2026 Venue: Heron Pool Distance: 5 km\n" + threeNames, Options{DateOrder: "dmy"}, "heron-pool 2026-01-03", ""},
	{"several labels on one line, the place last", "a.csv", "Date: 3 January 2026, Distance: 5 km, Place: Heron Pool\n" + threeNames, Options{}, "heron-pool 2026-01-03", ""},
	{"the other way round", "a.csv", "Heron Pool (reverse)\n3 January 2026\n" + threeNames, Options{}, "heron-pool-reverse-route 2026-01-03", ""},
	{"the other way round, beside the date", "a.csv", "Heron Pool, 3 January 2026, anti-clockwise\n" + threeNames, Options{}, "heron-pool-reverse-route 2026-01-03", ""},
	{"a list in reverse order", "a.csv", "Heron Pool, 3 January 2026\nReverse order of finish\n" + threeNames, Options{}, "heron-pool 2026-01-03", ""},
	{"a route in German", "a.csv", "Erlenufer, Winterstrecke, 3. Januar 2026\n" + threeNames, Options{}, "erlenufer-winter-route 2026-01-03", ""},
	{"a remark on next week's route", "a.csv", "Alder Bank\n3 January 2026\nNext week we are back on the summer route\n" + threeNames, Options{}, "alder-bank 2026-01-03", ""},
	{"a place called after winter", "a.csv", "Winter Hill\n3 January 2026\n" + threeNames, Options{}, "winter-hill 2026-01-03", ""},
	{"a series in winter", "a.csv", "Alder Bank winter series\n3 January 2026\n" + threeNames, Options{}, "alder-bank 2026-01-03", ""},

	{"a tab a year over dates without it", "Alder Bank.xlsx", "== 2025\nAlder Bank 2025\n4th January\n" + bars + "\n11th January\n" + bars + "== 2026\nAlder Bank 2026\n3rd January\n" + bars + "\n10th January\n" + bars, Options{},
		"alder-bank 2025-01-04, alder-bank 2025-01-11, alder-bank 2026-01-03, alder-bank 2026-01-10", ""},
	{"a tab's year and another in its title", "Alder Bank.xlsx", "== 2026\nAlder Bank 2025\n3rd January\n" + bars + "\n10th January\n" + bars, Options{}, "alder-bank, alder-bank", "date-unclear"},
	{"a month with its number after the year", "2026-01 January.xlsx", "== 3rd\nAlder Bank\n" + bars + "== 10th\nAlder Bank\n" + bars, Options{},
		"alder-bank 2026-01-03, alder-bank 2026-01-10", ""},
	{"a date given of one run leaves the others theirs", "Alder Bank.xlsx", "== A\n3 January\n" + bars + "== B\n10 January\n" + bars + "== C\n17 January 2026\n" + bars, Options{Date: "2026-01-10"},
		"alder-bank 2026-01-03, alder-bank 2026-01-10, alder-bank 2026-01-17", ""},
	{"a date given for men and women", "Alder Bank.xlsx", "== Men\n3 January 2026\n" + bars + "== Women\nPos|Name|Time\n1|Di Fox|20:20\n2|Fi Hay|21:31\n", Options{Date: "2026-01-10"}, "alder-bank 2026-01-10, alder-bank 2026-01-10", ""},

	{"a tab a runner", "Alder Bank runners.xlsx", runnerTabs("Jo Lee", "Al Roe", "Cy Field"), Options{}, "alder-bank, alder-bank, alder-bank", ""},
	{"a tab a place, of one runner", "my runs.xlsx", runnerTabs("Alder Bank", "Mill Lane", "Whin Moss"), Options{}, "alder-bank, mill-lane, whin-moss", "name-column-missing"},
	{"weeks by number, with their days on a tab behind", "Alder Bank 2026.xlsx", "== Times\nName|Wk 1|Wk 2|Wk 3\nJo Lee|18:20|18:31|\nAl Roe|19:20||19:31\nCy Dee||20:31|20:40\nDi Fox|21:20|21:31|21:40\n== Dates\nWeek|Date\n1|3 January 2026\n2|10 January 2026\n3|24 January 2026\n", Options{},
		"alder-bank 2026-01-03, alder-bank 2026-01-10, alder-bank 2026-01-24", ""},
	{"weeks by number, of which one has no day", "Alder Bank 2026.xlsx", "== Times\nName|Wk 1|Wk 2|Wk 4\nJo Lee|18:20|18:31|\nAl Roe|19:20||19:31\nCy Dee||20:31|20:40\nDi Fox|21:20|21:31|21:40\n== Dates\nWeek|Date\n1|3 January 2026\n2|10 January 2026\n3|24 January 2026\n", Options{},
		"refused", ""},
	{"a diary of winners", "winners.csv", "Date,Winner,Winning time,First lady,Runners\n03/01/2026,Jo Lee,18:20,Di Fox,31\n10/01/2026,Al Roe,18:31,Di Fox,28\n17/01/2026,Jo Lee,18:22,Fi Hay,30\n24/01/2026,Cy Dee,18:41,Di Fox,25\n31/01/2026,Jo Lee,18:25,Fi Hay,33\n", Options{}, "refused", ""},
	{"who signed on", "Alder Bank 3 January 2026 signed on.csv", "No,Name,Club\n1,Jo Lee,Vale AC\n2,Al Roe,\n3,Cy Dee,Vale AC\n", Options{}, "refused", ""},
	{"places beside what was paid", "Alder Bank 3 January 2026.csv", "Pos,Name,Paid\n1,Jo Lee,y\n2,Al Roe,y\n3,Cy Dee,n\n", Options{}, "alder-bank 2026-01-03", ""},
	{"a half called by its place", "Alder Bank.xlsx", "== 3 Jan\nAlder Bank 5k 3 January 2026\n" + bars + "== Mill Half\nChampionship: Mill Leat Half, 10 January 2026\nPos|Name|Time\n1|Jo Lee|1:28:20\n2|Al Roe|1:48:31\n3|Cy Dee|1:59:02\n", Options{},
		"alder-bank 2026-01-03, mill-leat-half 2026-01-10", ""},
}

// runnerTabs is a book with a tab for each name and lines of the same four days.
func runnerTabs(names ...string) string {
	var b strings.Builder
	for i, n := range names {
		fmt.Fprintf(&b, "== %s\n%s\nDate|Place|Time\n", n, n)
		for d := range 4 {
			fmt.Fprintf(&b, "%02d/01/2026|%d|%d:%02d\n", 3+7*d, 1+(i+d)%len(names), 18+i, 10+d)
		}
	}
	return b.String()
}

const (
	threeNames = "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n"
	bars       = "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:31\n3|Cy Dee|19:02\n"
)

func TestInheritances(t *testing.T) {
	for _, c := range inheritances {
		t.Run(c.name, func(t *testing.T) {
			data := []byte(c.text)
			if strings.HasSuffix(c.file, ".xlsx") {
				data = bookOf(t, c.text)
			}
			s, err := Read(c.file, data, c.o)
			if c.want == "refused" {
				if err == nil {
					t.Errorf("read, and should be refused: %+v", outcome(s))
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			var runs []string
			for _, p := range s.Parts {
				run := p.Course.Value
				if p.Date.Settled {
					run += fmt.Sprintf(" %s", p.Date.Day)
				}
				runs = append(runs, run)
			}
			if got := strings.Join(runs, ", "); got != c.want {
				t.Errorf("runs %q, want %q", got, c.want)
			}
			if got := outcome(s).asks; got != c.asks {
				t.Errorf("asks %q, want %q", got, c.asks)
			}
		})
	}
}
