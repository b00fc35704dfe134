package sheet

import (
	"archive/zip"
	"bytes"
	"io"
	"mime"
	"mime/multipart"
	"net/mail"
	"strings"
)

// formatOf looks at the first bytes only; the ending of the file's name is not
// trusted. Format is "csv", "xlsx", "html", "json" or "", and then why says what the file is.
func formatOf(data []byte) (format, why string) {
	const save = "; open it in a spreadsheet program, save it as XLSX or CSV, and load that"
	head := data[:min(len(data), 4096)]
	trimmed := bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xEF\xBB\xBF")), " \t\r\n")
	lower := strings.ToLower(string(trimmed))
	switch {
	case len(data) == 0:
		return "", "it is empty"
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		return zipFormat(data)
	case bytes.HasPrefix(head, []byte("PK\x05\x06")):
		return "", "it is a ZIP archive with nothing in it"
	case bytes.HasPrefix(head, []byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1")):
		return "", "it is an old XLS workbook or a workbook with a password" + save
	case bytes.HasPrefix(head, []byte("%PDF")):
		return "", "it is a PDF, a picture of a page rather than a table; ask for the spreadsheet it was made from, and take this file out of the folder"
	case bytes.HasPrefix(head, []byte("\x1F\x8B")), bytes.HasPrefix(head, []byte("7z\xBC\xAF")), bytes.HasPrefix(head, []byte("Rar!")):
		return "", "it is a compressed archive; unpack it and load what is inside"
	case bytes.HasPrefix(head, []byte("\x89PNG")), bytes.HasPrefix(head, []byte("\xFF\xD8\xFF")), bytes.HasPrefix(head, []byte("GIF8")):
		return "", "it is a picture; ask for the spreadsheet it was made from, and take this file out of the folder"
	case bytes.HasPrefix(trimmed, []byte("{\\rtf")):
		return "", "it is a word-processor document" + save
	case startsPage(lower):
		return "html", ""
	case strings.HasPrefix(lower, "<!doctype"), strings.HasPrefix(lower, "<?xml"):
		return "", "it is program data (XML), not a table" + save
	case startsRecords(lower):
		return "json", ""
	}
	if files := attachments(data); len(files) > 0 {
		what := "attachment, " + files[0]
		if len(files) > 1 {
			what = "attachments, " + strings.Join(files, ", ")
		}
		return "", "it is an e-mail with " + map[bool]string{true: "an ", false: ""}[len(files) == 1] + what + ": open it, save what is attached in the folder of the sheets, and take the e-mail out of it"
	}
	return "csv", ""
}

// mailHead is how far into a file the head of a message is looked for.
const mailHead = 16 << 10

// attachments names the files attached to a message (RFC 5322 with the parts of
// RFC 2046), nil where the text is no message or has only words.
func attachments(data []byte) (names []string) {
	head := data[:min(len(data), mailHead)]
	if !bytes.Contains(head, []byte("ultipart/")) && !bytes.Contains(head, []byte("ULTIPART/")) { // quick to see, of many sheets
		return nil
	}
	if !bytes.Contains(bytes.ToLower(head), []byte("content-type: multipart/")) {
		return nil
	}
	m, err := mail.ReadMessage(bytes.NewReader(data))
	if err != nil {
		return nil
	}
	var within func(contentType string, body io.Reader, depth int)
	within = func(contentType string, body io.Reader, depth int) {
		kind, params, err := mime.ParseMediaType(contentType)
		if err != nil || !strings.HasPrefix(kind, "multipart/") || depth > 4 {
			return
		}
		for r := multipart.NewReader(body, params["boundary"]); ; {
			part, err := r.NextPart()
			if err != nil {
				return // the end, or no more that can be read
			}
			if name := part.FileName(); name != "" && len(names) < 5 {
				names = append(names, name)
			}
			within(part.Header.Get("Content-Type"), part, depth+1)
		}
	}
	within(m.Header.Get("Content-Type"), m.Body, 0)
	return names
}

// zipFormat tells workbooks from other packages that are ZIP archives.
func zipFormat(data []byte) (format, why string) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return "", "it is a damaged workbook or ZIP archive (" + err.Error() + "); ask for it again"
	}
	sawWorkbook := false
	for _, f := range zr.File {
		switch n := strings.ToLower(f.Name); {
		case strings.HasSuffix(n, "workbook.xml"):
			sawWorkbook = true
		case strings.HasSuffix(n, "workbook.bin"):
			return "", "it is a binary workbook (XLSB); save it as XLSX and load that"
		case n == "word/document.xml":
			return "", "it is a word-processor document; copy its table into a spreadsheet, save it as XLSX and load that"
		case n == "content.xml":
			return "", "it is an OpenDocument file; save it as XLSX or CSV and load that"
		}
	}
	if sawWorkbook {
		return "xlsx", ""
	}
	return "", "it is a ZIP archive; unpack it and load the sheets inside"
}
