package sheet

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// Slug turns the name of a course into the short form that files and tables
// use: "Alder Bank 5 km" is "alder-bank", "St Mary's Park" is "st-marys-park".
// Words of distance go to Distance and are left out. Only letters, digits and
// hyphens remain, so that no name can be a path.
func Slug(name string) string {
	if _, from, to, ok := findDistance(name); ok {
		if rest := slugWords(name[:from] + " " + name[to:]); rest != "" {
			return rest
		}
	}
	return slugWords(name)
}

func slugWords(s string) string {
	s = strings.ReplaceAll(strings.ReplaceAll(s, "&", " and "), "+", " and ")
	var words []string
	for _, w := range strings.Fields(fold(s)) {
		if w == "#" || w == "%" || w == "/" {
			continue
		}
		words = append(words, w)
	}
	slug := strings.Join(words, "-")
	if len(slug) > 80 {
		slug = strings.Trim(strings.ToValidUTF8(slug[:80], ""), "-")
	}
	return slug
}

// Metres in a unit of distance; the mile is the international mile (1959
// agreement), 1609.344 m.
var distanceUnits = map[string]float64{
	"k": 1000, "km": 1000, "kms": 1000, "kilometre": 1000, "kilometres": 1000, "kilometer": 1000, "kilometers": 1000, "kilometros": 1000, "chilometri": 1000,
	"kilometrow": 1000, "mile": 1609.344, "miles": 1609.344, "mi": 1609.344, "meilen": 1609.344, "m": 1, "metres": 1, "meters": 1, "meter": 1, "metros": 1, "metri": 1,
}

// findDistance finds a distance such as "5 km", "5k", "3,1 miles" or "5000 m".
func findDistance(s string) (metres float64, from, to int, ok bool) {
	toks := tokenize(s)
	for i := 0; i < len(toks); i++ {
		if toks[i].kind != 'd' || toks[i].digits() > 6 {
			continue
		}
		j := i + 1
		if j+1 < len(toks) && (toks[j].kind == '.' || toks[j].kind == ',') && toks[j+1].kind == 'd' && toks[j+1].from == toks[j].to {
			j += 2
		}
		end := j
		if j < len(toks) && (toks[j].kind == 's' || toks[j].kind == '-') {
			j++
		}
		if j >= len(toks) || toks[j].kind != 'l' {
			continue
		}
		unit, known := distanceUnits[toks[j].word]
		v, err := strconv.ParseFloat(strings.Replace(s[toks[i].from:toks[end-1].to], ",", ".", 1), 64)
		if !known || err != nil {
			continue
		}
		m := v * unit
		if unit == 1 && len(toks[j].word) == 1 && m > 2000 && m <= lastYear {
			continue // 11-04-2026_M: the men of that day
		}
		if unit == 1 && (m < 400 || j > end) && m < 800 || m < 400 || m > 100000 {
			continue
		}
		return m, toks[i].from, toks[j].to, true
	}
	return 0, 0, 0, false
}

// courseBook knows the courses that are known already.
type courseBook struct {
	exact   map[string]string // folded name or slug -> slug
	phrases []string          // the same names, longest first
	slugs   []string          // known courses, sorted
	weekday map[string]int
}

func newCourseBook(courses []CourseName) *courseBook {
	b := &courseBook{exact: map[string]string{}, weekday: map[string]int{}}
	add := func(name, slug string) {
		f := fold(strings.ReplaceAll(name, "-", " "))
		if f == "" {
			return
		}
		if _, ok := b.exact[f]; !ok {
			b.exact[f] = slug
			b.phrases = append(b.phrases, f)
		}
	}
	for _, c := range courses {
		b.slugs = append(b.slugs, c.Course)
		add(c.Course, c.Course)
		for _, n := range c.Names {
			add(n, c.Course)
		}
		if c.Weekday >= 0 && c.Weekday <= 6 {
			b.weekday[c.Course] = c.Weekday
		}
	}
	sort.Strings(b.slugs)
	sort.SliceStable(b.phrases, func(i, j int) bool {
		if len(b.phrases[i]) != len(b.phrases[j]) {
			return len(b.phrases[i]) > len(b.phrases[j])
		}
		return b.phrases[i] < b.phrases[j]
	})
	return b
}

