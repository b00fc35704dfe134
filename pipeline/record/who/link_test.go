package who

import (
	"context"
	"testing"
	"time"
)

func link(t testing.TB, d truth, o Options) *Result {
	t.Helper()
	r, err := Link(context.Background(), d.rows, d.names, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The targets are the project's own; the districts are made up, see
// district_test.go.
func TestDistricts(t *testing.T) {
	for _, c := range []struct {
		name              string
		d                 district
		precision, recall float64
		large             bool
	}{
		{"club, numbers on two sheets in three", district{people: 2500, courses: 6, weeks: 104, numbers: .67, messy: .5, seed: 1}, .9998, .999, false},
		{"club, no numbers", district{people: 2500, courses: 6, weeks: 104, messy: .5, seed: 2}, .9985, .99, false},
		{"club, namesakes next door and wrong ages", district{people: 2500, courses: 6, weeks: 104, numbers: .5, messy: .5, namesakes: .02, wrong: .01, seed: 3}, .995, .98, false},
		{"club, the same without numbers", district{people: 2500, courses: 6, weeks: 104, messy: .5, namesakes: .02, wrong: .01, seed: 4}, .995, .98, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := c.d.make()
			start := time.Now()
			r := link(t, d, Options{})
			took := time.Since(start)
			s := measure(r.Runner, d.who)
			t.Logf("%d rows, %d runners for %d people, %d signatures, %d pairs: %.2f s", d.rows.Len(), r.Runners, distinct(d.who), r.Counts.Signatures, r.Counts.Pairs, took.Seconds())
			t.Logf("pairwise %.5f / %.5f, B-cubed %.5f / %.5f, review of 1 %%: %.2f", s.precision, s.recall, s.bPrecision, s.bRecall,
				covered(r, d.who, r.Runners/100))
			if s.precision < c.precision || s.recall < c.recall {
				t.Errorf("precision %.5f, recall %.5f; want %.4f, %.4f", s.precision, s.recall, c.precision, c.recall)
			}
		})
	}
}

func distinct(x []int32) int {
	m := map[int32]bool{}
	for _, v := range x {
		m[v] = true
	}
	return len(m)
}
