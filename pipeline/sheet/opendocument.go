package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// Spreadsheets in OpenDocument (OASIS OpenDocument 1.3, part 3: ODS, and FODS in one file) are
// turned into a workbook of the same tabs, rows and columns, which is then read.

// mostRepeats is how often a row or a cell that says that it repeats is written out.
const mostRepeats = 10000

// openDocument turns such a spreadsheet into an XLSX workbook.
func openDocument(data []byte, l Limits) ([]byte, error) {
	content, err := openDocumentContent(data, l)
	if err != nil {
		return nil, err
	}
	defer content.Close()
	w := newBookWriter(l)
	defer w.file.Close()
	r := odsReader{d: xml.NewDecoder(&stopReader{content, l, 0}), w: w, hiddenStyles: map[string]bool{}, struckStyles: map[string]bool{}}
	if err := r.read(); err != nil {
		return nil, fmt.Errorf("its content can't be read (%w); save it as XLSX or CSV and load that", err)
	}
	if !r.spreadsheet {
		return nil, errors.New("it is an OpenDocument file and no spreadsheet; copy its table into a spreadsheet program, save it as XLSX or CSV, and load that")
	}
	return w.bytes()
}

// openDocumentContent is the XML of a spreadsheet, packed or flat.
func openDocumentContent(data []byte, l Limits) (io.ReadCloser, error) {
	if !bytes.HasPrefix(data, []byte("PK")) {
		return io.NopCloser(bytes.NewReader(data)), nil
	}
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, fmt.Errorf("it is damaged (%w); ask for it again", err)
	}
	if why := checkPackage(zr, l); why != "" {
		return nil, errors.New(why)
	}
	var content io.ReadCloser
	for _, f := range zr.File {
		switch f.Name {
		case "META-INF/manifest.xml":
			if m, err := readMember(f); err == nil && bytes.Contains(m, []byte("encryption-data")) {
				return nil, errors.New("it has a password; save it without one and load that")
			}
		case "content.xml":
			if content, err = f.Open(); err != nil {
				return nil, err
			}
		}
	}
	if content == nil {
		return nil, errors.New("it has no content; ask for it again")
	}
	return content, nil
}

// odsReader goes through the content of a spreadsheet once.
type odsReader struct {
	d            *xml.Decoder
	w            *bookWriter
	spreadsheet  bool
	hiddenStyles map[string]bool // styles of tabs that are not shown
	struckStyles map[string]bool // styles of cells whose letters are struck through
	style        string          // the style that is being described
	row          int
}

func (r *odsReader) read() error {
	for {
		t, err := r.d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		e, ok := t.(xml.StartElement)
		if !ok {
			continue
		}
		switch e.Name.Local {
		case "spreadsheet":
			r.spreadsheet = true
		case "style":
			r.style = attrOf(e, "name")
		case "table-properties":
			if attrOf(e, "display") == "false" {
				r.hiddenStyles[r.style] = true
			}
		case "text-properties":
			if line := attrOf(e, "text-line-through-style"); line != "" && line != "none" {
				r.struckStyles[r.style] = true
			}
		case "table":
			if !r.spreadsheet {
				return nil
			}
			if err := r.w.tab(attrOf(e, "name"), r.hiddenStyles[attrOf(e, "style-name")]); err != nil {
				return err
			}
			r.row = 0
		case "table-row":
			if err := r.readRow(e); err != nil {
				return err
			}
		case "tracked-changes", "shapes", "forms", "content-validations":
			if err := r.d.Skip(); err != nil {
				return err
			}
		}
	}
}

// odsCell is a cell with where it stands and how many columns and rows it reaches over.
type odsCell struct {
	column, times int
	kind, value   string
	text          string
	across, down  int
	note          string
	struck        bool
}

