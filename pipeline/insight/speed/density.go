package speed

import "math"

// Components holds one number for each component of the residual density:
// weights before a result is seen, probabilities after.
type Components struct {
	AllOut float64 // as good as form allows
	Slow   float64 // behind it, by an exponential shortfall
	Walk   float64 // far behind it: a walk, a buggy, a long stop
	Gross  float64 // the time of somebody else
}

// mixture is the density of a residual r whose Gaussian part has variance S:
//
//	f(r; S) = w0 N(r; S) + w1 E(r; rate, S) + w2 E(r; walkRate, S) + w3 N(r; S + grossVar)
//
// where E is the exponentially modified Gaussian, the sum of a Gaussian and
// an exponential (Grushka 1972, Anal. Chem. 44:1733).
type mixture struct {
	rate, walkRate float64 // 1/mean shortfall
	grossVar       float64
}

// tiny keeps the quotients finite where every component underflows.
const tiny = 1e-300

// score gives u = d log f/dr, beta = -d² log f/dr² and the probabilities of
// the components at residual r, Gaussian variance S and weights w.
//
// The derivatives of E need only N and E: E' = rate (N - E), and once more.
func (m *mixture) score(r, S float64, w Components) (u, beta float64, p Components) {
	isd := 1 / math.Sqrt(S)
	prec := isd * isd
	sd := S * isd
	x := r * isd
	phi := invSqrt2Pi * expMinus(.5*x*x)
	n := phi * isd
	n1 := -r * prec * n
	n2 := (r*prec*r*prec - prec) * n
	e := emg(m.rate, r, S, x, sd, phi)
	e1 := m.rate * (n - e)
	e2 := m.rate * (n1 - e1)
	k := emg(m.walkRate, r, S, x, sd, phi)
	k1 := m.walkRate * (n - k)
	k2 := m.walkRate * (n1 - k1)
	gp := 1 / (S + m.grossVar)
	g := invSqrt2Pi * math.Sqrt(gp) * expMinus(.5*r*r*gp)

	p = Components{w.AllOut * n, w.Slow * e, w.Walk * k, w.Gross * g}
	inv := 1 / (p.AllOut + p.Slow + p.Walk + p.Gross + tiny)
	f1 := w.AllOut*n1 + w.Slow*e1 + w.Walk*k1 - p.Gross*r*gp
	f2 := w.AllOut*n2 + w.Slow*e2 + w.Walk*k2 + p.Gross*(r*r*gp-1)*gp
	u = f1 * inv
	beta = u*u - f2*inv
	p.AllOut *= inv
	p.Slow *= inv
	p.Walk *= inv
	p.Gross *= inv
	return u, beta, p
}

// logDensity is log f(r; S).
func (m *mixture) logDensity(r, S float64, w Components) float64 {
	isd := 1 / math.Sqrt(S)
	x := r * isd
	phi := invSqrt2Pi * expMinus(.5*x*x)
	gp := 1 / (S + m.grossVar)
	return math.Log(w.AllOut*phi*isd +
		w.Slow*emg(m.rate, r, S, x, S*isd, phi) +
		w.Walk*emg(m.walkRate, r, S, x, S*isd, phi) +
		w.Gross*invSqrt2Pi*math.Sqrt(gp)*expMinus(.5*r*r*gp) + tiny)
}

// below is the probability of a residual under r. For an exponentially
// modified Gaussian it is Phi(x) - E(r)/rate.
func (m *mixture) below(r, S float64, w Components) float64 {
	sd := math.Sqrt(S)
	x := r / sd
	phi := invSqrt2Pi * expMinus(.5*x*x)
	under := normalCDF(x)
	return w.AllOut*under +
		w.Slow*(under-emg(m.rate, r, S, x, sd, phi)/m.rate) +
		w.Walk*(under-emg(m.walkRate, r, S, x, sd, phi)/m.walkRate) +
		w.Gross*normalCDF(r/math.Sqrt(S+m.grossVar))
}

// emg is the exponentially modified Gaussian density
//
//	rate exp(rate² S/2 - rate r) Phi(z),  z = x - rate sd,  x = r/sd, sd² = S
//
// written with the ratio Phi(z)/phi(z), because exp(rate² S/2 - rate r) phi(z)
// is phi(x): no overflow, no loss in the tail, and no exponential for z < 0.
func emg(rate, r, S, x, sd, phi float64) float64 {
	z := x - rate*sd
	if z <= 0 {
		return rate * phi * tailRatio(z)
	}
	return rate * (expMinus(rate*(r-.5*rate*S)) - phi*tailRatio(-z))
}

const (
	invSqrt2Pi = 0.398942280401432677939946059934
	tableStep  = 1. / 128
	tableEnd   = 8
)

// ratioTable holds Phi(z)/phi(z) at z = 0, -1/128, …, -8 (Mills 1926,
// Biometrika 18:395).
var ratioTable = func() (t [tableEnd*128 + 1]float64) {
	for i := range t {
		z := float64(i) * tableStep
		t[i] = .5 * math.Erfc(z/math.Sqrt2) * math.Exp(.5*z*z) / invSqrt2Pi
	}
	return t
}()

// tailRatio is Phi(z)/phi(z) for z <= 0: a Taylor step from the nearest table
// entry with the exact derivatives R' = 1 + zR, R” = R + zR', R”' = 2R' + zR”,
// and the asymptotic series below the table (Abramowitz and Stegun 26.2.12).
// Relative error < 1e-6 beyond z = -8, < 1e-10 within.
func tailRatio(z float64) float64 {
	if z < -tableEnd {
		q := 1 / (z * z)
		return -1 / z * (1 - q*(1-q*(3-q*(15-105*q))))
	}
	i := int(.5 - z/tableStep)
	z0 := -float64(i) * tableStep
	h := z - z0
	r := ratioTable[i]
	r1 := 1 + z0*r
	r2 := r + z0*r1
	r3 := 2*r1 + z0*r2
	return r + h*(r1+h*(.5*r2+h*r3/6))
}

// powers holds 2^(-i/128).
var powers = func() (t [128]float64) {
	for i := range t {
		t[i] = math.Exp2(-float64(i) / 128)
	}
	return t
}()

// expMinus is exp(-t) for t >= 0, to 1e-11 relative and 0 beyond t = 700: a
// table and a cubic. The four exponentials of a score are a third of the
// whole fit with math.Exp, which is exact to the last bit where this needn't.
func expMinus(t float64) float64 {
	if !(t < 700) {
		return 0
	}
	k := uint(t*(128/math.Ln2) + .5)
	h := float64(k)*(math.Ln2/128) - t
	scale := math.Float64frombits(uint64(1023-k>>7) << 52)
	return scale * powers[k&127] * (1 + h*(1+h*(.5+h*(1./6))))
}
