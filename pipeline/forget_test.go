package pipeline

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/unicode"
)

// digest is a SHA-256 in hexadecimal, as a word of its own.
var digest = regexp.MustCompile(`\b[0-9a-f]{64}\b`)

// stillNamed lists the files below a folder in which a text stands in any
// capitals, as UTF-8 or UTF-16, inside workbooks as well.
func stillNamed(t *testing.T, dir string, texts ...string) (found []string) {
	t.Helper()
	holds := func(data []byte) bool {
		// one keyed hash in a thousand has the digits of a year by chance
		low := digest.ReplaceAll(bytes.ToLower(data), nil)
		for _, s := range texts {
			wide, err := unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM).NewEncoder().Bytes([]byte(strings.ToLower(s)))
			if err != nil {
				t.Fatal(err)
			}
			if bytes.Contains(low, []byte(strings.ToLower(s))) || bytes.Contains(low, wide) {
				return true
			}
		}
		return false
	}
	files := 0
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		files++
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		named := holds([]byte(path)) || holds(data)
		if zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data))); err == nil {
			for _, f := range zr.File {
				r, err := f.Open()
				if err != nil {
					return err
				}
				raw, err := io.ReadAll(r)
				r.Close()
				if err != nil {
					return err
				}
				named = named || holds(raw)
			}
		}
		if named {
			rel, _ := filepath.Rel(dir, path)
			found = append(found, rel)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files == 0 {
		t.Fatalf("there is nothing in %s to search", dir)
	}
	return found
}

