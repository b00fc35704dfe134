package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
)

// half is a list of one half of a result within a text: times or names, each with its place
// or all without.
type half struct {
	at            []int // lines
	places, cells []string
}

var (
	halfTime = regexp.MustCompile(`^\s*(?:(\d{1,4})(?:[.):,;]\s*|\s+|st\s+|nd\s+|rd\s+|th\s+))?(\d{1,3}[:.]\d{2}(?::\d{2})?(?:[.,]\d{1,2})?)[,;\s]*$`)
	halfName = regexp.MustCompile(`^\s*(?:(\d{1,4})(?:[.):,;]\s*|\s+|st\s+|nd\s+|rd\s+|th\s+))?(\pL[^\d,;:|]*?)[,;\s]*$`)
)

// leastHalf is how many lines each half has at least.
const leastHalf = 3

// joinHalves puts the two halves of a result together that stand one below the other in a
// text, a list of times and one of names: by their places where both have them, else in
// their order where they are of one length. All times of the text stand in the one list, and
// lines have nothing else in them. The joined lines stand in the place of the first list.
func joinHalves(text []byte) ([]byte, bool) {
	if len(text) > typedBytes || bytes.Count(text, []byte("\n")) < 2*leastHalf {
		return text, false
	}
	lines := textLines(text)
	for _, l := range lines { // nearly all texts end here
		if at := clockInside.FindStringIndex(l); at != nil {
			if hasLetter(l) && len(findDates(l)) == 0 {
				return text, false
			}
			break
		}
	}
	times := findHalf(lines, halfTime, true, nil)
	if len(times.at) < leastHalf {
		return text, false
	}
	for i, l := range lines {
		if inside := i >= times.at[0] && i <= times.at[len(times.at)-1]; !inside && clockInside.MatchString(l) {
			return text, false
		}
	}
	lex := newLexicon(Options{})
	names := findHalf(lines, halfName, false, func(i int, name string) bool {
		return i >= times.at[0] && i <= times.at[len(times.at)-1] || headingWordsOnly(lex, name) || len(strings.Fields(name)) > 5
	})
	if len(names.at) < leastHalf {
		return text, false
	}
	timeOf := map[string]string{}
	switch {
	case times.places != nil && names.places != nil:
		for k, p := range times.places {
			timeOf[p] = times.cells[k]
		}
		for _, p := range names.places {
			if timeOf[p] == "" {
				return text, false
			}
		}
	case len(times.at) != len(names.at):
		return text, false
	}
	var out []string
	for k := range max(len(times.at), len(names.at)) {
		switch {
		case times.places != nil && names.places != nil:
			if k >= len(times.places) {
				continue
			}
			name := ""
			for n, p := range names.places {
				if p == times.places[k] {
					name = names.cells[n]
				}
			}
			out = append(out, times.places[k]+"\t"+name+"\t"+times.cells[k])
		default:
			place := ""
			if names.places != nil {
				place = names.places[k] + "\t"
			} else if times.places != nil {
				place = times.places[k] + "\t"
			}
			out = append(out, place+names.cells[k]+"\t"+times.cells[k])
		}
	}
	at := times.at
	if names.at[0] < at[0] {
		at = names.at
	}
	for _, i := range append(append([]int(nil), times.at...), names.at...) {
		lines[i] = ""
	}
	for i, l := range lines { // the headings of the halves
		if w := strings.Trim(l, " \t,;:"); w != "" && !hasDigit(w) && headingWordsOnly(lex, w) {
			lines[i] = ""
		}
	}
	lines[at[0]] = strings.Join(out, "\n")
	return []byte(strings.Join(lines, "\n") + "\n"), true
}

// headingWordsOnly says whether a line is a heading, or all its words are.
func headingWordsOnly(lex *lexicon, line string) bool {
	return lex.read(line).known || !slices.ContainsFunc(strings.Fields(line), func(w string) bool { return !lex.read(w).known })
}

// findHalf finds the longest run of lines of one form, blank lines aside, all with a place of their own,
// where asked for rising from line to line, or all without.
func findHalf(lines []string, form *regexp.Regexp, rising bool, other func(i int, cell string) bool) (best half) {
	var now half
	end := func() {
		if len(now.at) > len(best.at) {
			best = now
		}
		now = half{}
	}
	for i, l := range lines {
		if strings.TrimSpace(l) == "" {
			if len(now.at) > 0 && now.places == nil {
				end() // a paragraph ends
			}
			continue
		}
		m := form.FindStringSubmatch(l)
		if m == nil || other != nil && other(i, m[2]) {
			end()
			continue
		}
		if len(now.at) > 0 && (m[1] != "") != (now.places != nil) {
			end()
		}
		now.at = append(now.at, i)
		now.cells = append(now.cells, strings.TrimSpace(m[2]))
		if m[1] != "" {
			now.places = append(now.places, strings.TrimLeft(m[1], "0"))
		}
	}
	end()
	seen := map[string]bool{}
	for k, p := range best.places {
		if seen[p] || rising && k > 0 && looseNumber(p) <= looseNumber(best.places[k-1]) {
			return half{}
		}
		seen[p] = true
	}
	return best
}
