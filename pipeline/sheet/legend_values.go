package sheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// explainValues finds a legend from the other side: every text of a column begins a line
// beside the table, or a part of one, whose rest says ages or a sex. "Vet. A: de 40 a 49
// años", "Kat. I: 20-29 lat", "M1: 30-39 let", "w = women, blank = men", "* = lady". So a
// legend outweighs what a class seems to say by itself.
func (p *Part) explainValues(lines []string) {
	var pieces []string
	for _, l := range lines {
		pieces = append(pieces, legendPieces(l)...)
	}
	for _, c := range p.Columns {
		if !mayBeClass[c.Meaning] || c.Index >= len(p.rules.kinds) {
			continue
		}
		texts := columnTexts(p, c.Index)
		if len(texts) == 0 || len(texts) > 30 {
			continue
		}
		if sayThemselves(texts) {
			continue
		}
		if m := c.Meaning; len(texts) < 2 && (m == GroupPlace || m == SexPlace || m == Number || m == Session) {
			continue
		}
		said := pieces
		if _, inside, ok := strings.Cut(c.Heading, "("); ok {
			said = append(legendPieces(strings.Trim(inside, " )")), pieces...)
		}
		legend, sexes := p.legendFor(texts, c.Heading, said)
		if legend == nil || sexes && p.Index(Sex) >= 0 && c.Meaning != Sex || !sexes && p.Index(AgeGroup) >= 0 && c.Meaning != AgeGroup {
			continue
		}
		m := AgeGroup
		if sexes {
			m = Sex
		}
		explained := p.column(c.Index)
		explained.Meaning, explained.Why = m, fmt.Sprintf("a line beside the table says what its classes are: %s is %q", texts[0], legend[legendKey(texts[0])])
		p.rules.legend, p.rules.legendColumn = legend, c.Index
		return
	}
}

// explainCells writes in place of the letters in a column of courses or of names what a line beside the table says
// that each of them stands for, "A = Alder Bank, B = Mill Leat", "J: Jo Lee".
func (p *Part) explainCells(lines []string) {
	g, ok := p.src.(*grid)
	if !ok {
		return
	}
	for _, c := range p.Columns {
		course := c.Meaning == Other && headingWords[fold(c.Heading)]&cCourse != 0 // headed so, but of letters
		if c.Meaning != Course && c.Meaning != Name && !course {
			continue
		}
		texts := columnTexts(p, c.Index)
		if len(texts) < 2 || slices.ContainsFunc(texts, func(t string) bool { return len(t) > longestKey || !hasLetter(t) }) {
			continue
		}
		means := map[string]string{}
		for _, l := range lines {
			for _, m := range slices.Concat(keyAndMeans.FindAllStringSubmatch(l, -1), lineOfKey.FindAllStringSubmatch(l, -1)) {
				if key := legendKey(m[1]); hasLetter(m[2]) && hasNoDigit(m[2]) && !isSexWord(m[2]) && means[key] == "" {
					means[key] = m[2]
				}
			}
		}
		if slices.ContainsFunc(texts, func(t string) bool { return means[legendKey(t)] == "" }) {
			continue
		}
		explained := p.column(c.Index)
		if course {
			explained.Meaning = Course
		}
		p.coursesTold = p.coursesTold || explained.Meaning == Course
		explained.Why += fmt.Sprintf("; a line beside the table says what its letters stand for: %s is %q", texts[0], means[legendKey(texts[0])])
		g.mend(func(_, row int, cells []string) ([]string, bool) {
			said := means[legendKey(cellAt(cells, c.Index))]
			if row < p.rules.first || said == "" {
				return nil, false
			}
			w := slices.Clone(cells)
			w[c.Index] = said
			return w, true
		})
	}
}

// keyAndMeans is a letter or two and what they stand for among others on a line, lineOfKey a line of its own for one.
var (
	keyAndMeans = regexp.MustCompile(`(?:^|[,;|:(]) *([\pL\d]{1,3}) *= *([^,;|=:()]*[^,;|=:() ])`)
	lineOfKey   = regexp.MustCompile(`^(\pL{1,3}) *(?:[:–-] +|\| )([^|:=,;]*[^|:=,; ])$`)
)

// longestKey is how many letters stand for a course or a name at most.
const longestKey = 3

// mayBeClass are the meanings of columns whose cells a legend may explain: a number or a colour may stand for a class
// as well, and a wave or a kind of number be that of one sex.
var mayBeClass = map[Meaning]bool{AgeGroup: true, Sex: true, Other: true, Age: true, Notes: true, GroupPlace: true, SexPlace: true, Number: true, Session: true}

