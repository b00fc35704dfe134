package store

import (
	"context"
	"database/sql/driver"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"
	"github.com/apache/arrow/go/v17/arrow/memory"
	"github.com/marcboeker/go-duckdb"
)

// BatchRows is the size of the batches that travel to the database: the
// engine's own row group.
const BatchRows = 122880

// Schema of a batch, in column order.
type Schema = arrow.Schema

// Builder fills one batch.
type Builder = array.RecordBuilder

// Type names for the columns that Lapwing uses.
var (
	Int32   = arrow.PrimitiveTypes.Int32
	Int16   = arrow.PrimitiveTypes.Int16
	Uint8   = arrow.PrimitiveTypes.Uint8
	Float32 = arrow.PrimitiveTypes.Float32
	Float64 = arrow.PrimitiveTypes.Float64
	Text    = arrow.BinaryTypes.String
	Blob    = arrow.BinaryTypes.Binary
	Bool    = arrow.FixedWidthTypes.Boolean
	Date    = arrow.FixedWidthTypes.Date32
)

// Columns makes a schema from name, type pairs.
func Columns(pairs ...any) *Schema {
	var fields []arrow.Field
	for i := 0; i < len(pairs); i += 2 {
		fields = append(fields, arrow.Field{Name: pairs[i].(string), Type: pairs[i+1].(arrow.DataType), Nullable: true})
	}
	return arrow.NewSchema(fields, nil)
}

// reader hands batches made by fill to the database; the database calls it on
// a thread of its own, where a panic would kill the process.
type reader struct {
	schema *arrow.Schema
	b      *array.RecordBuilder
	cur    arrow.Record
	ahead  chan batch // the next one, nil where it is not being filled yet
	fill   func(*Builder) (bool, error)
	err    error
}

func (r *reader) Retain()               {}
func (r *reader) Release()              {}
func (r *reader) Schema() *arrow.Schema { return r.schema }
func (r *reader) Err() error            { return r.err }
func (r *reader) Record() arrow.Record  { return r.cur }

// batch is what one call of fill came to.
type batch struct {
	record arrow.Record
	err    error
}

// next fills a batch; a nil record is the end.
func (r *reader) next() (b batch) {
	defer func() {
		if p := recover(); p != nil {
			b = batch{nil, fmt.Errorf("filling a batch: %v", p)}
		}
	}()
	more, err := r.fill(r.b)
	if err != nil || !more {
		return batch{nil, err}
	}
	return batch{r.b.NewRecord(), nil}
}

// Next hands over a batch. While the database takes in a large one, the next
// is filled already.
func (r *reader) Next() bool {
	if r.cur != nil {
		r.cur.Release()
		r.cur = nil
	}
	var b batch
	if r.ahead != nil {
		b = <-r.ahead
		r.ahead = nil
	} else {
		b = r.next()
	}
	r.cur, r.err = b.record, b.err
	if r.cur != nil && r.cur.NumRows() >= BatchRows/2 {
		ahead := make(chan batch, 1)
		r.ahead = ahead
		go func() { ahead <- r.next() }()
	}
	return r.cur != nil
}

// forget lets go of everything that the batches came from. The driver never
// lets go of a reader that was exported to it, so that fill and all that it
// refers to would stay in memory until the process ends.
func (r *reader) forget() {
	if r.ahead != nil {
		if b := <-r.ahead; b.record != nil {
			b.record.Release()
		}
	}
	if r.cur != nil {
		r.cur.Release()
	}
	r.b, r.cur, r.ahead, r.fill = nil, nil, nil, func(*Builder) (bool, error) { return false, nil }
}

var viewNumber atomic.Int64

