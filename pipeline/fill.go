package pipeline

import (
	"context"
	"math"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// fill fills the columns of one batch of n rows, one column after the other,
// without looking at the rows one by one where a slice holds them.
type fill struct {
	b  *store.Builder
	at int // next column
	n  int

	valid []bool
}

func (c *fill) next() array.Builder {
	c.at++
	return c.b.Field(c.at - 1)
}

func (c *fill) ints(v []int32)  { c.next().(*array.Int32Builder).AppendValues(v, nil) }
func (c *fill) bytes(v []uint8) { c.next().(*array.Uint8Builder).AppendValues(v, nil) }
func (c *fill) flags(v []bool)  { c.next().(*array.BooleanBuilder).AppendValues(v, nil) }
func (c *fill) mask() []bool    { c.valid = resized(c.valid, c.n); return c.valid }
func resized[T any](v []T, n int) []T {
	if cap(v) < n {
		return make([]T, n)
	}
	return v[:n]
}

func (c *fill) intsOf(of func(k int) int32) {
	v := make([]int32, c.n)
	for k := range v {
		v[k] = of(k)
	}
	c.ints(v)
}

func (c *fill) bytesOf(of func(k int) uint8) {
	v := make([]uint8, c.n)
	for k := range v {
		v[k] = of(k)
	}
	c.bytes(v)
}

func (c *fill) flagsOf(of func(k int) bool) {
	v := make([]bool, c.n)
	for k := range v {
		v[k] = of(k)
	}
	c.flags(v)
}

// numbers writes what is no number as NULL.
func (c *fill) numbers(v []float64) {
	valid := c.mask()
	for k, x := range v {
		valid[k] = !math.IsNaN(x) && !math.IsInf(x, 0)
	}
	c.next().(*array.Float64Builder).AppendValues(v, valid)
}

// singles writes what is no number as NULL.
func (c *fill) singles(v []float32) {
	valid := c.mask()
	for k, x := range v {
		valid[k] = x == x
	}
	c.next().(*array.Float32Builder).AppendValues(v, valid)
}

// singlesOf writes what is no number as NULL.
func (c *fill) singlesOf(of func(k int) float32) {
	valid := c.mask()
	v := make([]float32, c.n)
	for k := range v {
		v[k] = of(k)
		valid[k] = v[k] == v[k]
	}
	c.next().(*array.Float32Builder).AppendValues(v, valid)
}

// ages writes two columns, the youngest and the oldest age; below 0 is NULL.
func (c *fill) ages(low, high []int16) {
	valid := c.mask()
	for k, a := range low {
		valid[k] = a >= 0
	}
	for _, ages := range [2][]int16{low, high} {
		v := make([]uint8, c.n)
		for k, a := range ages {
			v[k] = uint8(max(a, 0))
		}
		c.next().(*array.Uint8Builder).AppendValues(v, valid)
	}
}

// known writes what is none as NULL.
func (c *fill) known(v []uint8, none uint8) {
	valid := c.mask()
	for k, x := range v {
		valid[k] = x != none
	}
	c.next().(*array.Uint8Builder).AppendValues(v, valid)
}

// days writes day 0 as NULL.
func (c *fill) days(v []unit.Day) {
	valid, dates := c.mask(), make([]arrow.Date32, c.n)
	for k, d := range v {
		valid[k], dates[k] = d != 0, arrow.Date32(d)
	}
	c.next().(*array.Date32Builder).AppendValues(dates, valid)
}

// bytesAs is a slice of a small type as bytes.
func bytesAs[T ~uint8](v []T) []uint8 {
	out := make([]uint8, len(v))
	for k, x := range v {
		out[k] = uint8(x)
	}
	return out
}

// insertColumns appends n rows to a table, a batch at a time; write fills the
// columns of rows from to to.
func (pl *Pipeline) insertColumns(ctx context.Context, table string, schema *store.Schema, n int, write func(c *fill, from, to int)) error {
	if n == 0 {
		return nil
	}
	at := 0
	return pl.DB.Insert(ctx, table, schema, func(b *store.Builder) (bool, error) {
		if at == n {
			return false, nil
		}
		to := min(n, at+store.BatchRows)
		write(&fill{b: b, n: to - at}, at, to)
		at = to
		return true, nil
	})
}

func (r row) numbers(at int, v ...float64) {
	for i, x := range v {
		b := r.b.Field(at + i).(*array.Float64Builder)
		if math.IsNaN(x) || math.IsInf(x, 0) {
			b.AppendNull()
		} else {
			b.Append(x)
		}
	}
}

func (r row) smallOrNone(at int, v, none uint8) {
	b := r.b.Field(at).(*array.Uint8Builder)
	if v == none {
		b.AppendNull()
	} else {
		b.Append(v)
	}
}

func (r row) yesNo(at int, v bool) { r.b.Field(at).(*array.BooleanBuilder).Append(v) }

func (r row) day(at int, d unit.Day) { r.b.Field(at).(*array.Date32Builder).Append(arrow.Date32(d)) }
