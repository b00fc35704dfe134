package pipeline

import (
	"context"
	"slices"
	"strings"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/record/who"
	"lapwing/pipeline/store"
)

// A few new lines find their runners among those known, by what the last full
// linking left behind (link_known.go): candidateRunners says who might own
// them, linkSome decides with all lines of these, rememberSome keeps what is
// new. Runners that may turn out to be one, and lines that may turn out to be
// another's, wait for the next full linking; it comes to the same as if
// everything had been loaded at once. One is due when linkShare of the lines
// are new, and when somebody decides about people.
const linkShare = .02

// candidateRunners says which runners might own the fresh lines of a field
// (indices), by number, upwards; among them those whom a decision gives a line
// to. Without a linkage to carry on from, or where a full one is due, the first
// answer is nil.
func (pl *Pipeline) candidateRunners(ctx context.Context, f *field, fresh []int32, owners []lineOwner) (*keptLinkage, []int32, error) {
	k, err := pl.lastLinkage(ctx)
	if k == nil || err != nil || float64(k.Since+len(fresh)) > linkShare*float64(k.Lines) {
		return nil, nil, err
	}
	rows := f.whoRowsOf(fresh, pl.workers())
	known := k.knownTo(f)
	s, err := who.NewSearch(known, rows, f.person)
	if err != nil {
		return nil, nil, err
	}
	if err := pl.scanNameParts(ctx, s.Near, s.Add); err != nil {
		return nil, nil, err
	}
	if err := pl.searchSpellings(ctx, s); err != nil {
		return nil, nil, err
	}
	if err := pl.searchNumbers(ctx, s, rows); err != nil {
		return nil, nil, err
	}
	if len(owners) > 0 {
		l := &linkage{alias: map[int32]int32{}}
		if err := pl.readAliases(ctx, l); err != nil {
			return nil, nil, err
		}
		for _, o := range owners {
			if n, ok := runnerNumber(o.runner); ok {
				s.Numbered(l.now(n))
			}
		}
	}
	return k, s.Runners(), nil
}

// searchSpellings hands the search every runner with a wanted pair of parts.
func (pl *Pipeline) searchSpellings(ctx context.Context, s *who.Search) error {
	wanted := s.Wanted()
	if err := pl.DB.Exec(ctx, "create or replace temp table wanted_name (given_no integer, family_no integer)"); err != nil {
		return err
	}
	schema := store.Columns("given_no", store.Int32, "family_no", store.Int32)
	if err := pl.insertRows(ctx, "wanted_name", schema, len(wanted), func(r row, i int) { r.ints(0, wanted[i][0], wanted[i][1]) }); err != nil {
		return err
	}
	var found []who.Spelling
	err := pl.DB.Scan(ctx, `select s.runner_no, s.given_no, s.family_no, s.course_no from record.spelling s
		semi join wanted_name w on w.given_no = s.given_no and w.family_no = s.family_no`, func(r arrow.Record) error {
		var c [4]*array.Int32
		for k := range c {
			c[k] = r.Column(k).(*array.Int32)
		}
		for i := range int(r.NumRows()) {
			found = append(found, who.Spelling{Runner: c[0].Value(i), Given: c[1].Value(i), Family: c[2].Value(i), Course: c[3].Value(i)})
		}
		return nil
	})
	if err != nil {
		return err
	}
	slices.SortFunc(found, who.Spelling.Compare)
	for _, x := range found {
		s.Spelling(x.Runner, x.Given, x.Family, x.Course-1)
	}
	return pl.DB.Exec(ctx, "drop table wanted_name")
}

// searchNumbers hands the search every runner who has had one of the numbers.
func (pl *Pipeline) searchNumbers(ctx context.Context, s *who.Search, rows *who.Rows) error {
	var numbers []string
	seen := map[int32]bool{0: true}
	for _, n := range rows.Number {
		if !seen[n] {
			seen[n] = true
			numbers = append(numbers, store.Quote(rows.Numbers[n]))
		}
	}
	if len(numbers) == 0 {
		return nil
	}
	return pl.DB.Scan(ctx, "select runner_no from record.runner_number where number in ("+strings.Join(numbers, ", ")+")", func(r arrow.Record) error {
		for _, n := range r.Column(0).(*array.Int32).Int32Values() {
			s.Numbered(n)
		}
		return nil
	})
}

