package sheet

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// A line beside the table that takes back results in it, by their places or their runners' full names, "Place 7
// disqualified", "Jo Lee and Al Roe missed a lap", and one that says what the letters of a column stand for, where
// that is how a race ended, "R = retired".

// takenBack are the rows that such lines speak against, with what is noted on them. A line with a time or a day
// in it is about something else, and one that speaks of most of the rows about none of them.
func (p *Part) takenBack(lines []string) (rows map[int]string, said map[string]bool) {
	var against []*spokenLine
	for _, l := range lines {
		if folded := fold(l); len(against) < mostLineRules && len(l) <= 160 && !clockInside.MatchString(l) && !text.OfAnotherDay(strings.ReplaceAll(folded, " before ", " ")) && mayTakeBack(folded) && len(findDates(l)) == 0 {
			against = append(against, p.spokenLine(l, folded))
		}
	}
	if len(against) == 0 {
		return nil, nil
	}
	nameOf, at, n := p.fullNames(), map[int]int{}, 0 // at: by row, how many stand above it
	p.Each(func(row int, cells []string) error {
		at[row] = n
		n++
		name, place := strings.Join(strings.Fields(punctuation.Replace(nameOf(cells))), " "), 0
		if p.rules.pos >= 0 {
			place, _ = strconv.Atoi(strings.Trim(cellAt(cells, p.rules.pos), " .)"))
		}
		for _, l := range against {
			l.look(row, place, name)
		}
		return nil
	}) // a grid has no error of its own
	rows, said = map[int]string{}, map[string]bool{}
	for _, l := range against {
		found := l.meant(n)
		if len(found) == 0 || 2*len(found) > n && !l.open {
			continue
		}
		rest := l.rest()
		if strings.Contains(l.text, "?") && len(strings.Fields(rest)) < 3 {
			rest += "?" // "6 time?", "?? Jo Lee"
		}
		if strings.Contains(l.text, "?") && len(strings.Fields(rest)) < 3 {
			rest += "?" // "6 time?", "?? Jo Lee"
		}
		if !takesBack(rest) && !text.NotAsListed(rest) && !l.otherOrder(at) {
			continue
		}
		for _, row := range found {
			rows[row] = "time disputed: " + l.text
		}
		said[l.text] = true
	}
	return rows, said
}

