package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// typed is a line in which the parts of a result stand one behind the other, in
// whatever order: "18:20 – Jo Lee (W40, Vale AC)", "No. 3 Jo Lee 18 min 20 sec".
type typed struct {
	place, number, group, name, club, time, rest string
	inBracket                                    bool // the place stands in brackets
	dashed                                       bool // the time has a dash, as ages and groups may have
	behindComma                                  bool // the club stood behind a comma
}

// spelledClock is a running time in a line of text, also in words; dashedClock is one with
// a dash or a comma, as ages and groups may have as well.
var spelledClock = regexp.MustCompile(`(?i)(?:^|[\s(,;–—-])(` +
	`\d{1,3}(?:[:.'’]\d{2}){1,2}(?:[.,]\d{1,3})?(?:["”″]|''|’’)?` +
	`|\d{1,2} ?h ?[0-5]?\d['’:][0-5]\d["”]?` +
	`|\d{1,2} ?h(?:(?:ou)?rs?)?[., ]{0,2}\d{1,2} ?m(?:ins?|inutes?)?(?:[., ]{0,2}\d{1,2} ?(?:s(?:ec(?:ond)?s?)?\.?)?)?` +
	`|\d{1,3} ?m(?:n|in(?:ut(?:en|es|os|er|y|i|e)?)?s?)?(?:[., ]{0,2}| (?:and|und|et|y|e|en|i|och|og|a) )\d{1,2} ?(?:s(?:e[ckg](?:ond[aei]?s?|onden|unde?n?|under|undy|undos?)?s?)?\.?)?)(?:$|[\s),;–—.-])`)

var dashedClock = regexp.MustCompile(`(?:^|\s)(\d{1,2}[-,][0-5]\d)(?:$|\s)`)

var figuresComma = regexp.MustCompile(`\d,\d`)

// dashes makes the mark between minutes and seconds a colon.
var dashes = strings.NewReplacer("-", ":", ",", ":")

var (
	leadingPlace  = regexp.MustCompile(`(?i)^(?:(?:no\.?|nr\.?|pos\.?|position|place|p|#|\() ?)?(\d{1,4})(?: ?[.):=/]+| ?[–-](?: |$)|st|nd|rd|th|er|re|e|º|ª|°)?(?: |$)`)
	leadingNumber = regexp.MustCompile(`^[#(]?(\d{1,5})\)? `)
	trailingPlace = regexp.MustCompile(`^\((\d{1,4})\)$`)
	inBracket     = regexp.MustCompile(`[(\[]([^()\[\]]{1,60})[)\]]`)
	nameGroupClub = regexp.MustCompile(`^(\pL[^()]*) \(([^()]{1,12})\) (\pL[^()]*)$`) // Jo Lee (M) Vale AC
	edgeMarks     = " ,;:–—-|/•*·"
)

// typedLines cuts lines of text by what their parts are, where nearly all lines with a
// time have the same parts. nil where they have not, where places do not count up, and
// where it can't be told how far a name goes.
func typedLines(lines []string, delim byte) []string {
	cuts := make([]*typed, len(lines))
	texts := make([]string, len(lines)) // name and what follows it
	timed, dashed, matched, placed, marks, first := 0, 0, 0, 0, 0, -1
	var told []int // lines that tell a time in a sentence, without a place in front
	for i, received := range lines {
		l := strings.Join(strings.Fields(strings.ReplaceAll(received, "\u00A0", " ")), " ")
		if len(l) > 200 || !strings.ContainsAny(l, "0123456789") || mayTell(l) && correctsTime(l) {
			continue
		}
		c, text := typedLine(l)
		if c == nil || text == "" && isDate(l) {
			continue
		}
		if c.place == "" && first >= 0 && givesOtherTime.MatchString(l) && correctsTime(l) {
			continue // "Sorry, Jo was 18:31"
		}
		if timed++; c.dashed {
			dashed++
		}
		if c.place == "" && tellsMuch(l) {
			told = append(told, i)
		}
		if text == "" {
			continue
		}
		if delim != ' ' && dividesLine(figuresComma.ReplaceAllString(inBracket.ReplaceAllString(received, ""), ""), delim) {
			marks++
		}
		if first < 0 {
			first = i
		}
		cuts[i], texts[i] = c, text
		if matched++; c.place != "" {
			placed++
		}
	}
	if whole := timed - dashed; whole > dashed { // what is dashed in the others is a group of ages
		for i, c := range cuts {
			if c != nil && c.dashed {
				if matched--; c.place != "" {
					placed--
				}
				cuts[i] = nil
			}
		}
		timed = whole
		first = slices.IndexFunc(cuts, func(c *typed) bool { return c != nil })
	}
	if placed > len(told) { // they are about the list
		for _, i := range told {
			if timed--; cuts[i] != nil {
				matched--
				cuts[i] = nil
			}
		}
		first = slices.IndexFunc(cuts, func(c *typed) bool { return c != nil })
	}
	if matched < 4 || matched*10 < timed*9 || marks*2 > matched || placed > 0 && placed*10 < matched*9 {
		return nil
	}
	if placed > 0 && !placesRise(cuts) && !placesComplete(cuts) {
		if !agesInBrackets(cuts) {
			return nil
		}
		placed = 0
	}
	if n := countTyped(cuts, func(c *typed) bool { return c.number != "" }); n > 0 && n*10 < matched*9 {
		return nil
	}
	countedSexes(cuts)
	givenBehindComma(cuts, texts)
	return settleTyped(lines, cuts, texts, placed > 0, first)
}

