package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/user"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"lapwing/pipeline"
	"lapwing/reports"
)

// correctFlags are what can be said on the command line of lapwing correct.
type correctFlags struct {
	pipeline.Correction
	hide, from, onCourse                              string
	disqualify, reinstate, didNotFinish, notAFinisher bool
	list, yes, noReports                              bool
}

func (a *app) correctCommand() *cobra.Command {
	var f correctFlags
	c := &cobra.Command{
		Use:   "correct [COURSE DATE [PLACE]]",
		Short: "Claim, correct, disqualify: settle something by hand",
		Long: `Settle something by hand: whose an unnamed place is, a corrected time or name,
a disqualification, the state of a run, a record, what somebody had run before
the sheets begin, how a person wants to be printed.

Before anything is kept you see what it changes elsewhere: personal bests,
milestones, newcomers, weeks in a row, fastest times. A decision is kept with
who, when and why, holds for later sheets of the same run as well, and can be
taken back at any time. The weekly reports that it changes are written at once.

The desk's workbook of a run has boxes for corrections: fill them in, save, and
read the workbook back with --from.`,
		Example: `  lapwing correct alder-bank 2026-01-03 14 --name "Ines Okafor" --why "phoned on Sunday"
  lapwing correct alder-bank 2026-01-03 15 --time 24:31
  lapwing correct alder-bank 2026-01-03 22 --exchange 23
  lapwing correct alder-bank 2026-01-03 --state "short by 120 m"
  lapwing correct alder-bank 2026-01-03 1 --record confirmed
  lapwing correct --person "Ines Okafor" --print-name "Inés Okafor"
  lapwing correct --person "Ines Okafor" --runs-before 98 --best-before 24:10
  lapwing correct --hide R12
  lapwing correct --from alder-bank_2026-01-03-desk.xlsx
  lapwing correct --list
  lapwing correct --undo 7`,
		Args: cobra.MaximumNArgs(3),
		RunE: func(cmd *cobra.Command, args []string) error {
			if f.list {
				return a.with(cmd.Context(), pipeline.ReadOnly, func(pl *pipeline.Pipeline) error { return a.listDecisions(cmd.Context(), pl) })
			}
			list, err := f.corrections(args)
			if err != nil {
				return err
			}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error { return a.correct(cmd.Context(), pl, list, f) })
		},
	}
	g := c.Flags()
	g.StringVar(&f.Name, "name", "", "whose place it is: a name, or a runner's id such as R12")
	g.BoolVar(&f.SomeoneNew, "someone-new", false, "with --name: nobody who is in the archive already")
	g.StringVar(&f.Time, "time", "", "the right time, as in 24:31")
	g.StringVar(&f.Club, "club", "", "the right club")
	g.StringVar(&f.Sex, "sex", "", "M, W, X or \"not given\"")
	g.StringVar(&f.Group, "group", "", "age group as in M45, an age, or a year of birth")
	g.StringVar(&f.TakingPart, "taking-part", "", "runner, walker, guided, guide, pacer, back marker, adult with a child, buggy, dog, …")
	g.BoolVar(&f.disqualify, "disqualify", false, "disqualified")
	g.BoolVar(&f.didNotFinish, "did-not-finish", false, "started and did not finish")
	g.BoolVar(&f.notAFinisher, "not-a-finisher", false, "the line stands for nobody who finished: it counts for nothing")
	g.IntVar(&f.RightPlace, "right-place", 0, "the place that this line should have")
	g.BoolVar(&f.reinstate, "reinstate", false, "the result counts after all")
	g.IntVar(&f.ExchangeWith, "exchange", 0, "the other place, where two people stand under each other's name: the names change over, places and times stay")
	g.StringVar(&f.State, "state", "", "of the run: held, cancelled, abandoned, times lost, other route, misdirected, \"short by 120 m\", \"long by 50 m\"")
	g.StringVar(&f.Record, "record", "", "confirmed: the time, person, age and route have been checked and it stands as a record; void: it does not")
	g.StringVar(&f.RunsBefore, "runs-before", "", "of --person: how many finishes there were before the sheets (or before the day --before)")
	g.StringVar(&f.Before, "before", "", "the day up to which --runs-before counts, not included, YYYY-MM-DD")
	g.StringVar(&f.BestBefore, "best-before", "", "of --person: the best time before the sheets, as in 24:10")
	g.StringVar(&f.BestOn, "best-on", "", "the day of that best, YYYY-MM-DD")
	g.IntVar(&f.DistanceM, "over", 0, "metres of that best, where it is not the usual distance")
	g.StringVar(&f.onCourse, "on-course", "", "the course of the runs or best before the sheets (all courses together without it)")
	g.StringVar(&f.Session, "session", "", "start time or number, where a day had several runs")
	g.StringVar(&f.Line, "line", "", "SHEET:ROW, where a place stands on several lines or has no number")
	g.StringVar(&f.Person, "person", "", "the person that --print-name, --category, --runs-before or --best-before is about: name or id")
	g.StringVar(&f.PrintName, "print-name", "", "the name this person wants in everything, past weeks included")
	g.StringVar(&f.Category, "category", "", "M, W or X as this person wants it, past weeks included")
	g.StringVar(&f.hide, "hide", "", "the person who wants to stay out of everything for publication: name or id")
	g.IntVar(&f.Undo, "undo", 0, "take back the decision of this number")
	g.StringVar(&f.from, "from", "", "read the boxes of a desk workbook that somebody has filled in")
	g.BoolVar(&f.list, "list", false, "list all decisions and what became of them")
	g.StringVar(&f.By, "by", loginName(), "who settles it")
	g.StringVar(&f.Why, "why", "", "the reason, for whoever asks next year")
	g.BoolVar(&f.yes, "yes", false, "keep it without asking")
	g.BoolVar(&f.noReports, "no-reports", false, "don't write the reports that this changes; the next lapwing run does")
	return c
}