// slug is the course of a name that stands alone in a cell.
func (b *courseBook) slug(name string) string {
	name = unmangle(name)
	if s, ok := b.exact[fold(strings.ReplaceAll(name, "-", " "))]; ok {
		return s
	}
	s := Slug(name)
	if known, ok := b.exact[strings.ReplaceAll(s, "-", " ")]; ok {
		return known
	}
	return s
}

// within finds a known course named anywhere in a text.
func (b *courseBook) within(text string) (slug string, ok bool) {
	f := " " + fold(strings.NewReplacer("-", " ", "_", " ").Replace(text)) + " "
	for _, p := range b.phrases {
		if len(p) >= 3 && strings.Contains(f, " "+p+" ") {
			return b.exact[p], true
		}
	}
	return "", false
}

// courseWord is a candidate for the name of the course.
type courseWord struct {
	text   string
	slug   string
	weight int
	why    string
}

// titleWords are words of title lines that name no place, folded (common
// practice on result sheets, no source).
var titleWords = set(`results result courses venues bulletin bulletins newsletter notice notices resultados resultado resultats ergebnisse ergebnis ergebnisliste ergebnislisten risultati risultato uitslag uitslagen
	resultaten wyniki wynik resultat resultater resultatlista resultatliste resultatlistan classement clasificacion classificacao classificazione classifica klassifikation
	full provisional official final complete finishers finisher list liste lista listing of the for from at on in by sheet sheets weekly run runs race
	races event events no number nr week series time times timing timed finish positions position names name our edition and copy corrected correction new page
	session de du des la le les der die das den des dem im am vom von bei del della di da do et und y e i og och het van op
	lauf laufe bieg lob lop course carrera gara corrida wedstrijd data export download season saison temporada
	rev revision amended amendment amendments revised prov prelim preliminary unofficial interim version latest newest
	overall report table tab part updated update v v1 v2 v3 draft community free dnf all categories gesamt general
	sheet1 sheet2 sheet3 tabelle1 tabelle2 feuil1 feuil2 hoja1 hoja2 foglio1 foglio2 blad1 blad2 arkusz1 arkusz2 ark1 ark2 planilha1 folha1 tabelle feuille hoja foglio blad arkusz ark planilha folha
	start starts date datum fecha printed as issued round race runde manche times tidtagning zeiten temps tiempos tempi tijden czasy tider
	subject betreff objet asunto oggetto onderwerp temat amne emne
	welcome to hi hello dear all here are were was held this that a an with please find attached below above today yesterday trial jog km
	vysledky vysledek vysledkova listina vysledkovka zavod zavodu beh behu tulokset tulosluettelo juoksu eredmenyek futas rezultate rezultati klasyfikacja lista
	tulemused tulemus rezultatai rezultats rezultatas urslit canlyniadau protokoll protokol protokollen zapisnik zapisnici clasament sonuclar sonuc ergebnisprotokoll eredmenylista eredmeny begs begimas skrejiens jooks hlaup kosu kosusu yaris rediad
	результаты результат протокол результати забег забіг резултати класиране итоговыи итоги αποτελεσματα αποτελεσμα αγωνας г р год року д
	excerpt extract members member club results only nd rd th csv xlsx xls txt inbox incoming sheets archive files documents desktop downloads tmp temp test`)

// leadingWords name no place before a name, trailingWords none after it; both may
// well be part of one elsewhere: Winter Hill, Log Meadow.
var leadingWords = set("fw fwd re img prize prizes awards")

