package main

import (
	"fmt"
	"os"
	"runtime"
	"runtime/metrics"
	"runtime/pprof"
	"time"

	"lapwing/pipeline"
)

// startProfile begins a processor profile where --cpuprofile asks for one, and
// to watch the heap where --memprofile does.
func (a *app) startProfile() error {
	if a.heapProfile != "" {
		runtime.MemProfileRate = 64 << 10
		a.heapWatch = make(chan chan error)
		go watchHeap(a.heapProfile, a.heapWatch)
	}
	if a.profile == "" {
		return nil
	}
	f, err := os.Create(a.profile)
	if err != nil {
		return err
	}
	return pprof.StartCPUProfile(f)
}

// stopProfile ends the profiles; it does nothing where there are none.
func (a *app) stopProfile() {
	pprof.StopCPUProfile()
	if a.heapWatch == nil {
		return
	}
	done := make(chan error)
	a.heapWatch <- done
	if err := <-done; err != nil {
		fmt.Fprintln(a.err, "heap profile:", err)
	}
}

// watchHeap writes a heap profile to a file whenever the program's own heap
// has grown by a tenth since the last one, so that the file shows the heap near
// its peak. Memory of the database is not in it.
func watchHeap(path string, stop chan chan error) {
	live := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	var most uint64
	var err error
	tick := time.NewTicker(100 * time.Millisecond)
	defer tick.Stop()
	for {
		select {
		case done := <-stop:
			done <- err
			return
		case <-tick.C:
		}
		metrics.Read(live)
		if now := live[0].Value.Uint64(); now > most+most/10 {
			most = now
			f, e := os.Create(path)
			if e == nil {
				e = pprof.Lookup("heap").WriteTo(f, 0)
				if c := f.Close(); e == nil {
					e = c
				}
			}
			err = e
		}
	}
}

// printTimings says how long each piece of work took, where --timings asks.
func (a *app) printTimings(pl *pipeline.Pipeline) {
	if !a.timings {
		return
	}
	for _, t := range pl.Timings {
		fmt.Fprintf(a.err, "timing\t%s\t%.3f\n", t.What, t.Seconds)
	}
}
