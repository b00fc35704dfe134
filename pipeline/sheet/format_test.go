package sheet

import (
	"encoding/base64"
	"strings"
	"testing"
)

// A message with a sheet attached says what to do with it; one of words only is
// read as the text it is.
func TestMessageWithAttachment(t *testing.T) {
	head := "Subject: results\r\nFrom: derek@example.org\r\nMIME-Version: 1.0\r\nContent-Type: multipart/mixed; boundary=\"=x=\"\r\n\r\n"
	body := "--=x=\r\nContent-Type: text/plain\r\n\r\nResults attached.\r\n\r\n"
	file := "--=x=\r\nContent-Type: application/octet-stream\r\nContent-Transfer-Encoding: base64\r\nContent-Disposition: attachment; filename=\"week 14.xlsx\"\r\n\r\nUEsDBBQ=\r\n"
	if _, why := formatOf([]byte(head + body + file + "--=x=--\r\n")); !strings.Contains(why, "an e-mail with an attachment, week 14.xlsx: open it") {
		t.Errorf("with an attachment: %q", why)
	}
	if _, why := formatOf([]byte(head + body + file + file + "--=x=--\r\n")); !strings.Contains(why, "an e-mail with attachments, week 14.xlsx, week 14.xlsx: open") {
		t.Errorf("with two: %q", why)
	}
	if format, why := formatOf([]byte(head + body + "--=x=--\r\n")); format != "mail" {
		t.Errorf("words only: %q", why)
	}
	logo := "--=x=\r\nContent-Type: image/png; name=\"logo.png\"\r\nContent-Transfer-Encoding: base64\r\n\r\niVBORw==\r\n"
	if format, why := formatOf([]byte(head + body + logo + "--=x=--\r\n")); format != "mail" {
		t.Errorf("a picture below the words: %q", why)
	}
	if format, _ := formatOf([]byte("Subject: results\r\nMIME-Version: 1.0\r\nContent-Type: text/plain\r\n\r\n1 Jo Lee 18:20\r\n")); format != "csv" {
		t.Errorf("words as they are: %q", format)
	}
}

// A mail is read by its words, taken out of their transfer encoding, or by the page beside them where that
// has the table.
func TestMailParts(t *testing.T) {
	head := "From: derek@example.org\r\nTo: results@example.org\r\nSubject: =?utf-8?Q?Alder_Bank_5k=2C_3_January_2026?=\r\nMIME-Version: 1.0\r\n"
	list := "Pos  Name     Time\n1    Jo Lee   18:20\n2    Al Roe   18:31\n3    Cy Döe   19:02\n4    Di Fox   19:28\n"
	page := "<html><body><p>Hello,</p><table><tr><th>Pos</th><th>Name</th><th>Time</th></tr><tr><td>1</td><td>Jo Lee</td><td>18:20</td></tr><tr><td>2</td><td>Al Roe</td><td>18:31</td></tr><tr><td>3</td><td>Cy D&ouml;e</td><td>19:02</td></tr><tr><td>4</td><td>Di Fox</td><td>19:28</td></tr></table></body></html>"
	part := func(kind, words string) string {
		return "--b\r\nContent-Type: " + kind + "; charset=utf-8\r\nContent-Transfer-Encoding: base64\r\n\r\n" + base64.StdEncoding.EncodeToString([]byte(words)) + "\r\n"
	}
	both := "Content-Type: multipart/alternative; boundary=b\r\n\r\n"
	for what, text := range map[string]string{
		"words in base64":      head + "Content-Type: text/plain; charset=utf-8\r\nContent-Transfer-Encoding: base64\r\n\r\n" + base64.StdEncoding.EncodeToString([]byte(list)) + "\r\n",
		"words beside a page":  head + both + part("text/plain", list) + part("text/html", "<p>see the plain words</p>") + "--b--\r\n",
		"a page beside words":  head + both + part("text/plain", "The table is below.") + part("text/html", page) + "--b--\r\n",
		"a page":               head + "Content-Type: text/html; charset=utf-8\r\n\r\n" + page + "\r\n",
		"words with a picture": head + "Content-Type: multipart/mixed; boundary=b\r\n\r\n" + part("text/plain", list) + "--b\r\nContent-Type: image/png; name=\"logo.png\"\r\n\r\nx\r\n--b--\r\n",
	} {
		s := readCase(t, "results.eml", text)
		if got := outcome(s); got.columns != "position name time" || got.run != "alder-bank 2026-01-03" {
			t.Errorf("%s: %+v", what, got)
		}
		n := 0
		for _, p := range s.Parts {
			p.Each(func(int, []string) error { n++; return nil })
		}
		if n != 4 {
			t.Errorf("%s: %d rows, want 4", what, n)
		}
		out, err := Redact("results.eml", []byte(text), Options{}, Redaction{Words: []string{"Cy Döe"}, Text: "erased", Everywhere: true})
		if err != nil || strings.Contains(string(out), "Döe") || !strings.Contains(string(out), "erased") {
			t.Errorf("%s: the copy without somebody is %q, %v", what, out, err)
		}
		if holds, err := Holds([]byte(text), []string{"Jo Lee"}); !holds || err != nil {
			t.Errorf("%s: holds %v, %v", what, holds, err)
		}
	}
}
