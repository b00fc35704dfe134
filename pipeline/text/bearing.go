package text

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// MayBear says whether a remark, folded and without marks, may bear on the result that it stands
// beside though it says so in no words that AgainstTime knows: it gives another time, the length
// of another way, a start of its own, another's number, or has a word for doubt beside what is in
// doubt. Remarks about bests, targets and other days don't. It is for pointing out and decides
// nothing. usualKM is as for DoubtedTime.
func MayBear(folded string, usualKM int) bool {
	words := remarkWords(folded)
	has := func(set map[string]bool) bool { return anyOf(words, set) }
	well := has(sureWords)
	switch {
	case len(words) < 2:
		return false
	case has(rideWords) && has(wayOrPart), has(ranWords) && has(dayNames), containsAny(folded, apart) && !has(leftBehind):
		return true
	case has(besidesToday), has(beforeToday):
		return false
	case !well && otherTime(folded):
		return true
	case has(wayWords) && !has(aroundRun) && saysOtherWay(folded, usualKM):
		return true
	case has(startWords) && !well && saysLater(words):
		return true
	case has(numberTags) && slices.ContainsFunc(words, func(w string) bool { return strings.HasSuffix(w, "'s") || strings.HasSuffix(w, "’s") }):
		return true
	case containsAny(folded, otherPeople), containsAny(folded, ownWatch) && !has(leftBehind):
		return true
	}
	return !well && slices.ContainsFunc(words, func(w string) bool { return aside[w] && !manyThings[w] }) && has(inDoubt)
}

// Words for that. Common practice of the languages, no source.
var (
	besidesToday = wordsOf(`pb pbs pr prs sb best bests bz bestzeit record records rekord target goal aim aiming ziel objectif next nachste prochain prochaine proxima prossima volgende nasta neste
		previous previously prev old training marathon pace pacing hoping hopes wants wanted would halfway split splits appt appointment termin`)
	wayWords    = wordsOf(`ran run did walked completed covered only just about approx gps measured says said shows showed garmin strava joined join began started start jumped stopped turned left missed lief gelaufen nur couru seulement corrio solo corso gelopen alleen sprang bara tylko jen`)
	aroundRun   = wordsOf(`warm warmup warmed cool cooldown extra then after afterwards before again home fell fall tripped stitch einlaufen auslaufen echauffement`)
	startWords  = wordsOf(`start starts started starting set left joined began gestartet start parti partie depart salio partito partita gestart startade startet ruszyl`)
	laterWords  = wordsOf(`after late later behind early earlier nach spater zu apres retard antes despues dopo prima later na te efter sent po`)
	minuteUnits = wordsOf(`min mins minute minutes minuten sec secs second seconds sek sekunden s minuto minutos minuti secondi segundos secondes seconden minuter sekunder`)
	rideWords   = wordsOf(`rode ridden`)
	wayOrPart   = wordsOf(`part way last first rest km k mile miles lap half most scooter bike bicycle horse`)
	inDoubt     = wordsOf(`time times timing name result results position place number bib barcode chip token watch clock line row entry runner person way turn course route distance finish zeit name platz startnummer uhr strecke temps nom place dossard chrono montre parcours tiempo nombre puesto dorsal recorrido tempo nome pettorale percorso tijd naam plaats tid namn navn plats plass czas nazwisko miejsce`)
	apart       = []string{"at home", "ran early", "ran later", "ran alone", "ran the day", "zu hause", "allein gelaufen", "a la maison", "en casa", "a casa"}
	leftBehind  = wordsOf(`left forgot forgotten lost vergessen oublie olvido dimenticato children child dog`)
	otherPeople = []string{"somebody else", "someone else", "not him", "not her", "jemand ander", "quelqu'un d'autre", "otra persona", "un'altra persona", "qualcun altro", "iemand anders", "nagon annan", "noen andre", "en anden", "kto inny", "ktos inny"}
	ownWatch    = []string{"own watch", "own time", "own stopwatch", "my watch", "her watch", "his watch", "their watch", "by phone", "eigene uhr", "eigener uhr", "selbst gestoppt", "selbst gemessen", "sa montre", "ma montre", "su reloj", "suo orologio", "eigen horloge", "egen klocka", "egen klokke"}
)

// RightTime says whether a remark, folded and without marks, gives the time that its line should have: "should
// be 24:15", "actual time 24:15".
func RightTime(folded string) bool {
	words := remarkWords(folded)
	return len(words) <= 8 && anyOf(words, rightWords) && otherTime(folded) && !anyOf(words, besidesToday) && !anyOf(words, beforeToday) && !anyOf(words, formerTime)
}

// Words for that. Common practice, no source.
var (
	rightWords = wordsOf(`should actual actually correct real really true right proper richtig richtige tatsachlich tatsachliche korrekt reel exact juste correcto real corretto reale esatto juiste echte ratt rigtig rigtige riktig prawidlowy poprawny spravny oikea helyes`)
	formerTime = wordsOf(`was from previously instead of war statt etait avant era fue eerst ervoor tidigere for byl`)
)

// otherTime says whether a running time stands in a remark: figures on both sides of a colon, of
// which the first are minutes of a run and no hours of a day.
func otherTime(folded string) bool {
	for i := 1; i+2 < len(folded); i++ {
		if folded[i] != ':' || !isDigit(folded[i-1]) || !isDigit(folded[i+1]) || !isDigit(folded[i+2]) {
			continue
		}
		from := i
		for from > 0 && isDigit(folded[from-1]) {
			from--
		}
		if minutes, _ := strconv.Atoi(folded[from:i]); minutes >= 12 && from > 0 {
			return true
		}
	}
	return false
}

// saysOtherWay says whether a remark gives a length in kilometres or miles that is not that of the run.
func saysOtherWay(folded string, usualKM int) bool {
	words := strings.FieldsFunc(folded, func(r rune) bool { return strings.ContainsRune(" ;:!?()[]/~", r) })
	for i, w := range words {
		w = strings.TrimRight(w, ".,")
		figure := strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		unit := w[len(figure):]
		if unit == "" && i+1 < len(words) {
			unit = strings.TrimRight(words[i+1], ".,")
		}
		length, err := strconv.ParseFloat(strings.Replace(figure, ",", ".", 1), 64)
		switch unit {
		case "k", "km", "kms", "kilometres", "kilometer":
		case "mile", "miles", "mi":
			length *= 1.609344
		default:
			continue
		}
		if err == nil && length > 0 && math.Abs(length-float64(usualKM)) > .15 {
			return true
		}
	}
	return false
}

// saysLater says whether words give minutes or seconds by which somebody was later or earlier than others.
func saysLater(words []string) bool {
	for i, w := range words {
		figure := strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		if figure == "" || strings.Trim(figure, "0123456789") != "" {
			continue
		}
		unit := w[len(figure):]
		if unit == "" && i+1 < len(words) {
			unit = words[i+1]
		}
		if minuteUnits[unit] {
			return anyOf(words, laterWords)
		}
	}
	return false
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }
