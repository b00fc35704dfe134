package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"
)

// figures counts the columns of whole numbers whose headings say nothing.
func (s *settler) figures() (n int) {
	for i, c := range s.columns {
		if c.Meaning == Other && s.headings[i] != "" && !s.guesses[i].known && s.profiles[i].shareOf(kInt) > .8 {
			n++
		}
	}
	return n
}

// followedAlone says whether the places follow the times of one column and not those of
// another: that column is the time of this run, and the other a total perhaps.
func (s *settler) followedAlone(a, b int) bool {
	pos := s.find(Position)
	if pos < 0 {
		return false
	}
	n, fallA, fallB, place, lastA, lastB := 0, 0, 0, 0.0, 0.0, 0.0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] { // later rows are picked here and there
		p, x, y := looseNumber(trim(cellAt(r.cells, pos))), secondsOf(r.cells, a), secondsOf(r.cells, b)
		if p <= place || x <= 0 || y <= 0 || y < shortestTime && y*60 >= lastB {
			continue // 1:02 below 58:40 is an hour and two minutes
		}
		if n++; x < lastA {
			fallA++
		}
		if y < lastB {
			fallB++
		}
		place, lastA, lastB = p, x, y
	}
	return n >= 8 && fallA == 0 && fallB*10 >= n
}

// saysMore says whether the heading of a column of times has a number or a word beside the one word
// of the other: "Timer 2", "Backup time" and "Time".
func (s *settler) saysMore(a, b int) bool {
	more := func(i int) bool { return strings.ContainsAny(fold(s.headings[i]), " 0123456789") }
	return more(a) && s.headings[b] != "" && !more(b)
}

// times keeps one column of the plain meaning Time.
func (s *settler) times() {
	cols := s.all(Time)
	for _, a := range cols {
		for _, b := range append(append(s.all(ChipTime), s.all(GunTime)...), cols...) {
			if a != b && s.partOf(a, b) && !s.followedAlone(a, b) {
				s.set(a, Pace, "heading %q, but its values are the same part of column %s in every row: a pace or a split", s.headings[a], letters(b))
				break
			}
		}
	}
	for _, a := range cols {
		for _, b := range cols {
			if unit := s.sameIn(a, b); unit != "" {
				s.set(b, Other, "heading %q: the time of column %s in %s", s.headings[b], letters(a), unit)
			}
		}
	}
	cols = s.all(Time)
	if s.numberedApart(cols) {
		s.clockColumns = cols
		return
	}
	if len(s.clock) > 0 {
		for _, c := range cols {
			s.set(c, Pace, "heading %q beside a time in minutes and seconds of their own: a pace", s.headings[c])
		}
		return
	}
	if cols = s.besideNumbered(cols); len(cols) < 2 {
		return
	}
	best := cols[0]
	better := func(a, b int) bool {
		pa, pb := s.profiles[a], s.profiles[b]
		if la, lb := s.late(a), s.late(b); la != lb {
			return lb
		}
		if ra, rb := s.rounded(a), s.rounded(b); ra != rb {
			return rb
		}
		// Filled first, then rising down the sheet.
		fa, fb := pa.count[kClock]+pa.count[kDecimal], pb.count[kClock]+pb.count[kDecimal]
		if fa*10 < fb*8 || fb*10 < fa*8 {
			return fa > fb
		}
		if ea, eb := editionOf(s.headings[a]), editionOf(s.headings[b]); ea != eb && s.mostlyNear(a, b) {
			return ea > eb
		}
		if s.placesFollow(a, b) {
			return true
		}
		if s.placesFollow(b, a) {
			return false
		}
		ra, rb := float64(pa.rising)/float64(max(1, pa.steps)), float64(pb.rising)/float64(max(1, pb.steps))
		if ra-rb > .1 || rb-ra > .1 {
			return ra > rb
		}
		return s.saysMore(b, a)
	}
	for _, c := range cols[1:] {
		if better(c, best) {
			best = c
		}
	}
	for _, c := range cols {
		switch {
		case c == best:
		case s.beside.renewed < 0 && editionOf(s.headings[c]) > editionOf(s.headings[best]) && 5*s.profiles[c].filled < 4*s.profiles[best].filled && s.profiles[c].shareOf(kClock) > .8:
			s.beside.renewed, s.beside.old = c, best
			s.set(c, Other, "heading %q: stands in place of the time in column %s, on the rows that have one", s.headings[c], letters(best))
		default:
			s.set(c, Other, "heading %q; column %s is the time", s.headings[c], letters(best))
		}
	}
}

