package sheet

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"mime/quotedprintable"
	"strings"
	"unicode"
	"unicode/utf8"

	utf16 "golang.org/x/text/encoding/unicode"
)

// decode turns the bytes of a text sheet into UTF-8 without a byte order mark.
// Clean UTF-8 is returned as it is, not copied. note tells of anything that a
// person should know.
//
// Bytes that are no UTF-8 are of the code page in which they read best
// (codepage.go), Windows-1252 before others; WHATWG's table of it has a
// character for every byte (https://encoding.spec.whatwg.org/index-windows-1252.txt).
func decode(data []byte) (text []byte, encoding, note string, err error) {
	if text, encoding, note, err = decodeLetters(data); err != nil {
		return nil, "", "", err
	}
	text, ofOthers := plainFigures(text)
	if plain := commonYears(text); !bytes.Equal(plain, text) {
		text = plain
		encoding += ", its years of the Buddhist era read in the common one"
	}
	if ofOthers {
		encoding += ", its figures of another script or width read as 0 to 9"
	}
	return text, encoding, note, nil
}

// decodeLetters is decode with the figures as they are.
func decodeLetters(data []byte) (text []byte, encoding, note string, err error) {
	switch {
	case bytes.HasPrefix(data, []byte("\xEF\xBB\xBF")):
		text, encoding = data[3:], "UTF-8 with byte order mark"
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		return decode16(data[2:], utf16.LittleEndian, "UTF-16 little-endian")
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return decode16(data[2:], utf16.BigEndian, "UTF-16 big-endian")
	case looksQuotedPrintable(data):
		plain, err := io.ReadAll(quotedprintable.NewReader(bytes.NewReader(data)))
		if err != nil {
			return nil, "", "", fmt.Errorf("its quoted-printable text is damaged (%w)", err)
		}
		if text, _, note, err = decodeLetters(plain); err != nil {
			return nil, "", "", err
		}
		return text, "quoted-printable", note, nil
	default:
		if end, ok := looksUTF16(data); ok {
			name := "UTF-16 little-endian without byte order mark"
			if end == utf16.BigEndian {
				name = "UTF-16 big-endian without byte order mark"
			}
			return decode16(data, end, name)
		}
		text, encoding = data, "UTF-8"
	}
	if !utf8.Valid(text) {
		text, encoding, note = decodeMixed(text, encoding)
	} else if plain, page := readAgain(text); page != nil {
		text, encoding = plain, encoding+" of "+page.name+" that was taken for Windows-1252"
		note = "its letters were " + page.name + " and taken for Windows-1252 before; check its names"
	}
	if n := bytes.Count(text, []byte{0}); n > 0 {
		if n*50 > len(text) {
			return nil, "", "", fmt.Errorf("it is not text (%d of its %d bytes are zero) and of no kind that can be read; ask for a CSV or a spreadsheet", n, len(text))
		}
		text = bytes.ReplaceAll(text, []byte{0}, nil)
		note = fmt.Sprintf("%d zero bytes were left out", n)
	}
	if n := controls(text); n*50 > min(len(text), 1<<16) {
		return nil, "", "", fmt.Errorf("it is not text (it is full of control characters) and of no kind that can be read; ask for a CSV or a spreadsheet")
	}
	return text, encoding, note, nil
}

// looksQuotedPrintable finds text as mail programs send it (RFC 2045, section
// 6.7): ASCII, with =FC or =C3=BC for ü. No line may end in "=", which would
// divide a row.
func looksQuotedPrintable(data []byte) bool {
	head := data[:min(len(data), 1<<16)]
	letters := 0
	for i, c := range head {
		switch {
		case c >= utf8.RuneSelf:
			return false
		case c != '=':
			continue
		case i+2 >= len(head):
			return letters > 2
		}
		a, b := hexDigit(head[i+1]), hexDigit(head[i+2])
		switch {
		case a < 0 || b < 0:
			return false
		case a >= 8:
			letters++
		}
	}
	return letters > 2
}

