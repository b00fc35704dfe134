package sheet

import "strings"

// minuteMarks and secondMarks stand in cells of their own behind the minutes and the seconds of a time.
var (
	minuteMarks = set("' ′ ’ : h m mn min min. minutes minuten minuti minutos minuter minuter.")
	secondMarks = set("\" ″ ” '' s s. sec sec. sek sek. seconds sekunden secondes segundos secondi sekunder")
)

// joinMarked puts times together whose minutes and seconds stand in cells of their own with a mark in the cell
// between them, "24 | ' | 31 | "", on nearly all rows below a heading that says nothing of its own
// above the marks: the M of a column of sexes is none. It returns how many rows it changed.
func (g *grid) joinMarked(lex *lexicon, headings []string, after int) int {
	const looks = 5
	column := -1
	for i, seen := 0, 0; i < g.len() && seen < looks && column < 0; i++ {
		row, cells := g.at(i)
		if row <= after {
			continue
		}
		seen++
		for c := 1; c+1 < len(cells) && column < 0; c++ {
			if len(cells[c]) > 0 && len(cells[c]) <= 8 && g.marked(cells, c) {
				column = c
			}
		}
	}
	if h := lex.read(cellAt(headings, column)); column < 0 || h.known && !h.meaning.isTime() {
		return 0
	}
	rows, marked := 0, 0
	for i := range g.len() {
		row, cells := g.at(i)
		if row > after && rowFilled(cells) > 2 {
			rows++
			if g.marked(cells, column) {
				marked++
			}
		}
	}
	if marked < 3 || 10*marked < 8*rows {
		return 0
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		if row <= after || !g.marked(cells, column) {
			return nil, false
		}
		w := append([]string(nil), cells...)
		seconds := trim(w[column+1])
		if whole, _, _ := strings.Cut(strings.ReplaceAll(seconds, ",", "."), "."); len(whole) == 1 {
			seconds = "0" + seconds
		}
		w[column-1], w[column], w[column+1] = trim(w[column-1])+":"+seconds, "", ""
		if column+2 < len(w) && secondMarks[strings.ToLower(trim(w[column+2]))] {
			w[column+2] = ""
		}
		return w, true
	})
}

// marked says whether a mark for minutes stands in a column between minutes and seconds.
func (g *grid) marked(cells []string, column int) bool {
	minutes, seconds := trim(cellAt(cells, column-1)), trim(cellAt(cells, column+1))
	k := kindOf(seconds)
	return minuteMarks[strings.ToLower(trim(cellAt(cells, column)))] && kindOf(minutes) == kInt && len(minutes) <= 3 && (k == kInt || k == kDecimal) && looseNumber(seconds) < 60
}
