package record

import (
	"math"
	"strings"

	"lapwing/pipeline/unit"
)

// family collects the evidence on the cells of one shape.
type family struct {
	shape    clockShape
	n        int       // cells
	sampled  int       // cells that went into the scores
	score    []float64 // per reading of readingsOf(shape): log likelihood
	lent     []float64 // per reading: what like columns of the same sheet say; nil nothing
	misfits  []int     // per reading: cells that can't be read that way
	example  string
	reading  clockReading
	runnerUp clockReading
	margin   float64 // log odds of reading over runnerUp
}

// sampleSize bounds the cells that are scored; they are the first of the
// column, so the result does not depend on anything but the sheet.
const sampleSize = 4096

// misfitPrice is the log probability that a cell breaks the column's way of
// writing by a slip of the pen. It is small, so that one 24.75 proves decimal
// minutes in any sheet of fewer than about thirty lines; in a long sheet where
// everything else has seconds below 60, the one is a slip and is asked about.
const misfitPrice = -14.0

// walkerPrice is the log probability that a cell among minutes shown as hours
// has hours, minutes and seconds instead.
const walkerPrice = -3.0

// add scores a cell under each reading.
func (f *family) add(c *clockCell, p plausibility) {
	f.n++
	if f.sampled >= sampleSize {
		return
	}
	f.sampled++
	for i, r := range readingsOf(f.shape) {
		ms, ok := c.as(r)
		if !ok {
			f.misfits[i]++
			f.score[i] += misfitPrice
			other := unread
			switch {
			case r == minSecZero: // typed as 1:02:15, a walker's time is right where 24:31 became 24:31:00
				other = hourMinSec
			case r == dottedMinSec && c.whole >= 1000 && c.fracDigits == 0: // 2431 among 23.28
				other = bareDigits
			}
			if other != unread {
				if ms, fits := c.as(other); fits && p.score(ms) > implausible {
					f.score[i] += max(-6, walkerPrice+p.score(ms)+digitEvidence(c, other)-misfitPrice)
				}
			}
			continue
		}
		f.score[i] += p.score(ms) + digitEvidence(c, r)
	}
}

// digitEvidence is the log probability of the cell's digits under a reading:
// where the last two digits may be anything from 00 to 99, 60 of 100 look like
// seconds by accident.
func digitEvidence(c *clockCell, r clockReading) float64 {
	chance := math.Log(0.6)
	switch r {
	case decimalMinutes:
		if c.fracDigits == 0 {
			return 0
		}
		return chance
	case dottedMinSec:
		if c.fracDigits > 2 { // mm.ss with tenths is rare
			return -2
		}
		return 0
	case bareSeconds, milliseconds:
		return chance
	case hourMinSec: // one last part of 60
		return -math.Log(60)
	case minSecHundredths: // one of 100
		return -math.Log(100)
	case decimalHours: // nearly nobody writes these
		return -1
	}
	return 0
}

// prior is the log odds of a reading before any cell is seen (common practice,
// no source: seconds as digits and decimal minutes are rare on result sheets).
func prior(r clockReading) float64 {
	switch r {
	case decimalMinutes, bareSeconds, milliseconds, dayMinutes:
		return -3
	case decimalHours:
		return -6
	case minSecHundredths, dottedMSF, hourMin:
		return -2
	case hourMinDotted:
		return -6
	}
	return 0
}

// A table beside another on one tab, and a tab of one workbook, are written as the
// others with the same heading; the tabs of a season may have several makers, or a
// program may have turned the times of some into others. What another column says
// counts for at most so much (no source; chosen so).
const (
	besideOnTab = 20.0
	onOtherTab  = asBefore
)

// know adds what another column of the sheet says of the way times are written, for
// at most so much, before either is settled.
func (k *clockColumn) know(o *clockColumn, most float64) {
	for i := range k.families {
		f, other := &k.families[i], &o.families[i]
		if f.n == 0 || other.n == 0 {
			continue
		}
		best := math.Inf(-1)
		for _, s := range other.score {
			best = max(best, s)
		}
		if f.lent == nil {
			f.lent = make([]float64, len(f.score))
		}
		for j, s := range other.score {
			f.lent[j] = max(-most, f.lent[j]+s-best)
		}
	}
}

// asBefore is the log odds that a sheet is written as the one before it of the
// same course with the same headings: makers keep their ways, but not always.
// Fifteen times that could be read either way but for the accident of their digits
// outweigh it (no source; chosen so).
const asBefore = 10.0

