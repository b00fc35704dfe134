package sheet

import (
	"encoding/binary"
	"errors"
	"math"
	"unicode/utf16"
)

// Workbooks in the form that spreadsheet programs wrote until 2007 ([MS-XLS], BIFF8) are turned
// into an XLSX workbook of the same tabs, rows and columns, which is then read. Formulas are
// taken with the values that were saved with them.

// Records of such a workbook ([MS-XLS] 2.3).
const (
	xlsFormula   = 0x0006
	xlsEnd       = 0x000A
	xlsDate1904  = 0x0022
	xlsPassword  = 0x002F
	xlsFont      = 0x0031
	xlsContinue  = 0x003C
	xlsTab       = 0x0085
	xlsManyRK    = 0x00BD
	xlsRichText  = 0x00D6
	xlsCellStyle = 0x00E0
	xlsMerged    = 0x00E5
	xlsTexts     = 0x00FC
	xlsSharedIn  = 0x00FD
	xlsNumber    = 0x0203
	xlsText      = 0x0204
	xlsTruth     = 0x0205
	xlsResult    = 0x0207
	xlsRK        = 0x027E
	xlsFormat    = 0x041E
	xlsBegin     = 0x0809
)

var errXLSDamaged = errors.New("it is an old XLS workbook that is damaged; open it in a spreadsheet program, save it as XLSX or CSV, and load that")

// oldWorkbook turns such a workbook into an XLSX workbook.
func oldWorkbook(data []byte, l Limits) ([]byte, error) {
	stream, err := compoundStream(data, "Workbook", "Book")
	if err != nil {
		return nil, err
	}
	x := &xlsReader{stream: stream, formats: map[int]string{}, w: newBookWriter(l)}
	defer x.w.file.Close()
	if err := x.globals(); err != nil {
		return nil, err
	}
	if x.date1904 {
		on := true
		props, err := x.w.file.GetWorkbookProps()
		if err != nil {
			return nil, err
		}
		props.Date1904 = &on
		if err := x.w.file.SetWorkbookProps(&props); err != nil {
			return nil, err
		}
	}
	for _, t := range x.tabs {
		if err := x.tab(t); err != nil {
			return nil, err
		}
	}
	return x.w.bytes()
}

// xlsReader goes through the records of a workbook.
type xlsReader struct {
	stream   []byte
	at       int
	tabs     []xlsTabPlace
	texts    []string
	styles   []int  // number formats by style
	letters  []int  // fonts by style
	struck   []bool // of fonts, whether their letters are struck through
	formats  map[int]string
	date1904 bool
	w        *bookWriter
}

// xlsTabPlace says where the records of a tab begin.
type xlsTabPlace struct {
	at     int
	name   string
	hidden bool
}

// next is the next record; pieces are its own data and those of the records that continue it.
func (x *xlsReader) next() (kind int, pieces [][]byte, ok bool) {
	for x.at+4 <= len(x.stream) {
		k := int(binary.LittleEndian.Uint16(x.stream[x.at:]))
		n := int(binary.LittleEndian.Uint16(x.stream[x.at+2:]))
		if x.at+4+n > len(x.stream) || len(pieces) > 0 && k != xlsContinue {
			break
		}
		if len(pieces) == 0 {
			kind = k
		}
		pieces = append(pieces, x.stream[x.at+4:x.at+4+n])
		x.at += 4 + n
		if kind != xlsTexts {
			break
		}
	}
	return kind, pieces, len(pieces) > 0
}

// globals reads what holds for the whole workbook.
func (x *xlsReader) globals() error {
	for first := true; ; first = false {
		kind, pieces, ok := x.next()
		if !ok {
			return errXLSDamaged
		}
		b := pieces[0]
		switch {
		case first && (kind != xlsBegin || len(b) < 4 || binary.LittleEndian.Uint16(b) != 0x0600):
			return errors.New("it is a workbook of a form older than that of 1997; open it in a spreadsheet program, save it as XLSX or CSV, and load that")
		case kind == xlsEnd:
			return nil
		case kind == xlsPassword:
			return errors.New("it is a workbook with a password; open it with the password, save a copy without one, and load that")
		case kind == xlsDate1904 && len(b) >= 2:
			x.date1904 = b[0] == 1
		case kind == xlsTab && len(b) >= 8:
			name, _ := xlsLetters(b[8:], int(b[6]), b[7]&1 == 1)
			if b[5] == 0 { // no chart, macro or module
				x.tabs = append(x.tabs, xlsTabPlace{int(binary.LittleEndian.Uint32(b)), name, b[4]&3 != 0})
			}
		case kind == xlsFormat && len(b) >= 5:
			x.formats[int(binary.LittleEndian.Uint16(b))], _ = xlsLetters(b[5:], int(binary.LittleEndian.Uint16(b[2:])), b[4]&1 == 1)
		case kind == xlsCellStyle && len(b) >= 4:
			x.styles, x.letters = append(x.styles, int(binary.LittleEndian.Uint16(b[2:]))), append(x.letters, int(binary.LittleEndian.Uint16(b)))
		case kind == xlsFont && len(b) >= 4:
			x.struck = append(x.struck, b[2]&8 != 0)
		case kind == xlsTexts:
			if err := x.sharedTexts(pieces); err != nil {
				return err
			}
		}
	}
}

