package reports

import (
	"fmt"
	"testing"
)

func TestPublicName(t *testing.T) {
	for _, c := range []struct {
		name              string
		protected, hidden bool
		want              string
	}{
		{"Ada Ashdown", false, false, "Ada Ashdown"},
		{"Ada Ashdown", true, false, "Ada A."},
		{"Mia van der Berg", true, false, "Mia B."},
		{"Zoë Ørsted", true, false, "Zoë Ø."},
		{"J R Stone", true, false, "J. S."},
		{"Tom Garside Jr.", true, false, "Tom G."},
		{"Lotte O'Dell", true, false, "Lotte O."},
		{"Lotte 'Dell", true, false, "Lotte D."},
		{"Mia Jr", true, false, "Mia J."},
		{"Madonna", true, false, "Madonna"},
		{"", true, false, nobody},
		{"Ada Ashdown", false, true, anonymous},
		{"Ada Ashdown", true, true, anonymous},
		{"", false, true, anonymous},
	} {
		if got := publicName(c.name, c.protected, c.hidden); got != c.want {
			t.Errorf("publicName(%q, protected %t, hidden %t) = %q, want %q", c.name, c.protected, c.hidden, got, c.want)
		}
	}
}

func TestGroupLabel(t *testing.T) {
	for _, c := range []struct{ sex, group, want string }{
		{"W", "Senior", "Senior W"}, {"M", "U18", "U18 M"}, {"M", "M40", "M40"}, {"X", "X40", "X40"},
		{"", "40-44", "40-44"}, {"", "Senior", "Senior"}, {"W", "", ""},
	} {
		if got := groupLabel(c.sex, c.group); got != c.want {
			t.Errorf("groupLabel(%q, %q) = %q, want %q", c.sex, c.group, got, c.want)
		}
	}
}

// A group of X is printed from five people on; who is hidden does not count, and has no
// group printed in any.
func TestSmallGroupsOfX(t *testing.T) {
	field := func(n, hidden int, sex string) string {
		d := &weekly{}
		for i := range n + hidden {
			at := int32(i + 1)
			d.results = append(d.results, resultRow{runner: fmt.Sprint("R", at), position: &at, sex: sex, group: sex + "40", status: "ok", takingPart: "runner", hidden: i >= n})
		}
		d.places()
		shown, ranked := 0, 0
		for i := range d.results {
			r := &d.results[i]
			if r.shown != "" {
				shown++
			}
			if r.groupPlace.N > 0 {
				ranked++
			}
		}
		return fmt.Sprint(shown, " shown, ", ranked, " ranked")
	}
	for _, c := range []struct {
		n, hidden int
		sex, want string
	}{
		{4, 0, "X", "0 shown, 0 ranked"},
		{4, 2, "X", "0 shown, 0 ranked"},
		{5, 0, "X", "5 shown, 5 ranked"},
		{5, 1, "X", "5 shown, 5 ranked"},
		{1, 1, "W", "1 shown, 1 ranked"},
	} {
		if got := field(c.n, c.hidden, c.sex); got != c.want {
			t.Errorf("%d of %s40 and %d hidden: %s, want %s", c.n, c.sex, c.hidden, got, c.want)
		}
	}
	for n, small := range map[int]bool{4: true, 5: false} {
		d := &standingRows{sex: "X", bests: map[standIn]*groupBests{}}
		d.bests[standIn{}] = &groupBests{all: make([]int32, n)}
		if d.smallGroup() != small {
			t.Errorf("the group of a card with %d people is small: %t, want %t", n, !small, small)
		}
	}
}

// Who is first of those named is called so where somebody who is not shown, or has no name,
// may have been before.
func TestFirstOfThoseNamed(t *testing.T) {
	row := func(place int32, sex, status string, hidden bool) resultRow {
		r := resultRow{runner: fmt.Sprint("R", place), sex: sex, status: status, hidden: hidden}
		r.place.N = place
		return r
	}
	for _, c := range []struct {
		name string
		rows []resultRow
		want bool
	}{
		{"a hidden man before", []resultRow{row(1, "M", "ok", true), row(2, "M", "ok", false)}, true},
		{"a hidden woman before", []resultRow{row(1, "W", "ok", true), row(2, "M", "ok", false)}, false},
		{"somebody without a name before", []resultRow{row(1, "", "unnamed", false), row(2, "M", "ok", false)}, true},
		{"a hidden man behind", []resultRow{row(3, "M", "ok", true), row(2, "M", "ok", false)}, false},
		{"a named woman before", []resultRow{row(1, "W", "ok", false), row(2, "M", "ok", false)}, false},
	} {
		d := &weekly{results: c.rows}
		if got := d.mayBeBefore(&d.results[1], "M"); got != c.want {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}
