package sheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"lapwing/pipeline/place"
)

// askUntold asks about what a table leaves unsaid though its columns hold it: to
// read on would make a list without times or names, or wrong times, of it.
func (s *settler) askUntold(p *Part, sheet string, headingRow int) {
	if s.sortedApart() {
		i := s.find(Position)
		p.problem(sheet, headingRow, i, place.Waits, "columns-sorted-apart", s.headings[i], "places that rise with the times",
			"The times rise from row to row and the places don't: a column was sorted without the others, so that times may stand beside other people's names. Take that back, or sort the rows as wholes, and load the sheet again.")
		return
	}
	if len(s.clock) > 0 || p.Kind == Volunteers {
		return
	}
	if name := s.find(Name); p.Kind == "names" && name >= 0 && s.profiles[name].count[kClock] >= 2 && 3*s.profiles[name].count[kClock] >= s.profiles[name].filled {
		p.problem(sheet, headingRow, name, place.Waits, "names-apart", rowText(s.headings), "a name and a time on each line",
			"The names stand above, and the times below them in the same column. Put each time beside its name, on one line, and load the sheet again.")
		return
	}
	if len(s.twoNames) == 2 && p.Kind != "names" {
		a, b := s.twoNames[0], s.twoNames[1]
		p.problem(sheet, headingRow, b, place.Waits, "names-unclear", rowText(s.headings), "one column with the names of those who ran",
			"Columns "+letters(a)+" and "+letters(b)+" both hold names of people, and not the same ones. Write over the other one what its people are, such as Coach or Partner, and load the sheet again.")
		s.askWhich(p, Name, "if those who ran stand %s", a, b)
		return
	}
	clock := s.find(Time)
	if clock >= 0 {
		if from, to := s.hoursCut(clock); to != "" {
			p.problem(sheet, headingRow, clock, place.Waits, "hours-cut-off", from+", then "+to, "running times that go on beyond the hour",
				"The times begin again after the hour: a spreadsheet has left the hours out. Show this column as h:mm:ss there, save it again, and load the new file.")
			return
		}
	}
	for i, g := range s.guesses {
		if g.known && (g.meaning == Time || g.meaning == GunTime) && (clock < 0 || clock == i) && s.beside.gap != i && s.behindFirst(i) {
			s.askFirst(p, sheet, headingRow, i)
			return
		}
		if g.known && g.meaning == Gap && clock < 0 && s.beside.gap != i && s.onlyGaps(i) {
			s.askFirst(p, sheet, headingRow, i)
			return
		}
	}
	switch {
	case clock < 0 && len(s.clockColumns) < 2:
		splits := s.all(Split)
		for _, i := range splits {
			if s.profiles[i].shareOf(kClock) < .8 {
				return
			}
		}
		if len(splits) > 0 {
			p.problem(sheet, headingRow, splits[0], place.Waits, "time-column-missing", rowText(s.headings), "a column with the time at the finish",
				"The sheet has times of parts of the course and none at the finish. Add a column headed Time, then load the sheet again.")
			return
		}
		if i := s.maybeTimes(); i >= 0 {
			p.problem(sheet, headingRow, i, place.Waits, "time-column-missing", cellAt(s.rows[0].cells, i), "a column of times",
				"No column was found to hold the times; this one may. If it doesn't, write Time above the one that does, and load the sheet again.")
			s.askWhich(p, Time, "if the times are those %s", i)
			return
		}
		if i := s.finishClock(); i >= 0 {
			s.askStart(p, sheet, headingRow, i)
		}
	case clock >= 0 && s.timeOfDay(clock):
		s.askStart(p, sheet, headingRow, clock)
	case clock >= 0:
		s.askOfTimes(p, sheet, headingRow, clock)
	}
}

