package pipeline

import (
	"context"
	"fmt"
	"os"

	"lapwing/pipeline/store"
)

// Fault is an invariant that does not hold.
type Fault struct {
	What string `json:"what"`
	Rows int    `json:"rows"`
}

// Check runs every invariant of sql/check, and compares the archive folder
// with its ledger: each copy must be there with the bytes that its name says.
func (pl *Pipeline) Check(ctx context.Context) (faults []Fault, checked int, err error) {
	files, err := sqlFolder("check")
	if err != nil {
		return nil, 0, err
	}
	for _, f := range files {
		n, err := pl.checkFile(ctx, f.Path)
		if err != nil {
			return nil, checked, err
		}
		checked++
		if n > 0 {
			faults = append(faults, Fault{"Broken rule: " + f.Grain, n})
		}
	}
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, checked, err
	}
	bad := 0
	for i, e := range ledger {
		pl.Progress.Step("Checking the copies", int64(i), int64(len(ledger)))
		if err := ctx.Err(); err != nil {
			return nil, checked, err
		}
		data, err := os.ReadFile(pl.Archive.Copy(e))
		if err != nil || store.Hash(data) != e.Hash {
			bad++
			faults = append(faults, Fault{fmt.Sprintf("The copy of %s is missing or changed; restore %s from a backup", e.Path, pl.Archive.Copy(e)), 1})
		}
		checked++
	}
	pl.Progress.Done()
	return faults, checked, nil
}

// Rebuild makes the whole database again from the archive folder.
func (pl *Pipeline) Rebuild(ctx context.Context) error {
	if err := pl.startOver(ctx); err != nil {
		return err
	}
	_, err := pl.Refresh(ctx, true)
	return err
}
