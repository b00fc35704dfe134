package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

var (
	// brokenClock is a time at the end of a line whose colon has blanks beside it, "19: 05".
	brokenClock = regexp.MustCompile(`(^|[^\d:])(\d{1,3})(?: : ?|: )([0-5]\d)\s*$`)
	// strokeClock is one with a semicolon in place of the colon, "19;05".
	strokeClock = regexp.MustCompile(`(^|[^\d;])(\d{1,3});([0-5]\d)(\s*)$`)
	// figuresClock is one without any mark, "1905".
	figuresClock = regexp.MustCompile(`(^.*\pL.*[^\d:.,])([1-9]\d?)([0-5]\d)\s*$`)
	// nameAndClock is the end of a cell in which a name and a time stand that have a cell each
	// in the other lines.
	nameAndClock = regexp.MustCompile(`^(\s*\pL[^\d]*?) +(\d{1,3}:[0-5]\d(?::[0-5]\d)?)(\s*)$`)
)

// joinedClocks mends times that a scan or a hand has broken: blanks beside the colon, a
// semicolon for it, or nothing. Lines without a mark must be nearly all lines, and enough of them
// that their last two figures are seconds by more than chance. Lines keep their places.
func joinedClocks(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, '\t') >= 0 {
		return text
	}
	spaced := bytes.Contains(text, []byte(" :")) || bytes.Contains(text, []byte(": "))
	lines := textLines(text)
	changed := false
	if spaced {
		whole := 0
		for _, l := range lines {
			if clockInside.MatchString(l) {
				whole++
			}
		}
		for i, l := range lines {
			if m := brokenClock.FindStringSubmatchIndex(l); m != nil && !clockInside.MatchString(l) && len(findDates(l)) == 0 && hasLetter(l[:m[4]]) && whole > 0 {
				lines[i] = l[:m[5]] + ":" + l[m[6]:m[7]]
				changed = true
			}
		}
	}
	for _, form := range [...]*regexp.Regexp{strokeClock, figuresClock} {
		if out := unmarkedClocks(lines, form); out != nil {
			lines, changed = out, true
			break
		}
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// commaPlace is a line whose only comma stands behind the place, "1, Jo Lee 18:20".
var commaPlace = regexp.MustCompile(`(?m)^([ \t]*\d{1,4}), +(\pL[^,\n]* \d{1,3}:[0-5]\d[^,\n]*)$`)

// commaPlaces puts a point in the place of such commas where three lines and more have them, and
// nine in ten of those with a time.
func commaPlaces(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte(", ")) {
		return text
	}
	n := len(commaPlace.FindAllIndex(text, -1))
	if n < 3 || n*10 < timedLines(text)*9 {
		return text
	}
	return commaPlace.ReplaceAll(text, []byte("$1. $2"))
}

// leastUnmarked is how many times without a colon are no other figures (0.6^8 is less than one
// in fifty).
const leastUnmarked = 8

// unmarkedClocks puts colons into times of such a form; nil where not nearly all lines with figures
// behind words have one, they don't rise, or another line has a time.
func unmarkedClocks(lines []string, form *regexp.Regexp) []string {
	n, of, last, falls := 0, 0, "", 0
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = l
		if clockInside.MatchString(l) {
			return nil
		}
		if !hasDigit(l) || len(findDates(l)) > 0 || !hasLetter(l) {
			continue
		}
		of++
		m := form.FindStringSubmatchIndex(l)
		if m == nil {
			continue
		}
		minutes, seconds := l[m[4]:m[5]], l[m[6]:m[7]]
		if form == strokeClock && !hasLetter(l[:m[4]]) {
			continue
		}
		if t := strings.Repeat("0", max(0, 3-len(minutes))) + minutes + seconds; t < last {
			falls++
		} else {
			last = t
		}
		n++
		out[i] = l[:m[4]] + minutes + ":" + seconds
	}
	if n < leastUnmarked || n*10 < of*9 || falls*10 > n {
		return nil
	}
	return out
}

