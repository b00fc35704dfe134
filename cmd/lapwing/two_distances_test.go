package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// A course with a 3 km and a 5 km on one morning: who runs both is one person, the
// card says which distance it means, and lists each rank once.
func TestTwoDistances(t *testing.T) {
	files := map[string]string{}
	for week := range 6 {
		for _, km := range []int{3, 5} {
			var b strings.Builder
			fmt.Fprintf(&b, "Garrow Moss %d km %d January 2026\nPos,Name,Time,Age,Sex\n", km, 3+week)
			for n := range 12 {
				s := km*(240+n*9) + (week*7+n*3)%11
				fmt.Fprintf(&b, "%d,%s %s,%d:%02d,%d,F\n", n+1, []string{"Ana", "Bea", "Cora", "Dee"}[n%4], []string{"Alder", "Birch", "Cole"}[n/4], s/60, s%60, 22+n)
			}
			files[fmt.Sprintf("sheets/%d-%d.csv", week, km)] = b.String()
		}
	}
	dir := folderWith(t, files)
	must(t, dir, "load", dir+"/sheets")
	card := must(t, dir, "standing", "Bea Birch").out
	wants(t, card, "Garrow Moss, 3 km", "Garrow Moss, 5 km", "12 runs, the first in these sheets on 3 January 2026")
	_, table, _ := strings.Cut(card, "Where ")
	table, _, _ = strings.Cut(table, "\n\n")
	seen := map[string]bool{}
	for _, line := range strings.Split(table, "\n")[2:] {
		if seen[line] {
			t.Errorf("twice: %s", line)
		}
		seen[line] = true
	}
	if len(seen) < 12 {
		t.Errorf("%d ranks:\n%s", len(seen), table)
	}
}

// A 5 km and a 2 km on one course and day are runs of their own, with reports of their
// own, whichever sheet comes first; so are those of one sheet with a column that says
// the distance. The shorter goes by its distance.
func TestTwoDistancesOfOneDay(t *testing.T) {
	long := "Pos,Name,Time\n1,Ana Alder,18:20\n2,Bea Birch,19:31\n3,Cora Cole,21:02\n"
	short := "Pos,Name,Time\n1,Kit Sole,8:10\n2,Lou Tarn,8:52\n3,Ned Wye,9:40\n"
	both := "Race,Pos,Name,Time\n5 km,1,Ana Alder,18:20\n2 km,1,Kit Sole,8:10\n5 km,2,Bea Birch,19:31\n2 km,2,Lou Tarn,8:52\n2 km,3,Ned Wye,9:40\n5 km,3,Cora Cole,21:02\n"
	var first string
	for _, files := range []map[string]string{
		{"sheets/Garrow Moss 5 km 3 January 2026.csv": long, "sheets/Garrow Moss juniors 2 km 3 January 2026.csv": short},
		{"sheets/2 km Garrow Moss 3 January 2026.csv": short, "sheets/Garrow Moss 3 January 2026.csv": long},
		{"sheets/Garrow Moss 3 January 2026.csv": both},
	} {
		dir := folderWith(t, files)
		o := must(t, dir, "run")
		wants(t, o.out, "2 runs new or changed", "garrow-moss_2026-01-03.xlsx", "garrow-moss_2026-01-03_2-km.xlsx", "Nothing needs a look.")
		var got strings.Builder
		for _, place := range []string{"1", "3"} {
			o = lapwing(t, dir, "correct", "garrow-moss", "2026-01-03", place, "--time", "30:00")
			wants(t, o.errOut, "--session", "2 km")
			o = lapwing(t, dir, "correct", "garrow-moss", "2026-01-03", place, "--time", "30:00", "--session", "2 km")
			got.WriteString(o.out)
		}
		wants(t, got.String(), "Kit Sole", "8:10 → 30:00", "Ned Wye", "9:40 → 30:00")
		must(t, dir, "check")
		before := export(t, dir)
		must(t, dir, "rebuild")
		sameFiles(t, "made again", before, export(t, dir), 6)
		out := t.TempDir()
		must(t, dir, "export", out)
		var runs []string
		for _, r := range readCSV(t, filepath.Join(out, "runs.csv"))[1:] {
			runs = append(runs, strings.Join(r[:6], ","))
		}
		if text := strings.Join(runs, "\n"); first == "" {
			first = text
		} else if text != first {
			t.Errorf("runs\n%s\nwant\n%s", text, first)
		}
	}
}

// A workbook of which one tab says no date: the others are loaded, the tab is asked
// about until the workbook was mended and loaded again.
func TestOneTabLeftOut(t *testing.T) {
	dir := folderWith(t, nil)
	save := func(second string) {
		t.Helper()
		x := excelize.NewFile()
		defer x.Close()
		for i, title := range []string{"Alder Bank 3 January 2026", second, "Alder Bank 17 January 2026"} {
			tab := string(rune('A' + i))
			if i == 0 {
				must0(t, x.SetSheetName("Sheet1", tab))
			} else if _, err := x.NewSheet(tab); err != nil {
				t.Fatal(err)
			}
			must0(t, x.SetSheetRow(tab, "A1", &[]any{title}))
			must0(t, x.SetSheetRow(tab, "A2", &[]any{"Pos", "Name", "Time"}))
			for k, name := range []string{"Ana Alder", "Bea Birch", "Cora Cole", "Dee Dale"} {
				must0(t, x.SetSheetRow(tab, fmt.Sprintf("A%d", k+3), &[]any{k + 1, name, fmt.Sprintf("%d:%02d", 20+k, 11*i+k)}))
			}
		}
		must0(t, os.MkdirAll(filepath.Join(dir, "sheets"), 0o755))
		must0(t, x.SaveAs(filepath.Join(dir, "sheets", "book.xlsx")))
	}
	save("Alder Bank")
	for range 2 {
		o := lapwing(t, dir, "run")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1: a tab waits", o.code)
		}
		wants(t, o.out, "Waiting: book.xlsx:B: tab left out", "Which date was the run?", "its 4 lines are left out")
	}
	wants(t, must(t, dir, "sheets").out, "book.xlsx  8      loaded", "Waiting: book.xlsx:B: tab left out")
	save("Alder Bank 10 January 2026")
	o := must(t, dir, "run")
	wants(t, o.out, "alder-bank, Saturday 10 January 2026")
	if strings.Contains(o.out, "Waiting") {
		t.Errorf("still asked:\n%s", o.out)
	}
	must(t, dir, "check")
}

func must0(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
