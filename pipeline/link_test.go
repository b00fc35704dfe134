package pipeline

import (
	"testing"

	"lapwing/pipeline/record"
)

// A line that is doubtful because its name stands twice tells a pace; a time that
// can't be, a pacer's or none does not.
func TestTellsPace(t *testing.T) {
	f := &field{runs: []runInfo{{distanceM: 5000}}}
	for _, c := range []struct {
		status record.Status
		as     record.TakingPart
		ms     int32
		want   bool
	}{
		{record.OK, record.Runner, 1_500_000, true},
		{record.Doubtful, record.Runner, 1_500_000, true},
		{record.Doubtful, record.Runner, 700_000, false},
		{record.Doubtful, record.Pacer, 1_500_000, false},
		{record.Untimed, record.Runner, 0, false},
		{record.Repeat, record.Runner, 1_500_000, false},
	} {
		f.status, f.takingPart, f.timeMS = []uint8{uint8(c.status)}, []uint8{uint8(c.as)}, []int32{c.ms}
		f.run, f.sex = []int32{1}, []uint8{uint8(record.M)}
		if got := f.tellsPace(0); got != c.want {
			t.Errorf("%v as %v in %d ms: %v, want %v", c.status, c.as, c.ms, got, c.want)
		}
	}
}
