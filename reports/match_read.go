package reports

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
)

// MatchAnswer is a row of the workbook for deciding, with the places of its
// cells.
type MatchAnswer struct {
	Code, First, Second, Answer, Remark place.Cell
}

// maxMatchBook bounds what a workbook for deciding may unpack to.
const maxMatchBook = 256 << 20

// ReadMatch reads the rows of a workbook for deciding, wherever its tabs and
// columns have been moved to. file is how to name it in messages. A workbook
// that is damaged, or that no tab of which looks like one made by MatchBook, is
// an error: rows must not be lost in silence.
func ReadMatch(path, file string) (out []MatchAnswer, err error) {
	if err := soundWorkbook(path); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	defer func() {
		if p := recover(); p != nil {
			out, err = nil, fmt.Errorf("%s: this workbook can't be read (%v)", file, p)
		}
	}()
	f, err := excelize.OpenFile(path, excelize.Options{UnzipSizeLimit: maxMatchBook, UnzipXMLSizeLimit: maxMatchBook})
	if err != nil {
		return nil, fmt.Errorf("%s: this workbook can't be read: %w", file, err)
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	tabs := 0
	for _, tab := range f.GetSheetList() {
		rows, err := f.GetRows(tab)
		if err != nil {
			return nil, fmt.Errorf("%s:%s: %w", file, tab, err)
		}
		head, at := findMatchHead(rows)
		if at == nil {
			continue
		}
		tabs++
		for i := head + 1; i < len(rows); i++ {
			cell := func(name string) place.Cell {
				c := place.Cell{Place: place.Place{Sheet: file, Tab: tab, Row: i + 1, Column: place.ColumnLetters(at[name])}}
				if at[name] < len(rows[i]) {
					c.Text = strings.TrimSpace(rows[i][at[name]])
				}
				return c
			}
			a := MatchAnswer{cell(headCode), cell(headFirst), cell(headSecond), cell(headDecision), cell(headRemark)}
			if a.Code.Text == "" && a.Answer.Text == "" {
				continue
			}
			out = append(out, a)
		}
	}
	if tabs == 0 {
		return nil, fmt.Errorf("%s: no tab has the columns %s, %s, %s and %s; give the workbook that lapwing match export wrote",
			file, headFirst, headSecond, headDecision, headCode)
	}
	return out, nil
}

// findMatchHead finds the heading row and the index of each heading.
func findMatchHead(rows [][]string) (int, map[string]int) {
	for r, row := range rows {
		at := map[string]int{}
		for c, text := range row {
			text = strings.TrimSpace(text)
			if _, have := at[text]; !have {
				at[text] = c
			}
		}
		for _, other := range [][2]string{{headFirst, headLine}, {headFirst, headLines}, {headSecond, headRunner}, {headFirst, headAmong}} {
			if c, ok := at[other[1]]; ok {
				if _, have := at[other[0]]; !have {
					at[other[0]] = c
				}
			}
		}
		found := true
		for _, h := range []string{headFirst, headSecond, headDecision, headRemark, headCode} {
			_, ok := at[h]
			found = found && ok
		}
		if found {
			return r, at
		}
	}
	return 0, nil
}

// soundWorkbook reads every part of a workbook to its end: the spreadsheet
// library stops silently where a part is damaged.
func soundWorkbook(path string) error {
	z, err := zip.OpenReader(path)
	if err != nil {
		return fmt.Errorf("this is no workbook of the kind that lapwing writes (.xlsx), or it can't be opened: %w", err)
	}
	defer z.Close()
	total := int64(0)
	for _, m := range z.File {
		r, err := m.Open()
		if err != nil {
			return fmt.Errorf("this workbook is damaged: %w", err)
		}
		counted := &countingReader{r: io.LimitReader(r, maxMatchBook-total+1)}
		if strings.HasSuffix(m.Name, ".xml") && strings.Contains(m.Name, "worksheets/") {
			d := xml.NewDecoder(counted)
			for {
				if _, err = d.Token(); err != nil {
					break
				}
			}
		} else {
			_, err = io.Copy(io.Discard, counted)
		}
		r.Close()
		if err != nil && err != io.EOF {
			return fmt.Errorf("this workbook is damaged (%s): %w", m.Name, err)
		}
		if total += counted.n; total > maxMatchBook {
			return fmt.Errorf("this workbook is larger than a list for deciding can be")
		}
	}
	return nil
}

type countingReader struct {
	r io.Reader
	n int64
}

func (c *countingReader) Read(p []byte) (int, error) {
	n, err := c.r.Read(p)
	c.n += int64(n)
	return n, err
}
