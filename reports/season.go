package reports

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"lapwing/pipeline/insight/league"
	"lapwing/pipeline/unit"
)

// SeasonOptions say what a season workbook covers.
type SeasonOptions struct {
	Name     string   // as printed and in the file name: "2026"
	From, To unit.Day // both included
	Course   string   // "" for all courses
	Club     string   // "" for everybody
	// ByMembers says that Club is that of the members on the day, as the
	// archive's list of members has it, and not the one that sheets print.
	ByMembers bool
	// Close freezes the season: the workbook and a dump of its tables are kept
	// in the archive as awarded, with Ledger and the model's version.
	Close bool
	// Unfinished allows to close a season of which the newest sheet does not
	// reach the last day.
	Unfinished bool
	// Reopen takes back that the season was closed: what was awarded is kept
	// under another name.
	Reopen bool
	Ledger string // hash of the ledger, printed on the Notes tab
	// League has the rules of the league tables; the zero value means the
	// usual ones.
	League *league.Rules
	// ClubScorers is how many members of a club score in a run; 0 means 4.
	ClubScorers int
}

// SeasonReport is what Season did.
type SeasonReport struct {
	Written []string
	// Differences from the season as it was closed, one line each; empty where
	// it is not closed or nothing differs.
	Differences []string
	// Notes are what somebody who closes a season should know.
	Notes []string
}

// Season writes the season workbook where it has changed. A closed season is
// left as awarded; what would differ now is told.
func Season(ctx context.Context, q Queryer, o Options, s SeasonOptions) (*SeasonReport, error) {
	if s.From > s.To {
		return nil, fmt.Errorf("the season would begin on %v, after its end on %v", s.From, s.To)
	}
	d, err := readSeason(ctx, q, o, s)
	if err != nil {
		return nil, err
	}
	if len(d.runs) == 0 {
		return nil, fmt.Errorf("the archive holds no run%s from %v to %v", ofCourse(s.Course), s.From, s.To)
	}
	if err := d.compute(); err != nil {
		return nil, err
	}
	reg, err := o.register()
	if err != nil {
		return nil, err
	}
	name := d.fileName()
	rep := &SeasonReport{}
	awarded := d.awards()
	frozen := filepath.Join(o.ArchiveDir, "closed", name+".txt")
	if s.Reopen {
		kept, err := setAside(frozen)
		if err != nil {
			return nil, err
		}
		rep.Notes = append(rep.Notes, "Season "+s.Name+" is open again; what was awarded is kept in "+kept+".")
	}
	before, err := os.ReadFile(frozen)
	switch {
	case err == nil:
		rep.Differences = differences(string(before), awarded, true)
		d.since = differences(string(before), awarded, false)
		d.awarded = len(d.since) == 0
		if s.Close {
			return rep, fmt.Errorf("season %s is closed already; it stays as awarded (%s). To close it anew, open it first: lapwing season … --reopen", s.Name, frozen)
		}
	case !os.IsNotExist(err):
		return nil, err
	case s.Close && d.latest < s.To && !s.Unfinished:
		return nil, fmt.Errorf("season %s ends on %s, and the newest sheet is of %s. To close it as it stands now, say --close --unfinished", s.Name, s.To.Long(), d.latest.Long())
	case s.Close && s.To < d.latest:
		rep.Notes = append(rep.Notes, "Most improved is not in the closed season. "+notWorkedOut)
	}
	d.awarded = d.awarded || s.Close
	first := issueOf{Number: 1}
	rep.Written, err = reg.publish(o.Dir, name, o.Mark, []file{{".xlsx", d.book(first).Text(),
		func(i issueOf) ([]byte, error) { return workbook(d.book(i)) }}}, func(map[string]string) (changes, error) {
		return d.why(reg.last(name))
	})
	if err != nil || !s.Close {
		return rep, err
	}
	if err := os.MkdirAll(filepath.Dir(frozen), 0o755); err != nil {
		return rep, err
	}
	final, err := workbook(d.book(first))
	if err != nil {
		return rep, err
	}
	copyPath := strings.TrimSuffix(frozen, ".txt") + ".xlsx"
	if err := writeFile(copyPath, final); err != nil {
		return rep, err
	}
	// The dump comes last: it is what marks the season closed.
	if err := writeFile(frozen, []byte(awarded)); err != nil {
		return rep, err
	}
	rep.Written = append(rep.Written, copyPath, frozen)
	return rep, syncFolder(filepath.Dir(frozen))
}

// setAside gives the files of a closed season other names, so that it is closed
// no more, and says that of the dump.
func setAside(frozen string) (string, error) {
	stem := strings.TrimSuffix(frozen, ".txt")
	if _, err := os.Stat(frozen); err != nil {
		return "", fmt.Errorf("this season is not closed: %w", err)
	}
	n := 1
	to := func(ext string) string { return fmt.Sprintf("%s (reopened %d)%s", stem, n, ext) }
	for ; ; n++ {
		if _, err := os.Stat(to(".txt")); os.IsNotExist(err) {
			break
		}
	}
	// The dump goes last: it is what marks the season closed.
	if err := os.Rename(stem+".xlsx", to(".xlsx")); err != nil && !os.IsNotExist(err) {
		return "", err
	}
	if err := os.Rename(frozen, to(".txt")); err != nil {
		return "", err
	}
	return to(".txt"), syncFolder(filepath.Dir(frozen))
}

func ofCourse(course string) string {
	if course == "" {
		return ""
	}
	return " of " + course
}

func (d *season) fileName() string {
	n := "season_" + fileSafe(d.s.Name)
	for _, part := range []string{d.s.Course, d.s.Club} {
		if part != "" {
			n += "_" + fileSafe(part)
		}
	}
	return n
}
