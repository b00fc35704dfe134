package speed

import (
	"context"
	"testing"
)

// In a world without held-back efforts the defaults are wrong and tuning must
// find its way; in the usual world there is nothing to gain, and they stay.
func TestTuning(t *testing.T) {
	for _, c := range []struct {
		name  string
		world world
		form  float64 // at most this share of the untuned error
		tuned bool
	}{{"symmetric noise", gauss, .97, true}, {"usual", base, 1, false}} {
		d := club(c.world, 2)
		d.results = 24000
		in, tr := d.simulate()
		before := tr.judge(in, mustFit(t, in))
		h, report, err := Tune(context.Background(), in, Defaults(), 2)
		if err != nil {
			t.Fatal(err)
		}
		m, err := Fit(context.Background(), in, h, 2)
		if err != nil {
			t.Fatal(err)
		}
		after := tr.judge(in, m)
		t.Logf("%s: %+v\n  %+v\n  before %v\n  after  %v", c.name, report, h, before, after)
		if report.Tuned != c.tuned || c.tuned == (h == Defaults()) {
			t.Errorf("%s: tuned %v, score %.4f before, %.4f after", c.name, report.Tuned, report.Before, report.After)
		}
		if report.After < report.Before-.005 {
			t.Errorf("%s: what was chosen on half the runners lost %.4f on the others", c.name, report.Before-report.After)
		}
		if after.form > c.form*before.form || after.course > before.course+.1 {
			t.Errorf("%s: form %.2f, was %.2f; courses %.3f, were %.3f", c.name, after.form, before.form, after.course, before.course)
		}
		if c.world != gauss {
			continue
		}
		again, _, err := Tune(context.Background(), in, Defaults(), 1)
		if err != nil {
			t.Fatal(err)
		}
		if again != h {
			t.Errorf("%s: one thread tunes to %+v, two to %+v", c.name, again, h)
		}
	}
}

func TestSmallArchivesKeepTheirQuantities(t *testing.T) {
	in, _ := district{world: base, courses: 4, runners: 200, weeks: 40, results: 3000, seed: 1}.simulate()
	h, report, err := Tune(context.Background(), in, Defaults(), 1)
	if err != nil || report.Tuned || h != Defaults() {
		t.Errorf("%+v, %+v, %v", h, report, err)
	}
}
