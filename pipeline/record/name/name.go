package name

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// Name is what one text of a sheet says about who somebody is.
type Name struct {
	// Text is the spelling as received, cleaned (see Clean).
	Text string
	// Given and Family are folded keys: small letters without marks and
	// punctuation, tokens separated by one space ("ella mae", "jones green").
	// Titles, suffixes and middle initials are left out. A text of one word
	// has it as Family. A letter that could not be recovered is a "?".
	Given, Family string
	// Full is the key of the whole name: Given and Family without any space,
	// so that Ella-Mae Hill, Ella Mae Hill and split columns agree.
	Full string
	// Ordered says that the text itself told which part is the family name
	// (a comma, capitals or a particle); otherwise the last word was taken.
	Ordered bool
	// Unnamed: the text names nobody ("Unknown", "A N Other", "-", "123").
	Unnamed bool
	// Several: the text names more than one person ("Sam & Jo Lee").
	Several bool
	// Unsure: the text says more than a name, and that sets the name in doubt ("maybe Jo Lee",
	// "Jo Lee for Ann Fox", "Osier Harriers B").
	Unsure bool
}

// token is a run of letters of the cleaned text; word joins the tokens that
// hyphens hold together.
type token struct {
	lo, hi   int32 // folded key, in the scanner's buffer
	from, to int32 // spelling, in the cleaned text
	word     int16 // 0, 1, …
	part     int8  // number of commas before
	capitals bool  // all capitals, at least two letters (McDONALD counts)
	small    bool  // no capital
	number   bool  // digits only
	joins    bool  // a capital letter that joins two family names: LÓPEZ Y VEGA Luis
	role     role
}

type role uint8

const (
	middle role = iota // left out of the keys, printed with the given name
	given
	family
	dropped // title, number, remark: neither compared nor printed
	suffix  // printed after the family name
)

// scanner holds one text in pieces. It is small and lives on the stack.
type scanner struct {
	text    string
	keys    []byte
	tokens  []token
	several bool
	ordered bool
	letters int
	digits  int
	commas  int
}

// Parse reads one text. It never fails: a text that names nobody comes back
// Unnamed.
func Parse(text string) Name {
	var keys [128]byte
	var tokens [16]token
	s := scanner{text: Clean(text), keys: keys[:0], tokens: tokens[:0]}
	s.scan()
	n := Name{Text: s.text}
	if s.unnamed() {
		n.Unnamed = true
		return n
	}
	n.Several = s.several || s.wholeFamily()
	n.Unsure = s.unsure()
	s.assign()
	n.Ordered = s.ordered
	var room [128]byte
	b := s.appendRole(room[:0], given)
	g := len(b)
	b = s.appendRole(b, family)
	key := string(b)
	n.Given, n.Family = key[:g], key[g:]
	if strings.IndexByte(key, ' ') < 0 {
		n.Full = key
	} else {
		n.Full = strings.ReplaceAll(key, " ", "")
	}
	n.Unnamed = n.Full == "" || n.Full == "?"
	return n
}

func (s *scanner) key(t *token) string { return string(s.keys[t.lo:t.hi]) }

// is looks a token's key up without making a string of it.
func (s *scanner) is(t *token, words map[string]bool) bool { return words[string(s.keys[t.lo:t.hi])] }

// opensFamily says whether a token is the beginning of a family name that was written
// apart, O Brien or Mc Donald. A letter with a dot is an initial.
func (s *scanner) opensFamily(t *token) bool {
	switch string(s.keys[t.lo:t.hi]) {
	case "o", "mc", "mac", "d":
		return !strings.HasPrefix(s.text[t.to:], ".")
	}
	return false
}

// appendRole adds the keys of the tokens of a role, joining O, Mc, Mac and D
// to what follows.
func (s *scanner) appendRole(b []byte, want role) []byte {
	first, join := true, false
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.role != want {
			continue
		}
		if !first && !join {
			b = append(b, ' ')
		}
		b = append(b, s.keys[t.lo:t.hi]...)
		first, join = false, want == family && s.opensFamily(t)
	}
	return b
}

