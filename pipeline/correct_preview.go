package pipeline

import (
	"context"
	"fmt"
	"time"
)

// Change is one fact that decisions change.
type Change struct {
	Runner string `json:"runner_id,omitempty"`
	Name   string `json:"name,omitempty"`
	Course string `json:"course,omitempty"`
	Date   string `json:"date,omitempty"`
	Place  int    `json:"place,omitempty"`
	What   string `json:"what"`
	Before string `json:"before"`
	After  string `json:"after"`
}

// String is a line for people: "Ann Moss (R12), alder-bank 2026-01-03, place
// 14: personal best none → 25:10".
func (c Change) String() string {
	s := ""
	add := func(format string, a ...any) {
		if s != "" {
			s += ", "
		}
		s += fmt.Sprintf(format, a...)
	}
	if c.Name != "" {
		add("%s", c.Name)
		if c.Runner != "" {
			s += " (" + c.Runner + ")"
		}
	}
	if c.Course != "" {
		add("%s %s", c.Course, c.Date)
	}
	if c.Place > 0 {
		add("place %d", c.Place)
	}
	if s != "" {
		s += ": "
	}
	return fmt.Sprintf("%s%s %s → %s", s, c.What, c.Before, c.After)
}

// Draft is decisions on trial: all figures that do not come from the model of
// course speed, worked out as if they were kept, and how they differ from what
// stands. Nothing is written until Keep.
type Draft struct {
	Decisions []Decision
	Changes   []Change
	Asks      []string // what the desk would be asked

	pl *Pipeline
	w  *work
	at int // steps done
}

// Draft tries decisions. Figures must be up to date.
func (pl *Pipeline) Draft(ctx context.Context, fresh []Decision) (*Draft, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	d := &Draft{pl: pl, Decisions: numberDecisions(all, fresh, time.Now())}
	d.w = &work{proposed: d.Decisions}
	for d.at < len(steps) && steps[d.at].name != stepNameSpeed {
		if err := pl.runStep(ctx, d.w, d.at); err != nil {
			return nil, err
		}
		d.at++
	}
	pl.Progress.Done()
	known, err := pl.questions(ctx)
	if err != nil {
		return nil, err
	}
	for _, p := range d.w.problems {
		switch p.Kind {
		case "two-claims", "decision-contradicted", "person-twice", correctedOutOfOrder, exchangedAfterChange:
			if s := p.String(); !known[s] {
				d.Asks = append(d.Asks, s)
			}
		}
	}
	d.Changes, err = pl.changes(ctx, d.w)
	return d, err
}

// Keep keeps the decisions for good, then brings the figures up to date.
func (d *Draft) Keep(ctx context.Context) error {
	rows := make([][]string, len(d.Decisions))
	for i, e := range d.Decisions {
		rows[i] = e.row()
	}
	if err := d.pl.appendDecisions(rows); err != nil {
		return fmt.Errorf("can't keep the decision: %w. Nothing was changed", err)
	}
	d.w.proposed = nil
	for ; d.at < len(steps); d.at++ {
		if err := d.pl.runStep(ctx, d.w, d.at); err != nil {
			return err
		}
	}
	d.pl.Progress.Done()
	if err := d.pl.settleProblems(ctx); err != nil {
		return err
	}
	stamp, err := d.pl.figuresStamp()
	if err != nil {
		return err
	}
	base, err := d.pl.figuresBase()
	if err != nil {
		return err
	}
	return d.pl.noteFigures(ctx, stamp, base, allRefreshed(d.w)...)
}

func (pl *Pipeline) questions(ctx context.Context) (map[string]bool, error) {
	list, err := pl.Problems(ctx, "", false)
	if err != nil {
		return nil, err
	}
	out := make(map[string]bool, len(list))
	for _, p := range list {
		out[p.String()] = true
	}
	return out, nil
}
