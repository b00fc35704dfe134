package sheet

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
	xunicode "golang.org/x/text/encoding/unicode"
)

var keepPlaceAndTime = map[Meaning]bool{Position: true, Time: true, GunTime: true, ChipTime: true, Date: true, Course: true}

func redaction(words []string, rows ...RowRef) Redaction {
	return Redaction{Rows: rows, Keep: keepPlaceAndTime, Words: words, Text: "Anonymous"}
}

func redacted(t *testing.T, data string, r Redaction) string {
	t.Helper()
	out, err := Redact("alder-bank_2026-01-03.csv", []byte(data), Options{}, r)
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

func TestRedactText(t *testing.T) {
	const head = "Pos,Name,Time,Age Group,Sex,Club,Notes\r\n"
	for _, c := range []struct{ name, in, want string }{
		{"row", head + "1,Ada Moss,20:00,W40,W,Tarn Harriers,\r\n2,\"Reed, Ben\",21:00,M45,M,\"Wick, Fell\",PB\r\n",
			head + "1,Ada Moss,20:00,W40,W,Tarn Harriers,\r\n2,Anonymous,21:00,,,,\r\n"},
		{"notes and titles, other rows' names stay", "Alder Bank: winner BEN  REED\n\nPos,Name,Time,Club,Notes\n1,Ben Reed-Jones,20:00,Tarn,ran with Ben Reed.\n2,Ben Reed,21:00,Wick,\n3,Cora Vale,22:00,,\n\"Thanks to Ben Reed's family\"\n",
			"Alder Bank: winner Anonymous\n\nPos,Name,Time,Club,Notes\n1,Ben Reed-Jones,20:00,Tarn,ran with Anonymous.\n2,Anonymous,21:00,,\n3,Cora Vale,22:00,,\nThanks to Anonymous's family\n"},
		{"name cut by a comma", "Pos,Name,Club,Time\n1,Moss, Ada,Tarn,20:00\n2,Reed, Ben,Wick,21:00\n3,Vale, Cora,Tarn,22:00\n",
			"Pos,Name,Club,Time\n1,Moss, Ada,Tarn,20:00\n2,Anonymous,,21:00\n3,Vale, Cora,Tarn,22:00\n"},
		{"a comma typed twice", "Pos,Name,Cat,Club,Time\n1,Ada Moss,W40,Tarn,20:00\n2,Ben Reed,,M45,Wick,21:00\n3,Cora Vale,W35,Tarn,22:00\n4,Dan Wye,M50,Tarn,22:10\n",
			"Pos,Name,Cat,Club,Time\n1,Ada Moss,W40,Tarn,20:00\n2,Anonymous,,,21:00\n3,Cora Vale,W35,Tarn,22:00\n4,Dan Wye,M50,Tarn,22:10\n"},
		{"given and family names", "Pos;First name;Surname;Time\n1;Ada;Moss;20:00\n2;Ben;Reed;21:00\n", "Pos;First name;Surname;Time\n1;Ada;Moss;20:00\n2;Anonymous;;21:00\n"},
	} {
		row := 0
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.in), Options{})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		s.Parts[0].Each(func(r int, cells []string) error {
			if cells[s.Parts[0].Index(Position)] == "2" {
				row = r
			}
			return nil
		})
		if got := redacted(t, c.in, redaction([]string{"Ben Reed"}, RowRef{0, row})); got != c.want {
			t.Errorf("%s:\n got %q\nwant %q", c.name, got, c.want)
		}
	}
}

