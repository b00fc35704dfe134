package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// RunRef names one run.
type RunRef struct {
	Course  string   `json:"course"`
	Day     unit.Day `json:"-"`
	Date    string   `json:"date"`
	Session string   `json:"session,omitempty"`
}

// runRef names a run.
func runRef(course string, day unit.Day, session string) RunRef {
	return RunRef{Course: course, Day: day, Date: day.String(), Session: session}
}

// factsOfRuns sums up, for every run, the facts that its weekly reports rest
// on. Estimates of the model are left out: they move a little with every new
// run, and that alone is no reason to issue a report again; nor are lines that
// say once more what stands already, or that another sheet stands for.
const factsOfRuns = `
select run_no, course, run_date, coalesce(session, '') as session, distance_m,
	coalesce(bit_xor(hash(sheet, row_number, position, runner_id, time_s, sex, age_group, club, status, counts_run, counts_time,
		taking_part_as, name, is_pb, is_course_best, is_newcomer, is_visitor, milestone, hidden, protected, state))
		filter (where status not in ('repeat', 'superseded'))::varchar, '') || coalesce(max(helpers.facts), '') as facts
from main.results left join record.record_state using (line_no)
left join (select course, run_date, ' ' || bit_xor(hash(name, role, runner_id, milestone, hidden, protected)) as facts from main.volunteers group by all) helpers using (course, run_date)
where %s
group by run_no, course, run_date, session, distance_m`

// runsToLookAt is the condition on the runs whose facts may have changed since
// Reported.
func (pl *Pipeline) runsToLookAt(ctx context.Context) (string, error) {
	looked, err := pl.state(ctx, stateLooked)
	if err != nil || looked != "some" {
		return "true", err
	}
	var numbers []int32
	err = pl.each(ctx, "select distinct run_no from record.touched order by run_no", func(rows *sql.Rows) error {
		var no int32
		err := rows.Scan(&no)
		numbers = append(numbers, no)
		return err
	})
	if len(numbers) == 0 {
		return "false", err
	}
	return amongRuns(numbers), err
}

// ChangedRuns lists the runs whose facts have changed since their reports were
// last written, in order of date, course and session.
func (pl *Pipeline) ChangedRuns(ctx context.Context) ([]RunRef, error) {
	if _, err := pl.factsNow(ctx); err != nil {
		return nil, err
	}
	return pl.runRefs(ctx, `select course, run_date, session from reported_facts f
		where facts <> coalesce((select max(value) from main.state s where s.name = 'reported ' || f.course || ' ' || f.run_date || ' ' || f.session || ' ' || f.distance_m), '')
		order by run_date, course, session`)
}

// factsNow makes reported_facts, the facts of the runs that may have changed,
// and says whether these are all runs. It is made once for as long as the
// figures stay as they are.
func (pl *Pipeline) factsNow(ctx context.Context) (all bool, err error) {
	which, err := pl.runsToLookAt(ctx)
	if err != nil {
		return false, err
	}
	stamp, err := pl.state(ctx, "figures")
	if err != nil {
		return false, err
	}
	if at := stamp + which; pl.factsAt != at {
		if err := pl.DB.Exec(ctx, "create or replace temp table reported_facts as "+fmt.Sprintf(factsOfRuns, which)); err != nil {
			return false, err
		}
		pl.factsAt = at
	}
	return which == "true", nil
}

