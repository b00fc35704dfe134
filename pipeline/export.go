package pipeline

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lapwing/pipeline/store"
)

// exportView is one view as it goes out: its total order, the columns that
// only go out with --private, and what replaces columns without it.
type exportView struct {
	name, order string
	internal    []string // columns that never go out: numbers of this database
	private     []string
	replace     []string
	public      string // condition for the lines that go out without --private; "" all
	year        string // column that says the year, for partitions; "" none
}

const (
	publicName = `case when hidden then 'Anonymous' when protected then
		regexp_extract(name, '^\S+') || coalesce(' ' || left(nullif(regexp_extract(name, '\s(\S+)$', 1), ''), 1) || '.', '') else name end as name`
	publicClub = "case when hidden or protected then null else club end as club"
)

// withoutHidden blanks columns of hidden people, withoutEither those of children too.
func withoutHidden(columns ...string) []string { return blanked("hidden", columns) }

func withoutEither(columns ...string) []string { return blanked("hidden or protected", columns) }

func blanked(of string, columns []string) (out []string) {
	for _, c := range columns {
		out = append(out, fmt.Sprintf("case when %s then null else %s end as %s", of, c, c))
	}
	return out
}

// ofForm are columns of how fast somebody is, and whether faster than before.
var ofForm = []string{"form_s", "form_low", "form_high"}

// What is public of children is what the reports print of them: no age, age grade, margin
// or form. A hidden person's lines can't be put together, as they have no runner.
var exportViews = []exportView{
	{name: "results", order: "sheet, tab, row_number, course, run_date, session, line_no", internal: []string{"run_no", "line_no", "runner_no"}, private: []string{"name_received"},
		replace: slices.Concat([]string{publicName, publicClub}, withoutHidden("runner_id", "age_group", "attendance_since", "is_newcomer", "is_visitor", "runs_total", "milestone", "pb_streak", "attendance_streak", "days_since_last"),
			withoutEither("note", "age_low", "age_high", "age_grade_pct", "age_grade_low", "age_grade_high", "open_equivalent_s", "adjusted_s", "effort", "shortfall_pct",
				"previous_best_s", "pb_margin_s", "course_best_margin_s"), withoutEither(ofForm...)), year: "run_date"},
	{name: "runs", order: "run_date, course, session, distance_m, run_no", internal: []string{"run_no"}, year: "run_date"},
	{name: "courses", order: "course, distance_m"},
	{name: "runners", order: "length(runner_id), runner_id", internal: []string{"runner_no"}, private: []string{"birth_lo", "birth_hi", "name_key"}, public: "not hidden",
		replace: slices.Concat([]string{publicName, publicClub}, withoutEither(ofForm...), withoutEither("change", "change_sd", "p_faster", "p_level"))},
	{name: "volunteers", order: "run_date, course, role, name, runner_id", internal: []string{"protected", "hidden"}, replace: append(withoutHidden("runner_id", "days_so_far", "milestone"), publicName), year: "run_date"},
	{name: "members", order: "club, name, claim, member_from, written", internal: []string{"protected", "hidden"}, private: []string{"written"}, public: "not hidden", replace: []string{publicName, publicClub}},
	{name: privateView, order: "sheet, tab, row_number, column_letter, kind, read, sheet_no", internal: []string{"sheet_no", "run_no"}},
}

// privateView is exported with private only: a folder with it holds full names.
const privateView = "problems"

// Export writes the views for other programs into a folder, as CSV or as
// Parquet with a folder a year. Without private, children's and hidden
// people's names are shortened and what is about them alone left out.
func (pl *Pipeline) Export(ctx context.Context, dir, format string, private bool) ([]string, error) {
	if format != "csv" && format != "parquet" {
		return nil, fmt.Errorf("format %q: write csv or parquet", format)
	}
	if err := otherExport(dir, private); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, fmt.Errorf("can't make the folder: %w", err)
	}
	var out []string
	for i, v := range exportViews {
		pl.Progress.Step("Exporting", int64(i), int64(len(exportViews)))
		if !private && v.name == privateView {
			continue
		}
		files, err := pl.exportView(ctx, v, dir, format, private)
		if err != nil {
			return nil, fmt.Errorf("exporting %s: %w", v.name, err)
		}
		out = append(out, files...)
	}
	pl.Progress.Done()
	return out, nil
}

// otherExport refuses a folder that holds an export of the other kind: files with full names
// would be left beside, or take the place of, those that are published.
func otherExport(dir string, private bool) error {
	has := func(view string) bool {
		for _, name := range []string{view + ".csv", view + ".parquet", view} {
			if _, err := os.Stat(filepath.Join(dir, name)); err == nil {
				return true
			}
		}
		return false
	}
	switch {
	case !private && has(privateView):
		return fmt.Errorf("%s holds an export with full names (made with --private): give the one for publication a folder of its own, or delete that one first", dir)
	case private && has("results") && !has(privateView):
		return fmt.Errorf("%s holds an export for publication: give the one with full names a folder of its own, or delete that one first", dir)
	}
	return nil
}

func (v exportView) query(private bool) string {
	what, out := "*", v.internal
	if !private {
		out = append(out[:len(out):len(out)], v.private...)
	}
	if len(out) > 0 {
		what += " exclude (" + strings.Join(out, ", ") + ")"
	}
	if !private && len(v.replace) > 0 {
		what += " replace (" + strings.Join(v.replace, ", ") + ")"
	}
	from := "main." + v.name
	if !private && v.public != "" {
		from = "(select * from " + from + " where " + v.public + ")"
	}
	return "select " + what + " from " + from
}

func (pl *Pipeline) exportView(ctx context.Context, v exportView, dir, format string, private bool) ([]string, error) {
	if format == "csv" {
		path := filepath.Join(dir, v.name+".csv")
		return []string{path}, pl.copyTo(ctx, v.query(private)+" order by "+v.order, path, "format csv, header")
	}
	// One row group a file: only then is Parquet the same bytes for any number
	// of threads.
	const options = "format parquet, compression zstd, row_group_size 100000000"
	if v.year == "" {
		path := filepath.Join(dir, v.name+".parquet")
		return []string{path}, pl.copyTo(ctx, v.query(private)+" order by "+v.order, path, options)
	}
	rows, err := pl.DB.QueryContext(ctx, fmt.Sprintf("select distinct year(%s)::integer as y from main.%s order by y", v.year, v.name))
	if err != nil {
		return nil, err
	}
	var years []int
	for rows.Next() {
		var y int
		if err := rows.Scan(&y); err != nil {
			rows.Close()
			return nil, err
		}
		years = append(years, y)
	}
	if err := rows.Close(); err != nil {
		return nil, err
	}
	var out []string
	for _, y := range years {
		sub := filepath.Join(dir, v.name, fmt.Sprintf("year=%d", y))
		if err := os.MkdirAll(sub, 0o755); err != nil {
			return nil, err
		}
		path := filepath.Join(sub, v.name+".parquet")
		q := fmt.Sprintf("%s where year(%s) = %d order by %s", v.query(private), v.year, y, v.order)
		if err := pl.copyTo(ctx, q, path, options); err != nil {
			return nil, err
		}
		out = append(out, path)
	}
	return out, nil
}

// copyTo writes a query to a file under another name first, so that a file
// under its own name is always whole.
func (pl *Pipeline) copyTo(ctx context.Context, query, path, options string) error {
	part := path + ".part"
	if err := pl.DB.Exec(ctx, "copy ("+query+") to "+store.Quote(part)+" ("+options+")"); err != nil {
		os.Remove(part)
		return err
	}
	return os.Rename(part, path)
}
