package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// option is a possible day with the evidence for it.
type option struct {
	day   unit.Day
	order string
}

func (rs *runSettler) date(p *Part, evs []evidence) {
	p.runs.dateCol = p.Index(Date)
	p.runs.dates.date1904 = p.rules.date1904
	p.runs.dates.weekday = -1
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		p.runs.dates.weekday = w
	}
	if rs.o.Date != "" && !rs.ownDay[p] {
		if d, err := unit.ParseDay(rs.o.Date); err == nil {
			p.Date = FoundDate{Day: d, Settled: true, Text: rs.o.Date, From: "given by hand"}
			p.runs.dateCol = -1
			p.runs.day, p.runs.dayOK = d, true
			return
		}
		p.problem(rs.sheet.Name, 0, -1, place.Waits, "date-unreadable", rs.o.Date, "a date like 2026-01-03", "Give the date as year, month and day: --date 2026-01-03.")
		return
	}
	if p.runs.dateCol >= 0 {
		rs.columnDates(p, evs)
		if p.Date.From != "" {
			return
		}
		p.runs.dateCol = -1
	}
	rs.oneDate(p, evs)
	if !p.Date.OK() && rs.o.DateBefore != "" {
		switch d, err := unit.ParseDay(rs.o.DateBefore); {
		case err != nil:
		case p.Date.From == "":
			p.Date = FoundDate{Day: d, Settled: true, From: "other sheets", Why: rs.o.DateWhy}
		case slices.Contains(p.Date.Choices, d):
			p.Date = FoundDate{Day: d, Settled: true, Text: p.Date.Text, From: p.Date.From, Why: rs.o.DateWhy}
		}
	}
	p.runs.day, p.runs.dayOK = p.Date.Day, p.Date.Settled
}

var deadlineWords = set("before by until till next every each vor bis avant jusqu antes prima voor przed fore for innan")

// givenForOne finds the parts that keep the date they tell themselves though one was given by
// hand: those of other days, where the parts tell several days and the given one is the day of
// some of them, or of those that tell none. It answers what was asked of these alone.
func (rs *runSettler) givenForOne(parts []*Part, evs [][]evidence) {
	given, err := unit.ParseDay(rs.o.Date)
	if err != nil || len(parts) < 3 {
		return
	}
	_, month, day := given.Date()
	days, meant := map[[2]int]bool{}, false
	other := map[*Part]bool{}
	for i, p := range parts {
		told, fits := false, false
		for _, e := range evs[i] {
			if e.strength < 3 {
				continue
			}
			told = true
			for _, r := range e.readings {
				if r.m == int(month) && r.d == day && (r.y == 0 || r.day() == given) {
					fits = true
				}
			}
			if len(e.readings) == 1 {
				days[[2]int{e.readings[0].m, e.readings[0].d}] = true
			}
		}
		if told && !fits {
			other[p] = true
		} else {
			meant = true
		}
	}
	if meant && len(days) > 1 {
		rs.ownDay = other
	}
}