// mostlyNear says whether the times of two columns are within half a minute of one another on at
// least half of the rows that have both: two issues of one time, and not one with a handicap.
func (s *settler) mostlyNear(a, b int) bool {
	rows, near := 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] {
		if x, y := secondsOf(r.cells, a), secondsOf(r.cells, b); x > 0 && y > 0 {
			if rows++; math.Abs(x-y) <= 30 {
				near++
			}
		}
	}
	return rows > 0 && 2*near >= rows
}

// sumsSplits says whether the numbers of a column are, in nearly every row that has them, the sums
// of those in the columns of laps before it.
func (s *settler) sumsSplits(total int) bool {
	rows, same := 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] {
		sum, laps := 0.0, 0
		for i := range total {
			if s.guesses[i].meaning == Split {
				sum += looseNumber(trim(cellAt(r.cells, i)))
				laps++
			}
		}
		if of := looseNumber(trim(cellAt(r.cells, total))); of > 0 && laps > 1 {
			if rows++; math.Abs(of-sum) < .51*float64(laps) {
				same++
			}
		}
	}
	return rows >= 3 && same*20 >= rows*19
}

// besideNumbered leaves of the columns of times only the one whose heading is not numbered, where
// two and more differ by their number alone: "Time (1)", "Time (2)" and "Result" are two watches
// and what was made of them. All come back where it has fewer times than they.
func (s *settler) besideNumbered(cols []int) []int {
	bare := func(h string) string { return strings.Trim(fold(h), "0123456789 ()#.") }
	alike := map[string][]int{}
	for _, c := range cols {
		alike[bare(s.headings[c])] = append(alike[bare(s.headings[c])], c)
	}
	if len(cols) < 3 || len(alike) != 2 {
		return cols
	}
	for _, c := range cols {
		of := alike[bare(s.headings[c])]
		if len(of) != 1 || hasDigit(s.headings[c]) || s.profiles[c].count[kClock]*10 < s.profiles[cols[0]].count[kClock]*9 {
			continue
		}
		for _, other := range cols {
			if other != c && !hasDigit(s.headings[other]) {
				return cols
			}
		}
		for _, other := range cols {
			if other != c {
				s.set(other, Other, "heading %q, one of several numbered ones; column %s is what was made of them", s.headings[other], letters(c))
			}
		}
		return of
	}
	return cols
}

// numberedApart says whether columns of times differ by the number of their heading alone, "Time 1"
// and "Time 2", and by more than two watches do on one finish in a fifth of the rows, and the places
// follow none of them alone: nothing tells which is the time of this run.
func (s *settler) numberedApart(cols []int) bool {
	if len(cols) != 2 || len(s.clock) > 0 {
		return false
	}
	a, b := cols[0], cols[1]
	bare := func(i int) string { return strings.Trim(fold(s.headings[i]), "0123456789 ()#.") }
	if bare(a) == "" || bare(a) != bare(b) || !hasDigit(s.headings[a]) || !hasDigit(s.headings[b]) || s.followedAlone(a, b) || s.followedAlone(b, a) {
		return false
	}
	const watches = 2 // seconds
	rows, apart := 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] {
		x, y := secondsOf(r.cells, a), secondsOf(r.cells, b)
		if x > 0 && y > 0 {
			if rows++; math.Abs(x-y) > watches {
				apart++
			}
		}
	}
	return rows >= leastOfList && apart*5 >= rows
}

// rounded says whether four in five times of a column, of five or more, are on a whole half
// minute: somebody has predicted them.
func (s *settler) rounded(i int) bool {
	n, round := 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] {
		if t := secondsOf(r.cells, i); t > 0 && kindOf(cellAt(r.cells, i)) == kClock {
			if n++; math.Mod(t, 30) == 0 {
				round++
			}
		}
	}
	return n >= 5 && 5*round >= 4*n
}

