package sheet

import (
	"math/bits"
	"slices"
	"strings"

	"lapwing/pipeline/unit"
)

// maxStarts is how many runs may start on one course on one day.
const maxStarts = 4

// agree uses the other tabs of a workbook: weekly runs share a weekday.
func (rs *runSettler) agree(parts []*Part) {
	if len(parts) < 3 {
		return
	}
	weekdays := map[int]int{}
	for _, p := range parts {
		if p.Date.Settled {
			weekdays[int(p.Date.Day.Weekday())]++
		}
	}
	if len(weekdays) == 0 {
		if w, ok := onlyWeekday(parts); ok {
			weekdays[w] = len(parts)
		}
	}
	if len(weekdays) != 1 {
		return
	}
	for _, p := range parts {
		if p.Date.Settled || len(p.Date.Choices) < 2 {
			continue
		}
		var fit []unit.Day
		for _, c := range p.Date.Choices {
			if weekdays[int(c.Weekday())] > 0 {
				fit = append(fit, c)
			}
		}
		if len(fit) == 1 {
			p.Date.Day, p.Date.Settled, p.Date.Choices = fit[0], true, nil
			p.Date.Why = "the runs of the other tabs are on the same weekday"
			p.runs.day, p.runs.dayOK = fit[0], true
		}
	}
}

// onlyWeekday is the one weekday on which each of several tabs has a day that its date
// may be: of 12.10., 18.01. and 26.04. in a workbook called 2024-2025 all Saturdays lie in
// one season.
func onlyWeekday(parts []*Part) (weekday int, ok bool) {
	every := 1<<7 - 1
	for _, p := range parts {
		on := 0
		for _, c := range p.Date.Choices {
			on |= 1 << c.Weekday()
		}
		every &= on
	}
	return bits.TrailingZeros(uint(every)), bits.OnesCount(uint(every)) == 1
}

