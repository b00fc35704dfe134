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
// A run that the archive doesn't hold is an error. Weekly may be called from
// several goroutines that share Options.Register.
func Weekly(ctx context.Context, q Queryer, o Options, course string, on unit.Day, session string) ([]string, error) {
	d, err := readWeekly(ctx, q, o, course, on, session)
	if err != nil {
		return nil, err
	}
	reg, err := o.register()
	if err != nil {
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
	written, err := reg.publish(o.Dir, weeklyName(course, on, session), files, func(earlier map[string]string) []string {
		return d.changesSince(earlier[".xlsx"], o.Why)
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
