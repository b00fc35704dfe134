package ugly

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"

	"lapwing/pipeline/unit"
)

// file is one sheet in memory with its truth.
type file struct {
	name  string
	data  []byte
	truth Truth
	tabs  []tab
}

// Write makes n ugly sheets under dir, which is created where it is missing,
// and returns what is true of each. The same seed gives the same sheets, and
// the first n of a longer series are the same ones. Some make two files (a re-issue,
// the halves of a two-part sheet), so there are more truths than n.
func Write(dir string, seed uint64, n int) ([]Truth, error) {
	g := &gen{world: newWorld(seed)}
	var out []Truth
	taken := map[string]bool{}
	for i := 0; i < n; i++ {
		g.rng = rand.New(rand.NewPCG(seed, uint64(i)+1))
		p := newPlan(i, g.rng)
		files, err := g.sheet(p, i)
		if err != nil {
			return nil, fmt.Errorf("sheet %d (%s): %w", i, strings.Join(p.traits(), " "), err)
		}
		for _, f := range files {
			if taken[f.name] {
				return nil, fmt.Errorf("two sheets called %s", f.name)
			}
			taken[f.name] = true
			path := filepath.Join(dir, filepath.FromSlash(f.name))
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				return nil, err
			}
			if err := os.WriteFile(path, f.data, 0o644); err != nil {
				return nil, err
			}
			out = append(out, f.truth)
		}
	}
	return out, nil
}

// Save writes truth as JSON, LoadTruth reads it back.
func Save(path string, truth []Truth) error {
	b, err := json.Marshal(truth)
	if err != nil {
		return err
	}
	return os.WriteFile(path, b, 0o644)
}

// LoadTruth reads what Save wrote.
func LoadTruth(path string) ([]Truth, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	var out []Truth
	return out, json.Unmarshal(b, &out)
}

