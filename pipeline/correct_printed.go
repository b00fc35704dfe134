package pipeline

import (
	"context"
	"fmt"
	"strings"
	"time"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/unit"
)

// decidePrinted turns a line of a desk workbook that somebody has filled in
// into decisions. What is in force already is left out, so that a workbook can
// be read twice. A line that has changed since the workbook was printed is
// refused: the box may have been meant for what stood there.
func (pl *Pipeline) decidePrinted(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	at, course, day, err := pl.printedLine(ctx, *c.Printed)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.Printed.At, err)
	}
	d.Course, d.Date, d.Session = course, day, at.session
	if done, err := pl.exchanged(ctx, at, course, day, c.ExchangeWith); err != nil {
		return nil, fmt.Errorf("%s: %w", c.Printed.At, err)
	} else if done {
		return nil, nil
	}
	if stands := at.shownName(); stands != c.Printed.Name && !samePerson(stands, c.Name) {
		return nil, fmt.Errorf("%s: this line now names %s, and named %s when the workbook was written. Take a fresh desk workbook and fill in that",
			c.Printed.At, orNobody(stands), orNobody(c.Printed.Name))
	}
	if stands := at.shownTime(); stands != c.Printed.Time && stands != c.Time {
		return nil, fmt.Errorf("%s: the time of this line is now %s, and was %s when the workbook was written. Take a fresh desk workbook and fill in that",
			c.Printed.At, orBlank(stands), orBlank(c.Printed.Time))
	}
	if c.Name != "" && samePerson(at.shownName(), c.Name) {
		c.Name = ""
	}
	out, err := pl.decideAt(ctx, d, c, at)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.Printed.At, err)
	}
	if c.RunsBefore+c.BestBefore == "" {
		return out, nil
	}
	runner := ""
	if err := pl.DB.Get(ctx, fmt.Sprintf("select coalesce(max(runner_id), '') from main.results where line_no = %d", at.lineNo), &runner); err != nil {
		return nil, err
	}
	if runner == "" {
		return nil, fmt.Errorf("%s: nobody is named on this line, so nothing can be said of their runs before the sheets", c.Printed.At)
	}
	who := Decision{By: d.By, Why: d.Why, When: d.When, Runner: runner}
	c.Course = ""
	opening, err := pl.decideOpening(who, c)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.Printed.At, err)
	}
	return append(out, opening...), nil
}

// exchanged says whether the exchange of two lines is in force already: then
// they name each other's owner, as somebody wanted.
func (pl *Pipeline) exchanged(ctx context.Context, at resultLine, course string, day unit.Day, with int) (bool, error) {
	if with == 0 {
		return false, nil
	}
	other, err := pl.resultAt(ctx, course, day, at.session, with, "")
	if err != nil {
		return false, err
	}
	for _, r := range []*resultLine{&at, &other} {
		if err := pl.findTable(ctx, r); err != nil {
			return false, err
		}
	}
	e := Decision{Kind: DecideExchange, Sheet: at.ref.hash, Tab: at.ref.tab, Row: at.ref.row, Table: at.table, Value: tableLine{other.ref, other.table}.String()}
	left, err := pl.Unsettled(ctx, []Decision{e})
	return len(left) == 0, err
}

func samePerson(a, b string) bool {
	x, y := name.Parse(a).Full, name.Parse(b).Full
	return x != "" && x == y
}

// shownName is the name as a workbook prints it: blank for nobody.
func (r resultLine) shownName() string {
	if r.name == nobodyNamed {
		return ""
	}
	return r.name
}

// shownTime is the time as a workbook prints it: in whole seconds, blank for
// none.
func (r resultLine) shownTime() string {
	if r.timeMS == 0 {
		return ""
	}
	return unit.Clock(unit.CeilSeconds(r.timeMS))
}

const nobodyNamed = "nobody named"

// printedLine finds the line that a workbook names, whatever became of it.
func (pl *Pipeline) printedLine(ctx context.Context, p PrintedLine) (r resultLine, course string, day unit.Day, err error) {
	rows, err := pl.DB.QueryContext(ctx, `select s.hash, s.path, r.row_number, coalesce(r.position, 0)::integer, coalesce(r.name, '`+nobodyNamed+`'), r.status,
			coalesce(r.time_ms, 0)::integer, coalesce(r.session, ''), r.run_no, r.line_no, coalesce(r.tab, ''), r.course, r.run_date
		from main.results r
		join record.line l on l.line_no = r.line_no
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where r.sheet = ? and coalesce(r.tab, '') = ? and r.row_number = ?
		order by s.sheet_no desc, r.line_no`, p.Sheet, p.Tab, p.Row)
	if err != nil {
		return r, "", 0, err
	}
	defer rows.Close()
	n := 0
	for rows.Next() {
		var x resultLine
		var c string
		var when time.Time
		if err := rows.Scan(&x.ref.hash, &x.shown.Sheet, &x.ref.row, &x.position, &x.name, &x.status, &x.timeMS, &x.session, &x.runNo, &x.lineNo, &x.ref.tab, &c, &when); err != nil {
			return r, "", 0, err
		}
		x.shown.Tab, x.shown.Row = x.ref.tab, x.ref.row
		// of several sheets under one name the latest stands; on one sheet, the
		// line that was printed
		fits := x.shownName() == p.Name && x.shownTime() == p.Time
		if n == 0 || fits && x.ref.hash == r.ref.hash {
			r, course, day = x, c, unit.DayOf(when)
		}
		n++
	}
	if err := rows.Err(); err != nil {
		return r, "", 0, err
	}
	if n == 0 {
		return r, "", 0, fmt.Errorf("no line %s of %s is in the archive", strings.TrimSpace(fmt.Sprintf("%s %d", p.Tab, p.Row)), p.Sheet)
	}
	return r, course, day, nil
}