// scan cuts the text into tokens.
func (s *scanner) scan() {
	var cur token
	open, hyphen := false, false
	word, part := int16(-1), int8(0)
	upper, lower, digits, tail := 0, 0, 0, 0 // of the current token; tail: capitals at its end
	bracket := rune(0)
	end := func(at int) {
		if !open {
			return
		}
		open = false
		cur.hi, cur.to = int32(len(s.keys)), int32(at)
		if cur.hi == cur.lo { // nothing but marks
			return
		}
		cur.number = digits > 0 && upper+lower == 0
		cur.small = upper == 0
		cur.capitals = upper >= 2 && lower == 0 || upper >= 3 && lower <= 2 && tail >= 2
		s.tokens = append(s.tokens, cur)
		hyphen = false
	}
	for i, r := range s.text {
		if bracket != 0 {
			if r == bracket {
				bracket = 0
			}
			continue
		}
		var letter, digit bool
		if r < utf8.RuneSelf {
			letter, digit = 'a' <= r|0x20 && r|0x20 <= 'z', '0' <= r && r <= '9'
		} else if apostrophe(r) {
			continue
		} else {
			letter, digit = unicode.IsLetter(r), unicode.IsDigit(r)
			if unicode.Is(unicode.Mn, r) {
				continue
			}
			if vowelSign(r) {
				if open && unicode.Is(unicode.Mc, r) {
					s.keys = utf8.AppendRune(s.keys, r)
				}
				continue
			}
		}
		switch {
		case letter || digit || r == Lost && (open || i+1 < len(s.text) && s.text[i+1] != ' '):
			if !open {
				open = true
				if !hyphen || len(s.tokens) == 0 {
					word++
				}
				cur = token{lo: int32(len(s.keys)), from: int32(i), word: word, part: part}
				upper, lower, digits, tail = 0, 0, 0, 0
			}
			switch {
			case digit:
				digits++
				s.digits++
				tail = 0
				s.keys = utf8.AppendRune(s.keys, r)
			case r == Lost:
				s.keys = append(s.keys, Lost)
			default:
				s.letters++
				if r < utf8.RuneSelf {
					if r < 'a' {
						upper++
						tail++
					} else {
						lower++
						tail = 0
					}
					s.keys = append(s.keys, byte(r)|0x20)
				} else {
					if unicode.IsUpper(r) {
						upper++
						tail++
					} else if unicode.IsLower(r) {
						lower++
						tail = 0
					}
					s.keys = appendFolded(s.keys, r)
				}
			}
		case r == '\'' && (i == 0 || s.text[i-1] == ' ') && nickname.MatchString(s.text[i:]):
			end(i)
			bracket = '\''
		case r == '\'' || r == '`':
		case r == ',':
			end(i)
			if len(s.tokens) > 0 {
				part++
				s.commas++
			}
		case dash(r):
			end(i)
			hyphen = true
		case r == '&' || r == '+' || r == '/' || r == ';':
			end(i)
			if s.letters > 0 && lettersFollow(s.text[i:]) {
				s.several = true
			}
		case r == '(' || r == '[' || r == '"' || r == '“' || r == '«' || r == '»' || r == '„':
			end(i)
			closing := map[rune]rune{'(': ')', '[': ']', '"': '"', '“': '”', '«': '»', '»': '«', '„': '“'}[r]
			// A remark is left out only where something else is left.
			if j := strings.IndexRune(s.text[i+1:], closing); j >= 0 && (s.letters > 0 || lettersFollow(s.text[i+1+j:])) {
				bracket = closing
			}
		default:
			end(i)
		}
	}
	end(len(s.text))
	if !s.several && s.commas == 0 {
		s.findJoiner()
	}
}

func lettersFollow(s string) bool { return strings.IndexFunc(s, unicode.IsLetter) >= 0 }

// findJoiner looks for "and" between two people.
func (s *scanner) findJoiner() {
	for i := 1; i+1 < len(s.tokens); i++ {
		t := &s.tokens[i]
		if s.is(t, joiners) || t.small && !s.tokens[i-1].small && !s.tokens[i+1].small && s.is(t, smallJoiners) {
			s.several = true
			return
		}
	}
	if n := len(s.tokens); n == 5 && s.tokens[2].small && s.is(&s.tokens[2], betweenPeople) && s.key(&s.tokens[1]) == s.key(&s.tokens[4]) {
		s.several = true // "Ana Paz y Luis Paz"
	}
	if n := len(s.tokens); n >= 4 && n <= 6 && s.tokens[1].small && !s.tokens[0].small && !s.tokens[2].small && !s.tokens[0].capitals && !s.particle(&s.tokens[2]) && s.is(&s.tokens[1], betweenPeople) {
		s.several = true
	}
}