// corrections gives what the command line, or the workbook that it names, says.
func (f *correctFlags) corrections(args []string) ([]pipeline.Correction, error) {
	if f.from == "" {
		c, err := f.correction(args)
		return []pipeline.Correction{c}, err
	}
	if len(args) > 0 {
		return nil, usagef("--from stands without a course, date and place: the workbook says which lines it is about")
	}
	boxes, err := reports.ReadDesk(f.from)
	if err != nil {
		return nil, err
	}
	var out []pipeline.Correction
	for _, b := range boxes {
		c := pipeline.Correction{
			Printed: &pipeline.PrintedLine{At: b.At.String(), Sheet: b.Sheet, Tab: b.Tab, Row: b.Row, Name: b.Name, Time: b.Time},
			Time:    b.RightTime, Name: b.RightName, Sex: b.Sex, Group: b.Group, Club: b.Club, TakingPart: b.TookPartAs,
			By: f.By, Why: b.Remark, SomeoneNew: f.SomeoneNew, Record: b.Record, RunsBefore: b.RunsBefore, BestBefore: b.BestBefore,
			Course: b.Course, Date: b.Date, Session: b.Session, State: b.State, OtherClub: b.OtherClub, IsClub: b.IsClub, NotTheClub: b.NotTheClub,
		}
		if b.Sheet == "" {
			c.Printed = nil
		}
		if c.Why == "" {
			c.Why = f.Why
		}
		if b.Position != "" {
			if c.RightPlace, err = strconv.Atoi(b.Position); err != nil {
				return nil, fmt.Errorf("%s: place %q is no whole number", b.At, b.Position)
			}
		}
		if b.Exchange != "" {
			if c.ExchangeWith, err = strconv.Atoi(b.Exchange); err != nil {
				return nil, fmt.Errorf("%s: place %q is no whole number", b.At, b.Exchange)
			}
		}
		c.Status = map[string]string{"disqualified": "dq", "did not finish": "dnf", "counts after all": "ok"}[b.Strike]
		if c.Status == "" {
			c.Status = b.Strike
		}
		if p := b.Accepted; p != nil {
			c.Accept = &pipeline.PrintedProblem{At: b.At.String(), Sheet: p.Sheet, Tab: p.Tab, Row: p.Row, Column: p.Column, Kind: p.Kind, Read: p.Read, All: p.All, Course: p.Course, Date: p.Date}
		}
		if c == (pipeline.Correction{Printed: c.Printed, By: c.By, Why: c.Why, SomeoneNew: c.SomeoneNew}) {
			return nil, fmt.Errorf("%s: there is a remark and no box is filled in. Fill in what is wrong, or clear the remark", b.At)
		}
		out = append(out, c)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no box of %s is filled in", f.from)
	}
	return out, nil
}

