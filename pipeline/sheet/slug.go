package sheet

import (
	"strings"
)

// Slug turns the name of a course into the short form that files and tables
// use: "Alder Bank 5 km" is "alder-bank", "St Mary's Park" is "st-marys-park".
// Words of distance go to Distance and are left out. Only letters, digits and
// hyphens remain, so that no name can be a path.
func Slug(name string) string {
	if _, from, to, ok := findDistance(name); ok {
		if rest := slugWords(name[:from] + " " + name[to:]); rest != "" {
			return rest
		}
	}
	return slugWords(name)
}

func slugWords(s string) string {
	s = strings.ReplaceAll(strings.ReplaceAll(s, "&", " and "), "+", " and ")
	var words []string
	for _, w := range strings.Fields(fold(s)) {
		if w == "#" || w == "%" || w == "/" {
			continue
		}
		words = append(words, w)
	}
	slug := strings.Join(words, "-")
	if len(slug) > 80 {
		slug = strings.Trim(strings.ToValidUTF8(slug[:80], ""), "-")
	}
	return slug
}
