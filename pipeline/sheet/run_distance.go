package sheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"lapwing/pipeline/place"
)

// usualDistance is what a run is taken to be over where nothing says so, in metres.
const usualDistance = 5000

// A list over one distance beside a list over another is believed where the runners
// of one take no more than slowestPace times as long for a metre as those of the
// other: walkers beside runners do, and one distance taken for another twice as long.
// A table that says no distance is taken to be over the usual one within plainPace.
// Common practice, no source.
const (
	slowestPace  = 2.2
	plainPace    = 1.6
	fewestShared = 3
	// Seconds a metre in the middle of a field: under fastestRun nobody runs 2 km (the
	// open standards of the age-grading tables of 2025 are 2:34 a kilometre over 5 km),
	// over slowestRun hardly anybody walks; under oddPace half of fewestOdd or more would
	// be champions.
	fastestRun = .15
	slowestRun = .75
	oddPace    = .17
	// slowestWalk is the pace of a list that says it is of walkers, with people who stroll.
	slowestWalk = 1.1
	fewestOdd   = 3
	// mostDistances is over how many distances the lines of one table may be: with
	// more it is how far each one came in a given time.
	mostDistances = 6
)

// distance finds over which distance a part is: a column, its titles, the tab or the
// file's name says it. A title that says several says none.
func (rs *runSettler) distance(p *Part) {
	if c := p.Index(Distance); c >= 0 {
		texts := columnTexts(p, c)
		if len(texts) == 1 {
			if m, _, text := cellMetres(texts[0]); m > 0 {
				p.Distance = Found{Value: strconv.Itoa(m), Text: text, From: "column " + letters(c), Why: fmt.Sprintf("%s is %d m", text, m)}
			}
			return
		}
		if rs.rowDistances(p, c, texts) {
			return
		}
	}
	for _, l := range p.linesOutside() {
		line := strings.Trim(l.Text, " |")
		f := lengthToday(line)
		if f.Value == "" {
			continue
		}
		if p.mayBeOver(f) {
			p.Distance = f
			return
		}
		p.offLength(rs.sheet.Name, l.Row, line)
	}
	several := Found{}
	for i, t := range p.Titles {
		f := distanceOf(t, fmt.Sprintf("title line %d", i+1))
		if f.Value != "" && p.Tab != "" && saysDistances(t) {
			several = f
			continue
		}
		if f.Value != "" && !ofTheWay(t) {
			p.Distance = f
			return
		}
	}
	if p.Tab != "" {
		if p.Distance = distanceOf(p.Tab, "tab name"); p.Distance.Value != "" {
			return
		}
	}
	if p.Distance = several; several.Value != "" {
		return
	}
	if p.Distance = distanceOf(strings.ReplaceAll(baseName(rs.sheet.Name), "_", " "), "file name"); p.Distance.Value == "" {
		rs.distanceInWords(p)
	}
}

// mayBeOver says whether the times of a part may be those of a distance.
func (p *Part) mayBeOver(f Found) bool {
	metres, _ := strconv.ParseFloat(f.Value, 64)
	middle := p.middleTime()
	return middle > fastestRun*metres && middle < slowestRun*metres
}

// ofTheWay says whether the distance in a line is that of something else than the run: of what a sign
// or a colour stands for, "* ran 2 km", "Yellow = 2 km only", or of a point of the course or a
// place, "times at 2.5 km", "parking 2 km from the start".
func ofTheWay(line string) bool {
	_, from, to, ok := findDistance(line)
	if !ok {
		return false
	}
	if sign, _, ok := signLine(line); ok && sign != "" {
		return true
	}
	if label, _, ok := strings.Cut(line[:from], "="); ok && len(strings.Fields(label)) <= 3 {
		return true
	}
	before, after := strings.Fields(fold(line[:from])), strings.Fields(fold(line[to:]))
	return len(after) > 0 && farWords[after[0]] || len(before) > 1 && pointWords[before[len(before)-1]] && (len(after) == 0 || !courseWordsBehind[after[0]])
}

// Words for that. Common practice, no source.
var (
	pointWords        = set("at after past nach bei apres passe tras dopo na po efter etter ved vid")
	farWords          = set("mark point split away from entfernt vom von markierung")
	courseWordsBehind = set("course route race run distance loop lap time trial strecke lauf parcours course recorrido carrera percorso gara")
)

