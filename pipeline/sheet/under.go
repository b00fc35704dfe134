package sheet

import (
	"slices"
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
}

// namesUnderSexes finds two columns headed by the sexes, "Men" and "Women", that hold the
// names, of which every row has one, and makes them a column of names and one of sexes.
func (t table) namesUnderSexes(lex *lexicon) {
	for i := 0; i < t.grid.len() && i < headingLooks; i++ {
		_, cells := t.grid.at(i)
		if len(cells) > narrow {
			continue
		}
		man, woman, timed := -1, -1, false
		for c, h := range cells {
			f := fold(h)
			if len(f) < 3 {
				continue // "No" is a number here, and elsewhere a woman
			}
			switch g := lex.read(h); {
			case g.known && g.meaning.isName() || menWords[f] && man >= 0 || womenWords[f] && woman >= 0:
				return
			case g.known && g.meaning.isTime():
				timed = true
			case menWords[f]:
				man = c
			case womenWords[f]:
				woman = c
			}
		}
		if man < 0 || woman < 0 || !timed || !t.oneNamed(i+1, man, woman) {
			continue
		}
		sexes := []string{trim(cells[man]), trim(cells[woman])}
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
	yesWords = set("x 1 y yes true t ja j oui o si s sim tak ano igen da jah taip evet v", "ναι", "да", "так")
	noWords  = set("0 n no false nein nej nee non nao nie ne nem nu ei hayir", "нет", "ні", "οχι")
)

// loneSex reads a column whose heading is one sex, with or without a question mark, and whose
// cells say whether it is: "Female" over TRUE and FALSE, "Lady" over crosses, "F?" over F.
// Blank cells say nothing, as nobody says that they are men.
func (s *settler) loneSex() {
	for i, h := range s.headings {
		word := strings.TrimRight(trim(h), " ?")
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
			case kindOf(v) == kStatus:
			case ticked(v):
				m++
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
