package sheet

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
)

// beside is what a row's cells are mended by before they are read: a column of
// particles that belong to family names, and ticks under "Men" and "Women".
type beside struct {
	particle, family int // columns; -1 for none
	second           int // column of second family names; -1 for none
	ticks            []tick
	bands            []tick // age groups
	gap              int    // column of times behind the first; -1 for none
	firstMS          int64  // the first runner's time
	unsigned         bool   // the times behind it may have no sign
	ahead            int    // column that holds the first runner's time alone; -1 for none
	timed            bool   // under the ticked headings stand the times

	first      string // what stands in the cell of the first runner, whose time was answered
	firstPlace int    // column of places; -1 for none

	seconds int    // column of times in which some cells have the seconds alone, ":39"; -1 for none
	minutes string // of the row above, as they stand before the seconds
	mark    string // between the two
	above   string // its seconds

	renewed, old int // column of times that stand in place of those in another, on the rows that have one; -1 for none

	bareSeconds bool // the seconds stand without a mark

	letter int // column of places among men and women, of which the letter says the sex; -1 for none
}

// tick is a column in which a mark says the sex that its heading names.
type tick struct {
	column int
	sex    string // or class
	other  string // the sex that "no" says, where it is the only column
	own    string // the folded heading, which may stand for "yes"
	placed bool   // what stands there are places among those of that sex
}

func noneBeside() beside {
	return beside{particle: -1, family: -1, second: -1, gap: -1, firstPlace: -1, ahead: -1, seconds: -1, renewed: -1, letter: -1}
}

func (b *beside) none() bool {
	return b.particle < 0 && b.second < 0 && b.gap < 0 && b.seconds < 0 && b.renewed < 0 && b.letter < 0 && len(b.ticks) == 0 && len(b.bands) == 0
}

// mend writes particles before the family names, and the sex that is ticked into
// the first of the ticked columns.
func (b *beside) mend(cells []string) {
	if b.particle >= 0 && b.particle < len(cells) && b.family < len(cells) {
		if p, f := trim(cells[b.particle]), trim(cells[b.family]); p != "" && f != "" {
			cells[b.family] = p + " " + f
		}
	}
	if b.second >= 0 && b.second < len(cells) && b.family < len(cells) {
		if f, next := trim(cells[b.family]), trim(cells[b.second]); f != "" && next != "" {
			cells[b.family] = f + " " + next
		}
	}
	if b.gap >= 0 && b.gap < len(cells) {
		ms, ok := gapMS(cells[b.gap])
		if !ok && b.firstSaid(cells) {
			ms, ok = 0, true
		}
		if !ok && b.unsigned {
			ms, ok = gapMS("+" + trim(cells[b.gap]))
			ok = ok && (ms != b.firstMS || b.ahead >= 0)
		}
		switch {
		case ok:
			cells[b.gap] = clockText(b.firstMS + ms)
		case b.ahead >= 0 && b.ahead < len(cells) && kindOf(cells[b.ahead]) == kClock:
			cells[b.gap] = cells[b.ahead]
		}
	}
	if b.renewed >= 0 && max(b.renewed, b.old) < len(cells) && kindOf(cells[b.renewed]) == kClock {
		cells[b.old] = cells[b.renewed]
	}
	if b.seconds >= 0 && b.seconds < len(cells) {
		cells[b.seconds] = b.withMinutes(cells[b.seconds])
	}
	if len(b.bands) > 0 {
		group := ""
		for _, t := range b.bands {
			if t.column < len(cells) && !isBlank(cells[t.column]) {
				group, cells[t.column] = t.sex, ""
			}
		}
		if first := b.bands[0].column; first < len(cells) {
			cells[first] = group
		}
	}
	if b.letter >= 0 && b.letter < len(cells) {
		if sex, _, ok := sexAndPlace(cells[b.letter]); ok {
			cells[b.letter] = sex
		}
	}
	if len(b.ticks) == 0 {
		return
	}
	if t := b.ticks[0]; t.other != "" {
		if t.column < len(cells) {
			switch c := trim(cells[t.column]); {
			case isBlank(c):
			case t.placed:
				cells[t.column] = t.sex
			case noWords[fold(c)]:
				cells[t.column] = t.other
			case ticked(c), yesWords[fold(c)], fold(c) == t.own:
				cells[t.column] = t.sex
			}
		}
		return
	}
	sex, time := "", ""
	for _, t := range b.ticks {
		if t.column < len(cells) && marksOne(cells[t.column]) {
			if sex != "" {
				return // two at once say nothing
			}
			sex, time = t.sex, cells[t.column]
		}
	}
	if b.timed {
		if first, second := b.ticks[0].column, b.ticks[1].column; second < len(cells) {
			cells[first], cells[second] = time, sex
		}
		return
	}
	if first := b.ticks[0].column; first < len(cells) {
		cells[first] = sex
	}
}

