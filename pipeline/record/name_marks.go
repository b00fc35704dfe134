package record

import "strings"

// nameMarks counts names behind which a sex, an age group, an age or a number stands behind a
// mark that is no bracket and parts nothing else in names: "Jo Lee - F", "Jo Lee / 42", "Jo
// Lee | W40". Where most names of a column are such, they are read as if it stood in round
// brackets. A comma has the given name behind it as a rule, "Lee, M": before a letter for a sex
// there have to be two words.
type nameMarks struct {
	names   int
	found   [len(factMarks)]int
	settled bool
	on      string
}

var factMarks = [...]string{" - ", " – ", " — ", " / ", " | ", "; ", ", "}

func (k *nameMarks) observe(s string) {
	if s == "" {
		return
	}
	k.names++
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
}

// plain gives a name with the fact behind it in round brackets; what stands in braces or angles
// behind a single name as well.
func (k *nameMarks) plain(s string) string {
	n := len(s)
	if n < 5 {
		return s
	}
	switch s[n-1] {
	case '}', '>':
		if at := strings.LastIndexByte(s, s[n-1]-2); at > 2 { // { is two before }, < before >
			return s[:at] + "(" + s[at+1:n-1] + ")"
		}
		return s
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
