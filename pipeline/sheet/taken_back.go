package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// A line beside the table that takes back results in it, by their places or their runners' full names, "Place 7
// disqualified", "Jo Lee and Al Roe missed a lap", and one that says what the letters of a column stand for, where
// that is how a race ended, "R = retired".

// takenBack are the rows that such lines speak against, with what is noted on them. A line with a time or a day
// in it is about something else, and one that speaks of most of the rows about none of them.
func (p *Part) takenBack(lines []string) (rows map[int]string, said map[string]bool) {
	var against []*lineAbout
	for _, l := range lines {
		if folded := fold(l); len(against) < mostLineRules && len(l) <= 160 && !clockInside.MatchString(l) && !text.OfAnotherDay(strings.ReplaceAll(folded, " before ", " ")) && mayTakeBack(folded) && len(findDates(l)) == 0 {
			against = append(against, p.lineAbout(l, folded))
		}
	}
	if len(against) == 0 {
		return nil, nil
	}
	nameOf, at, n := p.fullNames(), map[int]int{}, 0 // at: by row, how many stand above it
	p.Each(func(row int, cells []string) error {
		at[row] = n
		n++
		name, place := strings.Join(strings.Fields(punctuation.Replace(nameOf(cells))), " "), 0
		if p.rules.pos >= 0 {
			place = placeFigure(cellAt(cells, p.rules.pos))
		}
		for _, l := range against {
			l.look(row, place, name)
		}
		return nil
	}) // a grid has no error of its own
	rows, said = map[int]string{}, map[string]bool{}
	for _, l := range against {
		found := l.rowsMeant()
		if len(found) == 0 || 2*len(found) > n && !l.open {
			continue
		}
		rest := l.rest()
		if strings.Contains(l.text, "?") && len(strings.Fields(rest)) < 3 {
			rest += "?" // "6 time?", "?? Jo Lee"
		}
		if !takesBack(rest) && !text.NotAsListed(rest) && !l.otherOrder(at) {
			continue
		}
		for _, row := range found {
			rows[row] = "time disputed: " + l.text
		}
		said[l.text] = true
	}
	return rows, said
}

var punctuation = strings.NewReplacer(",", " ", ";", " ", ":", " ", "(", " ", ")", " ", "–", " ", "—", " ", " - ", " ", ". ", " ", "!", " ", "“", " ", "”", " ", "\"", " ", "|", " ", "/", " ")

// swapped puts the last word of a name first, as sheets with the family name first have it.
func swapped(name string) string {
	at := strings.LastIndexByte(name, ' ')
	return name[at+1:] + " " + name[:max(at, 0)]
}

// mayTakeBack says whether a folded line has as many words as one that takes results back, before the names are looked for.
func mayTakeBack(folded string) bool {
	words := strings.Fields(punctuation.Replace(folded))
	return len(words) > 1 && len(words) <= 24
}

// takesBack says whether what is left of a line without places and names speaks against them.
func takesBack(rest string) bool {
	var words []string
	for _, w := range strings.Fields(rest) {
		if w = strings.Trim(w, ".-&+"); w != "" && !besideTaken[w] {
			words = append(words, w)
		}
	}
	if len(words) == 0 || len(words) > 8 || slices.ContainsFunc(words, func(w string) bool { return praising[w] }) {
		return false
	}
	return speaksAgainst(strings.Join(words, " "))
}

// praising are words of a line that speaks for somebody.
var praising = set(`queries questions well thanks thank congratulations congrats bravo danke merci gracias grazie bedankt tack takk tak kiitos dziekujemy dekujeme obrigado koszonjuk`)

// besideTaken are words that such a line has besides. Common practice, no source.
var besideTaken = set(`hat haben ha han har zijn heeft hebben an out off please bitte svp por favor nb n.b note correction remark the a is are was were has have had been and be will die der das von vom ist sind war wurde wird und de la le les el los il lo i of result results from in out ar er es son sono na jest byl byla je zostal zostala lett van af av og och en et y e ja`)

// speaksAgainst says whether a folded text says how a race ended that is no result, or that a line does not stand.
func speaksAgainst(folded string) bool {
	return saysEnded(folded) || text.AgainstTime(folded, 0)
}

