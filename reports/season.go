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
	Close  bool
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
	before, err := os.ReadFile(frozen)
	switch {
	case err == nil:
		rep.Differences = differences(string(before), awarded)
		if s.Close {
			return rep, fmt.Errorf("season %s is closed already; it stays as awarded (%s)", s.Name, frozen)
		}
	case !os.IsNotExist(err):
		return nil, err
	}
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

// differences sets two dumps side by side: lines that are gone and lines that
// are new, each under the heading it stands under.
func differences(before, now string) []string {
	gone := minus(before, now)
	fresh := minus(now, before)
	var out []string
	for _, l := range gone {
		out = append(out, "awarded, but not now: "+l)
	}
	for _, l := range fresh {
		out = append(out, "now, but not awarded: "+l)
	}
	return out
}

// minus gives the lines of a that b has fewer of.
func minus(a, b string) []string {
	n := map[string]int{}
	for _, l := range strings.Split(b, "\n") {
		n[l]++
	}
	var out []string
	for _, l := range strings.Split(a, "\n") {
		if n[l]--; n[l] < 0 && strings.TrimSpace(l) != "" {
			out = append(out, l)
		}
	}
	return out
}
