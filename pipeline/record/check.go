package record

import (
	"cmp"
	"fmt"
	"hash/maphash"
	"slices"
	"strings"
	"unicode/utf8"

	"lapwing/pipeline/place"
	"lapwing/pipeline/record/name"
	"lapwing/pipeline/text"
	"lapwing/pipeline/unit"
)

// A time may stand against the order of positions by this much and still be
// only a Look: two watches, or a time rounded the other way.
const orderSlackMS = 3000

// CheckRun looks at the lines of one run of one sheet together and returns what
// a person should know, worst first. It changes Status: a line that stands
// twice becomes Repeat (the later row); a time that does not fit the order of
// positions, or that is faster than the open standard, becomes Doubtful, as
// does the second line of one person. Positions and times are not changed.
//
// distanceM is in metres (0: not known, taken as 5000). The result does not
// depend on the order of lines, given that their rows differ.
func CheckRun(lines []Line, distanceM int) []place.Problem {
	c := runCheck{lines: lines}
	c.voids()
	for i := range lines {
		if lines[i].Status != NotStarted && lines[i].Status != Superseded && lines[i].Status != Repeat {
			c.byPosition = append(c.byPosition, int32(i))
		}
	}
	slices.SortFunc(c.byPosition, func(a, b int32) int {
		x, y := &lines[a], &lines[b]
		return cmp.Or(cmp.Compare(x.Position, y.Position), cmp.Compare(x.Row, y.Row))
	})
	c.twice()
	c.impossible(distanceM)
	all := c.byPosition
	for _, section := range c.sections() {
		c.byPosition = section
		c.positions()
		c.order()
	}
	c.byPosition = all
	c.unplaced()
	slices.SortFunc(c.problems, func(a, b place.Problem) int {
		return cmp.Or(cmp.Compare(a.Severity, b.Severity), cmp.Compare(a.Place.Row, b.Place.Row), cmp.Compare(a.Kind, b.Kind))
	})
	return c.problems
}

// voids looks at lines of which a note says that they do not stand. One that no
// other line of the same place or name stands for is doubtful: somebody may have
// finished there.
func (c *runCheck) voids() {
	var places map[int32]bool
	var names map[string]bool
	for i := range c.lines {
		if c.lines[i].Status != Superseded {
			continue
		}
		if places == nil {
			places, names = map[int32]bool{}, map[string]bool{}
			for k := range c.lines {
				if l := &c.lines[k]; l.Status != Superseded {
					places[l.Position], names[string(fold(nil, l.Name))] = true, true
				}
			}
		}
		l := &c.lines[i]
		if l.Position > 0 && places[l.Position] || l.Name != "" && names[string(fold(nil, l.Name))] {
			continue
		}
		l.Status = Doubtful
		c.add(l, place.Doubtful, "line-said-void", l.Note, "another line with this place or name", "Did somebody finish here? If so: lapwing correct COURSE DATE PLACE --reinstate; if nobody did: lapwing correct COURSE DATE PLACE --not-a-finisher")
	}
}

type runCheck struct {
	lines      []Line
	byPosition []int32              // every line that counts, by position and row
	fastest    [len(sexWords)]int32 // by Sex, the least possible time in ms
	problems   []place.Problem
}

// possible says whether somebody can have run the time: an impossible one says
// nothing about the times beside it.
func (c *runCheck) possible(l *Line) bool {
	return l.TimeMS >= c.fastest[l.Sex] || l.TakingPart.OnWheels()
}

func (c *runCheck) add(l *Line, sev place.Severity, kind, read, expected, do string) {
	c.problems = append(c.problems, place.Problem{Place: place.Place{Row: int(l.Row)}, Severity: sev, Kind: kind, Read: strings.Clone(read), Expected: expected, Do: do})
}

// finished says whether the line holds a place in the order of finish.
func finished(l *Line) bool {
	switch l.Status {
	case OK, Unnamed, Untimed, Doubtful:
		return true
	}
	return false
}

