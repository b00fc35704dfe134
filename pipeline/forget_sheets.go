package pipeline

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
)

// planSheets works out the copies without the person.
func (pl *Pipeline) planSheets(ctx context.Context, p *ForgetPlan, e *eraser, lines personLines) error {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	type outcome struct {
		data []byte
		old  store.Entry
		refs []tableLine
	}
	results := make([]outcome, len(ledger))
	err = pl.Parallel(ctx, "Looking through the sheets", len(ledger), func(ctx context.Context, i int) error {
		entry := ledger[i]
		data, err := os.ReadFile(pl.Archive.Copy(entry))
		if err != nil {
			return fmt.Errorf("the archive's copy of %s can't be read: %w", entry.Path, err)
		}
		now, refs, err := pl.withoutPerson(entry, data, lines[entry.Seq], e)
		if err != nil {
			return fmt.Errorf("%s: %w. Nothing was changed", entry.Path, err)
		}
		if !bytes.Equal(now, data) {
			results[i] = outcome{now, entry, refs}
		}
		return nil
	})
	if err != nil {
		return err
	}
	inUse := map[string]bool{"ledger.csv": true}
	for i, r := range results {
		entry := ledger[i]
		if r.data == nil {
			inUse[filepath.Base(pl.Archive.Copy(entry))] = true
			continue
		}
		p.Sheets++
		old := entry.Hash
		p.hashes[old] = store.Hash(r.data)
		for _, ref := range r.refs {
			e.lines[ref] = true
		}
		entry.Hash = p.hashes[old]
		entry.Path = e.words(entry.Path)
		base := filepath.Base(pl.Archive.Copy(entry))
		inUse[base] = true
		p.files["sheets/"+base] = r.data
	}
	// copies that no line of the ledger stands for (any more) go
	copies, err := os.ReadDir(pl.Archive.File("sheets"))
	if err != nil {
		return err
	}
	for _, c := range copies {
		if !c.IsDir() && !inUse[c.Name()] {
			p.remove = append(p.remove, "sheets/"+c.Name())
		}
	}
	return nil
}

// withoutPerson gives a copy without a person's rows, and the lines that they
// were. Sheets that wait or were withdrawn have no lines in the database: there
// the name decides, if nobody else has it.
func (pl *Pipeline) withoutPerson(entry store.Entry, data []byte, rows []sheet.RowRef, e *eraser) ([]byte, []tableLine, error) {
	hand := handOf(entry)
	o := pl.sheetOptions(hand)
	r := sheet.Redaction{Rows: rows, Keep: keptMeanings, Words: e.spellings, Text: anonymous}
	if entry.State != store.Loaded && e.byName {
		s, err := sheet.Read(entry.Path, data, o)
		if err != nil {
			return nil, nil, err
		}
		if r.Rows, _, err = namedRows(s, e.is); err != nil {
			return nil, nil, err
		}
	}
	now, err := sheet.Redact(entry.Path, data, o, r)
	if err != nil || bytes.Equal(now, data) {
		return data, nil, err
	}
	before, err := pl.parseSheet(entry.Path, data, hand)
	if err != nil {
		return nil, nil, err
	}
	after, err := pl.parseSheet(entry.Path, now, hand)
	if err != nil {
		return nil, nil, fmt.Errorf("without the name it can't be read any more: %w", err)
	}
	if why := unlike(before, after, r.Rows); why != "" {
		return nil, nil, fmt.Errorf("without the name it would be read in another way: %s", why)
	}
	var refs []tableLine
	for _, ref := range r.Rows {
		tab := before.parts[ref.Part].part.Tab
		refs = append(refs, tableLine{lineRef{entry.Hash, tab, ref.Row}, before.tableOf(ref)})
	}
	return now, refs, nil
}

// tableOf says which of several tables side by side on a row is meant, from 1;
// 0 where it is the only one.
func (p *parsedSheet) tableOf(ref sheet.RowRef) int {
	nth, tables := 0, 0
	for k, q := range p.parts {
		if q.part.Tab != p.parts[ref.Part].part.Tab {
			continue
		}
		for i := range q.lines.n {
			if int(q.lines.at(i).Row) == ref.Row {
				tables++
				if k == ref.Part {
					nth = tables
				}
				break
			}
		}
	}
	if tables < 2 {
		return 0
	}
	return nth
}

// unlike says where two readings of a sheet differ in more than the rows that
// were taken out; those must have kept place and time.
func unlike(before, after *parsedSheet, rows []sheet.RowRef) string {
	if len(before.parts) != len(after.parts) {
		return fmt.Sprintf("%d tables instead of %d", len(after.parts), len(before.parts))
	}
	out := map[sheet.RowRef]bool{}
	for _, r := range rows {
		out[r] = true
	}
	for k := range before.parts {
		a, b := before.parts[k], after.parts[k]
		if x, y := runNames(a.runs), runNames(b.runs); !slices.Equal(x, y) {
			return fmt.Sprintf("as %s instead of %s", shortList(y, 3), shortList(x, 3))
		}
		if len(a.helpers) != len(b.helpers) {
			return fmt.Sprintf("%d volunteers instead of %d", len(b.helpers), len(a.helpers))
		}
		for i, x := range a.helpers {
			if y := b.helpers[i]; x != y && !(x.row == y.row && x.course == y.course && x.day == y.day && out[sheet.RowRef{Part: k, Row: int(x.row)}]) {
				return fmt.Sprintf("row %d", x.row)
			}
		}
		if a.lines.n != b.lines.n {
			return fmt.Sprintf("%d lines instead of %d", b.lines.n, a.lines.n)
		}
		for i := 0; i < a.lines.n; i++ {
			x, y := a.lines.at(i), b.lines.at(i)
			if x.Row != y.Row || x.Position != y.Position || x.TimeMS != y.TimeMS || x.Tied != y.Tied {
				return fmt.Sprintf("row %d", x.Row)
			}
			if out[sheet.RowRef{Part: k, Row: int(x.Row)}] {
				finished := y.Status == record.Unnamed || y.Status == record.Repeat
				if !finished && y.Status != x.Status {
					return fmt.Sprintf("row %d is %s", x.Row, y.Status)
				}
				continue
			}
			if x.Name != y.Name || x.Number != y.Number || x.Sex != y.Sex || x.Birth != y.Birth || x.Status != y.Status || x.TakingPart != y.TakingPart {
				return fmt.Sprintf("row %d", x.Row)
			}
		}
	}
	return ""
}