// leastDotted is how many times like 00:24.31, none of them with a fraction of 60 and more, are
// no seconds and hundredths of a shorter run (0.6^12 is two in a thousand).
const leastDotted = 12

// settle chooses the reading; a reading given by hand wins, that of an earlier
// sheet is likelier.
func (f *family) settle(given, before string) {
	rs := readingsOf(f.shape)
	best, second := math.Inf(-1), math.Inf(-1)
	for i, r := range rs {
		if clockReadings[r].name == given {
			f.reading, f.runnerUp, f.margin = r, unread, math.Inf(1)
			return
		}
		if r == hourMinDotted && (f.n < leastDotted || f.misfits[i] > 0) {
			continue
		}
		s := f.score[i] + prior(r)
		if f.lent != nil {
			s += f.lent[i]
		}
		if clockReadings[r].name == before {
			s += asBefore
		}
		switch {
		case s > best:
			f.runnerUp, second = f.reading, best
			f.reading, best = r, s
		case s > second:
			f.runnerUp, second = r, s
		}
	}
	f.margin = best - second
}

// oddCell is a cell that the column's reading may not suit, with its
// neighbours in the order of finish.
type oddCell struct {
	row              int
	p                plausibility
	cell, prev, next clockCell
	pos, prevPos     int32
	nextPos          int32
	hasPrev, hasNext bool
}

// oddLimit bounds the odd cells that are kept. A column with more of them is
// not odd: its ordinary reading settles them.
const oddLimit = 4096

// clockColumn settles how a column of times is read.
type clockColumn struct {
	p         plausibility // of the distance of the row at hand
	metres    int
	others    map[int]plausibility // of the distances seen so far
	families  [4]family            // colon2, colon3, dots3, number
	exact     int
	blank     int
	unclear   int
	zerosKept int // numbers like 25.10, which a spreadsheet would have cut to 25.1
	padded    int // 24:03; against 24:3
	unpadded  int
	worded    int        // words stand in brackets behind them
	seconds   int        // another time stands in brackets behind them
	mended    int        // something stood in the way of reading them: 24 31
	stamps    int        // moments whose day is only a stamp: 1900-01-01T00:24:31
	moments   int        // moments whose day may count: 1900-01-01T00:31:00 for 24:31
	eves      []heldCell // moments of 31 December 1899 at a whole minute, until it is known what that day stands for
	late      int        // of these that are no running time, 14:15:00 for 38:15
	ragged    int        // such moments that are at no whole minute
	dated     int        // moments of days of 1900 and 1904
	nextDay   bool       // 31 December 1899 is the second day of the calendar, as programs have it that begin it on the 30th
	odd       []oddCell
	waiting   int // index of the first odd cell still without its next neighbour
	prev      clockCell
	prevPos   int32
	hasPrev   bool
	day       unit.Day
	rising    int // neighbours in sheet order with a rising, falling time
	falling   int
	decided   map[int]oddReading
}

// oddReading is what became of an odd cell.
type oddReading struct {
	ms   int32
	r    clockReading
	sure bool // the order of finish decided it
}

func (k *clockColumn) family(s clockShape) *family {
	switch s {
	case colon2:
		return &k.families[0]
	case colon3:
		return &k.families[1]
	case dots3:
		return &k.families[2]
	}
	return &k.families[3]
}

func newClockColumn(distanceM int) *clockColumn {
	k := &clockColumn{p: newPlausibility(distanceM), metres: distanceM}
	for i, s := range []clockShape{colon2, colon3, dots3, number} {
		n := len(readingsOf(s))
		k.families[i] = family{shape: s, score: make([]float64, n), misfits: make([]int, n)}
	}
	return k
}

// over says over which distance the rows are from here on, in metres; 0 where that is
// not known, which changes nothing. The lines over another distance are another list.
func (k *clockColumn) over(distanceM int) {
	if distanceM == k.metres || distanceM <= 0 {
		return
	}
	if k.others == nil {
		k.others = map[int]plausibility{k.metres: k.p}
	}
	p, seen := k.others[distanceM]
	if !seen {
		p = newPlausibility(distanceM)
		k.others[distanceM] = p
	}
	k.p, k.metres = p, distanceM
	k.hasPrev, k.waiting = false, len(k.odd)
}