// distanceInWords takes a distance that a title, the tab or the file's name writes in words,
// where the times are those of it and none of the usual distance: nobody runs 5 km in the
// time of a mile, and hardly anybody walks it in that of a half marathon.
func (rs *runSettler) distanceInWords(p *Part) {
	texts := slices.Clone(p.Titles)
	froms := make([]string, len(texts))
	for i := range texts {
		froms[i] = fmt.Sprintf("title line %d", i+1)
	}
	texts, froms = append(texts, p.Tab, baseName(rs.sheet.Name)), append(froms, "tab name", "file name")
	for i, text := range texts {
		metres, counted := wordsOfDistance(text)
		if metres == 0 {
			continue
		}
		middle := p.middleTime()
		fits := func(metres, fastest float64) bool { return middle > fastest*metres && middle < slowestRun*metres }
		if fits(float64(metres), fastestRun) && (counted || !fits(usualDistance, oddPace)) {
			p.Distance = Found{Value: strconv.Itoa(metres), Text: trim(text), From: froms[i], Why: fmt.Sprintf("in words, and the times fit: %d m", metres)}
		}
		return
	}
}

// middleTime is the median of the running times of a part in seconds, 0 where its times
// are not written with colons.
func (p *Part) middleTime() float64 {
	var all []float64
	clock := p.Index(Time)
	p.Each(func(_ int, cells []string) error {
		if c := trim(cellAt(cells, clock)); kindOf(c) == kClock {
			all = append(all, looseNumber(c))
		}
		return nil
	}) // a grid has no error of its own, and of a file that is not held the first pass said it
	if len(all) == 0 {
		return 0
	}
	slices.Sort(all)
	return all[len(all)/2]
}

// saysDistances says whether a text gives two distances that are not the same in
// other units.
func saysDistances(text string) bool {
	m, _, to, ok := findDistance(text)
	return ok && otherDistance(text[to:], int(m+.5))
}

// cellMetres reads a cell of a column of distances: "5 km", or a bare number, which
// is of kilometres below 100. metres is 0 where it is none.
func cellMetres(cell string) (metres int, bare bool, text string) {
	if m := MarathonMetres(cell); m > 0 {
		return m, false, trim(cell)
	}
	if f := distanceOf(cell, ""); f.Value != "" {
		metres, _ = strconv.Atoi(f.Value)
		return metres, false, f.Text
	}
	v, err := strconv.ParseFloat(strings.Replace(trim(cell), ",", ".", 1), 64)
	if err != nil || v < 1 || v > 200000 {
		return 0, false, cell
	}
	if v < 100 {
		v *= 1000
	}
	return int(v + .5), true, trim(cell)
}

// rowDistances gives each row of a part the distance that a column says, where every
// text of the column is one; it returns whether it did.
func (rs *runSettler) rowDistances(p *Part, col int, texts []string) bool {
	seen, said := map[string]int{}, []int(nil)
	for _, text := range texts {
		if isBlank(text) {
			continue
		}
		m, _, _ := cellMetres(text)
		if m == 0 {
			return false
		}
		if !slices.Contains(said, m) {
			if slices.ContainsFunc(said, func(o int) bool { return sameDistance(o, m) }) {
				return false // as somebody's watch measured it
			}
			said = append(said, m)
		}
		seen[text] = m
	}
	if len(said) == 0 || len(said) > mostDistances {
		return false
	}
	p.runs.distanceCol, p.runs.distances = col, seen
	p.Distance = Found{From: "column " + letters(col), Why: p.Columns[col].Why}
	return true
}

// sameDistance says whether two distances in metres are one, written in other units:
// 5 km is also 3.1 miles.
func sameDistance(a, b int) bool { return math.Abs(float64(a-b)) <= .02*float64(a) }

// metres gives the distance of a row, 0 where it says none of its own.
func (r *runReader) metres(cells []string) int {
	if r.distances == nil {
		return 0
	}
	text := cellAt(cells, r.distanceCol)
	m, ok := r.distances[text]
	if !ok && !isBlank(text) {
		m, _, _ = cellMetres(text)
	}
	return m
}

// group is the lines of a part that are over one distance.
type distanceGroup struct {
	metres int
	paces  []float64 // seconds a metre
	rows   int
	people map[string]bool
}

// pace is the median of the seconds that a metre took; 0 where no time is read.
func (g *distanceGroup) pace() float64 {
	if len(g.paces) == 0 {
		return 0
	}
	slices.Sort(g.paces)
	return g.paces[len(g.paces)/2]
}

