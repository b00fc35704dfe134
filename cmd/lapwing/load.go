package main

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/place"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

func (a *app) loadCommand() *cobra.Command {
	var hand pipeline.ByHand
	var dry bool
	var answers []string
	c := &cobra.Command{
		Use:   "load PATH…",
		Short: "Load result sheets: files, folders or patterns",
		Long: `Load result sheets into the archive. A sheet says itself which course and
date it is of, in a column, a title line, a tab's name or the file's name
(<course>_<YYYY-MM-DD>.csv). Where it does not, say it with --course and --date.

Where a sheet leaves something else open, load asks and prints what to type. Such
answers are given with --answer:
  "time=mm.ss"       how the times are written
  "column T2=time"   what the column headed T2 holds
  "start=9:00"       when the clock was started, where the times are times of day
  "first=17:45"      the time of the first, where the others are behind it

--dry-run shows how each sheet would be read, and what would become of it beside
the others and those in the archive; it changes nothing.`,
		Example: "  lapwing load sheets/\n  lapwing load results.xlsx --course alder-bank --date 2026-01-03\n  lapwing load odd.csv --dry-run",
		Args:    cobra.MinimumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			hand.Answers = strings.Join(answers, "; ")
			if err := checkHand(hand); err != nil {
				return err
			}
			if dry {
				return a.dryRun(cmd, args, hand)
			}
			files, names, err := a.findSheets(args)
			if err != nil {
				return err
			}
			return a.with(cmd.Context(), pipeline.ReadWrite, func(pl *pipeline.Pipeline) error {
				held, err := pl.HeldCourses(cmd.Context())
				if err != nil {
					return err
				}
				rep, err := pl.LoadFiles(cmd.Context(), files, names, hand)
				if rep != nil {
					a.printLoad(rep)
				}
				if err != nil {
					return err
				}
				fresh := pl.NewCourses(held, rep)
				if hand.Course != "" && len(held) == 0 {
					fresh = nil // the first there is, as somebody said
				}
				a.sayNewCourses(fresh, hand)
				if _, err := pl.Refresh(cmd.Context(), false); err != nil {
					return err
				}
				compared, err := pl.Compared(cmd.Context(), rep)
				if err != nil {
					return err
				}
				if !a.json {
					printProblems(a, compared, 10)
					if rep.Loaded > 0 {
						a.say("To write the reports that this changes: lapwing run")
					}
					a.askQuestions(asked(rep.Sheets))
				}
				if err := a.asJSON(loadReport{rep, compared}); err != nil {
					return err
				}
				return rep.Err()
			})
		},
	}
	f := c.Flags()
	f.StringVar(&hand.Course, "course", "", "course of these sheets")
	f.StringVar(&hand.Date, "date", "", "date of these sheets, YYYY-MM-DD")
	f.StringVar(&hand.Session, "session", "", "start time or number where a course has several runs on a day")
	f.StringVar(&hand.Distance, "distance", "", "distance, as in \"5 km\" or \"4 miles\"")
	f.StringVar(&hand.Kind, "kind", "", "full (the whole field), excerpt (some of it) or volunteers (a list of who helped)")
	f.StringArrayVar(&answers, "answer", nil, "answer to a question about a column, or what a column holds, as in \"time=mm.ss\" or \"column T2=time\" (can be given several times)")
	f.BoolVar(&dry, "dry-run", false, "show how each sheet would be read; change nothing")
	return c
}

// asked lists the questions of the sheets that wait.
func asked(sheets []pipeline.SheetReport) (out []pipeline.Question) {
	for _, s := range sheets {
		if s.Question != nil {
			out = append(out, *s.Question)
		}
	}
	return out
}

// loadReport is what a load did, and what became of its sheets beside others of
// their runs.
type loadReport struct {
	*pipeline.LoadReport
	Compared []place.Problem `json:"compared,omitempty"`
}

func checkHand(h pipeline.ByHand) error {
	if h.Course == "NAME" || h.Course != "" && sheet.Slug(h.Course) == "" {
		return usagef("--course %q: write the name of the course, as in --course alder-bank", h.Course)
	}
	if h.Date != "" {
		if _, err := unit.ParseDay(h.Date); err != nil {
			return usagef("--date: %w", err)
		}
	}
	if h.Distance != "" {
		if _, err := pipeline.ParseDistance(h.Distance); err != nil {
			return usagef("--distance: %w", err)
		}
	}
	if err := pipeline.CheckAnswers(h.Answers); err != nil {
		return usagef("--answer: %w", err)
	}
	switch h.Kind {
	case "", "full", "excerpt", sheet.Volunteers:
		return nil
	}
	return usagef("--kind %q: write full, excerpt or volunteers", h.Kind)
}

