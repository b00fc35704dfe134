package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// evenTimes writes the times of a few typed lines as those of most others are: 21.51 among times with a
// colon, "21:51." at the end of a line, "21:51 mins Jo Lee". Four lines and more have to be alike, and those
// that are otherwise at most as many and among them: what stands above may be about the run. Cells between marks are left to their
// columns. Lines keep their places.
func evenTimes(text []byte) []byte {
	if len(text) > typedBytes || !hasColonTime.Match(text) {
		return text
	}
	lines := textLines(text)
	usual, least, most := 0, 0.0, 0.0
	last := 0              // of the usual ones
	odd := map[int][]int{} // lines with another time, and where it stands
	for i, l := range lines {
		if len(l) > 120 || !hasLetter(l) || strings.ContainsAny(l, "\t;|") || strings.Count(l, ",") > 1 {
			continue
		}
		if decimalMinutes.MatchString(l) && !hasColonTime.MatchString(l) {
			return text // minutes and hundredths, 25.98
		}
		uneven := unevenTime(l)
		if m := plainTimeLine.FindStringSubmatch(l); m != nil && uneven == nil {
			v := looseNumber(m[1])
			if usual++; usual == 1 || v < least {
				least = v
			}
			most, last = max(most, v), i
		} else if usual > 0 && uneven != nil && !slices.ContainsFunc(findDates(l), foundDate.settled) {
			odd[i] = uneven
		}
	}
	if usual < 4 || len(odd) == 0 || len(odd) > usual {
		return text
	}
	changed := false
	for i, m := range odd {
		if i > last+1 {
			continue
		}
		clock := lines[i][m[4]:m[5]] + ":" + lines[i][m[6]:m[7]]
		if v := looseNumber(clock); 2*v < least || v > 2*most {
			continue
		}
		rest := strings.TrimLeft(lines[i][m[1]:], " ")
		if rest != "" {
			rest = " " + rest
		}
		lines[i] = lines[i][:m[3]] + clock + rest
		changed = true
	}
	if !changed {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	hasColonTime = regexp.MustCompile(`\d:[0-5]\d`)
	// plainTimeLine is a line with one time, at its beginning, behind a place or at its end.
	plainTimeLine  = regexp.MustCompile(`^(?:[^:]|:\s)*?\b(\d{1,2}:[0-5]\d)\b[^:\d]*$`)
	decimalMinutes = regexp.MustCompile(`(?:^|[\s(])\d{1,2}\.[6-9]\d(?:\D|$)`)
	// unevenTimes are a time with a full stop, and one with a mark behind it at the end of the line or with a
	// word for minutes behind it.
	unevenTimes = [...]*regexp.Regexp{
		regexp.MustCompile(`(^|[\s(,–-])(\d{1,2})\.([0-5]\d)(?:[.;,]*\s*$|\s+(?:mins?|minutes)\b\.?\s*|\s)`),
		regexp.MustCompile(`(^|[\s(,–-])(\d{1,2}):([0-5]\d)(?:[.;,]+\s*$|\s+(?:mins?|minutes)\b\.?\s*)`),
	}
)

// unevenTime is where such a time stands in a line, with its parts, where it is the only one; nil else.
func unevenTime(l string) []int {
	for _, form := range unevenTimes {
		if m := form.FindStringSubmatchIndex(l); m != nil && !hasColonTime.MatchString(l[:m[0]]) && !hasColonTime.MatchString(l[m[1]:]) {
			return m
		}
	}
	return nil
}
