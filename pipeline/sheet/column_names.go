package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// names settles full names against given and family names.
func (s *settler) names() {
	full, given, family := s.find(Name), s.find(GivenName), s.find(FamilyName)
	switch {
	case full >= 0 && given >= 0 && family < 0:
		if s.contains(full, given) {
			s.columns[full].Why += "; it holds the given name too"
			s.set(given, Other, "heading %q; the full name has it", s.headings[given])
			return
		}
		s.set(full, FamilyName, "heading %q beside a column of given names", s.headings[full])
	case full >= 0 && family >= 0 && given < 0:
		if s.contains(full, family) {
			s.set(family, Other, "heading %q; the full name has it", s.headings[family])
			return
		}
		s.set(full, GivenName, "heading %q beside a column of family names", s.headings[full])
	case full >= 0 && family >= 0 && given >= 0:
		if s.profiles[full].share(kText) > .3 && s.profiles[full].filled >= s.profiles[family].filled && s.contains(full, family) {
			s.set(given, Other, "the full name has it")
			s.set(family, Other, "the full name has it")
			return
		}
		s.set(full, Other, "heading %q beside given and family names", s.headings[full])
	case full < 0 && given < 0 && family >= 0 && s.initials() >= 0:
		s.set(s.initials(), GivenName, "heading %q beside the family names", s.headings[s.initials()])
	case full < 0 && (given >= 0) != (family >= 0):
		i := max(given, family)
		if s.profiles[i].spaces*2 > s.profiles[i].filled {
			s.set(i, Name, "heading %q, but its values are whole names", s.headings[i])
			return
		}
		// The other half may stand in a column without a heading, or under a word for what
		// somebody is called.
		for _, j := range []int{i + 1, i - 1} {
			switch {
			case j < 0 || j >= len(s.columns) || s.profiles[j].share(kText) <= .8:
			case given >= 0 && s.headings[j] == "":
				s.set(j, FamilyName, "no heading, beside the given names")
				return
			case family >= 0 && (s.headings[j] == "" && 2*s.profiles[j].spaces < s.profiles[j].filled && s.mostlyDiffer(j) || calledSo[fold(s.headings[j])]):
				s.set(j, GivenName, "heading %q, beside the family names", s.headings[j])
				return
			}
		}
		if j := s.otherHalf(i); j >= 0 {
			m := FamilyName
			if family >= 0 {
				m = GivenName
			}
			s.set(j, m, "heading %q, single words that hardly repeat beside %q", s.headings[j], s.headings[i])
			return
		}
		s.set(i, Name, "heading %q, the only names on the sheet", s.headings[i])
	case s.halvesOfNames(full):
		s.set(full, GivenName, "heading %q beside %q, with a word in each", s.headings[full], s.headings[full+1])
		s.set(full+1, FamilyName, "heading %q beside %q, with a word in each", s.headings[full+1], s.headings[full])
		if anyWord(s.headings[full], familyMarks) || s.headings[full] == s.headings[full+1] && s.familyBefore(full) {
			s.columns[full].Meaning, s.columns[full+1].Meaning = FamilyName, GivenName
		}
	case full >= 0 && s.profiles[full].spaces*5 < s.profiles[full].filled && full+1 < len(s.columns) && s.headings[full+1] == "" && s.profiles[full+1].share(kText) > .8:
		// One heading "Name" over two columns of names.
		s.set(full, GivenName, "heading %q over two columns of names", s.headings[full])
		s.set(full+1, FamilyName, "second column under %q", s.headings[full])
	}
}

