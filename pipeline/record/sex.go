package record

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"

	"lapwing/pipeline/text"
)

// sexMark is what a cell says about sex by itself: a sure M, W, X, a letter
// that only the whole column can settle, or nothing.
type sexMark uint8

const (
	noMark  sexMark = 0
	unsaid  sexMark = 1 // "not given", in words
	strange sexMark = 2 // not understood
	msMark  sexMark = 3 // Ms: a title beside Mr, else men of the senior class
	sureM   sexMark = 'M'
	sureW   sexMark = 'W'
	sureX   sexMark = 'X'
	// 'a'..'z' and '0'..'9': the letter or digit printed
)

func (m sexMark) open() bool { return m >= 'a' && m <= 'z' || m >= '0' && m <= '9' }

// sexWordMarks knows the words for men and women in English, French, German,
// Spanish, Italian, Portuguese, Dutch, Polish and the Nordic languages, and
// the titles. Single letters are left to the column.
var sexWordMarks = wordTable(map[string]sexMark{
	text.MenWords:   sureM,
	text.WomenWords: sureW,
	`non-binary|nonbinary|non binary|nb|enby|other|another|diverse|divers|neither|third|indeterminate|gender neutral|genderqueer|
	autre|non binaire|non-binaire|nichtbinar|nicht-binar|no binario|no binaria|otro|non binario|altro|nao binario|nao-binario|outro|non-binair|anders|ikke-binaer|icke-binar|niebinarna`: sureX,
	`not given|not stated|not specified|unspecified|not known|unknown|undisclosed|prefer not to say|prefer not|pns|withheld|none|n/a|na|n.a|nil|null|blank|no answer|
	non renseigne|non precise|inconnu|keine angabe|k.a|unbekannt|no indicado|desconocido|non indicato|sconosciuto|desconhecido|onbekend|nieznana|nieznany|ikke oppgitt|okant|-|--|?|??|.|/`: unsaid,
})

// parseSex reads one cell of a sex column, folded. Longer texts ("Male 40-44",
// "MSEN") are read as a group.
func parseSex(b []byte) sexMark {
	if t := bytes.Trim(b, "()[]{}<>.,;:*`'\"/ -"); len(t) > 0 {
		b = t
	}
	switch {
	case len(b) == 0:
		return noMark
	case len(b) == 1 && b[0] == 'x':
		return sureX
	case len(b) == 1 && sexMark(b[0]).open():
		return sexMark(b[0])
	case string(b) == "sr", string(b) == "nam", string(b) == "me": // parts of groups elsewhere
		return sureM
	case string(b) == "nu", string(b) == "ke", string(b) == "fr", string(b) == "wn":
		return sureW
	case string(b) == "mn", string(b) == "ma":
		return sureM
	case string(b) == "n/b", string(b) == "they", string(b) == "they/them", string(b) == "them":
		return sureX
	case string(b) == "srta", string(b) == "sig.na", string(b) == "sig.ra":
		return sureW
	case string(b) == "ms":
		return msMark
	}
	if m, ok := sexWordMarks[string(b)]; ok {
		return m
	}
	if m, ok := sexWordMarks[apostrophes.Replace(string(b))]; ok {
		return m
	}
	if x, y, two := bytes.Cut(b, []byte("/")); two && len(x) > 1 && len(y) > 1 { // in two languages: homme/male
		m, n := parseSex(bytes.TrimSpace(x)), parseSex(bytes.TrimSpace(y))
		switch sure := m == sureM || m == sureW; {
		case sure && m == n:
			return m
		case sure && (n == sureM || n == sureW): // printed as it stood in the form
			return strange
		}
	}
	if len(b) == 3 && b[1] == '/' && b[0] == b[2] { // femme/female
		return parseSex(b[:1])
	}
	if m := sexMark(text.SexOf(string(b))); m != noMark {
		return m
	}
	if i := strings.IndexAny(string(b), "/ "); i == 1 && sexMark(b[0]).open() && !bytes.ContainsAny(b, "0123456789") {
		return strange // "m/f" printed as it stood in the form
	}
	if g := parseGroup(b); g.sex != noMark {
		return g.sex
	}
	if len(b) > 1 && sexMark(b[0]).open() && b[0] >= 'a' && allDigits(b[1:]) { // V12: the twelfth woman
		return sexMark(b[0])
	}
	return strange
}

// codedSexes finds "0=m" in a folded heading.
var codedSexes = regexp.MustCompile(`([0-9]) ?[=:] ?([a-z]+)`)

