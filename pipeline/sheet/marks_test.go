package sheet

import (
	"fmt"
	"testing"

	"github.com/xuri/excelize/v2"
)

// A row struck through, a time struck through for which no other stands, and a sign that a line
// explains, are told as notes.
func TestRemarksThatNoColumnHolds(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		for i, row := range [][]string{{"Pos", "Name", "Time"}, {"1", "Jo Lee", "18:20"}, {"2", "Al Roe *", "18:31"}, {"3", "Cy Dee", "19:02"}, {"4", "Di Fox", "19:40"}, {"* disqualified"}} {
			for j, c := range row {
				if err := f.SetCellStr("Sheet1", fmt.Sprintf("%c%d", 'A'+j, i+1), c); err != nil {
					t.Fatal(err)
				}
			}
		}
		struck, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true}})
		if err != nil {
			t.Fatal(err)
		}
		for _, cells := range [][2]string{{"A4", "C4"}, {"C5", "C5"}} {
			if err := f.SetCellStyle("Sheet1", cells[0], cells[1], struck); err != nil {
				t.Fatal(err)
			}
		}
	})
	s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
	if err != nil || len(s.Parts) != 1 {
		t.Fatalf("%v, %d parts", err, len(s.Parts))
	}
	p := s.Parts[0]
	notes, got := p.Index(Notes), map[int]string{}
	if err := p.Each(func(row int, cells []string) error { got[row] = cells[notes]; return nil }); err != nil {
		t.Fatal(err)
	}
	for row, want := range map[int]string{2: "", 3: "disqualified", 4: "struck through", 5: "struck through in part"} {
		if got[row] != want {
			t.Errorf("row %d: %q, want %q", row, got[row], want)
		}
	}
}

// Decimals under "Age" are ages where they don't fall as the times rise, age grades where they do.
func TestAgesInTenths(t *testing.T) {
	for _, c := range []struct {
		of   func(i int) float64
		want Meaning
	}{{func(i int) float64 { return 20 + float64(i*37%50) + .5 }, Age}, {func(i int) float64 { return 85 - float64(i) + float64(i*37%11) + .5 }, AgeGrade}} {
		text := "Pos,Name,Age,Time\n"
		for i := range 30 {
			text += fmt.Sprintf("%d,Jo Lee%c,%.1f,%d:%02d\n", i+1, 'a'+i%26, c.of(i), 18+i/2, i*2)
		}
		s, err := Read("alder-bank_2026-01-03.csv", []byte(text), Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%v, %d parts", err, len(s.Parts))
		}
		if got := s.Parts[0].Columns[2].Meaning; got != c.want {
			t.Errorf("read as %v, want %v", got, c.want)
		}
	}
}

// A row struck through is told where a merged cell is spread over its rows and the table laid
// out anew.
func TestStruckRowBesideMergedCell(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		for i, row := range [][]string{{"Pos", "Name", "Time", "Club"}, {"1", "Jo Lee", "18:20", "Elmfold Harriers"}, {"2", "Al Roe", "18:31"}, {"3", "Cy Dee", "19:02", "Fernhollow"}, {"4", "Di Fox", "19:40", "Fernhollow"}} {
			for j, c := range row {
				if err := f.SetCellStr("Sheet1", fmt.Sprintf("%c%d", 'A'+j, i+1), c); err != nil {
					t.Fatal(err)
				}
			}
		}
		struck, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Strike: true}})
		if err != nil {
			t.Fatal(err)
		}
		if err := f.SetCellStyle("Sheet1", "A4", "D4", struck); err != nil {
			t.Fatal(err)
		}
		if err := f.MergeCell("Sheet1", "D2", "D3"); err != nil {
			t.Fatal(err)
		}
	})
	s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
	if err != nil || len(s.Parts) != 1 {
		t.Fatalf("%v, %d parts", err, len(s.Parts))
	}
	p := s.Parts[0]
	notes, club := p.Index(Notes), p.Index(Club)
	if notes < 0 || club < 0 {
		t.Fatalf("columns %v", p.Columns)
	}
	got := map[int][2]string{}
	if err := p.Each(func(row int, cells []string) error { got[row] = [2]string{cells[club], cells[notes]}; return nil }); err != nil {
		t.Fatal(err)
	}
	for row, want := range map[int][2]string{3: {"Elmfold Harriers", ""}, 4: {"Fernhollow", "struck through"}, 5: {"Fernhollow", ""}} {
		if got[row] != want {
			t.Errorf("row %d: %q, want %q", row, got[row], want)
		}
	}
}

