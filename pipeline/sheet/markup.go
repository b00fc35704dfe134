package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

// markupLink is a link in a text of markup, "[Jo Lee](/runners/jo-lee)" (CommonMark, inline links).
var markupLink = regexp.MustCompile(`\[([^\[\]\n]+)\]\([^()\s]*\)`)

// plainMarkup leaves what links of a text of markup show, where it has three and more, and takes
// the emphasis off the cells between bars: "| **Jo Lee** | *18:20* |". Lines keep their
// places. Letters that are struck through stay as they are, for they say something.
func plainMarkup(text []byte) []byte {
	if len(text) > wholeBytes {
		return text
	}
	if bytes.Contains(text, []byte("](")) && len(markupLink.FindAllIndex(text, 3)) == 3 {
		text = markupLink.ReplaceAll(text, []byte("$1"))
	}
	if !bytes.Contains(text, []byte("|")) || !bytes.Contains(text, []byte("*")) && !bytes.Contains(text, []byte("__")) {
		return text
	}
	lines := bytes.SplitAfter(text, []byte("\n"))
	for i, l := range lines {
		if bytes.Count(l, []byte("|")) < 2 || bytes.IndexByte(l, '*') < 0 && bytes.IndexByte(l, '_') < 0 {
			continue
		}
		cells := strings.Split(string(l), "|")
		for k, c := range cells {
			inside := strings.TrimSpace(c)
			for _, mark := range [...]string{"***", "**", "__", "*", "_"} {
				if plain, ok := strings.CutPrefix(inside, mark); ok && len(plain) > len(mark) && strings.HasSuffix(plain, mark) {
					if plain = strings.TrimSuffix(plain, mark); !strings.Contains(plain, mark) {
						cells[k] = strings.Replace(c, inside, plain, 1)
					}
					break
				}
			}
		}
		lines[i] = []byte(strings.Join(cells, "|"))
	}
	return bytes.Join(lines, nil)
}
