package pipeline

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
)

// remembered is how the sheets of each course were read so far. What is new in
// a load is never among it, so that the order of the files does not matter; and
// whatever of it is used is kept with the sheet in the ledger, so that a
// rebuild reads the sheet as it was read.
type remembered struct {
	pl      *Pipeline
	byHand  map[int]string          // answers that people gave, by the sheet's number
	meant   map[string]string       // which course is meant by a misspelt title, by the sheet's hash
	asked   map[string]bool         // courses that were looked up
	said    map[int]store.Entry     // sheets of which somebody said which race of a day they are
	races   map[string][]race       // by course
	hands   map[int]store.Entry     // sheets of which somebody said the kind or the distance
	before  map[string]store.Entry  // the latest of them, by course and headings
	answers map[string]profile      // by course and headings
	latest  map[string]earlierSheet // by course
}

// profile is what was settled for the sheets of a course with certain headings,
// by the latest of them.
type profile struct {
	answers string
	sheet   string
	hand    bool // a person answered
}

type earlierSheet struct {
	sheet    string
	headings []string
	meanings []string // of the columns, in the same order
}

// headingsKey tells sheets of one maker: the course and the headings in order.
func headingsKey(course string, headings []string) string {
	return course + "\x00" + strings.ToLower(strings.Join(headings, "\x00"))
}

// remember prepares to look up how earlier sheets were read.
func (pl *Pipeline) remember(ledger []store.Entry) *remembered {
	r := &remembered{pl: pl, byHand: map[int]string{}, meant: map[string]string{}, asked: map[string]bool{}, said: map[int]store.Entry{}, races: map[string][]race{}, hands: map[int]store.Entry{}, before: map[string]store.Entry{}, answers: map[string]profile{}, latest: map[string]earlierSheet{}}
	for _, e := range ledger {
		r.byHand[e.Seq] = withoutCourses(e.Answers)
		if e.State == store.Loaded {
			r.meant[e.Hash] = onlyCourses(e.Answers)
		}
		if saysRace(e) {
			r.said[e.Seq] = e
		}
		if e.State == store.Loaded && (e.Kind != "" || e.Distance != "") {
			r.hands[e.Seq] = e
		}
	}
	return r
}

// lookUp reads the profiles of the courses of some sheets that it has not read
// yet.
func (r *remembered) lookUp(ctx context.Context, sheets []*parsedSheet) error {
	if len(r.byHand) == 0 || r.pl.DB == nil {
		return nil
	}
	var courses []string
	for _, s := range sheets {
		for _, c := range s.courses() {
			if !r.asked[c] {
				r.asked[c] = true
				courses = append(courses, c)
			}
		}
	}
	if len(courses) == 0 {
		return nil
	}
	races, err := r.pl.races(ctx, r.said, courses)
	if err != nil {
		return err
	}
	maps.Copy(r.races, races)
	for i, c := range courses {
		courses[i] = store.Quote(c)
	}
	sort.Strings(courses)
	rows, err := r.pl.DB.QueryContext(ctx, `
		with runs as (
			select run.run_no, c.course from record.run run join record.course c on c.course_no = run.course_no where c.course in (`+strings.Join(courses, ", ")+`)
		), parts as (
			select distinct l.part_no, runs.course from record.line l join runs on runs.run_no = l.run_no
		)
		select parts.course, s.sheet_no, s.path, p.heading_row, p.answers, string_agg(k.heading, chr(0) order by k.column_no), string_agg(k.meaning, chr(0) order by k.column_no)
		from parts join sheet.part p on p.part_no = parts.part_no join sheet.sheet s on s.sheet_no = p.sheet_no join sheet.column k on k.part_no = p.part_no
		group by parts.course, s.sheet_no, s.path, p.part_no, p.heading_row, p.answers
		order by s.sheet_no, p.part_no, parts.course`)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		var course, path, answers, text, meanings string
		var seq, headingRow int
		if err := rows.Scan(&course, &seq, &path, &headingRow, &answers, &text, &meanings); err != nil {
			return err
		}
		headings := strings.Split(text, "\x00")
		key := headingsKey(course, headings)
		if e, said := r.hands[seq]; said {
			r.before[key] = e
		} else {
			delete(r.before, key)
		}
		switch before := r.answers[key]; {
		case r.byHand[seq] != "" && !strings.Contains(r.byHand[seq], record.AsBefore+"="):
			r.answers[key] = profile{r.byHand[seq], path, true}
		case !before.hand:
			r.answers[key] = profile{answers, path, false}
		}
		if headingRow > 0 {
			r.latest[course] = earlierSheet{path, headings, strings.Split(meanings, "\x00")}
		}
	}
	return rows.Err()
}

// headings are those of the columns of a part.
func (p *parsedPart) headings() []string {
	out := make([]string, len(p.part.Columns))
	for i, c := range p.part.Columns {
		out[i] = c.Heading
	}
	return out
}