func (s *scanner) wholeFamily() bool {
	if n := len(s.tokens); n >= 2 {
		return s.is(&s.tokens[0], families) || s.is(&s.tokens[n-1], families) || s.is(&s.tokens[0], teams) || n > 2 && s.key(&s.tokens[n-1]) == "team" ||
			n == 2 && s.key(&s.tokens[0]) == "the" && strings.HasSuffix(s.key(&s.tokens[1]), "s")
	}
	return false
}

// unnamed says whether the text names nobody.
func (s *scanner) unnamed() bool {
	if s.letters == 0 {
		return true
	}
	var room [128]byte
	b := room[:0]
	strong, all, named, person, initial := false, true, 0, false, false
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.number {
			continue
		}
		named++
		person = person || s.is(t, described) && s.key(t) != "walker"
		initial = initial || t.hi-t.lo == 1
		if len(b) > 0 {
			b = append(b, ' ')
		}
		b = append(b, s.keys[t.lo:t.hi]...)
		if k := s.key(t); named > 1 && strong && strings.ContainsAny(k, "0123456789") {
			// Unknown M40
		} else if s.is(t, nobody) || k == "not" || k == "no" && named == 1 {
			strong = true // barcode not scanned, no first name
			if !s.is(t, nobody) && !s.is(t, fillers) {
				all = false
			}
		} else if !s.is(t, fillers) {
			all = false
		}
	}
	if nobodyWhole[string(b)] || len(s.tokens) == 2 && s.is(&s.tokens[0], negations) && s.is(&s.tokens[1], undone) || s.nobodySlip() || s.nobodyInTwo() || s.guestOf() || s.isDescribed() || s.notFound() || s.lacksSomething() || FormulaError(s.text) {
		return true
	}
	if k := len(s.tokens); named == k && k > 2 { // "Atleta não identificado", "not found runner"
		first, last := &s.tokens[0], &s.tokens[k-1]
		if (s.is(first, fillers) || s.is(first, nobody)) && nobodyWhole[string(b[int(first.hi-first.lo)+1:])] || (s.is(last, fillers) || s.is(last, nobody)) && nobodyWhole[string(b[:len(b)-int(last.hi-last.lo)-1])] {
			return true
		}
	}
	if all && (strong && !(initial && s.initialOfFamily()) || person && named > 1 && !initial) { // "New lady", "First man", "Anhysbys / Unknown" too
		return true
	}
	if s.digits > 0 && s.numbered() {
		return true // "Dorsal 12", "12. rajtszám"
	}
	if named > 1 && s.noName() {
		return true // "button pressed by mistake"
	}
	if len(s.tokens) > 2 && s.is(&s.tokens[0], notKnown) && s.is(&s.tokens[1], fillers) {
		return true // "Unknown lady in red"
	}
	if s.several {
		return false
	}
	// A lone code: letters with at least two digits in one word.
	return named == 1 && s.digits >= 2 && s.letters <= 3
}

// numbered says whether the text is a number and a word for who takes part or for what they wear, and nothing else
// but small words: "Dorsal 12", "Deltager nr 266".
func (s *scanner) numbered() bool {
	number, thing := false, false
	for i := range s.tokens {
		switch t := &s.tokens[i]; {
		case t.number:
			number = true
		case s.is(t, entrants) || s.is(t, finisherHas):
			thing = true
		case !s.is(t, fillers) && !s.is(t, nobody) && !s.is(t, numberSigns):
			return false
		}
	}
	return number && thing
}

// lacksSomething says whether the text is two words to four of which one says that something is wrong, or
// that a line is no real one, and all others are things of the desk: "forgot number", "Band broken", "Sample
// entry"; or has nothing but headings of names, "Vorname Nachname", as a form left to fill in.
func (s *scanner) lacksSomething() bool {
	n, wrong, things, headings := 0, 0, 0, 0
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.number {
			continue
		}
		n++
		if s.is(t, lacking) {
			wrong++
		} else if s.is(t, deskThings) {
			things++
		}
		if s.is(t, nameHeadings) || headings > 0 && s.is(t, namesOrder) {
			headings++
		}
	}
	if n < 2 || n > 4 || s.commas > 0 && headings < n {
		return false
	}
	return wrong > 0 && things > 0 && wrong+things == n || headings == n || s.key(&s.tokens[len(s.tokens)-1]) == "example"
}