var trailingWords = set("winter summer spring autumn weekend weeks league series log grid tracker matrix register attendance handicap prediction prizes awards category categories summary anniversary jubilee birthday month months monthly yearly")

func isOrdinalOrNumber(w string) bool {
	if w == "" || w[0] < '0' || w[0] > '9' {
		return w == "#" || w == "%" || w == "/" || w == "+"
	}
	i := 0
	for i < len(w) && w[i] >= '0' && w[i] <= '9' {
		i++
	}
	switch w[i:] {
	case "", "st", "nd", "rd", "th", "e", "er", "eme", "o", "a", "v":
		return true
	}
	return false
}

// plainWords strips the words of a title that name no place from both ends.
func plainWords(text string) string {
	words := strings.Fields(text)
	all := words
	dull := func(w string) bool {
		f := fold(w)
		if f == "" || isOrdinalOrNumber(f) || titleWords[f] {
			return true
		}
		if parts := strings.Fields(f); len(parts) > 1 {
			if len(parts) == 2 && (wayWords[parts[0]] || parts[0] == "course") && digitsOnly(parts[1]) {
				return false // course-3
			}
			for _, p := range parts {
				if _, weekday := weekdayNames[p]; !weekday && !titleWords[p] && !isOrdinalOrNumber(p) && p != "feira" {
					return false
				}
			}
			return true
		}
		_, weekday := weekdayNames[f]
		return weekday && len(f) >= 5 // Sun Hill, Tor Edge
	}
	for len(words) > 0 && (dull(words[0]) || len(words) > 1 && leadingWords[fold(words[0])]) {
		words = words[1:]
	}
	if n := len(words); n > 2 && len(words[n-1]) == 1 && titleWords[fold(words[n-2])] {
		words = words[:n-1] // "Alder Bank results b"
	}
	for len(words) > 0 && (dull(words[len(words)-1]) || len(words) > 1 && trailingWords[fold(words[len(words)-1])]) {
		words = words[:len(words)-1]
	}
	words = wholeName(all, words)
	// Months alone are no place, but a place may begin with one: March Hollow.
	months := 0
	for _, w := range words {
		if _, ok := monthNames[fold(w)]; ok {
			months++
		}
	}
	if months == len(words) {
		return ""
	}
	return strings.Trim(strings.Join(words, " "), " .,;:-–—_|'\"")
}

// wholeName gives back the word without which what is left of a name is none: a
// feature of the land has a word before it ("Race Hill", "Friday Street"), a part
// of a way its number after it ("Junction 14"). all are the words of
// the text, kept those left of it.
func wholeName(all, kept []string) []string {
	if len(kept) == 0 {
		if len(all) == 2 && wayWords[fold(all[0])] && digitsOnly(all[1]) && len(all[1]) < 4 {
			return all
		}
		return kept
	}
	if len(kept) > 1 {
		return kept
	}
	word := fold(kept[0])
	i := slices.Index(all, kept[0])
	if i < 0 {
		return kept
	}
	if wayWords[word] && i+1 < len(all) && digitsOnly(all[i+1]) && len(all[i+1]) < 4 {
		return all[i : i+2]
	}
	if !landWords[word] || i == 0 {
		return kept
	}
	before := fold(all[i-1])
	_, weekday := weekdayNames[before]
	if weekday && len(before) >= 5 || nameWords[before] {
		return all[i-1 : i+1]
	}
	return kept
}

// wayWords have a number after them, landWords a word before them, where they
// name a place; nameWords are those of titleWords that may be that word.
var wayWords = set("junction route gate lock pier sector zone circuit loop trail")

var landWords = set(`hill hills point street wood woods lane green park common bridge field fields heath lake bank moor meadow meadows mere water river
	road way gardens garden farm mill hall beach bay sands furlong mile marsh reach edge ridge valley island quay pond brook cottage down downs end cross`)

var nameWords = set("start race final page finish date list round official event new long number numbers time times course run")

