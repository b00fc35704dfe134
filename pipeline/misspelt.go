package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// A title that is a slip away from a known course is read as that course where
// the people say so: at least leastKnown of them, and half of all who are named
// in full, are on other sheets of it; and of those who are known at only one of
// it and any third course, there are at least leastKnown and foldKnown times as
// many known at it. Where the course has no run on both sides of the day, it
// takes three quarters, and a letter that makes no other word: a new course may
// lie beside an old one and share its regulars, and the old one's sheet of the
// day may be still to come. (Those known at both, or at neither, tell nothing, as
// with McNemar 1947, Psychometrika 12:153-157.) The numbers were chosen on made-up
// districts (TestMisspeltAmongSiblings).
const (
	leastKnown = 5
	foldKnown  = 3
	// A course that had no run for so many days before and after is not known to
	// have been held then.
	asleep = 35
)

// courseAnswer before a misread name makes the key of an answer that says which
// course is meant: "course alder-bnak=alder-bank". Where the people on the sheet
// said so, how many follows: "course alder-bnak=alder-bank 41/52"; and " others"
// where they stand on other sheets of that name, as this one names too few in full.
const courseAnswer = "course "

// courseMeant is what such an answer says.
type courseMeant struct {
	read, course string
	known, named int  // people known there, of those named; 0 where a person answered
	others       bool // these are the people of other sheets of the name
}

// silent says that too few are named in full on a sheet to say anything.
func (m courseMeant) silent() bool { return m.named < leastKnown }

func (m courseMeant) String() string {
	if m.named == 0 {
		return courseAnswer + m.read + "=" + m.course
	}
	who := ""
	if m.others {
		who = " others"
	}
	return fmt.Sprintf("%s%s=%s %d/%d%s", courseAnswer, m.read, m.course, m.known, m.named, who)
}

// coursesMeant picks the answers about courses, in order of what was read.
func coursesMeant(answers map[string]string) (out []courseMeant) {
	for k, v := range answers {
		read, ok := strings.CutPrefix(k, courseAnswer)
		if !ok {
			continue
		}
		course, people, _ := strings.Cut(v, " ")
		m := courseMeant{read: sheet.Slug(read), course: sheet.Slug(course)}
		people, who, _ := strings.Cut(people, " ")
		m.others = who == "others"
		known, named, _ := strings.Cut(people, "/")
		m.known, _ = strconv.Atoi(known)
		m.named, _ = strconv.Atoi(named)
		out = append(out, m)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].read < out[j].read })
	return out
}

// withoutCourses leaves out answers about courses and weekdays, which are of one sheet
// only.
func withoutCourses(answers string) string {
	var out []string
	for _, a := range strings.Split(answers, ";") {
		if a = strings.TrimSpace(a); a != "" && !strings.HasPrefix(a, courseAnswer) && !strings.HasPrefix(a, raceAnswer+"=") && !strings.HasPrefix(a, weekdayAnswer+"=") {
			out = append(out, a)
		}
	}
	return strings.Join(out, "; ")
}

// onlyCourses is the rest.
func onlyCourses(answers string) string {
	parsed, err := ParseAnswers(answers)
	if err != nil {
		return ""
	}
	var out []string
	for _, m := range coursesMeant(parsed) {
		out = append(out, m.String())
	}
	return strings.Join(out, "; ")
}

func joinAnswers(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// withMeant adds the misread names to those of the courses that are meant.
func withMeant(courses []sheet.CourseName, meant []courseMeant) []sheet.CourseName {
	for _, m := range meant {
		i := slices.IndexFunc(courses, func(c sheet.CourseName) bool { return c.Course == m.course })
		if i < 0 {
			i = len(courses)
			courses = append(courses, sheet.CourseName{Course: m.course, Weekday: -1})
		}
		courses[i].Names = append(slices.Clip(courses[i].Names), m.read)
	}
	return courses
}

// noteMeant says on a sheet which course a misspelt title was read as.
func noteMeant(s *sheet.Sheet, meant []courseMeant) {
	for _, m := range meant {
		for _, p := range s.Parts {
			if p.Course.Value != m.course || strings.HasPrefix(p.Course.From, "column") {
				continue
			}
			why := fmt.Sprintf("It was read as %s, as a person answered.", m.course)
			if m.named > 0 {
				where := "on this sheet"
				if m.others {
					where = "on other sheets with this title"
				}
				why = fmt.Sprintf("It was read as %s: %d of the %d people named in full %s are on sheets of that course too.", m.course, m.known, m.named, where)
			}
			switch {
			case sameLetters(m.course, m.read):
				why = fmt.Sprintf("It was read as %s, the same name but for its spaces or how its vowels are written.", m.course)
			case standsIn(m.course, m.read):
				why = fmt.Sprintf("It was read as %s, a known course whose name stands in it.", m.course)
			}
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: courseMisspelt,
				Read: p.Course.Text, Expected: m.course,
				Do: why + fmt.Sprintf(" If that is wrong: lapwing sheets withdraw %q, then load it with --course.", s.Name)})
			break
		}
	}
}

