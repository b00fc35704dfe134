package ugly

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"
	"strconv"
	"strings"

	"lapwing/pipeline/unit"
)

// row is one row of a tab with the lines that it stands for (two, where men
// and women stand side by side).
type row struct {
	cells []cell
	lines []*finisher
	run   *run
}

// tab is one table as laid out; a text sheet has exactly one.
type tab struct {
	name    string
	hidden  bool
	rows    []row
	merged  []int // rows whose first cell is merged over eight columns
	dropped bool  // nothing on it is a result (helper tabs)
}

// column is a heading and the cell of each line.
type column struct {
	kind, heading string
	cell          func(f *finisher, r *run) cell
}

type gen struct {
	world *world
	rng   *rand.Rand
	next  int // course to take
}

// wordings picks the headings of one sheet once, so that its tabs agree.
type wordings struct {
	g    *gen
	p    plan
	l    *language
	said map[string]string
}

func (w *wordings) heading(kind string) string {
	if h, ok := w.said[kind]; ok {
		return h
	}
	h := w.l.heading(kind, func(list []string) string {
		if w.p["headings"] == "usual" && w.p["language"] == "en" || in(kind, "given", "family") {
			return list[0]
		}
		return pick(w.g.rng, list)
	})
	switch w.p["headings"] {
	case "upper":
		h = strings.ToUpper(h)
	case "lower":
		h = strings.ToLower(h)
	case "colon":
		h += ":"
	case "newline":
		h = strings.Replace(h, " ", "\n", 1)
	case "units":
		switch kind {
		case "time":
			h += " (min)"
			if in(w.p["time"], "seconds", "seconds-tenths", "cell-seconds") {
				h = strings.TrimSuffix(h, " (min)") + " (s)"
			}
			if in(w.p["time"], "fraction", "cell-general") {
				h = strings.TrimSuffix(h, " (min)")
			}
		case "age":
			h += " [y]"
		}
	case "misspelt":
		if w.p["language"] == "en" {
			switch kind {
			case "pos":
				h = "Postion"
			case "group":
				h = "Catagory"
			case "time":
				h = "Finnish time"
			case "family":
				h = "Sirname"
			case "sex":
				h = "Gendar"
			}
		}
	}
	w.said[kind] = h
	return h
}