// legendPieces are the pieces of a line each of which may explain a class: between marks, sentences, and before each
// sign of equality; a row of two cells is one, and two classes with a stroke between them, "MA/LA: 18-39", are two.
func legendPieces(line string) (pieces []string) {
	if len(line) > 400 {
		return nil
	}
	if inside, ok := strings.CutPrefix(line, "("); ok && strings.HasSuffix(inside, ")") && !strings.Contains(inside, "(") {
		line = strings.TrimSuffix(inside, ")") // "(1 = men, 2 = women)"
	}
	if parts := keyGap.Split(line, -1); len(parts) > 1 && !slices.ContainsFunc(parts, func(part string) bool { return !keyPiece.MatchString(part) }) {
		line = strings.Join(parts, ";") // "X: ladies  Y: gents", "a - men / b - ladies"
	}
	if cells := strings.Split(line, " | "); len(cells) == 2 && trim(cells[0]) != "" && !strings.ContainsAny(line, "=:") && len([]rune(trim(cells[0]))) <= 4 {
		line = trim(cells[0]) + " = " + trim(cells[1])
	}
	for _, piece := range strings.FieldsFunc(sentenceEnd.ReplaceAllString(line, "$1;"), func(r rune) bool { return strings.ContainsRune(",;|\n", r) }) {
		if piece = trim(piece); piece == "" {
			continue
		}
		if m := codesAndWords.FindAllString(piece, -1); len(m) > 1 {
			pieces = append(pieces, m...) // "0 = male 1 = female"
			continue
		}
		if m := twoClasses.FindStringSubmatch(piece); m != nil {
			pieces = append(pieces, m[1]+m[3], m[2]+m[3])
			continue
		}
		pieces = append(pieces, piece)
	}
	return pieces
}

var (
	keyGap        = regexp.MustCompile(` {2,}| / `)
	keyPiece      = regexp.MustCompile(`^(?:[\pL\d]{1,3} ?[=:–-]|[*#+†‡°§^]+) ?\S.*$`)
	sentenceEnd   = regexp.MustCompile(`(?i)(\b(?:men|women|ladies|gents|males?|females?|boys|girls|over|under|plus|older|younger)|\d\d|\+)\. `)
	codesAndWords = regexp.MustCompile(`[\pL\d]{1,3} ?= ?\pL{2,}|\b\d ?= ?\pL\b`)
	twoClasses    = regexp.MustCompile(`^(\pL{1,3}\d?) ?/ ?(\pL{1,3}\d?)( ?[=:–-] ?\S.*)$`)
)

// sayThemselves says whether every text is a group with its age: W40, M45.
func sayThemselves(texts []string) bool {
	for _, t := range texts {
		digits := 0
		for _, r := range t {
			if r >= '0' && r <= '9' {
				digits++
			}
		}
		if digits < 2 || kindOf(t) != kGroup {
			return false
		}
	}
	return true
}

// openAges are ages without a beginning or an end.
var openAges = regexp.MustCompile(`(?i)\d ?\+|\b(?:over|under|above|below|u) ?-?\d|\d+ (?:plus|and over|or over|and older|and under)\b`)

// legendKey is what a text of a column is looked up by: its folded form, or itself where it
// is nothing but signs.
func legendKey(text string) string {
	if f := fold(text); f != "" {
		return f
	}
	return trim(text)
}

// legendFor gives what the texts of a column are, nil where the pieces don't explain every
// one of them; sexes says that they are sexes and no ages.
func (p *Part) legendFor(texts []string, heading string, pieces []string) (legend map[string]string, sexes bool) {
	legend = map[string]string{}
	ages, blank := 0, ""
	for _, piece := range pieces {
		if head, rest, ok := strings.Cut(piece, ":"); ok && strings.Contains(rest, "=") && fold(head) == fold(heading) {
			piece = trim(rest) // "Kat.: A = 20-29"
		}
		if first, rest, ok := strings.Cut(piece, " "); ok && (categoryWords[strings.TrimSuffix(fold(first), " ")] || shortCategory[fold(first)] || fold(first) == fold(heading)) {
			if _, means := longestText(texts, piece); means == "" {
				piece = rest // "Kat. I: 20-29 lat"
			}
		}
		if word, means, ok := strings.Cut(piece, "="); ok && blankWords[fold(word)] && isSexWord(means) {
			blank = trim(means)
			continue
		}
		text, means := longestText(texts, piece)
		if before, inside, ok := strings.Cut(means, "("); ok && isSexWord(inside) && !isSexWord(before) {
			means = trim(inside) // "open (men)"
		}
		if means == "" || legend[legendKey(text)] != "" {
			continue
		}
		switch {
		case isSexWord(means), len(text) == 1 && hasDigit(text) && sexLetters[fold(means)]:
		case strings.ContainsAny(means, "0123456789") && !strings.Contains(means, ":") && len(means) <= 40:
			ages++
		default:
			continue
		}
		legend[legendKey(text)] = means
	}
	for _, t := range texts {
		if legend[legendKey(t)] == "" {
			return nil, false
		}
	}
	if len(texts) < 2 && (ages > 0 && (hasDigit(texts[0]) || !openAges.MatchString(legend[legendKey(texts[0])])) || ages == 0 && blank == "" && len(fold(texts[0])) > 1) {
		return nil, false // one class explains nothing, unless it is said to have no end: "V = vet 40+"
	}
	if blank != "" && ages == 0 {
		legend[""] = blank
	}
	withSex(legend, texts, pieces)
	return legend, ages == 0
}

