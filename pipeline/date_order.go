package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// orderAnswer is the key of the answer that says whether the day or the month
// comes first: "date order=dmy". With record.AsBefore behind it, other sheets and
// runs say so, and the value goes on with how: "dmy as on 12 other sheets here".
const orderAnswer = "date order"

// weekdayAnswer is the key of the answer that a weekday beside a date of another
// weekday is a slip, as the course's other runs say: "weekday=any".
const weekdayAnswer = "weekday"

// yearAnswer is the key of the answer that says the year of dates that have none, for
// all tables of a sheet: "year=2026", or "year=2025-26" of a season.
const yearAnswer = "year"

// heldRuns is how many runs of a course show its weekday. Common practice, no source.
const heldRuns = 3

// How much others say of 03/04/2026 is weighed in odds, once all other sheets of a
// load are there; from surelyOrdered to one on it is settled. Sheets whose dates can
// be read one way only count by a beta prior (Bayes 1763; Laplace's rule with another
// number in place of 1): whoever makes the sheets of a course hardly ever has two
// customs, the sheets of an archive may have several makers. How often two sheets of
// one course agree is taken for agree, as if seen in agreeSeen pairs, and learned from
// the archive. The constants are chosen so that one sheet of the course is enough, or
// two of others, where nothing contradicts (no source).
const (
	surelyOrdered = 20.0
	ofArchive     = .1
	agree         = .97
	agreeSeen     = 40.0
	pairsOfCourse = 20.0 // a course counts for at most so many pairs
	// What the weekday of all other courses says of one that has no runs yet: all
	// of at least leastRunsHere fall on it.
	weekdayHere   = 20.0
	leastRunsHere = 10
	// A weekly run is on one weekday throughout.
	onOneWeekday = .9
	// That the course's run of a day is here already, with the same people and times or
	// with others, of at least leastTimed each.
	takenOdds  = 30.0
	leastTimed = 5
)

const dateOrderSettled = "date-order-settled"

// noteOrder says on a sheet that the order of its day and month was settled by
// others.
func noteOrder(s *sheet.Sheet, o *sheet.Options) {
	if o.OrderWhy == "" {
		return
	}
	for _, p := range s.Parts {
		if !strings.HasSuffix(p.Date.Why, o.OrderWhy) {
			continue
		}
		read := p.Date.Text
		if p.Date.Settled {
			read = fmt.Sprintf("%s as %s", read, p.Date.Day.Long())
		}
		s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Note, Kind: dateOrderSettled,
			Read: strings.TrimSpace(read + ", " + map[string]string{"dmy": "day first", "mdy": "month first"}[o.DateOrder]),
			Do:   fmt.Sprintf("It was read so %s. If that is wrong: lapwing sheets withdraw %s, then load it with --date.", o.OrderWhy, text.Typed(s.Name))})
		return
	}
}

// undated is a sheet that waits only because its date can be read in two ways;
// nil where it waits for something else.
func undated(name string, r readResult) *unsureSheet {
	if r.err != nil || r.parsed == nil || !r.parsed.waits() || r.parsed.sheet == nil || weight(name, int64(len(r.data))) > int64(largeSheet) {
		return nil
	}
	for _, q := range r.parsed.problems {
		if q.Severity == place.Waits && q.Kind != "date-unclear" {
			return nil
		}
	}
	for _, p := range r.parsed.sheet.Parts {
		if p.Date.ByOrder != nil || p.Date.Slip {
			return &unsureSheet{name: name, read: r}
		}
	}
	return nil
}

// provedOrders counts the sheets whose own dates show that the day or the month
// comes first: by course, "" for all, and by order.
func (pl *Pipeline) provedOrders(ctx context.Context) (map[string]map[string]int, error) {
	out := map[string]map[string]int{}
	return out, pl.each(ctx, `
		with proved as (select sheet_no, date_order from sheet.sheet where date_order <> ''),
		held as (
			select distinct p.sheet_no, c.course
			from sheet.part p join proved using (sheet_no)
			join (select distinct part_no, run_no from record.line) l on l.part_no = p.part_no
			join record.run run on run.run_no = l.run_no
			join record.course c on c.course_no = run.course_no
		)
		select course, date_order, count(*) from held join proved using (sheet_no) group by all
		union all
		select '', date_order, count(*) from proved group by all`, func(rows *sql.Rows) error {
		var course, order string
		var n int
		err := rows.Scan(&course, &order, &n)
		if out[course] == nil {
			out[course] = map[string]int{}
		}
		out[course][order] = n
		return err
	})
}

