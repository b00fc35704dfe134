package table

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// breaksOf writes a book of one tab and gives the rows that begin a new page.
func breaksOf(t *testing.T, tab *Tab) []int {
	t.Helper()
	var b bytes.Buffer
	if err := (&Book{Title: "T", Made: "2026-01-03", Tabs: []*Tab{tab}}).WriteWorkbook(&b); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	raw, ok := f.Pkg.Load("xl/worksheets/sheet1.xml")
	if !ok {
		t.Fatal("no sheet")
	}
	var out []int
	for rest := raw.([]byte); ; {
		i := bytes.Index(rest, []byte("<brk id=\""))
		if i < 0 {
			return out
		}
		rest = rest[i+9:]
		n := 0
		if _, err := fmt.Sscanf(string(rest), "%d", &n); err != nil {
			t.Fatal(err)
		}
		out = append(out, n+1) // the break is below row n
	}
}

// Groups stay whole where they fit on a page, the next one begins on the same
// page where it fits too, and one that fits on no page is parted.
func TestGroupsStayWhole(t *testing.T) {
	for _, c := range []struct {
		groups []int // rows of each
		want   []int // rows of the tab; 1 title, 2 heading
	}{
		{[]int{30, 30, 30}, []int{33, 63}},
		{[]int{10, 10, 40, 5}, []int{23}},
		{[]int{10, 10, 20}, nil},
		{[]int{20, 120, 5}, nil},    // 31 rows of room: the long one begins here
		{[]int{46, 120}, []int{49}}, // hardly any room left
	} {
		full := &Table{Name: "T", Whole: "List", Columns: []Column{{Head: "League"}, {Head: "List"}, {Head: "Name", Width: 60}}}
		for g, n := range c.groups {
			for i := range n {
				full.Add(nil, Words("x"), Words(fmt.Sprint(g%2)), Words(fmt.Sprint("Somebody ", i)))
			}
		}
		tab := &Tab{Name: "League"}
		tab.Add(Title{Level: 1, Text: "League"}, Full{full})
		if got := breaksOf(t, tab); !slices.Equal(got, c.want) {
			t.Errorf("groups of %v: new pages at rows %v, want %v", c.groups, got, c.want)
		}
	}
}

// Sections of a tab of small tables stay whole, but for one that would leave a
// third of a page empty.
func TestSectionsStayWhole(t *testing.T) {
	tab := &Tab{Name: "Lists", Grid: []float64{30, 30, 30}}
	tab.Add(Title{Level: 1, Text: "Lists"})
	for _, n := range []int{16, 16, 12, 30, 40} {
		small := &Table{Columns: []Column{{Head: "Name"}}}
		for i := range n {
			small.Add(nil, Words(fmt.Sprint("Somebody ", i)))
		}
		tab.Add(Title{Level: 2, Text: "Section"}, Small{small})
	}
	// A section takes a title, a heading, its rows and a gap: 39 rows for the first
	// two with the tab's title; the third is too long for the rest and begins the
	// second page, the fourth follows it there, and the fifth begins the third.
	if got := breaksOf(t, tab); !slices.Equal(got, []int{40, 88}) {
		t.Errorf("new pages at rows %v, want 40 and 88", got)
	}
}

// A table among others that is parted by a page has its headings on both.
func TestHeadingsOnEveryPage(t *testing.T) {
	tab := &Tab{Name: "Lists", Grid: []float64{30, 30, 30}}
	tab.Add(Title{Level: 1, Text: "Lists"})
	for _, n := range []int{20, 60} {
		small := &Table{Columns: []Column{{Head: "Name"}, {Head: "What"}}}
		for i := range n {
			small.Add(nil, Words(fmt.Sprint("Somebody ", i)), Words("x"))
		}
		tab.Add(Title{Level: 2, Text: "Section"}, Small{small})
	}
	var b bytes.Buffer
	if err := (&Book{Title: "T", Made: "2026-01-03", Tabs: []*Tab{tab}}).WriteWorkbook(&b); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows("Lists")
	if err != nil {
		t.Fatal(err)
	}
	var headings []int
	people := 0
	for i, r := range rows {
		switch {
		case len(r) == 2 && r[0] == "Name":
			headings = append(headings, i+1)
		case len(r) == 2:
			people++
		}
	}
	breaks := breaksOf(t, tab)
	if len(breaks) != 1 || !slices.Equal(headings, []int{3, 26, breaks[0]}) || people != 80 {
		t.Errorf("headings in rows %v, new pages at %v, %d people", headings, breaks, people)
	}
}

// A name that is longer than its column is broken behind its hyphen, and else anywhere.
func TestLines(t *testing.T) {
	for _, c := range []struct {
		text  string
		width float64
		want  int
	}{
		{"", 22, 1},
		{"Ada Moss", 22, 1},
		{"Ekaterina Vandersteen Drummond", 22, 2},
		{"Clementine Featherstonehaugh-Cholmondeley", 22, 3},
		{"Ines Smythe-Wetherington", 22, 1},
		{strings.Repeat("x", 60), 22, 3},
	} {
		if got := lines(c.text, c.width); got != c.want {
			t.Errorf("%q in %g characters takes %d lines, want %d", c.text, c.width, got, c.want)
		}
	}
}

func TestInitialled(t *testing.T) {
	for name, want := range map[string]string{"Clementine Smythe-Orr": "C. Smythe-Orr", "Ó Súilleabháin": "Ó Súilleabháin", "Óscar Ó Briain": "Ó. Ó Briain", "Bjørn": "Bjørn", "": ""} {
		if got := initialled(name); got != want {
			t.Errorf("%q is shortened to %q, want %q", name, got, want)
		}
	}
}

// What is printed ends where it should: so many rows, and as wide as the page.
// A text is cut where it is too wide, not where it has many letters.
func TestFit(t *testing.T) {
	for _, c := range []struct {
		text string
		w    float64
		want string
	}{
		{"Lily Tillit-Fillil", 12, "Lily Tillit-Fillil"}, // 18 letters, 10.7 digits wide
		{"MAMA MWAMWA", 12, "MAMA MW…"},
		{"", 3, ""},
		{"Ada Mo", 6.5, "Ada Mo"},
		{"Ada Moss", 6.5, "Ada…"},
		{"Zoe\u0308 Moss", 5.5, "Zoe\u0308…"}, // an accent stays with its letter
	} {
		if got := fit(c.text, c.w); got != c.want {
			t.Errorf("%q in %v: %q, want %q", c.text, c.w, got, c.want)
		}
	}
}

func TestOnlyTheFirstRowsArePrinted(t *testing.T) {
	full := &Table{Name: "T", Columns: []Column{{Head: "Name", Width: 20}}}
	for i := range 90 {
		full.Add(nil, Words(fmt.Sprint("Somebody ", i)))
	}
	tab := &Tab{Name: "Grades", PrintRows: 45}
	tab.Add(Title{Level: 1, Text: "Grades"}, Full{full})
	var b bytes.Buffer
	if err := (&Book{Title: "T", Made: "2026-01-03", Tabs: []*Tab{tab}}).WriteWorkbook(&b); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(&b)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, n := range f.GetDefinedName() {
		if n.Name == "_xlnm.Print_Area" {
			if n.RefersTo != "'Grades'!$A$1:$I$47" {
				t.Errorf("printed is %s", n.RefersTo)
			}
			return
		}
	}
	t.Error("no print area")
}
