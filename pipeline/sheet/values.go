package sheet

import (
	"bytes"
	"html"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// kind says what a cell looks like. A cell has one kind; what it means is
// settled for the whole column.
type kind uint8

const (
	kBlank   kind = iota
	kInt          // 12, 3=, =3, 4., 1st
	kDecimal      // 64.31, 24,5
	kPercent      // 64.31 %
	kClock        // 24:31, 1:02:03.4, 24'31", 24m31s, PT24M31S
	kDate         // a day with month and day
	kSex          // a word or letter for a sex
	kGroup        // M40, V40-44, U17, Senior
	kStatus       // DNF, DQ, no time
	kText
	kinds
)

// kindOf looks at one cell.
func kindOf(s string) kind {
	s = trim(s)
	switch { // what most cells with figures are
	case isClockCell(s):
		return kClock
	case isoDate(s) && s[:4] >= "1950" && s[:4] <= "2099" && s[5:7] >= "01" && s[5:7] <= "12" && s[8:] >= "01" && s[8:] <= "28":
		return kDate
	}
	return kindOfAny(s)
}

// kindOfAny is kindOf for any cell, without white space around it.
func kindOfAny(s string) kind {
	if s == "" {
		return kBlank
	}
	if strings.Contains(s, "\u00A0") || strings.Contains(s, "\u202F") { // 18 min 00 s, as word processors divide it
		s = plainSpaces.Replace(s)
	}
	if i := strings.IndexByte(s, '&'); i >= 0 && len(s) < 64 && strings.IndexByte(s[i:], ';') > 0 {
		if s = trim(html.UnescapeString(s)); s == "" { // saved from a web page
			return kBlank
		}
	}
	s = withoutZeroDays(s)
	c := s[0]
	if c == '\'' && len(s) > 1 && s[1] >= '0' && s[1] <= '9' { // a spreadsheet's mark for text
		s, c = s[1:], s[1]
	}
	if c >= '0' && c <= '9' || c == '=' || c == '+' || c == '-' || c == '.' || c == ':' || c == ',' {
		if k := numberKind(s); k != kText {
			return k
		}
	}
	digit := !hasNoDigit(s)
	if digit && (isClock(s) || isMarkedClock(s) || isMoment(s) || commaClock(s) != "") {
		return kClock
	}
	if len(s) <= 40 {
		var buf [48]byte
		f, ok := foldASCII(buf[:0], s)
		if !ok {
			f = []byte(fold(s))
		}
		switch {
		case len(f) == 0 && (strings.Contains(s, "♂") || strings.Contains(s, "♀")):
			return kSex
		case len(f) == 0:
			return kStatus // dashes and dots stand for "nothing here"
		case sexWords[string(f)], softSexWords[string(f)], inTwoLanguages(f), f[0] == 'n' && strings.EqualFold(s, "nő"): // a woman in Hungarian
			return kSex
		case statusWords[string(f)], bytes.IndexByte(f, '_') > 0 && statusWords[strings.ReplaceAll(string(f), "_", " ")]:
			return kStatus
		case sexAndYear(string(f)), c >= '0' && c <= '9' && f[len(f)-1] > '9' && sexWords[fold(withoutOrder(s))]:
			return kGroup // "1. W" is the place in a class as "1. W35" is
		case isGroup(f) && !strings.ContainsAny(s, ":;,|@"):
			if c := s[0]; c >= '0' && c <= '9' && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' && hasLetter(s) && isDate(s) {
				return kDate // 13-JUN-26 is a day, and no ages from 13 to 26
			}
			return kGroup
		case digit && strings.ContainsAny(s, "|/-–") && groupBesideDistance(s):
			return kGroup
		}
		if (digit || !ok) && len(s) >= 6 && len(findDates(unmangle(s))) > 0 {
			return kDate
		}
	}
	return kText
}

// inTwoLanguages recognises a sex that is written in two languages, W/F and homme / male, in
// the folded form.
func inTwoLanguages(f []byte) bool {
	a, b, two := bytes.Cut(f, []byte(" / "))
	return two && sexWords[string(a)] && sexWords[string(b)]
}

// groupBesideDistance recognises an age group, or an age or sex, printed with the distance of
// the race: F66 | 5 km, 5 km / M.
func groupBesideDistance(s string) bool {
	i := strings.LastIndexAny(s, "|/-–")
	_, n := utf8.DecodeRuneInString(s[i:])
	front, back := trim(s[:i]), trim(s[i+n:])
	if isLength(front) {
		front, back = back, front
	}
	if !isLength(back) {
		return false
	}
	k := kindOf(front)
	return k == kGroup || k == kSex
}

