package record

import "strings"

// parsePosition reads a finishing position: 3, 3., 3rd, 3=, =3, T3, #3, 3.0,
// 1,204, 3 (tie), 3 / 247 (of how many). ok is false where no position stands there; blank says that nothing
// or a dash does.
func parsePosition(s string) (pos int32, tied, blank, ok bool) {
	bare := strings.TrimRight(s, ")")
	for _, word := range [...]string{"tie", "tied", "joint"} {
		if t, found := strings.CutSuffix(bare, word); found {
			s, tied = strings.TrimRight(t, "( "), true // 3 (tie)
			break
		}
	}
	i, digits := 0, 0
	for i < len(s) && (s[i] == '=' || s[i] == '#' || s[i] == ' ' || s[i] == '\'' || (s[i] == 'T' || s[i] == 't') && i+1 < len(s) && s[i+1] >= '0' && s[i+1] <= '9') {
		tied = tied || s[i] == '=' || s[i] == 'T' || s[i] == 't'
		i++
	}
	for ; i < len(s) && s[i] >= '0' && s[i] <= '9'; i++ {
		if digits++; digits > 7 {
			return 0, false, false, false
		}
		pos = pos*10 + int32(s[i]-'0')
	}
	if digits == 0 {
		for _, ch := range []byte(s) {
			if ch != '-' && ch != ' ' && ch != '.' && ch != '=' && ch != '/' && ch != '?' {
				return 0, false, false, false
			}
		}
		return 0, false, true, false
	}
	rest := s[i:]
	if a, total, found := strings.Cut(rest, "/"); found { // 3 / 247
		if total = strings.Trim(total, " "); strings.Trim(a, " ") == "" && len(total) > 0 && len(total) <= 7 && allDigits([]byte(total)) && int32(atoi([]byte(total))) >= pos {
			rest = ""
		}
	}
	// A thousands mark: 1,204.
	if len(rest) == 4 && (rest[0] == ',' || rest[0] == '\'') && digits <= 3 && allDigits([]byte(rest[1:])) {
		return pos*1000 + int32(atoi([]byte(rest[1:]))), tied, false, true
	}
	// Decimal zeros of a spreadsheet: 3.0.
	if len(rest) > 1 && rest[0] == '.' && allZeros(rest[1:]) {
		rest = ""
	}
	if n := len(rest); n > 0 && rest[n-1] == '=' {
		tied, rest = true, rest[:n-1]
	}
	for len(rest) > 0 {
		switch ch := rest[0]; {
		case len(rest) <= 5 && ordinalSuffixes[rest]:
			rest = rest[:1]
		case ch == '.' || ch == ' ' || ch == ')' || ch == '*' || ch == '#' || ch == '+' || ch == '^' || ch >= 0x80: // º, ª
		default:
			return 0, false, false, false
		}
		rest = rest[1:]
	}
	if pos == 0 {
		return 0, false, true, false
	}
	return pos, tied, false, true
}

var ordinalSuffixes = wordSet(`st|nd|rd|th|e|er|eme|ème|ième|ère|re|o|a|de|te|ste|:e|:a|Th|ST|ND|RD|TH`)

func allZeros(s string) bool {
	for i := range len(s) {
		if s[i] != '0' {
			return false
		}
	}
	return true
}
