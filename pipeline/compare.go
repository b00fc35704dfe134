package pipeline

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/text"
)

// compareSheets settles what stands where several sheets (or tabs) are of one
// run. Parts are taken in the order in which they were loaded, but a provisional list
// before and a corrected one after the others (edition.go):
//
//   - every line of the later one is on the earlier one: the later lines are
//     repeats (a copy, or an excerpt of a sheet that is already there);
//   - one has times and no names, the other names and no times: they are joined
//     on position, each finisher counted once (compare_halves.go, as for what later
//     issues of such halves do);
//   - they share no position and no line, or one is of women and the other of
//     men, or their names say that they are lists of other people (walkers, an age
//     group): both stand (two parts of one field);
//   - hardly anybody is on both, or those who are have other times: the later
//     one is of another day, course or race, and is left out until somebody
//     says of which (compare_field.go);
//   - otherwise the later sheet is a new issue: it stands, and the lines of the
//     earlier one are superseded.
//
// It returns the differences worth telling.
func (f *field) compareSheets() []storedProblem {
	// lines by run, only for runs that have more than one part
	first := make([]int32, len(f.runs))
	several := map[int32]bool{}
	for i := 0; i < f.n; i++ {
		if f.settled(i) || !f.stands(i) { // left out as a copy
			continue
		}
		r := f.run[i] - 1
		if first[r] == 0 {
			first[r] = f.part[i]
		} else if first[r] != f.part[i] {
			several[f.run[i]] = true
		}
	}
	if len(several) == 0 {
		return nil
	}
	lines := map[int32][]int{}
	for i := 0; i < f.n; i++ {
		if several[f.run[i]] && f.stands(i) {
			lines[f.run[i]] = append(lines[f.run[i]], i)
		}
	}
	var runs []int32
	for r := range lines {
		runs = append(runs, r)
	}
	sort.Slice(runs, func(a, b int) bool { return f.runs[runs[a]-1].rank < f.runs[runs[b]-1].rank })
	var out []storedProblem
	for _, r := range runs {
		out = append(out, f.compareRun(r, lines[r])...)
	}
	return out
}

// compared is what comparing all lists tells: copies, sheets of the same run, and halves
// of which the other is not here.
func (f *field) compared() []storedProblem {
	out := append(f.copiedRuns(), f.compareSheets()...)
	return append(out, f.missingHalves()...)
}

// issue is the lines of one part in one run.
type issue struct {
	part  *partInfo
	lines []int

	people map[string]int // lines by who stands on them; nil until asked for
	places map[int32]int  // lines by place
	half   half
}

// indexed gives the lines of an issue by person and by place.
func (f *field) indexed(s *issue) (people map[string]int, places map[int32]int) {
	if s.people == nil {
		s.people, s.places = map[string]int{}, map[int32]int{}
		for _, i := range s.lines {
			k := f.lineKey(i)
			if k.person != "" {
				s.people[k.person] = i
			}
			if k.position > 0 {
				s.places[k.position] = i
			}
		}
	}
	return s.people, s.places
}

func (f *field) compareRun(run int32, lines []int) []storedProblem {
	var issues []*issue
	at := map[int32]*issue{}
	for _, i := range lines {
		s := at[f.part[i]]
		if s == nil {
			s = &issue{part: &f.parts[f.part[i]-1]}
			at[f.part[i]] = s
			issues = append(issues, s)
		}
		s.lines = append(s.lines, i)
	}
	// in order of the ledger, as far as names don't say otherwise; parts of one sheet in their own order
	sort.Slice(issues, func(a, b int) bool {
		p, q := issues[a].part, issues[b].part
		return p.sheetNo < q.sheetNo || p.sheetNo == q.sheetNo && p.no < q.no
	})
	issues = byEdition(issues)
	for _, s := range issues {
		s.half = f.halfOf(s)
	}
	issues, out := f.newestHalves(run, issues)
	var fields [][]*issue // what stands, and of what is left out the same, field by field
	for _, later := range issues {
		at := 0
		for at < len(fields) && !f.isOfField(fields[at], later) {
			at++
		}
		if at == len(fields) {
			fields = append(fields, nil)
		}
		var told []storedProblem
		fields[at], told = f.addIssue(run, fields[at], later)
		out = append(out, told...)
	}
	if k := slices.IndexFunc(fields, f.believed); k > 0 {
		fields[0], fields[k] = fields[k], fields[0]
	}
	if len(fields) > 0 {
		out = append(out, f.unequalHalves(run, fields[0])...)
	}
	for _, left := range fields[min(1, len(fields)):] {
		for _, later := range left {
			out = append(out, f.leaveOut(run, fields[0], later))
		}
	}
	return out
}

