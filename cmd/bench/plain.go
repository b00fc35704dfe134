package main

import (
	"context"
	"database/sql"
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"time"

	"github.com/xuri/excelize/v2"

	"lapwing/pipeline/store"
)

// The references: what the plainest program that does a comparable amount of
// work costs on this machine.

// readCSV is the database's own reader, told everything about the file, into a
// table on disk.
func readCSV(ctx context.Context, path, database string) error {
	db, err := store.Open(ctx, database, store.DBOptions{})
	if err != nil {
		return err
	}
	q := `create table season as select * from read_csv(` + store.Quote(path) + `, auto_detect = false, header = true, delim = ',', quote = '"', escape = '"',
		columns = {'position': 'integer', 'name': 'varchar', 'number': 'varchar', 'age_group': 'varchar', 'sex': 'varchar', 'club': 'varchar', 'time': 'varchar', 'course': 'varchar', 'date': 'date'})`
	if err := db.Exec(ctx, q); err != nil {
		return err
	}
	return db.Close()
}

// plainPasses is how often plainLoop goes over the results.
const plainPasses = 100

// plainLoop goes over the results of an archive in the order of the model, by
// runner and day, and fits one effect for every runner and one for every run by
// turns (Gauss-Seidel): the least that any program must do that tells runners
// from runs. Reading the results is not timed.
func plainLoop(ctx context.Context, archive string) error {
	db, err := store.Open(ctx, store.Archive{Dir: archive}.DatabasePath(), store.DBOptions{ReadOnly: true})
	if err != nil {
		return err
	}
	defer db.Close()
	rows, err := db.QueryContext(ctx, `
		select x.runner_no, l.run_no, x.time_ms from record.result x join record.line l using (line_no) join record.run r on r.run_no = l.run_no
		where x.runner_no > 0 and x.time_ms > 0 and x.counts & 2 > 0 order by x.runner_no, r.run_date, l.run_no, l.line_no`)
	if err != nil {
		return err
	}
	defer rows.Close()
	var offsets, run []int32
	var y []float32
	last, runs := int32(-1), int32(0)
	var runner, no, ms sql.RawBytes
	for rows.Next() {
		if err := rows.Scan(&runner, &no, &ms); err != nil {
			return err
		}
		var v [3]int
		for i, b := range []sql.RawBytes{runner, no, ms} {
			if v[i], err = strconv.Atoi(string(b)); err != nil {
				return err
			}
		}
		if int32(v[0]) != last {
			last = int32(v[0])
			offsets = append(offsets, int32(len(y)))
		}
		run = append(run, int32(v[1]))
		runs = max(runs, int32(v[1]))
		y = append(y, float32(math.Log(float64(v[2])/1000)))
	}
	if err := rows.Err(); err != nil {
		return err
	}
	offsets = append(offsets, int32(len(y)))
	began := time.Now()
	effect, sum, n := make([]float64, runs+1), make([]float64, runs+1), make([]float64, runs+1)
	for _, e := range run {
		n[e]++
	}
	for range plainPasses {
		clear(sum)
		for r := range len(offsets) - 1 {
			from, to := offsets[r], offsets[r+1]
			mean := 0.0
			for i := from; i < to; i++ {
				mean += float64(y[i]) - effect[run[i]]
			}
			mean /= float64(to - from)
			for i := from; i < to; i++ {
				sum[run[i]] += float64(y[i]) - mean
			}
		}
		for e := range effect {
			if n[e] > 0 {
				effect[e] = sum[e] / n[e]
			}
		}
	}
	spread := 0.0
	for e := range effect {
		spread += effect[e] * effect[e]
	}
	fmt.Printf("timing\tplain\t%.4f\n", time.Since(began).Seconds())
	fmt.Printf("%d passes over %d results of %d runners in %d runs; sum of squares %.3f\n", plainPasses, len(y), len(offsets)-1, runs, spread)
	return nil
}

// plainStream reads the cells of all workbooks in a folder and streams the same
// cells, without any style, into new workbooks. Only the writing is timed.
func plainStream(folder, to string) error {
	paths, err := filepath.Glob(filepath.Join(folder, "*.xlsx"))
	if err != nil || len(paths) == 0 {
		return fmt.Errorf("no workbooks in %s: %v", folder, err)
	}
	took, cells := time.Duration(0), 0
	for k, path := range paths {
		tabs, names, err := readCells(path)
		if err != nil {
			return err
		}
		began := time.Now()
		f := excelize.NewFile()
		for i, rows := range tabs {
			if _, err := f.NewSheet(names[i]); err != nil {
				return err
			}
			w, err := f.NewStreamWriter(names[i])
			if err != nil {
				return err
			}
			for r, row := range rows {
				if len(row) == 0 {
					continue
				}
				cells += len(row)
				if err := w.SetRow("A"+strconv.Itoa(r+1), row); err != nil {
					return err
				}
			}
			if err := w.Flush(); err != nil {
				return err
			}
		}
		if err := f.SaveAs(filepath.Join(to, fmt.Sprintf("plain%d.xlsx", k))); err != nil {
			return err
		}
		if err := f.Close(); err != nil {
			return err
		}
		took += time.Since(began)
	}
	fmt.Printf("timing\tplain\t%.4f\n", took.Seconds())
	fmt.Printf("%d workbooks, %d cells\n", len(paths), cells)
	return nil
}

// readCells reads every tab of a workbook; what is a number stays one.
func readCells(path string) (tabs [][][]any, names []string, err error) {
	f, err := excelize.OpenFile(path, excelize.Options{RawCellValue: true})
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	for _, name := range f.GetSheetList() {
		rows, err := f.GetRows(name)
		if err != nil {
			return nil, nil, err
		}
		tab := make([][]any, len(rows))
		for i, r := range rows {
			tab[i] = make([]any, len(r))
			for k, c := range r {
				if v, err := strconv.ParseFloat(c, 64); err == nil {
					tab[i][k] = v
				} else {
					tab[i][k] = c
				}
			}
		}
		tabs, names = append(tabs, tab), append(names, name)
	}
	return tabs, names, nil
}
