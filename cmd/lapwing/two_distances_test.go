package main

import (
	"fmt"
	"strings"
	"testing"
)

// A course with a 3 km and a 5 km on one morning: who runs both is one person, the
// card says which distance it means, and lists each rank once.
func TestTwoDistances(t *testing.T) {
	files := map[string]string{}
	for week := range 6 {
		for _, km := range []int{3, 5} {
			var b strings.Builder
			fmt.Fprintf(&b, "Garrow Moss %d km %d January 2026\nPos,Name,Time,Age,Sex\n", km, 3+week)
			for n := range 12 {
				s := km*(240+n*9) + (week*7+n*3)%5
				fmt.Fprintf(&b, "%d,%s %s,%d:%02d,%d,F\n", n+1, []string{"Ana", "Bea", "Cora", "Dee"}[n%4], []string{"Alder", "Birch", "Cole"}[n/4], s/60, s%60, 22+n)
			}
			files[fmt.Sprintf("sheets/%d-%d.csv", week, km)] = b.String()
		}
	}
	dir := folderWith(t, files)
	must(t, dir, "load", dir+"/sheets")
	card := must(t, dir, "standing", "Bea Birch").out
	wants(t, card, "Garrow Moss, 3 km", "Garrow Moss, 5 km", "12 runs, the first in these sheets on 3 January 2026")
	_, table, _ := strings.Cut(card, "Where ")
	table, _, _ = strings.Cut(table, "\n\n")
	seen := map[string]bool{}
	for _, line := range strings.Split(table, "\n")[2:] {
		if seen[line] {
			t.Errorf("twice: %s", line)
		}
		seen[line] = true
	}
	if len(seen) < 12 {
		t.Errorf("%d ranks:\n%s", len(seen), table)
	}
}