// addIssue compares a part with those that stand, and returns which stand then.
func (f *field) addIssue(run int32, standing []*issue, later *issue) (kept []*issue, told []storedProblem) {
	stands := true
	for _, earlier := range standing {
		if !stands || f.isAnotherField(earlier, later) {
			kept = append(kept, earlier)
			continue
		}
		keepEarlier, keepLater, p := f.compareIssues(run, earlier, later)
		if p != nil {
			told = append(told, *p)
		}
		stands = keepLater
		if keepEarlier {
			kept = append(kept, earlier)
		}
	}
	if stands {
		kept = append(kept, later)
	}
	return kept, told
}

// lineKey tells whether two lines are the same result: place, time, person.
type lineKey struct {
	position, timeMS int32
	person           string
}

func (f *field) lineKey(i int) lineKey {
	k := lineKey{f.position[i], f.timeMS[i], f.person[f.name[i]].Full}
	if f.is(i, record.Unnamed) || f.person[f.name[i]].Unnamed {
		k.person = ""
	}
	return k
}

// compareIssues settles two parts of one run, and says which go on standing.
func (f *field) compareIssues(run int32, earlier, later *issue) (keepEarlier, keepLater bool, p *storedProblem) {
	tell := func(kind, read, todo string, severity place.Severity) *storedProblem {
		return &storedProblem{place.Problem{Place: place.Place{Sheet: later.part.path, Tab: later.part.tab}, Severity: severity,
			Kind: kind, Read: read, Do: todo}, later.part.sheetNo, run}
	}
	if f.joinParts(earlier, later) || f.joinParts(later, earlier) {
		on := "on position"
		if f.timesAlone(earlier) || f.timesAlone(later) {
			on = "in the order of the times, as they have no places"
		}
		return true, true, tell("two-part-sheet", fmt.Sprintf("%d lines joined with %s %s", len(later.lines), earlier.part.path, on), "", place.Note)
	}
	if p, stands, compared := f.compareHalf(earlier, later, tell); compared {
		return true, stands, p
	}
	if read := f.timesWithoutPlaces(earlier, later); read != "" {
		return true, true, tell("second-sheet", read, "There are not as many times as names, so they can't be joined in their order. Write the places beside the times, save, and load that sheet again.", place.Look)
	}
	m := f.matchLines(earlier, later)
	same, shared := m.same, m.shared
	switch {
	case shared == len(later.lines) && !(len(later.lines) < len(earlier.lines) && mended(earlier, later)): // a copy, or an excerpt of what is there
		for n, i := range later.lines {
			f.setDoubt(i, record.Repeat, "the same result stands on "+earlier.part.path)
			f.sameAs[i] = int32(same[n])
		}
		kind, read := "copy", fmt.Sprintf("all %d lines stand on %s already", len(later.lines), earlier.part.path)
		if len(later.lines) < len(earlier.lines) {
			kind = "excerpt"
		}
		return true, false, tell(kind, read, "Nothing to do: the lines are counted once.", place.Note)
	case earlier.part.sheetNo == later.part.sheetNo:
		// two tables of one sheet, such as men and women with places of their own
		return true, true, nil
	case m.people == 0 && f.otherSexes(earlier, later):
		return true, true, tell("second-sheet", "the women's or the men's list beside "+earlier.part.path, "Nothing to do: both stand.", place.Note)
	case m.people == 0 && otherLists(earlier.part, later.part):
		return true, true, tell("second-sheet", "by its name another list of the same run than "+earlier.part.path, "Nothing to do: both stand. If one of the two is of another day or course, withdraw it and load it with --date or --course.", place.Look)
	case m.places == 0 && m.people == 0:
		return true, true, tell("second-sheet", "shares no place and nobody with "+earlier.part.path, "If one of the two is of another day or course, withdraw it and load it with --date or --course.", place.Look)
	}
	ownPlaces := len(m.own) > 0 && shared+len(m.own) == len(later.lines) && f.isSelection(later, earlier)
	if ownPlaces {
		for n, j := range m.own {
			same[n] = j
		}
		shared = len(later.lines)
	}
	if ownPlaces || f.isExcerpt(later, earlier) {
		stands, differ, example := f.addExcerpt(later, same, m.personAt, m.placeAt, earlier.part.path)
		read := fmt.Sprintf("%d lines stand on %s already, %d are added", shared, earlier.part.path, stands)
		if differ == 0 {
			return true, stands > 0, tell("excerpt", read, "Nothing to do: each finisher is counted once.", place.Note)
		}
		p := tell("excerpt-differs", fmt.Sprintf("%s, %s something else: %s", read, text.CountOf(differ, "says", "say"), example),
			"The fuller sheet stands. If the smaller one is right, correct those places (lapwing correct).", place.Look)
		p.Answers = place.AnswerLines(place.Answer{Flags: "--kind full", When: "if it is the whole new result"})
		return true, stands > 0, p
	}
	replaced := f.supersede(earlier, later, same)
	return false, true, tell("new-issue", f.issueWords(earlier, later, replaced),
		fmt.Sprintf("The later sheet stands. To go back: lapwing sheets withdraw %s", text.Typed(later.part.path)), place.Look)
}

