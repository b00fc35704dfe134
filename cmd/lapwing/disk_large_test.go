package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lapwing/pipeline/unit"
)

// TestLargeSheetFullDisk loads a season list that is written while it is read,
// with too little room for its lines, for its copy, and for the figures: a
// message, exit 1 and nothing half done; with room the next load completes.
func TestLargeSheetFullDisk(t *testing.T) {
	const results = 60_000
	var season bytes.Buffer
	season.WriteString("position,name,time,course,date,notes\n")
	for i := range results { // nobody is named, so that the figures take no time
		day := unit.NewDay(2014, 1, 4) + unit.Day(7*(i/100))
		fmt.Fprintf(&season, "%d,Unknown,%s,Alder Bank,%s,%d %s\n", i%100+1, unit.Clock(int32(1000+i%100)), day, i, strings.Repeat("the path was wet ", 16))
	}
	if season.Len() < 17<<20 {
		t.Fatalf("the list has only %d bytes, too few to be written as it is read", season.Len())
	}
	failed := 0
	for _, mb := range []int{1, 6, 24} {
		t.Run(fmt.Sprintf("%d MB", mb), func(t *testing.T) {
			room, dir := t.TempDir(), t.TempDir()
			mount(t, "-t", "tmpfs", "-o", fmt.Sprintf("size=%dm", mb), "tmpfs", room)
			if err := os.WriteFile(filepath.Join(dir, "season.csv"), season.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			archive := filepath.Join(room, "archive")
			args := []string{"--archive", archive, "load", "season.csv"}
			o := child(t, dir, args...)
			if o.code == exitOK {
				t.Fatalf("there was room enough")
			}
			failed++
			wants(t, o.errOut, "disk is full", "make room")
			for _, p := range leftovers(t, room) {
				t.Errorf("left over: %s", p)
			}
			remount(t, "-o", "remount,size=300m", room)
			if o = child(t, dir, args...); o.code != exitOK {
				t.Fatalf("with room: exit %d\n%s%s", o.code, o.out, o.errOut)
			}
			if o = child(t, dir, "--archive", archive, "check"); o.code != exitOK {
				t.Errorf("check: exit %d\n%s%s", o.code, o.out, o.errOut)
			}
			o = child(t, dir, "--archive", archive, "sheets", "--json")
			wants(t, o.out, fmt.Sprint(results))
		})
	}
	if os.Getuid() == 0 && failed < 2 {
		t.Errorf("only %d of 3 loads met a full disk", failed)
	}
}