// isLength recognises 5 km, 5k, 3 miles.
func isLength(s string) bool {
	unit := strings.TrimLeft(s, "0123456789.")
	switch strings.ToLower(trim(unit)) {
	case "k", "km", "mi", "mile", "miles":
		return len(unit) < len(s)
	}
	return false
}

// zeroDays stands before a running time that a program wrote as a length of days.
const zeroDays = "0 days "

func withoutZeroDays(s string) string {
	if len(s) > len(zeroDays) && strings.EqualFold(s[:len(zeroDays)], zeroDays) {
		return s[len(zeroDays):]
	}
	return s
}

// numberKind reads plain numbers without allocating.
func numberKind(s string) kind {
	i, n := 0, len(s)
	if s[0] == '=' || s[0] == '+' || s[0] == '-' {
		i++
	}
	digits, marks := 0, 0
	for ; i < n; i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			digits++
		case (c == '.' || c == ',') && marks == 0 && i+1 < n && s[i+1] >= '0' && s[i+1] <= '9':
			marks++
		default:
			goto rest
		}
	}
rest:
	if digits == 0 {
		return kText
	}
	switch rest := s[i:]; {
	case rest == "" && marks == 1:
		return kDecimal
	case rest == "":
		return kInt
	case (rest == "%" || rest == " %" || rest == "\u00A0%"):
		return kPercent
	case marks == 0 && s[0] != '-' && s[0] != '+':
		switch strings.TrimLeft(strings.ToLower(rest), " \u00A0") {
		case "st=", "nd=", "rd=", "th=", "(tie)", "(tied)", "(joint)", "(=)", "tie", "tied", "joint", "=", ".", ")", "st", "nd", "rd", "th", "er", "e", "º", "ª", ".º", "°", "eme", "ème", "ste", "de", "位", "위", "着", "등":
			return kInt
		}
	}
	return kText
}

// isClock recognises a running time that shows its units: colons, minute and
// second marks, letters. Bare decimals are kDecimal, not clocks.
func isClock(s string) bool {
	if len(s) > 32 || len(s) < 3 {
		return false
	}
	if i := strings.LastIndexByte(s, '.'); i > 3 && len(s)-i > 4 && digitsOnly(s[i+1:]) && strings.IndexByte(s, ':') > 0 {
		s = s[:i+4] // 00:24:31.0000000 of a database
	}
	if isDottedClock(s) {
		return true
	}
	if s[0] == 'P' && strings.HasPrefix(s, "PT") && strings.ContainsAny(s, "0123456789") {
		return true
	}
	groups, digits, colons, units, seconds := 0, 0, 0, 0, false
	inDigits, last := false, ' '
	skip, dot := 0, false // dot: a full stop since the last figure
	for i, r := range s {
		switch {
		case i < skip:
			continue
		case r >= '0' && r <= '9':
			digits++
			if !inDigits {
				groups++
			}
			inDigits, dot = true, false
			last = r
			continue
		case r == ':', r == ';' && inDigits: // 24;15 of a hand that missed the key
			colons++
		case r == '.' || r == ',' || r == ' ':
			dot = dot || r == '.'
		case r == '\'' || r == '"' || r == '’' || r == '”' || r == '′' || r == '″' || r == '´':
			if last < '0' || last > '9' {
				if last != r && last != '\'' { // '' stands for seconds
					return false
				}
			}
			units++
		case unicode.IsLetter(r):
			end := i
			for end < len(s) && s[end] > ' ' && s[end] != '.' && (s[end] < '0' || s[end] > '9') {
				end++
			}
			w := fold(s[i:end])
			skip = end
			if text.JoinsUnits(w) && units > 0 && end < len(s) || w == "uhr" && colons > 0 && end == len(s) {
				break // 18 min and 29 s, 00:18:29 Uhr
			}
			if dot || clockUnits[w] == 0 || !inDigits && last != ' ' && last != '.' {
				return false
			}
			units++
			seconds = clockUnits[w] == 's'
		default:
			return false
		}
		inDigits = false
		last = r
	}
	if groups == 1 && digits >= 3 && units == 1 && seconds && colons == 0 {
		return true // 1109 s
	}
	return digits > 0 && groups >= 2 && groups <= 4 && (colons >= 1 && colons <= 3 || units >= 1) && digits <= 10
}

// isMoment recognises a running time that a spreadsheet shows as a moment:
// 12:24:31 AM, or 24 minutes into day zero of its calendar, 1900-01-00 00:24:31
// and 1899-12-30 00:24:31.
func isMoment(s string) bool { return momentClock(s) != "" }

