package sheet

import "testing"

func TestNumberOf(t *testing.T) {
	for name, want := range map[string]Numbered{
		"Run 212.csv":                           {"run", 212, false},
		"in/Lark Lake Course 194 corrected.csv": {"course", 194, false},
		"#212.xlsx":                             {"#", 212, false},
		"results (3).csv":                       {},
		"Run 212 (1).csv":                       {"run", 212, false},
		"Copy of Week 07 v2.csv":                {"week", 7, false},
		"Run 212 race 2.csv":                    {"run", 212, false},
		"Run 212 part 1.csv":                    {"run", 212, false},
		"Results 2024.csv":                      {},
		"alder-bank_2026-01-03.csv":             {},
		"2026-W01.csv":                          {"week", 2922, true}, // 29 December 2025, 20451 days after 1 January 1970
		"2026-W54.csv":                          {},
		"Run 5 of 12.csv":                       {},
	} {
		got, ok := NumberOf(name)
		if got != want || ok != (want != Numbered{}) {
			t.Errorf("%s: %+v, %v; want %+v", name, got, ok, want)
		}
	}
}
