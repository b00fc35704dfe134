package text

import (
	"strings"
	"unicode"
)

// SaysPlace says whether a text says the finishing position n, in words, in another script's
// figures, or with more than its number: "No. 3", "3rd place", "3 of 18", "(3)", "3 (2)" with the
// place in a group behind it, "third", "III", "③", or with a letter for a figure, "1O". tied says
// that it is shared: "joint 3rd", "3 ex aequo", "3-4".
func SaysPlace(s string, n int) (tied, ok bool) {
	if len(s) > 30 || n <= 0 {
		return false, false
	}
	s = strings.Map(plainFigure, strings.ToLower(s))
	if tied, ok = saysPlace(s, n); ok || !strings.ContainsAny(s, "0123456789oli|") {
		return tied, ok
	}
	if !strings.ContainsAny(s, "0123456789") && strings.Trim(s, "oli|") != "" {
		return false, false // a word: the l of "male" is no 1
	}
	return saysPlace(lettersForFigures(s), n)
}

// SharesPlace says whether a text is nothing but words or signs for the place above: "equal",
// "same", "=".
func SharesPlace(s string) bool {
	if len(s) > 20 {
		return false
	}
	tokens := placeTokens(strings.ToLower(s))
	for _, w := range tokens {
		if !tieWords[w] && !sameWords[w] {
			return false
		}
	}
	return len(tokens) > 0
}

func saysPlace(s string, n int) (tied, ok bool) {
	var numbers []int
	total, bracket, span := false, false, false
	for _, w := range placeTokens(s) {
		figure, is := smallNumber(w)
		switch {
		case is:
			numbers = append(numbers, figure)
		case tieWords[w]:
			tied = true
		case w == "of" || w == "/" || w == "von" || w == "sur" || w == "di" || w == "de" || w == "van" || w == "av":
			total = len(numbers) > 0
		case w == "(" || w == "[":
			bracket = len(numbers) > 0
		case w == "-" || w == "–" || w == "&" || w == "+":
			span = len(numbers) > 0
		case placeWords[w]:
		default:
			return false, false
		}
	}
	switch {
	case len(numbers) == 0 || numbers[0] != n || len(numbers) > 2:
		return false, false
	case len(numbers) == 1:
		return tied, true
	case total:
		return tied, numbers[1] >= n
	case bracket:
		return tied, numbers[1] > 0 && numbers[1] <= n
	case numbers[1] == n+1 && span:
		return true, true // 3-4
	}
	return tied, numbers[1] == 0 // 3.0
}

// placeTokens are the words, figures and telling signs of a folded text.
func placeTokens(s string) (tokens []string) {
	from, of := -1, 0 // of: 1 figures, 2 letters
	flush := func(to int) {
		if from >= 0 {
			tokens = append(tokens, s[from:to])
		}
		from, of = -1, 0
	}
	for i, r := range s {
		is := 0
		switch {
		case r >= '0' && r <= '9':
			is = 1
		case unicode.IsLetter(r) || r == 'º' || r == '°' || r == 'ª':
			is = 2
		}
		if is != of {
			flush(i)
		}
		switch {
		case is != 0:
			if from < 0 {
				from, of = i, is
			}
		case strings.ContainsRune("=([/-–&+", r):
			tokens = append(tokens, string(r))
		case strings.ContainsRune(" )]{}<>~.,:;#*'\u00a0\u200b", r):
		default:
			tokens = append(tokens, string(r)) // a sign that no place has
		}
	}
	flush(len(s))
	return tokens
}

// smallNumber reads figures, an English number word up to twenty, or a Roman figure up to 89.
func smallNumber(w string) (n int, ok bool) {
	if n, ok = numberWords[w]; ok {
		return n, true
	}
	if w[0] >= '0' && w[0] <= '9' {
		if len(w) > 6 {
			return 0, false
		}
		for i := range len(w) {
			n = 10*n + int(w[i]-'0')
		}
		return n, true
	}
	if n = romanFigure(w); n > 0 {
		return n, true
	}
	return 0, false
}

// romanFigure reads a Roman figure up to 89 in small letters, 0 where it is none.
func romanFigure(w string) (n int) {
	for _, f := range [...]struct {
		say string
		is  int
	}{{"l", 50}, {"xl", 40}, {"x", 10}, {"x", 10}, {"x", 10}, {"ix", 9}, {"v", 5}, {"iv", 4}, {"i", 1}, {"i", 1}, {"i", 1}} {
		if rest, found := strings.CutPrefix(w, f.say); found {
			n, w = n+f.is, rest
		}
	}
	if w != "" {
		return 0
	}
	return n
}

// lettersForFigures puts figures for letters that look like them, in runs of both.
func lettersForFigures(s string) string { return likeFigures.Replace(s) }

var likeFigures = strings.NewReplacer("o", "0", "l", "1", "i", "1", "|", "1")

// plainFigure is the ASCII figure of a raised one.
func plainFigure(r rune) rune {
	switch {
	case r == '¹':
		return '1'
	case r == '²' || r == '³':
		return '2' + r - '²'
	case r == '⁰' || r >= '⁴' && r <= '⁹':
		return '0' + r - '⁰'
	}
	return r
}

var (
	// tieWords say that a place is shared. Common practice, no source.
	tieWords = wordsOf("= tie tied t joint jt j equal equally eq ea ex aequo exaequo gleich geteilt geteilter shared ties equals pari merito æquo dead heat dh parità pari empate empatado delt")
	// sameWords say "as above". Common practice, no source.
	sameWords = wordsOf("same ditto dito dto do idem gleich samma samme stesso mismo")
	// placeWords stand beside a place and change nothing. Common practice, no source.
	placeWords = wordsOf("out overall and for tied total te ste st nd rd th e er re ère ere eme ème ieme ième de ste o a º ª ° mo ma to ta vo va no n nr nro num number numéro numero número № p pos position posn place pl platz rang rank lugar puesto posto plats plass plads sija miejsce místo plaats finisher 位 名 第 등 위")
	// numberWords are English numbers and ordinals up to twenty, and circled numbers from ten on.
	numberWords = func() map[string]int {
		m := map[string]int{}
		for i, w := range strings.Fields("one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty") {
			m[w] = i + 1
		}
		for i, w := range Ordinals {
			m[w] = i + 1
		}
		for i := range 20 {
			m[string(rune('①'+i))] = i + 1
		}
		return m
	}()
)

// Ordinals are the English ordinal numbers in words, from the first to the twentieth.
var Ordinals = strings.Fields("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth")