// distanceGroups reads the lines of a part, those over each distance together. blank
// counts those that say none in a column of distances.
func (p *Part) distanceGroups() (out []*distanceGroup, blank int) {
	at := map[int]*distanceGroup{}
	clock, whole := p.Index(Time), metresOf(p)
	fullName := p.fullNames()
	p.Each(func(_ int, cells []string) error {
		m := p.runs.metres(cells)
		if m == 0 && p.runs.distances != nil {
			blank++
		}
		if m == 0 {
			m = whole
		}
		g := at[m]
		if g == nil {
			g = &distanceGroup{metres: m, people: map[string]bool{}}
			at[m] = g
			out = append(out, g)
		}
		g.rows++
		if name := fullName(cells); name != "" {
			g.people[name] = true
		}
		if t := finishTime(cellAt(cells, clock)); clock >= 0 && kindOf(cellAt(cells, clock)) == kClock && t > 0 {
			g.paces = append(g.paces, t/float64(m))
		}
		return nil
	}) // a grid has no errors of its own
	slices.SortFunc(out, func(a, b *distanceGroup) int { return a.metres - b.metres })
	return out, blank
}

// settleDistances asks about lines over several distances where it is not plain which
// is which: a distance that a cell does not say, times that can't be over the distances
// given, and the same people in both lists, whose times at two kilometres may have been
// taken on the way. All else are runs of their own.
func (rs *runSettler) settleDistances(parts []*Part) {
	for _, p := range parts {
		if p.Index(Distance) >= 0 {
			rs.askColumn(p)
		} else if c := p.Index(AgeGroup); c >= 0 && !rs.manyRuns(p) {
			rs.askGroups(p, c)
		}
	}
	before := map[runOfPart][]*Part{}
	for _, p := range parts {
		if p.Course.Value == "" || !p.Date.Settled || p.runs.distances != nil || !p.Whole {
			continue
		}
		for _, q := range before[p.run()] {
			if rs.askPair(q, p) {
				break
			}
		}
		before[p.run()] = append(before[p.run()], p)
	}
}

// askColumn asks about a column of several distances.
func (rs *runSettler) askColumn(p *Part) {
	c := p.Index(Distance)
	texts := columnTexts(p, c)
	if len(texts) < 2 || rs.manyRuns(p) {
		return
	}
	read := strings.Join(texts[:min(6, len(texts))], ", ")
	if p.runs.distances == nil {
		if said := slices.ContainsFunc(texts, func(t string) bool { _, _, _, ok := findDistance(t); return ok }); said {
			p.problem(rs.sheet.Name, 0, c, place.Waits, distancesDiffer, read, "one distance in each row, as in 5 km",
				"Over which distance was each? Write it in every row of this column, save, and load the sheet again.")
		}
		return
	}
	if !p.Whole {
		return
	}
	groups, blank := p.distanceGroups()
	if blank > 0 && len(groups) > 1 {
		p.problem(rs.sheet.Name, 0, c, place.Waits, distancesDiffer, fmt.Sprintf("%s, and %d rows without", read, blank), "one distance in each row",
			"Over which distance were the rows without one? Fill them in, save, and load the sheet again.")
		return
	}
	for i, g := range groups {
		for _, h := range groups[:i] {
			if a, b := h.pace(), g.pace(); a > 0 && b > 0 && max(a, b) > slowestPace*min(a, b) {
				p.problem(rs.sheet.Name, 0, c, place.Waits, distancesDiffer, fmt.Sprintf("%s and %s a kilometre", paceText(a), paceText(b)), fmt.Sprintf("times that fit %d m and %d m", h.metres, g.metres),
					"Are the distances of this column right? Put them right, save, and load the sheet again; or put the lines of each distance into a sheet of their own, and load each with --distance.")
				return
			}
		}
	}
}

// manyRuns says whether the rows of a part say themselves which run they are of.
func (rs *runSettler) manyRuns(p *Part) bool {
	return p.Index(Course) >= 0 && rs.o.Course == "" || p.Index(Date) >= 0 && rs.o.Date == ""
}

// askGroups asks about age groups that begin with several distances, 10-W50 and 21-M40.
func (rs *runSettler) askGroups(p *Part, c int) {
	groups := columnTexts(p, c)
	var said []string
	with := 0
	for _, g := range groups {
		if m := distanceThenGroup.FindStringSubmatch(g); m != nil && !strings.Contains(strings.ToLower(g), "-year") {
			with++
			if !slices.Contains(said, m[1]) {
				said = append(said, m[1])
			}
		}
	}
	if len(said) < 2 || with*10 < len(groups)*8 {
		return
	}
	slices.SortFunc(said, func(a, b string) int { return int(looseNumber(a) - looseNumber(b)) })
	p.problem(rs.sheet.Name, 0, c, place.Waits, distancesDiffer, fmt.Sprintf("%s …, with %s in front", groups[0], strings.Join(said, ", ")), "one distance, or a column that says it",
		"Over which distance was each? Write it in every row of a column headed Distance, save, and load the sheet again; or put the lines of each distance into a sheet of their own.")
}

