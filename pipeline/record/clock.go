package record

import (
	"bytes"
	"html"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// clockShape is what the text of a time cell looks like, before anybody
// decides what it means.
type clockShape uint8

const (
	notClock   clockShape = iota // not understood as a time
	blankClock                   // nothing, or a sign for "no time"
	colon2                       // 24:31, 24:31.5
	colon3                       // 0:24:31, 24:31:00
	colon4                       // 0:24:31:57
	number                       // 24.31, 24.516667, 0.0170254, 1471, 2431
	dots3                        // 1.02.15, 24.31.5
	exactClock                   // units stated: 24 min 31 s, PT24M31S; value is in ms
)

// clockCell is the text of one time cell in pieces.
type clockCell struct {
	shape      clockShape
	a, b, c    int32 // the parts between colons or dots
	bDigits    int8  // digits of the last whole part; 1 in "24:3"
	fracMS     int32 // fraction of the last part, ms; for colon4 the last part as hundredths
	ms         int32 // exactClock: the time
	whole      int64 // number: digits before the point
	frac       int64 // number: digits after it
	fracDigits int8  // and how many; of times with colons too
	value      float64
	point      bool // a fraction was printed, if only .0
	repaired   bool // a letter O, a semicolon or a remark stood in the way
	hours      bool // "h" was printed after two parts: 1:02 h
	days       int8 // days before the time of day, in a moment of a spreadsheet
	eve        bool // a moment of 31 December 1899: its first day to some programs, the second to others
	minutes    bool // number: minutes are named behind it, "25.5 min"
	words      bool // words stand in brackets behind it
	second     bool // another time stands in brackets behind it
	unsure     bool // the sheet says that it was estimated: "~24:31", "24:31?", "24:31 approx"
}

// lexClock takes one time cell to pieces. Digits with colons, by far the most
// frequent, never leave the first lines. scratch is reused room.
func lexClock(s string, scratch *[]byte, c *clockCell) {
	*c = clockCell{}
	if !lexPlain(s, c) && !lexColons(s, c) {
		if strings.IndexByte(s, '&') >= 0 && strings.IndexByte(s, ';') >= 0 {
			s = html.UnescapeString(s) // saved from a web page: 24&#39;31
		}
		*scratch = fold((*scratch)[:0], plainSigns(s))
		*c = lexFolded(*scratch)
		return
	}
	if c.a == 0 && c.b == 0 && c.c == 0 && c.fracMS == 0 || c.b == 99 && (c.a == 99 || c.a == 9) {
		*c = clockCell{shape: blankClock} // 00:00 and 99:99 stand for no time
	}
}

// plainSigns spells out halves and quarters, which folding would join to the figures before them,
// and leaves out the small figures of a footnote.
func plainSigns(s string) string {
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf {
			return signs.Replace(s)
		}
	}
	return s
}

var signs = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⁄", "/", "¹", "", "²", "", "³", "", "⁴", "", "⁵", "", "⁶", "", "⁷", "", "⁸", "", "⁹", "")

// parts of a minute, as people write them behind whole ones.
var minuteParts = map[string]int32{"1/2": 30, "1/4": 15, "3/4": 45, "and a half": 30, "& a half": 30, "and half": 30, "a half": 30, "and a quarter": 15, "and three quarters": 45, "und eine halbe": 30, "et demi": 30, "et demie": 30, "y media": 30, "e mezzo": 30, "e mezza": 30, "och en halv": 30}

// lexParts reads minutes with a half or a quarter behind them: "25 1/2 min", "21 and a half". The word
// for minutes may stand before the part or behind it.
func lexParts(b []byte) (clockCell, bool) {
	i := 0
	for i < len(b) && b[i] >= '0' && b[i] <= '9' {
		i++
	}
	if i == 0 || i > 2 || i == len(b) || i == 1 && b[i] == '/' {
		return clockCell{}, false
	}
	minute := func(w []byte) bool { return unitWords[string(bytes.TrimRight(w, "."))] == 'm' }
	rest := bytes.TrimLeft(b[i:], " +")
	if w := unitPrefix(rest); len(w) > 0 && minute(w) {
		rest = bytes.TrimLeft(rest[len(w):], " ")
	} else if at := bytes.LastIndexByte(rest, ' '); at > 0 && minute(rest[at+1:]) {
		rest = rest[:at]
	}
	for _, and := range []string{"& ", "and "} {
		if after, ok := bytes.CutPrefix(rest, []byte(and)); ok && minuteParts[string(after)] > 0 {
			rest = after
		}
	}
	seconds := minuteParts[string(rest)]
	return clockCell{shape: exactClock, ms: 60000*int32(atoi(b[:i])) + 1000*seconds}, seconds > 0
}