// listedAgain says whether a line with a place of its own repeats one further up, as where the
// groups stand above the whole field, or the whole field above them: both name the same person
// in full, nothing of the two contradicts, and they are no neighbours, as two scans of one
// finisher are. Their times are the same.
func listedAgain(l, m *Line) bool {
	const neighbours = 2
	return l.TimeMS > 0 && l.Row-m.Row > neighbours && strings.IndexByte(l.Name, ' ') > 0 && !initialOnly(l.Name) &&
		(l.Sex == m.Sex || l.Sex == NotGiven || m.Sex == NotGiven) && l.Birth.Gap(m.Birth) <= 0 && (l.Club == m.Club || l.Club == "" || m.Club == "")
}

// twice finds lines that stand twice and people who do.
func (c *runCheck) twice() {
	// Keys are 64-bit hashes, so that ten million lines make no garbage; a
	// chance collision in a run of a thousand lines is one in 10^13.
	seed := maphash.MakeSeed()
	byName := make(map[uint64]int32, len(c.byPosition))
	byNumber := make(map[uint64]int32)
	rows := slices.Clone(c.byPosition)
	slices.SortFunc(rows, func(a, b int32) int { return cmp.Compare(c.lines[a].Row, c.lines[b].Row) })
	var room []byte
	var lastAt map[int32]int32 // position -> first unnamed line, made only if needed
	for _, i := range rows {
		l := &c.lines[i]
		if l.Status == Unnamed || l.Name == "" {
			if l.Position > 0 && l.TimeMS > 0 {
				if lastAt == nil {
					lastAt = map[int32]int32{}
				}
				if j, ok := lastAt[l.Position]; !ok {
					lastAt[l.Position] = i
				} else if m := &c.lines[j]; m.TimeMS == l.TimeMS && m.Number == l.Number {
					c.repeat(l, m)
				}
			}
			continue
		}
		room = fold(room[:0], l.Name)
		key := anyOrder(seed, room)
		j, seen := byName[key]
		if !seen {
			byName[key] = i
		} else if m := &c.lines[j]; (l.Position == m.Position || l.Position == 0 || m.Position == 0 || listedAgain(l, m)) && l.TimeMS == m.TimeMS && l.Number == m.Number {
			if m.Position == 0 && l.Position > 0 && finished(m) { // a winner named above the list
				l, m, byName[key] = m, l, i
			}
			c.repeat(l, m)
			continue
		}
		if number := strings.TrimLeft(l.Number, "0"); number != "" {
			key := maphash.String(seed, l.Number)
			k, taken := byNumber[key]
			switch {
			case !taken:
				byNumber[key] = i
			case seen && k == j && corrects(l, &c.lines[j]):
				c.lines[j].Status = Superseded
				c.samePerson(l, &c.lines[j], place.Look)
				continue
			case seen && k == j && finished(l):
				c.samePerson(l, &c.lines[j], place.Doubtful)
				continue
			default:
				c.add(l, place.Look, "number-twice", l.Number, fmt.Sprintf("another number than row %d has", c.lines[k].Row), "Ask whose number it is")
				continue
			}
		}
		if !seen || !finished(l) {
			continue
		}
		switch m := &c.lines[j]; {
		case corrects(l, m):
			m.Status = Superseded
			c.samePerson(l, m, place.Look)
		case l.Number != "" && m.Number != "" && l.Number != m.Number:
		case l.Sex != NotGiven && m.Sex != NotGiven && l.Sex != m.Sex:
		case l.Birth.Gap(m.Birth) > 0:
		case initialOnly(l.Name) && (l.TimeMS != m.TimeMS || l.TimeMS == 0 || l.Club != m.Club):
			c.samePerson(l, m, place.Look) // Anna and Andrew Lee are both A. Lee
		case l.Birth.Known() && m.Birth.Known() || l.Club == m.Club:
			c.samePerson(l, m, place.Doubtful)
		default:
			c.samePerson(l, m, place.Look)
		}
	}
}

// anyOrder is a key of a folded name that does not depend on the order of its words, on points and
// commas, or on a title.
func anyOrder(seed maphash.Seed, folded []byte) (key uint64) {
	for i := 0; i < len(folded); {
		from := i
		for i < len(folded) && folded[i] != ' ' && folded[i] != ',' && folded[i] != '.' && folded[i] != '*' {
			i++
		}
		switch w := folded[from:i]; string(w) {
		case "", "mr", "mrs", "ms", "miss", "dr", "herr", "frau":
		default:
			key += maphash.Bytes(seed, w)
		}
		i++
	}
	return key
}

