package store

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
)

// Tables of whole numbers grow as large as the archive: they are read and written
// without making a text of every number.

// ReadNumbers reads a table of whole numbers that only this program writes, and hands
// over its rows in order, v in the order of columns, good during the call. A last line
// without its line end was cut short and is left out.
func (a Archive) ReadNumbers(name string, columns []string, each func(v []int32)) error {
	path := a.File(name)
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	v := make([]int32, len(columns))
	rest, ok := bytes.CutPrefix(data, []byte(strings.Join(columns, ",")+"\n"))
	for ok {
		end := bytes.IndexByte(rest, '\n')
		if end < 0 {
			return nil
		}
		if ok = numbersOf(rest[:end], v); ok {
			each(v)
			rest = rest[end+1:]
		}
	}
	// Somebody's editor has been at it: read the rest as any other table.
	rows, err := readTable(path, columns, byProgram)
	if err != nil {
		return err
	}
	done := bytes.Count(data[:len(data)-len(rest)], []byte("\n")) - 1 // rows handed over
	for i := max(0, done); i < len(rows); i++ {
		for k, s := range rows[i] {
			n, err := strconv.ParseInt(s, 10, 32)
			if err != nil {
				return fmt.Errorf("%s:%d: %q is not a number; restore this file from a backup", path, i+2, s)
			}
			v[k] = int32(n)
		}
		each(v)
	}
	return nil
}

// numbersOf reads the numbers of a line, exactly as many as v has and nothing else.
func numbersOf(line []byte, v []int32) bool {
	k, n, digits := 0, int64(0), 0
	for i := 0; i <= len(line); i++ {
		switch {
		case i == len(line) || line[i] == ',':
			if digits == 0 || digits > 10 || n > 1<<31-1 || k == len(v) {
				return false
			}
			v[k] = int32(n)
			k++
			n, digits = 0, 0
		case line[i] >= '0' && line[i] <= '9':
			if digits++; digits <= 10 {
				n = n*10 + int64(line[i]-'0')
			}
		default:
			return false
		}
	}
	return k == len(v)
}

// AppendNumbers adds n rows of whole numbers to a table that only this program
// writes; row fills v, in the order of columns.
func (a Archive) AppendNumbers(name string, columns []string, n int, row func(i int, v []int32)) error {
	if n == 0 {
		return nil
	}
	return appendText(a.File(name), columns, byProgram, func(head []string, b *strings.Builder) error {
		at := columnsAt(head, columns)
		if slices.Contains(at, -1) {
			return fmt.Errorf("a column of %s is missing", strings.Join(columns, ","))
		}
		v, out := make([]int32, len(columns)), make([]int32, len(head))
		b.Grow(n * len(columns) * 6)
		var line []byte
		for i := range n {
			row(i, v)
			for k, x := range v {
				out[at[k]] = x
			}
			line = line[:0]
			for k, x := range out {
				if k > 0 {
					line = append(line, ',')
				}
				line = strconv.AppendInt(line, int64(x), 10)
			}
			b.Write(append(line, '\n'))
		}
		return nil
	})
}
