package pipeline

import (
	"context"
	"database/sql"
	"maps"
	"slices"
	"strings"

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

	found map[int32]bool // runner numbers of the field that were answers
}

func newAskedNames() *askedNames {
	return &askedNames{now: map[string]int32{}, found: map[int32]bool{}}
}

// finder looks up a runner (dense index) by id, also one that was joined to
// another, or by a name; noRunner or severalRunners where no single one fits.
// Where the field holds some lines only, a runner whose lines are not there is
// noRunner too: nothing is to be worked out for them.
func (f *field) finder(p *people) func(string) int32 {
	var byName map[string]int32 // made when the first name is asked for
	index := func(no int32) int32 {
		if p.now != nil {
			no = p.now(no)
		}
		if i, found := slices.BinarySearch(p.no, no); found {
			f.asked.found[no] = true
			return int32(i)
		}
		return noRunner
	}
	return func(who string) int32 {
		if n, ok := runnerNumber(who); ok {
			return index(n)
		}
		key := name.Parse(who).Full
		if byName == nil {
			byName = f.runnersByName(p)
		}
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

// runnersByName gives the one runner number of each folded full name, or
// severalRunners.
func (f *field) runnersByName(p *people) map[string]int32 {
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
	return byName
}

// number is the runner number that the finder's answer stands for, 0 where it is
// no one runner.
func (p *people) number(index int32) int32 {
	if index < 0 {
		return 0
	}
	return p.no[index]
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
	keys := slices.Sorted(maps.Keys(f.asked.now))
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

// sameForTables says whether everything that side tables rest on is as in the
// last refresh of everything: whom their names mean, the courses there are, and
// what is asked about them. A refresh of some lines writes nothing of that anew.
func (pl *Pipeline) sameForTables(ctx context.Context, w *work) (bool, error) {
	f := w.field
	if f.asked.changed || f.namesGone() {
		return false, nil
	}
	for _, same := range []func(context.Context, *work) (bool, error){pl.sameCourses, pl.sameSexes, pl.sameQuestions} {
		if ok, err := same(ctx, w); !ok || err != nil {
			return false, err
		}
	}
	return true, nil
}

// namesGone says whether a line with a name that a table asks for is not its
// runner's any more: somebody else may be meant now, or nobody.
func (f *field) namesGone() bool {
	for i, was := range f.some.was {
		if was.there && was.runner > 0 && was.runner != f.runner[i] && f.asked.before[f.person[f.name[i]].Full] != 0 {
			return true
		}
	}
	return false
}

// sameCourses says whether history.csv and the desk name none of the courses
// that are new: what they say of a course without a sheet counts for all.
func (pl *Pipeline) sameCourses(ctx context.Context, w *work) (bool, error) {
	known, fresh := map[int32]bool{}, map[string]bool{}
	for _, r := range w.field.runs {
		known[r.course] = known[r.course] || !w.field.some.fresh[r.no]
	}
	for c, old := range known {
		if !old {
			fresh[w.field.courses[c-1].course] = true
		}
	}
	if len(fresh) == 0 {
		return true, nil
	}
	table, err := pl.readHistoryTable()
	if err != nil {
		return false, err
	}
	named := func(course string) bool { return course != "" && fresh[pl.courses.resolve(course)] }
	return !slices.ContainsFunc(table, func(h historyLine) bool { return named(h.course) }) &&
		!slices.ContainsFunc(w.decisions, func(d Decision) bool { return d.isOpening() && named(d.Course) }), nil
}

// sameSexes says whether the runners whom tables name have the sex that they
// had: records without a sex have that of their holder.
func (pl *Pipeline) sameSexes(ctx context.Context, w *work) (bool, error) {
	if err := pl.pick(ctx, slices.Sorted(maps.Keys(w.field.asked.found))); err != nil {
		return false, err
	}
	same := true
	err := pl.each(ctx, "select runner_no, sex from record.runner where runner_no in (select number from picked)", func(rows *sql.Rows) error {
		var no int32
		var sex uint8
		err := rows.Scan(&no, &sex)
		if r, ok := slices.BinarySearch(w.people.no, no); ok && uint8(w.people.sex[r]) != sex {
			same = false
		}
		return err
	})
	return same, err
}

// sameQuestions says whether what is asked about the tables' rows was asked
// before, and whatever was asked about a member of the field still is.
func (pl *Pipeline) sameQuestions(ctx context.Context, w *work) (bool, error) {
	type question struct{ kind, read, expected, todo string }
	asks, asked := map[question]bool{}, map[question]bool{}
	for _, q := range w.problems {
		if q.runNo == 0 && q.Kind != "held-record" { // of holders who are not at hand too; sameSexes sees to them
			asks[question{q.Kind, q.Read, q.Expected, q.Do}] = true
		}
	}
	members, read := map[string]bool{}, pl.memberReader()
	for _, m := range w.members {
		if m.runner >= 0 {
			members[read(m)] = true
		}
	}
	same := true
	err := pl.each(ctx, "select kind, read, expected, todo from sheet.problem where run_no = 0 and kind in ('"+strings.Join(refreshProblems, "', '")+"')", func(rows *sql.Rows) error {
		var q question
		err := rows.Scan(&q.kind, &q.read, &q.expected, &q.todo)
		asked[q] = true
		if members[q.read] && !asks[q] {
			same = false
		}
		return err
	})
	for q := range asks {
		same = same && asked[q]
	}
	return same, err
}
