package sheet

import (
	"bytes"
	"io"
	"mime/quotedprintable"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

// plainMessage takes off what programs for messages put around and into a list that was
// pasted from them: the transfer encoding of a mail, the senders and clock times of a chat,
// the head of a mail, an older list that a reply quotes, small pictures, and signs that
// only look like colons and spaces. why says what was done, "" for nothing. Lines keep
// their places, but for the day of a chat, which may come to stand in a line of its own.
func plainMessage(text []byte) (plain []byte, why string) {
	if len(text) > typedBytes {
		return text, ""
	}
	text = stampBehindDay.ReplaceAll(plainSigns(withoutTransferEncoding(text)), []byte("$1"))
	if head := textLines(text[:min(len(text), 8<<10)]); !slices.ContainsFunc(head, ofMessage) {
		return text, ""
	}
	lines := textLines(text)
	var done []string
	for _, step := range [...]struct {
		mend func([]string) ([]string, bool)
		why  string
	}{
		{withoutMailHead, "of the head of the mail only the subject and the day were kept"},
		{withoutOlderList, "the older list that the message quotes was left out"},
		{withoutStamps, "senders and clock times of the messages were left out"},
		{withoutSenders, "the senders of the messages were left out"},
		{withoutSpeakers, "the senders of the messages were left out"},
	} {
		if out, ok := step.mend(lines); ok {
			done = append(done, step.why)
			if len(out) != len(lines) {
				done = append(done, "a day was put into a line of its own, and the rows are counted so")
			}
			lines = out
		}
	}
	if len(done) == 0 {
		return text, ""
	}
	return []byte(strings.Join(lines, "\n") + "\n"), strings.Join(done, "; ")
}

// stampBehindDay is the time of day, in halves of it, at which something was written, behind the day.
var stampBehindDay = regexp.MustCompile(`(?im)^([^\d\n]{3,60}\b\d{1,2},? (?:19|20)\d\d),? \d{1,2}:[0-5]\d(?::[0-5]\d)? ?[ap]\.?m\.?[ \t]*\r?$`)

// ofMessage is the cheap test that hardly any line of a table passes.
func ofMessage(l string) bool {
	if strings.HasPrefix(l, ">") || strings.Contains(l, ": ") {
		return true
	}
	l = strings.TrimRight(l, " \r")
	return len(l) > 7 && l[len(l)-3] == ':' && strings.IndexByte(l, ',') < 0 && senderLine.MatchString(l)
}

// lookalikeSigns are signs that stand for a colon, a space or nothing in typed text
// (Unicode 15, general categories Po and Zs), and pictures before a value.
var (
	betweenFigures = regexp.MustCompile(`(\d)[∶：ː꞉﹕](\d)`)
	picture        = regexp.MustCompile(`(?m)(^|[ \t|])[\x{1F3C1}-\x{1F3CF}\x{1F4C0}-\x{1F4FF}\x{1F550}-\x{1F567}\x{23E9}-\x{23FA}\x{231A}\x{231B}]\x{FE0F}? *`)
	// pictureBehind is one right behind the seconds of a time: "18:20🙂".
	pictureBehind = regexp.MustCompile(`(:[0-5]\d)([\x{1F300}-\x{1FAFF}])`)
	oddSpaces     = strings.NewReplacer("\u2002", " ", "\u2003", "  ", "\u2004", " ", "\u2005", " ", "\u2007", " ", "\u2009", " ", "\u200A", " ", "\u202F", " ", "\u3000", " ")
)

// plainSigns puts usual signs in the place of such that look like them.
func plainSigns(text []byte) []byte {
	if i := slices.IndexFunc(text, func(b byte) bool { return b >= 0xC8 }); i < 0 {
		return text // no letter beyond Latin-1 and its extension
	}
	for _, sign := range [...]string{"∶", "：", "ː", "꞉", "﹕"} {
		if bytes.Contains(text, []byte(sign)) {
			text = betweenFigures.ReplaceAll(text, []byte("$1:$2"))
			break
		}
	}
	if bytes.Contains(text, []byte("\xE2\x80")) || bytes.Contains(text, []byte("\u3000")) {
		text = []byte(oddSpaces.Replace(string(text)))
	}
	if bytes.Contains(text, []byte("\xF0\x9F")) || bytes.Contains(text, []byte("\xE2\x8F")) || bytes.Contains(text, []byte("\xE2\x8C")) {
		text = pictureBehind.ReplaceAll(picture.ReplaceAll(text, []byte("$1")), []byte("$1 $2"))
	}
	return text
}

// withoutTransferEncoding undoes quoted-printable (RFC 2045, 6.7) where the head of a mail
// says that it was used.
func withoutTransferEncoding(text []byte) []byte {
	head := bytes.ToLower(text[:min(len(text), 4096)])
	if !bytes.Contains(head, []byte("content-transfer-encoding: quoted-printable")) {
		return text
	}
	plain, err := io.ReadAll(quotedprintable.NewReader(bytes.NewReader(text)))
	if err != nil {
		return text
	}
	return plain
}

// Labels of the lines at the head of a mail, by what they say. Common practice of mail
// programs, no source.
var mailLabels = func() map[string]byte {
	labels := map[string]byte{}
	for what, words := range map[byte]string{
		'p': "from|to|cc|bcc|reply-to|von|an|de|à|para|da|a|van|aan|od|do|från|till|oddi wrth|at|mime-version|content-type|content-transfer-encoding|message-id|x-mailer|attachments|importance",
		'd': "date|sent|datum|gesendet|fecha|enviado|enviado el|data|inviato|verzonden|wysłano|skickat|envoyé|anfonwyd",
		's': "subject|betreff|objet|asunto|oggetto|onderwerp|temat|ämne|pwnc",
	} {
		for _, w := range strings.Split(words, "|") {
			labels[w] = what
		}
	}
	return labels
}()

var (
	mailLabel    = regexp.MustCompile(`^[>\s]*\**([\pL][\pL -]{0,25}?)\**\s*:\s*(.*)$`)
	replyPrefix  = regexp.MustCompile(`(?i)^(?:(?:re|fw|fwd|aw|wg|tr|rv|i|r|antw|doorst|sv|vb|odp|pd|ymateb)\s*:\s*)+`)
	mailTime     = regexp.MustCompile(`(?i)[, ]*(?:\bat\b|\bum\b|\bà\b)?[, ]*\d{1,2}:\d{2}(?::\d{2})?(?: ?[ap]m\b)?(?: ?Uhr)?(?: ?[+-]\d{4})?(?: ?\([A-Z]{2,5}\))?(?: ?GMT| ?UTC)?\s*$`)
	sameDayWords = regexp.MustCompile(` (?:today|today s|todays|this morning|this mornings|tonight|this evening|heute|heutigen|heutige|aujourd hui|ce matin|hoy|esta manana|oggi|stamattina|vandaag|vanmorgen|dzisiaj|dzis|dzisiejsze|idag|i dag|i morse|heddiw|bore ma) `)
)

// withoutMailHead leaves of the head of a mail the subject, without the words that a reply
// puts before it, and the day, without the time; senders and receivers go. It is done where
// the mail says that the run was on that day, "this morning": else its day says nothing. A head
// has two labels of mails on lines that follow one another, one of them the subject.
func withoutMailHead(lines []string) ([]string, bool) {
	out, found := lines, false
	for i := 0; i < min(len(lines), 60); i++ {
		end, seen := i, map[byte]int{}
		for end < len(lines) {
			m := mailLabel.FindStringSubmatch(lines[end])
			if m == nil || mailLabels[strings.ToLower(m[1])] == 0 {
				break
			}
			seen[mailLabels[strings.ToLower(m[1])]]++
			end++
		}
		if end-i < 2 || seen['s'] == 0 || seen['p']+seen['d'] == 0 {
			continue
		}
		if !sameDayWords.MatchString(" " + fold(strings.Join(lines[i:], " ")) + " ") {
			return lines, false
		}
		if !found {
			out, found = slices.Clone(lines), true
		}
		for k := i; k < end; k++ {
			m := mailLabel.FindStringSubmatch(lines[k])
			switch mailLabels[strings.ToLower(m[1])] {
			case 'p':
				out[k] = ""
			case 's':
				out[k] = replyPrefix.ReplaceAllString(m[2], "")
			case 'd':
				if day := mailTime.ReplaceAllString(m[2], ""); len(findDates(day)) > 0 {
					out[k] = day
				}
			}
		}
		i = end
	}
	return out, found
}

// withoutOlderList leaves out the results in the quotation below a reply, where the reply
// has as many and more: it is the list as it stands now.
func withoutOlderList(lines []string) ([]string, bool) {
	first := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, ">") })
	if first < 0 {
		return lines, false
	}
	above, quoted := 0, 0
	for _, l := range lines {
		switch timed := clockInside.MatchString(l); {
		case !strings.HasPrefix(l, ">"):
			if timed && !wroteLine(l) {
				above++
			}
		case timed:
			quoted++
		}
	}
	if above < 3 || quoted == 0 || above < quoted {
		return lines, false
	}
	out := slices.Clone(lines)
	var titles []string
	for i, l := range out {
		if strings.HasPrefix(l, ">") {
			l = strings.TrimLeft(l, "> ")
			if out[i] = ""; !clockInside.MatchString(l) && i < first+6 && l != "" {
				titles = append(titles, l)
			}
		} else if wroteLine(l) {
			out[i] = ""
		}
	}
	// What the quoted list says of its course and day is said of the list above too, where
	// nothing is said over that.
	top := slices.IndexFunc(out, clockInside.MatchString)
	blank := slices.Index(out[:top], "")
	if text := strings.Join(titles, ", "); blank >= 0 && len(findDates(text)) > 0 && len(findDates(strings.Join(out[:top], "\n"))) == 0 {
		out[blank] = text
	}
	return out, true
}

