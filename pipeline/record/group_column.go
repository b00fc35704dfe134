package record

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// oldest bounds open-ended groups.
const oldest = 110

// groupEntry is one distinct spelling of a column, with what it was settled to
// mean.
type groupEntry struct {
	text   string
	g      group
	n      int
	part   TakingPart
	status Status
	sex    Sex
	lo, hi int // ages, or years of birth for bornIn
	known  bool
	day    unit.Day // of the cached window
	window age.Window
	set    age.Window // the same by the archive's rule, for a run on setDay
	setDay unit.Day
	// grown says that lo is taken for granted: whoever is called senior is an adult.
	grown bool
}

// vocabularyLimit bounds the distinct spellings that are kept; real columns
// have a few dozen. Further spellings are read one by one.
const vocabularyLimit = 4096

// groupColumn settles a column of age groups from its distinct spellings.
type groupColumn struct {
	agesSaid bool // the heading announces ages and no groups
	words    map[string]TakingPart
	states   map[string]Status
	at       map[string]int32
	entries  []groupEntry
	letters  letters
	scheme   age.Scheme

	unders     []int
	opens      [3][]int // of men, of women, of others
	starts     [3][]int // lone starts of men, of women, of others
	lows       []int    // first ages of groups with both
	masters    int      // lines in them, from 35 on
	toTheEnd   bool     // all masters, of many lines, are in groups that begin with one age: it has no end
	elders     int      // lines in any groups of the older, from 30 on
	seniors    int      // lines of seniors
	adults     bool     // who are called adults
	step       [3]int
	asAges     bool // bare numbers are ages, not first ages
	letterAges bool // so are those beside a letter: F48 is 48
	tenBands   bool // groups of ten years are written with both ends, 40-49
	tens       bool // the ages beside the groups show that they are ten years wide
	youngAges  bool // and J is no word for juniors, but for years: 36 J.
	// counted says that groups are numbered from one, M1, M2, F1, and french that they
	// are the French masters classes: M0, M1F, or M1 beside SE and ES.
	counted, french bool
	// frenchVeterans says that V1, V2, … from 40 on stand there and no M0.
	frenchVeterans bool
	vrouwen        bool // V40 is a women's group
	ranked         bool // the place in the group stands behind it: SM (12)
	counting       bool // or before or behind it without brackets: 3 SM, SM-3
}

func newGroupColumn(scheme age.Scheme, words map[string]TakingPart, states map[string]Status) *groupColumn {
	return &groupColumn{at: map[string]int32{}, scheme: scheme, words: words, states: states}
}

// observe counts one cell and gives the index of its entry, -1 where the
// column has too many; blank cells are left out by the caller.
func (k *groupColumn) observe(text string, scratch *[]byte) int32 {
	if i, ok := k.at[text]; ok {
		k.entries[i].n++
		return i
	}
	if len(k.entries) == vocabularyLimit {
		return -1
	}
	e := k.parse(text, scratch)
	e.text, e.n = strings.Clone(text), 1
	i := int32(len(k.entries))
	k.at[e.text] = i
	k.entries = append(k.entries, e)
	return i
}

// plainGroup leaves out marks around a group, "[M40]", "M40*", and the place in it behind, "M40
// 1st"; an O beside a single figure is a nought: "M4O".
func plainGroup(text string) string {
	s := strings.TrimRight(text, " *!;,^§†~")
	if strings.HasPrefix(s, "♂") || strings.HasPrefix(s, "♀") {
		s = strings.NewReplacer("♂ ", "M", "♂", "M", "♀ ", "W", "♀", "W").Replace(s)
	}
	if n := len(s); n > 2 && (s[0] == '[' && s[n-1] == ']' || s[0] == '{' && s[n-1] == '}' || s[0] == '(' && s[n-1] == ')') && !strings.ContainsAny(s[1:n-1], "[{()}]") {
		s = trim(s[1 : n-1])
	}
	if i := strings.LastIndexByte(s, ' '); i > 1 && hasDigit(s[:i]) && placeInWords.MatchString(s[i+1:]) {
		s = s[:i]
	}
	if n := len(s); n >= 2 && (s[n-1] == 'O' || s[n-1] == 'o') && s[n-2] >= '1' && s[n-2] <= '9' && (n == 2 || s[n-3] < '0' || s[n-3] > '9') {
		s = s[:n-1] + "0"
	}
	if s == "" {
		return text
	}
	return s
}

// placeInWords is a place with its ending: 1st, 22nd.
var placeInWords = regexp.MustCompile(`^\d{1,3}(?:st|nd|rd|th)$`)

// parse reads a spelling by itself.
func (k *groupColumn) parse(text string, scratch *[]byte) groupEntry {
	if swedishForm.MatchString(text) {
		return groupEntry{}
	}
	*scratch = fold((*scratch)[:0], overForty.ReplaceAllString(plainGroup(text), "ue $1"))
	b := *scratch
	e := groupEntry{}
	if part, ok := partOf(b, k.words); ok {
		e.g.kind, e.part = special, part
		return e
	}
	if k.ranked {
		if _, from, ok := rankBehind(b); ok {
			b = b[:from]
		} else if group, _, ok := splitRank(b); ok && k.counting {
			b = []byte(group)
		}
	}
	if st, ok := statusOf(b, k.states); ok {
		e.g.kind, e.status = special, st
		return e
	}
	if lo, hi, ok := groupInterval(b); ok {
		e.g = group{kind: between, lo: lo, hi: hi}
		return e
	}
	if e.g = parseGroup(b); e.g.kind == noGroup {
		for _, read := range []func([]byte) (lo, hi int16, ok bool){groupAsDate, groupAsWholeDate} {
			if lo, hi, ok := read(b); ok {
				e.g = group{kind: between, lo: lo, hi: hi}
				break
			}
		}
	}
	return e
}

// swedishForm is the class of a school, årskurs, whose letters without the ring are those of Altersklasse.
var swedishForm = regexp.MustCompile(`^(?i:å)(?i:k|rskurs)\.? ?\d`)

// overForty is the German Ü before a number, über 40, which without its dots is U: under.
var overForty = regexp.MustCompile(`(?:Ü|ü|U\x{308}|u\x{308}) ?([0-9])`)