// askOfTimes asks about running times beside which something says that they do not stand for
// themselves: another watch, laps, the times of other rows, starts.
func (s *settler) askOfTimes(p *Part, sheet string, headingRow, clock int) {
	if i := s.secondWatch(clock); i >= 0 {
		p.problem(sheet, headingRow, i, place.Waits, "time-column-missing", rowText(s.headings), "one column headed Time",
			"Two columns with the same heading hold times that differ by a second or two, as those of two watches. Say which counts, or take the other out and load the sheet again.")
		s.askWhich(p, Time, "if the times %s count", min(i, clock), max(i, clock))
		return
	}
	if i := s.otherOfHeading(clock); i >= 0 {
		p.problem(sheet, headingRow, i, place.Waits, "time-column-missing", rowText(s.headings), "one column headed Time",
			"Two columns with the same heading hold different times, and the places follow both. Say which counts, or take the other out and load the sheet again.")
		s.askWhich(p, Time, "if the times %s count", min(i, clock), max(i, clock))
		return
	}
	if i := s.lapsDiffer(clock); i >= 0 {
		p.problem(sheet, headingRow, i, place.Waits, "laps-differ", s.headings[i], "the same number of laps for everybody",
			"Not all ran the same number of laps. Give those of each distance a list of their own under a line with the distance, as in 3 km, and load the sheet again.")
		return
	}
	if i := s.otherTimes(clock); i >= 0 && i != s.beside.ahead {
		p.problem(sheet, headingRow, i, place.Waits, "time-column-missing", rowText(s.headings), "one column with the time of every runner",
			"Some rows have their time in another column than the rest. If all ran the same distance on this day, write every time into one column headed Time; if not, give each distance or run a list of its own. Then load the sheet again.")
		return
	}
	if i := s.startOfEach(clock); i >= 0 {
		s.askClock(p, sheet, headingRow, i)
		return
	}
	for i := range s.columns {
		if i != clock && s.saysOffset(i) && s.columns[i].Meaning == Other && s.handicapInside(clock, i) {
			s.askClock(p, sheet, headingRow, i)
			return
		}
	}
}

// maybeTimes is a column without a heading of eight numbers or more that may be minutes and
// seconds with a dot, 24.31, and are taken for nothing else; -1 for none.
func (s *settler) maybeTimes() int {
	for i, p := range s.profiles {
		if s.headings[i] != "" || s.columns[i].Meaning != Other || p.filled < 8 || p.share(kDecimal) < .8 || !s.decimalsWithin(i, 10, 100) {
			continue
		}
		seconds := 0
		for _, r := range s.rows {
			if _, after, ok := strings.Cut(strings.ReplaceAll(trim(cellAt(r.cells, i)), ",", "."), "."); ok && len(after) == 2 && after < "60" {
				seconds++
			}
		}
		if 10*seconds >= 8*p.filled {
			return i
		}
	}
	return -1
}

// hoursCut gives the two times between which those of a column begin again at the hour:
// all are two figures of minutes and two of seconds and rise from row to row, except from
// more than 50 minutes to fewer than 10 in one place. "" where they don't.
func (s *settler) hoursCut(i int) (from, to string) {
	before, last, n := "", 0.0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		if !minutesSeconds.MatchString(c) {
			return "", ""
		}
		v := looseNumber(c)
		if n++; n > 1 && v < last {
			if to != "" || last < 50*60 || v >= 10*60 {
				return "", ""
			}
			from, to = before, c
		}
		before, last = c, v
	}
	if n < 8 {
		return "", ""
	}
	return from, to
}

var minutesSeconds = regexp.MustCompile(`^[0-5]\d:[0-5]\d(?:\.\d{1,3})?$`)

// leastOfDay is how many times without a third part beyond 59 are no minutes, seconds and
// hundredths within two minutes of one another (0.6^6 is one in twenty, of few such sheets).
const leastOfDay = 6

// timeOfDay says whether the times of a column are those of a clock at the finish: all
// beyond five hours, within two hours by the clock, and none with a third part beyond
// 59 as hundredths have, or with none as minutes that are shown as hours.
func (s *settler) timeOfDay(i int) bool {
	if !s.late(i) {
		return false
	}
	n, seconds, first, last := 0, 0, 100, -1
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kClock {
			continue
		}
		part := strings.Split(c, ":")
		if len(part) != 3 {
			return false
		}
		hour := int(looseNumber(part[0]))
		first, last = min(first, hour), max(last, hour)
		switch v := looseNumber(part[2]); {
		case v >= 60:
			return false
		case v > 0:
			seconds++
		}
		n++
	}
	return n >= leastOfDay && last-first <= 1 && 2*seconds > n
}

// behindFirst says whether more than half of the times of a column begin with a
// plus sign.
func (s *settler) behindFirst(i int) bool {
	behind, filled := 0, 0
	for _, r := range s.rows {
		if c := trim(cellAt(r.cells, i)); c != "" {
			filled++
			if c[0] == '+' || strings.HasPrefix(c, "at ") {
				behind++
			}
		}
	}
	return behind > 2 && behind*2 > filled || s.risesBehindFirst(i)
}

