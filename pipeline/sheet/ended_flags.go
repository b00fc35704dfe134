package sheet

import (
	"slices"
	"strings"

	"lapwing/pipeline/text"
)

// endedByFlag makes a status of columns that say yes or no under a word for how a race ended,
// as databases keep them: 1 under "void", TRUE under "DNF". Rows with yes get the heading as
// their status, and most rows have to say no, or nothing. Under a word for a finish or a result
// that is valid, "Finished?", it is the rows with no, and most have to say yes. A sheet with a
// status of its own keeps the flags as notes behind it. It returns the headings of the columns.
func (t table) endedByFlag(lex *lexicon) (read []string) {
	l := findHeading(lex, t.head())
	if l.first < 0 || l.lines > 2 {
		return nil
	}
	body := l.first + l.lines
	var flags []int
	blank := map[int]bool{} // where a blank cell says no
	for i, h := range l.headings {
		not := notHeld(h)
		ended, held := headsEnded(h), not != ""
		if ended || held {
			flagged, none := t.flagged(body, i, held)
			if flagged && !(none && not == unconfirmed) {
				flags, read = append(flags, i), append(read, h)
				blank[i] = none
			}
		}
	}
	if len(flags) == 0 || len(flags) > 4 {
		return nil
	}
	as := "Status"
	for i, h := range l.headings {
		if g := lex.read(h); g.known && g.meaning == Status && !slices.Contains(flags, i) {
			as = "Notes"
		}
	}
	if as == "Notes" && slices.ContainsFunc(l.headings, func(h string) bool { g := lex.read(h); return g.known && g.meaning == Notes }) {
		return nil
	}
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		if i < l.first {
			return nil, false
		}
		w := slices.Clone(cells)
		said := ""
		for _, c := range flags {
			if c >= len(w) {
				continue
			}
			not := notHeld(l.headings[c])
			switch {
			case i < body || said != "":
			case not != "" && (saysNo(w[c]) || blank[c] && isBlank(w[c]) && rowFilled(cells) > 1):
				said = not
			case not == "" && saysYes(w[c]):
				if said = endedOf(l.headings[c]); voidHeadings[said] {
					said = "void"
				}
			}
			w[c] = ""
		}
		for len(w) <= flags[0] {
			w = append(w, "")
		}
		if w[flags[0]] = said; i == l.first {
			w[flags[0]] = as
		}
		return w, true
	})
	return read
}

// flagged says whether the cells of a column from a row on are all yes, no or blank, of
// which yes the least and more than none; of a finish (held) no, beside more that say yes. blank says that
// of a finish nothing says no but the blank cells.
func (t table) flagged(from, column int, held bool) (flagged, blank bool) {
	yes, no, none, rows := 0, 0, 0, 0
	for i := from; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) < 2 {
			continue
		}
		rows++
		switch c := cellAt(cells, column); {
		case isBlank(c):
			none++
		case saysYes(c):
			yes++
		case saysNo(c):
			no++
		default:
			return false, false
		}
	}
	if held {
		if no == 0 {
			no, blank = none, true
		}
		return no > 0 && rows >= 4 && 5*no <= 2*rows && yes > no, blank
	}
	return yes+no > 0 && rows >= 4 && 5*yes <= 2*rows, false
}

// saysNo says whether a cell of such a column says no.
func saysNo(cell string) bool {
	f := fold(cell)
	return noWords[f] || noSigns[f] || noSigns[trim(cell)]
}

// saysYes says whether a cell of such a column says yes.
func saysYes(cell string) bool {
	f := fold(cell)
	return yesWords[f] || yesSigns[f] || yesSigns[trim(cell)] || !noSigns[trim(cell)] && ticked(cell)
}

// Other ways of saying so in such a column. Common practice, no source.
var (
	noSigns  = set("f h - ✗ ✘ ❌ rejected invalid refused", "not ok", "not valid")
	yesSigns = set("a e i ok accepted valid full ? !")
)

