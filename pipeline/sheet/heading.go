package sheet

import (
	"regexp"
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// lexicon reads headings: the built-in words and those of the configuration.
type lexicon struct {
	extra map[string]Meaning
	said  map[string]Meaning // by an answer about this sheet, as saidColumns has them
	seen  map[string]guess   // readings of this sheet so far

	official, officialBefore string // folded heading of the times that count: said, or so before
	times                    saidTimes
}

func newLexicon(o Options) *lexicon {
	l := &lexicon{seen: map[string]guess{}, said: saidColumns(o.Columns), official: fold(o.Official), officialBefore: fold(o.OfficialBefore), times: newSaidTimes(o)}
	for text, word := range o.Headings {
		if m, ok := ParseMeaning(word); ok {
			if l.extra == nil {
				l.extra = map[string]Meaning{}
			}
			l.extra[fold(text)] = m
		}
	}
	return l
}

// guess is what a heading says by its words alone.
type guess struct {
	meaning  Meaning
	known    bool // the words were recognised; false leaves it to the values
	number   bool // "No": a position or a number, the values decide
	town     bool // "Ort": a venue or a home town, the values decide
	year     bool // "Year": of birth or of the run, the values decide
	forced   bool // the configuration says so
	said     bool // or an answer
	misspelt bool // one letter was put right
}

// hasNone is said of somebody who had nothing to be told by: "no barcode", "No name". Common practice, no source.
var hasNone = regexp.MustCompile(`^ *(?i:no|kein|pas de|sin|senza|geen|ingen|bez|sem) (?i:barcode|token|name|chip|tag|card|wristband|code|strichcode|code-barres|nom|nombre|nome|naam|navn|namn)s? *$`)

// read matches one heading by meaning.
func (l *lexicon) read(heading string) guess {
	if len(heading) > 200 {
		return guess{}
	}
	g, ok := l.seen[heading]
	if !ok {
		g = l.readNew(unmangle(heading))
		if len(l.seen) < 5000 {
			l.seen[heading] = g
		}
	}
	return g
}

func (l *lexicon) readNew(heading string) guess {
	f := fold(heading)
	if f == "" || len(f) > 60 || statusWords[f] {
		return guess{}
	}
	if m, ok := l.said[f]; ok {
		return guess{meaning: m, known: true, forced: true, said: true}
	}
	if hasNone.MatchString(heading) {
		return guess{}
	}
	if m, ok := l.extra[f]; ok {
		return guess{meaning: m, known: true, forced: true}
	}
	if isDate(heading) {
		return guess{} // 29 marca 2025 is a day, and no "marca", a time
	}
	if f == "nar" && len(heading) == utf8.RuneCountInString(heading) {
		return guess{meaning: BirthDate, known: true} // narozen, born, is no när, when
	}
	if m, ok := headingPhrases[f]; ok {
		return guess{meaning: m, known: true, number: f == "#" || f == "lp", year: m == BirthYear && f == "anno"}
	}
	if a, b, two := strings.Cut(f, " / "); two && len(a) > 1 && len(b) > 1 && (sexWords[a] || softSexWords[a]) && (sexWords[b] || softSexWords[b]) {
		return guess{meaning: Sex, known: true} // "Chico/Chica"
	}
	if parted := partWords(heading); parted != heading {
		if g := l.read(parted); g.known {
			return g
		}
	}
	if rest, ok := strings.CutPrefix(f, "and "); ok {
		return l.read(rest) // "And how old", the last of headings that make a sentence
	}
	if l.nameAndMore(heading) {
		return guess{meaning: Name, known: true}
	}
	if strings.ContainsAny(heading, "([{") {
		if g := l.read(withoutBrackets(heading)); g.known {
			return g
		}
	}
	g := guessFrom(f)
	if !g.known && strings.Contains(heading, "?") {
		return l.readQuestion(heading)
	}
	if i := strings.IndexAny(heading, "0123456789"); i > 0 && dayAndMonth.MatchString(heading[i:]) {
		// "Alder pr. 31/12": the day on which ages are reckoned
		words := strings.Fields(heading[:i])
		if n := len(words); n > 1 && len(words[n-1]) <= 4 {
			words = words[:n-1]
		}
		if w := guessFrom(fold(strings.Join(words, " "))); w.known && (w.meaning == Age || w.meaning == AgeGroup) {
			return w
		}
	}
	if g.meaning == Age && strings.HasSuffix(strings.TrimSpace(heading), "%") {
		g.meaning = AgeGrade
	}
	return g
}

// nameAndMore says whether a heading speaks of a name and, behind a mark, of what else stands in
// the cells with it: "Name, club", "Name / Cat", "Runner - age group".
func (l *lexicon) nameAndMore(heading string) bool {
	at := strings.IndexAny(heading, nameMarks)
	if at <= 0 {
		return false
	}
	if g := l.read(strings.TrimSpace(heading[:at])); !g.known || g.meaning != Name {
		return false
	}
	parts := 0
	for _, part := range strings.FieldsFunc(heading[at:], func(r rune) bool { return strings.ContainsRune(nameMarks, r) }) {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		switch g := l.read(part); {
		case !g.known:
			return false
		case g.meaning != AgeGroup && g.meaning != Age && g.meaning != Sex && g.meaning != Club && g.meaning != BirthYear:
			return false
		}
		parts++
	}
	return parts > 0
}

// nameMarks may stand between the words of such a heading: "Runner (club) cat".
const nameMarks = ",/-–—;&+|\n()"

// dayAndMonth is a day and a month in figures: 31/12, 31.12.
var dayAndMonth = regexp.MustCompile(`^[0-3]?[0-9][./][01]?[0-9]\b`)

// readMisspelt matches a heading that read does not know, one letter of one long
// word put right: "Gendar", "Catagory", "Postion".
func (l *lexicon) readMisspelt(heading string) guess {
	words := strings.Fields(fold(withoutBrackets(heading)))
	if len(words) == 0 || len(words) > 4 {
		return guess{}
	}
	changed := false
	for i, w := range words {
		if _, ok := headingWords[w]; ok || len(w) < 4 {
			continue
		}
		best := ""
		for _, k := range longHeadingWords {
			if text.Within(w, k, 1) && (len(w) >= 5 || w[0] == k[0]) {
				best = k
				break
			}
		}
		if best == "" {
			return guess{}
		}
		words[i], changed = best, true
	}
	if !changed {
		return guess{}
	}
	return l.read(strings.Join(words, " "))
}

// readShortened matches a heading that read does not know by the words that begin as its shortened ones,
// "Sukup.", "Nachn.", where all of these say the same.
func (l *lexicon) readShortened(heading string) guess {
	words, changed := strings.Fields(withoutBrackets(heading)), false
	if len(words) > 3 {
		return guess{}
	}
	for i, w := range words {
		start, short := strings.CutSuffix(w, ".")
		start = fold(start)
		if _, ok := headingWords[start]; ok || !short || utf8.RuneCountInString(start) < 3 || !hasNoDigit(start) {
			continue
		}
		whole, same := "", true
		for k, idea := range headingWords {
			if strings.HasPrefix(k, start) {
				same = same && (whole == "" || headingWords[whole] == idea)
				if whole == "" || k < whole {
					whole = k
				}
			}
		}
		if whole == "" || !same {
			return guess{}
		}
		words[i], changed = whole, true
	}
	if !changed {
		return guess{}
	}
	return l.read(strings.Join(words, " "))
}

// longHeadingWords are the words a slip of the pen is put right to: those of at
// least five letters, in a fixed order.
var longHeadingWords = func() (ws []string) {
	for w := range headingWords {
		if len(w) >= 5 {
			ws = append(ws, w)
		}
	}
	sort.Strings(ws)
	// The plain English words come first where several are as near.
	first := strings.Fields("position place name surname forename gender category time club finish number group notes status date course")
	return append(first, ws...)
}()

// partWords parts the words of "YearOfBirth".
func partWords(heading string) string {
	if strings.ContainsAny(heading, " -/") || len(heading) < 6 {
		return heading
	}
	var b strings.Builder
	for i := 0; i < len(heading); i++ {
		if c := heading[i]; i > 0 && c >= 'A' && c <= 'Z' && heading[i-1] >= 'a' && heading[i-1] <= 'z' {
			b.WriteByte(' ')
		}
		b.WriteByte(heading[i])
	}
	return b.String()
}

// withoutBrackets drops "(hh:mm:ss)" and "[min]".
func withoutBrackets(s string) string {
	var b strings.Builder
	depth := 0
	for _, r := range s {
		switch r {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			depth = max(0, depth-1)
		default:
			if depth == 0 {
				b.WriteRune(r)
			}
		}
	}
	return b.String()
}

// guessFrom joins the ideas of the words of a folded heading.
func guessFrom(f string) guess {
	var c concept
	unknown, numbers, known, kmUnit, strong := 0, 0, 0, false, 0
	prevSlash := false
	for _, w := range strings.Fields(f) {
		ideas, ok := headingWords[w]
		switch {
		case ok:
			c |= ideas
			if ideas != cUnit {
				known++
				if !weakWords[w] && len(w) > 1 {
					strong++
				}
			}
			if kmUnit && prevSlash && (w == "h" || w == "u") {
				c |= cPace
			}
			if w == "km" || w == "mi" || w == "mile" || w == "k" {
				kmUnit = true
				if prevSlash || strings.Contains(f, "per km") || strings.Contains(f, "per mile") {
					c |= cPace
				}
			}
		case w == "%":
			c |= cGrade
		case w == "/" || w == "+":
		case w[0] >= '0' && w[0] <= '9':
			numbers++
			if strings.HasSuffix(w, "km") || strings.HasSuffix(w, "k") || strings.HasSuffix(w, "mi") {
				kmUnit = true
			}
		case c&cTime != 0 && ofTime[w]:
		default:
			unknown++
		}
		prevSlash = w == "/"
	}
	if known == 0 && c&(cGrade|cPace) == 0 || unknown > known || unknown > 0 && strong == 0 && c&(cGrade|cPace) == 0 {
		return guess{}
	}
	has := func(all concept) bool { return c&all == all }
	any := func(some concept) bool { return c&some != 0 }
	g := guess{known: true}
	set := func(m Meaning) guess { g.meaning = m; return g }
	switch {
	case any(cAge|cSex|cBirth|cGroup) && !any(cPlace|cTime) && ofOther(f):
		return set(Other) // "Dog's age", "Coach sex", "Parent's date of birth"
	case has(cGap) && !any(cDistance):
		return set(Gap)
	case has(cPace):
		return set(Pace)
	case has(cPoints):
		return set(Points)
	case has(cGrade):
		return set(AgeGrade)
	case has(cSplit), kmUnit && numbers > 0 && any(cTime|cSplit):
		return set(Split)
	case has(cBest) && !any(cClub) && (!any(cName) || ofEarlier(f)):
		return set(PersonalBest) // "Mean of last 5" among them
	case any(cTotal|cNo|cNumber) && has(cRun) && !any(cPlace|cTime|cName):
		if has(cTotal) {
			return set(TotalRuns)
		}
		return set(Number)
	case has(cPlace) && has(cSex) && !any(cGroup|cTime&^0):
		return set(SexPlace)
	case has(cPlace) && has(cGroup):
		return set(GroupPlace)
	case has(cPlace) && has(cClub):
		return set(Other)
	case has(cPlace | cTime):
		// "Finish" alone is a position, "Finish time" a time.
		if strings.Contains(f, "finish") {
			if g := guessFrom(strings.TrimSpace(strings.ReplaceAll(strings.ReplaceAll(f, "finishing", ""), "finish", ""))); g.known {
				return g
			}
			return set(Position)
		}
		return set(Time)
	case has(cPlace) && has(cAge):
		return set(GroupPlace)
	case has(cPlace) && any(cBirth):
		return set(Other) // place of birth
	case has(cPlace):
		return set(Position)
	case has(cBirth|cAge) && !any(cGroup):
		return set(Age) // "Age / born": the cells say which
	case has(cBirth) && has(cYear):
		return set(BirthYear)
	case has(cBirth):
		return set(BirthDate)
	case has(cGroup) && has(cClub) && !any(cAge|cSex):
		return set(Other) // "Team category"
	case has(cGroup) && has(cSex) && !has(cAge):
		return set(AgeGroup)
	case has(cGroup):
		return set(AgeGroup)
	case has(cAge) && !any(cTime):
		return set(Age)
	case has(cAge | cTime):
		return set(AgeGrade)
	case has(cSex) && !any(cTime|cName):
		return set(Sex)
	case has(cGiven) && has(cFamily):
		return set(Name)
	case any((cGiven|cFamily)&^cName) && ofLastTime.MatchString(f):
		return set(Other) // "Status last week"
	case any((cGiven|cFamily)&^cName) && any(cTime|cRun|cDate|cCourse) && otherTime(f):
		return set(PersonalBest) // "Last time", "First run": of another day
	case has(cGiven) && !any(cTime|cClub):
		return set(GivenName)
	case has(cFamily) && !any(cTime|cClub):
		return set(FamilyName)
	case has(cName) && has(cUnit) && (f == "fname" || f == "f name"):
		return set(GivenName)
	case has(cName) && has(cUnit) && (f == "lname" || f == "l name" || f == "s name"):
		return set(FamilyName)
	case has(cName) && namesOther(f):
		return set(Other) // "Dog's name", "Coach name"
	case has(cName) && has(cClub):
		for _, and := range []string{" and ", " / ", " + ", " und ", " et ", " y ", " e ", " en "} {
			if strings.Contains(f, and) {
				return set(Name) // "Name and club"
			}
		}
		return set(Club)
	case has(cName) && any(cCourse|cRun):
		return set(Course)
	case has(cNumber) || has(cNo) && any(cRunner|cStart|cClub):
		return set(Number)
	case has(cName):
		return set(Name)
	case has(cTime) && has(cStart):
		return set(Session)
	case has(cTime) && has(cGun):
		return set(GunTime)
	case has(cTime) && has(cChip):
		return set(ChipTime)
	case has(cTime) && has(cDate):
		return set(Date)
	case has(cTime) && any(cTotal|cAmong|cRun):
		return set(Time)
	case has(cTime):
		return set(Time)
	case has(cClub):
		return set(Club)
	case has(cDate) && otherDate(f):
		return set(Other)
	case has(cDate):
		return set(Date)
	case has(cCourse):
		return set(Course)
	case has(cDistance):
		return set(Distance)
	case has(cSession):
		return set(Session)
	case has(cStatus):
		return set(Status)
	case has(cNote):
		return set(Notes)
	case has(cRunner):
		return set(Name)
	case has(cNo):
		g.number = true
		return set(Number)
	case has(cOfDay):
		g.town = true
		return set(Other)
	case has(cYear) && (any(cStart|cRun|cCourse) || otherDate(f)):
		return set(Other) // "Start year", "Year joined"
	case has(cYear):
		g.year = true
		return set(BirthYear)
	case has(cAmong):
		return set(Position)
	case has(cStart):
		return set(Session)
	case has(cTotal):
		return set(TotalRuns)
	case has(cRun) && otherDay(f):
		return set(Other) // "Letzter Lauf"
	case has(cRun):
		return set(Course)
	}
	return set(Other)
}

// otherDate says whether a heading of dates speaks of something else than the
// day of the run: when somebody entered, paid, joined or ran last.
func otherDate(f string) bool {
	for _, w := range strings.FieldsFunc(f, func(r rune) bool { return r == ' ' || r == '\'' || r == '’' }) {
		if otherDates[w] {
			return true
		}
	}
	return false
}

// ofOther says whether a heading of ages, sexes or birthdays speaks of somebody who belongs to the runner:
// "Partner's age", not "Age of runner (partner run)".
func ofOther(f string) bool {
	words := strings.Fields(f)
	for i, w := range words {
		if i > 3 {
			break
		}
		if namedOthers[w] || contactWords[w] || i == 0 && len(words) > 1 && contactWords[strings.TrimSuffix(strings.TrimSuffix(w, "s"), "'")] || i == 2 && words[1] == "of" && thingWords[w] {
			return true
		}
	}
	return false
}

// thingWords are things that have an age. Common practice, no source.
var thingWords = set("car cars shoes shoe bike house boat")

// ofEarlier says whether "last" or "first" in a heading of bests and means counts runs, and is no part
// of a name: "Average of last 3".
func ofEarlier(f string) bool {
	words := strings.Fields(f)
	for i, w := range words {
		if (w == "last" || w == "first") && (i+1 == len(words) || words[i+1][0] >= '0' && words[i+1][0] <= '9' || numeralWords[words[i+1]] > 0) {
			return !slices.ContainsFunc(words, func(w string) bool { return w == "name" || w == "names" || w == "runner" })
		}
	}
	return false
}

// namesOther says whether a heading of names speaks of somebody or something that belongs to
// the runner.
func namesOther(f string) bool {
	for _, w := range strings.Fields(f) {
		if namedOthers[w] || contactWords[w] {
			return true
		}
	}
	return false
}

var namedOthers = set("dog dogs pet pets horse horses coach coachs coaches trainer trainers teacher teachers doctor doctors partner partners husband wife hund hundens hundes chien perro cane pes pies caballo cavallo paard pferd entraineur entrenador allenatore trener treinador tranare traener lehrer leraar insegnante maestro guide guides buddy buddys scanner scanners timer timers timekeeper timekeepers recorder recorders marshal marshals mentor mentors captain captains witness carer carers owner owners sponsor sponsors handler companion companions supporter supporters")

// ofTime are words that say which time a heading means, and no more: "Timp final".
var ofTime = set("final finala finale oficial oficiala oficiale")

// ofLastTime finds a last or first that is of days and no part of a name, behind other words.
var ofLastTime = regexp.MustCompile(`.\b(?:last|first) (?:week|year|month|season|time|run|race)\b`)

// otherDay says whether a heading speaks of another day than the run's: "Last week", "Vorjahr".
func otherDay(f string) bool {
	return slices.ContainsFunc(strings.Fields(f), func(w string) bool { return otherDayWords[w] })
}

var otherDayWords = set("last previous prev next letzte letzter letztes letzten vorwoche vorjahr vorige voriger nachste derniere dernier precedente precedent prochaine pasada pasado ultima ultimo anterior proxima scorsa scorso precedente prossima vorig laatste volgende forra senaste sidste sist forrige ubiegly ostatni poprzedni minuly")

// otherTime says whether a heading speaks of the runner's first or last time.
func otherTime(f string) bool {
	first, _, _ := strings.Cut(f, " ")
	return first == "first" || first == "last"
}

var otherDates = set(`entry entered entries registered registration register signup signed joined join joining created updated modified changed uploaded imported exported printed paid payment invoice
	since seit depuis desde dal sedan siden sinds club career retired graduated
	expiry expires expiration renewal renewed membership member valid until from last first previous next best debut inscription anmeldung anmeldedatum inscripcion iscrizione inschrijving inschrijfdatum inscricao zgloszenia
	eintritt beitritt eingetreten adhesion alta afiliacion iscritto aangesloten toetreding intrade wstapienia
	anmalan tilmelding pamelding prihlaseni ilmoittautuminen`)

// weakWords are heading words that are also parts of names of people and
// places: beside a word that is not known they prove nothing.
var weakWords = set(`alder day run runs race start order place class last first by stad land open info lag heat wave lop lob bana rute course state
	plaats ort town city page bus lake best order col pet net chip grade nat id number no an ar son coach region county marca prova general rok dag
	nem kor ev loc rod timi rada koht proga kraj grad sp por gads leid ad sure zaman dz roj god gim timp nume enw oed staza trasa pist vieta mesto mjesto miesto место місце κατηγορια beh futas koh tek ras cursa ait ero vahe kosu parkur yas oras tara maa linn stat hiz ika og ve`)
