package sheet

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// wholeBytes is the size up to which a text sheet is held as cells; larger
// ones are cut anew on every pass.
const wholeBytes = 16 << 20

// readText reads delimited text.
func readText(name string, data []byte, o Options) (*Sheet, error) {
	if int64(len(data)) > o.Limits.Bytes {
		return nil, fmt.Errorf("%s is refused: it has %d bytes, more than the %d allowed", baseName(name), len(data), o.Limits.Bytes)
	}
	text, encoding, note, err := decode(data)
	if err != nil {
		return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return nil, fmt.Errorf("%s is refused: it has no text; save it again where it comes from, or ask for it again", baseName(name))
	}
	s := &Sheet{Name: name, Format: "csv", Encoding: encoding}
	if note != "" {
		s.note("encoding", note)
	}
	lex := newLexicon(o)
	endings := lineEndings(text)
	received := text
	plain := !o.typed && plainTable(text)
	var d dialect
	if plain {
		d = sniff(text, lex, o.Limits)
	} else {
		text, d = divide(text, lex, o.Limits)
	}
	s.Dialect = fmt.Sprintf("divided by %s (%s), %s", delimiterName(d.delim), d.why, endings)
	src := &textSource{data: text, delim: d.delim, limits: o.Limits, skip: d.skip}
	t := table{whole: len(text) <= wholeBytes, commas: d.delim == ',', plain: plain}
	if t.whole {
		lines := bytes.Count(text, []byte{'\n'}) + 1
		g := newGridFor(lines, lines+bytes.Count(text, []byte{d.delim}))
		sc := newScanner(text, d.delim, o.Limits)
		sc.pos = d.skip
		for {
			row, cells, err := sc.next()
			if err != nil {
				return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
			}
			if cells == nil {
				break
			}
			g.add(row, cells)
		}
		for _, row := range sc.unclosed {
			s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: name, Row: row}, Severity: place.Look, Kind: "quote-not-closed", Read: "", Expected: "a second quotation mark", Do: "The mark was taken as part of the text; check the row."})
		}
		t.src, t.grid = g, g
	} else {
		t.src = src
		if t.sample, err = src.sample(); err != nil {
			return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
		}
	}
	s.addTable(t, lex, o)
	if len(s.Parts) == 0 && !o.alike && len(received) < typedBytes && s.foundNothing() {
		if again := readAlike(name, received, o); again != nil {
			again.Encoding = encoding
			again.Dialect = "its lines are all made alike, and each is cut where its pieces end, " + endings
			return again, nil
		}
	}
	return s, s.settle(o, lex)
}

// foundNothing says whether no table was found where results may stand, and none that is something else.
func (s *Sheet) foundNothing() bool {
	return !slices.ContainsFunc(s.Problems, func(p place.Problem) bool {
		return (p.Kind == "tab-refused" || p.Kind == "no-table") && p.Expected != noHeading && p.Expected != namesAlone
	})
}

// readAlike reads a text in which no table was found once more, with its lines cut into the pieces that all
// of them have; nil where they have none, or are no results either.
func readAlike(name string, received []byte, o Options) *Sheet {
	lines := sameShape(textLines(received))
	if lines == nil {
		return nil
	}
	o.alike = true
	s, err := readText(name, []byte(strings.Join(lines, "\n")+"\n"), o)
	if err != nil {
		return nil
	}
	return s
}

func delimiterName(d byte) string {
	if n, ok := delimiterNames[d]; ok {
		return n
	}
	return fmt.Sprintf("%q", string(rune(d)))
}

func (s *Sheet) note(kind, text string) {
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name}, Severity: place.Note, Kind: kind, Read: text})
}

// refused turns the problems of a sheet without any table into one error.
func (s *Sheet) refused() error {
	var why []string
	for _, p := range s.Problems {
		if p.Kind == "tab-refused" || p.Kind == "no-table" {
			text := p.Expected
			if p.Place.Tab != "" {
				text = fmt.Sprintf("tab %q: %s", p.Place.Tab, text)
			}
			if !slices.Contains(why, text) { // once for all runs in the columns of a tab
				why = append(why, text)
			}
		}
	}
	if len(why) > 4 {
		why = append(why[:4], "and "+text.Count(len(why)-4, "more tab"))
	}
	advice := ""
	if s.Format == "csv" && slices.ContainsFunc(why, func(w string) bool { return strings.Contains(w, "heading row") }) {
		advice = ". Put each runner on a line, under a line of headings such as Position, Name, Time, save, and load it again. If it is no list of results, take it out of the folder"
	}
	return fmt.Errorf("%s is refused: %s%s", baseName(s.Name), strings.Join(why, "; "), advice)
}

