package sheet

import (
	"regexp"
	"strings"
)

// placeholders stand where the name of a course is still to be written, or send the reader elsewhere;
// beside them may stand words of courses in general. Common practice in some fifteen languages, no source.
var (
	placeholders = set(`tbc tba tbd unknown unspecified undecided unnamed untitled placeholder xxx xxxx confirmed announced advised decided fill insert usual same email mail poster above below
		unbekannt offen bekanntgegeben ublich ubliche ublicher inconnu inconnue confirmer preciser habituel habituelle desconocido desconocida confirmar habitual sconosciuto sconosciuta confermare solito onbekend bepalen gebruikelijk
		okand okant bekraftas ukendt ukjent bekreftes nieznany nieznana nieznane ustalenia neznamy neznama nezname nepoznato tuntematon ismeretlen bilinmiyor necunoscut неизвестно αγνωστο 不明 未定`)
	besidePlaceholders = set(`to be in here see n a as last previous before week time course place name venue of the our not known yet is was none na us your their and or my
		noch wird nicht wie immer siehe der die das kurs strecke ort a la le les lieu comme voir parcours por como siempre ver lugar de da come luogo nog te wordt zie plaats skal bli senare do miejsce misto jako vanligt som`)
)

// noCourseYet says whether what may be the name of a course stands in place of one: "TBC", "to be
// confirmed", "n/a", "as usual", "see email", "[fill in]".
func noCourseYet(s string) bool {
	words := strings.Fields(strings.ReplaceAll(fold(s), "/", " "))
	found := len(words) == 2 && words[0] == "n" && words[1] == "a" || len(words) == 1 && words[0] == "na"
	for _, w := range words {
		switch {
		case placeholders[w]:
			found = true
		case !besidePlaceholders[w]:
			return false
		}
	}
	return found
}

// eitherPlace stands between two places of which one is meant.
var eitherPlace = regexp.MustCompile(`(?i)^[\s"'”’)\]]*\(?\s*(?:\?|(?:or|oder|eller)\s|tbc\b|to be confirmed)`)

// unsurePlace says whether a line says beside the name of a course that nobody is sure of it, "Quay?",
// "probably Quay", "Quay (or was it Mill Leat?)", and the places if it names two, "Quay or Mill Leat".
func unsurePlace(line, name string) (unsure bool, either []string) {
	for _, or := range []string{" or ", " oder ", " eller "} {
		if a, b, ok := strings.Cut(name, or); ok && startsUpper(a) && startsUpper(strings.TrimSpace(b)) {
			return true, []string{a, b}
		}
	}
	i := strings.Index(line, name)
	switch {
	case i < 0 || name == "":
		return false, nil
	case strings.HasSuffix(name, "?"):
		return true, nil
	}
	return unsureBefore.MatchString(line[:i]) || eitherPlace.MatchString(line[i+len(name):]), nil
}
