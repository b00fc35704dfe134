package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plainMarks stand in names, times and dates; alone they divide nothing.
const plainMarks = ",;|:.'\"’-–—/()&+=_%?`´*#"

// byRareMark cuts lines at a mark that no spreadsheet program uses, one sign or several
// in a row: 1::Jo Lee::18:20, 1-*-Lee, Jo-*-18:20. nine of ten lines have as many of it,
// two or more, and seven of ten a time between two of them. nil where there is none.
func byRareMark(lines []string, _ byte) []string {
	best, bestRank := "", 0
	for _, mark := range rareMarks(lines) {
		counts, filled := map[int]int{}, 0
		for _, l := range lines {
			if strings.TrimSpace(l) != "" {
				filled++
				counts[strings.Count(l, mark)]++
			}
		}
		for n, of := range counts {
			// the same mark in another length or with fewer signs: the longer one
			if rank := n*1000 + utf8.RuneCountInString(mark); n >= 2 && of >= 3 && (of*10 >= filled*9 || of >= filled-2 && of >= 6) && rank > bestRank {
				best, bestRank = mark, rank
			}
		}
	}
	if best == "" {
		return nil
	}
	out := make([]string, len(lines))
	cut, timed := 0, 0
	for i, l := range lines {
		if strings.IndexByte(l, '\t') >= 0 {
			return nil
		}
		cells := strings.Split(l, best)
		if len(cells) < 3 {
			out[i] = strings.TrimSpace(l)
			continue
		}
		cut++
		clock := false
		for c := range cells {
			cells[c] = strings.TrimSpace(cells[c])
			clock = clock || kindOf(cells[c]) == kClock
		}
		if clock {
			timed++
		}
		out[i] = strings.Join(cells, "\t")
	}
	if timed < 3 || timed*10 < (cut-1)*7 {
		return nil
	}
	return out
}

// rareMarks are the marks that stand between letters, figures or spaces in the first
// lines and may divide them.
func rareMarks(lines []string) (marks []string) {
	const look = 6
	seen := map[string]bool{}
	for _, l := range lines[:min(look, len(lines))] {
		for l != "" {
			from := strings.IndexFunc(l, isSign)
			if from < 0 {
				break
			}
			n := strings.IndexFunc(l[from:], func(r rune) bool { return !isSign(r) })
			if n < 0 {
				n = len(l) - from
			}
			mark := l[from : from+n]
			l = l[from+n:]
			if seen[mark] {
				continue
			}
			seen[mark] = true
			if k := utf8.RuneCountInString(mark); k > 4 || k == 1 && strings.Contains(plainMarks, mark) || strings.Trim(mark, ".-–—_=") == "" || isQuoted(mark) {
				continue
			}
			marks = append(marks, mark)
		}
	}
	return marks
}

// isSign says whether a rune is a punctuation mark or another sign.
func isSign(r rune) bool { return unicode.IsPunct(r) || unicode.IsSymbol(r) }

// isQuoted says whether a mark is an ordinary one between two cells in quotes: "1","Lee".
func isQuoted(mark string) bool {
	return strings.Contains(mark, `"`) && strings.Trim(mark, `",;|`) == ""
}
