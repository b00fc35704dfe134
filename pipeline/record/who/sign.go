package who

import (
	"slices"
	"sort"

	"lapwing/pipeline/age"
	"lapwing/pipeline/unit"
)

// tally is how many rows carry a label.
type tally struct{ id, n int32 }

// cluster is the pooled evidence of some rows held to be one runner: first of
// a signature, later of signatures joined.
type cluster struct {
	n       int32
	births  int32 // rows whose window agrees with lo..hi
	strange int32 // rows whose window does not
	lo, hi  unit.Day
	sexes   [4]int32
	asked   int32 // rows of sheets that give clubs
	timed   int32
	dev     int64   // sum over timed rows, millionths of log time
	loose   bool    // a row of known namesakes that its window cannot place
	names   []tally // keys of the name table, most rows first
	numbers []tally
	clubs   []tally // without blank
	courses []tally
	runs    []int32 // sorted; by day
}

func (c *cluster) mainSex() uint8 {
	best := uint8(SexNotGiven)
	for s := SexM; s <= SexX; s++ {
		if c.sexes[s] > 0 && (best == SexNotGiven || c.sexes[s] > c.sexes[best]) {
			best = s
		}
	}
	return best
}

// arena hands out pieces of large blocks, so that a million signatures do not
// make millions of allocations.
type arena[T any] struct{ free []T }

func (a *arena[T]) take(n int) []T {
	if n > len(a.free) {
		a.free = make([]T, max(n, 1<<15))
	}
	s := a.free[:n:n]
	a.free = a.free[n:]
	return s
}

// signer groups rows into signatures.
type signer struct {
	m       *model
	tallies arena[tally]
	ints    arena[int32]
	sigs    []cluster
	first   []int32 // first row of each signature, as position in Key order
	rows    []int32 // rows in the order of their signatures
	starts  []int32
	several map[uint64]bool // full and sex known to be several people
}

// sign makes the signatures: rows of one full name, sex and number, or of one
// full name, sex and course where there is no number. Within such a group rows
// are parted where birth windows contradict one another, where two are of one
// run, or where the pace differs too much.
func (m *model) sign() error {
	r, l := m.rows, &m.lab
	n := r.Len()
	m.widenUnsure()
	m.findClubbed()
	keys := make([]uint64, n)
	with := make([]int32, n)
	pinned := m.pinned()
	alone := uint64(0)
	for p, i := range l.order {
		with[p] = i
		k := m.names.of[r.Name[i]]
		switch {
		case k < 0 || pinned[i]:
			keys[p] = 1<<63 | alone
			alone++
		case r.Number[i] > 0:
			keys[p] = uint64(m.names.keys[k].full)<<35 | uint64(r.Sex[i])<<33 | 1<<32 | uint64(r.Number[i])
		default:
			keys[p] = uint64(m.names.keys[k].full)<<35 | uint64(r.Sex[i])<<33 | uint64(l.course[i])
		}
	}
	radixSort(keys, with)
	g := signer{m: m, rows: with, several: map[uint64]bool{}}
	g.starts = append(g.starts, 0)
	// First pass: which names are known to be several people.
	eachGroup(keys, 33, func(lo, hi int) {
		if keys[lo]>>63 == 0 && hi-lo > 1 && m.anyLoose(with[lo:hi]) && m.contradict(with[lo:hi]) &&
			m.severalPeople(with[lo:hi]) {
			g.several[keys[lo]>>33] = true
		}
	})
	eachGroup(keys, 0, func(lo, hi int) { g.group(keys[lo], with[lo:hi]) })
	// Signatures in the order of their first row.
	order := make([]int32, len(g.sigs))
	firsts := make([]uint64, len(g.sigs))
	pos := make([]int32, n)
	for p, i := range l.order {
		pos[i] = int32(p)
	}
	for s := range g.sigs {
		order[s] = int32(s)
		f := int32(n)
		for _, i := range with[g.starts[s]:g.starts[s+1]] {
			f = min(f, pos[i])
		}
		firsts[s] = uint64(f)
	}
	radixSort(firsts, order)
	m.sigs = make([]cluster, len(order))
	m.sigOf = make([]int32, n)
	for to, from := range order {
		m.sigs[to] = g.sigs[from]
		for _, i := range with[g.starts[from]:g.starts[from+1]] {
			m.sigOf[i] = int32(to)
		}
	}
	m.applyDecisions()
	return nil
}

// pinned are the rows that a decision takes out of their signatures: those it
// is about alone, and those it parts although nothing in them tells them apart.
func (m *model) pinned() map[int32]bool {
	out := map[int32]bool{}
	for _, d := range m.o.Decisions {
		a, okA := m.rowOf(d.A)
		b, okB := m.rowOf(d.B)
		alike := okA && okB && !d.Same && m.alike(a, b)
		if okA && (!d.WholeA || alike) {
			out[a] = true
		}
		if okB && (!d.WholeB || alike) {
			out[b] = true
		}
	}
	return out
}