// initialOfFamily says whether the text is an initial with its full stop and a word for nobody that is a
// family name as well: "M. Best", "Guest, F.".
func (s *scanner) initialOfFamily() bool {
	if len(s.tokens) != 2 {
		return false
	}
	letter, family := &s.tokens[0], &s.tokens[1]
	if letter.hi-letter.lo != 1 {
		letter, family = family, letter
	}
	at := strings.IndexByte(s.text, '.')
	return letter.hi-letter.lo == 1 && at > 0 && strings.EqualFold(s.text[at-1:at], s.key(letter)) && (at == 1 || s.text[at-2] == ' ') && nobodyFamilies[s.key(family)]
}

// noName says whether the text is small words throughout, one of which is nobody's name.
func (s *scanner) noName() bool {
	found := false
	for i := range s.tokens {
		t := &s.tokens[i]
		if !t.small && !t.number {
			return false
		}
		found = found || s.is(t, noNames)
	}
	return found
}

// unsure says whether words beside the name set it in doubt: small ones in front of two others,
// between two people or behind them, and those of clubs and teams.
func (s *scanner) unsure() bool {
	capital, small := 0, -1 // words with a capital so far, and where the last run of small ones began
	rest := 0
	for i := range s.tokens {
		if t := &s.tokens[i]; !t.small && !t.number {
			rest++
		}
	}
	for i := range s.tokens {
		t := &s.tokens[i]
		switch {
		case t.number:
		case !t.small:
			if i > 0 && (s.is(t, clubWords) || t.capitals && t.hi-t.lo <= 3 && s.is(t, clubInitials)) {
				return true
			}
			if small >= 0 && capital == 0 && rest-capital >= 2 && text.SetAside(s.smallWords(small, i)) {
				return true
			}
			capital, small = capital+1, -1
		case small < 0:
			small = i
			fallthrough
		default:
			if capital >= 2 && rest > capital && !s.is(t, particles) && s.is(t, exchanged) {
				return true
			}
		}
	}
	return small > 0 && capital >= 2 && text.SetAside(s.smallWords(small, len(s.tokens)))
}

// smallWords joins the keys of some tokens, behind a word for what they speak of.
func (s *scanner) smallWords(from, to int) string {
	b := []byte("name ")
	for i := from; i < to; i++ {
		b = append(append(b, s.keys[s.tokens[i].lo:s.tokens[i].hi]...), ' ')
	}
	return string(b)
}

// nobodySlip says whether the text is "no" and what there was none of, "No slip": a name
// would have a capital. In other languages it is one of the words for what finishers have,
// "ohne Code", "brak danych", also where a comma stands between the two.
func (s *scanner) nobodySlip() bool {
	if len(s.tokens) == 2 && s.is(&s.tokens[0], without) && s.is(&s.tokens[1], finisherHas) {
		return true
	}
	return len(s.tokens) == 2 && s.key(&s.tokens[0]) == "no" && s.tokens[1].small && s.commas == 0
}

// nobodyInTwo says whether what names nobody stands in the columns of given and family name,
// one word in each: "barcode, no", "danych, brak".
func (s *scanner) nobodyInTwo() bool {
	if n := len(s.tokens); n == 3 && s.commas == 1 && s.tokens[1].part == 0 && s.key(&s.tokens[2]) == "a" && s.key(&s.tokens[0]) == "n" && s.key(&s.tokens[1]) == "other" {
		return true // "N Other, A"
	}
	if len(s.tokens) != 2 || s.commas != 1 || s.tokens[0].part == s.tokens[1].part {
		return false
	}
	behind, front := &s.tokens[0], &s.tokens[1]
	return nobodyWhole[s.key(front)+" "+s.key(behind)] || s.is(front, without) && s.is(behind, finisherHas)
}