// readAliases reads which runner numbers were joined to others.
func (pl *Pipeline) readAliases(ctx context.Context, l *linkage) error {
	return pl.DB.Scan(ctx, "select runner_no, now from record.alias", func(r arrow.Record) error {
		now := r.Column(1).(*array.Int32)
		for i, old := range r.Column(0).(*array.Int32).Int32Values() {
			l.alias[old] = now.Value(i)
		}
		return nil
	})
}

// knownTo puts what is kept by text under the numbers that the field has for
// the texts.
func (k *keptLinkage) knownTo(f *field) *who.Known {
	share := make(map[string]float32, len(k.Clubs))
	for i, c := range k.Clubs {
		share[c] = k.Known.Clubs[i]
	}
	known := k.Known
	known.Clubs = make([]float32, len(f.clubs.list))
	for i, c := range f.clubs.list {
		known.Clubs[i] = share[c]
	}
	return &known
}

// nextNumber is the first runner number that was never given.
func (pl *Pipeline) nextNumber(k *keptLinkage) (int32, error) {
	length, err := pl.anchorLength()
	if err != nil || length == k.Anchors {
		return k.Next, err
	}
	have, err := pl.readAnchors() // a write was cut short since
	next := k.Next
	for _, a := range have {
		next = max(next, a.runner+1)
	}
	return next, err
}

// linkSome gives the fresh lines of the field their runners. The field holds
// them and all lines of the candidates, with their runner numbers. It is false
// where a full linking is due.
func (pl *Pipeline) linkSome(ctx context.Context, w *work, k *keptLinkage, fresh []int32) (bool, error) {
	f := w.field
	if k == nil || peopleStamp(w.decisions) != k.Decisions {
		return false, nil
	}
	l := &linkage{alias: map[int32]int32{}}
	rows := f.whoRows(l, pl.workers())
	isFresh := make([]bool, f.n)
	for _, i := range fresh {
		isFresh[i] = true
	}
	owner := make([]int32, len(l.rows))
	for at, i := range l.rows {
		if !isFresh[i] {
			if owner[at] = f.runner[i]; owner[at] == 0 {
				return false, nil // a line that stands again: nobody has weighed it yet
			}
		}
	}
	if err := pl.readAliases(ctx, l); err != nil {
		return false, err
	}
	decisions, ok, err := f.aboutFresh(w, l, isFresh)
	if !ok || err != nil {
		return false, err
	}
	known := k.knownTo(f)
	want := f.partsOfNames()
	if err := pl.scanNameParts(ctx, func(_ bool, text string) bool { return want[text] }, func(family bool, x who.Name) {
		if family {
			known.Family = append(known.Family, x)
		} else {
			known.Given = append(known.Given, x)
		}
	}); err != nil {
		return false, err
	}
	byText := func(a, b who.Name) int { return strings.Compare(a.Text, b.Text) }
	slices.SortFunc(known.Given, byText)
	slices.SortFunc(known.Family, byText)
	a, err := who.Attach(ctx, known, rows, f.person, owner, who.Options{Threads: pl.workers(), Decisions: decisions})
	if err != nil {
		return false, err
	}
	if l.next, err = pl.nextNumber(k); err != nil {
		return false, err
	}
	l.result, l.number = a.Result, make([]int32, a.Runners)
	size, first := make([]int32, a.Runners), make([]int32, a.Runners)
	for at, i := range l.rows {
		r := a.Runner[at]
		if size[r]++; size[r] == 1 || f.key[i] < f.key[first[r]] {
			first[r] = i
		}
	}
	for r := range l.number {
		if l.number[r] = a.Owner[r]; l.number[r] == 0 {
			l.number[r] = l.next
			l.next++
			l.fresh = append(l.fresh, anchor{l.number[r], size[r], f.lineAt(int(first[r]))})
		}
	}
	for at, i := range l.rows {
		f.runner[i] = l.number[a.Runner[at]]
	}
	k.Since += len(fresh)
	k.Next = l.next
	a.Levels(&k.Known)
	k.learn(a, known, l, f, owner)
	w.link = l
	return true, nil
}

