package pipeline

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"time"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/unit"
)

// The fixed quantities of the model (spread of times, of form, of effort …) are
// the standard ones in a small archive. A larger one is tuned on its own
// results, and again whenever it has grown by half. So that the same archive
// has the same figures in whatever order and steps it was loaded, what tuning
// looks at is a matter of the archive's results alone: the earliest ones, as
// many as the largest number of the row 20 000, 30 000, 45 000 … that the
// archive has reached. The outcome is kept in the database to save the time; it
// comes out the same when it is computed again.
//
// Somebody who doesn't want to wait for that can have the whole archive looked
// at now (lapwing refresh --tune). That is a decision, so it is kept in the
// archive folder, tuning.csv, and holds until the row goes half as far again.
const (
	tuneFirst  = 20000  // results from which an archive is tuned
	tuneGrowth = 1.5    // and again each time it has grown by so much
	tuneMost   = 150000 // results looked at, about: more tell nothing new
)

// Where the fixed quantities come from.
const (
	standardQuantities = "standard"
	tunedQuantities    = "tuned"
	keptQuantities     = "standard, tuning gained too little"
)

// quantities are the model's fixed quantities and where they come from.
type quantities struct {
	Hyper   speed.Hyper `json:"values"`
	Source  string      `json:"source"`
	ByHand  bool        `json:"by_hand,omitempty"` // with refresh --tune
	Results int         `json:"results,omitempty"` // that the archive had, or as many of the earliest
	Looked  int         `json:"looked,omitempty"`  // at so many of them
	Upto    string      `json:"upto,omitempty"`    // newest run among them
	Before  float64     `json:"score_before,omitempty"`
	After   float64     `json:"score_after,omitempty"`
}

// words says in a sentence where the quantities come from.
func (q quantities) words() string {
	on := fmt.Sprintf("the %s results up to %s", thousands(q.Results), q.Upto)
	if q.Looked < q.Results*9/10 {
		on = fmt.Sprintf("%s of %s, those on some of the courses", thousands(q.Looked), on)
	}
	const what = "The model's settings (how much times scatter, how often people run all-out, how form changes)"
	likelier := math.Exp(q.After - q.Before)
	switch q.Source {
	case tunedQuantities:
		return fmt.Sprintf("%s were worked out from %s. That makes a typical result of other runners %.2f times as likely as the standard settings do.", what, on, likelier)
	case keptQuantities:
		return fmt.Sprintf("%s are the standard ones. Others, worked out from %s, make a typical result of other runners only %.3f times as likely: too little to change all figures for.", what, on, likelier)
	}
	return fmt.Sprintf("%s are the standard ones: fewer than %s results are too few to work out others.", what, thousands(tuneFirst))
}

// keptTuning is an outcome of tuning as the database keeps it.
type keptTuning struct {
	Key        string
	Quantities quantities
}

const tuningState = "speed tuning"

// quantities gives the fixed quantities for the archive.
func (pl *Pipeline) quantities(ctx context.Context, in *speedColumns) (quantities, error) {
	reach := tuningReach(len(in.Run))
	if byHand, ok, err := pl.tunedByHand(); err != nil || ok && float64(reach) <= tuneGrowth*float64(byHand.Results) {
		return byHand, err
	}
	if reach == 0 {
		return quantities{Hyper: speed.Defaults(), Source: standardQuantities}, nil
	}
	sample := in.earliest(reach)
	key := sample.key()
	var kept keptTuning
	text, err := pl.state(ctx, tuningState)
	if err != nil {
		return quantities{}, err
	}
	if text != "" {
		if err := json.Unmarshal([]byte(text), &kept); err != nil {
			return quantities{}, fmt.Errorf("what is kept of the last tuning: %w", err)
		}
	}
	if kept.Key == key {
		return kept.Quantities, nil
	}
	q, err := pl.tune(ctx, sample)
	if err != nil || pl.readOnly {
		return q, err
	}
	b, err := json.Marshal(keptTuning{key, q})
	if err != nil {
		return q, err
	}
	return q, pl.DB.Transaction(ctx, func() error { return pl.setState(ctx, tuningState, string(b)) })
}

