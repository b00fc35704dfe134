package sheet

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// untimedRows puts into the columns of a list that was cut those whose race ended without a time and
// who stand in or below it in words of their own: "DNF Jo Lee", "Jo Lee (W40) - did not finish", or
// under a line of their own, "Did not finish:". out is changed in place; a line with a tab is one that
// was cut.
func untimedRows(out []string) {
	first := slices.IndexFunc(out, func(l string) bool { return strings.IndexByte(l, '\t') >= 0 })
	if first < 0 {
		return
	}
	name, time := -1, -1     // not looked for before somebody stands there
	over, below := "", false // what a line above says of those below it, and whether somebody stands there
	for i := first + 1; i < len(out); i++ {
		l := trim(out[i])
		if len(l) > 120 || strings.IndexByte(l, '\t') >= 0 {
			over = ""
			continue
		}
		who, ended, ok := endedBeside(l)
		if !ok && l != "" {
			if who, ended, ok = leftOpen(l); ok && !listGoesOn(out, i) {
				who, ended, ok = "", "", false
			}
		}
		kind := countBehind.ReplaceAllString(l, "")
		switch {
		case ok:
			over = ""
		case l == "" && below:
			over = ""
			continue
		case l == "":
			continue
		case saysHowEnded(kind):
			over, below = strings.Trim(kind, edgeMarks+"()[]"), false
			continue
		case over != "" && isPerson(withoutClub(strings.Trim(l, edgeMarks))):
			who, ended, below = strings.Trim(l, edgeMarks), over, true
		default:
			over = ""
			continue
		}
		if name < 0 {
			if name, time, ok = nameTimeColumns(out); !ok {
				return
			}
		}
		cells := make([]string, max(name, time)+1)
		cells[name], cells[time] = who, ended
		out[i] = strings.Join(cells, "\t")
	}
}

// leftOpen reads a line on which a question mark or a dash stands in place of the time, "Jo Lee ??", "- Jo
// Lee", or of the name, "??? 26:10".
func leftOpen(l string) (name, time string, ok bool) {
	if m := openTime.FindStringSubmatch(l); m != nil {
		name, time = strings.Trim(m[1], edgeMarks), m[2]
	} else if m := openTimeBefore.FindStringSubmatch(l); m != nil {
		if name, time, ok = endedBeside(trim(inBracket.ReplaceAllString(m[2], ""))); ok {
			return name, time, true // "- Jo Lee DNF (calf)"
		}
		name, time = strings.Trim(m[2], edgeMarks), m[1]
	} else if m := openName.FindStringSubmatch(l); m != nil {
		return m[1], m[2], true
	} else if m := openNameBehind.FindStringSubmatch(l); m != nil {
		return m[2], m[1], true
	}
	return name, time, name != "" && (isPerson(withoutClub(name)) || familyFirst.MatchString(name))
}

// familyFirst is a family name with the given name behind a comma.
var familyFirst = regexp.MustCompile(`^\p{Lu}[\pL'’-]+, \p{Lu}[\pL'’-]+$`)

var (
	openTime       = regexp.MustCompile(`^([^\d?]*\pL[^\d?]*?)[\s,:=@(–—-]*[\s(](\?{1,3}|-{1,3}|–|—|n/t|N/T)\)?$`)
	openTimeBefore = regexp.MustCompile(`^(\?{1,3}|-{1,3}|–|—)[\s,:–-]+([^\d?]*\pL[^\d?]*)$`)
	openName       = regexp.MustCompile(`^(\?{1,3}|-{1,3}|–|—)[\s,:=@(–—-]+(\d{1,3}[:.][0-5]\d)\)?$`)
	openNameBehind = regexp.MustCompile(`^(\d{1,3}[:.][0-5]\d)[\s,:–—-]+(\?{1,3}|-{1,3}|–|—)$`)
)

// listGoesOn says whether a line that was cut stands right above a line and one of the two below it.
func listGoesOn(out []string, i int) bool {
	cut := func(k int) bool { return k >= 0 && k < len(out) && strings.IndexByte(out[k], '\t') >= 0 }
	return cut(i-1) && (cut(i+1) || cut(i+2))
}

// countBehind is how many there are of a kind: "Did not finish (3)".
var countBehind = regexp.MustCompile(`[ :]*\(?\d{1,3}\)?[\s:]*$`)

// nameTimeColumns finds the columns of names and of times in lines that were cut; ok is false where they
// are not the same in nearly all lines.
func nameTimeColumns(out []string) (name, time int, ok bool) {
	var names, times [8]int
	n := 0
	for _, l := range out {
		if strings.IndexByte(l, '\t') < 0 {
			continue
		}
		n++
		for k, c := range strings.Split(l, "\t") {
			switch {
			case k >= len(names):
			case kindOf(trim(c)) == kClock:
				times[k]++
			case looksNamed(c):
				names[k]++
			}
		}
	}
	time, name = slices.Index(times[:], slices.Max(times[:])), slices.Index(names[:], slices.Max(names[:]))
	return name, time, 4*times[time] >= 3*n && 2*names[name] >= n
}

// endedBeside reads a line that says how somebody's race ended, before the name or behind it, and
// nothing else but a place without a figure and, in brackets or behind a comma, a group or a club,
// which are left to it. Several names in one line are not read: who is a club, and who is not?
func endedBeside(l string) (name, ended string, ok bool) {
	words := strings.Fields(strings.ReplaceAll(l, "\u00A0", " "))
	for len(words) > 0 && !hasLetter(words[0]) && !strings.ContainsAny(words[0], "0123456789") {
		words = words[1:] // a dash in the place of a place
	}
	for n := min(4, len(words)-2); n > 0; n-- {
		if w := strings.Join(words[:n], " "); saysHowEnded(w) {
			name, ended = strings.Join(words[n:], " "), w
			break
		}
		if w := strings.Join(words[len(words)-n:], " "); saysHowEnded(w) {
			name, ended = strings.Join(words[:len(words)-n], " "), w
			break
		}
	}
	name = strings.Trim(name, edgeMarks)
	return name, strings.Trim(ended, edgeMarks+"()[]"), ended != "" && (isPerson(withoutClub(name)) || familyFirst.MatchString(name))
}

// withoutClub leaves out what stands in brackets, or behind a comma where that is no further person.
func withoutClub(name string) string {
	who, more, several := strings.Cut(trim(inBracket.ReplaceAllString(name, "")), ",")
	if more = trim(more); several && isPerson(more) && !endsAsClub(more) && !startsAsClub(more) && !anyWord(more, clubWords) {
		return name
	}
	return who
}

// saysHowEnded says whether words, perhaps in brackets or with a mark behind them, say that somebody
// has no time, as a finish has none.
func saysHowEnded(words string) bool {
	f := fold(strings.Trim(words, edgeMarks+"()[]"))
	return len(f) > 1 && statusWords[f] && f != "ok" && f != "finished"
}

// isPerson says whether a text is two to four words as of a name: each begins with a capital letter, but
// for particles, and none has a figure or is of lines about a list.
func isPerson(text string) bool {
	words := strings.Fields(text)
	if len(words) < 2 || len(words) > 4 || !looksNamed(text) || strings.ContainsAny(text, ",;/&") {
		return false
	}
	for i, w := range words {
		r, _ := utf8.DecodeRuneInString(w)
		if f := fold(w); listWord[f] || !unicode.IsUpper(r) && (i+1 == len(words) || !particleWords[f]) {
			return false
		}
	}
	return true
}
