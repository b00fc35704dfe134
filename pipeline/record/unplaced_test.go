package record

import "testing"

// What stands in the place of a place, or strikes a name or a time through, speaks against the time.
func TestUnplacedAndStruck(t *testing.T) {
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	for _, k := range []struct {
		place, name, time string
		want              Status
	}{
		{"test", "Al Roe", "19:10", Doubtful}, {"virtual", "Al Roe", "19:10", Doubtful}, {"NC", "Al Roe", "19:10", Doubtful}, {"DNF", "Al Roe", "19:10", DNF}, {"excl", "Al Roe", "19:10", DQ},
		{"2", "A\u0336l\u0336 R\u0336o\u0336e\u0336", "19:10", Doubtful}, {"2", "~Albert Roe~", "19:10", Doubtful}, {"2", "Al Roe", "1\u03369\u0336:\u03361\u03360\u0336", Doubtful},
		{"2", "Al Roe", "19:10", OK}, {"", "Al Roe", "19:10", OK}, {"2", "Mu\u0301ller Roe", "19:10", OK},
	} {
		lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
			yield([]string{"1", "Jo Lee", "18:20"})
			yield([]string{k.place, k.name, k.time})
			yield([]string{"3", "Cy Dee", "19:15"})
		})
		if lines[1].Status != k.want {
			t.Errorf("%q %q %q: %v, want %v", k.place, k.name, k.time, lines[1].Status, k.want)
		}
	}
}