// settleOrders finds which of the sheets that wait for the order of day and month, or
// for what a weekday beside the date means (a date is as it is written, unless the
// course is held on that weekday or nothing shows on which), are answered by other sheets and runs, and returns
// these with the answer. All other sheets of the load are in the database by now, so
// the order of the files makes no difference.
func (pl *Pipeline) settleOrders(ctx context.Context, sheets []*unsureSheet) (settled []*unsureSheet, err error) {
	if pl.DB == nil || len(sheets) == 0 {
		return nil, nil
	}
	proved, err := pl.provedOrders(ctx)
	if err != nil {
		return nil, err
	}
	known, ofCourse := pl.knownCourses(), customOfCourse(proved)
	waiting := pl.openDays(sheets)
	var left []*unsureSheet
	for _, s := range sheets {
		if day, ok := known.onlyNear(s.read.parsed.sheet.Parts, pl.courses); ok {
			s.answers = fmt.Sprintf("%s=%s as the other readings lie years from all runs of the course", noDate, day)
			settled = append(settled, s)
			continue
		}
		order, why := "", ""
		open, slip := false, false
		readAs := pl.readingsOf(s)
		for _, p := range s.read.parsed.sheet.Parts {
			course := pl.courses.resolve(onlyCourse(p))
			switch {
			case p.Date.Slip:
				slip = true
				open = open || known.heldOn(course, p.Date.Choices[1].Weekday()) || known.hardlyKnown(course)
			case p.Date.ByOrder != nil:
				taken, err := pl.taken(ctx, readAs, p, course, known)
				if err != nil {
					return nil, err
				}
				o, w := orderOf(p, course, proved, ofCourse, known, waiting[course], taken)
				open = open || o == "" || order != "" && o != order
				order, why = o, w
			}
		}
		if open {
			left = append(left, s)
			continue
		}
		if order != "" {
			s.answers = orderAnswer + record.AsBefore + "=" + order + " " + why
		}
		if slip {
			s.answers = joinAnswers(s.answers, weekdayAnswer+"=any")
		}
		settled = append(settled, s)
	}
	return append(settled, pl.settleGaps(left, settled, known)...), nil
}

// settleGaps settles those of the sheets left whose dates lie in a gap of the runs of their
// course, with the days of the sheets that were settled counted among them.
func (pl *Pipeline) settleGaps(left, settled []*unsureSheet, known *knownDays) (more []*unsureSheet) {
	if len(left) == 0 {
		return nil
	}
	forms := map[string]map[bool]int{} // of each course the sheets whose dates begin with the day, or not
	for _, s := range settled {
		parts := s.read.parsed.sheet.Parts
		if len(parts) != 1 {
			continue
		}
		course := pl.courses.resolve(onlyCourse(parts[0]))
		day, ok := settledDay(s.answers, parts[0])
		if !ok || course == "" {
			continue
		}
		if known.days[course] == nil {
			known.days[course] = map[unit.Day]bool{}
		}
		if forms[course] == nil {
			forms[course] = map[bool]int{}
		}
		known.days[course][day] = true
		forms[course][slices.Contains(parts[0].Date.ByOrder["dmy"], day)]++
	}
	for _, s := range left {
		parts := s.read.parsed.sheet.Parts
		form := map[bool]int{}
		if len(parts) == 1 {
			form = forms[pl.courses.resolve(onlyCourse(parts[0]))]
		}
		if day, ok := known.inGap(parts, pl.courses, form); ok {
			s.answers = fmt.Sprintf("%s=%s as the course has runs shortly before or after it, and none in half a year of the other reading", noDate, day)
			more = append(more, s)
		}
	}
	return more
}