// alike says whether two rows might be of one signature.
func (m *model) alike(a, b int32) bool {
	r := m.rows
	ka, kb := m.names.of[r.Name[a]], m.names.of[r.Name[b]]
	if ka < 0 || kb < 0 || m.names.keys[ka].full != m.names.keys[kb].full || r.Sex[a] != r.Sex[b] || r.Number[a] != r.Number[b] {
		return false
	}
	if r.Number[a] == 0 && m.lab.course[a] != m.lab.course[b] || r.Run[a] == r.Run[b] {
		return false
	}
	return !m.contradict([]int32{a, b})
}

func eachGroup(keys []uint64, shift uint, do func(lo, hi int)) {
	for lo := 0; lo < len(keys); {
		hi := lo + 1
		for hi < len(keys) && keys[hi]>>shift == keys[lo]>>shift {
			hi++
		}
		do(lo, hi)
		lo = hi
	}
}

// window is a row's birth window, widened where its basis is unsure.
func (m *model) window(i int32) age.Window {
	w := age.Window{Lo: m.rows.BirthLo[i], Hi: m.rows.BirthHi[i]}
	if !w.Known() {
		return w
	}
	switch age.Basis(m.rows.Basis[i]) {
	case age.NoBasis:
		w.Lo, w.Hi = w.Lo-183, w.Hi+183
	case age.SignUp: // may have been true years ago: older, never younger
		w.Lo -= 5 * 365
	}
	if m.unsure != nil && m.unsure[m.rows.Series[i]] {
		w.Lo, w.Hi = w.Lo-366, w.Hi+366
	}
	return w
}

// contradict says whether the known windows of rows have no common day.
func (m *model) contradict(rows []int32) bool {
	var w age.Window
	for _, i := range rows {
		v, ok := w.Meet(m.window(i))
		if !ok {
			return true
		}
		w = v
	}
	return false
}

// severalPeople says whether rows of one name show at least two people: two
// births at least 300 days apart, each shown by at least two rows.
func (m *model) severalPeople(rows []int32) bool {
	rest := m.placed(rows)
	var found []age.Window
	for len(rest) > 0 {
		w, in, out := m.stab(rest)
		if len(in) < 2 {
			return false
		}
		for _, f := range found {
			if f.Gap(w) > 300 {
				return true
			}
		}
		found = append(found, w)
		rest = out
	}
	return false
}

// anyLoose says whether any row has neither a number nor a window that would
// place it.
func (m *model) anyLoose(rows []int32) bool {
	for _, i := range rows {
		if m.rows.Number[i] == 0 && !m.isPlaced(i) {
			return true
		}
	}
	return false
}

// placed keeps the rows whose window is narrow enough to tell people apart.
func (m *model) placed(rows []int32) []int32 {
	var out []int32
	for _, i := range rows {
		if w := m.window(i); w.Known() && w.Hi-w.Lo <= looseDays {
			out = append(out, i)
		}
	}
	return out
}

// stab finds the birth date that most rows' windows hold (the earliest such
// stretch), their common window, the rows that hold it and the others.
func (m *model) stab(rows []int32) (w age.Window, in, out []int32) {
	type edge struct {
		at  unit.Day
		end bool
	}
	edges := make([]edge, 0, 2*len(rows))
	for _, i := range rows {
		v := m.window(i)
		edges = append(edges, edge{v.Lo, false}, edge{v.Hi + 1, true})
	}
	sort.Slice(edges, func(a, b int) bool {
		if edges[a].at != edges[b].at {
			return edges[a].at < edges[b].at
		}
		return edges[a].end && !edges[b].end
	})
	depth, best := 0, 0
	var at unit.Day
	for _, e := range edges {
		if e.end {
			depth--
		} else if depth++; depth > best {
			best, at = depth, e.at
		}
	}
	for _, i := range rows {
		v := m.window(i)
		if v.Lo <= at && at <= v.Hi {
			in = append(in, i)
			w, _ = w.Meet(v)
		} else {
			out = append(out, i)
		}
	}
	return
}

