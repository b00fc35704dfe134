package sheet

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// TestPlainTable holds what is passed over to what would be looked through: both ways it is
// read the same, and whatever wants mending is no plain table.
func TestPlainTable(t *testing.T) {
	table := func(delim, heading, odd string) string {
		var b strings.Builder
		fmt.Fprintln(&b, strings.ReplaceAll(heading, ",", delim))
		for i := range 12 {
			row := fmt.Sprintf("%d,Jo O'Lee-%c,F,VW45-49,2026-03-07,2%d:1%d", i+1, 'A'+i, i/3, i%9)
			if i == 7 && odd != "" {
				row = odd
			}
			fmt.Fprintln(&b, strings.ReplaceAll(row, ",", delim))
		}
		return b.String()
	}
	const heading = "Place,Name,Sex,Group,Date,Time"
	for _, c := range []struct {
		name, text string
		plain      bool
	}{
		{"commas", table(",", heading, ""), true},
		{"a heading that is not known", table(",", "Place,Name,Rigmarole,Group,Date,Time", ""), true},
		{"names under the sexes", "Pos,Gents,Ladies,Time\n1,Al Roe,,18:20\n2,,Jo Lee,18:31\n3,Cy Dee,,18:40\n4,,Di Fox,18:42\n5,Ed Gow,,18:45\n6,Flo Hay,,18:46\n", true},
		{"semicolons", table(";", heading, ""), true},
		{"tabs", table("\t", heading, ""), true},
		{"line ends of another system", strings.ReplaceAll(table(",", heading, ""), "\n", "\r\n"), true},
		{"no line end at the end", strings.TrimSuffix(table(",", heading, ""), "\n"), true},
		{"letters of other alphabets", table(",", heading, "8,Łucja Żak Ωμέγα,F,VW45,,21:03:09"), true},
		{"a line without a time", table(",", heading, "8,Jo Lee,F,VW45,,"), true},
		{"a line with a status", table(",", heading, "8,Jo Lee,F,VW45,,DNF"), true},
		{"a heading again", table(",", heading, heading), false},
		{"a section", table(",", heading, "Women,,,,,"), false},
		{"a row of delimiters", table(",", heading, ",,,,,"), false},
		{"a time in words", table(",", heading, "8,Jo Lee,F,VW45,,twenty past"), false},
		{"a letter in a time", table(",", heading, "8,Jo Lee,F,VW45,,2l:03"), false},
		{"a time with a full stop", table(",", heading, "8,Jo Lee,F,VW45,,21.03"), false},
		{"seconds alone", table(",", heading, "8,Jo Lee,F,VW45,,:03"), false},
		{"seconds over sixty", table(",", heading, "8,Jo Lee,F,VW45,,21:73"), false},
		{"figures of another script", table(",", heading, "8,Jo Lee,F,VW45,,２１:０３"), false},
		{"a place with a mark", table(",", heading, "8.,Jo Lee,F,VW45,,21:03"), false},
		{"a place with its name", table(",", heading, "8 Jo Lee,,F,VW45,,21:03"), false},
		{"quotes", table(",", heading, "8,\"Lee, Jo\",F,VW45,,21:03"), false},
		{"a quote at a beginning", table(",", heading, "8,'Jo Lee',F,VW45,,21:03"), false},
		{"a cell too many", table(",", heading, "8,Jo,Lee,F,VW45,,21:03"), false},
		{"a cell too few", table(",", heading, "8,Jo Lee,F,21:03"), false},
		{"a gap within a time", table(",", heading, "8,Jo Lee,F,VW45,,21: 03"), false},
		{"a gap at the end of a cell", table(",", heading, "8,Jo Lee ,F,VW45,,21:03"), false},
		{"a blank line", table(",", heading, ""+"\n"), false},
		{"two columns of times", strings.ReplaceAll(table(",", heading, ""), "2026-03-07", "21:03"), false},
		{"two marks in the heading", table(",", "Place,Name;a;b,Sex,Group,Date,Time", ""), false},
		{"no heading", table(",", "1,Jo Lee,F,VW45,2026-03-07,20:00", ""), false},
		{"a title above", "Withy Bank 7 March\n" + table(",", heading, ""), false},
		{"few rows", "Place,Name,Time\n1,Jo Lee,20:00\n2,Al Roe,21:00\n", false},
	} {
		if got := plainTable([]byte(c.text)); got != c.plain {
			t.Errorf("%s: a plain table: %v, want %v", c.name, got, c.plain)
		}
		if c.plain {
			sameBothWays(t, c.name, []byte(c.text))
		}
	}
}

