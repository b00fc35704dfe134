package record

import "strings"

// timeAndRemark parts a cell that begins with a running time from the words behind it,
// "24:31 well done", "24:31pb", "24:31 (DNF)"; said is "" where there are none, and where
// another time stands among them that is not said to be a best or an earlier one, "24:31 PB 24:22".
func timeAndRemark(s string) (time, said string) {
	if len(s) < 6 || len(s) > 120 || s[0] < '0' || s[0] > '9' {
		return s, ""
	}
	i, marks := 0, 0
	for ; i < len(s) && (s[i] >= '0' && s[i] <= '9' || i+1 < len(s) && (s[i] == ':' || s[i] == '.' || s[i] == ',') && s[i+1] >= '0' && s[i+1] <= '9'); i++ {
		if s[i] == ':' || s[i] == '.' {
			marks++
		}
	}
	said = strings.Trim(s[i:], " \t\r\n\u00A0-–—,;:.!*()[]")
	if marks == 0 || i < 4 || said == "" || hasClock(said) && !ofBest(said) {
		return s, ""
	}
	if first := said[0]; first < '0' || first > '9' {
		if k := strings.IndexFunc(said, func(r rune) bool { return r == ' ' || r == '.' || r == '(' }); k >= 0 {
			if _, unit := unitWords[strings.ToLower(said[:k])]; unit {
				return s, "" // 24:31 min
			}
		} else if _, unit := unitWords[strings.ToLower(said)]; unit {
			return s, ""
		}
	}
	return s[:i], said
}

// ofBest says whether words begin with one for a runner's best or earlier time, and have one time.
func ofBest(said string) bool {
	first := strings.IndexFunc(said, func(r rune) bool { return r == ' ' || r == ':' || r == '=' || r == '\n' || r >= '0' && r <= '9' })
	return first > 0 && bestWords[string(fold(nil, said[:first]))] && clocksIn(said) == 1
}

// bestWords are such words. Common practice, no source.
var bestWords = wordSet(`pb|pr|sb|cb|best|personal|season's|seasons|course|prev|previous|previously|last|old|bestzeit|bz|bisher|rekord|rp|record|mp|mmp|mejor|marca|rpers|primato|miglior|pers|beste|pers.|zyciowka|osobak|enkka|ennatys|pers.rek`)

// hasClock says whether figures stand on both sides of a colon.
func hasClock(s string) bool { return clocksIn(s) > 0 }

// clocksIn counts the colons between figures.
func clocksIn(s string) (n int) {
	for i := 1; i+1 < len(s); i++ {
		if s[i] == ':' && s[i-1] >= '0' && s[i-1] <= '9' && s[i+1] >= '0' && s[i+1] <= '9' {
			n++
		}
	}
	return n
}

// lexTimed reads the time of such a cell and leaves the words out.
func lexTimed(s string, scratch *[]byte, c *clockCell) {
	time, _ := timeAndRemark(s)
	lexClock(time, scratch, c)
}

// doubtsTime says whether words behind a time speak of another stretch, another clock reading or
// of doubt: the time may not be that of the whole course. What else stands there, praise, a
// count of runs or where somebody comes from, leaves it as it is.
func doubtsTime(said string) bool {
	if strings.ContainsAny(said, "?+±~≈") {
		return true
	}
	words := strings.FieldsFunc(string(fold(nil, said)), func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	for i, w := range words {
		number := strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		unit := w[len(number):]
		if number == "" && i > 0 {
			number = words[i-1]
		}
		if doubtWords[w] || distanceUnits[unit] && allDigits([]byte(number)) && number != "" && number != "5" {
			return true
		}
	}
	return false
}

// distanceUnits behind a number speak of a part of the way, if it is not the usual distance.
var distanceUnits = wordSet("km|k|m|mile|miles|metres|meters")

// doubtWords are such words (common practice, no source).
var doubtWords = wordSet(`not|wrong|investigation|investigated|review|protest|protested|appeal|pending|dispute|contested|einspruch|reclamation|reclamacion|reclamo|bezwaar|incorrect|maybe|perhaps|possibly|probably|guess|guessed|unsure|uncertain|unconfirmed|unverified|unofficial|approx|roughly|check|query|disputed|lap|laps|loop|loops|short|shorter|cut|half|halfway|only|add|minus|plus|less|gap|behind|handicap|relay|leg|unsicher|falsch|vielleicht|geschatzt|prufen|runde|runden|nur|abgekurzt|faux|douteux|tour|tours|seulement|coupe|verifier|dudoso|quiza|vuelta|vueltas|solo|falso|dubbio|forse|giro|giri|fout|misschien|ronde|rondes|alleen|fel|kanske|varv|bara|moze|niepewny|okrazenie|tylko|asi|spatne|kolo|jen`)
