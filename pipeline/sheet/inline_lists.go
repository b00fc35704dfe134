package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// A newspaper prints the results of a class as one paragraph: "Men, 7 km: 1) Jo Lee
// Vale 24.38, 2) Al Roe Mill 25.02, 3) Cy Dee Vale 25.40." Each runner becomes a line.

// numberedItem begins an item of such a list; itemTime ends it.
var (
	numberedItem = regexp.MustCompile(`(?:^|[\s,;:.])(\d{1,3})[).] ?\pL`)
	itemTime     = regexp.MustCompile(`(?:^|\s)(\d{1,2}[:.,'’h ])?(\d{1,2})([:.,'’])([0-5]\d)(?:[.,]\d{1,2})?["”]?$`)
	markedTime   = regexp.MustCompile(`(\d{1,2})[.,]([0-5]\d)$`)
)

// leastMarked is how many times with a dot or a comma, none of them with a third part of
// 60 or more, are no seconds and hundredths (0.6^8 is less than one in fifty).
const leastMarked = 8

// inlineLists puts every item of lists that run on within a line on a line of its own, and
// the words before the first on one above; false where the text has no such list.
func inlineLists(text []byte) ([]byte, bool) {
	lines := textLines(text)
	cuts := make([][]int, len(lines))
	items, ended, marked, listed := 0, 0, 0, 0
	for i, l := range lines {
		at := itemsOf(l)
		if len(at) < 2 {
			continue
		}
		n, last, rising := 0, 0.0, true
		for _, item := range piecesAt(l, at)[1:] {
			switch m := itemTime.FindStringSubmatch(item); {
			case m != nil:
				if n++; m[1] == "" && (m[3] == "," || m[3] == ".") {
					marked++
					t := looseNumber(m[2] + m[4]) // minutes and seconds as one number
					rising, last = rising && t >= last, t
				}
			case kindOf(finalWord(item)) == kStatus:
				n++
			}
		}
		if n*10 < len(at)*9 || !rising {
			return text, false
		}
		cuts[i] = at
		items += len(at)
		ended += n
		if len(at) >= 3 {
			listed++
		}
	}
	if listed == 0 || items < 5 || marked > 0 && (marked < leastMarked || marked*10 < ended*9) {
		return text, false
	}
	var out []string
	for i, l := range lines {
		if cuts[i] == nil {
			out = append(out, l)
			continue
		}
		for k, piece := range piecesAt(l, cuts[i]) {
			if k > 0 && marked > 0 {
				piece = markedTime.ReplaceAllString(piece, "$1:$2")
			}
			if piece != "" || k > 0 {
				out = append(out, piece)
			}
		}
	}
	return []byte(strings.Join(out, "\n") + "\n"), true
}

// withoutLastMarks leaves out the semicolon or comma at the end of the lines of a list, "1) Jo
// Lee (Vale) 18'20\";", where it stands nowhere else in them.
func withoutLastMarks(text []byte) []byte {
	for _, mark := range []string{";", ","} {
		if !bytes.Contains(text, []byte(mark+"\n")) && !bytes.Contains(text, []byte(mark+"\r")) {
			continue
		}
		lines := textLines(text)
		n, with := 0, 0
		var ends []int // of lists
		for i, l := range lines {
			l = strings.TrimSpace(l)
			if l == "" || !itemTime.MatchString(strings.TrimRight(l, ",;.")) {
				continue
			}
			switch n++; {
			case strings.HasSuffix(l, mark) && strings.Count(l, mark) == 1:
				with++
			case !strings.Contains(l, mark):
				ends = append(ends, i)
			}
		}
		if with < 3 || with+len(ends) < n || len(ends)*3 > with {
			continue
		}
		for i, l := range lines {
			if l = strings.TrimSpace(l); strings.HasSuffix(l, mark) || slices.Contains(ends, i) {
				lines[i] = strings.TrimRight(l, mark+".")
			}
		}
		return []byte(strings.Join(lines, "\n") + "\n")
	}
	return text
}

// itemsOf gives where the items 1, 2, 3 … of a line begin.
func itemsOf(line string) (at []int) {
	for from := 0; ; {
		m := numberedItem.FindStringSubmatchIndex(line[from:])
		if m == nil {
			return at
		}
		if n, _ := strconv.Atoi(line[from+m[2] : from+m[3]]); n == len(at)+1 { // three figures at most
			at = append(at, from+m[2])
		}
		from += m[3]
	}
}

// piecesAt cuts a line into what stands before the first item and the items.
func piecesAt(line string, at []int) (pieces []string) {
	from := 0
	for _, to := range append(at, len(line)) {
		pieces = append(pieces, strings.Trim(line[from:to], " \t\u00a0,;:."))
		from = to
	}
	return pieces
}
