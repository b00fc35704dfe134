package sheet

import (
	"strings"
)

// isTotal recognises the words that begin a line of totals, in the languages
// of headings (common practice, no source).
func isTotal(f string) bool {
	if f == "" || len(f) > 60 {
		return false
	}
	head, rest, _ := strings.Cut(f, " ")
	if totalWords[head] {
		// "Best, George" is a name; "Best time" is not.
		return rest == "" || !softTotals[head] || totalTails[strings.Fields(rest)[0]]
	}
	return strings.HasPrefix(f, "number of ") || strings.HasPrefix(f, "no of ") || strings.HasPrefix(f, "anzahl ") || strings.HasPrefix(f, "nombre de ") || strings.HasPrefix(f, "numero de ") || strings.HasPrefix(f, "numero di ")
}

// isRecord recognises what begins a line about a record: "Course record: Jo Lee".
func isRecord(f string) bool {
	words := strings.Fields(f)
	if len(words) > 0 && recordWords[words[0]] {
		return true
	}
	return len(words) > 1 && recordWords[words[1]] && recordOf[words[0]]
}

var recordWords = set("record records rekord rekorde recordtijd streckenrekord parcoursrecord baanrecord streckenrekorde")

var recordOf = set("course club track venue event ladies womens women mens men male female current previous old new all parcours overall junior veteran age group")

var totalWords = set(`avg target total totals totaal totale totali totalt gesamt gesamtzahl summe sum suma somme razem ogolem average mean median mittelwert durchschnitt
	schnitt moyenne mediane media mediana gemiddelde gemiddeld srednia mediana snitt genomsnitt gjennomsnitt gennemsnit medel fastest slowest quickest
	count finishers finisher counted maximum minimum max min teilnehmerzahl anzahl antal antall best subtotal sous participants schnellste langsamste`)

// softTotals may also begin a person's name.
var softTotals = set("best max min mean sum count suma sous media fastest finisher participants total")

var totalTails = set("time times of finishers finisher runners number age man men woman women male female lap score zeit temps tiempo tempo tijd tid total participants parcial and all runner club")
