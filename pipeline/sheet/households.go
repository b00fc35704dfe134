package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

var (
	// family is a family name before given names with their times: "Lee: Jo 18:20, Al 18:31".
	family = regexp.MustCompile(`^\s*(\p{Lu}[\pL'’-]*(?: \p{Lu}[\pL'’-]*)?)(?: family)?\s*[:–—-]\s+(\p{Lu}.*)$`)
	member = regexp.MustCompile(`^\s*(\p{Lu}[\pL'’-]*)\s+(\d{1,3}:[0-5]\d(?::[0-5]\d)?)\s*$`)
	// couple are two given names before one family name and their two times:
	// "Jo and Al Lee 18:20 / 18:31".
	couple     = regexp.MustCompile(`^\s*(\p{Lu}[\pL'’-]*)\s+(?:and|&|\+|und|et|y|e|en|och|i|a|ac)\s+(\p{Lu}[\pL'’-]*)((?: \p{Lu}[\pL'’-]*)+)[\s,:–—-]+(\d{1,3}:[0-5]\d)\s*(?:/|,|and|&|und|et|y|e|en|och|i|a)\s*(\d{1,3}:[0-5]\d)\s*$`)
	memberEnds = regexp.MustCompile(`(?:,|;|\band\b|&|\bund\b|\bet\b)\s*`)
)

// households puts people of one family name who stand on one line with a time each on lines of
// their own, with the family name. ok is false where there are none, or, of families before a
// colon, fewer than two.
func households(text []byte) (out []byte, ok bool) {
	if len(text) > typedBytes || !bytes.Contains(text, []byte(": ")) && !bytes.Contains(text, []byte("/")) && !bytes.Contains(text, []byte(" and ")) && !bytes.Contains(text, []byte("&")) {
		return text, false
	}
	var lines []string
	families, couples := 0, 0
	for _, l := range textLines(text) {
		if m := couple.FindStringSubmatch(l); m != nil {
			lines = append(lines, m[1]+m[3]+" "+m[4], m[2]+m[3]+" "+m[5])
			couples++
			continue
		}
		if of := membersOf(l); len(of) > 1 {
			lines = append(lines, of...)
			families++
			continue
		} else if len(of) == 1 {
			l = of[0]
		}
		lines = append(lines, l)
	}
	if couples == 0 && families < 2 {
		return text, false
	}
	return []byte(strings.Join(lines, "\n") + "\n"), true
}

// membersOf are the lines of the members of a family on one line; nil for another line.
func membersOf(l string) (lines []string) {
	m := family.FindStringSubmatch(l)
	if m == nil {
		return nil
	}
	for _, piece := range memberEnds.Split(m[2], -1) {
		of := member.FindStringSubmatch(piece)
		if of == nil {
			return nil
		}
		lines = append(lines, of[1]+" "+m[1]+" "+of[2])
	}
	return lines
}
