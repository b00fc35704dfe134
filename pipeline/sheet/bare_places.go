package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// barePlaces leaves of places that are written with more than their number the number alone: in
// a column whose heading says places, the same before and behind each, "(1)", "P1", "No. 1",
// counting from 1 by one; or the first rows in words or Roman figures, "Winner", "II", right
// before the first number that counts on. It returns the number of cells.
func (g *grid) barePlaces(lex *lexicon, headings []string, after int) (mended int) {
	for column, h := range headings {
		guess := lex.read(h)
		if h == "" || !guess.known || guess.meaning != Position {
			continue
		}
		plain := g.numbersIn(column, after)
		if plain == nil {
			plain = g.wordsBefore(column, after)
		}
		if plain == nil {
			continue
		}
		mended += g.mend(func(_, row int, cells []string) ([]string, bool) {
			n, ok := plain[row]
			if !ok {
				return nil, false
			}
			cells = slices.Clone(cells)
			cells[column] = strconv.Itoa(n)
			return cells, true
		})
	}
	return mended
}

// wrappedPlace is a number with letters or signs before it, behind it or both.
var wrappedPlace = regexp.MustCompile(`^([^\d]{0,6}?)(\d{1,5})([^\d]{0,3})$`)

// numbersIn gives the numbers by row of a column whose cells all say the same around them, nil
// where they don't, or don't count from 1 by one. Cells without a figure stay.
func (g *grid) numbersIn(column, after int) map[int]int {
	numbers := map[int]int{}
	around, last := "", 0
	for i := 0; i < g.len(); i++ {
		row, cells := g.at(i)
		c := trim(cellAt(cells, column))
		if row <= after || c == "" || hasNoDigit(c) {
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
		}
		if m[1]+"1"+m[3] != around || n != last+1 && n != last {
			return nil
		}
		last = n
		numbers[row] = n
	}
	if len(numbers) < 3 {
		return nil
	}
	return numbers
}

// romanPlaces are the Roman figures that may stand for the first three.
var romanPlaces = []string{"i", "ii", "iii"}

// wordsBefore gives the places of the rows before the first number of a column, up to three,
// where it counts on from them: words, or Roman figures in order. nil for none.
func (g *grid) wordsBefore(column, after int) map[int]int {
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
	roman := slices.Equal(texts, romanPlaces[:min(len(texts), 3)])
	if !roman && (len(texts) == 0 || !winnerWords[texts[0]] && !firstWords[strings.Trim(texts[0], " .")]) {
		return nil
	}
	places := map[int]int{}
	for i, row := range rows {
		places[row] = i + 1
	}
	return places
}

// firstWords say that somebody was the first, as winnerWords do. Common practice, no source.
var firstWords = set("first 1st gold erster erste premier premiere primero primera primo prima primeiro primeira eerste forst forsta forste pierwszy pierwsza prvni ensimmainen or oro ouro guld zloto goud kulta")
