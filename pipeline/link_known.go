package pipeline

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/gob"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"

	"github.com/apache/arrow/go/v17/arrow"
	"github.com/apache/arrow/go/v17/arrow/array"

	"lapwing/pipeline/record/who"
	"lapwing/pipeline/store"
)

// A full linking leaves behind what a few new lines need to find their runners
// (link_some.go): the parts of names and how common they are, under what names
// and at which courses every runner stood, their numbers, and the rest in one
// value.

// keptLinkage is that value. Parts of names, spellings and numbers are in
// tables of their own and left out of Known.
type keptLinkage struct {
	Known     who.Known
	Clubs     []string // texts of Known.Clubs
	Parts     [2]int32 // numbers given to given and family names
	Lines     int      // lines that were linked
	Since     int      // lines that were attached since
	Next      int32    // first runner number never given
	Anchors   int64    // length of runner_ids.csv when Next was right
	Decisions string   // stamp of the decisions about people that were followed

	fresh learned // what attaching has added, not written yet
}

// learned is what is new about runners after lines were attached.
type learned struct {
	parts     [2][]who.Name
	spellings []who.Spelling // by runner number
	numbers   []runnersNumber
}

type runnersNumber struct {
	runner int32
	number string
}

var (
	namePartSchema = store.Columns("part", store.Uint8, "part_no", store.Int32, "text", store.Text, "mass", store.Float64, "rare", store.Float64,
		"slip", store.Float64, "nick", store.Float64, "double", store.Float64, "as_read", store.Int32, "classes", store.Blob)
	spellingSchema     = store.Columns("runner_no", store.Int32, "given_no", store.Int32, "family_no", store.Int32, "course_no", store.Int32)
	runnerNumberSchema = store.Columns("runner_no", store.Int32, "number", store.Text)
	linkedSchema       = store.Columns("value", store.Blob)
)

var knownTables = []string{"record.name_part", "record.spelling", "record.runner_number", "record.linked"}

// writeKnown keeps what a full linking found out.
func (pl *Pipeline) writeKnown(ctx context.Context, w *work) error {
	for _, t := range knownTables {
		if err := pl.DB.Exec(ctx, "delete from "+t); err != nil {
			return err
		}
	}
	l := w.link
	if l == nil || l.result == nil {
		return nil
	}
	known := l.result.Known()
	k := &keptLinkage{Clubs: w.field.clubs.list[:min(len(known.Clubs), len(w.field.clubs.list))],
		Parts: [2]int32{int32(len(known.Given)), int32(len(known.Family))}, Lines: len(l.rows), Decisions: peopleStamp(w.decisions)}
	k.Next = l.next
	var err error
	if k.Anchors, err = pl.anchorLength(); err != nil {
		return err
	}
	for part, list := range [2][]who.Name{known.Given, known.Family} {
		if err := pl.insertNameParts(ctx, part, list); err != nil {
			return err
		}
	}
	for i := range known.Spellings {
		s := &known.Spellings[i]
		s.Runner, s.Course = l.number[s.Runner], s.Course+1
	}
	if err := pl.insertSpellings(ctx, known.Spellings); err != nil {
		return err
	}
	if err := pl.insertRows(ctx, "record.runner_number", runnerNumberSchema, len(known.Numbers), func(r row, i int) {
		r.ints(0, l.number[known.Numbers[i].Runner])
		r.texts(1, w.field.numbers.list[known.Numbers[i].Number])
	}); err != nil {
		return err
	}
	k.Known = *known
	return pl.writeLinked(ctx, k)
}

func (pl *Pipeline) insertNameParts(ctx context.Context, part int, list []who.Name) error {
	var bytes [4 * 16]byte
	return pl.insertRows(ctx, "record.name_part", namePartSchema, len(list), func(r row, i int) {
		x := &list[i]
		r.small(0, uint8(part+1))
		r.ints(1, x.No)
		r.texts(2, x.Text)
		r.numbers(3, x.Mass, x.Rare, x.Slip, x.Nick, x.Double)
		r.ints(8, x.AsRead)
		b := r.b.Field(9).(*array.BinaryBuilder)
		if x.Class == nil {
			b.AppendNull()
			return
		}
		for c, v := range x.Class {
			binary.LittleEndian.PutUint32(bytes[4*c:], math.Float32bits(v))
		}
		b.Append(bytes[:4*len(x.Class)])
	})
}

