package sheet

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// xmlScanner reads the XML of a workbook's parts (W3C, Extensible Markup
// Language 1.0, 5th ed.) token by token and proves it well formed as it goes:
// names nest, characters and references are legal. It knows what spreadsheet
// files hold and refuses document types and their entities. It exists because
// encoding/xml takes two thirds of the time of reading a workbook; a fuzz test
// holds every token against that package.
//
// Name, attributes and text are good until the next call of next.
type xmlScanner struct {
	r     io.Reader
	buf   []byte
	pos   int  // next byte
	end   bool // the reader has no more
	max   int  // bytes of the longest token
	kind  xmlKind
	name  []byte // local name of an element
	attrs []xmlAttr
	text  []byte
	empty bool // the element just begun is closed by the same tag

	open    []byte // names of the open elements, one after the other
	lengths []int32
	tokens  int
	limits  Limits
	room    []byte // texts with references and line breaks resolved
}

type xmlKind uint8

const (
	xmlEnd xmlKind = iota // of the whole text
	xmlOpen
	xmlClose
	xmlText
)

type xmlAttr struct{ name, value []byte }

const (
	maxToken = 1 << 20 // bytes of one tag or one run of text; a cell holds 32 767 characters (ECMA-376)
	maxDepth = 100
)

func newXMLScanner(r io.Reader, l Limits) *xmlScanner {
	return &xmlScanner{r: r, buf: make([]byte, 0, 64<<10), max: maxToken, limits: l}
}

// fill gets more bytes behind those that are not used yet; false where there
// are none.
func (x *xmlScanner) fill() (bool, error) {
	if x.end {
		return false, nil
	}
	n := copy(x.buf[:cap(x.buf)], x.buf[x.pos:])
	x.buf, x.pos = x.buf[:n], 0
	if n == cap(x.buf) {
		if n >= x.max {
			return false, fmt.Errorf("its XML has a piece of more than %d KB", x.max>>10)
		}
		x.buf = append(make([]byte, 0, 2*n), x.buf...)
	}
	got, err := io.ReadFull(x.r, x.buf[n:cap(x.buf)])
	x.buf = x.buf[:n+got]
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		x.end, err = true, nil
	}
	return got > 0, err
}

// damaged is an error that says what is wrong with the XML.
func damaged(format string, args ...any) error {
	return fmt.Errorf("its XML is damaged ("+format+")", args...)
}

// errShort means that a token goes on behind the bytes at hand.
var errShort = damaged("it ends in the middle of a tag")

// next reads the next token.
func (x *xmlScanner) next() error {
	x.tokens++
	if err := x.limits.goOn(x.tokens); err != nil {
		return err
	}
	if x.empty {
		x.empty, x.kind = false, xmlClose
		return nil
	}
	for {
		used, err := x.token()
		if err == errShort {
			more, fillErr := x.fill()
			if fillErr != nil {
				return fillErr
			}
			if more {
				continue
			}
			return err
		}
		if err != nil {
			return err
		}
		x.pos += used
		if x.kind != xmlEnd || used == 0 {
			return nil
		}
	}
}

// token reads one token of the bytes at hand. A comment or an instruction is
// no token: it gives xmlEnd with the bytes it took.
func (x *xmlScanner) token() (used int, err error) {
	b := x.buf[x.pos:]
	if len(b) == 0 {
		if !x.end {
			return 0, errShort
		}
		if n := len(x.lengths); n > 0 {
			return 0, damaged("<%s> is not closed", shorten(string(x.open[len(x.open)-int(x.lengths[n-1]):]), 20))
		}
		x.kind = xmlEnd
		return 0, nil
	}
	if b[0] != '<' {
		n := bytes.IndexByte(b, '<')
		if n < 0 {
			if !x.end {
				return 0, errShort
			}
			n = len(b)
		}
		x.kind = xmlText
		x.text, err = x.plain(b[:n], 0)
		return n, err
	}
	if len(b) < 2 {
		return 0, errShort
	}
	switch b[1] {
	case '/':
		return x.closing(b)
	case '!':
		return x.marked(b)
	case '?':
		n := bytes.Index(b[2:], []byte("?>"))
		if n < 0 {
			return 0, errShort
		}
		x.kind = xmlEnd
		return n + 4, instruction(b[2 : 2+n])
	}
	return x.opening(b)
}

// instruction checks a processing instruction: of the XML declaration, that
// the text is what is read here.
func instruction(b []byte) error {
	n := nameLength(b)
	if n == 0 {
		return damaged("an instruction without a name")
	}
	if string(b[:n]) != "xml" {
		return nil
	}
	said := func(key string) string {
		rest := b[n:]
		for {
			_, after, ok := bytes.Cut(rest, []byte(key+"="))
			if !ok || len(after) == 0 {
				return ""
			}
			rest = after[1:]
			if quote := after[:1]; quote[0] == '"' || quote[0] == '\'' {
				value, _, closed := bytes.Cut(rest, quote)
				if !closed {
					return ""
				}
				return string(value)
			}
		}
	}
	if v := said("version"); v != "" && v != "1.0" {
		return damaged("version %s", shorten(v, 20))
	}
	if e := said("encoding"); e != "" && !strings.EqualFold(e, "utf-8") {
		return damaged("its encoding is %s", shorten(e, 20))
	}
	return nil
}