const courseMisspelt = "course-misspelt"

// settledByOthers says in words that the course of a sheet was settled by its people,
// or how its date is read by other sheets; "" where neither was needed.
func settledByOthers(problems []place.Problem) string {
	var said []string
	for _, q := range problems {
		switch q.Kind {
		case courseMisspelt:
			said = append(said, fmt.Sprintf("the title says %q. %s", q.Read, q.Do))
		case raceRemembered:
			said = append(said, fmt.Sprintf("it was taken for another race of the day, %s. %s", q.Read, q.Do))
		case dateOrderSettled:
			said = append(said, fmt.Sprintf("the date was read %s. %s", q.Read, q.Do))
		}
	}
	return strings.Join(said, " ")
}

// unsureSheet is a sheet that waits for the name of its course, or for how its date
// is to be read.
type unsureSheet struct {
	name    string
	read    readResult
	report  int   // index in the load's report
	again   []int // the same for copies of the sheet in one load
	meant   []courseMeant
	answers string // how its date is to be read, where others say it
}

// unsureSheets are those of a load.
type unsureSheets []*unsureSheet

// add keeps a sheet of a load that waits for what others may say: unsure makes it
// one, or is nil where it does not.
func (l *unsureSheets) add(unsure func(name string, r readResult) *unsureSheet, name string, r readResult, report int) {
	for _, u := range *l {
		if r.hash == u.read.hash {
			u.again = append(u.again, report)
			return
		}
	}
	if u := unsure(name, r); u != nil {
		u.report = report
		*l = append(*l, u)
	}
}

// unsureOf is a sheet of which the course alone may be misspelt, nil where it
// does not wait for that.
func unsureOf(name string, r readResult) *unsureSheet {
	if r.err != nil || r.parsed == nil || len(r.parsed.misspelt) == 0 || r.parsed.unread() {
		return nil // a large sheet has no lines yet
	}
	u := &unsureSheet{name: name, read: r}
	for c, q := range r.parsed.misspelt {
		u.meant = append(u.meant, courseMeant{read: c, course: q})
	}
	sort.Slice(u.meant, func(i, j int) bool { return u.meant[i].read < u.meant[j].read })
	return u
}

// unread says whether lines are still to be read.
func (p *parsedSheet) unread() bool {
	return slices.ContainsFunc(p.parts, func(q *parsedPart) bool { return q.unread != nil })
}

