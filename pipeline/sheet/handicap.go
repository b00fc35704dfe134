package sheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
)

// secondsOf are the seconds of a cell, -1 where it is no time.
func secondsOf(cells []string, i int) float64 {
	c := trim(cellAt(cells, i))
	switch kindOf(c) {
	case kClock:
		return looseNumber(c)
	case kInt:
		if c == "0" {
			return 0 // the scratch runner's handicap
		}
	case kDate, kText:
		if _, clock, ok := stamp(c); ok {
			return looseNumber(clock)
		}
	}
	return -1
}

// offsetWords head a column that says how long after the first a runner started,
// or what is taken off his time.
var offsetWords = set("handicap handicaps hcap cap hc offset delay start started staggered stagger allowance vorgabe handikap headstart sent released")

// penaltyWords head a column of what is added to a time for a fault. Common practice, no source.
var penaltyWords = set(`penalty penalties pen strafe strafen strafzeit zeitstrafe penalite penalites penalizacion penalizaciones penalita penalizzazione penalizzazioni tijdstraf straftijd penalidade penalizacao kara kary
	tidstillagg tillagg tidsstraff straff tidsstraf sakko sakkoaika trest buntetes penalizare kazna`)

func (s *settler) saysOffset(i int) bool { return anyWord(s.headings[i], offsetWords) }

// Words of the times before and beside a handicap: of a time with it reckoned in, and of
// the running time itself.
var (
	adjustedWords = set("adjusted adj corrected handicapped bereinigt")
	runningWords  = set(`running run actual real raw elapsed laufzeit gelaufen gelaufene tatsachliche reine reel realise effectif efectivo realizado effettivo reale
		gelopen looptijd werkelijke rzeczywisty verklig faktisk loptid skutecny todellinen juoksuaika`)
)

// handicap finds the running time of a handicap: a column of offsets, and two of
// times of which one is the other and the offset together. Where the offsets are not
// told, they show in the times: runners are sent off at whole tens of seconds.
func (s *settler) handicap() {
	var clocks []int
	values := make([][]float64, len(s.profiles))
	for i := range s.profiles {
		if s.columns[i].Meaning == PersonalBest {
			continue
		}
		known, offset := 0, s.saysOffset(i)
		values[i] = make([]float64, len(s.rows))
		for n, r := range s.rows {
			v := handicapSeconds(trim(cellAt(r.cells, i)), offset)
			if values[i][n] = v; v >= 0 {
				known++
			}
		}
		if known > 2 && known*10 > (len(s.rows)-s.profiles[i].count[kBlank])*8 {
			clocks = append(clocks, i)
		}
	}
	for _, o := range clocks {
		if !s.saysOffset(o) {
			continue
		}
		for _, sum := range clocks {
			for _, part := range clocks {
				if o != sum && o != part && sum != part && addUp(values[sum], values[part], values[o]) {
					s.handicapped(sum, part, o, clocks)
					return
				}
			}
		}
	}
	if slices.ContainsFunc(s.headings, func(h string) bool { return anyWord(h, penaltyWords) }) {
		return // what is added for that is in the time that counts
	}
	for _, sum := range clocks {
		for _, part := range clocks {
			if sum != part && s.mayBeSentOff(sum) && s.mayBeSentOff(part) && !(s.columns[sum].Meaning == GunTime && s.columns[part].Meaning == ChipTime) && sentOff(values[sum], values[part]) {
				s.handicapped(sum, part, -1, clocks)
				return
			}
		}
	}
}

// mayBeSentOff says whether a column holds times, and none that go beyond five hours, as
// those of day do, and minutes, seconds and hundredths seem to.
func (s *settler) mayBeSentOff(i int) bool { return s.columns[i].Meaning.isTime() && !s.late(i) }

// handicapSeconds are the seconds of a time or an offset, -1 where it is none. Both may
// be minutes and seconds with a dot between them, which their sums then bear out.
func handicapSeconds(c string, offset bool) float64 {
	if hasNoDigit(c) {
		return -1
	}
	if offset {
		c = strings.TrimLeft(c, "+-−– ")
	}
	if kindOf(c) == kDecimal {
		minutes, seconds, _ := strings.Cut(c, ".")
		if len(seconds) != 2 || !digitsOnly(minutes+seconds) || looseNumber(seconds) >= 60 {
			return -1
		}
		return 60*looseNumber(minutes) + looseNumber(seconds)
	}
	return secondsOf([]string{c}, 0)
}

