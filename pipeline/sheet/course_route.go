package sheet

import (
	"regexp"
	"strings"
)

// routeWords are the words for a route of a venue beside its usual one: "winter route",
// "alternative course", "Winterstrecke". A new, old or short course is left out: these
// say what happened once, and the next sheets don't repeat it. A route that is run the other
// way round is another one too. Common practice, no source.
var routeWords = regexp.MustCompile(`^(?:the |on the |using the |our )?(?:(winter|summer|spring|autumn|alternative|alternate|reserve|reverse|reversed|flood|storm|bad weather|wet weather|dry weather)(?: 5 ?k(?:m)?)? (?:route|course|loop|circuit)` +
	`|(winter|sommer|ausweich|ersatz)(?:strecke|runde|parcours|route)|parcours (?:d |de l |de )?(hiver|ete|repli|secours)|(?:recorrido|circuito|percorso|percurso) (?:de |del |di |d )?(invierno|verano|alternativo|inverno|verao|estate|invernale|estivo)|([b-d]) (?:route|course|loop|circuit)|(?:route|strecke|parcours|percorso|recorrido) ([b-d]))(?: (?:again|used|in use))?(?: (?:today|tonight|this week|this time|heute|hoy|oggi|vandaag))?$`)

// turnedWords say in a piece of a line of their own that a route is run the other way round.
var turnedWords = regexp.MustCompile(`^(?:(?:course |route |lap |laps |loop )?(?:was |were )?(?:run |in |the |a )*reversed?(?: direction| route| course)?|(?:run )?anti ?clockwise|counter ?clockwise|(?:run )?the other way round|sens inverse|senso inverso|sentido inverso|gegenrichtung|umgekehrte richtung|omgekeerde richting)$`)

// otherRoute is the route of its venue that a line names, "winter-route" for "Alder Bank
// (winter route)" or for "Winter course" alone: "" for none, and for a sentence that may
// speak of another week.
func otherRoute(line string) string {
	f := fold(line)
	if !mayNameRoute(f) || len(strings.Fields(f)) > 14 {
		return ""
	}
	for _, seg := range segments(cutSpans(line, false)) {
		seg = reasonBehind.ReplaceAllString(seg, "")
		words := strings.Fields(fold(seg))
		if turnedWords.MatchString(strings.Join(words, " ")) {
			return "reverse-route"
		}
		for from := max(0, len(words)-6); from < len(words); from++ {
			m := routeWords.FindStringSubmatch(strings.Join(words[from:], " "))
			if m == nil || from > 4 || anyWord(strings.Join(words[:from], " "), spokenWords) {
				continue
			}
			return strings.ReplaceAll(strings.Join(m[1:], ""), " ", "-") + "-route"
		}
	}
	return ""
}

// reasonBehind is why another route was used: "alternative course because of flooding".
var reasonBehind = regexp.MustCompile(`(?i) (?:because|due to|owing to|as the|wegen|à cause|en raison|debido|a causa|wegens|vanwege|på grund)(?:[^\pL].*)?$`)

// mayNameRoute says cheaply whether a folded line may name a route.
func mayNameRoute(f string) bool {
	for _, w := range [...]string{"route", "course", "loop", "circuit", "strecke", "runde", "parcours", "recorrido", "circuito", "percorso", "percurso", "revers", "clockwise", "other way", "invers", "richt"} {
		if strings.Contains(f, w) {
			return true
		}
	}
	return false
}

// spokenWords stand before a route in a sentence about it.
var spokenWords = set("next last back return returns returning we was were is are will until from since than to not no unlike usual instead")

// onRoute adds to a course the route that the titles of a part, its tab or the file name
// beside it, so that the times of one are never taken for those of the other.
func (rs *runSettler) onRoute(p *Part, f Found) Found {
	if f.Value == "" {
		return f
	}
	for i, line := range append(append([]string{}, p.Titles...), p.Tab, baseStem(rs.sheet.Name)) {
		route := otherRoute(line)
		if route == "" {
			continue
		}
		if otherRoute(strings.ReplaceAll(f.Value, "-", " ")) != "" || strings.HasSuffix(f.Value, "-"+strings.TrimSuffix(route, "-route")) {
			return f
		}
		from := "tab name"
		switch {
		case i < len(p.Titles):
			from = p.titleAt(i)
		case i > len(p.Titles):
			from = "file name"
		}
		f.Value += "-" + route
		f.Text += ", " + strings.ReplaceAll(route, "-", " ")
		f.Why += "; the route from the " + from
		return f
	}
	return f
}
