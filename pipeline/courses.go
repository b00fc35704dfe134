package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/sheet"
	"lapwing/pipeline/unit"
)

// courseColumns are the columns of courses.csv; only the first must be there.
var courseColumns = []string{"course", "name", "distance_m", "weekday", "valid_from", "valid_to", "measured"}

// defaultDistance of a course of which nothing else is known, in metres.
const defaultDistance = 5000

// knownCourse is a line of courses.csv.
type knownCourse struct {
	course, name string
	distanceM    int
	weekday      int // -1 unknown
	measured     bool
	from, to     unit.Day // 0: open
}

type courseKey struct {
	course    string
	distanceM int
}

type runKey struct {
	course  courseKey
	day     unit.Day
	session string
}

// courseBook knows the courses of courses.csv, their other names, and the
// numbers that courses and runs have in this database.
type courseBook struct {
	known    []knownCourse
	alias    map[string]string // slug of any name → course
	complete map[string]unit.Day
	began    map[string]bool // the course's first run ever was on that day
	numbers  map[courseKey]int32
	runs     map[runKey]int32
	newRuns  []runKey
	named    []runKey // runs whose session has become known
	days     map[dayKey][]runKey
	// distances are those of each course's runs, in metres.
	distances map[string][]int
	newOnes   []courseKey
}

func (pl *Pipeline) readCourses() error {
	b := &courseBook{alias: map[string]string{}, complete: map[string]unit.Day{}, began: map[string]bool{}, numbers: map[courseKey]int32{}, runs: map[runKey]int32{}, days: map[dayKey][]runKey{}, distances: map[string][]int{}}
	rows, err := pl.Archive.ReadTable("courses.csv", courseColumns)
	if err != nil {
		return err
	}
	for i, r := range rows {
		k, err := readKnownCourse(r)
		if err != nil {
			return fmt.Errorf("%s: %w", pl.Archive.At("courses.csv", i), err)
		}
		b.known = append(b.known, k)
		b.alias[sheet.Slug(k.course)] = k.course
		b.alias[sheet.Slug(k.name)] = k.course
	}
	others := map[string]string{}
	for other, course := range pl.Settings.Courses {
		others[sheet.Slug(other)] = b.resolve(course) // its name does as well
	}
	maps.Copy(b.alias, others)
	history, err := pl.readHistoryTable()
	if err != nil {
		return err
	}
	for _, h := range history {
		switch h.fact {
		case completeFrom:
			b.complete[b.resolve(h.course)] = h.day
		case began:
			b.complete[b.resolve(h.course)] = h.day
			b.began[b.resolve(h.course)] = true
		}
	}
	pl.courses = b
	if pl.DB == nil {
		return nil
	}
	return pl.readNumbers(context.Background())
}

func readKnownCourse(r []string) (knownCourse, error) {
	k := knownCourse{course: sheet.Slug(r[0]), name: r[1], distanceM: defaultDistance, weekday: -1, measured: true}
	if k.course == "" {
		return k, fmt.Errorf("the course has no name")
	}
	if k.name == "" {
		k.name = r[0]
	}
	if r[2] != "" {
		var err error
		if k.distanceM, err = readMetres(r[2]); err != nil {
			return k, err
		}
	}
	if r[3] != "" {
		k.weekday = weekday(r[3])
		if k.weekday < 0 {
			return k, fmt.Errorf("weekday %q: write Monday, Tuesday, … Sunday", r[3])
		}
	}
	var err error
	if r[4] != "" {
		if k.from, err = unit.ParseDay(r[4]); err != nil {
			return k, err
		}
	}
	if r[5] != "" {
		if k.to, err = unit.ParseDay(r[5]); err != nil {
			return k, err
		}
	}
	switch strings.ToLower(r[6]) {
	case "no", "false", "0":
		k.measured = false
	}
	return k, nil
}

func weekday(s string) int {
	s = strings.ToLower(strings.TrimSpace(s))
	for d := time.Sunday; d <= time.Saturday; d++ {
		name := strings.ToLower(d.String())
		if s == name || len(s) >= 3 && strings.HasPrefix(name, s) {
			return int(d)
		}
	}
	return -1
}

