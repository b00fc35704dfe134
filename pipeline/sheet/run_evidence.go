package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"lapwing/pipeline/unit"
)

// evidence is a date found outside the rows.
type evidence struct {
	foundDate
	text     string
	from     string
	line     string // the title line it stands in; "" where it stands in a name
	labelled bool
	strength int // 4 given, 3 title or tab, 2 file name, 1 folder
}

// madeList are words before a date that say that it is when the sheet was made, and not the
// day of the run, though it may be the same day.
const madeList = `compiled collated edited prepared entered keyed posted sent received checked typed signed uploaded printed print updated update issued created produced exported generated published correct corrected amended revised version saved druckdatum gedruckt stand erstellt
	imprime edite genere mis impreso actualizado stampato aggiornato afgedrukt bijgewerkt impresso atualizado wydrukowano utskriven uppdaterad udskrevet skrevet
	opdateret oppdatert skrivet aktualisiert aktualizacja zaktualizowano aktualne actualise mise
	modified retrieved downloaded accessed harvested archived released release ausdruck ausgedruckt druck erzeugt erstellung geandert abgerufen veroffentlicht ausgegeben
	impression imprimee publie publiee genere modifie telecharge impresion generado generada publicado publicada emitido actualizacion modificado stampa generato pubblicato aggiornamento modificato
	impressao emitida gerado gerada atualizacao afdruk gegenereerd gepubliceerd gewijzigd utskrift skapad publicerad andrad udskrift oprettet offentliggjort aendret opprettet publisert endret
	wydruk wydruku sporzadzono sporzadzil wygenerowano opublikowano vytisteno vytisknuto tisk vytvoreno vygenerovano aktualizovano zverejneno vytlacene vytvorene vygenerovane aktualizovane zverejnene
	tulostettu paivitetty julkaistu luotu nyomtatva kinyomtatva keszult frissitve kiadva yazdirma basim basildi guncelleme guncellendi olusturuldu yayin εκτυπωση εκτυπωθηκε ενημερωση ενημερωθηκε δημοσιευση
	tiparit printat imprimat actualizat generat publicat trukitud uuendatud koostatud avaldatud izdrukats izdrukata atjaunots sagatavots publicets atspausdinta atnaujinta parengta paskelbta
	natisnjeno izpis izpisano posodobljeno objavljeno ispis ispisano otisnuto azurirano objavljeno izradeno распечатано напечатано печать обновлено сформировано опубликовано выгружено
	роздруковано надруковано друк оновлено сформовано опубліковано отпечатано разпечатано разпечатка обновено генерирано публикувано 印刷日 更新日 作成日 出力日`

var madeWords = set(madeList)

// issueWords before a date say that it is when the sheet was made, or a run to
// come, or the first one, and not the day of the run.
var issueWords = set(madeList + `
	next before since established est upcoming following founded launched inaugurated naechster nachster nachste nachstes prochain prochaine proxima proximo prossima prossimo volgende nasta naste naeste nastepny nastepna
	seit gegrundet depuis fondee fonde desde fundado fundada dal sinds opgericht sedan grundad siden grundlagt stiftet`)

// dayNumber reads "Date: 46 025", a date that a spreadsheet shows as the number
// of its day.
func dayNumber(title, from string, lex *lexicon) (evidence, bool) {
	label, value, ok := strings.Cut(title, ":")
	if g := lex.read(label); !ok || !g.known || g.meaning != Date {
		return evidence{}, false
	}
	digits := strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == ',' || r == '.' || r == '\'' {
			return -1
		}
		return r
	}, value)
	n, err := strconv.Atoi(digits)
	if err != nil || len(digits) != 5 || n < 36526 || n > 60000 { // from the year 2000 on
		return evidence{}, false
	}
	f, ok := cellDate(digits, false)
	return evidence{foundDate: f, text: strings.TrimSpace(value), from: from, labelled: true, strength: 3}, ok
}

// notTheDay before a date say that it is when a list was made up, which week it is of, or
// the day on which ages are reckoned.
var notTheDay = slices.Concat(weekEnding, weekBeginning, []string{"as at", "as of",
	"weekend of", "first run", "first held", "first staged", "first took place", "1st run", "inaugural run", "dates of birth from", "compared with", "compared to", "than last week", "than last time", "than on", "als letzte woche", "als am", "que la semaine derniere", "que la semana pasada", "rispetto alla settimana scorsa", "dan vorige week", "an forra veckan",
	"ages at", "age at", "ages on", "age on", "aged at", "born before", "born after", "alter am", "age au", "edad a", "eta al"})

