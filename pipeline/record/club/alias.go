// Package club finds names that are probably other names of one club: another
// spelling, initials, a shortened word, an old name. It only proposes; people
// decide.
package club

import (
	"cmp"
	"math/bits"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/text"
)

// Club is a name of a club as sheets print it, with how often.
type Club struct {
	Name  string
	Lines int // results
}

// Proposal says that Other is probably another name of Club.
type Proposal struct {
	Other, Club string
	Why         string
}

// Reasons, the surest first.
const (
	WhySpelling = "the same letters, otherwise spaced or written"
	WhyInitials = "its initials"
	WhyShort    = "a word is shortened"
	WhyLeftOut  = "only words such as \"running club\" are left out"
	WhySlip     = "a letter or two differ"
	WhyOldName  = "its runners went over to the other name" // see Moves
)

// rarer is how many times commoner a club must be for a name that differs in a
// letter or two to be a slip of it. Common sense, no source.
const rarer = 2

// general are words that many clubs' names have.
var general = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(`athletic athletics club clubs ac rc running runners run road joggers jogging harriers striders tri triathlon
		the and of de der des di la le les du verein sv tv tsv sc fc lc lg team asd asbl`) {
		m[w] = true
	}
	return m
}()

// spelled is a club with its name taken apart.
type spelled struct {
	Club
	fold  string
	words []string
	core  string   // the words that are not general
	kind  []string // those that are

	joined string // fold without blanks
	set    uint64 // letters that occur in it
}

func (s *spelled) letters() string { return s.joined }

// Propose lists names that are probably other names of a club in the list,
// each once, by Other. The club is the commoner name of a pair; of equals the
// longer, then the first by letters. settled says which pairs have been decided
// already.
func Propose(clubs []Club, settled func(other, club string) bool) []Proposal {
	all := make([]*spelled, 0, len(clubs))
	for _, c := range clubs {
		s := &spelled{Club: c, fold: name.Fold(c.Name)}
		s.joined = strings.ReplaceAll(s.fold, " ", "")
		for _, r := range s.joined {
			s.set |= 1 << (r % 64)
		}
		s.words = strings.Fields(s.fold)
		var core []string
		for _, w := range s.words {
			if general[w] {
				s.kind = append(s.kind, w)
			} else {
				core = append(core, w)
			}
		}
		s.core = strings.Join(core, " ")
		if s.fold != "" {
			all = append(all, s)
		}
	}
	slices.SortFunc(all, func(a, b *spelled) int {
		return cmp.Or(cmp.Compare(b.Lines, a.Lines), cmp.Compare(utf8.RuneCountInString(b.Name), utf8.RuneCountInString(a.Name)), cmp.Compare(a.Name, b.Name))
	})
	found := map[string]Proposal{}
	add := func(other, club *spelled, why string) {
		if _, ok := found[other.Name]; !ok && other != club && !settled(other.Name, club.Name) {
			found[other.Name] = Proposal{other.Name, club.Name, why}
		}
	}
	pairsBy(all, (*spelled).letters, func(club, other *spelled) { add(other, club, WhySpelling) })
	// Several spellings of one club stand for it once from here on.
	var heads []*spelled
	for _, s := range all {
		if _, ok := found[s.Name]; !ok {
			heads = append(heads, s)
		}
	}
	pairsBy(heads, func(s *spelled) string { return s.core }, func(club, other *spelled) {
		a, b := strings.Join(club.kind, ""), strings.Join(other.kind, "")
		if len(a) < len(b) {
			club, other, a, b = other, club, b, a
		}
		if b != "" && b != a && firstLetters(club.kind) == b { // Tarn AC, Tarn Athletic Club
			add(other, club, WhyShort)
		}
	})
	pairsBy(heads, (*spelled).firstLetters, func(club, other *spelled) {
		if shortened(club.words, other.words) {
			if len(club.letters()) < len(other.letters()) {
				club, other = other, club
			}
			add(other, club, WhyShort)
		}
	})
	leftOut(heads, add)
	slip := func(club, other *spelled) {
		if club.Lines >= rarer*other.Lines && slips(club, other) {
			add(other, club, WhySlip)
		}
	}
	pairsBy(heads, func(s *spelled) string { return head(s.letters(), 3) }, slip)
	pairsBy(heads, func(s *spelled) string { return tail(s.letters(), 3) }, slip)
	initials(slices.DeleteFunc(heads, func(s *spelled) bool { return found[s.Name].Other != "" }), add)
	out := make([]Proposal, 0, len(found))
	for _, p := range found {
		out = append(out, p)
	}
	slices.SortFunc(out, func(a, b Proposal) int { return cmp.Compare(a.Other, b.Other) })
	return out
}