// settleRanks says whether the numbers behind or before the groups are places in them: one in
// brackets is less than any age that a group begins with, or those of each group count 1, 2,
// 3 down the sheet, each cell once. They are then left out.
func (k *groupColumn) settleRanks() {
	var scratch []byte
	last := map[string]int{}
	counting, onward, seconds, once := 0, 0, 0, 0
	for _, e := range k.entries {
		scratch = fold(scratch[:0], e.text)
		if n, _, ok := rankBehind(scratch); ok && n < youngestAge {
			k.ranked = true
		}
		group, n, ok := splitRank(scratch)
		if !ok {
			continue
		}
		counting++
		if n > last[group] && n <= last[group]+3 { // the unnamed are left out
			onward++
		}
		if n == 2 {
			seconds++
		}
		if e.n == 1 {
			once++
		}
		last[group] = n
	}
	if k.counting = counting >= 6 && seconds > 0 && 10*counting >= 6*len(k.entries) && 10*onward >= 9*counting && 10*once >= 9*counting; k.counting {
		k.ranked = true
	}
	if !k.ranked {
		return
	}
	for i := range k.entries {
		e := &k.entries[i]
		n := e.n
		text := e.text
		*e = k.parse(text, &scratch)
		e.text, e.n = text, n
	}
}

// rankBehind finds a number in brackets at the end of a folded cell; from is where
// what stands before it ends.
func rankBehind(b []byte) (n, from int, ok bool) {
	i := bytes.LastIndexByte(b, '(')
	if i < 1 || b[len(b)-1] != ')' {
		return 0, 0, false
	}
	n, err := strconv.Atoi(string(b[i+1 : len(b)-1]))
	return n, len(bytes.TrimRight(b[:i], " ")), err == nil && n > 0
}

// splitRank takes a folded cell apart into a group and a place in it, perhaps of how many:
// msen-3, 3 w45, m40 2/17, w35 (4), 2/17 m40, 2 of 17 m40, 2e m40, 2:m40.
func splitRank(b []byte) (group string, n int, ok bool) {
	for _, form := range [...]*regexp.Regexp{rankBefore, rankBracket, rankOfAll, rankAfter} {
		if m := form.FindSubmatch(b); m != nil {
			g, r := m[1], m[2]
			if form == rankBefore || form == rankBracket {
				g, r = r, g
			}
			n, err := strconv.Atoi(string(r))
			return string(g), n, err == nil && n > 0
		}
	}
	return "", 0, false
}

var (
	rankBefore  = regexp.MustCompile(`^([0-9]{1,4})(?: ?(?:/|of|von|av|de|sur|di|van|z|из) ?[0-9]{1,4})?(?: *[.:] *| +|(?:e|er|ere|eme|re|st|nd|rd|th|a|o)\.? +)([a-z].*)$`)
	rankBracket = regexp.MustCompile(`^([0-9]{1,4}) ?(?:\(|/ ?)([a-z][^()]*)\)?$`) // 1 (v40), 1/v40
	rankOfAll   = regexp.MustCompile(`^(.*[a-z0-9+]) +([0-9]{1,4})/[0-9]{1,4}$`)
	rankAfter   = regexp.MustCompile(`^(.*[a-z0-9+]) *(?:[-/#( ]) *([0-9]{1,4})(?: */ *[0-9]{1,4})?\)?$`)
)

// groupAsDate reads an age group of two small numbers that a spreadsheet took for
// a date: 10-14 became 14-Oct or Oct-14, 11-12 became 11-Dec or 12-Nov.
func groupAsDate(b []byte) (lo, hi int16, ok bool) {
	x, y, found := bytes.Cut(b, []byte("-"))
	if !found || len(x) == 0 || len(y) == 0 || len(b) > 8 {
		return 0, 0, false
	}
	if x[0] > '9' {
		x, y = y, x
	}
	day, err := strconv.Atoi(string(bytes.TrimSpace(x)))
	month := monthsOfGroups[string(bytes.Trim(y, ". "))]
	if err != nil || month == 0 || day > 19 || day == month || max(day, month)-min(day, month) > 9 || min(day, month) < youngestAge {
		return 0, 0, false
	}
	return int16(min(day, month)), int16(max(day, month)), true
}

// groupAsWholeDate is groupAsDate for a date with its year, in figures: 10/14/2026,
// 2026-10-14 00:00:00.
func groupAsWholeDate(b []byte) (lo, hi int16, ok bool) {
	b, _, _ = bytes.Cut(b, []byte(" "))
	parts := bytes.FieldsFunc(b, func(r rune) bool { return r == '/' || r == '-' || r == '.' })
	if len(parts) != 3 {
		return 0, 0, false
	}
	if len(parts[0]) == 4 {
		parts = parts[1:]
	} else if len(parts[2]) != 4 {
		return 0, 0, false
	}
	x, err1 := strconv.Atoi(string(parts[0]))
	y, err2 := strconv.Atoi(string(parts[1]))
	if x, y = min(x, y), max(x, y); err1 != nil || err2 != nil || x > 12 || y > 19 || x == y || y-x > 9 || x < youngestAge {
		return 0, 0, false
	}
	return int16(x), int16(y), true
}

// groupInterval reads a group that is written as an interval, as programs that cut ages
// into classes do: [35,39] and [35,40) are 35 to 39, (35,40] is 36 to 40 (ISO 80000-2,
// 2-7.7 to 2-7.10).
func groupInterval(b []byte) (lo, hi int16, ok bool) {
	if len(b) < 5 || bytes.IndexByte([]byte("[(]"), b[0]) < 0 || bytes.IndexByte([]byte("])["), b[len(b)-1]) < 0 || b[0] == '(' && b[len(b)-1] == ')' {
		return 0, 0, false
	}
	x, y, found := bytes.Cut(b[1:len(b)-1], []byte(","))
	if !found {
		if x, y, found = bytes.Cut(b[1:len(b)-1], []byte(";")); !found {
			x, y, _ = bytes.Cut(b[1:len(b)-1], []byte("-"))
		}
	}
	from, err1 := strconv.ParseFloat(string(bytes.TrimSpace(x)), 64)
	to, err2 := strconv.ParseFloat(string(bytes.TrimSpace(y)), 64)
	if err1 != nil || err2 != nil || from != math.Trunc(from) || to != math.Trunc(to) || from < 0 || to > 130 {
		return 0, 0, false
	}
	if b[0] != '[' {
		from++
	}
	if b[len(b)-1] != ']' {
		to--
	}
	return int16(from), int16(to), from <= to
}

