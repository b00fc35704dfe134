package pipeline

import (
	"fmt"
	"slices"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
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

// doubtfulNames asks, at the latest line of the rarer of two runners who may be
// one, whether they are.
func (w *work) doubtfulNames() []storedProblem {
	f, l := w.field, w.link
	var pairs []who.Pair
	lines, last := map[int32]int{}, map[int32]int32{} // of the linker's runners
	called := map[int32][]name.Spelling{}
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
		called[r] = countSpelling(called[r], f.names.list[f.name[i]])
	}
	var out []storedProblem
	for _, p := range pairs {
		rare, other := p.A, p.B
		if lines[rare] > lines[other] || lines[rare] == lines[other] && f.key[last[rare]] < f.key[last[other]] {
			rare, other = other, rare
		}
		i, o := last[rare], last[other] // the other by the name that is printed everywhere
		part := &f.parts[f.part[i]-1]
		a, b := l.number[rare], l.number[other]
		out = append(out, storedProblem{place.Problem{
			Place: place.Place{Sheet: part.path, Tab: part.tab, Row: int(f.row[i])}, Severity: place.Look, Kind: nameDoubtful,
			Read: f.names.list[f.name[i]],
			Expected: fmt.Sprintf("perhaps %s (R%d), %s, last on %s", name.Best(called[other]), b,
				text.Count(lines[other], "result"), f.day(int(o)).Long()),
			Do: fmt.Sprintf("Please ask. One person: lapwing match join R%d R%d; two people: lapwing match part R%d R%d. Why it is asked: lapwing match explain R%d R%d", b, a, b, a, b, a),
		}, part.sheetNo, f.run[i]})
	}
	return out
}

// countSpelling counts one more text among a runner's spellings.
func countSpelling(list []name.Spelling, text string) []name.Spelling {
	at := slices.IndexFunc(list, func(s name.Spelling) bool { return s.Text == text })
	if at < 0 {
		at = len(list)
		list = append(list, name.Spelling{Text: text})
	}
	list[at].Count++
	return list
}
