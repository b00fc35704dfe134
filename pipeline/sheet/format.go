package sheet

import (
	"archive/zip"
	"bytes"
	"strings"

	utf16 "golang.org/x/text/encoding/unicode"
)

// formatOf looks at the first bytes only; the ending of the file's name is not
// trusted. Format is "csv", "xlsx", "xls", "ods", "html", "json", "xml", "mail" or "", and then why says what the file is.
func formatOf(data []byte) (format, why string) {
	const (
		save    = "; open it in a spreadsheet program, save it as XLSX or CSV, and load that"
		takeOut = "; ask for the spreadsheet it was made from, and take this file out of the folder"
	)
	head := data[:min(len(data), 4096)]
	start := bytes.TrimPrefix(head, []byte("\xEF\xBB\xBF"))
	for mark, end := range map[string]utf16.Endianness{"\xFF\xFE": utf16.LittleEndian, "\xFE\xFF": utf16.BigEndian} {
		if text, _, _, err := decode16(bytes.TrimPrefix(head, []byte(mark)), end, ""); err == nil && bytes.HasPrefix(head, []byte(mark)) {
			start = text
		}
	}
	trimmed := bytes.TrimLeft(start, " \t\r\n")
	if bytes.HasPrefix(trimmed, []byte("```")) { // shown as it was typed
		_, trimmed, _ = bytes.Cut(trimmed, []byte("\n"))
	}
	lower := strings.ToLower(string(trimmed))
	switch {
	case len(data) == 0:
		return "", "it is empty; save it again where it comes from, or ask for it again"
	case bytes.HasPrefix(head, []byte("PK\x03\x04")):
		return zipFormat(data)
	case bytes.HasPrefix(head, []byte("PK\x05\x06")):
		return "", "it is a ZIP archive with nothing in it"
	case bytes.HasPrefix(head, []byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1")):
		return containerFormat(data, save)
	case bytes.HasPrefix(head, []byte("%PDF")):
		return "", "it is a PDF, a picture of a page rather than a table" + takeOut
	case bytes.HasPrefix(head, []byte("\x1F\x8B")), bytes.HasPrefix(head, []byte("7z\xBC\xAF")), bytes.HasPrefix(head, []byte("Rar!")):
		return "", "it is a compressed archive; unpack it and load what is inside"
	case isPicture(head):
		return "", "it is a picture" + takeOut
	case len(head) > 12 && string(head[4:8]) == "ftyp":
		return "", "it is a film or a sound recording" + takeOut
	case bytes.HasPrefix(head, []byte("\x4C\x00\x00\x00\x01\x14\x02\x00")): // [MS-SHLLINK] 2.1
		return "", "it is a shortcut, which only says where another file lies; copy that file itself into the folder"
	case strings.HasPrefix(lower, "[internetshortcut]"), strings.HasPrefix(lower, "[desktop entry]"):
		return "", "it is a shortcut, which only says where something else is; open it, save what it shows in the folder, and load that"
	case bytes.HasPrefix(head, []byte("MZ")) && bytes.IndexByte(head, 0) >= 0, bytes.HasPrefix(head, []byte("\x7FELF")):
		return "", "it is a program, not a sheet; take this file out of the folder"
	case bytes.HasPrefix(trimmed, []byte("{\\rtf")):
		return "", "it is a word-processor document" + save
	case startsPage(lower):
		return "html", ""
	case strings.HasPrefix(lower, "<?xml") && strings.Contains(lower, "opendocument") && strings.Contains(lower, "opendocument.spreadsheet"):
		return "ods", ""
	case startsXMLRecords(lower):
		return "xml", ""
	case strings.HasPrefix(lower, "<!doctype"), strings.HasPrefix(lower, "<?xml"):
		return "", "it is program data (XML), not a table" + save
	case startsRecords(lower):
		return "json", ""
	}
	_, parts := mailParts(data)
	if files := attachments(parts); len(files) > 0 {
		what := "attachment, " + files[0]
		if len(files) > 1 {
			what = "attachments, " + strings.Join(files, ", ")
		}
		return "", "it is an e-mail with " + map[bool]string{true: "an ", false: ""}[len(files) == 1] + what + ": open it, save what is attached in the folder of the sheets, and take the e-mail out of it"
	}
	if len(parts) > 0 {
		return "mail", ""
	}
	return "csv", ""
}

// isPicture tells pictures by how they begin.
func isPicture(head []byte) bool {
	for _, start := range []string{"\x89PNG", "\xFF\xD8\xFF", "GIF8", "II*\x00", "MM\x00*"} {
		if bytes.HasPrefix(head, []byte(start)) {
			return true
		}
	}
	if len(head) < 12 {
		return false
	}
	if string(head[:4]) == "RIFF" && string(head[8:12]) == "WEBP" {
		return true
	}
	switch brand := string(head[8:12]); brand { // ISO/IEC 23008-12, and the like of it
	case "heic", "heix", "heif", "mif1", "msf1", "avif":
		return string(head[4:8]) == "ftyp"
	}
	return false
}

// containerFormat says what a compound file ([MS-CFB]) is, by the names in its directory,
// which stand there in UTF-16.
func containerFormat(data []byte, save string) (format, why string) {
	holds := func(name string) bool {
		wide := make([]byte, 0, 2*len(name))
		for i := range len(name) {
			wide = append(wide, name[i], 0)
		}
		return bytes.Contains(data, wide)
	}
	switch {
	case holds("EncryptedPackage"):
		return "", "it is a workbook with a password; open it with the password, save a copy without one, and load that"
	case holds("WordDocument"):
		return "", "it is an old word-processor document" + save
	}
	return "xls", ""
}

// zipFormat tells workbooks from other packages that are ZIP archives.
func zipFormat(data []byte) (format, why string) {
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return "", "it is a damaged workbook or ZIP archive (" + err.Error() + "); ask for it again"
	}
	sawWorkbook, sawArchive, sawOpenDocument := false, false, false
	for _, f := range zr.File {
		switch n := strings.ToLower(f.Name); {
		case strings.HasSuffix(n, "workbook.xml"):
			sawWorkbook = true
		case strings.HasSuffix(n, ".iwa"):
			sawArchive = true
		case strings.HasSuffix(n, "workbook.bin"):
			return "", "it is a binary workbook (XLSB); save it as XLSX and load that"
		case n == "word/document.xml":
			return "", "it is a word-processor document; copy its table into a spreadsheet, save it as XLSX and load that"
		case n == "content.xml":
			sawOpenDocument = true
		}
	}
	if sawWorkbook {
		return "xlsx", ""
	}
	if sawOpenDocument {
		return "ods", ""
	}
	if sawArchive {
		return "", "it is a document of an office program that keeps a form of its own; open it there, export it as XLSX or CSV, and load that"
	}
	return "", "it is a ZIP archive; unpack it and load the sheets inside"
}
