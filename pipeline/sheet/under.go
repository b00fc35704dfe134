package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// What stands under a heading that is itself the answer: yes or no under "Female?", a cross
// or a time under one of several classes.

// underHeadings looks for such columns.
func (s *settler) underHeadings() {
	if len(s.beside.ticks) > 0 {
		s.bandTicks()
		return
	}
	s.oneOfClasses()
	if len(s.beside.ticks) == 0 && s.find(Sex) < 0 {
		s.loneSex()
	}
	if len(s.beside.ticks) == 0 && s.find(Sex) < 0 && s.find(AgeGroup) < 0 {
		s.lonePlaces()
	}
	if len(s.beside.ticks) == 0 {
		s.bandPlaces()
	}
}

// bandPlaces reads columns headed by age groups whose cells count those of some rows, "V40 | V50 | V60" over 1, 2, 3: who
// has a place there is of that group.
func (s *settler) bandPlaces() {
	var found []tick
	for i, h := range s.headings {
		if m := s.columns[i].Meaning; kindOf(h) != kGroup || !hasDigit(h) || m != Other && m != GroupPlace && m != AgeGroup || !s.countsFrom1(i) {
			continue
		}
		found = append(found, tick{column: i, sex: h})
	}
	if _, ok := s.oneMark(found); len(found) < 2 || !ok || s.find(AgeGroup) >= 0 && !slices.ContainsFunc(found, func(t tick) bool { return t.column == s.find(AgeGroup) }) {
		return
	}
	s.beside.bands = found
	for _, t := range found[1:] {
		s.set(t.column, Other, "heading %q: who has a place here is of that age group", s.headings[t.column])
	}
	s.set(found[0].column, AgeGroup, "who has a place under %q to %q is of that age group", s.headings[found[0].column], s.headings[found[len(found)-1].column])
}

// countsFrom1 says whether the filled cells of a column count from 1 on, each once, and some rows have none.
func (s *settler) countsFrom1(i int) bool {
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if isBlank(c) {
			continue
		}
		if n++; c != strconv.Itoa(n) {
			return false
		}
	}
	return n > 0 && n < len(s.rows)
}

// lonePlaces reads a column whose heading is one sex and places, and whose cells count some of the rows: "F pos" over
// 1, 2, 3, "Lady pos" over L1, L2, "Ladies' places" over "1st lady", beside places of all. Blank cells say nothing.
func (s *settler) lonePlaces() {
	for i, h := range s.headings {
		sex := tickHeading(h)
		if m := s.columns[i].Meaning; s.find(Position) < 0 || len(fold(h)) < 2 || sexSaid(sex) == 0 || m != Other && m != SexPlace && m != GroupPlace && (m != Position || len(s.all(Position)) < 2) {
			continue
		}
		if !s.countsSome(i, sexSaid(sex)) {
			continue
		}
		s.beside.ticks = []tick{{column: i, sex: sex, other: sex, placed: true}}
		s.set(i, Sex, "heading %q: who has a place here is of that sex", h)
		return
	}
}

// countsSome says whether a column counts two of its rows or more, but not all, with nothing beside the numbers but
// what says one sex.
func (s *settler) countsSome(i int, sex byte) bool {
	rows := s.rows[:min(len(s.rows), profileRows)] // later rows are picked here and there
	last, n := 0, 0
	for _, r := range rows {
		c := trim(cellAt(r.cells, i))
		if isBlank(c) {
			continue
		}
		place := firstNumber.FindString(c)
		number := int(looseNumber(place))
		if rest := strings.TrimSpace(ordinalEnd.ReplaceAllString(strings.Replace(c, place, "", 1), "")); place == "" || rest != "" && sexSaid(rest) != sex || number < last || number > last+3 {
			return false
		}
		last = number
		n++
	}
	return n >= 2 && n < len(rows)
}

var (
	firstNumber = regexp.MustCompile(`\d{1,4}`)
	ordinalEnd  = regexp.MustCompile(`^(?:st|nd|rd|th|\.|e|er|ere|º|ª)(?: |$)`)
)