// wroteLine is the line over a quotation: "On 3 January 2026 at 13:05, Jo Lee wrote:".
func wroteLine(l string) bool {
	l = strings.TrimSpace(l)
	return strings.HasSuffix(l, ":") && strings.ContainsAny(l, "0123456789") && wroteWords.MatchString(" "+fold(l)+" ")
}

var wroteWords = regexp.MustCompile(` (?:wrote|schrieb|a ecrit|escribio|ha scritto|schreef|napisal|napisala|skrev|ysgrifennodd) `)

// A stamp is what a program for chats puts before each message when it is copied:
// "[03/01/2026, 10:31:12] Jo Lee: ", "3/1/26, 10:31 - Jo Lee: ".
var (
	chatStamp = regexp.MustCompile(`^[\s\x{200E}\x{200F}]*\[?(\d{1,4}[./-]\d{1,2}[./-]\d{1,4}),? (\d{1,2}[:.]\d{2})(?:[:.]\d{2})?(?: ?[AaPp]\.?[Mm]\.?)?(?:\] ?| [-–] )(.*)$`)
	chatTime  = regexp.MustCompile(`^\s*\[?(\d{1,2}:\d{2})(?::\d{2})?(?: ?[AaPp]\.?[Mm]\.?)?\]?,? (?:[-–] )?([^\d:]{1,40}): (.*)$`)
	sender    = regexp.MustCompile(`^([^:\n]{1,40}): ?(.*)$`)
	leftOut   = regexp.MustCompile(`^<[^<>]*>$`)
)

