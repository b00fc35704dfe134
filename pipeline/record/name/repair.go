package name

import (
	"html"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/unicode/norm"
)

// Lost stands for one or two letters that a wrong encoding destroyed.
const Lost = '?'

// Clean repairs mojibake (UTF-8 that was read as Windows-1252, once or twice),
// resolves HTML entities, composes to NFC and leaves single spaces. Letters
// that cannot be recovered become one Lost each.
func Clean(text string) string {
	if plain(text) {
		return text
	}
	if strings.IndexByte(text, '&') >= 0 && strings.IndexByte(text, ';') >= 0 {
		text = html.UnescapeString(text)
	}
	if !ascii(text) {
		for range 2 {
			better := repair(text)
			if better == text {
				break
			}
			text = better
		}
		// What is left of a mangled no-break space once its second half, a space, is gone.
		if rest, ok := strings.CutSuffix(text, "Â"); ok && rest != strings.ToUpper(rest) {
			text = rest
		}
		text = norm.NFC.String(text)
	}
	return spaces(text)
}

// plain is the quick way out: printable ASCII with single inner spaces.
func plain(s string) bool {
	last := byte(' ')
	for i := 0; i < len(s); i++ {
		c := s[i]
		if c < ' ' || c >= 0x7f || c == '&' || c == '?' || c == ' ' && last == ' ' {
			return false
		}
		last = c
	}
	return last != ' '
}

func ascii(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// spaces turns every run of white space, control and invisible formatting
// characters into one space and every run of "?" into one.
func spaces(s string) string {
	var b strings.Builder
	b.Grow(len(s))
	gap, last := false, rune(0)
	for _, r := range s {
		switch {
		case unicode.IsSpace(r) || unicode.IsControl(r):
			gap = true
			continue
		case r == '\u00ad' || r == '\u200b' || r == '\ufeff' || r == '\u200e' || r == '\u200f':
			continue
		case r == Lost && last == Lost && !gap:
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte(' ')
		}
		gap, last = false, r
		b.WriteRune(r)
	}
	return b.String()
}

// byte1252 is the byte that Windows-1252 has for r. Letters whose case a
// spreadsheet changed after the damage are taken back to the byte they were.
func byte1252(r rune) (byte, bool) {
	switch {
	case r < 0x80 || r >= 0xa0 && r <= 0xff:
		return byte(r), true
	case r < 0xa0: // C1 controls stand for the five unassigned bytes
		return byte(r), true
	case r == 0x39c: // capital of the micro sign
		return 0xb5, true
	case r == 0x191: // capital of the florin sign
		return 0x83, true
	}
	return charmap.Windows1252.EncodeRune(r)
}

// continuation says whether b can follow the lead byte of a UTF-8 sequence.
func continuation(b byte) bool { return b >= 0x80 && b <= 0xbf }

// symbol says whether the Windows-1252 reading of a continuation byte is no
// letter, so that it has no business inside a name.
func symbol(r rune) bool { return !unicode.IsLetter(r) }

// repair undoes one round of UTF-8 read as Windows-1252. It works piece by
// piece, so that a name in which one letter was destroyed keeps the others.
// An Ã that is a real letter (JOÃO) is left alone: it is not followed by a
// continuation byte.
func repair(s string) string {
	if !strings.ContainsAny(s, "ÃãÂâÅåÄäÐðÑñÆæÇçÈèÉéÊêËë\ufffd") && utf8.ValidString(s) {
		return s
	}
	in := []rune(s) // invalid bytes come out as U+FFFD
	out := make([]rune, 0, len(in))
	for i := 0; i < len(in); {
		r := in[i]
		if r == utf8.RuneError {
			for i < len(in) && in[i] == utf8.RuneError {
				i++
			}
			out = append(out, Lost)
			continue
		}
		if n, dec := decode(in[i:]); n > 0 {
			out = append(out, dec)
			i += n
			continue
		}
		if n := destroyed(in, i); n > 0 {
			out = append(out, Lost)
			i += n
			continue
		}
		out = append(out, r)
		i++
	}
	return string(out)
}

// decode reads one UTF-8 sequence whose bytes are spelt out as Windows-1252
// characters at the head of in; n is 0 where there is none.
func decode(in []rune) (n int, r rune) {
	lead, ok := byte1252(in[0])
	if !ok || lead < 0xc2 || lead > 0xf4 {
		return 0, 0
	}
	need := 1
	if lead >= 0xf0 {
		need = 3
	} else if lead >= 0xe0 {
		need = 2
	}
	if got, r := sequence(lead, need, in); got {
		return need + 1, r
	}
	// A lead that was turned into lower case: Ã (C3) became ã (E3).
	if lead >= 0xe2 && lead <= 0xf6 && len(in) > 1 && symbol(in[1]) && !unicode.IsSpace(in[1]) {
		if got, r := sequence(lead-0x20, 1, in); got {
			return 2, r
		}
	}
	return 0, 0
}

func sequence(lead byte, need int, in []rune) (bool, rune) {
	if len(in) < need+1 {
		return false, 0
	}
	buf := [4]byte{lead}
	for k := 1; k <= need; k++ {
		b, ok := byte1252(in[k])
		if !ok || !continuation(b) {
			return false, 0
		}
		buf[k] = b
	}
	r, size := utf8.DecodeRune(buf[:need+1])
	return r != utf8.RuneError && size == need+1, r
}

// destroyed says how many characters at i are the remains of one letter whose
// other byte is gone: Ã? or Ã followed by the replacement character, Ã and a
// space before a small letter (the no-break space of à), or a capital Ã, Å or
// Ä in the middle of a word in small letters.
func destroyed(in []rune, i int) int {
	switch in[i] {
	case 'Ã', 'Å', 'Ä', 'ã':
	default:
		return 0
	}
	if i+1 < len(in) && (in[i+1] == Lost || in[i+1] == utf8.RuneError) {
		return 2
	}
	if in[i] == 'Ã' && i+2 < len(in) && in[i+1] == ' ' && unicode.IsLower(in[i+2]) {
		return 2
	}
	if in[i] != 'ã' && i > 0 && unicode.IsLower(in[i-1]) && (i+1 == len(in) || !unicode.IsUpper(in[i+1])) {
		return 1
	}
	return 0
}
