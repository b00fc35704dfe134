package pipeline

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/unit"
)

// upToSpeed does the steps before the model.
func upToSpeed(t testing.TB, pl *Pipeline) *work {
	t.Helper()
	w := &work{}
	for i := range steps {
		if steps[i].name == stepNameSpeed {
			break
		}
		if err := pl.runStep(context.Background(), w, i); err != nil {
			t.Fatal(err)
		}
	}
	return w
}

// updated carries on from the last full fit, however small the archive, and
// fails the test where that is refused.
func updated(t testing.TB, pl *Pipeline, w *work) *speedFigures {
	t.Helper()
	w.speed = newSpeedFigures(len(w.people.order))
	done, err := pl.updateSpeed(context.Background(), w, 1)
	if err != nil || !done {
		t.Fatalf("update: %v, %v", done, err)
	}
	return w.speed
}

func fitted(t testing.TB, pl *Pipeline, w *work) *speedFigures {
	t.Helper()
	w.full = true
	if err := pl.stepSpeed(context.Background(), w); err != nil {
		t.Fatal(err)
	}
	return w.speed
}

// splitByDay moves a course's sheets from a day on into a folder of their own.
func splitByDay(t testing.TB, dir, course string, from unit.Day) (later string) {
	t.Helper()
	later = filepath.Join(dir, "later")
	moved := 0
	err := filepath.Walk(filepath.Join(dir, "sheets"), func(path string, info os.FileInfo, err error) error {
		if err != nil || info.IsDir() {
			return err
		}
		name, date, _ := strings.Cut(strings.TrimSuffix(info.Name(), filepath.Ext(path)), "_")
		if name != course || len(date) < 10 {
			return nil
		}
		if day, err := unit.ParseDay(date[:10]); err != nil || day < from {
			return nil
		}
		rel, err := filepath.Rel(filepath.Join(dir, "sheets"), path)
		if err != nil {
			return err
		}
		to := filepath.Join(later, rel)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		moved++
		return os.Rename(path, to)
	})
	if err != nil || moved == 0 {
		t.Fatalf("%d sheets moved, %v", moved, err)
	}
	return later
}

