package record

import (
	"testing"

	"lapwing/pipeline/age"
)

// Of letters that stand for classes of a race's own none is read as a class of boys or
// girls, though one or two look like it; beside classes that are known they are.
func TestLetterCodes(t *testing.T) {
	for _, c := range []struct {
		cells []string
		known string // the last one's sex
	}{
		{[]string{"Ak", "Bk", "Ck", "Dk", "Ek", "Fk"}, ""},
		{[]string{"MK", "WK", "FK"}, "W"},
	} {
		k := newGroupColumn(age.DefaultScheme(), nil, nil)
		var scratch []byte
		for _, s := range c.cells {
			k.observe(s, &scratch)
		}
		k.settle("Kat", nil, nil)
		e := k.find(c.cells[len(c.cells)-1], new(groupEntry), &scratch)
		if e.known != (c.known != "") || e.sex.String() != c.known {
			t.Errorf("%v: sex %q, known %v", c.cells, e.sex, e.known)
		}
	}
}
