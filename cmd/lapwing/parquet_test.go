package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"
	"github.com/apache/arrow/go/v17/arrow/memory"
	"github.com/apache/arrow/go/v17/parquet/file"
	"github.com/apache/arrow/go/v17/parquet/pqarrow"
)

// TestParquet reads the exported Parquet with Arrow's reader, which shares no
// code with the database that wrote it, and compares every cell with the CSV
// export.
func TestParquet(t *testing.T) {
	dir, _ := finished(t)
	for _, private := range []bool{false, true} {
		flags := []string{}
		if private {
			flags = []string{"--private"}
		}
		t.Run(fmt.Sprintf("private %v", private), func(t *testing.T) {
			out := t.TempDir()
			must(t, dir, append([]string{"export", filepath.Join(out, "csv")}, flags...)...)
			must(t, dir, append([]string{"export", filepath.Join(out, "parquet"), "--format", "parquet"}, flags...)...)
			views, err := filepath.Glob(filepath.Join(out, "csv", "*.csv"))
			if err != nil || len(views) < 5 {
				t.Fatal(err, len(views))
			}
			for _, v := range views {
				name := strings.TrimSuffix(filepath.Base(v), ".csv")
				want := readCSV(t, v)
				if len(want) < 2 && name != "problems" { // the demo's first weeks have none
					t.Errorf("%s: nothing exported", name)
				}
				compareTables(t, name, want, readParquet(t, filepath.Join(out, "parquet"), name))
			}
		})
	}
}

func readCSV(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// readParquet reads one view, from its one file or from a file a year in
// order, as a heading and rows of text.
func readParquet(t *testing.T, dir, view string) [][]string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, view, "year=*", "*.parquet"))
	if err != nil {
		t.Fatal(err)
	}
	slices.Sort(files)
	if len(files) == 0 {
		files = []string{filepath.Join(dir, view+".parquet")}
	}
	var out [][]string
	for _, name := range files {
		r, err := file.OpenParquetFile(name, false)
		if err != nil {
			t.Fatal(err)
		}
		defer r.Close()
		ar, err := pqarrow.NewFileReader(r, pqarrow.ArrowReadProperties{}, memory.DefaultAllocator)
		if err != nil {
			t.Fatal(err)
		}
		table, err := ar.ReadTable(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		defer table.Release()
		if out == nil {
			var head []string
			for _, f := range table.Schema().Fields() {
				head = append(head, f.Name)
			}
			out = append(out, head)
		}
		records := array.NewTableReader(table, 0)
		defer records.Release()
		for records.Next() {
			rec := records.Record()
			for i := range int(rec.NumRows()) {
				row := make([]string, rec.NumCols())
				for k := range row {
					row[k] = cellText(rec.Column(k), i)
				}
				out = append(out, row)
			}
		}
		if err := records.Err(); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// cellText writes a cell as a CSV would hold it.
func cellText(a arrow.Array, i int) string {
	if a.IsNull(i) {
		return ""
	}
	switch a := a.(type) {
	case *array.Date32:
		return a.Value(i).FormattedString()
	case *array.Float64:
		return strconv.FormatFloat(a.Value(i), 'g', -1, 64)
	case *array.Boolean:
		return strconv.FormatBool(a.Value(i))
	}
	return a.ValueStr(i)
}

// compareTables compares cell by cell; rows may come in another order where a
// view is split into years, so both are sorted first.
func compareTables(t *testing.T, name string, want, got [][]string) {
	t.Helper()
	if len(want) != len(got) {
		t.Errorf("%s: %d rows in CSV, %d in Parquet", name, len(want)-1, len(got)-1)
		return
	}
	if !slices.Equal(want[0], got[0]) {
		t.Errorf("%s: columns %v in CSV, %v in Parquet", name, want[0], got[0])
		return
	}
	for _, rows := range [][][]string{want[1:], got[1:]} {
		for _, r := range rows {
			for k, v := range r {
				if f, err := strconv.ParseFloat(v, 64); err == nil && strings.ContainsAny(v, ".eE") {
					r[k] = strconv.FormatFloat(f, 'g', -1, 64)
				}
			}
		}
		slices.SortFunc(rows, slices.Compare)
	}
	cells := 0
	for i := 1; i < len(want); i++ {
		for k := range want[i] {
			cells++
			if want[i][k] != got[i][k] {
				t.Errorf("%s, row %d, %s: %q in CSV, %q in Parquet", name, i, want[0][k], want[i][k], got[i][k])
				return
			}
		}
	}
	t.Logf("%s: %d cells agree", name, cells)
}