// momentClock is the time of day in such a text, "" where it is none.
func momentClock(s string) string {
	if len(s) < 8 || len(s) > 24 {
		return ""
	}
	if _, rest, ok := unit.ZeroDay(s); ok {
		if c := momentClock(rest); c != "" {
			return c
		}
		if strings.Count(rest, ":") == 2 && isClock(rest) {
			return rest
		}
		return ""
	}
	if n := len(s) - 2; (s[n]|0x20 == 'a' || s[n]|0x20 == 'p') && s[n+1]|0x20 == 'm' {
		if c := strings.TrimRight(s[:n], " \u00A0\u202F"); strings.Count(c, ":") == 2 && isClock(c) {
			return c
		}
		return ""
	}
	if len(s) >= 19 && s[4] == '-' && s[7] == '-' && (s[10] == ' ' || s[10] == 'T') && s[11] == '0' && (s[12] == '1' || s[12] == '2' || s[12] == '0' && s[14] > '0') {
		if c := s[11:]; strings.Count(c, ":") == 2 && isClock(c) && len(findDates(s[:10])) > 0 {
			return c // the running time behind the day of the run
		}
	}
	if len(s) > 11 && (strings.HasPrefix(s, "1900-01-0") || strings.HasPrefix(s, "1899-12-3") || strings.HasPrefix(s, "1904-01-0")) && (s[10] == ' ' || s[10] == 'T') {
		if c := strings.TrimSuffix(s[11:], "Z"); strings.Count(c, ":") == 2 && isClock(c) {
			return c
		}
	}
	return ""
}

// isMarkedClock recognises a time with a mark or its unit after it: 20:16*, 22:38 SB,
// 29:19 (PB), 24:31 min.
func isMarkedClock(s string) bool {
	if n := len(s); n > 2 && n < 16 && (s[0] == '(' && s[n-1] == ')' || s[0] == '~') {
		in := strings.Trim(s, "(~) ")
		return strings.Contains(in, ":") && isClock(in) // a time that somebody was not sure of
	}
	if len(s) > 40 || s == "" || s[0] < '0' || s[0] > '9' {
		return false
	}
	if i := strings.IndexByte(s, '('); i > 3 && s[len(s)-1] == ')' && strings.Contains(s[:i], ":") && isClock(trim(s[:i])) {
		return true // 24:31 (+0:19), 24:31 (4:54/km)
	}
	i := len(s)
	for i > 0 && (s[i-1] < '0' || s[i-1] > '9') {
		i--
	}
	switch strings.ToLower(strings.Trim(s[i:], " ()[]*!.†‡§#^+¹²³⁴⁵⁶⁷⁸⁹")) {
	case "", "pb", "sb", "cr", "pr", "cb", "r", "nr", "new", "best", "record", "nb", "yb", "rp", "pbt", "wr", "ar", "†", "‡", "§",
		"min", "mins", "minutes", "minuten", "minuti", "minutos", "minuter", "minutter", "minut", "std", "h":
		return i < len(s) && strings.Contains(s[:i], ":") && isClock(s[:i])
	}
	return false
}

// isDottedClock recognises h.mm.ss, 0.24.31, which is no date: there is no
// month 24 and no day 0. So it does mm.ss.f, 24.31.5, as a year has two figures,
// and mm.ss.ff, 24.31.57.
func isDottedClock(s string) bool {
	n := len(s)
	if n == 7 && s[2] == '.' && s[5] == '.' {
		digits := digitsOnly(s[:2]) && digitsOnly(s[3:5]) && digitsOnly(s[6:])
		return digits && s[0] >= '1' && s[0] <= '9' && s[3] <= '5'
	}
	if n < 7 || n > 8 || s[n-3] != '.' || s[n-6] != '.' {
		return false
	}
	for i := 0; i < n; i++ {
		if i != n-3 && i != n-6 && (s[i] < '0' || s[i] > '9') {
			return false
		}
	}
	hour, minute, second := int(s[n-7]-'0'), int(s[n-5]-'0')*10+int(s[n-4]-'0'), int(s[n-2]-'0')*10+int(s[n-1]-'0')
	if n == 8 {
		hour += 10 * int(s[0]-'0')
	}
	if hour > 9 { // minutes, seconds and hundredths: 24.31.57, where no month is meant
		return hour < 60 && minute > 12 && minute < 60
	}
	return minute < 60 && second < 60 && (hour == 0 || minute == 0 || minute > 12)
}

