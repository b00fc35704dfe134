package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
)

// Found is a runner that a text may mean, with what tells runners of one name
// apart.
type Found struct {
	ID    string `json:"runner_id"`
	Name  string `json:"name"`
	Group string `json:"age_group,omitempty"`
	Club  string `json:"club,omitempty"`
	Runs  int    `json:"runs"`
	Last  string `json:"last_run,omitempty"`
}

// String is one line of a list of people.
func (f Found) String() string {
	parts := []string{f.Name}
	for _, p := range []string{f.Group, f.Club} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	if f.Runs == 1 {
		parts = append(parts, "1 run, "+f.Last)
	} else {
		parts = append(parts, fmt.Sprintf("%d runs, last %s", f.Runs, f.Last))
	}
	return f.ID + ": " + strings.Join(parts, ", ")
}

// FindRunners looks people up by id (an old id that was joined to another
// leads there), by name in any spelling, or by part of a name. Nobody is
// guessed: several who fit are all returned.
func (pl *Pipeline) FindRunners(ctx context.Context, who string) ([]Found, error) {
	const list = `select w.runner_id, coalesce(w.name, ''), coalesce(w.age_group, ''), coalesce(w.club, ''), w.results, coalesce(w.last_run::varchar, '') from main.runners w where `
	const order = ` order by w.results desc, length(w.runner_id), w.runner_id limit 50`
	if n, ok := runnerNumber(who); ok {
		return pl.found(ctx, list+`w.runner_id = 'R' || coalesce((select now from record.alias where runner_no = ?), ?)`+order, n, n)
	}
	key := name.Parse(who).Full
	if key == "" {
		return nil, fmt.Errorf("%q is neither a name nor a runner id such as R12", who)
	}
	out, err := pl.found(ctx, list+`w.name_key = ?`+order, key)
	if err != nil || len(out) > 0 {
		return out, err
	}
	// another spelling on some sheet, then part of a name
	out, err = pl.found(ctx, list+`w.runner_id in (select runner_id from main.results where lower(name_received) = lower(?))`+order, strings.TrimSpace(who))
	if err != nil || len(out) > 0 {
		return out, err
	}
	return pl.found(ctx, list+`contains(w.name_key, ?) or contains(lower(strip_accents(w.name)), lower(strip_accents(?)))`+order, key, strings.TrimSpace(who))
}

func (pl *Pipeline) found(ctx context.Context, query string, args ...any) ([]Found, error) {
	rows, err := pl.DB.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []Found
	for rows.Next() {
		var f Found
		if err := rows.Scan(&f.ID, &f.Name, &f.Group, &f.Club, &f.Runs, &f.Last); err != nil {
			return nil, err
		}
		out = append(out, f)
	}
	return out, rows.Err()
}

// FindRunner finds the one runner that a text means; several who fit are
// listed with what tells them apart.
func (pl *Pipeline) FindRunner(ctx context.Context, who string) (Found, error) {
	list, err := pl.FindRunners(ctx, who)
	switch {
	case err != nil:
		return Found{}, err
	case len(list) == 1:
		return list[0], nil
	case len(list) == 0:
		return Found{}, fmt.Errorf("nobody called %q is in the archive", who)
	}
	lines := make([]string, len(list))
	for i, f := range list {
		lines[i] = "  " + f.String()
	}
	return Found{}, fmt.Errorf("%q fits %d people; name one by id:\n%s", who, len(list), strings.Join(lines, "\n"))
}

// Course turns any name of a course into its short name; "" stays "". A course
// without a run in the archive is an error that lists those there are.
func (pl *Pipeline) Course(what string) (string, error) {
	if what == "" {
		return "", nil
	}
	c := pl.courses.resolve(what)
	var all []string
	for k := range pl.courses.numbers {
		if k.course == c {
			return c, nil
		}
		all = append(all, k.course)
	}
	slices.Sort(all)
	return "", fmt.Errorf("there is no course %q in the archive; there are: %s", what, shortList(slices.Compact(all), 30))
}

// LedgerHash sums up the ledger: which sheets stood when something was made.
func (pl *Pipeline) LedgerHash() (string, error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for _, e := range ledger {
		fmt.Fprintln(&b, e.Seq, e.Hash, e.State)
	}
	return store.Hash([]byte(b.String())), nil
}