// isOdd says whether a cell's own text leaves a doubt that its neighbours may
// settle: 1:02 may be 62 minutes, 24:3 may be 24:03 or 24:30, 1.02 an hour.
func (c *clockCell) isOdd() bool {
	switch c.shape {
	case colon2:
		return c.a < 5 || c.bDigits == 1
	case number:
		return c.fracDigits == 1 && c.whole >= 5 || c.fracDigits == 2 && c.whole < 5
	}
	return false
}

// observe counts one cell. pos is 0 where there is no position.
func (k *clockColumn) observe(row int, text string, c *clockCell, pos int32, day unit.Day) {
	switch c.shape {
	case blankClock:
		k.blank++
		return
	case notClock:
		k.unclear++
		return
	}
	if c.repaired {
		k.mended++
	}
	if c.second {
		k.seconds++
	}
	if c.words {
		k.worded++
	}
	switch c.shape {
	case colon4, exactClock:
		k.exact++
	default:
		if c.eve {
			if c.c != 0 || c.fracMS != 0 {
				k.ragged++
			} else if len(k.eves) < oddLimit {
				if k.eves = append(k.eves, heldCell{*c, k.p, strings.Clone(text)}); c.a >= 2 {
					k.late++
				}
				return
			}
		}
		if c.days > 0 {
			k.dated++
			if c.c == 0 && c.fracMS == 0 {
				k.moments++
				return
			}
			k.stamps++
		}
		f := k.family(c.shape)
		if f.n == 0 {
			f.example = strings.Clone(text)
		}
		f.add(c, k.p)
	}
	if day != k.day || pos == 1 && k.prevPos > 1 { // another run, or the women's list after the men's
		k.day, k.hasPrev, k.waiting = day, false, len(k.odd)
	}
	if c.isOdd() {
		if c.shape == colon2 && c.bDigits == 1 {
			k.unpadded++
		}
		if len(k.odd) < oddLimit {
			k.odd = append(k.odd, oddCell{row: row, p: k.p, cell: *c, pos: pos, prev: k.prev, prevPos: k.prevPos, hasPrev: k.hasPrev})
		}
		return
	}
	switch {
	case c.shape == colon2 && c.b < 10:
		k.padded++
	case c.shape == number && c.fracDigits == 2 && c.frac%10 == 0:
		k.zerosKept++
	}
	if pos == 0 && k.prevPos > 0 {
		return // below the finishers: a line of the disqualified, a total
	}
	for ; k.waiting < len(k.odd); k.waiting++ {
		o := &k.odd[k.waiting]
		o.next, o.nextPos, o.hasNext = *c, pos, true
	}
	if k.hasPrev && c.shape == k.prev.shape {
		switch a, b := k.prev.sortKey(), c.sortKey(); {
		case a < b:
			k.rising++
		case a > b && a < 1.25*b: // more, and another list begins
			k.falling++
		}
	}
	k.prev, k.prevPos, k.hasPrev = *c, pos, true
}

// sortKey orders cells of one shape as their times are ordered, whatever the
// reading.
func (c *clockCell) sortKey() float64 {
	if c.shape == number {
		return c.value
	}
	return float64(c.a)*1e8 + float64(c.b)*1e6 + float64(c.c)*1e4 + float64(c.fracMS)
}

// heldCell is a cell whose reading waits for the others of its column.
type heldCell struct {
	clockCell
	p    plausibility
	text string
}

// settleEves settles what 31 December 1899 stands for. Most programs begin their calendar on the
// 30th, so that a time beyond 24 hours, 38:15 typed as hours and minutes, is 14:15 on the 31st;
// others begin it on the 31st, and write a day of 1900 for such a time.
func (k *clockColumn) settleEves() {
	if k.nextDay = k.late > 0 && k.ragged == 0 && k.dated == 0 && k.stamps == 0; k.nextDay {
		k.moments += len(k.eves)
	} else {
		for _, e := range k.eves {
			f := k.family(e.shape)
			if f.n == 0 {
				f.example = e.text
			}
			f.add(&e.clockCell, e.p)
		}
	}
	k.eves = nil
}