// commaClock gives 56.17,6 and 1:08.40,8 with colons, 56:17.6 and 1:08:40.8: the comma
// before the tenths says that the dots are none. "" where it is no such time.
func commaClock(s string) string {
	i := strings.IndexByte(s, ',')
	if i < 4 || i > 8 || len(s)-i < 2 || len(s)-i > 4 || s[i-3] != '.' || !digitsOnly(s[i+1:]) || s[i-2] > '5' {
		return ""
	}
	c := strings.ReplaceAll(s[:i], ".", ":") + "." + s[i+1:]
	if !isClock(c) {
		return ""
	}
	return c
}

var sexWords = set(`musko zensko femminili maschili femeninos γυναικων ανδρων zensk moskih muzov zien muzu zen kobiet mezczyzn naisten miesten sieviesu viriesu moteru vyru muskaraca femeilor barbatilor женщин мужчин жінок чоловіків kvindernes maendenes kvinnenes mennenes damernas herrarnas kadinlarin erkeklerin naiste meeste femenins m f w h d k x z muz muzi zena zeny miehet naiset mies nainen male female man woman men women mens womens boy girl boys girls mr mrs ms lady ladies gent gents gentleman gentlemen males females pan pani
	herr herren frau damen mann lads lasses frauen manner mannlich weiblich homme femme hommes femmes masculin feminin fille garcon
	hombre mujer hombres mujeres masculino masculinos masculina masculinas femenino femenina femeninos femeninas varon uomo donna uomini donne maschio femmina maschile femminile
	homem mulher homens mulheres feminino feminina femininos femininas vrouw vrouwen mannen dames heren v
	mezczyzna kobieta mezczyzni kobiety kvinne kvinna kvinde kvinner kvinnor kvinder menn man mand maend mannlig kvinnelig dam herre dame damer herrer herrar herrarna damerna pojkar flickor gutter jenter drenge piger mezczyzna panowie panie rapazes raparigas ragazzi ragazze chicos chicas jongens meisjes jungen madchen garcons filles
	nonbinary nb divers diverse unspecified other
	miss mme mlle madame monsieur fraulein dhr mevr
	ferfi ferfiak ffi nok erkek erkekler kadin kadinlar kiz piltar stulkur homes dones masculi femeni mehed naised virietis viriesi sieviete sievietes vyras vyrai moteris moterys moski zenske zenski muski muskarci zene zeny zena barbat barbati femeie femei kk kvk konur karlar gwryw benyw dynion merched mna fir fireann baineann mannlig mannlige kvinnelig kvinnelige kvindelig mandlig manlig kvinnlig menywod gizonak gizona gizonezkoak emakumeak emakumea emakumezkoak mulleres mutilak neskak karlmenn kvennur meshkuj irgiel nisa mashkull femer маж мажи мушкарац κοριτσια αγορια meitenes merginos vaikinai fantje dekleta djecaci djevojcice chlapci dievcata divky fiuk lanyok baieti fete poisid tudrukud pojat tytot manlik vroulik vrou vroue chico chica fiu lany pige dreng poika tytto
	м ж ч муж жен мужчины женщины мужской женский мужскои женскии чоловік чоловіки жінка жінки чол мъж жена мъже жени мушкарци жене женска мушки α γ ανδρας ανδρες γυναικα γυναικες`,
	append(append(eastAsianSexes, semiticSexes...), "laki laki", "perempuan", "mwanaume", "mwanamke", "non binary", "not given", "prefer not to say", "not stated", "not known", "m / f", "f / m")...)

// softSexWords say a sex in a column of them; on a line of their own they are places
// or names as well.
var softSexWords = set("ragazzo ragazza rapaz rapariga menino menina chlapec dievca divka hoch chlopiec dziewczyna chl dz fant dekle decko decak djevojcica baiat fata berniukas mergaite meitene poiss tudruk noi noia nen nena mutil neska gutt jente pojke flicka jongen meisje nino nina seun dogter мальчик девочка хлопець дівчина хлопчик дівчинка момче момиче αγορι κοριτσι masc he da frk froken pr ga gospod gospodin gosp gospa gospoda gospodja gda gdja slecna ponas ponia kungs kundze dl dna dnul domnul doamna hra rva nti rouva neiti mw mevrouw slecna sl dona senhor senhora κος κα κυριος κυρια господин госпожа пан пані пани proua prl harra nam nu pria wanita putra putri kiume kike me ke sr sra srta sig sigra signor signora mal fem bay bayan karl kona noi mees naine fru hr dyn home mara", "sig ra", "sig na", "г н", "г жа")

