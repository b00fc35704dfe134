package age

import (
	"fmt"
	"slices"
	"strings"
)

// Scheme is a set of age groups: the ages at which a new group begins, and
// what the groups are called.
//
// The default is the trade's usual one: two-year groups for juniors (under
// 10, 12, … 18, 20), Senior to 34, then the five-year groups of World Masters
// Athletics from 35 (World Masters Athletics, Rules of Competition).
type Scheme struct {
	Junior  []int // upper bounds: U10 means up to 9
	Masters int   // first masters age
	Step    int   // years in a masters group
}

// DefaultScheme is U10 … U20, Senior, then five-year groups from 35.
func DefaultScheme() Scheme {
	return Scheme{Junior: []int{10, 12, 14, 16, 18, 20}, Masters: 35, Step: 5}
}

// Bounds gives the youngest and oldest age of the group that holds age. The
// youngest group begins at 0, masters groups have no end.
func (s Scheme) Bounds(age int) (lo, hi int) {
	for _, u := range s.Junior {
		if age < u {
			return lo, u - 1
		}
		lo = u
	}
	if age < s.Masters {
		return lo, s.Masters - 1
	}
	lo = s.Masters + (age-s.Masters)/s.Step*s.Step
	return lo, lo + s.Step - 1
}

// Name is the printed group of an age: U18, Senior, M40, W40, X40. Sex is
// "M", "W", "X" or "" (not given: 40-44). Juniors and seniors carry no letter.
func (s Scheme) Name(age int, sex string) string {
	lo, hi := s.Bounds(age)
	switch {
	case hi < s.Masters && len(s.Junior) > 0 && lo < s.Junior[len(s.Junior)-1]:
		return fmt.Sprintf("U%d", hi+1)
	case hi < s.Masters:
		return "Senior"
	case sex == "":
		return fmt.Sprintf("%d-%d", lo, hi)
	}
	return fmt.Sprintf("%s%d", sex, lo)
}

// Certain names the group where both ages fall in the same one, else "".
func (s Scheme) Certain(ageLo, ageHi int, sex string) string {
	lo, _ := s.Bounds(ageLo)
	if l2, _ := s.Bounds(ageHi); l2 != lo {
		return ""
	}
	return s.Name(ageLo, sex)
}

// Words lists the groups: "two-year groups to U20, Senior to 34, then five-year groups".
func (s Scheme) Words() string {
	var juniors []string
	for _, u := range s.Junior {
		juniors = append(juniors, fmt.Sprintf("U%d", u))
	}
	out := strings.Join(juniors, ", ") + ", "
	switch {
	case slices.Equal(s.Junior, DefaultScheme().Junior):
		out = "two-year groups to U20, "
	case len(juniors) == 0:
		out = ""
	}
	width := fmt.Sprint(s.Step)
	if w := [...]string{2: "two", 3: "three", 4: "four", 5: "five", 10: "ten"}; s.Step < len(w) && w[s.Step] != "" {
		width = w[s.Step]
	}
	return fmt.Sprintf("%sSenior to %d, then %s-year groups", out, s.Masters-1, width)
}
