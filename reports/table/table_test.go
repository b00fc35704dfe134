package table

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/unit"
)

func TestShow(t *testing.T) {
	for _, c := range []struct {
		v    Value
		k    Kind
		want string
	}{
		{Number(2).Tie(true), Place, "2="}, {Number(2).Tie(false), Place, "2"}, {Number(1471), Clock, "24:31"}, {Number(3723), Clock, "1:02:03"},
		{Number(72.3456), Percent, "72.35"}, {Number(72.3).About(true), Percent, "72.30~"}, {Number(-3), Gap, "−3 s"}, {Number(12.4), Gap, "+12 s"},
		{Number(0), Gap, "0 s"}, {On(unit.NewDay(2026, 3, 7)), Day, "7 Mar 2026"}, {Number(math.NaN()), Whole, ""}, {Value{}, Clock, ""},
		{Maybe[int32](nil), Whole, ""}, {Words(" a\tb\u2028c\x1b[31m "), Text, "a b c [31m"}, {Words("  "), Text, ""}, {Words("and over"), Clock, "and over"},
	} {
		if got := c.v.Show(c.k); got != c.want {
			t.Errorf("%+v as %d shows %q, want %q", c.v, c.k, got, c.want)
		}
	}
}

// All 6600 whole-second times from 10:00 to 1:59:59 survive the workbook: the
// number of at most 15 digits that is stored is not below the second, and the
// workbook's own display is ours (ECMA-376 Part 1, 18.17.4: a time is a
// fraction of a day).
func TestEveryTimeSurvives(t *testing.T) {
	tab := &Table{Name: "T", Columns: []Column{{Head: "Time", Kind: Clock}}}
	for s := 600; s < 7200; s++ {
		tab.Add(nil, Number(s))
	}
	f := open(t, &Book{Made: "2026-03-07", Tabs: []*Tab{{Name: "T", Blocks: []Block{Full{tab}}}}})
	raw, err := f.GetRows("T", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	shown, err := f.GetRows("T")
	if err != nil {
		t.Fatal(err)
	}
	if len(raw) != 6601 || len(shown) != 6601 {
		t.Fatalf("%d and %d rows", len(raw), len(shown))
	}
	for i, r := range raw[1:] {
		s := int32(600 + i)
		days, ok := parse(r[0])
		if !ok || days*86400 < float64(s)-1e-9 || days*86400 > float64(s)+1e-6 {
			t.Errorf("%s is stored as %s days, %.12f s", unit.Clock(s), r[0], days*86400)
		}
		if shown[i+1][0] != unit.Clock(s) {
			t.Errorf("%s shows as %s", unit.Clock(s), shown[i+1][0])
		}
	}
}

func parse(s string) (float64, bool) {
	v := 0.0
	scale := 0.0
	for _, r := range s {
		switch {
		case r == '.' && scale == 0:
			scale = 1
		case r >= '0' && r <= '9':
			v = v*10 + float64(r-'0')
			scale *= 10
		default:
			return 0, false
		}
	}
	if scale > 0 {
		v /= scale
	}
	return v, true
}

func open(t *testing.T, b *Book) *excelize.File {
	t.Helper()
	var w bytes.Buffer
	if err := b.WriteWorkbook(&w); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&w)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func sample() *Book {
	full := &Table{Name: "Result", Legend: []Mark{{"PB", "personal best", "D6E9F8"}, {"CB", "course best", ""}}, Columns: []Column{
		{Head: "Place", Kind: Place}, {Head: "Name"}, {Head: "Time", Kind: Clock}, {Head: "Sex", Input: true, Choices: []string{"M", "W"}}}}
	full.Add([]string{"PB"}, Number(1), Words("=1+1"), Number(1471))
	full.Add(nil, Number(2).Tie(true), Words("@cmd|'/c calc'!A0"), Number(3723))
	full.Add(nil, Number(2).Tie(true), Words("-Dash & <Tag>"))
	board := &Tab{Name: "Board", OnePage: true}
	board.Add(Title{1, "A run"}, Para{Text: strings.Repeat("word ", 60)}, Big{[]Figure{{"3", "finishers"}}},
		Pair{&Table{Title: "Left", Columns: full.Columns[:3], Rows: full.Rows}, &Table{Title: "Right", Columns: full.Columns[:1]}})
	res := &Tab{Name: "Result"}
	res.Add(Title{1, "Result"}, ChartBlock{&Chart{Title: "Times", Category: "Name", Series: []Series{{Column: "Time"}, {Column: "Place", Line: true}}}}, Full{full})
	return &Book{Title: "R&D 5 km", Footer: "Issue 1", Made: "2026-03-07", Tabs: []*Tab{board, res}}
}

func TestWorkbook(t *testing.T) {
	f := open(t, sample())
	// A name that begins like a formula is words.
	for cell, want := range map[string]string{"B25": "=1+1", "B26": "@cmd|'/c calc'!A0", "B27": "-Dash & <Tag>"} {
		v, err := f.GetCellValue("Result", cell)
		if err != nil || v != want {
			t.Errorf("%s is %q, want %q (%v)", cell, v, want, err)
		}
		if formula, err := f.GetCellFormula("Result", cell); err != nil || formula != "" {
			t.Errorf("%s holds a formula %q (%v)", cell, formula, err)
		}
	}
	if v, err := f.GetCellValue("Result", "A26"); err != nil || v != "2=" {
		t.Errorf("a tie shows as %q (%v)", v, err)
	}
	if v, err := f.GetCellValue("Result", "A26", excelize.Options{RawCellValue: true}); err != nil || v != "2" {
		t.Errorf("a tie is stored as %q, so it can't be sorted (%v)", v, err)
	}
	tables, err := f.GetTables("Result")
	if err != nil || len(tables) != 1 || tables[0].Range != "A24:D27" {
		t.Errorf("tables %+v, %v", tables, err)
	}
	names := map[string]string{}
	for _, n := range f.GetDefinedName() {
		names[n.Name+"/"+n.Scope] = n.RefersTo
	}
	if names["_xlnm.Print_Titles/Result"] != "'Result'!$24:$24" {
		t.Errorf("print titles %v", names)
	}
	if dv, err := f.GetDataValidations("Result"); err != nil || len(dv) != 1 || dv[0].Sqref != "D25:D27" {
		t.Errorf("drop-downs %+v, %v", dv, err)
	}
	hf, err := f.GetHeaderFooter("Board")
	if err != nil || !strings.Contains(hf.OddHeader, "R&&D 5 km") || !strings.Contains(hf.OddFooter, "Page &P of &N") {
		t.Errorf("header and footer %+v, %v", hf, err)
	}
	l, err := f.GetPageLayout("Board")
	if err != nil || *l.Size != 9 || *l.Orientation != "portrait" || *l.FitToWidth != 1 {
		t.Errorf("page %+v, %v", l, err)
	}
}

func TestSameBytes(t *testing.T) {
	var first []byte
	for range 8 {
		var w bytes.Buffer
		if err := sample().WriteWorkbook(&w); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = w.Bytes()
		} else if !bytes.Equal(first, w.Bytes()) {
			t.Fatal("the same book has other bytes")
		}
	}
}

