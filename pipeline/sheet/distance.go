package sheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Metres in a unit of distance; the mile is the international mile (1959
// agreement), 1609.344 m.
var distanceUnits = map[string]float64{
	"k": 1000, "km": 1000, "kms": 1000, "kilometre": 1000, "kilometres": 1000, "kilometer": 1000, "kilometers": 1000, "kilometros": 1000, "chilometri": 1000,
	"kilometrow": 1000, "kilometri": 1000, "kilometru": 1000, "kilometria": 1000, "kilometara": 1000, "mile": 1609.344, "miles": 1609.344, "mi": 1609.344, "meilen": 1609.344, "m": 1, "metres": 1, "meters": 1, "meter": 1, "metros": 1, "metri": 1,
	"км": 1000, "километра": 1000, "километров": 1000, "χλμ": 1000, "χιλιόμετρα": 1000, "公里": 1000, "キロ": 1000, "كم": 1000, "กม": 1000, "किमी": 1000, "м": 1, "קמ": 1000, "קילומטר": 1000, "קילומטרים": 1000,
}

// inMiles are distances in kilometres, and parts of a marathon, as people give them in miles. Common practice, no source.
var inMiles = map[float64]float64{3.1: 5000, 6.2: 10000, 9.3: 15000, 13.1: 21097.5, 26.2: 42195}

// findDistance finds a distance such as "5 km", "5k", "3,1 miles", "5000 m" or "five kilometres".
func findDistance(s string) (metres float64, from, to int, ok bool) {
	toks := tokenize(s)
	for i := 0; i < len(toks); i++ {
		if n := numeralWords[toks[i].word]; n >= 1 && toks[i].kind == 'l' && i+2 < len(toks) && (toks[i+1].kind == 's' || toks[i+1].kind == '-') {
			if unit := toks[i+2]; unit.kind == 'l' && distanceUnits[unit.word] == 1000 && len(unit.word) > 3 {
				return n * 1000, toks[i].from, unit.to, true // "five kilometres"
			}
		}
		if toks[i].kind != 'd' || toks[i].digits() > 6 || endsDate(toks, i) {
			continue
		}
		if toks[i].n == 25 && i > 0 && toks[i-1].word == "c" && toks[i-1].to == toks[i].from {
			continue // C25K: from the couch to 5 km
		}
		j := i + 1
		if j+1 < len(toks) && (toks[j].kind == '.' || toks[j].kind == ',') && toks[j+1].kind == 'd' && toks[j+1].from == toks[j].to {
			j += 2
		}
		end := j
		if j < len(toks) && (toks[j].kind == 's' || toks[j].kind == '-') {
			j++
		}
		if j >= len(toks) || toks[j].kind != 'l' {
			continue
		}
		unit, known := distanceUnits[toks[j].word]
		to := toks[j].to
		if !known {
			unit, to, known = unitBeforeIdeograph(s, toks[j].from)
		}
		if !known {
			unit, to, known = unitWithMark(s, toks[j].from)
		}
		v, err := strconv.ParseFloat(strings.Replace(s[toks[i].from:toks[end-1].to], ",", ".", 1), 64)
		if !known || err != nil || isSpeed(toks, j) {
			continue
		}
		m := v * unit
		if named := inMiles[v]; named > 0 && unit > 1600 && unit < 1700 {
			m = named
		}
		if isMilePlace(strings.Fields(s[toks[i].from:])) || isMileSlug(s[toks[i].from:]) {
			continue
		}
		if unit == 1 && len(toks[j].word) == 1 && m > 2000 && m <= lastYear {
			continue // 11-04-2026_M: the men of that day
		}
		if unit == 1 && j > end && m < 800 && !saysRace(s) || m < 400 || m > 100000 {
			continue // 600 m may be a climb, or a way to walk
		}
		return m, toks[i].from, to, true
	}
	return 0, 0, 0, false
}

// unitWithMark is the unit whose short form in Hebrew has the mark of one, or a quotation mark, before its last letter.
func unitWithMark(s string, from int) (metres float64, to int, ok bool) {
	for _, unit := range [...]string{"ק\"מ", "ק״מ", "ק''מ", "ק”מ", "ק“מ"} {
		if strings.HasPrefix(s[from:], unit) {
			return 1000, from + len(unit), true
		}
	}
	return 0, from, false
}

// unitBeforeIdeograph is a unit of distance that is written in one with what follows: 5km記録会, 5キロ走.
func unitBeforeIdeograph(s string, from int) (metres float64, to int, ok bool) {
	for _, unit := range [...]string{"km", "キロ", "公里", "千米"} {
		if rest, found := strings.CutPrefix(s[from:], unit); found {
			r, _ := utf8.DecodeRuneInString(rest)
			return 1000, from + len(unit), unicode.In(r, unicode.Han, unicode.Katakana, unicode.Hiragana, unicode.Hangul)
		}
	}
	return 0, from, false
}

// isMileSlug is isMilePlace for the short form of a name: 5-mile-wood.
func isMileSlug(s string) bool {
	words := strings.SplitN(s, "-", 4)
	return len(words) > 2 && words[1] == "mile" && words[2] != "road" && landWords[words[2]]
}

// isSpeed says whether a unit of distance goes on to be one of speed: the wind was 12 km/h.
func isSpeed(toks []token, unit int) bool {
	return unit+2 < len(toks) && toks[unit+1].kind == '/' && toks[unit+2].kind == 'l' && hourWords[toks[unit+2].word]
}

// hourWords are how an hour or a second is written behind a stroke, in several languages.
// Common practice, no source.
var hourWords = set("h hr hour std stunde stunden u uur t tim timme time timer heure hora ora godz s sec sek")

// endsDate says whether a number is the last of a date in figures: the 21 of 2026-11-21.
func endsDate(toks []token, i int) bool {
	if i < 4 || toks[i-2].kind != 'd' || toks[i-4].kind != 'd' {
		return false
	}
	k := toks[i-1].kind
	return k == toks[i-3].kind && (k == '-' || k == '/' || k == '.')
}

// saysRace says whether a line calls a race by whom it is for: "Bambinilauf 600 m", "Tots 500 m".
func saysRace(line string) bool {
	for _, w := range strings.Fields(fold(line)) {
		if fieldWords[w] || strings.HasSuffix(w, "lauf") || w == "race" || w == "run" {
			return true
		}
	}
	return false
}

// The marathon and its half, in metres (World Athletics, Competition Rules, road races).
const (
	marathon     = 42195
	halfMarathon = 21098
)

// Words for a half and a whole in front of "marathon", and for both in one, in several
// languages. Common practice, no source.
var (
	halfWords      = set("half halb halber halve halva halv media medio mezza meia demi semi pol pul puoli fel")
	wholeWords     = set("full whole ganzer volle hel hela heel complet completa entier")
	marathonWords  = set("marathon marathons maraton maratona maratonas maratonul maratoni")
	halfInOne      = set("halfmarathon halbmarathon halvemarathon halvmaraton halvmarathon mediomaraton mediamaraton mezzamaratona meiamaratona semimarathon demimarathon polmaraton pulmaraton pulmaratonas pusmaratonis poolmaraton puolimaraton felmaraton semimaraton polumaraton")
	marathonInCode = map[string]int{"fm": marathon, "hm": halfMarathon}
)

// MarathonMetres reads the cell of a column of distances that is a marathon or half of
// one, and is 0 where it says anything else.
func MarathonMetres(cell string) (metres int) {
	named := false
	for _, w := range strings.Fields(fold(withoutBrackets(cell))) {
		switch {
		case halfInOne[w], halfWords[w] && metres != marathon:
			metres, named = halfMarathon, named || halfInOne[w]
		case marathonWords[w]:
			named = true
			if metres == 0 {
				metres = marathon
			}
		case wholeWords[w]:
		case marathonInCode[w] > 0 && metres == 0:
			metres, named = marathonInCode[w], true
		default:
			return 0
		}
	}
	if !named {
		return 0
	}
	return metres
}

// numeralWords before a unit say how many of it a race is over.
var numeralWords = map[string]float64{"half": .5, "quarter": .25, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "funf": 5, "cinq": 5, "cinco": 5, "cinque": 5, "vijf": 5, "fem": 5, "piec": 5, "pet": 5, "viisi": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twelve": 12, "fifteen": 15, "twenty": 20}

// wordsOfDistance finds a distance that a line writes in words: "half marathon", "ten
// miles", and a mile where it says no number. counted says that a number stands before the
// unit. metres is 0 where the line has none.
func wordsOfDistance(line string) (metres int, counted bool) {
	written := strings.Fields(line)
	for i := range written {
		if isMilePlace(written[i:]) {
			return 0, false
		}
	}
	words := strings.Fields(fold(line))
	at := func(i int) string {
		if i < 0 || i >= len(words) {
			return ""
		}
		return words[i]
	}
	for i, w := range words {
		unit := distanceUnits[w]
		switch {
		case halfInOne[w], marathonWords[w] && halfWords[at(i-1)]:
			return halfMarathon, false
		case marathonWords[w] && !clubWords[at(i+1)] && !clubWords[at(i+2)]:
			return marathon, false
		case len(w) > 1 && unit > 1 && numeralWords[at(i-1)] > 0:
			return int(numeralWords[at(i-1)]*unit + .5), true
		case w == "mile":
			return int(unit + .5), false
		}
	}
	if m := placeHalf.FindStringSubmatch(line); m != nil && !partHalves[fold(m[1])] {
		return halfMarathon, false
	}
	return 0, false
}

// placeHalf is a half marathon called by its place alone, "Alder Bank Half", which ends a
// line or what a mark ends; partHalves before the word say that something else was halved.
var (
	placeHalf  = regexp.MustCompile(`(?:^|[^\pL])(\p{Lu}[\pL'’]+) Half(?: (?:19|20)\d\d)?\s*(?:$|[,:;|()–-])`)
	partHalves = set("first second top bottom upper lower other each one the a fastest slowest last next final front back")
)

// distanceOf finds a distance in a text.
func distanceOf(text, from string) Found {
	m, a, b, ok := findDistance(text)
	if !ok {
		return Found{}
	}
	return Found{Value: strconv.Itoa(int(m + .5)), Text: text[a:b], From: from, Why: fmt.Sprintf("%s is %d m", text[a:b], int(m+.5))}
}