// sheet makes the file or files of one plan.
func (g *gen) sheet(p plan, i int) ([]file, error) {
	l := languages[p["language"]]
	g.next++
	c := g.world.courses[g.next%len(g.world.courses)]
	w := &wordings{g: g, p: p, l: l, said: map[string]string{}}
	size := 18 + g.rng.IntN(50)
	if p["shape"] == "big" || in(p["age"], "ten-open", "senior-39", "juniors-odd", "juniors-even") {
		size = 120 + g.rng.IntN(80)
	}
	newRun := func(c *course) *run {
		r := g.newRun(c, size)
		g.prepare(p, r)
		return r
	}
	withSource := func(runs []*run) []column {
		cols := g.columns(p, w, runs)
		if p["source"] == "columns" {
			course := column{"course", w.heading("course"), func(_ *finisher, r *run) cell { return text(r.course.name) }}
			date := column{"date", w.heading("date"), func(_ *finisher, r *run) cell { return g.dateColumn(p, l, r.day) }}
			cols = append([]column{date, course}, cols...)
		}
		return cols
	}
	one := func(r *run) tab {
		cols := withSource([]*run{r})
		title, _, _ := g.titles(p, l, r)
		return g.page(p, l, title, head(p, cols), body(p, cols, r))
	}
	ext := "csv"
	if !p.text() {
		ext = "xlsx"
	}
	switch p["extension"] {
	case "upper":
		ext = strings.ToUpper(ext)
	case "txt":
		ext = "txt"
	}
	finish := func(name string, r *run, tabs ...tab) (file, error) {
		f := file{name: name, tabs: tabs}
		f.truth = Truth{Sheet: name, Traits: p.traits()}
		if r != nil {
			_, f.truth.Hold, f.truth.Asks = g.titles(p, l, r)
		}
		if p["source"] == "folder" || p["time"] == "min-sec" || in(p["shape"], "no-headings", "side-by-side", "excerpt") {
			f.truth.Hold = max(f.truth.Hold, MayHold)
		}
		return f, g.render(p, &f)
	}

	switch p["shape"] {
	case "season", "season-filldown":
		size = 8 + g.rng.IntN(20)
		var runs []*run
		for k := 0; k < 3+g.rng.IntN(6); k++ {
			cc := c
			if k%3 == 2 {
				cc = pick(g.rng, g.world.courses)
			}
			runs = append(runs, newRun(cc))
		}
		cols := withSource(runs)
		var rows []row
		for _, r := range runs {
			b := body(p, cols, r)
			if p["shape"] == "season-filldown" {
				for k := range b {
					if k > 0 {
						b[k].cells[0], b[k].cells[1] = cell{kind: isBlank}, cell{kind: isBlank}
					}
				}
			}
			rows = append(rows, b...)
		}
		q := plan{}
		for k, v := range p {
			q[k] = v
		}
		if p["shape"] == "season-filldown" {
			q["paging"] = "none"
		}
		f, err := finish(g.fileName(p, l, runs[0], i, ext), runs[0], g.page(q, l, nil, head(p, cols), rows))
		return []file{f}, err

	case "sections":
		size = 8 + g.rng.IntN(15)
		var t tab
		var first *run
		for k := 0; k < 2+g.rng.IntN(4); k++ {
			r := newRun(c)
			if first == nil {
				first = r
			}
			part := one(r)
			t.rows = append(append(t.rows, part.rows...), row{}, row{})
		}
		f, err := finish(g.fileName(p, l, first, i, ext), first, t)
		return []file{f}, err

	case "tabs", "tabs-by-course":
		size = 10 + g.rng.IntN(20)
		var tabs []tab
		var first *run
		for k := 0; k < 2+g.rng.IntN(4); k++ {
			cc := g.world.courses[(g.next+k*7)%len(g.world.courses)]
			if p["shape"] == "tabs" {
				cc = c
			}
			r := newRun(cc)
			if first == nil {
				first = r
			}
			t := one(r)
			if p["shape"] == "tabs" {
				t.name = pick(g.rng, []string{isoDate(r.day), isoDate(r.day), l.words(r.day, false)})
				t.rows = append([]row{textRow(cc.name + " " + l.results), {}}, t.rows...)
			} else {
				t.name = cc.name
				t.rows = append([]row{textRow(l.results + " " + l.words(r.day, true)), {}}, t.rows...)
			}
			tabs = append(tabs, t)
		}
		q := g.fileName(plan{"source": p["shape"]}, l, first, i, ext)
		f, err := finish(q, first, tabs...)
		return []file{f}, err

	case "two-part", "two-part-tabs":
		r := newRun(c)
		times, people := g.halves(p, w, r)
		if p["shape"] == "two-part-tabs" {
			times.name, people.name = "Times", "Names"
			if t, _, _ := g.titles(p, l, r); len(t) > 0 {
				times.rows = append(append([]row{}, t...), times.rows...)
			}
			f, err := finish(g.fileName(p, l, r, i, ext), r, times, people)
			if err == nil {
				joinHalves(&f.truth, &f.truth, true)
			}
			return []file{f}, err
		}
		base := fmt.Sprintf("%s_%s ", c.slug, r.day)
		a, err := finish(base+"times."+ext, r, times)
		if err != nil {
			return nil, err
		}
		b, err := finish(base+"names."+ext, r, people)
		joinHalves(&a.truth, &b.truth, false)
		return []file{a, b}, err

	case "men-women", "side-by-side":
		r := newRun(c)
		r.lines = keep(r.lines, func(f *finisher) bool { return f.who.sex != "X" && f.class != DNF && f.class != DNS && f.class != DQ })
		var halves [2]*run
		for s := range halves {
			sex := []string{"M", "W"}[s]
			h := &run{course: r.course, day: r.day, session: r.session}
			h.lines = keep(r.lines, func(f *finisher) bool { return f.who.sex == sex })
			place := 0
			for _, f := range h.lines {
				if f.repeatOf == nil {
					place++
				}
				if f.pos > 0 {
					f.pos = place
				}
				f.sexShown = sex
			}
			halves[s] = h
		}
		if len(halves[0].lines) == 0 || len(halves[1].lines) == 0 {
			return nil, fmt.Errorf("a field without men or without women")
		}
		cols := withSource([]*run{r})
		title, _, _ := g.titles(p, l, r)
		var t tab
		if p["shape"] == "men-women" {
			var rows []row
			for s, h := range halves {
				rows = append(rows, row{}, textRow(l.men[s]))
				rows = append(rows, head(p, cols)...)
				rows = append(rows, body(p, cols, h)...)
			}
			t = g.page(p, l, title, nil, rows)
		} else {
			a, b := body(p, cols, halves[0]), body(p, cols, halves[1])
			hd := head(p, cols)[0].cells
			wide := len(hd)
			heading := row{cells: append(append(append([]cell{}, hd...), cell{kind: isBlank}), hd...)}
			top := row{cells: make([]cell, wide+2)}
			for k := range top.cells {
				top.cells[k] = cell{kind: isBlank}
			}
			top.cells[0], top.cells[wide+1] = text(l.men[0]), text(l.men[1])
			var rows []row
			for k := 0; k < max(len(a), len(b)); k++ {
				x := row{run: r}
				if k < len(a) {
					x.cells, x.lines = append(x.cells, a[k].cells...), append(x.lines, a[k].lines...)
				}
				for len(x.cells) < wide+1 {
					x.cells = append(x.cells, cell{kind: isBlank})
				}
				if k < len(b) {
					x.cells, x.lines = append(x.cells, b[k].cells...), append(x.lines, b[k].lines...)
				}
				rows = append(rows, x)
			}
			t = g.page(p, l, title, []row{top, heading}, rows)
		}
		f, err := finish(g.fileName(p, l, r, i, ext), r, t)
		return []file{f}, err

	case "excerpt":
		size = 150
		r := newRun(c)
		club := clubNames[g.rng.IntN(len(clubNames))]
		r.lines = keep(r.lines, func(f *finisher) bool { return f.who.club == club || f.who.number%9 == 0 })
		f, err := finish(g.fileName(p, l, r, i, ext), r, one(r))
		return []file{f}, err

	case "reissue", "copy", "same-bytes":
		r := newRun(c)
		base := fmt.Sprintf("%s_%s", c.slug, r.day)
		t := one(r)
		a, err := finish(base+" 1."+ext, r, t)
		if err != nil {
			return nil, err
		}
		var b file
		switch p["shape"] {
		case "reissue":
			for k := 2; k < len(r.lines); k += 9 {
				if f := r.lines[k]; f.class == OK && f.as == "" && !f.tie && k > 0 {
					// corrected by a little, never past the one before
					f.ms = max(quantiseTime(p["time"], f.ms-3000), r.lines[k-1].ms)
				}
			}
			b, err = finish(base+" 2."+ext, r, one(r))
			if err == nil {
				supersede(&a.truth, &b.truth)
			}
		case "copy":
			q := plan{}
			for k, v := range p {
				q[k] = v
			}
			other := "xlsx"
			q["format"] = "book"
			if !p.text() {
				other, q["format"] = "csv", "csv"
				if len(q["time"]) > 4 && q["time"][:4] == "cell" {
					other, q["format"] = "xlsx", "rawbook"
					if p["format"] == "rawbook" {
						q["format"] = "book"
					}
				}
			}
			b = file{name: base + " copy." + other, tabs: []tab{t}, truth: Truth{Sheet: base + " copy." + other, Traits: p.traits()}}
			err = g.render(q, &b)
			if err == nil {
				repeatOf(&a.truth, &b.truth)
			}
		case "same-bytes":
			b = file{name: base + " copy." + ext, data: a.data, truth: Truth{Sheet: base + " copy." + ext, Traits: p.traits(), Hold: MayHold}}
			for _, x := range a.truth.Lines {
				x.Sheet = b.name
				b.truth.Lines = append(b.truth.Lines, x)
			}
			repeatOf(&a.truth, &b.truth)
		}
		return []file{a, b}, err

	case "two-sessions":
		var out []file
		r := newRun(c)
		for s, start := range []string{"09:00", "10:30"} {
			h := &run{course: r.course, day: r.day, session: start}
			for k, f := range r.lines {
				if k%2 == s {
					h.lines = append(h.lines, f)
					f.pos = len(h.lines)
					f.tie = false
				}
			}
			cols := withSource([]*run{h})
			t := g.page(p, l, []row{textRow("Start " + start)}, head(p, cols), body(p, cols, h))
			f, err := finish(fmt.Sprintf("%s_%s_%s.%s", c.slug, r.day, strings.Replace(start, ":", "", 1), ext), h, t)
			if err != nil {
				return nil, err
			}
			out = append(out, f)
		}
		return out, nil

	case "no-headings":
		r := newRun(c)
		t := one(r)
		t.rows = t.rows[1:]
		f, err := finish(g.fileName(p, l, r, i, ext), r, t)
		return []file{f}, err

	case "not-results":
		t := tab{rows: []row{textRow("Name", "Role", "Date", "Telephone")}}
		for k := 0; k < 12; k++ {
			t.rows = append(t.rows, textRow(g.world.people[k*31].name(), pick(g.rng, []string{"Timekeeper", "Marshal", "Finish tokens", "Set-up"}), slashed(c.next+7), "0000 000"+fmt.Sprint(100+k)))
		}
		f, err := finish(fmt.Sprintf("rota %d.%s", i, ext), nil, t)
		f.truth.Hold, f.truth.Asks = Must, "no results in it"
		return []file{f}, err
	}

	r := newRun(c)
	t := one(r)
	if p["source"] == "tab" {
		t.name = pick(g.rng, []string{isoDate(r.day), l.words(r.day, false)})
	}
	tabs := g.aroundTabs(p, l, r, t)
	f, err := finish(g.fileName(p, l, r, i, ext), r, tabs...)
	return []file{f}, err
}

