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

// pieceLines is the length of a batch of lines: short enough to stay near the
// processor while it is filled, checked and written.
const pieceLines = 1 << 13

// lineBatch is a slice of the lines of one part, at most pieceLines long.
type lineBatch struct {
	lines []record.Line
	run   []int32    // index into parsedPart.runs
	texts [][3]int32 // numbers of name, number and club in record.text, once they are given
	words arena      // the texts of the lines
	open  int        // lines of runs that are not read to their end
}

// empty makes a batch ready to be filled again.
func (b *lineBatch) empty() {
	b.lines, b.run, b.texts, b.open = b.lines[:0], b.run[:0], nil, 0
	b.words.piece = b.words.piece[:0]
}

// lineList holds the lines of a part in batches, so that ten million of them
// grow without being copied. The first batches may have been handed on already.
type lineList struct {
	batches []*lineBatch
	gone    int               // batches handed on
	n       int               // lines in all
	spare   func() *lineBatch // gives a batch to fill again, or nil; may be nil
}

// lineSpot is the place of a line: its batch, counted with those handed on, and
// its index there.
type lineSpot struct{ batch, line int32 }

// add appends an empty line and returns it for filling.
func (l *lineList) add() (b *lineBatch, at lineSpot) {
	if len(l.batches) > 0 {
		b = l.batches[len(l.batches)-1]
	}
	if b == nil || len(b.lines) == pieceLines {
		b = nil
		if l.spare != nil {
			b = l.spare()
		}
		if b == nil {
			size := 256
			if l.n > 0 {
				size = pieceLines
			}
			b = &lineBatch{lines: make([]record.Line, 0, size), run: make([]int32, 0, size)}
		}
		l.batches = append(l.batches, b)
	}
	b.lines = append(b.lines, record.Line{})
	b.run = append(b.run, 0)
	l.n++
	return b, lineSpot{int32(l.gone + len(l.batches) - 1), int32(len(b.lines) - 1)}
}

// batch is the batch of a line that was not handed on yet.
func (l *lineList) batch(at lineSpot) *lineBatch { return l.batches[int(at.batch)-l.gone] }

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
