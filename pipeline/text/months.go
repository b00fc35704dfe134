package text

import "strings"

// monthNames are the wide and abbreviated month names, in the formatting and
// the stand-alone form, of Unicode CLDR (Unicode Common Locale Data Repository,
// locales en, fr, de, es, it, nl, pt, pl, sv, da, nb, cs, sk, hu, fi, ro, ca, tr; typed from memory, checked
// in a test, the first eleven against the localised month names of the spreadsheet library), with
// everyday variants.
var monthNames = [12]string{
	"january jan leden ledna januára január tammikuu tammikuuta ianuarie gener ocak janvier janv januar jänner jaenner jän januari jan. enero ene gennaio gen janeiro styczeń stycznia sty januar.",
	"february feb únor února február februára helmikuu helmikuuta februarie febrer şubat febr février févr fév fevr februar feber februari febrero febbraio fevereiro fev luty lutego lut",
	"march mar březen března marec márc március maaliskuu maaliskuuta martie març mart mars märz maerz mär mrz maart mrt marzo março marzec marca marts",
	"april apr duben dubna apríl apríla április huhtikuu huhtikuuta aprilie nisan avril avr abril abr aprile kwiecień kwietnia kwi",
	"may mai květen května máj mája május toukokuu toukokuuta maig mayıs maj mei mayo maggio mag maio maja",
	"june jun červen června jún júna június kesäkuu kesäkuuta iunie juny haziran juin juni junio giugno giu junho czerwiec czerwca cze juno",
	"july jul červenec července júl júla július heinäkuu heinäkuuta iulie juliol temmuz juillet juil juli julio luglio lug julho lipiec lipca lip",
	"august aug srpen srpna augusta augusztus elokuu elokuuta agost ağustos août aout augustus agosto ago augusti sierpień sierpnia sie",
	"september sep září septembra szeptember syyskuu syyskuuta septembrie eylül sept septembre septiembre settembre set setembro wrzesień września wrz setiembre",
	"october oct říjen října októbra október lokakuu lokakuuta octombrie ekim octobre oktober okt octubre ottobre ott outubro out październik października paź",
	"november nov listopadu novembra marraskuu marraskuuta noiembrie novembre kasım novembre noviembre novembro listopad listopada lis",
	"december dec prosinec prosince decembra joulukuu joulukuuta decembrie desembre aralık décembre déc dezember dez diciembre dic dicembre dezembro grudzień grudnia gru desember des",
}

// Months gives the number of the month, from 1, of every month name as fold
// writes it.
func Months(fold func(string) string) map[string]int {
	out := map[string]int{}
	for i, names := range monthNames {
		for _, n := range strings.Fields(names) {
			out[fold(n)] = i + 1
		}
	}
	return out
}
