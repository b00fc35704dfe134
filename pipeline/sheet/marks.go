package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// Remarks that no column holds: rows that are struck through, and signs behind a name, a
// time or a place that a line beside the table explains, "* disqualified".

// struckThrough is what is said of a row of struck letters.
const struckThrough = "struck through"

// remark finds the remarks of a part's rows and adds them to its column of notes, or a
// column of their own.
func (p *Part) remark(g *grid, sheet string, colours map[uint32]fillMeaning) {
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
	rules := rulesOfLines(lines)
	corrections, disputes := p.timeCorrections(sheet)
	renamed := p.nameCorrections(sheet)
	if len(signs) == 0 && len(g.pieces.struck) == 0 && len(ended) == 0 && len(rules) == 0 && len(colours) == 0 && len(corrections) == 0 && len(disputes) == 0 && len(renamed) == 0 {
		return
	}
	corrected := map[int]correction{}
	for _, c := range corrections {
		corrected[c.row] = c
	}
	remarks, struck := map[int]string{}, 0
	p.Each(func(row int, cells []string) error {
		var said []string
		if means := underEnded(ended, row); means != "" && p.rules.pos >= 0 && isBlank(cellAt(cells, p.rules.pos)) {
			said = append(said, means)
		}
		if n := renamed[row]; n != "" {
			said = append(said, "name put right from "+trim(cellAt(cells, p.Index(Name))))
		}
		c, right := corrected[row]
		if right {
			said = append(said, "time put right from "+c.was+": "+c.line)
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
		if g.pieces.struck[row] {
			said = append(said, struckThrough)
			struck++
		}
		for i, c := range cells {
			if i < len(p.Columns) && (p.Columns[i].Meaning != Notes || c != "" && c == signOf(c)) {
				if means := signs[signOf(c)]; means != "" && !right {
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
	} else if len(signs) == 0 && struck == 0 {
		why = "lines over the rows that say how their races ended"
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

// linesBeside are the lines above a table, and those below it and between its rows.
func (p *Part) linesBeside() []string {
	lines := slices.Clone(p.Titles)
	for _, s := range p.Skipped {
		lines = append(lines, strings.Trim(s.Text, " |"))
	}
	return lines
}

// endedLine is a line between the rows; means is what it says of how the races below it
// ended, "" for any other line.
type endedLine struct {
	row   int
	means string
}

// endedLines are the lines between the rows, where one of them says how races ended:
// "Disqualified:". nil where none does.
func (p *Part) endedLines() (lines []endedLine) {
	any := false
	for _, s := range p.Skipped {
		text := strings.Trim(s.Text, " |:.-–")
		if text == "" {
			continue
		}
		means := ""
		if len(strings.Fields(text)) <= 5 && saysEnded(text) {
			means, any = text, true
		}
		lines = append(lines, endedLine{row: s.Row, means: means})
	}
	if !any {
		return nil
	}
	return lines
}

// underEnded is what the last line above a row says of how its race ended.
func underEnded(lines []endedLine, row int) (means string) {
	last := 0
	for _, l := range lines {
		if l.row < row && l.row > last {
			last, means = l.row, l.means
		}
	}
	return means
}

// signs are the usual signs of footnotes; the longer stand first.
var footnoteSigns = []string{"***", "**", "*", "††", "†", "‡", "##", "#", "§", "¹", "²", "³"}

// signLine reads a line that explains a sign: "* disqualified", "† = guest".
func signLine(line string) (sign, means string, ok bool) {
	line = trim(line)
	for _, s := range footnoteSigns {
		if rest, found := strings.CutPrefix(line, s); found {
			means = strings.Trim(rest, " \t=:-–—)")
			return s, means, len(means) > 2 && len(means) <= 80 && hasLetter(means)
		}
	}
	return "", "", false
}

// signOf is the sign at the end of a cell, "" for none.
func signOf(cell string) string {
	if cell == "" {
		return ""
	}
	if c := cell[len(cell)-1]; c >= '0' && c <= '9' || c|0x20 >= 'a' && c|0x20 <= 'z' {
		return ""
	}
	cell = strings.TrimRight(trim(cell), ")")
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
		if c != "" {
			text = c + "; " + text
		}
		cells[r.remarkColumn] = text
	}
	return cells
}