func keep(lines []*finisher, ok func(*finisher) bool) []*finisher {
	var out []*finisher
	for _, f := range lines {
		if ok(f) {
			out = append(out, f)
		}
	}
	return out
}

// dateColumn writes a date in a column in a form that the sheet's other dates settle.
func (g *gen) dateColumn(p plan, l *language, d unit.Day) cell {
	if p["cells"] == "text" {
		return text(isoDate(d))
	}
	if !p.text() {
		return dateCell(slashed(d), d, "dd/mm/yyyy")
	}
	switch p["top"] {
	case "none", "title":
		return text(isoDate(d))
	case "block":
		return text(slashed(d))
	}
	return text(l.words(d, false))
}

// halves writes the two parts of a two-part sheet: positions with times, and
// positions with people.
func (g *gen) halves(p plan, w *wordings, r *run) (times, people tab) {
	cols := g.columns(p, w, []*run{r})
	var a, b []column
	for _, c := range cols {
		switch c.kind {
		case "pos":
			a, b = append(a, c), append(b, c)
		case "time", "minutes", "seconds", "gun", "chip":
			a = append(a, c)
		default:
			b = append(b, c)
		}
	}
	return g.page(p, w.l, nil, head(p, a), body(p, a, r)), g.page(p, w.l, nil, head(p, b), body(p, b, r))
}

