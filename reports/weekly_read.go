package reports

import (
	"context"
	"database/sql"
	"fmt"
	"math"

	"lapwing/pipeline/unit"
)

// Run names one run: session is "" where the course held one run that day.
type Run struct {
	Course  string
	On      unit.Day
	Session string
}

func (r Run) String() string {
	if r.Session != "" {
		return fmt.Sprintf("%s on %s, session %s", r.Course, r.On, r.Session)
	}
	return fmt.Sprintf("%s on %s", r.Course, r.On)
}

// weekReader reads what the reports of several runs say with one query a
// table, whatever the number of runs. The histories of their courses are read
// once and looked at run by run, in order.
type weekReader struct {
	o      Options
	asked  []int32           // numbers of the runs, in the order asked
	at     map[int32]*weekly // by number of the run
	latest unit.Day
	course map[int32]*courseHistory // by number of the route
	order  []int32                  // routes in order of name
}

// courseHistory is all that is known of the runs of a course.
type courseHistory struct {
	runs   []runRow
	spread map[int32][]minuteRow // by run
	best   map[int32][]bestOfRun
	held   []heldBefore
}

type minuteRow struct{ minute, timed int32 }

// bestOfRun is the fastest eligible time of a sex and age group in one run.
type bestOfRun struct {
	sex, group    string
	timeS, runner int32
}

// readWeekly reads everything that the reports of the given runs say. A run
// that the archive doesn't hold is an error.
func readWeekly(ctx context.Context, q Queryer, o Options, runs []Run) ([]*weekly, error) {
	w := &weekReader{o: o, at: map[int32]*weekly{}, course: map[int32]*courseHistory{}}
	out, err := w.find(ctx, q, runs)
	if err != nil || len(runs) == 0 {
		return nil, err
	}
	for _, read := range []func(context.Context, Queryer) error{w.readLatest, w.readRuns, w.readSpread, w.readResults, w.readBests, w.readRecordStates, w.readHeld, w.readClubQuestions, w.readHelpers, w.readChecks} {
		if err := read(ctx, q); err != nil {
			return nil, err
		}
	}
	for _, name := range w.order {
		w.lookBack(w.course[name])
	}
	if err := w.nameHolders(ctx, q); err != nil {
		return nil, err
	}
	for _, d := range out {
		d.places()
		if len(d.runs) == 0 {
			return nil, fmt.Errorf("the archive holds no run of %s", Run{d.course, d.on, d.session})
		}
	}
	return out, nil
}

// find looks up the numbers of the runs.
func (w *weekReader) find(ctx context.Context, q Queryer, runs []Run) ([]*weekly, error) {
	from, to := unit.Day(math.MaxInt32), unit.Day(0)
	for _, r := range runs {
		from, to = min(from, r.On), max(to, r.On)
	}
	numbers := map[Run]int32{}
	err := ask(ctx, q, "weekly_asked", func(rows *sql.Rows) error {
		var n int32
		var r Run
		var when day
		err := rows.Scan(&n, &r.Course, &when, &r.Session)
		r.On = when.Day
		numbers[r] = n
		return err
	}, from.Time(), to.Time())
	if err != nil {
		return nil, err
	}
	out := make([]*weekly, len(runs))
	for i, r := range runs {
		n, ok := numbers[r]
		if !ok {
			return nil, fmt.Errorf("the archive holds no run of %s", r)
		}
		if w.at[n] == nil {
			w.at[n] = &weekly{o: w.o, number: n, course: r.Course, on: r.On, session: r.Session}
			w.asked = append(w.asked, n)
		}
		out[i] = w.at[n]
	}
	return out, nil
}

func (w *weekReader) readLatest(ctx context.Context, q Queryer) error {
	if w.latest = w.o.AsOf; w.latest != 0 {
		return nil
	}
	return ask(ctx, q, "latest", func(rows *sql.Rows) error {
		var when day
		err := rows.Scan(&when)
		w.latest = when.Day
		return err
	})
}