// What is not named stays byte for byte, and so does the encoding.
func TestRedactKeepsTheRest(t *testing.T) {
	const text = "Pos,Name,Time\r\n1,\"Zoë \"\"Z\"\" Löw\",20:00\r\n2,Ben Reed,21:00\r\n"
	const want = "Pos,Name,Time\r\n1,\"Zoë \"\"Z\"\" Löw\",20:00\r\n2,Anonymous,21:00\r\n"
	r := redaction([]string{"Ben Reed"}, RowRef{0, 3})
	if got := redacted(t, text, r); got != want {
		t.Errorf("UTF-8: %q", got)
	}
	if got := redacted(t, "\ufeff"+text, r); got != "\ufeff"+want {
		t.Errorf("UTF-8 with mark: %q", got)
	}
	utf16 := func(s string, e xunicode.Endianness) string {
		b, err := xunicode.UTF16(e, xunicode.UseBOM).NewEncoder().String(s)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	for _, e := range []xunicode.Endianness{xunicode.LittleEndian, xunicode.BigEndian} {
		if got := redacted(t, utf16(text, e), r); got != utf16(want, e) {
			t.Errorf("UTF-16: %q", got)
		}
	}
	old := func(s string) string {
		b, err := charmap.Windows1252.NewEncoder().String(s)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	if got := redacted(t, old(text), r); got != old(want) {
		t.Errorf("Windows-1252: %q", got)
	}
	if got := redacted(t, text, redaction([]string{"Otto Quillfeather"})); got != text {
		t.Errorf("nothing to take out: %q", got)
	}
	if _, err := Redact("a.csv", []byte(text), Options{}, redaction(nil, RowRef{0, 9})); err == nil || !strings.Contains(err.Error(), "no row 9") {
		t.Errorf("a row that is not there: %v", err)
	}
}

// Men on the left, women on the right: only one of the two is taken out.
func TestRedactSideBySide(t *testing.T) {
	const in = "Pos,Name,Time,Pos,Name,Time\n1,Ben Reed,20:00,1,Ada Moss,21:00\n2,Dan Vale,20:30,2,Cora Wick,22:00\n3,Hugh Thorne,21:30,3,Edie Lane,23:00\n"
	s, err := Read("alder-bank_2026-01-03.csv", []byte(in), Options{})
	if err != nil || len(s.Parts) != 2 {
		t.Fatalf("%d parts, %v", len(s.Parts), err)
	}
	want := strings.Replace(in, "Ada Moss", "Anonymous", 1)
	if got := redacted(t, in, redaction([]string{"Ada Moss"}, RowRef{1, 2})); got != want {
		t.Errorf("got %q", got)
	}
}

func TestRedactWorkbook(t *testing.T) {
	f := excelize.NewFile()
	defer f.Close()
	rows := [][]any{
		{"Alder Bank, 3 January 2026. Winner: Ada Moss"}, {}, {"Pos", "Name", "Time", "Age", "Club"},
		{1, "Ada Moss", "20:00", 41, "Tarn"}, {2, "Ben Reed", "21:00", 45, "Wick"}, {3, "Ada Moss-Vale", "22:00", 30, "Tarn"},
	}
	check := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	for i, r := range rows {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		check(f.SetSheetRow("Sheet1", cell, &r))
	}
	check(f.SetCellRichText("Sheet1", "B4", []excelize.RichTextRun{{Text: "Ada", Font: &excelize.Font{Bold: true}}, {Text: " Moss"}}))
	_, err := f.NewSheet("Helpers")
	check(err)
	check(f.SetCellStr("Helpers", "A1", "Timekeeper: ADA MOSS"))
	check(f.AddComment("Sheet1", excelize.Comment{Cell: "B5", Author: "Desk", Paragraph: []excelize.RichTextRun{{Text: "beaten by "}, {Text: "Ada "}, {Text: "Moss"}}}))
	check(f.SetDocProps(&excelize.DocProperties{Creator: "Ada Moss"}))
	check(f.SetHeaderFooter("Sheet1", &excelize.HeaderFooterOptions{OddHeader: "&CAda Moss and others"}))
	var b bytes.Buffer
	check(f.Write(&b))

	s, err := Read("alder-bank_2026-01-03.xlsx", b.Bytes(), Options{})
	check(err)
	out, err := Redact("alder-bank_2026-01-03.xlsx", b.Bytes(), Options{}, redaction([]string{"Ada Moss"}, RowRef{0, 4}))
	check(err)
	if len(s.Parts) == 0 || s.Parts[0].Tab != "Sheet1" {
		t.Fatalf("parts: %+v", s.Parts)
	}
	if found := inPackage(t, out, "ada moss"); len(found) != 1 || found[0] != "xl/sharedStrings.xml: ada moss-vale" {
		t.Errorf("the name is still in %q", found)
	}
	g, err := excelize.OpenReader(bytes.NewReader(out))
	check(err)
	defer g.Close()
	for cell, want := range map[string]string{"A1": "Alder Bank, 3 January 2026. Winner: Anonymous", "A4": "1", "B4": "Anonymous", "C4": "20:00", "D4": "", "E4": "",
		"B5": "Ben Reed", "D5": "45", "B6": "Ada Moss-Vale", "E6": "Tarn"} {
		if got, err := g.GetCellValue("Sheet1", cell); err != nil || got != want {
			t.Errorf("%s: %q, want %q (%v)", cell, got, want, err)
		}
	}
	if got, _ := g.GetCellValue("Helpers", "A1"); got != "Timekeeper: Anonymous" {
		t.Errorf("Helpers!A1: %q", got)
	}
	comments, err := g.GetComments("Sheet1")
	said := ""
	for _, c := range comments {
		said += c.Text
		for _, p := range c.Paragraph {
			said += p.Text
		}
	}
	if err != nil || !strings.Contains(said, "beaten by Anonymous") {
		t.Errorf("comments: %+v %v", comments, err)
	}
	if again, err := Redact("a.xlsx", out, Options{}, redaction([]string{"Ada Moss"})); err != nil || !bytes.Equal(again, out) {
		t.Errorf("a second redaction changes the workbook again (%v)", err)
	}
}

// inPackage lists where a text still is in the unpacked members of a workbook,
// with what stands around it.
func inPackage(t *testing.T, data []byte, text string) (found []string) {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range zr.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		raw, err := io.ReadAll(r)
		r.Close()
		if err != nil {
			t.Fatal(err)
		}
		s := strings.ToLower(string(raw))
		for at := strings.Index(s, text); at >= 0; {
			end := at + strings.IndexAny(s[at:]+"<", "<\"")
			found = append(found, f.Name+": "+s[at:end])
			next := strings.Index(s[end:], text)
			if next < 0 {
				break
			}
			at = end + next
		}
	}
	return found
}

// Of a table that lies on its side, a runner is a column.
func TestRedactOnItsSide(t *testing.T) {
	text := "Alder Bank,3 January 2026\nPos,1,2,3\nName,Jo Lee,Al Roe,Cy Dee\nAge,42,31,57\nTime,18:20,18:31,18:40\n"
	got, err := Redact("x.csv", []byte(text), Options{}, Redaction{Rows: []RowRef{{0, 4}}, Keep: map[Meaning]bool{Position: true, Time: true}, Words: []string{"Al Roe"}, Text: "Anonymous"})
	if want := "Alder Bank,3 January 2026\nPos,1,2,3\nName,Jo Lee,Anonymous,Cy Dee\nAge,42,,57\nTime,18:20,18:31,18:40\n"; err != nil || string(got) != want {
		t.Errorf("%q, %v", got, err)
	}
}
