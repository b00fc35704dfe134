package who

import (
	"context"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
)

// Search finds the known runners who might own new rows, among what Known
// lists, a piece at a time: the lists of a large archive are better looked
// through where they are kept than read whole.
//
// In this order: Near and Add for every part of a name, Wanted, Spelling for
// every spelling with a wanted pair of parts, Numbered for every runner with a
// number of the new rows, Runners.
type Search struct {
	m             *model
	k             *Known
	given, family searchPart

	names   []searchName        // distinct names of the new rows
	rows    [][]int32           // by distinct name
	wanted  map[[2]int32][]near // by numbers of given and family name
	runners map[int32]struct{}
	sakes   []int32 // by distinct name: namesakes taken from anywhere
}

// searchPart is the distinct given or family names of the new rows and the
// known ones near each of them.
type searchPart struct {
	of    map[string]int32 // text -> place in text
	text  []string
	near  [][]int32 // by text: places in parts of what is near
	known []Name

	deletions map[uint64][]int32 // words that one deletion leaves -> texts
	filter    *filter
	tokens    map[string][]int32
	heads     map[string][]int32 // first two letters -> texts: looked at for short forms
	starts    map[string][]int32 // first three letters -> texts: looked at for likeness
	groups    map[int16][]int32  // lines of the nickname table -> texts
	lost      []int32            // texts with letters that could not be recovered
}

type searchName struct{ given, family int32 }

// near is a distinct new name and the bits by which a pair of parts speaks for
// it.
type near struct {
	name  int32
	exact bool
	bits  float64
}

// NewSearch begins a search for the owners of rows, all of them new. k needs
// no parts of names yet.
func NewSearch(k *Known, rows *Rows, names []name.Name) (*Search, error) {
	if err := rows.check(len(names)); err != nil {
		return nil, err
	}
	s := &Search{k: k, m: &model{ctx: context.Background(), rows: rows, in: names, w: k.Weights, known: k},
		runners: map[int32]struct{}{}, wanted: map[[2]int32][]near{}}
	s.given.begin()
	s.family.begin()
	at := map[searchName]int32{}
	for i, n := range rows.Name {
		x := &names[n]
		if x.Unnamed || x.Several || x.Full == "" {
			continue
		}
		id := searchName{s.given.add(x.Given), s.family.add(x.Family)}
		j, ok := at[id]
		if !ok {
			j = int32(len(s.names))
			at[id] = j
			s.names, s.rows = append(s.names, id), append(s.rows, nil)
		}
		s.rows[j] = append(s.rows[j], int32(i))
	}
	s.sakes = make([]int32, len(s.names))
	s.given.index(true)
	s.family.index(false)
	return s, nil
}

func (p *searchPart) begin() { p.of = map[string]int32{} }

func (p *searchPart) add(text string) int32 {
	i, ok := p.of[text]
	if !ok {
		i = int32(len(p.text))
		p.of[text] = i
		p.text = append(p.text, text)
	}
	return i
}

// index prepares to tell what is near any of the texts.
func (p *searchPart) index(given bool) {
	p.near = make([][]int32, len(p.text))
	p.deletions, p.tokens = map[uint64][]int32{}, map[string][]int32{}
	p.heads, p.starts, p.groups = map[string][]int32{}, map[string][]int32{}, map[int16][]int32{}
	p.filter = newFilter(len(p.text))
	for i, s := range p.text {
		at := int32(i)
		eachDeletion(s, func(h uint64) {
			p.deletions[h] = append(p.deletions[h], at)
			p.filter.set(h)
		})
		front := s
		for w := range strings.SplitSeq(s, " ") {
			if utf8.RuneCountInString(w) > 1 && !particle[w] {
				p.tokens[w] = append(p.tokens[w], at)
			}
		}
		if k := strings.IndexByte(s, ' '); k > 0 {
			front = s[:k]
		}
		if given {
			for _, g := range nickGroups[front] {
				p.groups[g] = append(p.groups[g], at)
			}
		}
		p.heads[first(s, 2)] = append(p.heads[first(s, 2)], at)
		p.starts[first(s, 3)] = append(p.starts[first(s, 3)], at)
		if strings.IndexByte(s, name.Lost) >= 0 {
			p.lost = append(p.lost, at)
		}
	}
}

// eachDeletion gives the hashes of a word and of what is left of it when one
// letter is taken out.
func eachDeletion(s string, do func(h uint64)) {
	if n := utf8.RuneCountInString(s); n < 3 || n > 40 {
		return
	}
	do(hash(s))
	for at, r := range s {
		do(hash2(s[:at], s[at+utf8.RuneLen(r):]))
	}
}

