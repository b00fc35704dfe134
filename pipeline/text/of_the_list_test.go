package text

import "testing"

// A line that says that times have still to be changed, in ten languages, and none that says that they were, or is of
// the weather or of another week.
func TestTimesToChange(t *testing.T) {
	for s, want := range map[string]bool{
		"all times are 30 seconds too fast": true, "watch was started 15 s late times not yet adjusted": true, "stopwatch started 15 seconds after the gun": true, "add 10s": true, "please add 10 seconds to each time": true,
		"1 minute to come off all times": true, "times need adjusting": true, "the timer was 10 seconds behind": true, "add 2:00 to times after position 8": true, "late start on the watch +10s to everyone": true,
		"die uhr wurde 10 s zu spat gestartet bitte addieren": true, "von allen zeiten sind 20 sekunden abzuziehen": true, "enlever 20 secondes a tous les temps": true, "bij alle tijden 10 seconden optellen": true,
		"restar 10 segundos a todos": true, "aggiungere 10 secondi a tutti i tempi": true, "dra av 10 sekunder fran alla tider": true, "traek 10 sekunder fra alle tider": true, "do wszystkich czasow dodac 10 sekund": true, "lisaa kaikkiin aikoihin 10 sekuntia": true,
		"watch was started 10 s late times below are already adjusted": false, "12 s added to all times for the late watch start": false, "times adjusted for late start": false, "everyone about 30 s slower than last week": false,
		"run started 10 minutes late": false, "please arrive 10 minutes early": false, "please add your name to the volunteer list": false, "course 300 m short times not comparable": false, "times to nearest second": false, "two watches no difference": false, "40 ans et plus": false, "40 years and over": false, "all ages 40 plus": false,
	} {
		if got := TimesToChange(s); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

func TestNotAsListed(t *testing.T) {
	for s, want := range map[string]bool{
		"should be swapped": true, "please swap and": true, "the other way round": true, "names are one out": true, "funnel mix up between and": true, "et a inverser": true, "byt plats pa": true, "should not be there": true, "times and names dont match": true,
		"won the spot prize": false, "well done and for a great sprint finish": false, "cake swap": false, "order of new vests placed": false, "": false,
	} {
		if got := NotAsListed(s); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

func TestListInDoubt(t *testing.T) {
	for s, want := range map[string]bool{
		"we had 14 names but 15 times": true, "one more time than names not sure where": true, "last five times are estimates": true, "one name missing names below are one too high": true, "no times before 20 min timer failed": true,
		"if your time is wrong tell us": false, "please check names and tell us of mistakes": false, "lost tokens 12 44": false, "times by hand": false, "fast times today": false, "14 finishers 3 first timers": false,
	} {
		if got := ListInDoubt(s); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

func TestRightTime(t *testing.T) {
	for s, want := range map[string]bool{
		"should be 24:15": true, "time should be 24:15": true, "actual time 24:15": true, "richtige zeit 24:15": true,
		"was 24:15": false, "corrected from 24:15": false, "real best 24:15": false, "last week 24:15": false, "should be faster": false, "actually enjoyed it": false,
	} {
		if got := RightTime(s); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}
