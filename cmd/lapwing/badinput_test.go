package main

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// twoRuns is a small archive with two runs of one course, loaded.
func twoRuns(t testing.TB) string {
	t.Helper()
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(24),
		"sheets/alder-bank_2026-01-10.csv": fieldSheet(30),
		"archive/courses.csv":              "course,name,distance_m,weekday,valid_from,valid_to,measured\nalder-bank,Alder Bank,5000,Saturday,,,yes\n",
	})
	must(t, dir, "run")
	must(t, dir, "check")
	return dir
}

func workbook(t testing.TB, rows [][]string) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	for i, r := range rows {
		cells := make([]any, len(r))
		for k, c := range r {
			cells[k] = c
		}
		at, err := excelize.CoordinatesToCellName(1, i+1)
		if err != nil {
			t.Fatal(err)
		}
		if err := f.SetSheetRow("Sheet1", at, &cells); err != nil {
			t.Fatal(err)
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// zipped makes a ZIP of members, in order.
func zipped(t testing.TB, members ...[2]string) []byte {
	t.Helper()
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, m := range members {
		f, err := w.Create(m[0])
		if err != nil {
			t.Fatal(err)
		}
		if _, err := f.Write([]byte(m[1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// cutSheetXML makes a workbook whose one worksheet ends in the middle.
func cutSheetXML(t testing.TB) []byte {
	t.Helper()
	var rows [][]string
	for _, l := range strings.Split(strings.TrimSpace(fieldSheet(40)), "\n") {
		rows = append(rows, strings.Split(l, ","))
	}
	whole := workbook(t, rows)
	r, err := zip.NewReader(bytes.NewReader(whole), int64(len(whole)))
	if err != nil {
		t.Fatal(err)
	}
	var members [][2]string
	cut := false
	for _, f := range r.File {
		c, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if _, err := b.ReadFrom(c); err != nil {
			t.Fatal(err)
		}
		text := b.String()
		if strings.HasSuffix(f.Name, "sheet1.xml") {
			text, cut = text[:len(text)/2], true
		}
		members = append(members, [2]string{f.Name, text})
	}
	if !cut {
		t.Fatal("no worksheet found to cut")
	}
	return zipped(t, members...)
}

// TestRefusedSheets loads what is no sheet, alone: the message names it and
// says what to do, and the archive stays as it was, byte for byte.
func TestRefusedSheets(t *testing.T) {
	calm := twoRuns(t)
	whole := workbook(t, [][]string{{"Pos", "Name", "Time"}, {"1", "Ada Moss", "19:30"}})
	for name, c := range map[string]struct {
		data  []byte
		words []string // of the message, besides the sheet's name
	}{
		"picture.png":             {[]byte("\x89PNG\r\n\x1a\n0000"), []string{"picture", "spreadsheet"}},
		"scan.pdf":                {[]byte("%PDF-1.7 ..."), []string{"PDF"}},
		"old.xls":                 {append([]byte("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"), make([]byte, 600)...), []string{"save it as XLSX"}},
		"page.html":               {[]byte("<!DOCTYPE html><table><tr><td>1</td></tr></table>"), []string{"web page"}},
		"data.json":               {[]byte(`{"results":[1,2]}`), []string{"JSON"}},
		"letter.docx":             {zipped(t, [2]string{"word/document.xml", "<w/>"}), []string{"word-processor"}},
		"table.ods":               {zipped(t, [2]string{"content.xml", "<o/>"}), []string{"save it as XLSX"}},
		"sheets.zip":              {zipped(t, [2]string{"a.csv", "Pos,Name\n"}), []string{"unpack"}},
		"noise.csv":               {bytes.Repeat([]byte{0, 1, 2, 250, 7, 0}, 400), nil},
		"empty.csv":               {nil, []string{"empty"}},
		"blank.csv":               {[]byte("\n\n , , \n\n"), nil},
		"prose.csv":               {[]byte("Dear all,\nthanks for coming on Saturday.\nSee you next week.\n"), nil},
		"headings_2026-01-24.csv": {[]byte("Pos,Name,Time\n"), nil},
		"cut.xlsx":                {whole[:len(whole)/2], []string{"damaged"}},
		"cutsheet.xlsx":           {cutSheetXML(t), nil},
		"emptybook.xlsx": {func() []byte {
			return workbook(t, nil)
		}(), nil},
	} {
		t.Run(name, func(t *testing.T) {
			dir := copied(t, calm)
			path := filepath.Join(dir, name)
			if err := os.WriteFile(path, c.data, 0o644); err != nil {
				t.Fatal(err)
			}
			before := snapshot(t, filepath.Join(dir, "archive"))
			for _, command := range []string{"load", "run"} {
				o := lapwing(t, dir, command, path)
				if o.code != exitFailed {
					t.Errorf("%s: exit %d, want 1", command, o.code)
				}
				wants(t, o.out+o.errOut, append(c.words, name, "refused")...)
				if len(o.out+o.errOut) > 1200 {
					t.Errorf("%d bytes of message are too many", len(o.out+o.errOut))
				}
				sameFiles(t, command+": archive", before, snapshot(t, filepath.Join(dir, "archive")), 5)
			}
			o := lapwing(t, dir, "load", path, "--dry-run")
			if o.code != exitFailed {
				t.Errorf("dry run: exit %d, want 1", o.code)
			}
			wants(t, o.out+o.errOut, name, "refused")
		})
	}
}

// TestWaitingSheets loads sheets that leave a question open. They are kept, and
// wait; no result comes of them until the question is answered.
func TestWaitingSheets(t *testing.T) {
	calm := twoRuns(t)
	for name, c := range map[string]struct {
		text   string
		words  []string
		answer []string
	}{
		"two dates.csv": {"Alder Bank results of 17 January 2026\nPrinted for the run of 24 January 2026\nPos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,20:10\n",
			[]string{"date"}, []string{"--date", "2026-01-17"}},
		"no date.csv": {"Alder Bank\nPos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,20:10\n", []string{"date", "--date"}, []string{"--date", "2026-01-17"}},
		"far-field_2026-01-17.csv": {"Pos,Name,Time\n1,Ada Moss,1:18:30\n2,Ben Reed,1:20:10\n3,Cy Dee,1:24:00\n4,Di Fox,1:31:12\n5,Ed Gow,1:40:00\n6,Fi Hay,1:52:20\n",
			[]string{"distance missing", "--distance"}, []string{"--distance", "21.1 km"}},
		"walk-field_2026-01-17.csv": {"Pos,Name,Time\n1,Ada Moss,1:18:30\n2,Ben Reed,1:20:10\n3,Cy Dee,1:24:00\n4,Di Fox,1:31:12\n5,Ed Gow,1:40:00\n6,Fi Hay,1:52:20\n",
			[]string{"distance missing", "--distance"}, []string{"--distance", "5 km"}}, // they walked
		"2026-01-17.csv": {"Pos,Name,Time\n1,Ada Moss,19:30\n2,Ben Reed,20:10\n", []string{"course", "--course"}, []string{"--course", "alder-bank"}},
	} {
		t.Run(name, func(t *testing.T) {
			dir := copied(t, calm)
			write(t, dir, map[string]string{name: c.text})
			path := filepath.Join(dir, name)
			before := export(t, dir)
			o := lapwing(t, dir, "load", path)
			if o.code != exitFailed {
				t.Errorf("exit %d, want 1", o.code)
			}
			wants(t, o.out+o.errOut, append(c.words, "Waiting: "+name, "1 waits")...)
			sameFiles(t, "export", before, export(t, dir), 6)
			// asked again by every run until it is answered
			empty := t.TempDir()
			for _, args := range [][]string{{"run", empty}, {"run", empty, "--json"}} {
				if o = lapwing(t, dir, args...); o.code != exitFailed {
					t.Errorf("lapwing %s: exit %d while a sheet waits, want 1", strings.Join(args, " "), o.code)
				}
				wants(t, o.out, name)
			}
			wants(t, must(t, dir, "sheets", "problems").out, "Waiting: "+name)
			must(t, dir, append([]string{"load", path}, c.answer...)...)
			must(t, dir, "run", empty)
			must(t, dir, "check")
			if len(differences(before, export(t, dir))) == 0 {
				t.Error("the answered sheet added nothing")
			}
			answered := export(t, dir)
			must(t, dir, "rebuild")
			sameFiles(t, "made again", answered, export(t, dir), 6)
		})
	}
}

// TestOneBadSheet loads good and bad sheets together: the good ones load.
func TestOneBadSheet(t *testing.T) {
	dir := folderWith(t, map[string]string{
		"sheets/alder-bank_2026-01-03.csv": fieldSheet(24),
		"sheets/alder-bank_2026-01-10.csv": fieldSheet(30),
		"sheets/alder-bank_2026-01-17.csv": "\x89PNG\r\n\x1a\n0000",
		"sheets/alder-bank_2026-01-24.csv": "",
		"sheets/zz-last_2026-01-24.csv":    fieldSheet(12),
	})
	o := lapwing(t, dir, "run")
	if o.code != exitFailed {
		t.Errorf("exit %d, want 1", o.code)
	}
	wants(t, o.out, "3 sheets loaded, 66 lines", "alder-bank_2026-01-17.csv is refused", "alder-bank_2026-01-24.csv is refused", "3 runs new or changed")
	must(t, dir, "check")
	if n := len(reported(t, dir)); n != 12 {
		t.Errorf("%d report files, want 4 for each of 3 runs", n)
	}
}

// TestUsage calls the program wrongly: exit 2, and nothing is made.
func TestUsage(t *testing.T) {
	dir := folderWith(t, nil)
	for _, line := range []string{
		"load", "load x --date yesterday", "load x --date 2026-02-30", "load x --distance far", "load x --kind half", "load x --nonsense",
		"nonsense", "export", "export a b", "export out --format xls", "refresh now", "rebuild --hard", "sheets withdraw", "sheets nonsense",
		"weekly --date soon", "check everything", "demo", "--nonsense",
	} {
		o := lapwing(t, dir, strings.Fields(line)...)
		if o.code != exitUsage {
			t.Errorf("lapwing %s: exit %d, want 2: %s%s", line, o.code, o.out, o.errOut)
		}
		wants(t, o.errOut, "lapwing:", "--help")
	}
	if exists(dir, "archive") {
		t.Error("a wrong command line made the archive")
	}
}

// TestSettings gives wrong settings: each is named, and the archive unchanged.
func TestSettings(t *testing.T) {
	calm := twoRuns(t)
	for line, words := range map[string][]string{
		`colour = "green"`:            {"lapwing.toml", "colour"},
		`archve = "x"`:                {"lapwing.toml", "archve"},
		`age_standard = 1999`:         {"age_standard", "2025"},
		`age_standard = "newest"`:     {"age_standard"},
		`threads = "two"`:             {"threads"},
		`threads = -1`:                {"threads"},
		`milestones = [50, 10]`:       {"milestones"},
		`milestones = "many"`:         {"milestones"},
		`date_order = "ymd"`:          {"date_order", "dmy"},
		`season_start = "spring"`:     {"season_start"},
		`season_start = "02-31"`:      {"season_start"},
		`age_groups = "class"`:        {"age_groups", `"day"`, `"year"`, `"juniors by year"`},
		`age_groups_under = [18, 16]`: {"age_groups_under", "[11, 13, 15, 17, 20]"},
		`age_groups_under = [18, 40]`: {"age_groups_under", "25"},
		`age_groups_under = "U18"`:    {"age_groups_under"},
		`age_groups_masters = 20`:     {"age_groups_masters", "30 to 50"},
		`age_groups_width = 0`:        {"age_groups_width", "1 to 20"},
		"age_groups = \"juniors by year\"\nage_groups_under = []": {"age_groups_under", "[16, 18, 20]"},
		`age_groups = 31`: {"age_groups", `"year"`},
		"age_groups = \"year\"\nage_groups_on = \"12-32\"":       {"age_groups_on", "12-31"},
		"age_groups = \"year\"\nage_groups_on = \"02-29\"":       {"age_groups_on", "12-31"},
		"age_groups = \"year\"\nage_groups_year = \"next year\"": {"age_groups_year", `"season end"`},
		`age_groups_on = "08-31"`:                                {"age_groups_on", `age_groups = "year"`},
		`age_groups_year = "season end"`:                         {"age_groups_year", `age_groups = "year"`},
		`season_start = "01-011x"`:                               {"season_start"},
		`memory_limit = "lots"`:                                  {"memory_limit"},
		`this is no setting`:                                     {"lapwing.toml"},
	} {
		t.Run(line, func(t *testing.T) {
			dir := copied(t, calm)
			before := snapshot(t, filepath.Join(dir, "archive"))
			write(t, dir, map[string]string{"lapwing.toml": testConfig + line + "\n"})
			o := lapwing(t, dir, "run")
			if o.code != exitFailed && o.code != exitUsage {
				t.Errorf("exit %d, want 1 or 2\n%s", o.code, o.out)
			}
			wants(t, o.errOut, words...)
			sameFiles(t, "archive", before, snapshot(t, filepath.Join(dir, "archive")), 5)
		})
	}
	t.Run("environment", func(t *testing.T) {
		dir := copied(t, calm)
		for name, value := range map[string]string{"LAPWING_THREADS": "two", "LAPWING_AGE_STANDARD": "x", "LAPWING_MILESTONES": "ten"} {
			t.Setenv(name, value)
			o := lapwing(t, dir, "check")
			if o.code == exitOK {
				t.Errorf("%s=%s was accepted", name, value)
			}
			wants(t, strings.ToLower(o.errOut), strings.ToLower(strings.TrimPrefix(name, "LAPWING_")))
			os.Unsetenv(name)
		}
		t.Setenv("LAPWING_MILESTONES", "5 15")
		must(t, dir, "check")
	})
	t.Run("no such file", func(t *testing.T) {
		o := lapwing(t, t.TempDir(), "check")
		if o.code != exitFailed {
			t.Errorf("exit %d, want 1", o.code)
		}
		wants(t, o.errOut, "lapwing.toml")
	})
}

// TestSideTables spoils each side table: the message gives file and line, and
// a new sheet loaded at the same time changes nothing.
func TestSideTables(t *testing.T) {
	calm := twoRuns(t)
	decisions := "id,when,by,kind,sheet,tab,row,runner,course,date,session,value,why\n"
	history := "fact,course,name,sex,age_group,distance_m,finishes,time,date\n"
	courses := "course,name,distance_m,weekday,valid_from,valid_to,measured\n"
	for name, c := range map[string]struct{ file, text, at string }{
		"decision without a number": {"decisions.csv", decisions + "one,,desk,hide,,,,R1,,,,,\n", "decisions.csv, row 2"},
		"decision, bad row":         {"decisions.csv", decisions + "1,,desk,time,abc,,x,,,,,24:31,\n", "decisions.csv, row 2"},
		"decision, bad date":        {"decisions.csv", decisions + "\n1,,desk,run state,,,,,alder-bank,Sat,,cancelled,\n", "decisions.csv, row 3"},
		"decision, take back":       {"decisions.csv", decisions + "1,,desk,take back,,,,,,,,that,\n", "decisions.csv, row 2"},
		"course, bad distance":      {"courses.csv", courses + "alder-bank,Alder Bank,5000,,,,\nelm-green,Elm Green,long,,,,\n", "courses.csv, row 3"},
		"course, bad weekday":       {"courses.csv", courses + "elm-green,Elm Green,,Someday,,,\n", "courses.csv, row 2"},
		"course, bad date":          {"courses.csv", courses + "elm-green,Elm Green,,,May,,\n", "courses.csv, row 2"},
		"course, blank lines":       {"courses.csv", courses + "\n\nelm-green,Elm Green,,Someday,,,\n", "courses.csv, row 4"},
		"course, no heading":        {"courses.csv", "elm-green,Elm Green\n", "courses.csv, row 1"},
		"course, open quote":        {"courses.csv", courses + "elm-green,\"Elm Green,,,,,\nalder-bank,Alder Bank,,,,,\n", "courses.csv"},
		"history, bad fact":         {"history.csv", history + "legend,alder-bank,,,,,,,\n", "history.csv, row 2"},
		"history, bad count":        {"history.csv", history + "finishes before,,Ada Moss,,,,many,,\n", "history.csv, row 2"},
		"history, bad time":         {"history.csv", history + "best before,,Ada Moss,,,,,fast,\n", "history.csv, row 2"},
		"history, no date":          {"history.csv", history + "complete from,alder-bank,,,,,,,\n", "history.csv, row 2"},
		"volunteer, bad date":       {"volunteers.csv", "name,role,course,date\nAda Moss,timekeeper,alder-bank,2026-01-03\nBen Reed,timekeeper,alder-bank,soon\n", "volunteers.csv, row 3"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := copied(t, calm)
			write(t, dir, map[string]string{"sheets/alder-bank_2026-01-17.csv": fieldSheet(18), "archive/" + c.file: c.text})
			before := snapshot(t, filepath.Join(dir, "archive"))
			o := lapwing(t, dir, "run")
			if o.code != exitFailed {
				t.Errorf("exit %d, want 1\n%s", o.code, o.out)
			}
			wants(t, o.errOut, c.at)
			sameFiles(t, "archive", before, snapshot(t, filepath.Join(dir, "archive")), 5)
		})
	}
}