// Near says whether a part of a name is worth adding: it is near one of the
// new rows' names, or is one of them in the other place.
func (s *Search) Near(family bool, text string) bool {
	p, q := &s.given, &s.family
	if family {
		p, q = q, p
	}
	if _, ok := q.of[text]; ok {
		return true
	}
	found := false
	p.each(text, !family, func(int32) bool { found = true; return false })
	return found
}

// each gives the texts that a known part is near, until do says no. A text may
// come more than once.
func (p *searchPart) each(text string, given bool, do func(at int32) bool) {
	if at, ok := p.of[text]; ok && !do(at) {
		return
	}
	list := func(l []int32, ok func(at int32) bool) bool {
		for _, at := range l {
			if ok(at) && !do(at) {
				return false
			}
		}
		return true
	}
	always := func(int32) bool { return true }
	more := true
	eachDeletion(text, func(h uint64) {
		if more && p.filter.has(h) {
			more = list(p.deletions[h], func(at int32) bool { return name.OneSlip(p.text[at], text) })
		}
	})
	if !more {
		return
	}
	if !list(p.tokens[text], always) {
		return
	}
	front := text
	if k := strings.IndexByte(text, ' '); k >= 0 {
		front = text[:k]
		for w := range strings.SplitSeq(text, " ") {
			if l := p.tokens[w]; l != nil && !list(l, always) {
				return
			}
		}
	}
	if given {
		for _, g := range nickGroups[front] {
			if !list(p.groups[g], always) {
				return
			}
		}
		if utf8.RuneCountInString(text) == 1 { // an initial
			for i, s := range p.text {
				if strings.HasPrefix(s, text) && !do(int32(i)) {
					return
				}
			}
		} else if at, ok := p.of[first(text, 1)]; ok && !do(at) {
			return
		}
	}
	if given && !list(p.heads[first(text, 2)], func(at int32) bool { return shortForm(p.text[at], text) }) {
		return
	}
	if !list(p.starts[first(text, 3)], func(at int32) bool { return alike(p.text[at], text, .94) }) {
		return
	}
	list(p.lost, func(at int32) bool { return name.EqualLost(p.text[at], text) })
}

// Add takes a part that is near, with its number.
func (s *Search) Add(family bool, x Name) {
	p := &s.given
	if family {
		p = &s.family
	}
	place := int32(len(p.known))
	p.known = append(p.known, x)
	p.each(x.Text, !family, func(at int32) bool {
		if l := p.near[at]; len(l) == 0 || l[len(l)-1] != place {
			p.near[at] = append(p.near[at], place)
		}
		return true
	})
}

// Wanted lists the pairs of numbers of given and family names under which an
// owner may stand.
func (s *Search) Wanted() [][2]int32 {
	m, t := s.m, &s.m.names
	s.k.Given, s.k.Family = sortedNames(s.given.known), sortedNames(s.family.known)
	t.given.ids, t.family.ids = map[string]int32{}, map[string]int32{}
	intern := func(p *part, q *searchPart) (texts, known []int32) {
		for _, x := range q.text {
			texts = append(texts, p.id(x))
		}
		for i := range q.known {
			known = append(known, p.id(q.known[i].Text))
		}
		return
	}
	given, knownGiven := intern(&t.given, &s.given)
	family, knownFamily := intern(&t.family, &s.family)
	m.rename()
	m.recall()
	for n, x := range s.names {
		least := s.least(int32(n), 8)
		for _, f := range s.family.near[x.family] {
			lf, bf := m.compareFamily(family[x.family], knownFamily[f])
			if lost(s.family.text[x.family], s.family.known[f].Text) {
				lf, bf = WithLost, -math.Log2(t.family.mass[knownFamily[f]])-1
			}
			if lf == Differs {
				continue
			}
			for _, g := range s.given.near[x.given] {
				lg, bg := m.compareGiven(given[x.given], knownGiven[g])
				if lost(s.given.text[x.given], s.given.known[g].Text) {
					lg, bg = WithLost, -math.Log2(t.given.mass[knownGiven[g]])-1
				}
				if lg == Differs || bg+bf < least {
					continue
				}
				s.want(s.given.known[g].No, s.family.known[f].No, near{int32(n), lg == Equal && lf == Equal, bg + bf})
			}
		}
		s.wantSwapped(int32(n), least)
	}
	out := make([][2]int32, 0, len(s.wanted))
	for k := range s.wanted {
		out = append(out, k)
	}
	slices.SortFunc(out, func(a, b [2]int32) int { return slices.Compare(a[:], b[:]) })
	return out
}

