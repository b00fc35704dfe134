package pipeline

import (
	"context"
	"errors"
	"fmt"
	"math"

	"lapwing/pipeline/insight/speed"
)

// SpeedAudit is what checks of the model on the archive's own results found.
type SpeedAudit struct {
	Results  int           `json:"results"`
	Lines    []string      `json:"findings"`
	Figures  *speed.Audit  `json:"figures"`
	Bins     []ResidualBin `json:"residuals"`
	Distance string        `json:"-"` // greatest difference of the two columns of Bins, in words
}

// ResidualBin counts results by how far they were from what their runner's
// other results, the course and the day lead one to expect.
type ResidualBin struct {
	Words    string  `json:"time_against_expectation"`
	Observed int     `json:"results"`
	Expected float64 `json:"model_expects"`
}

// AuditSpeed checks the model where nobody knows the truth: on the archive's own
// results. It fits the model several times.
func (pl *Pipeline) AuditSpeed(ctx context.Context) (*SpeedAudit, error) {
	in, err := pl.speedColumns(ctx)
	if err != nil {
		return nil, err
	}
	if len(in.Run) == 0 {
		return nil, errors.New("nothing to check yet: no timed results of named runners are loaded")
	}
	pl.Progress.Step("Checking the model", 0, 1)
	defer pl.Progress.Done()
	q, err := pl.quantities(ctx, in)
	if err != nil {
		return nil, err
	}
	a, err := speed.RunAudit(ctx, in.Input, q.Hyper, pl.workers())
	if err != nil {
		return nil, err
	}
	out := &SpeedAudit{Results: len(in.Run), Figures: a, Lines: append([]string{q.words()}, a.Words()...)}
	var total, apart float64
	for i, b := range a.Histogram {
		words := fmt.Sprintf("%s to %s", percent(b.Low), percent(b.High))
		if i == 0 {
			words = "below " + percent(b.High)
		} else if i == len(a.Histogram)-1 {
			words = "over " + percent(b.Low)
		}
		out.Bins = append(out.Bins, ResidualBin{words, int(b.Observed), math.Round(b.Expected*10) / 10})
		total += b.Observed
		apart += math.Abs(b.Observed-b.Expected) / 2
	}
	if total > 0 {
		out.Distance = fmt.Sprintf("%.1f %% of the results would have to move to another line for the two columns to agree.", 100*apart/total)
	}
	return out, nil
}

// percent prints a whole percentage with its sign: "+3 %", "−8 %", "0 %".
func percent(v float64) string {
	switch {
	case v > 0:
		return fmt.Sprintf("+%.0f %%", v)
	case v < 0:
		return fmt.Sprintf("\u2212%.0f %%", -v)
	}
	return "0 %"
}
