package name

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Print spells a name for reports: given name first, a part that was all in
// capitals or all small in proper case, particles small, Mc and O' followed by
// a capital, initials in capitals, titles left out where two names remain. Spellings in mixed case
// are kept: they are the owner's (DeShawn, MacKenzie, van den Berg).
func Print(text string) string {
	var keys [128]byte
	var tokens [16]token
	s := scanner{text: Clean(text), keys: keys[:0], tokens: tokens[:0]}
	s.scan()
	if s.unnamed() || s.several {
		return s.text
	}
	s.assign()
	var b strings.Builder
	b.Grow(len(s.text) + 4)
	for pass := range 3 {
		for i := range s.tokens {
			t := &s.tokens[i]
			in := t.role == given || t.role == middle
			switch pass {
			case 1:
				in = t.role == family
			case 2:
				in = t.role == suffix
			}
			if in {
				s.print(&b, i, pass)
			}
		}
	}
	if b.Len() == 0 {
		return s.text
	}
	// "Miss Taylor": the title is all that there is beside the one name.
	if t := &s.tokens[0]; len(s.tokens) == 2 && t.role == dropped && !t.number && s.is(t, titles) {
		title := s.text[t.from:t.to]
		if t.capitals || t.small {
			title = proper(title)
		}
		return title + " " + b.String()
	}
	return b.String()
}

func (s *scanner) print(b *strings.Builder, i, pass int) {
	t := &s.tokens[i]
	if b.Len() > 0 {
		if i > 0 && s.tokens[i-1].word == t.word && s.tokens[i-1].role == t.role {
			b.WriteByte('-')
		} else {
			b.WriteByte(' ')
		}
	}
	spelt := strings.TrimRightFunc(s.text[t.from:t.to], apostrophe)
	if k := s.key(t); pass == 1 && (k == "t" || k == "s") && t.from > 0 && s.particleMark(int(t.from)) && !s.lastOf(i, family) {
		b.WriteString("'" + k) // van 't Hof
		return
	}
	letters := int(t.hi - t.lo)
	switch {
	case pass == 2:
		b.WriteString(printSuffix(s.key(t)))
	case letters == 1 && strings.Contains("yei", spelt) && s.mixed(): // Vega y Ortiz, Costa e Silva
		b.WriteString(spelt)
	case t.joins:
		b.WriteString(strings.ToLower(spelt))
	case letters == 1 && !(t.role == family && s.mixed()):
		b.WriteString(strings.ToUpper(spelt))
	case t.capitals && t.role == given && letters <= 3 && s.initials(t):
		b.WriteString(spelt)
	case t.capitals || t.small || shouting(spelt):
		if b.Len() > 0 && pass == 1 && s.particle(t) && !s.lastOf(i, family) {
			b.WriteString(strings.ToLower(spelt))
			return
		}
		b.WriteString(proper(spelt))
	default:
		b.WriteString(spelt)
	}
}

// particleMark says whether an apostrophe stands before a place of the text.
func (s *scanner) particleMark(at int) bool {
	r, _ := utf8.DecodeLastRuneInString(s.text[:at])
	return apostrophe(r)
}

// mixed says whether the text has small and capital letters: only then is a
// small single letter meant.
func (s *scanner) mixed() bool {
	small, caps := false, false
	for i := range s.tokens {
		small = small || s.tokens[i].small && s.tokens[i].hi-s.tokens[i].lo > 1
		caps = caps || !s.tokens[i].small
	}
	return small && caps
}

// lastOf says whether no token of the role comes after i: the last token of a
// family name is never a particle.
func (s *scanner) lastOf(i int, want role) bool {
	for k := i + 1; k < len(s.tokens); k++ {
		if s.tokens[k].role == want {
			return false
		}
	}
	return true
}

// initials: two or three capitals without a vowel, or beside a name that is
// not all in capitals, are initials (JP Smith) and not a name (AL SMITH).
func (s *scanner) initials(t *token) bool {
	if !strings.ContainsAny(s.key(t), "aeiouy") {
		return true
	}
	if t.hi-t.lo > 2 {
		return false
	}
	for i := range s.tokens {
		if o := &s.tokens[i]; o.role == family && !o.capitals && !o.small {
			return true
		}
	}
	return false
}

// shouting is a spelling without small letters that the scanner did not count
// as capitals (one letter before an apostrophe and the like).
func shouting(s string) bool {
	return strings.IndexFunc(s, unicode.IsLower) < 0
}

func printSuffix(key string) string {
	switch key {
	case "jr", "jnr", "junior":
		return "Jr"
	case "sr", "snr", "senior":
		return "Sr"
	case "esq":
		return "Esq"
	case "phd":
		return "PhD"
	}
	return strings.ToUpper(key)
}

// proper gives one word a capital and small letters: Jones, McDonald, O'Brien,
// D'Arcy. Mac is left small after it (Macdonald, Machin, Mackay): capitals
// cannot tell MacDonald from Macdonald, and the best-attested spelling does.
func proper(word string) string {
	var b strings.Builder
	b.Grow(len(word) + 2)
	runes, up := 0, true
	for i, r := range word {
		switch {
		case apostrophe(r):
			b.WriteRune(r)
			// O'Brien and D'Arcy, but not Shu'aib or Hawai'i.
			up = runes == 1
			continue
		case up:
			b.WriteRune(unicode.ToTitle(r))
			up = false
		default:
			b.WriteRune(unicode.ToLower(r))
		}
		runes++
		if runes == 2 && utf8.RuneCountInString(word) > 4 && strings.EqualFold(word[:i+1], "mc") {
			up = true
		}
	}
	if w, sigma := strings.CutSuffix(b.String(), "σ"); sigma && runes > 1 {
		return w + "ς" // Γιώργος of ΓΙΏΡΓΟΣ
	}
	return b.String()
}