// A course's runs that are added to the last full fit get nearly what a new full
// fit gives them, everybody else keeps theirs to the bit, and nothing new means
// nothing changes.
func TestUpdateOfAnArchiveIsCloseToAFullFit(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	truth, err := scenario.District(dir, scenario.DistrictOptions{Seed: 900, People: 900, Weeks: 104})
	if err != nil {
		t.Fatal(err)
	}
	last := unit.Day(0)
	for _, r := range truth.Runs {
		last = max(last, r.Date)
	}
	lines := make([]int, len(truth.Courses))
	for _, l := range truth.Lines {
		lines[truth.Runs[l.Run].Course]++
	}
	largest := slices.Index(lines, slices.Max(lines))
	later := splitByDay(t, dir, truth.Courses[largest].Slug, last-13)
	pl := openForTest(t, dir)
	loadForTest(t, pl, filepath.Join(dir, "sheets"))

	w := upToSpeed(t, pl)
	before := fitted(t, pl, w)
	same := updated(t, pl, w)
	if len(same.runs) != len(before.runs) || len(same.forms) != len(before.forms) || same.fit.Updated != 0 {
		t.Fatalf("an update with nothing new has %d runs and %d forms, the fit %d and %d; %d results new", len(same.runs), len(same.forms), len(before.runs), len(before.forms), same.fit.Updated)
	}
	for o := range before.adjusted {
		if !sameFigures(before, same, o, o) {
			t.Fatalf("line %d changed although nothing is new", o)
		}
	}
	for k := range before.forms {
		if before.forms[k] != same.forms[k] {
			t.Fatalf("form changed although nothing is new: %+v, was %+v", same.forms[k], before.forms[k])
		}
	}
	for k := range before.runs {
		if before.runs[k] != same.runs[k] {
			t.Fatalf("a run changed although nothing is new: %+v, was %+v", same.runs[k], before.runs[k])
		}
	}

	if rep, err := pl.Load(ctx, []string{later}, ByHand{}); err != nil || rep.Loaded == 0 {
		t.Fatalf("%+v, %v", rep, err)
	}
	w = upToSpeed(t, pl)
	upd := updated(t, pl, w)
	sameForSome(t, pl, w, before, upd)
	full := fitted(t, pl, w)
	t.Logf("%d results in the fit, %d of them new", full.fit.Results, upd.fit.Updated)
	if upd.fit.Updated < 80 {
		t.Fatal("too few new results to judge by")
	}
	knownRuns := map[int32]bool{}
	for _, r := range before.runs {
		knownRuns[r.no] = true
	}
	var sq, n, worst float64
	fullRun := map[int32]runSpeed{}
	for _, r := range full.runs {
		fullRun[r.no] = r
	}
	for _, r := range upd.runs {
		if knownRuns[r.no] || !r.Stated {
			continue
		}
		f := fullRun[r.no]
		if r.Results != f.Results {
			t.Errorf("run %d has %d results, in a full fit %d", r.no, r.Results, f.Results)
		}
		d := r.Effect - f.Effect
		sq += float64(r.Results) * d * d
		n += float64(r.Results)
		worst = max(worst, math.Abs(d))
	}
	t.Logf("conditions of new runs: RMS %.3f %% from a full fit, at most %.3f", 100*math.Sqrt(sq/n), 100*worst)
	if n == 0 || math.Sqrt(sq/n) > .0015 || worst > .005 {
		t.Errorf("conditions of new runs: RMS %.4f, at most %.4f", math.Sqrt(sq/n), worst)
	}
	var adjusted, form []float64
	effort := 0
	for o := range full.adjusted {
		a, b := float64(upd.adjusted[o]), float64(full.adjusted[o])
		if math.IsNaN(a) != math.IsNaN(b) {
			t.Errorf("line %d is adjusted to %g by the update and to %g by a full fit", o, a, b)
		} else if !math.IsNaN(a) {
			adjusted = append(adjusted, math.Abs(math.Log(a/b)))
		}
		if upd.effort[o] != full.effort[o] {
			effort++
		}
	}
	fullForm := map[int32]formSpeed{}
	for _, k := range full.forms {
		fullForm[k.no] = k
	}
	if len(upd.forms) != len(full.forms) {
		t.Fatalf("%d forms, in a full fit %d", len(upd.forms), len(full.forms))
	}
	for _, k := range upd.forms {
		f, ok := fullForm[k.no]
		if !ok || f.LastDay != k.LastDay || f.Results != k.Results {
			t.Fatalf("form %+v, in a full fit %+v", k, f)
		}
		form = append(form, math.Abs(k.Log-f.Log))
	}
	slices.Sort(adjusted)
	slices.Sort(form)
	t.Logf("adjusted times: 99 %% within %.3f %%, all within %.3f; form: 99 %% within %.3f %%, all within %.3f; effort of %d of %d results differs",
		100*adjusted[len(adjusted)*99/100], 100*adjusted[len(adjusted)-1], 100*form[len(form)*99/100], 100*form[len(form)-1], effort, len(adjusted))
	if adjusted[len(adjusted)*99/100] > .002 || adjusted[len(adjusted)-1] > .01 {
		t.Error("adjusted times are far from a full fit's")
	}
	if form[len(form)*99/100] > .004 {
		t.Error("forms are far from a full fit's")
	}
	if effort > len(adjusted)/100 {
		t.Error("efforts are far from a full fit's")
	}
}