// readNumbers learns the numbers that courses and runs already have.
func (pl *Pipeline) readNumbers(ctx context.Context) error {
	var n int
	if err := pl.DB.Get(ctx, "select count(*) from information_schema.tables where table_schema = 'record' and table_name = 'run'", &n); err != nil || n == 0 {
		return nil // an empty or foreign database: whoever opened it finds out
	}
	b := pl.courses
	keys := map[int32]courseKey{}
	err := pl.DB.Scan(ctx, "select course_no, distance_m, course from record.course", func(r arrow.Record) error {
		no, distance, course := r.Column(0).(*array.Int32), r.Column(1).(*array.Int32), r.Column(2).(*array.String)
		for i := range int(r.NumRows()) {
			k := courseKey{strings.Clone(course.Value(i)), int(distance.Value(i))}
			keys[no.Value(i)] = k
			b.numbers[k] = no.Value(i)
		}
		return nil
	})
	if err != nil {
		return err
	}
	return pl.DB.Scan(ctx, "select run_no, course_no, run_date, session from record.run order by run_no", func(r arrow.Record) error {
		no, course := r.Column(0).(*array.Int32), r.Column(1).(*array.Int32)
		day, session := r.Column(2).(*array.Date32), r.Column(3).(*array.String)
		for i := range int(r.NumRows()) {
			b.know(runKey{keys[course.Value(i)], unit.Day(day.Value(i)), strings.Clone(session.Value(i))}, no.Value(i))
		}
		return nil
	})
}

// names lists the known courses for the reader of sheets.
func (b *courseBook) names() []sheet.CourseName {
	by := map[string]*sheet.CourseName{}
	var order []string
	for _, k := range b.known {
		c := by[k.course]
		if c == nil {
			c = &sheet.CourseName{Course: k.course, Weekday: k.weekday}
			by[k.course] = c
			order = append(order, k.course)
		}
		c.Names = append(c.Names, k.name)
	}
	var others []string
	for slug, course := range b.alias {
		others = append(others, slug+"\x00"+course)
	}
	sort.Strings(others)
	for _, o := range others {
		slug, course, _ := strings.Cut(o, "\x00")
		if by[course] == nil { // in the settings only
			by[course] = &sheet.CourseName{Course: course, Weekday: -1}
			order = append(order, course)
		}
		by[course].Names = append(by[course].Names, slug)
	}
	out := make([]sheet.CourseName, len(order))
	for i, c := range order {
		out[i] = *by[c]
	}
	return out
}

// resolve turns any name of a course into its short name.
func (b *courseBook) resolve(name string) string {
	slug := sheet.Slug(name)
	if c, ok := b.alias[slug]; ok {
		return c
	}
	return slug
}

// key settles course and distance of a run: the sheet's distance where it
// gives one, else that of the known course that was valid on the day, else
// 5 km.
func (b *courseBook) key(name string, day unit.Day, distanceM int) courseKey {
	course := b.resolve(name)
	if distanceM > 0 {
		return courseKey{course, distanceM}
	}
	found := -1
	for i, k := range b.known {
		if k.course != course {
			continue
		}
		valid := (k.from == 0 || day >= k.from) && (k.to == 0 || day <= k.to)
		if valid || found < 0 {
			found = i
		}
		if valid {
			break
		}
	}
	if found >= 0 {
		return courseKey{course, b.known[found].distanceM}
	}
	return courseKey{course, defaultDistance}
}

// listed says whether courses.csv has the course.
func (b *courseBook) listed(course string) bool {
	for _, k := range b.known {
		if k.course == course {
			return true
		}
	}
	return false
}

// number gives a run its number, and its course too. A sheet without a session
// is of the day's only run, whatever session that has: one that says 09:00 and
// one that says nothing are of the same run. A second or third session is none
// that goes without saying.
func (b *courseBook) number(k runKey) int32 {
	if n, ok := b.runs[k]; ok {
		return n
	}
	day := dayKey{k.course, k.day}
	if only, ok := b.unsaid(day); ok && !furtherSession(k.session) {
		switch {
		case k.session == "":
			return b.runs[only]
		case only.session == "" || only.session == distanceSession(only.course.distanceM): // now its session is known
			return b.name(only, k.session)
		}
	}
	if _, ok := b.numbers[k.course]; !ok {
		b.numbers[k.course] = int32(len(b.numbers) + 1)
		b.newOnes = append(b.newOnes, k.course)
	}
	n := int32(len(b.runs) + 1)
	b.know(k, n)
	b.newRuns = append(b.newRuns, k)
	b.nameDistances(k.course.course, k.day)
	return n
}

