package record

import (
	"testing"

	"lapwing/pipeline/unit"
)

// A remark that says a sex, a group or an age and nothing else says it of its runner, wherever it stands.
func TestRemarkFacts(t *testing.T) {
	for s, want := range map[string]remarkFacts{
		"First Lady!": {sex: W, age: -1}, "1st woman home": {sex: W, age: -1}, "2nd F": {sex: W, age: -1}, "première femme": {sex: W, age: -1}, "first woman across the line": {sex: W, age: -1}, "1. nő": {sex: W, age: -1}, "PB, first lady": {sex: W, age: -1},
		"born 1975": {age: -1, year: 1975}, "b. 1984": {age: -1, year: 1984}, "cat F55": {group: "f55", lo: 55, hi: oldest, sex: W, age: -1}, "40 and over": {group: "40 and over", lo: 40, hi: oldest, age: -1}, "vet 50+": {group: "vet 50+", lo: 50, hi: oldest, age: -1},
		"1st V50": {group: "v50", lo: 50, hi: oldest, age: -1}, "under 11": {group: "under 11", hi: 10, age: -1}, "U11 girl": {group: "u11 girl", hi: 10, sex: W, age: -1}, "MV45": {group: "mv45", lo: 45, hi: oldest, sex: M, age: -1}, "Junior runner": {group: "junior", hi: 19, age: -1},
		"aged 12": {age: 12}, "turned 70 today": {age: 70}, "80th birthday today": {age: 80}, "12 yrs old": {age: 12}, "71 ans": {age: 71}, "fyller 60 idag": {age: 60}, "10 Jahre alt": {age: 10},
		"lost lady's glove": {age: -1}, "10 years a member": {age: -1}, "10 years": {age: -1}, "first run, great!": {age: -1}, "2nd run": {age: -1}, "5k": {age: -1}, "with a lady friend": {age: -1}, "50th run": {age: -1}, "v good": {age: -1}, "m 4": {age: -1}, "over 40 runs": {age: -1}, "first in the club": {age: -1},
	} {
		r := Reader{}
		if got := r.facts(s); got != want {
			t.Errorf("%q: %+v, want %+v", s, got, want)
		}
	}
	c := NoColumns()
	c.Position, c.Name, c.Time, c.Notes = 0, 1, 2, 3
	lines, _ := readRows(t, c, nil, Options{}, func(yield func([]string)) {
		yield([]string{"1", "Jo Lee", "18:20", "1st V50"})
		yield([]string{"2", "Al Roe (aged 12)", "19:10", "PB"})
		yield([]string{"3", "Mrs Cy Dee", "19:15", ""})
		yield([]string{"4", "Frau Holle", "19:20", "first lady"})
		yield([]string{"5", "Di Fox", "19:20 (U15)", ""})
	})
	ages := func(l Line) (int, int) {
		lo, hi, _ := l.Birth.On(unit.NewDay(2026, 1, 3))
		return lo, hi
	}
	if lo, hi := ages(lines[0]); lo != 50 || hi < 100 {
		t.Error(lo, hi)
	}
	if lo, _ := ages(lines[1]); lo != 12 {
		t.Error(lo)
	}
	if _, hi := ages(lines[4]); hi != 14 || lines[4].Status != OK {
		t.Error(hi, lines[4].Status)
	}
	if lines[2].Sex != W || lines[2].Name != "Cy Dee" || lines[3].Sex != W || lines[0].Sex != NotGiven || lines[1].Sex != NotGiven {
		t.Errorf("%v %q %v %v", lines[2].Sex, lines[2].Name, lines[3].Sex, lines[0].Sex)
	}
}
