package record

import (
	"bytes"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// nameTails reads what stands behind names, in brackets or behind a comma, where it is a sex in
// whatever letter, an age or a year of birth with words around it, or a sex and an age: "(Ž)",
// "(F, 20)", "(63 ans)", ", 63 let", "(nacida en 1961)", "'82". Numbers alone, groups and the
// usual letters alone are nameAges' and inBrackets'.
type nameTails struct {
	names  int
	sexes  sexColumn
	sexed  int            // tails with a sex
	pairs  int            // of these, with a number
	fives  int            // of these, with a number that ends in 0 or 5
	bare   map[string]int // words around numbers below 100, which say nothing by themselves
	dates  int            // days of birth
	saySex bool
	born   bool // the days behind the names are days of birth
	ages   bool // a number beside a sex is an age
	column string
}

// tailOf is where the tail of a name begins, and the tail without its brackets or comma; 0
// where there is none that may be a sex, an age or a year.
func tailOf(s string) (at int, tail string) {
	n := len(s)
	if n < 5 {
		return 0, ""
	}
	switch c := s[n-1]; {
	case c == ')' || c == ']':
		if at = strings.LastIndexAny(s[:n-1], "(["); at > 0 {
			tail = s[at+1 : n-1]
		}
	default:
		if at = strings.LastIndexByte(s, ','); at > 0 && hasDigit(s[at:]) {
			tail = s[at+1:]
		} else if i := strings.LastIndexByte(s, ' '); i > 0 && n-i <= 7 && c >= '0' && c <= '9' && strings.ContainsAny(s[i:min(i+4, n)], "'’") {
			at, tail = i, s[i+1:] // '82
		} else {
			return 0, ""
		}
	}
	if tail = trim(tail); tail == "" || len(tail) > 40 {
		return 0, ""
	}
	return at, tail
}

// sexAndAge parts a tail into its sex and what has a number, "" for what is not there; ok is
// false where there is something else.
func sexAndAge(tail string) (sex, number string, ok bool) {
	a, b, two := tail, "", false
	if i := strings.IndexAny(tail, ",;/"); i > 0 {
		a, b, two = trim(tail[:i]), trim(tail[i+1:]), true
	} else if i := strings.IndexByte(tail, ' '); i == 1 && !hasDigit(tail[:1]) && hasDigit(tail[2:]) {
		a, b, two = tail[:1], tail[2:], true // m 45
	}
	if two && (a == "" || b == "" || strings.ContainsAny(b, ",;/") || hasDigit(a) == hasDigit(b)) {
		return "", "", false
	}
	if hasDigit(a) {
		a, b = b, a
	}
	if hasDigit(a) {
		return "", "", false
	}
	return a, b, true
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// numberOfTail is a number of a tail: an age, or a year of birth. sure says that the words
// around it say so; else words are these.
func numberOfTail(b []byte) (n int, year, sure bool, words string) {
	if allDigits(b) && len(b) <= 4 {
		n = atoi(b)
		return n, n >= 1900 && n < 2100, false, ""
	}
	before, behind, n, ok := splitAffix(b)
	if !ok {
		return -1, false, false, ""
	}
	if age, ok := ageWithUnit(b); ok && age >= youngestAge && age <= oldestAge {
		return age, false, len(bytes.Trim(behind, ". ")) != 1, string(behind)
	}
	words = string(before) + "#" + string(behind)
	digits := len(bytes.TrimFunc(b, func(r rune) bool { return r < '0' || r > '9' }))
	born := string(before) == "'" || string(before) == "*" || bornBefore(string(before)) || bornBehind[strings.Trim(string(behind), ". ")]
	switch {
	case n >= 1900 && n < 2100:
		return n, true, born, words
	case digits == 2 && born:
		return n, true, len(before) > 1 || len(behind) > 1, words
	}
	return n, false, false, words
}

// bornBehind are words behind a year of birth.
var bornBehind = wordSet("г.р|гр|р.н|рн|г. р|born")

// bornBefore says whether words in front of a number say that it is a year of birth.
func bornBefore(s string) bool {
	for w := range strings.FieldsSeq(s) {
		if bornWords[strings.Trim(w, ".:")] {
			return true
		}
	}
	return false
}

var bornWords = wordSet(text.BornWords)

// observe counts what a name has behind it.
func (k *nameTails) observe(s string, scratch *[]byte) {
	if s == "" {
		return
	}
	k.names++
	at, tail := tailOf(s)
	if at == 0 {
		return
	}
	if strings.Count(tail, ".")+strings.Count(tail, "/")+strings.Count(tail, "-") >= 2 {
		*scratch = fold((*scratch)[:0], tail)
		if d, ok := lexDate(*scratch); ok && (d.order == yearFirst && d.a < 2020 || d.c > 31 && d.c < 2020) {
			k.dates++
			return
		}
	}
	sex, number, ok := sexAndAge(tail)
	if !ok || sex != "" && strings.IndexByte(sex, ' ') > 0 {
		return
	}
	if sex != "" {
		if m := k.sexes.mark(sex, scratch); m == strange || m == noMark || m == unsaid {
			return
		}
		k.sexes.observe(sex, scratch)
		k.sexed++
	}
	if number == "" {
		return
	}
	*scratch = fold((*scratch)[:0], number)
	n, year, sure, words := numberOfTail(*scratch)
	switch {
	case sex != "" && n >= youngestAge && n <= oldestAge && !year:
		k.pairs++
		if n%5 == 0 {
			k.fives++
		}
	case sex == "" && tail[0] >= 'A' && figureGroup(tail) && parseGroup(*scratch).kind != noGroup:
		// (U18) on all lines is a group, and inBrackets'
	case sex == "" && !sure && words != "" && (year || n >= youngestAge && n <= oldestAge):
		if k.bare == nil {
			k.bare = map[string]int{}
		}
		if len(k.bare) < affixLimit || k.bare[words] > 0 {
			k.bare[words]++
		}
	}
}

// settle takes letters for sexes where nearly every name has one and both sexes are there,
// numbers beside them for ages where most lie between the fives, where no group begins, and
// what words nearly all names have around a number for those of an age.
func (k *nameTails) settle(heading string, answers map[string]string) {
	k.born = k.dates >= 3 && 10*k.dates >= 7*k.names
	k.sexes.letters.settle(heading, answers)
	seen := [2]bool{k.sexes.sure[0] > 0, k.sexes.sure[1] > 0}
	for ch := byte('0'); ch <= 'z'; ch++ {
		if k.sexes.letters.n[ch] == 0 {
			continue
		}
		switch k.sexes.letters.is[ch] {
		case M:
			seen[0] = true
		case W:
			seen[1] = true
		default:
			return
		}
	}
	k.saySex = k.sexed >= 2 && 10*k.sexed >= 7*k.names && seen[0] && seen[1]
	k.ages = k.saySex && k.pairs > 0 && (2*k.fives < k.pairs || k.pairs < 3)
	for words, n := range k.bare {
		if n >= 4 && 10*n >= 7*k.names {
			k.column = words
		}
	}
}

// read is the sex, the age and the year of birth that the tail of a name says, -1 for none.
func (k *nameTails) read(s string, day unit.Day, scratch *[]byte) (at int, sex Sex, years, born int) {
	at, tail := tailOf(s)
	none := func() (int, Sex, int, int) { return 0, NotGiven, -1, -1 }
	if at == 0 {
		return none()
	}
	a, number, ok := sexAndAge(tail)
	if !ok || a != "" && !k.saySex {
		return none()
	}
	if a != "" {
		if sex = k.sexes.letters.sex(k.sexes.mark(a, scratch)); sex == NotGiven {
			return none()
		}
	}
	years, born = -1, -1
	if number == "" {
		return at, sex, years, born
	}
	*scratch = fold((*scratch)[:0], number)
	n, year, sure, words := numberOfTail(*scratch)
	switch {
	case sex != NotGiven && !k.ages, sex == NotGiven && !sure && (words == "" || words != k.column):
		return none()
	case year && n < 100:
		born = fullYear(n, day)
	case year:
		born = n
	case n >= youngestAge && n <= oldestAge:
		years = n
	default:
		return none()
	}
	return at, sex, years, born
}

// readTail reads the sex and the age behind a name.
func (r *Reader) readTail(cells []string, day unit.Day, out *Line, meet func(int, age.Window, age.Basis, string)) {
	if r.tails.born {
		if at, tail := tailOf(r.nameCell(cells)); at > 0 && hasDigit(tail) {
			w, _ := r.birthDate(tail, day)
			meet(r.c.Name, w, age.Born, "")
		}
		return
	}
	at, sex, years, born := r.tails.read(r.nameCell(cells), day, &r.scratch)
	switch {
	case at == 0:
		return
	case born > 0:
		meet(r.c.Name, age.OfYear(born), age.Born, "")
	case years > 0 && years < len(r.ageWindow):
		meet(r.c.Name, r.windowOf(years, r.ageOn(day)), r.o.AgeBasis, "")
	}
	if r.c.Sex < 0 && out.Sex == NotGiven {
		out.Sex = sex
	}
}