// lexPlain reads dd:dd, d:dd, d:dd:dd and dd:dd:dd; it only saves time.
func lexPlain(s string, c *clockCell) bool {
	n := len(s)
	if n < 4 || n > 8 || s[n-3] != ':' {
		return false
	}
	last, ok := twoDigits(s[n-2:])
	if !ok {
		return false
	}
	s = s[:n-3]
	c.bDigits = 2
	if n = len(s); n > 2 {
		mid, ok := twoDigits(s[n-2:])
		if !ok || n < 4 || s[n-3] != ':' {
			return false
		}
		c.shape, c.b, c.c = colon3, mid, last
		s = s[:n-3]
	} else {
		c.shape, c.b = colon2, last
	}
	c.a = int32(s[0] - '0')
	if len(s) == 2 {
		if c.a, ok = twoDigits(s); !ok {
			return false
		}
	}
	return s[0] >= '0' && s[0] <= '9'
}

func twoDigits(s string) (int32, bool) {
	a, b := s[0]-'0', s[1]-'0'
	return int32(a)*10 + int32(b), a <= 9 && b <= 9
}

// lexColons reads d:dd, d:dd:dd with an optional decimal fraction and nothing
// else around.
func lexColons[T string | []byte](s T, c *clockCell) bool {
	var part [4]int32
	var digits [4]int8
	n := 0
	i := 0
	for ; i < len(s); i++ {
		ch := s[i]
		if ch >= '0' && ch <= '9' {
			if digits[n] >= 5 || n == 1 && digits[n] >= 2 {
				return false // 19:004
			}
			part[n] = part[n]*10 + int32(ch-'0')
			digits[n]++
			continue
		}
		if ch == ':' && digits[n] > 0 && n < 3 {
			n++
			continue
		}
		break
	}
	if n == 0 || digits[n] == 0 {
		return false
	}
	*c = clockCell{a: part[0], b: part[1], c: part[2], bDigits: digits[n]}
	if i < len(s) {
		if s[i] != '.' && s[i] != ',' || i+1 == len(s) || n == 3 {
			return false
		}
		ms, ok := fractionMS(s[i+1:])
		if !ok {
			return false
		}
		c.fracMS, c.point, c.fracDigits = ms, true, int8(min(len(s)-i-1, 9))
	}
	switch {
	case n == 1:
		c.shape = colon2
	case n == 2:
		c.shape = colon3
	case part[0] == 0 && part[1] <= 2 && part[3] < 60 && digits[3] == 2:
		// No run takes less than three minutes: 00:00:18:29 has days before the hours.
		*c = clockCell{a: part[1], b: part[2], c: part[3], bDigits: 2, shape: colon3}
	default:
		c.shape = colon4
		switch digits[3] { // 0:24:31:5 is tenths, :57 hundredths, :570 thousandths
		case 1:
			c.fracMS = part[3] * 100
		case 2:
			c.fracMS = part[3] * 10
		case 3:
			c.fracMS = part[3]
		default:
			return false
		}
	}
	return true
}

// fractionMS reads the digits after a decimal point as milliseconds, rounded
// to the nearest.
func fractionMS[T string | []byte](s T) (int32, bool) {
	if len(s) == 0 || len(s) > 18 {
		return 0, false
	}
	ms, scale := int32(0), int32(100)
	for i := 0; i < len(s); i++ {
		d := s[i] - '0'
		if d > 9 {
			return 0, false
		}
		switch {
		case i < 3:
			ms += int32(d) * scale
			scale /= 10
		case i == 3 && d >= 5:
			ms++
		}
	}
	return ms, true
}

