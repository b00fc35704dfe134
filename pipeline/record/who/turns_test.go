package who

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestOutOfPlace(t *testing.T) {
	for _, c := range []struct {
		a, b []int32
		want int
	}{
		{[]int32{1, 2, 3}, []int32{4, 5}, 0},
		{[]int32{4, 5}, []int32{1, 2, 3}, 0},
		{[]int32{1, 2, 6}, []int32{4, 5}, 1},       // 6 is out of place
		{[]int32{1, 3, 5, 7}, []int32{2, 4, 6}, 3}, // by turns: all of the few
		{[]int32{1, 9}, []int32{2, 3, 4, 5}, 1},    // the few all lie around the many
		{[]int32{4, 5}, []int32{1, 2, 8, 9}, 2},
		{nil, []int32{1}, 0},
	} {
		if got := outOfPlace(c.a, c.b); got != c.want {
			t.Errorf("%v and %v: %d out of place, want %d", c.a, c.b, got, c.want)
		}
	}
}

// The same, by trying every place to divide and both orders.
func TestOutOfPlaceByTryingAll(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 500 {
		var a, b []int32
		for run := range int32(25) {
			switch rng.IntN(4) {
			case 0:
				a = append(a, run)
			case 1:
				b = append(b, run)
			}
		}
		want := len(a) + len(b)
		for at := int32(0); at <= 25; at++ {
			before := func(list []int32) int {
				k, _ := slices.BinarySearch(list, at)
				return k
			}
			want = min(want, before(b)+len(a)-before(a), before(a)+len(b)-before(b))
		}
		if got, back := outOfPlace(a, b), outOfPlace(b, a); got != want || back != want {
			t.Fatalf("%v and %v: %d and %d out of place, want %d", a, b, got, back, want)
		}
	}
}

// By hand: of 20 lines none out of place, the chance is .97^20 = .544 if one
// number took the other's place, .35 if they are two people's: log2(1/8 + 7/8 ×
// .544/.35) = .569. Ten of 20: log2(1/8) = -3.
func TestTurnBitsByHand(t *testing.T) {
	for _, c := range []struct {
		k, n int
		want float64
	}{{0, 20, .569}, {10, 20, -3}, {2, 2, -3}, {1, 2, -3}} {
		if got := turnBits(c.k, c.n); math.Abs(got-c.want) > 1e-3 {
			t.Errorf("%d of %d out of place: %.4f bits, want %.4f", c.k, c.n, got, c.want)
		}
	}
	for n := 2; n <= 300; n++ {
		for k := range n + 1 {
			if w := turnBits(k, n); math.IsNaN(w) || w < math.Log2(inTurnShare)-1e-9 || w > math.Log2(inTurnShare+(1-inTurnShare)/apartShare)+1e-9 {
				t.Fatalf("%d of %d out of place: %.2f bits", k, n, w)
			}
		}
	}
}

// Two of one name with a number each, who run on by turns on two days of the week, are two
// people; one whose second number follows the first is one.
func TestNumbersInTurnAndOneAfterTheOther(t *testing.T) {
	make := func(second func(k int) int) *Result {
		var ls []line
		for k := range 12 {
			ls = append(ls, line{name: "Ansel Pickthorn", number: "8001", sex: SexM, course: 1, week: 3 * k, age: 40, upTo: 44, secs: 1500})
			ls = append(ls, line{name: "Ansel Pickthorn", number: "8777", sex: SexM, course: 2, week: second(k), age: 40, upTo: 44, secs: 1500})
		}
		return link(t, archive(crowd(ls)), Options{Fixed: true})
	}
	turns, after := make(func(k int) int { return 3*k + 1 }), make(func(k int) int { return 34 + k })
	number := func(r *Result) (bits, level float64) {
		a, b := r.m.sigOf[0], r.m.sigOf[1]
		s := r.m.weigh(&r.m.sigs[min(a, b)], &r.m.sigs[max(a, b)])
		return float64(s.bits[NumberTurns]), float64(s.level[Number])
	}
	if b, l := number(turns); l != float64(Differs) || math.Abs(b+3) > .01 {
		t.Errorf("two numbers in turn weigh %.2f bits, want -3", b)
	}
	if b, l := number(after); l != float64(Differs) || b < .5 {
		t.Errorf("one number after the other weighs %.2f bits", b)
	}
}

// Two whose numbers differ need numberBits more than one with a number and one without.
func TestNumbersThatDifferNeedMore(t *testing.T) {
	m := &model{w: StartingWeights()}
	a, b := &cluster{n: 1, numbers: []tally{{1, 1}}}, &cluster{n: 5}
	var s sum
	s.total = JoinNumbered(0, 1, 5) + numberBits - .01
	if !m.joins(&s, a, b) {
		t.Error("not joined where one has no number")
	}
	b.numbers = []tally{{2, 5}}
	s.level[Number] = Differs
	if m.joins(&s, a, b) {
		t.Error("joined although the numbers differ")
	}
	if s.total += .01; !m.joins(&s, a, b) {
		t.Error("not joined though the sum is enough")
	}
}

// Of people some of whom have a second number, the weight learned is about log2
// of the share of one person's pairs of signatures in which numbers differ: four
// of six with a second number, none of one without. Where nobody has, it is held
// by what it starts from, 2^-5 of 200 pairs.
func TestShareOfTwoNumbersIsLearned(t *testing.T) {
	learned := func(two float64) float64 {
		rng := rand.New(rand.NewPCG(31, 5))
		families := familyNames(rng)
		var ls []line
		for p := range 1500 {
			family := families[rng.IntN(len(families))]
			given := womenNames[rng.IntN(len(womenNames))]
			second := rng.Float64() < two
			for k := range 6 {
				number, called := 20000+7*p, given
				if k%2 == 1 {
					called = given[:1] // every second sheet has the initial only
				}
				if second && k > 3 {
					number = 80000 + 9*p
				}
				ls = append(ls, line{name: called + " " + family, number: fmt.Sprint(number), sex: SexW, course: int32(p % 4), week: p%20 + 3*k,
					age: 18 + p%60, secs: 1200 + float64(p%900)})
			}
		}
		w := link(t, archive(ls), Options{}).Weights
		return w.NumberDiffers
	}
	const two = .03
	none, some := learned(0), learned(two)
	t.Logf("nobody %.2f, three in a hundred %.2f", none, some)
	if want := math.Log2(200. / 32 / 1700); math.Abs(none-want) > .3 {
		t.Errorf("where nobody has two numbers they weigh %.2f, want about %.2f", none, want)
	}
	if want := math.Log2(4 * two / (1 + 5*two)); math.Abs(some-want) > .7 {
		t.Errorf("where three in a hundred have two numbers they weigh %.2f, want about %.2f", some, want)
	}
}

// Two regulars of one number are joined as soon as two with a number and none.
func TestOneNumberNeedsNoMore(t *testing.T) {
	m := &model{w: StartingWeights()}
	a, b := &cluster{n: 60, numbers: []tally{{1, 60}}}, &cluster{n: 70, numbers: []tally{{1, 70}}}
	var s sum
	s.level[Number], s.level[FamilyName], s.total = Equal, Differs, JoinNumbered(0, 60, 70)
	if !m.joins(&s, a, b) {
		t.Error("not joined")
	}
	if a.numbers, b.numbers = nil, nil; m.joins(&s, a, b) {
		t.Error("joined without numbers although both have many lines")
	}
}