// oneDate settles a date that holds for the whole part.
func (rs *runSettler) oneDate(p *Part, evs []evidence) {
	// The strongest level that says anything decides; a label beats position.
	var top []evidence
	ofRun := rs.ofTheRun(p, evs)
	for _, level := range []int{3, 2, 1} {
		for _, e := range ofRun {
			if e.strength == level {
				top = append(top, e)
			}
		}
		if len(top) > 0 {
			break
		}
	}
	weekday := rs.namedWeekday(p)
	if len(top) == 0 {
		rs.dayOfWeek(p, rs.wantedWeekday(p, weekday))
		return
	}
	for _, e := range top {
		if e.labelled {
			top = []evidence{e}
			break
		}
	}
	type answer struct {
		e   evidence
		opt []option
		why string
	}
	var answers []answer
	for _, e := range top {
		opt, why := rs.options(p, e, evs, weekday)
		answers = append(answers, answer{e, opt, why})
	}
	// Several dates in the titles: those that agree with another place win.
	best := answers[0]
	if len(answers) > 1 {
		days := map[unit.Day]bool{}
		for _, a := range answers {
			if len(a.opt) == 1 {
				days[a.opt[0].day] = true
			}
		}
		if len(days) == 1 {
			for _, a := range answers {
				if len(a.opt) == 1 {
					best = a
					break
				}
			}
		} else {
			found := false
			for _, a := range answers {
				for _, e := range evs {
					if e.strength < a.e.strength && len(a.opt) == 1 && has(e.readings, a.opt[0].day) {
						best, found = a, true
						best.why = "it is also in the " + e.from
						break
					}
				}
				if found {
					break
				}
			}
			if !found {
				var all []option
				for _, a := range answers {
					for _, o := range a.opt {
						if !hasOption(all, o.day) {
							all = append(all, o)
						}
					}
				}
				if fit := fitWeekday(all, rs.wantedWeekday(p, weekday)); len(fit) == 1 {
					for _, a := range answers {
						if len(a.opt) > 0 && hasOption(a.opt, fit[0].day) {
							best = a
							best.opt, best.why = fit, "it falls on the right weekday"
							break
						}
					}
				} else {
					best.opt = all
				}
			}
		}
	}
	p.Date = FoundDate{Text: best.e.text, From: best.e.from, Why: best.why}
	switch len(best.opt) {
	case 1:
		p.Date.Day, p.Date.Settled = best.opt[0].day, true
	default:
		for _, o := range best.opt {
			p.Date.Choices = append(p.Date.Choices, o.day)
			if o.order == "dmy" || o.order == "mdy" {
				if p.Date.ByOrder == nil {
					p.Date.ByOrder = map[string][]unit.Day{}
				}
				p.Date.ByOrder[o.order] = append(p.Date.ByOrder[o.order], o.day)
			}
		}
	}
	if p.Date.Settled {
		if best.e.weekday >= 0 {
			weekday = best.e.weekday
		}
		if rs.askOtherWeek(p, ofRun) {
			return
		}
		if best.e.strength > 2 && rs.askCopied(p, weekday, evs) {
			return
		}
		if rs.askWeekday(p, best.e.weekday, evs) {
			return
		}
		if best.e.weekday >= 0 && int(p.Date.Day.Weekday()) != best.e.weekday {
			p.problem(rs.sheet.Name, 0, -1, place.Look, "weekday-differs", best.e.text, fmt.Sprintf("%s is a %s", p.Date.Day.Long(), p.Date.Day.Weekday()), "Check the date of the run; correct it with --date if the weekday is right.")
		}
		if best.e.weekday < 0 && weekday >= 0 && best.e.strength == 2 && int(p.Date.Day.Weekday()) != weekday && !saysWeekday(p.Course.Value, weekday) {
			p.problem(rs.sheet.Name, 0, -1, place.Look, "weekday-differs", weekdayName(weekday), fmt.Sprintf("%s is a %s", p.Date.Day.Long(), p.Date.Day.Weekday()), "The sheet names another weekday than that of the date in the file's name. Check the date of the run; if it is wrong, load the sheet with --date.")
		}
		if rs.dateInProse(p, best.e, evs) {
			p.problem(rs.sheet.Name, 0, -1, place.Look, "date-in-a-sentence", shorten(best.e.line, 80), "a date that is said to be the run's", fmt.Sprintf("The only date stands in this line, and %s is taken as the day of the run. If the line speaks of another day, load the sheet with the right one: --date YEAR-MONTH-DAY.", p.Date.Day.Long()))
		}
		for _, e := range evs {
			if e.strength < best.e.strength && e.strength == 2 && e.settled() && e.readings[0].day() != p.Date.Day {
				p.problem(rs.sheet.Name, 0, -1, place.Look, "dates-differ", e.text, fmt.Sprintf("%s as in the %s", p.Date.Day.Long(), best.e.from), fmt.Sprintf("The sheet is taken as the run of %s. If the %s is right, load it with --date %s.", p.Date.Day.Long(), e.from, e.readings[0].day()))
				break
			}
		}
	}
}

// namedWeekday is the weekday that titles, tab or file name, -1 for none: "Saturday run" in a short title
// says it, prose below it ("corrections before Wednesday") does not.
func (rs *runSettler) namedWeekday(p *Part) int {
	letter := isLetterHead(p.Titles)
	for _, t := range append(append([]string(nil), p.Titles...), p.Tab, rs.sheet.Name) {
		if len(strings.Fields(t)) > 7 && len(findDates(t)) == 0 || letter && saysSent(t) {
			continue
		}
		words := strings.Fields(fold(strings.NewReplacer("_", " ", "-", " ", "/", " ").Replace(t)))
		for i, w := range words {
			if d, ok := longWeekday(w); ok && (i == 0 || !deadlineWords[words[i-1]]) {
				return d
			}
		}
	}
	return -1
}

// dayOfWeek settles the date of a part whose titles say but the week of the run, by its last day or its
// first, "Week ending 16 January 2026", and whose weekday is known.
func (rs *runSettler) dayOfWeek(p *Part, weekday int) {
	if weekday < 0 {
		return
	}
	for i, t := range p.Titles {
		for _, f := range scanDates(t, false) {
			first, ok := weekBefore(f, t)
			if !ok {
				continue
			}
			if f.weekday >= 0 {
				return // the weekday on which the week ends may be all that is named
			}
			day := first + unit.Day((weekday-int(first.Weekday())+7)%7)
			if p.Date.Settled && p.Date.Day != day {
				p.Date = FoundDate{}
				return
			}
			p.Date = FoundDate{Day: day, Settled: true, Text: t, From: p.titleAt(i), Why: "the " + weekdayName(weekday) + " of that week"}
		}
	}
}

