package sheet

import (
	"bytes"
	"regexp"
	"strings"
)

// markupTables writes tables in the markup of typesetters, forums and databases as rows divided by
// tabs or commas; a text of which lines are cut in several comes back with run set. Other texts come
// back as they are.
func markupTables(text []byte) (out []byte, run bool) {
	if len(text) > typedBytes {
		return text, false
	}
	text = latexRows(text)
	if out, ok := forumRows(text); ok {
		return out, true
	}
	if out, ok := keyedLines(text); ok {
		return out, true
	}
	if out, ok := bracedRecords(text); ok {
		return out, true
	}
	return insertedRows(recordsApart(text))
}

var (
	// latexRow is a row of a LaTeX table: "1 & Jo Lee & 18:20 \\".
	latexRow     = regexp.MustCompile(`^(.*[^\\]&.*?)\\\\(?:\[[^\]]*\])?(?:\s*\\(?:hline|midrule|bottomrule|toprule))*\s*$`)
	latexRule    = regexp.MustCompile(`^\s*\\(?:hline|midrule|bottomrule|toprule|centering|begin\{.*|end\{.*)\s*$`)
	latexCommand = regexp.MustCompile(`\\[a-zA-Z]+\*?(?:\[[^\]]*\])?\{([^{}]*)\}`)
	latexSigns   = strings.NewReplacer(`\&`, "&", `\%`, "%", `\_`, "_", `\#`, "#", `\,`, " ", `~`, " ", `--`, "–", `\ `, " ")
)

// latexRows divides the rows of LaTeX tables by tabs, where three and more are, and takes commands
// off the lines around them. Lines keep their places.
func latexRows(text []byte) []byte {
	if !bytes.Contains(text, []byte(`\\`)) || !bytes.Contains(text, []byte("&")) {
		return text
	}
	lines, rows := textLines(text), 0
	for _, l := range lines {
		if latexRow.MatchString(l) {
			rows++
		}
	}
	if rows < 3 {
		return text
	}
	for i, l := range lines {
		if latexRule.MatchString(l) {
			lines[i] = ""
			continue
		}
		row := latexRow.FindStringSubmatch(l)
		if row != nil {
			l = row[1]
		}
		for latexCommand.MatchString(l) {
			l = latexCommand.ReplaceAllString(l, "$1")
		}
		if row != nil {
			cells := strings.Split(strings.ReplaceAll(l, `\&`, "\x00"), "&")
			for k, c := range cells {
				cells[k] = strings.TrimSpace(latexSigns.Replace(strings.ReplaceAll(c, "\x00", `\&`)))
			}
			lines[i] = strings.Join(cells, "\t")
			continue
		}
		lines[i] = latexSigns.Replace(l)
	}
	return []byte(strings.Join(lines, "\n") + "\n")
}

var (
	forumCell = regexp.MustCompile(`(?i)\[/t[dh]\]\s*\[t[dh]\]`)
	forumRow  = regexp.MustCompile(`(?i)\[/tr\]\s*`)
	forumMark = regexp.MustCompile(`(?i)\[/?(?:table|tbody|tr|td|th|b|i|u|center|code|quote|list|size|color|url|font)(?:=[^\]]*)?\]`)
)

// forumRows divides the rows of tables in the marks of forums, "[tr][td]1[/td][td]Jo Lee[/td]", by tabs,
// one a line, where three and more cells are.
func forumRows(text []byte) (out []byte, ok bool) {
	if !bytes.Contains(text, []byte("[")) || len(forumCell.FindAllIndex(text, 3)) < 3 {
		return text, false
	}
	text = forumCell.ReplaceAll(text, []byte("\t"))
	text = forumRow.ReplaceAll(text, []byte("\n"))
	return forumMark.ReplaceAll(text, nil), true
}

// keyedValue is a value behind its key, as programs write what they do into a log: name="Jo Lee" time=18:20.
var keyedValue = regexp.MustCompile(`(?:^|\s)([A-Za-z_]\w*)=("(?:[^"\\]|\\.)*"|[^\s"]+)`)

