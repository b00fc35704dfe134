package record

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// packedNames counts names with two facts behind them in brackets or commas, a number or an age
// group and words: "Jo Lee (1986, Mill AC)", "Jo Lee (Mill AC / 39)", "Jo Lee, M40, Mill AC", or in
// a bracket each, "Jo Lee (F, 39) (Mill AC)". Where most names of a column are such, the words are
// the club.
type packedNames struct {
	names, packed int
	settled, on   bool
}

func (k *packedNames) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	if _, _, ok := unpack(s); ok {
		k.packed++
	}
}

func (k *packedNames) settle() {
	k.settled, k.on = true, k.packed >= 4 && 2*k.packed >= k.names
}

// nameCell is the cell of the name; where the column has two facts in brackets, with the number alone.
func (r *Reader) nameCell(cells []string) string {
	s, _, _ := r.outerRemark(r.nameMarks.plain(cell(cells, r.c.Name)))
	if r.packed.settled && !r.packed.on {
		return s
	}
	if plain, _, ok := r.unpackName(s); ok {
		return plain
	}
	return s
}

// outerRemark takes how a race ended, or how somebody took part, off a name that has another
// bracket before it: "Jo Lee (F, 39) (DNF)".
func (r *Reader) outerRemark(s string) (plain string, m remark, ok bool) {
	if len(s) < 8 || s[len(s)-1] != ')' || strings.Count(s, "(") < 2 {
		return s, remark{}, false
	}
	at := strings.LastIndexByte(s, '(')
	before := trim(s[:at])
	if before == "" || before[len(before)-1] != ')' {
		return s, remark{}, false
	}
	if m = r.remark(s[at+1 : len(s)-1]); m.part == Runner && m.status == OK {
		return s, remark{}, false
	}
	return before, m, true
}

// unpackName takes such a name apart unless the words are a sex.
func (r *Reader) unpackName(s string) (plain, club string, ok bool) {
	plain, club, ok = unpack(s)
	if ok && r.tails.sexes.mark(club, &r.scratch) != strange {
		if number, two := strings.CutSuffix(plain, ")"); two && len(plain) < len(s)-len(club) {
			return number + ", " + club + ")", "", true // "Jo Lee (39) (F)"
		}
		return "", "", false
	}
	if len(club) == 1 {
		return "", "", false // "(39) (A)"
	}
	return plain, club, ok
}

// unpack gives a name with the number alone in brackets, and the words that stand beside it there:
// they begin with a capital letter, have no figure, and are no short form of two letters.
func unpack(s string) (plain, words string, ok bool) {
	if at := strings.IndexByte(s, ','); at > 3 && s[len(s)-1] != ')' && strings.IndexByte(s[:at], ' ') > 0 && strings.Count(s, ",") == 2 {
		s = trim(s[:at]) + " (" + trim(s[at+1:]) + ")" // "Jo Lee, M40, Mill AC"
	}
	if len(s) < 12 || s[len(s)-1] != ')' {
		return "", "", false
	}
	at := strings.LastIndexByte(s, '(')
	if at < 3 {
		return "", "", false
	}
	inside := s[at+1 : len(s)-1]
	if before := trim(s[:at]); strings.HasSuffix(before, ")") && strings.IndexByte(before, '(') > 2 && strings.Count(before, "(") == 1 {
		r, _ := utf8.DecodeRuneInString(inside) // "Jo Lee (39) (Mill AC)"
		return before, inside, !hasDigit(inside) && unicode.IsUpper(r)
	}
	mark := strings.IndexAny(inside, ",;/")
	if mark < 0 || strings.IndexByte(s[:at], '(') >= 0 {
		return "", "", false
	}
	number, words := trim(inside[:mark]), trim(inside[mark+1:])
	if hasDigit(words) || seniorGroup(words) {
		number, words = words, number
	}
	r, _ := utf8.DecodeRuneInString(words)
	group := figureGroup(number) || seniorGroup(number)
	if n := len(number); !group && (n != 2 && n != 4 || !allDigits([]byte(number))) || hasDigit(words) || !unicode.IsUpper(r) || utf8.RuneCountInString(words) < 3 {
		return "", "", false
	}
	return s[:at] + "(" + number + ")", words, true
}

// figureGroup says whether a text is one to three letters with an age of two figures: M40.
func figureGroup(s string) bool {
	letters := strings.TrimRight(s, "0123456789")
	n := len(letters)
	return n > 0 && n <= 3 && len(s) == n+2 && letters == strings.ToUpper(letters) && !strings.ContainsAny(letters, " .-")
}