// group makes the signatures of one group of rows, which are in Key order.
func (g *signer) group(key uint64, rows []int32) {
	m := g.m
	if key>>63 == 1 || len(rows) == 1 {
		g.add(rows, key>>63 == 0 && g.several[key>>33] && !m.isPlaced(rows[0]) && m.rows.Number[rows[0]] == 0)
		return
	}
	numbered := key>>32&1 == 1
	known := !numbered && g.several[key>>33]
	if !known && !m.contradict(rows) && (numbered || !m.clash(rows)) {
		g.add(rows, false)
		return
	}
	// Rows whose window places them, the best supported birth first; then the
	// others, each to the first that it fits.
	var loose []int32
	var parts [][]int32
	var windows []age.Window
	rest := make([]int32, 0, len(rows))
	for _, i := range rows {
		if m.isPlaced(i) {
			rest = append(rest, i)
		} else {
			loose = append(loose, i)
		}
	}
	for len(rest) > 0 {
		w, in, out := m.stab(rest)
		parts, windows = append(parts, in), append(windows, w)
		rest = out
	}
	if known {
		for _, p := range parts {
			g.unclashed(p, numbered)
		}
		for _, i := range loose {
			g.add([]int32{i}, true)
		}
		return
	}
next:
	for _, i := range loose {
		for k := range parts {
			if w, ok := windows[k].Meet(m.window(i)); ok {
				parts[k], windows[k] = append(parts[k], i), w
				continue next
			}
		}
		parts, windows = append(parts, []int32{i}), append(windows, m.window(i))
	}
	for _, p := range parts {
		g.unclashed(p, numbered)
	}
}

func (m *model) isPlaced(i int32) bool {
	w := m.window(i)
	return w.Known() && w.Hi-w.Lo <= looseDays
}

// clash says whether two rows are of one run, or so far apart in pace that
// they are hardly one person's.
func (m *model) clash(rows []int32) bool {
	l := &m.lab
	var room [64]int32
	runs := room[:0]
	lo, hi := int32(1<<30), int32(-1<<30)
	for _, i := range rows {
		runs = append(runs, l.run[i])
		if d := l.dev[i]; d != noTime {
			lo, hi = min(lo, d), max(hi, d)
		}
	}
	slices.Sort(runs)
	for k := 1; k < len(runs); k++ {
		if runs[k] == runs[k-1] {
			return true
		}
	}
	return hi-lo > farPace && hi > lo
}

const farPace = 450_000 // millionths of log time

// unclashed parts rows that share a run or differ too much in pace: each row
// goes to the part nearest in pace of those without its run.
func (g *signer) unclashed(rows []int32, numbered bool) {
	m := g.m
	if numbered || !m.clash(rows) {
		g.add(rows, false)
		return
	}
	type part struct {
		rows  []int32
		runs  map[int32]bool
		sum   int64
		timed int64
	}
	var parts []*part
	for _, i := range rows {
		var best *part
		gap := int64(farPace)
		for _, p := range parts {
			if p.runs[m.lab.run[i]] {
				continue
			}
			d := int64(0)
			if m.lab.dev[i] != noTime && p.timed > 0 {
				d = p.sum/p.timed - int64(m.lab.dev[i])
				d = max(d, -d)
			}
			if d < gap {
				best, gap = p, d
			}
		}
		if best == nil {
			best = &part{runs: map[int32]bool{}}
			parts = append(parts, best)
		}
		best.rows = append(best.rows, i)
		best.runs[m.lab.run[i]] = true
		if d := m.lab.dev[i]; d != noTime {
			best.sum += int64(d)
			best.timed++
		}
	}
	for _, p := range parts {
		g.add(p.rows, false)
	}
}

// add pools rows into one signature and writes them back in the order of the
// signatures: the parts of a group never cross its bounds.
func (g *signer) add(rows []int32, loose bool) {
	at := g.starts[len(g.starts)-1]
	g.sigs = append(g.sigs, g.pool(rows, loose))
	copy(g.rows[at:], rows)
	g.starts = append(g.starts, at+int32(len(rows)))
}

// pool sums the evidence of rows.
func (g *signer) pool(rows []int32, loose bool) cluster {
	m, r, l := g.m, g.m.rows, &g.m.lab
	c := cluster{n: int32(len(rows)), loose: loose}
	var names, numbers, clubs, courses [16]tally
	na, nu, cl, co := names[:0], numbers[:0], clubs[:0], courses[:0]
	c.runs = g.ints.take(len(rows))
	var w age.Window
	for x, i := range rows {
		c.runs[x] = l.run[i]
		c.sexes[r.Sex[i]]++
		if k := m.names.of[r.Name[i]]; k >= 0 {
			na = count(na, k)
		}
		if r.Number[i] > 0 {
			nu = count(nu, r.Number[i])
		}
		if l.club[i] > 0 {
			cl = count(cl, l.club[i])
			c.asked++
		} else if m.clubbed[r.Series[i]] {
			c.asked++
		}
		co = count(co, l.course[i])
		if d := l.dev[i]; d != noTime {
			c.dev += int64(d)
			c.timed++
		}
		if v := m.window(i); v.Known() {
			if both, ok := w.Meet(v); ok {
				w = both
				c.births++
			} else {
				c.strange++
			}
		}
	}
	if c.strange > 0 { // numbered rows that contradict: the best supported birth
		known := make([]int32, 0, len(rows))
		for _, i := range rows {
			if m.window(i).Known() {
				known = append(known, i)
			}
		}
		var in []int32
		w, in, _ = m.stab(known)
		c.births, c.strange = int32(len(in)), int32(len(known)-len(in))
	}
	c.lo, c.hi = w.Lo, w.Hi
	slices.Sort(c.runs)
	sort.Slice(na, func(a, b int) bool { return m.names.before(na[a], na[b]) })
	byID := func(a, b tally) int { return int(a.id - b.id) }
	slices.SortFunc(cl, byID)
	slices.SortFunc(co, byID)
	slices.SortFunc(nu, byID)
	keep := func(t []tally) []tally {
		out := g.tallies.take(len(t))
		copy(out, t)
		return out
	}
	c.names, c.numbers, c.clubs, c.courses = keep(na), keep(nu), keep(cl), keep(co)
	return c
}