// firstSaid says whether a row is that of the first runner, whose time was answered.
func (b *beside) firstSaid(cells []string) bool {
	c := trim(cells[b.gap])
	if b.firstPlace < 0 {
		return c == b.first && fold(c) != "" // a blank or a dash may be anybody's
	}
	return c == b.first && strings.TrimRight(trim(cellAt(cells, b.firstPlace)), ".") == "1"
}

// sexesOfPlaces takes the sexes from places among men and women, M1, F1, F2, "2 (F)", "3 Female", where no other
// column says them: in a column of such places, or one of which nothing is known, all cells are places and words or
// letters for a sex, both sexes stand there, and each counts on.
func (s *settler) sexesOfPlaces() {
	if s.find(Sex) >= 0 || s.find(AgeGroup) >= 0 || len(s.beside.ticks) > 0 {
		return
	}
	for i, c := range s.columns {
		if c.Meaning != SexPlace && c.Meaning != GroupPlace && (c.Meaning != Other || s.guesses[i].known && s.guesses[i].meaning != Other && s.guesses[i].meaning != Position) || !s.countsBySex(i) {
			continue
		}
		s.beside.letter = i
		s.set(i, Sex, "heading %q: places among men and women, of which the letters or words say the sex", s.headings[i])
		return
	}
}

// countsBySex says whether the cells of a column are places among men and women that say of which.
func (s *settler) countsBySex(i int) bool {
	last, n := map[byte]int{}, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		c := trim(cellAt(r.cells, i))
		if isBlank(c) {
			continue
		}
		sex, number, ok := sexAndPlace(c)
		said := sexSaid(sex)
		if !ok || said == 0 || number < last[said] || number > last[said]+4 {
			return false
		}
		last[said] = number
		n++
	}
	return n >= 4 && last['M'] > 0 && last['W'] > 0 && last['M']+last['W'] >= n
}

// sexAndPlace parts a place among men or women from what says the sex, before it or behind: "F03", "2 (F)", "3 Male",
// "1/8 F".
func sexAndPlace(c string) (sex string, number int, ok bool) {
	if len(c) > 30 {
		return "", 0, false
	}
	m := placeOfSex.FindStringSubmatch(trim(c))
	if m == nil || (m[1] == "") == (m[3] == "") {
		return "", 0, false
	}
	number, err := strconv.Atoi(m[2])
	return m[1] + m[3], number, err == nil
}

var placeOfSex = regexp.MustCompile(`^\(?(\pL*)\)?[\s.:/-]*(\d{1,4})(?: ?/ ?\d{1,4})?[\s.:/-]*\(?(\pL*)\)?$`)

// particleHeadings are headings of columns that hold the van of van Dijk.
var particleHeadings = set("tussenvoegsel tussenvoegsels tussenv tussenvgsl tussenvoegs tv voorvoegsel voorvoegsels infix prefix particle namenszusatz", "name prefix", "name particle")

