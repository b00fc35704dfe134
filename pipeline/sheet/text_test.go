package sheet

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"golang.org/x/text/encoding/charmap"

	"lapwing/pipeline/unit"

	"lapwing/pipeline/place"
)

// all cuts a text into records.
func all(t *testing.T, text string, delim byte) (rows []int, out [][]string) {
	t.Helper()
	s := newScanner([]byte(text), delim, Limits{}.orDefault())
	for {
		row, cells, err := s.next()
		if err != nil {
			t.Fatal(err)
		}
		if cells == nil {
			return rows, out
		}
		rows = append(rows, row)
		out = append(out, append([]string(nil), cells...))
	}
}

// RFC 4180 section 2, rules 1 to 7, then what real sheets do.
func TestRecords(t *testing.T) {
	for _, c := range []struct {
		name, text string
		rows       []int
		want       [][]string
	}{
		{"rule 1", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", []int{1, 2}, [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"rule 2", "aaa,bbb,ccc\r\nzzz,yyy,xxx", []int{1, 2}, [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"rule 4", "aaa, bbb ,ccc", []int{1}, [][]string{{"aaa", " bbb ", "ccc"}}},
		{"rule 5", "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", []int{1, 2}, [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}},
		{"rule 6", "\"aaa\",\"b\r\nbb\",\"c,cc\"\r\nzzz,yyy,xxx", []int{1, 3}, [][]string{{"aaa", "b\r\nbb", "c,cc"}, {"zzz", "yyy", "xxx"}}},
		{"rule 7", "\"aaa\",\"b\"\"bb\",\"ccc\"", []int{1}, [][]string{{"aaa", "b\"bb", "ccc"}}},
		{"carriage returns alone", "a,b\rc,d\r", []int{1, 2}, [][]string{{"a", "b"}, {"c", "d"}}},
		{"mixed line endings", "a\nb\r\nc\rd", []int{1, 2, 3, 4}, [][]string{{"a"}, {"b"}, {"c"}, {"d"}}},
		{"blank lines count", "a\n\n\nb", []int{1, 2, 3, 4}, [][]string{{"a"}, {""}, {""}, {"b"}}},
		{"a quote inside a field", `1,Bob "Speedy" Smith,20:01`, []int{1}, [][]string{{"1", `Bob "Speedy" Smith`, "20:01"}}},
		{"quotes inside quotes", `1,"Bob "Speedy" Smith",20:01`, []int{1}, [][]string{{"1", `Bob "Speedy" Smith`, "20:01"}}},
		{"minutes and seconds", `1,Bo Lee,24'31"`, []int{1}, [][]string{{"1", "Bo Lee", `24'31"`}}},
		{"spaces about quotes", `1, "Lee, Bo" ,24:31`, []int{1}, [][]string{{"1", "Lee, Bo", "24:31"}}},
		{"empty quoted field", `1,"",24:31`, []int{1}, [][]string{{"1", "", "24:31"}}},
		{"quote never closed", "1,\"Lee,24:31\n2,Roe,25:00\n", []int{1, 2}, [][]string{{"1", "\"Lee", "24:31"}, {"2", "Roe", "25:00"}}},
		{"quotes alone in their cells, for what stands above", "1,Lee,24:31,Vale\n2,Roe,24:40,\"\n3,Dee,24:44,Mill\n4,Fox,24:50,\"\n", []int{1, 2, 3, 4}, [][]string{{"1", "Lee", "24:31", "Vale"}, {"2", "Roe", "24:40", "\""}, {"3", "Dee", "24:44", "Mill"}, {"4", "Fox", "24:50", "\""}}},
		{"lines in quotes that end with the mark that divides", "1,\"Lee,\nVale,\",24:31\n", []int{1}, [][]string{{"1", "Lee,\nVale,", "24:31"}}},
		{"quote not closed before the next one opens", "1,\"Lee,24:31\n2,\"Roe, Al\",25:00\n", []int{1, 2}, [][]string{{"1", "\"Lee", "24:31"}, {"2", "Roe, Al", "25:00"}}},
	} {
		rows, got := all(t, c.text, ',')
		if !reflect.DeepEqual(got, c.want) || !reflect.DeepEqual(rows, c.rows) {
			t.Errorf("%s: rows %v %q, want %v %q", c.name, rows, got, c.rows, c.want)
		}
	}
}

// What the standard library writes as RFC 4180 is what is read.
func TestRecordsAgainstStandardLibrary(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	alphabet := []string{"a", "b", "\"", ",", "\n", " ", "é", "1", ":", ""}
	for n := 0; n < 3000; n++ {
		var want [][]string
		for i := 0; i < 1+r.IntN(4); i++ {
			var row []string
			for j := 0; j < 2+r.IntN(4); j++ {
				cell := "x"
				for k := 0; k < r.IntN(6); k++ {
					cell += alphabet[r.IntN(len(alphabet))]
				}
				row = append(row, cell+"x")
			}
			want = append(want, row)
		}
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.WriteAll(want)
		text := b.String()
		// A line break and then what looks like an opening quote is the one
		// place where leniency wins over the letter of the standard.
		if _, got := all(t, text, ','); !reflect.DeepEqual(got, want) && !strings.Contains(text, "\"\"") {
			t.Fatalf("%q\nread  %q\nwrote %q", text, got, want)
		}
	}
}

// The WHATWG Encoding Standard's index windows-1252, bytes 0x80 to 0x9F (from
// memory); the rest is ISO 8859-1.
func TestWindows1252(t *testing.T) {
	index := []rune{0x20AC, 0x81, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0x8D, 0x017D, 0x8F,
		0x90, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D, 0x017E, 0x0178}
	for b := 0x80; b <= 0xFF; b++ {
		want := rune(b)
		if b < 0xA0 {
			want = index[b-0x80]
		}
		text, enc, _, err := decode([]byte{'N', 'a', 'm', 'e', ',', byte(b), '\n'})
		if err != nil || enc != "Windows-1252" || string(text) != "Name,"+string(want)+"\n" {
			t.Errorf("byte %#x is %q in %s (%v), want %q", b, text, enc, err, want)
		}
	}
}

const plainSheet = "Pos,Name,Time\n1,Zoë Müller,18:20\n2,José Núñez,19:31\n3,Anaïs Œdipe,20:01\n"

func utf16Bytes(s string, big, mark bool) (out []byte) {
	units := utf16.Encode([]rune(s))
	if mark {
		units = append([]uint16{0xFEFF}, units...)
	}
	for _, u := range units {
		if big {
			out = append(out, byte(u>>8), byte(u))
		} else {
			out = append(out, byte(u), byte(u>>8))
		}
	}
	return out
}

func TestEncodings(t *testing.T) {
	win, err := charmap.Windows1252.NewEncoder().Bytes([]byte(plainSheet))
	if err != nil {
		t.Fatal(err)
	}
	mixed := append([]byte(plainSheet), []byte("4,Ren\xE9 Roe,21:00\n")...)
	for _, c := range []struct {
		name string
		data []byte
		rows int
	}{
		{"UTF-8", []byte(plainSheet), 3},
		{"UTF-8 with byte order mark", []byte("\xEF\xBB\xBF" + plainSheet), 3},
		{"UTF-16 little-endian", utf16Bytes(plainSheet, false, true), 3},
		{"UTF-16 big-endian", utf16Bytes(plainSheet, true, true), 3},
		{"UTF-16 little-endian without byte order mark", utf16Bytes(plainSheet, false, false), 3},
		{"UTF-16 big-endian without byte order mark", utf16Bytes(plainSheet, true, false), 3},
		{"Windows-1252", win, 3},
		{"UTF-8 with some Windows-1252", mixed, 4},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", c.data, Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if s.Encoding != c.name {
			t.Errorf("%s is taken for %s", c.name, s.Encoding)
		}
		var names []string
		s.Parts[0].Each(func(_ int, cells []string) error { names = append(names, cells[1]); return nil })
		if want := []string{"Zoë Müller", "José Núñez", "Anaïs Œdipe", "René Roe"}[:c.rows]; !reflect.DeepEqual(names, want) {
			t.Errorf("%s: %q, want %q", c.name, names, want)
		}
	}
}

