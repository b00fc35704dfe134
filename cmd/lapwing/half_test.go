package main

import (
	"strings"
	"testing"
)

// A list of times whose list of names has not come is told, until it comes.
func TestHalfWithoutItsHalf(t *testing.T) {
	for _, c := range []struct{ first, second, lacks string }{
		{"Place,Time\n1,20:01\n2,21:02\n3,22:02\n", "Place,Name\n1,Ana Sol\n2,Ben Orr\n3,Cy Ash\n", "no names"},
		{"Place,Name\n1,Ana Sol\n2,Ben Orr\n3,Cy Ash\n", "Place,Time\n1,20:01\n2,21:02\n3,22:02\n", "no times"},
	} {
		dir := inFolder(t, map[string]string{"sheets/alder-bank_2026-10-03 a.csv": c.first})
		out := plainly(t, "load", "sheets").out
		wants(t, out, "other half missing", c.lacks, "Save that beside this one and load it")
		wants(t, plainly(t, "sheets", "problems").out, "other half missing")
		write(t, dir, map[string]string{"sheets/alder-bank_2026-10-03 b.csv": c.second})
		if out = plainly(t, "load", "sheets").out; strings.Contains(out, "half missing") {
			t.Errorf("with both halves:\n%s", out)
		}
		if out = plainly(t, "sheets", "problems").out; strings.Contains(out, "half missing") {
			t.Errorf("with both halves:\n%s", out)
		}
	}
}