// prepare settles one run's field for a plan: odd lines, order, positions and
// what the time style can show.
func (g *gen) prepare(p plan, r *run) {
	rng := g.rng
	odd := p["odd"]
	has := func(o string) bool { return odd == o || odd == "many" }
	style := p["time"]
	if has("walkers") || style == "short-hour" || style == "cell-stopwatch-mixed" || style == "m:ss-over-60" || rng.IntN(4) == 0 {
		for i := 0; i < 4 && i < len(r.lines); i++ {
			f := r.lines[i]
			f.ms = 3_630_000 + rng.IntN(1_900_000)
		}
	}
	for _, f := range r.lines {
		f.ms = quantiseTime(style, f.ms)
	}
	sort.SliceStable(r.lines, func(i, j int) bool { return r.lines[i].ms < r.lines[j].ms })
	if in(style, "decimal", "decimal-comma", "cell-decimal") { // one .75 proves decimal minutes
		r.lines[len(r.lines)/2].ms = r.lines[len(r.lines)/2].ms/60_000*60_000 + 45_000
		sort.SliceStable(r.lines, func(i, j int) bool { return r.lines[i].ms < r.lines[j].ms })
	}
	if style == "centiseconds" {
		f := r.lines[len(r.lines)/2]
		f.ms = f.ms/1000*1000 + 870
		sort.SliceStable(r.lines, func(i, j int) bool { return r.lines[i].ms < r.lines[j].ms })
	}
	for i, f := range r.lines {
		f.pos = i + 1
	}
	n := len(r.lines)
	// some gives an ordinary finisher from a place on; where a small field has
	// none left, one that stands in no sheet.
	some := func(from int) *finisher {
		plain := func(f *finisher) bool { return f.class == OK && f.note == "" }
		if !slices.ContainsFunc(r.lines[from:n], plain) {
			return &finisher{}
		}
		for {
			if f := r.lines[from+rng.IntN(n-from)]; plain(f) {
				return f
			}
		}
	}
	if has("unnamed") {
		for i := 0; i < max(1, n/10); i++ {
			f := some(1)
			f.class, f.renamed = Unnamed, true
			f.name = pick(rng, unnamedWords)
			if w := unnamedIn[p["language"]]; w != "" && rng.IntN(2) == 0 {
				f.name = w
			}
			if f.name == "" && in(p["position"], "none") {
				f.name = "Unknown"
			}
		}
	}
	if has("untimed") {
		for i := 0; i < 2; i++ {
			f := some(2)
			f.class, f.retimed = Untimed, true
			f.timeText = pick(rng, []string{"", "-", "--", "n/a", "no time", "0:00", "00:00:00", "?", "#N/A"})
		}
	}
	if has("impossible") {
		f := some(3)
		f.class = Impossible
		f.ms = quantiseTime(style, 180_000+rng.IntN(400_000))
	}
	if has("two-people") {
		f := some(1)
		f.class, f.renamed = Doubtful, true
		f.name = "Sam & Jo " + f.who.family
	}
	if p["notes"] == "taking-part" {
		for i := 0; i < max(2, n/12); i++ {
			f := some(n / 3)
			t := pick(rng, parts)
			f.note, f.as = t.note, t.as
		}
	}
	if p["notes"] == "chat" {
		for _, f := range r.lines {
			if rng.IntN(4) == 0 && f.note == "" {
				f.note = pick(rng, chats)
			}
		}
	}
	if in(p["position"], "ties", "ties-before", "blank-ties") {
		for i := 1; i < n; i++ {
			a, b := r.lines[i-1], r.lines[i]
			if a.class == OK && b.class == OK && (a.ms == b.ms || i%9 == 4) {
				b.ms, b.pos, a.tie, b.tie = a.ms, a.pos, true, true
			}
		}
	}
	if has("repeats") {
		k := n / 2
		if f := r.lines[k]; f.class == OK {
			again := *f
			again.class, again.repeatOf = Repeat, f
			r.lines = append(r.lines[:k+1], append([]*finisher{&again}, r.lines[k+1:]...)...)
		}
	}
	if has("twice") {
		f, o := r.lines[1], r.lines[len(r.lines)-2]
		if f.class == OK && o.class == OK {
			o.who, o.class = f.who, Doubtful
		}
	}
	last := func(c Class, pos, tm string) *finisher {
		k := g.rng.IntN(homeFolk)
		f := &finisher{who: g.world.people[g.home(r.course)+k], class: c, posText: pos, timeText: tm, retimed: true}
		for _, o := range r.lines {
			if o.who == f.who {
				return nil
			}
		}
		if int(r.day-f.who.born) < 9*366 {
			return nil
		}
		r.lines = append(r.lines, f)
		return f
	}
	if has("dnf") {
		last(DNF, "DNF", "")
		last(DNF, "", pick(rng, []string{"DNF", "dnf", "Did not finish", "retired", "D.N.F."}))
		last(DNS, "", pick(rng, []string{"DNS", "did not start"}))
	}
	if has("dq") {
		f := some(1)
		f.class, f.note = DQ, pick(rng, []string{"DQ", "disqualified - cut the course", "DSQ: missed a turn", "Disqualified"})
		if f := last(DQ, "DQ", ""); f != nil {
			f.ms, f.retimed = quantiseTime(style, 1_500_000), false
		}
		last(DQ, "", pick(rng, []string{"DQ", "DSQ", "disqualified"}))
	}
}

func (g *gen) home(c *course) int {
	for i, o := range g.world.courses {
		if o == c {
			return i * homeFolk
		}
	}
	return 0
}

