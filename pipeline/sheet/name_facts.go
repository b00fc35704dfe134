package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// factsBesideNames gives the sex or the class that eight in ten names of a table, four or more, have beside them a
// column of its own, where none says it yet: "Jo Lee (Dame)", "Mann Al Roe", "Ann Page / 40-44F", "Cy Dee, SEN MASC".
// There it is read as the same words in such a column are. Letters and classes that those who read names know
// stay where they are.
func (t table) factsBesideNames(lex *lexicon) bool {
	l := findHeading(lex, t.head())
	name, sexSaid, classSaid := nameAlone(lex, l)
	if name < 0 || t.grid.len() > typedRows {
		return false
	}
	names, width := t.cellsUnder(l, name)
	if cut, facts, heading := factsOf(names, sexSaid, classSaid); heading != "" {
		return t.moveFacts(l.first, name, width, cut, facts, heading)
	}
	for i := range l.headings {
		cells, width := t.cellsUnder(l, i)
		if cut, facts, heading := besideCells(lex, l, i, cells); heading != "" && !t.explainsAny(l, facts) && !(heading == "Sex" && sexSaid) && !(heading == "Category" && classSaid) {
			if of := ofTwo(l.headings[i]); of != "" {
				t.renameHeading(l.first, i, of)
			}
			return t.moveFacts(l.first, i, width, cut, facts, heading)
		}
	}
	return false
}

// besideCells finds how a sex or a class is parted from the cells of a column of places, times or clubs, or of one
// whose heading says nothing or both: "18:47 M", "Mill AC (F)", "12 V40". Most cells have it, or, behind places and times
// and between marks, some, all of which say that somebody is a woman or which class somebody is in.
func besideCells(lex *lexicon, l layout, column int, cells []string) (factCut, map[string]int, string) {
	of, two := lex.read(l.headings[column]).meaning, ofTwo(l.headings[column]) != ""
	figures := of == Position || of.isTime()
	if !figures && of != Club && !two && (of != Other && of != Notes || len(cells) < 4) {
		return factCut{}, nil, ""
	}
	for _, cut := range factCuts {
		if cut.bare && !figures && !two {
			continue
		}
		facts, n, odd := map[string]int{}, 0, 0
		for _, c := range cells {
			before, fact, ok := cut.part(c)
			switch k := kindOf(before); {
			case !ok, figures && of == Position && k != kInt, of.isTime() && k != kClock, !figures && (k == kInt || k == kClock):
				odd += map[bool]int{true: 1}[figures && !ok && kindOf(c) == kText]
			case saysFact(fact) && !(hasDigit(fact) && (of == Position && !veteranClass.MatchString(fact) || !classWithAge.MatchString(fact))): // "18 min 57 s", "1 of 10", "1 (F1)"
				facts[fact]++
				n++
			default:
				odd++
			}
		}
		if n < 2 {
			continue
		}
		heading := factHeading(facts, true)
		switch {
		case n >= 4 && 10*n >= 9*len(cells) && heading != "":
			return cut, facts, heading
		case odd == 0 && (figures || of == Club && n > 2 && !cut.bare) && oneSided(facts, !figures):
			if heading = "Sex"; anyClass(facts) {
				heading = "Category"
			}
			return cut, facts, heading
		}
	}
	return factCut{}, nil, ""
}

// classWithAge is a class of letters and an age, veteranClass one that no place among men or women looks like.
var (
	classWithAge = regexp.MustCompile(`(?i)^(?:[mfwlhdkvzsnju]{1,3}|vet\.?|under|over|o) ?-?\d\d(?:[-–]\d\d)?\+?$`)
	veteranClass = regexp.MustCompile(`(?i)^(?:[mfwl]?v[mfwl]?|vet\.?|u|under|over|o) ?-?\d\d\+?$`)
)

// saysFact says whether a text is a sex or a class.
func saysFact(s string) bool {
	return factHeading(map[string]int{s: 2}, false) != "" || len(s) == 1 && isLetterOfSex(s)
}

