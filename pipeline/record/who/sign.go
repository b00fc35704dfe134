package who

import (
	"slices"
	"sort"

	"lapwing/pipeline/age"
	"lapwing/pipeline/parallel"
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
	ages    edges // what all windows say
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

// rec is what grouping needs of a row, side by side: rows of a group lie far
// apart, and one look-up each is all that ten million of them can afford.
type rec struct {
	name                           int32 // key of the name table, -1 nobody
	number, run, course, club, dev int32
	lo, hi                         unit.Day // widened where the basis is unsure
	sex                            uint8
	asked                          bool // the sheet gives clubs
}

func (x *rec) window() age.Window { return age.Window{Lo: x.lo, Hi: x.hi} }

// placed says whether the row's window is narrow enough to tell people apart.
func (x *rec) placed() bool { return (x.lo != 0 || x.hi != 0) && x.hi-x.lo <= looseDays }

// gather builds the rows' records.
func (m *model) gather() {
	r, l := m.rows, &m.lab
	m.recs = make([]rec, r.Len())
	inPieces(m.o.Threads, r.Len(), func(_, lo, hi int) { m.gatherSome(lo, hi) })
	l.run, l.course, l.club, l.dev = nil, nil, nil, nil
}

func (m *model) gatherSome(lo, hi int) {
	r, l := m.rows, &m.lab
	for i := lo; i < hi; i++ {
		x := &m.recs[i]
		*x = rec{name: m.names.of[r.Name[i]], number: r.Number[i], run: l.run[i], course: l.course[i], club: l.club[i],
			dev: l.dev[i], lo: r.BirthLo[i], hi: r.BirthHi[i], sex: r.Sex[i], asked: r.Club[i] > 0 || m.clubbed[r.Series[i]]}
		if x.lo == 0 && x.hi == 0 {
			continue
		}
		switch age.Basis(r.Basis[i]) {
		case age.NoBasis:
			x.lo, x.hi = x.lo-183, x.hi+183
		case age.SignUp: // may have been true years ago: older, never younger
			x.lo -= 5 * 365
		}
		if m.unsure != nil && m.unsure[r.Series[i]] {
			x.lo, x.hi = x.lo-366, x.hi+366
		}
	}
}

// signer groups a stretch of the sorted rows into signatures.
type signer struct {
	m       *model
	recs    []rec
	tallies arena[tally]
	ints    arena[int32]
	sigs    []cluster
	rows    []int32 // rows in the order of their signatures
	starts  []int32
	known   bool // the group's name and sex are several people
	sakes   []sake
}

// sake is a whole name that at least so many people have.
type sake struct{ full, people int32 }

// sign makes the signatures: rows of one full name, sex and number, or of one
// full name, sex and course where there is no number. Within such a group rows
// are parted where birth windows contradict one another, where two are of one
// run, or where the pace differs too much.
func (m *model) sign() error {
	n := m.rows.Len()
	m.widenUnsure()
	m.findClubbed()
	m.gather()
	keys, with := m.byName(m.pinned())
	// Stretches that end with a name, so that each can be done by itself.
	cuts := []int{0}
	for at := n/64 + 1; at < n; at += n/64 + 1 {
		for at < n && keys[at]>>33 == keys[at-1]>>33 {
			at++
		}
		cuts = append(cuts, at)
	}
	if cuts[len(cuts)-1] != n {
		cuts = append(cuts, n)
	}
	parts := make([]*signer, len(cuts)-1)
	m.each(len(parts), func(k int) {
		lo, hi := cuts[k], cuts[k+1]
		g := &signer{m: m, recs: m.recs, rows: with[lo:hi], starts: []int32{0}}
		eachGroup(keys[lo:hi], 33, func(a, b int) {
			rows, ks := g.rows[a:b], keys[lo+a:lo+b]
			free := ks[0]>>63 == 0
			g.findNamesakes(free, rows)
			eachGroup(ks, 0, func(x, y int) { g.group(free, rows[x:y]) })
		})
		parts[k] = g
	})
	return m.collect(parts, with)
}

// byName sorts the rows by name, sex, and number or course; pinned rows and
// those that name nobody have a name of their own.
func (m *model) byName(pinned map[int32]bool) (keys []uint64, with []int32) {
	keys = make([]uint64, len(m.lab.order))
	with = make([]int32, len(m.lab.order))
	inPieces(m.o.Threads, len(keys), func(_, lo, hi int) {
		for p := lo; p < hi; p++ {
			i := m.lab.order[p]
			with[p] = i
			x := &m.recs[i]
			switch {
			case x.name < 0 || len(pinned) > 0 && pinned[i]:
				keys[p] = 1<<63 | uint64(p)<<33 // a name of its own
			case x.number > 0:
				keys[p] = uint64(m.names.keys[x.name].full)<<35 | uint64(x.sex)<<33 | 1<<32 | uint64(x.number)
			default:
				keys[p] = uint64(m.names.keys[x.name].full)<<35 | uint64(x.sex)<<33 | uint64(x.course)
			}
		}
	})
	radixSort(m.o.Threads, keys, with)
	return keys, with
}

// each does k = 0 … n-1 on all threads, until the linkage is called off.
func (m *model) each(n int, do func(k int)) {
	parallel.Each(n, m.o.Threads, func(k int) {
		if m.ctx.Err() == nil {
			do(k)
		}
	})
}

// collect puts the signatures into the order of their first rows by Key.
func (m *model) collect(parts []*signer, with []int32) error {
	if err := m.ctx.Err(); err != nil {
		return err
	}
	pos := m.lab.order // row -> place by Key; the same thing where rows are in order
	if !m.lab.sorted {
		pos = make([]int32, len(with))
		for p, i := range m.lab.order {
			pos[i] = int32(p)
		}
	}
	total := 0
	begin := make([]int, len(parts))
	for k, g := range parts {
		begin[k] = total
		total += len(g.sigs)
		m.noteSakes(g.sakes)
	}
	firsts, order := make([]uint64, total), make([]int32, total)
	from := make([]*cluster, total)
	rows := make([][]int32, total)
	m.each(len(parts), func(k int) {
		g := parts[k]
		for s := range g.sigs {
			in := g.rows[g.starts[s]:g.starts[s+1]]
			f := pos[in[0]]
			for _, i := range in[1:] {
				f = min(f, pos[i])
			}
			at := begin[k] + s
			firsts[at], order[at], from[at], rows[at] = uint64(f), int32(at), &g.sigs[s], in
		}
	})
	if err := m.ctx.Err(); err != nil {
		return err
	}
	radixSort(m.o.Threads, firsts, order)
	m.sigs = make([]cluster, total)
	m.sigOf = make([]int32, len(with))
	inPieces(m.o.Threads, total, func(_, lo, hi int) {
		for to := lo; to < hi; to++ {
			k := order[to]
			m.sigs[to] = *from[k]
			for _, i := range rows[k] {
				m.sigOf[i] = int32(to)
			}
		}
	})
	m.recs = nil
	m.applyDecisions()
	return nil
}

// noteSakes keeps how many people are known to have a name.
func (m *model) noteSakes(list []sake) {
	if m.sakes == nil {
		m.sakes = map[int32]int32{}
	}
	for _, x := range list {
		m.sakes[x.full] = max(m.sakes[x.full], x.people)
	}
}

// pinned are the rows that a decision takes out of their signatures: those it
// is about alone, and those it parts although nothing in them tells them apart.
func (m *model) pinned() map[int32]bool {
	out := map[int32]bool{}
	for _, d := range m.o.Decisions {
		a, okA := m.rowOf(d.A)
		b, okB := m.rowOf(d.B)
		alike := okA && okB && !d.Same && m.recs[a].alike(&m.recs[b], &m.names)
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
func (x *rec) alike(y *rec, t *nameTable) bool {
	if x.name < 0 || y.name < 0 || t.keys[x.name].full != t.keys[y.name].full || x.sex != y.sex || x.number != y.number {
		return false
	}
	if x.number == 0 && x.course != y.course || x.run == y.run {
		return false
	}
	_, ok := x.window().Meet(y.window())
	return ok
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

// contradict says whether the known windows of rows have no common day.
func (g *signer) contradict(rows []int32) bool {
	var w age.Window
	for _, i := range rows {
		v, ok := w.Meet(g.recs[i].window())
		if !ok {
			return true
		}
		w = v
	}
	return false
}

// findNamesakes notes whether rows of one name and sex are of several people, and
// of how many. free is false for rows that stay alone.
func (g *signer) findNamesakes(free bool, rows []int32) {
	g.known = false
	if !free || len(rows) <= 3 || !g.anyUnnumbered(rows) || !g.contradict(rows) {
		return
	}
	if n := g.peopleOf(rows); n > 1 {
		g.known = g.anyLoose(rows)
		g.sakes = append(g.sakes, sake{g.m.names.keys[g.recs[rows[0]].name].full, n})
	}
}

// peopleOf counts the people whom the births of rows of one name show, up to
// mostSakesSeen: births at least 300 days apart, each shown by at least two
// rows.
func (g *signer) peopleOf(rows []int32) (n int32) {
	rest := g.placed(rows)
	var found []age.Window
next:
	for len(rest) > 0 && n < mostSakesSeen {
		w, in, out := g.stab(rest)
		if len(in) < 2 {
			break
		}
		rest = out
		for _, f := range found {
			if f.Gap(w) <= 300 {
				continue next
			}
		}
		found = append(found, w)
		n++
	}
	return n
}

const mostSakesSeen = 8

// anyUnnumbered says whether any row has no number.
func (g *signer) anyUnnumbered(rows []int32) bool {
	for _, i := range rows {
		if g.recs[i].number == 0 {
			return true
		}
	}
	return false
}

// anyLoose says whether any row has neither a number nor a window that would
// place it.
func (g *signer) anyLoose(rows []int32) bool {
	for _, i := range rows {
		if x := &g.recs[i]; x.number == 0 && !x.placed() {
			return true
		}
	}
	return false
}

// placed keeps the rows whose window is narrow enough to tell people apart.
func (g *signer) placed(rows []int32) []int32 {
	var out []int32
	for _, i := range rows {
		if g.recs[i].placed() {
			out = append(out, i)
		}
	}
	return out
}

// stab finds the birth date that most rows' windows hold (the earliest such
// stretch), their common window, the rows that hold it and the others.
func (g *signer) stab(rows []int32) (w age.Window, in, out []int32) {
	type edge struct {
		at  unit.Day
		end bool
	}
	edges := make([]edge, 0, 2*len(rows))
	for _, i := range rows {
		v := g.recs[i].window()
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
		v := g.recs[i].window()
		if v.Lo <= at && at <= v.Hi {
			in = append(in, i)
			w, _ = w.Meet(v)
		} else {
			out = append(out, i)
		}
	}
	return
}

// stabKnown is stab with the rows of no known window on the side of most.
func (g *signer) stabKnown(rows []int32) (w age.Window, in, out []int32) {
	var known, rest []int32
	for _, i := range rows {
		if g.recs[i].window().Known() {
			known = append(known, i)
		} else {
			rest = append(rest, i)
		}
	}
	w, in, out = g.stab(known)
	return w, append(in, rest...), out
}

// group makes the signatures of one group of rows, which are in Key order.
// free is false for rows that stay alone.
func (g *signer) group(free bool, rows []int32) {
	numbered := g.recs[rows[0]].number > 0
	known := free && !numbered && g.known
	if !free || len(rows) == 1 {
		g.add(rows, known && !g.recs[rows[0]].placed())
		return
	}
	if !known && !g.contradict(rows) && (numbered || !g.clash(rows)) {
		g.addPaced(rows, numbered)
		return
	}
	// Rows whose window places them, the best supported birth first; then the
	// others, each to the first that it fits.
	var loose []int32
	var parts [][]int32
	var windows []age.Window
	rest := make([]int32, 0, len(rows))
	for _, i := range rows {
		if g.recs[i].placed() {
			rest = append(rest, i)
		} else {
			loose = append(loose, i)
		}
	}
	for len(rest) > 0 {
		w, in, out := g.stab(rest)
		parts, windows = append(parts, in), append(windows, w)
		rest = out
	}
	if known {
		for _, p := range parts {
			g.unclashed(p, numbered)
		}
		g.series(loose)
		return
	}
next:
	for _, i := range loose {
		for k := range parts {
			if w, ok := windows[k].Meet(g.recs[i].window()); ok {
				parts[k], windows[k] = append(parts[k], i), w
				continue next
			}
		}
		parts, windows = append(parts, []int32{i}), append(windows, g.recs[i].window())
	}
	for _, p := range parts {
		g.unclashed(p, numbered)
	}
}

// series makes signatures of rows of known namesakes that no window places:
// those of one course that fit one another in age, run and pace are most likely
// one person's, and where they run again and again says more of whose they are
// than any one of them does. Few of them stay alone, and so do those that two
// people must have left.
func (g *signer) series(rows []int32) {
	alone := func(rows []int32) {
		for _, i := range rows {
			g.add([]int32{i}, true)
		}
	}
	for len(rows) > 0 {
		in := rows
		rows = nil
		if g.contradict(in) {
			_, in, rows = g.stabKnown(in)
		}
		switch {
		case len(in) < shortestSeries:
			alone(in)
		case g.clash(in):
			two, open, ok := g.twoPeople(in)
			if !ok {
				alone(in)
				continue
			}
			for _, p := range two {
				g.add(p, len(p) < shortestSeries)
			}
			alone(open)
		default:
			g.addPaced(in, false)
		}
	}
}

// clash says whether two rows are of one run, or so far apart in pace that
// they are hardly one person's.
func (g *signer) clash(rows []int32) bool {
	var room [64]int32
	runs := room[:0]
	lo, hi := int32(1<<30), int32(-1<<30)
	for _, i := range rows {
		runs = append(runs, g.recs[i].run)
		if d := g.recs[i].dev; d != noTime {
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

const shortestSeries = 8 // rows of known namesakes at one course that are taken together

const farPace = 450_000 // millionths of log time

// unclashed parts rows that share a run or differ too much in pace: each row
// goes to the part nearest in pace of those without its run.
func (g *signer) unclashed(rows []int32, numbered bool) {
	if numbered || !g.clash(rows) {
		g.addPaced(rows, numbered)
		return
	}
	if two, open, ok := g.twoPeople(rows); ok {
		for _, p := range two {
			g.addPaced(p, false)
		}
		for _, i := range open {
			g.add([]int32{i}, true)
		}
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
		x := &g.recs[i]
		for _, p := range parts {
			if p.runs[x.run] {
				continue
			}
			d := int64(0)
			if x.dev != noTime && p.timed > 0 {
				d = p.sum/p.timed - int64(x.dev)
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
		best.runs[x.run] = true
		if x.dev != noTime {
			best.sum += int64(x.dev)
			best.timed++
		}
	}
	for _, p := range parts {
		g.addPaced(p.rows, false)
	}
}

// addPaced adds rows as one signature, or as two where they have two paces.
func (g *signer) addPaced(rows []int32, numbered bool) {
	if !numbered {
		if fast, slow, ok := g.twoPaces(rows); ok {
			g.add(fast, false)
			g.add(slow, false)
			return
		}
	}
	g.add(rows, false)
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
	m := g.m
	c := cluster{n: int32(len(rows)), loose: loose}
	var names, numbers, clubs, courses [16]tally
	na, nu, cl, co := names[:0], numbers[:0], clubs[:0], courses[:0]
	c.runs = g.ints.take(len(rows))
	var w age.Window
	for k, i := range rows {
		x := &g.recs[i]
		c.runs[k] = x.run
		c.sexes[x.sex]++
		if x.name >= 0 {
			na = count(na, x.name)
		}
		if x.number > 0 {
			nu = count(nu, x.number)
		}
		if x.club > 0 {
			cl = count(cl, x.club)
		}
		if x.asked {
			c.asked++
		}
		co = count(co, x.course)
		if x.dev != noTime {
			c.dev += int64(x.dev)
			c.timed++
		}
		if v := x.window(); v.Known() {
			c.ages.add(v.Lo, v.Hi)
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
			if g.recs[i].window().Known() {
				known = append(known, i)
			}
		}
		var in []int32
		w, in, _ = g.stab(known)
		c.births, c.strange = int32(len(in)), int32(len(known)-len(in))
	}
	c.lo, c.hi = w.Lo, w.Hi
	slices.Sort(c.runs)
	if len(na) > 1 {
		sort.Slice(na, func(a, b int) bool { return m.names.before(na[a], na[b]) })
	}
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
// third of people at most; a fixed day does so for all, and for more than half
// where some lines still have last season's.
func (m *model) widenUnsure() {
	r, l := m.rows, &m.lab
	top := int32(0)
	for _, s := range r.Series {
		top = max(top, s)
	}
	n := r.Len()
	// About a million rows are enough; a name is in or out by its own hash.
	sample := uint64(max(1, n/1_000_000))
	in := make([]bool, len(m.names.full))
	for f, s := range m.names.full {
		in[f] = sample == 1 || hash(s)%sample == 0
	}
	found := make([]blocks, max(1, m.o.Threads))
	inPieces(m.o.Threads, n, func(piece, lo, hi int) {
		b := &found[piece]
		for _, i := range l.order[lo:hi] {
			k := m.names.of[r.Name[i]]
			if k < 0 || !in[m.names.keys[k].full] || age.Basis(r.Basis[i]) != age.OnTheDay || r.BirthLo[i] == 0 && r.BirthHi[i] == 0 {
				continue
			}
			b.add(uint64(m.names.keys[k].full)<<32|uint64(uint32(int32(r.Day[i])+1<<30)), i)
		}
	})
	keys, with := found[0].keys, found[0].sig
	for _, b := range found[1:] {
		keys, with = append(keys, b.keys...), append(with, b.sig...)
	}
	radixSort(m.o.Threads, keys, with)
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
		if changes[s] >= 20 && most*20 >= changes[s]*11 {
			if m.unsure == nil {
				m.unsure = make([]bool, top+1)
			}
			m.unsure[s] = true
		}
	}
}
