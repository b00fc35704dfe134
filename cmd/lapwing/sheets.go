package main

import (
	"cmp"
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/place"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
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
			idle, err := pl.Idle(cmd.Context())
			if err != nil {
				return err
			}
			w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
			fmt.Fprintln(w, "No.\tSheet\tLines\tState\tLoaded")
			for _, e := range list {
				fmt.Fprintf(w, "%d\t%s\t%d\t%s\t%s\n", e.Seq, e.Path, e.Rows, cmp.Or(idle[e.Seq], string(e.State)), e.LoadedAt.Local().Format("2006-01-02"))
			}
			if err := w.Flush(); err != nil {
				return err
			}
			if len(idle) > 0 {
				a.say("Replaced: a later sheet of the run stands. Left out: until somebody says of which run it is, see lapwing sheets problems.")
			}
			questions, err := pl.WaitingQuestions(cmd.Context())
			if err != nil {
				return err
			}
			a.askQuestions(questions)
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
				if e.Rows == 0 {
					a.say("%s is %s now.", e.Path, e.State)
				} else {
					a.say("%s is %s now, and all figures are up to date. To write the reports that this changes: lapwing run", e.Path, e.State)
				}
				if e.State == store.Waiting {
					a.say("To see what it waits for: lapwing sheets problems %s", text.Typed(e.Path))
				}
				return a.asJSON(e)
			})
		},
	}
}

func (a *app) problemsCommand() *cobra.Command {
	var all, settled bool
	var accept pipeline.Accept
	c := &cobra.Command{
		Use: "problems [SHEET]", Short: "What needs a look, worst first",
		Long: `What needs a look, worst first, after the sheets that wait for an answer. Once a line has been corrected, a sheet
withdrawn, or a later sheet of the run loaded, it is no longer listed.

--accept KIND says that all problems of that kind need no look any more: of one
sheet where you name it, of a course or a day, or of everything loaded so far.
Sheets that you load later are looked at anew. It is kept as a decision and can
be taken back with lapwing correct --undo.`,
		Example: `  lapwing sheets problems
  lapwing sheets problems alder-bank_2026-01-03.csv --all
  lapwing sheets problems --accept "position repeated" --course alder-bank --why "two funnels"
  lapwing sheets problems --settled`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if accept.Kind != "" {
				if len(args) == 1 {
					accept.Sheet = args[0]
				}
				return a.acceptProblems(cmd, accept)
			}
			if accept.Course != "" || accept.Date != "" || accept.Why != "" {
				return usageError{fmt.Errorf("--course, --date and --why go with --accept")}
			}
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				path := ""
				if len(args) == 1 {
					e, err := pl.FindSheet(args[0])
					if err != nil {
						return err
					}
					path = e.Path
				}
				list, err := pl.Problems(cmd.Context(), path, settled)
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(list)
				}
				var questions []pipeline.Question
				if !settled {
					all, err := pl.SheetQuestions()
					if err != nil {
						return err
					}
					for _, q := range all {
						if path == "" || q.Sheet == path {
							questions = append(questions, q)
						}
					}
				}
				a.askQuestions(questions)
				switch {
				case len(list) == 0 && settled:
					a.say("Nothing has been settled.")
				case len(list) == 0 && len(questions) > 0:
					a.say("Nothing else needs a look.")
				case len(list) == 0:
					a.say("Nothing needs a look.")
				}
				most := 10
				if all {
					most = len(list)
				}
				printSettled(a, list, most)
				if len(list) > most {
					fmt.Fprintln(a.out, "  To see all of them: lapwing sheets problems --all")
				}
				return nil
			})
		},
	}
	c.Flags().BoolVar(&all, "all", false, "show all of them, not only the ten worst")
	c.Flags().BoolVar(&settled, "settled", false, "show those that need no look any more, and why")
	c.Flags().StringVar(&accept.Kind, "accept", "", "accept all problems of this `KIND`, as it is printed")
	c.Flags().StringVar(&accept.Course, "course", "", "with --accept: only of runs on this course")
	c.Flags().StringVar(&accept.Date, "date", "", "with --accept: only of runs on this day (year-month-day)")
	c.Flags().StringVar(&accept.Why, "why", "", "with --accept: the reason, kept with the decision")
	c.Flags().StringVar(&accept.By, "by", loginName(), "with --accept: who decides")
	return c
}

// acceptProblems keeps an acceptance and says what it settles.
func (a *app) acceptProblems(cmd *cobra.Command, accept pipeline.Accept) error {
	return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
		d, n, err := pl.AcceptProblems(cmd.Context(), accept)
		if err != nil {
			return err
		}
		if a.json {
			return a.asJSON(map[string]any{"decision": d.ID, "settled": n})
		}
		a.say("%s accepted. Kept as decision %d. To take back: lapwing correct --undo %d", text.Count(n, "problem"), d.ID, d.ID)
		return nil
	})
}

// printSettled prints problems, worst first, with the reason where one needs
// no look any more.
func printSettled(a *app, list []pipeline.Settled, most int) {
	for i, p := range list {
		if i == most {
			printRest(a, list[most:], func(p pipeline.Settled) string { return p.Kind })
			return
		}
		remark := ""
		if p.Why != "" {
			remark, p.Answers = " ["+p.Why+"]", ""
		}
		a.printProblem(p.Problem, remark)
	}
}

// printRest counts the problems that are not printed by their kinds, in the order of the list:
// "… and 41 more: 29 time unreadable, 12 position repeated".
func printRest[P any](a *app, rest []P, kind func(P) string) {
	n := map[string]int{}
	var order []string
	for _, p := range rest {
		k := kind(p)
		if n[k]++; n[k] == 1 {
			order = append(order, k)
		}
	}
	for i, k := range order {
		order[i] = fmt.Sprintf("%d %s", n[k], place.KindWords(k))
	}
	fmt.Fprintf(a.out, "  … and %d more: %s\n", len(rest), strings.Join(order, ", "))
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