// keyedLines writes the lines of a log, each with the same three keys and more and a value in quotation
// marks, as rows divided by commas below these keys. Lines above the first become titles, a pair a line,
// others are left out.
func keyedLines(text []byte) (out []byte, ok bool) {
	if !bytes.Contains(text, []byte(`="`)) {
		return text, false
	}
	head, rows, titles, lines := "", []string(nil), []string(nil), 0
	for _, l := range textLines(text) {
		if strings.TrimSpace(l) == "" {
			continue
		}
		lines++
		pairs := keyedValue.FindAllStringSubmatch(l, -1)
		if len(pairs) < 3 || !strings.Contains(l, `="`) {
			if head == "" {
				titles = append(titles, pairsApart(l)...)
			}
			continue
		}
		var keys, values []string
		if before, _, _ := strings.Cut(l, pairs[0][0]); len(findDates(before)) > 0 {
			day, _, _ := strings.Cut(strings.Fields(before)[0], "T")
			keys, values = append(keys, "date"), append(values, day)
		}
		for _, p := range pairs {
			keys = append(keys, p[1])
			value := p[2]
			if value[0] == '"' {
				value = strings.ReplaceAll(value[1:len(value)-1], `\"`, `"`)
			}
			values = append(values, `"`+strings.ReplaceAll(value, `"`, `""`)+`"`)
		}
		if h := strings.Join(keys, ","); head == "" {
			head = h
		} else if h != head {
			return text, false
		}
		rows = append(rows, strings.Join(values, ","))
	}
	if len(rows) < 3 || len(rows)*10 < (lines-len(titles))*9 {
		return text, false
	}
	if len(titles) > 0 {
		head = strings.Join(titles, "\n") + "\n" + head
	}
	return []byte(head + "\n" + strings.Join(rows, "\n") + "\n"), true
}

// pairsApart puts the pairs of a line a program writes above its rows, "# course=Alder Bank date=2026-01-03",
// into lines of their own, "course: Alder Bank".
func pairsApart(l string) (titles []string) {
	l = strings.TrimLeft(strings.TrimSpace(l), "#;/ ")
	keys := keyBefore.FindAllStringSubmatchIndex(l, -1)
	if len(keys) == 0 {
		return []string{textCell(l)}
	}
	for i, k := range keys {
		end := len(l)
		if i+1 < len(keys) {
			end = keys[i+1][0]
		}
		titles = append(titles, textCell(l[k[2]:k[3]]+": "+strings.Trim(strings.TrimSpace(l[k[1]:end]), `"`)))
	}
	return titles
}

// keyBefore is the key of such a pair.
var keyBefore = regexp.MustCompile(`(?:^|\s)([A-Za-z_]\w*)=`)

// textCell is a text as one cell of a row divided by commas.
func textCell(s string) string { return string(appendField(nil, s, ',')) }

var (
	insertInto = regexp.MustCompile("(?i)^\\s*INSERT INTO [\\w.`\"\\[\\]]+\\s*(?:\\(([^()]*)\\))?\\s*VALUES\\s*")
	createOne  = regexp.MustCompile(`(?is)CREATE TABLE [^()]*\((.*?)\)[^(),]*;`)
	columnName = regexp.MustCompile("^\\s*[`\"\\[]?(\\w+)[`\"\\]]?\\s+\\w")
	keyClause  = regexp.MustCompile(`(?i)^\s*(?:PRIMARY|UNIQUE|KEY|CONSTRAINT|FOREIGN|INDEX|CHECK)\b`)
)

