package main

import (
	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/text"
)

func (a *app) exportCommand() *cobra.Command {
	var format string
	var private bool
	c := &cobra.Command{
		Use: "export DIR", Short: "Write results, runs, courses and runners for other programs",
		Long: `Write the views for other programs into a folder: results, runs, courses,
runners and volunteers, as CSV or as Parquet (a folder a year).

Children's names are shortened and hidden people left anonymous. --private adds
full names and what is known of birth dates: keep those files to yourself.`,
		Example: "  lapwing export out\n  lapwing export out --format parquet",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if format != "csv" && format != "parquet" {
				return usagef("--format %q: write csv or parquet", format)
			}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				if err := pl.RefreshAll(cmd.Context()); err != nil {
					return err
				}
				files, err := pl.Export(cmd.Context(), args[0], format, private)
				if err != nil {
					return err
				}
				a.say("%s written to %s", text.Count(len(files), "file"), args[0])
				return a.asJSON(files)
			})
		},
	}
	c.Flags().StringVar(&format, "format", "csv", "csv or parquet")
	c.Flags().BoolVar(&private, "private", false, "add full names and birth dates as far as known")
	return c
}
