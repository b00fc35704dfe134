package who

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestIDsSurviveARebuild(t *testing.T) {
	d := district{people: 500, courses: 4, weeks: 60, numbers: .4, messy: 1, seed: 12}.make()
	r := link(t, d, Options{})
	first := AssignIDs(1, nil, d.rows.Key, r.Runner, r.Runners)
	for runner, id := range first.Of {
		if id != int32(runner)+1 {
			t.Fatalf("runner %d has id %d in an empty archive", runner, id)
		}
	}
	again := AssignIDs(1, first.Added, d.rows.Key, r.Runner, r.Runners)
	if !slices.Equal(again.Of, first.Of) || len(again.Added) != 0 || len(again.Aliases) != 0 {
		t.Errorf("a rebuild changes ids: %d added, %d aliases", len(again.Added), len(again.Aliases))
	}
	s := shuffled(d, 5)
	q := link(t, s, Options{})
	third := AssignIDs(1, first.Added, s.rows.Key, q.Runner, q.Runners)
	want := map[int64]int32{}
	for i, k := range d.rows.Key {
		want[k] = first.Of[r.Runner[i]]
	}
	for i, k := range s.rows.Key {
		if got := third.Of[q.Runner[i]]; got != want[k] {
			t.Fatalf("row %d: id %d after a shuffle, was %d", k, got, want[k])
		}
	}
}

// Sheets arrive week by week: yesterday's runner keeps the id.
func TestIDsSurviveNewSheets(t *testing.T) {
	d := district{people: 500, courses: 4, weeks: 60, numbers: .4, messy: .5, seed: 13}.make()
	upTo := func(n int) truth {
		r := *d.rows
		r.Key, r.Name, r.Number, r.Sex = r.Key[:n], r.Name[:n], r.Number[:n], r.Sex[:n]
		r.Club, r.Course, r.Run, r.Series = r.Club[:n], r.Course[:n], r.Run[:n], r.Series[:n]
		r.Day, r.BirthLo, r.BirthHi = r.Day[:n], r.BirthLo[:n], r.BirthHi[:n]
		r.Basis, r.LogTime = r.Basis[:n], r.LogTime[:n]
		return truth{rows: &r, names: d.names, who: d.who[:n]}
	}
	var anchors []Anchor
	before := map[int64]int32{}
	changed, total := 0, 0
	n := d.rows.Len()
	for _, at := range []int{n / 2, n/2 + 40, n/2 + 80, n * 3 / 4, n} {
		p := upTo(at)
		r := link(t, p, Options{})
		ids := AssignIDs(1, anchors, p.rows.Key, r.Runner, r.Runners)
		anchors = append(anchors, ids.Added...)
		alias := map[int32]int32{}
		for _, a := range ids.Aliases {
			alias[a.Old] = a.ID
		}
		for i, k := range p.rows.Key {
			id := ids.Of[r.Runner[i]]
			if old, ok := before[k]; ok {
				total++
				if old != id && alias[old] != id {
					changed++
				}
			}
			before[k] = id
		}
	}
	// Lines that moved to another runner have another id; nobody else has.
	if float64(changed) > .01*float64(total) {
		t.Errorf("%d of %d lines changed id without an alias", changed, total)
	}
}

func TestIDsOfJoinsAndParts(t *testing.T) {
	keys := make([]int64, 30)
	for i := range keys {
		keys[i] = int64(i * 7)
	}
	// Two runners: rows 0-9 and 10-29.
	two := make([]int32, 30)
	for i := 10; i < 30; i++ {
		two[i] = 1
	}
	a := AssignIDs(1, nil, keys, two, 2)
	anchors := a.Added
	one := make([]int32, 30)
	b := AssignIDs(1, anchors, keys, one, 1)
	if b.Of[0] != 1 || !slices.Equal(b.Aliases, []Alias{{2, 1}}) {
		t.Errorf("a join keeps the older id: %+v", b)
	}
	anchors = append(anchors, b.Added...)
	c := AssignIDs(1, anchors, keys, two, 2)
	if c.Of[0] != 1 || c.Of[1] != 2 || len(c.Aliases) != 0 {
		t.Errorf("undoing the join brings both back: %+v", c)
	}
	// A stray row joins the other runner: no id moves.
	stray := slices.Clone(two)
	stray[9] = 1
	e := AssignIDs(1, anchors, keys, stray, 2)
	if e.Of[0] != 1 || e.Of[1] != 2 {
		t.Errorf("a stray row moved an id: %+v", e.Of)
	}
	// A part: the larger side keeps the id.
	three := slices.Clone(two)
	for i := 24; i < 30; i++ {
		three[i] = 2
	}
	f := AssignIDs(1, a.Added, keys, three, 3)
	if f.Of[0] != 1 || f.Of[1] != 2 || f.Of[2] != 3 {
		t.Errorf("a part leaves the id with the larger side: %+v", f.Of)
	}
	// The sheet with half of a runner's rows is withdrawn.
	rng := rand.New(rand.NewPCG(1, 1))
	for range 50 {
		lost := map[int]bool{}
		for len(lost) < 10 {
			lost[10+rng.IntN(20)] = true
		}
		var ks []int64
		var rs []int32
		for i := range keys {
			if !lost[i] {
				ks, rs = append(ks, keys[i]), append(rs, two[i])
			}
		}
		if g := AssignIDs(1, a.Added, ks, rs, 2); g.Of[1] != 2 && len(g.Added) > 0 {
			missing := 0
			for _, x := range a.Added {
				if x.ID == 2 && lost[int(x.Key/7)] {
					missing++
				}
			}
			if missing < 5 {
				t.Fatalf("id lost with %d of 5 anchors gone", missing)
			}
		}
	}
}

// Two runners of two rows each who are exchanged in one run keep their ids,
// and have them again when it is undone.
func TestIDsOfExchangedRows(t *testing.T) {
	keys := []int64{10, 11, 20, 21} // two runs: a, b; a, b
	before := AssignIDs(1, nil, keys, []int32{0, 1, 0, 1}, 2)
	if before.Of[0] != 1 || before.Of[1] != 2 {
		t.Fatalf("ids %v", before.Of)
	}
	anchors := before.Added
	after := AssignIDs(1, anchors, keys, []int32{0, 1, 1, 0}, 2)
	if after.Of[0] != 1 || after.Of[1] != 2 || len(after.Aliases) != 0 {
		t.Errorf("exchanged: ids %v, aliases %v", after.Of, after.Aliases)
	}
	anchors = append(anchors, after.Added...)
	if back := AssignIDs(1, anchors, keys, []int32{0, 1, 0, 1}, 2); back.Of[0] != 1 || back.Of[1] != 2 || len(back.Aliases) != 0 {
		t.Errorf("undone: ids %v, aliases %v", back.Of, back.Aliases)
	}
}
