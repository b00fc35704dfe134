package record

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
)

// withoutNote takes off what somebody has written beside a name of two words or more: behind a dash
// in small letters or with a number, "Ann Fox – first time!", "Ann Fox - 50 runs"; words for how
// somebody came or ran, small or in capitals, "Ann Fox guest", "Ann Fox NEW PB", "Ann Fox from
// Mill Leat"; how to reach them; a heading, "Name: Ann Fox"; and two letters with a stroke, "Ann Fox u/a".
func withoutNote(text string) string {
	if heading, rest, ok := strings.Cut(text, ": "); ok && nameLabels[strings.ToLower(heading)] {
		text = trim(rest)
	}
	for _, dash := range [...]string{" - ", " – ", " — "} {
		if before, behind, ok := strings.Cut(text, dash); ok && strings.IndexByte(trim(before), ' ') > 0 {
			first, _, _ := strings.Cut(trim(behind), " ")
			if r, _ := utf8.DecodeRuneInString(first); unicode.IsLower(r) && !name.IsParticle(first) || hasDigit(first) || noteWords[strings.ToLower(first)] {
				return trim(before)
			}
		}
	}
	if strings.IndexByte(text, '@') > 0 {
		if at := mailBehind.FindStringIndex(text); at != nil && strings.IndexByte(text[:at[0]], ' ') > 0 {
			text = trim(text[:at[0]])
		}
	}
	if n := len(text); n > 4 && text[n-2] == '/' && text[n-4] == ' ' && strings.IndexByte(text[:n-4], ' ') > 0 {
		text = trim(text[:n-4])
	}
	if hasSmallWord(text) && strings.IndexByte(text, '(') < 0 {
		if before, note := smallBehind(text); note != "" {
			if first, _, _ := strings.Cut(note, " "); noteWords[strings.Trim(first, "!.,")] {
				return before
			}
		}
	}
	cut := text
	for {
		i := strings.LastIndexByte(cut, ' ')
		if i < 0 {
			break
		}
		word := strings.TrimRight(cut[i+1:], "!.")
		if shoutedNotes[word] || cut != text && noteWords[strings.ToLower(word)] {
			cut = trim(cut[:i])
			continue
		}
		break
	}
	if cut != text && strings.IndexByte(cut, ' ') > 0 && cut != strings.ToUpper(cut) {
		return cut
	}
	return text
}

var (
	nameLabels = wordSet("name|runner|runner's name|nom|nombre|nome|naam|namn|navn|läufer")
	mailBehind = regexp.MustCompile(` [<(]?\S+@\S+\.\S+$`)

	// noteWords begin what is written behind a name in small letters or behind a dash, shoutedNotes are
	// such words in capitals. Common practice, no source.
	noteWords = wordSet(`new|debut|debutant|first|guest|visitor|ok|x|late|birthday|happy|from|back|again|well|great|nice|congrats|congratulations|pb|sb|
		neu|neue|erster|erste|erstes|gast|geburtstag|aus|nouveau|nouvelle|premier|première|invité|invitée|anniversaire|nuevo|nueva|primera|invitado|invitada|cumpleaños|nuovo|nuova|esordio|ospite|compleanno|
		nieuw|eerste|jarig|ny|första|første|gæst|gjest|gäst|uusi|vieras|nowy|nowa|gość|debiut|nový|nová|host`)
	shoutedNotes = wordSet("PB|SB|RP|MMP|PR|NEW|DEBUT|GUEST|VISITOR|TIMER|FIRST|VI")
)

// hasSmallWord says whether a word behind the first begins with a small letter.
func hasSmallWord(text string) bool {
	for i := 1; i < len(text); i++ {
		if text[i-1] == ' ' {
			if r, _ := utf8.DecodeRuneInString(text[i:]); unicode.IsLower(r) {
				return true
			}
		}
	}
	return false
}

// smallBehind parts a name of two words or more from what stands behind it in small letters:
// "Ann Fox walking", "Ann Fox + dog". role is "" where nothing does.
func smallBehind(text string) (before, role string) {
	words := strings.Fields(text)
	for i := 2; i < len(words); i++ {
		r, _ := utf8.DecodeRuneInString(words[i])
		small := unicode.IsLower(r) && !name.IsParticle(words[i]) && !name.IsParticle(words[i-1])
		if w := words[i]; small || (w == "+" || w == "&") && i+1 < len(words) {
			if r, _ := utf8.DecodeRuneInString(words[0]); !unicode.IsUpper(r) {
				return text, ""
			}
			return strings.Join(words[:i], " "), strings.TrimLeft(strings.Join(words[i:], " "), "+& ")
		}
	}
	return text, ""
}