func TestDialects(t *testing.T) {
	for _, c := range []struct {
		name, text string
		delim      byte
	}{
		{"comma", "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:30\n", ','},
		{"semicolon and decimal commas", "Platz;Name;Zeit\n1;Jo Lee;18:20,5\n2;Al Roe;18:30,1\n", ';'},
		{"semicolon and SURNAME, First", "Pos;Name;Time\n1;LEE, Jo;18,20\n2;ROE, Al;18,30\n3;DEE, Cy;19,10\n", ';'},
		{"tab and SURNAME, First", "Pos\tName\tTime\n1\tLEE, Jo\t18:20\n2\tROE, Al\t18:30\n", '\t'},
		{"bar", "Pos|Name|Time\n1|Jo Lee|18:20\n2|Al Roe|18:30\n", '|'},
		{"sep= line", "sep=;\nPos;Name;Time\n1;Jo Lee;18:20\n", ';'},
		{"titles with commas above semicolons", "Alder Bank, 5 km, Saturday, 3 January 2026\nWeather: cold, dry, windy, bright\n\nPos;Name;Time\n1;Jo Lee;18:20\n2;Al Roe;18:30\n", ';'},
		{"names with semicolons are rare, commas divide", "Pos,Name,Time,Notes\n1,Jo Lee,18:20,first; well done\n2,Al Roe,18:30,second; good\n", ','},
		{"no heading, semicolon, commas in times and names", "1;LEE, Jo;18:20,5\n2;ROE, Al;18:30,1\n3;DEE, Cy;19:30,1\n", ';'},
		{"every line in quotes", "\"Pos,Name,Time\"\n\"1,\"\"LEE, Jo\"\",18:20\"\n\"2,Al Roe,18:30\"\n", ','},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !strings.Contains(s.Dialect, "divided by "+delimiterNames[c.delim]) {
			t.Errorf("%s: %s", c.name, s.Dialect)
		}
		p := s.Parts[0]
		if p.Index(Time) < 0 || p.Index(Name) < 0 || p.Index(Position) != 0 {
			t.Errorf("%s: columns %v", c.name, p.Columns)
		}
		if p.RunOfFirst() != "alder-bank 2026-01-03" {
			t.Errorf("%s: run %s", c.name, p.RunOfFirst())
		}
	}
}

