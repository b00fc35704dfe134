package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// A line below the results that gives one runner another time: "Sorry, Ann's time was 25:10",
// "Correction: no. 6 should read 23:25", "* should be 20:50".

// sorryWords are what such lines say beside correctionWords. Common practice, no source.
var sorryWords = regexp.MustCompile(` (?:sorry|apologies|oops|whoops|mistake|my mistake|typo|wrong|should be|should read|should say|should have been|was actually|is actually|actually ran|actual time|actual|real time|true time|correct time|right time|changed to|amended to|revised to|richtige zeit|tatsachliche zeit|temps reel|temps exact|tiempo real|tiempo correcto|tempo reale|tempo corretto|tempo esatto|juiste tijd|echte tijd|ratt tid|rigtige tid|riktig tid|entschuldigung|sorry|tippfehler|falsch|richtig ist|muss heissen|pardon|desole|desolee|erreur|perdon|disculpad|error|scusate|errore|fout|foutje|vergissing|przepraszam|pomylka|blad|ursakta|forlat|fel|ddrwg gen i|camgymeriad) `)

var (
	saidPlace = regexp.MustCompile(`(?i)(?:^|[\s(])(?:(?:no|nr|number|pos|position|place|platz|n°|nº)\.? ?(\d{1,4})|(\d{1,4})(?:st|nd|rd|th))\b`)
	notTime   = regexp.MustCompile(`(?i)\b(?:not|nicht|und nicht|statt|instead of|rather than|pas|et non|no|non|niet|in plaats van|nie|inte)\s+$`)
	fewWords  = 24 // of a line that corrects
)

// correction is the time that a line gives the runner of a row.
type correction struct {
	row       int
	time, was string
	line      string
}

// timeCorrections finds the corrections in the lines below the results and above them, and the lines that
// correct a row without saying beyond doubt to what: those are disputes. A time is put right
// where the line gives one row only, by its runner's name, by a first or family name that no
// other runner has, by its place or by a sign at its end; where the row's time is another
// one, and the line gives the new time alone or beside the row's; and where the new one
// does not fall out of the order of the list.
func (p *Part) timeCorrections(sheet string) (found []correction, disputes map[int]string) {
	at := p.rules.time
	if at < 0 || len(p.rules.clock) > 0 || p.Index(Time) != at {
		return nil, nil
	}
	var lines []Skipped
	under := false // below a line that says no more than that corrections follow
	for _, sk := range p.Skipped {
		if text := strings.Trim(sk.Text, " |:-–."); text != "" && !hasDigit(text) {
			under = len(strings.Fields(text)) <= 3 && anyWord(text, correctionWords)
		} else if under && sk.Row > p.rules.first && len(text) <= 80 && len(lines) < mostLineRules && len(clockInside.FindAllString(text, 2)) == 1 {
			lines = append(lines, Skipped{Row: sk.Row, Text: text})
			continue
		}
		if text := strings.Trim(sk.Text, " |"); sk.Row > p.rules.first && len(text) <= 200 && len(lines) < mostLineRules && clockInside.MatchString(text) && correctsTime(text) {
			lines = append(lines, Skipped{Row: sk.Row, Text: text})
		}
	}
	for _, t := range p.ownTitles() {
		if len(t) <= 200 && clockInside.MatchString(t) && correctsTime(t) {
			lines = append(lines, Skipped{Text: t})
		}
	}
	noted := p.timesInNotes()
	if len(lines) == 0 && len(noted) == 0 {
		return nil, nil
	}
	rows := p.timedRows(at)
	disputes = map[int]string{}
	for k, r := range rows {
		n, ok := noted[r.row]
		if time, _ := text.TimeOfNote(n); ok && time != r.time && kindOf(r.time) == kClock && strings.Count(time, ":") == strings.Count(r.time, ":") && inOrder(rows, k, time) {
			found = append(found, correction{row: r.row, time: time, was: r.time, line: n})
			p.problem(sheet, r.row, p.Index(Notes), place.Look, "corrected-in-words", shorten(n, 80), "the corrected result in its own row",
				"Row "+strconv.Itoa(r.row)+" is read with "+time+", as this note says, and not with "+r.time+". If that is wrong, correct the time.")
		}
	}
	for _, l := range lines {
		k := correctedRow(rows, l.Text)
		if k < 0 {
			continue
		}
		time, ok := newTime(l.Text, rows[k].time)
		switch {
		case time == rows[k].time:
		case ok && inOrder(rows, k, time):
			found = append(found, correction{row: rows[k].row, time: time, was: rows[k].time, line: l.Text})
			p.problem(sheet, l.Row, -1, place.Look, "corrected-in-words", shorten(l.Text, 80), "the corrected result in its own row",
				"Row "+strconv.Itoa(rows[k].row)+" is read with "+time+", as this line says, and not with "+rows[k].time+". If that is wrong, correct the time.")
		default:
			disputes[rows[k].row] = "time disputed: " + l.Text
		}
	}
	return found, disputes
}

