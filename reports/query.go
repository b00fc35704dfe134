package reports

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"strings"
	"time"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
	queries "lapwing/sql"
)

// Queryer asks the database; the store's connection is one.
type Queryer interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// Options says where reports go and which rules are in force.
type Options struct {
	Dir         string   // folder of the reports
	ArchiveDir  string   // archive folder: the register of what was written, edited templates
	AgeStandard int      // edition of the age standards, e.g. 2025
	AgeRule     age.Rule // who is in which age group; the zero Rule is age.DefaultRule
	Version     string   // of the program, printed on the Notes tab
	Model       string   // version of the course-speed model, printed on the Notes tab
	// CorrectionDays is how many days after a run its reports stay
	// provisional, 0 for 7.
	CorrectionDays int
	// AsOf is the day that "provisional" is reckoned from; 0 means the newest
	// run in the archive.
	AsOf unit.Day
	// Why says in a line why reports are written again; "" for what Events tell.
	Why string
	// Mark is how far the archive has got, kept with every issue. EventsSince
	// lists what was done to it since a mark, sheets first, each in order; it is
	// asked only when there is a new issue, may give earlier events as well, and
	// must be safe to call from several goroutines. nil: nobody knows.
	Mark        Mark
	EventsSince func(Mark) ([]Event, error)
	// Register is shared between reports written at the same time; nil opens
	// the archive's own.
	Register *Register
}

// groupsByDay says whether age groups go by the age on the day, groupRule states the rule.
func (o Options) groupsByDay() bool { return o.AgeRule.Reckoning == age.ByDay }

func (o Options) groupRule() string { return o.ageRule().Words() }

// groupScheme lists the groups.
func (o Options) groupScheme() string { return o.ageRule().Scheme.Words() }

func (o Options) ageRule() age.Rule {
	if o.AgeRule.Scheme.Masters == 0 {
		return age.DefaultRule()
	}
	return o.AgeRule
}

// byAgeGroup is s with "age group on the day" as it has to be called by the rule in force,
// which is stated after it where it is another one.
func (o Options) byAgeGroup(s string) string {
	if o.groupsByDay() {
		return s
	}
	return strings.Replace(s, "age group on the day", "age group", 1) + " " + o.groupRule()
}

func (o Options) correctionDays() unit.Day {
	if o.CorrectionDays > 0 {
		return unit.Day(o.CorrectionDays)
	}
	return 7
}

// madeWith names the program, the model and the age standards that the figures
// of a report come from; "" where none is known.
func (o Options) madeWith() string {
	var made []string
	if o.Version != "" {
		made = append(made, "Lapwing "+o.Version)
	}
	if o.Model != "" {
		made = append(made, "course-speed model "+o.Model)
	}
	if o.AgeStandard > 0 {
		made = append(made, fmt.Sprintf("age standards edition %d", o.AgeStandard))
	}
	if len(made) == 0 {
		return ""
	}
	return strings.Join(made, ", ") + "."
}

func (o Options) register() (*Register, error) {
	if o.Register != nil {
		return o.Register, nil
	}
	return OpenRegister(o.ArchiveDir)
}

// ask runs sql/reports/<name>.sql and gives each row to scan.
func ask(ctx context.Context, q Queryer, name string, scan func(*sql.Rows) error, args ...any) error {
	text, err := queries.Files.ReadFile("reports/" + name + ".sql")
	if err != nil {
		return err
	}
	return askText(ctx, q, name, string(text), scan, args...)
}

// askAbout is ask for a file that holds the place "/* what */ (0)" for a list
// of numbers. They are written into the text, for the database plans well and
// passes over what it need not read only where it sees constants.
func askAbout(ctx context.Context, q Queryer, name, what string, numbers []int32, scan func(*sql.Rows) error, args ...any) error {
	text, err := queries.Files.ReadFile("reports/" + name + ".sql")
	if err != nil {
		return err
	}
	list := make([]byte, 0, 8*len(numbers))
	for i, n := range numbers {
		if i > 0 {
			list = append(list, ',')
		}
		list = strconv.AppendInt(list, int64(n), 10)
	}
	before, after, ok := strings.Cut(string(text), "/* "+what+" */ (0)")
	if !ok {
		return fmt.Errorf("sql/reports/%s.sql has no place for a list of %s", name, what)
	}
	return askText(ctx, q, name, before+"("+string(list)+")"+after, scan, args...)
}

func askText(ctx context.Context, q Queryer, name, text string, scan func(*sql.Rows) error, args ...any) error {
	rows, err := q.QueryContext(ctx, text, args...)
	if err != nil {
		return fmt.Errorf("sql/reports/%s.sql: %w", name, err)
	}
	defer rows.Close()
	for rows.Next() {
		if err := scan(rows); err != nil {
			return fmt.Errorf("sql/reports/%s.sql: %w", name, err)
		}
	}
	if err := rows.Err(); err != nil {
		return fmt.Errorf("sql/reports/%s.sql: %w", name, err)
	}
	return nil
}

// day scans a DATE.
type day struct {
	Day unit.Day
	OK  bool
}

func (d *day) Scan(v any) error {
	switch t := v.(type) {
	case nil:
		*d = day{}
	case time.Time:
		*d = day{unit.DayOf(t.UTC()), true}
	default:
		return fmt.Errorf("a date came as %T", v)
	}
	return nil
}
