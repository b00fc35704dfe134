package text

import (
	"regexp"
	"strings"
)

// Two times with words between them of which one takes the other's place, as people write into
// a cell or behind a name: "24:51 should be 24:15", "24:15 (not 24:51)". Words of some ten
// languages, common practice, no source.
var (
	twoTimes = regexp.MustCompile(`(\d{1,3}[:.'’]\d{2}(?:[:.]\d{2})?)([ \t]*[^\d\t\n]{1,40}?[ \t]*)(\d{1,3}[:.'’]\d{2}(?:[:.]\d{2})?)([ \t]*[)\]])?`)

	// secondHolds stand before the right time, firstHolds before the wrong one.
	secondHolds = wordsBetween(`->|-->|=>|→|⇒|➔|>|should be|should read|should have been|shd be|corrected to|corrected|correction|correct time|correct is|changed to|amended to|amended|now|sorry|oops|no|is really|really|actually|
		korrigiert auf|korrigiert|korrigiert zu|richtig|richtig ist|recte|muss heissen|nein|korrektur|corrigé|corrigé en|corrigée|plutôt|en fait|non|debe ser|corregido|corregido a|corretto|corretto in|anzi|correggere in|
		moet zijn|gecorrigeerd|gecorrigeerd naar|ska vara|rättat till|rättad till|korrigerad|skal være|rettet til|powinno być|poprawione na|poprawka|má být|opraveno na|oprava|správně`)
	firstHolds = wordsBetween(`not|was|previously|instead of|rather than|and not|nicht|statt|war|vorher|falsch|et non|pas|au lieu de|no|y no|en vez de|era|e non|invece di|niet|in plaats van|was eerst|inte|inte som|istället för|ikke|a nie|nie|zamiast|ne|místo|původně`)
)

func wordsBetween(list string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Split(list, "|") {
		w = strings.TrimSpace(w)
		set[w], set[bareLetters.Replace(w)] = true, true
	}
	return set
}

// bareLetters takes the marks off the letters of these words, as readers fold cells.
var bareLetters = strings.NewReplacer("é", "e", "ô", "o", "ä", "a", "å", "a", "ö", "o", "ø", "o", "ć", "c", "á", "a", "í", "i", "ě", "e", "ů", "u")

// CorrectedTime leaves of two times in a text, of which words between them say that the one
// stands for the other, the right one, and all else as it is: "Jo Lee 24:51 should be 24:15"
// becomes "Jo Lee 24:15". ok is false, and s comes back, where there are no two such times, or
// a third. "no" says that the first is wrong where nothing else does, and in brackets that the
// second is: "24:51 no 24:15", "24:15 (no 24:51)".
func CorrectedTime(s string) (out string, ok bool) {
	if len(s) > 200 {
		return s, false
	}
	m := twoTimes.FindStringSubmatchIndex(s)
	if m == nil || strings.ContainsAny(s[m[1]:], ":") && twoTimes.MatchString(s[m[6]:]) {
		return s, false
	}
	between := strings.ToLower(strings.Join(strings.Fields(s[m[4]:m[5]]), " "))
	bracket := strings.ContainsAny(between, "([")
	between = strings.Trim(between, " ([,;:.–—=")
	if between != "->" && between != "-->" {
		between = strings.Trim(between, " -")
	}
	end := m[7]
	if m[8] >= 0 && bracket {
		end = m[9]
	}
	switch {
	case firstHolds[between] && (bracket || !secondHolds[between]):
		return s[:m[3]] + s[end:], true
	case secondHolds[between]:
		return s[:m[2]] + s[m[6]:m[7]] + s[end:], true
	}
	return s, false
}

// TimePutRight begins the remark on a row whose time was taken from a line or note that corrects it.
const TimePutRight = "time put right from "

// wholeTime is a running time with its tenths.
var wholeTime = regexp.MustCompile(`\d{1,3}:\d{2}(?::\d{2})?(?:[.,]\d{1,3})?`)

// TimeOfNote gives the time that the note of a row says should stand there, and says little else: "time should be
// 24:15", "corrected: 24:15".
func TimeOfNote(note string) (time string, ok bool) {
	f := plain(strings.ToLower(note))
	words, found := remarkWords(f), wholeTime.FindAllString(f, 2)
	if len(found) != 1 || len(words) > 8 || !anyOf(words, rightWords) && !anyOf(words, CorrectionWords) || anyOf(words, besidesToday) || anyOf(words, beforeToday) || anyOf(words, formerTime) {
		return "", false
	}
	return found[0], true
}

// CorrectionWords say, in a line of its own, that what stands under it, or in it, corrects results above,
// and, in a note, that its line does. Folded; common practice, no source.
var CorrectionWords = wordsOf(`correction corrections corrected amendment amendments amended erratum errata revised rectified rectification
	korrektur korrekturen korrigiert berichtigung berichtigt rectificatif corrige corrigee correccion corregido corregida correzione corretto corretta rettifica
	correctie gecorrigeerd rectificatie rattelse rattelser korrigerad rettelse rettelser rettet korekta sprostowanie correcao corrigido oprava
	korrekturen richtigstellung correzioni correcties rectificaties sprostowania poprawki rattningar korjaukset oikaisut correcoes retificacoes javitasok correctif correcciones rectificacion retificacao korrigering korjaus oikaisu opravy javitas helyesbites corectare ispravak ispravka popravek parandus labojums pataisymas исправление поправка уточнение виправлення корекция διορθωση duzeltme cywiriad correccio`)