// withoutStamps takes the stamps off the messages of a chat. The day of the stamps, which is
// that of the messages, stands behind the first message that is no result.
func withoutStamps(lines []string) ([]string, bool) {
	if out, ok := withoutTimeStamps(lines); ok {
		return out, true
	}
	if !slices.ContainsFunc(lines[:min(len(lines), 60)], chatStamp.MatchString) {
		return lines, false
	}
	var out []string
	own := sayOwnTimes(lines, func(l string) (who, text string, ok bool) {
		if m := chatStamp.FindStringSubmatch(l); m != nil {
			if said := sender.FindStringSubmatch(m[3]); said != nil {
				return said[1], said[2], true
			}
		}
		return "", "", false
	})
	day := ""
	for i, l := range lines {
		m := chatStamp.FindStringSubmatch(l)
		if m == nil {
			out = append(out, l)
			continue
		}
		if own[i] != "" {
			out = append(out, own[i])
			continue
		}
		said := sender.FindStringSubmatch(m[3])
		if said == nil { // what the program says: who joined, that messages are locked
			out = append(out, "")
			continue
		}
		text := said[2]
		if leftOut.MatchString(strings.TrimSpace(text)) {
			text = ""
		}
		text = withYearOfStamp(text, m[1])
		if m[1] != day && text != "" {
			day = m[1]
			switch {
			case len(findDates(text)) > 0:
			case clockInside.MatchString(text):
				out = append(out, day)
			default:
				text += ", " + day
			}
		}
		out = append(out, text)
	}
	return out, true
}

