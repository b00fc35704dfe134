package pipeline

import (
	"bytes"
	"cmp"
	"context"
	"database/sql"
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// ForgetPlan is what erasing a person would change. Nothing is changed until
// Do.
type ForgetPlan struct {
	Runner     *Found   `json:"runner,omitempty"` // nil: the person is on no sheet, only in side tables
	Names      []string `json:"names"`            // spellings on sheets
	Lines      int      `json:"results"`
	Sheets     int      `json:"sheets"`
	Decisions  int      `json:"decisions"`
	Members    int      `json:"members"`
	Volunteers int      `json:"volunteers"`
	History    int      `json:"history"`
	Files      []string `json:"other_files"` // of the archive folder
	Reports    []string `json:"reports"`     // written by lapwing and not edited since
	// Namesakes have the same name and stay. Their rows on sheets yet to come
	// would be anonymous as well: a name alone does not tell them apart.
	Namesakes []Found  `json:"namesakes"`
	Runs      []RunRef `json:"runs"` // whose results change
	keys      []string
	spellings []string
	files     map[string][]byte
	remove    []string
	hashes    map[string]string
	pl        *Pipeline
}

// PlanForget finds everything that the archive holds about a person, and works
// out the archive without it. Figures must be up to date.
func (pl *Pipeline) PlanForget(ctx context.Context, who string) (*ForgetPlan, error) {
	p := &ForgetPlan{pl: pl, files: map[string][]byte{}, hashes: map[string]string{}, Namesakes: []Found{}, Files: []string{}, Reports: []string{}, Runs: []RunRef{}}
	list, err := pl.FindRunners(ctx, who)
	if err != nil {
		return nil, err
	}
	if len(list) > 0 {
		r, err := pl.FindRunner(ctx, who)
		if err != nil {
			return nil, err
		}
		p.Runner = &r
	}
	lines, err := pl.linesOfPerson(ctx, p, who)
	if err != nil {
		return nil, err
	}
	if err := pl.findNamesakes(ctx, p); err != nil {
		return nil, err
	}
	e := &eraser{keys: map[string]bool{}, byName: len(p.Namesakes) == 0, spellings: p.spellings, hashes: p.hashes, lines: map[tableLine]bool{}}
	if p.Runner != nil {
		e.id = p.Runner.ID
	}
	for _, k := range p.keys {
		e.keys[k] = true
	}
	if err := pl.addHelpers(ctx, p, e, lines); err != nil {
		return nil, err
	}
	if err := pl.planSheets(ctx, p, e, lines); err != nil {
		return nil, err
	}
	if err := p.planTables(e); err != nil {
		return nil, err
	}
	if err := p.planReports(ctx, e); err != nil {
		return nil, err
	}
	if p.Runner == nil && len(p.files) == 0 {
		return nil, fmt.Errorf("nobody called %q is in the archive", who)
	}
	return p, nil
}

// personLines are a person's rows by place of the sheet in the ledger.
type personLines map[int][]sheet.RowRef

// linesOfPerson lists the lines of a runner, with those under one of the
// runner's spellings that belong to nobody: lines of sheets that no longer
// stand.
func (pl *Pipeline) linesOfPerson(ctx context.Context, p *ForgetPlan, who string) (personLines, error) {
	out := personLines{}
	received := []string{who}
	if p.Runner != nil {
		received = []string{p.Runner.Name}
		no, _ := runnerNumber(p.Runner.ID)
		rows, err := pl.DB.QueryContext(ctx, `
			with mine as (
				select l.line_no, l.part_no, l.row_number, l.run_no, l.name_no from record.line l
				join record.result r on r.line_no = l.line_no where r.runner_no = $1
			), lost as (
				select l.line_no, l.part_no, l.row_number, l.run_no, l.name_no from record.line l
				join record.result r on r.line_no = l.line_no
				where r.runner_no = 0 and l.name_no <> 0 and l.name_no in (select name_no from mine)
					and not exists (select 1 from record.line o join record.result q on q.line_no = o.line_no
						where o.run_no = l.run_no and o.name_no = l.name_no and q.runner_no not in (0, $1))
			), part as (
				select part_no, sheet_no, (row_number() over (partition by sheet_no order by part_no) - 1)::integer as nth from sheet.part
			)
			select part.sheet_no, part.nth, l.row_number, t.text, c.course, run.run_date, coalesce(run.session, '')
			from (select * from mine union all select * from lost) l
			join part on part.part_no = l.part_no
			join record.text t on t.text_no = l.name_no
			join record.run run on run.run_no = l.run_no
			join record.course c on c.course_no = run.course_no
			order by part.sheet_no, part.nth, l.row_number, l.line_no`, no)
		if err != nil {
			return nil, err
		}
		defer rows.Close()
		runs := map[RunRef]bool{}
		for rows.Next() {
			var sheetNo int
			var ref sheet.RowRef
			var text string
			var course, session string
			var day time.Time
			if err := rows.Scan(&sheetNo, &ref.Part, &ref.Row, &text, &course, &day, &session); err != nil {
				return nil, err
			}
			runs[runRef(course, unit.DayOf(day), session)] = true
			out[sheetNo] = append(out[sheetNo], ref)
			received = append(received, text)
			p.Lines++
		}
		if err := rows.Err(); err != nil {
			return nil, err
		}
		p.Runs = slices.SortedFunc(maps.Keys(runs), func(a, b RunRef) int {
			return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Course, b.Course), cmp.Compare(a.Session, b.Session))
		})
	}
	seen := map[string]bool{}
	full := false // a spelling with more than an initial
	var keys []string
	for _, text := range received {
		n := name.Parse(text)
		if n.Unnamed || n.Full == "" || seen[text] {
			continue
		}
		seen[text] = true
		p.Names = append(p.Names, text)
		if len(n.Given) > 1 {
			full = true
		}
	}
	for _, text := range p.Names {
		n := name.Parse(text)
		// an initial and a family name are too many people's to be kept back
		if full && len(n.Given) <= 1 {
			continue
		}
		for _, k := range nameKeys(n) {
			if !slices.Contains(keys, k) {
				keys = append(keys, k)
			}
		}
	}
	p.keys, p.spellings = keys, spellingsOf(p.Names)
	return out, nil
}