// timesInNotes are the notes of rows that say which time should stand there.
func (p *Part) timesInNotes() map[int]string {
	at := p.Index(Notes)
	if at < 0 {
		return nil
	}
	noted := map[int]string{}
	p.Each(func(row int, cells []string) error {
		if n := trim(cellAt(cells, at)); n != "" && len(n) <= 80 && len(noted) < mostLineRules {
			if _, ok := text.TimeOfNote(n); ok {
				noted[row] = n
			}
		}
		return nil
	}) // a grid has no error of its own
	return noted
}

// correctsTime says whether a line speaks of a correction.
func correctsTime(line string) bool {
	f := fold(line)
	words := strings.Fields(f)
	if len(words) > fewWords || len(words) < 3 || len(findDates(line)) > 0 || isRecord(f) {
		return false
	}
	return slices.ContainsFunc(words[:3], func(w string) bool { return correctionWords[w] }) || sorryWords.MatchString(" "+f+" ") || len(clockInside.FindAllString(line, 3)) == 2 && notClock(line)
}

// notClock says whether a line has a time behind a word such as not: "19:10, not 19:01".
func notClock(line string) bool {
	for _, m := range clockInside.FindAllStringIndex(line, 3) {
		if notTime.MatchString(line[:m[0]]) {
			return true
		}
	}
	return false
}

// timedRow is a row of results as a line of words may mean it.
type timedRow struct {
	row               int
	place, name, time string
	sign              string // at the end of the time or another cell
}

func (p *Part) timedRows(at int) (rows []timedRow) {
	nameOf := p.fullNames()
	p.Each(func(row int, cells []string) error {
		r := timedRow{row: row, name: nameOf(cells), time: trim(cellAt(cells, at)), place: strings.TrimRight(trim(cellAt(cells, p.rules.pos)), ".)=")}
		if n := placeFigure(r.place); n > 0 {
			r.place = strconv.Itoa(n)
		}
		if r.sign = signOf(r.time); r.sign != "" {
			r.time = trim(strings.TrimSuffix(r.time, r.sign))
		}
		for _, c := range cells {
			if r.sign == "" {
				r.sign = signOf(c)
			}
		}
		rows = append(rows, r)
		return nil
	}) // a grid has no error of its own
	return rows
}

// onlyRow is the one row of which something is so, -1 for none and for several.
func onlyRow(rows []timedRow, is func(timedRow) bool) int {
	found := -1
	for k, r := range rows {
		if is(r) {
			if found >= 0 {
				return -1
			}
			found = k
		}
	}
	return found
}

// correctedRow is the row that a line means, -1 for none and for several.
func correctedRow(rows []timedRow, line string) int {
	f := " " + fold(strings.NewReplacer("'s ", " ", "’s ", " ").Replace(line)) + " "
	if k := onlyRow(rows, func(r timedRow) bool { return strings.Contains(r.name, " ") && strings.Contains(f, " "+r.name+" ") }); k >= 0 {
		return k
	}
	if sign, _, ok := signLine(line); ok {
		return onlyRow(rows, func(r timedRow) bool { return r.sign == sign })
	}
	if m := saidPlace.FindStringSubmatch(line); m != nil {
		said := orText(m[1], m[2])
		return onlyRow(rows, func(r timedRow) bool { return r.place == said })
	}
	return onlyRow(rows, func(r timedRow) bool {
		return slices.ContainsFunc(strings.Fields(r.name), func(w string) bool { return len(w) > 1 && strings.Contains(f, " "+w+" ") })
	})
}

// newTime is the time that a line gives instead of another one; ok is false where it can't be
// told which of its times that is.
func newTime(line, was string) (time string, ok bool) {
	clocks := clockInside.FindAllStringIndex(line, 4)
	text := func(k int) string { return line[clocks[k][0]:clocks[k][1]] }
	switch {
	case len(clocks) == 1:
		return text(0), !notTime.MatchString(line[:clocks[0][0]])
	case len(clocks) != 2:
	case text(0) == was || notTime.MatchString(line[:clocks[0][0]]):
		return text(1), text(0) == was
	case text(1) == was:
		return text(0), true
	}
	return "", false
}

// inOrder says whether a time fits between those of the rows above and below a row, where
// the times of the list rise.
func inOrder(rows []timedRow, at int, time string) bool {
	t := looseNumber(time)
	if at > 0 && kindOf(rows[at-1].time) == kClock && looseNumber(rows[at-1].time) > t {
		return false
	}
	return at+1 >= len(rows) || kindOf(rows[at+1].time) != kClock || looseNumber(rows[at+1].time) >= t
}

// notName is a name behind a word such as not: "3rd was Ann Fox, not Ann Roe".
var notName = regexp.MustCompile(`(?i:\bnot|\bnicht|\bstatt|\binstead of|\brather than|\bet non|\by no|\be non|\bniet|\binte)\s+(\p{Lu}[^,.;()]*)`)