// supersede leaves out the lines of the earlier part, each of which points to what stands in
// its place: the line that says the same, or else the person's. It gives the former.
func (f *field) supersede(earlier, later *issue, same []int) map[int]int {
	replaced := map[int]int{}
	for n, i := range later.lines {
		if same[n] >= 0 {
			replaced[same[n]] = i
		}
	}
	f.halvesOfWhole(earlier, later, replaced)
	now := map[string]int{} // the first line of each person on the new sheet
	for _, j := range slices.Backward(later.lines) {
		now[f.lineKey(j).person] = j
	}
	for _, i := range earlier.lines {
		f.setDoubt(i, record.Superseded, "a later sheet of this run stands: "+later.part.path)
		if j, ok := replaced[i]; ok {
			f.sameAs[i] = int32(j)
		} else if person := f.lineKey(i).person; person != "" {
			if j, ok := now[person]; ok {
				f.sameAs[i] = int32(j)
			}
		}
	}
	return replaced
}

// matchedLines is what the lines of a later part have in common with those of an earlier one.
type matchedLines struct {
	same     []int       // by line of the later part: the line of the earlier one that says the same, -1
	shared   int         // how many do
	own      map[int]int // the same person and time, with places counted anew: by line of the later part
	personAt map[string]int
	placeAt  map[int32]int
	people   int // lines of somebody who stands in the earlier part
	places   int // lines with a place that does
}

func (f *field) matchLines(earlier, later *issue) (m matchedLines) {
	has := map[lineKey][]int{}
	for _, i := range earlier.lines {
		k := f.lineKey(i)
		has[k] = append(has[k], i)
	}
	m.personAt, m.placeAt = f.indexed(earlier)
	m.same = make([]int, len(later.lines))
	for n, i := range later.lines {
		m.same[n] = -1
		k := f.lineKey(i)
		if l := has[k]; len(l) > 0 {
			m.same[n] = l[0]
			has[k] = l[1:]
			m.shared++
		}
	}
	coarser := f.wholeSeconds(later) && !f.wholeSeconds(earlier)
	if coarser {
		m.shared += f.sameButRounded(later, m.same, m.personAt)
	}
	if len(later.lines) < len(earlier.lines) {
		m.shared += f.sameButShorter(later, m.same, m.placeAt, coarser)
	}
	m.own = f.samePersonAndTime(later, m.same, m.personAt, coarser)
	for _, i := range later.lines {
		k := f.lineKey(i)
		if _, ok := m.personAt[k.person]; ok && k.person != "" {
			m.people++
		}
		if _, ok := m.placeAt[k.position]; ok && k.position > 0 {
			m.places++
		}
	}
	return m
}

