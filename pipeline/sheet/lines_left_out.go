package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// leftOutNamed is how many of the timed lines left out are named; the rest are counted.
const leftOutNamed = 3

// sayTimedLinesLeftOut says which lines were taken for footers though they name somebody
// and have a time that no line of the results has: a finisher may have been written under
// the table. Winners and prizes that repeat a result, records, and lines with a date are
// none of these.
func (p *Part) sayTimedLinesLeftOut(g *grid, sheet string) {
	if !p.Whole || p.Kind == Volunteers || p.rules.time < 0 {
		return
	}
	if len(p.rules.others) > 0 {
		p.sayListsLeftOut(g, sheet)
		return
	}
	rules := p.rules // a copy: a pass has a state
	rules.restart()
	counted := map[string]bool{}
	var out []timedLine
	if n := len(p.Titles); n > 0 && p.HeadingRow == 0 && p.lent == 0 { // right above the first row, like those below it
		if name, clock := p.nameAndClock(p.Titles[n-1:]); clock != "" && finishTime(clock) > 0 && namesRunnerAlone(name) && len(findDates(p.Titles[n-1])) == 0 {
			out = append(out, timedLine{rules.first, name, clock})
		}
	}
	record := false
	for i := range g.len() {
		row, cells := g.at(i)
		if row < rules.first || rules.last > 0 && row > rules.last || rules.inOtherList(row) {
			continue
		}
		switch rules.classify(row, cells) {
		case isData:
			counted[clockDigits(cellAt(cells, rules.time))] = true
			record = false
		case whyBlank:
			record = false
		case whyTotal:
			record = anyWord(rowText(cells), recordWords)
		case whyFooter, whyNoResult:
			name, clock := p.nameAndClock(cells)
			switch all := rowText(cells); {
			case clock == "":
				record = record || anyWord(all, recordWords)
			case !record && !anyWord(all, recordWords) && len(findDates(all)) == 0 && looksNamed(name) && !endsSmall(name) && !saysWhatHappened(name) && finishTime(clock) > 0:
				out = append(out, timedLine{row, name, clock})
			}
		}
	}
	first := 0
	var read []string
	for _, l := range out {
		if counted[clockDigits(l.clock)] {
			continue
		}
		if len(read) == 0 {
			first = l.row
		}
		read = append(read, l.name+" "+l.clock)
	}
	if len(read) == 0 {
		return
	}
	more := ""
	if n := len(read) - leftOutNamed; n > 0 {
		read, more = read[:leftOutNamed], fmt.Sprintf(" and %d more", n)
	}
	p.problem(sheet, first, -1, place.Look, "timed-line-left-out", strings.Join(read, "; ")+more, "a line among the results",
		"What stands under the results is left out. If this is a finisher, move it up among them and load the sheet again; otherwise there is nothing to do.")
}

// endsSmall says whether the last word of a text has a small letter first, as that of no
// name has: "First home", "Walkers started at".
func endsSmall(text string) bool {
	r, _ := utf8.DecodeRuneInString(text[strings.LastIndexByte(text, ' ')+1:])
	return unicode.IsLower(r)
}

// timedLine is a line with a name and a time.
type timedLine struct {
	row         int
	name, clock string
}

// nameAndClock gives the name and the running time of a line: of their columns, or of a
// line in one cell that ends in a time, "Late: Jo Lee 31:22". clock is "" where it has none.
func (p *Part) nameAndClock(cells []string) (name, clock string) {
	if rowFilled(cells) == 1 {
		if m := lastClockOf.FindStringSubmatch(titleText(cells)); m != nil {
			return trim(m[1][strings.LastIndexByte(m[1], ':')+1:]), m[2]
		}
		return "", ""
	}
	clock = trim(cellAt(cells, p.rules.time))
	if k := kindOf(clock); k != kClock && k != kDecimal { // 23.92 minutes
		return "", ""
	}
	return trim(cellAt(cells, p.Index(GivenName)) + " " + cellAt(cells, p.rules.name)), clock
}

// lastClockOf is a text before a time at its end, with marks and pictures behind it perhaps.
var lastClockOf = regexp.MustCompile(`^(.*\S)\s+(\d{1,3}:[0-5]\d(?::[0-5]\d)?(?:[.,]\d{1,3})?)[^\pL\d]*$`)

// namesRunnerAlone says whether a text is a name of two to four words and nothing that a title says of
// somebody or of the run.
func namesRunnerAlone(text string) bool {
	return looksNamed(text) && !saysWhatHappened(text) && !anyWord(text, recordWords) && !slices.ContainsFunc(strings.Fields(fold(text)), func(w string) bool {
		return titleWords[w] || headingWords[w] != 0 || headsFirst(w)
	})
}

// clockDigits is a time without what divides it and without hours or tenths of nothing, so
// that 0:24:31 and 24.31 are one.
func clockDigits(s string) string {
	s = strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, s)
	return strings.TrimLeft(s, "0")
}

// sayListsLeftOut says which lists below the results were left out as lists of something else, though they
// have times of people who are not in the results with these.
func (p *Part) sayListsLeftOut(g *grid, sheet string) {
	at, nameOf, counted := p.rules.time, p.fullNames(), map[string]bool{}
	p.Each(func(_ int, cells []string) error {
		counted[anyOrder(nameOf(cells))+" "+clockDigits(cellAt(cells, at))] = true
		return nil
	}) // a grid has no error of its own
	for _, o := range p.rules.others {
		over, lines, first := "", 0, 0
		for i := range g.len() {
			row, cells := g.at(i)
			if !o.has(row) {
				continue
			}
			if rowFilled(cells) == 1 && lines == 0 {
				over = titleText(cells)
			}
			name := nameOf(cells)
			if strings.IndexByte(name, ' ') > 0 && kindOf(trim(cellAt(cells, at))) == kClock && finishTime(cellAt(cells, at)) > 0 && !p.clubs[name] && !counted[anyOrder(name)+" "+clockDigits(cellAt(cells, at))] {
				if lines++; first == 0 {
					first = row
				}
			}
		}
		if lines > 0 && over != "" && !anyWord(over, recordWords) && !allTimes.MatchString(" "+fold(over)+" ") {
			p.problem(sheet, first, -1, place.Look, "list-left-out", over, "a list of something else than this run",
				fmt.Sprintf("The list under this line is left out, with %s that the results have not. If they belong to them, write another line over them, such as Late, and load the sheet again; otherwise there is nothing to do.", text.CountOf(lines, "line", "lines")))
		}
	}
}
