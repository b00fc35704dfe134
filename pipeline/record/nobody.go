package record

import (
	"hash/maphash"

	"lapwing/pipeline/record/name"
)

// nobody remembers for each name text whether it names nobody, several people or
// somebody in doubt, so that a name that stands on many rows is parsed once. It grows up
// to 2 M names (16 MB); further names push others out.
type nobody struct {
	seed  maphash.Seed
	slots []uint64 // hash with the verdict in the three lowest bits; 0 empty
	used  int
	rule  func(string) (unnamed, several, unsure bool)
}

const (
	nobodyStart = 1 << 10
	nobodyLimit = 1 << 21
)

func newNobody(rule func(string) (unnamed, several bool)) *nobody {
	k := &nobody{seed: maphash.MakeSeed(), slots: make([]uint64, nobodyStart)}
	if rule != nil {
		k.rule = func(text string) (unnamed, several, unsure bool) {
			unnamed, several = rule(text)
			return unnamed, several, false
		}
	} else {
		k.rule = func(text string) (unnamed, several, unsure bool) {
			n := name.Parse(text)
			return n.Unnamed, n.Several, n.Unsure
		}
	}
	return k
}

func (k *nobody) ask(text string) (unnamed, several, unsure bool) {
	h := maphash.String(k.seed, text)&^7 | 8 // never 0, the empty slot
	slot := k.slot(h)
	if *slot&^7 == h {
		return *slot&1 != 0, *slot&2 != 0, *slot&4 != 0
	}
	unnamed, several, unsure = k.rule(text)
	if unnamed {
		h |= 1
	}
	if several {
		h |= 2
	}
	if unsure {
		h |= 4
	}
	k.put(slot, h)
	if 2*k.used > len(k.slots) && len(k.slots) < nobodyLimit {
		old := k.slots
		k.slots, k.used = make([]uint64, 4*len(old)), 0
		for _, h := range old {
			if h != 0 {
				k.put(k.slot(h&^7), h)
			}
		}
	}
	return unnamed, several, unsure
}

// slot is where the hash stands, else the first free slot near its place,
// else its place, to be overwritten.
func (k *nobody) slot(h uint64) *uint64 {
	mask := uint64(len(k.slots) - 1)
	for i := range uint64(16) {
		if s := &k.slots[(h>>4+i)&mask]; *s == 0 || *s&^7 == h {
			return s
		}
	}
	return &k.slots[h>>4&mask]
}

func (k *nobody) put(slot *uint64, h uint64) {
	if *slot == 0 {
		k.used++
	}
	*slot = h
}
