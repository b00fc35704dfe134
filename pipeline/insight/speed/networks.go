package speed

import "sort"

// Standing says whether a course's index may be published.
type Standing uint8

const (
	NoIndex     Standing = iota // Reason says why
	Provisional                 // shown with its interval, not ranked
	Published
)

// String is the standing in the words of a course table.
func (s Standing) String() string { return [...]string{"no index", "provisional", "published"}[s] }

// Reason says why a course has no index or only a provisional one.
type Reason uint8

const (
	ReasonNone Reason = iota
	NoResults
	NewCourse    // not in the last full solution
	OneRun       // course and day cannot be told apart
	FewRuns      // under fewestCourseRuns
	FewShared    // under fewestShared runners who also ran on another course
	NothingAlike // no other course of this distance in its network
	TooUncertain // standard error over noIndexSD
	Uncertain    // standard error over provisionalSD
)

// String is the reason in the words of a course table.
func (r Reason) String() string {
	return [...]string{
		"",
		"no results yet",
		"new: it gets an index with the next full refresh",
		"one run only: the course and that day's conditions can't be told apart",
		"fewer than 5 runs so far",
		"fewer than 20 of its runners have also run another course",
		"no other course of this distance to compare with",
		"too uncertain to state",
		"still uncertain: shown, not ranked",
	}[r]
}

const (
	fewestCourseRuns = 5
	fewestShared     = 20
	noIndexSD        = .02
	provisionalSD    = .01
)

// networks finds the connected components of the courses, two courses being
// connected when somebody has run on both, by union-find. They are numbered
// from 0 by falling number of results, the lower course first.
func networks(in *Input, results []int32) []int32 {
	parent := make([]int32, len(in.Courses))
	for c := range parent {
		parent[c] = int32(c)
	}
	find := func(c int32) int32 {
		for parent[c] != c {
			parent[c] = parent[parent[c]]
			c = parent[c]
		}
		return c
	}
	for r := 0; r < in.Runners(); r++ {
		first := find(in.course(int(in.Offsets[r])))
		for i := in.Offsets[r] + 1; i < in.Offsets[r+1]; i++ {
			if c := find(in.course(int(i))); c != first {
				first, c = min(first, c), max(first, c)
				parent[c] = first
			}
		}
	}
	size := map[int32]int{}
	for c := range parent {
		parent[c] = find(int32(c))
		size[parent[c]] += int(results[c])
	}
	roots := make([]int32, 0, len(size))
	for root := range size {
		roots = append(roots, root)
	}
	sort.Slice(roots, func(a, b int) bool {
		if x, y := size[roots[a]], size[roots[b]]; x != y {
			return x > y
		}
		return roots[a] < roots[b]
	})
	number := map[int32]int32{}
	for k, root := range roots {
		number[root] = int32(k)
	}
	for c := range parent {
		parent[c] = number[parent[c]]
	}
	return parent
}

// groups numbers the sets of courses that may be compared with each other:
// one network, one distance. It gives each course's group and its weight in
// the group's mean, its share of the group's results.
func groups(in *Input, network, results []int32) (group []int32, weight []float64) {
	type key struct {
		network  int32
		distance float64
	}
	number := map[key]int32{}
	total := []float64{}
	group, weight = make([]int32, len(network)), make([]float64, len(network))
	for c, n := range network {
		k := key{n, in.Courses[c].DistanceM}
		g, ok := number[k]
		if !ok {
			g = int32(len(total))
			number[k] = g
			total = append(total, 0)
		}
		group[c] = g
		total[g] += float64(results[c])
	}
	for c, g := range group {
		if total[g] > 0 {
			weight[c] = float64(results[c]) / total[g]
		}
	}
	return group, weight
}

// links counts each course's runners, and those of them who have also run on
// another course.
func links(in *Input) (runners, shared []int32) {
	runners, shared = make([]int32, len(in.Courses)), make([]int32, len(in.Courses))
	seen := make([]int32, len(in.Courses)) // last runner + 1
	var mine []int32
	for r := 0; r < in.Runners(); r++ {
		mine = mine[:0]
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			if c := in.course(int(i)); seen[c] != int32(r)+1 {
				seen[c] = int32(r) + 1
				mine = append(mine, c)
			}
		}
		for _, c := range mine {
			runners[c]++
			if len(mine) > 1 {
				shared[c]++
			}
		}
	}
	return runners, shared
}

// judge applies the rules of publication to a course.
func (c *Course) judge(alone bool) {
	c.Standing, c.Reason = NoIndex, ReasonNone
	switch {
	case c.Results == 0:
		c.Reason = NoResults
	case c.Runs == 1:
		c.Reason = OneRun
	case alone:
		c.Reason = NothingAlike
	case c.Runs < fewestCourseRuns:
		c.Reason = FewRuns
	case c.SharedRunners < fewestShared:
		c.Reason = FewShared
	case c.SD > noIndexSD:
		c.Reason = TooUncertain
	case c.SD > provisionalSD:
		c.Standing, c.Reason = Provisional, Uncertain
	default:
		c.Standing = Published
	}
}