// lexFolded reads everything that is not plain digits and colons. b is folded.
func lexFolded(b []byte) clockCell {
	b = bytes.TrimLeft(b, "'=(* ")
	b = bytes.TrimPrefix(b, []byte("0 days ")) // as programs write lengths of time
	if len(b) > 6 && b[0] > '9' {
		for _, mark := range []string{"pb ", "sb ", "pb: ", "sb: ", "new pb ", "time: ", "time:", "time ", "time=", "t=", "zeit: ", "zeit ", "temps: ", "temps ", "tiempo: ", "tempo: "} {
			b = bytes.TrimPrefix(b, []byte(mark))
		}
	}
	if noTime(b) {
		return clockCell{shape: blankClock}
	}
	if rest, unsure := cutUnsure(b); unsure {
		c := lexFolded(rest)
		c.unsure = c.shape != notClock && c.shape != blankClock
		return c
	}
	if bytes.HasPrefix(b, []byte("pt")) {
		if c, ok := lexISODuration(b[2:]); ok {
			return c
		}
		return clockCell{}
	}
	if c, ok := lexNumber(b); ok {
		return c
	}
	if c, ok := lexParts(b); ok {
		return c
	}
	if c, ok := lexDateTime(b); ok {
		return c
	}
	if twoClocks(b) {
		return clockCell{} // of two columns that were not parted
	}
	if ms, ok := hourMarks(b); ok {
		return clockCell{shape: exactClock, ms: ms}
	}
	if ms, ok := hourColonMarks(b); ok {
		return clockCell{shape: exactClock, ms: ms}
	}
	if c, ok := lexUnits(b); ok {
		return c
	}
	if bare := withoutRemark(b); len(bare) < len(b) {
		if c, ok := lexUnits(bare); ok {
			return c
		}
	}
	if c := lexRepaired(b); c.shape != notClock {
		return c
	}
	if right, ok := text.CorrectedTime(string(b)); ok { // "24:51 should be 24:15"
		c := lexFolded([]byte(right))
		c.repaired = c.shape != notClock
		return c
	}
	return clockCell{}
}

// twoClocks says whether a text is two times with nothing but blanks between: "9:32  18:54".
func twoClocks(b []byte) bool {
	first, second, ok := bytes.Cut(b, []byte(" "))
	if !ok {
		return false
	}
	var c clockCell
	return lexColons(first, &c) && lexColons(bytes.TrimLeft(second, " "), &c)
}

// withoutRemark cuts off what may follow a time with its units without changing it: 24m31s PB,
// 24'31" (new), 24 min 31 s*.
func withoutRemark(b []byte) []byte {
	if i := bytes.IndexByte(b, '('); i > 0 {
		b = b[:i]
	}
	b = bytes.TrimRight(b, "*#!+)~ †‡§^")
	for _, words := range [...]int{1, 2} {
		at := len(b)
		for n := 0; n < words && at > 0; n++ {
			at = bytes.LastIndexByte(b[:at], ' ')
		}
		if at > 0 && timeRemarks[string(b[at+1:])] {
			return bytes.TrimRight(b[:at], " ")
		}
	}
	return b
}

// unsureBefore and unsureAfter mark a time that was estimated, folded (common practice, no
// source).
var (
	unsureBefore = [][]byte{[]byte("approx. "), []byte("approx "), []byte("about "), []byte("around "), []byte("circa "), []byte("ca. "), []byte("ca "), []byte("c. "), []byte("c "), []byte("est. "), []byte("est "), []byte("etwa "), []byte("environ "), []byte("env. "), []byte("~")}
	unsureAfter  = [][]byte{[]byte("approximately"), []byte("approx"), []byte("estimated"), []byte("estimate"), []byte("est"), []byte("ca"), []byte("circa"), []byte("geschatzt"), []byte("?"), []byte("~"), []byte("ish"), []byte("-ish"), []byte("or so"), []byte("or thereabouts"), []byte("±"), []byte("+/-"), []byte("ungefahr"), []byte("environ"), []byte("estimado"), []byte("geschat")}
)

// cutUnsure takes such a mark off a text that has a figure.
func cutUnsure(b []byte) (rest []byte, found bool) {
	for _, mark := range unsureBefore {
		if rest, ok := bytes.CutPrefix(b, mark); ok && len(rest) > 2 && (rest[0] >= '0' && rest[0] <= '9' || rest[0] == ' ') {
			return rest, true
		}
	}
	end := bytes.TrimRight(b, ".) ")
	for _, mark := range unsureAfter {
		if rest, ok := bytes.CutSuffix(end, mark); ok && len(rest) > 2 && (mark[0] == '?' || mark[0] == '~' || mark[0] == '-' || mark[0] == '+' || mark[0] == 'i' || mark[0] > 'z' || bytes.ContainsAny(rest[len(rest)-1:], " (")) {
			return bytes.TrimRight(rest, "( "), true
		}
	}
	return b, false
}

