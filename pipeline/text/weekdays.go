package text

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Weekdays are the names of the weekdays in the languages of Months (Unicode CLDR, from memory), Sunday first, as
// they are written.
var Weekdays = [7]string{
	"sunday sun dimanche dim sonntag son domingo dom domenica zondag zon niedziela niedz nd söndag söndagen sön søndag søndagen søn soendag " +
		"neděle nedeľa vasárnap duminică sunnuntai sunnuntaina pazar pühapäev svētdiena svētdien sekmadienis nedelja nedjelja sunnudagur sunnudaginn κυριακή воскресенье неділя неделя diumenge domhnach domhnaigh igandea недеља sunnudagin hadd sonndeg sonndes diell нядзеля недела الأحد ahad jumapili วันอาทิตย์",
	"monday mon lundi lun montag lunes lunedì maandag maa segunda poniedziałek pon måndag måndagen mån mandag mandagen man " +
		"pondělí pondelok hétfő luni maanantai maanantaina pazartesi esmaspäev pirmdiena pirmdien pirmadienis ponedeljek ponedjeljak mánudagur mánudaginn δευτέρα понедельник понеділок понеделник dilluns luain astelehena astelehen llun понедељак mánadagin tnejn méindeg hënë панядзелак понеделник الاثنين الإثنين senin jumatatu วันจันทร์",
	"tuesday tue tues mardi marți dienstag die martes martedì dinsdag din terça wtorek wt tisdag tisdagen tis tirsdag tirsdagen tir " +
		"úterý utorok kedd tiistai tiistaina salı teisipäev otrdiena otrdien antradienis torek utorak þriðjudagur þriðjudaginn τρίτη вторник вівторок dimarts máirt asteartea astearte mawrth уторак týsdagin tlieta dënschdeg martë аўторак вторник الثلاثاء selasa jumanne วันอังคาร",
	"wednesday wed weds mercredi mer mittwoch mit miércoles mié mercoledì woensdag woe quarta środa śr onsdag onsdagen ons " +
		"středa streda szerda miercuri keskiviikko keskiviikkona çarşamba kolmapäev trešdiena trešdien trečiadienis sreda srijeda miðvikudagur miðvikudaginn mercher τετάρτη среда середа сряда dimecres céadaoin asteazkena asteazken mikudagin erbgħa mëttwoch mërkurë серада الأربعاء rabu jumatano วันพุธ",
	"thursday thu thur thurs jeudi jeu donnerstag don jueves jue giovedì gio donderdag quinta czwartek czw torsdag torsdagen tor tors " +
		"čtvrtek štvrtok csütörtök joi torstai torstaina perşembe neljapäev ceturtdiena ceturtdien ketvirtadienis četrtek četvrtak fimmtudagur fimmtudaginn πέμπτη четверг четвер четвъртък dijous déardaoin osteguna ostegun iau четвртак hósdagin ħamis donneschdeg enjte чацвер четврток الخميس kamis alhamisi วันพฤหัสบดี",
	"friday fri vendredi ven freitag fre viernes vie venerdì vrijdag vri sexta piątek pt fredag fredagen " +
		"pátek piatok péntek vineri perjantai perjantaina cuma reede piektdiena piektdien penktadienis petek petak föstudagur föstudaginn gwener παρασκευή пятница п'ятниця петък divendres aoine ostirala ostiral haoine петак fríggjadagin ġimgħa freideg premte пятніца петок الجمعة jumat ijumaa วันศุกร์",
	"saturday sat samedi sam samstag sonnabend sábado sáb sabato sab zaterdag zat sobota sob lördag lördagen lör lørdag lørdagen lør loerdag " +
		"szombat sâmbătă lauantai lauantaina cumartesi laupäev sestdiena sestdien šeštadienis subota laugardagur laugardaginn sadwrn σάββατο суббота субота събота dissabte satharn sathairn larunbata larunbat leygardagin leygardagur sibt samschdeg shtunë субота сабота السبت שבת sabtu jumamosi วันเสาร์",
}

// dayNames are those of them, without their marks, that are long enough to mean nothing else, and the short ones of English.
var dayNames = func() map[string]bool {
	days := wordsOf("mon tue tues wed thu thur thurs fri sat sun sundays saturdays sondags lordags niedziele sobote srode nedeli sobotu stredu")
	for _, names := range Weekdays {
		for _, w := range strings.Fields(names) {
			if len(w) >= 5 || w == "cuma" {
				days[plain(w)] = true
			}
		}
	}
	return days
}()

// PlainLetters writes the lower case letters that are more than one with a mark in plain ones.
var PlainLetters = strings.NewReplacer("ß", "ss", "ø", "o", "ł", "l", "æ", "ae", "œ", "oe", "đ", "d", "ð", "d", "þ", "th", "ı", "i")

// plain takes the marks off the letters of a word in lower case, as readers fold them.
func plain(w string) string {
	w = PlainLetters.Replace(w)
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFKD.String(w))
}
