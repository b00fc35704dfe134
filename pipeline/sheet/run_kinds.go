package sheet

import "strings"

// saysKind says whether a text is nothing but what kind of run it was or whose: "Inter-house 5k",
// "Parish run", "Interclub". A run may be called so where nothing else names its place.
func saysKind(text string) bool {
	found := false
	for _, w := range strings.Split(Slug(text), "-") {
		switch {
		case kindWords[w]:
			found = true
		case !titleWords[w] && !fieldWords[w] && !isOrdinalOrNumber(w):
			return false
		}
	}
	return found
}

// ofKind is what such a text weighs less than one that may be a place: a bare line below it is heavier
// than it with its distance.
const ofKind = 35

// kindWords say for whom a run is held or at what time of the day, in the languages of the headings, as
// in a Slug. Common practice, no source.
var kindWords = set(`inter house houses interhouse club clubs interclub interclubs intraclub parish interparish county intercounty town village school schools interschool interschools college colleges
	intercollege intercollegiate university universities interuniversity form year department departments departmental interdepartmental works staff colleague colleagues employee employees
	company companies intercompany corporate business office factory lunchtime lunch midweek twilight social family charity church council community workplace workers
	regiment regimental battalion squadron unit garrison brigade hospital hospitals interhospital ward fitness predict predicted prediction predictor guess guessing your
	betrieb betriebe betriebs betriebslauf firmen firmenlauf behordenlauf behoerdenlauf gemeinde gemeindelauf dorflauf stadtlauf schullauf schulen schulmeisterschaft hochschule hochschullauf vereine feierabend feierabendlauf mittagslauf
	entreprise entreprises interentreprises interclasses interecoles paroisse commune village scolaire universite universitaire associations empresa empresas colegios escolar parroquia pueblo aziendale aziende interaziendale
	scolastica scolastico parrocchia parrocchiale paese paesana paesano comunale sociale bedrijf bedrijven bedrijvenloop bedrijfsloop dorpsloop schoolloop firmowy firmy szkolny szkolne parafialny gminny bedrift bedrifter bedriftslop bedriftslopet
	skola skolor skole skoler skolelop foretag foretagen firmaloppet virksomhed virksomheder kommune kommun byloppet firemni skolni obecni szkoly iskola iskolai ceges`)
