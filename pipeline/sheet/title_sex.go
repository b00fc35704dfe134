package sheet

import "strings"

// sexOfTitle is the part of a title that says a sex, "Results Women" of "Alder Bank – Results
// Women", where no other part of any title says one; "" otherwise.
func sexOfTitle(titles []string) string {
	said := ""
	for _, t := range titles {
		for _, between := range []string{" – ", " — ", " - "} {
			parts := strings.Split(t, between)
			if len(parts) < 2 {
				continue
			}
			for _, p := range parts {
				if p = trim(p); sectionKind(p) != kSex || neitherSex[fold(p)] || len([]rune(sectionText(p))) < 3 {
					continue
				}
				if said != "" && fold(said) != fold(p) {
					return ""
				}
				said = p
			}
		}
	}
	return said
}

// sexAmong is the one line among titles that says a sex and nothing else, as "Men" above the
// name of the place; "" where there is none, or several do.
func sexAmong(titles []string) (said string) {
	for _, t := range titles {
		if t = trim(t); sectionKind(t) == kSex && !neitherSex[fold(t)] && len([]rune(sectionText(t))) >= 3 {
			if said != "" {
				return ""
			}
			said = t
		}
	}
	return said
}
