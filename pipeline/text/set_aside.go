package text

import (
	"slices"
	"strings"
)

// Words that say of themselves that nobody is sure of what a line says, or that it does not
// stand: aside. besides may stand beside them without saying anything else. Folded; common
// practice in some fifteen languages, no source.
var (
	aside = wordsOf(`query cancel dupl misdirected
		дубль дубликат дублирование ошибочно ошибка аннулировано аннулирован удалить исключить исключен исключена снять снято дубльована помилково анульовано видалити дублиран грешка анулиран
		参考記録 周回不足 距離不足 推定 重複 無効 取消 削除 無効成绩 重复 无效 作废 删除 估计 估计时间 成绩无效 少跑一圈 抄近道
		unknown unidentified unbekannt unbekannte unbekannter inconnu inconnue desconocido desconocida sconosciuto sconosciuta desconhecido desconhecida onbekend onbekende okand okant ukjent ukendt tuntematon nieznany nieznana nieznane neznamy neznama nezname ismeretlen bilinmiyor bilinmeyen necunoscut nepoznat neznan tundmatu nezinams nezinomas desconegut
		mix mixup mistyped mislabelled ghost funnel tampered
		annullato annullare cambiado cambiada cambiato cambiata scambiato vaihtunut zamieniony zamienione prohozeno zamenjan elcserelt felcserelt byttet bytt karistirildi verwechselt verwisseld
		annulleret annullert annuleret annullerad annulleras makuleret makulerad makulerat geannuleerd anulovano anulovat anulowac anulowano ponistettu
		smazat smazano vyradit skrtnout vyskrtnout skreslic skresl skreslic zignorowac ignorowac pominiety wykreslony wykreslic torlendo toroljuk sil silin silinecek silinmeli silindi dikkate gecersiz mukerrer iptal hatali
		slet slett slettes fjernes fjern poista mitatoi huomioi huomioida suppr
		duplicita duplicitny duplikace duplikaty dubbelregistrerad dubbelregistrering dobbeltregistrert dobbeltregistrering dobbeltregistreret dobbeltoppforing dubletter dublette doppeleintrag doppelterfassung doppelnennung dublerad dublonn dobbeltfort
		test teste testrad testregel testrunner testi testirivi prova prueba pruebas provrad testlinje testpost proba zkusebni probny probowy deneme
		tahmini tahminen belirsiz supheli yanlis yanlislikla szacunkowo szacunkowe szacowany gesch orientacne orientacni osszecserelt
		investigation review audit identity duplicated quit null unratified unregistered unverified faulty misread misrecorded misscanned misprint typo swop swopped
		fremd fremde fremder vertauscht verwechselt irrtumlich irrtuemlich teststart testlauf testeintrag doublette ignorieren loschung storniert stornieren annulliert annullieren entfernen entfernt nachgelaufen unbestatigt strittig
		ignorer effacer supprimee doublons invalide nul nulle mauvais mauvaise approximatifs contestee conteste echange
		ignorar ignorado borrado eliminar eliminada anular nulo nula invalido invalida invalidado equivocado equivocada incorrecto incorrecta pendiente repetido repetida duplicada dudosos tachado aproximados
		ignorare ignorato eliminare eliminato cancellare cancellata annullata nullo nulla invalido sbagliato sbagliata duplicato duplicata ripetuto doppio contestato sospeso
		negeren genegeerd verwijderen verwijderd schrappen geschrapte ongeldig ongeldige verkeerd verkeerde dubbele onbevestigd betwist
		ignorera ignoreras ogiltig ogiltigt stryks tas dubbelt dubletten osaker felaktig felaktigt felregistrering felregistrerad ungefarlig ungefarligt preliminar kontrolleras struket borttagen
		ignorer ignoreres ugyldig ugyldigt strykes slettes slettet duplikat dobbelt dobbel feil feilregistrering forkert dublet skonnet anslaet estimeret tjekkes kontrolleres sjekkes omtrentlig
		poistetaan poistettu mitaton mitatoity tuplana tupla kahdesti kahteen ohita epaselva vaara vaarin likimaarainen arviolta
		pominac usunac usuniety usuniecia niewazny niewazna anulowany anulowana uniewazniony duplikat powtorzony powtorka podwojnie szacunek szacowane przyblizony orientacyjny watpliwy zly zle bledny bledna falszywy sprawdzenia wyjasnienia
		ignorovat neplatny neplatna neplatne zruseno zrusen skrtnuto vymazat duplicitni dvakrat odhadem odhadnut odhadnuty odhadovany priblizny priblizne spatny spatne chybny chybne overeni proverit sporny
		ignorar ignorado eliminado anulada nulo nula invalida errado errada repetida duplicada aproximados estimados duvida
		torolve torlendo torolni ervenytelen duplikalt duplan ketszer becsult kozelito bizonytalan hibas hiba rossz teves tevesen ellenorizni ellenorizendo figyelmen
		queried queries check unsure uncertain unclear unconfirmed unverified doubtful dubious doubt doubts suspect suspicious suspected questionable disputed dispute protest protested appeal appealed
		provisional provisionally prov prelim preliminary pending tbc tba tbd est estd estimated estimate estimates approx approximate approximately ca circa rough roughly roundabout ish guess guessed maybe perhaps possibly poss probably presumably presumed assumed supposed supposedly allegedly
		wrong incorrect error erroneous erroneously mistake mistaken mistakenly mixed muddled swapped swap exchanged interpolated extrapolated averaged calculated calc computed deduced derived adjusted adj rounded penalty penalised pen deducted handicap handicapped implausible impossible think thinks believe reckon looks shared anothers another's unreliable invalid verify confirm
		duplicate duplicated dup dupe double doubled repeat repeated twice superseded replaced obsolete outdated delete deleted remove removed cancelled canceled void voided annulled scratched disregard ignore ignored strike struck crossed omit omitted exclude excluded test testing dummy sample example phantom ineligible
		bike bicycle ebike cycling cyclist cycled scooter skates skater rollerskates rollerblades treadmill remote remotely yesterday half halfway relay leg lap laps loop loops short cut illegible unreadable smudged unofficial
		unsicher fraglich zweifelhaft ungewiss unklar vermutlich vielleicht eventuell evtl wahrscheinlich moglicherweise geschatzt geschatzte geschaetzt ungefahr ungef zirka etwa prufen uberprufen klaren falsch falsche fehler irrtum irrtumlich doppelt gestrichen geloscht loschen streichen ungultig ersetzt veraltet vorlaufig einspruch strafe fahrrad laufband gestern
		etre environ env approximatif approximative estime estimee incertain incertaine douteux douteuse verifier confirmer revoir faux fausse erreur doublon raye annule annulee supprime supprimer provisoire reclamation penalite velo hier
		quizas quiza talvez aproximado aproximada aprox estimado estimada dudoso dudosa verificar confirmar comprobar revisar erroneo duplicado anulado eliminado borrar reclamacion penalizacion bici bicicleta ayer
		forse stimato stimata approssimativo approssimativa dubbio dubbia incerto incerta verificare controllare confermare errore errato errata doppione annullato cancellato provvisorio reclamo penalita ieri
		misschien ongeveer geschat onzeker twijfel twijfelachtig controleren nakijken bevestigen fout foute vergissing dubbel geschrapt vervallen voorlopig straf fiets gisteren
		kanske kanskje maske ungefar omkring cirka uppskattad estimert anslatt osaker osakert osakra usikker usikkert kontrollera kontroller kolla tjek tjekkes sjekk fejl dubblett struken stroket slettet cykel sykkel
		ehka arvio arvioitu epavarma tarkista tarkistettava virhe
		moze okolo szacunkowy szacowany niepewny sprawdzic blad skreslony usunac podwojny rower mozna asi zhruba odhad nejisty overit chyba smazat kolo
		estimativa duvidoso duvidosa apagado apagar ontem erro`)
	besides = wordsOf(`home request requested peut should next checking hand
		время финиш участник запись строка номер результат час запис рядок
		up isim isimi ismi kosucu kosucunun sporcu sure suresi suresini zaman numara numarasi gogus kayit kayitli satir satiri alinmayin almayin edilmesin
		nazwa zapis wiersza radku radek bezec bezce zavod zavodu futoneve sora linea riga linha lina linje rivi wiersz regel ligne zeile eintragung
		invoer registro inscripcion inscription iscrizione inscricao registrering merkinta rekisterointi surname forename given atleta athlete alapjan odhadem wearing wore used using
		who by if time's data result results finisher's under as entry's entered recorded registered runner's unknown timing
		von nach vom an am auf bei wegen nicht startnr lauf laufer lauferin eintrag erfasst eingetragen wurde werden zeit gestoppt
		du des au aux une un non course coureur coureuse dossard parcours ligne ci-dessus saisie pris pas prise ete fait
		corredor corredora dorsal recorrido linea tomado entrada resultado no del al con sin arriba
		corridore pettorale percorso riga tempo risultato inserito sopra sul nel dal preso
		loper nummer tijd regel uitslag ingevoerd genomen niet niets van voor naar hierboven als
		tid tiden namn resultat rad lopare startnummer ej inte for av som till bort
		tid tiden navn resultat linje loper lober startnummer ikke ut som fra bor skal ma
		aika ajan nimi tulos rivi juoksija numero ei on kertaan
		czas czasu nazwisko wynik wpis wiersz zawodnik numer linia do jako nie jest byl
		cas casu jmeno vysledek radek zavodnik cislo zapis ne je byl trat trasa
		tempo nome resultado linha corredor dorsal percurso em como nao foi
		ido idot nev eredmeny sor futo rajtszam nem kivul hagyni szerepel
		time times timing timed name named names place places placed placing position positions pos result results order number no nr num bib token barcode chip tag card code spelling spelt sp sic
		of to be by in on at for is was are has had have seems look seem may might could can cannot must needs need needed please pls rd ref referee desk director me us him her his she he they it its this that the a an and or but so very too all both same as line lines row entry entries entered listed list recorded shown given taken took added read written pressed clicked scanned start started finish finished finisher finishers course way turn lap race run ran runner person participant competitor
		did see above below note notes sheet with from under until subject awaiting await confirmation verification decision review hold ask i we out off it's would like removed through part only one two three just about around more less minute minutes min mins sec secs second seconds s km k missed went last lost took time's watch clock timer stopwatch stopped failed fast slow own mine other else someone correct corrected not
		zeit zeiten name platz start startnummer temps nom place tiempo nombre puesto tempo nome tijd naam plaats tid namn navn plass czas nazwisko cas jmeno aika nimi bitte noch zu zum mit dem der die das ist a en sur la le les el los por da de del di il op met het pa med och og z s`)
	settledYet = wordsOf(`ratified approved accepted registered known identified legible readable checked verified confirmed sure certain clear known official valid eligible right correct valable valide gultig valido valida geldig giltig giltigt gyldig gyldigt wazny wazna wazne platny platna platne ervenyes gecerli kelpaa sicher klar bestatigt gepruft sur confirme confirmee seguro segura confirmado sicuro confermato zeker bevestigd saker sikker pewny`)
)

