package sheet

import "bytes"

// doubleQuotes puts double quotation marks in the places of curly ones, or of the single ones of a text
// that has its words and times in those, as a list of values for a database has: 1,'Jo',
// 'Lee','18:20'. Nine of ten lines have two such cells or more, and no line has a double
// mark. A space before an opening mark goes; lines keep their places.
func doubleQuotes(text []byte, d dialect) ([]byte, bool) {
	if plain := curlyQuotes(text); plain != nil {
		return plain, true
	}
	if len(text) > wholeBytes || bytes.IndexByte(text, '\'') < 0 || bytes.IndexByte(text, '"') >= 0 {
		return text, false
	}
	var out []byte
	lines, quoted := 0, 0
	most := bytes.Count(text, []byte("\n")) + 1 // lines there can be
	for line := range bytes.Lines(text) {
		if len(bytes.TrimSpace(line)) == 0 {
			out = append(out, line...)
			continue
		}
		lines++
		var cells int
		if out, cells = doubleQuoted(out, line, d.delim); cells >= 2 {
			quoted++
		}
		if 10*(lines-quoted) > most+9 { // an apostrophe in a name: not to go on to the end
			return text, false
		}
	}
	if quoted < 3 || quoted*10 < (lines-1)*9 { // the heading may have none
		return text, false
	}
	return out, true
}

// curlyQuotes puts straight marks in the places of curly ones where nine of ten lines, five or more, begin and end with
// one, as a word processor turns them; nil for other texts.
func curlyQuotes(text []byte) []byte {
	if len(text) > wholeBytes || bytes.IndexByte(text, '"') >= 0 || !bytes.Contains(text, []byte("“")) {
		return nil
	}
	lines, quoted := 0, 0
	for line := range bytes.Lines(text) {
		if line = bytes.TrimSpace(line); len(line) == 0 {
			continue
		}
		if lines++; bytes.HasPrefix(line, []byte("“")) && bytes.HasSuffix(line, []byte("”")) {
			quoted++
		}
	}
	if quoted < 5 || quoted*10 < lines*9 {
		return nil
	}
	return bytes.ReplaceAll(bytes.ReplaceAll(text, []byte("“"), []byte(`"`)), []byte("”"), []byte(`"`))
}

// doubleQuoted appends a line with its singly quoted cells in double marks and says how
// many there were.
func doubleQuoted(out, line []byte, delim byte) ([]byte, int) {
	cells := 0
	for i := 0; i < len(line); {
		q := i
		for q < len(line) && line[q] == ' ' {
			q++
		}
		end := -1
		if q < len(line) && line[q] == '\'' {
			end = closingQuote(line, q+1, delim)
		}
		if end >= 0 {
			out = append(append(append(out, '"'), line[q+1:end]...), '"')
			cells++
			i = end + 1
		}
		for i < len(line) && line[i] != delim {
			out = append(out, line[i])
			i++
		}
		if i < len(line) {
			out = append(out, delim)
			i++
		}
	}
	return out, cells
}

// closingQuote is where the single quote stands that ends a cell, -1 for nowhere.
func closingQuote(line []byte, from int, delim byte) int {
	for i := from; i < len(line); i++ {
		if line[i] != '\'' {
			continue
		}
		j := i + 1
		for j < len(line) && line[j] == ' ' {
			j++
		}
		if j == len(line) || line[j] == delim || line[j] == '\n' || line[j] == '\r' {
			return i
		}
	}
	return -1
}