// tuningReach is the largest number of the row of tuneFirst, tuneGrowth times
// that … that n has reached, 0 below the first.
func tuningReach(n int) int {
	reach := 0
	for next := tuneFirst; next <= n; next = int(float64(next) * tuneGrowth) {
		reach = next
	}
	return reach
}

func (pl *Pipeline) tune(ctx context.Context, sample *tuningSample) (quantities, error) {
	defer pl.took("Tuning the model", time.Now())
	h, r, err := speed.Tune(ctx, sample.Input, speed.Defaults(), pl.workers())
	q := quantities{Hyper: h, Source: keptQuantities, Results: sample.results, Looked: len(sample.Run), Upto: sample.upto.String(), Before: r.Before, After: r.After}
	switch {
	case r.Runners == 0: // too few of them
		q = quantities{Hyper: h, Source: standardQuantities}
	case r.Tuned:
		q.Source = tunedQuantities
	}
	return q, err
}

// tuningSample is what tuning looks at.
type tuningSample struct {
	*speed.Input
	results int // it stands for so many
	upto    unit.Day
}

// earliest gives the results of the earliest runs that hold at least n results
// together. Where that is more than tuneMost it keeps every so many-th course,
// whole: a few results of every run would not tell the conditions of any.
// Courses and runs without results are left out, so that what comes later
// changes nothing.
func (in *speedColumns) earliest(n int) *tuningSample {
	s := &tuningSample{Input: &speed.Input{Offsets: []int32{0}}, results: n}
	want, held := in.earlyRuns(n)
	every := (held + tuneMost - 1) / tuneMost
	runAt := make([]int32, len(in.Runs))
	course, last := -1, int32(-1)
	for e, k := range in.Runs {
		if !want[e] {
			continue
		}
		fresh := k.Course != last
		if fresh {
			last = k.Course
			course++
		}
		if want[e] = course%every == 0; !want[e] {
			continue
		}
		if fresh {
			s.Courses = append(s.Courses, in.Courses[k.Course])
		}
		runAt[e] = int32(len(s.Runs))
		s.Runs = append(s.Runs, speed.RunInfo{Course: int32(len(s.Courses) - 1), Day: k.Day})
		s.upto = max(s.upto, unit.Day(k.Day))
	}
	for r := range in.Runners() {
		for i := in.Offsets[r]; i < in.Offsets[r+1]; i++ {
			if e := in.Run[i]; want[e] {
				s.Run = append(s.Run, runAt[e])
				s.LogTime = append(s.LogTime, in.LogTime[i])
			}
		}
		if end := int32(len(s.Run)); end > s.Offsets[len(s.Offsets)-1] {
			s.Offsets = append(s.Offsets, end)
		}
	}
	return s
}

// earlyRuns marks the earliest runs that hold at least n results together, and
// says how many they hold.
func (in *speedColumns) earlyRuns(n int) (early []bool, held int) {
	count := make([]int, len(in.Runs))
	for _, e := range in.Run {
		count[e]++
	}
	order := make([]int32, len(in.Runs))
	for e := range order {
		order[e] = int32(e)
	}
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(in.Runs[a].Day, in.Runs[b].Day), cmp.Compare(a, b))
	})
	early = make([]bool, len(in.Runs))
	for _, e := range order {
		if held >= n {
			break
		}
		early[e] = true
		held += count[e]
	}
	return early, held
}

// key sums up everything that the outcome of tuning depends on.
func (s *tuningSample) key() string {
	h := sha256.New()
	fmt.Fprintln(h, ModelVersion, s.results, len(s.Offsets), len(s.Run), len(s.Runs), len(s.Courses))
	for _, column := range []any{s.Offsets, s.Run, s.LogTime, s.Runs, s.Courses} {
		if err := binary.Write(h, binary.LittleEndian, column); err != nil {
			panic(err) // a column that is not of fixed size
		}
	}
	return hex.EncodeToString(h.Sum(nil)[:16])
}