// manyThings are words for doubt that alone mean something else as often: a repeat visitor, a
// double of two runs, somebody with a handicap, half of a pair.
var manyThings = wordsOf("repeat repeated double twice half short cut handicap handicapped lap laps loop loops relay leg rough cycling biking looks sample test ish pen hier")

// elsewhere are words behind "see" that send the reader to another line.
var elsewhere = wordsOf("next correction corrections above below note notes line lines row entry desk referee ref rd director")

// sees and overThere say "see above" in other languages.
var (
	sees      = wordsOf(`siehe s voir ks vz v vgl cf jf jfr ver vease vedi zie se katso zob patrz viz lasd veja listed entered recorded same as`)
	overThere = wordsOf(`above below oben unten ci-dessus plus-haut ci-dessous dessus dessous yukari yukarida yukariya asagi asagiya sus jos arriba abajo sopra sotto boven hierboven onder ovan nedan over ovenfor ovenstaende nedenfor ylla alla wyzej nizej vyse nize acima abaixo fent lent`)
)

// SetAside says whether a remark, folded and without marks, is made of nothing but words for
// doubt, for another way of taking part or for a line that does not stand, "to be checked",
// "name unclear", "entered by mistake", "zu prüfen", "time?". A remark that says something else
// as well, "test of new shoes", is none.
func SetAside(folded string) bool {
	words := strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" .,;:!?()[]{}/-+=*\"'~<>#…–—\n", r) })
	if len(words) > 9 || hasClock(folded) {
		return false
	}
	if len(words) > 1 && len(words) <= 4 && sees[words[0]] && anyOf(words[1:], overThere) {
		return true // "siehe oben", "voir ci-dessus"
	}
	asks := strings.Contains(folded, "?")
	found, open, reference := asks && len(words) <= 3, false, false
	for _, w := range words {
		switch {
		case aside[w]:
			found = found || len(words) > 1 || !manyThings[w]
		case negations[w] || w == "be" || w == "cant" || w == "cannot":
			open = true
		case settledYet[w]:
			if open {
				found = true
			} else if !besides[w] {
				return false
			}
		case strings.Trim(w, "0123456789") == "":
			reference = true
		case !besides[w]:
			return false
		}
	}
	if slices.ContainsFunc(words, func(w string) bool { return w == "spelling" || w == "spelt" || w == "sp" }) {
		return false // how the name is written is in doubt, and not who it was
	}
	if !found && len(words) > 1 { // "see line 4", "same person as 5"
		switch first := words[0]; first {
		case "see": // "see 3/5" is a day
			found = reference && !strings.Contains(folded, "/") || slices.ContainsFunc(words, func(w string) bool { return elsewhere[w] })
		case "same":
			found = reference
		}
	}
	return found
}

