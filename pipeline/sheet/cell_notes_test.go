package sheet

import (
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Notes to cells that say something against a result are remarks on their lines; others are the
// desk's own, those that stand on many lines alike, or are long, tell
// how to fill in the sheet, and those over the table are of no line.
func TestCellNotes(t *testing.T) {
	note := func(at, text string) excelize.Comment { return excelize.Comment{Cell: at, Text: text} }
	long := strings.Repeat("Type minutes and seconds with a colon. ", 6)
	data := workbook(t, func(x *excelize.File) {
		setRows(t, x, "Sheet1", []any{"Pos", "Name", "Time"}, []any{1, "Jo Lee", "18:20"}, []any{2, "Al Roe", "18:31"}, []any{3, "Cy Dee", "19:02"}, []any{4, "Di Fox", "19:31"})
		for _, c := range []excelize.Comment{note("C1", "as on the watch"), note("C3", "Office:\ndisqualified, cut the corner"), note("B4", "first time here"), note("C4", "time to be checked"), note("A5", long)} {
			if err := x.AddComment("Sheet1", c); err != nil {
				t.Fatal(err)
			}
		}
	})
	want := "Jo Lee:; Al Roe:disqualified, cut the corner; Cy Dee:time to be checked; Di Fox:"
	read := func(name string, data []byte) string {
		s, err := Read(name, data, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range s.Parts {
			p.Each(func(_ int, cells []string) error {
				got = append(got, cellAt(cells, p.Index(Name))+":"+cellAt(cells, p.Index(Notes)))
				return nil
			})
		}
		return strings.Join(got, "; ")
	}
	if got := read("alder-bank_2026-01-03.xlsx", data); got != want {
		t.Errorf("workbook: %q, want %q", got, want)
	}
	cell := func(text, note string) string {
		if note != "" {
			note = `<office:annotation><dc:creator>Office</dc:creator><text:p>` + note + `</text:p></office:annotation>`
		}
		return `<table:table-cell office:value-type="string">` + note + `<text:p>` + text + `</text:p></table:table-cell>`
	}
	row := func(cells ...string) string {
		return `<table:table-row>` + strings.Join(cells, "") + `</table:table-row>`
	}
	ods := odsOf(t, `<table:table table:name="Tulokset">`+row(cell("Pos", ""), cell("Name", ""), cell("Time", ""))+row(cell("1", ""), cell("Jo Lee", ""), cell("18:20", ""))+
		row(cell("2", ""), cell("Al Roe", ""), cell("18:31", "disqualified"))+row(cell("3", ""), cell("Cy Dee", ""), cell("19:02", ""))+`</table:table>`)
	if got, want := read("alder-bank_2026-01-03.ods", ods), "Jo Lee:; Al Roe:disqualified; Cy Dee:"; got != want {
		t.Errorf("OpenDocument: %q, want %q", got, want)
	}
}

func TestNoteText(t *testing.T) {
	for in, want := range map[string]string{
		"Office:\nDNF": "DNF",
		"[Threaded comment]\n\nYour version of the program can read this.\n\nComment:\n    walked it": "walked it",
		"two\nlines": "two lines",
		"":           "",
	} {
		if got := noteText(in); got != want {
			t.Errorf("%q gives %q, want %q", in, got, want)
		}
	}
}
