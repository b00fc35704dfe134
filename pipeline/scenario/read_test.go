package scenario

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"lapwing/pipeline/unit"
)

// grid reads a sheet back as cells, with code of its own: general libraries and
// what the house style says of encoding and delimiter. Row 1 is grid[0].
func (h *house) grid(data []byte, tab string) ([][]string, error) {
	if h.workbook {
		f, err := excelize.OpenReader(bytes.NewReader(data))
		if err != nil {
			return nil, err
		}
		defer f.Close()
		return f.GetRows(tab)
	}
	var text string
	var err error
	switch h.charset {
	case utf16LE:
		text, err = unicode.UTF16(unicode.LittleEndian, unicode.ExpectBOM).NewDecoder().String(string(data))
	case windows1252:
		text, err = charmap.Windows1252.NewDecoder().String(string(data))
	default:
		text = strings.TrimPrefix(string(data), "\ufeff")
	}
	if err != nil {
		return nil, err
	}
	var out [][]string
	for _, line := range strings.Split(strings.TrimSuffix(text, h.lineEnd), h.lineEnd) {
		if line == "" {
			out = append(out, nil)
			continue
		}
		r := csv.NewReader(strings.NewReader(line))
		r.Comma, r.LazyQuotes = rune(h.delimiter[0]), h.clock(60_000) == primeClock(60_000)
		cells, err := r.Read()
		if err != nil {
			return nil, fmt.Errorf("%q: %w", line, err)
		}
		out = append(out, cells)
	}
	return out, nil
}

// Dates and times in workbooks are numbers as ECMA-376 Part 1, 18.17.4 has them:
// days since 30 December 1899 and fractions of a day.
func TestWorkbookValues(t *testing.T) {
	h := demoHouses()[pikestow]
	date := unit.NewDay(2026, 1, 4)
	data, tab, rows, err := h.book(heading{course: "Pikestow Wood", metres: 5000, date: date}, []entry{
		{person: 1, position: 1, given: "=Ann", surname: "O'Hara", sex: 'W', born: unit.NewDay(1986, 1, 3), timeMS: 1_471_000, status: "ok"}})
	if err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	raw, err := f.GetRows(tab, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	row := raw[rows[0]-1]
	// 4 January 2026 is serial 46026, 3 January 1986 is 31415; 24:31 is 1471 of 86400 seconds.
	if row[0] != "46026" || row[5] != "31415" || row[3] != "=Ann" {
		t.Errorf("date %s, birth date %s, name %s", row[0], row[5], row[3])
	}
	if v, err := strconv.ParseFloat(row[8], 64); err != nil || math.Abs(v*86400-1471) > 1e-6 {
		t.Errorf("time is stored as %s, which is %g seconds, want 1471", row[8], v*86400)
	}
	if kind, err := f.GetCellType(tab, "D2"); err != nil || kind == excelize.CellTypeFormula {
		t.Errorf("a name that begins with = became a formula (%v, %v)", kind, err)
	}
}

// checkTruth compares every line of the truth with the cells that stand there,
// and every line of the sheets with the truth: nothing more, nothing less.
func checkTruth(t *testing.T, d *district, truth *Truth, read func(path string) []byte) {
	t.Helper()
	type key struct{ sheet, tab string }
	grids := map[key][][]string{}
	lines := map[key]int{}
	bad := 0
	for _, l := range truth.Lines {
		run := truth.Runs[l.Run]
		h := d.courses[run.Course].house
		k := key{l.Sheet, l.Tab}
		if grids[k] == nil {
			g, err := h.grid(read(l.Sheet), l.Tab)
			if err != nil {
				t.Fatalf("%s: %v", l.Sheet, err)
			}
			grids[k] = g
		}
		lines[k]++
		if l.Row > len(grids[k]) {
			t.Fatalf("%s has %d rows, truth says row %d", l.Sheet, len(grids[k]), l.Row)
		}
		row := grids[k][l.Row-1]
		at := func(f field) string {
			for i, c := range h.columns {
				if c.holds == f && i < len(row) {
					return row[i]
				}
			}
			return ""
		}
		wantPlace, wantTime := "", ""
		if l.Position > 0 {
			wantPlace = fmt.Sprint(l.Position)
		}
		switch {
		case l.Status == "dnf":
			wantTime = "DNF"
		case l.TimeMS > 0 && h.workbook: // as formatted by the library: minutes and seconds
			wantTime = fmt.Sprintf("%02d:%02d", l.TimeMS/60000, l.TimeMS/1000%60)
			if l.TimeMS/60000 < 10 {
				wantTime = wantTime[1:]
			}
		case l.TimeMS > 0:
			wantTime = h.clock(l.TimeMS)
		}
		gotTime := at(timeField)
		if h.workbook {
			gotTime = strings.TrimSuffix(gotTime, ".0")
		}
		if at(position) != wantPlace || gotTime != wantTime {
			if bad++; bad < 10 {
				t.Errorf("%s row %d: %q, truth: place %q, time %q", l.Sheet, l.Row, row, wantPlace, wantTime)
			}
		}
		if c := truth.Courses[run.Course]; c.Numbers && l.Status == "ok" {
			if n := at(number); n != "" && n != fmt.Sprint(truth.People[l.Person].Number) {
				if slip := differ(n, fmt.Sprint(truth.People[l.Person].Number)); slip > 1 {
					t.Errorf("%s row %d: number %s is not that of person %d", l.Sheet, l.Row, n, l.Person)
				}
			}
		}
	}
	for k, g := range grids {
		h := d.courses[courseOf(truth, k.sheet)].house
		body := 0
		for i, row := range g {
			if i >= h.headingRow() && len(row) >= len(h.columns)-4 && len(row) > 1 {
				body++
			}
		}
		if body != lines[k] {
			t.Errorf("%s holds %d lines, truth %d", k.sheet, body, lines[k])
		}
	}
}

func courseOf(truth *Truth, sheet string) int {
	for _, l := range truth.Lines {
		if l.Sheet == sheet {
			return truth.Runs[l.Run].Course
		}
	}
	return -1
}

func differ(a, b string) (n int) {
	if len(a) != len(b) {
		return len(a) + len(b)
	}
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}
