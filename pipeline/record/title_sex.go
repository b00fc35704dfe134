package record

import (
	"bytes"
	"strings"
)

// nameTitles counts titles of address before the names, "Mrs Ann Page", "Herr Jo Lee", which
// say the sex where most names have one and both sexes do.
type nameTitles struct {
	names, men, women int
	letters           map[string]int // of one letter, "M. Luc Roy" beside Mme, which the others explain
	letterIs          Sex
}

// menTitles and womenTitles are titles of address, folded and without the point behind them;
// letterTitles are such of one letter (common practice in some twenty languages, no source).
var (
	menTitles    = wordSet("mr|master|herra|sir|don|dom|signori|caballero|mister|herr|hr|dhr|de heer|monsieur|sig|signor|signore|senor|senhor|sr|pan|hra|gosp|gospod|gospodin|g-din|dl|domnul|dnul|kos|κος|κ|κυριος|господин|г-н|гн|пан|bay|ponas|kungs|k-gs|ur|mnr|y br|ht|harra")
	womenTitles  = wordSet("mrs|lady|dona|madam|ms|miss|frau|fr|mme|mlle|madame|mademoiselle|mevr|mevrouw|mw|fru|frk|froken|signora|signorina|sig.ra|sig.na|sigra|senora|senhora|senorita|sra|srta|d.na|dna|pani|slecna|slecny|sl|pi|rva|nti|rouva|neiti|gdja|gda|gospa|gospoda|gospodja|gospodica|ga|gdc|d-na|doamna|κα|κυρια|госпожа|г-жа|гжа|пани|пані|bayan|ponia|kundze|k-dze|asszony|y fns|prl|pr|proua")
	letterTitles = wordSet("m|p|g|d")
)

// titleWord is the title before the name, folded, "" where the first word can be none, and
// where the name goes on.
func titleWord(s string) (word string, rest int) {
	i := strings.IndexByte(s, ' ')
	if i < 2 || i > 24 || i+1 >= len(s) {
		return "", 0
	}
	return strings.TrimRight(string(fold(nil, s[:i])), "."), i + 1
}

// titleSex is the sex that the first word of a name says by being a title, and where the name
// begins behind it.
func (k *nameTitles) titleSex(s string) (Sex, int) {
	w, rest := titleWord(s)
	switch {
	case w == "":
	case menTitles[w]:
		return M, rest
	case womenTitles[w]:
		return W, rest
	case letterTitles[w] && k.letters[w] > 0:
		return k.letterIs, rest
	}
	return NotGiven, 0
}

// sureTitles are those of them that are no names, and say the sex of one name alone where two words follow.
var sureTitles = wordSet("mr|mrs|miss|ms|mister|frau|herr|mme|mlle|madame|monsieur|mevr|mevrouw|mw|dhr|sra|signora|signor|sig.ra|senora|senhora|srta|fru|frk|dna|bayan|paní|señora|doña|dña|doamna|kundze")

// read is titleSex where titles say the sexes of the list, or where the one of this name is sure.
func (k *nameTitles) read(s string) (Sex, int) {
	if k.said() {
		return k.titleSex(s)
	}
	i := strings.IndexByte(s, ' ')
	var room [12]byte
	if i < 2 || i > len(room) || strings.IndexByte(trim(s[i:]), ' ') < 0 {
		return NotGiven, 0
	}
	for n := range i {
		if room[n] = s[n]; s[n] >= 'A' && s[n] <= 'Z' {
			room[n] |= 0x20
		}
	}
	if !sureTitles[string(bytes.TrimRight(room[:i], "."))] {
		return NotGiven, 0
	}
	return k.titleSex(s)
}

func (k *nameTitles) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	switch w, _ := titleWord(s); {
	case w == "":
	case menTitles[w]:
		k.men++
	case womenTitles[w]:
		k.women++
	case letterTitles[w] && strings.IndexByte(s, '.') == 1:
		if k.letters == nil {
			k.letters = map[string]int{}
		}
		k.letters[w]++
	}
}

// settle takes a title of one letter for a man's beside women's titles, M. beside Mme, p. beside
// paní, and D. for that of the sex which has no other title, Dña. or Sr. Where several letters
// stand there they are initials.
func (k *nameTitles) settle() {
	if len(k.letters) != 1 {
		clear(k.letters)
		return
	}
	for w, n := range k.letters {
		switch {
		case k.women > 0 && (k.men == 0 || w != "d"):
			k.letterIs = M
			k.men += n
		case k.women == 0 && k.men > 0:
			k.letterIs = W
			k.women += n
		default:
			clear(k.letters)
		}
	}
}

// said says whether the names have titles: most where both sexes have some, else nearly all, as
// on a list of men.
func (k *nameTitles) said() bool {
	n := k.men + k.women
	return k.men >= 2 && k.women >= 2 && 10*n >= 7*k.names || n >= 4 && 10*n >= 9*k.names
}

// titleLooks is on how many names titles are looked for where a column says the sex.
const titleLooks = 64