// joinHalves keeps one line per finisher, reported at either half.
func joinHalves(times, people *Truth, sameFile bool) {
	half := len(times.Lines)
	other := people.Lines
	if sameFile {
		half /= 2
		other = times.Lines[half:]
		times.Lines = times.Lines[:half]
	}
	for k := range times.Lines {
		times.Lines[k].Also = append(times.Lines[k].Also, Half{other[k].Spot, other[k].EditorRow})
	}
	if !sameFile {
		people.Lines = nil
	}
}

// supersede marks the first issue of a sheet; lines stand in the same order.
func supersede(first, second *Truth) {
	for k := range first.Lines {
		if first.Lines[k].Class == OK {
			first.Lines[k].Class = Superseded
			s := second.Lines[k].Spot
			first.Lines[k].Twin = &s
		}
	}
}

// repeatOf marks the lines of a copy.
func repeatOf(first, second *Truth) {
	for k := range second.Lines {
		if second.Lines[k].Class == OK {
			second.Lines[k].Class = Repeat
			s := first.Lines[k].Spot
			second.Lines[k].Twin = &s
		}
	}
}

// aroundTabs adds the other tabs of a workbook.
func (g *gen) aroundTabs(p plan, l *language, r *run, t tab) []tab {
	switch p["tabs"] {
	case "empty":
		return []tab{t, {name: "Sheet2", dropped: true}, {name: "Sheet3", dropped: true}}
	case "helper-hidden":
		h := tab{name: "lookup", hidden: true, dropped: true, rows: []row{textRow("Number", "Name", "Club", "Age")}}
		for k := 0; k < 30; k++ {
			q := g.world.people[k*13]
			h.rows = append(h.rows, row{cells: []cell{integer(q.number), text(q.name()), text(q.club), integer(40)}})
		}
		return []tab{h, t}
	case "winners":
		h := tab{name: "Summary", dropped: true, rows: []row{textRow("Summary"), textRow("Fastest man", "17:02"), textRow("Fastest woman", "19:44"), textRow("Average", "28:10"), textRow("Finishers", fmt.Sprint(len(r.lines)))}}
		return []tab{t, h}
	case "old-hidden":
		h := tab{name: "old", hidden: true, dropped: true}
		for _, x := range t.rows {
			h.rows = append(h.rows, row{cells: x.cells})
		}
		return []tab{t, h}
	}
	return []tab{t}
}
