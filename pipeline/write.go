package pipeline

import (
	"context"
	"strings"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/store"
)

var (
	sheetSchema = store.Columns("sheet_no", store.Int32, "hash", store.Text, "path", store.Text, "format", store.Text,
		"encoding", store.Text, "dialect", store.Text, "rows", store.Int32)
	partSchema = store.Columns("part_no", store.Int32, "sheet_no", store.Int32, "tab", store.Text, "tab_index", store.Int32,
		"heading_row", store.Int32, "kind", store.Text, "course_from", store.Text, "date_from", store.Text, "readings", store.Text,
		"answers", store.Text)
	columnSchema  = store.Columns("part_no", store.Int32, "column_no", store.Int32, "heading", store.Text, "meaning", store.Text, "why", store.Text)
	problemSchema = store.Columns("sheet_no", store.Int32, "tab", store.Text, "row_number", store.Int32, "column_letter", store.Text,
		"severity", store.Uint8, "kind", store.Text, "read", store.Text, "expected", store.Text, "todo", store.Text, "run_no", store.Int32)
)

// writeSheets puts sheets into the database in one transaction.
func (pl *Pipeline) writeSheets(ctx context.Context, sheets []*parsedSheet) error {
	if len(sheets) == 0 {
		return nil
	}
	return pl.changeSheets(ctx, func() error { return pl.insertSheets(ctx, sheets) })
}

// changeSheets runs f in one transaction.
func (pl *Pipeline) changeSheets(ctx context.Context, f func() error) error {
	err := pl.DB.Transaction(ctx, f)
	if err != nil {
		pl.texts = nil // what it has numbered was not kept
	}
	return err
}

// insertSheets writes all that is known of sheets. Lines that were not read
// yet are read as they are written.
func (pl *Pipeline) insertSheets(ctx context.Context, sheets []*parsedSheet) error {
	var nextPart, nextLine int32
	if err := pl.DB.Get(ctx, "select (select coalesce(max(part_no), 0) from sheet.part), (select coalesce(max(line_no), 0) from record.line)", &nextPart, &nextLine); err != nil {
		return err
	}
	var parts []numberedPart
	for _, s := range sheets {
		for _, p := range s.parts {
			nextPart++
			n := numberedPart{sheet: s, part: p, partNo: nextPart, runNo: make([]int32, len(p.runs))}
			for i, k := range p.runs {
				n.runNo[i] = pl.courses.number(k)
			}
			parts = append(parts, n)
		}
	}
	if err := pl.courses.write(ctx, pl); err != nil {
		return err
	}
	if err := pl.numberTexts(ctx, parts); err != nil {
		return err
	}
	if err := pl.insertLines(ctx, parts, nextLine); err != nil {
		return err
	}
	if err := pl.insertHelpers(ctx, parts); err != nil {
		return err
	}
	for _, s := range sheets {
		for _, p := range s.parts {
			s.tell(p)
		}
		if err := s.someLines(); err != nil {
			return errNoLines{err}
		}
	}
	if err := pl.insertRows(ctx, "sheet.sheet", sheetSchema, len(sheets), func(r row, i int) {
		s := sheets[i]
		r.ints(0, int32(s.entry.Seq))
		r.texts(1, s.entry.Hash, s.entry.Path, s.sheet.Format, s.sheet.Encoding, s.sheet.Dialect)
		r.ints(6, int32(s.rows()))
	}); err != nil {
		return err
	}
	if err := pl.insertRows(ctx, "sheet.part", partSchema, len(parts), func(r row, i int) {
		p := parts[i]
		var words, answers []string
		for _, w := range p.part.readings {
			words = append(words, w.Column+" "+w.Heading+": "+w.Means+" ("+w.Why+")")
			if w.Answer != "" {
				answers = append(answers, w.Answer)
			}
		}
		r.ints(0, p.partNo, int32(p.sheet.entry.Seq))
		r.texts(2, p.part.part.Tab)
		r.ints(3, int32(p.part.part.TabIndex), int32(p.part.part.HeadingRow))
		r.texts(5, p.part.kind, p.part.part.Course.From, p.part.part.Date.From, strings.Join(words, "\n"), strings.Join(answers, "; "))
	}); err != nil {
		return err
	}
	var columns [][2]int
	for i, p := range parts {
		for k := range p.part.part.Columns {
			columns = append(columns, [2]int{i, k})
		}
	}
	if err := pl.insertRows(ctx, "sheet.column", columnSchema, len(columns), func(r row, i int) {
		p := parts[columns[i][0]]
		c := p.part.part.Columns[columns[i][1]]
		r.ints(0, p.partNo, int32(c.Index+1))
		r.texts(2, c.Heading, c.Meaning.String(), c.Why)
	}); err != nil {
		return err
	}
	var problems []storedProblem
	for _, s := range sheets {
		for _, q := range s.sheet.Problems {
			problems = append(problems, storedProblem{q, int32(s.entry.Seq), 0})
		}
	}
	for _, p := range parts {
		for _, q := range p.part.problems {
			run := int32(0)
			if q.run >= 0 {
				run = p.runNo[q.run]
			}
			problems = append(problems, storedProblem{q.Problem, int32(p.sheet.entry.Seq), run})
		}
	}
	if err := pl.insertProblems(ctx, problems); err != nil {
		return err
	}
	return pl.setState(ctx, "figures", "")
}