// noTime knows the signs that stand for a time that nobody has: blanks,
// dashes, 00:00, 99:99 and words for "no time" in several languages.
func noTime(b []byte) bool {
	blank, zeros, nines := true, true, true
	for _, ch := range b {
		switch ch {
		case '0':
			blank, nines = false, false
		case '9':
			blank, zeros = false, false
		case ':', '.', ',':
		case '-', '_', '?', '*', '/', ' ', '#', 'x':
			zeros, nines = false, false
		default:
			return untimedWords[string(bytes.Trim(b, ".!()* "))]
		}
	}
	// A lone 9, or 9.99, can be a time; only the full sentinel is none.
	return blank || zeros || nines && bytes.Count(b, []byte("9")) >= 4 && bytes.ContainsAny(b, ":")
}

var untimedWords = wordSet(`no time|notime|nt|n/t|n.t|na|n/a|n.a|none|missing|missed|no result|unknown|unk|not recorded|not timed|untimed|time missing|
nil|null|#n/a|#value!|#ref!|#div/0!|nan|tbc|tba|lost|no chip|
pas de temps|sans temps|non chronometre|ohne zeit|o.z|oz|k.a|keine zeit|zeit fehlt|sin tiempo|senza tempo|tempo mancante|geen tijd|zonder tijd|sem tempo|
brak czasu|brak|ingen tid|uden tid|utan tid|uten tid|nieznany|inconnu|unbekannt|onbekend|desconocido|sconosciuto|desconhecido`)

// lexNumber reads digits with an optional decimal point or comma, a sign of an
// exponent included (spreadsheets store 1.7025E-2).
func lexNumber(b []byte) (clockCell, bool) {
	c := clockCell{shape: number}
	i, intDigits := 0, 0
	for ; i < len(b) && b[i] >= '0' && b[i] <= '9'; i++ {
		if intDigits++; intDigits > 9 {
			return c, false
		}
		c.whole = c.whole*10 + int64(b[i]-'0')
	}
	if i < len(b) && (b[i] == '.' || b[i] == ',') && (i > 0 || len(b) > 1) {
		for i++; i < len(b) && b[i] >= '0' && b[i] <= '9'; i++ {
			if c.fracDigits++; c.fracDigits <= 17 {
				c.frac = c.frac*10 + int64(b[i]-'0')
			}
		}
		if intDigits == 0 && c.fracDigits == 0 {
			return c, false
		}
		c.fracDigits = min(c.fracDigits, 17)
	}
	if intDigits == 0 && c.fracDigits == 0 {
		return c, false
	}
	if i < len(b) {
		if b[i] != 'e' {
			return c, false
		}
		v, err := strconv.ParseFloat(string(bytes.Replace(b, []byte(","), []byte("."), 1)), 64)
		if err != nil || v < 0 || v > 1e7 {
			return c, false
		}
		return numberCell(v), true
	}
	c.value = float64(c.whole) + float64(c.frac)/math.Pow10(int(c.fracDigits))
	if c.fracDigits >= 12 {
		c = numberCell(c.value)
	}
	return c, true
}

// numberCell takes a stored floating-point number to digits, without the noise
// of its last bits: 24.310000000000002 is 24.31.
func numberCell(v float64) clockCell {
	c := clockCell{shape: number, value: v}
	var room [32]byte
	d := strconv.AppendFloat(room[:0], v, 'f', 15, 64)
	if r := strconv.AppendFloat(room[16:16], v, 'f', 10, 64); math.Abs(v-mustFloat(r)) < 1e-13*max(1, v) {
		d = r
	}
	point := bytes.IndexByte(d, '.')
	d = bytes.TrimRight(d, "0")
	for _, ch := range d[:point] {
		c.whole = c.whole*10 + int64(ch-'0')
	}
	for _, ch := range d[point+1:] {
		c.frac = c.frac*10 + int64(ch-'0')
		c.fracDigits++
	}
	return c
}

func mustFloat(b []byte) float64 {
	v, _ := strconv.ParseFloat(string(b), 64) // b is our own formatting
	return v
}

