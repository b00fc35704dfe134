package sheet

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// correctionWords are those of the text package.
var correctionWords = text.CorrectionWords

// corrects says whether lines over rows have such a word, or say nothing but that the list is
// the final one.
func corrects(lines []string) bool {
	for _, t := range lines {
		if anyWord(t, correctionWords) || saysFinal(t) {
			return true
		}
	}
	return false
}

// saysFinal says whether a line has no words but for results and for a later issue of them:
// "FINAL", "Official results".
func saysFinal(line string) bool {
	final := false
	for _, w := range strings.Fields(fold(line)) {
		switch {
		case EditionWord(w) == 1 && w != "new":
			final = true
		case !titleWords[w]:
			return false
		}
	}
	return final
}

// askCorrection asks about rows under such a line that stand for finishers of the list above
// it: the first of them has a place or a name of that list, and it is not the whole list again.
func (p *Part) askCorrection(g *grid, sheet string, lines []string, after, from int) {
	nameOf, name, again := p.fullNames(), "", false
	p.Each(func(row int, cells []string) error {
		if row == from {
			name = nameOf(cells)
			return errStop
		}
		return nil
	}) // errStop is taken by the grid
	p.Each(func(row int, cells []string) error {
		if row > after {
			return errStop
		}
		again = again || name != "" && nameOf(cells) == name
		return nil
	})
	if !again && (p.Index(Position) < 0 || !fallsAt(p, g, after, from)) {
		return
	}
	p.problem(sheet, from, -1, place.Waits, "corrected-below", strings.Join(lines, " | "), "one line for each finisher",
		"The rows under this line correct rows above it. Put those right, take out the rows under the line, and load the sheet again.")
}

// sayCorrections says which lines beside the results correct them in words, "Amendment: Jo
// Lee's time should read 20:40", or set one of them in doubt, "Jo Lee disqualified after protest",
// "place 7: time estimated". Nothing is changed by them.
func (p *Part) sayCorrections(sheet string) {
	var names map[string]bool // of the results, found when they are needed
	for _, sk := range p.linesOutside() {
		if sk.Why == whyBlank.String() || sk.Why == whyHeading.String() || len(findDates(sk.Text)) > 0 || p.says("corrected-in-words", sk.Row) || p.rules.takenBack[strings.Trim(sk.Text, " |")] {
			continue
		}
		folded := fold(sk.Text)
		switch {
		case anyWord(sk.Text, correctionWords) && hasDigit(sk.Text) && !text.AsksReaders(folded), p.takesUp(sk.Text, &names):
			p.problem(sheet, sk.Row, -1, place.Look, "corrected-in-words", shorten(sk.Text, 80), "the corrected result in its own row",
				"If the results are not put right yet, correct the row itself and load the sheet again; otherwise there is nothing to do.")
		case text.ListInDoubt(folded):
			p.problem(sheet, sk.Row, -1, place.Look, "corrected-in-words", shorten(sk.Text, 80), "a list in which nothing is left to put right",
				"This line says that something in the list may be wrong. If it still is, put it right in the sheet and load it again; otherwise there is nothing to do.")
		}
	}
}

// takesUp says whether a line speaks against a result, by its place or its runner.
func (p *Part) takesUp(line string, names *map[string]bool) bool {
	f := " " + fold(line) + " "
	otherwise := saysOtherwise(line)
	if !otherwise && !disputesLine(line) {
		return false
	}
	back := text.TakesBack(f)
	return ofPlace.MatchString(f) || (otherwise || back) && ordinalPlace.MatchString(f) || p.namesRunner(line, back, names)
}

// disputesLine says whether a line has words by which a result is set in doubt or taken back.
func disputesLine(line string) bool {
	folded := fold(line)
	return text.Disputes(folded) || text.Uncounted(folded) || text.DoubtedTime(folded, 0)
}

// saysOtherwise says whether a line puts one thing in the place of another, "4th was Ben Tarn, not Bob", or
// says a time that somebody had: "4th place time was 18:55".
func saysOtherwise(line string) bool {
	f := " " + fold(line) + " "
	told := strings.Contains(f, " was ") || strings.Contains(f, " is ") || strings.Contains(f, " ran ")
	return strings.Contains(f, " not ") && (told || strings.Contains(f, " time ")) || told && strings.Contains(f, " time ") && clockInside.MatchString(line)
}

// ofPlace is a place of the results that a line speaks of: "place 7", "line 12", "4. "; ordinalPlace one by
// its order, "5th", "third", of whom else a sentence may speak. Common practice,
// no source.
var ofPlace = regexp.MustCompile(` (?:place|places|pos|position|positions|line|row|no|nr|number|platz|rang|place|puesto|posto|plaats|plats|plads|plass)\.? \d{1,4}\b|^ \d{1,4}[.)] `)

var ordinalPlace = regexp.MustCompile(` (?:\d{1,3}(?:st|nd|rd|th)|` + strings.Join(text.Ordinals[:10], "|") + `) `)

