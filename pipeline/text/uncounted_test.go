package text

import "testing"

func TestDoubtedTime(t *testing.T) {
	for s, want := range map[string]bool{
		"time not confirmed": true, "time to be checked": true, "time may be wrong": true, "zeit unsicher": true, "temps a verifier": true, "time?": true, "check time": true,
		"did 4 km": true, "4k only": true, "ran 6 km": true, "ran off course": true, "erreur de parcours": true, "parcours raccourci": true,
		"ran with husband's barcode": true, "ran as kit larder": true,
		"time ok, checked": false, "time confirmed": false, "time checked": false, "ran as a bear": false, "ran 5 km": false, "ran 10 km before": false, "fell at 3 km": false, "+ 2 km warm-up": false, "course record": false, "time wrong last week": false,
		"first time here": false, "lost barcode": false, "wrong shoes": false, "of course": false, "same time as last week": false, "5 km": false, "ran with carl": false, "": false,
	} {
		if got := DoubtedTime(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}
