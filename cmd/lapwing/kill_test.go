package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// phase is how far lapwing run had come when it was killed, told by what is on
// disk.
type phase int

const (
	opening   phase = iota // nothing kept yet
	keeping                // copies of sheets, no ledger yet
	linking                // sheets are in the ledger, no runner has an id yet
	computing              // ids are given, no report is noted yet
	reporting              // reports are being written
	ending                 // the process ended before the kill reached it
	phases
)

func (p phase) String() string {
	return [...]string{"opening", "keeping copies", "loading and linking", "figures", "reports", "at or after the end"}[p]
}

// reached says whether a run has come to a phase.
func (p phase) reached(dir string) bool {
	archive := filepath.Join(dir, "archive")
	switch p {
	case keeping:
		copies, _ := os.ReadDir(filepath.Join(archive, "sheets"))
		return len(copies) > 0
	case linking:
		return exists(archive, "sheets", "ledger.csv")
	case computing:
		return exists(archive, "runner_ids.csv")
	case reporting:
		return exists(archive, "written.csv")
	}
	return true
}

// TestKilled kills lapwing run at random moments, several times on its way to
// one finished run, and compares what the finished run leaves with a run that
// was never interrupted.
//
// LAPWING_TEST_KILLS sets the number of kills; from 200 on more of the demo is
// used.
func TestKilled(t *testing.T) {
	kills, sheets := 50, 2
	if testing.Short() {
		kills = 10
	}
	if s := os.Getenv("LAPWING_TEST_KILLS"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 {
			t.Fatalf("LAPWING_TEST_KILLS=%q: want a number", s)
		}
		if kills = n; n >= 200 {
			sheets = 6
		}
	}
	killed(t, kills, sheets, []string{"run"}, 0)
}

// TestKilledLoading does the same to the loading of the whole demo, which
// takes several transactions.
func TestKilledLoading(t *testing.T) {
	kills := 12
	if testing.Short() {
		kills = 3
	}
	killed(t, kills, 0, []string{"load", "sheets"}, 1)
}

func killed(t *testing.T, kills, sheets int, command []string, exit int) {
	r := rand.New(rand.NewPCG(20260103, uint64(kills)))
	calm := demo(t, sheets)
	c, out, errOut := process(t, calm, command...)
	ended := start(t, c)
	var long [phases]time.Duration
	for p, since := opening, time.Now(); p < ending; p++ {
		next := p + 1
		within(time.Minute, func() bool { return next < ending && next.reached(calm) || ended() })
		long[p] = time.Since(since)
		since = time.Now()
	}
	if !within(5*time.Minute, ended) || c.ProcessState.ExitCode() > exit {
		t.Fatalf("never interrupted: %v\n%s%s", c.ProcessState, out, errOut)
	}
	wantExport, wantReports, wantRecord := export(t, calm), reported(t, calm), record(t, calm)

	var landed [phases]int
	for n, chain := 0, 0; n < kills; chain++ {
		dir := demo(t, sheets)
		aims := make([]phase, min(kills-n, 5+r.IntN(4)))
		for i := range aims {
			aims[i] = phase((n + i) % int(ending))
		}
		slices.Sort(aims)
		var moments []string
		for _, aim := range aims {
			c, _, _ := process(t, dir, command...)
			ended := start(t, c)
			within(time.Minute, func() bool { return aim.reached(dir) || ended() })
			within(time.Duration(r.Float64()*float64(long[aim])), ended)
			at := ending
			if c.Process.Signal(syscall.SIGKILL) == nil && within(time.Minute, ended) && !c.ProcessState.Exited() {
				for at = reporting; !at.reached(dir); {
					at--
				}
			}
			landed[at]++
			moments = append(moments, at.String())
			n++
		}
		what := fmt.Sprintf("chain %d, killed in %s", chain, strings.Join(moments, ", "))
		if o := child(t, dir, command...); o.code > exit {
			t.Fatalf("%s: the next run ends with exit %d\n%s%s", what, o.code, o.out, o.errOut)
		}
		if o := lapwing(t, dir, "check"); o.code != exitOK {
			t.Errorf("%s: check ends with exit %d\n%s%s", what, o.code, o.out, o.errOut)
		}
		sameFiles(t, what+": export", wantExport, export(t, dir), 6)
		sameFiles(t, what+": reports", wantReports, reported(t, dir), 0)
		sameNames(t, what+": archive", wantRecord, record(t, dir))
		if t.Failed() {
			break
		}
	}
	var said []string
	for p, n := range landed {
		said = append(said, fmt.Sprintf("%s %d", phase(p), n))
	}
	t.Logf("kills by phase: %s; %d files exported and %d reports equal each time", strings.Join(said, ", "), len(wantExport), len(wantReports))
	if landed[ending]*2 > kills {
		t.Errorf("%d of %d kills came after the end: they show nothing", landed[ending], kills)
	}
}

// start starts a process and gives a function that says whether it has ended.
func start(t *testing.T, c *exec.Cmd) func() bool {
	t.Helper()
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	done := make(chan struct{})
	go func() { _ = c.Wait(); close(done) }()
	t.Cleanup(func() {
		_ = c.Process.Signal(syscall.SIGKILL)
		<-done
	})
	return func() bool {
		select {
		case <-done:
			return true
		default:
			return false
		}
	}
}

// sameNames fails unless two archives hold the same files. Ledgers and
// registers carry times and the order of writing; a list of ids that was cut
// short names other lines for the same ids, which the export compares.
func sameNames(t *testing.T, what string, want, got map[string]string) {
	t.Helper()
	loose := map[string]bool{"sheets/ledger.csv": true, "written.csv": true, "announced.csv": true, "runner_ids.csv": true}
	w, g := map[string]string{}, map[string]string{}
	for n, sum := range want {
		w[n] = sum
		if loose[n] {
			w[n] = ""
		}
	}
	for n, sum := range got {
		g[n] = sum
		if loose[n] {
			g[n] = ""
		}
	}
	sameFiles(t, what, w, g, 5)
}
