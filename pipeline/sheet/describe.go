package sheet

import (
	"fmt"
	"io"
	"strings"

	"lapwing/pipeline/place"
)

// Describe says in plain words how the sheet was read: how it is divided,
// which column was taken for what and why, course and date, and the first rows.
// What was noticed is in the problems.
func (s *Sheet) Describe(w io.Writer) {
	fmt.Fprintf(w, "%s\n", s.Name)
	if kind, ok := bookKinds[s.Format]; ok {
		fmt.Fprintf(w, "  a workbook (%s)%s\n", kind, s.Dialect)
	} else {
		fmt.Fprintf(w, "  text, %s, %s\n", s.Encoding, s.Dialect)
	}
	for _, p := range s.Parts {
		p.describe(w)
	}
}

// bookKinds are the kinds of workbooks as people call them.
var bookKinds = map[string]string{"xlsx": "XLSX", "xls": "XLS", "ods": "OpenDocument"}

func (p *Part) describe(w io.Writer) {
	kind := map[string]string{"full": "results", "excerpt": "results of some of the field", "times": "times without names", "names": "names without times", Volunteers: "volunteers"}[p.Kind]
	switch {
	case p.Tab != "" && p.Hidden:
		fmt.Fprintf(w, "  tab %q (hidden): %s\n", p.Tab, kind)
	case p.Tab != "":
		fmt.Fprintf(w, "  tab %q: %s\n", p.Tab, kind)
	default:
		fmt.Fprintf(w, "  %s\n", kind)
	}
	for i, t := range p.Titles {
		if i == 5 {
			fmt.Fprintf(w, "    … %d title lines more\n", len(p.Titles)-5)
			break
		}
		fmt.Fprintf(w, "    title     %s\n", shorten(t, 90))
	}
	show := func(what string, f Found) {
		switch {
		case f.Value == "" && f.From == "":
		case f.Value == "":
			fmt.Fprintf(w, "    %-9s from %s (%s)\n", what, f.From, f.Why)
		case f.Why == "" || f.Why == f.From:
			fmt.Fprintf(w, "    %-9s %s, %s\n", what, f.Value, f.From)
		default:
			fmt.Fprintf(w, "    %-9s %s, from %s: %s\n", what, f.Value, withArticle(f.From), f.Why)
		}
	}
	if !p.Course.OK() {
		fmt.Fprintf(w, "    course    not found\n")
	}
	show("course", p.Course)
	switch d := p.Date; {
	case d.Settled && d.Why == "":
		fmt.Fprintf(w, "    date      %s, from %s: %s\n", d.Day.Long(), d.From, d.Text)
	case d.Settled:
		fmt.Fprintf(w, "    date      %s, from %s: %s; %s\n", d.Day.Long(), d.From, d.Text, d.Why)
	case d.From != "" && d.Text != "" && d.Why != "":
		fmt.Fprintf(w, "    date      from %s: %s; %s\n", d.From, d.Text, d.Why)
	case d.From != "":
		fmt.Fprintf(w, "    date      from %s: %s%s\n", d.From, d.Text, d.Why)
	default:
		fmt.Fprintf(w, "    date      not found\n")
	}
	show("session", p.Session)
	if d := p.Distance; d.Value != "" {
		d.Value += " m"
		show("distance", d)
	}
	if p.HeadingRow > 0 {
		fmt.Fprintf(w, "    heading   in row %d\n", p.HeadingRow)
	} else {
		fmt.Fprintf(w, "    heading   none; the columns are known by their values\n")
	}
	for _, c := range p.Columns {
		fmt.Fprintf(w, "    column %-3s %-13s %s\n", letters(c.Index), c.Meaning, c.Why)
	}
	n := 0
	p.Each(func(row int, cells []string) error {
		fmt.Fprintf(w, "    row %-5d %s\n", row, rowText(cells))
		n++
		if n == 3 {
			return errStop
		}
		return nil
	}) // an error of a later row is met again, and reported, when the rows are read
	if len(p.Skipped) > 0 {
		count := map[string]int{}
		var order []string
		for _, sk := range p.Skipped {
			if count[sk.Why] == 0 {
				order = append(order, sk.Why)
			}
			count[sk.Why]++
		}
		var says []string
		for _, why := range order {
			says = append(says, fmt.Sprintf("%d %s", count[why], why))
		}
		fmt.Fprintf(w, "    left out  %s\n", strings.Join(says, ", "))
	}
}

// letters names a column as a spreadsheet does.
func letters(i int) string { return place.ColumnLetters(i) }

// withArticle is where something was found, as it stands in a sentence: the title line 1,
// another tab.
func withArticle(from string) string {
	if strings.HasPrefix(from, "another ") || strings.HasPrefix(from, "other ") {
		return from
	}
	return "the " + from
}
