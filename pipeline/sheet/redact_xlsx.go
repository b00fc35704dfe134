package sheet

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"html"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// redactWorkbook changes the XML of a workbook where it holds what is to be
// taken out, and nothing else: cells keep their formats, members their order.
// A spreadsheet library would keep the old texts in the table of shared
// strings (ECMA-376 Part 1, 18.4), where anybody can read them.
func redactWorkbook(data []byte, s *Sheet, r Redaction, w *words) ([]byte, error) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, err
	}
	tabs, err := tabPaths(zr)
	if err != nil {
		return nil, err
	}
	if len(r.Rows) == 0 {
		if holds, err := packageHolds(zr, w); err != nil || !holds {
			return data, err
		}
	}
	if s == nil && !r.Everywhere {
		s, _ = Read("workbook.xlsx", data, Options{}) // what is no sheet of results has no rows to spare
	}
	k := &bookRedactor{words: w, used: map[int]bool{}, out: map[string][]byte{}}
	var changes map[string]map[int]*cellChange
	var names map[string]map[int][]int
	if s != nil {
		if changes, err = s.changesOf(r); err != nil {
			return nil, err
		}
		if !r.Everywhere {
			names = s.nameCells()
		}
	}
	var shared *zip.File
	for _, f := range zr.File {
		if strings.HasSuffix(strings.ToLower(f.Name), "sharedstrings.xml") {
			shared = f
		}
	}
	var table []byte
	if shared != nil {
		if table, err = readMember(shared); err != nil {
			return nil, err
		}
		if k.strings, err = sharedItems(table); err != nil {
			return nil, err
		}
	}
	done := map[string]bool{}
	for tab, f := range tabs {
		if f == nil || done[f.Name] {
			continue
		}
		done[f.Name] = true
		raw, err := readMember(f)
		if err != nil {
			return nil, err
		}
		k.divided = nil
		if s != nil {
			k.divided = s.divided[tab]
		}
		if err := k.tab(f.Name, raw, changes[tab], names[tab]); err != nil {
			return nil, fmt.Errorf("tab %q: %w", tab, err)
		}
	}
	if shared != nil {
		k.sharedTable(shared.Name, table)
		done[shared.Name] = true
	}
	for _, f := range zr.File {
		if done[f.Name] || !strings.HasSuffix(f.Name, ".xml") && !strings.HasSuffix(f.Name, ".rels") && !strings.HasSuffix(f.Name, ".vml") {
			continue
		}
		raw, err := readMember(f)
		if err != nil {
			return nil, err
		}
		if now, n := redactXML(raw, w); n > 0 {
			k.out[f.Name] = now
		}
	}
	if len(k.out) == 0 {
		return data, nil
	}
	return rezip(zr, k.out)
}

// packageHolds says whether the words stand anywhere in a workbook, also cut
// into runs of different letters.
func packageHolds(zr *zip.Reader, w *words) (bool, error) {
	for _, f := range zr.File {
		if !strings.HasSuffix(f.Name, ".xml") && !strings.HasSuffix(f.Name, ".rels") && !strings.HasSuffix(f.Name, ".vml") {
			continue
		}
		raw, err := readMember(f)
		if err != nil {
			return false, err
		}
		if _, n := redactXML(raw, w); n > 0 {
			return true, nil
		}
		if !bytes.Contains(raw, []byte("rPr>")) && !bytes.Contains(raw, []byte("rPr/>")) {
			continue // no runs
		}
		items, err := sharedItems(raw)
		if err != nil {
			return false, err
		}
		for _, i := range items {
			if _, n := w.replace(i.text); n > 0 {
				return true, nil
			}
		}
	}
	return false, nil
}

func readMember(f *zip.File) ([]byte, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	return io.ReadAll(r)
}