var monthsOfGroups = text.Months(func(s string) string { return string(fold(nil, s)) })

// class is 0 for men's groups, 1 for women's, 2 for the rest.
func class(s Sex) int {
	switch s {
	case M:
		return 0
	case W:
		return 1
	}
	return 2
}

// settle decides letters, widths and bare numbers, then what each spelling
// means. others are the letters of the sheet's sex column, which speak the
// same language.
func (k *groupColumn) settle(heading string, others *letters, answers map[string]string) {
	k.agesSaid = saysAges(heading)
	k.settleRanks()
	k.schoolLetters()
	k.nineYears()
	k.yearsBesideLetters(heading)
	k.agesBehindLetters()
	k.youth()
	k.italian()
	k.frenchClasses()
	k.pairs()
	k.womenBeside()
	if others == nil {
		k.veteransBeside()
	}
	k.norwegianGirls()
	k.englishGirls()
	k.dutchYouth()
	if heading == lithuanianSex || heading == latvianSex {
		k.menByV()
		k.yearsOfAge()
	}
	loneM, loneV, women := 0, 0, 0
	for _, e := range k.entries {
		switch {
		case e.g.sex == noMark && e.g.vMark:
			loneV += e.n
		case e.g.sex.open():
			k.letters.n[e.g.sex] += e.n
			if e.g.lone && e.g.sex == 'm' {
				loneM += e.n
			}
		}
		if e.g.sex == sureW || e.g.sex.open() && strings.IndexByte("fwlkd", byte(e.g.sex)) >= 0 {
			women += e.n
		}
	}
	// Beside a sex column V stays veteran, unless V is a woman there as well.
	k.vrouwen = loneV > 0 && loneM > 0 && women == 0 && (others == nil || others.n['v'] > 0 && others.is['v'] == W)
	if k.vrouwen {
		k.letters.n['v'] += loneV
	}
	joint := k.letters
	if others != nil {
		for i, n := range others.n {
			if i != 'v' { // V is veteran here and vrouw or varón there
				joint.n[i] += n
			}
		}
	}
	joint.settle(heading, answers)
	k.letters.is, k.letters.why, k.letters.ask, k.letters.choices = joint.is, joint.why, joint.ask, joint.choices
	k.letterCodes()
	k.bareLetters()
	k.widths()
	for i := range k.entries {
		k.resolve(&k.entries[i])
	}
}

// womenBeside reads Junioren beside Juniorinnen as the boys' class.
func (k *groupColumn) womenBeside() {
	there := func(words map[string]bool) func(string) bool {
		return func(text string) bool {
			for _, w := range strings.FieldsFunc(string(fold(nil, text)), func(r rune) bool { return r == ' ' || r == '.' }) {
				if words[w] {
					return true
				}
			}
			return false
		}
	}
	women := there(womenOf)
	if !slices.ContainsFunc(k.entries, func(e groupEntry) bool { return women(e.text) }) {
		return
	}
	men := there(menOf)
	for i := range k.entries {
		if e := &k.entries[i]; e.g.sex == noMark && e.g.kind != special && men(e.text) {
			e.g.sex = sureM
		}
	}
}

// veteransBeside reads V40 as the men's class where the veterans of the women are told from it
// by a letter in front, FV40 or LV40, as British clubs write it, and none are marked as men's.
func (k *groupColumn) veteransBeside() {
	women, men := 0, 0
	for _, e := range k.entries {
		switch f := fold(nil, e.text); {
		case len(f) < 3 || f[0] != 'v' && f[1] != 'v' || f[len(f)-1] < '0' || f[len(f)-1] > '9':
		case f[0] == 'f' || f[0] == 'l' || f[0] == 'w':
			women++
		case f[0] == 'm' || f[0] == 'v' && f[1] >= 'a':
			men++ // MV40, and any other order
		}
	}
	if women < 2 || men > 0 {
		return
	}
	for i := range k.entries {
		if g := &k.entries[i].g; g.vMark && g.sex == noMark {
			g.sex = sureM
		}
	}
}

// norwegianGirls reads J as jenter, girls, where G stands for gutter, boys.
func (k *groupColumn) norwegianGirls() {
	if !slices.ContainsFunc(k.entries, func(e groupEntry) bool { return e.g.sex == 'g' && e.g.lo < 20 }) {
		return
	}
	for i := range k.entries {
		e := &k.entries[i]
		if f := fold(nil, e.text); len(f) > 1 && f[0] == 'j' && (f[1] < 'a' || f[1] > 'z') && e.g.sex == noMark {
			e.g.sex, e.g.young = 'j', false
		}
	}
}

// englishGirls reads the G of U15G as girls where it stands behind under-groups only and L is
// for the ladies of the others: not gentlemen, nor the garçons beside F and gutter beside J.
func (k *groupColumn) englishGirls() {
	girls, ladies := false, false
	for _, e := range k.entries {
		switch {
		case e.g.sex == 'g' && e.g.kind == under:
			girls = true
		case e.g.sex == 'g', e.g.sex == 'f', e.g.sex == 'j':
			return
		}
		ladies = ladies || e.g.sex == 'l'
	}
	if !girls || !ladies {
		return
	}
	for i := range k.entries {
		if g := &k.entries[i].g; g.sex == 'g' {
			g.sex = sureW
		}
	}
}

// dutchYouth reads O20, MO18, VO16 as onder, under, and not as over, where seniors or masters have groups
// of their own.
func (k *groupColumn) dutchYouth() {
	if !slices.ContainsFunc(k.entries, func(e groupEntry) bool { return e.g.kind == senior || e.g.kind == start && e.g.lo >= 30 }) {
		return
	}
	for i := range k.entries {
		e := &k.entries[i]
		m := onder.FindSubmatch(fold(nil, e.text))
		if m == nil {
			continue
		}
		n, err := strconv.Atoi(string(m[2]))
		if err != nil || n <= youngestAge || n > 23 {
			continue
		}
		g := group{kind: under, lo: int16(n), hi: int16(n)}
		if len(m[1]) > 0 {
			g.sex = sexMark(m[1][0])
		}
		e.g = g
	}
}

var onder = regexp.MustCompile(`^([mvjdh]?)[ -]?o[ -]?([0-9]{1,2})$`)

