package sheet

import (
	"net/url"
	"regexp"
	"slices"
	"strings"
)

// fileWords lists what the file's name, then its folders, give as the course.
func fileWords(name string, book *courseBook) (out []courseWord) {
	name = timeInName.ReplaceAllString(name, "$1 ")
	parts := strings.Split(strings.ReplaceAll(name, "\\", "/"), "/")
	base := withoutEnding(parts[len(parts)-1])
	baseSaid := false
	for k := len(parts) - 1; k >= 0; k-- {
		text, from, weight := parts[k], "folder name", 20
		if k == len(parts)-1 {
			if text, from, weight = base, "file name", fileWithDay; len(findDates(keepDates(base))) == 0 {
				weight = 27 // less than a line that names a series
			}
		}
		if _, day := dayAlone(text); day || text == "" || text == "." || text == ".." {
			continue
		}
		if slug, ok := book.within(text); ok {
			return append(out, courseWord{text: text, slug: slug, weight: 95, why: from + ", a known course"})
		}
		if baseSaid {
			continue
		}
		for joinedWords.MatchString(text) {
			text = joinedWords.ReplaceAllString(text, "$1 $2")
		}
		spaced := strings.NewReplacer("_", " ", "+", " ", ".", " ").Replace(text)
		marked := cutSpans(keepDates(text), true)
		if !strings.Contains(marked, "|") {
			marked = spaced
		}
		segs := segments(strings.ReplaceAll(marked, "_", " "))
		slices.SortStableFunc(segs, func(a, b string) int { return whose(a) - whose(b) })
		for at, seg := range segs {
			if fromSomebody(seg) {
				continue
			}
			seg = plainWords(placeIn(plainWords(strings.Trim(withoutDistance(seg), " -_."))))
			words := strings.FieldsFunc(seg, func(r rune) bool { return r == '-' || r == ' ' })
			for len(words) > 0 && (titleWords[fold(words[len(words)-1])] || isOrdinalOrNumber(fold(words[len(words)-1])) || len(words) > 1 && (listWords[fold(words[len(words)-1])] || aroundFiles[fold(words[len(words)-1])]) || namesHalf[headingWords[fold(words[len(words)-1])]]) {
				words = words[:len(words)-1]
			}
			for len(words) > 0 && (titleWords[fold(words[0])] || isOrdinalOrNumber(fold(words[0]))) {
				if len(words) > 1 && nameArticles[fold(words[0])] && (runFile.MatchString(base) || articled(words[:1], words[1:], false)) {
					break // het-elzenbos_2026-01-03, De Veenplas 2026-01-03
				}
				words = words[1:]
			}
			for len(words) > 1 && (aroundFiles[fold(words[0])] || sureDays[fold(words[0])]) {
				if words = words[1:]; len(words) > 1 && words[0] == "of" {
					words = words[1:] // "Backup of Alder Bank"
				}
			}
			if f := strings.Fields(fold(seg)); len(f) == 2 && f[0] == "course" && digitsOnly(f[1]) {
				words = f // course-3_2026-01-03
			}
			words = wholeName(strings.FieldsFunc(spaced, func(r rune) bool { return r == '-' || r == ' ' }), words)
			slug := Slug(strings.Join(words, " "))
			if _, weekday := weekdayNames[fold(slug)]; weekday {
				continue // Sat_run_Apr5
			}
			if n := behindLeague(words); n > 0 && strings.Contains(marked, "|") {
				words = words[n:] // "League Alder Bank 2026-01-03"
				seg = strings.Join(words, " ")
				slug = Slug(seg)
			}
			way := len(words) == 2 && (wayWords[fold(words[0])] || fold(words[0]) == "course") && !countsRuns(strings.Join(words, " "))
			// Names that programs and scanners give: scan00149, Book1, Mappe2.
			if len(slug) < 3 || !hasLetter(slug) || strings.ContainsAny(slug, "0123456789") && !way || isSection(seg) || fileDull(slug) || helperTab(seg) || saysField(seg) {
				continue
			}
			if beginsPlace(slug, segs[at+1:]) {
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

// beginsPlace says whether a name of one word is that of a run, and a later piece of the file's name that
// of its place: "campus5k_larkfield-campus_2026-01-03", "hill5k_alder-bank_2026-01-03".
func beginsPlace(slug string, later []string) bool {
	if strings.IndexByte(slug, '-') >= 0 {
		return false
	}
	return slices.ContainsFunc(later, func(piece string) bool {
		words := strings.Split(Slug(plainWords(piece)), "-")
		return len(words) > 1 && (landWords[slug] || slices.Contains(words, slug))
	})
}

// fileWithDay is the weight of what a file that says the day is called after.
const fileWithDay = 30

// joinedWords are two words that only a capital tells apart, as in AlderBank; McAlder is one.
var joinedWords = regexp.MustCompile(`(\p{Lu}\p{Ll}{2,})(\p{Lu}\p{Ll}{2})`)

// namesHalf are the ideas of a word that says, at the end of a file's name, which half of a
// result it holds: "Alder Bank Tiempo" beside "Alder Bank Nombre".
var namesHalf = map[concept]bool{cTime: true, cName: true}

// whose is 1 for a piece of a name that says whose list it is, "Vale members", and 0 for one
// that may say where it was.
func whose(piece string) int {
	for _, w := range strings.Fields(fold(strings.NewReplacer("-", " ", "_", " ").Replace(piece))) {
		if clubWords[w] || clubMemberWords[w] {
			return 1
		}
	}
	return 0
}

var clubMemberWords = set("member members mitglied mitglieder membre membres socio socios socia socias soci leden lid medlem medlemmar medlemmer czlonkowie tagok clenove")

// behindLeague is how many words of a name say before a place what its results are for: "League
// Alder Bank", "works league Alder Bank". 0 for none.
func behindLeague(words []string) int {
	for i, w := range words[:max(0, min(2, len(words)-1))] {
		if leagueWords[fold(w)] && (i == 0 && len(words) > 2 || i > 0 && startsUpper(words[i+1])) {
			return i + 1
		}
		if startsUpper(w) {
			break
		}
	}
	return 0
}

// leagueWords say before a place what its results are for.
var leagueWords = set("league summary standings liga ligue serie serien serier series cup")

// aroundFiles are words beside a place that say what a file is or what became of it, and begin or
// end no name; sureDays are short names of days that begin none. Common practice, no source.
var (
	aroundFiles = set("backup bak web upload raw scan scanned stopwatch finishlist resultlist draft clean cleaned sorted unsorted merged folder folders attachment attachments")
	sureDays    = set("sat tue tues wed weds thu thur thurs fri")
)

// fromSomebody says whether a file is called after who sent it: "from Sheila".
func fromSomebody(name string) bool {
	words := strings.Fields(fold(name))
	for len(words) > 2 && (titleWords[words[0]] || dullFiles[words[0]]) && !senderWords[words[0]] {
		words = words[1:]
	}
	if len(words) == 3 && len(words) == len(strings.Fields(name)) && !landWords[words[2]] && !anyWord(name, clubWords) {
		words = words[:2] // "from Sheila Moss", and not from Alder Bank
	}
	return len(words) == 2 && senderWords[words[0]] && !digitsOnly(words[1])
}

var senderWords = set("from von fra fran od")

// runFile is a file's name made to say course and date: alder-bank_2026-01-03.
var runFile = regexp.MustCompile(`^\pL[\pL\pM\d-]*_(?:\d{4}-\d{2}-\d{2}|(?:19|20)\d{6})(?:[ _.-].*)?$`)

// timeInName is a time of day after the date in a name that a program gave:
// 2026-01-03T090000.
var timeInName = regexp.MustCompile(`(\d{4}-?\d{2}-?\d{2})T\d{4,6}Z?`)

// keyedFolder is a folder that says what its name is, as programs write them: "course=Alder Bank/date=2026-01-03".
var keyedFolder = regexp.MustCompile(`(^|/)(?:course|venue|location|event|site|place|date|run_date|event_date|day|month|year)=`)

// plainName is the name of a sheet as a person reads it: "Alder%20Bank" is
// Alder Bank.
func plainName(name string) string {
	if strings.Contains(name, "=") {
		name = keyedFolder.ReplaceAllString(name, "$1")
	}
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

var dullFiles = set(`web website online internet book workbook spreadsheet board notice noticeboard poster display virtual responses response answers form forms query age group groups scan scanned untitled unnamed document doc image img photo attachment upload uploaded download downloaded file copy mappe
	arbeitsmappe kopie unbenannt dokument classeur copie document libro copia cartel cartella documento werkmap map naamloos kopia pasta planilha livro zeszyt skoroszyt
	bok kopia projektmappe dokument outlook mail email attachment attachments message final new old my all temp tmp backup sheet sheets export import output table ark
	app logs raw dataset database data daten datenbank donnees datos dati gegevens dane dados query console api feed opendata open ocr copied pasted paste cutting clipping article newspaper thread topic forum post posts chat sms ledger
	artikel zeitung giornale periodico krant tidning gazeta
	liste list ergebnisse resultaten uitslagen resultatliste wyniki namen names times zeiten noms temps part del delen teil deel partie czesc serie serien serier one two first second desk timer timers timekeeper finish funnel chute token tokens barcode barcodes scanner scanners scans watch stopwatch stoppuhr chronometre cronometro stopuhr stoppur stoper`)

// keepDates leaves dates readable when underscores divide a file name.
func keepDates(text string) string { return strings.ReplaceAll(text, "_", " ") }