// sameIn says in which unit the numbers of column b are the times of column a, "" where they
// are not.
func (s *settler) sameIn(a, b int) string {
	for _, u := range []struct {
		name    string
		seconds float64
	}{{"seconds", 1}, {"minutes", 60}, {"hours", 3600}} {
		rows, same := 0, 0
		first, differ := "", false
		for _, r := range s.rows {
			x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
			if k := kindOf(y); kindOf(x) != kClock || k != kInt && k != kDecimal {
				continue
			}
			if rows++; first == "" {
				first = y
			}
			differ = differ || y != first
			step := u.seconds // of its last figure
			if i := strings.IndexAny(y, ".,"); i >= 0 {
				step *= math.Pow10(i + 1 - len(y))
			}
			if math.Abs(looseNumber(y)*u.seconds-looseNumber(x)) < step+.01 {
				same++
			}
		}
		if rows >= leastOfList && differ && same*20 >= rows*19 {
			return u.name
		}
	}
	return ""
}

// late says whether all times of a column are beyond five hours: a clock at the
// finish (09:24:31) goes on from the start time.
func (s *settler) late(i int) bool {
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); kindOf(c) == kClock && (strings.Count(c, ":") != 2 || looseNumber(c) < 5*3600) {
			return false
		}
	}
	return s.profiles[i].count[kClock] > 0
}

// partOf says whether the times of column a are in (nearly) every row the same
// part of those of column b, and clearly less: minutes a kilometre beside the
// time, where one word ("Tempo") means the one or the other by language.
func (s *settler) partOf(a, b int) bool {
	var ratios []float64
	decimals := 0
	for _, r := range s.rows {
		x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
		k := kindOf(y)
		if kindOf(x) != kClock || k != kClock && k != kInt && k != kDecimal {
			continue // the time may stand in seconds
		}
		if k == kDecimal {
			decimals++
		}
		if vx, vy := looseNumber(x), looseNumber(y); vx > 0 && vy > 0 {
			if vy < 1 { // a part of a day
				vy *= 24 * 3600
			}
			ratios = append(ratios, vy/vx)
		}
	}
	if len(ratios) < 4 {
		return false
	}
	sort.Float64s(ratios)
	median := ratios[len(ratios)/2]
	near := 0
	for _, q := range ratios {
		if nearRatio(q, median) || nearRatio(60*q, median) { // 1:02 for an hour and two minutes
			near++
		}
	}
	switch {
	case median > 60: // 24:31:00 beside 4:54
		median /= 60
	case median < 1 && decimals*2 > len(ratios): // minutes (24.52) beside 4:54
		median *= 60
	}
	return near*10 >= len(ratios)*7 && median >= 1.4 && median <= 45
}

// nearRatio says whether two ratios differ by less than 3 %.
func nearRatio(q, r float64) bool { return q > r*.97 && q < r*1.03 }

// shortestTime is less than any running time, in s.
const shortestTime = 3 * 60