// RunOfFirst is the run of the first row, for tests.
func (p *Part) RunOfFirst() (run string) {
	p.Each(func(_ int, cells []string) error {
		course, day, session, ok := p.RunOf(cells)
		run = strings.TrimSpace(fmt.Sprintf("%s %v %s", course, day, session))
		if !ok {
			run = "not known"
		}
		return errStop
	})
	return run
}

func TestHostileText(t *testing.T) {
	for _, c := range []struct {
		name string
		data []byte
		say  string
	}{
		{"empty", nil, "empty"},
		{"white space", []byte(" \n\n\t\n"), "no text"},
		{"zero bytes", make([]byte, 10000), "zero"},
		{"a million columns", []byte(strings.Repeat("a,", 1_000_000)), "more than 1000 cells"},
		{"a very long line", bytes.Repeat([]byte("abcdefgh"), 1<<20), "more than"},
		{"a very long line in the middle of a large file", append(append(bytes.Repeat([]byte("1,Jo Lee,18:20\n"), 1<<18), bytes.Repeat([]byte("x"), 40<<20)...), bytes.Repeat([]byte("\n1,Jo Lee,18:20"), 1<<18)...), "row"},
		{"control characters", bytes.Repeat([]byte{1, 2, 3, 'a', '\n'}, 1000), "control characters"},
		{"PDF", []byte("%PDF-1.7 …"), "PDF"},
		{"old workbook", []byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 …"), "old XLS"},
		{"workbook with a password", []byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1 E\x00n\x00c\x00r\x00y\x00p\x00t\x00e\x00d\x00P\x00a\x00c\x00k\x00a\x00g\x00e\x00"), "save a copy without one"},
		{"shortcut", append([]byte("\x4C\x00\x00\x00\x01\x14\x02\x00"), make([]byte, 200)...), "copy that file itself"},
		{"shortcut to a page", []byte("[InternetShortcut]\r\nURL=https://example.org/results\r\n"), "it is a shortcut"},
		{"program", []byte("MZ\x90\x00\x03\x00\x00\x00"), "it is a program"},
		{"photo of a telephone", []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00"), "it is a picture"},
		{"picture of a web page", []byte("RIFF\x00\x00\x00\x00WEBPVP8 "), "it is a picture"},
		{"film", []byte("\x00\x00\x00\x18ftypmp42\x00\x00\x00\x00"), "it is a film"},
		{"no list", []byte("Item,Price\nMilk,1.20\nBread,2.40\n"), "take it out of the folder"},
		{"web page", []byte("<!DOCTYPE html><table>"), "web page"},
		{"program data", []byte(`[{"name": "Jo"}]`), "JSON"},
		{"prose", []byte("Dear all,\nthank you, it was a lovely morning, see you next week.\n"), "no heading"},
	} {
		started := time.Now()
		s, err := Read("../../x/"+c.name+".csv", c.data, Options{Course: "x", Date: "2026-01-03"})
		if err == nil && len(s.Parts) > 0 {
			err = s.Parts[0].Each(func(int, []string) error { return nil })
		}
		if err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: %v, want something with %q", c.name, err, c.say)
		}
		if d := time.Since(started); d > 5*time.Second {
			t.Errorf("%s took %v", c.name, d)
		}
	}
}

// Strings that look like formulas, paths or marks of direction pass through as
// text, and a course can't be a path.
func TestHarmlessText(t *testing.T) {
	cells := []string{"=cmd|' /C calc'!A0", "+1+1", "@SUM(A1)", "\u202Eeoj\u202C", "a\u200Bb", "O'Néill-Smith"}
	text := "Pos,Name,Time,Course,Date\n"
	for i, c := range cells {
		text += fmt.Sprintf("%d,%s,18:%02d,../../etc/passwd,2026-01-03\n", i+1, c, i)
	}
	s, err := Read("x.csv", []byte(text), Options{})
	if err != nil {
		t.Fatal(err)
	}
	i := 0
	s.Parts[0].Each(func(_ int, got []string) error {
		if got[1] != cells[i] {
			t.Errorf("%q came through as %q", cells[i], got[1])
		}
		if course, _, _, ok := s.Parts[0].RunOf(got); !ok || strings.ContainsAny(course, "/\\.") {
			t.Errorf("course %q", course)
		}
		i++
		return nil
	})
	if i != len(cells) {
		t.Errorf("%d rows, want %d", i, len(cells))
	}
}

// bigSheet is a season list of n rows.
func bigSheet(n int) []byte {
	var b bytes.Buffer
	b.WriteString("position,name,number,age group,sex,club,time,course,date\n")
	day := unit.NewDay(2020, 1, 4)
	for i := 0; i < n; i++ {
		fmt.Fprintf(&b, "%d,Runner Number%d,A%d,M40-44,M,Fell Harriers,%d:%02d,alder-bank,%s\n", i%200+1, i, i, 17+i%200/10, i%60, day+unit.Day(i/2000*7))
	}
	return b.Bytes()
}

func TestLargeTextIsStreamed(t *testing.T) {
	const n = 300_000
	s, err := Read("season.csv", bigSheet(n), Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := s.Parts[0]
	if p.Whole {
		t.Fatal("the sheet is not large")
	}
	rows, last := 0, ""
	perPass := testing.AllocsPerRun(1, func() {
		rows = 0
		p.Each(func(row int, cells []string) error {
			course, day, _, ok := p.RunOf(cells)
			if !ok || course != "alder-bank" || row != rows+2 {
				t.Fatalf("row %d: %q %v %v", row, course, day, ok)
			}
			rows++
			if rows == n {
				last = day.String()
			}
			return nil
		})
	})
	if rows != n || last != (unit.NewDay(2020, 1, 4)+unit.Day((n-1)/2000*7)).String() {
		t.Errorf("%d rows, last day %s", rows, last)
	}
	if perPass > 3000 {
		t.Errorf("%v allocations in a pass of %d rows", perPass, n)
	}
}

func BenchmarkLargeText(b *testing.B) {
	const n = 1_000_000
	data := bigSheet(n)
	s, err := Read("season.csv", data, Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		rows := 0
		s.Parts[0].Each(func(_ int, cells []string) error {
			if _, _, _, ok := s.Parts[0].RunOf(cells); ok {
				rows++
			}
			return nil
		})
		if rows != n {
			b.Fatal(rows)
		}
	}
	b.ReportMetric(float64(n)*float64(b.N)/b.Elapsed().Seconds()/1e6, "Mrows/s")
}

func BenchmarkSmallText(b *testing.B) {
	var t bytes.Buffer
	t.WriteString("Pos,Name,Age Cat,Gender,Club,Time\n")
	for i := 0; i < 200; i++ {
		fmt.Fprintf(&t, "%d,Robin%c %cellier,M40-44,M,Fell Harriers,%d:%02d\n", i+1, 'a'+i%26, 'A'+i/26, 17+i/10, i%60)
	}
	data := t.Bytes()
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		s, err := Read("alder-bank/alder-bank_2026-01-03.csv", data, Options{})
		if err != nil {
			b.Fatal(err)
		}
		n := 0
		for pass := 0; pass < 2; pass++ {
			s.Parts[0].Each(func(int, []string) error { n++; return nil })
		}
		if n != 400 {
			b.Fatal(n)
		}
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{plainSheet, "sep=;\na;b\n", "\"a\"\"b\",c\r\n\"d\ne\",f", "1,\"Lee,24:31\n2,\"Roe\",3", "\"\"\"", "Pos;Name;Time\r1;A, B;24,5\r", "\xFF\xFEP\x00o\x00s\x00", "\xE9\xE8"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		text, _, _, err := decode(data)
		if err != nil {
			return
		}
		lex := newLexicon(Options{})
		limits := Limits{}.orDefault()
		sniff(text, lex, limits)
		for _, delim := range []byte{',', ';', '\t', '|'} {
			s := newScanner(text, delim, limits)
			total, prev := 0, 0
			for {
				row, cells, err := s.next()
				if err != nil || cells == nil {
					break
				}
				if row <= prev {
					t.Fatalf("row %d after %d", row, prev)
				}
				prev = row
				for _, c := range cells {
					total += len(c)
				}
			}
			if total > len(text) {
				t.Fatalf("%d bytes of cells from %d bytes of text", total, len(text))
			}
		}
	})
}

func TestFoldASCIIAgreesWithFold(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for n := 0; n < 20000; n++ {
		b := make([]byte, r.IntN(12))
		for i := range b {
			b[i] = "aAzZ09 #/%+'`.,-_:;\"()\t"[r.IntN(23)]
		}
		got, ok := foldASCII(nil, string(b))
		if want := fold(string(b)); !ok || string(got) != want {
			t.Fatalf("%q: %q, want %q", b, got, want)
		}
	}
}

func TestUnmangle(t *testing.T) {
	mangle := func(s string) string {
		var b strings.Builder
		for i := 0; i < len(s); i++ {
			b.WriteRune(windows1252[s[i]])
		}
		return b.String()
	}
	for _, s := range []string{"lördag", "Étang Vallier – 5 km", "Łąka", "naïve café", "Zürich ß"} {
		if got := unmangle(mangle(s)); got != s {
			t.Errorf("%q mangled once comes back as %q", s, got)
		}
		if got := unmangle(mangle(mangle(s))); got != s {
			t.Errorf("%q mangled twice comes back as %q", s, got)
		}
		if got := unmangle(s); got != s {
			t.Errorf("%q is changed to %q", s, got)
		}
	}
}

// However a text is divided, it keeps its lines: a row has the number that a
// person sees.
func FuzzDivide(f *testing.F) {
	for _, s := range []string{plainSheet, "sep=;\na;b\n", "1. Jo Lee 18:20\n2. Al Roe 18:31\n", "Pos   Name     Time\n1     Jo Lee   18:20\n2     Al Roe   18:31\n10    Cy Dee   19:02\n",
		"\"1,\"\"Lee, Jo\"\",18:20\"\n\"2,\"\"Roe, Al\"\",18:31\"\n", "WOMEN\n1 Jo Lee 18:20\nMEN\n1 Al Roe 18:02\n\n", "18:20 Jo Lee\r18:31 Al Roe\r", "é  ü  ö\n1:02  b  c\n2:03  e  f\n",
		"Hi all,\nresults of 3 January 2026, Alder Bank: Jo Lee 18:20, then Al Roe in 18:31 and Cy Dee (19:02).\nSorry, Al was 18:41.\n", "[03/01/2026, 09:31] Mo: 1 Jo Lee 18:20\n[03/01/2026, 09:32] Mo: 2 Al Roe 18:31\n", "Name: Jo Lee\nTime: 18:20\n\nName: Al Roe\nTime: 18:31\n",
		"Place\t1\t2\t3\nName\tJo Lee\tAl Roe\tCy Dee\nTime\t18:20\t18:31\t19:02\n", "place,field,value\n1,name,Jo Lee\n1,time,18:20\n2,name,Al Roe\n2,time,18:31\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		text, _, _, err := decode(data)
		if err != nil || len(bytes.TrimSpace(text)) == 0 {
			return
		}
		out, d := divide(text, newLexicon(Options{}), Limits{}.orDefault())
		if d.delim == 0 || d.why == "" {
			t.Fatalf("%q: %+v", text, d)
		}
		if d.delim == '\t' && strings.HasPrefix(d.why, "no mark") && !strings.Contains(d.why, "the rows are counted so") {
			if a, b := len(textLines(text)), len(textLines(out)); a != b {
				t.Fatalf("%d lines became %d", a, b)
			}
		}
	})
}

// A sheet too large to be held whole is read if it is a plain table, and
// otherwise held with a question: nothing on it is passed over.
func TestLargeTexts(t *testing.T) {
	rows := strings.Repeat("1,Jo Lee,18:20,1,Al Roe,18:31\n", wholeBytes/30+1)
	plain := strings.Repeat("1,Jo Lee of somewhere,18:20\n", wholeBytes/28+1)
	for _, c := range []struct{ name, text, kind string }{
		{"plain", "Pos,Name,Time\n" + plain, ""},
		{"side by side", "Pos,Name,Time,Pos,Name,Time\n" + rows, "sheet-too-large"},
		{"sections", "Pos,Name,Time\n1,Jo Lee,18:20\nWomen\n" + plain, "sheet-too-large"},
		{"runs", "Pos,Name,Time\n1,Jo Lee,18:20\nSaturday 10 January 2026\n" + plain, "sheet-too-large"},
	} {
		s, err := Read("alder-bank_2026-01-03.csv", []byte(c.text), Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		got := ""
		for _, p := range s.Problems {
			if p.Severity == place.Waits {
				got = p.Kind
			}
		}
		if got != c.kind || s.Parts[0].Whole {
			t.Errorf("%s: asks %q, want %q", c.name, got, c.kind)
		}
	}
}

// A line of a numbered list is a finisher's, however it is written; what stands
// above and below the list is not.
func TestNumberedLines(t *testing.T) {
	text := "Hi Joan, results from Copperhaw Lane 14 Nov 2026 (sorry bit late)\n\n1. Tom Ashlar 19.45\n2. Mary Quill 21.20\n3. Ben Ossory (dog) 21.44\n4. ??? 22.10\n5. Al Roe no time\n6 Cy Dee\n7. Lew Tarn 24.5\n8.\n9. Pam Corrie 59.10\n10. Di Fox\n\n11 marshals helped\nThanks\nDerek\n"
	s := readCase(t, "results.txt", text)
	p := s.Parts[0]
	if p.Course.Value != "copperhaw-lane" {
		t.Errorf("course %q", p.Course.Value)
	}
	var got []string
	if err := p.Each(func(row int, cells []string) error {
		got = append(got, fmt.Sprintf("%d:%s", row, strings.Join(cells[:3], "|")))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	want := "3:1|Tom Ashlar|19.45 4:2|Mary Quill|21.20 5:3|Ben Ossory (dog)|21.44 6:4|???|22.10 7:5|Al Roe|no time 8:6|Cy Dee| 9:7|Lew Tarn|24.5 10:8|| 11:9|Pam Corrie|59.10 12:10|Di Fox|"
	if strings.Join(got, " ") != want {
		t.Errorf("read\n%s, want\n%s", strings.Join(got, " "), want)
	}
}

// The marks of a quoted message are no part of the positions, and a person in one
// can be taken out.
func TestQuotedMail(t *testing.T) {
	text := "From: Derek\nSubject: results\n\n> Brackmoor Green 7 November 2026\n> \n> Pos  Name              Cat   Time\n> 1    Ivor Thackley     SM    18:38\n> 2    Doreen Hollin     M50   23:59\n> 3    Jack Wragg        U14   24:10\n> 4?   Una Quarrel       W50   24:12\n> 5    Zed Olan          M50   25:12\n"
	s := readCase(t, "mail.txt", text)
	p := s.Parts[0]
	n := 0
	if err := p.Each(func(row int, cells []string) error {
		n++
		if pos := cellAt(cells, p.Index(Position)); row != n+6 || strings.TrimSuffix(pos, "?") != fmt.Sprint(n) {
			t.Errorf("row %d has position %q", row, pos)
		}
		return nil
	}); err != nil || n != 5 {
		t.Errorf("%d rows, %v", n, err)
	}
	out, err := Redact("mail.txt", []byte(text), Options{}, Redaction{Rows: []RowRef{{0, 9}}, Words: []string{"Jack Wragg"}, Text: "Anonymous", Keep: map[Meaning]bool{Position: true, Time: true}})
	if err != nil || strings.Contains(string(out), "Wragg") || !strings.Contains(string(out), "24:10") {
		t.Errorf("redacted: %s, %v", out, err)
	}
}

// A column with a plain heading that is not taken is told; an age that cannot be
// makes no such column.
func TestColumnNotUsed(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Pos,Name,Age,Time\n1,Jo Lee,34,18:20\n2,Al Roe,140,18:31\n3,Cy Dee,11,19:00\n", ""},
		{"Pos,Name,Age,Time\n1,Jo Lee,34.0,18:20\n2,Al Roe,14.0,18:31\n3,Cy Dee,,19:00\n", ""},
		{"Pos,Name,Age,Time\n1,Jo Lee,64.31,18:20\n2,Al Roe,61.20,18:31\n3,Cy Dee,58.91,19:00\n", "C column-not-used"},
		{"Pos,Name,Age,Time\n1,Jo Lee,11.5,18:20\n2,Al Roe,12.1,18:31\n3,Cy Dee,11.9,19:00\n", "C age-column-not-used"},
		{"Pos,Name,Age,Time\n1,Jo Lee,341,18:20\n2,Al Roe,1404,18:31\n3,Cy Dee,211,19:00\n", "C age-column-not-used"},
		{"Pos,Name,Age,YOB,Time\n1,Jo Lee,341,1990,18:20\n2,Al Roe,1404,1981,18:31\n3,Cy Dee,211,1972,19:00\n", ""},
		{"Pos,Name,Category,Time\n1,Jo Lee,34,18:20\n2,Al Roe,0,18:31\n3,Cy Dee,11,19:00\n", ""},
		{"Pos,Name,Time\n1st place,Jo Lee,18:20\nrunner-up,Al Roe,18:31\nthird one,Cy Dee,19:00\n", "A column-not-used"},
	} {
		s := readCase(t, "alder-bank_2026-01-03.csv", c.text)
		var got []string
		for _, q := range s.Parts[0].Problems {
			if strings.HasSuffix(q.Kind, ColumnNotUsed) {
				got = append(got, q.Place.Column+" "+q.Kind)
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", c.text, got, c.want)
		}
		if c.want == "" && s.Parts[0].Index(Age) < 0 {
			if s.Parts[0].Index(BirthYear) < 0 {
				t.Errorf("%s: no column of ages", c.text)
			}
		}
	}
}

func readCase(t *testing.T, name, text string) *Sheet {
	t.Helper()
	s, err := Read(name, []byte(text), Options{})
	if err != nil || len(s.Parts) != 1 {
		t.Fatalf("%q: %d parts, %v", text, len(s.Parts), err)
	}
	return s
}

// Times with marks behind them are still times of which another column is a part.
func TestPaceBesideMarkedTimes(t *testing.T) {
	s := readCase(t, "alder-bank_2026-01-03.csv", "Plads,Tid,Navn,Tempo\n1,21:50,Jo Lee,4:22\n2,22:03*,Al Roe,4:24\n3,24:26 SB,Cy Dee,4:53\n4,25:00*,Di Fox,5:00\n5,26:15 SB,Ed Gow,5:15\n6,27:05*,Fay Orr,5:25\n")
	if p := s.Parts[0]; p.Index(Time) != 1 || p.Index(Pace) != 3 {
		t.Errorf("time in column %d, pace in %d", p.Index(Time), p.Index(Pace))
	}
}

// Tabs that divide are none that align, though some rows go on in the next line within quotes.
func TestTabsWithLineBreaks(t *testing.T) {
	lines := []string{"Pos\tName\tClub\tCat pos\tTime\tNotes\t\t"}
	for i := range 20 {
		row := fmt.Sprintf("%d\tJo Lee\t\t%d\t20:%02d", i+1, i+1, i)
		if i%6 == 2 {
			lines = append(lines, row+"\t\"visiting", "see you soon\"\t\t")
		} else {
			lines = append(lines, row+"\t\t\t")
		}
	}
	if out, ok := alignedByTabs(lines); ok {
		t.Errorf("cells are moved:\n%s", strings.Join(out, "\n"))
	}
	// and headings of two lines, on each page
	lines = nil
	for page := range 2 {
		lines = append(lines, "\"Official", "time\"\t\"Club", "name\"\t\"Last", "name\"\t\"First", "name\"\tPoints\t\"Age", "group\"\tNote")
		for i := range 10 {
			club, note := "Hill AC", ""
			if i%5 == 3 {
				club, note = "", "new shoes"
			}
			lines = append(lines, fmt.Sprintf("2%d:%02d\t%s\tLee\tJo\t%d\tVet 45\t%s", page, i, club, 90-i, note))
		}
	}
	if out, ok := alignedByTabs(lines); ok {
		t.Errorf("cells are moved:\n%s", strings.Join(out, "\n"))
	}
}

// Tabs together stand around a blank cell where rows without any have as many.
func TestTabsAroundBlankCells(t *testing.T) {
	lines := []string{"Rang\tName\tVerein\tKlasse\tZeit\tAbstand"}
	for i := range 12 {
		club := ""
		if i%3 == 0 {
			club = "Hill AC"
		}
		lines = append(lines, fmt.Sprintf("%d\tJo Lee\t%s\tM30\t20:%02d\t+0:%02d", i+1, club, i, i))
	}
	lines = append(lines, "13\t23:09\tAl Roe", "14\t23:36\tCy Dee", "15\t23:57\tDi Fox")
	if out, ok := alignedByTabs(lines); ok {
		t.Errorf("cells are moved:\n%s", strings.Join(out, "\n"))
	}
}

// Names and times that stand in one another's column on some rows are put into their own; a club is no
// name, and a time in place of the name alone stays where nothing else shows that lines were pasted.
func TestExchangedCells(t *testing.T) {
	head := "Pos,Name,Club,Time\n1,Jo Lee,Hill Folk,18:20\n2,Al Roe,,18:31\n3,Cy Dee,Hill Folk,19:02\n4,Di Fox,,19:10\n5,Ed Gow,,19:28\n"
	for rows, want := range map[string]string{
		"6,19:40,Fay Ivy,\n7,19:51,,Gus Orr\n8,19:59,?,\n": "Fay Ivy 19:40, Gus Orr 19:51,  19:59",
		"6,19:40,Hill Folk,\n":                             "19:40 ",
		"6,19:40,Mill AC,\n":                               "19:40 ",
		"6,19:40,Lea Ash,19:40\n":                          "19:40 19:40",
		"6,Fay Ivy,19:40,\n":                               "Fay Ivy 19:40",
		"6,,Fay Ivy,19:40\n":                               " 19:40",
	} {
		s := readCase(t, "alder-bank_2026-01-03.csv", head+rows)
		p, got := s.Parts[0], []string(nil)
		p.Each(func(row int, cells []string) error {
			if row > 6 {
				got = append(got, cellAt(cells, p.Index(Name))+" "+cellAt(cells, p.Index(Time)))
			}
			return nil
		})
		if strings.Join(got, ", ") != want {
			t.Errorf("%q: %q, want %q", rows, strings.Join(got, ", "), want)
		}
	}
}

// A time that stands behind the name, in its cell, is the time of a row that has none, with the doubt that
// a mark throws on it; that of a best is not.
func TestTimeBehindName(t *testing.T) {
	rows := "Pos,Name,Time\n1,Jo Lee,18:20\n2,Al Roe,18:31\n3,Cy Dee,19:02\n4,%s,\n5,Ed Gow,19:28\n"
	for cell, want := range map[string]string{
		"Di Fox '19:10":        "Di Fox 19:10",
		"Di Fox (19:10)":       "Di Fox 19:10",
		"Di Fox *19:10*":       "Di Fox 19:10",
		"Di Fox ~19:10":        "Di Fox 19:10?",
		"Di Fox 19:10?":        "Di Fox 19:10?",
		"Di Fox PB 19:10":      "Di Fox PB 19:10 ",
		"Di Fox (PB 19:10)":    "Di Fox (PB 19:10) ",
		"Di Fox came in 19:10": "Di Fox came in 19:10 ",
	} {
		s := readCase(t, "alder-bank_2026-01-03.csv", fmt.Sprintf(rows, cell))
		p, got := s.Parts[0], ""
		p.Each(func(row int, cells []string) error {
			if row == 5 {
				got = cellAt(cells, p.Index(Name)) + " " + cellAt(cells, p.Index(Time))
			}
			return nil
		})
		if got != want {
			t.Errorf("%q: %q, want %q", cell, got, want)
		}
	}
}
