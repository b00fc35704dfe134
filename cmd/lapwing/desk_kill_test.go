package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// deskWork is a command of the desk that is killed, and what it leaves: files
// of the archive folder that carry a time are left out of the comparison.
type deskWork struct {
	name string
	args []string
}

// Killed at any moment, what the desk decides has either not been kept or holds
// whole: a correction, a workbook of corrections, a workbook of who is who, a
// sheet withdrawn, a season closed. Given again, the command leaves what it
// leaves when nobody interrupts it.
//
// LAPWING_TEST_KILLS sets the number of kills of each.
func TestKilledDesk(t *testing.T) {
	kills := 2
	if testing.Short() {
		kills = 1
	}
	if s := os.Getenv("LAPWING_TEST_KILLS"); s != "" {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 {
			t.Fatalf("LAPWING_TEST_KILLS=%q: want a number", s)
		}
		kills = n
	}
	base := folderWith(t, matchSheets())
	must(t, base, "load", filepath.Join(base, "sheets"))
	must(t, base, "weekly")
	pairs := exportBook(t, base)
	pairs.decide("Wilhelmina Ashgrove", "Billie Ashgrove", "same person", "her own word")
	pairs.decide("Bartholomew Quince", "Tolly Quince", "different people", "cousins")
	apply := pairs.save()
	desks, err := filepath.Glob(filepath.Join(base, "reports", "*-desk.xlsx"))
	if err != nil || len(desks) == 0 {
		t.Fatalf("no desk workbook: %v", err)
	}
	fillIn(t, desks[0], map[string]map[string]string{"state of the run": {"Answer": "misdirected"}})
	day := strings.TrimSuffix(filepath.Base(desks[0]), "-desk.xlsx")
	course, date, _ := strings.Cut(day, "_")
	sheets, err := filepath.Glob(filepath.Join(base, "sheets", "*"))
	if err != nil || len(sheets) == 0 {
		t.Fatalf("no sheet: %v", err)
	}
	r := rand.New(rand.NewPCG(11, uint64(kills)))
	said := []string{}
	for _, w := range []deskWork{
		{"correct", []string{"correct", course, date, "1", "--time", "31:07", "--yes", "--by", "desk", "--why", "watch"}},
		{"correct from a workbook", []string{"correct", "--from", desks[0], "--yes", "--by", "desk"}},
		{"match apply", []string{"match", "apply", apply, "--by", "desk"}},
		{"sheets withdraw", []string{"sheets", "withdraw", filepath.Base(sheets[0])}},
		{"season close", []string{"season", "--close", "--unfinished"}},
	} {
		t.Run(w.name, func(t *testing.T) {
			calm := t.TempDir()
			copyFolder(t, base, calm)
			began := time.Now()
			if o := child(t, calm, w.args...); o.code != exitOK {
				t.Fatalf("never interrupted: exit %d\n%s%s", o.code, o.out, o.errOut)
			}
			long := time.Since(began)
			whole, done, closed := export(t, base), export(t, calm), closedSeason(t, calm)
			before, after := 0, 0
			for k := range kills {
				dir := t.TempDir()
				copyFolder(t, base, dir)
				c, _, _ := process(t, dir, w.args...)
				ended := start(t, c)
				moment := time.Duration(float64(long) * (float64(k) + r.Float64()) / float64(kills))
				if w.name == "season close" && k%2 == 1 { // between the files that are kept
					within(time.Minute, func() bool { return exists(dir, "archive", "closed") || ended() })
					moment = time.Duration(r.IntN(30)) * time.Millisecond
				}
				within(moment, ended)
				if c.Process.Signal(syscall.SIGKILL) == nil {
					within(time.Minute, ended)
				}
				if o := lapwing(t, dir, "check"); o.code != exitOK {
					t.Fatalf("kill %d: check ends with exit %d\n%s%s", k, o.code, o.out, o.errOut)
				}
				got := export(t, dir)
				switch {
				case !same(got, done) || w.name == "season close" && !exists(dir, "archive", "closed"):
					sameFiles(t, fmt.Sprintf("kill %d, not begun", k), whole, got, 6)
					before++
				default:
					after++
				}
				o := lapwing(t, dir, w.args...)
				again := strings.Contains(o.errOut, "already") || strings.Contains(o.out, "already")
				if o.code != exitOK && !again {
					t.Errorf("kill %d: given again: exit %d\n%s%s", k, o.code, o.out, o.errOut)
				}
				sameFiles(t, fmt.Sprintf("kill %d, given again", k), done, export(t, dir), 6)
				sameFiles(t, fmt.Sprintf("kill %d, the season as awarded", k), closed, closedSeason(t, dir), 0)
				if t.Failed() {
					return
				}
			}
			said = append(said, fmt.Sprintf("%s %d (%d before, %d after)", w.name, kills, before, after))
		})
	}
	t.Logf("kills: %s", strings.Join(said, "; "))
}

func same(a, b map[string]string) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		if b[k] != v {
			return false
		}
	}
	return true
}

// closedSeason gives the files of a closed season.
func closedSeason(t *testing.T, dir string) map[string]string {
	t.Helper()
	if !exists(dir, "archive", "closed") {
		return map[string]string{}
	}
	out := snapshot(t, filepath.Join(dir, "archive", "closed"))
	for name := range out {
		if strings.HasPrefix(name, ".unfinished-") {
			delete(out, name) // replaced when it is written again
		}
	}
	return out
}
