package sheet

import (
	"regexp"
	"strings"
)

// sexOfTitle is the part of a title that says a sex, "Results Women" of "Alder Bank – Results
// Women", where no other part of any title says one; "" otherwise.
func sexOfTitle(titles []string) string {
	said := ""
	for _, t := range titles {
		if m := ofOneSex.FindAllStringSubmatch(t, -1); len(m) == 1 && len(eachSex.FindAllString(t, 2)) == 1 && (said == "" || fold(said) == fold(m[0][1])) {
			said = m[0][1]
		} else if m != nil {
			return ""
		}
		if len(sexesOf(t)) > 1 {
			continue // "S - men, T - women"
		}
		for _, between := range []string{" – ", " — ", " - ", "-"} {
			parts := strings.Split(t, between)
			if len(parts) < 2 {
				continue
			}
			if between == "-" {
				parts = parts[len(parts)-1:] // "Results for Alder Bank 5K-Female"
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

// ofOneSex is whose race a title says it is: "Wicket Gate Women's 5k", "Ladies only". Common practice, no source.
var ofOneSex = regexp.MustCompile(`(?i)(?:^|\s)(women|men|ladies|girls|boys)['’` + "`" + `]?s?['’]?(?:\s+only|(?:\s+only)?\s+(?:race|run|results?|event|\d+(?:[.,]\d+)?\s?(?:k|km|m|miles?)))\b`)

var eachSex = regexp.MustCompile(`(?i)\b(?:women|men|ladies|gents|girls|boys|mixed|open)`)

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
