package pipeline

import (
	"cmp"
	"context"
	"database/sql"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// volunteerTable lists who helped, beside the lists that come as sheets.
const volunteerTable = "volunteers.csv"

// volunteerColumns are its columns.
var volunteerColumns = []string{"name", "role", "course", "date"}

// helper is a row of a list of volunteers that came as a sheet.
type helper struct {
	row        int32
	name, role string // as written
	course     string // short name
	day        unit.Day
}

// helperRuns are the courses and days that lists of volunteers are of.
func helperRuns(list []helper) []runKey {
	var out []runKey
	for _, h := range list {
		k := runKey{course: courseKey{course: h.course}, day: h.day}
		if !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	return out
}

// readHelpers reads the rows of a list of volunteers. Rows that name nobody,
// such as a role that is still open, are passed over. Somebody who asked to be
// forgotten still counts as one who helped.
func (p *partParser) readHelpers() error {
	whole, given, family, role := p.part.Index(sheet.Name), p.part.Index(sheet.GivenName), p.part.Index(sheet.FamilyName), p.part.Index(sheet.Role)
	cell := func(cells []string, i int) string {
		if i < 0 || i >= len(cells) {
			return ""
		}
		return strings.Join(strings.Fields(cells[i]), " ")
	}
	return p.part.Each(func(row int, cells []string) error {
		course, day, _, ok := p.part.RunOf(cells)
		if !ok {
			p.lost = cmp.Or(p.lost, row)
			return nil
		}
		who := cell(cells, whole)
		if who == "" {
			who = strings.TrimSpace(cell(cells, given) + " " + cell(cells, family))
		}
		if who == "" || name.Parse(who).Unnamed && who != anonymous {
			return nil
		}
		p.out.helpers = append(p.out.helpers, helper{int32(row), who, cell(cells, role), p.pl.courses.resolve(course), day})
		return nil
	})
}

var helperSchema = store.Columns("part_no", store.Int32, "row_number", store.Int32, "name", store.Text, "role", store.Text, "course", store.Text, "run_date", store.Date)

// insertHelpers writes the rows of lists of volunteers.
func (pl *Pipeline) insertHelpers(ctx context.Context, parts []numberedPart) error {
	var rows [][2]int
	for i, p := range parts {
		for k := range p.part.helpers {
			rows = append(rows, [2]int{i, k})
		}
	}
	return pl.insertRows(ctx, "record.helper", helperSchema, len(rows), func(r row, i int) {
		p := parts[rows[i][0]]
		h := p.part.helpers[rows[i][1]]
		r.ints(0, p.partNo, h.row)
		r.texts(2, h.name, h.role, h.course)
		r.day(5, h.day)
	})
}

// volunteerLine is somebody who helped in one role on one day.
type volunteerLine struct {
	name, role, course string
	day                unit.Day
	table, at          string // where it was read: the table or sheet, and its row
	who, job           string // name and role as they are compared
}

// readVolunteers reads volunteers.csv.
func (pl *Pipeline) readVolunteers() ([]volunteerLine, error) {
	rows, err := pl.Archive.ReadTable(volunteerTable, volunteerColumns)
	if err != nil {
		return nil, err
	}
	var out []volunteerLine
	for i, r := range rows {
		d, err := unit.ParseDay(r[3])
		if err != nil {
			return nil, fmt.Errorf("%s: %w", pl.Archive.At(volunteerTable, i), err)
		}
		out = append(out, volunteerLine{name: r[0], role: r[1], course: pl.courses.resolve(r[2]), day: d, table: volunteerTable})
	}
	return out, nil
}

// volunteerLines gives all who helped, from volunteers.csv and from sheets, in
// a fixed order. What stands in both, or on two sheets, stands once.
func (pl *Pipeline) volunteerLines(ctx context.Context) ([]volunteerLine, error) {
	out, err := pl.readVolunteers()
	if err != nil {
		return nil, err
	}
	at := pl.Archive.Places(volunteerTable)
	for i := range out {
		out[i].at = at(i)
	}
	err = pl.each(ctx, `select s.path, p.tab, h.row_number, h.name, h.role, h.course, h.run_date from record.helper h
		join sheet.part p on p.part_no = h.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
		order by p.sheet_no, p.tab_index, h.row_number, h.part_no`, func(rows *sql.Rows) error {
		var v volunteerLine
		var tab string
		var row int
		var day time.Time
		if err := rows.Scan(&v.table, &tab, &row, &v.name, &v.role, &v.course, &day); err != nil {
			return err
		}
		v.day, v.at = unit.DayOf(day), place.Place{Sheet: v.table, Tab: tab, Row: row}.String()
		out = append(out, v)
		return nil
	})
	if err != nil {
		return nil, err
	}
	for i := range out {
		v := &out[i]
		v.who, v.job = helperKey(v.name), fold(v.role)
	}
	slices.SortStableFunc(out, func(a, b volunteerLine) int {
		return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(a.course, b.course), cmp.Compare(a.who, b.who), cmp.Compare(a.job, b.job),
			cmp.Compare(a.name, b.name), cmp.Compare(a.role, b.role))
	})
	return slices.CompactFunc(out, func(a, b volunteerLine) bool {
		return a.day == b.day && a.course == b.course && a.who == b.who && a.job == b.job && a.name != anonymous
	}), nil
}

func fold(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

// helperKey is what tells volunteers apart who are not known as runners.
func helperKey(who string) string {
	if n, ok := runnerNumber(who); ok {
		return fmt.Sprintf("R%d", n)
	}
	return cmp.Or(name.Parse(who).Full, fold(who))
}

// volunteerDays counts, for every line, the days on which its person has helped
// up to and with that day, whatever the course and the number of roles, on top
// of what history.csv says of the time before; and the milestone that this day
// is, 0 for none. Who is no runner goes by the name; a name that several
// runners have is nobody's in particular and counts nothing.
//
// runner gives the number of the runner of a name, noRunner or severalRunners.
// lines are in order of day.
func volunteerDays(lines []volunteerLine, before []historyLine, runner func(string) int32, milestones []int) (days, reached []int32) {
	who := func(text string) string {
		if text == anonymous {
			return ""
		}
		switch r := runner(text); {
		case r >= 0:
			return fmt.Sprintf("R%d", r)
		case r == severalRunners:
			return ""
		}
		return "name " + helperKey(text)
	}
	type count struct {
		n     int32
		last  unit.Day
		since unit.Day // days before that are in n already
	}
	counts := map[string]*count{}
	for _, h := range before {
		if k := who(h.name); h.fact == earlierDays && k != "" {
			c := counts[k]
			if c == nil {
				c = &count{last: -1 << 31}
				counts[k] = c
			}
			c.n += int32(h.finishes)
			c.since = max(c.since, h.day)
		}
	}
	days, reached = make([]int32, len(lines)), make([]int32, len(lines))
	for i, v := range lines {
		k := who(v.name)
		if k == "" {
			continue
		}
		c := counts[k]
		if c == nil {
			c = &count{last: -1 << 31}
			counts[k] = c
		}
		if v.day < c.since {
			continue
		}
		if v.day != c.last {
			c.n++
			c.last = v.day
		}
		days[i] = c.n
		if slices.Contains(milestones, int(c.n)) {
			reached[i] = c.n
		}
	}
	return days, reached
}

var volunteerSchema = store.Columns("name", store.Text, "runner_no", store.Int32, "role", store.Text, "course", store.Text, "run_date", store.Date,
	"days", store.Int32, "milestone", store.Int32, "listed_at", store.Text, "protected", store.Bool, "hidden", store.Bool)

// writeVolunteers writes who helped, with their days so far.
func (pl *Pipeline) writeVolunteers(ctx context.Context, w *work) error {
	lines, err := pl.volunteerLines(ctx)
	if err != nil {
		return err
	}
	before, err := pl.readHistoryTable()
	if err != nil {
		return err
	}
	find := w.field.finder(w.people)
	number := func(who string) int32 {
		if k := find(who); k >= 0 {
			return w.people.no[k]
		} else {
			return k
		}
	}
	days, reached := volunteerDays(lines, before, number, pl.Settings.VolunteerMilestones)
	meant := w.mayBeMeant(lines, number, pl.Settings.AgeNotKnown)
	return pl.insertRows(ctx, "record.volunteer", volunteerSchema, len(lines), func(r row, i int) {
		v := lines[i]
		at := v.at
		if v.table == volunteerTable {
			at = filepath.Base(at) // the folder may be moved
		}
		r.texts(0, v.name)
		r.ints(1, max(number(v.name), 0))
		r.texts(2, v.role, v.course)
		r.day(4, v.day)
		r.ints(5, days[i], reached[i])
		r.texts(7, at)
		child, hidden := meant(v)
		r.yesNo(8, child)
		r.yesNo(9, hidden)
	})
}

// mayBeMeant says of somebody who can't be told to be one runner whether it may
// be a child, and whether it may be somebody who asked not to be shown: of a
// name that several runners have, each may be meant.
func (w *work) mayBeMeant(lines []volunteerLine, number func(string) int32, ageNotKnown string) func(volunteerLine) (child, hidden bool) {
	f, p := w.field, w.people
	named := map[string][]int32{} // lines of those who have the name
	for _, v := range lines {
		if number(v.name) == severalRunners {
			named[name.Parse(v.name).Full] = nil
		}
	}
	if len(named) > 0 {
		for i := range f.n {
			if p.of[i] < 0 {
				continue
			}
			k := f.person[f.name[i]].Full
			if list, asked := named[k]; asked {
				named[k] = append(list, int32(i))
			}
		}
	}
	return func(v volunteerLine) (child, hidden bool) {
		switch number(v.name) {
		case noRunner:
			return ageNotKnown == ageNotKnownChild, false
		case severalRunners:
			for _, i := range named[name.Parse(v.name).Full] {
				window := p.window[p.of[i]]
				least, _, known := window.On(v.day)
				child = child || known && least < 18 || f.counts[i]&mayBeChild != 0
				hidden = hidden || w.wishes.hidden[p.no[p.of[i]]]
			}
		}
		return child, hidden
	}
}

// explainHelper says what became of a row of a list of volunteers.
func (pl *Pipeline) explainHelper(ctx context.Context, e store.Entry, tab string, rowNumber int, w io.Writer) error {
	return pl.each(ctx, fmt.Sprintf(`select h.course, h.run_date, h.name, h.role, coalesce(v.runner_no, 0)::integer, coalesce(v.days, 0)::integer, coalesce(v.milestone, 0)::integer
		from record.helper h join sheet.part p on p.part_no = h.part_no
		left join record.volunteer v on v.name = h.name and v.role = h.role and v.course = h.course and v.run_date = h.run_date
		where p.sheet_no = %d and h.row_number = %d and ('%s' = '' or p.tab = '%[3]s') order by p.part_no`, e.Seq, rowNumber, strings.ReplaceAll(tab, "'", "''")), func(rows *sql.Rows) error {
		var course, who, role string
		var day time.Time
		var runner, days, milestone int32
		if err := rows.Scan(&course, &day, &who, &role, &runner, &days, &milestone); err != nil {
			return err
		}
		known := "no one runner of that name is known"
		if runner > 0 {
			known = fmt.Sprintf("runner R%d", runner)
		}
		fmt.Fprintf(w, "\nWhat became of it\n  Volunteer: %s, %s, at %s on %s\n  Known as: %s\n", who, cmp.Or(role, "no role"), course, unit.DayOf(day), known)
		if days > 0 {
			fmt.Fprintf(w, "  Days of helping so far: %d%s\n", days, map[bool]string{true: ", a milestone"}[milestone > 0])
		}
		return nil
	})
}
