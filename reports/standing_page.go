package reports

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"

	"lapwing/reports/table"
)

//go:embed templates/standing.html.tmpl
var standingPage string

type pageSection struct {
	Title string
	Paras []string
	Chart template.HTML
	Heads []pageCell
	Rows  [][]pageCell
	Signs []string // what the signs of the table mean
}

type pageCell struct {
	Text  string
	Right bool
}

// page is the card as one self-contained page: no scripts, no fonts or
// pictures from elsewhere, nothing about anybody else but times. A later
// issue says at its foot why there is one.
func (c *Card) page(i issueOf) ([]byte, error) {
	t, err := template.New("standing").Parse(standingPage)
	if err != nil {
		return nil, err
	}
	name := publicName(c.name, c.protected, c.hidden)
	var p struct {
		Title, Under string
		Sections     []pageSection
		Issue        []string
		Made         string
	}
	if p.Title = name; c.group != "" && !c.smallGroup() {
		p.Title += ", " + groupLabel(c.sex, c.group)
	}
	p.Under = "Standing on " + longDay(c.latest)
	if i.Number > 1 {
		p.Issue = append([]string{fmt.Sprintf("Issue %d.", i.Number)}, i.Changes...)
	}
	p.Made = "Made with Lapwing"
	if c.o.Version != "" {
		p.Made += " " + c.o.Version
	}
	if c.o.AgeStandard > 0 {
		p.Made += fmt.Sprintf("; age standards edition %d", c.o.AgeStandard)
	}
	for _, s := range c.sections(true) {
		x := pageSection{Title: s.title}
		for _, p := range s.paras { // a figure and its sign stay on one line
			x.Paras = append(x.Paras, strings.ReplaceAll(p, " %", "\u00a0%"))
		}
		if s.chart {
			// The drawing holds only numbers and dates that this program
			// has formatted itself.
			x.Chart = template.HTML(c.svg())
		}
		if s.table != nil {
			x.Heads, x.Rows = pageTable(s.table)
			x.Signs = s.table.Signs()
		}
		p.Sections = append(p.Sections, x)
	}
	var b bytes.Buffer
	if err := t.Execute(&b, p); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func pageTable(t *table.Table) (heads []pageCell, rows [][]pageCell) {
	for _, c := range t.Columns {
		heads = append(heads, pageCell{c.Head, c.Kind.Right()})
	}
	for _, r := range t.Rows {
		row := make([]pageCell, len(t.Columns))
		for i, c := range t.Columns {
			if row[i].Right = c.Kind.Right(); i < len(r.Cells) {
				row[i].Text = unbroken(r.Cells[i].Show(c.Kind))
			}
		}
		rows = append(rows, row)
	}
	return heads, rows
}

// unbroken keeps a few short words, as of a date, on one line.
func unbroken(s string) string {
	const short = 11
	if len(s) > short {
		return s
	}
	return strings.ReplaceAll(s, " ", "\u00a0")
}
