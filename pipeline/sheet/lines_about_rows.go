package sheet

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
)

// Of which rows a line beside the table speaks: by their places, "positions 5 to 9", "from 7 on", by runners' names, or
// by the one first name that a runner alone has, "Jo's time".

// lineAbout is a line beside the table, folded, with the places and the runners that it speaks of.
type lineAbout struct {
	text, folded string
	means        []*meant
	open         bool // it speaks of all rows from one on
	owners       []string
}

// meant is a piece of such a line, what stands at [from, to) of it folded: places first to last, or a runner.
type meant struct {
	from, to    int
	first, last int
	rows        []int
}

// lineAbout finds the places that a line speaks of.
func (p *Part) lineAbout(line, folded string) *lineAbout {
	l := &lineAbout{text: line}
	if namedBy.MatchString(line) {
		for _, m := range ownerOf.FindAllStringSubmatch(line, -1) {
			l.owners = append(l.owners, fold(m[1]))
		}
	}
	line = numberRange.ReplaceAllString(ownerOf.ReplaceAllString(line, "$1 "), "$1 to $2")
	l.folded = " " + punctuation.Replace(fold(line)) + " "
	add := func(from, to, first, last int) {
		l.means = append(l.means, &meant{from: from, to: to, first: first, last: last})
	}
	if m := fromPlace.FindStringSubmatchIndex(l.folded); m != nil { // the first number of the line
		first, _ := strconv.Atoi(l.folded[m[4]:m[5]])
		if m[2] >= 0 && pastWords[l.folded[m[2]:m[3]]] {
			first++
		}
		next, _, _ := strings.Cut(l.folded[m[1]:], " ")
		if l.open = m[2] >= 0 && !rangeWords[next] || m[6] >= 0 && m[7]-m[6] > len(" down"); l.open {
			add(m[0], m[1]-1, first, math.MaxInt)
			return l
		}
	}
	from, list, end, ok := p.listedPlaces(l, folded)
	if !ok {
		return l
	}
	for _, r := range placeRanges.FindAllStringSubmatchIndex(l.folded[list:end], -1) {
		first, _ := strconv.Atoi(l.folded[list+r[2] : list+r[3]])
		last := first
		if r[4] >= 0 {
			last, _ = strconv.Atoi(l.folded[list+r[4] : list+r[5]])
		}
		if first > 0 && last >= first {
			at := list + r[0]
			if len(l.means) == 0 {
				at = from
			}
			add(at, list+r[1], first, last)
		}
	}
	if other := secondPlace.FindStringSubmatchIndex(l.folded[end:]); len(l.means) == 1 && other != nil {
		place, _ := strconv.Atoi(l.folded[end+other[2] : end+other[3]]) // "6 finished before 5"
		add(end+other[0], end+other[3], place, place)
	}
	return l
}

// listedPlaces is where a line lists places, figures at [list, end), and from where on the words for them stand. folded
// is the line with all its marks.
func (p *Part) listedPlaces(l *lineAbout, folded string) (from, list, end int, ok bool) {
	if m := saidPlaces.FindStringSubmatchIndex(l.folded); m != nil {
		from, list, end = m[0], m[6], m[7]
		if m[4] >= 0 {
			from = list // "Void: 2"
		}
		return from, list, end, m[2] < 0 || !p.numbersLikePlaces()
	}
	if _, _, explains := signLine(l.text); explains || text.OfNumbers(folded) {
		return 0, 0, 0, false
	}
	m := barePlaces.FindStringSubmatchIndex(l.folded)
	if m == nil || m[4] >= 0 && countedThings[l.folded[m[4]:m[5]]] || countedBefore[finalWordOf(l.folded[:m[2]-1])] || p.numbersLikePlaces() {
		return 0, 0, 0, false
	}
	return m[2], m[2], m[3], true
}

