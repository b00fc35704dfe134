package pipeline

import (
	"context"
	"errors"
	"fmt"
	"os"

	"lapwing/pipeline/store"
)

// catchUp loads what the ledger has and the database has not, and takes out
// what the ledger no longer has: after a kill between the two, after a
// restored backup, and to make a database again.
func (pl *Pipeline) catchUp(ctx context.Context) error {
	defer pl.stopWith(ctx)()
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return err
	}
	have := map[int]string{}
	keys, err := pl.sheetsInDatabase(ctx)
	if err != nil {
		return err
	}
	for _, k := range keys {
		have[k.seq] = k.hash
	}
	var missing []store.Entry
	for _, e := range ledger {
		if e.State == store.Loaded && have[e.Seq] != e.Hash {
			missing = append(missing, e)
		}
		if e.State == store.Loaded && have[e.Seq] == e.Hash {
			delete(have, e.Seq)
		}
	}
	for n := range have { // in the database, not (or no longer) in the ledger
		if err := pl.dropSheet(ctx, n); err != nil {
			return err
		}
	}
	copies := make([]string, len(missing))
	for i, e := range missing {
		copies[i] = pl.Archive.Copy(e)
	}
	type copyRead struct {
		sheet *parsedSheet
		err   error
	}
	if err := readAhead(ctx, len(missing), pl.workers(), fileSize(copies), func(i int) (r copyRead) {
		r.sheet, r.err = pl.readCopy(missing[i], pl.openOrParse)
		return r
	}, func(from int, batch []copyRead) error {
		parsed := make([]*parsedSheet, len(batch))
		for i, r := range batch {
			if r.err != nil {
				return r.err
			}
			parsed[i] = r.sheet
		}
		pl.Progress.Step("Reading the archive's sheets", int64(from+len(batch)), int64(len(missing)))
		return pl.writeSheets(ctx, parsed)
	}); err != nil {
		return err
	}
	if len(missing) > 0 {
		pl.Progress.Done()
	}
	return nil
}

// parseCopy reads the archive's copy of a sheet, as it was read when it was
// loaded.
func (pl *Pipeline) parseCopy(e store.Entry) (*parsedSheet, error) {
	return pl.readCopy(e, pl.parseSheet)
}

func (pl *Pipeline) readCopy(e store.Entry, read func(name string, data []byte, hand ByHand) (*parsedSheet, error)) (*parsedSheet, error) {
	data, err := pl.copyOf(e)
	if err != nil {
		return nil, err
	}
	p, err := read(e.Path, data, handOf(e))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", e.Path, err)
	}
	p.entry = e
	p.entry.Rows = p.rows()
	return p, nil
}

// copyOf gives the bytes of a sheet as they were loaded.
func (pl *Pipeline) copyOf(e store.Entry) ([]byte, error) {
	data, err := os.ReadFile(pl.Archive.Copy(e))
	if err != nil {
		return nil, fmt.Errorf("the archive's copy of %s can't be read: %w; restore the folder from a backup", e.Path, err)
	}
	if h := store.Hash(data); h != e.Hash {
		return nil, fmt.Errorf("the archive's copy of %s (%s) has changed; restore it from a backup", e.Path, pl.Archive.Copy(e))
	}
	return data, nil
}

// dropSheet takes a sheet out of the database.
func (pl *Pipeline) dropSheet(ctx context.Context, sheetNo int) error {
	return pl.DB.Transaction(ctx, func() error {
		for _, q := range []string{
			"delete from record.line where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from record.helper where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from sheet.column where part_no in (select part_no from sheet.part where sheet_no = ?)",
			"delete from sheet.problem where sheet_no = ?",
			"delete from sheet.part where sheet_no = ?",
			"delete from sheet.sheet where sheet_no = ?",
		} {
			if err := pl.DB.Exec(ctx, q, sheetNo); err != nil {
				return err
			}
		}
		// numbers of parts and lines are free to be given again
		return errors.Join(pl.setState(ctx, "figures", ""), pl.setState(ctx, stateBase, ""))
	})
}