// particles finds the column of particles beside family names.
func (s *settler) particles() {
	family := s.find(FamilyName)
	if family < 0 {
		return
	}
	for i := range s.columns {
		if s.columns[i].Meaning != Other || !particleHeadings[fold(s.headings[i])] || s.profiles[i].filled > 0 && s.profiles[i].shareOf(kText, kGroup, kSex, kStatus) < .9 {
			continue
		}
		s.beside.particle, s.beside.family = i, family
		s.set(i, Other, "heading %q: it goes before the family name", s.headings[i])
		return
	}
}

// secondNames finds a column of second family names right behind the first, "Primer apellido | Segundo
// apellido", which go behind those.
func (s *settler) secondNames() {
	family := s.find(FamilyName)
	next := family + 1
	if family < 0 || next >= len(s.columns) || s.columns[next].Meaning != Other && s.columns[next].Meaning != FamilyName || !s.guesses[family].known || !s.guesses[next].known || s.guesses[next].meaning != FamilyName {
		return
	}
	if a, b := s.profiles[family], s.profiles[next]; b.shareOf(kText) < .8 || 2*b.filled < a.filled || fold(s.headings[family]) == fold(s.headings[next]) || s.find(GivenName) < 0 && s.find(Name) < 0 {
		return
	}
	s.beside.second, s.beside.family = next, family
	s.set(next, Other, "heading %q: it goes behind the family name", s.headings[next])
}

// gaps finds a column in which the first runner has a time and all others how far
// they were behind: it grows down the list, as it would not if each were measured
// from the runner before.
func (s *settler) gaps() {
	if s.gapsBesideFirst() {
		return
	}
	timed := s.hasTimes()
	for i, g := range s.guesses {
		behind := g.known && g.meaning == Gap && !timed   // the heading says it, so that no signs have to
		bare := !g.known && s.headings[i] == "" && !timed // all but the first have a plus
		if !behind && (!bare && (!g.known || !g.meaning.isTime()) || !s.behindFirst(i)) {
			continue
		}
		first, last, filled, least := 0.0, int64(-1), 0, 8 // seven gaps that grow by chance: 1 in 5040
		said := s.lex.times.first > 0 && s.saysNoFirst(i)
		if behind || said {
			least = 3
		}
		if said {
			first = s.lex.times.first
		}
		for n, r := range s.rows {
			c := trim(cellAt(r.cells, i))
			if said && n == 0 {
				filled++
				continue
			}
			ms, gap := gapMS(c)
			if !gap && (behind || said) && first > 0 {
				ms, gap = gapMS("+" + c)
				gap = gap && (filled > 1 || float64(ms) < 1000*first)
			}
			switch {
			case c == "" || kindOf(c) == kStatus:
				continue
			case gap && first > 0 && ms >= last:
				last = ms
			case !gap && filled == 0 && kindOf(c) == kClock && strings.Contains(c, ":"):
				first = looseNumber(c)
			case !gap && filled == 0 && dottedTime.MatchString(c):
				first = looseNumber(strings.Replace(c, ".", ":", 1))
			default:
				return
			}
			filled++
		}
		if first < leastFirst || first > mostFirst || filled < least {
			return
		}
		s.beside.gap, s.beside.firstMS, s.beside.unsigned = i, int64(math.Round(first*1000)), behind || said
		if said {
			s.lex.times.firstUsed = true
			s.beside.first, s.beside.firstPlace = trim(cellAt(s.rows[0].cells, i)), s.find(Position)
			s.set(i, Time, "heading %q: how far behind the first the others were, which is added to %s, the first runner's time by an answer", s.headings[i], clockText(s.beside.firstMS))
			return
		}
		s.set(i, Time, "heading %q: the first runner's time, and how far behind it the others were, which is added to it", s.headings[i])
		return
	}
}

