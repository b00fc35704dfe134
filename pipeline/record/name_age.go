package record

import "strings"

// nameAges counts numbers in brackets behind the names, "Jo Lee (35)": ages,
// years of birth, or the runners' numbers.
type nameAges struct {
	names, numbers int
	years          int // 1900 … 2099
	ages           int // an age that may run
	seen           [oldestAge + 1]int
	repeated       int // numbers that stood there before
	short          int // two figures
	zeros          int // of these with a nought first: 04
	meaning        nameAge

	below    map[string]bool // different second lines of names of two lines
	twoLines int
	full     int // of these, with several words in the first
	clubs    int // and a word for a club in the second
}

type nameAge uint8

const (
	noNameAge nameAge = iota
	nameHasAge
	nameHasYear
	nameHasShortYear // of two figures
)

// bracketNumber is the number in round or square brackets, or behind a comma, at the end of
// a text.
func bracketNumber(s string) (n int, ok bool) {
	if i := strings.LastIndexByte(s, ','); i > 0 && len(s)-i > 2 && len(s)-i <= 6 {
		if t := trim(s[i+1:]); allDigits([]byte(t)) && t != "" {
			return atoi([]byte(t)), true
		}
	}
	if i := strings.LastIndexByte(s, '*'); i > 0 && len(s)-i == 5 && allDigits([]byte(s[i+1:])) { // *1984: born
		return atoi([]byte(s[i+1:])), true
	}
	if i := strings.LastIndexByte(s, ' '); i > 3 && len(s)-i == 5 && allDigits([]byte(s[i+1:])) && endsInBorn(s[:i]) { // Jg. 1984
		return atoi([]byte(s[i+1:])), true
	}
	if len(s) < 5 || s[len(s)-1] != ')' && s[len(s)-1] != ']' {
		return 0, false
	}
	opens := byte('(')
	if s[len(s)-1] == ']' {
		opens = '['
	}
	i := len(s) - 2
	for scale := 1; i > 0 && s[i] >= '0' && s[i] <= '9' && scale <= 1000; i-- {
		n += int(s[i]-'0') * scale
		scale *= 10
	}
	if words := s[:i+1]; i < len(s)-2 && i > 4 && s[i] == ' ' { // (age 45)
		if at := strings.LastIndexByte(words, opens); at > 0 && strings.EqualFold(trim(words[at+1:]), "age") {
			return n, true
		}
	}
	return n, s[i] == opens && i < len(s)-2
}

// withoutFigure takes a year of birth, "Jo Lee b. 1984", or a sex with an age or a group, "Jo Lee
// M40", off a single name of two words and more.
func withoutFigure(s string) string {
	n := len(s)
	if n < 8 || s[n-1] < '0' || s[n-1] > '9' {
		return s
	}
	if i := strings.LastIndexByte(s, ' '); i > 0 && n-i == 5 && allDigits([]byte(s[i+1:])) && endsInBorn(s[:i]) {
		if name := trim(s[:max(0, strings.LastIndexByte(s[:i], ' '))]); strings.IndexByte(name, ' ') > 0 {
			return strings.TrimRight(name, " ,")
		}
	}
	if at, tail, figure := bareGroup(s); at > 0 && figure && s[n-2] >= '0' && s[n-2] <= '9' && strings.IndexByte("MFWV", tail[0]) >= 0 && strings.IndexByte(trim(s[:at]), ' ') > 0 {
		return trim(s[:at])
	}
	return s
}

// endsInBorn says whether a text ends in a word that stands before a year of birth.
func endsInBorn(s string) bool {
	w := strings.TrimRight(s[strings.LastIndexByte(s, ' ')+1:], ".:")
	for _, born := range [...]string{"Jg", "Jahrgang", "geb", "born", "b", "ročník", "rocznik", "ur", "nar", "letnik", "f", "född", "født"} {
		if strings.EqualFold(w, born) {
			return true
		}
	}
	return false
}

func (k *nameAges) observe(s string) {
	if s == "" {
		return
	}
	k.names++
	if i := strings.IndexByte(s, '\n'); i > 0 {
		k.twoLines++
		if strings.IndexByte(trim(s[:i]), ' ') > 0 {
			k.full++
			if clubWord(s[i+1:]) || clubMark(s[i+1:]) {
				k.clubs++
			}
		}
		if k.below == nil {
			k.below = map[string]bool{}
		}
		if len(k.below) < vocabularyLimit {
			k.below[strings.Clone(trim(s[i+1:]))] = true
		}
	}
	n, ok := bracketNumber(s)
	if !ok {
		return
	}
	k.numbers++
	if len(s) > 4 && (s[len(s)-4] == '(' || s[len(s)-4] == '[' || s[len(s)-4] == ',' && s[len(s)-3] == ' ') {
		k.short++
		if s[len(s)-3] == '0' {
			k.zeros++
		}
	}
	switch {
	case n >= 1900 && n < 2100:
		k.years++
	case n >= youngestAge && n <= oldestAge:
		k.ages++
		if k.seen[n]++; k.seen[n] > 1 {
			k.repeated++
		}
	}
}

