package who

import (
	"math"

	"lapwing/pipeline/parallel"
)

// Field is one field of a comparison.
type Field struct {
	Levels int       // number of levels, level 0 ("not comparable") included
	Start  []float64 // by level: starting weight in bits, or, with KnownU, log2 of the share among matches
	KnownU bool      // u is known pair by pair and stands in the offset: only m is estimated
}

// EM estimates, for pairs of records compared on independent fields, how often
// each level of each field is met among matches (m) and among others (u), and
// how likely each pair is to be a match: the expectation-maximisation of
// Dempster, Laird and Rubin (1977), Journal of the Royal Statistical Society B
// 39:1-38, for the model of Fellegi and Sunter (1969), as in Winkler (1988),
// Proceedings of the Section on Survey Research Methods, American Statistical
// Association, 667-671.
//
// levels[p][f] is the level of field f of pair p; offset[p] holds the bits
// known beforehand: prior, evidence whose weights are fixed, and -log2 u of
// the fields with KnownU. shrink is the number of pairs that the starting
// weights count for. The known part anchors which side is the match, so that
// the two cannot change places.
//
// Sums are taken over fixed stretches of pairs, so that they do not depend on the
// number of threads.
func EM(threads int, levels [][]uint8, offset []float64, fields []Field, shrink float64, rounds int) (m, u [][]float64, match []float64) {
	match = make([]float64, len(levels))
	const piece = 1 << 13
	parts := make([]emSums, (len(levels)+piece-1)/piece)
	for k := range parts {
		parts[k] = newEMSums(fields)
	}
	weight := make([][]float64, len(fields))
	m, u = make([][]float64, len(fields)), make([][]float64, len(fields))
	for f := range fields {
		weight[f] = append([]float64(nil), fields[f].Start...)
		m[f], u[f] = make([]float64, fields[f].Levels), make([]float64, fields[f].Levels)
	}
	for range rounds {
		for f := range m {
			clear(m[f])
			clear(u[f])
		}
		parallel.Each(len(parts), threads, func(k int) {
			lo, hi := k*piece, min(len(levels), (k+1)*piece)
			parts[k].expect(levels[lo:hi], offset[lo:hi], weight, match[lo:hi])
		})
		for k := range parts {
			for f := range m {
				for l := range m[f] {
					m[f][l] += parts[k].m[f][l]
					u[f][l] += parts[k].u[f][l]
				}
			}
		}
		moved := 0.
		for f, field := range fields {
			tm, tu := total(m[f]), total(u[f])
			for l := 1; l < field.Levels; l++ {
				base := (u[f][l] + .5) / (tu + .5*float64(field.Levels-1))
				start := base * math.Exp2(field.Start[l])
				if field.KnownU {
					start = math.Exp2(field.Start[l])
				}
				u[f][l] = (u[f][l] + shrink*base) / (tu + shrink)
				m[f][l] = (m[f][l] + shrink*start) / (tm + shrink)
			}
			if !field.KnownU {
				scale(m[f], 1/total(m[f]))
			}
			scale(u[f], 1/total(u[f]))
			for l := 1; l < field.Levels; l++ {
				w := math.Log2(m[f][l])
				if !field.KnownU {
					w -= math.Log2(u[f][l])
				}
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

// emSums are the numbers of matches and of others at each level, by field.
type emSums struct{ m, u [][]float64 }

func newEMSums(fields []Field) emSums {
	x := emSums{make([][]float64, len(fields)), make([][]float64, len(fields))}
	for f := range fields {
		x.m[f], x.u[f] = make([]float64, fields[f].Levels), make([]float64, fields[f].Levels)
	}
	return x
}

// expect works out how likely each pair is to be a match by the weights, and sums
// that up.
func (x *emSums) expect(levels [][]uint8, offset []float64, weight [][]float64, match []float64) {
	for f := range x.m {
		clear(x.m[f])
		clear(x.u[f])
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
				x.m[f][l] += r
				x.u[f][l] += 1 - r
			}
		}
	}
}

// total sums the levels that can be compared.
func total(p []float64) float64 {
	t := 0.
	for _, x := range p[1:] {
		t += x
	}
	return t
}

func scale(p []float64, by float64) {
	for l := range p {
		p[l] *= by
	}
}

// learnFrom is the number of likely matches from which the archive's own
// weights are trusted, numberFrom that from which the share of those whose
// numbers differ is (learned with the rest, one unknown, and held by the 200
// pairs that its start counts for), priorFrom the number of signatures from
// which the share of matches is, and learnPairs the number of pairs that are
// looked at.
const (
	learnFrom  = 2000
	numberFrom = 500
	priorFrom  = 10_000
	learnPairs = 400_000
)

// Fields that are learned. The names' levels are numbered as in the lists.
const (
	learnClub = iota
	learnNumber
	learnGiven
	learnFamily
	learnFields
)

var (
	givenLevels  = []Level{Missing, Equal, Nickname, ShortForm, FirstOnly, Slip, Mistyped, Differs}
	familyLevels = []Level{Missing, Equal, Swapped, OneToken, Slip, Mistyped, Differs}
	clubLevels   = []Level{Missing, Equal, Differs, OneSide, Neither}
	numberLevels = []Level{Missing, Equal, Differs}
)

// learn estimates the weights of clubs, of numbers that differ and of changed
// names. What depends on how the archive's sheets are filled in differs from
// place to place (is a blank club no club, or not asked for?). Births and
// sexes that contradict are left as they are, because wrong ones are too rare
// among likely matches to be counted; so are names that differ, because
// relatives at the same course would teach the wrong thing.
func (m *model) learn() error {
	if m.o.Fixed || len(m.pairs) == 0 {
		return nil
	}
	w := &m.w
	step := max(1, len(m.pairs)/learnPairs)
	n := (len(m.pairs) + step - 1) / step
	type seen struct {
		level  [learnFields]uint8
		offset float64
	}
	index := func(list []Level, l Level) uint8 {
		for i, x := range list {
			if x == l {
				return uint8(i)
			}
		}
		return 0
	}
	parts := spread(m, n, func(lo, hi int) []seen {
		out := make([]seen, 0, hi-lo)
		for k := lo; k < hi; k++ {
			p := m.pairs[k*step]
			s := m.weigh(&m.sigs[p>>32], &m.sigs[uint32(p)])
			var x seen
			x.offset = s.total - float64(s.bits[Club]) - float64(s.bits[Number])
			x.level[learnClub] = index(clubLevels, s.level[Club])
			x.level[learnNumber] = index(numberLevels, s.level[Number])
			// Taken as known but for the share of matches: the pairs looked at share
			// numbers far more often than any two runners do.
			x.offset += float64(s.bits[Number])
			if x.level[learnNumber] != 0 {
				x.offset -= numberShare(w, s.level[Number])
			}
			for f, e := range map[int]Evidence{learnGiven: GivenName, learnFamily: FamilyName} {
				list, share := givenLevels, &w.Given
				if f == learnFamily {
					list, share = familyLevels, &w.Family
				}
				// So are names.
				if l := s.level[e]; l != Differs && share[l] > 0 {
					if x.level[f] = index(list, l); x.level[f] != 0 {
						x.offset -= math.Log2(share[l])
					}
				}
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
	shares := func(list []Level, share *[nLevel]float64) []float64 {
		out := make([]float64, len(list))
		for i, l := range list {
			if i > 0 {
				out[i] = math.Log2(max(share[l], .002))
			}
		}
		return out
	}
	fields := []Field{
		learnClub:   {Levels: 5, Start: []float64{0, 2.5, w.ClubDiffers, w.ClubOneBlank, w.ClubBothBlank}},
		learnNumber: {Levels: 3, Start: []float64{0, numberShare(w, Equal), numberShare(w, Differs)}, KnownU: true},
		learnGiven:  {Levels: len(givenLevels), Start: shares(givenLevels, &w.Given), KnownU: true},
		learnFamily: {Levels: len(familyLevels), Start: shares(familyLevels, &w.Family), KnownU: true},
	}
	// How many pairs of signatures are one person's at all is learned with the
	// rest: messy sheets make many signatures of one runner, clean numbered
	// ones hardly ever two.
	all := float64(len(m.sigs)) * float64(len(m.sigs)-1) / 2
	least := -1.
	if len(m.sigs) >= priorFrom {
		least = -5
	}
	var pm, pu [][]float64
	likely, shift := 0., 0.
	for range 8 {
		var match []float64
		pm, pu, match = EM(m.o.Threads, levels, offset, fields, 200, 30)
		likely = 0
		for _, r := range match {
			likely += r
		}
		likely *= float64(step)
		now := min(3, max(least, math.Log2((likely+1)/all)+math.Log2(m.people)))
		moved := now - shift
		for p := range offset {
			offset[p] += moved
		}
		shift = now
		if math.Abs(moved) < .02 {
			break
		}
	}
	if likely >= learnFrom || len(m.sigs) >= priorFrom {
		w.Prior = shift
	}
	bits := func(f, l int) float64 { return math.Log2(pm[f][l] / pu[f][l]) }
	clamp := func(x, lo, hi float64) float64 { return min(hi, max(lo, x)) }
	if likely >= numberFrom {
		w.NumberDiffers = clamp(math.Log2(pm[learnNumber][2]), -12, -2)
	}
	if likely < learnFrom {
		return nil
	}
	w.ClubDiffers = clamp(bits(learnClub, 2), -6, -1)
	w.ClubOneBlank = clamp(bits(learnClub, 3), -5, .5)
	w.ClubBothBlank = clamp(bits(learnClub, 4), 0, 2)
	for i, l := range givenLevels {
		if l != Missing && l != Differs && l != Equal {
			w.Given[l] = clamp(pm[learnGiven][i], w.Given[l]/4, w.Given[l]*8)
		}
	}
	for i, l := range familyLevels {
		if l != Missing && l != Differs && l != Equal {
			w.Family[l] = clamp(pm[learnFamily][i], w.Family[l]/4, w.Family[l]*8)
		}
	}
	w.Learned, w.Matches = true, likely
	return nil
}

// numberShare is log2 of the share of pairs of one person whose numbers are the
// same, or differ. That two people's differ is all but certain, so that the
// share of those that differ is their weight.
func numberShare(w *Weights, l Level) float64 {
	if l == Equal {
		return math.Log2(1 - math.Exp2(w.NumberDiffers))
	}
	return w.NumberDiffers
}