// lexISODuration reads what follows PT in an ISO 8601 duration: 1H2M15.5S.
func lexISODuration(b []byte) (clockCell, bool) {
	c := clockCell{shape: exactClock}
	last, ms := byte(0), int64(0)
	for len(b) > 0 {
		n, frac, rest, ok := leadingNumber(b)
		if !ok || len(rest) == 0 {
			return c, false
		}
		u, f := rest[0], int64(0)
		switch u {
		case 'h':
			f = 3600000
		case 'm':
			f = 60000
		case 's':
			f = 1000
		}
		if f == 0 || last != 0 && order(u) <= order(last) {
			return c, false
		}
		ms += n*f + int64(math.Round(frac*float64(f)))
		last, b = u, rest[1:]
	}
	c.ms = int32(ms)
	return c, last != 0 && ms > 0 && ms < maxMS
}

// maxMS bounds every reading: 100 hours.
const maxMS = 360_000_000

func order(unit byte) int { return bytes.IndexByte([]byte("hms"), unit) }

// leadingNumber reads digits and an optional decimal fraction.
func leadingNumber(b []byte) (n int64, frac float64, rest []byte, ok bool) {
	i := 0
	for ; i < len(b) && b[i] >= '0' && b[i] <= '9' && i < 7; i++ {
		n = n*10 + int64(b[i]-'0')
	}
	if i == 0 {
		return 0, 0, b, false
	}
	if i+1 < len(b) && (b[i] == '.' || b[i] == ',') && b[i+1] >= '0' && b[i+1] <= '9' {
		scale := 0.1
		for i++; i < len(b) && b[i] >= '0' && b[i] <= '9'; i++ {
			frac += float64(b[i]-'0') * scale
			scale /= 10
		}
	}
	return n, frac, b[i:], true
}

// units of time as they are printed, by first letters, in English, French,
// German, Dutch, Spanish, Italian, Portuguese, Polish, the Nordic languages and those of
// East Asia.
var unitWords = map[string]byte{
	"h": 'h', "hr": 'h', "hrs": 'h', "hour": 'h', "hours": 'h', "std": 'h', "stunde": 'h', "stunden": 'h', "uur": 'h', "u": 'h',
	"heure": 'h', "heures": 'h', "hora": 'h', "horas": 'h', "ora": 'h', "ore": 'h', "godz": 'h', "t": 'h', "tim": 'h', "time": 'h', "timer": 'h', "timmar": 'h', "hod": 'h', "hodin": 'h', "tund": 'h', "tundi": 'h', "st": 'h', "val": 'h', "sat": 'h', "sati": 'h', "oras": 'h', "saat": 'h', "sa": 'h', "klst": 'h', "ч": 'h', "час": 'h', "часа": 'h', "ω": 'h', "ωρες": 'h',
	"m": 'm', "mn": 'm', "min": 'm', "mins": 'm', "minute": 'm', "minutes": 'm', "minuten": 'm', "minuto": 'm', "minutos": 'm', "minuti": 'm', "minut": 'm', "minuter": 'm', "minutter": 'm', "minuty": 'm', "perc": 'm', "minuta": 'm', "minutit": 'm', "dk": 'm', "dakika": 'm', "мин": 'm', "хв": 'm', "λ": 'm', "λεπ": 'm', "λεπτα": 'm', "'": 'm', "p": 'm', "phut": 'm', "menit": 'm', "นาที": 'm', "דקות": 'm', string(fold(nil, "دقيقة")): 'm',
	"s": 's', "sec": 's', "secs": 's', "second": 's', "seconds": 's', "sek": 's', "sekunde": 's', "sekunden": 's', "seg": 's', "segundo": 's', "segundos": 's', "secondi": 's', "secondes": 's', "seconde": 's', "seconden": 's', "sekunder": 's', "sekund": 's', "sekundy": 's', "mp": 's', "sekunda": 's', "sekundi": 's', "secunde": 's', "sekuntia": 's', "sn": 's', "saniye": 's', "сек": 's', "с": 's', "δ": 's', "δευτ": 's', "giay": 's', "detik": 's', "วินาที": 's', "שניות": 's', string(fold(nil, "ثانية")): 's', `"`: 's', "''": 's',
	"minuciu": 'm', "minutu": 'm', "minuutti": 'm', "minuuttia": 'm', "minuut": 'm', "минута": 'm', "минуты": 'm', "минут": 'm', "м": 'm', "хвилина": 'm', "хвилини": 'm', "хвилин": 'm',
	"sekundes": 's', "sekundziu": 's', "sekundit": 's', "secunda": 's', "sekunti": 's', "sekunnit": 's', "vterin": 's', "vteriny": 's', "vter": 's', "δευτερολεπτα": 's', "vt": 's', "masodperc": 's', "секунда": 's', "секунды": 's', "секунди": 's', "секунд": 's', "eiliad": 's',
	"時間": 'h', "時": 'h', "小时": 'h', "小時": 'h', "时": 'h', "分": 'm', "分钟": 'm', "分鐘": 'm', "秒": 's',
	string(fold(nil, "시간")): 'h', string(fold(nil, "시")): 'h', string(fold(nil, "분")): 'm', string(fold(nil, "초")): 's',
}