// issueWords says how the lines of a new issue differ from those of the one before:
// how many are the same, changed (the same person, or else the same place), gone and
// new. same has the later line of each earlier one that stands there as it is.
func (f *field) issueWords(earlier, later *issue, same map[int]int) string {
	met := map[int]bool{} // earlier and later lines that have a partner
	for i, j := range same {
		met[i], met[j] = true, true
	}
	changed := 0
	people, places := f.indexed(later)
	for _, partner := range []func(k lineKey) (int, bool){
		func(k lineKey) (int, bool) { j, ok := people[k.person]; return j, ok && k.person != "" },
		func(k lineKey) (int, bool) { j, ok := places[k.position]; return j, ok && k.position > 0 },
	} {
		for _, i := range earlier.lines {
			if j, ok := partner(f.lineKey(i)); ok && !met[i] && !met[j] {
				met[i], met[j] = true, true
				changed++
			}
		}
	}
	n := len(same)
	words := []string{text.Count(n, "line") + " the same"}
	for _, w := range []struct {
		n    int
		what string
	}{{changed, "changed"}, {len(earlier.lines) - n - changed, "gone"}, {len(later.lines) - n - changed, "new"}} {
		if w.n > 0 {
			words = append(words, fmt.Sprintf("%d %s", w.n, w.what))
		}
	}
	return fmt.Sprintf("it takes the place of %s: %s", earlier.part.path, strings.Join(words, ", "))
}

// isExcerpt says whether a later part is some of the field and no new issue of
// an earlier one: somebody said so; or it has gaps in its places and the other
// is as gappy or larger; or it has less than half as many lines.
func (f *field) isExcerpt(later, earlier *issue) bool {
	switch later.part.kind {
	case "excerpt":
		return true
	case fullByHand:
		return false
	}
	if 2*len(later.lines) < len(earlier.lines) {
		return true
	}
	if mended(earlier, later) {
		return false
	}
	return f.gappy(later) && (f.gappy(earlier) || 10*len(later.lines) < 9*len(earlier.lines))
}

// gappy says whether many places are missing from a part, as on a sheet of one
// club's members.
func (f *field) gappy(s *issue) bool {
	top := int32(0)
	for _, i := range s.lines {
		top = max(top, f.position[i])
	}
	return int(top) > len(s.lines)+len(s.lines)/4+3
}

// addExcerpt adds the lines of an excerpt to what stands: a finisher who is
// there already is counted once, by the fuller sheet; one who is not is added.
func (f *field) addExcerpt(later *issue, same []int, people map[string]int, places map[int32]int, stands string) (added, differ int, example string) {
	for n, i := range later.lines {
		k := f.lineKey(i)
		j := same[n]
		if j < 0 {
			var ok bool
			if j, ok = people[k.person]; !ok || k.person == "" {
				if j, ok = places[k.position]; !ok || k.position == 0 {
					added++
					continue
				}
			}
			if differ++; example == "" {
				example = f.lineWords(i) + ", there " + f.lineWords(j)
			}
		}
		f.setDoubt(i, record.Repeat, "this finisher stands on "+stands)
		f.sameAs[i] = int32(j)
	}
	return added, differ, example
}

// lineWords says in short what a line says: place 12, Ana Sol, 20:01.
func (f *field) lineWords(i int) string {
	return fmt.Sprintf("place %s, %s, %s", orDash(f.position[i]), orNobody(f.names.list[f.name[i]]), clockOrDash(f.timeMS[i]))
}
