package pipeline

import (
	"context"
	"database/sql"

	"lapwing/pipeline/store"
)

// dictionary knows the numbers of texts in record.text while sheets are loaded.
type dictionary struct {
	at    map[string]int32
	last  int32    // highest number given
	whole bool     // at holds every text there is
	fresh []string // given out by number and not written yet
}

var textSchema = store.Columns("text_no", store.Int32, "text", store.Text)

// numberTexts gives the names, numbers and clubs of the parts' lines their
// numbers in record.text, and adds there what is new. A text in no use any
// more stays until the database is made again.
func (pl *Pipeline) numberTexts(ctx context.Context, parts []numberedPart) error {
	if pl.texts == nil {
		d := &dictionary{at: map[string]int32{"": 0}}
		if err := pl.DB.Get(ctx, "select coalesce(max(text_no), 0) from record.text", &d.last); err != nil {
			return err
		}
		d.whole = d.last == 0
		pl.texts = d
	}
	d := pl.texts
	known := d.last
	for _, p := range parts {
		for _, b := range p.part.lines.batches {
			b.texts = make([][3]int32, len(b.lines))
			for i := range b.lines {
				l := &b.lines[i]
				b.texts[i] = [3]int32{d.number(l.Name), d.number(l.Number), d.number(l.Club)}
			}
		}
	}
	fresh := d.fresh // the k-th has number known + 1 + k, unless the database knows it
	d.fresh = nil
	if !d.whole && len(fresh) > 0 {
		var err error
		if fresh, err = pl.knownTexts(ctx, d, known, fresh, parts); err != nil {
			return err
		}
	}
	return pl.insertTexts(ctx, known, fresh)
}

// insertTexts writes texts whose numbers follow known.
func (pl *Pipeline) insertTexts(ctx context.Context, known int32, fresh []string) error {
	return pl.insertRows(ctx, "record.text", textSchema, len(fresh), func(r row, i int) {
		r.ints(0, known+1+int32(i))
		r.texts(1, fresh[i])
	})
}

// knownTexts looks up which texts the database has already, gives these their
// old numbers, closes the gaps and returns the others.
func (pl *Pipeline) knownTexts(ctx context.Context, d *dictionary, known int32, fresh []string, parts []numberedPart) ([]string, error) {
	if err := pl.DB.Exec(ctx, "create or replace temp table wanted_text (nth integer, text varchar)"); err != nil {
		return nil, err
	}
	if err := pl.insertRows(ctx, "wanted_text", textSchema, len(fresh), func(r row, i int) {
		r.ints(0, int32(i))
		r.texts(1, fresh[i])
	}); err != nil {
		return nil, err
	}
	now := make([]int32, len(fresh))
	err := pl.each(ctx, "select w.nth, min(t.text_no)::integer from wanted_text w join record.text t on t.text = w.text group by w.nth", func(rows *sql.Rows) error {
		var nth, no int32
		err := rows.Scan(&nth, &no)
		now[nth] = no
		return err
	})
	if err != nil {
		return nil, err
	}
	if err := pl.DB.Exec(ctx, "drop table wanted_text"); err != nil {
		return nil, err
	}
	added := fresh[:0:0]
	d.last = known
	for i, s := range fresh {
		if now[i] == 0 {
			d.last++
			now[i] = d.last
			added = append(added, s)
		}
		d.at[s] = now[i]
	}
	for _, p := range parts {
		for _, b := range p.part.lines.batches {
			for i := range b.texts {
				for k, no := range b.texts[i] {
					if no > known {
						b.texts[i][k] = now[no-known-1]
					}
				}
			}
		}
	}
	return added, nil
}
