package text

import "strings"

// monthNames are the wide and abbreviated month names, in the formatting and
// the stand-alone form, of Unicode CLDR (Unicode Common Locale Data Repository,
// locales en, fr, de, es, it, nl, pt, pl, sv, da, nb; typed from memory, checked
// in a test against the localised month names of the spreadsheet library), with
// everyday variants.
var monthNames = [12]string{
	"january jan janvier janv januar jänner jaenner jän januari jan. enero ene gennaio gen janeiro styczeń stycznia sty januar.",
	"february feb febr février févr fév fevr februar feber februari febrero febbraio fevereiro fev luty lutego lut",
	"march mar mars märz maerz mär mrz maart mrt marzo março marzec marca marts",
	"april apr avril avr abril abr aprile kwiecień kwietnia kwi",
	"may mai maj mei mayo maggio mag maio maja",
	"june jun juin juni junio giugno giu junho czerwiec czerwca cze juno",
	"july jul juillet juil juli julio luglio lug julho lipiec lipca lip",
	"august aug août aout augustus agosto ago augusti sierpień sierpnia sie",
	"september sep sept septembre septiembre settembre set setembro wrzesień września wrz setiembre",
	"october oct octobre oktober okt octubre ottobre ott outubro out październik października paź",
	"november nov novembre noviembre novembro listopad listopada lis",
	"december dec décembre déc dezember dez diciembre dic dicembre dezembro grudzień grudnia gru desember des",
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