// writtenAgain finds a line that says the place and the time of the one before it again, and the
// name with its words in another order, or with a slip: the first is a repeat, the second may be
// a relative and is asked about, unless the places go on as after a tie. k is where it stands by
// position.
func (c *runCheck) writtenAgain(l, before *Line, k int) bool {
	if l.TimeMS == 0 || l.TimeMS != before.TimeMS || l.Name == "" || before.Name == "" || !finished(l) || !finished(before) || l.Number != before.Number || l.Sex != NotGiven && before.Sex != NotGiven && l.Sex != before.Sex || l.Birth.Gap(before.Birth) > 0 {
		return false
	}
	a, b := name.Parse(l.Name), name.Parse(before.Name)
	switch {
	case a.Unnamed || b.Unnamed:
		return false
	case a.Full == b.Full || slices.Equal(slices.Sorted(strings.FieldsSeq(a.Given+" "+a.Family)), slices.Sorted(strings.FieldsSeq(b.Given+" "+b.Family))):
		c.repeat(l, before)
	case k+1 < len(c.byPosition) && c.lines[c.byPosition[k+1]].Position == l.Position+2:
		return false
	case !l.Tied && !before.Tied && name.OneSlip(a.Full, b.Full) && utf8.RuneCountInString(a.Full) >= 7:
		c.samePerson(l, before, place.Doubtful)
	default:
		return false
	}
	return true
}

// initialOnly says whether all that a name has beside one word are initials.
func initialOnly(name string) bool {
	long, initials := 0, 0
	for _, w := range strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '.' || r == ',' || r == '\u00A0' }) {
		if utf8.RuneCountInString(w) == 1 {
			initials++
		} else {
			long++
		}
	}
	return long == 1 && initials > 0
}

func (c *runCheck) repeat(l, first *Line) {
	l.Status = Repeat
	c.add(l, place.Note, "line-twice", l.Name, "", fmt.Sprintf("Nothing to do: row %d says the same and is used", first.Row))
}

// samePerson: both places stay in the count. The second is doubtful where age,
// number or club say, beside the name, that it is the same person, and where the
// sheet says nothing else of either: a name alone makes somebody recorded twice about
// as likely as two namesakes in one run of a few hundred (our estimate, no source), and
// a time wrongly counted is worse than one that waits for an answer. It is for looking
// at where one of the two has something that the other lacks, or only initials are
// alike: father and son may both have run.
func (c *runCheck) samePerson(l, first *Line, sev place.Severity) {
	if sev == place.Doubtful && l.Status == OK {
		l.Status = Doubtful
	}
	c.add(l, sev, "person-twice-on-sheet", l.Name, fmt.Sprintf("somebody else than in row %d", first.Row), "Ask who finished here; one of the two may have been read for somebody else")
}

// corrects says whether a line of somebody stands for an earlier one: its note says so, that of the earlier
// does not, and neither has a place that the other lacks.
func corrects(l, earlier *Line) bool {
	says := func(m *Line) bool {
		return slices.ContainsFunc(strings.Fields(string(fold(nil, m.Note))), func(w string) bool { return text.CorrectionWords[w] })
	}
	return l.Status == OK && l.TimeMS > 0 && l.TimeMS != earlier.TimeMS && (l.Position == earlier.Position || l.Position == 0) && l.Row > earlier.Row &&
		says(l) && (!says(earlier) || earlier.Status != OK)
}

// sections parts the lines, each section by position and row, where the
// positions begin again at 1 under one another, as those of men and of women
// do; one section where they don't.
func (c *runCheck) sections() [][]int32 {
	first := 0 // lines at position 1
	for _, i := range c.byPosition {
		if p := c.lines[i].Position; p > 1 {
			break
		} else if p == 1 {
			first++
		}
	}
	if first < 2 {
		return [][]int32{c.byPosition}
	}
	rows := slices.Clone(c.byPosition)
	slices.SortFunc(rows, func(a, b int32) int { return cmp.Compare(c.lines[a].Row, c.lines[b].Row) })
	var cuts, single []int // where the positions fall back to 1, and where a 1 follows a 1
	last := int32(0)
	for k, i := range rows {
		l := &c.lines[i]
		switch {
		case l.Position == 0:
			continue
		case l.Position < last && l.Position != 1:
			return [][]int32{c.byPosition}
		case l.Position < last:
			cuts = append(cuts, k)
		case l.Position == 1 && last == 1 && !l.Tied && l.Status != Repeat:
			single = append(single, k)
		}
		last = l.Position
	}
	if len(cuts) == 0 {
		return [][]int32{c.byPosition}
	}
	// A section of one line ends where the next begins.
	cuts = append(cuts, single...)
	slices.Sort(cuts)
	var out [][]int32
	from := 0
	for _, k := range cuts {
		out, from = append(out, rows[from:k]), k
	}
	out = append(out, rows[from:])
	for _, s := range out {
		slices.SortFunc(s, func(a, b int32) int {
			return cmp.Or(cmp.Compare(c.lines[a].Position, c.lines[b].Position), cmp.Compare(c.lines[a].Row, c.lines[b].Row))
		})
	}
	return out
}

