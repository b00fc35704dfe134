package sheet

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// codePage is a way to write characters in one byte each.
type codePage struct {
	name  string
	table [256]rune
	texts []alphabet
	own   bool // its letters are of another script and never stand in one word with ASCII letters
}

// alphabet is what a language writes beyond ASCII, in small letters, with words
// that stand on its result sheets and are ASCII themselves.
type alphabet struct{ letters, words string }

// The letters are those of Unicode CLDR's exemplar sets (from memory), the words
// common practice on result sheets.
var (
	english    = alphabet{"éèëï", "name time position place club age category"}
	german     = alphabet{"äöüß", "platz name verein zeit alter jahrgang startnr"}
	french     = alphabet{"éèêëàâçîïôûùüœæÿ", "temps nom club sexe classement dossard rang"}
	spanish    = alphabet{"áéíóúñüºª¡¿", "puesto nombre apellidos sexo edad tiempo dorsal"}
	italian    = alphabet{"àèéìòù", "pos cognome nome tempo anno atleta sesso"}
	portuguese = alphabet{"áâãàçéêíóôõúºª", "nome tempo equipa sexo idade dorsal class"}
	nordic     = alphabet{"åäöæøéü", "navn namn tid klubb klub plass plac plads alder klasse klass forening sluttid kvinder kvinner herrer herrar damer resultat resultater efternavn etternavn efternamn placering"}
	finnish    = alphabet{"äöåšžé", "sija nimi seura aika tulos sarja"}
	icelandic  = alphabet{"áðéíóúýþæö", "nafn kyn aldur flokkur"}
	dutch      = alphabet{"éëïöüèêóá", "plaats naam tijd vereniging leeftijd uitslag"}
	estonian   = alphabet{"äöõüšž", "koht nimi aeg klubi sugu vanus"}
	polish     = alphabet{"ąćęłńóśźż", "miejsce nazwisko czas klub wiek kategoria uwagi wyniki"}
	czech      = alphabet{"áčďéěíňóřšťúůýž", "oddil klub kat"}
	slovak     = alphabet{"áäčďéíĺľňóôŕšťúýž", "meno priezvisko klub oddiel vek"}
	slovene    = alphabet{"čšžćđ", "mesto ime priimek klub spol letnik mjesto prezime vrijeme staza dob"}
	hungarian  = alphabet{"áéíóöőúüű", "nem klub kor"}
	romanian   = alphabet{"ăâîșțşţ", "loc nume prenume timp club sex"}
	turkish    = alphabet{"çğıiöşüâî", "ad soyad cinsiyet tarih kategori sira"}
	latvian    = alphabet{"āčēģīķļņšūžõ", "vieta laiks klubs dzimums vecums numurs grupa"}
	lithuanian = alphabet{"ąčęėįšųūž", "vieta laikas klubas lytis vardas amzius"}
	cyrillic   = alphabet{letters: "абвгдеёжзийклмнопрстуфхцчшщъыьэюяіїєґјљњћђџў"}
	greek      = alphabet{letters: "αβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐΰ"}
	western    = []alphabet{english, german, french, spanish, italian, portuguese, nordic, finnish, icelandic, dutch, estonian}
	central    = []alphabet{polish, czech, slovak, slovene, hungarian, romanian, german}
)

// codePages lists what text sheets are written in that are no Unicode: the code
// pages of Windows, those of DOS that older timing programs write, of the old
// Mac, and ISO 8859. Windows-1252 comes first and is kept unless another fits
// better. Tables: WHATWG Encoding Standard and the library's.
var codePages = []*codePage{
	page("Windows-1252", charmap.Windows1252, false, western...),
	page("Windows-1250", charmap.Windows1250, false, central...),
	page("ISO 8859-2", charmap.ISO8859_2, false, central...),
	page("Windows-1251", charmap.Windows1251, true, cyrillic),
	page("KOI8-R", charmap.KOI8R, true, cyrillic),
	page("code page 866", charmap.CodePage866, true, cyrillic),
	page("Windows-1253", charmap.Windows1253, true, greek),
	page("ISO 8859-7", charmap.ISO8859_7, true, greek),
	page("Windows-1254", charmap.Windows1254, false, turkish),
	page("Windows-1257", charmap.Windows1257, false, latvian, lithuanian, estonian),
	page("Mac Roman", charmap.Macintosh, false, western...),
	page("code page 850", charmap.CodePage850, false, western...),
	page("code page 852", charmap.CodePage852, false, central...),
}

func page(name string, cm *charmap.Charmap, own bool, texts ...alphabet) *codePage {
	p := &codePage{name: name, own: own, texts: texts}
	for b := range p.table {
		if p.table[b] = cm.DecodeByte(byte(b)); p.table[b] == utf8.RuneError {
			p.table[b] = rune(b) // a control character, as WHATWG has it for Windows-1252
		}
	}
	return p
}

func pageNamed(name string) *codePage {
	for _, p := range codePages {
		if p.name == name {
			return p
		}
	}
	return nil
}

