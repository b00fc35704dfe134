package pipeline

import (
	"path"
	"regexp"
	"strings"

	"lapwing/pipeline/sheet"
)

// listWords in the name of a file or tab say whose list it is, where a run has one
// for each: men and women, age groups, walkers. ownLists have one of their own beside
// that of everybody else. Common practice, no source.
var (
	listWords = wordSet(`men mens man male males women womens woman female females ladies lady gents gentlemen boys girls boy girl seniors senior veterans veteran vets vet masters
		herren damen manner frauen jungen madchen hommes femmes garcons filles hombres mujeres chicos chicas uomini donne ragazzi ragazze heren dames mannen vrouwen jongens meisjes`)
	ownLists  = wordSet("walkers walker walking walk wheelchairs wheelchair handcycles handcycle gehen geher marche marcheurs caminantes marchadores camminatori wandelaars")
	groupWord = regexp.MustCompile(`^(?:u|under)\d{1,2}$|^[mfwv]\d{2}$`)
)

// listOf gives the words of a part's name that say whose list it is.
func listOf(p *partInfo) (words []string, own bool) {
	base := path.Base(p.path)
	for _, w := range strings.Split(sheet.Slug(strings.TrimSuffix(base, path.Ext(base))+" "+p.tab), "-") {
		if ownLists[w] {
			own = true
		}
		if ownLists[w] || listWords[w] || groupWord.MatchString(w) {
			words = append(words, w)
		}
	}
	return words, own
}

// otherLists says whether two parts are by their names lists of different people of a
// run: both say whose, and not the same; or one is of walkers and the other says
// nothing.
func otherLists(a, b *partInfo) bool {
	x, ownX := listOf(a)
	y, ownY := listOf(b)
	if ownX != ownY {
		return true
	}
	return len(x) > 0 && len(y) > 0 && strings.Join(x, " ") != strings.Join(y, " ")
}
