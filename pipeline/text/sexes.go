package text

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MenWords and WomenWords are the words for men and boys, and for women and girls, of the languages of the
// headings, their titles and signs (U+2642, U+2640 and such pictures), divided by "|": folded, and without the
// letters that only a whole column can settle. Common practice, no source.
const MenWords = `male|males|man|men|mens|boy|boys|lad|lads|gent|gents|dhr|gentleman|gentlemen|mr|mister|
	homme|hommes|masculin|masculins|masc|monsieur|messieurs|garcon|garcons|
	herr|herren|mann|manner|maenner|mannlich|maennlich|mannliche|maennliche|mannlicher|mannl|maennl|knabe|knaben|junge|jungen|
	hombre|hombres|masculino|masculinos|masculina|masculinas|varon|varones|varonil|varoniles|nino|ninos|senor|chico|chicos|
	uomo|uomini|maschio|maschi|maschile|maschili|masch|sig|ragazzo|ragazzi|
	homem|homens|rapaz|rapazes|menino|meninos|hoch|decak|
	heer|heren|mannen|mannelijk|jongen|jongens|manlik|manlike|mans|seuns|
	mezczyzna|mezczyzni|mezczyz|mezcz|mezczyzn|chlopiec|chlopcy|chl|chl.|pan|
	herrar|herrer|herre|hr|menn|maend|mand|gutt|gutter|pojke|pojkar|dreng|drenge|
	mies|miehet|miesten|ανδρων|moskih|muzov|muzu|viriesu|vyru|muskaraca|barbatilor|мужчин|чоловіків|maendenes|mennenes|herrarnas|erkeklerin|meeste|pojat|he|musko|muskoga|г-н|gospod|gospodin|gosp|ponas|kungs|dl|domnul|dnul|hra|harra|senhor|κος|κυριος|господин|пан|mal|pria|laki-laki|laki laki|putra|kiume|mwanaume|
	ferfi|ferfiak|ffi|ffi.|erkek|erkekler|homes|masculi|bay|mees|mehed|poiss|poisid|virietis|viriesi|zens|zeni|vyras|vyrai|moski|muski|muskarac|muskarci|muz|muzi|barbat|barbati|baieti|kk|karl|karlar|piltar|piltur|gwryw|dyn|dynion|fear|fir|fireann|fireannach|mannlig|mannlige|mandlig|mandlige|manlig|manliga|gwrywaidd|bachgen|bechgyn|buachaill|buachailli|home|mascle|nois|gizon|gizona|gizonak|gizonezko|gizonezkoa|gizonezkoak|mutil|mutila|mutilak|neno|karlkyn|strakur|strakar|meessoost|berniukas|berniukai|vaikinai|vaikinas|baiat|chlapec|chlapci|hosi|fant|fantje|decki|djecaci|mladici|fiu|fiuk|mashkull|meshkuj|burra|djem|ragel|irgiel|subien|dreingir|мушкарац|дечаци|маж|мажи|момче|момчета|мъжки|мужчына|мужчыны|αγορι|αγορια|
	ชาย|זכר|גבר|גברים|בנים|ז|ذ|ذكر|ذكور|رجل|رجال|اولاد|مرد|مردان|اقا|اقایان|男|男性|男子|남|남자|남성|м|муж|муж.|мужчина|мужчины|мужскои|мальчики|мальчик|хлопець|хлопчик|юноши|ю|мъж|мъже|мушкарци|ч|чол|чол.|чоловік|чоловіки|чоловіча|хлопці|α|ανδρας|ανδρες|αρρεν|h/m|m/h|g/m|m / h|h / m|g / m|m / muz|
	masculine|signori|caballero|caballeros|varones|herra|mez|mez.|meska|meski|meskie|bub|buben|mnl|monsieurs|garotos|sir|masculi.|guy|guys|bloke|blokes|fella|fellas|chap|chaps|him|his|he/him|mle|ml|poika|👨|👦|👴|🚹|🧔|♂`

