package sheet

import (
	"strings"
	"testing"
)

// Names of places behind what counts the runs of a series, with words of the desk behind
// them, or made of words that are none elsewhere.
func TestNamesAmongWordsOfTheDesk(t *testing.T) {
	const rows = "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n"
	for _, c := range []struct{ title, course string }{
		{"League run 115 Ivy Bridge 3 January 2026", "ivy-bridge"},
		{"Summer Series Race 4 Ivy Bridge - 3 January 2026", "ivy-bridge"},
		{"Ivy Bridge Summer League run 115 - 3 January 2026", "ivy-bridge"},
		{"League Meadow run 115 - 3 January 2026", "league-meadow"},
		{"Blackthorn Lane timekeeper sheet 3 January 2026", "blackthorn-lane"},
		{"Harp Lake live 3 January 2026", "harp-lake"},
		{"Results from Mill Race on 3 January 2026", "mill-race"},
		{"Mill Lane race 3 January 2026", "mill-lane"},
		{"Quinta do Freixo 3 janeiro 2026", "quinta-do-freixo"},
		{"Wyniki biegu Park Jodła 3 stycznia 2026", "park-jodla"},
		{"Ergebnisse Am Seegrund 3. Januar 2026", "am-seegrund"},
		{"Lauf am Seegrund 3. Januar 2026", "seegrund"},
	} {
		s, err := Read("list.csv", []byte(c.title+"\n"+rows), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].Course.Value; got != c.course {
			t.Errorf("%q is of the course %q, want %q", c.title, got, c.course)
		}
	}
}

// A form says when each line was written: the day is proposed and not taken.
func TestDayOfAForm(t *testing.T) {
	for file, want := range map[string]string{"2026-01-03": "--date 2026-01-03\tif the run was on that day\n--date YEAR-MONTH-DAY", "2026-01-04": "--date YEAR-MONTH-DAY"} {
		s, err := Read("Alder Bank form responses.csv", []byte("Timestamp,Pos,Your name,Your time\n2026-01-03 09:19:06,1,Jo Lee,18:20\n2026-01-03 09:19:36,2,Al Roe,18:31\n2026-01-03 09:20:06,3,Cy Dee,18:40\n"+file+" 09:21:00,4,Di Fox,18:42\n"), Options{})
		if err != nil {
			t.Fatal(err)
		}
		p := s.Parts[0]
		if p.Course.Value != "alder-bank" {
			t.Errorf("course %q", p.Course.Value)
		}
		var answers []string
		for _, q := range p.Problems {
			if q.Kind == "date-missing" {
				answers = append(answers, q.Answers)
			}
		}
		if got := strings.Join(answers, "|"); got != want {
			t.Errorf("%s: answers %q, want %q", file, got, want)
		}
	}
}
