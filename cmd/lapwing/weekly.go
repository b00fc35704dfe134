package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/unit"
)

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
					return fmt.Errorf("no run of %s %s in the archive; see lapwing sheets", course, date)
				}
				files, err := a.writeWeekly(ctx, pl, runs)
				if err != nil {
					return err
				}
				if err := a.asJSON(files); err != nil {
					return err
				}
				if len(files) == 0 {
					a.say("The reports are up to date; none was written.")
				}
				if len(files) > mostFiles {
					a.say("%s written to %s", count(len(files), "file"), a.settings.Reports)
					return nil
				}
				for _, f := range files {
					a.say("%s", f)
				}
				return nil
			})
		},
	}
	c.Flags().StringVar(&course, "course", "", "course (default: all)")
	c.Flags().StringVar(&date, "date", "", "date, YYYY-MM-DD (default: the latest)")
	return c
}
