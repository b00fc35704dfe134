package pipeline

import (
	"context"
	"strings"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/age"
	"lapwing/pipeline/place"
	"lapwing/pipeline/record"
	"lapwing/pipeline/store"
)

var (
	sheetSchema = store.Columns("sheet_no", store.Int32, "hash", store.Text, "path", store.Text, "format", store.Text,
		"encoding", store.Text, "dialect", store.Text, "rows", store.Int32, "date_order", store.Text)
	partSchema = store.Columns("part_no", store.Int32, "sheet_no", store.Int32, "tab", store.Text, "tab_index", store.Int32,
		"heading_row", store.Int32, "kind", store.Text, "course_from", store.Text, "date_from", store.Text, "readings", store.Text,
		"answers", store.Text)
	columnSchema  = store.Columns("part_no", store.Int32, "column_no", store.Int32, "heading", store.Text, "meaning", store.Text, "why", store.Text)
	problemSchema = store.Columns("sheet_no", store.Int32, "tab", store.Text, "row_number", store.Int32, "column_letter", store.Text,
		"severity", store.Uint8, "kind", store.Text, "read", store.Text, "expected", store.Text, "todo", store.Text, "run_no", store.Int32, "answers", store.Text)
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
	var lastPart, lastLine int32
	if err := pl.DB.Get(ctx, "select (select coalesce(max(part_no), 0) from sheet.part), (select coalesce(max(line_no), 0) from record.line)", &lastPart, &lastLine); err != nil {
		return err
	}
	parts := pl.numberParts(sheets, lastPart)
	if err := pl.courses.write(ctx, pl); err != nil {
		return err
	}
	if err := pl.numberTexts(ctx, parts); err != nil {
		return err
	}
	if err := pl.insertLines(ctx, parts, lastLine); err != nil {
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
	for _, write := range []func() error{
		func() error { return pl.insertSheetRows(ctx, sheets) },
		func() error { return pl.insertParts(ctx, parts) },
		func() error { return pl.insertHeadings(ctx, parts) },
		func() error { return pl.insertProblems(ctx, problemsOfSheets(sheets, parts)) },
	} {
		if err := write(); err != nil {
			return err
		}
	}
	return pl.setState(ctx, "figures", "")
}

// numberParts numbers the parts of sheets after the last, and their runs.
func (pl *Pipeline) numberParts(sheets []*parsedSheet, last int32) (parts []numberedPart) {
	for _, s := range sheets {
		for _, p := range s.parts {
			last++
			n := numberedPart{sheet: s, part: p, partNo: last, runNo: make([]int32, len(p.runs))}
			for i, k := range p.runs {
				n.runNo[i] = pl.courses.number(k)
			}
			parts = append(parts, n)
		}
	}
	return parts
}

func (pl *Pipeline) insertSheetRows(ctx context.Context, sheets []*parsedSheet) error {
	return pl.insertRows(ctx, "sheet.sheet", sheetSchema, len(sheets), func(r row, i int) {
		s := sheets[i]
		r.ints(0, int32(s.entry.Seq))
		r.texts(1, s.entry.Hash, s.entry.Path, s.sheet.Format, s.sheet.Encoding, s.sheet.Dialect)
		r.ints(6, int32(s.rows()))
		r.texts(7, s.sheet.DateOrder)
	})
}

func (pl *Pipeline) insertParts(ctx context.Context, parts []numberedPart) error {
	return pl.insertRows(ctx, "sheet.part", partSchema, len(parts), func(r row, i int) {
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
	})
}

// insertHeadings writes what each column of a part was taken for.
func (pl *Pipeline) insertHeadings(ctx context.Context, parts []numberedPart) error {
	var columns [][2]int
	for i, p := range parts {
		for k := range p.part.part.Columns {
			columns = append(columns, [2]int{i, k})
		}
	}
	return pl.insertRows(ctx, "sheet.column", columnSchema, len(columns), func(r row, i int) {
		p := parts[columns[i][0]]
		c := p.part.part.Columns[columns[i][1]]
		r.ints(0, p.partNo, int32(c.Index+1))
		r.texts(2, c.Heading, c.Meaning.String(), c.Why)
	})
}

func problemsOfSheets(sheets []*parsedSheet, parts []numberedPart) (problems []storedProblem) {
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
	return problems
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
		r.texts(10, p.Answers)
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
		c := lineBuilders(b)
		for n < store.BatchRows {
			p, q, err := from.next()
			if err != nil {
				return false, err
			}
			if q == nil {
				break
			}
			n += len(q.lines)
			c.reserve(len(q.lines))
			for i := range q.lines {
				l := &q.lines[i]
				texts := [3]int32{}
				if q.texts != nil {
					texts = q.texts[i]
				} else {
					texts = [3]int32{d.number(l.Name), d.number(l.Number), d.number(l.Club)}
				}
				lineNo++
				c.add(lineNo, p.partNo, p.runNo[q.run[i]], l, texts)
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

// lineColumnsOut are the builders of a batch of record.line. They are filled row by row,
// ten million times: reserve makes room for the rows to come, so that add need not.
type lineColumnsOut struct {
	lineNo, part, row, run, position, name, number, time, club *array.Int32Builder
	tied, sex, basis, takingPart, status                       *array.Uint8Builder
	birthLo, birthHi                                           *array.Date32Builder
	age, note                                                  *array.StringBuilder
}

func lineBuilders(b *store.Builder) *lineColumnsOut {
	whole := func(at int) *array.Int32Builder { return b.Field(at).(*array.Int32Builder) }
	small := func(at int) *array.Uint8Builder { return b.Field(at).(*array.Uint8Builder) }
	return &lineColumnsOut{
		lineNo: whole(0), part: whole(1), row: whole(2), run: whole(3), position: whole(4), tied: small(5), name: whole(6), number: whole(7),
		time: whole(8), sex: small(9), birthLo: b.Field(10).(*array.Date32Builder), birthHi: b.Field(11).(*array.Date32Builder), basis: small(12),
		age: b.Field(13).(*array.StringBuilder), club: whole(14), takingPart: small(15), status: small(16), note: b.Field(17).(*array.StringBuilder),
	}
}

func (c *lineColumnsOut) reserve(n int) {
	for _, b := range []*array.Int32Builder{c.lineNo, c.part, c.row, c.run, c.position, c.name, c.number, c.time, c.club} {
		b.Reserve(n)
	}
	for _, b := range []*array.Uint8Builder{c.tied, c.sex, c.basis, c.takingPart, c.status} {
		b.Reserve(n)
	}
	c.birthLo.Reserve(n)
	c.birthHi.Reserve(n)
}

func (c *lineColumnsOut) add(no, part, run int32, l *record.Line, texts [3]int32) {
	c.lineNo.UnsafeAppend(no)
	c.part.UnsafeAppend(part)
	c.row.UnsafeAppend(l.Row)
	c.run.UnsafeAppend(run)
	c.position.UnsafeAppend(l.Position)
	c.tied.UnsafeAppend(flag(l.Tied))
	c.name.UnsafeAppend(texts[0])
	c.number.UnsafeAppend(texts[1])
	c.time.UnsafeAppend(l.TimeMS)
	c.sex.UnsafeAppend(uint8(l.Sex))
	if l.Birth.Known() {
		c.birthLo.UnsafeAppend(arrow.Date32(l.Birth.Lo))
		c.birthHi.UnsafeAppend(arrow.Date32(l.Birth.Hi))
	} else {
		c.birthLo.UnsafeAppendBoolToBitmap(false)
		c.birthHi.UnsafeAppendBoolToBitmap(false)
	}
	c.basis.UnsafeAppend(uint8(l.Basis))
	c.age.Append(valid(l.AgeText))
	c.club.UnsafeAppend(texts[2])
	c.takingPart.UnsafeAppend(uint8(l.TakingPart))
	c.status.UnsafeAppend(uint8(l.Status))
	c.note.Append(valid(l.Note))
}

// valid is a text as the database takes it: UTF-8.
func valid(s string) string {
	if s == "" {
		return s
	}
	return strings.ToValidUTF8(s, "\ufffd")
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
		r.b.Field(at + i).(*array.StringBuilder).Append(valid(x))
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
