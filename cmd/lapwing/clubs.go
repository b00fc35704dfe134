package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/text"
)

func (a *app) clubsCommand() *cobra.Command {
	c := &cobra.Command{
		Use: "clubs", Short: "Clubs with their other names, and names that may be one club's",
		Long: `The clubs that sheets and members.csv name. Where two names are probably one
club's (another spelling, initials, a shortened word, an old name) you are asked;
nothing is changed until you answer. Answer once: join, or part where they are two
clubs. A result keeps the club that its sheet prints, under the club's name.`,
		Example: "  lapwing clubs\n  lapwing clubs join \"Osierholm H.\" \"Osierholm Harriers\"\n  lapwing clubs part \"Tarn Runners\" \"Tarn Harriers\"",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				list, err := pl.Clubs(cmd.Context())
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(list)
				}
				return a.printClubs(list)
			})
		},
	}
	c.AddCommand(a.clubDecision("join", "Decide that OTHER is another name of CLUB", false),
		a.clubDecision("part", "Decide that OTHER and CLUB are two clubs", true))
	return c
}

func (a *app) clubDecision(verb, short string, two bool) *cobra.Command {
	var by, why string
	var yes bool
	c := &cobra.Command{
		Use: verb + " OTHER CLUB", Short: short,
		Long:    short + ". You see first what it changes; it is kept with who, when and why,\nand can be taken back: lapwing correct --undo.",
		Example: fmt.Sprintf("  lapwing clubs %s \"Osierholm H.\" \"Osierholm Harriers\"", verb),
		Args:    cobra.ExactArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			one := pipeline.Correction{OtherClub: args[0], IsClub: args[1], NotTheClub: two, By: by, Why: why}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				return a.correct(cmd.Context(), pl, []pipeline.Correction{one}, correctFlags{yes: yes})
			})
		},
	}
	byWhy(c, &by, &why)
	c.Flags().BoolVar(&yes, "yes", false, "keep it without asking")
	return c
}

func (a *app) printClubs(list *pipeline.ClubList) error {
	if len(list.Clubs) == 0 {
		a.say("No sheet and no members.csv names a club.")
		return nil
	}
	w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
	fmt.Fprintln(w, "Club\tResults\tRunners\tMembers\tOther names")
	for _, c := range list.Clubs {
		fmt.Fprintf(w, "%s\t%d\t%d\t%d\t%s\n", c.Name, c.Results, c.Runners, c.Members, strings.Join(c.Others, "; "))
	}
	if err := w.Flush(); err != nil || len(list.Questions) == 0 {
		return err
	}
	fmt.Fprintln(a.out, "\nAre these one club?")
	for i, q := range list.Questions {
		if i == mostShown {
			fmt.Fprintf(a.out, "  … and %d more; --json lists all\n", len(list.Questions)-mostShown)
			break
		}
		fmt.Fprintf(a.out, "  %s (%s): %s? (%s)\n", q.Other, text.Count(q.Results, "result"), q.Club, q.Why)
	}
	q := list.Questions[0]
	fmt.Fprintf(a.out, "If so: lapwing clubs join %s %s. If they are two: lapwing clubs part, likewise.\n", text.Typed(q.Other), text.Typed(q.Club))
	return nil
}