// risesBehindFirst says the same of times without a sign: below the first, all of a run, stand
// five and more that rise from less than any run takes, half of them less than the first: where
// the second time alone is a slip, those below it are not.
func (s *settler) risesBehindFirst(i int) bool {
	first, last, n, less := 0.0, 0.0, 0, 0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if kindOf(c) != kClock {
			continue
		}
		v := looseNumber(c)
		switch {
		case n == 0:
			if first = v; first < leastRun {
				return false
			}
		case v < last, n == 1 && (v >= leastGap || 2*v > first):
			return false
		default:
			last = v
		}
		if n++; v < first {
			less++
		}
	}
	return n > 5 && 2*less >= n-1
}

// leastGap is less than any time of a run of some length, s.
const leastGap = 480

// handicapInside says whether times come in as those of a handicap do, in which
// runners start one after the other: spread over less than a twelfth of their
// mean, where those of a field are over a fifth (common practice, no source), and
// over less than half of what the handicaps are.
func (s *settler) handicapInside(clock, offset int) bool {
	n, sum, late := 0.0, 0.0, []float64(nil)
	for _, r := range s.rows {
		v, o := secondsOf(r.cells, clock), secondsOf(r.cells, offset)
		if c := trim(cellAt(r.cells, offset)); digitsOnly(c) && looseNumber(c) <= 90 {
			o = 60 * looseNumber(c) // minutes
		}
		if v > 0 && o >= 0 {
			n, sum = n+1, sum+v
			late = append(late, o)
		}
	}
	spread, offsets := s.spread(clock), deviation(late)
	if n < 6 {
		return n >= 4 && spread < sum/n/30 && 4*spread < offsets
	}
	return spread < sum/n/12 && 2*spread < offsets
}

// startOfEach is a column of starts that are no times of day, as they are all within an hour
// or two of midnight, and differ from runner to runner: how long after the first each was sent
// off. -1 for none.
func (s *settler) startOfEach(clock int) int {
	if anyWord(s.headings[clock], runningWords) {
		return -1
	}
	for i, g := range s.guesses {
		if m := s.columns[i].Meaning; g.meaning == Session && (m == Session || m == Other) && s.saysOffset(i) && s.differentStarts(i) {
			return i
		}
	}
	return -1
}

// differentStarts says whether the starts of a column differ so; not where they are the few seconds
// from the signal to the start line, which are no whole tens.
func (s *settler) differentStarts(i int) bool {
	rows, seen, tens := 0, map[float64]bool{}, true
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, i))
		if c == "" {
			continue
		}
		v := secondsOf(r.cells, i)
		if kindOf(c) != kClock && c != "0" || v >= 3600 {
			return false
		}
		rows++
		seen[v] = true
		tens = tens && math.Mod(v, 10) == 0
	}
	return rows >= 3 && 2*len(seen) > rows && (tens || s.largest(i) >= 300)
}

// otherTimes is a column whose heading says nothing known, with times of rows that have none
// in the column of times: never on the same row, as under "Adults" and "Kids", or under the
// heading of the times with another number, "Run 1" and "Run 2". -1 for none.
func (s *settler) otherTimes(clock int) int {
	for i, c := range s.columns {
		alike := differInNumber(s.headings[i], s.headings[clock])
		if i == clock || c.Meaning != Other || s.guesses[i].known && !s.guesses[i].meaning.isTime() && !alike || s.saysOffset(i) || s.profiles[i].shareOf(kClock) < .8 {
			continue
		}
		alone, both := 0, 0
		for _, r := range s.rows {
			if v := secondsOf(r.cells, i); v < shortestRun || v > longestRun {
				continue
			}
			switch t := trim(cellAt(r.cells, clock)); {
			case t == "":
				alone++
			case kindOf(t) == kClock:
				both++
			}
		}
		if alone > 0 && (both == 0 || alike) {
			return i
		}
	}
	return -1
}

