package sheet

import "strings"

// NameWords are the words of a sheet's path, folded and without its dates: those of the
// folders, then those of the file's name. A number goes with the word before it, so that
// "race 2" is one.
func NameWords(name string) (words []string) {
	name = plainName(strings.ReplaceAll(name, "\\", "/"))
	dir := strings.TrimSuffix(name, baseName(name))
	for _, part := range append(strings.Split(dir, "/"), baseStem(name)) {
		before := ""
		for _, w := range strings.Fields(fold(cutMonthYear(cutDates(keepDates(part), true, " ")))) {
			if digitsOnly(w) {
				w = strings.TrimSpace(before + " " + w)
			}
			words = append(words, w)
			before = w
		}
	}
	return words
}
