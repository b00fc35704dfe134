package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/record/who"
	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
	"lapwing/reports"
)

func (a *app) matchCommand() *cobra.Command {
	c := &cobra.Command{
		Use: "match", Short: "Who is who: doubtful pairs, and decisions about them",
		Long: `Lapwing works out by itself which lines on the sheets are the same runner's.
Where it can't be sure it asks. Answer here, or all at once in a spreadsheet:
lapwing match export, then lapwing match apply. A decision of yours wins over
any evidence, holds for ever and can be taken back.`,
		Example: "  lapwing match list\n  lapwing match explain R12 R40\n  lapwing match join R12 R40 --why \"married in May\"\n  lapwing match export who-is-who.xlsx\n  lapwing match apply who-is-who.xlsx",
		Args:    cobra.NoArgs,
		RunE:    func(cmd *cobra.Command, args []string) error { return cmd.Help() },
	}
	c.AddCommand(a.matchListCommand(), a.matchExplainCommand(),
		a.matchDecideCommand("join", "Decide that two or more are one person", (*pipeline.Pipeline).Join),
		a.matchDecideCommand("part", "Decide that two or more are different people", (*pipeline.Pipeline).Part),
		a.matchUndoCommand(), a.matchDecisionsCommand(), a.matchWeightsCommand(), a.matchExportCommand(), a.matchApplyCommand())
	return c
}

func (a *app) matchListCommand() *cobra.Command {
	var most int
	c := &cobra.Command{
		Use: "list", Short: "Doubtful pairs with their evidence, the most useful question first",
		Long: `Runners who may be one person, with the evidence for and against as a sum; several
runners of whom some may be one; lines of namesakes whom nothing tells apart; lines
that fit their runner badly, who may be two people; and decisions that contradict
one another. Holds full names and ages, also of
children: for the results desk, not for publication.`,
		Example: "  lapwing match list\n  lapwing match list --most 100",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				r, err := pl.Review(cmd.Context(), most)
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(r)
				}
				printReview(a.out, r)
				return nil
			})
		},
	}
	c.Flags().IntVar(&most, "most", 10, "how many pairs, questions and bad fits to show (0: all that are kept)")
	return c
}

func (a *app) matchExplainCommand() *cobra.Command {
	return &cobra.Command{
		Use: "explain A [B]", Short: "Why two are one runner or two; for one runner, how it came about",
		Long: `The evidence that A and B are one person, as a sum of weights, and what follows
from it. A and B are runner ids, names, or lines (SHEET:ROW). With one runner:
the joins that made it.`,
		Example: "  lapwing match explain R12 R40\n  lapwing match explain \"Ines Okafor\" R40\n  lapwing match explain R12",
		Args:    cobra.RangeArgs(1, 2),
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				if len(args) == 1 {
					h, err := pl.ExplainRunner(cmd.Context(), args[0])
					if err != nil {
						return err
					}
					if a.json {
						return a.asJSON(h)
					}
					printHistory(a.out, h)
					return nil
				}
				v, err := pl.ExplainPair(cmd.Context(), args[0], args[1])
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(v)
				}
				printVerdict(a.out, v)
				return nil
			})
		},
	}
}

type decideFunc func(pl *pipeline.Pipeline, ctx context.Context, by, why, first string, others ...string) (*pipeline.MatchOutcome, error)

// byWhy adds the flags that every decision takes.
func byWhy(c *cobra.Command, by, why *string) {
	c.Flags().StringVar(by, "by", loginName(), "who decides")
	c.Flags().StringVar(why, "why", "", "how you know; it is kept with the decision")
}

func (a *app) matchDecideCommand(verb, short string, decide decideFunc) *cobra.Command {
	var by, why string
	c := &cobra.Command{
		Use: verb + " A B…", Short: short,
		Long: short + `. A and B are runner ids, names, or single lines
(SHEET:ROW). The decision wins over any evidence, also over what later sheets
bring, and can be taken back: lapwing match undo.`,
		Example: "  lapwing match " + verb + " R12 R40 --why \"asked her\"\n  lapwing match " + verb + " R12 alder-bank_2026-01-03.csv:14",
		Args:    cobra.MinimumNArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx := cmd.Context()
			return a.with(ctx, pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				out, err := decide(pl, ctx, by, why, args[0], args[1:]...)
				if err != nil {
					return err
				}
				return a.matchOutcome(out)
			})
		},
	}
	byWhy(c, &by, &why)
	return c
}

// matchOutcome prints what became of decisions; contradictions wait for an
// answer.
func (a *app) matchOutcome(out *pipeline.MatchOutcome) error {
	if err := a.asJSON(out); err != nil {
		return err
	}
	for _, w := range out.Words {
		a.say("%s", w)
	}
	for i, id := range out.Decisions {
		if i == 0 {
			a.say("Kept as decision %d. To take it back: lapwing match undo %d. To write the reports that this changes: lapwing run", id, id)
		}
	}
	a.sayChanges(out.Changes)
	return nil
}

// sayChanges prints what decisions change elsewhere.
func (a *app) sayChanges(list []pipeline.Change) {
	sayFirst(a, list, 12, "What else this changes:")
}

