package sheet

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/place"
)

// Lists over several distances: those that are plain are runs of their own, the others
// are asked about, each on its tab. What is read is tab, metres and lines of each part,
// with those of each distance where a column gives them.
func TestDistances(t *testing.T) {
	adults := "Pos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|19:31\n3|Cy Dee|21:02\n4|Di Fox|24:40\n"
	juniors := "Pos|Name|Time\n1|Kit Sole|8:10\n2|Lou Tarn|8:52\n3|Ned Wye|9:40\n4|Oz Yeo|10:31\n"
	for _, c := range []struct{ name, text, read, asks string }{
		{"each tab says its own", "== 5 km\n" + adults + "== Junior 2 km\n" + juniors, "5 km 5000 4; Junior 2 km 2000 4", ""},
		{"the usual one is not said", "== Results\n" + adults + "== 2k juniors\n" + juniors, "Results 0 4; 2k juniors 2000 4", ""},
		{"a title over both says two", "== 5k\nAlder Bank 5k and junior 2k\n" + adults + "== 2k\nAlder Bank 5k and junior 2k\n" + juniors, "5k 5000 4; 2k 2000 4", ""},
		{"5 km is 3.1 miles", "== 5 km\n" + adults + "== 3.1 miles\n" + strings.ReplaceAll(adults, "|1", "|2"), "5 km 5000 4; 3.1 miles 5000 4", ""},
		{"juniors of no distance", "== 5 km\n" + adults + "== Juniors\n" + juniors, "5 km 5000 4", "Juniors: over 5000 m these would be times of 1:56 a kilometre"},
		{"a tab of no distance that is too slow", "== 2 km\n" + juniors + "== All\n" + strings.NewReplacer("18:", "48:", "19:", "51:", "21:", "57:", "24:", "59:").Replace(adults), "2 km 2000 4", "All: nothing here; 2000 m on tab \"2 km\""},
		{"a distance that its times don't fit", "== Results\n" + adults + "== 10k\n" + juniors, "Results 0 4", "10k: 10000 m, 0:58 a kilometre"},
		{"times on the way", "== 5 km\n" + adults + "== 2 km\n" + strings.NewReplacer("18:", "7:", "19:", "7:", "21:", "8:", "24:", "9:").Replace(adults), "5 km 5000 4", "2 km: 4 of 4 people are also in the list over 5000 m on tab \"5 km\""},
		{"a column says it", "== Results\nRace|Pos|Name|Time\n5k|1|Al Roe|18:20\n2k|1|Kit Sole|8:10\n5k|2|Jo Lee|18:31\n2 km|2|Lou Tarn|8:20\n", "Results 0 4 (2000: 2, 5000: 2)", ""},
		{"a column that says it, and of whom", "== Results\nRace|Pos|Name|Time\n5 km|1|Al Roe|18:20\nJunior 2k|1|Kit Sole|8:10\n5 km|2|Jo Lee|18:31\nJunior 2k|2|Lou Tarn|8:20\n", "Results 0 4 (2000: 2, 5000: 2)", ""},
		{"a column that leaves one out", "== Results\nDistance|Pos|Name|Time\n5k|1|Al Roe|18:20\n2k|1|Kit Sole|8:10\n5k|2|Jo Lee|18:31\n|2|Lou Tarn|8:20\n", "Results 0 4 (0: 1, 2000: 1, 5000: 2)", "Results: 5k, 2k, and 1 rows without"},
		{"a column that its times don't fit", "== Results\nDistance|Pos|Name|Time\n5k|1|Al Roe|18:20\n5k|2|Jo Lee|18:31\n5k|3|Cy Dee|19:00\n2k|1|Kit Sole|18:10\n2k|2|Lou Tarn|18:20\n2k|3|Ned Wye|18:40\n", "Results 0 6 (2000: 3, 5000: 3)", "Results: 9:10 and 3:42 a kilometre"},
		{"of what a colour stands for", "== Results\nYellow = ran 2k only\n" + adults, "Results 0 4", ""},
		{"what a sign stands for", "== Results\n* 2 km only\n" + adults, "Results 0 4", ""},
		{"where something is", "== Results\nParking 2 km from the start\n" + adults, "Results 0 4", ""},
		{"a point on the way", "== Results\nTimes at 2.5 km to follow\n" + adults, "Results 0 4", ""},
		{"a title", "== Results\nRun over 4 km\n" + adults, "Results 4000 4", ""},
		{"the course of a length", "== Results\nRun at our 4 km course\n" + adults, "Results 4000 4", ""},
		{"how far each came is no distance", "== Results\nDistance (km)|Pos|Name|Time\n5.02|1|Al Roe|18:20\n4.99|2|Jo Lee|18:31\n5.04|3|Cy Dee|19:00\n", "Results 0 3 (0: 3)", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("Alder Bank 3 January 2026.xlsx", bookOf(t, c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var read, asks []string
			for _, p := range s.Parts {
				n := 0
				rows := map[int]int{}
				p.Each(func(_ int, cells []string) error {
					n++
					rows[p.DistanceOf(cells)]++
					return nil
				})
				line := fmt.Sprintf("%s %d %d", p.Tab, p.DistanceM(), n)
				if p.Index(Distance) >= 0 {
					line += " (" + strings.ReplaceAll(strings.TrimSuffix(strings.TrimPrefix(fmt.Sprint(rows), "map["), "]"), " ", ", ") + ")"
					line = strings.ReplaceAll(line, ":", ": ")
				}
				read = append(read, line)
				for _, q := range p.Problems {
					if q.Severity == place.Waits {
						asks = append(asks, q.Place.Tab+": "+q.Read)
					}
				}
			}
			for _, q := range s.Problems {
				if q.Kind == TabLeftOut {
					asks = append(asks, q.Place.Tab+": "+q.Read)
				}
			}
			if got := strings.Join(read, "; "); got != c.read {
				t.Errorf("read %q, want %q", got, c.read)
			}
			if got := strings.Join(asks, "; "); got != c.asks {
				t.Errorf("asks %q, want %q", got, c.asks)
			}
		})
	}
}

// Several races of a day one under the other are of the course that the title or the file
// names; what each is called is none. Each has the sections that stand in it.
func TestRacesOfOneTab(t *testing.T) {
	adults := "Pos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,19:31\n3,Cy Dee,21:02\n4,Di Fox,24:40\n"
	others := "Pos,Name,Time\n1,Bea Ash,19:20\n2,Gus Elm,19:51\n3,Hal Ivy,22:02\n4,Ida Oak,25:40\n"
	juniors := "Pos,Name,Time\n1,Kit Sole,8:10\n2,Lou Tarn,8:52\n3,Ned Wye,9:40\n4,Oz Yeo,10:31\n"
	tots := "Pos,Name,Time\n1,Kit Sole,2:10\n2,Lou Tarn,2:52\n3,Ned Wye,2:55\n4,Oz Yeo,3:31\n"
	for _, c := range []struct{ name, file, text, want string }{
		{"the file names the course", "Moss Common 2026-11-21.csv", "Junior 2k\n" + juniors + "\nMain 5k\n" + adults, "moss-common 2026-11-21 2000 Junior; moss-common 2026-11-21 5000 "},
		{"a title does", "2026-11-21.csv", "Moss Common\nHeron Dash 5k\n" + adults + "\nOtter Dash 2k\n" + juniors, "moss-common 2026-11-21 5000 -; moss-common 2026-11-21 2000 -"},
		{"a race of some hundred metres", "Moss Common 2026-11-21.csv", "Bambinilauf 600 m\n" + tots + "\nHauptlauf 5 km\n" + adults, "moss-common 2026-11-21 600 -; moss-common 2026-11-21 5000 -"},
		{"nothing but what they are called", "2026-11-21.csv", "Fun run 2k\n" + juniors + "\nMain race 5k\n" + adults, " 2026-11-21 2000 -;  2026-11-21 5000 -"},
		{"two courses", "2026-11-21.csv", "Alder Bank 5k\n" + adults + "\nMoss Common 2k\n" + juniors, "alder-bank 2026-11-21 5000 -; moss-common 2026-11-21 2000 -"},
		{"women and men on two days", "Moss Common 2026.csv", "7 Nov 2026\nWomen\n" + adults + "\nMen\n" + others + "\n14 Nov 2026\nWomen\n" + others + "\nMen\n" + adults, "moss-common 2026-11-07 0 Women Men; moss-common 2026-11-14 0 Women Men"},
		{"a second day that says nothing of them", "Moss Common 2026.csv", "7 Nov 2026\nWomen\n" + adults + "\nMen\n" + others + "\n14 Nov 2026\n" + others, "moss-common 2026-11-07 0 Women Men; moss-common 2026-11-14 0 "},
		{"women on both days", "Moss Common 2026.csv", "Women\n7 Nov 2026\n" + adults + "\n14 Nov 2026\n" + others, "moss-common 2026-11-07 0 Women; moss-common 2026-11-14 0 Women"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read(c.file, []byte(c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var read []string
			for _, p := range s.Parts {
				section := "-"
				if col := p.rules.sectionColumn; col >= 0 {
					var seen []string
					p.Each(func(_ int, cells []string) error {
						if n := len(seen); n == 0 || seen[n-1] != cells[col] {
							seen = append(seen, cells[col])
						}
						return nil
					})
					section = strings.Join(seen, " ")
				}
				read = append(read, fmt.Sprintf("%s %s %d %s", p.Course.Value, p.Date.Day, p.DistanceM(), section))
			}
			if got := strings.Join(read, "; "); got != c.want {
				t.Errorf("read %q, want %q", got, c.want)
			}
		})
	}
}

// A distance in words is taken where the times are those of it and not of 5 km.
func TestDistanceInWords(t *testing.T) {
	field := func(clock string, seconds int) string {
		list := ""
		for i, name := range []string{"Al Roe", "Jo Lee", "Cy Dee", "Di Fox", "Ed Gow"} {
			s := seconds + i*seconds/20
			list += fmt.Sprintf("%d,%s,", i+1, name) + fmt.Sprintf(clock+"\n", s/3600, s/60%60, s%60)
		}
		return "Pos,Name,Time\n" + list
	}
	const hms, ms = "%d:%02d:%02d", "%.0[1]d%[2]d:%02[3]d"
	for _, c := range []struct {
		title, clock string
		seconds      int
		metres       int
	}{
		{"Moss Common Half Marathon", hms, 5000, 21098}, {"Halbmarathon Mooswiese", hms, 5000, 21098}, {"Semi-marathon de Vernelle", hms, 5000, 21098}, {"Mezza Maratona di Valdara", hms, 5000, 21098},
		{"Moss Common Marathon", hms, 11000, 42195}, {"Moss Marathon Club at Moss Common", ms, 1100, 0}, {"Moss Common Marathon", ms, 1100, 0},
		{"Moss Common Kids Mile", ms, 400, 1609}, {"Moss Common Mile", ms, 1100, 0}, {"Moss Common one mile", ms, 300, 1609},
		{"Moss Common ten miles", hms, 4000, 16093}, {"Moss Common five mile", ms, 2000, 8047}, {"Moss Common five mile", ms, 900, 0},
	} {
		s, err := Read("results 2026-01-03.csv", []byte(c.title+"\n"+field(c.clock, c.seconds)), Options{})
		if err != nil {
			t.Fatal(c.title, err)
		}
		if got := s.Parts[0].DistanceM(); got != c.metres {
			t.Errorf("%s, %d s: %d m, want %d", c.title, c.seconds, got, c.metres)
		}
	}
}

// Kilometres in Hebrew are written with a mark, and the year behind the name of a Thai month is of the Buddhist era.
func TestHebrewAndThaiTitles(t *testing.T) {
	const rows = "Pos,Name,Time\n1,Al Roe,18:20\n2,Jo Lee,19:31\n3,Cy Dee,21:02\n"
	for _, c := range []struct{ title, run string }{
		{"גן האלון 5 ק״מ\n3 בינואר 2026", "גן-האלון 2026-01-03"},
		{"\"גן האלון 5 ק\"\"מ\"\n3 בינואר 2026", "גן-האלון 2026-01-03"},
		{"Mill Leat\n22 กุมภาพันธ์ 2568", "mill-leat 2025-02-22"},
	} {
		s, err := Read("results.csv", []byte(c.title+"\n"+rows), Options{})
		if err != nil {
			t.Fatal(c.title, err)
		}
		got := outcome(s)
		if got.run != c.run || got.asks != "" {
			t.Errorf("%s: run %q, want %q (%s)", c.title, got.run, c.run, got.asks)
		}
		if m := s.Parts[0].DistanceM(); m != 0 && m != 5000 {
			t.Errorf("%s: %d m", c.title, m)
		}
	}
}

// A tab that has to be asked about does not hold up the others; halves of a result, and
// questions about the whole workbook, do.
func TestTabsLeftOut(t *testing.T) {
	rows := "Pos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|19:31\n3|Cy Dee|21:02\n"
	other := strings.NewReplacer("18:", "20:", "19:", "22:", "21:", "23:").Replace(rows)
	for _, c := range []struct{ name, text, parts, left, waits string }{
		{"no date on one of three", "== A\nAlder Bank 3 January 2026\n" + rows + "== B\nAlder Bank\n" + strings.ReplaceAll(other, "2:", "1:") + "== C\nAlder Bank 10 January 2026\n" + other, "A C", "B", ""},
		{"last week's title on the new tab", "== 24 January\nAlder Bank 17 January 2026\n" + rows + "== 7 February\nAlder Bank 7 February 2026\n" + other, "7 February", "24 January", ""},
		{"last year's title", "== 3 January 2026\nAlder Bank 3 January 2025\n" + rows + "== 10 January 2026\nAlder Bank 10 January 2026\n" + other, "10 January 2026", "3 January 2026", ""},
		{"no course on one of three", "== A\nAlder Bank 3 January 2026\n" + rows + "== B\n10 January 2026\n" + other + "== C\nEmber Quay 10 January 2026\n" + other, "A C", "B", ""},
		{"a half waits for the whole", "== Times\nAlder Bank\nPos|Time\n1|18:20\n2|19:31\n== Names\nPos|Name\n1|Al Roe\n2|Jo Lee\n", "Times Names", "", "date-missing"},
		{"nothing is clear", "== A\nAlder Bank\n" + rows + "== B\nEmber Quay\n" + other, "A B", "", "date-missing"},
		{"day or month first is a question of the workbook", "== A\nAlder Bank 3/4/2026\n" + rows + "== B\nAlder Bank 3 January 2026\n" + other, "A B", "", "date-unclear"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read("results.xlsx", bookOf(t, c.text), Options{})
			if err != nil {
				t.Fatal(err)
			}
			var parts, left []string
			waits := ""
			for _, p := range s.Parts {
				parts = append(parts, p.Tab)
				for _, q := range p.Problems {
					if q.Severity == place.Waits {
						waits = q.Kind
					}
				}
			}
			for _, q := range s.Problems {
				if q.Kind == TabLeftOut {
					left = append(left, q.Place.Tab)
					if q.Severity != place.Doubtful || !strings.Contains(q.Do, "its 3 lines are left out") {
						t.Errorf("%s: %s", q.Severity, q)
					}
				}
			}
			if got := strings.Join(parts, " "); got != c.parts {
				t.Errorf("parts %q, want %q", got, c.parts)
			}
			if got := strings.Join(left, " "); got != c.left {
				t.Errorf("left out %q, want %q", got, c.left)
			}
			if waits != c.waits {
				t.Errorf("waits %q, want %q", waits, c.waits)
			}
		})
	}
}

// The year of tabs that give day and month stands on the tab in front of them.
func TestYearOnAnotherTab(t *testing.T) {
	list := "Pos|Name|Time\n1|Al Roe|18:20\n2|Jo Lee|19:31\n3|Cy Dee|21:02\n4|Di Fox|24:40\n"
	s, err := Read("book.xlsx", bookOf(t, "== Summary\nMoss Common season 2026\nName|Runs|Best time\nAl Roe|2|18:20\nJo Lee|2|19:31\n== 07.11\n"+list+"== 14.11\n"+strings.NewReplacer(":20", ":22", ":31", ":35", ":02", ":07", ":40", ":44").Replace(list)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		got = append(got, fmt.Sprint(p.Course.Value, " ", p.Date.Day))
	}
	if text := strings.Join(got, "; "); text != "moss-common 2026-11-07; moss-common 2026-11-14" {
		t.Error(text, s.Problems)
	}
}

// A row of places above a row of days says where each run was.
func TestPlacesOverDays(t *testing.T) {
	s, err := Read("autumn 2025.csv", []byte(",Alder Bank,Moss Common,Moss Common\nRunner,2025-11-08,2025-11-15,2025-11-22\nJo Lee,18:20,18:40,18:31\nAl Roe,19:02,,19:10\nCy Dee,,20:11,20:00\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range s.Parts {
		got = append(got, fmt.Sprint(p.Course.Value, " ", p.Date.Day))
	}
	if text := strings.Join(got, "; "); text != "alder-bank 2025-11-08; moss-common 2025-11-15; moss-common 2025-11-22" {
		t.Error(text)
	}
}

// Lines that bound the times below them are no age groups.
func TestTimeBands(t *testing.T) {
	list := func(bands ...string) string {
		return "Pos,Name,Time\n" + bands[0] + "\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n" + bands[1] + "\n4,Di Fox,20:28\n5,Ed Gow,21:40\n6,Fi Hay,21:59\n" + bands[2] + "\n7,Gus Ivy,23:10\n8,Hal Job,24:40\n9,Ida Kay,29:59\n"
	}
	for _, c := range []struct {
		text   string
		groups bool
	}{{list("Sub 20", "20 to 22", "Over 22"), false}, {list("Under 20:00", "20-22", "22+"), false}, {list("Under 15", "15 to 17", "Over 40"), true}, {list("Under 20", "Senior", "Over 40"), true}} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if n := len(rowsOf(t, s.Parts[0])); n != 9 {
			t.Errorf("%d rows of 9:\n%s", n, c.text)
		}
		if got := s.Parts[0].Index(AgeGroup) >= 0; got != c.groups {
			t.Errorf("groups %v, want %v:\n%s", got, c.groups, c.text)
		}
	}
}

// The day of a date is no distance.
func TestDayBeforeLetterIsNoDistance(t *testing.T) {
	for text, want := range map[string]float64{"Moss Common 2026-11-21 k": 0, "Moss Common 21.11.2026 5k": 5000, "Moss Common 2026-11-21 10 km": 10000, "21/11/26 miles": 0, "Moss Common 5 km 2026-11-21": 5000} {
		if m, _, _, _ := findDistance(text); m != want {
			t.Errorf("%s: %v m, want %v", text, m, want)
		}
	}
}
