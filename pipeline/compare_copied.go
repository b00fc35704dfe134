package pipeline

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"lapwing/pipeline/place"
)

// resultsCopied is the kind of question about a run whose people all have the very
// times that they have in an earlier run: last week's sheet under a new date.
const resultsCopied = "results-copied"

// A run is compared with others of its course where probes of its lines stand in
// one, and told of from leastCopied lines on. That six people have the same times to
// the second twice, spread over a minute each, happens once in 60⁶ ≈ 5 · 10¹⁰ pairs.
const (
	probes      = 3
	leastCopied = 6
)

// copiedRuns finds runs all of whose named and timed lines stand in another run of
// their course that was loaded before, or that is of an earlier day on the same
// sheet.
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
	maps.DeleteFunc(met, func(_ pair, n int) bool { return n < probes })
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
		if slices.ContainsFunc(mine, func(i int) bool { return !there[of(i)] }) {
			continue
		}
		told[p.copied] = true
		part, from := &f.parts[f.part[mine[0]]-1], &f.parts[f.part[lines[p.from][0]]-1]
		run := &f.runs[p.from-1]
		out = append(out, storedProblem{place.Problem{Place: place.Place{Sheet: part.path, Tab: part.tab}, Severity: place.Look, Kind: resultsCopied,
			Read: fmt.Sprintf("all %d people have the very times that they have on %s, the run of %s", len(mine), from.path, run.day.Long()),
			Do:   fmt.Sprintf("Which day are these results of? If the sheet was copied and not filled in yet: lapwing sheets withdraw %q, and load the right one. If the other is the wrong one, withdraw that.", part.path)}, part.sheetNo, p.copied})
	}
	return out
}
