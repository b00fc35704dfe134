package sheet

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"

	"github.com/xuri/excelize/v2"
)

// bookCell is a cell of a workbook that is written from another kind of file. row and column
// count from 0; across and down are how many columns and rows a merged cell reaches over.
type bookCell struct {
	row, column  int
	text         string
	number       float64
	isNumber     bool
	format       string // of the number, as in ECMA-376 Part 1, 18.8.31; "" for the general one
	across, down int
	note         string // to the cell, "" for none
	struck       bool   // its letters are struck through
}

// bookWriter writes the tabs of a file of another kind into an XLSX workbook, each cell where it stood.
type bookWriter struct {
	file   *excelize.File
	styles map[string]int
	name   string
	tabs   int
	hidden []string
	cells  int
	notes  int
	limits Limits

	room                      int // cells that the workbook is held with, those before filled ones among them
	row, width, rows          int // of the tab: the row that was written last, how wide it is, how many there are
	mergedRows, mergedColumns int // of the tab: what its merged cells reach to
}

func newBookWriter(l Limits) *bookWriter {
	return &bookWriter{file: excelize.NewFile(), styles: map[string]int{}, limits: l}
}

// mostCells is how many cells of another kind of workbook are taken over.
const mostCells = 3 << 18

// mostRoom is how many cells may be held with those that are filled: a few words far to the right
// or far down a tab cost as much as if all before them were filled.
const mostRoom = 2 << 20

// notesTaken is how many notes to cells are taken over; each costs the library more than the last.
const notesTaken = 1000

// keepRoom counts the cells that one in a row and a column is held with.
func (w *bookWriter) keepRoom(row, column int) error {
	if row != w.row {
		w.row, w.width = row, 0
	}
	w.room += max(0, row+1-w.rows) + max(0, column+1-w.width)
	w.rows, w.width = max(w.rows, row+1), max(w.width, column+1)
	if w.room > mostRoom {
		return errors.New("its cells stand too far from one another; save it as XLSX or CSV and load that")
	}
	return nil
}

// tab begins the next tab. A name that a workbook can't have becomes a number.
func (w *bookWriter) tab(name string, hidden bool) error {
	w.tabs++
	w.row, w.width, w.rows, w.mergedRows, w.mergedColumns = -1, 0, 0, 0, 0
	const first = "Sheet1" // what a new workbook has
	if w.tabs == 1 {
		if err := w.file.SetSheetName(first, name); err != nil {
			name = first
		}
	} else if i, err := w.file.GetSheetIndex(name); err != nil || i >= 0 {
		name = fmt.Sprintf("Sheet%d", w.tabs)
		if _, err := w.file.NewSheet(name); err != nil {
			return err
		}
	} else if _, err := w.file.NewSheet(name); err != nil {
		return err
	}
	if w.name = name; hidden {
		w.hidden = append(w.hidden, name)
	}
	return nil
}

// hideRow hides a row of the tab that was begun last, counted from 0.
func (w *bookWriter) hideRow(row int) error { return w.file.SetRowVisible(w.name, row+1, false) }

// set writes a cell of the tab that was begun last.
func (w *bookWriter) set(c bookCell) error {
	if w.cells++; w.cells > mostCells {
		return fmt.Errorf("it has more than %d filled cells; save it as XLSX or CSV and load that", mostCells)
	}
	if err := w.limits.goOn(w.cells); err != nil {
		return err
	}
	if err := w.keepRoom(c.row, c.column); err != nil {
		return err
	}
	at, err := excelize.CoordinatesToCellName(c.column+1, c.row+1)
	if err != nil {
		return err
	}
	if c.note != "" && w.notes < notesTaken {
		w.notes++
		if err := w.file.AddComment(w.name, excelize.Comment{Cell: at, Text: c.note}); err != nil {
			return err
		}
	}
	if c.isNumber {
		err = w.file.SetCellFloat(w.name, at, c.number, -1, 64)
	} else {
		c.format = ""
		err = w.file.SetCellStr(w.name, at, c.text)
	}
	if err == nil && (c.format != "" || c.struck) {
		err = w.setStyle(at, c.format, c.struck)
	}
	if err != nil || c.across < 2 && c.down < 2 {
		return err
	}
	return w.merge(c.row, c.column, c.row+max(c.down, 1)-1, c.column+max(c.across, 1)-1)
}

// setStyle gives a cell a number format, "" for the general one, and letters that are struck through.
func (w *bookWriter) setStyle(at, format string, struck bool) error {
	key := fmt.Sprint(struck, format)
	style, known := w.styles[key]
	if !known {
		var as excelize.Style
		if format != "" {
			as.CustomNumFmt = &format
		}
		if struck {
			as.Font = &excelize.Font{Strike: true}
		}
		var err error
		if style, err = w.file.NewStyle(&as); err != nil {
			return err
		}
		w.styles[key] = style
	}
	return w.file.SetCellStyle(w.name, at, at, style)
}

// merge makes one cell of those from one corner to the other.
func (w *bookWriter) merge(row, column, lastRow, lastColumn int) error {
	w.mergedRows, w.mergedColumns = max(w.mergedRows, lastRow+1), max(w.mergedColumns, lastColumn+1)
	if int64(w.mergedRows)*int64(w.mergedColumns) > mostRoom {
		return errors.New("cells are joined over too many rows and columns; save it as XLSX or CSV and load that")
	}
	from, err := excelize.CoordinatesToCellName(column+1, row+1)
	if err != nil {
		return err
	}
	to, err := excelize.CoordinatesToCellName(lastColumn+1, lastRow+1)
	if err != nil {
		return err
	}
	return w.file.MergeCell(w.name, from, to)
}

// bytes is the workbook.
func (w *bookWriter) bytes() ([]byte, error) {
	for _, name := range w.hidden {
		if err := w.file.SetSheetVisible(name, false); err != nil {
			return nil, err
		}
	}
	b, err := w.file.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// otherBook turns a workbook of another kind into an XLSX workbook of the same cells.
func otherBook(data []byte, l Limits, format string) ([]byte, error) {
	if format == "xls" {
		return oldWorkbook(data, l)
	}
	return openDocument(data, l)
}

// readOtherBook reads a workbook of another kind.
func readOtherBook(name string, data []byte, o Options, format string) (*Sheet, error) {
	book, err := otherBook(data, o.Limits, format)
	if stop := o.Limits.goOn(0); stop != nil {
		return nil, stop
	}
	if err != nil {
		return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
	}
	s, err := readWorkbook(name, book, o)
	if s != nil {
		s.Format = format
	}
	return s, err
}

// redactOtherBook is Redact for a workbook of another kind: what is left is an XLSX workbook.
// Where nothing is to be taken out of its cells, but the file holds it elsewhere, as in its
// properties, that workbook is returned too.
func redactOtherBook(data []byte, o Options, format string, s *Sheet, r Redaction, w *words) ([]byte, error) {
	book, err := otherBook(data, o.Limits, format)
	if err != nil {
		return nil, err
	}
	out, err := redactWorkbook(book, s, r, w)
	if err != nil || !bytes.Equal(out, book) {
		return out, err
	}
	if zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data))); err == nil {
		if holds, err := packageHolds(zr, w); err != nil || holds {
			return book, err
		}
	} else if _, n := w.replace(string(data)); n > 0 {
		return book, nil
	}
	return data, nil
}