// pairsBy calls f for the pairs of clubs of one key, the one that stands first
// in the list first.
func pairsBy(all []*spelled, key func(*spelled) string, f func(club, other *spelled)) {
	by := map[string][]*spelled{}
	for _, s := range all {
		if k := key(s); k != "" {
			by[k] = append(by[k], s)
		}
	}
	for _, s := range all { // in the order of the list
		group := by[key(s)]
		for i := range group {
			if group[i] == s {
				for _, o := range group[i+1:] {
					f(s, o)
				}
				break
			}
		}
	}
}

// firstLetters are the initials of a club of several words, else "".
func (s *spelled) firstLetters() string {
	if len(s.words) < 2 {
		return ""
	}
	return firstLetters(s.words)
}

func firstLetters(words []string) string {
	var b strings.Builder
	for _, w := range words {
		r, _ := utf8.DecodeRuneInString(w)
		b.WriteRune(r)
	}
	return b.String()
}

// initials proposes names of two to five letters that are the first letters of
// exactly one club.
func initials(all []*spelled, add func(other, club *spelled, why string)) {
	of := map[string][]*spelled{}
	for _, s := range all {
		if k := s.firstLetters(); k != "" && k != s.letters() {
			of[k] = append(of[k], s)
		}
	}
	for _, s := range all {
		k := s.letters()
		n := utf8.RuneCountInString(k)
		short := len(s.words) == 1 || n == len(s.words) // OH, O.H., O H
		if clubs := of[k]; short && n >= 2 && n <= 5 && len(clubs) == 1 && clubs[0] != s && len(clubs[0].letters()) > len(k) {
			add(s, clubs[0], WhyInitials)
		}
	}
}

// shortened says whether two names have the same words but for some that are
// cut off: Osierholm H., Osierholm Harriers. One word of four letters or more
// must be whole in both.
func shortened(a, b []string) bool {
	if len(a) != len(b) || len(a) < 2 {
		return false
	}
	whole, cut := false, false
	for i := range a {
		switch {
		case a[i] == b[i]:
			whole = whole || len(a[i]) >= 4
		case strings.HasPrefix(a[i], b[i]), strings.HasPrefix(b[i], a[i]):
			cut = true
		default:
			return false
		}
	}
	return whole && cut
}

// leftOut proposes a name of nothing but particular words (Osierholm) for the
// one club that has these words and general ones (Osierholm Running Club).
func leftOut(all []*spelled, add func(other, club *spelled, why string)) {
	with := map[string][]*spelled{}
	for _, s := range all {
		if s.core != "" && s.core != s.fold {
			with[s.core] = append(with[s.core], s)
		}
	}
	for _, s := range all {
		if clubs := with[s.core]; s.core == s.fold && len(s.letters()) >= 4 && len(clubs) == 1 {
			add(s, clubs[0], WhyLeftOut)
		}
	}
}

// slips says whether two names differ by a letter, or in long names by two.
// What tells a club from others must be long enough: Ely Running Club is not
// Elm Running Club. Names that differ in a figure are different.
func slips(a, b *spelled) bool {
	most := 0
	switch n := min(utf8.RuneCountInString(a.core), utf8.RuneCountInString(b.core)); {
	case n >= 10:
		most = 2
	case n >= 6:
		most = 1
	}
	if bits.OnesCount64(a.set^b.set) > 2*most {
		return false // a slip changes one letter for another at most
	}
	x, y := a.letters(), b.letters()
	d := len(x) - len(y)
	return most > 0 && x != y && max(d, -d) <= 2*most && digits(x) == digits(y) && text.OSA(x, y) <= most
}

func digits(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsDigit(r) {
			return r
		}
		return -1
	}, s)
}

func head(s string, n int) string { return s[:min(n, len(s))] }

func tail(s string, n int) string { return s[max(0, len(s)-n):] }
