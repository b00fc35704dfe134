package age

import (
	"fmt"
	"testing"

	"lapwing/pipeline/unit"
)

// Worked by hand: the birthday counts that day, 29 February becomes 1 March: born 29 Feb 1984 is M40 on
// 28 Feb 2029 and M45 on 1 March 2029.
func TestLeapDayBirthday(t *testing.T) {
	born := unit.NewDay(1984, 2, 29)
	if a := On(born, unit.NewDay(2029, 2, 28)); a != 44 {
		t.Errorf("28 Feb 2029: age %d, want 44", a)
	}
	if a := On(born, unit.NewDay(2029, 3, 1)); a != 45 {
		t.Errorf("1 Mar 2029: age %d, want 45", a)
	}
}

// Groups of other federations: under-11, 13, 15, 17 and 20; masters from 30 in tens.
func TestGroupsOfOneself(t *testing.T) {
	s := Scheme{Junior: []int{11, 13, 15, 17, 20}, Masters: 30, Step: 10}
	for age, want := range map[int]string{0: "U11", 10: "U11", 11: "U13", 16: "U17", 17: "U20", 19: "U20", 20: "Senior", 29: "Senior", 30: "W30", 39: "W30", 40: "W40", 99: "W90"} {
		if got := s.Name(age, "W"); got != want {
			t.Errorf("a woman of %d is %s, want %s", age, got, want)
		}
	}
	none := Scheme{Masters: 40, Step: 5}
	if a, b := none.Name(12, "M"), none.Name(39, "M"); a != "Senior" || b != "Senior" || none.Name(40, "M") != "M40" {
		t.Errorf("without juniors: %s, %s", a, b)
	}
	for want, s := range map[string]Scheme{
		"two-year groups to U20, Senior to 34, then five-year groups": DefaultScheme(),
		"U11, U13, U15, U17, U20, Senior to 29, then ten-year groups": s,
		"Senior to 39, then five-year groups":                         none,
		"U18, Senior to 34, then 7-year groups":                       {Junior: []int{18}, Masters: 35, Step: 7},
		"U18, Senior to 34, then 15-year groups":                      {Junior: []int{18}, Masters: 35, Step: 15},
	} {
		if got := s.Words(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The window of an age holds exactly the birth dates that have that age.
func TestOfAgesAgreesWithOn(t *testing.T) {
	for _, on := range []unit.Day{unit.NewDay(2029, 2, 28), unit.NewDay(2028, 2, 29), unit.NewDay(2029, 3, 1), unit.NewDay(2026, 1, 1), unit.NewDay(2026, 12, 31)} {
		for a := 5; a < 100; a += 7 {
			w := OfAges(a, a, on)
			for _, d := range []unit.Day{w.Lo - 1, w.Lo, w.Hi, w.Hi + 1} {
				in := d >= w.Lo && d <= w.Hi
				if got := On(d, on) == a; got != in {
					t.Errorf("age %d on %v: born %v in window %v but age is %d", a, on, d, in, On(d, on))
				}
			}
		}
	}
}

func TestGroups(t *testing.T) {
	s := DefaultScheme()
	for _, c := range []struct {
		age       int
		sex, want string
	}{{9, "M", "U10"}, {10, "", "U12"}, {17, "W", "U18"}, {19, "M", "U20"}, {20, "M", "Senior"}, {34, "W", "Senior"},
		{35, "M", "M35"}, {44, "W", "W40"}, {40, "X", "X40"}, {80, "", "80-84"}, {100, "W", "W100"}} {
		if got := s.Name(c.age, c.sex); got != c.want {
			t.Errorf("Name(%d, %q) = %s, want %s", c.age, c.sex, got, c.want)
		}
	}
	if s.Certain(39, 40, "M") != "" || s.Certain(40, 44, "M") != "M40" {
		t.Error("Certain: 39-40 spans two groups, 40-44 is one")
	}
}

// The five-year groups from 35 of World Masters Athletics (Rules of
// Competition) and the under-20 and under-18 of World Athletics (Technical
// Rules, rule 3), from memory; here by age on the day.
func TestGroupsOfTheFederations(t *testing.T) {
	s := DefaultScheme()
	for lo := 35; lo <= 100; lo += 5 {
		for age := lo; age < lo+5; age++ {
			if got, want := s.Name(age, "W"), fmt.Sprintf("W%d", lo); got != want {
				t.Errorf("a woman of %d is %s, want %s", age, got, want)
			}
		}
		if a, b := s.Bounds(lo + 2); a != lo || lo < 100 && b != lo+4 {
			t.Errorf("bounds at %d: %d to %d", lo+2, a, b)
		}
	}
	for age, want := range map[int]string{16: "U18", 17: "U18", 18: "U20", 19: "U20", 20: "Senior"} {
		if got := s.Name(age, "M"); got != want {
			t.Errorf("a man of %d is %s, want %s", age, got, want)
		}
	}
}
