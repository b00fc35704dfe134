package pipeline

import (
	"context"
	"encoding/json"
	"maps"
	"math"
	"slices"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/insight/speed"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

var (
	speedCourseSchema = store.Columns("course_no", store.Int32, "effect", store.Float64, "sd", store.Float64, "network", store.Int32,
		"basis", store.Text, "results", store.Int32, "runs", store.Int32, "shared_runners", store.Int32,
		"reason", store.Text, "group_no", store.Int32, "runners", store.Int32, "level", store.Float64,
		"share_resident", store.Float64, "share_visitor", store.Float64, "standing", store.Uint8, "reason_no", store.Uint8)
	speedRunSchema = store.Columns("run_no", store.Int32, "effect", store.Float64, "low", store.Float64, "high", store.Float64, "results", store.Int32,
		"fitted", store.Float64, "fitted_sd", store.Float64, "print", arrow.PrimitiveTypes.Int64)
	formSchema = store.Columns("runner_no", store.Int32, "form_s", store.Float64, "form_low", store.Float64, "form_high", store.Float64,
		"last_day", store.Date, "change", store.Float64, "change_sd", store.Float64, "p_faster", store.Float64, "p_level", store.Float64, "results", store.Int32,
		"level", store.Float64, "level_sd", store.Float64, "results_before", store.Int32, "results_within", store.Int32, "gap_days", store.Int32,
		"print", arrow.PrimitiveTypes.Int64)
)

// z90 is the half width of a 90 % interval in standard deviations.
const z90 = 1.6448536269514722

// speedFit is what is kept of the last full fit beside the tables of insight.
type speedFit struct {
	Version    string      `json:"model_version"`
	Quantities quantities  `json:"quantities"`
	Fitted     speed.Hyper `json:"fitted"` // with the spreads of days and courses as estimated
	Results    int         `json:"results"`
	Upto       string      `json:"newest_run"`
	Rounds     int         `json:"rounds"`
	Settled    bool        `json:"settled"` // the rounds stopped by themselves
	Updated    int         `json:"updated"` // results of runs that were added to it since
}

const speedFitState = "speed"

// speedFit gives what was kept, the zero value where there is nothing.
func (pl *Pipeline) speedFit(ctx context.Context) (k speedFit, err error) {
	text, err := pl.state(ctx, speedFitState)
	if err != nil || text == "" {
		return k, err
	}
	return k, json.Unmarshal([]byte(text), &k)
}

// keepSpeedFit keeps it, or nothing where nothing was fitted.
func (pl *Pipeline) keepSpeedFit(ctx context.Context, k speedFit) error {
	if k.Results == 0 {
		return pl.setState(ctx, speedFitState, "")
	}
	b, err := json.Marshal(k)
	if err != nil {
		return err
	}
	return pl.setState(ctx, speedFitState, string(b))
}

// writeSpeed fills the tables of the model, which are empty.
func (pl *Pipeline) writeSpeed(ctx context.Context, w *work) error {
	s := w.speed
	if err := pl.keepSpeedFit(ctx, s.fit); err != nil {
		return err
	}
	if err := pl.insertSpeedCourses(ctx, s.courses); err != nil {
		return err
	}
	return pl.insertRunsAndForms(ctx, s)
}

// writeSpeedSome puts what updateSome found in the place of what was there of
// the same runs and runners, and adds courses that are new. gone are runners
// who hold no line any more. Everything else in the tables stays.
func (pl *Pipeline) writeSpeedSome(ctx context.Context, w *work, gone []int32) error {
	s := w.speed
	if err := pl.keepSpeedFit(ctx, s.fit); err != nil {
		return err
	}
	if err := pl.deleteRows(ctx, "insight.run", "run_no", slices.Sorted(maps.Keys(s.fresh))); err != nil {
		return err
	}
	if err := pl.deleteRows(ctx, "insight.runner", "runner_no", slices.Concat(w.people.no, gone)); err != nil {
		return err
	}
	if err := pl.insertSpeedCourses(ctx, s.courses[s.kept:]); err != nil {
		return err
	}
	return pl.insertRunsAndForms(ctx, s)
}

// deleteRows deletes the rows whose key is one of the given numbers.
func (pl *Pipeline) deleteRows(ctx context.Context, table, key string, numbers []int32) error {
	if len(numbers) == 0 {
		return nil
	}
	if err := pl.pick(ctx, numbers); err != nil {
		return err
	}
	return pl.DB.Exec(ctx, "delete from "+table+" where "+key+" in (select number from picked)")
}

func (pl *Pipeline) insertSpeedCourses(ctx context.Context, courses []courseSpeed) error {
	return pl.insertRows(ctx, "insight.course", speedCourseSchema, len(courses), func(r row, i int) {
		c := courses[i]
		basis := c.Reason.String()
		switch c.Standing {
		case speed.Published:
			basis = "published"
		case speed.Provisional:
			basis = "provisional"
		}
		r.ints(0, c.no)
		r.numbers(1, c.Effect, c.SD)
		if c.Network < 0 {
			r.b.Field(3).AppendNull()
		} else {
			r.ints(3, c.Network+1)
		}
		r.texts(4, basis)
		r.ints(5, c.Results, c.Runs, c.SharedRunners)
		r.texts(8, c.Reason.String())
		r.ints(9, c.Group, c.Runners)
		r.numbers(11, c.Raw, c.ShareResident, c.ShareVisitor)
		r.small(14, uint8(c.Standing), uint8(c.Reason))
	})
}

func (pl *Pipeline) insertRunsAndForms(ctx context.Context, s *speedFigures) error {
	if err := pl.insertRows(ctx, "insight.run", speedRunSchema, len(s.runs), func(r row, i int) {
		k := s.runs[i]
		effect, lo, hi := nan(), nan(), nan()
		if k.Stated {
			effect = k.Effect
			lo, hi = k.Interval()
		}
		r.ints(0, k.no)
		r.numbers(1, effect, lo, hi)
		r.ints(4, k.Results)
		r.numbers(5, k.Effect, k.SD)
		r.long(7, k.print)
	}); err != nil {
		return err
	}
	return pl.insertRows(ctx, "insight.runner", formSchema, len(s.forms), func(r row, i int) {
		k := s.forms[i]
		form, low, high := nan(), nan(), nan()
		if k.ShownOn(int32(s.latest), s.fit.Fitted) {
			sd := k.SDOn(int32(s.latest), s.fit.Fitted)
			form = k.Seconds()
			low, high = form*math.Exp(-z90*sd), form*math.Exp(z90*sd)
		}
		change, sd, faster, level := nan(), nan(), nan(), nan()
		if k.HasChange {
			change, sd, faster, level = k.Change, k.ChangeSD, k.Faster(), k.Unchanged()
		}
		r.ints(0, k.no)
		r.numbers(1, form, low, high)
		r.day(4, unit.Day(k.LastDay))
		r.numbers(5, change, sd, faster, level)
		r.ints(9, k.Results)
		r.numbers(10, k.Log, k.SD)
		r.ints(12, k.Before, k.Within, k.Gap)
		r.long(15, k.print)
	})
}

func (r row) long(at int, v int64) { r.b.Field(at).(*array.Int64Builder).Append(v) }