var statusWords = set(`dnf dns dq dsq disq disqualified otl hd dsf nc np ab abd abandon aband retired ret rtd finished ok
	aufgegeben dnc abandono ritirato squalificato uitgevallen nt`,
	"did not finish", "did not start", "d n f", "d n s", "d q", "d s q", "o t l", "not finished", "not started", "nicht am start", "nicht angetreten", "non partant", "non classe", "no salio", "niet gestart", "niet gefinisht", "ej start", "ikke startet", "brot", "brutit", "broken", "udgaet", "utgatt", "diskvalificeret", "diskvalifisert", "diskvalificerad", "disqualifie", "disqualifiziert", "disqualificato", "descalificado", "desclassificado", "gediskwalificeerd", "zdyskwalifikowany", "nie ukonczyl", "nie ukonczyla", "nao terminou", "no termino", "non arrivato", "nicht im ziel", "ausgeschieden", "abgebrochen", "no time", "not timed", "time missing", "no result", "n / a", "not recorded", "dis qualified", "sin tiempo", "ohne zeit", "sans temps", "noage", "no age", "age unknown",
	"nedokoncil", "nedokoncila", "vzdal", "vzdala", "nestartoval", "nestartovala", "diskvalifikovan", "diskvalifikovany", "feladta", "nem indult", "kizarva", "keskeytti", "kesk", "hylatty", "hyl", "ei startannut",
	"odstopil", "odstopila", "ni startal", "ni startala", "diskvalificiran", "odustao", "odustala", "nije startao", "nije startala", "bitiremedi", "yaristan cekildi", "baslamadi", "diskalifiye", "katkestas", "ei startinud", "diskvalifitseeritud",
	"sq", "squalif", "izstajas", "nestarteja", "diskvalificets", "nebaige", "nestartavo", "diskvalifikuotas", "haetti", "maetti ekki", "ogilt", "heb orffen", "nu a luat startul", "descalificat", "abandonat", "brutt", "nie wystartowal", "zszedl z trasy", "dyskwalifikacja", "desistencia", "desistiu", "nao partiu", "non partito", "retirado", "no presentado", "n / p",
	"сошел", "сошла", "сошел с дистанции", "не стартовал", "не стартовала", "дисквалификация", "зіишов", "зіишла", "не стартував", "не стартувала", "дисквалифікація", "дискваліфікація", "εγκατελειψε", "δεν εκκινησε", "ακυρωθηκε")

func init() {
	for _, list := range []string{text.DidNotFinish, text.Disqualified, text.DidNotStart, text.Unranked} {
		for w := range strings.SplitSeq(list, "|") {
			if f := fold(w); f != "" && len(f) > 2 {
				statusWords[f] = true
			}
		}
	}
}

// decomposed writes a word with letters beyond ASCII as readers fold it, in which Korean syllables and
// marks over Thai and Arabic letters are apart.
func decomposed(w string) string {
	if strings.ContainsFunc(w, func(r rune) bool { return r >= utf8.RuneSelf && unicode.IsLetter(r) }) {
		return fold(w)
	}
	return w
}

func set(words string, phrases ...string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(words) {
		m[w], m[decomposed(w)] = true, true
	}
	for _, p := range phrases {
		m[p], m[decomposed(p)] = true, true
	}
	return m
}

var groupWords = set(`senior seniors sen snr junior juniors jun jnr jr vet vets veteran veterans master masters adult adults
	sm sw ms ws fs ls msen fsen lsen wsen mh mhk whk fhk mja wja mjb wjb mhe fhe open youth child children kids cadet cadets minime poussin benjamin espoir espoirs
	hauptklasse jugend schuler mu wu vm vw vf mv fv wv sh sf sem sef esh esf juh juf cah caf mih mif beh bef poh pof
	pm pf jm jf jw mj wj m0h m0f h f21 h21 d21`, "senior men", "senior women", "senior man", "senior woman", "junior men", "junior women",
	"senior m", "senior f", "senior w", "m senior", "f senior", "w senior", "m sen", "w sen", "f sen", "m / w", "male senior", "female senior", "under 18", "open men", "open women")

