package who

import "math"

// inTurnShare is the share of people with two numbers who use both by turns;
// the others have gone over from one to the other, but for a line in strayShare
// that has the other number all the same. apartShare is the share of pairs of
// two people who never met in a run of whom one came no more when the other
// began: one in three in made-up districts where people come and go (more where
// they have few lines, less where they have many).
//
// No published source gives them. inTurnShare only sets how much numbers in use
// side by side can weigh, its log2.
const (
	inTurnShare = 1. / 8
	strayShare  = .03
	apartShare  = .35
)

// weighNumberTurns weighs how the lines of two numbers lie in time. A number is
// lost or forgotten and another takes its place; two people each go on with
// their own. A single line says nothing here: somebody else's number is used by
// mistake at any time.
func (m *model) weighNumberTurns(a, b *cluster, s *sum) {
	few := min(len(a.runs), len(b.runs))
	if few < 2 {
		return
	}
	bits, level := turnBits(outOfPlace(a.runs, b.runs), few), Equal
	if bits < 0 {
		level = Differs
	}
	s.add(NumberTurns, level, bits)
}

// turnBits is the weight of k lines out of place, of n at most. One person has
// binomially few, or uses both numbers by turns, which looks like two people;
// two people have none, or any number.
func turnBits(k, n int) float64 {
	follows := 0.
	if k*4 <= n { // beyond, the chance is next to nothing
		follows = math.Exp2(choices(int32(n), int32(k)) + float64(k)*math.Log2(strayShare) + float64(n-k)*math.Log2(1-strayShare))
	}
	two := apartShare
	if k > 0 {
		two = (1 - apartShare) / float64(n)
	}
	return math.Log2(inTurnShare + (1-inTurnShare)*min(1/apartShare, follows/two))
}

// outOfPlace is the least number of runs that would have to be left out for all
// of one list to come before all of the other. Both are sorted.
func outOfPlace(a, b []int32) int {
	lead, low, high := 0, 0, 0 // how many more of b than of a have been
	for i, j := 0, 0; i < len(a) || j < len(b); {
		switch {
		case j == len(b) || i < len(a) && a[i] < b[j]:
			lead--
			i++
		case i == len(a) || b[j] < a[i]:
			lead++
			j++
		default:
			i++
			j++
		}
		low, high = min(low, lead), max(high, lead)
	}
	return min(len(a)+low, len(b)-high)
}
