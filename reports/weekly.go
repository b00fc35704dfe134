package reports

import (
	"context"
	"fmt"
	"strings"

	"lapwing/pipeline/unit"
)

// Weekly writes the reports of one run where they have changed: the workbook
// for everybody, the workbook for the results desk, and the write-up in
// Markdown and plain text. session is "" where the course held one run that
// day. It gives the paths written, none where nothing changed.
//
// A run that the archive doesn't hold is an error.
func Weekly(ctx context.Context, q Queryer, o Options, course string, on unit.Day, session string) ([]string, error) {
	w, err := ReadWeekly(ctx, q, o, []Run{{course, on, session}})
	if err != nil {
		return nil, err
	}
	return w[0].Write()
}

// WeeklyReport is what the reports of a run say, ready to be written.
type WeeklyReport struct{ d *weekly }

// ReadWeekly reads what the reports of several runs say, with the same few
// questions to the database whatever their number. It holds all of it in
// memory, some 150 kB a run of 300 people. Runs of the same courses are best
// read together: the history of a course is read once.
//
// A run that the archive doesn't hold is an error.
func ReadWeekly(ctx context.Context, q Queryer, o Options, runs []Run) ([]WeeklyReport, error) {
	all, err := readWeekly(ctx, q, o, runs)
	if err != nil {
		return nil, err
	}
	out := make([]WeeklyReport, len(all))
	for i, d := range all {
		out[i].d = d
	}
	return out, nil
}

// Write writes the reports of the run where they have changed and gives the
// paths written. It may be called for several runs at the same time where they
// share Options.Register.
func (w WeeklyReport) Write() ([]string, error) {
	d := w.d
	o, course, on, session := d.o, d.course, d.on, d.session
	reg, err := o.register()
	if err != nil {
		return nil, err
	}
	if err := reg.announce(d); err != nil {
		return nil, err
	}
	tmpl, err := loadWriteup(o.ArchiveDir)
	if err != nil {
		return nil, err
	}
	first := issueOf{Number: 1}
	up, err := d.writeup(tmpl, first, markdown)
	if err != nil {
		return nil, err
	}
	files := []file{
		{".xlsx", d.public(first).Text(), func(i issueOf) ([]byte, error) { return workbook(d.public(i)) }},
		{"-desk.xlsx", d.desk(first).Text(), func(i issueOf) ([]byte, error) { return workbook(d.desk(i)) }},
		{".md", up, func(i issueOf) ([]byte, error) { s, err := d.writeup(tmpl, i, markdown); return []byte(s), err }},
		{".txt", up, func(i issueOf) ([]byte, error) { s, err := d.writeup(tmpl, i, plainText); return []byte(s), err }},
	}
	report := weeklyName(course, on, session)
	since := reg.last(report)
	written, err := reg.publish(o.Dir, report, o.Mark, files, func(earlier map[string]string) (changes, error) {
		return d.changesSince(earlier[".xlsx"], since)
	})
	if err != nil {
		return written, fmt.Errorf("weekly report of %s on %s: %w", course, on, err)
	}
	return written, nil
}

// weeklyName is the stem of the file names: course, date and, where the day
// held several runs, session.
func weeklyName(course string, on unit.Day, session string) string {
	n := fileSafe(course) + "_" + on.String()
	if session != "" {
		n += "_" + fileSafe(session)
	}
	return n
}

// fileSafe keeps letters, digits, dots and dashes; anything else becomes "-".
func fileSafe(s string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-', r > 127:
			return r
		case r == ':':
			return -1
		}
		return '-'
	}, s), "-")
}
