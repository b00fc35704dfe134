package sheet

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"

	"lapwing/pipeline/text"
)

var (
	// misread is a time in which letters stand for figures: l8:26, 2O:O4, 2S:o1.
	misread = regexp.MustCompile(`(?:^|[^\pL\d:.])([\dlIOoSB]{1,2}[:.'’][\dlIOoSB]{2}(?::[\dlIOoSB]{2})?(?:[.,][\dlIOoSB]{1,2})?)(?:$|[^\pL\d:])`)
	// colonMisread is one whose colon was read as a semicolon: 18;48.
	colonMisread = regexp.MustCompile(`(?:^|[^\pL\d:.;])([\dlIO]{1,2};[0-5lIO][\dlIO])(?:$|[^\pL\d:;.])`)
	// misreadCell is a cell of two figures of which one was read as a letter, an age of 7l.
	misreadCell  = regexp.MustCompile(`[,;\t](\d[lO]|[lI]\d)[,;\t]`)
	misreadPlace = regexp.MustCompile(`^\s*([\dlIO]{1,3})(?:[.):]|\s)\s*\pL`)
	secondsOnly  = regexp.MustCompile(`(?:^|\s)(:[0-5]\d)(?:$|\s)`)
	minuteAlone  = regexp.MustCompile(`(?i)^\s*(\d{1,3})\s*(?:min|mins|minutes?|minuten|minuti|minutos|minuter|minutter|minut|minuty)[.:]*\s*$`)
	wholeClock   = regexp.MustCompile(`(?:^|\s)(\d{1,3}):([0-5]\d)(?:$|\s)`)
	asFigures    = strings.NewReplacer("l", "1", "I", "1", "O", "0")
	// figuresForLetters are those of a time, in which fewer letters can stand.
	figuresForLetters = strings.NewReplacer("l", "1", "I", "1", "|", "1", "O", "0", "o", "0", "S", "5", "B", "8")
)

// typedFigures mends the figures of lists that were scanned or typed: letters that look
// like figures, 51:l5, where the others show what they are, and seconds under a minute that
// is not repeated, ":19" under "24:05" or "24 minutes". Lines keep their places.
func typedFigures(text []byte) ([]byte, bool) {
	if len(text) > typedBytes || !mayBeMisread(text) {
		return text, false
	}
	lines := strings.Split(string(text), "\n")
	changed := ordinalsInWords(lines)
	if mendColons(lines) {
		changed = true
	}
	last := 0 // place of the line above
	minute, second := "", ""
	over := -1 // the line that says the minute and nothing else
	for i, l := range lines {
		if len(l) > 300 {
			continue
		}
		if m := minuteAlone.FindStringSubmatch(l); m != nil {
			minute, second, over = m[1], "", i
			continue
		}
		for _, m := range misread.FindAllStringSubmatchIndex(l, -1) {
			token := l[m[2]:m[3]]
			if figures := strings.Count(token, ":") + strings.Count(token, ".") + strings.Count(token, "'") + strings.Count(token, "’"); strings.ContainsAny(token, "lIOoSB") && countFigures(token) >= 1 && figures > 0 && !romanMonth(token, l[m[3]:]) {
				l = l[:m[2]] + figuresForLetters.Replace(token) + l[m[3]:] // of the same length
			}
		}
		if m := misreadPlace.FindStringSubmatchIndex(l); m != nil {
			token := l[m[2]:m[3]]
			n, _ := strconv.Atoi(asFigures.Replace(token)) // three figures at most
			if strings.ContainsAny(token, "lIO") && (last > 0 && n == last+1 || last == 0 && n == 1 && i+1 < len(lines) && strings.HasPrefix(strings.TrimSpace(lines[i+1]), "2")) {
				l = l[:m[2]] + asFigures.Replace(token) + l[m[3]:]
			} else if strings.ContainsAny(token, "lIO") {
				n = 0
			}
			last = n
		}
		if m := secondsOnly.FindStringSubmatchIndex(l); m != nil && minute != "" && l[m[2]+1:m[3]] >= second && !wholeClock.MatchString(l) {
			second = l[m[2]+1 : m[3]]
			l = l[:m[2]] + minute + l[m[2]:]
			if over >= 0 {
				lines[over] = ""
			}
		} else if m := wholeClock.FindStringSubmatch(l); m != nil {
			minute, second, over = m[1], m[2], -1
		} else if strings.TrimSpace(l) != "" {
			minute, over = "", -1
		}
		if l != lines[i] {
			lines[i], changed = l, true
		}
	}
	if !changed {
		return text, false
	}
	for i, l := range lines {
		if m := misreadCell.FindStringSubmatchIndex(l); m != nil && len(l) < 300 {
			lines[i] = l[:m[2]] + asFigures.Replace(l[m[2]:m[3]]) + l[m[3]:]
		}
	}
	return []byte(strings.Join(lines, "\n")), true
}

