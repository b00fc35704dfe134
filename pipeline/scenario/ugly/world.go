package ugly

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"time"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"lapwing/pipeline/unit"
)

// course is an invented venue with its weekday. Runs are taken backwards in
// time, one a week, so that no two sheets meet by accident.
type course struct {
	name, slug string
	weekday    time.Weekday
	hard       float64 // multiplies times
	next       unit.Day
}

type person struct {
	given, middle, family string
	sex                   string // M, W, X
	born                  unit.Day
	club                  string
	number                int
	level                 float64 // seconds at 5 km on a course of average speed
}

func (p *person) name() string { return p.given + " " + p.family }

// world is what the sheets are about.
type world struct {
	courses []*course
	people  []*person
	clubs   []string
}

const homeFolk = 220 // people per course

var courseNames = []string{
	"Brackle Common", "Tollow Water", "Hesper Quay", "Oddmere Meadows", "Winnick Moor", "Garrow Hill", "Garrow Hill Woods",
	"Pellin Towpath", "Marlsby Green", "Dunnock Lake", "Sorrelby Fields", "Ettersham Ring", "Quillby Common", "Fennick Water",
	"Larkmoss Quay", "Ousterby Meadows", "Wrenhollow Moor", "Cobbleigh Hill", "Staveny Woods", "Murrowick Towpath",
	"Plimsey Green", "Tanglemere Lake", "Yarrowden Fields", "Kestle Ring", "Ambleforde Common", "Harbrick Water",
	"Inkersole Quay", "Joskin Meadows", "Lissenby Moor", "Nettlemarsh Hill", "Orrinby Woods", "Pipkin Towpath",
	"Ravelstock Green", "Tiverley Lake", "Umberton Fields", "Vexley Ring", "Wimbrook Common", "Yaddle Water", "Zennick Quay",
	"Étang Vallier", "Bosque Almerón", "Monte Corvèllo", "Duinzicht West", "Lingsund Strand", "Morgado Velho", "March Hollow", "Second Bridge",
}

var clubNames = []string{
	"Tarn & Fell Striders", "Quillby Harriers", "Marlsby AC", "Pellin Road Runners", "Oddmere Joggers, South", "Hesper Triathlon Club",
	"Winnick Ladies RC", "Läufertreff Mühlgrund", "Les Foulées d'Ormay", "Club Atlético Almerón", "Lingsund IF", "Atletica Corvèllo",
	"Garrow \"Early Birds\"", "Zennick University AC", "Dunnock Orienteers",
}

var givenNames = map[string][2][]string{ // men, women
	"en": {{"Tom", "Harry", "George", "Alan", "Kevin", "Peter", "Stephen", "Neil", "Ewan", "Callum", "Liam", "Owen", "Rhys", "Dev", "Imran", "Kwame", "Jean-Paul", "Sam", "Robin", "Lee"},
		{"Anna", "Ruth", "Helen", "Sarah", "Zoe", "Beth", "Megan", "Siân", "Niamh", "Priya", "Amina", "Abena", "Mary Jane", "Jo", "Kim", "Chloë", "Renée", "Frances", "Iris", "Alex"}},
	"de": {{"Jürgen", "Björn", "Götz", "Lukas", "Matthias", "Karl-Heinz"}, {"Käthe", "Bärbel", "Ulrike", "Änne", "Sabine", "Heike"}},
	"fr": {{"François", "Rémi", "Étienne", "Benoît", "Jérôme", "Loïc"}, {"Hélène", "Aurélie", "Zoé", "Françoise", "Anaïs", "Solène"}},
	"es": {{"José", "Íñigo", "Joaquín", "Andrés", "Raúl", "Iván"}, {"María José", "Begoña", "Inés", "Ángela", "Lucía", "Nuria"}},
	"it": {{"Niccolò", "Giosuè", "Matteo", "Luca", "Andrea", "Davide"}, {"Noemi", "Chiara", "Giada", "Ilaria", "Letizia", "Elia"}},
	"nl": {{"Joost", "Daniël", "Sjoerd", "Ruben", "Bram", "Thijs"}, {"Zoë", "Anneke", "Loïs", "Femke", "Sanne", "Marit"}},
	"sv": {{"Åke", "Göran", "Björn", "Håkan", "Sören", "Per"}, {"Åsa", "Märta", "Gunnel", "Frøydis", "Maj", "Sølvi"}},
	"pl": {{"Paweł", "Łukasz", "Grzegorz", "Michał", "Stanisław", "Jan"}, {"Małgorzata", "Agnieszka", "Żaneta", "Łucja", "Ewa", "Jadwiga"}},
	"pt": {{"João", "Sebastião", "Inácio", "Gonçalo", "Rui", "Nuno"}, {"Conceição", "Inês", "Lourdes", "Sílvia", "Graça", "Rita"}},
}

