package pipeline

import (
	"context"
	"maps"
	"slices"

	"lapwing/pipeline/record"
	"lapwing/pipeline/sheet"
	"lapwing/pipeline/store"
	"lapwing/pipeline/unit"
)

// writeDesk keeps what decisions and side tables made of lines, clubs and
// members.
func (pl *Pipeline) writeDesk(ctx context.Context, w *work) error {
	f := w.field
	lines := slices.Sorted(maps.Keys(w.desk.touched))
	lines = slices.DeleteFunc(lines, func(i int) bool {
		return f.club[i] == w.desk.received[i].club && f.position[i] == w.desk.received[i].position
	})
	schema := store.Columns("line_no", store.Int32, "club", store.Text, "position", store.Int32)
	if err := pl.insertRows(ctx, "record.correction", schema, len(lines), func(r row, k int) {
		r.ints(0, f.lineNo[lines[k]])
		r.texts(1, f.clubs.list[f.club[lines[k]]])
		r.ints(2, f.position[lines[k]])
	}); err != nil {
		return err
	}
	records := slices.Sorted(maps.Keys(w.desk.records))
	schema = store.Columns("line_no", store.Int32, "state", store.Text)
	if err := pl.insertRows(ctx, "record.record_state", schema, len(records), func(r row, k int) {
		r.ints(0, f.lineNo[records[k]])
		r.texts(1, w.desk.records[records[k]].word)
	}); err != nil {
		return err
	}
	if err := pl.writeHeldRecords(ctx, w); err != nil {
		return err
	}
	if err := pl.writeClubs(ctx, w); err != nil {
		return err
	}
	outcomes := w.desk.latest()
	schema = store.Columns("id", store.Int32, "state", store.Text, "words", store.Text)
	if err := pl.insertRows(ctx, "record.decision", schema, len(outcomes), func(r row, k int) {
		r.ints(0, int32(outcomes[k].id))
		r.texts(1, outcomes[k].state, outcomes[k].words)
	}); err != nil {
		return err
	}
	schema = store.Columns("line", store.Int32, "name", store.Text, "runner_no", store.Int32, "club", store.Text, "claim", store.Text,
		"from_day", store.Date, "to_day", store.Date)
	return pl.insertRows(ctx, "record.member", schema, len(w.members), func(r row, k int) {
		m := w.members[k]
		r.ints(0, int32(m.line))
		r.texts(1, m.name)
		r.ints(2, w.people.number(m.runner))
		r.texts(3, m.club, m.claim)
		r.dayOrNull(5, m.from)
		r.dayOrNull(6, m.to)
	})
}

func (pl *Pipeline) writeHeldRecords(ctx context.Context, w *work) error {
	schema := store.Columns("line", store.Int32, "course", store.Text, "distance_m", store.Int32, "sex", store.Text, "age_group", store.Text,
		"time_s", store.Int32, "name", store.Text, "runner_no", store.Int32, "run_date", store.Date, "protected", store.Bool)
	return pl.insertRows(ctx, "record.held_record", schema, len(w.held), func(r row, k int) {
		h := w.held[k]
		r.ints(0, int32(h.row))
		r.texts(1, h.course)
		r.ints(2, h.distanceM)
		r.texts(3, h.sex, h.group)
		r.ints(5, h.timeS)
		r.texts(6, h.name)
		r.ints(7, w.people.number(h.runner))
		r.dayOrNull(8, h.day)
		r.yesNo(9, h.protected)
	})
}

func (r row) dayOrNull(at int, d unit.Day) {
	if d == 0 {
		r.b.Field(at).AppendNull()
		return
	}
	r.day(at, d)
}

// latest is the last outcome noted of each decision, in the order of ids.
func (a *lineDecisions) latest() []decisionOutcome {
	last := map[int]decisionOutcome{}
	for _, o := range a.outcomes {
		last[o.id] = o
	}
	var out []decisionOutcome
	for _, id := range slices.Sorted(maps.Keys(last)) {
		out = append(out, last[id])
	}
	return out
}

// wishes are what runners want for all their history, by runner number.
type wishes struct {
	name   map[int32]string
	sex    map[int32]record.Sex
	hidden map[int32]bool
}

func wishesOf(ds []Decision, l *linkage) (wishes, error) {
	w := wishes{map[int32]string{}, map[int32]record.Sex{}, map[int32]bool{}}
	for _, d := range ds {
		n, ok := runnerNumber(d.Runner)
		if !ok {
			continue
		}
		n = l.now(n)
		switch d.Kind {
		case DecidePrintName:
			w.name[n] = d.Value
		case DecideHide:
			w.hidden[n] = true
		case DecideCategory:
			sex, err := parseSex(d.Value)
			if err != nil {
				return w, err
			}
			w.sex[n] = sex
		}
	}
	return w, nil
}

// personal are the cells that a wish for another name or category stands in
// for.
var personal = map[sheet.Meaning]bool{sheet.Name: true, sheet.GivenName: true, sheet.FamilyName: true, sheet.Sex: true, sheet.AgeGroup: true}

// wishedName is the name of the runner of a row, where they wish for another
// name or category than the sheets have; "" otherwise.
func (pl *Pipeline) wishedName(ctx context.Context, sheetNo int, tab string, row int) (string, error) {
	rows, err := pl.DB.QueryContext(ctx, `select w.name from record.line l
		join sheet.part p on p.part_no = l.part_no
		join record.result r on r.line_no = l.line_no
		join record.runner w on w.runner_no = r.runner_no
		where p.sheet_no = ? and l.row_number = ? and (? = '' or p.tab = ?) and w.wished order by w.name`, sheetNo, row, tab, tab)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	name := ""
	for rows.Next() {
		if err := rows.Scan(&name); err != nil {
			return "", err
		}
	}
	return name, rows.Err()
}