func TestMistakesAreErrors(t *testing.T) {
	tab := func() *Table {
		return &Table{Name: "T", Columns: []Column{{Head: "A"}}, Rows: []Row{{Cells: []Value{Words("x")}}}}
	}
	for name, b := range map[string][]Block{
		"two tables":      {Full{tab()}, Full{tab()}},
		"no column B":     {ChartBlock{&Chart{Category: "A", Series: []Series{{Column: "B"}}}}, Full{tab()}},
		"has no table":    {ChartBlock{&Chart{Title: "C"}}},
		"tab of their":    {Pair{Left: tab()}, Full{tab()}},
		"large figures":   {Big{make([]Figure, 5)}},
		"takes 1 to 4":    {Pair{Left: &Table{Columns: make([]Column, 5)}}},
		"no column (row)": {ChartBlock{&Chart{Category: "(row)"}}, Full{tab()}},
	} {
		err := (&Book{Made: "2026-03-07", Tabs: []*Tab{{Name: "T", Blocks: b}}}).WriteWorkbook(&bytes.Buffer{})
		if err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("want an error with %q, got %v", name, err)
		}
	}
}

func TestText(t *testing.T) {
	tab := &Table{Columns: []Column{{Head: "Name"}, {Head: "Time", Kind: Clock}}}
	tab.Add(nil, Words("Zoë Ørsted-Featherstonehaugh the Elder"), Number(1471))
	tab.Add(nil, Words("李小龍"), Number(65))
	var b strings.Builder
	tab.WriteText(&b, 24)
	want := "Name                Time\n-----------------  -----\nZoë Ørsted-Feath…  24:31\n李小龍              1:05\n"
	if b.String() != want {
		t.Errorf("got\n%swant\n%s", b.String(), want)
	}
	if got := Wrap("one two three four", 9); got != "one two\nthree\nfour" {
		t.Errorf("wrapped %q", got)
	}
}

