package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
	"golang.org/x/net/html/charset"
)

// A web page that was saved, by a browser or by a program that calls it a workbook, is
// read as the lines of text that it shows: headings, captions and paragraphs, and the
// rows of its tables, their cells divided by tabs. Scripts and styles are left out, and
// nothing that the page refers to is fetched.

// mostSpan is over how many columns or rows one cell may reach.
const mostSpan = 200

// startsPage says whether text begins like a web page (HTML Living Standard, 13.1).
func startsPage(lower string) bool {
	for strings.HasPrefix(lower, "<!--") || strings.HasPrefix(lower, "<?php") {
		_, rest, ok := strings.Cut(lower, map[bool]string{true: "?>", false: "-->"}[lower[1] == '?'])
		if !ok {
			return false
		}
		lower = strings.TrimLeft(rest, " \t\r\n")
	}
	if strings.HasPrefix(lower, "<?xml") {
		return strings.Contains(lower, "<html")
	}
	for _, tag := range []string{"<!doctype html", "<html", "<head", "<body", "<table", "<meta"} {
		if strings.HasPrefix(lower, tag) {
			return true
		}
	}
	// a piece of a page, as it is copied
	if len(lower) < 2 || lower[0] != '<' || lower[1] < 'a' || lower[1] > 'z' {
		return false
	}
	if strings.Contains(lower, "<table") && (strings.Contains(lower, "<td") || strings.Contains(lower, "<th")) {
		return true
	}
	return pieceOfPage.MatchString(lower)
}

// pieceOfPage is an element that holds lines, and the end of it or of another one.
var pieceOfPage = regexp.MustCompile(`^<(?:p|div|h[1-6]|ul|ol|section|article|main|center|pre|font)(?: [^<>]*)?>(?:.|\s)*</(?:p|div|h[1-6]|ul|ol|section|article|main|center|pre|font)>`)

// readPage reads the tables of a web page.
func readPage(name string, data []byte, o Options) (*Sheet, error) {
	text, err := pageText(data, o.Limits)
	if err != nil {
		return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
	}
	s, err := readText(name, text, o)
	if err != nil {
		return s, fmt.Errorf("%s is refused: it is a web page; of its tables, %s", baseName(name), strings.TrimPrefix(err.Error(), baseName(name)+" is refused: "))
	}
	s.Dialect = "a web page: its lines, and the rows of its tables, as they stand below one another"
	return s, nil
}

// pageText is what a web page shows, as lines divided by tabs, in UTF-8.
func pageText(data []byte, l Limits) ([]byte, error) {
	if len(data) > wholeBytes {
		return nil, fmt.Errorf("it is a web page of %d MB, more than the %d MB allowed; open it in a spreadsheet program, save it as XLSX or CSV, and load that", len(data)>>20, wholeBytes>>20)
	}
	text := data
	if e, _, said := charset.DetermineEncoding(data[:min(len(data), 1024)], ""); said {
		plain, err := e.NewDecoder().Bytes(data)
		if err != nil {
			return nil, fmt.Errorf("its letters can't be read (%w)", err)
		}
		text = plain
	} else if !utf8.Valid(data) {
		text, _, _ = decodeMixed(data, "UTF-8")
	}
	root, err := html.Parse(bytes.NewReader(withoutProgram(text)))
	if err != nil {
		return nil, fmt.Errorf("it is a web page that can't be read (%w)", err)
	}
	p := &webPage{limits: l}
	p.walk(root)
	p.endLine()
	if len(p.out) > 2*wholeBytes {
		return nil, fmt.Errorf("its tables are too large; open it in a spreadsheet program, save it as XLSX or CSV, and load that")
	}
	if p.tables == 0 && timedLines(p.out) < 3 {
		return nil, fmt.Errorf("it is a web page without a table; select the results on the page, copy them into a spreadsheet program, save that as XLSX or CSV, and load it")
	}
	if undated := !saysDay(p.out); p.bare || undated {
		for n := range root.Descendants() {
			if n.Type == html.ElementNode && n.DataAtom == atom.Title {
				if title := spacedOnce(textOf(n)); title != "" && (p.bare || len(findDates(title)) > 0) {
					return append(append(appendField(nil, title, '\t'), '\n'), p.out...), nil
				}
			}
		}
	}
	return p.out, nil
}