// official chooses the time that counts where a sheet has several. The gun time is the
// official one of a road race, unless the places show that this sheet goes by the chip.
func (s *settler) official() {
	plain, gun, chip := s.find(Time), s.find(GunTime), s.find(ChipTime)
	if plain >= 0 && !s.timed(plain) && (gun >= 0 && s.timed(gun) || chip >= 0 && s.timed(chip)) {
		s.set(plain, Other, "heading %q, but it has no times", s.headings[plain])
		plain = -1
	}
	if plain < 0 && chip < 0 && gun >= 0 {
		if i := s.shortlyBefore(gun); i >= 0 {
			s.set(i, Time, "heading %q, but its values are times, each a little less than that of column %s", s.headings[i], letters(gun))
			plain = i
		}
	}
	other := plain
	if other < 0 && gun >= 0 && (s.timed(gun) || len(s.rows) == 0) {
		other = gun
	}
	if own := max(gun, chip); plain >= 0 && own >= 0 && s.timed(own) && s.late(plain) && !s.late(own) {
		s.set(plain, Other, "heading %q, but its values are times of day, beside those of the runners in column %s", s.headings[plain], letters(own))
		if plain, other = -1, -1; gun >= 0 && s.timed(gun) && !s.late(gun) {
			other = gun
		}
	}
	if s.officialSaid(plain, gun, chip) {
		return
	}
	switch {
	case other >= 0 && chip >= 0 && s.gapsFollow(chip) && !s.gapsFollow(other):
		s.set(other, Other, "heading %q; the times behind the first are not of it", s.headings[other])
		s.set(chip, Time, "heading %q: the times behind the first in column %s are of it, not of column %s", s.headings[chip], letters(s.find(Gap)), letters(other))
	case other >= 0 && chip >= 0 && s.placesFollow(chip, other):
		s.set(other, Other, "heading %q; the places don't follow it", s.headings[other])
		s.set(chip, Time, "heading %q: the places follow it, not those of column %s", s.headings[chip], letters(other))
	case other >= 0 && chip >= 0 && s.lex.officialBefore != "" && fold(s.headings[chip]) == s.lex.officialBefore && !s.placesFollow(other, chip):
		s.set(other, Other, "heading %q; earlier sheets with these headings go by column %s", s.headings[other], letters(chip))
		s.set(chip, Time, "heading %q: the places of earlier sheets with these headings follow it", s.headings[chip])
	case plain >= 0 && gun >= 0 && s.timed(gun) && s.placesFollow(gun, plain):
		s.set(plain, Other, "heading %q; the places don't follow it", s.headings[plain])
		s.set(gun, Time, "heading %q: the places follow it, not those of column %s", s.headings[gun], letters(plain))
	case plain >= 0 && gun >= 0 && s.timed(gun) && anyWord(s.headings[gun], saysOfficial) && !anyWord(s.headings[plain], saysOfficial) && strings.Contains(fold(s.headings[plain]), " "):
		s.set(plain, Other, "heading %q beside official times", s.headings[plain])
		s.set(gun, Time, "heading %q: the official time", s.headings[gun])
	case plain >= 0:
	case other >= 0:
		s.set(gun, Time, "heading %q: the gun time is the official time of a road race", s.headings[gun])
		if chip >= 0 {
			s.columns[chip].Why += fmt.Sprintf("; not the official time of a road race; if it counts, load the sheet with --answer \"official=%s\"", s.headings[chip])
		}
	case chip >= 0:
		s.set(chip, Time, "heading %q: the only time on the sheet", s.headings[chip])
	default:
		if i := s.overUsualDistance(); i >= 0 {
			s.set(i, Time, "heading %q: the only time on the sheet, over the usual distance", s.headings[i])
		}
	}
	if at := s.find(Time); at >= 0 && other >= 0 && chip >= 0 && (at == chip || s.placesFollow(at, chip)) {
		s.goesBy = s.headings[at]
	}
}

// saysOfficial are words for official in headings of times.
var saysOfficial = set("official officiel officielle oficial ufficiale offiziell offizielle officieel oficjalny oficialny")

// shortlyBefore is the only column of which nothing else is known whose times are, in nearly every
// row, those of the gun's column or less by up to two minutes: each runner's own; -1 for none.
func (s *settler) shortlyBefore(gun int) int {
	const most = 120 // seconds until the last runner has crossed the start of a weekly run
	found := -1
	for i, c := range s.columns {
		if c.Meaning != Other || i == gun || s.profiles[i].shareOf(kClock, kText) < .5 {
			continue
		}
		rows, less := 0, 0
		for _, r := range s.rows[:min(len(s.rows), profileRows)] {
			c := trim(cellAt(r.cells, i))
			own, of := looseNumber(c), secondsOf(r.cells, gun)
			if m := unitsLast.FindStringSubmatch(c); m != nil {
				own = looseNumber(m[2])*60 + looseNumber(m[3]) + 3600*looseNumber("0"+m[1])
			}
			if own <= 0 || of <= 0 {
				continue
			}
			if own >= 60*shortestTime && own > 10*of {
				own /= 60 // 18:20:00 for 18:20
			}
			if rows++; of-own > -1 && of-own <= most {
				less++
			}
		}
		if rows >= leastOfList && less*10 >= rows*9 {
			if found >= 0 {
				return -1
			}
			found = i
		}
	}
	return found
}

