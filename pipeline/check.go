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
	bad, copies, err := pl.badCopies(ctx)
	if err != nil {
		return nil, checked, err
	}
	for _, e := range bad {
		faults = append(faults, Fault{badCopy(pl.Archive.Copy(e), e.Path), 1})
	}
	return faults, checked + copies, nil
}

// badCopies lists the sheets whose copy in the archive is missing or changed,
// and says how many were looked at.
func (pl *Pipeline) badCopies(ctx context.Context) (bad []store.Entry, n int, err error) {
	ledger, err := pl.Archive.Ledger()
	if err != nil {
		return nil, 0, err
	}
	wrong := make([]bool, len(ledger))
	err = pl.Parallel(ctx, "Checking the copies", len(ledger), func(ctx context.Context, i int) error {
		data, err := os.ReadFile(pl.Archive.Copy(ledger[i]))
		wrong[i] = err != nil || store.Hash(data) != ledger[i].Hash
		return nil
	})
	for i, w := range wrong {
		if w {
			bad = append(bad, ledger[i])
		}
	}
	return bad, len(ledger), err
}

func badCopy(path, sheet string) string {
	return fmt.Sprintf("The copy of %s is missing or changed; restore %s from a backup", sheet, path)
}
