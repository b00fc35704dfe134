package pipeline

import (
	"context"
	"os"
	"runtime/debug"
)

// manyLines is the number of lines from which memory is given back sooner.
const manyLines = 2_000_000

// watchMemory lets the garbage collector run at half the growth that is usual
// where an archive is large: the columns of a refresh are long-lived, and room
// for as much garbage again would be gigabytes. It costs some 4 % of processor
// time. GOGC in the environment goes before.
func (pl *Pipeline) watchMemory(ctx context.Context) error {
	if os.Getenv("GOGC") != "" {
		return nil
	}
	lines := 0
	if err := pl.DB.Get(ctx, "select count(*) from record.line", &lines); err != nil {
		return err
	}
	percent := 100
	if lines >= manyLines {
		percent = 50
	}
	debug.SetGCPercent(percent)
	return nil
}
