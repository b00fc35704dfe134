package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/store"
)

// matchDecision is a decision about people as people read it.
type matchDecision struct {
	first, second string // a runner, or a line
	state, words  string
}

// matchDecisions gives the decisions about people that are in force, by id.
func (pl *Pipeline) matchDecisions(ctx context.Context) (map[int]matchDecision, error) {
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
	out := map[int]matchDecision{}
	for _, s := range have {
		a, b, _ := s.d.sides()
		m := matchDecision{first: show(a, s.a), second: show(b, s.b), state: decisionApplied}
		switch {
		case slices.ContainsFunc(bad, func(c MatchContradiction) bool { return c.Decision == s.d.ID }):
			m.state, m.words = decisionContradicted, "another decision says otherwise; see lapwing match list"
		case s.a == 0 || s.b == 0:
			m.state, m.words = decisionWaits, "its sheet is not loaded, or was withdrawn"
		}
		out[s.d.ID] = m
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