// settleTyped settles what of the texts, a name and what follows it, is the name, and writes the rows
// of lines that were cut; first is the first of these. nil where it can't be told how far a name goes.
func settleTyped(lines []string, cuts []*typed, texts []string, placed bool, first int) []string {
	dropSame(cuts, texts)
	sexesBeside(cuts, texts)
	if !nameParts(cuts, texts) {
		return nil
	}
	if placed {
		addNumbered(lines, cuts)
	} else {
		dottedRise(cuts)
	}
	return writeTyped(lines, cuts, first)
}

// givenBehindComma takes what stands behind the comma of a few names of two words for given names,
// "de Souza, Ravi", where most have one word before it, "Roe, Al".
func givenBehindComma(cuts []*typed, texts []string) {
	given, clubs := 0, 0
	for i, c := range cuts {
		switch family, _, ok := strings.Cut(texts[i], ", "); {
		case c == nil:
		case ok && !strings.Contains(family, " "):
			given++
		case c.behindComma:
			clubs++
		}
	}
	if given <= clubs {
		return
	}
	for i, c := range cuts {
		if c != nil && c.behindComma && !strings.Contains(texts[i], ", ") {
			texts[i], c.club = texts[i]+", "+c.club, ""
		}
	}
}

// dottedRise puts a colon in the place of the dot in times of which all five or more have one and
// none falls: without places beside them nothing else would say that they are times.
func dottedRise(cuts []*typed) {
	n, last := 0, 0.0
	for _, c := range cuts {
		if c == nil {
			continue
		}
		t := looseNumber(c.time)
		if !dottedTime.MatchString(c.time) || t < last || t < 5 {
			return
		}
		n, last = n+1, t
	}
	for _, c := range cuts {
		if c != nil && n >= 5 {
			c.time = strings.Replace(c.time, ".", ":", 1)
		}
	}
}

// givesOtherTime is a line that begins with a word for a mistake, or says what a time was or should be.
var givesOtherTime = regexp.MustCompile(`(?i)^[^\pL]*(?:sorry|apologies|oops|whoops|correction|corrected|mistake|typo)\b|\b(?:was|is|should)\b[^\d]*\d`)

// tellsMuch says whether a line is a sentence: five words and more in it begin small.
func tellsMuch(line string) bool {
	n := 0
	for _, w := range strings.Fields(line) {
		if r := []rune(w); len(r) > 1 && unicode.IsLower(r[0]) {
			n++
		}
	}
	return n >= 5
}

