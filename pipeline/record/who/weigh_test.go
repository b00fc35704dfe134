package who

import (
	"math"
	"math/rand/v2"
	"testing"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// Three records by hand. A and B: Zoe Ford; C: Zoe Hill. Of N = 4 distinct
// names there are 4 signatures.
//
// Given name: every signature is Zoe: f = 4/4 + .3/4 = 1.075.
// Family name: Ford 2 of 4: f = .5 + .075 = .575.
// A, B agree in the whole name: log2(.95 / (1.075 × .575)) = .6200.
func TestNameWeightByHand(t *testing.T) {
	d := archive([]line{
		{name: "Zoe Ford", sex: SexW, course: 0, week: 0},
		{name: "Zoe Ford", sex: SexW, course: 1, week: 1},
		{name: "Zoe Hill", sex: SexW, course: 0, week: 2},
		{name: "Zoe Wood", sex: SexW, course: 0, week: 3},
	})
	m := link(t, d, Options{Fixed: true}).m
	if len(m.sigs) != 4 {
		t.Fatalf("%d signatures, want 4", len(m.sigs))
	}
	s := m.weigh(&m.sigs[0], &m.sigs[1])
	got := float64(s.bits[GivenName] + s.bits[FamilyName])
	if want := math.Log2(.95 / (1.075 * .575)); math.Abs(got-want) > 1e-5 {
		t.Errorf("whole name equal: %.5f bits, want %.5f", got, want)
	}
	if want := -math.Log2(3); math.Abs(float64(s.bits[Prior])-want) > 1e-5 {
		t.Errorf("prior %.5f bits, want -log2 of three distinct names, %.5f", s.bits[Prior], want)
	}
	s = m.weigh(&m.sigs[0], &m.sigs[2])
	if s.level[FamilyName] != Differs || s.bits[FamilyName] != float32(m.w.FamilyDiffers) {
		t.Errorf("Ford and Hill: level %d, %.2f bits", s.level[FamilyName], s.bits[FamilyName])
	}
}

// Fellegi and Sunter (1969): the weight of a level is log2(m/u). With m and u
// known, EM must find them again from simulated pairs, and with them how many
// pairs match.
func TestEMRecoversSimulatedShares(t *testing.T) {
	rng := rand.New(rand.NewPCG(1969, 64))
	m := [][]float64{{0, .9, .07, .03}, {0, .75, .25}, {0, .6, .4}, {0, .85, .15}}
	u := [][]float64{{0, .05, .15, .8}, {0, .1, .9}, {0, .2, .8}, {0, .3, .7}}
	const n, share = 60000, .2
	draw := func(p []float64) uint8 {
		x := rng.Float64()
		for l := 1; l < len(p); l++ {
			if x -= p[l]; x < 0 {
				return uint8(l)
			}
		}
		return uint8(len(p) - 1)
	}
	levels, offset := make([][]uint8, n), make([]float64, n)
	for i := range levels {
		from := u
		if rng.Float64() < share {
			from = m
		}
		lv := make([]uint8, len(m))
		for f := range m {
			lv[f] = draw(from[f])
		}
		levels[i], offset[i] = lv, math.Log2(share/(1-share))
	}
	fields := make([]Field, len(m))
	for f := range fields {
		fields[f] = Field{Levels: len(m[f]), Start: make([]float64, len(m[f]))}
		fields[f].Start[1] = 1 // agreeing speaks for a match; no more is told
		for l := 2; l < len(m[f]); l++ {
			fields[f].Start[l] = -1
		}
	}
	gm, gu, match := EM(1, levels, offset, fields, 10, 500)
	for f := range m {
		for l := 1; l < len(m[f]); l++ {
			if math.Abs(gm[f][l]-m[f][l]) > .03 || math.Abs(gu[f][l]-u[f][l]) > .02 {
				t.Errorf("field %d level %d: m %.3f u %.3f, want %.3f %.3f", f, l, gm[f][l], gu[f][l], m[f][l], u[f][l])
			}
		}
	}
	total := 0.
	for _, r := range match {
		total += r
	}
	if got := total / n; math.Abs(got-share) > .015 {
		t.Errorf("share of matches %.4f, want %.2f", got, share)
	}
}

// Births spread evenly over 72 years: two windows of one year that are the
// same weigh log2(1/P) with P about 1/72 for a year and a month, so between
// 5.5 and 6.5 bits; a window met by one of ten years tells less.
func TestBirthWeight(t *testing.T) {
	d := archive([]line{{name: "Zoe Ford"}, {name: "Ann Hill", week: 1}})
	m := link(t, d, Options{Fixed: true}).m
	day := func(y, mo, d int) unit.Day { return unit.NewDay(y, mo, d) }
	year := m.birth.meeting(day(1980, 1, 1), day(1980, 12, 31), day(1980, 1, 1), day(1980, 12, 31))
	decade := m.birth.meeting(day(1980, 1, 1), day(1980, 12, 31), day(1975, 1, 1), day(1984, 12, 31))
	if year < 5.5 || year > 6.5 {
		t.Errorf("same year of birth: %.2f bits", year)
	}
	if decade < 2.5 || decade > 3.2 {
		t.Errorf("a year within ten: %.2f bits, want log2(72/10) or a little less", decade)
	}
	if g := birthGap(day(1980, 1, 1), day(1980, 1, 31), day(1980, 3, 1), day(1980, 4, 1)); g != 0 {
		t.Errorf("30 days apart are %d days after a fortnight's grace on both sides, want 0", g)
	}
	if g := birthGap(day(1980, 1, 1), day(1980, 1, 31), day(1980, 3, 5), day(1980, 4, 1)); g != 4 {
		t.Errorf("34 days apart: %d, want 4", g)
	}
}

func TestShortForms(t *testing.T) {
	for _, p := range [][2]string{{"rob", "robert"}, {"robbie", "robert"}, {"sam", "samantha"}, {"josy", "josephine"}, {"immy", "imogen"}} {
		if !shortForm(p[0], p[1]) || !shortForm(p[1], p[0]) {
			t.Errorf("%s should look like a short form of %s", p[0], p[1])
		}
	}
	for _, p := range [][2]string{{"jo", "john"}, {"anna", "hannah"}, {"mark", "martin"}, {"lea", "lee"}, {"amy", "amanda"}} {
		if shortForm(p[0], p[1]) {
			t.Errorf("%s should not look like a short form of %s", p[0], p[1])
		}
	}
}

// A slip in the first letter weighs firstLetter less, unless it is exchanged with the
// second: all three are the neighbours of Torman, so that nothing else differs.
func TestSlipInTheFirstLetter(t *testing.T) {
	var ls []line
	for w, n := range []string{"Ann Torman", "Ann Dorman", "Ann Torban", "Ann Otrman"} {
		ls = append(ls, line{name: n, sex: SexW, course: int32(w), week: w})
	}
	m := link(t, archive(ls), Options{Fixed: true}).m
	weight := func(k int) float64 {
		var s sum
		m.compareNames(m.sigs[0].names[0].id, m.sigs[k].names[0].id, &s)
		if s.level[FamilyName] != Slip {
			t.Fatalf("%s: level %d", ls[k].name, s.level[FamilyName])
		}
		return float64(s.bits[FamilyName])
	}
	if got := weight(1) - weight(2); math.Abs(got-firstLetter) > 1e-5 {
		t.Errorf("Torman and Dorman weigh %.3f more than Torman and Torban, want %.1f", got, firstLetter)
	}
	if got := weight(3) - weight(2); math.Abs(got) > 1e-5 {
		t.Errorf("letters exchanged weigh %.3f more than one wrong", got)
	}
}

// Two names that begin alike and go on with names of which none is a form of another are of two
// people, as of two Spaniards whose first family name is read with the given one.
func TestFurtherNamesDiffer(t *testing.T) {
	d := archive([]line{
		{name: "Elena Perez Quintana", sex: SexW, course: 0, week: 0},
		{name: "Elena Munoz Quintana", sex: SexW, course: 0, week: 1},
		{name: "Elena Quintana", sex: SexW, course: 0, week: 2},
		{name: "Elena Perz Quintana", sex: SexW, course: 0, week: 3},
		{name: "Elena del Perez Quintana", sex: SexW, course: 0, week: 4},
		{name: "Ann Lee", sex: SexW, course: 0, week: 5},
	})
	m := link(t, d, Options{Fixed: true}).m
	for i, want := range map[int]Level{1: Differs, 2: FirstOnly, 3: FirstOnly, 4: FirstOnly} {
		if l, _ := m.compareGiven(m.names.keys[m.names.of[0]].given, m.names.keys[m.names.of[i]].given); l != want {
			t.Errorf("%s and %s: level %d, want %d", m.in[0].Full, m.in[i].Full, l, want)
		}
	}
}

// Names that may have been written down by ear: the shorter they are, the fewer slips apart.
func TestSoundsLike(t *testing.T) {
	for _, k := range []struct {
		a, b string
		want bool
	}{
		{"stephens", "stevens", true},
		{"johanson", "johannsen", true},
		{"smith", "smyth", true},
		{"pask", "page", false},
		{"moore", "muir", false},
		{"brown", "bryan", false},
		{"thompson", "hudson", false},
	} {
		p := &part{text: []string{k.a, k.b}, sound: []string{name.Soundex(k.a), name.Soundex(k.b)}}
		if got := p.soundsLike(0, 1); got != k.want || p.soundsLike(1, 0) != got {
			t.Errorf("%s and %s sound alike: %v", k.a, k.b, got)
		}
	}
}
