package pipeline

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// write stores the courses and runs that are new since the last write.
func (b *courseBook) write(ctx context.Context, pl *Pipeline) error {
	if err := b.writeCourses(ctx, pl, b.newOnes); err != nil {
		return err
	}
	if err := pl.insertRows(ctx, "record.run", runSchema, len(b.newRuns), func(r row, i int) {
		k := b.newRuns[i]
		r.ints(0, b.runs[k], b.numbers[k.course])
		r.day(2, k.day)
		r.texts(3, k.session)
		r.ints(4, int32(k.course.distanceM))
	}); err != nil {
		return err
	}
	for _, k := range b.named {
		if err := pl.DB.Exec(ctx, "update record.run set session = ? where run_no = ?", k.session, b.runs[k]); err != nil {
			return err
		}
	}
	b.newOnes, b.newRuns, b.named = nil, nil, nil
	return nil
}

// writeCourses stores courses with what is said of them.
func (b *courseBook) writeCourses(ctx context.Context, pl *Pipeline, keys []courseKey) error {
	return pl.insertRows(ctx, "record.course", courseSchema, len(keys), func(r row, i int) {
		k := keys[i]
		c := b.describe(k)
		r.ints(0, b.numbers[k])
		r.texts(1, k.course, c.name)
		r.ints(3, int32(k.distanceM), int32(c.weekday))
		r.yesNo(5, c.measured)
		if from, ok := b.complete[k.course]; ok {
			r.day(6, from)
		} else {
			r.b.Field(6).AppendNull()
		}
	})
}

// update brings what the database says of the courses in line with courses.csv
// and history.csv as they are now.
func (b *courseBook) update(ctx context.Context, pl *Pipeline) error {
	rows, err := pl.DB.QueryContext(ctx, "select course, distance_m, name, weekday, measured, complete_from from record.course order by course_no")
	if err != nil {
		return err
	}
	defer rows.Close()
	var keys []courseKey
	changed := false
	for rows.Next() {
		var k courseKey
		var name string
		var weekday int
		var measured bool
		var complete *time.Time
		if err := rows.Scan(&k.course, &k.distanceM, &name, &weekday, &measured, &complete); err != nil {
			return err
		}
		c := b.describe(k)
		from, known := b.complete[k.course]
		if c.name != name || c.weekday != weekday || c.measured != measured || known != (complete != nil) || known && unit.DayOf(*complete) != from {
			changed = true
		}
		keys = append(keys, k)
	}
	if err := rows.Close(); err != nil || !changed {
		return err
	}
	return pl.DB.Transaction(ctx, func() error {
		if err := pl.DB.Exec(ctx, "delete from record.course"); err != nil {
			return err
		}
		if err := b.writeCourses(ctx, pl, keys); err != nil {
			return err
		}
		return pl.setState(ctx, "figures", "")
	})
}

// readingKey sums up everything outside a sheet that its reading depends on.
// Where it changes, every sheet is read again.
func (pl *Pipeline) readingKey() (string, error) {
	courses, err := os.ReadFile(pl.Archive.File("courses.csv"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", err
	}
	return store.Hash([]byte(fmt.Sprintf("%q %q %q %q %q %q %q", courses, pl.Settings.Headings, pl.Settings.Courses, pl.Settings.Words, pl.Settings.DateOrder,
		pl.Settings.SeasonStart, pl.Settings.ageRuleKey()))), nil
}

var (
	courseSchema = store.Columns("course_no", store.Int32, "course", store.Text, "name", store.Text, "distance_m", store.Int32,
		"weekday", store.Int32, "measured", store.Bool, "complete_from", store.Date)
	runSchema = store.Columns("run_no", store.Int32, "course_no", store.Int32, "run_date", store.Date, "session", store.Text, "distance_m", store.Int32)
)