func lost(a, b string) bool {
	return a != b && (strings.IndexByte(a, name.Lost) >= 0 || strings.IndexByte(b, name.Lost) >= 0) && name.EqualLost(a, b)
}

func sortedNames(list []Name) []Name {
	out := slices.Clone(list)
	slices.SortFunc(out, func(a, b Name) int { return strings.Compare(a.Text, b.Text) })
	return out
}

func (s *Search) want(given, family int32, x near) {
	k := [2]int32{given, family}
	s.wanted[k] = append(s.wanted[k], x)
}

// wantSwapped looks for given and family name exchanged.
func (s *Search) wantSwapped(n int32, least float64) {
	x := s.names[n]
	g, f := s.given.text[x.given], s.family.text[x.family]
	if g == "" {
		return
	}
	for _, a := range s.given.known {
		if a.Text != f {
			continue
		}
		for _, b := range s.family.known {
			if b.Text == g && a.Mass > 0 && b.Mass > 0 {
				if bits := math.Log2(s.m.w.Family[Swapped] / (a.Mass * b.Mass)); bits >= least {
					s.want(a.No, b.No, near{n, false, bits})
				}
			}
		}
	}
}

// least is how much a name must say for one of its rows to be joined, if
// everything else speaks for it as loudly as it can and the courses say so
// many bits.
func (s *Search) least(n int32, course float64) float64 {
	most := 0.
	for _, i := range s.rows[n] {
		most = max(most, s.most(i))
	}
	return s.join() - (s.k.Weights.Prior - math.Log2(s.k.People)) - course - most
}

func (s *Search) join() float64 { return joinSingle(s.k.People) }

// most is what age, club, pace and days can say of a row at most.
func (s *Search) most(i int32) float64 {
	r, most := s.m.rows, 5.
	if r.BirthLo[i] != 0 || r.BirthHi[i] != 0 {
		most += 7
	}
	if r.Club[i] > 0 {
		most += 3.5
	} else {
		most += max(0, s.k.Weights.ClubBothBlank)
	}
	if r.LogTime[i] != 0 {
		most += 2.5
	}
	return most
}

// Spelling takes a runner (a label above 0) with a wanted pair of parts.
func (s *Search) Spelling(runner, given, family, course int32) {
	if _, ok := s.runners[runner]; ok {
		return
	}
	for _, x := range s.wanted[[2]int32{given, family}] {
		for _, i := range s.rows[x.name] {
			r := s.m.rows
			at := min(8, max(s.k.Weights.CourseLow, s.k.courseBits(r.Course[i], course)))
			prior := s.k.Weights.Prior - math.Log2(s.k.People)
			switch {
			case x.exact && r.Course[i] == course, prior+x.bits+at+s.most(i) >= s.join():
			case x.exact && r.Number[i] == 0 && r.BirthHi[i]-r.BirthLo[i] > looseDays-1 || x.exact && r.BirthHi[i] == 0 && r.BirthLo[i] == 0:
				// A row that no age places: is the name known to be several people?
				if s.sakes[x.name] >= mostSakes {
					continue
				}
				s.sakes[x.name]++
			default:
				continue
			}
			s.runners[runner] = struct{}{}
			return
		}
	}
}

// mostSakes is how many namesakes from anywhere are taken to tell whether a
// name is several people's.
const mostSakes = 20

// courseBits is the most that a row at each of two courses may say.
func (k *Known) courseBits(c, d int32) float64 {
	if int(c) >= len(k.RowShare) || int(d) >= len(k.RowShare) {
		return 0
	}
	rows, people := 0., 0.
	for e := k.Start[c]; e < k.Start[c+1]; e++ {
		if k.Other[e] == d {
			rows, people = k.RowCount[e], k.PeopleCount[e]
		}
	}
	return math.Log2(max((rows+.3)/(k.RowTotal*k.RowShare[c]*k.RowShare[d]+.3), (people+.3)/(k.PeopleTotal*k.PeopleShare[c]*k.PeopleShare[d]+.3)))
}

// Numbered takes a runner who has a number of the new rows.
func (s *Search) Numbered(runner int32) { s.runners[runner] = struct{}{} }

// Runners are the runners who might own one of the rows, upwards.
func (s *Search) Runners() []int32 {
	out := make([]int32, 0, len(s.runners))
	for r := range s.runners {
		out = append(out, r)
	}
	slices.Sort(out)
	return out
}
