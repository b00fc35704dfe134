package pipeline

import (
	"cmp"
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// GoneRun is a run of which reports were written and of which no sheet stands
// any more.
type GoneRun struct {
	RunRef
	Why string `json:"why"`
}

// GoneRuns lists the runs whose reports have to be withdrawn, with the reason,
// in order of date, course and session.
func (pl *Pipeline) GoneRuns(ctx context.Context) ([]GoneRun, error) {
	if which, err := pl.runsToLookAt(ctx); err != nil || which != "true" {
		return nil, err // only new sheets since: no run has gone
	}
	standing := map[RunRef]bool{}
	err := pl.each(ctx, `select distinct c.course, run.run_date::varchar, coalesce(run.session, '') from record.run run
		join record.course c on c.course_no = run.course_no
		where run.run_no in (select run_no from record.line)`, func(rows *sql.Rows) error {
		var r RunRef
		err := rows.Scan(&r.Course, &r.Date, &r.Session)
		standing[r] = true
		return err
	})
	if err != nil {
		return nil, err
	}
	var out []GoneRun
	err = pl.each(ctx, "select name from main.state where name like 'reported %' order by name", func(rows *sql.Rows) error {
		var name string
		if err := rows.Scan(&name); err != nil {
			return err
		}
		part := strings.Split(name, " ") // reported, course, date, session, distance
		if len(part) != 5 {
			return fmt.Errorf("%q does not name a run", name)
		}
		r := RunRef{Course: part[1], Date: part[2], Session: part[3]}
		known := slices.ContainsFunc(out, func(g GoneRun) bool { return g.Course == r.Course && g.Date == r.Date && g.Session == r.Session })
		if standing[r] || known {
			return nil
		}
		day, err := unit.ParseDay(r.Date)
		r.Day = day
		out = append(out, GoneRun{RunRef: r})
		return err
	})
	if err != nil || len(out) == 0 {
		return nil, err
	}
	slices.SortFunc(out, func(a, b GoneRun) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Course, b.Course), cmp.Compare(a.Session, b.Session))
	})
	return out, pl.whyGone(out)
}

// runsOfCopy lists the runs that the archive's copy of a sheet is of; none
// where it can't be read, which lapwing check tells.
func (pl *Pipeline) runsOfCopy(e store.Entry) (runs []runKey) {
	p, err := pl.parseCopy(e)
	if err != nil {
		return nil
	}
	for _, part := range p.parts {
		runs = append(runs, part.runs...)
	}
	return runs
}

// whyGone finds the withdrawn sheets that were of the runs.
func (pl *Pipeline) whyGone(runs []GoneRun) error {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	sheets := make([][]string, len(runs))
	for _, e := range ledger {
		if e.State != store.Withdrawn {
			continue
		}
		for _, k := range pl.runsOfCopy(e) {
			for i, r := range runs {
				if k.course.course == r.Course && k.day == r.Day && !slices.Contains(sheets[i], e.Path) {
					sheets[i] = append(sheets[i], e.Path)
				}
			}
		}
	}
	for i := range runs {
		switch n := len(sheets[i]); n {
		case 0:
			runs[i].Why = "its sheet is no longer in the archive"
		case 1:
			runs[i].Why = "its sheet " + sheets[i][0] + " was withdrawn"
		default:
			runs[i].Why = "its sheets " + strings.Join(sheets[i], ", ") + " were withdrawn"
		}
	}
	return nil
}