// xlsLetters is text of n letters in one byte each or in UTF-16; size is how many bytes it takes.
func xlsLetters(b []byte, n int, wide bool) (s string, size int) {
	if !wide {
		n = min(n, len(b))
		out := make([]rune, n)
		for i := range n {
			out[i] = rune(b[i]) // the lower halves of UTF-16
		}
		return string(out), n
	}
	n = min(n, len(b)/2)
	letters := make([]uint16, n)
	for i := range letters {
		letters[i] = binary.LittleEndian.Uint16(b[2*i:])
	}
	return string(utf16.Decode(letters)), 2 * n
}

// sharedTexts reads the table of texts ([MS-XLS] 2.4.265). A text may go on in the next piece, where
// a byte says anew whether its letters are wide.
func (x *xlsReader) sharedTexts(pieces [][]byte) error {
	k, at := 0, 8
	if len(pieces[0]) < at {
		return errXLSDamaged
	}
	total := int(binary.LittleEndian.Uint32(pieces[0][4:]))
	onward := func() bool { // to the next piece where this one is at its end
		for k < len(pieces) && at >= len(pieces[k]) {
			k, at = k+1, 0
		}
		return k < len(pieces)
	}
	skip := func(n int) {
		for n > 0 && onward() {
			step := min(n, len(pieces[k])-at)
			at, n = at+step, n-step
		}
	}
	for range total {
		if !onward() {
			break
		}
		if at+3 > len(pieces[k]) {
			return errXLSDamaged
		}
		letters, flags := int(binary.LittleEndian.Uint16(pieces[k][at:])), pieces[k][at+2]
		at += 3
		runs, extra := 0, 0
		if flags&8 != 0 && at+2 <= len(pieces[k]) {
			runs = int(binary.LittleEndian.Uint16(pieces[k][at:]))
			at += 2
		}
		if flags&4 != 0 && at+4 <= len(pieces[k]) {
			extra = int(binary.LittleEndian.Uint32(pieces[k][at:]))
			at += 4
		}
		text, wide := "", flags&1 == 1
		for letters > 0 {
			if at >= len(pieces[k]) {
				if !onward() {
					return errXLSDamaged
				}
				wide = pieces[k][at]&1 == 1
				at++
			}
			part, size := xlsLetters(pieces[k][at:], letters, wide)
			if size == 0 {
				return errXLSDamaged
			}
			text += part
			letters -= size
			if wide {
				letters += size / 2
			}
			at += size
		}
		skip(4*runs + extra)
		x.texts = append(x.texts, text)
	}
	return nil
}