// A row that somebody has hidden is pointed out; rows that a filter hides, or that are many, are not.
func TestHiddenRows(t *testing.T) {
	for name, c := range map[string]struct {
		hidden []int
		filter bool
		want   int
	}{"none": {nil, false, 0}, "one": {[]int{4}, false, 1}, "many": {[]int{2, 3, 4, 5}, false, 0}, "by a filter": {[]int{4}, true, 0}} {
		data := workbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"}, []any{3, "Cy Dee", "19:02"}, []any{4, "Di Fox", "19:31"}, []any{5, "Ed Gow", "19:40"})
			if c.filter {
				if err := f.AutoFilter("Sheet1", "A1:C6", []excelize.AutoFilterOptions{{Column: "B", Expression: "x != Cy*"}}); err != nil {
					t.Fatal(err)
				}
			}
			for _, row := range c.hidden {
				if err := f.SetRowVisible("Sheet1", row, false); err != nil {
					t.Fatal(err)
				}
			}
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%s: %v, %d parts", name, err, len(s.Parts))
		}
		got := 0
		for _, p := range s.Parts[0].Problems {
			if p.Kind == "row-hidden" {
				got++
			}
		}
		if got != c.want {
			t.Errorf("%s: %d told, want %d", name, got, c.want)
		}
	}
}

// A note over the table that says that the times have to be changed is asked about.
func TestTimesOffInNote(t *testing.T) {
	for note, want := range map[string]bool{"clock started late, add 20 seconds to all": true, "20 seconds added to all": false} {
		data := workbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"})
			if err := f.AddComment("Sheet1", excelize.Comment{Cell: "C1", Text: note}); err != nil {
				t.Fatal(err)
			}
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%v, %d parts", err, len(s.Parts))
		}
		if got := s.Parts[0].says("times-to-be-changed", 1); got != want {
			t.Errorf("%q: asked %v, want %v", note, got, want)
		}
	}
}

// Further signs of footnotes, at a name, a place or a time, and figures in brackets; a plus behind an age is none.
func TestSignsThatALineExplains(t *testing.T) {
	for _, k := range []struct{ second, line, note string }{
		{"2|Al Roe^|18:31", "^ result void", "result void"},
		{"2|Al Roe+|18:31", "+ ran only one lap", "ran only one lap"},
		{"2|Al Roe (1)|18:31", "(1) disqualified", "disqualified"},
		{"2|Al Roe(x)|18:31", "(x) = did not finish", "did not finish"},
		{"2#|Al Roe|18:31", "# = short cut, not counted", "short cut, not counted"},
		{"2+|Al Roe|18:31", "+ only one lap", "only one lap"},
		{"2|Al Roe|18:31¹", "¹ disqualified", "disqualified"},
		{"2|Al Roe**|18:31", "** = DQ", "DQ"},
		{"2 *|Al Roe|18:31", "* only one lap", "only one lap"},
		{"2|Al Roe (1)|18:31", "(2) disqualified", ""},
		{"2|Al Roe|18:31", "+ only one lap", ""},
	} {
		text := "Pos|Name|Time\n1|Jo Lee|18:20\n" + k.second + "\n3|Cy Dee|19:02\n4|Di Fox|19:40\n\n" + k.line + "\n"
		got := cellsOf(t, text, Notes)
		if len(got) != 4 || got[1] != k.note || got[0]+got[2] != "" {
			t.Errorf("%s, %s: %q", k.second, k.line, got)
		}
	}
	if got := cellsOf(t, "Pos|Name|Cat|Time\n1|Jo Lee|V40+|18:20\n2|Al Roe|V50+|18:31\n3|Cy Dee|V40|19:02\n4|Di Fox|V60+|19:40\n\n+ only one lap\n", Notes); len(got) != 4 || got[0]+got[1]+got[2]+got[3] != "" {
		t.Errorf("ages: %q", got)
	}
	if got := cellsOf(t, "Pos|Name|Time\n1|Jo Lee|18:20\n2|+Al Roe|18:31\n3|Cy Dee|19:02\n4|+Di Fox|19:40\n\n+ women\n", Sex); len(got) != 4 || got[1] != "women" || got[3] != "women" {
		t.Errorf("before the names: %q", got)
	}
}

