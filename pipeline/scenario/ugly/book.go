package ugly

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// shift takes days to the workbook's date system: the 1904 system counts from
// 1462 days later (ECMA-376 Part 1, 18.17.4.1).
func (p plan) shift(c cell) float64 {
	if p["date1904"] == "yes" && c.isDay {
		return c.v - 1462
	}
	return c.v
}

// book writes a workbook through the spreadsheet library.
func (g *gen) book(p plan, tabs []tab) ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	if p["date1904"] == "yes" {
		yes := true
		if err := f.SetWorkbookProps(&excelize.WorkbookPropsOptions{Date1904: &yes}); err != nil {
			return nil, err
		}
	}
	styles := map[string]int{}
	for i, t := range tabs {
		if i == 0 {
			if err := f.SetSheetName("Sheet1", t.name); err != nil {
				return nil, err
			}
		} else if _, err := f.NewSheet(t.name); err != nil {
			return nil, err
		}
		for ri, r := range t.rows {
			for ci, c := range r.cells {
				at, err := excelize.CoordinatesToCellName(ci+1, ri+1)
				if err != nil {
					return nil, err
				}
				switch {
				case c.kind == isBlank:
					continue
				case c.kind == isText || p["cells"] == "text":
					err = f.SetCellStr(t.name, at, c.s)
				default:
					err = f.SetCellValue(t.name, at, p.shift(c))
					if err == nil && c.f != "" {
						id, ok := styles[c.f]
						if !ok {
							code := c.f
							if id, err = f.NewStyle(&excelize.Style{CustomNumFmt: &code}); err != nil {
								return nil, err
							}
							styles[c.f] = id
						}
						err = f.SetCellStyle(t.name, at, at, id)
					}
				}
				if err != nil {
					return nil, err
				}
			}
		}
		for _, m := range t.merged {
			if err := f.MergeCell(t.name, fmt.Sprintf("A%d", m+1), fmt.Sprintf("H%d", m+1)); err != nil {
				return nil, err
			}
		}
	}
	for i, t := range tabs {
		if !t.hidden && (i == 0 || tabs[0].hidden) {
			f.SetActiveSheet(i)
			break
		}
	}
	for _, t := range tabs {
		if t.hidden {
			if err := f.SetSheetVisible(t.name, false); err != nil {
				return nil, err
			}
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
