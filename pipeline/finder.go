package pipeline

import (
	"context"
	"database/sql"
	"slices"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/store"
)

// What the finder says where it finds no one runner.
const (
	noRunner       = -1
	severalRunners = -2
)

// askedNames are the names that side tables ask for, with the number of the
// one runner who has each: 0 nobody has it, severalRunners more than one.
type askedNames struct {
	now map[string]int32 // by folded full name

	before  map[string]int32 // what the last refresh of everything answered; nil during one
	changed bool             // new lines have changed an answer, or a name is new
}

func newAskedNames() *askedNames { return &askedNames{now: map[string]int32{}} }

// finder looks up a runner (dense index) by id, also one that was joined to
// another, or by a name; noRunner or severalRunners where no single one fits.
// Where the field holds some lines only, a runner whose lines are not there is
// noRunner too: nothing is to be worked out for them.
func (f *field) finder(p *people) func(string) int32 {
	// by number of the name's text first: texts are few, lines many
	byText := make([]int32, len(f.person)) // 0 none, else a runner number or severalRunners
	for i := 0; i < f.n; i++ {
		if r := p.of[i]; r >= 0 && !f.settled(i) {
			byText[f.name[i]] = onlyOne(byText[f.name[i]], p.no[r])
		}
	}
	byName := map[string]int32{}
	for t, r := range byText {
		if k := f.person[t].Full; k != "" && r != 0 {
			byName[k] = onlyOne(byName[k], r)
		}
	}
	index := func(no int32) int32 {
		if p.now != nil {
			no = p.now(no)
		}
		if i, found := slices.BinarySearch(p.no, no); found {
			return int32(i)
		}
		return noRunner
	}
	return func(who string) int32 {
		if n, ok := runnerNumber(who); ok {
			return index(n)
		}
		key := name.Parse(who).Full
		no := byName[key]
		if f.asked.before != nil {
			before, asked := f.asked.before[key]
			no = onlyOne(before, no)
			f.asked.changed = f.asked.changed || !asked || no != before
		}
		f.asked.now[key] = no
		switch {
		case no > 0:
			return index(no)
		case no < 0:
			return severalRunners
		}
		return noRunner
	}
}

// onlyOne keeps a runner number while it is the only one; 0 is none.
func onlyOne(have, more int32) int32 {
	switch {
	case have == 0 || have == more:
		return more
	case more == 0:
		return have
	}
	return severalRunners
}

var askedSchema = store.Columns("name_key", store.Text, "runner_no", store.Int32)

// writeAskedNames keeps the answers for refreshes of some lines.
func (pl *Pipeline) writeAskedNames(ctx context.Context, w *work) error {
	f := w.field
	keys := make([]string, 0, len(f.asked.now))
	for k := range f.asked.now {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return pl.insertRows(ctx, "record.asked", askedSchema, len(keys), func(r row, i int) {
		r.texts(0, keys[i])
		r.ints(1, f.asked.now[keys[i]])
	})
}

// readAskedNames reads them.
func (pl *Pipeline) readAskedNames(ctx context.Context) (map[string]int32, error) {
	out := map[string]int32{}
	return out, pl.each(ctx, "select name_key, runner_no from record.asked", func(rows *sql.Rows) error {
		var key string
		var no int32
		err := rows.Scan(&key, &no)
		out[key] = no
		return err
	})
}
