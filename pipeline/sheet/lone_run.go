package sheet

import (
	"fmt"
	"strings"

	"lapwing/pipeline/place"
	"lapwing/pipeline/unit"
)

// runOfRow is a run as the cells of a row say it.
type runOfRow struct {
	course  string
	day     unit.Day
	session string
}

func (r runOfRow) String() string {
	return strings.TrimSpace(fmt.Sprintf("%s %v %s", r.course, r.day, r.session))
}

// runRows is what is counted of the rows of one run: how many there are, the sum and the
// highest of their places, and of the first of them what stands beside it.
type runRows struct {
	n, sum, highest int
	row, place      int
	text            string
	above, below    neighbour
}

// neighbour is the row above or below another; its place is 0 where there is no such row.
type neighbour struct {
	run   runOfRow
	place int
}

// mostRunsCounted is up to how many runs in a part a line of another one is looked for.
const mostRunsCounted = 2000

// moveLone puts a line that alone is of its run into the run of the lines beside it, where
// that has every place from 1 on but the line's own: a date of another week, another year or
// another course that slipped into one line. The line is told.
func (rs *runSettler) moveLone(p *Part) {
	at := p.Index(Position)
	if at < 0 || !p.Whole || !p.runs.byRow() || !p.Course.OK() || !p.Date.OK() || len(p.Date.Choices) > 0 {
		return
	}
	runs, order := p.countRuns(at)
	for _, run := range order {
		one := runs[run]
		if one.n > 1 || one.place == 0 {
			continue
		}
		for _, beside := range []neighbour{one.above, one.below} {
			home := runs[beside.run]
			if beside.place == 0 || beside.run == run || !home.lacksOnly(one.place) || !nextTo(beside.place, one.place) {
				continue
			}
			if p.runs.moved == nil {
				p.runs.moved = map[runOfRow]runOfRow{}
			}
			p.runs.moved[run] = beside.run
			p.problem(rs.sheet.Name, one.row, -1, place.Look, "line-of-another-run", fmt.Sprintf("%s, place %d", one.text, one.place),
				beside.run.String()+", as on the lines beside it, which have all the other places",
				"It is counted there. If it is of another run after all, put it into a sheet of its own.")
			home.n, home.sum, home.highest = home.n+1, home.sum+one.place, max(home.highest, one.place)
			break
		}
	}
}

// lacksOnly says whether the places of a run are all from 1 on, none twice, but for one. Five
// of them show it.
func (r *runRows) lacksOnly(one int) bool {
	n := r.n + 1
	return r.n >= 5 && max(r.highest, one) == n && r.sum+one == n*(n+1)/2
}

func nextTo(a, b int) bool { return a-b == 1 || b-a == 1 }

// countRuns counts the rows of each run, in the order of their first rows; nil for a part
// with one run, or very many.
func (p *Part) countRuns(at int) (runs map[runOfRow]*runRows, order []runOfRow) {
	runs = map[runOfRow]*runRows{}
	var last neighbour
	var lastOf *runRows // of the row above, where that is the first of its run
	err := p.Each(func(row int, cells []string) error {
		course, day, session, ok := p.RunOf(cells)
		c := trim(cellAt(cells, at))
		if !ok || placeKind(c) != kInt {
			last, lastOf = neighbour{}, nil
			return nil
		}
		now := neighbour{runOfRow{course, day, session}, int(placeNumber(c))}
		if lastOf != nil {
			lastOf.below, lastOf = now, nil
		}
		r := runs[now.run]
		if r == nil {
			if len(runs) == mostRunsCounted {
				return errStop
			}
			r = &runRows{row: row, place: now.place, above: last, text: p.runs.saidBy(cells)}
			runs[now.run], lastOf = r, r
			order = append(order, now.run)
		}
		r.n, r.sum, r.highest, last = r.n+1, r.sum+now.place, max(r.highest, now.place), now
		return nil
	})
	if err != nil || len(runs) < 2 || len(runs) == mostRunsCounted {
		return nil, nil
	}
	return runs, order
}

// byRow says whether the rows say of which run they are.
func (r *runReader) byRow() bool { return r.courseCol >= 0 || r.dateCol >= 0 || r.sessionCol >= 0 }

// saidBy is what a row says of its run, as it stands there.
func (r *runReader) saidBy(cells []string) string {
	var said []string
	for _, c := range []int{r.courseCol, r.dateCol, r.sessionCol} {
		if c >= 0 && !isBlank(cellAt(cells, c)) {
			said = append(said, trim(cellAt(cells, c)))
		}
	}
	return strings.Join(said, ", ")
}