// namesUnderSexes finds two columns headed by the sexes, "Men" and "Women", that hold the
// names, of which every row has one, and makes them a column of names and one of sexes.
func (t table) namesUnderSexes(lex *lexicon) {
	for i := 0; i < t.grid.len() && i < headingLooks; i++ {
		_, cells := t.grid.at(i)
		if len(cells) > narrow {
			continue
		}
		man, woman, timed := -1, -1, false
		sexes := make([]string, 2)
		for c, h := range cells {
			f := fold(h)
			if len(f) < 3 {
				continue // "No" is a number here, and elsewhere a woman
			}
			sex := byte(0)
			if word := withoutNameWords(f); len(word) > 2 || word != f {
				sex = sexSaid(word)
			}
			switch g := lex.read(h); {
			case g.known && g.meaning.isName() && sex == 0 || sex == 'M' && man >= 0 || sex == 'W' && woman >= 0:
				return
			case g.known && g.meaning.isTime():
				timed = true
			case sex == 'M':
				man, sexes[0] = c, trim(h)
			case sex == 'W':
				woman, sexes[1] = c, trim(h)
			}
		}
		if man < 0 || woman < 0 || !timed || !t.oneNamed(i+1, man, woman) {
			continue
		}
		t.grid.mend(func(k, _ int, cells []string) ([]string, bool) {
			if k < i || isBlank(cellAt(cells, man)) && isBlank(cellAt(cells, woman)) {
				return nil, false
			}
			w := slices.Clone(cells)
			for len(w) <= max(man, woman) {
				w = append(w, "")
			}
			switch {
			case k == i:
				w[man], w[woman] = "Name", "Sex"
			case isBlank(w[man]):
				w[man], w[woman] = w[woman], sexes[1]
			default:
				w[woman] = sexes[0]
			}
			return w, true
		})
		return
	}
}

// sexesInPlaces parts places that say the sex of the runner as well, "12 (F3)", "12F", "M12", "12 / F3", "12 (3rd
// lady)", all or those of one sex: the places stay and count on, and what says the sex goes into a column of its own.
func (t table) sexesInPlaces(lex *lexicon) {
	l := findHeading(lex, t.head())
	if l.first >= 0 && l.lines != 1 {
		return
	}
	at, width := -1, len(l.headings)
	if l.first < 0 {
		at = 0
	}
	for i, h := range l.headings {
		switch lex.read(h).meaning {
		case Position:
			if at >= 0 {
				return
			}
			at = i
		case Sex:
			return
		}
	}
	if at < 0 {
		return
	}
	last, men, women, walkers, plain := 0, 0, 0, 0, 0
	for i := l.first + 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		c := trim(cellAt(cells, at))
		width = max(width, len(cells))
		if rowFilled(cells) < 2 || c == "" || hasNoDigit(c) {
			continue
		}
		place, sex := placeAndSex(c)
		if place < last || place > last+4 || classBehindPlace(c) {
			return
		}
		last = place
		switch said := sexSaid(sex); {
		case said == 'M':
			men++
		case said == 'W':
			if women++; fold(sex) == "w" {
				walkers++ // perhaps
			}
		default:
			plain++
		}
	}
	if men == 0 && walkers == women || l.first < 0 && plain > 0 || men+women < 2 || last < 4 || (men == 0 || women == 0) && plain == 0 || men > 0 && women > 0 && plain > men+women {
		return
	}
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		place, sex := placeAndSex(trim(cellAt(cells, at)))
		if i < l.first || i != l.first && sex == "" {
			return nil, false
		}
		w := make([]string, width+1)
		copy(w, cells)
		if w[width] = "Sex"; i != l.first {
			w[at], w[width] = strconv.Itoa(place), sex
		}
		return w, true
	})
}

// classBehindPlace says whether a class with an age stands behind a place: "2 V40".
func classBehindPlace(cell string) bool {
	_, behind, ok := strings.Cut(cell, " ")
	return ok && veteranClass.MatchString(strings.Trim(behind, "()[]-/ "))
}