// answerFor looks for what earlier sheets say of the reading of a sheet, and of
// which sheet it is: a person's answer where the sheet waits for one, or else
// what an earlier sheet settled by its own values and this one reads otherwise.
func (r *remembered) answerFor(p *parsedSheet) (answers, from string) {
	for _, q := range p.parts {
		for _, k := range q.runs {
			known, ok := r.answers[headingsKey(k.course.course, q.headings())]
			switch {
			case !ok || known.answers == "" || known.hand && !p.waits() && p.columnQuestions() == 0:
			case known.hand:
				return known.answers, known.sheet
			default:
				if a := q.otherwise(known.answers); a != "" {
					return a, known.sheet
				}
			}
		}
	}
	return "", ""
}

// otherwise gives those of the answers that the part does not agree with, as
// what was so before.
func (p *parsedPart) otherwise(answers string) string {
	var out []string
	for _, a := range strings.Split(answers, ";") {
		key, value, _ := strings.Cut(strings.TrimSpace(a), "=")
		same := slices.ContainsFunc(p.readings, func(r record.Reading) bool { return r.Answer == strings.TrimSpace(a) })
		if !same && key != "" {
			out = append(out, key+record.AsBefore+"="+value)
		}
	}
	return strings.Join(out, "; ")
}

// readAsBefore reads a sheet again by what earlier sheets say. It returns p
// itself where that changes nothing.
func (r *remembered) readAsBefore(p *parsedSheet, parse func(answers string) (*parsedSheet, error)) (now *parsedSheet, answers string) {
	a, from := r.answerFor(p)
	if a == "" {
		return p, ""
	}
	q, err := parse(a)
	if err != nil || q.waits() && p.waits() || q.sameReadings(p) && q.waits() == p.waits() && q.columnQuestions() == p.columnQuestions() {
		return p, ""
	}
	q.byHand = p.byHand
	if !q.waits() {
		q.noteAnswer(a, from)
	}
	return q, a
}

// columnQuestions counts the questions about columns that a sheet does not wait for.
func (p *parsedSheet) columnQuestions() (n int) {
	for _, q := range p.problems {
		if q.Severity != place.Waits && strings.HasPrefix(q.Answers, "--answer ") {
			n++
		}
	}
	return n
}

func (p *parsedSheet) sameReadings(o *parsedSheet) bool {
	return slices.EqualFunc(p.parts, o.parts, func(a, b *parsedPart) bool {
		return slices.EqualFunc(a.readings, b.readings, func(x, y record.Reading) bool { return x.Answer == y.Answer })
	})
}

// noteAnswer says on the sheet that an earlier answer was used.
func (p *parsedSheet) noteAnswer(answers, from string) {
	q := place.Problem{Place: place.Place{Sheet: p.sheet.Name}, Severity: place.Note, Kind: "answer-remembered", Read: answers,
		Do: fmt.Sprintf("Read as %s, which has the same headings. If that is wrong, load the sheet again and say how it is to be read, as in --answer \"time=mm.ss\".", from)}
	p.problems = append(p.problems, q)
	p.sheet.Problems = append(p.sheet.Problems, q)
}

// notes says in words what is remembered of the courses of a sheet, and where
// its headings differ from those of the sheet before; file is what to type for it, ""
// where it is being shown how each column is read.
func (r *remembered) notes(p *parsedSheet, file string) (out []string) {
	for _, q := range p.parts {
		if q.part.HeadingRow == 0 {
			continue
		}
		for _, k := range q.runs {
			course, headings := k.course.course, q.headings()
			if _, ok := r.answers[headingsKey(course, headings)]; ok {
				continue
			}
			said := []string{timesThatCount(p.sheet.Name, q.part)}
			if before, ok := r.latest[course]; ok {
				said = append(said, headingsChanged(course, before, q.part, file))
			}
			for _, s := range said {
				if s != "" && !slices.Contains(out, s) {
					out = append(out, s)
				}
			}
		}
	}
	return out
}

// timesThatCount says of a sheet with gun and chip times which of them count, and how to
// have it otherwise; "" where there is no choice, the sheet shows it or somebody has said so.
func timesThatCount(name string, part *sheet.Part) string {
	counts, chip := part.Index(sheet.Time), part.Index(sheet.ChipTime)
	if counts < 0 || chip < 0 || part.Official != "" {
		return ""
	}
	at, other := part.Columns[counts], part.Columns[chip]
	if at.Heading == "" || other.Heading == "" {
		return ""
	}
	why := ""
	if _, reason, ok := strings.Cut(at.Why, fmt.Sprintf("heading %q: ", at.Heading)); ok {
		why = " (" + reason + ")"
	}
	return fmt.Sprintf("the times under %q count, those under %q do not%s. To have it the other way round: lapwing sheets withdraw %s, then load it with --answer \"official=%s\"",
		at.Heading, other.Heading, why, text.Typed(name), other.Heading)
}

