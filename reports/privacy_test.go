package reports

import "testing"

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
