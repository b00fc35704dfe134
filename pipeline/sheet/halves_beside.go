package sheet

// halves gives the columns at which the halves of a result begin that stand side by side:
// places with times, and places with names, "Pos | Time | | Pos | Name | Age". The places of
// the second are among those of the first, none twice, and on some row they differ: a
// finisher whom nobody named moves all names below up by a row. nil where the rows are of
// one finisher each, or are no halves.
func (t table) halves(lex *lexicon, l layout) []int {
	var at []int
	for i, h := range l.headings {
		if g := lex.read(h); g.known && g.meaning == Position {
			at = append(at, i)
		}
	}
	if len(at) != 2 {
		return nil
	}
	left, right := coreOf(lex, l.headings[:at[1]]), coreOf(lex, l.headings[at[1]:])
	if left&right != 1 || left|right != 7 || left == 7 || right == 7 {
		return nil
	}
	timed, named := at[0], at[1]
	if left&2 == 0 {
		timed, named = named, timed
	}
	places, names, differ := map[string]bool{}, []string(nil), false
	for i := l.first + l.lines; i < t.grid.len(); i++ {
		_, cells := t.grid.at(i)
		a, b := trim(cellAt(cells, timed)), trim(cellAt(cells, named))
		if kindOf(a) == kInt {
			places[a] = true
		}
		if kindOf(b) == kInt {
			names = append(names, b)
			differ = differ || kindOf(a) == kInt && a != b
		}
	}
	if !differ {
		return nil
	}
	seen := map[string]bool{}
	for _, n := range names {
		if seen[n] || !places[n] {
			return nil
		}
		seen[n] = true
	}
	first := 0
	for first < at[0] && l.headings[first] == "" {
		first++
	}
	return []int{first, at[1]}
}