// columns gives the columns of a sheet in its order.
func (g *gen) columns(p plan, w *wordings, runs []*run) []column {
	rng, l := g.rng, w.l
	style := timeStyles[p["time"]]
	blank := cell{kind: isBlank}
	nobody := func(f *finisher) bool { return f.class == Unnamed }
	col := func(kind string, c func(f *finisher, r *run) cell) column {
		return column{kind, w.heading(kind), c}
	}

	pos := col("pos", func(f *finisher, _ *run) cell {
		switch {
		case f.posText != "" || f.pos == 0:
			return text(f.posText)
		}
		s := strconv.Itoa(f.pos)
		switch p["position"] {
		case "ordinal":
			return text(ordinal(f.pos))
		case "dot":
			return text(s + ".")
		case "padded":
			return text(fmt.Sprintf("%03d", f.pos))
		case "text":
			return text(s)
		case "ties":
			if f.tie {
				return text(s + "=")
			}
		case "ties-before":
			if f.tie {
				return text("=" + s)
			}
		}
		return integer(f.pos)
	})

	names := func(f *finisher) []cell {
		two := strings.HasPrefix(p["name"], "two-columns")
		if f.renamed {
			if two {
				return []cell{text(f.name), blank}
			}
			return []cell{text(f.name)}
		}
		return nameCells(p["name"], f.who.given, f.who.middle, f.who.family, rand.New(rand.NewPCG(uint64(f.who.number), 7)))
	}
	var name []column
	first, second := "given", "family"
	if p["name"] == "two-columns-family-first" {
		first, second = "family", "given"
	}
	if strings.HasPrefix(p["name"], "two-columns") {
		a := col(first, func(f *finisher, _ *run) cell { return names(f)[0] })
		b := col(second, func(f *finisher, _ *run) cell { return names(f)[1] })
		name = []column{a, b}
	} else {
		name = []column{col("name", func(f *finisher, _ *run) cell { return names(f)[0] })}
	}

	tm := []column{col("time", func(f *finisher, _ *run) cell {
		if f.retimed {
			if f.timeText == "0:00" && style.write(60_000, 3).kind == isNumber {
				return number("0:00:00", 0, style.write(60_000, 3).f)
			}
			return text(f.timeText)
		}
		return style.write(f.ms, f.who.number)
	})}
	if p["time"] == "min-sec" {
		part := func(kind string, unit, of int) column {
			return col(kind, func(f *finisher, _ *run) cell {
				if f.retimed {
					return text(f.timeText)
				}
				return integer(f.ms / unit % of)
			})
		}
		tm = []column{part("minutes", 60_000, 1000), part("seconds", 1000, 60)}
	}

	var ages []column
	ageColumn := func(kind, style string) column {
		return col(kind, func(f *finisher, r *run) cell {
			if nobody(f) || style == "none" || f.who.number%17 == 3 {
				return blank
			}
			c, win, sex := ageCell(style, f.who, r.day, l, f.who.number)
			f.win, _ = f.win.Meet(win)
			if sex != "" {
				f.sexShown = sex
			}
			return c
		})
	}
	switch a := p["age"]; a {
	case "none":
	case "age", "age31dec":
		ages = []column{ageColumn(a, a)}
	case "yob", "yob2":
		ages = []column{ageColumn("yob", a)}
	case "dob", "dob2", "dob-words":
		ages = []column{ageColumn("dob", a)}
	case "age-and-group":
		ages = []column{ageColumn("age", "age"), ageColumn("group", "five")}
	default:
		ages = []column{ageColumn("group", a)}
	}

	var sex []column
	if p["sex"] != "none" {
		pair := l.sexes[0]
		if p["sex"] == "other" {
			pair = l.sexes[1+rng.IntN(len(l.sexes)-1)]
		}
		if p["sex"] == "other" && p["language"] != "en" && strings.HasPrefix(p["language"], "e") && pair == [2]string{"H", "M"} {
			pair = l.sexes[0]
		}
		sex = []column{col("sex", func(f *finisher, _ *run) cell {
			if nobody(f) {
				return blank
			}
			c, ev := sexCell(p["sex"], f.who, pair, f.who.number)
			if ev != "" {
				f.sexShown = ev
			}
			return c
		})}
	}

	var club []column
	if p["club"] != "none" {
		club = []column{col("club", func(f *finisher, _ *run) cell {
			if nobody(f) {
				return blank
			}
			if f.who.club == "" && f.who.number%3 == 0 {
				return text("Unattached")
			}
			return text(f.who.club)
		})}
	}

	var notes []column
	odd := p["odd"]
	noted := in(odd, "dnf", "many") && rng.IntN(2) == 0 // an empty column of notes
	for _, r := range runs {
		for _, f := range r.lines {
			noted = noted || f.note != ""
		}
	}
	if noted {
		notes = []column{col("notes", func(f *finisher, _ *run) cell {
			if p["quoting"] == "newline" && f.note != "" && f.as == "" {
				return text(f.note + "\nsee you soon")
			}
			return text(f.note)
		})}
	}

	var out []column
	if p["position"] != "none" {
		out = append(out, pos)
	}
	if p["order"] == "time-first" {
		out = append(out, tm...)
	}
	out = append(out, name...)
	out = append(out, sex...)
	out = append(out, ages...)
	out = append(out, club...)
	extra := g.extras(p, w, runs)
	for _, e := range extra {
		if e.before {
			out = append(out, e.column)
		}
	}
	if p["order"] != "time-first" && !in(p["extra"], "gun-chip") {
		out = append(out, tm...)
	}
	for _, e := range extra {
		if !e.before {
			out = append(out, e.column)
		}
	}
	if p["order"] == "shuffled" {
		rng.Shuffle(len(out), func(i, j int) { out[i], out[j] = out[j], out[i] })
	}
	out = append(out, notes...)
	return out
}

