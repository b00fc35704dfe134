package name

import "unicode/utf8"

// JaroWinkler is the string comparator of Winkler (1990), "String comparator
// metrics and enhanced decision rules in the Fellegi-Sunter model of record
// linkage", Proceedings of the Section on Survey Research Methods, American
// Statistical Association, 354-359: Jaro's measure, raised by a tenth of what
// is missing for each of the first four letters in agreement. 0 nothing in
// common, 1 equal. Letters are Unicode code points.
func JaroWinkler(a, b string) float64 {
	if a == b {
		return 1
	}
	var ra, rb [64]rune
	x, y := runes(ra[:0], a), runes(rb[:0], b)
	j := jaro(x, y)
	p := 0
	for p < len(x) && p < len(y) && p < 4 && x[p] == y[p] {
		p++
	}
	return j + float64(p)*.1*(1-j)
}

// jaro is Jaro's measure: m letters in common within half the longer length, t
// pairs of them exchanged: (m/|a| + m/|b| + (m-t)/m) / 3. An odd letter out of
// place is no exchange: t is rounded down, as in Winkler's own program.
func jaro(x, y []rune) float64 {
	if len(x) == 0 || len(y) == 0 {
		return 0
	}
	reach := max(0, max(len(x), len(y))/2-1)
	var used [64]bool
	uy := used[:]
	if len(y) > len(uy) {
		uy = make([]bool, len(y))
	}
	var common [64]rune
	cx := common[:0]
	for i, c := range x {
		for k := max(0, i-reach); k < min(len(y), i+reach+1); k++ {
			if !uy[k] && y[k] == c {
				uy[k] = true
				cx = append(cx, c)
				break
			}
		}
	}
	m := len(cx)
	if m == 0 {
		return 0
	}
	t, i := 0, 0
	for k := range y {
		if uy[k] {
			if y[k] != cx[i] {
				t++
			}
			i++
		}
	}
	fm := float64(m)
	return (fm/float64(len(x)) + fm/float64(len(y)) + (fm-float64(t/2))/fm) / 3
}

// OneSlip says whether text.OSA(a, b) is at most one, in one pass and without
// allocating.
func OneSlip(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > utf8.UTFMax {
		return false
	}
	// What is left after the common head and tail decides.
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	for i > 0 && i < len(b) && !utf8.RuneStart(b[i]) {
		i--
	}
	for i > 0 && i < len(a) && !utf8.RuneStart(a[i]) {
		i--
	}
	a, b = a[i:], b[i:]
	la, lb := len(a), len(b)
	for la > 0 && lb > 0 && a[la-1] == b[lb-1] {
		la--
		lb--
	}
	for la < len(a) && !utf8.RuneStart(a[la]) || lb < len(b) && !utf8.RuneStart(b[lb]) {
		la++
		lb++
	}
	a, b = a[:la], b[:lb]
	na, nb := utf8.RuneCountInString(a), utf8.RuneCountInString(b)
	if na <= 1 && nb <= 1 {
		return true
	}
	if na != 2 || nb != 2 {
		return false
	}
	a1, k := utf8.DecodeRuneInString(a)
	a2, _ := utf8.DecodeRuneInString(a[k:])
	b1, k := utf8.DecodeRuneInString(b)
	b2, _ := utf8.DecodeRuneInString(b[k:])
	return a1 == b2 && a2 == b1
}

// EqualLost says whether two keys are the same where every Lost may stand for
// one or two letters.
func EqualLost(a, b string) bool {
	if a == "" || b == "" {
		return a == b
	}
	ra, na := utf8.DecodeRuneInString(a)
	rb, nb := utf8.DecodeRuneInString(b)
	if ra == rb {
		return EqualLost(a[na:], b[nb:])
	}
	if ra != Lost && rb == Lost {
		a, b, na, nb, ra = b, a, nb, na, rb
	}
	if ra != Lost {
		return false
	}
	if EqualLost(a[na:], b[nb:]) {
		return true
	}
	if len(b) > nb {
		_, n2 := utf8.DecodeRuneInString(b[nb:])
		return EqualLost(a[na:], b[nb+n2:])
	}
	return false
}

func runes(room []rune, s string) []rune {
	for _, r := range s {
		room = append(room, r)
	}
	return room
}
