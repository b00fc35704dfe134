package record

import (
	"bytes"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// groupKind is the form in which an age group was printed.
type groupKind uint8

const (
	noGroup     groupKind = iota
	plainNumber           // 40: an age, a group's first age or a two-digit year
	between               // 40-44, JM11-14
	start                 // M40: from 40 to the next group of the column
	open                  // 80+, over 40
	under                 // U17
	upTo                  // 10 and under
	senior
	junior  // without an age
	veteran // without an age
	bornIn  // 1980-1984, 1985
	special // not an age group: walkers, wheelchairs, guests
)

// group is one age-group cell as printed; lo and hi are its numbers.
type group struct {
	kind   groupKind
	lo, hi int16
	sex    sexMark
	// vMark says that a lone V stood before the number: veteran, or vrouwen.
	vMark bool
	// lone says that a single sex letter stood there (M40), which makes V40
	// beside it a woman's group.
	lone bool
	// masters says that an M stood beside another mark of the sex: M1F, Femmes M3.
	masters bool
	young   bool // a word or letter for juniors stood there: J10 is 10 and under
}

// groupWord says what a word inside a group cell does.
type groupWord uint8

const (
	filler groupWord = iota + 1
	seniorWord
	juniorWord
	veteranWord
	underWord
	overWord
	andUnder
	andOver
	toWord
	bornWord
	belowWord  // under, behind the number: 40歳未満
	decadeWord // the ten years from the number on: 30代
)

var groupWords = wordTable(map[string]groupWord{
	`nei|gadiem|god|中学|中学生|高校|高校生|小学|小学生|大学|大学生|壮年|青年|von|entre|between|dos|aos|kozott|vuotiaat|vuotiaiden|er|in|his|her|their|early|mid|late|let|lety|ev|evig|των|і|й|ou|rokow|eves|evesek|vuotta|aastat|aastased|metu|gadi|gadu|yas|ani|lata|rok|godina|godine|ara|歳|才|岁|歲|세|組|组|의|の部|の|部|부|区分|クラス|一般|일반|בני|גילאי|שנים|سنة|سنوات|عام|فئة|yl|aikuiset|taskmenn|felnott|r|г|л|р|лет|года|годы|год|років|роки|годин|ετων|ετη|и|та|группа|група|категория|категорія|κατηγορια|age|aged|ages|group|grp|cat|category|categorie|klasse|class|ak|altersklasse|yrs|yr|years|year|y|yo|old|up|and|und|et|og|och|en|ja|oraz|es|si|ve|ir|un|rokov|roku|open|overall|all|jahre|ans|anos|anni|jaar|lat|ar|aar|alle|s|the|de|ag|gruppo|categoria|kategoria|runner|runners`: filler,
	`sen|snr|senior|seniors|seniorer|seniorinnen|senioren|seniorin|seniores|aktive|hauptklasse|hk|elite|adult|adults|absolut|absoluto|absoluta|seniorid|seniorit|seniorai|seniori|seniorky|seniorzy|seniorki|seniorke|assoluti|assoluta|assoluto|ass|voksen|erwachsene`: seniorWord,
	`pup|pups|pupil|pupils|pupille|pupilles|pupillen|jun|jnr|jr|juniori|juniorky|juniorka|juniorzy|juniorki|juniorke|junior|juniors|juniorinnen|junioren|juniores|juniorer|jugend|juvenil|juv|youth|kid|kids|kinder|child|children|schuler|schulerinnen|enfant|enfants|bambini|cadet|cadets|cadette|cadettes|cadete|minime|minimes|benjamin|benjamins|benjamine|benjamines|poussin|poussins|poussine|poussines|j|dorost|zactvo|zaci|ziaci|infantil|infantis|iniciados|juvenis|alevin|alevi|juniorid|juniorit|juniorai|nuoret|noored|jauniesi|jaunimas|mlodziez|mladez|mladinci|mladinke|kadeti|kadetkinje|ungdom|ungdommer|gencler|gazteak|ieuenctid|εφηβοι|νεοι|младежи|ifjusagi|юниоры|юниорки|юноши|девушки|юніори`: juniorWord,
	`super|v|vet|vets|veteran|veterans|veteranen|veteraner|veterano|veterana|veteranos|mas|mast|mst|master|masters|maitres|maestri|superveteran|supervet|sv|mstr|ветераны|ветерани|veterani|veteranke|veteranky|vetera|veteranas|veteranes|veterane|veterani|veteraan|veteraanid|veteraanit|weteran|weterani|weteranki|veteranai|veteranes|beteranoak|feteran|feteraniaid|βετερανοι|ветеран|ветеранки|szenior`:                                                                                                                                                                                                                                                                                                         veteranWord,
	`u|under|unter|sub|moins|alla|ponizej|ispod|sotto|sota|κατω|jaunesni|jaunesnes|jaunaki|onder|tot|pod|menores|menos|below|<|less|than|younger|junger|jonger|yngre|mladsi|mladsie|mlodszy|mlodsze|nuoremmat|nooremad|fiatalabb|jeunes|meno`:                                                                                                                                                                                                                                                                                                                                                                                                                                                                          underWord,
	`mayores|mayor|preko|more|vyresni|vyresnes|vecaki|boven|folott|o|over|uber|ueber|ab|dès|des|vanaf|desde|fra|fran|alkaen|alates|nuo|plus|from|older|alter|aelter|ouder|aldre|eldre|adelante|mais|derover|yli|преко|starsi|starsie|starszy|starsze|starszych|vanhemmat|vanemad|vice|viac|wiecej|idosebb|oltre|mas de|>|ue|nad|iznad|felett|peste|ustu|ule|virs|virsuj|powyzej|eldri|од|старше|старші|понад|над|ανω`:                                                                                                                                                                                                                                                                                                  overWord,
	`以上|이상|ומעלה|فما فوق|فأكثر`: overWord,
	`以下|이하|младше|молодше`:      andUnder,
	`未満|未满|미만|alatt|alti`:       belowWord,
	`代|대`:                       decadeWord,
	`to|lidz|iki|bis|thru|through|till|til|a|au|tm|do|az|kuni|al|jusqu|hasta|fino|ate|до|έως|εως`: toWord,
	`or|later|earlier|before|after|since|onwards|upwards|above`:                                   filler,
	`born|jg|jahrgang|geb|ne|nee|jahrg|yob|nato|nata`:                                             bornWord,
})

// sexLetters may stand for the sex inside a word, beside a class: msen, senw.
var sexLetters = []byte("mwflhdkx")

// loneLetters may stand for a sex by themselves.
var loneLetters = []byte("mwfhdklgbnptxze")

// frenchBands are the French classes by two letters, printed with the sex
// behind them (SEM, CAF); first and last age (from memory of the French
// athletics classes; they go by year of birth).
var frenchBands = map[string][2]int16{"ea": {7, 9}, "po": {10, 11}, "be": {12, 13}, "mi": {14, 15}, "ca": {16, 17}, "ju": {18, 19}, "es": {20, 22}, "se": {23, 34}}

// agesInWords are decades of ages in a word.
var agesInWords = map[string][2]int16{"teens": {13, 19}, "teen": {13, 19}, "teenager": {13, 19}, "teenagers": {13, 19}, "twenties": {20, 29}, "thirties": {30, 39}, "forties": {40, 49}, "fifties": {50, 59}, "sixties": {60, 69}, "seventies": {70, 79}, "eighties": {80, 89}}

// bornIsShort is a year behind the first letter of a word for born, with the full stop that shortens it, or behind the
// star that stands for it: b. 1966, f. 1966, *1966. A letter without a full stop may be a sex.
var bornIsShort = regexp.MustCompile(`^(?:[bfnsg]\. ?|\* ?)((?:19|20)\d\d)$`)

// parseGroup reads one folded cell of a group column: M40, MV40, V40, VM40,
// M40-44, 40-44, Vet 40, 40+, FV35, SM, Sen W, U17, JM10, JW11-14, M U20, H40,
// MHK, WJA, 1980-1984. Age ranges are left as printed; the column settles what
// they mean.
func parseGroup(b []byte) group {
	if string(b) == "n/a" {
		return group{} // N/A says no sex
	}
	b = bytes.TrimSuffix(bytes.TrimSuffix(b, []byte(" na")), []byte(" null")) // "F NA": no age beside the sex
	b = bytes.ReplaceAll(bytes.ReplaceAll(b, []byte("t.o.m."), []byte("tm ")), []byte("t/m"), []byte("tm "))
	b = minusOf(b)
	b = withoutRank(b)
	b = withoutRun(b)
	if m := letteredClass.FindSubmatch(b); m != nil {
		b = m[1] // B - muži 40-49 let
	}
	if m := bornIsShort.FindSubmatch(b); m != nil {
		y := int16(atoi(m[1]))
		return group{kind: bornIn, lo: y, hi: y} // b. 1966, and no boy
	}
	g := group{}
	if n, ok := ageWithUnit(b); ok && n > 0 && (bytes.HasSuffix(b, []byte("olds")) || bytes.IndexByte(b, ' ') > 0 && hasDigit(string(b[bytes.IndexByte(b, ' '):]))) {
		return group{kind: between, lo: int16(n), hi: int16(n)} // 11-year-olds, 43y 5m
	}
	if len(b) > 1 && len(b) <= 3 && b[0] == '-' && allDigits(b[1:]) && atoi(b[1:]) >= 6 && atoi(b[1:]) <= 23 {
		b = append([]byte("<"), b[1:]...) // -18: under 18
	}
	reaches := false // a sign says "and under"
	if bytes.ContainsAny(b, "≤≥<") {
		reaches = bytes.Contains(b, []byte("≤")) || bytes.Contains(b, []byte("<="))
		b = bytes.ReplaceAll(bytes.ReplaceAll(b, []byte("≥"), []byte(">")), []byte("≤"), nil)
		b = bytes.ReplaceAll(b, []byte("<="), nil)
	}
	var nums [4]int
	var digits [4]int
	n := 0
	var plus, lt, gt, andU, andO, born, until, schoolYear, schoolClass, ofClass, decade bool
	unknown := 0 // words not understood
	french := bytes.Contains(b, []byte("homme")) || bytes.Contains(b, []byte("femme"))
	var seniorSeen, juniorSeen, vetSeen bool
	letterClass := byte(0) // A, B, C, D of German youth classes
	setSex := func(m sexMark) {
		if g.sex == noMark || g.sex.open() && !m.open() {
			g.sex = m
		}
	}
	for i := 0; i < len(b); {
		ch := b[i]
		switch {
		case ch >= '0' && ch <= '9':
			j, v := i, 0
			for ; j < len(b) && b[j] >= '0' && b[j] <= '9'; j++ {
				if j-i < 5 {
					v = v*10 + int(b[j]-'0')
				}
			}
			if n == len(nums) {
				return group{}
			}
			nums[n], digits[n] = v, j-i
			n++
			i = j
		case ch >= 'a' && ch <= 'z':
			j := i
			for j < len(b) && (b[j] >= 'a' && b[j] <= 'z' || b[j] == '\'') {
				j++
			}
			w := bytes.ReplaceAll(b[i:j], []byte("'"), nil)
			i = j
			if m, ok := sexWordMarks[string(w)]; ok && m != unsaid {
				setSex(m)
				continue
			}
			if band, ok := frenchBands[string(w[:min(2, len(w))])]; ok && len(w) == 3 && bytes.IndexByte([]byte("mfh"), w[2]) >= 0 {
				setSex(sexMark(w[2]))
				g.kind, g.lo, g.hi = between, band[0], band[1]
				continue
			}
			if band, ok := frenchBands[string(w)]; ok && n == 0 && len(b[j:]) == 2 && bytes.IndexByte([]byte(" -/"), b[j]) >= 0 && bytes.IndexByte([]byte("mfh"), b[j+1]) >= 0 {
				g.kind, g.lo, g.hi = between, band[0], band[1] // SE F
				continue
			}
			if band, ok := agesInWords[string(w)]; ok && n == 0 && g.kind == noGroup {
				g.kind, g.lo, g.hi = between, band[0], band[1]
				continue
			}
			if len(w) == 2 && w[0] == 'p' && (w[1] == 'm' || w[1] == 'f') {
				// Italian promesse, 20 to 22 by year of birth (from memory).
				setSex(sexMark(w[1]))
				g.kind, g.lo, g.hi = between, 20, 22
				continue
			}
			if len(w) == 2 && w[0] == 'm' && (w[1] == 'm' || w[1] == 'f' || w[1] == 'w') && n == 0 && mastersAge(b[j:]) {
				setSex(sexMark(w[1])) // MM40, MF45: masters
				vetSeen = true
				continue
			}
			if len(w) == 1 && w[0] == 'v' && vetSeen && !g.vMark && n == 0 && numberNext(b[j:]) {
				setSex('v') // Masters V35 beside Masters M40: vrouwen
				g.lone = true
				continue
			}
			if len(w) == 1 && w[0] == 'm' && n > 0 && g.vMark && j < len(b) && b[j] == '.' {
				continue // V 40-49 m.: metai, years
			}
			if string(w) == "mas" && n == 0 && bytes.HasPrefix(b[j:], []byte(" de ")) {
				gt = true // más de 40
				continue
			}
			if string(w) == "mas" && n > 0 {
				andO = true // 60 años y más
				continue
			}
			if string(w) == "i" && n == 0 && lt && numberNext(b[j:]) {
				continue // sotto i 18
			}
			if string(w) == "no" && n == 0 && g.sex == noMark && numberNext(b[j:]) {
				setSex(sureW) // nő 40-49
				continue
			}
			if string(w) == "alle" && n == 0 && numberNext(b[j:]) {
				lt = true // alle 40 v
				continue
			}
			if len(w) == 1 && w[0] != 'v' && w[0] != 'j' && w[0] != 'u' && w[0] != 'o' && w[0] != 's' && w[0] != 'a' && w[0] != 'y' {
				if n == 1 && g.sex != noMark && (w[0] >= 'a' && w[0] <= 'd') {
					letterClass = w[0]
					continue
				}
				if vetSeen && !g.vMark && (w[0] <= 'c' || moreLetters(b[j:])) {
					continue // Veterano B, Vet. E M: a part of the veterans
				}
				if n > 0 && (w[0] == 'i' || w[0] == 'e') && moreLetters(b[j:]) {
					continue // "and" of 70 lat i więcej
				}
				if bytes.IndexByte(loneLetters, w[0]) < 0 {
					return group{}
				}
				if n == 1 && nums[0] <= 10 && g.sex == 'm' {
					g.sex, g.masters = noMark, true // M1F: M is for masters, F the sex
				}
				g.masters = g.masters || w[0] == 'm' && g.sex != noMark && n == 0
				setSex(sexMark(w[0]))
				g.lone = true
				if w[0] == 'x' {
					g.sex = sureX
				}
				continue
			}
			if s := string(w); (s == "espoir" || s == "espoirs") && n == 0 {
				band := frenchBands["es"]
				g.kind, g.lo, g.hi = between, band[0], band[1]
				continue
			}
			gw, ok := groupWords[string(w)]
			if !ok {
				var m sexMark
				m, gw, letterClass, ok = splitGroupWord(w, letterClass)
				if !ok {
					unknown++
					continue
				}
				if m != noMark {
					setSex(m)
				}
			}
			if womenOf[string(w)] {
				setSex(sureW)
			}
			switch gw {
			case seniorWord:
				seniorSeen = true
			case juniorWord:
				juniorSeen = true
			case veteranWord:
				vetSeen = true
				g.vMark = g.vMark || len(w) == 1
				switch {
				case !french || n > 0 || !smallNumberNext(b[j:]):
				case w[0] == 'm':
					g.masters = true // Masters 1 Hommes
				default:
					g.vMark = true // Vétéran 2 Femme
				}
			case underWord:
				if n > 0 {
					andU = true // until a word follows: 40 u. älter
				} else {
					lt = true
				}
			case overWord:
				if n > 0 {
					andO, andU = true, false
				} else {
					gt = true
				}
			case belowWord: // 20 alatt, 20 altı; 19 ve altı
				if andU = bytes.Contains(b[:j], []byte(" ve ")); !andU {
					lt = true
				}
			case bornWord:
				born = true
			case toWord:
				until = until || n == 0 && len(w) > 1 && string(w) != "au" && string(w) != "al"
			case filler:
				schoolYear = schoolYear || n == 0 && (string(w) == "year" || string(w) == "yr" || string(w) == "y")
				ofClass = ofClass || n == 0 && (string(w) == "ak" || string(w) == "altersklasse")
				schoolClass = schoolClass || n == 0 && (string(w) == "klasse" || string(w) == "class")
				decade = decade || n > 0 && string(w) == "er" // 40er
				if len(w) == 1 && w[0] == 's' {
					seniorSeen = seniorSeen || n == 0 // "S M"; after a number it is "40s"
					decade = decade || n > 0
				}
			}
		case ch >= utf8.RuneSelf: // a word of another script
			j := i
			for j < len(b) && b[j] >= utf8.RuneSelf {
				j++
			}
			w := b[i:j]
			i = j
			for len(w) > 0 {
				word := w
				m, gw := wordOfScript(w)
				for m == noMark && gw == 0 { // no spaces stand between the words of East Asia
					_, size := utf8.DecodeLastRune(word)
					if word = word[:len(word)-size]; len(word) == 0 {
						break
					}
					m, gw = wordOfScript(word)
				}
				if len(word) == 0 || len(word) < len(w) && !eastAsian(w) {
					if g.sex != noMark && n == 0 && eastAsian(w) {
						return group{sex: g.sex} // 男子青年组
					}
					unknown++
					break
				}
				w = w[len(word):]
				if m != noMark {
					setSex(m)
					g.lone = g.lone || utf8.RuneCount(word) == 1
					continue
				}
				switch {
				case gw == overWord && n > 0:
					andO = true
				case gw == overWord:
					gt = true
				case gw == andUnder, gw == underWord && n > 0:
					andU = true
				case gw == underWord, gw == belowWord:
					lt = true
				case gw == decadeWord:
					decade = true
				case gw == toWord && n == 0:
					until = true
				case gw == juniorWord:
					juniorSeen = true
				case gw == veteranWord:
					vetSeen = true
				case gw == bornWord:
					born = true
				}
			}
		case ch == '-' && n == 0 && i > 0 && b[i-1] == ' ' && underSign(b[i+1:]):
			lt = true // Hommes -20 ans
			i++
		case ch == '-' || ch == '_' || ch == '/' || ch == '~':
			i++
		case ch == '#' && n > 0:
			i = len(b) // M45 #2: the place in the group
		case ch == '+':
			plus = true
			i++
		case ch == '<':
			lt = true
			i++
		case ch == '>':
			gt = true
			i++
		case ch == ' ' || ch == '.' || ch == ',' || ch == '(' || ch == ')' || ch == ':' || ch == '\'' || ch == '=' || ch == ';' || ch == '&':
			i++
		default:
			return group{}
		}
	}
	if unknown > 0 {
		return sexAlone(b, g, n+unknown, letterClass)
	}
	if t := bytes.TrimRight(b, " "); n == 1 && len(t) > 2 && t[len(t)-1] == '-' && t[len(t)-2] == ' ' {
		plus = true // 60 år –
	}
	g.young = juniorSeen
	year := func(v, d int) bool { return d == 4 && v >= 1900 && v < 2100 }
	if schoolYear && n == 1 && nums[0] < 20 {
		return group{sex: sureOf(g.sex)} // Year 6 is a class of a school
	}
	if n == 1 && digits[0] < 3 && (schoolClass && nums[0] <= lastSchoolYear || frenchSchoolYear(b)) {
		return group{sex: sureOf(g.sex)} // Klasse 7, 6e A
	}
	// 4044 without a dash.
	if v := nums[0]; n == 1 && digits[0] == 4 && v/100 < v%100 && (v < 1900 || v >= 2100 || g.sex != noMark && v%5 == 4 && (v%100-v/100 <= 10 || v >= 2030)) {
		nums[0], nums[1], n = nums[0]/100, nums[0]%100, 2
	}
	// "and over", "u. älter" after the number.
	if n == 1 {
		andO = andO || bytes.HasSuffix(b, []byte(" up")) || bytes.Contains(b, []byte("and over")) || bytes.Contains(b, []byte("alter")) || bytes.Contains(b, []byte("et plus")) || bytes.Contains(b, []byte("older")) || bytes.Contains(b, []byte("above")) || bytes.Contains(b, []byte("upwards")) || bytes.Contains(b, []byte("onwards"))
		andU = andU || reaches || bytes.Contains(b, []byte("and under")) || bytes.Contains(b, []byte("junger")) || bytes.Contains(b, []byte("younger"))
	}
	if n == 2 && year(nums[0], digits[0]) && digits[1] == 2 && nums[0]%100 < nums[1] {
		nums[1], digits[1] = nums[0]/100*100+nums[1], 4 // 1975-79
	}
	if n == 2 && nums[1] < nums[0] && nums[0] >= 20 && (g.sex != noMark || vetSeen) {
		n = 1 // M45/1, M45 (2): the place in the group
	}
	switch {
	case n == 0 && g.kind == between:
	case n == 2 && year(nums[0], digits[0]) && year(nums[1], digits[1]):
		g.kind, g.lo, g.hi = bornIn, int16(min(nums[0], nums[1])), int16(max(nums[0], nums[1]))
	case n == 1 && year(nums[0], digits[0]):
		g.kind, g.lo, g.hi = bornIn, int16(nums[0]), int16(nums[0])
		switch says := func(w string) bool { return bytes.Contains(b, []byte(w)) }; {
		case lt || says("before"): // born before 1970, <1970; or before
			if g.lo = earliestBirth; !says("or before") && !says("and before") {
				g.hi--
			}
		case says("later") || says("since") || says("onwards") || says("after") || says(">"):
			if g.hi = latestBirthYear; (says("after") || says(">")) && !says("or after") && !says("and after") {
				g.lo++
			}
		case andO || plus || says("earlier"): // born in 1965 or before
			g.lo = earliestBirth
		case andU:
			g.hi = latestBirthYear
		}
	case n == 2 && nums[0] <= nums[1] && nums[1] < 120:
		g.kind, g.lo, g.hi = between, int16(nums[0]), int16(nums[1])
		if nums[1] >= 99 && nums[0] >= 18 {
			g.kind = open
		}
	case n == 1 && nums[0] < 120:
		v := int16(nums[0])
		g.lo, g.hi = v, v
		switch {
		case decade && v%10 == 0 && !born && !plus && !gt && !andO && !andU && !until && !lt: // not "Over 40s"
			g.kind, g.hi = between, v+9
		case born:
			g.kind = bornIn
		case plus || gt || andO:
			g.kind = open
		case andU || until:
			g.kind = upTo
		case lt:
			g.kind = under
		case g.sex != noMark || vetSeen || juniorSeen || seniorSeen || ofClass && v >= 20 && v%5 == 0:
			g.kind = start
		default:
			g.kind = plainNumber
		}
	case n > 0:
		return group{}
	case letterClass != 0:
		// German youth classes by letter: A 18-19, B 16-17, C 14-15, D 12-13
		// (from memory of the German athletics rules before the U names).
		lo := 18 - 2*int16(letterClass-'a')
		g.kind, g.lo, g.hi = between, lo, lo+1
	case juniorSeen:
		g.kind = junior
	case vetSeen && !(g.vMark && seniorSeen): // V sen: Vrouwen senioren
		g.kind = veteran
	case seniorSeen:
		g.kind = senior
	}
	return g
}

// letteredClass is a class with a letter of its own before its words.
var letteredClass = regexp.MustCompile(`^[a-z] ?(?: [-–] |: ?|\. |\) )([a-z].{3,})$`)

// sureOf is a mark of a sex in words; a letter is none.
func sureOf(m sexMark) sexMark {
	if m.open() {
		return noMark
	}
	return m
}

// minusOf spells out the signs of "- de 20 ans" and "+ de 40 ans": moins and plus.
func minusOf(b []byte) []byte {
	at := bytes.Index(b, []byte(" de "))
	if at < 1 || b[at-1] != '-' && b[at-1] != '+' || at > 1 && b[at-2] != ' ' {
		return b
	}
	word := "plus"
	if b[at-1] == '-' {
		word = "moins"
	}
	return append(append(bytes.Clone(b[:at-1]), word...), b[at:]...)
}

// womenOf are the words for classes that are said of women and girls only.
var womenOf = wordSet(`seniorinnen|seniorin|juniorinnen|juniorin|veteraninnen|schulerinnen|juniorky|juniorke|juniorka|juniorki|veteranky|veteranke|seniorky|seniorke|юниорки|juniores femeninas|poussines|benjamines|cadettes|cadetas|veterana|veteranas|weteranki|ветеранки|alevina|alevinas`)

// menOf are the same classes in the words for men and boys, where those for women stand
// beside them, or for everybody.
var menOf = wordSet(`senioren|junioren|veteranen|schuler|juniori|juniorzy|seniori|veterani|юниоры|juniors|poussins|benjamins|cadets|cadetes|veterano|veteranos|weterani|ветераны`)

// underSign says whether a minus before these bytes stands for "under": an age up to 23 follows, and no second one.
func underSign(b []byte) bool {
	digits := bytes.TrimLeft(b, "0123456789")
	n := len(b) - len(digits)
	return n > 0 && n <= 2 && atoi(b[:n]) >= 6 && atoi(b[:n]) <= 23 && !bytes.ContainsAny(digits, "0123456789")
}

// numberNext says whether a number follows.
func numberNext(b []byte) bool {
	b = bytes.TrimLeft(b, " ")
	return len(b) > 0 && b[0] >= '0' && b[0] <= '9'
}

// smallNumberNext says whether a number of one figure follows.
func smallNumberNext(b []byte) bool {
	b = bytes.TrimLeft(b, " ")
	return len(b) > 0 && b[0] >= '0' && b[0] <= '9' && (len(b) == 1 || b[1] < '0' || b[1] > '9')
}

// moreLetters says whether a word follows.
func moreLetters(b []byte) bool {
	b = bytes.TrimLeft(b, " .,-")
	return len(b) > 0 && (b[0] >= 'a' && b[0] <= 'z' || b[0] >= utf8.RuneSelf)
}

// sexAlone keeps the sex of a cell that says nothing else that is understood, where it
// begins or ends with a word for one: Herrar Motion, Elite Women.
func sexAlone(b []byte, g group, unread int, letterClass byte) group {
	words := bytes.Fields(b)
	if unread > 2 || letterClass != 0 || len(words) < 2 || len(words) > 3 || g.kind != noGroup {
		return group{}
	}
	for _, w := range [...][]byte{words[0], words[len(words)-1]} {
		if m, ok := sexWordMarks[string(bytes.Trim(w, ".,:-()"))]; ok && m != unsaid && utf8.RuneCount(w) > 2 {
			return group{sex: m}
		}
	}
	return group{}
}

// wordOfScript looks a word up that is not of the Latin alphabet.
func wordOfScript(w []byte) (sexMark, groupWord) {
	if m, ok := sexWordMarks[string(w)]; ok && m != unsaid {
		return m, 0
	}
	return noMark, groupWords[string(w)]
}

// eastAsian says whether a text begins in Han, Kana or Hangul.
func eastAsian(w []byte) bool {
	r, _ := utf8.DecodeRune(w)
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul)
}

