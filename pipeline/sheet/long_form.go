package sheet

import (
	"bytes"
	"slices"
	"strings"
)

// longLooks is how many rows are looked at before a text is taken for a table in long form.
const longLooks = 40

// longForm puts each runner's lines of a table in long form into one row: a fact a line, one
// column of which says what it is of, "name", "sex", "time", and the next one the value, as open
// data and databases have it. The columns before these say whose it is. The rows are put in the
// place of the first line of each runner, the others are left blank. nil where the text is no such table.
func longForm(text []byte, delim byte, lex *lexicon, limits Limits) []byte {
	head, at, numbers, ok := longHead(text, delim, lex, limits)
	if !ok {
		return nil
	}
	value := at + 1
	for i := at + 1; i < len(head.cells); i++ {
		if valueHeadings[fold(head.cells[i])] {
			value = i
		}
	}
	type record struct {
		row   int
		keys  []string
		facts map[int]string
	}
	var records []record
	index := map[string]int{} // by what stands before
	var facts []string
	column := map[string]int{}
	above := map[int][]string{}
	last, rows, wide := 0, 0, 0 // wide: those with another such value behind it
	sc := newScanner(text, delim, limits)
	for {
		row, cells, err := sc.next()
		if err != nil {
			return nil
		}
		if cells == nil {
			break
		}
		last = row
		for _, c := range cells {
			if strings.ContainsAny(c, "\n\r") {
				return nil
			}
		}
		if row <= head.row {
			above[row] = slices.Clone(cells)
			continue
		}
		if rowFilled(cells) == 0 {
			continue
		}
		rows++
		if at == 0 && value+1 < len(cells) && !isBlank(cells[value+1]) && kindOf(cells[value]) == kindOf(cells[value+1]) {
			wide++
		}
		fact := trim(cellAt(cells, at))
		if fact == "" || len(facts) > 40 {
			return nil
		}
		k, known := column[fact]
		if !known {
			k = len(facts)
			column[fact] = k
			facts = append(facts, strings.Clone(fact))
		}
		keys := cells[:min(at, len(cells))]
		whose := ""
		for i, c := range keys {
			if !numbers[i] {
				whose += c + "\x00"
			}
		}
		n, again := index[whose]
		if again {
			_, again = records[n].facts[k]
			again = !again
		}
		if !again {
			n = len(records)
			index[whose] = n
			r := record{row: row, facts: map[int]string{}}
			for _, c := range keys {
				r.keys = append(r.keys, strings.Clone(c))
			}
			records = append(records, r)
		}
		records[n].facts[k] = strings.Clone(cellAt(cells, value))
	}
	if len(records) < 3 || len(records)*2 > rows || wide*2 > rows { // or the facts of several runners a line
		return nil
	}
	lines := make([][]string, last+1)
	for row, cells := range above {
		lines[row] = cells
	}
	kept := func(keys []string) (out []string) {
		for i := range at {
			if !numbers[i] {
				out = append(out, cellAt(keys, i))
			}
		}
		return out
	}
	lines[head.row] = append(kept(head.cells), facts...)
	for _, r := range records {
		cells := kept(r.keys)
		for k := range facts {
			cells = append(cells, r.facts[k])
		}
		lines[r.row] = cells
	}
	var out bytes.Buffer
	for _, cells := range lines[1:] {
		var field []byte
		for i, c := range cells {
			if i > 0 {
				field = append(field, delim)
			}
			field = appendField(field, c, delim)
		}
		out.Write(field)
		out.WriteByte('\n')
	}
	return out.Bytes()
}

// numbersRows says whether a column has another value in each row: it numbers the lines.
func numbersRows(rows []line, column int) bool {
	seen := map[string]bool{}
	for _, r := range rows {
		c := cellAt(r.cells, column)
		if seen[c] {
			return false
		}
		seen[c] = true
	}
	return true
}

// longHead finds the heading of a table in long form, the column that says what each line is
// of and the columns before it that only number the lines, which are left out: nearly all of its cells are headings of a table of results, a name and a time among them,
// and come again.
func longHead(text []byte, delim byte, lex *lexicon, limits Limits) (head line, at int, numbers map[int]bool, ok bool) {
	part := text[:min(len(text), 16<<10)]
	if len(part) < len(text) {
		part = part[:bytes.LastIndexByte(part, '\n')+1]
	}
	var rows []line
	sc := newScanner(part, delim, limits)
	for len(rows) < longLooks {
		row, cells, err := sc.next()
		if err != nil || cells == nil {
			break
		}
		if rowFilled(cells) > 0 {
			rows = append(rows, line{row, slices.Clone(cells)})
		}
	}
	if len(rows) < 8 {
		return line{}, 0, nil, false
	}
	width := len(rows[len(rows)-1].cells)
	for at = 0; at+1 < width; at++ {
		counts := map[string]int{}
		filled := 0
		for _, r := range rows[1:] {
			if c := trim(cellAt(r.cells, at)); c != "" {
				counts[c]++
				filled++
			}
		}
		if len(counts) < 3 || 2*len(counts) > filled || len(counts) > 20 {
			continue
		}
		meanings, unread, again := map[Meaning]bool{}, 0, 0
		for c, n := range counts {
			g := guess{}
			if !strings.ContainsAny(c, "0123456789") {
				g = lex.read(c)
			}
			if !g.known {
				unread += n
			}
			if meanings[g.meaning] = true; n > 1 && g.known {
				again++
			}
		}
		timed := meanings[Time] || meanings[ChipTime] || meanings[GunTime]
		if !timed || !meanings[Name] && !meanings[FamilyName] || again < 3 || 4*unread > filled {
			continue
		}
		for first := 1; first < len(rows); first++ {
			if c := trim(cellAt(rows[first].cells, at)); counts[c] > 1 && lex.read(c).known {
				if at == 0 && counts[trim(cellAt(rows[first-1].cells, at))] > 1 {
					break // the line above is a fact of the first, as in factRows
				}
				numbers = map[int]bool{}
				for i := range at {
					numbers[i] = numbersRows(rows[first:], i)
				}
				return rows[first-1], at, numbers, len(rows[first-1].cells) > at+1
			}
		}
	}
	return line{}, 0, nil, false
}

// valueHeadings stand above the values of a table in long form. Common practice, no source.
var valueHeadings = set("value values wert werte valeur valor valore waarde wartosc hodnota arvo ertek verdi vaerdi varde deger τιμη valoare vaartus vertiba reiksme vrednost vrijednost значение значення стойност 値")
