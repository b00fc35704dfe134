package text

import "testing"

// A remark sets a line aside only where it says nothing else.
func TestSetAside(t *testing.T) {
	for _, s := range []string{"query", "to be checked", "please check", "time queried", "name unclear", "not confirmed", "nicht sicher", "zu prufen", "a verifier", "entered by mistake", "see place 2", "see below", "half a lap", "double entry", "see notes", "same person as 5",
		"provisional", "subject to appeal", "est. time", "clock stopped, est", "time?", "?", "test entry", "removed by rd", "on scooter", "30 s penalty", "peut-etre", "wrong, see below"} {
		if !SetAside(s) {
			t.Errorf("%q sets nothing aside", s)
		}
	}
	for _, s := range []string{"", "ran last lap alone", "pb", "checked", "time confirmed", "correct time", "no watch", "test of new shoes", "ran with tom", "back after dnf last week", "paced by tom", "negative split", "first run", "late claim", "24:31 12:10 lap", "not dnf this week!", "pb?", "same time", "half term visitor", "see 3/5", "check spelling", "repeat", "half", "handicap", "name spelt?", "thanks to the timers"} {
		if SetAside(s) {
			t.Errorf("%q sets a line aside", s)
		}
	}
}
