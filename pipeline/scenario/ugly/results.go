package ugly

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
)

// Result is one row of the exported results.
type Result struct {
	Sheet, Tab     string
	Row            int
	Course, Date   string
	Session        string
	Status         string
	TimeMS         int32 // 0: none
	Sex            string
	AgeLow, AgeUp  int // -1: none
	As, Name, Club string
}

// ReadResults reads an exported results.csv. Columns are found by name.
func ReadResults(r io.Reader) ([]Result, error) {
	c := csv.NewReader(r)
	c.ReuseRecord = true
	h, err := c.Read()
	if err != nil {
		return nil, fmt.Errorf("heading of the results: %w", err)
	}
	at := map[string]int{}
	for i, n := range h {
		at[n] = i
	}
	for _, n := range []string{"sheet", "row_number", "course", "run_date", "status", "sex", "session", "tab", "time_ms", "age_low", "age_high", "taking_part_as", "name"} {
		if _, ok := at[n]; !ok {
			return nil, fmt.Errorf("the results have no column %q", n)
		}
	}
	whole := func(s string, none int) (int, error) {
		if s == "" {
			return none, nil
		}
		return strconv.Atoi(s)
	}
	var out []Result
	for {
		v, err := c.Read()
		if err == io.EOF {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		get := func(n string) string { return v[at[n]] }
		x := Result{Sheet: get("sheet"), Tab: get("tab"), Course: get("course"), Date: get("run_date"), Session: get("session"), Status: get("status"),
			Sex: get("sex"), As: get("taking_part_as"), Name: get("name")}
		line, _ := c.FieldPos(0)
		for _, f := range []struct {
			to   *int
			name string
			none int
		}{{&x.Row, "row_number", 0}, {&x.AgeLow, "age_low", -1}, {&x.AgeUp, "age_high", -1}} {
			if *f.to, err = whole(get(f.name), f.none); err != nil {
				return nil, fmt.Errorf("results line %d, %s: %w", line, f.name, err)
			}
		}
		ms, err := whole(get("time_ms"), 0)
		if err != nil {
			return nil, fmt.Errorf("results line %d, time_ms: %w", line, err)
		}
		x.TimeMS = int32(ms)
		out = append(out, x)
	}
}
