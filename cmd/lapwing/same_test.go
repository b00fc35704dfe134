package main

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// TestSameBytes runs the weekly job on the same sheets in every way that must
// not matter, and compares exports and reports byte for byte.
func TestSameBytes(t *testing.T) {
	first := demo(t, 1)
	must(t, first, "run")
	wantCSV, wantParquet, wantReports := export(t, first), export(t, first, "--format", "parquet"), reported(t, first)
	same := func(t *testing.T, dir string) {
		t.Helper()
		sameFiles(t, "CSV", wantCSV, export(t, dir), 6)
		sameFiles(t, "Parquet", wantParquet, export(t, dir, "--format", "parquet"), 6)
		sameFiles(t, "reports", wantReports, reported(t, dir), 20)
	}
	for _, threads := range []string{"1", "2", "8"} {
		t.Run(threads+" threads", func(t *testing.T) {
			dir := demo(t, 1)
			t.Setenv("LAPWING_THREADS", threads)
			must(t, dir, "run")
			same(t, dir)
		})
	}
	t.Run("files named in another order", func(t *testing.T) {
		dir := demo(t, 1)
		folders, err := os.ReadDir(filepath.Join(dir, "sheets"))
		if err != nil || len(folders) < 6 {
			t.Fatal(err, len(folders))
		}
		// Several paths give names relative to each of them, so the first
		// archive for this comparison is loaded by folder too.
		var paths []string
		for _, f := range folders {
			paths = append(paths, filepath.Join(dir, "sheets", f.Name()))
		}
		other := demo(t, 1)
		must(t, other, append([]string{"run"}, paths...)...)
		rand.New(rand.NewPCG(7, 8)).Shuffle(len(paths), func(a, b int) { paths[a], paths[b] = paths[b], paths[a] })
		must(t, dir, append([]string{"run"}, paths...)...)
		sameFiles(t, "CSV", export(t, other), export(t, dir), 6)
		sameFiles(t, "reports", reported(t, other), reported(t, dir), 20)
	})
	t.Run("again", func(t *testing.T) {
		before, reports := record(t, first), reported(t, first)
		o := must(t, first, "run")
		wants(t, o.out, "Nothing has changed")
		sameFiles(t, "archive", before, record(t, first), 10)
		sameFiles(t, "reports", reports, reported(t, first), 20)
		must(t, first, "refresh")
		same(t, first)
	})
	t.Run("made again", func(t *testing.T) {
		before := record(t, first)
		must(t, first, "rebuild")
		sameFiles(t, "archive", before, record(t, first), 10)
		same(t, first)
		// a database made again has forgotten what was reported, the register has not
		o := must(t, first, "run")
		wants(t, o.out, "0 files written")
		same(t, first)
	})
}

// TestTwoLoads loads the same sheets in two halves, with a withdrawal and a
// return in between; what stands does not tell.
func TestTwoLoads(t *testing.T) {
	want := func() map[string]string {
		dir := demo(t, 2)
		must(t, dir, "load", filepath.Join(dir, "sheets"))
		return withoutIDs(t, dir)
	}()
	dir := demo(t, 2)
	sheets, err := filepath.Glob(filepath.Join(dir, "sheets", "*", "*"))
	if err != nil || len(sheets) < 12 {
		t.Fatal(err, len(sheets))
	}
	aside := t.TempDir()
	for i, p := range sheets {
		if i%2 == 1 {
			if err := os.Rename(p, filepath.Join(aside, strconv.Itoa(i))); err != nil {
				t.Fatal(err)
			}
		}
	}
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	for i, p := range sheets {
		if i%2 == 1 {
			if err := os.Rename(filepath.Join(aside, strconv.Itoa(i)), p); err != nil {
				t.Fatal(err)
			}
		}
	}
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	name := filepath.ToSlash(sheets[0][len(filepath.Join(dir, "sheets"))+1:])
	must(t, dir, "sheets", "withdraw", name)
	without := export(t, dir)
	must(t, dir, "rebuild")
	sameFiles(t, "withdrawn, then made again", without, export(t, dir), 6)
	must(t, dir, "sheets", "restore", name)
	sameFiles(t, "two loads", want, withoutIDs(t, dir), 1)
}

// withoutIDs exports what does not name runner ids, which depend on the order
// of loading: courses and runs.
func withoutIDs(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := export(t, dir)
	return map[string]string{"courses.csv": all["courses.csv"], "runs.csv": all["runs.csv"]}
}

// TestSideTableEdited edits each side table after the sheets were loaded; the
// figures follow, as if it had been so from the start.
func TestSideTableEdited(t *testing.T) {
	calm, before := finished(t)
	for name, edited := range map[string]string{
		"courses.csv": "course,name,distance_m,weekday,valid_from,valid_to,measured\n" +
			"osierholm-meadow,Osierholm Long Meadow,4900,Saturday,2019-05-04,,no\n",
		"history.csv": "fact,course,name,sex,age_group,distance_m,finishes,time,date\n" +
			"complete from,osierholm-meadow,,,,,,,2025-07-19\n",
		"volunteers.csv": "name,role,course,date\nHannah Branbrook,timekeeper,ember-quay,2025-07-24\n",
		"decisions.csv": "id,when,by,kind,sheet,tab,row,runner,course,date,session,value,why\n" +
			"1,2025-08-01T10:00:00Z,desk,name to print,,,,R3,,,,Somebody Else,asked\n",
	} {
		t.Run(name, func(t *testing.T) {
			dir := copied(t, calm)
			write(t, dir, map[string]string{"archive/" + name: edited})
			followed := export(t, dir)
			if len(differences(before, followed)) == 0 {
				t.Errorf("the edit of %s changed nothing in the export", name)
			}
			must(t, dir, "rebuild")
			sameFiles(t, "edited, then made again", followed, export(t, dir), 6)
		})
	}
}
