package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
)

// barePlaces leaves of places that are written with more than their number the number alone: in
// a column whose heading says places, those that go on from the place above them, "No. 4", "4 of
// 18", "joint 4th", "IV"; or the same before and behind each, "Runner 1", counting from 1 by one; or
// the first rows in words, "Winner", right before the first number that counts on. It returns the
// number of cells.
func (g *grid) barePlaces(lex *lexicon, headings []string, after int) (mended int) {
	for column, h := range headings {
		guess := lex.read(h)
		if h == "" || !guess.known || guess.meaning != Position {
			continue
		}
		plain := g.wordsBefore(column, after)
		if plain == nil {
			plain = g.numbersIn(column, after)
		}
		if plain == nil {
			plain = g.placesFollowing(column, after)
		}
		mended += g.writePlaces(column, plain)
	}
	return mended
}

// writePlaces puts the places, by row, into a column. It returns their number.
func (g *grid) writePlaces(column int, places map[int]string) int {
	if len(places) == 0 {
		return 0
	}
	return g.mend(func(_, row int, cells []string) ([]string, bool) {
		n, ok := places[row]
		if !ok {
			return nil, false
		}
		cells = slices.Clone(cells)
		cells[column] = n
		return cells, true
	})
}

// countedPlaces leaves the numbers alone of a column of no names, clubs, courses or classes, in
// which the same word or letter stands before every number from 1 on, each once: "Lap 1", "T3", "P004". It
// returns the number of cells.
func (g *grid) countedPlaces(lex *lexicon, headings []string, after int) int {
	for _, h := range headings {
		if guess := lex.read(h); guess.known && guess.meaning == Position {
			return 0
		}
	}
	if after == 0 && len(headings) > 0 { // no heading, so that nothing else says what the first column is
		if places := g.spokenPlaces(); places != nil {
			return g.writePlaces(0, places)
		}
	}
	for column, h := range headings {
		if m := lex.read(h).meaning; m.isName() || m == Club || m == Course || m == AgeGroup {
			continue
		}
		if places := g.countedIn(column, after); places != nil {
			return g.writePlaces(column, places)
		}
	}
	return 0
}

// spokenPlaces gives the places by row of the first column of a table without a heading where they are written
// with more than their number, or in words, on nearly all rows: "1/45", "[1]", "First"; nil for others.
func (g *grid) spokenPlaces() map[int]string {
	rows, plain := 0, 0
	for i := 0; i < g.len(); i++ {
		_, cells := g.at(i)
		if c := trim(cellAt(cells, 0)); rowFilled(cells) >= 2 && c != "" {
			rows++
			if digitsOnly(c) {
				plain++
			}
		}
	}
	if rows < 4 {
		return nil
	}
	for _, places := range []map[int]string{g.wordsBefore(0, 0), g.numbersIn(0, 0), g.placesFollowing(0, 0)} {
		if len(places) > 0 && 10*(len(places)+plain) >= 9*rows {
			return places
		}
	}
	return nil
}

// countedIn gives the numbers by row of such a column, nil where it is none: letters of sexes and of
// classes count within them.
func (g *grid) countedIn(column, after int) map[int]string {
	places, seen, before, most := map[int]string{}, map[int]bool{}, "", 0
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		c := trim(cellAt(cells, column))
		if row <= after || rowFilled(cells) == 1 || hasNoDigit(c) {
			continue
		}
		m := wrappedPlace.FindStringSubmatch(c)
		if m == nil || m[3] != "" || !hasLetter(m[1]) || kindOf(trim(m[1])) == kSex || len(seen) > 0 && m[1] != before {
			return nil
		}
		n, err := strconv.Atoi(m[2])
		if err != nil || n == 0 || seen[n] {
			return nil
		}
		before, seen[n], most = m[1], true, max(most, n)
		places[row] = strconv.Itoa(n)
	}
	if len(places) < 5 || most != len(places) {
		return nil
	}
	return places
}

// wrappedPlace is a number with letters or signs before it, behind it or both.
var wrappedPlace = regexp.MustCompile(`^([^\d]{0,6}?)(\d{1,5})([^\d]{0,3})$`)