// tab reads the cells of a tab.
func (x *xlsReader) tab(t xlsTabPlace) error {
	if err := x.w.tab(t.name, t.hidden); err != nil {
		return err
	}
	if x.at = t.at; t.at < 0 || t.at >= len(x.stream) {
		return errXLSDamaged
	}
	var waiting bookCell // the cell of a formula whose text comes in the next record
	depth := 0           // charts within the tab have records of their own
	for {
		kind, pieces, ok := x.next()
		if !ok {
			return nil // what there is of a file that ends too soon
		}
		b := pieces[0]
		switch kind {
		case xlsBegin:
			depth++
		case xlsEnd:
			if depth--; depth <= 0 {
				return nil
			}
		}
		if depth > 1 || len(b) < 6 && kind != xlsResult {
			continue
		}
		c := bookCell{}
		if kind != xlsResult && kind != xlsMerged {
			c.row, c.column = int(binary.LittleEndian.Uint16(b)), int(binary.LittleEndian.Uint16(b[2:]))
			style := int(binary.LittleEndian.Uint16(b[4:]))
			c.format, c.struck = x.format(style), x.strikes(style)
		}
		switch {
		case kind == xlsNumber && len(b) >= 14:
			c.number, c.isNumber = math.Float64frombits(binary.LittleEndian.Uint64(b[6:])), true
		case kind == xlsRK && len(b) >= 10:
			c.number, c.isNumber = rkNumber(binary.LittleEndian.Uint32(b[6:])), true
		case kind == xlsManyRK:
			for i := 4; i+6 <= len(b)-2; i += 6 {
				cell := bookCell{row: c.row, column: c.column + (i-4)/6, number: rkNumber(binary.LittleEndian.Uint32(b[i+2:])), isNumber: true, format: x.format(int(binary.LittleEndian.Uint16(b[i:]))), struck: x.strikes(int(binary.LittleEndian.Uint16(b[i:])))}
				if err := x.w.set(cell); err != nil {
					return err
				}
			}
			continue
		case kind == xlsSharedIn && len(b) >= 10:
			n := binary.LittleEndian.Uint32(b[6:])
			if int64(n) >= int64(len(x.texts)) {
				return errXLSDamaged
			}
			c.text = x.texts[n]
		case (kind == xlsText || kind == xlsRichText) && len(b) >= 9:
			c.text, _ = xlsLetters(b[9:], int(binary.LittleEndian.Uint16(b[6:])), b[8]&1 == 1)
		case kind == xlsTruth && len(b) >= 8:
			if b[7] == 0 {
				c.text = map[bool]string{true: "TRUE", false: "FALSE"}[b[6] != 0]
			}
		case kind == xlsFormula && len(b) >= 14:
			if b[12] != 0xFF || b[13] != 0xFF {
				c.number, c.isNumber = math.Float64frombits(binary.LittleEndian.Uint64(b[6:])), true
			} else if b[6] == 0 {
				waiting = c
				continue
			}
		case kind == xlsResult && len(b) >= 3:
			c = waiting
			c.text, _ = xlsLetters(b[3:], int(binary.LittleEndian.Uint16(b)), b[2]&1 == 1)
		case kind == xlsMerged:
			for i := 2; i+8 <= len(b); i += 8 {
				u := func(k int) int { return int(binary.LittleEndian.Uint16(b[i+2*k:])) }
				if err := x.w.merge(u(0), u(2), u(1), u(3)); err != nil {
					return err
				}
			}
			continue
		default:
			continue
		}
		if !c.isNumber && c.text == "" {
			continue
		}
		if err := x.w.set(c); err != nil {
			return err
		}
	}
}

// rkNumber is a number in four bytes ([MS-XLS] 2.5.217): the upper bits of a number, or a whole
// one, perhaps a hundred times too large.
func rkNumber(rk uint32) float64 {
	n := math.Float64frombits(uint64(rk&^3) << 32)
	if rk&2 != 0 {
		n = float64(int32(rk) >> 2)
	}
	if rk&1 != 0 {
		n /= 100
	}
	return n
}

// strikes says whether the letters of a style are struck through. No font has the number 4
// ([MS-XLS] 2.5.129).
func (x *xlsReader) strikes(style int) bool {
	if style >= len(x.letters) {
		return false
	}
	font := x.letters[style]
	if font > 4 {
		font--
	}
	return font < len(x.struck) && x.struck[font]
}

// format is the number format of a style; "" for the general one.
func (x *xlsReader) format(style int) string {
	if style >= len(x.styles) {
		return ""
	}
	id := x.styles[style]
	if f, own := x.formats[id]; own {
		if f == "General" || f == "GENERAL" {
			return ""
		}
		return f
	}
	return xlsBuiltIn[id]
}

// xlsBuiltIn are the formats that a workbook does not write down (ECMA-376 Part 1, 18.8.30).
// Dates are those that every country writes in its own way; the year first says them best.
var xlsBuiltIn = map[int]string{1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%", 14: "yyyy-mm-dd", 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy", 18: "h:mm AM/PM", 19: "h:mm:ss AM/PM",
	20: "h:mm", 21: "h:mm:ss", 22: "yyyy-mm-dd h:mm", 45: "mm:ss", 46: "[h]:mm:ss", 47: "mm:ss.0", 49: "@"}