// romanMonth says whether what looks like a misread time is a day and its month in Roman figures,
// 24.II in 24.II.2024.
func romanMonth(token, rest string) bool {
	_, month, dotted := strings.Cut(token, ".")
	return dotted && romanMonths[month] > 0 && dottedYear.MatchString(rest)
}

var dottedYear = regexp.MustCompile(`^[.]\s?(?:\d{4}|\d{2})(?:\D|$)`)

// mendColons puts a colon in the place of a semicolon within a time, 18;48, where no line has two
// semicolons and there are more times with other marks.
func mendColons(lines []string) bool {
	var at []int
	times := 0
	for i, l := range lines {
		switch strings.Count(l, ";") {
		case 0:
			if hasClock(strings.ReplaceAll(l, ",", " ")) {
				times++
			}
		case 1:
			if len(l) < 300 && colonMisread.MatchString(l) {
				at = append(at, i)
			}
		default:
			return false
		}
	}
	if len(at) == 0 || times < leastOfList || times < len(at) {
		return false
	}
	for _, i := range at {
		m := colonMisread.FindStringSubmatchIndex(lines[i])
		token := strings.Replace(asFigures.Replace(lines[i][m[2]:m[3]]), ";", ":", 1)
		lines[i] = lines[i][:m[2]] + token + lines[i][m[3]:]
	}
	return true
}

// mayBeMisread is the cheap test that nearly every text fails: letters that look like
// figures beside figures or alone at the beginning of a line, a semicolon between figures,
// seconds alone, or a third in words.
func mayBeMisread(text []byte) bool {
	figure := func(i int) bool {
		return i >= 0 && i < len(text) && (text[i] >= '0' && text[i] <= '9' || text[i] == ':')
	}
	for i, c := range text {
		switch c {
		case 'o', 'S', 'B':
			if figure(i-1) && figure(i+1) || i > 0 && text[i-1] == ':' && figure(i+1) || figure(i-1) && i > 2 && figure(i-2) && text[i-2] == ':' || figure(i+1) && i+2 < len(text) && text[i+1] == ':' || i > 1 && text[i-1] == '.' && figure(i-2) {
				return true
			}
		case 'l', 'I', 'O':
			if figure(i-1) || figure(i+1) || (i == 0 || text[i-1] == '\n') && i+1 < len(text) && (text[i+1] == ' ' || text[i+1] == '.') {
				return true
			}
		case ';':
			if figure(i-1) && i+1 < len(text) && (figure(i+1) || text[i+1] == 'l' || text[i+1] == 'O') {
				return true
			}
		case ':':
			if (i == 0 || text[i-1] == ' ' || text[i-1] == '\n') && figure(i+1) {
				return true
			}
		}
	}
	return bytes.Contains(text, []byte("hird"))
}

// ordinalsInWords puts figures in the place of the words that count lines with times,
// "First: Jo Lee 18:20", "Second: Al Roe 18:31". They must stand in their order, three of
// them or more.
func ordinalsInWords(lines []string) bool {
	var at []int
	for i, l := range lines {
		word, _, ok := strings.Cut(strings.TrimSpace(l), " ")
		if !ok || !clockInside.MatchString(l) && !spelledClock.MatchString(l) {
			continue
		}
		if len(at) >= len(ordinalWords) || !strings.EqualFold(strings.TrimRight(word, ":.,-"), ordinalWords[len(at)]) {
			continue
		}
		at = append(at, i)
	}
	if len(at) < 3 {
		return false
	}
	for n, i := range at {
		_, rest, _ := strings.Cut(strings.TrimSpace(lines[i]), " ")
		lines[i] = strconv.Itoa(n+1) + ". " + strings.TrimLeft(rest, ":-–— ")
	}
	return true
}

var ordinalWords = text.Ordinals[:12]

func countFigures(s string) (n int) {
	for i := range len(s) {
		if s[i] >= '0' && s[i] <= '9' {
			n++
		}
	}
	return n
}
