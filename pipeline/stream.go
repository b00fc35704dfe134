package pipeline

import (
	"context"
	"errors"
	"strings"
)

// Large text sheets are not turned into lines before they are written: lines
// are read in the background, checked run by run, and go into the database
// while the next are read. What must be known before (columns, runs, what
// waits for an answer) openSheet has found out.

// pieces hands out the lines of parts in order, batch by batch.
type pieces struct {
	parts  []numberedPart
	batch  int // next batch of the first part, where it is held whole
	stream *lineStream
}

// next gives the next lines, nil at the end; they are good until done is
// called with them.
func (s *pieces) next() (*numberedPart, *lineBatch, error) {
	for len(s.parts) > 0 {
		p := &s.parts[0]
		if s.stream == nil && s.batch == 0 && p.part.unread != nil {
			s.stream = p.part.stream()
		}
		if s.stream == nil {
			if s.batch < len(p.part.lines.batches) {
				s.batch++
				return p, p.part.lines.batches[s.batch-1], nil
			}
		} else if b, ok := <-s.stream.pieces; ok {
			return p, b, nil
		} else if s.stream.err != nil {
			return nil, nil, s.stream.err
		}
		s.parts, s.batch, s.stream = s.parts[1:], 0, nil
	}
	return nil, nil, nil
}

// done gives lines back.
func (s *pieces) done(b *lineBatch) {
	if s.stream != nil {
		s.stream.giveBack(b)
	}
}

// close ends reading early, where it has not ended.
func (s *pieces) close() {
	if s.stream != nil {
		close(s.stream.stop)
		for range s.stream.pieces { // closed when the goroutine has ended
		}
	}
}

// lineStream is the lines of a part as they are read.
type lineStream struct {
	pieces chan *lineBatch
	spare  chan *lineBatch
	stop   chan struct{}
	err    error // good once pieces is closed
}

var errStopped = errors.New("reading was stopped")

// streamAhead is how many batches are read ahead of writing.
const streamAhead = 16

// stream reads the lines of a part in the background.
func (p *parsedPart) stream() *lineStream {
	s := &lineStream{pieces: make(chan *lineBatch, streamAhead), spare: make(chan *lineBatch, streamAhead), stop: make(chan struct{})}
	p.lines.spare = func() *lineBatch {
		select {
		case b := <-s.spare:
			return b
		default:
			return nil
		}
	}
	go func() {
		defer close(s.pieces)
		s.err = p.unread.read(func(b *lineBatch) error {
			select {
			case s.pieces <- b:
				return nil
			case <-s.stop:
				return errStopped
			}
		})
	}()
	return s
}

// giveBack offers a batch for filling again.
func (s *lineStream) giveBack(b *lineBatch) {
	b.empty()
	select {
	case s.spare <- b:
	default:
	}
}

// learnTexts makes the dictionary whole, for sheets whose texts are numbered as
// their lines are written.
func (pl *Pipeline) learnTexts(ctx context.Context) error {
	d := pl.texts
	if d.whole {
		return nil
	}
	list, err := pl.readTexts(ctx, "")
	if err != nil {
		return err
	}
	for no, s := range list {
		if _, ok := d.at[s]; !ok {
			d.at[s] = int32(no)
		}
	}
	d.whole = true
	return nil
}

// number is the number of a text, a new one where d has none yet.
func (d *dictionary) number(s string) int32 {
	if s == "" {
		return 0
	}
	no, ok := d.at[s]
	if !ok {
		s = strings.Clone(s) // it lives in a piece that is filled again
		d.last++
		no = d.last
		d.at[s] = no
		d.fresh = append(d.fresh, s)
	}
	return no
}