// typedLine finds the parts of a line. It is nil for a line without a time, and the text
// is "" where something else stands in it than the parts of a result.
func typedLine(l string) (c *typed, text string) {
	m, dashed := spelledClock.FindStringSubmatchIndex(l), false
	if m == nil {
		if m = dashedClock.FindStringSubmatchIndex(l); m == nil || isSection(l) { // "Men 16-39 years" is no time
			return nil, ""
		}
		dashed = true
	}
	c = &typed{time: strings.TrimSpace(l[m[2]:m[3]]), dashed: dashed}
	if dashed {
		c.time = dashes.Replace(c.time)
	}
	if spelledClock.MatchString(l[m[3]:]) {
		return c, "" // which of the two?
	}
	before, after := strings.Trim(l[:m[2]], edgeMarks+"."), strings.Trim(l[m[3]:], edgeMarks+".")
	if strings.Count(before, "(") > strings.Count(before, ")") {
		return c, ""
	}
	placeEnd := 0
	if p := leadingPlace.FindStringSubmatch(before); p != nil {
		placeEnd = len(p[0])
		c.place, before = p[1], strings.TrimSpace(before[len(p[0]):])
	} else if g, p, ok := groupBeforePlace(before); ok {
		m := leadingPlace.FindStringSubmatch(p)
		c.group, c.place, before = g, m[1], strings.TrimSpace(p[len(m[0]):])
	}
	if b := leadingNumber.FindStringSubmatch(before); b != nil && c.place != "" {
		c.number, before = b[1], strings.TrimSpace(before[len(b[0]):])
	}
	before = strings.Trim(before, edgeMarks)
	if m := nameGroupClub.FindStringSubmatch(before); m != nil && (kindOf(m[2]) == kSex || kindOf(m[2]) == kGroup) {
		before, c.group, c.club = m[1], m[2], m[3]
	}
	before = c.takeBrackets(before)
	if after = c.takeBrackets(after); before == "" {
		before, after = strings.Trim(after, edgeMarks), "" // the time stands in front
	}
	c.rest = strings.TrimSpace(c.rest + " " + strings.Trim(after, edgeMarks))
	if name, club, ok := cutAny(before, ", ", " - ", " – ", " / ", " | "); ok && c.club == "" && strings.Contains(name, " ") && !strings.Contains(club, ",") && kindOf(club) == kText && headingWords[fold(club)]&cTime == 0 {
		c.behindComma = strings.Contains(before, name+", ")
		before, c.club = name, club
	}
	if r := []rune(before); len(r) < 3 || !unicode.IsLetter(r[0]) || slices.ContainsFunc(findDates(l), func(d foundDate) bool {
		return !d.fromPlace(placeEnd) && !(d.from >= m[2] && d.to <= m[3] && d.readings[0].y == 0)
	}) {
		return c, ""
	}
	return c, before
}

// cutAny cuts a text at the first of some marks that it has.
func cutAny(s string, marks ...string) (before, after string, ok bool) {
	for _, m := range marks {
		if before, after, ok = strings.Cut(s, m); ok {
			return before, after, true
		}
	}
	return s, "", false
}

// groupBeforePlace parts the group in front of a marked place: "M 60 5) Jo Lee".
func groupBeforePlace(s string) (group, rest string, ok bool) {
	words := strings.Fields(s)
	for n := 1; n <= 2 && n < len(words); n++ {
		group, rest = strings.Join(words[:n], " "), strings.Join(words[n:], " ")
		m := leadingPlace.FindString(rest)
		if k := kindOf(group); (k == kGroup || k == kSex) && m != "" && !digitsOnly(strings.TrimSpace(m)) {
			return group, rest, true
		}
	}
	return "", "", false
}

// takeBrackets takes what stands in brackets out of a text: a place, a group and a club.
func (c *typed) takeBrackets(s string) string {
	return strings.Join(strings.Fields(inBracket.ReplaceAllStringFunc(s, func(b string) string {
		if p := trailingPlace.FindStringSubmatch(b); p != nil && c.place == "" {
			c.place, c.inBracket = p[1], true
			return " "
		}
		pieces := strings.Split(b[1:len(b)-1], ",")
		if sexAge := sexBesideAge(pieces); sexAge != "" && c.group == "" {
			c.group = sexAge
			return " "
		}
		for _, piece := range pieces {
			piece = strings.TrimSpace(piece)
			k := kindOf(piece)
			switch {
			case (k == kGroup || k == kSex) && c.group == "":
				c.group = piece
			case k == kText && c.club == "":
				c.club = piece
			default:
				c.rest = strings.TrimSpace(c.rest + " " + piece)
			}
		}
		return " "
	})), " ")
}

