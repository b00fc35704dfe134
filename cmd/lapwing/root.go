package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"

	"github.com/spf13/cast"
	"github.com/spf13/cobra"
	"github.com/spf13/viper"

	"lapwing/pipeline"
	"lapwing/pipeline/insight/league"
)

// version of the program; the build may set it.
var version = "0.1"

// Exit codes.
const (
	exitOK     = 0
	exitFailed = 1 // failed, or something waits for an answer
	exitUsage  = 2
)

// usageError is a command line that can't be carried out as written.
type usageError struct{ error }

func usagef(format string, a ...any) error { return usageError{fmt.Errorf(format, a...)} }

// app is one call of the program.
type app struct {
	out, err    io.Writer
	settings    pipeline.Settings
	league      league.Rules
	config      string            // lapwing.toml in use, "" none
	files       map[string]string // files named on the command line, by sheet
	quiet       bool
	json        bool
	timings     bool
	profile     string // file for a processor profile, for developers
	heapProfile string // file for a profile of the heap near its peak
	heapWatch   chan chan error
}

// run carries out one command line and returns the exit code.
func run(ctx context.Context, args []string, out, errOut io.Writer) int {
	a := &app{out: out, err: errOut}
	root := a.root()
	root.SetArgs(args)
	defer a.stopProfile()
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.ExecuteContext(ctx)
	return a.exitCode(err)
}

func (a *app) exitCode(err error) int {
	var usage usageError
	switch {
	case err == nil:
		return exitOK
	case errors.Is(err, pipeline.ErrWaits):
		return exitFailed // the command has said what waits
	case errors.As(err, &usage):
		fmt.Fprintln(a.err, "lapwing:", a.said(err.Error()))
		fmt.Fprintln(a.err, a.said("Help: lapwing --help, or --help after any command."))
		return exitUsage
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(a.err, "lapwing: stopped. What was loaded so far is kept; run the same command again to go on.")
		return exitFailed
	}
	fmt.Fprintln(a.err, "lapwing:", a.said(plain(err)))
	return exitFailed
}

// plain adds what to do to errors of the machine.
func plain(err error) string {
	switch {
	case errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), "No space left on device"):
		return err.Error() + ". The disk is full: make room, then run the same command again"
	case errors.Is(err, syscall.EROFS):
		return err.Error() + ". The folder is read-only: name one that can be written, in lapwing.toml (archive, reports) or with --archive"
	case errors.Is(err, fs.ErrPermission) || strings.Contains(err.Error(), "Permission denied"):
		return err.Error() + ". Ask for the right to write there, or name another folder, in lapwing.toml (archive, reports) or with --archive"
	}
	return err.Error()
}

func (a *app) root() *cobra.Command {
	var archive string
	root := &cobra.Command{
		Use:   "lapwing",
		Short: "Results and personal bests of weekly timed runs",
		Long: `Lapwing turns the result sheets of weekly community timed runs into a
trustworthy record and into spreadsheets that people read.

The weekly job: put the new sheets into the folder sheets (the inbox) and type

  lapwing run`,
		Example:       "  lapwing run\n  lapwing run ~/Downloads/alder-bank_2026-01-03.csv\n  lapwing standing \"Ines Okafor\"",
		SilenceErrors: true, SilenceUsage: true,
		Version: version,
		PersistentPreRunE: func(cmd *cobra.Command, args []string) error {
			if err := a.startProfile(); err != nil {
				return err
			}
			return a.readSettings(cmd)
		},
		RunE: func(cmd *cobra.Command, args []string) error { return cmd.Help() },
		Args: cobra.NoArgs,
	}
	wrapArgs(root)
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error { return usageError{err} })
	f := root.PersistentFlags()
	f.StringVar(&a.config, "config", "", "settings file (default: lapwing.toml in this folder, if there is one)")
	f.StringVar(&archive, "archive", "", "archive folder (default \"archive\")")
	f.StringVar(&a.profile, "cpuprofile", "", "write a processor profile for pprof to this file")
	f.StringVar(&a.heapProfile, "memprofile", "", "write a heap profile for pprof to this file")
	f.BoolVar(&a.timings, "timings", false, "say how long each piece of work took")
	_ = f.MarkHidden("cpuprofile")
	_ = f.MarkHidden("memprofile")
	_ = f.MarkHidden("timings")
	f.BoolVar(&a.quiet, "quiet", false, "print only what needs a look")
	f.BoolVar(&a.json, "json", false, "print the result as JSON, for other programs")
	for _, c := range []*cobra.Command{
		a.runCommand(), a.loadCommand(), a.sheetsCommand(), a.refreshCommand(), a.rebuildCommand(),
		a.weeklyCommand(), a.correctCommand(), a.clubsCommand(), a.seasonCommand(), a.standingCommand(), a.coursesCommand(), a.matchCommand(), a.exportCommand(), a.checkCommand(), a.forgetCommand(), a.demoCommand(), a.reportedCommand(),
	} {
		wrapArgs(c)
		root.AddCommand(c)
	}
	return root
}