// Reported notes that the reports of all runs are as they should be.
func (pl *Pipeline) Reported(ctx context.Context) error {
	all, err := pl.factsNow(ctx)
	if err != nil {
		return err
	}
	const fresh = "select 'reported ' || course || ' ' || run_date || ' ' || session || ' ' || distance_m as name, facts as value from reported_facts"
	return pl.DB.Transaction(ctx, func() error {
		for _, q := range []string{
			"delete from main.state where name like 'reported %' and (" + strconv.FormatBool(all) + " or name in (select name from (" + fresh + ")))",
			"insert into main.state " + fresh,
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
		var course, session string
		var day time.Time
		if err := rows.Scan(&course, &day, &session); err != nil {
			return nil, err
		}
		out = append(out, runRef(course, unit.DayOf(day), session))
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
	if len(runs) == 0 {
		return s, nil
	}
	want := map[RunRef]bool{}
	for _, r := range runs {
		want[r] = true
	}
	var numbers []int32
	whole := map[int32]bool{} // by run number: the history of its course is complete
	days := make([]string, 0, len(runs))
	for _, r := range runs {
		days = append(days, "'"+r.Date+"'")
	}
	slices.Sort(days)
	err := pl.each(ctx, `select run.run_no, c.course, run.run_date, run.session, coalesce(c.complete_from <= run.run_date, false)
		from record.run run join record.course c on c.course_no = run.course_no
		where run.run_date in (`+strings.Join(slices.Compact(days), ", ")+`) order by run.run_no`, func(rows *sql.Rows) error {
		var no int32
		var course, session string
		var day time.Time
		var complete bool
		if err := rows.Scan(&no, &course, &day, &session, &complete); err != nil {
			return err
		}
		if want[runRef(course, unit.DayOf(day), session)] {
			numbers = append(numbers, no)
			whole[no] = complete
		}
		return nil
	})
	if err != nil || len(numbers) == 0 {
		return s, err
	}
	which := amongRuns(numbers)
	// Where history is complete here, but not on another course, somebody's first run may be
	// no first one either.
	if err := pl.each(ctx, "select distinct run_no from main.results where first_result and is_newcomer is null and counts_run and "+which, func(rows *sql.Rows) error {
		var no int32
		err := rows.Scan(&no)
		whole[no] = false
		return err
	}); err != nil {
		return s, err
	}
	for _, ok := range whole {
		if !ok {
			s.Unknown++
		}
	}
	if err := pl.DB.Get(ctx, `select count(*) filter (time_ms > 0)::integer, count(*) filter (position > 0)::integer,
			count(*) filter (status <> 'unnamed' and runner_id is not null)::integer, count(*) filter (is_pb)::integer, count(*) filter (is_newcomer)::integer
		from main.results where status in ('ok', 'unnamed', 'untimed', 'doubtful') and `+which, &s.Times, &s.Positions, &s.Names, &s.PBs, &s.Newcomers); err != nil {
		return s, err
	}
	err = pl.DB.Get(ctx, "select count(*)::integer from main.problems where severity <> 'note' and settled = '' and "+which, &s.Look)
	return s, err
}

// amongRuns is the condition that a line is of one of the runs. The bounds let
// the database pass over what lies outside.
func amongRuns(numbers []int32) string {
	list := make([]string, len(numbers))
	for i, no := range numbers {
		list[i] = itoa(no)
	}
	return fmt.Sprintf("run_no in (%s) and run_no between %d and %d", strings.Join(list, ", "), slices.Min(numbers), slices.Max(numbers))
}

// NewCourse is a course that no earlier sheet was of.
type NewCourse struct {
	Course string `json:"course"`
	Sheet  string `json:"sheet"` // the first one of it
	// Like is a course with runs, or of courses.csv, whose name differs in a letter or
	// two; "" where there is none.
	Like string `json:"like,omitempty"`
	// DistancesM are those of its runs, in metres: 5 km where nobody says another.
	DistancesM []int `json:"distances_m"`
}

// HeldCourses are the courses that have runs.
func (pl *Pipeline) HeldCourses(ctx context.Context) (map[string]bool, error) {
	held := map[string]bool{}
	err := pl.each(ctx, "select distinct c.course from record.run r join record.course c on c.course_no = r.course_no", func(rows *sql.Rows) error {
		var c string
		err := rows.Scan(&c)
		held[c] = true
		return err
	})
	return held, err
}

// NewCourses lists the courses of a load that had no runs before and do not
// stand in courses.csv: a name may have been read where there is none.
func (pl *Pipeline) NewCourses(held map[string]bool, rep *LoadReport) (out []NewCourse) {
	seen := map[string]bool{}
	for _, s := range rep.Sheets {
		if s.State != "loaded" {
			continue
		}
		for _, r := range s.Runs {
			c, _, _ := strings.Cut(r, " ")
			if !held[c] && !seen[c] && !pl.courses.listed(c) {
				seen[c] = true
				out = append(out, NewCourse{c, s.Path, pl.courseLike(held, c), slices.Sorted(slices.Values(pl.courses.distances[c]))})
			}
		}
	}
	return out
}

// courseLike is the first known course whose name a course's may be a slip of.
func (pl *Pipeline) courseLike(held map[string]bool, course string) string {
	known := slices.Collect(maps.Keys(held))
	for _, c := range pl.courses.names() {
		known = append(known, c.Course)
	}
	slices.Sort(known)
	for _, c := range known {
		if c != course && len(course) > 4 && text.Within(c, course, 2) {
			return c
		}
	}
	return ""
}