// sexAside says whether names stand under a sex, or the first row has a place that says one.
func (t table) sexAside(l layout) bool {
	head := t.head()
	for i, h := range l.headings {
		if f := fold(h); withoutNameWords(f) != f && sexSaid(withoutNameWords(f)) != 0 {
			return true
		}
		if _, sex := placeAndSex(trim(cellAt(head[min(l.first+1, len(head)-1)].cells, i))); sex != "" && i == 0 {
			return true
		}
	}
	return false
}

// placeAndSex gives the place of such a cell and what says the sex, "" where nothing does.
func placeAndSex(c string) (place int, sex string) {
	m := placeWithSex.FindStringSubmatch(c)
	if m == nil {
		return 0, ""
	}
	place, _ = strconv.Atoi(m[2])
	if sex = m[1] + m[3]; m[1] != "" && m[3] != "" || sexSaid(sex) == 0 {
		sex = ""
	}
	return place, sex
}

// placeWithSex is a place with letters before it, or with words behind it that may have the place among those.
var placeWithSex = regexp.MustCompile(`^(\pL*)\s*(\d{1,4})(?:[.):]|st|nd|rd|th)?\s*[(/\[–-]?\s*(?:\d{1,4}(?:st|nd|rd|th|\.)?\s*)?(\pL*)\s*\d{0,4}\s*[)\]]?$`)

// withoutNameWords leaves of a folded heading what is no word for a name: "men" of "name men".
func withoutNameWords(f string) string {
	return strings.Join(slices.DeleteFunc(strings.Fields(f), func(w string) bool {
		return headingWords[w]&cName != 0 || w == "names" || w == "runner" || w == "runners"
	}), " ")
}

// oneNamed says whether nearly every row from one on has a name in one of two columns and
// nothing in the other.
func (t table) oneNamed(from, a, b int) bool {
	rows, one, both := 0, map[int]int{}, 0
	for i := from; i < min(t.grid.len(), from+4*profileRows); i++ {
		_, cells := t.grid.at(i)
		x, y := trim(cellAt(cells, a)), trim(cellAt(cells, b))
		switch {
		case rowFilled(cells) < 2:
			continue
		case x != "" && y != "":
			both++
		case looksNamed(x):
			one[a]++
		case looksNamed(y):
			one[b]++
		}
		rows++
	}
	return both == 0 && one[a] > 0 && one[b] > 0 && one[a]+one[b] >= 4 && 10*(one[a]+one[b]) >= 8*rows
}

// sexOfTimes is the word for a sex in a heading that says besides only that times stand there:
// "Mens time", "Time F"; "" for none.
func sexOfTimes(h string) string {
	sex, times := "", false
	for _, w := range strings.Fields(fold(h)) {
		switch {
		case headingWords[w] == cTime:
			times = true
		case sex == "" && kindOf(w) == kSex:
			sex = w
		default:
			return ""
		}
	}
	if !times {
		return ""
	}
	return sex
}

// said tells yes and no apart.
var (
	yesWords = set("x 1 y yes true t ja j oui o si s sim tak ano igen da jah taip evet v kylla", "ναι", "да", "так")
	noWords  = set("0 n no false nein nej nee non nao nie ne nem nu ei nei hayir", "нет", "ні", "οχι")
)

// loneSex reads a column whose heading is one sex, with or without a question mark, and whose
// cells say whether it is: "Female" over TRUE and FALSE, "Lady" over crosses, "F?" over F.
// Blank cells say nothing, as nobody says that they are men.
func (s *settler) loneSex() {
	for i, h := range s.headings {
		word := trim(yesOrNo.ReplaceAllString(trim(h), ""))
		f := fold(word)
		g := s.guesses[i]
		if f == "" || kindOf(word) != kSex || g.known && g.meaning != Sex || s.columns[i].Meaning != Other && s.columns[i].Meaning != Sex || neitherSex[f] && !loneWomen[f] {
			continue
		}
		woman := womenWords[f] || loneWomen[f]
		if !woman && !menWords[f] || len(f) == 1 && word == trim(h) && !s.letterOfSex(f) {
			continue
		}
		yes, no := 0, 0
		for _, r := range s.rows {
			switch c := trim(cellAt(r.cells, i)); {
			case isBlank(c):
			case ticked(c) || yesWords[fold(c)] || fold(c) == f:
				yes++
			case noWords[fold(c)]:
				no++
			default:
				yes = -len(s.rows) - 1
			}
		}
		if yes < 1 || yes*10 > len(s.rows)*9 && no == 0 && len(s.rows) > 5 {
			continue
		}
		other := "female"
		if woman {
			other = "male"
		}
		s.beside.ticks = []tick{{column: i, sex: word, other: other, own: f}}
		s.set(i, Sex, "heading %q: its cells say whether it is so", h)
		return
	}
}