// sexLetters are letters that stand for a sex behind a figure, "1=F 2=M".
var sexLetters = set("m f w")

// shortCategory are short words for a class before it.
var shortCategory = set("kat cat cl kl kateg ak gr key keys code codes legend legende schlussel clave legenda chiave sex gender geschlecht sexe sexo sesso kon kjonn geslacht", "кат", "гр")

// blankWords stand for cells without anything.
var blankWords = set("blank empty none nothing leer vide vacio vuoto vazio leeg tom tyhja puste prazdne ures", "no mark", "no letter", "ohne", "sans", "sin marca", "ohne angabe")

// isSexWord recognises a word for men or women and nothing else.
func isSexWord(s string) bool {
	f := fold(s)
	return (menWords[f] || womenWords[f] || sexWords[f] || text.SexOf(besideSexes.Replace(f)) != 0) && utf8.RuneCountInString(f) > 1 && f != "other" && f != "unspecified"
}

// besideSexes leaves out what stands between two words for one sex: "girls and women".
var besideSexes = strings.NewReplacer(" and ", " ", " und ", " ", " et ", " ", " y ", " ", " e ", " ")

// longestText is the longest of the texts with which a piece begins, and what the piece says
// of it.
func longestText(texts []string, piece string) (text, means string) {
	for _, t := range texts {
		n := len(t)
		if n <= len(text) || len(piece) <= n || !strings.EqualFold(piece[:n], t) {
			continue
		}
		rest := piece[n:]
		if r, _ := utf8.DecodeRuneInString(rest); !strings.ContainsRune(" \t=:-–—(", r) {
			continue
		}
		if oneWord.MatchString(rest) {
			continue
		}
		if k := strings.IndexAny(rest, "=:"); k > 1 && beforeMeans(rest[:k]) {
			rest = rest[k:] // "Pink bib = men", "Y (yellow) = men"
		}
		if m := strings.Trim(rest, " \t=:-–—()."); m != "" && (strings.ContainsAny(rest[:min(len(rest), 4)], "=:-(") || strings.Contains(rest, "–") || hasDigit(m) || !hasLetter(t) && len([]rune(t)) == 1 && isSexWord(m)) {
			text, means = t, m
		}
	}
	return text, means
}

// beforeMeans says whether what stands between a class and the sign before its meaning is what the class is of, "bib"
// or "numbers", or another word for it in brackets.
func beforeMeans(s string) bool {
	if s = trim(s); strings.HasPrefix(s, "(") && strings.HasSuffix(s, ")") {
		return !hasDigit(s)
	}
	return ofClass[fold(s)]
}

// ofClass are such words. Common practice, no source.
var ofClass = set("bib bibs number numbers wave waves group band bands wristband wristbands tag tags vest vests cap caps start colour color class startnummer startnummern nummer nummern welle dossard dossards vague dorsal dorsales pettorale pettorali")

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// withSex adds the sex that a letter of the class says to what the legend says of it, where
// the legend says the same of a class that differs in that letter, or other ages near them, whether
// or not somebody is in it: MA and ŽA are 15-29. Classes of these letters of which there is no second
// are of their sexes then: MD, of men over 60.
func withSex(legend map[string]string, texts, pieces []string) {
	letters := map[rune]bool{}
	for _, t := range texts {
		r, n := utf8.DecodeRuneInString(t)
		if n == len(t) || !letterOfOne(r) {
			continue
		}
		for _, piece := range pieces {
			q, _ := utf8.DecodeRuneInString(piece)
			if _, other := longestText([]string{string(q) + t[n:]}, piece); q != r && letterOfOne(q) && nearAges(other, legend[legendKey(t)]) {
				letters[r], letters[q] = true, true
				break
			}
		}
	}
	for _, t := range texts {
		if r, n := utf8.DecodeRuneInString(t); letters[r] && len(letters) == 2 && n < len(t) {
			legend[legendKey(t)] = strings.ToUpper(string(r)) + " " + legend[legendKey(t)]
		}
	}
}

// letterOfOne says whether a letter may stand for a sex.
func letterOfOne(r rune) bool { return kindOf(string(r)) == kSex || sexSaid(string(r)) != 0 }

// nearAges says whether two texts say the same ages, or some that begin and end within ten years of one another.
func nearAges(a, b string) bool {
	if a == b {
		return a != ""
	}
	m, n := numbers.FindAllString(a, -1), numbers.FindAllString(b, -1)
	if len(m) == 0 || len(m) > 2 || len(m) != len(n) {
		return false
	}
	for i := range m {
		if math.Abs(looseNumber(m[i])-looseNumber(n[i])) > 10 {
			return false
		}
	}
	return true
}
