package reports

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"lapwing/pipeline/insight/standing"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// unseen is what the data can't see; it stands first on every card.
const unseen = "These figures know only the sheets held here: not runs elsewhere, training, injuries, illness or how hard anybody tried. How hard is guessed from the times. Most people do not run flat out every week, so a slower time is no sign of anything by itself."

// splitsCaution stands beside every table of splits.
const splitsCaution = "Arithmetic for an even pace, not a prescription. Stop for pain, dizziness or illness; ask a doctor first if in doubt; local rules and qualified coaches come first."

// sections builds the card from the top down. For publication, what compares
// or judges is left out for anybody who may be under 18, and so are the
// guesses at effort for everybody.
func (c *Card) sections(publish bool) []section {
	d := c.standingRows
	out := []section{{title: "What these figures can't see", paras: []string{unseen}}, d.summary()}
	if len(d.results) == 0 {
		return out
	}
	judged := !d.protected
	if judged {
		out = append(out, d.formSection(publish))
	}
	if judged && len(d.chartPoints()) >= 3 {
		out = append(out, section{title: "The times so far", chart: true})
	}
	if judged || !publish {
		out = append(out, d.history(publish))
	}
	if !judged {
		text := "For anybody who may be under 18 no form, trend, ranking, target or split is worked out"
		if publish {
			text += ", and single runs are not listed"
		}
		return append(out, section{title: "Under 18", paras: []string{text + "."}})
	}
	if !publish || !d.smallGroup() {
		if s, ok := d.standingSection(); ok {
			out = append(out, s)
		}
		if s, ok := d.aheadSection(); ok {
			out = append(out, s)
		}
	}
	if s, ok := d.courseSection(); ok {
		out = append(out, s)
	}
	if s, ok := d.splitsSection(); ok {
		out = append(out, s)
	}
	return out
}

// summary is who, how often, how fast.
func (d *standingRows) summary() section {
	runs, pbs := 0, 0
	var first, last unit.Day
	var streak, bestStreak int32
	for i, r := range d.results {
		if r.countsRun {
			if runs++; runs == 1 {
				first = r.day
			}
			last, streak = r.day, r.streak
		}
		if r.pb {
			pbs++
		}
		bestStreak = max(bestStreak, d.results[i].pbStreak)
	}
	s := section{title: "In short"}
	if runs == 0 {
		s.paras = []string{"No counted finish in the sheets held here."}
		return s
	}
	total := runs
	if n := d.results[len(d.results)-1].total; n != nil && int(*n) > runs {
		total = int(*n)
	}
	text := fmt.Sprintf("%s, the first in these sheets on %s, the last on %s.", upperFirst(spelt(total, "run", "runs")),
		first.Long(), last.Long())
	if pbs > 0 {
		text += fmt.Sprintf(" %s", upperFirst(spelt(pbs, "personal best", "personal bests")))
		switch {
		case bestStreak > 1 && int(bestStreak) == pbs:
			text += ", all in a row"
		case bestStreak > 1:
			text += fmt.Sprintf(", at most %d in a row", bestStreak)
		}
		text += "."
	}
	if streak > 1 {
		text += fmt.Sprintf(" %s in a row with a run, up to the last one.", upperFirst(spelt(int(streak), "week", "weeks")))
	}
	s.paras = []string{text}
	if !d.protected {
		s.paras = append(s.paras, d.bestsInWords()...)
	}
	t := &table.Table{Columns: []table.Column{{Head: "Distance"}, {Head: "Best", Kind: table.Clock}, {Head: "On", Kind: table.Day},
		{Head: "This season", Kind: table.Clock}, {Head: "Timed runs", Kind: table.Whole}, {Head: "Best run at"}}}
	for _, dist := range d.distances() {
		best := d.bestAt(dist)
		var on unit.Day
		var course string
		var season *int32
		n := 0
		for i := range d.results {
			r := &d.results[i]
			if r.distance != dist || !r.countsTime || r.timeS == nil {
				continue
			}
			if n++; course == "" && *r.timeS == best {
				on, course = r.day, d.courseName(r.course)
			}
			if r.day >= d.from && (season == nil || *r.timeS < *season) {
				season = r.timeS
			}
		}
		t.Add(nil, table.Words(distance(dist)), table.Number(best), table.On(on), table.Maybe(season), table.Number(n), table.Words(course))
	}
	if len(t.Rows) > 0 {
		s.table = t
		s.paras = append(s.paras, "This season: since "+d.from.Long()+".")
	}
	return s
}