// lexUnits reads times with their units: 24m31s, 24'31", 24 min 31, 1h02, 1 hr
// 2 mins 15 secs, 1471 s. The last number may go without its unit. A lone
// number before "min" stays a number, because 24.31 min is printed for both
// 24:31 and 24.31 minutes.
func lexUnits(b []byte) (clockCell, bool) {
	c := clockCell{shape: exactClock}
	last, ms := byte(0), int64(0)
	for first := true; len(b) > 0; first = false {
		n, frac, rest, ok := leadingNumber(b)
		if !ok {
			return c, false
		}
		digits := len(b) - len(rest)
		bare := b[:digits]
		rest = bytes.TrimLeft(rest, " ")
		w := unitPrefix(rest)
		u, named := unitWords[string(bytes.TrimRight(w, "."))]
		rest = bytes.TrimLeft(rest[len(w):], " ,")
		if w, after, ok := bytes.Cut(rest, []byte{' '}); ok && text.JoinsUnits(string(w)) {
			rest = bytes.TrimLeft(after, " ")
		}
		switch {
		case len(w) > 0 && !named:
			return c, false
		case !named && (first || len(rest) > 0):
			return c, false
		case !named && last == 's': // 24'31"57
			f, ok := fractionMS(bare)
			if !ok || frac != 0 {
				return c, false
			}
			c.ms = int32(ms) + f
			return c, ms > 0 && ms < maxMS
		case !named:
			u = "ms"[order(last)]
		case named && u == 'm' && first && len(rest) == 0:
			num, ok := lexNumber(bare)
			num.minutes = num.fracDigits > 0
			return num, ok
		}
		if last != 0 && order(u) != order(last)+1 {
			return c, false
		}
		f := [...]int64{3600000, 60000, 1000}[order(u)]
		if last != 0 && n >= 60 {
			return c, false
		}
		ms += n*f + int64(math.Round(frac*float64(f)))
		last, b = u, rest
	}
	c.ms = int32(min(ms, maxMS))
	return c, last != 0 && ms > 0 && ms < maxMS
}

// hourMarks reads an hour and 59 seconds with the mark of minutes behind the hour too: 1'00'59".
func hourMarks(b []byte) (ms int32, ok bool) {
	i := bytes.IndexByte(b, '\'')
	if i < 1 || i > 2 || len(b) < i+6 || b[i+3] != '\'' {
		return 0, false
	}
	if end := string(b[i+6:]); end != "" && end != "''" && end != `"` {
		return 0, false
	}
	two := func(b []byte) int32 {
		n := int32(0)
		for _, c := range b {
			if c < '0' || c > '9' {
				return 1000
			}
			n = 10*n + int32(c-'0')
		}
		return n
	}
	h, m, s := two(b[:i]), two(b[i+1:i+3]), two(b[i+4:i+6])
	return 1000 * (3600*h + 60*m + s), h > 0 && h < 24 && m < 60 && s < 60
}

// hourColonMarks reads an hour and a colon before minutes and seconds with their marks: 00:18'53"000.
func hourColonMarks(b []byte) (ms int32, ok bool) {
	i := bytes.IndexByte(b, ':')
	if i < 1 || i > 2 || !allDigits(b[:i]) || atoi(b[:i]) > 9 || len(b) < i+7 || b[i+3] != '\'' || b[i+6] != '"' && b[i+6] != '\'' {
		return 0, false // 18:53'20'' may be hundredths
	}
	c, ok := lexUnits(b[i+1:])
	return 3600000*int32(atoi(b[:i])) + c.ms, ok && c.shape == exactClock && c.ms < 3600000
}

