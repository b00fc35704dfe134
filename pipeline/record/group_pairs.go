package record

import (
	"strings"

	"lapwing/pipeline/text"
)

// pairs reads the sex of classes that differ in one letter only, at their beginning or end,
// where the two letters are for men and women: of TM and TF, MA and ŽA, "M yl" and "N yl"
// nothing else need be understood. Where one of the two is understood, the other is the same
// class of the other sex.
func (k *groupColumn) pairs() {
	at := map[string]int{}
	unread, lines := 0, 0
	for i := range k.entries {
		e := &k.entries[i]
		if f := string(fold(nil, e.text)); len(f) >= 2 && len(f) <= 24 && e.g.kind != special && (e.g.sex == noMark || e.g.sex.open()) {
			at[f] = i
			if lines += e.n; e.g.sex == noMark && !e.g.vMark {
				unread++
			}
		}
	}
	if unread == 0 {
		return
	}
	type pair struct{ man, woman int }
	var found []pair
	var marks [][2]sexMark
	for i := range k.entries {
		f := string(fold(nil, k.entries[i].text))
		if at[f] != i || f == "" {
			continue
		}
		for _, p := range text.SexPairs {
			letters := []rune(p)
			m, w := string(letters[0]), string(letters[1])
			for _, other := range [2]string{swapFront(f, m, w), swapBack(f, m, w)} {
				j, ok := at[other]
				if other == "" || !ok || j == i {
					continue
				}
				mark := [2]sexMark{sureM, sureW}
				if len(p) == 2 {
					mark = [2]sexMark{sexMark(p[0]), sexMark(p[1])}
				}
				found, marks = append(found, pair{i, j}), append(marks, mark)
			}
		}
	}
	for n, p := range found {
		man, woman := &k.entries[p.man].g, &k.entries[p.woman].g
		if man.sex != noMark && woman.sex != noMark || man.vMark || woman.vMark || 2*2*len(found) < unread {
			continue
		}
		switch {
		case man.kind == noGroup && woman.kind != noGroup:
			*man = *woman
		case woman.kind == noGroup && man.kind != noGroup:
			*woman = *man
		}
		man.sex, woman.sex = marks[n][0], marks[n][1]
	}
}

// swapFront and swapBack give the spelling with w in place of m, "" where m does not stand
// there.
func swapFront(s, m, w string) string {
	if rest, ok := strings.CutPrefix(s, m); ok && rest != "" {
		return w + rest
	}
	return ""
}

func swapBack(s, m, w string) string {
	if rest, ok := strings.CutSuffix(s, m); ok && rest != "" {
		return rest + w
	}
	return ""
}
