package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// explain finds the legend of a part, lines above or below the table that say what its
// classes are: "A = under 20, B = 20-34". Where they explain a column, its cells are read
// as what they say. A line explains it where it has every class of the column, two or
// more, and hardly any other.
func (p *Part) explain(g *grid) {
	if !p.Whole || p.Kind == Volunteers {
		return
	}
	legend := map[string]string{}
	lines := append([]string(nil), p.Titles...)
	skipped := map[int]bool{}
	for _, s := range p.Skipped {
		skipped[s.Row] = true
	}
	for i := range g.len() {
		if skipped[g.row(i)] && len(lines) < mostLegendLines {
			_, cells := g.at(i)
			lines = append(lines, strings.Join(cells, " | "))
		}
	}
	for _, l := range lines {
		for k, v := range legendOf(l) {
			if _, twice := legend[k]; !twice {
				legend[k] = v
			}
		}
	}
	p.explainCells(lines)
	p.lettersExplained(lines)
	if p.explainValues(lines); p.rules.legend != nil || len(legend) < 2 {
		return
	}
	for _, c := range p.Columns {
		if m := c.Meaning; m != AgeGroup && m != Sex && m != Other && m != Age || c.Index >= len(p.rules.kinds) {
			continue
		}
		if m := c.Meaning; m != AgeGroup && p.Index(AgeGroup) >= 0 {
			continue
		}
		texts, known := columnTexts(p, c.Index), 0
		for _, t := range texts {
			if _, ok := legend[fold(t)]; ok {
				known++
			}
		}
		if known < 2 || known < len(texts) || len(legend) > 2*known+2 {
			continue
		}
		explained := p.column(c.Index)
		explained.Meaning, explained.Why = AgeGroup, fmt.Sprintf("a line beside the table says what its classes are: %s is %q", texts[0], legend[fold(texts[0])])
		p.rules.legend, p.rules.legendColumn = legend, c.Index
		return
	}
}

// lettersExplained leaves a column of letters that look like sexes alone where a line says that one of
// them is something else: "F = first time here", "W: walker". A line that has a word for a sex or an age
// says nothing against it.
func (p *Part) lettersExplained(lines []string) {
	at := p.Index(Sex)
	if at < 0 {
		at = p.Index(AgeGroup)
	}
	if at < 0 {
		return
	}
	texts := columnTexts(p, at)
	if len(texts) == 0 || len(texts) > 4 || slices.ContainsFunc(texts, func(t string) bool { return len([]rune(t)) > 1 }) {
		return
	}
	for _, l := range lines {
		if allLettersIn(l, texts) {
			if c := p.column(at); c != nil {
				c.Meaning, c.Why = Other, fmt.Sprintf("the line “%s” says what its letters are", l)
			}
			return
		}
		if len(l) > 400 || !strings.ContainsAny(l, "=:–-") {
			continue
		}
		for _, piece := range strings.FieldsFunc(l, func(r rune) bool { return strings.ContainsRune(",;|\n", r) }) {
			if _, rest, ok := strings.Cut(piece, ": "); ok && strings.Contains(rest, "=") {
				piece = rest // "Key: F = finished"
			}
			m := letterIs.FindStringSubmatch(trim(piece))
			if m == nil || !slices.Contains(texts, m[1]) || strings.ContainsAny(m[2], "0123456789") || saysOfSex(m[2]) {
				continue
			}
			if c := p.column(at); c != nil {
				c.Meaning, c.Why = Other, fmt.Sprintf("a line beside the table says that %s is %q", m[1], m[2])
			}
			return
		}
	}
}

// allLettersIn says whether a line says of every letter of a column, two or more, what it stands for, in small words of
// which each begins with it and none is for a sex: "F finished, R retired".
func allLettersIn(line string, letters []string) bool {
	pieces := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(",;|", r) })
	if len(letters) < 2 || len(pieces) < len(letters) || len(line) > 200 {
		return false
	}
	said := 0
	for _, piece := range pieces {
		letter, word, ok := strings.Cut(trim(piece), " ")
		if word = trim(word); !ok || len([]rune(letter)) != 1 || !strings.HasPrefix(word, strings.ToLower(letter)) || saysOfSex(word) || hasDigit(word) {
			return false
		}
		if slices.Contains(letters, letter) {
			said++
		}
	}
	return said == len(letters)
}

// letterIs is a letter and what it stands for: "F = first time here", "(M) member".
var letterIs = regexp.MustCompile(`^\(?(\p{Lu})\)?(?: ?[=:–] ?| - )(\pL.*)$`)

// saysOfSex says whether a text has a word for a sex or for an age.
func saysOfSex(text string) bool {
	return slices.ContainsFunc(strings.Fields(fold(text)), func(w string) bool {
		return len(w) == 1 || sexWords[w] || softSexWords[w] || toldMen[w] || toldWomen[w] || headingWords[w]&(cSex|cAge|cGroup) != 0 || kindOf(w) == kSex
	}) || isSection(text)
}

// mostLegendLines is how many lines are looked at for a legend.
const mostLegendLines = 200

// legendOf reads a line of classes and what they are, by the folded class.
func legendOf(line string) map[string]string {
	if len(line) > 400 {
		return nil
	}
	out := map[string]string{}
	for _, piece := range strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(",;|\n", r) }) {
		piece = strings.TrimSpace(piece)
		if label, rest, ok := strings.Cut(piece, ":"); ok && (len([]rune(label)) > 3 || strings.Contains(rest, "=") && !strings.Contains(label, "=")) {
			piece = strings.TrimSpace(rest) // "Classes: A under 20"
		}
		end := strings.IndexFunc(piece, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if end < 1 || len([]rune(piece[:end])) > 3 || !unicode.IsUpper([]rune(piece)[0]) && !codeOfSex(piece) {
			continue
		}
		if oneWord.MatchString(piece[end:]) {
			continue // the headings "M-ce" and "K/M"
		}
		key, value := piece[:end], strings.Trim(piece[end:], " \t=:-–—()")
		if value == "" {
			continue
		}
		if k := kindOf(key); k == kSex || (k != kGroup || letterAndFigure(key)) && (strings.ContainsAny(value, "0123456789") || isSection(value)) { // F may be a class too
			out[fold(key)] = value
		}
	}
	return out
}

// oneWord is what goes on within a word behind its first letters.
var oneWord = regexp.MustCompile(`^[-/]\pL`)

// letterAndFigure says whether a class is one letter and one figure, M5, which says no age by itself.
func letterAndFigure(key string) bool {
	return len(key) == 2 && (key[0]|0x20) >= 'a' && key[0]|0x20 <= 'z' && key[1] >= '0' && key[1] <= '9'
}

// codeOfSex says whether a piece explains a figure that stands for a sex: "1 = male".
func codeOfSex(piece string) bool {
	code, value, ok := strings.Cut(piece, "=")
	code, value = strings.TrimSpace(code), fold(value)
	return ok && len(code) == 1 && code[0] >= '0' && code[0] <= '9' && (sexWords[value] || softSexWords[value])
}
