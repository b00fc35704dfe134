package sheet

import (
	"slices"
	"strings"
)

// Facts of a run that stand outside its table: labels and values beside it, the
// lines of a cover tab.

// liftFacts takes a block of labels and their values that stands to the right of a
// table's heading, "Venue: | Alder Bank" above "Date: | 3 Jan 2026", out of the
// rows: they are lines about the whole table.
func (t table) liftFacts(lex *lexicon) table {
	if t.grid == nil || t.grid.len() < 3 {
		return t
	}
	col := t.factColumn(lex)
	if col < 0 {
		return t.liftTitleBeside(lex)
	}
	g := t.grid.fresh()
	for i := 0; i < t.grid.len(); i++ {
		row, cells := t.grid.at(i)
		label := trim(unmangle(cellAt(cells, col)))
		if label == "" {
			g.add(row, cells)
			continue
		}
		var values []string
		for c := col + 1; c < len(cells); c++ {
			if v := trim(unmangle(cells[c])); v != "" {
				values = append(values, strings.Join(strings.Fields(v), " "))
			}
		}
		t.facts = append(t.facts, strings.TrimSuffix(label, ":")+": "+strings.Join(values, " | "))
		g.add(row, cells[:col])
	}
	t.src, t.grid = g, g
	return t
}

// liftTitleBeside takes a title of a few lines out of the rows that stands to the right of the
// table, in the top rows of the last column, behind a blank one: the place over the day.
func (t table) liftTitleBeside(lex *lexicon) table {
	const mostLines, top = 3, 6
	col := -1
	for i := range min(t.grid.len(), top) {
		col = max(col, t.grid.width(i)-1)
	}
	if col < 3 || t.grid.len() < 5 {
		return t
	}
	var lines []string
	dated, text := false, false
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if len(cells) <= col {
			continue
		}
		c := strings.Join(strings.Fields(trim(unmangle(cells[col]))), " ")
		switch {
		case c == "" && i < top, c == "" && len(lines) > 0:
			continue
		case c == "" || i >= top || len(lines) == mostLines || len(cells) > col+1 && rowFilled(cells[col+1:]) > 0:
			return t
		}
		switch k := kindOf(c); {
		case k == kDate || len(findDates(c)) > 0:
			dated = true
		case k != kText || lex.read(c).known:
			return t
		}
		text = text || hasLetter(c)
		lines = append(lines, c)
	}
	if !dated || !text || !t.freeBefore(col) {
		return t
	}
	g := t.grid.fresh()
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		g.add(row, cells[:min(len(cells), col)])
	}
	t.facts = append(t.facts, lines...)
	t.src, t.grid = g, g
	return t
}

// factColumn is the column of such labels: the last but one that is filled or
// before it, of labels alone, one of which says the course or the date; -1 for none.
func (t table) factColumn(lex *lexicon) int {
	const looks = 40 // a column that goes on further is one of the table
	most := 0
	for i := 0; i < t.grid.len(); i++ {
		if n := t.grid.width(i); i < looks {
			most = max(most, n)
		}
	}
	for col := 3; col+1 < most; col++ {
		labels, run, others := 0, false, 0
		for i := 0; i < t.grid.len() && others == 0; i++ {
			_, cells := t.grid.at(i)
			c := trim(unmangle(cellAt(cells, col)))
			if c == "" {
				continue
			}
			g := lex.read(strings.TrimSuffix(c, ":"))
			said := g.known && (g.meaning == Course || g.meaning == Date) || isVenueLabel(fold(c))
			switch {
			case !strings.HasSuffix(c, ":") && !said && !labelWords[fold(c)], isBlank(cellAt(cells, col+1)), len(c) > 30:
				others++
			default:
				labels++
				run = run || said
			}
		}
		if others == 0 && labels >= 2 && run && t.freeBefore(col) {
			return col
		}
	}
	return -1
}

// freeBefore says whether a table stands to the left of a column, with a blank
// column between.
func (t table) freeBefore(col int) bool {
	filled := 0
	for i := 0; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if !isBlank(cellAt(cells, col-1)) {
			return false
		}
		for c := 0; c < col-1 && c < len(cells); c++ {
			if !isBlank(cells[c]) {
				filled++
			}
		}
	}
	return filled >= 6
}

// coverLines is how many lines at the top of a cover tab may say the run.
const coverLines = 4

