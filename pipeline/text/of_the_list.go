package text

import (
	"regexp"
	"slices"
	"strings"
)

// What a line beside a list says of all its times, of its order, or of a part of it: that they are
// still to be changed, that somebody stands in another's place, that nobody is sure of them.

// Words for that, folded; common practice of the languages, no source.
var (
	clockWords = wordsOf(`time times timing watch watches stopwatch stopwatches clock timer timings zeit zeiten uhr stoppuhr zeitnahme temps chrono chronos chronometre montre
		tiempo tiempos crono cronometro reloj tempo tempi tempos orologio relogio tijd tijden klok stopwatch horloge tid tider tidene tiderne tiderna klocka klockan klokke klokken klokka ur uret stoppur stoppuret tidtagaruret
		czas czasy czasow czasach zegar zegarek stoper cas casy casum casu hodinky stopky ajat aika ajoista aikoihin kello ido idok ora stopper vrijeme vremena zaman sure sureler kronometre`)
	addWords = wordsOf(`add adding subtract subtracting deduct deducting minus plus addieren addiere hinzufugen dazu dazuzahlen zuzahlen hinzuzahlen abziehen abzuziehen addiert ajouter ajoutez rajouter enlever enlevez retirer retrancher soustraire deduire
		sumar sumen anadir anadan restar resten quitar aggiungere aggiungete sommare togliere togliete sottrarre adicionar somar subtrair descontar retirar optellen aftrekken bijtellen toevoegen lagg dra legg trekk laeg traek
		dodac doda odjac dodajcie pricist prictete odecist odectete lisaa lisatkaa vahenna vahentakaa adj hozza levonni dodati oduzeti ekleyin ekle cikarin`)
	addPhrases = []string{"take off", "knock off", "come off", "comes off", "coming off", "taken off", "off all", "off every", "on to all", "to be added", "to be taken", "to be deducted", "to be subtracted", "be added to", "need adding", "needs adding", "lagg till", "dra av", "lagga till", "legg til", "trekk fra", "traek fra", "laeg til", "od vsech", "ke vsem"}
	offWords   = wordsOf(`slow fast slower faster slower faster late early behind ahead out short long langsam schnell spat fruh lang kurz zuruck verspatet retard avance longs long courts court rapides lents tard
		tarde retraso retrasado adelantado atrasado cortos largos lentos rapidos ritardo anticipo lunghi corti lenti veloci atraso adiantado laat vroeg snel langzaam lang kort
		sent tidigt tidlig sen sakta langsomt hurtigt seint pozno wczesnie dlugie krotkie pozdeji drive pozde myohassa liian keson kesve kasno prekasno gec`)
	changedWords = wordsOf(`added subtracted deducted corrected adjusted allowed amended changed addiert abgezogen korrigiert angepasst ajoute ajoutees ajoutes corrige corriges corrigees deduit deduits sumado sumados restado corregido corregidos
		aggiunto aggiunti sottratto tolto tolti corretto corretti adicionado corrigido corrigidos gecorrigeerd opgeteld afgetrokken toegevoegd korrigerade korrigerad justerade justert justeret korrigert korrigeret rettet lagt trukket dragits
		dodano odjeto poprawiono skorygowano pricteno odecteno opraveno lisatty vahennetty korjattu adjusting correcting changing`)
	stillWords = wordsOf(`to not need needs needed needing yet still must should please pls bitte noch mussen muss nicht encore doivent faut pas a aun falta faltan deben todavia no da devono ancora non ainda devem nao nog moeten moet niet ska maste bor inte ma skal ikke
		trzeba nalezy jeszcze nie je treba jeste ne viela pitaa ei`)
	afterGun   = []string{"after the gun ", "after the start ", "before the gun ", "before the start "}
	everybody  = wordsOf(`all every everyone everybody each alle allen jeder jedem tous toutes chaque todos todas cada tutti tutte ogni iedereen iedere elke alla varje wszystkich wszystkim vsem vsech vsechny kaikki kaikkiin kaikista`)
	unitAmount = regexp.MustCompile(` (?:\+|-|ca\.? |about )?(?:\d{1,3} ?|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|fifteen|twenty|thirty|forty|eine|zehn|une|dix|un|diez|una|dieci|een|tien|en|tio|ti) )(?:seconds?|secs?|s|minutes?|mins?|sekunden?|sek|minuten?|secondes?|segundos?|seg|minutos?|secondi|secondo|minuti|minuto|seconden|seconde|sekunder|minuter|minutter|sekund|sekundy|minut|minuty|sekuntia|minuuttia|masodperc|perc|sekundi|minuta|saniye|dakika) `)
	bareAmount = regexp.MustCompile(` (?:\+|-|add |subtract |deduct |plus |minus )\d{1,2}(?::\d\d)?(?: ?s)? `)
)

