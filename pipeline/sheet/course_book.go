package sheet

import (
	"slices"
	"sort"
	"strings"

	"lapwing/pipeline/text"
)

// courseBook knows the courses that are known already.
type courseBook struct {
	exact   map[string]string // folded name or slug -> slug
	phrases []string          // the same names, longest first
	slugs   []string          // known courses, sorted
	weekday map[string]int
}

func newCourseBook(courses []CourseName) *courseBook {
	b := &courseBook{exact: map[string]string{}, weekday: map[string]int{}}
	add := func(name, slug string) {
		f := fold(strings.ReplaceAll(name, "-", " "))
		if f == "" {
			return
		}
		if _, ok := b.exact[f]; !ok {
			b.exact[f] = slug
			b.phrases = append(b.phrases, f)
		}
	}
	for _, c := range courses {
		b.slugs = append(b.slugs, c.Course)
		add(c.Course, c.Course)
		for _, n := range c.Names {
			add(n, c.Course)
		}
		if c.Weekday >= 0 && c.Weekday <= 6 {
			b.weekday[c.Course] = c.Weekday
		}
	}
	sort.Strings(b.slugs)
	sort.SliceStable(b.phrases, func(i, j int) bool {
		if len(b.phrases[i]) != len(b.phrases[j]) {
			return len(b.phrases[i]) > len(b.phrases[j])
		}
		return b.phrases[i] < b.phrases[j]
	})
	return b
}

// slug is the course of a name that stands alone in a cell.
func (b *courseBook) slug(name string) string {
	name = unmangle(name)
	if s, ok := b.exact[fold(strings.ReplaceAll(name, "-", " "))]; ok {
		return s
	}
	s := Slug(name)
	if known, ok := b.exact[strings.ReplaceAll(s, "-", " ")]; ok {
		return known
	}
	return s
}

// holds says whether a course is known.
func (b *courseBook) holds(slug string) bool { return slices.Contains(b.slugs, slug) }

// within finds a known course named anywhere in a text.
func (b *courseBook) within(text string) (slug string, ok bool) {
	f := " " + fold(strings.NewReplacer("-", " ", "_", " ").Replace(text)) + " "
	for _, p := range b.phrases {
		if len(p) >= 3 && strings.Contains(f, " "+p+" ") {
			return b.exact[p], true
		}
	}
	return "", false
}

// butArticle is the one known course that a slug names with an article too many or too
// few, "" where there is none or the slug is known itself.
func (b *courseBook) butArticle(slug string) (known string) {
	for _, k := range b.slugs {
		switch {
		case k == slug:
			return ""
		case withoutArticle(k) != withoutArticle(slug):
		case known != "":
			return ""
		default:
			known = k
		}
	}
	return known
}

// near finds the known course whose slug differs from a slug by one letter
// more, less, other or exchanged: a slip of the pen. sure is false where the
// two could also be two places (Hill Lane, Mill Lane), or several are as near.
func (b *courseBook) near(slug string) (known string, sure bool) {
	if len(slug) < 6 {
		return "", false
	}
	var found []string
	sure = true
	for _, k := range b.slugs {
		if k == slug {
			return "", false
		}
		limit := 1
		if len(slug) >= 12 {
			limit = 2
		}
		if text.Within(slug, k, limit) {
			found = append(found, k)
			sure = sure && text.OSA(slug, k) == 1 && len(slug) >= 8 && slug[0] == k[0]
		}
	}
	if len(found) == 0 {
		return "", false
	}
	return found[0], sure && len(found) == 1
}
