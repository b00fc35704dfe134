package pipeline

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/text"
)

// half says which half of a result a part is, where it is one: places with times and
// nobody named, or places with names and no times.
type half uint8

const (
	whole half = iota
	halfTimes
	halfNames
)

// halfOf tells it by the lines, before any are joined.
func (f *field) halfOf(s *issue) half {
	named, timed := 0, 0
	for _, i := range s.lines {
		if f.position[i] == 0 {
			return whole
		}
		if f.name[i] != 0 {
			named++
		}
		if f.timeMS[i] > 0 {
			timed++
		}
	}
	switch {
	case timed > 0 && named == 0:
		return halfTimes
	case named > 0 && timed == 0:
		return halfNames
	}
	return whole
}

// newestHalves compares the halves of each kind with one another before they are joined,
// where there are some of both: a second list of names takes the place of the first, and
// the times stay. It returns the issues that go on.
func (f *field) newestHalves(run int32, issues []*issue) (kept []*issue, told []storedProblem) {
	var n [halfNames + 1]int
	for _, s := range issues {
		n[s.half]++
	}
	if n[halfTimes] == 0 || n[halfNames] == 0 || n[halfTimes]+n[halfNames] < 3 {
		return issues, nil
	}
	stands := map[*issue]bool{}
	for _, kind := range [...]half{halfTimes, halfNames} {
		var standing []*issue
		for _, later := range issues {
			if later.half == kind {
				var p []storedProblem
				standing, p = f.addIssue(run, standing, later)
				told = append(told, p...)
			}
		}
		for _, s := range standing {
			stands[s] = true
		}
	}
	for _, s := range issues {
		if s.half == whole || stands[s] {
			kept = append(kept, s)
		}
	}
	return kept, told
}

// compareHalf compares a half that comes after a whole result of the same run: it knows
// less, so that the whole one stands, and of the half what is added. compared is false where
// they have nothing in common.
func (f *field) compareHalf(earlier, later *issue, tell func(kind, read, todo string, severity place.Severity) *storedProblem) (p *storedProblem, stands, compared bool) {
	if later.half == whole || earlier.half != whole {
		return nil, false, false
	}
	people, places := f.indexed(earlier)
	same := make([]int, len(later.lines)) // line of the whole result, -1
	agree, met := 0, 0
	for n, i := range later.lines {
		same[n] = -1
		k := f.lineKey(i)
		j, ok := places[k.position]
		if !ok {
			if _, ok = people[k.person]; ok && k.person != "" {
				met++
			}
			continue
		}
		met++
		if f.halfAgrees(later.half, i, j) {
			same[n] = j
			agree++
		}
	}
	if 2*met < len(later.lines) {
		return nil, false, false
	}
	added, differ, example := f.addExcerpt(later, same, people, places, earlier.part.path)
	what := map[half]string{halfTimes: "times", halfNames: "names"}[later.half]
	read := fmt.Sprintf("%d of its %d %s stand on %s already, %d are added", agree, len(later.lines), what, earlier.part.path, added)
	if differ == 0 {
		return tell("excerpt", read, "Nothing to do: each finisher is counted once.", place.Note), added > 0, true
	}
	return tell("excerpt-differs", fmt.Sprintf("%s, %s something else: %s", read, text.CountOf(differ, "says", "say"), example),
		fmt.Sprintf("The sheet with both names and times stands. If these %s are right, correct those places (lapwing correct), or withdraw that sheet.", what), place.Look), added > 0, true
}

// halfAgrees says whether a line of a half says what a line of the same place does.
func (f *field) halfAgrees(kind half, i, j int) bool {
	if kind == halfTimes {
		return f.sameTime(i, j, true)
	}
	return f.lineKey(i).person == f.lineKey(j).person
}

