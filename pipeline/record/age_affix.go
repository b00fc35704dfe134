package record

import (
	"bytes"
	"slices"
	"strings"
)

// affix is what stands around the only number of the cells of an age or year column:
// 45 v., *1984, 1984 г.р., Jg. 84, 34歳.
type affix struct {
	before, behind string
	n              int   // cells
	years          int   // of them from 1900 on
	fives          int   // below 100 that end in 0 or 5
	seen           []int // numbers below 128
	taken          bool  // it says nothing, so that the number stands for itself
}

// affixLimit bounds the forms that are looked at.
const affixLimit = 12

// splitAffix takes a folded cell apart into its only number, of one to four digits, and
// what stands around it.
func splitAffix(b []byte) (before, behind []byte, n int, ok bool) {
	i := bytes.IndexAny(b, "0123456789")
	if i < 0 || len(b) > 40 {
		return nil, nil, 0, false
	}
	j := i
	for j < len(b) && b[j] >= '0' && b[j] <= '9' {
		j++
	}
	if j-i > 4 || bytes.ContainsAny(b[j:], "0123456789") || j-i == len(b) {
		return nil, nil, 0, false
	}
	return bytes.TrimSpace(b[:i]), bytes.TrimSpace(b[j:]), atoi(b[i:j]), true
}

// observeAffix counts a cell of text.
func (k *ageColumn) observeAffix(b []byte) {
	before, behind, n, ok := splitAffix(b)
	if !ok {
		return
	}
	i := slices.IndexFunc(k.affixes, func(a affix) bool { return a.before == string(before) && a.behind == string(behind) })
	if i < 0 {
		if len(k.affixes) == affixLimit {
			return
		}
		i = len(k.affixes)
		k.affixes = append(k.affixes, affix{before: string(before), behind: string(behind)})
	}
	a := &k.affixes[i]
	a.n++
	switch {
	case n >= 1900 && n < 2100:
		a.years++
	case n < len(k.seen):
		a.seen = append(a.seen, n)
		if n%5 == 0 {
			a.fives++
		}
	}
}

// settleAffixes decides which affixes say nothing. Behind and before years of four digits
// none does. Behind ages it says no group where most numbers lie between the fives, where no
// group begins, and no sex where no other stands beside it; before a number of two digits
// there may be signs only.
func (k *ageColumn) settleAffixes() {
	sexes, cells, fives, short := 0, 0, 0, 0
	for _, a := range k.affixes {
		cells += a.n
		if m := parseSex([]byte(strings.TrimSpace(a.before + a.behind))); m != strange && m != noMark && m != unsaid {
			sexes++
		}
		if a.years > 0 {
			continue
		}
		short += a.n
		fives += a.fives
	}
	for i := range k.affixes {
		a := &k.affixes[i]
		switch {
		case sexes > 1 || sexes == 1 && len(k.affixes) > 1: // 1985 M, 38/F
		case 10*a.years >= 9*a.n:
			a.taken = a.n >= 2 || cells > 4
		case short < 8 || a.years > 0 || hasLetters(a.before):
		case k.yearHeading, 2*fives < short && a.before == "" && a.behind != "+":
			a.taken = true
		}
		if !a.taken {
			continue
		}
		k.texts -= min(a.n, k.texts)
		k.years += a.years
		for _, n := range a.seen {
			k.numbers++
			k.seen[n]++
			if n%5 == 0 {
				k.fives++
			}
		}
	}
}

// number gives the number of a folded cell whose affix says nothing.
func (k *ageColumn) number(b []byte) (int, bool) {
	before, behind, n, ok := splitAffix(b)
	if !ok {
		return 0, false
	}
	for i := range k.affixes {
		if a := &k.affixes[i]; a.taken && a.before == string(before) && a.behind == string(behind) {
			return n, true
		}
	}
	return 0, false
}

func hasLetters(s string) bool {
	for _, r := range s {
		if r >= 'a' && r <= 'z' || r > 0x7f {
			return true
		}
	}
	return false
}

// ratherAges says whether the numbers of two digits under a word for years are ages: read
// as years of birth half of the runners would be over sixty, and read as ages they are
// not. (Serbian година and its sisters are both.)
func (k *ageColumn) ratherAges() bool {
	var ages, born []int
	for n, times := range k.seen {
		for range min(times, 1000) {
			ages = append(ages, n)
			if k.on > 0 {
				y, _, _ := k.on.Date()
				born = append(born, y-fullYear(n, k.on))
			}
		}
	}
	if len(born) < 8 {
		return false
	}
	slices.Sort(ages)
	slices.Sort(born)
	return born[len(born)/2] > 60 && ages[len(ages)/2] < 60 && ages[len(ages)/2] >= youngestAge
}