// settle decides the families, then the odd cells.
func (k *clockColumn) settle(given, before string) {
	k.settleEves()
	// Where most cells are plain minutes and seconds (58:32), the few with
	// three parts (1:03:21) are hours: nobody writes both 58:32 and 24:31:00
	// or 24:31:57.
	two, three := &k.families[0], &k.families[1]
	mixed := two.n > 0 && two.n >= three.n
	if mixed {
		for i, r := range readingsOf(colon3) {
			if r != hourMinSec {
				three.score[i] += misfitPrice
			}
		}
	}
	for i := range k.families {
		k.families[i].settle(given, before)
	}
	if mixed && three.runnerUp != unread && three.margin < askBelow {
		// Walkers' 1:02:03, and 29:47:00 that a spreadsheet made of 29:47: each is read as what
		// it can be (read).
		three.reading, three.runnerUp = hourMinSec, unread
	}
	if k.moments > 0 && k.stamps == 0 && three.n == 0 {
		three.reading, three.runnerUp, three.n, three.example = minSecZero, unread, k.moments, "24:31:00"
	}
	k.decided = map[int]oddReading{}
	for i := range k.odd {
		if d, ok := k.decide(&k.odd[i]); ok {
			k.decided[k.odd[i].row] = d
		}
	}
	k.odd = nil
}

// candidates lists the times that an odd cell may stand for; the column's own
// reading comes first.
func (k *clockColumn) candidates(c *clockCell) []oddReading {
	var out []oddReading
	add := func(c clockCell, r clockReading) {
		if ms, ok := c.as(r); ok {
			out = append(out, oddReading{ms: ms, r: r})
		}
	}
	main := k.family(c.shape).reading
	switch {
	case c.shape == colon2 && c.bDigits == 1:
		tens := *c
		tens.b *= 10
		add(*c, main)
		add(tens, main)
	case c.shape == colon2:
		if c.hours {
			add(*c, hourMin)
			return out
		}
		add(*c, main)
		if main == minSec {
			add(*c, hourMin)
		} else {
			add(*c, minSec)
		}
	case main == dottedMinSec && c.fracDigits == 1 && k.zerosKept > 0:
		ones := *c
		ones.fracDigits = 2 // 25.1 as 25.01
		add(*c, main)
		add(ones, main)
	case main == dottedMinSec && c.fracDigits == 2 && c.whole < 5:
		add(*c, main)
		add(*c, dottedHourMin)
	}
	return out
}

// decide reads an odd cell by the order of finish: the one candidate that lies
// between its neighbours' times.
func (k *clockColumn) decide(o *oddCell) (oddReading, bool) {
	cs := k.candidates(&o.cell)
	if len(cs) < 2 {
		return oddReading{}, false
	}
	lo, hi, ordered := k.between(o)
	fits := -1
	for i, c := range cs {
		if ordered && c.ms >= lo && c.ms <= hi && o.p.score(c.ms) > implausible {
			if fits >= 0 {
				return oddReading{}, false // both fit: the column's reading stands
			}
			fits = i
		}
	}
	if fits >= 0 {
		cs[fits].sure = true
		return cs[fits], true
	}
	// Without order: the column's reading, unless nobody can have run it.
	if !ordered && o.p.score(cs[0].ms) <= implausible && o.p.score(cs[1].ms) > implausible {
		return cs[1], true
	}
	return oddReading{}, false
}

// between gives the times of the neighbours in the order of finish. ordered is
// false where the sheet is in no such order.
func (k *clockColumn) between(o *oddCell) (lo, hi int32, ordered bool) {
	lo, hi = 0, maxMS
	up := true
	switch {
	case o.pos > 0:
		if o.hasPrev && o.prevPos > 0 && o.hasNext && o.nextPos > 0 {
			up = o.prevPos < o.nextPos
			if up != (o.prevPos < o.pos) || up != (o.pos < o.nextPos) {
				return lo, hi, false
			}
		} else if o.hasPrev {
			up = o.prevPos < o.pos
		} else if o.hasNext {
			up = o.pos < o.nextPos
		}
	default:
		few := (k.rising + k.falling) / 20
		up = k.falling <= few
		if !up && k.rising > few || k.rising+k.falling < 3 {
			return lo, hi, false
		}
	}
	prev, next := o.prev, o.next
	hasPrev, hasNext := o.hasPrev, o.hasNext
	if !up {
		prev, next, hasPrev, hasNext = next, prev, hasNext, hasPrev
	}
	if hasPrev {
		if ms, ok := k.ordinary(&prev); ok {
			lo, ordered = ms, true
		}
	}
	if hasNext {
		// Much less than before: another list begins, the women's after the men's.
		if ms, ok := k.ordinary(&next); ok && (!ordered || ms > lo-lo/5) {
			hi, ordered = ms, true
		}
	}
	return lo, hi, ordered
}