// settleMisspelt looks which of the sheets that wait for the name of their
// course are settled by their people, and returns these. All other sheets of
// the load are in the database by now, so the order of the files makes no
// difference.
func (pl *Pipeline) settleMisspelt(ctx context.Context, sheets []*unsureSheet) ([]*unsureSheet, error) {
	if pl.DB == nil {
		return nil, nil
	}
	known := pl.knownCourses()
	times := map[string]int{} // sheets on which a misspelt name is
	for _, s := range sheets {
		for _, m := range s.meant {
			times[m.read]++
		}
	}
	refused := map[string]bool{} // misread names
	wanted := map[string]int32{} // people by key
	var asked []*unsureSheet
	for _, s := range sheets {
		ok := true
		for _, m := range s.meant {
			if standsIn(m.course, m.read) {
				ok = ok && len(known.days[m.read]) == 0
			} else {
				ok = ok && known.mayMean(m.read, m.course, times[m.read])
			}
		}
		if !ok {
			for _, m := range s.meant {
				refused[m.read] = true
			}
			continue
		}
		asked = append(asked, s)
		for key := range s.read.parsed.people("") {
			if _, have := wanted[key]; !have {
				wanted[key] = int32(len(wanted))
			}
		}
	}
	if len(asked) == 0 {
		return nil, nil
	}
	at := map[string]map[int32]bool{}
	if len(wanted) > 0 {
		var err error
		if at, err = pl.whereKnown(ctx, wanted); err != nil {
			return nil, err
		}
	}
	type courseDay struct {
		course string
		day    unit.Day
	}
	claimed := map[courseDay]int{}
	vouched := map[string]courseMeant{} // by misread name: those who say so, of all sheets
	var silent []*courseMeant
	for _, s := range asked {
		for i := range s.meant {
			m := &s.meant[i]
			fits, between := known.fits(s.read.parsed, *m)
			if sameLetters(m.course, m.read) {
				m.ask(s.read.parsed, wanted, at, between) // for the numbers
				continue
			}
			if standsIn(m.course, m.read) {
				m.ask(s.read.parsed, wanted, at, between) // for the numbers
				few := times[m.read] <= newRuns && len(s.read.parsed.days(m.read)) <= newRuns
				if !known.open(s.read.parsed, *m) || m.elsewhere(s.read.parsed, wanted, at) || !few && (m.known < leastKnown || 4*m.known < m.named) {
					refused[m.read] = true
				}
			} else if short := shortened(m.read, m.course); !fits || !between && (short || mayBeWord(m.course, m.read)) {
				refused[m.read] = true
			} else if m.ask(s.read.parsed, wanted, at, between && !short) {
				all := vouched[m.read]
				vouched[m.read] = courseMeant{known: all.known + m.known, named: all.named + m.named}
			} else if m.silent() && !m.elsewhere(s.read.parsed, wanted, at) {
				silent = append(silent, m)
			} else {
				refused[m.read] = true
			}
			for day := range s.read.parsed.days(m.read) {
				claimed[courseDay{m.course, day}]++
			}
		}
	}
	for _, m := range silent {
		all, ok := vouched[m.read]
		if !ok {
			refused[m.read] = true
		}
		m.known, m.named, m.others = all.known, all.named, true
	}
	for _, s := range asked { // two sheets of one run
		for _, m := range s.meant {
			if sameLetters(m.course, m.read) {
				continue
			}
			for day := range s.read.parsed.days(m.read) {
				if claimed[courseDay{m.course, day}] > 1 {
					refused[m.read] = true
				}
			}
		}
	}
	// one name is one course: all sheets of it or none
	return slices.DeleteFunc(asked, func(s *unsureSheet) bool {
		return slices.ContainsFunc(s.meant, func(m courseMeant) bool { return refused[m.read] })
	}), nil
}

// people are the keys of those who are named in full on the lines of a course,
// "" for all courses.
func (p *parsedSheet) people(course string) map[string]bool {
	out := map[string]bool{}
	for _, q := range p.parts {
		for _, b := range q.lines.batches {
			for i := range b.lines {
				if course == "" || q.runs[b.run[i]].course.course == course {
					if key := personKey(b.lines[i].Name); key != "" {
						out[key] = true
					}
				}
			}
		}
	}
	return out
}

// days are those of a course's runs.
func (p *parsedSheet) days(course string) map[unit.Day]bool {
	out := map[unit.Day]bool{}
	for _, q := range p.parts {
		for _, k := range q.runs {
			if k.course.course == course {
				out[k.day] = true
			}
		}
	}
	return out
}

// personKey is a full name's folded words in order of the alphabet, so that it
// does not matter which name comes first; "" for nobody, several people, and
// names with an initial alone.
func personKey(s string) string {
	if len(s) < 4 {
		return ""
	}
	n := name.Parse(s)
	if n.Unnamed || n.Several || utf8.RuneCountInString(n.Given) < 2 || utf8.RuneCountInString(n.Family) < 2 || strings.Contains(n.Full, "?") {
		return ""
	}
	words := strings.Fields(n.Given + " " + n.Family)
	sort.Strings(words)
	return strings.Join(words, " ")
}

