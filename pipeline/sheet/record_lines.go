package sheet

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
)

var (
	// recordMark is a line between two records that a program has printed, a fact a line:
	// "*** 1. row ***", "-[ RECORD 1 ]---", "[[result]]".
	recordMark = regexp.MustCompile(`^\s*(?:[-*=_#~+]{2,}[\[ ]*(?:\pL+ )?\d+\.?(?: \pL+)?[\] ]*[-*=_#~+]{2,}[-+|]*|-\[ (?:\pL+ )?\d+ \][-+|]*|\[\[\w+\]\])\s*$`)
	recordFact = regexp.MustCompile(`^\s*(\pL[\pL\d_]{0,30}) *[:|=] *(.*?)\s*$`)
)

// recordsApart writes records that such lines divide, three and more with the same two keys or more,
// as facts a line, "name: Jo Lee", with a blank line between. Lines keep their places.
func recordsApart(text []byte) []byte {
	if len(text) > typedBytes {
		return text
	}
	lines := textLines(text)
	records, keys, own := 0, []string(nil), []string(nil)
	same := func() bool {
		if records == 0 {
			return true
		}
		if keys == nil {
			keys = own
		}
		return len(own) > 1 && slices.Equal(keys, own)
	}
	for i, l := range lines {
		if recordMark.MatchString(l) {
			if !same() {
				return text
			}
			records++
			own, lines[i] = nil, ""
			continue
		}
		if records == 0 {
			continue
		}
		if m := recordFact.FindStringSubmatch(l); m != nil {
			own = append(own, m[1])
			lines[i] = m[1] + ": " + strings.Trim(m[2], `"'`)
		} else if strings.TrimSpace(l) != "" && len(own) < len(keys) { // else how many there are, below the last
			return text
		}
	}
	if records < 3 || !same() {
		return text
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	braced     = regexp.MustCompile(`\{[^{}]*\}`)
	bracedPair = regexp.MustCompile(`(?:'([^']*)'|"([^"]*)"|([A-Za-z_]\w*))\s*[:=]>?\s*(?:'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)"|([^,{}'"]*))`)
	escaped    = regexp.MustCompile(`\\(.)`)
)

// bracedRecords writes records in braces as a program's source or a log has them, {'place': 1,
// 'name': 'Jo Lee'}, as rows divided by commas below their keys: three and more, with the same
// keys, two or more. Lines above the first become titles, those that are only brackets go.
func bracedRecords(text []byte) (out []byte, ok bool) {
	if len(text) > typedBytes || bytes.Count(text, []byte("{")) < 3 {
		return text, false
	}
	var keys []string
	var rows []string
	groups := braced.FindAllIndex(text, -1)
	if len(groups) < 3 {
		return text, false
	}
	for _, at := range groups {
		var own, values []string
		for _, m := range bracedPair.FindAllStringSubmatch(string(text[at[0]:at[1]]), -1) {
			value := m[4] + m[5]
			if value == "" {
				if value = strings.TrimSpace(m[6]); value == "None" || value == "null" || value == "nil" {
					value = ""
				}
			}
			own = append(own, m[1]+m[2]+m[3])
			values = append(values, textCell(escaped.ReplaceAllString(value, "$1")))
		}
		if keys == nil {
			keys = own
		}
		if len(own) < 2 || !slices.Equal(own, keys) {
			return text, false
		}
		rows = append(rows, strings.Join(values, ","))
	}
	var titles []string
	for _, l := range textLines(text[:groups[0][0]]) {
		if l = strings.TrimRight(strings.TrimSpace(l), "[({-=: "); hasLetter(l) && !sourceCode.MatchString(l) {
			titles = append(titles, textCell(l))
		}
	}
	for i, k := range keys {
		keys[i] = textCell(k)
	}
	lines := append(titles, strings.Join(keys, ","))
	return []byte(strings.Join(append(lines, rows...), "\n") + "\n"), true
}

// sourceCode is what stands before a list in the source of a program, "const results".
var sourceCode = regexp.MustCompile(`^(?:(?:const|var|let|export|return|my|val|static) )*[\w.$@]+$`)