// saysDay says whether one of the first lines of a text, or of its lines that are no rows of a table, has a date.
func saysDay(text []byte) bool {
	const first = 60
	n := 0
	for line := range bytes.Lines(text) {
		if n++; (n <= first || bytes.IndexByte(line, '\t') < 0) && len(findDates(string(line))) > 0 {
			return true
		}
	}
	return false
}

// timedLines counts the lines of a text that have a time.
func timedLines(text []byte) (n int) {
	for l := range bytes.Lines(text) {
		if clockInside.Match(l) || clockAtEnd.Match(l) {
			n++
		}
	}
	return n
}

// clockAtEnd is a time with another mark than a colon that ends a line behind words: "1  Elin Nyhamn   32.31".
var clockAtEnd = regexp.MustCompile(`\pL.*\s\d{1,2}[.,'’][0-5]\d["”]?\s*$`)

// withoutProgram leaves out what a server would have run before it sent the page (PHP).
func withoutProgram(text []byte) []byte {
	const starts, ends = "<?php", "?>"
	if !bytes.Contains(text, []byte(starts)) {
		return text
	}
	var out []byte
	for {
		before, rest, found := bytes.Cut(text, []byte(starts))
		out = append(out, before...)
		if !found {
			return out
		}
		_, text, _ = bytes.Cut(rest, []byte(ends)) // without an end, all the rest is program
	}
}

// webPage collects the lines of a web page.
type webPage struct {
	limits  Limits
	out     []byte
	line    strings.Builder
	linked  bool // all words of the line stand in links
	inLink  int
	tables  int
	gap     bool           // a table has ended
	bare    bool           // nothing stands above the first table
	pending []int          // rows that a cell above still reaches down, by column
	reaches map[int]string // sexes and groups that such a cell says of all of them
}

// unseen are elements that show no text of the page, or only the ways through it.
var unseen = map[atom.Atom]bool{
	atom.Script: true, atom.Style: true, atom.Noscript: true, atom.Template: true, atom.Iframe: true, atom.Object: true, atom.Embed: true, atom.Svg: true, atom.Math: true,
	atom.Select: true, atom.Option: true, atom.Button: true, atom.Input: true, atom.Textarea: true, atom.Nav: true, atom.Aside: true, atom.Footer: true,
	atom.Video: true, atom.Audio: true, atom.Canvas: true, atom.Title: true,
}

// inline are elements that do not end a line.
var inline = map[atom.Atom]bool{
	atom.A: true, atom.B: true, atom.Strong: true, atom.I: true, atom.Em: true, atom.Span: true, atom.Font: true, atom.U: true, atom.S: true, atom.Strike: true, atom.Del: true, atom.Ins: true, atom.Small: true, atom.Big: true,
	atom.Sub: true, atom.Sup: true, atom.Abbr: true, atom.Time: true, atom.Mark: true, atom.Label: true, atom.Code: true, atom.Tt: true, atom.Q: true, atom.Cite: true, atom.Nobr: true, atom.Bdi: true, atom.Bdo: true,
}