const tuningTable = "tuning.csv"

// tuningColumns are the columns of tuning.csv; the quantities come last, by
// name.
func tuningColumns() []string {
	c := []string{"tuned_at", "model_version", "results", "looked", "upto", "source", "score_before", "score_after"}
	for _, f := range new(speed.Hyper).Fields() {
		c = append(c, f.Name)
	}
	return c
}

// tunedByHand gives the last quantities of tuning.csv that are of this version
// of the model.
func (pl *Pipeline) tunedByHand() (q quantities, ok bool, err error) {
	rows, err := pl.Archive.ReadTable(tuningTable, tuningColumns())
	if err != nil {
		return q, false, err
	}
	for i := len(rows) - 1; i >= 0; i-- {
		r := rows[i]
		if r[1] != ModelVersion {
			continue
		}
		q = quantities{Upto: r[4], Source: r[5], ByHand: true}
		var errs [4]error
		q.Results, errs[0] = strconv.Atoi(r[2])
		q.Looked, errs[1] = strconv.Atoi(r[3])
		q.Before, errs[2] = strconv.ParseFloat(r[6], 64)
		q.After, errs[3] = strconv.ParseFloat(r[7], 64)
		bad := cmp.Or(errs[0], errs[1], errs[2], errs[3])
		for k, f := range q.Hyper.Fields() {
			v, err := strconv.ParseFloat(r[8+k], 64)
			*f.Value, bad = v, cmp.Or(bad, err)
		}
		if bad = cmp.Or(bad, q.Hyper.Check()); bad != nil {
			return q, false, fmt.Errorf("%s:%d: %w. Delete the line, then tune again: lapwing refresh --tune", pl.Archive.File(tuningTable), i+2, bad)
		}
		return q, true, nil
	}
	return q, false, nil
}

// Tune looks at the whole archive, keeps the fixed quantities that predict its
// results best in the archive folder, and says in a sentence what came of it.
// Figures follow with the next refresh.
func (pl *Pipeline) Tune(ctx context.Context) (string, error) {
	in, err := pl.speedColumns(ctx)
	if err != nil {
		return "", err
	}
	if len(in.Run) < tuneFirst {
		return fmt.Sprintf("Nothing to tune: the archive has %s timed results of known runners, and fewer than %s are too few. The standard settings stay.",
			thousands(len(in.Run)), thousands(tuneFirst)), nil
	}
	q, err := pl.tune(ctx, in.earliest(len(in.Run)))
	if err != nil {
		return "", err
	}
	if q.Source == standardQuantities {
		return "Nothing to tune: the archive has too few runners. The standard settings stay.", nil
	}
	number := func(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
	line := []string{time.Now().UTC().Format(time.RFC3339), ModelVersion, strconv.Itoa(q.Results), strconv.Itoa(q.Looked), q.Upto, q.Source, number(q.Before), number(q.After)}
	for _, f := range q.Hyper.Fields() {
		line = append(line, number(*f.Value))
	}
	return q.words(), pl.Archive.AppendTable(tuningTable, tuningColumns(), [][]string{line})
}

// speedColumns does the steps of a refresh up to the model and gives its input.
// Nothing is written.
func (pl *Pipeline) speedColumns(ctx context.Context) (*speedColumns, error) {
	w := &work{}
	for i := range steps {
		if steps[i].name == stepNameSpeed {
			break
		}
		if err := pl.runStep(ctx, w, i); err != nil {
			return nil, err
		}
	}
	pl.Progress.Done()
	return w.field.speedInput(w.people, nil, pl.workers()), nil
}

// thousands prints a number as people read it: 40,000.
func thousands(n int) string {
	s := strconv.Itoa(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}
