package pipeline

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"maps"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/text"
)

// resultsCopied is the kind of question about a run whose people all have the very
// times that they have in an earlier run: last week's sheet under a new date.
const resultsCopied = "results-copied"

// A run is compared with others of its course where probes of its lines stand in
// one, and asked about from leastCopied lines on. That six people have the same times to
// the second twice, spread over a minute each, happens once in 60⁶ ≈ 5 · 10¹⁰ pairs.
const (
	probes      = 5
	probesMet   = 3
	leastCopied = 6
)

// copiedRuns finds lists nine in ten of whose named and timed lines stand in another run
// of their course of an earlier day, or of the same day and loaded before, and leaves
// them out: one of the two dates is wrong, or a sheet was copied and
// not filled in, or not yet to the end. Where they stand in a run of another course on
// the same day, the two are one run, and the lesser list repeats the other. It comes
// before sheets of one run are compared: what is left out is no rival of the right one.
func (f *field) copiedRuns() []storedProblem {
	c := &copies{f: f, who: f.namesAlike()}
	c.probe()
	met := c.meet()
	if len(met) == 0 {
		return nil
	}
	lines := map[int32][]int{} // of the runs that hold copies, or are copied
	for p := range met {
		lines[p.copied.run], lines[p.from] = nil, nil
	}
	for i := 0; i < f.n; i++ {
		if l, ok := lines[f.run[i]]; ok {
			lines[f.run[i]] = append(l, i)
		}
	}
	pairs := slices.SortedFunc(maps.Keys(met), func(a, b copiedPair) int {
		return cmp.Or(cmp.Compare(f.runs[a.copied.run-1].rank, f.runs[b.copied.run-1].rank), cmp.Compare(a.copied.part, b.copied.part),
			cmp.Compare(f.runs[a.from-1].rank, f.runs[b.from-1].rank))
	})
	var out []storedProblem
	told := map[runList]bool{}
	for _, p := range pairs {
		if told[p.copied] {
			continue
		}
		l, ok := c.compare(p, lines, told)
		if !ok {
			continue
		}
		told[p.copied] = true
		if f.runs[p.copied.run-1].course != l.fromRun.course {
			out = append(out, f.repeatOther(l))
		} else {
			out = append(out, f.leaveCopyOut(l))
		}
	}
	return out
}

// copies looks for lists that stand elsewhere by probes, some lines of every list.
type copies struct {
	f      *field
	who    []uint32                // number of the name, by name number
	probed map[nameAndTime][]int32 // lines
	seen   [1 << 16]uint64         // nearly no line is like a probe: a bit for each probe's name and time tells at once
}

type (
	nameAndTime struct{ who, timeMS uint32 }
	runList     struct{ run, part int32 }
	// copiedPair is a list and the run that it seems to be copied from.
	copiedPair struct {
		copied runList
		from   int32
	}
)

func (c *copies) counts(i int) bool { return c.f.timeMS[i] > 0 && c.f.named(i) }

func (c *copies) of(i int) nameAndTime {
	return nameAndTime{c.who[c.f.name[i]], uint32(c.f.timeMS[i])}
}

func (c *copies) listOf(i int) runList { return runList{c.f.run[i], c.f.part[i]} }

func (c *copies) bit(i int) (word uint32, mask uint64) {
	h := c.who[c.f.name[i]]*0x9E3779B1 ^ uint32(c.f.timeMS[i])*0x85EBCA6B
	h ^= h >> 15
	return h >> 16, 1 << (h & 63)
}

// probe takes the first lines of every list that is not settled yet.
func (c *copies) probe() {
	f := c.f
	c.probed = map[nameAndTime][]int32{}
	taken := map[runList]*uint8{}
	var last runList // lines of one list mostly lie together
	var n *uint8
	for i := 0; i < f.n; i++ {
		if f.settled(i) || !c.counts(i) {
			continue
		}
		if l := c.listOf(i); n == nil || l != last {
			if last, n = l, taken[l]; n == nil {
				n = new(uint8)
				taken[l] = n
			}
		}
		if *n < probes {
			*n++
			c.probed[c.of(i)] = append(c.probed[c.of(i)], int32(i))
			word, mask := c.bit(i)
			c.seen[word] |= mask
		}
	}
}

// meet counts the probes of each list that stand in a run it may be copied from, and keeps
// the pairs of which enough do.
func (c *copies) meet() map[copiedPair]int {
	f := c.f
	// before says whether line i is of the earlier run of the two, in whatever order the
	// sheets came: what is copied is older.
	before := func(i, a int) bool {
		return cmp.Or(cmp.Compare(f.day(i), f.day(a)), cmp.Compare(f.parts[f.part[i]-1].sheetNo, f.parts[f.part[a]-1].sheetNo)) < 0
	}
	runsOf := map[int32]int{} // by course
	for i := range f.runs {
		runsOf[f.runs[i].course]++
	}
	size := make([]int32, len(f.runs))
	for _, r := range f.run {
		size[r-1]++
	}
	// lesser says whether the run of line a is of a course with fewer runs, or else has
	// the shorter list.
	lesser := func(a, i int) bool {
		return cmp.Or(cmp.Compare(runsOf[f.course(a)], runsOf[f.course(i)]), cmp.Compare(size[f.run[a]-1], size[f.run[i]-1])) < 0
	}
	met := map[copiedPair]int{}
	for i := 0; i < f.n; i++ {
		if word, mask := c.bit(i); c.seen[word]&mask == 0 || !c.counts(i) {
			continue
		}
		for _, a := range c.probed[c.of(i)] {
			switch a := int(a); {
			case f.run[a] == f.run[i]:
			case f.course(a) == f.course(i) && before(i, a), f.course(a) != f.course(i) && f.day(a) == f.day(i) && lesser(a, i):
				met[copiedPair{c.listOf(a), f.run[i]}]++
			}
		}
	}
	maps.DeleteFunc(met, func(_ copiedPair, n int) bool { return n < probesMet })
	return met
}