// letters settles what each ambiguous letter of a column stands for.
type letters struct {
	n      [128]int // how often each lower-case letter or digit is printed
	is     [128]Sex
	titles bool // Mr, Mrs or Miss stand in the column
	dona   bool // Dña., beside which D. is don, a man
	why    string
	ask    byte // the letter that could not be settled, 0 none
	// choices for it
	choices string
}

// settle decides by which letters stand beside each other. heading is folded.
func (l *letters) settle(heading string, answers map[string]string) {
	has := func(set string) bool {
		for i := range len(set) {
			if l.n[set[i]] > 0 {
				return true
			}
		}
		return false
	}
	set := func(s Sex, of string) {
		for i := range len(of) {
			l.is[of[i]] = s
		}
	}
	set(M, "mhb")
	set(W, "fwklz")
	set(X, "xo")
	// ISO/IEC 5218: 0 not known, 1 male, 2 female, 9 not applicable. Where 0 stands as
	// often as sexes do and 2 nowhere, 0 and 1 are the two sexes, in an order that only a
	// heading or a legend can tell.
	if !has("0") || has("2") || l.n['0']*4 < l.n['1'] {
		set(M, "1")
		set(W, "2")
	}
	for _, m := range codedSexes.FindAllStringSubmatch(heading, -1) {
		if sex := sexWordMarks[m[2]]; sex == sureM || m[2] == "m" {
			set(M, m[1])
		} else if sex == sureW || m[2] == "f" || m[2] == "w" {
			set(W, m[1])
		}
		l.why = "the heading says what the figures stand for"
	}
	iberian := strings.HasPrefix(heading, "sexo") || strings.HasPrefix(heading, "genero")
	if has("h") && has("m") && !has("fwdk") {
		set(W, "m")
		l.why = "M beside H is mujer or mulher: a woman"
	}
	if has("g") && has("f") && !has("bmhjw") {
		set(M, "g")
		l.why = "G beside F is garçon: a man"
	}
	if has("e") && has("k") && !has("mhv") {
		set(M, "e")
		l.why = "E beside K is erkek: a man"
	}
	if has("u") && has("d") && !has("mfwh") {
		set(M, "u")
		l.why = "U and D are uomini and donne: men and women"
	}
	hungarian := heading == "nem" || strings.HasPrefix(heading, "nem ") // "Nem (F/N)"
	if has("f") && !has("mwkhv") && (hungarian || has("n") && l.n['n']*5 >= l.n['f'] && l.n['f']*5 >= l.n['n']) {
		set(M, "f")
		set(W, "n")
		l.why = "F beside N is férfi: a man, and N a woman (nő)"
	}
	if has("v") && has("s") && !has("mwfkh") {
		set(M, "v")
		set(W, "s")
		l.why = "V beside S is vīrietis: a man, and S a woman (sieviete)"
	}
	if has("l") && has("p") && (strings.Contains(heading, "kelamin") || strings.Contains(heading, "jantina") || !has("mwfkhbg")) {
		set(M, "l")
		set(W, "p")
		l.why = "L beside P is laki-laki: a man, and P a woman (perempuan)"
	}
	if has("v") && heading == "lytis" {
		set(M, "v")
		set(W, "m")
		l.why = "V beside M is vyras: a man, and M a woman (moteris)"
	}
	switch {
	case has("d") && has("h"):
		set(W, "d")
		l.why = "H and D are men and women (herrar, damer; Herren, Damen)"
	case has("d") && has("m") && has("wf"):
		set(X, "d")
		l.why = "D beside M and W is divers: X"
	case has("d"):
		set(W, "d")
	}
	switch {
	case has("v") && has("m") && iberian:
		set(M, "v")
		set(W, "m")
		l.why = "V beside M under a Spanish heading is varón: a man, and M a woman"
	case has("v") && has("m") && !has("fw") && heading != "lytis":
		set(W, "v")
		l.why = "V beside M is vrouw: a woman"
	case has("v") && has("h"):
		set(W, "v")
	case has("v") && (heading == "lytis" || has("s") && l.is['s'] == W):
	case has("v"):
		l.ask, l.choices = 'v', "M or W"
	}
	switch {
	case has("n") && l.is['f'] == M:
	case has("n") && has("fwkv"):
		set(X, "n")
		l.why = "N beside two other letters is non-binary: X"
	case has("n") && has("m") && l.n['n']*10 >= l.n['m']:
		set(W, "n")
		l.why = "N beside M is nainen: a woman"
	case has("n"):
		set(X, "n")
	}
	switch {
	case has("g") && has("f") && !has("bm"):
		set(M, "g")
		l.why = "G beside F is garçon: a boy"
	case has("g") && has("l") && !has("bf"):
		set(M, "g")
		l.why = "G beside L is a gentleman, and L a lady"
	case has("k") && has("gj") && !has("fwdh"):
		set(M, "g")
		set(W, "j")
		l.why = "G and J beside K are gutter and jenter: boys and girls"
	case has("j") && has("g"):
		set(W, "j")
		set(M, "g")
		l.why = "J and G are jenter and gutter: girls and boys"
	case has("g") && l.titles:
		set(M, "g")
		l.why = "G. beside other titles is gospod: a man"
	case has("g"):
		set(W, "g")
	}
	if l.titles && has("p") {
		set(M, "p")
		l.why = "P. beside other titles is pan: a man"
	}
	if l.dona && has("d") {
		set(M, "d")
		l.why = "D. beside Dña. is don: a man"
	}
	if has("j") && has("m") && !has("fwkv") {
		set(M, "j")
		set(W, "m")
		l.why = "J and M are Jungen and Mädchen: boys and girls"
	}
	if has("d") && has("m") && heading == welshSex {
		set(M, "d")
		set(W, "m")
		l.why = "D and M under a Welsh heading are dynion and merched: men and women"
	}
	if has("g") && has("b") && heading == welshSex {
		set(M, "g")
		set(W, "b")
		l.why = "G and B under a Welsh heading are gwryw and benyw: men and women"
	}
	if has("f") && has("b") && (heading == "gneas" || heading == "inscne") {
		set(M, "f")
		set(W, "b")
		l.why = "F and B under an Irish heading are fear and bean: men and women"
	}
	if has("t") && has("n") && l.is['n'] == W {
		set(W, "t")
		l.why = "T beside N is tytöt: girls"
	}
	if has("p") && has("ft") {
		set(M, "p")
		set(W, "t")
		l.why = "P beside F or T is a boy (pojke, poika)"
	}
	for _, pair := range childPairs {
		if (pair.heading == "" || pair.heading == heading) && l.only(pair.boys, pair.girls) {
			l.is[pair.boys], l.is[pair.girls], l.why, l.ask = M, W, pair.why, 0
		}
	}
	for ch := byte('0'); ch <= 'z'; ch++ {
		if l.n[ch] == 0 {
			continue
		}
		switch answers["sex "+strings.ToUpper(string(ch))] {
		case "M":
			l.is[ch] = M
		case "W":
			l.is[ch] = W
		case "X":
			l.is[ch] = X
		case NotGivenAnswer:
			l.is[ch] = NotGiven
		default:
			continue
		}
		l.why = "as answered"
		if l.ask == ch {
			l.ask = 0
		}
	}
}