// marked reads a comment or a CDATA section; a document type is refused.
func (x *xmlScanner) marked(b []byte) (int, error) {
	const cdata = "<![CDATA["
	switch {
	case bytes.HasPrefix(b, []byte("<!--")):
		n := bytes.Index(b[4:], []byte("--"))
		if n < 0 || 4+n+2 >= len(b) {
			return 0, errShort
		}
		if b[4+n+2] != '>' {
			return 0, damaged("a comment with two dashes inside")
		}
		x.kind = xmlEnd
		return 4 + n + 3, nil
	case bytes.HasPrefix(b, []byte(cdata)):
		n := bytes.Index(b, []byte("]]>"))
		if n < 0 {
			return 0, errShort
		}
		x.kind = xmlText
		var err error
		x.text, err = x.literal(b[len(cdata):n])
		return n + 3, err
	case len(b) < len(cdata) && (bytes.HasPrefix([]byte("<!--"), b) || bytes.HasPrefix([]byte(cdata), b)):
		return 0, errShort
	}
	return 0, fmt.Errorf("its XML declares a document type, which no spreadsheet program does")
}

func (x *xmlScanner) closing(b []byte) (int, error) {
	n := nameLength(b[2:])
	i := 2 + n
	for i < len(b) && isSpace(b[i]) {
		i++
	}
	if i >= len(b) {
		return 0, errShort
	}
	name := b[2 : 2+n]
	if n == 0 || b[i] != '>' {
		return 0, damaged("a closing tag that is none")
	}
	if !x.leave(name) {
		return 0, damaged("</%s> closes nothing", shorten(string(name), 20))
	}
	x.kind, x.name = xmlClose, local(name)
	return i + 1, nil
}

// leave takes the innermost element off the stack; false where another is
// open.
func (x *xmlScanner) leave(name []byte) bool {
	n := len(x.lengths)
	if n == 0 {
		return false
	}
	from := len(x.open) - int(x.lengths[n-1])
	if !bytes.Equal(x.open[from:], name) {
		return false
	}
	x.open, x.lengths = x.open[:from], x.lengths[:n-1]
	return true
}

func (x *xmlScanner) opening(b []byte) (int, error) {
	n := nameLength(b[1:])
	if n == 0 {
		return 0, damaged("< without a name behind it")
	}
	name := b[1 : 1+n]
	i := 1 + n
	x.attrs, x.room = x.attrs[:0], x.room[:0]
	for {
		for i < len(b) && isSpace(b[i]) {
			i++
		}
		if i >= len(b) {
			return 0, errShort
		}
		switch b[i] {
		case '>':
			return i + 1, x.enter(name, false)
		case '/':
			if i+1 >= len(b) {
				return 0, errShort
			}
			if b[i+1] != '>' {
				return 0, damaged("/ inside <%s>", shorten(string(name), 20))
			}
			return i + 2, x.enter(name, true)
		}
		k := nameLength(b[i:])
		if i+k >= len(b) {
			return 0, errShort
		}
		if k == 0 {
			return 0, damaged("a mark inside <%s> that does not belong there", shorten(string(name), 20))
		}
		a := xmlAttr{name: b[i : i+k]}
		for i += k; i < len(b) && isSpace(b[i]); i++ {
		}
		if i < len(b) && b[i] != '=' {
			return 0, damaged("%s of <%s> has no value", shorten(string(a.name), 20), shorten(string(name), 20))
		}
		for i++; i < len(b) && isSpace(b[i]); i++ {
		}
		if i >= len(b) {
			return 0, errShort
		}
		quote := b[i]
		if quote != '"' && quote != '\'' {
			return 0, damaged("%s of <%s> is not in quotation marks", shorten(string(a.name), 20), shorten(string(name), 20))
		}
		i++
		n := bytes.IndexByte(b[i:], quote)
		if n < 0 {
			return 0, errShort
		}
		var err error
		if a.value, err = x.plain(b[i:i+n], quote); err != nil {
			return 0, err
		}
		i += n + 1
		x.attrs = append(x.attrs, a)
	}
}

func (x *xmlScanner) enter(name []byte, empty bool) error {
	if len(x.lengths) > maxDepth {
		return fmt.Errorf("its XML is nested too deeply")
	}
	x.kind, x.name, x.empty = xmlOpen, local(name), empty
	if !empty {
		x.open = append(x.open, name...)
		x.lengths = append(x.lengths, int32(len(name)))
	}
	return nil
}

