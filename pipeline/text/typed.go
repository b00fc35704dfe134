package text

import (
	"fmt"
	"runtime"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Typed is a word of a command line, most often a file's name, in quotation marks as it
// can be typed at the prompt of this machine: what comes out of the shell is the word
// itself, whatever stands in it. Sources: POSIX.1-2017, Shell Command Language 2.2
// (quoting); $'…' as bash, zsh and POSIX.1-2024 have it.
func Typed(word string) string { return typed(word, runtime.GOOS == "windows") }

func typed(word string, windows bool) string {
	if strings.HasPrefix(word, "-") {
		word = "./" + word // or it would be taken for an option
	}
	switch {
	case windows: // no name of a file there holds a quotation mark
		return `"` + word + `"`
	case !printable(word):
		return "$'" + escaped(word) + "'"
	case !strings.ContainsAny(word, "\"$`\\!"):
		return `"` + word + `"`
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// printable says whether a word can be seen and copied as it is.
func printable(word string) bool {
	return utf8.ValidString(word) && !strings.ContainsFunc(word, func(r rune) bool {
		return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.IsSpace(r) && r != ' '
	})
}

// escaped writes bytes that can't be seen by their numbers.
func escaped(word string) string {
	var b strings.Builder
	for len(word) > 0 {
		r, n := utf8.DecodeRuneInString(word)
		switch {
		case word[0] == '\'' || word[0] == '\\':
			b.WriteString(`\` + word[:1])
		case r == utf8.RuneError && n == 1 || !printable(word[:n]):
			for _, c := range []byte(word[:n]) {
				fmt.Fprintf(&b, `\%03o`, c) // three figures: one that follows is none of them
			}
		default:
			b.WriteString(word[:n])
		}
		word = word[n:]
	}
	return b.String()
}
