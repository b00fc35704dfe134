package pipeline

import (
	"fmt"
	"path/filepath"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/unit"
)

// What the desk says of a result that may be a record. Until then it is a
// candidate. The decision is about the result, on every list that it heads.
const (
	recordConfirmed = "confirmed"
	recordVoid      = "void" // counts for its runner, and stands on no list of fastest times
)

func parseRecordWord(s string) (string, error) {
	switch w := strings.ToLower(strings.TrimSpace(s)); w {
	case recordConfirmed, recordVoid:
		return w, nil
	}
	return "", fmt.Errorf("record %q: write %s or %s", s, recordConfirmed, recordVoid)
}

// settledRecord is what stands of a result as a record, and by which decision.
type settledRecord struct {
	word string
	id   int
}

// settleRecord keeps the word on a result. Whoever confirmed it looked at the
// time, name and age that stood there; where a later decision changes those the
// result is a candidate again.
func (a *lineDecisions) settleRecord(j int, d Decision) {
	switch d.Kind {
	case DecideRecord:
		if w, err := parseRecordWord(d.Value); err == nil {
			a.records[j] = settledRecord{w, d.ID}
		}
	case DecideTime, DecideName, DecideClaim, DecideSex, DecideGroup, DecideTakingPart, DecideExchange:
		if was, ok := a.records[j]; ok && was.word == recordConfirmed {
			delete(a.records, j)
			a.note(Decision{ID: was.id}, decisionContradicted, fmt.Sprintf("decision %d has changed the result since; confirm it again", d.ID))
		}
	}
}

// mayBeRecord reads the word on a result that may be a record: it has a time, a
// name and counts.
func (pl *Pipeline) mayBeRecord(c Correction, at resultLine) (string, error) {
	word, err := parseRecordWord(c.Record)
	if err == nil && (at.status != "ok" || at.timeMS == 0) {
		err = fmt.Errorf("place %d is no record: its state is %s", at.position, at.status)
	}
	return word, err
}

// heldBefore is a record of history.csv.
type heldBefore struct {
	row                int // of the file
	course, sex, group string
	distanceM, timeS   int32
	name               string
	runner             int32 // dense index, -1 none or several
	day                unit.Day
	protected          bool
}

// heldRecords lists the records held before the sheets. A record belongs to a
// sex, and to an age group or all ages; one that names no sex has that of its
// runner. What can't stand on a list is asked about.
func (pl *Pipeline) heldRecords(f *field, p *people) (out []heldBefore, problems []storedProblem, err error) {
	table, err := pl.readHistoryTable()
	if err != nil {
		return nil, nil, err
	}
	find, at := f.finder(p), pl.Archive.Places("history.csv")
	for _, h := range table {
		if h.fact != heldRecord {
			continue
		}
		ask := func(expected, todo string) {
			problems = append(problems, storedProblem{Problem: place.Problem{Severity: place.Look, Kind: "held-record",
				Read: fmt.Sprintf("%s: %s %s", filepath.Base(at(h.row)), h.course, h.name), Expected: expected, Do: todo}})
		}
		r := heldBefore{row: h.row + 2, course: pl.courses.resolve(h.course), name: h.name, runner: noRunner, timeS: unit.CeilSeconds(h.timeMS), day: h.day}
		if h.name != "" {
			if r.runner = find(h.name); r.runner == severalRunners {
				ask("a name that only one runner has", tellApart(h.name))
			}
		}
		r.distanceM = int32(h.distanceM)
		if r.distanceM == 0 {
			r.distanceM = int32(pl.courses.key(r.course, h.day, 0).distanceM)
		}
		if known, fits := f.routes(r.course, r.distanceM); known && !fits {
			ask("a distance that the course has had", fmt.Sprintf("The record is over %d m, which is no distance of this course, so it is on no list. Correct distance_m in that row.", r.distanceM))
		}
		if r.sex, r.group, r.protected, err = f.listOf(h, p, r.runner); err != nil {
			ask("the sex, and an age group or none", fmt.Sprintf("The record is on no list: %v. Correct that row.", err))
			err = nil
			continue
		}
		if sex, _ := parseSex(r.sex); tooFast(h.timeMS, int(r.distanceM), sex) { // r.sex is one of ours
			ask(slower(int(r.distanceM), sex), "The record is on no list. Correct the time or distance_m in that row.")
			continue
		}
		out = append(out, r)
	}
	return out, problems, nil
}

// tooFast says whether a time is faster than the open standard of its distance.
func tooFast(timeMS int32, distanceM int, s record.Sex) bool {
	return timeMS < record.FastestMS(distanceM, s)
}

// tooFast says it of a line.
func (f *field) tooFast(i int) bool {
	return tooFast(f.timeMS[i], int(f.runs[f.run[i]-1].distanceM), record.Sex(f.sex[i]))
}

// slower says in words what a time would have to be.
func slower(distanceM int, s record.Sex) string {
	return fmt.Sprintf("a time not faster than %s over %d m, the open standard of the distance", unit.ClockMS(record.FastestMS(distanceM, s)), distanceM)
}

// routes says whether there are runs of a course, and whether one of its routes
// has a distance.
func (f *field) routes(course string, distanceM int32) (known, fits bool) {
	for i := range f.courses {
		if c := &f.courses[i]; c.course == course {
			known = true
			fits = fits || c.distanceM == distanceM
		}
	}
	return known, fits
}

// listOf says on which list a held record stands: sex and age group, "" for
// all ages. child says that somebody of the group may have been under 18, or that it is a
// junior group, though U20 holds the ages of 18 and 19 too.
func (f *field) listOf(h historyLine, p *people, runner int32) (sex, group string, child bool, err error) {
	text := h.sex
	if text == "" && h.group != "" && strings.ContainsRune("MWFX", rune(strings.ToUpper(h.group)[0])) {
		text = h.group[:1]
	}
	s, err := parseSex(text)
	if err != nil {
		return "", "", false, err
	}
	if s == record.NotGiven && runner >= 0 {
		s = p.sex[runner]
	}
	if s == record.NotGiven {
		return "", "", false, fmt.Errorf("no sex is given")
	}
	if h.group == "" {
		return s.String(), "", false, nil
	}
	day := h.day
	if day == 0 {
		day = unit.NewDay(2000, 6, 15) // a group holds the same ages on any day
	}
	w, _, err := parseGroupByHand(h.group, day, f.rule)
	if err != nil {
		return "", "", false, err
	}
	first, ok := f.rule.On(day).Group(w)
	if !ok {
		return "", "", false, fmt.Errorf("%q is no single age group", h.group)
	}
	youngest, _, _ := f.rule.Births(first, first, day).On(day)
	group = f.rule.Scheme.Name(first, s.String())
	return s.String(), group, youngest < 18 || strings.HasPrefix(group, "U"), nil
}
