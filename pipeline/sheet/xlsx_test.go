package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"
	"time"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// Every whole second from 10:00 to 1:59:59 survives as a part of a day, stored
// with 15 significant digits as spreadsheet programs do, and truncated to 15 as
// the spreadsheet library does.
func TestAllTimesSurvive(t *testing.T) {
	for s := 600; s < 7200; s++ {
		v := float64(s) / 86400
		want := fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
		rounded := strconv.FormatFloat(v, 'g', 15, 64)
		exact := strconv.FormatFloat(v, 'f', 25, 64)
		truncated := exact[:strings.IndexFunc(exact, func(r rune) bool { return r >= '1' && r <= '9' })+15]
		for _, stored := range []string{rounded, truncated, strconv.FormatFloat(v, 'g', -1, 64)} {
			if got := numberText(stored, fTime, false); got != want {
				t.Fatalf("%s stored as %s comes back as %s", want, stored, got)
			}
		}
	}
}

// ECMA-376 Part 1, 18.17.4.1 and 18.17.4.2 (date and time representation):
// worked examples of the standard, from memory, and the rule applied by hand.
func TestNumberText(t *testing.T) {
	for _, c := range []struct {
		stored   string
		f        format
		date1904 bool
		want     string
	}{
		{"39448", fDate, false, "2008-01-01"}, {"37986", fDate, true, "2008-01-01"},
		{"1", fDate, false, "1900-01-01"}, {"59", fDate, false, "1900-02-28"}, {"60", fDate, false, "60"}, {"61", fDate, false, "1900-03-01"}, {"0", fDate, true, "1904-01-01"},
		{"2958465", fDate, false, "9999-12-31"},
		{"46025", fDateTime, false, "2026-01-03"}, {"46025.375", fDateTime, false, "2026-01-03T09:00:00"}, {"46025.375", fDate, false, "2026-01-03T09:00:00"},
		{"46024.9999999999", fDate, false, "2026-01-03"}, // rounded to the millisecond first
		{"0.5", fTime, false, "12:00:00"}, {"0.0170254629629630", fTime, false, "0:24:31"}, {"1.0215277777777778", fTime, false, "24:31:00"}, {"1.0215277777777778", fElapsed, false, "24:31:00"}, {"1.0170254629629630", fTime, false, "0:24:31"}, {"1.0170254629629630", fDateTime, false, "1900-01-01T00:24:31"}, {"1.0170254629629630", fElapsed, false, "24:24:31"}, {"0.01702662037037037", fTime, false, "0:24:31.100"},
		{"46025.0170254629630", fTime, false, "0:24:31"}, {"0.0170254629629630", fDateTime, false, "0:24:31"},
		{"0.7", fPlain, false, "0.7"}, {"0.70000000000000007", fPlain, false, "0.7000000000000001"}, {"24.1", fPlain, false, "24.1"}, {"1E+18", fPlain, false, "1e+18"}, {"123456789012345678", fPlain, false, "123456789012345678"}, {"-3", fPlain, false, "-3"}, {"1.5E-2", fPlain, false, "0.015"},
		{"42", fZeros + 4, false, "0042"}, {"12345", fZeros + 4, false, "12345"}, {"4.5", fZeros + 4, false, "4.5"},
		{"text", fDate, false, "text"}, {"NaN", fPlain, false, "NaN"},
	} {
		if got := numberText(c.stored, c.f, c.date1904); got != c.want {
			t.Errorf("%s in format %d (1904 %v) is %q, want %q", c.stored, c.f, c.date1904, got, c.want)
		}
	}
}