// halvesOfWhole adds to the lines of a half those of the whole result after it that say
// the same, as far as a half does.
func (f *field) halvesOfWhole(earlier, later *issue, replaced map[int]int) {
	if earlier.half == whole || later.half != whole {
		return
	}
	_, places := f.indexed(later)
	for _, i := range earlier.lines {
		if j, ok := places[f.position[i]]; ok && f.halfAgrees(earlier.half, i, j) {
			replaced[i] = j
		}
	}
}

// joinParts joins a part that has times and no names with one that has names
// and no times, on position: the named line takes the time, the other becomes
// a repeat of it. Times of which none has a place are joined in their order where there are as many
// as names. The names may have been joined with other times, as those of a list in two columns.
func (f *field) joinParts(times, names *issue) bool {
	if names.half != halfNames {
		return false
	}
	timed := f.timedPlaces(times, names)
	named := 0
	for _, j := range names.lines {
		i, ok := timed[f.position[j]]
		switch {
		case !ok:
		case f.timeMS[j] > 0 && f.timeMS[i] > 0 && f.timeMS[i] != f.timeMS[j]:
			return false
		case f.timeMS[i] > 0:
			named++
		}
	}
	if named == 0 {
		return false
	}
	for _, j := range names.lines {
		i, ok := timed[f.position[j]]
		if !ok || f.is(i, record.Repeat) {
			continue
		}
		if f.timeMS[i] > 0 {
			f.timeMS[j] = f.timeMS[i]
		}
		if f.timeMS[j] > 0 && f.is(j, record.Untimed) {
			f.status[j] = uint8(record.OK)
			if f.name[j] == 0 || f.person[f.name[j]].Unnamed {
				f.status[j] = uint8(record.Unnamed)
			}
		}
		if f.is(j, record.OK) && !record.TakingPart(f.takingPart[j]).OnWheels() && f.tooFast(j) {
			f.setDoubt(j, record.Doubtful, "the time is faster than the open standard of the distance")
		}
		f.setDoubt(i, record.Repeat, "joined with the name on "+names.part.path)
		f.sameAs[i] = int32(j)
	}
	return true
}

// timedPlaces are the lines of a part with times and nobody named by place, a timed one where there is one; of times
// without places by their order, where the names are as many and have every place once. nil for other parts.
func (f *field) timedPlaces(times, names *issue) map[int32]int {
	timed := map[int32]int{}
	if f.timesAlone(times) {
		lines := slices.Clone(times.lines)
		slices.SortStableFunc(lines, func(a, b int) int { return cmp.Compare(f.timeMS[a], f.timeMS[b]) })
		_, places := f.indexed(names)
		for n, i := range lines {
			if _, ok := places[int32(n+1)]; !ok || len(lines) != len(names.lines) {
				return nil
			}
			timed[int32(n+1)] = i
		}
		return timed
	}
	for _, i := range times.lines {
		if f.position[i] == 0 || f.name[i] != 0 {
			return nil
		}
		if _, have := timed[f.position[i]]; !have || f.timeMS[i] > 0 {
			timed[f.position[i]] = i
		}
	}
	return timed
}

// timesAlone says whether a part has times, and neither places nor names.
func (f *field) timesAlone(s *issue) bool {
	for _, i := range s.lines {
		if f.position[i] != 0 || f.name[i] != 0 || f.timeMS[i] == 0 {
			return false
		}
	}
	return len(s.lines) >= fewestOfHalf
}

// timesWithoutPlaces says how many times without places stand beside how many names where these are not as many; ""
// where neither of two parts is such times beside names.
func (f *field) timesWithoutPlaces(a, b *issue) string {
	times, names := a, b
	if a.half == halfNames {
		times, names = b, a
	}
	if names.half != halfNames || !f.timesAlone(times) || len(times.lines) == len(names.lines) {
		return ""
	}
	return fmt.Sprintf("%d times without places beside %d names on the other list of this run", len(times.lines), len(names.lines))
}