func (a *app) dryRun(cmd *cobra.Command, paths []string, hand pipeline.ByHand) error {
	files, names, err := a.findSheets(paths)
	if err != nil {
		return err
	}
	tried, err := a.tryLoad(cmd.Context(), files, names, hand)
	if err != nil {
		return err
	}
	// An archive remembers how earlier sheets were read; there may be none yet,
	// or another process may be writing.
	pl, err := a.open(cmd.Context(), pipeline.ReadOnly)
	if err != nil {
		if pl, err = pipeline.ForReading(a.settings); err != nil {
			return err
		}
	}
	defer pl.Close()
	var reports []*pipeline.SheetReport
	var questions []pipeline.Question
	waits := false
	for i, f := range files {
		w := a.out
		if a.json {
			w = nil
		}
		rep, err := pl.DryRun(cmd.Context(), f, names[i], hand, w)
		if err != nil {
			return err
		}
		if tried != nil && rep.State != "refused" {
			rep = would(tried.Sheets[i])
		}
		reports = append(reports, rep)
		if rep.Question != nil {
			questions = append(questions, *rep.Question)
		}
		waits = waits || rep.State == "would wait" || rep.State == "refused"
		if !a.json {
			fmt.Fprintf(a.out, "%s: %s, %s%s\n", rep.Path, rep.State, text.Count(rep.Rows, "line"), becomes(rep.Counts))
			if rep.Question == nil && rep.Why != "" {
				fmt.Fprintf(a.out, "  %s\n", rep.Why)
			}
			if rep.Settled != "" {
				fmt.Fprintf(a.out, "  %s\n", rep.Settled)
			}
			for _, n := range rep.Notes {
				fmt.Fprintf(a.out, "  note     %s\n", n)
			}
			printProblems(a, slices.DeleteFunc(slices.Clone(rep.Problems), func(p place.Problem) bool { return p.Severity == place.Waits }), 10)
		}
	}
	if err := a.asJSON(reports); err != nil {
		return err
	}
	if !a.json {
		a.askQuestions(questions)
	}
	if tried != nil && len(files) > 1 {
		a.say("In all: %s would be loaded, %d wait, %d are refused, %d are in the archive already.", text.Count(tried.Loaded, "sheet"), tried.Waiting, tried.Refused, tried.Known)
	}
	if waits {
		return pipeline.ErrWaits
	}
	return nil
}

// tryLoad tries a load on a copy of the archive; nil where it says why it did
// not.
func (a *app) tryLoad(ctx context.Context, files, names []string, hand pipeline.ByHand) (*pipeline.LoadReport, error) {
	// what is out of date is set right before the copy is taken
	if pl, err := a.open(ctx, pipeline.ReadOnly); err == nil {
		if err := pl.Close(); err != nil {
			return nil, err
		}
	}
	rep, err := pipeline.TryLoad(ctx, a.settings, files, names, hand)
	var not pipeline.NotTried
	if errors.As(err, &not) {
		fmt.Fprintf(a.err, "Each sheet is looked at by itself: %s. What copies, later issues and parts on two sheets mean for one another is seen when they are loaded.\n", not.Why)
		return nil, nil
	}
	return rep, err
}

// would is what became of a sheet in a trial, as it would be.
func would(s pipeline.SheetReport) *pipeline.SheetReport {
	if w, ok := map[string]string{"loaded": "would load", "waiting": "would wait"}[s.State]; ok {
		s.State = w
	}
	return &s
}

// becomes says what lines become, where it is not the same for all of them.
func becomes(counts map[string]int) string {
	var words []string
	for _, what := range slices.Sorted(maps.Keys(counts)) {
		words = append(words, fmt.Sprintf("%d %s", counts[what], what))
	}
	if len(words) == 0 || len(words) == 1 && counts["ok"] > 0 {
		return ""
	}
	return " (" + strings.Join(words, ", ") + ")"
}

