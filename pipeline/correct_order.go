package pipeline

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// Kinds of questions that a correction raises about the order of finish.
const (
	correctedOutOfOrder  = "corrected-out-of-order"
	exchangedAfterChange = "exchanged-after-correction"
)

// askOrder asks about corrected times and places that don't fit the places around
// them: who corrects one of the two may have forgotten the other. Where the times
// of a run go by each person's own start, the order says nothing.
func (a *lineDecisions) askOrder() {
	f := a.f
	if len(a.moved) == 0 {
		return
	}
	order := map[int32][]int{} // by run: timed finishers with a place
	for j := range a.moved {
		order[f.run[j]] = nil
	}
	for i := range f.n {
		if _, ok := order[f.run[i]]; ok && f.position[i] > 0 && f.timeMS[i] > 0 && (f.is(i, record.OK) || f.is(i, record.Unnamed)) && !record.TakingPart(f.takingPart[i]).OnWheels() {
			order[f.run[i]] = append(order[f.run[i]], i)
		}
	}
	for _, r := range slices.Sorted(maps.Keys(order)) {
		list := order[r]
		slices.SortFunc(list, func(x, y int) int {
			return cmp.Or(cmp.Compare(f.position[x], f.position[y]), cmp.Compare(f.timeMS[x], f.timeMS[y]), cmp.Compare(f.key[x], f.key[y]))
		})
		odd := 0
		for k := 1; k < len(list); k++ {
			if x, y := list[k-1], list[k]; !a.moved[x] && !a.moved[y] && f.timeMS[x] > f.timeMS[y] {
				odd++
			}
		}
		if odd > max(2, len(list)/10) {
			continue
		}
		asked := map[int]bool{}
		for k, j := range list {
			if !a.moved[j] {
				continue
			}
			if k > 0 && late(f, list[k-1], j) && !asked[list[k-1]] {
				asked[j] = true
				a.askPair(j, list[k-1], "or more")
			} else if k+1 < len(list) && late(f, j, list[k+1]) {
				asked[j] = true
				a.askPair(j, list[k+1], "or less")
			}
		}
	}
}

// late says whether the one of two who has the better place has the longer time,
// in whole seconds.
func late(f *field, first, second int) bool {
	return f.position[first] < f.position[second] && unit.CeilSeconds(f.timeMS[first]) > unit.CeilSeconds(f.timeMS[second])
}

func (a *lineDecisions) askPair(j, other int, bound string) {
	f := a.f
	a.ask(j, correctedOutOfOrder, fmt.Sprintf("place %d, %s, %s", f.position[j], a.called(j), clockOrDash(f.timeMS[j])),
		fmt.Sprintf("%s %s, as place %d, %s", clockOrDash(f.timeMS[other]), bound, f.position[other], a.called(other)),
		fmt.Sprintf("Is the place right too? If the two came in the other way round, correct both: %d is the right place of %s and %d that of %s (right place in the desk workbook, or lapwing correct … --right-place). If not, correct the time.",
			f.position[other], a.called(j), f.position[j], a.called(other)))
}

// askExchanged asks about lines whose names were exchanged after their time was
// corrected: the time stays with the place, so that the other one has the
// corrected time now.
func (a *lineDecisions) askExchanged() {
	at := make(map[int]int, len(a.whose)) // where the owner of a line stands now
	for j, l := range a.whose {
		at[l] = j
	}
	for _, j := range slices.Sorted(maps.Keys(a.timedFor)) {
		l := a.timedFor[j]
		if l == a.ownerOf(j) {
			continue
		}
		k, ok := at[l]
		if !ok {
			k = l
		}
		a.ask(j, exchangedAfterChange, fmt.Sprintf("place %d, %s, is now that of %s", a.f.position[j], clockOrDash(a.f.timeMS[j]), a.called(j)),
			fmt.Sprintf("the corrected time for %s, whose it was when it was corrected", a.called(k)),
			"An exchange changes the names; places and times stay. If only the places were wrong, take it back and enter the right place of both.")
	}
}

// called is what a line's runner is called on the sheet.
func (a *lineDecisions) called(i int) string {
	if s := a.f.names.list[a.f.name[i]]; s != "" {
		return s
	}
	return "nobody named"
}
