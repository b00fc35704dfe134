package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/text"
)

// forgetReport is what lapwing forget did.
type forgetReport struct {
	*pipeline.ForgetPlan
	Done       bool     `json:"done"`
	Written    []string `json:"reports_written"`
	StillNamed []string `json:"files_that_still_name_the_person"`
}

func (a *app) forgetCommand() *cobra.Command {
	var yes, despite bool
	c := &cobra.Command{
		Use:   "forget WHO",
		Short: "Erase a person everywhere in the archive",
		Long: `Erase a person who asks for it: from every sheet copy, decision and side table
of the archive, from the database and from the reports that lapwing wrote. The
place and time stay, without a name, so that places and counts stand.

A keyed hash of the name is kept, from which the name can't be read. With it the
next sheet that brings the name is kept without it.

WHO is a name or a runner's id. First you see what would be changed; it can't be
taken back. What lapwing can't reach is listed at the end.`,
		Example: "  lapwing forget \"Ines Okafor\"\n  lapwing forget R12 --yes",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				return a.forget(cmd.Context(), pl, args[0], yes, despite)
			})
		},
	}
	c.Flags().BoolVar(&yes, "yes", false, "erase without asking")
	c.Flags().BoolVar(&despite, "despite-namesakes", false, "go on although others have the same name")
	return c
}

func (a *app) forget(ctx context.Context, pl *pipeline.Pipeline, who string, yes, despite bool) error {
	if _, err := pl.Refresh(ctx, false); err != nil {
		return err
	}
	plan, err := pl.PlanForget(ctx, who)
	if err != nil {
		return err
	}
	if !a.json {
		a.printForgetPlan(plan)
	}
	if len(plan.Namesakes) > 0 && !despite {
		return fmt.Errorf("%d other people have this name: their results on sheets yet to come would be kept without a name as well, and lines of side tables that give only the name are left. To go on all the same, add --despite-namesakes", len(plan.Namesakes))
	}
	if !yes {
		if yes, err = a.confirm("Erase? This can't be taken back. [y/n] ",
			"Nothing was erased. To erase, give the same command with --yes. It can't be taken back."); err != nil {
			return err
		}
	}
	rep := &forgetReport{ForgetPlan: plan, Written: []string{}, StillNamed: []string{}}
	if yes {
		if err := a.erase(ctx, pl, rep); err != nil {
			return err
		}
	}
	if err := a.asJSON(rep); err != nil {
		return err
	}
	if !yes {
		a.say("Nothing was changed.")
		return pipeline.ErrWaits
	}
	if !a.json {
		a.printForgotten(rep)
	}
	return nil
}

// erase carries out the plan and writes the weekly reports that it changes.
func (a *app) erase(ctx context.Context, pl *pipeline.Pipeline, rep *forgetReport) error {
	runs, err := pl.ChangedRuns(ctx) // they were to be written already
	if err != nil {
		return err
	}
	reported := len(rep.Reports) > 0
	if err := rep.Do(ctx); err != nil {
		return err
	}
	rep.Done = true
	if reported {
		others := slices.DeleteFunc(slices.Clone(rep.Runs), func(r pipeline.RunRef) bool { return slices.Contains(runs, r) })
		written, err := a.writeWeekly(ctx, pl, runs, "")
		if err != nil {
			return err
		}
		rep.Written = append(rep.Written, written...)
		if written, err = a.writeWeekly(ctx, pl, others, "a name is no longer shown"); err != nil {
			return err
		}
		rep.Written = append(rep.Written, written...)
		if err := pl.Reported(ctx); err != nil {
			return err
		}
	}
	still, err := rep.WhereNamed(a.settings.Archive, a.settings.Reports, a.settings.Inbox)
	rep.StillNamed = append(rep.StillNamed, still...)
	return err
}

func (a *app) printForgetPlan(p *pipeline.ForgetPlan) {
	if p.Runner != nil {
		fmt.Fprintln(a.out, p.Runner)
	}
	fmt.Fprintf(a.out, "Written as: %s\n", strings.Join(p.Names, "; "))
	fmt.Fprintf(a.out, "To be erased: the name on %s in %s; %s, %s of members.csv, %s of volunteers.csv, %s of history.csv; %s and %s\n",
		text.Count(p.Lines, "result"), text.CountOf(p.Sheets, "sheet copy", "sheet copies"), text.Count(p.Decisions, "decision"), text.Count(p.Members, "line"), text.Count(p.Volunteers, "line"),
		text.Count(p.History, "line"), text.Count(len(p.Files), "other file"), text.Count(len(p.Reports), "report"))
	for _, f := range p.Namesakes {
		fmt.Fprintln(a.out, "Of the same name, and left as they are:", f)
	}
}

// mostFiles is how many files are listed one by one.
const mostFiles = 20

func (a *app) printForgotten(rep *forgetReport) {
	a.say("Erased. %s kept place and time; the other places and the counts stand. %s written again.", text.Count(rep.Lines, "result"), text.Count(len(rep.Written), "report file"))
	fmt.Fprintln(a.out, "\nWhat lapwing can't recall:")
	if len(rep.StillNamed) > 0 {
		fmt.Fprintln(a.out, "- these files still name the person. They are yours: sheets as they were sent, reports that somebody edited, cards. Delete or change them:")
		for i, f := range rep.StillNamed {
			if i == mostFiles {
				fmt.Fprintf(a.out, "    … and %d more; --json lists all\n", len(rep.StillNamed)-mostFiles)
				break
			}
			fmt.Fprintln(a.out, "    "+f)
		}
	}
	fmt.Fprintln(a.out, `- reports that were printed, sent or published, and whatever was copied from them;
- sheets kept by those who sent them, and exports written to other folders;
- backups and other copies of the archive folder: erase there as well, or let them run out;
- pictures, scans and files in other formats, which are not searched;
- the deleted files themselves, which special tools may read until the disk has used their room again.
A spelling that no sheet has had so far would not be recognised. If one comes in, run lapwing forget again.`)
}