// Gap is a run of positions that no line has, both ends included.
type Gap struct{ From, To int32 }

// Missing lists the positions between 1 and the last that no line of the run
// has, in order. A tie of k lines takes its position and the k-1 after it: where one of
// them is printed 3=, or they have the same time.
func Missing(lines []Line) []Gap {
	type shared struct {
		lines, time int32
		tie         bool
	}
	var at []int32
	ties := map[int32]shared{}
	for i := range lines {
		if l := &lines[i]; l.Position > 0 && l.Status != Repeat && l.Status != Superseded {
			at = append(at, l.Position)
			t, again := ties[l.Position]
			ties[l.Position] = shared{t.lines + 1, l.TimeMS, t.tie || l.Tied || again && t.time == l.TimeMS}
		}
	}
	slices.Sort(at)
	at = slices.Compact(at)
	var gaps []Gap
	next := int32(1)
	for _, p := range at {
		if p > next {
			gaps = append(gaps, Gap{next, p - 1})
		}
		width := int32(1)
		if t := ties[p]; t.tie {
			width = t.lines
		}
		next = max(next, p+width)
	}
	return gaps
}

// positions reports positions given twice and those that are missing.
func (c *runCheck) positions() {
	var prev *Line
	for k, i := range c.byPosition {
		l := &c.lines[i]
		if l.Position == 0 || l.Status == Repeat {
			continue
		}
		switch {
		case prev == nil || prev.Position != l.Position:
		case c.writtenAgain(l, prev, k):
			if l.Status == Repeat {
				continue
			}
		case !l.Tied && !prev.Tied:
			sev := place.Look
			if l.TimeMS == prev.TimeMS {
				sev = place.Note
			}
			c.add(l, sev, "position-repeated", fmt.Sprint(l.Position), fmt.Sprintf("another position than row %d, or 3= for a tie", prev.Row), "Ask which of the two came first")
		}
		prev = l
	}
	lines := c.lines
	if len(c.byPosition) < len(lines) {
		lines = make([]Line, len(c.byPosition))
		for k, i := range c.byPosition {
			lines[k] = c.lines[i]
		}
	}
	if p, missing := PositionsMissing(lines); missing {
		c.problems = append(c.problems, p)
	}
}

// PositionsMissing says which positions between 1 and the last no line of a run has; false
// where none is missing.
func PositionsMissing(lines []Line) (p place.Problem, missing bool) {
	gaps := Missing(lines)
	if len(gaps) == 0 {
		return p, false
	}
	last, n := int32(0), int32(0)
	for i := range lines {
		if l := &lines[i]; l.Status != Repeat {
			last = max(last, l.Position)
		}
	}
	var list []string
	for _, g := range gaps {
		n += g.To - g.From + 1
		switch {
		case len(list) == 8:
			list = append(list, "…")
		case len(list) > 8:
		case g.From == g.To:
			list = append(list, fmt.Sprint(g.From))
		default:
			list = append(list, fmt.Sprintf("%d-%d", g.From, g.To))
		}
	}
	p = place.Problem{Severity: place.Look, Kind: "positions-missing", Read: strings.Join(list, ", "), Expected: fmt.Sprintf("every position from 1 to %d", last),
		Do: "Look for the missing lines", Answers: place.AnswerLines(place.Answer{Flags: "--kind excerpt", When: "if the sheet holds only some of the field"})}
	if n*5 > last {
		p.Kind, p.Do = "positions-missing-many", "Look for the missing lines, unless the sheet holds only some of the field"
	}
	return p, true
}

