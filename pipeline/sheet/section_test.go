package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

// The titles of lists say whose they are, and how far, though the name of the run and its day stand beside it.
func TestTitlesOfLists(t *testing.T) {
	rows := func(first, second string) string {
		return "Pos,Name,Age,Time\n1," + first + " Lee,34," + "18:20\n2," + first + " Roe,24,18:31\n3," + first + " Dee,44,19:02\n\n" + second
	}
	for _, c := range []struct{ text, want string }{
		{"Cinder Path 5K Men's Results\n" + rows("Al", "Cinder Path 5K Women's Results\n"+rows("Jo", "")), "Men: Al Al Al; Women: Jo Jo Jo"},
		{"Results for Cinder Path 5K-Male\n" + rows("Al", "Results for Cinder Path 5K-Female\n"+rows("Jo", "")), "Male: Al Al Al; Female: Jo Jo Jo"},
		{"Cinder Path 5K - Women\n" + rows("Jo", "Cinder Path 5K - Men\n"+rows("Al", "")), "Women: Jo Jo Jo; Men: Al Al Al"},
	} {
		s, err := Read("cinder-path_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		var order []string
		names := map[string][]string{}
		for _, p := range s.Parts {
			sex, name := p.Index(Sex), p.Index(Name)
			if err := p.Each(func(_ int, cells []string) error {
				said := strings.Fields(strings.NewReplacer("'s", "", "Results", "").Replace(cellAt(cells, sex)))[0]
				if names[said] == nil {
					order = append(order, said)
				}
				names[said] = append(names[said], strings.Fields(cellAt(cells, name))[0])
				return nil
			}); err != nil {
				t.Fatal(err)
			}
		}
		var got []string
		for _, o := range order {
			got = append(got, o+": "+strings.Join(names[o], " "))
		}
		if strings.Join(got, "; ") != c.want {
			t.Errorf("%.40q: %q, want %q", c.text, strings.Join(got, "; "), c.want)
		}
	}
	block := func(n int, metres string, rows string) string {
		return fmt.Sprintf("Event #%d\nEvent,%s\nType,Track\nDate,\"Apr 19, 2026\"\n\nPlace,Bib,First Name,Last Name,Performance\n%s\n", n, metres, rows)
	}
	text := block(1, "1500 Meters", "1,7,Al,Lee,4:16.77\n2,8,Jo,Roe,5:34.56\n") + block(2, "5000 Meters", "1,9,Cy,Dee,17:48.96\n2,10,Di,Fox,18:49.55\n3,11,Ed,Guy,19:02.44\n")
	s, err := Read("cinder-path.csv", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		n := 0
		if err := p.Each(func(int, []string) error { n++; return nil }); err != nil {
			t.Fatal(err)
		}
		got = append(got, fmt.Sprintf("%d m: %d", int(looseNumber(p.Distance.Value)), n))
	}
	if strings.Join(got, "; ") != "1500 m: 2; 5000 m: 3" {
		t.Errorf("events of a meeting: %v", got)
	}
}

// A list that goes back to the distance of an earlier one is a run of its own, and not
// more lines of the one above it.
func TestDistanceOfAnEarlierListAgain(t *testing.T) {
	var b strings.Builder
	for _, list := range []string{"Women 5 km", "Women 10 km", "Men 5 km", "Men 10 km"} {
		minutes := 20
		if strings.Contains(list, "10") {
			minutes = 42
		}
		fmt.Fprintf(&b, "%s,,\nPos,Name,Time\n", list)
		for i := range 6 {
			fmt.Fprintf(&b, "%d,%s Lee%c,%d:%02d\n", i+1, list[:2], 'a'+i, minutes+i, 7*i)
		}
		b.WriteString("\n")
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte(b.String()), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		rows, sex := 0, p.Index(Sex)
		said := map[string]bool{}
		if err := p.Each(func(_ int, cells []string) error { rows++; said[cellAt(cells, sex)] = true; return nil }); err != nil {
			t.Fatal(err)
		}
		got = append(got, fmt.Sprintf("%s m, %d rows, %v", p.Distance.Value, rows, slices.Sorted(maps.Keys(said))))
	}
	want := []string{"5000 m, 6 rows, [Women]", "10000 m, 6 rows, [Women]", "5000 m, 6 rows, [Men]", "10000 m, 6 rows, [Men]"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// The time at which a group started is no part of it.
func TestSectionText(t *testing.T) {
	for text, want := range map[string]string{"Ladies' race, 10.00": "Ladies", "Men 40-49, 9:30am": "Men 40-49", "Sex: F": "F", "Women 20-29": "Women 20-29", "Event 12  Boys 5k Run": "Boys", "Event 5  Women 5000 Meter Run": "Women"} {
		if got := sectionText(text); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// Tabs that are called after ages alone are no days where one of them can be none.
func TestTabsOfAgesAlone(t *testing.T) {
	for _, c := range []struct {
		tabs string
		want bool
	}{
		{"0-9,10-19,20-29", true},
		{"10-14,15-19", true},
		{"10-5,10-12,10-19", false},
		{"10-19,Men", false},
		{"10-19,11-16", false},
		{"Men 10-19,Men 20-29", true},
		{"Men 10-14,Women 10-14", false}, // 14 October
		{"Age range 10-19,Age range 20-29", true},
		{"Mill 10-19,Mill 20-29", false},
		{"1-25,26-50", false},
	} {
		if got := ageTabs(strings.Split(c.tabs, ",")); got != c.want {
			t.Errorf("%s: %v", c.tabs, got)
		}
	}
	for tab, want := range map[string]bool{"Age group- 0-9": true, "Ages 10 to 19": true, "Age 40-49": true, "Age": false, "Group 1-5": false} {
		if got := saysWho(tab); got != want {
			t.Errorf("%s: %v", tab, got)
		}
	}
}
