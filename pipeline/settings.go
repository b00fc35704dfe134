package pipeline

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/insight/agegrade"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/unit"
)

// Settings are what a user can set: flags over LAPWING_* over lapwing.toml
// over the defaults.
type Settings struct {
	Archive             string            // folder that everything is derived from
	Inbox               string            // folder where new sheets are put
	Reports             string            // folder the reports go to
	AgeStandard         int               // edition of the age-grading tables
	AgeNotKnown         string            // whether somebody whose age is not known is treated as a child: by sheet, adult or child
	AgeGroups           string            // who is in which age group: day, year or juniors by year
	AgeGroupsOn         string            // MM-DD, the day of the year on which ages are reckoned for groups
	AgeGroupsYear       string            // of which year: run, season start or season end
	AgeGroupsUnder      []int             // junior groups: 18 is U18, from the one before
	AgeGroupsMasters    int               // first age of the masters groups
	AgeGroupsWidth      int               // years in a masters group
	SeasonStart         string            // MM-DD
	Milestones          []int             // round numbers of runs
	VolunteerMilestones []int             // round numbers of days of helping
	DateOrder           string            // dmy or mdy: where a sheet leaves it open; "" to look at other sheets, and else ask
	MemoryLimit         string            // of the database
	Threads             int               // 0: one a core
	Headings            map[string]string // extra heading spelling → meaning
	Courses             map[string]string // other name of a course → its short name
	Words               map[string]string // wording in notes or status cells → walker, pacer, dnf, …
	Clubs               map[string]string // other name of a club → its name
}

// DefaultSettings are the settings of a folder without a lapwing.toml.
func DefaultSettings() Settings {
	return Settings{
		Archive: "archive", Inbox: "sheets", Reports: "reports",
		AgeStandard: agegrade.Default, AgeNotKnown: ageNotKnownBySheet, SeasonStart: "01-01",
		AgeGroups: ageGroupsByDay, AgeGroupsOn: "12-31", AgeGroupsYear: ageGroupsOfRun,
		AgeGroupsUnder: age.DefaultScheme().Junior, AgeGroupsMasters: age.DefaultScheme().Masters, AgeGroupsWidth: age.DefaultScheme().Step,
		Milestones:          []int{10, 20, 50, 100, 200, 500, 1000},
		VolunteerMilestones: []int{10, 20, 50, 100, 200, 500, 1000},
	}
}

// Check says what is wrong with a setting and what may stand there.
func (s Settings) Check() error {
	switch s.AgeStandard {
	case 2010, 2015, 2020, 2025:
	default:
		return fmt.Errorf("age_standard = %d: this version has the editions 2010, 2015, 2020 and 2025", s.AgeStandard)
	}
	switch s.AgeNotKnown {
	case ageNotKnownBySheet, ageNotKnownAdult, ageNotKnownChild:
	default:
		return fmt.Errorf("age_not_known = %q: write \"by sheet\", \"adult\" or \"child\"", s.AgeNotKnown)
	}
	if s.DateOrder != "" && s.DateOrder != "dmy" && s.DateOrder != "mdy" {
		return fmt.Errorf("date_order = %q: write \"dmy\" (day first), \"mdy\" (month first), or leave it out to be asked", s.DateOrder)
	}
	if _, _, err := s.seasonStart(); err != nil {
		return err
	}
	if _, err := s.ageRule(); err != nil {
		return err
	}
	if s.MemoryLimit != "" && !memorySize.MatchString(s.MemoryLimit) {
		return fmt.Errorf("memory_limit = %q: write a number and its unit, as in \"4GB\"", s.MemoryLimit)
	}
	if err := s.checkWords(); err != nil {
		return err
	}
	if s.Threads < 0 {
		return fmt.Errorf("threads = %d: write 0 (one a core) or more", s.Threads)
	}
	for _, list := range []struct {
		name    string
		numbers []int
	}{{"milestones", s.Milestones}, {"volunteer_milestones", s.VolunteerMilestones}} {
		last := 0
		for _, m := range list.numbers {
			if m <= last {
				return fmt.Errorf("%s: %d: write rising numbers above 0, as in [10, 20, 50]", list.name, m)
			}
			last = m
		}
	}
	return nil
}

