package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"github.com/spf13/cobra"

	"lapwing/pipeline"
	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports"
)

// runReport is what lapwing run found and did.
type runReport struct {
	Load    *pipeline.LoadReport `json:"load"`
	New     []pipeline.NewCourse `json:"new_courses,omitempty"`
	Changed []pipeline.RunRef    `json:"runs_changed"`
	Summary pipeline.Summary     `json:"summary"`
	Look    pipeline.Look        `json:"look"`
	Written []string             `json:"reports_written"`
	Gone    []pipeline.GoneRun   `json:"runs_withdrawn,omitempty"`
	Waiting []string             `json:"waiting"`
	asked   []pipeline.Question  // the same, with their answers
	first   pipeline.RunRef      // of a course whose newcomers are not known, its first run here
	others  bool                 // that course is new beside others
	// Compared is what became of sheets beside others of their runs.
	Compared []place.Problem `json:"compared,omitempty"`
}

func (a *app) runCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "run [PATH…]",
		Short: "The weekly job: load what is new, refresh, write the weekly reports",
		Long: `The weekly job. Loads what is new in the inbox folder (or in the paths given),
brings all figures up to date, writes the weekly reports of every run that
changed, and says in a few lines what was found and what needs a look.

A second run finds nothing new and changes nothing.`,
		Example: "  lapwing run\n  lapwing run ~/Downloads/alder-bank_2026-01-03.csv",
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx := cmd.Context()
			if len(args) == 0 {
				if _, err := os.Stat(a.settings.Inbox); err != nil {
					return fmt.Errorf("there is no inbox folder %s. Make it and put the sheets there, or name the sheets: lapwing run PATH", a.settings.Inbox)
				}
				args = []string{a.settings.Inbox}
			}
			files, names, err := a.findSheets(args)
			if err != nil {
				return err
			}
			return a.with(ctx, pipeline.ReadWrite, func(pl *pipeline.Pipeline) error { return a.weeklyJob(ctx, pl, files, names) })
		},
	}
}

// courseToAskOf is the course of which it is asked whether its first run here was the first
// ever: a new one, or that of a load whose newcomers are not known at all; "" for none.
func courseToAskOf(rep *runReport) string {
	switch {
	case rep.Summary.Unknown == 0:
		return ""
	case len(rep.New) > 0:
		return rep.New[0].Course
	case rep.Summary.Unknown == rep.Summary.Runs:
		return rep.Changed[0].Course
	}
	return ""
}

func (a *app) weeklyJob(ctx context.Context, pl *pipeline.Pipeline, files, names []string) error {
	rep := &runReport{}
	held, err := pl.HeldCourses(ctx)
	if err != nil {
		return err
	}
	if rep.Load, err = pl.LoadFiles(ctx, files, names, pipeline.ByHand{}); err != nil {
		return err
	}
	rep.New = pl.NewCourses(held, rep.Load)
	if _, err := pl.Refresh(ctx, false); err != nil {
		return err
	}
	if rep.Changed, err = pl.ChangedRuns(ctx); err != nil {
		return err
	}
	if rep.Summary, err = pl.Summarise(ctx, rep.Changed); err != nil {
		return err
	}
	if rep.Look, err = pl.ToLook(ctx, rep.Load); err != nil {
		return err
	}
	if rep.Compared, err = pl.Compared(ctx, rep.Load); err != nil {
		return err
	}
	if rep.Written, rep.Gone, err = a.writeChanged(ctx, pl, rep.Changed); err != nil {
		return err
	}
	if began := courseToAskOf(rep); began != "" {
		runs, err := pl.Runs(ctx, began, 0)
		if err != nil {
			return err
		}
		if len(runs) > 0 {
			rep.first, rep.others = runs[0], len(held) > 0 && !held[began]
		}
	}
	if rep.asked, err = pl.WaitingQuestions(ctx); err != nil {
		return err
	}
	for _, q := range rep.asked {
		rep.Waiting = append(rep.Waiting, q.String())
	}
	if err := a.asJSON(rep); err != nil {
		return err
	}
	if !a.json {
		a.printRun(rep)
	}
	if len(rep.Waiting) > 0 {
		return pipeline.ErrWaits
	}
	return rep.Load.Err()
}

