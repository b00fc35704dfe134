package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"slices"

	"lapwing/pipeline/store"
	"lapwing/pipeline/text"
)

// ownReportOfHeld says why a weekly report that Lapwing has written is not loaded: there is a
// sheet of its run, in the archive or in the same load, and the report would take its place
// without the names that are not printed. A newer issue of a report takes the place of the
// older. "" where nothing is against it, or somebody says what the report is.
func (l *loading) ownReportOfHeld(ctx context.Context, r *readResult) (string, error) {
	if r.said(l.hand).Kind != "" || r.parsed.waits() {
		return "", nil
	}
	for _, q := range r.parsed.parts {
		for _, run := range q.runs {
			held, err := l.sheetOf(ctx, run)
			if err != nil {
				return "", err
			}
			if held != "" {
				return fmt.Sprintf("it is a weekly report that Lapwing wrote, and of its run, %s, the sheet %s is there already: a report lacks what is not printed, such as names of children. If it shall count all the same: lapwing load %s --kind full",
					run, held, text.Typed(r.parsed.sheet.Name)), nil
			}
		}
	}
	return "", nil
}

// sheetOf is the path of a sheet of a run that is no weekly report, of the same load or of the
// archive; "" where there is none.
func (l *loading) sheetOf(ctx context.Context, run runKey) (string, error) {
	for i, r := range l.results {
		if p := r.parsed; r.err == nil && p != nil && !p.waits() && !p.sheet.OwnReport() &&
			slices.ContainsFunc(p.parts, func(q *parsedPart) bool { return slices.Contains(q.runs, run) }) {
			return l.names[i], nil
		}
	}
	var hashes []string
	if err := l.pl.each(ctx, `select distinct s.hash from record.line l join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
		join record.run r on r.run_no = l.run_no join record.course c on c.course_no = r.course_no
		where c.course = ? and r.run_date = ?::date order by 1`, func(rows *sql.Rows) error {
		var hash string
		err := rows.Scan(&hash)
		hashes = append(hashes, hash)
		return err
	}, run.course.course, run.day.String()); err != nil {
		return "", err
	}
	for _, hash := range hashes {
		e := l.known[hash]
		if e.State != store.Loaded {
			continue
		}
		p, err := l.pl.readCopy(e, l.pl.openSheet)
		if err != nil {
			return "", err
		}
		if !p.sheet.OwnReport() {
			return e.Path, nil
		}
	}
	return "", nil
}