// mostBests is how many personal bests a card lists.
const mostBests = 8

// bestsInWords lists the personal bests at the usual distance, and names the
// best run allowing for course and day.
func (d *standingRows) bestsInWords() (out []string) {
	dist := d.usualDistance()
	var bests []string
	var adjusted *ownRow
	for i := range d.results {
		r := &d.results[i]
		if !r.countsTime || r.timeS == nil || r.distance != dist {
			continue
		}
		if r.pb {
			bests = append(bests, unit.Clock(*r.timeS)+" on "+shortDay(r.day))
		}
		if r.adjusted != nil && (adjusted == nil || *r.adjusted < *adjusted.adjusted) {
			adjusted = r
		}
	}
	if n := len(bests); n > 0 {
		s := fmt.Sprintf("Personal bests over %s in these sheets: ", distance(dist))
		if n > mostBests {
			s = fmt.Sprintf("The last %d personal bests over %s: ", mostBests, distance(dist))
			bests = bests[n-mostBests:]
		}
		out = append(out, s+strings.Join(bests, ", ")+".")
	}
	if adjusted != nil {
		out = append(out, fmt.Sprintf("The best run allowing for course and day: %s at %s on %s, worth %s on an average course and day.",
			unit.Clock(*adjusted.timeS), d.courseName(adjusted.course), shortDay(adjusted.day), unit.Clock(ceilS(adjusted.adjusted))))
	}
	return out
}

// distances gives the distances with a timed result, shortest first.
func (d *standingRows) distances() []int32 {
	seen := map[int32]bool{}
	var out []int32
	for _, r := range d.results {
		if r.countsTime && r.timeS != nil && r.distance > 0 && !seen[r.distance] {
			seen[r.distance] = true
			out = append(out, r.distance)
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i] < out[j] })
	return out
}

func (d *standingRows) formSection(publish bool) section {
	s := section{title: "Form", paras: []string{}}
	if d.formS != nil && d.formLow != nil && d.formHigh != nil {
		s.paras = append(s.paras, fmt.Sprintf("A good effort over 5 km on an average course and day: about %s (likely %s to %s, nine times in ten).",
			clockOf(*d.formS), clockOf(*d.formLow), clockOf(*d.formHigh)))
	} else {
		s.paras = append(s.paras, "Form is not shown: too few runs, or the last one is too long ago.")
	}
	s.paras = append(s.paras, d.trend())
	if l := d.longView(); l != "" {
		s.paras = append(s.paras, l)
	}
	if t := d.gradeTrend(); t != "" {
		s.paras = append(s.paras, t)
	}
	if e := d.efforts(); e != "" && !publish {
		s.paras = append(s.paras, e)
	}
	return s
}

func clockOf(s float64) string { return unit.Clock(int32(math.Round(s))) }

// lastRuns is how many results the card lists.
const lastRuns = 12

// history lists the last results and draws all of them.
func (d *standingRows) history(publish bool) section {
	rows := d.results[max(0, len(d.results)-lastRuns):]
	judged := !d.protected
	cols := []table.Column{{Head: "Date"}, {Head: "Course"}}
	if !judged { // else there is no room for it

		cols = append(cols, table.Column{Head: "Place", Kind: table.Place})
	}
	cols = append(cols, table.Column{Head: "Time", Kind: table.Clock})
	if judged {
		cols = append(cols, table.Column{Head: "Adjusted", Kind: table.Clock}, table.Column{Head: "Grade", Kind: table.Percent})
	}
	if judged && !publish {
		cols = append(cols, table.Column{Head: "Effort"})
	}
	cols = append(cols, table.Column{Head: "Note"})
	t := &table.Table{Columns: cols, Legend: noteSigns}
	for i := len(rows) - 1; i >= 0; i-- {
		r := rows[i]
		cells := []table.Value{table.Words(shortDay(r.day)), table.Words(d.routeName(r.course, r.distance))}
		if !judged {
			cells = append(cells, table.Maybe(r.position))
		}
		cells = append(cells, table.Maybe(r.timeS))
		if judged {
			cells = append(cells, ceilOf(r.adjusted), table.Maybe(r.grade))
		}
		if judged && !publish {
			cells = append(cells, table.Words(r.effortWord()))
		}
		signs, words := r.words()
		t.Add(signs, append(cells, table.Words(words))...)
	}
	s := section{title: fmt.Sprintf("The last %s", spelt(len(rows), "run", "runs")), table: t, history: true}
	if len(rows) == 1 {
		s.title = "The last run"
	}
	if judged {
		s.paras = []string{"Adjusted: the time on an average course and day. It allows for hills, ground and weather, not for effort."}
		if !publish {
			s.paras = append(s.paras, "Effort: behind it is up to 8 % behind your recent best, allowing for course and day; well behind it is more. A guess from the times.")
		}
	}
	return s
}

