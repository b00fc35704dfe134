package sheet

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// Remarks that no column holds: rows that are struck through, notes to cells, and signs behind a name, a
// time or a place that a line beside the table explains, "* disqualified".

// struckThrough is what is said of a row of struck letters.
const struckThrough = "struck through"

// struckInPart is what is said of a row of which the place, the name or the time is.
const struckInPart = "struck through in part"

// struckRows are the rows of which such a cell is struck through, nil where many are: somebody has
// ticked them off.
func (p *Part) struckRows(g *grid) map[int]bool {
	const few = 4 // one row in so many
	if len(g.pieces.cut) == 0 {
		return nil
	}
	rows, n := map[int]bool{}, 0
	p.Each(func(row int, _ []string) error {
		n++
		for _, i := range g.pieces.cut[row] {
			if i < len(p.Columns) {
				switch p.Columns[i].Meaning {
				case Position, Name, GivenName, FamilyName, Time:
					rows[row] = true
				}
			}
		}
		return nil
	}) // a grid has no error of its own
	if few*len(rows) > n {
		return nil
	}
	return rows
}

// remark finds the remarks of a part's rows and adds them to its column of notes, or a
// column of their own.
func (p *Part) remark(g *grid, sheet string, ofTabs int, colours map[uint32]fillMeaning) {
	if !p.Whole || p.Kind == Volunteers {
		return
	}
	signs := map[string]string{}
	learn := func(line string) {
		if sign, means, ok := signLine(line); ok && signs[sign] == "" {
			signs[sign] = means
		}
	}
	lines := p.linesBeside()
	for _, l := range lines {
		learn(l)
	}
	ended := p.endedLines()
	if tab := p.apartByTab(); tab.row != 0 && ofTabs > 1 {
		ended = append(ended, tab)
	}
	rules := rulesOfLines(lines)
	corrections, disputes := p.timeCorrections(sheet)
	renamed := p.nameCorrections(sheet)
	inPart := p.struckRows(g)
	back, told := p.takenBack(lines)
	p.rules.takenBack = told
	codes := codesAgainst(lines)
	coded := p.codedColumns(codes)
	p.rules.codes = codes
	other := p.remarksElsewhere()
	more := p.moreNotes()
	lapColumn, laps := p.shortOfLaps()
	if lapColumn < 0 && len(back) == 0 && len(coded) == 0 && len(other) == 0 && len(more) == 0 && len(signs) == 0 && len(g.pieces.struck) == 0 && len(g.pieces.notes) == 0 && len(inPart) == 0 && len(ended) == 0 && len(rules) == 0 && len(colours) == 0 && len(corrections) == 0 && len(disputes) == 0 && len(renamed) == 0 {
		return
	}
	corrected := map[int]correction{}
	for _, c := range corrections {
		corrected[c.row] = c
	}
	remarks, struck, noted := map[int]string{}, 0, false
	lists, few := listsBelow{p: p}, p.fewUnder(ended)
	p.Each(func(row int, cells []string) error {
		var said []string
		line := underEnded(ended, row)
		again := lists.anew(line.row, cells) || few[line.row] || p.rules.pos >= 0 && isBlank(cellAt(cells, p.rules.pos))
		switch {
		case line.means != "" && again:
			said = append(said, line.means)
		case line.added != "" && p.rules.pos >= 0 && isBlank(cellAt(cells, p.rules.pos)):
			said = append(said, "added later, under “"+line.added+"”")
		case line.apart != "" && again:
			said = append(said, "listed apart under “"+line.apart+"”")
		}
		if n := renamed[row]; n != "" {
			said = append(said, "name put right from "+trim(cellAt(cells, p.Index(Name))))
		}
		c, right := corrected[row]
		if right {
			said = append(said, text.TimePutRight+c.was+": "+c.line)
		} else if d := disputes[row]; d != "" {
			said = append(said, d)
		}
		for _, l := range rules {
			if l.about(p, cells) && !(l.corrects && (right || disputes[row] != "")) {
				said = append(said, l.says)
			}
		}
		if m := colours[g.pieces.fills[row]]; m.ended != "" {
			said = append(said, m.ended)
		}
		if n := g.pieces.notes[row]; n != "" {
			said = append(said, n)
			noted = true
		}
		if g.pieces.struck[row] {
			said = append(said, struckThrough)
			struck++
		} else if inPart[row] {
			said = append(said, struckInPart)
		}
		if d := back[row]; d != "" && !right && disputes[row] == "" {
			said = append(said, d)
		}
		for _, column := range other {
			if c := trim(cellAt(cells, column.Index)); againstInCell(c, column.Meaning) {
				said = append(said, c)
			}
		}
		for _, i := range more {
			if c := trim(cellAt(cells, i)); c != "" {
				said = append(said, c)
			}
		}
		if n, _, ok := lapsOf(cellAt(cells, lapColumn)); ok && lapColumn >= 0 && n < laps {
			said = append(said, fmt.Sprintf("only %d of %d laps", n, laps))
		}
		for _, i := range coded {
			if means := codes[trim(cellAt(cells, i))]; means != "" {
				said = append(said, means)
			}
		}
		for i, c := range cells {
			if i < len(p.Columns) && (p.Columns[i].Meaning != Notes || c != "" && c == signOf(c)) {
				if means := signs[p.signAt(i, c)]; means != "" && !right {
					said = append(said, means)
				}
			}
		}
		if len(said) > 0 {
			remarks[row] = strings.Join(said, "; ")
		}
		return nil
	}) // a grid has no error of its own
	if len(remarks) == 0 {
		return
	}
	p.rules.remarks = remarks
	if len(renamed) > 0 {
		p.rules.renamed = renamed
	}
	if len(corrected) > 0 {
		p.rules.corrected = map[int]string{}
		for row, c := range corrected {
			p.rules.corrected[row] = c.time
		}
	}
	why := "signs that a line beside the table explains"
	if len(rules) > 0 {
		why = fmt.Sprintf("the line “%s”", rules[0].line)
	} else if lapColumn >= 0 {
		why = fmt.Sprintf("heading %q: a few ran fewer laps", p.column(lapColumn).Heading)
	} else if len(coded) > 0 || len(back) > 0 {
		why = "lines beside the table that speak against results"
	} else if len(more) > 0 {
		why = "several columns of notes"
	} else if len(signs) == 0 && struck == 0 {
		why = "lines over the rows that say how their races ended, or that they were added"
	}
	if noted {
		why = "notes to cells"
	}
	if struck > 0 {
		why = fmt.Sprintf("%d rows are struck through", struck)
	}
	if p.rules.remarkColumn = p.Index(Notes); p.rules.remarkColumn >= 0 {
		p.Columns[p.rules.remarkColumn].Why += "; " + why
		return
	}
	p.rules.remarkColumn = p.addColumn("(remark)", Notes, why)
	p.rules.remarkOwn = true
}