// cutSpans replaces dates, times of day and distances by a bar.
func cutSpans(text string, loose bool) string {
	for {
		ds := scanDates(text, loose)
		if len(ds) == 0 {
			break
		}
		text = text[:ds[0].from] + " | " + text[ds[0].to:]
	}
	if _, from, to, ok := findDistance(text); ok {
		text = text[:from] + " | " + text[to:]
	}
	text = cutMonthYear(text)
	sc := dateScan{s: text, toks: tokenize(text)}
	for i := range sc.toks {
		if _, next, ok := sc.clockAt(i); ok {
			text = text[:sc.toks[i].from] + " | " + text[sc.toks[next-1].to:]
			break
		}
	}
	return text
}

// cutMonthYear replaces "January 2026", a month with its year and no day.
func cutMonthYear(text string) string {
	toks := tokenize(text)
	for i, t := range toks {
		if t.kind != 'l' {
			continue
		}
		if _, ok := monthNames[t.word]; !ok {
			continue
		}
		for j := i + 1; j < len(toks) && j <= i+3; j++ {
			if toks[j].kind == 'd' && toks[j].digits() == 4 && toks[j].n >= firstYear && toks[j].n <= lastYear {
				return text[:t.from] + " | " + text[toks[j].to:]
			}
		}
	}
	return text
}

var segmentMarks = strings.NewReplacer(" - ", "|", " – ", "|", " — ", "|", "–", "|", "—", "|", ",", "|", ";", "|", "(", "|", ")", "|", "•", "|", "·", "|", "\t", "|", "[", "|", "]", "|", " / ", "|", "\n", "|", ". ", "|", "! ", "|", "* ", "|", " @ ", "|", " | ", "|")

// segments divides a title at marks. The point of a shortened word or an initial is
// none: St. Aldith's Common, T. Holm Meadow.
func segments(text string) []string {
	return strings.Split(segmentMarks.Replace(shortened.ReplaceAllString(text, "$1 ")), "|")
}

var shortened = regexp.MustCompile(`\b(\pL|(?i:St|Ste|Mt|Ft|Gt|Lt|Pt|Nr|Upr|Lwr|Nth|Sth))\. `)

// clubWords mark the organiser of a run rather than its course.
var clubWords = set("club harriers ac runners striders joggers athletic athletics verein association society league presents council organised organized society laufverein amicale federation road")

// remarkWords mark lines that speak of something else than where the run was.
var remarkWords = set(`weather timekeeper timekeepers director volunteers volunteer printed produced generated created exported thanks thank please contact email
	www http https note notes record records first prize sponsored sponsor temperature wind conditions marshals marshal tel phone copyright page next wetter meteo
	startofevent endofevent referee juez juge arbitre giudice sedzia tack bedankt danke merci gracias grazie dziekujemy obrigado dekujeme battery
	timed organised organized organiser report photos enquiries queries question total participants provisional team`)