func TestNumberFormats(t *testing.T) {
	for code, want := range map[string]format{
		"General": fPlain, "0": fPlain, "0.00": fPlain, "#,##0": fPlain, "0.00E+00": fPlain, "0%": fPlain, `0.0" sec"`: fPlain, `[Red]0.00`: fPlain, "@": fPlain, `"day "0`: fPlain,
		"dd/mm/yyyy": fDate, "d mmm yy": fDate, `[$-809]dd\ mmmm\ yyyy`: fDate, "yyyy-mm-dd": fDate, "mmm": fDate, `[$-F800]dddd, mmmm dd, yyyy`: fDate, `[$-de-DE]TT.MM.JJJJ`: fDate, "dd/mm/yyyy;@": fDate,
		"h:mm": fTime, "mm:ss": fTime, "[h]:mm:ss": fElapsed, "[mm]:ss": fElapsed, "mm:ss.0": fTime, "h:mm AM/PM": fTime, "[ss]": fElapsed, `h"h"mm"m"`: fTime, "hh:mm:ss;@": fTime, `[$-409]h:mm:ss AM/PM`: fTime,
		"dd/mm/yyyy hh:mm": fDateTime, "m/d/yy h:mm": fDateTime,
		"0000": fZeros + 4, "00": fZeros + 2, "000000": fZeros + 6,
	} {
		if got := codeFormat(code); got != want {
			t.Errorf("format %q is %d, want %d", code, got, want)
		}
	}
}

// workbook builds a workbook; set is called with a cell writer per tab.
func workbook(t testing.TB, change func(f *excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	change(f)
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func setRows(t testing.TB, f *excelize.File, tab string, rows ...[]any) {
	t.Helper()
	for i, r := range rows {
		if len(r) == 0 {
			continue
		}
		if err := f.SetSheetRow(tab, fmt.Sprintf("A%d", i+1), &r); err != nil {
			t.Fatal(err)
		}
	}
}

func styled(t testing.TB, f *excelize.File, tab, from, to, code string) {
	t.Helper()
	id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &code})
	if err != nil {
		t.Fatal(err)
	}
	if err := f.SetCellStyle(tab, from, to, id); err != nil {
		t.Fatal(err)
	}
}