// rezip writes the package again with the members of out in place of theirs.
func rezip(zr *zip.Reader, out map[string][]byte) ([]byte, error) {
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	for _, f := range zr.File {
		now, ok := out[f.Name]
		if !ok {
			if err := zw.Copy(f); err != nil {
				return nil, err
			}
			continue
		}
		m, err := zw.CreateHeader(&zip.FileHeader{Name: f.Name, Method: zip.Deflate, Modified: f.Modified})
		if err != nil {
			return nil, err
		}
		if _, err := m.Write(now); err != nil {
			return nil, err
		}
	}
	if err := zw.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// bookRedactor changes one workbook.
type bookRedactor struct {
	words   *words
	strings []sharedItem
	used    map[int]bool // shared strings that cells still refer to
	divided *inOneCell   // how the rows of the tab are divided, where each stands in one cell
	out     map[string][]byte
}

// sharedItem is one entry of the table of shared strings.
type sharedItem struct {
	from, to int // bytes of the element
	prefix   string
	text     string
}

// sharedItems finds the entries of a table of shared strings.
func sharedItems(raw []byte) ([]sharedItem, error) {
	var out []sharedItem
	d := xml.NewDecoder(bytes.NewReader(raw))
	open, ruby := false, false
	inText := false
	var item sharedItem
	var text strings.Builder
	for {
		at := int(d.InputOffset())
		tok, err := d.RawToken()
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		switch el := tok.(type) {
		case xml.StartElement:
			switch el.Name.Local {
			case "si":
				open, item = true, sharedItem{from: at, prefix: el.Name.Space}
				text.Reset()
			case "rPh":
				ruby = true
			case "t":
				inText = open && !ruby
			}
		case xml.CharData:
			if inText {
				text.Write(el)
			}
		case xml.EndElement:
			switch el.Name.Local {
			case "t":
				inText = false
			case "rPh":
				ruby = false
			case "si":
				open = false
				item.to, item.text = int(d.InputOffset()), text.String()
				out = append(out, item)
			}
		}
	}
}

// oneCell is a cell while its XML is read.
type oneCell struct {
	from, row, col    int
	start             xml.StartElement
	formula           []byte
	text              strings.Builder
	inText, isFormula bool
	formulaFrom       int
}

// tab changes the cells of one tab.
func (k *bookRedactor) tab(name string, raw []byte, changes map[int]*cellChange, names map[int][]int) error {
	d := xml.NewDecoder(bytes.NewReader(raw))
	var out []byte
	last := 0 // bytes of raw that are copied
	row, col := 0, 0
	var c *oneCell
	for {
		at := int(d.InputOffset())
		tok, err := d.RawToken()
		if err == io.EOF {
			break
		}
		if err != nil {
			return err
		}
		switch el := tok.(type) {
		case xml.StartElement:
			switch el.Name.Local {
			case "row":
				row++
				if n, err := strconv.Atoi(attr(el, "r")); err == nil {
					row = n
				}
				col = 0
			case "c":
				col++
				if v := attr(el, "r"); v != "" {
					if n, _, err := excelize.CellNameToCoordinates(v); err == nil {
						col = n
					}
				}
				c = &oneCell{from: at, row: row, col: col - 1, start: el.Copy()}
			case "f":
				if c != nil {
					c.isFormula, c.formulaFrom = true, at
				}
			case "v", "t":
				if c != nil {
					c.inText = true
				}
			case "rPh":
				if c != nil {
					c.inText = false
				}
			}
		case xml.CharData:
			if c != nil && c.inText {
				c.text.Write(el)
			}
		case xml.EndElement:
			switch el.Name.Local {
			case "f":
				if c != nil {
					c.formula = raw[c.formulaFrom:d.InputOffset()]
				}
			case "v", "t":
				if c != nil {
					c.inText = false
				}
			case "c":
				if c == nil {
					continue
				}
				if now, changed := k.cell(c, changes[c.row], names[c.row]); changed {
					out = append(append(out, raw[last:c.from]...), now...)
					last = int(d.InputOffset())
				}
				c = nil
			}
		}
	}
	out = append(out, raw[last:]...)
	// headers, footers and messages of the tab
	if now, n := redactOutsideCells(out, k.words); n > 0 || last > 0 {
		k.out[name] = now
	}
	return nil
}

// cell gives the new XML of a cell, and notes the shared string of one that
// stays.
func (k *bookRedactor) cell(c *oneCell, change *cellChange, names []int) (string, bool) {
	kind, shared, text := attr(c.start, "t"), -1, c.text.String()
	if kind == "s" {
		if n, err := strconv.Atoi(strings.TrimSpace(text)); err == nil && n >= 0 && n < len(k.strings) {
			shared, text = n, k.strings[n].text
		}
	}
	if one := k.divided; one != nil && one.col == c.col {
		if cells, err := one.cells(text, Limits{}.orDefault()); err == nil {
			if now := redactCells(cells, change, names, k.words); now != nil {
				return c.write(one.join(now)), true
			}
			change, names = nil, []int{c.col}
		}
	}
	if change != nil {
		if now, ok := change.now[c.col]; ok {
			return c.write(now), true
		}
	} else if (shared >= 0 || kind == "inlineStr" || kind == "str") && !slices.Contains(names, c.col) {
		if now, n := k.words.replace(text); n > 0 {
			return c.write(now), true
		}
	}
	if shared >= 0 {
		k.used[shared] = true
	}
	return "", false
}

// write is the cell with another text; "" leaves it empty. A formula stays,
// with the text for its result.
func (c *oneCell) write(text string) string {
	tag := func(n string) string {
		if p := c.start.Name.Space; p != "" {
			return p + ":" + n
		}
		return n
	}
	var b strings.Builder
	b.WriteString("<" + tag("c"))
	for _, a := range c.start.Attr {
		if a.Name.Space == "" && (a.Name.Local == "r" || a.Name.Local == "s") {
			fmt.Fprintf(&b, ` %s="%s"`, a.Name.Local, html.EscapeString(a.Value))
		}
	}
	switch {
	case c.isFormula:
		fmt.Fprintf(&b, ` t="str">%s<%s>%s</%s></%s>`, c.formula, tag("v"), html.EscapeString(text), tag("v"), tag("c"))
	case text == "":
		b.WriteString("/>")
	default:
		fmt.Fprintf(&b, ` t="inlineStr"><%s><%s xml:space="preserve">%s</%s></%s></%s>`, tag("is"), tag("t"), html.EscapeString(text), tag("t"), tag("is"), tag("c"))
	}
	return b.String()
}

// sharedTable empties the shared strings that no cell refers to any more.
func (k *bookRedactor) sharedTable(name string, raw []byte) {
	var out []byte
	last := 0
	for i, item := range k.strings {
		if k.used[i] || item.text == "" {
			continue
		}
		tag := ""
		if item.prefix != "" {
			tag = item.prefix + ":"
		}
		out = append(append(out, raw[last:item.from]...), fmt.Sprintf("<%ssi><%st></%st></%ssi>", tag, tag, tag, tag)...)
		last = item.to
	}
	if last > 0 {
		k.out[name] = append(out, raw[last:]...)
	}
}

var (
	containers = regexp.MustCompile(`(?s)<(\w+:)?text>.*?</(?:\w+:)?text>`) // comments: runs of one text
	runsOfText = regexp.MustCompile(`(?s)<(?:\w+:)?t(?:\s[^>]*)?>([^<]*)</(?:\w+:)?t>`)
	textNodes  = regexp.MustCompile(`>[^<>]+<`)
	attributes = regexp.MustCompile(`="[^"<]*"`)
	sheetData  = regexp.MustCompile(`(?s)<(?:\w+:)?sheetData.*</(?:\w+:)?sheetData>`)
)

// redactXML takes the words out of texts and attributes.
func redactXML(raw []byte, w *words) ([]byte, int) {
	if w.any == nil {
		return raw, 0
	}
	total := 0
	raw = containers.ReplaceAllFunc(raw, func(m []byte) []byte {
		var text strings.Builder
		for _, t := range runsOfText.FindAllSubmatch(m, -1) {
			text.WriteString(html.UnescapeString(string(t[1])))
		}
		now, n := w.replace(text.String())
		if n == 0 {
			return m
		}
		total += n
		tag := string(containers.FindSubmatch(m)[1])
		return []byte(fmt.Sprintf("<%stext><%st xml:space=\"preserve\">%s</%st></%stext>", tag, tag, html.EscapeString(now), tag, tag))
	})
	inner := func(m []byte, lead, tail int) []byte {
		now, n := w.replace(html.UnescapeString(string(m[lead : len(m)-tail])))
		if n == 0 {
			return m
		}
		total += n
		return []byte(string(m[:lead]) + html.EscapeString(now) + string(m[len(m)-tail:]))
	}
	raw = textNodes.ReplaceAllFunc(raw, func(m []byte) []byte { return inner(m, 1, 1) })
	raw = attributes.ReplaceAllFunc(raw, func(m []byte) []byte { return inner(m, 2, 1) })
	return raw, total
}

// redactOutsideCells takes the words out of everything of a tab but its cells.
func redactOutsideCells(raw []byte, w *words) ([]byte, int) {
	at := sheetData.FindIndex(raw)
	if at == nil {
		return redactXML(raw, w)
	}
	head, a := redactXML(slices.Clone(raw[:at[0]]), w)
	tail, b := redactXML(slices.Clone(raw[at[1]:]), w)
	if a+b == 0 {
		return raw, 0
	}
	return slices.Concat(head, raw[at[0]:at[1]], tail), a + b
}

func attr(el xml.StartElement, name string) string {
	for _, a := range el.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}
