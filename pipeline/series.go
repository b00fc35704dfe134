package pipeline

import (
	"cmp"
	"context"
	"database/sql"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"sync"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// A club with one course often never writes its name, and one that counts its runs
// often not their dates. Where somebody has answered for one sheet, or other sheets say
// it, those that say nothing are read by them: the course that a person named, if the
// people on the sheet have run there; and the day that lies between those of the numbers
// before and after. Keys of the answers that are kept with the sheet in the ledger, and
// the kind of remark on it:
const (
	noCourse   = "no course"
	noDate     = "no date"
	bySeries   = "read-by-others"
	mostSilent = 500 // waiting sheets that are looked at in a load
)

// Of those named on a sheet at least leastOfSeries, and one in tenOfSeries, have run on
// the course: few, as the first sheets of a course share few people, but those of
// another town share none. Common practice, no source.
const (
	leastOfSeries = 3
	tenOfSeries   = 10
)

// silentSheet is a waiting sheet that says no course, or no date, at all.
type silentSheet struct {
	entry    store.Entry
	noCourse bool
	noDate   bool
	course   string // that it says
	day      unit.Day
	number   sheet.Numbered
	numbered bool
}

// silentOf looks whether a sheet that waits only lacks course or date; nil where it
// waits for something else.
func silentOf(e store.Entry, p *parsedSheet) *silentSheet {
	s := &silentSheet{entry: e}
	for _, q := range p.problems {
		switch {
		case q.Severity != place.Waits:
		case q.Kind == "course-missing":
			s.noCourse = true
		case q.Kind == "date-missing":
			s.noDate = true
		default:
			return nil
		}
	}
	results := 0
	for _, q := range p.parts {
		if q.part.Kind == sheet.Volunteers {
			continue
		}
		results++
		if s.noCourse == q.part.Course.OK() || s.noDate == q.part.Date.OK() || q.part.Index(sheet.Date) >= 0 && s.noDate {
			return nil
		}
		s.course, s.day = onlyCourse(q.part), q.part.Date.Day
	}
	if results == 0 || s.noDate && results > 1 || !s.noCourse && !s.noDate || !s.noCourse && s.course == "" {
		return nil
	}
	s.number, s.numbered = sheet.NumberOf(e.Path)
	return s
}

// settleSeries reads the waiting sheets that say no course or no date by those that are
// known, as long as that makes more of them known. saved is the day on which the file of
// a sheet of this load was last changed, by hash.
func (l *loading) settleSeries(ctx context.Context, saved map[string]unit.Day) error {
	if l.pl.DB == nil || l.rep.Loaded+l.rep.Waiting == 0 {
		return nil
	}
	seen := map[store.Entry]*silentSheet{} // as they were read in the round before
	for {
		ledger, err := l.pl.Archive.Ledger()
		if err != nil {
			return err
		}
		var open []*silentSheet
		waiting := 0
		for _, e := range ledger {
			if e.State != store.Waiting {
				continue
			}
			if waiting++; waiting > mostSilent {
				break
			}
			s, have := seen[e]
			if !have {
				if p, err := l.pl.parseCopy(e); err == nil && p.waits() && !p.unread() {
					s = silentOf(e, p)
				}
				seen[e] = s
			}
			if s != nil {
				again := *s
				open = append(open, &again)
			}
		}
		if len(open) == 0 {
			return nil
		}
		slices.SortFunc(open, func(a, b *silentSheet) int { return cmp.Compare(a.entry.Seq, b.entry.Seq) })
		if err := l.pl.courseOfSeries(ctx, ledger, open); err != nil {
			return err
		}
		if err := l.pl.daysOfSeries(ctx, open, saved); err != nil {
			return err
		}
		n, err := l.keepSeries(ctx, open)
		if err != nil || n == 0 {
			return err
		}
	}
}

// courseOfSeries answers for the sheets without a course where all that people have
// named is one.
func (pl *Pipeline) courseOfSeries(ctx context.Context, ledger []store.Entry, open []*silentSheet) error {
	var said store.Entry
	course := ""
	for _, e := range ledger {
		if e.Course == "" || e.State != store.Loaded {
			continue
		}
		c := pl.courses.resolve(e.Course)
		if course != "" && c != course {
			return nil
		}
		course, said = c, e
	}
	known := pl.knownCourses()
	if len(known.days[course]) == 0 {
		return nil
	}
	people := make([]map[string]bool, len(open))
	wanted := map[string]int32{}
	for i, s := range open {
		if !s.noCourse {
			continue
		}
		hand := handOf(s.entry)
		hand.Course = course
		if s.noDate {
			hand.Date = "2000-01-01" // only to read the lines
		}
		data, err := pl.copyOf(s.entry)
		if err != nil {
			return err
		}
		p, err := pl.parseSheet(s.entry.Path, data, hand)
		if err != nil || p.waits() {
			continue
		}
		people[i] = p.people("")
		for _, key := range slices.Sorted(maps.Keys(people[i])) {
			if _, have := wanted[key]; !have {
				wanted[key] = int32(len(wanted))
			}
		}
	}
	at := map[string]map[int32]bool{}
	if len(wanted) > 0 {
		var err error
		if at, err = pl.whereKnown(ctx, wanted); err != nil {
			return err
		}
	}
	for i, s := range open {
		if people[i] == nil || !s.noDate && len(known.days[course]) >= heldRuns && !known.heldOn(course, s.day.Weekday()) {
			continue
		}
		n := map[string]int{}
		for c, list := range at {
			for key := range people[i] {
				if list[wanted[key]] {
					n[c]++
				}
			}
		}
		here, ok := n[course], true
		for c, there := range n {
			ok = ok && (c == course || 2*there <= here || there <= here && !known.days[c][s.day])
		}
		why := fmt.Sprintf("%d of the %d people named here have run there", here, len(people[i]))
		if len(people[i]) < leastOfSeries { // times alone
			ok, why = len(known.days) == 1, "it is the only course here"
		} else {
			ok = ok && here >= leastOfSeries && here*tenOfSeries >= len(people[i])
		}
		if ok {
			s.answer(noCourse, course, fmt.Sprintf("as somebody said of %s and %s", said.Path, why))
			s.course = course
		}
	}
	return nil
}

// savedDays are the days on which the files of waiting sheets were last changed, by hash:
// of several copies the earliest.
type savedDays struct {
	lock sync.Mutex
	days map[string]unit.Day
}

func (s *savedDays) note(file string, r *readResult) {
	if r.err != nil || r.parsed == nil || !r.parsed.waits() {
		return
	}
	st, err := os.Stat(file)
	if err != nil {
		return
	}
	day := unit.DayOf(st.ModTime())
	s.lock.Lock()
	defer s.lock.Unlock()
	if before, have := s.days[r.hash]; !have || day < before {
		s.days[r.hash] = day
	}
}

// answer keeps an answer with the sheet.
func (s *silentSheet) answer(key, value, why string) {
	s.entry.Answers = joinAnswers(s.entry.Answers, fmt.Sprintf("%s=%s %s", key, value, strings.ReplaceAll(why, ";", ",")))
}

// numberedDay is the day of a sheet with a number.
type numberedDay struct {
	n    int
	day  unit.Day
	path string
}

// daysOfSeries answers for the sheets without a date whose number lies in a series.
func (pl *Pipeline) daysOfSeries(ctx context.Context, open []*silentSheet, saved map[string]unit.Day) error {
	if !slices.ContainsFunc(open, func(s *silentSheet) bool { return s.noDate && s.numbered && s.course != "" }) {
		return nil
	}
	type series struct {
		course, word string
		week         bool
	}
	known := map[series][]numberedDay{}
	if err := pl.each(ctx, `
		select c.course, s.path, min(run.run_date)
		from (select distinct part_no, run_no from record.line) l
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		join record.run run on run.run_no = l.run_no
		join record.course c on c.course_no = run.course_no
		group by c.course, s.path
		having min(run.run_date) = max(run.run_date)
		order by c.course, s.path`, func(rows *sql.Rows) error {
		var course, path string
		var day time.Time
		err := rows.Scan(&course, &path, &day)
		if n, ok := sheet.NumberOf(path); ok {
			k := series{course, n.Word, n.Week}
			known[k] = append(known[k], numberedDay{n.N, unit.DayOf(day), path})
		}
		return err
	}); err != nil {
		return err
	}
	for _, s := range open {
		if !s.noDate || !s.numbered || s.course == "" {
			continue
		}
		if day, why, ok := dayOfNumber(known[series{s.course, s.number.Word, s.number.Week}], s.number, saved[s.entry.Hash]); ok {
			s.answer(noDate, day.String(), why)
		}
	}
	return nil
}

// dayOfNumber is the day of a number in a weekly series. It is that of another sheet
// with the number; or between two numbers whose days are as many weeks apart as the
// numbers are, so that no week was left out; or, of weeks of the calendar, on the
// weekday of two others; or in the week after the number before it in which the file was
// saved. A day that two numbers have, or a number that has two days, proves nothing.
func dayOfNumber(known []numberedDay, of sheet.Numbered, saved unit.Day) (day unit.Day, why string, ok bool) {
	var below, above numberedDay
	numbers := map[int]unit.Day{}
	taken := map[unit.Day]int{}
	for _, k := range known {
		if d, have := numbers[k.n]; have && d != k.day {
			return 0, "", false
		}
		if n, have := taken[k.day]; have && n != k.n {
			return 0, "", false
		}
		numbers[k.n], taken[k.day] = k.day, k.n
		switch {
		case k.n == of.N:
			return k.day, "as on " + k.path + ", which has the same number", true
		case k.n < of.N && (below.path == "" || k.n > below.n):
			below = k
		case k.n > of.N && (above.path == "" || k.n < above.n):
			above = k
		}
	}
	after := func(k numberedDay) unit.Day { return k.day + unit.Day(7*(of.N-k.n)) }
	switch {
	case below.path != "" && above.path != "" && after(below) == after(above):
		return after(below), "as the numbers before and after it have their days: " + below.path + " and " + above.path, true
	case of.Week && len(numbers) > 1:
		for _, k := range known {
			if day != 0 && after(k) != day {
				return 0, "", false
			}
			day = after(k)
		}
		return day, "on the weekday of the other weeks", true
	case below.path != "" && saved != 0 && saved >= after(below) && saved < after(below)+7 && (above.path == "" || after(below) < above.day):
		return after(below), "as it comes after " + below.path + ", and was saved in that week", true
	}
	return 0, "", false
}

// keepSeries loads the sheets that have their answers now, and keeps what is answered
// of the others. It says how many it loaded.
func (l *loading) keepSeries(ctx context.Context, open []*silentSheet) (loaded int, err error) {
	var keep []store.Incoming
	var parsed []*parsedSheet
	for _, s := range open {
		if !strings.Contains(s.entry.Answers, noCourse+"=") && !strings.Contains(s.entry.Answers, noDate+"=") {
			continue
		}
		now, err := l.pl.parseCopy(s.entry)
		if err != nil {
			continue // it waits on
		}
		if !now.waits() {
			now.entry.State = store.Loaded
			parsed = append(parsed, now)
		} else {
			now.entry.Rows = 0
		}
		if before := l.known[s.entry.Hash]; before != now.entry {
			l.known[s.entry.Hash] = now.entry
			keep = append(keep, store.Incoming{Entry: now.entry})
		}
	}
	if len(keep) == 0 {
		return 0, nil
	}
	if err := l.pl.Archive.Keep(keep); err != nil {
		return 0, err
	}
	for _, p := range parsed {
		l.rep.now(SheetReport{Path: p.entry.Path, State: "loaded", Rows: p.rows(), Runs: p.runNames(), Problems: p.problems, Counts: p.counts(), Settled: settledByOthers(p.problems), seq: p.entry.Seq})
	}
	return len(parsed), l.pl.writeSheets(ctx, parsed)
}

// now puts what became of a sheet that was waiting in its place of the report.
func (r *LoadReport) now(s SheetReport) {
	r.Loaded++
	r.Rows += s.Rows
	at := slices.IndexFunc(r.Sheets, func(o SheetReport) bool { return o.State == "waiting" && o.seq == s.seq })
	if at < 0 {
		r.Sheets = append(r.Sheets, s)
		return
	}
	for i := range r.Sheets { // it, and its copies in this load
		if r.Sheets[i].State == "waiting" && r.Sheets[i].seq == s.seq {
			r.Waiting--
			if r.Sheets[i] = s; i != at {
				r.Sheets[i].State = "already loaded"
				r.Known++
			}
		}
	}
}

// applySeries hands the answers about course and date to the reader of sheets.
func applySeries(o *sheet.Options, answers map[string]string) {
	o.CourseBefore, o.CourseWhy, _ = strings.Cut(answers[noCourse], " ")
	o.DateBefore, o.DateWhy, _ = strings.Cut(answers[noDate], " ")
}

// noteSeries says on a sheet which course or day it was taken for, and why.
func noteSeries(s *sheet.Sheet, o *sheet.Options) {
	for _, p := range s.Parts {
		var read, why []string
		if o.CourseWhy != "" && p.Course.Why == o.CourseWhy {
			read, why = append(read, "no course"), append(why, fmt.Sprintf("taken for %s, %s", p.Course.Value, o.CourseWhy))
		}
		if o.DateWhy != "" && p.Date.Why == o.DateWhy {
			said := "no date"
			if p.Date.Text != "" {
				said = fmt.Sprintf("%q", p.Date.Text)
			}
			read, why = append(read, said), append(why, fmt.Sprintf("dated %s, %s", p.Date.Day.Long(), o.DateWhy))
		}
		if len(read) > 0 {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: bySeries, Read: strings.Join(read, ", "),
				Do: fmt.Sprintf("It was %s. If that is wrong: lapwing sheets withdraw %s, then load it with --course and --date.", strings.Join(why, "; "), text.Typed(s.Name))})
			return
		}
	}
}