// correction checks that the words of the command line go together.
func (f *correctFlags) correction(args []string) (pipeline.Correction, error) {
	c := f.Correction
	said := 0
	for _, s := range []struct {
		given bool
		word  string
	}{{f.disqualify, "dq"}, {f.didNotFinish, "dnf"}, {f.reinstate, "ok"}, {f.notAFinisher, "not a finisher"}} {
		if s.given {
			c.Status = s.word
			said++
		}
	}
	if said > 1 {
		return c, usagef("give only one of --disqualify, --did-not-finish, --not-a-finisher and --reinstate")
	}
	if f.hide != "" {
		if c.Person != "" && c.Person != f.hide {
			return c, usagef("--hide and --person name two people; settle one after the other")
		}
		c.Person, c.Hide = f.hide, true
	}
	switch {
	case c.Undo != 0 || c.Person != "" || c.RunsBefore+c.BestBefore != "":
		if len(args) > 0 {
			return c, usagef("--undo, --person and --hide stand without a course, date and place")
		}
		c.Course = f.onCourse
		if c.Person == "" && c.RunsBefore+c.BestBefore != "" {
			return c, usagef("--runs-before and --best-before are about a person: add --person")
		}
		if c.Undo < 0 {
			return c, usagef("--undo %d: decisions are numbered from 1; see lapwing correct --list", c.Undo)
		}
		return c, nil
	case len(args) < 2:
		return c, usagef("say which run, as in: lapwing correct alder-bank 2026-01-03 14 --name \"Ines Okafor\"")
	}
	c.Course, c.Date = args[0], args[1]
	if len(args) == 3 {
		n, err := strconv.Atoi(args[2])
		if err != nil || n < 1 {
			return c, usagef("place %q: write the number on the sheet", args[2])
		}
		c.Place = n
	}
	if c.Place == 0 && c.Line == "" && c.State == "" {
		return c, usagef("say which place, or with --state what became of the run")
	}
	return c, nil
}

func (a *app) correct(ctx context.Context, pl *pipeline.Pipeline, list []pipeline.Correction, f correctFlags) error {
	if _, err := pl.Refresh(ctx, false); err != nil {
		return err
	}
	var decisions []pipeline.Decision
	for _, c := range list {
		ds, err := pl.Decide(ctx, c)
		if err != nil {
			return err
		}
		decisions = append(decisions, ds...)
	}
	decisions, err := pl.Unsettled(ctx, decisions)
	if err != nil {
		return err
	}
	if len(decisions) == 0 {
		a.say("All of this is settled already.")
		return a.asJSON(map[string]bool{"kept": false})
	}
	settles, err := pl.WouldSettle(ctx, decisions)
	if err != nil {
		return err
	}
	onlyAccepts := !slices.ContainsFunc(decisions, func(d pipeline.Decision) bool { return d.Kind != pipeline.DecideAccept })
	draft := &pipeline.Draft{Decisions: decisions}
	if !onlyAccepts {
		if draft, err = pl.Draft(ctx, decisions); err != nil {
			return err
		}
		if !a.json {
			a.printDraft(draft)
		}
	}
	if len(settles) > 0 && !a.json {
		fmt.Fprintln(a.out, "Needs no look any more:")
		printSettled(a, settles, mostShown)
	}
	yes := f.yes
	if !yes {
		if yes, err = a.confirm("Keep this? [y/n] ", "To keep it, give the same command with --yes."); err != nil {
			return err
		}
	}
	if yes {
		if onlyAccepts {
			draft.Decisions, err = pl.KeepAccepted(ctx, decisions)
		} else {
			err = draft.Keep(ctx)
		}
		if err != nil {
			return err
		}
		a.say("%s", keptWords(draft.Decisions))
	}
	var reported, shown []string
	if yes && !f.noReports {
		if reported, err = a.reportCorrected(ctx, pl); err != nil {
			return fmt.Errorf("it is kept, but the reports that it changes could not all be written (the next lapwing run writes them): %w", err)
		}
	} else if yes {
		a.say("To write the reports that this changes: lapwing run")
	}
	if yes {
		if shown, err = a.sayStillShown(ctx, pl, draft.Decisions); err != nil {
			return err
		}
	}
	if err := a.asJSON(struct {
		*pipeline.Draft
		Kept    bool     `json:"kept"`
		Written []string `json:"reports_written"`
		Shown   []string `json:"files_that_still_show_the_person,omitempty"`
	}{draft, yes, reported, shown}); err != nil {
		return err
	}
	if !yes {
		a.say("Nothing was kept.")
		return pipeline.ErrWaits
	}
	return nil
}

