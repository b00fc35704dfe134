package who

import (
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
)

// nameKey is one way to read a name: a given and a family name.
type nameKey struct {
	full, given, family int32  // into the intern tables
	tokens              uint64 // the same for the same words in any order
	lost                bool   // holds a letter that could not be recovered
	sole                bool   // one word only: no given name
	short               bool   // no more than the initial of the given name
}

// nameTable holds the distinct names of the rows and how common their parts
// are.
type nameTable struct {
	of   []int32 // input name -> key, -1 for nobody and several people
	keys []nameKey
	full []string

	given, family part
	// texts that have a part as their given and as their family name, before
	// any are turned round
	asGiven, asFamily map[string]int32
}

// part is the table of given or of family names.
type part struct {
	text   []string
	first  []int32   // id of the first token as a name of its own, -1
	tokens [][]int32 // ids of the tokens, only where there is more than one
	mass   []float64 // share of signatures
	rare   []float64 // share of the far rarer names one slip away: mostly mistypings of it
	slip   []float64 // share of the other names one slip away: names of their own
	nick   []float64 // share of the names the nickname table ties to it (given only)
	groups [][]int16 // nickname groups (given only)
	double []float64 // share of names of several tokens that hold this token
	sound  []string  // Soundex codes, "" where a name has fewer than four letters
	single float64   // share of names that are a single letter (given only)
	ids    map[string]int32
	slips  map[uint64]struct{} // pairs one slip apart, lower id << 32 | higher
	meant  map[int32][]int32   // commoner names that one may be a mistyping of
}

func (p *part) id(s string) int32 {
	if id, ok := p.ids[s]; ok {
		return id
	}
	id := int32(len(p.text))
	p.ids[s] = id
	p.text = append(p.text, s)
	return id
}

// tabulate interns the parsed names and turns round those whose order is the
// wrong way about.
func (m *model) tabulate() error {
	t := &m.names
	t.of = make([]int32, len(m.in))
	t.given.ids, t.family.ids = map[string]int32{}, map[string]int32{}
	used := make([]int32, len(m.in)) // rows with it
	for _, k := range m.rows.Name {
		used[k]++
	}
	turn := m.wrongWayRound(used)
	keyOf := map[uint64]int32{}
	fullOf := map[string]int32{}
	for i := range m.in {
		n := &m.in[i]
		if used[i] == 0 || n.Unnamed || n.Several || n.Full == "" {
			t.of[i] = -1
			continue
		}
		g, s, full := n.Given, n.Family, n.Full
		if turn != nil && turn[i] {
			g, s = s, g
			full = strings.ReplaceAll(g+s, " ", "")
		}
		g = prefixed(g)
		gi, si := t.given.id(g), t.family.id(s)
		packed := uint64(gi)<<32 | uint64(uint32(si))
		k, ok := keyOf[packed]
		if !ok {
			f, ok := fullOf[full]
			if !ok {
				f = int32(len(t.full))
				fullOf[full] = f
				t.full = append(t.full, full)
			}
			k = int32(len(t.keys))
			keyOf[packed] = k
			t.keys = append(t.keys, nameKey{full: f, given: gi, family: si, sole: g == "", short: len(g) < 2,
				tokens: tokenSum(g) + tokenSum(s), lost: strings.IndexByte(full, name.Lost) >= 0})
		}
		t.of[i] = k
	}
	return nil
}

// prefixed joins O, Mc, Mac or D to what follows, as the reading of names does
// where they begin a family name: they may stand in the place of the given one.
func prefixed(g string) string {
	for _, p := range [...]string{"o ", "mc ", "mac ", "d "} {
		if rest, ok := strings.CutPrefix(g, p); ok && len(rest) > 2 {
			return p[:len(p)-1] + rest
		}
	}
	return g
}

// wrongWayRound finds names whose last word is far likelier as a given name,
// and first word as a family name, than the other way about, judged by how
// the words stand in all other names; and those whose last word is an initial.
func (m *model) wrongWayRound(used []int32) []bool {
	t := &m.names
	if t.asGiven == nil { // else known from an earlier linkage
		t.asGiven, t.asFamily = map[string]int32{}, map[string]int32{}
		for i := range m.in {
			n := &m.in[i]
			if used[i] == 0 || n.Unnamed || n.Several || n.Given == "" {
				continue
			}
			t.asGiven[n.Given]++
			t.asFamily[n.Family]++
		}
	}
	var turn []bool
	set := func(i int) {
		if turn == nil {
			turn = make([]bool, len(m.in))
		}
		turn[i] = true
	}
	for i := range m.in {
		n := &m.in[i]
		if used[i] == 0 || n.Unnamed || n.Several || n.Given == "" || len(n.Given) < 2 {
			continue
		}
		if len(n.Family) < 2 { // RILEY M: no family name is a single letter
			set(i)
			continue
		}
		factor := 40.
		if n.Ordered {
			factor = 400 // the sheet itself said so: only swapped columns can be meant
		}
		others := func(n int32) float64 { return float64(max(0, n-1)) + .3 } // without the text itself
		if (float64(t.asGiven[n.Family])+.3)*(float64(t.asFamily[n.Given])+.3) > factor*others(t.asGiven[n.Given])*others(t.asFamily[n.Family]) {
			set(i)
		}
	}
	return turn
}