func (pl *Pipeline) insertSpellings(ctx context.Context, list []who.Spelling) error {
	return pl.insertRows(ctx, "record.spelling", spellingSchema, len(list), func(r row, i int) {
		r.ints(0, list[i].Runner, list[i].Given, list[i].Family, list[i].Course)
	})
}

func (pl *Pipeline) writeLinked(ctx context.Context, k *keptLinkage) error {
	k.Known.Given, k.Known.Family, k.Known.Spellings, k.Known.Numbers = nil, nil, nil, nil
	var b bytes.Buffer
	if err := gob.NewEncoder(&b).Encode(k); err != nil {
		return err
	}
	return pl.insertRows(ctx, "record.linked", linkedSchema, 1, func(r row, _ int) {
		r.b.Field(0).(*array.BinaryBuilder).Append(b.Bytes())
	})
}

// lastLinkage reads what the last full linking left behind, but for names,
// spellings and numbers; nil where nothing is kept.
func (pl *Pipeline) lastLinkage(ctx context.Context) (*keptLinkage, error) {
	var k *keptLinkage
	err := pl.DB.Scan(ctx, "select value from record.linked", func(r arrow.Record) error {
		if r.NumRows() == 0 {
			return nil
		}
		k = &keptLinkage{}
		return gob.NewDecoder(bytes.NewReader(r.Column(0).(*array.Binary).Value(0))).Decode(k)
	})
	if err != nil {
		return nil, fmt.Errorf("reading record.linked: %w", err)
	}
	return k, nil
}

// scanNameParts reads the parts of names that are wanted, in the order of
// their numbers.
func (pl *Pipeline) scanNameParts(ctx context.Context, want func(family bool, text string) bool, take func(family bool, x who.Name)) error {
	return pl.DB.Scan(ctx, "select part, part_no, text, mass, rare, slip, nick, double, as_read, classes from record.name_part", func(r arrow.Record) error {
		part, no, text := r.Column(0).(*array.Uint8), r.Column(1).(*array.Int32), r.Column(2).(*array.String)
		var share [5]*array.Float64
		for c := range share {
			share[c] = r.Column(3 + c).(*array.Float64)
		}
		read, classes := r.Column(8).(*array.Int32), r.Column(9).(*array.Binary)
		for i := range int(r.NumRows()) {
			family := part.Value(i) == 2
			if !want(family, text.Value(i)) {
				continue
			}
			x := who.Name{Text: string([]byte(text.Value(i))), No: no.Value(i), Mass: share[0].Value(i), Rare: share[1].Value(i), Slip: share[2].Value(i),
				Nick: share[3].Value(i), Double: share[4].Value(i), AsRead: read.Value(i)}
			if classes.IsValid(i) {
				b := classes.Value(i)
				for len(b) >= 4 {
					x.Class = append(x.Class, math.Float32frombits(binary.LittleEndian.Uint32(b)))
					b = b[4:]
				}
			}
			take(family, x)
		}
		return nil
	})
}

// anchorLength is the length of runner_ids.csv.
func (pl *Pipeline) anchorLength() (int64, error) {
	info, err := os.Stat(pl.Archive.File(idTable))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, nil
	case err != nil:
		return 0, err
	}
	return info.Size(), nil
}

// peopleStamp sums up the decisions about who is who.
func peopleStamp(ds []Decision) string {
	h := sha256.New()
	for _, d := range ds {
		if d.aboutPeople() {
			a, b, err := d.sides()
			fmt.Fprintln(h, d.ID, d.Kind, a, b, err)
		}
	}
	return fmt.Sprintf("%x", h.Sum(nil))
}