// isLetterOfSex says whether a text is a letter that stands for a sex on its own or beside another.
func isLetterOfSex(s string) bool { return strings.Contains("mfwlhdkvzg", strings.ToLower(s)) }

// oneSided says whether facts that stand on some lines only all say that somebody is a woman, or are all classes with
// an age. Behind places and times W may be a walker.
func oneSided(facts map[string]int, w bool) bool {
	if anyClass(facts) {
		return allFacts(facts, func(f string) bool { return hasDigit(f) && classAndSex(fold(f)) })
	}
	return len(facts) == 1 && allFacts(facts, func(f string) bool {
		f = fold(f)
		return f == "f" || f == "l" || f == "w" && w || text.SexOf(f) == 'W' && len(f) > 2
	}) || allFacts(facts, func(f string) bool { return f == "♀" })
}

func anyClass(facts map[string]int) bool {
	for f := range facts {
		if classAndSex(fold(f)) {
			return true
		}
	}
	return false
}

// explainsAny says whether a line of the table says in words what one of such letters stands for.
func (t table) explainsAny(l layout, facts map[string]int) bool {
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if i == l.first || rowFilled(cells) > 4 {
			continue
		}
		for _, c := range cells {
			for f := range facts {
				if rest, ok := strings.CutPrefix(trim(c), f); ok && len(f) == 1 && strings.HasPrefix(strings.TrimLeft(rest, " )"), "=") {
					return true
				}
			}
		}
	}
	return false
}

// ofTwo is "Club" for a heading that says a club and a class or a sex, "Team/Cat"; "" for others.
func ofTwo(heading string) string {
	club, fact := false, false
	for _, w := range strings.FieldsFunc(fold(heading), func(r rune) bool { return strings.ContainsRune(" /+&", r) }) {
		switch c := headingWords[w]; {
		case c&cClub != 0:
			club = true
		case c&(cSex|cGroup|cAge) != 0, w == "cat":
			fact = true
		default:
			return ""
		}
	}
	if club && fact {
		return "Club"
	}
	return ""
}

// renameHeading gives a column another heading.
func (t table) renameHeading(head, column int, to string) {
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		if i != head || column >= len(cells) {
			return nil, false
		}
		w := slices.Clone(cells)
		w[column] = to
		return w, true
	})
}

// cellsUnder are the filled cells of a column of results, and how wide the table is.
func (t table) cellsUnder(l layout, column int) (texts []string, width int) {
	width = len(l.headings)
	for i := l.first + 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		width = max(width, len(cells))
		if c := trim(cellAt(cells, column)); c != "" && rowFilled(cells) > 1 {
			texts = append(texts, c)
		}
	}
	return texts, width
}

// moveFacts puts such facts into a column of their own behind the others.
func (t table) moveFacts(head, from, width int, cut factCut, facts map[string]int, heading string) bool {
	return t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		if i < head {
			return nil, false
		}
		w := make([]string, width+1)
		copy(w, cells)
		if i == head {
			w[width] = heading
			return w, true
		}
		if c := trim(cellAt(cells, from)); c != "" && rowFilled(cells) > 1 {
			if before, fact, ok := cut.part(c); ok && facts[fact] > 0 {
				w[from], w[width] = before, fact
			}
		}
		return w, true
	}) > 0
}

// factsInHead says whether the first rows of a table have such facts beside their names.
func (t table) factsInHead(lex *lexicon, l layout) bool {
	name, sexSaid, classSaid := nameAlone(lex, l)
	if name < 0 {
		return false
	}
	under := func(column int) (texts []string) {
		for _, line := range t.head()[l.first+1:] {
			if c := trim(cellAt(line.cells, column)); c != "" && rowFilled(line.cells) > 1 {
				texts = append(texts, c)
			}
		}
		return texts
	}
	if _, _, heading := factsOf(under(name), sexSaid, classSaid); heading != "" {
		return true
	}
	for i := range l.headings {
		if _, _, heading := besideCells(lex, l, i, under(i)); heading != "" && !(heading == "Sex" && sexSaid) && !(heading == "Category" && classSaid) {
			return true
		}
	}
	return false
}