// handicapped settles which of two times is the running time, the other being it with an
// offset reckoned in, that of a column or, below 0, of none. The headings may say so.
// Where runners start one after the other they come in close together, and the running
// times differ more than the clock at the finish; where all start together and an
// allowance is taken off, the times before that differ more. So else the column that is
// spread wider is the running time.
func (s *settler) handicapped(sum, part, offset int, clocks []int) {
	says := func(i int, words map[string]bool) bool { return anyWord(s.headings[i], words) }
	net, clock := part, sum
	switch {
	case offset >= 0 && says(offset, delayWords) && s.columns[sum].Meaning == GunTime && s.largest(offset) < 300:
		return // a few seconds or minutes to the start line
	case offset >= 0 && s.late(offset) && s.late(sum) && !s.late(part): // from one time of day to another
	case says(sum, clockWords) != says(part, clockWords): // "Handicap | Clock | Time"
		if says(part, clockWords) {
			net, clock = sum, part
		}
	case says(sum, adjustedWords) != says(part, adjustedWords):
		if says(part, adjustedWords) {
			net, clock = sum, part
		}
	case says(sum, runningWords) != says(part, runningWords):
		if says(sum, runningWords) {
			net, clock = sum, part
		}
	case offset >= 0 && s.startedAfter(offset):
		// the clock has gone on since the first start
	default:
		a, b := s.spread(sum), s.spread(part)
		if a > b {
			net, clock = sum, part
		}
		if max(a, b) < 1.15*min(a, b) {
			s.clockColumns = []int{sum, part}
		}
	}
	with := "the offsets of the starts"
	if offset >= 0 {
		with = "the handicap of column " + letters(offset)
		s.set(offset, Other, "heading %q: a handicap", s.headings[offset])
	}
	s.set(net, Time, "heading %q: the running time; column %s is it with %s reckoned in", s.headings[net], letters(clock), with)
	s.set(clock, Other, "heading %q: the time of column %s with %s reckoned in", s.headings[clock], letters(net), with)
	for _, c := range clocks {
		if c != net && (s.columns[c].Meaning == Time || s.columns[c].Meaning == GunTime || offset < 0 && s.columns[c].Meaning == ChipTime) {
			s.set(c, Other, "heading %q; column %s is the time", s.headings[c], letters(net))
		}
	}
}

// startedAfter says whether a heading says when a runner started and not what he was given.
func (s *settler) startedAfter(i int) bool {
	return anyWord(s.headings[i], startedAfter) && !anyWord(s.headings[i], headStartWords)
}

// addUp says whether in nearly every row the times of two columns give those of a
// third, and the offset is not the same for all.
func addUp(sum, part, offset []float64) bool {
	rows, right := 0, 0
	lo, hi := math.Inf(1), 0.0
	for i, a := range sum {
		b, o := part[i], offset[i]
		if a <= 0 || b <= 0 || o < 0 {
			continue
		}
		rows++
		if math.Abs(b+o-a) <= 1.01 {
			right++
		}
		lo, hi = min(lo, o), max(hi, o)
	}
	return rows >= 3 && right*10 >= rows*9 && hi > lo
}

// sentOff says whether the times of one column are never shorter than those of another,
// and mostly longer by whole tens of seconds, not the same for all and more than a minute
// for some: the start of each runner. By chance one difference in ten is a whole ten.
func sentOff(sum, part []float64) bool {
	rows, tens, ragged, most := 0, 0, 0, 0.0
	differ := map[float64]bool{}
	for i, a := range sum {
		b := part[i]
		if a <= 0 || b <= 0 {
			continue
		}
		if a < b {
			return false
		}
		rows++
		if math.Mod(a-b, 10) == 0 {
			tens++
		}
		if math.Mod(a, 10) != 0 {
			ragged++ // the times themselves are no whole tens
		}
		differ[a-b], most = true, max(most, a-b)
	}
	return rows >= 8 && tens*10 >= rows*7 && ragged*2 >= rows && len(differ) >= 3 && most >= 60
}

func (s *settler) largest(i int) (hi float64) {
	for _, r := range s.rows {
		hi = max(hi, secondsOf(r.cells, i))
	}
	return hi
}