// A line over rows that says boys and men, in words of any language that say nothing else, says the sex of those below;
// as the name of a tab does, in a letter where there is one for each sex, and as ages do.
func TestSexesOverRows(t *testing.T) {
	for _, k := range [][2]string{{"Herren", "Damen"}, {"Boys & Men", "Girls & Women"}, {"Male", "Female"}} {
		text := "Pos|Name|Time\n" + k[0] + "\n1|Jo Lee|18:20\n4|Al Roe|18:51\n" + k[1] + "\n2|Cy Dee|18:32\n3|Di Fox|18:40\n"
		if got := cellsOf(t, text, Position, Sex); fmt.Sprint(got) != fmt.Sprintf("[1 %s 4 %s 2 %s 3 %s]", k[0], k[0], k[1], k[1]) {
			t.Errorf("%s: %q", k, got)
		}
	}
	for _, k := range []struct {
		tabs    [2]string
		meaning Meaning
		want    string
	}{
		{[2]string{"M", "F"}, Sex, "M M F F"}, {[2]string{"M20-34", "F20-34"}, AgeGroup, "M20-34 M20-34 F20-34 F20-34"}, {[2]string{"20-34", "35-49"}, AgeGroup, "20-34 20-34 35-49 35-49"}, {[2]string{"20-34", "50+"}, AgeGroup, "20-34 20-34 50+ 50+"},
		{[2]string{"M", "Sheet2"}, Sex, ""}, {[2]string{"1-50", "51-99"}, AgeGroup, ""},
	} {
		data := workbook(t, func(f *excelize.File) {
			for i, tab := range k.tabs {
				if err := f.SetSheetName(fmt.Sprintf("Sheet%d", i+1), tab); err != nil {
					t.Fatal(err)
				}
				if i == 0 {
					if _, err := f.NewSheet("Sheet2"); err != nil {
						t.Fatal(err)
					}
				}
				rows := [][][]string{{{"Pos", "Name", "Time"}, {"1", "Jo Lee", "18:20"}, {"2", "Al Roe", "18:51"}}, {{"Pos", "Name", "Time"}, {"1", "Cy Dee", "18:32"}, {"2", "Di Fox", "18:40"}}}[i]
				for r, row := range rows {
					for c, cell := range row {
						if err := f.SetCellStr(tab, fmt.Sprintf("%c%d", 'A'+c, r+1), cell); err != nil {
							t.Fatal(err)
						}
					}
				}
			}
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, p := range s.Parts {
			at := p.Index(k.meaning)
			if err := p.Each(func(_ int, cells []string) error { got += cellAt(cells, at) + " "; return nil }); err != nil {
				t.Fatal(err)
			}
		}
		if got = trim(got); got != k.want {
			t.Errorf("%s: %q, want %q", k.tabs, got, k.want)
		}
	}
}

// A cell of blanks that are no spaces has no sign.
func TestSignOfBlank(t *testing.T) {
	for cell, want := range map[string]string{"\u00a0": "", "": "", "Jo Lee*": "*", "Jo Lee (1)": "(1)", "Jo Lee (12)": ""} {
		if got := signOf(cell); got != want {
			t.Errorf("%q: %q, want %q", cell, got, want)
		}
	}
}

// The ages of children in words are no distances in front of their groups.
func TestYearOldsAreNoDistances(t *testing.T) {
	if got := cellsOf(t, "Pos|Name|Age group|Time\n1|Jo Lee|11-year-olds|18:20\n2|Al Roe|12-year-olds|18:31\n3|Cy Dee|9-year-olds|19:02\n4|Di Fox|11-year-olds|19:40\n", AgeGroup); fmt.Sprint(got) != "[11-year-olds 12-year-olds 9-year-olds 11-year-olds]" {
		t.Errorf("%q", got)
	}
	s, err := Read("alder-bank_2026-01-03.csv", []byte("Pos,Name,Age group,Time\n1,Jo Lee,11-year-olds,18:20\n2,Al Roe,12-year-olds,18:31\n3,Cy Dee,9-year-olds,19:02\n4,Di Fox,11-year-olds,19:40\n"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range s.Problems {
		if p.Kind == distancesDiffer {
			t.Error(p)
		}
	}
}

// What stands in a second column of notes is kept behind the first, and rows under a line that says that they
// were added say so.
func TestNotesOfSeveralColumns(t *testing.T) {
	for text, want := range map[string]string{
		"Pos,Name,Time,New?,Notes\n1,Jo Lee,18:20,Y,fell on lap 2\n2,Al Roe,18:31,,DNF\n3,Cy Dee,18:40,Y,\n":                          "Y; fell on lap 2 | DNF | Y | ",
		"Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nLate entries\n,Di Fox,18:35\n":                              " |  |  | added later, under “Late entries” | ",
		"Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,18:40\n\nLate entries\n4,Di Fox,18:45\n\nHandcycles\n,Ed Gow,9:35\n": " |  |  |  | ",
	} {
		s, err := Read("alder-bank_2026-01-03.csv.txt", []byte(text), Options{})
		if err != nil || len(s.Parts) != 1 || s.Parts[0].Course.Value != "alder-bank" {
			t.Fatalf("%q: %v, %v", text, err, s)
		}
		p, got := s.Parts[0], ""
		if err := p.Each(func(_ int, cells []string) error { got += cellAt(cells, p.Index(Notes)) + " | "; return nil }); err != nil {
			t.Fatal(err)
		}
		if got != want {
			t.Errorf("%q: notes %q, want %q", text, got, want)
		}
	}
}
