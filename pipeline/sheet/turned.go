package sheet

// turned says whether a table lies on its side: the headings stand one below the other in
// its first column, a row of three names or more and a row of as many times beside them.
func turned(lex *lexicon, head []line) bool {
	const looks = 20
	names, times := 0, 0
	for i := 0; i < len(head) && i < looks; i++ {
		cells := head[i].cells
		if len(cells) < 4 {
			continue
		}
		switch g := lex.read(trim(cells[0])); {
		case !g.known:
		case g.meaning == Name || g.meaning == FamilyName:
			names = max(names, kindsBeside(cells, kText))
		case g.meaning.isTime():
			times = max(times, kindsBeside(cells, kClock))
		}
	}
	return names >= 3 && times >= 3 && 4*times >= 3*names && 4*names >= 3*times
}

// kindsBeside counts the cells of a kind behind the first one; 0 where they are not most.
func kindsBeside(cells []string, k kind) int {
	n, filled := 0, 0
	for _, c := range cells[1:] {
		if isBlank(c) {
			continue
		}
		if filled++; kindOf(c) == k {
			n++
		}
	}
	if 4*n < 3*filled {
		return 0
	}
	return n
}