// courseWords lists what a title line may give as the name of the course.
func courseWords(title string, lex *lexicon, book *courseBook) (out []courseWord) {
	title = strings.TrimSuffix(strings.TrimSpace(title), ":") // "38 people ran at Alder Bank:"
	if slug, ok := book.within(title); ok {
		return []courseWord{{text: title, slug: slug, weight: 100, why: "a known course"}}
	}
	if strings.HasPrefix(strings.TrimSpace(title), "*") && len(findDates(title)) == 0 {
		return nil // the legend of a mark: "* personal best"
	}
	comment := strings.HasPrefix(strings.TrimSpace(title), "# ") || strings.HasPrefix(strings.TrimSpace(title), "//")
	if bare := strings.TrimLeft(title, "#/; "); strings.Count(bare, "=") == 1 && !strings.Contains(bare, ":") {
		if label, _, _ := strings.Cut(bare, "="); lex.read(label).known {
			title = strings.Replace(bare, "=", ": ", 1) // # venue=Alder Bank
		}
	}
	hasDate := len(findDates(title)) > 0
	_, _, _, hasDistance := findDistance(title)
	text := title
	labelled := false
	if label, value, ok := strings.Cut(title, ":"); ok && !strings.Contains(label, "|") && !(label != "" && label[len(label)-1] >= '0' && label[len(label)-1] <= '9') {
		g := lex.read(label)
		switch {
		case g.known && g.meaning == Course || isVenueLabel(fold(label)):
			if isCondition(value) {
				return nil // "Course: firm"
			}
			text, labelled = value, true
		case g.known && g.meaning != Date && g.meaning != Session && len(findDates(value)) > 0 && plainWords(cutSpans(value, false)) == "" && plainWords(label) != "" && len(strings.Fields(label)) > 1:
			text = label // "Lock Point: 26 October 2024"
		case g.known && g.meaning != Other && plainWords(label) != "":
			return nil // another label: Date:, Distance:, Start: …
		case plainWords(cutSpans(label, false)) == "":
			text = value
		case plainWords(cutSpans(value, false)) == "" && !isRemark(label) && (hasLetter(value) || len(findDates(value)) > 0):
			text = label
		case beforePlace[finalWord(label)]:
			text = value // "Vale Borough presents: Alder Bank"
		case len(findDates(label)) > 0:
			// "Alder Bank, 3 May: ..." or "Alder Bank 3 May - first woman: ...": what
			// stands right before the colon says whether a place follows.
			segs := segments(label)
			last := strings.TrimSpace(segs[len(segs)-1])
			g := lex.read(last)
			if text = value; len(segs) > 1 && len(findDates(last)) == 0 && !isVenueLabel(fold(last)) && !(g.known && g.meaning == Course) {
				text = label[:strings.LastIndex(label, last)]
			}
		default:
			return nil
		}
	}
	if isRemark(text) && !labelled || isSection(text) {
		return nil
	}
	n := 0
	for _, seg := range segments(cutSpans(text, false)) {
		if _, known := book.exact[fold(seg)]; !labelled && !known && greets(seg) {
			continue
		}
		whole := strings.TrimSpace(seg)
		if otherTimes[fold(whole)] && !labelled {
			continue // "Last week (3 May 2026)"
		}
		seg = plainWords(whole)
		if !labelled {
			seg = plainWords(placeIn(seg))
		} else if f := strings.Fields(fold(whole)); seg == "" && len(f) == 2 && f[0] == "course" && digitsOnly(f[1]) {
			seg = whole // "Course: Course 3"
		}
		slug := Slug(seg)
		if issueWords[fold(seg)] {
			continue // "3 May 2026, published 5 May 2026"
		}
		if len(slug) < 3 || !hasLetter(slug) || isSection(seg) || (isRemark(seg) || saysColumn(lex, seg) || saysField(whole)) && !labelled {
			continue
		}
		w := courseWord{text: seg, slug: slug, weight: 40, why: "what is left of the title without date and general words"}
		if labelled {
			w.weight, w.why = 90, "it is labelled"
		}
		if hasDistance {
			w.weight += 15
		}
		if hasDate {
			w.weight += 8
		}
		if comment && !labelled {
			w.weight -= 30 // what a program writes above its figures
		}
		words := strings.Fields(fold(seg))
		for _, word := range words {
			if clubWords[word] {
				w.weight -= 25
				break
			}
		}
		if last := words[len(words)-1]; len(words) > 1 && (last == "memorial" || last == "cup" || last == "trophy" || last == "challenge") {
			w.weight -= 25 // what the run is called, not where it is
		}
		if len(words) > 5 {
			w.weight -= 20
		}
		w.weight -= 3 * n
		n++
		out = append(out, w)
	}
	return out
}

// otherTimes are headings of what was at another time.
var otherTimes = set("", "last week", "last weeks", "last time", "last run", "last month", "last year", "previous week", "previous run", "the week before", "week before", "this week", "this weeks", "next week", "vorige woche", "letzte woche", "semaine derniere", "semana pasada", "vorige week", "settimana scorsa", "forra veckan", "sidste uge")

