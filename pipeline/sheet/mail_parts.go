package sheet

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"mime"
	"mime/multipart"
	"mime/quotedprintable"
	"net/mail"
	"slices"
	"strings"

	"golang.org/x/net/html/charset"
)

// A mail as programs save it (RFC 5322, with the parts of RFC 2045 and 2046) often says the same
// twice, in plain words and as a page, each in a transfer encoding of its own.

// mailHead is how far into a file the head of a message is looked for.
const mailHead = 16 << 10

// mailPart is a part of a mail that holds no parts.
type mailPart struct {
	kind, file string
	params     map[string]string
	body       []byte
}

// decoded is what a part says, in UTF-8, where it names the way its letters are written.
func (p mailPart) decoded() (plain []byte, ok bool) {
	r, err := charset.NewReaderLabel(p.params["charset"], bytes.NewReader(p.body))
	if err != nil {
		return nil, false
	}
	plain, err = io.ReadAll(r)
	return plain, err == nil
}

// mailParts takes a mail apart; nil where the text is none, or one whose words stand in it as they are.
func mailParts(data []byte) (head mail.Header, parts []mailPart) {
	first := data[:min(len(data), mailHead)]
	if !bytes.Contains(first, []byte("ontent-")) && !bytes.Contains(first, []byte("ONTENT-")) { // quick to see, of many sheets
		return nil, nil
	}
	lower := bytes.ToLower(first)
	if !bytes.Contains(lower, []byte("content-type: multipart/")) && !bytes.Contains(lower, []byte("content-transfer-encoding: base64")) && !bytes.Contains(lower, []byte("content-type: text/html")) {
		return nil, nil
	}
	m, err := mail.ReadMessage(bytes.NewReader(data))
	if err != nil {
		return nil, nil
	}
	var within func(header func(string) string, file string, body io.Reader, depth int)
	within = func(header func(string) string, file string, body io.Reader, depth int) {
		kind, params, err := mime.ParseMediaType(header("Content-Type"))
		if err != nil {
			kind = "text/plain"
		}
		if strings.HasPrefix(kind, "multipart/") && depth <= 4 {
			for r := multipart.NewReader(body, params["boundary"]); ; {
				part, err := r.NextRawPart()
				if err != nil {
					return // the end, or no more that can be read
				}
				within(part.Header.Get, part.FileName(), part, depth+1)
			}
		}
		switch strings.ToLower(strings.TrimSpace(header("Content-Transfer-Encoding"))) {
		case "base64":
			body = base64.NewDecoder(base64.StdEncoding, body)
		case "quoted-printable":
			body = quotedprintable.NewReader(body)
		}
		if file == "" {
			file = params["name"]
		}
		plain, _ := io.ReadAll(io.LimitReader(body, wholeBytes)) // what can be read of a damaged part
		if kind == "message/rfc822" && depth <= 4 {
			if sent, err := mail.ReadMessage(bytes.NewReader(plain)); err == nil {
				within(sent.Header.Get, "", sent.Body, depth+1)
				return
			}
		}
		parts = append(parts, mailPart{kind: kind, file: file, params: params, body: plain})
	}
	within(m.Header.Get, "", m.Body, 0)
	return m.Header, parts
}

// attachments names the files attached to a mail that may be sheets: no pictures, cards and signatures,
// as a mail has below its words.
func attachments(parts []mailPart) (names []string) {
	for _, p := range parts {
		if p.file == "" || len(names) >= 5 || strings.HasPrefix(p.kind, "image/") || slices.Contains(besideWords, p.kind) {
			continue
		}
		names = append(names, p.file)
	}
	return names
}

var besideWords = []string{"text/vcard", "text/x-vcard", "text/calendar", "application/pgp-signature", "application/pkcs7-signature", "application/x-pkcs7-signature", "text/css"}

// mailText is what a mail shows: its subject and day, and below them its words, as a page where that has a table.
func mailText(data []byte, l Limits) ([]byte, error) {
	head, parts := mailParts(data)
	var words, page []byte
	for _, p := range parts {
		switch {
		case p.file != "":
		case p.kind == "text/html" && page == nil:
			page = p.body
			if plain, ok := p.decoded(); ok {
				page = append([]byte("\xEF\xBB\xBF"), plain...)
			}
		case p.kind == "text/plain" && words == nil:
			words = p.body
			if plain, ok := p.decoded(); ok {
				words = plain
			}
		}
	}
	if table := bytes.Contains(bytes.ToLower(page), []byte("<table")); page != nil && (timedLines(words) == 0 || table && clockInside.Match(page)) {
		shown, err := pageText(page, l)
		if err == nil {
			words = shown
		} else if words == nil {
			return nil, err
		}
	}
	if words == nil {
		return nil, errors.New("it is an e-mail without words; ask for the results as a sheet")
	}
	var out bytes.Buffer
	for _, key := range []string{"Subject", "Date"} {
		value, err := new(mime.WordDecoder).DecodeHeader(head.Get(key))
		if err != nil {
			value = head.Get(key)
		}
		if value != "" {
			fmt.Fprintf(&out, "%s: %s\n", key, value)
		}
	}
	out.WriteByte('\n')
	out.Write(words)
	return out.Bytes(), nil
}

// readMail reads the words of a mail.
func readMail(name string, data []byte, o Options) (*Sheet, error) {
	text, err := mailText(data, o.Limits)
	if err != nil {
		return nil, fmt.Errorf("%s is refused: %w", baseName(name), err)
	}
	s, err := readText(name, text, o)
	if s != nil {
		s.Dialect = "the words of an e-mail, below its subject and day, " + s.Dialect
	}
	return s, err
}
