package who

import (
	"math"
	"math/bits"

	"lapwing/pipeline/unit"
)

// edges hold what the lines of a cluster say of the birth date, so that one
// wrong age among many can be told from many that contradict.
//
// A line rules out the birth dates before its window's first day and after its
// last. How many lines rule out a date is therefore the number of first days
// after it plus the number of last days before it, and only the latest first
// days and the earliest last days matter: a date that more than edgeMost lines
// rule out is out of the question. Two clusters are pooled by keeping the
// latest and the earliest of both, in any order with the same outcome.
//
// Each edge is day<<8 | width, width being sixteen times log2 of how many such
// windows fill a life: what a wrong line costs depends on how narrow it is.
type edges struct {
	n      int32           // lines with a window
	lo, hi [edgeMost]int32 // min(n, edgeMost) first days, the latest first; last days, the earliest first
}

const (
	edgeMost = 8
	lineCost = 104    // what a wrong line costs, in sixteenths of a bit, where only their number counts
	lifeDays = 25_000 // width 0: a window that says nothing
)

func (e *edges) kept() int { return int(min(e.n, edgeMost)) }

// add adds a line's window.
func (e *edges) add(lo, hi unit.Day) {
	w := narrowness(hi - lo + 1 + 2*pad)
	k := e.kept()
	e.n++
	insert(&e.lo, k, int32(lo)<<8|w, false)
	insert(&e.hi, k, int32(hi)<<8|w, true)
}

// insert puts x in its place among the first k, the last of a full list falls
// out.
func insert(list *[edgeMost]int32, k int, x int32, up bool) {
	if k == edgeMost {
		if k--; (x < list[k]) != up {
			return
		}
	}
	for ; k > 0 && (x < list[k-1]) == up && x != list[k-1]; k-- {
		list[k] = list[k-1]
	}
	list[k] = x
}

// narrowness is 16 log2(lifeDays / days) to a tenth of a bit, from 0 to 255.
func narrowness(days unit.Day) int32 {
	d := uint32(max(1, days))
	l := bits.Len32(d) - 1
	log := int32(l*16) + int32(uint64(d)<<4>>l) - 16 // linear between powers of two
	return min(255, max(0, 234-log))
}

func (e *edges) pool(o *edges) {
	for k := range o.kept() {
		insert(&e.lo, min(int(e.n)+k, edgeMost), o.lo[k], false)
		insert(&e.hi, min(int(e.n)+k, edgeMost), o.hi[k], true)
	}
	e.n += o.n
}

// fit is how the lines agree on a birth date.
type fit struct {
	mass    float64  // the chance of the lines, over all birth dates; at most 1
	lo, hi  unit.Day // the dates that the lines allow best
	against int32    // lines that rule them out
	cost    int32    // and what they cost, in sixteenths of a bit
}

// fitBirths lays the edges of one cluster, or of two, over the births of the
// archive; b is nil for one. Windows are widened by a margin on either side.
// wrong is the cost of a wrong line in sixteenths of a bit, beside that of
// hitting on just this window. Without d there is no mass.
func fitBirths(d *birthDensity, a, b *edges, margin unit.Day, wrong int32) fit {
	var los, his [2*edgeMost + 1]int32
	nlo, nhi := mergeEdges(a, b, &los, &his)
	f := fit{cost: math.MaxInt32}
	cost, against := int32(0), int32(0)
	for _, x := range los[:nlo] {
		cost += x&255 + wrong
		against++
	}
	const ends = unit.Day(1 << 21)
	at, before := -ends, 0.
	i, j := 0, 0
	for at < ends {
		next := ends
		if i < nlo {
			next = min(next, unit.Day(los[i]>>8)-margin)
		}
		if j < nhi {
			next = min(next, unit.Day(his[j]>>8)+margin+1)
		}
		if next > at {
			upTo := 1.
			if d != nil {
				upTo = d.upTo(next)
				if cost < int32(len(halves)) {
					f.mass += halves[cost] * max(upTo-before, 1e-7*float64(min(36_500, next-at)))
				}
			}
			if cost < f.cost || cost == f.cost && next-1-at > f.hi-f.lo {
				f.lo, f.hi, f.cost, f.against = at, next-1, cost, against
			}
			before = upTo
		}
		at = next
		for ; i < nlo && unit.Day(los[i]>>8)-margin <= at; i++ {
			cost -= los[i]&255 + wrong
			against--
		}
		for ; j < nhi && unit.Day(his[j]>>8)+margin+1 <= at; j++ {
			cost += his[j]&255 + wrong
			against++
		}
	}
	return f
}

// mergeEdges lists the first days and the last days of both, upwards.
func mergeEdges(a, b *edges, los, his *[2*edgeMost + 1]int32) (nlo, nhi int) {
	i, j := a.kept()-1, -1
	if b != nil {
		j = b.kept() - 1
	}
	for ; i >= 0 || j >= 0; nlo++ {
		if j < 0 || i >= 0 && a.lo[i] <= b.lo[j] {
			los[nlo] = a.lo[i]
			i--
		} else {
			los[nlo] = b.lo[j]
			j--
		}
	}
	i, j = 0, 0
	kb := 0
	if b != nil {
		kb = b.kept()
	}
	for ; i < a.kept() || j < kb; nhi++ {
		if j == kb || i < a.kept() && a.hi[i] <= b.hi[j] {
			his[nhi] = a.hi[i]
			i++
		} else {
			his[nhi] = b.hi[j]
			j++
		}
	}
	return nlo, nhi
}

// halves holds 2^(-k/16).
var halves = func() (h [640]float64) {
	for k := range h {
		h[k] = math.Exp2(-float64(k) / 16)
	}
	return
}()

// choices is log2 of the number of ways to choose k of n.
func choices(n, k int32) float64 {
	c := 0.
	for i := range k {
		c += math.Log2(float64(n-i) / float64(i+1))
	}
	return c
}
