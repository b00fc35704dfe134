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
	blank := map[int]bool{}   // where a blank cell says no
	circled := map[int]bool{} // where a cross stands beside circles and says no
	for i, h := range l.headings {
		not := notHeld(h)
		ended, held := headsEnded(h), not != ""
		if ended || held {
			circled[i] = t.hasCircles(body, i)
			flagged, none := t.flagged(body, i, held, circled[i])
			if flagged && !(none && (not == unconfirmed || not == shortWay)) {
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
		for last := flags[len(flags)-1]; len(w) <= last; { // a workbook keeps no blank cells at the end of a row
			w = append(w, "")
		}
		said := ""
		for _, c := range flags {
			not := notHeld(l.headings[c])
			switch {
			case i < body || said != "":
			case not != "" && (saysNo(w[c]) || circled[c] && crossed(w[c]) || blank[c] && isBlank(w[c]) && rowFilled(cells) > 1):
				said = not
			case not == "" && saysYes(w[c]) && !(circled[c] && crossed(w[c])):
				if said = endedOf(l.headings[c]); voidHeadings[said] {
					said = "void"
				}
			}
			w[c] = ""
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
func (t table) flagged(from, column int, held, circled bool) (flagged, blank bool) {
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
		case saysNo(c), circled && crossed(c):
			no++
		case saysYes(c):
			yes++
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

// hasCircles says whether circles stand in a column from a row on, beside which a cross says no: ○ and ×, O and X.
func (t table) hasCircles(from, column int) bool {
	for i := from; i < t.grid.len(); i++ {
		if _, cells := t.grid.at(i); circles[fold(cellAt(cells, column))] {
			return true
		}
	}
	return false
}

// crossed says whether a cell is a cross.
func crossed(cell string) bool { return crosses[fold(cell)] }

var (
	circles = set("o ○ ◯ 〇 ⭕ ◎")
	crosses = set("x × ✕ ✖")
)

// saysYesAndNo says whether the values of a column are words for yes and for no, such as "da" and
// "ne", of which one alone may be short for a sex.
func saysYesAndNo(values map[string]int) bool {
	yes, no := 0, 0
	for v := range values {
		switch f := fold(v); {
		case len(f) > 1 && yesWords[f]:
			yes++
		case len(f) > 1 && noWords[f]:
			no++
		default:
			return false
		}
	}
	return yes > 0 && no > 0
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
	noSigns  = set("f h short half part shortened - × ✗ ✘ ✕ ❌ rejected invalid refused na nage 否 不 无 未 いいえ", append(strings.Fields(fold("아니오 아니요")), "not ok", "not valid")...)
	yesSigns = set("a e i ok accepted valid full ? ! ie ydy ydw bai ○ ◯ 〇 ⭕ ◎ 是 有 はい 有り あり", strings.Fields(fold("예 네"))...)
)

// notHeld is the status of a row that says no under a heading: did not finish under one for a finish,
// void under one for a result that is valid, unconfirmed under one for what somebody has looked at; "" for other
// headings. Beside the word for it there is nothing in a heading but what may be finished or valid.
func notHeld(heading string) (status string) {
	words := strings.FieldsFunc(endedOf(heading), func(r rune) bool { return strings.ContainsRune(" -/,.()", r) })
	if len(words) > 5 {
		return ""
	}
	if len(words) == 2 && ownWords[words[0]] && ownThings[words[1]] {
		return "wrong token"
	}
	whole := 0
	for _, w := range words {
		said := ""
		switch {
		case heldHeadings[w]:
			said = "did not finish"
		case ranHeadings[w]:
			said = "did not run"
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
	if status == "" && whole == 2 && len(words) == 1 {
		return shortWay
	}
	if status == "" && whole == 3 {
		status = "did not finish" // "All laps", "Full distance?"
	}
	return status
}

// shortWay is said of rows under a word for a way, "Course", "Route", that say in a word that it was not
// all of it, beside others that say it was: "short", "full".
const shortWay = "short course"

// unconfirmed is said of rows at which nobody has looked; a blank cell may only be one that nobody has ticked yet.
const unconfirmed = "unconfirmed"

// Words for a finish, for what is valid and for what has been looked at, for all of a way, and what may stand beside
// them. Common practice of the languages, no source.
var (
	heldHeadings  = set("finalizo finaliza concluiu concluso fini finie angekommen eingelaufen geschafft uitgelopen aangekomen ukonczyla ukonczono dobiegla dokoncila dobehla dokonceno dobehol koncal koncala dokoncal zavrsio zavrsila zavrseno istrcao istrcala завршио финиш финишировал финишировала финишер закончил финишира фініш фінішував фінішувала финиширал финиширала завършил завършила завърши finiseja finise baige finisavo lopetas lopetanud finiseeris maaliin befejezte τερματισε ολοκληρωσε terminat sosit acabat arribat gorffen gorffennodd chriochnaigh lauk klaradi amaitu 完走 完赛 完成 finished finisher completed complete gefinisht finishte beendet termine terminee terminado terminada termino terminou finalizado arrivato arrivee concluido ukonczyl dokoncil fullfort gennemfort fullfoljt ziel finish mal maalissa celba cil cili meta finishers llego chegou arrive bitirdi tamamladi bitis dobehl ukoncil dobiegl beert erreicht dotarl", strings.Fields(fold("완주 완주여부 완주함"))...)
	ranHeadings   = set("ran raced participated attended gelaufen couru corrio correu corso gelopen pobiegl bezel futott sprang lop jooksis juoksi skrejo bego бежал бежала біг")
	ownWords      = set("own eigene eigener eigenes propre propio propia proprio propria eigen egen eget egna egne wlasny wlasna wlasne vlastni")
	ownThings     = set("token barcode number bib chip code card tag nummer startnummer startnr numero dossard dorsal pettorale nr numer cislo")
	validHeadings = set("valid gultig geldig valable valide valido valida gyldig giltig platny platne wazny ervenyes hyvaksytty ok good counts counted count include included use accepted accept classified stands correct right zahlt gewertet wertung compte classe cuenta conta classificato clasificado classificado meetelt mee teller raknas taeller liczy pocita szamit laskettu lasketaan keep kept ranked ranking classified eligible sayilir gecerli godkjent godkand godkendt zaliczony zaliczone valide validado validato validata homologado homologue")
	seenHeadings  = set("official oficial officiel ufficiale offiziell officiell offisiell officieel approved confirmed verified ratified checked reliable bestatigt gepruft confirme confirmado confermato bevestigd")
	allOfWay      = set("all both full whole every three two 2 3 entire alle ganze tous toutes todas tutti")
	waysRun       = set("laps lap course distance route loops rounds circuits runden strecke distanz tours parcours vueltas giri rondes 5k 5km")
	besideHeld    = set("ha wedi на у в se sie v do na a la au il el o mal to result results time times run race line entry in did does ran has was for the is done im i maali ert telt ar")
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
