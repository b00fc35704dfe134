package record

import (
	"fmt"
	"strings"
)

// sexColumn holds the distinct spellings of a sex column.
type sexColumn struct {
	marks   map[string]sexMark
	letters letters
	sure    [3]int // words for men, women, neither
	strange int
	unsaid  int
	ms      int // Ms
}

// isTitle says whether a cell is a title of address, beside which Ms is one too.
func isTitle(s string) bool {
	switch strings.ToLower(strings.TrimRight(s, ".")) {
	case "mr", "mrs", "miss", "ga", "gospa", "gospod", "paní", "pán", "pani", "pan", "slečna", "dña", "sra", "mme", "mlle":
		return true
	}
	return false
}

func (k *sexColumn) mark(s string, scratch *[]byte) sexMark {
	if len(s) == 1 {
		c := s[0]
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if m := sexMark(c); m.open() && c != 'x' {
			return m
		}
	}
	if m, ok := k.marks[s]; ok {
		return m
	}
	*scratch = fold((*scratch)[:0], s)
	m := parseSex(*scratch)
	switch {
	case strings.EqualFold(s, "nő"): // its folded form is a word of other meaning elsewhere
		m = sureW
	case strings.HasPrefix(s, "♂"):
		m = sureM
	case strings.HasPrefix(s, "♀"):
		m = sureW
	}
	if len(k.marks) < vocabularyLimit {
		k.marks[strings.Clone(s)] = m
	}
	return m
}

func (k *sexColumn) observe(s string, scratch *[]byte) {
	switch m := k.mark(s, scratch); {
	case m.open():
		k.letters.n[m]++
	case m == msMark:
		k.ms++
	case m == sureM:
		k.sure[0]++
		k.letters.titles = k.letters.titles || isTitle(s)
	case m == sureW:
		k.sure[1]++
		k.letters.titles = k.letters.titles || isTitle(s)
		k.letters.dona = k.letters.dona || strings.EqualFold(strings.TrimRight(s, "."), "dña")
	case m == sureX:
		k.sure[2]++
	case m == strange:
		k.strange++
	default:
		k.unsaid++
	}
}

func (k *sexColumn) describe() (means, why string) {
	var parts []string
	if d := k.letters.describe(); d != "" {
		parts = append(parts, d)
	}
	for i, word := range []string{"men", "women", "neither (X)"} {
		if k.sure[i] > 0 {
			parts = append(parts, fmt.Sprintf("%d in words for %s", k.sure[i], word))
		}
	}
	if k.ms > 0 {
		parts = append(parts, fmt.Sprintf("%d MS (%s)", k.ms, map[bool]string{true: "women, as it stands beside Mr", false: "men, senior"}[k.letters.titles]))
	}
	if k.unsaid > 0 {
		parts = append(parts, fmt.Sprintf("%d not given", k.unsaid))
	}
	if k.strange > 0 {
		parts = append(parts, fmt.Sprintf("%d not understood", k.strange))
	}
	return "sex: " + strings.Join(parts, ", "), k.letters.why
}