// settledDay is the day that an answer found by other sheets gives the one date of a part.
func settledDay(answers string, p *sheet.Part) (unit.Day, bool) {
	said, err := ParseAnswers(answers)
	if err != nil {
		return 0, false
	}
	if text, _, _ := strings.Cut(said[noDate], " "); text != "" {
		d, err := unit.ParseDay(text)
		return d, err == nil
	}
	order, _, _ := strings.Cut(said[orderAnswer+record.AsBefore], " ")
	if days := p.Date.ByOrder[order]; len(days) == 1 {
		return days[0], true
	}
	return 0, false
}

// openDays are the days that the dates of waiting sheets would be by the order of day and
// month, of each course.
func (pl *Pipeline) openDays(sheets []*unsureSheet) map[string]map[string][]unit.Day {
	out := map[string]map[string][]unit.Day{}
	for _, s := range sheets {
		for _, p := range s.read.parsed.sheet.Parts {
			course := pl.courses.resolve(onlyCourse(p))
			if course == "" || len(p.Date.ByOrder["dmy"]) != len(p.Date.ByOrder["mdy"]) {
				continue
			}
			if out[course] == nil {
				out[course] = map[string][]unit.Day{}
			}
			for order, days := range p.Date.ByOrder {
				out[course][order] = append(out[course][order], days...)
			}
		}
	}
	return out
}

// weeklyOdds are the odds of the day first that the dates of a course's waiting sheets
// give together, with how many runs these and the known ones are: under one order all fall
// on one weekday, as a weekly run's do with the chance onOneWeekday; under a wrong one each
// after the first would do so by a chance of one in seven. 0 runs where that is so under
// both orders, or under neither.
func weeklyOdds(waiting map[string][]unit.Day, known map[unit.Day]bool) (odds float64, n int) {
	order, n := sheet.OneWeekday(waiting, slices.Collect(maps.Keys(known)))
	if n == 0 {
		return 1, 0
	}
	byChance := math.Pow(7, float64(1-n))
	odds = onOneWeekday / (1 - onOneWeekday) * (1 - byChance) / byChance
	if order == "mdy" {
		odds = 1 / odds
	}
	return odds, n
}

// readingsOf gives a sheet as read under an order of day and month, nil where it can't
// be read so. It is read once for each.
func (pl *Pipeline) readingsOf(s *unsureSheet) func(order string) *parsedSheet {
	by := map[string]*parsedSheet{}
	return func(order string) *parsedSheet {
		if p, ok := by[order]; ok {
			return p
		}
		p, err := pl.parseSheet(s.name, s.read.data, ByHand{Answers: orderAnswer + "=" + order})
		if err != nil {
			p = nil
		}
		by[order] = p
		return p
	}
}

// customOfCourse is the number in place of 1 in Laplace's rule for the sheets of one
// course: two of them agree with the chance (1 + a) / (1 + 2a).
func customOfCourse(proved map[string]map[string]int) float64 {
	pairs := func(n int) float64 { return float64(n) * float64(n-1) / 2 }
	same, all := agree*agreeSeen, agreeSeen
	for _, course := range slices.Sorted(maps.Keys(proved)) {
		n := proved[course]
		if of := pairs(n["dmy"] + n["mdy"]); course != "" && of > 0 {
			w := min(of, pairsOfCourse)
			same += w * (pairs(n["dmy"]) + pairs(n["mdy"])) / of
			all += w
		}
	}
	g := max(.55, same/all)
	return (1 - g) / (2*g - 1)
}

// onlyCourse is the course of all rows of a part, "" where there are several.
func onlyCourse(p *sheet.Part) string {
	if p.Index(sheet.Course) < 0 {
		return p.Course.Value
	}
	only := ""
	if p.Each(func(_ int, cells []string) error {
		course, _, _, _ := p.RunOf(cells)
		if only != "" && course != only {
			return errStop
		}
		only = course
		return nil
	}) != nil {
		return ""
	}
	return only
}

