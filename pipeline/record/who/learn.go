package who

import (
	"math"
)

// EM estimates, for pairs of records compared on independent fields, how often
// each level of each field is met among matches (m) and among others (u), and
// how likely each pair is to be a match: the expectation-maximisation of
// Dempster, Laird and Rubin (1977, Journal of the Royal Statistical Society B
// 39:1-38) for the model of Fellegi and Sunter (1969), as in Winkler (1988),
// Proceedings of the Section on Survey Research Methods, American Statistical
// Association, 667-671.
//
// levels[p][f] is the level of field f of pair p, 0 meaning not comparable;
// offset[p] holds the bits known beforehand (prior and evidence whose weights
// are fixed); counts[f] is the number of levels of field f, 0 included. start
// holds the starting weights in bits, start[f][level]; shrink is the number of
// pairs that the starting weights count for. The fixed part anchors which side
// is the match, so that the two cannot change places.
func EM(levels [][]uint8, offset []float64, counts []int, start [][]float64, shrink float64, rounds int) (m, u [][]float64, match []float64) {
	fields := len(counts)
	match = make([]float64, len(levels))
	weight := make([][]float64, fields)
	for f := range weight {
		weight[f] = append([]float64(nil), start[f]...)
	}
	m, u = make([][]float64, fields), make([][]float64, fields)
	for f := range m {
		m[f], u[f] = make([]float64, counts[f]), make([]float64, counts[f])
	}
	for range rounds {
		for f := range m {
			clear(m[f])
			clear(u[f])
		}
		for p, lv := range levels {
			s := offset[p]
			for f, l := range lv {
				s += weight[f][l]
			}
			r := 1 / (1 + math.Exp2(-s))
			match[p] = r
			for f, l := range lv {
				if l != 0 {
					m[f][l] += r
					u[f][l] += 1 - r
				}
			}
		}
		moved := 0.
		for f := range m {
			tm, tu := 0., 0.
			for l := 1; l < counts[f]; l++ {
				tm += m[f][l]
				tu += u[f][l]
			}
			for l := 1; l < counts[f]; l++ {
				// The prior pairs are spread as the others are, moved by the
				// starting weight.
				base := (u[f][l] + .5) / (tu + .5*float64(counts[f]-1))
				u[f][l] = (u[f][l] + shrink*base) / (tu + shrink)
				start := base * math.Exp2(start[f][l])
				m[f][l] = (m[f][l] + shrink*start) / (tm + shrink)
			}
			normalise(m[f])
			normalise(u[f])
			for l := 1; l < counts[f]; l++ {
				w := math.Log2(m[f][l] / u[f][l])
				moved = max(moved, math.Abs(w-weight[f][l]))
				weight[f][l] = w
			}
		}
		if moved < 1e-4 {
			break
		}
	}
	return m, u, match
}

func normalise(p []float64) {
	t := 0.
	for _, x := range p[1:] {
		t += x
	}
	if t == 0 {
		return
	}
	for l := 1; l < len(p); l++ {
		p[l] /= t
	}
}

// learnFrom is the number of likely matches from which the archive's own
// weights are trusted, and learnPairs the number of pairs that are looked at.
const (
	learnFrom  = 2000
	learnPairs = 400_000
)

// Fields that are learned, and their levels.
const (
	learnClub = iota
	learnNumber
)

// learn estimates the weights of clubs and of numbers that differ. What
// depends on how the archive's sheets are filled in differs from place to
// place (is a blank club no club, or not asked for?); births and sexes that
// contradict are left as they are, because wrong ones are too rare among
// likely matches to be counted.
func (m *model) learn() error {
	if m.o.Fixed || len(m.pairs) == 0 {
		return nil
	}
	step := max(1, len(m.pairs)/learnPairs)
	n := (len(m.pairs) + step - 1) / step
	type seen struct {
		level  [2]uint8
		offset float64
		ok     bool
	}
	parts := spread(m, n, func(lo, hi int) []seen {
		out := make([]seen, 0, hi-lo)
		for k := lo; k < hi; k++ {
			p := m.pairs[k*step]
			a, b := &m.sigs[p>>32], &m.sigs[uint32(p)]
			s := m.weigh(a, b)
			x := seen{offset: s.total - float64(s.bits[Club]) - float64(s.bits[Number]), ok: true}
			switch {
			case s.level[Club] == Neither:
				x.level[learnClub] = 4
			case s.level[Club] == OneSide:
				x.level[learnClub] = 3
			case s.level[Club] == Equal:
				x.level[learnClub] = 1
			default:
				x.level[learnClub] = 2
			}
			switch s.level[Number] {
			case Equal:
				x.level[learnNumber] = 1
			case Differs:
				x.level[learnNumber] = 2
			}
			out = append(out, x)
		}
		return out
	})
	if err := m.ctx.Err(); err != nil {
		return err
	}
	var levels [][]uint8
	var offset []float64
	for _, part := range parts {
		for i := range part {
			levels = append(levels, part[i].level[:])
			offset = append(offset, part[i].offset)
		}
	}
	w := &m.w
	start := [][]float64{{0, 2.5, w.ClubDiffers, w.ClubOneBlank, w.ClubBothBlank},
		{0, w.NumberShared + math.Log2(m.people), w.NumberDiffers}}
	pm, pu, match := EM(levels, offset, []int{5, 3}, start, 200, 30)
	total := 0.
	for _, r := range match {
		total += r
	}
	total *= float64(step)
	if total < learnFrom {
		return nil
	}
	bits := func(f, l int) float64 { return math.Log2(pm[f][l] / pu[f][l]) }
	clamp := func(x, lo, hi float64) float64 { return min(hi, max(lo, x)) }
	w.ClubDiffers = clamp(bits(learnClub, 2), -8, -1)
	w.ClubOneBlank = clamp(bits(learnClub, 3), -5, .5)
	w.ClubBothBlank = clamp(bits(learnClub, 4), 0, 2)
	if pu[learnNumber][2] > 0 {
		w.NumberDiffers = clamp(bits(learnNumber, 2), -8, -2)
	}
	w.Learned, w.Matches = true, total
	return nil
}
