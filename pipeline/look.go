package pipeline

import (
	"context"
	"database/sql"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// Look is what somebody should look at beside the runs of a summary.
type Look struct {
	All        int      `json:"in_the_archive"` // problems that nobody has settled, notes left out
	Volunteers []RunRef `json:"volunteers_without_results,omitempty"`
}

// ToLook counts what needs a look in the whole archive, and lists the courses and
// days that lists of volunteers of a load are of and no results.
func (pl *Pipeline) ToLook(ctx context.Context, rep *LoadReport) (l Look, err error) {
	if err := pl.DB.Get(ctx, "select count(*)::integer from main.problems where severity <> 'note' and settled = ''", &l.All); err != nil {
		return l, err
	}
	for _, s := range rep.Sheets {
		if s.State != "loaded" || s.Counts["volunteers"] == 0 {
			continue
		}
		err = pl.each(ctx, `select distinct h.course, h.run_date
			from record.helper h join sheet.part t on t.part_no = h.part_no
			where t.sheet_no = ?
				and not exists (select 1 from main.runs r where r.course = h.course and r.run_date = h.run_date)
			order by all`, func(rows *sql.Rows) error {
			var course string
			var day time.Time
			err := rows.Scan(&course, &day)
			l.Volunteers = append(l.Volunteers, runRef(course, unit.DayOf(day), ""))
			return err
		}, s.seq)
		if err != nil {
			return l, err
		}
	}
	return l, nil
}

// comparedKinds are what comparing the sheets of a run finds and is worth telling at
// once.
const comparedKinds = "'new-issue', '" + anotherField + "', '" + resultsCopied + "', 'excerpt-differs', 'second-sheet', 'two-part-sheet', '" + otherHalfMissing + "', '" + halvesDiffer + "'"

// Compared lists what became of the sheets of a load, and of those that were there,
// where several are of one run: worst first.
func (pl *Pipeline) Compared(ctx context.Context, rep *LoadReport) (out []place.Problem, err error) {
	var loaded []string
	for _, s := range rep.Sheets {
		if s.State == "loaded" {
			loaded = append(loaded, strconv.Itoa(s.seq))
		}
	}
	if len(loaded) == 0 {
		return nil, nil
	}
	ids := "[" + strings.Join(loaded, ", ") + "]"
	// also that a sheet of before is left out beside one of these
	all, err := pl.problemsWhere(ctx, `p.settled = '' and (p.kind in (`+comparedKinds+`) and p.sheet_no in (select unnest(?::integer[]))
		or p.kind = '`+anotherField+`' and p.run_no in (
			select q.run_no
			from sheet.problem q join record.result r on r.run_no = q.run_no join sheet.part t on t.part_no = r.part_no
			where q.kind = '`+anotherField+`' and t.sheet_no in (select unnest(?::integer[]))))`, ids, ids)
	for _, p := range all {
		out = append(out, p.Problem)
	}
	return out, err
}