// isGroup recognises an age group by its shape: a few letters and one or two
// numbers up to 99 in any order, of which at least one letter, a range or a
// plus sign. f is folded.
func isGroup(f []byte) bool {
	if groupWords[string(f)] || isClass(f) {
		return true
	}
	if len(f) > 40 || len(f) > 24 && f[0] < utf8.RuneSelf {
		return false
	}
	if isEastAsianGroup(f) {
		return true
	}
	letters, numbers, plus, hi := 0, 0, false, 0
	odd := 0 // words of letters that may be a class, and may be anything
	for i := 0; i < len(f); {
		switch c := f[i]; {
		case c == ' ' || c == '/':
			i++
		case c == '+':
			plus = true
			i++
		case c >= '0' && c <= '9':
			j, n := i, 0
			for j < len(f) && f[j] >= '0' && f[j] <= '9' {
				n = n*10 + int(f[j]-'0')
				j++
			}
			if j-i == 4 && i == 1 && j == len(f) { // m5059: from 50 to 59
				from, to := n/100, n%100
				return from < to && to >= 5 && (to+1)%5 == 0 && (from <= 1 || from%5 == 0)
			}
			if j-i > 3 || n > 120 {
				return false
			}
			numbers++
			hi = max(hi, n)
			i = j
		case c >= 'a' && c <= 'z':
			j := i
			for j < len(f) && f[j] >= 'a' && f[j] <= 'z' {
				j++
			}
			joined := j < len(f) && f[j] >= '0' && f[j] <= '9' || i > 0 && f[i-1] >= '0' && f[i-1] <= '9'
			part := groupPart[string(f[i:j])]
			if (j-i > 4 || j-i > 2 && !joined) && !part {
				return false
			}
			if !part {
				odd++
			}
			letters++
			i = j
		case c >= utf8.RuneSelf:
			j := i
			for j < len(f) && f[j] >= utf8.RuneSelf {
				j++
			}
			if !sexWords[string(f[i:j])] && !otherGroupPart[string(f[i:j])] {
				return false
			}
			letters++
			i = j
		default:
			return false
		}
	}
	return numbers >= 1 && numbers <= 2 && hi >= 5 && (letters <= 3 || letters <= 5 && odd == 0) && (letters > 0 || numbers == 2 || plus)
}

// sexAndYear says whether a folded text is a sex and a year of birth, in whatever order: "F 1977".
func sexAndYear(f string) bool {
	if n := len(f); n < 5 || n > 12 || f[0] >= '0' && f[0] <= '9' == (f[n-1] >= '0' && f[n-1] <= '9') {
		return false
	}
	year, sex := f[:4], f[4:]
	if f[0] > '9' {
		year, sex = f[len(f)-4:], f[:len(f)-4]
	}
	sex = strings.Trim(sex, " /,-")
	return digitsOnly(year) && (year[:2] == "19" || year[:2] == "20" && year < "2030") && (sexWords[sex] || softSexWords[sex])
}

// isClass recognises a class in words, with or without a sex: "Men Senior",
// "MSenior", "Veteran Ladies". f is folded.
func isClass(f []byte) bool {
	if len(f) < 4 || len(f) > 32 {
		return false
	}
	class := false
	for i, j := 0, 0; i < len(f); i = j + 1 { // bytes.Fields would move what f lies in to the heap
		for j = i; j < len(f) && f[j] != ' '; j++ {
		}
		w := f[i:j]
		switch {
		case len(w) == 0:
		case classWords[string(w)], len(w) >= 4 && strings.IndexByte("mwflhd", w[0]) >= 0 && classWords[string(w[1:])]:
			class = true
		case len(w) > 1 && sexWords[string(w)], len(w) == 1 && (w[0] == 'm' || w[0] == 'w' || w[0] == 'f'):
		default:
			return false
		}
	}
	return class
}

var classWords = set(`senior seniors sen jun jnr junior juniors youth veteran veterans vet vets master masters senioren juniorer seniorer veteraner veteranen
	seniorinnen junioren juniorinnen veteraninnen seniores juniores veterano veterana veteranos veteranas maitres`)

var groupPart = set(`preko powyzej mayores menores derover ages homes dones home dona alla ponizej ispod sotto sota lidz gadiem iki metu vyresni vyresnes jaunesni jaunesnes jaunaki vecaki nei more men man ladies lady boys boy girls girl gents mens womens under over and plus older age aged vet vets sen jun jnr snr senior junior veteran vets masters master male female women woman seniors juniors
	messieurs monsieur garcons filles hommes femmes homme femme hombres mujeres hombre mujer uomini donne homens mulheres herren damen frauen manner mannlich weiblich
	senioren seniorinnen junioren juniorinnen veteraninnen seniores juniores veterano veterana veteranos veteranas maitres
	masculino masculinos masculina masculins feminino femininos feminina feminins feminines femenino femenina maschile maschili femminile femminili
	sub ans anos anni jahre jaar years yrs moins plus masc fem master category cat kat ak jg heren dames mannen vrouwen mezczyzni kobiety kvinner kvinnor kvinder herrer veteranen veterans veterani
	menn mend mand herrar damer miehet naiset muzi muz zeny zena ferfi ferfiak noi muski muskarci zene moski zenske erkek kadin barbati femei mehed naised viriesi sievietes vyrai moterys karlar konur dynion merched
	aar let lety rokow rokov lat eves evesek vuotta aastat metu gadi gadu godina godine ani nad do iznad felett peste ustu virs
	az a starsi starsie mladsi mladsie starszy starsze starszych mlodszy mlodsze ja vanhemmat nuoremmat vanemad nooremad idosebb fiatalabb eldre yngre aldre alter junger`)

