package sheet

import (
	"regexp"
	"strconv"
	"strings"
)

var numberedPiece = regexp.MustCompile(`^\s*(\d{1,4})\s*[.):]?\s+(\pL.*?)\s*$`)

// numberedPieces cuts lines of a numbered list that a mark divides, except the number
// from the name, "2. Jo Lee, Alder AC, 18:31": the number becomes a cell of its own, and
// where the club between name and time is left out its cell is blank. nil where not nearly
// all lines with a time are of that kind or the numbers do not count up.
func numberedPieces(lines []string, delim byte) []string {
	if delim == '\t' || delim == ' ' {
		return nil
	}
	type cut struct {
		place, name, between, time string
	}
	cuts := make([]*cut, len(lines))
	timed, matched, steps, last := 0, 0, 0, 0
	oneWord, clubs, distinct := 0, 0, map[string]bool{}
	for i, l := range lines {
		if len(l) > 200 || strings.IndexByte(l, '"') >= 0 || !clockInside.MatchString(l) {
			continue
		}
		timed++
		pieces := strings.Split(l, string(delim))
		n := len(pieces)
		m := numberedPiece.FindStringSubmatch(pieces[0])
		if m == nil || n < 2 || n > 3 || kindOf(m[2]) != kText || kindOf(pieces[n-1]) != kClock && kindOf(pieces[n-1]) != kStatus {
			continue
		}
		c := &cut{place: m[1], name: m[2], time: trim(pieces[n-1])}
		if n == 3 {
			if c.between = trim(pieces[1]); c.between != "" {
				clubs++
				distinct[fold(c.between)] = true
				if len(strings.Fields(c.between)) == 1 && kindOf(c.between) == kText {
					oneWord++
				}
			}
		}
		cuts[i] = c
		matched++
		place, _ := strconv.Atoi(c.place) // four figures at most
		if place == last || place == last+1 {
			steps++
		}
		last = place
	}
	if matched < 3 || clubs == 0 || matched*10 < timed*9 || steps*10 < matched*9 {
		return nil
	}
	if oneWord*10 >= clubs*8 && len(distinct)*10 >= clubs*6 {
		return nil // surnames before given names: "1. Lee, Jo, 18:20"
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		if c := cuts[i]; c != nil {
			out[i] = strings.Join([]string{c.place, c.name, c.between, c.time}, "\t")
		} else {
			out[i] = strings.TrimSpace(strings.ReplaceAll(l, "\t", " "))
		}
	}
	return out
}