var familyParts = map[string][2][]string{
	"en": {{"Ald", "Bran", "Cot", "Dray", "Elm", "Far", "Gos", "Hallow", "Ilk", "Kerr", "Lam", "Mar", "Nor", "Ockl", "Pend", "Quar", "Rad", "Stan", "Tre", "Und", "Wex", "Yel", "Mc", "Mac", "O'", "Fitz", "St John-"},
		{"ley", "man", "worth", "by", "sett", "combe", "ridge", "wick", "low", "ingham", "erby", "stone", "hurst", "field", "gate"}},
	"de": {{"Müh", "Grün", "Schö", "Weiß", "von der Hö", "Kö", "Bäu"}, {"lmann", "bacher", "ring", "kow", "feld", "ßner"}},
	"fr": {{"Lefè", "de la Vallé", "Béran", "Châte", "d'Ormè", "Garç"}, {"vrette", "ebrune", "gerac", "launay", "ron", "onnet"}},
	"es": {{"Núñ", "Ibáñ", "Peñal", "Muñ", "del Río y Ca", "Zúñ"}, {"ez", "oz", "ver", "igar", "ares", "ón"}},
	"it": {{"D'Ag", "Della Ro", "Mart", "Corv", "Bia", "Pel"}, {"ostìn", "verèdo", "inucci", "ellò", "nchet", "ligrà"}},
	"nl": {{"van der Me", "de Gr", "van 't Ho", "Ter Bö", "Vermeu", "Kuij"}, {"er", "oote", "ff", "hm", "lenaar", "pers"}},
	"sv": {{"Sjö", "Öst", "Lindå", "Bäck", "Strøm", "Ærø"}, {"berg", "gren", "holm", "lund", "qvist", "stad"}},
	"pl": {{"Wiśni", "Dąbr", "Zając", "Kręż", "Żół", "Głow"}, {"ewicz", "owski", "kowiak", "el", "tyński", "acz"}},
	"pt": {{"Magalh", "Conceiç", "Simõ", "Falc", "Assunç", "Galv"}, {"ães", "ão", "es", "oeira", "ãozinho", "inho"}},
}

