package scenario

import (
	"hash/fnv"
	"math/rand/v2"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// mess is how often things go wrong; each is a chance per line unless said.
type mess struct {
	names     float64 // 0 is none, 1 is a lot: scales all the spellings below
	wrongAge  float64
	wrongSex  float64
	unnamed   float64
	stopped   float64
	untimed   float64
	exchanged float64 // two neighbours in each other's place
	repeated  float64 // the line stands twice
}

// spell changes an entry's name, number, club, age and sex as a desk might:
// first the way this course has always written this person, then slips of the
// day.
func (d *district) spell(e *entry, who, at int) {
	r, m := d.r, &d.mess
	d.customary(e, who, at)
	slip := .012 * m.names
	if e.number != "" { // looked up by number, not typed
		slip = .003 * m.names
		switch u := r.Float64(); {
		case u < .02*m.names:
			e.number = ""
		case u < .025*m.names:
			e.number = mistype(r, e.number)
		}
	}
	u := r.Float64()
	switch {
	case u < slip/2:
		e.given = typo(r, e.given)
	case u < slip:
		e.surname = typo(r, e.surname)
	case u < slip+.003*m.names:
		e.given, e.surname = e.surname, e.given
	case u < slip+.010*m.names:
		e.given = strings.ToUpper(e.given)
		e.surname = strings.ToUpper(e.surname)
	case u < slip+.016*m.names:
		e.given = strings.ToLower(e.given)
		e.surname = strings.ToLower(e.surname)
	case u < slip+.024*m.names:
		e.given += " " // a second space between the names
	case u < slip+.030*m.names:
		e.surname = "\u00a0" + e.surname
	}
	if r.Float64() < .06*m.names {
		e.club = ""
	}
	if r.Float64() < m.wrongAge {
		e.ageError = []int{-10, -9, -3, -2, -1, 1, 2, 3, 9, 10}[r.IntN(10)]
		if d.ageOn(who, d.from)+e.ageError < 5 {
			e.ageError = 1
		}
	}
	if r.Float64() < m.wrongSex {
		switch e.sex {
		case 'M':
			e.sex = 'W'
		case 'W':
			e.sex = 'M'
		}
	}
}

// customary is how a course spells somebody: the form in which they gave their
// name there, the same every week.
func (d *district) customary(e *entry, who, at int) {
	h := fnv.New64a()
	h.Write([]byte(strconv.Itoa(who) + "/" + strconv.Itoa(at)))
	r := rand.New(rand.NewPCG(h.Sum64(), 's'))
	m := d.mess.names
	if at == d.people[who].Home { // people are known best at home
		m *= .5
	}
	if forms := book().short[e.given]; len(forms) > 0 && r.Float64() < .30*m {
		e.given = forms[r.IntN(len(forms))]
	}
	switch u := r.Float64(); {
	case u < .02*m:
		e.given = string([]rune(e.given)[0])
	case u < .05*m:
		e.given += " " + string(rune('A'+r.IntN(20)))
	case u < .07*m:
		e.surname = typo(r, e.surname)
	case u < .08*m:
		e.given = typo(r, e.given)
	}
	if r.Float64() < .6*m {
		e.given, e.surname = plainLetters(e.given), plainLetters(e.surname)
	}
	if strings.ContainsAny(e.surname+e.given, "-'") {
		switch u := r.Float64(); {
		case u < .25*m:
			e.surname, e.given = strings.ReplaceAll(e.surname, "-", " "), strings.ReplaceAll(e.given, "-", " ")
		case u < .45*m:
			e.surname = strings.ReplaceAll(e.surname, "'", "")
		case u < .60*m:
			e.surname = strings.ReplaceAll(e.surname, "'", "\u2019")
		}
	}
}

// typo makes one slip of the keyboard: a letter lost, doubled, changed or two
// swapped, never the first.
func typo(r *rand.Rand, s string) string {
	t := []rune(s)
	if len(t) < 4 {
		return s
	}
	i := 1 + r.IntN(len(t)-2)
	switch r.IntN(4) {
	case 0:
		t = append(t[:i], t[i+1:]...)
	case 1:
		t = append(t[:i+1], t[i:]...)
	case 2:
		t[i], t[i+1] = t[i+1], t[i]
	default:
		if unicode.IsLetter(t[i]) {
			t[i] = rune("aeioustrn"[r.IntN(9)])
		}
	}
	return string(t)
}

// mistype changes one digit of a number.
func mistype(r *rand.Rand, s string) string {
	b := []byte(s)
	b[r.IntN(len(b))] = byte('0' + r.IntN(10))
	return string(b)
}

// plainLetters drops marks and writes the letters that have none as English
// keyboards do: Łukasz is Lukasz, Søren Soren, Groß Gross.
func plainLetters(s string) string {
	if isASCII(s) {
		return s
	}
	out, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), s)
	if err != nil {
		return s
	}
	return noMarks.Replace(out)
}

// noMarks writes the letters that Unicode does not take apart.
var noMarks = strings.NewReplacer("ł", "l", "Ł", "L", "ø", "o", "Ø", "O", "đ", "d", "Đ", "D", "ß", "ss", "ı", "i",
	"æ", "ae", "Æ", "Ae")

func isASCII(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r > unicode.MaxASCII }) < 0
}

// garble is what UTF-8 looks like when a program took it for Windows-1252 and
// saved it again: José is JosÃ©.
func garble(s string) string {
	d := charmap.Windows1252.NewDecoder()
	out, err := d.String(s)
	if err != nil {
		return s
	}
	return out
}