// notFound says whether the text is small words throughout, three and more, of which the first is
// for having none: "brak w bazie", "no such number", as a formula says of a number that
// it does not find.
func (s *scanner) notFound() bool {
	if len(s.tokens) < 3 || !s.is(&s.tokens[0], without) || s.is(&s.tokens[1], particles) {
		return false
	}
	for i := range s.tokens {
		if !s.tokens[i].small {
			return false
		}
	}
	return true
}

// FormulaError says whether a text is nothing but what a spreadsheet shows for a formula that gives no
// value (ECMA-376 Part 1, 18.17.3), also in other languages; for a name that is two of them
// perhaps: "#N/A", "#REF!", "#N/A, #N/A".
func FormulaError(text string) bool {
	if text == "" || text[0] != '#' {
		return false
	}
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
		if len(w) < 3 || len(w) > 12 || w[0] != '#' || !strings.HasSuffix(w, "!") && !strings.HasSuffix(w, "?") && w != "#N/A" && w != "#N/D" && w != "#NV" && w != "#NA" {
			return false
		}
	}
	return true
}

// isDescribed says whether the text tells what somebody looked like: "Man in red".
func (s *scanner) isDescribed() bool {
	ts := s.tokens
	if s.isSentence() {
		return true
	}
	if len(ts) > 3 && ts[1].small && s.is(&ts[1], described) {
		ts = ts[1:] // tall chap in green
	}
	if len(ts) == 2 && ts[1].small && s.commas == 0 {
		return s.is(&ts[0], described) && s.is(&ts[1], describing) // "Lady with", of which a dog was cut off
	}
	if s.isWorn() {
		return true
	}
	if n := len(ts); n < 3 || n > 6 || s.commas > 0 || !s.is(&ts[0], described) {
		return false
	}
	return ts[1].small && s.is(&ts[1], describing) && !ts[2].number
}

// isWorn says whether the text is a word for a person and small words, or small words alone, two of
// which are colours or clothes: "Woman, blue top", "red shirt".
func (s *scanner) isWorn() bool {
	n := 0
	for i := range s.tokens {
		switch t := &s.tokens[i]; {
		case i == 0 && s.is(t, described):
		case !t.small && (i > 0 || !s.is(t, worn)):
			return false
		case s.is(t, worn):
			n++
		case !s.is(t, describing):
			return false
		}
	}
	return n >= 2
}

// isSentence says whether the text is small words throughout, four and more, and one of them
// is none of a name: "forgot to ask her name", "tall chap, did not catch his name".
func (s *scanner) isSentence() bool {
	ts, found := s.tokens, false
	if len(ts) < 4 && (len(ts) != 3 || !s.is(&ts[0], notDone)) {
		return false
	}
	for i := range ts {
		if !ts[i].small {
			return false
		}
		found = found || s.is(&ts[i], ofSentences) || i == 0 && s.is(&ts[i], notDone)
	}
	return found
}

// nickname is a word or two between single quotation marks with more of the name behind, from the first
// of them on: "Jo 'Dash' Lee", and not "Jan 't Hart".
var nickname = regexp.MustCompile(`^'\pL[\pL -]+' \pL`)

// ownersMark ends a name of somebody to whom what follows belongs.
var ownersMark = regexp.MustCompile(`\pL['’]s$`)

// guestOf says whether the text tells only whose guest somebody was: "Guest of Jo", "Gast
// von Anna". In names the small word has a family name behind it, and none of these before.
func (s *scanner) guestOf() bool {
	if n := len(s.tokens); n >= 2 && n <= 3 && s.tokens[n-1].small && s.is(&s.tokens[n-1], relations) && s.is(&s.tokens[0], possessed) {
		return true // "someone's dad"
	}
	if len(s.tokens) == 2 && s.is(&s.tokens[1], relations) && ownersMark.MatchString(s.text[s.tokens[0].from:s.tokens[0].to]) {
		return true // "Jo's brother"
	}
	if len(s.tokens) >= 3 && s.is(&s.tokens[0], visitors) && s.key(&s.tokens[1]) == "from" {
		return true // "visitor from Leeds way"
	}
	if len(s.tokens) < 3 || !s.is(&s.tokens[0], nobody) && !s.is(&s.tokens[0], relations) {
		return false
	}
	switch t := &s.tokens[1]; s.text[t.from:t.to] {
	case "of", "von", "de", "di", "do", "da", "av", "af":
		return s.commas == 0
	}
	return false
}

