package club

import (
	"fmt"
	"slices"
	"testing"
)

func propose(clubs []Club) map[string]string {
	out := map[string]string{}
	for _, p := range Propose(clubs, func(a, b string) bool { return false }) {
		out[p.Other] = p.Club + ": " + p.Why
	}
	return out
}

func TestPropose(t *testing.T) {
	clubs := []Club{{"Osierholm Harriers", 400}, {"OSIERHOLM HARRIERS", 20}, {"Osierholm H.", 12}, {"O.H.", 5}, {"Osierholm Harirers", 2},
		{"Tarn Athletic Club", 300}, {"Tarn AC", 10}, {"Tarn", 7}, {"Tarn Runners", 90},
		{"Ely Running Club", 50}, {"Elm Running Club", 5}, {"Wick Route 1", 60}, {"Wick Route 2", 3},
		{"Fellgate Striders", 80}, {"Fellgate", 4}, {"FS", 3}, {"Fenwick Sports", 8}, {"Independent", 500}}
	want := map[string]string{
		"OSIERHOLM HARRIERS": "Osierholm Harriers: " + WhySpelling,
		"Osierholm H.":       "Osierholm Harriers: " + WhyShort,
		"O.H.":               "Osierholm Harriers: " + WhyInitials,
		"Osierholm Harirers": "Osierholm Harriers: " + WhySlip,
		"Fellgate":           "Fellgate Striders: " + WhyLeftOut,
		"Tarn AC":            "Tarn Athletic Club: " + WhyShort,
	}
	got := propose(clubs)
	// Tarn has three clubs' names; which it is can't be told. FS are the
	// initials of two clubs, and Ely and Elm, routes 1 and 2 are two each.
	for other, club := range want {
		if got[other] != club {
			t.Errorf("%s is proposed as %q, want %q", other, got[other], club)
		}
	}
	for other, club := range got {
		if want[other] == "" {
			t.Errorf("%s is proposed as %q", other, club)
		}
	}
	slices.Reverse(clubs)
	if again := propose(clubs); fmt.Sprint(again) != fmt.Sprint(got) {
		t.Errorf("in another order: %v, was %v", again, got)
	}
	if left := Propose(clubs, func(a, b string) bool { return a == "O.H." }); len(left) != len(got)-1 {
		t.Errorf("%d proposals with one settled, want %d", len(left), len(got)-1)
	}
}

func TestOldNames(t *testing.T) {
	m := NewMoves()
	for r := range int32(10) { // ten of club 1 are of club 2 from day 100 on
		m.Ran([]int32{1, 1, 0, 2, 2}, []int32{r, 50, 60, 100 + r, 200})
	}
	for range 3 { // some had been of club 3, and went different ways
		m.Ran([]int32{3, 2}, []int32{10, 120})
		m.Ran([]int32{3, 4}, []int32{10, 120})
	}
	for r := range int32(8) { // club 5 lives on while many leave it
		m.Ran([]int32{5, 6}, []int32{10 + r, 20 + r})
	}
	m.Ran([]int32{5}, []int32{300})
	if old := m.OldNames(); len(old) != 1 || old[1] != 2 {
		t.Errorf("old names %v, want only 1 for 2", old)
	}
}