// newWorld makes the same world for the same seed.
func newWorld(seed uint64) *world {
	rng := rand.New(rand.NewPCG(seed, 0x6c617077696e67))
	w := &world{clubs: clubNames}
	for _, n := range courseNames {
		c := &course{name: n, slug: slug(n), weekday: time.Saturday, hard: math.Exp(rng.NormFloat64() * 0.04)}
		switch rng.IntN(6) {
		case 0:
			c.weekday = time.Sunday
		case 1:
			c.weekday = time.Wednesday
		}
		c.next = unit.NewDay(2025, 12, 20)
		for c.next.Weekday() != c.weekday {
			c.next--
		}
		w.courses = append(w.courses, c)
	}
	langs := []string{"en", "en", "en", "en", "en", "en", "de", "fr", "es", "it", "nl", "sv", "pl", "pt"}
	taken := map[string]bool{}
	for i := 0; i < homeFolk*len(w.courses); i++ {
		p := &person{sex: "M", number: 100 + i}
		for {
			lang := langs[rng.IntN(len(langs))]
			s := rng.IntN(2)
			p.sex = []string{"M", "W"}[s]
			p.given = pick(rng, givenNames[lang][s])
			fam := familyParts[lang]
			p.family = pick(rng, fam[0]) + pick(rng, fam[1])
			if rng.IntN(4) == 0 {
				p.family += "-" + capital(pick(rng, fam[1]))
			}
			p.family = capitalAfter(p.family, "Mc", "Mac", "O'", "Fitz", "-")
			if k := fold(p.name()); !taken[k] {
				taken[k] = true
				break
			}
		}
		if rng.IntN(150) == 0 {
			p.sex = "X"
		}
		a := 18 + math.Abs(rng.NormFloat64())*17 + rng.Float64()*12
		if rng.IntN(10) == 0 {
			a = 14 + rng.Float64()*6
		}
		p.born = unit.NewDay(2022, 6, 1) - unit.Day(math.Min(a, 88)*365.25)
		if rng.IntN(3) > 0 {
			p.club = pick(rng, w.clubs)
		}
		p.middle = string([]rune(pick(rng, givenNames["en"][0]))[:1])
		p.level = 1560 * math.Exp(rng.NormFloat64()*0.17) * (1 + 0.006*math.Max(0, a-35))
		if p.sex == "W" {
			p.level *= 1.11
		}
		p.level = math.Max(p.level, 1000)
		w.people = append(w.people, p)
	}
	return w
}

func pick[T any](rng *rand.Rand, from []T) T { return from[rng.IntN(len(from))] }

func capital(s string) string {
	r := []rune(s)
	r[0] = unicode.ToUpper(r[0])
	return string(r)
}

// capitalAfter makes McAldley out of Mcaldley and Elm-Wick out of Elm-wick.
func capitalAfter(s string, after ...string) string {
	for _, a := range after {
		if i := strings.Index(s, a); i >= 0 && i+len(a) < len(s) && (i == 0 || a == "-") {
			s = s[:i+len(a)] + capital(s[i+len(a):])
		}
	}
	return s
}

// fold drops case, accents and punctuation, and orders the words, so that
// two spellings of a name can be compared.
func fold(s string) string {
	s = wholeLetters.Replace(s)
	var b strings.Builder
	for _, r := range norm.NFD.String(s) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(unicode.ToLower(r))
		case r == '\'' || r == '’':
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// wholeLetters don't come apart into a letter and an accent.
var wholeLetters = strings.NewReplacer("ß", "ss", "ø", "o", "Ø", "o", "æ", "ae", "Æ", "ae", "ł", "l", "Ł", "l", "œ", "oe")

func slug(s string) string { return strings.ReplaceAll(fold(s), " ", "-") }

// run is one course, date and session with its finishers in sheet order.
type run struct {
	course  *course
	day     unit.Day
	session string
	lines   []*finisher
}

// finisher is one line before it is written down.
type finisher struct {
	who      *person
	ms       int // quantised to what the sheet shows; 0: none
	chip     int
	pos      int // 0: none printed
	tie      bool
	class    Class
	as       string
	note     string
	name     string // printed instead of the person's name
	renamed  bool   // name holds, even when empty
	timeText string // printed instead of the time
	retimed  bool
	posText  string
	repeatOf *finisher
	win      window
	sexShown string
}

func (r *run) String() string { return fmt.Sprintf("%s %s", r.course.slug, r.day) }

// newRun takes the next free date of the course and draws its field.
func (g *gen) newRun(c *course, size int) *run {
	r := &run{course: c, day: c.next}
	c.next -= 7
	r.lines = g.field(r, size)
	return r
}

func (g *gen) field(r *run, size int) []*finisher {
	home := 0
	for i, c := range g.world.courses {
		if c == r.course {
			home = i * homeFolk
		}
	}
	var out []*finisher
	for _, k := range g.rng.Perm(homeFolk)[:min(size, homeFolk)] {
		p := g.world.people[home+k]
		if int(r.day-p.born) < 9*366 {
			continue
		}
		s := p.level * r.course.hard * math.Exp(math.Abs(g.rng.NormFloat64())*0.04)
		out = append(out, &finisher{who: p, ms: max(int(s*1000), 990_000), class: OK})
	}
	return out
}