// ordinary reads a cell as its column is read.
func (k *clockColumn) ordinary(c *clockCell) (int32, bool) {
	switch c.shape {
	case exactClock:
		return c.ms, true
	case colon4:
		return c.a*3600000 + c.b*60000 + c.c*1000 + c.fracMS, c.b < 60 && c.c < 60
	}
	return c.as(k.family(c.shape).reading)
}

// all is how many cells were looked at.
func (k *clockColumn) all() int {
	n := k.exact
	for i := range k.families {
		n += k.families[i].sampled
	}
	return n
}

// soWritten says whether most cells are written in the way that is a slip where few are, as
// 24 31, so that none of them needs to be mentioned.
func (k *clockColumn) soWritten() bool {
	n := k.exact
	for i := range k.families {
		n += k.families[i].n
	}
	return 2*k.mended > n
}

// stray says whether a few cells are written unlike all the others, 7:12 or 45 among times
// like 0:24:31, and can be read in two ways: a slip or a total below the table. They are no
// reason to ask how the column is written, and nothing that is trusted.
func (k *clockColumn) stray(f *family) bool {
	return f.sampled > 0 && f.sampled <= 5 && 12*f.sampled <= k.all() && f.runnerUp != unread && f.margin < askBelow
}

// read gives the running time of a cell. otherwise is the reading used if it
// is not the column's; unsure says that nothing but plausibility chose it.
func (k *clockColumn) read(row int, c *clockCell) (ms int32, otherwise clockReading, unsure, ok bool) {
	if c.shape <= blankClock {
		return 0, unread, false, false
	}
	if c.shape >= colon4 && c.shape != number && c.shape != dots3 {
		ms, ok = k.ordinary(c)
		return ms, unread, false, ok && ms > 0
	}
	if c.days > 0 && k.stamps == 0 {
		c.a += 24 * int32(c.days)
	} else if c.eve && k.nextDay {
		c.a += 24
	}
	f := k.family(c.shape)
	if colons := k.families[0].n + k.families[1].n; c.shape == number && c.fracDigits > 0 && colons > 4*f.n {
		switch {
		case c.minutes: // 25.5 min among times like 24:31
			ms, ok = c.as(decimalMinutes)
			return ms, decimalMinutes, c.fracDigits == 2 && c.frac < 60 && c.frac%25 != 0, ok
		case c.fracDigits == 1 && c.whole >= 5: // 25.5 may be 25:30 or 25:50
			ms, ok = c.as(f.reading)
			return ms, f.reading, true, ok
		}
	}
	if c.isOdd() {
		if d, found := k.decided[row]; found {
			if d.r == f.reading && c.bDigits != 1 {
				return d.ms, unread, false, true
			}
			return d.ms, d.r, !d.sure, true
		}
		if c.hours {
			ms, ok = c.as(hourMin)
			return ms, unread, false, ok
		}
		if c.bDigits == 1 && c.shape == colon2 && k.padded > 0 {
			ms, ok = c.as(f.reading)
			return ms, f.reading, true, ok
		}
	}
	if k.stray(f) {
		ms, ok = c.as(f.reading)
		return ms, f.reading, true, ok
	}
	ms, ok = c.as(f.reading)
	if ok && c.shape == number && c.fracDigits == 0 && c.whole < 100 && k.families[0].n+k.families[1].n > 4*f.n {
		return ms, f.reading, true, true // "24" among times like 24:31: nobody wrote the seconds
	}
	if ok && (c.shape == colon2 || k.p.score(ms) > implausible) {
		return ms, unread, false, true
	}
	// The column's reading does not suit this cell: another one does, plainly?
	for _, r := range readingsOf(c.shape) {
		if r.ofDays() && c.fracDigits < dayDigits {
			continue // 3.1 among minutes and seconds is a slip, and no part of a day
		}
		if alt, fits := c.as(r); r != f.reading && fits && k.p.score(alt) > implausible {
			return alt, r, !c.apart(r, f.reading), true
		}
	}
	return ms, unread, false, ok
}

// apart says whether a cell that is read by r can't be a slip of the pen in a
// column of another reading, because it is not written like that at all.
func (c *clockCell) apart(r, column clockReading) bool {
	short := func(r clockReading) bool { return r == dottedMinSec || r == decimalMinutes }
	switch {
	case c.shape != number:
		return true
	case r == dayFraction:
		return c.fracDigits >= 4
	case short(r) != short(column) && r != decimalHours:
		return r == bareDigits || r == bareSeconds || c.fracDigits > 0
	}
	return false
}
