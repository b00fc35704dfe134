package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// listsRecords says whether a title announces best times of many days.
func listsRecords(titles []string) bool {
	for _, t := range titles {
		f := " " + fold(t) + " "
		for _, w := range []string{" records ", " all time ", " alltime ", " best times ", " rekorde ", " bestenliste ", " palmares ", " rekordy "} {
			if strings.Contains(f, w) && len(strings.Fields(f)) <= 8 {
				return true
			}
		}
	}
	return false
}

// titleText joins the cells of a title line; a label and its value in the next
// cell read "Course: Alder Bank".
func titleText(cells []string) string {
	var parts []string
	for _, c := range wholeDay(cells) {
		if c = trim(unmangle(c)); c == "" || len(parts) > 0 && parts[len(parts)-1] == c {
			continue
		}
		text := closed(c)
		columns := []string{text}
		if text == c {
			columns = farApart.Split(c, -1)
		}
		for _, text := range columns {
			parts = append(parts, labelApart.ReplaceAllString(strings.Join(strings.Fields(text), " "), "$1: $2"))
		}
	}
	if len(parts) == 2 && len(parts[0]) <= 20 && !strings.ContainsAny(parts[0], "0123456789") {
		return strings.TrimSuffix(parts[0], ":") + ": " + parts[1]
	}
	return strings.Join(parts, " | ")
}

// farApart divides what stands in columns on a line that was not cut, "Venue      Alder Bank".
var farApart = regexp.MustCompile(`\s{4,}`)

// closed closes up words whose letters stand apart, "A L D E R   B A N K   5 km": three single
// letters and more with one blank between each, words divided by more.
func closed(s string) string {
	if len(s) < 5 || s[1] != ' ' && !apartInside.MatchString(s) {
		return s
	}
	return apartWord.ReplaceAllStringFunc(s, func(word string) string {
		return strings.ReplaceAll(word, " ", "")
	})
}

// apartWord is such a word, apartInside one that is not the first.
var (
	apartWord   = regexp.MustCompile(`(?:^|\b)\pL(?: \pL){2,}\b`)
	apartInside = regexp.MustCompile(`  \pL \pL \pL`)
)

// labelApart is a label without a space before its value, "Date:3 May 2026".
var labelApart = regexp.MustCompile(`^(\pL+):(\d{1,2}[ ./-]|\pL)`)

// titleTexts is titleText for a line that may hold several labels, each with its
// value in the next cell: "Course | Alder Bank | Weather | dry" says two things.
func titleTexts(lex *lexicon, cells []string) (out []string) {
	var plain []string
	rest := func() {
		if text := titleText(plain); text != "" {
			out = append(out, text)
		}
		plain = nil
	}
	cells = wholeDay(cells)
	filled := rowFilled(cells)
	for i := 0; i < len(cells); i++ {
		c := trim(unmangle(cells[i]))
		if c == "" {
			continue
		}
		j := i + 1
		for j < len(cells) && isBlank(cells[j]) {
			j++
		}
		if filled < 3 || j >= len(cells) || !isLabel(lex, c) || isLabel(lex, trim(unmangle(cells[j]))) {
			plain = append(plain, c)
			continue
		}
		rest()
		out = append(out, strings.TrimSuffix(c, ":")+": "+strings.Join(strings.Fields(trim(unmangle(cells[j]))), " "))
		i = j
	}
	rest()
	return out
}

// keyLines finds the title lines that are keys with their values, three or more one below the other,
// but for the first of them: "Reporting period: 3 January 2026" between "Table: B 3.1" and
// "Status: final". What stands before such a value is no place.
func keyLines(titles []string) map[int]string {
	var keys map[int]string
	from := 0
	for i := 0; i <= len(titles); i++ {
		if i < len(titles) {
			if label, value, ok := strings.Cut(titles[i], ": "); ok && value != "" && len(strings.Fields(label)) <= 3 && !strings.ContainsAny(label, "0123456789|,") {
				continue
			}
		}
		if i-from >= 3 {
			for k := from + 1; k < i; k++ {
				if keys == nil {
					keys = map[int]string{}
				}
				keys[k], _, _ = strings.Cut(titles[k], ":")
			}
		}
		from = i + 1
	}
	return keys
}

// wholeDay puts the parts of a date together that stand in cells of their own, "7 | March |
// 2026" or "March | 7 | 2026"; other cells stay where they are.
func wholeDay(cells []string) []string {
	if len(cells) < 3 || rowFilled(cells) < 3 || rowFilled(cells) > 12 {
		return cells
	}
	var at []int
	for i, c := range cells {
		if !isBlank(c) {
			at = append(at, i)
		}
	}
	part := func(k int) string { return trim(cells[at[k]]) }
	for k := 0; k+2 < len(at); k++ {
		year := part(k + 2)
		if len(year) != 4 || !digitsOnly(year) || looseNumber(year) < firstYear || looseNumber(year) > lastYear {
			continue
		}
		_, second := monthNames[fold(part(k+1))]
		_, first := monthNames[fold(part(k))]
		if !(second && isOrdinalOrNumber(fold(part(k))) || first && isOrdinalOrNumber(fold(part(k+1)))) {
			continue
		}
		out := slices.Clone(cells)
		out[at[k]] = part(k) + " " + part(k+1) + " " + year
		out[at[k+1]], out[at[k+2]] = "", ""
		return out
	}
	return cells
}

// labelsRun says whether a row begins with a label of the course or the date and its value:
// "Course | Alder Bank | Date | 3 Jan 2026 | Weather | dry".
func labelsRun(lex *lexicon, cells []string) bool {
	first := 0
	for first < len(cells) && isBlank(cells[first]) {
		first++
	}
	if label := trim(unmangle(cellAt(cells, first))); label == "" || !isLabel(lex, label) || isBlank(cellAt(cells, first+1)) || isLabel(lex, trim(unmangle(cells[first+1]))) {
		return false
	}
	g := lex.read(strings.TrimSuffix(trim(cells[first]), ":"))
	return g.known && (g.meaning == Course || g.meaning == Date)
}

// isLabel says whether a cell of a title line says what the next one holds.
func isLabel(lex *lexicon, c string) bool {
	if len(c) > 30 || strings.ContainsAny(c, "0123456789") {
		return false
	}
	if strings.HasSuffix(c, ":") {
		return true
	}
	if g := lex.read(c); g.known {
		switch g.meaning {
		case Course, Date, Session, Distance:
			return true
		}
	}
	f := fold(c)
	return isVenueLabel(f) || townLabel(f) || labelWords[f] || len(strings.Fields(f)) <= 3 && isRemark(c)
}

// labelWords are labels of facts about the day that nothing here is made of
// (common practice, no source).
var labelWords = set(`entries finishers starters runners walkers volunteers conditions referee timekeeper starter organiser organizer handicapper surface ground underfoot going laps sponsor`,
	"first man", "first woman", "first lady", "course record", "run director", "race director", "no of runners", "number of runners")