// assign gives every token its role.
func (s *scanner) assign() {
	ts := s.tokens
	for i := range ts {
		ts[i].role = given
		if ts[i].number {
			ts[i].role = dropped
			if i > 1 && s.is(&ts[i-1], bornWords) { // Jg. 1984
				ts[i-1].role = dropped
			}
		}
	}
	if s.digits > 0 {
		s.dropCodes()
	}
	s.dropBornNames()
	s.dropTitles()
	s.dropSuffixes()
	switch {
	case s.byComma():
	case s.byCapitals():
	default:
		s.byPlace()
	}
	s.dropInitials()
}

// dropCodes leaves out words of letters and figures beside two others: "Jo Lee A217", "1st Jo Lee",
// "Jo Lee 7B".
func (s *scanner) dropCodes() {
	others := 0
	for i := range s.tokens {
		if t := &s.tokens[i]; !t.number && !isCode(s.key(t)) {
			others++
		}
	}
	for i := range s.tokens {
		if t := &s.tokens[i]; others >= 2 && !t.number && isCode(s.key(t)) {
			t.role = dropped
		}
	}
}

// isCode says whether a folded word is up to three letters and four figures, in this order, or the other
// way round.
func isCode(word string) bool {
	letters := strings.TrimRight(word, "0123456789")
	if figures := len(word) - len(letters); figures > 0 {
		return figures <= 4 && len(letters) >= 1 && len(letters) <= 3 && !strings.ContainsAny(letters, "0123456789")
	}
	letters = strings.TrimLeft(word, "0123456789")
	figures := len(word) - len(letters)
	return figures >= 1 && figures <= 4 && len(letters) <= 2 && !strings.ContainsAny(letters, "0123456789")
}

// dropBornNames leaves out the name that somebody had before, behind two words: "Jo Lee née Ford".
func (s *scanner) dropBornNames() {
	for i := 2; i+1 < len(s.tokens); i++ {
		if t := &s.tokens[i]; t.small && s.is(t, bornAs) {
			for j := i; j < len(s.tokens); j++ {
				s.tokens[j].role = dropped
			}
			return
		}
	}
}

// live visits the tokens that still are part of the name, in order.
func (s *scanner) live() (first, last, words int) {
	first, last = -1, -1
	prev := int16(-1)
	for i := range s.tokens {
		if r := s.tokens[i].role; r == dropped || r == suffix {
			continue
		}
		if first < 0 {
			first = i
		}
		last = i
		if s.tokens[i].word != prev {
			words++
			prev = s.tokens[i].word
		}
	}
	return
}

func (s *scanner) dropTitles() {
	for {
		first, _, words := s.live()
		if words < 2 || !s.is(&s.tokens[first], titles) && !(s.is(&s.tokens[first], shortTitles) && strings.HasPrefix(s.text[s.tokens[first].to:], ".")) {
			return
		}
		if s.commas > 0 && s.tokens[first].part != s.tokens[len(s.tokens)-1].part && words < 3 {
			return // "Lord, Anna": a family name
		}
		s.tokens[first].role = dropped
	}
}

func (s *scanner) dropSuffixes() {
	for {
		_, last, words := s.live()
		if words < 3 && !(words == 2 && s.commas > 1) || !s.is(&s.tokens[last], suffixes) {
			break
		}
		s.tokens[last].role = suffix
	}
	// "Smith, Mr John": the title stands after the comma.
	for i := 1; i+1 < len(s.tokens); i++ {
		if t := &s.tokens[i]; t.part == 1 && s.tokens[i-1].part == 0 && s.is(t, titles) {
			t.role = dropped
		}
	}
}

func (s *scanner) particle(t *token) bool {
	return s.is(t, particles) || t.small && s.is(t, smallParticles)
}