// writeChanged writes the weekly reports of runs that changed, and what there is
// to say of those that stand no more.
func (a *app) writeChanged(ctx context.Context, pl *pipeline.Pipeline, changed []pipeline.RunRef) (written []string, gone []pipeline.GoneRun, err error) {
	if written, err = a.writeWeekly(ctx, pl, changed, ""); err != nil {
		return nil, nil, err
	}
	if gone, err = pl.GoneRuns(ctx); err != nil {
		return nil, nil, err
	}
	o, err := a.reportOptionsAt(ctx, pl)
	if err != nil {
		return nil, nil, err
	}
	for _, g := range gone {
		files, err := reports.Withdrawn(ctx, pl.DB, o, g.Course, g.Day, g.Session, g.Why)
		if err != nil {
			return nil, nil, err
		}
		written = append(written, files...)
	}
	if len(changed)+len(gone) > 0 {
		err = pl.Reported(ctx)
	}
	return written, gone, err
}

// sayWritten says how many files of how many runs were written, and for whom
// each is where they are few.
func (a *app) sayWritten(files []string, runs int) {
	a.say("%s written to %s", text.Count(len(files), "file"), a.settings.Reports)
	if runs > mostNamed {
		return
	}
	for _, f := range files {
		switch {
		case strings.Contains(filepath.Base(f), "-desk") && strings.HasSuffix(f, ".xlsx"):
			a.say("  for the desk, to check:  %s", f)
		case strings.HasSuffix(f, ".xlsx"):
			a.say("  to pin up (first page):  %s", f)
		case strings.HasSuffix(f, ".txt"):
			a.say("  to send, with the workbook:  %s", f)
		}
	}
}

func (a *app) printRun(rep *runReport) {
	a.printLoad(rep.Load)
	a.sayNewCourses(rep.New, pipeline.ByHand{})
	s := rep.Summary
	for _, g := range rep.Gone {
		a.say("%s: no sheet stands any more (%s). Its reports say now that the result was withdrawn; take down what was pinned up.", runWords(g.RunRef), g.Why)
	}
	if s.Runs == 0 && len(rep.Gone) > 0 {
		a.say("%s written to %s", text.Count(len(rep.Written), "file"), a.settings.Reports)
	} else if s.Runs == 0 && len(rep.Load.Sheets) == 0 {
		a.say("There are no sheets here: save the day's sheet in the folder %s and type lapwing run again.", a.settings.Inbox)
	} else if s.Runs == 0 {
		a.say("Nothing has changed since the last time; no report was written.")
	} else {
		a.say("%s new or changed: %d times, %d places and %d names counted.", text.Count(s.Runs, "run"), s.Times, s.Positions, s.Names)
		if len(rep.Changed) <= mostNamed {
			for _, c := range rep.Changed {
				a.say("  %s", runWords(c))
			}
		}
		newcomers := text.Count(s.Newcomers, "newcomer")
		switch {
		case s.Unknown == s.Runs:
			newcomers = "newcomers not known"
		case s.Unknown > 0:
			newcomers += fmt.Sprintf(" (not known for %s)", text.Count(s.Unknown, "run"))
		}
		a.say("%s, %s.", text.Count(s.PBs, "personal best"), newcomers)
		if rep.first.Course != "" {
			a.sayBegan(rep.first, rep.others)
		}
		a.sayWritten(rep.Written, s.Runs)
	}
	for _, r := range rep.Look.Volunteers {
		a.say("Volunteers of %s are listed; there are no results of that day yet.", runWords(r))
	}
	printProblems(a, rep.Compared, 10)
	if rep.Look.All > 0 || len(rep.Waiting) == 0 { // a sheet that waits needs a look
		a.say("%s", lookWords(s, rep.Look.All))
	}
	a.askQuestions(rep.asked)
}