// frequencies counts how common given and family names are among signatures,
// with those one slip away and those a nickname table ties to them.
func (m *model) frequencies() error {
	t := &m.names
	total := float64(len(m.sigs))
	if total == 0 {
		return nil
	}
	floor := .3 / total
	count := func(p *part, of func(nameKey) int32) func() {
		return func() {
			p.mass = make([]float64, len(p.text))
			for i := range m.sigs {
				for _, s := range m.sigs[i].names {
					p.mass[of(t.keys[s.id])]++
				}
			}
			p.tokenize(floor, total)
			for i := range p.mass {
				p.mass[i] = p.mass[i]/total + floor
			}
			p.findSlips()
		}
	}
	together(m.o.Threads,
		count(&t.given, func(k nameKey) int32 { return k.given }),
		count(&t.family, func(k nameKey) int32 { return k.family }))
	t.given.findNicknames()
	for i, s := range t.given.text {
		if utf8.RuneCountInString(s) == 1 {
			t.given.single += t.given.mass[i]
		}
	}
	seen, people := make([]uint8, len(t.full)), 0 // sexes met, one bit each
	for i := range m.sigs {
		if c := &m.sigs[i]; len(c.names) > 0 {
			full, bit := t.keys[c.names[0].id].full, uint8(1)<<c.mainSex()
			if seen[full]&bit == 0 {
				seen[full] |= bit
				people++
			}
		}
	}
	m.people = max(2, float64(people))
	m.join = m.o.Join + joinSingle(m.people)
	m.clubs = make([]float32, m.lab.clubs)
	for i := range m.sigs {
		for _, c := range m.sigs[i].clubs {
			m.clubs[c.id] += float32(c.n) / float32(m.sigs[i].n) / float32(total)
		}
	}
	return nil
}

// tokenize splits the names of several tokens and counts, for each token, the
// share of such names that hold it.
func (p *part) tokenize(floor, total float64) {
	p.split()
	p.double = make([]float64, len(p.text))
	for i, ts := range p.tokens {
		for _, w := range ts {
			p.double[w] += p.mass[i] / total
		}
	}
	for i := range p.double {
		p.double[i] += floor
	}
}

// split finds the tokens of the names of several tokens, and how names sound.
func (p *part) split() {
	n := len(p.text)
	p.first = make([]int32, n)
	p.tokens = make([][]int32, n)
	for i := 0; i < n; i++ {
		p.first[i] = -1
		s := p.text[i]
		if strings.IndexByte(s, ' ') < 0 {
			continue
		}
		for w := range strings.SplitSeq(s, " ") {
			if utf8.RuneCountInString(w) < 2 {
				continue
			}
			id := p.id(w)
			p.tokens[i] = append(p.tokens[i], id)
		}
		if len(p.tokens[i]) > 0 {
			p.first[i] = p.tokens[i][0]
		}
	}
	for len(p.mass) < len(p.text) {
		p.mass = append(p.mass, 0)
		p.first = append(p.first, -1)
		p.tokens = append(p.tokens, nil)
	}
	p.sound = make([]string, len(p.text))
	for i, s := range p.text {
		if len(s) >= 4 {
			p.sound[i] = name.Soundex(s)
		}
	}
}

// findSlips finds the pairs of names one slip apart and how many others lie
// one slip away from each.
func (p *part) findSlips() {
	p.slip, p.rare = make([]float64, len(p.text)), make([]float64, len(p.text))
	p.meant = map[int32][]int32{}
	// Summed in a fixed order: the map's own order would change last digits.
	for _, k := range p.pairSlips() {
		a, b := int32(k>>32), int32(uint32(k))
		p.mayMean(a, b)
		switch {
		case p.mistyped(b, a):
			p.rare[a] += p.mass[b]
		case p.mistyped(a, b):
			p.rare[b] += p.mass[a]
		default:
			p.slip[a] += p.mass[b]
			p.slip[b] += p.mass[a]
		}
	}
}