// otherOfHeading is another column under the very heading of the times, as full as they are, whose times
// differ from these by more than a few seconds on a fifth of the rows, and which the places follow as well
// or none follows alone; -1 for none.
func (s *settler) otherOfHeading(clock int) int {
	for i, g := range s.guesses {
		if i == clock || g.said || s.guesses[clock].said || s.headings[i] == "" || fold(s.headings[i]) != fold(s.headings[clock]) ||
			s.late(i) != s.late(clock) || s.rounded(i) != s.rounded(clock) || s.followedAlone(clock, i) {
			continue
		}
		rows, differ := 0, 0
		for _, r := range s.rows[:min(len(s.rows), profileRows)] {
			if a, b := secondsOf(r.cells, clock), secondsOf(r.cells, i); a > 0 && b > 0 {
				if rows++; math.Abs(a-b) > 5 {
					differ++
				}
			}
		}
		own, other := s.profiles[clock], s.profiles[i]
		if rows >= 3 && 5*differ >= rows && 10*rows >= 8*own.filled && 10*own.rising*max(1, other.steps) <= 10*other.rising*max(1, own.steps)+own.steps*other.steps {
			return i
		}
	}
	return -1
}

// secondWatch is another column under the very heading of the times, whose times differ from
// these on some rows and by no more than a few seconds on any; -1 for none.
func (s *settler) secondWatch(clock int) int {
	for i := range s.columns {
		if i == clock || s.headings[i] == "" || fold(s.headings[i]) != fold(s.headings[clock]) {
			continue
		}
		rows, differ, far := 0, 0, false
		for _, r := range s.rows {
			a, b := secondsOf(r.cells, clock), secondsOf(r.cells, i)
			if a <= 0 || b <= 0 {
				continue
			}
			rows++
			if a != b {
				differ++
			}
			far = far || a-b > 5 || b-a > 5
		}
		if rows >= 3 && differ > 0 && !far {
			return i
		}
	}
	return -1
}

// lapsDiffer is a column that says how many laps each runner ran, where that is not the same for
// all who have a time; -1 for none.
func (s *settler) lapsDiffer(clock int) int {
	for i, c := range s.columns {
		if c.Meaning != Other && c.Meaning != Split && c.Meaning != TotalRuns || !lapsRun[fold(s.headings[i])] {
			continue
		}
		rows, laps, counts := 0, map[string]int{}, map[int]int{}
		for _, r := range s.rows {
			n := trim(cellAt(r.cells, i))
			if kindOf(cellAt(r.cells, clock)) != kClock || n == "" {
				continue
			}
			if !digitsOnly(n) || len(n) > 2 {
				return -1
			}
			rows++
			laps[n]++
			counts[int(looseNumber(n))]++
		}
		if rows >= 3 && fewShort(counts) == 0 && len(laps) > 1 && len(laps) <= 5 && len(laps) < rows {
			return i
		}
	}
	return -1
}

// lapsRun head such a column. Common practice, no source.
var lapsRun = set("laps runden tours vueltas giri ronden rondes varv omgange runder okrazenia voltas kola", "no of laps", "number of laps", "laps run", "laps completed", "laps done", "laps ran", "completed laps", "lap count", "nr of laps", "gelaufene runden", "anzahl runden", "nombre de tours", "numero de vueltas", "aantal ronden", "antal varv", "antall runder")

// differInNumber says whether two headings are alike but for a number: "Run 1", "Run 2".
func differInNumber(a, b string) bool {
	strip := func(h string) string { return strings.Trim(fold(h), " 0123456789") }
	return a != b && strip(a) != "" && strip(a) == strip(b)
}

// days counts the dates of a column, and the different days among them: the moments of
// one morning are of one day.
func (s *settler) days(column int) (filled, days int) {
	seen := map[string]bool{}
	for _, r := range s.rows {
		if f := scanDates(trim(cellAt(r.cells, column)), true); len(f) > 0 {
			filled++
			seen[fmt.Sprint(f[0].readings)] = true
		}
	}
	return filled, len(seen)
}