// insertedRows writes the rows that statements put into a table of a database (ISO/IEC 9075, INSERT)
// as rows divided by commas under the names of its columns, where all are of one width. Lines keep
// their places where none has several rows; else run is set.
func insertedRows(text []byte) (out []byte, run bool) {
	if !bytes.Contains(bytes.ToUpper(text[:min(len(text), 1<<16)]), []byte("INSERT INTO")) {
		return text, false
	}
	lines := textLines(text)
	rows := make([]string, len(lines))
	head, first, n, width, inside := "", -1, 0, -1, false
	for i, l := range lines {
		if m := insertInto.FindStringSubmatch(l); m != nil {
			inside = true
			if m[1] != "" && head == "" {
				head = strings.NewReplacer("`", "", `"`, "", "[", "", "]", "", " ", "").Replace(m[1])
			}
			l = l[len(m[0]):]
		}
		if !inside {
			continue
		}
		tuples, end := sqlTuples(l)
		for k, t := range tuples {
			if width >= 0 && len(t) != width {
				return text, false
			}
			if width = len(t); first < 0 {
				first = i
			}
			if n++; k > 0 {
				rows[i] += "\n"
				run = true
			}
			rows[i] += strings.Join(t, ",")
		}
		inside = !end
	}
	if n < 3 {
		return text, false
	}
	if m := createOne.FindSubmatch(text); head == "" && m != nil {
		var names []string
		for _, part := range sqlParts(string(m[1])) {
			if c := columnName.FindStringSubmatch(part); c != nil && !keyClause.MatchString(part) {
				names = append(names, c[1])
			}
		}
		head = strings.Join(names, ",")
	}
	said := linesBeforeStatements(lines[:first])
	copy(rows, said)
	switch {
	case head == "":
	case strings.Count(head, ",")+1 != width:
		return text, false
	case first > 0 && said[first-1] == "":
		rows[first-1] = head
	default:
		rows[first], run = head+"\n"+rows[first], true
	}
	return []byte(strings.Join(rows, "\n") + "\n"), run
}

var (
	statement  = regexp.MustCompile(`(?i)^\s*(?:CREATE|DROP|ALTER|INSERT|DELETE|UPDATE|SET|BEGIN|START|COMMIT|USE|LOCK|UNLOCK|PRAGMA|SELECT|COPY)\b`)
	sqlComment = strings.NewReplacer("--", "", "/*", "", "*/", "")
)

// linesBeforeStatements are lines above the first rows as titles, without the marks of comments;
// blank in the place of statements.
func linesBeforeStatements(lines []string) []string {
	out, inside := make([]string, len(lines)), false
	for i, l := range lines {
		if inside = inside || statement.MatchString(l); !inside {
			if l = strings.TrimSpace(sqlComment.Replace(l)); l != "" {
				out[i] = textCell(l)
			}
		}
		if strings.Contains(l, ";") {
			inside = false
		}
	}
	return out
}

// sqlParts cuts the columns of a table at the commas between them, not at those within brackets.
func sqlParts(list string) (parts []string) {
	depth, from := 0, 0
	for i, r := range list {
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case r == ',' && depth == 0:
			parts, from = append(parts, list[from:i]), i+1
		}
	}
	return append(parts, list[from:])
}

// sqlTuples are the values of the rows in a line of a statement, as cells of a text divided by
// commas, and whether the statement ends in it. A value that is not there is blank.
func sqlTuples(l string) (tuples [][]string, end bool) {
	for i := 0; i < len(l); i++ {
		switch l[i] {
		case ';':
			return tuples, true
		case '(':
			var cells []string
			for i++; i < len(l) && l[i] != ')'; {
				var cell strings.Builder
				for i < len(l) && l[i] == ' ' {
					i++
				}
				if i+1 < len(l) && (l[i] == 'N' || l[i] == 'E') && l[i+1] == '\'' {
					i++ // how the letters are kept
				}
				if i < len(l) && l[i] == '\'' {
					for i++; i < len(l); i++ {
						if l[i] == '\\' && i+1 < len(l) {
							i++
						} else if l[i] == '\'' {
							if i+1 >= len(l) || l[i+1] != '\'' {
								break
							}
							i++
						}
						cell.WriteByte(l[i])
					}
					i++
					cells = append(cells, `"`+strings.ReplaceAll(cell.String(), `"`, `""`)+`"`)
				} else {
					for i < len(l) && l[i] != ',' && l[i] != ')' {
						cell.WriteByte(l[i])
						i++
					}
					value := strings.TrimSpace(cell.String())
					if strings.EqualFold(value, "NULL") {
						value = ""
					}
					cells = append(cells, value)
				}
				for i < len(l) && l[i] == ' ' {
					i++
				}
				if i < len(l) && l[i] == ',' {
					i++
				}
			}
			if len(cells) > 0 {
				tuples = append(tuples, cells)
			}
		}
	}
	return tuples, false
}
