package who

import (
	"cmp"
	"math"
	"slices"
)

// twoPeople parts the lines of one name, sex and course that two people left,
// seen by their standing both in some of the runs. Nothing but pace and how
// often each comes tells them apart: pace is a mixture of two normal
// distributions of known width, fitted by expectation-maximisation, in which
// the lines of one run belong one to each.
//
// How many lines each has is first told by how often they met: of w weekly
// runs, two who come n1 and n2 times meet n1 n2 / w times.
//
// open are the lines that may be either's. ok is false where the lines are not
// of that kind.
func (g *signer) twoPeople(rows []int32) (parts [2][]int32, open []int32, ok bool) {
	byRun := slices.Clone(rows)
	slices.SortStableFunc(byRun, func(a, b int32) int { return int(g.recs[a].run - g.recs[b].run) })
	var met [][2]int32 // the faster first
	var single []int32
	for k := 0; k < len(byRun); k++ {
		x := byRun[k]
		if k+1 < len(byRun) && g.recs[byRun[k+1]].run == g.recs[x].run {
			y := byRun[k+1]
			if k+2 < len(byRun) && g.recs[byRun[k+2]].run == g.recs[x].run {
				return parts, nil, false // three of one name
			}
			if g.recs[y].dev < g.recs[x].dev {
				x, y = y, x
			}
			met = append(met, [2]int32{x, y})
			k++
			continue
		}
		single = append(single, x)
	}
	if len(met) == 0 {
		return parts, nil, false
	}
	days := g.m.lab.runDay
	weeks := float64(days[g.recs[byRun[len(byRun)-1]].run]-days[g.recs[byRun[0]].run])/7 + 1
	n := float64(len(rows))
	// The smaller of the two numbers with the sum n and the product met*weeks.
	few := n / 2
	if d := n*n/4 - float64(len(met))*weeks; d > 0 {
		few -= math.Sqrt(d)
	}
	// Each has a line in the runs where they met; the rest is of the others.
	rest := min(.5, max(.02, (few-float64(len(met)))/max(1, float64(len(single)))))
	q := pacePair{share: [2]float64{1 - rest, rest}}
	q.start(g, met, single)
	for range 20 {
		q.step(g, met, single)
	}
	for _, p := range met {
		if q.crossed(g, p) > .5 {
			p[0], p[1] = p[1], p[0]
		}
		parts[0], parts[1] = append(parts[0], p[0]), append(parts[1], p[1])
	}
	for _, i := range single {
		switch r := q.second(g, i); {
		case r < 1-sureOfTwo:
			parts[0] = append(parts[0], i)
		case r > sureOfTwo:
			parts[1] = append(parts[1], i)
		default:
			open = append(open, i)
		}
	}
	return parts, open, true
}

// twoPaces parts the lines of one name, sex and course, no two of one run, whose
// times fall into two groups far apart, one mostly before the other: a namesake
// stopped, or began. The groups are those of least squares within (Fisher 1958,
// "On grouping for maximum homogeneity", JASA 53:789-798). Somebody's slow days
// lie scattered among the others, so the groups must take turns at most half as
// often as chance would have them. Whether they are two people after all is for
// the weighing to say.
func (g *signer) twoPaces(rows []int32) (fast, slow []int32, ok bool) {
	timed := make([]int32, 0, len(rows))
	lo, hi := int32(math.MaxInt32), int32(math.MinInt32)
	for _, i := range rows {
		if d := g.recs[i].dev; d != noTime {
			timed = append(timed, i)
			lo, hi = min(lo, d), max(hi, d)
		}
	}
	n := len(timed)
	if n < fewestPaced || hi-lo < paceBetween {
		return nil, nil, false
	}
	slices.SortFunc(timed, func(a, b int32) int {
		return cmp.Or(cmp.Compare(g.recs[a].dev, g.recs[b].dev), cmp.Compare(g.recs[a].run, g.recs[b].run))
	})
	all := 0.
	for _, i := range timed {
		all += float64(g.recs[i].dev)
	}
	k, best, gap, sum := 0, 0., 0., 0.
	for x, i := range timed[:n-1] {
		sum += float64(g.recs[i].dev)
		a, b := float64(x+1), float64(n-x-1)
		d := (all-sum)/b - sum/a
		if between := a * b * d * d; between > best {
			k, best, gap = x+1, between, d
		}
	}
	if k < 2 || n-k < 2 || gap < paceBetween {
		return nil, nil, false
	}
	last := g.recs[timed[k-1]].dev
	byRun := slices.Clone(rows)
	slices.SortFunc(byRun, func(a, b int32) int { return cmp.Compare(g.recs[a].run, g.recs[b].run) })
	turns, was := -1, -1
	var untimed []int32 // at the beginning: with whom comes next
	for _, i := range byRun {
		now := was
		if d := g.recs[i].dev; d != noTime {
			now = 0
			if d > last {
				now = 1
			}
			if now != was {
				turns++
			}
			was = now
		}
		switch now {
		case -1:
			untimed = append(untimed, i)
			continue
		case 0:
			fast = append(append(fast, untimed...), i)
		case 1:
			slow = append(append(slow, untimed...), i)
		}
		untimed = nil
	}
	return fast, slow, turns*n <= k*(n-k)
}