// weekBefore is the first day of the week that the words before a date say it ends or begins.
func weekBefore(f foundDate, title string) (first unit.Day, ok bool) {
	if !f.settled() {
		return 0, false
	}
	switch before := fold(title[:f.from]); {
	case endsWithAny(before, weekEnding):
		return f.readings[0].day() - 6, true
	case endsWithAny(before, weekBeginning):
		return f.readings[0].day(), true
	}
	return 0, false
}

// Words before the last and the first day of a week, folded; common practice, no source.
var (
	weekEnding    = []string{"w / e", "week ending", "week to"}
	weekBeginning = []string{"w / c", "week commencing", "week beginning", "week of", "woche vom", "semaine du"}
)

// weekdayName is the name of a weekday, 0 for Sunday.
func weekdayName(weekday int) string { return time.Weekday(weekday).String() }

// saysWeekday says whether a course is called after a weekday.
func saysWeekday(slug string, weekday int) bool {
	return slices.ContainsFunc(strings.Split(slug, "-"), func(w string) bool {
		d, ok := longWeekday(w)
		return ok && d == weekday
	})
}

func has(rs []reading, d unit.Day) bool {
	for _, r := range rs {
		if r.y != 0 && r.day() == d {
			return true
		}
	}
	return false
}

func hasOption(os []option, d unit.Day) bool {
	for _, o := range os {
		if o.day == d {
			return true
		}
	}
	return false
}

func fitWeekday(os []option, weekday int) (fit []option) {
	for _, o := range os {
		if weekday >= 0 && int(o.day.Weekday()) == weekday {
			fit = append(fit, o)
		}
	}
	return fit
}

// soonSent is within how many days the results of a run are sent round.
const soonSent = 14

// letterSent is the day on which the letter with a list was sent, where its head says it in one way only.
func (rs *runSettler) letterSent(p *Part) (unit.Day, bool) {
	if !isLetterHead(p.Titles) {
		return 0, false
	}
	for _, t := range p.Titles {
		if !saysSent(t) {
			continue
		}
		if on := findDates(t); len(on) == 1 && on[0].settled() {
			return on[0].readings[0].day(), true
		}
	}
	return 0, false
}

func (rs *runSettler) wantedWeekday(p *Part, named int) int {
	if named >= 0 {
		return named
	}
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		return w
	}
	return -1
}

// options lists the days that one piece of evidence allows, narrowed step by
// step: weekday beside it, other places, the way other dates of the sheet are
// written, the course's weekday, the configured order.
func (rs *runSettler) options(p *Part, e evidence, evs []evidence, weekday int) (opt []option, why string) {
	years := distinctYears(rs.years)
	if own := rs.ownYears(p); len(own) > 0 && len(own) < len(years) {
		years = own
	}
	for _, o := range evs {
		if rs.o.YearSaid != "" {
			break
		}
		// Of a date that may be of several years, 280824, the one that is said elsewhere is meant.
		said := slices.ContainsFunc(o.readings, func(r reading) bool { return slices.Contains(years, r.y) })
		for _, r := range o.readings {
			if r.y != 0 && !said {
				years = append(years, r.y)
			}
		}
	}
	if years = distinctYears(years); len(years) == 0 {
		for _, t := range append(slices.Clone(rs.sheet.facts), rs.sheet.cover...) {
			years = append(years, yearsIn(t)...) // "Season 2026" on a tab of its own
		}
		years = distinctYears(years)
	}
	noYear := false
	for _, r := range e.readings {
		if r.y != 0 {
			opt = append(opt, option{r.day(), r.order})
			continue
		}
		noYear = true
		for _, y := range years {
			if validDate(y, r.m, r.d) {
				opt = append(opt, option{unit.NewDay(y, r.m, r.d), r.order})
			}
		}
	}
	if noYear {
		why = "the year is from elsewhere on the sheet or its name"
	}
	narrow := func(reason string, ok func(option) bool) {
		if len(opt) < 2 {
			return
		}
		var fit []option
		for _, o := range opt {
			if ok(o) {
				fit = append(fit, o)
			}
		}
		if len(fit) > 0 && len(fit) < len(opt) {
			opt, why = fit, reason
		}
	}
	if from := rs.seasonFrom(p); noYear && from > 0 {
		narrow(fmt.Sprintf("in the season %d/%02d, January to March are of its second year, and September to December of its first", from, (from+1)%100), func(o option) bool {
			y, m, _ := o.day.Date()
			return m <= 3 && y == from+1 || m >= 9 && y == from || m > 3 && m < 9
		})
	}
	if sent, ok := rs.letterSent(p); ok {
		narrow("the letter with it was sent before the other day", func(o option) bool { return o.day <= sent })
		narrow("the letter with it was sent soon after", func(o option) bool { return o.day <= sent && sent-o.day <= soonSent })
	}
	if e.weekday >= 0 {
		narrow("the weekday beside it", func(o option) bool { return int(o.day.Weekday()) == e.weekday })
	}
	for _, other := range evs {
		if other.from != e.from && other.settled() {
			narrow(fmt.Sprintf("the %s says %s", other.from, other.text), func(o option) bool { return has(other.readings, o.day) })
		}
	}
	if e.sep == '.' && rs.dotted != "" {
		narrow(fmt.Sprintf("%q can only be day first", rs.dotted), func(o option) bool { return o.order == "dmy" })
	}
	if w := foreignWeekday(e); w != "" {
		narrow(fmt.Sprintf("in the language of %q the day comes first", w), func(o option) bool { return o.order == "dmy" || o.order == "ymd" && yearFirst(e.readings) })
	}
	if rs.order != "" {
		narrow(rs.orderBy, func(o option) bool { return o.order == rs.order })
	}
	if month, why := rs.listopad(p, e); month > 0 {
		narrow(why, func(o option) bool { _, m, _ := o.day.Date(); return m == month })
	}
	if weekday >= 0 {
		narrow("the weekday in the title", func(o option) bool { return int(o.day.Weekday()) == weekday })
	}
	if w, ok := rs.book.weekday[p.Course.Value]; ok {
		narrow("the course's usual weekday", func(o option) bool { return int(o.day.Weekday()) == w })
	}
	latest := yearFirst(e.readings)
	if rs.language != "" {
		narrow(rs.language, func(o option) bool { return o.order == "dmy" || o.order == "ymd" && latest })
	}
	if rs.o.DateOrder != "" {
		narrow(rs.o.orderWhy(), func(o option) bool { return o.order == rs.o.DateOrder || o.order == "ymd" && latest })
	}
	return opt, why
}