// sayFirst prints the first lines of a list below a heading, and how many more there are;
// nothing of an empty one.
func sayFirst[T any](a *app, list []T, most int, heading string) {
	for i, line := range list {
		if i == 0 {
			a.say("%s", heading)
		}
		if i == most {
			a.say("  and %d more", len(list)-most)
			break
		}
		a.say("  %v", line)
	}
}

func (a *app) matchUndoCommand() *cobra.Command {
	var by, why string
	c := &cobra.Command{
		Use: "undo DECISION", Short: "Take a decision about people back",
		Example: "  lapwing match decisions\n  lapwing match undo 12",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			id, err := strconv.Atoi(args[0])
			if err != nil {
				return usagef("%q is no number of a decision; see lapwing match decisions", args[0])
			}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				out, err := pl.UndoMatch(cmd.Context(), by, why, id)
				if err != nil {
					return err
				}
				if err := a.asJSON(out); err != nil {
					return err
				}
				for _, w := range out.Words {
					a.say("%s To write the reports that this changes: lapwing run", w)
				}
				a.sayChanges(out.Changes)
				return nil
			})
		},
	}
	byWhy(c, &by, &why)
	return c
}

func (a *app) matchDecisionsCommand() *cobra.Command {
	return &cobra.Command{
		Use: "decisions", Short: "The decisions about people that are in force",
		Example: "  lapwing match decisions",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				list, err := pl.DecisionList(cmd.Context())
				if err != nil {
					return err
				}
				list = slices.DeleteFunc(list, func(d pipeline.DecisionState) bool { return !d.People })
				return a.printDecisions(list, "Nobody has decided anything about who is who.")
			})
		},
	}
}

func (a *app) matchWeightsCommand() *cobra.Command {
	return &cobra.Command{
		Use: "weights", Short: "The weights in force, learned or starting",
		Long: `The weights of the linkage, after Fellegi and Sunter (1969): log2 of how much
likelier a finding is for one person than for two. A share is the m of a weight
log2(m/u); its u is taken from how common the name is in this archive. Weights
of births, courses and times are worked out pair by pair; see explain.`,
		Example: "  lapwing match weights",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				k, list, err := pl.MatchWeights(cmd.Context())
				if err != nil {
					return err
				}
				if a.json {
					return a.asJSON(map[string]any{"linkage": k, "weights": list})
				}
				printWeights(a.out, k, list)
				return nil
			})
		},
	}
}

func (a *app) matchExportCommand() *cobra.Command {
	var most int
	var force bool
	c := &cobra.Command{
		Use: "export FILE.xlsx", Short: "Write the doubtful pairs as a workbook to decide in",
		Long: `One doubtful pair a row, with a drop-down list for the decision; where several
runners may be one person, a letter beside each. The workbook
holds full names and ages, also of children: keep it at the desk, and delete it
when it is done.`,
		Example: "  lapwing match export who-is-who.xlsx",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			path := args[0]
			if !strings.EqualFold(filepath.Ext(path), ".xlsx") {
				return usagef("%s: name a file that ends in .xlsx", path)
			}
			if _, err := os.Stat(path); err == nil && !force {
				return fmt.Errorf("%s is there already and may hold somebody's decisions; name another file, or say --force to write over it", path)
			}
			return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error {
				r, err := pl.Review(cmd.Context(), most)
				if err != nil {
					return err
				}
				k, _, err := pl.MatchWeights(cmd.Context())
				if err != nil {
					return err
				}
				book := matchBook(r, k)
				data, err := book.Write([]string{pipeline.AnswerSame, pipeline.AnswerDifferent, pipeline.AnswerLeave},
					append(pipeline.AnswerLetters(), pipeline.AnswerLeave),
					[]string{pipeline.AnswerTheirs, pipeline.AnswerNotTheirs, pipeline.AnswerLeave})
				if err != nil {
					return err
				}
				if err := store.WriteFile(path, data); err != nil {
					return fmt.Errorf("can't write %s: %w", path, err)
				}
				a.say("%s: %s, %s about several runners, %s of namesakes, %s of lines that fit badly. Decide there, then: lapwing match apply %s",
					path, text.Count(len(book.Pairs), "doubtful pair"), text.Count(len(r.Several), "question"), text.Count(len(book.Lines), "line"), text.Count(len(book.Fits), "row"), path)
				return a.asJSON(map[string]any{"file": path, "pairs": len(book.Pairs), "several": len(r.Several), "lines": len(book.Lines), "bad_fits": len(book.Fits)})
			})
		},
	}
	c.Flags().IntVar(&most, "most", 0, "how many pairs, questions and bad fits to write (0: all that are kept)")
	c.Flags().BoolVar(&force, "force", false, "write over a file that is there already")
	return c
}

// matchColumn is the column of the workbook for a kind of evidence.
var matchColumn = map[string]int{"name": 0, "number": 1, "age": 2, "sex": 3, "club": 4, "courses": 5, "times": 5, "days": 6, "start": 7, "other": 7}