// keepCover keeps the first lines of a tab in front of the results, or of one called so, which may say
// what they are of: "Alder Bank" over "3 May 2026".
func (s *Sheet) keepCover(t table) {
	if (len(s.Parts) > 0 || t.tabIndex > 0) && !coverTab(t.tab) && !t.saysDayAlone() || helperTab(t.tab) && !coverTab(t.tab) {
		return
	}
	seen := 0
	for i := 0; i < t.grid.len() && seen < coverLines; i++ {
		_, cells := t.grid.at(i)
		switch rowFilled(cells) {
		case 0:
			continue
		case 1:
			if text := titleText(cells); !isRemark(text) {
				s.cover = append(s.cover, text)
			}
		case 2:
			label := cells[slices.IndexFunc(cells, func(c string) bool { return !isBlank(c) })]
			if !slices.ContainsFunc(cells, isDate) || seen > 0 && plainWords(label) != "" { // "Results for | 3 May 2026", not "Founded"
				return
			}
			s.cover = append(s.cover, titleText(cells)) // "Alder Bank | 3 May 2026"
		default:
			return // a table begins
		}
		seen++
	}
}

// saysDayAlone says whether a tab holds nothing but a few lines of one cell, one of them with a date.
func (t table) saysDayAlone() bool {
	filled, dated := 0, 0
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		switch n := rowFilled(cells); {
		case n == 0:
		case n > 1 || filled == coverLines:
			return false
		default:
			filled++
			if len(findDates(titleText(cells))) > 0 {
				dated++
			}
		}
	}
	return dated == 1
}

// coverTab says whether a tab's name announces what the workbook is about.
func coverTab(tab string) bool { return onlyWords(tab, coverWords) }

// onlyWords says whether a tab's name holds only these words and general ones.
func onlyWords(tab string, words map[string]bool) bool {
	for _, w := range strings.Fields(fold(tab)) {
		if !words[w] && !titleWords[w] && !isOrdinalOrNumber(w) {
			return false
		}
	}
	return true
}

// seasonTabs are words for tabs of a season, which mostly hold totals but may hold the
// times of its runs as well.
var seasonTabs = set("league table summary standings stats statistics liga tabelle klassement championship winter summer spring autumn")

var coverWords = set(`summary dashboard cover info information front title about overview details zusammenfassung ubersicht deckblatt resume resumen resumo sommario samenvatting
	overzicht podsumowanie sammanfattning oversigt oversikt titelblatt forside forsida omslag kansi kansilehti boritolap boritó borito titulni strana naslovnica obalka kapak εξωφυλλο
	portada capa copertina voorblad okladka tytulowa esileht vaks virselis vaka обложка титул обкладинка корица 表紙`)

// factTabs are called by words for what is said of the data of a workbook: the labels on them hold,
// other lines there are about anything. Common practice, no source.
var factTabs = set("settings setup config configuration einstellungen reglages parametres ajustes impostazioni instellingen ustawienia installningar indstillinger innstillinger asetukset nastaveni readme read me about notes info meta metadata metadaten metadonnees metadatos metadati dataset data description beschreibung description popis opis leiras kuvaus")

// filledTemplate says whether a tab called a template or a table, or entries where it has
// places, was filled in with results all the same: three lines or more have a name and a time, and no column has
// points, numbers of runs or bests.
func (p *Part) filledTemplate(tab string) bool {
	for _, w := range strings.Fields(fold(tab)) {
		if helperTabs[w] && !templateWords[w] && !(entryTabs[w] && p.Index(Position) >= 0) {
			return false
		}
	}
	if p.Index(Points) >= 0 || p.Index(TotalRuns) >= 0 || p.Index(PersonalBest) >= 0 {
		return false
	}
	name, clock := p.Index(Name), p.Index(Time)
	if name < 0 {
		name = max(p.Index(FamilyName), p.Index(GivenName))
	}
	n := 0
	p.src.each(func(_ int, cells []string) error {
		if kindOf(cellAt(cells, name)) == kText && secondsOf(cells, clock) > 0 {
			n++
		}
		if n >= 3 {
			return errStop
		}
		return nil
	}) // a grid has no errors of its own
	return n >= 3
}

// entryTabs are words for the list of those who signed up, in which some write the results.
var entryTabs = set("registrations registered entries signup")

var templateWords = set("table tables tabelle tableau tabla tabella tabel template vorlage modele plantilla modello sjabloon szablon mall skabelon mal modelo")