// headingsChanged says how headings differ from those of an earlier sheet, and what that
// means for the reading.
func headingsChanged(course string, before earlierSheet, part *sheet.Part, file string) string {
	now, meanings := make([]string, len(part.Columns)), make([]string, len(part.Columns))
	for i, c := range part.Columns {
		now[i], meanings[i] = c.Heading, c.Meaning.String()
	}
	fresh, gone := without(now, before.headings), without(before.headings, now)
	change := "the columns stand in another order"
	switch {
	case len(fresh) > 0 && len(gone) > 0:
		change = are(fresh, "new") + ", " + are(gone, "gone")
	case len(fresh) > 0:
		change = are(fresh, "new")
	case len(gone) > 0:
		change = are(gone, "gone")
	}
	return fmt.Sprintf("the headings of %s have changed since %s: %s. %s", course, before.sheet, change, readDespite(before, part, fresh, meanings, file))
}

// readDespite says what new headings do to the reading of a sheet: what no column is taken
// for any more, and which are taken for something by their values alone.
func readDespite(before earlierSheet, part *sheet.Part, fresh, meanings []string, file string) string {
	var said []string
	named := func(meanings []string) bool {
		return slices.Contains(meanings, sheet.Name.String()) || slices.Contains(meanings, sheet.FamilyName.String())
	}
	for i, m := range before.meanings {
		ofName := m == sheet.Name.String() || m == sheet.GivenName.String() || m == sheet.FamilyName.String()
		switch {
		case ofName && (named(meanings) || part.Kind == "times"), m == sheet.Time.String() && part.Kind == "names":
			continue // in one column or two, or in the other half
		}
		if m != sheet.Other.String() && !slices.Contains(meanings, m) && !slices.Contains(before.meanings[:i], m) {
			said = append(said, fmt.Sprintf("no column is taken for the %s any more", meaningWords(m)))
		}
	}
	for _, c := range part.Columns {
		if c.Meaning != sheet.Other && slices.Contains(fresh, c.Heading) && c.ByValues() {
			said = append(said, fmt.Sprintf("%q is taken for the %s by what stands in it", c.Heading, meaningWords(c.Meaning.String())))
		}
	}
	if len(said) == 0 {
		return "All is read as before"
	}
	said[0] = strings.ToUpper(said[0][:1]) + said[0][1:]
	if file == "" {
		return strings.Join(said, "; ")
	}
	return fmt.Sprintf("%s. To see how each is read: lapwing load %s --dry-run", strings.Join(said, "; "), text.Typed(file))
}

// meaningWords is a meaning as it is said: "age group".
func meaningWords(meaning string) string { return strings.ReplaceAll(meaning, "-", " ") }

// without gives the headings of a that b has not, capitals aside.
func without(a, b []string) (out []string) {
	for _, h := range a {
		if h != "" && !strings.HasPrefix(h, "(") && !slices.ContainsFunc(b, func(o string) bool { return strings.EqualFold(o, h) }) {
			out = append(out, h)
		}
	}
	return out
}

func are(headings []string, what string) string {
	quoted := make([]string, len(headings))
	for i, h := range headings {
		quoted[i] = fmt.Sprintf("%q", h)
	}
	if len(quoted) == 1 {
		return quoted[0] + " is " + what
	}
	return strings.Join(quoted[:len(quoted)-1], ", ") + " and " + quoted[len(quoted)-1] + " are " + what
}

// raceOf is the race of several on a day that a sheet is of by its name, where nobody
// says it now and the sheet itself does not.
func (r *remembered) raceOf(p *parsedSheet, hand ByHand) (race, bool) {
	if len(r.races) == 0 || hand.Session != "" || hand.Distance != "" || hand.Kind != "" || hand.Date != "" || !p.saysNoRace() {
		return race{}, false
	}
	return raceOf(r.races, p.sheet.Name, p.courses())
}

// shown says in words how earlier sheets with the headings of this one were
// read, for a dry run.
func (r *remembered) shown(p *parsedSheet) (out []string) {
	for _, q := range p.parts {
		for _, k := range q.runs {
			known, ok := r.answers[headingsKey(k.course.course, q.headings())]
			if !ok {
				continue
			}
			s := fmt.Sprintf("%s has had sheets with these headings before, the latest %s", k.course.course, known.sheet)
			switch {
			case known.hand:
				s += fmt.Sprintf("; a person answered: %s", known.answers)
			case known.answers != "":
				s += fmt.Sprintf("; it was read with %s", known.answers)
			}
			if !slices.Contains(out, s) {
				out = append(out, s)
			}
		}
	}
	return out
}
