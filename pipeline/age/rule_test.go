package age

import (
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

func day(t *testing.T, s string) unit.Day {
	t.Helper()
	d, err := unit.ParseDay(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func byYear() Rule {
	r := DefaultRule()
	r.Reckoning = ByYear
	return r
}

// french is the rule of a season from 1 September with the ages of the year in which it ends.
func french() Rule {
	r := byYear()
	r.Year, r.SeasonMonth, r.SeasonDay = SeasonEnds, 9, 1
	return r
}

// The day on which ages are reckoned, for runs at both ends of a year and a season.
func TestReckonedOn(t *testing.T) {
	august := french() // the last day of a season from September
	august.OnMonth, august.OnDay = 8, 31
	first := french() // its first day
	first.Year, first.OnMonth, first.OnDay = SeasonBegins, 9, 1
	juniors := byYear()
	juniors.Reckoning = JuniorsByYear
	for _, c := range []struct {
		what      string
		rule      Rule
		run, want string
	}{
		{"on the day", DefaultRule(), "2026-05-30", "2026-05-30"},
		{"year, first day", byYear(), "2026-01-01", "2026-12-31"},
		{"year, last day", byYear(), "2026-12-31", "2026-12-31"},
		{"juniors", juniors, "2026-05-30", "2026-12-31"},
		{"season's end, last day of a season", french(), "2026-08-31", "2026-12-31"},
		{"season's end, first day of the next", french(), "2026-09-01", "2027-12-31"},
		{"season's end, January", french(), "2027-01-01", "2027-12-31"},
		{"31 August of the season", august, "2026-09-01", "2027-08-31"},
		{"31 August of the season, on it", august, "2027-08-31", "2027-08-31"},
		{"first day of the season", first, "2027-08-31", "2026-09-01"},
		{"first day of the season, on it", first, "2026-09-01", "2026-09-01"},
	} {
		if got := c.rule.ReckonedOn(day(t, c.run)).String(); got != c.want {
			t.Errorf("%s: a run on %s is reckoned on %s, want %s", c.what, c.run, got, c.want)
		}
	}
	calendar := byYear() // of a season that is the year all three years are one
	for _, y := range []YearOf{OfRun, SeasonBegins, SeasonEnds} {
		calendar.Year = y
		if got := calendar.ReckonedOn(day(t, "2026-06-01")); got != day(t, "2026-12-31") {
			t.Errorf("year %d of a calendar season: %s", y, got)
		}
	}
}

// Worked examples. World Athletics, Technical Rules, rule 3 (from memory of the text): under-20
// is any athlete of 18 or 19 years on 31 December in the year of the competition, under-18 one
// of 16 or 17; a master is one who has reached the 35th birthday. World Masters Athletics,
// Rules of Competition (from memory): the five-year group by the age on the day. By the French
// tables of classes (from memory) the season 2025/26 has the juniors of 2007 and 2008, and the
// masters 0 of 1987 to 1991.
func TestGroupsByRule(t *testing.T) {
	world := byYear()
	world.Reckoning = JuniorsByYear
	for _, c := range []struct {
		what           string
		rule           Rule
		born, run, sex string
		want           string
	}{
		{"under-20 all year: 19 on 31 December", world, "2007-01-01", "2026-01-01", "M", "U20"},
		{"under-20, 20 the day after the year", world, "2007-01-01", "2026-12-31", "M", "U20"},
		{"under-20, 17 until the last day", world, "2008-12-31", "2026-01-01", "W", "U20"},
		{"20 on the last day", world, "2006-12-31", "2026-01-01", "W", "Senior"},
		{"under-18: 16 on the last day", world, "2010-12-31", "2026-03-01", "M", "U18"},
		{"under-16: a day younger", world, "2011-01-01", "2026-03-01", "M", "U16"},
		{"no master on the eve of the birthday", world, "1991-05-31", "2026-05-30", "M", "Senior"},
		{"a master from the birthday on", world, "1991-05-30", "2026-05-30", "M", "M35"},
		{"W45 from the birthday on", world, "1981-05-30", "2026-05-30", "W", "W45"},

		{"by the day", DefaultRule(), "1986-12-31", "2026-01-01", "M", "M35"},
		{"by the year", byYear(), "1986-12-31", "2026-01-01", "M", "M40"},
		{"by the year, the day after", byYear(), "1987-01-01", "2026-12-31", "M", "M35"},
		{"born on a leap day", byYear(), "1984-02-29", "2029-02-28", "M", "M45"},
		{"born on a leap day, by the day", DefaultRule(), "1984-02-29", "2029-02-28", "M", "M40"},

		{"French junior", french(), "2007-01-01", "2026-08-31", "M", "U20"},
		{"French junior, the last of two years", french(), "2008-12-31", "2025-09-01", "M", "U20"},
		{"the next season", french(), "2007-06-01", "2026-09-01", "M", "Senior"},
		{"French M0, first year", french(), "1991-12-31", "2025-09-01", "M", "M35"},
		{"French M0, last year", french(), "1987-01-01", "2026-08-31", "M", "M35"},
		{"French M1", french(), "1986-12-31", "2025-09-01", "M", "M40"},
		{"French senior", french(), "1992-01-01", "2026-08-31", "M", "Senior"},
	} {
		born := day(t, c.born)
		first, ok := c.rule.On(day(t, c.run)).Group(OfDate(born))
		if got := c.rule.Scheme.Name(first, c.sex); !ok || got != c.want {
			t.Errorf("%s: born %s, run %s: %s %v, want %s", c.what, c.born, c.run, got, ok, c.want)
		}
	}
}

// A class by the year is whole years of birth, so that it is certain in its own group.
func TestClassIsYearsOfBirth(t *testing.T) {
	for _, c := range []struct {
		rule     Rule
		run      string
		from, to string
	}{
		{byYear(), "2026-01-01", "1982-01-01", "1986-12-31"},
		{byYear(), "2026-12-31", "1982-01-01", "1986-12-31"},
		{byYear(), "2028-02-29", "1984-01-01", "1988-12-31"},
		{french(), "2025-09-01", "1982-01-01", "1986-12-31"},
		{french(), "2026-08-31", "1982-01-01", "1986-12-31"},
		{DefaultRule(), "2026-03-01", "1981-03-02", "1986-03-01"},
	} {
		w := c.rule.Births(40, 44, day(t, c.run))
		if w != (Window{day(t, c.from), day(t, c.to)}) {
			t.Errorf("M40 on %s: born %s to %s, want %s to %s", c.run, w.Lo, w.Hi, c.from, c.to)
		}
	}
}

// Births holds exactly those whom Group puts into the group, by every rule, at both ends of
// every group and on days that are hard.
func TestBirthsAgreeWithGroup(t *testing.T) {
	january := french() // reckoned long before the run
	january.Year, january.OnMonth, january.OnDay = SeasonBegins, 1, 1
	juniors := french()
	juniors.Reckoning = JuniorsByYear
	for _, rule := range []Rule{DefaultRule(), byYear(), french(), january, juniors} {
		for _, run := range []string{"2025-09-01", "2026-08-31", "2028-02-29", "2027-02-28", "2026-12-31", "2026-01-01"} {
			run := day(t, run)
			for first := 10; first <= 110; {
				lo, hi := rule.Scheme.Bounds(first)
				w := rule.Births(lo, hi, run)
				if w.Lo > w.Hi {
					t.Fatalf("%s %s: group %d is empty", rule.Words(), run, lo)
				}
				for _, born := range []unit.Day{w.Lo - 1, w.Lo, (w.Lo + w.Hi) / 2, w.Hi, w.Hi + 1} {
					in := born >= w.Lo && born <= w.Hi
					if got := rule.On(run).FirstAge(born); (got == lo) != in {
						t.Errorf("%s run %s: born %s is in group %d; in the window of %d: %v", rule.Words(), run, born, got, lo, in)
					}
				}
				if g, ok := rule.On(run).Group(w); !ok || g != lo {
					t.Errorf("%s run %s: the whole of group %d is group %d, %v", rule.Words(), run, lo, g, ok)
				}
				if _, ok := rule.On(run).Group(Window{w.Lo, w.Hi + 1}); ok {
					t.Errorf("%s run %s: a window that reaches into the next group is certain", rule.Words(), run)
				}
				first = hi + 1
			}
		}
	}
	if _, ok := DefaultRule().On(day(t, "2026-01-01")).Group(Window{}); ok {
		t.Error("nothing known of a birth date, and a group")
	}
}

// By no rule is somebody an adult for certain whom the same class on the day leaves a child.
func TestNoRuleMakesAdults(t *testing.T) {
	january := french()
	january.Year, january.OnMonth, january.OnDay = SeasonBegins, 1, 1
	run := day(t, "2026-08-31") // twenty months after the day that ages are reckoned on
	for _, rule := range []Rule{byYear(), french(), january} {
		for lo := 8; lo < 18; lo++ {
			if youngest, _, _ := rule.Births(lo, 18, run).On(run); youngest >= 18 {
				t.Errorf("%s ages %d to 18: taken for %d or more", rule.Words(), lo, youngest)
			}
		}
	}
	if youngest, _, _ := byYear().Births(18, 19, day(t, "2026-03-01")).On(day(t, "2026-03-01")); youngest != 17 {
		t.Errorf("U20 by the year in March: %d or more, want 17", youngest)
	}
}

func TestRuleInWords(t *testing.T) {
	juniors := byYear()
	juniors.Reckoning = JuniorsByYear
	for _, c := range []struct {
		rule Rule
		want string
	}{
		{DefaultRule(), "Age groups go by the age on the day."},
		{byYear(), "Age groups go by the age reached on 31 December of the year."},
		{french(), "Age groups go by the age reached on 31 December of the year in which the season ends."},
		{juniors, "Age groups up to U20 go by the age reached on 31 December of the year; older ones go by the age on the day."},
	} {
		if got := c.rule.Words(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	begins := french()
	begins.Year = SeasonBegins
	if !strings.Contains(begins.Words(), "begins") {
		t.Error(begins.Words())
	}
}
