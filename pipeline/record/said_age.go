package record

import (
	"strings"

	"lapwing/pipeline/text"
)

// nameAgeUnits stand behind a number that is an age, "Jo Lee 36 yrs", "Jo Lee (36 ans)", folded (common
// practice, no source).
var nameAgeUnits = wordSet(text.AgeUnits + `|yrs old|ev`)

// saidAge parts a name from an age behind it that says that it is one, by a unit or by "aged" or
// "age" before it; ok is false for all else, and nothing is allocated then.
func saidAge(s string) (name string, n int, ok bool) {
	end := len(s)
	if end < 8 {
		return s, 0, false
	}
	bracket := s[end-1] == ')'
	if last := s[end-1]; !bracket && (last < '0' || last > '9') && (last|0x20 < 'a' || last|0x20 > 'z') && last != '.' && last < 0x80 {
		return s, 0, false
	}
	at := strings.LastIndexAny(s, "0123456789")
	if at < 4 || end-at > 16 {
		return s, 0, false
	}
	from := at
	for from > 0 && s[from-1] >= '0' && s[from-1] <= '9' {
		from--
	}
	if at-from > 1 || from < 4 {
		return s, 0, false
	}
	n = atoi([]byte(s[from : at+1]))
	unit := strings.Trim(s[at+1:], " .)")
	before := strings.TrimRight(s[:from], " (,-–")
	said := unit != "" && nameAgeUnits[string(fold(nil, unit))]
	if i := strings.LastIndexAny(before, " (,"); i > 0 && unit == "" {
		switch word := before[i+1:]; {
		case strings.EqualFold(word, "aged"), strings.EqualFold(word, "age"):
			said, before = true, strings.TrimRight(before[:i], " (,-–")
		}
	}
	if !said || n < youngestAge || n > oldestAge || strings.IndexByte(trim(before), ' ') < 0 || strings.ContainsAny(before, "0123456789:") {
		return s, 0, false
	}
	return trim(before), n, true
}