// namesRunner says whether a line has the full name of somebody in the results, or, if it takes a result
// back, one with the other half in short, "Bob T", "B Tarn". names are those of all of them, kept from line to
// line.
func (p *Part) namesRunner(line string, back bool, names *map[string]bool) bool {
	if *names == nil {
		*names = map[string]bool{}
		nameOf := p.fullNames()
		p.Each(func(_ int, cells []string) error {
			if name := nameOf(cells); strings.Count(name, " ") > 0 {
				(*names)[name] = true
				first, last := name[:strings.IndexByte(name, ' ')], name[strings.LastIndexByte(name, ' ')+1:]
				_, size := utf8.DecodeRuneInString(last)
				(*names)[inShort+first+" "+last[:size]] = true
				_, size = utf8.DecodeRuneInString(first)
				(*names)[inShort+first[:size]+" "+last] = true
			}
			return nil
		}) // what can't be read is told elsewhere
	}
	words := strings.FieldsFunc(fold(line), func(r rune) bool { return strings.ContainsRune(" ,;:.()|/*", r) })
	for i := range words {
		words[i] = strings.TrimSuffix(strings.TrimSuffix(words[i], "'s"), "’s")
		for n := 2; n <= 4 && i+1 >= n; n++ {
			said := strings.Join(words[i+1-n:i+1], " ")
			if (*names)[said] || back && n == 2 && (*names)[inShort+said] {
				return true
			}
		}
	}
	return false
}

// inShort marks names of which a half is a letter.
const inShort = "\x00"

// timesOff says whether a line says that the times are to be changed, and not that they were:
// "Watch started late: add 30 seconds", "all times 30 seconds slow".
func timesOff(line string) bool {
	return len(findDates(line)) == 0 && !ofAnotherRun(line) && text.TimesToChange(fold(line))
}

// askTimesOff asks about such a line above the results of a part, or between them, and about such
// a note to a cell.
func (p *Part) askTimesOff(g *grid, sheet string) {
	if p.Index(Time) < 0 && len(p.rules.clock) == 0 {
		return
	}
	ask := func(row int, line string) {
		p.problem(sheet, row, -1, place.Waits, "times-to-be-changed", shorten(line, 80), "times as they were run",
			"This line says that times have to be changed. Change them, take the line out or write that they are corrected, and load the sheet again.")
	}
	for _, t := range p.ownTitles() {
		if timesOff(t) {
			ask(0, t)
			return
		}
	}
	for _, sk := range p.Skipped {
		if timesOff(sk.Text) {
			ask(sk.Row, sk.Text)
			return
		}
	}
	for _, row := range slices.Sorted(maps.Keys(g.pieces.notes)) {
		if note := g.pieces.notes[row]; timesOff(note) && row < p.rules.first {
			ask(row, note)
			return
		}
	}
}

// says says whether a problem of a kind was found at a row.
func (p *Part) says(kind string, row int) bool {
	return slices.ContainsFunc(p.Problems, func(q place.Problem) bool { return q.Kind == kind && q.Place.Row == row })
}

// elsewhereCorrected is why a tab of corrections is no list of results.
const elsewhereCorrected = "it lists corrections of results that stand elsewhere"

// sayUncorrected points out the tabs of corrections some of whose lines have, for their runner, another
// time than the results.
func (s *Sheet) sayUncorrected() {
	if len(s.correctionTabs) == 0 {
		return
	}
	times := map[string]bool{} // by name, those of all results
	for _, p := range s.Parts {
		nameOf, at := p.fullNames(), p.Index(Time)
		p.Each(func(_ int, cells []string) error {
			times[anyOrder(nameOf(cells))+" "+looseKey(trim(cellAt(cells, at)))] = true
			return nil
		}) // what can't be read is told elsewhere
	}
	for _, p := range s.correctionTabs {
		nameOf, open := p.fullNames(), ""
		for _, cells := range p.sampled() {
			last := "" // the right time stands behind the wrong one
			for _, c := range cells {
				if kindOf(trim(c)) == kClock {
					last = c
				}
			}
			if who := nameOf(cells); who != "" && last != "" && !times[anyOrder(who)+" "+looseKey(trim(last))] && open == "" {
				open = rowText(cells)
			}
		}
		if open != "" {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: p.Tab}, Severity: place.Look, Kind: "corrections-apart", Read: open,
				Expected: "the right time in the results", Do: "This tab lists corrections. Put the results right where they stand, and load the sheet again."})
		}
	}
}

// listsCorrections says whether a tab called after corrections lists them, each line with the
// time that was wrong beside the right one, or with its day: the corrected results of one run
// have one time each.
func (p *Part) listsCorrections(tab string) bool {
	if !anyWord(tab, correctionWords) {
		return false
	}
	if p.Index(Date) >= 0 {
		return true
	}
	rows := p.sampled()
	for _, c := range p.Columns {
		clocks := 0
		for _, r := range rows {
			if kindOf(trim(cellAt(r, c.Index))) == kClock {
				clocks++
			}
		}
		if c.Meaning == Other && 2*clocks > len(rows) {
			return true
		}
	}
	return false
}
