package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/age"
	"lapwing/pipeline/record/name"
)

func (pl *Pipeline) decideLine(ctx context.Context, d Decision, c Correction) ([]Decision, error) {
	at, err := pl.resultAt(ctx, d.Course, d.Date, c.Session, c.Place, c.Line)
	if err != nil {
		return nil, err
	}
	out, err := pl.decideAt(ctx, d, c, at)
	if err == nil && len(out) == 0 {
		err = fmt.Errorf("say what to correct at place %d (%s %s): see lapwing correct --help", at.position, at.name, clockOrDash(at.timeMS))
	}
	return out, err
}

// decideAt turns a correction of one line into decisions.
func (pl *Pipeline) decideAt(ctx context.Context, d Decision, c Correction, at resultLine) ([]Decision, error) {
	if err := pl.findTable(ctx, &at); err != nil {
		return nil, err
	}
	d.Sheet, d.Tab, d.Row, d.Table = at.ref.hash, at.ref.tab, at.ref.row, at.table
	var out []Decision
	add := func(kind, value string) {
		e := d
		e.Kind, e.Value = kind, strings.TrimSpace(value)
		out = append(out, e)
	}
	if c.Name != "" {
		e, err := pl.decideName(ctx, d, c, at)
		if err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	if c.Time != "" {
		if _, err := ParseClock(c.Time); err != nil {
			return nil, err
		}
		add(DecideTime, c.Time)
	}
	if c.Club != "" {
		add(DecideClub, c.Club)
	}
	if c.Sex != "" {
		sex, err := parseSex(c.Sex)
		if err != nil {
			return nil, err
		}
		word := sex.String()
		if word == "" {
			word = "not given"
		}
		add(DecideSex, word)
	}
	if c.Group != "" {
		if _, _, err := parseGroupByHand(c.Group, d.Date, age.DefaultRule()); err != nil {
			return nil, err
		}
		add(DecideGroup, c.Group)
	}
	if c.TakingPart != "" {
		part, err := parseTakingPart(c.TakingPart)
		if err != nil {
			return nil, err
		}
		add(DecideTakingPart, part.String())
	}
	switch c.Status {
	case "":
	case "ok", "dq", "dnf", notAFinisher:
		add(DecideStatus, c.Status)
	default:
		return nil, fmt.Errorf("status %q: write ok, dq, dnf or %s", c.Status, notAFinisher)
	}
	if c.Record != "" {
		word, err := pl.mayBeRecord(c, at)
		if err != nil {
			return nil, err
		}
		add(DecideRecord, word)
	}
	if c.RightPlace != 0 {
		if _, err := parsePlace(strconv.Itoa(c.RightPlace)); err != nil {
			return nil, err
		}
		add(DecidePlace, strconv.Itoa(c.RightPlace))
	}
	if c.ExchangeWith != 0 {
		other, err := pl.resultAt(ctx, d.Course, d.Date, c.Session, c.ExchangeWith, "")
		if err != nil {
			return nil, err
		}
		if other.lineNo == at.lineNo {
			return nil, fmt.Errorf("place %d can't be exchanged with itself", c.ExchangeWith)
		}
		if err := pl.findTable(ctx, &other); err != nil {
			return nil, err
		}
		add(DecideExchange, tableLine{other.ref, other.table}.String())
	}
	return out, nil
}

// decideName says whose a line is. A name that one known runner has means that
// runner; where several have it the desk must say which.
func (pl *Pipeline) decideName(ctx context.Context, d Decision, c Correction, at resultLine) (Decision, error) {
	d.Kind, d.Value = DecideName, strings.TrimSpace(c.Name)
	if at.status == "unnamed" {
		d.Kind = DecideClaim
	} else if claimed, err := pl.claimed(at); err != nil {
		return d, err
	} else if claimed {
		d.Kind = DecideClaim
	}
	if _, id := runnerNumber(d.Value); !id {
		n := name.Parse(d.Value)
		switch {
		case n.Several:
			return d, fmt.Errorf("%q names several people; a place belongs to one", c.Name)
		case n.Unnamed || n.Full == "":
			return d, fmt.Errorf("%q names nobody", c.Name)
		case c.SomeoneNew:
			return d, nil
		}
		list, err := pl.FindRunners(ctx, d.Value)
		if err != nil {
			return d, err
		}
		if !slices.ContainsFunc(list, func(f Found) bool { return name.Parse(f.Name).Full == n.Full }) {
			return d, nil // somebody new, or another spelling for the linker to judge
		}
	}
	r, err := pl.FindRunner(ctx, d.Value)
	if err != nil {
		return d, err
	}
	if _, id := runnerNumber(d.Value); id {
		d.Value = r.Name
	}
	d.Runner = r.ID
	there, err := pl.placeOf(ctx, r.ID, at)
	if err != nil {
		return d, err
	}
	if there != "" {
		return d, fmt.Errorf("%s (%s) stands at %s already; correct that place first, or add --someone-new if this is another %s", r.Name, r.ID, there, r.Name)
	}
	return d, nil
}

// placeOf says where a runner stands in the run of a line, on another line.
func (pl *Pipeline) placeOf(ctx context.Context, runner string, at resultLine) (string, error) {
	rows, err := pl.DB.QueryContext(ctx, `select coalesce('place ' || r.position, 'row ' || r.row_number)
		from main.results r
		join record.line l on l.line_no = r.line_no
		join sheet.part p on p.part_no = l.part_no
		join sheet.sheet s on s.sheet_no = p.sheet_no
		where r.run_no = ? and r.runner_id = ? and r.counts_run and not (s.hash = ? and p.tab = ? and r.row_number = ?)
		order by r.position, r.row_number limit 1`, at.runNo, runner, at.ref.hash, at.ref.tab, at.ref.row)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	there := ""
	for rows.Next() {
		if err := rows.Scan(&there); err != nil {
			return "", err
		}
	}
	return there, rows.Err()
}

// claimed says whether whoever stands on a line claimed it: a second claim is a
// claim as well, and not a correction of the first. A name that was corrected is
// claimed no more, and an exchange takes a claim along.
func (pl *Pipeline) claimed(at resultLine) (bool, error) {
	ds, err := pl.Decisions()
	if err != nil {
		return false, err
	}
	claimed := map[tableLine]bool{}
	for _, d := range ds {
		l := tableLine{lineRef{d.Sheet, d.Tab, d.Row}, d.Table}
		switch d.Kind {
		case DecideClaim:
			claimed[l] = true
		case DecideName:
			claimed[l] = false
		case DecideExchange:
			if other, err := parseTableLine(d.Value); err == nil {
				claimed[l], claimed[other] = claimed[other], claimed[l]
			}
		}
	}
	return claimed[tableLine{at.ref, at.table}], nil
}