// AgainstTime says whether a remark, folded and without marks, says that a line or its time does not
// stand as one of this run, or that nobody is sure of it. usualKM is as for DoubtedTime.
func AgainstTime(folded string, usualKM int) bool {
	return Uncounted(folded) || NotWholeCourse(folded) || NotOfThisRun(folded) || OtherClock(folded) || DoubtedTime(folded, usualKM) || SetAside(folded) || RightTime(folded)
}

// Disputes says whether a sentence, folded and without marks, has a word that sets a result in doubt,
// takes it back or puts another in its place, whatever stands beside it: "Jo Lee disqualified
// after protest", "place 7 should be Ann Fox".
func Disputes(folded string) bool {
	words := remarkWords(folded)
	return anyOf(words, aside) || anyOf(words, taken) || strings.Contains(folded, "should be") || strings.Contains(folded, "should read") || strings.Contains(folded, "did not finish") || strings.Contains(folded, "did not run") || strings.Contains(folded, "was not") || strings.Contains(folded, " not ") || strings.Contains(folded, "'s barcode")
}

// PutRight says whether a remark, folded and without marks, says that something is in order after all, "corrected",
// "now ok", "reinstated".
func PutRight(folded string) bool {
	words := remarkWords(folded)
	return anyOf(words, putRight) && !anyOf(words, negations)
}