// numbersLikePlaces says whether start numbers stand beside places and some of them are no greater than those, so that
// a number in a line may be either.
func (p *Part) numbersLikePlaces() bool {
	number := p.Index(Number)
	if number < 0 || p.rules.pos < 0 {
		return number >= 0
	}
	if p.likePlaces == nil {
		least, most := math.MaxInt, 0
		p.Each(func(_ int, cells []string) error {
			if n, ok := smallCount(trim(cellAt(cells, number))); ok {
				least = min(least, n)
			}
			most = max(most, placeFigure(cellAt(cells, p.rules.pos)))
			return nil
		}) // was read without an error before
		like := least <= most
		p.likePlaces = &like
	}
	return *p.likePlaces
}

// placeFigure is the place that a cell of places says, also as "6th", "#6" or "006."; 0 for none.
func placeFigure(cell string) int {
	c := strings.Trim(trim(cell), " #.)=")
	n, err := strconv.Atoi(strings.TrimRight(c, "stndrhº°."))
	if err != nil {
		return 0
	}
	return n
}

// look takes a row whose place or runner the line speaks of.
func (l *lineAbout) look(row, place int, name string) {
	for _, m := range l.means {
		if m.first > 0 && place >= m.first && place <= m.last {
			m.rows = append(m.rows, row)
		}
	}
	if !strings.Contains(name, " ") {
		return
	}
	for _, n := range [...]string{name, swapped(name)} {
		if at := strings.Index(l.folded, " "+n+" "); at >= 0 {
			l.means = append(l.means, &meant{from: at + 1, to: at + 1 + len(n), rows: []int{row}})
			return
		}
	}
	for _, owner := range l.owners {
		if strings.HasPrefix(name, owner+" ") || strings.HasSuffix(name, " "+owner) {
			at := strings.Index(l.folded, " "+owner+" ") + 1
			for _, m := range l.means {
				if m.from == at { // two of that name
					m.rows = append(m.rows, row)
					return
				}
			}
			l.means = append(l.means, &meant{from: at, to: at + len(owner), first: -1, rows: []int{row}})
		}
	}
}

// rowsMeant are the rows that the line speaks of; of two of one first name it speaks of neither.
func (l *lineAbout) rowsMeant() (rows []int) {
	l.means = slices.DeleteFunc(l.means, func(m *meant) bool { return len(m.rows) == 0 || m.first == -1 && len(m.rows) > 1 })
	slices.SortFunc(l.means, func(a, b *meant) int { return a.from - b.from })
	for _, m := range l.means {
		rows = append(rows, m.rows...)
	}
	return rows
}

// rest is the line without the places and the runners.
func (l *lineAbout) rest() string {
	var b strings.Builder
	at := 0
	for _, m := range l.means {
		if m.from < at {
			continue // a name inside a longer one
		}
		b.WriteString(l.folded[at:m.from])
		b.WriteByte(' ')
		at = m.to
	}
	b.WriteString(l.folded[at:])
	return b.String()
}

// otherOrder says whether the line says of two rows that one came before the other, and they stand otherwise.
func (l *lineAbout) otherOrder(at map[int]int) bool {
	if len(l.means) != 2 || len(l.means[0].rows) != 1 || len(l.means[1].rows) != 1 || l.means[0].to > l.means[1].from {
		return false
	}
	a, b := l.means[0], l.means[1]
	between := strings.TrimSpace(l.folded[a.to:b.from])
	for _, w := range strings.Fields(l.folded[:a.from] + l.folded[b.to:]) {
		if w = strings.Trim(w, ".-"); w != "" && !besideTaken[w] && !orderEnds[w] {
			return false
		}
	}
	switch first := at[a.rows[0]] < at[b.rows[0]]; {
	case cameBefore.MatchString(between):
		return !first
	case cameBehind.MatchString(between):
		return first
	}
	return false
}

