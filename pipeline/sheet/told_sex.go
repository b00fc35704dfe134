package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// Sexes that a sentence beside the table tells: which list is whose, "Women first, then men",
// and whose a mark is, "* = lady", "(W) = women, all others men".

// tellSexes adds a column for such sexes, or for those that colours say, where the sheet has no
// other.
func (p *Part) tellSexes(colours map[uint32]fillMeaning) {
	if !p.Whole || p.Kind == Volunteers || len(p.Columns) == 0 {
		return
	}
	if p.rules.sectionColumn >= 0 {
		if len(columnTexts(p, p.rules.sectionColumn)) == 0 {
			p.tellByFill(colours) // the lines below the table are no sections but its legend
		}
		return
	}
	if p.tellByFill(colours) {
		return
	}
	lines := p.linesBeside()
	for _, l := range lines[:min(len(lines), max(len(p.Titles), mostLegendLines))] {
		if len(l) > 160 {
			continue
		}
		sexes := sexesOf(l)
		if len(sexes) == 0 || len(sexes) > 2 {
			continue
		}
		if p.listsInOrder(l, sexes) || p.markedOf(l, sexes) {
			return
		}
	}
}

// toldSex is a word of a line for men or for women; at counts the words.
type toldSex struct {
	at  int
	sex string // "men" or "women"
}

// sexesOf are the words for the sexes in a line, each once.
func sexesOf(line string) (out []toldSex) {
	for i, w := range strings.Fields(fold(line)) {
		sex := ""
		switch {
		case toldWomen[w]:
			sex = "women"
		case toldMen[w]:
			sex = "men"
		}
		if sex != "" && (len(out) == 0 || out[len(out)-1].sex != sex) {
			out = append(out, toldSex{i, sex})
		}
	}
	return out
}

// toldMen and toldWomen are the sexes as sentences have them, folded: with the endings of cases and
// articles (common practice, no source).
var (
	toldMen = set(`men man mens gents gentlemen males male boys manner mannern herren maenner mann hommes homme messieurs masculins hombres hombre caballeros masculinos homens homem cavalheiros
		uomini uomo maschi maschili mannen heren herrar herrarna herrarnas mannens menn mennene mennenes herrer herrene herrenes maend maendene maendenes herrerne herrernes miehet miesten mies
		mezczyzni mezczyzn mezczyzna panowie panow muzi muzu muze muzov muz ferfi ferfiak barbati barbatii barbatilor baieti muskarci muskaraca muski moski moskih mehed meeste mees viriesi viriesu virietis vyrai vyru vyras
		ανδρες ανδρων ανδρας мужчины мужчин мужчина чоловіки чоловіків мъже мъжете мъж мушкарци erkekler erkeklerin erkek dynion homes home masculi masculins gizonak gizonezkoak karlar karla fir bhfear meshkujt мажи мажите`)
	toldWomen = set(`women woman womens ladies lady females female girls frauen frau damen weiblichen femmes femme dames dame feminines mujeres mujer damas femenino femeninos femenina mulheres mulher senhoras feminino femininos
		donne donna femminile femminili vrouwen vrouw damer damerna damernas kvinnor kvinnorna kvinna kvinner kvinnene kvinnenes damene damenes kvinder kvinderne kvindernes damerne naiset naisten nainen
		kobiety kobiet kobieta panie zeny zen zena zien nok no noi femei femeile femeilor fete zene zenska zenske zensk naised naiste naine sievietes sieviesu sieviete moterys moteru moteris
		γυναικες γυναικων γυναικα женщины женщин женщина жінки жінок жінка жени жените жена kadinlar kadinlarin kadin merched menywod dones dona femenins femeni emakumeak emakumezkoak konur kvenna mna mban femrat mulleres`)
	listOrderWords = set(`first then followed next afterwards before top bottom zuerst erst dann danach anschliessend abord puis ensuite primero luego despues primeiro depois prima poi dopo eerst daarna dan vervolgens forst sedan darefter
		forst derefter sa deretter ensin sitten najpierw potem nastepnie nejdriv nejprve potom pak najprv eloszor aztan majd intai mai apoi prvo zatim onda najprej nato enne siis vispirms tad pirma tada paskui πρωτα μετα
		сначала потом затем спочатку потім першими първо после once sonra gyntaf wedyn primer despres lehenengo`)
	firstOfThem = set("first top prima primeiro primero forst prvo pirma")
	otherWords  = set(`others other rest everybody everyone else remaining unmarked andere anderen alle ubrigen restlichen sonst autres tous reste demas resto restantes outros outras altri altre anderen overige ovriga andra ovrige andre resten muut loput
		pozostali pozostale reszta ostatni vsichni zbytek ostatne ostali ostale drugi tobbi tobbiek ceilalti restul ulejaanud teised parejie kiti οι υπολοιποι υπολοιποι остальные решта інші останалите digerleri`)
	notWhoseMark = set(`record records rekord best first fastest winner winners team teams prize pb pr new lap laps debut premiere erste primera prima forsta category walker walkers pacer guest`)
)

