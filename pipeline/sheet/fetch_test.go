package sheet

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/xuri/excelize/v2"
)

// endless gives a beginning and then the same bytes for ever.
type endless struct {
	begin, again string
	given        int
}

func (e *endless) Read(b []byte) (int, error) {
	n := 0
	for n < len(b) && e.begin != "" {
		k := copy(b[n:], e.begin)
		e.begin, n = e.begin[k:], n+k
	}
	for i := n; i < len(b); i++ {
		b[i] = e.again[(e.given+i)%len(e.again)]
	}
	e.given += len(b)
	return len(b), nil
}

// Whatever is no sheet is refused after a few megabytes, however much there is
// of it.
func TestFetchReadsNoMoreThanItMust(t *testing.T) {
	heading := "Pos,Name,Time\n1,Jo Lee,18:31\n"
	for _, c := range []struct {
		name, begin, again, say string
	}{
		{"one line", "", "x", "a line goes on"},
		{"a line after good ones", heading, "x", "a line goes on"},
		{"a line of cells", heading, ",", "a line goes on"},
		{"an open quote", heading + "\"", "x", "a line goes on"},
		{"a late line", strings.Repeat(heading, 200_000), "x", "a line goes on"},
		{"a page", "%PDF-1.7\n", "x\n", "PDF"},
		{"a picture", "\x89PNG\r\n\x1a\n", "x\n", "picture"},
		{"no end", heading, "1,Jo Lee,18:31\n", "allowed"},
	} {
		r := &endless{begin: c.begin, again: c.again}
		data, err := fetch(r, 0, Limits{Bytes: 24 << 20, RowBytes: 1 << 20}.orDefault())
		if err == nil {
			t.Fatalf("%s: %d bytes were read", c.name, len(data))
		}
		most := len(c.begin) + 8<<20
		if c.say == "allowed" {
			most = 24<<20 + 4<<20
		}
		if !strings.Contains(err.Error(), c.say) || r.given > most {
			t.Errorf("%s: %v after %d bytes; want %q", c.name, err, r.given, c.say)
		}
	}
}

// What is fetched is what is there, in pieces of any size, also where the size
// was not known.
func TestFetch(t *testing.T) {
	l := Limits{RowBytes: 50}.orDefault()
	for _, n := range []int{1, 99, 100, 101, 102, 199, 200, 201, 511, 512, 513, 5000} {
		want := bytes.Repeat([]byte("1,Jo Lee,18:31\r\n"), n/16+1)[:n]
		for _, size := range []int64{0, int64(n), int64(n) - 1, int64(n) + 7} {
			got, err := fetch(iotest.OneByteReader(bytes.NewReader(want)), size, l)
			if err != nil || !bytes.Equal(got, want) {
				t.Fatalf("%d bytes said to be %d: got %d, %v", n, size, len(got), err)
			}
		}
	}
	r := &endless{begin: "Pos,Name,Time\n", again: "1,Jo Lee,18:31\n"}
	if _, err := fetch(r, 1<<40, Limits{}.orDefault()); err == nil || !strings.Contains(err.Error(), "allowed") || r.given > 4<<20 {
		t.Errorf("a file of a terabyte: %v after %d bytes", err, r.given)
	}
	utf16 := bytes.Repeat([]byte("1\x00,\x00x\x00\n\x00"), 40)
	if got, err := fetch(bytes.NewReader(utf16), 0, l); err != nil || !bytes.Equal(got, utf16) {
		t.Fatalf("UTF-16: %v", err)
	}
	if _, err := fetch(iotest.ErrReader(io.ErrClosedPipe), 0, l); !errors.Is(err, io.ErrClosedPipe) {
		t.Fatalf("a reader that fails: %v", err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	l.Stop = ctx.Err
	if _, err := fetch(&endless{again: "x\n"}, 0, l); !errors.Is(err, context.Canceled) {
		t.Fatalf("stopped: %v", err)
	}
}

// Reading ends soon after it is told to, wherever it has come.
func TestReadingStops(t *testing.T) {
	rows := [][]any{{"Pos", "Name", "Time"}}
	for i := 1; i <= 20_000; i++ {
		rows = append(rows, []any{i, "Jo Lee", "18:31"})
	}
	var text strings.Builder
	for _, r := range rows {
		for k, c := range r {
			if k > 0 {
				text.WriteByte(',')
			}
			text.WriteString(strings.TrimSpace(fmt.Sprint(c)))
		}
		text.WriteByte('\n')
	}
	for name, data := range map[string][]byte{"x.csv": []byte(text.String()), "x.xlsx": workbook(t, func(f *excelize.File) { setRows(t, f, "Sheet1", rows...) })} {
		asked, most := 0, 0
		read := func(stopAt int) error {
			asked = 0
			s, err := Read(name, data, Options{Course: "x", Date: "2026-01-03", Limits: Limits{Stop: func() error {
				if asked++; stopAt > 0 && asked >= stopAt {
					return context.Canceled
				}
				return nil
			}}})
			if err != nil {
				return err
			}
			return s.Parts[0].Each(func(int, []string) error { return nil })
		}
		if err := read(0); err != nil {
			t.Fatal(err)
		}
		if most = asked; most < 8 {
			t.Fatalf("%s: asked %d times only", name, most)
		}
		for k := 1; k <= most; k++ {
			if err := read(k); !errors.Is(err, context.Canceled) || asked > k+3 {
				t.Fatalf("%s: told to stop at question %d of %d: %v after %d", name, k, most, err, asked)
			}
		}
	}
}