// TestRandomPlainTables does the same with tables of random columns in random order, some with
// a heading over the wrong column, headings of another table, rows moved by a cell, rows of
// nobody, or the words of a total, all in cells that are plain.
func TestRandomPlainTables(t *testing.T) {
	r := rand.New(rand.NewPCG(2026, 3))
	pick := func(words string) string { w := strings.Split(words, "|"); return w[r.IntN(len(w))] }
	columns := [][2]string{
		{"Place|Pos|Rang|Clt|Platz", "#"}, {"Name|Runner|Nom|Läufer|Corredor", "Jo Lee|Al Roe|Cy Dee|Unknown|Mary-Jane O'Hay|LEE Jo|Total|Women|Mill Harriers"},
		{"Given name|Vorname|Prénom", "Jo|Al|Cy|Di"}, {"Family name|Nachname|Last", "Lee|Roe|Dee|Fox"},
		{"Sex|Gender|M|Geschlecht|Men|Women", "M|F|W|H|"}, {"Group|Category|Age group|AK", "M40|W45-49|Senior|U18|VM|"}, {"Age|Alter", "9|34|61|"}, {"Born|Year", "1984|2011|"},
		{"Club|Team|Verein|Notes", "Mill Harriers|Fell AC|Jo Lee|DNF||"}, {"Time|Zeit|Temps|Finish|Chip|Was", ":"}, {"Date|Datum", "2026-03-07|2026-03-14"}, {"Course|Ort|Lap", "Alder Bank|Withy Mill"}, {"Points|Bib|Runs|Cat pos", "1|2|100|99|7"},
	}
	plain := 0
	for range 1500 {
		chosen := r.Perm(len(columns))[:3+r.IntN(6)]
		if !slices.Contains(chosen, 9) {
			chosen[r.IntN(len(chosen))] = 9
		}
		var rows [][]string
		head := make([]string, len(chosen))
		for i, c := range chosen {
			head[i] = pick(columns[c][0])
		}
		if r.IntN(8) == 0 {
			head = append(head[1:], head[0])
		}
		rows = append(rows, head)
		clock := 900 + r.IntN(600)
		for n := range 6 + r.IntN(20) {
			row := make([]string, len(chosen))
			clock += r.IntN(60)
			for i, c := range chosen {
				switch words := columns[c][1]; words {
				case "#":
					row[i] = fmt.Sprint(n + 1)
				case ":":
					if row[i] = fmt.Sprintf("%d:%02d", clock/60, clock%60); r.IntN(15) == 0 {
						row[i] = pick("DNF||DNS|0:00|59:59")
					}
				default:
					row[i] = pick(words)
				}
			}
			rows = append(rows, row)
		}
		var b strings.Builder
		for _, row := range rows {
			fmt.Fprintln(&b, strings.Join(row, ";"))
		}
		if plainTable([]byte(b.String())) {
			plain++
			sameBothWays(t, b.String(), []byte(b.String()))
		}
		if t.Failed() {
			return
		}
	}
	if plain < 500 {
		t.Errorf("%d of 1500 were plain", plain)
	}
}

// sameBothWays reads a plain table at one look, and looked through: all that is known of the
// sheet, and its rows, are the same.
func sameBothWays(t *testing.T, name string, text []byte) {
	t.Helper()
	read := func(o Options) (sheet string, rows [][]string) {
		s, err := Read("withy-bank_2026-03-07.csv", text, o)
		if err != nil {
			return err.Error(), nil
		}
		sheet = fmt.Sprintf("%s %s %+v", s.Encoding, s.Dialect, s.Problems)
		for _, p := range s.Parts {
			sheet += fmt.Sprintf("\n%s %d %+v %q %+v %+v", p.Kind, p.HeadingRow, p.Columns, p.Titles, p.Problems, p.Skipped)
			p.Each(func(row int, cells []string) error {
				rows = append(rows, append([]string{fmt.Sprint(row)}, cells...))
				return nil
			})
		}
		return sheet, rows
	}
	a, rowsA := read(Options{})
	b, rowsB := read(Options{typed: true})
	if a != b {
		t.Errorf("%s: at one look:\n%s\nlooked through:\n%s", name, a, b)
	}
	if !reflect.DeepEqual(rowsA, rowsB) {
		t.Errorf("%s: other rows: %v, looked through %v", name, rowsA, rowsB)
	}
}
