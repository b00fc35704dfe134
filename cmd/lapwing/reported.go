package main

import (
	"github.com/spf13/cobra"

	"lapwing/pipeline"
)

// reportedCommand is for benchmarks: it notes that the reports of all runs are
// as they should be, without writing them.
func (a *app) reportedCommand() *cobra.Command {
	return &cobra.Command{
		Use: "reported", Hidden: true, Args: cobra.NoArgs,
		Example: "  lapwing reported",
		Short:   "Note that no report needs to be written",
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error { return pl.Reported(cmd.Context()) })
		},
	}
}