// moreNotes are the columns of notes behind the first: "New?", and "Notes" beside it.
func (p *Part) moreNotes() (columns []int) {
	for _, c := range p.Columns {
		if c.Meaning == Notes && c.Index != p.Index(Notes) {
			columns = append(columns, c.Index)
		}
	}
	return columns
}

// linesBeside are the lines above a table, and those below it and between its rows.
func (p *Part) linesBeside() []string {
	lines := slices.Clone(p.Titles)
	for _, s := range p.Skipped {
		lines = append(lines, strings.Trim(s.Text, " |"))
	}
	return lines
}

// endedLine is a line between the rows; means is what it says of how the races below it
// ended, apart the line where it says that they are of another kind, added where it says that they were
// added to the results; "" for any other line.
type endedLine struct {
	row                 int
	means, apart, added string
}

// endedLines are the lines between the rows, where one of them says how races ended,
// "Disqualified:", that what stands under it is of another kind, "Wheelchairs", or that it was added,
// "Late entries". nil where none does.
func (p *Part) endedLines() (lines []endedLine) {
	any := false
	for _, s := range p.Skipped {
		text := strings.Trim(s.Text, " |:.-–")
		if text == "" || s.Why == whyHeading.String() {
			continue
		}
		l := endedLine{row: s.Row}
		if n := len(strings.Fields(text)); n <= 5 && saysEnded(text) {
			l.means = text
		} else if n <= 5 && !hasDigit(text) && setsApart(text) {
			l.apart = text
		} else if n <= 5 && s.Row > p.rules.first && anyWord(text, addedLater) {
			l.added = text
		}
		any = any || l.means != "" || l.apart != "" || l.added != ""
		lines = append(lines, l)
	}
	if !any {
		return nil
	}
	return lines
}

// beforeRows stands for a line above all rows.
const beforeRows = -1

// fewUnder are those of such lines under which no more than half of the rows stand: though the places go on
// there, "Disqualified" is said of them. A tab's name is said of all its rows.
func (p *Part) fewUnder(lines []endedLine) map[int]bool {
	if len(lines) == 0 {
		return nil
	}
	under, n := map[int]int{}, 0
	p.Each(func(row int, _ []string) error {
		under[underEnded(lines, row).row]++
		n++
		return nil
	}) // a grid has no error of its own
	few := map[int]bool{beforeRows: true}
	for row, u := range under {
		few[row] = few[row] || row > 0 && 2*u <= n
	}
	return few
}