// halvesDiffer is the kind of remark that a run has more times than names, or fewer, and the last places show it:
// who missed one on the way has put all behind it out by a place.
const halvesDiffer = "times-and-names-differ"

// unequalHalves compares the numbers of places of the times and the names that stand for a run, where they are
// joined on position.
func (f *field) unequalHalves(run int32, standing []*issue) []storedProblem {
	var places [halfNames + 1]map[int32]bool
	var part [halfNames + 1]*partInfo
	for _, s := range standing {
		if s.half == whole {
			return nil
		}
		if part[s.half] == nil {
			places[s.half], part[s.half] = map[int32]bool{}, s.part
		}
		for _, i := range s.lines {
			places[s.half][f.position[i]] = true
		}
	}
	times, names := places[halfTimes], places[halfNames]
	if times == nil || names == nil || len(times) == len(names) {
		return nil
	}
	more, fewer, lacks := times, names, "name"
	if len(names) > len(times) {
		more, fewer, lacks = names, times, "time"
	}
	last, missing := slices.Max(slices.Collect(maps.Keys(fewer))), []int32{}
	for _, n := range slices.Sorted(maps.Keys(more)) {
		if fewer[n] {
			continue
		}
		if n < last {
			return nil // a place is left out in so many words
		}
		missing = append(missing, n)
	}
	where := fmt.Sprintf("place %d has", missing[0])
	if len(missing) > 1 {
		where = fmt.Sprintf("places %d to %d have", missing[0], missing[len(missing)-1])
	}
	p := part[halfNames]
	return []storedProblem{{place.Problem{Place: place.Place{Sheet: p.path, Tab: p.tab}, Severity: place.Look, Kind: halvesDiffer,
		Read:     fmt.Sprintf("%s and %s of this run; %s no %s", text.CountOf(len(times), "time", "times"), text.CountOf(len(names), "name", "names"), where, lacks),
		Expected: "as many times as names",
		Do:       fmt.Sprintf("If a %s was missed earlier, everybody after it has somebody else's time. Ask those who took the times and the names, put the places right on the sheet, and load it again.", lacks)}, p.sheetNo, run}}
}

// otherHalfMissing is the kind of remark that a run has times and no names, or names and
// no times.
const otherHalfMissing = "other-half-missing"

// fewestOfHalf is from how many lines a list is one of the two that belong together.
const fewestOfHalf = 3

// missingHalves tells of runs of which only one half is here, once the halves that are
// here have been joined: nobody would be named there, or nobody have a time, and nothing
// say why.
func (f *field) missingHalves() (out []storedProblem) {
	type counts struct {
		n, named, timed, placed int32
		part                    int32 // of the first line
	}
	of := make([]counts, len(f.runs))
	for i := 0; i < f.n; i++ {
		if f.run[i] == 0 || f.settled(i) || !f.stands(i) {
			continue
		}
		c := &of[f.run[i]-1]
		if c.n == 0 {
			c.part = f.part[i]
		}
		c.n++
		if f.name[i] != 0 {
			c.named++
		}
		if f.timeMS[i] > 0 {
			c.timed++
		}
		if f.position[i] > 0 {
			c.placed++
		}
	}
	for r, c := range of {
		if c.n < fewestOfHalf || c.placed < c.n || (c.named == 0) == (c.timed == 0) {
			continue
		}
		has, lacks := "times", "names"
		if c.named > 0 {
			has, lacks = lacks, has
		}
		p := &f.parts[c.part-1]
		out = append(out, storedProblem{place.Problem{Place: place.Place{Sheet: p.path, Tab: p.tab}, Severity: place.Look, Kind: otherHalfMissing,
			Read: fmt.Sprintf("%s and places of %d finishers, and no %s", has, c.n, lacks), Expected: "a second sheet of this run, with places and " + lacks,
			Do: "Save that beside this one and load it; the two are joined on the place"}, p.sheetNo, int32(r) + 1})
	}
	return out
}
