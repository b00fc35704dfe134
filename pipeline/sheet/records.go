package sheet

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
)

// Results that a program kept for itself, lists of records in JSON (RFC 8259) or XML, one text or
// one record a line, are read as tables: the keys of the records are the headings, and what
// stands beside a list, as who ran where and when, are lines above it.

// deepestRecord is how many lists and records may stand one within the other.
const deepestRecord = 40

// startsRecords says whether text begins like records: "{" and a key, a list of records, or one of rows.
func startsRecords(head string) bool {
	rest := strings.TrimLeft(head, " \t\r\n")
	if strings.HasPrefix(rest, "[") {
		rest = strings.TrimLeft(rest[1:], " \t\r\n")
		if strings.HasPrefix(rest, "[") { // rows, the first with texts in it
			row, _, _ := strings.Cut(rest, "]")
			return strings.Contains(row, `"`) && json.Valid([]byte(row+"]"))
		}
	}
	if !strings.HasPrefix(rest, "{") {
		return false
	}
	return strings.HasPrefix(strings.TrimLeft(rest[1:], " \t\r\n"), `"`)
}

// readRecords reads the lists of records of a program.
func readRecords(name string, data []byte, o Options) (*Sheet, error) {
	text, err := recordsText(data, o.Limits)
	if err != nil {
		return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
	}
	s, err := readText(name, text, o)
	if err != nil {
		return s, fmt.Errorf("%s is refused: it is program data (%s); of its lists, %s", baseName(name), recordsKind(data), strings.TrimPrefix(err.Error(), baseName(name)+" is refused: "))
	}
	s.Dialect = "program data (" + recordsKind(data) + "): its lists of records as tables, as they stand below one another"
	return s, nil
}

// recordsKind is the name of the way in which records are written, with the first bytes of the text.
func recordsKind(data []byte) string {
	head := bytes.TrimLeft(data[:min(len(data), 256)], "\xEF\xBB\xBF\xFE\xFF\x00 \t\r\n`~jsonxml")
	if bytes.HasPrefix(head, []byte("<")) {
		return "XML"
	}
	return "JSON"
}

// recordsText is the tables of records as lines divided by tabs, in UTF-8.
func recordsText(data []byte, l Limits) ([]byte, error) {
	kind := recordsKind(data)
	if len(data) > wholeBytes {
		return nil, fmt.Errorf("it is program data (%s) of %d MB, more than the %d MB allowed; ask for a CSV or a spreadsheet", kind, len(data)>>20, wholeBytes>>20)
	}
	text, _, _, err := decode(data)
	if err != nil {
		return nil, err
	}
	text = withoutFences(text)
	all := recordNode{list: true}
	if kind == "XML" {
		if all, err = xmlRecords(bytes.TrimSpace(text), l); err != nil {
			return nil, fmt.Errorf("it is program data (XML) that can't be read (%w); ask for a CSV or a spreadsheet", err)
		}
	} else {
		d := json.NewDecoder(bytes.NewReader(text))
		d.UseNumber()
		for {
			n, err := readNode(d, 0)
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				return nil, fmt.Errorf("it is program data (JSON) that can't be read (%w); ask for a CSV or a spreadsheet", err)
			}
			all.items = append(all.items, n)
		}
		if len(all.items) == 1 {
			all = all.items[0]
		}
	}
	w := recordWriter{limits: l}
	w.write(all)
	if w.tables == 0 {
		return nil, fmt.Errorf("it is program data (%s) without a list of records; ask for a CSV or a spreadsheet", kind)
	}
	if len(w.out) > 2*wholeBytes {
		return nil, fmt.Errorf("it is program data (%s) whose tables are too large; ask for a CSV or a spreadsheet", kind)
	}
	return w.out, nil
}

// recordNode is a value: a list, a record with its keys in order, or plain text.
type recordNode struct {
	list, record bool
	keys         []string // of a record
	items        []recordNode
	text         string
}

