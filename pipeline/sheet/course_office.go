package sheet

import (
	"regexp"
	"slices"
	"strings"
)

// officeWords begin or stand in the name of who holds a run or keeps its list, folded: the
// authority of a town or district and its departments, a federation, an association, in the
// languages of the headings. Common practice on letter heads, no source.
var officeWords = set(`
	gemeinde marktgemeinde stadtgemeinde samtgemeinde ortsgemeinde landkreis stadtverwaltung gemeindeverwaltung sportamt schulamt kulturamt jugendamt sportreferat sportabteilung dezernat fachbereich turnverein sportverein verband
	mairie commune municipalite prefecture comite federation ligue association amicale
	ayuntamiento excmo excma ilmo ilma concejalia diputacion mancomunidad delegacion federacion asociacion patronato
	ajuntament regidoria diputacio consistori federacio associacio agrupacio
	udala udaletxea diputazioa aldundia federazioa elkartea
	concello concelleria deputacion
	camara municipio freguesia autarquia pelouro divisao federacao associacao
	comune provincia assessorato ufficio federazione comitato associazione
	gemeentebestuur gemeente gemeentelijke sportdienst atletiekbond vereniging
	kommun kommunen kommunstyrelsen forvaltningen forbundet forening foreningen idrottsforening
	kommune kommunes idrettslag idrettsradet idrettskrets forvaltning forbund idraetsforening
	firmaidraet firmaidraetten bedriftsidrett bedriftsidrettslag korpen foretagsidrott betriebssport betriebssportgruppe betriebssportgemeinschaft bsg bedrijfssport dopolavoro
	kaupunki kaupungin kunta kunnan liikuntapalvelut seura yhdistys liitto
	vald valla vallavalitsus linnavalitsus spordikeskus selts liit
	novads novada pagasta pasvaldiba pasvaldibas biedriba federacija
	savivaldybe savivaldybes seniunija rajono administracijos asociacija draugija
	urzad gmina gminy powiat starostwo osrodek zwiazek stowarzyszenie
	obec obecni magistrat spolek svaz odbor
	obecny obce sportovy sportova zvaz zdruzenie
	onkormanyzat onkormanyzata polgarmesteri hivatal egyesulet egyesulete szovetseg szovetsege
	obcina obcine zveza drustvo
	opcina opcine zupanija upravni savez udruga drustvo opstina opstine
	primaria primariei primar consiliul judetean federatia asociatia
	община кметство федерация сдружение
	општина општине савез удружење друштво
	громада громади рада відділ управління федерація спілка
	администрация отдел управление комитет федерация союз
	δημος δημου κοινοτητα περιφερεια διευθυνση συλλογος ομοσπονδια
	belediyesi belediye mudurlugu kaymakamligi valiligi dernegi federasyonu
	comhairle cumann cyngor cymdeithas
	sveitarfelag hreppur felag
	bashkia komuna`)

// schoolWords stand in the name of a school, which holds a run as an office does, and is the
// place of it where no other is said.
var schoolWords = set("schule grundschule realschule gymnasium ecole lycee scuola liceo colegio escola szkola liceum skola skolan skole koulu iskola iskolai scoala школа")

// ofSchool is what the name of a school weighs less than a name on another line, and what is run
// there, on the same line, less than the school.
const ofSchool = 35

// ofOffice is what the name of an office weighs less than that of a place: more than what a name
// that begins with a small letter does ("Beh lúkami").
const ofOffice = 35

// officeEnds are how such names end where a language writes them in one word:
// "Kreisfachverband", "Motionsforeningen", "Íþróttabandalag". What they stand on is as long.
var officeEnds = []string{"verband", "verein", "gemeinde", "verwaltung", "vereniging", "forening", "foreningen", "forbund", "forbundet", "bandalag", "felag", "forvaltning", "forvaltningen", "valitsus", "yhdistys"}

// namesOffice says whether a text has a word of an office or a federation.
func namesOffice(text string) bool {
	return slices.ContainsFunc(strings.Fields(fold(text)), func(w string) bool {
		return officeWords[w] || slices.ContainsFunc(officeEnds, func(end string) bool {
			return len(w) >= len(end)+3 && strings.HasSuffix(w, end)
		})
	})
}

// isAddress says whether a line is where letters go: a mailbox, or a postcode and a town. Years
// stand before other things.
func isAddress(line string) bool {
	m := postcode.FindStringSubmatch(line)
	return m != nil && !saysYear(m[1]) || strings.Contains(line, "@") && mailbox.MatchString(line)
}

var (
	postcode = regexp.MustCompile(`(?:^|[,–·-] ?)(\d{4,6})(?:-\d{3})? \p{Lu}`)
	mailbox  = regexp.MustCompile(`[\w.-]+@[\w-]+\.\w+`)
)

// codeBehind is a postcode behind a place as it is written in Britain and Ireland: "Alder Bank DN4 7QX".
var codeBehind = regexp.MustCompile(` (?:[A-Z]{1,2}\d[A-Z\d]? ?\d[A-Z]{2}|[A-Z]\d[\dW] ?[A-Z\d]{4})$`)

// stateCodes stand for states and provinces behind the name of a town (USPS Publication 28, Appendix B; Canada
// Post, Addressing Guidelines).
var stateCodes = set("AL AK AZ AR CA CO CT DE DC FL GA HI ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC ND OH OK OR PA RI SC SD TN TX UT VT VA WA WV WI WY AB BC MB NB NL NS NT NU ON PE QC SK YT")

// inState says whether a line names a town with its state, "Corner Creek, MI", which says where in the country
// the run was where another line names the run.
func inState(line, town string) bool {
	_, rest, ok := strings.Cut(line, town+", ")
	code, _, _ := strings.Cut(rest, " ")
	return ok && stateCodes[strings.TrimRight(code, ",.|")]
}

// seats are the words of the lines that name an office or its address: where it sits, mostly, is
// one of them.
func seats(titles []string) map[string]bool {
	if !slices.ContainsFunc(titles, namesOffice) {
		return nil
	}
	var words map[string]bool
	for _, t := range titles {
		if !namesOffice(t) && !isAddress(t) || len(findDates(t)) > 0 {
			continue
		}
		for w := range strings.FieldsSeq(fold(t)) {
			if words == nil {
				words = map[string]bool{}
			}
			words[w] = true
		}
	}
	return words
}

// fromSeat says whether a name has only words of the lines that name an office, as the place in
// "Oberstein, am 3. Mai 2026" has below "Marktgemeinde Oberstein": there the list was written.
func fromSeat(seats map[string]bool, name string) bool {
	if len(seats) == 0 {
		return false
	}
	for w := range strings.FieldsSeq(fold(name)) {
		if !seats[w] {
			return false
		}
	}
	return true
}