// book is a workbook of one tab, as bytes.
func book(t *testing.T, rows ...[]any) string {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for i, r := range rows {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		if err := f.SetSheetRow("Sheet1", cell, &r); err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// forgetCase is an archive in which Cora Vale stands on text sheets, on a
// workbook and on a sheet that waits, in every side table and in decisions.
func forgetCase(t *testing.T) *desk {
	t.Helper()
	files := threeWeeks()
	files["sheets/alder-bank_2026-01-24.xlsx"] = book(t, []any{"Alder Bank 5 km, 24 January 2026"}, []any{"A great run by Cora Vale today"}, []any{"Pos", "Name", "Time", "Age Group", "Sex", "Club"},
		[]any{1, "VALE, Cora", "24:50", "W35", "W", ""}, []any{2, "Dan Thorne", "26:30", "M50", "M", ""})
	files["sheets/somewhere.csv"] = "Pos,Name,Time\n1,Cora Vale,25:00\n2,Ben Reed,26:00\n"
	files["archive/members.csv"] = "person,club,claim,from,to,birth_date\nCora Vale,Tarn Harriers,first,2020-01-01,,1990-03-04\nBen Reed,Wick Runners,first,,,\n"
	files["archive/volunteers.csv"] = "name,role,course,date\nCora Vale,marshal,alder-bank,2026-01-10\nAda Moss,timekeeper,alder-bank,2026-01-10\n"
	files["archive/history.csv"] += "finishes before,alder-bank,Cora Vale,W,,,12,,2026-01-03\nrecord,alder-bank,Cora Vale,W,W35,,,24:00,2025-05-05\n"
	files["archive/closed/season_2025.txt"] = "Most runs\n1 Cora Vale 12\n2 Ben Reed 11\n"
	d := newDesk(t, files)
	claim := on("2026-01-10", 3)
	claim.Name, claim.Why = "Cora Vale", "Cora Vale rang"
	d.keep(claim)
	return d
}

func (d *desk) forget(who string) *ForgetPlan {
	d.t.Helper()
	p, err := d.pl.PlanForget(context.Background(), who)
	if err != nil {
		d.t.Fatal(err)
	}
	if err := p.Do(context.Background()); err != nil {
		d.t.Fatal(err)
	}
	return p
}

func TestForget(t *testing.T) {
	d := forgetCase(t)
	others := `select string_agg(coalesce(runner_id, '') || coalesce(name, '') || coalesce(time_s, 0) || status || is_pb, ';' order by run_date, position) from main.results where coalesce(name, '') <> 'Cora Vale'`
	places := `select string_agg(run_date || ' ' || finishers || ' ' || times_counted, ';' order by run_date) from main.runs`
	before, held := d.text(others), d.text(places)
	d.want("files with the name before", strings.Join(stillNamed(t, d.pl.Archive.File("closed"), "cora vale"), " "), "season_2025.txt")

	p := d.forget("Cora Vale")
	if p.Lines != 4 || p.Sheets != 5 || p.Members != 1 || p.Volunteers != 1 || p.History != 2 || p.Decisions != 1 || len(p.Runs) != 4 {
		t.Errorf("the plan counts %d lines, %d sheets, %d members, %d volunteers, %d history, %d decisions, runs %v", p.Lines, p.Sheets, p.Members, p.Volunteers, p.History, p.Decisions, p.Runs)
	}
	if found := stillNamed(t, filepath.Join(d.dir, "archive"), "cora vale", "vale, cora", "vale cora", "1990-03-04", "1990"); len(found) > 0 {
		t.Errorf("the name is still in %q", found)
	}
	out := t.TempDir()
	if _, err := d.pl.Export(context.Background(), out, "csv", true); err != nil {
		t.Fatal(err)
	}
	if found := stillNamed(t, out, "cora vale", "vale, cora"); len(found) > 0 {
		t.Errorf("exports name her: %q", found)
	}
	d.want("place 3 keeps time and place", d.place("alder-bank", "2026-01-17", 3), "– unnamed 24:40")
	d.want("finishers and times", d.text(places), held)
	d.want("all others", d.text(`select string_agg(coalesce(runner_id, '') || coalesce(name, '') || coalesce(time_s, 0) || status || is_pb, ';' order by run_date, position) from main.results where name is not null`), before)
	d.want("volunteers", d.text("select string_agg(name, ',' order by name) from main.volunteers"), "Ada Moss,Anonymous")
	if faults, n, err := d.pl.Check(context.Background()); err != nil || len(faults) > 0 || n == 0 {
		t.Errorf("check: %v %v", faults, err)
	}
	// the side tables still read, and the record keeps its time
	if _, err := d.pl.Refresh(context.Background(), true); err != nil {
		t.Fatal(err)
	}
	data, _ := os.ReadFile(d.pl.Archive.File("history.csv"))
	if !strings.Contains(string(data), "record,alder-bank,Anonymous,W,W35,,,24:00,2025-05-05") || strings.Contains(string(data), "finishes before") {
		t.Errorf("history.csv is now\n%s", data)
	}
}

// The name does not come back: neither with the sheets in the inbox, which are
// known as they were, nor with the next week's.
func TestForgottenStays(t *testing.T) {
	d := forgetCase(t)
	d.forget("Cora Vale")
	lines := d.text("select count(*)::varchar from main.results")
	rep := loadForTest(t, d.pl, filepath.Join(d.dir, "sheets"))
	if rep.Loaded != 0 {
		t.Errorf("%d sheets were loaded anew: %+v", rep.Loaded, rep.Sheets)
	}
	d.want("lines", d.text("select count(*)::varchar from main.results"), lines)

	d.write(map[string]string{"new/alder-bank_2026-01-31.csv": week("1,Ada Moss,20:30,W40,W,", "2,Cora VALE,24:00,W35,W,Tarn Harriers", "3,Ben Reed,25:00,M45,M,")})
	for n, want := range []string{"loaded", "already loaded"} {
		rep = loadForTest(t, d.pl, filepath.Join(d.dir, "new"))
		if rep.Sheets[0].State != want || n == 0 && rep.Sheets[0].Forgotten != 1 {
			t.Errorf("time %d: %+v", n+1, rep.Sheets[0])
		}
	}
	d.want("place 2", d.place("alder-bank", "2026-01-31", 2), "– unnamed 24:00")
	if found := stillNamed(t, filepath.Join(d.dir, "archive"), "cora vale"); len(found) > 0 {
		t.Errorf("the name came back in %q", found)
	}
	if err := d.pl.startOver(context.Background()); err != nil {
		t.Fatal(err)
	}
	if _, err := d.pl.Refresh(context.Background(), true); err != nil {
		t.Fatal(err)
	}
	d.want("place 2 after a rebuild", d.place("alder-bank", "2026-01-31", 2), "– unnamed 24:00")
}

// Somebody else of the same name stays, and is told about.
func TestForgetNamesake(t *testing.T) {
	d := newDesk(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": week("1,Ada Moss,20:00,W40,W,Tarn Harriers", "2,Ben Reed,21:00,M45,M,Wick Runners", "3,Ben Reed,31:00,M70,M,Fell Striders"),
		"sheets/alder-bank_2026-01-10.csv": week("1,Ada Moss,20:10,W40,W,Tarn Harriers", "2,Ben Reed,21:10,M45,M,Wick Runners", "3,Ben Reed,31:10,M70,M,Fell Striders"),
	})
	if _, err := d.pl.PlanForget(context.Background(), "Ben Reed"); err == nil || !strings.Contains(err.Error(), "fits 2 people") {
		t.Fatalf("two people: %v", err)
	}
	old := d.text("select distinct runner_id from main.results where name = 'Ben Reed' and club = 'Fell Striders'")
	young := d.text("select distinct runner_id from main.results where name = 'Ben Reed' and club = 'Wick Runners'")
	p := d.forget(young)
	if len(p.Namesakes) != 1 || p.Namesakes[0].ID != old {
		t.Errorf("namesakes: %+v, want %s", p.Namesakes, old)
	}
	d.want("the other", d.text("select string_agg(runner_id || ' ' || time_s, ',' order by run_date) from main.results where name = 'Ben Reed'"), old+" 1860,"+old+" 1870")
	d.want("place 2", d.place("alder-bank", "2026-01-03", 2), "– unnamed 21:00")
}

func TestForgetNobody(t *testing.T) {
	d := newDesk(t, threeWeeks())
	if _, err := d.pl.PlanForget(context.Background(), "Otto Quillfeather"); err == nil || !strings.Contains(err.Error(), "nobody called") {
		t.Errorf("somebody unknown: %v", err)
	}
}

// Cut short anywhere, forgetting has either not begun or is finished by
// whoever opens the archive next.
func TestForgetCutShort(t *testing.T) {
	ctx := context.Background()
	d := forgetCase(t)
	p, err := d.pl.PlanForget(ctx, "Cora Vale")
	if err != nil {
		t.Fatal(err)
	}
	reopen := func() {
		t.Helper()
		if d.pl.DB == nil { // as after a kill
			if err := d.pl.Close(); err != nil {
				t.Fatal(err)
			}
		}
		s := d.pl.Settings
		if err := d.pl.Close(); err != nil {
			t.Fatal(err)
		}
		pl, err := Open(ctx, s, ReadOnly, nil)
		if err != nil {
			t.Fatal(err)
		}
		*d.pl = *pl
	}
	archive := filepath.Join(d.dir, "archive")
	// before the list is there: nothing has happened
	if err := d.pl.stageSwap(p.files, p.remove); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(archive, swapFolder, swapList)); err != nil {
		t.Fatal(err)
	}
	if err := d.pl.Close(); err != nil {
		t.Fatal(err)
	}
	if pl, err := Open(ctx, d.pl.Settings, ReadWrite, nil); err != nil {
		t.Fatal(err)
	} else {
		*d.pl = *pl
	}
	if _, err := os.Stat(filepath.Join(archive, swapFolder)); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("what was being prepared is still there: %v", err)
	}
	d.want("nothing has happened", d.place("alder-bank", "2026-01-17", 3), "Cora Vale ok 24:40")

	// after it, with the first files in their places
	if p, err = d.pl.PlanForget(ctx, "Cora Vale"); err != nil {
		t.Fatal(err)
	}
	if err := d.pl.stageSwap(p.files, p.remove); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"0", "1"} {
		to := ""
		for i, n := range sortedNames(p.files) {
			if name == itoa(int32(i)) {
				to = n
			}
		}
		if err := os.Rename(filepath.Join(archive, swapFolder, name), filepath.Join(archive, filepath.FromSlash(to))); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove(d.pl.Archive.DatabasePath()); err != nil {
		t.Fatal(err)
	}
	reopen()
	if found := stillNamed(t, archive, "cora vale"); len(found) > 0 {
		t.Errorf("the name is still in %q", found)
	}
	d.want("finished", d.place("alder-bank", "2026-01-17", 3), "– unnamed 24:40")
}

func sortedNames(files map[string][]byte) (out []string) {
	for n := range files {
		out = append(out, n)
	}
	slices.Sort(out)
	return out
}