// schoolLetters leaves alone columns of nothing but classes of a school by its letter, P1 to P7, S1 to S6, Y7: they are
// no ages, and P no boys.
func (k *groupColumn) schoolLetters() {
	letter := byte(0)
	for _, e := range k.entries {
		f := fold(nil, e.text)
		if len(f) < 2 || strings.IndexByte("psy", f[0]) < 0 || letter != 0 && f[0] != letter || !allDigits(f[1:]) || atoi(f[1:]) > lastOfLetter[f[0]] {
			return
		}
		letter = f[0]
	}
	for i := range k.entries {
		k.entries[i].g = group{}
	}
}

// lastOfLetter are the last classes of schools that are called by such letters: primary, secondary, year.
var lastOfLetter = map[byte]int{'p': 7, 's': 6, 'y': lastSchoolYear}

// nineYears reads K9 as a woman of nine, and no dog, where K stands before other ages.
func (k *groupColumn) nineYears() {
	women := func(e groupEntry) bool { return e.g.sex == 'k' && e.g.kind == start }
	if !slices.ContainsFunc(k.entries, women) {
		return
	}
	for i := range k.entries {
		if e := &k.entries[i]; e.part == Dog && string(fold(nil, e.text)) == "k9" {
			e.g, e.part = parseGroup([]byte("k9")), Runner
		}
	}
}

// yearsBesideLetters reads two figures beside a sex as a year of birth, "F'77", where the heading or a
// mark of what is left out says so, or the numbers do: one in eight is 90 or more, at most one in eight
// from 17 to 44, as most ages are, and most are no multiples of five, as groups begin with.
func (k *groupColumn) yearsBesideLetters(heading string) {
	said := !saysAges(heading) && slices.ContainsFunc(headingParts(heading), func(w string) bool { return yearHeadings[w] })
	all, old, grown, fives, marked := 0, 0, 0, 0, 0
	for _, e := range k.entries {
		switch {
		case e.g.kind == between, e.g.kind == open, e.g.kind == under, e.g.kind == upTo:
			return
		case e.g.kind != start || e.g.sex == noMark || e.g.lo >= 100:
			continue
		case e.g.lo >= 90:
			old += e.n
		case e.g.lo >= 17 && e.g.lo <= 44:
			grown += e.n
		}
		if all += e.n; e.g.lo%5 == 0 {
			fives += e.n
		}
		if strings.ContainsAny(e.text, "'’`´") {
			marked += e.n
		}
	}
	if all < 4 || !said && 2*marked <= all && (8*old < all || 8*grown > all || 2*fives > all) {
		return
	}
	for i := range k.entries {
		if e := &k.entries[i]; e.g.kind == start && e.g.sex != noMark && e.g.lo < 100 {
			e.g.kind, e.g.hi = bornIn, e.g.lo
		}
	}
}

// agesBehindLetters says whether the numbers behind letters are ages: no groups begin between
// the fives from 24 on, and of ages four in five lie there.
func (k *groupColumn) agesBehindLetters() {
	lettered, between5, odd := 0, 0, false
	for _, e := range k.entries {
		if e.g.kind != start {
			continue
		}
		odd = odd || e.g.lo%5 != 0
		if e.g.lo >= 24 {
			lettered += e.n
			if e.g.lo%5 != 0 {
				between5 += e.n
			}
		}
	}
	k.letterAges = 2*between5 > lettered || k.agesSaid && odd
}

// lithuanianSex and latvianSex are the folded headings for sex in the two languages.
const lithuanianSex, latvianSex = "lytis", "dzimums"

// latvian says whether a folded heading is Latvian, where V is vīrietis, a man, and S
// sieviete, a woman.
func latvian(heading string) bool {
	for _, w := range strings.FieldsFunc(heading, func(r rune) bool { return r == ' ' || r == ',' || r == '.' }) {
		switch w {
		case "dzimums", "laiks", "uzvards", "vards", "grupa", "vecums", "klubs", "skrejejs", "dalibnieks", "piezimes", "dzimsanas":
			return true
		}
	}
	return false
}

// lithuanian says whether a folded heading is Lithuanian, where V is vyras, a man, and M
// moteris, a woman.
func lithuanian(heading string) bool {
	for _, w := range strings.FieldsFunc(heading, func(r rune) bool { return r == ' ' || r == ',' || r == '.' }) {
		switch w {
		case "lytis", "laikas", "pavarde", "grupe", "amzius", "vardas", "begikas", "dalyvis", "pastabos", "gimimo", "klubas":
			return true
		}
	}
	return false
}

// menByV reads the V of a Lithuanian list as vyrai, men, and that of a Latvian one, vīrieši,
// beside S, sievietes, women.
func (k *groupColumn) menByV() {
	for i := range k.entries {
		e := &k.entries[i]
		if f := fold(nil, e.text); len(f) > 0 && f[0] == 's' && e.g.sex == noMark && (len(f) == 1 || f[1] < 'a' || f[1] == 'u') {
			if e.g.sex, e.g.lone = 's', true; e.g.kind == senior {
				e.g.kind = noGroup
			}
		}
		if g := &k.entries[i].g; g.vMark && g.sex == noMark {
			if g.sex, g.vMark, g.lone = 'v', false, true; g.kind == veteran {
				g.kind = noGroup
			}
		}
	}
}

// headingParts are the words of a folded heading between its marks: "age", "sex" of "age/sex".
func headingParts(heading string) []string {
	return strings.FieldsFunc(heading, func(r rune) bool { return strings.ContainsRune(" /().,&+-", r) })
}

// saysAges says whether a folded heading announces ages, with a sex or without, and no groups:
// "Age/sex".
func saysAges(heading string) (ages bool) {
	for _, w := range headingParts(heading) {
		switch {
		case ageHeadings[w], w == "ages", w == "ans", w == "ika", w == "vanus", w == "oed":
			ages = true
		case strings.HasPrefix(w, "gr"), strings.HasPrefix(w, "cat"), strings.HasPrefix(w, "kat"), strings.HasPrefix(w, "clas"), strings.HasPrefix(w, "klas"), strings.HasPrefix(w, "band"), strings.HasPrefix(w, "range"), w == "ag", w == "ak":
			return false
		}
	}
	return ages
}