// Insert appends rows to a table. fill is called until it returns false; each
// call fills one batch (at most about BatchRows rows). Columns go by position.
func (d *DB) Insert(ctx context.Context, table string, schema *Schema, fill func(*Builder) (bool, error)) error {
	return d.raw(func(c driver.Conn) error {
		ar, err := duckdb.NewArrowFromConn(c)
		if err != nil {
			return err
		}
		b := array.NewRecordBuilder(memory.DefaultAllocator, schema)
		defer b.Release()
		r := &reader{schema: schema, b: b, fill: fill}
		view := fmt.Sprintf("incoming_%d", viewNumber.Add(1))
		release, err := ar.RegisterView(r, view)
		if err != nil {
			return err
		}
		defer release()
		ex := c.(driver.ExecerContext)
		_, err = ex.ExecContext(ctx, "insert into "+table+" select * from "+view, nil)
		if r.err != nil {
			err = r.err
		}
		_, dropErr := ex.ExecContext(context.WithoutCancel(ctx), "drop view if exists "+view, nil)
		r.forget()
		if err != nil {
			return fmt.Errorf("writing %s: %w", table, err)
		}
		if dropErr != nil {
			return fmt.Errorf("writing %s: %w", table, dropErr)
		}
		return nil
	})
}

// Scan runs a query and hands its rows over in batches, in order. A batch is
// valid only during the call: copy what is kept.
func (d *DB) Scan(ctx context.Context, query string, each func(arrow.Record) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return d.raw(func(c driver.Conn) error { return scan(ctx, c, query, each) })
}

// ScanAll runs several queries at a time, each on a connection of its own, which sees
// what is committed. each is called for one batch of a query at a time, in order, and
// for several queries at once.
func (d *DB) ScanAll(ctx context.Context, queries []string, each func(query int, r arrow.Record) error) error {
	errs := make([]error, len(queries))
	var wg sync.WaitGroup
	for k, q := range queries {
		wg.Go(func() {
			conn, err := d.Pool.Conn(ctx)
			if err != nil {
				errs[k] = err
				return
			}
			defer conn.Close()
			errs[k] = conn.Raw(func(c any) error {
				return scan(ctx, c.(driver.Conn), q, func(r arrow.Record) error { return each(k, r) })
			})
		})
	}
	wg.Wait()
	return errors.Join(errs...)
}

func scan(ctx context.Context, c driver.Conn, query string, each func(arrow.Record) error) error {
	ar, err := duckdb.NewArrowFromConn(c)
	if err != nil {
		return err
	}
	rr, err := ar.QueryContext(ctx, query)
	if err != nil {
		return err
	}
	defer rr.Release()
	for rr.Next() {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := each(rr.Record()); err != nil {
			return err
		}
	}
	return rr.Err()
}

// AppendInt32 copies a batch's column of 32-bit integers (or dates, which are days
// since 1970-01-01) behind dst; NULL becomes 0.
func AppendInt32[T ~int32](dst []T, col arrow.Array) []T {
	switch a := col.(type) {
	case *array.Int32:
		if a.NullN() == 0 {
			for _, v := range a.Int32Values() {
				dst = append(dst, T(v))
			}
			return dst
		}
		for i := 0; i < a.Len(); i++ {
			v := T(0)
			if a.IsValid(i) {
				v = T(a.Value(i))
			}
			dst = append(dst, v)
		}
	case *array.Date32:
		for i := 0; i < a.Len(); i++ {
			v := T(0)
			if a.IsValid(i) {
				v = T(a.Value(i))
			}
			dst = append(dst, v)
		}
	default:
		panic(fmt.Sprintf("column is %s, not a 32-bit integer or date", col.DataType()))
	}
	return dst
}

// AppendUint8 copies a column of small unsigned integers; NULL becomes 0.
func AppendUint8(dst []uint8, col arrow.Array) []uint8 {
	a, ok := col.(*array.Uint8)
	if !ok {
		panic(fmt.Sprintf("column is %s, not utinyint", col.DataType()))
	}
	if a.NullN() == 0 {
		return append(dst, a.Uint8Values()...)
	}
	for i := 0; i < a.Len(); i++ {
		v := uint8(0)
		if a.IsValid(i) {
			v = a.Value(i)
		}
		dst = append(dst, v)
	}
	return dst
}
