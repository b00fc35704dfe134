package sheet

import (
	"fmt"
	"strings"
	"testing"
)

// A list of the fastest of all runs has places that go on over many days; a season's
// list, one of a club's members, and one sorted by name have them too, but not so.
func TestRankingOfManyRuns(t *testing.T) {
	row := func(place, minute, second, day int) string {
		return fmt.Sprintf("%d,Ann No%cthe,%d:%02d,%02d/01/2026\n", place, 'a'+place, minute, second, day)
	}
	best, season, club, filled := "Rank,Name,Time,Date\n", "Pos,Name,Time,Date\n", "Pos,Name,Time,Date\n", "Pos,Name,Time,Date\n"
	for i := range 20 {
		best += row(i+1, 18, 2*i, 3+7*(i*3%4))
		season += row(i%5+1, 18, 7*(i%5), 3+7*(i/5))
		filled += row(i%4+1, 18, 7*(i%4)+i/4, 3+7*(i/4))
		if i%4 > 0 {
			filled = filled[:strings.LastIndexByte(filled, ',')+1] + "\n"
		}
		club += row(3+i*7%11, 18, 9*(i%6), 3+7*(i/5))
	}
	for name, c := range map[string]struct {
		text    string
		ranking bool
	}{"fastest ever": {"Fastest ever\n\n" + best, true}, "untitled": {best, true}, "season": {season, false}, "season, each day said once": {filled, false}, "members": {club, false},
		"one day": {strings.NewReplacer("10/01", "03/01", "17/01", "03/01", "24/01", "03/01").Replace(best), false}} {
		_, err := Read("alder-bank.csv", []byte(c.text), Options{DateOrder: "dmy"})
		if refused := err != nil && strings.Contains(err.Error(), "ranks results of many days"); refused != c.ranking {
			t.Errorf("%s: %v", name, err)
		}
	}
}
