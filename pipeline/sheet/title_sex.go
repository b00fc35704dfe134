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