// overUsualDistance is the only column of times of a part of the course where its heading
// says 5 km, "5k Time": where there are no other times it is no part; -1 for none.
func (s *settler) overUsualDistance() int {
	parts := s.all(Split)
	if len(parts) != 1 || !s.timed(parts[0]) {
		return -1
	}
	if m, _, _, ok := findDistance(s.headings[parts[0]]); !ok || m != usualDistance {
		return -1
	}
	return parts[0]
}

// officialSaid takes the column of times for the one that counts of which somebody has said so.
func (s *settler) officialSaid(columns ...int) bool {
	for _, i := range columns {
		if i < 0 || s.lex.official == "" || fold(s.headings[i]) != s.lex.official || !s.timed(i) {
			continue
		}
		for _, k := range columns {
			if k >= 0 && k != i && s.columns[k].Meaning == Time {
				s.set(k, Other, "heading %q; by an answer column %s counts", s.headings[k], letters(i))
			}
		}
		s.set(i, Time, "heading %q: by an answer, it counts", s.headings[i])
		s.goesBy = s.headings[i]
		return true
	}
	return false
}

// timed says whether a column has anything that may be a time.
func (s *settler) timed(i int) bool {
	c := &s.profiles[i].count
	return c[kClock]+c[kDecimal]+c[kInt] > 0
}

// gapsFollow says whether the times behind the first are those of a column of times: nine
// in ten of them, of at least five, leave the same time of the first.
func (s *settler) gapsFollow(column int) bool {
	gap := s.find(Gap)
	if gap < 0 {
		return false
	}
	first := map[int]int{} // in tenths of a second
	n, most := 0, 0
	for _, r := range s.rows {
		t, behind := trim(cellAt(r.cells, column)), strings.TrimLeft(trim(cellAt(r.cells, gap)), "+ ")
		if kindOf(t) != kClock || kindOf(behind) != kClock {
			continue
		}
		n++
		d := int(10*(looseNumber(t)-looseNumber(behind)) + .5)
		first[d]++
		most = max(most, first[d])
	}
	return n >= 5 && 10*most >= 9*n
}

// placesFollow says whether the places, or the rows where there are none, go by the
// times of column a and not by those of column b. Only a step from place to place tells
// where one of the two falls and the other does not: a time that is impossible falls in
// both. A single such step is enough where none speaks for b. Where both fall often, the
// rows are in another order.
func (s *settler) placesFollow(a, b int) bool {
	at := s.find(Position)
	type finish struct{ place, a, b float64 }
	var list []finish
	for i, r := range s.rows {
		x, y := trim(cellAt(r.cells, a)), trim(cellAt(r.cells, b))
		f := finish{float64(i), looseNumber(x), looseNumber(y)}
		if at >= 0 {
			p := trim(cellAt(r.cells, at))
			if placeKind(p) != kInt {
				continue
			}
			f.place = placeNumber(p)
		}
		if kindOf(x) == kindOf(y) && f.a > 0 && f.b > 0 {
			list = append(list, f)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].place < list[j].place })
	steps, both, forA, forB := 0, 0, 0, 0
	for i := 1; i < len(list); i++ {
		if list[i].place == list[i-1].place {
			continue
		}
		steps++
		fallsA, fallsB := list[i].a < list[i-1].a, list[i].b < list[i-1].b
		switch {
		case fallsB && !fallsA:
			forA++
		case fallsA && !fallsB:
			forB++
		case fallsA:
			both++
		}
	}
	return steps >= 5 && forA > 0 && forA >= 4*forB && both*5 <= steps
}