// whereKnown finds the courses on whose sheets people stand in the archive, in
// two queries for all. It needs no right to write.
func (pl *Pipeline) whereKnown(ctx context.Context, wanted map[string]int32) (map[string]map[int32]bool, error) {
	var persons, names []string // numbers, as they stand in a query
	if err := pl.DB.Scan(ctx, "select text_no, text from record.text", func(r arrow.Record) error {
		no, texts := r.Column(0).(*array.Int32), r.Column(1).(*array.String)
		n := int(r.NumRows())
		person := make([]int32, n)
		parallel.Pieces(n, pl.workers(), func(from, to int) {
			for i := from; i < to; i++ {
				person[i] = -1
				if key := personKey(texts.Value(i)); key != "" {
					if k, ok := wanted[key]; ok {
						person[i] = k
					}
				}
			}
		})
		for i, k := range person {
			if k >= 0 {
				persons = append(persons, strconv.Itoa(int(k)))
				names = append(names, strconv.Itoa(int(no.Value(i))))
			}
		}
		return nil
	}); err != nil {
		return nil, err
	}
	out := map[string]map[int32]bool{}
	return out, pl.each(ctx, fmt.Sprintf(`
		with w as (select unnest([%s]::integer[]) as person, unnest([%s]::integer[]) as name_no)
		select distinct w.person, c.course
		from record.line l
		join w on w.name_no = l.name_no
		join record.run run on run.run_no = l.run_no
		join record.course c on c.course_no = run.course_no`, strings.Join(persons, ", "), strings.Join(names, ", ")), func(rows *sql.Rows) error {
		var person int32
		var course string
		err := rows.Scan(&person, &course)
		if out[course] == nil {
			out[course] = map[int32]bool{}
		}
		out[course][person] = true
		return err
	})
}

// ask asks the people of a sheet whether the course is meant. between says that
// the course had runs both before and after; else more of them must be known.
func (m *courseMeant) ask(p *parsedSheet, wanted map[string]int32, at map[string]map[int32]bool, between bool) bool {
	there := at[m.course]
	people := p.people(m.read)
	only := map[string][2]int{} // known at the course and not at the other, and the other way round
	m.named, m.known = len(people), 0
	for key := range people {
		k := wanted[key]
		if there[k] {
			m.known++
		}
		for other, list := range at {
			if n := only[other]; list[k] != there[k] {
				if there[k] {
					n[0]++
				} else {
					n[1]++
				}
				only[other] = n
			}
		}
	}
	if m.known < leastKnown || 2*m.known < m.named || !between && 4*m.known < 3*m.named {
		return false
	}
	for other := range at {
		if n := only[other]; other != m.course && (n[0] < leastKnown || n[0] < foldKnown*n[1]) {
			return false
		}
	}
	return true
}

// elsewhere says whether the people of a sheet are another course's: at least
// leastKnown of them, and foldKnown times as many as are known at the course.
func (m *courseMeant) elsewhere(p *parsedSheet, wanted map[string]int32, at map[string]map[int32]bool) bool {
	people := p.people(m.read)
	for other, list := range at {
		if other == m.course {
			continue
		}
		there, here := 0, 0
		for key := range people {
			switch k := wanted[key]; {
			case list[k] && !at[m.course][k]:
				there++
			case at[m.course][k] && !list[k]:
				here++
			}
		}
		if there >= leastKnown && there > foldKnown*here {
			return true
		}
	}
	return false
}

// knownDays is what the archive knows of the days and distances of courses.
type knownDays struct {
	days      map[string]map[unit.Day]bool
	distances map[courseKey]bool
	listed    map[string]int // weekday by courses.csv, -1 not given
}

func (pl *Pipeline) knownCourses() *knownDays {
	out := &knownDays{map[string]map[unit.Day]bool{}, map[courseKey]bool{}, map[string]int{}}
	for k := range pl.courses.runs {
		c := k.course.course
		if out.days[c] == nil {
			out.days[c] = map[unit.Day]bool{}
		}
		out.days[c][k.day] = true
		out.distances[k.course] = true
	}
	for _, c := range pl.courses.known {
		out.listed[c.course] = c.weekday
	}
	return out
}

