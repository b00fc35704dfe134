package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"golang.org/x/text/encoding/charmap"
)

// Web pages that were saved, and workbooks that are web pages: their tables are read,
// their scripts and menus are not.
func TestPages(t *testing.T) {
	rows := "<tr><td>1</td><td>Jo Lee</td><td>18:20</td></tr><tr><td>2</td><td>Zoë Müller</td><td>18:31</td></tr>"
	head := "<tr><th>Pos</th><th>Name</th><th>Time</th></tr>"
	latin, err := charmap.Windows1252.NewEncoder().String("<html><head><meta charset=windows-1252></head><h1>Alder Bank, 3 January 2026</h1><table>" + head + rows + "</table>")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, file, text, run, lines, refused string }{
		{"a page of a browser", "results.html", "<!DOCTYPE html><html><head><title>Vale Harriers</title><script>var t='<table><tr><td>9</td></tr></table>'</script><style>td{color:red}</style></head>" +
			"<body><nav><a href=x>Home</a></nav><p><a href='/a'>All results</a> <a href='/b'>Contact</a></p><h1>Alder Bank</h1><p>Saturday 3 January 2026</p><table><thead>" + head + "</thead><tbody>" + rows + "</tbody></table><footer>Printed 9 May 2026</footer></body></html>",
			"alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a workbook that is a page", "alder-bank_2026-01-03.xls", "<html xmlns:x=\"urn:x\"><body><table border=1>" + head + strings.ReplaceAll(rows, "<td>1", "<td class=xl24 x:num>1") + "</table></body></html>",
			"alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"only the title says it", "x.html", "<title>Alder Bank 3 January 2026</title><table>" + head + rows + "</table><p>Printed 9 May 2026</p>", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"only the title says the day", "x.html", "<title>Vale Harriers, results of 3 January 2026</title><h1>Alder Bank</h1><table>" + head + rows + "</table>", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"the title says another day", "x.html", "<title>Vale Harriers, updated 9 May 2026</title><h1>Alder Bank</h1><p>3 January 2026</p><table>" + head + rows + "</table>", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"no ends of cells and rows", "alder-bank_2026-01-03.htm", "<TABLE><TR><TH>Pos<TH>Name<TH>Time<TR><TD>1<TD>Jo Lee<TD>18:20<TR><TD>2<TD>Zo&euml; M&uuml;ller<TD>18:31</TABLE>",
			"alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a table around the table", "x.html", "<body><table><tr><td>Menu</td><td><h2>Alder Bank 3 January 2026</h2><table><caption>Full result</caption>" + head + rows + "</table></td></tr></table>",
			"alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a title over all columns, a place over two rows", "x.html", "<table><tr><td colspan=3>Alder Bank 3 January 2026</td></tr>" + head + "<tr><td rowspan=2>1</td><td>Jo Lee</td><td>18:20</td></tr><tr><td>Zoë Müller</td><td>18:20</td></tr><tr><td>3</td><td>Al &quot;Ace&quot; Roe</td><td>18:31</td></tr></table>",
			"alder-bank 2026-01-03", "1 Jo Lee 18:20;  Zoë Müller 18:20; 3 Al \"Ace\" Roe 18:31", ""},
		{"a sex over several rows", "alder-bank_2026-01-03.html", "<table><tr><th>Sex</th><th>Name</th><th>Time</th></tr><tr><td rowspan=2>F</td><td>Jo Lee</td><td>18:20</td></tr><tr><td>Zoë Müller</td><td>18:31</td></tr><tr><td rowspan=2>M</td><td>Al Roe</td><td>18:40</td></tr><tr><td>Cy Dee</td><td>19:40</td></tr></table>",
			"alder-bank 2026-01-03", "F Jo Lee 18:20; F Zoë Müller 18:31; M Al Roe 18:40; M Cy Dee 19:40", ""},
		{"names over clubs", "alder-bank_2026-01-03.html", "<table>" + head + "<tr><td>1</td><td><b>Jo Lee</b><br><small>Vale Harriers</small></td><td>18:20</td></tr><tr><td>2</td><td><div>Al Roe</div><div>Fen Runners</div></td><td>18:31</td></tr><tr><td>3</td><td>Cy<br>Dee</td><td>18:31</td></tr></table>",
			"alder-bank 2026-01-03", "1 Jo Lee\nVale Harriers 18:20; 2 Al Roe\nFen Runners 18:31; 3 Cy Dee 18:31", ""},
		{"letters of a code page", "x.html", latin, "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a piece of a page", "x.txt", "<h2>Alder Bank, 3 January 2026</h2>\n<table>" + head + rows + "</table>", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a piece of a page that a server puts together", "x.html", "<?php if ($x->a > 1) include(\"header.html\");?>\n<section id=\"r\"><h2>Alder Bank, 3 January 2026</h2>\n<table>" + head + rows + "</table></section>\n<?php include(\"footer.html\");?>\n", "alder-bank 2026-01-03", "1 Jo Lee 18:20; 2 Zoë Müller 18:31", ""},
		{"a list in columns of one width within a table that lays out the page", "x.shtml", "<HTML><HEAD><TITLE>Race results</TITLE></HEAD><BODY><TABLE><TR><TD><TABLE><TR><TD><h1>Alder Bank, 3 January 2026</h1><PRE>\r\n" +
			"                                     Chip     Gun\r\n  <u>Place</u>  <u>Name</u>             <u>Age</u>   <u>Time</u>    <u>Time</u>\r\n      1  Jo Lee            31    18:20    18:22\r\n      2  Zo&euml; M&uuml;ller        40    18:31    18:34\r\n      3  Al Roe            27    18:50    18:51\r\n</PRE></TD></TR></TABLE></TD></TR></TABLE></BODY></HTML>",
			"alder-bank 2026-01-03", "1 Jo Lee 31; 2 Zoë Müller 40; 3 Al Roe 27", ""},
		{"no table", "x.html", "<html><body><h1>Alder Bank</h1><p>No results yet</p></body></html>", "", "", "web page without a table"},
		{"too large", "x.html", "<html>" + strings.Repeat(" ", wholeBytes), "", "", "more than the 16 MB allowed"},
		{"cells over very many columns", "x.html", "<table>" + strings.Repeat("<tr><td colspan=999>1<td colspan=999>2<td colspan=999>3<td colspan=999>4<td>5", 60000) + "</table>", "", "", "too large"},
		{"deep", "x.html", "<table>" + strings.Repeat("<tr><td><b>", 5000) + "</table>", "", "", "is refused"},
		{"XML that is no page", "x.xml", "<?xml version=\"1.0\"?><results><r/></results>", "", "", "program data (XML)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := Read(c.file, []byte(c.text), Options{})
			if c.refused != "" {
				if err == nil || !strings.Contains(err.Error(), c.refused) || !strings.HasPrefix(err.Error(), c.file) {
					t.Fatalf("refused: %v, want %q", err, c.refused)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			var lines []string
			for _, p := range s.Parts {
				p.Each(func(_ int, cells []string) error {
					lines = append(lines, strings.Join(cells[:3], " "))
					return nil
				})
			}
			if got := strings.Join(lines, "; "); got != c.lines || s.Parts[0].RunOfFirst() != c.run {
				t.Errorf("%s\n%s\nwant %s\n%s", s.Parts[0].RunOfFirst(), got, c.run, c.lines)
			}
		})
	}
}

// A name is taken out of what a page shows and of what it does not.
func TestRedactPage(t *testing.T) {
	const text = "<!DOCTYPE html><html><head><title>Jo Lee wins</title></head><h1>Alder Bank 3 January 2026</h1><table><tr><th>Pos</th><th>Name</th><th>Time</th></tr><tr><td>1</td><td>Jo&nbsp;Lee</td><td>18:20</td></tr><tr><td>2</td><td>Al Roe</td><td>18:31</td></tr></table>"
	before, err := Read("x.html", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	row := 0
	before.Parts[0].Each(func(r int, _ []string) error {
		row = r
		return errStop
	})
	r := Redaction{Rows: []RowRef{{0, row}}, Keep: map[Meaning]bool{Position: true, Time: true}, Words: []string{"Jo Lee"}, Text: "Forgotten"}
	out, err := Redact("x.html", []byte(text), Options{}, r)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(out, []byte("Lee")) {
		t.Errorf("the name is left:\n%s", out)
	}
	after, err := Read("x.html", out, Options{})
	if err != nil {
		t.Fatal(err)
	}
	read := func(s *Sheet) (text string) {
		s.Parts[0].Each(func(r int, cells []string) error {
			text += fmt.Sprintf("%d %s %s; ", r, cells[0], cells[2])
			return nil
		})
		return text
	}
	if read(after) != read(before) || after.Parts[0].RunOfFirst() != before.Parts[0].RunOfFirst() {
		t.Errorf("read as %s, was %s", read(after), read(before))
	}
	for name, holds := range map[string]bool{"Jo Lee": true, "Al Roe": true, "Cy Dee": false} {
		if got, err := Holds([]byte(text), []string{name}); err != nil || got != holds {
			t.Errorf("holds %s: %v %v", name, got, err)
		}
	}
	same, err := Redact("x.html", []byte(text), Options{}, Redaction{Words: []string{"Cy Dee"}, Text: "Forgotten"})
	if err != nil || !bytes.Equal(same, []byte(text)) {
		t.Errorf("a page without the name was changed: %v", err)
	}
}
