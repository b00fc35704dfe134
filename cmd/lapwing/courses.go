package main

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

func (a *app) coursesCommand() *cobra.Command {
	c := &cobra.Command{
		Use:   "courses",
		Short: "How fast each course is; carry a time from one to another",
		Long: `How fast each course is, for the same runner with the same effort on an
average day. Only courses of one distance that share runners can be compared.`,
		Example: "  lapwing courses\n  lapwing courses convert 24:31 --from alder-bank --to fen-drove\n  lapwing courses audit",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				t, err := pl.CourseTable(cmd.Context())
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(t)
				}
				fmt.Fprint(a.out, courseTable(t))
				return nil
			})
		},
	}
	c.AddCommand(a.convertCommand(), a.auditCommand())
	return c
}

// courseTable lays the courses out in sets that can be compared.
func courseTable(t *pipeline.CourseTable) string {
	if len(t.Sets) == 0 {
		return "There are no courses yet: load a sheet first.\n"
	}
	var b strings.Builder
	ranked := false
	networks := map[int32]bool{}
	for _, set := range t.Sets {
		networks[set.Network] = true
	}
	for _, set := range t.Sets {
		b.WriteString(setHeading(set, len(networks) > 1) + "\n\n")
		x := &table.Table{Columns: []table.Column{
			{Head: "Rank", Kind: table.Whole}, {Head: "Course"}, {Head: "Index"}, {Head: "Against average"},
			{Head: "Results", Kind: table.Whole}, {Head: "Runs", Kind: table.Whole}, {Head: "Shared", Kind: table.Whole}, {Head: "Link"},
		}}
		var remarks []string
		for _, c := range set.Courses {
			var rank table.Value
			if c.Rank > 0 {
				rank = table.Number(c.Rank)
				ranked = true
			}
			index, seconds, link := "none", "", ""
			if len(set.Courses) > 1 { // else there is nothing to compare with
				link = c.Link
			}
			if c.Index != nil {
				index = fmt.Sprintf("%.1f (%.1f–%.1f)", *c.Index, *c.Low, *c.High)
				seconds = secondsWithin(*c.Seconds, *c.SecondsLow, *c.SecondsHigh)
			}
			x.Add(nil, rank, table.Words(c.Name), table.Words(index), table.Words(seconds),
				table.Number(c.Results), table.Number(c.Runs), table.Number(c.SharedRunners), table.Words(link))
			if c.Reason != "" {
				state := "no index"
				if c.Index != nil {
					state = "provisional"
				}
				remarks = append(remarks, fmt.Sprintf("%s: %s: %s.", c.Name, state, c.Reason))
			}
			if !c.Measured {
				remarks = append(remarks, fmt.Sprintf("%s: not known to be measured.", c.Name))
			}
		}
		x.WriteText(&b, 0)
		if len(remarks) > 0 {
			b.WriteString("\n" + strings.Join(remarks, "\n") + "\n")
		}
		b.WriteString("\n")
	}
	if ranked {
		b.WriteString(table.Wrap(`Index: 100 is the average of these courses, higher is faster. Against average: what the course adds (+) or saves (−) for somebody who takes 25:00 on the average of them, with the range that holds the true figure nine times in ten. Where two ranges overlap, either course may be the faster one. A fast course may be flatter, firmer, sheltered or measured differently. Shared: runners who have also run another of the courses. Link: how well they tie a course to the others: weak under 50 of them, fair under 100, good under 300, strong from there on.`, 80) + "\n")
	}
	if t.Basis.Results > 0 {
		b.WriteString("\n" + table.Wrap(fmt.Sprintf("From %d results up to %s. %s", t.Basis.Results, t.Basis.NewestRun, t.Basis.Words), 80) + "\n")
		if !t.Basis.Settled {
			b.WriteString("The estimates had not quite come to rest; they may be a little off.\n")
		}
	}
	return b.String()
}

// setHeading says which courses stand together and why.
func setHeading(set pipeline.CourseSet, several bool) string {
	n := strconv.Itoa(len(set.Courses)) + " courses"
	if len(set.Courses) == 1 {
		n = "1 course"
	}
	h := unit.Distance(set.DistanceM) + ", " + n
	switch {
	case set.Network == 0:
		return h + ", no results to judge by yet"
	case set.Network > 1:
		return h + ", not linked with the courses above: nobody has run on both sides"
	case several && len(set.Courses) > 1:
		return h + ", linked by runners they share"
	}
	return h
}

