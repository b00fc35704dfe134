package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// oddMark is a line with a place, a name and at its end two figures for minutes and two for
// seconds, with a mark between that no time has: "1 Jo Lee 18 20", "2. Al Roe 18/31".
var oddMark = regexp.MustCompile(`^[ \t]*(\d{1,4})[.):]?[ \t]+(\pL[^\d\t]*?)[ ,:–-]+(\d{2})([/;]| {1,4})([0-5]?\d)[ \t]*\r?$`)

// oddMarks puts a colon between the minutes and the seconds of such lines. It takes five of them
// or more, nine in ten of the lines that begin with a number, with the one mark, with places that
// go up and times that never fall, and no time with a colon among them. Lines keep their places.
func oddMarks(text []byte) []byte {
	if len(text) > typedBytes || clockInside.Match(text) {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	var at []int
	numbered, place, seconds := 0, 0, 0
	over := 0 // the last filled line above them
	mark := byte(0)
	for i, l := range lines {
		start := bytes.TrimLeft(l, " \t")
		if len(start) == 0 || start[0] < '0' || start[0] > '9' {
			if len(at) == 0 && len(bytes.TrimSpace(start)) > 0 {
				over = i
			}
			continue
		}
		numbered++
		m := oddMark.FindSubmatch(l)
		if m == nil || len(findDates(string(l))) > 0 && m[4][0] != '/' {
			continue
		}
		number := func(k int) int { n, _ := strconv.Atoi(string(m[k])); return n } // four figures at most
		t := 60*number(3) + number(5)
		if len(m[5]) < 2 && m[4][0] != ' ' || mark != 0 && m[4][0] != mark || number(1) <= place || t < seconds || t < shortestTime {
			return text
		}
		mark, place, seconds = m[4][0], number(1), t
		at = append(at, i)
	}
	if len(at) < 5 || 10*len(at) < 9*numbered {
		return text
	}
	for _, i := range at {
		m := oddMark.FindSubmatch(lines[i])
		lines[i] = fmt.Appendf(nil, "%s %s  %s:%02s", m[1], m[2], m[3], m[5])
	}
	lines[over] = unitsAsTime(lines[over])
	return bytes.Join(lines, []byte("\n"))
}

// unitsAsTime makes one heading of those for minutes and seconds at the end of a line of
// headings, "No Name Min Sec".
func unitsAsTime(line []byte) []byte {
	words := strings.Fields(string(line))
	n := len(words)
	if n < 2 || unitHeading(words[n-2]) != 'm' || unitHeading(words[n-1]) != 's' {
		return line
	}
	return []byte(strings.Join(append(words[:n-2:n-2], "Time"), " "))
}