// otherGroupPart are words of age groups in other scripts, in the folded form.
var otherGroupPart = set("κατω των ετων лет года год г л років роки р до от и старше младше над под години г година ετων ανω שנים ומעלה سنة فوق")

// isEastAsianGroup recognises 男子30代, 女子40歳以上, 남자 30대: a sex or a number, and signs
// that groups are made of.
func isEastAsianGroup(f []byte) bool {
	digits, signs := 0, 0
	for len(f) > 0 {
		r, n := utf8.DecodeRune(f)
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == ' ' || r == '-' || r == '~':
		case strings.ContainsRune(eastAsianYears, r): // 34歳 is an age
		case strings.ContainsRune(eastAsianGroupSigns, r):
			signs++
		default:
			return false
		}
		f = f[n:]
	}
	return digits > 0 && digits <= 4 && signs > 0
}

var (
	eastAsianGroupSigns = fold("부男女子性代以上下未満满組组の部一般남여자대이상미만")
	eastAsianYears      = fold("歳才岁歲세")
)

// distinctKept is how many different values of a column are counted.
const distinctKept = 100

// profile counts what a column holds.
type profile struct {
	count    [kinds]int
	filled   int
	spaces   int     // texts of more than one word
	commas   int     // texts with a comma
	lo, hi   float64 // of the numbers
	whole    bool    // every number is whole
	years    int     // whole numbers 1900 … 2030
	rising   int     // numbers or clocks not below the one before
	steps    int     // pairs compared
	unit     int     // numbers exactly one above the one before
	fives    int     // whole numbers that are multiples of five
	last     float64
	distinct map[string]int
}

// wordless says whether none of the values has a letter.
func (p *profile) wordless() bool {
	for v := range p.distinct {
		if hasLetter(v) {
			return false
		}
	}
	return true
}

// letters says whether each value is a letter and nothing more.
func (p *profile) letters() bool {
	for v := range p.distinct {
		if len(v) != 1 || !hasLetter(v) {
			return false
		}
	}
	return len(p.distinct) > 0
}

// afterMidnight says whether all values lie in the hour at which nobody runs, 0:02, 00:00:14.
func (p *profile) afterMidnight() bool {
	for v := range p.distinct {
		if hour, _, ok := strings.Cut(v, ":"); !ok || hour != "0" && hour != "00" {
			return false
		}
	}
	return len(p.distinct) > 0
}

// sections says whether all values are sexes or classes beside general words, as lines over lists have them.
func (p *profile) sections() bool {
	for v := range p.distinct {
		if _, _, _, far := findDistance(v); far || !isSection(v) {
			return false
		}
	}
	return len(p.distinct) > 0
}

// noDays says whether nearly every row has a value of its own, and hardly any can be a date.
func (p *profile) noDays() bool {
	if p.filled < 4 || len(p.distinct)*10 < min(p.filled, distinctKept)*8 {
		return false
	}
	days := 0
	for v := range p.distinct {
		if _, ok := cellDate(v, false); ok {
			days++
		}
	}
	return 3*days < len(p.distinct)
}

func (p *profile) add(cell string) {
	k := kindOf(cell)
	p.count[k]++
	if k == kBlank {
		return
	}
	p.filled++
	s := trim(cell)
	if p.distinct == nil {
		p.distinct = map[string]int{}
	}
	if len(p.distinct) < distinctKept || p.distinct[s] > 0 {
		p.distinct[s]++
	}
	switch k {
	case kText:
		if strings.ContainsAny(s, " \u00A0") {
			p.spaces++
		}
		if strings.Contains(s, ",") {
			p.commas++
		}
	case kInt, kDecimal, kPercent, kClock:
		v := looseNumber(s)
		numbers := p.count[kInt] + p.count[kDecimal] + p.count[kPercent]
		if k != kClock {
			if numbers == 1 {
				p.lo, p.hi, p.whole = v, v, true
			}
			p.lo, p.hi = min(p.lo, v), max(p.hi, v)
			if v != float64(int64(v)) || k == kDecimal && strings.ContainsAny(s, ".,") {
				p.whole = false
			}
			if k == kInt && v >= 1900 && v <= 2030 {
				p.years++
			}
			if k == kInt && int64(v)%5 == 0 {
				p.fives++
			}
		}
		if p.steps > 0 || p.filled > 1 {
			p.steps++
			if v >= p.last {
				p.rising++
			}
			if v == p.last+1 {
				p.unit++
			}
		}
		p.last = v
	}
}

