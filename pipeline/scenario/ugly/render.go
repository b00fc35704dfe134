package ugly

import (
	"bytes"
	"fmt"
	"strings"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/unicode/norm"
)

// render writes the bytes of a file and fills the truth of its lines.
func (g *gen) render(p plan, f *file) error {
	for i := range f.tabs {
		p.spread(&f.tabs[i])
	}
	var editor [][]int
	var err error
	if p.text() {
		if len(f.tabs) != 1 {
			return fmt.Errorf("a text sheet of %d tabs", len(f.tabs))
		}
		var lines []int
		f.data, lines, err = g.csv(p, f.tabs[0].rows)
		editor = [][]int{lines}
	} else {
		for i := range f.tabs {
			if f.tabs[i].name == "" {
				f.tabs[i].name = "Sheet1"
			}
		}
		if p["format"] == "rawbook" {
			f.data, err = g.rawBook(p, f.tabs)
		} else {
			f.data, err = g.book(p, f.tabs)
		}
	}
	if err != nil {
		return err
	}
	spots := map[*finisher]Spot{}
	for ti, t := range f.tabs {
		for ri, r := range t.rows {
			for _, x := range r.lines {
				ln := x.truth(r.run)
				ln.Spot = Spot{f.name, "", ri + 1}
				if !p.text() {
					ln.Tab = t.name
				}
				ln.EditorRow = ln.Row
				if editor != nil {
					ln.EditorRow = editor[ti][ri]
				}
				if x.repeatOf != nil {
					s := spots[x.repeatOf]
					ln.Twin = &s
				}
				spots[x] = ln.Spot
				f.truth.Lines = append(f.truth.Lines, ln)
			}
		}
	}
	return nil
}

// truth is what a finisher's line says.
func (f *finisher) truth(r *run) Line {
	ln := Line{Course: r.course.slug, Date: r.day.String(), Session: r.session, Position: f.pos, TimeMS: int32(f.ms), OtherMS: int32(f.chip),
		Class: f.class, Name: f.who.name(), Sex: f.sexShown, Born: f.who.born, As: f.as}
	if f.retimed {
		ln.TimeMS = 0
	}
	if f.win.Known() {
		ln.BornLo, ln.BornHi = f.win.Lo.String(), f.win.Hi.String()
	}
	if f.class == Unnamed {
		ln.Name = ""
	}
	return ln
}

// csv writes rows in the plan's dialect and gives the text editor's line of each.
func (g *gen) csv(p plan, rows []row) ([]byte, []int, error) {
	delim := map[string]string{"comma": ",", "semicolon": ";", "tab": "\t", "pipe": "|"}[p["delimiter"]]
	eols := map[string][]string{"lf": {"\n"}, "nofinal": {"\n"}, "crlf": {"\r\n"}, "cr": {"\r"}, "mixed": {"\n", "\r\n"}}[p["eol"]]
	if delim == "" || eols == nil {
		return nil, nil, fmt.Errorf("no dialect for delimiter %q, line ending %q", p["delimiter"], p["eol"])
	}
	var b strings.Builder
	var at []int
	line := 1
	if p["sepline"] == "yes" {
		b.WriteString("sep=" + delim + eols[0])
		line++
	}
	width := 0
	for _, r := range rows {
		width = max(width, len(r.cells))
	}
	short := g.rng.IntN(2) == 0 // a title line stands alone or is padded with delimiters
	for i, r := range rows {
		at = append(at, line)
		n := len(r.cells)
		if !short {
			n = width
		}
		for k := 0; k < n; k++ {
			if k > 0 {
				b.WriteString(delim)
			}
			s := ""
			if k < len(r.cells) {
				s = r.cells[k].s
			}
			if p["encoding"] == "entities" { // as copied out of a web page
				s = entities.Replace(s)
			}
			line += strings.Count(s, "\n")
			switch {
			case p["quoting"] == "all" && s != "",
				strings.ContainsAny(s, "\n\r") || strings.Contains(s, delim) || strings.HasPrefix(s, "\"") || strings.Contains(s, "\""):
				s = `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
			case p["quoting"] == "padded" && delim != "\t":
				s = " " + s + " "
			}
			b.WriteString(s)
		}
		line++
		if i == len(rows)-1 && p["eol"] == "nofinal" {
			break
		}
		b.WriteString(eols[i%len(eols)])
	}
	out, err := encode(p, b.String())
	return out, at, err
}

func encode(p plan, s string) ([]byte, error) {
	wide := func(e unicode.Endianness) ([]byte, error) {
		return unicode.UTF16(e, unicode.UseBOM).NewEncoder().Bytes([]byte(s))
	}
	switch p["encoding"] {
	case "utf8-bom":
		return append([]byte("\xef\xbb\xbf"), s...), nil
	case "utf16le":
		return wide(unicode.LittleEndian)
	case "utf16be":
		return wide(unicode.BigEndian)
	case "cp1252":
		// a spreadsheet that saves in the old code page writes ? for what it lacks
		return encoding.ReplaceUnsupported(charmap.Windows1252.NewEncoder()).Bytes(bytes.ReplaceAll([]byte(s), []byte("‑"), []byte("-")))
	case "mojibake":
		return charmap.Windows1252.NewDecoder().Bytes([]byte(s))
	case "nfd":
		return norm.NFD.Bytes([]byte(s)), nil
	}
	return []byte(s), nil
}

var entities = strings.NewReplacer("&", "&amp;", "'", "&#39;", "é", "&eacute;", "ö", "&ouml;", "ü", "&uuml;", "ç", "&ccedil;")
