package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// ErrDevice is a path that is neither a file nor something piped in.
var ErrDevice = errors.New("it is neither a file nor something piped in; name the sheet itself")

// Fetch reads the bytes of a file. What the first of them show to be no sheet, a
// text larger than limits allow, and a line that goes on and on are refused
// without reading on: a file of gigabytes costs a few megabytes.
func Fetch(path string, l Limits) ([]byte, error) {
	l = l.orDefault()
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	st, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if st.IsDir() || st.Mode()&(fs.ModeDevice|fs.ModeSocket) != 0 {
		return nil, ErrDevice
	}
	return fetch(f, st.Size(), l)
}

// fetch reads to the end of r. size is how much there should be, 0 where nobody
// knows.
func fetch(r io.Reader, size int64, l Limits) ([]byte, error) {
	// Two bytes a character: the text may be UTF-16.
	piece := 2 * l.RowBytes
	data := make([]byte, 0, max(min(int(size), piece)+1, 512))
	text, looked := false, 0
	for {
		if err := l.goOn(0); err != nil {
			return nil, err
		}
		if len(data) == cap(data) {
			room := 2 * cap(data)
			if int64(room) < size+1 && len(data) >= piece { // the beginning was seen: room for all of it
				room = int(size) + 1
			}
			data = append(make([]byte, 0, room), data...)
		}
		n, err := io.ReadFull(r, data[len(data):min(cap(data), looked+piece+1)])
		data = data[:len(data)+n]
		end := err == io.EOF || err == io.ErrUnexpectedEOF
		if err != nil && !end {
			return nil, err
		}
		if int64(len(data)) > l.Bytes {
			return nil, tooLarge(int64(len(data)), l)
		}
		if looked == 0 && (end || len(data) >= piece) {
			why := ""
			if text, why = textOrWorkbook(data); why != "" {
				return nil, errors.New(why)
			}
			if size > l.Bytes {
				return nil, tooLarge(size, l)
			}
		}
		if end {
			return data, nil
		}
		if len(data) < looked+piece {
			continue
		}
		if text && !bytes.ContainsAny(data[looked:looked+piece], "\r\n") {
			return nil, fmt.Errorf("a line goes on for more than %d MB; a sheet of results has a line for each finisher. Open it in the program that it came from, save it as CSV or XLSX, and load that", piece>>20)
		}
		looked += piece
	}
}

// textOrWorkbook looks at the first bytes of a file: text that may be a sheet,
// perhaps a workbook, or why it can be neither.
func textOrWorkbook(head []byte) (text bool, why string) {
	if bytes.HasPrefix(head, []byte("PK")) {
		return false, "" // the list of what is inside stands at the end
	}
	_, why = formatOf(head)
	return why == "", why
}

func tooLarge(size int64, l Limits) error {
	return fmt.Errorf("it has %d MB, more than the %d MB allowed; divide it, a year each", size>>20, l.Bytes>>20)
}