// errNoLines is a sheet that turned out to have no lines while it was written.
type errNoLines struct {
	error
}

// numberedPart is a part with the numbers that its rows get in the database.
type numberedPart struct {
	sheet  *parsedSheet
	part   *parsedPart
	partNo int32
	runNo  []int32
}

type storedProblem struct {
	place.Problem
	sheetNo, runNo int32
}

func (pl *Pipeline) insertProblems(ctx context.Context, problems []storedProblem) error {
	return pl.insertRows(ctx, "sheet.problem", problemSchema, len(problems), func(r row, i int) {
		p := problems[i]
		r.ints(0, p.sheetNo)
		r.texts(1, p.Place.Tab)
		r.ints(2, int32(p.Place.Row))
		r.texts(3, p.Place.Column)
		r.small(4, uint8(p.Severity))
		r.texts(5, p.Kind, p.Read, p.Expected, p.Do)
		r.ints(9, p.runNo)
	})
}

func (pl *Pipeline) insertLines(ctx context.Context, parts []numberedPart, lineNo int32) error {
	for _, p := range parts {
		if p.part.unread != nil {
			if err := pl.learnTexts(ctx); err != nil {
				return err
			}
		}
	}
	d, known := pl.texts, pl.texts.last
	from := &pieces{parts: parts}
	defer from.close()
	if err := pl.DB.Insert(ctx, "record.line", lineSchema, func(b *store.Builder) (bool, error) {
		n := 0
		for n < store.BatchRows {
			p, q, err := from.next()
			if err != nil {
				return false, err
			}
			if q == nil {
				break
			}
			n += len(q.lines)
			r := row{b}
			for i := range q.lines {
				l := &q.lines[i]
				var texts [3]int32
				if q.texts != nil {
					texts = q.texts[i]
				} else {
					texts = [3]int32{d.number(l.Name), d.number(l.Number), d.number(l.Club)}
				}
				lineNo++
				r.ints(0, lineNo, p.partNo, l.Row, p.runNo[q.run[i]], l.Position)
				r.small(5, flag(l.Tied))
				r.ints(6, texts[:2]...)
				r.ints(8, l.TimeMS)
				r.small(9, uint8(l.Sex))
				r.window(10, l.Birth)
				r.small(12, uint8(l.Basis))
				r.texts(13, l.AgeText)
				r.ints(14, texts[2])
				r.small(15, uint8(l.TakingPart), uint8(l.Status))
				r.texts(17, l.Note)
			}
			from.done(q)
		}
		return n > 0, nil
	}); err != nil {
		return err
	}
	fresh := d.fresh
	d.fresh = nil
	return pl.insertTexts(ctx, known, fresh)
}

func flag(b bool) uint8 {
	if b {
		return 1
	}
	return 0
}

// row appends the fields of one row to a batch, starting at a column.
type row struct{ b *store.Builder }

func (r row) ints(at int, v ...int32) {
	for i, x := range v {
		r.b.Field(at + i).(*array.Int32Builder).Append(x)
	}
}

func (r row) small(at int, v ...uint8) {
	for i, x := range v {
		r.b.Field(at + i).(*array.Uint8Builder).Append(x)
	}
}

func (r row) texts(at int, v ...string) {
	for i, x := range v {
		r.b.Field(at + i).(*array.StringBuilder).Append(strings.ToValidUTF8(x, "\ufffd"))
	}
}

func (r row) window(at int, w age.Window) {
	lo, hi := r.b.Field(at).(*array.Date32Builder), r.b.Field(at+1).(*array.Date32Builder)
	if !w.Known() {
		lo.AppendNull()
		hi.AppendNull()
		return
	}
	lo.Append(arrow.Date32(w.Lo))
	hi.Append(arrow.Date32(w.Hi))
}

// insertRows appends n rows that f fills one by one.
func (pl *Pipeline) insertRows(ctx context.Context, table string, schema *store.Schema, n int, f func(r row, i int)) error {
	if n == 0 {
		return nil
	}
	i := 0
	return pl.DB.Insert(ctx, table, schema, func(b *store.Builder) (bool, error) {
		if i == n {
			return false, nil
		}
		for end := min(n, i+store.BatchRows); i < end; i++ {
			f(row{b}, i)
		}
		return true, nil
	})
}