// attr is the value of an attribute without a prefix, nil where there is none.
func (x *xmlScanner) attr(name string) []byte {
	for _, a := range x.attrs {
		if string(a.name) == name {
			return a.value
		}
	}
	return nil
}

// on says whether a property is on that is so unless its value says otherwise: <strike/>.
func (x *xmlScanner) on() bool {
	v := string(x.attr("val"))
	return v != "0" && v != "false"
}

// plain checks text between tags (quote 0) or the value of an attribute, and
// resolves what stands for other characters.
func (x *xmlScanner) plain(b []byte, quote byte) ([]byte, error) {
	simple := true
	for i := 0; i < len(b); i++ {
		switch c := b[i]; {
		case c >= 'a', c == ' ', c >= '0' && c <= ';': // nearly all
			if c >= utf8.RuneSelf {
				simple = false
			}
		case c == '&', c == '\r':
			simple = false
		case c == '<':
			return nil, damaged("< inside quotation marks")
		case c == '>' && quote == 0 && i >= 2 && b[i-1] == ']' && b[i-2] == ']':
			return nil, damaged("]]> that ends nothing")
		case c < ' ' && c != '\t' && c != '\n':
			return nil, damaged("a control character")
		}
	}
	if simple {
		return b, nil
	}
	if quote == 0 {
		x.room = x.room[:0]
	}
	from := len(x.room)
	for len(b) > 0 {
		n := bytes.IndexByte(b, '&')
		if n < 0 {
			n = len(b)
		}
		var err error
		if x.room, err = appendLiteral(x.room, b[:n]); err != nil {
			return nil, err
		}
		if b = b[n:]; len(b) == 0 {
			break
		}
		end := bytes.IndexByte(b[:min(len(b), 16)], ';')
		r, ok := rune(0), false
		if end > 0 {
			r, ok = reference(string(b[1:end]))
		}
		if !ok {
			return nil, damaged("a reference %s that stands for nothing", shorten(string(b), 12))
		}
		x.room = utf8.AppendRune(x.room, r)
		b = b[end+1:]
	}
	return x.room[from:], nil
}

// literal checks text in which nothing stands for anything else.
func (x *xmlScanner) literal(b []byte) (text []byte, err error) {
	x.room, err = appendLiteral(x.room[:0], b)
	return x.room, err
}

// appendLiteral adds text, its line breaks made one character each (XML 1.0,
// 2.11), after checking its characters (2.2).
func appendLiteral(out, b []byte) ([]byte, error) {
	for i := 0; i < len(b); {
		r, n := utf8.DecodeRune(b[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			return nil, damaged("bytes that are no UTF-8")
		case r == '\r':
			out = append(out, '\n')
			if i+1 < len(b) && b[i+1] == '\n' {
				n = 2
			}
		case !legal(r):
			return nil, damaged("the character U+%04X, which has no place in XML", r)
		default:
			out = append(out, b[i:i+n]...)
		}
		i += n
	}
	return out, nil
}

// legal says whether a character may stand in XML (XML 1.0, 2.2).
func legal(r rune) bool {
	return r == '\t' || r == '\n' || r == '\r' || r >= ' ' && r <= 0xD7FF || r >= 0xE000 && r <= 0xFFFD || r >= 0x10000 && r <= 0x10FFFF
}

// reference is the character that &name; or &#number; stands for.
func reference(name string) (rune, bool) {
	switch name {
	case "lt":
		return '<', true
	case "gt":
		return '>', true
	case "amp":
		return '&', true
	case "quot":
		return '"', true
	case "apos":
		return '\'', true
	}
	digits, ok := strings.CutPrefix(name, "#")
	base := 10
	if hex, ok := strings.CutPrefix(digits, "x"); ok {
		digits, base = hex, 16
	}
	n, err := strconv.ParseUint(digits, base, 32)
	return rune(n), ok && err == nil && n <= utf8.MaxRune && legal(rune(n))
}

func isSpace(c byte) bool { return c == ' ' || c == '\n' || c == '\t' || c == '\r' }

// nameLength is the length of the name that b begins with; it has one colon at
// most (W3C, Namespaces in XML 1.0, 3rd ed., 4). Characters beyond ASCII are
// taken as parts of names without looking further.
func nameLength(b []byte) int {
	prefixed := false
	for i, c := range b {
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c == '_', c >= utf8.RuneSelf:
		case c == ':' && !prefixed:
			prefixed = true
		case i > 0 && (c == '-' || c == '.' || c >= '0' && c <= '9'):
		default:
			return i
		}
	}
	return len(b)
}

// local is a name without its prefix.
func local(name []byte) []byte {
	if i := bytes.IndexByte(name, ':'); i > 0 && i < len(name)-1 {
		return name[i+1:]
	}
	return name
}
