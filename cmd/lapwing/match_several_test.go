package main

import (
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// severalSheets are matchSheets with somebody of three family names one after the
// other, and somebody of whose lines two at another course are far slower.
func severalSheets() map[string]string {
	files := matchSheets()
	names := slices.Sorted(maps.Keys(files))
	week := map[string]int{}
	for _, n := range names {
		course := strings.SplitN(n, "_", 2)[0]
		w := week[course]
		week[course]++
		add := func(name, sex, club string, age, s int) {
			files[n] += fmt.Sprintf("%d,%s,%d:%02d,%d,%s,%s\n", strings.Count(files[n], "\n"), name, s/60, s%60, age, sex, club)
		}
		switch {
		case strings.Contains(n, "alder-bank"):
			add("Thirza "+[]string{"Denfield", "Horley", "Marlow"}[w/4], "W", "Brook Striders", 41, 3000+w)
			if w < 10 {
				add("Ivor Pember", "M", "Alder Harriers", 30, 3010+w)
			}
		case w >= 10:
			add("Ivor Pember", "M", "", 30, 3600+w)
		}
	}
	return files
}

type severalList struct {
	Several []struct {
		Pieces []struct {
			ID     string `json:"runner_id"`
			Name   string
			Chance float64
		}
	}
	BadFits []struct {
		Runner struct {
			ID string `json:"runner_id"`
		}
		Lines []struct{ Name string }
	} `json:"bad_fits"`
}

// Several runners who may be one person are one question, answered by letters;
// lines that fit their runner badly are another, answered once for all of them.
func TestMatchSeveral(t *testing.T) {
	dir := folderWith(t, severalSheets())
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	list := func() (l severalList) {
		if err := json.Unmarshal([]byte(must(t, dir, "match", "list", "--most", "0", "--json").out), &l); err != nil {
			t.Fatal(err)
		}
		return l
	}
	l := list()
	if len(l.Several) == 0 || len(l.Several[0].Pieces) != 3 || !strings.HasPrefix(l.Several[0].Pieces[0].Name, "Thirza") {
		t.Fatalf("the three of one given name are no question: %+v", l.Several)
	}
	wants(t, must(t, dir, "match", "list").out, "Which of these belong together?", "Thirza Denfield", "Thirza Horley", "Thirza Marlow", "Are these lines somebody else's?")
	pember := idOf(t, dir, "Ivor Pember")
	if len(l.BadFits) != 1 || l.BadFits[0].Runner.ID != pember || len(l.BadFits[0].Lines) != 2 {
		t.Fatalf("the slow lines of %s are no question: %+v", pember, l.BadFits)
	}
	three := l.Several[0].Pieces
	wants(t, must(t, dir, "match", "list").out, fmt.Sprintf("lapwing match join %s %s %s   (without", three[0].ID, three[1].ID, three[2].ID), "lapwing match part "+pember+" ")

	path := filepath.Join(t.TempDir(), "who.xlsx")
	must(t, dir, "match", "export", path)
	// answer writes words under Decision, by what stands in the row
	answer := func(words map[string]string) {
		f, err := excelize.OpenFile(path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		for _, tab := range []string{"Several", "Bad fits"} {
			rows, err := f.GetRows(tab)
			if err != nil {
				t.Fatal(err)
			}
			col := 0
			for r, row := range rows {
				if i := slices.Index(row, "Decision"); i >= 0 {
					col = i + 1
					continue
				}
				for key, word := range words {
					if col > 0 && strings.Contains(strings.Join(row[:2], "|"), key) {
						at, _ := excelize.CoordinatesToCellName(col, r+1)
						if err := f.SetCellStr(tab, at, word); err != nil {
							t.Fatal(err)
						}
					}
				}
			}
		}
		if err := f.Save(); err != nil {
			t.Fatal(err)
		}
	}
	refused := func(wanted ...string) {
		t.Helper()
		o := lapwing(t, dir, "match", "apply", path)
		if o.code != exitFailed {
			t.Errorf("exit %d, want %d", o.code, exitFailed)
		}
		wants(t, o.out, append(wanted, "Nothing was done")...)
	}
	answer(map[string]string{"Thirza Denfield": "A"})
	refused("who.xlsx:Several!F5", "only this one")
	answer(map[string]string{"Thirza Denfield": "A", "Thirza Horley": "yes"})
	refused("who.xlsx:Several!F6", `read "yes", expected a letter`)

	denfield, horley, marlow := idOf(t, dir, "Thirza Denfield"), idOf(t, dir, "Thirza Horley"), idOf(t, dir, "Thirza Marlow")
	answer(map[string]string{"Thirza Denfield": "A", "Thirza Horley": "a", "Thirza Marlow": "B", "Ivor Pember": "not theirs"})
	must(t, dir, "match", "apply", path)
	all := runnersOf(t, dir)
	if _, still := all[horley]; still || all[denfield]["results"] != "8" || all[marlow]["results"] != "4" {
		t.Errorf("%v, %v, %v after A, A, B", all[denfield], all[horley], all[marlow])
	}
	if all[pember]["results"] != "10" {
		t.Errorf("%s has %s results after two were taken from him, want 10", pember, all[pember]["results"])
	}
	other := 0
	for id, r := range all {
		if r["name"] == "Ivor Pember" && id != pember {
			other++
			if r["results"] != "2" {
				t.Errorf("%s has %s results, want the two that were taken from %s", id, r["results"], pember)
			}
		}
	}
	if other != 1 {
		t.Errorf("%d other runners of that name, want 1", other)
	}
	wants(t, decisionsFile(t, dir), "same person", "different people")
	if l := list(); len(l.Several)+len(l.BadFits) != 0 {
		t.Errorf("what was decided is asked about again: %+v", l)
	}
	wants(t, lapwing(t, dir, "match", "apply", path).out, "stale") // R numbers went, and the book knows the old state
	want := export(t, dir)
	must(t, dir, "rebuild")
	sameFiles(t, "after rebuild", want, export(t, dir), 4)
}
