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

// covered is the share of missed true pairs of rows that the first n entries
// of the review list (questions and pairs together, by gain) would settle.
func covered(r *Result, truth []int32, n int) float64 {
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
	type link struct{ a, b int32 }
	missed := map[link]int64{}
	total := int64(0)
	for t, fs := range byTruth {
		for x, a := range fs {
			for _, b := range fs[x+1:] {
				p := cells[cell{a, t}] * cells[cell{b, t}]
				missed[link{min(a, b), max(a, b)}] += p
				total += p
			}
		}
	}
	if total == 0 {
		return 1
	}
	type entry struct {
		gain  float64
		links []link
	}
	var list []entry
	for _, p := range r.Doubtful {
		list = append(list, entry{p.Gain, []link{{p.A, p.B}}})
	}
	for _, q := range r.Questions {
		e := entry{gain: q.Gain}
		rs := append([]int32(nil), q.Runners...)
		for _, row := range q.Rows {
			rs = append(rs, r.Runner[row])
		}
		for x, a := range rs {
			for _, b := range rs[x+1:] {
				e.links = append(e.links, link{min(a, b), max(a, b)})
			}
		}
		list = append(list, e)
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].gain > list[j].gain })
	got := int64(0)
	seen := map[link]bool{}
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