// compare lays a list beside the run that it seems to be copied from, but for the lists of
// that which are told of as copies already. It is false where too few of its lines stand
// there, or somebody has looked at it.
func (c *copies) compare(p copiedPair, lines map[int32][]int, told map[runList]bool) (l copiedList, ok bool) {
	f := c.f
	l = copiedList{run: p.copied.run, part: &f.parts[p.copied.part-1], same: map[int]int{}, fromRun: &f.runs[p.from-1], alone: true}
	there := map[nameAndTime]int{} // lines
	for _, i := range lines[p.from] {
		if c.counts(i) && !told[c.listOf(i)] {
			if there[c.of(i)] = i; l.from == nil {
				l.from = &f.parts[f.part[i]-1]
			}
		}
	}
	for _, i := range lines[p.copied.run] {
		if f.part[i] != p.copied.part {
			l.alone = l.alone && f.settled(i)
			continue
		}
		if l.lines = append(l.lines, i); c.counts(i) {
			l.compared++
			if j, ok := there[c.of(i)]; ok {
				l.same[i] = j
			}
		}
	}
	return l, len(l.same) >= leastCopied && len(l.same)*10 >= l.compared*9 && l.part.kind != fullByHand
}

// namesAlike numbers the names of the dictionary: spellings of one name have one number,
// and two names the same once in 2³² pairs.
func (f *field) namesAlike() []uint32 {
	out := make([]uint32, len(f.person))
	for i := range f.person {
		h := fnv.New32a()
		h.Write([]byte(f.person[i].Full))
		out[i] = h.Sum32()
	}
	return out
}

// copiedList is the list of a run whose people have their times of another.
type copiedList struct {
	run      int32
	part     *partInfo
	lines    []int
	same     map[int]int // lines of the other run by line
	compared int         // lines with a name and a time
	from     *partInfo
	fromRun  *runInfo
	alone    bool // no other list of the run is there
}

func (f *field) leaveList(c copiedList, why string) (n int) {
	for _, i := range c.lines {
		if !f.is(i, record.Repeat) {
			f.setDoubt(i, record.Superseded, why)
			n++
		}
	}
	return n
}

// leaveCopyOut leaves the lines of a run out until somebody says which of two days the
// results are of: nobody ran both.
func (f *field) leaveCopyOut(c copiedList) storedProblem {
	n := f.leaveList(c, "left out until somebody says of which day these results are: they are those of "+c.from.path)
	read := fmt.Sprintf("all %d people have", c.compared)
	if len(c.same) < c.compared {
		read = fmt.Sprintf("%d of %d people have", len(c.same), c.compared)
	}
	p := place.Problem{Place: place.Place{Sheet: c.part.path, Tab: c.part.tab}, Severity: place.Doubtful, Kind: resultsCopied,
		Read: fmt.Sprintf("%s the very times that they have on %s, the run of %s", read, c.from.path, c.fromRun.day.Long())}
	switch {
	case !c.alone:
		p.Severity, p.Do = place.Note, "Nothing to do: another sheet of this run stands."
	case c.from.path == c.part.path:
		p.Do = fmt.Sprintf("Which day are these results of? %s until you say. Put the sheet right, save, and load it again.", leftOut(n))
	default:
		p.Do = fmt.Sprintf("Which day are these results of? %s until you say. If this sheet was copied and not filled in yet: fill it in, save, and load it again. If its date is right and that of the other is not: lapwing sheets withdraw %s",
			leftOut(n), text.Typed(c.from.path))
		p.Answers = place.AnswerLines(place.Answer{Flags: "--date YEAR-MONTH-DAY", When: "if it is of another day"}, place.Answer{Flags: "--kind full", When: "if both are right after all"})
	}
	return storedProblem{p, c.part.sheetNo, c.run}
}

// repeatOther counts the lines of a list once that stand in a run of the same day and
// another course, and leaves its other lines out until somebody says of which it is.
func (f *field) repeatOther(c copiedList) storedProblem {
	for i, j := range c.same {
		f.setDoubt(i, record.Repeat, "the same result stands on "+c.from.path)
		f.sameAs[i] = int32(j)
	}
	n := f.leaveList(c, "left out until somebody says which course this sheet is of: its people have the same times on "+c.from.path)
	p := place.Problem{Place: place.Place{Sheet: c.part.path, Tab: c.part.tab}, Severity: place.Note, Kind: "excerpt",
		Read: fmt.Sprintf("all %d lines stand on %s already, of the same day", len(c.same), c.from.path), Do: "Nothing to do: each finisher is counted once."}
	if n > 0 {
		p.Severity, p.Kind = place.Doubtful, resultsCopied
		p.Read = fmt.Sprintf("%d people have the very times that they have on %s, of the same day and another course", len(c.same), c.from.path)
		p.Do = fmt.Sprintf("Which course is this sheet of? Those people are counted once; %s left out until you say.", text.CountOf(n, "other line is", "other lines are"))
		p.Answers = place.AnswerLines(place.Answer{Flags: "--course NAME"})
	}
	return storedProblem{p, c.part.sheetNo, c.run}
}

// leftOut says how many lines are left out.
func leftOut(n int) string {
	return "Its " + text.CountOf(n, "line is", "lines are") + " left out"
}