// otherHalf is the column beside one half of the names that holds the other, under a heading that is
// not known: words with a capital, one or two in nearly every cell, that hardly repeat, as towns and clubs
// do where a dozen people come together. -1 for none.
func (s *settler) otherHalf(half int) int {
	for _, j := range []int{half + 1, half - 1} {
		if j < 0 || j >= len(s.columns) || s.columns[j].Meaning != Other || s.guesses[j].known || s.headings[j] == "" || !hasLetter(s.headings[j]) {
			continue
		}
		p := s.profiles[j]
		if p.filled < 12 || p.filled*10 < s.profiles[half].filled*9 || p.share(kText) < .9 || p.spaces*3 > p.filled || len(p.distinct)*10 < min(p.filled, distinctKept)*8 || anyHeadingWord(s.headings[j]) {
			continue
		}
		if !slices.ContainsFunc(s.rows, func(r line) bool { c := trim(cellAt(r.cells, j)); return c != "" && !isName(c) }) {
			return j
		}
	}
	return -1
}

// anyHeadingWord says whether a heading has a word that is known from others.
func anyHeadingWord(heading string) bool {
	return slices.ContainsFunc(strings.Fields(fold(heading)), func(w string) bool { return headingWords[w] != 0 || fieldWords[w] || clubWords[w] })
}

// halvesOfNames says whether a column of names and the next one are both headed as names, alike
// but for words in brackets, with one word in each cell: "Runner (first)", "Runner (last)".
func (s *settler) halvesOfNames(full int) bool {
	if full < 0 || full+1 >= len(s.columns) {
		return false
	}
	a, b := s.headings[full], s.headings[full+1]
	if s.guesses[full+1].meaning != Name || fold(withoutBrackets(a)) != fold(withoutBrackets(b)) || !s.guesses[full+1].known {
		return false
	}
	for _, i := range [...]int{full, full + 1} {
		if p := s.profiles[i]; p.share(kText) <= .8 || p.spaces*5 >= p.filled {
			return false
		}
	}
	return true
}

// familyBefore says whether the first of two columns under one heading has the family names: in
// capitals beside names that are not, or more of them than of the others, as given names come again.
func (s *settler) familyBefore(first int) bool {
	var capitals [2]int
	var distinct [2]map[string]bool
	for k := range distinct {
		distinct[k] = map[string]bool{}
		for _, r := range s.rows[:min(len(s.rows), profileRows)] {
			if c := trim(cellAt(r.cells, first+k)); hasLetter(c) {
				distinct[k][c] = true
				if c == strings.ToUpper(c) && c != strings.ToLower(c) {
					capitals[k]++
				}
			}
		}
	}
	if capitals[0] != capitals[1] {
		return capitals[0] > capitals[1]
	}
	return len(distinct[0]) > len(distinct[1])
}

// familyMarks say in brackets that the name is the family's.
var familyMarks = set("last surname family sur nachname nom apellido cognome")

// mostlyDiffer says whether four in ten of the words of a column and more differ.
func (s *settler) mostlyDiffer(i int) bool {
	f := s.profiles[i]
	return len(f.distinct)*10 >= min(f.filled, distinctKept)*4
}

// calledSo head the names that people are called by. Common practice, no source.
var calledSo = set("rufname roepnaam nickname fore 1st", "known as", "also known as", "called", "preferred name", "goes by")

// initialWords head the first letters of given names. Common practice, no source.
var initialWords = set("initial init inits ini initls", "first initial", "initial s")

// initials is the column of first letters of given names, by its heading and its values; -1 for none.
func (s *settler) initials() int {
	for i, h := range s.headings {
		if !initialWords[fold(h)] {
			continue
		}
		letters, filled := 0, 0
		for _, r := range s.rows {
			c := strings.NewReplacer(".", "", " ", "").Replace(trim(cellAt(r.cells, i)))
			if c == "" {
				continue
			}
			if filled++; utf8.RuneCountInString(c) <= 3 && hasLetter(c) {
				letters++
			}
		}
		if letters > 0 && letters*10 >= filled*9 {
			return i
		}
	}
	return -1
}

// contains says whether the cells of column a hold those of column b.
func (s *settler) contains(a, b int) bool {
	in, n := 0, 0
	for _, r := range s.rows {
		x, y := fold(cellAt(r.cells, a)), fold(cellAt(r.cells, b))
		if x == "" || y == "" {
			continue
		}
		n++
		if x != y && strings.Contains(x, y) {
			in++
		}
	}
	return n > 0 && in*10 >= n*8
}
