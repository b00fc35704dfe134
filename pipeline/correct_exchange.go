package pipeline

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"lapwing/pipeline/parallel"
	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// Exchanged codes: two people of one run whose times fit each other's form and
// not their own. One is far ahead of their form, the other far behind theirs,
// and exchanged both come out near it. It is proposed, never changed: an early
// finisher may have had the day of a lifetime, and one far behind may have run
// with a child.
//
// The bounds are in per cent of time, on the course and day. They are common
// sense, no source: under a tenth the two can't be told from a good and a bad
// day (the all-out spread is about 3 %, most people vary by 5 to 8 %).
const (
	exchangedAway   = 10 // both are at least this far from their own form
	exchangedNearLo = -4 // exchanged, neither is more than this ahead of it,
	exchangedNearHi = 6  // nor more than this behind
	exchangedRuns   = 6  // timed results that a form must rest on
)

// odd is a time that does not fit its owner.
type odd struct {
	line   int32
	log    float64 // log of the time
	behind float64 // log of time over form: above 0 behind it
}

func (pl *Pipeline) stepExchanged(ctx context.Context, w *work) error {
	f, p := w.field, w.people
	fast, slow := map[int32][]odd{}, map[int32][]odd{} // by run
	away := math.Log1p(exchangedAway / 100.)
	ahead, behind := float32(math.Expm1(-away)), float32(math.Expm1(away))
	found := make([][]odd, (len(p.no)+exchangedPiece-1)/exchangedPiece)
	parallel.Each(len(found), pl.workers(), func(piece int) {
		for r := piece * exchangedPiece; r < min(len(p.no), (piece+1)*exchangedPiece); r++ {
			lines := p.order[p.begin[r]:p.begin[r+1]]
			enough := 0 // times in the model, once somebody asks
			for k, l := range lines {
				s := w.speed.shortfall[int(p.begin[r])+k]
				if !(s <= ahead || s >= behind) || !f.inModel(int(l)) {
					continue
				}
				if enough == 0 {
					enough = f.timesInModel(lines)
				}
				if enough >= exchangedRuns {
					found[piece] = append(found[piece], odd{l, math.Log(float64(f.timeMS[l])), math.Log1p(float64(s))})
				}
			}
		}
	})
	for _, list := range found {
		for _, o := range list {
			if run := f.run[o.line]; o.behind < 0 {
				fast[run] = append(fast[run], o)
			} else {
				slow[run] = append(slow[run], o)
			}
		}
	}
	var pairs []exchangePair
	for run, ahead := range fast {
		for _, a := range ahead {
			pairs = append(pairs, f.partners(a, slow[run])...)
		}
	}
	// the best fit first; everybody is proposed once
	slices.SortFunc(pairs, func(x, y exchangePair) int {
		return cmp.Or(cmp.Compare(x.misfit, y.misfit), cmp.Compare(f.key[x.a], f.key[y.a]), cmp.Compare(f.key[x.b], f.key[y.b]))
	})
	taken := map[int32]bool{}
	var best []exchangePair
	for _, x := range pairs {
		if !taken[x.a] && !taken[x.b] {
			taken[x.a], taken[x.b] = true, true
			best = append(best, x)
		}
	}
	slices.SortFunc(best, func(x, y exchangePair) int { return cmp.Compare(f.key[x.a], f.key[y.a]) })
	for _, x := range best {
		w.problems = append(w.problems, f.askExchanged(x))
	}
	return nil
}

// exchangedPiece is how many runners are gone through at a time.
const exchangedPiece = 1 << 13

// timesInModel is how many of a runner's lines are evidence for the model.
func (f *field) timesInModel(lines []int32) (n int) {
	for _, l := range lines {
		if f.inModel(int(l)) {
			n++
		}
	}
	return n
}

// exchangePair is two lines that fit each other's owner.
type exchangePair struct {
	a, b   int32
	misfit float64
}

// partners lists the times of a run that fit the form of the owner of a, while
// a fits theirs.
func (f *field) partners(a odd, slow []odd) (out []exchangePair) {
	lo, hi := math.Log1p(exchangedNearLo/100.), math.Log1p(exchangedNearHi/100.)
	for _, b := range slow {
		// b's time against the form of a's owner, and the other way round
		x, y := b.log-a.log+a.behind, a.log-b.log+b.behind
		if x >= lo && x <= hi && y >= lo && y <= hi {
			out = append(out, exchangePair{a.line, b.line, x*x + y*y})
		}
	}
	return out
}

func (f *field) askExchanged(x exchangePair) storedProblem {
	p := &f.parts[f.part[x.a]-1]
	r := &f.runs[f.run[x.a]-1]
	who := func(l int32) string {
		return fmt.Sprintf("%s, place %s, %s", f.names.list[f.name[l]], orDash(f.position[l]), unit.ClockMS(f.timeMS[l]))
	}
	do := "Please ask both."
	if f.position[x.a] > 0 && f.position[x.b] > 0 {
		do = fmt.Sprintf("Please ask both. If each ran the other's time, their names are to be exchanged: lapwing correct %s %s %d --exchange %d", f.courses[r.course-1].course, r.day, f.position[x.a], f.position[x.b])
	}
	return storedProblem{place.Problem{
		Place: place.Place{Sheet: p.path, Tab: p.tab, Row: int(f.row[x.a])}, Severity: place.Look, Kind: "codes-exchanged",
		Read: who(x.a) + "; " + who(x.b), Expected: "times nearer to what each of them runs; each fits the other", Do: do,
	}, p.sheetNo, f.run[x.a]}
}