type extraColumn struct {
	column
	before bool // stands before the time
}

// extras are the columns that look like others.
func (g *gen) extras(p plan, w *wordings, runs []*run) []extraColumn {
	style := timeStyles[p["time"]]
	blank := cell{kind: isBlank}
	var out []extraColumn
	add := func(kind string, before bool, c func(f *finisher, r *run) cell) {
		out = append(out, extraColumn{column{kind, w.heading(kind), func(f *finisher, r *run) cell {
			if f.ms == 0 || f.retimed || f.class == Unnamed && in(kind, "pb", "total", "grade", "catpos", "number", "points") {
				return blank
			}
			return c(f, r)
		}}, before})
	}
	win := func(r *run) int { return r.lines[0].ms }
	hash := func(f *finisher) int { return f.who.number }
	has := func(o string) bool { return p["extra"] == o || p["extra"] == "many" }
	clockwise := func(ms int) cell { return style.write(quantiseTime(p["time"], ms), 3) }
	if has("gap") {
		add("gap", false, func(f *finisher, r *run) cell {
			if f.ms <= win(r) {
				return text("-")
			}
			if p["time"][0] == 'c' && len(p["time"]) > 3 && p["time"][:4] == "cell" {
				return text("+" + mss(f.ms-win(r)))
			}
			return text("+" + mss(f.ms-win(r)))
		})
	}
	if has("pace") {
		add("pace", false, func(f *finisher, _ *run) cell { return text(mss(f.ms / 5)) })
	}
	if p["extra"] == "split" {
		add("split", true, func(f *finisher, _ *run) cell { return clockwise(f.ms * 49 / 100) })
	}
	if p["extra"] == "gun-chip" {
		add("gun", true, func(f *finisher, _ *run) cell { return clockwise(f.ms) })
		add("chip", true, func(f *finisher, _ *run) cell {
			f.chip = quantiseTime(p["time"], f.ms-1000*(hash(f)%9))
			if p["time"] == "short-hour" && f.ms >= 3_600_000 {
				f.chip = f.ms
			}
			return clockwise(f.chip)
		})
	}
	if has("catpos") {
		count := map[*run]map[string]int{}
		seen := map[*finisher]int{}
		add("catpos", true, func(f *finisher, r *run) cell {
			if n := seen[f]; n > 0 {
				return integer(n)
			}
			if count[r] == nil {
				count[r] = map[string]int{}
			}
			k := fmt.Sprint(f.who.sex, int(r.day-f.who.born)/3650)
			count[r][k]++
			seen[f] = count[r][k]
			return integer(count[r][k])
		})
	}
	if has("points") {
		add("points", false, func(f *finisher, _ *run) cell { return integer(max(1, 101-f.pos)) })
	}
	if has("grade") {
		add("grade", false, func(f *finisher, r *run) cell {
			v := 100 * 769_000 / float64(f.ms) * (1 + 0.004*float64(max(0, int(r.day-f.who.born)/365-30)))
			s := fmt.Sprintf("%.2f", v)
			if hash(f)%2 == 0 || p.text() {
				return number(s+map[bool]string{true: "%"}[w.p["language"] == "en"], v/100, "0.00%")
			}
			return number(s, v, "0.00")
		})
	}
	if has("total") {
		add("total", false, func(f *finisher, _ *run) cell { return integer(1 + hash(f)%190) })
	}
	if has("pb") {
		add("pb", false, func(f *finisher, _ *run) cell { return clockwise(f.ms * (90 + hash(f)%15) / 100) })
	}
	if has("speed") {
		add("speed", false, func(f *finisher, _ *run) cell {
			s := fmt.Sprintf("%.1f", 18_000_000/float64(f.ms))
			return number(s, num(s), "0.0")
		})
	}
	if p["extra"] == "clock" {
		start := func(r *run) int { // the second run of a day begins at half past ten
			if r.session == "10:30" {
				return 37_800_000
			}
			return 32_400_000
		}
		clock := func(ms int) cell {
			return number(fmt.Sprintf("%02d%s", ms/3_600_000, hms(ms)[len(hms(ms))-6:]), float64(ms)/86_400_000, "hh:mm:ss")
		}
		add("start", true, func(_ *finisher, r *run) cell { return clock(start(r)) })
		add("clock", true, func(f *finisher, r *run) cell { return clock(start(r) + f.ms/1000*1000) })
	}
	if has("number") {
		add("number", true, func(f *finisher, _ *run) cell { return text(fmt.Sprintf("%05d", f.who.number)) })
	}
	if p["extra"] == "distance" {
		add("distance", true, func(*finisher, *run) cell { return text("5 km") })
	}
	return out
}