// mayMean says whether a name, on a number of sheets, may be a slip of the pen
// for a course: the one course that is near, and not by a letter that makes
// another word of it.
func (d *knownDays) mayMean(read, course string, sheets int) bool {
	if len(d.days[read]) > 0 || sheets > 1 && rarer*sheets > len(d.days[course]) {
		return false
	}
	was, now, sameWords := changedWord(course, read)
	if sameWords && utf8.RuneCountInString(was) == utf8.RuneCountInString(now) && firstLetterReplaced(was, now) {
		return false // Hill Lane, Mill Lane
	}
	others := make([]string, 0, len(d.days)+len(d.listed))
	for c := range d.days {
		others = append(others, c)
	}
	for c := range d.listed {
		if len(d.days[c]) == 0 {
			others = append(others, c)
		}
	}
	for _, c := range others {
		if c == course || c == read {
			continue
		}
		if text.Within(read, c, 2) {
			return false
		}
		if sameWords && slices.Contains(strings.Split(c, "-"), now) {
			return false // Garrow Wood, Garrow Woods: both are words of names here
		}
	}
	return true
}

// changedWord finds the one word in which two names of as many words differ.
func changedWord(a, b string) (x, y string, ok bool) {
	as, bs := strings.Split(a, "-"), strings.Split(b, "-")
	if len(as) != len(bs) {
		return "", "", false
	}
	for i := range as {
		if as[i] != bs[i] {
			return as[i], bs[i], true
		}
	}
	return "", "", false
}

// firstLetterReplaced tells Hill and Mill from Hill and Ihll.
func firstLetterReplaced(a, b string) bool {
	x, n := utf8.DecodeRuneInString(a)
	y, k := utf8.DecodeRuneInString(b)
	return x != y && a[n:] == b[k:]
}

// mayBeWord says whether the letter may well make another word, as it does
// where it is replaced or ends a word: Bank and Bark, Wood and Woods.
func mayBeWord(a, b string) bool {
	x, y, ok := changedWord(a, b)
	return ok && (len(x) == len(y) && len(x)-matching(x, y) == 1 || strings.HasPrefix(x, y) || strings.HasPrefix(y, x))
}

// matching counts the bytes that two words of one length share in place.
func matching(x, y string) (n int) {
	for i := range len(x) {
		if x[i] == y[i] {
			n++
		}
	}
	return n
}

// weekdays counts the runs of a course by weekday.
func (d *knownDays) weekdays(course string) (n [7]int) {
	for day := range d.days[course] {
		n[day.Weekday()]++
	}
	return n
}

// usualWeekday is the weekday of a course, by courses.csv or of four runs in
// five; -1 where it has none.
func (d *knownDays) usualWeekday(course string) int {
	if usual, listed := d.listed[course]; listed && usual >= 0 {
		return usual
	}
	for w, n := range d.weekdays(course) {
		if n > 0 && 5*n >= 4*len(d.days[course]) {
			return w
		}
	}
	return -1
}

// fits says whether nothing else contradicts that a sheet is of a course: a run
// of it on the day, another weekday, or that it was not held at the time.
// between says that the course had runs shortly before and shortly after.
func (d *knownDays) fits(p *parsedSheet, m courseMeant) (fits, between bool) {
	usual := d.usualWeekday(m.course)
	between = true
	for day := range p.days(m.read) {
		if d.days[m.course][day] || usual >= 0 && day.Weekday() != time.Weekday(usual) {
			return false, false
		}
		before, after := false, false
		for i := unit.Day(1); i <= asleep; i++ {
			before = before || d.days[m.course][day-i]
			after = after || d.days[m.course][day+i]
		}
		if !before && !after {
			return false, false
		}
		between = between && before && after
	}
	return true, between
}

// open says whether a course has no run on the days of a sheet, and these fall
// on its weekday where it has one.
func (d *knownDays) open(p *parsedSheet, m courseMeant) bool {
	usual := d.usualWeekday(m.course)
	for day := range p.days(m.read) {
		if d.days[m.course][day] || usual >= 0 && int(day.Weekday()) != usual {
			return false
		}
	}
	return true
}

// loadSettled loads sheets whose course was settled, and puts what became of
// them in their places of the report.
func (l *loading) loadSettled(ctx context.Context, sheets []*unsureSheet, answers *remembered) error {
	pl := l.pl
	known := pl.knownCourses()
	var take []*unsureSheet
	var results []readResult
	for _, s := range sheets {
		if l.known[s.read.hash].State != store.Waiting {
			continue // another sheet took its place
		}
		p, given, err := pl.readMeant(s, l.hand)
		if err != nil || !p.allKnown(known, s.meant) {
			continue
		}
		take = append(take, s)
		results = append(results, readResult{data: s.read.data, hash: s.read.hash, left: s.read.left, parsed: p, course: given})
	}
	_, err := l.loadAgain(ctx, take, results, answers)
	return err
}

