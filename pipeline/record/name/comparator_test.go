package name

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"
)

//go:embed testdata/comparator.csv
var comparatorCSV string

// 600 made-up pairs as jellyfish 0.8.9, a general-purpose package of string
// measures (BSD licence, Debian's python3-jellyfish), has them; the script is
// beside the file. It raises Jaro's measure for a common beginning only above
// .7, as in Winkler's later code; here, as in Winkler (1990), it is always
// raised. Below .7 Jaro's measure itself is compared.
func TestComparatorAgreesWithJellyfish(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(comparatorCSV)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 601 {
		t.Fatalf("%d lines, want a heading and 600 pairs", len(rows))
	}
	raised := 0
	for _, r := range rows[1:] {
		wantJaro, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		wantWinkler, err := strconv.ParseFloat(r[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		if got := jaro([]rune(r[0]), []rune(r[1])); math.Abs(got-wantJaro) > 1e-9 {
			t.Errorf("jaro(%s, %s) = %.12f, jellyfish %.12f", r[0], r[1], got, wantJaro)
		}
		if wantJaro <= .7 {
			continue
		}
		if wantWinkler > wantJaro {
			raised++
		}
		if got := JaroWinkler(r[0], r[1]); math.Abs(got-wantWinkler) > 1e-9 {
			t.Errorf("JaroWinkler(%s, %s) = %.12f, jellyfish %.12f", r[0], r[1], got, wantWinkler)
		}
	}
	if raised < 200 {
		t.Fatalf("only %d pairs with a common beginning", raised)
	}
}