// A name in a line that puts one runner in another's place, "for Ann Roe read Ann Fox", "Ann Roe should be Ann Fox",
// and in one that says who came in at a place, "6th was Ann Fox". Common practice, no source.
const (
	inItsPlace = `(\p{Lu}[\p{L}'’-]+(?: \p{Lu}[\p{L}'’.-]*)+)`
	reallyWas  = `(?i:should be|should read|should say|should have been|is really|was really|is actually|was actually|was in fact|muss heißen|müsste heißen|ist richtig|doit être|était en fait|debe ser|deve essere|moet zijn|ska vara|skal være)`
)

var (
	insteadOf = []*regexp.Regexp{
		regexp.MustCompile(`^(?i:(?:please |bitte )?(?:replace|change|ersetze|remplacer|sustituir|sostituire|vervang)) ` + inItsPlace + ` (?i:with|by|to|durch|par|por|con|door) ` + inItsPlace + `[.!]?$`),
		regexp.MustCompile(`(?i:\b(?:for|statt|pour|au lieu de|en vez de|invece di|in plaats van)),? ["“]?` + inItsPlace + `["”]?,? (?i:read|lies|lire|leer|léase|leggi|leggere|lees) ["“]?` + inItsPlace + `["”]?[.!]?$`),
		regexp.MustCompile(`^(?i:(?:correction|note|nb|sorry)[:,]? )?` + inItsPlace + `,? ` + reallyWas + ` ` + inItsPlace + `[.!]?$`),
	}
	cameInAt = regexp.MustCompile(`^(?i:(?:correction|note|nb|sorry)[:,]? )?(?i:(?:(no|nr|number|runner)|pos|position|place|platz|puesto|plaats|plats|plads|plass)\.? ?)?(\d{1,4})(?:st|nd|rd|th|\.)?(?i: place| position)?:? (?i:` + reallyWas + `|is|was|ist|war|est|était|es|era|è|är|var|er) ` + inItsPlace + `[.!]?$`)
)

// ownTitles are the titles of a part without those that stand over another one and are lent to it.
func (p *Part) ownTitles() []string { return p.Titles[:max(0, len(p.Titles)-p.lent)] }

// linesOutside are the lines over the table, which have no row, and those below its first row.
func (p *Part) linesOutside() (lines []Skipped) {
	for _, t := range p.ownTitles() {
		lines = append(lines, Skipped{Text: t})
	}
	for _, sk := range p.Skipped {
		if sk.Row > p.rules.first {
			lines = append(lines, sk)
		}
	}
	return lines
}

// nameCorrections finds, in the lines beside the results, those that say that a runner has another
// name, "Correction: 3rd was Ann Fox, not Ann Roe": by row the right name.
func (p *Part) nameCorrections(sheet string) map[int]string {
	if p.Index(Name) < 0 || p.rules.time < 0 {
		return nil
	}
	found := map[int]string{}
	var rows []timedRow
	for _, sk := range p.linesOutside() {
		text := strings.Trim(sk.Text, " |")
		if len(text) > 200 || clockInside.MatchString(text) || len(found) == mostLineRules {
			continue
		}
		wrong, right, said := renames(text, p.numbersLikePlaces)
		if right == "" {
			continue
		}
		if rows == nil {
			rows = p.timedRows(p.rules.time)
		}
		at := onlyRow(rows, func(r timedRow) bool {
			return wrong == "" && r.place == said || wrong != "" && strings.Contains(r.name, " ") && r.name == fold(wrong)
		})
		if at < 0 || slices.ContainsFunc(rows, func(r timedRow) bool { return r.name == fold(right) }) {
			continue // there already, or in another place: a matter of order
		}
		found[rows[at].row] = right
		p.problem(sheet, sk.Row, -1, place.Look, "corrected-in-words", shorten(text, 80), "the corrected result in its own row",
			"Row "+strconv.Itoa(rows[at].row)+" is read as "+right+", as this line says. If that is wrong, correct the name.")
	}
	return found
}

// renames is who a line says that somebody was, and who it says that it was not, or at which place. numbered says whether
// a number of the line may be a start number.
func renames(line string, numbered func() bool) (wrong, right, at string) {
	for _, form := range insteadOf {
		if m := form.FindStringSubmatch(line); m != nil {
			return m[1], strings.TrimRight(m[2], "."), ""
		}
	}
	if m := notName.FindStringSubmatchIndex(line); m != nil {
		if names := runnersIn(line[:m[0]], true); len(names) == 1 {
			return line[m[2]:m[3]], line[names[0][0]:names[0][1]], ""
		}
		return "", "", ""
	}
	if m := cameInAt.FindStringSubmatch(line); m != nil && !(m[1] != "" && numbered()) {
		return "", strings.TrimRight(m[3], "."), m[2]
	}
	return "", "", ""
}
