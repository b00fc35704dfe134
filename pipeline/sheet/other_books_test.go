package sheet

import (
	"archive/zip"
	"bytes"
	"os"
	"strconv"
	"strings"
	"testing"
)

// odsOf packs the content of an OpenDocument spreadsheet.
func odsOf(t testing.TB, rows string) []byte {
	t.Helper()
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	for _, f := range [][2]string{{"mimetype", "application/vnd.oasis.opendocument.spreadsheet"}, {"content.xml", odsContent(rows)}} {
		w, err := zw.Create(f[0])
		if err == nil {
			_, err = w.Write([]byte(f[1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func odsContent(tables string) string {
	return `<?xml version="1.0" encoding="UTF-8"?><office:document-content office:version="1.3" xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0"><office:automatic-styles><style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style></office:automatic-styles><office:body><office:spreadsheet>` + tables + `</office:spreadsheet></office:body></office:document-content>`
}

const odsTables = `<table:table table:name="Tulokset" table:style-name="ta1">
<table:table-row><table:table-cell table:number-columns-spanned="3" office:value-type="string"><text:p>Alder<text:s/>Bank</text:p></table:table-cell><table:covered-table-cell table:number-columns-repeated="2"/></table:table-row>
<table:table-row><table:table-cell office:value-type="string"><text:p>Päivämäärä</text:p></table:table-cell><table:table-cell office:value-type="date" office:date-value="2026-01-03"><text:p>3.1.</text:p></table:table-cell></table:table-row>
<table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="1024"/></table:table-row>
<table:table-header-rows><table:table-row><table:table-cell office:value-type="string"><text:p>Sija</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Nimi</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Aika</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Seura</text:p></table:table-cell></table:table-row></table:table-header-rows>
<table:table-row><table:table-cell office:value-type="float" office:value="1"><text:p>1</text:p></table:table-cell><table:table-cell office:value-type="string"><office:annotation><text:p>checked</text:p></office:annotation><text:p>Jo <text:span>Lee</text:span></text:p></table:table-cell><table:table-cell office:value-type="time" office:time-value="PT00H18M20S"><text:p>18:20</text:p></table:table-cell><table:table-cell table:number-columns-repeated="1020"/></table:table-row>
<table:table-row><table:table-cell office:value-type="float" office:value="2"><text:p>2</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Al Roe</text:p></table:table-cell><table:table-cell office:value-type="time" office:time-value="PT00H18M31.5S"><text:p>18:31,5</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Vale &amp; Mill</text:p></table:table-cell></table:table-row>
<table:table-row table:number-rows-repeated="1048568"><table:table-cell table:number-columns-repeated="1024"/></table:table-row>
</table:table><table:table table:name="Apu" table:style-name="ta2"><table:table-row><table:table-cell office:value-type="string"><text:p>x</text:p></table:table-cell></table:table-row></table:table>`

// Rows that are struck through in an OpenDocument workbook are so in the workbook that it is read as.
func TestStruckInOtherBooks(t *testing.T) {
	cell := func(style, text string) string {
		return `<table:table-cell table:style-name="` + style + `" office:value-type="string"><text:p>` + text + `</text:p></table:table-cell>`
	}
	rows := ""
	for i, r := range [][3]string{{"Pos", "Name", "Time"}, {"1", "Jo Lee", "18:20"}, {"2", "Al Roe", "18:31"}, {"3", "Cy Dee", "19:02"}, {"4", "Di Fox", "19:31"}} {
		style := map[bool]string{true: "ce2", false: "ce1"}[i == 2]
		rows += "<table:table-row>" + cell(style, r[0]) + cell(style, r[1]) + cell(style, r[2]) + "</table:table-row>"
	}
	style := func(name, line string) string {
		return `<style:style style:name="` + name + `" style:family="table-cell"><style:text-properties style:text-line-through-style="` + line + `"/></style:style>`
	}
	content := strings.Replace(odsContent(`<table:table table:name="Results">`+rows+`</table:table>`), "<office:automatic-styles>", "<office:automatic-styles>"+style("ce1", "none")+style("ce2", "solid"), 1)
	s, err := Read("alder-bank_2026-01-03.fods", []byte(strings.NewReplacer("<office:document-content ", `<office:document office:mimetype="application/vnd.oasis.opendocument.spreadsheet" `, "</office:document-content>", "</office:document>").Replace(content)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, got := s.Parts[0], ""
	p.Each(func(_ int, cells []string) error {
		got += cellAt(cells, p.Index(Name)) + ":" + cellAt(cells, p.Index(Notes)) + "; "
		return nil
	})
	if want := "Jo Lee:; Al Roe:" + struckThrough + "; Cy Dee:; Di Fox:; "; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	x := xlsReader{letters: []int{0, 4, 5}, struck: []bool{false, false, false, false, true}}
	if x.strikes(0) || !x.strikes(2) || x.strikes(9) {
		t.Error("the fonts of styles are counted wrongly")
	}
}

// Workbooks of other kinds are read cell by cell as XLSX workbooks of the same cells are: their
// dates and times by value, rows and columns where they stood.
func TestOtherBooks(t *testing.T) {
	old, err := os.ReadFile("testdata/old.xls")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"results.ods", odsOf(t, odsTables), "alder-bank 2026-01-03 6:1|Jo Lee|0:18:20 7:2|Al Roe|0:18:31.500|Vale & Mill"},
		{"results.fods", []byte(strings.Replace(odsContent(odsTables), "<office:document-content ", `<office:document office:mimetype="application/vnd.oasis.opendocument.spreadsheet" `, 1)), "alder-bank 2026-01-03 6:1|Jo Lee|0:18:20 7:2|Al Roe|0:18:31.500|Vale & Mill"},
		{"results.xls", old, "alder-bank 2026-01-03 5:1|Šárka Křížová|1986|TJ Důl|0:18:20 6:2|Ondřej Beneš|1971||0:18:31 7:3|Zoë Lee|1999|AC Mill|0:19:02.500"},
	} {
		data := c.data
		if strings.HasSuffix(c.name, "fods") {
			data = []byte(strings.Replace(string(data), "</office:document-content>", "</office:document>", 1))
		}
		s, err := Read(c.name, data, Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Errorf("%s: %v, %+v", c.name, err, s)
			continue
		}
		p := s.Parts[0]
		got := p.Course.Value + " " + p.Date.Day.String()
		if err := p.Each(func(row int, cells []string) error {
			got += " " + strings.TrimRight(strings.Join(append([]string{strconv.Itoa(row)}, strings.Join(trimmed(cells), "|")), ":"), "|")
			return nil
		}); err != nil {
			t.Error(err)
		}
		if got != c.want {
			t.Errorf("%s: %s\nwant %s", c.name, got, c.want)
		}
		out, err := Redact(c.name, data, Options{}, Redaction{Words: []string{"Jo Lee", "Zoë Lee"}, Text: "Anonymous", Everywhere: true})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if holds, err := Holds(out, []string{"Jo Lee", "Zoë Lee"}); err != nil || holds {
			t.Errorf("%s: a name is still there (%v)", c.name, err)
		}
		if s, err := Read(c.name, out, Options{}); err != nil || len(s.Parts) != 1 || s.Parts[0].Course.Value != "alder-bank" {
			t.Errorf("%s: without a name it can't be read (%v)", c.name, err)
		}
		if same, err := Redact(c.name, data, Options{}, Redaction{Words: []string{"Cy Dee"}, Text: "Anonymous", Everywhere: true}); err != nil || !bytes.Equal(same, data) {
			t.Errorf("%s: changed though nothing is to be taken out (%v)", c.name, err)
		}
	}
}

// A workbook that is cut off or changed is refused or read in part; it stops nothing.
func TestDamagedOldBooks(t *testing.T) {
	old, err := os.ReadFile("testdata/old.xls")
	if err != nil {
		t.Fatal(err)
	}
	for n := 0; n < len(old); n += 97 {
		Read("cut.xls", old[:n], Options{}) // refused or read
		bent := bytes.Clone(old)
		bent[n] ^= 0xFF
		Read("bent.xls", bent, Options{})
		for k := n; k < min(n+8, len(bent)); k++ {
			bent[k] = 0xFF
		}
		Read("bent.xls", bent, Options{})
	}
	if _, err := Read("text.ods", odsOf(t, "")[:40], Options{}); err == nil {
		t.Error("a piece of a package was read")
	}
}

// A few words far from one another, and cells joined over whole tabs, would cost as much room
// as a workbook that is full: such a file is refused before it is made.
func TestOtherBooksWithCellsFarApart(t *testing.T) {
	const word = `<table:table-cell office:value-type="string"><text:p>x</text:p></table:table-cell>`
	tab := func(rows string) string { return `<table:table table:name="A">` + rows + `</table:table>` }
	far := `<table:table-row table:number-rows-repeated="1000000"><table:table-cell/></table:table-row><table:table-row>` + word + `</table:table-row>`
	wide := `<table:table-row><table:table-cell table:number-columns-repeated="16000"/>` + word + `</table:table-row>`
	joined := `<table:table-row><table:table-cell table:number-columns-spanned="16000" table:number-rows-spanned="1000000" office:value-type="string"><text:p>x</text:p></table:table-cell></table:table-row>`
	for name, c := range map[string]struct{ tables, says string }{
		"far down on many tabs":       {strings.Repeat(tab(far), 40), "too far from one another"},
		"far to the right, many rows": {tab(strings.Repeat(wide, 4000)), "too far from one another"},
		"joined over a whole tab":     {tab(joined), "joined over too many"},
	} {
		if _, err := Read("x.ods", odsOf(t, c.tables), Options{}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// An old workbook of any bytes is refused or written as a workbook, in bounded room.
func FuzzOldBook(f *testing.F) {
	old, err := os.ReadFile("testdata/old.xls")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(old)
	f.Fuzz(func(t *testing.T, data []byte) {
		book, err := oldWorkbook(data, Limits{}.orDefault())
		if err == nil && len(book) == 0 {
			t.Fatal("neither a workbook nor a reason")
		}
	})
}

// The tables of an OpenDocument spreadsheet are refused or written as a workbook, in bounded room.
func FuzzOpenDocument(f *testing.F) {
	f.Add(odsTables)
	f.Add(`<table:table table:name="A"><table:table-row table:number-rows-repeated="3"><table:table-cell table:number-columns-repeated="2" table:number-columns-spanned="2" table:number-rows-spanned="3" office:value-type="percentage" office:value="0.5"><text:p>50 %</text:p></table:table-cell></table:table-row></table:table>`)
	f.Fuzz(func(t *testing.T, tables string) {
		flat := strings.Replace(odsContent(tables), "<office:document-content ", `<office:document office:mimetype="application/vnd.oasis.opendocument.spreadsheet" `, 1)
		book, err := openDocument([]byte(flat), Limits{}.orDefault())
		if err == nil && len(book) == 0 {
			t.Fatal("neither a workbook nor a reason")
		}
	})
}
