package sheet

import (
	"regexp"
	"strings"
)

var (
	// minutesThenSeconds is a time with the words of East Asia in a line of text: 17分20秒, 17분 20초.
	minutesThenSeconds = regexp.MustCompile(`(?:(\d{1,2})(?:時間|小时|小時|시간) ?)?(\d{1,2})(?:分|분) ?(\d{2})(?:秒|초)`)
	placeWord          = regexp.MustCompile(`^(\s*\d{1,4})(?:位|위|着|등)\s*`)
	wideSpaces         = strings.NewReplacer("　", " ", "（", " (", "）", ") ")
)

// eastAsianLines writes lines of text in which a place, a name and a time stand with the words
// and the wide marks of East Asia, "1位　佐藤　花子（走友会）　17分20秒", as they are elsewhere, "1. 佐藤 花子
// (走友会) 17:20", where three lines and more have such a time.
func eastAsianLines(lines []string) []string {
	n := 0
	for _, l := range lines {
		if minutesThenSeconds.MatchString(l) {
			n++
		}
	}
	if n < 3 {
		return lines
	}
	out := make([]string, len(lines))
	for i, l := range lines {
		l = wideSpaces.Replace(l)
		l = placeWord.ReplaceAllString(l, "$1. ")
		out[i] = minutesThenSeconds.ReplaceAllStringFunc(l, func(s string) string {
			m := minutesThenSeconds.FindStringSubmatch(s)
			if m[1] == "" {
				return " " + m[2] + ":" + m[3]
			}
			if len(m[2]) == 1 {
				m[2] = "0" + m[2]
			}
			return " " + m[1] + ":" + m[2] + ":" + m[3]
		})
	}
	return out
}