func (w *weekReader) readRuns(ctx context.Context, q Queryer) error {
	return askAbout(ctx, q, "weekly_run", "runs", w.asked, func(rows *sql.Rows) error {
		var r runRow
		var when day
		if err := rows.Scan(&r.number, &r.route, &r.course, &when, &r.session, &r.courseName, &r.distanceM, &r.state, &r.complete,
			&r.condition, &r.condLow, &r.condHi, &r.measured); err != nil {
			return err
		}
		r.day = when.Day
		c := w.course[r.route]
		if c == nil {
			c = &courseHistory{spread: map[int32][]minuteRow{}, best: map[int32][]bestOfRun{}}
			w.course[r.route] = c
			w.order = append(w.order, r.route)
		}
		c.runs = append(c.runs, r)
		return nil
	})
}

// readSpread counts the lines of every run, minute by minute. A run without
// any is none, unless something is known of it: that it was cancelled.
func (w *weekReader) readSpread(ctx context.Context, q Queryer) error {
	at := map[int32]*runRow{}
	in := map[int32]*courseHistory{}
	for _, c := range w.course {
		for i := range c.runs {
			at[c.runs[i].number], in[c.runs[i].number] = &c.runs[i], c
		}
	}
	err := askAbout(ctx, q, "weekly_spread", "runs", w.asked, func(rows *sql.Rows) error {
		var n, finishers, unnamed, times, positions, names int32
		var m minuteRow
		if err := rows.Scan(&n, &m.minute, &m.timed, &finishers, &unnamed, &times, &positions, &names); err != nil {
			return err
		}
		r := at[n]
		if r == nil {
			return fmt.Errorf("run %d is of no course asked for", n)
		}
		r.held = true
		r.finishers += finishers
		r.unnamed += unnamed
		r.times += times
		r.positions += positions
		r.names += names
		if m.timed > 0 {
			in[n].spread[n] = append(in[n].spread[n], m)
		}
		return nil
	})
	if err != nil {
		return err
	}
	for _, c := range w.course {
		kept := c.runs[:0]
		for _, r := range c.runs {
			if r.held || r.state != "held" {
				kept = append(kept, r)
			}
		}
		c.runs = kept
	}
	return nil
}

func (w *weekReader) readResults(ctx context.Context, q Queryer) error {
	least, most := w.asked[0], w.asked[0]
	for _, n := range w.asked {
		least, most = min(least, n), max(most, n)
	}
	return askAbout(ctx, q, "weekly_result", "runs", w.asked, func(rows *sql.Rows) error {
		var n int32
		var r resultRow
		if err := rows.Scan(&n, &r.sheet, &r.tab, &r.row, &r.position, &r.tied, &r.runner, &r.name, &r.timeS, &r.sex, &r.group,
			&r.club, &r.status, &r.countsRun, &r.countsTime, &r.takingPart, &r.grade, &r.gradeLow, &r.gradeHigh,
			&r.isPB, &r.isCourseBest, &r.isAdjustedBest, &r.pbMargin, &r.courseMargin, &r.first, &r.newcomer, &r.visitor,
			&r.total, &r.milestone, &r.pbStreak, &r.streak, &r.since, &r.protected, &r.hidden, &r.doubt, &r.note); err != nil {
			return err
		}
		d := w.at[n]
		d.results = append(d.results, r)
		return nil
	}, least, most)
}

func (w *weekReader) readBests(ctx context.Context, q Queryer) error {
	in := map[int32]*courseHistory{}
	for _, c := range w.course {
		for i := range c.runs {
			in[c.runs[i].number] = c
		}
	}
	return askAbout(ctx, q, "weekly_record", "runs", w.asked, func(rows *sql.Rows) error {
		var n int32
		var b bestOfRun
		if err := rows.Scan(&n, &b.sex, &b.group, &b.timeS, &b.runner); err != nil {
			return err
		}
		if c := in[n]; c != nil {
			c.best[n] = append(c.best[n], b)
		}
		return nil
	})
}

// heldBefore is a record held before the sheets.
type heldBefore struct {
	sex, group, by string
	timeS          int32
	on             unit.Day // 0 where not known
}