// numbersIn gives the numbers by row of a column whose cells all say the same around them, nil
// where they don't, or don't count from 1 by one and are not said to be places, as "#7" and
// "No. 7" are, which stand in any order. Cells without a figure, and headings, stay.
func (g *grid) numbersIn(column, after int) map[int]string {
	numbers := map[int]string{}
	around, last, said := "", 0, false
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		c := trim(cellAt(cells, column))
		if row <= after || c == "" || hasNoDigit(c) || said && rowFilled(cells) == 1 {
			continue
		}
		m := wrappedPlace.FindStringSubmatch(c)
		if m == nil {
			return nil
		}
		n, err := strconv.Atoi(m[2])
		if err != nil || placeKind(c) == kInt {
			return nil
		}
		if last == 0 {
			around = m[1] + "1" + m[3]
			_, said = text.SaysPlace(c, n)
		}
		if m[1]+"1"+m[3] != around || !said && n != last+1 && n != last {
			return nil
		}
		last = n
		numbers[row] = strconv.Itoa(n)
	}
	if len(numbers) < 3 {
		return nil
	}
	return numbers
}

// placesFollowing gives the places of a column that are written with more than their number, or in
// words, where each is that of the place above it and one more, or is shared with it; and where the
// next place leaves one out, those of a result that has a sign for "the same", or no place, "guest".
func (g *grid) placesFollowing(column, after int) map[int]string {
	var places map[int]string
	last, open := 0, 0 // the row that needs a place left out below it
	numbers, times := 0, 0
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		if row <= after || column >= len(cells) || cells[column] == "" || rowFilled(cells) < 2 { // a line between the rows
			continue
		}
		c := cells[column]
		if !digitsOnly(c) {
			c = trim(c)
		}
		if digitsOnly(c) || placeKind(c) == kInt {
			n := int(placeNumber(c))
			if open > 0 && n != last+2 {
				delete(places, open)
			}
			last, open = n, 0
			numbers++
			continue
		}
		if k := kindOf(c); k == kClock || k == kDecimal {
			times++
		}
		if open > 0 {
			delete(places, open)
		}
		open = 0
		said := ""
		if signOf(c) != "" {
			if n, err := strconv.Atoi(strings.TrimRight(c, strings.Join(footnoteSigns, "")+" ")); err == nil {
				last = n // what the sign means is read later
				continue
			}
		}
		if tied, ok := text.SaysPlace(c, last+1); ok {
			last++
			if said = strconv.Itoa(last); tied {
				said += "="
			}
		} else if tied, ok := text.SaysPlace(c, last); ok && tied {
			said = strconv.Itoa(last) + "="
		} else if last > 0 && (isDitto(c) || text.SharesPlace(c)) {
			said, open = strconv.Itoa(last)+"=", row
		} else if last > 0 && hasNoDigit(c) && rowFilled(cells) > 2 && kindOf(c) != kStatus && !text.AgainstTime(fold(c), 0) && slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) {
			said, open = strconv.Itoa(last+1), row
		}
		if said != "" {
			if places == nil {
				places = map[int]string{}
			}
			places[row] = said
		}
	}
	if times > numbers || numbers == 0 && last < 2 {
		return nil // "Finish" may head times as well, and "Rank" those of soldiers: Lt is no 1st
	}
	delete(places, open)
	return places
}

// wordsBefore gives the places of the rows before the first number of a column, up to three,
// where it counts on from them. nil for none.
func (g *grid) wordsBefore(column, after int) map[int]string {
	var rows []int
	var texts []string
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		c := trim(cellAt(cells, column))
		if row <= after || rowFilled(cells) == 0 {
			continue
		}
		if placeKind(c) == kInt {
			if n := int(placeNumber(c)); len(rows) == 0 || n != len(rows)+1 {
				return nil
			}
			break
		}
		if kindOf(c) == kStatus || c == "" || !hasNoDigit(c) || rowFilled(cells) < 3 || len(rows) == 3 {
			return nil
		}
		rows, texts = append(rows, row), append(texts, fold(c))
	}
	if len(texts) == 0 || !winnerWords[texts[0]] && !firstWords[strings.Trim(texts[0], " .")] {
		return nil
	}
	places := map[int]string{}
	for i, row := range rows {
		places[row] = strconv.Itoa(i + 1)
	}
	return places
}

// firstWords say that somebody was the first, as winnerWords do. Common practice, no source.
var firstWords = set("first 1st gold erster erste premier premiere primero primera primo prima primeiro primeira eerste forst forsta forste pierwszy pierwsza prvni ensimmainen or oro ouro guld zloto goud kulta")