// Spelling is one text as received, how often it was, and its first and last place
// among all of the person's texts in order of the days.
type Spelling struct {
	Text        string
	Count       int
	First, Last int
}

// Current picks the spelling to print for one person: that of [Best] or, where the family
// name has changed, the best of the spellings with the new one. It has changed where the
// latest text has the given name of the best and quite another family name, and all texts
// with such a one are later than all others: who goes to and fro keeps the most frequent.
func Current(spellings []Spelling) string {
	best := Best(spellings)
	if len(spellings) < 2 || best == "" {
		return best
	}
	var now Name
	latest := -1
	for i, s := range spellings {
		if latest >= 0 && s.Last < spellings[latest].Last {
			continue
		}
		if n := Parse(s.Text); !n.Unnamed && !n.Several {
			now, latest = n, i
		}
	}
	before := Parse(best)
	if !sameGiven(now.Given, before.Given) || !otherFamily(now.Family, before.Family) {
		return best
	}
	var fresh []Spelling
	lastOfOld, firstOfNew := -1, spellings[latest].First
	for _, s := range spellings {
		switch n := Parse(s.Text); {
		case n.Unnamed || n.Several:
		case otherFamily(n.Family, now.Family):
			lastOfOld = max(lastOfOld, s.Last)
		default:
			fresh, firstOfNew = append(fresh, s), min(firstOfNew, s.First)
		}
	}
	if lastOfOld > firstOfNew {
		return best
	}
	return Best(fresh)
}

// sameGiven says whether two folded given names are one, or one is the initial of the other.
func sameGiven(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	return a == b || a != "" && utf8.RuneCountInString(a) == 1 && strings.HasPrefix(b, a)
}

// otherFamily says whether two folded family names are quite different: no slip of the pen,
// nor one a part of the other, as in Moss and Moss Reed. The bound on the similarity of Jaro
// and Winkler is one below which spellings of one name were not seen (no source).
func otherFamily(a, b string) bool {
	if a == "" || b == "" || strings.Contains(a, b) || strings.Contains(b, a) {
		return false
	}
	for _, w := range strings.Fields(a) {
		if slices.Contains(strings.Fields(b), w) {
			return false
		}
	}
	return !EqualLost(a, b) && !OneSlip(a, b) && Soundex(a) != Soundex(b) && JaroWinkler(a, b) < 0.75
}

// Best picks the spelling to print for one person: the name most often given
// (so that a slip of the pen never wins), without lost letters and with a
// given name that is more than an initial if there is such a one; among its
// spellings the one with its accents and its own capitals, if it is at least a
// tenth of them, else the most frequent. Equal counts go by the alphabet. The
// result is a spelling as Print makes it, "" for no named spelling at all.
func Best(spellings []Spelling) string {
	type form struct {
		text  string
		count int
		rich  int
	}
	type group struct {
		count, worth int
		key          string
		forms        []form
	}
	var groups []group
	for _, sp := range spellings {
		n := Parse(sp.Text)
		if n.Unnamed || n.Several {
			continue
		}
		worth := 2
		if strings.IndexByte(n.Full, Lost) >= 0 {
			worth = 0
		} else if utf8.RuneCountInString(n.Given) <= 1 {
			worth = 1
		}
		g := 0
		for g < len(groups) && groups[g].key != n.Full {
			g++
		}
		if g == len(groups) {
			groups = append(groups, group{key: n.Full, worth: worth})
		}
		groups[g].count += sp.Count
		f := form{text: Print(sp.Text), count: sp.Count, rich: richness(n.Text)}
		if n.Ordered {
			f.rich++
		}
		k := 0
		for k < len(groups[g].forms) && groups[g].forms[k].text != f.text {
			k++
		}
		if k == len(groups[g].forms) {
			groups[g].forms = append(groups[g].forms, f)
		} else {
			groups[g].forms[k].count += f.count
			groups[g].forms[k].rich = max(groups[g].forms[k].rich, f.rich)
		}
	}
	if len(groups) == 0 {
		return ""
	}
	best := 0
	for i := range groups {
		a, b := &groups[i], &groups[best]
		if a.worth != b.worth {
			if a.worth > b.worth {
				best = i
			}
		} else if a.count > b.count || a.count == b.count && a.key < b.key {
			best = i
		}
	}
	g := groups[best]
	pick := -1
	for i, f := range g.forms {
		if f.count*10 < g.count {
			continue
		}
		if pick < 0 {
			pick = i
			continue
		}
		p := g.forms[pick]
		switch {
		case f.rich != p.rich:
			if f.rich > p.rich {
				pick = i
			}
		case f.count > p.count || f.count == p.count && f.text < p.text:
			pick = i
		}
	}
	if pick < 0 { // more than ten spellings, none a tenth
		pick = 0
		for i, f := range g.forms {
			if p := g.forms[pick]; f.count > p.count || f.count == p.count && f.text < p.text {
				pick = i
			}
		}
	}
	return g.forms[pick].text
}

// richness counts what a careless writer leaves out: letters beyond ASCII,
// apostrophes and hyphens inside words, and mixed case.
func richness(text string) int {
	n, upper, lower := 0, 0, 0
	for _, r := range text {
		switch {
		case r >= utf8.RuneSelf && unicode.IsLetter(r) || apostrophe(r) || dash(r):
			n += 4
		case unicode.IsUpper(r):
			upper++
		case unicode.IsLower(r):
			lower++
		}
	}
	if upper > 0 && lower > 0 {
		n += 2
	}
	return n
}
