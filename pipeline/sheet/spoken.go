package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
)

// Times in words, as a telephone writes down what is said to it: "eighteen twenty",
// "nineteen minutes and five seconds", "twenty dead".

const (
	spokenUnit = `one|two|three|four|five|six|seven|eight|nine`
	spokenTeen = `ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen`
	spokenTens = `twenty|thirty|forty|fifty`
	spokenTwo  = `(?:` + spokenTens + `)[ -](?:` + spokenUnit + `)|` + spokenTens + `|` + spokenTeen
)

var (
	spokenTime = regexp.MustCompile(`(?i)(^|[\s,:–—-])(` + spokenTwo + `)(?: minutes?| mins?)?(?:,| and)?[ -](dead|exactly|flat|(?:oh|o|zero|nought)[ -](?:` + spokenUnit + `)|` + spokenTwo + `)(?: seconds?| secs?)?[.!]?$`)
	spokenFew  = regexp.MustCompile(`(?i)(^|[\s,:–—-])(` + spokenTwo + `) min(?:ute)?s?(?:,| and)? (` + spokenUnit + `)(?: seconds?| secs?)?[.!]?$`)
	spokenOf   = func() map[string]int {
		n := map[string]int{"dead": 0, "exactly": 0, "flat": 0}
		for i, w := range strings.Split(spokenUnit, "|") {
			n[w] = i + 1
		}
		for i, w := range strings.Split(spokenTeen, "|") {
			n[w] = 10 + i
		}
		for i, w := range strings.Split(spokenTens, "|") {
			n[w] = 20 + 10*i
		}
		return n
	}()
)

// spokenTimes puts figures in the place of times in words at the ends of lines, where three
// lines and more have them. Lines keep their places.
func spokenTimes(text []byte) ([]byte, bool) {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("een")) && !bytes.Contains(text, []byte("ty")) {
		return text, false
	}
	lines, n := textLines(text), 0
	for i, l := range lines {
		l = strings.TrimRight(l, " ")
		last := strings.ToLower(strings.TrimRight(l[strings.LastIndexAny(l, " -")+1:], ".!"))
		if _, ok := spokenOf[last]; !ok && last != "seconds" && last != "secs" {
			continue
		}
		m := spokenTime.FindStringSubmatch(l)
		if m == nil {
			m = spokenFew.FindStringSubmatch(l)
		}
		if m == nil || hasDigit(m[0]) {
			continue
		}
		n++
		number := func(words string) (sum int) {
			for _, w := range strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return r == ' ' || r == '-' }) {
				sum += spokenOf[w]
			}
			return sum
		}
		lines[i] = fmt.Sprintf("%s %d:%02d", strings.TrimRight(strings.TrimSuffix(l, m[0]), " ,:-–—"), number(m[2]), number(m[3]))
	}
	if n < 3 {
		return text, false
	}
	return []byte(strings.Join(lines, "\n") + "\n"), true
}
