package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

var (
	// equalsBefore is a shared place with its sign in front, "=4 ", "=4th. ", "T4 ".
	equalsBefore = regexp.MustCompile(`(?m)^([ \t]*)= ?(\d{1,4})(?:st|nd|rd|th)?[.):]?([ \t])`)
	// equalsMarked is one with the sign and another mark behind, "4=. ", "4th= ", "joint 4th ".
	equalsMarked = regexp.MustCompile(`(?mi)^([ \t]*)(?:(\d{1,4})(?:st|nd|rd|th)?=[.):]|(?:joint |equal |tied )(\d{1,4})(?:st|nd|rd|th)?[.):=]?|(\d{1,4})(?:st|nd|rd|th)=)([ \t])`)
	// wordOfTie is a word for a shared place, "joint 4th".
	wordOfTie = regexp.MustCompile(`(?i)(?:joint|equal|tied) `)
	// together are two people who share a place and a time: "4= Jo Lee and Al Roe 18:20".
	together = regexp.MustCompile(`^(\s*\d{1,4}=\s+)(\pL[^\d&\t;|]*? \pL[^\d&\t;|]*?),? +(?:and|&|\+|und|et|y|e|en|i|och|a|ac) +(\pL[^\d&\t;|]*? \pL[^\d&\t;|]*?)([\s,;:(–—-]+\d{1,3}[:.'’]\d{2}.*)$`)
	// mended is a time that an arrow puts in the place of another, "18:20 -> 18:22".
	mended = regexp.MustCompile(`\d{1,3}:\d{2}(?::\d{2})?[ \t]*(?:->|=>|→|⇒|➔)[ \t]*(\d{1,3}:\d{2}(?::\d{2})?)`)
	// mendedInBracket is the same in words, "18:20 (sorry, 18:22)".
	mendedInBracket = regexp.MustCompile(`\d{1,3}:\d{2}[ \t]*\((?:sorry|oops|correction|corrected(?: to)?|should be|should read|recte|korrektur|pardon|corrig[eé]|richtig)[,:]?[ \t]+(\d{1,3}:\d{2})\)`)
)

// mendedTimes leaves of two times with an arrow between them the one that it points at, and of
// one and another in brackets that say it is the right one, that one.
// Lines keep their places.
func mendedTimes(text []byte) []byte {
	if bytes.Contains(text, []byte(" (")) {
		text = mendedInBracket.ReplaceAll(text, []byte("$1"))
	}
	if !bytes.Contains(text, []byte("->")) && !bytes.Contains(text, []byte("=>")) && !bytes.ContainsAny(text, "→⇒➔") {
		return text
	}
	return mended.ReplaceAll(text, []byte("$1"))
}

// tiedPlaces writes shared places in one way, "4=", and puts people who stand on one line
// behind such a place on lines of their own, each with the place and the time. split says
// that there were any.
func tiedPlaces(text []byte) (out []byte, split bool) {
	if bytes.IndexByte(text, '=') < 0 && !wordOfTie.Match(text) || !clockInside.Match(text) {
		return text, false
	}
	text = equalsBefore.ReplaceAll(text, []byte("$1$2=$3"))
	text = equalsMarked.ReplaceAll(text, []byte("$1$2$3$4=$5"))
	if !bytes.Contains(text, []byte("= ")) && !bytes.Contains(text, []byte("=\t")) {
		return text, false
	}
	var lines []string
	for _, l := range textLines(text) {
		if m := together.FindStringSubmatch(l); m != nil {
			lines = append(lines, m[1]+m[2]+m[4], m[1]+m[3]+m[4])
			split = true
			continue
		}
		lines = append(lines, l)
	}
	if !split {
		return text, false
	}
	return []byte(strings.Join(lines, "\n") + "\n"), true
}
