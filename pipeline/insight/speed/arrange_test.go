package speed

import (
	"cmp"
	"fmt"
	"slices"
)

// arrange builds an Input from results in any order: runner[i] (from 0, none
// left out) finished run[i] in logTime[i]. It also gives, for every result of
// the Input, its place in the columns that came in.
func arrange(runner, run []int32, logTime []float32, runs []RunInfo, courses []CourseInfo) (*Input, []int32, error) {
	n := len(runner)
	if len(run) != n || len(logTime) != n {
		return nil, nil, fmt.Errorf("speed: columns of %d, %d and %d results", n, len(run), len(logTime))
	}
	order := make([]int32, n)
	for i := range order {
		order[i] = int32(i)
		if e := run[i]; e < 0 || int(e) >= len(runs) {
			return nil, nil, fmt.Errorf("speed: result %d is in run %d of %d", i, e, len(runs))
		}
		if runner[i] < 0 {
			return nil, nil, fmt.Errorf("speed: result %d has runner %d", i, runner[i])
		}
	}
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(runner[a], runner[b]),
			cmp.Compare(runs[run[a]].Day, runs[run[b]].Day),
			cmp.Compare(run[a], run[b]), cmp.Compare(a, b))
	})
	in := &Input{Runs: runs, Courses: courses, Run: make([]int32, n), LogTime: make([]float32, n)}
	for i, k := range order {
		if len(in.Offsets) > int(runner[k])+1 || len(in.Offsets) < int(runner[k]) {
			return nil, nil, fmt.Errorf("speed: runner %d follows %d", runner[k], len(in.Offsets)-1)
		}
		if len(in.Offsets) == int(runner[k]) {
			in.Offsets = append(in.Offsets, int32(i))
		}
		in.Run[i], in.LogTime[i] = run[k], logTime[k]
	}
	in.Offsets = append(in.Offsets, int32(n))
	return in, order, in.Check()
}
