package reports

import (
	"errors"
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"lapwing/reports/table"
)

// mostChanges is how many changes a workbook lists one by one.
const mostChanges = 20

// nameColumn is where the Result tab has the name.
const nameColumn = 2

// changesSince says in a line each why there is a new issue and what changed
// since the one before, written at the mark since, whose workbook stands at
// path.
func (d *weekly) changesSince(path string, since Mark) (changes, error) {
	c, err := d.why(since)
	if err != nil {
		return c, err
	}
	lines := d.differences(path)
	return changes{append(c.public, lines...), append(c.desk, lines...)}, nil
}

// changedWords says on the board what changed since the issue before, in a line
// or two: whoever stands there has seen the other one.
func (d *weekly) changedWords(i issueOf) string {
	var lines []string
	for _, c := range i.Changes {
		if strings.HasPrefix(c, "Place ") {
			lines = append(lines, strings.TrimSuffix(c, "."))
		}
	}
	const most = 3
	if i.Number < 2 || len(lines) == 0 {
		return ""
	}
	s := fmt.Sprintf("Changed since issue %d: %s", i.Number-1, strings.Join(lines[:min(most, len(lines))], "; "))
	if len(lines) > most {
		s += fmt.Sprintf("; and %d more, see the page Notes", len(lines)-most)
	}
	return s + "."
}

// differences compares the result with that of the workbook at path, the issue
// before as it now stands. A name that is gone is not repeated: it may be gone
// because somebody asked.
func (d *weekly) differences(path string) []string {
	before, err := readResult(path)
	if errors.Is(err, errWithdrawn) {
		return []string{"The result had been withdrawn and stands again."}
	}
	if err != nil {
		return []string{"The issue before can't be read any more, so the changes are not listed."}
	}
	var res *table.Table
	for _, b := range d.resultTab().Blocks {
		if f, ok := b.(table.Full); ok {
			res = f.Table
		}
	}
	var lines []string
	n := 0
	say := func(s string) {
		if n++; n <= mostChanges {
			lines = append(lines, s)
		}
	}
	// Of who is hidden, may be under 18 or has no name any more, what stood there
	// before may be just what must not be read any more.
	closed := map[string]bool{}
	for i := range d.results {
		if r := &d.results[i]; r.hidden || r.protected {
			closed[r.publicName()] = true
		}
	}
	used := map[string]int{}
	for _, row := range res.Rows {
		now := make([]string, len(res.Columns))
		for c, col := range res.Columns {
			if c < len(row.Cells) {
				now[c] = row.Cells[c].Show(col.Kind)
			}
		}
		key := now[0]
		was := before.take(key, used)
		if was == nil {
			say(fmt.Sprintf("Place %s, %s: new.", orNone(key), now[nameColumn]))
			continue
		}
		var parts []string
		for c, col := range res.Columns {
			if now[c] != was[c] {
				switch {
				case c == nameColumn && was[c] != nobody:
					parts = append(parts, "name put right")
				default:
					parts = append(parts, fmt.Sprintf("%s %s, was %s", strings.ToLower(col.Head), orNone(now[c]), orNone(was[c])))
				}
			}
		}
		switch {
		case len(parts) == 0:
		case now[nameColumn] != was[nameColumn] && (closed[now[nameColumn]] || now[nameColumn] == nobody):
			say(fmt.Sprintf("Place %s: shown otherwise.", orNone(key)))
		default:
			say(fmt.Sprintf("Place %s, %s: %s.", orNone(key), now[nameColumn], strings.Join(parts, "; ")))
		}
	}
	for _, key := range before.order {
		for range before.rows[key][min(used[key], len(before.rows[key])):] {
			say(fmt.Sprintf("Place %s: no longer listed.", orNone(key)))
		}
	}
	if n > mostChanges {
		lines = append(lines, fmt.Sprintf("and %d more.", n-mostChanges))
	}
	if n == 0 {
		lines = append(lines, "The list of results is the same; other figures differ.")
	}
	return lines
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// oldResult is the Result tab of an earlier workbook: rows of printed cells by
// place.
type oldResult struct {
	order []string
	rows  map[string][][]string
}

// take gives the next row of a place that has not been compared yet.
func (o *oldResult) take(key string, used map[string]int) []string {
	if used[key] >= len(o.rows[key]) {
		return nil
	}
	used[key]++
	return o.rows[key][used[key]-1]
}

func readResult(path string) (*oldResult, error) {
	f, err := excelize.OpenFile(path, excelize.Options{UnzipSizeLimit: 1 << 30})
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if k, err := f.GetSheetIndex(withdrawnTab); err == nil && k >= 0 {
		return nil, errWithdrawn
	}
	rows, err := f.GetRows("Result")
	if err != nil {
		return nil, err
	}
	out := &oldResult{rows: map[string][][]string{}}
	heading := false
	for _, r := range rows {
		if len(r) > 2 && r[0] == "Place" && r[1] == "Time" && r[2] == "Name" {
			heading = true
			continue
		}
		if !heading || len(r) < 3 {
			continue
		}
		for len(r) < 8 {
			r = append(r, "")
		}
		if out.rows[r[0]] == nil {
			out.order = append(out.order, r[0])
		}
		out.rows[r[0]] = append(out.rows[r[0]], r)
	}
	if !heading {
		return nil, fmt.Errorf("%s: no list of results", path)
	}
	return out, nil
}
