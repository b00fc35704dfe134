package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// firstDay is the first day of two before a month, "17-18 October" and "17 & 18
// October". A dash with spaces is none: "Run 2 - 3 January".
var firstDay = regexp.MustCompile(`(?:^|[^\d./-])(\d{1,2})(?:st|nd|rd|th|\.)?(?:[-–/]|\s*(?:&|\+|and|or|und|oder|et|ou|y|e|en|och|og)\s*)$`)

// firstOfTwo is the first of two days further apart, "19 and 26 July", "19.7./26.7.2026", with its month
// where it has one.
var firstOfTwo = regexp.MustCompile(`(?:^|[^\d./-])(\d{1,2})(?:st|nd|rd|th)?(?:\s*(?:&|\+|\b(?:and|or|und|oder|et|ou|och|og|y|en|e)\b)\s*|\.(\d{1,2})\.?\s*[/&+]\s*)$`)

// withFirstDays adds to the dates of a text the first day where it names two on end,
// as the runs of a weekend: which of them it was is said elsewhere, or asked.
func withFirstDays(text string, dates []foundDate) (out []foundDate) {
	for _, f := range dates {
		if len(f.readings) == 1 && (f.readings[0].order == "" || f.sep == '.') {
			if m := firstDay.FindStringSubmatchIndex(text[:f.from]); m != nil {
				r := f.readings[0]
				if d, _ := strconv.Atoi(text[m[2]:m[3]]); d == r.d-1 {
					first := f
					r.d = d
					first.readings, first.from, first.to = []reading{r}, m[2], f.from
					out = append(out, first)
				}
			}
		}
		if first, two := earlierDay(text, f); two {
			out = append(out, first)
		}
		out = append(out, f)
	}
	return out
}

// earlierDay is the first of two days of which the second is f.
func earlierDay(text string, f foundDate) (first foundDate, two bool) {
	m := firstOfTwo.FindStringSubmatchIndex(text[:f.from])
	if m == nil || m[4] < 0 && (len(f.readings) != 1 || f.readings[0].order != "") {
		return f, false
	}
	r := f.readings[0]
	r.order = ""
	d, _ := strconv.Atoi(text[m[2]:m[3]])
	if m[4] >= 0 {
		r.m, _ = strconv.Atoi(text[m[4]:m[5]])
	} else if d == r.d-1 {
		return f, false // two days on end, found before
	}
	r.d = d
	first = f
	first.readings, first.from, first.to = []reading{r}, m[2], f.from
	return first, validDate(max(r.y, 2000), r.m, d)
}

// monthOfTab reads "Nov 25" and "January '26" as the month of a year.
func monthOfTab(tab string) (month, year int, ok bool) {
	f := strings.Fields(fold(tab))
	if len(f) != 2 || len(f[1]) != 2 || !digitsOnly(f[1]) {
		return 0, 0, false
	}
	m, known := monthNames[f[0]]
	n, _ := strconv.Atoi(f[1])
	return m + 1, 2000 + n, known && n >= 10 && n < 40
}

// monthOver is the month that a tab says for the days on it, "March 2026", "Mar-26"; "" for none.
func monthOver(tab string) string {
	if _, year, ok := monthOfTab(tab); ok {
		return strings.Fields(fold(tab))[0] + " " + strconv.Itoa(year)
	}
	return monthSaid(tab)
}

// inMonth says whether dates without a year, or of the year, all lie in its month, on other days than the
// number of the year: the tab called "Nov 25" is then not of 25 November.
func inMonth(dates []evidence, month, year int) bool {
	n := 0
	for _, e := range dates {
		if len(e.readings) != 1 || e.readings[0].y != 0 && e.readings[0].y != year || e.readings[0].m != month {
			return false
		}
		n++
	}
	return n > 0
}

// daysInMonth gives the lines that say only a day, "Tues 24th", the month that the tab or a line
// above them says, "March 2026", as their readers do. A day that falls on another weekday
// than its line says is left as it is.
func (t table) daysInMonth() {
	month := monthOver(t.tab)
	full := map[int][]string{} // the cells with their month, by the index of the row
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		filled := rowFilled(cells)
		if filled == 1 {
			if text := titleText(cells); len(text) <= 40 && monthSaid(text) != "" {
				month = monthSaid(text)
				continue
			}
		}
		if filled == 0 || month == "" || filled > narrow {
			continue
		}
		if days := daysOf(cells, month); days != nil {
			full[i] = days // a line of a day, or one of the days of runs side by side
		}
	}
	if len(full) == 0 {
		return
	}
	t.grid.mend(func(i, _ int, _ []string) ([]string, bool) {
		days, ok := full[i]
		return days, ok
	})
}

