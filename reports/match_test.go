package reports

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

var (
	matchPairWords = []string{"same person", "different people", "leave"}
	matchLetters   = []string{"A", "B", "leave"}
	matchFitWords  = []string{"theirs", "not theirs", "leave"}
)

// hostileMatch is a list with texts that a spreadsheet could take for formulas.
func hostileMatch() *MatchBook {
	side := func(shown, facts string) MatchSide {
		return MatchSide{Shown: shown, Facts: facts, History: "3 lines, 2026-01-03 to 2026-01-17", Results: "2026-01-17 Alder Bank 24:31"}
	}
	return &MatchBook{Made: "2026-01-17", Version: "0.1", Found: 70, Join: [2]float64{2.5, 9},
		Pairs: []MatchPairRow{
			{"R1 R40 7 aaaaaaaa bbbbbbbb 11111111", side("R1 Ann Moss", `W; born 1984; =HYPERLINK("x")`), side("R40 @Moss", "=1+1"),
				[]MatchEvidence{{7, "to start with", -9.1}, {0, "given names alike", 3}, {0, "=2+2", 4}, {2, "ages fit", 4.7}}, 2.6, 78.2},
			{"R2 R41 7 aaaaaaaa bbbbbbbb 22222222", side("=R2 Bo", "+M"), side("-R41 Bo", "@M"), []MatchEvidence{{7, "+start", -9.1}}, -9.1, .2},
		},
		Pieces: []MatchPieceRow{{"p R2 R1+R2+R41 7 aaaaaaaa 55555555", "1: R1, R2, R41", side("R2 =Bo", "M"), 40}},
		Lines:  []MatchLineRow{{"q3.0.24 R1+R40 7 33333333", `=cmd|'/c'!A1.csv:24: 2026-01-03 Alder Bank, Ann Moss`, "R1 Ann Moss; or R40 Ann Moss", "R1, R40, none of these, leave"}},
		Fits:   []MatchLineRow{{"f3.0.25 R1 7 44444444", "-x.csv:25: Ann Moss", "R1 Ann Moss", "theirs, not theirs, leave"}},
	}
}

