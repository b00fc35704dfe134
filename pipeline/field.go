package pipeline

import (
	"context"
	"fmt"
	"sort"
	"strings"
	"time"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/age"
	"lapwing/pipeline/parallel"
	"lapwing/pipeline/record"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// field holds every line of the archive in columns, with what the steps of a
// refresh find out about them. Texts are numbered: 0 is blank.
type field struct {
	n int

	// as read
	lineNo, part, row, run, position, timeMS []int32
	sex, basis, takingPart, status           []uint8
	birthLo, birthHi                         []unit.Day
	name, number, club                       []int32
	key                                      []int64 // order by content: date, course, session, sheet, row

	names, numbers, clubs *texts
	person                []name.Name // by name number

	rule    age.Rule  // who is in which age group
	runs    []runInfo // by run_no - 1
	parts   []partInfo
	courses []courseInfo // by course_no - 1

	// as found out
	counts []uint8 // 1 run, 2 time
	sameAs []int32 // index of the line that holds the same result, -1
	doubt  []int32 // number of the reason, 0 none
	doubts *texts
	runner []int32 // runner number, 0 none

	some  *someLines // nil where the field holds every line
	asked *askedNames
}

type runInfo struct {
	no, course int32
	day        unit.Day
	session    string
	distanceM  int32
	rank       int32 // by date, course, distance, session
}

type partInfo struct {
	no, sheetNo int32
	path, tab   string
	tabIndex    int32
	kind        string
	hash        string
	ageDoubted  bool  // it has a column of ages that could not be believed
	rank        int32 // by path, hash, tab
}

type courseInfo struct {
	no        int32
	course    string
	name      string
	distanceM int32
	complete  unit.Day
	known     bool // complete is known
}

// texts numbers distinct texts in order of first appearance.
type texts struct {
	list []string
	at   map[string]int32 // nil until somebody asks for the number of a text
}

func newTexts() *texts { return &texts{list: []string{""}} }

// number is the number of a text, a new one where it has none yet.
func (t *texts) number(s string) int32 {
	if t.at == nil {
		t.at = make(map[string]int32, len(t.list))
		for i, s := range t.list {
			t.at[s] = int32(i)
		}
	}
	if i, ok := t.at[s]; ok {
		return i
	}
	i := int32(len(t.list))
	t.list = append(t.list, s)
	t.at[s] = i
	return i
}

// some takes over those texts of the dictionary that occur in a column, and
// turns the column's numbers into their own.
func (t *texts) some(column []int32, dictionary []string) {
	now := make([]int32, len(dictionary)) // 0 not yet
	for i, no := range column {
		if no == 0 {
			continue
		}
		if now[no] == 0 {
			now[no] = int32(len(t.list))
			t.list = append(t.list, dictionary[no])
		}
		column[i] = now[no]
	}
}

// readField reads every line out of the database.
func (pl *Pipeline) readField(ctx context.Context) (*field, error) {
	dictionary, err := pl.readTexts(ctx, "")
	if err != nil {
		return nil, err
	}
	var from, to, n int
	if err := pl.DB.Get(ctx, "select coalesce(min(line_no), 0), coalesce(max(line_no), 0), count(*) from record.line", &from, &to, &n); err != nil {
		return nil, err
	}
	// in stretches of lines, several at a time
	queries := []string{lineQuery("record.line")}
	if parts := pl.workers(); n >= stretchFrom && parts > 1 {
		queries = queries[:0]
		for k := range parts {
			queries = append(queries, lineQuery(fmt.Sprintf("record.line where line_no >= %d and line_no < %d", from+(to+1-from)*k/parts, from+(to+1-from)*(k+1)/parts)))
		}
	}
	parts := make([]*field, len(queries))
	for k := range parts {
		parts[k] = newField(n/len(parts) + n/8)
	}
	if err := pl.DB.ScanAll(ctx, queries, func(k int, r arrow.Record) error {
		parts[k].addLines(r)
		return nil
	}); err != nil {
		return nil, err
	}
	f := joinFields(parts, pl.workers())
	if err := pl.readFieldTables(ctx, f); err != nil {
		return nil, err
	}
	pl.complete(f, dictionary)
	return f, nil
}

// lineColumns are the columns of record.line that a refresh reads.
const lineColumns = `line_no, part_no, row_number, run_no, position, time_ms, sex, basis, taking_part, status,
	birth_lo, birth_hi, name_no, number_no, club_no`

// stretchFrom is the number of lines from which they are read in several stretches.
const stretchFrom = 200_000

func lineQuery(from string) string { return "select " + lineColumns + " from " + from }

func newField(n int) *field {
	f := &field{names: newTexts(), numbers: newTexts(), clubs: newTexts(), doubts: newTexts(), asked: newAskedNames()}
	for _, c := range f.whole() {
		*c = make([]int32, 0, n)
	}
	for _, c := range f.small() {
		*c = make([]uint8, 0, n)
	}
	f.birthLo, f.birthHi = make([]unit.Day, 0, n), make([]unit.Day, 0, n)
	return f
}

// whole and small are the columns as read, in the order of lineColumns, but for the
// birth dates.
func (f *field) whole() []*[]int32 {
	return []*[]int32{&f.lineNo, &f.part, &f.row, &f.run, &f.position, &f.timeMS, &f.name, &f.number, &f.club}
}

func (f *field) small() []*[]uint8 {
	return []*[]uint8{&f.sex, &f.basis, &f.takingPart, &f.status}
}

// addLines adds a batch of lines.
func (f *field) addLines(r arrow.Record) {
	whole := f.whole()
	for i, c := range whole[:6] {
		*c = store.AppendInt32(*c, r.Column(i))
	}
	for i, c := range f.small() {
		*c = store.AppendUint8(*c, r.Column(6+i))
	}
	f.birthLo, f.birthHi = store.AppendInt32(f.birthLo, r.Column(10)), store.AppendInt32(f.birthHi, r.Column(11))
	for i, c := range whole[6:] {
		*c = store.AppendInt32(*c, r.Column(12+i))
	}
	f.n = len(f.lineNo)
}

// joinFields puts the lines of several fields behind one another.
func joinFields(parts []*field, workers int) *field {
	f := parts[0]
	if len(parts) == 1 {
		return f
	}
	var columns []func()
	for c := range f.whole() {
		columns = append(columns, func() { joinColumn(parts, func(p *field) *[]int32 { return p.whole()[c] }) })
	}
	for c := range f.small() {
		columns = append(columns, func() { joinColumn(parts, func(p *field) *[]uint8 { return p.small()[c] }) })
	}
	columns = append(columns,
		func() { joinColumn(parts, func(p *field) *[]unit.Day { return &p.birthLo }) },
		func() { joinColumn(parts, func(p *field) *[]unit.Day { return &p.birthHi }) })
	parallel.Each(len(columns), workers, func(k int) { columns[k]() })
	f.n = len(f.lineNo)
	return f
}

// joinColumn makes the first field's column that of all.
func joinColumn[T any](parts []*field, of func(*field) *[]T) {
	n := 0
	for _, p := range parts {
		n += len(*of(p))
	}
	all := make([]T, 0, n)
	for _, p := range parts {
		all = append(all, *of(p)...)
		*of(p) = nil
	}
	*of(parts[0]) = all
}

// readLines reads lines out of a table like record.line. Texts have the numbers of
// the dictionary.
func (pl *Pipeline) readLines(ctx context.Context, from string) (*field, error) {
	f := newField(0)
	err := pl.DB.Scan(ctx, lineQuery(from), func(r arrow.Record) error {
		f.addLines(r)
		return nil
	})
	return f, err
}

// complete gives the lines their texts, and lays out what is to be found out
// about them.
func (pl *Pipeline) complete(f *field, dictionary []string) {
	f.rule = pl.Settings.AgeRule()
	texts := []*texts{f.names, f.numbers, f.clubs}
	parallel.Each(len(texts), pl.workers(), func(k int) { texts[k].some([][]int32{f.name, f.number, f.club}[k], dictionary) })
	f.person = make([]name.Name, len(f.names.list))
	const piece = 4096
	parallel.Each((len(f.person)+piece-1)/piece, pl.workers(), func(k int) {
		for i := k * piece; i < min(len(f.person), (k+1)*piece); i++ {
			f.person[i] = name.Parse(f.names.list[i])
		}
	})
	f.key = make([]int64, f.n)
	f.counts, f.doubt, f.runner = make([]uint8, f.n), make([]int32, f.n), make([]int32, f.n)
	f.sameAs = make([]int32, f.n)
	parallel.Pieces(f.n, pl.workers(), func(from, to int) {
		for i := from; i < to; i++ {
			f.key[i] = int64(f.runs[f.run[i]-1].rank)<<44 | int64(f.parts[f.part[i]-1].rank)<<25 | int64(f.row[i])
			f.sameAs[i] = -1
		}
	})
}

// readTexts reads record.text, or the rows of it that a condition picks, by
// number.
func (pl *Pipeline) readTexts(ctx context.Context, where string) ([]string, error) {
	var last int
	if err := pl.DB.Get(ctx, "select max(text_no) from record.text", &last); err != nil {
		return nil, err
	}
	out := make([]string, last+1)
	err := pl.DB.Scan(ctx, "select text_no, text from record.text "+where, func(r arrow.Record) error {
		no, text := r.Column(0).(*array.Int32), r.Column(1).(*array.String)
		for k := range no.Len() {
			out[no.Value(k)] = strings.Clone(text.Value(k)) // the batch is let go
		}
		return nil
	})
	return out, err
}

func (pl *Pipeline) readFieldTables(ctx context.Context, f *field) error {
	rows, err := pl.DB.QueryContext(ctx, "select course_no, course, name, distance_m, complete_from from record.course order by course_no")
	if err != nil {
		return err
	}
	for rows.Next() {
		var c courseInfo
		var from *time.Time
		if err := rows.Scan(&c.no, &c.course, &c.name, &c.distanceM, &from); err != nil {
			rows.Close()
			return err
		}
		if from != nil {
			c.complete, c.known = unit.DayOf(*from), true
		}
		f.courses = append(f.courses, c)
	}
	if err := rows.Close(); err != nil {
		return err
	}
	err = pl.DB.Scan(ctx, "select run_no, course_no, run_date, session, distance_m from record.run order by run_no", func(r arrow.Record) error {
		no, course, distance := r.Column(0).(*array.Int32), r.Column(1).(*array.Int32), r.Column(4).(*array.Int32)
		day, session := r.Column(2).(*array.Date32), r.Column(3).(*array.String)
		for k := range int(r.NumRows()) {
			f.runs = append(f.runs, runInfo{no: no.Value(k), course: course.Value(k), day: unit.Day(day.Value(k)), session: strings.Clone(session.Value(k)), distanceM: distance.Value(k)})
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := pl.DB.Scan(ctx, `select p.part_no, p.sheet_no, p.tab_index, s.path, s.hash, p.tab, p.kind, q.sheet_no is not null
		from sheet.part p join sheet.sheet s on s.sheet_no = p.sheet_no
		left join (select distinct sheet_no, tab from sheet.problem where kind = '`+sheet.AgeColumnNotUsed+`') q on q.sheet_no = p.sheet_no and q.tab = p.tab
		order by p.part_no`, func(r arrow.Record) error {
		whole := func(c, k int) int32 { return r.Column(c).(*array.Int32).Value(k) }
		text := func(c, k int) string { return strings.Clone(r.Column(c).(*array.String).Value(k)) }
		for k := range int(r.NumRows()) {
			p := partInfo{no: whole(0, k), sheetNo: whole(1, k), tabIndex: whole(2, k), path: text(3, k), hash: text(4, k), tab: text(5, k), kind: text(6, k), ageDoubted: r.Column(7).(*array.Boolean).Value(k)}
			for int(p.no) > len(f.parts)+1 { // numbers of parts that were withdrawn
				f.parts = append(f.parts, partInfo{no: int32(len(f.parts) + 1)})
			}
			f.parts = append(f.parts, p)
		}
		return nil
	}); err != nil {
		return err
	}
	order := make([]int, len(f.runs))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool { return f.runLess(&f.runs[order[a]], &f.runs[order[b]]) })
	for rank, i := range order {
		f.runs[i].rank = int32(rank)
	}
	order = make([]int, len(f.parts))
	for i := range order {
		order[i] = i
	}
	sort.Slice(order, func(a, b int) bool {
		p, q := &f.parts[order[a]], &f.parts[order[b]]
		if p.path != q.path {
			return p.path < q.path
		}
		if p.hash != q.hash {
			return p.hash < q.hash
		}
		return p.tabIndex < q.tabIndex || p.tabIndex == q.tabIndex && p.no < q.no
	})
	for rank, i := range order {
		f.parts[i].rank = int32(rank)
	}
	return nil
}

func (f *field) runLess(a, b *runInfo) bool {
	if a.day != b.day {
		return a.day < b.day
	}
	x, y := &f.courses[a.course-1], &f.courses[b.course-1]
	if x.course != y.course {
		return x.course < y.course
	}
	if a.distanceM != b.distanceM {
		return a.distanceM < b.distanceM
	}
	return a.session < b.session
}

func (f *field) course(i int) int32 { return f.runs[f.run[i]-1].course }
func (f *field) day(i int) unit.Day { return f.runs[f.run[i]-1].day }

func (f *field) is(i int, s record.Status) bool { return f.status[i] == uint8(s) }

// named says whether a line names one person and stands on its own.
func (f *field) named(i int) bool {
	if f.name[i] == 0 || f.person[f.name[i]].Unnamed || f.person[f.name[i]].Several {
		return false
	}
	return !f.is(i, record.Unnamed) && !f.is(i, record.Repeat) && !f.is(i, record.Superseded)
}

// addName numbers a name that is on no sheet: one given by a decision.
func (f *field) addName(text string) int32 {
	i := f.names.number(text)
	for len(f.person) < len(f.names.list) {
		f.person = append(f.person, name.Parse(f.names.list[len(f.person)]))
	}
	return i
}

// setDoubt gives a line another status, with the reason in words.
func (f *field) setDoubt(i int, s record.Status, why string) {
	f.status[i] = uint8(s)
	f.doubt[i] = f.doubts.number(why)
}