func readNode(d *json.Decoder, depth int) (recordNode, error) {
	t, err := d.Token()
	if err != nil {
		return recordNode{}, err
	}
	open, ok := t.(json.Delim)
	if !ok {
		if t == nil {
			return recordNode{}, nil
		}
		return recordNode{text: spacedOnce(fmt.Sprint(t))}, nil
	}
	if depth > deepestRecord {
		return recordNode{}, errors.New("too many lists one within the other")
	}
	n := recordNode{list: open == '[', record: open == '{'}
	for d.More() {
		if n.record {
			k, err := d.Token()
			if err != nil {
				return n, err
			}
			n.keys = append(n.keys, spacedOnce(fmt.Sprint(k)))
		}
		item, err := readNode(d, depth+1)
		if err != nil {
			return n, unexpected(err)
		}
		n.items = append(n.items, item)
	}
	_, err = d.Token()
	return n, unexpected(err)
}

// unexpected is an error where the text ends in the middle of a value.
func unexpected(err error) error {
	if errors.Is(err, io.EOF) {
		return io.ErrUnexpectedEOF
	}
	return err
}

// recordWriter writes lists of records as tables.
type recordWriter struct {
	limits Limits
	out    []byte
	tables int
}

func (w *recordWriter) write(n recordNode) {
	switch {
	case n.list && n.ofRecords():
		w.table(n)
	case n.list && n.ofRows():
		w.rows(nil, n)
	case n.record && n.keyed():
		w.table(n.unkeyed())
	case n.record && n.ofTimes():
		w.tables++
		for i, item := range n.items {
			w.row(n.keys[i], item.text)
		}
	case n.list && n.ofRunners():
		w.table(n.runOfEach())
	case n.list:
		for _, item := range n.items {
			w.write(item)
		}
	case n.record:
		side := n.besideOneAnother()
		for i, item := range n.items { // what is said of all
			if !item.list && !item.record && item.text != "" {
				w.row(n.keys[i], item.text)
			}
		}
		var heads []string
		over := -1 // the item that is the headings of rows
		for _, item := range n.items {
			if item.list && item.ofRows() && over < 0 {
				heads, over = n.headsOf(item)
			}
		}
		for i, item := range n.items {
			if item.tabular() && i != over && n.lists() > 1 {
				w.row(n.keys[i])
			}
			switch {
			case len(side) > 0 && slices.Contains(side, i):
				if i == side[0] {
					w.columns(n, side)
				}
			case i == over:
			case item.list && item.ofRows() && len(item.items[0].items) == len(heads):
				w.rows(heads, item)
			default:
				w.write(w.called(n.keys[i], item))
			}
		}
	}
}

// called writes the name that a record gives itself under the key that says what it is of, and leaves the
// rest: "event": {"name": "Alder Bank 5k", "date": …}.
func (w *recordWriter) called(key string, n recordNode) recordNode {
	if !n.record || n.keyed() || n.ofTimes() || slices.ContainsFunc(n.items, func(item recordNode) bool { return item.list }) {
		return n
	}
	at := slices.IndexFunc(n.keys, func(k string) bool { return ownName[fold(k)] })
	if at < 0 || n.items[at].text == "" {
		return n
	}
	if about := fold(key); coverWords[about] || ofWhole[about] {
		w.row(n.items[at].text) // the title of it all
	} else {
		w.row(key, n.items[at].text)
	}
	n.keys, n.items = slices.Delete(slices.Clone(n.keys), at, at+1), slices.Delete(slices.Clone(n.items), at, at+1)
	return n
}

// ofWhole are keys over what is said of all that follows, as coverWords are. Common practice, no source.
var ofWhole = set("meta metadata header head data properties attributes general")

// ownName are keys under which a record gives its own name. Common practice, no source.
var ownName = set("name title label nom nombre nome naam navn namn")

// besideOneAnother are the items of a record that are the columns of a table: lists of as many texts each,
// three and more, one of them times. {"name": ["Jo Lee", …], "time": ["18:20", …]}.
func (n recordNode) besideOneAnother() (side []int) {
	length, timed := 0, false
	for i, item := range n.items {
		if !item.plainTexts() || len(item.items) < 3 || length > 0 && len(item.items) != length {
			continue
		}
		clocks := 0
		for _, v := range item.items {
			if kindOf(v.text) == kClock {
				clocks++
			}
		}
		length = len(item.items)
		timed = timed || 2*clocks > length
		side = append(side, i)
	}
	if len(side) < 2 || !timed {
		return nil
	}
	return side
}