// share gives a tab that names no course or date those of the other tabs, where
// these all say the same: times on one tab and names on the next.
func (rs *runSettler) share(parts []*Part) {
	var course Found
	var date FoundDate
	courses, dates := map[string]bool{}, map[unit.Day]bool{}
	for _, p := range parts {
		if p.Course.Value != "" {
			courses[p.Course.Value] = true
			course = p.Course
		}
		if p.Date.Settled {
			dates[p.Date.Day] = true
			date = p.Date
		}
	}
	if f := rs.sheet.facts; len(f) > 0 && (len(courses) == 0 || rs.onlyFileSays(parts)) {
		said := map[string]Found{}
		for _, t := range f {
			for _, w := range courseWords(t, rs.lex, rs.book) {
				if w.weight >= 90 {
					said[w.slug] = Found{Value: w.slug, Text: t}
				}
			}
		}
		if len(said) == 1 {
			clear(courses)
			for slug, found := range said {
				course, courses[slug] = found, true
			}
			for _, p := range parts {
				if p.runs.courseCol < 0 {
					p.Course = Found{} // what the name of the file may mean counts less
				}
			}
		}
	}
	if fileOnly := len(courses) > 0 && len(rs.sheet.cover) > 0 && (rs.onlyFileSays(parts) || len(parts) > 1 && len(dates) == 0 && onlyTabsSay(parts)); fileOnly || len(courses) == 0 {
		best := courseWord{}
		for _, t := range rs.sheet.cover {
			for _, w := range courseWords(t, rs.lex, rs.book) {
				if w.why == leftOfTitle && isDayRun(w.text) {
					w.weight -= ofClubOnly // "zaterdagloop", below the name of the place
				}
				if w.weight > best.weight {
					best = w
				}
			}
		}
		if fileOnly && best.weight >= bareTitle-10 {
			clear(courses)
			for _, p := range parts {
				p.Course = Found{} // what the name of the file may mean counts less
			}
		}
		if best.slug != "" && len(courses) == 0 {
			course, courses[best.slug] = Found{Value: best.slug, Text: best.text}, true
		}
	}
	if f := append(slices.Clone(rs.sheet.facts), rs.sheet.cover...); len(f) > 0 && len(dates) == 0 {
		p := &Part{Titles: f}
		p.Course = course
		var evs []evidence
		for _, t := range f {
			rs.years = append(rs.years, yearsIn(t)...)
			evs = append(evs, titleDates(t, "another tab", rs.lex, true)...)
		}
		rs.oneDate(p, evs)
		if date = p.Date; date.Settled {
			dates[date.Day] = true
		}
	}
	rs.shareHalves(parts)
	rs.shareTitle(parts)
	rs.shareTabs(parts)
	for _, p := range parts {
		if !p.Course.OK() && len(courses) == 1 {
			p.Course = Found{Value: course.Value, Text: course.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.course = course.Value
		}
		if !p.Date.OK() && p.Date.From == "" && len(dates) == 1 && !p.ofOtherDay(parts) {
			p.Date = FoundDate{Day: date.Day, Settled: true, Text: date.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.day, p.runs.dayOK = date.Day, true
		}
	}
	if len(dates) == 0 {
		shareUnclear(parts)
	}
}

// shareUnclear gives tabs that say no date the one of another tab of which only the
// order of day and month is open, so that one answer settles both.
func shareUnclear(parts []*Part) {
	var unclear *Part
	for _, p := range parts {
		if p.Date.OK() || p.Date.ByOrder != nil && unclear != nil || p.Date.ByOrder == nil && p.Date.From != "" {
			return
		}
		if p.Date.ByOrder != nil {
			unclear = p
		}
	}
	if unclear == nil {
		return
	}
	for _, p := range parts {
		if p != unclear {
			p.Date = unclear.Date
			p.Date.From, p.Date.Why = "another tab", "this tab says nothing of it"
		}
	}
}

// onlyFileSays says whether nothing but the name of the file, or of a folder, says
// which course all tabs are of, and not in the form <course>_<date>.
func (rs *runSettler) onlyFileSays(parts []*Part) bool {
	for _, p := range parts {
		if p.runs.courseCol >= 0 || p.Course.Value != "" && !fromPath(p.Course.From) || strings.HasSuffix(p.Course.Why, "a known course") {
			return false
		}
	}
	return !runFile.MatchString(baseName(rs.sheet.Name))
}

// onlyTabsSay says whether the courses of tabs are but their names, a word for the finish perhaps.
func onlyTabsSay(parts []*Part) bool {
	return !slices.ContainsFunc(parts, func(p *Part) bool {
		return p.Course.Value != "" && p.Course.From != "tab name" && !fromPath(p.Course.From)
	})
}

// shareTabs gives the one tab whose title seems to name the course, the club's name perhaps,
// that of its tab, where the other tabs are called after courses of their own.
func (rs *runSettler) shareTabs(parts []*Part) {
	tabs := map[string]bool{}
	var title *Part
	for _, p := range parts {
		switch {
		case p.runs.courseCol >= 0:
			return
		case p.Course.From == "tab name" && !tabs[p.Course.Value]:
			tabs[p.Course.Value] = true
		case strings.HasPrefix(p.Course.From, "title") && p.Course.Why == leftOfTitle && title == nil:
			title = p
		default:
			return
		}
	}
	if title == nil || len(tabs) < 2 || tabs[title.Course.Value] {
		return
	}
	if name, slug := rs.courseOfTab(title); slug != "" && !tabs[slug] {
		title.Course = Found{Value: slug, Text: name, From: "tab name", Why: "the other tabs are called after their courses"}
		title.runs.course = slug
	}
}

// shareTitle gives tabs without a title, and without a date of their own or called after their
// day, which would take the name of the file for their course, the course that the titles of
// the other tabs say.
func (rs *runSettler) shareTitle(parts []*Part) {
	said := map[string]Found{}
	for _, p := range parts {
		if strings.HasPrefix(p.Course.From, "title") && p.Course.Value != "" {
			said[p.Course.Value] = p.Course
		}
	}
	if len(said) != 1 || runFile.MatchString(baseName(rs.sheet.Name)) {
		return
	}
	for _, p := range parts {
		if p.runs.courseCol >= 0 || p.Date.OK() && p.Date.From != "tab name" || !fromPath(p.Course.From) || strings.HasSuffix(p.Course.Why, "a known course") {
			continue
		}
		for _, course := range said {
			p.Course = Found{Value: course.Value, Text: course.Text, From: "another tab", Why: "this tab says nothing of it"}
			p.runs.course = course.Value
		}
	}
}

// fromPath says whether a fact is from the name of the file or of a folder.
func fromPath(from string) bool { return from == "file name" || from == "folder name" }

// shareHalves gives a tab of names the run of the tab of times beside it, or the
// other way round, where only one of the two has a title and the other would
// take the name of the file, or of its tab, "Tokens", for it.
func (rs *runSettler) shareHalves(parts []*Part) {
	if len(parts) != 2 || parts[0].Kind == parts[1].Kind || parts[0].Kind == "full" || parts[1].Kind == "full" {
		return
	}
	for i, p := range parts {
		other := parts[1-i]
		if strings.HasPrefix(other.Date.From, "title") && other.Date.Settled && fromPath(p.Date.From) && (p.Date.Settled || slices.Contains(p.Date.Choices, other.Date.Day)) {
			p.Date = FoundDate{Day: other.Date.Day, Settled: true, Text: other.Date.Text, From: "tab " + other.Tab, Why: "the other half of this run"}
			p.runs.day, p.runs.dayOK = p.Date.Day, true
		}
		if strings.HasPrefix(other.Course.From, "title") && other.Course.Value != "" && p.runs.courseCol < 0 && (fromPath(p.Course.From) || p.Course.From == "tab name" && p.Course.Why != "a known course") {
			p.Course = Found{Value: other.Course.Value, Text: other.Course.Text, From: "tab " + other.Tab, Why: "the other half of this run"}
			p.runs.course = p.Course.Value
		}
		if other.Course.From == "file name" && other.Date.Settled && p.Date.Settled && other.Date.Day == p.Date.Day && p.runs.courseCol < 0 && p.Course.From == "tab name" && p.Course.Why != "a known course" {
			p.Course = other.Course // the tab is called after the half that it has
			p.runs.course = p.Course.Value
		}
	}
}

// ofOtherDay says whether a list that gives no day is of another than one that does: a fifth
// of the people of the smaller, and two at least, have other times on the other.
func (p *Part) ofOtherDay(parts []*Part) bool {
	if p.Kind != "full" && p.Kind != "excerpt" {
		return false
	}
	var own map[string]string
	for _, q := range parts {
		if q == p || !q.Date.Settled || q.Kind != "full" && q.Kind != "excerpt" {
			continue
		}
		if own == nil {
			own = p.timesByName()
		}
		other, others := 0, q.timesByName()
		for name, clock := range others {
			if t, ok := own[name]; ok && t != clock {
				other++
			}
		}
		if other >= 2 && 5*other >= min(len(own), len(others)) {
			return true
		}
	}
	return false
}

// timesByName are the digits of the times of the people on a list, by their folded names; of
// those who stand on it twice, and those without a time, nothing.
func (p *Part) timesByName() map[string]string {
	nameOf, clock := p.fullNames(), p.Index(Time)
	times := map[string]string{}
	p.Each(func(_ int, cells []string) error {
		name := anyOrder(nameOf(cells))
		switch t := clockDigits(cellAt(cells, clock)); {
		case name == "" || t == "":
		case times[name] != "" && times[name] != t:
			times[name] = "twice"
		default:
			times[name] = t
		}
		return nil
	}) // the function returns no error
	for name, t := range times {
		if t == "twice" {
			delete(times, name)
		}
	}
	return times
}
