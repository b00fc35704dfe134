package record

import (
	"strings"
	"unicode/utf8"
)

// wordSet makes a set from a list separated by bars; line breaks may follow a
// bar.
func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Split(list, "|") {
		if w = strings.TrimSpace(w); strings.ContainsFunc(w, func(r rune) bool { return r >= utf8.RuneSelf }) {
			w = string(fold(nil, w)) // Korean syllables and marks over other letters, as readers fold them
		}
		if w != "" {
			set[w] = true
		}
	}
	return set
}

// wordTable maps every word of each list to the list's value. A word in two
// lists is a mistake in the table.
func wordTable[V any](lists map[string]V) map[string]V {
	table := map[string]V{}
	for list, v := range lists {
		for w := range wordSet(list) {
			if _, twice := table[w]; twice {
				panic("record: word in two lists: " + w)
			}
			table[w] = v
		}
	}
	return table
}
