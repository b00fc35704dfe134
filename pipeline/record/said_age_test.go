package record

import "testing"

// An age behind a name says what it is by its unit or by the word before it.
func TestSaidAge(t *testing.T) {
	for _, c := range []struct {
		text, name string
		age        int
	}{
		{"Jo Lee 36 yrs", "Jo Lee", 36}, {"Jo Lee (36 years)", "Jo Lee", 36}, {"Jo Lee, 12 yrs old", "Jo Lee", 12}, {"Jo Lee aged 9", "Jo Lee", 9}, {"Jo Lee, age 36", "Jo Lee", 36},
		{"Jo Lee (36 ans)", "Jo Lee", 36}, {"Jo Lee 36 Jahre", "Jo Lee", 36}, {"Jo Lee 36 J.", "Jo Lee", 36}, {"Jo Lee - 36 lat", "Jo Lee", 36}, {"Jo Lee (12 y/o)", "Jo Lee", 12}, {"Jo Lee (34 р.)", "Jo Lee", 34}, {"Jo Lee, 34 роки", "Jo Lee", 34}, {"Jo Lee 34 vuotias", "Jo Lee", 34},
	} {
		if name, n, ok := saidAge(c.text); !ok || name != c.name || n != c.age {
			t.Errorf("%q: %q, %d, %v", c.text, name, n, ok)
		}
	}
	for _, text := range []string{"Jo Lee 36", "Jo Lee (36)", "Jo Lee M40", "Jo Lee 100 runs", "Jo Lee 50 runs", "Jo Lee 112 yrs", "Lee 36 yrs", "Jo Lee", "Jo Page", "Jo Lee 5 km", "Jo Lee 18:36 yrs"} {
		if name, n, ok := saidAge(text); ok || name != text {
			t.Errorf("%q: %q, %d", text, name, n)
		}
	}
	c := NoColumns()
	c.Position, c.Name, c.Time = 0, 1, 2
	rows := [][]string{{"1", "Jo Lee", "18:20"}, {"2", "Al Roe 36 yrs", "18:31"}, {"3", "Cy Dee", "18:40"}}
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		for _, r := range rows {
			yield(r)
		}
	})
	if l := lines[1]; l.Name != "Al Roe" || !l.Birth.Known() {
		t.Errorf("%+v", l)
	}
}
