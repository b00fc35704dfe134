package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/store"
)

// MatchDecision is a decision about people as people read it.
type MatchDecision struct {
	ID     int    `json:"id"`
	When   string `json:"when"`
	By     string `json:"by"`
	Kind   string `json:"kind"`
	First  string `json:"first"` // a runner, or a line
	Second string `json:"second"`
	Why    string `json:"why,omitempty"`
	State  string `json:"state"` // followed, waits or contradicted
}

// MatchDecisions lists the decisions about people that are in force.
func (pl *Pipeline) MatchDecisions(ctx context.Context) ([]MatchDecision, error) {
	have, err := pl.settledPeople(ctx)
	if err != nil {
		return nil, err
	}
	bad, err := pl.contradictions(ctx)
	if err != nil {
		return nil, err
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, err
	}
	names := map[int32]string{}
	people := pl.lookUp(ctx, 0)
	list := make([]MatchPerson, 0, 2*len(have))
	for _, s := range have {
		list = append(list, MatchPerson{no: s.a}, MatchPerson{no: s.b})
	}
	for i := range list {
		people.want(&list[i])
	}
	if err := people.fill(); err != nil {
		return nil, err
	}
	for _, p := range list {
		names[p.no] = p.Name
	}
	show := func(s side, no int32) string {
		if s.runner == "" {
			return strings.TrimSpace(refWords(s.at, ledger) + " " + names[no])
		}
		t := s.runner
		if now := "R" + itoa(no); no > 0 && now != t {
			t += " (now " + now + ")"
		}
		return strings.TrimSpace(t + " " + names[no])
	}
	out := []MatchDecision{}
	for _, s := range have {
		a, b, _ := s.d.sides()
		m := MatchDecision{ID: s.d.ID, By: s.d.By, Kind: s.d.Kind, First: show(a, s.a), Second: show(b, s.b), Why: s.d.Why, State: "followed"}
		if !s.d.When.IsZero() {
			m.When = s.d.When.Format("2006-01-02")
		}
		switch {
		case slices.ContainsFunc(bad, func(c MatchContradiction) bool { return c.Decision == s.d.ID }):
			m.State = "contradicted"
		case s.a == 0 || s.b == 0:
			m.State = "waits for its sheet"
		}
		out = append(out, m)
	}
	return out, nil
}

// refWords names a line by the sheet's path.
func refWords(at lineRef, ledger []store.Entry) string {
	path := at.hash
	for _, e := range ledger {
		if e.Hash == at.hash {
			path = e.Path
		}
	}
	if at.tab != "" {
		return fmt.Sprintf("%s:%s!%d", path, at.tab, at.row)
	}
	return fmt.Sprintf("%s:%d", path, at.row)
}
