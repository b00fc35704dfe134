package main

import (
	"bufio"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"

	"lapwing/pipeline/scenario"
	"lapwing/pipeline/store"
)

// part runs one piece of a benchmark in this process.
func part(ctx context.Context, what string, args []string) error {
	number := func(i int) int {
		n, err := strconv.Atoi(args[i])
		if err != nil {
			panic(err)
		}
		return n
	}
	switch what {
	case "make-season":
		return toFile(args[0], func(w io.Writer) error {
			_, err := scenario.Archive(scenario.Large(number(1)), w)
			return err
		})
	case "make-sheets":
		_, err := scenario.ArchiveSheets(scenario.Large(number(1)), args[0])
		return err
	case "make-saturday":
		return makeSaturday(ctx, args[0], args[1])
	case "make-district":
		_, err := scenario.District(args[0], scenario.DistrictOptions{Seed: 5, People: number(1), Numbers: scenario.NoNumbers})
		return err
	case "read-csv":
		return readCSV(ctx, args[0], args[1])
	case "score":
		return score(args[0], args[1])
	case "plain-loop":
		return plainLoop(ctx, args[0])
	case "plain-stream":
		return plainStream(args[0], args[1])
	case "database":
		return databaseVersion(ctx)
	}
	return fmt.Errorf("no such part %q", what)
}

// databaseVersion prints the version of the database engine.
func databaseVersion(ctx context.Context) error {
	db, err := store.Open(ctx, "", store.DBOptions{})
	if err != nil {
		return err
	}
	defer db.Close()
	version := ""
	if err := db.Get(ctx, "select version()", &version); err != nil {
		return err
	}
	fmt.Println(version)
	return nil
}

func toFile(path string, f func(io.Writer) error) error {
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	w := bufio.NewWriterSize(file, 1<<20)
	if err := f(w); err != nil {
		return err
	}
	if err := w.Flush(); err != nil {
		return err
	}
	return file.Close()
}

// makeSaturday writes a new sheet of 300 people of an archive, for the week
// after its last.
func makeSaturday(ctx context.Context, dir, archive string) error {
	db, err := store.Open(ctx, store.Archive{Dir: archive}.DatabasePath(), store.DBOptions{ReadOnly: true})
	if err != nil {
		return err
	}
	defer db.Close()
	rows, err := db.QueryContext(ctx, `
		with busiest as (select course, max(run_date) + 7 as day from main.runs group by course order by count(*) desc, course limit 1)
		select b.course, b.day::varchar, r.name, any_value(coalesce(r.age_group, '') order by r.run_date desc), any_value(coalesce(r.sex, '') order by r.run_date desc)
		from main.results r, busiest b where r.course = b.course and r.name is not null and r.runner_id is not null
		group by b.course, b.day, r.name order by hash(r.name), r.name limit 300`)
	if err != nil {
		return err
	}
	defer rows.Close()
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	var lines [][]string
	var course, day string
	for rows.Next() {
		var name, group, sex string
		if err := rows.Scan(&course, &day, &name, &group, &sex); err != nil {
			return err
		}
		n := len(lines)
		lines = append(lines, []string{strconv.Itoa(n + 1), name, group, sex, fmt.Sprintf("%d:%02d", 17+n/12, n%12*5)})
	}
	if len(lines) == 0 {
		return fmt.Errorf("the archive has nobody")
	}
	return toFile(filepath.Join(dir, course+"_"+day+".csv"), func(w io.Writer) error {
		out := csv.NewWriter(w)
		if err := out.Write([]string{"position", "name", "age group", "sex", "time"}); err != nil {
			return err
		}
		return out.WriteAll(lines)
	})
}

// score compares who is who in an export with the truth: precision and recall
// of pairs of lines, and B-cubed (Bagga and Baldwin 1998, "Entity-based
// cross-document coreferencing using the vector space model", COLING-ACL).
func score(results, truth string) error {
	people := map[string]string{}
	if err := eachRecord(truth, func(get func(string) string) {
		if get("status") == "ok" {
			people[get("sheet")+"|"+get("row_number")] = get("person")
		}
	}); err != nil {
		return err
	}
	both := map[[2]string]float64{}
	claimed, actual := map[string]float64{}, map[string]float64{}
	if err := eachRecord(results, func(get func(string) string) {
		p, ok := people[get("sheet")+"|"+get("row_number")]
		if r := get("runner_id"); ok && r != "" {
			both[[2]string{r, p}]++
			claimed[r]++
			actual[p]++
		}
	}); err != nil {
		return err
	}
	two := func(n float64) float64 { return n * (n - 1) / 2 }
	var b, c, a, n, bp, br float64
	for k, v := range both {
		b += two(v)
		bp += v * v / claimed[k[0]]
		br += v * v / actual[k[1]]
		n += v
	}
	for _, v := range claimed {
		c += two(v)
	}
	for _, v := range actual {
		a += two(v)
	}
	fmt.Printf("who is who on %.0f lines: pairs precision %.5f, recall %.5f; B-cubed precision %.5f, recall %.5f\n", n, b/c, b/a, bp/n, br/n)
	return nil
}

func eachRecord(path string, f func(get func(string) string)) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	r := csv.NewReader(file)
	head, err := r.Read()
	if err != nil {
		return err
	}
	at := map[string]int{}
	for i, h := range head {
		at[h] = i
	}
	for {
		rec, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		f(func(column string) string { return rec[at[column]] })
	}
}