func hexDigit(c byte) int {
	switch {
	case c >= '0' && c <= '9':
		return int(c - '0')
	case c >= 'A' && c <= 'F':
		return int(c-'A') + 10
	}
	return -1
}

func controls(text []byte) (n int) {
	for _, c := range text[:min(len(text), 1<<16)] {
		if c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f' || c == 0x7F {
			n++
		}
	}
	return n
}

func decode16(data []byte, end utf16.Endianness, name string) ([]byte, string, string, error) {
	note := ""
	if len(data)%2 == 1 {
		data, note = data[:len(data)-1], "the last byte of the file is half a character and was left out"
	}
	text, err := utf16.UTF16(end, utf16.IgnoreBOM).NewDecoder().Bytes(data)
	if err != nil {
		return nil, "", "", fmt.Errorf("its %s text is damaged (%w)", name, err)
	}
	if bytes.IndexByte(text, 0) >= 0 {
		text, note = bytes.ReplaceAll(text, []byte{0}, nil), "zero characters were left out"
	}
	return text, name, note, nil
}

// looksUTF16 finds UTF-16 without a byte order mark: in a table of results most
// characters are below U+0100, so that nearly every second byte is zero.
func looksUTF16(data []byte) (utf16.Endianness, bool) {
	head := data[:min(len(data), 4096)&^1]
	if len(head) < 8 {
		return utf16.LittleEndian, false
	}
	var zeros [2]int
	for i, c := range head {
		if c == 0 {
			zeros[i&1]++
		}
	}
	half := len(head) / 2
	switch {
	case zeros[1]*10 > half*7 && zeros[0]*10 < half:
		return utf16.LittleEndian, true
	case zeros[0]*10 > half*7 && zeros[1]*10 < half:
		return utf16.BigEndian, true
	}
	return utf16.LittleEndian, false
}

// decodeMixed reads bytes that are not all UTF-8. Where nothing but ASCII is
// valid UTF-8 the whole text is of one code page; where both occur (a line pasted
// from another program) each line is read by itself.
func decodeMixed(text []byte, encoding string) ([]byte, string, string) {
	valid, invalid := 0, 0
	for i := 0; i < len(text); {
		if text[i] < utf8.RuneSelf {
			i++
			continue
		}
		r, n := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && n == 1 {
			invalid++
		} else {
			valid++
		}
		i += n
	}
	if plain, name, ok := decodeEastAsian(text); ok && invalid > valid {
		return plain, name, ""
	}
	p := guessPage(text)
	if valid == 0 || invalid > 10*valid || p.own && invalid > valid {
		return p.append(make([]byte, 0, len(text)+invalid*2), text), p.name, ""
	}
	out := make([]byte, 0, len(text)+invalid*2)
	lines := 0
	for len(text) > 0 {
		n := bytes.IndexByte(text, '\n') + 1
		if n == 0 {
			n = len(text)
		}
		line := text[:n]
		text = text[n:]
		if utf8.Valid(line) {
			out = append(out, line...)
			continue
		}
		out = p.append(out, line)
		lines++
	}
	return out, encoding + " with some " + p.name, fmt.Sprintf("%d lines are not UTF-8 and were read as %s; check their names", lines, p.name)
}