func writeMatch(t *testing.T, b *MatchBook, dir string) string {
	t.Helper()
	data, err := b.Write(matchPairWords, matchLetters, matchFitWords)
	if err != nil {
		t.Fatal(err)
	}
	again, err := b.Write(matchPairWords, matchLetters, matchFitWords)
	if err != nil || !bytes.Equal(data, again) {
		t.Fatalf("the same list gives other bytes (%v)", err)
	}
	path := filepath.Join(dir, "who.xlsx")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// wantAnswers fails unless a workbook reads back as the five rows of
// hostileMatch, with the answers given.
func wantAnswers(t *testing.T, path string, answers ...string) {
	t.Helper()
	got, err := ReadMatch(path, "who.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 5 || len(answers) != 5 {
		t.Fatalf("%d rows and %d answers, want 5", len(got), len(answers))
	}
	b := hostileMatch()
	want := [][3]string{{b.Pairs[0].Code, b.Pairs[0].First.Shown, b.Pairs[0].Second.Shown}, {b.Pairs[1].Code, b.Pairs[1].First.Shown, b.Pairs[1].Second.Shown},
		{b.Pieces[0].Code, b.Pieces[0].Question, b.Pieces[0].Runner.Shown},
		{b.Lines[0].Code, b.Lines[0].Line, b.Lines[0].Runners}, {b.Fits[0].Code, b.Fits[0].Line, b.Fits[0].Runners}}
	for i, g := range got {
		if now := [3]string{g.Code.Text, g.First.Text, g.Second.Text}; now != want[i] {
			t.Errorf("row %d: %q, want %q", i, now, want[i])
		}
		if g.Answer.Text != answers[i] {
			t.Errorf("row %d: answer %q, want %q", i, g.Answer.Text, answers[i])
		}
	}
	if at := got[1].Answer.Place.String(); at != "who.xlsx:Pairs!E6" {
		t.Errorf("the second answer stands in %s", at)
	}
}

func TestMatchWorkbook(t *testing.T) {
	path := writeMatch(t, hostileMatch(), t.TempDir())
	wantAnswers(t, path, "", "", "", "", "")
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, tab := range f.GetSheetList() {
		rows, err := f.GetRows(tab)
		if err != nil {
			t.Fatal(err)
		}
		for r := range rows {
			for c := range rows[r] {
				at, _ := excelize.CoordinatesToCellName(c+1, r+1)
				if formula, err := f.GetCellFormula(tab, at); err != nil || formula != "" {
					t.Errorf("%s!%s is the formula %q (%v)", tab, at, formula, err)
				}
			}
		}
	}
	for tab, want := range map[string]string{"Pairs": "same person,different people,leave", "Several": "A,B,leave", "Bad fits": "theirs,not theirs,leave"} {
		list, err := f.GetDataValidations(tab)
		if err != nil || len(list) != 1 || strings.Trim(list[0].Formula1, `"`) != want {
			t.Errorf("%s: choices %v, %v, want %s", tab, list, err, want)
		}
	}
	rows, _ := f.GetRows("Pairs")
	text := strings.Join(slices.Concat(rows...), "\n")
	for _, want := range []string{"given names alike (+3.0), =2+2 (+4.0)", "ages fit (+4.7)", "to start with (\u22129.1)", "under 1", "24:31"} {
		if !strings.Contains(text, want) {
			t.Errorf("the tab Pairs lacks %q", want)
		}
	}
}

// Filled in and saved by LibreOffice the workbook still reads back, its lists
// of choices are there, and nothing became a formula.
func TestMatchInLibreOffice(t *testing.T) {
	soffice, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("SKIPPED, NOT PASSED: LibreOffice (soffice) is not installed, so nobody has opened the workbook with a second program")
	}
	dir := t.TempDir()
	path := writeMatch(t, hostileMatch(), dir)
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][3]string{{"Pairs", "E5", "same person"}, {"Pairs", "E6", "different people"}, {"Several", "F5", "A"}, {"Namesakes", "D4", "R40"}, {"Bad fits", "D5", "theirs"}} {
		if err := f.SetCellStr(c[0], c[1], c[2]); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Save(); err != nil {
		t.Fatal(err)
	}
	f.Close()
	out := filepath.Join(dir, "saved")
	c := exec.Command(soffice, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"), "--headless", "--convert-to", "xlsx", "--outdir", out, path)
	if msg, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, msg)
	}
	saved := filepath.Join(out, "who.xlsx")
	wantAnswers(t, saved, "same person", "different people", "A", "R40", "theirs")
	g, err := excelize.OpenFile(saved)
	if err != nil {
		t.Fatal(err)
	}
	defer g.Close()
	list, err := g.GetDataValidations("Pairs")
	if err != nil || len(list) == 0 || !strings.Contains(list[0].Formula1, "different people") {
		t.Errorf("the choices are gone: %v, %v", list, err)
	}
	if formula, _ := g.GetCellFormula("Pairs", "B6"); formula != "" {
		t.Errorf("B6 became the formula %q", formula)
	}
}

// A workbook that lost rows or is another one is refused, not half read.
func TestMatchBookDamaged(t *testing.T) {
	dir := t.TempDir()
	path := writeMatch(t, hostileMatch(), dir)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	other := excelize.NewFile()
	if err := other.SetCellStr("Sheet1", "A1", "Decision"); err != nil {
		t.Fatal(err)
	}
	var foreign bytes.Buffer
	if err := other.Write(&foreign); err != nil {
		t.Fatal(err)
	}
	flipped := bytes.Clone(whole)
	for i := len(flipped) / 3; i < len(flipped)/3+40; i++ {
		flipped[i] ^= 0xff
	}
	for name, data := range map[string][]byte{"cut short": whole[:len(whole)/2], "empty": nil, "text": []byte("Decision,Remark\n"), "another workbook": foreign.Bytes(), "flipped bytes": flipped} {
		p := filepath.Join(dir, "bad.xlsx")
		if err := os.WriteFile(p, data, 0o644); err != nil {
			t.Fatal(err)
		}
		if got, err := ReadMatch(p, "bad.xlsx"); err == nil {
			t.Errorf("%s: %d rows were read", name, len(got))
		} else if !strings.HasPrefix(err.Error(), "bad.xlsx:") {
			t.Errorf("%s: the message does not name the file: %v", name, err)
		}
	}
	if _, err := ReadMatch(filepath.Join(dir, "none.xlsx"), "none.xlsx"); err == nil {
		t.Error("a file that is not there was read")
	}
}