// unitPrefix is the run of letters or of marks at the start of b.
func unitPrefix(b []byte) []byte {
	i := 0
	if i < len(b) && (b[i] == '\'' || b[i] == '"') {
		for i < len(b) && b[i] == b[0] {
			i++
		}
		return b[:i]
	}
	for i < len(b) && (b[i] >= 'a' && b[i] <= 'z' || b[i] >= utf8.RuneSelf) {
		i++
	}
	if i > 0 && i < len(b) && b[i] == '.' {
		i++
	}
	return b[:i]
}

// lexDateTime reads a running time that a spreadsheet turned into a moment:
// 1900-01-01T00:31:00 is one day and 31 minutes, 24:31 h (both date systems of
// ECMA-376 Part 1, 18.17.4), unless the column shows that the day is only a
// stamp; and 12:24:31 am is 0:24:31.
func lexDateTime(b []byte) (clockCell, bool) {
	if len(b) >= 15 && b[0] >= '0' && b[0] <= '9' && bytes.IndexByte(b, ':') > 0 {
		if days, rest, ok := unit.ZeroDay(string(b)); ok {
			c, ok := lexDateTime([]byte(rest)) // am or pm
			if !ok {
				ok = lexColons([]byte(rest), &c) && c.shape == colon3
			}
			c.days = int8(days)
			c.eve = bytes.HasPrefix(b, []byte("31")) && bytes.Contains(b, []byte("1899")) || bytes.HasPrefix(b, []byte("12/31/1899"))
			return c, ok
		}
	}
	if len(b) >= 16 && b[4] == '-' && b[7] == '-' && (b[10] == 't' || b[10] == ' ') {
		days := int32(0)
		switch string(b[:8]) {
		default:
			// The day of the run with the running time behind it: an hour of the
			// night at which nobody runs.
			if len(b) < 19 || b[11] != '0' || b[12] > '2' || b[12] == '0' && b[14] == '0' {
				return clockCell{}, false
			}
		case "1899-12-":
		case "1900-01-", "1904-01-":
			days = int32(b[8]-'0')*10 + int32(b[9]-'0')
			if b[3] == '4' {
				days--
			}
		}
		var c clockCell
		if !lexColons(bytes.TrimRight(b[11:], "z"), &c) || c.shape != colon3 || days < 0 || days > 4 {
			return c, false
		}
		c.days = int8(days)
		c.eve = string(b[:10]) == "1899-12-31"
		return c, true
	}
	half := int32(-1)
	for i, suffix := range []string{"am", "a.m.", "pm", "p.m."} {
		if bytes.HasSuffix(b, []byte(suffix)) {
			half = int32(i / 2)
			b = bytes.TrimRight(b[:len(b)-len(suffix)], " ")
			break
		}
	}
	if half < 0 {
		return clockCell{}, false
	}
	var c clockCell
	if !lexColons(b, &c) || c.shape != colon3 || c.a < 1 || c.a > 12 {
		return c, false
	}
	c.a = c.a%12 + 12*half
	return c, true
}