// readRow reads one row and writes it as often as it says that it stands there.
func (r *odsReader) readRow(row xml.StartElement) error {
	times := count(attrOf(row, "number-rows-repeated"))
	var cells []odsCell
	column := 0
	for {
		t, err := r.d.Token()
		if err != nil {
			return err
		}
		if _, ok := t.(xml.EndElement); ok {
			break
		}
		e, ok := t.(xml.StartElement)
		if !ok {
			continue
		}
		if e.Name.Local != "table-cell" && e.Name.Local != "covered-table-cell" {
			if err := r.d.Skip(); err != nil {
				return err
			}
			continue
		}
		c := odsCell{column: column, times: count(attrOf(e, "number-columns-repeated")), kind: attrOf(e, "value-type"), struck: r.struckStyles[attrOf(e, "style-name")], across: count(attrOf(e, "number-columns-spanned")), down: count(attrOf(e, "number-rows-spanned"))}
		for _, of := range []string{"date-value", "time-value", "string-value", "boolean-value", "value"} {
			if v := attrOf(e, of); v != "" && c.value == "" {
				c.value = v
			}
		}
		if c.text, c.note, err = r.cellText(); err != nil {
			return err
		}
		column += c.times
		if c.text != "" || c.value != "" || c.note != "" {
			cells = append(cells, c)
		}
	}
	first := r.row
	r.row += times
	if len(cells) == 0 {
		return nil
	}
	if attrOf(row, "visibility") == "collapse" && times == 1 {
		if err := r.w.hideRow(first); err != nil {
			return err
		}
	}
	for k := range min(times, mostRepeats) {
		for _, c := range cells {
			for i := range min(c.times, mostRepeats) {
				v := c.written()
				v.row, v.column = first+k, c.column+i
				if v.struck = c.struck; k == 0 && i == 0 {
					v.note = c.note
				}
				if c.times == 1 && times == 1 {
					v.across, v.down = c.across, c.down
				}
				if err := r.w.set(v); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// cellText is the text that a cell shows, its paragraphs divided by line breaks, and the note to it.
func (r *odsReader) cellText() (text, note string, err error) {
	var b strings.Builder
	paragraphs := 0
	for depth := 1; depth > 0; {
		t, err := r.d.Token()
		if err != nil {
			return "", "", err
		}
		switch t := t.(type) {
		case xml.StartElement:
			switch t.Name.Local {
			case "annotation":
				var said struct {
					Lines []struct {
						Text string `xml:",chardata"`
						Runs []struct {
							Text string `xml:",chardata"`
						} `xml:"span"`
					} `xml:"p"`
				}
				if err := r.d.DecodeElement(&said, &t); err != nil {
					return "", "", err
				}
				for _, l := range said.Lines {
					for _, run := range l.Runs {
						l.Text += run.Text
					}
					note += strings.TrimSpace(l.Text) + "\n"
				}
				note = strings.TrimSpace(note)
				continue
			case "table", "shapes":
				if err := r.d.Skip(); err != nil {
					return "", "", err
				}
				continue
			case "p":
				if paragraphs++; paragraphs > 1 {
					b.WriteByte('\n')
				}
			case "s":
				b.WriteString(strings.Repeat(" ", min(count(attrOf(t, "c")), 200)))
			case "tab":
				b.WriteByte(' ')
			case "line-break":
				b.WriteByte('\n')
			}
			depth++
		case xml.EndElement:
			depth--
		case xml.CharData:
			if paragraphs > 0 {
				b.Write(t)
			}
		}
	}
	return b.String(), note, nil
}

// written is the cell of the workbook that holds what the cell does, under a format that shows it
// in the same way.
func (c odsCell) written() bookCell {
	text := bookCell{text: c.text}
	if c.text == "" {
		text.text = c.value
	}
	switch c.kind {
	case "float", "currency":
		if n, err := strconv.ParseFloat(c.value, 64); err == nil {
			return bookCell{number: n, isNumber: true, format: decimalsShown(c.text)}
		}
	case "percentage":
		if n, err := strconv.ParseFloat(c.value, 64); err == nil {
			return bookCell{number: n, isNumber: true, format: "0.00%"}
		}
	case "date":
		for _, form := range []string{"2006-01-02T15:04:05.999999999", "2006-01-02"} {
			if day, err := time.Parse(form, c.value); err == nil {
				n := day.Sub(time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)).Hours() / 24
				switch {
				case n < 61: // before March 1900, when the two kinds of calendar part: a time
					return bookCell{number: n, isNumber: true, format: clockShown(c.text, n)}
				case n == float64(int(n)):
					return bookCell{number: n, isNumber: true, format: "yyyy-mm-dd"}
				}
				return bookCell{number: n, isNumber: true, format: "yyyy-mm-dd hh:mm:ss"}
			}
		}
	case "time":
		if n, ok := isoDuration(c.value); ok {
			return bookCell{number: n, isNumber: true, format: clockShown(c.text, n)}
		}
	}
	return text
}

var durationForm = regexp.MustCompile(`^P(?:(\d+)D)?T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:[.,]\d+)?)S)?$`)

// isoDuration is a duration (ISO 8601-1:2019, 5.5.2.2) in days.
func isoDuration(s string) (days float64, ok bool) {
	m := durationForm.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	seconds := 0.0
	for i, unit := range []float64{86400, 3600, 60, 1} {
		if m[i+1] != "" {
			n, err := strconv.ParseFloat(strings.Replace(m[i+1], ",", ".", 1), 64)
			if err != nil {
				return 0, false
			}
			seconds += n * unit
		}
	}
	return seconds / 86400, true
}

// clockShown is the number format under which a time shows as it did: with hours and minutes,
// minutes and seconds, or all three, and decimals of the seconds.
func clockShown(shown string, days float64) string {
	decimals := ""
	if at := strings.LastIndexAny(shown, ".,"); at > strings.LastIndexByte(shown, ':') && at > 0 {
		decimals = "." + strings.Repeat("0", min(len(shown)-at-1, 3))
	}
	if strings.Count(shown, ":") == 1 {
		minutes := int(days*24*60 + 1e-9)
		if h, _, _ := strings.Cut(shown, ":"); decimals == "" && strings.TrimLeft(strings.TrimSpace(h), "0") == strings.TrimLeft(strconv.Itoa(minutes/60), "0") {
			return "[h]:mm"
		}
		return "[mm]:ss" + decimals
	}
	return "[h]:mm:ss" + decimals
}

var plainDecimal = regexp.MustCompile(`^-?\d+[.,](\d+)$`)

// decimalsShown is the number format with as many decimals as a number shows.
func decimalsShown(shown string) string {
	if m := plainDecimal.FindStringSubmatch(strings.TrimSpace(shown)); m != nil {
		return "0." + strings.Repeat("0", min(len(m[1]), 9))
	}
	if s := strings.TrimSpace(shown); len(s) > 1 && len(s) < 12 && s[0] == '0' && digitsOnly(s) {
		return strings.Repeat("0", len(s)) // 0012
	}
	return ""
}

// attrOf is an attribute of an element by its name without its space; "" for none.
func attrOf(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// count is a number of repeats: 1 where nothing is said.
func count(s string) int {
	if n, err := strconv.Atoi(s); err == nil && n > 0 {
		return n
	}
	return 1
}
