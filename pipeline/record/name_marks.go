package record

import "strings"

// nameMarks counts names behind which a sex, an age group, an age or a number stands behind a
// mark that is no bracket and parts nothing else in names: "Jo Lee - F", "Jo Lee / 42", "Jo
// Lee | W40". Where most names of a column are such, they are read as if it stood in round
// brackets, as is a letter for a sex that nearly all have without any mark, "Jo Lee F", "F Jo Lee". A comma has the given name behind it as a rule, "Lee, M": before a letter for a sex
// there have to be two words.
type nameMarks struct {
	names   int
	found   [len(factMarks)]int
	bare    [2]sides // letters for sexes before, and behind, names without a mark
	settled bool
	on      string
	letter  int // 1 before, 2 behind
}

// sides counts letters for men and for women.
type sides struct{ men, women int }

func (k *sides) observe(letter byte) {
	if letter == 'M' {
		k.men++
	} else {
		k.women++
	}
}

// bareLetter is a letter for a sex before (1) or behind (2) two words or more, "F Jo Lee", "Jo Lee F";
// 0 where there is none.
func bareLetter(s string) (letter byte, side int) {
	n := len(s)
	if n < 6 || strings.Count(s, " ") < 2 || strings.IndexByte(s, ',') >= 0 {
		return 0, 0
	}
	switch {
	case s[1] == ' ' && (s[0] == 'M' || s[0] == 'F' || s[0] == 'W'):
		return s[0], 1
	case s[n-2] == ' ' && (s[n-1] == 'M' || s[n-1] == 'F' || s[n-1] == 'W'):
		return s[n-1], 2
	}
	return 0, 0
}

var factMarks = [...]string{" - ", " – ", " — ", " / ", " | ", "; ", ", "}

func (k *nameMarks) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	if letter, side := bareLetter(s); side > 0 {
		k.bare[side-1].observe(letter)
	}
	for i, mark := range factMarks {
		if at := factBehind(s, mark); at > 0 {
			k.found[i]++
		}
	}
}

func (k *nameMarks) settle() {
	k.settled = true
	for i, n := range k.found {
		if n >= 4 && 10*n >= 7*k.names {
			k.on = factMarks[i]
		}
	}
	for i, b := range k.bare {
		if n := b.men + b.women; n >= 4 && b.men > 0 && b.women > 0 && 10*n >= 8*k.names {
			k.letter = i + 1
		}
	}
}

// plain gives a name with the fact behind it in round brackets; what stands in braces or angles
// behind a single name as well.
func (k *nameMarks) plain(s string) string {
	n := len(s)
	if n < 5 {
		return s
	}
	if before, letter := signBeside(s); letter != "" {
		return before + " (" + letter + ")"
	}
	if at := strings.Index(s, ", "); at > 0 && strings.IndexByte(s[at+2:], ' ') > 0 {
		if w, rest := titleWord(s[at+2:]); menTitles[w] || womenTitles[w] || letterTitles[w] && s[at+3] == '.' {
			return s[at+2:at+2+rest] + s[:at+2] + s[at+2+rest:] // "LEE, Mr Jo"
		}
	}
	switch s[n-1] {
	case '}', '>':
		if at := strings.LastIndexByte(s, s[n-1]-2); at > 2 { // { is two before }, < before >
			return s[:at] + "(" + s[at+1:n-1] + ")"
		}
		return s
	}
	if k.letter > 0 {
		switch letter, side := bareLetter(s); {
		case side != k.letter:
		case side == 1:
			return trim(s[1:]) + " (" + string(rune(letter)) + ")"
		default:
			return trim(s[:n-1]) + " (" + string(rune(letter)) + ")"
		}
	}
	if n > 7 && s[n-2] == ' ' { // a letter behind a spaced dash is no part of a name
		for _, dash := range factMarks[:3] {
			if at := factBehind(s, dash); at > 0 {
				return trim(s[:at]) + " (" + s[n-1:] + ")"
			}
		}
	}
	if k.settled && k.on == "" {
		return s
	}
	for _, mark := range factMarks {
		if k.settled && mark != k.on {
			continue
		}
		if at := factBehind(s, mark); at > 0 {
			fact := trim(s[at+len(mark):])
			if fact != strings.ToLower(fact) && hasDigit(fact) {
				return trim(s[:at]) + " " + fact // W40, as bareGroups reads it
			}
			return trim(s[:at]) + " (" + fact + ")"
		}
	}
	return s
}

// signBeside parts a name from a sign for a sex (U+2642, U+2640) before or behind it, or from a letter for one in
// brackets before it: "Jo Lee ♀", "(F) Jo Lee". letter is "" where there is none.
func signBeside(s string) (name, letter string) {
	for i, letter := range [...]string{"M", "F"} {
		sign := [...]string{"♂", "♀"}[i]
		if before, ok := strings.CutSuffix(s, sign); ok {
			return strings.TrimRight(before, " ("), letter
		}
		if before, ok := strings.CutSuffix(s, sign+")"); ok {
			return strings.TrimRight(before, " ("), letter
		}
		if behind, ok := strings.CutPrefix(s, sign); ok {
			return trim(behind), letter
		}
	}
	if (s[0] == '(' || s[0] == '[') && (s[2] == ')' || s[2] == ']') && strings.IndexByte("MFWLmfwl", s[1]) >= 0 && len(s) > 6 {
		return trim(s[3:]), s[1:2]
	}
	return s, ""
}

// factBehind is where a mark stands in a name with such a fact behind it; 0 for none. Behind a
// comma that is a sex alone: numbers and groups behind commas are others' to read.
func factBehind(s, mark string) int {
	at := strings.LastIndex(s, mark)
	if at < 3 || len(s)-at > len(mark)+8 || strings.Contains(s[:at], mark) {
		return 0
	}
	fact := trim(s[at+len(mark):])
	before := trim(s[:at])
	if strings.IndexByte(before, ' ') < 0 || hasDigit(before) {
		return 0
	}
	if len(fact) == 1 {
		if strings.IndexByte("MFWmfw", fact[0]) < 0 {
			return 0
		}
		return at
	}
	if mark == ", " || len(fact) == 0 || !hasDigit(fact) {
		return 0
	}
	digits := strings.TrimRight(fact, "0123456789")
	if letters := len(digits); letters > 3 || len(fact)-letters > 4 || letters == len(fact) {
		return 0
	}
	return at
}