// byComma: the part before the first comma is the family name. Particles at
// the end of the given part belong to it (Berg, Anna van der).
func (s *scanner) byComma() bool {
	before, after := false, false
	for i := range s.tokens {
		if s.tokens[i].role == given {
			if s.tokens[i].part == 0 {
				before = true
			} else {
				after = true
			}
		}
	}
	if !before || !after {
		return false
	}
	s.ordered = true
	for i := range s.tokens {
		if s.tokens[i].role == given && s.tokens[i].part == 0 {
			s.tokens[i].role = family
		}
	}
	moved := 0
	n := len(s.tokens)
	for i := n - 1; i > 0 && s.tokens[i].role == given && s.particle(&s.tokens[i]) && s.tokens[i-1].role == given; i-- {
		s.tokens[i].role = family
		moved++
	}
	if moved > 0 { // they are spelt before the rest of the family name
		ts := append(append([]token(nil), s.tokens[n-moved:]...), s.tokens[:n-moved]...)
		copy(s.tokens, ts)
	}
	return true
}

// byCapitals: SURNAME First and First SURNAME, where capitals tell the parts
// apart. A text all in capitals, or all small, says nothing.
func (s *scanner) byCapitals() bool {
	caps, plain := 0, 0
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.role != given {
			continue
		}
		if s.shout(t) {
			caps++
		} else if t.hi-t.lo > 1 && !s.particle(t) && !t.capitals {
			plain++
		}
	}
	if caps == 0 || plain == 0 {
		return false
	}
	for i := 1; i < len(s.tokens)-1; i++ {
		t := &s.tokens[i]
		t.joins = t.role == given && t.hi-t.lo == 1 && strings.Contains("yei", s.key(t)) && s.shout(&s.tokens[i-1]) && s.shout(&s.tokens[i+1])
	}
	first, last, _ := s.live()
	// The family name is the run of capitals (and particles) at either end.
	head := first
	for head <= last && (s.tokens[head].role != given || s.tokens[head].joins || s.shout(&s.tokens[head]) || s.particle(&s.tokens[head])) {
		head++
	}
	if head > first && s.anyShout(first, head) {
		if s.anyShout(head, last+1) {
			return false
		}
		s.setFamily(first, head)
		return true
	}
	tail := last
	for tail >= first && (s.tokens[tail].role != given || s.tokens[tail].joins || s.shout(&s.tokens[tail]) || s.particle(&s.tokens[tail])) {
		tail--
	}
	if tail < last && s.anyShout(tail+1, last+1) && !s.anyShout(first, tail+1) {
		s.setFamily(tail+1, last+1)
		return true
	}
	return false
}

// shout is a family name in capitals: three letters or more, or a known short
// one (two capitals are initials otherwise).
func (s *scanner) shout(t *token) bool {
	return t.capitals && (t.hi-t.lo >= 3 || s.is(t, shortFamilies))
}

func (s *scanner) anyShout(lo, hi int) bool {
	for i := lo; i < hi; i++ {
		if s.tokens[i].role == given && s.shout(&s.tokens[i]) {
			return true
		}
	}
	return false
}

func (s *scanner) setFamily(lo, hi int) {
	s.ordered = true
	for i := lo; i < hi; i++ {
		if s.tokens[i].role == given {
			s.tokens[i].role = family
		}
	}
}

// byPlace: the last word, with the particles (and O, Mc, D) before it.
func (s *scanner) byPlace() {
	first, last, words := s.live()
	if first < 0 {
		return
	}
	from := last
	for from > first && (s.tokens[from-1].role != given || s.tokens[from-1].word == s.tokens[last].word) {
		from--
	}
	if words > 2 {
		for i := first + 1; i < from; i++ {
			t := &s.tokens[i]
			if t.role != given || t.word == s.tokens[first].word {
				continue
			}
			if s.particle(t) {
				s.ordered = true
				from = i
				break
			}
		}
		if from-1 > first && s.opensFamily(&s.tokens[from-1]) {
			from--
		}
	} else if words == 2 && from-1 == first && s.key(&s.tokens[first]) == "mc" {
		from = first // "Mc Donald" alone
	}
	for i := from; i <= last; i++ {
		if s.tokens[i].role == given {
			s.tokens[i].role = family
		}
	}
}

// dropInitials leaves single letters out of the keys, except a given name
// that is nothing but an initial, and O, D before a family name.
func (s *scanner) dropInitials() {
	seen := false
	for i := range s.tokens {
		t := &s.tokens[i]
		if t.role != given {
			continue
		}
		if seen && t.hi-t.lo == 1 {
			t.role = middle
		}
		seen = true
	}
}