// sexBesideAge puts a sex and an age that stand side by side together, the sex first: "M 52"
// of "(52, m)"; "" for anything else.
func sexBesideAge(pieces []string) string {
	if len(pieces) != 2 {
		return ""
	}
	sex, age := trim(pieces[0]), trim(pieces[1])
	if digitsOnly(sex) {
		sex, age = age, sex
	}
	if !digitsOnly(age) || len(age) > 2 || kindOf(sex) != kSex {
		return ""
	}
	return sex + " " + age
}

func countTyped(cuts []*typed, is func(*typed) bool) (n int) {
	for _, c := range cuts {
		if c != nil && is(c) {
			n++
		}
	}
	return n
}

// agesInBrackets takes numbers in brackets for ages where all of them can be: "Jo Lee (42)".
// It is false, and changes nothing, where they can't.
func agesInBrackets(cuts []*typed) bool {
	for _, c := range cuts {
		if c == nil || c.place == "" {
			continue
		}
		if n, _ := strconv.Atoi(c.place); !c.inBracket || n < 4 || n > 100 || c.group != "" { // four figures at most
			return false
		}
	}
	for _, c := range cuts {
		if c != nil {
			c.group, c.place = c.place, ""
		}
	}
	return true
}

// placesComplete says whether the places are all the numbers from 1 on, each once, of six lines or
// more, in whatever order.
func placesComplete(cuts []*typed) bool {
	seen, n, most := map[int]bool{}, 0, 0
	for _, c := range cuts {
		if c == nil {
			continue
		}
		p, _ := strconv.Atoi(c.place) // four figures at most
		if n++; p < 1 || seen[p] {
			return false
		}
		seen[p] = true
		most = max(most, p)
	}
	return n >= 6 && most == n
}

// placesRise says whether the places of lines hardly ever fall or repeat.
func placesRise(cuts []*typed) bool {
	n, on, last := 0, 0, 0
	for _, c := range cuts {
		if c == nil || c.place == "" {
			continue
		}
		p, _ := strconv.Atoi(c.place) // four figures at most
		if n++; p > last && p <= last+3 || p == 1 || p == last {
			on++
		}
		last = p
	}
	return on*10 >= n*9
}

// dropSame leaves out small words, and words for a time, that stand behind nearly every
// name: "Jo Lee in", "Jo Lee finished in", "Jo Lee Time".
func dropSame(cuts []*typed, texts []string) {
	for dropSameFirst(cuts, texts) {
	}
	for {
		n, last := 0, map[string]int{}
		for i, c := range cuts {
			if c != nil {
				n++
				last[finalWordOf(texts[i])]++
			}
		}
		for w, k := range last {
			if w == "" || k*10 < n*8 || w != strings.ToLower(w) && headingWords[fold(w)]&cTime == 0 || kindOf(w) == kSex {
				continue
			}
			for i, c := range cuts {
				if c != nil && finalWordOf(texts[i]) == w {
					texts[i] = strings.TrimRight(strings.TrimSuffix(texts[i], w), edgeMarks)
				}
			}
			n = 0
		}
		if n > 0 {
			return
		}
	}
}

// countedSexes takes places among men and women for sexes, where brackets hold them: "(M1)",
// "(M2)", "(F1)". Each letter counts from 1.
func countedSexes(cuts []*typed) {
	last, n := map[byte]int{}, 0
	mark := func(c *typed) string {
		if c.group != "" {
			return c.group
		}
		return c.club
	}
	for _, c := range cuts {
		if c == nil || mark(c) == "" {
			continue
		}
		letter, number, ok := letterNumber(mark(c))
		if !ok || number != last[letter]+1 || kindOf(string(letter)) != kSex {
			return
		}
		last[letter] = number
		n++
	}
	if n < 4 || len(last) != 2 {
		return
	}
	for _, c := range cuts {
		if c != nil && mark(c) != "" {
			c.group, c.club = mark(c)[:1], ""
		}
	}
}

