package sheet

import (
	"regexp"
	"strconv"
	"strings"
)

// Columns that look like age groups cell by cell and are none as a whole.

// countsByLetter says whether a column counts the men and the women apart, "M1, M2,
// F1, M3": each letter's numbers go up by one from 1.
func (s *settler) countsByLetter(i int) bool {
	last, n, steps := map[byte]int{}, 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		letter, number, ok := letterNumber(trim(cellAt(r.cells, i)))
		if !ok {
			if isBlank(cellAt(r.cells, i)) {
				continue
			}
			return false
		}
		n++
		switch before, seen := last[letter]; {
		case !seen && number > 3:
			return false
		case seen && number == before: // a line that stands twice
		case seen && number == before+1:
			steps++
		case seen && (number <= before || number > before+3): // some are left out: the unnamed
			return false
		}
		last[letter] = number
	}
	return n >= 4 && steps*2 >= n-len(last) && steps > 0
}

// countsMenAndWomen says whether a column counts by letters that stand for sexes.
func (s *settler) countsMenAndWomen(i int) bool {
	men, women := false, false
	for _, r := range s.rows {
		if letter, _, ok := letterNumber(trim(cellAt(r.cells, i))); ok {
			switch {
			case letter == 'm' || letter == 'h':
				men = true
			case strings.IndexByte("wfkvd", letter) >= 0:
				women = true
			default:
				return false
			}
		}
	}
	return men && women && s.countsByLetter(i)
}

// letterNumber reads "M12", "F 3", "12 M" and "3F".
func letterNumber(c string) (letter byte, number int, ok bool) {
	if len(c) < 2 || len(c) > 6 {
		return 0, 0, false
	}
	if n := len(c) - 1; c[0] >= '0' && c[0] <= '9' {
		c = c[n:] + strings.TrimRight(c[:n], " .-")
	}
	letter = c[0] | 0x20
	if letter < 'a' || letter > 'z' {
		return 0, 0, false
	}
	digits := strings.TrimLeft(c[1:], " .-")
	if !digitsOnly(digits) {
		return 0, 0, false
	}
	number, err := strconv.Atoi(digits)
	return letter, number, err == nil
}

// schoolForms says whether a column holds the classes of a school, "7B, 9C, 10A": a
// year of school and a letter, of which one at least stands for no sex.
func (s *settler) schoolForms(i int) bool {
	n, other := 0, false
	for _, r := range s.rows {
		c := schoolForm(trim(cellAt(r.cells, i)))
		if c == "" {
			continue
		}
		year := strings.TrimRight(c, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")
		if !digitsOnly(year) || len(year) > 2 || len(c) != len(year)+1 || looseNumber(year) > 13 {
			return false
		}
		n++
		other = other || strings.IndexByte("bgmfwvdhk", c[len(c)-1]|0x20) < 0
	}
	return n >= 3 && other
}

// schoolForm is the class of a school without a mark before its letter: 7b for "7.b", "7/b" and "7 b".
func schoolForm(c string) string {
	if n := len(c); n > 2 && n < 6 && hasLetter(c[n-1:]) {
		return strings.TrimRight(c[:n-1], " ./-") + c[n-1:]
	}
	return c
}

// schoolYears says whether a column whose heading is a school's, or "Year", holds nothing but
// numbers up to 13, with the same letter of a class behind them or none: "7b". A two-figure year
// of birth has its nought where the numbers are below ten: 07.
func (s *settler) schoolYears(i int) bool {
	if !schoolHeadings[fold(s.headings[i])] || s.counts(i) || s.countsInBlocks(i) || s.countsEachRun(i) {
		return false
	}
	n, letters := 0, map[byte]bool{}
	for _, r := range s.rows {
		c := schoolForm(strings.ToLower(trim(cellAt(r.cells, i))))
		if isBlank(c) {
			continue
		}
		year := strings.TrimRight(c, "abcdefghijklmnopqrstuvwxyz")
		if !digitsOnly(year) || len(year) > 2 || len(c) > len(year)+1 || year[0] == '0' || looseNumber(year) > 13 {
			return false
		}
		if len(c) > len(year) {
			letters[c[len(c)-1]] = true
		}
		n++
	}
	return n >= 3 && !(letters['m'] && (letters['f'] || letters['w'] || letters['k'])) && !(letters['b'] && letters['g'] && len(letters) == 2)
}

// schoolHeadings are headings of the years and classes of a school that are headings of ages as well.
var schoolHeadings = set("year yr grade curso grado grau ano turma class form klasse klas classe clase classi groep schuljahr trida luokka klassi osztaly klasa razred schoolyear jahrgangsstufe", "year group", "school year", "annee scolaire")

// underAges says whether all values of a column are numbers below 24 with a minus, or groups: "-18"
// is under 18.
func (s *settler) underAges(i int) bool {
	n := 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		rest, minus := strings.CutPrefix(strings.ReplaceAll(c, "−", "-"), "-")
		switch {
		case isBlank(c):
		case minus && digitsOnly(rest) && len(rest) <= 2 && looseNumber(rest) <= 23:
			n++
		case kindOf(c) != kGroup:
			return false
		}
	}
	return n >= 2
}

