package sheet

import (
	"regexp"
	"strings"
)

// bullet is an item of a list in a text of markup, with the name emphasised:
// "- **Jo Lee** : 18:20", "* **Jo Lee** - 45th - 18:20 (9:01 halfway)".
var (
	bullet      = regexp.MustCompile(`^ {0,3}[-*+•] +(?:\*\*|__)(\pL[^*_\d]*)(?:\*\*|__)\s*[:,–—-]?\s*(\S.*?)\s*$`)
	bulletPiece = regexp.MustCompile(`\s+[-–—:|]\s+`)
	bulletTime  = regexp.MustCompile(clockPattern)
	bulletNote  = regexp.MustCompile(`^(.*\S)\s+(\([^()]*\))$`)
)

// bulletNameTime cuts such lists. nil where not nearly all lines with a time are of that
// kind.
func bulletNameTime(lines []string, _ byte) []string {
	out := make([]string, len(lines))
	timed, matched := 0, 0
	for i, l := range lines {
		out[i] = strings.Trim(strings.ReplaceAll(l, "\t", " "), "* ")
		if len(l) > 200 {
			continue
		}
		m := bullet.FindStringSubmatch(l)
		clock := bulletTime.MatchString(l)
		if clock {
			timed++
		}
		if m == nil {
			continue
		}
		if clock {
			matched++
		}
		rest, note := m[2], ""
		if n := bulletNote.FindStringSubmatch(rest); n != nil {
			rest, note = n[1], n[2]
		}
		cells := append([]string{strings.TrimSpace(m[1])}, bulletPiece.Split(rest, -1)...)
		if note != "" {
			cells = append(cells, note)
		}
		out[i] = strings.Join(cells, "\t")
	}
	if matched < 3 || 10*matched < 9*timed {
		return nil
	}
	return out
}