// pairSlips finds the pairs of names one slip apart (one of them at least of
// four letters), through the words that deleting one letter leaves.
func (p *part) pairSlips() []uint64 {
	p.slips = map[uint64]struct{}{}
	var hashes []uint64
	var of []int32
	bare := make([]string, len(p.text)) // De Vries and Dvries are one slip apart
	for i, s := range p.text {
		bare[i] = s
		if strings.IndexByte(s, ' ') >= 0 {
			bare[i] = strings.ReplaceAll(s, " ", "")
		}
		eachDeletion(bare[i], func(h uint64) { hashes, of = append(hashes, h), append(of, int32(i)) })
	}
	radixSort(1, hashes, of)
	for lo := 0; lo < len(hashes); {
		hi := lo + 1
		for hi < len(hashes) && hashes[hi] == hashes[lo] {
			hi++
		}
		for x := lo; x < hi; x++ {
			for y := x + 1; y < hi; y++ {
				a, b := of[x], of[y]
				if a == b || len(bare[a]) < 4 && len(bare[b]) < 4 {
					continue
				}
				if a > b {
					a, b = b, a
				}
				k := uint64(a)<<32 | uint64(b)
				if _, ok := p.slips[k]; !ok && (bare[a] == bare[b] || name.OneSlip(bare[a], bare[b])) {
					p.slips[k] = struct{}{}
				}
			}
		}
		lo = hi
	}
	order := make([]uint64, 0, len(p.slips))
	for k := range p.slips {
		order = append(order, k)
	}
	slices.Sort(order)
	return order
}

// mayMean notes which of two names one slip apart the other may be meant for:
// the commoner one.
func (p *part) mayMean(a, b int32) {
	switch {
	case p.mass[b]*3 < p.mass[a]:
		p.meant[b] = append(p.meant[b], a)
	case p.mass[a]*3 < p.mass[b]:
		p.meant[a] = append(p.meant[a], b)
	}
}

// mistyped says whether x is so much rarer than y that it will be a mistyped y
// rather than a name of its own.
func (p *part) mistyped(x, y int32) bool { return p.mass[x]*10 < p.mass[y] }

func (p *part) oneSlip(a, b int32) bool {
	if a > b {
		a, b = b, a
	}
	_, ok := p.slips[uint64(a)<<32|uint64(uint32(b))]
	return ok
}

func (p *part) findNicknames() {
	p.group()
	p.nick = make([]float64, len(p.text))
	p.newNicknames(nil)
}

// group looks names up in the nickname table, by their first token.
func (p *part) group() {
	p.groups = make([][]int16, len(p.text))
	for i, s := range p.text {
		if f := p.first[i]; f >= 0 {
			s = p.text[f]
		}
		p.groups[i] = nickGroups[s]
	}
}

// nickInitial says whether a letter begins a short form of a name, or the name
// that it is short for.
func (p *part) nickInitial(id int32, letter byte) bool {
	for _, g := range p.groups[id] {
		if strings.IndexByte(nickLetters[g], letter) >= 0 {
			return true
		}
	}
	return false
}

func (p *part) nicknames(a, b int32) bool {
	for _, x := range p.groups[a] {
		for _, y := range p.groups[b] {
			if x == y {
				return true
			}
		}
	}
	return false
}

// shortForm says whether one name looks like a short form of the other: at
// least three letters of its beginning, with or without -ie, -y, -i, -o, -a
// and a doubled letter (Robbie, Robert; Sam, Samantha); or two and the second
// doubled (Immy, Imogen).
func shortForm(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(a) >= 3 && len(b) > len(a) && strings.HasPrefix(b, a) {
		return true
	}
	for _, p := range [2][2]string{{a, b}, {b, a}} {
		stem := p[0]
		for _, end := range [...]string{"ie", "ey", "y", "i", "o", "a"} {
			if s, ok := strings.CutSuffix(p[0], end); ok {
				stem = s
				break
			}
		}
		if stem == p[0] || len(stem) < 3 {
			continue
		}
		if strings.HasPrefix(p[1], stem) {
			return true
		}
		if n := len(stem); n > 2 && stem[n-1] == stem[n-2] && strings.HasPrefix(p[1], stem[:n-1]) {
			return true
		}
	}
	return false
}

// hash is FNV-1a, 64 bits, finished by a mixer: the same on every machine.
func hash(s string) uint64 { return mix(hashOn(14695981039346656037, s)) }

func hash2(a, b string) uint64 { return mix(hashOn(hashOn(14695981039346656037, a), b)) }

func hashOn(h uint64, s string) uint64 {
	for i := 0; i < len(s); i++ {
		h = (h ^ uint64(s[i])) * 1099511628211
	}
	return h
}

// mix is the 64-bit finaliser of MurmurHash3 (Appleby, public domain).
func mix(h uint64) uint64 {
	h ^= h >> 33
	h *= 0xff51afd7ed558ccd
	h ^= h >> 33
	h *= 0xc4ceb9fe1a85ec53
	return h ^ h>>33
}
