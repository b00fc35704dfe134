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

// copiedRuns finds runs nine in ten of whose named and timed lines stand in another run
// of their course that was loaded before, or that is of an earlier day on the same
// sheet, and leaves them out: one of the two dates is wrong, or a sheet was copied and
// not filled in, or not yet to the end.
func (f *field) copiedRuns() []storedProblem {
	type result struct{ course, name, timeMS int32 }
	counts := func(i int) bool { return f.timeMS[i] > 0 && f.named(i) }
	of := func(i int) result { return result{f.course(i), f.name[i], f.timeMS[i]} }
	probed := map[result][]int32{} // lines
	// Nearly no line is like a probe: a bit for each probe's name and time tells at once.
	var seen [1 << 16]uint64
	bit := func(i int) (word uint32, mask uint64) {
		h := uint32(f.name[i])*0x9E3779B1 ^ uint32(f.timeMS[i])*0x85EBCA6B
		h ^= h >> 15
		return h >> 16, 1 << (h & 63)
	}
	taken := make([]uint8, len(f.runs))
	for i := 0; i < f.n; i++ {
		if r := f.run[i] - 1; taken[r] < probes && !f.settled(i) && counts(i) {
			taken[r]++
			probed[of(i)] = append(probed[of(i)], int32(i))
			word, mask := bit(i)
			seen[word] |= mask
		}
	}
	before := func(i, a int) bool {
		p, q := &f.parts[f.part[i]-1], &f.parts[f.part[a]-1]
		return p.sheetNo < q.sheetNo || p.sheetNo == q.sheetNo && f.day(i) < f.day(a)
	}
	type pair struct{ copied, from int32 } // runs
	met := map[pair]int{}
	for i := 0; i < f.n; i++ {
		if word, mask := bit(i); seen[word]&mask == 0 || !counts(i) {
			continue
		}
		for _, a := range probed[of(i)] {
			if f.run[a] != f.run[i] && before(i, int(a)) {
				met[pair{f.run[a], f.run[i]}]++
			}
		}
	}
	maps.DeleteFunc(met, func(_ pair, n int) bool { return n < probesMet })
	if len(met) == 0 {
		return nil
	}
	lines := map[int32][]int{} // of the runs that may be copies, or copied
	for p := range met {
		lines[p.copied], lines[p.from] = nil, nil
	}
	for i := 0; i < f.n; i++ {
		if l, ok := lines[f.run[i]]; ok && counts(i) {
			lines[f.run[i]] = append(l, i)
		}
	}
	pairs := slices.SortedFunc(maps.Keys(met), func(a, b pair) int {
		return cmp.Or(cmp.Compare(f.runs[a.copied-1].rank, f.runs[b.copied-1].rank), cmp.Compare(f.runs[a.from-1].rank, f.runs[b.from-1].rank))
	})
	var out []storedProblem
	told := map[int32]bool{}
	for _, p := range pairs {
		mine := lines[p.copied]
		if told[p.copied] || len(mine) < leastCopied {
			continue
		}
		there := map[result]bool{}
		for _, i := range lines[p.from] {
			there[of(i)] = true
		}
		same := 0
		for _, i := range mine {
			if there[of(i)] {
				same++
			}
		}
		if same < leastCopied || same*10 < len(mine)*9 {
			continue
		}
		part, from := &f.parts[f.part[mine[0]]-1], &f.parts[f.part[lines[p.from][0]]-1]
		if part.kind == fullByHand {
			continue // somebody has looked at it
		}
		told[p.copied] = true
		out = append(out, f.leaveCopyOut(p.copied, p.from, part, from, same, len(mine)))
	}
	return out
}

// leaveCopyOut leaves the lines of a run out until somebody says which of two days the
// results are of: nobody ran both.
func (f *field) leaveCopyOut(copied, before int32, part, from *partInfo, same, of int) storedProblem {
	run := &f.runs[before-1]
	n := 0
	for i := range f.n {
		if f.run[i] == copied && !f.settled(i) {
			f.setDoubt(i, record.Superseded, "left out until somebody says of which day these results are: they are those of "+from.path)
			n++
		}
	}
	todo := fmt.Sprintf("Which day are these results of? %s until you say. If this sheet was copied and not filled in yet: fill it in, save, and load it again. If its date is right and that of the other is not: lapwing sheets withdraw %q. If both are right after all: lapwing load %q --kind full.",
		leftOut(n), from.path, part.path)
	if from.path == part.path {
		todo = fmt.Sprintf("Which day are these results of? %s until you say. Put the sheet right, save, and load it again.", leftOut(n))
	}
	read := fmt.Sprintf("all %d people have", of)
	if same < of {
		read = fmt.Sprintf("%d of %d people have", same, of)
	}
	return storedProblem{place.Problem{Place: place.Place{Sheet: part.path, Tab: part.tab}, Severity: place.Doubtful, Kind: resultsCopied,
		Read: fmt.Sprintf("%s the very times that they have on %s, the run of %s", read, from.path, run.day.Long()), Do: todo}, part.sheetNo, copied}
}

// leftOut says how many lines are left out.
func leftOut(n int) string {
	return "Its " + text.CountOf(n, "line is", "lines are") + " left out"
}
