package league

import (
	"cmp"
	"fmt"
	"slices"
)

// Scheme gives points for places.
type Scheme struct {
	First int32   // points of the first
	Step  int32   // fewer for each place after
	Least int32   // but at least this for everybody who scores
	Table []int32 // if not empty, points of the first, second, … place instead; Least after its end
}

// DefaultScheme is 100 for the first, 99 for the second, … and at least 1.
func DefaultScheme() Scheme { return Scheme{First: 100, Step: 1, Least: 1} }

func (s Scheme) check() error {
	if s.Step < 0 || s.Least < 0 || len(s.Table) == 0 && s.First < s.Least {
		return fmt.Errorf("league: points of %d for the first, %d fewer each, at least %d", s.First, s.Step, s.Least)
	}
	for i, p := range s.Table {
		if p < s.Least || i > 0 && p > s.Table[i-1] {
			return fmt.Errorf("league: points table %v rises or falls below %d", s.Table, s.Least)
		}
	}
	return nil
}

// Points of a place, from 1. Those who share a place all have the points of
// the place they share, the higher: 1, 2=, 2=, 4 are 100, 99, 99, 97.
func (s Scheme) Points(place int32) int32 {
	if len(s.Table) > 0 {
		if int(place) <= len(s.Table) {
			return s.Table[place-1]
		}
		return s.Least
	}
	return int32(max(int64(s.Least), int64(s.First)-int64(place-1)*int64(s.Step)))
}

// scorePlaces turns positions of the scorers of one run (any numbers, lower is
// better, equal = tie) into places among them.
func scorePlaces(positions []int32) []int32 {
	order := make([]int, len(positions))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(positions[a], positions[b]) })
	places := make([]int32, len(positions))
	for k, i := range order {
		places[i] = int32(k + 1)
		if k > 0 && positions[i] == positions[order[k-1]] {
			places[i] = places[order[k-1]]
		}
	}
	return places
}
