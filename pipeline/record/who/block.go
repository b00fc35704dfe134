package who

import (
	"sort"
	"strings"
	"sync/atomic"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// Kinds of blocking keys: two signatures are compared where they share one.
const (
	keyFull uint64 = iota + 1
	keyFullCourse
	keyTokens
	keyNumber
	keyCourseFamily
	keyCourseGivenFirst
	keyCourseGivenLast
	keyCourseEnds
	keyCourseGivenBirth
	keyCourseGivenDecade
	keyFamilyInitial
	keyGivenFirst
	keyGivenLast
	keyMistyped
	keyLost
)

// largestBlock is the size from which a block says too little to be worth its
// pairs.
const (
	largestBlock     = 150
	largestFullBlock = 400 // namesakes anywhere
)

// blocks collects keys and the signatures that have them.
type blocks struct {
	keys []uint64
	sig  []int32
}

func (b *blocks) add(key uint64, sig int32) {
	b.keys, b.sig = append(b.keys, key), append(b.sig, sig)
}

// block finds the pairs of signatures worth comparing.
//
// Established numbered signatures (three rows and more) of a clean archive
// meet only by full name and by number: slips, nicknames and new surnames are
// looked for from the others, so that ten million clean rows stay cheap.
func (m *model) block() error {
	b := m.allKeys()
	m.mistyped(&b)
	m.lostLetters(&b)
	m.lostAtCourse(&b)
	radixSort(m.o.Threads, b.keys, b.sig)
	if err := m.ctx.Err(); err != nil {
		return err
	}
	// pieces of whole blocks, of about equal length
	var cuts []int
	eachGroup(b.keys, 0, func(lo, _ int) {
		if len(cuts) == 0 || lo-cuts[len(cuts)-1] >= 1<<16 {
			cuts = append(cuts, lo)
		}
	})
	cuts = append(cuts, len(b.keys))
	m.sketch()
	found := make([][]uint64, len(cuts)-1)
	m.each(len(found), func(k int) {
		found[k] = m.pairsOf(b.keys[cuts[k]:cuts[k+1]], b.sig[cuts[k]:cuts[k+1]])
	})
	var pairs []uint64
	for k, part := range found {
		pairs = append(pairs, part...)
		found[k] = nil
		if len(pairs) > 1<<26 { // keep the working space bounded
			pairs = sortUnique(m.o.Threads, pairs)
		}
	}
	m.pairs = sortUnique(m.o.Threads, pairs)
	m.sketches = nil
	return nil
}

// allKeys lists the blocking keys of all signatures.
func (m *model) allKeys() blocks {
	probe := newFilter(len(m.sigs))
	meant := m.meantNames()
	const piece = 1 << 13
	pieces := (len(m.sigs) + piece - 1) / piece
	// the keys of each piece: of all its signatures, those that others are looked
	// for by, and later those that the established ones are found by
	found, hold := make([]blocks, pieces), make([][]int32, pieces)
	m.each(pieces, func(k int) {
		b := &found[k]
		var ks []uint64
		for i := int32(k * piece); int(i) < min(len(m.sigs), (k+1)*piece); i++ {
			c := &m.sigs[i]
			if len(c.names) == 0 {
				continue
			}
			m.mainKeys(i, b)
			if len(c.numbers) > 0 && c.n >= 3 {
				hold[k] = append(hold[k], i)
				continue
			}
			ks = m.wideKeys(c, ks[:0])
			for _, x := range m.spellings(c) {
				for _, meant := range meant[x.id] {
					if meant.full >= 0 {
						m.fullKeys(meant.full, i, b)
					}
					ks = m.wideKeysOf(meant, c, ks)
				}
			}
			for _, h := range ks {
				probe.set(h)
				b.add(h, i)
			}
		}
	})
	held := 0
	for _, h := range hold {
		held += len(h)
	}
	if held < len(m.sigs) {
		m.each(pieces, func(k int) {
			var ks []uint64
			for _, i := range hold[k] {
				ks = m.wideKeys(&m.sigs[i], ks[:0])
				for _, h := range ks {
					if probe.has(h) {
						found[k].add(h, i)
					}
				}
			}
		})
	}
	all := 0
	for k := range found {
		all += len(found[k].keys)
	}
	b := blocks{make([]uint64, 0, all), make([]int32, 0, all)}
	for k := range found {
		b.keys, b.sig = append(b.keys, found[k].keys...), append(b.sig, found[k].sig...)
		found[k] = blocks{}
	}
	return b
}

// pairsOf lists the pairs of some blocks that are worth comparing, sorted.
func (m *model) pairsOf(keys []uint64, sigs []int32) (pairs []uint64) {
	eachGroup(keys, 0, func(lo, hi int) {
		if hi-lo < 2 || hi-lo > largestFullBlock {
			return
		}
		in := sigs[lo:hi]
		if hi-lo > largestBlock && !m.sameFull(in) {
			return
		}
		for x, i := range in {
			for _, j := range in[x+1:] {
				if i != j && !m.bothFixed(i, j) && !hopeless(&m.sketches[i], &m.sketches[j]) && m.thinkable(&m.sigs[i], &m.sigs[j]) {
					pairs = append(pairs, uint64(min(i, j))<<32|uint64(uint32(max(i, j))))
				}
			}
		}
	})
	return sortUnique(1, pairs)
}

func (m *model) sameFull(sigs []int32) bool {
	f := m.names.keys[m.sigs[sigs[0]].names[0].id].full
	for _, i := range sigs[1:] {
		if m.names.keys[m.sigs[i].names[0].id].full != f {
			return false
		}
	}
	return true
}

// thinkable rules out pairs that no other evidence can join: several rows on
// both sides that show births more than a year apart, or different sexes, and
// no shared number. Where both have numbers, neither of which can be a
// mistyping of the other, one row that shows other births is enough; and where
// their names differ as well, so is another sex, a given name that has nothing
// in common, or no course where both have run.
func (m *model) thinkable(a, b *cluster) bool {
	if share(a.numbers, b.numbers) {
		return true
	}
	// how many rows of a side must say so before it counts
	births, sexes := int32(3), int32(3)
	others := len(a.numbers) > 0 && len(b.numbers) > 0 && !m.mistypedNumber(a, b)
	strangers := others && !m.sameWhole(a, b)
	if others {
		births = 1
	}
	if strangers {
		sexes = 1
		if !share(a.courses, b.courses) {
			return false
		}
	}
	if a.births >= births && b.births >= births && birthGap(a.lo, a.hi, b.lo, b.hi) > 365 && (others || !a.fewWrong(b)) {
		return false
	}
	sa, sb := a.mainSex(), b.mainSex()
	if !(a.n < sexes || b.n < sexes || sa+sb != SexM+SexW || sa == sb || sa == 0 || sb == 0) {
		return false
	}
	return !strangers || !m.otherGiven(a, b)
}

// fewWrong says whether the births of two signatures would not lie a year apart
// if the one or two lines of either that make them were wrong: among wide age
// groups a single line may have fixed the birth of all.
func (a *cluster) fewWrong(b *cluster) bool {
	if a.lo > b.hi {
		a, b = b, a
	}
	const wrong = 2
	if n := b.ages.kept(); n > wrong && min(b.lo, unit.Day(b.ages.lo[wrong]>>8))-a.hi <= 365+pad {
		return true
	}
	n := a.ages.kept()
	return n > wrong && b.lo-max(a.hi, unit.Day(a.ages.hi[wrong]>>8)) <= 365+pad
}

// otherGiven says whether the given names of two signatures have nothing in
// common: relatives, most likely.
func (m *model) otherGiven(a, b *cluster) bool {
	for _, x := range a.names {
		for _, y := range b.names {
			j, k := &m.names.keys[x.id], &m.names.keys[y.id]
			if j.lost || k.lost || j.sole || k.sole || j.tokens == k.tokens {
				return false
			}
			if l, _ := m.compareGiven(j.given, k.given); l != Differs {
				return false
			}
		}
	}
	return true
}

// sameWhole says whether two signatures have a whole name in common.
func (m *model) sameWhole(a, b *cluster) bool {
	for _, x := range a.names {
		for _, y := range b.names {
			if m.names.keys[x.id].full == m.names.keys[y.id].full {
				return true
			}
		}
	}
	return false
}

// mistypedNumber says whether a number of one, seen once or twice, may be a
// mistyping of one of the other's.
func (m *model) mistypedNumber(a, b *cluster) bool {
	if min(a.n, b.n) > 2 {
		return false
	}
	for _, x := range a.numbers {
		for _, y := range b.numbers {
			if closeNumbers(m.rows.Numbers[x.id], m.rows.Numbers[y.id]) {
				return true
			}
		}
	}
	return false
}

func share(a, b []tally) bool {
	for _, x := range a {
		for _, y := range b {
			if x.id == y.id {
				return true
			}
		}
	}
	return false
}

func key(kind uint64, parts ...uint64) uint64 {
	h := kind * 0x9e3779b97f4a7c15
	for _, p := range parts {
		h = mix(h ^ p + 0x9e3779b97f4a7c15)
	}
	return h
}

// mainKeys are the keys that every signature has.
func (m *model) mainKeys(i int32, b *blocks) {
	c := &m.sigs[i]
	for _, x := range m.spellings(c) {
		m.fullKeys(m.names.keys[x.id].full, i, b)
	}
	for _, n := range c.numbers {
		b.add(key(keyNumber, uint64(n.id)), i)
	}
}

// fullKeys are the keys of a whole name.
func (m *model) fullKeys(full, i int32, b *blocks) {
	b.add(key(keyFull, uint64(full)), i)
	for _, co := range m.sigs[i].courses {
		b.add(key(keyFullCourse, uint64(full), uint64(co.id)), i)
	}
}

// meantNames lists, by name, the names that it may be a mistyping of: with the
// given name, the family name or both put right. The whole name is -1 where
// nobody has it.
func (m *model) meantNames() map[int32][]nameKey {
	t := &m.names
	out := map[int32][]nameKey{}
	want := map[string]int32{}
	whole := func(k nameKey) string {
		return strings.ReplaceAll(t.given.text[k.given]+t.family.text[k.family], " ", "")
	}
	for id := range t.keys {
		k := &t.keys[id]
		gs, fs := t.given.meant[k.given], t.family.meant[k.family]
		if len(gs)+len(fs) == 0 {
			continue
		}
		gs, fs = append([]int32{k.given}, gs[:min(len(gs), mostMeant)]...), append([]int32{k.family}, fs[:min(len(fs), mostMeant)]...)
		for x, g := range gs {
			for y, f := range fs {
				if x+y == 0 {
					continue
				}
				n := nameKey{full: -1, given: g, family: f, tokens: tokenSum(t.given.text[g]) + tokenSum(t.family.text[f])}
				want[whole(n)] = -1
				out[int32(id)] = append(out[int32(id)], n)
			}
		}
	}
	for f, s := range t.full {
		if _, ok := want[s]; ok {
			want[s] = int32(f)
		}
	}
	for _, list := range out {
		for i := range list {
			list[i].full = want[whole(list[i])]
		}
	}
	return out
}

// mostMeant is how many names a mistyping is looked for under.
const mostMeant = 3

// spellings are the names by which a signature is looked for: a signature has
// one, a whole runner may have several.
func (m *model) spellings(c *cluster) []tally {
	if m.fixed == nil {
		return c.names[:1]
	}
	return c.names[:min(len(c.names), 8)]
}

// bothFixed says whether two signatures stand for whole runners.
func (m *model) bothFixed(i, j int32) bool { return m.fixed != nil && m.fixed[i] && m.fixed[j] }

// wideKeys find slips, nicknames, swapped, double and new names. Most are tied
// to a course, so that their blocks do not grow with the archive.
func (m *model) wideKeys(c *cluster, ks []uint64) []uint64 {
	for _, x := range m.spellings(c) {
		ks = m.wideKeysOf(m.names.keys[x.id], c, ks)
	}
	return ks
}

func (m *model) wideKeysOf(k nameKey, c *cluster, ks []uint64) []uint64 {
	t := &m.names
	g, s := t.given.text[k.given], t.family.text[k.family]
	gh, sh := hash(g), hash(s)
	ks = append(ks, key(keyTokens, k.tokens))
	initial := first(g, 1)
	ih := hash(initial)
	families := t.family.tokens[k.family]
	for _, co := range c.courses {
		at := uint64(co.id)
		if len(families) == 0 {
			ks = append(ks, key(keyCourseFamily, at, sh))
		}
		for _, w := range families {
			ks = append(ks, key(keyCourseFamily, at, hash(t.family.text[w])))
		}
		ks = append(ks,
			key(keyCourseGivenFirst, at, gh, hash(first(s, 1))),
			key(keyCourseGivenLast, at, gh, hash(last(s, 3))),
			key(keyCourseEnds, at, ih, hash(first(s, 1)), hash(last(s, 2))))
		if c.births > 0 && c.hi-c.lo < looseDays {
			// Two rows of overlapping buckets, so that near births share one.
			mid, width, kind := int64(c.lo+c.hi)/2+1<<20, int64(400), keyCourseGivenBirth
			if c.hi-c.lo >= tight {
				width, kind = 1500, keyCourseGivenDecade
			}
			ks = append(ks, key(kind, at, gh, uint64(mid/width)),
				key(kind, at, gh, uint64((mid+width/2)/width)+1<<32))
			if kind == keyCourseGivenBirth { // a narrow window is looked for among the wide ones, too
				ks = append(ks, key(keyCourseGivenDecade, at, gh, uint64(mid/1500)),
					key(keyCourseGivenDecade, at, gh, uint64((mid+750)/1500)+1<<32))
			}
		}
	}
	if len(families) == 0 {
		ks = append(ks, key(keyFamilyInitial, sh, ih))
		ks = m.formalInitials(ks, k.given, sh, initial)
	}
	for _, w := range families {
		wh := hash(t.family.text[w])
		ks = append(ks, key(keyFamilyInitial, wh, ih))
		ks = m.formalInitials(ks, k.given, wh, initial)
	}
	return append(ks, key(keyGivenFirst, gh, hash(first(s, 2))), key(keyGivenLast, gh, hash(last(s, 3))))
}

// formalInitials adds the initials of the names that a given name may be short
// for: Bill is looked for under W as well.
func (m *model) formalInitials(ks []uint64, given int32, family uint64, initial string) []uint64 {
	seen := initial
	for _, g := range m.names.given.groups[given] {
		if formal := nickLetters[g][:1]; !strings.Contains(seen, formal) {
			seen += formal
			ks = append(ks, key(keyFamilyInitial, family, hash(formal)))
		}
	}
	return ks
}

// nickLetters are the first letters of all names of each nickname line, that of
// the formal name first.
var nickLetters = func() []string {
	var out []string
	for l := range strings.SplitSeq(strings.TrimSpace(nicknames), "\n") {
		s := ""
		for _, w := range strings.Fields(l) {
			if !strings.Contains(s, w[:1]) {
				s += w[:1]
			}
		}
		out = append(out, s)
	}
	return out
}()

// tokenSum is the same for the same tokens in any order.
func tokenSum(s string) uint64 {
	sum := uint64(0)
	for w := range strings.SplitSeq(s, " ") {
		sum += hash(w)
	}
	return sum
}

func first(s string, n int) string {
	for i := range s {
		if n == 0 {
			return s[:i]
		}
		n--
	}
	return s
}

func last(s string, n int) string {
	i := len(s)
	for ; n > 0 && i > 0; n-- {
		_, w := utf8.DecodeLastRuneInString(s[:i])
		i -= w
	}
	return s[i:]
}

// mistyped looks, for each number seen once or twice, for the numbers one
// digit or one exchange of neighbours away, and ties both to the given name
// and to the family name.
func (m *model) mistyped(b *blocks) {
	texts := m.rows.Numbers
	var few []int32
	for i := range m.sigs {
		if c := &m.sigs[i]; c.n <= 2 && len(c.numbers) == 1 && len(c.names) > 0 {
			if n := len(texts[c.numbers[0].id]); n >= 3 && n <= 12 {
				few = append(few, int32(i))
			}
		}
	}
	if len(few) == 0 {
		return
	}
	begin, held := m.holders(len(texts))
	given, family := make([]int32, len(m.sigs)), make([]int32, len(m.sigs)) // close together in memory
	for i := range m.sigs {
		if names := m.sigs[i].names; len(names) > 0 {
			given[i], family[i] = m.names.keys[names[0].id].given, m.names.keys[names[0].id].family
		}
	}
	at := newNumberTable(len(texts)) // numbers by the sum of their letters
	for id, s := range texts {
		if len(s) >= 3 && len(s) <= 12 && begin[id] < begin[id+1] {
			n := sumOfNumber{sum: letterSum(s), id: int32(id)}
			for _, y := range held[begin[id]:begin[id+1]] {
				n.given, n.family = n.given|oneOf32(given[y]), n.family|oneOf32(family[y])
			}
			at.put(n)
		}
	}
	found := spread(m, len(few), func(lo, hi int) []uint64 {
		var out []uint64
		for _, i := range few[lo:hi] {
			no := m.sigs[i].numbers[0].id
			s := texts[no]
			sum := letterSum(s)
			try := func(other uint64) {
				n := at.get(other)
				if n == nil || n.given&oneOf32(given[i]) == 0 && n.family&oneOf32(family[i]) == 0 {
					return
				}
				id := n.id
				if id == no {
					return
				}
				for _, y := range held[begin[id]:begin[id+1]] {
					if (given[i] == given[y] || family[i] == family[y]) && closeNumbers(s, texts[id]) {
						out = append(out, uint64(i)<<32|uint64(uint32(y)))
					}
				}
			}
			for p := range len(s) {
				if s[p] < '0' || s[p] > '9' {
					continue
				}
				for d := byte('0'); d <= '9'; d++ {
					if d != s[p] {
						try(sum + (uint64(d)-uint64(s[p]))*letterPower[p])
					}
				}
				if p > 0 && s[p-1] != s[p] {
					try(sum + (uint64(s[p])-uint64(s[p-1]))*(letterPower[p-1]-letterPower[p]))
				}
			}
		}
		return out
	})
	for _, part := range found {
		for _, x := range part {
			k := key(keyMistyped, x>>32, uint64(uint32(x)))
			b.add(k, int32(x>>32))
			b.add(k, int32(uint32(x)))
		}
	}
}

// sumOfNumber is a number that somebody holds, by the sum of its letters, with one
// bit of 32 for the given and the family name of each holder.
type sumOfNumber struct {
	sum           uint64
	id            int32 // of the text, 0 an empty place
	given, family uint32
}

func oneOf32(id int32) uint32 { return 1 << (uint32(id) % 32) }

// numberTable finds numbers by their sums: a look-up touches one place in memory,
// and ten million lines make some ten million of them.
type numberTable struct {
	at   []sumOfNumber
	mask uint64
}

func newNumberTable(n int) *numberTable {
	size := uint64(16)
	for size < 2*uint64(n) {
		size *= 2
	}
	return &numberTable{make([]sumOfNumber, size), size - 1}
}

// put adds a number; id is not 0.
func (t *numberTable) put(n sumOfNumber) {
	k := mix(n.sum) & t.mask
	for t.at[k].id != 0 && t.at[k].sum != n.sum {
		k = (k + 1) & t.mask
	}
	t.at[k] = n
}

// get finds a number, nil where there is none of that sum.
func (t *numberTable) get(sum uint64) *sumOfNumber {
	for k := mix(sum) & t.mask; t.at[k].id != 0; k = (k + 1) & t.mask {
		if t.at[k].sum == sum {
			return &t.at[k]
		}
	}
	return nil
}

// letterPower are the weights of the places of letterSum.
var letterPower = func() (p [12]uint64) {
	p[0] = 1
	for i := 1; i < len(p); i++ {
		p[i] = p[i-1] * 0x9e3779b97f4a7c15
	}
	return p
}()

// letterSum is a hash of at most 12 letters that is changed by changing one of
// them without going through the others.
func letterSum(s string) (sum uint64) {
	for i := range len(s) {
		sum += uint64(s[i]) * letterPower[i]
	}
	return sum
}

// holders lists the signatures that hold each number: number n is held by
// held[begin[n]:begin[n+1]].
func (m *model) holders(numbers int) (begin, held []int32) {
	begin = make([]int32, numbers+1)
	each := func(do func(number, sig int32)) {
		for i := range m.sigs {
			if len(m.sigs[i].names) > 0 {
				for _, n := range m.sigs[i].numbers {
					do(n.id, int32(i))
				}
			}
		}
	}
	each(func(number, _ int32) { begin[number+1]++ })
	for n := range numbers {
		begin[n+1] += begin[n]
	}
	held = make([]int32, begin[numbers])
	next := append([]int32(nil), begin...)
	each(func(number, sig int32) {
		held[next[number]] = sig
		next[number]++
	})
	return begin, held
}

// closeNumbers says whether two number texts differ by one digit or by one
// exchange of neighbours.
func closeNumbers(a, b string) bool {
	return len(a) == len(b) && len(a) >= 3 && a != b && name.OneSlip(a, b)
}

// lostLetters finds the whole names that a name with lost letters may stand
// for, by what stands before its first and after its last lost letter.
func (m *model) lostLetters(b *blocks) {
	t := &m.names
	type shape struct{ head, tail int }
	ends := map[uint64][]int32{} // hash of head and tail -> full names with a gap
	shapes := map[shape]bool{}
	for f, s := range t.full {
		if p := strings.IndexByte(s, name.Lost); p >= 0 {
			q := strings.LastIndexByte(s, name.Lost) + 1
			if p+len(s)-q < 3 {
				continue
			}
			shapes[shape{p, len(s) - q}] = true
			h := hash2(s[:p], "\x00"+s[q:])
			ends[h] = append(ends[h], int32(f))
		}
	}
	if len(ends) == 0 {
		return
	}
	all := make([]shape, 0, len(shapes))
	for s := range shapes {
		all = append(all, s)
	}
	sort.Slice(all, func(i, j int) bool {
		if all[i].head != all[j].head {
			return all[i].head < all[j].head
		}
		return all[i].tail < all[j].tail
	})
	match := map[int32][]int32{} // full name -> the full names it may stand for
	for f, s := range t.full {
		for _, sh := range all {
			if gap := len(s) - sh.head - sh.tail; gap < 1 || gap > 12 {
				continue
			}
			for _, x := range ends[hash2(s[:sh.head], "\x00"+s[len(s)-sh.tail:])] {
				if x != int32(f) && name.EqualLost(t.full[x], s) {
					match[int32(f)] = append(match[int32(f)], x)
				}
			}
		}
	}
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 {
			continue
		}
		full := t.keys[c.names[0].id].full
		for _, x := range match[full] {
			b.add(key(keyFull, uint64(x)), int32(i))
			for _, co := range c.courses {
				b.add(key(keyFullCourse, uint64(x), uint64(co.id)), int32(i))
			}
		}
	}
}