// TimesToChange says whether a line, folded, says that the times of its list have still to be changed, by so
// much or not: "watch started 10 seconds late", "add 10s to all times", "times not yet adjusted". One that
// says that they were is none, nor is one about another week.
func TimesToChange(folded string) bool {
	words := strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" .,;!?()[]/\"", r) })
	f := " " + strings.Join(words, " ") + " "
	if len(words) > 20 || slices.Contains(words, "than") {
		return false
	}
	clock, open, changed := anyOf(words, clockWords), anyOf(words, stillWords), false
	for i, w := range words {
		if changedWords[w] {
			changed = true
			open = anyOf(words[max(0, i-3):i], stillWords) // "not yet adjusted", "to be added"
		}
	}
	if changed && !open {
		return false
	}
	amount := unitAmount.MatchString(f) || bareAmount.MatchString(f)
	change := changed || anyOf(words, addWords) || containsAny(f, addPhrases)
	switch {
	case amount && change && (clock || anyOf(words, everybody) || len(words) <= 4):
		return true
	case amount && clock && (anyOf(words, offWords) || containsAny(f, afterGun)):
		return true
	}
	return changed && clock && slices.ContainsFunc(words, func(w string) bool {
		return w == "times" || w == "zeiten" || w == "tiempos" || w == "tempi" || w == "tijden" || w == "tider"
	})
}

// Words that say that some lines of a list stand in each other's place, or do not belong to what stands beside
// them, and those that stand beside such words. Folded; common practice of the languages, no source.
var (
	exchanged = wordsOf(`swap swaps swapped swapping switch switched exchange exchanged reverse reversed transposed interchanged shifted misaligned mismatched mismatch
		vertauscht tauschen getauscht vertauschen umdrehen verschoben inverser inverses intervertis intervertir permuter permutes decales decale
		intercambiar intercambiados cambiar cambiados invertidos invertir invertiti invertire scambiare scambiati spostati trocar trocados trocadas invertidas
		omwisselen verwisseld omgewisseld omdraaien omgedraaid verschoven byt bytt byta byttes bytte ombytt ombyttet omvendt omkastade forskjovet forskudt
		zamienic zamienione zamieniono przesuniete vaihdettava vaihtaa vaihtuneet prehodit prohodit prehozene posunute csere cserelni felcserelve zamijeniti zamijenjeni yerdegistir`)
	notAsListed = []string{"other way round", "other way around", "wrong way round", "wrong way around", "wrong order", "out of order", "out of sequence", "not in order", "not in the right order", "not in the correct order",
		"right order unknown", "order uncertain", "order unsure", "order unclear", "order is uncertain", "order is unclear", "order not certain", "order is not certain", "not sure of the order", "unsure of the order", "uncertain order",
		"one out", "one off", "out by one", "off by one", "by one", "one too high", "one too low", "one place out", "one row out", "move up", "move down", "moved up one", "moved down one", "should be one", "dont match", "do not match", "doesnt match",
		"mix up", "mix-up", "mixup", "mixed up", "muddle", "muddled", "jumbled", "taken out", "take out", "leave out", "left out", "should not be there", "shouldnt be there", "should not be in", "shouldnt be in", "dont publish", "do not publish", "not to be published", "falsche reihenfolge", "falscher reihenfolge", "reihenfolge falsch", "reihenfolge unklar", "mauvais ordre", "ordre incertain", "verkeerde volgorde", "volgorde onzeker", "orden incorrecto", "orden equivocado", "ordine sbagliato", "fel ordning", "feil rekkefolge", "forkert raekkefolge", "zla kolejnosc", "spatne poradi", "vaara jarjestys", "rossz sorrend"}
	aboutOrder = wordsOf(`are is was were be been should must need needs have has had to not sure certain certainly probably possibly maybe may might could can the a an in on of at for by with it its this that they we i think please pls sorry note nb there here both each other others one two
		and et y e en och og i a place places position positions pos name names time times token tokens order row rows line lines list runner runners finisher finishers result results funnel and & or but so somewhere around between from everything everyone all these those them rest
		sind ist war waren bitte plaetze platze platz zeiten namen und sont les le la des etre svp temps noms places son los las estan nombres tiempos por favor sono nomi tempi da di zijn de het namen tijden plaatsen ska bytas plats pa ar namn tider skal byttes plass plads er navn sa a`)
)

