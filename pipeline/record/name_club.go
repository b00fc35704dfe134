package record

import "strings"

// clubMarks part names from clubs behind them. A comma parts names of their own as well.
var clubMarks = [...]string{",", " - ", " – ", " / ", " | "}

// bracketMark is the mark of clubs in brackets.
const bracketMark = "("

// nameClubs counts what stands behind a comma, or another mark, in a column of names. As a rule that is
// the given name, "Lee, Jo"; on some lists it is the club, "Jo Lee, Riverside AC".
type nameClubs struct {
	mark   string
	names  int
	bare   map[string]bool // first words of names of several words without a comma
	bares  int
	commas int
	full   int // of these, with several words before it
	marked int // and behind it a word in capitals, as clubs have them
	clubs  int // or a word for a club
	behind map[string]bool
}

func (k *nameClubs) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	before, after, comma := strings.Cut(s, k.mark)
	if strings.Contains(after, k.mark) || !comma && k.mark != "," {
		return
	}
	several := strings.IndexByte(trim(before), ' ') > 0
	if after = trim(after); k.mark == bracketMark {
		if after = strings.TrimRight(after, " )"); hasDigit(after) {
			return // a best, how often somebody has run
		}
	}
	switch {
	case !comma && several:
		if k.bares++; len(k.bare) < vocabularyLimit {
			if k.bare == nil {
				k.bare = map[string]bool{}
			}
			k.bare[strings.Clone(s[:strings.IndexByte(s, ' ')])] = true
		}
	case comma && after != "":
		k.commas++
		if !several {
			return
		}
		k.full++
		if k.behind == nil {
			k.behind = map[string]bool{}
		}
		if len(k.behind) < vocabularyLimit && !k.behind[after] {
			k.behind[strings.Clone(after)] = true
		}
		mixed, word := before != strings.ToUpper(before), clubWord(after)
		short := mixed && clubMark(after) && (k.mark != bracketMark || strings.IndexByte(after, ' ') > 0) // (GBR), (PB)
		if short || k.mark != "," && word {
			k.marked++
		}
		if short || mixed && word {
			k.clubs++
		}
	}
}

// clubWord says whether a text has a word that clubs are called by.
func clubWord(s string) bool {
	for w := range strings.FieldsSeq(s) {
		if clubNames[strings.ToLower(w)] {
			return true
		}
	}
	return false
}

var clubNames = wordSet("harriers|runners|striders|joggers|athletics|athletic|club|triathlon|running|verein|laufverein|lauftreff|sportverein|atletica|atletico|podistica|athle|athlétisme|atletiek|loopgroep|sportclub|löpare|löparklubb|idrettslag|klub|oddíl|sokol|team|university|school")

// clubMark says whether a text has a word of two to four capitals.
func clubMark(s string) bool {
	for w := range strings.FieldsSeq(strings.TrimRight(s, ")]")) { // not the end of "(39, F)"
		if n := len(w); n >= 2 && n <= 4 && w == strings.ToUpper(w) && w != strings.ToLower(w) && !strings.Contains(w, ".") {
			return true
		}
	}
	return false
}

// said says whether clubs stand behind the commas: nearly all names are full before
// them, what follows repeats, and it has capitals as clubs have, or some have none and
// what follows is no given name of theirs, or the heading announces a club. Two family
// names may stand before a given one.
func (k *nameClubs) said(heading bool) bool {
	if k.mark != "," { // no name has such a mark inside, but a note may stand behind it
		return k.full >= 4 && 10*k.full >= 9*k.commas && 2*k.full >= k.names && (heading || 2*k.marked >= k.full || 2*len(k.behind) <= k.full && 5*k.marked >= k.full)
	}
	if k.commas < 4 || 10*k.full < 9*k.commas {
		return false
	}
	if k.clubs*2 >= k.full {
		return true // half of them have a word for a club, or are in short
	}
	if 3*len(k.behind) > 2*k.full+2 {
		return false
	}
	if heading || 5*k.marked >= k.full {
		return true
	}
	for b := range k.behind {
		if given, _, _ := strings.Cut(b, " "); k.bare[given] {
			return false
		}
	}
	return 10*k.bares >= k.commas && 2*len(k.behind) <= k.full
}

// clubBehind is where the club begins that stands behind one name of a column, after a comma or
// a spaced dash, "Jo Lee, Mill AC", "Jo Lee - Fell Harriers": several words, of which the last
// is one for a club, behind a name of several. 0 where there is none.
func clubBehind(s string) (at int, club string) {
	at = strings.LastIndexByte(s, ',')
	from := at + 1
	for _, dash := range [...]string{" - ", " – "} {
		if i := strings.LastIndex(s, dash); i > at {
			at, from = i, i+len(dash)
		}
	}
	if at <= 0 {
		return 0, ""
	}
	before, club := trim(s[:at]), trim(s[from:])
	last := strings.ToLower(club[strings.LastIndexByte(club, ' ')+1:])
	if strings.IndexByte(before, ' ') < 0 || strings.IndexByte(club, ' ') < 0 || strings.IndexByte(before, ',') >= 0 || !clubEnds[last] {
		return 0, ""
	}
	return at, club
}

// clubEnds are last words of the names of clubs. Common practice, no source.
var clubEnds = wordSet("ac|rc|tc|acs|harriers|runners|striders|joggers|athletics|athletic|club|tri|triathlon|roadrunners|verein|laufverein|lauftreff|athletisme")
