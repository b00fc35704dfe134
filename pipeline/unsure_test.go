package pipeline

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// TestLookAhead loads more files than a batch holds. The first one has a slip
// of the pen in its title; the sheets that show it come in a later batch. So it
// asks, whether what was read in looking ahead is kept or the files are read
// twice.
func TestLookAhead(t *testing.T) {
	for _, keep := range []int64{keepAhead, 0} {
		t.Run(fmt.Sprintf("keep %d bytes", keep), func(t *testing.T) {
			defer func(n int64) { keepAhead = n }(keepAhead)
			keepAhead = keep
			dir := t.TempDir()
			sheets := filepath.Join(dir, "sheets")
			if err := os.Mkdir(sheets, 0o755); err != nil {
				t.Fatal(err)
			}
			for i := range batchSheets + 5 {
				title := fmt.Sprintf("Heron Lane %d", i)
				switch {
				case i == 0:
					title = "Alder Bnak"
				case i >= batchSheets:
					title = "Alder Bank"
				}
				text := fmt.Sprintf("%s,%s\n\nposition,name,time\n1,Ines Okafor,24:31\n2,Lotte Brandt,25:10\n", title, unit.NewDay(2020, 1, 4)+unit.Day(7*(i%300)))
				if err := os.WriteFile(filepath.Join(sheets, fmt.Sprintf("%04d.csv", i)), []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			pl := openForTest(t, dir)
			rep, err := pl.Load(context.Background(), []string{sheets}, ByHand{})
			if err != nil {
				t.Fatal(err)
			}
			if s := rep.Sheets[0]; s.State != "waiting" || !strings.Contains(s.Why, "alder-bank") {
				t.Errorf("the first sheet is %s: %s", s.State, s.Why)
			}
			if rep.Loaded != batchSheets+4 || rep.Rows != 2*rep.Loaded {
				t.Errorf("%d sheets with %d lines loaded, want %d", rep.Loaded, rep.Rows, batchSheets+4)
			}
		})
	}
}