// lexRepaired reads times with something in the way that a person would look
// past: 24;31, 24 : 31, 24:3O, 24:31*, 24:31 (PB), 24 31, 24-31, 24:31 min,
// 1.02.15.
func lexRepaired(b []byte) clockCell {
	if i := bytes.IndexByte(b, '('); i > 0 {
		c := lexRepaired(bytes.TrimRight(b[:i], " "))
		var other clockCell
		said := bytes.Trim(b[i:], "() !.?")
		c.second = c.shape != notClock && lexColons(said, &other)
		c.words = c.shape != notClock && len(said) > 0 && !timeRemarks[string(said)]
		return c
	}
	b = bytes.TrimRight(b, "*#!+)~ .†‡§^")
	if bare := bytes.Trim(b, ":;.,_!|'\"`´"); bytes.IndexByte(bare, ':') > 0 {
		b = bare // :29:47, 29:47: and 29:47'
	}
	for _, mark := range []string{" 1st timer", " first timer", " 1st time"} {
		b = bytes.TrimSuffix(b, []byte(mark))
	}
	var room [24]byte
	out := room[:0]
	repaired, hours := false, false
	for i := 0; i < len(b); i++ {
		ch := b[i]
		near := i > 0 && (b[i-1] >= '0' && b[i-1] <= '9' || b[i-1] == ':')
		switch {
		case len(out) == cap(out):
			return clockCell{}
		case ch >= '0' && ch <= '9' || ch == ':' || ch == '.' || ch == ',':
			if (ch == ':' || ch == '.') && len(out) > 0 && out[len(out)-1] == ch {
				out[len(out)-1], repaired = ':', true
				continue
			}
			out = append(out, ch)
		case ch == ';':
			out, repaired = append(out, ':'), true
		case ch == 'o' && near:
			out, repaired = append(out, '0'), true
		case (ch == 'l' || ch == 'i') && near:
			out, repaired = append(out, '1'), true
		case ch == '-' || ch == '/' || ch == '_':
			if !near || i+1 == len(b) {
				return clockCell{}
			}
			out, repaired = append(out, ':'), true
		case ch == ' ':
			prev, next := out[max(0, len(out)-1):], b[i+1]
			switch {
			case len(prev) == 0 || prev[0] == ':' || prev[0] == '.' || next == ':' || next == '.' || next == ';' || next == ',':
			case next >= '0' && next <= '9':
				out, repaired = append(out, ':'), true
			default: // a word follows
				w := bytes.Trim(b[i+1:], ". ")
				switch u := unitWords[string(w)]; {
				case u == 'h':
					hours = true
				case u != 0 || timeRemarks[string(w)]:
				default:
					return clockCell{}
				}
				i = len(b)
			}
		case near && timeRemarks[string(b[i:])]: // 29:47pb
			i = len(b)
		case ch == 'h' && i > 0 && b[i-1] >= '0' && b[i-1] <= '9' && i+1 < len(b) && b[i+1] >= '0' && b[i+1] <= '9' && bytes.IndexByte(b[i+1:], ':') > 0:
			out = append(out, ':') // 1h02:57
		case ch == 'h' || ch == 'm' || ch == 's':
			u := unitWords[string(bytes.Trim(b[i:], ". "))]
			if u == 0 {
				return clockCell{}
			}
			hours = u == 'h'
			i = len(b)
		default:
			return clockCell{}
		}
	}
	var c clockCell
	if lexColons(out, &c) {
		c.repaired, c.hours = repaired, hours && c.shape == colon2
		return c
	}
	if c, ok := lexCommaFraction(out); ok {
		c.repaired = repaired
		return c
	}
	if c, ok := lexDots(out); ok {
		c.repaired = repaired
		return c
	}
	if c, ok := lexNumber(out); ok && !repaired {
		return c
	}
	return clockCell{}
}

// timeRemarks may follow a time without changing it.
var timeRemarks = wordSet(`dead|flat|exactly|pb|sb|nb|yb|rp|pbt|wr|ar|cb|cr|nr|pr|new|debut|record|new pb|gun|chip|net|p|q|uhr|ss|mm:ss|min:sek|min:sec`)

// lexCommaFraction reads a time whose seconds have a decimal comma behind them and dots
// among the marks before, as Swiss lists print it: 56.17,6 and 1:08.40,8. The comma says
// that the dots are none.
func lexCommaFraction(b []byte) (clockCell, bool) {
	i := bytes.IndexByte(b, ',')
	if i < 4 || bytes.IndexByte(b[:i], '.') < 0 {
		return clockCell{}, false
	}
	var room [24]byte
	whole := append(room[:0], b[:i]...)
	for k, ch := range whole {
		if ch == '.' {
			whole[k] = ':'
		}
	}
	var c clockCell
	ms, ok := fractionMS(b[i+1:])
	if !ok || len(b)-i > 4 || !lexColons(whole, &c) || c.bDigits != 2 || c.shape != colon2 && c.shape != colon3 {
		return clockCell{}, false
	}
	c.fracMS, c.point = ms, true
	return c, true
}

// lexDots reads three numbers between dots: 1.02.15 or 24.31.5.
func lexDots(b []byte) (clockCell, bool) {
	if bytes.Count(b, []byte(".")) != 2 {
		return clockCell{}, false
	}
	c := clockCell{shape: dots3}
	for i, p := range bytes.Split(b, []byte(".")) {
		v, err := strconv.Atoi(string(p))
		if err != nil || len(p) > 3 {
			return c, false
		}
		switch i {
		case 0:
			c.a = int32(v)
		case 1:
			c.b = int32(v)
		default:
			c.c, c.bDigits = int32(v), int8(len(p))
			c.fracMS, _ = fractionMS(p)
		}
	}
	return c, true
}