// childPairs are the two letters of boys and girls that mean something else beside other letters,
// some only under a heading of their language.
var childPairs = []struct {
	boys, girls  byte
	heading, why string
}{
	{'d', 'p', "", "D and P are drenge and piger: boys and girls"},
	{'f', 'l', "", "F and L are fiúk and lányok: boys and girls"},
	{'f', 'd', "spol", "F and D under this heading are fantje and dekleta: boys and girls"},
	{'b', 'm', "lytis", "B and M under this heading are berniukai and mergaitės: boys and girls"},
	{'z', 'm', "dzimums", "Z and M under this heading are zēni and meitenes: boys and girls"},
}

// only says whether both of two letters stand in the column and no other does.
func (l *letters) only(a, b byte) bool {
	for ch := byte('a'); ch <= 'z'; ch++ {
		if (l.n[ch] > 0) != (ch == a || ch == b) {
			return false
		}
	}
	return true
}

// sex turns a mark into a sex.
func (l *letters) sex(m sexMark) Sex {
	switch {
	case m == sureM:
		return M
	case m == sureW:
		return W
	case m == sureX:
		return X
	case m == msMark && l.titles:
		return W
	case m == msMark:
		return M
	case m.open():
		return l.is[m]
	}
	return NotGiven
}

// known says whether the mark is one that the column explains.
func (l *letters) known(m sexMark) bool {
	return !m.open() || l.is[m] != NotGiven || m == 'u' || m == '0' && l.is['1'] != NotGiven || m == '9'
}

// describe lists the letters and what they mean.
func (l *letters) describe() string {
	var parts []string
	for ch := byte('0'); ch <= 'z'; ch++ {
		if l.n[ch] == 0 {
			continue
		}
		means := map[Sex]string{NotGiven: "not given", M: "man", W: "woman", X: "neither (X)"}[l.is[ch]]
		parts = append(parts, fmt.Sprintf("%s = %s (%d)", strings.ToUpper(string(ch)), means, l.n[ch]))
	}
	return strings.Join(parts, ", ")
}

// apostrophes takes what men's and women's are written with away.
var apostrophes = strings.NewReplacer("'", "", "`", "", "´", "")