// readHeld takes the records held before the sheets.
func (w *weekReader) readHeld(ctx context.Context, q Queryer) error {
	return askAbout(ctx, q, "weekly_held", "runs", w.asked, func(rows *sql.Rows) error {
		var h heldBefore
		var route int32
		var hidden bool
		var when day
		if err := rows.Scan(&route, &h.sex, &h.group, &h.timeS, &h.by, &hidden, &when); err != nil {
			return err
		}
		if h.by != "" || hidden {
			h.by = publicName(h.by, false, hidden)
		}
		h.on = when.Day
		if c := w.course[route]; c != nil {
			c.held = append(c.held, h)
		}
		return nil
	})
}

// readRecordStates takes what the desk has settled of results as records.
func (w *weekReader) readRecordStates(ctx context.Context, q Queryer) error {
	return askAbout(ctx, q, "weekly_record_state", "runs", w.asked, func(rows *sql.Rows) error {
		var n, runner int32
		var state string
		if err := rows.Scan(&n, &runner, &state); err != nil {
			return err
		}
		d := w.at[n]
		for i := range d.results {
			if r := &d.results[i]; r.runner == runnerID(runner) && r.countsTime {
				r.record = state
			}
		}
		return nil
	})
}

// readClubQuestions takes what is asked about the clubs of each run.
func (w *weekReader) readClubQuestions(ctx context.Context, q Queryer) error {
	var all []clubQuestion
	err := ask(ctx, q, "weekly_club", func(rows *sql.Rows) error {
		var c clubQuestion
		err := rows.Scan(&c.other, &c.club, &c.why)
		all = append(all, c)
		return err
	})
	if err != nil || len(all) == 0 {
		return err
	}
	for _, d := range w.at {
		printed := map[string]bool{}
		for i := range d.results {
			printed[d.results[i].club] = true
		}
		for _, c := range all {
			if printed[c.other] {
				d.oneClub = append(d.oneClub, c)
			}
		}
	}
	return nil
}

// courseDay is a course on a day, whichever of its runs.
type courseDay struct {
	course string
	on     unit.Day
}

// readHelpers takes the volunteers' lists: who helped on the day, and how many
// on each day of the course.
func (w *weekReader) readHelpers(ctx context.Context, q Queryer) error {
	people, lists := map[courseDay]map[string]bool{}, map[courseDay][]helperRow{}
	err := askAbout(ctx, q, "weekly_volunteer", "runs", w.asked, func(rows *sql.Rows) error {
		var at courseDay
		var r helperRow
		var when day
		var who string
		var protected, hidden bool
		if err := rows.Scan(&at.course, &when, &r.name, &r.role, &who, &protected, &hidden, &r.days, &r.milestone); err != nil {
			return err
		}
		at.on = when.Day
		r.name = publicName(r.name, protected, hidden)
		if hidden {
			r.days, r.milestone = 0, 0
		}
		if people[at] == nil {
			people[at] = map[string]bool{}
		}
		people[at][who] = true
		lists[at] = append(lists[at], r)
		return nil
	})
	if err != nil {
		return err
	}
	for _, c := range w.course {
		for i := range c.runs {
			if n := int32(len(people[courseDay{c.runs[i].course, c.runs[i].day}])); n > 0 {
				c.runs[i].volunteers = &n
			}
		}
	}
	for _, d := range w.at {
		d.helpers = lists[courseDay{d.course, d.on}]
	}
	return nil
}

func (w *weekReader) readChecks(ctx context.Context, q Queryer) error {
	of := map[Run][]problemRow{}
	err := askAbout(ctx, q, "weekly_problem", "runs", w.asked, func(rows *sql.Rows) error {
		var at Run
		var when day
		var r problemRow
		var rank int32
		err := rows.Scan(&at.Course, &when, &rank, &r.severity, &r.sheet, &r.tab, &r.row, &r.column, &r.kind, &r.read, &r.expected, &r.todo, &r.answers)
		at.On = when.Day
		of[at] = append(of[at], r)
		return err
	})
	for _, d := range w.at {
		d.checks = of[Run{Course: d.course, On: d.on}]
	}
	return err
}