// hiddenYear is a day of birth of which the year is hidden, 19.03.**.
var hiddenYear = regexp.MustCompile(`^(?:\d{1,2}[./-]\d{1,2}[./-][*xX#?•_-]{2,4}|[*xX#?•_]{2,4}-\d{1,2}-\d{1,2})$`)

// birthdaysOnly says whether all values of a column are such days.
func (s *settler) birthdaysOnly(i int) bool {
	n := 0
	for _, r := range s.rows {
		switch c := trim(cellAt(r.cells, i)); {
		case isBlank(c):
		case hiddenYear.MatchString(c):
			n++
		default:
			return false
		}
	}
	return n >= 2
}

// frenchClasses says whether the values of a column are the classes of French athletics,
// each with the sex behind it: SEH, ESF, M1M, V2F.
func (s *settler) frenchClasses(i int) bool {
	n, masters, sexes := 0, false, map[byte]bool{}
	for _, r := range s.rows {
		c := strings.ToLower(trim(cellAt(r.cells, i)))
		if c == "" {
			continue
		}
		sex := c[len(c)-1]
		switch class := c[:len(c)-1]; {
		case sex != 'h' && sex != 'f' && sex != 'm':
			return false
		case frenchYouth[class]:
		case len(class) >= 2 && len(class) <= 3 && (class[0] == 'm' || class[0] == 'v') && class[1] != '0' && digitsOnly(class[1:]) && looseNumber(class[1:]) <= 10:
			masters = true
		default:
			return false
		}
		n++
		sexes[sex] = true
	}
	return n >= 5 && (masters || len(sexes) == 2)
}

var frenchYouth = set("ea po be mi ca ju es se")

// isPivot says whether a heading is one that a spreadsheet program gives a column of a
// pivot table: "Row Labels", "Min of Time".
func (p *Part) isPivot() bool {
	labels, figures := false, false
	for _, c := range p.Columns {
		f := fold(c.Heading)
		labels = labels || pivotLabels[f]
		first, rest, _ := strings.Cut(f, " ")
		of, _, _ := strings.Cut(rest, " ")
		timed := c.Meaning.isTime() // "Nombre de courses" is no figure made of times
		figures = figures || timed && pivotFigures[first] && (of == "of" || of == "von" || of == "de" || of == "di" || of == "van")
	}
	return labels || figures
}

// lastAddsUp says whether the last line of a table adds up the whole numbers of the lines
// above it, as that of a summary by clubs or groups does.
func (p *Part) lastAddsUp() bool {
	rows := p.sampled()
	if len(rows) < 4 || len(rows) > profileRows {
		return false
	}
	last := rows[len(rows)-1]
	for i, c := range last {
		sum, above := 0.0, 0.0
		for _, cells := range rows[:len(rows)-1] {
			if c := trim(cellAt(cells, i)); digitsOnly(c) {
				above = looseNumber(c)
				sum += above
			}
		}
		if digitsOnly(trim(c)) && sum > 2 && sum == looseNumber(trim(c)) && sum != above+1 { // 1, 2, 3 are places
			return true
		}
	}
	return false
}

var pivotLabels = set("zeilenbeschriftungen rijlabels radetiketter", "row labels", "etiquettes de lignes", "etiquetas de fila", "etichette di riga", "rotulos de linha")

var pivotFigures = set("min max sum count average minimum maximum summe anzahl mittelwert somme nombre moyenne suma cuenta promedio somma conteggio media som aantal gemiddelde")

// listsRelay says whether two columns or more are headed by the runners or legs of a
// team, "Team | Runner 1 | Runner 2", or each line is of a leg: "Team | Leg | Runner".
func (p *Part) listsRelay() bool {
	n, team, leg := 0, false, false
	for _, c := range p.Columns {
		f := fold(c.Heading)
		team = team || teamWords[f]
		leg = leg || f == "leg" || f == "leg time" || f == "stage" || f == "etappe"
		word, number, ok := strings.Cut(f, " ")
		if ok && digitsOnly(number) && legWords[word] {
			n++
		}
	}
	return team && (n >= 2 || leg)
}

var legWords = set("runner leg member athlete name laufer teilnehmer coureur relayeur corredor staffettista loper lopare")

// singleLetters says whether no value of a column is longer than a letter.
func (s *settler) singleLetters(i int) bool {
	for v := range s.profiles[i].distinct {
		if len([]rune(v)) > 1 {
			return false
		}
	}
	return true
}

// lettersAndNumbers says whether a column has a letter and a number in each cell, M66, K12,
// that are codes and no ages or groups: more than one in ten is 80 or over, or three letters
// stand for women.
func (s *settler) lettersAndNumbers(i int) bool {
	women := map[byte]bool{}
	n, old := 0, 0
	for _, r := range s.rows {
		letter, number, ok := letterNumber(trim(cellAt(r.cells, i)))
		if !ok {
			continue
		}
		if n++; number >= 80 {
			old++
		}
		if strings.IndexByte("fwkd", letter) >= 0 {
			women[letter] = true
		}
	}
	return n >= 8 && (10*old > n || len(women) > 2)
}
