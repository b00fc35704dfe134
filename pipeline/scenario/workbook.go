package scenario

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/unit"
)

// book writes a sheet as a workbook with real numbers, dates and times, and
// gives the row of each entry. The bytes are the same every time.
func (h *house) book(run heading, entries []entry) (data []byte, tab string, rows []int, err error) {
	f := excelize.NewFile()
	defer f.Close()
	tab = h.tab
	if tab == "" {
		tab = run.date.String()
	}
	p := page{f: f, tab: tab}
	p.do(f.SetSheetName("Sheet1", tab))
	bold := p.style(&excelize.Style{Font: &excelize.Font{Bold: true}})
	title := p.style(&excelize.Style{Font: &excelize.Font{Bold: true, Size: 14}, Alignment: &excelize.Alignment{Horizontal: "center"}})
	p.date = p.style(&excelize.Style{CustomNumFmt: ptr("dd/mm/yyyy")})
	format := "[m]:ss"
	if h.tenths {
		format = "[m]:ss.0"
	}
	p.time = p.style(&excelize.Style{CustomNumFmt: &format})
	last := len(h.columns)
	for i, t := range h.title {
		label, isDate := strings.CutSuffix(t, "{date}")
		p.put(1, i+1, cell{text: strings.TrimSpace(run.fill(label))})
		if isDate {
			p.put(2, i+1, cell{value: run.date})
		}
		if h.merged && i == 0 {
			p.do(f.MergeCell(tab, p.at(1, 1), p.at(last, 1)))
			p.do(f.SetCellStyle(tab, p.at(1, 1), p.at(last, 1), title))
		}
	}
	top := h.headingRow()
	for j, c := range h.columns {
		p.put(j+1, top, cell{text: c.heading})
	}
	p.do(f.SetCellStyle(tab, p.at(1, top), p.at(last, top), bold))
	p.do(f.SetPanes(tab, &excelize.Panes{Freeze: true, YSplit: top, TopLeftCell: p.at(1, top+1), ActivePane: "bottomLeft"}))
	first := firstTime(entries)
	for i := range entries {
		for j, c := range h.columns {
			p.put(j+1, top+1+i, h.cell(c, &entries[i], run, first))
		}
		rows = append(rows, top+1+i)
	}
	for i, t := range h.footer {
		p.put(1, top+2+len(entries)+i, cell{text: run.fill(t)})
	}
	p.do(f.SetColWidth(tab, "B", "B", 26))
	if p.err != nil {
		return nil, "", nil, fmt.Errorf("workbook of %s on %s: %w", run.course, run.date, p.err)
	}
	data, err = workbookBytes(f)
	return data, tab, rows, err
}

// page writes cells and keeps the first error.
type page struct {
	f          *excelize.File
	tab        string
	date, time int
	err        error
}

func (p *page) do(err error) {
	if p.err == nil {
		p.err = err
	}
}

func (p *page) style(s *excelize.Style) int {
	id, err := p.f.NewStyle(s)
	p.do(err)
	return id
}

func (p *page) at(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column, row)
	p.do(err)
	return name
}

// put writes a cell as what it is: whole numbers and days as numbers, running
// times as fractions of a day (ECMA-376 Part 1, 18.17.4).
func (p *page) put(column, row int, c cell) {
	at := p.at(column, row)
	switch v := c.value.(type) {
	case int:
		p.do(p.f.SetCellInt(p.tab, at, int64(v)))
	case unit.Day:
		p.do(p.f.SetCellFloat(p.tab, at, float64(v-unit.NewDay(1899, 12, 30)), -1, 64))
		p.do(p.f.SetCellStyle(p.tab, at, at, p.date))
	case running:
		p.do(p.f.SetCellFloat(p.tab, at, float64(v)/float64((24*time.Hour).Milliseconds()), 15, 64))
		p.do(p.f.SetCellStyle(p.tab, at, at, p.time))
	default:
		if c.text != "" {
			p.do(p.f.SetCellStr(p.tab, at, c.text))
		}
	}
}

func ptr(s string) *string { return &s }

// workbookBytes saves a workbook with its list of parts in order: it is the one
// thing in which the library's output varies from run to run.
func workbookBytes(f *excelize.File) ([]byte, error) {
	over, def := f.ContentTypes.Overrides, f.ContentTypes.Defaults
	sort.SliceStable(over, func(i, j int) bool { return over[i].PartName < over[j].PartName })
	sort.SliceStable(def, func(i, j int) bool { return def[i].Extension < def[j].Extension })
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
