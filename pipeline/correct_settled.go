package pipeline

import "context"

// about is what a decision is about, without what it says: of two in force the
// later is the last word.
type about struct {
	kind, sheet, tab, runner, course, session string
	row, table, date                          int
	value                                     string // where several values stand side by side
}

func (d Decision) aboutWhat() about {
	a := about{kind: d.Kind, sheet: d.Sheet, tab: d.Tab, row: d.Row, table: d.Table, runner: d.Runner}
	switch d.Kind {
	case DecideRunState:
		a.course, a.session, a.date = d.Course, d.Session, int(d.Date)
	case DecideEarlierRuns, DecideEarlierBest:
		a.course, a.date = d.Course, int(d.Date)
	case DecideClaim: // whoever claims; the runner may have been found since
		a.runner, a.value = "", d.Value
	case DecideName:
		a.runner = ""
	case DecideAccept:
		a.course, a.date, a.value = d.Course, int(d.Date), d.Value
	case DecideClubName, DecideOtherClub, DecideSame, DecideDifferent:
		a.value = d.Value
	}
	return a
}

// mirrored is an exchange as seen from the other line.
func (d Decision) mirrored() Decision {
	if other, err := parseTableLine(d.Value); d.Kind == DecideExchange && err == nil {
		d.Value = tableLine{lineRef{d.Sheet, d.Tab, d.Row}, d.Table}.String()
		d.Sheet, d.Tab, d.Row, d.Table = other.hash, other.tab, other.row, other.table
	}
	return d
}

// Unsettled leaves out what is settled already, so that a workbook can be read
// twice: decisions that are the last word on the same matter, of those in force
// and of those before them in the list. One that a later sheet or decision
// contradicted may be made again.
func (pl *Pipeline) Unsettled(ctx context.Context, ds []Decision) ([]Decision, error) {
	have, err := pl.Decisions()
	if err != nil {
		return nil, err
	}
	outcome, err := pl.outcomes(ctx)
	if err != nil {
		return nil, err
	}
	last := map[about]string{}
	note := func(d Decision) {
		last[d.aboutWhat()] = d.Value
		if d.Kind == DecideExchange {
			m := d.mirrored()
			last[m.aboutWhat()] = m.Value
		}
	}
	for _, d := range have {
		if outcome[d.ID].state == decisionContradicted {
			delete(last, d.aboutWhat())
			continue
		}
		note(d)
	}
	var out []Decision
	for _, d := range ds {
		if v, ok := last[d.aboutWhat()]; ok && v == d.Value && d.Kind != DecideTakeBack {
			continue
		}
		note(d)
		out = append(out, d)
	}
	return out, nil
}