// yearsOfAge reads the m. behind every number of a Lithuanian list, "62 m.", as metai, years.
func (k *groupColumn) yearsOfAge() {
	for _, e := range k.entries {
		_, behind, n, ok := splitAffix(fold(nil, e.text))
		if !ok || n > oldestAge || strings.Trim(string(behind), ".") != "m" {
			return
		}
	}
	for i := range k.entries {
		k.entries[i].g.sex = noMark
	}
}

// letterCodes forgets what two letters seem to say where most of the column is codes of
// the same kind that say nothing: of Ak, Bk, … Fk the last is no class of girls.
func (k *groupColumn) letterCodes() {
	coded, unread := 0, 0
	isCode := func(e *groupEntry) bool { return len(e.text) == 2 && !strings.ContainsAny(e.text, "0123456789") }
	for i := range k.entries {
		if e := &k.entries[i]; isCode(e) {
			if coded++; e.g.kind == noGroup {
				unread++
			}
		}
	}
	if unread < 3 || unread*2 < coded || coded*10 < len(k.entries)*8 {
		return
	}
	for i := range k.entries {
		if e := &k.entries[i]; isCode(e) && e.g.kind != special {
			e.g = group{}
		}
	}
}

// bareLetters forgets the sexes that single letters seem to say where others beside them
// say nothing, A, B, C, D: classes by letter. D says women only beside H, M or U, and B
// boys only beside G.
func (k *groupColumn) bareLetters() {
	there := map[string]bool{}
	for i := range k.entries {
		if e := &k.entries[i]; len(e.text) == 1 {
			there[strings.ToLower(e.text)] = true
		}
	}
	lines, unread := 0, 0
	for i := range k.entries {
		e := &k.entries[i]
		if len(e.text) != 1 {
			continue
		}
		lines += e.n
		switch l := strings.ToLower(e.text); {
		case e.g.kind != noGroup:
		case l == "d" && !there["h"] && !there["m"] && !there["u"], l == "b" && !there["g"], k.letters.sex(e.g.sex) == NotGiven && l != "u" && l != "n":
			unread += e.n
		}
	}
	if unread*10 < lines || unread == 0 {
		return
	}
	for i := range k.entries {
		if e := &k.entries[i]; len(e.text) == 1 && e.g.kind != special {
			e.g = group{}
		}
	}
}

// youth settles the boys' and girls' classes of Swedish and Finnish lists: beside P
// (pojkar, pojat), P15, F15 (flickor) and T15 (tytöt) are those who turn 15 and younger,
// not groups that begin with 15, and T11 to T13 are no classes of the blind. So are M17, N17,
// M19, M22 (from memory of the Finnish and Swedish classes).
func (k *groupColumn) youth() {
	if k.letterAges {
		return
	}
	boys, finnish := false, false
	girls, women := false, false // F15 or T15; K40, D40 or N40, beside which F and T are no letters for women
	for _, e := range k.entries {
		if e.g.kind == start && e.g.sex.open() {
			girls = girls || e.g.lo < 20 && (e.g.sex == 'f' || e.g.sex == 't')
			women = women || e.g.lo >= 35 && strings.IndexByte("kdn", byte(e.g.sex)) >= 0
		}
		young := e.g.kind == start && e.g.lo < 20
		if e.g.kind == special && e.part == Guided && len(e.text) == 3 {
			young = parseGroup(fold(nil, e.text)).kind == start
		}
		boys = boys || young && e.g.sex == 'p'
		finnish = finnish || e.g.sex == 'n' && e.g.kind != noGroup
	}
	if boys = boys || girls && women; !boys && !finnish {
		return
	}
	for i := range k.entries {
		e := &k.entries[i]
		if e.g.kind == special && e.part == Guided && len(e.text) == 3 {
			if g := parseGroup(fold(nil, e.text)); g.kind == start {
				e.g, e.part = g, Runner
			}
		}
		g := &e.g
		if g.kind != start || !g.sex.open() || g.lo < youngestAge || g.lo >= 20 && g.lo != 22 {
			continue
		}
		letters := "pft"
		if g.lo%2 == 1 || g.lo == 22 {
			letters += "mnk" // M17, K19, M22 too
		}
		if strings.IndexByte(letters, byte(g.sex)) < 0 {
			continue
		}
		g.kind = upTo
		switch { // whatever else the letters say in this column
		case !boys:
		case g.sex == 'p':
			g.sex = sureM
		case g.sex == 'f', g.sex == 't':
			g.sex = sureW
		}
	}
}

// italianYouth are the Italian youth classes by their first letter, with M or F behind
// it: ragazzi, cadetti, allievi; first and last age by year of birth (from memory).
var italianYouth = map[byte][2]int16{'r': {12, 13}, 'c': {14, 15}, 'a': {16, 17}}

// italian reads AM, AF, CM, CF, RM and RF where SM40 and SF40 stand in the column.
func (k *groupColumn) italian() {
	seniors := false
	for _, e := range k.entries {
		b := fold(nil, e.text)
		seniors = seniors || len(b) == 4 && b[0] == 's' && (b[1] == 'm' || b[1] == 'f') && e.g.kind == start
	}
	if !seniors {
		return
	}
	_, men := k.at["PM"]
	_, women := k.at["PF"]
	if men || women { // after the promesse, seniors are from 23 on (from memory)
		for i := range k.entries {
			if g := &k.entries[i].g; g.kind == senior {
				g.kind, g.lo, g.hi = between, 23, 34
			}
		}
	}
	for i := range k.entries {
		e := &k.entries[i]
		b := fold(nil, e.text)
		if len(b) != 2 || b[1] != 'm' && b[1] != 'f' {
			continue
		}
		if ages, ok := italianYouth[b[0]]; ok {
			e.g = group{kind: between, lo: ages[0], hi: ages[1], sex: sexMark(b[1])}
		}
	}
}