// nameAlone is the one column of names under a heading of one line, -1 for none, and whether other columns
// say a sex, and a class or an age.
func nameAlone(lex *lexicon, l layout) (name int, sexSaid, classSaid bool) {
	name = -1
	if l.first < 0 || l.lines != 1 {
		return name, false, false
	}
	for i, h := range l.headings {
		switch lex.read(h).meaning {
		case Name:
			if name >= 0 {
				return -1, false, false
			}
			name = i
		case Sex:
			sexSaid = sexSaid || ofTwo(h) == ""
		case AgeGroup, Age, BirthYear, BirthDate:
			classSaid = classSaid || ofTwo(h) == ""
		}
	}
	if sexSaid && classSaid {
		return -1, false, false
	}
	return name, sexSaid, classSaid
}

// factsOf finds how the names are parted from the facts beside them, the facts, and the heading for them; "" where
// there are none that no column says yet.
func factsOf(names []string, sexSaid, classSaid bool) (cut factCut, facts map[string]int, heading string) {
	for _, cut := range factCuts {
		facts, n := map[string]int{}, 0
		for _, s := range names {
			if before, fact, ok := cut.part(s); ok && isFullName(before) {
				facts[fact]++
				n++
			}
		}
		if n < 4 || 10*n < 8*len(names) {
			continue
		}
		heading := factHeading(facts, cut.bare)
		if heading == "" || cut.known != nil && cut.known(facts) || heading == "Sex" && sexSaid || heading == "Category" && classSaid {
			continue
		}
		return cut, facts, heading
	}
	return factCut{}, nil, ""
}

// factCut parts a cell into a name and what stands beside it; bare is without any mark between. known says that
// such facts are others' to read.
type factCut struct {
	part  func(string) (name, fact string, ok bool)
	bare  bool
	known func(map[string]int) bool
}

var factCuts = []factCut{
	{part: behindInBrackets, known: func(facts map[string]int) bool {
		return allFacts(facts, func(f string) bool {
			return isSexLetter(f) || hasDigit(f) && !strings.Contains(f, " ") || !strings.Contains(f, " ") && text.SexOf(fold(f)) != 0 && !addresses[fold(f)]
		})
	}},
	{part: beforeInBrackets, known: func(facts map[string]int) bool { return allFacts(facts, isSexLetter) }},
	{part: behindMark, known: func(facts map[string]int) bool {
		return allFacts(facts, func(f string) bool { return strings.ContainsAny(f, "()[]") })
	}},
	{part: wordsBehind(2), bare: true},
	{part: wordsBehind(1), bare: true, known: func(facts map[string]int) bool {
		return allFacts(facts, func(f string) bool { _, _, ok := classOfName("Jo Lee " + f); return ok })
	}},
	{part: wordBefore, bare: true, known: func(facts map[string]int) bool { return allFacts(facts, isSexLetter) }},
}

func allFacts(facts map[string]int, is func(string) bool) bool {
	for f := range facts {
		if !is(f) {
			return false
		}
	}
	return true
}

// isSexLetter says whether a fact is one of the letters for a sex that are known wherever they stand.
func isSexLetter(s string) bool { return len(s) == 1 && strings.IndexByte("MFWmfw", s[0]) >= 0 }

func behindInBrackets(s string) (name, fact string, ok bool) {
	n := len(s)
	if n < 4 || s[n-1] != ')' && s[n-1] != ']' {
		return "", "", false
	}
	at := strings.LastIndexAny(s[:n-1], "([")
	if at < 1 {
		return "", "", false
	}
	return trim(s[:at]), trim(s[at+1 : n-1]), true
}

func beforeInBrackets(s string) (name, fact string, ok bool) {
	if s[0] != '(' && s[0] != '[' {
		return "", "", false
	}
	end := strings.IndexAny(s, ")]")
	if end < 2 {
		return "", "", false
	}
	return trim(s[end+1:]), trim(s[1:end]), true
}

