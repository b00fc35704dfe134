package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/reports"
)

func (a *app) standingCommand() *cobra.Command {
	var workbook, page bool
	c := &cobra.Command{
		Use: "standing WHO", Short: "A runner's card: standing, history, form",
		Long: `A runner's card: where they stand in their age group, what their times were
worth on those courses and days, whether they are really getting faster, and
what the data can't say. WHO is a name or a runner id; where several people fit
they are listed, nobody is guessed.`,
		Example: "  lapwing standing \"Ines Okafor\"\n  lapwing standing R12 --publish",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx := cmd.Context()
			return a.with(ctx, pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				who, err := pl.FindRunner(ctx, args[0])
				if err != nil {
					return err
				}
				o := a.reportOptions()
				if workbook || page {
					if o, err = a.reportOptionsAt(ctx, pl); err != nil {
						return err
					}
				}
				card, err := reports.Standing(ctx, pl.DB, o, who.ID, reports.StandingOptions{From: pl.SeasonStart()})
				if err != nil {
					return err
				}
				var files []string
				if workbook || page {
					if err := os.MkdirAll(a.settings.Reports, 0o755); err != nil {
						return fmt.Errorf("can't make the reports folder: %w", err)
					}
					if files, err = card.Write(workbook, page); err != nil {
						return err
					}
				}
				if a.json {
					return a.asJSON(map[string]any{"runner": who, "figures": card.Facts(), "card": card.Text(), "files": files})
				}
				if len(files) == 0 {
					fmt.Fprint(a.out, card.Text())
				}
				for _, f := range files {
					a.say("%s", f)
				}
				return nil
			})
		},
	}
	c.Flags().BoolVar(&workbook, "xlsx", false, "write the card as a workbook")
	c.Flags().BoolVar(&page, "publish", false, "write the card as a page to send")
	return c
}
