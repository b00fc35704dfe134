package store

import (
	"os"
	"reflect"
	"strings"
	"testing"
)

// TestNumbers reads tables of whole numbers as they were written, as an editor may
// leave them, and cut short at every byte.
func TestNumbers(t *testing.T) {
	columns := []string{"runner", "row", "lines"}
	rows := [][]int32{{1, 2, 3}, {40, 0, 2147483647}, {7, 8, 9}}
	write := func(a Archive, rows [][]int32) {
		t.Helper()
		if err := a.AppendNumbers("n.csv", columns, len(rows), func(i int, v []int32) { copy(v, rows[i]) }); err != nil {
			t.Fatal(err)
		}
	}
	read := func(a Archive) (out [][]int32, err error) {
		err = a.ReadNumbers("n.csv", columns, func(v []int32) { out = append(out, append([]int32(nil), v...)) })
		return out, err
	}
	a := newArchive(t)
	if got, err := read(a); err != nil || len(got) != 0 {
		t.Fatalf("no table: read %v, %v", got, err)
	}
	write(a, rows[:2])
	write(a, rows[2:])
	whole, err := os.ReadFile(a.File("n.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if want := "runner,row,lines\n1,2,3\n40,0,2147483647\n7,8,9\n"; string(whole) != want {
		t.Fatalf("wrote %q, want %q", whole, want)
	}
	head := len("runner,row,lines\n")
	for cut := head; cut <= len(whole); cut++ {
		a := newArchive(t)
		if err := os.WriteFile(a.File("n.csv"), whole[:cut], 0o644); err != nil {
			t.Fatal(err)
		}
		var want [][]int32
		want = append(want, rows[:strings.Count(string(whole[:cut]), "\n")-1]...)
		if got, err := read(a); err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("cut to %q: read %v, %v; want %v", whole[:cut], got, err, want)
		}
		write(a, [][]int32{{5, 5, 5}})
		if got, err := read(a); err != nil || !reflect.DeepEqual(got, append(want, []int32{5, 5, 5})) {
			t.Fatalf("cut to %q and appended to: read %v, %v", whole[:cut], got, err)
		}
	}
	for text, want := range map[string]string{
		"\ufeffrunner,row,lines\r\n1,2,3\r\n4,5,6\r\n":           "",
		"row,runner,lines\n2,1,3\n5,4,6\n":                       "",
		"runner,row,lines\n1,2,3\n 4,\"5\",6\n":                  "",
		"runner,row,lines\n1,2,3\n\n4,5,6\n":                     "",
		"runner,row,lines,more\n1,2,3,x\n4,5,6,y\n":              "",
		"runner,row,lines\n1,2,3\nx,5,6\n":                       `:3: "x" is not a number; restore this file from a backup`,
		"runner,row,lines\n1,2,3\n4,5,6000000000\n":              `"6000000000" is not a number`,
		"runner,row,lines\n1,2,3\n4,5,99999999999999999999999\n": `is not a number`,
	} {
		a := newArchive(t)
		if err := os.WriteFile(a.File("n.csv"), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		got, err := read(a)
		if want != "" {
			if err == nil || !strings.Contains(err.Error(), want) {
				t.Errorf("%q: %v, want %q", text, err, want)
			}
			continue
		}
		if err != nil || !reflect.DeepEqual(got, [][]int32{{1, 2, 3}, {4, 5, 6}}) {
			t.Errorf("%q: read %v, %v", text, got, err)
		}
	}
}
