package main

import (
	"os"
	"runtime/pprof"
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