// order finds the fewest times that have to be doubted for the rest to rise
// with the positions: those outside a longest non-decreasing subsequence
// (patience sorting; M. L. Fredman, "On computing the length of longest
// increasing subsequences", Discrete Mathematics 11, 1975, p. 29). Impossible
// times, which are doubted anyway, say nothing about those beside them.
func (c *runCheck) order() {
	var at []int32
	for _, i := range c.byPosition {
		if l := &c.lines[i]; l.Position > 0 && l.TimeMS > 0 && finished(l) && !l.TakingPart.OnWheels() && c.possible(l) {
			at = append(at, i)
		}
	}
	if len(at) == 0 {
		c.listed()
		return
	}
	keep := longestRise(len(at), func(i int) int32 { return c.lines[at[i]].TimeMS })
	c.ofDay(at)
	out := 0
	for _, k := range keep {
		if !k {
			out++
		}
	}
	if out == 0 {
		return
	}
	if out > max(2, len(at)/10) {
		c.problems = append(c.problems, place.Problem{Severity: place.Note, Kind: "order-not-by-time", Read: fmt.Sprintf("%d of %d times", out, len(at)),
			Expected: "times that rise with the positions", Do: "Nothing if the times are each person's own from the start line; else check which column holds the time"})
		return
	}
	for i, k := range keep {
		if k {
			continue
		}
		l := &c.lines[at[i]]
		lo, hi := int32(0), int32(maxMS)
		for j := i - 1; j >= 0; j-- {
			if keep[j] {
				lo = c.lines[at[j]].TimeMS
				break
			}
		}
		for j := i + 1; j < len(at); j++ {
			if keep[j] {
				hi = c.lines[at[j]].TimeMS
				break
			}
		}
		expected := fmt.Sprintf("from %s to %s, as the places around it", unit.ClockMS(lo), unit.ClockMS(hi))
		if hi == maxMS {
			expected = fmt.Sprintf("%s or more, as the place before it", unit.ClockMS(lo))
		} else if lo == 0 {
			expected = fmt.Sprintf("%s or less, as the place after it", unit.ClockMS(hi))
		}
		sev := place.Look
		if lo-l.TimeMS > orderSlackMS || l.TimeMS-hi > orderSlackMS {
			sev = place.Doubtful
			if l.Status == OK {
				l.Status = Doubtful
			}
		}
		c.add(l, sev, "time-out-of-order", unit.ClockMS(l.TimeMS), expected, "The time doesn't fit; please ask, then correct the time or the position")
	}
}

// listed looks at lines without places that stand in the order of their times but for one or two:
// those may have been mistyped. What stands at the end was perhaps added later.
func (c *runCheck) listed() {
	const few, least = 20, 8 // one line in so many, of at least so many
	var at []int32
	for _, i := range c.byPosition {
		if l := &c.lines[i]; l.TimeMS > 0 && finished(l) && !l.TakingPart.OnWheels() && c.possible(l) {
			at = append(at, i)
		}
	}
	if len(at) < least {
		return
	}
	keep := longestRise(len(at), func(i int) int32 { return c.lines[at[i]].TimeMS })
	out := 0
	for _, k := range keep {
		if !k {
			out++
		}
	}
	if out > max(1, len(at)/few) {
		return
	}
	for i, k := range keep[:len(keep)-2] {
		if k || i == 0 && keep[1] && c.lines[at[0]].TimeMS > 2*c.lines[at[1]].TimeMS {
			continue
		}
		l := &c.lines[at[i]]
		c.add(l, place.Look, "time-out-of-order", unit.ClockMS(l.TimeMS), "a time between those of the lines above and below, as on the rest of the list", "The time doesn't fit its line; please ask, then correct it")
	}
}

// ofDay doubts the last times of a run where they are over three hours, four times those
// before them and more, and would fit without their hours: 09:25:04 behind 24:58 is the time
// of day at which somebody finished. Slow alone is no reason to doubt.
func (c *runCheck) ofDay(at []int32) {
	const hour = 3600 * 1000
	last := len(at) - 1
	for last >= 0 && c.lines[at[last]].TimeMS > 3*hour {
		last--
	}
	if last < 0 {
		return
	}
	before := c.lines[at[last]].TimeMS
	for _, i := range at[last+1:] {
		l := &c.lines[i]
		if rest := l.TimeMS % hour; l.TimeMS > 4*before && rest >= before && rest <= 2*before && l.Status == OK {
			l.Status = Doubtful
			c.add(l, place.Doubtful, "time-of-day", unit.ClockMS(l.TimeMS), "a running time, as those before it", "This looks like the time of day at which somebody finished; please ask, then correct the time")
		}
	}
}

