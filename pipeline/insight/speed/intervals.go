package speed

import (
	"context"
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"lapwing/pipeline/parallel"
)

// Calibration of the standard errors, found on simulated districts of two
// unlike kinds: free shares, expectation propagation and chosen effort are not
// in the posterior variance, and what is missing hardly shrinks with the number
// of results, so most of it is added and not multiplied.
const (
	courseFactor = 1.1
	courseExtra  = .0014
	runFactor    = 1.3
	formFactor   = 1.3
	changeFactor = 1.2
	weakRunnerSD = 1 // see courseVariance
	z90          = 1.6448536269514722
)

// infoGroups is the number of dense matrices that courseInformation fills
// side by side; fixed, like partCount.
const infoGroups = 4

// courseInformation is A = T' G T, what the runners say about the courses
// with the days known, for the precision prior of a runner's first level. The
// chains are eliminated exactly: with the covariances of chain.go,
//
//	A[c][c'] = sum_i w_i [c=c'=course i] - sum_ij w_i w_j Cov(a_i, a_j)
//
// where the sum over pairs is carried along the chain per course, so that a
// runner with n results on m courses costs n m, not n². The matrix is the
// fit's own scratch: it holds until the next call.
func (f *fit) courseInformation(ctx context.Context, prior float64) (*mat.SymDense, error) {
	n := len(f.course)
	err := parallel.EachUntil(ctx, infoGroups, f.threads, func(g int) {
		if f.infoSums[g] == nil {
			f.infoSums[g] = mat.NewSymDense(n, nil)
		}
		f.infoSums[g].Zero()
		raw := f.infoSums[g].RawSymmetric() // upper triangle, row-major
		var ch chain
		var courses []int32   // distinct, in order of appearance
		var carried []float64 // per distinct course: sum w_i gain_i … gain_{j-1}
		place := make([]int32, n)
		for p := g * partCount / infoGroups; p < (g+1)*partCount/infoGroups; p++ {
			for r := f.parts[p].lo; r < f.parts[p].hi; r++ {
				lo, hi := int(f.in.Offsets[r]), int(f.in.Offsets[r+1])
				ch.resize(hi - lo)
				for i := range ch.w {
					ch.w[i], ch.zeta[i] = float64(f.w[lo+i]), 0
				}
				ch.smooth(prior, f.step[lo:hi])
				courses, carried = courses[:0], carried[:0]
				for j := range ch.w {
					c := f.in.course(lo + j)
					k := int(place[c])
					if k >= len(courses) || courses[k] != c {
						k = len(courses)
						place[c] = int32(k)
						courses = append(courses, c)
						carried = append(carried, 0)
					}
					wv := ch.w[j] * ch.vari[j]
					for m, from := range courses {
						x := carried[m] * wv
						if from == c {
							x = 2*x - ch.w[j]*(1-wv)
						}
						raw.Data[int(min(from, c))*raw.Stride+int(max(from, c))] -= x
					}
					carried[k] += ch.w[j]
					for m := range carried {
						carried[m] *= ch.gain[j]
					}
				}
			}
		}
	})
	if err != nil {
		return nil, err
	}
	sum := f.infoSums[0]
	for _, g := range f.infoSums[1:] {
		sum.AddSym(sum, g)
	}
	return sum, nil
}

// courseVariance gives the posterior variance of every course effect less the
// mean of its group, weighted by weight (which sums to 1 in every group).
//
// It starts from the dense posterior with the days known and a weak prior on
// runners (sd 1): otherwise two towns that share nobody would count as
// compared, on the assumption that their runners are equally good. The days
// then widen it: with om_e proportional to 1/(DaySD² + 1/D_e) in a course,
//
//	V_c = R_c (sum om²/D) (sum D) + DaySD² sum om²
//
// whose square root is within some per cent of the exact posterior's.
func (f *fit) courseVariance(ctx context.Context, group []int32, weight []float64) ([]float64, error) {
	a, err := f.courseInformation(ctx, 1./(weakRunnerSD*weakRunnerSD))
	if err != nil {
		return nil, err
	}
	n := len(f.course)
	for c := range n {
		a.SetSym(c, c, a.At(c, c)+1/f.courseVar)
	}
	var chol mat.Cholesky
	if !chol.Factorize(a) {
		return nil, errors.New("speed: the courses' information is singular")
	}
	if err := unlessConditioned(chol.InverseTo(a)); err != nil {
		return nil, err
	}
	mean := make([]float64, n) // Cov(c, mean of its group)
	raw := a.RawSymmetric()    // its upper half
	for c := range n {
		row := raw.Data[c*raw.Stride:]
		mean[c] += row[c] * weight[c]
		for k := c + 1; k < n; k++ {
			if group[k] == group[c] {
				mean[c] += row[k] * weight[k]
				mean[k] += row[k] * weight[c]
			}
		}
	}
	meanVar := map[int32]float64{}
	for c := range n {
		meanVar[group[c]] += weight[c] * mean[c]
	}
	om, omOverD, om2, info := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for e, d := range f.info {
		if d <= 0 {
			continue
		}
		c := f.in.Runs[e].Course
		o := 1 / (f.dayVar + 1/d)
		om[c] += o
		omOverD[c] += o * o / d
		om2[c] += o * o
		info[c] += d
	}
	v := make([]float64, n)
	for c := range v {
		v[c] = a.At(c, c) - 2*mean[c] + meanVar[group[c]]
		if om[c] > 0 {
			v[c] = v[c]*omOverD[c]/(om[c]*om[c])*info[c] + f.dayVar*om2[c]/(om[c]*om[c])
		}
	}
	return v, nil
}

// publishedSD is the calibrated standard error of a course effect.
func publishedSD(variance float64) float64 {
	return math.Sqrt(courseFactor*courseFactor*variance + courseExtra*courseExtra)
}
