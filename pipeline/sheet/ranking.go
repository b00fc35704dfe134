package sheet

import (
	"fmt"
	"strings"
)

// ranksManyRuns says whether a table ranks results of many days: its places go on from
// row to row, the best time first, while the days change. In a list of runs the places
// begin anew with each. What it ranks stands on other sheets.
func (p *Part) ranksManyRuns() bool {
	pos, date, clock := p.Index(Position), p.Index(Date), p.Index(Time)
	if pos < 0 || date < 0 || clock < 0 || p.src == nil {
		return false
	}
	const leastRows = 5
	rows, on, other := 0, 0, 0 // rows with a place; those that go on from the row above; and on another day
	before, beforeDay, beforeTime := 0, "", 0.0
	p.src.each(func(_ int, cells []string) error {
		place := strings.Trim(trim(cellAt(cells, pos)), "=.")
		day, t := trim(cellAt(cells, date)), secondsOf(cells, clock)
		if !digitsOnly(place) || t <= 0 {
			return nil
		}
		if f, ok := cellDate(day, false); !ok {
			day = beforeDay // blank, or ditto
		} else {
			day = fmt.Sprint(f.readings) // "Sat 3 Jan 2026" and "3/1/2026" are one
		}
		n := int(looseNumber(place))
		if rows++; rows > 1 && (n == before+1 && t >= beforeTime || n == before && t == beforeTime) {
			if on++; day != beforeDay {
				other++
			}
		}
		before, beforeDay, beforeTime = n, day, t
		if rows > profileRows {
			return errStop
		}
		return nil
	}) // errStop is taken by the source
	return rows >= leastRows && 3*on >= 2*(rows-1) && 2*other > on
}

// daysOfBests takes a column of days right behind one of personal bests for those of the bests, and
// not of the runs, where the titles give one day and the places go on over all days: "Place | Name |
// Time | Best | Date". Without a day above it is a ranking.
func (p *Part) daysOfBests(titles []string) {
	at := p.Index(Date)
	if at < 1 || p.Index(PersonalBest) != at-1 || p.Index(Time) < 0 {
		return
	}
	if _, dated := onlyDate(titles); !dated || !p.ranksManyRuns() {
		return
	}
	for i, c := range p.Columns {
		if c.Index == at {
			p.Columns[i].Meaning, p.Columns[i].Why = Other, fmt.Sprintf("heading %q: the days of the bests in column %s", c.Heading, letters(at-1))
		}
	}
}
