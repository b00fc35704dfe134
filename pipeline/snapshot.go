package pipeline

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

// Queryer asks the database.
type Queryer interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// snapshotFrom is the number of reports from which it pays to work the views
// out once, and snapshotRows the number of lines up to which the copy fits
// into memory with ease.
const (
	snapshotFrom = 8
	snapshotRows = 3_000_000
)

// snapshotViews are copied in an order that keeps what is asked together
// together.
var snapshotViews = []struct{ name, order string }{
	{"results", "course, run_date, run_no, line_no"}, {"runs", "course, run_date, run_no"}, {"courses", "course, distance_m"},
	{"runners", "runner_id"}, {"volunteers", "course, run_date, role, name"}, {"problems", "course, run_date, sheet_no, row_number"},
}

// ForReports calls f for 0 … n-1, several at a time, each with a connection
// of its own to ask the views on. Where many reports are to be written the
// views are worked out once, into memory, instead of once a question.
func (pl *Pipeline) ForReports(ctx context.Context, what string, n int, f func(ctx context.Context, q Queryer, i int) error) (err error) {
	use := ""
	if n >= snapshotFrom {
		lines := 0
		if err := pl.DB.Get(ctx, "select count(*) from record.line", &lines); err != nil {
			return err
		}
		if lines <= snapshotRows {
			if err := pl.snapshot(ctx); err != nil {
				return err
			}
			use = "use snapshot"
			defer func() { err = errors.Join(err, pl.DB.Exec(context.WithoutCancel(ctx), "detach snapshot")) }()
		}
	}
	workers := min(n, pl.workers())
	conns := make(chan *sql.Conn, workers)
	defer func() {
		close(conns)
		for c := range conns {
			if use != "" {
				_, e := c.ExecContext(context.WithoutCancel(ctx), "use "+pl.DB.Name())
				err = errors.Join(err, e)
			}
			err = errors.Join(err, c.Close())
		}
	}()
	for range workers {
		c, err := pl.DB.Pool.Conn(ctx)
		if err != nil {
			return err
		}
		if use != "" {
			if _, err := c.ExecContext(ctx, use); err != nil {
				c.Close()
				return err
			}
		}
		conns <- c
	}
	return pl.Parallel(ctx, what, n, func(ctx context.Context, i int) error {
		c := <-conns
		defer func() { conns <- c }()
		return f(ctx, c, i)
	})
}

// snapshot copies the views into a database in memory, under the same names.
func (pl *Pipeline) snapshot(ctx context.Context) error {
	if err := pl.DB.Exec(ctx, "attach ':memory:' as snapshot"); err != nil {
		return err
	}
	for _, v := range snapshotViews {
		q := fmt.Sprintf("create table snapshot.main.%s as select * from main.%s order by %s", v.name, v.name, v.order)
		if err := pl.DB.Exec(ctx, q); err != nil {
			return errors.Join(err, pl.DB.Exec(ctx, "detach snapshot"))
		}
	}
	return nil
}
