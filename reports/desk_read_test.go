package reports

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// fill opens the desk workbook, fills in boxes by heading on the line of a
// place, and saves it.
func fill(t *testing.T, path, onPlace string, boxes map[string]any) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows(linesTab, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	var heads []string
	done := 0
	for i, r := range rows {
		switch {
		case len(r) > 3 && r[0] == "Place":
			heads = r
		case heads != nil && r[0] == onPlace:
			for c, h := range heads {
				v, ok := boxes[h]
				if !ok {
					continue
				}
				cell, err := excelize.CoordinatesToCellName(c+1, i+1)
				if err != nil {
					t.Fatal(err)
				}
				if err := f.SetCellValue(linesTab, cell, v); err != nil {
					t.Fatal(err)
				}
				done++
			}
		}
	}
	if done != len(boxes) {
		t.Fatalf("filled %d of %d boxes", done, len(boxes))
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
}

func TestReadDesk(t *testing.T) {
	db, last := district(t, 6, 40, true)
	fresh := func() string { return writeWeekly(t, db, t.TempDir(), t.TempDir(), last)[1] }
	path := fresh()
	if c, err := ReadDesk(path); err != nil || len(c) != 0 {
		t.Fatalf("an untouched workbook gives %v, %v", c, err)
	}
	fill(t, path, "5", map[string]any{boxTime: "24:31", boxWhy: "hand time"})
	fill(t, path, "7", map[string]any{boxName: "=Ada Quill", boxGroup: "W40", boxStrike: "not a finisher"})
	// A program that made hours and minutes of 25:02, and one that made a duration.
	fill(t, path, "8", map[string]any{boxTime: (25*3600 + 2*60) / 86400.0})
	fill(t, path, "9", map[string]any{boxTime: (25*60 + 3) / 86400.0, boxPlace: 10})
	c, err := ReadDesk(path)
	if err != nil || len(c) != 4 {
		t.Fatalf("%d corrections, %v", len(c), err)
	}
	if a := c[0]; a.RightTime != "24:31" || a.Remark != "hand time" || a.Row != 6 || !strings.HasPrefix(a.Sheet, "heron-mere_") || a.Name == "" || a.Time == "" {
		t.Errorf("first correction %+v", a)
	}
	if b := c[1]; b.RightName != "=Ada Quill" || b.Group != "W40" || b.Strike != "not a finisher" || b.RightTime != "" {
		t.Errorf("second correction %+v", b)
	}
	if c[2].RightTime != "25:02" || c[3].RightTime != "25:03" || c[3].Position != "10" {
		t.Errorf("times %q and %q, place %q", c[2].RightTime, c[3].RightTime, c[3].Position)
	}
	for _, bad := range []struct {
		boxes map[string]any
		want  string
	}{
		{map[string]any{boxSex: "F"}, `"F" is not one of: M, W, X, not given`},
		{map[string]any{boxPlace: "third"}, `"third" is no place`},
		{map[string]any{boxTime: 2431}, `"2431" is no time; write it as 24:31`},
		{map[string]any{boxTime: 25.5}, `"25.5" is no time; write it as 24:31`},
		{map[string]any{boxWhy: "x", headRow: "?"}, "has lost its sheet or row"},
		{map[string]any{boxTaking: "tortoise"}, `"tortoise" is not one of: runner`},
	} {
		path := fresh()
		fill(t, path, "5", bad.boxes)
		c, err := ReadDesk(path)
		if err == nil || !strings.Contains(err.Error(), bad.want) || !strings.Contains(err.Error(), linesTab+"!") || c != nil {
			t.Errorf("%v: %v, %v", bad.boxes, c, err)
		}
	}
	public := writeWeekly(t, db, t.TempDir(), t.TempDir(), last)[0]
	if _, err := ReadDesk(public); err == nil || !strings.Contains(err.Error(), "no workbook of the results desk") {
		t.Errorf("the public workbook: %v", err)
	}
}

// A time with a dot is read as on sheets; one that may have lost a zero is not.
func TestDottedTimeBox(t *testing.T) {
	for in, want := range map[string]string{"25.52": "25:52", "25,08": "25:08", "9.59": "9:59", "25.75": "", "25.5": "", "2.31": "", "0.0170255": "24:31", "24:31": "24:31"} {
		got, err := clockBox(in)
		if want == "" {
			if err == nil && got == strings.Replace(in, ".", ":", 1) {
				t.Errorf("%s became %s", in, got)
			}
		} else if got != want || err != nil {
			t.Errorf("%s became %q, %v; want %s", in, got, err, want)
		}
	}
}