var distanceThenGroup = regexp.MustCompile(`^\s*([1-9]\d?)\s*(?:[kK][mM]?)?-\pL`)

// distancesDiffer is the kind of question about lines over several distances.
const distancesDiffer = "distances-differ"

// askPair asks about one of two tables of one run by course and date where it is not
// plain that they are over the distances they are taken for; it returns whether it did.
func (rs *runSettler) askPair(q, p *Part) bool {
	a, b := metresOf(q), metresOf(p)
	same := sameDistance(a, b)
	if same && (q.Distance.Value != "" && p.Distance.Value != "" || p.Tab == "" || p.Tab == q.Tab) {
		return false
	}
	qs, _ := q.distanceGroups()
	ps, _ := p.distanceGroups()
	if len(qs) != 1 || len(ps) != 1 {
		return false
	}
	x, y := qs[0], ps[0]
	slow, fast := max(x.pace(), y.pace()), min(x.pace(), y.pace())
	if same {
		// One of them may be over less.
		quick, n := p, y.rows
		if x.pace() < y.pace() {
			quick, n = q, x.rows
		}
		if fast == 0 || slow < plainPace*fast || fast > oddPace || n < fewestOdd || quick.Distance.Value != "" {
			return false
		}
		rs.askDistance(quick, fmt.Sprintf("over %d m these would be times of %s a kilometre", a, paceText(fast)))
		return true
	}
	both := 0
	for n := range y.people {
		if x.people[n] {
			both++
		}
	}
	switch least := min(len(x.people), len(y.people)); {
	case 2*both >= least && both >= fewestShared:
		short, other := p, q
		if a < b {
			short, other = q, p
		}
		short.problem(rs.sheet.Name, short.HeadingRow, -1, place.Waits, distancesDiffer, fmt.Sprintf("%d of %d people are also in the list over %d m%s", both, least, metresOf(other), onTab(other)), "other people, or one distance",
			fmt.Sprintf("Are these times over %d m of a run of its own, or taken on the way? Taken on the way: empty this table and load the sheet again. Of a run of its own: save the table as a sheet of its own and load that.", metresOf(short)))
	case p.Distance.Value == "" || q.Distance.Value == "":
		if fast > 0 && slow <= plainPace*fast {
			return false
		}
		u, other, pace := p, q, x.pace()
		if p.Distance.Value != "" {
			u, other, pace = q, p, y.pace()
		}
		if pace > slowestRun || pace > 0 && pace < fastestRun {
			rs.askDistance(other, fmt.Sprintf("%d m, %s a kilometre", metresOf(other), paceText(pace)))
			break
		}
		rs.askDistance(u, fmt.Sprintf("nothing here; %d m%s", metresOf(other), onTab(other)))
	case fast == 0 || slow <= slowestPace*fast, slow <= slowestWalk && (x.pace() > y.pace() && q.saysWalk() || y.pace() > x.pace() && p.saysWalk()):
		return false
	default:
		p.problem(rs.sheet.Name, p.HeadingRow, -1, place.Waits, distancesDiffer, fmt.Sprintf("%s and %s a kilometre", paceText(x.pace()), paceText(y.pace())), fmt.Sprintf("times that fit %d m and %d m", a, b),
			"Is the distance right? Put it right where it stands (the title or the name of the tab), save, and load the sheet again.")
	}
	return true
}

// saysWalk says whether the tab of a part, or the line right above it, says that it is of walkers.
func (p *Part) saysWalk() bool {
	return anyWord(p.Tab, walkWords) || anyWord(lastTitle(p.Titles), walkWords)
}

// askDistance asks over which distance a table is that does not say.
func (rs *runSettler) askDistance(p *Part, read string) {
	p.problem(rs.sheet.Name, p.HeadingRow, -1, place.Waits, distancesDiffer, read, "the distance of this list, as in 2 km",
		"Over which distance was it? Write it in a line above the table, save, and load the sheet again.")
}

// onTab says on which tab a part stands, where it stands on one.
func onTab(p *Part) string {
	if p.Tab == "" {
		return ""
	}
	return fmt.Sprintf(" on tab %q", p.Tab)
}

// paceText writes seconds a metre as minutes and seconds a kilometre.
func paceText(perMetre float64) string {
	s := int(perMetre*1000 + .5)
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

func metresOf(p *Part) int {
	if m := p.DistanceM(); m > 0 {
		return m
	}
	return usualDistance
}