func ceilOf(s *float64) table.Value {
	if s == nil {
		return table.Value{}
	}
	return table.Number(math.Ceil(*s - 1e-9))
}

// noteSigns are the signs of the note column.
var noteSigns = []table.Mark{{Sign: "PB", Text: "personal best at this distance"}, {Sign: "CB", Text: "fastest so far on this course"},
	{Sign: "AB", Text: "best so far after allowing for course and day"}}

// words is the note of a result, with its signs.
func (r *ownRow) words() (signs []string, note string) {
	switch {
	case r.pb:
		signs = []string{"PB"}
	case r.course1:
		signs = []string{"CB"}
	case r.adj:
		signs = []string{"AB"}
	}
	w := append([]string(nil), signs...)
	if r.taking != "runner" {
		w = append(w, r.taking)
	}
	if r.status != "ok" {
		w = append(w, r.status)
	}
	return signs, strings.Join(w, ", ")
}

// rankIn gives somebody's rank among values (seconds, one a runner), how many
// there are and the percentile, "" in a group of under ten.
func rankIn(mine int32, all []int32) (rank standing.Rank, n int, percentile table.Value) {
	slower, faster, equal := 0, 0, 0
	for _, v := range all {
		switch {
		case v <= 0:
			continue
		case v < mine:
			faster++
		case v > mine:
			slower++
		default:
			equal++
		}
		n++
	}
	if mine <= 0 || equal == 0 {
		return standing.Rank{}, n, table.Value{}
	}
	if p, ok := standing.Percentile(slower, n); ok {
		percentile = table.Number(p)
	}
	return standing.Rank{N: int32(faster + 1), Shared: equal > 1}, n, percentile
}

func ceilS(s *float64) int32 {
	if s == nil {
		return 0
	}
	return int32(math.Ceil(*s - 1e-9))
}

// measures are what people are ranked by, as standing_best.sql has them and as
// printed.
var measures = []struct{ code, word string }{{"time", "time"}, {"adjusted", "adjusted"}, {"grade", "age grade"}}

// ranking is somebody's rank among the bests of the age group.
type ranking struct {
	rank  standing.Rank
	of    int
	ahead table.Value // percentile
}

// eachRank goes through the ranks within the age group: by time on each course,
// and over all by time, adjusted time and age grade, ever and this season.
func (d *standingRows) eachRank(give func(standIn, ranking)) {
	each := func(in standIn) {
		for _, season := range []bool{false, true} {
			in.season = season
			if g := d.bests[in]; g != nil {
				if r, n, p := rankIn(g.mine, g.all); r.N > 0 {
					give(in, ranking{r, n, p})
				}
			}
		}
	}
	distances := d.distances()
	for i, c := range d.courses {
		if i > 0 && c.course == d.courses[i-1].course {
			continue // its other distance
		}
		for _, dist := range distances {
			each(standIn{measure: "time", course: c.course, distance: dist})
		}
	}
	for _, dist := range distances {
		for _, m := range measures {
			each(standIn{measure: m.code, distance: dist})
		}
	}
}

// standingSection shows the ranks within the age group.
func (d *standingRows) standingSection() (section, bool) {
	t := &table.Table{Columns: []table.Column{{Head: "Where"}, {Head: "When"}, {Head: "Rank", Kind: table.Place}, {Head: "of", Kind: table.Whole},
		{Head: "Behind, %", Kind: table.Whole}, {Head: "By"}}}
	words := map[string]string{}
	for _, m := range measures {
		words[m.code] = m.word
	}
	var lead []string
	d.eachRank(func(in standIn, r ranking) {
		where, at := "All, "+distance(in.distance), "over "+distance(in.distance)
		if in.course != "" {
			where = d.routeName(in.course, in.distance)
			at = "at " + where
		}
		when := "ever"
		if in.season {
			when = "this season"
		}
		// A sentence tells nobody that they are the last.
		if last := int(r.rank.N) == r.of && r.of > 1; in.season && !last && in.measure == "time" &&
			(in.course == d.usualCourse() || in.course == "" && in.distance == d.usualDistance()) {
			lead = append(lead, fmt.Sprintf("%s of %d %s", ordinalRank(r.rank), r.of, at))
		}
		t.Add(nil, table.Words(where), table.Words(when), rankValue(r.rank), table.Number(r.of), r.ahead, table.Words(words[in.measure]))
	})
	if len(t.Rows) == 0 {
		return section{}, false
	}
	return section{title: "Standing in " + groupLabel(d.sex, d.group), table: t,
		paras: append(leadWords(lead, groupLabel(d.sex, d.group)), "Everybody once, with their best in this group, ever in these sheets and this season. \"Behind\" is how many in a hundred of the others are behind; it is given from ten people on. By age grade, only those whose age is certain are counted.")}, true
}

