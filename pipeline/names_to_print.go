package pipeline

import (
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record/name"
	"slices"
)

// called is the name to print and the key that others are compared by.
type called struct{ printed, key string }

func calledAs(printed string) called { return called{printed, name.Parse(printed).Full} }

// namesToPrint finds out what every runner is called, from all spellings, and their
// latest club. Most have one spelling, which many share: it is looked at once.
func (f *field) namesToPrint(p *people, club []int32, workers int) func(r int) called {
	only := make([]int32, len(p.no)) // the runner's only name; -1: has several
	several := make([]map[int]called, (len(p.no)+printedPiece-1)/printedPiece)
	parallel.Each(len(several), workers, func(k int) {
		var spellings []name.Spelling
		for r := k * printedPiece; r < min(len(p.no), (k+1)*printedPiece); r++ {
			lines := p.order[p.begin[r]:p.begin[r+1]]
			only[r] = f.name[lines[0]]
			for _, l := range lines {
				if f.club[l] != 0 {
					club[r] = f.club[l]
				}
				if f.name[l] != only[r] {
					only[r] = -1
				}
			}
			if only[r] >= 0 {
				continue
			}
			spellings = spellings[:0]
			for i, l := range lines {
				spellings = countSpelling(spellings, f.names.list[f.name[l]], i)
			}
			if several[k] == nil {
				several[k] = map[int]called{}
			}
			several[k][r] = calledAs(name.Current(spellings))
		}
	})
	used := make([]bool, len(f.names.list))
	for _, n := range only {
		if n >= 0 {
			used[n] = true
		}
	}
	one := make([]called, len(used))
	parallel.Pieces(len(used), workers, func(from, to int) {
		for n := from; n < to; n++ {
			if used[n] {
				one[n] = calledAs(name.Best([]name.Spelling{{Text: f.names.list[n], Count: 1}}))
			}
		}
	})
	return func(r int) called {
		if only[r] >= 0 {
			return one[only[r]]
		}
		return several[r/printedPiece][r]
	}
}

// printedPiece is how many runners are gone through at a time.
const printedPiece = 2048

// printedName is what one runner is called, "" where nobody has the number.
func (w *work) printedName(runner int32) string {
	if wish, ok := w.wishes.name[runner]; ok {
		return wish
	}
	f, p := w.field, w.people
	r, ok := slices.BinarySearch(p.no, runner)
	if !ok {
		return ""
	}
	var spellings []name.Spelling
	for i, l := range p.order[p.begin[r]:p.begin[r+1]] {
		spellings = countSpelling(spellings, f.names.list[f.name[l]], i)
	}
	return name.Current(spellings)
}

// countSpelling counts one more text, the i-th of all, among a runner's spellings.
func countSpelling(list []name.Spelling, text string, i int) []name.Spelling {
	at := slices.IndexFunc(list, func(s name.Spelling) bool { return s.Text == text })
	if at < 0 {
		at = len(list)
		list = append(list, name.Spelling{Text: text, First: i})
	}
	list[at].Count++
	list[at].Last = i
	return list
}