// unplaced doubts a time without a position on a sheet where most lines have
// one, if it does not lie between the times around it: a record, a mean or
// a remark under the results rather than a finisher. A note that says that the
// line came later tells why it stands there, and what describes a person is of none of these.
func (c *runCheck) unplaced() {
	placed, without := 0, 0
	for i := range c.lines {
		if l := &c.lines[i]; l.TimeMS > 0 && finished(l) {
			if l.Position > 0 {
				placed++
			} else {
				without++
			}
		}
	}
	if without == 0 || placed < 3*without {
		return
	}
	rows := slices.Clone(c.byPosition)
	slices.SortFunc(rows, func(a, b int32) int { return cmp.Compare(c.lines[a].Row, c.lines[b].Row) })
	for k, i := range rows {
		l := &c.lines[i]
		if l.Position > 0 || l.TimeMS == 0 || l.Status != OK || saysAdded(l.Note) || described(l) {
			continue
		}
		lo, hi := int32(0), int32(maxMS)
		for j := k - 1; j >= 0; j-- {
			if o := &c.lines[rows[j]]; o.Position > 0 && o.TimeMS > 0 && finished(o) && c.possible(o) {
				lo = o.TimeMS
				break
			}
		}
		for _, j := range rows[k+1:] {
			if o := &c.lines[j]; o.Position > 0 && o.TimeMS > 0 && finished(o) && c.possible(o) {
				hi = o.TimeMS
				break
			}
		}
		if l.TimeMS >= lo-orderSlackMS && l.TimeMS <= hi+orderSlackMS || lo > hi {
			continue
		}
		l.Status = Doubtful
		c.add(l, place.Doubtful, "line-without-place", fmt.Sprintf("%s %s", l.Name, unit.ClockMS(l.TimeMS)), "a position, as the other lines have, or a time that fits the lines around it",
			"Ask whether this person finished; give the line its place, or leave it out of the sheet")
	}
}

// described says whether a line tells of a person what no record or mean does: a sex, an age or a number.
func described(l *Line) bool { return l.Sex != NotGiven || l.Birth.Known() || l.Number != "" }

// longestRise marks the members of a longest non-decreasing subsequence of
// value(0..n-1). Among equal choices it keeps the one that ends lowest.
func longestRise(n int, value func(int) int32) []bool {
	tails := make([]int32, 0, n) // index of the smallest last value of each length
	before := make([]int32, n)
	for i := range n {
		v := value(i)
		k, _ := slices.BinarySearchFunc(tails, v, func(t int32, v int32) int {
			if value(int(t)) <= v {
				return -1
			}
			return 1
		})
		before[i] = -1
		if k > 0 {
			before[i] = tails[k-1]
		}
		if k == len(tails) {
			tails = append(tails, int32(i))
		} else {
			tails[k] = int32(i)
		}
	}
	keep := make([]bool, n)
	if len(tails) > 0 {
		for i := tails[len(tails)-1]; i >= 0; i = before[i] {
			keep[i] = true
		}
	}
	return keep
}

// impossible doubts times faster than the open standard that Read let pass
// because it was told another distance.
func (c *runCheck) impossible(distanceM int) {
	if distanceM <= 0 {
		distanceM = 5000
	}
	for sex := range c.fastest {
		c.fastest[sex] = FastestMS(distanceM, M)
	}
	c.fastest[W] = FastestMS(distanceM, W)
	for _, i := range c.byPosition {
		l := &c.lines[i]
		if l.Status != OK || l.TimeMS == 0 || c.possible(l) {
			continue
		}
		l.Status = Doubtful
		c.add(l, place.Doubtful, "time-impossible", unit.ClockMS(l.TimeMS), "not faster than "+unit.ClockMS(c.fastest[l.Sex])+", the open standard of the distance",
			"The time doesn't fit; please ask, then correct the time, the distance or the way of taking part")
	}
}