// wrapArgs turns complaints about arguments into usage errors.
func wrapArgs(c *cobra.Command) {
	if check := c.Args; check != nil {
		c.Args = func(cmd *cobra.Command, args []string) error {
			err := check(cmd, args)
			switch {
			case err == nil:
				return nil
			case cmd.HasSubCommands() && len(args) > 0:
				return usageError{noCommand(cmd, args[0])}
			}
			return usageError{fmt.Errorf("%s: %w", cmd.CommandPath(), err)}
		}
	}
	for _, sub := range c.Commands() {
		wrapArgs(sub)
	}
}

// noCommand says that a command has none of the name below it, and which it may have been.
func noCommand(cmd *cobra.Command, name string) error {
	below := strings.TrimSpace(strings.TrimPrefix(cmd.CommandPath(), cmd.Root().Name()))
	err := fmt.Errorf("there is no command %q", strings.TrimSpace(below+" "+name))
	cmd.SuggestionsMinimumDistance = 2 // letters
	if like := cmd.SuggestionsFor(name); len(like) > 0 {
		return fmt.Errorf("%w; did you mean: %s %s", err, cmd.CommandPath(), like[0])
	}
	return err
}

// readSettings puts the settings together: flags over LAPWING_* over
// lapwing.toml over the defaults. Folders in lapwing.toml are meant from where
// the file is.
func (a *app) readSettings(cmd *cobra.Command) error {
	v := viper.New()
	d := pipeline.DefaultSettings()
	v.SetDefault("archive", d.Archive)
	v.SetDefault("inbox", d.Inbox)
	v.SetDefault("reports", d.Reports)
	v.SetDefault("age_standard", d.AgeStandard)
	v.SetDefault("age_not_known", d.AgeNotKnown)
	v.SetDefault("age_groups", d.AgeGroups)
	v.SetDefault("age_groups_on", d.AgeGroupsOn)
	v.SetDefault("age_groups_year", d.AgeGroupsYear)
	v.SetDefault("age_groups_under", d.AgeGroupsUnder)
	v.SetDefault("age_groups_masters", d.AgeGroupsMasters)
	v.SetDefault("age_groups_width", d.AgeGroupsWidth)
	v.SetDefault("season_start", d.SeasonStart)
	v.SetDefault("milestones", d.Milestones)
	v.SetDefault("volunteer_milestones", d.VolunteerMilestones)
	v.SetDefault("date_order", d.DateOrder)
	v.SetDefault("memory_limit", d.MemoryLimit)
	v.SetDefault("threads", d.Threads)
	v.SetEnvPrefix("LAPWING")
	v.AutomaticEnv()
	base := ""
	if a.config == "" {
		if _, err := os.Stat("lapwing.toml"); err == nil {
			a.config = "lapwing.toml"
		}
	}
	known := map[string]bool{"headings": true, "courses": true, "clubs": true, "league": true, "words": true}
	for _, k := range v.AllKeys() {
		known[k] = true
	}
	if a.config != "" {
		text, err := os.ReadFile(a.config)
		if err != nil {
			return fmt.Errorf("%s: %w", a.config, plainFileError(err))
		}
		text = bytes.TrimPrefix(text, []byte("\ufeff")) // as some editors put in front
		v.SetConfigType("toml")
		if err := v.ReadConfig(bytes.NewReader(text)); err != nil {
			return fmt.Errorf("%s", syntaxWords(a.config, text, err))
		}
		for _, k := range slices.Sorted(maps.Keys(v.AllSettings())) {
			if !known[k] {
				return fmt.Errorf("%s: there is no setting %q; see the README for those that are", a.config, k)
			}
		}
		base = filepath.Dir(a.config)
	}
	r := &settingReader{v: v}
	s := pipeline.Settings{
		AgeStandard: r.number("age_standard"), AgeNotKnown: r.text("age_not_known"),
		AgeGroups: r.text("age_groups"), AgeGroupsOn: r.text("age_groups_on"), AgeGroupsYear: r.text("age_groups_year"),
		AgeGroupsUnder: r.numbers("age_groups_under"), AgeGroupsMasters: r.number("age_groups_masters"), AgeGroupsWidth: r.number("age_groups_width"), SeasonStart: r.text("season_start"), Milestones: r.numbers("milestones"),
		VolunteerMilestones: r.numbers("volunteer_milestones"),
		DateOrder:           r.text("date_order"), MemoryLimit: r.text("memory_limit"), Threads: r.number("threads"),
		Headings: r.words("headings"), Courses: r.words("courses"), Words: r.words("words"), Clubs: r.words("clubs"),
	}
	if r.err != nil {
		return fmt.Errorf("settings: %w", r.err)
	}
	s.Archive = folder(v, base, "archive")
	s.Inbox = folder(v, base, "inbox")
	s.Reports = folder(v, base, "reports")
	if f := cmd.Flags().Lookup("archive"); f != nil && f.Changed {
		s.Archive = f.Value.String()
	}
	if err := s.Check(); err != nil {
		return fmt.Errorf("settings: %w", err)
	}
	var err error
	if a.league, err = leagueRules(v); err != nil {
		return fmt.Errorf("settings: %w", err)
	}
	a.settings = s
	return nil
}