const (
	fewestPaced = 6
	paceBetween = 200_000 // millionths of log time
)

const (
	sureOfTwo = .75  // chance from which a line is given to one of two
	paceWidth = .085 // standard deviation of one person's log time against the run's
)

// pacePair are two people told apart by pace: the share that each has of the
// runs with one of them only, and the mean of each.
type pacePair struct {
	share, mean [2]float64
}

// start sets the means: of the lines of runs with both, the faster and the
// slower, whichever is nearer to the lines of the runs with one for the person
// who comes more often.
func (q *pacePair) start(g *signer, met [][2]int32, single []int32) {
	average := func(rows func(yield func(int32) bool)) (float64, bool) {
		sum, n := 0., 0.
		for i := range rows {
			if d := g.recs[i].dev; d != noTime {
				sum += float64(d) / 1e6
				n++
			}
		}
		return sum / max(1, n), n > 0
	}
	fast, _ := average(func(yield func(int32) bool) {
		for _, p := range met {
			if !yield(p[0]) {
				return
			}
		}
	})
	slow, _ := average(func(yield func(int32) bool) {
		for _, p := range met {
			if !yield(p[1]) {
				return
			}
		}
	})
	q.mean = [2]float64{fast, slow}
	if all, ok := average(slices.Values(single)); ok && math.Abs(all-slow) < math.Abs(all-fast) {
		q.mean = [2]float64{slow, fast}
	}
}

func (q *pacePair) density(k int, dev int32) float64 {
	if dev == noTime {
		return 1
	}
	return normal(float64(dev)/1e6-q.mean[k], paceWidth*paceWidth) + .02 // a slow day of either
}

// second is the chance that a line is the second person's.
func (q *pacePair) second(g *signer, i int32) float64 {
	a, b := q.share[0]*q.density(0, g.recs[i].dev), q.share[1]*q.density(1, g.recs[i].dev)
	return b / (a + b)
}

// crossed is the chance that the first line of a run with both is the second
// person's.
func (q *pacePair) crossed(g *signer, p [2]int32) float64 {
	x, y := g.recs[p[0]].dev, g.recs[p[1]].dev
	straight, crossed := q.density(0, x)*q.density(1, y), q.density(1, x)*q.density(0, y)
	return crossed / (straight + crossed)
}

// step is one round of expectation-maximisation.
func (q *pacePair) step(g *signer, met [][2]int32, single []int32) {
	var sum, n [2]float64
	add := func(i int32, second float64) {
		if d := g.recs[i].dev; d != noTime {
			x := float64(d) / 1e6
			n[0] += 1 - second
			n[1] += second
			sum[0] += (1 - second) * x
			sum[1] += second * x
		}
	}
	for _, p := range met {
		r := q.crossed(g, p)
		add(p[0], r)
		add(p[1], 1-r)
	}
	seconds := 0.
	for _, i := range single {
		r := q.second(g, i)
		add(i, r)
		seconds += r
	}
	for k := range q.mean {
		if n[k] > 0 {
			q.mean[k] = sum[k] / n[k]
		}
	}
	if len(single) > 0 {
		share := seconds / float64(len(single))
		q.share = [2]float64{1 - share, share}
	}
}
