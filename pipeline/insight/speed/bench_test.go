package speed

import (
	"context"
	"testing"
)

// The cost budgets: a million results in 4 s on one thread, ten million in 20 s
// on two. Peak memory is read from outside, e.g. with /usr/bin/time.
func BenchmarkFit(b *testing.B) {
	for _, c := range []struct {
		name    string
		d       district
		threads int
	}{
		{"club40k", club(base, 1), 1},
		{"region1M", district{world: base, courses: 150, runners: 40000, weeks: 200, results: 960000, seed: 1}, 1},
		{"country10M", district{world: base, courses: 1700, runners: 1110000, weeks: 56, results: 11200000, seed: 1}, 2},
	} {
		b.Run(c.name, func(b *testing.B) {
			in, tr := c.d.simulate()
			b.ResetTimer()
			var m *Model
			for b.Loop() {
				var err error
				if m, err = Fit(context.Background(), in, Defaults(), c.threads); err != nil {
					b.Fatal(err)
				}
			}
			b.StopTimer()
			b.ReportMetric(float64(len(in.Run)), "results")
			b.ReportMetric(float64(in.Runners()), "runners")
			b.ReportMetric(float64(len(in.Runs)), "runs")
			b.ReportMetric(float64(m.Trace.Rounds), "rounds")
			b.ReportMetric(float64(m.Trace.Steps), "steps")
			b.Log(tr.judge(in, m))
		})
	}
}
