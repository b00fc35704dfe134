package sheet

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/place"
	"lapwing/pipeline/text"
)

// ownBook is a workbook that Lapwing has written, by its properties; the zero ownBook is any
// other.
type ownBook struct {
	subject string // of the package text: text.WeeklyBook, …
	title   string // "Alder Bank, Saturday 3 January 2026"
}

// resultTab is the tab of a weekly report on which everybody stands. Its other tabs say again
// what stands on it, or sum it up.
const resultTab = "Result"

// ownBookOf looks whether Lapwing has written a workbook. A weekly report whose tab of results
// is gone is like any other workbook.
func ownBookOf(f *excelize.File) ownBook {
	p, err := f.GetDocProps()
	if err != nil || p.Creator != text.BookMaker {
		return ownBook{}
	}
	if p.Subject == text.WeeklyBook {
		if i, err := f.GetSheetIndex(resultTab); err != nil || i < 0 {
			return ownBook{}
		}
	}
	return ownBook{p.Subject, p.Title}
}

// refused says why the workbook is no list of results; "" where it may be one.
func (b ownBook) refused(name string) string {
	switch b.subject {
	case text.DeskBook:
		return fmt.Sprintf("it is the workbook that Lapwing wrote for the results desk, no sheet of results. To have read what was written into its boxes: lapwing correct --from %s", text.Typed(baseName(name)))
	case text.MatchBook:
		return fmt.Sprintf("it is the list of doubtful pairs that Lapwing wrote, no sheet of results. To have read what was decided on it: lapwing match apply %s", text.Typed(baseName(name)))
	case text.SeasonBook, text.StandingBook, text.WithdrawnBook:
		return fmt.Sprintf("it is a report that Lapwing wrote (%s), no sheet of results of a run", b.title)
	}
	return ""
}

// weekly says whether it is the report of a run.
func (b ownBook) weekly() bool { return b.subject == text.WeeklyBook }

// saysOf is what stands about the run elsewhere than on the tab of results: the title of the
// book, and under that of its first tab the day and the distance before the issue, whose
// corrections have a day of their own.
func (b ownBook) saysOf(first *grid) (says []string) {
	if b.title != "" {
		says = append(says, b.title)
	}
	if first != nil && first.len() > 1 {
		_, cells := first.at(1)
		pieces := strings.Split(titleText(cells), "|")
		for _, piece := range pieces[:len(pieces)-1] {
			says = append(says, trim(piece))
		}
	}
	return says
}

// noteOwn tells which tab of a weekly report was read.
func (s *Sheet) noteOwn() {
	s.Problems = append(s.Problems, place.Problem{Place: place.Place{Sheet: s.Name, Tab: resultTab}, Severity: place.Note, Kind: "own-report", Read: s.own.title,
		Do: "It is a weekly report that Lapwing wrote. Its tab " + resultTab + " was read; the other tabs say the same again."})
}

// OwnReport says whether the sheet is a weekly report that Lapwing has written. Its lines come
// from another sheet, and juniors and those who asked for it stand on it without their names.
func (s *Sheet) OwnReport() bool { return s.own.weekly() }