// spread is the standard deviation of the times of a column.
func (s *settler) spread(i int) float64 {
	var times []float64
	for _, r := range s.rows {
		if v := secondsOf(r.cells, i); v > 0 {
			times = append(times, v)
		}
	}
	return deviation(times)
}

// deviation is the standard deviation of some figures, 0 of none.
func deviation(of []float64) float64 {
	n, sum, squares := float64(len(of)), 0.0, 0.0
	for _, v := range of {
		sum, squares = sum+v, squares+v*v
	}
	if n == 0 {
		return 0
	}
	return math.Sqrt(max(0, squares/n-sum*sum/n/n))
}

// startAndFinish finds times of day at the start and at the finish on a sheet that
// does not give the time between; it is reckoned.
func (s *settler) startAndFinish() {
	if len(s.clock) > 0 {
		return
	}
	start, finish := -1, -1
	for i, p := range s.profiles {
		if m := s.columns[i].Meaning; m.isTime() && p.filled > 0 && !s.late(i) {
			return
		}
		if p.shareOf(kClock) < .8 || p.count[kClock] == 0 {
			continue
		}
		switch m := s.columns[i].Meaning; {
		case s.late(i) && (s.guesses[i].known && s.saysOffset(i) || anyWord(s.headings[i], startedWords)) && start < 0:
			start = i
		case s.late(i) && anyWord(s.headings[i], finishedWords) && finish < 0:
			finish = i
		case s.late(i) && s.guesses[i].known && (m == Time || m == GunTime || m == ChipTime || m == Other || m == Position) && finish < 0:
			finish = i
		case !s.guesses[i].known:
			return // this column may be the time
		}
	}
	if start < 0 || finish < 0 {
		return
	}
	rows, fit := s.takeARun(func(cells []string) (seconds float64, ok bool) {
		a, b := secondsOf(cells, start), secondsOf(cells, finish)
		return b - a, a > 0 && b > 0
	})
	if rows == 0 || !fit {
		return
	}
	s.set(finish, Other, "heading %q: the time of day at the finish", s.headings[finish])
	for i := range s.columns {
		if s.columns[i].Meaning == Time && s.isBetween(i, start, finish) {
			return // it stands there: as minutes, seconds and hundredths, it only looks late
		}
	}
	s.clock, s.between = []int{start, finish}, true
}

// staggered finds a clock at the finish beside how long after the first each runner
// started, on a sheet that has no other times: the running time is reckoned. It takes that
// the heading of the one says clock, and that of the other a start.
func (s *settler) staggered() {
	if len(s.clock) > 0 {
		return
	}
	var clocks []int
	for i, p := range s.profiles {
		if p.count[kClock] > 2 && p.shareOf(kClock, kInt) > .8 {
			clocks = append(clocks, i)
		}
	}
	if len(clocks) != 2 {
		return
	}
	start, finish := clocks[0], clocks[1]
	if !anyWord(s.headings[start], delayWords) {
		start, finish = finish, start
	}
	said := s.lex.times.clock == OneClock && s.startedAfter(start)
	if !anyWord(s.headings[start], delayWords) || !said && !anyWord(s.headings[finish], clockWords) || s.late(start) || s.late(finish) {
		return
	}
	rows, fit := s.takeARun(func(cells []string) (seconds float64, ok bool) {
		a, b := secondsOf(cells, start), secondsOf(cells, finish)
		return b - a, a >= 0 && b > 0
	})
	if rows < 3 || !fit {
		return
	}
	s.lex.times.clockUsed = s.lex.times.clockUsed || said
	for i, what := range map[int]string{start: "when each runner started", finish: "the clock at the finish"} {
		s.set(i, Other, "heading %q: %s", s.headings[i], what)
	}
	s.clock, s.between = []int{start, finish}, true
}

var (
	delayWords = set("start started offset delay staggered stagger headstart sent released")
	clockWords = set("clock watch stopwatch uhr zieluhr laufuhr stoppuhr horloge reloj orologio klok klocka klocktid klockslag zegar zegara hodiny kello cloc")

	// startedAfter are those that say when a runner started and not what he was given; headStartWords
	// take that back.
	startedAfter   = set("start started sent released delay staggered stagger")
	headStartWords = set("head headstart allowance handicap handicaps hcap cap hc")

	// startedWords and finishedWords are over times of day at either end (common practice, no source).
	startedWords  = set("start started off departed depart partenza salida gestartet losgelaufen vertrek gestart startade")
	finishedWords = set("finish finished end ended back arrived arrivee arrivo llegada angekommen ziel aankomst maal")
)

