package text

import (
	"regexp"
	"strings"
	"unicode"
)

var (
	// oddColon are signs that stand for the colon of a time: colons and dots of other scripts, and keys
	// that were hit beside it, alone, with blanks or with a full stop.
	oddColon = regexp.MustCompile("(\\d)[ .]*[:∶：꞉﹕︓׃˸⁚։۔∙⋅⦂・·•․．ː٫`\\\\|=_^¦][ ]*(\\d\\d)")
	// slashed are minutes and seconds on both sides of a stroke with blanks, which no date has.
	slashed = regexp.MustCompile(`^(\d{1,2}) / ([0-5]\d)$`)
	// tenthsBehind are tenths or hundredths behind a sign for seconds or a dot in the middle.
	tenthsBehind = regexp.MustCompile(`^(\d{1,2}:\d\d)(?:["”″'’s·•]|'')[.,]?(\d{1,3})$`)
	// primes are minutes and seconds with their signs, and tenths behind, or with the sign of seconds twice.
	primes = regexp.MustCompile(`^(\d{1,2})(?:['’′](\d\d)(?:["”″]|'')[.,](\d{1,3})|''(\d\d)|ʹ(\d\d)ʺ?)$`)
	// zeroBefore stands before a length of time: no days, or the day from which a program counts.
	zeroBefore = regexp.MustCompile(`^(?:[Tt]|0\.|0d |1970-01-01[T ])(\d\d:\d\d:\d\d)(?:\.0+)?(?:Z|\+00:?00)?$`)
	// oddHours are hours before another mark than the minutes: "00.28:10", "1;04:12".
	oddHours = regexp.MustCompile(`^(\d{1,2})[.;,]([0-5]\d:[0-5]\d)$`)
	// plainClock is a time in figures, colons and a decimal point.
	plainClock = regexp.MustCompile(`^\d{1,3}:[0-5]\d(?::[0-5]\d)?(?:[.,]\d{1,3})?$`)
)

// PlainClock gives a running time that is written with other marks than colons and figures as it is
// commonly written: in quotation marks or brackets that are not round, with signs that nobody sees, or with another sign for the colon. ok is false for
// everything else, a time already written so or of which the sheet says that nobody is sure
// among it.
func PlainClock(s string) (plain string, ok bool) {
	if len(s) > 48 || strings.ContainsAny(s, "?~()+") && !strings.Contains(s, "+00") {
		return "", false
	}
	w := strings.Map(func(r rune) rune {
		switch {
		case unicode.Is(unicode.Cf, r): // no width, or the direction of writing
			return -1
		case unicode.IsSpace(r):
			return ' '
		}
		return r
	}, s)
	w = strings.TrimLeft(w, " [{<«\"“”„='@")
	w = strings.TrimRight(w, " ]}>»,;|_")
	if strings.HasSuffix(w, `"`) && strings.Count(w, `"`) == 1 && !strings.ContainsAny(w, "'’′") {
		w = w[:len(w)-1]
	}
	w = strings.Trim(w, "“”")
	if m := zeroBefore.FindStringSubmatch(w); m != nil {
		w = m[1]
	}
	w = oddColon.ReplaceAllString(w, "$1:$2")
	w = oddHours.ReplaceAllString(w, "$1:$2")
	if m := slashed.FindStringSubmatch(strings.TrimSpace(w)); m != nil {
		w = m[1] + ":" + m[2]
	}
	if m := tenthsBehind.FindStringSubmatch(w); m != nil {
		w = m[1] + "." + m[2]
	}
	if m := primes.FindStringSubmatch(w); m != nil {
		w = m[1] + ":" + m[2] + m[4] + m[5]
		if m[3] != "" {
			w += "." + m[3]
		}
	}
	return w, w != strings.TrimSpace(s) && plainClock.MatchString(w)
}