// frenchClasses says whether M0, M1, M2 are the French masters classes: M0 or M1F stands
// there, or classes by two letters (SE, ESF). Where no F or W is numbered so beside them, M
// says no sex.
func (k *groupColumn) frenchClasses() {
	numbered, women := false, false
	for i := range k.entries {
		g := &k.entries[i].g
		switch {
		case g.kind == start && g.lo <= 10 && (g.masters || g.sex == 'm' && g.lo == 0):
			k.french = true
		case g.kind == start && g.lo < 5 && g.sex == 'm' && !g.vMark:
			numbered = true
		case g.kind == start && g.lo < 5 && g.sex.open():
			women = true
		}
	}
	bands := 0
	for i := range k.entries {
		e := &k.entries[i]
		b := fold(nil, e.text)
		if len(b) < 2 || len(b) > 3 {
			continue
		}
		if _, ok := frenchBands[string(b[:2])]; ok && (e.g.kind == between || e.g.kind == noGroup) {
			bands++
		}
	}
	k.french = k.french || bands >= 2 && numbered
	for i := range k.entries {
		e := &k.entries[i]
		if band, ok := frenchBands[string(fold(nil, e.text))]; ok && k.french && e.g.kind == noGroup {
			e.g = group{kind: between, lo: band[0], hi: band[1]}
		}
		if g := &e.g; g.kind == start && g.lo <= 10 && g.sex == 'm' && !g.masters && !g.vMark && !women && (numbered || k.french) {
			g.sex, g.lone = noMark, false
		}
	}
}

// widths collects which groups the column uses and how wide they are.
func (k *groupColumn) widths() {
	numbers, fives, small, veterans := 0, 0, 0, 0
	distinct := map[int16]bool{}
	for _, e := range k.entries {
		switch {
		case e.g.kind == senior:
			k.seniors += e.n
			k.adults = k.adults || adultText.MatchString(e.text)
		case e.g.kind == veteran, e.g.kind == start && e.g.lo < 5, e.g.lo >= 30:
			k.elders += e.n
		}
		switch e.g.kind {
		case between:
			k.lows = append(k.lows, int(e.g.lo))
			k.tenBands = k.tenBands || e.g.lo >= 40 && e.g.hi == e.g.lo+9
		case under:
			k.unders = append(k.unders, int(e.g.lo))
		case upTo:
			k.unders = append(k.unders, int(e.g.lo)+1)
		case open:
			c := class(k.sexOf(e.g))
			k.opens[c] = append(k.opens[c], int(e.g.lo))
		case start:
			if e.g.lo < 5 && (e.g.sex != noMark || e.g.vMark || k.french) {
				small += e.n
				if e.g.vMark {
					veterans += e.n
				}
			}
			c := class(k.sexOf(e.g))
			k.starts[c] = append(k.starts[c], int(e.g.lo))
			if e.g.lo >= 35 {
				k.masters += e.n
			}
			if e.g.lo >= 24 {
				k.youngAges = k.youngAges || e.g.young // no junior is
			}
		case plainNumber:
			numbers += e.n
			distinct[e.g.lo] = true
			if e.g.lo%5 == 0 {
				fives += e.n
			}
		}
	}
	k.counted = small > 0
	k.frenchVeterans = veterans > 0 && veterans == small
	if k.letterAges {
		k.starts, k.masters = [3][]int{}, 0
	}
	k.oneMasters()
	// Ages are multiples of five one time in five: eight in a row by chance
	// are one in 390 000.
	k.asAges = fives < numbers || numbers < 8 || len(distinct) < 2
	if !k.asAges {
		for n := range distinct {
			k.starts[2] = append(k.starts[2], int(n))
		}
	}
	tidy := func(s []int) []int { slices.Sort(s); return slices.Compact(s) }
	k.unders = tidy(k.unders)
	for c := range k.opens {
		k.opens[c] = tidy(k.opens[c])
	}
	any5, fromForty := false, k.tensFromForty()
	var masters [3]int // groups of each class
	for c := range k.starts {
		k.starts[c] = tidy(k.starts[c])
		k.step[c] = 5
		tens := 0
		for i, s := range k.starts[c] {
			if s < 35 {
				continue
			}
			masters[c]++
			if s == 35 && fromForty {
				masters[c]-- // V35, V40, V50, V60
				continue
			}
			if i > 0 && s-k.starts[c][i-1] < 10 && k.starts[c][i-1] >= 35 && !(s == 40 && fromForty) {
				any5 = true
			}
			if (s-k.starts[c][len(k.starts[c])-1])%10 == 0 {
				tens++
			}
		}
		// Of five-year groups every other one lies between the tens: four
		// lines that miss them all by chance are one in sixteen.
		any5 = any5 || tens < masters[c] // M35 and M60
		if masters[c] > 1 && tens == masters[c] && k.masters >= 4 {
			k.step[c] = 10
		}
	}
	if any5 {
		k.step = [3]int{5, 5, 5}
	} else if k.tens {
		k.step = [3]int{10, 10, 10}
	}
	// A class with a single group, or one of masters, goes with the other classes.
	for c := range k.step {
		if (len(k.starts[c]) < 2 || masters[c] == 1 && !any5 && k.amongTens(c)) && slices.Max(k.step[:]) == 10 {
			k.step[c] = 10
		}
	}
}

// amongTens says whether the oldest group of a class begins as many tens of years from the groups of a class that
// are ten years apart: W40 beside M40 and M50, and not beside M45 and M55.
func (k *groupColumn) amongTens(c int) bool {
	for o, starts := range k.starts {
		if o != c && k.step[o] == 10 && (starts[len(starts)-1]-k.starts[c][len(k.starts[c])-1])%10 != 0 {
			return false
		}
	}
	return true
}

// oneMasters finds whether all masters are in groups that begin with one age, beside seniors or juniors. Of groups of
// five years each four lines would all be of the first one by chance in one list of some hundreds.
func (k *groupColumn) oneMasters() {
	first, lines, others := int16(0), 0, false
	for _, e := range k.entries {
		switch {
		case e.g.kind == start && e.g.lo >= 35 && (first == 0 || first == e.g.lo):
			first = e.g.lo
			lines += e.n
		case e.g.kind == start && e.g.lo >= 24, e.g.kind == open, e.g.kind == between && e.g.hi >= 35, e.g.kind == plainNumber, e.g.kind == bornIn:
			return
		case e.g.kind == senior, e.g.kind == under, e.g.kind == junior:
			others = true
		}
	}
	k.toTheEnd = others && lines >= 4 && first <= 50
}

// leastTens is how many lines from 40 on show that no groups begin with 45, 55 or 65. Of
// five-year groups about half do: sixteen lines that miss them all by chance are one in 65 000.
const leastTens = 16

