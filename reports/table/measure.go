package table

import (
	"strings"
	"unicode/utf8"

	"github.com/rivo/uniseg"
	"golang.org/x/text/unicode/norm"
)

// advances are the widths of the font's letters, in thousandths of its size: those of
// Arial and of every font made to its measure (Adobe's metrics of Helvetica, Core 14
// AFM; held against Liberation Sans).
var advances = func() map[rune]int {
	out := map[rune]int{}
	for w, letters := range map[int]string{
		191: "'", 222: "ijl", 260: "|", 278: " !,./:;I[\\]ft·", 333: "-()r`", 334: "{}", 355: "\"", 389: "*", 469: "^", 500: "Jcksvxyz",
		556: "#$?0123456789L_abdeghnopqu–", 584: "+<=>~−", 611: "FTZ", 667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 833: "Mm", 889: "%", 944: "W", 1000: "…", 1015: "@",
	} {
		for _, r := range letters {
			out[r] = w
		}
	}
	return out
}()

const (
	digitAdvance = 556 // of a digit, in which columns are measured
	wideAdvance  = 778 // of a letter that is not in the table, to be safe

	boldWider = 1.08 // bold letters take so much more
)

// measure is the width of a text in digits of the font. An accent takes no room.
func measure(s string) float64 {
	sum := 0
	for _, r := range s {
		w, ok := advances[r]
		if !ok {
			w = wideAdvance
			base, _ := utf8.DecodeRuneInString(norm.NFD.String(string(r)))
			if a, known := advances[base]; known {
				w = a
			} else if n := width(string(r)); n != 1 {
				w = n * digitAdvance
			}
		}
		sum += w
	}
	return float64(sum) / digitAdvance
}

// fit shortens s to a measured width, ending in "…" where something is lost.
func fit(s string, w float64) string {
	if measure(s) <= w {
		return s
	}
	var b strings.Builder
	used := measure("…")
	for g := uniseg.NewGraphemes(s); g.Next(); {
		if used += measure(g.Str()); used > w {
			break
		}
		b.WriteString(g.Str())
	}
	return strings.TrimRight(b.String(), " ") + "…"
}

// lines estimates how many lines s takes in a cell of w characters, as wide as digits,
// beginning a new one at each line break.
// A word that is longer than a line is broken behind its hyphens, and else anywhere.
func lines(s string, w float64) (n int) {
	for l := range strings.SplitSeq(s, "\n") {
		n += linesOfOne(l, w)
	}
	return n
}

func linesOfOne(s string, w float64) int {
	n, used, space := 1, 0.0, measure(" ")
	for _, word := range strings.Fields(s) {
		pieces := []string{word}
		if measure(word) > w {
			pieces = strings.SplitAfter(word, "-")
		}
		for i, piece := range pieces {
			long := measure(piece)
			if used > 0 && i == 0 {
				used += space
			}
			if used > 0 && used+long > w {
				n++
				used = 0
			}
			for used += long; used > w; used -= w {
				n++
			}
		}
	}
	return n
}
