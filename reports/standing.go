package reports

import (
	"context"
	"fmt"
	"strings"

	"lapwing/pipeline/unit"
	"lapwing/reports/table"
)

// StandingOptions say which season a card looks at.
type StandingOptions struct {
	// From is the first day of the season; 0 means 1 January of the year of
	// the newest run.
	From unit.Day
}

// Card is a runner's standing: built once, shown as text, workbook or page.
type Card struct {
	o Options
	*standingRows
}

// Standing builds the card of a runner, who is an id such as R12.
//
// A runner whom the archive doesn't know is an error.
func Standing(ctx context.Context, q Queryer, o Options, who string, s StandingOptions) (*Card, error) {
	d, err := readStanding(ctx, q, who, s)
	if err != nil {
		return nil, err
	}
	return &Card{o, d}, nil
}

// section is a part of the card: a heading, sentences, a table.
type section struct {
	title string
	paras []string
	table *table.Table
	// history: the table is a part of the History tab of a workbook.
	history bool
	chart   bool // the chart of times stands here
}

// lineWidth is the width of the card on a terminal.
const lineWidth = 80

// Text is the card for a terminal of 80 columns, in plain characters. It is
// for the person and the desk, not for publication.
func (c *Card) Text() string {
	var b strings.Builder
	head := c.title(c.name)
	b.WriteString(head + "\n" + strings.Repeat("=", min(lineWidth, len([]rune(head)))) + "\n")
	for _, s := range c.sections(false) {
		b.WriteString("\n" + s.title + "\n" + strings.Repeat("-", len([]rune(s.title))) + "\n")
		for _, p := range s.paras {
			b.WriteString(table.Wrap(p, lineWidth) + "\n")
		}
		if s.chart {
			b.WriteString(c.textChart())
		}
		if s.table != nil {
			if len(s.paras) > 0 || s.chart {
				b.WriteString("\n")
			}
			s.table.WriteText(&b, lineWidth)
		}
	}
	return b.String()
}

func (c *Card) title(name string) string {
	s := name
	if c.group != "" {
		s += ", " + groupLabel(c.sex, c.group)
	}
	return s + " (" + c.id + ")"
}

// Write writes the card as files beside the other reports: a workbook, a page
// to send, or both. The page is for publication: it refuses a hidden person
// and leaves out of the card of somebody who may be under 18 all that compares
// or judges. It gives the paths written, none where nothing changed.
func (c *Card) Write(asWorkbook, asPage bool) ([]string, error) {
	if asPage && c.hidden {
		return nil, fmt.Errorf("%s has asked not to be shown; no page is written. The card on the terminal and --xlsx are for the person and the desk", c.id)
	}
	reg, err := c.o.register()
	if err != nil {
		return nil, err
	}
	why := func(report string) func(map[string]string) (changes, error) {
		return func(map[string]string) (changes, error) { return c.why(reg.last(report)) }
	}
	var out []string
	if asWorkbook {
		name := "standing_" + fileSafe(c.id)
		w, err := reg.publish(c.o.Dir, name, c.o.Mark, []file{{".xlsx", c.book(issueOf{Number: 1}).Text(),
			func(i issueOf) ([]byte, error) { return workbook(c.book(i)) }}}, why(name))
		out = append(out, w...)
		if err != nil {
			return out, err
		}
	}
	if asPage {
		page, err := c.page(issueOf{Number: 1})
		if err != nil {
			return out, err
		}
		name := "standing-page_" + fileSafe(c.id)
		w, err := reg.publish(c.o.Dir, name, c.o.Mark, []file{{".html", string(page), c.page}}, why(name))
		out = append(out, w...)
		if err != nil {
			return out, err
		}
	}
	return out, nil
}