// NotAsListed says whether what a line says of some places or runners, folded and without them, is that they stand in
// each other's place or beside what is another's: "should be swapped", "the other way round", "names one out".
func NotAsListed(rest string) bool {
	f := " " + rest + " "
	said := false
	for _, phrase := range notAsListed {
		if strings.Contains(f, " "+phrase+" ") {
			f, said = strings.ReplaceAll(f, " "+phrase+" ", " "), true
		}
	}
	for _, w := range remarkWords(f) {
		switch {
		case exchanged[w]:
			said = true
		case !aboutOrder[w]:
			return false
		}
	}
	return said
}

// ListInDoubt says whether a line, folded, that names no places may say of a list that something is wrong with its
// times, its names or its order. Lines that ask readers for their corrections dont. It is for pointing out.
func ListInDoubt(folded string) bool {
	words := remarkWords(folded)
	if len(words) < 3 || len(words) > 30 || anyOf(words, toReaders) || !anyOf(words, ofTheList) {
		return false
	}
	f := " " + strings.Join(words, " ") + " "
	return moreOfOne.MatchString(f) || anyOf(words, exchanged) || slices.ContainsFunc(notAsListed, func(phrase string) bool { return strings.Contains(f, " "+phrase+" ") }) || anyOf(words, listTrouble)
}

// moreOfOne says that a list has more times than names, or more names than times.
var moreOfOne = regexp.MustCompile(` (?:(?:more|fewer|less) (?:time|times|name|names|token|tokens|people|runners) than (?:time|times|name|names|token|tokens|people|runners)|\d+ (?:names|runners|tokens|people) (?:but|and) (?:only )?\d+ times|\d+ times (?:but|and) (?:only )?\d+ (?:names|runners|tokens|people)|(?:time|name|token|times|names|tokens) too (?:many|few)|mehr (?:zeiten|namen) als (?:zeiten|namen)|plus de (?:temps|noms) que de (?:temps|noms)) `)

var (
	ofTheList   = wordsOf(`time times timer stopwatch watch clock name names position positions place places order token tokens funnel result zeiten namen reihenfolge platze temps noms ordre classement tiempos nombres orden tempi nomi ordine tijden namen volgorde tider namn ordning navn rekkefolge raekkefolge czasy nazwiska kolejnosc casy jmena poradi ajat nimet jarjestys`)
	listTrouble = wordsOf(`wrong estimated estimates estimate guess guesses guessed approximate unreliable incomplete extra failed uncertain unsure dont mismatch falsch geschatzt unvollstandig unsicher faux estimes incomplets incertain equivocados estimados incompletos sbagliati stimati incompleti fout geschat onvolledig fel uppskattade ofullstandiga feil anslatt ufullstendige bledne szacunkowe niepelne spatne odhadovane`)
	toReaders   = wordsOf(`if your you please tell contact mail email ask check report queries questions errors mistakes website sorry facebook wenn ihre ihr euer eure bitte melden si votre vos merci signaler su sus avisar se vostro segnalare als uw je jullie melden om ditt din meddela hvis dit jos jesli twoj`)
)

// OfNumbers says whether a remark, folded, speaks of start numbers, tokens or barcodes.
func OfNumbers(folded string) bool { return anyOf(remarkWords(folded), numberTags) }

// AsksReaders says whether a line, folded, asks those who read it for something.
func AsksReaders(folded string) bool { return anyOf(remarkWords(folded), toReaders) }