// saysNoFirst says whether the first row has no time in a column of times behind the first: nothing,
// a word, or none.
func (s *settler) saysNoFirst(i int) bool {
	if len(s.rows) == 0 {
		return false
	}
	c := trim(cellAt(s.rows[0].cells, i))
	return (kindOf(c) != kStatus || fold(c) == "") && looseNumber(strings.TrimLeft(c, "+ ")) == 0
}

// onlyGaps says whether a column under such a heading holds nothing but times behind the first, with or
// without signs: from nothing, or a first row without, they rise.
func (s *settler) onlyGaps(i int) bool {
	if !s.saysNoFirst(i) {
		return false
	}
	last, n := 0.0, 0
	for _, r := range s.rows[1:] {
		c := strings.TrimLeft(trim(cellAt(r.cells, i)), "+ ")
		if kindOf(c) != kClock {
			continue
		}
		v := looseNumber(c)
		if v < last {
			return false
		}
		last = v
		n++
	}
	return n > 2
}

// gapsBesideFirst finds the first runner's time alone in the column of times, and how far behind it the
// others were in another, under a heading for that or with a plus before each.
func (s *settler) gapsBesideFirst() bool {
	ahead := s.find(Time)
	if ahead < 0 || s.profiles[ahead].count[kClock] != 1 {
		return false
	}
	for i, g := range s.guesses {
		behind := g.known && g.meaning == Gap
		if i == ahead || !behind && (g.known || !s.behindFirst(i)) {
			continue
		}
		first, last, filled := 0.0, int64(-1), 0
		for k, r := range s.rows {
			c, t := trim(cellAt(r.cells, i)), trim(cellAt(r.cells, ahead))
			ms, ok := gapMS(c)
			if !ok && behind {
				ms, ok = gapMS("+" + c)
			}
			switch {
			case kindOf(t) == kClock:
				if k > 0 && filled > 0 || ok && ms != 0 {
					return false
				}
				first = looseNumber(t)
			case ok && first > 0 && ms >= last:
				last = ms
				filled++
			case c == "" || kindOf(c) == kStatus:
			default:
				return false
			}
		}
		if first < leastFirst || first > mostFirst || filled < 3 {
			return false
		}
		s.beside.gap, s.beside.ahead, s.beside.firstMS, s.beside.unsigned = i, ahead, int64(math.Round(first*1000)), behind
		s.set(i, Time, "heading %q: how far behind the first runner the others were, which is added to the time in column %s", s.headings[i], letters(ahead))
		s.set(ahead, Other, "heading %q: the first runner's time alone", s.headings[ahead])
		return true
	}
	return false
}

// hasTimes says whether some column is taken for times of the run.
func (s *settler) hasTimes() bool {
	return s.find(Time) >= 0 || s.find(GunTime) >= 0 || s.find(ChipTime) >= 0
}

// secondsAlone is a time of which the minutes stand in the row above.
var secondsAlone = regexp.MustCompile(`^[-–"”″' ]{0,3}[:.]([0-5]\d)$`)

// bareSeconds is the same without a mark. It stands for seconds only where all of its column do.
var bareSeconds = regexp.MustCompile(`^[-–"”″' ]{0,3}([0-5]\d)$`)

// secondsOnly finds the column of times in which somebody has written the minutes only where they
// change: "18:20", ":39", "19:02".
func (s *settler) secondsOnly() {
	i := s.find(Time)
	if i < 0 || s.beside.gap >= 0 || s.beside.timed {
		return
	}
	whole, alone, bare, sec, falls := 0, 0, 0, "", 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		m := secondsAlone.FindStringSubmatch(c)
		if m == nil {
			if m = bareSeconds.FindStringSubmatch(c); m != nil {
				bare++
			}
		}
		switch at := strings.LastIndexAny(c, ":."); {
		case m != nil:
			if alone++; m[1] < sec {
				falls++
			}
			sec = m[1]
		case at > 0 && len(c) == at+3 && (kindOf(c) == kClock || dottedTime.MatchString(c)):
			whole++
			sec = c[at+1:]
		}
	}
	if alone == 0 || bare > 0 && (whole < 2 || alone < 3 || falls > 0) {
		return
	}
	s.beside.seconds, s.beside.bareSeconds = i, bare > 0
	s.columns[i].Why += "; seconds alone follow the minutes above them"
}