// yesOrNo are question marks at the end of such a heading, "is" before it, and the answers in brackets.
var yesOrNo = regexp.MustCompile(`(?i)^is |[ ?]*(?:\((?:y|yes|j|ja|o|oui|s|si|1|x)(?: ?/ ?(?:n|no|nein|non|0))?\))?[ ?]*$`)

// loneWomen are further headings of a column of women.
var loneWomen = set("lady dam frau fem mulher kona nainen naine")

// letterOfSex says whether a letter by itself heads a column of women (or men): F and L do;
// W does where the other headings are German, as it may be a walker in English.
func (s *settler) letterOfSex(f string) bool {
	switch f {
	case "f", "l":
		return true
	case "w":
		for _, h := range s.headings {
			switch fold(h) {
			case "zeit", "platz", "verein", "alter", "jahrgang", "startnr", "jg":
				return true
			}
		}
	}
	return false
}

// oneOfClasses reads columns that are classes or sexes by their headings, three or more, or
// two sexes over times, of which every row has one filled: with a mark, or with the
// running time.
func (s *settler) oneOfClasses() {
	var cols []int
	clocks, marks, sexes, words := 0, 0, 0, map[int]string{}
	for i, h := range s.headings {
		word := sexOfTimes(h)
		if word == "" {
			word = trim(h)
		}
		k := kindOf(word)
		if k != kGroup && (k != kSex || neitherSex[fold(word)]) {
			continue
		}
		if m := s.columns[i].Meaning; m != Other && m != Sex && m != AgeGroup && m != Time || s.guesses[i].known && s.guesses[i].meaning != Sex && word == trim(h) {
			continue
		}
		c, m, other := 0, 0, 0
		for _, r := range s.rows {
			switch v := trim(cellAt(r.cells, i)); {
			case isBlank(v):
			case kindOf(v) == kClock:
				c++
			case ticked(v):
				m++
			case kindOf(v) == kStatus:
			default:
				other++
			}
		}
		if other*10 > c || c > 0 && m > 0 || c == 0 && word != trim(h) {
			continue
		}
		words[i] = word
		cols = append(cols, i)
		if clocks, marks = clocks+c, marks+m; k == kSex {
			sexes++
		}
	}
	if clocks > 0 && marks > 0 || clocks+marks < 4 || len(cols) < 2 || len(cols) == 2 && (sexes < 2 || clocks == 0) || sexes == len(cols) && clocks == 0 {
		return
	}
	if clocks > 0 && s.find(ChipTime)+s.find(GunTime) >= -1 {
		return
	}
	one := 0
	for _, r := range s.rows {
		n := 0
		for _, i := range cols {
			if !isBlank(cellAt(r.cells, i)) {
				n++
			}
		}
		if n > 1 {
			return
		}
		one += n
	}
	if one*10 < len(s.rows)*8 {
		return
	}
	for _, i := range cols {
		s.beside.ticks = append(s.beside.ticks, tick{column: i, sex: words[i]})
		s.set(i, Other, "heading %q: what stands here says the class", s.headings[i])
	}
	said, class := cols[0], AgeGroup
	if sexes == len(cols) {
		class = Sex
	}
	if clocks > 0 {
		s.beside.timed = true
		s.set(cols[0], Time, "the times stand under their classes, from %q to %q", s.headings[cols[0]], s.headings[cols[len(cols)-1]])
		said = cols[1]
	}
	s.set(said, class, "the class is the heading that something stands under, from %q to %q", s.headings[cols[0]], s.headings[cols[len(cols)-1]])
}
