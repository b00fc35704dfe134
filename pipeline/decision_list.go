package pipeline

import (
	"context"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
)

// DecisionState is a decision with what became of it.
type DecisionState struct {
	ID    int    `json:"id"`
	When  string `json:"when"`
	By    string `json:"by"`
	About string `json:"about"` // the line, run or person
	What  string `json:"what"`
	State string `json:"state"`
	Words string `json:"reason,omitempty"`
	Why   string `json:"why,omitempty"`
	// People says that the decision is about who is who, and in force.
	People bool `json:"-"`
}

// outcomes gives what became of decisions about lines, by id.
func (pl *Pipeline) outcomes(ctx context.Context) (map[int]decisionOutcome, error) {
	rows, err := pl.DB.QueryContext(ctx, "select id, state, words from record.decision order by id")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	out := map[int]decisionOutcome{}
	for rows.Next() {
		var o decisionOutcome
		if err := rows.Scan(&o.id, &o.state, &o.words); err != nil {
			return nil, err
		}
		out[o.id] = o
	}
	return out, rows.Err()
}

// DecisionList lists every decision ever made with its state.
func (pl *Pipeline) DecisionList(ctx context.Context) ([]DecisionState, error) {
	all, err := pl.allDecisions()
	if err != nil {
		return nil, err
	}
	outcome, err := pl.outcomes(ctx)
	if err != nil {
		return nil, err
	}
	people, err := pl.matchDecisions(ctx)
	if err != nil {
		return nil, err
	}
	path := map[string]string{}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	for _, e := range ledger {
		path[e.Hash] = e.Path
	}
	kept := map[int]bool{}
	for _, d := range inForce(all) {
		kept[d.ID] = true
	}
	out := make([]DecisionState, len(all))
	for i, d := range all {
		s := DecisionState{ID: d.ID, By: d.By, Why: d.Why, About: d.about(path), What: d.what(path), State: decisionApplied}
		if !d.When.IsZero() {
			s.When = d.When.UTC().Format("2006-01-02 15:04")
		}
		m, who := people[d.ID]
		switch {
		case d.Kind == DecideTakeBack:
			s.State = "done"
		case !kept[d.ID]:
			s.State = "taken back"
		case who:
			s.People, s.About, s.What, s.State, s.Words = true, m.first, d.Kind+": "+m.second, m.state, m.words
		default:
			if o, ok := outcome[d.ID]; ok {
				s.State, s.Words = o.state, o.words
			}
		}
		out[i] = s
	}
	return out, nil
}

func (d Decision) about(path map[string]string) string {
	switch {
	case d.Sheet != "":
		return withTable(shownLine(lineRef{d.Sheet, d.Tab, d.Row}, path), d.Table)
	case d.Runner != "":
		return d.Runner
	case d.Course != "":
		return strings.TrimSpace(d.Course + " " + d.Date.String() + " " + d.Session)
	}
	return ""
}

func (d Decision) what(path map[string]string) string {
	v := d.Value
	if d.aboutPeople() { // one that was taken back: those in force are told by their people
		if _, b, err := d.sides(); err == nil && b.at != (lineRef{}) {
			v = strings.TrimSpace(b.runner + " " + shownLine(b.at, path))
		}
	}
	switch d.Kind {
	case DecideExchange:
		if r, err := parseTableLine(v); err == nil {
			v = "of names with " + withTable(shownLine(r.lineRef, path), r.table)
		}
	case DecideHide:
		return "hide"
	}
	return strings.TrimSpace(d.Kind + " " + v)
}

func shownLine(r lineRef, path map[string]string) string {
	file, ok := path[r.hash]
	if !ok {
		file = "sheet " + sheet.Slug(r.hash[:min(8, len(r.hash))])
	}
	return place.Place{Sheet: file, Tab: r.tab, Row: r.row}.String()
}