// readAgain undoes that a text of another code page was taken for Windows-1252 on
// its way into UTF-8 ("Bo¿ena ¯ak" for "Bożena Żak", "Èâàíîâ" for "Иванов"). The
// page is nil where the text reads well as it is: two signs that are no letters must
// stand in words, as one may divide the columns, or words must have no ASCII letter; and
// the text must read far better.
func readAgain(text []byte) ([]byte, *codePage) {
	sample := make([]byte, 0, min(len(text), pageSample))
	for rest := text; len(rest) > 0 && len(sample) < pageSample; {
		n := bytes.IndexAny(rest, "\r\n") + 1
		if n == 0 {
			n = len(rest)
		}
		line := rest[:min(n, pageSample)]
		rest = rest[n:]
		if !bytes.ContainsFunc(line, func(r rune) bool { return r >= utf8.RuneSelf }) {
			continue
		}
		line, ok := asWindows1252(line)
		if !ok || utf8.Valid(line) {
			return nil, nil // characters of more than one page, or UTF-8 taken for Windows-1252
		}
		sample = append(sample, line...)
	}
	if len(sample) == 0 {
		return nil, nil
	}
	page := guessPage(sample)
	if page == codePages[0] || page.table[0xA0] != 0xA0 {
		return nil, nil // a space that doesn't break is no letter of the code pages of DOS
	}
	words := map[string]bool{}
	before, _ := codePages[0].score(sample, words)
	if after, own := page.score(sample, words); own < 4 || after < before+2*pageMargin+2 {
		return nil, nil
	}
	letter := func(p *codePage, i int) bool {
		return i >= 0 && i < len(sample) && unicode.IsLetter(p.table[sample[i]])
	}
	odd, whole := map[byte]bool{}, 0
	for i, c := range sample {
		if c < utf8.RuneSelf || !letter(page, i) {
			continue
		}
		if !letter(codePages[0], i) && letter(page, i+1) {
			odd[c] = true // not behind a word, where the mark of a remark stands
		}
		if i >= 3 && sample[i-1] >= utf8.RuneSelf && sample[i-2] >= utf8.RuneSelf && sample[i-3] >= utf8.RuneSelf {
			whole++
		}
	}
	if len(odd) < 2 && !(page.own && whole > 5) {
		return nil, nil
	}
	plain, ok := asWindows1252(text)
	if !ok {
		return nil, nil
	}
	return page.append(make([]byte, 0, len(text)), plain), page
}

// asWindows1252 writes UTF-8 in Windows-1252; ok is false where it has no such character.
func asWindows1252(text []byte) (out []byte, ok bool) {
	out = make([]byte, 0, len(text))
	for len(text) > 0 {
		r, n := utf8.DecodeRune(text)
		b, known := windows1252Byte[r]
		switch {
		case r < utf8.RuneSelf:
			b = byte(r)
		case !known:
			return nil, false
		}
		out, text = append(out, b), text[n:]
	}
	return out, true
}

// windows1252 is the index of the WHATWG standard.
var windows1252 = pageNamed("Windows-1252").table

// windows1252Byte is the reverse of windows1252.
var windows1252Byte = func() map[rune]byte {
	m := map[rune]byte{}
	for b := 0x80; b <= 0xFF; b++ {
		m[windows1252[b]] = byte(b)
	}
	return m
}()

// unmangle undoes UTF-8 that was read as Windows-1252 ("Ã¶" for "ö") and the
// character references of web pages ("&ouml;") in titles and headings, so that
// their words are recognised. Cells of rows stay as they are. Text that is not
// of that kind comes back unchanged.
func unmangle(s string) string {
	if i := strings.IndexByte(s, '&'); i >= 0 && strings.IndexByte(s[i:], ';') > 1 {
		s = html.UnescapeString(s)
	}
	for range 2 { // it happens twice over
		mangled := false
		for i := 0; i+1 < len(s); i++ {
			// U+00C2 to U+00F4 are the lead bytes of UTF-8 read as characters.
			if s[i] == 0xC3 && s[i+1] >= 0x82 && s[i+1] <= 0xB4 || s[i] == 0xC3 && s[i+1] == 0x82 {
				mangled = true
				break
			}
		}
		if !mangled {
			return s
		}
		b := make([]byte, 0, len(s))
		for _, r := range s {
			switch c, ok := windows1252Byte[r]; {
			case r < utf8.RuneSelf:
				b = append(b, byte(r))
			case ok:
				b = append(b, c)
			default:
				return s
			}
		}
		if !utf8.Valid(b) {
			return s
		}
		s = string(b)
	}
	return s
}
