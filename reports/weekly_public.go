package reports

import (
	"bytes"
	"fmt"

	"lapwing/pipeline/text"
	"lapwing/reports/table"
)

// workbook renders a book.
func workbook(b *table.Book) ([]byte, error) {
	var w bytes.Buffer
	err := b.WriteWorkbook(&w)
	return w.Bytes(), err
}

// public builds the workbook for everybody.
func (d *weekly) public(i issueOf) *table.Book {
	b := d.book(i)
	b.Tabs = append(b.Tabs, d.boardTab(i), d.resultTab())
	b.Tabs = append(b.Tabs, gather(d.lists())...)
	b.Tabs = append(b.Tabs, present(d.timesTab(), d.attendanceTab())...)
	b.Tabs = append(b.Tabs, d.notesTab(i))
	return b
}

// lists are the tabs with a list each.
func (d *weekly) lists() []*table.Tab {
	return present(d.bestsTab(), d.groupsTab(), d.gradesTab(), d.peopleTab(), d.wheelsTab(), d.recordsTab(), d.clubsTab(), d.helpersTab())
}

// present leaves out the tabs that have nothing to say.
func present(tabs ...*table.Tab) []*table.Tab {
	var out []*table.Tab
	for _, t := range tabs {
		if t != nil {
			out = append(out, t)
		}
	}
	return out
}

func (d *weekly) heading() string {
	s := d.run.courseName + ", " + longDay(d.on)
	if d.session != "" {
		s += ", " + text.Session(d.session)
	}
	return s
}

func (d *weekly) book(i issueOf) *table.Book {
	return &table.Book{
		Title:   d.heading(),
		Subject: text.WeeklyBook,
		Footer:  d.standingOf(i),
		Made:    d.on.String(),
	}
}

// standingOf says which issue this is and whether corrections may still come.
func (d *weekly) standingOf(i issueOf) string {
	s := fmt.Sprintf("Issue %d", i.Number)
	if d.provisional() {
		return s + ", provisional: corrections until " + (d.on + d.o.correctionDays()).Long()
	}
	return s
}

func nameCols(c ...table.Column) []table.Column { return c }
