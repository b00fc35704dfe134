package record

import "strings"

// placeSexes counts places that say the sex as well, M1, F1, M2: places among men
// and women on a list of both.
type placeSexes struct{ n, other int }

func (k *placeSexes) observe(s string) {
	if _, ok := sexOfPlace(s); ok {
		k.n++
	} else if len(s) > 0 && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' {
		k.other++
	}
}

// said says whether the column is of that kind.
func (k *placeSexes) said() bool { return k.n >= 4 && k.n >= 10*k.other }

// sexOfPlace reads M1 and F12.
func sexOfPlace(s string) (Sex, bool) {
	if len(s) < 2 || len(s) > 5 || !allDigits([]byte(s[1:])) {
		return NotGiven, false
	}
	switch s[0] | 0x20 {
	case 'm':
		return M, true
	case 'f', 'w':
		return W, true
	}
	return NotGiven, false
}

// bracketGroup is the text in brackets at the end of a name, where it may be a sex or
// an age group: "Jo Lee (M40)", "Ann Page [F]".
func bracketGroup(s string) string {
	if t := endBrackets(s); len(t) > 0 && len(t) <= 12 && (t[0] < '0' || t[0] > '9' || strings.ContainsAny(t, "-+")) {
		return t
	}
	return ""
}

// inBrackets counts what stands in brackets behind names: groups and sexes, or
// something else.
type inBrackets struct {
	groups, sexes, other int
	column               *groupColumn
	letters              letters
}

func (k *inBrackets) observe(s string, scratch *[]byte) {
	*scratch = fold((*scratch)[:0], s)
	b := *scratch
	if len(b) == 1 && (b[0] == 'm' || b[0] == 'f' || b[0] == 'w') {
		k.sexes++
		k.letters.n[b[0]]++
		return
	}
	if g := parseGroup(b); g.kind == noGroup || g.kind == plainNumber || g.kind == special {
		k.other++
		return
	}
	k.groups++
	k.column.observe(s, scratch)
}

// said says whether nearly all of them say a group or a sex.
func (k *inBrackets) said() bool {
	n := k.groups + k.sexes
	return n >= 4 && n >= 10*k.other
}