// dayColumnInMonths gives the cells of a column of days that are nothing but a day of the month, "14", "Sat 14th", the month and year
// of the line above them, "March 2026", where each such line stands over some and no other line with a time is without
// a day. It returns how many such lines there were and leaves them out.
func (t *table) dayColumnInMonths(lex *lexicon) int {
	day := -1
	month, above, last := "", 0, 0
	lines, full := map[int]bool{}, map[int][]string{}
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		filled := rowFilled(cells)
		if filled == 1 {
			text := titleText(cells)
			if said := monthSaid(text); len(text) <= 40 && said != "" && len(yearsIn(text)) == 1 && len(tokenize(text)) < 4 {
				if month != "" && above == 0 {
					return 0
				}
				month, above, last, lines[i] = said, 0, 0, true
				continue
			}
		}
		if day < 0 {
			if i < headingLooks && filled > 2 && !slices.ContainsFunc(cells, isFigureOfResult) {
				day = slices.IndexFunc(cells, func(h string) bool { return lex.read(h).meaning == Date })
			}
			continue
		}
		d, ok := dayAlone(cellAt(cells, day))
		switch {
		case ok && month != "" && rowClocks(cells) > 0 && d >= last:
			w := slices.Clone(cells)
			w[day] = strconv.Itoa(d) + " " + month
			above, last, full[i] = above+1, d, w
		case !isBlank(cellAt(cells, day)) && rowClocks(cells) > 0:
			return 0
		}
	}
	if len(full) == 0 || above == 0 {
		return 0
	}
	g := t.grid.fresh()
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		if w := full[i]; w != nil {
			cells = w
		}
		if !lines[i] {
			g.add(row, cells)
		}
	}
	t.grid, t.src = g, g
	return len(lines)
}

// daysInYear gives lines that are nothing but a day and a month, two or more over lists, the year that the
// first line of the table says, where it says one, and no day.
func (t table) daysInYear() {
	if t.grid.len() == 0 {
		return
	}
	_, first := t.grid.at(0)
	title := titleText(first)
	years := yearsIn(title)
	if len(years) != 1 || len(findDates(title)) > 0 || slices.ContainsFunc(yearsIn(t.tab), func(y int) bool { return y != years[0] }) {
		return
	}
	full, days := map[int]string{}, map[string]bool{}
	for i := 1; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		if rowFilled(cells) != 1 {
			continue
		}
		text := trim(titleText(cells))
		if len(text) > 30 || hasNoDigit(text) || !isDate(text) {
			continue
		}
		dated, ok := withYear(text, years[0])
		if !ok {
			continue
		}
		full[i] = dated
		days[text] = true
	}
	if len(days) < 2 || len(days) < len(full) {
		return
	}
	t.grid.mend(func(i, _ int, cells []string) ([]string, bool) {
		text, ok := full[i]
		if !ok {
			return nil, false
		}
		w := slices.Clone(cells)
		w[slices.IndexFunc(w, func(c string) bool { return !isBlank(c) })] = text
		return w, true
	})
}

// withYear puts a year behind a text that is a day of a month and says none.
func withYear(text string, year int) (dated string, ok bool) {
	f := scanDates(text, true)
	if len(f) != 1 || f[0].readings[0].y != 0 || f[0].readings[0].order != "" && (f[0].to != len(text) || f[0].sep == 0 || text[len(text)-1] == f[0].sep) {
		return "", false
	}
	between := " "
	if f[0].readings[0].order != "" {
		between = string(f[0].sep) // "18/01", perhaps beside "11/01", which can be read two ways
	}
	return text + between + strconv.Itoa(year), true
}

// yearOfLine is the year that a line consists of, with general words, "2023", "Season 2023 (12 runs)"; 0 for none.
func yearOfLine(cells []string) int {
	if rowFilled(cells) != 1 {
		return 0
	}
	text, _, _ := strings.Cut(titleText(cells), " (")
	years := yearsIn(text)
	if len(years) != 1 || len(text) > 24 {
		return 0
	}
	if year := strconv.Itoa(years[0]); strings.Count(text, year) != 1 || plainWords(strings.ReplaceAll(text, year, " ")) != "" {
		return 0
	}
	return years[0]
}