// withMinutes puts the minutes of the row above before seconds that stand alone, unless these
// are fewer than those above: the minute has changed then, and nobody says to which.
func (b *beside) withMinutes(cell string) string {
	c := trim(cell)
	m := secondsAlone.FindStringSubmatch(c)
	if m == nil && b.bareSeconds {
		m = bareSeconds.FindStringSubmatch(c)
	}
	if m != nil {
		if b.minutes == "" || m[1] < b.above {
			return cell
		}
		b.above = m[1]
		return b.minutes + b.mark + m[1]
	}
	if b.minutes = ""; kindOf(c) != kClock && !dottedTime.MatchString(c) {
		return cell
	}
	if at := strings.LastIndexAny(c, ":."); at > 0 && len(c) == at+3 {
		b.minutes, b.mark, b.above = c[:at], c[at:at+1], c[at+1:]
	}
	return cell
}

// gapMS reads how far behind the first somebody was: "+0:19", "+1:02:03.5", "at 0:19", "+ 1.12" and
// "+15 sec" or "+1 min 03 sec".
func gapMS(cell string) (ms int64, ok bool) {
	c := trim(cell)
	if rest, at := strings.CutPrefix(c, "at "); at && rest != "" && rest[0] >= '0' && rest[0] <= '9' {
		c = "+" + rest
	}
	if len(c) < 4 || c[0] != '+' {
		return 0, false
	}
	if m := gapInUnits.FindStringSubmatch(c); m != nil {
		minutes, _ := strconv.Atoi(orText(m[1], "0")) // two figures at most
		seconds, _ := strconv.Atoi(orText(m[2], "0"))
		last := c[len(c)-1]
		return int64(60*minutes+seconds) * 1000, m[1] != "" || m[2] != "" && (last < '0' || last > '9')
	}
	c = trim(c[1:])
	if dottedTime.MatchString(c) {
		c = strings.Replace(c, ".", ":", 1)
	}
	if kindOf(c) != kClock || !strings.Contains(c, ":") || strings.ContainsAny(c, "hmsHMS") {
		return 0, false
	}
	return int64(math.Round(1000 * looseNumber(c))), true
}

// gapInUnits is such a time with its units.
var gapInUnits = regexp.MustCompile(`(?i)^\+ ?(?:(\d{1,2}) ?(?:m|mins?|minutes?|')[., ]{0,2})?(?:(\d{1,2}) ?(?:s|secs?|sek|seconds?|"|'')?\.?)?$`)

// ticked says whether a cell holds a mark and nothing else.
func ticked(cell string) bool {
	switch fold(cell) {
	case "x", "1", "y", "yes", "ja", "oui", "si", "v":
		return true
	}
	return slices.Contains([]string{"✓", "✔", "☑", "√", "•", "●", "✗", "✘", "*", "+", "/"}, trim(cell))
}

