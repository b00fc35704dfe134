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
		before, behind := name[:from], name[to:]
		if first, rest, ok := strings.Cut(strings.TrimSpace(behind), " "); ok && strings.TrimSpace(before) == "" && leadsFromDistance[first] {
			behind = rest // "5 km de Valbrune"
		}
		if rest := slugWords(before + " " + behind); rest != "" {
			return rest
		}
	}
	return slugWords(name)
}

// leadsFromDistance are small words between a distance and a place.
var leadsFromDistance = set("de du des di del della do da of von van at in im i på w")

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
