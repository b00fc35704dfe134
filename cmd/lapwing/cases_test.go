package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/store"
)

// The cases of testdata/cases are small stories of the program as a whole, one
// a file, in these sections:
//
//	load/NAME.csv       a sheet of the first load; NAME says course and date
//	then/NAME.csv       a sheet of a second load, after the first
//	archive/NAME.csv    a side table, there from the start; {NAME.csv} stands
//	                    for the hash of that sheet, {tab} for its tab, {tab!}
//	                    for its tab before a row
//	settings            more lines of lapwing.toml
//	commands            commands run after the loads, one a line
//	exit                exit code of the last load, 0 where it is not given
//	out                 texts that the loads and commands must print, one a line
//	results, runs,      the export: first the columns looked at, then every row
//	runners, courses,   of the file, in its order; a blank cell is "-"
//	volunteers
//	problems            texts that lapwing sheets problems --all must print
//
// Every case is run as it is and with each sheet as a workbook of the same
// cells, as real numbers, times and dates; every sixth also with all cells as
// text. What is expected is the same.
var caseSections = regexp.MustCompile(`^(load/.+\.csv|then/.+\.csv|archive/.+\.csv|settings|commands|exit|out|results|runs|runners|courses|volunteers|problems)$`)

// caseForms are the forms in which the sheets of a case are written.
var caseForms = []string{"csv", "real cells", "text cells"}

func TestCases(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) < 15 {
		t.Fatalf("only %d cases found", len(files))
	}
	for i, path := range files {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		c, err := parseCase(path, data)
		if err != nil {
			t.Error(err)
			continue
		}
		forms := caseForms
		if i%6 > 0 {
			forms = caseForms[:2]
		}
		for _, form := range forms {
			t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar")+" "+form, func(t *testing.T) {
				t.Parallel()
				c.run(t, form)
			})
		}
	}
}

// TestCaseSections refuses what is no case.
func TestCaseSections(t *testing.T) {
	for name, text := range map[string]string{
		"unknown section":  "-- load/a_2026-01-03.csv --\nPos\n-- reslts --\nposition\n",
		"no sheet":         "-- results --\nposition\n",
		"nothing expected": "-- load/a_2026-01-03.csv --\nPos\n",
		"no section":       "just a text\n",
		"empty section":    "-- load/a_2026-01-03.csv --\nPos\n-- results --\n",
		"section twice":    "-- load/a_2026-01-03.csv --\nPos\n-- out --\na\n-- out --\nb\n",
	} {
		if _, err := parseCase("x.txtar", []byte(text)); err == nil {
			t.Errorf("%s: taken for a case", name)
		}
	}
}

// section is a part of a case with the line on which it begins.
type section struct {
	name, text string
	line       int
}

type testCase struct {
	path     string
	sections []section
}

func parseCase(path string, data []byte) (*testCase, error) {
	c := &testCase{path: path}
	seen := map[string]bool{}
	line := strings.Count(string(txtar.Parse(data).Comment), "\n") + 1
	sheets, expected := 0, 0
	for _, f := range txtar.Parse(data).Files {
		switch {
		case !caseSections.MatchString(f.Name):
			return nil, fmt.Errorf("%s:%d: there is no section %q", path, line, f.Name)
		case seen[f.Name]:
			return nil, fmt.Errorf("%s:%d: section %q stands twice", path, line, f.Name)
		case len(strings.TrimSpace(string(f.Data))) == 0:
			return nil, fmt.Errorf("%s:%d: section %q is empty", path, line, f.Name)
		}
		seen[f.Name] = true
		switch f.Name {
		case "out", "results", "runs", "runners", "courses", "volunteers", "problems":
			expected++
		}
		if strings.HasPrefix(f.Name, "load/") {
			sheets++
		}
		c.sections = append(c.sections, section{f.Name, string(f.Data), line})
		line += strings.Count(string(f.Data), "\n") + 1
	}
	if sheets == 0 || expected == 0 {
		return nil, fmt.Errorf("%s: a case needs a sheet to load and something expected", path)
	}
	return c, nil
}