// Years of birth that bound nothing.
const earliestBirth, latestBirthYear = 1900, 2099

// mastersAge says whether a masters group's first age follows.
func mastersAge(b []byte) bool {
	b = bytes.TrimLeft(b, " -")
	return len(b) >= 2 && b[0] >= '3' && b[0] <= '9' && (b[1] == '0' || b[1] == '5') && (len(b) == 2 || b[2] < '0' || b[2] > '9')
}

// withoutRank takes the place in the group off its front: "3. M40".
func withoutRank(b []byte) []byte {
	i := 0
	for i < len(b) && b[i] >= '0' && b[i] <= '9' {
		i++
	}
	if i == 0 || i > 3 || i+2 >= len(b) || b[i] != '.' || b[i+1] != ' ' || b[i+2] >= '0' && b[i+2] <= '9' {
		return b
	}
	return b[i+2:]
}

// withoutRun takes the distance off a group that is printed behind or before it: 10-D50,
// 21 km-M40, F66 | 5 km.
func withoutRun(b []byte) []byte {
	if i := bytes.IndexByte(b, '-'); i >= 1 && i <= 5 && i+3 < len(b) && b[0] >= '1' && b[0] <= '9' && b[i+1] >= 'a' && b[i+1] <= 'z' && bytes.IndexByte(b[i+1:], '-') < 0 {
		last := b[len(b)-1] // a number stands behind the letters, unlike in 40-F
		if unit := string(bytes.TrimLeft(b[:i], "0123456789")); last >= '0' && last <= '9' && (unit == "" || unit == "k" || unit == "km" || unit == " k" || unit == " km") {
			return b[i+1:]
		}
	}
	if first, rest, ok := bytes.Cut(b, []byte(" ")); ok && isDistance(first) && sexWordMarks[string(rest)] > unsaid {
		return rest // 5k male
	}
	if i := bytes.IndexByte(b, ' '); i > 0 && isDistance(bytes.TrimSpace(b[i+1:])) && sexWordMarks[string(b[:i])] > unsaid {
		return b[:i] // women 5 km
	}
	i := bytes.LastIndexAny(b, "|/-,")
	if i < 1 || i+2 > len(b) {
		return b
	}
	front, back := bytes.TrimSpace(b[:i]), bytes.TrimSpace(b[i+1:])
	switch {
	case b[i] == '-' && allDigits(front):
		return b // 40-49 K: kvinder, kobiety
	case isDistance(back):
		return front
	case isDistance(front):
		return back
	}
	return b
}