// routeName is the name of a course, with the distance where it has several.
func (d *standingRows) routeName(course string, metres int32) string {
	routes := 0
	for i := range d.courses {
		if d.courses[i].course == course {
			routes++
		}
	}
	if routes < 2 {
		return d.courseName(course)
	}
	return d.courseName(course) + ", " + distance(metres)
}

// smallGroup says whether somebody's group is of X and of so few people that it
// is not for publication.
func (d *standingRows) smallGroup() bool {
	most := 0
	for _, g := range d.bests {
		most = max(most, len(g.all))
	}
	return d.sex == "X" && most < fewest
}

// leadWords says the standing of the season in a sentence.
func leadWords(lead []string, group string) []string {
	if len(lead) == 0 {
		return nil
	}
	return []string{"By time this season in " + group + ": " + list(lead) + "."}
}

// ordinalRank is "3rd", "3rd=" where it is shared.
func ordinalRank(r standing.Rank) string {
	s := ordinal(r.N)
	if r.Shared {
		s += "="
	}
	return s
}

// usualCourse is the course that somebody has run on most often, the first of
// equals by name.
func (d *standingRows) usualCourse() string {
	n, best := map[string]int{}, ""
	for _, r := range d.results {
		if r.countsRun {
			n[r.course]++
		}
	}
	for _, c := range sortedKeys(n) {
		if best == "" || n[c] > n[best] {
			best = c
		}
	}
	return best
}

func (d *standingRows) aheadSection() (section, bool) {
	dist := d.usualDistance()
	g := d.bests[standIn{measure: "adjusted", distance: dist, season: true}]
	if g == nil || g.mine <= 0 || d.protected {
		return section{}, false
	}
	rank, _, _ := rankIn(g.mine, g.all)
	if rank.N < 2 {
		return section{}, false
	}
	targets := d.ahead()
	s := section{title: "The next places ahead", paras: []string{fmt.Sprintf("This season's %s in %s by adjusted time (see Standing); your best is %s. What each place takes on an average course and day.",
		distance(dist), groupLabel(d.sex, d.group), unit.Clock(g.mine))}}
	if len(targets) == 0 {
		s.paras = append(s.paras, "The next place takes over 5 % more, and is not named.")
		return s, true
	}
	if len(targets) < mostAhead && targets[len(targets)-1].Place.N > 1 {
		s.paras = append(s.paras, "Places further ahead take over 5 % more, and are not named.")
	}
	t := &table.Table{Columns: []table.Column{{Head: "Place", Kind: table.Place}, {Head: "Takes", Kind: table.Clock}, {Head: "Under your best by", Kind: table.Clock},
		{Head: "Under your form by", Kind: table.Clock}}}
	for _, x := range targets {
		var gap table.Value
		if d.formS != nil {
			if by := math.Round(*d.formS*math.Pow(float64(dist)/5000, enduranceExponent)) - float64(x.NeedS); by > 0 {
				gap = table.Number(by)
			}
		}
		t.Add(nil, rankValue(x.Place), table.Number(x.NeedS), table.Number(x.FasterS), gap)
	}
	s.table = t
	return s, true
}

// mostAhead is how many places ahead a card names.
const mostAhead = 3

