package main

import (
	"fmt"
	"os"
	"runtime/pprof"

	"lapwing/pipeline"
)

// startProfile begins a processor profile where --cpuprofile asks for one.
func (a *app) startProfile() error {
	if a.profile == "" {
		return nil
	}
	f, err := os.Create(a.profile)
	if err != nil {
		return err
	}
	return pprof.StartCPUProfile(f)
}

// stopProfile ends the profile; it does nothing where there is none.
func (a *app) stopProfile() { pprof.StopCPUProfile() }

// printTimings says how long each piece of work took, where --timings asks.
func (a *app) printTimings(pl *pipeline.Pipeline) {
	if !a.timings {
		return
	}
	for _, t := range pl.Timings {
		fmt.Fprintf(a.err, "timing\t%s\t%.3f\n", t.What, t.Seconds)
	}
}