// sayNewCourses names the courses that were not there before; said is what was said of the
// sheets by hand, and has to be said again.
func (a *app) sayNewCourses(courses []pipeline.NewCourse, said pipeline.ByHand) {
	for i, c := range courses {
		if i == mostNamed {
			a.say("  … and %d more", len(courses)-i)
			break
		}
		a.say("New course: %s, %s, in %s", c.Course, distanceWords(c.DistancesM), c.Sheet)
		if c.Like != "" {
			a.say("  If that is %s: %s", c.Like, a.otherCourse(c, c.Like, said))
		}
	}
	if n := len(courses); n == 1 && courses[0].Like == "" {
		a.say("  If it has another name or distance: %s", a.otherCourse(courses[0], `NAME --distance "8 km"`, said))
	} else if n > 1 {
		a.say("  If one has another name or distance: lapwing sheets withdraw its sheet; then lapwing load it again with --course NAME --distance \"8 km\"")
	}
}

// distanceWords are distances in metres as they are said: "2 km, 5 km".
func distanceWords(metres []int) string {
	var said []string
	for _, m := range metres {
		said = append(said, unit.Distance(m))
	}
	return strings.Join(said, ", ")
}

// otherCourse is what to type where a sheet is of another course.
func (a *app) otherCourse(c pipeline.NewCourse, course string, said pipeline.ByHand) string {
	s := fmt.Sprintf("lapwing sheets withdraw %s; then lapwing load %s --course %s", text.Typed(c.Sheet), text.Typed(a.fileOf(c.Sheet)), course)
	for _, f := range []struct{ flag, value string }{{"date", said.Date}, {"session", said.Session}, {"kind", said.Kind}} {
		if f.value != "" {
			s += fmt.Sprintf(" --%s %s", f.flag, text.Typed(f.value))
		}
	}
	return s
}

// sayBegan says what would make the newcomers of a course known, of which this is the
// first run in the archive; others says that it is new beside other courses.
func (a *app) sayBegan(r pipeline.RunRef, others bool) {
	file := filepath.Join(a.settings.Archive, "history.csv")
	elsewhere := ""
	if others {
		elsewhere = " So newcomers of other courses are not known either: they may have run here before."
	}
	a.say("  No sheet can tell who ran before the first one.%s If the run of %s was the first ever at %s, put this into the file %s; if not, see history.csv in the README:", elsewhere, r.Day.Long(), r.Course, filepath.ToSlash(file))
	if !isThere(file) {
		a.say("    fact,course,name,sex,age_group,distance_m,finishes,time,date")
	}
	a.say("    began,%s,,,,,,,%s", r.Course, r.Date)
}

// mostNamed is how many changed runs are named one by one: a correction can
// change a milestone or a best in weeks before and after, and somebody will ask
// why there are new reports of them.
const mostNamed = 8

// runWords is a run as a person would say it.
func runWords(r pipeline.RunRef) string {
	s := r.Course + ", " + r.Day.Time().Format("Monday 2 January 2006")
	if r.Session != "" {
		s += ", " + text.Session(r.Session)
	}
	return s
}

// lookWords says how much needs a look, in the runs that changed and elsewhere.
func lookWords(s pipeline.Summary, all int) string {
	needs := func(n int) string {
		if n == 1 {
			return "1 thing needs a look"
		}
		return fmt.Sprintf("%d things need a look", n)
	}
	const where = ". To see them: lapwing sheets problems"
	switch other := all - s.Look; {
	case all == 0:
		return "Nothing needs a look."
	case s.Runs == 0:
		return needs(all) + where
	case other == 0:
		return needs(s.Look) + " in these runs" + where
	case s.Look == 0:
		return "Nothing needs a look in these runs; elsewhere, " + needs(other) + where
	default:
		return fmt.Sprintf("%s in these runs, and %d elsewhere%s", needs(s.Look), other, where)
	}
}

