package pipeline

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"lapwing/pipeline/scenario"
)

// TestNumbersEverywhereAgainstTruth measures who is who on a club whose sheets
// all print numbers, whole: written, read, linked. In this one two regulars of
// one rare name have a number each and births that meet.
// LAPWING_NUMBERED="8131 8132" takes other seeds.
func TestNumbersEverywhereAgainstTruth(t *testing.T) {
	if testing.Short() {
		t.Skip("loads a club of 2 500 people: run without -short")
	}
	seeds := strings.Fields(os.Getenv("LAPWING_NUMBERED"))
	if len(seeds) == 0 {
		seeds = []string{"7031"}
	}
	for _, text := range seeds {
		seed, err := strconv.ParseUint(text, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		truth, err := scenario.District(dir, scenario.DistrictOptions{Seed: seed, Numbers: scenario.AllNumbers, WrongAge: -1, WrongSex: -1, Namesakes: -1})
		if err != nil {
			t.Fatal(err)
		}
		pl := openForTest(t, dir)
		loadForTest(t, pl, filepath.Join(dir, "sheets"))
		s := scoreAgainst(t, pl, truth)
		t.Logf("seed %d: precision %.5f, recall %.5f", seed, s.precision, s.recall)
		if s.precision < .9998 || s.recall < .999 {
			t.Errorf("seed %d: precision %.5f, recall %.5f; want at least .9998, .999", seed, s.precision, s.recall)
		}
	}
}