// ticks finds two or three columns under headings for men and women in which each
// row has one mark, or the runner's place among them.
func (s *settler) ticks() {
	if s.find(Sex) >= 0 {
		for i := range s.columns {
			if s.columns[i].Meaning == Sex && s.profiles[i].filled > 0 && s.profiles[i].shareOf(kSex) > .5 && len(s.profiles[i].distinct) > 1 {
				return
			}
		}
	}
	var found []tick
	men, women, numbered := false, false, false
	young := youngLetters(s.headings)
	for i, h := range s.headings {
		sexWord := cmp.Or(young[fold(h)], tickHeading(h))
		if sexWord == "" {
			if f := fold(h); f == "s" || f == "xl" || f == "xxl" {
				return // shirts
			}
			continue
		}
		marks, other, places := 0, 0, 0
		for _, r := range s.rows {
			switch c := trim(cellAt(r.cells, i)); {
			case c == "":
			case ticked(c), yesWords[fold(c)]:
				marks++
			case digitsOnly(c) && c != "0", placeOfAll.MatchString(c):
				places++
			case noWords[fold(c)]:
			default:
				other++
			}
		}
		if other*10 > marks+places || marks+places == 0 || places > 0 && len(s.rows) < 6 {
			continue
		}
		found = append(found, tick{column: i, sex: sexWord})
		numbered = numbered || places > 0
		switch sexSaid(sexWord) {
		case 'M':
			men = true
		case 'W':
			women = true
		}
	}
	if len(found) < 2 || len(found) > 3 || !men || !women {
		return
	}
	one, ok := s.oneMark(found)
	if !ok {
		return
	}
	// Those who are not named have no mark; those of a class may have theirs under that.
	classes := func(h string) bool { return kindOf(h) == kGroup }
	if one*10 < len(s.rows)*7 && (numbered || one*10 < len(s.rows)*4 || slices.ContainsFunc(s.headings, classes)) {
		return
	}
	s.beside.ticks = found
	for i, t := range found {
		if i > 0 {
			s.set(t.column, Other, "heading %q: what stands here says the sex", s.headings[t.column])
		}
	}
	s.set(found[0].column, Sex, "what stands under %q and %q", s.headings[found[0].column], s.headings[found[1].column])
}

// youngLetters are the letters at the head of two columns that stand for girls and boys in English,
// Norwegian or French, in which G is either: it depends on the other.
func youngLetters(headings []string) map[string]string {
	for _, pair := range [...]map[string]string{{"g": "girl", "b": "boy"}, {"g": "boy", "j": "girl"}, {"g": "boy", "f": "girl"}} {
		found := 0
		for letter := range pair {
			if slices.ContainsFunc(headings, func(h string) bool { return fold(h) == letter }) {
				found++
			}
		}
		if found == 2 {
			return pair
		}
	}
	return nil
}

// oneMark counts the rows with something under one of some headings; ok is false where a row has two.
func (s *settler) oneMark(found []tick) (rows int, ok bool) {
	for _, r := range s.rows {
		n := 0
		for _, t := range found {
			if marksOne(cellAt(r.cells, t.column)) {
				n++
			}
		}
		if n > 1 {
			return 0, false
		}
		rows += n
	}
	return rows, true
}

// marksOne says whether a cell has something that is not a word for no.
func marksOne(cell string) bool { return !isBlank(cell) && !noWords[fold(cell)] }

// placeOfAll is a place and of how many.
var placeOfAll = regexp.MustCompile(`^\d{1,4} ?(?:/|of|von|de) ?\d{1,4}$`)

// tickHeading is the word for a sex in a heading that says nothing else, or only that
// places stand there: "Men", "M pos", "Platz W", "Boys/Men"; "" for none.
func tickHeading(h string) string {
	if kindOf(h) == kSex || sexSaid(h) != 0 {
		return h
	}
	sex := ""
	for _, w := range strings.Fields(fold(h)) {
		switch {
		case headingWords[w]&(cPlace|cNo) != 0, w[0] >= '0' && w[0] <= '9':
		case kindOf(w) != kSex && sexSaid(w) == 0, sex != "" && (sexSaid(w) == 0 || sexSaid(w) != sexSaid(sex)):
			return ""
		default:
			sex = w
		}
	}
	return sex
}

// sexSaid is the sex, 'M' or 'W', of a text that is a word or a letter for it and says nothing else, 0 for others.
func sexSaid(s string) byte {
	f := fold(s)
	switch {
	case menWords[f]:
		return 'M'
	case womenWords[f], loneWomen[f], f == "l":
		return 'W'
	case len(f) > 1:
		return text.SexOf(f)
	}
	return 0
}

