package sheet

import "strings"

// EditionWord says which issue of a result a word in the name of a file or tab, or in
// a title, means: -1 a provisional one, 1 a corrected or final one, 0 neither. The word
// is folded, as in a Slug. Common practice, no source.
func EditionWord(w string) int {
	switch {
	case earlyWords[w]:
		return -1
	case lateWords[w]:
		return 1
	}
	return 0
}

// editionOf is the EditionWord of the words of a heading, the first that has one: "Provisional
// time" comes before "Final time".
func editionOf(heading string) int {
	for w := range strings.FieldsSeq(fold(heading)) {
		if e := EditionWord(w); e != 0 {
			return e
		}
	}
	return 0
}

var earlyWords = set(`provisional prov draft preliminary prelim interim unofficial unconfirmed unchecked uncorrected old superseded
	entwurf vorlaufig vorlaufige vorlaeufig inoffiziell provisoire officieux brouillon borrador provisorio bozza voorlopig voorlopige concept wstepne preliminar preliminara forelobig forelopig`)

var lateWords = set(`final corrected correct corrections correction amended amendment amendments revised updated update new latest official checked definitive rectified rectification
	korrigiert berichtigt endgultig endgueltig offiziell definitif corrige corrigee revise corregido corregida corretto corretta aggiornato definitivo definitiva
	gecorrigeerd definitief herzien ostateczne korrigerad rettet korrigierte korrigierter berichtigte gecorrigeerde gewijzigde poprawiony poprawiona poprawione skorygowany
	rattad rattat korrigeret korrigert korrigerade corrigido corrigida retificado opraveny opravena opravene korjattu oikaistu cywir javitott`)
