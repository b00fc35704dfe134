package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/text"
)

func (a *app) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use: "check", Short: "Test the rules that always hold, and the archive against the database",
		Example: "  lapwing check",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				if err := pl.RefreshAll(cmd.Context()); err != nil {
					return err
				}
				faults, n, err := pl.Check(cmd.Context())
				if err != nil {
					return err
				}
				if err := a.asJSON(map[string]any{"checked": n, "faults": faults}); err != nil {
					return err
				}
				if !a.json {
					for _, f := range faults {
						fmt.Fprintf(a.out, "%s (%d)\n", f.What, f.Rows)
					}
				}
				if len(faults) > 0 {
					return fmt.Errorf("%s broken. Try lapwing rebuild; if it stays, report it", text.Count(len(faults), "rule"))
				}
				a.say("%s checked, all well.", fmt.Sprintf("%d rules and copies", n))
				return nil
			})
		},
	}
}