// tensFromForty says whether the masters of either sex are in groups of ten years from 40 on,
// with one of five before them.
func (k *groupColumn) tensFromForty() bool {
	lines, groups := 0, map[int16]bool{}
	for _, e := range k.entries {
		if e.g.kind == start && e.g.lo >= 40 {
			if e.g.lo%10 != 0 {
				return false
			}
			lines += e.n
			groups[e.g.lo] = true
		}
	}
	return lines >= leastTens && len(groups) > 2
}

func (k *groupColumn) sexOf(g group) Sex {
	if g.sex == noMark && g.vMark && k.vrouwen {
		return W
	}
	return k.letters.sex(g.sex)
}

// after is the smallest number of the sorted list above n, or none.
func after(list []int, n, none int) int {
	i, found := slices.BinarySearch(list, n)
	if found {
		i++
	}
	if i < len(list) {
		return list[i]
	}
	return none
}

// before is the largest number of the sorted list below n, or none.
func before(list []int, n, none int) int {
	i, _ := slices.BinarySearch(list, n)
	if i > 0 {
		return list[i-1]
	}
	return none
}

// resolve gives one spelling its ages.
func (k *groupColumn) resolve(e *groupEntry) {
	g := e.g
	e.sex = k.sexOf(g)
	c := class(e.sex)
	lo, hi := int(g.lo), int(g.hi)
	e.known = true
	switch g.kind {
	case between:
		if se := frenchBands["se"]; k.frenchVeterans && [2]int16{g.lo, g.hi} == se {
			hi = 39 // where veterans begin at 40 (from memory: the French classes until 2020)
		}
	case bornIn:
	case plainNumber:
		if !k.asAges {
			if hi = lo + k.step[2] - 1; lo < k.scheme.Masters { // 20, 30, 35: up to the next
				if next := after(k.starts[2], lo, 0); next > lo && next <= lo+10 {
					hi = next - 1
				}
			}
		}
	case start:
		if k.counted && lo <= 10 && !k.french && !g.vMark {
			e.known = false // the second of which groups?
		}
		lo, hi = k.startAges(lo, c, g)
	case open:
		hi = after(k.opens[c], lo, oldest+1) - 1
	case under:
		lo, hi = before(k.unders, lo, 0), lo-1
		if hi >= 29 { // under 35: everybody, whatever other groups there are
			lo = 0
		}
	case upTo:
		lo, hi = before(k.unders, lo+1, 0), lo
		if slices.Contains(k.lows, hi) {
			hi-- // до 18 лет beside 18-39: under 18
		}
		if hi >= 29 {
			lo = 0
		}
	case senior:
		lo, hi, e.grown = k.seniorAges(c)
	case junior:
		lo, hi = 0, 19
	case veteran:
		if lo, hi = min(k.scheme.Masters, 35), oldest; k.vrouwen && g.vMark {
			e.known = false // V is a woman there
		}
	default:
		e.known = false
	}
	e.lo, e.hi = lo, hi
}

// startAges reads M40, V50, W12, JM10, M2 by the other groups of the column.
func (k *groupColumn) startAges(n, c int, g group) (lo, hi int) {
	next := after(k.starts[c], n, 0)
	switch {
	case k.letterAges && (!g.young || k.youngAges):
		return n, n
	case n <= 10 && k.counted && g.vMark: // V1 40-49, V2 50-59, … (common practice, no source)
		return 30 + 10*n, 39 + 10*n
	case n <= 10 && k.counted: // French masters: M0 35-39, M1 40-44, … (from memory)
		return 35 + 5*n, 39 + 5*n
	case g.young: // J10: 10 and under, or from the group below
		return before(k.starts[c], n, -1) + 1, n
	case n <= 20 && k.nextOfAny(19) == 20 && k.nextOfAny(20) == 21: // H16, H20, H21: who is no older, as in the north of Europe
		return before(k.starts[c], n, -1) + 1, n
	case n == 10 && k.step[c] == 10 && k.nextOfAny(n) >= 20: // before groups of ten years, whichever comes next
		return n, 19
	case n >= 10 && n < 30 && k.step[c] == 10 && k.nextOfAny(n) == n+10: // the first of the groups of ten years
		return n, n + 9
	case n < 18 && next == n+1 || n < 18 && before(k.starts[c], n, 0) == n-1: // single years
		return n, n
	case n < 18 && k.nextOfAny(n) > n+2 && k.nextOfAny(n) <= n+6: // M16, M20: up to the next group
		return n, k.nextOfAny(n) - 1
	case n < 18 && n%5 == 0 && k.fivesOfYouth():
		return n, n + 4
	case n < 18:
		return n, n + 1
	case n < 24:
		if next == 0 || next > k.scheme.Masters {
			next = k.scheme.Masters
		}
		return n, next - 1
	case n < 35 && n >= 25 && k.step[c] == 10 && (next == 0 || next >= n+10):
		return n, n + 9
	case n < 35, n == 35 && next == 40:
		return n, n + 4
	case k.toTheEnd:
		return n, oldest
	}
	return n, n + k.step[c] - 1
}

// fivesOfYouth says whether nothing shows that the groups of the young are not five years wide like those of
// the grown-up, M10, M15, M30, M35: all begin with a multiple of five, and five-year groups of the grown-up,
// from 20 to 34, are there.
func (k *groupColumn) fivesOfYouth() bool {
	grown := false
	for _, starts := range k.starts {
		for _, s := range starts {
			if s < 20 && s%5 != 0 {
				return false
			}
			grown = grown || s >= 25 && s < 35
		}
	}
	return grown && len(k.unders) == 0
}

// nextOfAny is the first age after n with which a group of men or of women begins, 0 where
// there is none.
func (k *groupColumn) nextOfAny(n int) int {
	next := 0
	for _, starts := range k.starts {
		if s := after(starts, n, 0); s > 0 && (next == 0 || s < next) {
			next = s
		}
	}
	return next
}

// adultText is a group called adults. Common practice, no source.
var adultText = regexp.MustCompile(`(?i)\b(?:adults?|adultes?|adultos?|adulti|voksne?|erwachsener?|volwassenen?|vuxna?)\b`)

