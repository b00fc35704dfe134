package reports

import (
	"fmt"
	"math"
	"sort"
	"strings"

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
			s.paras[len(s.paras)-1] += " " + c.o.groupRule()
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
	var first, last, since unit.Day
	var streak, bestStreak int32
	for i, r := range d.results {
		if r.countsRun {
			if runs++; runs == 1 {
				first = r.day
			}
			last, streak, since = r.day, r.streak, r.since.Day
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
		text += fmt.Sprintf(" %s in a row with a run, up to the last one", upperFirst(spelt(int(streak), "week", "weeks")))
		if weeksPassedOver(streak, since, last) > 0 {
			text += ", since " + since.Long() + "; weeks without a run, without a sheet here, or as a volunteer neither count nor end it"
		}
		text += "."
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
		t.Add(nil, table.Words(unit.Distance(dist)), table.Number(best), table.On(on), table.Maybe(season), table.Number(n), table.Words(course))
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
		s := fmt.Sprintf("Personal bests over %s in these sheets: ", unit.Distance(dist))
		if n > mostBests {
			s = fmt.Sprintf("The last %d personal bests over %s: ", mostBests, unit.Distance(dist))
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
