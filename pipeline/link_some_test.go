package pipeline

import (
	"context"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/store"
)

// pick is a field of some of the lines.
func (f *field) pick(lines []int32) *field {
	g := *f
	g.n = len(lines)
	for _, c := range []*[]int32{&g.lineNo, &g.part, &g.row, &g.run, &g.position, &g.timeMS, &g.name, &g.number, &g.club, &g.doubt, &g.runner} {
		*c = takeAt(*c, lines)
	}
	for _, c := range []*[]uint8{&g.sex, &g.basis, &g.takingPart, &g.status, &g.counts} {
		*c = takeAt(*c, lines)
	}
	g.birthLo, g.birthHi, g.key = takeAt(g.birthLo, lines), takeAt(g.birthHi, lines), takeAt(g.key, lines)
	g.sameAs = make([]int32, len(lines))
	for k := range g.sameAs {
		g.sameAs[k] = -1
	}
	return &g
}

func takeAt[T any](from []T, at []int32) []T {
	out := make([]T, len(at))
	for k, i := range at {
		out[k] = from[i]
	}
	return out
}

// attachForTest gives the lines that have no runner yet theirs, as a refresh
// of part of the archive does, and writes what it must. It says how many there
// were and how many runners were looked at.
func attachForTest(t *testing.T, pl *Pipeline) (lines, candidates int) {
	t.Helper()
	ctx := context.Background()
	w := &work{}
	for _, step := range []func(*Pipeline, context.Context, *work) error{(*Pipeline).stepRead, (*Pipeline).stepCompare, (*Pipeline).stepDecisions} {
		if err := step(pl, ctx, w); err != nil {
			t.Fatal(err)
		}
	}
	f := w.field
	runner := map[int32]int32{}
	if err := pl.DB.Scan(ctx, "select line_no, runner_no from record.result", func(r arrow.Record) error {
		no := r.Column(1).(*array.Int32)
		for i, l := range r.Column(0).(*array.Int32).Int32Values() {
			runner[l] = no.Value(i)
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	var fresh, rest []int32
	for i := range int32(f.n) {
		f.runner[i] = runner[f.lineNo[i]]
		switch {
		case !f.linked(int(i)):
		case f.runner[i] == 0:
			fresh = append(fresh, i)
		default:
			rest = append(rest, i)
		}
	}
	k, runners, err := pl.candidateRunners(ctx, f, fresh, w.desk.owners)
	if err != nil || k == nil {
		t.Fatalf("nothing to carry on from: %v", err)
	}
	all := slices.Clone(fresh)
	for _, i := range rest {
		if _, ok := slices.BinarySearch(runners, f.runner[i]); ok {
			all = append(all, i)
		}
	}
	part := &work{field: f.pick(all), decisions: w.decisions, desk: &lineDecisions{}}
	at := make([]int32, len(fresh))
	for i := range at {
		at[i] = int32(i)
	}
	ok, err := pl.linkSome(ctx, part, k, at)
	if err != nil || !ok {
		t.Fatalf("linkSome: %v %v", ok, err)
	}
	if err := pl.appendAnchors(part.link.fresh); err != nil {
		t.Fatal(err)
	}
	err = pl.DB.Transaction(ctx, func() error {
		schema := store.Columns("line_no", store.Int32, "runner_no", store.Int32)
		if err := pl.insertRows(ctx, "record.result(line_no, runner_no)", schema, len(fresh), func(r row, i int) {
			r.ints(0, part.field.lineNo[i], part.field.runner[i])
		}); err != nil {
			return err
		}
		return pl.rememberSome(ctx, k)
	})
	if err != nil {
		t.Fatal(err)
	}
	return len(fresh), len(runners)
}

func runnersByLine(t *testing.T, pl *Pipeline) map[string]int32 {
	t.Helper()
	rows, err := pl.DB.QueryContext(context.Background(), `select s.path || ':' || p.tab_index || ':' || l.row_number, r.runner_no from record.result r
		join record.line l on l.line_no = r.line_no join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no where r.runner_no > 0`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	out := map[string]int32{}
	for rows.Next() {
		var line string
		var no int32
		if err := rows.Scan(&line, &no); err != nil {
			t.Fatal(err)
		}
		out[line] = no
	}
	return out
}

// New sheets find their runners by what the last full linking left behind,
// nearly as if everything had been linked again; and the next full linking
// comes to what it would have come to without.
func TestNewSheetsFindTheirRunners(t *testing.T) {
	for _, c := range []struct {
		what string
		o    scenario.DistrictOptions
	}{
		{"no numbers", scenario.DistrictOptions{Seed: 301, People: 500, Courses: 6, Weeks: 90, Numbers: scenario.NoNumbers}},
		{"numbers", scenario.DistrictOptions{Seed: 302, People: 500, Courses: 6, Weeks: 90, Numbers: scenario.AllNumbers}},
	} {
		t.Run(c.what, func(t *testing.T) {
			ctx := context.Background()
			dir := t.TempDir()
			truth, err := scenario.District(dir, c.o)
			if err != nil {
				t.Fatal(err)
			}
			perDay := map[string]int{}
			for _, l := range truth.Lines {
				perDay[truth.Runs[l.Run].Date.String()]++
			}
			days := slices.Sorted(maps.Keys(perDay))
			var late []string // the last days, as long as no full linking is due
			for sum := 0; len(days) > 0; days = days[:len(days)-1] {
				day := days[len(days)-1]
				if sum += perDay[day]; sum > len(truth.Lines)*17/1000 {
					break
				}
				late = append(late, day)
			}
			if err := os.MkdirAll(filepath.Join(dir, "late"), 0o755); err != nil {
				t.Fatal(err)
			}
			for _, l := range truth.Lines {
				if slices.Contains(late, truth.Runs[l.Run].Date.String()) {
					from := filepath.Join(dir, "sheets", l.Sheet)
					if _, err := os.Stat(from); err == nil {
						if err := os.Rename(from, filepath.Join(dir, "late", filepath.Base(l.Sheet))); err != nil {
							t.Fatal(err)
						}
					}
				}
			}
			courses, err := os.ReadFile(filepath.Join(dir, "archive", "courses.csv"))
			if err != nil {
				t.Fatal(err)
			}
			pl := openForTest(t, dir)
			loadForTest(t, pl, filepath.Join(dir, "sheets"))
			before := runnersByLine(t, pl)
			if _, err := pl.Load(ctx, []string{filepath.Join(dir, "late")}, ByHand{}); err != nil {
				t.Fatal(err)
			}
			lines, candidates := attachForTest(t, pl)
			attached := runnersByLine(t, pl)
			for line, no := range before {
				if attached[line] != no {
					t.Fatalf("%s went from R%d to R%d", line, no, attached[line])
				}
			}
			if _, err := pl.Refresh(ctx, true); err != nil {
				t.Fatal(err)
			}
			whole := runnersByLine(t, pl)
			same := 0
			for line, no := range attached {
				if _, old := before[line]; !old && whole[line] == no {
					same++
				}
			}
			t.Logf("%d new lines, %d candidates, %d go where a full linking puts them", lines, candidates, same)
			if lines < 50 || same < lines*97/100 {
				t.Errorf("of %d new lines only %d go where a full linking puts them", lines, same)
			}

			other := t.TempDir()
			if err := os.MkdirAll(filepath.Join(other, "archive"), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(other, "archive", "courses.csv"), courses, 0o644); err != nil {
				t.Fatal(err)
			}
			once := openForTest(t, other)
			loadForTest(t, once, filepath.Join(dir, "sheets"))
			loadForTest(t, once, filepath.Join(dir, "late"))
			if err := samePartition(whole, runnersByLine(t, once)); err != nil {
				t.Errorf("a full linking after attaching is not what it is without: %v", err)
			}
		})
	}
}

// samePartition says whether two archives put the same lines together,
// whatever the runners' numbers are.
func samePartition(a, b map[string]int32) error {
	if len(a) != len(b) {
		return fmt.Errorf("%d lines and %d", len(a), len(b))
	}
	there, back := map[int32]int32{}, map[int32]int32{}
	for line, x := range a {
		y := b[line]
		if v, ok := there[x]; ok && v != y {
			return fmt.Errorf("%s is R%d here and R%d there, where R%d is R%d", line, x, y, x, v)
		}
		if v, ok := back[y]; ok && v != x {
			return fmt.Errorf("%s is R%d here and R%d there, where R%d is R%d", line, x, y, v, y)
		}
		there[x], back[y] = y, x
	}
	return nil
}
