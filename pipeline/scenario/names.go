package scenario

import (
	_ "embed"
	"math/rand/v2"
	"sort"
	"strings"
	"sync"
)

//go:embed names/given.txt
var givenText string

//go:embed names/surnames.txt
var surnameText string

//go:embed names/short.txt
var shortText string

// culture is a set of names that go together.
type culture struct {
	name     string
	share    float64 // of the people of a district
	given    map[byte]*pool
	surnames *pool
}

// pool draws from a list in which the first entries are the commonest.
type pool struct {
	words      []string
	ids        []uint16 // index of each word in the list of all given names or surnames
	cumulative []float64
}

// nameBook holds every list, read once.
type nameBook struct {
	cultures []culture
	upTo     []float64 // running total of the cultures' shares
	given    []string  // every given name once, in order of the file
	surnames []string
	short    map[string][]string // everyday forms of a given name
}

// shares of the cultures; what is left over is British.
var cultureShares = map[string]float64{
	"irish": .06, "punjabi": .02, "indian": .03, "muslim": .04, "polish": .03, "german": .01,
	"dutch": .01, "nordic": .015, "spanish": .015, "portuguese": .01, "italian": .01, "french": .01,
	"yoruba": .015, "ghanaian": .01, "vietnamese": .005, "chinese": .01, "turkish": .01,
	"ukrainian": .01, "hungarian": .005,
}

var book = sync.OnceValue(readNames)

func readNames() *nameBook {
	b := &nameBook{short: map[string][]string{}}
	at := map[string]int{}
	of := func(name string) *culture {
		i, ok := at[name]
		if !ok {
			i = len(b.cultures)
			at[name] = i
			b.cultures = append(b.cultures, culture{name: name, given: map[byte]*pool{}})
		}
		return &b.cultures[i]
	}
	givenID := newIndex(&b.given)
	for _, f := range textLines(givenText) {
		of(f[0]).given[f[1][0]] = newPool(f[2:], givenID, 15)
	}
	surnameID := newIndex(&b.surnames)
	var first []string
	british := []string{}
	for _, f := range textLines(surnameText) {
		words := f[1:]
		for i, w := range words { // particles are written with hyphens in the list: van-den-Berg
			if strings.HasPrefix(w, "van-") || strings.HasPrefix(w, "de-") {
				words[i] = strings.ReplaceAll(w, "-", " ")
			}
		}
		switch f[0] {
		case "british":
			british = words
		case "first":
			first = words
		case "last":
			of("british").surnames = newPool(append(british, compounds(first, words)...), surnameID, 60)
		default:
			of(f[0]).surnames = newPool(words, surnameID, 15)
		}
	}
	for _, f := range textLines(shortText) {
		b.short[f[0]] = f[1:]
	}
	rest := 1.0
	for i := range b.cultures {
		b.cultures[i].share = cultureShares[b.cultures[i].name]
		rest -= b.cultures[i].share
	}
	of("british").share = rest
	total := 0.0
	for i := range b.cultures {
		total += b.cultures[i].share
		b.upTo = append(b.upTo, total)
	}
	return b
}

// compounds joins every first half with every last half (Ash + worth), walking
// diagonally so that neighbours in the list share neither half.
func compounds(first, last []string) []string {
	out := make([]string, 0, len(first)*len(last))
	for shift := range last {
		for i, f := range first {
			l := last[(i*7+shift)%len(last)]
			if f[len(f)-1] == l[0] { // Barrshaw, Wallley: not how such names are spelt
				continue
			}
			out = append(out, f+l)
		}
	}
	return out
}

func textLines(text string) [][]string {
	var out [][]string
	for line := range strings.Lines(text) {
		if f := strings.Fields(line); len(f) > 0 && f[0] != "#" {
			out = append(out, f)
		}
	}
	return out
}

// newIndex numbers words in the order they are first met.
func newIndex(all *[]string) func(string) uint16 {
	seen := map[string]uint16{}
	return func(w string) uint16 {
		id, ok := seen[w]
		if !ok {
			id = uint16(len(*all))
			seen[w] = id
			*all = append(*all, w)
		}
		return id
	}
}

// newPool weights the k-th word by 1/(k+head): a few common names and a long
// tail, as in any register.
func newPool(words []string, id func(string) uint16, head float64) *pool {
	p := &pool{}
	seen := map[string]bool{}
	total := 0.0
	for _, w := range words {
		if seen[w] {
			continue
		}
		seen[w] = true
		total += 1 / (float64(len(p.words)) + head)
		p.words = append(p.words, w)
		p.ids = append(p.ids, id(w))
		p.cumulative = append(p.cumulative, total)
	}
	return p
}

// draw gives the number of a word, for a uniform number u in [0, 1).
func (p *pool) draw(u float64) uint16 { return p.ids[pick(p.cumulative, u)] }

// pick finds the first entry of a running total that is above u of its end.
func pick(cumulative []float64, u float64) int {
	x := u * cumulative[len(cumulative)-1]
	return min(sort.Search(len(cumulative), func(i int) bool { return cumulative[i] > x }), len(cumulative)-1)
}

// noSurname marks that there is no second part to a surname.
const noSurname = ^uint16(0)

// fullName is somebody's name by number in the name book; second is the later
// part of a double-barrelled surname, or noSurname.
type fullName struct{ given, surname, second uint16 }

// drawName makes up a name for a man or boy ('M') or a woman or girl ('W').
func (b *nameBook) drawName(r *rand.Rand, sex byte) fullName {
	c := &b.cultures[pick(b.upTo, r.Float64())]
	n := fullName{surname: c.surnames.draw(r.Float64()), second: noSurname}
	from := c
	if r.Float64() < .12 { // given names travel further than surnames
		from = &b.cultures[0]
	}
	n.given = from.given[sex].draw(r.Float64())
	if c.name == "british" && r.Float64() < .02 {
		n.second = c.surnames.draw(r.Float64())
	}
	return n
}

func (b *nameBook) givenOf(n fullName) string { return b.given[n.given] }

func (b *nameBook) surnameOf(n fullName) string {
	if n.second == noSurname {
		return b.surnames[n.surname]
	}
	return b.surnames[n.surname] + "-" + b.surnames[n.second]
}