// sameForSome updates with nobody at hand but the runners concerned and wants
// the figures that an update with everybody gives, to the bit.
func sameForSome(t *testing.T, pl *Pipeline, w *work, before, upd *speedFigures) {
	t.Helper()
	known, forms := map[int32]bool{}, map[int32]int64{}
	for _, r := range before.runs {
		known[r.no] = true
	}
	for _, k := range before.forms {
		forms[k.no] = k.print
	}
	fresh := map[int32]bool{}
	for _, r := range upd.runs {
		if !known[r.no] {
			fresh[r.no] = true
		}
	}
	some := &people{begin: []int32{0}}
	var from []int // place in w.people.order
	for r, no := range w.people.no {
		concerned := false
		for _, k := range upd.forms {
			if k.no == no {
				concerned = forms[no] != k.print
			}
		}
		if !concerned {
			continue
		}
		some.no = append(some.no, no)
		for o := w.people.begin[r]; o < w.people.begin[r+1]; o++ {
			some.order = append(some.order, w.people.order[o])
			from = append(from, int(o))
		}
		some.begin = append(some.begin, int32(len(some.order)))
	}
	part := &work{field: w.field, people: some}
	if done, err := pl.updateSome(context.Background(), part, fresh, 1); err != nil || !done {
		t.Fatalf("update of %d runners: %v, %v", len(some.no), done, err)
	}
	got := part.speed
	if len(got.runs) != len(fresh) || len(got.forms) == 0 || len(got.courses) != len(upd.courses) || got.fit != upd.fit || got.latest != upd.latest {
		t.Fatalf("%d runs of %d, %d forms, %d courses of %d, %+v", len(got.runs), len(fresh), len(got.forms), len(got.courses), len(upd.courses), got.fit)
	}
	for i, o := range from {
		if !sameFigures(upd, got, o, i) {
			t.Fatalf("line %d: adjusted to %g with everybody, to %g with the runners concerned", o, upd.adjusted[o], got.adjusted[i])
		}
	}
	for _, k := range got.forms {
		if !slices.Contains(upd.forms, k) {
			t.Fatalf("form %+v is not that of an update with everybody", k)
		}
	}
	for _, r := range got.runs {
		if !slices.Contains(upd.runs, r) {
			t.Fatalf("run %+v is not that of an update with everybody", r)
		}
	}
	writtenForSome(t, pl, part, &work{people: w.people, speed: upd})
}

// writtenForSome writes an update of some, and wants the rows of everybody
// else as they were and theirs as an update with everybody writes them.
func writtenForSome(t *testing.T, pl *Pipeline, some, all *work) {
	t.Helper()
	ctx := context.Background()
	tables := map[string]string{"insight.run": "run_no", "insight.runner": "runner_no", "insight.course": "course_no"}
	rows := func() map[string]map[int32]string {
		out := map[string]map[int32]string{}
		for table, key := range tables {
			out[table] = map[int32]string{}
			r, err := pl.DB.QueryContext(ctx, "select "+key+", t::varchar from "+table+" t")
			if err != nil {
				t.Fatal(err)
			}
			for r.Next() {
				var no int32
				var text string
				if err := r.Scan(&no, &text); err != nil {
					t.Fatal(err)
				}
				if _, twice := out[table][no]; twice {
					t.Fatalf("%s: two rows of %d", table, no)
				}
				out[table][no] = text
			}
			if err := r.Close(); err != nil {
				t.Fatal(err)
			}
		}
		return out
	}
	back := errors.New("back")
	written := func(write func() error) (out map[string]map[int32]string) {
		err := pl.DB.Transaction(ctx, func() error {
			if err := write(); err != nil {
				t.Fatal(err)
			}
			out = rows()
			fit, err := pl.speedFit(ctx)
			if err != nil || fit != all.speed.fit {
				t.Fatalf("kept of the fit: %+v, %v", fit, err)
			}
			return back
		})
		if !errors.Is(err, back) {
			t.Fatal(err)
		}
		return out
	}
	was := rows()
	// Gone are those whom the new sheets have joined with others, and somebody
	// who is not concerned, as if their last line had gone.
	var gone []int32
	last := int32(0)
	for no := range was["insight.runner"] {
		if !slices.Contains(all.people.no, no) {
			gone = append(gone, no)
		} else if !slices.Contains(some.people.no, no) {
			last = max(last, no)
		}
	}
	gone = append(gone, last)
	got := written(func() error { return pl.writeSpeedSome(ctx, some, gone) })
	want := written(func() error {
		for table := range tables {
			if err := pl.DB.Exec(ctx, "delete from "+table); err != nil {
				return err
			}
		}
		return pl.writeSpeed(ctx, all)
	})
	mine := map[string]map[int32]bool{"insight.run": some.speed.fresh, "insight.runner": {}, "insight.course": {}}
	for _, no := range some.people.no {
		mine["insight.runner"][no] = true
	}
	delete(want["insight.runner"], last)
	for table := range tables {
		if len(got[table]) != len(want[table]) || len(want[table]) == 0 {
			t.Fatalf("%s: %d rows, want %d", table, len(got[table]), len(want[table]))
		}
		for no, text := range got[table] {
			expect := was[table][no]
			if mine[table][no] {
				expect = want[table][no]
			}
			if text != expect {
				t.Fatalf("%s: %d is %s, want %s", table, no, text, expect)
			}
		}
	}
}

