package who

import (
	"cmp"
	"slices"
	"sort"

	"lapwing/pipeline/unit"
)

// Known is what a linkage leaves behind, so that a few new rows can be given to
// its runners without linking everything again (see Attach). All lists are by
// the labels of Rows; whoever keeps them between runs of the program translates
// labels that are not the same the next time.
type Known struct {
	Weights    Weights
	People     float64 // distinct full names and sexes
	Signatures float64
	Single     float64 // share of given names that are a single letter

	BirthStart unit.Day
	Births     []float64 // share of births up to the end of each month from BirthStart

	// Courses, by label. The courses that share people with course c stand in
	// Other[Start[c]:Start[c+1]], with how many rows and people beside them.
	RowShare, PeopleShare []float64
	RowTotal, PeopleTotal float64
	Start, Other          []int32
	RowCount, PeopleCount []float64
	CourseLevel           []int32 // mean log time in millionths; NoLevel
	RunLevel              []int32 // by run: level that times were measured against; NoLevel

	Clubbed, Unsure []bool    // by series: sheets that give clubs; whose ages change all in one week
	Clubs           []float32 // by club: share of rows

	ClassShare []float64 // communities of names, see Name.Class; none: all are one
	Counted    []uint64  // hashes of the names that the communities were found from, upwards

	Given, Family []Name // distinct parts of names
	Numbers       []RunnersNumber
	Spellings     []Spelling
}

// NoLevel stands where no time is known.
const NoLevel = noTime

// Name is a given or family name and how common it and its like are, as shares
// of signatures: see part.
type Name struct {
	Text                           string
	No                             int32 // by which Spelling names it
	Mass, Rare, Slip, Nick, Double float64
	AsRead                         int32     // distinct texts that have it as this part before any are turned round
	Class                          []float32 // names of each community that have it; nil: none
}

// Spelling says that a runner has stood under a name at a course.
type Spelling struct {
	Runner        int32 // label of Result.Runner
	Given, Family int32 // Name.No
	Course        int32
}

// RunnersNumber says that a runner has had a number (label of Rows.Number).
type RunnersNumber struct{ Runner, Number int32 }

// Known gathers what is worth keeping of a linkage.
func (r *Result) Known() *Known {
	m := r.m
	l, a, t := &m.lab, &m.lift, &m.names
	k := &Known{Weights: m.w, People: m.people, Signatures: float64(len(m.sigs)), Single: t.given.single,
		BirthStart: m.birth.start, Births: m.birth.cum, RowTotal: a.rows.total, PeopleTotal: a.people.total,
		Clubbed: m.clubbed, Unsure: m.unsure}
	k.keepCourses(l, a)
	k.RunLevel = make([]int32, top(l.runFrom)+1)
	for i := range k.RunLevel {
		k.RunLevel[i] = NoLevel
	}
	for i, from := range l.runFrom {
		k.RunLevel[from] = l.level[i]
	}
	k.Clubs = make([]float32, top(l.clubFrom)+1)
	for i, from := range l.clubFrom {
		if i < len(m.clubs) {
			k.Clubs[from] = m.clubs[i]
		}
	}
	if q := m.community; q != nil {
		k.ClassShare = slices.Clone(q.share[:])
		for id := range q.seen {
			k.Counted = append(k.Counted, hash2(t.given.text[id>>32], "\x00"+t.family.text[uint32(id)]))
		}
		slices.Sort(k.Counted)
	}
	given, family := m.keepParts(&k.Given, &t.given, t.asGiven, true), m.keepParts(&k.Family, &t.family, t.asFamily, false)
	k.keepRunners(m, given, family)
	return k
}

func top(list []int32) int32 {
	t := int32(-1)
	for _, x := range list {
		t = max(t, x)
	}
	return t
}

// keepCourses takes the tables of courses over, by the labels of Rows.
func (k *Known) keepCourses(l *labels, a *courseLift) {
	n := int(top(l.courseFrom)) + 1
	k.RowShare, k.PeopleShare, k.CourseLevel = make([]float64, n), make([]float64, n), make([]int32, n)
	at := make([]int32, n)
	for c := range at {
		at[c], k.CourseLevel[c] = -1, NoLevel
	}
	for i, from := range l.courseFrom {
		at[from] = int32(i)
		k.RowShare[from], k.PeopleShare[from] = a.rows.share[i], a.people.share[i]
		k.CourseLevel[from] = l.courseLevel[i]
	}
	k.Start = make([]int32, n+1)
	for c := range n {
		k.Start[c+1] = k.Start[c]
		if at[c] < 0 {
			continue
		}
		for e := a.start[at[c]]; e < a.start[at[c]+1]; e++ {
			k.Other = append(k.Other, l.courseFrom[a.other[e]])
			k.RowCount, k.PeopleCount = append(k.RowCount, a.rows.count[e]), append(k.PeopleCount, a.people.count[e])
			k.Start[c+1]++
		}
	}
}

