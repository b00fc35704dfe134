// Package agegrade compares running times across ages and sexes by the
// road-running age standards.
//
//	age standard = open standard / age factor
//	age grade    = 100 × age standard / time
//
// The open standard is the time in seconds that the table holds for the best
// adults at a distance, the age factor (at most 1) says how much of that speed
// is left at an age. Figures, source and licence: README.md beside this file.
//
// There is no standard, and so no grade, for ages outside 5 to 100, for
// distances outside the edition's table, and for anybody who is neither M nor
// W: nothing is extrapolated.
package agegrade

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// MinAge and MaxAge bound the ages that the tables cover, in whole years.
const (
	MinAge = 5
	MaxAge = 100
)

// Default is the edition in force unless the settings name another.
const Default = 2025

//go:embed road.csv
var roadCSV string

// Table is one edition of the road standards. It is read-only and may be used
// from several goroutines.
type Table struct {
	edition int
	men     []standard // by ascending distance
	women   []standard
}

// standard is a tabled distance of one sex.
type standard struct {
	metres float64
	open   float64                      // seconds
	factor [MaxAge - MinAge + 1]float64 // by age
}

var editions = sync.OnceValues(func() (map[int]*Table, error) { return parse(roadCSV) })

// Editions lists the editions there are, oldest first.
func Editions() []int {
	t, err := editions()
	if err != nil {
		return nil
	}
	var out []int
	for e := range t {
		out = append(out, e)
	}
	slices.Sort(out)
	return out
}

// Edition gives the table of 2010, 2015, 2020 or 2025.
func Edition(edition int) (*Table, error) {
	t, err := editions()
	if err != nil {
		return nil, err
	}
	if t[edition] == nil {
		return nil, fmt.Errorf("there is no %d edition of the road age standards; there are %s",
			edition, strings.Trim(fmt.Sprint(Editions()), "[]"))
	}
	return t[edition], nil
}

// Year is the edition of the table.
func (t *Table) Year() int { return t.edition }

func parse(road string) (map[int]*Table, error) {
	rows, err := csv.NewReader(strings.NewReader(road)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("road age standards: %w", err)
	}
	tables := map[int]*Table{}
	for i, row := range rows[1:] {
		var s standard
		num := func(col int) (v float64) {
			if err == nil {
				if v, err = strconv.ParseFloat(row[col], 64); err != nil {
					err = fmt.Errorf("road age standards, line %d: %w", i+2, err)
				}
			}
			return v
		}
		// 1.609344 km and the like are not exact in binary: to the millimetre.
		edition, metres := int(num(0)), math.Round(num(2)*1e6)/1e3
		s.metres, s.open = metres, num(3)
		for a := range s.factor {
			s.factor[a] = num(4 + a)
		}
		if err != nil {
			return nil, err
		}
		t := tables[edition]
		if t == nil {
			t = &Table{edition: edition}
			tables[edition] = t
		}
		list := t.sex(row[1])
		if list == nil {
			return nil, fmt.Errorf("road age standards, line %d: sex %q", i+2, row[1])
		}
		*list = append(*list, s)
	}
	for _, t := range tables {
		for _, l := range [][]standard{t.men, t.women} {
			slices.SortFunc(l, func(a, b standard) int { return int(a.metres - b.metres) })
		}
	}
	return tables, nil
}

func (t *Table) sex(sex string) *[]standard {
	switch sex {
	case "M":
		return &t.men
	case "W":
		return &t.women
	}
	return nil
}