// BenchmarkUpdateSome adds a run to the fit of an archive of ten million
// results: a small one whose tables are filled up to 1 700 courses, 90 000 runs
// and a million runners.
func BenchmarkUpdateSome(b *testing.B) {
	ctx := context.Background()
	dir := b.TempDir()
	if _, err := scenario.District(dir, scenario.DistrictOptions{Seed: 902, People: 3000, Courses: 5, Weeks: 104}); err != nil {
		b.Fatal(err)
	}
	pl := openForTest(b, dir)
	loadForTest(b, pl, filepath.Join(dir, "sheets"))
	w := upToSpeed(b, pl)
	f := w.field
	largest, most := int32(0), 0
	for no, n := range f.resultsOfRuns() {
		if n > most {
			largest, most = no, n
		}
	}
	var some []int32
	for r := range w.people.no {
		for _, l := range w.people.order[w.people.begin[r]:w.people.begin[r+1]] {
			if f.runs[f.run[l]-1].no == largest {
				some = append(some, int32(r))
				break
			}
		}
	}
	part := &people{begin: []int32{0}}
	for _, r := range some {
		part.no = append(part.no, w.people.no[r])
		part.order = append(part.order, w.people.order[w.people.begin[r]:w.people.begin[r+1]]...)
		part.begin = append(part.begin, int32(len(part.order)))
	}
	for _, q := range []string{
		"insert into insight.course select 10000 + i, c.* exclude course_no from range(1700) r(i), (select * from insight.course limit 1) c",
		"insert into record.course select 10000 + i, 'filler ' || i, c.* exclude (course_no, course) from range(1700) r(i), (select * from record.course limit 1) c",
		"insert into insight.run select 1000000 + i, c.* exclude run_no from range(90000) r(i), (select * from insight.run limit 1) c",
		"insert into insight.runner select 10000000 + i, c.* exclude runner_no from range(1000000) r(i), (select * from insight.runner limit 1) c",
	} {
		if err := pl.DB.Exec(ctx, q); err != nil {
			b.Fatal(err)
		}
	}
	for no := range int32(1700) {
		f.courses = append(f.courses, courseInfo{no: 10000 + no, course: fmt.Sprint("filler ", no), distanceM: 5000})
	}
	fit, err := pl.speedFit(ctx)
	if err != nil {
		b.Fatal(err)
	}
	fit.Results = 10000000
	if err := pl.keepSpeedFit(ctx, fit); err != nil {
		b.Fatal(err)
	}
	back := errors.New("back")
	var update, write time.Duration
	for b.Loop() {
		began := time.Now()
		x := &work{field: f, people: part}
		if done, err := pl.updateSome(ctx, x, map[int32]bool{largest: true}, 1); err != nil || !done {
			b.Fatal(done, err)
		}
		update += time.Since(began)
		began = time.Now()
		err := pl.DB.Transaction(ctx, func() error {
			if err := pl.writeSpeedSome(ctx, x, nil); err != nil {
				return err
			}
			write += time.Since(began)
			return back
		})
		if !errors.Is(err, back) {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(most), "new-results")
	b.ReportMetric(float64(len(part.order)), "their-results")
	b.ReportMetric(update.Seconds()/float64(b.N), "update-s")
	b.ReportMetric(write.Seconds()/float64(b.N), "write-s")
}

// resultsOfRuns counts every run's results in the model, by run number.
func (f *field) resultsOfRuns() map[int32]int {
	n := map[int32]int{}
	for i := range f.n {
		if f.inModel(i) {
			n[f.runs[f.run[i]-1].no]++
		}
	}
	return n
}

// sameFigures compares the figures of two lines to the bit.
func sameFigures(a, b *speedFigures, i, j int) bool {
	same := func(x, y float32) bool { return x == y || x != x && y != y }
	return same(a.adjusted[i], b.adjusted[j]) && same(a.shortfall[i], b.shortfall[j]) && a.effort[i] == b.effort[j] &&
		same(a.form[i][0], b.form[j][0]) && same(a.form[i][1], b.form[j][1]) && same(a.form[i][2], b.form[j][2]) && a.adjustedBest[i] == b.adjustedBest[j]
}

// A full fit is due where the archive has grown, aged or changed too much, and
// small archives are always fitted fully.
func TestFullFitWhenDue(t *testing.T) {
	ctx := context.Background()
	dir := t.TempDir()
	if _, err := scenario.District(dir, scenario.DistrictOptions{Seed: 901, People: 150, Courses: 4, Weeks: 60}); err != nil {
		t.Fatal(err)
	}
	pl := openForTest(t, dir)
	loadForTest(t, pl, filepath.Join(dir, "sheets"))
	// Who ran on the last day has the form of that result today.
	var same, apart int
	if err := pl.DB.Get(ctx, `select count(*) filter (least(a, b, c) >= -.051 and greatest(a, b, c) <= .051), count(*)
		from (select r.form_s - n.form_s as a, r.form_low - n.form_low as b, r.form_high - n.form_high as c
			from main.results r join main.runners n on n.runner_id = r.runner_id
			where r.counts_time and n.form_s is not null and r.run_date = (select max(run_date) from main.results))`, &same, &apart); err != nil {
		t.Fatal(err)
	}
	if same < 20 || same != apart {
		t.Errorf("form at the last result is that of today for %d of %d runners", same, apart)
	}
	w := upToSpeed(t, pl)
	try := func(from int, change func(*speedFit)) bool {
		t.Helper()
		fit, err := pl.speedFit(ctx)
		if err != nil {
			t.Fatal(err)
		}
		kept := fit
		change(&fit)
		w.speed = newSpeedFigures(len(w.people.order))
		w.speed.fit = fit
		if err := pl.keepSpeedFit(ctx, fit); err != nil {
			t.Fatal(err)
		}
		done, err := pl.updateSpeed(ctx, w, from)
		if err != nil {
			t.Fatal(err)
		}
		if err := pl.keepSpeedFit(ctx, kept); err != nil {
			t.Fatal(err)
		}
		return done
	}
	for _, c := range []struct {
		name   string
		from   int
		change func(*speedFit)
		want   bool
	}{
		{"nothing new", 1, func(*speedFit) {}, true},
		{"small archive", updateFrom, func(*speedFit) {}, false},
		{"another model", 1, func(f *speedFit) { f.Version = "0" }, false},
		{"old fit", 1, func(f *speedFit) {
			day, err := unit.ParseDay(f.Upto)
			if err != nil {
				t.Fatal(err)
			}
			f.Upto = (day - updateDays - 1).String()
		}, false},
		{"many new results", 1, func(f *speedFit) { f.Updated = f.Results/50 + 1 }, false},
		{"tuned anew since", 1, func(f *speedFit) { f.Results = tuneFirst }, false},
	} {
		if got := try(c.from, c.change); got != c.want {
			t.Errorf("%s: update %v, want %v", c.name, got, c.want)
		}
	}
}
