package pipeline

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// decisionKinds are all kinds of decisions, as they stand in decisions.csv.
var decisionKinds = []string{
	DecideClaim, DecideTime, DecidePlace, DecideName, DecideClub, DecideSex, DecideGroup, DecideTakingPart, DecideStatus, DecideExchange,
	DecideRecord, DecideSame, DecideDifferent, DecidePrintName, DecideCategory, DecideHide, DecideEarlierRuns, DecideEarlierBest,
	DecideRunState, DecideClubName, DecideOtherClub, DecideAccept, DecideTakeBack,
}

// check says what is wrong with a decision: a kind that is not known, nothing
// that it is about, or a value that can't be followed. People may have written
// the line.
func (d Decision) check() error {
	if !slices.Contains(decisionKinds, d.Kind) {
		return fmt.Errorf("kind %q is not known; write one of %s", d.Kind, strings.Join(decisionKinds, ", "))
	}
	switch d.Kind {
	case DecideTakeBack:
		if _, err := strconv.Atoi(d.Value); err != nil {
			return fmt.Errorf("take back %q: write the id of the decision", d.Value)
		}
		return nil
	case DecideSame, DecideDifferent:
		_, _, err := d.sides()
		return err
	case DecideClubName, DecideOtherClub:
		_, _, err := d.clubs()
		return err
	case DecideAccept:
		return d.checkAcceptance()
	case DecideRunState:
		if d.Course == "" || d.Date == 0 {
			return fmt.Errorf("%q needs the course and the date of the run", d.Kind)
		}
		_, _, err := ParseRunState(d.Value)
		return err
	case DecidePrintName, DecideCategory, DecideHide, DecideEarlierRuns, DecideEarlierBest:
		return d.checkPerson()
	}
	if d.Sheet == "" || d.Row < 1 {
		return fmt.Errorf("%q needs the sheet and the row that it is about", d.Kind)
	}
	return d.checkLine()
}

// checkPerson checks a decision about a runner.
func (d Decision) checkPerson() (err error) {
	if _, ok := runnerNumber(d.Runner); !ok {
		return fmt.Errorf("%q needs a runner's id, as in R12", d.Kind)
	}
	switch d.Kind {
	case DecidePrintName:
		if d.Value == "" {
			return fmt.Errorf("%q needs the name", d.Kind)
		}
	case DecideCategory:
		_, err = parseSex(d.Value)
	case DecideEarlierRuns:
		_, err = parseFinishes(d.Value)
	case DecideEarlierBest:
		_, _, err = parseEarlierBest(d.Value)
	}
	return err
}

// checkLine checks the value of a decision about a line.
func (d Decision) checkLine() (err error) {
	switch d.Kind {
	case DecideClaim, DecideName:
		// A name that was erased is no name any more; the line is nobody's then.
		if n := name.Parse(d.Value); d.Value == "" || n.Several {
			err = fmt.Errorf("name %q: write the name of one person", d.Value)
		}
	case DecideTime:
		_, err = ParseClock(d.Value)
	case DecidePlace:
		_, err = parsePlace(d.Value)
	case DecideSex:
		_, err = parseSex(d.Value)
	case DecideGroup:
		day := d.Date
		if day == 0 {
			day = unit.DayOf(d.When)
		}
		_, _, err = parseGroupByHand(d.Value, day, age.DefaultRule())
	case DecideTakingPart:
		_, err = parseTakingPart(d.Value)
	case DecideStatus:
		if !slices.Contains([]string{"ok", "dq", "dnf", notAFinisher}, strings.ToLower(d.Value)) {
			err = fmt.Errorf("status %q: write ok, dq, dnf or %s", d.Value, notAFinisher)
		}
	case DecideExchange:
		_, err = parseTableLine(d.Value)
	case DecideRecord:
		_, err = parseRecordWord(d.Value)
	}
	return err
}