// append adds b, decoded, to out.
func (p *codePage) append(out, b []byte) []byte {
	for _, c := range b {
		if c < utf8.RuneSelf {
			out = append(out, c)
		} else {
			out = utf8.AppendRune(out, p.table[c])
		}
	}
	return out
}

// bytes is the way back; ok is false where a character is not of the page, and
// r is that character.
func (p *codePage) bytes(text []byte) (out []byte, r rune, ok bool) {
	of := map[rune]byte{}
	for b := 0xFF; b >= 0x80; b-- {
		of[p.table[b]] = byte(b)
	}
	out = make([]byte, 0, len(text))
	for _, r := range string(text) {
		b, known := of[r]
		switch {
		case r < utf8.RuneSelf:
			out = append(out, byte(r))
		case known:
			out = append(out, b)
		default:
			return nil, r, false
		}
	}
	return out, 0, true
}

// pageSample is how many bytes of lines with more than ASCII a code page is
// told from.
const pageSample = 64 << 10

// guessPage finds the code page in which a text, or the lines of it that are no
// UTF-8, reads best: its letters are those of one language, none is a sign or a
// capital in the middle of a word, and its ASCII words are that language's.
func guessPage(text []byte) *codePage {
	sample := make([]byte, 0, min(len(text), pageSample))
	for rest := text; len(rest) > 0 && len(sample) < pageSample; {
		n := bytes.IndexAny(rest, "\r\n") + 1
		if n == 0 {
			n = min(len(rest), pageSample)
		}
		if !utf8.Valid(rest[:n]) {
			sample = append(sample, rest[:min(n, pageSample)]...)
		}
		rest = rest[n:]
	}
	head := bytes.ToLower(text[:min(len(text), 4096)])
	words := map[string]bool{}
	for _, w := range bytes.FieldsFunc(head, func(r rune) bool { return r < 'a' || r > 'z' }) {
		words[string(w)] = true
	}
	best, most := codePages[0], 0
	for i, p := range codePages {
		score, letters := p.score(sample, words)
		if i > 0 && letters <= 0 {
			continue
		}
		if i == 0 || score >= most+pageMargin && score > most || best != codePages[0] && score > most {
			best, most = p, score
		}
	}
	return best
}

// pageMargin is by how much another code page must fit better than
// Windows-1252, in letters.
const pageMargin = 2

// writes says whether one of the languages of the page has the letter.
func (p *codePage) writes(r rune) bool {
	for _, a := range p.texts {
		if strings.ContainsRune(a.letters, r) {
			return true
		}
	}
	return false
}

// score says how well the lines read in the page, in letters, and how many more
// letters within words are the language's than not.
func (p *codePage) score(sample []byte, words map[string]bool) (score, own int) {
	common := 0
	letters := map[rune]int{}
	class := func(i int) (ascii, letter, small bool) {
		if i < 0 || i >= len(sample) {
			return false, false, false
		}
		c := sample[i]
		if c < utf8.RuneSelf {
			small = c >= 'a' && c <= 'z'
			letter = small || c >= 'A' && c <= 'Z'
			return letter, letter, small
		}
		r := p.table[c]
		return false, unicode.IsLetter(r), unicode.IsLower(r)
	}
	for i, c := range sample {
		if c < utf8.RuneSelf {
			continue
		}
		r := p.table[c]
		asciiB, letterB, smallB := class(i - 1)
		asciiA, letterA, _ := class(i + 1)
		switch {
		case unicode.IsLetter(r) && r != 'º' && r != 'ª':
			if letterB || letterA {
				letters[unicode.ToLower(r)]++
			} else {
				common -= 2
			}
			if unicode.IsUpper(r) && smallB {
				common -= 2
			}
			if unicode.IsLower(r) && smallB && i+1 < len(sample) && sample[i+1] >= 'A' && sample[i+1] <= 'Z' {
				common -= 3 // JoáLee
			}
			if p.own && (asciiA || asciiB) {
				common -= 3
			}
		case r == '’' && letterB && letterA:
			common++
		case r < 0xA0:
			common -= 3 // a control character
		case r == '\u00a0' && letterB && letterA && i+1 < len(sample) && sample[i+1] >= 'A' && sample[i+1] <= 'Z':
			// a space that does not break, between two words
		case letterB && letterA, letterB && r != '’' && r != '”' && r != '…' && r != '\u00a0' && r != '®' && r != '™' && r != '–' && r != 'º' && r != 'ª' && r != '°' && r != '»', letterA && !strings.ContainsRune("“„‘«¡¿–\u00a0•·’№§©ºª", r):
			common -= 2
		}
	}
	best := -1 << 30
	for _, a := range p.texts {
		hits := 0
		for _, w := range strings.Fields(a.words) {
			if words[w] {
				hits++
			}
		}
		inWords := 0
		for r, n := range letters {
			if strings.ContainsRune(a.letters, r) {
				inWords += n
			} else if hits < 2 || !p.writes(r) {
				inWords -= n // else a guest from a country near by, where the headings show the language
			}
		}
		fit := inWords + 2*hits
		if fit > best {
			best, own = fit, inWords
		}
	}
	return best + common, own
}