// withYearOfStamp puts the year of the day on which a message was sent behind a day of the month before
// that it names without a year: "Saturday 3 January", sent on 4/1/26.
func withYearOfStamp(text, stamp string) string {
	sent, said := scanDates(stamp, true), findDates(text)
	if len(sent) != 1 || len(said) != 1 {
		return text
	}
	for _, on := range sent[0].readings {
		for _, r := range said[0].readings {
			if r.y != 0 || on.y == 0 {
				return text
			}
			for _, r.y = range [...]int{on.y, on.y - 1} {
				if r.day() <= on.day() && r.day() > on.day()-31 {
					return text[:said[0].to] + " " + strconv.Itoa(r.y) + text[said[0].to:]
				}
			}
		}
	}
	return text
}

// sayOwnTimes gives the messages in which people say their own times, "Jo Lee: 18:20 pb", as the name and the
// time, by line: a time with hardly a word beside it, and none that may be a name. They are three at
// least, each of another sender, and three in four of those that say a time.
func sayOwnTimes(lines []string, read func(string) (who, text string, ok bool)) map[int]string {
	out, senders, timed := map[int]string{}, map[string]bool{}, 0
	for i, l := range lines {
		who, text, ok := read(l)
		if !ok || !clockWhole.MatchString(text) {
			continue
		}
		timed++
		at := clockWhole.FindStringIndex(text)
		words := strings.Fields(text[:at[0]] + " " + text[at[1]:])
		if len(words) > 4 || slices.ContainsFunc(words, mayBeNamed) || clockWhole.MatchString(text[at[1]:]) {
			continue
		}
		out[i], senders[who] = trim(who)+" "+strings.Trim(text[at[0]:at[1]], " "), true
	}
	if len(senders) < 3 || len(senders) < len(out) || 4*len(out) < 3*timed {
		return nil
	}
	return out
}

// clockWhole is a time with all its parts.
var clockWhole = regexp.MustCompile(`\b\d{1,3}:\d{2}(?::\d{2})?(?:[.,]\d{1,2})?\b`)

// mayBeNamed says whether a word is written as a name is: with one capital letter before small ones.
func mayBeNamed(word string) bool {
	first, n := utf8.DecodeRuneInString(word)
	return unicode.IsUpper(first) && strings.ContainsFunc(word[n:], unicode.IsLower)
}

