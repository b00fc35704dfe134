package record

import (
	"fmt"
	"strings"
	"testing"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// readByRule reads a column of groups, and perhaps of years of birth, in an archive whose
// groups go by a rule, for a run on a day.
func readByRule(t *testing.T, heading string, rule age.Rule, run unit.Day, groups, years []string) ([]Line, Readings) {
	t.Helper()
	c := NoColumns()
	c.Name, c.Time, c.Group = 0, 1, 2
	if years != nil {
		c.BirthYear = 3
	}
	rows := make([][]string, len(groups))
	for i, g := range groups {
		rows[i] = []string{fmt.Sprintf("Ada Brook%c", 'a'+i), fmt.Sprintf("24:%02d", i), g}
		if years != nil {
			rows[i] = append(rows[i], years[i])
		}
	}
	r := NewReader(c, []string{"Name", "Time", heading, "Year"}, Options{Rule: rule})
	for i, cells := range rows {
		r.Observe(i+2, cells, run, 5000)
	}
	said := r.Settle()
	lines := make([]Line, len(rows))
	for i, cells := range rows {
		r.Read(i+2, cells, run, 5000, &lines[i])
	}
	return lines, said
}

func ruleByYear() age.Rule {
	r := age.DefaultRule()
	r.Reckoning = age.ByYear
	return r
}

func born(l Line) string {
	if !l.Birth.Known() {
		return "-"
	}
	return l.Birth.Lo.String() + " " + l.Birth.Hi.String()
}

// A federation's class by the year is five years of birth, whole (the classes of the French,
// Italian, German and Nordic federations from memory); by the age on the day it is five years
// up to the day of the run. Groups that other words name go by the same rule.
func TestClassesByYear(t *testing.T) {
	run := unit.NewDay(2026, 3, 14)
	for _, c := range []struct {
		heading string
		cells   []string
		want    []string
	}{
		{"Catégorie", []string{"M0M", "M1F", "SEM", "ESF"}, []string{"1987 1991", "1982 1986", "1992 2003", "2004 2006"}},
		{"Cat.", []string{"SM35", "SF45", "PM", "SM"}, []string{"1987 1991", "1977 1981", "2004 2006", "1992 2003"}},
		{"AK", []string{"M35", "W40", "M30", "MHK", "WJ U18", "MJ U20"}, []string{"1987 1991", "1982 1986", "1992 1996", "1997 2006", "", "2007 2008"}}, // U18: however young
		{"Klass", []string{"H35", "D40", "H45", "D35"}, []string{"1987 1991", "1982 1986", "1977 1981", "1987 1991"}},
		{"Age group", []string{"35-39", "40-44", "45-49", "18-19"}, []string{"1987 1991", "1982 1986", "1977 1981", "2007 2008"}},
	} {
		lines, said := readByRule(t, c.heading, ruleByYear(), run, c.cells, nil)
		for i, l := range lines {
			if c.want[i] == "" {
				continue
			}
			from, to, _ := strings.Cut(c.want[i], " ")
			if want := from + "-01-01 " + to + "-12-31"; born(l) != want || l.Basis != age.AsSet {
				t.Errorf("%s %s: born %s (basis %d), want %s", c.heading, c.cells[i], born(l), l.Basis, want)
			}
		}
		if n := len(said.Columns); n == 0 || !strings.Contains(said.Columns[n-1].Why, "31 December of the year, as set") {
			t.Errorf("%s: %+v says nothing of the setting", c.heading, said.Columns)
		}
		lines, _ = readByRule(t, c.heading, age.DefaultRule(), run, c.cells[:1], nil)
		if l := lines[0]; l.Birth.Known() && (l.Birth.Hi.String()[4:] != "-03-14" || l.Basis != age.OnTheDay) {
			t.Errorf("%s %s on the day: born %s", c.heading, c.cells[0], born(l))
		}
	}
}

// The sheet's own basis goes before the setting: where its heading names the day, and where
// years of birth beside the groups show that they go by the age on the day.
func TestSheetsOwnBasisGoesFirst(t *testing.T) {
	run := unit.NewDay(2026, 3, 14)
	lines, _ := readByRule(t, "Age group on 31 August 2025", ruleByYear(), run, []string{"M40", "M45", "M35"}, nil)
	if born(lines[0]) != "1980-09-01 1985-08-31" {
		t.Errorf("the heading names the day: born %s", born(lines[0]))
	}
	// Nobody's birthday has come: 39 on the day and 40 in the year, with M35 beside it.
	groups, years := make([]string, 20), make([]string, 20)
	for i := range groups {
		groups[i], years[i] = "M35", "1986"
		if i%2 == 0 {
			groups[i], years[i] = "M40", "1981"
		}
	}
	lines, _ = readByRule(t, "Age group", ruleByYear(), run, groups, years)
	for i, want := range []string{"1981-03-15 1981-12-31", "1986-03-15 1986-12-31"} {
		if born(lines[i]) != want || len(lines[i].Problems) > 0 {
			t.Errorf("%s beside %s: born %s %v, want %s", groups[i], years[i], born(lines[i]), lines[i].Problems, want)
		}
	}
}

// French classes change with the season, in September since 2024 and in November before (from
// memory): in an archive that goes by the calendar year those of autumn may be the next
// year's, in one that goes by the season they are, but for two months of earlier years.
func TestFrenchClassesInAutumn(t *testing.T) {
	season := ruleByYear()
	season.Year, season.SeasonMonth, season.SeasonDay = age.SeasonEnds, 9, 1
	for _, c := range []struct {
		rule age.Rule
		run  unit.Day
		want string
	}{
		{ruleByYear(), unit.NewDay(2025, 8, 31), "1981-01-01 1985-12-31"},
		{ruleByYear(), unit.NewDay(2025, 9, 6), "1981-01-01 1986-12-31"},
		{season, unit.NewDay(2025, 8, 31), "1981-01-01 1985-12-31"},
		{season, unit.NewDay(2025, 9, 6), "1982-01-01 1986-12-31"},
		{season, unit.NewDay(2023, 10, 28), "1979-01-01 1984-12-31"},
		{season, unit.NewDay(2023, 11, 4), "1980-01-01 1984-12-31"},
	} {
		lines, _ := readByRule(t, "Catégorie", c.rule, c.run, []string{"M1M", "M0F", "SEM"}, nil)
		if born(lines[0]) != c.want {
			t.Errorf("%s M1 on %s: born %s, want %s", c.rule.Words(), c.run, born(lines[0]), c.want)
		}
	}
	// The classes of others change with the year.
	lines, _ := readByRule(t, "AK", ruleByYear(), unit.NewDay(2025, 9, 6), []string{"M40", "MHK", "M30"}, nil)
	if born(lines[0]) != "1981-01-01 1985-12-31" {
		t.Errorf("German M40 in September: born %s", born(lines[0]))
	}
}

// No setting makes an adult of whoever may be a child: U20 by the year may be 17 on the day.
// Seniors whose least age nothing shows are adults, as they are without the setting; where the
// column shows that they begin at 18 in the year they may be 17.
func TestNoSettingMakesAdults(t *testing.T) {
	run := unit.NewDay(2026, 3, 14)
	january := ruleByYear()
	january.Year, january.OnMonth, january.OnDay, january.SeasonMonth, january.SeasonDay = age.SeasonBegins, 1, 1, 9, 1
	for _, c := range []struct {
		rule     age.Rule
		cells    []string
		youngest int
	}{
		{ruleByYear(), []string{"U20"}, 17},
		{age.DefaultRule(), []string{"U20", "U18"}, 18},
		{ruleByYear(), []string{"Senior", "M40"}, 18},
		{age.DefaultRule(), []string{"Senior", "M40"}, 18},
		{ruleByYear(), []string{"Senior", "U18", "M40"}, 17},
		{january, []string{"17-18", "19-20"}, 17},
	} {
		lines, _ := readByRule(t, "Age group", c.rule, run, c.cells, nil)
		if lo, _, ok := lines[0].Birth.On(run); !ok || lo != c.youngest && !(c.cells[0] == "U20" && lo < c.youngest) {
			t.Errorf("%s %v: %s is %d or more, want %d", c.rule.Words(), c.cells, c.cells[0], lo, c.youngest)
		}
	}
}
