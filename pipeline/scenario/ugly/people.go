package ugly

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// nameCells writes a name in one or two columns.
func nameCells(style string, given, middle, family string, rng *rand.Rand) []cell {
	up := strings.ToUpper
	switch style {
	case "family-comma":
		return []cell{text(family + ", " + given)}
	case "FAMILY-comma":
		return []cell{text(up(family) + ", " + given)}
	case "FAMILY-given":
		return []cell{text(up(family) + " " + given)}
	case "two-columns":
		return []cell{text(given), text(family)}
	case "two-columns-family-first":
		return []cell{text(family), text(given)}
	case "upper":
		return []cell{text(up(given + " " + family))}
	case "lower":
		return []cell{text(strings.ToLower(given + " " + family))}
	case "initial":
		return []cell{text(string([]rune(given)[:1]) + ". " + family)}
	case "spaces":
		return []cell{text(" " + given + []string{"  ", "\u00a0", " \u00a0", "   "}[rng.IntN(4)] + family + " ")}
	case "middle":
		if rng.IntN(2) == 0 {
			return []cell{text(given + " " + middle + ". " + family)}
		}
	case "typographic":
		return []cell{text(strings.ReplaceAll(strings.ReplaceAll(given+" "+family, "'", "’"), "-", "‑"))}
	}
	return []cell{text(given + " " + family)}
}

var unnamedWords = []string{"Unknown", "UNKNOWN", "A N Other", "A.N. Other", "No code", "Guest", "-", "?", "", "No name", "unknown runner", "Unknown Unknown", "n/a", "anon", "???", "4711"}

// unnamedIn adds the language's own word.
var unnamedIn = map[string]string{"de": "Unbekannt", "fr": "Inconnu", "es": "Desconocido", "it": "Sconosciuto", "nl": "Onbekend", "sv": "Okänd", "pl": "Nieznany", "pt": "Desconhecido", "da": "Ukendt"}

var chats = []string{"first run back", "lost a shoe", "thanks to all", "birthday!", "ran with sister", "visiting", "new shoes", "great weather", "see you next week", "was at the front for a while"}

// parts is how sheets note that somebody took part otherwise, and what it means.
var parts = []struct{ note, as string }{
	{"walker", "walker"}, {"walked", "walker"}, {"guide runner", "guide"}, {"guided", "guided"}, {"pacer 28 min", "pacer"}, {"pacer", "pacer"},
	{"back marker", "back marker"}, {"with buggy", "buggy"}, {"buggy", "buggy"}, {"with dog", "dog"}, {"racing wheelchair", "racing wheelchair or handcycle"},
	{"handcycle", "racing wheelchair or handcycle"}, {"day wheelchair", "day wheelchair or frame"}, {"adult with a child", "adult with a child"},
}

func ordinal(n int) string {
	s := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			s = "st"
		case 2:
			s = "nd"
		case 3:
			s = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, s)
}