// orderOf is the order of day and month that others say of a part, with what speaks
// loudest for it; "" where they don't say enough.
func orderOf(p *sheet.Part, course string, proved map[string]map[string]int, ofCourse float64, known *knownDays, waiting map[string][]unit.Day, taken map[string]takenDay) (order, why string) {
	total := 0. // log odds of the day first
	loudest := map[bool]float64{}
	words := map[bool]string{}
	add := func(odds float64, say func(order string) string) {
		bits := math.Log(odds)
		total += bits
		if dmy := bits > 0; math.Abs(bits) > loudest[dmy] {
			loudest[dmy], words[dmy] = math.Abs(bits), say(map[bool]string{true: "dmy", false: "mdy"}[dmy])
		}
	}
	sheets := func(n map[string]int, prior float64, where string) {
		if n["dmy"]+n["mdy"] > 0 {
			add((float64(n["dmy"])+prior)/(float64(n["mdy"])+prior), func(order string) string {
				if n[order] == 1 {
					return "as on another sheet " + where
				}
				return fmt.Sprintf("as on %d other sheets %s", n[order], where)
			})
		}
	}
	weekday := func(w int, odds float64, which string) {
		off := func(days []unit.Day) (n int) {
			for _, d := range days {
				if int(d.Weekday()) != w {
					n++
				}
			}
			return n
		}
		if d, m := off(p.Date.ByOrder["dmy"]), off(p.Date.ByOrder["mdy"]); d != m {
			if m < d {
				odds = 1 / odds
			}
			add(odds, func(string) string { return fmt.Sprintf("as it falls on a %s then, like %s", time.Weekday(w), which) })
		}
	}
	here := map[string]int{}
	for o, n := range proved[""] {
		here[o] = n - proved[course][o]
	}
	sheets(here, ofArchive, "here")
	if course != "" {
		sheets(proved[course], ofCourse, "of this course")
	}
	w, share := known.weekdayOf(course)
	weekly, n := 1., 0
	if known.hardlyKnown(course) && len(p.Date.ByOrder["dmy"]) == len(p.Date.ByOrder["mdy"]) {
		weekly, n = weeklyOdds(waiting, known.days[course])
	}
	switch {
	case n > 0:
		add(weekly, func(order string) string {
			return fmt.Sprintf("as then %s of the course that there are fall on a %s", map[bool]string{true: "both runs", false: fmt.Sprintf("all %d runs", n)}[n == 2], p.Date.ByOrder[order][0].Weekday())
		})
	case w >= 0:
		// If the day is right it is on the weekday with the share's chance, else on one
		// of six others; the other reading falls on any.
		weekday(w, max(1, 6*share/(1-share)), "the course's other runs")
	case known.weekdayHere() >= 0:
		weekday(known.weekdayHere(), weekdayHere, "all runs here")
	}
	for _, o := range []string{"dmy", "mdy"} {
		t, ok := taken[o]
		if !ok {
			continue
		}
		odds := takenOdds
		if t.same == (o == "mdy") { // the month first if it is the same run, the day first if not
			odds = 1 / odds
		}
		add(odds, func(string) string {
			if t.same {
				return fmt.Sprintf("as the sheet here of the run of %s holds the same people and times", t.day.Long())
			}
			return fmt.Sprintf("as the run of %s is here already, with other results", t.day.Long())
		})
	}
	switch {
	case total >= math.Log(surelyOrdered):
		return "dmy", words[true]
	case -total >= math.Log(surelyOrdered):
		return "mdy", words[false]
	}
	return "", ""
}

// A reading lies among the runs of a course within nearRuns days of one, and years off
// beyond farOff days: 30-06-24 is of 2024 or of 2030.
const (
	nearRuns = 2 * 366
	farOff   = 3 * 366
)

// onlyNear is the one reading of the date of a sheet that lies among the runs of its
// course where all others lie years off.
func (d *knownDays) onlyNear(parts []*sheet.Part, book *courseBook) (day unit.Day, ok bool) {
	if len(parts) != 1 || len(parts[0].Date.Choices) < 2 || parts[0].Date.ChoiceFrom != nil || strings.HasPrefix(parts[0].Date.From, "column") {
		return 0, false
	}
	runs := d.days[book.resolve(onlyCourse(parts[0]))]
	if len(runs) < heldRuns {
		return 0, false
	}
	for _, c := range parts[0].Date.Choices {
		apart := unit.Day(farOff + 1)
		for r := range runs {
			apart = min(apart, max(c-r, r-c))
		}
		switch {
		case apart > farOff:
		case apart > nearRuns || ok:
			return 0, false
		default:
			day, ok = c, true
		}
	}
	return day, ok
}