// reportOptions are the options that all reports share.
func (a *app) reportOptions() reports.Options {
	return reports.Options{Dir: a.settings.Reports, ArchiveDir: a.settings.Archive, AgeStandard: a.settings.AgeStandard, AgeRule: a.settings.AgeRule(), Version: version, Model: pipeline.ModelVersion}
}

// reportOptionsAt are those with how far the archive has got and what was done
// to it.
func (a *app) reportOptionsAt(ctx context.Context, pl *pipeline.Pipeline) (reports.Options, error) {
	o := a.reportOptions()
	m, err := pl.Mark()
	o.Mark = reports.Mark{Decision: m.Decision, Ledger: m.Ledger, Known: true}
	o.EventsSince = func(since reports.Mark) ([]reports.Event, error) { return eventsSince(ctx, pl, since) }
	return o, err
}

// eventsSince is what was done to the archive since a mark.
func eventsSince(ctx context.Context, pl *pipeline.Pipeline, since reports.Mark) ([]reports.Event, error) {
	if !since.Known {
		return nil, nil
	}
	all, err := pl.Events(ctx, pipeline.Mark{Decision: since.Decision, Ledger: since.Ledger})
	out := make([]reports.Event, len(all))
	for i, e := range all {
		out[i] = reports.Event{Decision: e.Decision, Undoes: e.Undoes, Ledger: e.Ledger, Runners: e.Runners, Public: e.Public, Desk: e.Desk}
		for _, r := range e.Runs {
			out[i].Runs = append(out[i].Runs, reportedRun(r))
		}
	}
	return out, err
}

func reportedRun(r pipeline.RunRef) reports.Run {
	return reports.Run{Course: r.Course, On: r.Day, Session: r.Session}
}

// reportsAtOnce is how many runs' reports are read at a time: enough that one
// question to the database serves many, few enough to hold in memory.
const reportsAtOnce = 128

// writeWeekly writes the weekly reports of runs, several at a time; why says in a line what
// for, "" for what has happened to the archive.
func (a *app) writeWeekly(ctx context.Context, pl *pipeline.Pipeline, runs []pipeline.RunRef, why string) ([]string, error) {
	if len(runs) == 0 {
		return nil, nil
	}
	if err := os.MkdirAll(a.settings.Reports, 0o755); err != nil {
		return nil, fmt.Errorf("can't make the reports folder: %w", err)
	}
	o, err := a.reportOptionsAt(ctx, pl)
	if err != nil {
		return nil, err
	}
	o.Why = why
	if o.Register, err = reports.OpenRegister(o.ArchiveDir); err != nil {
		return nil, err
	}
	named := make([]reports.Run, len(runs))
	for i, r := range runs {
		named[i] = reportedRun(r)
	}
	// All runs need about the same events: they are read once.
	events, err := eventsSince(ctx, pl, o.Register.Earliest(named))
	if err != nil {
		return nil, err
	}
	o.EventsSince = func(reports.Mark) ([]reports.Event, error) { return events, nil }
	// Runs of a course are read together, so that its history is read once.
	order := make([]int, len(runs))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return runs[order[i]].Course < runs[order[j]].Course })
	written := make([][]string, len(runs))
	ready := make([]reports.WeeklyReport, len(runs))
	err = pl.InBatches(ctx, "Writing reports", len(runs), reportsAtOnce, func(ctx context.Context, from, to int) error {
		batch := make([]reports.Run, to-from)
		for k := range batch {
			batch[k] = named[order[from+k]]
		}
		got, err := reports.ReadWeekly(ctx, pl.DB, o, batch)
		copy(ready[from:], got)
		return err
	}, func(ctx context.Context, i int) error {
		r := runs[order[i]]
		files, err := ready[i].Write()
		if err != nil {
			return fmt.Errorf("report of %s %s: %w", r.Course, r.Date, err)
		}
		written[order[i]], ready[i] = files, reports.WeeklyReport{}
		return nil
	})
	var all []string
	for _, w := range written {
		all = append(all, w...)
	}
	return all, err
}