// columns writes such lists beside one another, under their keys.
func (w *recordWriter) columns(n recordNode, side []int) {
	w.tables++
	if len(w.out) > 0 {
		w.out = append(w.out, '\n')
	}
	cells := make([]string, len(side))
	for k, i := range side {
		cells[k] = n.keys[i]
	}
	w.row(cells...)
	for at := range n.items[side[0]].items {
		for k, i := range side {
			cells[k] = n.items[i].items[at].text
		}
		w.row(cells...)
	}
}

// tabular says whether a value is written as one table.
func (n recordNode) tabular() bool { return n.list && (n.ofRecords() || n.ofRows()) }

// plainTexts says whether a value is a list of texts.
func (n recordNode) plainTexts() bool {
	return n.list && !slices.ContainsFunc(n.items, func(v recordNode) bool { return v.list || v.record })
}

// ofRows says whether a list is one of rows, lists of two texts or more with a word in nearly each: [1, "Jo Lee",
// "18:20"], [2, "?", "18:31"]. Those of nothing but figures are the points of a way, or splits.
func (n recordNode) ofRows() bool {
	worded := 0
	for _, row := range n.items {
		if !row.plainTexts() || len(row.items) < 2 {
			return false
		}
		if slices.ContainsFunc(row.items, func(v recordNode) bool { return strings.ContainsFunc(v.text, unicode.IsLetter) }) {
			worded++
		}
	}
	return len(n.items) > 1 && 4*worded >= 3*len(n.items)
}

// headsOf are the headings that a record has for its rows: a list of as many texts, or of records of one text
// each, as the rows have cells; and which of its items that is. nil and -1 for none: the first row may be them.
func (n recordNode) headsOf(rows recordNode) (heads []string, at int) {
	width := len(rows.items[0].items)
	for i, item := range n.items {
		if !item.list || len(item.items) != width || item.tabular() && !item.ofRecords() {
			continue
		}
		heads = nil
		for _, v := range item.items {
			if v.record && len(v.items) > 0 {
				v = v.items[0]
			}
			if !v.list && !v.record && strings.ContainsFunc(v.text, unicode.IsLetter) {
				heads = append(heads, v.text)
			}
		}
		if len(heads) == width {
			return heads, i
		}
	}
	return nil, -1
}

// rows writes a list of rows under headings.
func (w *recordWriter) rows(heads []string, n recordNode) {
	w.tables++
	if len(w.out) > 0 {
		w.out = append(w.out, '\n')
	}
	if heads != nil {
		w.row(heads...)
	}
	for _, row := range n.items {
		var cells []string
		for _, v := range row.items[:min(len(row.items), w.limits.Columns)] {
			cells = append(cells, v.text)
		}
		w.row(cells...)
	}
	w.out = append(w.out, '\n')
}

// keyed says whether a record holds records of one kind, two or more, each under a key of its own that is no
// word for a sex or class: {"17": {"name": …, "time": …}, "21": {…}}.
func (n recordNode) keyed() bool {
	for i, item := range n.items {
		if !item.record || len(item.keys) < 2 || !slices.Equal(item.keys, n.items[0].keys) || item.lists() > 0 || isSection(n.keys[i]) {
			return false
		}
	}
	return len(n.items) > 1
}

// unkeyed is such a record as a list of records, whose keys stand in a first column without a heading.
func (n recordNode) unkeyed() recordNode {
	out := recordNode{list: true}
	for i, item := range n.items {
		out.items = append(out.items, recordNode{record: true, keys: append([]string{""}, item.keys...), items: append([]recordNode{{text: n.keys[i]}}, item.items...)})
	}
	return out
}

// ofTimes says whether a record is nothing but times, three or more, under the names of those who ran them.
func (n recordNode) ofTimes() bool {
	for i, item := range n.items {
		if item.list || item.record || kindOf(item.text) != kClock || !looksNamed(n.keys[i]) {
			return false
		}
	}
	return len(n.items) > 2
}