const WomenWords = `หญิง|หญง|נקבה|אישה|אשה|נשים|בנות|נ|ا|انثى|اناث|امراة|سيدة|سيدات|نساء|بنات|زن|زنان|خانم|بانوان|女|女性|女子|여|여자|여성|female|lass|lasses|females|woman|women|womens|lady|ladies|ladys|mevr|mevrouw|girl|girls|lass|lasses|mrs|miss|ms.|fem|
	femme|femmes|feminin|feminine|feminins|feminines|mme|mlle|madame|mademoiselle|fille|filles|dame|dames|
	frau|frauen|damen|weiblich|weibliche|weiblicher|weibl|madchen|maedchen|
	mujer|mujeres|femenino|femenina|femeninos|femeninas|femen|sra|nina|ninas|chica|chicas|senora|
	donna|donne|femmina|femmine|femminile|femminili|femm|sig.ra|sigra|ragazza|ragazze|
	mulher|mulheres|menina|meninas|djevojcica|feminino|feminina|femininos|femininas|rapariga|raparigas|
	vrouw|vrouwen|vrouwelijk|meisje|meisjes|vrou|vroue|vroulik|vroulike|vrouens|dogters|
	kobieta|kobiety|kob|dziewczyna|dziewczeta|dziew|dz|dz.|pani|
	dam|damer|fru|kvinne|kvinner|kvinde|kvinder|kvinna|kvinnor|jente|jenter|flicka|flickor|pige|piger|
	nainen|naiset|naisten|γυναικων|zensk|zien|zen|kobiet|sieviesu|moteru|femeilor|женщин|жінок|kvindernes|kvinnenes|damernas|kadinlarin|naiste|femenins|tytot|da|zensko|frk|froken|pr|г-жа|ga|gospa|gospoda|gospodja|gda|gdja|slecna|ponia|kundze|dna|doamna|rva|nti|rouva|neiti|mw|senhora|proua|prl|κα|κυρια|госпожа|пані|пани|wanita|perempuan|putri|kike|mwanamke|
	noi|nok|kadin|kadinlar|dona|dones|femeni|bayan|naine|naised|tudruk|tudrukud|sieviete|sievietes|moteris|moterys|zenska|zenske|zenski|zena|zene|zeny|femeie|femei|fete|kvk|kona|konur|stulka|stulkur|benyw|menyw|merched|mna|bean|wom|baineann|baineannach|kvinnelig|kvinnelige|kvindelig|kvindelige|kvinnlig|kvinnliga|stelpa|stelpur|kvenkyn|benywaidd|menywod|merch|cailin|cailini|noia|noies|femella|emakume|emakumea|emakumeak|emakumezko|emakumezkoa|emakumezkoak|neska|neskak|muller|mulleres|nena|naissoost|meitene|meitenes|mergaite|mergaites|mergina|merginos|fata|divka|divky|dievca|dievcata|dekle|dekleta|djevojke|djevojcice|lany|lanyok|kiz|kizlar|femer|femra|vajza|vajzat|mara|nisa|tfajliet|kvinnur|gentur|девојчице|девојке|женска|жената|момиче|момичета|женски|жанчына|жанчыны|κοριτσι|κοριτσια|v/f|n/k|k/n|f/k|k/f|z/f|f/z|
	ж|жен|жен.|женщина|женщины|женскии|девочки|девочка|дівчина|дівчинка|жена|жени|жене|жін|жін.|жінка|жінки|жіноча|дівчата|д|дев|дев.|девушки|γ|γυναικα|γυναικες|θηλυ|f/w|w/f|b/f|f / w|w / f|b / f|f/v|d/f|f/d|
	dama|damas|senhoras|senoras|senorita|senoritas|signora|signorina|madel|madels|maedels|madam|vrl|zenskie|kobiece|femenil|feminil|garotas|fem.|noknek|gal|gals|she|her|hers|she/her|fmle|fml|tytto|👩|👧|👵|🚺|♀`

// SexPairs are letters for men and for women that stand beside each other in one language, folded. Common
// practice, no source.
var SexPairs = strings.Fields("mf mw ml mk mn mv mz hf hd vs ek ud bg мж чж αγ lp")

// SexPair says whether two folded letters are such a pair, in either order.
func SexPair(letters string) bool {
	r := []rune(letters)
	return len(r) == 2 && (slices.Contains(SexPairs, letters) || slices.Contains(SexPairs, string(r[1])+string(r[0])))
}

var sexOfWord = func() map[string]byte {
	out := map[string]byte{}
	for list, sex := range map[string]byte{MenWords: 'M', WomenWords: 'W'} {
		for w := range strings.SplitSeq(list, "|") {
			out[strings.TrimSpace(w)] = sex
		}
	}
	return out
}()

// eitherSex are words that may stand beside those for a sex.
var eitherSex = map[string]bool{"adult": true, "adults": true, "runner": true, "runners": true, "athlete": true, "athletes": true, "participant": true, "cis": true}

// SexOf is the sex, 'M' or 'W', that all words and signs of a folded text say, each by itself: "woman",
// "m (male)", "female - f", "m♂", 👩🏽. 0 where they don't, or there is a figure, or a letter alone.
func SexOf(folded string) byte {
	if sex := sexOfWord[folded]; sex != 0 {
		return sex
	}
	var sex byte
	letters, others := 0, 0
	for s := folded; s != ""; {
		c, size := utf8.DecodeRuneInString(s)
		var said byte
		switch {
		case unicode.IsDigit(c):
			return 0
		case unicode.IsLetter(c):
			if size = strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) && r != '\'' }); size < 0 {
				size = len(s)
			}
			switch w := s[:size]; w {
			case "m":
				said = 'M'
			case "f", "w":
				said = 'W'
			default:
				if said = sexOfWord[w]; len(w) < 3 {
					said = 0 // "pr!" is a record
				}
			}
			if said == 0 && !eitherSex[s[:size]] {
				return 0
			}
			if size == 1 {
				letters++
			} else {
				others++
			}
		default:
			if said = sexOfWord[s[:size]]; said != 0 {
				others++
			}
		}
		if said != 0 && sex != 0 && said != sex {
			return 0
		}
		sex = max(sex, said)
		s = s[size:]
	}
	if sex == 0 || others == 0 || letters+others > 4 {
		return 0
	}
	return sex
}