func (c *testCase) run(t *testing.T, form string) {
	dir := folderWith(t, nil)
	hashes := map[string]string{"{tab}": "", "{tab!}": ""}
	if form != "csv" {
		hashes = map[string]string{"{tab}": "Sheet1", "{tab!}": "Sheet1!"}
	}
	for _, s := range c.sections {
		kind, name, ok := strings.Cut(s.name, "/")
		if !ok || kind == "archive" {
			continue
		}
		data := []byte(s.text)
		at := name
		if form != "csv" {
			data, at = sheetAsWorkbook(t, s.text, form == "real cells"), strings.TrimSuffix(name, ".csv")+".xlsx"
		}
		hashes["{"+name+"}"] = store.Hash(data)
		write(t, dir, map[string]string{kind + "/" + at: string(data)})
	}
	fill := func(text string) string {
		for mark, hash := range hashes {
			text = strings.ReplaceAll(text, mark, hash)
		}
		return text
	}
	var commands []string
	wantExit, exit := 0, 0
	for _, s := range c.sections {
		switch {
		case strings.HasPrefix(s.name, "archive/"):
			write(t, dir, map[string]string{s.name: fill(s.text)})
		case s.name == "settings":
			write(t, dir, map[string]string{"lapwing.toml": testConfig + s.text})
		case s.name == "commands":
			commands = strings.Split(strings.TrimSpace(s.text), "\n")
		case s.name == "exit":
			n, err := strconv.Atoi(strings.TrimSpace(s.text))
			if err != nil {
				t.Fatalf("%s:%d: exit: %v", c.path, s.line, err)
			}
			wantExit = n
		}
	}
	var printed strings.Builder
	for _, folder := range []string{"load", "then"} {
		if exists(dir, folder) {
			o := lapwing(t, dir, "load", filepath.Join(dir, folder))
			exit = o.code
			printed.WriteString(o.out + o.errOut)
		}
	}
	if exit != wantExit {
		t.Fatalf("%s: load ends with exit %d, want %d\n%s", c.path, exit, wantExit, printed.String())
	}
	for _, line := range commands {
		words := split(line)
		if form != "csv" {
			for i, w := range words {
				words[i] = regexp.MustCompile(`\.csv\b`).ReplaceAllString(w, ".xlsx")
			}
		}
		o := lapwing(t, dir, words...)
		if o.code != exitOK {
			t.Fatalf("%s: lapwing %s: exit %d\n%s%s", c.path, line, o.code, o.out, o.errOut)
		}
		printed.WriteString(o.out + o.errOut)
	}
	out := filepath.Join(dir, "out")
	must(t, dir, "export", out, "--private")
	if form == "csv" {
		must(t, dir, "check")
	}
	for _, s := range c.sections {
		switch s.name {
		case "out":
			c.texts(t, s, printed.String())
		case "problems":
			o := must(t, dir, "sheets", "problems", "--all")
			c.texts(t, s, o.out)
		case "results", "runs", "runners", "courses", "volunteers":
			c.table(t, s, readCSV(t, filepath.Join(out, s.name+".csv")))
		}
	}
}

// texts looks for each line of a section.
func (c *testCase) texts(t *testing.T, s section, printed string) {
	t.Helper()
	printed = strings.ReplaceAll(printed, ".xlsx", ".csv")
	for i, want := range strings.Split(strings.TrimSpace(s.text), "\n") {
		if !strings.Contains(printed, want) {
			t.Errorf("%s:%d: %q was not printed:\n%s", c.path, s.line+1+i, want, printed)
		}
	}
}

// table compares the named columns of an exported file with a section.
func (c *testCase) table(t *testing.T, s section, rows [][]string) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(s.text), "\n")
	var at []int
	for _, name := range strings.Split(lines[0], ",") {
		k := slices.Index(rows[0], strings.TrimSpace(name))
		if k < 0 {
			t.Fatalf("%s:%d: %s.csv has no column %q; it has %v", c.path, s.line+1, s.name, name, rows[0])
		}
		at = append(at, k)
	}
	var got []string
	for _, r := range rows[1:] {
		var cells []string
		for _, k := range at {
			v := strings.Replace(r[k], ".xlsx", ".csv", 1)
			if v == "" {
				v = "-"
			}
			cells = append(cells, v)
		}
		got = append(got, strings.Join(cells, ","))
	}
	want := lines[1:]
	for i, w := range want {
		fields := strings.Split(w, ",")
		for k := range fields {
			fields[k] = strings.TrimSpace(fields[k])
		}
		want[i] = strings.Join(fields, ",")
	}
	if len(got) != len(want) {
		t.Errorf("%s:%d: %s.csv has %d rows, want %d:\n%s", c.path, s.line, s.name, len(got), len(want), strings.Join(got, "\n"))
		return
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%s:%d: %s.csv, row %d is\n  %s\nwant\n  %s", c.path, s.line+2+i, s.name, i+1, got[i], want[i])
		}
	}
}

var (
	wholeNumber = regexp.MustCompile(`^[1-9][0-9]{0,5}$`)
	minutes     = regexp.MustCompile(`^([0-9]{1,3}):([0-5][0-9])$`)
	hours       = regexp.MustCompile(`^([0-9]{1,2}):([0-5][0-9]):([0-5][0-9])$`)
)

// sheetAsWorkbook writes the cells of a CSV sheet into a workbook: as text, or
// as the numbers, times of day and dates that a spreadsheet program makes of
// them when they are typed in. Headings are text in any case.
func sheetAsWorkbook(t *testing.T, text string, real bool) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	style := func(format string) int {
		id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		if err != nil {
			t.Fatal(err)
		}
		return id
	}
	duration, date := style("[h]:mm:ss"), style("yyyy-mm-dd")
	for r, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		for k, v := range strings.Split(line, ",") {
			cell, err := excelize.CoordinatesToCellName(k+1, r+1)
			if err != nil {
				t.Fatal(err)
			}
			var value any = v
			look := 0
			if real {
				value, look = realCell(t, v, duration, date)
			}
			if v == "" {
				continue
			}
			if err := f.SetCellValue("Sheet1", cell, value); err != nil {
				t.Fatal(err)
			}
			if look != 0 {
				if err := f.SetCellStyle("Sheet1", cell, cell, look); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func realCell(t *testing.T, v string, duration, date int) (value any, look int) {
	t.Helper()
	number := func(s string) int {
		n, err := strconv.Atoi(s)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	if wholeNumber.MatchString(v) {
		return number(v), 0
	}
	if m := minutes.FindStringSubmatch(v); m != nil {
		return float64(60*number(m[1])+number(m[2])) / 86400, duration
	}
	if m := hours.FindStringSubmatch(v); m != nil {
		return float64(3600*number(m[1])+60*number(m[2])+number(m[3])) / 86400, duration
	}
	if d, err := time.Parse(time.DateOnly, v); err == nil {
		return d.Sub(time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)).Hours() / 24, date
	}
	return v, 0
}