// putRight are words for that. Common practice of the languages, no source.
var putRight = wordsOf(`now corrected reinstated resolved fixed sorted rectified amended confirmed verified checked allowed upheld
	korrigiert berichtigt bestatigt geklart erledigt corrige corrigee confirme confirmee regle corregido corregida confirmado confirmada corretto corretta confermato confermata corrigido corrigida
	gecorrigeerd bevestigd hersteld rattat rattad bekraftad rettet bekreftet bekraeftet korjattu vahvistettu poprawiony poprawione potwierdzony potwierdzone opraveno potvrzeno javitva`)

// TakesBack says whether a sentence, folded and without marks, has a word by which a result is taken back or
// changed.
func TakesBack(folded string) bool { return anyOf(remarkWords(folded), taken) }

// taken say that a result was taken back or changed.
var taken = wordsOf(`disqualified dq dsq dnf dns withdrawn withdrew retired struck corrected amended listed swapped uncertain disqualifiziert disqualifie descalificado squalificato gediskwalificeerd diskvalificerad diskvalifisert diskvalificeret hylatty zdyskwalifikowany`)

// hasClock says whether figures stand on both sides of a colon.
func hasClock(s string) bool {
	for i := 1; i+1 < len(s); i++ {
		if s[i] == ':' && s[i-1] >= '0' && s[i-1] <= '9' && s[i+1] >= '0' && s[i+1] <= '9' {
			return true
		}
	}
	return false
}
