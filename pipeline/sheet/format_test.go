package sheet

import (
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
	if format, why := formatOf([]byte(head + body + "--=x=--\r\n")); format != "csv" {
		t.Errorf("words only: %q", why)
	}
}