// sayStillShown names the files for publication that still show somebody who is hidden from
// now on, as a season workbook or a card that is not written again of itself.
func (a *app) sayStillShown(ctx context.Context, pl *pipeline.Pipeline, ds []pipeline.Decision) (shown []string, err error) {
	for _, d := range ds {
		if d.Kind != pipeline.DecideHide {
			continue
		}
		files, err := pl.WhereShown(ctx, d.Runner, a.settings.Reports)
		if err != nil {
			return nil, err
		}
		shown = append(shown, files...)
	}
	sayFirst(a, shown, mostFiles, "These files for publication still show that name. Write them again (lapwing season, lapwing standing) or delete them, and take down what was pinned up or sent:")
	return shown, nil
}

func keptWords(ds []pipeline.Decision) string {
	var ids, undo []string
	for _, d := range ds {
		ids = append(ids, strconv.Itoa(d.ID))
		undo = append(undo, fmt.Sprintf("lapwing correct --undo %d", d.ID))
	}
	word := "decision"
	if len(ids) > 1 {
		word = "decisions"
	}
	s := fmt.Sprintf("Kept as %s %s.", word, strings.Join(ids, ", "))
	if ds[0].Kind != pipeline.DecideTakeBack {
		s += " To take back: " + strings.Join(undo, "; ") + "."
	}
	return s
}

// mostReported is how many runs have their reports written after a correction:
// more are those of sheets that nobody has had reports of yet.
const mostReported = 100

// reportCorrected writes the reports that a correction has changed, as lapwing
// run does, and gives the files.
func (a *app) reportCorrected(ctx context.Context, pl *pipeline.Pipeline) ([]string, error) {
	changed, err := pl.ChangedRuns(ctx)
	if err != nil {
		return nil, err
	}
	if len(changed) > mostReported {
		a.say("%d runs have no reports of how they stand now. To write them: lapwing run", len(changed))
		return nil, nil
	}
	written, _, err := a.writeChanged(ctx, pl, changed)
	if err != nil {
		return nil, err
	}
	if len(written) == 0 {
		a.say("No report changes by this.")
		return nil, nil
	}
	a.sayWritten(written, len(changed))
	return written, nil
}

// mostShown is how many changes are listed one by one.
const mostShown = 40

func (a *app) printDraft(d *pipeline.Draft) {
	if len(d.Changes) == 0 {
		fmt.Fprintln(a.out, "This changes nothing that stands now.")
	} else {
		fmt.Fprintln(a.out, "This changes:")
	}
	for i, c := range d.Changes {
		if i == mostShown {
			fmt.Fprintf(a.out, "  … and %d more; --json lists all\n", len(d.Changes)-mostShown)
			break
		}
		fmt.Fprintln(a.out, "  "+c.String())
	}
	if len(d.Changes) > 0 {
		fmt.Fprintln(a.out, "Course speed, conditions and form are estimated anew and may move a little.")
	}
	for _, q := range d.Asks {
		fmt.Fprintln(a.out, "Look:", q)
	}
}

// confirm asks a yes-or-no question on a terminal. Without one the answer is
// no, and otherwise says how to say yes: a script says --yes.
func (a *app) confirm(question, otherwise string) (bool, error) {
	if a.json || !term.IsTerminal(int(os.Stdin.Fd())) {
		if !a.json {
			fmt.Fprintln(a.out, otherwise)
		}
		return false, nil
	}
	in := bufio.NewScanner(os.Stdin)
	for {
		fmt.Fprint(a.out, question)
		if !in.Scan() {
			return false, in.Err()
		}
		switch strings.ToLower(strings.TrimSpace(in.Text())) {
		case "y", "yes":
			return true, nil
		case "n", "no":
			return false, nil
		}
	}
}

func (a *app) listDecisions(ctx context.Context, pl *pipeline.Pipeline) error {
	list, err := pl.DecisionList(ctx)
	if err != nil {
		return err
	}
	return a.printDecisions(list, "Nothing has been settled by hand yet.")
}

// printDecisions prints decisions with what became of them; none says what to
// say where there are none.
func (a *app) printDecisions(list []pipeline.DecisionState, none string) error {
	if a.json {
		return a.asJSON(list)
	}
	if len(list) == 0 {
		a.say("%s", none)
		return nil
	}
	w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
	fmt.Fprintln(w, "No.\tWhen\tBy\tAbout\tDecision\tState\tWhy")
	for _, d := range list {
		state := d.State
		if d.Words != "" {
			state += ": " + d.Words
		}
		fmt.Fprintf(w, "%d\t%s\t%s\t%s\t%s\t%s\t%s\n", d.ID, d.When, d.By, d.About, d.What, state, d.Why)
	}
	return w.Flush()
}

// loginName is who is at the keyboard, "" where the machine does not say.
func loginName() string {
	if u, err := user.Current(); err == nil {
		return u.Username
	}
	return os.Getenv("USER")
}