// loadAgain loads sheets that were read again, puts what became of them in their
// places of the report, and returns what was read.
func (l *loading) loadAgain(ctx context.Context, take []*unsureSheet, results []readResult, answers *remembered) ([]readResult, error) {
	if len(take) == 0 {
		return nil, nil
	}
	names := make([]string, len(take))
	for i, s := range take {
		names[i] = s.name
	}
	tmp := &LoadReport{}
	b := &loading{pl: l.pl, names: names, results: results, hand: l.hand, known: l.known, next: l.next, now: l.now, rep: tmp}
	if err := b.readAsBefore(ctx, answers); err != nil {
		return results, err
	}
	parsed, err := b.keep()
	if err != nil {
		return results, err
	}
	for i, s := range take {
		l.rep.Sheets[s.report] = tmp.Sheets[i]
		for _, k := range s.again {
			again := SheetReport{Path: l.rep.Sheets[k].Path, State: "already loaded", Rows: tmp.Sheets[i].Rows}
			if again.Path != s.name {
				again.Why = "the same sheet was loaded as " + s.name
			}
			if tmp.Sheets[i].State == "loaded" {
				l.rep.Sheets[k] = again
				l.rep.Known++
				l.rep.Waiting--
			}
		}
	}
	l.rep.Waiting += tmp.Waiting - len(take)
	l.rep.Loaded += tmp.Loaded
	l.rep.Rows += tmp.Rows
	return b.results, l.pl.writeSheets(ctx, parsed)
}

// allKnown says whether the sheet, read anew, has runs of the courses that are
// meant, all over distances that these are known to have.
func (p *parsedSheet) allKnown(d *knownDays, meant []courseMeant) bool {
	for _, m := range meant {
		n := 0
		for _, q := range p.parts {
			for _, k := range q.runs {
				if k.course.course == m.read || k.course.course == m.course && !d.distances[k.course] {
					return false
				}
				if k.course.course == m.course {
					n++
				}
			}
		}
		if n == 0 {
			return false
		}
	}
	return true
}

// openAsMeant reads a sheet for a dry run: with a date of two readings as other
// sheets say, with a misspelt course as the people on it say, or asking. meant is what
// is answered about the two.
func (pl *Pipeline) openAsMeant(ctx context.Context, name string, data []byte, hand ByHand, earlier *remembered) (p *parsedSheet, meant string, err error) {
	said := hand
	if hand.Course == "" {
		meant = earlier.meant[store.Hash(data)]
		said.Answers = joinAnswers(hand.Answers, meant)
	}
	if p, err = pl.openOrParse(name, data, said); err != nil {
		return nil, "", err
	}
	order := ""
	if u := undated(name, readResult{data: data, parsed: p}); u != nil {
		dated, err := pl.settleOrders(ctx, unsureSheets{u})
		if err != nil {
			return nil, "", err
		}
		if len(dated) > 0 {
			order = u.answers
			meant = joinAnswers(meant, order)
			said.Answers = joinAnswers(said.Answers, order)
			if p, err = pl.openOrParse(name, data, said); err != nil {
				return nil, "", err
			}
		}
	}
	p.byHand = hand.Course != ""
	pl.askMisspelt([]*parsedSheet{p})
	u := unsureOf(name, readResult{data: data, parsed: p})
	if u == nil {
		return p, meant, nil
	}
	u.answers = order
	settled, err := pl.settleMisspelt(ctx, unsureSheets{u})
	if err != nil || len(settled) == 0 {
		return p, meant, err
	}
	now, answers, err := pl.readMeant(u, hand)
	if err != nil || !now.allKnown(pl.knownCourses(), u.meant) {
		return p, meant, err
	}
	return now, answers, nil
}

// readMeant reads a sheet again with its courses settled.
func (pl *Pipeline) readMeant(u *unsureSheet, hand ByHand) (p *parsedSheet, answers string, err error) {
	list := make([]string, len(u.meant))
	for i, m := range u.meant {
		list[i] = m.String()
	}
	answers = joinAnswers(u.answers, strings.Join(list, "; "))
	hand.Answers = joinAnswers(hand.Answers, answers)
	p, err = pl.parseSheet(u.name, u.read.data, hand)
	return p, answers, err
}