// notHeld is the status of a row that says no under a heading: did not finish under one for a finish,
// void under one for a result that is valid, unconfirmed under one for what somebody has looked at; "" for other
// headings. Beside the word for it there is nothing in a heading but what may be finished or valid.
func notHeld(heading string) (status string) {
	words := strings.FieldsFunc(endedOf(heading), func(r rune) bool { return strings.ContainsRune(" -/,.()", r) })
	if len(words) > 5 {
		return ""
	}
	whole := 0
	for _, w := range words {
		said := ""
		switch {
		case heldHeadings[w]:
			said = "did not finish"
		case validHeadings[w]:
			said = "void"
		case seenHeadings[w]:
			said = unconfirmed
		case allOfWay[w], waysRun[w]:
			whole |= map[bool]int{true: 1, false: 2}[allOfWay[w]]
		case !besideHeld[w]:
			return ""
		}
		if said != "" {
			status = said
		}
	}
	if status == "" && whole == 3 {
		status = "did not finish" // "All laps", "Full distance?"
	}
	return status
}

// unconfirmed is said of rows at which nobody has looked; a blank cell may only be one that nobody has ticked yet.
const unconfirmed = "unconfirmed"

// Words for a finish, for what is valid and for what has been looked at, for all of a way, and what may stand beside
// them. Common practice of the languages, no source.
var (
	heldHeadings  = set("finished finisher completed complete gefinisht finishte beendet termine terminee terminado terminada termino terminou finalizado arrivato arrivee concluido ukonczyl dokoncil fullfort gennemfort fullfoljt ziel finish mal maalissa celba cil cili meta finishers llego chegou arrive bitirdi tamamladi bitis dobehl ukoncil dobiegl beert erreicht dotarl")
	validHeadings = set("valid gultig geldig valable valide valido valida gyldig giltig platny platne wazny ervenyes hyvaksytty ok good counts counted count include included use accepted accept classified stands correct right zahlt gewertet wertung compte classe cuenta conta classificato clasificado classificado meetelt mee teller raknas taeller liczy pocita szamit laskettu lasketaan keep kept ranked ranking classified eligible sayilir gecerli godkjent godkand godkendt zaliczony zaliczone valide validado validato validata homologado homologue")
	seenHeadings  = set("official oficial officiel ufficiale offiziell officiell offisiell officieel approved confirmed verified ratified checked reliable bestatigt gepruft confirme confirmado confermato bevestigd")
	allOfWay      = set("all both full whole every three two 2 3 entire alle ganze tous toutes todas tutti")
	waysRun       = set("laps lap course distance route loops rounds circuits runden strecke distanz tours parcours vueltas giri rondes 5k 5km")
	besideHeld    = set("se sie v do na a la au il el o mal to result results time times run race line entry in did does ran has was for the is done im i maali ert telt ar")
)

// endedOf is the word of a heading such as "is_dnf" or "DQ?".
func endedOf(heading string) string {
	f := strings.TrimRight(fold(strings.ReplaceAll(heading, "_", " ")), "? ")
	for _, before := range []string{"is ", "was ", "has "} {
		f = strings.TrimPrefix(f, before)
	}
	return strings.TrimSpace(f)
}

// headsEnded says whether a heading is a word for how a race ended, or for a line that does not
// count.
func headsEnded(heading string) bool {
	f := endedOf(heading)
	return f != "ok" && f != "finished" && (statusWords[f] || voidHeadings[f] || text.AgainstTime(f, 0) && !waysToCome[f])
}

// waysToCome are headings under which people say how they came, or what else they did.
var waysToCome = set("bike bicycle ebike cycling cycled cyclist scooter fahrrad velo bici fiets cykel sykkel rower kolo pyora relay half pen prov remote")

var voidHeadings = set("void voided deleted excluded annulled cancelled invalid ungultig annule nulo annullato ongeldig torolve scratch stornliert storniert uniewazniony anulowany doubt out")
