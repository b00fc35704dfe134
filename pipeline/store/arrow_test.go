package store

import (
	"context"
	"runtime"
	"testing"
	"weak"

	"github.com/apache/arrow/go/v17/arrow/array"
)

// TestInsertLetsGo checks that what the rows came from can be freed once they
// are in the table: a load of many sheets would otherwise keep all of them in
// memory until its end.
func TestInsertLetsGo(t *testing.T) {
	ctx := context.Background()
	db, err := Open(ctx, "", DBOptions{})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.Exec(ctx, "create table numbers (n integer)"); err != nil {
		t.Fatal(err)
	}
	insert := func() weak.Pointer[[1 << 16]int32] {
		from := new([1 << 16]int32)
		next := 0
		if err := db.Insert(ctx, "numbers", Columns("n", Int32), func(b *Builder) (bool, error) {
			if next == len(from) {
				return false, nil
			}
			for end := next + 1<<14; next < end; next++ {
				from[next] = int32(next)
				b.Field(0).(*array.Int32Builder).Append(from[next])
			}
			return true, nil
		}); err != nil {
			t.Fatal(err)
		}
		return weak.Make(from)
	}
	source := insert()
	runtime.GC()
	runtime.GC()
	if source.Value() != nil {
		t.Error("the source of inserted rows is still in memory")
	}
	var rows, sum int
	if err := db.Get(ctx, "select count(*), sum(n)::bigint from numbers", &rows, &sum); err != nil {
		t.Fatal(err)
	}
	if n := 1 << 16; rows != n || sum != n*(n-1)/2 {
		t.Errorf("%d rows with sum %d, want %d and %d", rows, sum, n, n*(n-1)/2)
	}
}