// courseSection gives the time to expect on each course, the fastest first.
func (d *standingRows) courseSection() (section, bool) {
	type line struct {
		c            *courseRow
		s, low, high float64
	}
	var lines []line
	for i := range d.courses {
		if s, low, high, ok := d.expected(&d.courses[i]); ok {
			lines = append(lines, line{&d.courses[i], s, low, high})
		}
	}
	if len(lines) == 0 {
		return section{}, false
	}
	sort.SliceStable(lines, func(i, j int) bool {
		if lines[i].c.distance != lines[j].c.distance {
			return lines[i].c.distance < lines[j].c.distance
		}
		return *lines[i].c.seconds < *lines[j].c.seconds
	})
	text := "A good effort on an average day, the fastest courses of a distance first: those suit an attempt at a best. A fast course may be flatter, firmer, sheltered or measured differently."
	if w := d.daysInWords(); w != "" {
		text += " " + w
	}
	if w := d.notCompared(); w != "" {
		text += " " + w
	}
	if n := len(lines); n > mostCourses {
		kept := lines[:0]
		for _, l := range lines {
			if d.bestOn(l.c) > 0 || l.c.distance == d.usualDistance() && len(kept) < mostCourses/2 {
				kept = append(kept, l)
			}
		}
		lines = kept
		text += fmt.Sprintf(" Of %d courses, those run before and the fastest.", n)
	}
	t := &table.Table{Columns: []table.Column{{Head: "Course"}, {Head: "Distance"}, {Head: "Expect", Kind: table.Clock},
		{Head: "likely from", Kind: table.Clock}, {Head: "to", Kind: table.Clock}, {Head: "Best there", Kind: table.Clock}}}
	for _, l := range lines {
		best := table.Value{}
		if b := d.bestOn(l.c); b > 0 {
			best = table.Number(b)
		}
		t.Add(nil, table.Words(l.c.name), table.Words(distance(l.c.distance)), table.Number(math.Round(l.s)), table.Number(math.Round(l.low)), table.Number(math.Round(l.high)), best)
	}
	return section{title: "What to expect on each course", table: t,
		paras: []string{text}}, true
}

// daysInWords says how much one day differs from another.
func (d *standingRows) daysInWords() string {
	if d.dayLow == nil || d.dayHigh == nil || d.dayRuns < leastDays {
		return ""
	}
	side := func(s float64) string {
		if math.Round(s) == 0 {
			return "as usual"
		}
		if s < 0 {
			return fmt.Sprintf("%.0f s faster", -s)
		}
		return fmt.Sprintf("%.0f s slower", s)
	}
	return fmt.Sprintf("The likely range is of an average day; the days themselves differ: nine runs in ten of the past year were between %s and %s than usual, for somebody who takes 25:00.", side(*d.dayLow), side(*d.dayHigh))
}

// leastDays is how many runs it takes to say how days differ.
const leastDays = 20

// notCompared names the courses that somebody runs on and that can't be compared.
func (d *standingRows) notCompared() string {
	var names []string
	for i := range d.courses {
		c := &d.courses[i]
		if c.seconds == nil && d.bestOn(c) > 0 {
			names = append(names, d.routeName(c.course, c.distance))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Not here, as too little connects " + map[bool]string{true: "it", false: "them"}[len(names) == 1] + " with other courses of the distance: " + list(names) + "."
}

// mostCourses is how many courses a card lists before it picks.
const mostCourses = 12

func (d *standingRows) bestOn(c *courseRow) int32 {
	var best int32
	for _, r := range d.results {
		if r.course == c.course && r.distance == c.distance && r.countsTime && r.timeS != nil && (best == 0 || *r.timeS < best) {
			best = *r.timeS
		}
	}
	return best
}

// splitsSection gives even-pace splits for one second under the best.
func (d *standingRows) splitsSection() (section, bool) {
	dist := d.usualDistance()
	goal := d.bestAt(dist) - 1
	km := standing.EvenPace(dist, goal, standing.Kilometre)
	if len(km) == 0 {
		return section{}, false
	}
	t := &table.Table{Columns: []table.Column{{Head: "At", Kind: table.Text}, {Head: "Clock", Kind: table.Text}}}
	for _, s := range km {
		t.Add(nil, table.Words(metres(s.Metres)), table.Words(s.String()))
	}
	for _, s := range []struct {
		length float64
		name   string
	}{{standing.Lap400, "every 400 m"}, {standing.Mile, "at the mile"}} {
		if first := standing.EvenPace(dist, goal, s.length); len(first) > 1 {
			t.Add(nil, table.Words(s.name), table.Words(first[0].String()))
		}
	}
	return section{title: fmt.Sprintf("Even pace for %s", unit.Clock(goal)), table: t,
		paras: []string{fmt.Sprintf("One second under the best over %s. %s", distance(dist), splitsCaution)}}, true
}

func metres(m float64) string {
	if m >= 1000 && math.Mod(m, 1000) == 0 {
		return fmt.Sprintf("%.0f km", m/1000)
	}
	return fmt.Sprintf("%.0f m", m)
}
