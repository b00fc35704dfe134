package sheet

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
)

// wholeOrSeconds is a line with a place, a name and at its end a time, or its seconds alone: "3 Jo Lee
// 18:20", "4 Al Roe .31", "5. Cy Dee --:40", "6 Di Fox  42".
var wholeOrSeconds = regexp.MustCompile(`^\s*\d{1,4}[.):]?\s+\pL[^\d\t]*?[\s,–-]+((?:(\d{1,3})([:.]))?[-–"”″']{0,2}[:.]?([0-5]\d))\s*$`)

// minutesOnce puts the minutes before seconds that stand alone because they are those of the line
// above: "18.20", ".31", ".40", "19.02". There are three of them or more beside two whole times, in
// nine of ten lines that begin with a number, and within a minute they never fall. Lines keep
// their places.
func minutesOnce(text []byte) []byte {
	if len(text) > typedBytes || bytes.Count(text, []byte("\n")) < 5 {
		return text
	}
	lines := bytes.Split(text, []byte("\n"))
	numbered, whole, alone := 0, 0, 0
	minute, mark, second := "", "", ""
	for i, l := range lines {
		start := bytes.TrimLeft(l, " \t")
		if len(start) == 0 || start[0] < '0' || start[0] > '9' {
			continue
		}
		numbered++
		m := wholeOrSeconds.FindSubmatchIndex(l)
		if m == nil {
			if minute = ""; 10*(numbered-whole-alone) > numbered && numbered > 10 {
				return text
			}
			continue
		}
		got := string(l[m[8]:m[9]])
		switch {
		case m[4] >= 0:
			whole++
			minute, mark = string(l[m[4]:m[5]]), string(l[m[6]:m[7]])
		case minute == "" || got < second:
			return text
		default:
			alone++
			lines[i] = append(bytes.Clone(l[:m[2]]), minute+mark+got...)
		}
		second = got
	}
	if alone < 3 || whole < 2 || 10*(whole+alone) < 9*numbered {
		return text
	}
	return bytes.Join(lines, []byte("\n"))
}

// underMinute is a line of a name and two figures before or behind it.
var underMinute = regexp.MustCompile(`^\s*(?:[:.]?([0-5]\d)[\s.):–-]+(\pL[^\d\t]*?)|(\pL[^\d\t]*?)[\s,:.–-]+([0-5]\d))\s*$`)

// minuteBlocks puts the minutes that stand in lines of their own, "18 mins", before the seconds in
// the lines below them, "20 Jo Lee", and leaves those lines blank. All lines from the first of
// them to the last below one have to be of either kind, two minutes or more and four runners, and
// neither minutes nor seconds within them fall. Lines keep their places.
func minuteBlocks(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("min")) {
		return text
	}
	lines := strings.Split(string(text), "\n")
	out, blocks, runners := []string(nil), 0, 0
	minute, second := -1, ""
	for i, l := range lines {
		if m := minuteAlone.FindStringSubmatch(l); m != nil {
			n, _ := strconv.Atoi(m[1]) // three figures at most
			if n <= minute {
				return text
			}
			if out == nil {
				out = append(out, lines[:i]...)
			}
			minute, second = n, ""
			blocks++
			out = append(out, "")
			continue
		}
		if out == nil {
			continue
		}
		m := underMinute.FindStringSubmatch(l)
		if m == nil {
			if strings.TrimSpace(l) != "" {
				minute = 1 << 20 // the list has ended
			}
			out = append(out, l)
			continue
		}
		got, name := m[1]+m[4], m[2]+m[3]
		if minute == 1<<20 || got < second {
			return text
		}
		second = got
		runners++
		out = append(out, name+" "+strconv.Itoa(minute)+":"+got)
	}
	if blocks < 2 || runners < 4 {
		return text
	}
	return []byte(strings.Join(out, "\n"))
}
