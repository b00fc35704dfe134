package who

import (
	"fmt"
	"math"
	"math/rand/v2"
	"sort"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// district is a made-up place with known truth: people who run at courses near
// them, and the sheets that volunteers make of it, each course with its habits
// and mistakes.
type district struct {
	people, courses, weeks int
	numbers                float64 // share of courses whose sheets carry numbers
	messy                  float64 // scales typing slips, nicknames, lost letters; .5 is usual
	namesakes              float64 // share of people who have a namesake, next door
	wrong                  float64 // share of lines with a wrong age, sex or club
	plain                  bool    // every sheet gives exact ages, clubs and sexes
	seed                   uint64
}

type truth struct {
	rows  *Rows
	texts []string
	names []name.Name
	who   []int32
}

type human struct {
	given, family string
	married       string // name after the change, "" for none
	changes       unit.Day
	sex           uint8
	born          unit.Day
	pace          float64
	club          int32
	home          int
	numbers       []string
	since, until  unit.Day
	often         float64
	nick          string
	nickShare     float64
}

var (
	headsOfNames = strings.Fields(`ash black brad brook burn cal car chad clif cob dal den drax dun east ed fair fen ford gar glen gran hal ham hart
		hast haw hay heath hol hor hul kel ken king lang lap lin long marl mel mid mil mor nor oak os pen pres rad ram red rock rush sal sand
		shel sher skel stan stock strat sut swin thorn thwai trent up wal war wes whit wil win wood wor wy`)
	tailsOfNames = strings.Fields(`ford ley ton wood well worth by combe dale den field gate ham hill house hurst land lock low man more ney over
		row sey shaw side stead stone thorpe tree wick win borough bury bridge brook er son`)
	commonFamilies = strings.Fields(`Smith Jones Taylor Brown Williams Wilson Johnson Davies Patel Robinson Wright Thompson Evans Walker White
		Roberts Green Hall Wood Jackson Clarke Khan Lewis Hill Harris Clark Cooper Turner Ward Moore Martin Lee Singh Baker Murphy Kelly
		O'Brien McDonald O'Connor García Müller Nguyen Novák Kowalski Sørensen Jørgensen Łuczak Díaz`)
	menNames = strings.Fields(`David John Michael Paul Andrew James Robert Stephen Richard Christopher Peter Mark Thomas Daniel Matthew Simon Philip
		Martin Anthony William Kevin Gary Ian Benjamin Samuel Jonathan Alexander Joseph Graham Alan Neil Nicholas Edward Timothy Adam George
		Oliver Jack Harry Charles Patrick Sean Luke Jacob Ryan Nathan Aaron Craig Darren Stuart Keith Colin Barry Derek Roger Kenneth Trevor
		Malcolm Geoffrey Raymond Gareth Dylan Owen Rhys Callum Liam Connor Kieran Declan Mohammed Ali Imran Raj Sanjay Wei José André Jürgen
		Łukasz Piotr Søren Björn Zoltán Étienne Dominic Gregory Vincent Leonard Frederick Theodore Isaac Noah Ethan Joshua Zachary`)
	womenNames = strings.Fields(`Susan Sarah Karen Julie Helen Emma Claire Nicola Elizabeth Margaret Christine Jane Deborah Rebecca Catherine Laura
		Amanda Alison Patricia Victoria Jennifer Joanne Lisa Rachel Michelle Caroline Samantha Louise Charlotte Jessica Lucy Hannah Gemma Kate
		Anna Ruth Diane Sally Fiona Lynn Angela Jacqueline Gillian Judith Sandra Hazel Olivia Emily Sophie Chloe Grace Amelia Ella Megan
		Bethany Katie Abigail Eleanor Molly Zoë Siân Aoife Niamh Fatima Aisha Priya Mei Renée Chloé Agnieszka Małgorzata Åsa Maëlle Philippa
		Rosemary Theresa Madeleine Isabella Francesca Georgina Harriet Matilda Penelope Stephanie Natalie Natasha Alexandra Melanie Wendy`)
)

// zipf draws a rank below n with weight 1/(rank+offset). With 2 500 family
// names and an offset of 20 the commonest has one person in a hundred, as in
// national name statistics; with 700 given names and 12, one in fifty.
func zipf(rng *rand.Rand, n, offset int) int {
	o := float64(offset)
	return min(n-1, int(o*math.Exp(rng.Float64()*math.Log((float64(n)+o)/o))-o))
}

// givenNames adds a long tail of invented names to a list.
func givenNames(rng *rand.Rand, list []string, ends []string) []string {
	starts := strings.Fields("Al An Ar Bel Bran Cor Da Del El Er Fa Gal Ha Il Jo Ka Ke La Le Lu Ma Mi Na Ni Or Pa Ra Ro Sa Sha Ta Te Va Vi Wil Ya Zu Ben Kir Tor")
	mids := strings.Fields("b d l m n r s v ri le na mi sha ke")
	var made []string
	for _, a := range starts {
		for _, m := range mids {
			made = append(made, a+m+ends[rng.IntN(len(ends))])
		}
	}
	rng.Shuffle(len(made), func(i, j int) { made[i], made[j] = made[j], made[i] })
	return append(append([]string(nil), list...), made...)
}

func familyNames(rng *rand.Rand) []string {
	var made []string
	for _, h := range headsOfNames {
		for _, t := range tailsOfNames {
			if !strings.HasSuffix(h, t) {
				made = append(made, strings.ToUpper(h[:1])+h[1:]+t)
			}
		}
	}
	rng.Shuffle(len(made), func(i, j int) { made[i], made[j] = made[j], made[i] })
	return append(append([]string(nil), commonFamilies...), made...)
}

// shortOf gives a pet form of a name: from the nickname table, or invented.
func shortOf(rng *rand.Rand, given string) string {
	key := name.Fold(given)
	if gs := nickGroups[key]; len(gs) > 0 && rng.Float64() < .65 {
		line := strings.Split(strings.TrimSpace(nicknames), "\n")[gs[rng.IntN(len(gs))]]
		w := strings.Fields(line)
		s := w[rng.IntN(len(w))]
		return strings.ToUpper(s[:1]) + s[1:]
	}
	r := []rune(given)
	if rng.Float64() < .03 {
		return menNames[rng.IntN(len(menNames))] // goes by quite another name
	}
	n := min(len(r), 3+rng.IntN(2))
	return string(r[:n]) + []string{"", "", "y", "ie", "o"}[rng.IntN(5)]
}

func (d district) make() truth {
	rng := rand.New(rand.NewPCG(d.seed, 77))
	families := familyNames(rng)
	men := givenNames(rng, menNames, []string{"an", "on", "us", "ir", "o", "el"})
	women := givenNames(rng, womenNames, []string{"a", "ia", "ine", "elle", "is", "een"})
	first := unit.NewDay(2022, 1, 1)
	last := first + unit.Day(7*d.weeks)
	at := make([][2]float64, d.courses)
	side := math.Sqrt(float64(d.courses))
	for c := range at {
		at[c] = [2]float64{rng.Float64() * side, rng.Float64() * side}
	}
	clubs := 3 + d.courses*2
	nextNumber := 100000 + rng.IntN(1000)
	number := func() string { nextNumber += 1 + rng.IntN(9); return fmt.Sprint(nextNumber) }
	humans := make([]human, 0, d.people)
	for len(humans) < d.people {
		h := human{sex: SexM + uint8(rng.IntN(2)), home: rng.IntN(d.courses)}
		list := men
		if h.sex == SexW {
			list = women
		}
		h.given, h.family = list[zipf(rng, len(list), 12)], families[zipf(rng, len(families), 20)]
		if rng.Float64() < .04 {
			h.family += "-" + families[zipf(rng, len(families), 20)]
		}
		if rng.Float64() < .03 {
			h.given += []string{"-", " "}[rng.IntN(2)] + list[zipf(rng, len(list), 12)]
		}
		years := 8 + 68*math.Pow(rng.Float64(), .8)
		h.born = first - unit.Day(years*365.25)
		h.pace = 7.35 + .21*rng.NormFloat64() + .004*math.Max(0, years-45)
		if rng.Float64() < .4 {
			h.club = int32(1 + (h.home*2+rng.IntN(3))%clubs)
		}
		h.often = math.Min(.9, .02+.35*math.Pow(rng.Float64(), 2.2))
		h.since, h.until = first, last
		if rng.Float64() < .5 {
			h.since += unit.Day(rng.IntN(7 * d.weeks))
		}
		if rng.Float64() < .3 {
			h.until = h.since + unit.Day(rng.IntN(int(last-h.since)+1))
		}
		h.numbers = []string{number()}
		if rng.Float64() < .02 {
			h.numbers = append(h.numbers, number())
		}
		if rng.Float64() < .015 {
			h.married = families[zipf(rng, len(families), 20)]
			if rng.Float64() < .4 {
				h.married = h.family + "-" + h.married
			}
			h.changes = h.since + unit.Day(rng.IntN(int(h.until-h.since)+1))
		}
		if rng.Float64() < .25 {
			h.nick, h.nickShare = shortOf(rng, h.given), rng.Float64()*.5
		}
		humans = append(humans, h)
		if rng.Float64() < d.namesakes && len(humans) < d.people {
			// A namesake next door: parent and child, or chance; another number.
			k := h
			gap := (22 + 14*rng.Float64()) * 365.25
			if rng.Float64() < .4 {
				gap = (2 + 18*rng.Float64()) * 365.25
			}
			if h.born+unit.Day(gap) < first-8*365 {
				k.born += unit.Day(gap)
			} else {
				k.born -= unit.Day(gap)
			}
			k.pace = 7.35 + .21*rng.NormFloat64()
			k.numbers, k.married = []string{number()}, ""
			k.often = math.Min(.9, .02+.35*math.Pow(rng.Float64(), 2.2))
			humans = append(humans, k)
		}
	}
	// What each course's sheets are like.
	type habit struct {
		numbers, sexes, clubs, capitals, commaOrder bool
		ages                                        int // 0 none 1 age 2 year 3 five-year groups 4 ten-year groups
		mojibake, noAccents                         float64
		length                                      float64
	}
	habits := make([]habit, d.courses)
	for c := range habits {
		h := &habits[c]
		h.numbers = rng.Float64() < d.numbers
		h.length = .05 * rng.NormFloat64()
		if d.plain {
			h.sexes, h.clubs, h.ages = true, true, 1
			continue
		}
		h.sexes, h.clubs = rng.Float64() < .8, rng.Float64() < .7
		h.capitals, h.commaOrder = rng.Float64() < .2, rng.Float64() < .25
		h.ages = []int{0, 1, 1, 2, 3, 3, 3, 3, 4, 1}[rng.IntN(10)]
		if rng.Float64() < .15*d.messy*2 {
			h.mojibake = 1
		}
		if rng.Float64() < .3 {
			h.noAccents = 1
		}
	}
	// Who runs where: home mostly, near ones less, far ones seldom.
	near := make([][]int, d.courses)
	for c := range near {
		all := make([]int, d.courses)
		for k := range all {
			all[k] = k
		}
		sort.Slice(all, func(i, j int) bool {
			return dist(at[c], at[all[i]]) < dist(at[c], at[all[j]])
		})
		near[c] = all[:min(12, d.courses)]
	}
	t := truth{rows: &Rows{Numbers: []string{""}}}
	r := t.rows
	textID := map[string]int32{}
	numberID := map[string]int32{}
	key := int64(0)
	for w := 0; w < d.weeks; w++ {
		day := first + unit.Day(7*w)
		cond := make([]float64, d.courses)
		for c := range cond {
			cond[c] = .02 * rng.NormFloat64()
		}
		for p := range humans {
			h := &humans[p]
			if day < h.since || day > h.until || rng.Float64() > h.often {
				continue
			}
			c := h.home
			switch x := rng.Float64(); {
			case x < .02:
				c = rng.IntN(d.courses)
			case x < .2:
				c = near[h.home][rng.IntN(len(near[h.home]))]
			}
			hb := &habits[c]
			given, family := h.given, h.family
			if h.married != "" && day >= h.changes {
				family = h.married
			}
			if h.nick != "" && rng.Float64() < h.nickShare {
				given = h.nick
			}
			if strings.Contains(family, "-") && rng.Float64() < .1 {
				family = strings.Split(family, "-")[rng.IntN(2)]
			}
			if !d.plain {
				slip := .008 * d.messy * 2
				if rng.Float64() < slip {
					given = mistype(rng, given)
				}
				if rng.Float64() < slip*1.3 {
					family = mistype(rng, family)
				}
				if rng.Float64() < .004*d.messy*2 {
					given = string([]rune(given)[:1])
				}
				if rng.Float64() < .003*d.messy*2 {
					given, family = family, given
				}
			}
			text := given + " " + family
			switch {
			case hb.capitals && hb.commaOrder:
				text = strings.ToUpper(family) + ", " + given
			case hb.commaOrder:
				text = family + ", " + given
			case hb.capitals:
				text = strings.ToUpper(text)
			}
			if hb.noAccents == 1 {
				text = asciiOnly(text)
			}
			if hb.mojibake == 1 && rng.Float64() < .7 {
				text = broken(text)
				if rng.Float64() < .3 {
					text = lose(text)
				}
			}
			id, ok := textID[text]
			if !ok {
				id = int32(len(t.texts))
				textID[text] = id
				t.texts = append(t.texts, text)
			}
			num := int32(0)
			if hb.numbers && rng.Float64() > .01 {
				s := h.numbers[rng.IntN(len(h.numbers))]
				if !d.plain && rng.Float64() < .003 {
					b := []byte(s)
					b[rng.IntN(len(b))] = byte('0' + rng.IntN(10))
					s = string(b)
				}
				if numberID[s] == 0 {
					numberID[s] = int32(len(r.Numbers))
					r.Numbers = append(r.Numbers, s)
				}
				num = numberID[s]
			}
			sex, club, born := uint8(0), int32(0), h.born
			if hb.sexes {
				sex = h.sex
				if rng.Float64() < d.wrong {
					sex = SexM + SexW - sex
				}
			}
			if hb.clubs && rng.Float64() < .93 {
				club = h.club
				if rng.Float64() < d.wrong {
					club = int32(1 + rng.IntN(clubs))
				}
			}
			if rng.Float64() < d.wrong {
				switch rng.IntN(4) {
				case 0:
					born += 365
				case 1:
					born -= 365
				case 2:
					born += unit.Day(rng.IntN(20)-10) * 365
				default:
					born = first - unit.Day(10+rng.IntN(60))*365
				}
			}
			a := age.On(born, day)
			var win age.Window
			basis := age.OnTheDay
			switch hb.ages {
			case 0:
				basis = age.NoBasis
			case 1:
				win = age.OfAges(a, a, day)
			case 2:
				y, _, _ := born.Date()
				win, basis = age.OfYear(y), age.Born
			case 3:
				lo, hi := age.DefaultScheme().Bounds(a)
				win = age.OfAges(lo, hi, day)
			case 4:
				lo, hi := a/10*10, a/10*10+9
				if a < 20 {
					lo, hi = 0, 19
				}
				win = age.OfAges(lo, hi, day)
			}
			form := h.pace + .03*rng.NormFloat64() + .05*math.Abs(rng.NormFloat64())
			if rng.Float64() < .05 {
				form += .2 * rng.Float64()
			}
			lt := float32(form + hb.length + cond[c])
			if rng.Float64() < .005 {
				lt = 0
			}
			r.Key = append(r.Key, key)
			key++
			r.Name = append(r.Name, id)
			r.Number = append(r.Number, num)
			r.Sex = append(r.Sex, sex)
			r.Club = append(r.Club, club)
			r.Course = append(r.Course, int32(c))
			r.Run = append(r.Run, int32(w*d.courses+c))
			r.Series = append(r.Series, int32(c))
			r.Day = append(r.Day, day)
			r.BirthLo, r.BirthHi = append(r.BirthLo, win.Lo), append(r.BirthHi, win.Hi)
			r.Basis = append(r.Basis, uint8(basis))
			r.LogTime = append(r.LogTime, lt)
			t.who = append(t.who, int32(p))
		}
	}
	t.names = make([]name.Name, len(t.texts))
	for i, s := range t.texts {
		t.names[i] = name.Parse(s)
	}
	return t
}

func dist(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

func mistype(rng *rand.Rand, s string) string {
	r := []rune(s)
	if len(r) < 3 {
		return s
	}
	k := 1 + rng.IntN(len(r)-1)
	switch rng.IntN(4) {
	case 0:
		r[k] = rune('a' + rng.IntN(26))
	case 1:
		r = append(r[:k], r[k+1:]...)
	case 2:
		r = append(r[:k], append([]rune{rune('a' + rng.IntN(26))}, r[k:]...)...)
	default:
		if k+1 < len(r) {
			r[k], r[k+1] = r[k+1], r[k]
		}
	}
	return string(r)
}

// asciiOnly drops accents as old programs do.
func asciiOnly(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r < 128 {
			b.WriteRune(r)
			continue
		}
		k := name.Fold(string(r))
		if r >= 'A' && strings.ToUpper(string(r)) == string(r) {
			k = strings.ToUpper(k)
		}
		b.WriteString(k)
	}
	return b.String()
}

// broken reads the UTF-8 bytes as Latin-1, the usual accident.
func broken(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		b.WriteRune(rune(s[i]))
	}
	return b.String()
}

// lose drops the second half of broken letters.
func lose(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r >= 0x80 && r < 0xc0 {
			r = '?'
		}
		b.WriteRune(r)
	}
	return b.String()
}