var memorySize = regexp.MustCompile(`(?i)^\s*\d+(?:\.\d+)?\s*(?:[kmgt]i?b|bytes?)\s*$`)

// checkWords says what is wrong with the spellings that a user adds: what a slip stands
// for would be passed over in silence.
func (s Settings) checkWords() error {
	for _, list := range []struct {
		name  string
		words map[string]string
		known []string // what may stand behind the sign; nil for any name
	}{{"headings", s.Headings, sheet.MeaningWords()}, {"courses", s.Courses, nil}, {"words", s.Words, record.WordMeanings()}, {"clubs", s.Clubs, nil}} {
		for _, word := range slices.Sorted(maps.Keys(list.words)) {
			means := list.words[word]
			switch {
			case strings.TrimSpace(means) == "":
				return fmt.Errorf("[%s]: %q = \"\": write what it stands for", list.name, word)
			case list.known != nil && !slices.Contains(list.known, means):
				return fmt.Errorf("[%s]: %q = %q: write one of %s", list.name, word, means, strings.Join(list.known, ", "))
			case list.name == "courses" && sheet.Slug(means) == "":
				return fmt.Errorf("[courses]: %q = %q: write the course's name", word, means)
			}
		}
	}
	return nil
}

// daysIn are the days of the months that every year has.
var daysIn = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func (s Settings) seasonStart() (month, day int, err error) {
	return monthAndDay("season_start", s.SeasonStart, "01-01")
}

// monthAndDay reads a day that every year has.
func monthAndDay(setting, value, example string) (month, day int, err error) {
	m, d, _ := strings.Cut(value, "-")
	month, err1 := strconv.Atoi(m)
	day, err2 := strconv.Atoi(d)
	if err1 != nil || err2 != nil || month < 1 || month > 12 || day < 1 || day > daysIn[month-1] {
		return 0, 0, fmt.Errorf("%s = %q: write month and day, as in %q", setting, value, example)
	}
	return month, day, nil
}

// ModelVersion changes whenever figures of an unchanged archive would change;
// an archive made by another version is computed again.
const ModelVersion = "7"

// figuresKey sums up every setting that figures depend on.
func (s Settings) figuresKey() string {
	var extra []string
	for k, v := range s.Headings {
		extra = append(extra, "heading "+k+"="+v)
	}
	for k, v := range s.Courses {
		extra = append(extra, "course "+k+"="+v)
	}
	for k, v := range s.Words {
		extra = append(extra, "word "+k+"="+v)
	}
	for k, v := range s.Clubs {
		extra = append(extra, "club "+k+"="+v)
	}
	sort.Strings(extra)
	extra = append(extra, s.ageRuleKey())
	h := sha256.Sum256([]byte(fmt.Sprint(ModelVersion, s.AgeStandard, s.AgeNotKnown, s.SeasonStart, s.Milestones, s.VolunteerMilestones, s.DateOrder, strings.Join(extra, "\n"))))
	return hex.EncodeToString(h[:8])
}

// SeasonOf is the first day of the season that holds a day.
func (s Settings) SeasonOf(day unit.Day) unit.Day {
	month, dom, err := s.seasonStart()
	if err != nil {
		month, dom = 1, 1
	}
	return day.LastOn(month, dom)
}

// SeasonStart is the first day of the season that the newest run is in, 0
// where there is none.
func (pl *Pipeline) SeasonStart() unit.Day {
	newest := unit.Day(0)
	for k := range pl.courses.runs {
		newest = max(newest, k.day)
	}
	if newest == 0 {
		return 0
	}
	return pl.Settings.SeasonOf(newest)
}