// seniorAges is from the end of the juniors to the first masters group: 18 to
// 34, or to 39 where the column shows that masters begin at 40, and without an end
// where it shows no masters. grown says that nothing shows where the juniors end.
func (k *groupColumn) seniorAges(c int) (lo, hi int, grown bool) {
	lo, grown = 18, true
	if n := len(k.unders); n > 0 && k.unders[n-1] >= 17 && k.unders[n-1] <= 23 {
		lo, grown = k.unders[n-1], false
	}
	if hi = k.scheme.Masters - 1; k.frenchVeterans {
		hi = 39 // V1 is from 40 on
	}
	// Half of those who run every week are masters (rule of thumb, no source): seven seniors and no master
	// by chance are one in 128, in a list of several groups. Where masters are a group of their own, nobody is called an adult.
	if k.elders == 0 && len(k.entries) > 1 && (k.seniors >= 7 || k.adults) {
		return lo, oldest, grown
	}
	// Of masters, about one in five is under 40: two lines or three without one are as likely where groups
	// begin at 40 as where they begin at 35, and a window that is too wide excludes nobody.
	none35 := true
	for _, s := range k.starts {
		none35 = none35 && !slices.Contains(s, 35)
	}
	first := after(k.starts[c], 34, 0)
	if hi < 39 && (none35 && k.nextOfAny(34) >= 40 || first == 40 && k.step[c] == 10) {
		hi = 39
	}
	// Where groups of ten years begin with 40-49, or later as far as they are seen, seniors may be all who are younger.
	if len(k.lows) > 0 && hi < 39 && k.tenBands && !slices.ContainsFunc(k.lows, func(lo int) bool { return lo >= 30 && lo < 40 }) {
		hi = 39
	}
	// "V40-59": the first group of masters with its bounds, of ten years or more, begins where the seniors end.
	band := 0
	for i := range k.entries {
		if g := k.entries[i].g; g.kind == between && g.hi-g.lo >= 9 && g.lo >= 35 && g.lo <= 40 && (band == 0 || int(g.lo) < band) {
			band = int(g.lo)
		}
	}
	if band > hi && len(k.starts[c]) == 0 {
		hi = band - 1
	}
	// "Senior", "40+", "50+": who is of no group that has no end is younger than the first of them.
	var open35 []int
	for i := range k.entries {
		if g := k.entries[i].g; g.kind == open && g.lo >= 35 && !slices.Contains(open35, int(g.lo)) {
			open35 = append(open35, int(g.lo))
		}
	}
	if len(open35) > 1 && slices.Min(open35) == 40 && hi < 39 && k.nextOfAny(34) == 0 && band == 0 {
		hi = 39
	}
	// Who is called an adult is of no group of the older. Beside veterans without an age, these may begin with 40.
	eldest := func(kinds ...groupKind) (least int) {
		for _, e := range k.entries {
			if lo := int(e.g.lo); slices.Contains(kinds, e.g.kind) && lo >= 35 && (least == 0 || lo < least) {
				least = lo
			}
		}
		return least
	}
	if from := eldest(open, start, between); k.adults && from > 0 {
		hi = max(hi, from-1)
	} else if from == 0 && slices.ContainsFunc(k.entries, func(e groupEntry) bool { return e.g.kind == veteran }) {
		hi = max(hi, 39)
	}
	if slices.ContainsFunc(k.starts[:], func(starts []int) bool { return slices.Contains(starts, 30) }) {
		hi = 29 // M30 is the first masters group, as in Germany, for women where only W30 is seen among them
	}
	return lo, hi, grown
}

// find gives the settled entry of a cell. Spellings beyond the limit are read
// into spare.
func (k *groupColumn) find(text string, spare *groupEntry, scratch *[]byte) *groupEntry {
	if i, ok := k.at[text]; ok {
		return &k.entries[i]
	}
	*spare = k.parse(text, scratch)
	k.resolve(spare)
	return spare
}

// birth is the birth window of somebody in this group, reckoned on a day.
func (e *groupEntry) birth(on unit.Day) age.Window {
	if !e.known {
		return age.Window{}
	}
	if e.day != on || !e.window.Known() {
		e.day = on
		if e.g.kind == bornIn {
			e.window = age.Window{Lo: age.OfYear(fullYear(e.lo, on)).Lo, Hi: min(age.OfYear(fullYear(e.hi, on)).Hi, age.OfAges(youngestAge, youngestAge, on).Hi)}
		} else {
			e.window = age.OfAges(e.lo, e.hi, on)
		}
	}
	return e.window
}

// fullYear completes a two-digit year of birth: the latest year that makes
// somebody at least three on the day.
func fullYear(y int, on unit.Day) int {
	if y >= 100 {
		return y
	}
	now, _, _ := on.Date()
	century := now / 100 * 100
	if century+y > now-3 {
		century -= 100
	}
	return century + y
}

// describe lists the groups and their ages.
func (k *groupColumn) describe() (means, why string) {
	var parts []string
	unread := 0
	for _, e := range k.entries {
		switch {
		case e.g.kind == special:
			continue
		case !e.known && e.g.sex == noMark:
			unread += e.n
			continue
		case len(parts) == 6:
			parts = append(parts, "…")
		case len(parts) > 6:
		case !e.known:
			parts = append(parts, fmt.Sprintf("%s = sex only", e.text))
		case e.g.kind == bornIn:
			parts = append(parts, fmt.Sprintf("%s = born %d-%d", e.text, e.lo, e.hi))
		case e.hi >= oldest:
			parts = append(parts, fmt.Sprintf("%s = %d and over", e.text, e.lo))
		default:
			parts = append(parts, fmt.Sprintf("%s = %d-%d", e.text, e.lo, e.hi))
		}
	}
	var ws []string
	if slices.Max(k.step[:]) == 10 {
		ws = append(ws, "the groups are ten years apart")
	} else if slices.MaxFunc(k.starts[:], func(a, b []int) int { return len(a) - len(b) }) != nil {
		ws = append(ws, "groups without an end are five years wide")
	}
	if len(k.unders) > 1 {
		ws = append(ws, fmt.Sprintf("under-groups in use: U%s", strings.Trim(strings.ReplaceAll(fmt.Sprint(k.unders), " ", ", U"), "[]")))
	}
	if k.vrouwen {
		ws = append(ws, "V stands beside M for women")
	}
	if k.letters.why != "" {
		ws = append(ws, k.letters.why)
	}
	if unread > 0 {
		ws = append(ws, fmt.Sprintf("%d cells not understood", unread))
	}
	return "age group: " + strings.Join(parts, ", "), strings.Join(ws, "; ")
}