// isCondition says whether a text says in what state the ground was, and no name.
func isCondition(text string) bool {
	words := strings.Fields(fold(text))
	for _, w := range words {
		if !conditionWords[w] {
			return false
		}
	}
	return len(words) > 0
}

var conditionWords = set(`firm soft muddy mud very quite rather dry wet icy ice heavy good fast slow slippery frozen hard underfoot snow snowy boggy clear fine normal usual measured flat hilly undulating and but in places mostly
	trocken nass matschig sec humide gras grass trail tarmac`)

// greets says whether a text is the beginning of a letter: "Hi Joan", "Dear all".
func greets(text string) bool {
	first, rest, _ := strings.Cut(fold(text), " ")
	if first == "good" {
		first, rest, _ = strings.Cut(rest, " ")
	}
	return (greetings[first] || dayTimes[first] && (rest == "" || greeted[finalWord(rest)])) && len(strings.Fields(rest)) <= 3
}

// dayTimes greet where nobody but greeted follows: "Morning all", "Good evening".
var (
	dayTimes = set("morning afternoon evening day")
	greeted  = set("all everyone everybody folks team friends runners")
)

var greetings = set(`hi hello dear hey hallo liebe lieber bonjour salut hola ciao hoi beste hej ahoj hei`)

// placeIn is what follows the last "at", "from" or "presents the" of a text, with
// a capital letter: the place in "Here are the results from Alder Bank" or
// "Vale Harriers presents the Alder Bank". The whole text where there is none.
func placeIn(text string) string {
	words := strings.Fields(text)
	for i := len(words) - 2; i >= 0; i-- {
		if !beforePlace[fold(words[i])] || i == 0 && len(words) > 4 {
			continue
		}
		j := i + 1
		for j < len(words)-1 && articles[fold(words[j])] {
			j++
		}
		if r, _ := utf8.DecodeRuneInString(words[j]); unicode.IsUpper(r) {
			return strings.Join(words[j:], " ")
		}
	}
	return text
}

func finalWord(text string) string {
	f := fold(text)
	return f[strings.LastIndexByte(f, ' ')+1:]
}

var beforePlace = set("at from presents present hosts stages welcomes")

var articles = set("the its their our this weekly annual")

// saysColumn says whether a text is nothing but the heading of a column:
// "Personal best", "Finish time".
func saysColumn(lex *lexicon, text string) bool {
	switch g := lex.read(text); {
	case !g.known || g.forced:
		return false
	case g.meaning == Course || g.meaning == Other || g.meaning == Club || g.meaning == Distance:
		return false
	}
	for _, w := range strings.Fields(fold(text)) {
		if _, ok := headingWords[w]; !ok || weakWords[w] {
			return false
		}
	}
	return true
}

// saysOrder says whether a tab's name only says how its lines are chosen, sorted or
// come about: "Finish order", "Alphabetical", "Top 10", "By club".
func saysOrder(tab string) bool {
	said := false
	for _, w := range strings.Fields(fold(tab)) {
		switch {
		case orderWords[w]:
			said = true
		case titleWords[w], headingWords[w] != 0, isOrdinalOrNumber(w):
		default:
			return false
		}
	}
	return said
}

var orderWords = set(`order alphabetical alphabetic alphabetisch alphabetique sorted sort top ten winners category categories categorised gender age group groups clubs teams
	board notice poster display grid tracker matrix register attendance splits raw data input output print printout provisional preliminary corrected amended revised surname fastest nach reihenfolge`)

func isVenueLabel(f string) bool {
	switch f {
	case "ort", "place", "lieu", "luogo", "lugar", "local", "plaats", "locatie", "miejsce", "plats", "sted", "venue", "where", "at", "course name", "laufort", "strecke", "wo":
		return true
	}
	return false
}

