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
	if l.first < 0 || l.lines != 1 {
		return nil
	}
	var flags []int
	for i, h := range l.headings {
		ended, held := headsEnded(h), notHeld(h) != ""
		if g := lex.read(h); (ended || held) && !(g.known && g.forced) && t.flagged(l.first, i, held) {
			flags, read = append(flags, i), append(read, h)
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
			switch f := fold(w[c]); {
			case i == l.first || said != "":
			case not != "" && saysNo(f):
				said = not
			case not == "" && yesWords[f]:
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

// flagged says whether the cells of a column below the heading are all yes, no or blank, of
// which yes the least and more than none; of a finish (held) no, beside more that say yes.
func (t table) flagged(heading, column int, held bool) bool {
	yes, no, rows := 0, 0, 0
	for i := heading + 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) < 2 {
			continue
		}
		rows++
		switch f := fold(cellAt(cells, column)); {
		case f == "":
		case yesWords[f]:
			yes++
		case saysNo(f):
			no++
		default:
			return false
		}
	}
	if held {
		return no > 0 && rows >= 4 && 3*no <= rows && yes > 2*no
	}
	return yes > 0 && rows >= 4 && 3*yes <= rows
}

// saysNo says whether a folded cell of such a column says no.
func saysNo(f string) bool { return noWords[f] || f == "f" || f == "-" }

// notHeld is the status of a row that says no under a heading: did not finish under one for a finish,
// void under one for a result that is valid; "" for other headings.
func notHeld(heading string) string {
	f := endedOf(heading)
	for _, about := range []string{"result ", "time "} {
		f = strings.TrimPrefix(f, about)
	}
	switch {
	case heldHeadings[f]:
		return "did not finish"
	case validHeadings[f]:
		return "void"
	}
	return ""
}

// Words for a finish and for what is valid. Common practice of the languages, no source.
var (
	heldHeadings  = set("finished finisher completed gefinisht finishte beendet termine terminee terminado terminada finalizado arrivato arrivee concluido ukonczyl dokoncil fullfort gennemfort fullfoljt", "im ziel", "did finish", "finished run", "completed run", "completed course", "race completed", "run completed")
	validHeadings = set("valid gultig geldig valable valide valido valida gyldig giltig platny platne wazny")
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
	return f != "ok" && f != "finished" && (statusWords[f] || voidHeadings[f] || text.Uncounted(f))
}

var voidHeadings = set("void voided deleted excluded annulled cancelled invalid ungultig annule nulo annullato ongeldig")
