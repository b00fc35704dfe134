package sheet

import (
	"strings"

	"lapwing/pipeline/text"
)

// monthNames gives the month, January 0, of a folded name.
var monthNames = func() map[string]int {
	m := text.Months(fold)
	for w := range m {
		m[w]--
	}
	return m
}()

// weekdayNames are the weekdays of the same locales of Unicode CLDR (from
// memory), Sunday first.
var weekdayNames = byIndex(
	"sunday sun dimanche dim sonntag son domingo dom domenica zondag zon niedziela niedz nd söndag söndagen sön søndag søndagen søn soendag "+
		"neděle nedeľa vasárnap duminică sunnuntai sunnuntaina pazar pühapäev svētdiena svētdien sekmadienis nedelja nedjelja sunnudagur sunnudaginn κυριακή воскресенье неділя неделя diumenge domhnach domhnaigh igandea недеља sunnudagin hadd sonndeg sonndes diell нядзеля недела",
	"monday mon lundi lun montag lunes lunedì maandag maa segunda poniedziałek pon måndag måndagen mån mandag mandagen man "+
		"pondělí pondelok hétfő luni maanantai maanantaina pazartesi esmaspäev pirmdiena pirmdien pirmadienis ponedeljek ponedjeljak mánudagur mánudaginn δευτέρα понедельник понеділок понеделник dilluns luain astelehena astelehen llun понедељак mánadagin tnejn méindeg hënë панядзелак понеделник",
	"tuesday tue tues mardi marți dienstag die martes martedì dinsdag din terça wtorek wt tisdag tisdagen tis tirsdag tirsdagen tir "+
		"úterý utorok kedd tiistai tiistaina salı teisipäev otrdiena otrdien antradienis torek utorak þriðjudagur þriðjudaginn τρίτη вторник вівторок dimarts máirt asteartea astearte mawrth уторак týsdagin tlieta dënschdeg martë аўторак вторник",
	"wednesday wed weds mercredi mer mittwoch mit miércoles mié mercoledì woensdag woe quarta środa śr onsdag onsdagen ons "+
		"středa streda szerda miercuri keskiviikko keskiviikkona çarşamba kolmapäev trešdiena trešdien trečiadienis sreda srijeda miðvikudagur miðvikudaginn mercher τετάρτη среда середа сряда dimecres céadaoin asteazkena asteazken mikudagin erbgħa mëttwoch mërkurë серада",
	"thursday thu thur thurs jeudi jeu donnerstag don jueves jue giovedì gio donderdag quinta czwartek czw torsdag torsdagen tor tors "+
		"čtvrtek štvrtok csütörtök joi torstai torstaina perşembe neljapäev ceturtdiena ceturtdien ketvirtadienis četrtek četvrtak fimmtudagur fimmtudaginn πέμπτη четверг четвер четвъртък dijous déardaoin osteguna ostegun iau четвртак hósdagin ħamis donneschdeg enjte чацвер четврток",
	"friday fri vendredi ven freitag fre viernes vie venerdì vrijdag vri sexta piątek pt fredag fredagen "+
		"pátek piatok péntek vineri perjantai perjantaina cuma reede piektdiena piektdien penktadienis petek petak föstudagur föstudaginn gwener παρασκευή пятница п'ятниця петък divendres aoine ostirala ostiral haoine петак fríggjadagin ġimgħa freideg premte пятніца петок",
	"saturday sat samedi sam samstag sonnabend sábado sáb sabato sab zaterdag zat sobota sob lördag lördagen lör lørdag lørdagen lør loerdag "+
		"szombat sâmbătă lauantai lauantaina cumartesi laupäev sestdiena sestdien šeštadienis subota laugardagur laugardaginn sadwrn σάββατο суббота субота събота dissabte satharn sathairn larunbata larunbat leygardagin leygardagur sibt samschdeg shtunë субота сабота",
)

// shortWeekdays are two-letter forms; they count only right before a date.
var shortWeekdays = byIndex("so zo su", "mo", "tu ti", "we mi wo", "th do to", "fr vr", "sa za")

// daysInTwoLetters are such forms of more languages, of which one may mean several days: So is a Sunday
// in German and a Saturday in Czech. They count where the date is one of them. Common practice, no source.
var daysInTwoLetters = [...]map[string]bool{set("so su zo ne di do"), set("mo ma po lu"), set("tu ti di ma ut"), set("we wo mi me st sr ke on"), set("th to do ju je gi ct"), set("fr vr vi ve pa pi pe"), set("sa za so la lo")}

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
