package main

import (
	"fmt"
	"os"
	"strconv"

	"github.com/spf13/cobra"
	"github.com/spf13/viper"

	"lapwing/pipeline"
	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/unit"
	"lapwing/reports"
)

func (a *app) seasonCommand() *cobra.Command {
	var s reports.SeasonOptions
	var season, from, to string
	var asPrinted bool
	c := &cobra.Command{
		Use: "season", Short: "The season workbook: leagues, honours, records, attendance, courses",
		Long: `The season workbook: attendance, league tables, age-graded honours, most
improved, records and all-time lists, courses and conditions. The default is the
season that the newest run is in; season_start in lapwing.toml says when seasons
begin.

--club takes the members on the day from members.csv: first-claim members score,
second-claim members are listed. Where members.csv has nobody of the club, and with
--club-as-printed, it takes those whose line on the sheet prints the club.

--close freezes a season as awarded: a copy is kept in the archive, and later
workbooks say on a tab of their own how they differ from it. --reopen takes that
back and keeps what was awarded under another name.`,
		Example: "  lapwing season\n  lapwing season --season 2026 --club \"Osierholm Harriers\"\n  lapwing season --from 2025-09-01 --to 2026-04-30 --course alder-bank\n  lapwing season --season 2025 --close",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			ctx := cmd.Context()
			mode := pipeline.ReadOnly
			if s.Close || s.Reopen {
				mode = pipeline.ReadWrite
			}
			return a.with(ctx, mode, func(pl *pipeline.Pipeline) error {
				if s.Close { // what is kept for good rests on all lines together
					if err := pl.RefreshAll(ctx); err != nil {
						return err
					}
				}
				if err := a.seasonDays(pl, &s, season, from, to); err != nil {
					return err
				}
				if err := os.MkdirAll(a.settings.Reports, 0o755); err != nil {
					return fmt.Errorf("can't make the reports folder: %w", err)
				}
				var err error
				if s.Course, err = pl.Course(s.Course); err != nil {
					return err
				}
				note := ""
				if s.Club, s.ByMembers, note, err = pl.SeasonClub(ctx, s.Club, asPrinted); err != nil {
					return err
				}
				if note != "" {
					a.say("%s", note)
				}
				if s.Ledger, err = pl.LedgerHash(); err != nil {
					return err
				}
				s.League = &a.league
				o, err := a.reportOptionsAt(ctx, pl)
				if err != nil {
					return err
				}
				rep, err := reports.Season(ctx, pl.DB, o, s)
				if err != nil {
					return err
				}
				if err := a.asJSON(rep); err != nil {
					return err
				}
				for _, f := range rep.Written {
					a.say("%s", f)
				}
				for _, n := range rep.Notes {
					a.say("%s", n)
				}
				if len(rep.Differences) > 0 {
					a.say("The season is closed and stays as awarded. It would differ now:")
				}
				for _, d := range rep.Differences {
					a.say("  %s", d)
				}
				return nil
			})
		},
	}
	f := c.Flags()
	f.StringVar(&season, "season", "", "year in which the season starts")
	f.StringVar(&from, "from", "", "first day, YYYY-MM-DD")
	f.StringVar(&to, "to", "", "last day, YYYY-MM-DD")
	f.StringVar(&s.Course, "course", "", "only this course")
	f.StringVar(&s.Club, "club", "", "only the members of this club, as members.csv has them on the day of each run")
	f.BoolVar(&asPrinted, "club-as-printed", false, "with --club: those whose line prints the club, whatever members.csv says")
	f.BoolVar(&s.Close, "close", false, "freeze the season as awarded")
	f.BoolVar(&s.Unfinished, "unfinished", false, "with --close: although the newest sheet is of before the season's last day")
	f.BoolVar(&s.Reopen, "reopen", false, "take back that the season was closed; what was awarded is kept")
	c.MarkFlagsMutuallyExclusive("close", "reopen")
	c.MarkFlagsMutuallyExclusive("season", "from")
	c.MarkFlagsMutuallyExclusive("season", "to")
	c.MarkFlagsRequiredTogether("from", "to")
	return c
}

// seasonDays settles first and last day and what the season is called.
func (a *app) seasonDays(pl *pipeline.Pipeline, s *reports.SeasonOptions, season, from, to string) error {
	if from != "" {
		var err error
		if s.From, err = unit.ParseDay(from); err != nil {
			return usagef("--from: %w", err)
		}
		if s.To, err = unit.ParseDay(to); err != nil {
			return usagef("--to: %w", err)
		}
		s.Name = from + " to " + to
		return nil
	}
	start := pl.SeasonStart()
	if start == 0 {
		return fmt.Errorf("there is no run in the archive yet")
	}
	if season != "" {
		year, err := strconv.Atoi(season)
		if err != nil || year < 1900 || year > 2200 {
			return usagef("--season %q: write the year in which the season starts, as in 2026", season)
		}
		start = a.settings.SeasonOf(unit.NewDay(year+1, 1, 1) - 1)
	}
	year, month, day := start.Date()
	s.From, s.To = start, unit.NewDay(year+1, month, day)-1
	s.Name = strconv.Itoa(year)
	if month > 1 || day > 1 {
		s.Name += fmt.Sprintf("-%02d", (year+1)%100)
	}
	return nil
}

// leagueRules reads the table [league] of the settings.
func leagueRules(v *viper.Viper) (league.Rules, error) {
	r := league.DefaultRules()
	keys := v.GetStringMap("league")
	for k := range keys {
		switch k {
		case "first", "step", "least", "best", "minimum_runs", "second_claim_scores", "by_position", "volunteer", "volunteer_most", "volunteer_points":
		default:
			return r, fmt.Errorf("[league]: there is no setting %q", k)
		}
	}
	whole := func(key string, usual int) int {
		if v.IsSet("league." + key) {
			return v.GetInt("league." + key)
		}
		return usual
	}
	r.Points.First = int32(whole("first", int(r.Points.First)))
	r.Points.Step = int32(whole("step", int(r.Points.Step)))
	r.Points.Least = int32(whole("least", int(r.Points.Least)))
	r.Best, r.MinRuns = whole("best", r.Best), whole("minimum_runs", r.MinRuns)
	r.SecondClaimScores, r.ByPosition = v.GetBool("league.second_claim_scores"), v.GetBool("league.by_position")
	r.VolunteerMost, r.VolunteerPoints = whole("volunteer_most", 0), int32(whole("volunteer_points", 0))
	switch w := v.GetString("league.volunteer"); w {
	case "", "own average":
	case "fixed":
		r.Volunteer = league.FixedCredit
	case "none":
		r.Volunteer = league.NoCredit
	default:
		return r, fmt.Errorf("[league]: volunteer = %q: write \"own average\", \"fixed\" or \"none\"", w)
	}
	return r, nil
}