// shortestRun and longestRun bound, in seconds, what is taken for the time from a start to a
// finish.
const shortestRun, longestRun = 8 * 60, 4 * 3600

// takeARun says whether what took gives of a row, in seconds, is as long as a run in 19 of 20
// of the rows of which it gives something, and how many those are.
func (s *settler) takeARun(took func(cells []string) (seconds float64, ok bool)) (rows int, fit bool) {
	fits := 0
	for _, r := range s.rows {
		if t, ok := took(r.cells); ok {
			if rows++; t >= shortestRun && t <= longestRun {
				fits++
			}
		}
	}
	return rows, fits*20 >= rows*19
}

// isBetween says whether a column that looks like hours, minutes and seconds is the
// time from one column to another in minutes, seconds and parts of them.
func (s *settler) isBetween(col, start, finish int) bool {
	rows, fits := 0, 0
	for _, r := range s.rows {
		a, b, t := secondsOf(r.cells, start), secondsOf(r.cells, finish), secondsOf(r.cells, col)
		if a <= 0 || b <= 0 || t <= 0 {
			continue
		}
		rows++
		if math.Abs(t/60-(b-a)) < 1.7 { // either may be rounded, and 99 hundredths are 1.65 of 60
			fits++
		}
	}
	return rows > 0 && fits*20 >= rows*19
}

// between writes the time from one time of day to another.
func between(cells []string, parts []int) string {
	return timeBetween(secondsOf(cells, parts[0]), secondsOf(cells, parts[1]), trim(cellAt(cells, parts[1])))
}

// timeBetween writes the time from a start to a finish, seconds of the day, as the cell
// of the finish allows: what is no time of day stays, and a start that is not known, below
// 0, or after the finish leaves a question mark.
func timeBetween(start, finish float64, cell string) string {
	switch {
	case cell == "":
		return ""
	case kindOf(cell) != kClock && finish < 0:
		return cell // DNF, or a dash
	case start < 0 || finish < 0 || finish <= start:
		return "?"
	}
	return clockText(int64(math.Round(1000 * (finish - start))))
}

// finishClock is the column with the times of day at the finish of a sheet that gives
// no running times, -1 where there is none.
func (s *settler) finishClock() int {
	clock := s.find(Time)
	switch {
	case len(s.clock) > 0 || len(s.clockColumns) > 1:
	case clock >= 0 && s.timeOfDay(clock):
		if s.guesses[clock].known || s.find(Position) < 0 || s.inOrder(clock) {
			return clock
		}
	case clock < 0:
		late := -1
		for i := range s.profiles {
			if !s.stamps(i) && (!s.late(i) || s.profiles[i].shareOf(kClock) <= .8) || anyWord(s.headings[i], scanWords) {
				continue
			}
			if strings.Contains(fold(s.headings[i]), "finish") {
				return i
			}
			if late >= 0 || s.saysOffset(i) || !s.inOrder(i) {
				return -1
			}
			late = i
		}
		return late
	}
	return -1
}

// scanWords head the moment at which somebody was scanned, after the finish. Common practice, no source.
var scanWords = set("scan scans scanned scanning scanner gescannt gescand scanne scannat skannat skannet escaneado")

// inOrder says whether the rows are numbered and the times of day of a column hardly ever
// fall: those of people who came in, not of people who arrived or signed in.
func (s *settler) inOrder(i int) bool {
	if s.find(Position) < 0 {
		return false
	}
	last, n, falls := 0.0, 0, 0
	for _, r := range s.rows {
		if v := secondsOf(r.cells, i); v > 0 {
			if v < last {
				falls++
			}
			last = v
			n++
		}
	}
	return n >= 8 && falls*10 <= n
}