// name gives a run a session, and returns its number.
func (b *courseBook) name(old runKey, session string) int32 {
	k := old
	k.session = session
	n, day := b.runs[old], dayKey{old.course, old.day}
	delete(b.runs, old)
	b.runs[k] = n
	b.days[day][slices.Index(b.days[day], old)] = k
	if i := slices.Index(b.newRuns, old); i >= 0 {
		b.newRuns[i] = k
	} else {
		b.named = append(b.named, k)
	}
	return n
}

// nameDistances tells runs over several distances on one course and day apart: a run
// is named by course, day and session, so that those beside the course's own distance,
// or beside the longest, have theirs for a session.
func (b *courseBook) nameDistances(course string, day unit.Day) {
	own := b.key(course, day, 0).distanceM
	var unsaid []runKey
	for _, m := range b.distances[course] {
		for _, k := range b.days[dayKey{courseKey{course, m}, day}] {
			if k.session == "" || k.session == distanceSession(m) {
				unsaid = append(unsaid, k)
			}
		}
	}
	if len(unsaid) < 2 {
		return
	}
	first := slices.MaxFunc(unsaid, func(a, b runKey) int {
		return cmp.Or(cmp.Compare(flag(a.course.distanceM == own), flag(b.course.distanceM == own)), cmp.Compare(a.course.distanceM, b.course.distanceM))
	})
	for _, k := range unsaid {
		if k.session == "" && k.course != first.course {
			b.name(k, distanceSession(k.course.distanceM))
		}
	}
}

// distanceSession is the session of a run that goes by its distance: "2 km", "800 m".
func distanceSession(metres int) string {
	if metres < 1000 {
		return fmt.Sprintf("%d m", metres)
	}
	return strconv.FormatFloat(float64(metres)/1000, 'f', -1, 64) + " km"
}

// unsaid is the run that a sheet without a session is of: the day's only one, or
// the only one beside second and third sessions.
func (b *courseBook) unsaid(day dayKey) (only runKey, ok bool) {
	for _, k := range b.days[day] {
		if furtherSession(k.session) {
			continue
		}
		if ok {
			return runKey{}, false
		}
		only, ok = k, true
	}
	return only, ok
}

// furtherSession says whether a session is a number of two or more.
func furtherSession(session string) bool {
	n, err := strconv.Atoi(session)
	return err == nil && n > 1
}

// know notes the number of a run.
func (b *courseBook) know(k runKey, n int32) {
	b.runs[k] = n
	day := dayKey{k.course, k.day}
	b.days[day] = append(b.days[day], k)
	if d := b.distances[k.course.course]; !slices.Contains(d, k.course.distanceM) {
		b.distances[k.course.course] = append(d, k.course.distanceM)
	}
}

// dayKey is a course and a day, whatever the session.
type dayKey struct {
	course courseKey
	day    unit.Day
}

// describe gives what courses.csv says of a course, as far as it does.
func (b *courseBook) describe(k courseKey) knownCourse {
	out := knownCourse{course: k.course, name: titleOf(k.course), distanceM: k.distanceM, weekday: -1}
	for _, c := range b.known {
		if c.course != k.course {
			continue
		}
		out.name, out.weekday = c.name, c.weekday
		if c.distanceM == k.distanceM {
			out.measured = c.measured
			break
		}
	}
	return out
}

// titleOf makes a printable name from a short one: alder-bank, Alder Bank.
func titleOf(slug string) string {
	words := strings.Split(slug, "-")
	for i, w := range words {
		if w != "" {
			r := []rune(w)
			words[i] = strings.ToUpper(string(r[0])) + string(r[1:])
		}
	}
	return strings.Join(words, " ")
}
