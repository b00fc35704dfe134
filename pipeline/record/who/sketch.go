package who

import (
	"math/bits"

	"lapwing/pipeline/unit"
)

// sketch is what most pairs can be ruled out by, side by side in memory: pairs are
// many, and the signatures' own records lie far apart.
type sketch struct {
	courses   uint64 // one bit of 64 a course
	text      uint64 // the number's letters, 0 where it has more than eight
	number    int32
	full      int32 // the whole name
	n, births int32
	lo, hi    unit.Day
	sex       uint8
	plain     bool // one number and one whole name: the fields above say it all
}

// sketch draws up the sketches of all signatures.
func (m *model) sketch() {
	m.sketches = make([]sketch, len(m.sigs))
	inPieces(m.o.Threads, len(m.sigs), func(_, lo, hi int) {
		for i := lo; i < hi; i++ {
			c := &m.sigs[i]
			x := &m.sketches[i]
			if len(c.numbers) != 1 || len(c.names) == 0 {
				continue
			}
			*x = sketch{number: c.numbers[0].id, full: m.names.keys[c.names[0].id].full, n: c.n, births: c.births,
				lo: c.lo, hi: c.hi, sex: c.mainSex(), plain: true}
			for _, y := range c.names[1:] {
				x.plain = x.plain && m.names.keys[y.id].full == x.full
			}
			for _, co := range c.courses {
				x.courses |= 1 << (uint32(co.id) % 64)
			}
			if s := m.rows.Numbers; len(s) > 0 {
				x.text = packed(s[x.number])
			}
		}
	})
}

// packed puts the letters of a short text side by side, the last one lowest; 0
// stands for a text that is too long or not of ASCII letters.
func packed(s string) (x uint64) {
	if len(s) > 8 {
		return 0
	}
	for i := range len(s) {
		if s[i] >= 0x80 {
			return 0
		}
		x = x<<8 | uint64(s[i])
	}
	return x
}

// closePacked is closeNumbers of two packed texts.
func closePacked(a, b uint64) bool {
	x := a ^ b
	if x == 0 || bits.LeadingZeros64(a)/8 != bits.LeadingZeros64(b)/8 || a < 1<<16 {
		return false
	}
	shift := bits.TrailingZeros64(x) / 8 * 8
	if x>>shift < 1<<8 {
		return true // one letter
	}
	return x>>shift < 1<<16 && a>>shift&0xff == b>>(shift+8)&0xff && b>>shift&0xff == a>>(shift+8)&0xff
}

// hopeless says that two signatures with a number each are not worth thinking
// about; it rules out nothing that thinkable does not.
func hopeless(a, b *sketch) bool {
	if !a.plain || !b.plain || a.number == b.number {
		return false
	}
	others := true
	if min(a.n, b.n) <= 2 {
		if a.text == 0 || b.text == 0 {
			return false
		}
		others = !closePacked(a.text, b.text)
	}
	births, sexes := int32(3), int32(3)
	if others {
		births = 1
		if a.full != b.full {
			sexes = 1
			if a.courses&b.courses == 0 {
				return true
			}
		}
	}
	if a.births >= births && b.births >= births && birthGap(a.lo, a.hi, b.lo, b.hi) > 365 {
		return true
	}
	return a.n >= sexes && b.n >= sexes && a.sex != 0 && b.sex != 0 && a.sex != b.sex && a.sex+b.sex == SexM+SexW
}
