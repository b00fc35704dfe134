package who

import (
	"context"
	"testing"
	"time"

	"lapwing/pipeline/unit"
)

// attachWeeks links all rows before the last weeks, attaches week after week
// and scores the outcome beside that of linking everything at once.
func attachWeeks(t testing.TB, d truth, weeks int) (whole, attached score, took time.Duration, last *Attached) {
	t.Helper()
	r := link(t, d, Options{})
	whole = measure(r.Runner, d.who)
	end := unit.Day(0)
	for _, day := range d.rows.Day {
		end = max(end, day)
	}
	from := end - unit.Day(7*weeks) + 1
	var before []int32
	for i, day := range d.rows.Day {
		if day < from {
			before = append(before, int32(i))
		}
	}
	first, err := Link(context.Background(), d.rows.pick(before), d.names, Options{Threads: 2})
	if err != nil {
		t.Fatal(err)
	}
	k := first.Known()
	owner := make([]int32, d.rows.Len())
	for at, i := range before {
		owner[i] = first.Runner[at] + 1
	}
	next := int32(first.Runners) + 1
	for day := from; day <= end; day += 7 {
		var rows []int32
		for i := range owner {
			if owner[i] > 0 || d.rows.Day[i] < day+7 {
				rows = append(rows, int32(i))
			}
		}
		mine := make([]int32, len(rows))
		for at, i := range rows {
			mine[at] = owner[i]
		}
		began := time.Now()
		a, err := Attach(context.Background(), k, d.rows.pick(rows), d.names, mine, Options{Threads: 2})
		if err != nil {
			t.Fatal(err)
		}
		took += time.Since(began)
		fresh := map[int32]int32{}
		for at, i := range rows {
			now := a.Owner[a.Runner[at]]
			if now == 0 {
				if now = fresh[a.Runner[at]]; now == 0 {
					now = next
					fresh[a.Runner[at]] = now
					next++
				}
			}
			if owner[i] > 0 && owner[i] != now {
				t.Fatalf("a known runner's row went from %d to %d", owner[i], now)
			}
			owner[i] = now
		}
		last = a
	}
	return whole, measure(owner, d.who), took, last
}

// pick takes some of the rows, with the labels they had.
func (r *Rows) pick(rows []int32) *Rows {
	out := &Rows{Numbers: r.Numbers}
	for _, i := range rows {
		out.Key = append(out.Key, r.Key[i])
		out.Name = append(out.Name, r.Name[i])
		out.Number = append(out.Number, r.Number[i])
		out.Sex = append(out.Sex, r.Sex[i])
		out.Club = append(out.Club, r.Club[i])
		out.Course = append(out.Course, r.Course[i])
		out.Run = append(out.Run, r.Run[i])
		out.Series = append(out.Series, r.Series[i])
		out.Day = append(out.Day, r.Day[i])
		out.BirthLo, out.BirthHi = append(out.BirthLo, r.BirthLo[i]), append(out.BirthHi, r.BirthHi[i])
		out.Basis = append(out.Basis, r.Basis[i])
		out.LogTime = append(out.LogTime, r.LogTime[i])
	}
	return out
}

// Weeks attached one after another are hardly worse than linking everything.
func TestAttachAgainstLinkingEverything(t *testing.T) {
	districts := []struct {
		what string
		d    district
	}{
		{"hard, no numbers", district{people: 2500, courses: 12, weeks: 60, messy: .5, namesakes: .01, wrong: .01, seed: 61}},
		{"ordinary, no numbers", district{people: 2500, courses: 12, weeks: 60, messy: .5, seed: 62}},
		{"some numbers", district{people: 2500, courses: 12, weeks: 60, numbers: .5, messy: .5, seed: 63}},
		{"numbers", district{people: 2500, courses: 12, weeks: 60, numbers: 1, messy: .5, seed: 64}},
	}
	lostP, lostR := 0., 0.
	for _, c := range districts {
		whole, attached, took, _ := attachWeeks(t, c.d.make(), 2)
		t.Logf("%s: everything P %.5f R %.5f, last two weeks attached P %.5f R %.5f (%.0f ms a week)", c.what,
			whole.precision, whole.recall, attached.precision, attached.recall, float64(took.Milliseconds())/2)
		lostP += (whole.precision - attached.precision) / float64(len(districts))
		lostR += (whole.recall - attached.recall) / float64(len(districts))
		// One regular of two runners who are joined a week later is .001.
		if attached.precision < whole.precision-.0015 || attached.recall < whole.recall-.0015 {
			t.Errorf("%s: attaching loses more than .0015", c.what)
		}
	}
	if lostP > .0005 || lostR > .0005 {
		t.Errorf("attaching loses %.5f of precision and %.5f of recall", lostP, lostR)
	}
}

// With nothing new to learn from, whoever is known stays; the order of rows
// and the number of threads do not matter.
func TestAttachDoesNotDependOnOrder(t *testing.T) {
	d := district{people: 400, courses: 4, weeks: 40, messy: .5, namesakes: .01, wrong: .01, seed: 65}.make()
	_, one, _, _ := attachWeeks(t, d, 3)
	_, two, _, _ := attachWeeks(t, shuffled(d, 9), 3)
	if one != two {
		t.Errorf("in order %+v, shuffled %+v", one, two)
	}
}