// isDistance recognises 5 km, 5k, 3 miles.
func isDistance(b []byte) bool {
	unit := bytes.TrimLeft(b, "0123456789.")
	if len(unit) == len(b) {
		return false
	}
	switch string(bytes.TrimSpace(unit)) {
	case "k", "km", "mi", "mile", "miles":
		return true
	}
	return false
}

// finnishClasses stand behind N, nainen or nő, and behind Z, žena, in words that begin with no
// sex in other languages: NS, NU16, ŽU15.
var finnishClasses = map[string]bool{"s": true, "sen": true, "u": true, "j": true, "jun": true, "v": true}

// splitGroupWord takes words like "msen", "vm", "mju", "whk", "mo" apart: sex
// letter before or after the class. A German youth class ends in its letter
// (mja).
func splitGroupWord(w []byte, class byte) (sexMark, groupWord, byte, bool) {
	if len(w) < 2 || len(w) > 10 {
		return noMark, 0, class, false
	}
	for _, front := range []bool{true, false} {
		var letter byte
		var rest []byte
		if front {
			letter, rest = w[0], w[1:]
		} else {
			letter, rest = w[len(w)-1], w[:len(w)-1]
		}
		if front && (letter == 'b' || letter == 'g') && len(rest) == 1 && rest[0] == 'u' {
			return map[byte]sexMark{'b': sureM, 'g': sureW}[letter], underWord, class, true // BU15, GU15: boys and girls
		}
		if front && (letter == 'v' || letter == 's') && len(rest) == 1 && rest[0] == 'u' {
			return sexMark(letter), underWord, class, true // VU18: vrouwen under 18, as no veteran is; SU18: sievietes
		}
		if bytes.IndexByte(sexLetters, letter) < 0 && !(front && letter == 'v' && len(rest) > 1) && !(front && (letter == 'n' || letter == 'z') && finnishClasses[string(rest)]) {
			continue
		}
		m := sexMark(letter)
		if letter == 'x' {
			m = sureX
		}
		if len(rest) == 2 && (rest[0] == 'j' || rest[0] == 's') && rest[1] >= 'a' && rest[1] <= 'd' {
			if rest[0] == 's' { // Schüler A is 14-15
				return m, juniorWord, rest[1] + 2, true
			}
			return m, juniorWord, rest[1], true
		}
		if string(rest) == "s" || string(rest) == "se" {
			return m, seniorWord, class, true
		}
		if string(rest) == "ju" || string(rest) == "ku" && front { // MJU16, MKU12: Jugend and Kinder under those ages
			return m, underWord, class, true
		}
		if string(rest) == "k" && front { // männliche Kinder: MK U10
			return m, juniorWord, class, true
		}
		if gw, ok := groupWords[string(rest)]; ok && gw != filler && gw != toWord {
			return m, gw, class, true
		}
	}
	if gw, ok := groupWords[strings.TrimPrefix(string(w), "nb")]; ok && w[0] == 'n' && len(w) > 2 && (gw == seniorWord || gw == juniorWord || gw == veteranWord) {
		return sureX, gw, class, true
	}
	return noMark, 0, class, false
}

// lastSchoolYear is the highest that classes of schools are counted to.
const lastSchoolYear = 13

// frenchSchoolYear recognises the classes of a French school from the seventh to the tenth year,
// which are counted down: 6e A, 3ème.
func frenchSchoolYear(b []byte) bool {
	class, _, _ := bytes.Cut(bytes.TrimSpace(b), []byte(" "))
	return len(class) > 1 && class[0] >= '3' && class[0] <= '6' && (string(class[1:]) == "e" || bytes.HasPrefix(class[1:], []byte("eme")))
}
