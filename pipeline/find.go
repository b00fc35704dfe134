package pipeline

import (
	"context"
	"fmt"
	"slices"
	"sort"
	"strconv"
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
	if n, ok := runnerNumber(who); ok {
		numbers, err := pl.numbers(ctx, `select coalesce((select now from record.alias where runner_no = ?), ?)`, n, n)
		if err != nil {
			return nil, err
		}
		return pl.found(ctx, numbers)
	}
	key, text := name.Parse(who).Full, strings.TrimSpace(who)
	if key == "" {
		return nil, fmt.Errorf("%q is neither a name nor a runner id such as R12", who)
	}
	for _, look := range []struct {
		query string
		args  []any
	}{
		{`select runner_no from record.runner where name_key = ?`, []any{key}},
		// another spelling on some sheet, where the person wants no other name
		{`select distinct r.runner_no from record.text t join record.line l on l.name_no = t.text_no
			join record.result r on r.line_no = l.line_no join record.runner w on w.runner_no = r.runner_no
			where lower(t.text) = lower(?) and not w.wished`, []any{text}},
		// part of a name
		{`select runner_no from record.runner
			where contains(name_key, ?) or contains(lower(strip_accents(name)), lower(strip_accents(?)))`, []any{key, text}},
	} {
		numbers, err := pl.numbers(ctx, look.query, look.args...)
		if err != nil || len(numbers) > 0 {
			if err != nil {
				return nil, err
			}
			return pl.found(ctx, numbers)
		}
	}
	return nil, nil
}

// numbers gives the numbers of the runners that a query finds.
func (pl *Pipeline) numbers(ctx context.Context, query string, args ...any) ([]int32, error) {
	rows, err := pl.DB.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []int32
	for rows.Next() {
		var n int32
		if err := rows.Scan(&n); err != nil {
			return nil, err
		}
		out = append(out, n)
	}
	return out, rows.Err()
}

// few is the number of people up to which each is looked up by itself: the
// database then reads that person's lines only, while a list makes it read
// everybody's.
const few = 6

// mostFound is how many people a list names.
const mostFound = 50

// found describes runners, those with the most runs first.
func (pl *Pipeline) found(ctx context.Context, numbers []int32) ([]Found, error) {
	const list = `select w.runner_id, coalesce(w.name, ''), coalesce(w.age_group, ''), coalesce(w.club, ''), w.results, coalesce(w.last_run::varchar, '') from main.runners w where w.runner_no `
	if len(numbers) == 0 {
		return nil, nil
	}
	words := make([]string, len(numbers))
	for i, n := range numbers {
		words[i] = "= " + strconv.Itoa(int(n))
	}
	if len(numbers) > few {
		words = []string{"in (" + strings.ReplaceAll(strings.Join(words, ","), "= ", "") + ")"}
	}
	var out []Found
	for _, which := range words {
		some, err := pl.asFound(ctx, list+which)
		if err != nil {
			return nil, err
		}
		out = append(out, some...)
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Runs != b.Runs {
			return a.Runs > b.Runs
		}
		if len(a.ID) != len(b.ID) {
			return len(a.ID) < len(b.ID)
		}
		return a.ID < b.ID
	})
	return out[:min(len(out), mostFound)], nil
}

// asFound gives the runners that a query of the view runners finds.
func (pl *Pipeline) asFound(ctx context.Context, query string) ([]Found, error) {
	rows, err := pl.DB.QueryContext(ctx, query)
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
