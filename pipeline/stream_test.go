package pipeline

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/sheet"
)

// seasonList writes a season list of about n lines with some that a person
// must look at: people who stand twice, times out of order, unreadable ones.
func seasonList(t *testing.T, n int, mixed bool) []byte {
	t.Helper()
	var b bytes.Buffer
	if _, err := scenario.Archive(scenario.Large(n), &b); err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(b.String(), "\n")
	head, rows := lines[0], lines[1:len(lines)-1]
	r := rand.New(rand.NewPCG(7, 7))
	for range n / 50 {
		i := 1 + r.IntN(len(rows)-1)
		f := strings.Split(rows[i], ",")
		switch r.IntN(5) {
		case 0:
			f[1], f[2] = strings.Split(rows[i-1], ",")[1], strings.Split(rows[i-1], ",")[2] // the person before again
		case 1:
			f[6] = "1" + f[6]
		case 2:
			f[6] = "quick"
		case 3:
			f[6] = "DNS"
		case 4:
			f[1], f[2] = "Unknown", ""
		}
		rows[i] = strings.Join(f, ",")
	}
	if mixed {
		r.Shuffle(len(rows), func(i, k int) { rows[i], rows[k] = rows[k], rows[i] })
	}
	return []byte(head + strings.Join(rows, ""))
}

// TestLargeSheet loads a season list with its lines read as they are written,
// and read before: the same in every table and in the report, for lists in
// order of date and mixed ones. A copy loaded to make the database again is
// read in the same way.
func TestLargeSheet(t *testing.T) {
	for _, mixed := range []bool{false, true} {
		t.Run(fmt.Sprintf("mixed %v", mixed), func(t *testing.T) {
			data := seasonList(t, 30_000, mixed)
			load := func(large int) (string, *LoadReport, *Pipeline) {
				defer func(n int) { largeSheet = n }(largeSheet)
				largeSheet = large
				dir := t.TempDir()
				pl := openForTest(t, dir)
				file := filepath.Join(dir, "season.csv")
				if err := os.WriteFile(file, data, 0o644); err != nil {
					t.Fatal(err)
				}
				rep, err := pl.Load(context.Background(), []string{file}, ByHand{})
				if err != nil {
					t.Fatal(err)
				}
				return sheetTables(t, pl), rep, pl
			}
			before, wantRep, _ := load(len(data) + 1)
			after, gotRep, pl := load(1000)
			if !reflect.DeepEqual(wantRep, gotRep) {
				t.Errorf("report\n%+v\nwant\n%+v", gotRep.Sheets[0].Counts, wantRep.Sheets[0].Counts)
			}
			if n := gotRep.Sheets[0].Counts["doubtful"]; n < 100 {
				t.Errorf("only %d doubtful lines", n)
			}
			if before != after {
				t.Errorf("tables differ: %s", firstDifference(before, after))
			}
			defer func(n int) { largeSheet = n }(largeSheet)
			largeSheet = 1000
			if err := pl.startOver(context.Background()); err != nil {
				t.Fatal(err)
			}
			if again := sheetTables(t, pl); again != before {
				t.Errorf("tables of the copy differ: %s", firstDifference(before, again))
			}
		})
	}
}

// TestLargeSheetWithoutLines refuses a large sheet none of whose rows stands
// for a finisher, and leaves nothing of it behind.
func TestLargeSheetWithoutLines(t *testing.T) {
	defer func(n int) { largeSheet = n }(largeSheet)
	largeSheet = 100
	dir := t.TempDir()
	pl := openForTest(t, dir)
	file := filepath.Join(dir, "alder-bank_2026-01-03.csv")
	text := "position,name,time\n" + strings.Repeat(",Ines Okafor,DNS\n,Lotte Brandt,DNS\n", 40)
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	rep, err := pl.Load(context.Background(), []string{file}, ByHand{})
	if err != nil || rep.Refused != 1 || !strings.Contains(rep.Sheets[0].Why, "stands for a finisher") {
		t.Fatalf("%v, %+v", err, rep)
	}
	left := 0
	if err := pl.DB.Get(context.Background(), "select (select count(*) from sheet.sheet) + (select count(*) from record.run) + (select count(*) from record.line)", &left); err != nil || left != 0 {
		t.Errorf("%d rows left in the database, %v", left, err)
	}
	if len(pl.courses.runs) != 0 {
		t.Errorf("%d runs still known", len(pl.courses.runs))
	}
	files, _ := filepath.Glob(filepath.Join(dir, "archive", "sheets", "*"))
	if len(files) != 0 {
		t.Errorf("files left in the archive: %v", files)
	}
}

