package pipeline

import (
	"context"
	"os"
	"runtime/debug"
)

// manyLines is the number of lines from which memory is given back sooner: some
// 350 bytes each are held while figures are made, and a sheet of 50 MB is to need
// 512 MB or little more.
const manyLines = 400_000

// watchMemory lets the garbage collector run at half the growth that is usual
// where an archive is large: the columns of a refresh are long-lived, and room
// for as much garbage again would be hundreds of megabytes. It costs 4 to 9 % of
// processor time. GOGC in the environment goes before.
func (pl *Pipeline) watchMemory(ctx context.Context) error {
	if os.Getenv("GOGC") != "" {
		return nil
	}
	lines := 0
	if err := pl.DB.Get(ctx, "select count(*) from record.line", &lines); err != nil {
		return err
	}
	setGrowth(lines >= manyLines)
	return nil
}

// watchLoad does the same while a large sheet is read: its bytes and, of a
// workbook, its cells stay until the last line is written.
func watchLoad(n int, size func(i int) int64) {
	if os.Getenv("GOGC") != "" {
		return
	}
	for i := range n {
		if size(i) > batchBytes {
			setGrowth(true)
			return
		}
	}
}

func setGrowth(half bool) {
	percent := 100
	if half {
		percent = 50
	}
	debug.SetGCPercent(percent)
}
