package pipeline

import (
	"unsafe"

	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
)

// lineSchema is the schema of record.line.
var lineSchema = store.Columns(
	"line_no", store.Int32, "part_no", store.Int32, "row_number", store.Int32, "run_no", store.Int32,
	"position", store.Int32, "tied", store.Uint8, "name_no", store.Int32, "number_no", store.Int32, "time_ms", store.Int32,
	"sex", store.Uint8, "birth_lo", store.Date, "birth_hi", store.Date, "basis", store.Uint8,
	"age_text", store.Text, "club_no", store.Int32, "taking_part", store.Uint8, "status", store.Uint8, "note", store.Text)

// lineBatch is a slice of the lines of one part, at most store.BatchRows long.
type lineBatch struct {
	lines []record.Line
	run   []int32    // index into parsedPart.runs
	texts [][3]int32 // numbers of name, number and club in record.text, once they are given
}

// lineList holds the lines of a part in batches, so that ten million of them
// grow without being copied.
type lineList struct {
	batches []*lineBatch
	n       int
}

// add appends an empty line and returns it for filling.
func (l *lineList) add() (*record.Line, *int32) {
	if len(l.batches) == 0 || len(l.batches[len(l.batches)-1].lines) == store.BatchRows {
		size := 256
		if len(l.batches) > 0 {
			size = store.BatchRows
		}
		l.batches = append(l.batches, &lineBatch{lines: make([]record.Line, 0, size), run: make([]int32, 0, size)})
	}
	b := l.batches[len(l.batches)-1]
	b.lines = append(b.lines, record.Line{})
	b.run = append(b.run, 0)
	l.n++
	return &b.lines[len(b.lines)-1], &b.run[len(b.run)-1]
}

// drop takes the last line back.
func (l *lineList) drop() {
	b := l.batches[len(l.batches)-1]
	b.lines = b.lines[:len(b.lines)-1]
	b.run = b.run[:len(b.run)-1]
	l.n--
}

// at is line i.
func (l *lineList) at(i int) *record.Line {
	for _, b := range l.batches {
		if i < len(b.lines) {
			return &b.lines[i]
		}
		i -= len(b.lines)
	}
	return nil
}

// arena keeps the texts of many lines in few pieces of memory.
type arena struct{ piece []byte }

func (a *arena) text(s string) string {
	if s == "" {
		return ""
	}
	if len(a.piece)+len(s) > cap(a.piece) {
		a.piece = make([]byte, 0, max(len(s), min(1<<18, max(4096, 2*cap(a.piece)))))
	}
	from := len(a.piece)
	a.piece = append(a.piece, s...)
	return unsafe.String(&a.piece[from], len(s))
}

// keep copies a line's texts, which otherwise live only until the next row.
func (a *arena) keep(l *record.Line) {
	l.Name, l.Number, l.AgeText, l.Club, l.Note = a.text(l.Name), a.text(l.Number), a.text(l.AgeText), a.text(l.Club), a.text(l.Note)
}