// printLoad prints what a load did: one line for what went well, one for each
// sheet that waits or was refused.
func (a *app) printLoad(rep *pipeline.LoadReport) {
	if a.json {
		return
	}
	waits := ""
	if rep.Waiting > 0 {
		waits = "; " + text.CountOf(rep.Waiting, "waits for an answer", "wait for an answer")
	}
	a.say("%s loaded, %s in all; %d already in the archive%s.", text.Count(rep.Loaded, "sheet"), text.Count(rep.Rows, "line"), rep.Known, waits)
	shown := 0
	for _, s := range rep.Sheets {
		if s.Forgotten > 0 {
			fmt.Fprintf(a.out, "  %s: %s kept without a name, as somebody asked to be forgotten. The file itself still has the name.\n", s.Path, text.Count(s.Forgotten, "line"))
		}
		if s.State == "refused" || s.State == "withdrawn" { // those that wait are asked about in the end
			if shown++; shown > 10 {
				continue
			}
			fmt.Fprintf(a.out, "  %s is %s: %s\n", s.Path, s.State, strings.TrimPrefix(s.Why, path.Base(s.Path)+" is "+s.State+": "))
		}
	}
	for i := range rep.Sheets {
		for _, q := range rep.Sheets[i].TabsLeftOut() {
			if shown++; shown <= 10 {
				fmt.Fprintf(a.out, "  %s\n", q)
			}
		}
	}
	if shown > 10 {
		fmt.Fprintf(a.out, "  … and %d more; see lapwing sheets\n", shown-10)
	}
	settled := 0
	for _, s := range rep.Sheets {
		if s.Settled == "" {
			continue
		}
		if settled++; settled <= 10 {
			fmt.Fprintf(a.out, "  %s: %s\n", s.Path, s.Settled)
		}
	}
	if settled > 10 {
		fmt.Fprintf(a.out, "  … and %d more that other sheets have settled; see lapwing sheets problems\n", settled-10)
	}
	notes := 0 // on headings that have changed, and on days to come
	for _, s := range rep.Sheets {
		for _, n := range s.Notes {
			if notes++; notes <= 5 {
				fmt.Fprintf(a.out, "  %s: %s\n", s.Path, n)
			}
		}
	}
	if notes > 5 {
		fmt.Fprintf(a.out, "  … and %d more such notes\n", notes-5)
	}
}

// printProblems prints the worst few and counts the rest.
func printProblems(a *app, problems []place.Problem, most int) {
	for i, p := range problems {
		if i == most {
			printRest(a, problems[most:], func(p place.Problem) string { return p.Kind })
			return
		}
		a.printProblem(p, "")
	}
}

// printProblem prints a problem, and the lines that answer it.
func (a *app) printProblem(p place.Problem, remark string) {
	fmt.Fprintf(a.out, "  %-8s %s%s\n", p.Severity, problemWords(p), remark)
	a.printAnswers(strings.Repeat(" ", 11), p.Place.Sheet, p.PossibleAnswers())
}

// ownWords are the kinds of problem whose Read is a remark of the program's
// own, not what stands in a cell.
var ownWords = map[string]bool{"positions-missing": true, "positions-missing-many": true, "new-issue": true, "second-sheet": true, "other-people-or-times": true, "results-copied": true,
	"two-part-sheet": true, "other-half-missing": true, "times-and-names-differ": true, "distance-unsure": true, "order-not-by-time": true, "answer-remembered": true, "said-remembered": true, "decision-contradicted": true, "rows-in-one-cell": true,
	"column-not-used": true, "age-column-not-used": true, "opening-time": true, "corrected-out-of-order": true, "exchanged-after-correction": true}

// problemWords is a problem as a line. A remark is not shown as if it had been
// read somewhere.
func problemWords(p place.Problem) string {
	told := p.Severity == place.Note && p.Expected == "" && p.Do == "" // how a sheet was read, with nothing to do
	if !ownWords[p.Kind] && !told || p.Read == "" {
		return p.Question()
	}
	s := fmt.Sprintf("%s: %s: %s", p.Place, place.KindWords(p.Kind), strings.TrimSuffix(p.Read, "."))
	if p.Expected != "" {
		s += "; expected " + p.Expected
	}
	if p.Do != "" {
		s += ". " + p.Do
	}
	return s
}
