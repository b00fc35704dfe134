package text

import "testing"

func TestMayBear(t *testing.T) {
	for s, want := range map[string]bool{
		"no! was 25:40 on my watch": true, "wrong - should be 21:47": true, "ran the 2k only": true, "joined at the 1 km mark": true, "gps says 4.6 km": true, "walked 2 miles": true,
		"started 3 minutes after the others": true, "ran with tom hexton's number": true, "this was somebody else": true, "das war jemand anders": true, "time from her own watch": true,
		"rode the last km on a scooter": true, "not sure of the name, check the bib": true, "position unclear, two came together": true,
		"ran on friday with the helpers": true, "ran it at home": true, "forgot his watch at home": false,
		"": false, "first 5k": false, "pb by 12 s": false, "pb, was 21:40": false, "last week 21:40": false, "old best 21:40": false, "target 25:00": false, "arrived at 8:45": false, "dentist 9:30": false,
		"wrong shoes for mud": false, "short of breath": false, "cut his knee": false, "fell at 3 km": false, "+ 2 km warm-up": false, "ran 10 km before": false, "half marathon next sunday": false, "ran home after, 3 miles": false,
		"late start because of parking, but time is right": false, "thanks to the marshals": false, "stopped to help a fallen runner": false, "barcode didn't scan": false, "first time here": false, "test of new shoes": false, "2 km from home": false, "halfway 12:40": false,
		"walked the dog": false, "in memory of tom": false, "100th run next week": false,
	} {
		if got := MayBear(s, 5); got != want {
			t.Errorf("%q: %v, want %v", s, got, want)
		}
	}
}
