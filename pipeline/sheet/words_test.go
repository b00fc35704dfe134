package sheet

import (
	"maps"
	"slices"
	"strings"
	"testing"
)

// A word that stands in two lists means both, which is hardly ever right: German finishing
// times are no predicted ones because a list of these has the word too.
func TestWordsStandInOneList(t *testing.T) {
	seen := map[string]concept{}
	for _, lists := range []map[concept]string{ownLists, languageWords} {
		for _, c := range slices.Sorted(maps.Keys(lists)) {
			for _, w := range strings.Fields(lists[c]) {
				if was, ok := seen[w]; ok && was != c && oneIdea[w] == 0 {
					t.Errorf("%q stands in two lists, %b and %b", w, was, c)
				}
				seen[w] = c
			}
		}
	}
}
