package reports

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// withdrawnTab is the only tab of the workbooks of a result that was withdrawn.
const withdrawnTab = "Withdrawn"

var errWithdrawn = errors.New("the result had been withdrawn")

// Withdrawn issues the reports of a run anew, where there are any, as a notice
// that its result was withdrawn and why: nobody should go on pinning up a
// result that no sheet stands behind. Reports that somebody has edited stay,
// and the notice goes beside them. It gives the paths written.
func Withdrawn(ctx context.Context, q Queryer, o Options, course string, on unit.Day, session, why string) ([]string, error) {
	reg, err := o.register()
	if err != nil {
		return nil, err
	}
	report := weeklyName(course, on, session)
	reg.mu.Lock()
	n := len(reg.by[report])
	reg.mu.Unlock()
	if n == 0 {
		return nil, nil
	}
	name := course
	courses, err := readCourses(ctx, q)
	if err != nil {
		return nil, err
	}
	for _, c := range courses {
		if c.course == course {
			name = c.name
		}
	}
	title := name + ", " + longDay(on)
	if session != "" {
		title += ", " + session
	}
	lines := []string{"The result of this run has been withdrawn: " + why + ".",
		"Please take down and delete earlier issues. What was sent, printed or copied can't be recalled from here.",
		"If the run is loaded again, its reports are issued again."}
	page := title + "\n\n" + strings.Join(lines, "\n\n") + "\n"
	book := func(i issueOf) ([]byte, error) {
		tab := &table.Tab{Name: withdrawnTab, OnePage: true}
		tab.Add(table.Title{Level: 1, Text: title})
		for k, l := range lines {
			tab.Add(table.Para{Text: l, Bold: k == 0})
		}
		return workbook(&table.Book{Title: title, Subject: text.WithdrawnBook, Made: on.String(),
			Footer: fmt.Sprintf("Issue %d; withdrawn", i.Number), Tabs: []*table.Tab{tab}})
	}
	plain := func(head string) func(issueOf) ([]byte, error) {
		return func(issueOf) ([]byte, error) { return []byte(head + page), nil }
	}
	return reg.publish(o.Dir, report, o.Mark, []file{{".xlsx", page, book}, {"-desk.xlsx", page, book}, {".md", page, plain("# ")}, {".txt", page, plain("")}},
		func(map[string]string) (changes, error) { return because(why), nil })
}