func (p *webPage) walk(n *html.Node) {
	switch n.Type {
	case html.TextNode:
		p.words(n.Data)
		return
	case html.ElementNode:
		if unseen[n.DataAtom] || hidden(n) {
			return
		}
	case html.CommentNode, html.DoctypeNode:
		return
	}
	switch {
	case n.DataAtom == atom.Table && !holds(n, atom.Table) && !holds(n, atom.Pre):
		p.endLine()
		p.table(n)
		return
	case n.DataAtom == atom.Pre:
		p.endLine()
		p.typed(n)
		return
	case n.DataAtom == atom.A:
		p.inLink++
		defer func() { p.inLink-- }()
	}
	breaks := n.Type == html.ElementNode && !inline[n.DataAtom]
	if breaks {
		p.endLine()
	}
	if rows := rowsOfBoxes(n); rows != nil {
		p.boxes(rows)
		return
	}
	if n.DataAtom == atom.Li && n.Parent != nil && n.Parent.DataAtom == atom.Ol {
		p.number(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		p.walk(c)
	}
	if breaks {
		p.endLine()
	}
}

// rowsOfBoxes are the texts of a table that a page draws of boxes in the place of rows and cells: four
// boxes or more, each with as many boxes of a line of text as the others, three or more, and times in half
// of them. nil for others.
func rowsOfBoxes(n *html.Node) (rows [][]string) {
	if n.DataAtom != atom.Div && n.DataAtom != atom.Section && n.DataAtom != atom.Main && n.DataAtom != atom.Article {
		return nil
	}
	timed, like := 0, 0
	for row := range n.ChildNodes() {
		if row.Type != html.ElementNode {
			if row.Type == html.TextNode && strings.TrimFunc(row.Data, blankRune) != "" {
				return nil
			}
			continue
		}
		if row.DataAtom != atom.Div {
			return nil
		}
		var cells []string
		for c := range row.ChildNodes() {
			switch {
			case c.Type == html.TextNode && strings.TrimFunc(c.Data, blankRune) != "":
				return nil
			case c.Type != html.ElementNode:
				continue
			case c.DataAtom != atom.Div && c.DataAtom != atom.Span && c.DataAtom != atom.P:
				return nil
			}
			for within := range c.Descendants() {
				if within.Type == html.ElementNode && !inline[within.DataAtom] {
					return nil
				}
			}
			cells = append(cells, spacedOnce(textOf(c)))
		}
		if rows = append(rows, cells); len(cells) == len(rows[0]) {
			like++
		}
		if slices.ContainsFunc(cells, func(c string) bool { return kindOf(c) == kClock }) {
			timed++
		}
	}
	if len(rows) < 4 || len(rows[0]) < 3 || like < len(rows) || 2*timed < len(rows) {
		return nil
	}
	return rows
}

// boxes adds such rows as a table.
func (p *webPage) boxes(rows [][]string) {
	if p.tables++; len(p.out) == 0 {
		p.bare = true
	}
	p.blank()
	for _, cells := range rows {
		for i, c := range cells {
			if i > 0 {
				p.out = append(p.out, '\t')
			}
			p.out = appendField(p.out, c, '\t')
		}
		p.out = append(p.out, '\n')
	}
	p.gap = true
}

// number adds the number that a page shows before an item of a numbered list, unless the item
// begins with one itself.
func (p *webPage) number(item *html.Node) {
	text := strings.TrimLeftFunc(textOf(item), blankRune)
	if text == "" || text[0] >= '0' && text[0] <= '9' || !clockInside.MatchString(text) {
		return
	}
	n := 1
	for _, a := range item.Parent.Attr {
		if from, err := strconv.Atoi(a.Val); a.Key == "start" && err == nil {
			n = from
		}
	}
	for c := item.PrevSibling; c != nil; c = c.PrevSibling {
		if c.DataAtom == atom.Li {
			n++
		}
	}
	p.words(strconv.Itoa(n) + ".")
}

// words adds words to the line in hand.
func (p *webPage) words(text string) {
	for _, w := range strings.FieldsFunc(text, blankRune) {
		if p.line.Len() > 0 {
			p.line.WriteByte(' ')
		} else {
			p.linked = true
		}
		p.linked = p.linked && p.inLink > 0
		p.line.WriteString(w)
	}
}

// spacedOnce puts one space in the place of every run of blanks.
func spacedOnce(text string) string { return strings.Join(strings.FieldsFunc(text, blankRune), " ") }

func blankRune(r rune) bool {
	return r == ' ' || r == '\t' || r == '\n' || r == '\r' || r == '\f' || r == '\u00a0'
}

// endLine ends the line in hand. One of nothing but links is a way through the pages.
func (p *webPage) endLine() {
	if p.line.Len() > 0 && !p.linked {
		p.blank()
		p.out = append(appendField(p.out, p.line.String(), '\t'), '\n')
	}
	p.line.Reset()
}

// table adds the rows of a table, with a blank line between it and the one before.
func (p *webPage) table(n *html.Node) {
	if p.tables++; len(p.out) == 0 {
		p.bare = true
	}
	p.blank()
	p.pending = nil
	var rows func(n *html.Node)
	rows = func(n *html.Node) {
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			switch {
			case c.Type != html.ElementNode:
			case c.DataAtom == atom.Tr:
				p.row(c)
			case c.DataAtom == atom.Caption:
				p.line.Reset()
				p.words(textOf(c))
				p.endLine()
			case c.DataAtom == atom.Thead, c.DataAtom == atom.Tbody, c.DataAtom == atom.Tfoot:
				rows(c)
			}
		}
	}
	rows(n)
	p.gap = true
}

