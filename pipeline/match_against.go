package pipeline

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// ErrContradicts means that a decision would contradict others.
var ErrContradicts = errors.New("contradicts what was decided")

// against finds what speaks against a new decision: decisions in force that it
// contradicts. already is the decision that says the same.
func against(have []settled, same bool, a, b target) (no []Decision, already *Decision) {
	pairs := func(s settled) bool {
		if a.line > 0 || b.line > 0 { // about a line: only decisions about that line count
			one, other := a, b
			if one.line == 0 {
				one, other = b, a
			}
			if s.wholeA || s.lineA != one.line {
				return false
			}
			return s.b == other.no
		}
		if s.a == s.b && s.a != 0 { // one runner now: it depends on the lines
			x, y := side{at: a.at}, side{at: b.at}
			p, q, _ := s.d.sides()
			return p.at == x.at && q.at == y.at || p.at == y.at && q.at == x.at
		}
		return s.wholeA && (s.a == a.no && s.b == b.no || s.a == b.no && s.b == a.no)
	}
	for i := range have {
		if !pairs(have[i]) {
			continue
		}
		if (have[i].d.Kind == DecideSame) == same {
			already = &have[i].d
		} else {
			no = append(no, have[i].d)
		}
	}
	if !same && a.no == b.no && len(no) == 0 {
		no = chain(have, a.at, b.at)
	}
	return no, already
}

// chain finds the decisions by which two lines are one person's: a path of
// "same person" from one to the other, nil where there is none.
func chain(have []settled, from, to lineRef) []Decision {
	type step struct {
		at  lineRef
		via int
	}
	before := map[lineRef]step{from: {}}
	queue := []lineRef{from}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		if at == to {
			var out []Decision
			for at != from {
				s := before[at]
				out = append(out, have[s.via].d)
				at = s.at
			}
			return out
		}
		for i, s := range have {
			if s.d.Kind != DecideSame {
				continue
			}
			a, b, _ := s.d.sides()
			for _, e := range [][2]lineRef{{a.at, b.at}, {b.at, a.at}} {
				if _, seen := before[e[1]]; e[0] == at && !seen {
					before[e[1]] = step{at, i}
					queue = append(queue, e[1])
				}
			}
		}
	}
	return nil
}

// contradictionError names what a new decision contradicts and how to go on.
func contradictionError(same bool, a, b string, no []Decision) error {
	says := "are different people"
	if !same {
		says = "are one person"
	}
	var names, undo []string
	for _, d := range no {
		names = append(names, d.words())
		undo = append(undo, "lapwing match undo "+strconv.Itoa(d.ID))
	}
	return fmt.Errorf("%w: %s says that %s and %s %s. Nothing was kept. If that was wrong take it back first: %s",
		ErrContradicts, strings.Join(names, ", "), a, b, says, strings.Join(undo, ", "))
}