var (
	menWords   = set("m male gents gentlemen men man mens males boys herren manner mannlich hommes homme h hombres hombre uomini mannen heren menn mand herrer herrar man miehet mies mezczyzni mezczyzna muzi muz ferfi erkek moski barbati barbat homes gizonak mehed viriesi vyrai karlar dynion fir muskarci muski ανδρες мужчины чоловіки мъже мушкарци мажи")
	womenWords = set("f w k v z female women woman womens females ladies girls damen frauen weiblich femmes femme dames mujeres mujer donne vrouwen kvinner kvinder kvinnor damer naiset nainen kobiety kobieta zeny zena vrouw kvinna kvinne kvinde donna mulher mulheres noi nok no kadin zenske zenska femei femeie")
)

// belowAge is a heading for all who are younger.
var belowAge = regexp.MustCompile(`^< ?\d{1,2}$`)

// bandTicks finds columns headed by age groups of which each row has a mark in one at most, "<18 | 18-39 |
// 40+".
func (s *settler) bandTicks() {
	var found []tick
	for i, h := range s.headings {
		if p := s.profiles[i]; kindOf(h) != kGroup && !belowAge.MatchString(h) || p.filled == 0 || len(p.distinct) > 2 || !strings.ContainsAny(h, "0123456789") {
			continue
		}
		if slices.ContainsFunc(s.rows, func(r line) bool { c := trim(cellAt(r.cells, i)); return c != "" && !ticked(c) }) {
			continue
		}
		found = append(found, tick{column: i, sex: h})
	}
	if len(found) < 2 || s.find(AgeGroup) >= 0 && s.profiles[s.find(AgeGroup)].filled > 0 && found[0].column != s.find(AgeGroup) {
		return
	}
	if one, ok := s.oneMark(found); !ok || 2*one < len(s.rows) {
		return
	}
	s.beside.bands = found
	for _, t := range found[1:] {
		s.set(t.column, Other, "heading %q: what stands here says the age group", s.headings[t.column])
	}
	s.set(found[0].column, AgeGroup, "what stands under %q to %q", s.headings[found[0].column], s.headings[found[len(found)-1].column])
}

// timeBehindName puts the time that stands behind the name, in its cell, into the cell of the time, where
// that is blank: "Jo Lee '24:17", "Jo Lee (24:17)", "Jo Lee ~24:17?". What is said of the time before it, as
// in "Jo Lee PB 24:17", keeps it where it is.
func timeBehindName(cells []string, name, time int) []string {
	c := trim(cellAt(cells, name))
	if len(c) < 8 || hasNoDigit(c) {
		return cells
	}
	m := clockBehindName.FindStringSubmatch(c)
	if m == nil || !looksNamed(m[1]) || endsSmall(m[1]) && m[1] != strings.ToLower(m[1]) || slices.ContainsFunc(strings.Fields(fold(m[1])), func(w string) bool { return headingWords[w]&(cBest|cTime|cPace|cSplit|cGap) != 0 }) {
		return cells
	}
	out := withCells(cells, max(name, time))
	out[name], out[time] = m[1], m[2]
	if strings.ContainsAny(c, "~≈") && !strings.HasSuffix(m[2], "?") {
		out[time] += "?" // about
	}
	return out
}

// clockBehindName is a name, marks perhaps, a time and perhaps a mark of doubt, with marks behind it.
var clockBehindName = regexp.MustCompile("^(\\pL[^\\d:;()\\[\\]]*?[\\pL.])[\\s(\\['’`´~≈*=:–—-]*[\\s(\\['’`´~≈*=–—-](\\d{1,3}[:;.]\\d\\d(?::\\d\\d)?\\??)[\\s)\\]*.!]*$")