// typed adds text that is shown as it was typed, its lines and spaces kept: a list in
// columns of letters of one width (HTML Living Standard, 4.4.3). It counts as a table
// where lines of it have times.
func (p *webPage) typed(n *html.Node) {
	timed := 0
	lines := strings.Split(strings.Trim(strings.ReplaceAll(typedText(n), "\r\n", "\n"), "\n"), "\n")
	for _, l := range lines {
		if clockInside.MatchString(l) {
			timed++
		}
	}
	if timed >= 2 {
		p.tables++
		p.bare = p.bare || len(p.out) == 0
	}
	p.blank()
	for _, l := range lines {
		p.out = append(append(p.out, strings.TrimRight(strings.ReplaceAll(l, "\u00a0", " "), " ")...), '\n')
	}
	p.gap = true
}

// typedText is the text of an element, nothing of it changed.
func typedText(n *html.Node) string {
	var b strings.Builder
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			b.WriteString(n.Data)
		case n.Type == html.ElementNode && (unseen[n.DataAtom] || hidden(n)):
			return
		case n.DataAtom == atom.Br:
			b.WriteByte('\n')
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(n)
	return b.String()
}

// blank adds a blank line after a table.
func (p *webPage) blank() {
	if p.gap {
		p.out = append(p.out, '\n')
	}
	p.gap = false
}

// row adds a row. A cell over several columns stands in the first of them, one over
// several rows in the first; a sex or a group in all of them.
func (p *webPage) row(tr *html.Node) {
	var cells []string
	next := func() int {
		for len(cells) < len(p.pending) && p.pending[len(cells)] > 0 {
			p.pending[len(cells)]--
			cells = append(cells, p.reaches[len(cells)])
		}
		return len(cells)
	}
	for c := tr.FirstChild; c != nil; c = c.NextSibling {
		if c.Type != html.ElementNode || c.DataAtom != atom.Td && c.DataAtom != atom.Th {
			continue
		}
		at := next()
		if at >= p.limits.Columns {
			break
		}
		down := span(c, "rowspan")
		for k := range span(c, "colspan") {
			text := ""
			if k == 0 {
				if text = cellText(c, struckOut(tr)); c.DataAtom == atom.Td {
					text = nameOverRest(c, text)
				}
			}
			cells = append(cells, text)
			if down > 1 {
				for len(p.pending) < at+k+1 {
					p.pending = append(p.pending, 0)
				}
				p.pending[at+k] = down - 1
				delete(p.reaches, at+k)
				if kd := kindOf(text); kd == kSex || kd == kGroup {
					if p.reaches == nil {
						p.reaches = map[int]string{}
					}
					p.reaches[at+k] = text
				}
			}
		}
	}
	next()
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	if len(p.out) > 2*wholeBytes {
		return // cells over hundreds of columns: pageText says so
	}
	for i, c := range cells {
		if i > 0 {
			p.out = append(p.out, '\t')
		}
		p.out = appendField(p.out, c, '\t')
	}
	p.out = append(p.out, '\n')
}

