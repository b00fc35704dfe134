package standing

import (
	"cmp"
	"slices"

	"lapwing/pipeline/unit"
)

// Decision is what people have decided about a record.
type Decision uint8

const (
	Undecided Decision = iota // a candidate until somebody has looked at it
	Confirmed
	Void // no record: the one before stands again
)

// Attempt is an eligible time of a runner or guided runner of certain group on
// the day, or a record brought along from before the sheets.
type Attempt struct {
	Category int32 // any number for one course route, sex and age group
	Day      unit.Day
	TimeS    int32 // seconds, rounded up; attempts without are left out
	Runner   int32
	Row      int32 // any number that tells attempts apart
	Decision Decision
	Opening  bool // from before the sheets
}

// RecordTime is a time that stood as the record of its category from its day
// on.
type RecordTime struct {
	Attempt   Attempt
	Equalled  bool    // the standing record was equalled: joint holders, the earlier first
	First     bool    // nothing stood before: the first time recorded in the category
	PreviousS int32   // seconds of the record that it broke or equalled, 0 where First
	Previous  []int32 // who held that record, the earliest first
	Standing  bool    // it is a record still
}

// Records walks through the attempts of every category in order of time, and
// gives each that broke or equalled the record then standing, by category, then
// day, then row; attempts may come in any order. Of several on one day only
// the fastest, and those equal to it, are compared with earlier days: a time
// that another beat on the same day stood for no day. The same runner equalling
// their own record is no new holder. A void attempt is passed over. An
// undecided one stands as a candidate: what came after it is compared with
// it too, so a later void brings back what it hid. An opening record is
// compared on its day like any other, one without a date (the zero Day) before
// every sheet.
//
// On a course that is not measured these are the "fastest recorded here".
//
// Example: 18:20 held, 18:20 run: equalled, two holders.
func Records(attempts []Attempt) []RecordTime {
	list := make([]Attempt, 0, len(attempts))
	for _, a := range attempts {
		if a.TimeS > 0 && a.Decision != Void {
			list = append(list, a)
		}
	}
	slices.SortFunc(list, func(a, b Attempt) int {
		return cmp.Or(cmp.Compare(a.Category, b.Category), cmp.Compare(a.Day, b.Day), cmp.Compare(a.TimeS, b.TimeS), cmp.Compare(a.Row, b.Row))
	})
	var out []RecordTime
	for i := 0; i < len(list); {
		category := list[i].Category
		begin := len(out)
		var best int32
		var holders []int32
		for i < len(list) && list[i].Category == category {
			day, fastest := list[i].Day, list[i].TimeS
			broken, previous, before := best == 0 || fastest < best, best, holders
			if broken {
				best, holders = fastest, nil
			}
			for ; i < len(list) && list[i].Category == category && list[i].Day == day; i++ {
				a := list[i]
				if a.TimeS != best || slices.Contains(holders, a.Runner) {
					continue
				}
				r := RecordTime{Attempt: a, First: previous == 0, PreviousS: previous, Previous: slices.Clone(before)}
				r.Equalled = !broken || len(holders) > 0
				if r.Equalled {
					r.First, r.PreviousS, r.Previous = false, best, slices.Clone(holders)
				}
				holders = append(slices.Clone(holders), a.Runner)
				out = append(out, r)
			}
		}
		for k := begin; k < len(out); k++ {
			out[k].Standing = out[k].Attempt.TimeS == best
		}
	}
	return out
}