// keepParts lists the parts of names in the order of their texts and says
// where each id stands in the list. Parts that only ever stood the other way
// round come with the rest: they count when names are turned.
func (m *model) keepParts(to *[]Name, p *part, asRead map[string]int32, given bool) []int32 {
	list := make([]Name, 0, len(p.text))
	for i, s := range p.text {
		x := Name{Text: s, Mass: p.mass[i], Rare: p.rare[i], Slip: p.slip[i], Double: p.double[i], AsRead: asRead[s]}
		if given {
			x.Nick = p.nick[i]
		}
		if q := m.community; q != nil {
			from := q.family
			if given {
				from = q.given
			}
			if i < len(from) && from[i] != ([classes]float32{}) {
				x.Class = from[i][:]
			}
		}
		list = append(list, x)
	}
	for s, n := range asRead {
		if _, ok := p.ids[s]; !ok {
			list = append(list, Name{Text: s, AsRead: n})
		}
	}
	slices.SortFunc(list, func(a, b Name) int { return cmp.Compare(a.Text, b.Text) })
	at := make([]int32, len(p.text))
	for i := range list {
		list[i].No = int32(i)
		if id, ok := p.ids[list[i].Text]; ok {
			at[id] = int32(i)
		}
	}
	*to = list
	return at
}

// keepRunners lists every runner's spellings by course, and numbers.
func (k *Known) keepRunners(m *model, given, family []int32) {
	n := len(m.roots)
	from := make([]int32, n+1)
	for _, r := range m.runner {
		from[r+1]++
	}
	for r := range n {
		from[r+1] += from[r]
	}
	of, at := make([]int32, len(m.runner)), slices.Clone(from[:n])
	for s, r := range m.runner {
		of[at[r]] = int32(s)
		at[r]++
	}
	k.Spellings = make([]Spelling, 0, len(m.sigs)*3/2)
	for r := range int32(n) {
		first, firstNumber := len(k.Spellings), len(k.Numbers)
		for _, s := range of[from[r]:from[r+1]] {
			c := &m.sigs[s]
			for _, x := range c.names {
				key := &m.names.keys[x.id]
				for _, co := range c.courses {
					k.Spellings = append(k.Spellings, Spelling{r, given[key.given], family[key.family], m.lab.courseFrom[co.id]})
				}
			}
			for _, x := range c.numbers {
				k.Numbers = append(k.Numbers, RunnersNumber{r, x.id})
			}
		}
		k.Spellings = k.Spellings[:first+len(sortedOnce(k.Spellings[first:], Spelling.Compare))]
		k.Numbers = k.Numbers[:firstNumber+len(sortedOnce(k.Numbers[firstNumber:], func(a, b RunnersNumber) int { return cmp.Compare(a.Number, b.Number) }))]
	}
}

func (s Spelling) Compare(o Spelling) int {
	return cmp.Or(cmp.Compare(s.Runner, o.Runner), cmp.Compare(s.Given, o.Given), cmp.Compare(s.Family, o.Family), cmp.Compare(s.Course, o.Course))
}

func sortedOnce[T comparable](list []T, compare func(a, b T) int) []T {
	if len(list) < 2 {
		return list
	}
	slices.SortFunc(list, compare)
	return slices.Compact(list)
}

