package pipeline

import (
	"fmt"

	"lapwing/pipeline/unit"
)

// runState is what somebody said about a run.
type runState struct {
	course int32 // index
	day    unit.Day
	runNo  int32 // 0 where no sheet of it is loaded
	state  string
	offM   int32 // metres that a short or long run was off, 0 not known
}

// runStates lists what was said about runs, the last word on each.
func (f *field) runStates(ds []Decision, book *courseBook) ([]runState, error) {
	var out []runState
	for _, d := range ds {
		if d.Kind != DecideRunState {
			continue
		}
		state, off, err := ParseRunState(d.Value)
		if err != nil {
			return nil, fmt.Errorf("decision %d: %w", d.ID, err)
		}
		for c := range f.courses {
			if f.courses[c].course != book.resolve(d.Course) {
				continue
			}
			runs := 0
			for _, r := range f.runs {
				if r.course == int32(c)+1 && r.day == d.Date && (d.Session == "" || d.Session == r.session) {
					out = append(out, runState{int32(c), d.Date, r.no, state, off})
					runs++
				}
			}
			if runs == 0 {
				out = append(out, runState{int32(c), d.Date, 0, state, off})
			}
		}
	}
	last := map[[3]int32]int{}
	for i, s := range out {
		last[[3]int32{s.course, int32(s.day), s.runNo}] = i
	}
	kept := out[:0]
	for i, s := range out {
		if last[[3]int32{s.course, int32(s.day), s.runNo}] == i {
			kept = append(kept, s)
		}
	}
	return kept, nil
}

// timesVoid says by run whether its times count for nothing: the run was not
// on the course as measured, or was not finished as planned.
func (f *field) timesVoid(states []runState) []bool {
	out := make([]bool, len(f.runs))
	for _, s := range states {
		switch s.state {
		case "misdirected", "short", "long", "other route", "abandoned", "times lost":
			if s.runNo > 0 {
				out[s.runNo-1] = true
			}
		}
	}
	return out
}
