package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// cells are the rows of a tab, one text a row.
func cells(t *testing.T, book, tab string) string {
	t.Helper()
	f, err := excelize.OpenFile(book)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows(tab)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, r := range rows {
		out = append(out, strings.Join(r, "|"))
	}
	return strings.Join(out, "\n")
}

// A season of a club is that of its members on the day: whoever joins counts
// from then on, second claim is listed without points, and what the sheets
// print does not matter. Without members it is as printed, and says so.
func TestSeasonOfMembers(t *testing.T) {
	week := func(lines ...string) string {
		return "Pos,Name,Time,Age Group,Sex,Club\n" + strings.Join(lines, "\n") + "\n"
	}
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers", "2,Cora Vale,25:00,W35,W,", "3,Dora Finn,26:00,W35,W,Tarn Harriers", "4,Eva Lind,27:00,W35,W,Tarn Harriers"),
		"sheets/alder-bank_2026-01-10.csv": week("1,Ada Moss,20:10,W40,W,Wick Runners", "2,Cora Vale,25:00,W35,W,", "3,Dora Finn,26:00,W35,W,", "4,Eva Lind,27:00,W35,W,Tarn Harriers"),
		"archive/members.csv": "person,club,claim,from,to,birth_date\nAda Moss,Tarn Harriers,first,,2026-01-05,\nAda Moss,Wick Runners,first,2026-01-06,,\n" +
			"Cora Vale,TARN HARRIERS,first,2026-01-06,,\nDora Finn,Tarn Harriers,second,,,\n",
	})
	must(t, dir, "load", filepath.Join(dir, "sheets"))
	must(t, dir, "clubs", "join", "TARN HARRIERS", "Tarn Harriers", "--yes")
	book := filepath.Join(dir, "reports", "season_2026_Tarn-Harriers.xlsx")
	league := func() string {
		var out []string
		for _, l := range strings.Split(cells(t, book, "League"), "\n") {
			if strings.HasPrefix(l, "Tarn Harriers|women|") {
				out = append(out, strings.TrimRight(strings.TrimPrefix(l, "Tarn Harriers|women|"), "|"))
			}
		}
		return strings.Join(out, "; ")
	}
	o := must(t, dir, "season", "--club", "tarn harriers")
	if strings.Contains(o.out, "members.csv") {
		t.Errorf("its members are known: %s", o.out)
	}
	if got, want := league(), "1=|Ada Moss|100|1|0|0|100; 1=|Cora Vale|100|1|0|0|100; |Dora Finn|0|0|0|0|0"; got != want {
		t.Errorf("members on the day: %s, want %s", got, want)
	}
	must(t, dir, "season", "--club", "Tarn Harriers", "--club-as-printed")
	if got := league(); !strings.Contains(got, "Eva Lind|198") || strings.Contains(got, "Cora Vale") {
		t.Errorf("as printed: %s", got)
	}
	out := filepath.Join(dir, "out")
	must(t, dir, "export", out)
	data, err := os.ReadFile(filepath.Join(out, "members.csv"))
	if err != nil {
		t.Fatal(err)
	}
	wants(t, string(data), "runner_id,name,club,claim,member_from,member_to", "Cora Vale,Tarn Harriers,first,2026-01-06,")

	if err := os.Remove(filepath.Join(dir, "archive", "members.csv")); err != nil {
		t.Fatal(err)
	}
	wants(t, must(t, dir, "season", "--club", "Tarn Harriers").out, "members.csv has no member of Tarn Harriers", "prints the club")
	o = lapwing(t, dir, "season", "--club", "Nowhere AC")
	if o.code != exitFailed {
		t.Errorf("a club that nobody has: exit %d", o.code)
	}
	wants(t, o.errOut, "there are: ", "Tarn Harriers")
	o = lapwing(t, dir, "season", "--club-as-printed")
	if o.code == exitOK {
		t.Error("--club-as-printed without a club is taken")
	}
}
