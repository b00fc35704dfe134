package pipeline

import (
	"fmt"
	"slices"
	"sort"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
)

// anotherField is the kind of question which run a sheet is of, where its course
// and date are those of a run that other people, or the same with other times,
// are known to have run.
const anotherField = "other-people-or-times"

// A later sheet is of the field of an earlier one where half of the smaller are on
// both, and half of those have the same time on both. A corrected sheet keeps
// nearly all of both; last week's regulars with this week's times keep the people
// and hardly a time; a juniors' race keeps neither. fewestOfField lines are too few
// to tell. The halves lie far from all of these: common practice, no source.
const (
	fewestOfField = 3
	sameTimeMS    = 1000 // one list is in whole seconds, the other not
)

// isAnotherField says whether a later part can't be an issue, an excerpt or the
// other half of an earlier one. Where somebody said what the sheet is, it is that.
func (f *field) isAnotherField(earlier, later *issue) bool {
	if later.part.kind == "excerpt" || later.part.kind == fullByHand || min(len(earlier.lines), len(later.lines)) < fewestOfField {
		return false
	}
	people, places := f.indexed(earlier)
	rounded := f.wholeSeconds(earlier) != f.wholeSeconds(later)
	known, compared, conflicts := 0, 0, 0
	var apart []int32 // how much later each is on the later sheet
	for _, i := range later.lines {
		k := f.lineKey(i)
		j, met := people[k.person]
		met = met && k.person != ""
		if at, ok := places[k.position]; ok && k.position > 0 {
			nameless := k.person == "" || f.lineKey(at).person == ""
			// a name written otherwise, or none: the same place and time is the same person
			if !met && (nameless || k.timeMS > 0 && f.sameTime(i, at, rounded)) {
				j, met = at, true
			}
			if !met {
				conflicts++ // somebody else has this place there
			}
		}
		if !met {
			continue
		}
		known++
		if f.timeMS[i] > 0 && f.timeMS[j] > 0 {
			compared++
			apart = append(apart, f.timeMS[i]-f.timeMS[j])
		}
	}
	smaller := min(len(earlier.lines), len(later.lines))
	switch {
	case 2*known < smaller:
		// two parts of a field share hardly a place; women and men have places of their own
		return conflicts > known && earlier.part.sheetNo != later.part.sheetNo && !f.otherSexes(earlier, later) && !(known == 0 && otherLists(earlier.part, later.part))
	case compared < fewestOfField:
		return false
	}
	return 2*mostTogether(apart) < compared
}

// mostTogether counts the differences of time, in milliseconds, that are within a
// second of one another at the place where most are, or within a second of none: a
// clock that was started late is set right on all lines alike.
func mostTogether(apart []int32) (most int) {
	sort.Slice(apart, func(a, b int) bool { return apart[a] < apart[b] })
	none, from := 0, 0
	for to, d := range apart {
		if d > -sameTimeMS && d < sameTimeMS {
			none++
		}
		for d-apart[from] > sameTimeMS {
			from++
		}
		most = max(most, to-from+1)
	}
	return max(most, none)
}

// otherSexes says whether one of two parts is of women only and the other of men
// only, as far as four in five of their lines say.
func (f *field) otherSexes(a, b *issue) bool {
	one := func(s *issue) uint8 {
		var n [4]int
		for _, i := range s.lines {
			n[f.sex[i]&3]++
		}
		for sex := uint8(1); sex < 4; sex++ {
			if n[sex] > 0 && n[sex]+n[0] == len(s.lines) && 5*n[sex] >= 4*len(s.lines) {
				return sex
			}
		}
		return 0
	}
	x, y := one(a), one(b)
	return x != 0 && y != 0 && x != y
}

// believed says whether half of the lines of a field or more are trusted: a mile of
// juniors that was loaded as the run itself is not, and does not keep the run out.
func (f *field) believed(issues []*issue) bool {
	n, doubtful := 0, 0
	for _, s := range issues {
		for _, i := range s.lines {
			n++
			if f.is(i, record.Doubtful) {
				doubtful++
			}
		}
	}
	return 2*doubtful <= n
}

// isOfField says whether a part belongs with one of those that stand, or can't be
// told from them.
func (f *field) isOfField(standing []*issue, later *issue) bool {
	for _, earlier := range standing {
		if !f.isAnotherField(earlier, later) {
			return true
		}
	}
	return false
}

// leaveOut leaves the lines of a part of another field out until somebody says
// which run they are of.
func (f *field) leaveOut(run int32, standing []*issue, later *issue) storedProblem {
	path, both, named := standing[0].part.path, 0, 0
	for _, i := range later.lines {
		if k := f.lineKey(i); k.person != "" {
			named++
			if slices.ContainsFunc(standing, func(s *issue) bool {
				people, _ := f.indexed(s)
				_, ok := people[k.person]
				return ok
			}) {
				both++
			}
		}
		if !f.is(i, record.Repeat) {
			f.setDoubt(i, record.Superseded, "left out until somebody says which run this is: "+path+" has the same course and date, and other people or times")
		}
	}
	read := fmt.Sprintf("%s has the same course and date; %d of the %d people here are on it", path, both, named)
	if 2*both >= named && named > 0 {
		read += ", with other times"
	}
	p := place.Problem{Place: place.Place{Sheet: later.part.path, Tab: later.part.tab}, Severity: place.Doubtful, Kind: anotherField, Read: read}
	session, before := f.sessionBefore(run)
	if f.isOneOfTabs(later.part) {
		p.Do = fmt.Sprintf("Which run is this? %s until you say. Write the right date or course above the table of this tab, or \"Session %s\" if it is another race of that day, save, and load the workbook again; or empty the tab if it is a copy that was left there.", leftOut(len(later.lines)), session)
	} else {
		p.Do = fmt.Sprintf("Which run is this? %s until you say.", leftOut(len(later.lines)))
		p.Answers = place.AnswerLines(
			place.Answer{Flags: "--session " + session, When: "if it is another race of that day" + before + "; sheets with such a name are taken so from then on"},
			place.Answer{Flags: "--session " + session + ` --distance "NUMBER km"`, When: "if it is another race of that day, over another distance"},
			place.Answer{Flags: "--date YEAR-MONTH-DAY", When: "if it is of another day"},
			place.Answer{Flags: "--course NAME", When: "if it is of another course"},
			place.Answer{Flags: "--kind full", When: "if it is the right result of this run, and the other is not"})
	}
	return storedProblem{p, later.part.sheetNo, run}
}

// sessionBefore is the session of the latest further race of a run's course before it,
// and when that was, in words; 2 where it had none.
func (f *field) sessionBefore(run int32) (session, when string) {
	this, last := &f.runs[run-1], -1
	for i := range f.runs {
		r := &f.runs[i]
		if r.course == this.course && r.day < this.day && furtherSession(r.session) && (last < 0 || f.runs[last].rank < r.rank) {
			last = i
		}
	}
	if last < 0 {
		return "2", ""
	}
	return f.runs[last].session, ", as on " + f.runs[last].day.Long()
}

// isOneOfTabs says whether a part is one of several of a workbook.
func (f *field) isOneOfTabs(p *partInfo) bool {
	if p.tab == "" {
		return false
	}
	for i := range f.parts {
		if q := &f.parts[i]; q.sheetNo == p.sheetNo && q.tab != p.tab {
			return true
		}
	}
	return false
}