// countWords after "top" say how many are listed.
var countWords = set("three five ten twenty 3 5 10 20")

func isRemark(text string) bool {
	words := strings.Fields(fold(text))
	if len(words) == 0 {
		return false
	}
	if remarkWords[words[0]] && !(len(words) > 1 && (words[0] == "provisional" || words[0] == "first")) {
		return !isTwoWordPlace(text)
	}
	if len(words) > 1 && (words[0] == "run" && words[1] == "director" || words[0] == "top" && countWords[words[1]]) {
		return true
	}
	return len(words) > 9 && len(findDates(text)) == 0
}

// isTwoWordPlace says whether a text is, but for a date behind it, a word and a
// feature of the land, both with a capital letter: "Marshal Green, 3 May 2026".
func isTwoWordPlace(text string) bool {
	name := segments(cutSpans(text, false))[0]
	words := strings.Fields(name)
	if len(words) != 2 || strings.ContainsAny(name, ":") || !landWords[fold(words[1])] {
		return false
	}
	for _, w := range words {
		if r, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(r) {
			return false
		}
	}
	return true
}

// fileWords lists what the file's name, then its folders, give as the course.
func fileWords(name string, book *courseBook) (out []courseWord) {
	name = timeInName.ReplaceAllString(name, "$1 ")
	parts := strings.Split(strings.ReplaceAll(name, "\\", "/"), "/")
	base := parts[len(parts)-1]
	if dot := strings.LastIndexByte(base, '.'); dot > 0 && len(base)-dot <= 5 {
		base = base[:dot]
	}
	baseSaid := false
	for k := len(parts) - 1; k >= 0; k-- {
		text, from, weight := parts[k], "folder name", 20
		if k == len(parts)-1 {
			text, from, weight = base, "file name", 30
		}
		if text == "" || text == "." || text == ".." {
			continue
		}
		if slug, ok := book.within(text); ok {
			return append(out, courseWord{text: text, slug: slug, weight: 95, why: from + ", a known course"})
		}
		if baseSaid {
			continue
		}
		spaced := strings.NewReplacer("_", " ", "+", " ", ".", " ").Replace(text)
		marked := cutSpans(keepDates(text), true)
		if !strings.Contains(marked, "|") {
			marked = spaced
		}
		for _, seg := range segments(strings.ReplaceAll(marked, "_", " ")) {
			if fromSomebody(seg) {
				continue
			}
			seg = plainWords(placeIn(plainWords(strings.Trim(seg, " -_."))))
			words := strings.FieldsFunc(seg, func(r rune) bool { return r == '-' || r == ' ' })
			for len(words) > 0 && (titleWords[fold(words[len(words)-1])] || isOrdinalOrNumber(fold(words[len(words)-1])) || len(words) > 1 && listWords[fold(words[len(words)-1])]) {
				words = words[:len(words)-1]
			}
			for len(words) > 0 && (titleWords[fold(words[0])] || isOrdinalOrNumber(fold(words[0]))) {
				words = words[1:]
			}
			if f := strings.Fields(fold(seg)); len(f) == 2 && f[0] == "course" && digitsOnly(f[1]) {
				words = f // course-3_2026-01-03
			}
			words = wholeName(strings.FieldsFunc(spaced, func(r rune) bool { return r == '-' || r == ' ' }), words)
			slug := Slug(strings.Join(words, " "))
			if len(words) > 2 && strings.Contains(marked, "|") && leagueWords[fold(words[0])] {
				words = words[1:] // "League Alder Bank 2026-01-03"
				seg = strings.Join(words, " ")
				slug = Slug(seg)
			}
			way := len(words) == 2 && (wayWords[fold(words[0])] || fold(words[0]) == "course")
			// Names that programs and scanners give: scan00149, Book1, Mappe2.
			if len(slug) < 3 || !hasLetter(slug) || strings.ContainsAny(slug, "0123456789") && !way || isSection(seg) || fileDull(slug) || helperTab(seg) || saysField(seg) {
				continue
			}
			if k == len(parts)-1 && runFile.MatchString(base) {
				weight = 60 // <course>_<date> is how a file is named to say it
			}
			out = append(out, courseWord{text: seg, slug: slug, weight: weight, why: from})
			baseSaid = true
			break
		}
	}
	return out
}

