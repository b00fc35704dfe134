package pipeline

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"lapwing/pipeline/insight/history"
	"lapwing/pipeline/store"
)

// sideTables are the files of the archive folder that figures depend on.
var sideTables = []string{"decisions.csv", "courses.csv", "members.csv", "volunteers.csv", "history.csv", tuningTable}

// figuresStamp sums up everything that figures depend on; while it is the same
// there is nothing to refresh.
func (pl *Pipeline) figuresStamp() (string, error) {
	var b strings.Builder
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return "", err
	}
	for _, e := range ledger {
		fmt.Fprintln(&b, e.Seq, e.Hash, e.State)
	}
	base, err := pl.figuresBase()
	b.WriteString(base)
	return store.Hash([]byte(b.String())), err
}

// figuresBase sums up everything but the sheets.
func (pl *Pipeline) figuresBase() (string, error) {
	var b strings.Builder
	b.WriteString(pl.Settings.figuresKey())
	for _, t := range sideTables {
		data, err := os.ReadFile(pl.Archive.File(t))
		if err != nil && !os.IsNotExist(err) {
			return "", err
		}
		b.WriteString(store.Hash(data))
	}
	return store.Hash([]byte(b.String())), nil
}

// Refresh computes all figures again where anything they depend on has
// changed; force computes them in any case. It says whether it did.
func (pl *Pipeline) Refresh(ctx context.Context, force bool) (bool, error) {
	stamp, err := pl.figuresStamp()
	if err != nil {
		return false, err
	}
	have, err := pl.state(ctx, "figures")
	if err != nil {
		return false, err
	}
	if have == stamp && !force {
		return false, nil
	}
	pl.texts = nil // all sheets are loaded
	base, err := pl.figuresBase()
	if err != nil {
		return false, err
	}
	if !force {
		if done, err := pl.refreshSome(ctx, base); err != nil {
			return false, err
		} else if done {
			pl.Progress.Done()
			return true, pl.noteFigures(ctx, stamp, base, [2]string{stateSome, "yes"})
		}
	}
	w := &work{full: force, keepLink: !pl.readOnly}
	for i := range steps {
		if err := pl.runStep(ctx, w, i); err != nil {
			return false, err
		}
	}
	pl.Progress.Done()
	return true, pl.noteFigures(ctx, stamp, base, allRefreshed(w)...)
}

// RefreshAll brings all figures up to date, those too that rest on all lines
// together and were carried on when the last sheets came (refresh_some.go). The
// same archive then has the same figures, whatever the order of loading.
func (pl *Pipeline) RefreshAll(ctx context.Context) error {
	some, err := pl.state(ctx, stateSome)
	if err != nil {
		return err
	}
	stamp, err := pl.figuresStamp()
	if err != nil {
		return err
	}
	have, err := pl.state(ctx, "figures")
	if err == nil && (some == "yes" || have != stamp) { // new sheets must not be taken up on their own here
		_, err = pl.Refresh(ctx, true)
	}
	return err
}

// runStep runs one step of a refresh.
func (pl *Pipeline) runStep(ctx context.Context, w *work, i int) error {
	pl.Progress.Step(steps[i].name, int64(i), int64(len(steps)))
	return pl.runOne(ctx, w, steps[i])
}

func (pl *Pipeline) runOne(ctx context.Context, w *work, s step) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	began := time.Now()
	if err := s.run(pl, ctx, w); err != nil {
		return fmt.Errorf("%s: %w", strings.ToLower(s.name), err)
	}
	pl.took(s.name, began)
	return nil
}

// Timing is how long one piece of work took.
type Timing struct {
	What    string
	Seconds float64
}

// took notes how long a piece of work took since it began.
func (pl *Pipeline) took(what string, began time.Time) {
	pl.Timings = append(pl.Timings, Timing{what, time.Since(began).Seconds()})
}

func (pl *Pipeline) stepRead(ctx context.Context, w *work) (err error) {
	w.field, err = pl.readField(ctx)
	return err
}

func (pl *Pipeline) stepCompare(ctx context.Context, w *work) error {
	w.problems = append(w.problems, w.field.compared()...)
	return nil
}

func (pl *Pipeline) stepDecisions(ctx context.Context, w *work) error {
	all, err := pl.allDecisions()
	if err != nil {
		return err
	}
	w.decisions = inForce(append(all, w.proposed...))
	w.clubs = w.field.knowClubs(pl.Settings.clubBook(w.decisions))
	if w.desk, err = w.field.applyLineDecisions(w.decisions); err != nil {
		return err
	}
	if w.states, err = w.field.runStates(w.decisions, pl.courses); err != nil {
		return err
	}
	w.problems = append(w.problems, w.desk.problems...)
	w.problems = append(w.problems, w.field.samePersonTwice(w.desk, pl.workers())...)
	return nil
}

func (pl *Pipeline) stepGather(ctx context.Context, w *work) error {
	f := w.field
	// lines that repeat another are the same person's
	for i := 0; i < f.n; i++ {
		for j, hops := i, 0; f.runner[i] == 0 && f.sameAs[j] >= 0 && hops < 8; hops++ {
			j = int(f.sameAs[j])
			f.runner[i] = f.runner[j]
		}
	}
	f.settleCounts(f.timesVoid(w.states))
	w.people = f.gather(pl.workers())
	w.people.now = w.link.now
	w.problems = append(w.problems, f.onceARun(w.people)...)
	var err error
	if w.wishes, err = wishesOf(w.decisions, w.link); err != nil {
		return err
	}
	w.problems = append(w.problems, w.doubtfulNames()...)
	for n, sex := range w.wishes.sex {
		if r, ok := slices.BinarySearch(w.people.no, n); ok {
			w.people.sex[r] = sex
		}
	}
	members, problems, err := pl.joinMembers(f, w.people, pl.Settings.clubBook(w.decisions))
	if err != nil {
		return err
	}
	w.members = members
	w.problems = append(w.problems, problems...)
	if w.held, problems, err = pl.heldRecords(f, w.people); err != nil {
		return err
	}
	w.problems = append(w.problems, problems...)
	f.ages(w.people, &w.figures, f.rule, pl.workers())
	f.markChildren(&w.figures, pl.Settings.AgeNotKnown)
	return nil
}

func (pl *Pipeline) stepGrades(ctx context.Context, w *work) error {
	return pl.ageGrades(w.field, w.people, &w.figures)
}

func (pl *Pipeline) stepHistories(ctx context.Context, w *work) error {
	var missing []history.Run
	for _, s := range w.states {
		switch s.state {
		case "cancelled", "abandoned":
			missing = append(missing, history.Run{Course: s.course, Day: s.day, State: history.NotHeld})
		case "times lost":
			missing = append(missing, history.Run{Course: s.course, Day: s.day, State: history.SheetMissing})
		}
	}
	if err := pl.histories(ctx, w.field, w.people, &w.figures, missing, w.decisions); err != nil {
		return err
	}
	w.problems = append(w.problems, w.figures.problems...)
	return nil
}
