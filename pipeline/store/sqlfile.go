package store

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strconv"
	"strings"
)

// SQLFile is one file of the sql folder: a comment header and one SELECT.
//
// The header names the grain, the key and every column:
//
//	-- One row a run.
//	-- key: run_no
//	-- run_no: number of the run in this database
//	select …
//
// Lines "-- name: words" describe columns; "-- key: a, b" names the columns
// that together never repeat and are never NULL.
type SQLFile struct {
	Path    string // record/result.sql
	Table   string // record.result
	Grain   string
	Key     []string
	Columns map[string]string // column → meaning
	Select  string            // the whole file, comments included
}

// StepError is a failure in one SQL file, with the line where the engine says
// (0 where it does not).
type StepError struct {
	File string
	Line int
	Err  error
}

func (e *StepError) Error() string {
	if e.Line > 0 {
		return fmt.Sprintf("sql/%s:%d: %v", e.File, e.Line, e.Err)
	}
	return fmt.Sprintf("sql/%s: %v", e.File, e.Err)
}

func (e *StepError) Unwrap() error { return e.Err }

var headerWords = regexp.MustCompile(`^-- ([a-z_0-9]+): (.*)$`)

// ParseSQLFile reads a file of the sql folder and checks its header.
func ParseSQLFile(fsys fs.FS, name string) (*SQLFile, error) {
	text, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, err
	}
	f := &SQLFile{Path: name, Columns: map[string]string{}, Select: strings.TrimSpace(string(text))}
	f.Table = path.Dir(name) + "." + strings.TrimSuffix(path.Base(name), ".sql")
	if f.Select == "" || strings.HasSuffix(f.Select, ";") {
		return nil, &StepError{name, 0, fmt.Errorf("must hold one SELECT without a closing semicolon")}
	}
	var grain []string
	for i, line := range strings.Split(f.Select, "\n") {
		if !strings.HasPrefix(line, "--") {
			break
		}
		m := headerWords.FindStringSubmatch(line)
		switch {
		case m == nil && len(f.Columns) == 0 && f.Key == nil:
			grain = append(grain, strings.TrimPrefix(strings.TrimPrefix(line, "--"), " "))
		case m == nil:
		case m[1] == "key":
			for _, k := range strings.Split(m[2], ",") {
				f.Key = append(f.Key, strings.TrimSpace(k))
			}
		default:
			if _, twice := f.Columns[m[1]]; twice {
				return nil, &StepError{name, i + 1, fmt.Errorf("column %s is described twice", m[1])}
			}
			f.Columns[m[1]] = m[2]
		}
	}
	f.Grain = strings.TrimSpace(strings.Join(grain, " "))
	if f.Grain == "" {
		return nil, &StepError{name, 1, fmt.Errorf("must open with a comment that says what one row is")}
	}
	return f, nil
}

var lineIn = regexp.MustCompile(`LINE (\d+):`)

// stepError moves the engine's line number past the wrapper line.
func (f *SQLFile) stepError(err error, wrapperLines int) error {
	if err == nil {
		return nil
	}
	line := 0
	if m := lineIn.FindStringSubmatch(err.Error()); m != nil {
		line, _ = strconv.Atoi(m[1])
		line -= wrapperLines
	}
	return &StepError{f.Path, line, err}
}

// MakeTable runs the file into its table, checks its key and keeps its words
// as comments.
func (d *DB) MakeTable(ctx context.Context, f *SQLFile) error { return d.make(ctx, f, "table") }

// MakeView makes the file a view.
func (d *DB) MakeView(ctx context.Context, f *SQLFile) error { return d.make(ctx, f, "view") }

func (d *DB) make(ctx context.Context, f *SQLFile, what string) error {
	if err := d.Exec(ctx, fmt.Sprintf("create or replace %s %s as\n%s", what, f.Table, f.Select)); err != nil {
		return f.stepError(err, 1)
	}
	if what == "table" {
		if err := d.checkKey(ctx, f); err != nil {
			return err
		}
	}
	if err := d.Exec(ctx, fmt.Sprintf("comment on %s %s is %s", what, f.Table, Quote(f.Grain))); err != nil {
		return f.stepError(err, 0)
	}
	if what == "table" {
		for column, words := range f.Columns {
			if err := d.Exec(ctx, fmt.Sprintf("comment on column %s.%s is %s", f.Table, column, Quote(words))); err != nil {
				return f.stepError(fmt.Errorf("the header describes column %s: %w", column, err), 0)
			}
		}
	}
	return nil
}

func (d *DB) checkKey(ctx context.Context, f *SQLFile) error {
	if len(f.Key) == 0 {
		return nil
	}
	var n, distinct, nulls int64
	key := strings.Join(f.Key, ", ")
	tests := make([]string, len(f.Key))
	for i, k := range f.Key {
		tests[i] = k + " is null"
	}
	q := fmt.Sprintf("select count(*), (select count(*) from (select distinct %s from %s)), count(*) filter (%s) from %s",
		key, f.Table, strings.Join(tests, " or "), f.Table)
	if err := d.Get(ctx, q, &n, &distinct, &nulls); err != nil {
		return f.stepError(err, 0)
	}
	if n != distinct || nulls > 0 {
		return f.stepError(fmt.Errorf("key (%s) of %s is not a key: %d rows, %d distinct, %d with a blank", key, f.Table, n, distinct, nulls), 0)
	}
	return nil
}
