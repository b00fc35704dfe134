package pipeline

import (
	"fmt"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/text"
)

// nameDoubtful is the kind of question whether somebody is another runner whose
// name was written differently.
const nameDoubtful = "name-doubtful"

// worthTelling is the chance from which a pair of runners is told to the desk of
// the run where the rarer one stood last: in all others it is likelier that they
// are two people, and the list of lapwing match is the place for them. Common
// sense, no source.
const worthTelling = .25

// doubtfulPair is two runners who may be one: the rarer, at whose latest line it is
// asked, and the other.
type doubtfulPair struct {
	rare, other         int32 // runner numbers
	rareLast, otherLast int32 // their latest lines
	results             int   // of the other
}

// doubtfulPairs picks the pairs that the desk is told of.
func (w *work) doubtfulPairs() []doubtfulPair {
	f, l := w.field, w.link
	var pairs []who.Pair
	lines, last := map[int32]int{}, map[int32]int32{} // of the linker's runners
	for _, p := range l.result.Doubtful {
		if len(pairs) < reviewLength(l.result.Runners) && p.Chance >= worthTelling {
			pairs = append(pairs, p)
			lines[p.A], lines[p.B] = 0, 0
		}
	}
	if len(pairs) == 0 {
		return nil
	}
	for k, i := range l.rows {
		r := l.result.Runner[k]
		n, ok := lines[r]
		if !ok {
			continue
		}
		if n == 0 || f.key[i] > f.key[last[r]] {
			last[r] = i
		}
		lines[r] = n + 1
	}
	out := make([]doubtfulPair, 0, len(pairs))
	for _, p := range pairs {
		rare, other := p.A, p.B
		if lines[rare] > lines[other] || lines[rare] == lines[other] && f.key[last[rare]] < f.key[last[other]] {
			rare, other = other, rare
		}
		out = append(out, doubtfulPair{l.number[rare], l.number[other], last[rare], last[other], lines[other]})
	}
	return out
}

// doubtfulNames asks whether the runners of a pair are one, by the name that is printed
// everywhere.
func (w *work) doubtfulNames() []storedProblem {
	f := w.field
	out := make([]storedProblem, 0, len(w.doubtful))
	for _, p := range w.doubtful {
		i, a, b := p.rareLast, p.rare, p.other
		part := &f.parts[f.part[i]-1]
		out = append(out, storedProblem{place.Problem{
			Place: place.Place{Sheet: part.path, Tab: part.tab, Row: int(f.row[i])}, Severity: place.Look, Kind: nameDoubtful,
			Read: f.names.list[f.name[i]],
			Expected: fmt.Sprintf("perhaps %s (R%d), %s, last on %s", w.printedName(b), b,
				text.Count(p.results, "result"), f.day(int(p.otherLast)).Long()),
			Do: fmt.Sprintf("Please ask. One person: lapwing match join R%d R%d; two people: lapwing match part R%d R%d. Why it is asked: lapwing match explain R%d R%d", b, a, b, a, b, a),
		}, part.sheetNo, f.run[i]})
	}
	return out
}
