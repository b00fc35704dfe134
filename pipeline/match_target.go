package pipeline

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"strings"
)

// target is what an argument of join or part means: a runner, under the
// present number or an old one, or a single line.
type target struct {
	no     int32 // runner now
	old    int32 // number given where it is an old one, else 0
	line   int32 // line_no where a single line is meant, else 0
	at     lineRef
	shown  string
	person MatchPerson
}

func (t target) side() side {
	if t.line > 0 {
		return side{at: t.at}
	}
	n := t.no
	if t.old > 0 {
		n = t.old
	}
	return side{"R" + itoa(n), t.at}
}

// target finds what an argument means: R12, a name, or SHEET:ROW.
func (pl *Pipeline) target(ctx context.Context, what string) (t target, err error) {
	if n, ok := runnerNumber(what); ok {
		t.no = n
		if err := pl.each(ctx, "select now from record.alias where runner_no = ?", func(rows *sql.Rows) error {
			t.old = n
			return rows.Scan(&t.no)
		}, n); err != nil {
			return t, err
		}
	} else if found, err := pl.lineTarget(ctx, what); err != nil {
		return t, err
	} else if found.line > 0 {
		t = found
	} else {
		f, err := pl.FindRunner(ctx, what)
		if err != nil {
			return t, err
		}
		t.no, _ = runnerNumber(f.ID)
	}
	k, err := pl.linkage(ctx)
	if err != nil {
		return t, err
	}
	t.person.no = t.no
	people := pl.lookUp(ctx, k.latest)
	people.want(&t.person)
	if err := people.fill(); err != nil {
		return t, err
	}
	if t.person.ID == "" {
		return t, fmt.Errorf("no runner %s in the archive; to find a number: lapwing standing NAME", what)
	}
	switch {
	case t.line > 0:
	case t.old > 0:
		if t.at, err = pl.lineOfOld(ctx, t.old); err != nil {
			return t, err
		}
		t.shown = fmt.Sprintf("R%d (now %s)", t.old, t.person.ID)
	default:
		t.at = t.person.at
		t.shown = t.person.ID + " " + t.person.Name
	}
	return t, nil
}

// lineTarget finds a line named as SHEET:ROW or SHEET:TAB!ROW; a text that is
// nothing of the kind gives no line.
func (pl *Pipeline) lineTarget(ctx context.Context, what string) (t target, err error) {
	i := strings.LastIndexAny(what, ":!")
	if i < 1 {
		return t, nil
	}
	row, err := strconv.Atoi(strings.TrimLeft(what[i+1:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ"))
	if err != nil || row < 1 {
		return t, nil
	}
	name, tab := what[:i], ""
	if what[i] == '!' {
		name, tab, _ = strings.Cut(name, ":")
	}
	e, err := pl.FindSheet(name)
	if err != nil {
		return t, err
	}
	n := 0
	err = pl.each(ctx, `select l.line_no, r.runner_no, p.tab from record.line l join sheet.part p on p.part_no = l.part_no join record.result r on r.line_no = l.line_no
		where p.sheet_no = ? and l.row_number = ? and (? = '' or p.tab = ?) order by p.tab_index`, func(rows *sql.Rows) error {
		n++
		t.at = lineRef{hash: e.Hash, row: row}
		return rows.Scan(&t.line, &t.no, &t.at.tab)
	}, e.Seq, row, tab, tab)
	t.shown = what
	switch {
	case err != nil:
		return t, err
	case n == 0:
		return t, fmt.Errorf("%s: there is no result in this row; to see how it was read: lapwing sheets explain %s", what, what)
	case n > 1:
		return t, fmt.Errorf("%s: several tabs have this row; write SHEET:TAB!ROW", what)
	case t.no == 0:
		return t, fmt.Errorf("%s: nobody is named in this row. To name somebody: lapwing correct", what)
	}
	return t, nil
}

// lineOfOld finds a line that an old number was given for.
func (pl *Pipeline) lineOfOld(ctx context.Context, old int32) (at lineRef, err error) {
	anchors, err := pl.readAnchors()
	if err != nil {
		return at, err
	}
	for _, a := range anchors {
		if a.runner != old {
			continue
		}
		err := pl.each(ctx, `select s.hash, p.tab, l.row_number from record.line l join sheet.part p on p.part_no = l.part_no join sheet.sheet s on s.sheet_no = p.sheet_no
			join record.result r on r.line_no = l.line_no
			where p.sheet_no = ? and p.tab_index = ? and l.row_number = ? and r.status not in (1, 5, 7) and r.same_as = 0`, func(rows *sql.Rows) error {
			return rows.Scan(&at.hash, &at.tab, &at.row)
		}, a.at.sheet, a.at.tab, a.at.row)
		if err != nil || at.hash != "" {
			return at, err
		}
	}
	return at, fmt.Errorf("no line of R%d is in the archive now", old)
}
