package sheet

import (
	"regexp"
	"strings"
)

// A run that had to go somewhere else is called after both places. Words for that, in a line
// above the results: "Alder Bank - moved to Mill Leat (flood)", "Moved from Alder Bank to Mill
// Leat", "Alder Bank, run at Mill Leat because of cows". Common practice, no source.
var (
	movedAway = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:(?:venue|course|location|route) (?:was )?changed|moved|relocated|switched|transferred|verlegt|verschoben|déplacée?|transférée?|trasladad[ao]|spostat[ao]|verplaatst|flyttade?s?|flyttet) (?:(?:from|von|vom|de|desde|da|van|från|fra) .+? )?(?:to|nach|zum|à|a|naar|till|til) (.+)$`)
	runThere  = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:ran|run|held|raced|gelaufen|liefen|courue?|corrid[ao]|corsa|gelopen) (?:instead )?(?:at|in|on|auf|à|en|a|op) (.+?)[ ,;(–-]+(?:instead|rather than|because|due|owing|wegen|statt|à cause|en raison|debido|a causa|wegens|vanwege|på grund|på grunn)`)
	// thereNow says that it is there this once: "Alder Bank 5 km - this week at Mill Leat".
	thereNow = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:(?:this (?:week|time)|today|tonight|just this once|diesmal|diese woche|heute|cette (?:semaine|fois)|aujourd'hui|est[ea] (?:semana|vez)|hoy|questa (?:settimana|volta)|oggi|deze (?:week|keer)|vandaag|denna vecka|den här gången|denne gang|i dag|idag),? (?:at|in|auf|im|am|à|au|en|a|al|nel|in|bij|op|vid|ved|i))(?: the| der| dem| den| la| le| el| het| de)? (\p{Lu}.+)$`)
	// whyMoved is where the reason begins.
	whyMoved = regexp.MustCompile(`(?i)[ ,;:.(–-]+(?:because|due|owing|as the|after|for|instead|wegen|statt|à cause|en raison|suite|debido|por|a causa|per|wegens|vanwege|in plaats|på grund|på grunn)(?:[^\pL].*)?$|[,;(].*$| [–-] .*$`)
)

// notTheRun are words for what may be moved and is not the run.
var notTheRun = set("start finish parking registration coffee prize prizes prizegiving presentation awards award cafe toilets desk briefing date day time funnel ziel parkplatz anmeldung siegerehrung depart arrivee inscription salida meta partenza arrivo ritrovo")

// movedTo is the place in a line that says where a run was held instead of where it mostly is,
// "" where a line says nothing of that.
func movedTo(line string) string {
	m := movedAway.FindStringSubmatchIndex(line)
	if m == nil {
		m = runThere.FindStringSubmatchIndex(line)
	}
	if m == nil && !isRemark(line) {
		m = thereNow.FindStringSubmatchIndex(line)
	}
	if m == nil || anyWord(line[:m[0]], notTheRun) || ofAnotherRun(line) {
		return ""
	}
	to := strings.TrimSpace(whyMoved.ReplaceAllString(cutSpans(line[m[2]:m[3]], false), ""))
	first, _, _ := strings.Cut(to, " ")
	if _, weekday := weekdayNames[fold(first)]; weekday || !startsUpper(first) || len(strings.Fields(to)) > 4 || isSection(to) {
		return ""
	}
	return to
}

// putOffTo are the words before the day to which a run was put off. Common practice, no source.
var putOffTo = regexp.MustCompile(`^(.*?)(?:moved|postponed|rescheduled|put (?:off|back)|verlegt|verschoben|reportee?|deplacee?|aplazad[ao]|trasladad[ao]|rinviat[ao]|spostat[ao]|uitgesteld|verplaatst|flyttade?|flyttat|flyttet|utsatt|uppskjutet)(?: .*)? (?:to|until|till|auf|nach|au|a|al|naar|tot|til)(?: [a-z]+)?$`)

// putOffFrom are the words before the day on which a run was to be, folded. Common practice, no
// source.
var putOffFrom = regexp.MustCompile(`(?:^| )(?:(?:moved|postponed|rescheduled|rearranged|delayed|carried over|put (?:off|back)|verlegt|verschoben|reportee?|deplacee?|aplazad[ao]|trasladad[ao]|rinviat[ao]|spostat[ao]|uitgesteld|verplaatst|flyttade?|flyttat|flyttet|utsatt|uppskjutet) (?:from|vom|von|du|de|del|desde|dal|da|van|fran|fra)|(?:re run|rerun|repeat|replacement|repetition|make up(?: run)?|makeup(?: run)?|catch up(?: run)?) (?:of|for)(?: the)?(?: run| race)?(?: of| on)?|brought forward from|replaces(?: the)?(?: run| race)?(?: of| on)?|(?:nachholtermin|nachholung|ersatztermin|ersatz|nachgeholt) (?:fur|vom|fur den)|originally(?: planned| scheduled| due)?(?: for| on)?|instead of|in place of|(?:was )?(?:due|planned|scheduled) (?:for|on)|statt|anstatt|au lieu du|en lugar del?|invece del|in plaats van|istallet for|i stedet for)(?: the)?(?: [a-z]+day| [a-z]{3})?$`)

// putOff says whether the words before a date say that the run was put off until then, and
// speak of nothing else: "Moved to Sunday", not "Relay postponed to".
func putOff(before string) bool {
	m := putOffTo.FindStringSubmatch(fold(before))
	if m == nil {
		return false
	}
	for _, w := range strings.Fields(m[1]) {
		if !titleWords[w] && !isOrdinalOrNumber(w) {
			return false
		}
	}
	return true
}