// askNames asks which columns hold the names of a table without headings, or without any over
// these, that has two columns of words side by side, each of which may be a part of them.
func (s *settler) askNames(p *Part, sheet string) {
	at := s.find(Time)
	if at < 0 || p.named() && !s.sparseNames(at) {
		return
	}
	if d := s.find(Date); d >= 0 && s.find(Number) < 0 && p.Kind != Volunteers {
		if filled, days := s.days(d); filled >= 4 && days*10 >= filled*8 {
			p.problem(sheet, 0, -1, place.Waits, "name-column-missing", "each row of another day, and nobody named", "a column of names",
				"Are these the runs of one runner? Add a column headed Name with the name in every row, save, and load the sheet again.")
			return
		}
	}
	headed := slices.ContainsFunc(s.guesses, func(g guess) bool { return g.known })
	for i := 0; i+1 < len(s.profiles); i++ {
		if headed && (s.headings[i] != "" || s.headings[i+1] != "") {
			continue
		}
		if s.partsOfNames(i, i+1) {
			p.problem(sheet, 0, i, place.Waits, "name-columns-unclear", "columns "+letters(i)+" and "+letters(i+1), "a heading above each column",
				"Say which has the first names; or write above the columns what they hold, such as Place, First name, Surname and Time, and load the sheet again.")
			p.Problems[len(p.Problems)-1].Answers = place.AnswerLines(
				place.Answer{Flags: s.columnFlags(i, GivenName) + " " + s.columnFlags(i+1, FamilyName), When: "if column " + letters(i) + " has the first names"},
				place.Answer{Flags: s.columnFlags(i+1, GivenName) + " " + s.columnFlags(i, FamilyName), When: "if column " + letters(i+1) + " has them"})
			return
		}
	}
}

// sparseNames says whether the names, taken for such by their values alone, stand on fewer than
// half of the rows that have a time: those of a list beside the results.
func (s *settler) sparseNames(clock int) bool {
	at := s.find(Name)
	return at >= 0 && !s.guesses[at].known && 2*s.profiles[at].filled < s.profiles[clock].filled
}

// partsOfNames says whether two columns of words may hold the two parts of names: of surnames,
// four in ten or more differ, of first names three, and surnames may be of two words, as clubs
// are.
func (s *settler) partsOfNames(i, k int) bool {
	words := func(i, differ int) bool {
		f := s.profiles[i]
		return f.share(kText) > .8 && f.filled >= 3 && len(f.distinct)*10 >= min(f.filled, distinctKept)*differ
	}
	single := func(i int) bool { return s.profiles[i].spaces*5 < s.profiles[i].filled }
	given := func(i int) bool { return words(i, 3) && single(i) }
	family := func(i int) bool { return words(i, 4) && (single(i) || !s.clubsIn(i)) }
	return given(i) && family(k) || given(k) && family(i)
}

// clubsIn says whether several cells of a column have words of clubs.
func (s *settler) clubsIn(i int) bool {
	n := 0
	for _, r := range s.rows {
		if anyWord(cellAt(r.cells, i), clubWords) {
			n++
		}
	}
	return n >= 2 && 5*n >= s.profiles[i].filled
}

// askHeading asks about a row right above the first values that is a heading by
// most of its words and was not taken for one: "Age group | Men | Time | Women |
// Time" heads no list of a run.
func (p *Part) askHeading(sheet string, lex *lexicon, above, first line) {
	filled, known := 0, 0
	for _, c := range above.cells {
		switch {
		case isBlank(c):
			continue
		case strings.ContainsAny(c, "0123456789:"):
			return
		}
		filled++
		if g := lex.read(c); g.known && g.meaning != Other {
			known++
		}
	}
	if above.row+1 == first.row && filled >= 4 && known >= 3 && filled == rowFilled(first.cells) {
		p.problem(sheet, above.row, -1, place.Waits, "heading-unclear", rowText(above.cells), "a heading for each column, such as Place, Name and Time",
			"If these are the results of one run, write above each column what it holds, then load the sheet again.")
	}
}

// sortedApart says whether the times rise all the way down while the places, each of which
// stands once, follow no order: one of the two was sorted without the other.
func (s *settler) sortedApart() bool {
	pos, clock := s.find(Position), s.find(Time)
	if pos < 0 || clock < 0 || !s.guesses[pos].known {
		return false
	}
	n, fall, up, lastTime, lastPlace, hi := 0, 0, 0, 0.0, 0.0, 0.0
	seen := map[float64]bool{}
	for _, r := range s.rows {
		c, t := trim(cellAt(r.cells, pos)), secondsOf(r.cells, clock)
		if !digitsOnly(c) || t <= 0 {
			continue
		}
		place := looseNumber(c)
		if seen[place] {
			return false
		}
		seen[place] = true
		if n++; n > 1 {
			if t < lastTime {
				fall++
			}
			if place > lastPlace {
				up++
			}
		}
		lastTime, lastPlace, hi = t, place, max(hi, place)
	}
	return n >= 10 && fall == 0 && 10*up > 2*n && 10*up < 8*n && (s.sampledAll(n) && hi == float64(n) || !s.sampledAll(n))
}

// sampledAll says whether so many rows are all there are.
func (s *settler) sampledAll(n int) bool { return n < profileRows }
