package pipeline

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// resultLine is a line of a run that stands.
type resultLine struct {
	ref          lineRef
	shown        place.Place
	position     int32
	name, status string
	timeMS       int32
	session      string
	runNo        int32
	lineNo       int32
	table        int // as in Decision, once findTable has looked
}

// findTable finds out which of several tables side by side holds a line.
func (pl *Pipeline) findTable(ctx context.Context, at *resultLine) error {
	rows, err := pl.DB.QueryContext(ctx, `select l.line_no from record.line l
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where s.hash = ? and p.tab = ? and l.row_number = ? order by l.part_no, l.line_no`, at.ref.hash, at.ref.tab, at.ref.row)
	if err != nil {
		return err
	}
	defer rows.Close()
	n := 0
	for rows.Next() {
		var line int32
		if err := rows.Scan(&line); err != nil {
			return err
		}
		if n++; line == at.lineNo {
			at.table = n
		}
	}
	if n < 2 {
		at.table = 0
	}
	return rows.Err()
}

// withTable adds the number of the table to the name of a line.
func withTable(line string, table int) string {
	if table == 0 {
		return line
	}
	return fmt.Sprintf("%s#%d", line, table)
}

// resultAt finds the one standing line of a place of a run.
func (pl *Pipeline) resultAt(ctx context.Context, course string, day unit.Day, session string, position int, line string) (resultLine, error) {
	rows, err := pl.DB.QueryContext(ctx, `select s.hash, s.path, coalesce(r.tab, ''), r.row_number, coalesce(r.position, 0)::integer,
			coalesce(r.name, '`+nobodyNamed+`'), r.status, coalesce(r.time_ms, 0)::integer, coalesce(r.session, ''), r.run_no, r.line_no
		from main.results r
		join record.line l on l.line_no = r.line_no
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where r.course = ? and r.run_date = ?::date and r.status not in ('repeat', 'superseded')
		order by r.session nulls first, r.position nulls last, s.path, r.tab, r.row_number`, course, day.String())
	if err != nil {
		return resultLine{}, err
	}
	defer rows.Close()
	plain, nth, tabled := strings.Cut(line, "#")
	var found []resultLine
	sessions := map[string]bool{}
	all := 0
	for rows.Next() {
		var r resultLine
		if err := rows.Scan(&r.ref.hash, &r.shown.Sheet, &r.ref.tab, &r.ref.row, &r.position, &r.name, &r.status, &r.timeMS, &r.session, &r.runNo, &r.lineNo); err != nil {
			return resultLine{}, err
		}
		r.shown.Tab, r.shown.Row = r.ref.tab, r.ref.row
		all++
		if session != "" && r.session != session {
			continue
		}
		if line != "" && !r.isLine(plain) || line == "" && int(r.position) != position {
			continue
		}
		sessions[r.session] = true
		found = append(found, r)
	}
	if err := rows.Err(); err != nil {
		return resultLine{}, err
	}
	if tabled {
		var err error
		found = slices.DeleteFunc(found, func(r resultLine) bool {
			err = errors.Join(err, pl.findTable(ctx, &r))
			return strconv.Itoa(r.table) != nth
		})
		if err != nil {
			return resultLine{}, err
		}
	}
	switch {
	case len(found) == 1:
		return found[0], nil
	case all == 0:
		return resultLine{}, fmt.Errorf("no result of %s on %s is in the archive; see lapwing sheets", course, day)
	case len(found) == 0 && line != "":
		return resultLine{}, fmt.Errorf("%s is no line of %s on %s that stands", line, course, day)
	case len(found) == 0:
		return resultLine{}, fmt.Errorf("%s on %s has no place %d", course, day, position)
	}
	var list []string
	for _, r := range found {
		if err := pl.findTable(ctx, &r); err != nil {
			return resultLine{}, err
		}
		which := fmt.Sprintf("--line %q", withTable(r.shown.String(), r.table))
		if len(sessions) > 1 && r.session != "" {
			which = fmt.Sprintf("--session %q, or %s", r.session, which)
		}
		list = append(list, fmt.Sprintf("  %s %s: %s", r.name, clockOrDash(r.timeMS), which))
	}
	hint := "name the line"
	if len(sessions) > 1 {
		hint = "name the session with --session, or the line"
	}
	return resultLine{}, fmt.Errorf("place %d stands %d times in %s on %s; %s:\n%s", position, len(found), course, day, hint, strings.Join(list, "\n"))
}

// isLine says whether a text names this line: SHEET:ROW as problems print it,
// with or without the folder and the column.
func (r resultLine) isLine(text string) bool {
	k := strings.LastIndexAny(text, ":!")
	if k < 0 {
		return false
	}
	row, err := strconv.Atoi(strings.TrimLeft(text[k+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	if err != nil || row != r.ref.row {
		return false
	}
	file, tab := text[:k], ""
	if text[k] == '!' {
		file, tab, _ = strings.Cut(file, ":")
	}
	if tab != "" && tab != r.ref.tab {
		return false
	}
	return file == r.shown.Sheet || file == r.shown.Sheet[strings.LastIndexByte(r.shown.Sheet, '/')+1:]
}