// leagueWords say before a place what its results are for.
var leagueWords = set("league summary standings liga ligue serie cup")

// fromSomebody says whether a file is called after who sent it: "from Sheila".
func fromSomebody(name string) bool {
	words := strings.Fields(fold(name))
	for len(words) > 2 && (titleWords[words[0]] || dullFiles[words[0]]) && !senderWords[words[0]] {
		words = words[1:]
	}
	return len(words) == 2 && senderWords[words[0]] && !digitsOnly(words[1])
}

var senderWords = set("from von fra fran od")

// runFile is a file's name made to say course and date: alder-bank_2026-01-03.
var runFile = regexp.MustCompile(`^\pL[\pL\pM\d-]*_\d{4}-\d{2}-\d{2}(?:[ _.-].*)?$`)

// timeInName is a time of day after the date in a name that a program gave:
// 2026-01-03T090000.
var timeInName = regexp.MustCompile(`(\d{4}-?\d{2}-?\d{2})T\d{4,6}Z?`)

// plainName is the name of a sheet as a person reads it: "Alder%20Bank" is
// Alder Bank.
func plainName(name string) string {
	if strings.Contains(name, "%20") {
		if s, err := url.PathUnescape(name); err == nil {
			return s
		}
	}
	return name
}

// fileDull recognises names that say nothing: those that programs give to new
// files, in the languages of the headings (common practice, no source).
func fileDull(slug string) bool {
	for _, w := range strings.Split(slug, "-") {
		if !dullFiles[w] && !titleWords[w] {
			return false
		}
	}
	return true
}

var dullFiles = set(`book workbook spreadsheet board notice noticeboard poster display virtual responses response answers form forms query age group groups scan scanned untitled unnamed document doc image img photo attachment upload uploaded download downloaded file copy mappe
	arbeitsmappe kopie unbenannt dokument classeur copie document libro copia cartel cartella documento werkmap map naamloos kopia pasta planilha livro zeszyt skoroszyt
	bok kopia projektmappe dokument outlook mail message final new old my all temp tmp backup sheet sheets export import output table ark
	liste list ergebnisse resultaten uitslagen resultatliste wyniki namen names times zeiten noms temps part one two first second desk timer finish funnel tokens scanner stopwatch`)

// keepDates leaves dates readable when underscores divide a file name.
func keepDates(text string) string { return strings.ReplaceAll(text, "_", " ") }

// distanceOf finds a distance in a text.
func distanceOf(text, from string) Found {
	m, a, b, ok := findDistance(text)
	if !ok {
		return Found{}
	}
	return Found{Value: strconv.Itoa(int(m + .5)), Text: text[a:b], From: from, Why: fmt.Sprintf("%s is %d m", text[a:b], int(m+.5))}
}

// near finds the known course whose slug differs from a slug by one letter
// more, less, other or exchanged: a slip of the pen. sure is false where the
// two could also be two places (Hill Lane, Mill Lane), or several are as near.
func (b *courseBook) near(slug string) (known string, sure bool) {
	if len(slug) < 6 {
		return "", false
	}
	var found []string
	sure = true
	for _, k := range b.slugs {
		if k == slug {
			return "", false
		}
		limit := 1
		if len(slug) >= 12 {
			limit = 2
		}
		if text.Within(slug, k, limit) {
			found = append(found, k)
			sure = sure && text.OSA(slug, k) == 1 && len(slug) >= 8 && slug[0] == k[0]
		}
	}
	if len(found) == 0 {
		return "", false
	}
	return found[0], sure && len(found) == 1
}