// startInTitle reckons the running times from the times of day at the finish and the
// start that a title line says, where nearly all are then times of a run.
func (s *settler) startInTitle(titles []string, between func() []string) {
	finish := s.finishClock()
	start := s.lex.times.start
	if clock := s.find(Time); start > 0 && finish < 0 && clock >= 0 && s.late(clock) {
		finish = clock
	}
	if finish < 0 {
		if finish = s.risingClock(); finish < 0 {
			return
		}
	}
	said := start > 0
	if said {
		titles = nil
	}
	for _, t := range titles {
		at := startOf(t)
		if at == 0 {
			continue
		}
		if start > 0 && at != start {
			return // of several races
		}
		start = at
	}
	if start == 0 {
		start = s.startRow(finish)
	}
	if start == 0 {
		return
	}
	if !said && len(titles) > 0 {
		for _, t := range between() {
			if at := startOf(t); at > 0 && at != start {
				return // each group had a start of its own
			}
		}
	}
	rows, fit := s.takeARun(func(cells []string) (seconds float64, ok bool) {
		b := secondsOf(cells, finish)
		return b - start, b > 0 && b != start
	})
	if rows == 0 || !fit {
		return
	}
	s.set(finish, Other, "heading %q: the time of day at the finish", s.headings[finish])
	s.clock, s.start = []int{finish}, start
	s.lex.times.startUsed = said
}

// startRow is the time of day, in seconds, of a first row that says the start and nothing else: "Start | 09:00:04",
// or "0 | 09:00:04" before places from 1 on; 0 for none.
func (s *settler) startRow(clock int) float64 {
	first := slices.IndexFunc(s.rows, func(r line) bool { return rowFilled(r.cells) > 0 })
	if first < 0 {
		return 0
	}
	var label []string
	cells := s.rows[first].cells
	for i, c := range cells {
		if i != clock && !isBlank(c) {
			label = append(label, trim(c))
		}
	}
	if said := strings.Join(label, " "); said != "0" && !saysWhatHappened(said) {
		return 0
	}
	return secondsOf(cells, clock)
}

// risingClock is the only column of times where all of them are times of day, with colons or with dots, that
// never fall from row to row, as of people who came in one after the other; -1 for none. It is a
// finish only beside a start that fits it.
func (s *settler) risingClock() (column int) {
	if len(s.clock) > 0 || len(s.clockColumns) > 1 {
		return -1
	}
	column = -1
	for i := range s.profiles {
		switch p := s.profiles[i]; {
		case p.count[kClock] == 0:
		case column >= 0 || p.shareOf(kClock) < .9 || s.saysOffset(i):
			return -1
		default:
			column = i
		}
	}
	if column < 0 {
		return -1
	}
	n, last := 0, 0.0
	for _, r := range s.rows {
		c := trim(cellAt(r.cells, column))
		if kindOf(c) != kClock {
			continue
		}
		parts := strings.FieldsFunc(c, func(r rune) bool { return r == ':' || r == '.' })
		at := secondsOf(r.cells, column)
		if len(parts) < 3 || looseNumber(parts[0]) < 5 || looseNumber(parts[1]) >= 60 || looseNumber(parts[2]) >= 60 || at < last {
			return -1
		}
		n, last = n+1, at
	}
	if n < leastOfDay {
		return -1
	}
	return column
}

// startOf is the time of day of the start that a line says, in seconds; 0 where it says none of this day.
func startOf(line string) float64 {
	value, _, ok := sessionIn(gunFired.ReplaceAllString(line, "start"))
	h, m, clock := strings.Cut(value, ":")
	if !ok || !clock || !saysToday(line) {
		return 0
	}
	return looseNumber(h)*3600 + looseNumber(m)*60 + secondsAfter(line, h, m)
}

// gunFired are other words for the start before its time of day. Common practice, no source.
var gunFired = regexp.MustCompile(`(?i)\b(?:gun|hooter|klaxon|whistle|startschuss|startskudd|startskott|startschot)\b`)

// secondsAfter are the seconds of a time of day in a text, 0 where it gives none: the 15 of
// "Start 9:00:15".
func secondsAfter(text, hour, minute string) float64 {
	for _, h := range []string{hour, strings.TrimPrefix(hour, "0"), fmt.Sprint(looseNumber(hour) - 12)} {
		if _, after, ok := strings.Cut(text, h+":"+minute+":"); ok && len(after) >= 2 && digitsOnly(after[:2]) {
			return looseNumber(after[:2])
		}
	}
	return 0
}

// clockText writes h:mm:ss, with thousandths where there are any.
func clockText(ms int64) string {
	text := fmt.Sprintf("%d:%02d:%02d", ms/3600000, ms/60000%60, ms/1000%60)
	if ms%1000 > 0 {
		text += fmt.Sprintf(".%03d", ms%1000)
	}
	return text
}