// seasonYears are two years one after the other, as a season is called after them: 2025-26, 2025/2026.
var seasonYears = regexp.MustCompile(`(?:^|\D)((?:19|20)\d\d) ?[-/–_] ?((?:19|20)?\d\d)(?:\D|$)`)

// seasonFrom is the first year of the season that a sheet's name, its tab or its titles say, 0 where they say none
// or two.
func (rs *runSettler) seasonFrom(p *Part) (from int) {
	texts := append([]string{rs.sheet.Name, p.Tab}, p.Titles...)
	for _, t := range append(texts, rs.sheet.facts...) {
		for _, m := range seasonYears.FindAllStringSubmatch(t, -1) {
			a, _ := strconv.Atoi(m[1])
			b, _ := strconv.Atoi(m[2][len(m[2])-2:])
			if (a+1)%100 != b {
				continue
			}
			if from != 0 && from != a {
				return 0
			}
			from = a
		}
	}
	return from
}

// ownYears are the years that a tab and the titles of a part on it name, where its tab names
// one: of a workbook with a tab a year the other tabs' years are of other runs.
func (rs *runSettler) ownYears(p *Part) (years []int) {
	if p.Tab == "" || rs.o.YearSaid != "" {
		return nil
	}
	if years = yearsIn(p.Tab); len(years) == 0 {
		return nil
	}
	for _, t := range p.Titles {
		years = append(years, yearsIn(t)...)
	}
	return distinctYears(years)
}

// foreignWeekday is the weekday beside a date where it is none of English, "Samstag
// 05/09/2026": of the languages of Europe only English begins with the month (day_first.go).
// "" for none.
func foreignWeekday(e evidence) string {
	if e.weekday < 0 {
		return ""
	}
	for _, w := range strings.Fields(e.text) {
		f := strings.Trim(fold(w), ".")
		if _, ok := longWeekday(f); ok && len([]rune(f)) > 3 && !englishDays[f] {
			return strings.Trim(w, ".,")
		}
	}
	return ""
}

var englishDays = set("monday tuesday wednesday thursday friday saturday sunday tues weds thur thurs mond frid satu satur sund")

// yearFirst says whether a date in figures of two is of a year long past unless
// the year comes first: 24-11-09 is 24 November 2009 or 9 November 2024.
func yearFirst(rs []reading) bool {
	first, other := 0, 0
	for _, r := range rs {
		if r.order == "ymd" {
			first = r.y
		} else {
			other = max(other, r.y)
		}
	}
	return first > other+5
}

func distinctYears(ys []int) []int {
	sort.Ints(ys)
	out := ys[:0:0]
	for i, y := range ys {
		if i == 0 || y != ys[i-1] {
			out = append(out, y)
		}
	}
	return out
}
