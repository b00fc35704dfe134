package who

import "sort"

// score holds how well a clustering agrees with the truth. Pairwise: of the
// pairs of rows put together, how many belong together (precision), and the
// other way about (recall). B-cubed (Bagga and Baldwin 1998, LREC workshop on
// linguistic coreference): the same averaged over rows.
type score struct{ precision, recall, bPrecision, bRecall float64 }

func measure(found, truth []int32) score {
	type cell struct{ f, t int32 }
	cells := map[cell]int64{}
	fs, ts := map[int32]int64{}, map[int32]int64{}
	for i := range found {
		cells[cell{found[i], truth[i]}]++
		fs[found[i]]++
		ts[truth[i]]++
	}
	pairs := func(n int64) int64 { return n * (n - 1) / 2 }
	var both, inFound, inTruth int64
	var bp, br float64
	keys := make([]cell, 0, len(cells))
	for c := range cells {
		keys = append(keys, c)
	}
	sort.Slice(keys, func(i, j int) bool {
		return keys[i].f < keys[j].f || keys[i].f == keys[j].f && keys[i].t < keys[j].t
	})
	for _, c := range keys {
		n := cells[c]
		both += pairs(n)
		bp += float64(n*n) / float64(fs[c.f])
		br += float64(n*n) / float64(ts[c.t])
	}
	for _, n := range fs {
		inFound += pairs(n)
	}
	for _, n := range ts {
		inTruth += pairs(n)
	}
	n := float64(len(found))
	return score{float64(both) / float64(inFound), float64(both) / float64(inTruth), bp / n, br / n}
}

// twoOf is two runners.
type twoOf struct{ a, b int32 }

func linkOf(a, b int32) twoOf { return twoOf{min(a, b), max(a, b)} }

// missing counts, by pair of runners, the pairs of rows of one person that they
// part.
func missing(r *Result, truth []int32) (missed map[twoOf]int64, total int64) {
	type cell struct{ f, t int32 }
	cells := map[cell]int64{}
	byTruth := map[int32][]int32{}
	for i := range truth {
		c := cell{r.Runner[i], truth[i]}
		if cells[c] == 0 {
			byTruth[truth[i]] = append(byTruth[truth[i]], r.Runner[i])
		}
		cells[c]++
	}
	missed = map[twoOf]int64{}
	for t, fs := range byTruth {
		for x, a := range fs {
			for _, b := range fs[x+1:] {
				p := cells[cell{a, t}] * cells[cell{b, t}]
				missed[linkOf(a, b)] += p
				total += p
			}
		}
	}
	return missed, total
}

// entry is a question of the review list and the pairs of runners that its
// answer settles.
type entry struct {
	gain  float64
	links []twoOf
}

func amongThem(runners []int32) (out []twoOf) {
	for x, a := range runners {
		for _, b := range runners[x+1:] {
			out = append(out, linkOf(a, b))
		}
	}
	return out
}

// settles is the share of missed pairs of rows that the n entries of most gain
// would settle.
func settles(list []entry, n int, missed map[twoOf]int64, total int64) float64 {
	if total == 0 {
		return 1
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].gain > list[j].gain })
	got := int64(0)
	seen := map[twoOf]bool{}
	for _, e := range list[:min(n, len(list))] {
		for _, l := range e.links {
			if !seen[l] {
				seen[l] = true
				got += missed[l]
			}
		}
	}
	return float64(got) / float64(total)
}

// coveredByPairs is the share of missed pairs of rows that the first n pairs of
// the review list name.
func coveredByPairs(r *Result, truth []int32, n int) float64 {
	missed, total := missing(r, truth)
	var list []entry
	for _, p := range r.Doubtful {
		list = append(list, entry{p.Gain, []twoOf{{p.A, p.B}}})
	}
	return settles(list, n, missed, total)
}

// covered is the same where each question counts as one: pairs, several runners
// of whom some may be one, and lines of namesakes.
func covered(r *Result, truth []int32, n int) float64 {
	missed, total := missing(r, truth)
	var list []entry
	grouped := map[twoOf]bool{}
	for _, g := range r.Groups {
		e := entry{g.Gain, amongThem(g.Runners)}
		for _, l := range e.links {
			grouped[l] = true
		}
		list = append(list, e)
	}
	for _, p := range r.Doubtful {
		if !grouped[twoOf{p.A, p.B}] {
			list = append(list, entry{p.Gain, []twoOf{{p.A, p.B}}})
		}
	}
	for _, q := range r.Questions {
		rs := append([]int32(nil), q.Runners...)
		for _, row := range q.Rows {
			rs = append(rs, r.Runner[row])
		}
		list = append(list, entry{q.Gain, amongThem(rs)})
	}
	return settles(list, n, missed, total)
}

// takenApart is the share of the pairs of rows of two people that the n splits of
// most gain would take apart.
func takenApart(r *Result, truth []int32, n int) float64 {
	type cell struct{ f, t int32 }
	cells := map[cell]int64{}
	rows := map[int32]int64{}
	for i := range truth {
		cells[cell{r.Runner[i], truth[i]}]++
		rows[r.Runner[i]]++
	}
	var total, got int64 // each pair twice
	for c, k := range cells {
		total += k * (rows[c.f] - k)
	}
	if total == 0 {
		return 1
	}
	for _, s := range r.Splits[:min(n, len(r.Splits))] {
		in := map[int32]int64{}
		for _, i := range s.Rows {
			in[truth[i]]++
		}
		for t, k := range in {
			// rows of this person within, against those of others without
			got += 2 * k * (rows[s.Runner] - int64(len(s.Rows)) - (cells[cell{s.Runner, t}] - k))
		}
	}
	return float64(got) / float64(total)
}
