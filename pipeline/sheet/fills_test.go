package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// Colours say what a line beside the table says of them: sexes, and how races ended. Without
// such a line, and where every other row is shaded, they say nothing.
func TestColoursOfRows(t *testing.T) {
	const pink, blue, yellow, grey = "FFC0CB", "ADD8E6", "FFFF00", "DDDDDD"
	for _, k := range []struct {
		what    string
		rows    []string // colours of the four rows
		lines   [][2]string
		meaning Meaning
		want    string
	}{
		{"lines in the colours", []string{pink, blue, blue, pink}, [][2]string{{"Women", pink}, {"Men", blue}}, Sex, "women men men women"},
		{"lines that name the colours", []string{pink, blue, blue, pink}, [][2]string{{"rosa = Frauen", ""}, {"blau = Männer", ""}}, Sex, "women men men women"},
		{"no legend", []string{pink, blue, blue, pink}, nil, Sex, "none"},
		{"one of the two", []string{pink, blue, blue, pink}, [][2]string{{"Women", pink}}, Sex, "none"},
		{"how a race ended", []string{"", "", yellow, ""}, [][2]string{{"yellow = did not finish", yellow}}, Notes, "- - did not finish -"},
		{"what was run, above by the colour's name", []string{"", "", yellow, ""}, [][2]string{{"Yellow = ran 2k only", ""}}, Notes, "- - ran 2k only -"},
		{"a light shade by the colour's name", []string{"", "", "FF9999", ""}, [][2]string{{"red = did not finish", ""}}, Notes, "- - did not finish -"},
		{"the shade and the colour", []string{"FF0000", "", "FF9999", ""}, [][2]string{{"red = did not finish", ""}}, Notes, "did not finish - - -"},
		{"something else", []string{"", "", yellow, ""}, [][2]string{{"Yellow = new personal best", ""}}, Notes, "none"},
		{"every other row shaded", []string{"", grey, "", grey}, [][2]string{{"Did not finish", grey}}, Notes, "none"},
	} {
		data := workbook(t, func(f *excelize.File) {
			put := func(row int, colour string, cells ...string) {
				for j, c := range cells {
					name := fmt.Sprintf("%c%d", 'A'+j, row)
					if err := f.SetCellStr("Sheet1", name, c); err != nil {
						t.Fatal(err)
					}
					if colour == "" {
						continue
					}
					style, err := f.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{colour}}})
					if err != nil {
						t.Fatal(err)
					}
					if err := f.SetCellStyle("Sheet1", name, name, style); err != nil {
						t.Fatal(err)
					}
				}
			}
			put(1, "", "Pos", "Name", "Time")
			for i, c := range k.rows {
				put(i+2, c, fmt.Sprint(i+1), "Jo Lee"+string(rune('a'+i)), fmt.Sprintf("18:2%d", i))
			}
			for i, l := range k.lines {
				put(7+i, l[1], l[0])
			}
		})
		s, err := Read("alder-bank_2026-01-03.xlsx", data, Options{})
		if err != nil || len(s.Parts) != 1 {
			t.Fatalf("%v, %d parts", err, len(s.Parts))
		}
		p := s.Parts[0]
		var got []string
		if at := p.Index(k.meaning); at >= 0 {
			p.Each(func(_ int, cells []string) error {
				got = append(got, orText(cellAt(cells, at), "-"))
				return nil
			})
		}
		if len(strings.Trim(strings.Join(got, ""), "-")) == 0 {
			got = []string{"none"}
		}
		if g := strings.Join(got, " "); g != k.want {
			t.Errorf("%s: %q, want %q", k.what, g, k.want)
		}
	}
}
