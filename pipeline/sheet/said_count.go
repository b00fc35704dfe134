package sheet

import (
	"strconv"
	"strings"
	"unicode"

	"lapwing/pipeline/place"
)

// SaidCount is how many finishers a line over or under the results says that there were.
type SaidCount struct {
	N    int
	Text string // the line
	Row  int    // 1-based; 0 where it stands over the results
}

// SaidCounts are the counts of finishers on the lines over the results and on the last ones
// under them, "74 finishers", "Finishers: 74", "74 people finished". A line about other days
// or about the women alone says nothing about the list. nil for sheets that are not held whole.
func (p *Part) SaidCounts() (said []SaidCount) {
	if !p.Whole {
		return nil
	}
	for _, t := range p.ownTitles() {
		if n, ok := countSaid(t); ok {
			said = append(said, SaidCount{n, shorten(t, 60), 0})
		}
	}
	for i := len(p.Skipped) - 1; i >= 0 && p.Skipped[i].Row > p.rules.lastSure; i-- {
		if n, ok := countSaid(p.Skipped[i].Text); ok {
			said = append(said, SaidCount{n, shorten(p.Skipped[i].Text, 60), p.Skipped[i].Row})
		}
	}
	return said
}

// Place is where the count stands on the part.
func (c SaidCount) Place(p *Part) place.Place { return place.Place{Tab: p.Tab, Row: c.Row} }

// behindPeople say behind "74 people" that they have finished. Common practice, no source.
var behindPeople = set("finished ran completed finish gefinisht gelaufen couru termine terminado arrivati")

// countedPeople are people before such a word.
var countedPeople = set("people persons personen menschen leute personnes personas persone mensen personer osob osoby ihmista")

// otherCount are words of lines that count other days, some of the field, or something else.
var otherCount = set(`record records last previous season year average mean so far since ever alltime first top next expected max maximum limit
	over every each per week weeks month months women woman ladies lady female females girls men man gents male males boys junior juniors club points prizes
	volunteers registered entered entries signed preregistered more less than about around nearly almost approx approximately some
	frauen manner damen herren femmes hommes mujeres hombres donne uomini dames heren kvinnor man kvinder menn kvinner naiset miehet`)

// countSaid is the number of finishers that a line says, false where it says none, or more
// than one.
func countSaid(line string) (n int, ok bool) {
	if len(line) > 600 || !strings.ContainsAny(line, "0123456789") {
		return 0, false
	}
	for _, sentence := range sentences(line) {
		words := strings.FieldsFunc(sentence, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(":=()/", r) })
		var folded []string
		for _, w := range words {
			folded = append(folded, fold(w))
		}
		for i, w := range folded {
			if !partakerWords[w] && !behindPeople[w] {
				continue
			}
			k, one := countBeside(folded, i)
			if !one {
				continue
			}
			for _, w := range folded {
				if otherCount[w] {
					return 0, false
				}
			}
			if ok && k != n {
				return 0, false
			}
			n, ok = k, true
		}
	}
	return n, ok
}

// sentences divides a line at full stops, commas, semicolons and bars; a number in a cell of its
// own goes with the cell before.
func sentences(line string) (out []string) {
	for _, s := range strings.FieldsFunc(strings.ReplaceAll(line, ". ", "|"), func(r rune) bool { return r == '|' || r == ',' || r == ';' }) {
		if _, number := smallCount(trim(s)); number && len(out) > 0 {
			out[len(out)-1] += " " + trim(s)
			continue
		}
		out = append(out, s)
	}
	return out
}

// countBeside is the number beside the word at i: right before a word for finishers, before
// "people finished", or right behind a word for finishers with which a line ends.
func countBeside(words []string, i int) (n int, ok bool) {
	at := i - 1
	if behindPeople[words[i]] && at >= 0 && countedPeople[words[at]] {
		at--
	}
	if at >= 0 {
		if n, ok = smallCount(words[at]); ok {
			return n, true
		}
	}
	if partakerWords[words[i]] && i+2 == len(words) {
		return smallCount(words[i+1])
	}
	return 0, false
}

// smallCount is a whole number of one to four digits.
func smallCount(w string) (int, bool) {
	w = strings.TrimRight(w, ".,")
	if len(w) > 4 || !digitsOnly(w) {
		return 0, false
	}
	n, err := strconv.Atoi(w)
	return n, err == nil && n > 0
}