func plainFileError(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return errors.New("there is no such file")
	}
	return err
}

// syntaxWords says in which line of the settings something can't be read, and how it is
// written.
func syntaxWords(file string, text []byte, err error) string {
	var at interface {
		Position() (row, column int)
	}
	if key, ok := strings.CutSuffix(err.Error(), " is already defined"); ok {
		return fmt.Sprintf("%s: %s stands there twice; delete one of the two", file, key[strings.LastIndexByte(key, ' ')+1:])
	}
	if !errors.As(err, &at) {
		return fmt.Sprintf("%s: %v", file, err)
	}
	row, _ := at.Position()
	lines := strings.Split(string(text), "\n")
	if row < 1 || row > len(lines) {
		return fmt.Sprintf("%s: %v", file, err)
	}
	line := strings.TrimSpace(lines[row-1])
	s := fmt.Sprintf("%s, line %d: %s", file, row, line)
	switch {
	case strings.ContainsAny(line, "“”„‘’«»"):
		return s + `: write straight quotation marks, "…"`
	}
	return s + `: this can't be read. Write  name = value  with words in quotation marks, as in  date_order = "dmy"`
}

// settingReader reads settings and remembers the first of another kind than it
// should be: a misspelt number must not pass for 0.
type settingReader struct {
	v   *viper.Viper
	err error
}

func (r *settingReader) wrong(key, want string) {
	if r.err == nil {
		r.err = fmt.Errorf("%s = %v: write %s", key, r.v.Get(key), want)
	}
}

func (r *settingReader) text(key string) string {
	s, err := cast.ToStringE(r.v.Get(key))
	if err != nil {
		r.wrong(key, "one word in quotation marks")
	}
	return s
}

func (r *settingReader) number(key string) int {
	n, err := strconv.Atoi(fmt.Sprint(r.v.Get(key)))
	if err != nil {
		r.wrong(key, "a whole number")
	}
	return n
}

func (r *settingReader) numbers(key string) []int {
	value := r.v.Get(key)
	if s, ok := value.(string); ok { // from the environment
		value = strings.FieldsFunc(s, func(c rune) bool { return c == ' ' || c == ',' })
	}
	list, err := cast.ToIntSliceE(value)
	if err != nil {
		r.wrong(key, "whole numbers, as in [10, 20, 50]")
	}
	return list
}

func (r *settingReader) words(key string) map[string]string {
	m, err := cast.ToStringMapStringE(r.v.Get(key))
	if err != nil && r.v.Get(key) != nil {
		r.wrong(key, "lines of the form \"word\" = \"meaning\" under ["+key+"]")
	}
	return m
}

// folder is a folder setting: one from the settings file is meant from where
// that file is, one from the environment from where the user is.
func folder(v *viper.Viper, base, key string) string {
	p := v.GetString(key)
	if _, env := os.LookupEnv("LAPWING_" + strings.ToUpper(key)); env || filepath.IsAbs(p) || base == "" {
		return p
	}
	return filepath.Join(base, p)
}

// open opens the archive for a command.
func (a *app) open(ctx context.Context, mode pipeline.Mode) (*pipeline.Pipeline, error) {
	return pipeline.Open(ctx, a.settings, mode, a.progress())
}

// with opens the archive, does the work and closes it again.
func (a *app) with(ctx context.Context, mode pipeline.Mode, work func(*pipeline.Pipeline) error) (err error) {
	pl, err := a.open(ctx, mode)
	if err != nil {
		return err
	}
	defer func() {
		err = errors.Join(err, pl.Close())
		a.printTimings(pl)
	}()
	return work(pl)
}

// say prints a line unless --quiet or --json.
func (a *app) say(format string, args ...any) {
	if !a.quiet && !a.json {
		fmt.Fprintf(a.out, format+"\n", args...)
	}
}

// asJSON prints v as JSON where that was asked for.
func (a *app) asJSON(v any) error {
	if !a.json {
		return nil
	}
	e := json.NewEncoder(a.out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
