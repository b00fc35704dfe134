package sheet

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/japanese"
	"golang.org/x/text/encoding/korean"
	"golang.org/x/text/encoding/simplifiedchinese"
	"golang.org/x/text/encoding/traditionalchinese"
)

// eastAsianPages are what sheets in Japanese, Chinese and Korean are written in that are no
// Unicode, two bytes for most characters. Tables: WHATWG Encoding Standard, by the library.
var eastAsianPages = []struct {
	name string
	page encoding.Encoding
}{
	{"Shift JIS", japanese.ShiftJIS},
	{"EUC-JP", japanese.EUCJP},
	{"GB 18030", simplifiedchinese.GB18030},
	{"Big5", traditionalchinese.Big5},
	{"EUC-KR", korean.EUCKR},
}

// eastAsianHead is how many bytes at the beginning of a text the headings are looked for in.
const eastAsianHead = 8 << 10

// decodeEastAsian reads bytes that are no UTF-8 in the one of those pages in which headings of
// that language stand, at least two of them each in a cell of its own. Letters of other
// languages can be read as such characters too, but hardly as those words. ok is false where
// none fits.
func decodeEastAsian(text []byte) (out []byte, name string, ok bool) {
	head := text
	if len(head) > eastAsianHead {
		head = head[:eastAsianHead]
		if n := bytes.LastIndexByte(head, '\n'); n > 0 {
			head = head[:n]
		}
	}
	best, most := -1, 1
	for i, p := range eastAsianPages {
		plain, err := p.page.NewDecoder().Bytes(head)
		if err != nil || bytes.ContainsRune(plain, utf8.RuneError) {
			continue
		}
		if n := eastAsianWords(string(plain)); n > most {
			best, most = i, n
		}
	}
	if best < 0 {
		return nil, "", false
	}
	out, err := eastAsianPages[best].page.NewDecoder().Bytes(text)
	return out, eastAsianPages[best].name, err == nil
}

// eastAsianWords counts the different headings and sexes of such lists that are cells of a text.
func eastAsianWords(text string) int {
	found := map[string]bool{}
	cells := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("\t,;|\"'\r\n :：　", r) })
	for _, c := range cells {
		if c[0] >= utf8.RuneSelf {
			if f := fold(c); eastAsianWord[f] {
				found[f] = true
			}
		}
	}
	return len(found)
}

// eastAsianWord has those headings and sexes.
var eastAsianWord = func() map[string]bool {
	words := map[string]bool{}
	for _, list := range eastAsianHeadings {
		for _, w := range strings.Fields(list) {
			words[fold(w)] = true
		}
	}
	for _, w := range eastAsianSexes {
		words[w] = true
	}
	return words
}()
