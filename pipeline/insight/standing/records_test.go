package standing

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"lapwing/pipeline/unit"
)

func try(day unit.Day, runner, timeS int32) Attempt {
	return Attempt{Category: 1, Day: day, Runner: runner, TimeS: timeS, Row: int32(day)*10 + runner}
}

// told prints records as "runner time", with = for equalled, * for standing,
// and who held before.
func told(records []RecordTime) string {
	s := ""
	for _, r := range records {
		s += fmt.Sprintf("%d %d", r.Attempt.Runner, r.Attempt.TimeS)
		if r.Equalled {
			s += "="
		}
		if r.Standing {
			s += "*"
		}
		switch {
		case r.First:
			s += " first"
		default:
			s += fmt.Sprintf(" before %d %v", r.PreviousS, r.Previous)
		}
		s += "; "
	}
	return s
}

func TestRecords(t *testing.T) {
	held := try(0, 9, 1100)
	held.Opening = true
	void := try(20, 5, 1000)
	void.Decision = Void
	other := try(15, 4, 900)
	other.Category = 2
	for _, c := range []struct {
		what     string
		attempts []Attempt
		want     string
	}{
		{"18:20 held, 18:20 run", []Attempt{held, try(10, 1, 1100)}, "9 1100* first; 1 1100=* before 1100 [9]; "},
		{"broken, then equalled", []Attempt{try(10, 1, 1100), try(11, 2, 1101), try(12, 2, 1090), try(13, 1, 1090)},
			"1 1100 first; 2 1090* before 1100 [1]; 1 1090=* before 1090 [2]; "},
		{"a joint record broken", []Attempt{try(10, 1, 1100), try(11, 2, 1100), try(12, 3, 1099)},
			"1 1100 first; 2 1100= before 1100 [1]; 3 1099* before 1100 [1 2]; "},
		{"twice the same runner", []Attempt{try(10, 1, 1100), try(11, 1, 1100)}, "1 1100* first; "},
		{"one day", []Attempt{try(10, 1, 1100), try(11, 1, 1095), try(11, 2, 1090), try(11, 3, 1090)},
			"1 1100 first; 2 1090* before 1100 [1]; 3 1090=* before 1090 [2]; "},
		{"void", []Attempt{try(10, 1, 1100), void, try(30, 2, 1090)}, "1 1100 first; 2 1090* before 1100 [1]; "},
		{"categories", []Attempt{other, try(10, 1, 1100)}, "1 1100* first; 4 900* first; "},
		{"no time", []Attempt{try(10, 1, 0)}, ""},
	} {
		for range 8 {
			if got := told(Records(c.attempts)); got != c.want {
				t.Fatalf("%s: %s, want %s", c.what, got, c.want)
			}
			rand.New(rand.NewPCG(2, 2)).Shuffle(len(c.attempts), func(i, j int) {
				c.attempts[i], c.attempts[j] = c.attempts[j], c.attempts[i]
			})
		}
	}
}
