package reports

import (
	"context"
	"database/sql"
	"fmt"

	"lapwing/pipeline/unit"
)

// standingRows is everything that a card says.
type standingRows struct {
	id, name, sex, group, club string
	formS, formLow, formHigh   *float64 // s over 5 km
	change, changeSD           *float64 // log time
	pFaster, pLevel            *float64
	protected, hidden          bool
	latest, from               unit.Day
	results                    []ownRow
	bests                      map[standIn]*groupBests
	courses                    []courseRow
	dayRuns                    int32    // runs of the past year of which conditions are known
	dayLow, dayHigh            *float64 // that nine in ten of them lie between, s at 25:00
}

type ownRow struct {
	day              unit.Day
	course           string
	distance         int32 // m, 0 where not known
	position, timeS  *int32
	adjusted, grade  *float64
	effort           string
	shortfall        *float64 // percent behind form
	status, taking   string
	countsRun        bool
	countsTime       bool
	pb, course1, adj bool // a best of its kind
	pbStreak, streak int32
	since            day // first finish of the streak of weeks
	total            *int32
	protected        bool
	// form over 5 km as things stood on the day, s, with its 90 % interval
	formS, formLow, formHigh *float64
}

// standIn says among what bests somebody stands: by what measure, on which
// course ("" all) and distance, of the season or ever.
type standIn struct {
	measure, course string
	distance        int32
	season          bool
}

// groupBests are the bests of an age group, one a runner, the lower the better;
// mine is the runner's own, 0 for none.
type groupBests struct {
	all  []int32
	mine int32
}

type courseRow struct {
	course, name           string
	distance               int32
	index                  *float64
	seconds, secLow, secHi *float64
	shared                 int64
	basis                  string
	measured               *bool
}

func readCourses(ctx context.Context, q Queryer) ([]courseRow, error) {
	var out []courseRow
	err := ask(ctx, q, "course", func(rows *sql.Rows) error {
		var r courseRow
		var d *int32
		err := rows.Scan(&r.course, &r.name, &d, &r.index, &r.seconds, &r.secLow, &r.secHi, &r.shared, &r.basis, &r.measured)
		r.distance = or0(d)
		out = append(out, r)
		return err
	})
	return out, err
}

func readStanding(ctx context.Context, q Queryer, who string, s StandingOptions) (*standingRows, error) {
	d := &standingRows{bests: map[standIn]*groupBests{}}
	runner, err := runnerNumber(who)
	if err != nil {
		return nil, fmt.Errorf("the archive knows no runner %s", who)
	}
	var firstAge, lastAge int32
	err = ask(ctx, q, "standing_runner", func(rows *sql.Rows) error {
		var when day
		err := rows.Scan(&d.id, &d.name, &d.sex, &d.group, &d.club, &d.formS, &d.formLow, &d.formHigh,
			&d.change, &d.changeSD, &d.pFaster, &d.pLevel, &d.protected, &d.hidden, &firstAge, &lastAge, &when)
		d.latest = when.Day
		return err
	}, runner)
	if err != nil {
		return nil, err
	}
	if d.id == "" {
		return nil, fmt.Errorf("the archive knows no runner %s", who)
	}
	if d.from = s.From; d.from == 0 {
		y, _, _ := d.latest.Date()
		d.from = unit.NewDay(y, 1, 1)
	}
	err = ask(ctx, q, "standing_result", func(rows *sql.Rows) error {
		var r ownRow
		var sheet, tab string
		var row int32
		var when day
		var dist *int32
		err := rows.Scan(&sheet, &tab, &row, &when, &r.course, &dist, &r.position, &r.timeS, &r.adjusted, &r.grade,
			&r.effort, &r.shortfall, &r.status, &r.taking, &r.countsRun, &r.countsTime, &r.pb, &r.course1, &r.adj,
			&r.pbStreak, &r.streak, &r.since, &r.total, &r.protected, &r.formS, &r.formLow, &r.formHigh)
		r.day, r.distance = when.Day, or0(dist)
		d.protected = d.protected || r.protected && when.Day == d.latest
		if r.status != "superseded" && r.status != "repeat" {
			d.results = append(d.results, r)
		}
		return err
	}, runner)
	if err != nil {
		return nil, err
	}
	if d.courses, err = readCourses(ctx, q); err != nil {
		return nil, err
	}
	err = ask(ctx, q, "standing_day", func(rows *sql.Rows) error { return rows.Scan(&d.dayRuns, &d.dayLow, &d.dayHigh) }, d.latest.Time())
	if err != nil {
		return nil, err
	}
	sex := sexNumbers[d.sex]
	if sex == 0 || d.group == "" || d.protected {
		return d, nil
	}
	err = ask(ctx, q, "standing_best", func(rows *sql.Rows) error {
		var in standIn
		var value, people int32
		var mine bool
		if err := rows.Scan(&in.measure, &in.course, &in.distance, &in.season, &value, &mine, &people); err != nil {
			return err
		}
		g := d.bests[in]
		if g == nil {
			g = &groupBests{}
			d.bests[in] = g
		}
		if mine {
			g.mine = value
		}
		for range people {
			g.all = append(g.all, value)
		}
		return nil
	}, sex, firstAge, lastAge, d.from.Time(), d.latest.Time(), runner)
	return d, err
}

// sexNumbers are those of record.result.
var sexNumbers = map[string]int32{"M": 1, "W": 2, "X": 3}

// courseName is the name to print of a course.
func (d *standingRows) courseName(course string) string {
	for i := range d.courses {
		if d.courses[i].course == course {
			return d.courses[i].name
		}
	}
	return course
}