// ofRunners says whether a list is one of people with their runs below each, two or more: each item names somebody
// and holds one list of records, and those say a day and name nobody. {"runner": {"name": "Jo Lee"}, "runs": [{"date":
// …, "time": …}]}.
func (n recordNode) ofRunners() bool {
	lex := newLexicon(Options{})
	for _, item := range n.items {
		at := slices.IndexFunc(item.items, recordNode.tabular)
		if !item.record || item.lists() != 1 || !item.items[at].ofRecords() {
			return false
		}
		about := item.without(at)
		if about.says(lex, Date) != "" || !looksNamed(about.says(lex, Name)) && about.says(lex, FamilyName) == "" {
			return false
		}
		for _, run := range item.items[at].items {
			if run.says(lex, Date) == "" || run.says(lex, Name) != "" || run.says(lex, FamilyName) != "" {
				return false
			}
		}
	}
	return len(n.items) > 1
}

// without is a record without one of its items.
func (n recordNode) without(at int) recordNode {
	return recordNode{record: true, keys: slices.Delete(slices.Clone(n.keys), at, at+1), items: slices.Delete(slices.Clone(n.items), at, at+1)}
}

// says is the first text in a record under a key of a meaning.
func (n recordNode) says(lex *lexicon, m Meaning) string {
	for i, item := range n.items {
		if g := lex.read(n.keys[i]); item.text != "" && g.known && g.meaning == m {
			return item.text
		}
		if item.record {
			if text := item.says(lex, m); text != "" {
				return text
			}
		}
	}
	return ""
}

// runOfEach is such a list with a record for each run, which begins with who ran it.
func (n recordNode) runOfEach() recordNode {
	out := recordNode{list: true}
	for _, item := range n.items {
		at := slices.IndexFunc(item.items, recordNode.tabular)
		who := item.without(at)
		for _, run := range item.items[at].items {
			out.items = append(out.items, recordNode{record: true, keys: slices.Concat(who.keys, run.keys), items: slices.Concat(who.items, run.items)})
		}
	}
	return out
}

// lists is how many lists of records or rows a record has.
func (n recordNode) lists() (lists int) {
	for _, item := range n.items {
		if item.tabular() {
			lists++
		}
	}
	return lists
}

// ofRecords says whether a list is one of plain records: none of them holds a list of
// records itself.
func (n recordNode) ofRecords() bool {
	for _, item := range n.items {
		if !item.record || item.lists() > 0 {
			return false
		}
	}
	return len(n.items) > 0
}

// table writes a list of records, a row each, under their keys as they first come. A record
// within a record gives its own keys, behind its key where they are taken.
func (w *recordWriter) table(n recordNode) {
	w.tables++
	at := map[string]int{}
	var heads, row []string
	rows := recordWriter{limits: w.limits}
	for _, item := range n.items {
		row = row[:0]
		var put func(item recordNode, within string)
		put = func(item recordNode, within string) {
			for i, v := range item.items {
				path := within + "\x00" + item.keys[i]
				if strings.HasSuffix(within, "\x00"+item.keys[i]) { // the text of an element beside its attributes
					path = within
				}
				if v.record {
					put(v, path)
					continue
				}
				c, ok := at[path]
				if !ok {
					if len(heads) >= w.limits.Columns {
						continue
					}
					c = len(heads)
					at[path] = c
					head := item.keys[i]
					for _, h := range heads {
						if h == head && within != "" {
							head = strings.TrimSpace(strings.ReplaceAll(path, "\x00", " "))
						}
					}
					heads = append(heads, head)
				}
				for len(row) <= c {
					row = append(row, "")
				}
				row[c] = v.plain()
			}
		}
		put(item, "")
		rows.row(row...)
	}
	if len(w.out) > 0 {
		w.out = append(w.out, '\n')
	}
	w.row(heads...)
	w.out = append(append(w.out, rows.out...), '\n')
}

// plain is the text of a value that is no record; of a list, its texts one behind the other.
func (n recordNode) plain() string {
	if !n.list {
		return n.text
	}
	var texts []string
	for _, item := range n.items {
		if item.text != "" {
			texts = append(texts, item.text)
		}
	}
	return strings.Join(texts, ", ")
}

func (w *recordWriter) row(cells ...string) {
	if len(w.out) > 2*wholeBytes {
		return // recordsText says so
	}
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	for i, c := range cells {
		if i > 0 {
			w.out = append(w.out, '\t')
		}
		w.out = appendField(w.out, c, '\t')
	}
	w.out = append(w.out, '\n')
}