// A reading lies in a gap of the runs of a course where there is one within besideRuns days
// before and one after it, on its weekday; another is out of season beyond halfYear days of all
// of them. 17-08-19 is of 2019 between the runs of 10 and 24 August 2019, and not of 19 August
// 2017. Where leastOfForm other dates of the course are written the same way and none the
// other, a run on one side is enough.
const (
	besideRuns  = 14
	halfYear    = 183
	leastOfForm = 3
)

// inGap is the one reading of the date of a sheet that lies in a gap of the runs of its course
// where all others are out of season. form counts the dates that begin with the day, and the
// others.
func (d *knownDays) inGap(parts []*sheet.Part, book *courseBook, form map[bool]int) (day unit.Day, ok bool) {
	if len(parts) != 1 || len(parts[0].Date.Choices) < 2 || parts[0].Date.ChoiceFrom != nil || parts[0].Date.Slip || strings.HasPrefix(parts[0].Date.From, "column") {
		return 0, false
	}
	runs := d.days[book.resolve(onlyCourse(parts[0]))]
	if len(runs) < heldRuns {
		return 0, false
	}
	for _, c := range parts[0].Date.Choices {
		before, after, season := false, false, false
		for r := range runs {
			near := r.Weekday() == c.Weekday() && max(c-r, r-c) <= besideRuns
			before, after = before || near && r < c, after || near && r > c
			season = season || max(c-r, r-c) <= halfYear
		}
		first := slices.Contains(parts[0].Date.ByOrder["dmy"], c)
		custom := form[first] >= leastOfForm && form[!first] == 0
		switch {
		case !season:
		case runs[c] || ok || !(before && after) && !(custom && (before || after)):
			return 0, false
		default:
			day, ok = c, true
		}
	}
	return day, ok
}

// takenDay is a day that a date might be, on which the course has a run already.
type takenDay struct {
	day  unit.Day
	same bool // with the people and times of the sheet, as a new issue of it has
}

// taken looks whether the days that a date might be are those of runs which the archive
// has, and whether these are the sheet's own. A reading is left out where neither is
// plain: half of the sheet's people have the very times there, or hardly anybody has.
// readAs gives the sheet under an order of day and month, nil where it can't be read:
// who ran in which time is the same under both.
func (pl *Pipeline) taken(ctx context.Context, readAs func(order string) *parsedSheet, p *sheet.Part, course string, known *knownDays) (map[string]takenDay, error) {
	out := map[string]takenDay{}
	var lines map[timedPerson]bool
	for _, order := range slices.Sorted(maps.Keys(p.Date.ByOrder)) {
		days := p.Date.ByOrder[order]
		if len(days) != 1 || course == "" || !known.days[course][days[0]] {
			continue
		}
		if lines == nil {
			read := readAs(order)
			if read == nil {
				continue // it is read, and refused, without this
			}
			lines = read.timed(course, days[0])
		}
		there, err := pl.timedThere(ctx, course, days[0])
		if err != nil {
			return nil, err
		}
		same := 0
		for who := range lines {
			if there[who] {
				same++
			}
		}
		if n := len(lines); n >= leastTimed && len(there) >= leastTimed {
			switch {
			case 2*same >= n:
				out[order] = takenDay{days[0], true}
			case 20*same <= n:
				out[order] = takenDay{days[0], false}
			}
		}
	}
	return out, nil
}

// timedPerson is somebody with a time.
type timedPerson struct {
	key    string
	timeMS int32
}

