package sheet

import (
	"fmt"
	"testing"
	"time"
)

// What is known at a glance is what a longer look finds, for every plain clock and day.
func TestKindAtAGlance(t *testing.T) {
	check := func(cell string, want kind) {
		if got := kindOfAny(cell); got != want || kindOf(cell) != want {
			t.Fatalf("%q: kind %d at a glance, %d at a longer look, want %d", cell, kindOf(cell), got, want)
		}
	}
	for m := range 100 {
		for s := range 60 {
			check(fmt.Sprintf("%d:%02d", m, s), kClock)
			check(fmt.Sprintf("%02d:%02d", m, s), kClock)
			for h := range 12 {
				if m < 60 {
					check(fmt.Sprintf("%d:%02d:%02d", h, m, s), kClock)
					check(fmt.Sprintf("%02d:%02d:%02d", h, m, s), kClock)
				}
			}
		}
	}
	for day := time.Date(firstYear, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() <= lastYear; day = day.AddDate(0, 0, 1) {
		check(day.Format("2006-01-02"), kDate)
	}
	for _, odd := range []string{"1:7", "1:60", "123:45", "1:2:03:04", "1:61:00", "2026-13-01", "2026-02-30", "1949-01-01", "2026-1-1"} {
		if kindOf(odd) != kindOfAny(odd) {
			t.Errorf("%q: kind %d, at a longer look %d", odd, kindOf(odd), kindOfAny(odd))
		}
	}
}
