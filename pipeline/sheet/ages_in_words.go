package sheet

import (
	"strings"
	"unicode"

	"lapwing/pipeline/text"
)

// ageWords and birthWords stand beside an age or a year of birth in a cell, as a unit or as a label.
var ageWords, birthWords = wordsIn(text.AgeUnits, "age", "aged", "old", "alter", "edad", "eta", "leeftijd", "alder", "wiek", "vek", "ika", "kor", "歳", "才", "세", "岁", "歲"),
	wordsIn(text.BornWords, "b", "g", "f", "n", "r", "en", "em", "in", "im", "year", "of", "birth", "c", "ca", "circa", "生", "年", "生まれ", "년생")

func wordsIn(list string, more ...string) map[string]bool {
	out := set("", more...)
	for w := range strings.SplitSeq(list, "|") {
		for part := range strings.FieldsSeq(fold(w)) {
			out[part] = true
		}
	}
	return out
}

// inWords is Age or BirthYear where the values of a column say in words, or by a star or brackets around a
// year, that they are ages or years of birth: "34 years old", "born 1992", "*1992", "(1992)"; Other where not.
func (s *settler) inWords(i int) Meaning {
	p := s.profiles[i]
	if p.filled < 4 || len(p.distinct) < 3 {
		return Other
	}
	ages, births, fives := 0, 0, 0
	for v := range p.distinct {
		number, words, around := numberAndWords(v)
		n := looseNumber(number)
		said := func(known map[string]bool) bool {
			for _, w := range words {
				if !known[w] {
					return false
				}
			}
			return true
		}
		switch {
		case len(number) == 4 && n >= 1900 && n <= 2030 && (len(words) > 0 || around) && said(birthWords):
			births++
		case len(number) > 0 && len(number) < 3 && n >= 3 && len(words) > 0 && said(ageWords):
			if ages++; strings.HasSuffix(number, "0") || strings.HasSuffix(number, "5") {
				fives++
			}
		case kindOf(v) != kStatus:
			return Other
		}
	}
	switch {
	case births >= 3 && ages == 0:
		return BirthYear
	case ages >= 3 && births == 0 && 2*fives < ages:
		return Age
	}
	return Other
}

// sayInWords is the same of a column beside which no other says ages or births.
func (s *settler) sayInWords(i int) Meaning {
	if s.find(Age) >= 0 || s.find(BirthYear) >= 0 || s.find(BirthDate) >= 0 {
		return Other
	}
	return s.inWords(i)
}

// numberAndWords takes a cell apart into its only number and the folded words beside it; around says that a
// star stands before it, or brackets around it. "" where it has no number, or more than one.
func numberAndWords(cell string) (number string, words []string, around bool) {
	c := trim(cell)
	from := strings.IndexAny(c, "0123456789")
	if from < 0 || len(c) > 40 {
		return "", nil, false
	}
	to := from
	for to < len(c) && c[to] >= '0' && c[to] <= '9' {
		to++
	}
	before, behind := c[:from], c[to:]
	if strings.ContainsFunc(behind, unicode.IsDigit) || strings.ContainsAny(before+behind, "-–/+%<>") {
		return "", nil, false
	}
	around = strings.HasSuffix(trim(before), "*") || strings.HasSuffix(before, "(") && strings.HasPrefix(behind, ")")
	return c[from:to], strings.Fields(fold(before + " " + behind)), around
}

// shortBirths says whether the whole numbers of a column are years of birth of two figures and no ages: three in
// ten of them would be over 79, or one in ten beside some with a nought before them, as ages are not written.
func (s *settler) shortBirths(i int) bool {
	n, old, noughts := 0, 0, 0
	for _, r := range s.rows {
		c := strings.TrimLeft(trim(cellAt(r.cells, i)), "'’")
		if c == "" {
			continue
		}
		if len(c) != 2 || !digitsOnly(c) {
			return false
		}
		n++
		if c[0] == '0' {
			noughts++
		}
		if c >= "80" {
			old++
		}
	}
	return n >= 5 && (10*old >= 3*n || noughts > 0 && 10*old >= n)
}