// codesAgainst are the codes of up to three letters or figures that lines beside the table explain as something
// that speaks against a result, "R = retired; 3: disqualified", with what they stand for.
func codesAgainst(lines []string) (codes map[string]string) {
	for _, l := range lines {
		if len(l) > 300 {
			continue
		}
		if label, rest, ok := strings.Cut(l, ":"); ok && (len([]rune(label)) > 3 || strings.Contains(rest, "=")) {
			l = rest // "Key: R = retired"
		}
		for _, piece := range codePieces.Split(nextCode.ReplaceAllString(l, ";$1"), -1) {
			m := codeMeans.FindStringSubmatch(trim(piece))
			if m == nil || len(m[2]) > 60 || !speaksAgainst(fold(m[2])) {
				continue
			}
			if codes == nil {
				codes = map[string]string{}
			}
			codes[m[1]] = trim(m[2])
		}
	}
	return codes
}

var (
	nextCode   = regexp.MustCompile(` ((?:\pL{1,2}|\d) ?= ?\pL)`) // "1 = finished 9 = disqualified"
	codePieces = regexp.MustCompile(`[;|\n]|, |  |\. (?:\pL{1,3}|\d) ?[=:–-]`)
	codeMeans  = regexp.MustCompile(`^\(?([\pL\d+†‡#*]{1,3})\)?\.?(?: ?[=:] ?| [–-] | )(.*\pL.*)$`)
)

// codedColumns are the columns whose filled cells are all such short codes, some of them of codes.
func (p *Part) codedColumns(codes map[string]string) (columns []int) {
	if len(codes) == 0 {
		return nil
	}
	for _, c := range p.Columns {
		switch c.Meaning {
		case Name, GivenName, FamilyName, Time, Position, Age, Date:
			continue
		}
		texts, found, others := columnTexts(p, c.Index), false, false
		numbers := c.Meaning == Number && !p.fewTexts(c.Index, texts)
		for _, t := range texts {
			if len([]rune(t)) > 3 || numbers && digitsOnly(t) {
				found = false
				break
			}
			found, others = found || codes[t] != "", others || codes[t] == ""
		}
		switch {
		case !found, c.Meaning == Club && others:
			continue
		case c.Meaning == Club: // under a heading that nobody knows
			p.column(c.Index).Meaning = Other
		}
		columns = append(columns, c.Index)
	}
	return columns
}

// fewTexts says whether a column has few texts again and again, as no column of runners' numbers has.
func (p *Part) fewTexts(column int, texts []string) bool {
	n := 0
	p.Each(func(_ int, cells []string) error {
		if !isBlank(cellAt(cells, column)) {
			n++
		}
		return nil
	}) // a grid has no error of its own
	return len(texts) <= 5 && n > 2*len(texts)
}

// remarksElsewhere are the columns of clubs, numbers and things unknown in few rows of which, and in some with a time, a remark
// stands by which the row is no result.
func (p *Part) remarksElsewhere() (columns []Column) {
	const few = 3 // one row in so many
	for _, c := range p.Columns {
		if c.Meaning != Other && c.Meaning != Club && c.Meaning != Number {
			continue
		}
		against, others, n := 0, 0, 0
		p.Each(func(_ int, cells []string) error {
			n++
			switch cell := trim(cellAt(cells, c.Index)); {
			case againstInCell(cell, c.Meaning):
				if finishTime(cellAt(cells, p.rules.time)) > 0 {
					against++
				}
			case !isBlank(cell):
				others++
			}
			return nil
		}) // a grid has no error of its own
		if against > 0 && few*against <= n && (c.Meaning == Club || 2*others <= n) {
			columns = append(columns, c)
		}
	}
	return columns
}

// againstInCell says whether a cell of a column that is not for remarks is one all the same, by which its row is no
// result. A club has a capital.
func againstInCell(cell string, of Meaning) bool {
	if len(cell) < 2 || len(cell) > 80 || hasDigit(cell) && of == Number {
		return false
	}
	folded := fold(cell)
	if statusWords[folded] {
		return folded != "ok" && folded != "finished" && !notGiven[folded]
	}
	first, _ := utf8.DecodeRuneInString(cell)
	return (of != Club || unicode.IsLower(first)) && text.AgainstTime(folded, 0)
}

// notGiven are words for how a race ended that stand for no club, or nothing else, as often.
var notGiven = set("n/a na n.a nc np ab", "n / a")