// Words for that. Common practice of the languages, no source.
var (
	cameBefore = regexp.MustCompile(`^(?:(?:was|is|were|finished|came|crossed|came in|should be|should have been|actually|just|really|in fact|war|kam|lag|a fini|est arrive|etait|llego|era|arrivo|kwam) )*(?:before|ahead of|in front of|beat|vor|devant|avant|antes de|delante de|prima di|davanti a|voor|fore|foran|framfor|przed|pred|ennen)$`)
	cameBehind = regexp.MustCompile(`^(?:(?:was|is|were|finished|came|crossed|came in|should be|should have been|actually|just|really|in fact|war|kam|lag|a fini|est arrive|etait|llego|era|arrivo|kwam) )*(?:behind|after|hinter|nach|derriere|apres|detras de|despues de|dopo|dietro|achter|na|bakom|etter|efter|bak|za|po|jalkeen)$`)
	orderEnds  = set("actually really sorry think i they tell me says order not after before by a whisker dispute")
)

// Places in a line: a list of them behind a word for places, or behind one that speaks against them; a list alone, with
// the word behind it; all from one on. Common practice, no source.
const (
	aPlace        = `\d{1,4}(?:st|nd|rd|th|\.|e|eme|er)?`
	someJoined    = `(?:` + aPlace + `(?: ?[-–] ?` + aPlace + `)?(?: (?:and |& |\+ |und |et |y |e |en |och |og |ja |i |a |es |or |to |bis |till |til |tot |until |au |al |do |hasta |through )?` + aPlace + `)*)`
	wordsForPlace = `places?|pos|positions?|lines?|rows?|platz|platze|rang|zeile|place|puestos?|posto|posti|plaats|plats|plads|plass|sija|sijat|miejsce|misto|lugar|helyezett`
)

var (
	saidPlaces    = regexp.MustCompile(` (?:(nos?|nr|numbers?|runners?|finishers?)|` + wordsForPlace + `|times? (?:of|for)|zeit von|zeiten von|temps d[eu]|(void|ignore|delete|remove|disqualified|dq|dnf|strike|cancel|scratch))\.?( ` + someJoined + `) `)
	barePlaces    = regexp.MustCompile(` (` + someJoined + `)(?: (\S+))? `)
	placeRanges   = regexp.MustCompile(`(\d{1,4})[a-z.]*(?: ?(?:[-–]|to|bis|till|til|tot|until|au|al|do|hasta|through) ?(\d{1,4}))?`)
	secondPlace   = regexp.MustCompile(` (?:(?:nos?|nr|numbers?|` + wordsForPlace + `)\.? )?(\d{1,4})(?:st|nd|rd|th)? `)
	fromPlace     = regexp.MustCompile(` (?:(from|after|below|beyond|since|ab|nach|depuis|a partir de|apres|vanaf|desde|dopo|dal|fran|efter|fra|od) (?:the )?(?:(?:nos?|nr|numbers?|` + wordsForPlace + `)\.? )?)?(\d{1,4})(?:st|nd|rd|th|\.)?( (?:on|down|up|an|onwards?|downwards|upwards|and below|and after|abwarts|en adelante|in poi|et suivants|en verder|och framat))? `)
	rangeWords    = set("to bis till til tot until au al do hasta through and und et y en och og")
	pastWords     = set("after below beyond nach apres dopo efter")
	countedThings = set("s sec secs second seconds min mins minute minutes h hour hours m metre metres meter meters k km mile miles lap laps loop loops runners finishers people names times tokens dogs men women year years week weeks x people first runs volunteers marshals sekunden minuten secondes minutes segundos minutos secondi minuti seconden sekunder minuter sekund minut")
	countedBefore = set("lap laps loop loops km mile week weeks run race round heat wave stage page part leg year day runde runden tour tours giro giri vuelta vueltas ronde rondes varv runder kolo okrazenie")
	numberRange   = regexp.MustCompile(`(\d) ?[-–] ?(\d)`)
	ownerOf       = regexp.MustCompile(`([\pL\d]{2,})['’]s `)
	namedBy       = regexp.MustCompile(`['’]s (?:\pL+ )?(?:time|name|position|place|result)\b`)
)