// head writes the heading row or rows.
func head(p plan, cols []column) []row {
	var top, h []cell
	for _, c := range cols {
		h = append(h, text(c.heading))
		switch c.kind {
		case "name", "given":
			top = append(top, text("Runner"))
		case "time", "gun", "minutes":
			top = append(top, text("Finish"))
		default:
			top = append(top, cell{kind: isBlank})
		}
	}
	if p["headings"] == "two-row" {
		return []row{{cells: top}, {cells: h}}
	}
	return []row{{cells: h}}
}

// body writes one row for each line of a run.
func body(p plan, cols []column, r *run) []row {
	var out []row
	lastPos := 0
	for _, f := range r.lines {
		var cells []cell
		for _, c := range cols {
			v := c.cell(f, r)
			if c.kind == "pos" && p["position"] == "blank-ties" && f.tie && f.pos == lastPos && f.pos > 0 {
				v = cell{kind: isBlank}
			}
			cells = append(cells, v)
		}
		lastPos = f.pos
		if f.repeatOf != nil {
			f.win, f.sexShown = f.repeatOf.win, f.repeatOf.sexShown
		}
		out = append(out, row{cells, []*finisher{f}, r})
	}
	return out
}

func isoDate(d unit.Day) string { return d.String() }
func slashed(d unit.Day) string { y, m, dd := d.Date(); return fmt.Sprintf("%02d/%02d/%d", dd, m, y) }
func dottedDay(d unit.Day) string {
	y, m, dd := d.Date()
	return fmt.Sprintf("%d.%d.%d", dd, m, y)
}