// dropSameFirst leaves out a small word in front of nearly every name, "1st place Jo Lee", and says
// whether it did.
func dropSameFirst(cuts []*typed, texts []string) bool {
	n, inTurn, first := 0, 0, map[string]int{}
	for i, c := range cuts {
		if c != nil {
			n++
			if w, rest, more := strings.Cut(texts[i], " "); more {
				if first[w]++; sequenceWords[w] && strings.Contains(rest, " ") {
					inTurn++
				}
			}
		}
	}
	if inTurn > 2 && inTurn*10 >= n*8 {
		for i, c := range cuts {
			if c == nil {
				continue
			}
			if w, rest, _ := strings.Cut(texts[i], " "); sequenceWords[w] && strings.Contains(rest, " ") {
				texts[i] = strings.TrimLeft(rest, edgeMarks)
			}
		}
		return true
	}
	for w, k := range first {
		if k*10 < n*8 || len(w) < 2 || w != strings.ToLower(w) && headingWords[fold(w)]&cName == 0 {
			continue
		}
		for i, c := range cuts {
			if c != nil {
				texts[i] = strings.TrimLeft(strings.TrimPrefix(texts[i], w+" "), edgeMarks)
			}
		}
		return true
	}
	return false
}

// sequenceWords stand, small, before the names of people who came in one after the other: "first Jo
// Lee", "then Al Roe", "lastly Cy Dee".
var sequenceWords = set("first then next and finally lastly last")

// sexesBeside takes single letters for sexes that stand in front of nearly every name, or
// behind: "F Jo Lee", "Jo Lee M". There must be two of them.
func sexesBeside(cuts []*typed, texts []string) {
	for _, cut := range []func(string) (sex, rest string){
		func(s string) (string, string) { sex, rest, _ := strings.Cut(s, " "); return sex, rest },
		func(s string) (string, string) { sex := finalWordOf(s); return sex, strings.TrimSuffix(s, sex) },
	} {
		n, sexed, letters := 0, 0, map[string]int{}
		for i, c := range cuts {
			if c == nil {
				continue
			}
			n++
			if sex, rest := cut(texts[i]); len(sex) == 1 && kindOf(sex) == kSex && strings.Contains(trim(rest), " ") && c.group == "" {
				sexed++
				letters[sex]++
			}
		}
		if sexed < 4 || sexed*10 < n*9 || len(letters) != 2 {
			continue
		}
		for i, c := range cuts {
			if c == nil {
				continue
			}
			if sex, rest := cut(texts[i]); letters[sex] > 0 {
				c.group, texts[i] = sex, strings.Trim(rest, edgeMarks)
			}
		}
		return
	}
}

// finalWordOf is the last of several words, "" of one.
func finalWordOf(s string) string {
	at := strings.LastIndexByte(s, ' ')
	if at < 0 {
		return ""
	}
	return s[at+1:]
}

// nameParts parts names from the groups and clubs that stand behind them with nothing
// but a space between. It is false where that can't be done.
func nameParts(cuts []*typed, texts []string) bool {
	n, grouped, long := 0, 0, 0
	for i, c := range cuts {
		if c == nil {
			continue
		}
		n++
		if g, _, _ := groupInside(texts[i]); g != "" {
			grouped++
		}
		if len(strings.Fields(texts[i])) > 3 {
			long++
		}
	}
	if grouped*10 >= n*7 {
		for i, c := range cuts {
			if c == nil {
				continue
			}
			g, name, club := groupInside(texts[i])
			if g == "" {
				name = texts[i]
			}
			if len(strings.Fields(name)) > 4 || g == "" && grouped < n && len(strings.Fields(name)) > 3 {
				return false
			}
			c.name = name
			if g != "" && c.group == "" {
				c.group = g
			}
			if c.club == "" {
				c.club = club
			}
		}
		return true
	}
	if agesBehind(cuts, texts) {
		return true
	}
	clubs, known, clear := abbreviatedClubs(texts)
	if !clear {
		return false
	}
	if !known && long*10 >= n*3 {
		var ok bool
		if clubs, ok = clubsBehind(texts); !ok {
			return false
		}
	}
	for i, c := range cuts {
		if c == nil {
			continue
		}
		if c.name = texts[i]; clubs != nil && clubs[i] != "" {
			if c.club != "" {
				return false
			}
			c.club = strings.Trim(clubs[i], edgeMarks)
			c.name = strings.TrimRight(strings.TrimSuffix(c.name, clubs[i]), edgeMarks)
		}
		if strings.ContainsAny(c.name, "0123456789") || len(strings.Fields(c.name)) > 6 {
			return false
		}
	}
	return true
}

