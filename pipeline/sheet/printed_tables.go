package sheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// rowLabel is the number that a program puts before the rows it prints.
var rowLabel = regexp.MustCompile(`^( *)(\d{1,5})( *│)?( +)\S`)

// withoutRowLabels takes such numbers off a table that a program has printed, five rows or more
// which they count from 0, or from 1 beside a column of places, below headings that begin further
// right: they have no heading of their own.
func withoutRowLabels(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	lines := textLines(text)
	head, first, n, from, width := -1, -1, 0, 0, 0
	for i, l := range lines {
		m := rowLabel.FindStringSubmatch(l)
		if m == nil {
			if first >= 0 && strings.TrimSpace(l) != "" {
				break
			}
			continue
		}
		label, _ := strconv.Atoi(m[2]) // five figures at most
		if first < 0 {
			for head = i - 1; head > 0 && (printedRule.MatchString(lines[head]) || printedTypes.MatchString(lines[head])); {
				head--
			}
			if head < 0 || !overLabels.MatchString(lines[head]) || label > 1 || label == 1 && !placesHeading.MatchString(lines[head]) {
				return text
			}
			first, from = i, label
		}
		if label != from+n {
			return text
		}
		n++
		width = max(width, len([]rune(m[1]+m[2]+m[3])))
	}
	if n < 5 {
		return text
	}
	h := []rune(lines[head])
	if len(h) <= width || h[width] != ' ' || !printedRow.MatchString(string(h[:width])) {
		return text
	}
	for i := head + 1; i < first; i++ {
		lines[i] = ""
	}
	lines[head], lines[first-1] = "", string(h) // over the rows, where a rule was
	for i := first - 1; i < first+n; i++ {
		if l := []rune(lines[i]); len(l) > width {
			lines[i] = string(l[width:])
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	printedRule   = regexp.MustCompile(`^[-─═=+┼ ]*[-─═=]{3}[-─═=+┼ ]*$`)
	printedTypes  = regexp.MustCompile(`^[ │]*(?:<\w+>|(?:Int|String|Float|Union|Any|Time)\w*\??)(?: +(?:<\w+>|(?:Int|String|Float|Union|Any|Time)\w*\??))+ *$`)
	placesHeading = regexp.MustCompile(`(?i)\b(?:pos|position|place|rank)\b`)
	overLabels    = regexp.MustCompile(`^(?: |[Rr]ow|[Ii]ndex|#|│)`) // how a line with printedRow begins
	printedRow    = regexp.MustCompile(`^ *(?:[Rr]ow|[Ii]ndex|#)? *│?$`)
)

// printedColumns divides by tabs a table that a program has printed with one space between its
// columns, the cells below the first or the last letter of their headings: five rows or more, all
// with a space where two headings part, and a time in the same column. Lines keep their places.
func printedColumns(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	lines := textLines(text)
	for from := 0; from < len(lines); from++ {
		to := from
		for to < len(lines) && strings.TrimSpace(lines[to]) != "" {
			to++
		}
		if printedBlock(lines[from:to]) {
			return []byte(strings.Join(lines, "\n") + "\n")
		}
		from = to
	}
	return text
}

// printedBlock divides such a table within lines of which none is blank.
func printedBlock(lines []string) bool {
	figures := make([]int, len(lines)+1) // how many lines from one on have figures, as those with a time have
	for i := len(lines) - 1; i >= 0; i-- {
		if figures[i] = figures[i+1]; !hasNoDigit(lines[i]) {
			figures[i]++
		}
	}
	var rows [][]rune
	for head := 0; head+plainRows < len(lines); head++ {
		if !hasNoDigit(lines[head]) {
			continue
		}
		words := headingWord.FindAllStringIndex(lines[head], 3)
		if len(words) < 3 {
			continue
		}
		if printedTypes.MatchString(lines[head+1]) {
			lines[head], lines[head+1] = "", lines[head]
			continue
		}
		if 10*figures[head+1] < 9*(len(lines)-head-1) {
			continue
		}
		for len(rows) < len(lines) { // once for all headings that are tried
			rows = append(rows, []rune(lines[len(rows)]))
		}
		rows[head] = []rune(lines[head]) // it may have come from above
		ends := columnEnds(rows[head:], lines[head])
		if ends == nil {
			continue
		}
		cells := make([][]string, len(lines)-head)
		for i := range cells {
			cells[i] = cellsBetween(rows[head+i], ends)
		}
		if !oneOfTimes(cells[1:]) || !closeTogether(rows[head+1:], cells[1:]) {
			continue
		}
		for i, c := range cells {
			lines[head+i] = strings.Join(c, "\t")
		}
		return true
	}
	return false
}

var headingWord = regexp.MustCompile(`[^\s\t|,;]+`)

// columnEnds are where the columns under headings of one word part: behind the one or before the
// next, where that is blank in all rows. nil where neither is, or where most are parted by more
// than one space: such a table is divided by its gaps.
func columnEnds(rows [][]rune, head string) (ends []int) {
	words := headingWord.FindAllStringIndex(head, -1)
	at := func(b int) int { return len([]rune(head[:b])) }
	filled := func(p int) bool {
		return slices.ContainsFunc(rows, func(r []rune) bool { return p >= 0 && p < len(r) && r[p] != ' ' })
	}
	single := 0
	for k := range len(words) - 1 {
		switch end, next := at(words[k][1]), at(words[k+1][0])-1; {
		case !filled(end):
			ends = append(ends, end)
		case !filled(next):
			ends = append(ends, next)
		default:
			return nil
		}
		if p := ends[k]; filled(p-1) && filled(p+1) {
			single++
		}
	}
	if 2*single < len(ends) {
		return nil
	}
	if counted := columnOfCounts(rows[1:], at(words[0][0])); counted > 0 {
		ends = slices.Insert(ends, 0, counted)
	}
	return ends
}

// columnOfCounts is where the column of the numbers ends that stand left of the first heading, 0
// where not all rows have one.
func columnOfCounts(rows [][]rune, heading int) (end int) {
	for _, r := range rows {
		n := 0
		for n < len(r) && r[n] == ' ' {
			n++
		}
		first := n
		for n < len(r) && r[n] >= '0' && r[n] <= '9' {
			n++
		}
		if n == first || n > heading {
			return 0
		}
		end = max(end, n)
	}
	return end
}

// cellsBetween are the cells of a row that is divided at places.
func cellsBetween(row []rune, ends []int) (cells []string) {
	from := 0
	for _, e := range append(slices.Clone(ends), len(row)) {
		from, e = min(from, len(row)), min(e, len(row))
		cells = append(cells, strings.TrimSpace(string(row[from:e])))
		from = e
	}
	return cells
}

// oneOfTimes says whether nine in ten rows have a time in the same column, and nowhere else.
func oneOfTimes(rows [][]string) bool {
	times := map[int]int{}
	for _, cells := range rows {
		for c, cell := range cells {
			if isClockCell(cell) {
				times[c]++
			} else if looseClockInside.MatchString(cell) {
				return false // a time and more
			}
		}
	}
	for _, n := range times {
		return len(times) == 1 && 10*n >= 9*len(rows)
	}
	return false
}

// closeTogether says whether a row has fewer pieces with two spaces between them than cells: where
// none has, the gaps show the columns.
func closeTogether(rows [][]rune, cells [][]string) bool {
	for i, r := range rows {
		if len(wideGap.FindAllStringIndex(string(r), -1))+1 < rowFilled(cells[i]) {
			return true
		}
	}
	return false
}
