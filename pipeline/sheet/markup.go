package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strconv"
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
	text = nestedItems(plainEmphasis(text))
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

// fence is a line around text that is shown as it was typed (CommonMark, fenced code blocks; the
// brackets of forums).
var fence = regexp.MustCompile("(?m)^[ \\t>]*(?:(?:```|~~~)[\\w-]*|\\[/?(?:code|pre)\\])[ \\t]*\\r?$")

// withoutFences leaves such lines blank. Lines keep their places.
func withoutFences(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("```")) && !bytes.Contains(text, []byte("~~~")) && !bytes.Contains(text, []byte("[/")) {
		return text
	}
	return fence.ReplaceAll(text, nil)
}

// lineNumber is the number that a program for texts shows before a line.
var lineNumber = regexp.MustCompile(`^ *(\d{1,5})(:|\t|\||  )(?: |$)?`)

// firstPlace is the place of the first of a list.
var firstPlace = regexp.MustCompile(`^\s*(?:1|[#(]?1(?:st|[.):,])?)(?:\s|[|;,])`)

// withoutLineNumbers takes such numbers off where all lines, eight or more and the blank ones among
// them, have the one that follows that of the line above.
func withoutLineNumbers(text []byte) []byte {
	if len(text) > typedBytes || len(text) == 0 || text[0] != ' ' && text[0] != '1' {
		return text
	}
	lines := textLines(text)
	var out []string
	for i, l := range lines {
		m := lineNumber.FindStringSubmatch(l)
		if m == nil || m[1] != strconv.Itoa(i+1) {
			return text
		}
		out = append(out, l[len(m[0]):])
	}
	if len(out) < 8 || !slices.ContainsFunc(out[1:], firstPlace.MatchString) {
		return text // the numbers are the places
	}
	return []byte(strings.Join(out, "\n") + "\n")
}

var (
	// codeMarks are around a cell or a value that is shown as it was typed, "`18:20`".
	codeMarks = regexp.MustCompile("`([^`\n]{1,60})`")
	// wholeLine is a line that is emphasised from end to end, "*Alder Bank*", "**3 January 2026**".
	wholeLine = regexp.MustCompile(`(?m)^[ \t]*(?:\*{1,3}|_{1,2})([^*_\s|][^*_\n|]*)(?:\*{1,3}|_{1,2})[ \t]*$`)
)

// plainEmphasis takes the marks off values that are shown as typed, where three and more are,
// and off lines that are emphasised whole.
func plainEmphasis(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	if bytes.IndexByte(text, '`') >= 0 && len(codeMarks.FindAllIndex(text, 3)) == 3 {
		text = codeMarks.ReplaceAll(text, []byte("$1"))
	}
	if bytes.Contains(text, []byte("*\n")) || bytes.Contains(text, []byte("_\n")) || bytes.Contains(text, []byte("*\r")) {
		text = wholeLine.ReplaceAll(text, []byte("$1"))
	}
	return text
}

var (
	topItem  = regexp.MustCompile(`^[-*+•] +(\pL[^:\d]*?)\s*$`)
	deepItem = regexp.MustCompile(`^\s{2,}[-*+•] +(\pL[\pL .-]{0,20}: *\S.*)$`)
)

// nestedItems gives the items of a list that hold lists of facts the label that these have:
// "- Jo Lee" over "  - time: 18:20" becomes "Name: Jo Lee" over "time: 18:20". Lines keep their places.
func nestedItems(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("\n  ")) {
		return text
	}
	lines, n := textLines(text), 0
	for i := range lines {
		if i+1 < len(lines) && topItem.MatchString(lines[i]) && deepItem.MatchString(lines[i+1]) {
			n++
		}
	}
	if n < 3 {
		return text
	}
	for i, l := range lines {
		if m := deepItem.FindStringSubmatch(l); m != nil {
			lines[i] = m[1]
		} else if m := topItem.FindStringSubmatch(l); m != nil && i+1 < len(lines) && deepItem.MatchString(lines[i+1]) {
			lines[i] = "Name: " + m[1]
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	listedKey = regexp.MustCompile(`^(\s*)- (\pL[\pL\d_ .-]{0,30}): +(\S.*?)\s*$`)
	belowKey  = regexp.MustCompile(`^\s+(\pL[\pL\d_ .-]{0,30}):(?: +(\S.*?))?\s*$`)
	bareKey   = regexp.MustCompile(`^\s*\pL[\pL\d_ .-]{0,30}:\s*$`)
)

// listedFacts writes a list whose items are facts (YAML, block sequences of mappings) as facts a line,
// "- place: 1" over "  name: Jo Lee": three items or more begin with the same key. Keys over
// lists are left out, and quotation marks around values. Lines keep their places.
func listedFacts(text []byte) []byte {
	if len(text) > typedBytes || !bytes.Contains(text, []byte("- ")) || !bytes.Contains(text, []byte(": ")) {
		return text
	}
	lines := textLines(text)
	items, key, below := 0, "", 0
	for i, l := range lines {
		m := listedKey.FindStringSubmatch(l)
		if m == nil {
			continue
		}
		if items++; key == "" {
			key = m[2]
		}
		if m[2] != key {
			return text
		}
		if i+1 < len(lines) && belowKey.MatchString(lines[i+1]) {
			below++
		}
	}
	if items < 3 || below < items {
		return text
	}
	for i, l := range lines {
		if m := listedKey.FindStringSubmatch(l); m != nil {
			lines[i] = m[2] + ": " + strings.Trim(m[3], `"'`)
		} else if m := belowKey.FindStringSubmatch(l); m != nil {
			lines[i] = m[1] + ": " + strings.Trim(m[2], `"'`)
		} else if bareKey.MatchString(l) {
			lines[i] = ""
		}
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}
