package main

import (
	"os"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"lapwing/pipeline"
)

// bar shows how far long work has come, on a terminal and after a second.
type bar struct {
	mu    sync.Mutex
	since time.Time
	what  string
	bar   *progressbar.ProgressBar
}

// progress gives a bar where the messages go to a terminal, else nothing.
func (a *app) progress() pipeline.Progress {
	f, ok := a.err.(*os.File)
	if a.quiet || a.json || !ok || !term.IsTerminal(int(f.Fd())) {
		return nil
	}
	return &bar{since: time.Now()}
}

func (b *bar) Step(what string, done, of int64) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if time.Since(b.since) < time.Second {
		return
	}
	if b.bar == nil {
		b.bar = progressbar.NewOptions64(of, progressbar.OptionSetWriter(os.Stderr), progressbar.OptionClearOnFinish(),
			progressbar.OptionSetWidth(24), progressbar.OptionShowCount(), progressbar.OptionSetPredictTime(false))
	}
	if b.bar.GetMax64() != of {
		b.bar.ChangeMax64(of)
	}
	if what != b.what {
		b.bar.Describe(what)
		b.what = what
	}
	_ = b.bar.Set64(done)
}

func (b *bar) Done() {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.bar != nil {
		_ = b.bar.Finish()
		b.bar = nil
	}
	b.since = time.Now()
}