// spokenLine is a line beside the table, folded, with the places and the runners that it speaks of.
type spokenLine struct {
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

// spokenLine finds the places that a line speaks of.
func (p *Part) spokenLine(line, folded string) *spokenLine {
	l := &spokenLine{text: line}
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
	numbered := p.Index(Number) >= 0
	_, _, explains := signLine(l.text)
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
	m := saidPlaces.FindStringSubmatchIndex(l.folded)
	if m != nil && m[2] >= 0 && numbered {
		return l
	}
	from := 0
	switch {
	case m == nil && (numbered || explains || text.OfNumbers(folded)):
		return l
	case m == nil:
		if m = barePlaces.FindStringSubmatchIndex(l.folded); m == nil || m[4] >= 0 && countedThings[l.folded[m[4]:m[5]]] || countedBefore[finalWordOf(l.folded[:m[2]-1])] {
			return l
		}
		m = []int{m[2], m[3], -1, -1, -1, -1, m[2], m[3]}
		from = m[6]
	case m[4] >= 0:
		from = m[6] // "Void: 2"
	default:
		from = m[0]
	}
	for _, r := range placeRanges.FindAllStringSubmatchIndex(l.folded[m[6]:m[7]], -1) {
		first, _ := strconv.Atoi(l.folded[m[6]+r[2] : m[6]+r[3]])
		last := first
		if r[4] >= 0 {
			last, _ = strconv.Atoi(l.folded[m[6]+r[4] : m[6]+r[5]])
		}
		if first > 0 && last >= first {
			add(max(from, m[6]+r[0]), m[6]+r[1], first, last)
			if len(l.means) == 1 {
				l.means[0].from = from
			}
		}
	}
	if other := secondPlace.FindStringSubmatchIndex(l.folded[m[7]:]); len(l.means) == 1 && other != nil {
		place, _ := strconv.Atoi(l.folded[m[7]+other[2] : m[7]+other[3]]) // "6 finished before 5"
		add(m[7]+other[0], m[7]+other[3], place, place)
	}
	return l
}

// look takes a row whose place or runner the line speaks of.
func (l *spokenLine) look(row, place int, name string) {
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

// meant are the rows that the line speaks of; of two of one first name it speaks of neither.
func (l *spokenLine) meant(n int) (rows []int) {
	l.means = slices.DeleteFunc(l.means, func(m *meant) bool { return len(m.rows) == 0 || m.first == -1 && len(m.rows) > 1 })
	slices.SortFunc(l.means, func(a, b *meant) int { return a.from - b.from })
	for _, m := range l.means {
		rows = append(rows, m.rows...)
	}
	return rows
}

// rest is the line without the places and the runners.
func (l *spokenLine) rest() string {
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
func (l *spokenLine) otherOrder(at map[int]int) bool {
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
	cameBefore = regexp.MustCompile(`^(?:(?:was|is|were|finished|came|crossed|came in|should be|should have been|actually|just|really|in fact|vor|war|kam|lag|a fini|est arrive|etait|llego|era|arrivo|finishte|kwam) )*(?:before|ahead of|in front of|beat|vor|devant|avant|antes de|delante de|prima di|davanti a|voor|fore|foran|framfor|przed|pred|ennen)$`)
	cameBehind = regexp.MustCompile(`^(?:(?:was|is|were|finished|came|crossed|came in|should be|should have been|actually|just|really|in fact|war|kam|lag|a fini|est arrive|etait|llego|era|arrivo|kwam) )*(?:behind|after|hinter|nach|derriere|apres|detras de|despues de|dopo|dietro|achter|na|bakom|etter|efter|bak|za|po|jalkeen)$`)
	orderEnds  = set("actually really sorry think i they tell me says order not after before by a whisker dispute")
)

var punctuation = strings.NewReplacer(",", " ", ";", " ", ":", " ", "(", " ", ")", " ", "–", " ", "—", " ", " - ", " ", ". ", " ", "!", " ", "“", " ", "”", " ", "\"", " ", "|", " ", "/", " ")

// swapped puts the last word of a name first, as sheets with the family name first have it.
func swapped(name string) string {
	at := strings.LastIndexByte(name, ' ')
	return name[at+1:] + " " + name[:max(at, 0)]
}

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

// mayTakeBack says whether a folded line has as many words as one that takes results back, before the names are looked for.
func mayTakeBack(folded string) bool {
	words := strings.Fields(punctuation.Replace(folded))
	return len(words) > 1 && len(words) <= 24
}

// takesBack says whether what is left of a line without places and names speaks against them.
func takesBack(rest string) bool {
	var words []string
	for _, w := range strings.Fields(rest) {
		if w = strings.Trim(w, ".-&+"); w != "" && !besideTaken[w] {
			words = append(words, w)
		}
	}
	if len(words) == 0 || len(words) > 8 || slices.ContainsFunc(words, func(w string) bool { return praising[w] }) {
		return false
	}
	return speaksAgainst(strings.Join(words, " "))
}

// praising are words of a line that speaks for somebody.
var praising = set(`queries questions well thanks thank congratulations congrats bravo danke merci gracias grazie bedankt tack takk tak kiitos dziekujemy dekujeme obrigado koszonjuk`)

// besideTaken are words that such a line has besides. Common practice, no source.
var besideTaken = set(`hat haben ha han har zijn heeft hebben an out off please bitte svp por favor nb n.b note correction remark the a is are was were has have had been and be will die der das von vom ist sind war wurde wird und de la le les el los il lo i of result results from in out ar er es son sono na jest byl byla je zostal zostala lett van af av og och en et y e ja`)

// speaksAgainst says whether a folded text says how a race ended that is no result, or that a line does not stand.
func speaksAgainst(folded string) bool {
	return saysEnded(folded) || text.AgainstTime(folded, 0)
}

// codesAgainst are the codes of up to three letters or figures that lines beside the table explain as something
// that speaks against a result, "R = retired; 3: disqualified", with what they stand for.
func codesAgainst(lines []string) (codes map[string]string) {
	for _, l := range lines {
		if len(l) > 300 {
			continue
		}
		if label, rest, ok := strings.Cut(l, ":"); ok && (len([]rune(label)) > 3 || strings.Contains(rest, "=")) {
			l = rest // "Key: R = retired"
		}
		for _, piece := range codePieces.Split(nextCode.ReplaceAllString(l, ";$1"), -1) {
			m := codeMeans.FindStringSubmatch(trim(piece))
			if m == nil || len(m[2]) > 60 || !speaksAgainst(fold(m[2])) {
				continue
			}
			if codes == nil {
				codes = map[string]string{}
			}
			codes[m[1]] = trim(m[2])
		}
	}
	return codes
}

var (
	nextCode   = regexp.MustCompile(` ((?:\pL{1,2}|\d) ?= ?\pL)`) // "1 = finished 9 = disqualified"
	codePieces = regexp.MustCompile(`[;|\n]|, |  |\. (?:\pL{1,3}|\d) ?[=:–-]`)
	codeMeans  = regexp.MustCompile(`^\(?([\pL\d+†‡#*]{1,3})\)?\.?(?: ?[=:] ?| [–-] | )(.*\pL.*)$`)
)

// codedColumns are the columns whose filled cells are all such short codes, some of them of codes.
func (p *Part) codedColumns(codes map[string]string) (columns []int) {
	if len(codes) == 0 {
		return nil
	}
	for _, c := range p.Columns {
		switch c.Meaning {
		case Name, GivenName, FamilyName, Time, Position, Age, Date:
			continue
		}
		texts, found, others := columnTexts(p, c.Index), false, false
		numbers := c.Meaning == Number && !p.fewTexts(c.Index, texts)
		for _, t := range texts {
			if len([]rune(t)) > 3 || numbers && digitsOnly(t) {
				found = false
				break
			}
			found, others = found || codes[t] != "", others || codes[t] == ""
		}
		switch {
		case !found, c.Meaning == Club && others:
			continue
		case c.Meaning == Club: // under a heading that nobody knows
			p.column(c.Index).Meaning = Other
		}
		columns = append(columns, c.Index)
	}
	return columns
}

// fewTexts says whether a column has few texts again and again, as no column of runners' numbers has.
func (p *Part) fewTexts(column int, texts []string) bool {
	n := 0
	p.Each(func(_ int, cells []string) error {
		if !isBlank(cellAt(cells, column)) {
			n++
		}
		return nil
	}) // a grid has no error of its own
	return len(texts) <= 5 && n > 2*len(texts)
}

// remarksElsewhere are the columns of clubs, numbers and things unknown in few rows of which, and in some with a time, a remark
// stands by which the row is no result.
func (p *Part) remarksElsewhere() (columns []Column) {
	const few = 3 // one row in so many
	for _, c := range p.Columns {
		if c.Meaning != Other && c.Meaning != Club && c.Meaning != Number {
			continue
		}
		against, others, n := 0, 0, 0
		p.Each(func(_ int, cells []string) error {
			n++
			switch cell := trim(cellAt(cells, c.Index)); {
			case againstInCell(cell, c.Meaning):
				if finishTime(cellAt(cells, p.rules.time)) > 0 {
					against++
				}
			case !isBlank(cell):
				others++
			}
			return nil
		}) // a grid has no error of its own
		if against > 0 && few*against <= n && (c.Meaning == Club || 2*others <= n) {
			columns = append(columns, c)
		}
	}
	return columns
}

// againstInCell says whether a cell of a column that is not for remarks is one all the same, by which its row is no
// result. A club has a capital.
func againstInCell(cell string, of Meaning) bool {
	if len(cell) < 2 || len(cell) > 80 || hasDigit(cell) && of == Number {
		return false
	}
	folded := fold(cell)
	if statusWords[folded] {
		return folded != "ok" && folded != "finished" && !notGiven[folded]
	}
	first, _ := utf8.DecodeRuneInString(cell)
	return (of != Club || unicode.IsLower(first)) && text.AgainstTime(folded, 0)
}

// notGiven are words for how a race ended that stand for no club, or nothing else, as often.
var notGiven = set("n/a na n.a nc np ab", "n / a")
