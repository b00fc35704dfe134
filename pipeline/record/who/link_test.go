package who

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
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
// district_test.go. The seeds were not used while weights were set.
func TestDistricts(t *testing.T) {
	club := district{people: 2500, courses: 6, weeks: 104, messy: .5}
	region := district{people: 40000, courses: 60, weeks: 156, messy: .5}
	with := func(d district, seed uint64, change func(*district)) district {
		d.seed = seed
		change(&d)
		return d
	}
	numbers := func(d *district) { d.numbers = 1 }
	none := func(*district) {}
	hard := func(d *district) { d.namesakes, d.wrong = .02, .01 }
	hardHalf := func(d *district) { d.namesakes, d.wrong, d.numbers = .02, .01, .5 }
	for _, c := range []struct {
		name                      string
		d                         district
		precision, recall, review float64
	}{
		{"club with numbers", with(club, 101, numbers), .9998, .999, 0},
		{"club without numbers", with(club, 102, none), .9985, .99, .8},
		{"hard club, numbers on half of the sheets", with(club, 103, hardHalf), .995, .98, .7},
		{"hard club without numbers", with(club, 104, hard), .995, .98, .85},
		{"region with numbers", with(region, 105, numbers), .9998, .999, .8},
		{"region without numbers", with(region, 106, none), .9985, .99, .8},
		{"hard region without numbers", with(region, 107, hard), .995, .98, .65},
	} {
		t.Run(c.name, func(t *testing.T) {
			if testing.Short() && c.d.people > 10000 {
				t.Skip("a region takes half a minute: run without -short")
			}
			d := c.d.make()
			start := time.Now()
			r := link(t, d, Options{})
			took := time.Since(start)
			s := measure(r.Runner, d.who)
			review := covered(r, d.who, r.Runners/100)
			t.Logf("%d rows, %d runners for %d people, %d signatures, %d pairs, %.2f s", d.rows.Len(), r.Runners, distinct(d.who), r.Counts.Signatures, r.Counts.Pairs, took.Seconds())
			t.Logf("pairwise %.5f / %.5f, B-cubed %.5f / %.5f, a review list of 1 %% settles %.2f of what is missed, its pairs alone %.2f, and takes %.2f of what is wrong apart",
				s.precision, s.recall, s.bPrecision, s.bRecall, review, coveredByPairs(r, d.who, r.Runners/100), takenApart(r, d.who, r.Runners/100))
			if s.precision < c.precision || s.recall < c.recall || review < c.review {
				t.Errorf("precision %.5f, recall %.5f, review %.2f; want at least %.4f, %.4f, %.2f", s.precision, s.recall, review, c.precision, c.recall, c.review)
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

// shuffled is the same district with its rows, names and labels in another
// order.
func shuffled(d truth, seed uint64) truth {
	rng := rand.New(rand.NewPCG(seed, 1))
	n := d.rows.Len()
	perm := rng.Perm(n)
	relabel := func(col []int32, keepZero bool) []int32 {
		top := int32(0)
		for _, v := range col {
			top = max(top, v)
		}
		p := rng.Perm(int(top) + 1)
		if keepZero {
			for i, v := range p {
				if v == 0 {
					p[i], p[0] = p[0], 0
				}
			}
		}
		out := make([]int32, n)
		for i, from := range perm {
			out[i] = int32(p[col[from]])
		}
		return out
	}
	take := func(col []int32) []int32 {
		out := make([]int32, n)
		for i, from := range perm {
			out[i] = col[from]
		}
		return out
	}
	s := truth{rows: &Rows{Number: take(d.rows.Number), Numbers: d.rows.Numbers,
		Club: relabel(d.rows.Club, true), Course: relabel(d.rows.Course, false),
		Run: relabel(d.rows.Run, false), Series: relabel(d.rows.Series, false)}}
	np := rng.Perm(len(d.names))
	s.names = make([]name.Name, len(np))
	for from, to := range np {
		s.names[to] = d.names[from]
	}
	for _, from := range perm {
		s.rows.Key = append(s.rows.Key, d.rows.Key[from])
		s.rows.Name = append(s.rows.Name, int32(np[d.rows.Name[from]]))
		s.rows.Sex = append(s.rows.Sex, d.rows.Sex[from])
		s.rows.Day = append(s.rows.Day, d.rows.Day[from])
		s.rows.BirthLo = append(s.rows.BirthLo, d.rows.BirthLo[from])
		s.rows.BirthHi = append(s.rows.BirthHi, d.rows.BirthHi[from])
		s.rows.Basis = append(s.rows.Basis, d.rows.Basis[from])
		s.rows.LogTime = append(s.rows.LogTime, d.rows.LogTime[from])
		s.who = append(s.who, d.who[from])
	}
	return s
}

func byKey(d truth, r *Result) map[int64]int32 {
	m := map[int64]int32{}
	for i, k := range d.rows.Key {
		m[k] = r.Runner[i]
	}
	return m
}

func TestOrderAndThreadsDoNotMatter(t *testing.T) {
	d := district{people: 1200, courses: 5, weeks: 80, numbers: .5, messy: 1, namesakes: .03, wrong: .01, seed: 9}.make()
	r := link(t, d, Options{Threads: 1})
	want := byKey(d, r)
	for seed := range uint64(3) {
		s := shuffled(d, seed)
		q := link(t, s, Options{Threads: 1 + int(seed)*2})
		got := byKey(s, q)
		for k, v := range want {
			if got[k] != v {
				t.Fatalf("shuffle %d: row %d is runner %d, was %d", seed, k, got[k], v)
			}
		}
		if !slices.Equal(r.Doubtful, q.Doubtful) {
			t.Errorf("shuffle %d changes the list of doubtful pairs", seed)
		}
	}
}

func TestWeighIsSymmetrical(t *testing.T) {
	d := district{people: 400, courses: 4, weeks: 60, numbers: .5, messy: 1, seed: 5}.make()
	m := link(t, d, Options{}).m
	if len(m.pairs) < 300 {
		t.Fatalf("only %d pairs", len(m.pairs))
	}
	for _, p := range m.pairs {
		x, y := &m.sigs[p>>32], &m.sigs[uint32(p)]
		a, b := m.weigh(x, y), m.weigh(y, x)
		if math.Abs(a.total-b.total) > 1./256 {
			t.Fatalf("%v one way, %v the other", a.total, b.total)
		}
	}
}

// sheetOf makes a small archive by hand.
type line struct {
	name   string
	number string
	sex    uint8
	club   int32
	course int32
	week   int
	age    int // on the day; 0 not given
	upTo   int // of an age group that begins with age; 0 none
	secs   float64
}

func archive(lines []line) truth {
	d := truth{rows: &Rows{Numbers: []string{""}}}
	r := d.rows
	numbers := map[string]int32{"": 0}
	names := map[string]int32{}
	first := unit.NewDay(2024, 1, 6)
	for i, l := range lines {
		id, ok := names[l.name]
		if !ok {
			id = int32(len(d.names))
			names[l.name] = id
			d.names = append(d.names, name.Parse(l.name))
		}
		if _, ok := numbers[l.number]; !ok {
			numbers[l.number] = int32(len(r.Numbers))
			r.Numbers = append(r.Numbers, l.number)
		}
		day := first + unit.Day(7*l.week)
		var w age.Window
		if l.age > 0 {
			w = age.OfAges(l.age, max(l.age, l.upTo), day)
		}
		r.Key = append(r.Key, int64(i))
		r.Name = append(r.Name, id)
		r.Number = append(r.Number, numbers[l.number])
		r.Sex = append(r.Sex, l.sex)
		r.Club = append(r.Club, l.club)
		r.Course = append(r.Course, l.course)
		r.Run = append(r.Run, int32(l.week)*10+l.course)
		r.Series = append(r.Series, l.course)
		r.Day = append(r.Day, day)
		r.BirthLo, r.BirthHi = append(r.BirthLo, w.Lo), append(r.BirthHi, w.Hi)
		r.Basis = append(r.Basis, uint8(age.OnTheDay))
		secs := l.secs
		if secs == 0 {
			secs = 1500
		}
		r.LogTime = append(r.LogTime, float32(math.Log(secs)))
	}
	return d
}

// crowd fills an archive with others, so that names have frequencies.
func crowd(lines []line) []line {
	rng := rand.New(rand.NewPCG(3, 4))
	families := familyNames(rng)
	for p := range 300 {
		n := menNames[rng.IntN(len(menNames))] + " " + families[zipf(rng, len(families), 20)]
		for k := range 4 {
			lines = append(lines, line{name: n, number: fmt.Sprint(5000 + p), sex: SexM, course: int32(p % 3), week: p%10 + k*3,
				age: 20 + p%50, secs: 1200 + float64(p)*3})
		}
	}
	return lines
}

func same(r *Result, rows ...int) bool {
	for _, i := range rows[1:] {
		if r.Runner[i] != r.Runner[rows[0]] {
			return false
		}
	}
	return true
}

func TestFatherAndSon(t *testing.T) {
	var ls []line
	for w := range 8 {
		ls = append(ls, line{name: "Peter Calover", sex: SexM, course: 1, week: w, age: 52, secs: 1560},
			line{name: "Peter Calover", sex: SexM, course: 1, week: w + 4, age: 21, secs: 1490})
	}
	// A sheet without ages: nobody can say which of the two it was.
	ls = append(ls, line{name: "Peter Calover", sex: SexM, course: 1, week: 30, secs: 1520})
	r := link(t, archive(crowd(ls)), Options{})
	if !same(r, 0, 2, 4, 6, 8, 10, 12, 14) || !same(r, 1, 3, 5, 7, 9, 11, 13, 15) || same(r, 0, 1) {
		t.Fatalf("father and son: %v", r.Runner[:17])
	}
	found := false
	for _, q := range r.Questions {
		if slices.Contains(q.Rows, 16) && slices.Contains(q.Runners, r.Runner[0]) && slices.Contains(q.Runners, r.Runner[1]) {
			found = true
		}
	}
	if !found && !same(r, 0, 16) && !same(r, 1, 16) {
		t.Errorf("the line without an age is nobody's and not asked about: %+v", r.Questions)
	}
}

func TestSameNameAndAgeInOneRunAreTwoPeople(t *testing.T) {
	var ls []line
	for w := range 6 {
		ls = append(ls, line{name: "Ann Wilmore", sex: SexW, course: 1, week: w, secs: 1500},
			line{name: "Ann Wilmore", sex: SexW, course: 1, week: w, secs: 2100})
	}
	r := link(t, archive(crowd(ls)), Options{})
	if same(r, 0, 1) || !same(r, 0, 2, 4, 6, 8, 10) || !same(r, 1, 3, 5, 7, 9, 11) {
		t.Errorf("two of one name who run side by side: %v", r.Runner[:12])
	}
}

func TestTwoNumbersOfOnePerson(t *testing.T) {
	var ls []line
	for w := range 6 {
		ls = append(ls, line{name: "Zoltán Penhurst", number: "3001", sex: SexM, club: 2, course: 1, week: 2 * w, age: 44},
			line{name: "Zoltan Penhurst", number: "3977", sex: SexM, club: 2, course: 1, week: 2*w + 1, age: 44})
	}
	r := link(t, archive(crowd(ls)), Options{})
	if !same(r, 0, 1, 2, 3) {
		t.Errorf("two numbers, one rare name, age and club: %v", r.Runner[:4])
	}
}

func TestStrangersNumberMistyped(t *testing.T) {
	ls := crowd(nil)
	n := len(ls)
	for w := range 6 {
		ls = append(ls, line{name: "Maëlle Thornsey", number: "7131", sex: SexW, course: 1, week: w, age: 33})
	}
	// Her number with one digit wrong is another runner's.
	ls = append(ls, line{name: "Maëlle Thornsey", number: "5031", sex: SexW, course: 1, week: 20, age: 33})
	r := link(t, archive(ls), Options{})
	if !same(r, n, n+6) {
		t.Errorf("a mistyped number took her line away")
	}
	for i, l := range ls[:n] {
		if l.number == "5031" && same(r, i, n) {
			t.Fatalf("she became the stranger whose number it is")
		}
	}
}

func TestNamesBrokenOnTheWay(t *testing.T) {
	texts := []string{"José García", "JOSE GARCIA", "JosÃ© GarcÃ\u00ada", "Jos? Garc?a", "Jos\ufffd Garc\ufffda", "García, José", "Jose Garica"}
	var ls []line
	for w, s := range texts {
		ls = append(ls, line{name: s, sex: SexM, course: 1, week: w, age: 40}, line{name: s, sex: SexM, course: 1, week: w + 10, age: 40})
	}
	r := link(t, archive(crowd(ls)), Options{})
	for i := range ls {
		if !same(r, 0, i) {
			t.Errorf("%q is another runner than %q", ls[i].name, texts[0])
		}
	}
}

// RILEY M has the initial of the given name last, whatever the reader took it
// for.
func TestInitialAfterTheFamilyName(t *testing.T) {
	var lines []line
	for w := range 12 {
		l := line{name: "Michelle Riley", sex: SexW, course: 1, week: w, age: 40}
		if w%4 == 3 {
			l.name, l.course = "RILEY M", 2
		}
		lines = append(lines, l)
	}
	if r := link(t, archive(crowd(lines)), Options{}); !same(r, 0, 1, 3, 7, 11) {
		t.Errorf("the initial after the family name was taken for somebody else: %v", r.Runner[:12])
	}
}

func TestDecisionsOverride(t *testing.T) {
	var ls []line
	for w := range 5 {
		ls = append(ls, line{name: "Ruth Horley", sex: SexW, course: 1, week: w, age: 30},
			line{name: "Sally Denfield", sex: SexW, course: 2, week: w, age: 60})
	}
	d := archive(crowd(ls))
	r := link(t, d, Options{})
	if !same(r, 0, 2, 4) || same(r, 0, 1) {
		t.Fatalf("before any decision: %v", r.Runner[:10])
	}
	r = link(t, d, Options{Decisions: []Decision{{A: 0, B: 1, Same: true, Ref: "decisions.csv:2"}, {A: 2, B: 4, Ref: "decisions.csv:3"}}})
	if !same(r, 0, 1) {
		t.Errorf("a join by a person was not followed")
	}
	if same(r, 2, 4) {
		t.Errorf("a part by a person was not followed")
	}
	if len(r.Contradictions) != 0 {
		t.Errorf("no contradiction here: %v", r.Contradictions)
	}
	for _, p := range r.Doubtful {
		if p.A == min(r.Runner[2], r.Runner[4]) && p.B == max(r.Runner[2], r.Runner[4]) {
			t.Errorf("what has been decided is asked again")
		}
	}
	r = link(t, d, Options{Decisions: []Decision{{A: 0, B: 1, Same: true, Ref: "decisions.csv:2"}, {A: 1, B: 3, Same: true, Ref: "decisions.csv:3"},
		{A: 0, B: 3, Ref: "decisions.csv:4"}}})
	if len(r.Contradictions) != 1 || !strings.Contains(r.Contradictions[0].Message, "decisions.csv:4") {
		t.Fatalf("contradictions: %+v", r.Contradictions)
	}
	if same(r, 0, 3) {
		t.Errorf("a contradiction was guessed")
	}
}

// Ages by 31 December: everybody's age changes in the first week of January.
// The sheets must not split people from their lines on sheets with ages on the
// day.
func TestAgesReckonedByAFixedDay(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	families := familyNames(rng)
	var ls []line
	var who []int32
	for p := range 150 {
		n := menNames[rng.IntN(len(menNames))] + " " + families[rng.IntN(1500)]
		born := unit.NewDay(1950+rng.IntN(50), 1+rng.IntN(12), 1+rng.IntN(28))
		by, _, _ := born.Date()
		for w := range 100 {
			if rng.Float64() > .3 {
				continue
			}
			day := unit.NewDay(2024, 1, 6) + unit.Day(7*w)
			y, _, _ := day.Date()
			l := line{name: n, sex: SexM, course: 0, week: w, age: y - by}
			if rng.Float64() < .5 {
				l.course, l.age = 1, age.On(born, day)
			}
			ls, who = append(ls, l), append(who, int32(p))
		}
	}
	d := archive(ls)
	d.who = who
	r := link(t, d, Options{})
	if r.m.unsure == nil || !r.m.unsure[0] || r.m.unsure[1] {
		t.Errorf("series known to be unsure: %v, want the first only", r.m.unsure)
	}
	if s := measure(r.Runner, d.who); s.recall < .99 || s.precision < .99 {
		t.Errorf("precision %.4f, recall %.4f", s.precision, s.recall)
	}
}

func TestUnnamedRowsStayAlone(t *testing.T) {
	r := link(t, archive(crowd([]line{{name: "Unknown", course: 1}, {name: "Unknown", course: 1}, {name: "Sam & Jo Lee", course: 1}, {name: "Sam & Jo Lee", course: 1, week: 1}})), Options{})
	if same(r, 0, 1) || same(r, 2, 3) {
		t.Errorf("nobody became somebody: %v", r.Runner[:4])
	}
}

func TestExplainAddsUp(t *testing.T) {
	d := district{people: 600, courses: 4, weeks: 60, messy: 1, seed: 6}.make()
	r := link(t, d, Options{})
	if len(r.Doubtful) == 0 {
		t.Fatal("nothing doubtful in a messy district")
	}
	for _, p := range r.Doubtful {
		e := r.Explain(p.A, p.B)
		sum := 0.
		for _, x := range e.Reasons {
			sum += x.Bits
		}
		if math.Abs(sum-e.Bits) > .01 || math.Abs(e.Bits-p.Bits) > 1e-9 {
			t.Fatalf("reasons add up to %.3f, the pair has %.3f:\n%s", sum, p.Bits, e)
		}
	}
	steps := 0
	for runner := range int32(r.Runners) {
		steps += len(r.Steps(runner))
	}
	if steps != r.Counts.Joins {
		t.Errorf("%d steps for %d joins", steps, r.Counts.Joins)
	}
}

func TestSideHoldsTheRunnersLines(t *testing.T) {
	ls := []line{
		{name: "Zoë Hartley", number: "77", sex: SexW, course: 1, week: 3, age: 40},
		{name: "ZOE HARTLEY", number: "77", sex: SexW, course: 1, week: 1, age: 40},
		{name: "Zoë Hartley", number: "77", sex: SexW, course: 1, week: 9, age: 40},
	}
	d := archive(crowd(ls))
	r := link(t, d, Options{})
	s := r.Side(r.Runner[0])
	if !slices.Equal(s.Rows, []int32{2, 0, 1}) || len(s.Spellings) != 2 || s.Spellings[0].Text != "Zoë Hartley" || s.Spellings[0].Count != 2 ||
		!slices.Equal(s.Numbers, []string{"77"}) || s.First != d.rows.Day[1] || s.Last != d.rows.Day[2] || s.Strange != 0 {
		t.Errorf("side: %+v", s)
	}
	// 40 in week 1 and in week 9: born between the two bounds.
	want := age.OfAges(40, 40, d.rows.Day[1])
	want, _ = want.Meet(age.OfAges(40, 40, d.rows.Day[2]))
	if s.Birth != want {
		t.Errorf("born %v, want %v", s.Birth, want)
	}
	n := 0
	for x := range int32(r.Runners) {
		n += len(r.Side(x).Rows)
	}
	if n != d.rows.Len() {
		t.Errorf("sides hold %d lines of %d", n, d.rows.Len())
	}
}
