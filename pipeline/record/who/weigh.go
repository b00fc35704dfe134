package who

import (
	"math"
	"math/bits"
	"slices"
	"strings"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// Evidence names the parts of a weight.
type Evidence uint8

const (
	Prior Evidence = iota // how unlikely it is that any two are one person
	GivenName
	FamilyName
	NewSurname
	Number
	NumberTurns // numbers differ: one after the other, or both over the same time
	Birth
	Sex
	Club
	Course
	Pace
	SameRun   // both in one run, or on one day
	TakeTurns // never on one day
	Unplaced  // two lines that no age places among namesakes
	nEvidence
)

// Level is how far a part of the evidence agrees.
type Level uint8

const (
	Missing Level = iota
	Equal
	Swapped   // given and family name exchanged
	WithLost  // equal but for letters that could not be recovered
	Nickname  // by the nickname table
	ShortForm // looks like a short form
	Initial
	FirstOnly // the first of several given names
	Slip      // one letter wrong, missing, extra or exchanged, both being names
	Mistyped  // the same, one being far rarer
	OneToken  // one part of a double name
	Sounds    // one Soundex code and few letters apart
	Alike     // Jaro-Winkler, or two slips
	Differs
	Near    // number one digit away; births less than a year apart
	OneSide // club blank on one side
	Neither // club blank on both
	nLevel
)

// Weights are the weights in bits that are not computed from frequencies.
// Positive speaks for one person, negative against.
type Weights struct {
	// Given and Family hold, by level, the share of pairs of one person in
	// which the names agree that far. The weight is its ratio to the share of
	// such names among all.
	Given, Family [nLevel]float64
	Prior         float64 // added to -log2 of the number of distinct names
	GivenAlike    float64
	GivenSounds   float64
	GivenDiffers  float64
	FamilyAlike   float64
	FamilySounds  float64
	FamilyTwice   float64 // two slips
	FamilyDiffers float64

	NumberShared  float64 // added to log2 N
	NumberNear    float64
	NumberDiffers float64

	BirthNear, BirthFar, BirthApart float64 // gap under 1 year, under 3, more
	BirthOdd, SexOdd                float64 // a line with a wrong age, a wrong sex
	BirthMany, SexMany              float64 // share of oddLines that is given back
	SexDiffers                      float64
	SexX                            float64 // X on one side, M or W on the other
	ClubDiffers, ClubOneBlank       float64
	ClubBothBlank                   float64
	CourseLow                       float64 // the least that far courses weigh
	SameRun, SameDay                float64
	Unplaced                        float64
	NewSurname                      float64 // bits that joining two wholly different surnames needs
	Learned                         bool    // from this archive, else starting weights
	Matches                         float64 // likely matches they were learned from
}

// StartingWeights are for an archive too small to learn from. They were set on
// made-up districts with known truth; see the tests.
func StartingWeights() Weights {
	return Weights{
		Given:      [nLevel]float64{Equal: .9, Nickname: .04, ShortForm: .015, FirstOnly: .04, Slip: .006, Mistyped: .04},
		Family:     [nLevel]float64{Equal: .9, Swapped: .01, OneToken: .015, Slip: .006, Mistyped: .06},
		GivenAlike: -.4, GivenSounds: -1.5, GivenDiffers: -9, FamilyAlike: 1.3, FamilySounds: .5, FamilyTwice: -3.5, FamilyDiffers: -8.4,
		NumberShared: -1, NumberNear: 5, NumberDiffers: -5,
		BirthNear: -10, BirthFar: -14, BirthApart: -25, BirthOdd: -6.5, BirthMany: 1,
		SexDiffers: -12, SexOdd: -5, SexMany: .5, SexX: -3,
		ClubDiffers: -5, ClubOneBlank: -2.5, ClubBothBlank: .8,
		CourseLow: -6, SameRun: -20, SameDay: -8, Unplaced: -2, NewSurname: 12,
	}
}

// sum is the weight of a pair, part by part.
type sum struct {
	bits  [nEvidence]float32
	level [nEvidence]Level
	total float64
	names [2]int32 // the spellings compared
}

func (s *sum) add(e Evidence, l Level, bits float64) {
	s.bits[e] += float32(bits)
	s.level[e] = l
	s.total += bits
}

// weigh sums the evidence that two clusters are one person. It is symmetrical.
func (m *model) weigh(a, b *cluster) sum {
	var s sum
	s.add(Prior, Missing, m.w.Prior-math.Log2(m.people))
	m.weighNames(a, b, &s)
	m.weighNumbers(a, b, &s)
	m.weighBirth(a, b, &s)
	m.weighSex(a, b, &s)
	m.weighClub(a, b, &s)
	s.add(Course, Missing, m.lift.weight(a, b, m.w.CourseLow))
	m.weighPace(a, b, &s)
	m.weighDays(a, b, &s)
	if a.loose && b.loose {
		s.add(Unplaced, Missing, m.w.Unplaced)
	}
	// Whole bits/256: the last digits of a float must never break a tie.
	s.total = math.Round(s.total*256) / 256
	return s
}

// weighNames takes the best pair of the four most frequent spellings of each.
// An initial speaks only for those who have never given more, and a spelling
// that few of a runner's lines have speaks the less.
func (m *model) weighNames(a, b *cluster, s *sum) {
	best := sum{total: math.Inf(-1)}
	fullA, fullB := m.givenInFull(a), m.givenInFull(b)
	for _, x := range a.names[:min(4, len(a.names))] {
		if fullA && m.initialOnly(x.id) {
			continue
		}
		for _, y := range b.names[:min(4, len(b.names))] {
			if fullB && m.initialOnly(y.id) {
				continue
			}
			var t sum
			m.compareNames(x.id, y.id, &t)
			m.namesGoTogether(x.id, y.id, &t)
			m.amongNamesakes(x.id, y.id, &t)
			t.total += seldom(x.n, a.n) + seldom(y.n, b.n)
			if t.total > best.total {
				best = t
				best.names = [2]int32{x.id, y.id}
			}
		}
	}
	if math.IsInf(best.total, -1) {
		best = sum{}
		best.add(FamilyName, Differs, -60) // nobody is named: never one person
	}
	if best.level[FamilyName] == Differs && best.level[GivenName] != Differs {
		// A new surname: the two names follow one another, or they overlap.
		if len(a.runs) > 0 && len(b.runs) > 0 &&
			(a.runs[len(a.runs)-1] < b.runs[0] || b.runs[len(b.runs)-1] < a.runs[0]) {
			best.add(NewSurname, Missing, min(2.5, .5+.7*float64(min(a.n, b.n))))
		} else {
			best.add(NewSurname, Missing, -2)
		}
	}
	for _, e := range [...]Evidence{GivenName, FamilyName, NewSurname} {
		if best.level[e] != Missing || best.bits[e] != 0 {
			s.add(e, best.level[e], float64(best.bits[e]))
		}
	}
	s.names = best.names
}

// namesGoTogether takes away what a family name says no more once the given
// name is known.
func (m *model) namesGoTogether(x, y int32, s *sum) {
	switch s.level[FamilyName] {
	case Differs, Alike, Missing:
		return
	}
	if l := s.level[GivenName]; l == Differs || l == Initial {
		return
	}
	a, b := m.names.keys[x], m.names.keys[y]
	if a.sole || b.sole {
		return
	}
	s.add(FamilyName, s.level[FamilyName], -max(m.community.bits(a.given, a.family), m.community.bits(b.given, b.family)))
}

// amongNamesakes lets a name say no more than which of those it is who are
// known to have it: of k namesakes, any one is met by chance one time in k, how
// rare the name may be elsewhere.
func (m *model) amongNamesakes(x, y int32, s *sum) {
	k := max(m.sakes[m.names.keys[x].full], m.sakes[m.names.keys[y].full])
	if k < 2 || s.level[FamilyName] == Differs || s.level[GivenName] == Differs {
		return
	}
	if over := s.total - math.Log2(m.people/float64(k)); over > 0 {
		s.add(FamilyName, s.level[FamilyName], -over)
	}
}

// initialOnly says whether a spelling has no more than the initial of the
// given name, or one word only.
func (m *model) initialOnly(id int32) bool { return m.names.keys[id].short }

// givenInFull says whether any of the four most frequent spellings has more.
func (m *model) givenInFull(c *cluster) bool {
	for _, x := range c.names[:min(4, len(c.names))] {
		if !m.initialOnly(x.id) {
			return true
		}
	}
	return false
}

// seldom is what a spelling on n of all lines loses against the main one, only
// for choosing between pairs of spellings.
func seldom(n, all int32) float64 {
	if n*2 >= all {
		return 0
	}
	return max(-4, math.Log2(2*float64(n)/float64(all)))
}

// compareNames weighs two spellings.
func (m *model) compareNames(x, y int32, s *sum) {
	t, w := &m.names, &m.w
	a, b := t.keys[x], t.keys[y]
	if a.full == b.full {
		if a.given != b.given { // one name split in two ways
			s.add(FamilyName, Equal, math.Log2(.95/t.commoner(&a, &b)))
			return
		}
		switch {
		case a.sole:
		case len(t.given.text[a.given]) == 1:
			s.add(GivenName, Initial, math.Log2(t.given.single/t.given.mass[a.given]))
		default:
			s.add(GivenName, Equal, -math.Log2(t.given.mass[a.given])+math.Log2(.95))
		}
		s.add(FamilyName, Equal, -math.Log2(t.family.mass[a.family]))
		return
	}
	if (a.lost || b.lost) && name.EqualLost(t.full[a.full], t.full[b.full]) {
		k := a
		if a.lost {
			k = b
		}
		s.add(GivenName, WithLost, -math.Log2(t.given.mass[k.given])-1)
		s.add(FamilyName, WithLost, -math.Log2(t.family.mass[k.family])-1)
		return
	}
	if a.tokens == b.tokens && !a.sole && !b.sole {
		s.add(FamilyName, Swapped, math.Log2(w.Family[Swapped]/t.commoner(&a, &b)))
		return
	}
	if t.turnedRound(&a, &b) {
		s.add(FamilyName, Swapped, math.Log2(w.Family[Swapped]*otherForm/t.commoner(&a, &b)))
		return
	}
	lost := a.lost || b.lost
	if lost && !a.sole && !b.sole && name.EqualLost(t.full[a.full], strings.ReplaceAll(t.family.text[b.family]+t.given.text[b.given], " ", "")) {
		k := a
		if a.lost {
			k = b
		}
		s.add(FamilyName, Swapped, math.Log2(w.Family[Swapped]/t.share(&k))-1)
		return
	}
	if !a.sole && !b.sole {
		if l, bits := t.given.lostLetter(a.given, b.given, lost); l != Missing {
			s.add(GivenName, l, bits)
		} else {
			s.add2(GivenName)(m.compareGiven(a.given, b.given))
		}
	}
	if l, bits := t.family.lostLetter(a.family, b.family, lost); l != Missing {
		s.add(FamilyName, l, bits)
	} else {
		s.add2(FamilyName)(m.compareFamily(a.family, b.family))
	}
}

// share is the share of people who would have a name by chance, if given and family
// names were drawn apart.
func (t *nameTable) share(k *nameKey) float64 {
	return t.given.mass[k.given] * t.family.mass[k.family]
}

// commoner is the share of the commoner of two names.
func (t *nameTable) commoner(a, b *nameKey) float64 { return max(t.share(a), t.share(b)) }

// otherForm is the share of names turned round of which a part stands in another
// form as well.
const otherForm = .1

// turnedRound says whether two names are the same turned round, but for a short
// form, a middle initial or a slip in one part: Green Des, Desmond Green.
func (t *nameTable) turnedRound(a, b *nameKey) bool {
	if a.sole || b.sole {
		return false
	}
	ga, fa, gb, fb := t.given.text[a.given], t.family.text[a.family], t.given.text[b.given], t.family.text[b.family]
	return fa == gb && sameButForm(ga, fb) || ga == fb && sameButForm(fa, gb)
}

func sameButForm(x, y string) bool {
	if min(len(x), len(y)) >= 4 && name.OneSlip(x, y) {
		return true
	}
	x, _, _ = strings.Cut(x, " ")
	y, _, _ = strings.Cut(y, " ")
	if x == y {
		return len(x) > 2
	}
	for _, g := range nickGroups[x] {
		if slices.Contains(nickGroups[y], g) {
			return true
		}
	}
	return false
}

// lostLetter weighs two names that are the same but for letters lost on the way;
// Missing where they are not.
func (p *part) lostLetter(x, y int32, lost bool) (Level, float64) {
	if !lost || x == y {
		return Missing, 0
	}
	a, b := p.text[x], p.text[y]
	switch la, lb := strings.IndexByte(a, name.Lost) >= 0, strings.IndexByte(b, name.Lost) >= 0; {
	case !la && !lb || len(a) < 2 || len(b) < 2 || !name.EqualLost(a, b):
		return Missing, 0
	case la:
		return WithLost, -math.Log2(p.mass[y]) - 1
	}
	return WithLost, -math.Log2(p.mass[x]) - 1
}

func (s *sum) add2(e Evidence) func(Level, float64) {
	return func(l Level, bits float64) { s.add(e, l, bits) }
}

// compareGiven gives the level and its weight: log2 of the share of one
// person's pairs that agree so far, over the share of such names among all.
func (m *model) compareGiven(x, y int32) (Level, float64) {
	p, w := &m.names.given, &m.w
	if x == y {
		return Equal, math.Log2(w.Given[Equal] / p.mass[x])
	}
	a, b := p.text[x], p.text[y]
	// No changed form weighs more than the more common name equal would.
	top := math.Log2(w.Given[Equal] / max(p.mass[x], p.mass[y]))
	if len(a) == 1 || len(b) == 1 {
		if a[0] == b[0] {
			// An initial says as much as its letter is rare.
			one := x
			if len(b) == 1 {
				one = y
			}
			return Initial, min(top, math.Log2(p.single/p.mass[one]))
		}
		one, other := x, y
		if len(b) == 1 {
			one, other = y, x
		}
		if p.nickInitial(other, p.text[one][0]) { // R. may be a Bob, B. a Robert
			return Initial, min(top, max(w.GivenDiffers, math.Log2(w.Given[Nickname]*p.single/p.mass[one])))
		}
		return Differs, w.GivenDiffers
	}
	if p.first[x] >= 0 || p.first[y] >= 0 {
		fx, fy := x, y
		if p.first[x] >= 0 {
			fx = p.first[x]
		}
		if p.first[y] >= 0 {
			fy = p.first[y]
		}
		if fx == fy && p.furtherDiffer(x, y) {
			return Differs, w.GivenDiffers
		}
		if fx == fy {
			return FirstOnly, min(top, math.Log2(w.Given[FirstOnly]/max(p.mass[fx], p.double[fx])))
		}
	}
	if p.nicknames(x, y) {
		return Nickname, min(top, math.Log2(w.Given[Nickname]/max(p.nick[x], p.nick[y])))
	}
	if l, bits := p.slipWeight(x, y, &w.Given); l != Missing {
		return l, min(top, bits)
	}
	if a[0] != b[0] {
		if alike(a, b, .94) {
			return Alike, w.GivenAlike
		}
		return Differs, w.GivenDiffers
	}
	if shortForm(a, b) {
		return ShortForm, min(top, math.Log2(w.Given[ShortForm]/max(p.mass[x]+p.mass[y], .002)))
	}
	if alike(a, b, .94) {
		return Alike, w.GivenAlike
	}
	if p.soundsLike(x, y) {
		return Sounds, min(top, w.GivenSounds)
	}
	return Differs, w.GivenDiffers
}

// furtherDiffer says whether two given names that begin alike go on with others, none of which
// is a form of another: Anna Maria and Anna Sofia, or the first of two family names, which is
// read with the given one, of Elena Pérez Quintana and Elena Muñoz Quintana.
func (p *part) furtherDiffer(x, y int32) bool {
	a, b := p.tokens[x], p.tokens[y]
	if len(a) < 2 || len(b) < 2 {
		return false
	}
	for _, t := range a[1:] {
		for _, u := range b[1:] {
			if t == u || p.oneSlip(t, u) || p.nicknames(t, u) || p.soundsLike(t, u) || alike(p.text[t], p.text[u], .9) || shortForm(p.text[t], p.text[u]) {
				return false
			}
		}
	}
	return true
}

// soundsLike says whether two names of four letters and more have one Soundex code and are
// one slip apart for every three letters of the longer, and three at most: the code of a short name
// says too little for more, that of Page is Pask's.
func (p *part) soundsLike(x, y int32) bool {
	letters := max(len(p.text[x]), len(p.text[y]))
	return p.sound[x] == p.sound[y] && p.sound[x] != "" && text.Within(p.text[x], p.text[y], min(letters/3, 3))
}

// slipWeight weighs two names one slip apart. A name far rarer than the other
// is taken as mistyped and weighed against how many such there are of the
// common name; between two names of their own (Brown, Browne) it is weighed
// against how common the neighbours of either are. Few slips are made in the first
// letter (Yannakoudakis and Fawthrop 1983, "The rules of spelling errors",
// Information Processing and Management 19:87-99); how many bits that is worth is
// our own choice.
func (p *part) slipWeight(x, y int32, share *[nLevel]float64) (Level, float64) {
	if !p.oneSlip(x, y) {
		return Missing, 0
	}
	level, of := Slip, max(p.slip[x], p.slip[y])
	switch {
	case p.mistyped(x, y):
		level, of = Mistyped, p.rare[y]
	case p.mistyped(y, x):
		level, of = Mistyped, p.rare[x]
	}
	bits := math.Log2(share[level] / of)
	if a, b := p.text[x], p.text[y]; a[0] != b[0] && !(a[0] == b[1] && a[1] == b[0]) { // names with slips have four letters
		bits += firstLetter
	}
	return level, bits
}

const firstLetter = -2. // bits less where the first letters differ, though not exchanged with the second

// alike leaves the comparator alone where lengths already rule it out: Jaro's
// measure is at most (2 + shorter/longer) / 3.
func alike(a, b string, least float64) bool {
	la, lb := float64(len(a)), float64(len(b))
	j := (2 + min(la, lb)/max(la, lb)) / 3
	if j+.4*(1-j) < least {
		return false
	}
	return name.JaroWinkler(a, b) >= least
}

func (m *model) compareFamily(x, y int32) (Level, float64) {
	p, w := &m.names.family, &m.w
	if x == y {
		return Equal, math.Log2(w.Family[Equal] / p.mass[x])
	}
	top := math.Log2(w.Family[Equal] / max(p.mass[x], p.mass[y]))
	if l, bits := p.slipWeight(x, y, &w.Family); l != Missing {
		return l, min(top, bits)
	}
	tx, ty := p.tokens[x], p.tokens[y]
	if len(tx) > 0 || len(ty) > 0 {
		common := 0.
		each := func(ts []int32, id int32, do func(int32)) {
			if len(ts) == 0 {
				do(id)
			}
			for _, w := range ts {
				do(w)
			}
		}
		each(tx, x, func(u int32) {
			each(ty, y, func(v int32) {
				if u == v && !particle[p.text[u]] {
					if common == 0 || p.double[u] < common {
						common = p.double[u]
					}
				}
			})
		})
		if common > 0 {
			return OneToken, min(7, math.Log2(w.Family[OneToken]/common))
		}
	}
	a, b := p.text[x], p.text[y]
	if len(a) > 0 && len(b) > 0 && alike(a, b, .95) {
		return Alike, w.FamilyAlike
	}
	if p.soundsLike(x, y) {
		return Sounds, min(top, w.FamilySounds)
	}
	if twoSlips(a, b) {
		return Alike, min(top, w.FamilyTwice)
	}
	return Differs, w.FamilyDiffers
}

// twoSlips says whether two names of seven letters and more that begin alike are
// two slips apart.
func twoSlips(a, b string) bool {
	return min(len(a), len(b)) >= 7 && a[0] == b[0] && bits.OnesCount32(letterSet(a)^letterSet(b)) <= 4 && text.Within(a, b, 2)
}

// letterSet has a bit for each letter that a name holds.
func letterSet(s string) (set uint32) {
	for i := range len(s) {
		set |= 1 << (s[i] % 32)
	}
	return set
}

// particle words are in too many family names to say that two are one.
var particle = map[string]bool{"de": true, "van": true, "der": true, "von": true, "den": true, "la": true,
	"le": true, "da": true, "dos": true, "del": true, "di": true, "st": true, "ten": true, "ter": true, "bin": true, "al": true, "el": true}

func (m *model) weighNumbers(a, b *cluster, s *sum) {
	if len(a.numbers) == 0 || len(b.numbers) == 0 {
		return
	}
	if share(a.numbers, b.numbers) {
		s.add(Number, Equal, m.w.NumberShared+math.Log2(m.people))
		return
	}
	if len(m.rows.Numbers) > 0 && (a.n <= 2 || b.n <= 2) {
		for _, x := range a.numbers {
			for _, y := range b.numbers {
				if (x.n == 1 || y.n == 1) && closeNumbers(m.rows.Numbers[x.id], m.rows.Numbers[y.id]) {
					s.add(Number, Near, m.w.NumberNear)
					return
				}
			}
		}
	}
	s.add(Number, Differs, m.w.NumberDiffers)
	m.weighNumberTurns(a, b, s)
}

// weighBirth: windows that meet weigh what chance would have made of it.
//
// Where they do not, the two may still be one person of whom some line has a
// wrong age. The chance of all lines under one birth date, over the archive's
// births, is laid against that of the lines of either side under a birth date
// of its own: a wrong line has chance 2^BirthOdd and then hits on any window
// by its width. Of many lines some will be wrong, so that a larger cluster
// bears them better: see oddLines. However many lines contradict, the weight
// ends at that of two births so far apart, because mistakes are repeated: a
// year of birth once copied wrongly stays wrong.
func (m *model) weighBirth(a, b *cluster, s *sum) {
	if a.births == 0 || b.births == 0 {
		return
	}
	gap := birthGap(a.lo, a.hi, b.lo, b.hi)
	if gap == 0 {
		s.add(Birth, Equal, m.birth.meeting(a.lo, a.hi, b.lo, b.hi))
		return
	}
	w, level := m.w.BirthApart, Differs
	switch {
	case gap < 366:
		w, level = m.w.BirthNear, Near
	case gap < 3*366:
		w = m.w.BirthFar
	}
	cost := int32(math.Round(-16 * m.w.BirthOdd))
	both := fitBirths(&m.birth, &a.ages, &b.ages, pad, cost)
	one, other := fitBirths(&m.birth, &a.ages, nil, pad, cost), fitBirths(&m.birth, &b.ages, nil, pad, cost)
	fit := math.Log2(max(both.mass, 1e-30) / (one.mass * other.mass))
	fit += m.w.BirthMany * oddLines(a.ages.n+b.ages.n, both.against-one.against-other.against)
	w = min(0, max(w, fit))
	if s.level[Number] == Equal && s.level[FamilyName] == Equal {
		w *= .4 // number and name prove more than ages disprove
	}
	s.add(Birth, level, w)
}

// oddLines is log2 of the number of ways in which k of n lines can be the
// wrong ones, the factor of the binomial distribution; 0 where more are wrong
// than mistakes would make.
//
// What speaks against two people, that the second should have just these few
// lines, is not reckoned. Of ages the factor is given in full, of sexes half of it.
func oddLines(n, k int32) float64 {
	if k < 1 || k > mostOdd {
		return 0
	}
	return choices(n, k)
}

const mostOdd = 4 // lines of one person that may be wrong in one way

// weighSex: the lines of the sex that few have are wrong ones, if the two are
// one person.
func (m *model) weighSex(a, b *cluster, s *sum) {
	x, y := a.mainSex(), b.mainSex()
	switch {
	case x == SexNotGiven || y == SexNotGiven:
	case x == y:
		s.add(Sex, Equal, 0)
	case x == SexX || y == SexX:
		s.add(Sex, Differs, m.w.SexX)
	default:
		few := func(c *cluster) int32 { return min(c.sexes[SexM], c.sexes[SexW]) }
		both := min(a.sexes[SexM]+b.sexes[SexM], a.sexes[SexW]+b.sexes[SexW])
		n := a.sexes[SexM] + a.sexes[SexW] + b.sexes[SexM] + b.sexes[SexW]
		w, k := m.w.SexDiffers, both-few(a)-few(b)
		if n > 2 && k <= mostOdd {
			w = min(0, max(w, float64(k)*m.w.SexOdd+m.w.SexMany*oddLines(n, k)))
		}
		s.add(Sex, Differs, w)
	}
}

// weighClub averages over the clubs of both, each by its share of the rows of
// sheets that give clubs at all.
func (m *model) weighClub(a, b *cluster, s *sum) {
	if a.asked == 0 || b.asked == 0 {
		return
	}
	if len(a.clubs) == 0 && len(b.clubs) == 0 {
		s.add(Club, Neither, m.w.ClubBothBlank)
		return
	}
	if len(a.clubs) == 0 || len(b.clubs) == 0 {
		s.add(Club, OneSide, m.w.ClubOneBlank)
		return
	}
	ra, rb := float64(a.asked), float64(b.asked)
	differs, blank, both := math.Exp2(m.w.ClubDiffers), math.Exp2(m.w.ClubOneBlank), math.Exp2(m.w.ClubBothBlank)
	sum, level := 0., Differs
	namedA, namedB := 0., 0.
	for _, x := range a.clubs {
		namedA += float64(x.n) / ra
	}
	for _, y := range b.clubs {
		namedB += float64(y.n) / rb
	}
	same := 0.
	for _, x := range a.clubs {
		for _, y := range b.clubs {
			if x.id == y.id {
				p := float64(x.n) / ra * float64(y.n) / rb
				sum += p * math.Exp2(min(3.5, math.Log2(.97/float64(m.clubs[x.id]))))
				same += p
				level = Equal
			}
		}
	}
	sum += (namedA*namedB - same) * differs
	sum += (namedA*(1-namedB) + namedB*(1-namedA)) * blank
	sum += (1 - namedA) * (1 - namedB) * both
	s.add(Club, level, math.Log2(max(sum, math.Exp2(-8))))
}

// weighPace compares mean log times: the density of their difference for one
// person, with one in fourteen a much slower day, against that for two people.
func (m *model) weighPace(a, b *cluster, s *sum) {
	if a.timed == 0 || b.timed == 0 {
		return
	}
	d := (float64(a.dev)/float64(a.timed) - float64(b.dev)/float64(b.timed)) / 1e6
	v := .075*.075*(1/float64(a.timed)+1/float64(b.timed)) + .04*.04
	// A slow day is one in fourteen; that a whole series is slow is rarer.
	slow := .01 + .06/float64(min(a.timed, b.timed))
	w := math.Log2(((1-slow)*normal(d, v) + slow*normal(d, v+.09)) / normal(d, v+2*.21*.21))
	s.add(Pace, Missing, min(2.5, max(-6, w)))
}

func normal(d, v float64) float64 { return math.Exp(-d*d/(2*v)) / math.Sqrt(2*math.Pi*v) }

// weighDays: two lines of one run are hardly one person's. Never to have met
// on one day in many chances speaks for one person: two people would have met
// by chance, in bits chances / ln 2 (the Poisson distribution's log2 of no
// meeting), counted weekday by weekday: who runs here on Saturdays and there on
// Sundays cannot meet.
func (m *model) weighDays(a, b *cluster, s *sum) {
	if len(a.runs) == 0 || len(b.runs) == 0 {
		return
	}
	same, sameDay := m.clashes(a, b)
	if same > 0 || sameDay > 0 {
		w := max(m.w.SameRun, float64(sameDay)*m.w.SameDay)
		if same > 0 {
			w = m.w.SameRun
		}
		if s.level[Number] == Equal {
			w *= .4
		}
		s.add(SameRun, Differs, w)
		return
	}
	if a.loose || b.loose {
		return // known namesakes: whoever of them it is not was missing too
	}
	if chances := m.meetings(a, b); chances > 0 {
		s.add(TakeTurns, Equal, min(5, chances/math.Ln2))
	}
}

// clashes counts the runs in which two both stand, and the other days on which
// both ran at different places. Who ran 2 km and 5 km at one place on one morning may
// well be one person.
func (m *model) clashes(a, b *cluster) (same, sameDay int) {
	day, place := m.lab.runDay, m.lab.runPlace
	for i, j := 0, 0; i < len(a.runs) && j < len(b.runs); {
		switch x, y := a.runs[i], b.runs[j]; {
		case x == y:
			same++
			i++
			j++
		case day[x] == day[y]:
			if place[x] != place[y] {
				sameDay++
			}
			if x < y {
				i++
			} else {
				j++
			}
		case x < y:
			i++
		default:
			j++
		}
	}
	return same, sameDay
}

// weighForAsking is weigh as far as it decides what people are asked. Two who
// stand in one run are never joined unasked, but one of the lines may be
// somebody else's: if they are one person, that happens to so many of their
// lines; two people would have met as often as chance has it. Either number of
// clashes is taken from the Poisson distribution.
func (m *model) weighForAsking(a, b *cluster) sum {
	s := m.weigh(a, b)
	if s.level[SameRun] != Differs || a.loose || b.loose {
		return s
	}
	same, sameDay := m.clashes(a, b)
	mistakes := strangeLines * float64(min(len(a.runs), len(b.runs)))
	met := max(m.meetings(a, b), mistakes)
	bits := float64(same+sameDay)*math.Log2(mistakes/met) + (met-mistakes)/math.Ln2
	if more := min(0, bits) - float64(s.bits[SameRun]); more > 0 {
		s.add(SameRun, Differs, more)
		s.total = math.Round(s.total*256) / 256
	}
	return s
}

// strangeLines is the share of a runner's lines that are somebody else's.
const strangeLines = .01

// meetings is how often two people who come as a and b do would have met by
// chance: of the two ways to reckon it, the one that gives more.
func (m *model) meetings(a, b *cluster) float64 {
	return max(m.chances(a.runs, b.runs), m.chances(b.runs, a.runs))
}

// chances is how many of b's runs in the time that a ran a would have been in,
// by how often a came. So a single line says something, too: a regular who
// never misses a week was missing just then.
func (m *model) chances(a, b []int32) float64 {
	day := m.lab.runDay
	from, to := day[a[0]], day[a[len(a)-1]]
	weeks := float64(to-from)/7 + 1
	if weeks < 4 {
		return 0
	}
	na, nb := m.weekdays(a, from, to), m.weekdays(b, from, to)
	n := 0.
	for d := range na {
		n += nb[d] * na[d] / weeks
	}
	return n
}

// weekdays counts the runs of a period by day of the week.
func (m *model) weekdays(runs []int32, from, to unit.Day) (n [7]float64) {
	for _, k := range runs {
		if d := m.lab.runDay[k]; d >= from && d <= to {
			n[(int(d)%7+7)%7]++
		}
	}
	return n
}