func rowsOf(t testing.TB, p *Part) (out []string) {
	t.Helper()
	if err := p.Each(func(row int, cells []string) error {
		out = append(out, fmt.Sprintf("%d: %s", row, strings.Join(cells, "|")))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	return out
}

// Real time and date cells, codes with leading zeros, texts that look like
// numbers, true and false, in both date systems.
func TestWorkbookCells(t *testing.T) {
	for _, date1904 := range []bool{false, true} {
		data := workbook(t, func(f *excelize.File) {
			if err := f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &date1904}); err != nil {
				t.Fatal(err)
			}
			setRows(t, f, "Sheet1", []any{"Alder Bank 5 km"}, []any{"Date", nil}, nil,
				[]any{"Pos", "Name", "Time", "Number", "Born", "Notes", "Club"},
				[]any{1, "Jo Lee", 1100.0 / 86400, 42, nil, true, "=1+1"},
				[]any{2, "Al Roe", 1111.25 / 86400, 12345, nil, "0042", "Bank"})
			serial := func(d unit.Day) float64 {
				if date1904 {
					return float64(d - unit.NewDay(1904, 1, 1))
				}
				return float64(d - unit.NewDay(1899, 12, 30))
			}
			f.SetCellFloat("Sheet1", "B2", serial(unit.NewDay(2026, 1, 3)), -1, 64)
			f.SetCellFloat("Sheet1", "E5", serial(unit.NewDay(1990, 5, 12)), -1, 64)
			f.SetCellFloat("Sheet1", "E6", serial(unit.NewDay(1984, 2, 29)), -1, 64)
			styled(t, f, "Sheet1", "B2", "B2", "dd/mm/yyyy")
			styled(t, f, "Sheet1", "C5", "C6", "[m]:ss.00")
			styled(t, f, "Sheet1", "D5", "D6", "0000")
			styled(t, f, "Sheet1", "E5", "E6", "d mmm yyyy")
		})
		s, err := Read("x.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		p := s.Parts[0]
		got := strings.Join(rowsOf(t, p), "\n")
		want := "5: 1|Jo Lee|0:18:20|0042|1990-05-12|TRUE|=1+1\n6: 2|Al Roe|0:18:31.250|12345|1984-02-29|0042|Bank"
		if got != want {
			t.Errorf("1904 %v:\n%s\nwant\n%s", date1904, got, want)
		}
		if run := p.RunOfFirst(); run != "alder-bank 2026-01-03" {
			t.Errorf("1904 %v: run %s", date1904, run)
		}
	}
}

func TestTabs(t *testing.T) {
	results := func(f *excelize.File, tab string, heading ...any) {
		setRows(t, f, tab, append([]any{}, heading...), []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"})
	}
	t.Run("a tab for each run", func(t *testing.T) {
		data := workbook(t, func(f *excelize.File) {
			f.SetSheetName("Sheet1", "27 Dec")
			for _, tab := range []string{"3 Jan", "10 Jan", "League", "Notes"} {
				f.NewSheet(tab)
			}
			for _, tab := range []string{"27 Dec", "3 Jan", "10 Jan"} {
				results(f, tab, "Alder Bank")
			}
			setRows(t, f, "League", []any{"Rank", "Name", "Points"}, []any{1, "Jo Lee", 300})
			setRows(t, f, "Notes", []any{"A cold winter."})
		})
		s, err := Read("Alder Bank season 2025-26 Saturday.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			got = append(got, p.Tab+": "+p.RunOfFirst())
		}
		if want := "27 Dec: alder-bank 2025-12-27; 3 Jan: alder-bank 2026-01-03; 10 Jan: alder-bank 2026-01-10"; strings.Join(got, "; ") != want {
			t.Errorf("%s\nwant %s", strings.Join(got, "; "), want)
		}
		refused := 0
		for _, p := range s.Problems {
			if p.Kind == "tab-refused" {
				refused++
			}
		}
		if refused != 2 {
			t.Errorf("%d tabs refused, want League and Notes: %v", refused, s.Problems)
		}
	})
	t.Run("tabs named by dates in figures settle each other", func(t *testing.T) {
		data := workbook(t, func(f *excelize.File) {
			f.SetSheetName("Sheet1", "03-01-26")
			f.NewSheet("17-01-26")
			results(f, "03-01-26")
			results(f, "17-01-26")
		})
		s, err := Read("alder-bank.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].RunOfFirst() + ", " + s.Parts[1].RunOfFirst(); got != "alder-bank 2026-01-03, alder-bank 2026-01-17" {
			t.Error(got)
		}
	})
	t.Run("a tab for each course", func(t *testing.T) {
		data := workbook(t, func(f *excelize.File) {
			f.SetSheetName("Sheet1", "Alder Bank")
			f.NewSheet("Mill Lane")
			results(f, "Alder Bank", "Saturday 3 January 2026")
			results(f, "Mill Lane", "Saturday 3 January 2026")
		})
		s, err := Read("results.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := s.Parts[0].RunOfFirst() + ", " + s.Parts[1].RunOfFirst(); got != "alder-bank 2026-01-03, mill-lane 2026-01-03" {
			t.Error(got)
		}
	})
	t.Run("a hidden tab beside a visible one, and alone", func(t *testing.T) {
		for _, alone := range []bool{false, true} {
			data := workbook(t, func(f *excelize.File) {
				f.NewSheet("Old")
				results(f, "Old", "Alder Bank 27 December 2025")
				if alone {
					setRows(t, f, "Sheet1", []any{"Nothing here"})
				} else {
					results(f, "Sheet1", "Alder Bank 3 January 2026")
				}
				if err := f.SetSheetVisible("Old", false); err != nil {
					t.Fatal(err)
				}
			})
			s, err := Read("x.xlsx", data, Options{})
			if err != nil {
				t.Fatal(err)
			}
			want := map[bool]string{false: "Sheet1 false alder-bank 2026-01-03", true: "Old true alder-bank 2025-12-27"}[alone]
			if got := fmt.Sprint(s.Parts[0].Tab, " ", s.Parts[0].Hidden, " ", s.Parts[0].RunOfFirst()); len(s.Parts) != 1 || got != want {
				t.Errorf("alone %v: %d parts, %s, want %s", alone, len(s.Parts), got, want)
			}
		}
	})
	t.Run("merged titles and headings", func(t *testing.T) {
		data := workbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"Alder Bank 5 km, Saturday 3 January 2026"}, []any{"Pos", "Runner", nil, "Result", nil, "Club"}, []any{nil, "First", "Last", "Time", "Cat pos"},
				[]any{1, "Jo", "Lee", "18:20", 1, "Fell"}, []any{2, "Al", "Roe", "18:31", 1, "Fell"}, []any{3, "Cy", "Dee", "18:40", 2})
			for _, m := range [][2]string{{"A1", "F1"}, {"A2", "A3"}, {"B2", "C2"}, {"D2", "E2"}, {"F2", "F3"}, {"F5", "F6"}} {
				if m[0] == "F5" {
					f.SetCellValue("Sheet1", "F6", nil)
				}
				if err := f.MergeCell("Sheet1", m[0], m[1]); err != nil {
					t.Fatal(err)
				}
			}
		})
		s, err := Read("x.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := outcome(s)
		if got.columns != "position given-name family-name time group-place club" || got.run != "alder-bank 2026-01-03" || got.rows != "4-6" {
			t.Errorf("%+v", got)
		}
		if rows := rowsOf(t, s.Parts[0]); rows[2] != "6: 3|Cy|Dee|18:40|2|Fell" {
			t.Errorf("%q: the merged club is missing", rows[2])
		}
	})
}

