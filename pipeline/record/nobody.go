package record

import (
	"hash/maphash"

	"lapwing/pipeline/record/name"
)

// nobody remembers for each name text whether it names nobody or several
// people, so that a name that stands on many rows is parsed once. It is a
// table of one entry per slot that grows up to 2 M slots (16 MB).
type nobody struct {
	seed  maphash.Seed
	slots []uint64 // hash with the verdict in the two lowest bits; 0 empty
	used  int
	rule  func(string) (unnamed, several bool)
}

const (
	nobodyStart = 1 << 10
	nobodyLimit = 1 << 21
)

func newNobody(rule func(string) (unnamed, several bool)) *nobody {
	if rule == nil {
		rule = func(text string) (bool, bool) {
			n := name.Parse(text)
			return n.Unnamed, n.Several
		}
	}
	return &nobody{seed: maphash.MakeSeed(), slots: make([]uint64, nobodyStart), rule: rule}
}

func (k *nobody) ask(text string) (unnamed, several bool) {
	h := maphash.String(k.seed, text) | 4
	slot := &k.slots[h>>3&uint64(len(k.slots)-1)]
	if *slot&^3 == h&^3 {
		return *slot&1 != 0, *slot&2 != 0
	}
	unnamed, several = k.rule(text)
	h &^= 3
	if unnamed {
		h |= 1
	}
	if several {
		h |= 2
	}
	if *slot == 0 {
		k.used++
	}
	*slot = h
	if 2*k.used > len(k.slots) && len(k.slots) < nobodyLimit {
		k.grow()
	}
	return unnamed, several
}

func (k *nobody) grow() {
	old := k.slots
	k.slots, k.used = make([]uint64, 4*len(old)), 0
	for _, h := range old {
		if h != 0 {
			slot := &k.slots[h>>3&uint64(len(k.slots)-1)]
			if *slot == 0 {
				k.used++
			}
			*slot = h
		}
	}
}