// apartByTab is what the name of one of several tabs says of all its rows, as a line over them does; ways of
// taking part are no reason there.
func (p *Part) apartByTab() (l endedLine) {
	tab := strings.Trim(p.Tab, " :.-–")
	if tab == "" || hasDigit(tab) || len(strings.Fields(tab)) > 5 {
		return l
	}
	switch {
	case saysEnded(tab):
		return endedLine{row: beforeRows, means: tab}
	case setsApart(tab) && !anyWord(tab, apartWays):
		return endedLine{row: beforeRows, apart: tab}
	}
	return l
}

// setsApart says whether a line over rows says that these are no results of the run as the others
// are: "Handcycles", "Old list", "Not counted".
func setsApart(line string) bool {
	f := fold(line)
	if text.Uncounted(f) || text.SetAside(f) || text.NotWholeCourse(f) {
		return true
	}
	found := false
	for _, w := range strings.FieldsFunc(f, func(r rune) bool { return strings.ContainsRune(" -,;:()/&'", r) }) {
		if apartWords[w] || apartWays[w] {
			found = true
		} else if !besideApart[w] && !titleWords[w] {
			return false
		}
	}
	return found
}

// besideApart may stand beside such words.
var besideApart = set("race races list lists results runners run runs times time out of the not data lead team at home other and version s")

// apartWords are such words, apartWays those of another way of taking part. Common practice, no source.
var (
	apartWays  = set("wheelchair wheelchairs wheelers handcycle handcycles handcyclists handbike handbikes bicycle bicycles bikes cyclists rollerskis skaters cars canicross dogs rollstuhl handbiker fauteuils")
	apartWords = set(`virtuals virtual remote treadmill volunteers marshals helpers spectators officials crew
	old draft superseded outdated test trial practice example sample training warmup predicted target targets forecast goals entries registered handicap average averages unofficial competition excluded removed deleted errors duplicates struck
	helfer konkurrenz gewertet benevoles bruta volontari vrijwilligers mededinging funktionarer`)
)

// sayListsBelow points out a line over rows whose places, or times, begin anew: what stands under it
// may be no result of this run. Sexes, groups and what else is known of such lines is read.
func (p *Part) sayListsBelow(g *grid, sheet string) {
	if !p.Whole || p.Kind == Volunteers || p.rules.sectionColumn >= 0 || p.rules.time < 0 {
		return
	}
	var lines []endedLine
	for _, s := range p.Skipped {
		if text := strings.Trim(s.Text, " |:.-–"); text != "" && s.Why == whyFooter.String() && s.Row > p.rules.first && !p.rules.overLists[s.Row] && rowFilled(g.cellsOf(s.Row)) == 1 {
			lines = append(lines, endedLine{row: s.Row, means: text})
		}
	}
	if len(lines) == 0 {
		return
	}
	below, said := listsBelow{p: p}, 0
	p.Each(func(row int, cells []string) error {
		line := underEnded(lines, row)
		before := below.again
		if below.anew(line.row, cells) && !before && line.row > 0 && line.row != said && !isSection(line.means) && !saysEnded(line.means) && !setsApart(line.means) && (!isRemark(line.means) || line.row+1 == row) {
			said = line.row
			p.problem(sheet, row, -1, place.Look, "list-under-line", line.means, "one list of results",
				"The rows under this line begin anew. If they are of this run, there is nothing to do; else take them out and load the sheet again.")
		}
		return nil
	}) // a grid has no error of its own
}

// sayHidden points out the rows of results that somebody has hidden, where they are few: they may
// have been taken out. Rows in a group that is folded up, or under a filter, are many.
func (p *Part) sayHidden(g *grid, sheet string) {
	const few = 4 // one row in so many
	if len(g.pieces.unseen) == 0 {
		return
	}
	rows, hidden := 0, []place.Problem(nil)
	p.Each(func(row int, cells []string) error {
		if rows++; g.pieces.unseen[row] {
			hidden = append(hidden, place.Problem{Place: place.Place{Row: row}, Read: shorten(rowText(cells), 80)})
		}
		return nil
	}) // a grid has no error of its own
	if few*len(hidden) > rows {
		return
	}
	for _, h := range hidden {
		p.problem(sheet, h.Place.Row, -1, place.Look, "row-hidden", h.Read, "a row that is shown",
			"This row is hidden in the workbook and counts as the others do. If it was meant to be taken out, delete it and load the sheet again; else there is nothing to do.")
	}
}

// underEnded is the last line above a row.
func underEnded(lines []endedLine, row int) (last endedLine) {
	for _, l := range lines {
		if l.row < row && (l.row > last.row || last.row == 0) {
			last = l
		}
	}
	return last
}

// listsBelow tells, row by row, whether a list begins anew under a line: the place is none after
// the last one above it or, without places, the time is less.
type listsBelow struct {
	p          *Part
	line       int // under which the last row stood
	again      bool
	place, end float64 // of the last row
}

