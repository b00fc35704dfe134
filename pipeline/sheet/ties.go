package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/text"
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
	// gluedWord is a word at the end of a line that stands right behind the time, "24:15pb".
	gluedWord = regexp.MustCompile(`\s(\d{1,3}:[0-5]\d)((?:pb|PB|Pb|sb|SB|pr|PR)[!*. ]*)$`)
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
	text = correctedLines(text)
	if !bytes.Contains(text, []byte("->")) && !bytes.Contains(text, []byte("=>")) && !bytes.ContainsAny(text, "→⇒➔") {
		return text
	}
	return mended.ReplaceAll(text, []byte("$1"))
}

// correctedLines leaves of two times of a line behind a place, with words between them that say
// which is right, that one: "7. Jo Lee 24:51 corrected to 24:15".
func correctedLines(received []byte) []byte {
	if len(received) > typedBytes {
		return received
	}
	lines, changed := bytes.Split(received, []byte("\n")), false
	for i, l := range lines {
		l = bytes.TrimLeft(l, " ")
		colons := bytes.Count(l, []byte(":"))
		if colons == 0 || len(l) < 12 || l[0] < '0' || l[0] > '9' || bytes.ContainsAny(l, "\t;|") {
			continue
		}
		if colons == 2 {
			if right, ok := text.CorrectedTime(string(l)); ok {
				lines[i], changed = []byte(right), true
			}
		}
		if m := gluedWord.FindSubmatchIndex(l); m != nil {
			lines[i], changed = slices.Concat(l[:m[3]], []byte(" "), l[m[4]:]), true
		}
	}
	if !changed {
		return received
	}
	return bytes.Join(lines, []byte("\n"))
}

// timeAtEnd is a name and the only time of a line behind it.
var timeAtEnd = regexp.MustCompile(`^[^\d\t;|]*\pL[^\d\t;|]*[^\d:](\d{1,3}[:.]\d{2}(?::\d{2})?)[ \t]*$`)

// sameTimes puts the time of the line above into lines of people without places that end in words for
// it: "Jo Lee 18:20", below it "Al Roe same time". Lines keep their places.
func sameTimes(received []byte) []byte {
	if len(received) > typedBytes || !sameTimeWords.Match(received) {
		return received
	}
	lines, above, changed := textLines(received), "", false
	for i, l := range lines {
		if m := timeAtEnd.FindStringSubmatch(l); m != nil {
			above = m[1]
			continue
		}
		m := sameTimeWords.FindStringSubmatchIndex(l)
		if m == nil || above == "" || hasDigit(l) || !looksNamed(strings.Trim(l[:m[2]], edgeMarks+".")) {
			if trim(l) != "" {
				above = ""
			}
			continue
		}
		lines[i], changed = l[:m[2]]+above, true
	}
	if !changed {
		return received
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// sameTimeWords are words for the time above at the end of a line, of those that stand nowhere else.
var sameTimeWords = regexp.MustCompile(`(?mi)[\s.,:;–—-]\(?(same time|s\.t\.|same|ditto|idem|meme temps|même temps|gleiche zeit|zeitgleich|mismo tiempo|stesso tempo|zelfde tijd|samma tid)\)?[ \t.]*\r?$`)

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