// agesBehind parts names from the ages or years of birth that stand behind nearly all of them,
// in no order: "Jo Lee 42", or between them and a club: "Jo Lee 1984 Vale AC". Nothing is changed where that
// is not so.
func agesBehind(cuts []*typed, texts []string) bool {
	n, aged, rising, last := 0, 0, 0, 0
	for i, c := range cuts {
		if c == nil {
			continue
		}
		n++
		name, age, club := cutAge(texts[i])
		if club != "" && c.club != "" || strings.ContainsAny(club, "0123456789") {
			return false
		}
		if age == "" && strings.ContainsAny(texts[i], "0123456789") || c.group != "" || len(strings.Fields(name)) > 4 {
			return false
		}
		if age != "" {
			aged++
			a, _ := strconv.Atoi(strings.Trim(age, "'’")) // two figures or four
			if a >= last {
				rising++
			}
			last = a
		}
	}
	if aged < 6 || aged*10 < n*9 || rising*10 > aged*8 {
		return false
	}
	for i, c := range cuts {
		if c == nil {
			continue
		}
		name, age, club := cutAge(texts[i])
		if c.name, c.group = name, age; club != "" {
			c.club = club
		}
	}
	return true
}

var ageBetween = regexp.MustCompile(`^(\D*\pL)[ ,;]+(['’]?\d{2}|(?:19|20)\d{2})(?:[ ,;]+(\pL.*))?$`)

// cutAge parts a name from an age of two figures or a year behind it, and what follows that.
func cutAge(text string) (name, age, club string) {
	m := ageBetween.FindStringSubmatch(strings.TrimRight(text, edgeMarks))
	if m == nil {
		return text, "", ""
	}
	return m[1], m[2], m[3]
}

// abbreviatedClubs finds the clubs behind names where in most texts they are written as
// abbreviations, "Jo Lee SuRa", "Al Roe HKV". known is false where that is not so, and where
// family names are in capitals, "Jo LEE". clear is false where the abbreviations hardly
// repeat, or the last of three words of another text may be a club as well.
func abbreviatedClubs(texts []string) (clubs []string, known, clear bool) {
	n, with := 0, 0
	clubs = make([]string, len(texts))
	of := map[string]bool{}
	for i, t := range texts {
		words := strings.Fields(t)
		if len(words) == 0 {
			continue
		}
		n++
		if !abbreviated(words[len(words)-1]) {
			continue
		}
		if len(words) < 3 {
			return nil, false, true
		}
		for _, w := range words[:len(words)-1] {
			if abbreviated(w) {
				return nil, false, true // names in capitals
			}
		}
		with++
		clubs[i] = words[len(words)-1]
		of[fold(clubs[i])] = true
	}
	if with < 4 || with*10 < n*6 {
		return nil, false, true
	}
	if len(of)*3 > with*2 {
		return nil, true, false
	}
	for i, t := range texts {
		if words := strings.Fields(t); clubs[i] == "" && len(words) > 2 {
			if clubs[i] = words[len(words)-1]; !of[fold(clubs[i])] {
				return nil, true, false
			}
		}
	}
	return clubs, true, true
}

// abbreviated says whether a word has two capitals and is no part of a name such as
// McDonald, DeLuca or III.
func abbreviated(w string) bool {
	capitals := 0
	for _, r := range w {
		switch {
		case unicode.IsUpper(r):
			capitals++
		case !unicode.IsLower(r):
			return false
		}
	}
	if capitals < 2 {
		return false
	}
	for _, before := range []string{"Mc", "Mac", "De", "Di", "Du", "Da", "La", "Le", "Van", "Von", "Fitz", "O"} {
		if rest, ok := strings.CutPrefix(w, before); ok && capitals == 2 && len(rest) > 2 && unicode.IsUpper([]rune(rest)[0]) && rest[1:] == strings.ToLower(rest[1:]) {
			return false
		}
	}
	switch w {
	case "II", "III", "IV", "JR", "SR":
		return false
	}
	return true
}

// groupInside finds an age group behind the first word or words of a text: "Jo Lee W40
// Vale AC", "Jo Lee M 40". A single letter is a sex only at the end.
func groupInside(text string) (group, name, club string) {
	words := strings.Fields(text)
	for i := 1; i < len(words); i++ {
		for n := min(2, len(words)-i); n >= 1; n-- {
			g := strings.Join(words[i:i+n], " ")
			k := kindOf(g)
			if k != kGroup && k != kSex || k == kSex && i+n < len(words) || n == 1 && i == 1 && hasNoDigit(g) && len(words) > 3 {
				continue
			}
			return strings.Trim(g, ",;"), strings.TrimRight(strings.Join(words[:i], " "), " ,;"), strings.Join(words[i+n:], " ")
		}
	}
	return "", "", ""
}

