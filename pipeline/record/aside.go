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

// sexOfPrize is the sex that a remark says by counting those of one, "1st lady", "2. Frau", "first woman", "3ème
// femme", "winner (men)", "1st M", "2F"; NotGiven for all else, and nothing is allocated then unless it is of two short words.
func sexOfPrize(s string) Sex {
	if n := len(s); n >= 2 && n <= 3 && s[0] >= '1' && s[0] <= '9' && allDigits([]byte(s[:n-1])) && (s[n-1] == 'M' || s[n-1] == 'F') {
		sex, _ := sexOfPlace(s[n-1:] + s[:n-1])
		return sex // 1F
	}
	at := strings.IndexByte(s, ' ')
	if at < 2 || at > 8 || len(s) > 24 || strings.IndexByte(s[at+1:], ' ') >= 0 {
		return NotGiven
	}
	first := string(fold(nil, s[:at]))
	behind := strings.TrimLeft(first, "0123456789")
	if len(behind) == len(first) && !prizes[first] || len(behind) < len(first) && (behind == "" || len(behind) > 3) {
		return NotGiven // "5 men" are five
	}
	switch of := string(fold(nil, strings.Trim(s[at+1:], "()"))); {
	case sexWordMarks[of] == sureM, of == "m":
		return M
	case sexWordMarks[of] == sureW, of == "f", of == "w", of == "l":
		return W
	}
	return NotGiven
}

// placeLetters reads places with a letter behind them that says the sex, "1M", "2W", "3M", where the
// numbers count all runners on.
type placeLetters struct {
	n, other, last, rising int
	letters                letters
	on                     bool
}

// letterBehind parts "12 M" into the place and its letter, folded.
func letterBehind(s string) (place int, letter byte, ok bool) {
	n := len(s) - 1
	if n < 1 || n > 6 || s[0] < '0' || s[0] > '9' {
		return 0, 0, false
	}
	letter = s[n] | 0x20
	digits := strings.TrimRight(s[:n], " .")
	if letter < 'a' || letter > 'z' || !allDigits([]byte(digits)) {
		return 0, 0, false
	}
	return atoi([]byte(digits)), letter, true
}

func (k *placeLetters) observe(s string) {
	place, letter, ok := letterBehind(s)
	if !ok {
		k.other++
		return
	}
	k.n++
	k.letters.n[letter]++
	if place > k.last {
		k.rising++
	}
	k.last = place
}

// settle takes the letters for sexes where there are two of them, both sexes.
func (k *placeLetters) settle(heading string, answers map[string]string) {
	if k.n < 4 || k.n < 10*k.other || 10*k.rising < 9*k.n {
		return
	}
	k.letters.settle(heading, answers)
	men, women, others := false, false, false
	for ch, n := range k.letters.n {
		if n > 0 {
			men, women, others = men || k.letters.is[ch] == M, women || k.letters.is[ch] == W, others || k.letters.is[ch] != M && k.letters.is[ch] != W
		}
	}
	k.on = men && women && !others
}

// bracketGroup is the text in brackets at the end of a name, where it may be a sex or
// an age group: "Jo Lee (M40)", "Ann Page [F]".
func bracketGroup(s string) string {
	if t := endBrackets(s); len(t) > 0 && len(t) <= 12 && (t[0] < '0' || t[0] > '9' || strings.ContainsAny(t, "-+")) {
		return t
	}
	return ""
}

// bareGroup is where a sex with an age, or an age group, begins that stands behind a name
// without brackets, "Jo Lee M40", "Ann Page - F, 63", "Cy Dee MSen", and the text; 0 where there is none.
// figure says that it has a number, or is written as no name is.
func bareGroup(s string) (at int, tail string, figure bool) {
	const between = " ,;/-"
	end := len(s)
	i := strings.LastIndexAny(s, between) + 1
	if tail = s[i:]; i > 0 && seniorGroup(tail) {
		return len(strings.TrimRight(s[:i], between)), tail, true
	}
	i = end
	for i > 0 && end-i < 3 && s[i-1] >= '0' && s[i-1] <= '9' {
		i--
	}
	figure = i < end
	if figure {
		i = len(strings.TrimRight(s[:i], between))
	}
	letters := i
	for i > 0 && letters-i < 4 && s[i-1] >= 'A' && s[i-1] <= 'Z' {
		i--
	}
	if n := letters - i; n == 0 || n == 1 && !figure || i == 0 || strings.IndexByte(between, s[i-1]) < 0 {
		return 0, "", false
	}
	return len(strings.TrimRight(s[:i], between)), s[i:], figure
}

// seniorGroup says whether a text is a group without an age behind the letter of a sex: MSen, FJun.
func seniorGroup(s string) bool {
	return len(s) > 2 && strings.IndexByte("MFW", s[0]) >= 0 && seniorWords[s[1:]]
}

var seniorWords = wordSet("Sen|Snr|Open|Jun|Jnr|Vet|Mas")

// bareGroups counts groups behind names without brackets.
type bareGroups struct {
	inBrackets
	names, figures int
	on             bool // nearly every name has one
}

func (k *bareGroups) observe(s string, scratch *[]byte) {
	if s == "" {
		return
	}
	k.names++
	if at, tail, figure := bareGroup(s); at > 0 {
		if figure {
			k.figures++
		}
		k.inBrackets.observe(tail, scratch)
	}
}

// settle takes the groups behind names for such where nearly every name has one, there or in brackets.
func (k *bareGroups) settle(beside *inBrackets) {
	n := k.groups + k.sexes
	k.on = n >= 4 && n*10 >= 9*k.names && 2*k.figures >= n
	if others := beside.groups; beside.said() && n > 0 && k.figures == n {
		k.on = (n+others)*10 >= 9*k.names
	}
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