// share is the part of the filled cells that has one of the kinds.
func (p *profile) share(ks ...kind) float64 {
	if p.filled == 0 {
		return 0
	}
	n := 0
	for _, k := range ks {
		n += p.count[k]
	}
	return float64(n) / float64(p.filled)
}

// shareOf is share among the cells that are not status words.
func (p *profile) shareOf(ks ...kind) float64 {
	all := p.filled - p.count[kStatus]
	if all <= 0 {
		return 0
	}
	n := 0
	for _, k := range ks {
		n += p.count[k]
	}
	return float64(n) / float64(all)
}

// looseNumber orders numbers and clocks of one column; it is not a reading of
// the time.
func looseNumber(s string) float64 {
	s = strings.TrimPrefix(s, "'") // of a cell that was to be text
	if n := len(s); n > 2 && (s[0] == '(' && s[n-1] == ')' || s[0] == '[' && s[n-1] == ']') {
		s = s[1 : n-1] // (17:00)
	}
	s = withoutZeroDays(s)
	if isDottedClock(s) {
		s = strings.ReplaceAll(s, ".", ":")
	}
	if c := commaClock(s); c != "" {
		s = c
	}
	if c := momentClock(s); c != "" {
		switch half := s[len(s)-2] | 0x20; {
		case half == 'a' && strings.HasPrefix(c, "12:"):
			c = "0" + c[2:]
		case half == 'p' && !strings.HasPrefix(c, "12:"):
			return 12*3600 + looseNumber(c)
		}
		s = c
	}
	if isMarkedClock(s) || len(s) > 3 && strings.EqualFold(s[len(s)-3:], "uhr") {
		s = strings.TrimRightFunc(s, func(r rune) bool { return r < '0' || r > '9' }) // 24:26 SB
	}
	v, group, scale := 0.0, 0.0, 0.0
	neg := s != "" && s[0] == '-'
	clock := isClock(s)
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= '0' && c <= '9':
			if scale > 0 {
				group += float64(c-'0') * scale
				scale /= 10
			} else {
				group = group*10 + float64(c-'0')
			}
		case (c == '.' || c == ',') && (!clock || strings.ContainsAny(s[:i], ":'hm")):
			scale = 0.1
		case clock && (c == ':' || c == '\'' || c == 'm' || c == 'h' || c == 'M' || c == 'H'):
			v, group, scale = (v+group)*60, 0, 0
		}
	}
	v += group
	if neg {
		return -v
	}
	return v
}

// looseKey is looseNumber as a text by which equal times, however they are written, are found.
func looseKey(s string) string { return strconv.FormatFloat(looseNumber(s), 'f', -1, 64) }

// placeKind is what a cell of a column of places looks like: 3.0, as a program writes the
// number that it took for a decimal, and 3 / 247, of how many, are places too.
func placeKind(s string) kind {
	k := kindOf(s)
	if k == kInt || k == kBlank {
		return k
	}
	if n, ok := placeAmong(s); ok && n > 0 {
		return kInt
	}
	return k
}

// placeAmong reads 3.0 and 3 / 247.
func placeAmong(s string) (place float64, ok bool) {
	s = trim(s)
	if a, b, cut := strings.Cut(s, "/"); cut {
		if a, b = trim(a), trim(b); digitsOnly(a) && digitsOnly(b) && looseNumber(a) <= looseNumber(b) {
			return looseNumber(a), true
		}
		return 0, false
	}
	if a, b, cut := strings.Cut(s, "."); cut && digitsOnly(a) && b != "" && strings.Trim(b, "0") == "" {
		return looseNumber(a), true
	}
	return 0, false
}

// placeNumber is the place that a cell of the kind of places says.
func placeNumber(s string) float64 {
	if n, ok := placeAmong(s); ok {
		return n
	}
	return looseNumber(s)
}

// letters says whether the text has any letter.
func hasLetter(s string) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i] | 0x20; c >= 'a' && c <= 'z' || s[i] >= 0xC3 {
			return true
		}
	}
	return false
}
