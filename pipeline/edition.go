package pipeline

import (
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"lapwing/pipeline/sheet"
)

// edition is what the name of a sheet says about which issue of a result it is: a
// provisional list comes before any other, a corrected or final one after, whatever
// the order in which somebody loads them. Common practice, no source.
type edition struct {
	rank   int // -1 provisional, 0 nothing said, 1 corrected, final or a second version
	number int // of the version, 0 where none is said
}

// editionOf reads the edition from a file's name, that of its folder, and the name of
// a tab.
func editionOf(file, tab string) (e edition) {
	base := path.Base(file)
	base = strings.TrimSuffix(base, path.Ext(base))
	words := strings.Split(sheet.Slug(base+" "+tab), "-")
	early, late := false, false
	for i, w := range words {
		word, digits := w, ""
		if k := strings.IndexFunc(w, unicode.IsDigit); k > 0 {
			word, digits = w[:k], w[k:]
		} else if i+1 < len(words) {
			digits = words[i+1]
		}
		n, err := strconv.Atoi(digits)
		if err == nil && n < 100 && (sheet.EditionWord(word) != 0) {
			e.number = max(e.number, n)
		}
		switch {
		case numberedEdition[word] && err == nil && n < 100:
			late = late || n > 1
			e.number = max(e.number, n)
		case sheet.EditionWord(word) < 0, sheet.EditionWord(word) > 0 && i > 0 && (words[i-1] == "not" || words[i-1] == "non"):
			early = true
		case sheet.EditionWord(word) > 0:
			late = true
		}
	}
	for _, w := range strings.Split(sheet.Slug(strings.ReplaceAll(path.Dir(file), "/", " ")), "-") {
		early = early || oldFolders[w]
	}
	switch {
	case early:
		e.rank = -1
	case late:
		e.rank = 1
	}
	return e
}

// before says whether an edition is surely older than another.
func (e edition) before(o edition) bool {
	return e.rank < o.rank || e.rank == o.rank && e.number > 0 && o.number > 0 && e.number < o.number
}

var numberedEdition = wordSet("v ver version rev revision issue edition fassung vers versie versione")

// oldFolders hold what was replaced.
var oldFolders = wordSet("old older previous superseded replaced obsolete outdated backup backups draft drafts provisional")

func wordSet(list string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(list) {
		m[w] = true
	}
	return m
}

// byEdition puts parts of a run, in order of loading, into the order of their
// issues: one goes before those that are surely newer. What a person gave as the
// full result stays behind everything that was loaded before it.
func byEdition(issues []*issue) []*issue {
	out := make([]*issue, 0, len(issues))
	for _, s := range issues {
		at := len(out)
		if s.part.kind != fullByHand {
			e := editionOf(s.part.path, s.part.tab)
			for k := len(out) - 1; k >= 0 && out[k].part.kind != fullByHand; k-- {
				if e.before(editionOf(out[k].part.path, out[k].part.tab)) {
					at = k
				}
			}
		}
		out = slices.Insert(out, at, s)
	}
	return out
}

// mended says whether a part is by its name the same list as an earlier one in a newer
// state: the file saved over itself, or called a later edition. Who is missing from
// it was taken out.
func mended(earlier, later *issue) bool {
	p, q := earlier.part, later.part
	return p.path == q.path && p.tab == q.tab || editionOf(p.path, p.tab).before(editionOf(q.path, q.tab))
}