// cutJoined parts a name from a time behind it in lines that have a mark too few, where the
// other lines have the mark between the two. Lines keep their places.
func cutJoined(text []byte, delim byte) []byte {
	if delim != '|' && delim != '\t' && delim != ';' {
		return text
	}
	lines := textLines(text)
	counts, usual := map[int]int{}, 0
	for _, l := range lines {
		n := strings.Count(l, string(delim))
		if counts[n]++; n > 0 && (counts[n] > counts[usual] || usual == 0) {
			usual = n
		}
	}
	if usual < 2 || counts[usual-1] == 0 || counts[usual] < 3 {
		return text
	}
	alone, changed := false, false
	for _, l := range lines {
		if !alone && strings.Count(l, string(delim)) == usual {
			for _, c := range strings.Split(l, string(delim)) {
				alone = alone || kindOf(c) == kClock
			}
		}
	}
	if !alone {
		return text
	}
	for i, l := range lines {
		if strings.Count(l, string(delim)) != usual-1 {
			continue
		}
		cells := strings.Split(l, string(delim))
		at := -1
		for k, c := range cells {
			if kindOf(c) == kClock {
				at = -1
				break
			}
			if nameAndClock.MatchString(c) {
				at = k
			}
		}
		if at >= 0 {
			cells[at] = nameAndClock.ReplaceAllString(cells[at], "$1"+string(delim)+"$2$3")
			lines[i] = strings.Join(cells, string(delim))
			changed = true
		}
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	wrapsHere = regexp.MustCompile(`^\s*\d{1,4}[.):]?\s+\pL[^\d:]*$`)
	wrapped   = regexp.MustCompile(`^\s{3,}\D*\d{1,3}:[0-5]\d(?::[0-5]\d)?\s*$`)
)

// wrappedLines joins the two halves of lines that were too long for the page: a place and words,
// and, further in on the line below, what follows with the time; most lines are whole.
func wrappedLines(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("\n   ")) {
		return text
	}
	lines := textLines(text)
	whole, cut := 0, 0
	for i, l := range lines {
		switch {
		case i > 0 && wrapped.MatchString(l) && wrapsHere.MatchString(lines[i-1]):
			cut++
		case leadingPlace.MatchString(strings.TrimSpace(l)) && clockInside.MatchString(l):
			whole++
		}
	}
	if cut == 0 || cut > whole {
		return text
	}
	for i := len(lines) - 1; i > 0; i-- {
		if wrapped.MatchString(lines[i]) && wrapsHere.MatchString(lines[i-1]) {
			lines[i-1] = strings.TrimRight(lines[i-1], " ") + "  " + strings.TrimSpace(lines[i])
			lines[i] = ""
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

// mixedMarks puts commas in the place of semicolons where some lines with times are divided by
// the one mark and some by the other, as often in each.
func mixedMarks(text []byte) []byte {
	if len(text) > typedBytes || bytes.IndexByte(text, ';') < 0 || bytes.IndexByte(text, ',') < 0 {
		return text
	}
	lines := textLines(text)
	commas, semicolons, marks := 0, 0, 0
	for _, l := range lines {
		if !clockInside.MatchString(l) {
			continue
		}
		c, s := strings.Count(l, ","), strings.Count(l, ";")
		if c > 0 == (s > 0) || marks > 0 && c+s != marks {
			return text
		}
		if marks = c + s; c > 0 {
			commas++
		} else {
			semicolons++
		}
	}
	if marks < 2 || commas < 2 || semicolons < 2 {
		return text
	}
	for i, l := range lines {
		if clockInside.MatchString(l) {
			lines[i] = strings.ReplaceAll(l, ";", ",")
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	// placeAgainst is a place against the name behind it, "1.Jo Lee", "1)Jo Lee".
	placeAgainst = regexp.MustCompile(`(?m)^([ \t]*\d{1,4}[.)])(\p{Lu})`)
	// ageBehind is an age in brackets behind a time, minuteBehind a word for minutes.
	ageBehind = regexp.MustCompile(`(?m)^(.*\pL)([ ,;:–—-]+\d{1,3}:[0-5]\d(?::[0-5]\d)?)[ ,]*[(\[](\d{1,3})[)\]][ \t]*$`)
	// tickedOff is an item of a list of things to tick off, done.
	tickedOff = regexp.MustCompile(`(?m)^([ \t]*[-*+] )\[[xX✓✔]\] (.*\d:[0-5]\d)`)
	// timeInside is a time that stands last in the brackets behind a name, "Jo Lee (F, 42, 18:20)".
	timeInside = regexp.MustCompile(`(?m)^(.*\pL) \(([^()\n:]*[^()\n:\s,]), ?(\d{1,3}:[0-5]\d(?::[0-5]\d)?)\)[ \t]*$`)
	// andSeconds is the word between minutes and seconds.
	andSeconds = regexp.MustCompile(`(\d ?min(?:ute)?s?),? and (\d{1,2} ?sec)`)
	// dayBeforeColon is a line that may be a day and ends in a colon.
	dayBeforeColon = regexp.MustCompile(`(?m)^[^\n:]{6,40}:[ \t]*\r?$`)
	minuteBehind   = regexp.MustCompile(`(?mi)^(.*\pL.*\d:[0-5]\d) ?(?:min|mins|minuten|minutes|minutos|minuti|minuter|minut|minuty)\b\.?[ \t]*$`)
)

// tidyEnds gives typed lines the form that most have, where three and more, and nine in ten of those with a
// time, are otherwise: a blank between place and name, an age before the time and not behind it, no
// word for minutes behind it.
func tidyEnds(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	if bytes.Contains(text, []byte(":\n")) || bytes.Contains(text, []byte(":\r\n")) {
		text = dayBeforeColon.ReplaceAllFunc(text, func(l []byte) []byte {
			if day := bytes.TrimRight(l, ": \t\r"); isDate(string(day)) {
				return day // "10.02.2024:" over the results of that day
			}
			return l
		})
	}
	if bytes.Contains(text, []byte(" and ")) {
		text = andSeconds.ReplaceAll(text, []byte("$1 $2"))
	}
	timed := -1
	for _, form := range [...]struct {
		may   func() bool
		is    *regexp.Regexp
		write string
	}{
		{func() bool { return true }, placeAgainst, "$1 $2"},
		{func() bool { return bytes.Contains(text, []byte(")\n")) || bytes.Contains(text, []byte("]\n")) }, ageBehind, "$1 ($3)$2"},
		{func() bool { return bytes.Contains(text, []byte(")\n")) }, timeInside, "$1 ($2) $3"},
		{func() bool { return bytes.Contains(text, []byte("] ")) }, tickedOff, "$1$2"},
		{func() bool { return bytes.Contains(text, []byte("in")) }, minuteBehind, "$1"},
	} {
		if !form.may() {
			continue
		}
		if n := len(form.is.FindAllIndex(text, -1)); n >= 3 {
			if timed < 0 {
				timed = timedLines(text)
			}
			if n*10 >= timed*9 {
				text = form.is.ReplaceAll(text, []byte(form.write))
			}
		}
	}
	return text
}