// secondsWithin is "+38 s (31..45)".
func secondsWithin(s, low, high float64) string {
	sign := func(v float64) string {
		n := int(math.Round(v))
		switch {
		case n > 0:
			return "+" + strconv.Itoa(n)
		case n < 0:
			return "\u2212" + strconv.Itoa(-n)
		}
		return "0"
	}
	bare := func(v float64) string { return strings.TrimPrefix(sign(v), "+") }
	return fmt.Sprintf("%s s (%s..%s)", sign(s), bare(low), bare(high))
}

func (a *app) convertCommand() *cobra.Command {
	var q pipeline.ConvertRequest
	var date string
	c := &cobra.Command{
		Use:   "convert TIME --from COURSE --to COURSE",
		Short: "What a time on one course amounts to on another",
		Long: `What a time on one course amounts to on another, with an equal effort on an
average day. With --date the conditions of that day's run are allowed for; then
--to may be the same course, and is if it is left out.`,
		Example: "  lapwing courses convert 24:31 --from alder-bank --to fen-drove\n  lapwing courses convert 24:31 --from \"alder-bank 3 km\" --date 2026-01-03",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := readConvert(&q, args[0], date); err != nil {
				return usageError{err}
			}
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				return a.convert(cmd.Context(), pl, q)
			})
		},
	}
	f := c.Flags()
	f.StringVar(&q.From, "from", "", "course the time was run on; a distance may follow: \"alder-bank 3 km\"")
	f.StringVar(&q.To, "to", "", "course to carry it to")
	f.StringVar(&date, "date", "", "day the time was run, YYYY-MM-DD, to allow for its conditions")
	f.StringVar(&q.Session, "session", "", "which run of that day, where there were several")
	return c
}

// readConvert completes a request from the command line.
func readConvert(q *pipeline.ConvertRequest, clock, date string) (err error) {
	if q.TimeMS, err = pipeline.ParseClock(clock); err != nil {
		return err
	}
	if q.TimeMS <= 0 {
		return fmt.Errorf("time %q: write a time above 0, as in 24:31", clock)
	}
	if date != "" {
		if q.Day, err = unit.ParseDay(date); err != nil {
			return fmt.Errorf("--date: %w", err)
		}
		if q.To == "" {
			q.To = q.From
		}
	}
	switch {
	case q.From == "":
		return fmt.Errorf("--from is missing: which course was the time run on?")
	case q.To == "":
		return fmt.Errorf("--to is missing: which course shall it be carried to?")
	case q.Session != "" && date == "":
		return fmt.Errorf("--session needs --date")
	}
	return nil
}

func (a *app) convert(ctx context.Context, pl *pipeline.Pipeline, q pipeline.ConvertRequest) error {
	c, err := pl.Convert(ctx, q)
	if err != nil {
		return err
	}
	if a.json {
		return a.asJSON(c)
	}
	for _, line := range c.Words() {
		fmt.Fprintln(a.out, line)
	}
	return nil
}

func (a *app) auditCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "audit",
		Short: "Check the course-speed model on the archive's own results",
		Long: `Check the course-speed model on the archive's own results: does it predict
results that it has not seen, do two halves of the runners agree, do visitors
and residents, and are the times spread as the model expects? It fits the model
several times, so a large archive takes minutes. Nothing is changed.`,
		Example: "  lapwing courses audit",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				s, err := pl.AuditSpeed(cmd.Context())
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(s)
				}
				for _, line := range s.Lines {
					fmt.Fprintln(a.out, line)
				}
				x := &table.Table{
					Title:   "\nTimes against what the runner's other results, the course and the day lead one\nto expect (minus is faster):",
					Columns: []table.Column{{Head: "Time"}, {Head: "Results", Kind: table.Whole}, {Head: "Model expects", Kind: table.Whole}},
					None:    "nobody has 4 results yet",
				}
				for _, b := range s.Bins {
					x.Add(nil, table.Words(b.Words), table.Number(b.Observed), table.Number(b.Expected))
				}
				var b strings.Builder
				x.WriteText(&b, 0)
				fmt.Fprint(a.out, b.String())
				if s.Distance != "" {
					fmt.Fprintln(a.out, s.Distance)
				}
				return nil
			})
		},
	}
}
