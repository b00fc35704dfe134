package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/unit"
)

// ofRun is " of COURSE on DATE", as far as they are given.
func ofRun(course, date string) (s string) {
	if course != "" {
		s += " of " + course
	}
	if date != "" {
		s += " on " + date
	}
	return s
}

func (a *app) weeklyCommand() *cobra.Command {
	var course, date string
	c := &cobra.Command{
		Use:     "weekly",
		Short:   "Write the weekly reports of a run (default: the latest of each course)",
		Example: "  lapwing weekly\n  lapwing weekly --course alder-bank --date 2026-01-03",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx := cmd.Context()
			day := unit.Day(0)
			if date != "" {
				var err error
				if day, err = unit.ParseDay(date); err != nil {
					return usagef("--date: %w", err)
				}
			}
			return a.with(ctx, pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				if _, err := pl.Refresh(ctx, false); err != nil {
					return err
				}
				runs, err := pl.LatestRuns(ctx)
				if course != "" || date != "" {
					runs, err = pl.Runs(ctx, course, day)
					if date == "" && len(runs) > 0 {
						runs = runs[len(runs)-1:]
					}
				}
				if err != nil {
					return err
				}
				if len(runs) == 0 {
					if course == "" && date == "" {
						return fmt.Errorf("there is no run in the archive yet. Save a sheet in the folder %s and type lapwing run", a.settings.Inbox)
					}
					return fmt.Errorf("no run%s in the archive; lapwing sheets lists what is there", ofRun(course, date))
				}
				files, err := a.writeWeekly(ctx, pl, runs, "")
				if err != nil {
					return err
				}
				if err := a.asJSON(files); err != nil {
					return err
				}
				if len(files) == 0 {
					a.say("The reports are up to date; none was written.")
					return nil
				}
				a.sayWritten(files, len(runs))
				return nil
			})
		},
	}
	c.Flags().StringVar(&course, "course", "", "course (default: all)")
	c.Flags().StringVar(&date, "date", "", "date, YYYY-MM-DD (default: the latest)")
	return c
}