// recall sets a model's tables to those of an earlier linkage. Names that it
// did not know are as common as a name that nobody has.
func (m *model) recall() {
	k, t := m.known, &m.names
	floor := .3 / max(1, k.Signatures)
	t.given.single = k.Single
	for which, p := range []*part{&t.given, &t.family} {
		known := k.Given
		if which == 1 {
			known = k.Family
		}
		at := func(s string) (int, bool) {
			return sort.Find(len(known), func(i int) int { return cmp.Compare(s, known[i].Text) })
		}
		p.mass, p.double = nil, nil
		p.split()
		n := len(p.text)
		p.mass, p.double, p.nick = make([]float64, n), make([]float64, n), make([]float64, n)
		p.rare, p.slip = make([]float64, n), make([]float64, n)
		fresh := make([]bool, n)
		for i, s := range p.text {
			p.mass[i], p.double[i], fresh[i] = floor, floor, true
			if j, ok := at(s); ok && known[j].Mass > 0 {
				x := &known[j]
				p.mass[i], p.rare[i], p.slip[i], p.nick[i], p.double[i], fresh[i] = x.Mass, x.Rare, x.Slip, x.Nick, x.Double, false
			}
		}
		p.meant = map[int32][]int32{}
		for _, pair := range p.pairSlips() {
			a, b := int32(pair>>32), int32(uint32(pair))
			p.newSlip(a, b, fresh)
			p.mayMean(a, b)
		}
		if which == 0 {
			p.group()
			p.newNicknames(fresh)
		}
	}
	m.people = k.People
	m.join = m.o.Join + joinSingle(m.people)
	m.birth = birthDensity{start: k.BirthStart, cum: k.Births}
	m.clubs = make([]float32, m.lab.clubs)
	for i, from := range m.lab.clubFrom {
		if int(from) < len(k.Clubs) {
			m.clubs[i] = k.Clubs[from]
		}
	}
	m.recallCourses()
	m.recallCommunities()
}

// newSlip counts a new name among those one slip away from another.
func (p *part) newSlip(a, b int32, fresh []bool) {
	if !fresh[a] && !fresh[b] {
		return
	}
	for range 2 {
		if fresh[a] {
			switch {
			case p.mistyped(a, b):
				p.rare[b] += p.mass[a]
			case p.mistyped(b, a):
			default:
				p.slip[b] += p.mass[a]
				if !fresh[b] {
					p.slip[a] += p.mass[b]
				}
			}
		}
		a, b = b, a
	}
}

// newNicknames counts, for new names (nil: all are), the others on their lines of the
// nickname table that are at hand.
func (p *part) newNicknames(fresh []bool) {
	mass := make([]float64, nickGroupCount)
	for i, gs := range p.groups {
		for _, g := range gs {
			mass[g] += p.mass[i]
		}
	}
	for i, gs := range p.groups {
		if fresh == nil || fresh[i] {
			for _, g := range gs {
				p.nick[i] += mass[g] - p.mass[i]
			}
		}
	}
}

// recallCourses lays the tables of courses out by this model's labels. A
// course that was not known is neither near nor far from any.
func (m *model) recallCourses() {
	k, a, l := m.known, &m.lift, &m.lab
	at := map[int32]int32{}
	for i, from := range l.courseFrom {
		at[from] = int32(i)
	}
	a.rows = liftTable{share: make([]float64, l.courses), total: k.RowTotal}
	a.people = liftTable{share: make([]float64, l.courses), total: k.PeopleTotal}
	a.start, a.other = make([]int32, l.courses+1), nil
	type edge struct {
		to int32
		at int32
	}
	var row []edge
	for i, from := range l.courseFrom {
		row = row[:0]
		if int(from) < len(k.RowShare) {
			a.rows.share[i], a.people.share[i] = k.RowShare[from], k.PeopleShare[from]
			for e := k.Start[from]; e < k.Start[from+1]; e++ {
				if to, ok := at[k.Other[e]]; ok {
					row = append(row, edge{to, e})
				}
			}
		}
		slices.SortFunc(row, func(x, y edge) int { return cmp.Compare(x.to, y.to) })
		for _, e := range row {
			a.other = append(a.other, e.to)
			a.rows.count, a.people.count = append(a.rows.count, k.RowCount[e.at]), append(a.people.count, k.PeopleCount[e.at])
		}
		a.start[i+1] = int32(len(a.other))
	}
}

func (m *model) recallCommunities() {
	k, t := m.known, &m.names
	if len(k.ClassShare) != classes {
		return
	}
	q := &communities{given: make([][classes]float32, len(t.given.text)), family: make([][classes]float32, len(t.family.text)), seen: map[uint64]struct{}{}}
	copy(q.share[:], k.ClassShare)
	for which, p := range []*part{&t.given, &t.family} {
		known, to := k.Given, q.given
		if which == 1 {
			known, to = k.Family, q.family
		}
		for i, s := range p.text {
			if j, ok := sort.Find(len(known), func(i int) int { return cmp.Compare(s, known[i].Text) }); ok {
				copy(to[i][:], known[j].Class)
			}
		}
	}
	for i := range t.keys {
		x := &t.keys[i]
		if _, ok := slices.BinarySearch(k.Counted, hash2(t.given.text[x.given], "\x00"+t.family.text[x.family])); ok {
			q.seen[uint64(x.given)<<32|uint64(uint32(x.family))] = struct{}{}
		}
	}
	m.community = q
}
