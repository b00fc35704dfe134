package main

import (
	"github.com/spf13/cobra"

	"lapwing/pipeline"
)

func (a *app) refreshCommand() *cobra.Command {
	tune := false
	c := &cobra.Command{
		Use: "refresh", Short: "Compute all figures again",
		Example: "  lapwing refresh\n  lapwing refresh --tune",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				if tune {
					found, err := pl.Tune(cmd.Context())
					if err != nil {
						return err
					}
					a.say("%s", found)
				}
				if _, err := pl.Refresh(cmd.Context(), true); err != nil {
					return err
				}
				a.say("All figures are up to date.")
				return a.asJSON(map[string]bool{"refreshed": true})
			})
		},
	}
	c.Flags().BoolVar(&tune, "tune", false, "first choose the fixed quantities of the course-speed model anew,\nby how well they predict this archive's results")
	return c
}

func (a *app) rebuildCommand() *cobra.Command {
	return &cobra.Command{
		Use: "rebuild", Short: "Make the whole database again from the archive folder",
		Long:    "Make the database again from the sheet copies, decisions and side tables of\nthe archive folder. Nothing is lost: runner ids and figures come out the same.",
		Example: "  lapwing rebuild",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.Afresh, func(pl *pipeline.Pipeline) error {
				if _, err := pl.Refresh(cmd.Context(), true); err != nil {
					return err
				}
				a.say("The database was made again from %s.", a.settings.Archive)
				return a.asJSON(map[string]bool{"rebuilt": true})
			})
		},
	}
}