// timed are the people named in full, with their times, of a run on a sheet.
func (p *parsedSheet) timed(course string, day unit.Day) map[timedPerson]bool {
	out := map[timedPerson]bool{}
	for _, q := range p.parts {
		for _, b := range q.lines.batches {
			for i := range b.lines {
				l := &b.lines[i]
				k := q.runs[b.run[i]]
				if key := personKey(l.Name); key != "" && l.TimeMS > 0 && k.course.course == course && k.day == day {
					out[timedPerson{key, l.TimeMS}] = true
				}
			}
		}
	}
	return out
}

// timedThere are those of the runs that the archive has of a course on a day.
func (pl *Pipeline) timedThere(ctx context.Context, course string, day unit.Day) (map[timedPerson]bool, error) {
	out := map[timedPerson]bool{}
	return out, pl.DB.Scan(ctx, fmt.Sprintf(`
		select n.text, l.time_ms
		from record.run run
		join record.course c on c.course_no = run.course_no
		join record.line l on l.run_no = run.run_no
		join record.text n on n.text_no = l.name_no
		where c.course = %s and run.run_date = date '%s' and l.time_ms > 0`, store.Quote(course), day), func(r arrow.Record) error {
		names, times := r.Column(0).(*array.String), r.Column(1).(*array.Int32)
		for i := range int(r.NumRows()) {
			if key := personKey(names.Value(i)); key != "" {
				out[timedPerson{key, times.Value(i)}] = true
			}
		}
		return nil
	})
}

// weekdayOf is the commonest weekday of a course's runs, and what share of the next
// fall on it by Laplace's rule, or that of courses.csv; -1 where it has neither.
func (d *knownDays) weekdayOf(course string) (w int, share float64) {
	if usual, listed := d.listed[course]; listed && usual >= 0 {
		return usual, .99
	}
	runs := len(d.days[course])
	if runs == 0 {
		return -1, 0
	}
	weekdays := d.weekdays(course)
	for i, k := range weekdays {
		if k > weekdays[w] {
			w = i
		}
	}
	return w, float64(weekdays[w]+1) / float64(runs+2)
}

// hardlyKnown says whether neither runs nor a list of courses show a course's weekday.
func (d *knownDays) hardlyKnown(course string) bool {
	usual, listed := d.listed[course]
	return !(listed && usual >= 0) && len(d.days[course]) < heldRuns
}

// heldOn says whether a course is known to be held on a weekday.
func (d *knownDays) heldOn(course string, weekday time.Weekday) bool {
	return !d.hardlyKnown(course) && d.usualWeekday(course) == int(weekday)
}

// weekdayHere is the weekday that all runs of the archive fall on, of at least
// leastRunsHere; -1 where they don't.
func (d *knownDays) weekdayHere() int {
	n, w := 0, -1
	for _, days := range d.days {
		for day := range days {
			if n++; w >= 0 && int(day.Weekday()) != w {
				return -1
			}
			w = int(day.Weekday())
		}
	}
	if n < leastRunsHere {
		return -1
	}
	return w
}

// loadDated loads sheets whose order of day and month was settled, and returns
// those of them that wait for the name of their course now.
func (l *loading) loadDated(ctx context.Context, sheets []*unsureSheet, answers *remembered, unsure *unsureSheets) error {
	var take []*unsureSheet
	var results []readResult
	for _, s := range sheets {
		if l.known[s.read.hash].State != store.Waiting {
			continue // another sheet took its place
		}
		hand := s.read.said(l.hand)
		hand.Answers = joinAnswers(hand.Answers, s.answers)
		p, err := l.pl.parseSheet(s.name, s.read.data, hand)
		if err != nil {
			continue
		}
		take = append(take, s)
		results = append(results, readResult{data: s.read.data, hash: s.read.hash, left: s.read.left, parsed: p, course: s.answers, hand: s.read.hand})
	}
	parsed := make([]*parsedSheet, len(results))
	for i := range results {
		parsed[i] = results[i].parsed
		parsed[i].byHand = results[i].said(l.hand).Course != ""
	}
	l.pl.askMisspelt(parsed)
	again, err := l.loadAgain(ctx, take, results, answers)
	for i, s := range take {
		if u := unsureOf(s.name, again[i]); u != nil {
			u.report, u.again, u.answers = s.report, s.again, s.answers
			*unsure = append(*unsure, u)
		}
	}
	return err
}