func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range x {
		if i >= len(y) || x[i] != y[i] {
			return fmt.Sprintf("line %d: %q and %q", i, x[i], y[min(i, len(y)-1)])
		}
	}
	return fmt.Sprintf("%d and %d lines", len(x), len(y))
}

// sheetTables is the text of every table that loading fills.
func sheetTables(t *testing.T, pl *Pipeline) string {
	t.Helper()
	var out strings.Builder
	for _, q := range []string{
		"select sheet_no, path, format, encoding, dialect, rows from sheet.sheet order by all",
		"select * from sheet.part order by part_no", "select * from sheet.column order by part_no, column_no",
		"select * from sheet.problem order by all", "select * from record.run order by run_no", "select * from record.course order by course_no",
		`select l.* exclude (name_no, number_no, club_no), n.text, b.text, c.text from record.line l join record.text n on n.text_no = name_no
			join record.text b on b.text_no = number_no join record.text c on c.text_no = club_no order by line_no`,
		"select text, count(*) from record.text group by text order by text",
	} {
		rows, err := pl.DB.QueryContext(context.Background(), q)
		if err != nil {
			t.Fatal(err)
		}
		columns, err := rows.Columns()
		if err != nil {
			t.Fatal(err)
		}
		cells, into := make([]sql.NullString, len(columns)), make([]any, len(columns))
		for i := range cells {
			into[i] = &cells[i]
		}
		n := 0
		for rows.Next() {
			if err := rows.Scan(into...); err != nil {
				t.Fatal(err)
			}
			for _, c := range cells {
				out.WriteString(c.String)
				out.WriteByte('|')
			}
			out.WriteByte('\n')
			n++
		}
		if err := rows.Err(); err != nil {
			t.Fatal(err)
		}
		rows.Close()
		if n == 0 {
			t.Fatalf("no rows: %s", q)
		}
	}
	return out.String()
}

// TestRowsAhead hands over the same rows as reading on one goroutine, and stops where
// it is told to, also between batches.
func TestRowsAhead(t *testing.T) {
	var b strings.Builder
	b.WriteString("Position,Name,Time\n")
	for i := range 10_000 {
		fmt.Fprintf(&b, "%d,\"Ida \"\"%d\"\" Holm\",%d:%02d\n", i+1, i, 20+i/600, i%60)
	}
	s, err := sheet.Read("alder-bank_2026-01-03.csv", []byte(b.String()), sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	rows := func(each func(func(int, []string) error) error, stopAt int) (out []string, err error) {
		err = each(func(row int, cells []string) error {
			if row == stopAt {
				return errors.New("enough")
			}
			out = append(out, fmt.Sprint(row, strings.Join(cells, "|")))
			return nil
		})
		return out, err
	}
	for _, stopAt := range []int{0, 2, 4097, 4098, 9000} {
		want, wantErr := rows(s.Parts[0].Each, stopAt)
		got, err := rows(rowsAhead(s.Parts[0]), stopAt)
		if !slices.Equal(got, want) || fmt.Sprint(err) != fmt.Sprint(wantErr) {
			t.Errorf("stopped at row %d: %d rows, %v; want %d, %v", stopAt, len(got), err, len(want), wantErr)
		}
	}
	if all, _ := rows(rowsAhead(s.Parts[0]), 0); len(all) != 10_000 {
		t.Errorf("%d rows", len(all))
	}
}