func TestFormulas(t *testing.T) {
	data := workbook(t, func(f *excelize.File) {
		setRows(t, f, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", nil}, []any{3, "Cy Dee", "19:00"})
		f.SetCellFormula("Sheet1", "C3", `HYPERLINK("http://example.invalid","18:31")`)
	})
	s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if rows := rowsOf(t, s.Parts[0]); rows[1] != "3: 2|Al Roe|" {
		t.Errorf("%q", rows)
	}
	found := false
	for _, p := range s.Problems {
		found = found || p.Kind == "formula-without-value" && p.Place.String() == "alder-bank_2026-01-03.xlsx:Sheet1!C3"
	}
	if !found {
		t.Errorf("no problem for the formula: %v", s.Problems)
	}
	// One cell is untimed; where times or names are missing by the column, the sheet waits.
	for _, tc := range []struct {
		col   string
		cells int
		want  place.Severity
	}{{"C", 2, place.Look}, {"C", 3, place.Waits}, {"B", 6, place.Waits}, {"D", 6, place.Look}} {
		data := workbook(t, func(f *excelize.File) {
			setRows(t, f, "Sheet1", []any{"Pos", "Name", "Time", "Club"}, []any{1, "Jo Lee", "18:20", "Fell"}, []any{2, "Al Roe", "18:31", "Fell"}, []any{3, "Cy Dee", "19:00", "Moor"},
				[]any{4, "Di Fox", "19:31", "Moor"}, []any{5, "Ed Gow", "20:10", "Fell"}, []any{6, "Fi Hay", "20:40", "Fell"})
			for i := range tc.cells {
				cell := fmt.Sprint(tc.col, i+2)
				f.SetCellValue("Sheet1", cell, nil)
				f.SetCellFormula("Sheet1", cell, "VLOOKUP(A2,Z1:Z9,1)")
			}
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		got := place.Severity(0)
		for _, p := range s.Problems {
			if p.Kind == "formula-without-value" {
				got = p.Severity
			}
		}
		if got != tc.want {
			t.Errorf("%d formulas in column %s: %v, want %v", tc.cells, tc.col, got, tc.want)
		}
	}
}

// A text file that a program put into one column is read as the text it holds,
// a person on it can be taken out, and a list of one column stays one.
func TestRowsInOneCell(t *testing.T) {
	lines := []string{"Pos;Name;Club;Time", "1;Ana Silva;\"Moor; Road\";18:31", "2;Bo Lee;;19:02,5", "3;Ana Silva-Reis;;20:00", "4;;;20:11", "", "With thanks to Ana Silva"}
	for _, change := range []func(string) string{
		func(s string) string { return s },
		func(s string) string { return strings.ReplaceAll(s, ";", "\t") },
		func(s string) string { return strings.ReplaceAll(strings.ReplaceAll(s, "02,5", "02.5"), ";", ",") },
	} {
		data := workbook(t, func(f *excelize.File) {
			for i, l := range lines {
				setRows(t, f, "Sheet1", make([][]any, i+1)...)
				f.SetCellStr("Sheet1", fmt.Sprintf("B%d", i+2), change(l))
			}
		})
		o := Options{Course: "x", Date: "2026-01-03"}
		s, err := Read("x.xlsx", data, o)
		if err != nil {
			t.Fatal(err)
		}
		got := rowsOf(t, s.Parts[0])
		want := []string{"3: 1|Ana Silva|Moor; Road|18:31", "4: 2|Bo Lee||19:02,5", "5: 3|Ana Silva-Reis||20:00", "6: 4|||20:11"}
		for i := range want {
			want[i] = strings.NewReplacer("Moor; Road", strings.ReplaceAll(change("\"Moor; Road\""), "\"", ""), "02,5", map[bool]string{true: "02.5", false: "02,5"}[change("02,5") == "02.5"]).Replace(want[i])
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
		now, err := Redact("x.xlsx", data, o, Redaction{Rows: []RowRef{{0, 3}}, Keep: map[Meaning]bool{Position: true, Time: true}, Words: []string{"Ana Silva"}, Text: "(forgotten)"})
		if err != nil {
			t.Fatal(err)
		}
		back, err := excelize.OpenReader(bytes.NewReader(now))
		if err != nil {
			t.Fatal(err)
		}
		for cell, want := range map[string]string{"B3": change("1;(forgotten);;18:31"), "B4": change(lines[2]), "B5": change(lines[3]), "B8": "With thanks to (forgotten)"} {
			if v, _ := back.GetCellValue("Sheet1", cell); v != want {
				t.Errorf("%s is %q, want %q", cell, v, want)
			}
		}
		back.Close()
	}
	for _, list := range [][]string{{"Time", "18:31", "18:40", "19:01"}, {"Name", "Silva, Ana", "Lee, Bo", "Roe, Al"}, {"Runs, walks, jogs, all", "a, b", "c", "d"}} {
		g := newGrid()
		for i, l := range list {
			g.add(i+1, []string{l})
		}
		if one, _, ok := g.rowsInOneCell(newLexicon(Options{}), Limits{}.orDefault()); ok {
			t.Errorf("%q was divided by %q", list, one.delim)
		}
	}
}

// repack changes the members of a workbook.
func repack(t testing.TB, data []byte, change func(name string, body []byte) []byte) []byte {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	for _, m := range zr.File {
		r, err := m.Open()
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if body = change(m.Name, body); body == nil {
			continue
		}
		w, err := zw.Create(m.Name)
		if err != nil {
			t.Fatal(err)
		}
		w.Write(body)
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestHostileWorkbooks(t *testing.T) {
	good := workbook(t, func(f *excelize.File) {
		rows := [][]any{{"Pos", "Name", "Time"}}
		for i := 1; i <= 300; i++ {
			rows = append(rows, []any{i, "Jo Lee", fmt.Sprintf("18:%02d", i%60)})
		}
		setRows(t, f, "Sheet1", rows...)
	})
	sheetXML := "xl/worksheets/sheet1.xml"
	on := func(change func([]byte) []byte) []byte {
		return repack(t, good, func(name string, body []byte) []byte {
			if name == sheetXML {
				return change(body)
			}
			return body
		})
	}
	flipped := append([]byte(nil), good...)
	for i := len(flipped) / 3; i < len(flipped)/3+40; i++ {
		flipped[i] ^= 0x55
	}
	for _, c := range []struct {
		name string
		data []byte
		say  string
	}{
		{"cut short", good[:len(good)/2], "damaged"},
		{"bytes changed", flipped, "damaged"},
		{"the XML stops in the middle", on(func(b []byte) []byte { return b[:len(b)/2] }), "XML is damaged"},
		{"an element is not closed", on(func(b []byte) []byte { return bytes.Replace(b, []byte("</row>"), nil, 1) }), "XML is damaged"},
		{"entity expansion", on(func(b []byte) []byte {
			return append([]byte(`<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>`), b...)
		}), "document type"},
		{"an entity nobody declared", on(func(b []byte) []byte { return bytes.Replace(b, []byte("<v>"), []byte("<v>&bomb;"), 1) }), "XML is damaged"},
		{"a row beyond all rows", on(func(b []byte) []byte { return bytes.Replace(b, []byte(`<row r="9"`), []byte(`<row r="99999999"`), 1) }), "row number"},
		{"a cell name that is none", on(func(b []byte) []byte { return bytes.Replace(b, []byte(`r="A9"`), []byte(`r="#9"`), 1) }), "cell name"},
		{"a column far out", on(func(b []byte) []byte { return bytes.Replace(b, []byte(`r="C9"`), []byte(`r="XFD9"`), 1) }), "columns"},
		{"the tab is missing", repack(t, good, func(name string, body []byte) []byte {
			if name == sheetXML {
				return nil
			}
			return body
		}), "refused"},
		{"a bomb", repack(t, good, func(name string, body []byte) []byte {
			if name == "xl/theme/theme1.xml" {
				return bytes.Repeat([]byte(" "), 200<<20)
			}
			return body
		}), "larger than"},
		{"a bomb in the tab", on(func(b []byte) []byte {
			return bytes.Replace(b, []byte("</sheetData>"), append(bytes.Repeat([]byte("<row/>"), 1<<21), []byte("</sheetData>")...), 1)
		}), "rows allowed"},
	} {
		started := time.Now()
		s, err := Read(c.name+".xlsx", c.data, Options{Course: "x", Date: "2026-01-03"})
		if err == nil || !strings.Contains(err.Error(), c.say) {
			n := 0
			if s != nil && len(s.Parts) > 0 {
				n = len(rowsOf(t, s.Parts[0]))
			}
			t.Errorf("%s: %v (%d rows), want something with %q", c.name, err, n, c.say)
		}
		if d := time.Since(started); d > 20*time.Second {
			t.Errorf("%s took %v", c.name, d)
		}
	}
}

func FuzzCell(f *testing.F) {
	for _, s := range []string{"46025.375", "0.0170254629629630", "-1", "1e308", "60", "2958466", "0042", "NaN", "1.0215277777777778", "70.001"} {
		f.Add(s, uint8(1), false)
		f.Add(s, uint8(2), true)
	}
	f.Fuzz(func(t *testing.T, stored string, kind uint8, date1904 bool) {
		ft := format(kind % (uint8(fZeros) + maxZeros))
		got := numberText(stored, ft, date1904)
		v, err := strconv.ParseFloat(strings.TrimSpace(stored), 64)
		if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
			return
		}
		if ft == fPlain {
			if back, err := strconv.ParseFloat(got, 64); err != nil || back != v {
				t.Fatalf("%q became %q", stored, got)
			}
		}
		if (ft == fTime || ft == fElapsed) && v >= 0 && v*24 < 1000 { // no running time has four figures of hours
			if !isClock(got) {
				t.Fatalf("%q became %q, which is no time", stored, got)
			}
		}
		codeFormat(stored)
	})
}

// Every token of XML that is read is the one that encoding/xml reads.
func FuzzXML(f *testing.F) {
	for _, s := range []string{
		`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>` + "\r\n" + `<a:b c="1" d='&lt;&#x41;&#10;'><e/><f>x &amp; y<!-- no --><![CDATA[<z>]]></f></a:b>`,
		`<row r="1" spans="1:3"><c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><t xml:space="preserve"> Zoë </t></is></c></row>`,
		"<a>\r\nb\rc</a >", `<a b = "x" c='>'/>`, `<a>]]></a>`, `<a><b></a></b>`, `<a>&bomb;</a>`, "<a>\xff</a>", `<a b=c/>`, `<?xml version='1.1'?><a/>`, `<a><!-- a -- b --></a>`, `<:a/>`, `<a:b:c></a:b:c>`, `<?xml xversion="1.0" version="2"?><a/>`,
	} {
		f.Add([]byte(s), false)
		f.Add([]byte(s), true)
	}
	f.Fuzz(func(t *testing.T, data []byte, piecemeal bool) {
		r := io.Reader(bytes.NewReader(data))
		x := newXMLScanner(r, Limits{})
		if piecemeal {
			x.r, x.buf = iotest.OneByteReader(r), make([]byte, 0, 1)
		}
		ref := xml.NewDecoder(bytes.NewReader(data))
		var text, want []byte
		for {
			if x.next() != nil {
				return // stricter than encoding/xml in places
			}
			if x.kind == xmlText {
				text = append(text, x.text...)
				continue
			}
			var tok xml.Token
			for {
				var err error
				tok, err = ref.RawToken()
				if err != nil && err != io.EOF {
					if !ascii(data) {
						return // names are not looked at beyond ASCII
					}
					t.Fatalf("%q: encoding/xml says %v", data, err)
				}
				if c, ok := tok.(xml.CharData); ok {
					want = append(want, c...)
					continue
				}
				if err == io.EOF {
					tok = nil
				}
				if _, ok := tok.(xml.Comment); ok {
					continue
				}
				if _, ok := tok.(xml.ProcInst); ok {
					continue
				}
				break
			}
			if !bytes.Equal(text, want) {
				t.Fatalf("%q: text %q, encoding/xml has %q", data, text, want)
			}
			text, want = text[:0], want[:0]
			switch el := tok.(type) {
			case xml.StartElement:
				if x.kind != xmlOpen || el.Name.Local != string(x.name) || len(el.Attr) != len(x.attrs) {
					t.Fatalf("%q: %d %q, encoding/xml has %v", data, x.kind, x.name, el)
				}
				for i, a := range el.Attr {
					if string(local(x.attrs[i].name)) != a.Name.Local || string(x.attrs[i].value) != a.Value {
						t.Fatalf("%q: attribute %q %q, encoding/xml has %v", data, x.attrs[i].name, x.attrs[i].value, a)
					}
				}
			case xml.EndElement:
				if x.kind != xmlClose || el.Name.Local != string(x.name) {
					t.Fatalf("%q: %d %q, encoding/xml has %v", data, x.kind, x.name, el)
				}
			case nil:
				if x.kind != xmlEnd {
					t.Fatalf("%q: %d %q after the end", data, x.kind, x.name)
				}
				return
			default:
				t.Fatalf("%q: unexpected %T", data, tok)
			}
		}
	})
}

func ascii(b []byte) bool {
	for _, c := range b {
		if c >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// A table gives back what was put in, whether its rows are loose or packed.
func TestGrid(t *testing.T) {
	g := newGrid()
	rowAt := func(i int) []string {
		cells := make([]string, i%7)
		for k := range cells {
			cells[k] = strings.Repeat(string(rune('a'+i%20)), i*k%200)
		}
		return cells
	}
	const rows = 3 * looseCells / 7
	for i := range rows {
		g.add(i+1, rowAt(i))
	}
	if len(g.pieces.packed) == 0 || g.pieces.loose > looseCells {
		t.Fatalf("%d cells loose, %d pieces packed", g.pieces.loose, len(g.pieces.packed))
	}
	i := 0
	g.each(func(row int, cells []string) error {
		if row != i+1 || !slices.Equal(cells, rowAt(i)) || g.width(i) != i%7 {
			t.Fatalf("row %d is %d %q (%d cells)", i+1, row, cells, g.width(i))
		}
		i++
		return nil
	})
	part := g.slice(rows-10, rows)
	if row, cells := part.at(3); i != rows || row != rows-6 || !slices.Equal(cells, rowAt(rows-7)) {
		t.Fatalf("%d rows, row %d %q", i, row, cells)
	}
}

func FuzzSheet(f *testing.F) {
	for _, c := range sheetCases[:20] {
		f.Add(c.file, c.asText())
	}
	f.Add("x.xlsx", workbook(f, func(x *excelize.File) {
		setRows(f, x, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", 0.0127}, []any{2, "Al Roe", "18:31"})
	}))
	f.Fuzz(func(t *testing.T, name string, data []byte) {
		s, err := Read(name, data, Options{})
		if err != nil {
			return
		}
		if len(s.Parts) == 0 {
			t.Fatal("neither parts nor a reason")
		}
		for _, p := range s.Parts {
			prev := 0
			err := p.Each(func(row int, cells []string) error {
				if row <= prev || len(cells) < len(p.Columns) {
					t.Fatalf("row %d after %d with %d cells for %d columns", row, prev, len(cells), len(p.Columns))
				}
				prev = row
				p.RunOf(cells)
				return nil
			})
			if err != nil {
				t.Fatal(err)
			}
		}
		s.Describe(io.Discard)
	})
}

// The texts of all cells are those that the spreadsheet library gives, for
// shared, inline and rich texts, characters that XML escapes, cached formulas,
// gaps between cells and rows.
func TestCellsAgainstSpreadsheetLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	words := []string{"Jo Lee", "Zoë & Al <3", " lead", "trail ", "a\nb", "_x0041_", "\"q\"", "=1+1", "0042", "24:31", "Łukasz", "", "日本", "\u202Ex", "_x000D_", "1e5", "M40-44"}
	for n := 0; n < 30; n++ {
		f := excelize.NewFile()
		if n%3 == 0 { // the stream writes inline texts
			sw, err := f.NewStreamWriter("Sheet1")
			if err != nil {
				t.Fatal(err)
			}
			for row := 1; row <= 40; row += 1 + r.IntN(3) {
				cells := make([]any, r.IntN(8))
				for i := range cells {
					cells[i] = words[r.IntN(len(words))]
				}
				if err := sw.SetRow(fmt.Sprintf("A%d", row), cells); err != nil {
					t.Fatal(err)
				}
			}
			sw.Flush()
		} else {
			for k := 0; k < 150; k++ {
				cell, _ := excelize.CoordinatesToCellName(1+r.IntN(9), 1+r.IntN(40))
				switch r.IntN(4) {
				case 0:
					f.SetCellRichText("Sheet1", cell, []excelize.RichTextRun{{Text: words[r.IntN(len(words))]}, {Text: "Æ", Font: &excelize.Font{Bold: true}}})
				case 1:
					f.SetCellInt("Sheet1", cell, int64(r.IntN(100000)))
				default:
					f.SetCellStr("Sheet1", cell, words[r.IntN(len(words))])
				}
			}
		}
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			t.Fatal(err)
		}
		f.Close()
		back, err := excelize.OpenReader(bytes.NewReader(b.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		want, err := back.GetRows("Sheet1", excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		zr, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
		if err != nil {
			t.Fatal(err)
		}
		l := Limits{}.orDefault()
		shared, err := sharedStrings(zr, l)
		if err != nil {
			t.Fatal(err)
		}
		paths, err := tabPaths(zr)
		if err != nil {
			t.Fatal(err)
		}
		c := &cellReader{shared: shared, styles: &styleTable{file: back, known: map[int]cellStyle{}}, limits: l}
		g, _, err := c.tab(paths["Sheet1"])
		if err != nil {
			t.Fatal(err)
		}
		got := map[int][]string{}
		g.each(func(row int, cells []string) error { got[row] = append([]string(nil), cells...); return nil })
		filled := 0
		for i, cells := range want {
			for col, w := range cells {
				if w != "" {
					filled++
				}
				if g := cellAt(got[i+1], col); g != w {
					t.Fatalf("%s%d is %q, the library says %q", letters(col), i+1, g, w)
				}
			}
		}
		if filled == 0 {
			t.Fatal("no cells compared")
		}
		back.Close()
	}
}

// A time of whole minutes with the first day of the calendar before it is read as those with seconds
// above it are; where none are, it is hours and minutes that were typed for minutes and seconds.
func TestFirstDayBeforeWholeMinutes(t *testing.T) {
	minutes := func(m float64) []byte { return []byte(strconv.FormatFloat(1+m/1440, 'f', -1, 64)) }
	c := &cellReader{}
	if got, _ := c.text("n", minutes(26), fTime); got != "24:26:00" {
		t.Error(got)
	}
	for _, m := range []float64{21.25, 22.5, 23.75} {
		c.text("n", minutes(m), fTime)
	}
	if got, _ := c.text("n", minutes(26), fTime); got != "0:26:00" {
		t.Error(got)
	}
}