// unquoteMail takes the marks off the lines of a quoted message, "> 12 Jo Lee
// 24:31". Lines keep their places. What stands above the quotation, such as who
// wrote it, has no marks.
func unquoteMail(text []byte) ([]byte, bool) {
	if len(text) > wholeBytes || bytes.IndexByte(text, '>') < 0 {
		return text, false
	}
	lines, quoted := 0, 0
	for line := range bytes.Lines(text) {
		if len(bytes.TrimSpace(line)) > 0 {
			lines++
			if line[0] == '>' {
				quoted++
			}
		}
	}
	if quoted < 3 || quoted*10 < (lines-6)*9 || quoted*2 < lines {
		return text, false
	}
	out := make([]byte, 0, len(text))
	for line := range bytes.Lines(text) {
		for len(line) > 0 && line[0] == '>' {
			line = bytes.TrimPrefix(line[1:], []byte(" "))
		}
		out = append(out, line...)
	}
	return out, true
}

// unwrapLines undoes a double export: every line is one quoted field that holds
// the real line, its own quotes doubled. Up to three lines of titles above may stand bare, where
// those in quotes have times.
func unwrapLines(text []byte, limits Limits) ([]byte, bool) {
	if text[0] != '"' && !bytes.Contains(text[:min(len(text), 400)], []byte("\n\"")) || len(text) > wholeBytes {
		return text, false
	}
	s := newScanner(text, 0x1F, limits)
	var out []byte
	rows, wrapped, over, timed := 0, 0, 0, 0
	for {
		start := s.pos
		row, cells, err := s.next()
		if err != nil {
			return text, false
		}
		if cells == nil {
			break
		}
		raw := bytes.TrimRight(text[start:s.pos], "\r\n")
		if len(raw) == 0 {
			out = append(out, '\n')
			continue
		}
		rows++
		if len(cells) == 1 && raw[0] == '"' && raw[len(raw)-1] == '"' && s.line == row && len(cells[0]) < len(raw) && !strings.Contains(strings.ReplaceAll(string(raw[1:len(raw)-1]), `""`, ""), `"`) {
			if wrapped++; clockInside.MatchString(cells[0]) {
				timed++
			}
		} else if wrapped == 0 && over < 3 && bytes.IndexByte(raw, '"') < 0 && !clockInside.Match(raw) {
			over++
		}
		out = append(append(out, cells[0]...), '\n')
	}
	if rows == 0 || wrapped < rows-over || over > 0 && (timed < 4 || timed*10 < wrapped*9) {
		return text, false
	}
	return out, true
}

// sample takes rows from the beginning and from evenly spread places of a text
// that is too large to hold.
func (t *textSource) sample() ([]line, error) {
	const first, places, each = 400, 24, 40
	var out []line
	grab := func(s *scanner, n, rowBase int) error {
		for k := 0; k < n; k++ {
			row, cells, err := s.next()
			if err != nil {
				return err
			}
			if cells == nil {
				return nil
			}
			out = append(out, line{rowBase + row, append([]string(nil), cells...)})
		}
		return nil
	}
	s := newScanner(t.data, t.delim, t.limits)
	s.pos = t.skip
	if err := grab(s, first, 0); err != nil {
		return nil, err
	}
	base := s.line
	for k := 1; k <= places; k++ {
		at := len(t.data) / (places + 1) * k
		nl := bytes.IndexAny(t.data[at:min(len(t.data), at+t.limits.RowBytes)], "\r\n")
		if nl < 0 {
			return nil, fmt.Errorf("a row is more than %d bytes long; is this a table of results?", t.limits.RowBytes)
		}
		s := newScanner(t.data, t.delim, t.limits)
		s.pos = at + nl + 1
		// Row numbers of these rows are only an order, not places.
		if err := grab(s, each, base+k*1000); err != nil {
			return nil, err
		}
	}
	return out, nil
}
