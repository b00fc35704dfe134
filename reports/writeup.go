package reports

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"text/template"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

//go:embed templates/weekly.md.tmpl
var weeklyTemplate string

// WeeklyTemplateName is the file in the archive folder that, where present,
// replaces the built-in text of the weekly write-up.
const WeeklyTemplateName = "templates/weekly.md.tmpl"

// form is how a write-up is written out.
type form uint8

const (
	markdown form = iota
	plainText
)

// loadWriteup reads the archive's template, or the built-in one.
func loadWriteup(archiveDir string) (string, error) {
	path := filepath.Join(archiveDir, WeeklyTemplateName)
	b, err := os.ReadFile(path)
	if archiveDir == "" || errors.Is(err, fs.ErrNotExist) {
		return weeklyTemplate, nil
	}
	if err != nil {
		return "", err
	}
	return string(b), nil
}

// Facts is what a weekly write-up may say: everything in it may be published,
// nothing rests on a doubtful identity, an unsure age or an unconfirmed
// record. Names are ready to print. Lists are empty where there is nothing to
// say.
type Facts struct {
	Course, Date, Session string
	Distance              string // "5 km", "" where not known
	Standing              string // "Issue 1, provisional: …"
	Finishers             int
	Unnamed               int
	Conditions            string // a sentence, "" where it can't be told
	Usual                 int    // median attendance of the runs of the year before, 0 where under 5
	Women, Men            []Fact // first three finishers, Number is the place; Text is "of those named" where somebody else may have been before the first
	Complete              bool   // history is complete: a PB is a PB
	Bests                 []Fact // largest margins first; Number is the margin in seconds
	BestCount             int
	CourseBests           int
	Newcomers             int    // -1 where nobody can tell
	Visitors              int    // -1 where nobody can tell
	Milestones            []Fact // Name holds all who reached it, Text is "50th"
	Streaks               []Fact // most weeks in a row first, those of one row together in Name; Text is since when, where weeks in between don't count
	Grades                []Fact // best age grades; Text is "72.35 %"
	Clubs                 int
	TopClub               string
	TopClubCount          int
	Volunteers            []string
	VolunteerMilestones   []Fact // Number is the days helped, Text is "50th"
}

// Fact is one person and what they did.
type Fact struct {
	Name, Group, Time string
	People            int // how many Name names, where it may name several
	Number            int
	Text              string
}

const manyNames = 5

func (d *weekly) facts(i issueOf, esc func(string) string) Facts {
	f := Facts{Course: esc(d.run.courseName), Date: longDay(d.on), Session: esc(text.Session(d.session)), Standing: d.standingOf(i),
		Finishers: int(d.run.finishers), Unnamed: int(d.run.unnamed), Conditions: esc(d.conditions()),
		Complete: d.hasHistory(), Newcomers: -1, Visitors: -1}
	if d.run.distanceM != nil {
		if f.Distance = unit.Distance(*d.run.distanceM); f.Distance == "1 mile" {
			f.Distance = "mile"
		}
	}
	f.Usual = d.usualAttendance()
	fact := func(r *resultRow, n int) Fact {
		x := Fact{Name: esc(r.publicName()), Number: n}
		// In prose only a masters group tells something that is not told anyway.
		if strings.HasPrefix(r.group, r.sex) {
			x.Group = r.shown
		}
		if r.timeS != nil {
			x.Time = unit.Clock(*r.timeS)
		}
		return x
	}
	take := func(rows []*resultRow, n int, num func(*resultRow) int) []Fact {
		var out []Fact
		for _, r := range rows[:min(n, len(rows))] {
			out = append(out, fact(r, num(r)))
		}
		return out
	}
	for _, s := range []struct {
		sex string
		to  *[]Fact
	}{{"W", &f.Women}, {"M", &f.Men}} {
		rows := d.pick(func(r *resultRow) bool {
			return r.eligible() && r.trusted() && r.sex == s.sex && r.place.N > 0 && r.timeS != nil
		})
		*s.to = take(rows, 3, func(r *resultRow) int { return int(r.place.N) })
		if len(rows) > 0 && d.mayBeBefore(rows[0], s.sex) {
			(*s.to)[0].Text = "of those named"
		}
	}
	f.BestCount = d.bests()
	adults := d.pick(func(r *resultRow) bool { return r.trusted() && r.isPB && !r.protected && r.pbMargin != nil })
	byMargin(adults, func(r *resultRow) *int32 { return r.pbMargin })
	f.Bests = take(adults, 3, func(r *resultRow) int { return int(*r.pbMargin) })
	for k := range f.Bests {
		f.Bests[k].Text = span(int32(f.Bests[k].Number))
	}
	f.CourseBests = len(d.pick(func(r *resultRow) bool { return r.trusted() && r.isCourseBest && !r.isPB }))
	if n, known := d.newcomers(); known {
		f.Newcomers = n
		f.Visitors = len(d.pick(func(r *resultRow) bool {
			return r.trusted() && r.visitor != nil && *r.visitor && (r.newcomer == nil || !*r.newcomer)
		}))
	}
	names := func(rows []*resultRow) string {
		var all []string
		for _, r := range rows {
			all = append(all, esc(r.publicName()))
		}
		if len(all) > manyNames {
			return fmt.Sprintf("%s and %d others", strings.Join(all[:manyNames-1], ", "), len(all)-manyNames+1)
		}
		return list(all)
	}
	for rows := range alike(d.milestones(), func(a, b *resultRow) bool { return *a.milestone == *b.milestone }) {
		m := *rows[0].milestone
		f.Milestones = append(f.Milestones, Fact{Name: names(rows), People: len(rows), Number: int(m), Text: ordinal(m)})
	}
	for rows := range alike(d.streaks(), func(a, b *resultRow) bool { return a.streak == b.streak && a.since == b.since }) {
		r := rows[0]
		x := Fact{Name: names(rows), People: len(rows), Number: int(r.streak)}
		if weeksPassedOver(r.streak, r.since.Day, d.on) > 0 {
			x.Text = "since " + r.since.Day.Long() + ", no week missed that we know of"
		}
		if f.Streaks = append(f.Streaks, x); len(f.Streaks) == 2 || len(rows) > 1 {
			break
		}
	}
	f.Grades = take(d.graded(), 2, func(r *resultRow) int { return 0 })
	for k, r := range d.graded()[:len(f.Grades)] {
		f.Grades[k].Text = fmt.Sprintf("%.2f %%", *r.grade)
	}
	if c := d.clubs(); len(c) > 0 {
		f.Clubs = len(c)
		if c[0].n > 1 && (len(c) == 1 || c[0].n > c[1].n) {
			f.TopClub, f.TopClubCount = esc(c[0].club), c[0].n
		}
	}
	for _, n := range d.helperNames() {
		f.Volunteers = append(f.Volunteers, esc(n))
	}
	for _, h := range d.helperMilestones() {
		f.VolunteerMilestones = append(f.VolunteerMilestones, Fact{Name: esc(h.name), Number: int(h.milestone), Text: ordinal(h.milestone)})
	}
	return f
}