func (pl *Pipeline) findNamesakes(ctx context.Context, p *ForgetPlan) error {
	seen := map[string]bool{}
	for _, text := range p.Names {
		list, err := pl.FindRunners(ctx, text)
		if err != nil {
			return err
		}
		for _, f := range list {
			same := slices.ContainsFunc(nameKeys(name.Parse(f.Name)), func(k string) bool { return slices.Contains(p.keys, k) })
			if same && (p.Runner == nil || f.ID != p.Runner.ID) && !seen[f.ID] {
				seen[f.ID] = true
				p.Namesakes = append(p.Namesakes, f)
			}
		}
	}
	return nil
}

// addHelpers adds the rows under which a person stands on lists of volunteers.
func (pl *Pipeline) addHelpers(ctx context.Context, p *ForgetPlan, e *eraser, lines personLines) error {
	return pl.each(ctx, `
		with part as (
			select part_no, sheet_no, (row_number() over (partition by sheet_no order by part_no) - 1)::integer as nth from sheet.part
		)
		select part.sheet_no, part.nth, h.row_number, h.name from record.helper h join part on part.part_no = h.part_no
		order by part.sheet_no, part.nth, h.row_number`, func(rows *sql.Rows) error {
		var sheetNo int
		var ref sheet.RowRef
		var who string
		if err := rows.Scan(&sheetNo, &ref.Part, &ref.Row, &who); err != nil {
			return err
		}
		if e.is(who) {
			lines[sheetNo] = append(lines[sheetNo], ref)
			e.Volunteers++
		}
		return nil
	})
}

// planTables works out the tables of the folder without the person.
func (p *ForgetPlan) planTables(e *eraser) error {
	skip := map[string]bool{"sheets": true, swapFolder: true, idTable: true, forgottenTable: true, forgottenKey: true}
	files, err := e.folder(p.pl.Archive.Dir, skip)
	if err != nil {
		return err
	}
	for name, data := range files {
		p.files[name] = data
		if !slices.Contains(sideTables, name) {
			p.Files = append(p.Files, name)
		}
	}
	slices.Sort(p.Files)
	const ledgerFile = "sheets/ledger.csv"
	data, err := os.ReadFile(p.pl.Archive.File(ledgerFile))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	now, err := e.ledger(data)
	if err != nil {
		return err
	}
	if !bytes.Equal(now, data) {
		p.files[ledgerFile] = now
	}
	p.Decisions, p.Members, p.Volunteers, p.History = e.Decisions, e.Members, e.Volunteers, e.History
	return nil
}

// planReports works out the reports without the person, as far as nobody has
// edited them. Otherwise the next issue would tell what changed, and name whom
// it is about.
func (p *ForgetPlan) planReports(ctx context.Context, e *eraser) error {
	const register = "written.csv"
	data, ok := p.files[register]
	if !ok {
		var err error
		if data, err = os.ReadFile(p.pl.Archive.File(register)); err != nil {
			if errors.Is(err, fs.ErrNotExist) {
				return nil
			}
			return err
		}
	}
	if !e.byName {
		return nil // the name may be a namesake's
	}
	names := e.spellings
	if p.Runner != nil {
		short, err := p.pl.shortNames(ctx, p.Runner.ID)
		if err != nil {
			return err
		}
		names = append(slices.Clone(names), short...)
	}
	dir, err := filepath.Abs(p.pl.Settings.Reports)
	if err != nil {
		return err
	}
	sums := map[string]string{}
	now, err := rewriteTable(data, func(get func(string) string, set func(string, string)) bool {
		set("changes", sheet.ReplaceWords(get("changes"), names, anonymous))
		path := filepath.Join(dir, filepath.FromSlash(get("file")))
		old, err := os.ReadFile(path)
		if err != nil || store.Hash(old) != get("sha256") {
			return true // gone, edited, or a later issue's
		}
		fresh, err := withoutWords(path, old, names)
		if err != nil || bytes.Equal(fresh, old) {
			return true
		}
		sums[get("sha256")] = store.Hash(fresh)
		if _, seen := p.files[path]; !seen {
			p.Reports = append(p.Reports, get("file"))
		}
		p.files[path] = fresh
		return true
	})
	if err != nil {
		return err
	}
	for old, fresh := range sums {
		now = bytes.ReplaceAll(now, []byte(old), []byte(fresh))
	}
	if !bytes.Equal(now, data) {
		p.files[register] = now
	}
	slices.Sort(p.Reports)
	return nil
}