// behindMark cuts at the last mark; a dash without spaces is part of a name.
func behindMark(s string) (name, fact string, ok bool) {
	at, end := -1, -1
	for _, mark := range [...]string{" - ", " – ", " — ", "/", "|", ";", ","} {
		if i := strings.LastIndex(s, mark); i > at {
			at, end = i, i+len(mark)
		}
	}
	if at < 3 {
		return "", "", false
	}
	return strings.TrimRight(s[:at], " "), trim(s[end:]), true
}

func wordsBehind(n int) func(string) (name, fact string, ok bool) {
	return func(s string) (name, fact string, ok bool) {
		at := len(s)
		for range n {
			if at = strings.LastIndexByte(s[:at], ' '); at < 0 {
				return "", "", false
			}
		}
		return strings.TrimRight(s[:at], " "), trim(s[at+1:]), !strings.ContainsAny(s[at:], "()[]")
	}
}

func wordBefore(s string) (name, fact string, ok bool) {
	fact, name, ok = strings.Cut(s, " ")
	return trim(name), fact, ok && !strings.ContainsAny(fact, "()[]")
}

// isFullName says whether a text may be the whole name of somebody: two words or more, or the family name before a
// comma, and no figure.
func isFullName(s string) bool {
	return strings.Contains(s, " ") && !hasDigit(s) && strings.TrimRight(s, " ,;/|–—-([") == s
}

// factHeading is the heading of a column that holds nothing but such facts, Sex or Category; "" where they are
// anything else. Letters without a mark are a sex only where there are two of them.
func factHeading(facts map[string]int, bare bool) string {
	letters, sexes, classes, men, women := "", 0, 0, false, false
	for f, n := range facts {
		folded := fold(f)
		said := text.SexOf(folded)
		if titlesBehind[folded] {
			said = 'M'
		}
		men, women = men || said == 'M', women || said == 'W'
		switch {
		case utf8.RuneCountInString(f) == 1:
			if letters += folded; n < 2 && len(facts) > 1 && bare || hasDigit(f) {
				return ""
			}
		case said != 0 || kindOf(f) == kSex:
			sexes++
		case classAndSex(folded):
			classes++
		default:
			return ""
		}
	}
	switch {
	case classes > 0 && letters == "":
		return "Category"
	case classes > 0 || letters != "" && (sexes > 0 || len(facts) != 2 || !text.SexPair(letters)):
		return ""
	case letters != "", sexes > 0 && (!bare || men && women || len(facts) > 1):
		return "Sex"
	}
	return ""
}

// addresses are titles of address, which stand before a name as a rule.
var addresses = set("mr mrs ms miss herr frau hr fr mme sr sra")

// titlesBehind are titles of men behind a name that are another word elsewhere.
var titlesBehind = set("sr dhr")

// classAndSex says whether a folded text is a class, or words for a sex and for a class: "m40 fem", "25m", "senior man".
func classAndSex(folded string) bool {
	if kindOf(folded) == kGroup {
		return true
	}
	parts := strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" /()", r) })
	return len(parts) > 1 && len(parts) <= 3 && slices.ContainsFunc(parts, hasLetter) && !slices.ContainsFunc(parts, func(w string) bool {
		return kindOf(w) != kGroup && kindOf(w) != kSex && text.SexOf(w) == 0 && !groupWords[w] && !besideClass[w] && !digitsOnly(w)
	}) || figureAndSex(folded)
}

// besideClass are words of classes without an age, beside a sex.
var besideClass = set("sen senior seniors open vet veteran vets masters master junior jun m f w")

// figureAndSex says whether a text is an age, or from one to another, and the letter of a sex: "25m", "40-44f".
func figureAndSex(f string) bool {
	n := len(f)
	if n < 3 || n > 6 || strings.IndexByte("mfw", f[n-1]) < 0 {
		return false
	}
	from, to, two := strings.Cut(f[:n-1], "-")
	return digitsOnly(from) && len(from) == 2 && (!two || digitsOnly(to) && len(to) == 2)
}
