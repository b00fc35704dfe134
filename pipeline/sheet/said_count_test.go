package sheet

import "testing"

func TestCountSaid(t *testing.T) {
	for line, want := range map[string]int{
		"74 finishers":                      74,
		"Finishers: 74":                     74,
		"Total finishers | 74":              74,
		"No. of finishers = 74":             74,
		"28 ran. Thanks to Mo.":             28,
		"16 people finished the 5 km today": 16,
		"Cold, wet, 38 ran":                 38,
		"Teilnehmer: 41":                    41,
		"41 Läufer":                         41,
		"Partiti 18, arrivati 16, ritirati 2 (pett. 412, 418)": 16,
		"74 finishers (45 men)":                                0, // says more
		"Record: 212 finishers":                                0,
		"212 finishers last week":                              0,
		"29 women finishers":                                   0,
		"First 10 finishers":                                   0,
		"over 100 runners":                                     0,
		"40 runners, 41 finishers":                             0,
		"Finishers 3 May 2026":                                 0,
		"5 km":                                                 0,
		"2026 runners":                                         2026,
		"Rob finished 3rd":                                     0,
		"":                                                     0,
	} {
		if n, _ := countSaid(line); n != want {
			t.Errorf("%q says %d finishers, want %d", line, n, want)
		}
	}
}