// mayBeBefore says whether somebody of a sex may have finished before the first of it who is
// named: who is not shown, in doubt or without a name.
func (d *weekly) mayBeBefore(first *resultRow, sex string) bool {
	for i := range d.results {
		r := &d.results[i]
		if r.finished() && !r.trusted() && r.place.N > 0 && r.place.N < first.place.N && (r.sex == sex || r.sex == "") {
			return true
		}
	}
	return false
}

// alike cuts rows into runs of neighbours that are alike.
func alike(rows []*resultRow, are func(a, b *resultRow) bool) iter.Seq[[]*resultRow] {
	return func(yield func([]*resultRow) bool) {
		for from := 0; from < len(rows); {
			to := from + 1
			for to < len(rows) && are(rows[from], rows[to]) {
				to++
			}
			if !yield(rows[from:to]) {
				return
			}
			from = to
		}
	}
}

// usualAttendance is the median number of finishers of the held runs of the
// year before, 0 where there are under five.
func (d *weekly) usualAttendance() int {
	var n []int32
	for _, r := range d.runs[:len(d.runs)-1] {
		if r.state == "held" && r.day > d.on-365 {
			n = append(n, r.finishers)
		}
	}
	if len(n) < 5 {
		return 0
	}
	slices.Sort(n)
	return int(n[len(n)/2])
}

// writeup fills the template.
func (d *weekly) writeup(source string, i issueOf, as form) (string, error) {
	esc := func(s string) string { return s }
	if as == markdown {
		esc = table.EscapeMarkdown
	}
	t, err := template.New(WeeklyTemplateName).Funcs(template.FuncMap{
		"count":   text.CountOf,
		"spelt":   spelt,
		"upper":   upperFirst,
		"list":    list,
		"dot":     dot,
		"last":    func(f []Fact) Fact { return f[len(f)-1] },
		"ordinal": func(n int) string { return ordinal(int32(n)) },
		"sub":     func(a, b int) int { return a - b },
		"more":    func(a, b int) bool { return float64(a) > 1.15*float64(b) },
		"fewer":   func(a, b int) bool { return float64(a) < 0.85*float64(b) },
	}).Option("missingkey=error").Parse(source)
	if err != nil {
		return "", fmt.Errorf("the template of the write-up can't be read: %w", err)
	}
	var b strings.Builder
	if err := t.Execute(&b, d.facts(i, esc)); err != nil {
		return "", fmt.Errorf("the template of the write-up fails: %w", err)
	}
	return tidy(b.String(), as), nil
}

// tidy joins the lines of each paragraph, drops empty ones, and for plain text
// underlines the headings and wraps at 76 characters.
func tidy(s string, as form) string {
	var out []string
	for _, para := range strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n\n") {
		p := strings.Join(strings.Fields(para), " ")
		if p == "" {
			continue
		}
		if as == plainText {
			if h := strings.TrimLeft(p, "#"); h != p {
				h = strings.TrimSpace(h)
				rule := "-"
				if strings.HasPrefix(p, "# ") {
					rule = "="
				}
				p = h + "\n" + strings.Repeat(rule, min(76, len([]rune(h))))
			} else {
				p = table.Wrap(p, 76)
			}
		}
		out = append(out, p)
	}
	return strings.Join(out, "\n\n") + "\n"
}

// dot is the full stop after s, "" where s ends in one: "Mia B."
func dot(s string) string {
	if strings.HasSuffix(s, ".") {
		return ""
	}
	return "."
}

func upperFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