// listsInOrder reads "Women first, then men" over two lists, of which the second begins where
// the places, or else the times, fall.
func (p *Part) listsInOrder(line string, sexes []toldSex) bool {
	words := strings.Fields(fold(line))
	ordered := false
	for i, w := range words {
		// "First three women" are the first of them, "women first" a list before another.
		ordered = ordered || listOrderWords[w] && (len(sexes) > 1 || i > sexes[0].at || !firstOfThem[w])
	}
	if !ordered || len(words) > 10 || hasDigit(line) || p.saysSex() {
		return false
	}
	starts := p.listStarts()
	if len(starts) != 2 || p.namedAgain(starts[1]) {
		return false
	}
	first, second := sexes[0].sex, "men"
	if first == "men" {
		second = "women"
	}
	p.addSexes(map[int]string{starts[0]: first, starts[1]: second}, line)
	return true
}

// namedAgain says whether somebody in the rows from one on is named above it too: nobody is on the list of
// the women and on that of the men.
func (p *Part) namedAgain(from int) (again bool) {
	nameOf, above := p.fullNames(), map[string]bool{}
	p.Each(func(row int, cells []string) error {
		switch name := nameOf(cells); {
		case strings.IndexByte(name, ' ') < 0:
		case row < from:
			above[name] = true
		case above[name]:
			again = true
			return errStop
		}
		return nil
	}) // errStop is taken by the grid
	return again
}

// saysSex says whether a part has a column of sexes that says something.
func (p *Part) saysSex() bool {
	at := p.Index(Sex)
	return at >= 0 && !p.blank(at)
}

// listStarts are the rows at which the places of a part begin, or its times where it has no places.
func (p *Part) listStarts() (rows []int) {
	at, byTime := p.Index(Position), false
	if at < 0 {
		at, byTime = p.Index(Time), true
	}
	last := 0.0
	p.Each(func(row int, cells []string) error {
		v := looseNumber(strings.TrimRight(trim(cellAt(cells, at)), ".)"))
		if len(rows) == 0 || byTime && v > 0 && v < last || !byTime && v == 1 && last > 1 {
			rows = append(rows, row)
		}
		if v > 0 {
			last = v
		}
		if len(rows) > 2 {
			return errStop
		}
		return nil
	}) // errStop is taken by the grid
	return rows
}

// letterInBrackets is a mark that a line explains, "(W) = women".
var letterInBrackets = regexp.MustCompile(`\((\pL)\)`)

// letterMeans is a letter that a line explains, and that stands in brackets behind the names:
// "(L = lady)", "L: ladies".
var letterMeans = regexp.MustCompile(`(?:^|[\s(])(\pL) ?[=:] ?\pL`)

// markedOf reads a line that says whose a mark is, and perhaps who all others are.
func (p *Part) markedOf(line string, sexes []toldSex) bool {
	words := strings.Fields(fold(line))
	others := false
	for _, w := range words {
		others = others || otherWords[w]
		if notWhoseMark[w] {
			return false
		}
	}
	if len(words) > 14 || len(sexes) == 2 && !others {
		return false
	}
	sign := ""
	if m := letterInBrackets.FindStringSubmatch(line); m != nil {
		sign = "(" + m[1] + ")"
	} else if m := letterMeans.FindStringSubmatch(line); m != nil {
		sign = "(" + m[1] + ")"
	} else {
		for _, s := range footnoteSigns {
			if strings.Count(line, s) == 1 {
				sign = s
				break
			}
		}
	}
	if sign == "" || sign == "#" {
		return false
	}
	of, rest := sexes[0].sex, ""
	if len(sexes) == 2 {
		rest = sexes[1].sex
		if strings.Index(line, sign) > len(line)/2 { // "All men, women marked (W)"
			of, rest = rest, of
		}
	}
	at := p.Index(Sex) // where the marks stand in a column of their own
	if at < 0 && sign[0] == '(' {
		at = slices.IndexFunc(p.Columns, func(c Column) bool {
			if c.Meaning != Other || c.Heading != "" || c.Index < 0 {
				return false
			}
			texts := columnTexts(p, c.Index)
			return len(texts) == 1 && fold(texts[0]) == fold(sign)
		})
	}
	if at >= 0 && (rest == "" && p.rules.legend != nil || len(columnTexts(p, at)) > 1) {
		return false
	}
	marked, n := map[int]string{}, 0
	p.Each(func(row int, cells []string) error {
		marked[row] = rest
		for i, c := range cells {
			if c = trim(c); i < len(p.Columns) && (strings.HasSuffix(c, sign) && (sign[0] == '(' || p.signAt(i, c) == sign) || i == p.Index(Name) && sign[0] != '(' && strings.HasPrefix(c, sign) || i == at && c != "") {
				marked[row] = of
				n++
				break
			}
		}
		return nil
	}) // a grid has no error of its own
	if n == 0 || n == len(marked) && rest != "" {
		return false
	}
	p.addSexes(marked, line)
	return true
}

// addSexes adds a column that carries the sexes of rows, each until the next row that has one.
func (p *Part) addSexes(of map[int]string, line string) {
	const heading = "(sex)"
	why := "the line “" + line + "” says so"
	p.rules.sectionAt = of
	if at := p.rules.sectionColumn; at >= 0 {
		p.rules.sections = nil
		p.Columns[at].Heading, p.Columns[at].Meaning, p.Columns[at].Why = heading, Sex, why
		return
	}
	if at := p.Index(Sex); at >= 0 {
		c := &p.Columns[at]
		c.Meaning, c.Why = Other, fmt.Sprintf("heading %q, but “%s” says more", c.Heading, line)
	}
	p.rules.sectionColumn = p.addColumn(heading, Sex, why)
}
