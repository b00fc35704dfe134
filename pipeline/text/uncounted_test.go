package text

import "testing"

func TestDoubtedTime(t *testing.T) {
	for s, want := range map[string]bool{
		"time not confirmed": true, "time to be checked": true, "time may be wrong": true, "zeit unsicher": true, "temps a verifier": true, "time?": true, "check time": true,
		"did 4 km": true, "4k only": true, "ran 6 km": true, "ran off course": true, "erreur de parcours": true, "parcours raccourci": true,
		"ran with husband's barcode": true, "ran as kit larder": true, "ran as kit": true, "ran in kit's place": true, "ran friday": true, "ran on thursday": true,
		"time ok, checked": false, "time confirmed": false, "time checked": false, "ran as a bear": false, "ran as guide": false, "ran on tired legs": false, "ran in new shoes": false, "ran 5 km": false, "ran 10 km before": false, "fell at 3 km": false, "+ 2 km warm-up": false, "course record": false, "time wrong last week": false,
		"first time here": false, "lost barcode": false, "wrong shoes": false, "of course": false, "same time as last week": false, "5 km": false, "ran with carl": false, "": false,
	} {
		if got := DoubtedTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// Lines whose runner went another way, whose time nobody took or that stand for somebody else are doubted; what was
// so another time, or is only told, is not.
func TestAgainstTime(t *testing.T) {
	for s, want := range map[string]bool{
		"stopped injured": true, "half distance": true, "missed the turn": true, "got lost": true, "extra lap": true, "ran extra lap": true, "timing failed": true, "missed scan": true, "swapped with ann": true, "ran elsewhere": true,
		"stopped to tie lace": false, "half term": false, "lost barcode": false, "extra cake": false, "hand timed": false, "late start": false, "from phone": false,
	} {
		if got := AgainstTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}

// A best time is no estimate.
func TestBestTimeStands(t *testing.T) {
	for folded, want := range map[string]bool{"best time since 2019": false, "best time ever": false, "est time": true, "time est": true} {
		if got := AgainstTime(folded, 5); got != want {
			t.Errorf("%q: %v", folded, got)
		}
	}
}