// withoutTimeStamps takes stamps without a day off, "10:31 Jo Lee: ", where a few senders
// write three messages and more, or each says his or her own time.
func withoutTimeStamps(lines []string) ([]string, bool) {
	n, senders := 0, map[string]bool{}
	for _, l := range lines {
		if m := chatTime.FindStringSubmatch(l); m != nil {
			n++
			senders[m[2]] = true
		}
	}
	if n < 3 {
		return lines, false
	}
	own := sayOwnTimes(lines, func(l string) (who, text string, ok bool) {
		m := chatTime.FindStringSubmatch(l)
		if m == nil {
			return "", "", false
		}
		return m[2], m[3], true
	})
	if len(own) == 0 && 2*len(senders) > n {
		return lines, false
	}
	out := slices.Clone(lines)
	for i, l := range out {
		if m := chatTime.FindStringSubmatch(l); own[i] != "" {
			out[i] = own[i]
		} else if m != nil {
			out[i] = m[3]
		}
	}
	return out, true
}

// speaker is who says what follows: "Pat: Jo Lee 18:20".
var speaker = regexp.MustCompile(`^\s*(\pL[\pL .'’-]{1,24}?): +(\S.*)$`)

// withoutSpeakers takes the names of two to four people who write to one another off the beginnings of
// nearly all lines, where one of them says the times, three and more, and some lines are no results.
func withoutSpeakers(lines []string) ([]string, bool) {
	if len(lines) > 2000 {
		return lines, false
	}
	lex := newLexicon(Options{})
	said, timed, filled, talk := map[string]int{}, map[string]int{}, 0, 0
	for _, l := range lines {
		if trim(l) == "" {
			continue
		}
		filled++
		m := speaker.FindStringSubmatch(l)
		if m == nil {
			continue
		}
		if said[m[1]]++; clockInside.MatchString(m[2]) {
			timed[m[1]]++
		} else {
			talk++
		}
	}
	spoken, most, all := 0, 0, 0
	for who, n := range said {
		if spoken += n; len(said) > 4 || lex.read(who).known || kindOf(who) == kSex && fold(who) != "me" || isSection(who) {
			return lines, false
		}
		all += timed[who]
		most = max(most, timed[who])
	}
	if len(said) < 2 || talk < 2 || most < 3 || most*10 < all*7 || spoken*10 < (filled-2)*9 {
		return lines, false
	}
	out := slices.Clone(lines)
	for i, l := range out {
		if m := speaker.FindStringSubmatch(l); m != nil {
			out[i] = m[2]
		}
	}
	return out, true
}

// senderLine stands over the messages of a sender in some programs: "Jo Lee  10:31".
var senderLine = regexp.MustCompile(`^\s*(\pL[^\d:]{0,38}?)[ \t,]+(\d{1,2}:[0-5]\d)(?: ?[AaPp][Mm])?\s*$`)

// withoutSenders leaves out lines that say who wrote the following ones and when: a name
// that comes again, below a blank line, times of the day that never fall, and under each of
// them something else, four results with places in all.
func withoutSenders(lines []string) ([]string, bool) {
	var at []int
	names, again, last, placed := map[string]bool{}, 0, time.Duration(0), 0
	for i, l := range lines {
		if m := senderLine.FindStringSubmatch(l); m != nil {
			hour, minute, _ := strings.Cut(m[2], ":")
			t, err := time.ParseDuration(hour + "h" + minute + "m")
			if err != nil || l[0] == ' ' || i > 0 && strings.TrimSpace(lines[i-1]) != "" || t < last || t < 6*time.Hour || t >= 24*time.Hour || i+1 >= len(lines) || strings.TrimSpace(lines[i+1]) == "" || senderLine.MatchString(lines[i+1]) {
				return lines, false
			}
			if last = t; names[m[1]] {
				again++
			}
			names[m[1]] = true
			at = append(at, i)
		}
	}
	for _, l := range lines {
		if again > 0 && leadingPlace.MatchString(l) && clockInside.MatchString(l) {
			placed++
		}
	}
	if placed < 4 {
		return lines, false
	}
	out := slices.Clone(lines)
	for _, i := range at {
		out[i] = ""
	}
	return out, true
}