// single makes sure that meanings which can only stand once do.
func (s *settler) single() {
	if cols := s.all(Position); len(cols) > 1 {
		best := cols[0]
		score := func(i int) float64 {
			p := s.profiles[i]
			return float64(p.unit)/float64(max(1, p.steps)) + float64(p.rising)/float64(max(1, p.steps)) + float64(p.filled)/float64(max(1, len(s.rows))) + 2*s.timesRise(i)
		}
		for _, c := range cols[1:] {
			if score(c) > score(best)+.05 {
				best = c
			}
		}
		for _, c := range cols {
			switch {
			case c == best:
			case placeWords[fold(s.headings[c])] && s.find(Course) < 0 && s.firstIsText(c):
				s.set(c, Course, "heading %q, but column %s is the position and this one begins with the name of a place", s.headings[c], letters(best))
			default:
				s.set(c, Other, "heading %q; column %s is the position", s.headings[c], letters(best))
			}
		}
	}
	for _, m := range []Meaning{Name, GivenName, FamilyName, GunTime, ChipTime, Age, BirthYear, BirthDate, AgeGroup, Sex, Club, Number, Course, Date, Session, Distance, Status} {
		cols := s.all(m)
		if len(cols) < 2 {
			continue
		}
		best := cols[0]
		for _, c := range cols[1:] {
			a, b := s.profiles[c], s.profiles[best]
			switch {
			case a.filled > 2*b.filled, 2*a.filled > b.filled && m.isName() && s.whole(c) > s.whole(best)+.5,
				m == AgeGroup && 2*(a.count[kGroup]+a.count[kSex]) > 3*(b.count[kGroup]+b.count[kSex]):
				best = c
			}
		}
		for _, c := range cols {
			if c != best {
				if m == Name && s.otherPeople(best, c) {
					s.twoNames = []int{best, c}
				}
				s.set(c, Other, "heading %q; column %s is the %s", s.headings[c], letters(best), m)
			}
		}
	}
}

// otherPeople says whether two columns of names hold full names of different people on nearly all rows,
// of whom either may be who ran.
func (s *settler) otherPeople(a, b int) bool {
	n, apart := 0, 0
	for _, r := range s.rows[:min(len(s.rows), profileRows)] {
		x, y := anyOrder(trim(cellAt(r.cells, a))), anyOrder(trim(cellAt(r.cells, b)))
		if x == "" && y == "" {
			continue
		}
		if n++; strings.Contains(x, " ") && strings.Contains(y, " ") && !strings.Contains(x, y) && !strings.Contains(y, x) {
			apart++
		}
	}
	return n >= 3 && 10*apart >= 9*n && s.whole(a) > .9 && s.whole(b) > .9
}

// whole is the share of the cells of a column that are names of people: words without
// figures.
func (s *settler) whole(i int) float64 {
	n, filled := 0, 0
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" {
			if filled++; kindOf(c) == kText && hasNoDigit(c) {
				n++
			}
		}
	}
	return float64(n) / float64(max(1, filled))
}

// timesRise is the share of the steps from each place of a column to the next at which the
// times don't fall, 0 where the same places stand again and again or there are no times.
func (s *settler) timesRise(i int) float64 {
	clock := max(s.find(Time), s.find(GunTime), s.find(ChipTime))
	if clock < 0 {
		return 0
	}
	type finish struct{ place, time float64 }
	var list []finish
	places := map[float64]bool{}
	for _, r := range s.rows {
		p, t := trim(cellAt(r.cells, i)), trim(cellAt(r.cells, clock))
		if k := kindOf(t); placeKind(p) == kInt && (k == kClock || k == kDecimal || k == kInt) {
			list = append(list, finish{placeNumber(p), looseNumber(t)})
			places[placeNumber(p)] = true
		}
	}
	if len(list) < 5 || 10*len(places) < 9*len(list) {
		return 0
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].place < list[j].place })
	up := 0
	for i := 1; i < len(list); i++ {
		if list[i].time >= list[i-1].time {
			up++
		}
	}
	return float64(up) / float64(len(list)-1)
}

// firstIsText says whether the first cell of a column that is not blank is words.
func (s *settler) firstIsText(i int) bool {
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" {
			return kindOf(c) == kText
		}
	}
	return false
}
