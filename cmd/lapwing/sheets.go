package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/store"
)

func (a *app) sheetsCommand() *cobra.Command {
	c := &cobra.Command{
		Use:     "sheets",
		Short:   "What is loaded and its state",
		Example: "  lapwing sheets\n  lapwing sheets problems\n  lapwing sheets explain alder-bank_2026-01-03.csv:14\n  lapwing sheets withdraw alder-bank_2026-01-03.csv",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			pl, err := a.open(cmd.Context(), pipeline.ReadOnly)
			if err != nil { // no archive yet, or another process is writing: the ledger can be read all the same
				if pl, err = pipeline.ForReading(a.settings); err != nil {
					return err
				}
			}
			defer pl.Close()
			list, err := pl.Sheets()
			if err != nil {
				return err
			}
			if a.json {
				return a.asJSON(list)
			}
			w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
			fmt.Fprintln(w, "No.\tSheet\tLines\tState\tLoaded")
			for _, e := range list {
				fmt.Fprintf(w, "%d\t%s\t%d\t%s\t%s\n", e.Seq, e.Path, e.Rows, e.State, e.LoadedAt.Local().Format("2006-01-02"))
			}
			if err := w.Flush(); err != nil {
				return err
			}
			questions, err := pl.WaitingQuestions()
			if err != nil {
				return err
			}
			for _, q := range questions {
				fmt.Fprintln(a.out, "Waiting:", q)
			}
			return nil
		},
	}
	c.AddCommand(a.stateCommand("withdraw", "Take a sheet out of all figures; its copy stays", store.Withdrawn),
		a.stateCommand("restore", "Use a withdrawn sheet again", store.Loaded), a.problemsCommand(), a.explainCommand())
	return c
}

func (a *app) stateCommand(verb, short string, state store.SheetState) *cobra.Command {
	return &cobra.Command{
		Use: verb + " SHEET", Short: short,
		Example: "  lapwing sheets " + verb + " alder-bank_2026-01-03.csv",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				e, err := pl.SetState(cmd.Context(), args[0], state)
				if err != nil {
					return err
				}
				if _, err := pl.Refresh(cmd.Context(), false); err != nil {
					return err
				}
				a.say("%s is %s now, and all figures are up to date. To write the reports that this changes: lapwing run", e.Path, state)
				return a.asJSON(e)
			})
		},
	}
}

func (a *app) problemsCommand() *cobra.Command {
	var all bool
	c := &cobra.Command{
		Use: "problems [SHEET]", Short: "What needs a look, worst first",
		Example: "  lapwing sheets problems\n  lapwing sheets problems alder-bank_2026-01-03.csv --all",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				path := ""
				if len(args) == 1 {
					e, err := pl.FindSheet(args[0])
					if err != nil {
						return err
					}
					path = e.Path
				}
				list, err := pl.Problems(cmd.Context(), path)
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(list)
				}
				if len(list) == 0 {
					a.say("Nothing needs a look.")
				}
				most := 10
				if all {
					most = len(list)
				}
				printProblems(a, list, most)
				return nil
			})
		},
	}
	c.Flags().BoolVar(&all, "all", false, "show all of them, not only the ten worst")
	return c
}

func (a *app) explainCommand() *cobra.Command {
	return &cobra.Command{
		Use: "explain SHEET:ROW", Short: "How a row was read and what became of it",
		Example: "  lapwing sheets explain alder-bank_2026-01-03.csv:14\n  lapwing sheets explain \"results.xlsx:Sheet1!14\"",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				if !a.json {
					return pl.Explain(cmd.Context(), args[0], a.out)
				}
				var text strings.Builder
				if err := pl.Explain(cmd.Context(), args[0], &text); err != nil {
					return err
				}
				return a.asJSON(map[string]string{"row": args[0], "explanation": text.String()})
			})
		},
	}
}
