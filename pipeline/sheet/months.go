package sheet

import "strings"

// monthNames are the wide and abbreviated month names, in the formatting and
// the standalone form, of Unicode CLDR (Unicode Common Locale Data Repository,
// locales en, fr, de, es, it, nl, pt, pl, sv, da, nb; typed from memory, checked
// in a test against the localised month names of the spreadsheet library),
// folded, with everyday variants.
var monthNames = byIndex(
	"january jan janvier janv januar jänner jän januari jan. enero ene gennaio gen janeiro styczeń stycznia sty januar.",
	"february feb febr février févr fév fevr februar feber februari febrero febbraio fevereiro fev luty lutego lut",
	"march mar mars märz mär mrz maart mrt marzo março marzec marca marts",
	"april apr avril avr abril abr aprile kwiecień kwietnia kwi",
	"may mai maj mei mayo maggio mag maio maja",
	"june jun juin juni junio giugno giu junho czerwiec czerwca cze juno",
	"july jul juillet juil juli julio luglio lug julho lipiec lipca lip",
	"august aug août aout augustus agosto ago augusti sierpień sierpnia sie",
	"september sep sept septembre septiembre settembre set setembro wrzesień września wrz setiembre",
	"october oct octobre oktober okt octubre ottobre ott outubro out październik października paź",
	"november nov novembre noviembre novembro listopad listopada lis",
	"december dec décembre déc dezember dez diciembre dic dicembre dezembro grudzień grudnia gru desember des",
)

// weekdayNames likewise, Sunday first.
var weekdayNames = byIndex(
	"sunday sun dimanche dim sonntag son domingo dom domenica zondag zon niedziela niedz nd söndag sön søndag søn soendag",
	"monday mon lundi lun montag lunes lunedì maandag maa segunda poniedziałek pon måndag mån mandag man",
	"tuesday tue tues mardi dienstag die martes martedì dinsdag din terça wtorek wt tisdag tis tirsdag tir",
	"wednesday wed weds mercredi mer mittwoch mit miércoles mié mercoledì woensdag woe quarta środa śr onsdag ons",
	"thursday thu thur thurs jeudi jeu donnerstag don jueves jue giovedì gio donderdag quinta czwartek czw torsdag tor tors",
	"friday fri vendredi ven freitag fre viernes vie venerdì vrijdag vri sexta piątek pt fredag",
	"saturday sat samedi sam samstag sonnabend sábado sáb sabato sab zaterdag zat sobota sob lördag lör lørdag lør loerdag",
)

// shortWeekdays are two-letter forms; they count only right before a date.
var shortWeekdays = byIndex("so zo su", "mo", "tu ti", "we mi wo", "th do to", "fr vr", "sa za")

func byIndex(lists ...string) map[string]int {
	m := map[string]int{}
	for i, l := range lists {
		for _, w := range strings.Fields(l) {
			m[fold(w)] = i
		}
	}
	return m
}

// longWeekday is a weekday name long enough to count anywhere in a title.
func longWeekday(f string) (int, bool) {
	d, ok := weekdayNames[f]
	return d, ok && len(f) >= 5
}