// aboutFresh turns the decisions that give fresh lines to runners into
// decisions about rows. It is false where another decision about people is
// about a fresh line, or where its runner is not at hand: a full linking
// follows those.
func (f *field) aboutFresh(w *work, l *linkage, isFresh []bool) ([]who.Decision, bool, error) {
	var refs []Decision
	for _, d := range w.decisions {
		if d.aboutPeople() {
			a, b, err := d.sides()
			if err != nil {
				return nil, false, err
			}
			for _, s := range []side{a, b} {
				refs = append(refs, Decision{Sheet: s.at.hash, Tab: s.at.tab, Row: s.at.row})
			}
		}
	}
	for _, lines := range f.linesOf(refs) {
		for _, i := range lines {
			if isFresh[i] {
				return nil, false, nil
			}
		}
	}
	if w.desk == nil || len(w.desk.owners) == 0 {
		return nil, true, nil
	}
	lineOf := map[int32]int32{}
	for _, i := range l.rows {
		if !isFresh[i] {
			if j, ok := lineOf[f.runner[i]]; !ok || f.key[i] < f.key[j] {
				lineOf[f.runner[i]] = i
			}
		}
	}
	var out []who.Decision
	for _, o := range w.desk.owners {
		n, ok := runnerNumber(o.runner)
		if !ok || !f.linked(o.line) {
			continue
		}
		i, have := lineOf[l.now(n)]
		switch {
		case !isFresh[o.line]:
			if f.runner[o.line] != l.now(n) {
				return nil, false, nil
			}
		case !have:
			return nil, false, nil
		default:
			out = append(out, who.Decision{A: f.key[o.line], B: f.key[i], Same: true, WholeB: true, Ref: "decision " + itoa(int32(o.decision))})
		}
	}
	return out, true, nil
}

// partsOfNames are the texts of given and family names in the field, and their
// single words.
func (f *field) partsOfNames() map[string]bool {
	out := map[string]bool{}
	for i := range f.person {
		for _, s := range [2]string{f.person[i].Given, f.person[i].Family} {
			out[s] = true
			if strings.IndexByte(s, ' ') >= 0 {
				for w := range strings.SplitSeq(s, " ") {
					out[w] = true
				}
			}
		}
	}
	return out
}

// learn notes under what names and numbers, and where, runners now stand who
// did not before.
func (k *keptLinkage) learn(a *who.Attached, known *who.Known, l *linkage, f *field, owner []int32) {
	floor := .3 / max(1, known.Signatures)
	var at [2]map[string]int32
	for part, list := range [2][]who.Name{known.Given, known.Family} {
		at[part] = make(map[string]int32, len(list))
		for _, x := range list {
			at[part][x.Text] = x.No
		}
	}
	number := func(part int, text string) int32 {
		no, ok := at[part][text]
		if !ok {
			no = k.Parts[part]
			k.Parts[part]++
			at[part][text] = no
			k.fresh.parts[part] = append(k.fresh.parts[part], who.Name{Text: text, No: no, Mass: floor, Double: floor, AsRead: 1})
		}
		return no
	}
	grown := map[int32]bool{} // runners with fresh lines
	for row, i := range l.rows {
		if owner[row] == 0 {
			grown[f.runner[i]] = true
		}
	}
	spelled, numbered := map[who.Spelling]bool{}, map[runnersNumber]bool{}
	for _, fresh := range [2]bool{false, true} {
		for row, i := range l.rows {
			given, family, ok := a.PartsOf(int32(row))
			if (owner[row] == 0) != fresh || !grown[f.runner[i]] || !ok {
				continue
			}
			s := who.Spelling{Runner: f.runner[i], Given: number(0, given), Family: number(1, family), Course: f.course(int(i))}
			n := runnersNumber{f.runner[i], f.numbers.list[f.number[i]]}
			if fresh && !spelled[s] {
				k.fresh.spellings = append(k.fresh.spellings, s)
			}
			if fresh && n.number != "" && !numbered[n] {
				k.fresh.numbers = append(k.fresh.numbers, n)
			}
			spelled[s], numbered[n] = true, true
		}
	}
}

// rememberSome keeps what attaching has added, for the next time. It belongs
// into the transaction that writes the lines' runners.
func (pl *Pipeline) rememberSome(ctx context.Context, k *keptLinkage) (err error) {
	for part, list := range k.fresh.parts {
		if err := pl.insertNameParts(ctx, part, list); err != nil {
			return err
		}
	}
	if err := pl.insertSpellings(ctx, k.fresh.spellings); err != nil {
		return err
	}
	if err := pl.insertRows(ctx, "record.runner_number", runnerNumberSchema, len(k.fresh.numbers), func(r row, i int) {
		r.ints(0, k.fresh.numbers[i].runner)
		r.texts(1, k.fresh.numbers[i].number)
	}); err != nil {
		return err
	}
	k.fresh = learned{}
	if k.Anchors, err = pl.anchorLength(); err != nil {
		return err
	}
	if err := pl.DB.Exec(ctx, "delete from record.linked"); err != nil {
		return err
	}
	return pl.writeLinked(ctx, k)
}
