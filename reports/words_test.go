package reports

import "testing"

func TestWords(t *testing.T) {
	for n, want := range map[int32]string{1: "1st", 2: "2nd", 3: "3rd", 4: "4th", 11: "11th", 12: "12th", 13: "13th", 21: "21st", 50: "50th", 101: "101st", 111: "111th", 112: "112th", 1000: "1000th"} {
		if got := ordinal(n); got != want {
			t.Errorf("ordinal(%d) = %s, want %s", n, got, want)
		}
	}
	for _, c := range []struct {
		n    int
		want string
	}{{0, "no people"}, {1, "one person"}, {2, "two people"}, {10, "ten people"}, {11, "11 people"}} {
		if got := spelt(c.n, "person", "people"); got != c.want {
			t.Errorf("spelt(%d) = %s, want %s", c.n, got, c.want)
		}
	}
}

func TestConditionsSentence(t *testing.T) {
	at := func(c, lo, hi float64) *weekly {
		d := &weekly{run: runRow{state: "held", condition: &c, condLow: &lo, condHi: &hi}}
		for range leastRuns {
			d.runs = append(d.runs, d.run)
		}
		return d
	}
	few := at(8, -2, 18)
	few.runs = few.runs[1:]
	for _, c := range []struct {
		d    *weekly
		want string
	}{
		{at(41, 33, 49), "It was a slower day than usual here: by about 40 s for somebody who takes 25:00 (likely 35 to 50 s)."},
		{at(-22, -30, -14), "It was a faster day than usual here: by about 20 s for somebody who takes 25:00 (likely 15 to 30 s)."},
		{at(8, -2, 18), "Times came out much as usual here."},
		{few, ""},
		{at(8, -60, 76), ""},
		{at(-2, -50, 30), ""},
		{at(3, 1, 5), "Times came out much as usual here."},
		{&weekly{run: runRow{state: "held"}}, ""},
		{&weekly{run: runRow{state: "misdirected", finishers: 9}}, "This run is recorded as: misdirected. Its times are not compared with other weeks."},
	} {
		if got := c.d.conditions(); got != c.want {
			t.Errorf("got  %q\nwant %q", got, c.want)
		}
	}
}
