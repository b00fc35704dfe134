package pipeline

import (
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/text"
)

// mayMean says whether a name, on a number of sheets, may be a slip of the pen
// for a course: the one course that is near, and not by a letter that makes
// another word of it. A slip is rare; who shortens a word may do so for months.
func (d *knownDays) mayMean(read, course string, sheets int) bool {
	if len(d.days[read]) > 0 || sheets > 1 && rarer*sheets > len(d.days[course]) && !abbreviates(read, course) {
		return false
	}
	was, now, sameWords := changedWord(course, read)
	if sameWords && utf8.RuneCountInString(was) == utf8.RuneCountInString(now) && firstLetterReplaced(was, now) {
		return false // Hill Lane, Mill Lane
	}
	others := make([]string, 0, len(d.days)+len(d.listed))
	for c := range d.days {
		others = append(others, c)
	}
	for c := range d.listed {
		if len(d.days[c]) == 0 {
			others = append(others, c)
		}
	}
	for _, c := range others {
		if c == course || c == read {
			continue
		}
		if text.Within(read, c, 2) {
			return false
		}
		if sameWords && slices.Contains(strings.Split(c, "-"), now) {
			return false // Garrow Wood, Garrow Woods: both are words of names here
		}
	}
	return true
}

// changedWord finds the one word in which two names of as many words differ.
func changedWord(a, b string) (x, y string, ok bool) {
	as, bs := strings.Split(a, "-"), strings.Split(b, "-")
	if len(as) != len(bs) {
		return "", "", false
	}
	for i := range as {
		if as[i] != bs[i] {
			return as[i], bs[i], true
		}
	}
	return "", "", false
}

// firstLetterReplaced tells Hill and Mill from Hill and Ihll.
func firstLetterReplaced(a, b string) bool {
	x, n := utf8.DecodeRuneInString(a)
	y, k := utf8.DecodeRuneInString(b)
	return x != y && a[n:] == b[k:]
}

// mayBeWord says whether the letter may well make another word, as it does
// where it is replaced or ends a word: Bank and Bark, Wood and Woods.
func mayBeWord(a, b string) bool {
	x, y, ok := changedWord(a, b)
	return ok && (len(x) == len(y) && len(x)-matching(x, y) == 1 || strings.HasPrefix(x, y) || strings.HasPrefix(y, x))
}

// matching counts the bytes that two words of one length share in place.
func matching(x, y string) (n int) {
	for i := range len(x) {
		if x[i] == y[i] {
			n++
		}
	}
	return n
}