func (l *listsBelow) anew(line int, cells []string) bool {
	r := &l.p.rules
	place, end := looseNumber(trim(cellAt(cells, r.pos))), finishTime(cellAt(cells, r.time))
	if line != l.line {
		l.line = line
		l.again = l.again || r.pos >= 0 && place > 0 && place <= l.place || r.pos < 0 && end > 0 && end < l.end
	}
	if place > 0 {
		l.place = place
	}
	if end > 0 {
		l.end = end
	}
	return l.again
}

// signs are the usual signs of footnotes; the longer stand first.
var footnoteSigns = []string{"***", "**", "*", "††", "†", "‡", "##", "#", "§", "¹", "²", "³", "⁴", "^^", "^", "++", "+", "¶", "¤"}

// bracketSigns are figures and signs in brackets that do for footnotes, at the end of a cell and before what they mean.
var bracketSigns = regexp.MustCompile(`^[(\[]([0-9a-dxXVJ*+†#])[)\]]|[(\[]([0-9a-dxXVJ*+†#])[)\]]$`)

// markedBy is the sign and what follows in "Runners marked * did not finish", "Times with † are estimates".
var markedBy = regexp.MustCompile(`(?i)^\pL+(?: \pL+)? (?:marked|shown|flagged|with|markiert mit|mit|marques|marcados con|segnati con|gemarkeerd met|met|markta med|merket med) (?:with |by |as |an? |asterisk )*[("']?([*†‡#§¶^+]+)[)"']? (?:are |have |is |sind |sont |son |sono |zijn |ar |er )?(.+)$`)

// signLine reads a line that explains a sign: "* disqualified", "† = guest".
func signLine(line string) (sign, means string, ok bool) {
	line = trim(line)
	if m := markedBy.FindStringSubmatch(line); m != nil {
		return m[1], trim(m[2]), slices.Contains(footnoteSigns, m[1]) && len(m[2]) <= 80
	}
	if m := bracketSigns.FindStringSubmatch(line); m != nil && m[1] != "" {
		means = strings.Trim(line[len(m[0]):], " \t=:-–—")
		return plainSign(m[0]), means, len(means) > 2 && len(means) <= 80 && hasLetter(means)
	}
	for _, s := range footnoteSigns {
		if rest, found := strings.CutPrefix(line, s); found {
			means = strings.Trim(rest, " \t=:-–—)")
			return s, means, (len(means) > 2 || statusWords[fold(means)]) && len(means) <= 80 && hasLetter(means)
		}
	}
	return "", "", false
}

// plainSign takes the brackets off a sign that needs none: "(*)" is "*".
func plainSign(sign string) string {
	if inner := strings.Trim(sign, "()[]"); slices.Contains(footnoteSigns, inner) {
		return inner
	}
	return sign
}

// signAt is the sign at the end of a cell of a column, "" for none: a plus behind an age is a part of it.
func (p *Part) signAt(i int, cell string) string {
	sign := signOf(cell)
	if i >= len(p.Columns) || sign != "" && sign[0] == '+' && p.Columns[i].Meaning != Name && p.Columns[i].Meaning != FamilyName && p.Columns[i].Meaning != Time && p.Columns[i].Meaning != Position {
		return ""
	}
	return sign
}

// signOf is the sign at the end of a cell, or the star before it, "" for none.
func signOf(cell string) string {
	if cell == "" {
		return ""
	}
	if cell[0] == '*' && cell[len(cell)-1] != '*' {
		return cell[:len(cell)-len(strings.TrimLeft(cell, "*"))]
	}
	if c := cell[len(cell)-1]; c >= '0' && c <= '9' || c|0x20 >= 'a' && c|0x20 <= 'z' {
		return ""
	}
	cell = trim(cell)
	if strings.HasSuffix(cell, ")") || strings.HasSuffix(cell, "]") {
		if m := bracketSigns.FindStringSubmatch(cell); m != nil && m[2] != "" {
			return plainSign(m[0])
		}
	}
	cell = strings.TrimRight(cell, ")")
	for _, s := range footnoteSigns {
		if strings.HasSuffix(cell, s) {
			return s
		}
	}
	return ""
}

// addRemark puts the remark of a row into its column.
func (r *rowRules) addRemark(row int, cells []string) []string {
	text := r.remarks[row]
	if time := r.corrected[row]; time != "" {
		cells[r.time] = time
	}
	if name := r.renamed[row]; name != "" {
		cells[r.name] = name
	}
	if r.remarkOwn {
		return append(cells[:r.remarkColumn], text)
	}
	if c := cellAt(cells, r.remarkColumn); text != "" && r.remarkColumn < len(cells) {
		if c != "" && r.codes[c] == "" {
			text = c + "; " + text
		}
		cells[r.remarkColumn] = text
	}
	return cells
}