// yearLines gives the days that say no year that of the line above them which is nothing but a year, where each
// such line stands over some, and leaves these lines out. It returns how many there were. A year above the
// first heading is the sheet's own, and alone it stays there.
func (t *table) yearLines() int {
	full, lines, seen, year, under := map[int][]string{}, map[int]bool{}, map[int]bool{}, 0, 0
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		if y := yearOfLine(cells); y != 0 {
			if seen[y] || year != 0 && under == 0 {
				return 0
			}
			year, under, seen[y], lines[i] = y, 0, true, true
			continue
		}
		if year == 0 {
			continue
		}
		for c, text := range cells {
			if text = trim(text); len(text) > 30 || hasNoDigit(text) || !isDate(text) {
				continue
			}
			if dated, ok := withYear(text, year); ok {
				if full[i] == nil {
					full[i] = slices.Clone(cells)
				}
				full[i][c] = dated
				under++
			}
		}
	}
	if len(lines) < 2 || under == 0 {
		return 0
	}
	g, blank := t.grid.fresh(), false
	for i := range t.grid.len() {
		row, cells := t.grid.at(i)
		switch {
		case lines[i]:
			blank = false // nor what is blank above it
			continue
		case rowFilled(cells) == 0:
			blank = true
			continue
		case blank:
			g.add(row-1, nil)
			blank = false
		}
		if full[i] != nil {
			cells = full[i]
		}
		g.add(row, cells)
	}
	t.grid, t.src = g, g
	return len(lines)
}

// weekdaysOfTitle puts the day in place of a weekday that fills a cell, where the lines at the top name two days or
// more, each of another weekday, "7-8 June 2025", and all such cells are of these: a column
// "Sat, Sat, Sun", or lines over lists. Two of them differ at least. A tab called after a weekday leaves that day alone
// in them.
func (t table) weekdaysOfTitle() {
	days, twice := map[int]string{}, false
	first := 0
	for ; first < min(t.grid.len(), headingLooks); first++ {
		_, cells := t.grid.at(first)
		text := titleText(cells)
		if rowFilled(cells) > 2 {
			break
		}
		for _, f := range withFirstDays(text, findDates(text)) {
			for _, r := range f.readings { // "7-8 June" are two
				if r.y == 0 || r.order != "" && len(f.readings) > 1 {
					continue
				}
				w, iso := int(r.day().Weekday()), r.day().String()
				twice = twice || days[w] != "" && days[w] != iso
				days[w] = iso
			}
		}
	}
	if len(days) < 2 || twice {
		return
	}
	if w, ok := weekdayAlone(t.tab); ok && days[w] != "" { // a tab for each day
		t.grid.mend(func(i, _ int, cells []string) (changed []string, ok bool) {
			for c, text := range cells {
				for _, f := range findDates(text) {
					if i < first && len(f.readings) > 1 {
						changed, ok = slices.Clone(cells), true
						changed[c] = text[:f.from] + days[w] + text[f.to:]
						return changed, ok
					}
				}
			}
			return nil, false
		})
		return
	}
	seen := map[int]bool{}
	for i := range t.grid.len() {
		_, cells := t.grid.at(i)
		for _, c := range cells {
			if w, ok := weekdayAlone(c); ok {
				if seen[w] = true; days[w] == "" {
					return
				}
			}
		}
	}
	if len(seen) < 2 {
		return
	}
	t.grid.mend(func(_, _ int, cells []string) (changed []string, ok bool) {
		for c, text := range cells {
			if w, is := weekdayAlone(text); is {
				if !ok {
					changed, ok = slices.Clone(cells), true
				}
				changed[c] = days[w]
			}
		}
		return changed, ok
	})
}

// weekdayAlone says which weekday a cell of nothing else names.
func weekdayAlone(cell string) (weekday int, ok bool) {
	if len(cell) < 2 || len(cell) > 24 || !hasNoDigit(cell) {
		return 0, false
	}
	weekday, ok = weekdayNames[strings.Trim(fold(cell), ". ")]
	return weekday, ok
}

// daysOf are the cells of a row with a month behind each, where all that are filled say a day
// alone that the month has; nil where not.
func daysOf(cells []string, month string) (days []string) {
	for _, c := range cells {
		text := trim(c)
		if text == "" {
			days = append(days, c)
			continue
		}
		if len(text) > 24 || !saysDayAlone(text) {
			return nil
		}
		if d := findDates(text + " " + month); len(d) != 1 || !d[0].fallsOn() {
			return nil
		}
		days = append(days, text+" "+month)
	}
	return days
}

// saysDayAlone says whether a text is the day of a month and can be nothing else: "7th",
// "Sat 7", but not "7".
func saysDayAlone(text string) bool {
	_, ok := dayAlone(text)
	return ok && !digitsOnly(strings.TrimSuffix(text, "."))
}

// fallsOn says whether a date is on the weekday beside it, as far as both are said.
func (f foundDate) fallsOn() bool {
	return f.weekday < 0 || !slices.ContainsFunc(f.readings, func(r reading) bool { return r.y != 0 && int(r.day().Weekday()) != f.weekday })
}