// lostAtCourse finds, for names with lost letters, those at the same course that
// begin with the same letters, in either order: where much is lost, nothing else
// is left to look for.
func (m *model) lostAtCourse(b *blocks) {
	t := &m.names
	want := newFilter(1 << 10)
	any := false
	each := func(c *cluster, swapped bool, do func(h uint64)) {
		k := &t.keys[c.names[0].id]
		g, f := t.given.text[k.given], t.family.text[k.family]
		if g == "" || f == "" || g[0] == name.Lost || f[0] == name.Lost {
			return
		}
		if swapped {
			g, f = f, g
		}
		for _, co := range c.courses {
			do(key(keyLost, uint64(co.id), hash(first(g, 1)), hash(first(f, 1))))
		}
	}
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 || !t.keys[c.names[0].id].lost {
			continue
		}
		for _, swapped := range [...]bool{false, true} {
			each(c, swapped, func(h uint64) {
				any = true
				want.set(h)
				b.add(h, int32(i))
			})
		}
	}
	if !any {
		return
	}
	for i := range m.sigs {
		c := &m.sigs[i]
		if len(c.names) == 0 || t.keys[c.names[0].id].lost {
			continue
		}
		each(c, false, func(h uint64) {
			if want.has(h) {
				b.add(h, int32(i))
			}
		})
	}
}

// filter is a set of keys that may also say yes by mistake, one time in some
// hundred: enough to leave most keys of numbered signatures out.
type filter struct {
	bits []uint64
	mask uint64
}

func newFilter(n int) *filter {
	size := uint64(1 << 16)
	for size < uint64(n)*64 && size < 1<<31 {
		size <<= 1
	}
	return &filter{make([]uint64, size/64), size - 1}
}

// set may be called from several goroutines at a time.
func (f *filter) set(k uint64) { k &= f.mask; atomic.OrUint64(&f.bits[k/64], 1<<(k%64)) }

func (f *filter) has(k uint64) bool { k &= f.mask; return f.bits[k/64]>>(k%64)&1 == 1 }
