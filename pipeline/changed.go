package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"time"

	"lapwing/pipeline/unit"
)

// RunRef names one run.
type RunRef struct {
	Course  string   `json:"course"`
	Day     unit.Day `json:"-"`
	Date    string   `json:"date"`
	Session string   `json:"session,omitempty"`
}

// factsOfRuns sums up, for every run, the facts that its weekly reports rest
// on. Estimates of the model are left out: they move a little with every new
// run, and that alone is no reason to issue a report again.
const factsOfRuns = `
select run_no, course, run_date, coalesce(session, '') as session, distance_m,
	bit_xor(hash(sheet, row_number, position, runner_id, time_s, sex, age_group, club, status, counts_run, counts_time,
		taking_part_as, name, is_pb, is_course_best, is_newcomer, is_visitor, milestone, hidden, protected))::varchar as facts
from main.results
where %s
group by all`

// runsToLookAt is the condition on the runs whose facts may have changed since
// Reported.
func (pl *Pipeline) runsToLookAt(ctx context.Context) (string, error) {
	looked, err := pl.state(ctx, stateLooked)
	if err != nil || looked != "some" {
		return "true", err
	}
	list := "0"
	err = pl.each(ctx, "select distinct run_no from record.touched order by run_no", func(rows *sql.Rows) error {
		var no int32
		err := rows.Scan(&no)
		list += ", " + itoa(no)
		return err
	})
	return "run_no in (" + list + ")", err
}

// ChangedRuns lists the runs whose facts have changed since their reports were
// last written, in order of date, course and session.
func (pl *Pipeline) ChangedRuns(ctx context.Context) ([]RunRef, error) {
	which, err := pl.runsToLookAt(ctx)
	if err != nil {
		return nil, err
	}
	return pl.runRefs(ctx, `select course, run_date, session from (`+fmt.Sprintf(factsOfRuns, which)+`) f
		where facts <> coalesce((select max(value) from main.state s where s.name = 'reported ' || f.course || ' ' || f.run_date || ' ' || f.session || ' ' || f.distance_m), '')
		order by run_date, course, session`)
}

// Reported notes that the reports of all runs are as they should be.
func (pl *Pipeline) Reported(ctx context.Context) error {
	which, err := pl.runsToLookAt(ctx)
	if err != nil {
		return err
	}
	const fresh = "select 'reported ' || course || ' ' || run_date || ' ' || session || ' ' || distance_m as name, facts as value from reported_facts"
	return pl.DB.Transaction(ctx, func() error {
		for _, q := range []string{
			"create or replace temp table reported_facts as " + fmt.Sprintf(factsOfRuns, which),
			"delete from main.state where name like 'reported %' and (" + strconv.FormatBool(which == "true") + " or name in (select name from (" + fresh + ")))",
			"insert into main.state " + fresh,
			"drop table reported_facts",
			"delete from record.touched",
		} {
			if err := pl.DB.Exec(ctx, q); err != nil {
				return err
			}
		}
		return pl.setState(ctx, stateLooked, "some")
	})
}

// LatestRuns lists the latest run of each course.
func (pl *Pipeline) LatestRuns(ctx context.Context) ([]RunRef, error) {
	return pl.runRefs(ctx, `select course, run_date, coalesce(session, '') as session from main.runs r
		where run_date = (select max(run_date) from main.runs q where q.course = r.course) and finishers > 0
		order by course, session`)
}

// Runs lists the runs of a course ("" all) on a day (0 all).
func (pl *Pipeline) Runs(ctx context.Context, course string, day unit.Day) ([]RunRef, error) {
	all, err := pl.runRefs(ctx, `select course, run_date, coalesce(session, '') as session from main.runs where finishers > 0 order by run_date, course, session`)
	if err != nil {
		return nil, err
	}
	var out []RunRef
	for _, r := range all {
		if (course == "" || r.Course == pl.courses.resolve(course)) && (day == 0 || r.Day == day) {
			out = append(out, r)
		}
	}
	return out, nil
}

func (pl *Pipeline) runRefs(ctx context.Context, query string) ([]RunRef, error) {
	rows, err := pl.DB.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []RunRef
	for rows.Next() {
		var r RunRef
		var day time.Time
		if err := rows.Scan(&r.Course, &day, &r.Session); err != nil {
			return nil, err
		}
		r.Day = unit.DayOf(day)
		r.Date = r.Day.String()
		out = append(out, r)
	}
	return out, rows.Err()
}

// Summary counts what a set of runs holds, for the lines printed after a load.
type Summary struct {
	Runs      int `json:"runs"`
	Times     int `json:"times"`
	Positions int `json:"positions"`
	Names     int `json:"names"`
	PBs       int `json:"pbs"`
	Newcomers int `json:"newcomers"`
	Unknown   int `json:"runs_where_newcomers_are_not_known"`
	Look      int `json:"need_a_look"`
}

// Summarise adds up the given runs.
func (pl *Pipeline) Summarise(ctx context.Context, runs []RunRef) (Summary, error) {
	s := Summary{Runs: len(runs)}
	want := map[RunRef]bool{}
	for _, r := range runs {
		want[r] = true
	}
	rows, err := pl.DB.QueryContext(ctx, `
		select r.course, r.run_date, coalesce(r.session, '') as session, sum(r.times_counted)::integer, sum(r.positions_counted)::integer, sum(r.names_counted)::integer,
			sum(x.pbs)::integer, sum(x.newcomers)::integer, bool_and(r.history_complete), coalesce(sum(p.look), 0)::integer
		from main.runs r
		left join (select run_no, count(*) filter (is_pb) as pbs, count(*) filter (is_newcomer) as newcomers from main.results group by run_no) x on x.run_no = r.run_no
		left join (select run_no, count(*) as look from sheet.problem where severity <= 3 group by run_no) p on p.run_no = r.run_no
		group by r.course, r.run_date, coalesce(r.session, '')`)
	if err != nil {
		return s, err
	}
	defer rows.Close()
	for rows.Next() {
		var r RunRef
		var day time.Time
		var times, positions, names, pbs, newcomers, look int
		var complete bool
		if err := rows.Scan(&r.Course, &day, &r.Session, &times, &positions, &names, &pbs, &newcomers, &complete, &look); err != nil {
			return s, err
		}
		r.Day = unit.DayOf(day)
		r.Date = r.Day.String()
		if !want[r] {
			continue
		}
		s.Times += times
		s.Positions += positions
		s.Names += names
		s.PBs += pbs
		s.Newcomers += newcomers
		s.Look += look
		if !complete {
			s.Unknown++
		}
	}
	return s, rows.Err()
}