// settle takes the numbers for ages where the heading says so, or where nearly
// every name has one and some stand twice, as ages do and runners' numbers don't.
func (k *nameAges) settle(heading string) {
	most := func(n int) bool { return n > 0 && n*10 >= k.names*9 }
	said, year, other := false, false, false
	for _, w := range strings.Fields(heading) {
		said = said || ageHeadings[w]
		other = other || otherFigures[strings.Trim(w, "().,;:/")]
		year = year || yearHeadings[strings.Trim(w, "().,;:/")]
	}
	switch {
	case other && !said && !year:
	case k.short*10 >= k.numbers*9 && k.short > 0 && (year || k.zeros > 0 && most(k.numbers) && !said):
		k.meaning = nameHasShortYear
	case most(k.years) && k.numbers >= 4:
		k.meaning = nameHasYear
	case said && k.ages*10 >= k.numbers*9 && k.ages > 0, most(k.ages) && k.names >= 8 && k.repeated >= 2,
		most(k.ages) && k.ages == k.numbers && k.names >= 12 && k.repeated > 0, // a runner's number stands twice by a slip at most
		most(k.ages) && k.short == k.names && k.zeros == 0 && k.names >= 5 && k.spread() >= leastSpread:
		k.meaning = nameHasAge
	}
}

// otherFigures are words of a heading for what else the figures behind names are: "Name (runs)".
var otherFigures = wordSet(`runs|run|races|no|nr|num|number|numbers|bib|bibs|start|starts|startnummer|dossard|dorsal|pettorale|points|pts|punkte|total|count|laufe|wins|weeks|place|pos|rank|antal`)

// leastSpread is how many years lie at least between the oldest and the youngest of a few, where
// all have two figures behind their names.
const leastSpread = 20

// spread is the difference between the highest and the lowest age.
func (k *nameAges) spread() int {
	low, high := 0, 0
	for n, times := range k.seen {
		if times > 0 {
			if low == 0 {
				low = n
			}
			high = n
		}
	}
	return high - low
}

// yearHeadings are words of a heading for the year of birth.
var yearHeadings = wordSet(`yob|born|year|jg|jahrgang|jahrg|geb|geburtsjahr|ne|nee|annee|an|anno|nato|nascita|ano|nac|nasc|rok|rocnik|rocznik|ur|fodt|fodd|fodselsar|argang|synt|szul|ev|letnik|godiste|geboren|geboortejaar|gim|dz|г.р|гр|год|рік`)

var ageHeadings = wordSet(`age|(age|age)|(age)|alter|(alter)|edad|(edad)|eta|(eta)|leeftijd|(leeftijd)|idade|(idade)|alder|(alder)|wiek|(wiek)|vek|(vek)`)

// clubBelow says whether half the names or more stand over a second line that is the
// same for several, as clubs are, or has words for clubs below names of several words.
func (k *nameAges) clubBelow() bool {
	if k.twoLines < 4 || 2*k.twoLines < k.names {
		return false
	}
	return 3*len(k.below) <= 2*k.twoLines || 10*k.full >= 9*k.twoLines && 4*k.clubs >= k.twoLines
}

// saysClub says whether the heading of a column of names, "Runner (club)", announces
// a club as well.
func saysClub(heading string) bool {
	for _, w := range strings.Fields(heading) {
		if clubHeadings[strings.Trim(w, "()[]")] {
			return true
		}
	}
	return false
}

// bracketText is the text in brackets at the end of a text, "" where there is none
// or it is a number.
func bracketText(s string) string {
	if _, number := bracketNumber(s); number || !strings.HasSuffix(s, ")") {
		return ""
	}
	return endBrackets(s)
}

// endBrackets is the text in round or square brackets at the end of a name, "" where
// there is none or no name before it.
func endBrackets(s string) string {
	n := len(s)
	if n < 4 || s[n-1] != ')' && s[n-1] != ']' {
		return ""
	}
	if i := strings.LastIndexAny(s, "(["); i > 0 {
		return trim(s[i+1 : n-1])
	}
	return ""
}

var clubHeadings = wordSet("club|team|verein|mannschaft|equipe|societa|squadra|vereniging|ploeg|klub|clube|klubb|forening")