// clubsBehind finds the clubs at the end of texts that begin with names of two words or
// more: words that stand so at the end of several lines, or end in a word of clubs. ok is false where
// a text may have a club that no other has, but for clubs that all end in such words. Its club is ""
// where a text has two words only.
func clubsBehind(texts []string) (clubs []string, ok bool) {
	ends := map[string]int{}
	for _, t := range texts {
		words := strings.Fields(fold(t))
		for i := 2; i < len(words); i++ {
			ends[strings.Join(words[i:], " ")]++
		}
	}
	clubs = make([]string, len(texts))
	two, split, worded, without, wide, distinct := 0, 0, 0, 0, 0, map[string]bool{}
	for i, t := range texts {
		if gaps.MatchString(t) {
			wide++ // the gaps part them
		}
		words, raw := strings.Fields(fold(t)), strings.Fields(t)
		if len(words) <= 2 {
			continue
		}
		if len(words) != len(raw) {
			// A sign by itself, as in "Tarn & Mill", is no word of the folded form.
			words = raw
		}
		for k := 2; k < len(raw) && clubs[i] == ""; k++ {
			end := strings.Join(raw[k:], " ")
			f := fold(end)
			byWord := len(words) > 3 && (clubWords[finalWord(end)] || clubEnds[finalWord(end)])
			if byWord || ends[f] >= 3 || ends[f] == 2 && len(raw) > k+1 || noClub[f] {
				clubs[i] = end
				distinct[f] = true
				if byWord || noClub[f] {
					worded++
				}
				if split++; k == 2 {
					two++
				}
			}
		}
		if clubs[i] == "" {
			without++
		}
	}
	if two*10 < split*9 {
		return clubs, false
	}
	if worded >= 3 && worded == split && without*4 <= split && 2*wide < split {
		return clubs, true
	}
	return clubs, without == 0 && split >= 6 && len(distinct)*3 <= split+3
}

// noClub stands in the place of a club, folded.
var noClub = set("unattached unatt unaffiliated independent individual none", "u / a", "no club", "vereinslos", "ohne verein")

// writeTyped writes the parts that any line has, with tabs between. The words above the
// first line are its heading where there are as many.
func writeTyped(lines []string, cuts []*typed, first int) []string {
	parts := func(c *typed) []string {
		return []string{c.place, c.number, c.name, c.group, c.club, c.time, c.rest}
	}
	used := make([]bool, 7)
	for _, c := range cuts {
		if c != nil {
			for k, p := range parts(c) {
				used[k] = used[k] || p != ""
			}
		}
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		if cuts[i] == nil {
			out[i] = strings.TrimSpace(strings.ReplaceAll(l, "\t", " "))
			continue
		}
		var cells []string
		for k, p := range parts(cuts[i]) {
			if used[k] {
				cells = append(cells, p)
			}
		}
		out[i] = strings.Join(cells, "\t")
	}
	if first > 0 {
		lex := newLexicon(Options{})
		var cells []string
		for _, m := range [][]Meaning{{Position}, {Number}, {Name}, {AgeGroup, Age, Sex}, {Club}, {Time, GunTime, ChipTime}, nil} {
			cells = append(cells, headingOf(lex, lines[first-1], m))
		}
		var heading []string
		known := 0
		for k := range cells {
			if used[k] {
				heading = append(heading, cells[k])
				if cells[k] != "" {
					known++
				}
			}
		}
		if known >= 2 && known == len(strings.Fields(lines[first-1])) {
			out[first-1] = strings.Join(heading, "\t")
		}
	}
	return out
}

// headingOf is the word of a line that is the heading of a column of one of some
// meanings, "" for none.
func headingOf(lex *lexicon, line string, ms []Meaning) string {
	for _, w := range strings.Fields(line) {
		if g := lex.read(w); g.known && slices.Contains(ms, g.meaning) {
			return w
		}
	}
	return ""
}
