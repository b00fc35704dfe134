package table

import "strings"

// EscapeMarkdown makes s stand as it is in CommonMark text and table cells:
// every ASCII punctuation character that could mean something gets a backslash
// (CommonMark 0.31, section 2.4).
func EscapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>#|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