// otherMatters are words before a date that say what else it is the day of than of the run. Common practice,
// no source.
var otherMatters = set(`rules regulations bylaws statutes regeln reglement regelwerk reglas regolamento regole agm bbq barbecue picnic dinner prizegiving save rip presentation meeting party photos licence license permit certificate insurance measured remeasured protests appeals objections complaints needed wanted rota
	registration registrations register registering signup deadline closes closed rsvp meldeschluss anmeldeschluss anmeldung cloture inscriptions inscripciones inscripcion iscrizioni inschrijving anmalan tilmelding pamelding zapisy`)

// closing are what closes on a day: a street called Close does not.
var closing = set("entries entry registration registrations booking bookings signup signups sales applications doors")

// byWords are words right before a date that make it the end of something: "Protests by 26 July".
var byWords = set("by until till bis jusqu hasta tot senast inden innen")

// unsureBefore and unsureBehind say beside a date that nobody is sure of it.
var (
	unsureBefore = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:about|approx\.?|approximately|circa|ca\.|c\.|probably|possibly|perhaps|maybe|between|presumably|\?)\s*$|(?:^|\s)[lIOo]$`)
	unsureBehind = regexp.MustCompile(`(?i)^\s*\(?\s*(?:\?|or\b|tbc\b|oder\b|ou\b|to be confirmed|approx)|^\s?/\s?\d{1,2}(?:\D|$)|^\s*(?:&|and|\+)\s*\d{1,2},?\s+(?:19|20)\d\d`)
	// distanceBehind is a distance there: "3 May 2026 / 5 km".
	distanceBehind = regexp.MustCompile(`(?i)^\s?/\s?\d{1,2}(?:[.,]\d+)? ?(?:k|km|mi|miles?|m|metres|meters)\b`)
	// yearAgain is a year behind a date that has one of two figures: "July 12-19 2025".
	yearAgain = regexp.MustCompile(`^\s*,?\s*(?:19|20)\d\d(?:\D|$)`)
)

// eitherOr stand between two days of which one is meant.
var eitherOr = set("or oder ou o of eller tai")

// unsureOf says whether what stands beside a date in its line says that nobody is sure of it.
func unsureOf(line string, f foundDate) bool {
	behind := line[f.to:]
	return unsureBefore.MatchString(line[:f.from]) || unsureBehind.MatchString(behind) && !distanceBehind.MatchString(behind) ||
		f.readings[0].y != 0 && f.to > 0 && line[f.to-1] >= '0' && line[f.to-1] <= '9' && yearAgain.MatchString(behind) && !strings.HasPrefix(behind, ",") && !strings.Contains(line[f.from:f.to], strconv.Itoa(f.readings[0].y))
}

// saidAgain says whether the next date is the same day once more, "27 Rhagfyr 2025 / 27 December 2025".
func saidAgain(line string, f foundDate, next []foundDate) bool {
	return len(next) > 0 && strings.TrimSpace(line[f.to:next[0].from]) == "/" && slices.Equal(f.readings, next[0].readings)
}

// noRun say that on the day behind them, or before them, there is no run. Common practice,
// no source.
var noRun = []string{"no run", "no race", "kein lauf", "pas de course", "no hay carrera", "niente corsa", "niente gara", "geen loop", "geen wedstrijd", "inget lopp", "intet lob", "intet lop", "ingen lob", "biegu nie bedzie", "nie ma biegu"}

// saysNoRun says whether a line begins with such words.
func saysNoRun(line string) bool {
	f := fold(line) + " "
	return slices.ContainsFunc(noRun, func(p string) bool { return strings.HasPrefix(f, p+" ") })
}

// bestOnDay is a time with a date in brackets behind it. A line with two of them tells of
// records, whatever it calls them: "Men 15:25 (3 May 2019), women 17:45 (11 June 2022)".
var bestOnDay = regexp.MustCompile(`\d:[0-5]\d[^()]*\([^()]*\d[^()]*\)`)

// endsWithAny says whether one of some phrases is among the last words of a text.
func endsWithAny(text string, phrases []string) bool {
	words := strings.Fields(text)
	last := " " + strings.Join(words[max(0, len(words)-6):], " ") + " "
	return slices.ContainsFunc(phrases, func(p string) bool { return strings.Contains(last, " "+p+" ") })
}

// titleDates finds the dates of a title line, leaving out those that say when
// the sheet was printed.
func titleDates(title, from string, lex *lexicon, loose bool) (out []evidence) {
	if f := strings.Fields(fold(title)); len(f) > 1 && recordWords[strings.TrimSuffix(f[0], ":")] || len(f) > 2 && recordOf[f[0]] && recordWords[f[1]] {
		return nil // "Course record: Jo Lee, 14 June 2019"
	}
	if saysNoRun(title) || len(bestOnDay.FindAllStringIndex(title, 2)) == 2 {
		return nil
	}
	listed := -1 // end of a date that was left out
	unsure := -1 // of one of which nobody is sure
	lived := -1  // of one of a year long ago
	dates := withFirstDays(title, scanDates(title, loose))
	for i, f := range dates {
		if listed >= 0 && listed <= f.from && strings.Trim(strings.ReplaceAll(strings.ReplaceAll(title[listed:f.from], "and", ""), "und", ""), " ,;/&+-–") == "" {
			listed = f.to // "Next runs: 26 July, 2 August"
			continue
		}
		before, labelled := strings.Fields(fold(title[:f.from])), false
		if unsureOf(title, f) && !saidAgain(title, f, dates[i+1:]) || unsure >= 0 && unsure <= f.from && (eitherOr[fold(strings.Trim(title[unsure:f.from], " ("))] || strings.TrimSpace(title[unsure:f.from]) == "/") {
			unsure = f.to
			continue
		}
		if i := f.from; i > 0 && (title[i-1] == 'v' || title[i-1] == 'V') && (i == 1 || title[i-2] == ' ' || title[i-2] == '(') {
			continue // "v2.1.26", an edition of the list
		}
		if lived >= 0 && lived <= f.from && untilDeath.MatchString(title[lived:f.from]) {
			continue // "3 March 1941 - 9 May 2024"
		}
		if f.readings[0].y == 0 && longAgo.MatchString(title[f.to:]) {
			lived = f.to
			continue // "3 March 1941"
		}
		if notOfTheRun(before) {
			listed = f.to
			continue
		}
		if n := len(before); n > 0 && strings.HasSuffix(strings.TrimRight(title[:f.from], " |"), ":") {
			g := lex.read(before[n-1])
			labelled = g.known && g.meaning == Date
		}
		labelled = labelled || putOff(title[:f.from])
		out = append(out, evidence{foundDate: f, text: strings.TrimSpace(title[f.from:f.to]), from: from, line: title, labelled: labelled, strength: 3})
	}
	return out
}

// longAgo is a year behind a day on which nobody ran what is on a sheet.
var longAgo = regexp.MustCompile(`^,? ?1[6-9]\d\d(?:\D|$)`)

// untilDeath is what stands between such a day and the day on which somebody died.
var untilDeath = regexp.MustCompile(`(?i)^,? ?1[6-9]\d\d[ ,;]*(?:[-–—†]|to|died|and died|bis|gestorben|gest\.|décédée?|fallecid[oa]|morto|overleden)?(?: on| am| le| el| il| op)? *$`)

// notOfTheRun says whether the folded words before a date say that it is another day than
// that of the run.
func notOfTheRun(before []string) bool {
	n := len(before)
	return endsWithAny(strings.Join(before, " "), notTheDay) || n > 1 && before[n-1] == "close" && closing[before[n-2]] || putOffFrom.MatchString(strings.Join(before, " ")) ||
		n > 1 && byWords[before[n-1]] || n > 0 && (before[0] == "see" || before[0] == "join") ||
		slices.ContainsFunc(before, func(w string) bool { return otherMatters[w] || editionMark.MatchString(w) }) ||
		slices.ContainsFunc(before[max(0, n-4):], func(w string) bool { return issueWords[strings.Trim(w, ",;")] }) ||
		slices.ContainsFunc(before[max(0, n-4):], func(w string) bool { return makerBy[w] }) && slices.ContainsFunc(before[max(0, n-7):], func(w string) bool { return madeWords[w] }) // "edited by Jo Lee on"
}

// editionMark is the number of an edition of the list: "v2, 20 July".
var editionMark = regexp.MustCompile(`^v\.?\d{1,2},?$`)

// bareDayNumber is the one number alone in a cell of the titles that is the day number of a date, as a
// spreadsheet shows a date in a cell of another format; false where there are several or none.
func (p *Part) bareDayNumber() (text string, day unit.Day, ok bool) {
	for _, t := range p.Titles {
		for _, piece := range strings.Split(t, " | ") {
			if len(piece) != 5 || !digitsOnly(piece) || looseNumber(piece) < 36526 || looseNumber(piece) > 60000 {
				continue
			}
			f, read := cellDate(piece, p.rules.date1904)
			if !read || ok && piece != text {
				return "", 0, false
			}
			text, day, ok = piece, f.readings[0].day(), true
		}
	}
	return text, day, ok
}

// madeOn is the one date of the titles, with its year, that is said to be the day on which
// the sheet was made; false where there are several or none.
func (p *Part) madeOn() (text string, day unit.Day, ok bool) {
	for _, t := range p.Titles {
		for _, f := range scanDates(t, false) {
			before := strings.Fields(fold(t[:f.from]))
			if !f.settled() || !slices.ContainsFunc(before[max(0, len(before)-3):], func(w string) bool { return madeWords[w] }) {
				continue
			}
			d := f.readings[0].day()
			if ok && d != day {
				return "", 0, false
			}
			text, day, ok = strings.TrimSpace(t[:f.to]), d, true
		}
	}
	return text, day, ok
}

// IsYear says whether a text is a year, or a season over two, and nothing else.
func IsYear(text string) bool {
	return len(yearsIn(text)) > 0 && (len(text) == 4 || len(text) == 7)
}

// yearsIn finds bare years and seasons: "2026", "2025-26", "2025/2026", "Season 25-26".
func yearsIn(text string) (years []int) {
	toks := tokenize(text)
	if m := shortSeason.FindStringSubmatch(text); m != nil && anyWord(text, seasonWords) {
		first, _ := strconv.Atoi(m[1])
		if second, _ := strconv.Atoi(m[2]); second == (first+1)%100 && first < 60 {
			return []int{2000 + first, 2001 + first}
		}
	}
	for i, t := range toks {
		if t.kind != 'd' || t.digits() != 4 || t.n < 1980 || t.n > 2060 {
			continue
		}
		years = append(years, t.n)
		if i+2 < len(toks) && (toks[i+1].kind == '-' || toks[i+1].kind == '/') && toks[i+2].kind == 'd' && toks[i+2].digits() == 2 && toks[i+2].n == (t.n+1)%100 {
			years = append(years, t.n+1)
		}
	}
	return years
}

// shortSeason is a season over two years in two figures each, and no part of a date or a longer number.
var shortSeason = regexp.MustCompile(`(?:^|[\s(])['’]?(\d\d) ?[-–/] ?['’]?(\d\d)(?:$|[\s),:])`)

// seasonWords are words for a season and for what lasts one. Common practice, no source.
var seasonWords = set(`season seasons winter spring summer autumn series league saison winterserie temporada invierno stagione inverno seizoen sesong sasong saeson vinter sezon sezona sezone kausi talvi evad hooaeg sezona hiver`)

// titleAt says where a title stands.
func (p *Part) titleAt(i int) string {
	switch {
	case p.titleFrom == "":
		return fmt.Sprintf("title line %d", i+1)
	case i == 0:
		return p.titleFrom
	}
	return fmt.Sprintf("title line %d", i)
}

// saysSent says whether a line of the head of a letter gives the day on which it was sent.
func saysSent(line string) bool {
	label, _, ok := strings.Cut(line, ":")
	return ok && sentWords[fold(label)]
}

func (rs *runSettler) gather(p *Part) (out []evidence) {
	letter := isLetterHead(p.Titles)
	records, today, sent := false, false, ""
	for i, t := range p.Titles {
		f := strings.Fields(fold(t))
		records = len(f) > 0 && len(f) <= 4 && anyWord(t, recordWords) && !hasClock(t) || records && hasClock(t)
		if records && hasClock(t) {
			continue // "Course records", below it "Men: Jo Lee 15:44 (14 June 2019)"
		}
		if letter && saysSent(t) {
			if sent == "" {
				sent = t // when the letter was sent
			}
			continue
		}
		today = today || writtenToday(t)
		if !isRecord(fold(t)) && !saysSince(t) { // "Course record: 15:21 Tom Marlow (2019)"
			rs.years = append(rs.years, yearsIn(t)...)
		}
		out = append(out, titleDates(thisRun(t), p.titleAt(i), rs.lex, i == 0 && p.titleFrom != "")...)
		if e, ok := dayNumber(t, p.titleAt(i), rs.lex); ok && !p.rules.date1904 {
			out = append(out, e)
		}
	}
	if month, year, ok := monthOfTab(p.Tab); ok && inMonth(out, month, year) {
		rs.years = append(rs.years, year)
		for i := range out {
			out[i].readings = slices.Clone(out[i].readings)
			for k := range out[i].readings {
				if r := &out[i].readings[k]; r.y == 0 && r.m == month {
					r.y = year
				}
			}
		}
	} else if p.Tab != "" && !rs.sheet.agesOfTab(p.Tab) {
		rs.years = append(rs.years, yearsIn(p.Tab)...)
		if ds := titleDates(p.Tab, "tab name", rs.lex, true); len(ds) > 0 && !(ds[0].readings[0].y == 0 && ds[0].readings[0].order != "" && rs.oneField()) { // "1-25" are places
			for i := range ds {
				ds[i].line = ""
			}
			out = append(out, ds...)
		}
	}
	if sent != "" {
		withYearSent(out, titleDates(sent, "", rs.lex, false))
	}
	if len(out) == 0 && today && sent != "" {
		out = append(out, titleDates(sent, "the letter, which says that it was that day", rs.lex, false)...)
	}
	if at := p.Index(Time); len(out) == 0 && at >= 0 && at < len(p.Columns) { // "Time (7 Mar 2026)"
		out = append(out, titleDates(p.Columns[at].Heading, "heading of column "+letters(p.Columns[at].Index), rs.lex, false)...)
		if len(out) == 0 {
			out = append(out, titleDates(p.dayOverTimes(p.Columns[at].Heading), "heading of column "+letters(p.Columns[at].Index), rs.lex, true)...)
		}
	}
	if len(out) == 0 && len(rs.years) == 0 {
		for _, c := range p.Columns { // "Season 2026" beside the headings, over nothing
			if years := yearsIn(c.Heading); c.Meaning == Other && len(years) > 0 && p.blank(c.Index) {
				rs.years = append(rs.years, years...)
			}
		}
	}
	if len(out) == 0 {
		if e, ok := rs.inCalendar(p); ok {
			out = append(out, e)
		}
	}
	return append(out, rs.file...)
}

// withYearSent gives days without a year that of the letter they stand in, where that was sent in the
// month after them.
func withYearSent(days, sent []evidence) {
	if len(sent) != 1 || !sent[0].settled() || sent[0].readings[0].y == 0 {
		return
	}
	on := sent[0].readings[0].day()
	for i := range days {
		rs := slices.Clone(days[i].readings)
		for k := range rs {
			if rs[k].y != 0 {
				return
			}
			for _, year := range [...]int{sent[0].readings[0].y, sent[0].readings[0].y - 1} {
				if rs[k].y = year; rs[k].day() <= on && rs[k].day() > on-31 {
					break
				}
				rs[k].y = 0
			}
		}
		if !slices.ContainsFunc(rs, func(r reading) bool { return r.y == 0 }) {
			days[i].readings = rs
		}
	}
}

// dayOverTimes is the day that the heading of the times is where the list has those of one run alone:
// "31.5.", or "31." under the month that the tab or a title says. "" for none.
func (p *Part) dayOverTimes(heading string) string {
	if day, alone := dayAlone(strings.TrimSuffix(trim(heading), ".")); alone {
		for _, text := range append([]string{p.Tab}, p.Titles...) {
			if month := monthSaid(text); month != "" {
				return strconv.Itoa(day) + " " + month
			}
		}
		return ""
	}
	if kindOf(heading) != kDate && len(scanDates(heading, true)) == 0 {
		return ""
	}
	return heading
}

// isLetterHead says whether title lines are the head of an e-mail: who it is from
// and what it is about.
func isLetterHead(titles []string) bool {
	from, subject := false, false
	for _, t := range titles {
		if label, _, ok := strings.Cut(t, ":"); ok {
			f := fold(label)
			from, subject = from || fromWords[f], subject || subjectWords[f]
		}
	}
	return from && subject
}

// writtenToday says whether a line of a letter speaks of the day on which it was written.
func writtenToday(line string) bool {
	f := " " + fold(line) + " "
	for _, w := range todayWords {
		if strings.Contains(f, " "+w+" ") {
			return true
		}
	}
	return false
}

var todayWords = []string{"today", "todays", "this morning", "this afternoon", "this evening", "tonight", "heute", "aujourd hui", "aujourdhui", "ce matin", "hoy", "esta manana", "oggi", "stamattina", "vandaag", "vanmorgen", "vanochtend", "dzis", "dzisiaj", "idag", "i dag", "i morse", "hoje", "dnes", "tanaan", "ma reggel"}

var (
	fromWords    = set("from von de da van od fra fran lahettaja felado gonderen от від")
	subjectWords = set("subject betreff objet asunto oggetto onderwerp assunto temat predmet amne emne aihe targy konu тема")
	sentWords    = set("date sent datum gesendet envoye enviado inviato verzonden data wyslano fecha skickat sendt dato elkuldve tarih дата", "sent at", "sent on")
)