// matchBook lays the review out for the workbook.
func matchBook(r *pipeline.Review, k pipeline.Linkage) *reports.MatchBook {
	b := &reports.MatchBook{Version: version, Found: r.Found, Join: [2]float64{k.JoinBits, who.JoinFrom(k.JoinBits, manyLines, manyLines)},
		JoinNumbered: [2]float64{who.JoinNumbered(k.JoinBits, 1, 1), who.JoinNumbered(k.JoinBits, manyLines, manyLines)}}
	side := func(p pipeline.MatchPerson) reports.MatchSide {
		b.Made = max(b.Made, p.Last)
		return reports.MatchSide{Shown: p.Shown(), Facts: p.Facts(), History: p.History(), Results: strings.Join(p.Results, "; ")}
	}
	for _, p := range r.Pairs {
		row := reports.MatchPairRow{Code: p.Code, First: side(p.First), Second: side(p.Second), Bits: p.Bits, Percent: 100 * p.Chance}
		for _, e := range p.Evidence {
			row.Evidence = append(row.Evidence, reports.MatchEvidence{Column: matchColumn[e.Of], Words: e.Words, Bits: e.Bits})
		}
		b.Pairs = append(b.Pairs, row)
	}
	for _, q := range r.Questions {
		ids := make([]string, len(q.Namesakes))
		for i, p := range q.Namesakes {
			ids[i] = p.ID
		}
		for _, l := range q.Lines {
			b.Lines = append(b.Lines, reports.MatchLineRow{Code: l.Code, Line: l.Shown(), Runners: q.Shown(),
				Choices: strings.Join(append(ids, pipeline.AnswerNobody, pipeline.AnswerLeave), ", ")})
		}
	}
	for _, q := range r.Several {
		for _, p := range q.Pieces {
			b.Pieces = append(b.Pieces, reports.MatchPieceRow{Code: p.Code, Question: q.Shown(), Runner: side(p.MatchPerson), Percent: 100 * p.Chance})
		}
	}
	for _, t := range r.Thin {
		if len(t.Lines) > 0 {
			b.Fits = append(b.Fits, reports.MatchLineRow{Code: t.Code, Line: t.Shown(), Runners: t.Runner.Shown(),
				Choices: strings.Join([]string{pipeline.AnswerTheirs, pipeline.AnswerNotTheirs, pipeline.AnswerLeave}, ", ")})
		}
	}
	return b
}

func (a *app) matchApplyCommand() *cobra.Command {
	var by string
	var partial bool
	c := &cobra.Command{
		Use: "apply FILE.xlsx", Short: "Read a workbook of decisions back and follow it",
		Long: `Reads the decisions of a workbook that lapwing match export wrote. A row that is
out of date, was changed where it should not be, or contradicts another is
refused with its cell, and then nothing is done at all, unless --partial says to
follow the other rows.`,
		Example: "  lapwing match apply who-is-who.xlsx\n  lapwing match apply who-is-who.xlsx --partial",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			rows, err := reports.ReadMatch(args[0], filepath.Base(args[0]))
			if err != nil {
				return err
			}
			answers := make([]pipeline.MatchAnswer, len(rows))
			for i, r := range rows {
				answers[i] = pipeline.MatchAnswer(r)
			}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				out, err := pl.ApplyAnswers(cmd.Context(), answers, by, partial)
				if err != nil {
					return err
				}
				return a.matchApplied(out)
			})
		},
	}
	c.Flags().StringVar(&by, "by", loginName(), "who decides")
	c.Flags().BoolVar(&partial, "partial", false, "follow the rows that are right although others are refused")
	return c
}

func (a *app) matchApplied(out *pipeline.MatchApplied) error {
	if err := a.asJSON(out); err != nil {
		return err
	}
	if !a.json {
		for _, r := range out.Refused {
			fmt.Fprintln(a.out, "Refused:", r)
		}
	}
	switch n := len(out.Decisions); {
	case !out.Applied:
		if !a.json {
			fmt.Fprintf(a.out, "Nothing was done, because %s refused. Put right what is named above, or say --partial to follow the other rows.\n", text.CountOf(len(out.Refused), "row was", "rows were"))
		}
	case n == 0:
		a.say("No new decisions: %s, %s.", text.CountOf(out.Already, "row says what holds already", "rows say what holds already"), text.CountOf(out.Left, "row is left open", "rows are left open"))
	default:
		a.say("%s kept: %s joined, %s kept apart, %s given to a runner or taken from one. %s; %s.", text.CountOf(n, "decision was", "decisions were"),
			text.CountOf(out.Joined, "pair", "pairs"), text.CountOf(out.Parted, "pair", "pairs"), text.CountOf(out.Lines, "line", "lines"),
			text.CountOf(out.Already, "row says what held already", "rows say what held already"), text.CountOf(out.Left, "row is left open", "rows are left open"))
		a.say("To see them: lapwing match decisions. To write the reports that this changes: lapwing run")
	}
	a.sayChanges(out.Changes)
	if len(out.Refused) > 0 {
		return pipeline.ErrWaits
	}
	return nil
}