func span(n *html.Node, key string) int {
	for _, a := range n.Attr {
		if a.Key == key {
			if v, err := strconv.Atoi(strings.TrimSpace(a.Val)); err == nil {
				return min(max(v, 1), mostSpan)
			}
		}
	}
	return 1
}

// cellText is the text of a cell without what is struck out in it; where all is, it stands between
// the marks that people type for that.
func cellText(n *html.Node, struck bool) string {
	all := spacedOnce(textOf(n))
	if !struck && !struckOut(n) {
		if !holdsStruck(n) {
			return all
		}
		if rest := spacedOnce(textWithout(n, struckOut)); rest != "" {
			return rest
		}
	}
	if all == "" {
		return ""
	}
	return "~~" + all + "~~"
}

// nameOverRest keeps the end of the first line of a cell that shows a name over further words, as a club,
// so that they stay apart; text is what the cell says in one line.
func nameOverRest(n *html.Node, text string) string {
	if !looksNamed(text) && len(strings.Fields(text)) < 3 || strings.HasPrefix(text, "~~") {
		return text
	}
	first, ended := "", false
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			first += n.Data
		case n.Type == html.ElementNode && !inline[n.DataAtom]:
			ended = ended || spacedOnce(first) != ""
		}
		for c := n.FirstChild; c != nil && !ended; c = c.NextSibling {
			walk(c)
		}
		if n.Type == html.ElementNode && !inline[n.DataAtom] && n.DataAtom != atom.Td {
			ended = ended || spacedOnce(first) != ""
		}
	}
	walk(n)
	first = spacedOnce(first)
	rest, begins := strings.CutPrefix(text, first+" ")
	if !ended || !begins || !looksNamed(first) || !hasLetter(rest) {
		return text
	}
	return first + "\n" + rest
}

// struckOut says whether an element is shown with a line through it.
func struckOut(n *html.Node) bool {
	if n.Type != html.ElementNode {
		return false
	}
	switch n.DataAtom {
	case atom.S, atom.Strike, atom.Del:
		return true
	}
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool {
		return a.Key == "style" && strings.Contains(strings.ToLower(a.Val), "line-through")
	})
}

func holdsStruck(n *html.Node) bool {
	for c := range n.Descendants() {
		if struckOut(c) {
			return true
		}
	}
	return false
}

// textOf is the text that a cell shows; a line of it ends at <br> and at a paragraph.
func textOf(n *html.Node) string { return textWithout(n, hidden) }

// textWithout is textOf without the elements for which leave says so.
func textWithout(n *html.Node, leave func(*html.Node) bool) string {
	var b strings.Builder
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			b.WriteString(n.Data)
		case n.Type == html.ElementNode && (unseen[n.DataAtom] || hidden(n) || leave(n)):
			return
		case n.Type == html.ElementNode && !inline[n.DataAtom]:
			b.WriteByte(' ')
			defer b.WriteByte(' ')
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		walk(c)
	}
	return b.String()
}

func holds(n *html.Node, a atom.Atom) bool {
	for c := range n.Descendants() {
		if c.Type == html.ElementNode && c.DataAtom == a {
			return true
		}
	}
	return false
}

// hidden says whether an element is not shown.
func hidden(n *html.Node) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool {
		return a.Key == "hidden" || a.Key == "style" && strings.Contains(strings.ReplaceAll(strings.ToLower(a.Val), " ", ""), "display:none")
	})
}