// before orders spellings: most rows first, then by the alphabet.
func (t *nameTable) before(a, b tally) bool {
	if a.n != b.n {
		return a.n > b.n
	}
	x, y := t.keys[a.id], t.keys[b.id]
	if fx, fy := t.full[x.full], t.full[y.full]; fx != fy {
		return fx < fy
	}
	return t.given.text[x.given] < t.given.text[y.given]
}

func count(t []tally, id int32) []tally {
	for k := range t {
		if t[k].id == id {
			t[k].n++
			return t
		}
	}
	return append(t, tally{id, 1})
}

// findClubbed finds the series of sheets that give clubs: a blank says
// something only where at least one row in fifty has a club.
func (m *model) findClubbed() {
	r := m.rows
	top := int32(0)
	for _, s := range r.Series {
		top = max(top, s)
	}
	all, with := make([]int32, top+1), make([]int32, top+1)
	for i, s := range r.Series {
		all[s]++
		if r.Club[i] > 0 {
			with[s]++
		}
	}
	m.clubbed = make([]bool, top+1)
	for s := range all {
		m.clubbed[s] = with[s]*50 >= all[s]
	}
}

// widenUnsure finds the series of sheets whose ages all change in one week of
// the year. That week is no birthday: the ages are reckoned by some fixed day,
// and every window of the series may be a year out.
//
// Whenever somebody's age goes up between two lines, the weeks between them
// are those in which it may have happened. Lines are at most 17 weeks apart,
// so birthdays that are spread over the year put any one week among them for a
// third of people at most; a fixed day does so for all.
func (m *model) widenUnsure() {
	r, l := m.rows, &m.lab
	top := int32(0)
	for _, s := range r.Series {
		top = max(top, s)
	}
	n := r.Len()
	// About a million rows are enough; a name is in or out by its own hash.
	sample := uint64(max(1, n/1_000_000))
	var keys []uint64
	var with []int32
	for _, i := range l.order {
		k := m.names.of[r.Name[i]]
		if k < 0 || age.Basis(r.Basis[i]) != age.OnTheDay || r.BirthLo[i] == 0 && r.BirthHi[i] == 0 {
			continue
		}
		full := m.names.keys[k].full
		if sample > 1 && hash(m.names.full[full])%sample != 0 {
			continue
		}
		keys = append(keys, uint64(full)<<32|uint64(uint32(int32(r.Day[i])+1<<30)))
		with = append(with, i)
	}
	radixSort(keys, with)
	weeks, changes := make([][53]int32, top+1), make([]int32, top+1)
	for k := 1; k < len(with); k++ {
		i, j := with[k-1], with[k]
		if keys[k]>>32 != keys[k-1]>>32 || r.Series[i] != r.Series[j] || r.Sex[i] != r.Sex[j] ||
			r.Number[i] != r.Number[j] || l.course[i] != l.course[j] {
			continue
		}
		gap := r.Day[j] - r.Day[i]
		wider := (r.BirthHi[j] - r.BirthLo[j]) - (r.BirthHi[i] - r.BirthLo[i])
		if gap < 1 || gap > 120 || wider > 40 || wider < -40 {
			continue
		}
		// An unchanged age moves the window on by the gap; a birthday moves it
		// back by a year or by the years of a group.
		if moved := r.BirthLo[j] - r.BirthLo[i] - gap; moved > -300 {
			continue
		}
		changes[r.Series[j]]++
		to := (r.Day[j].Time().YearDay() - 1) / 7
		for back := 0; back <= int(gap-1)/7; back++ {
			weeks[r.Series[j]][(to-back+53)%53]++
		}
	}
	for s := range weeks {
		most := int32(0)
		for _, x := range weeks[s] {
			most = max(most, x)
		}
		if changes[s] >= 20 && most*4 >= changes[s]*3 {
			if m.unsure == nil {
				m.unsure = make([]bool, top+1)
			}
			m.unsure[s] = true
		}
	}
}
