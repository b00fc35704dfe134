package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"strings"
)

// settled is a decision about people with what its sides are now.
type settled struct {
	d            Decision
	lineA, lineB int32 // 0 where the sheet is not loaded
	a, b         int32 // runners, 0 not known
	wholeA       bool
}

// Words names a decision: its id, day and reason.
func (d Decision) words() string {
	s := fmt.Sprintf("decision %d", d.ID)
	if !d.When.IsZero() {
		s += " of " + d.When.Format("2006-01-02")
	}
	if d.By != "" {
		s += " by " + d.By
	}
	if d.Why != "" {
		s += fmt.Sprintf(" (%q)", d.Why)
	}
	return s
}

// settledPeople reads the decisions about people that are in force.
func (pl *Pipeline) settledPeople(ctx context.Context) ([]settled, error) {
	all, err := pl.Decisions()
	if err != nil {
		return nil, err
	}
	var out []settled
	var want []lineRef
	for _, d := range all {
		if !d.aboutPeople() {
			continue
		}
		a, b, err := d.sides()
		if err != nil {
			return nil, fmt.Errorf("decision %d: %w", d.ID, err)
		}
		out = append(out, settled{d: d, wholeA: a.runner != ""})
		want = append(want, a.at, b.at)
	}
	at, err := pl.linesNow(ctx, want)
	if err != nil {
		return nil, err
	}
	for i := range out {
		a, b, _ := out[i].d.sides()
		for _, s := range []struct {
			side         side
			line, runner *int32
		}{{a, &out[i].lineA, &out[i].a}, {b, &out[i].lineB, &out[i].b}} {
			if l, ok := at[s.side.at]; ok {
				*s.line, *s.runner = l[0], l[1]
			} else if n, ok := runnerNumber(s.side.runner); ok {
				*s.runner = n
				if err := pl.each(ctx, "select now from record.alias where runner_no = ?", func(rows *sql.Rows) error { return rows.Scan(s.runner) }, n); err != nil {
					return nil, err
				}
			}
		}
	}
	return out, nil
}

// linesNow finds the number and the runner of lines.
func (pl *Pipeline) linesNow(ctx context.Context, want []lineRef) (map[lineRef][2]int32, error) {
	out := map[lineRef][2]int32{}
	var hash, tab, row []string
	for _, w := range want {
		if w.hash != "" {
			hash, tab, row = append(hash, w.hash), append(tab, w.tab), append(row, strconv.Itoa(w.row))
		}
	}
	if len(hash) == 0 {
		return out, nil
	}
	const unit = "\x1f"
	err := pl.each(ctx, `with wanted as (select distinct unnest(string_split($1, chr(31))) as hash, unnest(string_split($2, chr(31))) as tab, unnest(string_split($3, chr(31)))::integer as row_number)
		select w.hash, w.tab, w.row_number, min(l.line_no)::integer, min(r.runner_no)::integer
		from wanted w join sheet.sheet s on s.hash = w.hash join sheet.part p on p.sheet_no = s.sheet_no and p.tab = w.tab
		join record.line l on l.part_no = p.part_no and l.row_number = w.row_number join record.result r on r.line_no = l.line_no
		group by all`, func(rows *sql.Rows) error {
		var at lineRef
		var v [2]int32
		err := rows.Scan(&at.hash, &at.tab, &at.row, &v[0], &v[1])
		out[at] = v
		return err
	}, strings.Join(hash, unit), strings.Join(tab, unit), strings.Join(row, unit))
	return out, err
}
