package reports

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// anonymous is printed for somebody who asked not to be shown.
const anonymous = "Anonymous"

// nobody is printed for a finisher whom nobody could name.
const nobody = "(not named)"

// publicName is the name as anybody may read it: the full name of an adult,
// first name and initial of somebody who may be under 18 on the day,
// "Anonymous" for somebody who asked to be hidden.
func publicName(name string, protected, hidden bool) string {
	switch {
	case hidden:
		return anonymous
	case strings.TrimSpace(name) == "":
		return nobody
	case protected:
		return firstAndInitial(name)
	}
	return name
}

// firstAndInitial shortens "Mia van der Berg" to "Mia B." and leaves a single
// name alone. Initials that stand first are no first name that gives anything
// away: "J R Stone" becomes "J. S.".
func firstAndInitial(name string) string {
	words := strings.Fields(name)
	if len(words) < 2 {
		return name
	}
	// What follows the family name ("Jr", "III") is no initial of it.
	last := len(words) - 1
	for last > 1 && suffixes[strings.ToLower(strings.Trim(words[last], "."))] {
		last--
	}
	first := words[0]
	if utf8.RuneCountInString(strings.TrimRight(first, ".")) == 1 {
		first = strings.TrimRight(first, ".") + "."
	}
	for _, r := range words[last] {
		if unicode.IsLetter(r) {
			return first + " " + string(unicode.ToUpper(r)) + "."
		}
	}
	return first
}

var suffixes = map[string]bool{"jr": true, "jnr": true, "sr": true, "snr": true, "ii": true, "iii": true, "iv": true}

// groupLabel is the age group with the letter of the list that it belongs to:
// junior and senior groups carry none of their own, so "Senior" of the women
// becomes "Senior W". Masters groups have theirs: M40, W40, X40.
func groupLabel(sex, group string) string {
	if group == "" || sex == "" || strings.HasPrefix(group, sex) {
		return group
	}
	return group + " " + sex
}

// fewest is the least number of people of an X group in a run for the group to
// be printed: a smaller one would point at somebody.
const fewest = 5