// shortNames are how reports for publication print a child: given name and
// initial. There are some only where the person was printed so.
func (pl *Pipeline) shortNames(ctx context.Context, runner string) ([]string, error) {
	rows, err := pl.DB.QueryContext(ctx, "select name from main.results where runner_id = ? group by name having bool_or(protected)", runner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []string
	for rows.Next() {
		var s string
		if err := rows.Scan(&s); err != nil {
			return nil, err
		}
		if f := strings.Fields(s); len(f) > 1 {
			initial, _ := utf8.DecodeRuneInString(f[len(f)-1])
			out = append(out, f[0]+" "+string(initial)+".")
		}
	}
	return out, rows.Err()
}

// withoutWords takes names out of a whole file, text or workbook.
func withoutWords(path string, data []byte, names []string) ([]byte, error) {
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) {
		return sheet.Redact(path, data, sheet.Options{}, sheet.Redaction{Words: names, Text: anonymous, Everywhere: true})
	}
	return []byte(sheet.ReplaceWords(string(data), names, anonymous)), nil
}

// Do erases the person: the folder first, in one step that a kill can't leave
// half done, then the database, which is made again.
func (p *ForgetPlan) Do(ctx context.Context) error {
	pl := p.pl
	key, err := pl.makeForgottenKey()
	if err != nil {
		return err
	}
	list, err := os.ReadFile(pl.Archive.File(forgottenTable))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	list, err = appendRows(list, forgottenColumns, forgottenRows(key, p.keys, p.hashes, time.Now()))
	if err != nil {
		return err
	}
	p.files[forgottenTable] = list
	if err := pl.stageSwap(p.files, p.remove); err != nil {
		return fmt.Errorf("can't write the archive without the name: %w. Nothing was changed", err)
	}
	if err := pl.DB.Close(); err != nil {
		return err
	}
	pl.DB = nil
	if err := pl.finishSwap(); err != nil {
		return fmt.Errorf("erasing was cut short: %w. It goes on with the next lapwing command", err)
	}
	if err := pl.startOver(ctx); err != nil {
		return err
	}
	_, err = pl.Refresh(ctx, true)
	return err
}

// appendRows adds rows to the content of a table that only this program
// writes.
func appendRows(data []byte, columns []string, rows [][]string) ([]byte, error) {
	var b strings.Builder
	if k := bytes.LastIndexByte(data, '\n'); k >= 0 {
		b.Write(data[:k+1])
	} else {
		rows = append([][]string{columns}, rows...)
	}
	err := csv.NewWriter(&b).WriteAll(rows)
	return []byte(b.String()), err
}

// WhereNamed lists the files below folders in which one of the names still
// stands: reports that were edited or sent, sheets in the inbox. They are the
// user's, and are not touched.
func (p *ForgetPlan) WhereNamed(dirs ...string) ([]string, error) {
	return whereNamed(p.spellings, func(string) bool { return true }, dirs...)
}

// WhereShown lists the files for publication below a folder, all but those for the desk, in
// which a runner's name still stands, whole or as a child's is printed: season workbooks and
// cards that are not written again of themselves, reports that somebody edited.
func (pl *Pipeline) WhereShown(ctx context.Context, runner, dir string) ([]string, error) {
	rows, err := pl.DB.QueryContext(ctx, "select distinct name from main.results where runner_id = ? and name is not null", runner)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var names []string
	for rows.Next() {
		var s string
		if err := rows.Scan(&s); err != nil {
			return nil, err
		}
		names = append(names, s)
	}
	if err := rows.Err(); err != nil || len(names) == 0 {
		return nil, err
	}
	short, err := pl.shortNames(ctx, runner)
	if err != nil {
		return nil, err
	}
	return whereNamed(append(spellingsOf(names), short...), func(file string) bool { return !strings.Contains(file, "-desk") }, dir)
}

// whereNamed lists the files below folders in which one of the names stands; wanted says by
// a file's own name whether to look into it.
func whereNamed(names []string, wanted func(file string) bool, dirs ...string) ([]string, error) {
	var out []string
	for _, dir := range dirs {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if errors.Is(err, fs.ErrNotExist) {
				return nil
			}
			if err != nil || !d.Type().IsRegular() || strings.HasPrefix(d.Name(), "lapwing.duckdb") || !wanted(d.Name()) {
				return err
			}
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			holds, err := sheet.Holds(data, names)
			if err == nil && holds {
				out = append(out, path)
			}
			return nil // a file that is neither text nor a workbook is not searched
		})
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}