// CommonMark 0.31, section 2.4: a backslash before ASCII punctuation.
func TestMarkdown(t *testing.T) {
	const want = "A\\_b, Ivo \\| \\<b\\>\\*Kestrel\\*"
	if got := EscapeMarkdown("A_b, Ivo | <b>*Kestrel*"); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// What a workbook shows is what text shows, for numbers that are not whole too.
func TestWorkbookShowsWhatTextShows(t *testing.T) {
	kinds := []Kind{Place, Whole, Clock, Percent, Gap, Decimal}
	full := &Table{Name: "T"}
	for i := range kinds {
		full.Columns = append(full.Columns, Column{Head: string(rune('A' + i)), Kind: kinds[i]})
	}
	for _, n := range []float64{0, 0.4, 0.6, 7, 41.5, 42.6, 98.7, 3599.4, 3725} {
		for _, sign := range []float64{1, -1} {
			row := Row{}
			for _, k := range kinds {
				v := n
				if n > 0 && (k == Gap || k == Decimal) {
					v *= sign
				}
				row.Cells = append(row.Cells, Number(v))
			}
			full.Rows = append(full.Rows, row)
		}
	}
	tab := &Tab{Name: "T"}
	tab.Add(Full{full})
	f := open(t, &Book{Made: "2026-03-07", Tabs: []*Tab{tab}})
	rows, err := f.GetRows("T")
	if err != nil || len(rows) != len(full.Rows)+1 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for r, row := range full.Rows {
		for c, k := range kinds {
			if k == Clock && row.Cells[c].num != math.Trunc(row.Cells[c].num) {
				continue // times are whole seconds
			}
			if got, want := rows[r+1][c], row.Cells[c].Show(k); got != want {
				t.Errorf("kind %d, %v: the workbook shows %q, text %q", k, row.Cells[c].num, got, want)
			}
		}
	}
}

// A tab on a grid of its own: small tables take its columns from the left, a
// hidden column takes no room and is not seen.
func TestSmallTablesAndHiddenColumns(t *testing.T) {
	small := &Table{Columns: []Column{{Head: "At"}, {Head: "Clock", Kind: Clock}}}
	small.Add(nil, Words("1 km"), Number(240))
	card := &Tab{Name: "Card", Grid: []float64{24, 12, 12}}
	card.Add(Title{1, "Card"}, Small{small}, Small{&Table{Columns: small.Columns, None: "nothing"}})
	full := &Table{Name: "F", Columns: []Column{{Head: "Name"}, {Head: "Label", Hidden: true}}}
	full.Add(nil, Words("Ada"), Words("a long label that would need room"))
	list := &Tab{Name: "List"}
	list.Add(Full{full})
	f := open(t, &Book{Made: "2026-03-07", Tabs: []*Tab{card, list}})
	rows, err := f.GetRows("Card")
	if err != nil || len(rows) < 6 || rows[2][0] != "1 km" || rows[2][1] != "4:00" || rows[5][0] != "nothing" {
		t.Errorf("card %q, %v", rows, err)
	}
	if w, err := f.GetColWidth("Card", "A"); err != nil || w != 24 {
		t.Errorf("first column is %v wide, %v", w, err)
	}
	if seen, err := f.GetColVisible("List", "B"); err != nil || seen {
		t.Errorf("the hidden column is seen: %t, %v", seen, err)
	}
	if w := list.Width(); w > 20 {
		t.Errorf("the hidden column takes room: the tab is %v wide", w)
	}
	card.Grid = card.Grid[:1]
	if err := (&Book{Made: "2026-03-07", Tabs: []*Tab{card}}).WriteWorkbook(&bytes.Buffer{}); err == nil || !strings.Contains(err.Error(), "needs a grid") {
		t.Errorf("a grid too narrow: %v", err)
	}
}

// Axis labels: across while they fit, else upright; thinned where many.
func TestLabels(t *testing.T) {
	of := func(n int, label string) (int, int) {
		x := &Table{Columns: []Column{{Head: "L"}}}
		for range n {
			x.Add(nil, Words(label))
		}
		return (&Chart{}).labels(x, 0, n)
	}
	for _, c := range []struct {
		n          int
		label      string
		turn, skip int
	}{{5, "Saltmarsh Way", 0, 1}, {11, "7 Mar 26", -90, 1}, {53, "7 Mar 26", -90, 2}, {20, "25", 0, 1}, {45, "25", -90, 2}} {
		if turn, skip := of(c.n, c.label); turn != c.turn || skip != c.skip {
			t.Errorf("%d labels %q: turned %d, every %d; want %d, %d", c.n, c.label, turn, skip, c.turn, c.skip)
		}
	}
}
